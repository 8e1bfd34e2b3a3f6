/* ties.h - where the ties of butted walls lie: in which bed, and at which face */
#pragma once

#include "model/plan.h"

/* All that lie in one bed at one face of a wall that runs through. */
typedef struct
{
  gint32 course;  /* of the butted wall: on the top of this one */
  Length z;       /* height of that bed above the foundation */
  Length x;       /* the face, from the butted wall's left end */
  gboolean right; /* the butted wall lies right of it, else left */
  TieKind kind;
  gint32 abreast; /* how many: > 0 */
} TieRow;

/* Those of a wall's butted ends and tees, by course, then from the left: TieRow in a new array. No
 * course is tied at its top where none lies on it, nor where an opening leaves no masonry at the
 * face. */
GArray *ties_of_wall (const Wall *wall, const Block *block);

/* A row as it is seen in the wall that runs through. */
typedef struct
{
  WallId butted; /* whose ties they are, and where they are counted */
  gint32 course; /* of this wall: the one whose top is nearest to their bed */
  Length z;
  Length x, width; /* what the butted wall covers of this one, from this wall's left end */
  TieKind kind;
  gint32 abreast;
} TieEnd;

/* The rows of other walls that lie in this one, or are screwed to it, by course, then from the
 * left: TieEnd in a new array. */
GArray *ties_into_wall (const Project *project, guint wall);

/* How many: all of the rows. */
gint32 ties_count (const GArray *rows);
