/* rod.h - the storey rod: tops of courses, the heights that should meet them, and which levelling
 * bed and bed joint let most of them */
#pragma once

#include "model/edit.h"

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
 * foundation (doors) are none, nor is a top that is not level: no course ends with it. */
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

/* Levelling beds of 10 to 40 mm, every millimetre: they can be worked; bed joints of 1 to 3 mm,
 * every half: thin-bed mortar. Common practice. */
RodRange rod_range_usual (void);

/* Every choice of the range for the walls of `wall`, or of all walls where that is none: RodChoice,
 * best first; new. Best is: most marks met, then the least packed, then nearest to what the first
 * wall has. At most ROD_MOST choices are tried, the step being widened. `stop` is as in
 * lay_wall(); those that were tried by then are given. */
#define ROD_MOST 20000
GArray *rod_choices (const Project *project, WallId wall, const RodRange *range, const gint *stop);

/* What the walls have: the beds are those of the first of them, the rest is counted of all. */
RodChoice rod_now (const Project *project, WallId wall);

/* A strip that a choice leaves. */
typedef struct
{
  guint wall; /* in the project's order */
  RodMark mark;
} RodStrip;

/* Those that it leaves in the walls of `wall`, or in all walls; as they are, where `choice` is
 * NULL: RodStrip, wall by wall, upwards; new.
 */
GArray *rod_strips (const Project *project, WallId wall, const RodChoice *choice);

/* Gives these walls, or all of them, the beds of the choice; NULL where they have them. New. */
Edit *rod_choose (const Project *project, WallId wall, const RodChoice *choice);

/* The height nearest to it at which neither strip nor packing is wanted; where it is one, the same.
 */
Length rod_gauge_of (const Wall *wall, const Block *block, const RodMark *mark);
/* A wall like it with that one height moved there; NULL where it is there, and where the wall could
 * not be so. New. */
Wall *rod_mark_to_gauge (const Wall *wall, const Block *block, const RodMark *mark);

/* A wall like it whose sills and heads were moved to the nearest courses, sills to a top, heads to
 * a top or a bottom, where openings stay within the wall and clear of each other, and of what
 * stands beside them; the same where none can be. New. */
Wall *rod_to_gauge (const Wall *wall, const Block *block);
