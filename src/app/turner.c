#include "app/turner.h"

#include <glib/gi18n.h>

#include "app/job.h"
#include "bond/building.h"

struct HbTurner
{
  HbDocument *document; /* not owned */
  HbTurnerTold told;
  gpointer data;
  HbJob *job;
  GPtrArray *found; /* Wall *, as they are to be; NULL: nothing */
  gboolean running;
};

static void
free_project (gpointer project)
{
  project_unref (project);
}

/* ---- in the worker ---- */

typedef struct
{
  Building *building;
  GPtrArray *walls;
} Turned;

static void
free_turned (gpointer data)
{
  Turned *turned = data;

  building_free (turned->building);
  g_ptr_array_unref (turned->walls);
  g_free (turned);
}

static gpointer
turn (gpointer input, const gint *stop)
{
  const Project *project = input;
  Building *building;
  Turned *turned;

  hb_job_stand_back ();
  building = building_turns (project, stop);
  if (!building)
    return NULL;
  turned = g_new0 (Turned, 1);
  turned->building = building;
  turned->walls = building_walls (project, building);
  return turned;
}

/* ---- in the main thread ---- */

static char *
proof_text (const Building *building)
{
  if (building->proven)
    return g_strdup (_ ("proven: no turns have fewer"));
  if (building->breaches_at_least < building->breaches)
    return g_strdup (_ ("the best that was found"));
  return g_strdup_printf (_ ("the best that was found: no turns have fewer than %d"),
                          building->cuts_at_least);
}

static char *
breaches_text (const Building *building)
{
  if (building->now_breaches == building->breaches)
    return g_strdup ("");
  return g_strdup_printf (_ ("; %d breaches instead of %d"), building->breaches,
                          building->now_breaches);
}

static char *
found_text (const Building *building)
{
  g_autofree char *proof = proof_text (building);
  g_autofree char *breaches = breaches_text (building);

  if (!building->changed)
    return g_strdup_printf (_ ("Corners and tees turn the best way already: %d cuts, %s."),
                            building->cuts, proof);
  return g_strdup_printf (
      g_dngettext (NULL, "With %u corner or tee turned: %d cuts instead of %d%s (%s).",
                   "With %u corners and tees turned: %d cuts instead of %d%s (%s).",
                   building->changed),
      building->changed, building->cuts, building->now_cuts, breaches, proof);
}

static void
land (gpointer result, gpointer data)
{
  Turned *turned = result;
  HbTurner *turner = data;
  g_autofree char *sentence = found_text (turned->building);
  const gboolean better = turned->building->changed > 0;

  turner->running = FALSE;
  g_clear_pointer (&turner->found, g_ptr_array_unref);
  if (better)
    turner->found = g_ptr_array_ref (turned->walls);
  free_turned (turned);
  turner->told (sentence, better, turner->data);
}

static void
changed_cb (HbTurner *turner)
{
  g_clear_pointer (&turner->found, g_ptr_array_unref);
  hb_turner_stop (turner);
}

HbTurner *
hb_turner_new (HbDocument *document, HbTurnerTold told, gpointer data)
{
  HbTurner *turner = g_new0 (HbTurner, 1);

  turner->document = document;
  turner->told = told;
  turner->data = data;
  turner->job = hb_job_new ("turns", turn, free_project, land, free_turned, turner);
  g_signal_connect_swapped (document, "changed", G_CALLBACK (changed_cb), turner);
  return turner;
}

void
hb_turner_free (HbTurner *turner)
{
  if (!turner)
    return;
  g_signal_handlers_disconnect_by_func (turner->document, changed_cb, turner);
  hb_job_free (turner->job);
  g_clear_pointer (&turner->found, g_ptr_array_unref);
  g_free (turner);
}

gboolean
hb_turner_can (HbTurner *turner)
{
  g_autoptr (GArray) meetings = plan_meetings (hb_document_get_project (turner->document));

  for (guint i = 0; i < meetings->len; i++)
    if (g_array_index (meetings, Meeting, i).kind != MEET_WRONG
        && g_array_index (meetings, Meeting, i).made <= MADE_FIRST_EVEN)
      return TRUE;
  return FALSE;
}

void
hb_turner_start (HbTurner *turner)
{
  hb_job_start (turner->job, project_ref (hb_document_get_project (turner->document)));
  turner->running = TRUE;
  turner->told (NULL, FALSE, turner->data);
}

void
hb_turner_stop (HbTurner *turner)
{
  hb_job_cancel (turner->job);
  if (!turner->running)
    return;
  turner->running = FALSE;
  turner->told (NULL, FALSE, turner->data);
}

gboolean
hb_turner_is_running (HbTurner *turner)
{
  return turner->running;
}

gboolean
hb_turner_apply (HbTurner *turner, GError **error)
{
  g_autoptr (Edit) edit = turner->found ? edit_walls (turner->found) : NULL;

  return !edit || hb_document_apply (turner->document, edit, _ ("Turn corners and tees"), error);
}
