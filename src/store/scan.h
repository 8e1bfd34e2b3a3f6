/* scan.h - what is refused before a parser sees it */
#pragma once

#include <glib.h>

/* A tag with more attributes than this is refused: parsers compare each with each. */
#define SCAN_MAX_ATTRIBUTES 200

/* The first of these, as a whole sentence, with its line from 1; NULL when there is none: too many
 * bytes, nothing in it, another encoding than UTF-8, bytes that are no UTF-8, NUL, another version
 * of XML than 1.0, a document type (so that there are no entities either), elements nested deeper
 * than STORE_MAX_DEPTH, a tag with too many attributes. What is not well-formed is left to the
 * parser. `text` is NUL-terminated behind its n bytes. */
char *scan_fault (const char *text, gsize n, int *line);
