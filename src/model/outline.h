/* outline.h - the outside of a building, side by side, and the walls that make it */
#pragma once

#include "model/wall.h"

/* One side, from corner to corner of the outer face, and the turn at its end. Against the clock, so
 * that the building lies to the left: a turn to the left is an outer corner. */
typedef struct
{
  Length length;
  gboolean right; /* the turn at its end, a right angle: to the right, an inner corner; else left */
} OutlineSide;

/* Reads "8000 6000 8000 6000", lengths as length_parse_typed() reads them, parted by spaces, commas
 * or semicolons; a "R" between two lengths is a turn to the right, nothing or "L" one to the left.
 * "8000 x 6000" is a rectangle. OutlineSide in a new array, or NULL and a sentence. */
GArray *outline_parse (const char *text, char **fault);

/* By how much the last side misses the beginning: to the east and to the north, 0 and 0 where it
 * closes; the first side runs east. */
void outline_gap (const GArray *sides, gint64 *east, gint64 *north);

/* What is wrong as a new sentence, NULL when nothing is: fewer than four sides, lengths beyond what
 * a wall may have, not closed (by how much and where), the inside lies to the right, or two sides
 * cross or touch (which, and where). */
char *outline_fault (const GArray *sides);

/* The walls of an outline without a fault, of such thickness and height, each from face to face
 * with the squares of its corners; the first begins at x, y. Wall *, owned by the array, without
 * ids, names or blocks; new. How corners are made is not said. */
GPtrArray *outline_walls (const GArray *sides, Length thickness, Length height, Length x, Length y);
