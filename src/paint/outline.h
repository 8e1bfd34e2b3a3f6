/* outline.h - the corners of a piece, and where in it a label sits */
#pragma once

#include "bond/layout.h"

/* A piece has eight corners at most, notched on two sides, or a few more under a broken slope; what
 * has more is taken as its box. */
#define OUTLINE_MOST_CORNERS 16

/* Counter-clockwise as seen, the first one lowest left. Returns their number, 3 or more. */
guint outline_corners (const Layout *layout, const Piece *piece,
                       LayPoint corners[OUTLINE_MOST_CORNERS]);

typedef struct
{
  Length x0, x1, z0, z1;
} OutlineSeat;

/* The largest box within the piece that spans its height or its length, under a slope of a raked
 * one also up to some places of it; all of it where it is a rectangle. */
OutlineSeat outline_seat (const Layout *layout, const Piece *piece);
