#include "app/improver.h"

#include <glib/gi18n.h>

#include "advice/improve.h"
#include "app/job.h"

#define STEP LENGTH_MM (5)

struct HbImprover
{
  HbDocument *document; /* not owned */
  HbImproverTold told;
  gpointer data;
  HbJob *job;
  WallId wall;
  gboolean running;
};

typedef struct
{
  Wall *wall;
  Block block;
} Asked;

static void
asked_free (gpointer data)
{
  Asked *asked = data;

  wall_unref (asked->wall);
  block_clear (&asked->block);
  g_free (asked);
}

static void
free_improvement (gpointer improvement)
{
  improvement_free (improvement);
}

/* ---- in the worker ---- */

static gpointer
improve (gpointer input, const gint *stop)
{
  const Asked *asked = input;
  const ImproveHow how = { STEP, IMPROVE_WORK_LIVE, g_get_num_processors (), stop };

  hb_job_stand_back ();
  return improve_wall (asked->wall, &asked->block, &how);
}

/* ---- in the main thread ---- */

static void
tell (HbImprover *improver, gboolean running, const char *sentence)
{
  improver->running = running;
  improver->told (sentence, improver->data);
}

static void
land (gpointer result, gpointer data)
{
  g_autoptr (Improvement) improvement = result;
  HbImprover *improver = data;
  g_autofree char *sentence = improvement_text (improvement);
  g_autoptr (GError) error = NULL;

  /* What it changes itself does not overtake it. */
  improver->running = FALSE;
  if (improvement->edit
      && !hb_document_apply (improver->document, improvement->edit, _ ("Improve all"), &error))
    {
      tell (improver, FALSE, error->message);
      return;
    }
  tell (improver, FALSE, sentence);
}

static void
changed_cb (HbImprover *improver)
{
  if (improver->running)
    hb_improver_stop (improver);
}

HbImprover *
hb_improver_new (HbDocument *document, HbImproverTold told, gpointer data)
{
  HbImprover *improver = g_new0 (HbImprover, 1);

  improver->document = document;
  improver->told = told;
  improver->data = data;
  improver->job = hb_job_new ("improve", improve, asked_free, land, free_improvement, improver);
  g_signal_connect_swapped (document, "changed", G_CALLBACK (changed_cb), improver);
  return improver;
}

void
hb_improver_free (HbImprover *improver)
{
  if (!improver)
    return;
  g_signal_handlers_disconnect_by_func (improver->document, changed_cb, improver);
  hb_job_free (improver->job);
  g_free (improver);
}

gboolean
hb_improver_can (HbImprover *improver, WallId id)
{
  const Wall *wall = project_wall (hb_document_get_project (improver->document), id);

  for (guint i = 0; wall && i < wall->openings->len; i++)
    if (opening_may_move (wall_opening_at (wall, i)) > 0)
      return TRUE;
  return FALSE;
}

void
hb_improver_start (HbImprover *improver, WallId id)
{
  const Project *project = hb_document_get_project (improver->document);
  const Wall *wall = project_wall (project, id);
  Asked *asked;

  if (!wall)
    return;
  asked = g_new0 (Asked, 1);
  asked->wall = wall_ref (wall);
  asked->block = block_copy (project_block (project, wall->block));
  hb_job_start (improver->job, asked);
  tell (improver, TRUE, NULL);
}

void
hb_improver_stop (HbImprover *improver)
{
  hb_job_cancel (improver->job);
  if (improver->running)
    tell (improver, FALSE, NULL);
}

gboolean
hb_improver_is_running (HbImprover *improver)
{
  return improver->running;
}
