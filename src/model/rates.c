/* rates.c - what the builder reckons the work with */
#include "model/rates.h"

#include <glib/gi18n-lib.h>

WorkRates
work_rates_default (void)
{
  return (WorkRates){
    .gang = 2,
    .hours_a_day = 8,
    .hours_a_m2 = 0.55,
    .minutes_a_cut = 1.5,
    .minutes_a_metre = 10,
    .rise = LENGTH_MM (1500),
  };
}

/* Numbers that were typed: they are the same or they are not. */
static gboolean
same (double a, double b)
{
  return !(a < b) && !(a > b);
}

gboolean
work_rates_equal (const WorkRates *a, const WorkRates *b)
{
  return a->given == b->given && a->gang == b->gang && same (a->hours_a_day, b->hours_a_day)
         && same (a->hours_a_m2, b->hours_a_m2) && same (a->minutes_a_block, b->minutes_a_block)
         && same (a->minutes_a_cut, b->minutes_a_cut)
         && same (a->minutes_a_metre, b->minutes_a_metre) && a->rise == b->rise
         && a->lifts_a_day == b->lifts_a_day && a->blocks_a_pallet == b->blocks_a_pallet;
}

/* Not-a-number is within nothing. */
static char *
number_fault (const char *what, double value, double least, double most)
{
  if (value >= least && value <= most)
    return NULL;
  if (least > 0)
    return g_strdup_printf (_ ("%s: it must be more than 0, and %.0f at most."), what, most);
  return g_strdup_printf (_ ("%s: it must be 0 or more, and %.0f at most."), what, most);
}

static char *
count_fault (const char *what, gint32 value, gint32 least, gint32 most)
{
  if (value >= least && value <= most)
    return NULL;
  return g_strdup_printf (_ ("%s: %d is not within %d to %d."), what, value, least, most);
}

char *
work_rates_fault (const WorkRates *rates)
{
  char *fault;

  if ((fault = count_fault (_ ("Persons at work"), rates->gang, 1, WORK_MOST_GANG))
      || (fault
          = number_fault (_ ("Hours a day"), rates->hours_a_day, WORK_LEAST_HOURS, WORK_MOST_HOURS))
      || (fault = number_fault (_ ("Hours a square metre"), rates->hours_a_m2, 0, WORK_MOST_HOURS))
      || (fault
          = number_fault (_ ("Minutes a piece"), rates->minutes_a_block, 0, WORK_MOST_MINUTES))
      || (fault = number_fault (_ ("Minutes a cut"), rates->minutes_a_cut, 0, WORK_MOST_MINUTES))
      || (fault = number_fault (_ ("Minutes a metre of levelling bed"), rates->minutes_a_metre, 0,
                                WORK_MOST_MINUTES))
      || (fault = count_fault (_ ("Lifts a day"), rates->lifts_a_day, 0, WORK_MOST_PIECES))
      || (fault
          = count_fault (_ ("Blocks on a pallet"), rates->blocks_a_pallet, 0, WORK_MOST_PIECES)))
    return fault;
  if (rates->rise < LENGTH_MM (1) || rates->rise > LENGTH_MAX)
    return g_strdup (_ ("How far a wall rises in a day: it must be from 1 mm to 1 km."));
  return NULL;
}
