/* level.h - a level book reduced: the level of every point, and whether the book closes
 *
 * Both ways of reducing it are gone, each by itself: height of collimation (the level of the
 * line of sight less the reading) and rise and fall (from one reading to the next). They must
 * agree, and the sum of the backsights less that of the foresights must be the sum of the rises
 * less that of the falls and the last level less the first. Rules: textbooks of surveying; that a
 * closing error is shared out by set-ups, and allowed as their root, is from memory.
 *
 * Whole numbers all through. Nothing is refused: a row that cannot be reduced has no level, and a
 * sentence says why. */
#pragma once

#include "model/survey.h"

typedef struct
{
  gint32 setup; /* the set-up, from 1, that read it; of a first backsight, the one it begins; 0:
                   none */
  gboolean has_rise; /* it was read after another reading of the same set-up */
  Length rise;       /* from that reading to this one; negative: a fall */
  gboolean has_level;
  Length raw;         /* as read, from the first known level of its line on */
  Length correction;  /* its share of the closing error; raw + correction == level */
  Length level;       /* corrected */
  Length collimation; /* of the line of sight of the set-up that begins here, uncorrected */
  gboolean begins;    /* a set-up begins here: collimation holds when has_level */
} LevelRow;

/* A second way to one level. */
typedef struct
{
  guint row;      /* where it was met again */
  guint from;     /* the row of the tie before, or of the first reading of the point */
  gint32 setups;  /* between them, at least 1 */
  Length error;   /* as read, less what it should be */
  Length allowed; /* tolerance times the root of setups */
  gboolean within;
  gboolean shared; /* the error was shared out; else it is a point read twice */
} LevelClosing;

typedef struct
{
  guint row;
  char *text; /* a sentence that begins with the row and the point */
} LevelFault;

typedef struct
{
  gboolean has_level;
  Length level;
} LevelPoint;

typedef struct
{
  GArray *rows;     /* LevelRow, one for each reading of the survey */
  GArray *closings; /* LevelClosing, by row */
  GArray *faults;   /* LevelFault, by row */
  gint32 n_setups;
  gboolean has_levels; /* some row has a level */
  gboolean local;      /* no level is known: the first point is taken as 0 */
  /* Sums over all unbroken lines of the book; the last reading of a line is its foresight. */
  gint64 back, fore, rise, fall, last_less_first;
  gboolean agrees;  /* those three differences, and both ways to every level */
  gboolean closes;  /* no closing error is beyond what is allowed */
  gboolean checked; /* there is a closing error at all */
  GArray *points;   /* LevelPoint, one for each reading: see level_of_point() */
} LevelBook;

LevelBook *level_book_new (const Survey *survey);
void level_book_free (LevelBook *book);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (LevelBook, level_book_free)

static inline const LevelRow *
level_row (const LevelBook *book, guint i)
{
  return &g_array_index (book->rows, LevelRow, i);
}

/* The level of the point of that row: the mean of all its levels, a known one as it is known.
 * FALSE: it has none. */
gboolean level_of_point (const LevelBook *book, guint row, Length *level);

/* "Row 4 (BM): closes 3 mm high after 2 set-ups; 7.1 mm are allowed." Newly allocated. */
char *level_closing_sentence (const Survey *survey, const LevelClosing *closing);

/* Whether a column of levels, one for each row, is what the readings say: NULL, or a sentence of
 * the first row that differs. */
char *level_column_fault (const Survey *survey, const Length *levels);
