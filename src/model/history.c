/* history.c - a list of project values */
#include "model/history.h"

typedef struct
{
  Project *project;
  char *label; /* what led here; NULL for the first */
} Step;

struct History
{
  GArray *steps; /* Step */
  guint now;
  Project *saved; /* the value that was saved */
};

static void
step_clear (gpointer data)
{
  Step *step = data;

  project_unref (step->project);
  g_free (step->label);
}

static const Step *
step_at (const History *history, guint i)
{
  return &g_array_index (history->steps, Step, i);
}

static void
append (History *history, const Project *project, const char *label)
{
  Step step = { project_ref (project), g_strdup (label) };

  g_array_append_val (history->steps, step);
}

History *
history_new (const Project *project)
{
  History *history = g_new0 (History, 1);

  history->steps = g_array_new (FALSE, FALSE, sizeof (Step));
  g_array_set_clear_func (history->steps, step_clear);
  append (history, project, NULL);
  history->saved = project_ref (project);
  return history;
}

void
history_free (History *history)
{
  if (!history)
    return;
  g_array_unref (history->steps);
  project_unref (history->saved);
  g_free (history);
}

const Project *
history_now (const History *history)
{
  return step_at (history, history->now)->project;
}

void
history_push (History *history, const Project *project, const char *label)
{
  if (project_equal (history_now (history), project))
    return;
  g_array_set_size (history->steps, history->now + 1);
  append (history, project, label);
  history->now++;
}

gboolean
history_can_undo (const History *history)
{
  return history->now > 0;
}

gboolean
history_can_redo (const History *history)
{
  return history->now + 1 < history->steps->len;
}

const char *
history_undo_label (const History *history)
{
  return history_can_undo (history) ? step_at (history, history->now)->label : NULL;
}

const char *
history_redo_label (const History *history)
{
  return history_can_redo (history) ? step_at (history, history->now + 1)->label : NULL;
}

const Project *
history_undo (History *history)
{
  if (!history_can_undo (history))
    return NULL;
  history->now--;
  return history_now (history);
}

const Project *
history_redo (History *history)
{
  if (!history_can_redo (history))
    return NULL;
  history->now++;
  return history_now (history);
}

void
history_mark_saved (History *history)
{
  Project *now = project_ref (history_now (history));

  project_unref (history->saved);
  history->saved = now;
}

gboolean
history_is_saved (const History *history)
{
  return project_equal (history->saved, history_now (history));
}

guint
history_n_steps (const History *history)
{
  return history->steps->len - 1;
}
