#include "cli/advise-wall.h"

#include <glib/gi18n.h>

#include "advice/improve.h"
#include "advice/saving.h"
#include "cli/arguments.h"
#include "cli/json.h"
#include "cli/laid.h"
#include "cli/output.h"

static const Wall *
wall_asked (const Laid *laid, guint i)
{
  return project_wall_at (laid->project, laid->first + i);
}

/* --- what of a wall would save --- */

static void
write_savings_json (GString *text, const Laid *laid, const GPtrArray *all)
{
  Json json = json_begin (text);

  json_object (&json, NULL);
  json_string (&json, "schema", "halfbond.advise-wall/1");
  json_array (&json, "walls");
  for (guint i = 0; i < laid->n; i++)
    {
      const GPtrArray *savings = g_ptr_array_index (all, i);

      json_object (&json, NULL);
      json_string (&json, "id", wall_asked (laid, i)->key);
      json_array (&json, "savings");
      for (guint k = 0; k < savings->len; k++)
        {
          const Finding *saving = g_ptr_array_index (savings, k);

          json_object (&json, NULL);
          json_string (&json, "rule", saving->rule);
          json_string (&json, "text", saving->text);
          json_string (&json, "mend", saving->mend_text);
          json_object_end (&json);
        }
      json_array_end (&json);
      json_object_end (&json);
    }
  json_array_end (&json);
  json_object_end (&json);
  json_end (&json);
}

static void
write_savings_text (GString *text, const Laid *laid, const GPtrArray *all)
{
  for (guint i = 0; i < laid->n; i++)
    {
      const GPtrArray *savings = g_ptr_array_index (all, i);
      const char *key = wall_asked (laid, i)->key;

      if (savings->len == 0)
        g_string_append_printf (
            text, _ ("%s: no other position, levelling bed, length or rule near by saves much.\n"),
            key);
      for (guint k = 0; k < savings->len; k++)
        g_string_append_printf (text, "%s: %s\n", key,
                                ((const Finding *) g_ptr_array_index (savings, k))->text);
    }
}

static void
unref_savings (gpointer savings)
{
  g_ptr_array_unref (savings);
}

Status
advise_wall (const AdviseCall *call)
{
  g_auto (Laid) laid = { 0 };
  const Status status = laid_read (call->file, call->wall, &laid);
  g_autoptr (GPtrArray) all = g_ptr_array_new_with_free_func (unref_savings);
  g_autoptr (GString) text = g_string_new (NULL);

  if (status != STATUS_DONE)
    return status;
  for (guint i = 0; i < laid.n; i++)
    g_ptr_array_add (
        all, savings_of_wall (laid.project, wall_asked (&laid, i), g_get_num_processors (), NULL));
  (call->as_json ? write_savings_json : write_savings_text) (text, &laid, all);
  return output_verdict (laid_verdict (&laid), output_text (call->output, call->file, text));
}

/* --- all openings together --- */

static void
write_cost (Json *json, const char *key, const Cost *cost)
{
  json_object (json, key);
  json_int (json, "breaches", cost->breaches);
  json_int (json, "cuts", cost->cuts);
  json_int (json, "to_order", cost->to_order);
  json_object_end (json);
}

static void
write_improvement (Json *json, const Wall *wall, const Improvement *improvement)
{
  json_object (json, NULL);
  json_string (json, "id", wall->key);
  json_int (json, "free", improvement->n_free);
  write_cost (json, "before", &improvement->before);
  write_cost (json, "after", &improvement->after);
  json_array (json, "moves");
  for (guint i = 0; i < improvement->moves->len; i++)
    {
      const ImproveMove *move = &g_array_index (improvement->moves, ImproveMove, i);

      json_object (json, NULL);
      json_string (json, "opening", wall_opening (wall, move->opening)->key);
      json_length (json, "from", move->from);
      json_length (json, "to", move->to);
      json_object_end (json);
    }
  json_array_end (json);
  /* Where there are too many to be listed, they are not told. */
  if (improvement->combinations != IMPROVE_TOO_MANY)
    json_int (json, "combinations", improvement->n_possible);
  json_int (json, "laid", improvement->n_laid);
  json_int (json, "breaches_at_least", improvement->breaches_at_least);
  json_int (json, "cuts_at_least", improvement->cuts_at_least);
  /* Where fewer breaches may be possible, nothing is told of cuts; nor with another aim. */
  if (improvement->aim == AIM_FEWEST_CUTS && improvement_gap (improvement) >= 0)
    json_int (json, "saves_at_most", improvement_gap (improvement));
  json_bool (json, "compared", improvement->compared);
  json_bool (json, "proven", improvement->proven);
  json_object_end (json);
}

