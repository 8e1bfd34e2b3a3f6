/* carried.c - content of other namespaces on its way through: unread, but kept */
#include "store/carried.h"

#include <string.h>

#define XML_SPACE "http://www.w3.org/XML/1998/namespace"

/* A prefix and what it stands for, from an element of the given depth inwards. */
typedef struct
{
  char *prefix; /* "": none */
  char *space;  /* "": none */
  guint depth;
} Binding;

struct Carried
{
  GString *out;
  GPtrArray *names; /* char *: of the open elements, with their prefixes */
  GArray *bindings; /* Binding, those that hold */
  gboolean open;    /* the last start tag has no '>' yet */
};

static void
binding_clear (gpointer data)
{
  Binding *binding = data;
  g_free (binding->prefix);
  g_free (binding->space);
}

Carried *
carried_new (void)
{
  Carried *carried = g_new0 (Carried, 1);
  carried->out = g_string_new (NULL);
  carried->names = g_ptr_array_new_with_free_func (g_free);
  carried->bindings = g_array_new (FALSE, FALSE, sizeof (Binding));
  g_array_set_clear_func (carried->bindings, binding_clear);
  return carried;
}

void
carried_free (Carried *carried)
{
  if (carried == NULL)
    return;
  g_string_free (carried->out, TRUE);
  g_ptr_array_unref (carried->names);
  g_array_unref (carried->bindings);
  g_free (carried);
}

/* XML 1.0, production 2. */
static gboolean
can_stand (gunichar c)
{
  return c == '\t' || c == '\n' || c == '\r' || (c >= 0x20 && c <= 0xd7ff)
         || (c >= 0xe000 && c <= 0xfffd) || (c >= 0x10000 && c <= 0x10ffff);
}

/* What a character is written as; NULL: as itself. In a value a tab or a line's end would be read
 * back as a space, and anywhere a carriage return as a line's end. */
static const char *
escape_of (gunichar c, gboolean value)
{
  switch (c)
    {
    case '&':
      return "&amp;";
    case '<':
      return "&lt;";
    case '>':
      return "&gt;";
    case '\r':
      return "&#13;";
    case '"':
      return value ? "&quot;" : NULL;
    case '\t':
      return value ? "&#9;" : NULL;
    case '\n':
      return value ? "&#10;" : NULL;
    default:
      return can_stand (c) ? NULL : "\xef\xbf\xbd";
    }
}

void
carried_escape (GString *out, const char *text, gsize n, gboolean value)
{
  for (const char *at = text, *end = text + n; at < end;)
    {
      gunichar c = g_utf8_get_char_validated (at, end - at);
      gboolean valid = c < (gunichar) -2;
      const char *next = valid ? g_utf8_next_char (at) : at + 1;
      const char *escape = valid ? escape_of (c, value) : "\xef\xbf\xbd";
      if (escape != NULL)
        g_string_append (out, escape);
      else
        g_string_append_len (out, at, next - at);
      at = next;
    }
}

static void
append_name (GString *out, const char *prefix, const char *name)
{
  if (prefix != NULL)
    g_string_append_printf (out, "%s:", prefix);
  g_string_append (out, name);
}

static void
append_attribute (GString *out, const char *prefix, const char *name, const char *value)
{
  g_string_append_c (out, ' ');
  append_name (out, prefix, name);
  g_string_append (out, "=\"");
  carried_escape (out, value, strlen (value), TRUE);
  g_string_append_c (out, '"');
}

/* Writes the declaration of a namespace, unless it holds already. */
static void
declare (Carried *carried, const char *prefix, const char *space, guint depth)
{
  if (g_strcmp0 (space, XML_SPACE) == 0)
    return;
  Binding binding = { g_strdup (prefix ? prefix : ""), g_strdup (space ? space : ""), depth };
  for (guint i = carried->bindings->len; i > 0; i--)
    {
      const Binding *known = &g_array_index (carried->bindings, Binding, i - 1);
      if (!g_str_equal (known->prefix, binding.prefix))
        continue;
      if (!g_str_equal (known->space, binding.space))
        break;
      binding_clear (&binding);
      return;
    }
  gboolean named = *binding.prefix != '\0';
  append_attribute (carried->out, named ? "xmlns" : NULL, named ? binding.prefix : "xmlns",
                    binding.space);
  g_array_append_val (carried->bindings, binding);
}

static void
finish_tag (Carried *carried)
{
  if (carried->open)
    g_string_append_c (carried->out, '>');
  carried->open = FALSE;
}

static void
append_attributes (Carried *carried, const Tag *tag, gboolean foreign_only)
{
  for (guint i = 0; i < tag->attributes->len; i++)
    {
      const Attribute *attribute = &g_array_index (tag->attributes, Attribute, i);
      if (attribute->space == NULL && foreign_only)
        continue;
      if (attribute->space != NULL)
        declare (carried, attribute->prefix, attribute->space, carried->names->len);
      append_attribute (carried->out, attribute->prefix, attribute->name, attribute->value);
    }
}

void
carried_start (Carried *carried, const Tag *tag, const char *gap)
{
  finish_tag (carried);
  if (carried->names->len == 0 && carried->out->len > 0)
    g_string_append (carried->out, gap);
  GString *name = g_string_new (NULL);
  append_name (name, tag->prefix, tag->name);
  g_string_append_printf (carried->out, "<%s", name->str);
  g_ptr_array_add (carried->names, g_string_free (name, FALSE));
  declare (carried, tag->prefix, tag->space, carried->names->len);
  for (guint i = 0; i + 1 < tag->namespaces->len; i += 2)
    declare (carried, g_ptr_array_index (tag->namespaces, i),
             g_ptr_array_index (tag->namespaces, i + 1), carried->names->len);
  append_attributes (carried, tag, FALSE);
  carried->open = TRUE;
}

void
carried_text (Carried *carried, const char *text, gsize n)
{
  if (n > 0)
    finish_tag (carried);
  carried_escape (carried->out, text, n, FALSE);
}

void
carried_end (Carried *carried)
{
  guint depth = carried->names->len;
  if (carried->open)
    g_string_append (carried->out, "/>");
  else
    g_string_append_printf (carried->out, "</%s>",
                            (const char *) g_ptr_array_index (carried->names, depth - 1));
  carried->open = FALSE;
  g_ptr_array_remove_index (carried->names, depth - 1);
  GArray *bindings = carried->bindings;
  while (bindings->len > 0 && g_array_index (bindings, Binding, bindings->len - 1).depth >= depth)
    g_array_set_size (bindings, bindings->len - 1);
}

guint
carried_depth (const Carried *carried)
{
  return carried->names->len;
}

gsize
carried_size (const Carried *carried)
{
  return carried->out->len;
}

char *
carried_take (Carried *carried)
{
  char *text = carried->out->len > 0 ? g_strdup (carried->out->str) : NULL;
  g_string_truncate (carried->out, 0);
  return text;
}

char *
carried_attributes (const Tag *tag)
{
  Carried *carried = carried_new ();
  append_attributes (carried, tag, TRUE);
  char *text = carried->out->len > 0 ? g_strdup (carried->out->str + 1) : NULL;
  carried_free (carried);
  return text;
}
