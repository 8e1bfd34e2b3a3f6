/* saving.h - what of a wall as a whole, changed a little, would save most */
#pragma once

#include "model/finding.h"
#include "model/project.h"

/* At most one of each kind, the one that saves most, as notes with their mends, in this order:
 *   "saves-position"   one opening elsewhere along the wall, 100 mm at most, or as far as it may
 * move "saves-first-bed"  another thickness of the levelling bed, 10 to 40 mm "saves-length" the
 * wall up to 50 mm longer or shorter, at one of its ends "saves-rule"       one rule of the laying
 * loosened by one step Each is laid before it is told. How many are tried depends on the wall
 * alone. Finding *, free with g_ptr_array_unref(); NULL when stopped. */
GPtrArray *savings_of_wall (const Project *project, const Wall *wall, guint threads,
                            const gint *stop);
