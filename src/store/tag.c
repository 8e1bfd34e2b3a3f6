/* tag.c - one start tag: its attributes, each with the line it stands on */
#include "store/tag.h"

#include <glib/gi18n-lib.h>
#include <string.h>

static void
attribute_clear (gpointer data)
{
  Attribute *attribute = data;
  g_free (attribute->name);
  g_free (attribute->prefix);
  g_free (attribute->space);
  g_free (attribute->value);
}

void
tag_free (Tag *tag)
{
  if (tag == NULL)
    return;
  g_free (tag->name);
  g_free (tag->prefix);
  g_free (tag->space);
  g_array_unref (tag->attributes);
  g_ptr_array_unref (tag->namespaces);
  g_free (tag);
}

/* Moves the place on to `to` and gives the line there. */
static int
place_line (Place *place, const char *to)
{
  for (; place->from < to; place->from++)
    place->line += *place->from == '\n';
  return place->line;
}

/* The libxml2 parser knows the line it has come to, which is that of the tag's end. But a tag has
 * no
 * '<' in it, not even in a value, so that the last one is where it begins. */
static const char *
tag_start (const Place *place, const char *end)
{
  const char *at = end;
  while (at > place->text && *at != '<')
    at--;
  return at;
}

static gboolean
declares_namespace (const char *at)
{
  gsize n = strcspn (at, " \t\r\n=");
  return g_str_has_prefix (at, "xmlns") && (n == strlen ("xmlns") || at[strlen ("xmlns")] == ':');
}

/* The lines of the attributes, namespaces' declarations left out, in the order of the tag. The tag
 * is known to be well-formed: names, "=", values in quotation marks. */
static void
find_lines (Place *place, const char *start, const char *end, GArray *attributes)
{
  const char *at = start;
  for (guint i = 0; i < attributes->len && at < end;)
    {
      at += strcspn (at, " \t\r\n");
      at += strspn (at, " \t\r\n");
      int line = place_line (place, at);
      if (!declares_namespace (at))
        g_array_index (attributes, Attribute, i++).line = line;
      at += strcspn (at, "\"'");
      if (*at != '\0')
        at += 1 + strcspn (at + 1, *at == '"' ? "\"" : "'");
      at += *at != '\0';
    }
}

Tag *
tag_new (Place *place, const char *end, const guchar *name, const guchar *prefix,
         const guchar *space, int n_namespaces, const guchar **namespaces, int n_attributes,
         const guchar **attributes)
{
  Tag *tag = g_new0 (Tag, 1);
  const char *start = tag_start (place, end);
  tag->name = g_strdup ((const char *) name);
  tag->prefix = g_strdup ((const char *) prefix);
  tag->space = g_strdup ((const char *) space);
  tag->line = place_line (place, start);
  tag->namespaces = g_ptr_array_new_with_free_func (g_free);
  for (int i = 0; i < 2 * n_namespaces; i++)
    g_ptr_array_add (tag->namespaces,
                     g_strdup (namespaces[i] != NULL ? (const char *) namespaces[i] : ""));
  tag->attributes = g_array_new (FALSE, FALSE, sizeof (Attribute));
  g_array_set_clear_func (tag->attributes, attribute_clear);
  /* Five pointers each: name, prefix, namespace, the value's start and its end. */
  for (int i = 0; i < n_attributes; i++, attributes += 5)
    {
      const char *value = (const char *) attributes[3];
      Attribute attribute
          = { g_strdup ((const char *) attributes[0]), g_strdup ((const char *) attributes[1]),
              g_strdup ((const char *) attributes[2]),
              g_strndup (value, (gsize) ((const char *) attributes[4] - value)), tag->line };
      g_array_append_val (tag->attributes, attribute);
    }
  find_lines (place, start, end, tag->attributes);
  return tag;
}

gboolean
tag_is_ours (const Tag *tag)
{
  return g_strcmp0 (tag->space, STORE_NAMESPACE) == 0;
}

const Attribute *
tag_attribute (const Tag *tag, const char *name)
{
  for (guint i = 0; i < tag->attributes->len; i++)
    {
      const Attribute *attribute = &g_array_index (tag->attributes, Attribute, i);
      if (attribute->space == NULL && g_str_equal (attribute->name, name))
        return attribute;
    }
  return NULL;
}

static char *
read_attribute (const Attribute *attribute, const Element *element, void *target)
{
  if (attribute->space != NULL && !g_str_equal (attribute->space, STORE_NAMESPACE))
    return NULL;
  const Field *field = attribute->space == NULL ? element_field (element, attribute->name) : NULL;
  g_autofree char *fault
      = field != NULL ? field_parse (element, field, attribute->value, target) : NULL;
  g_autofree char *shown = field == NULL ? quoted (attribute->name) : NULL;
  if (shown != NULL)
    return g_strdup_printf (_ ("there is no attribute %s here"), shown);
  return fault != NULL ? g_strdup_printf (_ ("the %s %s"), field->name, fault) : NULL;
}

char *
tag_read (const Tag *tag, const Element *element, void *target, int *line)
{
  for (guint i = 0; i < tag->attributes->len; i++)
    {
      const Attribute *attribute = &g_array_index (tag->attributes, Attribute, i);
      char *fault = read_attribute (attribute, element, target);
      *line = attribute->line;
      if (fault != NULL)
        return fault;
    }
  *line = tag->line;
  for (guint i = 0; i < element->n_fields; i++)
    if (element->fields[i].required && tag_attribute (tag, element->fields[i].name) == NULL)
      return g_strdup_printf (_ ("the %s is missing"), element->fields[i].name);
  return NULL;
}

char *
tag_title (const Tag *tag)
{
  const Attribute *id = tag_attribute (tag, "id");
  if (id == NULL)
    return g_strdup (tag->name);
  g_autofree char *shown = quoted (id->value);
  return g_strdup_printf ("%s %s", tag->name, shown);
}
