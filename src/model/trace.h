/* trace.h - the outside of a building while a hand draws it, corner by corner in plan
 *
 * A trace is a GArray of TraceCorner; each side runs east, north, west or south, and never on in
 * the way of the one before it, nor back. */
#pragma once

#include "model/outline.h"

/* To the east and to the north of the plan's origin. */
typedef struct
{
  gint64 x, y;
} TraceCorner;

GArray *trace_new (void);
static inline const TraceCorner *
trace_corner (const GArray *trace, guint i)
{
  return &g_array_index (trace, TraceCorner, i);
}
static inline guint
trace_n_sides (const GArray *trace)
{
  return trace->len > 0 ? trace->len - 1 : 0;
}

/* The way from one corner to another in line with it, and how far that is. */
Runs trace_way_between (const TraceCorner *from, const TraceCorner *to);
gint64 trace_between (const TraceCorner *from, const TraceCorner *to);
/* The side from corner `i` to the next: which way, and how long. */
Runs trace_way (const GArray *trace, guint i);
gint64 trace_length (const GArray *trace, guint i);

/* One more side from the last corner. Where it goes on in the way of the last side, or back, that
 * one gets longer or shorter instead, or is gone. Nothing without a first corner. */
void trace_go (GArray *trace, Runs way, gint64 length);
/* Takes the last corner back; FALSE: there is none. */
gboolean trace_back (GArray *trace);

/* By how much the last corner misses the first: to the east and to the north; 0 and 0 where it
 * closes. */
void trace_gap (const GArray *trace, gint64 *east, gint64 *north);
/* Whether one more side, or none, closes it: not one that goes back along the first or the last. */
gboolean trace_can_close (const GArray *trace);

/* The outline, closed with one more side where that does it, against the clock whichever way it was
 * drawn, and from its southernmost side that runs east, the western one of several; *x, *y is where
 * that begins. NULL and a new sentence: what outline_fault() finds, or how far it is from closing.
 */
GArray *trace_outline (const GArray *trace, Length *x, Length *y, char **fault);

/* The walls of a trace that is left open, as outline_walls() makes them: outer faces on the right
 * of the way it was drawn. */
GPtrArray *trace_walls (const GArray *trace, Length thickness, Length height);
