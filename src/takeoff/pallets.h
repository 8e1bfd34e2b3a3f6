/* pallets.h - how many pallets there are, and where they are set down */
#pragma once

#include "takeoff/work.h"

/* Fills `blocks` and `pallets` of a work. All pallets of a kind of block serve stretches of its
 * walls, one after the other in the project's order, that take equally many blocks; each stands in
 * the middle of its stretch by blocks, which makes the sum of the ways along the wall least, or as
 * near to that as doors and other pallets let it. FALSE when stopped. */
gboolean pallets_set_down (Work *work, const Project *project, Layout *const *layouts,
                           const gint *stop);
