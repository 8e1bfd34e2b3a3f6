/* canvas-joint.c - movement joints under the hand: added, pulled, taken out */
#include "app/canvas-private.h"

#include <glib/gi18n.h>

/* A hand this near to one takes it, px. */
#define REACH 4.0

const MovementJoint *
_hb_canvas_pick_joint (HbCanvas *self, double x, double y)
{
  const Wall *wall = _hb_canvas_get_wall_value (self);
  double at, z, reach;
  MarkRef ref;

  if (!wall || self->client || self->tool != HB_TOOL_SELECT)
    return NULL;
  view_to_wall (&self->view, x, y, &at, &z);
  reach = REACH / self->view.scale;
  if (z < 0 || z > length_to_mm (wall->height)
      || (_hb_canvas_pick (self, x, y, &ref)
          && (ref.kind == REF_OPENING || ref.kind == REF_TOP || ref.kind == REF_FOOT)))
    return NULL;
  for (guint i = 0; i < wall->movement_joints->len; i++)
    {
      const MovementJoint *joint = wall_movement_joint_at (wall, i);

      if (z <= length_to_mm (wall_top_at (wall, joint->x, SIDE_RIGHT))
          && at >= length_to_mm (joint->x) - reach
          && at <= length_to_mm (movement_joint_right (joint)) + reach)
        return joint;
    }
  return NULL;
}

/* Where a new one goes: its middle at the pointer, else in the wall's. */
static Length
new_place (HbCanvas *self, const Wall *wall)
{
  double at = length_to_mm (wall->length) / 2, z = 0;
  const double least = 1, most = length_to_mm (wall->length - MOVEMENT_JOINT_WIDTH) - 1;

  if (self->pointer_in)
    view_to_wall (&self->view, self->pointer_x, self->pointer_y, &at, &z);
  at -= length_to_mm (MOVEMENT_JOINT_WIDTH) / 2;
  return LENGTH_MM ((Length) CLAMP (at, least, MAX (least, most)));
}

const MovementJoint *
_hb_canvas_get_joint (HbCanvas *self)
{
  const Wall *wall = _hb_canvas_get_wall_value (self);

  return wall && self->joint >= 1 && self->joint <= wall->movement_joints->len
             ? wall_movement_joint_at (wall, self->joint - 1)
             : NULL;
}

/* Whole millimetres, within the wall. */
static Length
place_within (const Wall *wall, const MovementJoint *joint, Length x)
{
  return CLAMP (x / LENGTH_PER_MM * LENGTH_PER_MM, LENGTH_MM (1),
                wall->length - joint->width - LENGTH_MM (1));
}

void
_hb_canvas_nudge_joint (HbCanvas *self, int right, GdkModifierType state)
{
  const Wall *wall = _hb_canvas_get_wall_value (self);
  const Length by = state & GDK_CONTROL_MASK ? _hb_canvas_get_block (self)->length / 2
                    : state & GDK_SHIFT_MASK ? LENGTH_MM (10)
                                             : LENGTH_MM (1);
  g_autoptr (Wall) next = NULL;
  MovementJoint *joint;

  if (!right || !_hb_canvas_get_joint (self))
    return;
  next = wall_copy (wall);
  joint = &g_array_index (next->movement_joints, MovementJoint, self->joint - 1);
  if (state & GDK_ALT_MASK)
    joint->width
        = CLAMP (joint->width + right * LENGTH_MM (1), MOVEMENT_JOINT_LEAST, MOVEMENT_JOINT_MOST);
  else
    joint->x = place_within (wall, joint, joint->x + right * by);
  _hb_canvas_nudge (self, edit_set_wall (next));
  if (_hb_canvas_get_joint (self))
    _hb_canvas_say_joint (self, _hb_canvas_get_joint (self));
}

/* FALSE, and why is said, when it cannot be. */
static gboolean
take_out (HbCanvas *self, Length x)
{
  g_autoptr (Wall) next = wall_copy (_hb_canvas_get_wall_value (self));
  char text[LENGTH_TEXT_SIZE];
  g_autofree char *label
      = g_strdup_printf (_ ("Take out the movement joint at %s mm"), length_text (x, text));

  wall_take_movement_joint (next, x);
  if (!_hb_canvas_apply (self, edit_set_wall (next), label))
    return FALSE;
  _hb_canvas_say (self, label);
  return TRUE;
}

/* What was chosen may be another's number from now on. */
void
_hb_canvas_remove_joint (HbCanvas *self)
{
  const MovementJoint *joint = _hb_canvas_get_joint (self);
  const Length x = joint ? joint->x : 0;

  _hb_canvas_end_nudge (self);
  hb_canvas_select_joint (self, 0);
  if (joint)
    take_out (self, x);
  _hb_canvas_focus_selected (self);
}

static void
add_joint (HbCanvas *self, Length x)
{
  g_autoptr (Wall) next = wall_copy (_hb_canvas_get_wall_value (self));
  char text[LENGTH_TEXT_SIZE];
  g_autofree char *label
      = g_strdup_printf (_ ("Add a movement joint at %s mm"), length_text (x, text));

  wall_add_movement_joint (next, x, MOVEMENT_JOINT_WIDTH);
  if (!_hb_canvas_apply (self, edit_set_wall (next), label))
    return;
  hb_canvas_set_piece (self, 0, 0);
  hb_canvas_select_joint (self, next->movement_joints->len);
  /* The arrow keys are its own from now on. */
  _hb_canvas_focus_selected (self);
  _hb_canvas_say (self, label);
}

void
hb_canvas_toggle_movement_joint (HbCanvas *self)
{
  const Wall *wall;
  const MovementJoint *joint;

  g_return_if_fail (HB_IS_CANVAS (self));
  wall = _hb_canvas_get_wall_value (self);
  if (!wall || self->client || self->pull.kind != PULL_NONE)
    return;
  _hb_canvas_end_nudge (self);
  joint = self->pointer_in ? _hb_canvas_pick_joint (self, self->pointer_x, self->pointer_y) : NULL;
  if (joint)
    {
      const Length x = joint->x;

      hb_canvas_select_joint (self, 0);
      take_out (self, x);
    }
  else
    add_joint (self, new_place (self, wall));
}

void
_hb_canvas_say_joint (HbCanvas *self, const MovementJoint *joint)
{
  char x[LENGTH_TEXT_SIZE], width[LENGTH_TEXT_SIZE];
  g_autofree char *text = g_strdup_printf (
      _ ("Movement joint at %s mm, %s mm wide · drag it or use the arrow keys, Delete takes it "
         "out"),
      length_text (joint->x, x), length_text (joint->width, width));

  _hb_canvas_say (self, text);
}

Edit *
_hb_canvas_moved_joint (HbCanvas *self, Length dx)
{
  g_autoptr (Wall) next = wall_copy (self->pull.wall);

  for (guint i = 0; i < next->movement_joints->len; i++)
    {
      MovementJoint *joint = &g_array_index (next->movement_joints, MovementJoint, i);

      if (joint->x != self->pull.joint)
        continue;
      joint->x = place_within (next, joint, joint->x + dx);
      _hb_canvas_say_joint (self, joint);
      break;
    }
  return edit_set_wall (next);
}
