/* canvas-keys.c - the keyboard: nudges, steps to courses, edits, cancels */
#include "app/canvas-private.h"

#include <glib/gi18n.h>

#include "model/plan-edit.h"

/* What the arrow keys held down did is one step, kept when the key is let go. */
void
_hb_canvas_end_nudge (HbCanvas *self)
{
  const Opening *opening = _hb_canvas_get_opening (self);
  const Wall *wall = _hb_canvas_get_wall_value (self);
  g_autofree char *label = NULL;

  if (!self->nudging)
    return;
  self->nudging = FALSE;
  if (_hb_canvas_has_corner (self))
    label = g_strdup (self->held.kind == REF_FOOT ? _ ("Move a step of the footing")
                                                  : _ ("Move a point of the top"));
  else if (self->move.wall)
    label = _hb_canvas_dup_perpend_label (&self->move.from);
  else if (self->joint)
    label = g_strdup (_ ("Move a movement joint"));
  else if (opening)
    label = g_strdup_printf (_ ("Move %s"), tool_opening_name (opening));
  else
    label = g_strdup_printf (_ ("Resize %s"), wall ? tool_wall_name (wall) : "");
  _hb_canvas_end_perpend (self);
  hb_document_keep_preview (self->document, label);
}

void
_hb_canvas_nudge (HbCanvas *self, Edit *edit)
{
  g_autoptr (Edit) owned = edit;
  g_autoptr (GError) error = NULL;

  if (hb_document_preview (self->document, owned, &error))
    self->nudging = TRUE;
  else
    _hb_canvas_say (self, error->message);
}

/* To the cheapest place on that side, the nearest such. */
static Length
next_cheap_place (HbCanvas *self, const Opening *opening, int direction)
{
  const Length near = opening->x + direction, far = opening->x + direction * LENGTH_MM (300);
  const Place *best
      = hb_places_best (self->places, SHIFT_ALONG, MIN (near, far), MAX (near, far), opening->x);

  return best ? best->at : opening->x + direction * LENGTH_MM (50);
}

static void
nudge_opening (HbCanvas *self, const Opening *opening, int right, int up, GdkModifierType state)
{
  const Wall *wall = _hb_canvas_get_wall_value (self);
  const Block *block = _hb_canvas_get_block (self);
  const Length by = state & GDK_SHIFT_MASK ? LENGTH_MM (10) : LENGTH_MM (1);
  const gboolean stretch = (state & GDK_ALT_MASK) != 0;
  Opening next = opening_copy (opening);
  Length *height = stretch ? &next.height : &next.sill;

  if (state & GDK_CONTROL_MASK)
    {
      const Length from = stretch ? opening_head (opening) : opening->sill;

      if (up)
        *height += tool_next_course (wall, block, from, up > 0) - from;
      else if (stretch)
        next.width += right * block->length / 2;
      else
        next.x = next_cheap_place (self, opening, right);
    }
  else
    {
      *height += up * by;
      *(stretch ? &next.width : &next.x) += right * by;
    }
  _hb_canvas_nudge (self, edit_set_opening (&next));
  opening_clear (&next);
}

/* Left and right: its length; up and down: its height. */
static void
nudge_wall (HbCanvas *self, const Wall *wall, int right, int up, GdkModifierType state)
{
  const Block *block = _hb_canvas_get_block (self);
  const Length by = state & GDK_SHIFT_MASK ? LENGTH_MM (10) : LENGTH_MM (1);
  g_autoptr (Wall) next = wall_copy (wall);
  g_autoptr (GError) error = NULL;
  Edit *edit;

  if ((state & GDK_CONTROL_MASK) && up)
    {
      next->height = LENGTH_MAX;
      next->height = tool_next_course (next, block, wall->height, up > 0);
    }
  else if (state & GDK_CONTROL_MASK)
    next->length += right * block->length / 2;
  else
    {
      next->length += right * by;
      next->height += up * by;
    }
  edit = plan_resize (_hb_canvas_project (self), next, SIDE_RIGHT, &error);
  if (edit)
    _hb_canvas_nudge (self, edit);
  else
    _hb_canvas_say (self, error->message);
}

