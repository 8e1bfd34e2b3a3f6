/* building.h - walls that meet, laid together: which of two runs through in the odd courses
 *
 * docs/building.md says how. */
#pragma once

#include "bond/layout.h"
#include "model/plan.h"

typedef struct
{
  GArray *meetings;              /* Meeting, as plan_meetings() has them, `made` as is best */
  guint changed;                 /* of them are made otherwise than now */
  gint32 now_breaches, now_cuts; /* of all walls, as they are */
  gint32 breaches, cuts;         /* with the best turns that were found */
  gint32 breaches_at_least,
      cuts_at_least; /* no turns have fewer breaches, or as many and fewer cuts */
  gboolean proven;   /* breaches and cuts are those */
  guint laid;        /* walls that were laid to find this */
} Building;

/* The best turns of all bonded meetings of a project without a fault. Butted and wrong meetings,
 * those whose sides contradict each other, and those of a wall of which something stands, stay as
 * they are. Fewest breaches first, then cuts,
 * then meetings that change. `stop` as in lay_wall(); NULL when it was set. */
Building *building_turns (const Project *project, const gint *stop);
void building_free (Building *building);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (Building, building_free)

/* The walls that the best turns change, as they are to be: Wall *, owned by the array; new. */
GPtrArray *building_walls (const Project *project, const Building *building);
