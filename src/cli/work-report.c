/* work-report.c - the work of a project, as JSON and for people */
#include "cli/work-report.h"

#include <glib/gi18n.h>

#include "cli/json.h"
#include "cli/output.h"
#include "cli/table.h"

/* Places behind the point in JSON, of hours, square metres and kilograms. */
#define JSON_DECIMALS 6

static const Wall *
wall_at (const Laid *laid, guint i)
{
  return project_wall_at (laid->project, i);
}

static char *
dup_piece_id (const Laid *laid, guint i, gint32 piece)
{
  const Piece *found = layout_piece (laid->layouts[i], (guint) piece);

  return g_strdup_printf ("%s/%d/%d", wall_at (laid, i)->key, found->course, found->number);
}

/* --- JSON --- */

static void
write_rates (Json *json, const WorkRates *rates)
{
  json_object (json, "rates");
  json_int (json, "gang", rates->gang);
  json_number (json, "hours_a_day", rates->hours_a_day, JSON_DECIMALS);
  if (rates->minutes_a_block > 0)
    json_number (json, "minutes_a_block", rates->minutes_a_block, JSON_DECIMALS);
  else
    json_number (json, "hours_a_m2", rates->hours_a_m2, JSON_DECIMALS);
  json_number (json, "minutes_a_cut", rates->minutes_a_cut, JSON_DECIMALS);
  json_number (json, "minutes_a_metre", rates->minutes_a_metre, JSON_DECIMALS);
  json_length (json, "rise", rates->rise);
  json_int (json, "lifts_a_day", rates->lifts_a_day);
  json_object_end (json);
}

static void
write_hours (Json *json, const WorkCourse *course)
{
  json_int (json, "pieces", course->pieces);
  json_int (json, "cuts", course->cuts);
  json_number (json, "area", course->area, JSON_DECIMALS);
  json_number (json, "mass", course->mass, JSON_DECIMALS);
  json_number (json, "laying", course->laying, JSON_DECIMALS);
  json_number (json, "sawing", course->sawing, JSON_DECIMALS);
  json_number (json, "levelling", course->levelling, JSON_DECIMALS);
  json_number (json, "hours", work_course_hours (course), JSON_DECIMALS);
}

static void
write_wall (Json *json, const Laid *laid, const Work *work, guint i)
{
  const WorkWall *wall = work_wall (work, i);

  json_object (json, NULL);
  json_string (json, "id", wall_at (laid, i)->key);
  json_string (json, "name", wall_at (laid, i)->name);
  write_hours (json, &wall->sum);
  if (wall->heaviest >= 0)
    {
      g_autofree char *id = dup_piece_id (laid, i, wall->heaviest);

      json_object (json, "heaviest");
      json_string (json, "piece", id);
      json_number (json, "mass", wall->mass, JSON_DECIMALS);
      json_object_end (json);
    }
  json_array (json, "courses");
  for (guint k = 0; k < wall->courses->len; k++)
    {
      const WorkCourse *course = &g_array_index (wall->courses, WorkCourse, k);

      json_object (json, NULL);
      json_int (json, "course", course->number);
      json_length (json, "top", course->top);
      write_hours (json, course);
      json_object_end (json);
    }
  json_array_end (json);
  json_object_end (json);
}

static void
write_day (Json *json, const Laid *laid, const Work *work, guint d)
{
  const WorkDay *day = &g_array_index (work->days, WorkDay, d);

  json_object (json, NULL);
  json_int (json, "day", d + 1);
  json_number (json, "hours", day->hours, JSON_DECIMALS);
  json_number (json, "lifts", day->lifts, JSON_DECIMALS);
  json_number (json, "mass", day->mass, JSON_DECIMALS);
  json_array (json, "work");
  for (guint i = day->first; i < day->first + day->n; i++)
    {
      const WorkStint *stint = &g_array_index (work->stints, WorkStint, i);

      json_object (json, NULL);
      json_string (json, "wall", wall_at (laid, stint->wall)->key);
      json_int (json, "from", stint->from);
      json_int (json, "to", stint->to);
      json_bool (json, "brace", stint->braced);
      json_object_end (json);
    }
  json_array_end (json);
  json_object_end (json);
}

