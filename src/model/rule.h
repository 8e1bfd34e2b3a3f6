/* rule.h - the optional rules of the bond: what may be asked of a wall beside its limits
 *
 * One row of a table for each: the word that files and findings know it by, whether it may be a
 * must or a wish, and the one number that it may have. src/bond/rule.c has the row that keeps it.
 */
#pragma once

#include "model/block.h"
#include "model/foreign.h"
#include "model/length.h"

typedef enum
{
  RULE_BEARING,           /* no perpend within a lintel's bearing */
  RULE_JAMB_LINE,         /* none in line with a jamb in the courses over and under an opening */
  RULE_JAMB_CUTS,         /* cut pieces keep away from jambs */
  RULE_WHOLE_ENDS,        /* whole units at the wall's ends, free or corners */
  RULE_LAP,               /* laps are wanted of a half, a third or a quarter of unit and joint */
  RULE_LENGTHS,           /* few different lengths of cut pieces in a wall */
  RULE_SYMMETRY_WALL,     /* perpends mirror each other about the wall's middle */
  RULE_SYMMETRY_OPENINGS, /* and about the middle of each opening, near it */
  N_RULES,
} RuleKind;

typedef enum
{
  KEEP_OFF,    /* it is not asked for */
  KEEP_PREFER, /* to break it has a price, less than a cut's */
  KEEP_MUST,   /* to break it is a breach */
} Keep;

typedef enum
{
  RULE_NO_VALUE,
  RULE_LENGTH, /* a Length: the attribute `length` of the file */
  RULE_COUNT,  /* a number: its attribute `count` */
} RuleValue;

/* What a wall says of one rule. */
typedef struct
{
  Keep keep;
  gboolean has_value; /* given, else the row's default */
  gint32 value;       /* Length or count, as the row says */
  Foreign foreign;
} Rule;

typedef struct
{
  const char *word;     /* "bearing" */
  const char *label;    /* for people, untranslated; "…" stands for its number */
  const char *number;   /* label of its number, likewise; NULL: it has none */
  gboolean prefer_only; /* it cannot be a must */
  RuleValue value;
  gint32 least, most; /* of its number, Length or count */
} RuleRow;

const RuleRow *rule_row (RuleKind kind);
gboolean rule_from_word (const char *word, RuleKind *out);
/* "prefer", "must"; NULL when it is off. */
const char *keep_word (Keep keep);
gboolean keep_from_word (const char *word, Keep *out);
/* Off rules are equal whatever else they say, but for what others added to them. */
gboolean rule_equal (const Rule *a, const Rule *b);