/* From piece to piece: each is lit and said. */
static gboolean
walk (HbCanvas *self, int right, int up)
{
  const Layout *layout = hb_answers_get_latest (self->answers, self->wall);
  const Piece *piece;
  g_autofree char *text = NULL;

  if (!layout)
    return GDK_EVENT_PROPAGATE;
  piece = tool_next_piece (layout, tool_piece (layout, self->in_course, self->piece), right, up);
  if (!piece)
    return GDK_EVENT_PROPAGATE;
  self->course = piece->course;
  _hb_canvas_queue_redraw (self);
  hb_canvas_set_piece (self, piece->course, piece->number);
  hb_canvas_go_to (self, piece->course, piece->x + piece->length / 2);
  text = _hb_canvas_dup_piece_text (self, piece->course, piece->number);
  _hb_canvas_say (self, text);
  return GDK_EVENT_STOP;
}

/* From the perpend to the piece right of it, whence one walks on. */
static void
leave_perpend (HbCanvas *self)
{
  const Layout *layout = hb_answers_get_latest (self->answers, self->wall);
  const Piece *right = layout ? tool_perpend (layout, self->perpend.course, self->perpend.x) : NULL;

  if (right && !self->piece)
    hb_canvas_set_piece (self, right->course, right->number);
  else
    _hb_canvas_take_perpend (self, (Perpend){ 0 });
}

static gboolean
arrow (HbCanvas *self, int right, int up, GdkModifierType state)
{
  const Wall *wall = _hb_canvas_get_wall_value (self);
  const Opening *opening = _hb_canvas_get_opening (self);

  if (!wall || self->client || self->pull.kind != PULL_NONE)
    return GDK_EVENT_PROPAGATE;
  if (_hb_canvas_has_corner (self))
    {
      _hb_canvas_nudge (self, _hb_canvas_nudged_corner (self, right, up, state));
      return GDK_EVENT_STOP;
    }
  if (self->perpend.course && right)
    {
      _hb_canvas_nudge_perpend (self, right, state);
      return GDK_EVENT_STOP;
    }
  if (self->perpend.course)
    leave_perpend (self);
  /* The wall itself changes only with Alt, so that a lost key does no harm. */
  if (opening)
    nudge_opening (self, opening, right, up, state);
  else if (_hb_canvas_get_joint (self))
    _hb_canvas_nudge_joint (self, right, state);
  else if (state & GDK_ALT_MASK)
    nudge_wall (self, wall, right, up, state & ~GDK_ALT_MASK);
  else
    return walk (self, right, up);
  return GDK_EVENT_STOP;
}

/* Steel in the top of the course of the lit piece, or none. */
static gboolean
steel (HbCanvas *self, GdkModifierType state)
{
  if (!_hb_canvas_get_wall_value (self) || self->client || !self->in_course
      || (state & (GDK_CONTROL_MASK | GDK_ALT_MASK)))
    return GDK_EVENT_PROPAGATE;
  _hb_canvas_toggle_steel (self, self->in_course);
  return GDK_EVENT_STOP;
}

/* Enter types into the piece left of a perpend, the place of the opening, or the length of the
 * wall. */
static gboolean
edit_selected (HbCanvas *self)
{
  const Opening *opening = _hb_canvas_get_opening (self);
  const Wall *wall = _hb_canvas_get_wall_value (self);
  MarkPoint at = { 0 };
  double x, y;

  if (!wall || self->client)
    return GDK_EVENT_PROPAGATE;
  if (self->perpend.course)
    {
      _hb_canvas_edit_left_piece (self);
      return GDK_EVENT_STOP;
    }
  if (_hb_canvas_get_joint (self))
    {
      _hb_canvas_edit_joint (self);
      return GDK_EVENT_STOP;
    }
  if (_hb_canvas_has_corner (self))
    {
      _hb_canvas_edit_corner (self);
      return GDK_EVENT_STOP;
    }
  at.x = length_to_mm (opening ? opening->x : wall->length / 2);
  at.z = length_to_mm (opening ? opening_head (opening) : wall->height);
  view_to_sheet (&self->view, &at, &x, &y);
  _hb_canvas_edit_dimension (
      self,
      &(MarkRef){ .kind = REF_DIMENSION,
                  .part = opening ? DIMENSION_PIER_BEFORE : DIMENSION_WALL_LENGTH,
                  .id = opening ? opening->id.n : 0 },
      x, y);
  return GDK_EVENT_STOP;
}

