/* plan-view-pull.c - the pointer on the plan: picks, pulls, parts, pans */
#include <glib/gi18n.h>
#include <math.h>

#include "app/plan-view-private.h"
#include "app/tool.h"
#include "model/plan-edit.h"
#include "model/plan-shift.h"

/* A press that moves less is a click, px. */
#define CLICK 4.0
/* A partition is drawn by more than this, px. */
#define DRAWN_LEAST 12.0

/* ---- pulls ---- */

void
_hb_plan_view_pull_clear (HbPlanView *self)
{
  g_clear_pointer (&self->pull.project, project_unref);
  self->pull = (PlanPull){ 0 };
}

gboolean
_hb_plan_view_pull_cancel (HbPlanView *self)
{
  const PlanPullKind kind = self->pull.kind;

  if (kind == PLAN_PULL_NONE)
    return FALSE;
  _hb_plan_view_pull_clear (self);
  if (kind != PLAN_PULL_PAN)
    {
      hb_document_drop_preview (self->document);
      _hb_plan_view_say (self, "");
    }
  if (self->fitted)
    hb_plan_view_fit (self);
  return TRUE;
}

/* A refused place shows the last good one; the hand goes on. */
static gboolean
preview (HbPlanView *self, Edit *edit, GError *why)
{
  g_autoptr (Edit) owned = edit;
  g_autoptr (GError) error = why;

  if (owned && hb_document_preview (self->document, owned, &error))
    return TRUE;
  if (error)
    _hb_plan_view_say (self, error->message);
  return FALSE;
}

/* What the pointer went since the pull began: to the east and to the north. */
static void
pulled_by (HbPlanView *self, double x, double y, Length *east, Length *north)
{
  const double scale = self->pull.view.scale;

  *east = length_from_mm (CLAMP ((x - self->pull.x) / scale, -500000, 500000));
  *north = length_from_mm (CLAMP (-(y - self->pull.y) / scale, -500000, 500000));
}

/* Of a way on the plan, how much lies along the wall, and how much to the side of its outer face.
 */
static void
on_wall (const Wall *wall, Length east, Length north, Length *along, Length *out)
{
  static const int e[] = { 1, 0, -1, 0 }, n[] = { 0, 1, 0, -1 };

  *along = east * e[wall->place.runs] + north * n[wall->place.runs];
  *out = east * n[wall->place.runs] - north * e[wall->place.runs];
}

static void
pull_opening (HbPlanView *self, Length east, Length north, const Grip *grip)
{
  const OpeningId id = { self->pull.ref.id };
  const Wall *wall = project_wall_of_opening (self->pull.project, id);
  char x[LENGTH_TEXT_SIZE], w[LENGTH_TEXT_SIZE];
  g_autofree char *text = NULL;
  Length along, out;
  Opening pulled;

  if (!wall)
    return;
  on_wall (wall, east, north, &along, &out);
  pulled
      = tool_pull_opening (wall, project_block (self->pull.project, wall->block),
                           wall_opening (wall, id), (RefPart) self->pull.ref.part, along, 0, grip);
  _hb_plan_view_rest (self, &pulled, grip);
  text = g_strdup_printf (_ ("%s: %s mm wide, left jamb at %s"), tool_opening_name (&pulled),
                          length_text (pulled.width, w), length_text (pulled.x, x));
  if (preview (self, edit_set_opening (&pulled), NULL))
    _hb_plan_view_say (self, text);
  opening_clear (&pulled);
}

/* Where it is now: the room on both sides of a partition, or how far it went. */
static void
say_pushed (HbPlanView *self, WallId id, Length by)
{
  const Project *project = _hb_plan_view_project (self);
  const Wall *wall = project_wall (project, id);
  char a[LENGTH_TEXT_SIZE], b[LENGTH_TEXT_SIZE];
  g_autofree char *text = NULL;
  Length clear[2];
  WallId other[2];

  if (plan_room (project, id, clear, other) && other[0].n && other[1].n)
    text = g_strdup_printf (
        _ ("%s: %s mm to %s, %s mm to %s"), tool_wall_name (wall), length_text (clear[1], a),
        tool_wall_name (project_wall (project, other[1])), length_text (clear[0], b),
        tool_wall_name (project_wall (project, other[0])));
  else
    text = g_strdup_printf (by < 0 ? _ ("%s: %s mm inwards") : _ ("%s: %s mm outwards"),
                            tool_wall_name (wall), length_text (ABS (by), a));
  _hb_plan_view_say (self, text);
}

