/* laying.h - how a wall is to be laid: joints, limits, aim */
#pragma once

#include "model/block.h"
#include "model/length.h"
#include "model/rule.h"

typedef enum
{
  AIM_FEWEST_CUTS, /* the default */
  AIM_REGULAR,
  AIM_LEAST_WASTE,
} Aim;

typedef enum
{
  SIDE_LEFT,
  SIDE_RIGHT,
} Side;

/* Which fields the builder gave; the others follow from the defaults and the unit. */
typedef enum
{
  LAYING_FIRST_BED = 1 << 0,
  LAYING_BED = 1 << 1,
  LAYING_HEAD = 1 << 2,
  LAYING_MIN_PIECE = 1 << 3,
  LAYING_MIN_LAP = 1 << 4,
  LAYING_MIN_RIP = 1 << 5,
  LAYING_KERF = 1 << 6,
  LAYING_AIM = 1 << 7,
  LAYING_START = 1 << 8,
  LAYING_MIN_RAKED = 1 << 9,
} LayingField;

typedef struct
{
  guint given;      /* LayingField bits */
  gboolean element; /* the file has a <laying> element, be it empty */
  Length first_bed; /* thickness of the levelling bed, 0 .. 200 mm */
  Length bed;       /* bed joints above it, 0 .. 20 mm */
  Length head;      /* head joints, 0 .. 20 mm */
  Length min_piece; /* shortest piece, > 0, <= the unit's length */
  Length min_lap;   /* least lap, >= 0 */
  Length min_rip;   /* thinnest ripped strip, > 0, <= the unit's height */
  Length min_raked; /* shortest raked piece, by its longest edge along the wall, > 0 */
  Length kerf;      /* what a saw cut eats, 0 .. 20 mm */
  Aim aim;
  Side start;          /* the end that `regular` starts from */
  Rule rules[N_RULES]; /* by RuleKind */
  Foreign foreign;
} Laying;

/* Nothing given. Only laying_resolve() tells what holds. */
Laying laying_default (void);
Laying laying_copy (const Laying *laying);
void laying_clear (Laying *laying);
gboolean laying_equal (const Laying *a, const Laying *b);

/* The same with every field filled in: what is given, else first-bed 20, bed 2, head 2, min-piece
 * a quarter of the unit's length, min-lap by EN 1996-1-1:2005, 8.1.4.1(3) (from memory: unit height
 * up to 250 mm: the greater of 0.4 x height and 40 mm; above: of 0.2 x height and 100 mm), min-rip
 * a quarter of the unit's height (common practice), min-raked as min-piece, kerf 3, fewest-cuts,
 * left. A rule that is on
 * has its number: what is given, else that of rule_default(). Owns nothing. */
Laying laying_resolve (const Laying *laying, const Block *block);

/* The number of a rule that gives none, where the other fields of `laying` are resolved: of a
 * bearing 200 mm (common practice), of the distance from a jamb's line the least lap, from a jamb 0
 * (the piece beside it), of a lap 2 (half), of lengths 3, of the symmetry about openings the unit's
 * length. */
gint32 rule_default (RuleKind kind, const Laying *laying, const Block *block);

/* "regular", "fewest-cuts", "least-waste": the words of the file. */
const char *aim_word (Aim aim);
gboolean aim_from_word (const char *word, Aim *out);
const char *side_word (Side side);
gboolean side_from_word (const char *word, Side *out);
