/* built-report.c - what halfbond-cli built says of the walls, for people and for programs */
#include "cli/built-report.h"

#include <glib/gi18n.h>

#include "cli/json.h"
#include "cli/output.h"
#include "cli/table.h"
#include "site/as-built.h"

#define JSON_DECIMALS 9

/* --- for programs --- */

static void
write_next (Json *json, const AsBuilt *built)
{
  const NextBeds *next = &built->next;

  json_object (json, "next");
  json_length (json, "bed", next->bed);
  json_length (json, "planned_bed", next->planned_bed);
  json_int (json, "last_whole", next->last_whole);
  json_length (json, "last_top", next->last_top);
  json_length (json, "planned_last_top", next->planned_last);
  json_length (json, "rip", next->rip);
  json_length (json, "top", next->top);
  json_length (json, "plate", next->plate);
  json_object_end (json);
}

static void
write_heights (Json *json, const Layout *layout)
{
  json_array (json, "heights");
  for (guint i = 0; i < layout->courses->len; i++)
    {
      const Course *course = layout_course (layout, i);

      json_object (json, NULL);
      json_int (json, "course", course->number);
      json_bool (json, "stands", course->stands);
      json_length (json, "bottom", course->bottom);
      json_length (json, "top", course->top);
      json_object_end (json);
    }
  json_array_end (json);
}

static void
write_deviation (Json *json, const Wall *wall, const Deviation *deviation)
{
  const Opening *opening = wall_opening (wall, deviation->opening);

  json_object (json, NULL);
  json_string (json, "of", tolerance_word (deviation->kind));
  if (deviation->course > 0)
    json_int (json, "course", deviation->course);
  if (deviation->kind == TOLERANCE_TOP)
    json_string (json, "at", side_word (deviation->at_right ? SIDE_RIGHT : SIDE_LEFT));
  if (opening != NULL)
    {
      json_string (json, "opening", opening->key);
      json_string (json, "figure", opening_figure_word (deviation->figure));
    }
  json_length (json, "x", deviation->x);
  json_length (json, "z", deviation->z);
  json_length (json, "measured", deviation->measured);
  json_length (json, "planned", deviation->planned);
  json_length (json, "off", deviation->off);
  json_length (json, "limit", deviation->limit.limit);
  json_string (json, "source", _ (deviation->limit.source));
  json_bool (json, "within", deviation->within);
  json_object_end (json);
}

static void
write_left (Json *json, guint i, const Takeoff *all, const Takeoff *rest)
{
  json_array (json, "left");
  for (guint k = 0; k < all->lines->len; k++)
    {
      const TakeoffLine *line = g_ptr_array_index (all->lines, k);
      const TakeoffLine *left = takeoff_line (rest, line->key);

      json_object (json, NULL);
      json_string (json, "key", line->key);
      json_string (json, "name", line->name);
      json_string (json, "unit", line->unit);
      json_number (json, "quantity", left != NULL ? left->walls[i] : 0, JSON_DECIMALS);
      json_number (json, "of", line->walls[i], JSON_DECIMALS);
      json_object_end (json);
    }
  json_array_end (json);
}

static void
write_wall (Json *json, const Laid *laid, guint i, const Takeoff *all, const Takeoff *rest)
{
  const Wall *wall = project_wall_at (laid->project, i);
  g_autoptr (AsBuilt) built = as_built_new (laid->project, wall, laid->layouts[i]);

  json_object (json, NULL);
  json_string (json, "id", wall->key);
  json_string (json, "name", wall->name);
  json_int (json, "standing", built->standing);
  json_int (json, "courses", built->courses);
  json_int (json, "pieces_standing", built->pieces_standing);
  json_int (json, "pieces", built->pieces);
  if (wall->built != NULL && wall->built->as_of != NULL)
    json_string (json, "as_of", wall->built->as_of);
  json_bool (json, "within", built->within);
  write_next (json, built);
  write_heights (json, laid->layouts[i]);
  json_array (json, "deviations");
  for (guint k = 0; k < built->deviations->len; k++)
    write_deviation (json, wall, as_built_deviation (built, k));
  json_array_end (json);
  write_left (json, i, all, rest);
  json_object_end (json);
}