static void
pull_wall (HbPlanView *self, Length east, Length north, const Grip *grip)
{
  const WallId id = { self->pull.ref.id };
  const Wall *wall = project_wall (self->pull.project, id);
  GError *error = NULL;
  Length along, out;
  Edit *edit;

  if (!wall)
    return;
  on_wall (wall, east, north, &along, &out);
  out = out / grip->step * grip->step;
  edit = plan_push (self->pull.project, id, out, &error);
  if (preview (self, edit, error))
    say_pushed (self, id, out);
}

/* The wing as one, across the wall; a whole building anywhere. */
static void
pull_group (HbPlanView *self, Length east, Length north, const Grip *grip)
{
  const WallId id = { self->pull.ref.id };
  const Wall *wall = project_wall (self->pull.project, id);
  GError *error = NULL;
  g_autofree char *text = NULL;
  char a[LENGTH_TEXT_SIZE], b[LENGTH_TEXT_SIZE];
  Length along, out;
  gboolean whole;
  Edit *edit;

  if (!wall)
    return;
  g_array_unref (plan_wing (self->pull.project, id, &whole));
  east = east / grip->step * grip->step;
  north = north / grip->step * grip->step;
  on_wall (wall, east, north, &along, &out);
  edit = whole ? plan_move_building (self->pull.project, id, east, north, &error)
               : plan_shift_wing (self->pull.project, id, out, &error);
  if (!preview (self, edit, error))
    return;
  text = whole ? g_strdup_printf (_ ("The whole building: %s mm east, %s mm north"),
                                  length_text (east, a), length_text (north, b))
               : g_strdup_printf (_ ("The wing of %s: %s mm"), tool_wall_name (wall),
                                  length_text (out, a));
  _hb_plan_view_say (self, text);
}

static void
name_wall (const Project *project, Wall *wall)
{
  g_free (wall->name);
  wall->name = g_strdup_printf (_ ("Wall %u"), project->walls->len + 1);
}

/* The hand's way says which way it runs. */
static void
pull_part (HbPlanView *self, double x, double y)
{
  const Project *project = self->pull.project;
  const Wall *chosen = project_wall (project, self->wall);
  const Block *block
      = chosen ? project_block (project, chosen->block) : project_block_at (project, 0);
  const gboolean north = fabs (y - self->pull.y) > fabs (x - self->pull.x);
  const Grip grip = tool_grip (self->pull.view.scale);
  double at_x, at_y;
  gint64 px, py;
  GError *error = NULL;
  g_autoptr (Wall) wall = NULL;
  const WallId id = { project->next };

  view_to_wall (&self->pull.view, self->pull.x, self->pull.y, &at_x, &at_y);
  px = tool_place_of (at_x) / grip.step * grip.step;
  py = tool_place_of (at_y) / grip.step * grip.step;
  wall = plan_partition (project, north ? RUNS_NORTH : RUNS_EAST, px, py, block, &error);
  if (wall)
    name_wall (project, wall);
  if (preview (self, wall ? edit_add_wall (wall) : NULL, error))
    say_pushed (self, id, 0);
}

void
_hb_plan_view_part_usual (HbPlanView *self)
{
  const Project *project = _hb_plan_view_project (self);
  const Wall *chosen = project_wall (project, self->wall);
  const MarkRef drawn = { .kind = REF_WALL, .id = project->next };
  g_autoptr (GError) error = NULL;
  g_autoptr (Wall) wall = NULL;
  g_autoptr (Edit) edit = NULL;

  if (!chosen)
    return;
  wall = plan_partition_from (project, chosen->id, project_block (project, chosen->block), &error);
  if (wall)
    {
      name_wall (project, wall);
      edit = edit_add_wall (wall);
    }
  if (!edit || !hb_document_apply (self->document, edit, _ ("Draw a partition"), &error))
    {
      g_signal_emit_by_name (self, "refused", error->message);
      return;
    }
  hb_plan_view_set_tool (self, HB_PLAN_TOOL_NONE);
  _hb_plan_view_choose (self, &drawn);
  _hb_plan_view_focus_chosen (self);
}

