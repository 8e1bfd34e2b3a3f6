/* write.c - the text of a project: the same project, the same bytes */
#include "store/store.h"

#include <string.h>

#include "store/carried.h"
#include "store/element.h"

/* The start tag, its foreign attributes last, and the end of its line. Gives where the element's
 * content begins, for close_tag(). */
static gsize
open_tag (GString *out, int depth, const Element *element, const void *source,
          const Foreign *foreign)
{
  g_string_append_printf (out, "%*s<%s", depth * 2, "", element->name);
  if (depth == 0)
    g_string_append (out, " xmlns=\"" STORE_NAMESPACE "\"");
  for (guint i = 0; i < element->n_fields; i++)
    {
      const Field *field = &element->fields[i];
      g_autofree char *text = field_text (element, field, source);
      if (text == NULL)
        continue;
      g_string_append_printf (out, " %s=\"", field->name);
      carried_escape (out, text, strlen (text), TRUE);
      g_string_append_c (out, '"');
    }
  if (foreign->attributes != NULL)
    g_string_append_printf (out, " %s", foreign->attributes);
  g_string_append (out, ">\n");
  return out->len;
}

/* The foreign elements on a line of their own, then the end tag; or none when nothing is inside. */
static void
close_tag (GString *out, int depth, const Element *element, const Foreign *foreign, gsize content)
{
  if (foreign->elements != NULL)
    g_string_append_printf (out, "%*s%s\n", depth * 2 + 2, "", foreign->elements);
  if (out->len > content)
    {
      g_string_append_printf (out, "%*s</%s>\n", depth * 2, "", element->name);
      return;
    }
  g_string_truncate (out, content - strlen (">\n"));
  g_string_append (out, "/>\n");
}

/* An element with nothing of ours in it. */
static void
put (GString *out, int depth, const Element *element, const void *source, const Foreign *foreign)
{
  gsize content = open_tag (out, depth, element, source, foreign);
  close_tag (out, depth, element, foreign, content);
}

static gboolean
is_foreign (const Foreign *foreign)
{
  return foreign->attributes != NULL || foreign->elements != NULL;
}

static gboolean
asks_rules (const Laying *laying)
{
  for (guint i = 0; i < N_RULES; i++)
    if (laying->rules[i].keep != KEEP_OFF)
      return TRUE;
  return FALSE;
}

static void
put_rule (GString *out, RuleKind kind, const Rule *rule)
{
  guint gave = rule_row (kind)->value == RULE_LENGTH ? RULE_GAVE_LENGTH : RULE_GAVE_COUNT;
  RuleTag said = { kind, rule->keep, rule->has_value ? gave : 0, rule->value, rule->value };
  if (rule->keep != KEEP_OFF)
    put (out, 3, &element_rule, &said, &rule->foreign);
}

static void
put_laying (GString *out, const Laying *laying)
{
  if (!laying->element && laying->given == 0 && !is_foreign (&laying->foreign)
      && !asks_rules (laying))
    return;
  gsize content = open_tag (out, 2, &element_laying, laying, &laying->foreign);
  for (guint i = 0; i < N_RULES; i++)
    put_rule (out, (RuleKind) i, &laying->rules[i]);
  close_tag (out, 2, &element_laying, &laying->foreign, content);
}

static void
put_end (GString *out, Side side, const End *end)
{
  guint mask = end->has_return ? END_RETURN | END_THROUGH | END_TIES * end->ties.given : 0;
  Length up_to = end->has_return ? end->up_to : 0;
  EndTag said = { side, mask, end->ret, end->through, up_to, end->ties };
  if (end->given || end->has_return || is_foreign (&end->foreign))
    put (out, 2, &element_end, &said, &end->foreign);
}

/* What is not as it is when left out must be written, whether or not a file gave it. */
static guint
steel_fields_to_write (const Steel *steel)
{
  Steel plain = steel_default ();
  guint set = steel->set;
  set |= steel->bars != plain.bars ? STEEL_BARS : 0;
  set |= steel->diameter != plain.diameter ? STEEL_DIAMETER : 0;
  set |= steel->every != plain.every ? STEEL_EVERY : 0;
  set |= steel->under_sills != plain.under_sills ? STEEL_UNDER_SILLS : 0;
  set |= steel->over_heads != plain.over_heads ? STEEL_OVER_HEADS : 0;
  set |= steel->past != plain.past ? STEEL_PAST : 0;
  set |= steel->lap != plain.lap ? STEEL_LAP : 0;
  return set;
}

static void
put_steel (GString *out, const Steel *steel)
{
  Steel said = *steel;
  said.set = steel_fields_to_write (steel);
  if (steel->given)
    put (out, 2, &element_steel, &said, &steel->foreign);
}

static void
put_top_and_foot (GString *out, const Wall *wall)
{
  for (guint i = 0; i < wall->tops->len; i++)
    put (out, 2, &element_top, top_point (wall->tops, i), &top_point (wall->tops, i)->foreign);
  if (wall->cap.height != 0)
    put (out, 2, &element_cap, &wall->cap, &wall->cap.foreign);
  for (guint i = 0; i < wall->feet->len; i++)
    put (out, 2, &element_foot, foot_point (wall->feet, i), &foot_point (wall->feet, i)->foreign);
}

