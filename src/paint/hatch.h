/* hatch.h - the strokes of a hatch within a polygon, so that every painter draws the same lines
 *
 * Strokes are clipped to the polygon by arithmetic, not by the painter: that is fast on the screen
 * and stays plain lines in PDF and SVG. */
#pragma once

#include "paint/theme.h"

/* On the sheet: steps, right and down. */
typedef struct
{
  double x, y;
} SheetPoint;

/* A dot where both ends are one place. */
typedef struct
{
  SheetPoint from, to;
} HatchStroke;

typedef struct
{
  double x0, y0, x1, y1;
} SheetBox;

/* Steps. On paper hatches are finer, so that labels stand out in black alone. */
static inline double
hatch_width (Theme theme)
{
  return theme == THEME_PAPER ? 0.6 : 1.0;
}
#define HATCH_DOT_RADIUS 0.6

/* Appends HatchStroke to `strokes`. The hatch hangs on `origin`, so that it moves with the wall;
 * nothing is added outside `within`. */
void hatch_polygon (Hatch hatch, const SheetPoint *corners, guint n, SheetPoint origin,
                    const SheetBox *within, GArray *strokes);
