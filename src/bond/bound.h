/* bound.h - the fewest breaches, and with them the fewest cuts, that a wall can have, wherever its
 * perpends lie */
#pragma once

#include "bond/pattern.h"

typedef struct
{
  gint32 breaches, cuts;
} Bound;

/* No layout of the wall is below it: fewer breaches, or as many and fewer cuts. */
Bound bound_wall (const Geometry *geometry);
/* Breaches of limits on pieces that no layout can do without, by segments alone. */
gint32 bound_forced_breaches (const Geometry *geometry);
/* The same by a closer look, which takes some milliseconds, given a bound and a layout that there
 * is: never above that. It ends soon when *stop (may be NULL) is set. Where it comes upon a better
 * layout, *better has its patterns, by segment (to be freed with patterns_free()), else NULL. */
Bound bound_wall_closely (const Geometry *geometry, Bound least, Bound found, Pattern **better,
                          const gint *stop);
/* Fewest cuts of a layout whose breaches are more than the bound's: any piece and any lap may be
 * the one that is broken. */
gint32 bound_wall_cuts_at (const Geometry *geometry);