/* Those of all heights in one list, those of a strip in the other. */
static void
put_laid (GString *out, const LaidCourse *laid)
{
  g_autoptr (GArray) perpends = g_array_new (FALSE, FALSE, sizeof (Length));
  g_autoptr (GArray) at = g_array_new (FALSE, FALSE, sizeof (Length));
  LaidTag said = { laid->course, perpends,     at,        laid->given,
                   laid->over,   laid->bottom, laid->top, laid->top_right };
  for (guint i = 0; i < laid->perpends->len; i++)
    {
      const LaidPerpend *perpend = &g_array_index (laid->perpends, LaidPerpend, i);
      g_array_append_val (perpend->z == PERPEND_ALL ? perpends : at, perpend->x);
      if (perpend->z != PERPEND_ALL)
        g_array_append_val (at, perpend->z);
    }
  put (out, 3, &element_laid, &said, &laid->foreign);
}

static void
put_built (GString *out, const Built *built)
{
  gsize content = open_tag (out, 2, &element_built, built, &built->foreign);
  for (guint i = 0; i < built->laid->len; i++)
    put_laid (out, &g_array_index (built->laid, LaidCourse, i));
  close_tag (out, 2, &element_built, &built->foreign, content);
}

static void
put_tolerances (GString *out, const Project *project)
{
  for (guint i = 0; i < N_TOLERANCES; i++)
    {
      const Tolerance *tolerance = &project->tolerances[i];
      ToleranceTag said = { (ToleranceKind) i, tolerance->limit };
      if (tolerance->given)
        put (out, 1, &element_tolerance, &said, &tolerance->foreign);
    }
}

static void
put_wall (GString *out, const Project *project, const Wall *wall)
{
  const Block *block = project_block (project, wall->block);
  guint mask = wall->place.given ? PLACE_ALL : 0;
  WallTag said
      = { wall->key, wall->name, block->key, wall->length, wall->height, mask, wall->place };
  gsize content = open_tag (out, 1, &element_wall, &said, &wall->foreign);
  put_laying (out, &wall->laying);
  put_end (out, SIDE_LEFT, &wall->ends[SIDE_LEFT]);
  put_end (out, SIDE_RIGHT, &wall->ends[SIDE_RIGHT]);
  for (guint i = 0; i < wall->tees->len; i++)
    {
      const Tee *tee = wall_tee_at (wall, i);
      put (out, 2, &element_tee, tee, &tee->foreign);
    }
  for (guint i = 0; i < wall->movement_joints->len; i++)
    {
      const MovementJoint *joint = wall_movement_joint_at (wall, i);
      put (out, 2, &element_movement_joint, joint, &joint->foreign);
    }
  put_top_and_foot (out, wall);
  put_steel (out, &wall->steel);
  for (guint i = 0; i < wall->steel_rows->len; i++)
    {
      const SteelRow *row = &g_array_index (wall->steel_rows, SteelRow, i);
      put (out, 2, &element_steel_row, row, &row->foreign);
    }
  for (guint i = 0; i < wall->openings->len; i++)
    {
      const Opening *opening = wall_opening_at (wall, i);
      put (out, 2, &element_opening, opening, &opening->foreign);
    }
  for (guint i = 0; i < wall->pins->len; i++)
    {
      const Pin *pin = wall_pin_at (wall, i);
      put (out, 2, &element_pin, pin, &pin->foreign);
    }
  if (wall->built != NULL)
    put_built (out, wall->built);
  close_tag (out, 1, &element_wall, &wall->foreign, content);
}

/* One of a wall that is not there says nothing. */
static void
put_places (GString *out, const Project *project, const Reading *reading)
{
  for (guint i = 0; i < reading->places->len; i++)
    {
      const SurveyPlace *place = reading_place (reading, i);
      const Wall *wall = project_wall (project, place->wall);
      PlaceTag said = { wall != NULL ? wall->key : NULL, place->x };
      if (wall != NULL)
        put (out, 3, &element_place, &said, &place->foreign);
    }
}

static void
put_diagonal (GString *out, const Project *project, const Diagonal *diagonal)
{
  const Wall *along = project_wall (project, diagonal->along);
  const Wall *across = project_wall (project, diagonal->across);
  if (along == NULL || across == NULL)
    return;
  DiagonalTag said = { diagonal->name,  along->key,       across->key,     diagonal->given,
                       diagonal->first, diagonal->second, diagonal->length };
  put (out, 2, &element_diagonal, &said, &diagonal->foreign);
}

static void
put_survey (GString *out, const Project *project, const Survey *survey)
{
  gsize content = open_tag (out, 1, &element_survey, survey, &survey->foreign);
  for (guint i = 0; i < survey->readings->len; i++)
    {
      const Reading *reading = survey_reading (survey, i);
      gsize inside = open_tag (out, 2, &element_reading, reading, &reading->foreign);
      put_places (out, project, reading);
      close_tag (out, 2, &element_reading, &reading->foreign, inside);
    }
  for (guint i = 0; i < survey->diagonals->len; i++)
    put_diagonal (out, project, survey_diagonal (survey, i));
  close_tag (out, 1, &element_survey, &survey->foreign, content);
}

char *
store_text (const Project *project, gsize *n)
{
  GString *out = g_string_new ("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n");
  gsize content = open_tag (out, 0, &element_project, project, &project->foreign);
  for (guint i = 0; i < project->blocks->len; i++)
    {
      const Block *block = project_block_at (project, i);
      put (out, 1, &element_block, block, &block->foreign);
    }
  for (guint i = 0; i < project->walls->len; i++)
    put_wall (out, project, project_wall_at (project, i));
  put_tolerances (out, project);
  if (project->survey != NULL)
    put_survey (out, project, project->survey);
  if (project->rates.given != 0 || is_foreign (&project->rates_foreign))
    put (out, 1, &element_work, &project->rates, &project->rates_foreign);
  close_tag (out, 0, &element_project, &project->foreign, content);
  if (n != NULL)
    *n = out->len;
  return g_string_free (out, FALSE);
}
