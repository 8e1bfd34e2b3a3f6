/* bound.h - the fewest breaches, and with them the fewest cuts, that a wall can have, wherever its
 * perpends lie */
#pragma once

#include "bond/pattern.h"

typedef struct
{
  gint32 breaches, cuts;
} Bound;

/* What is known of the least that a wall can have, found out as it is asked for. */
typedef struct
{
  const Geometry *geometry;
  Bound least;    /* no layout of the wall is below it: fewer breaches, or as many and fewer cuts */
  gint32 cuts_at; /* fewest cuts of a layout whose breaches are more than the bound's: any piece and
                     any lap may be the one that is broken */
  gint32 left_open;      /* sums below it a closer look could not rule out; 0: none was asked for */
  struct Asked *asked;   /* of segments, as long as `alone` is there */
  struct Wallful *alone; /* each segment's own are all that was summed up; NULL: laps are, too */
} WallBound;

/* By what each segment has at the least. Clear it. */
void bound_init (WallBound *bound, const Geometry *geometry);
/* Takes what there is at the least from somewhere else, and asks no further. */
void bound_init_known (WallBound *bound, const Geometry *geometry, Bound least);
void bound_clear (WallBound *bound);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (WallBound, bound_clear)

/* Whether no layout can have fewer than a layout has that there is: fewer breaches, or as many and
 * fewer cuts. What laps ask is summed up, too, where that is needed to tell. */
gboolean bound_is_met (WallBound *bound, gint32 breaches, gint32 cuts);
/* What is proven when that is summed up whatever there is. */
Bound bound_sum (WallBound *bound);
/* Breaches of limits on pieces that no layout can do without, by segments alone. */
gint32 bound_forced_breaches (const Geometry *geometry);
/* Raises it by a closer look, which takes some milliseconds, given what a layout has that there is:
 * never above that. It ends soon when *stop (may be NULL) is set. Where it comes upon a better
 * layout, its patterns, by segment (to be freed with patterns_free()), are returned, else NULL. */
Pattern *bound_look_closer (WallBound *bound, Bound found, const gint *stop);
