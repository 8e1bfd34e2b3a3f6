/* network.h - the whole wall at once: one pattern for each segment, so that breaches and then cuts
 * are fewest over the wall
 *
 * Each segment has a pool of patterns. Two linked segments pay a breach for every perpend that is
 * within the least lap of one of the other's. */
#pragma once

#include "bond/bound.h"
#include "bond/pattern.h"

/* chosen[i] is segment i's pattern, owned by the caller (array and patterns), or NULL when stopped.
 * The search ends when `bound` is met; what it proves itself goes there, too. */
Pattern *network_solve (const Geometry *geometry, WallBound *bound, const gint *stop);

/* What a layout costs, its laps left out: breaches, cuts, and what is preferred and not had. */
Cost network_cost (const Geometry *geometry, const Pattern *patterns);
