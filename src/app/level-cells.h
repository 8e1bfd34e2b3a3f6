/* level-cells.h - what is typed into the level book: each value as text, and back
 *
 * No widgets. Walls are named by their number in the list of walls, from 1, by their name or by
 * their id. */
#pragma once

#include "model/project.h"

typedef enum
{
  LEVEL_OF_READING,  /* a row of the book; LevelColumn */
  LEVEL_OF_LIMIT,    /* what is asked for; LevelLimit, all of row 0 */
  LEVEL_OF_DIAGONAL, /* "1 2 7437": two walls, what was measured, and two legs if they are not the
                        walls: "1 2 5004 3000 4000" */
} LevelPart;

typedef enum
{
  LEVEL_POINT,
  LEVEL_WHERE, /* "1 left, 2 right", "3 2400": places on walls */
  LEVEL_BACK,
  LEVEL_INTER,
  LEVEL_FORE,
  LEVEL_KNOWN,
  N_LEVEL_COLUMNS
} LevelColumn;

typedef enum
{
  LEVEL_LEAST,
  LEVEL_WANTED,
  LEVEL_MOST,
  LEVEL_FIRST_COURSE,
  LEVEL_TOLERANCE,
  LEVEL_SQUARE,
  LEVEL_TAPE,
  N_LEVEL_LIMITS
} LevelLimit;

typedef struct
{
  LevelPart part;
  guint row;
  guint column;
} LevelCell;

/* How many there are in one row. */
guint level_part_columns (LevelPart part);
/* "Backsight"; translatable. */
const char *level_cell_name (LevelCell cell);
/* What it says; "" where nothing is said, also of a row that is not there. Newly allocated. */
char *level_cell_text (const Project *project, const Survey *survey, LevelCell cell);
/* What holds where nothing is said, or an example of what may be; or "". Newly allocated. */
char *level_cell_default (LevelCell cell);
/* Makes it say `text`, in a survey that the caller may change; a row after the last one is added
 * when it is to say something, and a diagonal that says nothing is taken out. FALSE with a
 * sentence, and nothing changed, when the text is not understood. */
gboolean level_cell_set (const Project *project, Survey *survey, LevelCell cell, const char *text,
                         GError **error);

/* Adds a row of the book as it is called out: a name, then "b1412" for a backsight, "f1433" for a
 * foresight, a bare number for an intermediate sight, "=100000" for a known level, and "@1 left, 2
 * right" for its places at the end. FALSE with a sentence, and nothing changed, when the text is
 * not understood. */
gboolean level_quick_add (const Project *project, Survey *survey, const char *text, GError **error);

/* Puts an empty row before `row`, or takes that row out, in a survey that the caller may change.
 * FALSE when there is no such row. */
gboolean level_insert_row (Survey *survey, guint row);
gboolean level_remove_row (Survey *survey, guint row);

/* A reading or a level: a number with three places after the point and no unit is metres, as staffs
 * are read; anything else is as length_parse_typed() reads it. */
gboolean level_parse (const char *text, Length *out);
