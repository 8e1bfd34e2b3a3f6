/* carried.h - content of other namespaces on its way through: unread, but kept
 *
 * Written anew rather than copied, so that each piece says its own namespaces and may be put
 * anywhere: see model/foreign.h. Texts, the order of things and all values stay; how white space
 * within tags was set, comments and processing instructions do not. */
#pragma once

#include "store/tag.h"

/* Elements being gathered. */
typedef struct Carried Carried;

Carried *carried_new (void);
void carried_free (Carried *carried);

/* `gap` goes before an element that is not the first; it is white space. */
void carried_start (Carried *carried, const Tag *tag, const char *gap);
void carried_text (Carried *carried, const char *text, gsize n);
void carried_end (Carried *carried);
/* How many elements are open. */
guint carried_depth (const Carried *carried);
/* Bytes gathered so far. */
gsize carried_size (const Carried *carried);
/* What was gathered; NULL when nothing was. The caller's; the next begins with nothing. */
char *carried_take (Carried *carried);

/* The foreign attributes of one of our own elements, as model/foreign.h has them; or NULL. */
char *carried_attributes (const Tag *tag);

/* Appends `text` as it stands in XML: in an attribute's value, or between tags. A character that
 * XML cannot hold becomes U+FFFD. */
void carried_escape (GString *out, const char *text, gsize n, gboolean value);