/* With a tool: a thing of the usual size in the middle of what is seen. */
static gboolean
place_usual (HbCanvas *self)
{
  const Wall *wall = _hb_canvas_get_wall_value (self);
  const OpeningKind kind = self->tool == HB_TOOL_DOOR   ? OPENING_DOOR
                           : self->tool == HB_TOOL_VOID ? OPENING_VOID
                                                        : OPENING_WINDOW;
  const OpeningId id = { _hb_canvas_project (self)->next };
  g_autofree char *label = NULL;
  Opening placed;

  if (!wall || self->tool == HB_TOOL_WALL
      || !tool_place_opening (wall, _hb_canvas_get_block (self), kind, wall->length / 2, &placed))
    return GDK_EVENT_PROPAGATE;
  g_free (placed.name);
  placed.name = tool_free_name (wall, kind);
  label = g_strdup_printf (_ ("Add %s"), placed.name);
  if (_hb_canvas_apply (self, edit_add_opening (wall->id, &placed), label))
    {
      hb_canvas_select (self, id);
      hb_canvas_set_tool (self, HB_TOOL_SELECT);
      _hb_canvas_focus_selected (self);
    }
  opening_clear (&placed);
  return GDK_EVENT_STOP;
}

static gboolean
key_pressed_cb (HbCanvas *self, guint key, guint code, GdkModifierType state)
{
  (void) code;
  if (_hb_canvas_is_typing (self))
    return GDK_EVENT_PROPAGATE;
  /* A hand that pulls is not to be disturbed but by Escape. */
  if (self->pull.kind != PULL_NONE && key != GDK_KEY_Escape)
    return GDK_EVENT_STOP;
  switch (key)
    {
    case GDK_KEY_Left:
      return arrow (self, -1, 0, state);
    case GDK_KEY_Right:
      return arrow (self, 1, 0, state);
    case GDK_KEY_Up:
      return arrow (self, 0, 1, state);
    case GDK_KEY_Down:
      return arrow (self, 0, -1, state);
    case GDK_KEY_s:
      return steel (self, state);
    case GDK_KEY_n:
      if (state & (GDK_CONTROL_MASK | GDK_ALT_MASK) || self->tool != HB_TOOL_SELECT)
        return GDK_EVENT_PROPAGATE;
      _hb_canvas_add_point (self);
      return GDK_EVENT_STOP;
    case GDK_KEY_Delete:
    case GDK_KEY_BackSpace:
      if (self->perpend.course)
        _hb_canvas_let_perpend_go (self);
      else if (_hb_canvas_has_corner (self))
        _hb_canvas_remove_corner (self);
      else
        hb_canvas_remove_selected (self);
      return GDK_EVENT_STOP;
    case GDK_KEY_Return:
    case GDK_KEY_KP_Enter:
      return self->tool == HB_TOOL_SELECT ? edit_selected (self) : place_usual (self);
    case GDK_KEY_Escape:
      if (hb_canvas_cancel (self))
        return GDK_EVENT_STOP;
      if (self->perpend.course)
        {
          _hb_canvas_take_perpend (self, (Perpend){ 0 });
          _hb_canvas_say_present (self);
          return GDK_EVENT_STOP;
        }
      if (_hb_canvas_has_corner (self))
        {
          _hb_canvas_hold_corner (self, NULL);
          _hb_canvas_focus_selected (self);
          _hb_canvas_say_present (self);
          return GDK_EVENT_STOP;
        }
      if (!self->selected.n && !self->joint && !self->piece)
        return GDK_EVENT_PROPAGATE;
      hb_canvas_set_piece (self, 0, 0);
      hb_canvas_select (self, (OpeningId){ 0 });
      _hb_canvas_focus_selected (self);
      return GDK_EVENT_STOP;
    case GDK_KEY_space:
      self->space_held = TRUE;
      _hb_canvas_update_cursor (self);
      return GDK_EVENT_STOP;
    default:
      return GDK_EVENT_PROPAGATE;
    }
}

static void
key_released_cb (HbCanvas *self, guint key)
{
  if (key == GDK_KEY_space)
    {
      self->space_held = FALSE;
      _hb_canvas_update_cursor (self);
    }
  else
    _hb_canvas_end_nudge (self);
}

static void
focus_left_cb (HbCanvas *self)
{
  self->space_held = FALSE;
  _hb_canvas_end_nudge (self);
}

void
_hb_canvas_add_keys (HbCanvas *self)
{
  GtkEventController *keys = gtk_event_controller_key_new ();
  GtkEventController *focus = gtk_event_controller_focus_new ();

  g_signal_connect_swapped (keys, "key-pressed", G_CALLBACK (key_pressed_cb), self);
  g_signal_connect_swapped (keys, "key-released", G_CALLBACK (key_released_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), keys);
  g_signal_connect_swapped (focus, "leave", G_CALLBACK (focus_left_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), focus);
}
