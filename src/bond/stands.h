/* stands.h - what stands of a wall: where it parts the runs, and how a layout is written down
 *
 * Pieces that stand are segments of their own that are set, as pinned ones are (pinned.h). */
#pragma once

#include "bond/segment.h"

/* Parts the segments of courses 1 to geometry->held at the perpends that the wall's built record
 * has of them; they have no links yet. A perpend that no piece can begin at any more is passed
 * over. Where more than a unit is between two, the piece is one unit long, beside the perpend that
 * it has (else at the left), and what is left is laid anew where a shortest piece and its joint fit
 * in, else packed. Nothing is asked of a standing piece by optional rules. */
void stands_split (Geometry *geometry, const Wall *wall);

/* Every course of a layout as built_set_courses() wants it: LaidCourse, in a new array that owns
 * them. */
GArray *stands_of_layout (const Layout *layout);

/* The same layout without the pieces that stand, and without what is packed in their courses; no
 * breaches, no proof. New. */
Layout *stands_rest_of_layout (const Layout *layout);

/* Whether masonry stands beside an opening, or beneath its sill where that is cut: such an opening
 * is where it is. */
gboolean stands_beside (const Wall *wall, const Block *block, const Opening *opening);
/* Whether a wall leaves what stands of another one as it is: its length, turns, joints and
 * levelling bed, and the openings beside what stands. */
gboolean stands_in (const Wall *before, const Wall *after, const Block *block);

/* How many courses are to be held fast, for a first try, when a wall is laid of which something
 * stands: as many as were when the last one was written down. The answer holds when it has all
 * standing courses as they stand (stands_matches()); else all of them are to be. */
gint32 stands_held_before (const Wall *wall);
gboolean stands_matches (const Layout *layout, const Wall *wall);
