/* canvas-pull.c - the pointer: picks, pulls, draws, pans */
#include "app/canvas-private.h"

#include <glib/gi18n.h>
#include <math.h>

#include "app/tool-top.h"
#include "concrete/bed-steel.h"
#include "model/plan-edit.h"

/* A press that moves less is a click, px. */
#define CLICK 4.0
/* A drag that draws is farther than this, px: less is a hand that shook. */
#define DRAWN_LEAST 12.0
/* A wall shown when one is to be drawn, mm: what fits on the sheet then. */
#define BLANK_LENGTH LENGTH_MM (14000)
#define BLANK_HEIGHT LENGTH_MM (5000)
/* How near a cheap place must be to hold a body, px. */
#define REST_REACH 5.0

/* ---- pulls ---- */

static void
pull_clear (HbCanvas *self)
{
  if (self->pull.kind == PULL_OPENING)
    opening_clear (&self->pull.opening);
  g_clear_pointer (&self->pull.wall, wall_unref);
  if (self->pull.kind == PULL_PERPEND)
    _hb_canvas_end_perpend (self);
  g_clear_pointer (&self->pull.project, project_unref);
  self->pull = (Pull){ 0 };
}

gboolean
_hb_canvas_pull_cancel (HbCanvas *self)
{
  const PullKind kind = self->pull.kind;

  if (kind == PULL_NONE)
    return FALSE;
  if (kind == PULL_PERPEND && self->pull.under_way)
    self->perpend = self->move.from;
  pull_clear (self);
  if (kind == PULL_NEW_WALL)
    self->wall = (WallId){ 0 };
  if (kind != PULL_PAN)
    hb_document_drop_preview (self->document);
  if (kind == PULL_NEW_WALL)
    g_signal_emit_by_name (self, "wall");
  if (self->fitted)
    hb_canvas_fit (self);
  /* The place that was given up is not to be read any longer. */
  if (kind != PULL_PAN)
    _hb_canvas_say_present (self);
  _hb_canvas_queue_redraw (self);
  return TRUE;
}

/* What the pointer went since the pull began, on the wall. */
static void
pulled_by (HbCanvas *self, double x, double y, Length *dx, Length *dz)
{
  const double scale = self->pull.view.scale;

  *dx = length_from_mm (CLAMP ((x - self->pull.x) / scale, -500000, 500000));
  *dz = length_from_mm (CLAMP (-(y - self->pull.y) / scale, -500000, 500000));
}

static Grip
grip_of (HbCanvas *self, GdkModifierType state)
{
  Grip grip = tool_grip (self->pull.view.scale);

  if (state & GDK_ALT_MASK)
    grip.reach = 0;
  return grip;
}

static void
preview (HbCanvas *self, Edit *edit)
{
  g_autoptr (Edit) owned = edit;
  g_autoptr (GError) error = NULL;

  /* A refused place shows the last good one; the hand goes on. */
  if (!hb_document_preview (self->document, owned, &error))
    _hb_canvas_say (self, error->message);
}

/* What is pulled comes to rest, gently, where few cuts are. */
static void
rest_on_cheap_place (HbCanvas *self, Opening *opening, const Grip *grip)
{
  const Shift shift = _hb_canvas_pulled_shift (self);
  const Length reach = length_from_mm (REST_REACH / self->pull.view.scale);
  const Place *place;

  if (grip->reach == 0)
    return;
  place = hb_places_rest (self->places, shift, shift_at (opening, shift), reach);
  if (place)
    shift_to (opening, shift, place->at);
}

/* The other jamb, or two edges at a time, have no strip. */
static gboolean
pulls_to_a_place (HbCanvas *self, Length dx, Length dz)
{
  if (self->pull.part == PART_BODY)
    return dx != 0;
  return (self->pull.part == PART_SILL || self->pull.part == PART_HEAD) && dz != 0;
}

