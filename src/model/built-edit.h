/* built-edit.h - figures of the site, taken into a wall and taken back
 *
 * Each gives the wall as it is to be, new, for edit_set_wall(); or NULL with MODEL_ERROR_REFUSED
 * and a sentence, and nothing is changed. Whatever else cannot be (a course lower than the one
 * below it, an opening beyond the wall) is refused by project_edit(). */
#pragma once

#include "model/edit.h"

/* Courses 1 to `courses` stand. How those that did not stand before are laid is said by `laid`:
 * LaidCourse, of each of them one at least, in any order, others are passed over; it may be NULL
 * where courses are only taken back. With them goes what was measured of them. `as_of` is kept
 * where it is NULL. Refused: a number that is negative, or a course that nothing is said of. */
Wall *built_set_courses (const Wall *wall, gint32 courses, const GArray *laid, const char *as_of,
                         GError **error);

/* The wall measured to be so long; what was planned is kept. NULL: the measured length is taken
 * back, and the planned one holds again. What is placed along the wall stays where it is, from the
 * left end. */
Wall *built_set_length (const Wall *wall, const Length *measured);

/* The figures of an opening that can be measured. */
typedef enum
{
  FIGURE_X,
  FIGURE_WIDTH,
  FIGURE_SILL,
  FIGURE_HEIGHT,
  N_FIGURES,
} OpeningFigure;

/* "x", "width", "sill", "height": the words of the file. */
const char *opening_figure_word (OpeningFigure figure);
/* What it is, and what was planned: the same where it was not measured. */
Length opening_figure (const Opening *opening, OpeningFigure figure);
Length opening_planned (const Opening *opening, OpeningFigure figure);
gboolean opening_is_measured (const Opening *opening, OpeningFigure figure);

/* The same of an opening's figure; the other figures stay as they are. Refused: the wall has no
 * such opening. */
Wall *built_set_opening (const Wall *wall, OpeningId opening, OpeningFigure figure,
                         const Length *measured, GError **error);

/* The top of a standing course, above the foundation, measured at its left end and, unless NULL, at
 * its right end; `left` NULL: both are taken back. Refused: the course does not stand. */
Wall *built_set_top (const Wall *wall, gint32 course, const Length *left, const Length *right,
                     GError **error);

/* One of plumb, bow and what limits the next beds: a single BuiltField bit but
 * BUILT_PLANNED_LENGTH. NULL: it is taken back. */
Wall *built_set_figure (const Wall *wall, BuiltField field, const Length *measured);

/* In a wall that the caller may change: nothing of it stands, nothing was measured, and what was
 * planned holds again. */
void built_take_all (Wall *wall);
