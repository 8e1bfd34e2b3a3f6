/* bed.h - the levelling bed under the first course, from the levels of the footing
 *
 * The underside of course 1 lies at one level all round; the bed is as thick as the footing is
 * lower than that. Between two surveyed points of a wall the footing is taken to be straight,
 * beyond the outer ones to go on level; where it is stepped, but for its steps as they are drawn.
 * On a step the bed is under the course that begins there (docs/tops.md).
 *
 * In the drawing the underside of course 1 is the wall's `first-bed` above zero. So zero of the
 * drawing lies at first_course less the first-bed of the first surveyed wall; walls whose first-bed
 * differs from that are as much higher or lower as it does (their `raise`). */
#pragma once

#include "site/level.h"

#include "model/project.h"

/* A surveyed point on the wall's foot. */
typedef struct
{
  Length x;
  Length level; /* in the survey's datum */
  guint row;    /* of the survey: the first of those at this place */
} FootPoint;

typedef struct
{
  Length x;
  Length foot;   /* level of the footing */
  Length bed;    /* thickness; negative: the footing is above the underside of course 1 */
  gint point;    /* FootPoint at this place; -1: none was read here */
  gboolean laid; /* blocks stand here; FALSE within a door to the floor */
} BedPlace;

/* A stretch of one wall in which the bed cannot be laid as the footing is. */
typedef struct
{
  gboolean grind;  /* the bed would be thinner than the least: grind the footing down; else thicker
                      than the most: build it up */
  Length from, to; /* along the wall */
  Length at;       /* where it is worst, and */
  Length amount;   /* by how much there */
  double volume;   /* mm3, the whole width of the wall */
} BedWork;

typedef struct
{
  const Wall *wall;          /* borrowed from the project */
  Length raise;              /* see above */
  GArray *foot;              /* FootPoint, by x, one at a place; at least one */
  GArray *runs;              /* BedRun: where blocks stand on the bed, from the left */
  GArray *rises;             /* Length: by step of the footing, how much higher they begin on it */
  GArray *places;            /* BedPlace, by x: both ends, every 2 m, every surveyed point */
  GArray *works;             /* BedWork, by x */
  Length thinnest, thickest; /* of the bed under the blocks */
  double mortar;             /* mm3, with the footing ground and built up where it must be */
} BedWall;

typedef struct
{
  Length from, to;
} BedRun;

typedef struct
{
  const Wall *wall;
  Length x, level;
} BedSpot;

typedef struct
{
  GPtrArray *walls;        /* BedWall *: the surveyed ones, in the project's order; may be empty */
  gboolean known;          /* there is one, and blocks stand on it: what follows holds */
  BedSpot highest, lowest; /* of the footing under the blocks, as course 1 sees it */
  Length least, wanted, most;
  Length first_course; /* level of the underside of course 1 */
  Length zero;         /* level of zero of the drawing */
  gboolean chosen;     /* by the builder; else it was found */
  gboolean possible;   /* some level keeps the bed within its limits everywhere; from.. to: */
  Length from, to;
  gboolean within;              /* first_course does */
  double mean;                  /* mm, the bed's mean thickness at first_course */
  double mortar, ground, built; /* mm3, of all walls */
  GPtrArray *notes;             /* char *: sentences of what was taken for granted */
} Beds;

/* Of a project with a survey, whose book is `book`; of one without, NULL and NULL. */
Beds *beds_new (const Project *project, const LevelBook *book);
/* The same with a book of its own. */
Beds *beds_of_project (const Project *project);
void beds_free (Beds *beds);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (Beds, beds_free)

/* NULL: the wall is not surveyed, or nothing is known of the first course. `beds` may be NULL. */
const BedWall *beds_wall (const Beds *beds, WallId wall);
/* Level of the footing and thickness of the bed at a place of the wall. */
Length bed_wall_foot (const BedWall *wall, Length x);
Length beds_thickness (const Beds *beds, const BedWall *wall, Length x);
/* "Street side, from 0 to 800 mm: grind the footing down, by 6 mm at 0 mm." Newly allocated. */
char *bed_work_sentence (const BedWall *wall, const BedWork *work);