static char *
opening_text (const Opening *opening)
{
  char x[LENGTH_TEXT_SIZE], w[LENGTH_TEXT_SIZE], s[LENGTH_TEXT_SIZE], h[LENGTH_TEXT_SIZE];

  return g_strdup_printf (_ ("%s: %s × %s mm, left jamb at %s, sill at %s"),
                          tool_opening_name (opening), length_text (opening->width, w),
                          length_text (opening->height, h), length_text (opening->x, x),
                          length_text (opening->sill, s));
}

void
_hb_canvas_say_opening (HbCanvas *self, const Opening *opening)
{
  g_autofree char *text = opening_text (opening);

  _hb_canvas_say (self, text);
}

static void
say_pulled (HbCanvas *self, const Opening *opening, const Grip *grip)
{
  g_autofree char *text = opening_text (opening);
  g_autofree char *hint = g_strdup_printf (
      grip->reach ? _ ("%s · hold Alt to place it freely") : _ ("%s · placed freely"), text);

  _hb_canvas_say (self, hint);
}

static void
pull_opening (HbCanvas *self, double x, double y, GdkModifierType state)
{
  const Grip grip = grip_of (self, state);
  Opening pulled;
  Length dx, dz;

  pulled_by (self, x, y, &dx, &dz);
  pulled = tool_pull_opening (self->pull.wall, _hb_canvas_get_block (self), &self->pull.opening,
                              self->pull.part, dx, dz, &grip);
  if (pulls_to_a_place (self, dx, dz))
    rest_on_cheap_place (self, &pulled, &grip);
  preview (self, edit_set_opening (&pulled));
  say_pulled (self, &pulled, &grip);
  opening_clear (&pulled);
}

/* The hand may take hold beside the perpend: it moves as far as the hand. */
static void
pull_perpend (HbCanvas *self, double x, double y, GdkModifierType state)
{
  const Grip grip = grip_of (self, state);
  Length dx, dz;

  pulled_by (self, x, y, &dx, &dz);
  _hb_canvas_move_perpend (self, self->move.from.x + dx, &grip);
}

static void
say_wall (HbCanvas *self, const Wall *wall)
{
  char length[LENGTH_TEXT_SIZE], height[LENGTH_TEXT_SIZE];
  g_autofree char *text
      = g_strdup_printf (_ ("%s mm long, %s mm high"), length_text (wall->length, length),
                         length_text (wall->height, height));

  _hb_canvas_say (self, text);
}

/* An end that meets another wall in plan takes it along, measured from the project as it was. */
static void
preview_resized (HbCanvas *self, const Wall *pulled)
{
  g_autoptr (GError) error = NULL;
  Edit *edit = NULL;

  if (self->pull.part == PART_LEFT || self->pull.part == PART_RIGHT)
    edit = plan_resize (self->pull.project, pulled,
                        self->pull.part == PART_LEFT ? SIDE_LEFT : SIDE_RIGHT, &error);
  else
    edit = edit_set_wall (pulled);
  if (edit)
    preview (self, edit);
  else
    _hb_canvas_say (self, error->message);
}

static void
pull_wall (HbCanvas *self, double x, double y, GdkModifierType state)
{
  const Grip grip = grip_of (self, state);
  g_autoptr (Wall) pulled = NULL;
  Length dx, dz;

  pulled_by (self, x, y, &dx, &dz);
  pulled = tool_pull_wall (self->pull.wall, _hb_canvas_get_block (self), self->pull.part, dx, dz,
                           &grip);
  /* The left end follows the hand, though places are counted from it. */
  if (self->pull.part == PART_LEFT)
    {
      View view = self->pull.view;

      view.ox -= length_to_mm (pulled->length - self->pull.wall->length) * view.scale;
      _hb_canvas_set_view (self, &view, self->fitted);
    }
  preview_resized (self, pulled);
  say_wall (self, pulled);
}

static void
pull_joint (HbCanvas *self, double x, double y)
{
  Length dx, dz;

  pulled_by (self, x, y, &dx, &dz);
  preview (self, _hb_canvas_moved_joint (self, dx));
}

