/* rake.h - what is told of a raked piece, so that it can be marked and sawn (docs/tops.md) */
#pragma once

#include "bond/layout.h"

typedef struct
{
  Length bottom, top; /* how long it is along both; 0: it comes to a point or an edge there */
  Length left, right; /* how high it is at its ends; 0 likewise */
  Length run, rise;   /* of the longest of its slopes, both > 0 */
  guint n_slopes;     /* 1; 2 at a ridge */
} Rake;

/* FALSE: it has no slope. */
gboolean piece_rake (const Layout *layout, const Piece *piece, Rake *rake);
/* Angle of the cut against the level, degrees; how far it rises in 100 mm along, mm. */
double rake_angle (const Rake *rake);
double rake_rise (const Rake *rake);
/* "412/126": along the bottom and along the top, in whole millimetres; "600 × 44/98": its length
 * and its height at either end, where the slope goes all along it. New. */
char *rake_text (const Rake *rake);
