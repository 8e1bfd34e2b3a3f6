#include "paint/drawing.h"

#include <math.h>
#include <string.h>

#include "paint/theme.h"

gboolean
mark_ref_equal (const MarkRef *a, const MarkRef *b)
{
  return a->kind == b->kind && a->id == b->id && a->part == b->part && a->a == b->a && a->b == b->b;
}

Drawing *
drawing_new (void)
{
  Drawing *drawing = g_new0 (Drawing, 1);

  drawing->marks = g_array_new (FALSE, FALSE, sizeof (Mark));
  drawing->points = g_array_new (FALSE, FALSE, sizeof (MarkPoint));
  drawing->texts = g_string_new (NULL);
  g_string_append_c (drawing->texts, '\0');
  return drawing;
}

void
drawing_free (Drawing *drawing)
{
  if (!drawing)
    return;
  g_array_unref (drawing->marks);
  g_array_unref (drawing->points);
  g_string_free (drawing->texts, TRUE);
  g_free (drawing);
}

Mark *
drawing_add (Drawing *drawing, MarkKind kind, const MarkLook *look, const MarkPoint *points,
             guint n)
{
  const Mark mark = {
    .kind = kind,
    .style = look->style,
    .layer = look->layer,
    .course = look->course,
    .ref = look->ref,
    .first = drawing->points->len,
    .n_points = n,
    .fit = look->fit,
    .min_scale = look->min_scale,
    .max_scale = look->max_scale,
    .line_mm = look->line_mm,
  };

  g_array_append_vals (drawing->points, points, n);
  g_array_append_val (drawing->marks, mark);
  return &g_array_index (drawing->marks, Mark, drawing->marks->len - 1);
}

Mark *
drawing_add_box (Drawing *drawing, const MarkLook *look, MarkPoint a, MarkPoint c)
{
  const MarkPoint corners[] = {
    a,
    { c.x, a.z, c.dx, a.dy },
    c,
    { a.x, c.z, a.dx, c.dy },
  };

  return drawing_add (drawing, MARK_POLYGON, look, corners, G_N_ELEMENTS (corners));
}

Mark *
drawing_add_line (Drawing *drawing, const MarkLook *look, MarkPoint a, MarkPoint b)
{
  const MarkPoint ends[] = { a, b };

  return drawing_add (drawing, MARK_LINE, look, ends, G_N_ELEMENTS (ends));
}

Mark *
drawing_add_circle (Drawing *drawing, const MarkLook *look, MarkPoint at, float radius)
{
  Mark *mark = drawing_add (drawing, MARK_CIRCLE, look, &at, 1);

  mark->radius = radius;
  return mark;
}

Mark *
drawing_add_text (Drawing *drawing, const MarkLook *look, MarkPoint at, float anchor_x,
                  float anchor_y, const char *text)
{
  Mark *mark = drawing_add (drawing, MARK_TEXT, look, &at, 1);
  g_autofree char *valid = g_utf8_make_valid (text, -1);

  mark->anchor_x = anchor_x;
  mark->anchor_y = anchor_y;
  if (*valid)
    {
      mark->text = (guint32) drawing->texts->len;
      g_string_append_len (drawing->texts, valid, (gssize) strlen (valid) + 1);
    }
  return mark;
}

gboolean
mark_is_at_scale (const Mark *mark, double scale)
{
  return scale >= mark->min_scale && (!(mark->max_scale > 0) || scale < mark->max_scale);
}

void
drawing_finish (Drawing *drawing)
{
  GArray *sorted = g_array_sized_new (FALSE, FALSE, sizeof (Mark), drawing->marks->len);

  for (int layer = 0; layer < N_LAYERS; layer++)
    for (guint i = 0; i < drawing->marks->len; i++)
      if (drawing_mark (drawing, i)->layer == layer)
        g_array_append_vals (sorted, drawing_mark (drawing, i), 1);
  g_array_unref (drawing->marks);
  drawing->marks = sorted;
}

void
view_to_sheet (const View *view, const MarkPoint *point, double *sx, double *sy)
{
  *sx = view->ox + point->x * view->scale + (double) point->dx;
  *sy = view->oy - point->z * view->scale + (double) point->dy;
}

void
view_to_wall (const View *view, double sx, double sy, double *x, double *z)
{
  *x = (sx - view->ox) / view->scale;
  *z = (view->oy - sy) / view->scale;
}