static void
write_all_json (GString *text, const Laid *laid, const GPtrArray *all)
{
  Json json = json_begin (text);

  json_object (&json, NULL);
  json_string (&json, "schema", "halfbond.advise-all/1");
  json_array (&json, "walls");
  for (guint i = 0; i < laid->n; i++)
    write_improvement (&json, wall_asked (laid, i), g_ptr_array_index (all, i));
  json_array_end (&json);
  json_object_end (&json);
  json_end (&json);
}

static void
write_all_text (GString *text, const Laid *laid, const GPtrArray *all)
{
  for (guint i = 0; i < laid->n; i++)
    {
      const Wall *wall = wall_asked (laid, i);
      const Improvement *improvement = g_ptr_array_index (all, i);
      g_autofree char *said = improvement_text (improvement);

      g_string_append_printf (text, "%s: %s\n", wall->key, said);
      for (guint k = 0; k < improvement->moves->len; k++)
        {
          const ImproveMove *move = &g_array_index (improvement->moves, ImproveMove, k);
          char from[LENGTH_TEXT_SIZE], to[LENGTH_TEXT_SIZE];

          g_string_append_printf (text, _ ("    %s from %s to %s mm\n"),
                                  wall_opening (wall, move->opening)->key,
                                  length_text (move->from, from), length_text (move->to, to));
        }
    }
}

/* The project with every improvement; each of the walls has no more than one edit. */
static Project *
improved (const Laid *laid, const GPtrArray *all)
{
  Project *project = project_ref (laid->project);

  for (guint i = 0; i < all->len; i++)
    {
      const Improvement *improvement = g_ptr_array_index (all, i);
      Project *next = improvement->edit ? project_edit (project, improvement->edit, NULL) : NULL;

      if (!next)
        continue;
      project_unref (project);
      project = next;
    }
  return project;
}

static Status
verdict_of (const GPtrArray *all)
{
  for (guint i = 0; i < all->len; i++)
    if (((const Improvement *) g_ptr_array_index (all, i))->after.breaches > 0)
      return STATUS_BREACH;
  return STATUS_DONE;
}

static void
free_improvement (gpointer improvement)
{
  improvement_free (improvement);
}

Status
advise_all (const AdviseCall *call)
{
  g_auto (Laid) laid = { 0 };
  const ImproveHow how = { call->step, IMPROVE_WORK_CALL, g_get_num_processors (), NULL };
  const Status status = laid_read (call->file, call->wall, &laid);
  g_autoptr (GPtrArray) all = g_ptr_array_new_with_free_func (free_improvement);
  g_autoptr (GString) text = g_string_new (NULL);
  Status written = STATUS_DONE;

  if (status != STATUS_DONE)
    return status;
  for (guint i = 0; i < laid.n; i++)
    {
      const Wall *wall = wall_asked (&laid, i);

      g_ptr_array_add (all, improve_wall (wall, laid_block (&laid, wall), &how));
    }
  if (call->into)
    {
      g_autoptr (Project) project = improved (&laid, all);

      written = output_project (call->into, call->file, project);
    }
  if (written != STATUS_DONE)
    return written;
  (call->as_json ? write_all_json : write_all_text) (text, &laid, all);
  return output_verdict (verdict_of (all), output_text (call->output, call->file, text));
}
