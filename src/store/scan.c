/* scan.c - what is refused before a parser sees it */
#include "store/scan.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "store/store.h"

static int
line_of (const char *text, const char *at)
{
  int line = 1;
  for (const char *c = text; c < at; c++)
    line += *c == '\n';
  return line;
}

static gboolean
starts (const char *text, gsize n, const char *mark, gsize length)
{
  return n >= length && memcmp (text, mark, length) == 0;
}

/* The marks and first characters of UTF-16 and UTF-32: a NUL beside the first '<', or byte order
 * marks. */
static gboolean
is_wide (const char *text, gsize n)
{
  return starts (text, n, "\xff\xfe", 2) || starts (text, n, "\xfe\xff", 2)
         || starts (text, n, "<\0", 2) || starts (text, n, "\0<", 2)
         || starts (text, n, "\0\0\0<", 4);
}

static char *
encoding_fault (const char *text, gsize n, int *line)
{
  if (is_wide (text, n))
    return g_strdup (_ ("it is written in UTF-16 or UTF-32; a project is written in UTF-8."));
  const char *end;
  if (g_utf8_validate_len (text, n, &end))
    return NULL;
  *line = line_of (text, end);
  if (*end == '\0')
    return g_strdup (_ ("there is a NUL byte; a project is plain text."));
  return g_strdup_printf (_ ("the byte 0x%02x is no UTF-8; a project is written in UTF-8."),
                          (guchar) *end);
}

/* The value of a word of the XML declaration, or NULL. */
static char *
declared (const char *declaration, const char *word)
{
  const char *at = strstr (declaration, word);
  if (at == NULL)
    return NULL;
  at += strcspn (at, "\"'");
  if (*at == '\0')
    return NULL;
  return g_strndup (at + 1, strcspn (at + 1, *at == '"' ? "\"" : "'"));
}

static char *
declaration_fault (const char *text)
{
  text += g_str_has_prefix (text, "\xef\xbb\xbf") ? 3 : 0;
  const char *end = g_str_has_prefix (text, "<?xml ") ? strstr (text, "?>") : NULL;
  if (end == NULL)
    return NULL;
  g_autofree char *declaration = g_strndup (text, (gsize) (end - text));
  g_autofree char *version = declared (declaration, " version");
  g_autofree char *encoding = declared (declaration, " encoding");
  if (version != NULL && !g_str_equal (version, "1.0"))
    return g_strdup (_ ("it is written in another version of XML than 1.0."));
  if (encoding != NULL && g_ascii_strcasecmp (encoding, "UTF-8") != 0)
    return g_strdup (_ ("it says that it is written in another encoding than UTF-8."));
  return NULL;
}

/* Behind the next `mark`, or the end of the text. Goes by the mark's last character, which is rare.
 */
static const char *
behind (const char *at, const char *mark)
{
  gsize before = strlen (mark) - 1;
  const char *from = at;
  for (at = strchr (at, mark[before]); at != NULL; at = strchr (at + 1, mark[before]))
    if ((gsize) (at - from) >= before && memcmp (at - before, mark, before) == 0)
      return at + 1;
  return from + strlen (from);
}

/* Behind the tag that begins at `at`; counts its values and says whether it closes itself. */
static const char *
behind_tag (const char *at, int *values, gboolean *closed)
{
  *values = 0;
  while (*at != '\0' && *at != '>')
    {
      if (*at == '"' || *at == '\'')
        {
          char mark[2] = { *at, '\0' };
          at = behind (at + 1, mark);
          ++*values;
        }
      else
        at++;
    }
  *closed = at[-1] == '/';
  return at + (*at == '>');
}

static char *
tags_fault (const char *text, int *line)
{
  int depth = 0;
  for (const char *at = strchr (text, '<'), *next; at != NULL; at = strchr (next, '<'))
    {
      int values = 0;
      gboolean closed = TRUE;
      if (g_str_has_prefix (at, "<!--"))
        next = behind (at + strlen ("<!--"), "-->");
      else if (g_str_has_prefix (at, "<![CDATA["))
        next = behind (at, "]]>");
      else if (at[1] == '?')
        next = behind (at, "?>");
      else
        next = behind_tag (at + 1, &values, &closed);
      depth += closed ? 0 : at[1] == '/' ? -1 : 1;
      *line = 0;
      if (at[1] == '!' && at[2] != '-' && at[2] != '[')
        return *line = line_of (text, at),
               g_strdup (_ ("it has a document type (DOCTYPE); a project has none."));
      if (depth > STORE_MAX_DEPTH)
        return *line = line_of (text, at),
               g_strdup_printf (_ ("elements are nested more than %d deep."), STORE_MAX_DEPTH);
      if (values > SCAN_MAX_ATTRIBUTES)
        return *line = line_of (text, at),
               g_strdup_printf (_ ("an element has more than %d attributes."), SCAN_MAX_ATTRIBUTES);
    }
  return NULL;
}

char *
scan_fault (const char *text, gsize n, int *line)
{
  *line = 1;
  if (n > STORE_MAX_BYTES)
    return g_strdup_printf (_ ("it is larger than %d MiB; no project is."),
                            STORE_MAX_BYTES / (1024 * 1024));
  if (n == 0)
    return g_strdup (_ ("it is empty."));
  char *fault = encoding_fault (text, n, line);
  if (fault == NULL)
    fault = declaration_fault (text);
  return fault != NULL ? fault : tags_fault (text, line);
}
