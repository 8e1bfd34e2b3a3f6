/* tie.c - ties of butted walls */
#include "model/tie.h"

#include <glib/gi18n-lib.h>

static const char *const words[] = { "strip", "mesh", "angle" };

const char *
tie_kind_word (TieKind kind)
{
  return words[kind];
}

gboolean
tie_kind_from_word (const char *word, TieKind *out)
{
  for (guint i = 0; i < G_N_ELEMENTS (words); i++)
    if (g_str_equal (word, words[i]))
      {
        *out = (TieKind) i;
        return TRUE;
      }
  return FALSE;
}

const char *
tie_kind_name (TieKind kind)
{
  static const char *const names[] = { N_ ("flat strips"), N_ ("pieces of mesh"), N_ ("angles") };

  return _ (names[kind]);
}

Ties
ties_default (const Block *block, Length bed, gboolean level)
{
  return (Ties){ .given = TIES_ALL,
                 .kind = level ? TIE_STRIP : TIE_ANGLE,
                 .every = MAX (1, TIES_MOST_APART / (block->height + bed)),
                 .abreast = block->thickness > TIES_ONE_ABREAST ? 2 : 1 };
}

gboolean
ties_equal (const Ties *a, const Ties *b)
{
  if (!a->given || !b->given)
    return !a->given == !b->given;
  return a->kind == b->kind && a->every == b->every && a->abreast == b->abreast;
}

char *
ties_fault (const Ties *ties)
{
  if (!ties->given)
    return NULL;
  if (ties->every < 1 || ties->every > TIES_MAX_EVERY)
    return g_strdup_printf (_ ("Ties in every %d courses: from 1 to %d can be said."), ties->every,
                            TIES_MAX_EVERY);
  if (ties->abreast < 1 || ties->abreast > TIES_MAX_ABREAST)
    return g_strdup_printf (_ ("%d ties side by side: from 1 to %d can be said."), ties->abreast,
                            TIES_MAX_ABREAST);
  return NULL;
}
