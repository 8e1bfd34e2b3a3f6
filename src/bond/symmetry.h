/* symmetry.h - lays a wall so that perpends mirror each other, where a rule wants that */
#pragma once

#include "bond/pattern.h"

/* Looks for patterns with fewer perpends that have no mirror image: as a wish at no more breaches
 * and cuts, as a must at no more breaches, these among them. Takes and gives a pattern for each
 * segment as network_solve() does; NULL when stopped. */
Pattern *symmetry_improve (const Geometry *geometry, Pattern *patterns, const gint *stop);

/* Perpends of a whole layout without a mirror image that is a must. */
gint32 symmetry_breaches (const Geometry *geometry, const Pattern *patterns);
