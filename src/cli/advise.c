/* advise.c - halfbond-cli advise: what each place of an opening would cost
 *
 * Each place is really laid and its blocks are really counted, so the rows say what `lay` and
 * `takeoff` would say of a project of that wall alone with the opening moved there. */
#include <glib/gi18n.h>
#include <string.h>

#include "advice/place.h"
#include "cli/advise-wall.h"
#include "cli/arguments.h"
#include "cli/jobs.h"
#include "cli/json.h"
#include "cli/laid.h"
#include "cli/output.h"

#define MAX_PLACES 20001

typedef struct
{
  Project *project;
  const Wall *wall;
  const Opening *opening;
  Shift shift;
  GArray *places; /* Place, from the left, or upwards */
} Advice;

static void
advice_clear (Advice *advice)
{
  g_clear_pointer (&advice->project, project_unref);
  g_clear_pointer (&advice->places, g_array_unref);
}
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Advice, advice_clear)

static const Opening *
opening_by_key (const Project *project, const char *key, const Wall **wall)
{
  for (guint w = 0; w < project->walls->len; w++)
    {
      *wall = project_wall_at (project, w);
      for (guint o = 0; o < (*wall)->openings->len; o++)
        if (strcmp (wall_opening_at (*wall, o)->key, key) == 0)
          return wall_opening_at (*wall, o);
    }
  return NULL;
}

static void
try_place (guint i, gpointer data)
{
  const Advice *advice = data;

  place_try (advice->wall, project_block (advice->project, advice->wall->block),
             advice->opening->id, advice->shift, LOOK_LAID,
             &g_array_index (advice->places, Place, i), NULL);
}

static gboolean
list_places (Advice *advice, Length within, Length step)
{
  const gint64 each_side = within / step;
  char step_text[LENGTH_TEXT_SIZE], most[LENGTH_TEXT_SIZE];

  if (2 * each_side + 1 > MAX_PLACES)
    {
      complain (_ ("advise: that would be %d places, %d at most; with --step %s, --within is %s at "
                   "most."),
                (int) MIN (2 * each_side + 1, G_MAXINT), MAX_PLACES, length_text (step, step_text),
                length_text ((MAX_PLACES - 1) / 2 * step, most));
      return FALSE;
    }
  advice->places = g_array_new (FALSE, TRUE, sizeof (Place));
  for (gint64 i = -each_side; i <= each_side; i++)
    {
      const gint64 at = shift_at (advice->opening, advice->shift) + i * step;
      const Place place = { .at = (Length) at };
      if (at >= 0 && at <= LENGTH_MAX)
        g_array_append_val (advice->places, place);
    }
  return TRUE;
}

/* The key of a place in JSON; the words of --edge are jamb, sill and head. */
static const char *const place_keys[N_SHIFTS] = {
  [SHIFT_ALONG] = "x",
  [SHIFT_SILL] = "sill",
  [SHIFT_HEAD] = "head",
};
static const char *const edge_words[] = { "jamb", "sill", "head", NULL };

static void
write_json (GString *text, const Advice *advice)
{
  Json json = json_begin (text);

  json_object (&json, NULL);
  json_string (&json, "schema", "halfbond.advise/1");
  json_string (&json, "opening", advice->opening->key);
  json_array (&json, "places");
  for (guint i = 0; i < advice->places->len; i++)
    {
      const Place *place = &g_array_index (advice->places, Place, i);
      if (!place->possible)
        continue;
      json_object (&json, NULL);
      json_length (&json, place_keys[advice->shift], place->at);
      json_int (&json, "cuts", place->cost.cuts);
      json_int (&json, "to_order", place->cost.to_order);
      json_int (&json, "breaches", place->cost.breaches);
      json_int (&json, "cuts_at_least", place->cost.cuts_at_least);
      json_object_end (&json);
    }
  json_array_end (&json);
  json_object_end (&json);
  json_end (&json);
}

/* Cheaper by the wall's aim; of equal ones the nearest to where it is. */
static gboolean
better (const Advice *advice, const Place *a, const Place *b)
{
  const Length now = shift_at (advice->opening, advice->shift);
  const Block *block = project_block (advice->project, advice->wall->block);
  const int by_cost = cost_compare (&a->cost, &b->cost, cost_aim (advice->wall, block));

  return by_cost != 0 ? by_cost < 0 : ABS (a->at - now) < ABS (b->at - now);
}

static const Place *
best_place (const Advice *advice)
{
  const Place *best = NULL;

  for (guint i = 0; i < advice->places->len; i++)
    {
      const Place *place = &g_array_index (advice->places, Place, i);
      if (place->possible && (!best || better (advice, place, best)))
        best = place;
    }
  return best;
}

static void
append_place (GString *text, const Advice *advice, const Place *place, const char *mark)
{
  char x[LENGTH_TEXT_SIZE], shift[LENGTH_TEXT_SIZE];

  g_string_append_printf (
      text, "%8s  %8s  %6d  %8d  %8d  %s\n", length_text (place->at, x),
      length_text (place->at - shift_at (advice->opening, advice->shift), shift), place->cost.cuts,
      place->cost.to_order, place->cost.breaches, mark);
}

