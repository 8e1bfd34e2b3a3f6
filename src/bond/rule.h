/* rule.h - the optional rules of the bond, kept: marks on segments that patterns pay for
 *
 * A rule of one segment says where it wants no perpend, or no short piece. It leaves marks on the
 * segments; everything that counts a pattern (pattern.c, path.c, pool.c) pays for the marks that it
 * breaks, and the layout tells of those that are a must. The table in rule.c has a row for each. */
#pragma once

#include "bond/segment.h"

typedef gint64 Cost;

typedef enum
{
  MARK_PERPEND, /* no perpend whose face is in [from, to] */
  MARK_PIECE,   /* no piece shorter than `least` on any of the stretch from .. to, both left out */
} MarkKind;

/* All gint32, without gaps: marks are compared as memory. */
typedef struct
{
  gint32 kind; /* MarkKind: those of perpends come first */
  gint32 rule; /* RuleKind; within a kind they ascend by rule, then by `from` */
  gint32 must; /* breaking it is a breach; else it has the rule's price */
  Length from, to;
  Length origin; /* of a perpend: what it measures is the distance of its face from here */
  Length least;  /* what it measures should be at least so much */
} Mark;

/* What a pattern owes the rules. */
typedef struct
{
  Cost cost; /* all in all, and how bad the breaches are */
  gint32 breaches;
  gint32 wishes; /* prices of what is preferred and not had, in COST_WISH */
} Dues;

/* Of breaking a rule once, where it is preferred, in COST_WISH. */
gint32 rules_price (gint32 kind);

/* The lowest course that has pieces over a head: more is left of it than is packed. 0: none. */
gint32 rules_course_over (const Geometry *geometry, const Opening *opening);
/* The highest course that has pieces under a sill; 0: none. */
gint32 rules_course_under (const Geometry *geometry, const Opening *opening);

/* Marks every segment of a geometry, whose courses and segments are made. `laying` is resolved.
 * Each is a whole run: pins part it later, and the parts keep its marks. */
void rules_mark (Geometry *geometry, const Wall *wall, const Laying *laying);

/* Of a different length too many where few are wanted, in COST_WISH. */
#define RULES_PRICE_OF_LENGTH 8

/* What is wanted of laps: half of unit and joint, or the part that the rule says. */
Length rules_wanted_lap (const Block *block, const Laying *laying);

/* The mark that a perpend, or a piece, breaks, one for each rule: begin with *at = 0, until NULL.
 * *is (may be NULL) is what it measures; of several marks of one rule that with the least. */
const Mark *rules_next_perpend (const Geometry *geometry, const Segment *segment, Length face,
                                gint32 *at, Length *is);
const Mark *rules_next_piece (const Geometry *geometry, const Segment *segment, Length x,
                              Length length, gint32 *at);
/* Adds what one perpend, or one piece, owes to *dues. */
void rules_perpend_dues (const Geometry *geometry, const Segment *segment, Length face, Dues *dues);
void rules_piece_dues (const Geometry *geometry, const Segment *segment, Length x, Length length,
                       Dues *dues);
/* Adds to the tolls of ascending places what perpends there owe. */
void rules_add_tolls (const Geometry *geometry, const Segment *segment, const GArray *places,
                      Cost *toll);
/* Whether two segments have the same marks. */
gboolean rules_same (const Geometry *geometry, const Segment *p, const Segment *q);

/* Whether a piece may owe anything: known before any is looked at. */
static inline gboolean
rules_of_pieces (const Geometry *geometry, const Segment *segment)
{
  return segment->n_marks > segment->n_perpend_marks || geometry->allowed != NULL;
}

static inline const Mark *
rules_marks (const Geometry *geometry, const Segment *segment)
{
  /* An array without any has no data. */
  return geometry->marks->len == 0 ? NULL
                                   : &g_array_index (geometry->marks, Mark, segment->first_mark);
}
