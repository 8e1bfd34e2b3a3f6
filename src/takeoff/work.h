/* work.h - the work that laid walls are: hours by course, handling, days, pallets
 *
 * All of it follows from a few figures that the builder sets (model/rates.h). Hours are those of
 * one person. */
#pragma once

#include "bond/layout.h"
#include "model/project.h"

/* DGUV Information 201-015, 2.2, 4.2: aerated concrete is reckoned 15 % heavier than dry; units
 * over 25 kg are not laid by hand. Over 20 kg one person does not lift again and again: HSE/CONIAC
 * sheet 37. In kg. */
#define HANDLING_MOISTURE 1.15
#define HANDLING_ALONE 20.0
#define HANDLING_BY_HAND 25.0
/* Delivered blocks hold more water yet, up to so much of their dry mass; a pallet is not to weigh
 * more than this, kg. Both common practice. */
#define PALLET_MOISTURE 1.35
#define PALLET_MASS 1000.0
/* What a pallet takes of a wall's foot. Common practice. */
#define PALLET_WIDTH LENGTH_MM (1200)
/* A wall that stands higher than this and is not yet held by floor or roof is braced. Common
 * practice. */
#define WORK_BRACED LENGTH_MM (1500)

typedef struct
{
  gint32 number; /* 1-based */
  Length bottom, top;
  gint32 pieces;
  gint32 cuts;                      /* straight cuts that its pieces take, see work_cuts() */
  double area;                      /* face of its pieces, m2 */
  double mass;                      /* of its pieces with HANDLING_MOISTURE, kg */
  double laying, sawing, levelling; /* hours */
} WorkCourse;

typedef struct
{
  GArray *courses; /* WorkCourse, from the bottom */
  WorkCourse sum;  /* number, bottom and top are 0 */
  gint32 heaviest; /* index of layout->pieces; -1: it has none */
  double mass;     /* of that piece with HANDLING_MOISTURE, kg */
} WorkWall;

/* Courses of a wall that are laid in a day. A course longer than a day's work is there on each of
 * its days. */
typedef struct
{
  guint wall;
  gint32 from, to; /* courses */
  gboolean braced; /* it stands over WORK_BRACED at the end of the day */
} WorkStint;

typedef struct
{
  guint first, n; /* of stints, in the order of the walls */
  double hours;
  double lifts; /* pieces laid */
  double mass;  /* of these with HANDLING_MOISTURE, kg */
} WorkDay;

/* What is needed of a kind of block, and how it comes. */
typedef struct
{
  gint32 blocks;   /* to order, of all walls */
  gint32 a_pallet; /* blocks on one, >= 1 */
  gint32 pallets;
} WorkBlocks;

/* A pallet at the foot of a wall. */
typedef struct
{
  guint block;         /* in the project's order */
  guint wall;          /* at whose foot it stands */
  Length x;            /* its middle, from the wall's left end */
  gint32 blocks;       /* that are laid from it */
  gboolean in_the_way; /* no place was left clear of doors and of other pallets */
} WorkPallet;

typedef struct
{
  WorkRates rates;
  GPtrArray *walls;   /* WorkWall *, in the project's order */
  GArray *days;       /* WorkDay */
  GArray *stints;     /* WorkStint */
  WorkBlocks *blocks; /* one for each block of the project, in its order */
  GArray *pallets;    /* WorkPallet, by block, then along the walls */
  double hours;       /* of all walls */
} Work;

/* `layouts` has one Layout per wall of the project, in its order, none NULL; units to order are
 * those of takeoff_new(). `stop` as in lay_wall(); NULL when stopped. */
Work *work_new (const Project *project, Layout *const *layouts, const WorkRates *rates,
                const gint *stop);
void work_free (Work *work);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (Work, work_free)

/* Straight cuts of a piece out of a whole unit: one where it is shorter, one where it is lower, and
 * one for each edge of its outline within its box. Pieces that share a cut in one unit count it
 * twice, so it is rather too many. */
gint32 work_cuts (const Layout *layout, const Piece *piece, const Block *block);

/* What the guidance says of a piece that heavy, kg; translated. */
const char *work_handling_text (double mass);

static inline double
work_course_hours (const WorkCourse *course)
{
  return course->laying + course->sawing + course->levelling;
}
static inline const WorkWall *
work_wall (const Work *work, guint i)
{
  return (const WorkWall *) g_ptr_array_index (work->walls, i);
}