static void
pull_top (HbCanvas *self, double x, double y, GdkModifierType state)
{
  const Grip grip = grip_of (self, state);
  Length dx, dz;

  pulled_by (self, x, y, &dx, &dz);
  preview (self, _hb_canvas_pulled_top (self, dx, dz, &grip));
}

static OpeningKind
kind_of_tool (HbTool tool)
{
  return tool == HB_TOOL_DOOR ? OPENING_DOOR : tool == HB_TOOL_VOID ? OPENING_VOID : OPENING_WINDOW;
}

/* Shows the new opening as a preview and selects it. */
static void
preview_new (HbCanvas *self, Opening *opening)
{
  const Wall *wall = self->pull.wall;
  g_autoptr (Edit) edit = NULL;

  g_free (opening->name);
  opening->name = tool_free_name (wall, opening->kind);
  edit = edit_add_opening (wall->id, opening);
  preview (self, g_steal_pointer (&edit));
  if (hb_document_has_preview (self->document))
    hb_canvas_select (self, (OpeningId){ self->pull.next });
}

static void
draw_opening (HbCanvas *self, double x, double y, GdkModifierType state)
{
  const Grip grip = grip_of (self, state);
  double x0, z0, x1, z1;
  Opening drawn;

  view_to_wall (&self->view, self->pull.x, self->pull.y, &x0, &z0);
  view_to_wall (&self->view, x, y, &x1, &z1);
  if (!tool_draw_opening (self->pull.wall, _hb_canvas_get_block (self), kind_of_tool (self->tool),
                          tool_place_of (x0), tool_place_of (z0), tool_place_of (x1),
                          tool_place_of (z1), &grip, &drawn))
    return;
  preview_new (self, &drawn);
  _hb_canvas_say_opening (self, &drawn);
  opening_clear (&drawn);
}

/* The wall between where the hand came down and where it is; its foot is the ground. */
static void
draw_wall (HbCanvas *self, double x, double y)
{
  const Grip grip = tool_grip (self->pull.view.scale);
  const double scale = self->pull.view.scale;
  const double length = fabs (x - self->pull.x) / scale;
  const double height = (self->pull.view.oy - y) / scale;
  g_autoptr (Wall) wall = wall_new ();
  const Project *project = _hb_canvas_project (self);
  const Block *block = project->blocks->len ? project_block_at (project, 0) : NULL;
  View view = self->pull.view;

  wall->length = MAX (LENGTH_MM (250), length_from_mm (length) / grip.step * grip.step);
  wall->height = MAX (LENGTH_MM (250), length_from_mm (height) / grip.step * grip.step);
  g_free (wall->name);
  wall->name = g_strdup_printf (_ ("Wall %u"), self->pull.n_walls + 1);
  /* Its top stops on courses, as a pulled one does. */
  if (block)
    {
      g_autoptr (Wall) free_wall = g_steal_pointer (&wall);

      wall = tool_pull_wall (free_wall, block, PART_HEAD, 0, 0, &grip);
    }
  preview (self, edit_add_wall (wall));
  say_wall (self, wall);
  if (self->wall.n != self->pull.next)
    {
      self->wall = (WallId){ self->pull.next };
      g_signal_emit_by_name (self, "wall");
    }
  view.ox = MIN (x, self->pull.x);
  _hb_canvas_set_view (self, &view, TRUE);
  _hb_canvas_queue_redraw (self);
}

static void
pan (HbCanvas *self, double x, double y)
{
  View view = self->pull.view;

  view.ox += round (x - self->pull.x);
  view.oy += round (y - self->pull.y);
  _hb_canvas_set_view (self, &view, FALSE);
}

static void
pull_on (HbCanvas *self, double x, double y, GdkModifierType state)
{
  switch (self->pull.kind)
    {
    case PULL_PAN:
      pan (self, x, y);
      break;
    case PULL_OPENING:
      pull_opening (self, x, y, state);
      break;
    case PULL_PERPEND:
      pull_perpend (self, x, y, state);
      break;
    case PULL_JOINT:
      pull_joint (self, x, y);
      break;
    case PULL_TOP:
      pull_top (self, x, y, state);
      break;
    case PULL_WALL:
      pull_wall (self, x, y, state);
      break;
    case PULL_DRAW:
      draw_opening (self, x, y, state);
      break;
    case PULL_NEW_WALL:
      draw_wall (self, x, y);
      break;
    case PULL_NONE:
    default:
      break;
    }
}

