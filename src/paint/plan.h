/* plan.h - a building drawn in plan: cut just over its sills, north up
 *
 * In a plan a mark's x and z are millimetres to the east and to the north of the plan's origin. */
#pragma once

#include "model/outline.h"
#include "model/plan.h"
#include "model/trace.h"
#include "paint/drawing.h"

/* What is being drawn by hand. */
typedef struct
{
  const GArray *corners; /* TraceCorner; borrowed */
  gboolean has_tip;      /* the next side follows the pointer, from the last corner */
  TraceCorner tip;       /* where that would end: in line with the last corner */
  const char *typed;     /* the length being typed; NULL or "": none */
} PlanTrace;

typedef struct
{
  const Project *project; /* borrowed */
  WallId wall;            /* its openings are dimensioned; none: no wall's */
  OpeningId opening;      /* or none */
  WallId meeting[2];      /* the first and the second wall of the one that is chosen; or none */
  const PlanTrace *trace; /* over all of it; NULL: none */
  gboolean set_out; /* to be set out from: every wall's openings and meeting walls dimensioned,
                       corners lettered, lengths across */
} PlanInput;

/* Every wall that stands somewhere: its faces, openings, meetings, dimensions. A solid line is a
 * joint of the odd courses, a dashed one of the even courses under them, a double one a joint of
 * all courses. Never NULL. */
Drawing *plan_drawing (const PlanInput *input);
/* What is chosen: a few marks in LAYER_OVERLAY. Never NULL. */
Drawing *plan_overlay (const PlanInput *input);

/* What all walls that stand somewhere cover; FALSE: none does. */
gboolean plan_bounds (const Project *project, PlanBox *out);
/* Room that dimensions and names take around the walls, sheet steps: at each side, and at the top
 * and the foot. */
#define PLAN_MARGIN_SIDE 128.0
#define PLAN_MARGIN_END 84.0
/* The same of a plan to set out from. */
#define PLAN_SET_OUT_SIDE 152.0
#define PLAN_SET_OUT_END 108.0

/* The view that shows all of it with its dimensions within width x height sheet steps, and `more`,
 * which may be NULL. */
View plan_fit (const Project *project, const PlanBox *more, double width, double height);

/* An outline that is being typed, its last side perhaps not closing: sides with their lengths, and
 * how far the end misses the beginning. The outline begins at 0, 0. Never NULL. */
Drawing *plan_sketch (const GArray *sides);
View plan_sketch_fit (const GArray *sides, double width, double height);
