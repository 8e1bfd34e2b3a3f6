/* pier.h - what stands beside an opening */
#pragma once

#include "model/wall.h"

/* To the next opening that shares a height with it, or to the wall's end. */
typedef struct
{
  Length from, to;
  const Opening *left, *right; /* NULL at the wall's end */
} Pier;

static inline Length
pier_width (const Pier *pier)
{
  return pier->to - pier->from;
}

/* To the left of an opening; NULL in left when it reaches the wall's end. */
Pier pier_left_of (const Wall *wall, const Opening *opening);
/* Between an opening and the wall's right end, where no other stands between. */
Pier pier_right_of (const Wall *wall, const Opening *opening);
/* Whether none stands between: every pier is the left one of an opening, or the right one of such.
 */
gboolean pier_is_last (const Wall *wall, const Opening *opening);
