/* laying.c - how a wall is to be laid */
#include "model/laying.h"

Laying
laying_default (void)
{
  return (Laying){ 0 };
}

Laying
laying_copy (const Laying *laying)
{
  Laying copy = *laying;

  copy.foreign = foreign_copy (&laying->foreign);
  for (guint i = 0; i < N_RULES; i++)
    copy.rules[i].foreign = foreign_copy (&laying->rules[i].foreign);
  return copy;
}

void
laying_clear (Laying *laying)
{
  foreign_clear (&laying->foreign);
  for (guint i = 0; i < N_RULES; i++)
    foreign_clear (&laying->rules[i].foreign);
}

/* Only what is given is compared: the other fields say nothing. */
static gboolean
same (const Laying *a, const Laying *b, guint field, gint64 x, gint64 y)
{
  return (a->given & field) == (b->given & field) && (!(a->given & field) || x == y);
}

gboolean
laying_equal (const Laying *a, const Laying *b)
{
  for (guint i = 0; i < N_RULES; i++)
    if (!rule_equal (&a->rules[i], &b->rules[i]))
      return FALSE;
  return a->element == b->element && same (a, b, LAYING_FIRST_BED, a->first_bed, b->first_bed)
         && same (a, b, LAYING_BED, a->bed, b->bed) && same (a, b, LAYING_HEAD, a->head, b->head)
         && same (a, b, LAYING_MIN_PIECE, a->min_piece, b->min_piece)
         && same (a, b, LAYING_MIN_LAP, a->min_lap, b->min_lap)
         && same (a, b, LAYING_MIN_RIP, a->min_rip, b->min_rip)
         && same (a, b, LAYING_MIN_RAKED, a->min_raked, b->min_raked)
         && same (a, b, LAYING_KERF, a->kerf, b->kerf) && same (a, b, LAYING_AIM, a->aim, b->aim)
         && same (a, b, LAYING_START, a->start, b->start)
         && foreign_equal (&a->foreign, &b->foreign);
}

/* EN 1996-1-1:2005, 8.1.4.1(3), from memory. */
static Length
least_lap (Length height)
{
  if (height <= LENGTH_MM (250))
    return MAX (height / 5 * 2 + height % 5 * 2 / 5, LENGTH_MM (40));
  return MAX (height / 5, LENGTH_MM (100));
}

gint32
rule_default (RuleKind kind, const Laying *laying, const Block *block)
{
  switch (kind)
    {
    case RULE_BEARING:
      return LENGTH_MM (200);
    case RULE_JAMB_LINE:
      return MAX (laying->min_lap, 1);
    case RULE_LAP:
      return 2;
    case RULE_LENGTHS:
      return 3;
    case RULE_SYMMETRY_OPENINGS:
      return MIN (block->length, LENGTH_MM (10000));
    case RULE_JAMB_CUTS:
    case RULE_WHOLE_ENDS:
    case RULE_SYMMETRY_WALL:
    case N_RULES:
    default:
      return 0;
    }
}

static Rule
resolve_rule (const Rule *rule, RuleKind kind, const Laying *laying, const Block *block)
{
  Rule all = { rule->keep, rule->has_value, rule->value, { 0 } };

  if (!rule->has_value)
    all.value = rule_default (kind, laying, block);
  return all;
}

Laying
laying_resolve (const Laying *laying, const Block *block)
{
  Laying all = {
    .given = laying->given,
    .element = laying->element,
    .first_bed = LENGTH_MM (20),
    .bed = LENGTH_MM (2),
    .head = LENGTH_MM (2),
    .min_piece = MAX (block->length / 4, 1),
    .min_lap = least_lap (block->height),
    .min_rip = MAX (block->height / 4, 1),
    .kerf = LENGTH_MM (3),
    .aim = AIM_FEWEST_CUTS,
    .start = SIDE_LEFT,
  };

  if (laying->given & LAYING_FIRST_BED)
    all.first_bed = laying->first_bed;
  if (laying->given & LAYING_BED)
    all.bed = laying->bed;
  if (laying->given & LAYING_HEAD)
    all.head = laying->head;
  if (laying->given & LAYING_MIN_PIECE)
    all.min_piece = laying->min_piece;
  if (laying->given & LAYING_MIN_LAP)
    all.min_lap = laying->min_lap;
  if (laying->given & LAYING_MIN_RIP)
    all.min_rip = laying->min_rip;
  all.min_raked = laying->given & LAYING_MIN_RAKED ? laying->min_raked : all.min_piece;
  if (laying->given & LAYING_KERF)
    all.kerf = laying->kerf;
  if (laying->given & LAYING_AIM)
    all.aim = laying->aim;
  if (laying->given & LAYING_START)
    all.start = laying->start;
  for (guint i = 0; i < N_RULES; i++)
    all.rules[i] = resolve_rule (&laying->rules[i], (RuleKind) i, &all, block);
  return all;
}

static const char *const aim_words[] = {
  [AIM_FEWEST_CUTS] = "fewest-cuts",
  [AIM_REGULAR] = "regular",
  [AIM_LEAST_WASTE] = "least-waste",
};
static const char *const side_words[] = { [SIDE_LEFT] = "left", [SIDE_RIGHT] = "right" };

static int
find_word (const char *const *words, guint n, const char *word)
{
  for (guint i = 0; i < n; i++)
    if (g_str_equal (word, words[i]))
      return (int) i;
  return -1;
}

const char *
aim_word (Aim aim)
{
  return aim_words[aim];
}

gboolean
aim_from_word (const char *word, Aim *out)
{
  int i = find_word (aim_words, G_N_ELEMENTS (aim_words), word);

  if (i >= 0)
    *out = (Aim) i;
  return i >= 0;
}

const char *
side_word (Side side)
{
  return side_words[side];
}

gboolean
side_from_word (const char *word, Side *out)
{
  int i = find_word (side_words, G_N_ELEMENTS (side_words), word);

  if (i >= 0)
    *out = (Side) i;
  return i >= 0;
}