static Grip
grip_of (HbPlanView *self, GdkModifierType state)
{
  Grip grip = tool_grip (self->pull.view.scale);

  if (state & GDK_ALT_MASK)
    grip = (Grip){ LENGTH_MM (1), 0 };
  return grip;
}

static void
pull_on (HbPlanView *self, double x, double y, GdkModifierType state)
{
  const Grip grip = grip_of (self, state);
  View view = self->pull.view;
  Length east, north;

  pulled_by (self, x, y, &east, &north);
  switch (self->pull.kind)
    {
    case PLAN_PULL_PAN:
      view.ox += round (x - self->pull.x);
      view.oy += round (y - self->pull.y);
      _hb_plan_view_set_view (self, &view, FALSE);
      break;
    case PLAN_PULL_OPENING:
      pull_opening (self, east, north, &grip);
      break;
    case PLAN_PULL_WALL:
      if (state & GDK_SHIFT_MASK)
        pull_group (self, east, north, &grip);
      else
        pull_wall (self, east, north, &grip);
      break;
    case PLAN_PULL_PART:
      pull_part (self, x, y);
      break;
    case PLAN_PULL_DRAW:
      _hb_plan_view_draw_to (self, x, y);
      break;
    case PLAN_PULL_OPEN:
      _hb_plan_view_pull_open (self, x, y, &grip);
      break;
    case PLAN_PULL_NONE:
    default:
      break;
    }
}

/* ---- where a pull begins and ends ---- */

static void
begin (HbPlanView *self, PlanPullKind kind, double x, double y, const MarkRef *ref)
{
  self->pull = (PlanPull){ .kind = kind, .ref = *ref, .view = self->view, .x = x, .y = y };
  self->pull.project = project_ref (_hb_plan_view_project (self));
}

static PlanPullKind
kind_of (const MarkRef *ref)
{
  return ref->kind == REF_OPENING ? PLAN_PULL_OPENING
         : ref->kind == REF_WALL  ? PLAN_PULL_WALL
                                  : PLAN_PULL_NONE;
}

static void
pull_begin_cb (HbPlanView *self, double x, double y, GtkGesture *gesture)
{
  const guint button = gtk_gesture_single_get_current_button (GTK_GESTURE_SINGLE (gesture));
  MarkRef ref = { .kind = REF_NONE };

  _hb_plan_view_end_nudge (self);
  _hb_plan_view_stop_typing (self);
  _hb_plan_view_pull_clear (self);
  self->pressed = ref;
  gtk_window_set_focus_visible (GTK_WINDOW (gtk_widget_get_root (GTK_WIDGET (self))), FALSE);
  if (button == GDK_BUTTON_MIDDLE || self->space_held)
    begin (self, PLAN_PULL_PAN, x, y, &ref);
  else if (button != GDK_BUTTON_PRIMARY)
    gtk_gesture_set_state (gesture, GTK_EVENT_SEQUENCE_DENIED);
  else if (_hb_plan_view_press_strip (self, x, y))
    ;
  else if (self->tool == HB_PLAN_TOOL_PART)
    begin (self, PLAN_PULL_PART, x, y, &ref);
  else if (self->tool == HB_PLAN_TOOL_PLACE)
    _hb_plan_view_place_keep (self);
  else if (_hb_plan_view_draws (self))
    {
      begin (self, PLAN_PULL_DRAW, x, y, &ref);
      _hb_plan_view_draw_press (self, x, y);
    }
  else if (_hb_plan_view_opens (self))
    {
      _hb_plan_view_pick (self, x, y, &ref);
      begin (self, PLAN_PULL_OPEN, x, y, &ref);
    }
  else if (_hb_plan_view_pick (self, x, y, &ref) && ref.kind == REF_DIMENSION)
    self->pressed = ref;
  else if (ref.kind != REF_NONE)
    {
      _hb_plan_view_choose (self, &ref);
      if (kind_of (&ref) != PLAN_PULL_NONE)
        begin (self, kind_of (&ref), x, y, &ref);
    }
  else
    _hb_plan_view_choose (self, &ref);
  _hb_plan_view_focus_chosen (self);
  _hb_plan_view_update_cursor (self);
}

