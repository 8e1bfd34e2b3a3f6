/* ink.h - inks the marks of a drawing with cairo: the one painter for screen, PDF, SVG and PNG */
#pragma once

#include <cairo.h>
#include <pango/pangocairo.h>

#include "paint/drawing.h"
#include "paint/theme.h"

typedef struct Ink Ink;

/* Keeps fonts and label layouts between drawings. `family`: NULL for the platform's sans. */
Ink *ink_new (const char *family);
void ink_free (Ink *ink);

/* Paints marks of `layer` (or of all: -1) and of `course` (or of all: -1), those that meet the clip
 * only. With `crisp`, horizontal and vertical edges are set on whole pixels, for the screen. */
void ink_draw (Ink *ink, cairo_t *cr, const Drawing *drawing, const View *view, Theme theme,
               int layer, int course, gboolean crisp);

/* Where a text mark goes and how large it is; all in sheet steps. */
typedef struct
{
  double x, y;          /* left, top */
  double width, height; /* of its line */
  double baseline;      /* below y */
  double size;          /* of the letters: the style's size, or the small one */
  gboolean bold;        /* as the style says; small letters never are */
} InkText;

/* FALSE when the mark is dropped: it is too wide for its `fit`, or the scale is too small. The
 * painter asks this too, so that other writers of the same drawing place text alike. */
gboolean ink_place_text (Ink *ink, const Drawing *drawing, const Mark *mark, const View *view,
                         Theme theme, InkText *out);
