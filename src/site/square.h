/* square.h - corners of the set-out footing: out of square in millimetres, and 3-4-5
 *
 * Whole numbers all through; source of the rules: a carpenters' framing handbook (3-4-5 and its
 * multiples, the biggest that the tape allows; a rectangle is square when both its diagonals are
 * equal), and the cosine rule. */
#pragma once

#include "model/project.h"

/* The nearest whole root of n >= 0, halves up. */
gint64 whole_root (gint64 n);
/* n / d rounded to the nearest, halves away from zero; d > 0. */
gint64 whole_ratio (gint64 n, gint64 d);

/* The diagonal of a right angle with these legs. */
Length square_diagonal (Length first, Length second);

/* How far the end of a line of length `over` along one leg is off the square line, when the legs
 * `first` and `second` (> 0) have their ends `diagonal` apart: over * -cos of the angle between
 * them. Positive: the corner is wider than square. FALSE when no triangle has these sides. */
gboolean square_out (Length first, Length second, Length diagonal, Length over, Length *out);

/* The greatest 3-4-5 triangle with whole multiples of `step`: 3, 4 and 5 times the same length,
 * its legs along lines of the lengths given, its diagonal within the tape. All 0: none. */
typedef struct
{
  Length first, second, diagonal;
} Square345;
Square345 square_345 (Length first, Length second, Length tape, Length step);

/* A measured diagonal of the survey, judged. */
typedef struct
{
  guint diagonal;             /* its place in the survey */
  const Wall *along, *across; /* borrowed from the project */
  Length first, second;       /* legs: as given, or the walls' lengths */
  Length measured, expected;
  gboolean possible; /* a triangle has these sides */
  Length off_along;  /* out of square over the whole length of the wall `along`, signed */
  Length off_across; /* likewise */
  gboolean within;   /* both no more than the survey allows */
  Square345 check;   /* what to measure from this corner, in whole 100 mm */
} SquareCheck;

/* SquareCheck, those of walls that are there; empty without a survey. */
GArray *square_checks (const Project *project);
/* A sentence of it: what is measured, and by how much each wall is off. Newly allocated. */
char *square_sentence (const Project *project, const SquareCheck *check);