/* ---- where a pull begins ---- */

static void
begin (HbCanvas *self, PullKind kind, double x, double y)
{
  const Wall *wall = _hb_canvas_get_wall_value (self);

  pull_clear (self);
  self->pull.kind = kind;
  self->pull.view = self->view;
  self->pull.x = x;
  self->pull.y = y;
  self->pull.next = _hb_canvas_project (self)->next;
  self->pull.n_walls = _hb_canvas_project (self)->walls->len;
  self->pull.wall = wall ? wall_ref (wall) : NULL;
  self->pull.project = project_ref (_hb_canvas_project (self));
}

static void
begin_opening (HbCanvas *self, const MarkRef *ref, double x, double y)
{
  const Opening *opening;

  hb_canvas_select (self, (OpeningId){ ref->id });
  opening = _hb_canvas_get_opening (self);
  if (!opening)
    return;
  begin (self, PULL_OPENING, x, y);
  self->pull.part = (RefPart) ref->part;
  self->pull.opening = opening_copy (opening);
}

/* A sheet with a ground to draw the first course of a wall on. */
static void
begin_new_wall (HbCanvas *self, double x, double y)
{
  g_autoptr (Wall) blank = wall_new ();
  View view;

  hb_canvas_select (self, (OpeningId){ 0 });
  blank->length = BLANK_LENGTH;
  blank->height = BLANK_HEIGHT;
  view = elevation_fit (blank, FALSE, gtk_widget_get_width (GTK_WIDGET (self)),
                        gtk_widget_get_height (GTK_WIDGET (self)));
  view.ox = round (x);
  view.oy = _hb_canvas_blank_ground (self);
  begin (self, PULL_NEW_WALL, x, y);
  self->pull.view = view;
}

/* FALSE: there is none to take. */
static gboolean
begin_perpend (HbCanvas *self, double x, double y)
{
  const Perpend perpend = _hb_canvas_pick_perpend (self, x, y);

  if (!perpend.course)
    return FALSE;
  begin (self, PULL_PERPEND, x, y);
  _hb_canvas_begin_perpend (self, perpend);
  return TRUE;
}

/* FALSE: there is none to take. */
static gboolean
begin_joint (HbCanvas *self, double x, double y)
{
  const MovementJoint *joint = _hb_canvas_pick_joint (self, x, y);
  Length at;

  if (!joint)
    return FALSE;
  at = joint->x;
  hb_canvas_select_joint (
      self, (guint) (joint - wall_movement_joint_at (_hb_canvas_get_wall_value (self), 0)) + 1);
  begin (self, PULL_JOINT, x, y);
  self->pull.joint = at;
  return TRUE;
}

static void
begin_selecting (HbCanvas *self, double x, double y)
{
  MarkRef ref;
  const Place *place;
  Shift shift;

  /* A strip lies over the wall: what is under it is not taken. */
  if (self->client || _hb_canvas_pick_strip (self, x, y, &shift, &place) || begin_joint (self, x, y)
      || begin_perpend (self, x, y) || !_hb_canvas_pick (self, x, y, &ref))
    return;
  if (ref.kind == REF_OPENING)
    begin_opening (self, &ref, x, y);
  else if (ref.kind == REF_TOP || ref.kind == REF_FOOT)
    {
      begin (self, PULL_TOP, x, y);
      self->pull.ref = ref;
    }
  else if (ref.kind == REF_WALL && ref.part != PART_BODY && ref.part != PART_SILL)
    {
      begin (self, PULL_WALL, x, y);
      self->pull.part = (RefPart) ref.part;
    }
}