static void
write_blocks (Json *json, const Laid *laid, const Work *work, guint i)
{
  const WorkBlocks *blocks = &work->blocks[i];

  json_object (json, NULL);
  json_string (json, "id", project_block_at (laid->project, i)->key);
  json_int (json, "to_order", blocks->blocks);
  json_int (json, "a_pallet", blocks->a_pallet);
  json_int (json, "pallets", blocks->pallets);
  json_object_end (json);
}

static void
write_pallet (Json *json, const Laid *laid, const WorkPallet *pallet)
{
  json_object (json, NULL);
  json_string (json, "block", project_block_at (laid->project, pallet->block)->key);
  json_string (json, "wall", wall_at (laid, pallet->wall)->key);
  json_length (json, "x", pallet->x);
  json_int (json, "blocks", pallet->blocks);
  json_bool (json, "free_place", !pallet->in_the_way);
  json_object_end (json);
}

void
work_report_json (GString *text, const Laid *laid, const Work *work)
{
  Json json = json_begin (text);

  json_object (&json, NULL);
  json_string (&json, "schema", "halfbond.work/1");
  write_rates (&json, &work->rates);
  json_number (&json, "hours", work->hours, JSON_DECIMALS);
  json_array (&json, "walls");
  for (guint i = 0; i < work->walls->len; i++)
    write_wall (&json, laid, work, i);
  json_array_end (&json);
  json_array (&json, "days");
  for (guint d = 0; d < work->days->len; d++)
    write_day (&json, laid, work, d);
  json_array_end (&json);
  json_array (&json, "blocks");
  for (guint i = 0; i < laid->project->blocks->len; i++)
    write_blocks (&json, laid, work, i);
  json_array_end (&json);
  json_array (&json, "pallets");
  for (guint i = 0; i < work->pallets->len; i++)
    write_pallet (&json, laid, &g_array_index (work->pallets, WorkPallet, i));
  json_array_end (&json);
  json_object_end (&json);
  json_end (&json);
}

/* --- for people: hours --- */

static void
append_rates (GString *text, const WorkRates *rates)
{
  g_autofree char *laying = rates->minutes_a_block > 0
                                ? g_strdup_printf (_ ("%.4g min a piece"), rates->minutes_a_block)
                                : g_strdup_printf (_ ("%.4g h a square metre"), rates->hours_a_m2);

  g_string_append_printf (text,
                          _ ("Hours of one person: laying %s, %.4g min a cut by hand saw, %.4g min "
                             "a metre of levelling bed.\n"),
                          laying, rates->minutes_a_cut, rates->minutes_a_metre);
}

static void
add_hours (Table *table, const char *of, const WorkCourse *course)
{
  table_add (table, of);
  table_take (table, g_strdup_printf ("%d", course->pieces));
  table_take (table, g_strdup_printf ("%d", course->cuts));
  table_take (table, g_strdup_printf ("%.2f", course->area));
  table_take (table, g_strdup_printf ("%.1f", course->laying));
  table_take (table, g_strdup_printf ("%.1f", course->sawing));
  table_take (table, g_strdup_printf ("%.1f", course->levelling));
  table_take (table, g_strdup_printf ("%.1f", work_course_hours (course)));
}

static void
append_wall (GString *text, const Laid *laid, const Work *work, guint i)
{
  const WorkWall *wall = work_wall (work, i);
  g_autofree char *name = output_line (wall_at (laid, i)->name);
  Table table = table_new (8, 1);

  g_string_append_printf (text, "\n%s  %s\n", wall_at (laid, i)->key, name);
  table_add (&table, _ ("course"));
  table_add (&table, _ ("pieces"));
  table_add (&table, _ ("saw cuts"));
  table_add (&table, _ ("m²"));
  table_add (&table, _ ("laying, h"));
  table_add (&table, _ ("sawing, h"));
  table_add (&table, _ ("bed, h"));
  table_add (&table, _ ("together, h"));
  for (guint k = 0; k < wall->courses->len; k++)
    {
      const WorkCourse *course = &g_array_index (wall->courses, WorkCourse, k);
      g_autofree char *number = g_strdup_printf ("%d", course->number);

      add_hours (&table, number, course);
    }
  add_hours (&table, _ ("all"), &wall->sum);
  table_end (&table, text);
}

/* --- handling --- */

