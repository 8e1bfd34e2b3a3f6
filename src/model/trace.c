/* trace.c - corners that a hand sets, and the outline that they make */
#include "model/trace.h"

#include <glib/gi18n-lib.h>

GArray *
trace_new (void)
{
  return g_array_new (FALSE, FALSE, sizeof (TraceCorner));
}

/* ---- sides ---- */

Runs
trace_way_between (const TraceCorner *from, const TraceCorner *to)
{
  if (from->y == to->y)
    return to->x >= from->x ? RUNS_EAST : RUNS_WEST;
  return to->y > from->y ? RUNS_NORTH : RUNS_SOUTH;
}

gint64
trace_between (const TraceCorner *from, const TraceCorner *to)
{
  return ABS (to->x - from->x) + ABS (to->y - from->y);
}

Runs
trace_way (const GArray *trace, guint i)
{
  return trace_way_between (trace_corner (trace, i), trace_corner (trace, i + 1));
}

gint64
trace_length (const GArray *trace, guint i)
{
  return trace_between (trace_corner (trace, i), trace_corner (trace, i + 1));
}

static gboolean
lies_along (Runs a, Runs b)
{
  return (runs_east (a) != 0) == (runs_east (b) != 0);
}

void
trace_go (GArray *trace, Runs way, gint64 length)
{
  TraceCorner next;

  if (trace->len == 0 || length == 0)
    return;
  next = *trace_corner (trace, trace->len - 1);
  next.x += length * runs_east (way);
  next.y += length * runs_north (way);
  if (trace->len > 1 && lies_along (trace_way (trace, trace->len - 2), way))
    g_array_set_size (trace, trace->len - 1);
  if (trace_between (trace_corner (trace, trace->len - 1), &next) > 0)
    g_array_append_val (trace, next);
}

gboolean
trace_back (GArray *trace)
{
  if (trace->len == 0)
    return FALSE;
  g_array_set_size (trace, trace->len - 1);
  return TRUE;
}

/* ---- closing ---- */

void
trace_gap (const GArray *trace, gint64 *east, gint64 *north)
{
  *east = *north = 0;
  if (trace->len == 0)
    return;
  *east = trace_corner (trace, trace->len - 1)->x - trace_corner (trace, 0)->x;
  *north = trace_corner (trace, trace->len - 1)->y - trace_corner (trace, 0)->y;
}

static gboolean
goes_back (Runs way, Runs next)
{
  return lies_along (way, next) && way != next;
}

/* Of the side from the last corner to the first, which lie in one line. */
static Runs
closing_way (const GArray *trace)
{
  return trace_way_between (trace_corner (trace, trace->len - 1), trace_corner (trace, 0));
}

gboolean
trace_can_close (const GArray *trace)
{
  gint64 east, north;

  if (trace_n_sides (trace) < 3)
    return FALSE;
  trace_gap (trace, &east, &north);
  if (east == 0 && north == 0)
    return TRUE;
  return (east == 0 || north == 0)
         && !goes_back (trace_way (trace, trace->len - 2), closing_way (trace))
         && !goes_back (closing_way (trace), trace_way (trace, 0));
}

static char *
open_fault (const GArray *trace)
{
  gint64 east, north;
  g_autofree char *to_east = NULL;
  g_autofree char *to_north = NULL;

  if (trace_n_sides (trace) < 3)
    return g_strdup (_ ("An outline has four sides at least."));
  trace_gap (trace, &east, &north);
  to_east = g_strdup_printf (east > 0 ? _ ("%.10g mm to the east") : _ ("%.10g mm to the west"),
                             (double) ABS (east) / LENGTH_PER_MM);
  to_north = g_strdup_printf (north > 0 ? _ ("%.10g mm to the north") : _ ("%.10g mm to the south"),
                              (double) ABS (north) / LENGTH_PER_MM);
  if (east == 0 || north == 0)
    return g_strdup_printf (_ ("The outline does not close: its end is %s of its beginning."),
                            east == 0 ? to_north : to_east);
  return g_strdup_printf (_ ("The outline does not close: its end is %s and %s of its beginning."),
                          to_east, to_north);
}

/* The corners round the outline, none twice, each a right angle. */
static GArray *
corners_round (const GArray *trace)
{
  GArray *round = trace_new ();
  gint64 east, north;

  g_array_append_vals (round, trace->data, trace->len);
  trace_gap (trace, &east, &north);
  if (east == 0 && north == 0)
    g_array_set_size (round, round->len - 1);
  /* Where the last side goes straight on into the first, or the closing one into either. */
  for (guint i = 0; i < round->len && round->len > 4;)
    {
      const TraceCorner *before = trace_corner (round, (i + round->len - 1) % round->len);
      const TraceCorner *after = trace_corner (round, (i + 1) % round->len);

      if (trace_way_between (before, trace_corner (round, i))
          == trace_way_between (trace_corner (round, i), after))
        g_array_remove_index (round, i);
      else
        i++;
    }
  return round;
}

