/* schema.h - what data/schema/halfbond.rng says of a text, by libxml2 */
#pragma once

#include <glib.h>

/* The first complaint; NULL when the text is valid. Newly allocated. */
char *schema_fault (const char *text, gsize n);
