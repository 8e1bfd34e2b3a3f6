/* work.c - halfbond-cli work: hours by wall and course, handling, days, pallets */
#include "takeoff/work.h"

#include <glib/gi18n.h>

#include "cli/arguments.h"
#include "cli/jobs.h"
#include "cli/laid.h"
#include "cli/output.h"
#include "cli/work-report.h"

/* --- what was asked --- */

/* What no option says stands for the project's own figure. */
#define NOT_SAID_COUNT G_MININT
#define NOT_SAID (-G_MAXDOUBLE)

typedef struct
{
  const char *file, *output;
  gboolean as_json;
  gint gang, lifts_a_day, blocks_a_pallet;
  double hours_a_day, hours_a_m2, minutes_a_block, minutes_a_cut, minutes_a_metre;
  Length rise; /* 0: not said */
} WorkCall;

/* FALSE after a message. */
static gboolean
is_whole_within (const char *option, gint value, gint least, gint most)
{
  if (value == NOT_SAID_COUNT || (value >= least && value <= most))
    return TRUE;
  complain (_ ("--%s: %d is not within %d to %d."), option, value, least, most);
  return FALSE;
}

static gboolean
is_said (double value)
{
  return !(value <= NOT_SAID);
}

/* Likewise. Not-a-number is within nothing. */
static gboolean
is_within (const char *option, double value, double least, double most)
{
  if (!is_said (value) || (value >= least && value <= most))
    return TRUE;
  complain (least > 0 ? _ ("--%s: it must be more than 0, and %.0f at most.")
                      : _ ("--%s: it must be 0 or more, and %.0f at most."),
            option, most);
  return FALSE;
}

static gboolean
are_within (const WorkCall *call)
{
  return is_whole_within ("gang", call->gang, 1, WORK_MOST_GANG)
         && is_within ("hours-a-day", call->hours_a_day, WORK_LEAST_HOURS, WORK_MOST_HOURS)
         && is_within ("hours-a-m2", call->hours_a_m2, 0, WORK_MOST_HOURS)
         && is_within ("minutes-a-block", call->minutes_a_block, 0, WORK_MOST_MINUTES)
         && is_within ("minutes-a-cut", call->minutes_a_cut, 0, WORK_MOST_MINUTES)
         && is_within ("minutes-a-metre", call->minutes_a_metre, 0, WORK_MOST_MINUTES)
         && is_whole_within ("lifts-a-day", call->lifts_a_day, 0, WORK_MOST_PIECES)
         && is_whole_within ("blocks-a-pallet", call->blocks_a_pallet, 0, WORK_MOST_PIECES);
}

static void
take_count (gint32 *count, gint said)
{
  if (said != NOT_SAID_COUNT)
    *count = said;
}

static void
take_number (double *number, double said)
{
  if (is_said (said))
    *number = said;
}

/* The project's figures, and what the call says instead. */
static WorkRates
rates_of (const Project *project, const WorkCall *call)
{
  WorkRates rates = project->rates;

  /* Who asks for hours a square metre does not want the minutes a piece of the file. */
  if (is_said (call->hours_a_m2))
    rates.minutes_a_block = 0;
  take_count (&rates.gang, call->gang);
  take_number (&rates.hours_a_day, call->hours_a_day);
  take_number (&rates.hours_a_m2, call->hours_a_m2);
  take_number (&rates.minutes_a_block, call->minutes_a_block);
  take_number (&rates.minutes_a_cut, call->minutes_a_cut);
  take_number (&rates.minutes_a_metre, call->minutes_a_metre);
  take_count (&rates.lifts_a_day, call->lifts_a_day);
  take_count (&rates.blocks_a_pallet, call->blocks_a_pallet);
  if (call->rise > 0)
    rates.rise = call->rise;
  return rates;
}

/* --- the answer --- */

typedef struct
{
  const Laid *laid;
  WorkRates rates;
  Work *work;
} Reckoning;

