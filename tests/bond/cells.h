/* cells.h - walls whose every length along the wall is a whole number of cells, and their best
 * laying
 *
 * With the order of things fixed (which piece begins before which jamb, which laps are kept) every
 * condition is that two faces are at least or at most so many cells apart. Such a system has an
 * answer in whole cells when it has any: what is best on the cells is best of all. The one strict
 * condition there is - that a piece reaches over a jamb, be it by a hair - makes a difference for
 * strips below the thinnest alone: no opening leaves any here. */
#pragma once

#include "any-wall.h"

#define CELLS_MAX_COURSES 10
#define CELLS_MAX_LENGTH 384

typedef struct
{
  Block block;
  Wall *wall;
  Length cell;
  int n_courses;
  int length, unit, head, min_piece, min_lap; /* cells, see cells_make() */
  /* Height that a course has free in each cell, 1/320 mm; 0: none. Segments are unbroken stretches
   * of cells with some; `full` is a whole unit's height. */
  Length free[CELLS_MAX_COURSES][CELLS_MAX_LENGTH];
  Length full, min_rip;
} Cells;

typedef enum
{
  CELLS_TINY,  /* 1 .. 3 courses, up to three units and a half, any limits */
  CELLS_HOUSE, /* 4 .. 10 courses, 3 .. 9 m, limits as usual */
  CELLS_FINE,  /* the same with a unit of 24 cells */
} CellsKind;

/* A wall made up from a number; clear it. Joints are dry or a cell wide (`head`), or else `head` is
 * 0 and each length in cells has a joint in it: that of a piece, and of the wall, the one after it,
 * while openings are a joint wider than their cells. */
Cells cells_make (CellsKind kind, guint64 seed);
void cells_clear (Cells *cells);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Cells, cells_clear)

/* Cuts and breaches of one piece of a course, from a face to the next. */
typedef struct
{
  int breaches, cuts;
} CellsCost;

CellsCost cells_piece (const Cells *cells, int course, int from, int to);

/* Looks at every layout of a wall of up to three courses, all courses at once, from the left to the
 * right: a table has the least breaches x `price` + cuts of each state, which is how far back each
 * course's last face lies and where its last perpends are. Price 0 .. 1000; of layouts of the same
 * sum it is not said which. The least lap is at most three cells. */
CellsCost cells_sweep (const Cells *cells, int price);

/* Fewest cuts without any breach, by a mixed-integer program: each course is a path over its faces,
 * and where a perpend and one of the next course would be nearer than the least lap, not both are
 * there. The least piece is no shorter than the least lap. */
typedef enum
{
  MILP_SOLVED,   /* to the end: *cuts is the least */
  MILP_NONE,     /* no layout keeps all rules */
  MILP_TOO_LONG, /* nothing is known */
} MilpResult;

MilpResult cells_milp (const Cells *cells, int seconds, int *cuts);
