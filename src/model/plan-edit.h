/* plan-edit.h - what a hand does to a building in plan, as edits of all the walls it concerns */
#pragma once

#include "model/edit.h"
#include "model/plan.h"

/* The meeting of two walls, in either order; FALSE: they do not meet. */
gboolean plan_meeting_between (const Project *project, WallId a, WallId b, Meeting *out);

/* Makes their meeting in that way (plan.h; none of the last two). A wall that is butted keeps the
 * ties of the meeting, or is given ties_default(). */
Edit *plan_make_edit (const Project *project, const Meeting *meeting, MeetMade made);

/* Which wall of a meeting stops at the other in every course: 0, 1; -1: neither, it is not butted.
 */
int plan_butted (const Meeting *meeting);
/* How that wall is tied, borrowed; NULL where it is not butted, or where it is not said. */
const Ties *plan_ties (const Project *project, const Meeting *meeting);
/* What is usual there. */
Ties plan_usual_ties (const Project *project, const Meeting *meeting);
/* Says how that wall is tied; the meeting is butted. */
Edit *plan_ties_edit (const Project *project, const Meeting *meeting, const Ties *ties);
/* Whether the courses of both walls lie at one height. */
gboolean plan_is_level (const Project *project, const Meeting *meeting);

/* Moves a wall across itself, `by` to the side of its outer face, negative to the other. Walls that
 * end at it grow or shrink with it; what it ends at or crosses stays, and its gaps there go along.
 * Openings stay where they stand. NULL with MODEL_ERROR_REFUSED: a wall would have to be shorter
 * than what is in it, a meeting would come apart, or the wall would stand in another's way. */
Edit *plan_push (const Project *project, WallId wall, Length by, GError **error);

/* Sets a wall as it is to be, its end at `side` moved, and nothing else. Where a wall is met there,
 * that one is pushed. NULL with MODEL_ERROR_REFUSED as plan_push(). */
Edit *plan_resize (const Project *project, const Wall *wall, Side side, GError **error);

/* A wall from one wall to another, across the way that `runs` says, through that place (1/320 mm):
 * its left face is at `face`, of those that run north the western one, of those that run east the
 * southern one. Its ends reach through the walls that they meet. NULL with MODEL_ERROR_REFUSED and
 * a sentence: no wall on that side. No id, no name; height and block of the wall that it starts
 * from. */
Wall *plan_partition (const Project *project, Runs runs, gint64 x, gint64 y, const Block *block,
                      GError **error);

/* The same from the inner face of a wall, in the middle of the longest stretch of it that no other
 * wall is at. */
Wall *plan_partition_from (const Project *project, WallId wall, const Block *block, GError **error);

/* The clear room beside a wall that ends at another: from its faces to the next wall's along the
 * one that its left end meets, or its right end. `other`: the walls that bound the room, NULL id:
 * the end of the wall. [0] is the side of its outer face. FALSE: it ends at none. */
gboolean plan_room (const Project *project, WallId wall, Length clear[2], WallId other[2]);
/* Pushes the wall so that the room on that side, 0 or 1, is so wide. */
Edit *plan_set_room (const Project *project, WallId wall, int side, Length clear, GError **error);
