/* least-waste.h - fewer units to order: short pieces that come out of each other's off-cuts */
#pragma once

#include "bond/pattern.h"

/* Replaces patterns chosen (one for each segment) where that lowers the units to order, off-cuts
 * reused and kerf counted, and then the cuts; no breach is added, none gets worse. Ends when
 * `at_least` units are reached. What is left is proven not to need more than what was there: on any
 * doubt nothing is changed. `stop` as in lay_wall(). */
void least_waste (const Geometry *geometry, Pattern *chosen, gint32 at_least, const gint *stop);

/* Units to order for the patterns, and a bound on what these pieces need (may be NULL). */
gint32 least_waste_units (const Geometry *geometry, const Pattern *chosen, gint32 *at_least);
