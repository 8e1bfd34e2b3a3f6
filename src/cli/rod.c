/* rod.c - halfbond-cli rod: the storey rod of each wall, and the beds that let most heights meet it
 */
#include <glib/gi18n.h>
#include <string.h>

#include "advice/rod.h"
#include "bond/gauge.h"
#include "cli/arguments.h"
#include "cli/json.h"
#include "cli/laid.h"
#include "cli/output.h"
#include "model/edit.h"

/* Choices that are told. */
#define SHOWN 5
/* Strips of each that people are told; in JSON all of them are. */
#define STRIPS_TOLD 12

typedef struct
{
  const char *file, *wall, *output, *into;
  gboolean as_json, to_gauge;
  RodRange range;
} RodCall;

typedef struct
{
  Project *project;
  WallId only; /* none: all */
  GArray *choices;
} Rod;

static void
rod_clear (Rod *rod)
{
  g_clear_pointer (&rod->project, project_unref);
  g_clear_pointer (&rod->choices, g_array_unref);
}
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Rod, rod_clear)

static const char *const kind_words[] = {
  [ROD_SILL] = "sill",
  [ROD_HEAD] = "head",
  [ROD_TOP] = "top",
};

/* --- JSON --- */

static void
write_mark (Json *json, const Wall *wall, const RodMark *mark)
{
  const Opening *opening = wall_opening (wall, mark->opening);

  json_object (json, NULL);
  json_string (json, "kind", kind_words[mark->kind]);
  if (opening != NULL)
    json_string (json, "opening", opening->key);
  json_length (json, "z", mark->z);
  json_int (json, "course", mark->course);
  json_length (json, "rip", mark->rip);
  json_length (json, "pack", mark->pack);
  json_object_end (json);
}

static void
write_wall (Json *json, const Rod *rod, const Wall *wall)
{
  const Block *block = project_block (rod->project, wall->block);
  const Laying laying = laying_resolve (&wall->laying, block);
  g_autoptr (GArray) marks = rod_marks (wall, block, &laying);
  const gint32 n = gauge_n_courses (wall, block, &laying);

  json_object (json, NULL);
  json_string (json, "id", wall->key);
  json_array (json, "courses");
  for (gint32 number = 1; number <= n; number++)
    {
      json_object (json, NULL);
      json_int (json, "course", number);
      json_length (json, "bottom", gauge_bottom (wall, block, &laying, number));
      json_length (json, "top", MIN (gauge_top (wall, block, &laying, number), wall->height));
      json_object_end (json);
    }
  json_array_end (json);
  json_array (json, "marks");
  for (guint i = 0; i < marks->len; i++)
    write_mark (json, wall, &g_array_index (marks, RodMark, i));
  json_array_end (json);
  json_object_end (json);
}

static gboolean
is_asked (const Rod *rod, guint i)
{
  return rod->only.n == 0 || project_wall_at (rod->project, i)->id.n == rod->only.n;
}

/* What is still ripped with it. */
static void
write_strips (Json *json, const Rod *rod, const RodChoice *choice)
{
  g_autoptr (GArray) strips = rod_strips (rod->project, rod->only, choice);

  json_array (json, "strips");
  for (guint i = 0; i < strips->len; i++)
    {
      const RodStrip *strip = &g_array_index (strips, RodStrip, i);
      const Wall *wall = project_wall_at (rod->project, strip->wall);
      const Opening *opening = wall_opening (wall, strip->mark.opening);

      json_object (json, NULL);
      json_string (json, "wall", wall->key);
      json_string (json, "kind", kind_words[strip->mark.kind]);
      if (opening != NULL)
        json_string (json, "opening", opening->key);
      json_length (json, "rip", strip->mark.rip);
      json_object_end (json);
    }
  json_array_end (json);
}

static void
write_json (GString *text, const Rod *rod)
{
  Json json = json_begin (text);

  json_object (&json, NULL);
  json_string (&json, "schema", "halfbond.rod/1");
  json_array (&json, "walls");
  for (guint i = 0; i < rod->project->walls->len; i++)
    if (is_asked (rod, i))
      write_wall (&json, rod, project_wall_at (rod->project, i));
  json_array_end (&json);
  json_array (&json, "choices");
  for (guint i = 0; i < MIN (rod->choices->len, SHOWN); i++)
    {
      const RodChoice *choice = &g_array_index (rod->choices, RodChoice, i);

      json_object (&json, NULL);
      json_length (&json, "first_bed", choice->first_bed);
      json_length (&json, "bed", choice->bed);
      json_int (&json, "marks", choice->marks);
      json_int (&json, "met", choice->met);
      json_length (&json, "ripped", choice->ripped);
      json_length (&json, "packed", choice->packed);
      write_strips (&json, rod, choice);
      json_object_end (&json);
    }
  json_array_end (&json);
  json_object_end (&json);
  json_end (&json);
}

