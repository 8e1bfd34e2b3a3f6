/* work.c - halfbond-cli work: hours by wall and course, handling, days, pallets */
#include "takeoff/work.h"

#include <glib/gi18n.h>

#include "cli/arguments.h"
#include "cli/jobs.h"
#include "cli/laid.h"
#include "cli/output.h"
#include "cli/work-report.h"

/* What an option may say: far beyond any site, and so little that no sum gets out of hand. */
#define GANG_MOST 1000
#define LIFTS_MOST 100000
#define PALLET_MOST 100000
#define HOURS_MOST 24.0
#define MINUTES_MOST 600.0

/* --- what was asked --- */

/* FALSE after a message. */
static gboolean
is_whole_within (const char *option, gint value, gint least, gint most)
{
  if (value >= least && value <= most)
    return TRUE;
  complain (_ ("--%s: %d is not within %d to %d."), option, value, least, most);
  return FALSE;
}

/* Likewise; zero is refused where `above_zero`. Not-a-number is within nothing. */
static gboolean
is_within (const char *option, double value, gboolean above_zero, double most)
{
  if (value >= 0 && value <= most && (value > 0 || !above_zero))
    return TRUE;
  complain (above_zero ? _ ("--%s: it must be more than 0, and %.0f at most.")
                       : _ ("--%s: it must be 0 or more, and %.0f at most."),
            option, most);
  return FALSE;
}

static gboolean
are_within (const WorkRates *rates)
{
  return is_whole_within ("gang", rates->gang, 1, GANG_MOST)
         && is_within ("hours-a-day", rates->hours_a_day, TRUE, HOURS_MOST)
         && is_within ("hours-a-m2", rates->hours_a_m2, FALSE, HOURS_MOST)
         && is_within ("minutes-a-block", rates->minutes_a_block, FALSE, MINUTES_MOST)
         && is_within ("minutes-a-cut", rates->minutes_a_cut, FALSE, MINUTES_MOST)
         && is_within ("minutes-a-metre", rates->minutes_a_metre, FALSE, MINUTES_MOST)
         && is_whole_within ("lifts-a-day", rates->lifts_a_day, 0, LIFTS_MOST)
         && is_whole_within ("blocks-a-pallet", rates->blocks_a_pallet, 0, PALLET_MOST);
}

/* --- the answer --- */

typedef struct
{
  const Laid *laid;
  const WorkRates *rates;
  Work *work;
} Reckoning;

static void
reckon (guint i G_GNUC_UNUSED, gpointer data)
{
  Reckoning *reckoning = data;
  const Laid *laid = reckoning->laid;

  reckoning->work = work_new (laid->project, laid->layouts, reckoning->rates, NULL);
}

static Status
answer (const char *file, const char *output, const WorkRates *rates, gboolean as_json)
{
  g_auto (Laid) laid = { 0 };
  g_autoptr (GString) text = g_string_new (NULL);
  Reckoning reckoning = { &laid, rates, NULL };
  const Status status = laid_read (file, NULL, &laid);

  if (status != STATUS_DONE)
    return status;
  jobs_run (1, reckon, &reckoning, _ ("Counting"));
  g_autoptr (Work) work = reckoning.work;
  (as_json ? work_report_json : work_report_text) (text, &laid, work);
  return output_verdict (laid_verdict (&laid), output_text (output, file, text));
}

Status
verb_work (int argc, char **argv)
{
  WorkRates rates = work_rates_default ();
  gboolean as_json = FALSE;
  g_autofree char *output = NULL, *rise = NULL;
  const char *file;
  const GOptionEntry entries[] = {
    { "gang", 0, 0, G_OPTION_ARG_INT, &rates.gang, N_ ("Persons at work (2)"), N_ ("N") },
    { "hours-a-day", 0, 0, G_OPTION_ARG_DOUBLE, &rates.hours_a_day,
      N_ ("Hours that each works in a day (8)"), N_ ("H") },
    { "hours-a-m2", 0, 0, G_OPTION_ARG_DOUBLE, &rates.hours_a_m2,
      N_ ("Hours of one person to lay a square metre (0.55; common practice: 0.4 to 0.7)"),
      N_ ("H") },
    { "minutes-a-block", 0, 0, G_OPTION_ARG_DOUBLE, &rates.minutes_a_block,
      N_ ("Minutes of one person to lay a piece, whole or cut, in place of --hours-a-m2"),
      N_ ("M") },
    { "minutes-a-cut", 0, 0, G_OPTION_ARG_DOUBLE, &rates.minutes_a_cut,
      N_ ("Minutes to saw a straight cut by hand (1.5; common practice: 1 to 2)"), N_ ("M") },
    { "minutes-a-metre", 0, 0, G_OPTION_ARG_DOUBLE, &rates.minutes_a_metre,
      N_ ("Minutes of one person for a metre of levelling bed (10; common practice)"), N_ ("M") },
    { "rise", 0, 0, G_OPTION_ARG_STRING, &rise, N_ ("How far a wall may rise in a day, mm (1500)"),
      N_ ("MM") },
    { "lifts-a-day", 0, 0, G_OPTION_ARG_INT, &rates.lifts_a_day,
      N_ ("Pieces that one person may lift in a day (0: any number)"), N_ ("N") },
    { "blocks-a-pallet", 0, 0, G_OPTION_ARG_INT, &rates.blocks_a_pallet,
      N_ ("Blocks on a pallet (0: as many as weigh 1000 kg as delivered; common practice)"),
      N_ ("N") },
    ARGUMENT_JSON (as_json),
    ARGUMENT_OUTPUT (output),
    ARGUMENT_END,
  };

  if (!arguments_read ("work", entries, argc, argv, &file))
    return STATUS_CALL;
  if (!are_within (&rates) || !arguments_length ("rise", rise, 1, rates.rise, &rates.rise))
    return STATUS_CALL;
  return answer (file, output, &rates, as_json);
}
