/* plan-shift.h - walls that are moved as one: a wing, or a whole building */
#pragma once

#include "model/edit.h"
#include "model/plan.h"

/* What goes along when a wall is shifted across itself as one with its wing: walls round outer
 * corners, one after another, up to an inner corner, whose other wall gets longer or shorter
 * instead; and partitions that would else come off, or have both ends in it. Numbers in the
 * project, ascending, in a new array of guint; empty where the wall stands nowhere. `whole`: that
 * is all that it is connected with. */
GArray *plan_wing (const Project *project, WallId wall, gboolean *whole);

/* All that it is connected with; likewise. */
GArray *plan_connected (const Project *project, WallId wall);

/* Shifts the wing `by` to the side of the wall's outer face, negative to the other. What stands
 * beside it gets longer or shorter, as by plan_push(); likewise refused. */
Edit *plan_shift_wing (const Project *project, WallId wall, Length by, GError **error);

/* Moves all that the wall is connected with to the east and to the north. NULL with
 * MODEL_ERROR_REFUSED: it would stand in another building's way. */
Edit *plan_move_building (const Project *project, WallId wall, Length east, Length north,
                          GError **error);
