#include "cli/json.h"

#include <string.h>

Json
json_begin (GString *text)
{
  return (Json){ .text = text };
}

void
json_end (Json *json)
{
  g_assert (json->depth == 0);
  g_string_append_c (json->text, '\n');
}

static void
append_quoted (GString *text, const char *value)
{
  g_autofree char *valid = g_utf8_make_valid (value, -1);

  g_string_append_c (text, '"');
  for (const char *c = valid; *c; c++)
    if (*c == '"' || *c == '\\')
      g_string_append_printf (text, "\\%c", *c);
    else if ((guchar) *c < 0x20)
      g_string_append_printf (text, "\\u%04x", (guint) *c);
    else
      g_string_append_c (text, *c);
  g_string_append_c (text, '"');
}

/* What stands before a value: the comma of the one before, a line's end, the key. */
static void
begin_value (Json *json, const char *key, gboolean own_line)
{
  if (json->filled)
    g_string_append_c (json->text, ',');
  if (own_line)
    g_string_append_printf (json->text, "\n%*s", json->depth, "");
  else if (json->filled)
    g_string_append_c (json->text, ' ');
  json->filled = TRUE;
  if (!key)
    return;
  append_quoted (json->text, key);
  g_string_append (json->text, ": ");
}

static void
open_group (Json *json, const char *key, char bracket)
{
  begin_value (json, key, !key && bracket == '{' && json->depth > 0);
  g_string_append_c (json->text, bracket);
  json->depth++;
  json->filled = FALSE;
}

static void
close_group (Json *json, char bracket)
{
  g_assert (json->depth > 0);
  json->depth--;
  json->filled = TRUE;
  g_string_append_c (json->text, bracket);
}

void
json_object (Json *json, const char *key)
{
  open_group (json, key, '{');
}

void
json_object_end (Json *json)
{
  close_group (json, '}');
}

void
json_array (Json *json, const char *key)
{
  open_group (json, key, '[');
}

void
json_array_end (Json *json)
{
  close_group (json, ']');
}

void
json_string (Json *json, const char *key, const char *value)
{
  begin_value (json, key, FALSE);
  append_quoted (json->text, value);
}

void
json_int (Json *json, const char *key, gint64 value)
{
  begin_value (json, key, FALSE);
  g_string_append_printf (json->text, "%" G_GINT64_FORMAT, value);
}

void
json_number (Json *json, const char *key, double value, int decimals)
{
  g_autofree char *format = g_strdup_printf ("%%.%df", decimals);
  char digits[G_ASCII_DTOSTR_BUF_SIZE + 400];

  g_ascii_formatd (digits, sizeof digits, format, value);
  if (strchr (digits, '.'))
    {
      size_t n = strlen (digits);
      while (digits[n - 1] == '0')
        digits[--n] = '\0';
      if (digits[n - 1] == '.')
        digits[--n] = '\0';
    }
  begin_value (json, key, FALSE);
  g_string_append (json->text, strcmp (digits, "-0") == 0 ? "0" : digits);
}

void
json_length (Json *json, const char *key, Length value)
{
  g_autofree char *text = length_format (value);

  begin_value (json, key, FALSE);
  g_string_append (json->text, text);
}

void
json_bool (Json *json, const char *key, gboolean value)
{
  begin_value (json, key, FALSE);
  g_string_append (json->text, value ? "true" : "false");
}
