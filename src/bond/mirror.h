/* mirror.h - which perpends have no mirror image, where a rule wants a symmetrical bond
 *
 * docs/rules.md says what is asked. An axis is upright: the wall's middle, or an opening's. The
 * mirror image of the face x of a piece behind its joint is the face 2 a - x + joint. */
#pragma once

#include "bond/pattern.h"

/* Two places not farther apart are one: about what is seen of a joint, and sawn. */
#define MIRROR_TOLERANCE LENGTH_MM (1)

typedef struct
{
  gint32 rule; /* RuleKind */
  gint32 must;
  Length twice;    /* the axis from the wall's left end, doubled: whole, be it between two steps */
  Length from, to; /* perpends wholly within are asked for */
  gint32 first, last; /* courses */
} Axis;

/* A perpend without its mirror image, once for each rule: of several axes, the one from whose place
 * it is the least off. */
typedef struct
{
  gint32 rule;
  gint32 must;
  Length face;
  Length place; /* the face that its image would have */
  Length off;   /* from there to the nearest perpend, or end of a run taken for one */
} Unmatched;

/* For Geometry.mirror, whose segments are whole runs still; NULL where no rule is on. */
Mirror *mirror_new (const Geometry *geometry, const Wall *wall, const Laying *laying);
/* Takes NULL. */
void mirror_free (Mirror *mirror);

/* Axis, by rule; all of the wall. */
const GArray *mirror_axes (const Geometry *geometry);
/* Whether an axis asks for the mirror image of a perpend; its face goes to *place. */
gboolean mirror_asks (const Geometry *geometry, const Axis *axis, gint32 course, Length face,
                      Length *place);
/* Whether perpends at `face` of one segment and at `place` of another, or of the same, may be
 * images of each other: both lie inside, and of runs one above another both are the same from
 * below. */
gboolean mirror_faces (const Geometry *geometry, const Segment *segment, Length face,
                       const Segment *other, Length place);

/* The segments of a course; how many. */
gint32 mirror_segments (const Geometry *geometry, gint32 course, gint32 *first);
/* Appends to *found what is unmatched in a course; `patterns` are those of its segments. */
void mirror_unmatched (const Geometry *geometry, gint32 course, const Pattern *patterns,
                       GArray *found);
/* What such a perpend costs. */
Cost mirror_cost (const Unmatched *unmatched);
