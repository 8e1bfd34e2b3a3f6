#include "paint/ink.h"

#include <math.h>

#include "paint/hatch.h"
#include "paint/lettering.h"

/* Room that a label keeps to the edges of what it stands in, both sides together, steps. */
#define FIT_ROOM 2.0
/* Coordinates are cut off this far outside of what is seen: cairo counts to eight million. */
#define FAR_OUT 4000.0

struct Ink
{
  Lettering *lettering;
  GArray *corners; /* SheetPoint, of the mark being inked */
  GArray *strokes; /* HatchStroke, of the run being inked */
};

/* What holds for one call of ink_draw(). */
typedef struct
{
  Ink *ink;
  cairo_t *cr;
  const Drawing *drawing;
  const View *view;
  Theme theme;
  gboolean crisp;
  SheetBox clip;
} Brush;

Ink *
ink_new (const char *family)
{
  Ink *ink = g_new0 (Ink, 1);

  ink->lettering = lettering_new (family);
  ink->corners = g_array_new (FALSE, FALSE, sizeof (SheetPoint));
  ink->strokes = g_array_new (FALSE, FALSE, sizeof (HatchStroke));
  return ink;
}

void
ink_free (Ink *ink)
{
  if (!ink)
    return;
  lettering_free (ink->lettering);
  g_array_unref (ink->corners);
  g_array_unref (ink->strokes);
  g_free (ink);
}

static void
set_colour (cairo_t *cr, const Rgba *colour)
{
  cairo_set_source_rgba (cr, colour->r, colour->g, colour->b, colour->a);
}

static const StyleRow *
row_of (const Brush *brush, const Mark *mark)
{
  return theme_row (brush->theme, (Style) mark->style);
}

/* Lines */

static double
line_width (const Brush *brush, const Mark *mark)
{
  const double width = MAX (row_of (brush, mark)->line_width, mark->line_mm * brush->view->scale);

  return brush->crisp ? MAX (1, floor (width + 0.25)) : width;
}

/* Onto whole steps; onto their middles where a line of an odd width is to fill them. */
static double
snapped (double place, double half)
{
  return floor (place - half + 0.5) + half;
}

static double
snap_half (const Brush *brush, const Mark *mark)
{
  if (row_of (brush, mark)->line.a <= 0)
    return 0;
  return fmod (line_width (brush, mark), 2) > 0.5 ? 0.5 : 0;
}

static gboolean
is_upright (const SheetPoint *corners, guint n, gboolean closed)
{
  for (guint i = closed ? 0 : 1; i < n; i++)
    {
      const SheetPoint *a = &corners[i ? i - 1 : n - 1], *b = &corners[i];
      if (fabs (a->x - b->x) > 1e-6 && fabs (a->y - b->y) > 1e-6)
        return FALSE;
    }
  return TRUE;
}

static void
set_upright (const Brush *brush, const Mark *mark, SheetPoint *corners, guint n)
{
  const double half = snap_half (brush, mark);

  for (guint i = 0; i < n; i++)
    {
      corners[i].x = CLAMP (corners[i].x, brush->clip.x0 - FAR_OUT, brush->clip.x1 + FAR_OUT);
      corners[i].y = CLAMP (corners[i].y, brush->clip.y0 - FAR_OUT, brush->clip.y1 + FAR_OUT);
      if (!brush->crisp)
        continue;
      corners[i].x = snapped (corners[i].x, half);
      corners[i].y = snapped (corners[i].y, half);
    }
}

/* The corners of a mark on the sheet, in ink->corners; TRUE when all its edges are upright or
 * level. */
static gboolean
place_corners (const Brush *brush, const Mark *mark)
{
  GArray *corners = brush->ink->corners;

  g_array_set_size (corners, mark->n_points);
  SheetPoint *places = (SheetPoint *) (void *) corners->data;
  for (guint i = 0; i < mark->n_points; i++)
    view_to_sheet (brush->view, drawing_points (brush->drawing, mark) + i, &places[i].x,
                   &places[i].y);
  const gboolean upright = is_upright (places, mark->n_points, mark->kind == MARK_POLYGON);
  if (upright && mark->kind != MARK_CIRCLE)
    set_upright (brush, mark, places, mark->n_points);
  return upright;
}

static void
trace (const Brush *brush, gboolean closed)
{
  const GArray *corners = brush->ink->corners;

  for (guint i = 0; i < corners->len; i++)
    {
      const SheetPoint *place = &g_array_index (corners, SheetPoint, i);
      if (i == 0)
        cairo_move_to (brush->cr, place->x, place->y);
      else
        cairo_line_to (brush->cr, place->x, place->y);
    }
  if (closed)
    cairo_close_path (brush->cr);
}

static void
stroke (const Brush *brush, const Mark *mark)
{
  const StyleRow *row = row_of (brush, mark);

  cairo_set_line_width (brush->cr, line_width (brush, mark));
  if (row->dash > 0)
    cairo_set_dash (brush->cr, &row->dash, 1, 0);
  set_colour (brush->cr, &row->line);
  cairo_stroke (brush->cr);
  if (row->dash > 0)
    cairo_set_dash (brush->cr, NULL, 0, 0);
}

