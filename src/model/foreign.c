/* foreign.c - what a file said in other namespaces */
#include "model/foreign.h"

Foreign
foreign_copy (const Foreign *foreign)
{
  return (Foreign){ g_strdup (foreign->attributes), g_strdup (foreign->elements) };
}

void
foreign_clear (Foreign *foreign)
{
  g_clear_pointer (&foreign->attributes, g_free);
  g_clear_pointer (&foreign->elements, g_free);
}

gboolean
foreign_equal (const Foreign *a, const Foreign *b)
{
  return g_strcmp0 (a->attributes, b->attributes) == 0 && g_strcmp0 (a->elements, b->elements) == 0;
}
