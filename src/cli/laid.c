#include "cli/laid.h"

#include <glib/gi18n.h>
#include <stdio.h>
#include <string.h>

#include "bond/lay.h"
#include "cli/arguments.h"
#include "cli/jobs.h"
#include "store/store.h"

Status
laid_project (const char *path, Project **out)
{
  g_autoptr (GError) error = NULL;

  *out = store_read (path, &error);
  if (*out)
    return STATUS_DONE;
  /* "FILE:LINE: reason", as editors and compilers have it, so without the program's name. */
  fprintf (stderr, "%s\n", error->message);
  return STATUS_READ;
}

static void
complain_of_wall (const Laid *laid, const char *key)
{
  g_autoptr (GString) list = g_string_new (NULL);

  for (guint i = 0; i < laid->project->walls->len && i < 20; i++)
    g_string_append_printf (list, "%s%s", i ? ", " : "", project_wall_at (laid->project, i)->key);
  complain (_ ("%s has no wall “%s”; its walls are: %s."), laid->path, key, list->str);
}

static gboolean
pick_walls (Laid *laid, const char *key)
{
  laid->n = laid->project->walls->len;
  if (!key)
    return TRUE;
  for (laid->first = 0; laid->first < laid->n; laid->first++)
    if (strcmp (project_wall_at (laid->project, laid->first)->key, key) == 0)
      {
        laid->n = 1;
        return TRUE;
      }
  complain_of_wall (laid, key);
  return FALSE;
}

static void
lay_one (guint i, gpointer data)
{
  Laid *laid = data;
  const Wall *wall = project_wall_at (laid->project, i);

  if (laid->layouts[i] == NULL)
    laid->layouts[i] = lay_wall (wall, laid_block (laid, wall), NULL);
}

static void
lay_asked (guint i, gpointer data)
{
  Laid *laid = data;

  lay_one (laid->first + i, laid);
}

Status
laid_read (const char *path, const char *wall, Laid *out)
{
  Project *project;
  const Status status = laid_project (path, &project);

  return status == STATUS_DONE ? laid_of (path, project, wall, out) : status;
}

Status
laid_of (const char *path, Project *project, const char *wall, Laid *out)
{
  Laid laid = { .path = path, .project = project };

  if (!pick_walls (&laid, wall))
    {
      project_unref (laid.project);
      return STATUS_CALL;
    }
  laid.layouts = g_new0 (Layout *, laid.project->walls->len + 1);
  jobs_run (laid.n, lay_asked, &laid, _ ("Laying walls"));
  *out = laid;
  return STATUS_DONE;
}

void
laid_lay_all (Laid *laid)
{
  jobs_run (laid->project->walls->len, lay_one, laid, _ ("Laying walls"));
}

void
laid_clear (Laid *laid)
{
  for (guint i = 0; laid->project && i < laid->project->walls->len; i++)
    g_clear_pointer (&laid->layouts[i], layout_unref);
  g_clear_pointer (&laid->layouts, g_free);
  g_clear_pointer (&laid->project, project_unref);
}

Status
laid_verdict (const Laid *laid)
{
  for (guint i = laid->first; i < laid->first + laid->n; i++)
    if (laid->layouts[i]->proof.breaches > 0)
      return STATUS_BREACH;
  return STATUS_DONE;
}
