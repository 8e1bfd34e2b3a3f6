/* plan-view-open.c - new openings, set in a wall where it is seen from above */
#include <glib/gi18n.h>

#include "app/plan-view-private.h"

static OpeningKind
kind_of (HbPlanTool tool)
{
  return tool == HB_PLAN_TOOL_DOOR   ? OPENING_DOOR
         : tool == HB_PLAN_TOOL_VOID ? OPENING_VOID
                                     : OPENING_WINDOW;
}

gboolean
_hb_plan_view_opens (HbPlanView *self)
{
  return self->tool == HB_PLAN_TOOL_WINDOW || self->tool == HB_PLAN_TOOL_DOOR
         || self->tool == HB_PLAN_TOOL_VOID;
}

static const Wall *
wall_under (HbPlanView *self, const Project *project, double x, double y)
{
  MarkRef ref;

  if (!_hb_plan_view_pick (self, x, y, &ref))
    return NULL;
  if (ref.kind == REF_OPENING)
    return project_wall_of_opening (project, (OpeningId){ ref.id });
  return ref.kind == REF_WALL ? project_wall (project, (WallId){ ref.id }) : NULL;
}

/* A place on the sheet, along a wall from its left end. */
static Length
along (HbPlanView *self, const Wall *wall, double sx, double sy)
{
  double x, y;

  view_to_wall (&self->view, sx, sy, &x, &y);
  return (Length) CLAMP (((gint64) tool_place_of (x) - wall->place.x) * runs_east (wall->place.runs)
                             + ((gint64) tool_place_of (y) - wall->place.y)
                                   * runs_north (wall->place.runs),
                         -LENGTH_MAX, LENGTH_MAX);
}

static void
name_opening (const Wall *wall, Opening *opening)
{
  g_free (opening->name);
  opening->name = tool_free_name (wall, opening->kind);
}

/* ---- of the usual size ---- */

static void
set_at (HbPlanView *self, const Wall *wall, Length x)
{
  const Project *project = _hb_plan_view_project (self);
  const Block *block = project_block (project, wall->block);
  const MarkRef ref = { .kind = REF_OPENING, .id = project->next };
  g_autoptr (GError) error = NULL;
  g_autoptr (Edit) edit = NULL;
  g_autofree char *label = NULL;
  Opening placed;

  if (!tool_place_opening (wall, block, kind_of (self->tool), x, &placed))
    {
      g_autofree char *text
          = g_strdup_printf (_ ("%s has no room for one more."), tool_wall_name (wall));

      _hb_plan_view_say (self, text);
      return;
    }
  name_opening (wall, &placed);
  label = g_strdup_printf (_ ("Add %s"), placed.name);
  edit = edit_add_opening (wall->id, &placed);
  opening_clear (&placed);
  if (!hb_document_apply (self->document, edit, label, &error))
    {
      g_signal_emit_by_name (self, "refused", error->message);
      return;
    }
  hb_plan_view_set_tool (self, HB_PLAN_TOOL_NONE);
  _hb_plan_view_choose (self, &ref);
  _hb_plan_view_focus_chosen (self);
}

void
_hb_plan_view_open_usual (HbPlanView *self)
{
  const Wall *wall = project_wall (_hb_plan_view_project (self), self->wall);

  if (wall && wall->place.given)
    set_at (self, wall, wall->length / 2);
}

void
_hb_plan_view_open_at (HbPlanView *self, double x, double y)
{
  const Wall *wall = wall_under (self, _hb_plan_view_project (self), x, y);

  if (wall)
    set_at (self, wall, along (self, wall, x, y));
  else
    _hb_plan_view_say (self, _ ("Click in a wall: an opening belongs to one."));
}

/* ---- drawn from jamb to jamb ---- */

/* As high as is usual. */
void
_hb_plan_view_pull_open (HbPlanView *self, double x, double y, const Grip *grip)
{
  const Project *project = self->pull.project;
  const Wall *wall = self->pull.ref.kind == REF_WALL
                         ? project_wall (project, (WallId){ self->pull.ref.id })
                         : NULL;
  const Block *block = wall ? project_block (project, wall->block) : NULL;
  const OpeningKind kind = kind_of (self->tool);
  g_autoptr (GError) error = NULL;
  g_autoptr (Edit) edit = NULL;
  g_autofree char *text = NULL;
  char width[LENGTH_TEXT_SIZE], at[LENGTH_TEXT_SIZE];
  Opening usual, drawn;
  gboolean is_drawn;

  if (!wall || !tool_place_opening (wall, block, kind, wall->length / 2, &usual))
    return;
  is_drawn = tool_draw_opening (wall, block, kind, along (self, wall, self->pull.x, self->pull.y),
                                usual.sill, along (self, wall, x, y), opening_head (&usual), grip,
                                &drawn);
  opening_clear (&usual);
  if (!is_drawn)
    return;
  name_opening (wall, &drawn);
  edit = edit_add_opening (wall->id, &drawn);
  text = g_strdup_printf (_ ("%s: %s mm wide, left jamb at %s"), tool_opening_name (&drawn),
                          length_text (drawn.width, width), length_text (drawn.x, at));
  _hb_plan_view_say (self,
                     hb_document_preview (self->document, edit, &error) ? text : error->message);
  opening_clear (&drawn);
}
