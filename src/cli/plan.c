/* plan.c - halfbond-cli plan: where walls stand and meet, outlines put in, the turns of corners */
#include <glib/gi18n.h>
#include <string.h>

#include "bond/building.h"
#include "cli/arguments.h"
#include "cli/json.h"
#include "cli/laid.h"
#include "cli/output.h"
#include "model/edit.h"
#include "model/outline.h"
#include "model/plan-edit.h"

typedef struct
{
  const char *file, *output, *into;
  const char *outline, *block; /* NULL: not asked for */
  Length height, x, y;
  gboolean turns, as_json;
} PlanCall;

typedef struct
{
  Project *project;
  GArray *meetings;
  Building *building; /* NULL where turns were not asked for */
} Planned;

static void
planned_clear (Planned *planned)
{
  g_clear_pointer (&planned->project, project_unref);
  g_clear_pointer (&planned->meetings, g_array_unref);
  g_clear_pointer (&planned->building, building_free);
}
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Planned, planned_clear)

static const Wall *
wall_of (const Planned *planned, const Meeting *meeting, int which)
{
  return project_wall_at (planned->project, meeting->wall[which]);
}

/* --- JSON --- */

static const char *const kind_words[] = {
  [MEET_CORNER] = "corner",
  [MEET_TEE] = "tee",
  [MEET_CROSSING] = "crossing",
  [MEET_WRONG] = "wrong",
};

static void
write_made (Json *json, const Planned *planned, const Meeting *meeting)
{
  switch (meeting->made)
    {
    case MADE_FIRST_ODD:
    case MADE_FIRST_EVEN:
      json_string (json, "made", "bonded");
      json_string (json, "odd",
                   wall_of (planned, meeting, meeting->made == MADE_FIRST_ODD ? 0 : 1)->key);
      return;
    case MADE_FIRST_THROUGH:
    case MADE_SECOND_THROUGH:
      json_string (json, "made", "butted");
      json_string (json, "through",
                   wall_of (planned, meeting, meeting->made == MADE_FIRST_THROUGH ? 0 : 1)->key);
      return;
    case MADE_UNSAID:
      json_string (json, "made", "unsaid");
      return;
    case MADE_CONTRARY:
    default:
      json_string (json, "made", "contrary");
    }
}

/* Of a wall that is butted: nothing where none are said. */
static void
write_ties (Json *json, const Planned *planned, const Meeting *meeting)
{
  const Ties *ties = plan_ties (planned->project, meeting);

  if (ties == NULL)
    return;
  json_object (json, "ties");
  json_string (json, "kind", tie_kind_word (ties->kind));
  json_int (json, "every", ties->every);
  json_int (json, "abreast", ties->abreast);
  json_object_end (json);
}

static void
write_meeting (Json *json, const Planned *planned, const Meeting *meeting)
{
  json_object (json, NULL);
  json_string (json, "kind", kind_words[meeting->kind]);
  json_array (json, "walls");
  for (int i = 0; i < 2; i++)
    json_string (json, NULL, wall_of (planned, meeting, i)->key);
  json_array_end (json);
  json_array (json, "at");
  for (int i = 0; i < 2; i++)
    json_length (json, NULL, meeting->at[i]);
  json_array_end (json);
  if (meeting->kind != MEET_WRONG)
    {
      write_made (json, planned, meeting);
      write_ties (json, planned, meeting);
    }
  json_object_end (json);
}

static void
write_wall (Json *json, const Planned *planned, const Wall *wall)
{
  json_object (json, NULL);
  json_string (json, "id", wall->key);
  json_string (json, "name", wall->name);
  json_length (json, "length", wall->length);
  json_length (json, "thickness", project_block (planned->project, wall->block)->thickness);
  if (wall->place.given)
    {
      json_length (json, "plan_x", wall->place.x);
      json_length (json, "plan_y", wall->place.y);
      json_string (json, "runs", runs_word (wall->place.runs));
    }
  json_object_end (json);
}

