/* canvas-top.c - the top of the wall and its footing under the hand: points, slopes and steps are
 * pulled, moved by keys, added, taken out, typed */
#include "app/canvas-private.h"

#include <glib/gi18n.h>

#include "app/tool-top.h"

/* ---- which one ---- */

void
_hb_canvas_hold_corner (HbCanvas *self, const MarkRef *ref)
{
  const MarkRef held = ref ? *ref : (MarkRef){ .kind = REF_NONE };

  if (mark_ref_equal (&held, &self->held))
    return;
  _hb_canvas_end_nudge (self);
  if (ref)
    {
      hb_canvas_select (self, (OpeningId){ 0 });
      hb_canvas_set_piece (self, 0, 0);
    }
  self->held = held;
  _hb_canvas_update_holds (self);
  _hb_canvas_queue_redraw (self);
}

gboolean
_hb_canvas_has_corner (HbCanvas *self)
{
  const Wall *wall = _hb_canvas_get_wall_value (self);

  return wall && self->held.kind != REF_NONE && tool_is_corner (wall, &self->held);
}

/* ---- what is said ---- */

char *
_hb_canvas_dup_corner_text (const Wall *wall, const MarkRef *ref)
{
  char at[LENGTH_TEXT_SIZE], up[LENGTH_TEXT_SIZE];
  Length x, z;

  if (!tool_corner_at (wall, ref, &x, &z))
    return NULL;
  return g_strdup_printf (ref->kind == REF_FOOT ? _ ("Step of the footing at %s mm: %s mm up")
                                                : _ ("Point of the top at %s mm: %s mm high"),
                          length_text (x, at), length_text (z, up));
}

/* What ends at a point, or begins at the last one. */
static char *
dup_line_text (const Wall *wall, guint i)
{
  const Length x = i < wall->tops->len ? top_point (wall->tops, i)->x : wall->length;
  const TopLine line = top_line (wall->tops, wall->height, x, SIDE_LEFT);
  char from[LENGTH_TEXT_SIZE], to[LENGTH_TEXT_SIZE];
  g_autofree char *pitch = tool_degrees_text (top_line_pitch (&line));

  if (line.z0 == line.z1)
    return g_strdup_printf (_ ("Level part of the top: %s mm high"), length_text (line.z0, from));
  return g_strdup_printf (_ ("Slope of %s°, from %s to %s mm high"), pitch,
                          length_text (line.z0, from), length_text (line.z1, to));
}

static char *
dup_text (const Wall *wall, const MarkRef *ref)
{
  char at[LENGTH_TEXT_SIZE];

  if (ref->kind == REF_TOP && ref->part == TOP_STEP && (guint) ref->a < wall->tops->len)
    return g_strdup_printf (_ ("Step of the top at %s mm"),
                            length_text (top_point (wall->tops, ref->a)->x, at));
  if (ref->kind == REF_TOP && ref->part == TOP_LINE)
    return dup_line_text (wall, (guint) ref->a);
  return _hb_canvas_dup_corner_text (wall, ref);
}

void
_hb_canvas_say_top (HbCanvas *self, const MarkRef *ref)
{
  const Wall *wall = _hb_canvas_get_wall_value (self);
  g_autofree char *text = wall ? dup_text (wall, ref) : NULL, *hint = NULL;
  const gboolean is_line = ref->kind == REF_TOP && ref->part == TOP_LINE;

  if (!text)
    return;
  hint = g_strdup_printf (is_line ? _ ("%s · drag to move it, double-click for a new point")
                          : ref->kind == REF_TOP && ref->part == TOP_STEP
                              ? _ ("%s · drag to move it")
                              : _ ("%s · drag to move it, Delete takes it out"),
                          text);
  _hb_canvas_say (self, hint);
}

const char *
_hb_canvas_top_cursor (const MarkRef *ref)
{
  if (ref->kind == REF_TOP && ref->part == TOP_LINE)
    return "ns-resize";
  return ref->kind == REF_TOP && ref->part == TOP_STEP ? "ew-resize" : "move";
}

/* ---- moved ---- */

Edit *
_hb_canvas_pulled_top (HbCanvas *self, Length dx, Length dz, const Grip *grip)
{
  const MarkRef *ref = &self->pull.ref;
  g_autoptr (Wall) next
      = tool_pull_top (self->pull.wall, _hb_canvas_get_block (self), ref, dx, dz, grip);
  g_autofree char *text = dup_text (next, ref);
  g_autofree char *hint = g_strdup_printf (
      grip->reach ? _ ("%s · hold Alt to place it freely") : _ ("%s · placed freely"), text);

  _hb_canvas_say (self, hint);
  return edit_set_wall (next);
}