static void
pull_begin_cb (HbCanvas *self, double x, double y, GtkGesture *gesture)
{
  const guint button = gtk_gesture_single_get_current_button (GTK_GESTURE_SINGLE (gesture));

  _hb_canvas_end_nudge (self);
  _hb_canvas_stop_typing (self);
  pull_clear (self);
  self->given_up = FALSE;
  self->cut_short = FALSE;
  self->pressed_x = x;
  self->pressed_y = y;
  self->pulled_x = self->pulled_y = 0;
  /* The ring round what has the focus is for the keyboard. */
  gtk_window_set_focus_visible (GTK_WINDOW (gtk_widget_get_root (GTK_WIDGET (self))), FALSE);
  if (button == GDK_BUTTON_MIDDLE || self->space_held)
    begin (self, PULL_PAN, x, y);
  else if (button != GDK_BUTTON_PRIMARY)
    {
      self->given_up = TRUE;
      gtk_gesture_set_state (gesture, GTK_EVENT_SEQUENCE_DENIED);
    }
  else if (self->tool == HB_TOOL_WALL)
    begin_new_wall (self, x, y);
  else if (self->tool != HB_TOOL_SELECT && _hb_canvas_get_wall_value (self))
    begin (self, PULL_DRAW, x, y);
  else
    begin_selecting (self, x, y);
  _hb_canvas_focus_selected (self);
  _hb_canvas_update_cursor (self);
}

/* A wall has a length; an opening may be drawn along or up. */
static gboolean
draws_too_little (HbCanvas *self, double dx, double dy)
{
  if (self->pull.kind == PULL_NEW_WALL)
    return fabs (dx) < DRAWN_LEAST;
  return self->pull.kind == PULL_DRAW && MAX (fabs (dx), fabs (dy)) < DRAWN_LEAST;
}

static void
pull_update_cb (HbCanvas *self, double dx, double dy, GtkGesture *gesture)
{
  const GdkModifierType state
      = gtk_event_controller_get_current_event_state (GTK_EVENT_CONTROLLER (gesture));

  self->pulled_x = dx;
  self->pulled_y = dy;
  if (self->pull.kind == PULL_NONE)
    return;
  if (!self->pull.under_way
      && ((fabs (dx) < CLICK && fabs (dy) < CLICK) || draws_too_little (self, dx, dy)))
    return;
  if (!self->pull.under_way && self->pull.kind == PULL_PERPEND)
    {
      hb_canvas_select (self, (OpeningId){ 0 });
      hb_canvas_set_piece (self, 0, 0);
    }
  self->pull.under_way = TRUE;
  pull_on (self, self->pull.x + dx, self->pull.y + dy, state);
}

/* ---- clicks ---- */

void
_hb_canvas_toggle_steel (HbCanvas *self, gint32 course)
{
  const Wall *wall = _hb_canvas_get_wall_value (self);
  const Block *block = _hb_canvas_get_block (self);
  const gboolean had = bed_steel_has_row (wall, block, course);
  g_autoptr (Wall) toggled = bed_steel_toggle (wall, block, course);
  g_autofree char *label = g_strdup_printf (
      had ? _ ("Take steel out of course %d") : _ ("Lay steel in course %d"), course);

  if (_hb_canvas_apply (self, edit_set_wall (toggled), label))
    _hb_canvas_say (self, label);
}

/* FALSE: there is no strip. */
static gboolean
click_strip (HbCanvas *self, double x, double y)
{
  static const char *const labels[N_SHIFTS] = {
    [SHIFT_ALONG] = N_ ("Move %s"),
    [SHIFT_SILL] = N_ ("Move sill of %s"),
    [SHIFT_HEAD] = N_ ("Move head of %s"),
  };
  const Place *place;
  Shift shift;
  Opening moved;
  g_autofree char *label = NULL;

  if (!_hb_canvas_pick_strip (self, x, y, &shift, &place))
    return FALSE;
  if (!place || !place->possible)
    return TRUE;
  moved = opening_copy (_hb_canvas_get_opening (self));
  shift_to (&moved, shift, place->at);
  label = g_strdup_printf (_ (labels[shift]), tool_opening_name (&moved));
  if (_hb_canvas_apply (self, edit_set_opening (&moved), label))
    _hb_canvas_say_opening (self, &moved);
  opening_clear (&moved);
  return TRUE;
}

