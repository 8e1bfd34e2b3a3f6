/* held.h - what holds a wall sideways: the walls that it ends at, and those that meet it */
#pragma once

#include "model/wall.h"

/* Butted to another wall, so that it is taken for one that bears nothing. */
gboolean wall_is_partition (const Wall *wall);

/* A part of a wall between the faces of two that hold it, or its free ends. */
typedef struct
{
  Length from, to;
  gboolean held[2]; /* by Side */
} Stretch;

/* Of a wall, from the left: Stretch, at least one; new. */
GArray *stretches_of (const Wall *wall);

/* Whether the walls that hold a stretch stiffen all of it: at both ends, no farther apart than 30
 * times the thickness, or at one end and no longer than 15 times, and no opening in it weakens it,
 * be it higher than a quarter of the wall, wider than a quarter of the stretch, or all of them more
 * than a tenth of its face (EN 1996-1-1, 5.5.1.2, from memory). Its effective height is then 15
 * times the thickness at the most, or 22.5 times: docs/rules.md. */
gboolean stretch_is_stiffened (const Wall *wall, const Stretch *stretch, Length thickness);

/* The longest part that no other wall holds: a wall that is free at both ends, or what lies farther
 * than 15 times the thickness from the last wall that holds it, up to a free end (EN 1996-1-1,
 * 5.5.1.2, from memory: such a part counts as held at foot and top alone). FALSE: there is none. */
gboolean loosest_part (const Wall *wall, Length thickness, Stretch *out);
