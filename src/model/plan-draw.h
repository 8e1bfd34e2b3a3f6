/* plan-draw.h - walls that are drawn into a plan: what they come to lie on, and run through */
#pragma once

#include "model/plan.h"

/* Of a wall with a place that is not in the project yet: an end that lies at a face of a wall
 * across, or within that wall, goes on to its far face, so that the two meet there. `self` is that
 * wall where it is in the project already, else none: it is not met. */
void plan_reach (const Project *project, WallId self, Wall *wall, Length thickness);

/* The face of a wall that is nearest to a place to the east (`north` FALSE) or north, no farther
 * than `reach`; else the place itself, as a whole multiple of `step`. `self` counts for none. */
gint64 plan_snap (const Project *project, WallId self, gboolean north, gint64 at, Length reach,
                  Length step);

/* Where the next building has room: to the east of all that stands, 2 m off; 0 where none does. */
gint64 plan_free_place (const Project *project);
