/* gauge.h - heights: where each course lies */
#pragma once

#include "model/wall.h"

/* Thinner remnants than this are packed with mortar instead of being a piece: the thickest joint.
 */
#define GAUGE_PACKING_MAX LENGTH_MM (20)

/* `wall`: whose courses are meant; where NULL is taken, they lie as planned.
 *
 * Courses that stand lie as built_bottoms() says, the others above them on beds of one thickness:
 * of those between the limits that `built` or EN 1996-1-1, 8.1.5 (from memory) set, in steps of
 * 0.5 mm, and the planned one, that which brings the last whole course nearest to where it was
 * planned and not above the wall. docs/as-built.md says more. */

/* Number of courses of a wall, the ripped one at the top included: 0 or more. */
gint32 gauge_n_courses (const Wall *wall, const Block *block, const Laying *laying);
/* Bottom of course `number` (1-based), as if the wall were endlessly high; `wall` may be NULL. */
Length gauge_bottom (const Wall *wall, const Block *block, const Laying *laying, gint32 number);
/* Top of that course when whole; likewise. */
Length gauge_top (const Wall *wall, const Block *block, const Laying *laying, gint32 number);
/* The course whose top is nearest to `z`; 0 for the top of the levelling bed. Likewise. */
gint32 gauge_nearest_top (const Wall *wall, const Block *block, const Laying *laying, Length z);
/* The course at a height: the one that it is within, or on whose bed or top it lies; 0 in the
 * levelling bed. Likewise. */
gint32 gauge_course_at (const Wall *wall, const Block *block, const Laying *laying, Length z);
/* The bed under course `number`: 1 for the levelling bed. Likewise. */
Length gauge_bed (const Wall *wall, const Block *block, const Laying *laying, gint32 number);
