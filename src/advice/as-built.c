/* as-built.c - findings of what stands: figures beyond their tolerance, how to go on, wide joints
 */
#include "site/as-built.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "advice/judging.h"

static const char *const rules[N_TOLERANCES] = {
  [TOLERANCE_LENGTH] = "as-built-length",   [TOLERANCE_TOP] = "as-built-top",
  [TOLERANCE_LEVEL] = "as-built-level",     [TOLERANCE_BED] = "as-built-bed",
  [TOLERANCE_OPENING] = "as-built-opening", [TOLERANCE_PLUMB] = "as-built-plumb",
  [TOLERANCE_BOW] = "as-built-bow",         [TOLERANCE_BOW_METRE] = "as-built-bow-metre",
};

static void
judge_deviations (Judging *judging, const AsBuilt *built)
{
  for (guint i = 0; i < built->deviations->len; i++)
    {
      const Deviation *deviation = as_built_deviation (built, i);
      Finding *finding;

      if (deviation->within)
        continue;
      finding = judging_add (judging, rules[deviation->kind], SEVERITY_WARNING,
                             deviation_sentence (judging->wall, deviation), MEND_NONE);
      finding->course = deviation->course;
      finding->opening = deviation->opening;
      finding->x = deviation->x;
    }
}

/* Told where it is another bed than the usual one, or where it does not bring the courses up. */
static void
judge_way (Judging *judging, const AsBuilt *built)
{
  char *sentence = next_beds_sentence (built);

  if (sentence == NULL
      || (built->next.bed == built->next.planned_bed
          && built->next.last_top == built->next.planned_last))
    {
      g_free (sentence);
      return;
    }
  judging_add (judging, "as-built-next-beds", SEVERITY_NOTE, sentence, MEND_NONE)->course
      = built->standing + 1;
}

/* What is packed between pieces that stand, or beside them, and is more than a joint. */
static void
judge_gaps (Judging *judging)
{
  const GArray *packings = judging->layout->packings;

  for (guint i = 0; i < packings->len; i++)
    {
      const Packing *packing = &g_array_index (packings, Packing, i);
      char length[LENGTH_TEXT_SIZE], x[LENGTH_TEXT_SIZE];
      Finding *finding;

      if (packing->course > wall_standing (judging->wall) || packing->length <= LENGTH_MM (20)
          || packing->height <= LENGTH_MM (20))
        continue;
      finding = judging_add (
          judging, "as-built-gap", SEVERITY_NOTE,
          g_strdup_printf (
              _ ("Course %d stands; at %s mm, %s mm beside its blocks are left, too little for a "
                 "piece. See what was laid there."),
              packing->course, length_text (packing->x, x), length_text (packing->length, length)),
          MEND_NONE);
      finding->course = packing->course;
      finding->x = packing->x;
    }
}

static void
take_mends (Judging *judging)
{
  for (guint i = 0; i < judging->findings->len; i++)
    {
      Finding *finding = g_ptr_array_index (judging->findings, i);

      if (finding->mend == NULL || finding->course == 0
          || finding->course > wall_standing (judging->wall))
        continue;
      g_clear_pointer (&finding->mend, edit_free);
      g_clear_pointer (&finding->mend_text, g_free);
    }
}

void
judge_as_built (Judging *judging)
{
  g_autoptr (AsBuilt) built = as_built_new (judging->whole, judging->wall, judging->layout);

  judge_deviations (judging, built);
  judge_way (judging, built);
  if (built->standing == 0)
    return;
  judge_gaps (judging);
  take_mends (judging);
}