/* A point or a step that is clicked is moved by the keys from then on. */
static void
click_corner (HbCanvas *self, const MarkRef *ref)
{
  const Wall *wall = _hb_canvas_get_wall_value (self);

  _hb_canvas_hold_corner (self, wall && tool_is_corner (wall, ref) ? ref : NULL);
  if (self->held.kind == REF_NONE)
    return;
  _hb_canvas_focus_selected (self);
  _hb_canvas_say_top (self, ref);
}

static void
click_select (HbCanvas *self, double x, double y)
{
  MarkRef ref = { .kind = REF_NONE };

  /* A perpend that is clicked and not moved is not taken: a key pressed then would move it. */
  if (click_strip (self, x, y))
    return;
  if (self->presses == 2 && _hb_canvas_add_point_at (self, x, y))
    return;
  if (!self->client)
    _hb_canvas_pick (self, x, y, &ref);
  if (ref.kind == REF_DIMENSION)
    {
      _hb_canvas_edit_dimension (self, &ref, x, y);
      return;
    }
  if (ref.kind == REF_BED)
    {
      _hb_canvas_toggle_steel (self, ref.a);
      return;
    }
  /* A joint that is pressed is chosen already. */
  if (!self->client && _hb_canvas_pick_joint (self, x, y))
    ref.kind = REF_NONE;
  else if (ref.kind != REF_OPENING)
    {
      hb_canvas_select (self, (OpeningId){ 0 });
      _hb_canvas_focus_selected (self);
    }
  click_corner (self, &ref);
  if (ref.kind == REF_PIECE && !(ref.a == self->in_course && ref.b == self->piece))
    hb_canvas_set_piece (self, ref.a, ref.b);
  else
    hb_canvas_set_piece (self, 0, 0);
}

static void
click_new_opening (HbCanvas *self, double x, double y)
{
  double at, z;
  Opening placed;

  view_to_wall (&self->view, x, y, &at, &z);
  if (!tool_place_opening (self->pull.wall, _hb_canvas_get_block (self), kind_of_tool (self->tool),
                           tool_place_of (at), &placed))
    {
      g_autoptr (GError) error = g_error_new_literal (
          MODEL_ERROR, MODEL_ERROR_REFUSED, _ ("There is no room on this wall for another one."));

      _hb_canvas_refused (self, error);
      return;
    }
  preview_new (self, &placed);
  opening_clear (&placed);
}

/* ---- where a pull ends ---- */

static char *
pull_label (HbCanvas *self)
{
  const Opening *opening = _hb_canvas_get_opening (self);
  const Wall *wall = _hb_canvas_get_wall_value (self);

  switch (self->pull.kind)
    {
    case PULL_OPENING:
      return g_strdup_printf (self->pull.part == PART_BODY ? _ ("Move %s") : _ ("Resize %s"),
                              opening ? tool_opening_name (opening) : "");
    case PULL_PERPEND:
      return _hb_canvas_dup_perpend_label (&self->perpend);
    case PULL_JOINT:
      return g_strdup (_ ("Move a movement joint"));
    case PULL_TOP:
      return g_strdup (self->pull.ref.kind == REF_FOOT    ? _ ("Move a step of the footing")
                       : self->pull.ref.part == TOP_POINT ? _ ("Move a point of the top")
                                                          : _ ("Move a part of the top"));
    case PULL_DRAW:
      return g_strdup_printf (_ ("Add %s"), opening ? tool_opening_name (opening) : "");
    case PULL_NEW_WALL:
      return g_strdup (_ ("Draw a wall"));
    case PULL_WALL:
    case PULL_PAN:
    case PULL_NONE:
    default:
      return g_strdup_printf (_ ("Resize %s"), wall ? tool_wall_name (wall) : "");
    }
}

