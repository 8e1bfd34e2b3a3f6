/* plan-view-place.c - a wall that stands nowhere is given a place: it follows the hand until set */
#include <glib/gi18n.h>

#include "app/plan-view-private.h"
#include "app/tool.h"
#include "model/plan-draw.h"

#define NEAR 9.0 /* px, of a face that the hand means */
#define STEP LENGTH_MM (10)
#define STEP_SHIFT LENGTH_MM (100)

/* ---- where it is ---- */

static Length
thickness_of (HbPlanView *self)
{
  const Project *project = _hb_plan_view_project (self);
  const Wall *wall = project_wall (project, self->wall);

  return project_block (project, wall->block)->thickness;
}

static void
say (HbPlanView *self)
{
  const Wall *wall = project_wall (_hb_plan_view_project (self), self->wall);
  char x[LENGTH_TEXT_SIZE], y[LENGTH_TEXT_SIZE];
  g_autofree char *text = g_strdup_printf (
      _ ("%s: from %s east, %s north, to the %s. Click or Enter sets it, R turns it, arrow keys "
         "move it; Escape cancels."),
      tool_wall_name (wall), length_text (wall->place.x, x), length_text (wall->place.y, y),
      runs_word (wall->place.runs));

  _hb_plan_view_say (self, text);
}

/* Shows it there, as it would be: what it meets with it. */
static void
show (HbPlanView *self)
{
  const Wall *wall = project_wall (_hb_plan_view_project (self), self->wall);
  g_autoptr (GError) error = NULL;
  g_autoptr (Wall) placed = NULL;
  g_autoptr (Edit) edit = NULL;

  if (!wall)
    return;
  placed = wall_copy (wall);
  placed->place = self->place;
  edit = edit_set_wall (placed);
  if (hb_document_preview (self->document, edit, &error))
    say (self);
  else
    _hb_plan_view_say (self, error->message);
}

/* The left end of its outer face where its footprint's lower left corner is to be. */
static void
stand_at (HbPlanView *self, gint64 x, gint64 y)
{
  const Wall *wall = project_wall (_hb_plan_view_project (self), self->wall);
  g_autoptr (Wall) placed = wall_copy (wall);
  PlanBox box;

  placed->place = self->place;
  box = plan_box (placed, thickness_of (self));
  self->place.x += (Length) CLAMP (x - box.x0, -LENGTH_MAX, LENGTH_MAX);
  self->place.y += (Length) CLAMP (y - box.y0, -LENGTH_MAX, LENGTH_MAX);
}

/* One of two edges that are `apart`, the lower one at `at`, on a face that is near. */
static gint64
snap (HbPlanView *self, gboolean north, gint64 at, gint64 apart)
{
  const Grip grip = tool_grip (self->view.scale);
  const Length reach = length_from_mm (NEAR / self->view.scale);
  const Project *project = _hb_plan_view_project (self);
  const gint64 low = plan_snap (project, self->wall, north, at, reach, 1);
  const gint64 high = plan_snap (project, self->wall, north, at + apart, reach, 1) - apart;

  if (low == at && high == at)
    return plan_snap (project, self->wall, north, at, 0, grip.step);
  return low == at || (high != at && ABS (high - at) < ABS (low - at)) ? high : low;
}

void
_hb_plan_view_place_to (HbPlanView *self, double sx, double sy)
{
  const Wall *wall = project_wall (_hb_plan_view_project (self), self->wall);
  g_autoptr (Wall) placed = NULL;
  double x, y;
  PlanBox box;
  gint64 wide, tall;

  if (!wall)
    return;
  placed = wall_copy (wall);
  placed->place = self->place;
  box = plan_box (placed, thickness_of (self));
  wide = box.x1 - box.x0;
  tall = box.y1 - box.y0;
  view_to_wall (&self->view, sx, sy, &x, &y);
  stand_at (self, snap (self, FALSE, tool_place_of (x) - wide / 2, wide),
            snap (self, TRUE, tool_place_of (y) - tall / 2, tall));
  show (self);
}

/* ---- begun, turned, set ---- */

gboolean
_hb_plan_view_place_begin (HbPlanView *self)
{
  const Project *project = _hb_plan_view_project (self);
  const Wall *wall = project_wall (project, self->wall);

  if (!wall || wall->place.given)
    return FALSE;
  self->place = (PlanPlace){ TRUE, (Length) plan_free_place (project), 0, RUNS_EAST };
  show (self);
  hb_plan_view_fit (self);
  return TRUE;
}

void
_hb_plan_view_place_keep (HbPlanView *self)
{
  const Wall *wall = project_wall (_hb_plan_view_project (self), self->wall);
  const MarkRef ref = { .kind = REF_WALL, .id = self->wall.n };
  g_autofree char *label
      = g_strdup_printf (_ ("Stand %s in plan"), wall ? tool_wall_name (wall) : "");

  if (!hb_document_has_preview (self->document))
    return;
  hb_document_keep_preview (self->document, label);
  hb_plan_view_set_tool (self, HB_PLAN_TOOL_NONE);
  hb_plan_view_fit (self);
  _hb_plan_view_choose (self, &ref);
  _hb_plan_view_focus_chosen (self);
}

/* A quarter to the left about its middle. */
static void
turn (HbPlanView *self)
{
  const Wall *wall = project_wall (_hb_plan_view_project (self), self->wall);
  g_autoptr (Wall) placed = wall_copy (wall);
  PlanBox before, after;

  placed->place = self->place;
  before = plan_box (placed, thickness_of (self));
  self->place.runs = placed->place.runs = runs_turned (self->place.runs, FALSE);
  after = plan_box (placed, thickness_of (self));
  stand_at (self, (before.x0 + before.x1 - (after.x1 - after.x0)) / 2,
            (before.y0 + before.y1 - (after.y1 - after.y0)) / 2);
  show (self);
}

static gboolean
move (HbPlanView *self, int east, int north, GdkModifierType state)
{
  const Length by = state & GDK_ALT_MASK     ? LENGTH_MM (1)
                    : state & GDK_SHIFT_MASK ? STEP_SHIFT
                                             : STEP;

  self->place.x += by * east;
  self->place.y += by * north;
  show (self);
  return GDK_EVENT_STOP;
}

gboolean
_hb_plan_view_place_key (HbPlanView *self, guint key, GdkModifierType state)
{
  switch (key)
    {
    case GDK_KEY_Left:
      return move (self, -1, 0, state);
    case GDK_KEY_Right:
      return move (self, 1, 0, state);
    case GDK_KEY_Up:
      return move (self, 0, 1, state);
    case GDK_KEY_Down:
      return move (self, 0, -1, state);
    case GDK_KEY_r:
    case GDK_KEY_R:
      turn (self);
      return GDK_EVENT_STOP;
    case GDK_KEY_Return:
    case GDK_KEY_KP_Enter:
      _hb_plan_view_place_keep (self);
      return GDK_EVENT_STOP;
    default:
      return GDK_EVENT_PROPAGATE;
    }
}
