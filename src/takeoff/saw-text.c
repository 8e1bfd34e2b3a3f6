/* saw-text.c - the saw plan in words, translated */
#include "takeoff/saw-text.h"

#include <glib/gi18n-lib.h>

/* So many other pieces of a unit are named, the rest counted. */
#define MOST_NAMED 3

/* --- one piece --- */

static gboolean
is_full_height (const SawPlan *plan, const SawPart *part)
{
  return part->height == plan->height;
}

/* Which unit, and where in it. */
static void
append_place (GString *text, const SawPlan *plan, const SawPart *part)
{
  char length[LENGTH_TEXT_SIZE], height[LENGTH_TEXT_SIZE], x[LENGTH_TEXT_SIZE], z[LENGTH_TEXT_SIZE];
  gint32 number = saw_plan_unit (plan, (guint) part->unit)->number;

  length_text (part->length, length);
  length_text (part->height, height);
  length_text (part->x, x);
  length_text (part->z, z);
  if (is_full_height (plan, part) && part->length == plan->length)
    g_string_append_printf (text, _ ("From unit %d, whole but for the notch"), number);
  else if (is_full_height (plan, part) && part->x == 0)
    g_string_append_printf (text, _ ("From unit %d, sawn at %s mm"), number, length);
  else if (is_full_height (plan, part))
    g_string_append_printf (text, _ ("From unit %d, %s mm of it from %s mm on"), number, length, x);
  else if (part->length == plan->length && part->z == 0)
    g_string_append_printf (text, _ ("From unit %d, ripped to %s mm"), number, height);
  else if (part->length == plan->length)
    g_string_append_printf (text, _ ("From unit %d, a strip of %s mm ripped from %s mm up"), number,
                            height, z);
  else if (part->z == 0 && part->x == 0)
    g_string_append_printf (text, _ ("From unit %d, ripped to %s mm and sawn at %s mm"), number,
                            height, length);
  else if (part->x == 0)
    g_string_append_printf (text, _ ("From unit %d, %s × %s mm of it from %s mm up"), number,
                            length, height, z);
  else if (part->z == 0)
    g_string_append_printf (text, _ ("From unit %d, %s × %s mm of it from %s mm on"), number,
                            length, height, x);
  else
    g_string_append_printf (text, _ ("From unit %d, %s × %s mm of it from %s mm on and %s mm up"),
                            number, length, height, x, z);
}

/* "course 6, piece 1", and of which wall where that is another. */
static void
append_piece (GString *text, const Project *project, Layout *const *layouts, const SawPart *part,
              guint from_wall)
{
  const Piece *piece = layout_piece (layouts[part->wall], part->piece);
  const Wall *wall = project_wall_at (project, part->wall);

  if (part->wall == from_wall)
    g_string_append_printf (text, _ ("course %d, piece %d"), piece->course, piece->number);
  else
    g_string_append_printf (text, _ ("course %d, piece %d of “%s”"), piece->course, piece->number,
                            wall_called (wall));
}

/* The one other piece of the unit. */
static void
append_other (GString *text, const SawPlan *plan, const Project *project, Layout *const *layouts,
              const SawPart *other, guint from_wall)
{
  char length[LENGTH_TEXT_SIZE], height[LENGTH_TEXT_SIZE];

  if (is_full_height (plan, other))
    g_string_append_printf (text, _ ("; the other %s mm go to "),
                            length_text (other->length, length));
  else
    g_string_append_printf (text, _ ("; another %s × %s mm go to "),
                            length_text (other->length, length),
                            length_text (other->height, height));
  append_piece (text, project, layouts, other, from_wall);
}

static void
append_others (GString *text, const SawPlan *plan, const Project *project, Layout *const *layouts,
               const SawPart *part)
{
  const SawUnit *unit = saw_plan_unit (plan, (guint) part->unit);
  guint named = 0, left;

  for (guint i = 0; i < unit->n && named < MOST_NAMED; i++)
    {
      const SawPart *other = saw_unit_part (plan, unit, i);

      if (other == part)
        continue;
      if (unit->n == 2)
        append_other (text, plan, project, layouts, other, part->wall);
      else
        {
          g_string_append (text, named == 0 ? _ ("; it also gives ") : ", ");
          append_piece (text, project, layouts, other, part->wall);
        }
      named++;
    }
  left = unit->n - 1 - named;
  if (left > 0)
    g_string_append_printf (text, ngettext (" and %u more", " and %u more", left), left);
}

/* The greatest rest of a unit; NULL: none. */
static const SawRest *
greatest_rest (const SawPlan *plan, const SawUnit *unit)
{
  const SawRest *greatest = NULL;

  for (guint i = 0; i < unit->n_rests; i++)
    {
      const SawRest *rest = saw_unit_rest (plan, unit, i);

      if (greatest == NULL
          || (gint64) rest->length * rest->height > (gint64) greatest->length * greatest->height)
        greatest = rest;
    }
  return greatest;
}

static void
append_rest (GString *text, const SawPlan *plan, const SawUnit *unit)
{
  const SawRest *rest = greatest_rest (plan, unit);
  char length[LENGTH_TEXT_SIZE], height[LENGTH_TEXT_SIZE];

  if (rest == NULL)
    g_string_append (text, _ ("; nothing is left over"));
  else if (unit->n_rests == 1)
    g_string_append_printf (text, _ ("; %s × %s mm are left over"),
                            length_text (rest->length, length), length_text (rest->height, height));
  else
    g_string_append_printf (text, _ ("; %s × %s mm and less are left over"),
                            length_text (rest->length, length), length_text (rest->height, height));
}

char *
saw_text_piece (const SawPlan *plan, const Project *project, Layout *const *layouts, guint wall,
                guint piece)
{
  const SawPart *part = saw_plan_part (plan, wall, piece);
  GString *text;

  if (part == NULL)
    return NULL;
  text = g_string_new (NULL);
  append_place (text, plan, part);
  append_others (text, plan, project, layouts, part);
  append_rest (text, plan, saw_plan_unit (plan, (guint) part->unit));
  return g_string_free (text, FALSE);
}

/* --- one unit --- */

char *
saw_text_unit (const SawPlan *plan, const SawUnit *unit)
{
  GString *text = g_string_new (NULL);
  char length[LENGTH_TEXT_SIZE], height[LENGTH_TEXT_SIZE];

  for (guint i = 0; i < unit->n; i++)
    {
      const SawPart *part = saw_unit_part (plan, unit, i);

      g_string_append_printf (text, "%s%s", i > 0 ? " + " : "", length_text (part->length, length));
      if (!is_full_height (plan, part))
        g_string_append_printf (text, " × %s", length_text (part->height, height));
      if (part->notched)
        g_string_append (text, _ (" (notched)"));
    }
  for (guint i = 0; i < unit->n_rests; i++)
    {
      const SawRest *rest = saw_unit_rest (plan, unit, i);

      g_string_append_printf (text, i == 0 ? _ ("; left over %s") : " + %s",
                              length_text (rest->length, length));
      if (rest->height != plan->height)
        g_string_append_printf (text, " × %s", length_text (rest->height, height));
    }
  return g_string_free (text, FALSE);
}
