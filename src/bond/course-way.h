/* course-way.h - one way to lay a whole course, and the cheapest that mirrors what it has to */
#pragma once

#include "bond/course-kind.h"

typedef struct
{
  gint32 n;
  Pattern *patterns; /* n, by segment of the course */
  GArray *faces;     /* Length, all perpends, ascending; of strips one above another maybe twice */
  Cost own;          /* pieces, what is off the regular bond, perpends without image */
} Way;

void way_free (gpointer way);
/* Adds one to a kind's, whose patterns it takes, unless it is there already; its number. */
gint32 way_add (const Geometry *geometry, Kind *kind, Pattern *patterns);
/* Pieces looked at, and when that is to end. */
typedef struct
{
  gint64 done, most;
} Effort;

/* Lays a course beside those below and above (NULL: whatever stands there), its segments one after
 * another from either side, and adds that to its kind's ways; its number. Not exact: a segment that
 * is laid stays as it is for those after it; of many axes some are left out when the effort ends.
 */
gint32 way_lay (const Geometry *geometry, Kind *kind, const Way *below, const Way *above,
                gboolean rightwards, Effort *effort);
/* What the laps of two courses cost. */
Cost way_cost_between (const Geometry *geometry, const Way *upper, const Way *lower);