/* --- for people --- */

static const char *const kinds[] = {
  [ROD_SILL] = N_ ("sill"),
  [ROD_HEAD] = N_ ("head"),
  [ROD_TOP] = N_ ("top"),
};

/* "W1 sill 1058, ripped to 28" */
static void
append_mark (GString *text, const Wall *wall, const RodMark *mark)
{
  const Opening *opening = wall_opening (wall, mark->opening);
  g_autofree char *name
      = opening ? output_line (*opening->name ? opening->name : opening->key) : NULL;
  char z[LENGTH_TEXT_SIZE], cut[LENGTH_TEXT_SIZE];

  if (name != NULL)
    g_string_append_printf (text, "  %s", name);
  g_string_append_printf (text, "  %s %s", _ (kinds[mark->kind]), length_text (mark->z, z));
  if (mark->rip > 0)
    g_string_append_printf (text, _ (", a strip of %s"), length_text (mark->rip, cut));
  else if (mark->pack > 0)
    g_string_append_printf (text, _ (", %s of mortar"), length_text (mark->pack, cut));
}

static void
append_wall (GString *text, const Rod *rod, const Wall *wall)
{
  const Block *block = project_block (rod->project, wall->block);
  const Laying laying = laying_resolve (&wall->laying, block);
  g_autoptr (GArray) marks = rod_marks (wall, block, &laying);
  g_autofree char *name = output_line (wall->name);
  gint32 n = gauge_n_courses (wall, block, &laying);
  guint mark = 0;

  g_string_append_printf (text, "%s  %s\n", wall->key, name);
  g_string_append (text, _ ("course    bottom       top\n"));
  for (gint32 number = 1; number <= n; number++)
    {
      char bottom[LENGTH_TEXT_SIZE], top[LENGTH_TEXT_SIZE];
      Length upto = number == n ? LENGTH_MAX : gauge_bottom (wall, block, &laying, number + 1);

      g_string_append_printf (
          text, "%6d  %8s  %8s", number,
          length_text (gauge_bottom (wall, block, &laying, number), bottom),
          length_text (MIN (gauge_top (wall, block, &laying, number), wall->height), top));
      for (; mark < marks->len && g_array_index (marks, RodMark, mark).z <= upto; mark++)
        append_mark (text, wall, &g_array_index (marks, RodMark, mark));
      g_string_append_c (text, '\n');
    }
}

/* "w1 W1 sill 28, w1 top 137", each of the walls that are asked for; nothing where none is ripped.
 */
static void
append_strips (GString *text, const Rod *rod, const RodChoice *choice)
{
  g_autoptr (GArray) strips = rod_strips (rod->project, rod->only, choice);

  for (guint i = 0; i < MIN (strips->len, STRIPS_TOLD); i++)
    {
      const RodStrip *strip = &g_array_index (strips, RodStrip, i);
      const Wall *wall = project_wall_at (rod->project, strip->wall);
      const Opening *opening = wall_opening (wall, strip->mark.opening);
      g_autofree char *name
          = opening ? output_line (*opening->name ? opening->name : opening->key) : NULL;
      char rip[LENGTH_TEXT_SIZE];

      g_string_append (text, i == 0 ? "    " : ", ");
      g_string_append_printf (text, "%s%s%s %s %s", wall->key, name != NULL ? " " : "",
                              name != NULL ? name : "", _ (kinds[strip->mark.kind]),
                              length_text (strip->mark.rip, rip));
    }
  if (strips->len > STRIPS_TOLD)
    g_string_append_printf (text, _ (" and %u more"), strips->len - STRIPS_TOLD);
  if (strips->len > 0)
    g_string_append_c (text, '\n');
}

static void
append_choices (GString *text, const Rod *rod)
{
  g_string_append (text, _ ("\nlevelling bed  bed joint  heights met  strips, mm  mortar, mm\n"));
  for (guint i = 0; i < MIN (rod->choices->len, SHOWN); i++)
    {
      const RodChoice *choice = &g_array_index (rod->choices, RodChoice, i);
      char first[LENGTH_TEXT_SIZE], bed[LENGTH_TEXT_SIZE], ripped[LENGTH_TEXT_SIZE],
          packed[LENGTH_TEXT_SIZE];

      g_string_append_printf (
          text, _ ("%13s  %9s  %4u of %4u  %10s  %10s\n"), length_text (choice->first_bed, first),
          length_text (choice->bed, bed), choice->met, choice->marks,
          length_text (choice->ripped, ripped), length_text (choice->packed, packed));
      append_strips (text, rod, choice);
    }
}