static void
write_json (GString *text, const Planned *planned)
{
  const Building *building = planned->building;
  Json json = json_begin (text);

  json_object (&json, NULL);
  json_string (&json, "schema", "halfbond.plan/1");
  json_array (&json, "walls");
  for (guint i = 0; i < planned->project->walls->len; i++)
    write_wall (&json, planned, project_wall_at (planned->project, i));
  json_array_end (&json);
  json_array (&json, "meetings");
  for (guint i = 0; i < planned->meetings->len; i++)
    write_meeting (&json, planned, &g_array_index (planned->meetings, Meeting, i));
  json_array_end (&json);
  if (building != NULL)
    {
      json_object (&json, "turns");
      json_int (&json, "changed", building->changed);
      json_int (&json, "now_breaches", building->now_breaches);
      json_int (&json, "now_cuts", building->now_cuts);
      json_int (&json, "breaches", building->breaches);
      json_int (&json, "cuts", building->cuts);
      json_int (&json, "breaches_at_least", building->breaches_at_least);
      json_int (&json, "cuts_at_least", building->cuts_at_least);
      json_bool (&json, "proven", building->proven);
      json_object_end (&json);
    }
  json_object_end (&json);
  json_end (&json);
}

/* --- for people --- */

static void
append_wall (GString *text, const Planned *planned, const Wall *wall)
{
  g_autofree char *name = output_line (wall->name);
  char length[LENGTH_TEXT_SIZE], thickness[LENGTH_TEXT_SIZE], x[LENGTH_TEXT_SIZE],
      y[LENGTH_TEXT_SIZE];

  length_text (wall->length, length);
  length_text (project_block (planned->project, wall->block)->thickness, thickness);
  g_string_append_printf (text, "%s  %s: %s × %s mm", wall->key, name, length, thickness);
  if (wall->place.given)
    g_string_append_printf (text, _ (", from %s, %s to the %s"), length_text (wall->place.x, x),
                            length_text (wall->place.y, y), runs_word (wall->place.runs));
  else
    g_string_append (text, _ (", without a place in plan"));
  g_string_append_c (text, '\n');
}

/* "w1 in odd courses, w2 in even ones" */
static char *
dup_made (const Planned *planned, const Meeting *meeting)
{
  const char *first = wall_of (planned, meeting, 0)->key;
  const char *second = wall_of (planned, meeting, 1)->key;

  switch (meeting->made)
    {
    case MADE_FIRST_ODD:
      return g_strdup_printf (_ ("%s runs through in odd courses, %s in even ones"), first, second);
    case MADE_FIRST_EVEN:
      return g_strdup_printf (_ ("%s runs through in odd courses, %s in even ones"), second, first);
    case MADE_FIRST_THROUGH:
      return g_strdup_printf (_ ("%s runs through, %s is butted to it"), first, second);
    case MADE_SECOND_THROUGH:
      return g_strdup_printf (_ ("%s runs through, %s is butted to it"), second, first);
    case MADE_UNSAID:
      return g_strdup (_ ("not said which runs through"));
    case MADE_CONTRARY:
    default:
      return g_strdup (_ ("the two do not agree which runs through"));
    }
}

/* "with ties: 2 × flat strips in every course" */
static void
append_ties (GString *text, const Planned *planned, const Meeting *meeting)
{
  const Ties *ties = plan_ties (planned->project, meeting);

  if (plan_butted (meeting) < 0)
    return;
  if (ties == NULL)
    g_string_append (text, _ ("; not said how it is tied"));
  else if (ties->every == 1)
    g_string_append_printf (text, _ ("; ties in every course: %d × %s"), ties->abreast,
                            tie_kind_name (ties->kind));
  else
    g_string_append_printf (text, _ ("; ties in every %d courses: %d × %s"), ties->every,
                            ties->abreast, tie_kind_name (ties->kind));
}

