/* test-as-built.c - what is found of what stands, and that nothing offers to change it */
#include "advice/findings.h"
#include "advice/rod.h"
#include "advice/saving.h"

#include <string.h>

#include "any-wall.h"
#include "bond/lay.h"
#include "bond/stands.h"
#include "edited.h"
#include "model/built-edit.h"

#define MM(mm) LENGTH_MM (mm)
#define N_WALLS 60

static Project *
project_of (const Wall *wall, const Block *block)
{
  Project *project = project_new ();
  Block own = block_copy (block);
  g_autoptr (Wall) on = wall_copy (wall);

  own.id = project_block_at (project, 0)->id;
  g_free (own.key);
  own.key = g_strdup (project_block_at (project, 0)->key);
  project = edited (project, edit_set_block (&own));
  on->block = own.id;
  g_clear_pointer (&on->key, g_free);
  block_clear (&own);
  return edited (project, edit_add_wall (on));
}

static Layout *
lay_of (const Project *project)
{
  const Wall *wall = project_wall_at (project, 0);

  return lay_wall (wall, project_block (project, wall->block), NULL);
}

/* Takes both. */
static Project *
with (Project *project, Wall *wall)
{
  Project *next = edited (project, edit_set_wall (wall));

  wall_unref (wall);
  return next;
}

static Project *
laid_up_to (Project *project, gint32 courses)
{
  g_autoptr (Layout) layout = lay_of (project);
  g_autoptr (GArray) laid = stands_of_layout (layout);

  return with (project,
               built_set_courses (project_wall_at (project, 0), courses, laid, NULL, NULL));
}

/* 6000 x 2644, thirteen courses, of which five stand. */
static Project *
site (void)
{
  g_autoptr (Wall) wall = wall_new ();
  Block block = block_default ();
  Project *project;

  wall->height = MM (2644);
  project = laid_up_to (project_of (wall, &block), 5);
  block_clear (&block);
  return project;
}

/* Those of what stands: "rule" by "rule", with a space between. */
static char *
found (const Project *project, char **first_text)
{
  GString *rules = g_string_new (NULL);
  g_autoptr (Layout) layout = lay_of (project);
  g_autoptr (GPtrArray) findings = findings_of_wall (project, project_wall_at (project, 0), layout);

  for (guint i = 0; i < findings->len; i++)
    {
      const Finding *finding = g_ptr_array_index (findings, i);

      if (!g_str_has_prefix (finding->rule, "as-built"))
        continue;
      if (rules->len == 0 && first_text != NULL)
        *first_text = g_strdup (finding->text);
      g_string_append_printf (rules, "%s%s", rules->len > 0 ? " " : "", finding->rule);
      g_assert_null (finding->mend);
      g_assert_cmpint (finding->severity, ==,
                       strstr (finding->rule, "next-beds") || strstr (finding->rule, "gap")
                           ? SEVERITY_NOTE
                           : SEVERITY_WARNING);
    }
  return g_string_free (rules, FALSE);
}

static void
test_within (void)
{
  g_autoptr (Project) project = site ();
  const Length top = MM (422), length = MM (6000);

  project = with (project, built_set_top (project_wall_at (project, 0), 2, &top, &top, NULL));
  project = with (project, built_set_length (project_wall_at (project, 0), &length));
  g_autofree char *rules = found (project, NULL);
  g_assert_cmpstr (rules, ==, "");
}

static void
test_beyond (void)
{
  g_autoptr (Project) project = site ();
  const Length left = MM (1028 + 20), right = MM (1028 + 40), plumb = MM (21), bow = MM (-31),
               metre = MM (12), length = MM (6060);

  project = with (project, built_set_top (project_wall_at (project, 0), 5, &left, &right, NULL));
  project = with (project, built_set_figure (project_wall_at (project, 0), BUILT_PLUMB, &plumb));
  project = with (project, built_set_figure (project_wall_at (project, 0), BUILT_BOW, &bow));
  project
      = with (project, built_set_figure (project_wall_at (project, 0), BUILT_BOW_METRE, &metre));
  project = with (project, built_set_length (project_wall_at (project, 0), &length));
  g_autofree char *rules = found (project, NULL);
  /* Warnings before notes; those of no course first, by place. */
  g_assert_cmpstr (rules, ==,
                   "as-built-bow as-built-bow-metre as-built-plumb as-built-length as-built-top "
                   "as-built-level as-built-top as-built-gap as-built-gap as-built-gap "
                   "as-built-next-beds");
}

/* 6 mm high: eight beds of 1.5 would end at 2646, over the wall. */
static void
test_next_beds (void)
{
  g_autoptr (Project) project = site ();
  const Length top = MM (1034);
  g_autofree char *text = NULL;

  project = with (project, built_set_top (project_wall_at (project, 0), 5, &top, NULL, NULL));
  g_autofree char *rules = found (project, &text);
  g_assert_cmpstr (rules, ==, "as-built-next-beds");
  g_assert_cmpstr (text, ==,
                   "From course 6 on, beds of 1 mm bring course 13 to 2642 mm, 2 mm under its "
                   "plan.");
}

/* No mend of a finding, and no saving, changes what stands. */
static void
test_nothing_changes_it (void)
{
  guint mends = 0, savings = 0;

  for (guint64 seed = 0; seed < N_WALLS; seed++)
    {
      g_auto (AnyWall) any = any_wall (seed);
      AnyRandom random = { seed };
      g_autoptr (Project) project = project_of (any.wall, &any.block);
      g_autoptr (Layout) planned = lay_of (project);

      if (planned->courses->len < 2)
        continue;
      project = laid_up_to (project, (gint32) any_between (&random, 1, planned->courses->len));
      const Wall *wall = project_wall_at (project, 0);
      const Block *block = project_block (project, wall->block);
      g_autoptr (Layout) layout = lay_of (project);
      g_autoptr (GPtrArray) findings = findings_of_wall (project, wall, layout);
      for (guint i = 0; i < findings->len; i++)
        {
          const Finding *finding = g_ptr_array_index (findings, i);
          g_autoptr (Project) mended
              = finding->mend != NULL ? project_edit (project, finding->mend, NULL) : NULL;

          if (mended == NULL)
            continue;
          mends++;
          g_test_message ("%s: %s", finding->rule, finding->mend_text);
          g_assert_true (stands_in (wall, project_wall_at (mended, 0), block));
          g_assert_cmpint (wall_standing (project_wall_at (mended, 0)), ==, wall_standing (wall));
        }
      g_autoptr (Wall) gauged = rod_to_gauge (wall, block);
      g_assert_true (stands_in (wall, gauged, block));
      if (seed % 6 > 0)
        continue;
      g_autoptr (GPtrArray) found = savings_of_wall (project, wall, 1, NULL);
      for (guint i = 0; found != NULL && i < found->len; i++)
        {
          const Finding *saving = g_ptr_array_index (found, i);
          g_autoptr (Project) saved = project_edit (project, saving->mend, NULL);

          savings++;
          g_assert_true (stands_in (wall, project_wall_at (saved, 0), block));
        }
    }
  g_test_message ("%u mends, %u savings", mends, savings);
  g_assert_cmpuint (mends, >, 10);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/as-built/within", test_within);
  g_test_add_func ("/as-built/beyond", test_beyond);
  g_test_add_func ("/as-built/next-beds", test_next_beds);
  g_test_add_func ("/as-built/nothing-changes-it", test_nothing_changes_it);
  return g_test_run ();
}
