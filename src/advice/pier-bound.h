/* pier-bound.h - how few cuts a wall can have, wherever its openings stand
 *
 * Courses that openings cross whole fall into piers, each a little wall of its own; what is between
 * them (laps on the courses below and above, notched pieces) is left out, so the sum can only be
 * too low. A pier's bound depends on its width alone, and is asked for once. */
#pragma once

#include "model/wall.h"

typedef struct PierBound PierBound;

/* For walls that differ from `wall` in the places of their openings along it, and nothing else. */
PierBound *pier_bound_new (const Wall *wall, const Block *block);
void pier_bound_free (PierBound *bound);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (PierBound, pier_bound_free)

/* `x` has a left jamb for each opening of the wall, in its order; none overlaps another. A lower
 * bound on cuts of every layout without a breach. -1 when stopped. */
gint32 pier_bound_cuts (PierBound *bound, const Length *x, const gint *stop);
