/* plan.h - walls in plan: where they stand, where they meet, and how each meeting is made
 *
 * docs/building.md says what the words mean. What walls say of their ends and tees is what counts;
 * this reads it, and writes it on both sides of a meeting at once. */
#pragma once

#include "model/project.h"

/* What a wall covers: x0 < x1 to the east, y0 < y1 to the north. */
typedef struct
{
  gint64 x0, y0, x1, y1;
} PlanBox;

/* Of a wall that stands somewhere; `thickness` is its block's. */
PlanBox plan_box (const Wall *wall, Length thickness);

typedef enum
{
  MEET_CORNER,   /* at an end of both */
  MEET_TEE,      /* at an end of the first, within the second */
  MEET_CROSSING, /* within both */
  MEET_WRONG,    /* they stand in each other's way: no square of their thicknesses is shared */
} MeetKind;

typedef enum
{
  MADE_FIRST_ODD,      /* bonded: the first runs through in odd courses, the second in even ones */
  MADE_FIRST_EVEN,     /* bonded, the other way round */
  MADE_FIRST_THROUGH,  /* butted: the first runs through in every course */
  MADE_SECOND_THROUGH, /* butted, the other way round */
  MADE_UNSAID,         /* neither wall says anything */
  MADE_CONTRARY,       /* what they say does not fit together */
} MeetMade;

typedef struct
{
  MeetKind kind;
  guint wall[2]; /* in the project's order; at a tee the one that ends there comes first */
  Side side[2];  /* its end, where it ends there: of both at a corner, of the first at a tee */
  Length at[2];  /* left edge of the shared square, along each wall from its left end */
  PlanBox box;   /* what they share */
  MeetMade made;
} Meeting;

/* Whether the wall ends in the shared square: `which` is 0 or 1. */
static inline gboolean
plan_ends_there (const Meeting *meeting, int which)
{
  return meeting->kind == MEET_CORNER || (meeting->kind == MEET_TEE && which == 0);
}

/* All of a project: Meeting, by first wall, then along it; new. At a corner the wall that comes
 * first in the project is the first. */
GArray *plan_meetings (const Project *project);

/* Says on one of the two walls, which the caller may change, how the meeting is made: `which` is 0
 * or 1, `other` the other wall's thickness; `made` is none of the last two. */
void plan_say (const Meeting *meeting, int which, MeetMade made, Wall *wall, Length other);

/* Says on both walls, which the caller may change, how their meeting is made: ends and tees. `a`
 * and `b` are the first and the second wall, of such thicknesses; `made` is none of the last two.
 */
void plan_make (const Meeting *meeting, MeetMade made, Wall *a, Length a_thickness, Wall *b,
                Length b_thickness);

/* How the meeting is meant to be made, where its sides contradict each other or say nothing: as
 * plan_settled() would make it. */
MeetMade plan_meant (const Project *project, const Meeting *meeting, WallId said_by);

/* The walls of `next` whose ends or tees are not as their meetings want them, as they are to be:
 * Wall *, owned by the array; empty when all is well. What one wall of a meeting says is said on
 * both; where they contradict each other, `said_by` is believed, else the first. A meeting that is
 * unsaid is bonded, the wall that runs east or west running through in odd courses, a partition in
 * even ones. Ends and tees that a meeting of `before` made, and that nothing meets now, are free.
 * `before` is the same project before an edit. */
GPtrArray *plan_settled (const Project *before, const Project *next, WallId said_by);

/* The meetings of one wall alone, by its place in the project: sooner. */
GArray *plan_meetings_of (const Project *project, guint wall);
