/* pinned.h - where pins part the runs of a wall
 *
 * A pinned perpend is fixed: the run is laid left and right of it as two segments, of which the
 * right one carries the perpend (Segment.joined_left), so that its neighbours lap it. A pinned
 * piece is a segment of its own. */
#pragma once

#include "bond/segment.h"

/* Parts the segments, which have no links yet, and fills geometry->pins. What cannot be met is left
 * out: see PinFate. */
void pinned_split (Geometry *geometry, const Wall *wall);

/* Adds the part of a run from a to b to `parts`, with steps of its own. */
void pinned_add_part (Geometry *geometry, GArray *parts, const Segment *whole, Length a, Length b);
