/* plan-sketch.c - an outline while it is being typed */
#include "paint/plan-private.h"

#define MARGIN 44.0

static const int east_of[] = { 1, 0, -1, 0 }, north_of[] = { 0, 1, 0, -1 };

typedef struct
{
  gint64 x, y;
  Runs runs; /* of the side that begins there */
} Corner;

/* Corner: where each side begins, and at last where the outline ends; new. */
static GArray *
corners_of (const GArray *sides)
{
  GArray *corners = g_array_new (FALSE, FALSE, sizeof (Corner));
  Corner at = { 0, 0, RUNS_EAST };

  for (guint i = 0; i < sides->len; i++)
    {
      const OutlineSide *side = &g_array_index (sides, OutlineSide, i);

      g_array_append_val (corners, at);
      at.x += (gint64) side->length * east_of[at.runs];
      at.y += (gint64) side->length * north_of[at.runs];
      at.runs = (Runs) ((at.runs + (side->right ? 3 : 1)) % 4);
    }
  g_array_append_val (corners, at);
  return corners;
}

static MarkPoint
point_of (const Corner *corner)
{
  return (MarkPoint){ (double) corner->x / LENGTH_PER_MM, (double) corner->y / LENGTH_PER_MM, 0,
                      0 };
}

static void
add_floor (Drawing *drawing, const GArray *corners)
{
  const MarkLook look = mark_look (STYLE_PLAN_FLOOR, LAYER_GROUND);
  g_autofree MarkPoint *points = g_new (MarkPoint, corners->len);

  for (guint i = 0; i < corners->len; i++)
    points[i] = point_of (&g_array_index (corners, Corner, i));
  drawing_add (drawing, MARK_POLYGON, &look, points, corners->len);
}

static void
add_side (Drawing *drawing, const Corner *from, const Corner *to, Length length)
{
  static const float out_x[] = { 0, 1, 0, -1 }, out_y[] = { 1, 0, -1, 0 };
  static const float anchor_x[] = { 0.5f, 0, 0.5f, 1 }, anchor_y[] = { 0, 0.5f, 1, 0.5f };
  const MarkLook line = mark_look (STYLE_PLAN_OUTER, LAYER_OPENINGS);
  const MarkLook text = mark_look (STYLE_DIMENSION_TEXT, LAYER_DIMENSIONS);
  const MarkPoint a = point_of (from), b = point_of (to);
  MarkPoint at = { (a.x + b.x) / 2, (a.z + b.z) / 2, 5 * out_x[from->runs], 5 * out_y[from->runs] };
  char number[LENGTH_TEXT_SIZE];

  drawing_add_line (drawing, &line, a, b);
  drawing_add_text (drawing, &text, at, anchor_x[from->runs], anchor_y[from->runs],
                    length_text (length, number));
}

/* What is missing between the end and the beginning, the way that walls run. */
static void
add_gap (Drawing *drawing, const Corner *first, const Corner *last)
{
  const MarkLook line = mark_look (STYLE_BREACH_LINE, LAYER_OVERLAY);
  const MarkLook dot = mark_look (STYLE_HANDLE, LAYER_OVERLAY);
  const MarkLook sign = mark_look (STYLE_PLAN_WARNING, LAYER_OVERLAY);
  const gint64 miss = ABS (last->x - first->x) + ABS (last->y - first->y);
  g_autofree char *text = g_strdup_printf (" %.10g ", (double) miss / LENGTH_PER_MM);
  MarkPoint at;

  if (first->x == last->x && first->y == last->y)
    return;
  drawing_add_line (drawing, &line, point_of (last), point_of (first));
  drawing_add_circle (drawing, &dot, point_of (first), 4);
  drawing_add_circle (drawing, &dot, point_of (last), 4);
  at = point_of (last);
  at.dx = 9;
  at.dy = -9;
  drawing_add_text (drawing, &sign, at, 0, 1, text);
}

Drawing *
plan_sketch (const GArray *sides)
{
  Drawing *drawing = drawing_new ();
  g_autoptr (GArray) corners = corners_of (sides);

  if (sides->len >= 3)
    add_floor (drawing, corners);
  for (guint i = 0; i < sides->len; i++)
    add_side (drawing, &g_array_index (corners, Corner, i), &g_array_index (corners, Corner, i + 1),
              g_array_index (sides, OutlineSide, i).length);
  if (sides->len > 0)
    add_gap (drawing, &g_array_index (corners, Corner, 0),
             &g_array_index (corners, Corner, corners->len - 1));
  drawing_finish (drawing);
  return drawing;
}

View
plan_sketch_fit (const GArray *sides, double width, double height)
{
  g_autoptr (GArray) corners = corners_of (sides);
  double x0 = 0, y0 = 0, x1 = 1, y1 = 1, scale;

  for (guint i = 0; i < corners->len; i++)
    {
      const MarkPoint point = point_of (&g_array_index (corners, Corner, i));

      x0 = MIN (x0, point.x);
      y0 = MIN (y0, point.z);
      x1 = MAX (x1, point.x);
      y1 = MAX (y1, point.z);
    }
  scale = MAX (MIN ((width - 2 * MARGIN) / (x1 - x0), (height - MARGIN) / (y1 - y0)), 1e-6);
  return (View){ .scale = scale,
                 .ox = (width - (x1 + x0) * scale) / 2,
                 .oy = (height + (y1 + y0) * scale) / 2 };
}
