#include "cli/output.h"

#include <errno.h>
#include <glib/gi18n.h>
#include <glib/gstdio.h>
#include <stdio.h>
#include <string.h>
#include <unistd.h>

#include "cli/arguments.h"
#include "store/store.h"

static gboolean
is_standard (const char *path)
{
  return !path || strcmp (path, "-") == 0;
}

static gboolean
same_file (const char *a, const char *b)
{
  GStatBuf one, other;

  return g_stat (a, &one) == 0 && g_stat (b, &other) == 0 && one.st_dev == other.st_dev
         && one.st_ino == other.st_ino;
}

static Status
to_standard (const char *bytes, gsize n)
{
  if (fwrite (bytes, 1, n, stdout) == n && fflush (stdout) == 0)
    return STATUS_DONE;
  complain (_ ("The result could not be written to standard output: %s."), g_strerror (errno));
  return STATUS_WRITE;
}

Status
output_bytes (const char *path, const char *input, const char *bytes, gsize n)
{
  g_autoptr (GError) error = NULL;

  if (is_standard (path))
    return to_standard (bytes, n);
  if (input && same_file (path, input))
    {
      complain (_ ("%s is the project itself; the result was not written over it."), path);
      return STATUS_CALL;
    }
  if (store_write_bytes (bytes, n, path, &error))
    return STATUS_DONE;
  complain ("%s", error->message);
  return STATUS_WRITE;
}

Status
output_text (const char *path, const char *input, const GString *text)
{
  return output_bytes (path, input, text->str, text->len);
}

Status
output_project (const char *path, const char *input, const Project *project)
{
  gsize n;
  g_autofree char *text = store_text (project, &n);

  return output_bytes (path, input, text, n);
}

/* Unicode's separators of lines and paragraphs break lines as well. */
static gboolean
breaks_lines (gunichar c)
{
  return g_unichar_iscntrl (c) || c == 0x2028 || c == 0x2029;
}

char *
output_line (const char *text)
{
  GString *line = g_string_new (NULL);

  for (const char *p = text; *p; p = g_utf8_next_char (p))
    {
      const gunichar c = g_utf8_get_char (p);
      g_string_append_unichar (line, breaks_lines (c) ? ' ' : c);
    }
  return g_string_free (line, FALSE);
}

gboolean
output_may_be_binary (const char *verb, const char *path)
{
  if (!is_standard (path) || !isatty (STDOUT_FILENO))
    return TRUE;
  complain (_ ("%s: where to? Name the file to write with -o FILE."), verb);
  return FALSE;
}

Status
output_verdict (Status verdict, Status written)
{
  return written == STATUS_DONE ? verdict : written;
}
