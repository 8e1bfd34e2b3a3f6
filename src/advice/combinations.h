/* combinations.h - one place for each opening that may move: all ways, the likeliest first */
#pragma once

#include "advice/standing.h"

/* Lays combinations in the order of a bound on them until none that is left can be better than the
 * best, or the work is spent; takes what is better, and says in the result what is proven. FALSE
 * when stopped. */
gboolean combinations_compare (Search *search);
