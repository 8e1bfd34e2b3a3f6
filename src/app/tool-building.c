#include "app/tool-building.h"

#include <glib/gi18n.h>

#include "app/tool.h"
#include "model/plan-draw.h"

static gboolean
has_name (const Project *project, const char *name)
{
  for (guint i = 0; i < project->walls->len; i++)
    if (g_str_equal (project_wall_at (project, i)->name, name))
      return TRUE;
  return FALSE;
}

static void
name_walls (const Project *project, const GPtrArray *walls, gboolean round)
{
  const char *const sides[] = { _ ("Front"), _ ("Right"), _ ("Back"), _ ("Left") };
  gboolean named = round && walls->len == G_N_ELEMENTS (sides);

  for (guint i = 0; named && i < G_N_ELEMENTS (sides); i++)
    named = !has_name (project, sides[i]);
  for (guint i = 0; i < walls->len; i++)
    {
      Wall *wall = g_ptr_array_index (walls, i);

      g_free (wall->name);
      wall->name = named ? g_strdup (sides[i])
                         : g_strdup_printf (_ ("Wall %u"), project->walls->len + i + 1);
    }
}

/* How far to the west of its beginning an outline reaches. */
static Length
reach_west (const GPtrArray *walls, Length thickness)
{
  gint64 west = 0;

  for (guint i = 0; i < walls->len; i++)
    west = MIN (west, plan_box (g_ptr_array_index (walls, i), thickness).x0);
  return (Length) -west;
}

static gboolean
stand_free (const Project *next, GError **error)
{
  g_autoptr (GArray) meetings = plan_meetings (next);

  for (guint i = 0; i < meetings->len; i++)
    {
      const Meeting *meeting = &g_array_index (meetings, Meeting, i);

      if (meeting->kind != MEET_WRONG)
        continue;
      g_set_error (error, MODEL_ERROR, MODEL_ERROR_REFUSED,
                   _ ("%s and %s stand in each other’s way: there is no room for their thickness."),
                   tool_wall_name (project_wall_at (next, meeting->wall[0])),
                   tool_wall_name (project_wall_at (next, meeting->wall[1])));
      return FALSE;
    }
  return TRUE;
}

/* What was wrong before is no fault of the new building. */
static gboolean
had_wrong (const Project *project)
{
  g_autoptr (GArray) meetings = plan_meetings (project);

  for (guint i = 0; i < meetings->len; i++)
    if (g_array_index (meetings, Meeting, i).kind == MEET_WRONG)
      return TRUE;
  return FALSE;
}

/* The walls in the project, of that block; whatever they stand in the way of refuses them. */
static Edit *
add_walls (const Project *project, const GPtrArray *walls, gboolean round, const Block *block,
           WallId *first, GError **error)
{
  g_autoptr (Edit) edit = NULL;
  g_autoptr (Project) next = NULL;

  name_walls (project, walls, round);
  for (guint i = 0; i < walls->len; i++)
    ((Wall *) g_ptr_array_index (walls, i))->block = block->id;
  edit = edit_walls (walls);
  next = project_edit (project, edit, error);
  if (!next || (!had_wrong (project) && !stand_free (next, error)))
    return NULL;
  *first = project_wall_at (next, project->walls->len)->id;
  return g_steal_pointer (&edit);
}

Edit *
tool_building (const Project *project, const GArray *sides, const Block *block, Length height,
               WallId *first, GError **error)
{
  const Length place = (Length) plan_free_place (project);
  g_autoptr (GPtrArray) walls = outline_walls (sides, block->thickness, height, 0, 0);
  const Length shift = place > 0 ? place + reach_west (walls, block->thickness) : 0;

  for (guint i = 0; i < walls->len; i++)
    ((Wall *) g_ptr_array_index (walls, i))->place.x += shift;
  return add_walls (project, walls, TRUE, block, first, error);
}

Edit *
tool_building_at (const Project *project, const GArray *sides, const Block *block, Length height,
                  Length x, Length y, WallId *first, GError **error)
{
  g_autoptr (GPtrArray) walls = outline_walls (sides, block->thickness, height, x, y);

  return add_walls (project, walls, TRUE, block, first, error);
}

Edit *
tool_walls (const Project *project, const GArray *trace, const Block *block, Length height,
            WallId *first, GError **error)
{
  g_autoptr (GPtrArray) walls = trace_walls (trace, block->thickness, height);

  for (guint i = 0; i < walls->len; i++)
    plan_reach (project, (WallId){ 0 }, g_ptr_array_index (walls, i), block->thickness);
  return add_walls (project, walls, FALSE, block, first, error);
}

char *
tool_outline_text (const GArray *sides)
{
  double x = 0, area = 0, round = 0;
  Runs runs = RUNS_EAST;

  /* Green's theorem: upright sides alone make up the area. */
  for (guint i = 0; i < sides->len; i++)
    {
      const OutlineSide *side = &g_array_index (sides, OutlineSide, i);
      const double length = length_to_mm (side->length) / 1000;

      x += length * runs_east (runs);
      area += x * length * runs_north (runs);
      round += length;
      runs = runs_turned (runs, side->right);
    }
  return g_strdup_printf (_ ("%u walls, %.4g m round, %.4g m² outside"), sides->len, round, area);
}
