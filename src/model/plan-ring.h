/* plan-ring.h - the outer corners of buildings in plan, as they are set out on the ground */
#pragma once

#include "model/plan.h"

/* An outer corner: where the outer faces of two walls meet. */
typedef struct
{
  gint64 x, y;
  guint wall;     /* in the project's order: the one whose outer face begins there */
  gboolean inner; /* the outline turns to the right there */
} RingCorner;

/* Walls that go once round, corner after corner, against the clock: each a GArray of RingCorner,
 * from the southernmost corner at which the outline turns to the left, the western one of several.
 * New; by the walls they begin with. Walls that do not come round are in none. */
GPtrArray *plan_rings (const Project *project);

/* From one corner to another, to the nearest 1/320 mm. */
Length ring_distance (const RingCorner *a, const RingCorner *b);

/* "A", "B" … "Z", "AA": of the corner with that number in its ring, from 0. */
#define RING_LETTERS_SIZE 8
const char *ring_letters (guint number, char text[RING_LETTERS_SIZE]);
