/* shared.h - pieces of other walls that are seen where walls meet
 *
 * The square that two walls share belongs, in each course, to the one that runs through. Its piece
 * is in that wall's layout and is counted there; the other wall only shows it. */
#pragma once

#include "bond/layout.h"
#include "model/project.h"

/* What a wall shows of another in one course. */
typedef struct
{
  gint32 course;    /* of both: courses of walls that are bonded lie level */
  Length x, length; /* in the wall that shows it: the other wall's face and thickness */
  guint wall;       /* whose it is, in the project */
  guint piece;      /* in that wall's layout: where it ends there, its end piece; at a crossing the
                       first that lies in the square */
} SharedPiece;

/* What wall `wall` of the project shows: SharedPiece, by meeting, then upwards; new. `layouts` has
 * a Layout for each wall that meets it; where one is NULL, or has no piece there, nothing is told.
 */
GArray *shared_pieces (const Project *project, Layout *const *layouts, guint wall);
