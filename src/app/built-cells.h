/* built-cells.h - what is typed of a wall as it was built: each figure as text, and back
 *
 * No widgets. */
#pragma once

#include "site/as-built.h"

typedef enum
{
  BUILT_OF_WALL,    /* BuiltFigure; row 0 */
  BUILT_OF_COURSE,  /* its measured top: Side; the row is the course, from 1 */
  BUILT_OF_OPENING, /* OpeningFigure; the row is OpeningId.n */
} BuiltPart;

typedef enum
{
  FIGURE_AS_OF, /* a date, any text */
  FIGURE_LENGTH,
  FIGURE_PLUMB,
  FIGURE_BOW,
  FIGURE_BOW_METRE,
  FIGURE_BED_LEAST,
  FIGURE_BED_MOST,
  N_BUILT_FIGURES,
} BuiltFigure;

typedef struct
{
  BuiltPart part;
  guint32 row;
  guint column;
} BuiltCell;

static inline gboolean
built_cell_equal (const BuiltCell *a, const BuiltCell *b)
{
  return a->part == b->part && a->row == b->row && a->column == b->column;
}

/* "Length", "Course 3, right end", "W1, left jamb". Newly allocated. */
char *built_cell_name (const Wall *wall, BuiltCell cell);
/* What was measured; "" where nothing was. Newly allocated. */
char *built_cell_text (const Wall *wall, BuiltCell cell);
/* FALSE: nothing is planned of it, or it is not a length. */
gboolean built_cell_planned (const Wall *wall, const Block *block, BuiltCell cell, Length *planned);
/* The wall with that figure, new; "" takes it back. NULL with a sentence when it is not understood;
 * whether it can be is for project_edit() to say. */
Wall *built_cell_set (const Wall *wall, BuiltCell cell, const char *text, GError **error);
/* The cell that a deviation is told of; FALSE: it is of none. */
gboolean built_cell_of_deviation (const Deviation *deviation, BuiltCell *cell);

/* The wall as it was planned, of which nothing stands and nothing was measured; new. */
Wall *built_as_planned (const Wall *wall);