void
built_report_json (GString *text, const Laid *laid, const Takeoff *all, const Takeoff *rest)
{
  Json json = json_begin (text);

  json_object (&json, NULL);
  json_string (&json, "schema", "halfbond.built/1");
  json_array (&json, "walls");
  for (guint i = laid->first; i < laid->first + laid->n; i++)
    write_wall (&json, laid, i, all, rest);
  json_array_end (&json);
  json_object_end (&json);
  json_end (&json);
}

/* --- for people --- */

static void
append_progress (GString *text, const Wall *wall, const AsBuilt *built)
{
  g_autofree char *name = output_line (wall->name);
  g_autofree char *as_of
      = wall->built != NULL && wall->built->as_of != NULL ? output_line (wall->built->as_of) : NULL;

  g_string_append_printf (text, "%s  %s\n", wall->key, name);
  g_string_append_printf (text, _ ("  laid up to course %d of %d: %u of %u pieces"),
                          built->standing, built->courses, built->pieces_standing, built->pieces);
  if (as_of != NULL)
    g_string_append_printf (text, _ (", as of %s"), as_of);
  g_string_append_c (text, '\n');
}

static void
append_way (GString *text, const AsBuilt *built)
{
  const NextBeds *next = &built->next;
  g_autofree char *sentence = next_beds_sentence (built);
  char rip[LENGTH_TEXT_SIZE], top[LENGTH_TEXT_SIZE], plate[LENGTH_TEXT_SIZE];

  if (sentence != NULL)
    g_string_append_printf (text, "  %s\n", sentence);
  if (next->rip > 0)
    g_string_append_printf (text, _ ("  The last course is ripped to %s mm and ends at %s mm.\n"),
                            length_text (next->rip, rip), length_text (next->top, top));
  else if (next->plate > next->top)
    g_string_append_printf (
        text,
        _ ("  The blockwork ends at %s mm; %s mm of mortar bring it to the plate at %s mm.\n"),
        length_text (next->top, top), length_text (next->plate - next->top, rip),
        length_text (next->plate, plate));
  else
    g_string_append_printf (text, _ ("  The blockwork ends at the plate, %s mm.\n"),
                            length_text (next->plate, plate));
}

static void
append_deviations (GString *text, const Wall *wall, const AsBuilt *built)
{
  for (guint i = 0; i < built->deviations->len; i++)
    {
      const Deviation *deviation = as_built_deviation (built, i);
      g_autofree char *sentence = deviation_sentence (wall, deviation);
      g_autofree char *line = output_line (sentence);

      g_string_append_printf (text, "  %s %s\n", deviation->within ? _ ("within:") : _ ("beyond:"),
                              line);
    }
}

/* Lines of which something is left or stands. */
static void
append_left (GString *text, guint i, const Takeoff *all, const Takeoff *rest)
{
  Table table = table_new (4, 1);

  table_add (&table, _ ("still needed"));
  table_add (&table, _ ("still"));
  table_add (&table, _ ("of"));
  table_add (&table, NULL);
  for (guint k = 0; k < all->lines->len; k++)
    {
      const TakeoffLine *line = g_ptr_array_index (all->lines, k);
      const TakeoffLine *left = takeoff_line (rest, line->key);

      if (line->walls[i] <= 0)
        continue;
      table_add (&table, _ (line->name));
      table_take (&table,
                  g_strdup_printf ("%.*f", line->decimals, left != NULL ? left->walls[i] : 0));
      table_take (&table, g_strdup_printf ("%.*f", line->decimals, line->walls[i]));
      table_add (&table, line->unit);
    }
  table_end (&table, text);
}

void
built_report_text (GString *text, const Laid *laid, const Takeoff *all, const Takeoff *rest)
{
  if (laid->n == 0)
    g_string_append (text, _ ("There is no wall in this project.\n"));
  for (guint i = laid->first; i < laid->first + laid->n; i++)
    {
      const Wall *wall = project_wall_at (laid->project, i);
      g_autoptr (AsBuilt) built = as_built_new (laid->project, wall, laid->layouts[i]);

      if (i > laid->first)
        g_string_append_c (text, '\n');
      append_progress (text, wall, built);
      append_way (text, built);
      append_deviations (text, wall, built);
      if (built->standing > 0)
        append_left (text, i, all, rest);
    }
}