static void
pull_update_cb (HbPlanView *self, double dx, double dy, GtkGesture *gesture)
{
  const GdkModifierType state
      = gtk_event_controller_get_current_event_state (GTK_EVENT_CONTROLLER (gesture));
  const double least = self->pull.kind == PLAN_PULL_PART ? DRAWN_LEAST : CLICK;

  if (self->pull.kind == PLAN_PULL_NONE
      || (!self->pull.under_way && fabs (dx) < least && fabs (dy) < least))
    return;
  self->pull.under_way = TRUE;
  pull_on (self, self->pull.x + dx, self->pull.y + dy, state);
}

static char *
pull_label (HbPlanView *self)
{
  const Project *project = _hb_plan_view_project (self);
  const Wall *wall;

  if (self->pull.kind == PLAN_PULL_PART)
    return g_strdup (_ ("Draw a partition"));
  if (self->pull.kind == PLAN_PULL_OPEN)
    return g_strdup (_ ("Add an opening"));
  if (self->pull.kind == PLAN_PULL_OPENING)
    {
      const OpeningId id = { self->pull.ref.id };

      wall = project_wall_of_opening (project, id);
      return g_strdup_printf (_ ("Move %s"),
                              wall ? tool_opening_name (wall_opening (wall, id)) : "");
    }
  wall = project_wall (project, (WallId){ self->pull.ref.id });
  return g_strdup_printf (_ ("Move %s"), wall ? tool_wall_name (wall) : "");
}

static void
keep (HbPlanView *self)
{
  g_autofree char *label = pull_label (self);
  const PlanPullKind kind = self->pull.kind;
  const MarkRef drawn = { .kind = REF_WALL, .id = self->pull.project->next };
  const MarkRef opened = { .kind = REF_OPENING, .id = self->pull.project->next };
  const gboolean has = hb_document_has_preview (self->document);

  _hb_plan_view_pull_clear (self);
  hb_document_keep_preview (self->document, label);
  if ((kind == PLAN_PULL_PART || kind == PLAN_PULL_OPEN) && has)
    {
      hb_plan_view_set_tool (self, HB_PLAN_TOOL_NONE);
      _hb_plan_view_choose (self, kind == PLAN_PULL_PART ? &drawn : &opened);
    }
  if (self->fitted)
    hb_plan_view_fit (self);
  _hb_plan_view_focus_chosen (self);
}

static void
draw_end (HbPlanView *self, double dx, double dy)
{
  const double x = self->pull.x + dx, y = self->pull.y + dy;
  const gboolean moved = self->pull.under_way;

  _hb_plan_view_pull_clear (self);
  _hb_plan_view_draw_release (self, x, y, moved);
}

static void
pull_end_cb (HbPlanView *self, double dx, double dy, GtkGesture *gesture)
{
  double x = 0, y = 0;

  if (self->pressed.kind == REF_DIMENSION && fabs (dx) < CLICK && fabs (dy) < CLICK)
    {
      gtk_gesture_drag_get_start_point (GTK_GESTURE_DRAG (gesture), &x, &y);
      _hb_plan_view_type (self, &self->pressed, x, y);
    }
  else if (self->pull.kind == PLAN_PULL_DRAW)
    draw_end (self, dx, dy);
  else if (self->pull.kind == PLAN_PULL_OPEN && !self->pull.under_way)
    {
      x = self->pull.x;
      y = self->pull.y;
      _hb_plan_view_pull_clear (self);
      _hb_plan_view_open_at (self, x, y);
    }
  else if (self->pull.kind != PLAN_PULL_NONE && self->pull.kind != PLAN_PULL_PAN
           && self->pull.under_way)
    keep (self);
  else
    _hb_plan_view_pull_clear (self);
  _hb_plan_view_update_cursor (self);
}

static void
pull_cancel_cb (HbPlanView *self)
{
  _hb_plan_view_pull_cancel (self);
}

