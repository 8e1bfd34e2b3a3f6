#include "paint/hatch.h"

#include <math.h>
#include <stdlib.h>

/* Sheet steps between hatch lines, measured along x; between dots. */
#define LINE_PITCH 7.0
#define DOT_PITCH 5.0
/* Of a broken line, measured upright. */
#define DASH 3.5
#define DASH_PITCH 6.0
/* Of one line with one outline; a piece has eight corners at most. */
#define MAX_CROSSINGS 64

typedef struct
{
  const SheetPoint *corners;
  guint n;
  SheetPoint origin;
  SheetBox box; /* of the polygon, cut to what is seen */
  GArray *strokes;
} Field;

static SheetBox
box_of (const SheetPoint *corners, guint n, const SheetBox *within)
{
  SheetBox box = { corners[0].x, corners[0].y, corners[0].x, corners[0].y };

  for (guint i = 1; i < n; i++)
    {
      box.x0 = MIN (box.x0, corners[i].x);
      box.x1 = MAX (box.x1, corners[i].x);
      box.y0 = MIN (box.y0, corners[i].y);
      box.y1 = MAX (box.y1, corners[i].y);
    }
  return (SheetBox){ MAX (box.x0, within->x0), MAX (box.y0, within->y0), MIN (box.x1, within->x1),
                     MIN (box.y1, within->y1) };
}

static int
compare_doubles (const void *a, const void *b)
{
  const double difference = *(const double *) a - *(const double *) b;

  return difference < 0 ? -1 : difference > 0;
}

/* Where the line x + slope * y = c meets the outline, as y, sorted. */
static guint
crossings (const Field *field, double slope, double c, double *ys)
{
  guint n = 0;
  SheetPoint a = field->corners[field->n - 1];

  for (guint i = 0; i < field->n; a = field->corners[i++])
    {
      const SheetPoint b = field->corners[i];
      const double at_a = a.x + slope * a.y - c, at_b = b.x + slope * b.y - c;
      if ((at_a > 0) != (at_b > 0) && n < MAX_CROSSINGS)
        ys[n++] = a.y + (b.y - a.y) * at_a / (at_a - at_b);
    }
  qsort (ys, n, sizeof *ys, compare_doubles);
  return n;
}

static void
add_stroke (const Field *field, double slope, double c, double from, double to)
{
  const HatchStroke stroke = { { c - slope * from, from }, { c - slope * to, to } };

  if (to > from)
    g_array_append_val (field->strokes, stroke);
}

/* Its dashes hang on the origin. */
static void
add_dashes (const Field *field, double slope, double c, double from, double to)
{
  for (double k = floor ((from - field->origin.y) / DASH_PITCH);
       field->origin.y + k * DASH_PITCH < to; k++)
    {
      const double start = field->origin.y + k * DASH_PITCH;

      add_stroke (field, slope, c, MAX (from, start), MIN (to, start + DASH));
    }
}

static void
add_line (const Field *field, double slope, double c, gboolean broken)
{
  double ys[MAX_CROSSINGS];
  const guint n = crossings (field, slope, c, ys);

  for (guint i = 0; i + 1 < n; i += 2)
    {
      const double from = MAX (ys[i], field->box.y0), to = MIN (ys[i + 1], field->box.y1);

      if (broken)
        add_dashes (field, slope, c, from, to);
      else
        add_stroke (field, slope, c, from, to);
    }
}

/* Lines at 45 degrees, rising to the right with slope 1, falling with -1; every second one broken
 * or none. */
static void
add_lines (const Field *field, double slope, gboolean broken)
{
  const double base = field->origin.x + slope * field->origin.y;
  const double low = field->box.x0 + MIN (slope * field->box.y0, slope * field->box.y1);
  const double high = field->box.x1 + MAX (slope * field->box.y0, slope * field->box.y1);

  for (double k = ceil ((low - base) / LINE_PITCH); base + k * LINE_PITCH < high; k++)
    add_line (field, slope, base + k * LINE_PITCH, broken && fmod (fabs (k), 2) > 0.5);
}

static gboolean
contains (const Field *field, double x, double y)
{
  gboolean inside = FALSE;
  SheetPoint a = field->corners[field->n - 1];

  for (guint i = 0; i < field->n; a = field->corners[i++])
    {
      const SheetPoint b = field->corners[i];
      if ((a.y > y) != (b.y > y) && x < a.x + (y - a.y) / (b.y - a.y) * (b.x - a.x))
        inside = !inside;
    }
  return inside;
}

static void
add_dot_row (const Field *field, double row)
{
  const double y = field->origin.y + row * DOT_PITCH / 2;
  const double start = field->origin.x + (fmod (fabs (row), 2) > 0.5 ? DOT_PITCH / 2 : 0);

  for (double k = ceil ((field->box.x0 - start) / DOT_PITCH);
       start + k * DOT_PITCH <= field->box.x1; k++)
    {
      const double x = start + k * DOT_PITCH;
      const HatchStroke dot = { { x, y }, { x, y } };
      if (contains (field, x, y))
        g_array_append_val (field->strokes, dot);
    }
}

static void
add_dots (const Field *field)
{
  const double step = DOT_PITCH / 2;

  for (double row = ceil ((field->box.y0 - field->origin.y) / step);
       field->origin.y + row * step <= field->box.y1; row++)
    add_dot_row (field, row);
}

void
hatch_polygon (Hatch hatch, const SheetPoint *corners, guint n, SheetPoint origin,
               const SheetBox *within, GArray *strokes)
{
  if (n < 3 || hatch == HATCH_NONE)
    return;
  const Field field = { corners, n, origin, box_of (corners, n, within), strokes };
  if (field.box.x0 >= field.box.x1 || field.box.y0 >= field.box.y1)
    return;
  if (hatch == HATCH_DOTS)
    add_dots (&field);
  else
    add_lines (&field, 1, hatch == HATCH_CONCRETE);
  if (hatch == HATCH_CROSS)
    add_lines (&field, -1, FALSE);
}
