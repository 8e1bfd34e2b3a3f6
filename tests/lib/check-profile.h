/* check-profile.h - what docs/tops.md says of a course under a wall's top and on its footing
 *
 * Part of check-layout: worked out again from the wall's points and steps, not by the engine. */
#pragma once

#include "check-column.h"

/* Height of the top at x as it is right or left of it, to the nearest 1/320 mm. */
Length check_profile_top (const Check *check, Length x, gboolean right);
/* By how much a height may differ when it is read off between two rounded corners of the slope over
 * `x` (right of it): a corner may be a rounding off along the wall, too. */
Length check_profile_rounding (const Check *check, Length x);
/* Where masonry begins over the footing at x, as it is right of it. */
Length check_profile_base (const Check *check, Length x);
/* What is lower than this over `x` (right of it) is packed. */
Length check_profile_toe (const Check *check, Length x);
/* A run under slopes alone is packed when it is nowhere so high. */
Length check_profile_least (const Check *check);
/* Adds where the top comes to a height, rounded to where it is higher; where it comes down to it,
 * rounded to where it is lower; and where it or the footing has its points. */
void check_profile_add_heights (const Check *check, Length z, GArray *verticals);
void check_profile_add_lows (const Check *check, Length z, GArray *verticals);
void check_profile_add_points (const Check *check, GArray *verticals);
/* Adds where the top is the toe over a height. */
void check_profile_add_toes (const Check *check, Length low, GArray *verticals);
