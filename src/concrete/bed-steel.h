/* bed-steel.h - bars in the bed joints: which courses have them, from where to where */
#pragma once

#include "bond/layout.h"
#include "model/wall.h"

/* One run of bars side by side along a course, between two openings or ends. */
typedef struct
{
  gint32 course;   /* in the top of this course */
  Length from, to; /* where the bars begin and end, cover at free ends taken off */
  gint32 bars;
  Length diameter;
  gint32 n_laps;     /* overlaps where stock lengths end */
  Length bar_length; /* of one bar line along the run, laps included */
} SteelRun;

/* Stock length of bars, 6 m, and cover at a free end or jamb, 25 mm: common practice. */
#define STEEL_STOCK LENGTH_MM (6000)
#define STEEL_END_COVER LENGTH_MM (25)

/* The runs of a wall, by course, then from the left: SteelRun in a new array; empty without steel.
 */
GArray *bed_steel_runs (const Wall *wall, const Block *block);
/* Whether course `number` has a row by rule or by hand. */
gboolean bed_steel_has_row (const Wall *wall, const Block *block, gint32 number);
/* The course whose row belongs under an opening's sill: the nearest with its top at the sill or
 * below it; and over its head: the lowest that has pieces over it. 0 when there is none. */
gint32 bed_steel_course_under (const Wall *wall, const Block *block, const Opening *opening);
gint32 bed_steel_course_over (const Wall *wall, const Block *block, const Opening *opening);
/* The wall with the row of that course switched: adds or removes a steel-row. New reference. */
Wall *bed_steel_toggle (const Wall *wall, const Block *block, gint32 number);
/* Nominal mass of a bar, kg/m: EN 10080, 0.00617 d2 with d in mm (7850 kg/m3), from memory. */
double bed_steel_mass_per_metre (Length diameter);
