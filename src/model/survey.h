/* survey.h - the level book of the footing as it was read, and the diagonals measured on it
 *
 * What was read and asked for, right or wrong: what follows from it, and whether it closes, is
 * found in src/site. A survey in a project is never changed; an edit sets another one. */
#pragma once

#include "model/foreign.h"
#include "model/ids.h"
#include "model/length.h"

/* Where on the building a point is. One point at a corner is on two walls. */
typedef struct
{
  WallId wall; /* of the project; none of one that is not there counts */
  Length x;    /* along the wall's foot, from its left end, >= 0; may be beyond its right end */
  Foreign foreign;
} SurveyPlace;

/* One row of the book. Readings are heights on the staff; negative: the staff hangs upside down
 * from the point. A change point has a foresight and a backsight. */
typedef struct
{
  char *point;    /* its name; may be empty, never NULL; the same name is the same point */
  guint given;    /* ReadingField bits */
  Length back;    /* backsight: the first reading of a set-up, on a point whose level is known */
  Length inter;   /* intermediate sight */
  Length fore;    /* foresight: the last reading of a set-up */
  Length level;   /* of a mark, in the survey's own datum */
  GArray *places; /* SurveyPlace; never NULL */
  Foreign foreign;
} Reading;

typedef enum
{
  READING_BACK = 1 << 0,
  READING_INTER = 1 << 1,
  READING_FORE = 1 << 2,
  READING_LEVEL = 1 << 3,
} ReadingField;

/* A length measured across a corner of the set-out footing. */
typedef struct
{
  char *name;           /* "A to C"; may be empty, never NULL */
  WallId along, across; /* the walls that meet at the corner */
  guint given;          /* DiagonalField bits */
  Length first;         /* from the corner along `along`; not given: that wall's length */
  Length second;        /* the same of `across` */
  Length length;        /* measured between those two points, always given, > 0 */
  Foreign foreign;
} Diagonal;

typedef enum
{
  DIAGONAL_FIRST = 1 << 0,
  DIAGONAL_SECOND = 1 << 1,
} DiagonalField;

typedef struct
{
  gatomicrefcount refs;
  guint given;         /* SurveyField bits: the others are as in survey_new() */
  Length least, most;  /* limits of the levelling bed */
  Length wanted;       /* the bed one would like, between them */
  Length tolerance;    /* of the closing error: this times the root of the number of set-ups */
  Length square;       /* a corner farther out of square than this, over a wall, is told */
  Length tape;         /* the longest length that can be measured at once */
  Length first_course; /* level of the underside of course 1, chosen; not given: is found */
  GArray *readings;    /* Reading, in the order of the book */
  GArray *diagonals;   /* Diagonal */
  Foreign foreign;
} Survey;

typedef enum
{
  SURVEY_LEAST = 1 << 0,
  SURVEY_WANTED = 1 << 1,
  SURVEY_MOST = 1 << 2,
  SURVEY_TOLERANCE = 1 << 3,
  SURVEY_SQUARE = 1 << 4,
  SURVEY_TAPE = 1 << 5,
  SURVEY_FIRST_COURSE = 1 << 6,
} SurveyField;

#define SURVEY_MAX_READINGS 5000
#define SURVEY_MAX_PLACES 20 /* of one reading */
#define SURVEY_MAX_DIAGONALS 1000
#define SURVEY_MAX_READING LENGTH_MM (20000)
#define SURVEY_MAX_BED LENGTH_MM (200)
#define SURVEY_MAX_TOLERANCE LENGTH_MM (100)

/* No readings. Bed 10, 25, 40 mm (common practice); tolerance 5 mm (common practice, from memory);
 * square 5 mm (ours: no published value was found); tape 30 m. Nothing of it given. The caller may
 * change it until it is put into a project. */
Survey *survey_new (void);
/* A deep copy that the caller may change. */
Survey *survey_copy (const Survey *survey);
Survey *survey_ref (const Survey *survey);
void survey_unref (Survey *survey);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (Survey, survey_unref)
/* NULL equals NULL alone. Walls are compared by their ids. */
gboolean survey_equal (const Survey *a, const Survey *b);

/* A row without any reading, place or name, put at the end; borrowed. */
Reading *survey_add_reading (Survey *survey);
void reading_add_place (Reading *reading, WallId wall, Length x);
/* A diagonal of nothing, put at the end; borrowed. */
Diagonal *survey_add_diagonal (Survey *survey);

static inline const Reading *
survey_reading (const Survey *survey, guint i)
{
  return &g_array_index (survey->readings, Reading, i);
}
static inline const Diagonal *
survey_diagonal (const Survey *survey, guint i)
{
  return &g_array_index (survey->diagonals, Diagonal, i);
}
static inline const SurveyPlace *
reading_place (const Reading *reading, guint i)
{
  return &g_array_index (reading->places, SurveyPlace, i);
}

gboolean survey_names_wall (const Survey *survey, WallId wall);
/* In one that the caller may change: takes out every place on that wall and every diagonal of it.
 */
void survey_forget_wall (Survey *survey, WallId wall);
/* Each wall's id becomes what `map` makes of it. */
void survey_map_walls (Survey *survey, WallId (*map) (WallId wall, gconstpointer data),
                       gconstpointer data);

/* What no survey can say, as a sentence; NULL when nothing is. A book that does not close is no
 * fault. */
char *survey_fault (const Survey *survey);
