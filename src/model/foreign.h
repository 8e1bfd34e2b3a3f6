/* foreign.h - what a file said in other namespaces, carried along unread */
#pragma once

#include <glib.h>

/* Both strings are NULL where there is none. */
typedef struct
{
  char *attributes; /* serialised: xmlns:v="urn:v" v:colour="red" (namespaces declared inside) */
  char *elements;   /* serialised elements, one after another, each declaring its own namespaces */
} Foreign;

Foreign foreign_copy (const Foreign *foreign);
void foreign_clear (Foreign *foreign);
gboolean foreign_equal (const Foreign *a, const Foreign *b);