static void
append_meeting (GString *text, const Planned *planned, const Meeting *meeting)
{
  static const char *const kinds[] = {
    [MEET_CORNER] = N_ ("corner"),
    [MEET_TEE] = N_ ("tee"),
    [MEET_CROSSING] = N_ ("crossing"),
    [MEET_WRONG] = N_ ("in each other's way"),
  };
  g_autofree char *made = dup_made (planned, meeting);
  char at[2][LENGTH_TEXT_SIZE];

  g_string_append_printf (text, _ ("%s: %s at %s mm, %s at %s mm"), _ (kinds[meeting->kind]),
                          wall_of (planned, meeting, 0)->key, length_text (meeting->at[0], at[0]),
                          wall_of (planned, meeting, 1)->key, length_text (meeting->at[1], at[1]));
  if (meeting->kind != MEET_WRONG)
    {
      g_string_append_printf (text, ": %s", made);
      append_ties (text, planned, meeting);
    }
  g_string_append_c (text, '\n');
}

static void
append_turns (GString *text, const Building *building)
{
  g_string_append_printf (
      text,
      _ ("As they were, all walls had %d cuts and %d breaches; with these turns %d and %d "
         "(%u changed).\n"),
      building->now_cuts, building->now_breaches, building->cuts, building->breaches,
      building->changed);
  if (building->proven)
    g_string_append (text, _ ("Proven: no choice of turns has fewer.\n"));
  else
    g_string_append_printf (text,
                            _ ("Not proven: no choice of turns has fewer than %d cuts and %d "
                               "breaches.\n"),
                            building->cuts_at_least, building->breaches_at_least);
}

static void
write_text (GString *text, const Planned *planned)
{
  if (planned->project->walls->len == 0)
    g_string_append (text, _ ("There is no wall in this project.\n"));
  for (guint i = 0; i < planned->project->walls->len; i++)
    append_wall (text, planned, project_wall_at (planned->project, i));
  for (guint i = 0; i < planned->meetings->len; i++)
    append_meeting (text, planned, &g_array_index (planned->meetings, Meeting, i));
  if (planned->building != NULL)
    append_turns (text, planned->building);
}

/* --- what was asked --- */

/* The project with more walls, or other turns. */
static Status
edit_plan (Planned *planned, const GPtrArray *walls)
{
  g_autoptr (Edit) edit = edit_walls (walls);
  g_autoptr (GError) error = NULL;
  Project *next = project_edit (planned->project, edit, &error);

  if (next == NULL)
    {
      complain ("plan: %s", error->message);
      return STATUS_CALL;
    }
  project_unref (planned->project);
  planned->project = next;
  return STATUS_DONE;
}

static const Block *
block_asked (const Planned *planned, const PlanCall *call)
{
  const Project *project = planned->project;

  if (call->block == NULL && project->blocks->len > 0)
    return project_block_at (project, 0);
  for (guint i = 0; call->block != NULL && i < project->blocks->len; i++)
    if (g_str_equal (project_block_at (project, i)->key, call->block))
      return project_block_at (project, i);
  if (call->block != NULL)
    complain (_ ("%s has no block “%s”."), call->file, call->block);
  else
    complain (_ ("%s has no block to build of."), call->file);
  return NULL;
}

static Status
put_outline (Planned *planned, const PlanCall *call)
{
  g_autofree char *fault = NULL;
  g_autoptr (GArray) sides = outline_parse (call->outline, &fault);
  const Block *block = block_asked (planned, call);
  g_autoptr (GPtrArray) walls = NULL;

  if (block == NULL)
    return STATUS_CALL;
  if (fault == NULL)
    fault = outline_fault (sides);
  if (fault != NULL)
    {
      complain ("plan: %s", fault);
      return STATUS_CALL;
    }
  walls = outline_walls (sides, block->thickness, call->height, call->x, call->y);
  for (guint i = 0; i < walls->len; i++)
    {
      Wall *wall = g_ptr_array_index (walls, i);

      g_free (wall->name);
      wall->name = g_strdup_printf (_ ("Wall %u"), planned->project->walls->len + i + 1);
      wall->block = block->id;
    }
  return edit_plan (planned, walls);
}

static Status
choose_turns (Planned *planned)
{
  g_autoptr (GPtrArray) walls = NULL;

  planned->building = building_turns (planned->project, NULL);
  walls = building_walls (planned->project, planned->building);
  return edit_plan (planned, walls);
}