static void
reckon (guint i G_GNUC_UNUSED, gpointer data)
{
  Reckoning *reckoning = data;
  const Laid *laid = reckoning->laid;

  reckoning->work = work_new (laid->project, laid->layouts, &reckoning->rates, NULL);
}

static Status
answer (const WorkCall *call)
{
  g_auto (Laid) laid = { 0 };
  g_autoptr (GString) text = g_string_new (NULL);
  Reckoning reckoning = { .laid = &laid };
  const Status status = laid_read (call->file, NULL, &laid);

  if (status != STATUS_DONE)
    return status;
  reckoning.rates = rates_of (laid.project, call);
  jobs_run (1, reckon, &reckoning, _ ("Counting"));
  g_autoptr (Work) work = reckoning.work;
  (call->as_json ? work_report_json : work_report_text) (text, &laid, work);
  return output_verdict (laid_verdict (&laid), output_text (call->output, call->file, text));
}

Status
verb_work (int argc, char **argv)
{
  WorkCall call = {
    .gang = NOT_SAID_COUNT,
    .lifts_a_day = NOT_SAID_COUNT,
    .blocks_a_pallet = NOT_SAID_COUNT,
    .hours_a_day = NOT_SAID,
    .hours_a_m2 = NOT_SAID,
    .minutes_a_block = NOT_SAID,
    .minutes_a_cut = NOT_SAID,
    .minutes_a_metre = NOT_SAID,
  };
  g_autofree char *output = NULL, *rise = NULL;
  const GOptionEntry entries[] = {
    { "gang", 0, 0, G_OPTION_ARG_INT, &call.gang, N_ ("Persons at work (2)"), N_ ("N") },
    { "hours-a-day", 0, 0, G_OPTION_ARG_DOUBLE, &call.hours_a_day,
      N_ ("Hours that each works in a day (8)"), N_ ("H") },
    { "hours-a-m2", 0, 0, G_OPTION_ARG_DOUBLE, &call.hours_a_m2,
      N_ ("Hours of one person to lay a square metre (0.55; common practice: 0.4 to 0.7)"),
      N_ ("H") },
    { "minutes-a-block", 0, 0, G_OPTION_ARG_DOUBLE, &call.minutes_a_block,
      N_ ("Minutes of one person to lay a piece, whole or cut, in place of --hours-a-m2"),
      N_ ("M") },
    { "minutes-a-cut", 0, 0, G_OPTION_ARG_DOUBLE, &call.minutes_a_cut,
      N_ ("Minutes to saw a straight cut by hand (1.5; common practice: 1 to 2)"), N_ ("M") },
    { "minutes-a-metre", 0, 0, G_OPTION_ARG_DOUBLE, &call.minutes_a_metre,
      N_ ("Minutes of one person for a metre of levelling bed (10; common practice)"), N_ ("M") },
    { "rise", 0, 0, G_OPTION_ARG_STRING, &rise, N_ ("How far a wall may rise in a day, mm (1500)"),
      N_ ("MM") },
    { "lifts-a-day", 0, 0, G_OPTION_ARG_INT, &call.lifts_a_day,
      N_ ("Pieces that one person may lift in a day (0: any number)"), N_ ("N") },
    { "blocks-a-pallet", 0, 0, G_OPTION_ARG_INT, &call.blocks_a_pallet,
      N_ ("Blocks on a pallet (0: as many as weigh 1000 kg as delivered; common practice)"),
      N_ ("N") },
    ARGUMENT_JSON (call.as_json),
    ARGUMENT_OUTPUT (output),
    ARGUMENT_END,
  };

  if (!arguments_read ("work", entries, argc, argv, &call.file))
    return STATUS_CALL;
  if (!are_within (&call) || (rise && !arguments_length ("rise", rise, 1, 0, &call.rise)))
    return STATUS_CALL;
  call.output = output;
  return answer (&call);
}