/* Fills */

static void
add_hatch (const Brush *brush, const StyleRow *row)
{
  const GArray *corners = brush->ink->corners;
  const SheetPoint origin = { brush->view->ox, brush->view->oy };

  hatch_polygon (row->hatch, (const SheetPoint *) (const void *) corners->data, corners->len,
                 origin, &brush->clip, brush->ink->strokes);
}

static void
ink_dots (const Brush *brush)
{
  for (guint i = 0; i < brush->ink->strokes->len; i++)
    {
      const HatchStroke *dot = &g_array_index (brush->ink->strokes, HatchStroke, i);
      cairo_rectangle (brush->cr, dot->from.x - HATCH_DOT_RADIUS, dot->from.y - HATCH_DOT_RADIUS,
                       2 * HATCH_DOT_RADIUS, 2 * HATCH_DOT_RADIUS);
    }
  cairo_fill (brush->cr);
}

static void
ink_strokes (const Brush *brush)
{
  for (guint i = 0; i < brush->ink->strokes->len; i++)
    {
      const HatchStroke *line = &g_array_index (brush->ink->strokes, HatchStroke, i);
      cairo_move_to (brush->cr, line->from.x, line->from.y);
      cairo_line_to (brush->cr, line->to.x, line->to.y);
    }
  cairo_set_line_width (brush->cr, hatch_width (brush->theme));
  cairo_stroke (brush->cr);
}

static void
ink_hatch (const Brush *brush, const StyleRow *row)
{
  if (brush->ink->strokes->len > 0)
    {
      set_colour (brush->cr, &row->hatch_ink);
      if (row->hatch == HATCH_DOTS)
        ink_dots (brush);
      else
        ink_strokes (brush);
    }
  g_array_set_size (brush->ink->strokes, 0);
}

static void
set_fill (const Brush *brush, const StyleRow *row)
{
  double x0, y0, x1, y1;

  if (row->fill_end.a <= 0)
    {
      set_colour (brush->cr, &row->fill);
      return;
    }
  cairo_path_extents (brush->cr, &x0, &y0, &x1, &y1);
  cairo_pattern_t *wash = cairo_pattern_create_linear (0, y0, 0, y1);
  cairo_pattern_add_color_stop_rgba (wash, 0, row->fill.r, row->fill.g, row->fill.b, row->fill.a);
  cairo_pattern_add_color_stop_rgba (wash, 1, row->fill_end.r, row->fill_end.g, row->fill_end.b,
                                     row->fill_end.a);
  cairo_set_source (brush->cr, wash);
  cairo_pattern_destroy (wash);
}

static void
fill (const Brush *brush, const StyleRow *row)
{
  set_fill (brush, row);
  cairo_fill_preserve (brush->cr);
}

/* Inks the path that a run of marks has left: fill, hatch, then line. */
static void
ink_path (const Brush *brush, const Mark *mark)
{
  const StyleRow *row = row_of (brush, mark);
  cairo_path_t *kept = NULL;

  if (mark->kind != MARK_LINE && row->fill.a > 0)
    fill (brush, row);
  if (brush->ink->strokes->len > 0)
    {
      kept = cairo_copy_path (brush->cr);
      cairo_new_path (brush->cr);
      ink_hatch (brush, row);
      cairo_append_path (brush->cr, kept);
      cairo_path_destroy (kept);
    }
  if (row->line.a > 0 && row->line_width > 0)
    stroke (brush, mark);
  cairo_new_path (brush->cr);
}

/* Text */

gboolean
ink_place_text (Ink *ink, const Drawing *drawing, const Mark *mark, const View *view, Theme theme,
                InkText *out)
{
  const StyleRow *row = theme_row (theme, (Style) mark->style);
  const char *text = drawing_text (drawing, mark);
  const double room = mark->fit > 0 ? mark->fit * view->scale - FIT_ROOM : G_MAXDOUBLE;
  double size = row->text_size, x, y;

  if (mark->kind != MARK_TEXT || size <= 0 || !*text || !mark_is_at_scale (mark, view->scale))
    return FALSE;
  const Label *label = lettering_label (ink->lettering, text, size, row->bold);
  if (label->width > room && row->text_small > 0)
    label = lettering_label (ink->lettering, text, size = row->text_small, FALSE);
  if (label->width > room)
    return FALSE;
  view_to_sheet (view, drawing_points (drawing, mark), &x, &y);
  *out = (InkText){
    .x = x - label->width * (double) mark->anchor_x,
    .y = y - label->height * (double) mark->anchor_y,
    .width = label->width,
    .height = label->height,
    .baseline = label->baseline,
    .size = size,
    .bold = row->bold && !(size < row->text_size),
  };
  return TRUE;
}

static void
ink_plate (const Brush *brush, const StyleRow *row, const InkText *place)
{
  cairo_rectangle (brush->cr, floor (place->x) - 3, floor (place->y), ceil (place->width) + 6,
                   ceil (place->height));
  set_colour (brush->cr, &row->fill);
  cairo_fill (brush->cr);
}