/* Ctrl: to the next course, or half a unit along. */
Edit *
_hb_canvas_nudged_corner (HbCanvas *self, int right, int up, GdkModifierType state)
{
  const Wall *wall = _hb_canvas_get_wall_value (self);
  const Block *block = _hb_canvas_get_block (self);
  const Grip free_grip = { .step = 1 };
  Length by = state & GDK_SHIFT_MASK ? LENGTH_MM (10) : LENGTH_MM (1), x, z;
  Length dx = right * by, dz = up * by;
  g_autoptr (Wall) tall = wall_copy (wall), next = NULL;
  g_autofree char *text = NULL;

  tool_corner_at (wall, &self->held, &x, &z);
  tall->height = LENGTH_MAX;
  if ((state & GDK_CONTROL_MASK) && up && self->held.kind == REF_FOOT)
    dz = up * (block->height + laying_resolve (&wall->laying, block).bed);
  else if ((state & GDK_CONTROL_MASK) && up)
    dz = tool_next_course (tall, block, z, up > 0) - z;
  else if (state & GDK_CONTROL_MASK)
    dx = right * block->length / 2;
  next = tool_pull_top (wall, block, &self->held, dx, dz, &free_grip);
  text = _hb_canvas_dup_corner_text (next, &self->held);
  _hb_canvas_say (self, text ? text : "");
  return edit_set_wall (next);
}

/* ---- added, taken out ---- */

static void
add_point (HbCanvas *self, Length x)
{
  const Wall *wall = _hb_canvas_get_wall_value (self);
  MarkRef ref = { .kind = REF_TOP, .part = TOP_POINT };
  guint index = 0;
  g_autoptr (Wall) next = tool_add_top_point (wall, x, &index);

  if (!next)
    {
      _hb_canvas_say (self, _ ("There is a point of the top already, or the wall's end."));
      return;
    }
  ref.a = (gint32) index;
  if (!_hb_canvas_apply (self, edit_set_wall (next), _ ("Add a point to the top")))
    return;
  _hb_canvas_hold_corner (self, &ref);
  _hb_canvas_focus_selected (self);
  _hb_canvas_say_top (self, &ref);
}

gboolean
_hb_canvas_add_point_at (HbCanvas *self, double x, double y)
{
  double at, z;
  MarkRef ref;

  if (self->client || !_hb_canvas_pick (self, x, y, &ref)
      || !((ref.kind == REF_TOP && ref.part == TOP_LINE)
           || (ref.kind == REF_WALL && ref.part == PART_HEAD)))
    return FALSE;
  view_to_wall (&self->view, x, y, &at, &z);
  add_point (self, length_from_mm (at) / LENGTH_MM (10) * LENGTH_MM (10));
  return TRUE;
}

/* Of the parts that the points make of the wall the longest one's middle. */
static Length
free_place (const Wall *wall)
{
  Length from = 0, best = wall->length / 2, room = wall->tops->len ? 0 : wall->length;

  for (guint i = 0; wall->tops->len && i <= wall->tops->len; i++)
    {
      const Length to = i < wall->tops->len ? top_point (wall->tops, i)->x : wall->length;

      if (to - from > room)
        {
          room = to - from;
          best = from + (to - from) / 2;
        }
      from = to;
    }
  return best / LENGTH_PER_MM * LENGTH_PER_MM;
}

void
_hb_canvas_add_point (HbCanvas *self)
{
  const Wall *wall = _hb_canvas_get_wall_value (self);
  double at = -1, z;

  if (!wall || self->client)
    return;
  _hb_canvas_end_nudge (self);
  if (self->pointer_in)
    view_to_wall (&self->view, self->pointer_x, self->pointer_y, &at, &z);
  if (at > 0 && at < length_to_mm (wall->length))
    add_point (self, length_from_mm (at) / LENGTH_MM (10) * LENGTH_MM (10));
  else
    add_point (self, free_place (wall));
}

void
_hb_canvas_remove_corner (HbCanvas *self)
{
  const Wall *wall = _hb_canvas_get_wall_value (self);
  const gboolean foot = self->held.kind == REF_FOOT;
  g_autoptr (Wall) next = wall ? tool_remove_corner (wall, &self->held) : NULL;
  const char *label
      = foot ? _ ("Take out a step of the footing") : _ ("Take out a point of the top");

  if (!next)
    return;
  _hb_canvas_end_nudge (self);
  if (!_hb_canvas_apply (self, edit_set_wall (next), label))
    return;
  _hb_canvas_hold_corner (self, NULL);
  _hb_canvas_focus_selected (self);
  _hb_canvas_say (self, label);
}

/* ---- typed ---- */

void
_hb_canvas_edit_corner (HbCanvas *self)
{
  const Wall *wall = _hb_canvas_get_wall_value (self);
  const MarkRef what = {
    .kind = REF_DIMENSION,
    .part = self->held.kind == REF_FOOT ? DIMENSION_FOOT_UP : DIMENSION_TOP_HEIGHT,
    .a = self->held.a,
  };
  MarkPoint at = { 0 };
  Length x, z;
  double sx, sy;

  if (!tool_corner_at (wall, &self->held, &x, &z))
    return;
  at.x = length_to_mm (x);
  at.z = length_to_mm (z);
  view_to_sheet (&self->view, &at, &sx, &sy);
  _hb_canvas_edit_dimension (self, &what, sx, sy);
}
