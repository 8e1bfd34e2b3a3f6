/* lay.h - lays a wall: the best pieces under the wall's rules */
#pragma once

#include "bond/layout.h"

/* Lays `wall` in units of `block`. The wall has no wall_fault() beside the block. Every pair gets
 * an answer: where the rules cannot all be kept, the one with the fewest breaches. The same values
 * give the same pieces on every machine. `stop` may be NULL; when another thread sets it to
 * non-zero (atomically), the search ends soon and NULL is returned; otherwise never NULL. */
Layout *lay_wall (const Wall *wall, const Block *block, const gint *stop);

/* A first look: the same, but the search ends after its first round, many times sooner where the
 * bound is hard to meet. There may be more breaches or cuts than lay_wall() finds; where it says
 * `proven` and has no breach, lay_wall() finds as many. Not for what is shown as the answer. */
Layout *lay_wall_quickly (const Wall *wall, const Block *block, const gint *stop);

/* How good a layout of the wall can be: none has fewer breaches, or as many and fewer cuts. */
typedef struct
{
  gint32 breaches, cuts;
} LayBound;
/* Proven without laying it, several times sooner. Often what lay_wall() finds, else a little less.
 */
LayBound lay_bound (const Wall *wall, const Block *block);
/* The same where it is below `enough`, else that, several times sooner again: what costs that much
 * is of no interest. */
LayBound lay_bound_below (const Wall *wall, const Block *block, LayBound enough);