static void
write_text (GString *text, const Advice *advice)
{
  const Place *best = best_place (advice);

  static const char *const headings[N_SHIFTS] = {
    [SHIFT_ALONG] = N_ ("       x     moved    cuts  to order  breaches\n"),
    [SHIFT_SILL] = N_ ("    sill     moved    cuts  to order  breaches\n"),
    [SHIFT_HEAD] = N_ ("    head     moved    cuts  to order  breaches\n"),
  };

  g_string_append (text, _ (headings[advice->shift]));
  for (guint i = 0; i < advice->places->len; i++)
    {
      const Place *place = &g_array_index (advice->places, Place, i);
      const gboolean now = place->at == shift_at (advice->opening, advice->shift);
      if (place->possible)
        append_place (text, advice, place,
                      place == best ? (now ? _ ("best, as it is") : _ ("best"))
                                    : (now ? _ ("as it is") : ""));
    }
}

static Status
find_opening (Advice *advice, const char *file, const char *key)
{
  const Status status = laid_project (file, &advice->project);

  if (status != STATUS_DONE)
    return status;
  advice->opening = opening_by_key (advice->project, key, &advice->wall);
  if (advice->opening)
    return STATUS_DONE;
  complain (_ ("%s has no opening “%s”."), file, key);
  return STATUS_CALL;
}

static Status
advise_opening (const AdviseCall *call, const char *opening, Shift shift, Length within)
{
  g_auto (Advice) advice = { .shift = shift };
  const Status status = find_opening (&advice, call->file, opening);

  if (status != STATUS_DONE)
    return status;
  if (!list_places (&advice, within, call->step))
    return STATUS_CALL;

  jobs_run (advice.places->len, try_place, &advice, _ ("Trying places"));
  g_autoptr (GString) text = g_string_new (NULL);
  (call->as_json ? write_json : write_text) (text, &advice);
  /* Within the rules nowhere: that is a verdict, too. */
  const Place *best = best_place (&advice);
  return output_verdict (best && best->cost.breaches > 0 ? STATUS_BREACH : STATUS_DONE,
                         output_text (call->output, call->file, text));
}

/* What was asked: --opening, --all, or --wall alone. FALSE after a message when it is not clear. */
static gboolean
is_clear (const char *opening, gboolean all, const AdviseCall *call, const char *edge)
{
  if (!opening && !all && !call->wall)
    complain (
        _ ("advise: which opening? Say it with --opening ID. For a wall say --wall ID, for all "
           "openings that may move --all."));
  else if (opening && (all || call->wall))
    complain (_ ("advise: --opening goes without --all and --wall."));
  else if (edge && !opening)
    complain (_ ("advise: --edge goes with --opening."));
  else if (call->into && !all)
    complain (_ ("advise: --into goes with --all."));
  else
    return TRUE;
  return FALSE;
}

Status
verb_advise (int argc, char **argv)
{
  gboolean all = FALSE;
  g_autofree char *opening = NULL, *within_text = NULL, *step_text = NULL, *output = NULL;
  g_autofree char *edge = NULL, *wall = NULL, *into = NULL;
  AdviseCall call = { 0 };
  Length within;
  int shift = SHIFT_ALONG;
  const GOptionEntry entries[] = {
    { "opening", 0, 0, G_OPTION_ARG_STRING, &opening, N_ ("The opening of this id"), N_ ("ID") },
    { "edge", 0, 0, G_OPTION_ARG_STRING, &edge,
      N_ ("What of it moves: jamb (all of it, along the wall), sill, head"), N_ ("EDGE") },
    { "within", 0, 0, G_OPTION_ARG_STRING, &within_text,
      N_ ("How far it may move to either side, mm (300)"), N_ ("MM") },
    { "step", 0, 0, G_OPTION_ARG_STRING, &step_text, N_ ("From place to place, mm (5)"),
      N_ ("MM") },
    { "wall", 0, 0, G_OPTION_ARG_STRING, &wall,
      N_ ("What position, levelling bed, length and rule would save on the wall of this id"),
      N_ ("ID") },
    { "all", 0, 0, G_OPTION_ARG_NONE, &all,
      N_ ("The best places of all openings that may move (may-move), together; with --wall of one "
          "wall"),
      NULL },
    { "into", 0, 0, G_OPTION_ARG_FILENAME, &into,
      N_ ("With --all: write the project with the openings there"), N_ ("FILE") },
    ARGUMENT_JSON (call.as_json),
    ARGUMENT_OUTPUT (output),
    ARGUMENT_END,
  };

  if (!arguments_read ("advise", entries, argc, argv, &call.file))
    return STATUS_CALL;
  call.wall = wall;
  call.output = output;
  call.into = into;
  if (!is_clear (opening, all, &call, edge)
      || !arguments_length ("within", within_text, 0, LENGTH_MM (300), &within)
      || !arguments_length ("step", step_text, 1, LENGTH_MM (5), &call.step))
    return STATUS_CALL;
  if (edge)
    shift = arguments_word ("edge", edge, edge_words);
  if (shift < 0)
    return STATUS_CALL;
  if (all)
    return advise_all (&call);
  return opening ? advise_opening (&call, opening, (Shift) shift, within) : advise_wall (&call);
}