static void
write_text (GString *text, const Rod *rod)
{
  if (rod->project->walls->len == 0)
    g_string_append (text, _ ("There is no wall in this project.\n"));
  for (guint i = 0; i < rod->project->walls->len; i++)
    if (is_asked (rod, i))
      append_wall (text, rod, project_wall_at (rod->project, i));
  if (rod->project->walls->len > 0)
    append_choices (text, rod);
}

/* --- what was asked --- */

/* Every sill and head of the walls asked for to the nearest course. */
static Status
move_to_gauge (Rod *rod)
{
  g_autoptr (GPtrArray) walls = wall_list_new ();
  g_autoptr (Edit) edit = NULL;
  g_autoptr (GError) error = NULL;
  Project *next;

  for (guint i = 0; i < rod->project->walls->len; i++)
    if (is_asked (rod, i))
      {
        const Wall *wall = project_wall_at (rod->project, i);

        g_ptr_array_add (walls, rod_to_gauge (wall, project_block (rod->project, wall->block)));
      }
  edit = edit_walls (walls);
  next = project_edit (rod->project, edit, &error);
  if (next == NULL)
    {
      complain ("rod: %s", error->message);
      return STATUS_CALL;
    }
  project_unref (rod->project);
  rod->project = next;
  return STATUS_DONE;
}

static Status
find_wall (Rod *rod, const RodCall *call)
{
  const Wall *wall;

  if (call->wall == NULL)
    return STATUS_DONE;
  wall = project_wall_by_key (rod->project, call->wall);
  if (wall == NULL)
    {
      complain (_ ("%s has no wall “%s”."), call->file, call->wall);
      return STATUS_CALL;
    }
  rod->only = wall->id;
  return STATUS_DONE;
}

static Status
tell_rod (const RodCall *call)
{
  g_auto (Rod) rod = { 0 };
  g_autoptr (GString) text = g_string_new (NULL);
  Status status = laid_project (call->file, &rod.project);

  if (status == STATUS_DONE)
    status = find_wall (&rod, call);
  if (status == STATUS_DONE && call->to_gauge)
    status = move_to_gauge (&rod);
  if (status == STATUS_DONE && call->into != NULL)
    status = output_project (call->into, call->file, rod.project);
  if (status != STATUS_DONE)
    return status;
  rod.choices = rod_choices (rod.project, rod.only, &call->range, NULL);
  (call->as_json ? write_json : write_text) (text, &rod);
  return output_text (call->output, call->file, text);
}

/* "10..40", or one length; FALSE after a message. */
static gboolean
read_span (const char *option, const char *text, Length most, Length span[2])
{
  g_auto (GStrv) parts = text != NULL ? g_strsplit (text, "..", 2) : NULL;

  if (text == NULL)
    return TRUE;
  if (!arguments_length (option, parts[0], 0, 0, &span[0])
      || !arguments_length (option, parts[1] != NULL ? parts[1] : parts[0], 0, 0, &span[1]))
    return FALSE;
  if (span[0] <= span[1] && span[1] <= most)
    return TRUE;
  complain (_ ("--%s is a span such as 10..40, the lesser first, %d mm at most."), option,
            (int) length_to_mm (most));
  return FALSE;
}

Status
verb_rod (int argc, char **argv)
{
  g_autofree char *wall = NULL, *output = NULL, *into = NULL, *first = NULL, *bed = NULL;
  RodCall call = { .range = rod_range_usual () };
  const GOptionEntry entries[] = {
    ARGUMENT_WALL (wall),
    { "first-bed", 0, 0, G_OPTION_ARG_STRING, &first,
      N_ ("Levelling beds to try, mm (10..40, every millimetre)"), N_ ("FROM..TO") },
    { "bed", 0, 0, G_OPTION_ARG_STRING, &bed,
      N_ ("Bed joints to try, mm (1..3, every half millimetre)"), N_ ("FROM..TO") },
    { "to-gauge", 0, 0, G_OPTION_ARG_NONE, &call.to_gauge,
      N_ ("Move sills and heads to the nearest courses first"), NULL },
    { "into", 0, 0, G_OPTION_ARG_FILENAME, &into, N_ ("With --to-gauge: write the project"),
      N_ ("FILE") },
    ARGUMENT_JSON (call.as_json),
    ARGUMENT_OUTPUT (output),
    ARGUMENT_END,
  };

  if (!arguments_read ("rod", entries, argc, argv, &call.file))
    return STATUS_CALL;
  call.wall = wall;
  call.output = output;
  call.into = into;
  if (into != NULL && !call.to_gauge)
    {
      complain (_ ("rod: --into goes with --to-gauge."));
      return STATUS_CALL;
    }
  if (!read_span ("first-bed", first, LENGTH_MM (200), call.range.first_bed)
      || !read_span ("bed", bed, LENGTH_MM (20), call.range.bed))
    return STATUS_CALL;
  return tell_rod (&call);
}
