#include "cli/drawings.h"

#include <glib/gi18n.h>
#include <stdio.h>
#include <string.h>

#include "cli/arguments.h"
#include "cli/output.h"

const char *const drawing_kinds[] = {
  [DRAWING_ELEVATION] = "elevation",
  [DRAWING_CLIENT] = "client",
  [DRAWING_PLAN] = "plan",
  NULL,
};

static Status
write_one (const Laid *laid, guint i, const char *output, Draw draw, gpointer data)
{
  g_autoptr (GError) error = NULL;
  const Wall *wall = project_wall_at (laid->project, i);
  g_autoptr (GBytes) bytes = draw (laid->project, wall, laid->layouts[i], data, &error);
  gsize n;

  if (!bytes)
    {
      complain ("%s: %s", wall->key, error->message);
      return STATUS_CALL;
    }
  const char *start = g_bytes_get_data (bytes, &n);
  return output_bytes (output, laid->path, start, n);
}

/* "folder/house.svg" and "w1": "folder/house-w1.svg". */
static char *
name_for (const char *output, const char *key)
{
  const char *slash = strrchr (output, G_DIR_SEPARATOR);
  const char *dot = strrchr (slash ? slash + 1 : output, '.');
  const gsize stem = dot ? (gsize) (dot - output) : strlen (output);

  return g_strdup_printf ("%.*s-%s%s", (int) stem, output, key, dot ? dot : "");
}

static Status
write_several (const char *verb, const Laid *laid, const char *output, Draw draw, gpointer data)
{
  if (!output || strcmp (output, "-") == 0)
    {
      complain (_ ("%s: %s has %u walls; pick one with --wall ID, or name the file with -o FILE."),
                verb, laid->path, laid->n);
      return STATUS_CALL;
    }
  if (g_file_test (output, G_FILE_TEST_IS_DIR))
    {
      complain (_ ("%s: -o needs a file name; “%s” is a folder."), verb, output);
      return STATUS_CALL;
    }
  for (guint i = 0; i < laid->n; i++)
    {
      g_autofree char *name = name_for (output, project_wall_at (laid->project, i)->key);
      const Status status = write_one (laid, i, name, draw, data);
      if (status != STATUS_DONE)
        return status;
      fprintf (stderr, "%s\n", name);
    }
  return STATUS_DONE;
}

Status
drawings_write (const char *verb, const Laid *laid, const char *output, Draw draw, gpointer data)
{
  Status written;

  if (laid->n == 0)
    {
      complain (_ ("%s: %s has no walls to draw."), verb, laid->path);
      return STATUS_CALL;
    }
  if (laid->n == 1)
    written = write_one (laid, laid->first, output, draw, data);
  else
    written = write_several (verb, laid, output, draw, data);
  return output_verdict (laid_verdict (laid), written);
}

Status
drawings_write_plan (const char *verb, const char *path, const char *output, DrawPlan draw,
                     gpointer data)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (Project) project = NULL;
  g_autoptr (GBytes) bytes = NULL;
  const Status status = laid_project (path, &project);
  gsize n;

  if (status != STATUS_DONE)
    return status;
  bytes = draw (project, data, &error);
  if (!bytes)
    {
      complain ("%s: %s: %s", verb, path, error->message);
      return STATUS_CALL;
    }
  const char *start = g_bytes_get_data (bytes, &n);
  return output_bytes (output, path, start, n);
}
