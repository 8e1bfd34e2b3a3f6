/* plan-private.h - what the parts of a plan share while it is drawn */
#pragma once

#include "paint/plan.h"
#include "paint/theme.h"

/* A wall that stands somewhere. */
typedef struct
{
  const Wall *wall;
  guint index; /* in the project */
  Length thickness;
  PlanBox box;
} PlanWall;

typedef struct
{
  Drawing *drawing;
  const PlanInput *input;
  GArray *walls;    /* PlanWall, in the project's order */
  GArray *meetings; /* Meeting */
} PlanScene;

static inline const PlanWall *
plan_wall_at (const PlanScene *scene, guint i)
{
  return &g_array_index (scene->walls, PlanWall, i);
}
static inline const Meeting *
plan_meeting_at (const PlanScene *scene, guint i)
{
  return &g_array_index (scene->meetings, Meeting, i);
}
/* By its place in the project; NULL: it stands nowhere. */
const PlanWall *plan_wall_of (const PlanScene *scene, guint index);

/* Along a wall from its left end, and across it from its outer face, `along` and `out` of them in
 * sheet steps. */
MarkPoint plan_place (const Wall *wall, double along_mm, double in_mm, float along, float out);

/* What a box covers of a wall's own directions: along it from its left end, across it from its
 * outer face. */
typedef struct
{
  gint64 u0, u1, v0, v1;
} PlanSpan;
PlanSpan plan_span (const Wall *wall, const PlanBox *box);

static inline gboolean
plan_runs_across (const Wall *wall) /* up or down the sheet */
{
  return wall->place.runs == RUNS_NORTH || wall->place.runs == RUNS_SOUTH;
}

/* plan-trace.c */
void plan_add_trace (PlanScene *scene, const PlanTrace *trace);
/* plan-ties.c */
void plan_add_ties (PlanScene *scene);
/* plan-set-out.c */
void plan_add_set_out (PlanScene *scene);
/* plan-dimension.c */
void plan_add_dimensions (PlanScene *scene);
