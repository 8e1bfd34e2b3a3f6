/* gauge.h - heights: where each course lies */
#pragma once

#include "model/wall.h"

/* Thinner remnants than this are packed with mortar instead of being a piece: the thickest joint.
 */
#define GAUGE_PACKING_MAX LENGTH_MM (20)

/* Number of courses of a wall, the ripped one at the top included: 0 or more. */
gint32 gauge_n_courses (const Wall *wall, const Block *block, const Laying *laying);
/* Bottom of course `number` (1-based), as if the wall were endlessly high. */
Length gauge_bottom (const Block *block, const Laying *laying, gint32 number);
/* Top of that course when whole. */
Length gauge_top (const Block *block, const Laying *laying, gint32 number);
/* The course whose top is nearest to `z`; 0 for the top of the levelling bed. */
gint32 gauge_nearest_top (const Block *block, const Laying *laying, Length z);
