/* built.h - what was measured of a wall while it went up, and what of it stands
 *
 * A measured figure is the wall's own from then on; what was planned in its place is kept beside
 * it. What follows from that is found in src/bond (heights and pieces) and src/site. */
#pragma once

#include "model/block.h"
#include "model/foreign.h"
#include "model/laying.h"
#include "model/length.h"

/* Left face of a piece that its run does not begin with. */
typedef struct
{
  Length x; /* from the wall's left end, > 0 */
  Length z; /* where two runs of the course lie one above the other: a height within the piece,
               above the foundation, >= 0; else PERPEND_ALL */
} LaidPerpend;

#define PERPEND_ALL (-1)

/* One course that stands. */
typedef struct
{
  gint32 course;    /* 1-based */
  GArray *perpends; /* LaidPerpend, ascending by x, then z, none twice; never changed, but shared */
  guint given;      /* LaidField bits */
  gint32 over;      /* how many courses were held fast when the wall was laid as it is here, 0 ..
                       course - 1; left out: all below it, and what lies above is found anew */
  Length bottom;    /* where it was to lie when it was written down; left out: one bed above the
                       course below it */
  Length top;       /* measured, at the left end, above the foundation */
  Length top_right; /* measured, at the right end; only where `top` is */
  Foreign foreign;
} LaidCourse;

typedef enum
{
  LAID_BOTTOM = 1 << 0,
  LAID_TOP = 1 << 1,
  LAID_TOP_RIGHT = 1 << 2,
  LAID_OVER = 1 << 3,
} LaidField;

/* All of one wall. */
typedef struct
{
  gint32 courses;        /* 0 .. BUILT_MAX_COURSES: laid up to that one */
  guint given;           /* BuiltField bits */
  Length planned_length; /* what the wall's length was before it was measured */
  Length plumb;          /* out of plumb over its height, + outwards */
  Length bow;            /* off the line over its length, + outwards */
  Length bow_metre;      /* the same in any one metre */
  Length bed_least;      /* how thin and how thick the next beds may be */
  Length bed_most;
  char *as_of;  /* a date as text; NULL: none */
  GArray *laid; /* LaidCourse, those of 1 .. courses */
  Foreign foreign;
} Built;

typedef enum
{
  BUILT_PLANNED_LENGTH = 1 << 0,
  BUILT_PLUMB = 1 << 1,
  BUILT_BOW = 1 << 2,
  BUILT_BOW_METRE = 1 << 3,
  BUILT_BED_LEAST = 1 << 4,
  BUILT_BED_MOST = 1 << 5,
} BuiltField;

#define BUILT_MAX_COURSES 10000
#define BUILT_MAX_PERPENDS 5000 /* in one course */
/* Out of plumb or off the line: more is another wall. */
#define BUILT_MAX_OFF LENGTH_MM (1000)
#define BUILT_MAX_BED LENGTH_MM (50)

/* Nothing measured, nothing standing. */
Built *built_new (void);
/* Takes NULL too, and gives it. */
Built *built_copy (const Built *built);
void built_free (Built *built);
/* NULL equals NULL alone. */
gboolean built_equal (const Built *a, const Built *b);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (Built, built_free)

/* No perpends, nothing given. */
LaidCourse laid_course_new (gint32 course);
LaidCourse laid_course_copy (const LaidCourse *laid);
void laid_course_clear (LaidCourse *laid);
gboolean laid_course_equal (const LaidCourse *a, const LaidCourse *b);

static inline const LaidCourse *
built_course (const Built *built, gint32 number)
{
  return &g_array_index (built->laid, LaidCourse, number - 1);
}

/* Its measured top, the mean of both ends where both were measured; FALSE: it was not. */
gboolean laid_course_top (const LaidCourse *laid, Length *top);

/* Bottoms of the courses that stand, `built->courses` of them; new. `laying` is resolved, `unit` is
 * the block's height. A measured course lies one unit under its top; between two of them all beds
 * are equal; above the last one, beds are as they were when the course was written down; below the
 * first one, too, and the levelling bed takes the difference; where that is not enough, those beds
 * are equal, on the foundation. */
Length *built_bottoms (const Built *built, const Laying *laying, Length unit);

/* All places along the wall go by so much: the wall's left end moved. */
void built_shift (Built *built, Length by);

/* What cannot be, as a sentence; NULL when nothing is. `height` is the wall's; `block` may be NULL
 * when it is not known, heights are then not compared. */
char *built_fault (const Built *built, const Laying *laying, const Block *block, Length height);
