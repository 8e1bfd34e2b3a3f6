/* day-plan.h - which courses of which walls are laid on which day */
#pragma once

#include "takeoff/work.h"

/* Fills `days` and `stints` of a work whose walls are reckoned. Walls rise together: the lowest
 * course that may be laid comes next, of two the one of the wall that comes first. A day ends where
 * the next course does not fit into its hours or lifts; a wall rests once it would rise by more
 * than `rates.rise`, but a single course is laid however high it is. */
void day_plan (Work *work);