/* Twice on a wall or an opening shows its elevation. */
static void
pressed_cb (HbPlanView *self, int presses, double x, double y)
{
  MarkRef ref;

  if (presses == 2 && self->tool == HB_PLAN_TOOL_NONE && _hb_plan_view_pick (self, x, y, &ref)
      && kind_of (&ref) != PLAN_PULL_NONE)
    {
      _hb_plan_view_pull_cancel (self);
      g_signal_emit_by_name (self, "open");
    }
}

/* ---- the pointer that pulls nothing ---- */

static const char *
cursor_of (HbPlanView *self, const MarkRef *ref)
{
  const Project *project = _hb_plan_view_project (self);
  const Wall *wall = NULL;

  if (ref->kind == REF_MEETING)
    return "pointer";
  if (ref->kind == REF_DIMENSION)
    return "text";
  if (ref->kind == REF_WALL)
    wall = project_wall (project, (WallId){ ref->id });
  if (ref->kind == REF_OPENING)
    wall = project_wall_of_opening (project, (OpeningId){ ref->id });
  if (!wall)
    return NULL;
  if (ref->kind == REF_OPENING && ref->part == PART_BODY)
    return "grab";
  return (wall->place.runs == RUNS_EAST || wall->place.runs == RUNS_WEST) == (ref->kind == REF_WALL)
             ? "ns-resize"
             : "ew-resize";
}

void
_hb_plan_view_update_cursor (HbPlanView *self)
{
  const char *name = NULL;
  MarkRef ref;

  if (self->pull.kind == PLAN_PULL_PAN)
    name = "grabbing";
  else if (self->space_held)
    name = "grab";
  else if (self->tool == HB_PLAN_TOOL_PLACE)
    name = "grabbing";
  else if (self->tool != HB_PLAN_TOOL_NONE)
    name = "crosshair";
  else if (self->document && self->pull.kind == PLAN_PULL_NONE
           && _hb_plan_view_pick (self, self->pointer_x, self->pointer_y, &ref))
    name = cursor_of (self, &ref);
  else if (self->pull.kind == PLAN_PULL_OPENING || self->pull.kind == PLAN_PULL_WALL)
    name = "grabbing";
  gtk_widget_set_cursor_from_name (GTK_WIDGET (self), name);
}

static void
enter_cb (HbPlanView *self, double x, double y)
{
  self->pointer_x = x;
  self->pointer_y = y;
  _hb_plan_view_update_cursor (self);
}

/* What moves under a pointer that rests tells of motion, too: only a hand counts. */
static void
motion_cb (HbPlanView *self, double x, double y)
{
  const gboolean rests = fabs (x - self->pointer_x) < 0.5 && fabs (y - self->pointer_y) < 0.5;

  if (rests)
    return;
  self->pointer_x = x;
  self->pointer_y = y;
  if (self->pull.kind == PLAN_PULL_NONE && _hb_plan_view_draws (self))
    _hb_plan_view_draw_to (self, x, y);
  if (self->pull.kind == PLAN_PULL_NONE)
    _hb_plan_view_hover_strip (self, x, y);
  if (self->pull.kind == PLAN_PULL_NONE && self->tool == HB_PLAN_TOOL_PLACE)
    _hb_plan_view_place_to (self, x, y);
  _hb_plan_view_update_cursor (self);
}

void
_hb_plan_view_add_pointer (HbPlanView *self)
{
  GtkGesture *drag = gtk_gesture_drag_new ();
  GtkGesture *click = gtk_gesture_click_new ();
  GtkEventController *motion = gtk_event_controller_motion_new ();

  gtk_gesture_single_set_button (GTK_GESTURE_SINGLE (drag), 0);
  g_signal_connect_swapped (drag, "drag-begin", G_CALLBACK (pull_begin_cb), self);
  g_signal_connect_swapped (drag, "drag-update", G_CALLBACK (pull_update_cb), self);
  g_signal_connect_swapped (drag, "drag-end", G_CALLBACK (pull_end_cb), self);
  g_signal_connect_swapped (drag, "cancel", G_CALLBACK (pull_cancel_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (drag));
  g_signal_connect_swapped (click, "pressed", G_CALLBACK (pressed_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (click));
  g_signal_connect_swapped (motion, "enter", G_CALLBACK (enter_cb), self);
  g_signal_connect_swapped (motion, "motion", G_CALLBACK (motion_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), motion);
}
