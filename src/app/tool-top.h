/* tool-top.h - what a hand does to a wall's top and to its footing: geometry, no widgets
 *
 * What a hand is at is a reference of the drawing: REF_TOP with a TopPart, or REF_FOOT. A wall that
 * comes back may have a fault, where an opening would leave it: the edit says so. */
#pragma once

#include "app/tool.h"

/* Whether it is a point of the top or a step of the footing, and of this wall. */
gboolean tool_is_corner (const Wall *wall, const MarkRef *ref);
/* Where such a one lies; FALSE: there is none. */
gboolean tool_corner_at (const Wall *wall, const MarkRef *ref, Length *x, Length *z);

/* A point, a line, a step of the top or of the footing pulled. A point at the wall's end goes only
 * up and down, one within it stays between its neighbours; a step goes along as one. Heights stop
 * on courses and at the height of other points within reach, of the footing where no rip is needed.
 */
Wall *tool_pull_top (const Wall *wall, const Block *block, const MarkRef *ref, Length dx, Length dz,
                     const Grip *grip);

/* With a new point on the top at that place; where the top is level to the wall's end, that end
 * gets one too, so that it stays where it is. NULL: one is there already. */
Wall *tool_add_top_point (const Wall *wall, Length x, guint *index);
/* With a new step of the footing there, a course up. NULL: one is there already, or no wall. */
Wall *tool_add_foot (const Wall *wall, const Block *block, Length x, guint *index);
/* Without that point or step. NULL: there is none. */
Wall *tool_remove_corner (const Wall *wall, const MarkRef *ref);

/* Level parts of a stepped top are told by their lines (TOP_LINE), 0 .. number of points: whether
 * one is more than a step. */
gboolean tool_is_stretch (const Wall *wall, guint i);
/* A step of one course in the middle of the longest part: what is left of it goes up. */
Wall *tool_add_step (const Wall *wall, const Block *block);
/* Without that part: the one before it goes on, or the one after the first; level when one is left.
 * NULL: there is none. */
Wall *tool_remove_stretch (const Wall *wall, guint i);

/* What a dimension of the top or the footing shows: a length, or degrees. New; NULL: there is none.
 */
char *tool_top_text (const Wall *wall, DimensionPart part, guint index);
/* The wall with that typed into it; of a pitch the higher end of the slope goes up or down. NULL
 * with a sentence when the text is not understood. */
Wall *tool_set_top (const Wall *wall, DimensionPart part, guint index, const char *text,
                    GError **error);
static inline gboolean
tool_is_top_dimension (DimensionPart part)
{
  return part >= DIMENSION_TOP_HEIGHT;
}

/* ---- shapes ---- */

typedef enum
{
  SHAPE_LEVEL,
  SHAPE_SLOPED,  /* one slope from end to end */
  SHAPE_GABLED,  /* two, up to a ridge */
  SHAPE_STEPPED, /* level stretches */
  SHAPE_DRAWN,   /* anything else */
} TopShape;

TopShape tool_top_shape (const Wall *wall);
/* The wall with such a top, as near to its own as can be, and with sizes that are usual where it
 * says none: a fall of 10 degrees, a ridge at 35 degrees in the middle, a step of one course. */
Wall *tool_shape_top (const Wall *wall, const Block *block, TopShape shape);

/* "35", "35°", "33.7": degrees, 0 .. 89. FALSE: it is none. */
gboolean tool_parse_degrees (const char *text, double *degrees);
/* "33.7". New. */
char *tool_degrees_text (double degrees);
