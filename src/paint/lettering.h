/* lettering.h - labels laid out once and kept: measuring text is what costs a painter most */
#pragma once

#include <pango/pangocairo.h>

typedef struct Lettering Lettering;

/* One line of text in one size and weight; the sizes are sheet steps. */
typedef struct
{
  PangoLayout *layout;
  double width, height, baseline;
} Label;

/* `family`: NULL for the platform's sans. */
Lettering *lettering_new (const char *family);
void lettering_free (Lettering *lettering);

/* Layouts are made for one size of a step in device pixels; call before drawing on `cr`. */
void lettering_set_target (Lettering *lettering, cairo_t *cr);
/* Borrowed, good until the next call. */
const Label *lettering_label (Lettering *lettering, const char *text, double size, gboolean bold);