static void
keep (HbCanvas *self)
{
  const PullKind kind = self->pull.kind;
  const MarkRef ref = self->pull.ref;
  g_autofree char *label = pull_label (self);
  const gboolean drawn = kind == PULL_DRAW || kind == PULL_NEW_WALL;
  const gboolean has = hb_document_has_preview (self->document);

  pull_clear (self);
  hb_document_keep_preview (self->document, label);
  if (kind == PULL_NEW_WALL && has)
    {
      hb_canvas_fit (self);
      _hb_canvas_update_holds (self);
      g_signal_emit_by_name (self, "wall");
    }
  else if (self->fitted)
    hb_canvas_fit (self);
  if (kind == PULL_PERPEND)
    _hb_canvas_say_perpend (self);
  if (kind == PULL_TOP)
    click_corner (self, &ref);
  if (drawn && has)
    hb_canvas_set_tool (self, HB_TOOL_SELECT);
  _hb_canvas_focus_selected (self);
}

static void
pull_end_cb (HbCanvas *self, double dx, double dy)
{
  double x, y;

  if (self->cut_short)
    {
      dx = self->pulled_x;
      dy = self->pulled_y;
    }
  x = self->pull.x + dx;
  y = self->pull.y + dy;
  /* The button that is let go after Escape clicks nothing. */
  if (self->given_up)
    return;
  if (draws_too_little (self, dx, dy)
      && (self->pull.under_way || fabs (dx) >= CLICK || fabs (dy) >= CLICK))
    {
      if (self->pull.under_way)
        _hb_canvas_pull_cancel (self);
      else
        pull_clear (self);
      _hb_canvas_update_cursor (self);
      return;
    }
  if (self->pull.kind == PULL_DRAW && !self->pull.under_way)
    click_new_opening (self, x, y);
  if (self->pull.kind == PULL_PAN)
    pull_clear (self);
  else if (self->pull.under_way || self->pull.kind == PULL_DRAW)
    keep (self);
  else if (self->tool == HB_TOOL_SELECT)
    {
      pull_clear (self);
      click_select (self, self->pressed_x + dx, self->pressed_y + dy);
    }
  else
    pull_clear (self);
  _hb_canvas_update_cursor (self);
}

/* When something is laid out anew, GTK tells where the pointer is and which buttons are down now. A
 * button that was let go just before, and is yet to be told of, ends the pull so: "drag-end" comes
 * next, but without a place. */
static gboolean
was_let_go (GtkGesture *gesture)
{
  GdkEvent *event = gtk_event_controller_get_current_event (GTK_EVENT_CONTROLLER (gesture));

  return event && gdk_event_get_event_type (event) == GDK_MOTION_NOTIFY;
}

static void
pull_cancel_cb (HbCanvas *self, GdkEventSequence *sequence, GtkGesture *gesture)
{
  (void) sequence;
  self->cut_short = was_let_go (gesture);
  if (self->cut_short)
    return;
  self->given_up = TRUE;
  _hb_canvas_pull_cancel (self);
}

/* ---- the gesture ---- */

static void
pressed_cb (HbCanvas *self, int presses)
{
  self->presses = presses;
}

void
_hb_canvas_add_pointer (HbCanvas *self)
{
  GtkGesture *drag = gtk_gesture_drag_new (), *click = gtk_gesture_click_new ();

  gtk_gesture_single_set_button (GTK_GESTURE_SINGLE (drag), 0);
  g_signal_connect_swapped (drag, "drag-begin", G_CALLBACK (pull_begin_cb), self);
  g_signal_connect_swapped (drag, "drag-update", G_CALLBACK (pull_update_cb), self);
  g_signal_connect_swapped (drag, "drag-end", G_CALLBACK (pull_end_cb), self);
  g_signal_connect_swapped (drag, "cancel", G_CALLBACK (pull_cancel_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (drag));
  g_signal_connect_swapped (click, "pressed", G_CALLBACK (pressed_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (click));
}
