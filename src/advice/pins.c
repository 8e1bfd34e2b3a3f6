/* pins.c - findings of what was set by hand: what cannot be met, and breaches that a pin makes */
#include "advice/pins.h"

#include <glib/gi18n-lib.h>

#include "advice/judging.h"
#include "bond/lay.h"

/* Walls laid anew, at most, to see whether a pin taken out would mend a breach. */
#define TRIALS_MOST 4

/* --- what cannot be met --- */

char *
pin_dup_reason (const LaidPin *pin, const Layout *layout, const Block *block)
{
  const gint32 n = (gint32) layout->courses->len;
  char at[LENGTH_TEXT_SIZE], is[LENGTH_TEXT_SIZE], unit[LENGTH_TEXT_SIZE];

  length_text (pin->at, at);
  switch (pin->fate)
    {
    case PIN_NO_COURSE:
      return g_strdup_printf (
          ngettext ("the wall has %d course", "the wall has %d courses", (gulong) n), n);
    case PIN_AT_END:
      if (pin->at > pin->x && pin->x + pin->length > pin->at)
        return g_strdup_printf (_ ("the piece would reach past the end of the run, at %s mm"), at);
      return g_strdup_printf (
          _ ("it leaves no room for a piece beside the end of the run, at %s mm"), at);
    case PIN_TOO_LONG:
      return g_strdup_printf (_ ("the piece is %s mm long, the block only %s mm"),
                              length_text (pin->length, is), length_text (block->length, unit));
    case PIN_STANDS:
      return g_strdup (_ ("the course stands already, laid otherwise"));
    case PIN_AGAINST:
      return g_strdup_printf (_ ("the pin at %s mm on this course does not let it"), at);
    case PIN_NO_WALL:
    case PIN_MET:
    default:
      return g_strdup (_ ("no piece is laid there"));
    }
}

static Mend
mend_without (const Judging *judging, gint32 course, Length x)
{
  g_autoptr (Wall) wall = wall_copy (judging->wall);

  if (!wall_take_pin (wall, course, x))
    return MEND_NONE;
  return mend_if_possible (judging, edit_set_wall (wall), g_strdup (_ ("Remove the pin")));
}

static void
judge_pin (Judging *judging, const LaidPin *pin)
{
  char x[LENGTH_TEXT_SIZE];
  g_autofree char *reason = NULL;
  Finding *finding;

  if (pin->fate == PIN_MET)
    return;
  reason = pin_dup_reason (pin, judging->layout, judging->block);
  finding = judging_add (judging, "pin", SEVERITY_WARNING,
                         /* Translators: the last %s is a reason, the end of the sentence */
                         g_strdup_printf (_ ("The pin on course %d at %s mm cannot be met: %s."),
                                          pin->course, length_text (pin->x, x), reason),
                         mend_without (judging, pin->course, pin->x));
  finding->course = pin->course;
  finding->x = pin->x;
}

/* --- breaches that a pin makes --- */

/* Whether the pin sets the piece or the perpend that is told of, or one that it laps. */
static gboolean
may_make (const Judging *judging, const LaidPin *pin, const Finding *breach)
{
  Length reach = judging->laying.min_lap + judging->laying.head, end = pin->x + pin->length;

  return pin->fate == PIN_MET && pin->course <= breach->course && pin->course >= breach->course - 1
         && breach->x >= pin->x - reach && breach->x <= end + reach;
}

/* Whether the wall has fewer breaches without it. */
static gboolean
is_better_without (const Judging *judging, const LaidPin *pin)
{
  g_autoptr (Wall) wall = wall_copy (judging->wall);
  g_autoptr (Layout) layout = NULL;

  if (!wall_take_pin (wall, pin->course, pin->x))
    return FALSE;
  layout = lay_wall (wall, judging->block, judging->stop);
  return layout != NULL && layout->breaches->len < judging->layout->breaches->len;
}

static void
mend_breaches_of (Judging *judging, const LaidPin *pin, gint *trials)
{
  gboolean tried = FALSE;

  for (guint i = 0; i < judging->findings->len; i++)
    {
      Finding *breach = g_ptr_array_index (judging->findings, i);
      Mend mend;

      if (breach->severity != SEVERITY_BREACH || breach->mend != NULL
          || !may_make (judging, pin, breach))
        continue;
      if (!tried && (--*trials < 0 || !is_better_without (judging, pin)))
        return;
      tried = TRUE;
      mend = mend_without (judging, pin->course, pin->x);
      breach->mend = mend.edit;
      breach->mend_text = mend.text;
    }
}

void
judge_pins (Judging *judging)
{
  const GArray *pins = judging->layout->pins;
  gint trials = TRIALS_MOST;

  for (guint i = 0; i < pins->len; i++)
    mend_breaches_of (judging, &g_array_index (pins, LaidPin, i), &trials);
  for (guint i = 0; i < pins->len; i++)
    judge_pin (judging, &g_array_index (pins, LaidPin, i));
}
