/* rod.h - the storey rod: tops of courses, the heights that should meet them, and which levelling
 * bed and bed joint let most of them */
#pragma once

#include "model/project.h"

typedef enum
{
  ROD_SILL,
  ROD_HEAD,
  ROD_TOP, /* of the wall, where the plate lies */
} RodKind;

/* A height and what becomes of the course that it is in. */
typedef struct
{
  RodKind kind;
  OpeningId opening; /* none: the wall's top */
  Length z;          /* above the foundation */
  gint32 course;     /* that it is in, or whose top or bottom it meets; 0: the levelling bed */
  Length rip;        /* height of the strip that is cut for it: under a sill and under the wall's
                        top, over a head; 0: none is */
  Length pack;       /* mortar instead of a strip, up to 20 mm: GAUGE_PACKING_MAX */
} RodMark;

/* Marks of a wall with that laying, which is resolved: RodMark, upwards; new. Sills on the
 * foundation (doors) are none. */
GArray *rod_marks (const Wall *wall, const Block *block, const Laying *laying);

/* One levelling bed and bed joint, and what all marks of the walls make of it. */
typedef struct
{
  Length first_bed, bed;
  guint marks, met; /* met: no strip is cut for it */
  Length ripped;    /* heights of all strips */
  Length packed;
} RodChoice;

/* What is tried: from .. to in steps, all in Length; the steps are more than 0. */
typedef struct
{
  Length first_bed[2], first_bed_step;
  Length bed[2], bed_step;
} RodRange;

/* Every choice of the range for the walls of `wall`, or of all walls where that is none: RodChoice,
 * best first; new. Best is: most marks met, then the least packed, then nearest to what the first
 * wall has. At most ROD_MOST choices are tried, the step being widened. */
#define ROD_MOST 20000
GArray *rod_choices (const Project *project, WallId wall, const RodRange *range);

/* A wall like it whose sills and heads were moved to the nearest courses, sills to a top, heads to
 * a top or a bottom, where openings stay within the wall and clear of each other; the same where
 * none can be. New. */
Wall *rod_to_gauge (const Wall *wall, const Block *block);
