/* tool.h - what a pull, a nudge or a drawn box does to a wall: geometry, no widgets
 *
 * Every result is inside the wall and clear of the other openings, or is the start unchanged. */
#pragma once

#include "bond/layout.h"
#include "model/wall.h"
#include "paint/drawing.h"

/* How exact the hand is. */
typedef struct
{
  Length step;  /* free places are rounded to it; > 0 */
  Length reach; /* a height this near to a course is set on it; 0: no snapping */
} Grip;

/* For a screen of `scale` steps per mm: a round step of at least half a pixel's worth and a reach
 * of a few pixels. */
Grip tool_grip (double scale);
/* Where a hand is, from millimetres; half a kilometre off at most. */
Length tool_place_of (double mm);

/* `from`, an opening of the wall, with its `part` (body, side or corner) pulled by dx, dz. A body
 * keeps its size. Sills and heads stop on courses within reach. */
Opening tool_pull_opening (const Wall *wall, const Block *block, const Opening *from, RefPart part,
                           Length dx, Length dz, const Grip *grip);
/* A new opening of that kind from one corner to the other, in either order; a door stands on the
 * foundation. FALSE when it has no room or is smaller than a hand means (50 mm). The name is
 * empty. */
gboolean tool_draw_opening (const Wall *wall, const Block *block, OpeningKind kind, Length x0,
                            Length z0, Length x1, Length z1, const Grip *grip, Opening *out);
/* An opening of the kind's usual size, set where it has room: as near as can be to `x`. FALSE when
 * there is no room. */
gboolean tool_place_opening (const Wall *wall, const Block *block, OpeningKind kind, Length x,
                             Opening *out);

/* The wall's length or height with its `part` (right end, left end or head) pulled; never less than
 * its openings need. A pulled left end moves openings and pins with the right one.
 */
Wall *tool_pull_wall (const Wall *wall, const Block *block, RefPart part, Length dx, Length dz,
                      const Grip *grip);

/* The next course above (`up`) or below a height: its top, or the levelling bed's. */
Length tool_next_course (const Wall *wall, const Block *block, Length z, gboolean up);
/* The course at a height, 1 .. number of courses. */
gint32 tool_course_at (const Wall *wall, const Block *block, Length z);

/* The piece of that course and number; NULL: there is none. */
const Piece *tool_piece (const Layout *layout, gint32 course, gint32 number);
/* The piece beside `from`: `right` -1 or 1 along its course, or `up` -1 or 1 in the next course,
 * the one that covers most of it. `from` itself at an end; the first piece of all for NULL; NULL
 * when there are no pieces. */
const Piece *tool_next_piece (const Layout *layout, const Piece *from, int right, int up);

/* What typing `value` into a dimension sets: a new wall (which may have a fault: the edit says so).
 * NULL when there is no such dimension. */
Wall *tool_set_dimension (const Wall *wall, DimensionPart part, OpeningId opening, Length value);
/* The value that the dimension shows; FALSE: there is none. */
gboolean tool_get_dimension (const Wall *wall, DimensionPart part, OpeningId opening,
                             Length *value);

/* The first free name of a kind: "W3", "D1", "V2". Newly allocated. */
char *tool_free_name (const Wall *wall, OpeningKind kind);
/* The name for people: its name, else its key, else "". Borrowed. */
const char *tool_opening_name (const Opening *opening);
const char *tool_wall_name (const Wall *wall);
