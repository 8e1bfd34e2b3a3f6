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
      || (_hb_canvas_pick (self, x, y, &ref) && ref.kind == REF_OPENING))
    return NULL;
  for (guint i = 0; i < wall->movement_joints->len; i++)
    {
      const MovementJoint *joint = wall_movement_joint_at (wall, i);

      if (at >= length_to_mm (joint->x) - reach
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

void
hb_canvas_toggle_movement_joint (HbCanvas *self)
{
  const Wall *wall;
  const MovementJoint *joint;
  g_autoptr (Wall) next = NULL;
  g_autofree char *label = NULL;
  char x[LENGTH_TEXT_SIZE];
  Length at;

  g_return_if_fail (HB_IS_CANVAS (self));
  wall = _hb_canvas_get_wall_value (self);
  if (!wall || self->client || self->pull.kind != PULL_NONE)
    return;
  _hb_canvas_end_nudge (self);
  joint = self->pointer_in ? _hb_canvas_pick_joint (self, self->pointer_x, self->pointer_y) : NULL;
  at = joint ? joint->x : new_place (self, wall);
  next = wall_copy (wall);
  label = g_strdup_printf (joint ? _ ("Take out the movement joint at %s mm")
                                 : _ ("Add a movement joint at %s mm"),
                           length_text (at, x));
  if (joint)
    wall_take_movement_joint (next, at);
  else
    wall_add_movement_joint (next, at, MOVEMENT_JOINT_WIDTH);
  if (_hb_canvas_apply (self, edit_set_wall (next), label))
    _hb_canvas_say (self, label);
}

void
_hb_canvas_say_joint (HbCanvas *self, const MovementJoint *joint)
{
  char x[LENGTH_TEXT_SIZE], width[LENGTH_TEXT_SIZE];
  g_autofree char *text = g_strdup_printf (
      _ ("Movement joint at %s mm, %s mm wide · drag to move it, K takes it out"),
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
      const Length to = (joint->x + dx) / LENGTH_PER_MM * LENGTH_PER_MM;

      if (joint->x != self->pull.joint)
        continue;
      joint->x = CLAMP (to, LENGTH_MM (1), next->length - joint->width - LENGTH_MM (1));
      _hb_canvas_say_joint (self, joint);
      break;
    }
  return edit_set_wall (next);
}
