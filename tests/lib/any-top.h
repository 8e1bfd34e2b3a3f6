/* any-top.h - tops and footings made up from a number */
#pragma once

#include "any-wall.h"

/* Puts a gable, a mono-pitch, steps or an odd line of slopes (2 to 65 degrees) and steps on the
 * wall, or steps into its footing, or both; and with them a shortest raked piece and how high walls
 * meet it. Openings that are in the way go. FALSE: nothing came of it, or a wall with a fault. */
gboolean any_top (guint64 seed, Wall *wall, const Block *block);