static void
ink_text (const Brush *brush, const Mark *mark)
{
  const StyleRow *row = row_of (brush, mark);
  const char *text = drawing_text (brush->drawing, mark);
  InkText place;

  if (!ink_place_text (brush->ink, brush->drawing, mark, brush->view, brush->theme, &place)
      || place.x > brush->clip.x1 || place.x + place.width < brush->clip.x0)
    return;
  const Label *label = lettering_label (brush->ink->lettering, text, place.size, place.bold);
  if (row->fill.a > 0)
    ink_plate (brush, row, &place);
  const double top
      = brush->crisp ? floor (place.y + place.baseline + 0.5) - place.baseline : place.y;
  set_colour (brush->cr, &row->line);
  cairo_move_to (brush->cr, place.x, top);
  pango_cairo_show_layout (brush->cr, label->layout);
  cairo_new_path (brush->cr);
}

/* Runs */

static SheetBox
reach_of (const Brush *brush, const Mark *mark)
{
  SheetBox box = { G_MAXDOUBLE, G_MAXDOUBLE, -G_MAXDOUBLE, -G_MAXDOUBLE };

  for (guint i = 0; i < mark->n_points; i++)
    {
      double x, y;
      view_to_sheet (brush->view, drawing_points (brush->drawing, mark) + i, &x, &y);
      box.x0 = MIN (box.x0, x);
      box.x1 = MAX (box.x1, x);
      box.y0 = MIN (box.y0, y);
      box.y1 = MAX (box.y1, y);
    }
  return box;
}

/* A text may reach farther sideways than this says; ink_text() looks again. */
static gboolean
is_seen (const Brush *brush, const Mark *mark)
{
  const double room
      = mark->kind == MARK_TEXT ? 40 : (double) mark->radius + line_width (brush, mark) + 2;
  const SheetBox box = reach_of (brush, mark);
  const double side = mark->kind == MARK_TEXT ? 1000 : room;

  return box.x1 + side >= brush->clip.x0 && box.x0 - side <= brush->clip.x1
         && box.y1 + room >= brush->clip.y0 && box.y0 - room <= brush->clip.y1;
}

static gboolean
is_wanted (const Brush *brush, const Mark *mark, int layer, int course)
{
  return (layer < 0 || mark->layer == layer) && (course < 0 || mark->course == course)
         && mark_is_at_scale (mark, brush->view->scale) && mark->n_points > 0
         && is_seen (brush, mark);
}

static void
trace_circle (const Brush *brush, const Mark *mark)
{
  const SheetPoint *at = &g_array_index (brush->ink->corners, SheetPoint, 0);

  cairo_new_sub_path (brush->cr);
  cairo_arc (brush->cr, at->x, at->y, (double) mark->radius, 0, 2 * G_PI);
}

/* Adds a mark to the path; FALSE when the path must be inked before the next mark. */
static gboolean
trace_mark (const Brush *brush, const Mark *mark)
{
  const StyleRow *row = row_of (brush, mark);
  const gboolean upright = place_corners (brush, mark);

  if (mark->kind == MARK_CIRCLE)
    trace_circle (brush, mark);
  else
    trace (brush, mark->kind == MARK_POLYGON);
  if (mark->kind == MARK_POLYGON)
    add_hatch (brush, row);
  return mark->kind == MARK_LINE || (upright && row->fill_end.a <= 0);
}

static gboolean
goes_together (const Mark *a, const Mark *b)
{
  return a->style == b->style && a->kind == b->kind && a->line_mm == b->line_mm;
}

static void
ink_marks (const Brush *brush, int layer, int course)
{
  const Mark *run = NULL;

  for (guint i = 0; i < brush->drawing->marks->len; i++)
    {
      const Mark *mark = drawing_mark (brush->drawing, i);
      if (!is_wanted (brush, mark, layer, course))
        continue;
      if (run && !goes_together (run, mark))
        {
          ink_path (brush, run);
          run = NULL;
        }
      if (mark->kind == MARK_TEXT)
        ink_text (brush, mark);
      else if (trace_mark (brush, mark))
        run = mark;
      else
        {
          ink_path (brush, mark);
          run = NULL;
        }
    }
  if (run)
    ink_path (brush, run);
}

void
ink_draw (Ink *ink, cairo_t *cr, const Drawing *drawing, const View *view, Theme theme, int layer,
          int course, gboolean crisp)
{
  Brush brush = { ink, cr, drawing, view, theme, crisp, { 0 } };

  cairo_save (cr);
  cairo_new_path (cr);
  cairo_set_line_cap (cr, CAIRO_LINE_CAP_BUTT);
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_MITER);
  cairo_clip_extents (cr, &brush.clip.x0, &brush.clip.y0, &brush.clip.x1, &brush.clip.y1);
  lettering_set_target (ink->lettering, cr);
  ink_marks (&brush, layer, course);
  cairo_restore (cr);
}
