/* pier-bound.h - how good a wall can be, wherever its openings stand
 *
 * Courses fall into runs between the openings that cross them whole: piers, and the courses that go
 * on under sills and over heads. Each is a little wall with a bound of its own, so the sum can only
 * be too low: what is left out are the laps of one such little wall on another. A run's bound
 * depends on the jambs beside it and in it alone, and is asked for once. */
#pragma once

#include "bond/lay.h"

typedef struct PierBound PierBound;

/* For walls that differ from `wall` in the places of their openings along it, and nothing else.
 * Openings that may not move stay where they are. */
PierBound *pier_bound_new (const Wall *wall, const Block *block);
void pier_bound_free (PierBound *bound);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (PierBound, pier_bound_free)

/* `x` has a left jamb for each opening of the wall, in its order; none overlaps another. No layout
 * has fewer breaches, or as many and fewer cuts, than those that are told. Of runs with no more
 * than two openings that may move: these are kept. */
LayBound pier_bound_near (PierBound *bound, const Length *x);
/* The same of all other runs, to be added to it. These are not kept, so it takes longer; it may be
 * called in several threads at a time. */
LayBound pier_bound_far (const PierBound *bound, const Length *x);
/* The sum of the least of each band of courses by itself, whatever places are taken: `places` has
 * those of each opening (Length), NULL: it stays. A band with too many of them counts nothing. */
LayBound pier_bound_anywhere (PierBound *bound, GArray *const *places);
LayBound lay_bound_add (LayBound a, LayBound b);
