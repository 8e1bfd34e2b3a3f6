/* waste.h - fewer units to order: patterns whose short pieces come out of each other's off-cuts */
#pragma once

#include "bond/pool.h"

/* Changes chosen patterns, one segment at a time, where that lowers the units to order (off-cuts
 * reused, kerf counted, pieces fitted longest first into the fullest unit that has room) or, at the
 * same number, the cuts; never adds a breach. */
void waste_improve (Pools *pools, Pattern *chosen, const gint *stop);