View
view_zoomed (const View *view, double factor, double sx, double sy)
{
  return (View){
    .scale = view->scale * factor,
    .ox = sx - (sx - view->ox) * factor,
    .oy = sy - (sy - view->oy) * factor,
  };
}

/* A place on the sheet, and how near counts as on it. */
typedef struct
{
  const Drawing *drawing;
  const View *view;
  double x, y, reach;
} Probe;

static void
probe_point (const Probe *probe, const Mark *mark, guint i, double *x, double *y)
{
  view_to_sheet (probe->view, drawing_points (probe->drawing, mark) + i, x, y);
}

/* Crossing number: a ray to the right meets an inside's outline an odd number of times. */
static gboolean
probe_in_polygon (const Probe *probe, const Mark *mark)
{
  gboolean inside = FALSE;
  double ax, ay, bx, by;

  probe_point (probe, mark, mark->n_points - 1, &ax, &ay);
  for (guint i = 0; i < mark->n_points; i++, ax = bx, ay = by)
    {
      probe_point (probe, mark, i, &bx, &by);
      if ((ay > probe->y) != (by > probe->y)
          && probe->x < ax + (probe->y - ay) / (by - ay) * (bx - ax))
        inside = !inside;
    }
  return inside;
}

static double
distance_to_segment (double px, double py, double ax, double ay, double bx, double by)
{
  const double dx = bx - ax, dy = by - ay, square = dx * dx + dy * dy;
  const double t = square > 0 ? ((px - ax) * dx + (py - ay) * dy) / square : 0;
  const double on = CLAMP (t, 0, 1);

  return hypot (px - ax - on * dx, py - ay - on * dy);
}

static gboolean
probe_near_line (const Probe *probe, const Mark *mark)
{
  double ax, ay, bx, by;

  probe_point (probe, mark, 0, &ax, &ay);
  for (guint i = 1; i < mark->n_points; i++, ax = bx, ay = by)
    {
      probe_point (probe, mark, i, &bx, &by);
      if (distance_to_segment (probe->x, probe->y, ax, ay, bx, by) <= probe->reach)
        return TRUE;
    }
  return FALSE;
}

static gboolean
probe_near_circle (const Probe *probe, const Mark *mark)
{
  double x, y;

  probe_point (probe, mark, 0, &x, &y);
  return hypot (probe->x - x, probe->y - y) <= (double) mark->radius + probe->reach;
}

/* By the average width of figures, 0.6 of the size: enough to be hit with a pointer, and needs no
 * font. */
static gboolean
probe_on_text (const Probe *probe, const Mark *mark)
{
  const StyleRow *row = theme_row (THEME_LIGHT, (Style) mark->style);
  const char *text = drawing_text (probe->drawing, mark);
  const double width = 0.6 * row->text_size * (double) g_utf8_strlen (text, -1);
  const double height = 1.3 * row->text_size;
  double x, y;

  probe_point (probe, mark, 0, &x, &y);
  x -= width * (double) mark->anchor_x;
  y -= height * (double) mark->anchor_y;
  return probe->x >= x - probe->reach && probe->x <= x + width + probe->reach
         && probe->y >= y - probe->reach && probe->y <= y + height + probe->reach;
}

static gboolean
probe_hits (const Probe *probe, const Mark *mark)
{
  switch (mark->kind)
    {
    case MARK_POLYGON:
      return probe_in_polygon (probe, mark);
    case MARK_LINE:
      return probe_near_line (probe, mark);
    case MARK_CIRCLE:
      return probe_near_circle (probe, mark);
    case MARK_TEXT:
      return probe_on_text (probe, mark);
    }
  return FALSE;
}

gboolean
drawing_pick (const Drawing *drawing, const View *view, double sx, double sy, double reach,
              MarkRef *out)
{
  const Probe probe = { drawing, view, sx, sy, reach };

  for (guint i = drawing->marks->len; i-- > 0;)
    {
      const Mark *mark = drawing_mark (drawing, i);
      if (mark->ref.kind == REF_NONE || !mark_is_at_scale (mark, view->scale) || mark->n_points == 0
          || !probe_hits (&probe, mark))
        continue;
      *out = mark->ref;
      return TRUE;
    }
  return FALSE;
}