/* Twice the area, more than 0 against the clock. */
static double
area_round (const GArray *round)
{
  double area = 0;

  for (guint i = 0; i < round->len; i++)
    {
      const TraceCorner *a = trace_corner (round, i);
      const TraceCorner *b = trace_corner (round, (i + 1) % round->len);

      area += (double) a->x * (double) b->y - (double) b->x * (double) a->y;
    }
  return area;
}

static void
turn_round (GArray *round)
{
  for (guint i = 0, k = round->len - 1; i < k; i++, k--)
    {
      const TraceCorner swapped = *trace_corner (round, i);

      g_array_index (round, TraceCorner, i) = *trace_corner (round, k);
      g_array_index (round, TraceCorner, k) = swapped;
    }
}

static Runs
way_round (const GArray *round, guint i)
{
  return trace_way_between (trace_corner (round, i % round->len),
                            trace_corner (round, (i + 1) % round->len));
}

/* Where the southernmost side that runs east begins. */
static guint
first_round (const GArray *round)
{
  guint best = round->len;

  for (guint i = 0; i < round->len; i++)
    {
      const TraceCorner *at = trace_corner (round, i);
      const TraceCorner *low = best < round->len ? trace_corner (round, best) : NULL;

      if (way_round (round, i) == RUNS_EAST
          && (low == NULL || at->y < low->y || (at->y == low->y && at->x < low->x)))
        best = i;
    }
  return best % round->len;
}

static gboolean
is_a_place (gint64 place)
{
  return place >= -LENGTH_MAX && place <= LENGTH_MAX;
}

static char *
far_fault (const GArray *round)
{
  for (guint i = 0; i < round->len; i++)
    if (!is_a_place (trace_corner (round, i)->x) || !is_a_place (trace_corner (round, i)->y))
      return g_strdup (_ ("The outline goes farther from the plan's origin than 1 km."));
  return NULL;
}

/* A right angle at the end of each side, or FALSE: one goes on, or straight back. */
static gboolean
has_right_angles (const GArray *round)
{
  for (guint i = 0; i < round->len; i++)
    if (lies_along (way_round (round, i), way_round (round, i + 1)))
      return FALSE;
  return TRUE;
}

GArray *
trace_outline (const GArray *trace, Length *x, Length *y, char **fault)
{
  g_autoptr (GArray) sides = g_array_new (FALSE, FALSE, sizeof (OutlineSide));
  g_autoptr (GArray) round = NULL;
  guint first;

  *fault = NULL;
  if (!trace_can_close (trace))
    {
      *fault = open_fault (trace);
      return NULL;
    }
  round = corners_round (trace);
  if ((*fault = far_fault (round)) != NULL)
    return NULL;
  if (round->len < 4 || !has_right_angles (round))
    {
      *fault = g_strdup (_ ("The outline goes back along one of its sides."));
      return NULL;
    }
  if (area_round (round) < 0)
    turn_round (round);
  first = first_round (round);
  *x = (Length) trace_corner (round, first)->x;
  *y = (Length) trace_corner (round, first)->y;
  for (guint i = first; i < first + round->len; i++)
    {
      const gint64 length = trace_between (trace_corner (round, i % round->len),
                                           trace_corner (round, (i + 1) % round->len));
      const OutlineSide side
          = { (Length) MIN (length, LENGTH_MAX),
              way_round (round, i + 1) == runs_turned (way_round (round, i), TRUE) };

      g_array_append_val (sides, side);
    }
  *fault = outline_fault (sides);
  return *fault == NULL ? g_steal_pointer (&sides) : NULL;
}

/* ---- walls ---- */

/* Whether the side turns to the right at its end. */
static gboolean
turns_right (const GArray *trace, guint i)
{
  return i + 2 < trace->len && trace_way (trace, i + 1) == runs_turned (trace_way (trace, i), TRUE);
}

GPtrArray *
trace_walls (const GArray *trace, Length thickness, Length height)
{
  GPtrArray *walls = wall_list_new ();

  for (guint i = 0; i < trace_n_sides (trace); i++)
    {
      const TraceCorner *from = trace_corner (trace, i);
      const Runs runs = trace_way (trace, i);
      const Length before = i > 0 && turns_right (trace, i - 1) ? thickness : 0;
      const Length after = turns_right (trace, i) ? thickness : 0;
      Wall *wall = wall_new ();

      wall->height = height;
      wall->length = (Length) MIN (before + trace_length (trace, i) + after, LENGTH_MAX);
      wall->place = (PlanPlace){ TRUE, (Length) (from->x - before * runs_east (runs)),
                                 (Length) (from->y - before * runs_north (runs)), runs };
      g_ptr_array_add (walls, wall);
    }
  return walls;
}
