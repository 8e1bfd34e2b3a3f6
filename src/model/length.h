/* length.h - lengths as whole multiples of 1/320 mm */
#pragma once

#include <glib.h>

/* A length, a place along a wall (from its left end) or a height (above the foundation), in
 * 1/320 mm. Tenths of a millimetre (32) and sixty-fourths of an inch (127) are both exact. */
typedef gint32 Length;

#define LENGTH_PER_MM 320
/* The longest length that a file or an edit may give: 1,000 m. Sums of six of them fit. */
#define LENGTH_MAX (1000000 * LENGTH_PER_MM)
#define LENGTH_MM(mm) ((Length) ((mm) *LENGTH_PER_MM))

/* The nearest length to `mm` millimetres, halves away from zero. `mm` is finite and within
 * LENGTH_MAX either side. */
Length length_from_mm (double mm);
double length_to_mm (Length length);

/* Reads a decimal number of millimetres ("1200", "62.5", "-3.125") as XML Schema's decimal writes
 * it: no exponent, no spaces, no locale. FALSE, and *out untouched, when it is none or is beyond
 * LENGTH_MAX either side. Rounded to the nearest length. */
gboolean length_parse (const char *text, Length *out);

/* Reads what a person types into a dimension: a number with point or comma, with or without one of
 * the units mm, cm, m, in, ", ft, ' ; bare numbers are millimetres; feet may go on with inches
 * (27' 6"). FALSE when it is not understood or beyond LENGTH_MAX. */
gboolean length_parse_typed (const char *text, Length *out);

/* The decimal of millimetres that is exactly the length ("1200", "62.5", "0.003125"): six places at
 * most, no trailing zero, a point in every locale. Newly allocated. */
char *length_format (Length length);

/* As a person reads it: millimetres rounded to a tenth, no trailing zero, in the caller's buffer,
 * which is returned. */
#define LENGTH_TEXT_SIZE 24
const char *length_text (Length length, char buffer[LENGTH_TEXT_SIZE]);
/* The same of how far something is off: "+6", "−3" with a true minus, "0". */
const char *length_off_text (Length off, char buffer[LENGTH_TEXT_SIZE]);