/* A meeting that is wrong or unclear, or a wall that cannot be laid within its rules. */
static Status
verdict_of (const Planned *planned)
{
  for (guint i = 0; i < planned->meetings->len; i++)
    {
      const Meeting *meeting = &g_array_index (planned->meetings, Meeting, i);

      if (meeting->kind == MEET_WRONG || meeting->made >= MADE_UNSAID)
        return STATUS_BREACH;
    }
  return planned->building != NULL && planned->building->breaches > 0 ? STATUS_BREACH : STATUS_DONE;
}

static Status
plan (const PlanCall *call)
{
  g_auto (Planned) planned = { 0 };
  g_autoptr (GString) text = g_string_new (NULL);
  Status status = laid_project (call->file, &planned.project);

  if (status == STATUS_DONE && call->outline != NULL)
    status = put_outline (&planned, call);
  if (status == STATUS_DONE && call->turns)
    status = choose_turns (&planned);
  if (status == STATUS_DONE && call->into != NULL)
    status = output_project (call->into, call->file, planned.project);
  if (status != STATUS_DONE)
    return status;
  planned.meetings = plan_meetings (planned.project);
  (call->as_json ? write_json : write_text) (text, &planned);
  return output_verdict (verdict_of (&planned), output_text (call->output, call->file, text));
}

static gboolean
is_clear (const PlanCall *call, const char *height, const char *x, const char *y)
{
  if (call->outline == NULL && (call->block != NULL || height != NULL || x != NULL || y != NULL))
    complain (_ ("plan: --block, --height, --x and --y go with --outline."));
  else if (call->into != NULL && call->outline == NULL && !call->turns)
    complain (_ ("plan: --into goes with --outline or --turns."));
  else
    return TRUE;
  return FALSE;
}

Status
verb_plan (int argc, char **argv)
{
  g_autofree char *outline = NULL, *block = NULL, *output = NULL, *into = NULL;
  g_autofree char *height = NULL, *x = NULL, *y = NULL;
  PlanCall call = { 0 };
  const GOptionEntry entries[] = {
    { "outline", 0, 0, G_OPTION_ARG_STRING, &outline,
      N_ ("Add the walls of an outline: \"8000 x 6000\", or sides against the clock, a turn to "
          "the right said by R: \"9000 4000 3000 R 3000 6000 7000\""),
      N_ ("SIDES") },
    { "block", 0, 0, G_OPTION_ARG_STRING, &block,
      N_ ("With --outline: the block of this id (the first)"), N_ ("ID") },
    { "height", 0, 0, G_OPTION_ARG_STRING, &height,
      N_ ("With --outline: height of its walls, mm (2500)"), N_ ("MM") },
    { "x", 0, 0, G_OPTION_ARG_STRING, &x,
      N_ ("With --outline: where its first corner is, to the east, mm (0)"), N_ ("MM") },
    { "y", 0, 0, G_OPTION_ARG_STRING, &y, N_ ("The same to the north"), N_ ("MM") },
    { "turns", 0, 0, G_OPTION_ARG_NONE, &call.turns,
      N_ ("Choose which wall runs through in odd courses, so that all walls have the fewest cuts"),
      NULL },
    { "into", 0, 0, G_OPTION_ARG_FILENAME, &into,
      N_ ("With --outline or --turns: write the project to this file"), N_ ("FILE") },
    ARGUMENT_JSON (call.as_json),
    ARGUMENT_OUTPUT (output),
    ARGUMENT_END,
  };

  if (!arguments_read ("plan", entries, argc, argv, &call.file))
    return STATUS_CALL;
  call.outline = outline;
  call.block = block;
  call.output = output;
  call.into = into;
  if (!is_clear (&call, height, x, y)
      || !arguments_length ("height", height, 1, LENGTH_MM (2500), &call.height)
      || !arguments_length ("x", x, -LENGTH_MAX, 0, &call.x)
      || !arguments_length ("y", y, -LENGTH_MAX, 0, &call.y))
    return STATUS_CALL;
  return plan (&call);
}
