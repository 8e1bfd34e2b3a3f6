/* pressure.c - findings of what presses under lintels' ends: where something is known to compare it
 * with, or the builder typed what floors and roof bring */
#include <glib/gi18n-lib.h>

#include "advice/bearing.h"
#include "advice/judging.h"

/* A sentence behind the finding: what would do. */
static char *
remedy (const Judging *judging, const Opening *opening)
{
  const Length enough = bearing_long_enough (judging->wall, judging->block, opening);
  char is[LENGTH_TEXT_SIZE];

  return enough > 0 ? g_strdup_printf (_ ("A bearing of %s mm would come to less."),
                                       length_text (enough, is))
                    : g_strdup (_ ("No bearing of up to 500 mm comes to less."));
}

static char *
too_much (const Judging *judging, const Opening *opening, const Bearing *bearing)
{
  g_autofree char *would = remedy (judging, opening);
  char is[LENGTH_TEXT_SIZE];

  return g_strdup_printf (
      bearing->has_load
          ? _ ("%s: under each end of its lintel, on %s mm of bearing, the wall is pressed with "
               "%.2f N/mm², factors of safety included, more than the design strength of %.2f "
               "N/mm² of its block. %s Weights and the load that was given are all that is "
               "reckoned: check with a licensed engineer.")
          : _ ("%s: under each end of its lintel, on %s mm of bearing, the wall is pressed with "
               "%.2f N/mm², factors of safety included, more than the design strength of %.2f "
               "N/mm² of its block. %s What floors and roof bring is not known and left out: check "
               "with a licensed engineer."),
      opening_called (opening), length_text (bearing->bearing, is), bearing->design,
      bearing->strength, would);
}

static char *
only_told (const Opening *opening, const Bearing *bearing)
{
  char is[LENGTH_TEXT_SIZE];

  return g_strdup_printf (
      _ ("%s: under each end of its lintel, on %s mm of bearing, the wall is pressed with about "
         "%.2f N/mm² (half of %.2f kN of lintel, %.2f of masonry, %.2f of floors and roof). No "
         "design strength is given for its block: check with a licensed engineer."),
      opening_called (opening), length_text (bearing->bearing, is), bearing->pressure,
      bearing->lintel, bearing->masonry, bearing->load);
}

static void
judge_opening (Judging *judging, const Opening *opening)
{
  Bearing bearing;
  char *text = NULL;

  if (!bearing_of_opening (judging->wall, judging->block, opening, &bearing))
    return;
  if (bearing.strength > 0 && bearing.design > bearing.strength)
    text = too_much (judging, opening, &bearing);
  else if (!(bearing.strength > 0) && bearing.has_load)
    text = only_told (opening, &bearing);
  if (text != NULL)
    judging_add_of (judging, opening, "bearing-pressure", SEVERITY_NOTE, text, MEND_NONE);
}

void
judge_pressure (Judging *judging)
{
  for (guint i = 0; i < judging->wall->openings->len; i++)
    judge_opening (judging, wall_opening_at (judging->wall, i));
}
