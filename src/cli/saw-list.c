#include "cli/saw-list.h"

#include <glib/gi18n.h>

#include "cli/output.h"
#include "takeoff/saw-text.h"

static char *
piece_id (const Laid *laid, const SawPart *part)
{
  const Piece *piece = layout_piece (laid->layouts[part->wall], part->piece);

  return g_strdup_printf ("%s/%d/%d", project_wall_at (laid->project, part->wall)->key,
                          piece->course, piece->number);
}

/* --- text --- */

static void
append_head (GString *text, const Block *block, const SawPlan *plan)
{
  char length[LENGTH_TEXT_SIZE], height[LENGTH_TEXT_SIZE];
  g_autofree char *name = output_line (block->name);

  g_string_append_printf (text, "%s%s%s, %s × %s mm: ", block->key, *name ? "  " : "", name,
                          length_text (plan->length, length), length_text (plan->height, height));
  g_string_append_printf (text,
                          ngettext ("%u of %d unit is sawn, ", "%u of %d units are sawn, ",
                                    (gulong) saw_plan_to_order (plan)),
                          plan->units->len, saw_plan_to_order (plan));
  g_string_append_printf (
      text, ngettext ("into %u piece. ", "into %u pieces. ", (gulong) plan->parts->len),
      plan->parts->len);
  if (plan->at_least == saw_plan_to_order (plan))
    g_string_append (text, _ ("Proven: fewer cannot give these pieces.\n"));
  else
    g_string_append_printf (
        text, _ ("At least %d are needed; whether fewer than %d will do is not known.\n"),
        plan->at_least, saw_plan_to_order (plan));
}

static void
append_unit (GString *text, const Laid *laid, const SawPlan *plan, const SawUnit *unit)
{
  g_string_append_printf (text, "%12d:  ", unit->number);
  for (guint i = 0; i < unit->n; i++)
    {
      g_autofree char *id = piece_id (laid, saw_unit_part (plan, unit, i));

      g_string_append_printf (text, "%s%s", i > 0 ? " + " : "", id);
    }
  g_string_append_c (text, '\n');
}

static void
append_kind (GString *text, const Laid *laid, const SawPlan *plan, const SawKind *kind)
{
  const gint32 *units = &g_array_index (plan->alike, gint32, kind->first);
  g_autofree char *sawn = saw_text_unit (plan, saw_plan_unit (plan, (guint) units[0]));

  g_string_append_printf (text, "%6u × %s\n", kind->times, sawn);
  for (guint i = 0; i < kind->times; i++)
    append_unit (text, laid, plan, saw_plan_unit (plan, (guint) units[i]));
}

void
saw_list_text (GString *text, const Laid *laid, const Takeoff *takeoff)
{
  for (guint i = 0; i < takeoff->saws->len; i++)
    {
      const SawPlan *plan = g_ptr_array_index (takeoff->saws, i);

      if (plan->units->len == 0)
        continue;
      if (text->len > 0)
        g_string_append_c (text, '\n');
      append_head (text, project_block_at (laid->project, i), plan);
      for (guint k = 0; k < plan->kinds->len; k++)
        append_kind (text, laid, plan, &g_array_index (plan->kinds, SawKind, k));
    }
  if (text->len == 0)
    g_string_append (text, _ ("Nothing is sawn.\n"));
}

/* --- JSON --- */

static void
write_parts (Json *json, const Laid *laid, const SawPlan *plan, const SawUnit *unit)
{
  json_array (json, "pieces");
  for (guint i = 0; i < unit->n; i++)
    {
      const SawPart *part = saw_unit_part (plan, unit, i);
      g_autofree char *id = piece_id (laid, part);

      json_object (json, NULL);
      json_string (json, "id", id);
      json_length (json, "from", part->x);
      json_length (json, "up", part->z);
      json_length (json, "length", part->length);
      json_length (json, "height", part->height);
      json_object_end (json);
    }
  json_array_end (json);
}

static void
write_cuts (Json *json, const SawPlan *plan, const SawUnit *unit)
{
  json_array (json, "cuts");
  for (guint i = 0; i < unit->n_cuts; i++)
    {
      const SawCut *cut = saw_unit_cut (plan, unit, i);

      json_object (json, NULL);
      json_length (json, cut->along ? "along" : "across", cut->at);
      json_length (json, "from", cut->from);
      json_length (json, "to", cut->to);
      json_object_end (json);
    }
  json_array_end (json);
}

static void
write_rests (Json *json, const SawPlan *plan, const SawUnit *unit)
{
  json_array (json, "left_over");
  for (guint i = 0; i < unit->n_rests; i++)
    {
      const SawRest *rest = saw_unit_rest (plan, unit, i);

      json_object (json, NULL);
      json_length (json, "from", rest->x);
      json_length (json, "up", rest->z);
      json_length (json, "length", rest->length);
      json_length (json, "height", rest->height);
      json_object_end (json);
    }
  json_array_end (json);
}

static void
write_plan (Json *json, const Laid *laid, const Block *block, const SawPlan *plan)
{
  json_object (json, NULL);
  json_string (json, "block", block->key);
  json_length (json, "kerf", plan->kerf);
  json_int (json, "whole", plan->n_whole);
  json_int (json, "sawn", plan->units->len);
  json_int (json, "to_order", saw_plan_to_order (plan));
  json_int (json, "to_order_at_least", plan->at_least);
  json_bool (json, "proven", plan->at_least == saw_plan_to_order (plan));
  json_array (json, "units");
  for (guint i = 0; i < plan->units->len; i++)
    {
      const SawUnit *unit = saw_plan_unit (plan, i);

      json_object (json, NULL);
      json_int (json, "unit", unit->number);
      json_int (json, "alike", unit->kind + 1);
      write_parts (json, laid, plan, unit);
      write_cuts (json, plan, unit);
      write_rests (json, plan, unit);
      json_object_end (json);
    }
  json_array_end (json);
  json_object_end (json);
}

void
saw_list_json (Json *json, const Laid *laid, const Takeoff *takeoff)
{
  json_array (json, "saw");
  for (guint i = 0; i < takeoff->saws->len; i++)
    write_plan (json, laid, project_block_at (laid->project, i),
                g_ptr_array_index (takeoff->saws, i));
  json_array_end (json);
}

void
saw_piece_json (Json *json, const Block *block, const SawPlan *plan, guint wall, guint piece)
{
  const SawPart *part = saw_plan_part (plan, wall, piece);

  if (part == NULL)
    return;
  json_object (json, "unit");
  json_string (json, "block", block->key);
  json_int (json, "unit", saw_plan_unit (plan, (guint) part->unit)->number);
  json_length (json, "from", part->x);
  json_length (json, "up", part->z);
  json_object_end (json);
}
