/* plan-trace.c - an outline while a hand draws it: its sides with their lengths, the one that
 * follows the pointer, and what would close it */
#include "paint/plan-private.h"

#define CORNER_RADIUS 4.f
#define TEXT_AWAY 6.f /* steps, of a length from its side */

static MarkPoint
point_of (const TraceCorner *corner)
{
  return (MarkPoint){ (double) corner->x / LENGTH_PER_MM, (double) corner->y / LENGTH_PER_MM, 0,
                      0 };
}

/* On the right of the way that the side runs. */
static void
add_text (PlanScene *scene, Style style, const TraceCorner *from, const TraceCorner *to, Runs runs,
          const char *text)
{
  static const float out_x[] = { 0, 1, 0, -1 }, out_y[] = { 1, 0, -1, 0 };
  static const float anchor_x[] = { 0.5f, 0, 0.5f, 1 }, anchor_y[] = { 0, 0.5f, 1, 0.5f };
  const MarkLook look = mark_look (style, LAYER_OVERLAY);
  const MarkPoint a = point_of (from), b = point_of (to);
  const MarkPoint at
      = { (a.x + b.x) / 2, (a.z + b.z) / 2, TEXT_AWAY * out_x[runs], TEXT_AWAY * out_y[runs] };

  drawing_add_text (scene->drawing, &look, at, anchor_x[runs], anchor_y[runs], text);
}

static void
add_length (PlanScene *scene, Style style, const TraceCorner *from, const TraceCorner *to)
{
  g_autofree char *text
      = g_strdup_printf ("%.10g", (double) trace_between (from, to) / LENGTH_PER_MM);

  add_text (scene, style, from, to, trace_way_between (from, to), text);
}

static void
add_sides (PlanScene *scene, const GArray *corners)
{
  const MarkLook line = mark_look (STYLE_SELECTED, LAYER_OVERLAY);
  const MarkLook dot = mark_look (STYLE_HANDLE, LAYER_OVERLAY);

  for (guint i = 0; i + 1 < corners->len; i++)
    {
      drawing_add_line (scene->drawing, &line, point_of (trace_corner (corners, i)),
                        point_of (trace_corner (corners, i + 1)));
      add_length (scene, STYLE_SELECTED_TEXT, trace_corner (corners, i),
                  trace_corner (corners, i + 1));
    }
  for (guint i = 0; i < corners->len; i++)
    drawing_add_circle (scene->drawing, &dot, point_of (trace_corner (corners, i)), CORNER_RADIUS);
}

/* The one side, or the two, between the end and the beginning. */
static void
add_gap (PlanScene *scene, const GArray *corners)
{
  const MarkLook line
      = mark_look (trace_can_close (corners) ? STYLE_GUIDE : STYLE_GHOST, LAYER_OVERLAY);
  const TraceCorner *first = trace_corner (corners, 0);
  const TraceCorner *last = trace_corner (corners, corners->len - 1);

  if (trace_n_sides (corners) < 3)
    return;
  drawing_add_line (scene->drawing, &line, point_of (last), point_of (first));
}

void
plan_add_trace (PlanScene *scene, const PlanTrace *trace)
{
  const MarkLook ghost = mark_look (STYLE_GHOST, LAYER_OVERLAY);
  const GArray *corners = trace->corners;
  const TraceCorner *last;
  gboolean moves;

  if (corners->len == 0)
    return;
  last = trace_corner (corners, corners->len - 1);
  moves = trace->has_tip && (trace->tip.x != last->x || trace->tip.y != last->y);
  add_sides (scene, corners);
  if (!moves)
    add_gap (scene, corners);
  if (moves)
    drawing_add_line (scene->drawing, &ghost, point_of (last), point_of (&trace->tip));
  if (trace->typed && *trace->typed)
    add_text (scene, STYLE_GUIDE_TEXT, last, moves ? &trace->tip : last, RUNS_EAST, trace->typed);
  else if (moves)
    add_length (scene, STYLE_GUIDE_TEXT, last, &trace->tip);
}
