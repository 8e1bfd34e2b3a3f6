/* tolerance.c - how far what stands may be off what was planned, as a project says it */
#include "model/tolerance.h"

static const char *const words[] = {
  [TOLERANCE_LENGTH] = "length",   [TOLERANCE_TOP] = "top",
  [TOLERANCE_LEVEL] = "level",     [TOLERANCE_BED] = "bed",
  [TOLERANCE_OPENING] = "opening", [TOLERANCE_PLUMB] = "plumb",
  [TOLERANCE_BOW] = "bow",         [TOLERANCE_BOW_METRE] = "bow-metre",
};

const char *
tolerance_word (ToleranceKind kind)
{
  return words[kind];
}

gboolean
tolerance_from_word (const char *word, ToleranceKind *out)
{
  for (guint i = 0; i < G_N_ELEMENTS (words); i++)
    if (g_str_equal (word, words[i]))
      {
        *out = (ToleranceKind) i;
        return TRUE;
      }
  return FALSE;
}

gboolean
tolerance_equal (const Tolerance *a, const Tolerance *b)
{
  if (!a->given || !b->given)
    return !a->given == !b->given;
  return a->limit == b->limit && foreign_equal (&a->foreign, &b->foreign);
}
