/* cost.h - what a wall costs as laid: breaches, cuts, units to order */
#pragma once

#include "model/wall.h"

typedef struct
{
  gint32 breaches;
  gint32 cuts;
  gint32 to_order;          /* whole units that yield every piece of this wall, off-cuts reused */
  gint32 breaches_at_least; /* proven of the breaches */
  gint32 cuts_at_least;     /* proven of the cuts, at that number of breaches */
  gboolean as_laid; /* lay_wall() finds the same; else a first look, that may be a little more */
} Cost;

typedef enum
{
  LOOK_FIRST, /* some milliseconds even where the fewest are hard to find */
  LOOK_LAID,  /* as lay_wall() */
} Look;

typedef enum
{
  COSTING_DONE,
  COSTING_IMPOSSIBLE, /* the wall has a wall_fault(); nothing is told */
  COSTING_STOPPED,
} Costing;

/* Lays the wall and counts its units, as `lay` and `takeoff` would for a project of it alone. */
Costing cost_of_wall (const Wall *wall, const Block *block, Look look, const gint *stop, Cost *out);

/* Breaches first; then cuts and units to order, or with least waste units to order and cuts.
 * Below 0: `a` is the cheaper. */
int cost_compare (const Cost *a, const Cost *b, Aim aim);
/* The aim that holds for the wall. */
Aim cost_aim (const Wall *wall, const Block *block);
