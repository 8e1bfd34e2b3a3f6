/* test-history.c - undo and redo go through the values that were, and saved is one of them */
#include <string.h>

#include "any-edit.h"
#include "model/history.h"

static Project *
titled (const char *title)
{
  Project *project = project_new ();
  project->title = g_strdup (title);
  return project;
}

static void
push (History *history, const char *title, const char *label)
{
  g_autoptr (Project) project = titled (title);
  history_push (history, project, label);
}

static void
assert_now (const History *history, const char *title, const char *undo, const char *redo)
{
  g_assert_cmpstr (history_now (history)->title, ==, title);
  g_assert_cmpint (history_can_undo (history), ==, undo != NULL);
  g_assert_cmpint (history_can_redo (history), ==, redo != NULL);
  g_assert_cmpstr (history_undo_label (history), ==, undo);
  g_assert_cmpstr (history_redo_label (history), ==, redo);
}

static History *
new_history (void)
{
  g_autoptr (Project) project = titled ("first");
  return history_new (project);
}

static void
test_new (void)
{
  g_autoptr (History) history = new_history ();
  assert_now (history, "first", NULL, NULL);
  g_assert_null (history_undo (history));
  g_assert_null (history_redo (history));
  g_assert_true (history_is_saved (history));
  g_assert_cmpuint (history_n_steps (history), ==, 0);
  history_free (NULL);
}

static void
test_there_and_back (void)
{
  g_autoptr (History) history = new_history ();
  push (history, "second", "Name second");
  push (history, "third", "Name third");
  g_assert_cmpuint (history_n_steps (history), ==, 2);
  assert_now (history, "third", "Name third", NULL);
  g_assert_true (history_undo (history) == history_now (history));
  assert_now (history, "second", "Name second", "Name third");
  history_undo (history);
  assert_now (history, "first", NULL, "Name second");
  g_assert_null (history_undo (history));
  g_assert_true (history_redo (history) == history_now (history));
  assert_now (history, "second", "Name second", "Name third");
  history_redo (history);
  assert_now (history, "third", "Name third", NULL);
  g_assert_null (history_redo (history));
}

static void
test_new_step_drops_what_was_undone (void)
{
  g_autoptr (History) history = new_history ();
  push (history, "second", "Name second");
  push (history, "third", "Name third");
  history_undo (history);
  history_undo (history);
  push (history, "other", "Name other");
  assert_now (history, "other", "Name other", NULL);
  g_assert_cmpuint (history_n_steps (history), ==, 1);
  history_undo (history);
  assert_now (history, "first", NULL, "Name other");
}

static void
test_no_step_for_no_change (void)
{
  g_autoptr (History) history = new_history ();
  push (history, "second", "Name second");
  history_undo (history);
  push (history, "first", "Nothing");
  /* What could be redone still can be. */
  assert_now (history, "first", NULL, "Name second");
  g_assert_cmpuint (history_n_steps (history), ==, 1);
}

static void
test_saved_is_a_value (void)
{
  g_autoptr (History) history = new_history ();
  push (history, "second", "Name second");
  g_assert_false (history_is_saved (history));
  history_mark_saved (history);
  g_assert_true (history_is_saved (history));
  push (history, "third", "Name third");
  g_assert_false (history_is_saved (history));
  history_undo (history);
  g_assert_true (history_is_saved (history));
  history_undo (history);
  g_assert_false (history_is_saved (history));
  /* Typed again by hand, it is what was saved. */
  push (history, "second", "Name second");
  g_assert_true (history_is_saved (history));
}

/* The saved step is dropped, but not forgotten. */
static void
test_saved_outlives_its_step (void)
{
  g_autoptr (History) history = new_history ();
  push (history, "second", "Name second");
  history_mark_saved (history);
  history_undo (history);
  push (history, "other", "Name other");
  g_assert_false (history_is_saved (history));
  push (history, "second", "Name second");
  g_assert_true (history_is_saved (history));
}

static void
project_unref_item (gpointer project)
{
  project_unref (project);
}

/* Random edits, undo and redo beside a plain list of deep copies. */
static void
test_beside_a_list (void)
{
  g_autoptr (Project) start = project_new ();
  g_autoptr (History) history = history_new (start);
  g_autoptr (GPtrArray) list = g_ptr_array_new_with_free_func (project_unref_item);
  g_ptr_array_add (list, deep_copy (start));
  guint now = 0, saved = 0, undone = 0, redone = 0;
  for (int round = 0; round < 6000; round++)
    {
      int what = g_test_rand_int_range (0, 100);
      if (what < 20)
        {
          g_assert_cmpint (history_undo (history) != NULL, ==, now > 0);
          undone += now > 0;
          now -= now > 0;
        }
      else if (what < 35)
        {
          gboolean can = now + 1 < list->len;
          g_assert_cmpint (history_redo (history) != NULL, ==, can);
          redone += can;
          now += can;
        }
      else if (what < 37)
        {
          history_mark_saved (history);
          saved = now;
        }
      else
        {
          g_autoptr (Edit) edit = any_edit (history_now (history));
          g_autoptr (Project) next = project_edit (history_now (history), edit, NULL);
          if (next == NULL || project_equal (next, g_ptr_array_index (list, now)))
            continue;
          history_push (history, next, "Change");
          g_ptr_array_set_size (list, (gint) ++now);
          g_ptr_array_add (list, deep_copy (next));
          if (saved >= now)
            saved = G_MAXUINT;
        }
      g_assert_true (project_equal (history_now (history), g_ptr_array_index (list, now)));
      g_assert_cmpuint (history_n_steps (history), ==, list->len - 1);
      if (saved == now)
        g_assert_true (history_is_saved (history));
    }
  g_assert_cmpuint (undone, >, 500);
  g_assert_cmpuint (redone, >, 200);
  while (history_undo (history) != NULL)
    g_assert_true (project_equal (history_now (history), g_ptr_array_index (list, --now)));
  g_assert_cmpuint (now, ==, 0);
  while (history_redo (history) != NULL)
    g_assert_true (project_equal (history_now (history), g_ptr_array_index (list, ++now)));
  g_assert_cmpuint (now, ==, list->len - 1);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/history/new", test_new);
  g_test_add_func ("/history/there-and-back", test_there_and_back);
  g_test_add_func ("/history/new-step-drops-what-was-undone", test_new_step_drops_what_was_undone);
  g_test_add_func ("/history/no-step-for-no-change", test_no_step_for_no_change);
  g_test_add_func ("/history/saved-is-a-value", test_saved_is_a_value);
  g_test_add_func ("/history/saved-outlives-its-step", test_saved_outlives_its_step);
  g_test_add_func ("/history/beside-a-list", test_beside_a_list);
  return g_test_run ();
}
