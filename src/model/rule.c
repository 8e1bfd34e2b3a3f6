/* rule.c - the optional rules of the bond: the table of what may be asked */
#include "model/rule.h"

#include <glib/gi18n-lib.h>

static const RuleRow rows[N_RULES] = {
  [RULE_BEARING] = { .word = "bearing",
                     .label = N_ ("No perpend under a lintel's end, … mm"),
                     .number = N_ ("Bearing of the lintel"),
                     .value = RULE_LENGTH,
                     .least = 1,
                     .most = LENGTH_MM (10000) },
  [RULE_JAMB_LINE] = { .word = "jamb-line",
                       .label = N_ ("No perpend in line with a jamb, … mm"),
                       .number = N_ ("Distance from the jamb's line"),
                       .value = RULE_LENGTH,
                       .least = 1,
                       .most = LENGTH_MM (10000) },
  [RULE_JAMB_CUTS] = { .word = "jamb-cuts",
                       .label = N_ ("No cut pieces at jambs, up to … mm"),
                       .number = N_ ("Distance from the jamb"),
                       .value = RULE_LENGTH,
                       .least = 0,
                       .most = LENGTH_MM (10000) },
  [RULE_WHOLE_ENDS] = { .word = "whole-ends", .label = N_ ("Whole blocks at ends and corners") },
  [RULE_LAP] = { .word = "lap",
                 .label = N_ ("Wanted lap"),
                 .number = N_ ("Part of the block"),
                 .prefer_only = TRUE,
                 .value = RULE_COUNT,
                 .least = 2,
                 .most = 4 },
  [RULE_LENGTHS] = { .word = "lengths",
                     .label = N_ ("Lengths of cut pieces, at most …"),
                     .number = N_ ("Number of lengths"),
                     .value = RULE_COUNT,
                     .least = 1,
                     .most = 1000 },
  [RULE_SYMMETRY_WALL]
  = { .word = "symmetry-wall", .label = N_ ("Symmetrical about the wall's middle") },
  [RULE_SYMMETRY_OPENINGS] = { .word = "symmetry-openings",
                               .label = N_ ("Symmetrical about openings, to … mm"),
                               .number = N_ ("Distance from the jambs"),
                               .value = RULE_LENGTH,
                               .least = 0,
                               .most = LENGTH_MM (10000) },
};

static const char *const keep_words[] = { NULL, "prefer", "must" };

const RuleRow *
rule_row (RuleKind kind)
{
  g_return_val_if_fail ((guint) kind < N_RULES, &rows[0]);
  return &rows[kind];
}

gboolean
rule_from_word (const char *word, RuleKind *out)
{
  for (guint i = 0; i < N_RULES; i++)
    if (g_str_equal (word, rows[i].word))
      {
        *out = (RuleKind) i;
        return TRUE;
      }
  return FALSE;
}

const char *
keep_word (Keep keep)
{
  return keep_words[keep];
}

gboolean
keep_from_word (const char *word, Keep *out)
{
  for (guint i = KEEP_PREFER; i < G_N_ELEMENTS (keep_words); i++)
    if (g_str_equal (word, keep_words[i]))
      {
        *out = (Keep) i;
        return TRUE;
      }
  return FALSE;
}

gboolean
rule_equal (const Rule *a, const Rule *b)
{
  if (a->keep != b->keep || !foreign_equal (&a->foreign, &b->foreign))
    return FALSE;
  return a->keep == KEEP_OFF
         || (a->has_value == b->has_value && (!a->has_value || a->value == b->value));
}
