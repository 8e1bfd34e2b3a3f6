/* check-column.h - what stands in a strip of a course between two verticals, checked
 *
 * Part of check-layout. Between two neighbouring verticals of a course (jambs, faces, corners)
 * nothing changes along the wall but for a slope, so that the course is a list of free heights
 * there. */
#pragma once

#include "bond/layout.h"

/* Thicker remnants are pieces; docs/bond.md. */
#define CHECK_PACKING_MAX LENGTH_MM (20)

typedef struct
{
  const Wall *wall;
  const Block *block;
  const Layout *layout;
  Laying laying; /* resolved */
} Check;

/* Bottom of a course, 1-based, as if the wall were endlessly high. */
Length check_bottom (const Check *check, gint32 course);
/* Corner `i` of an outline, counted on beyond the last one. */
LayPoint check_corner (const Check *check, const Piece *piece, gint32 i);
/* The piece on the left in the same segment; NULL for its first one. */
const Piece *check_piece_before (const Check *check, const Course *course, const Piece *piece);
/* The greatest height of a piece over all its length; under a slope that of the slope's stretch in
 * its course, which never is a whole unit's. */
Length check_thickest (const Check *check, const Piece *piece);
/* Whether it reaches into a slope; and whether it does nothing else. */
gboolean check_is_raked (const Check *check, const Piece *piece);
gboolean check_is_all_raked (const Check *check, const Piece *piece);
/* That a course's free area is covered exactly once; a new sentence or NULL. */
char *check_columns (const Check *check, const Course *course);
/* The same of what is left over the last course. */
char *check_top (const Check *check);
