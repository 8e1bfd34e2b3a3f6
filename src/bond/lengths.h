/* lengths.h - the different lengths of a wall's cut pieces, where a rule wants few of them */
#pragma once

#include "bond/bound.h"
#include "bond/pattern.h"

typedef struct
{
  Length length;
  gint32 pieces;
} LengthUse;

/* The lengths of all pieces shorter than the unit: that of most pieces first, then the longer. */
GArray *lengths_used (const Geometry *geometry, const Pattern *patterns);

/* Where the wall has more than geometry->most_lengths, looks for patterns with fewer that are no
 * worse: of a wish in breaches and cuts, of a must in breaches. Takes and gives a pattern for each
 * segment as network_solve() does, with its bounds; NULL when stopped. */
Pattern *lengths_reduce (const Geometry *geometry, Pattern *patterns, WallBound *bound,
                         const gint *stop);