static void
append_handling (GString *text, const Laid *laid, const Work *work)
{
  Table table = table_new (3, 1);

  g_string_append (text, _ ("\nThe heaviest piece of each wall, dry mass and 15 % of moisture:\n"));
  for (guint i = 0; i < work->walls->len; i++)
    {
      const WorkWall *wall = work_wall (work, i);

      if (wall->heaviest < 0)
        continue;
      table_take (&table, dup_piece_id (laid, i, wall->heaviest));
      table_take (&table, g_strdup_printf (_ ("%.1f kg"), wall->mass));
      table_add (&table, work_handling_text (wall->mass));
    }
  table_end (&table, text);
}

/* --- days --- */

static void
append_stint (GString *text, const Laid *laid, const WorkStint *stint)
{
  g_string_append_printf (text, "%s %d", wall_at (laid, stint->wall)->key, stint->from);
  if (stint->to > stint->from)
    g_string_append_printf (text, "–%d", stint->to);
}

static void
append_day (GString *text, const Laid *laid, const Work *work, guint d)
{
  const WorkDay *day = &g_array_index (work->days, WorkDay, d);
  const double gang = work->rates.gang;

  g_string_append_printf (text, _ ("  day %u: courses "), d + 1);
  for (guint i = day->first; i < day->first + day->n; i++)
    {
      g_string_append (text, i > day->first ? ", " : "");
      append_stint (text, laid, &g_array_index (work->stints, WorkStint, i));
    }
  g_string_append_printf (text, _ ("; %.1f h, a person %.0f pieces and %.0f kg\n"), day->hours,
                          day->lifts / gang, day->mass / gang);
}

static gboolean
is_any_braced (const Work *work)
{
  for (guint i = 0; i < work->stints->len; i++)
    if (g_array_index (work->stints, WorkStint, i).braced)
      return TRUE;
  return FALSE;
}

static void
append_days (GString *text, const Laid *laid, const Work *work)
{
  const WorkRates *rates = &work->rates;
  char rise[LENGTH_TEXT_SIZE];

  g_string_append_printf (
      text, _ ("\n%.1f h of work; %d at work, %.4g h a day, no wall more than %s mm a day:\n"),
      work->hours, rates->gang, rates->hours_a_day, length_text (rates->rise, rise));
  for (guint d = 0; d < work->days->len; d++)
    append_day (text, laid, work, d);
  if (is_any_braced (work))
    g_string_append (
        text,
        _ ("  A wall higher than 1.5 m that no floor or roof holds yet is to be braced "
           "against wind before it is left (common practice); ask a licensed engineer how.\n"));
}

/* --- pallets --- */

static void
append_blocks (GString *text, const Laid *laid, const Work *work, guint i)
{
  const WorkBlocks *blocks = &work->blocks[i];
  const Block *block = project_block_at (laid->project, i);
  g_autofree char *name = output_line (*block->name ? block->name : block->key);

  if (blocks->pallets == 0)
    return;
  g_string_append_printf (text, _ ("\n%s: %d blocks to order, %d on a pallet, pallets: %d\n"), name,
                          blocks->blocks, blocks->a_pallet, blocks->pallets);
  for (guint k = 0; k < work->pallets->len; k++)
    {
      const WorkPallet *pallet = &g_array_index (work->pallets, WorkPallet, k);

      if (pallet->block != i)
        continue;
      g_string_append_printf (text, _ ("  at the foot of %s, %.1f m from its left end: %d blocks"),
                              wall_at (laid, pallet->wall)->key, length_to_mm (pallet->x) / 1000,
                              pallet->blocks);
      g_string_append (text,
                       pallet->in_the_way ? _ ("; no place is free there: farther out\n") : "\n");
    }
}

void
work_report_text (GString *text, const Laid *laid, const Work *work)
{
  if (work->walls->len == 0)
    {
      g_string_append (text, _ ("There is no wall in this project.\n"));
      return;
    }
  append_rates (text, &work->rates);
  for (guint i = 0; i < work->walls->len; i++)
    append_wall (text, laid, work, i);
  append_days (text, laid, work);
  append_handling (text, laid, work);
  for (guint i = 0; i < laid->project->blocks->len; i++)
    append_blocks (text, laid, work, i);
}
