/* improve-text.c - what came of improving all, in one sentence with its numbers */
#include <glib/gi18n-lib.h>

#include "advice/improve.h"

/* How many cuts some combination may have fewer than what was found; -1: it may have fewer
 * breaches, or nothing is known of cuts. */
gint32
improvement_gap (const Improvement *improvement)
{
  if (improvement->breaches_at_least < improvement->after.breaches)
    return -1;
  return improvement->after.cuts - improvement->cuts_at_least;
}

/* Of one opening, or of several together. */
static const char *
proven_format (const Improvement *improvement)
{
  if (improvement->n_free == 1)
    return improvement->after.breaches == 0
               ? _ (" Proven: at none of the %u places are there fewer cuts.")
               : _ (" Proven: at none of the %u places are there fewer breaches, or as many and "
                    "fewer cuts.");
  return improvement->after.breaches == 0
             ? _ (" Proven: none of the %u combinations of places has fewer cuts.")
             : _ (" Proven: none of the %u combinations of places has fewer breaches, or as many "
                  "and fewer cuts.");
}

static void
add_proven_text (GString *text, const Improvement *improvement)
{
  if (improvement->combinations == IMPROVE_TOO_MANY)
    g_string_append (text, _ (" Proven: no combination of places has fewer cuts."));
  else
    g_string_append_printf (text, proven_format (improvement), improvement->n_possible);
}

/* What is left open: a number that no places can go beyond. */
static void
add_gap_text (GString *text, const Improvement *improvement)
{
  const gint32 gap = improvement_gap (improvement);

  if (gap >= 0)
    g_string_append_printf (
        text,
        g_dngettext (NULL, " Not proven: other places might save %d more cut, but not two.",
                     " Not proven: other places might save up to %d more cuts, but no more.",
                     (gulong) gap),
        gap);
  else if (improvement->breaches_at_least > 0)
    g_string_append_printf (
        text,
        g_dngettext (NULL, " Not proven: other places might have fewer breaches, at least %d.",
                     " Not proven: other places might have fewer breaches, at least %d.",
                     (gulong) improvement->breaches_at_least),
        improvement->breaches_at_least);
  else
    g_string_append (text, _ (" Not proven: other places might do without a breach."));
}

static void
add_proof_text (GString *text, const Improvement *improvement)
{
  if (improvement->proven)
    add_proven_text (text, improvement);
  else if (improvement->aim == AIM_FEWEST_CUTS)
    add_gap_text (text, improvement);
  else if (improvement->compared)
    g_string_append_printf (text, _ (" The best found in all %u combinations of places."),
                            improvement->n_possible);
  else
    g_string_append_printf (text,
                            _ (" Not proven: %u walls were laid, there are more combinations "
                               "of places."),
                            improvement->n_laid);
}

static void
add_change (GString *text, const char *one, const char *many, gint32 before, gint32 after)
{
  if (before == after)
    return;
  g_string_append_printf (text, g_dngettext (NULL, one, many, (gulong) after), after, before);
}

char *
improvement_text (const Improvement *improvement)
{
  const Cost *before = &improvement->before, *after = &improvement->after;
  g_autoptr (GString) text = g_string_new (NULL);

  if (improvement->n_free == 0)
    return g_strdup (_ ("No opening of this wall is said to be free to move."));
  if (improvement->moves->len == 0)
    {
      g_string_append (text, improvement->proven
                                 ? _ ("The openings stand best where they are.")
                                 : _ ("No better places were found for the openings."));
      add_proof_text (text, improvement);
      return g_string_free (g_steal_pointer (&text), FALSE);
    }
  g_string_append_printf (
      text, g_dngettext (NULL, "%u opening moved", "%u openings moved", improvement->moves->len),
      improvement->moves->len);
  add_change (text, N_ (", %d breach instead of %d"), N_ (", %d breaches instead of %d"),
              before->breaches, after->breaches);
  add_change (text, N_ (", %d cut instead of %d"), N_ (", %d cuts instead of %d"), before->cuts,
              after->cuts);
  add_change (text, N_ (", %d unit to order instead of %d"),
              N_ (", %d units to order instead of %d"), before->to_order, after->to_order);
  g_string_append_c (text, '.');
  add_proof_text (text, improvement);
  return g_string_free (g_steal_pointer (&text), FALSE);
}
