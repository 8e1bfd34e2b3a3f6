/* canvas-hover.c - the pointer that pulls nothing: what it is over is said, and shown by its shape
 */
#include "app/canvas-private.h"

#include <glib/gi18n.h>

#include "app/strip.h"
#include "app/tool-top.h"
#include "bond/rake.h"

static const char *
part_cursor (gint32 part)
{
  switch (part)
    {
    case PART_LEFT:
    case PART_RIGHT:
      return "ew-resize";
    case PART_SILL:
    case PART_HEAD:
      return "ns-resize";
    case PART_BOTTOM_LEFT:
    case PART_TOP_RIGHT:
      return "nesw-resize";
    case PART_BOTTOM_RIGHT:
    case PART_TOP_LEFT:
      return "nwse-resize";
    default:
      return "grab";
    }
}

static const char *
ref_cursor (const MarkRef *ref)
{
  switch (ref->kind)
    {
    case REF_OPENING:
    case REF_WALL:
      return part_cursor (ref->part);
    case REF_TOP:
    case REF_FOOT:
      return _hb_canvas_top_cursor (ref);
    case REF_BED:
      return "pointer";
    case REF_DIMENSION:
      return "text";
    case REF_NONE:
    case REF_PIECE:
    case REF_COURSE:
    case REF_STEEL:
    default:
      return NULL;
    }
}

void
_hb_canvas_update_cursor (HbCanvas *self)
{
  const char *name = NULL;
  MarkRef ref;
  const Place *place;
  Shift shift;

  if (self->pull.kind == PULL_PAN)
    name = "grabbing";
  else if (self->space_held)
    name = "grab";
  else if (self->tool != HB_TOOL_SELECT)
    name = "crosshair";
  else if (self->pull.kind == PULL_OPENING && self->pull.part == PART_BODY)
    name = "grabbing";
  else if (self->pull.kind == PULL_OPENING || self->pull.kind == PULL_WALL)
    name = part_cursor ((gint32) self->pull.part);
  else if (self->pull.kind == PULL_TOP)
    name = _hb_canvas_top_cursor (&self->pull.ref);
  else if (self->pull.kind == PULL_PERPEND || self->pull.kind == PULL_JOINT)
    name = "ew-resize";
  else if (self->pointer_in
           && _hb_canvas_pick_strip (self, self->pointer_x, self->pointer_y, &shift, &place))
    name = place ? "pointer" : NULL;
  else if (self->pointer_in
           && (self->hovered.course
               || _hb_canvas_pick_joint (self, self->pointer_x, self->pointer_y)))
    name = "ew-resize";
  else if (!self->client && self->pointer_in
           && _hb_canvas_pick (self, self->pointer_x, self->pointer_y, &ref))
    name = ref_cursor (&ref);
  gtk_widget_set_cursor_from_name (GTK_WIDGET (self), name);
}

static const char *
shape_text (PieceShape shape)
{
  switch (shape)
    {
    case PIECE_SHORT:
      return _ ("shortened");
    case PIECE_RIPPED:
      return _ ("ripped");
    case PIECE_NOTCHED:
      return _ ("notched");
    case PIECE_RAKED:
      return _ ("raked");
    case PIECE_WHOLE:
    default:
      return _ ("whole");
    }
}

/* All that marks it out: both edges, both ends, the angle. */
static char *
dup_raked_text (const Layout *layout, const Piece *piece)
{
  char bottom[LENGTH_TEXT_SIZE], top[LENGTH_TEXT_SIZE], left[LENGTH_TEXT_SIZE];
  char right[LENGTH_TEXT_SIZE], x[LENGTH_TEXT_SIZE];
  char rise_digits[G_ASCII_DTOSTR_BUF_SIZE];
  g_autofree char *angle = NULL;
  const char *rise;
  Rake rake;

  if (!piece_rake (layout, piece, &rake))
    return NULL;
  angle = tool_degrees_text (rake_angle (&rake));
  rise = g_ascii_formatd (rise_digits, sizeof rise_digits, "%.1f", rake_rise (&rake));
  return g_strdup_printf (_ ("Course %d, piece %d: raked at %s°, %s in 100; %s mm below, %s above; "
                             "%s high left, %s right; left face at %s"),
                          piece->course, piece->number, angle, rise,
                          length_text (rake.bottom, bottom), length_text (rake.top, top),
                          length_text (rake.left, left), length_text (rake.right, right),
                          length_text (piece->x, x));
}

char *
_hb_canvas_dup_piece_text (HbCanvas *self, gint32 course, gint32 number)
{
  const Layout *layout = hb_answers_get_latest (self->answers, self->wall);
  const Piece *piece = layout ? tool_piece (layout, course, number) : NULL;
  char length[LENGTH_TEXT_SIZE], x[LENGTH_TEXT_SIZE];

  if (!piece)
    return NULL;
  if (piece->shape == PIECE_RAKED)
    return dup_raked_text (layout, piece);
  return g_strdup_printf (_ ("Course %d, piece %d: %s mm, %s, left face at %s"), course, number,
                          length_text (piece->length, length), shape_text (piece->shape),
                          length_text (piece->x, x));
}

static void
say_piece (HbCanvas *self, gint32 course, gint32 number)
{
  g_autofree char *text = _hb_canvas_dup_piece_text (self, course, number);

  if (text)
    _hb_canvas_say (self, text);
}

static void
say_hovered_perpend (HbCanvas *self)
{
  g_autofree char *text = _hb_canvas_dup_perpend_text (self, &self->hovered);
  g_autofree char *hint = g_strdup_printf (_ ("%s · drag to move it"), text);

  _hb_canvas_say (self, hint);
}

static void
say_hovered (HbCanvas *self, const MarkRef *ref)
{
  const Wall *wall = _hb_canvas_get_wall_value (self);
  const Opening *opening
      = ref->kind == REF_OPENING && wall ? wall_opening (wall, (OpeningId){ ref->id }) : NULL;
  g_autofree char *text = NULL;

  if (ref->kind == REF_PIECE)
    say_piece (self, ref->a, ref->b);
  else if (opening)
    _hb_canvas_say_opening (self, opening);
  else if (ref->kind == REF_BED)
    {
      text = g_strdup_printf (_ ("Bed above course %d: click to lay steel in it or take it out"),
                              ref->a);
      _hb_canvas_say (self, text);
    }
  else if (ref->kind == REF_TOP || ref->kind == REF_FOOT)
    _hb_canvas_say_top (self, ref);
  else if (ref->kind == REF_WALL && ref->part == PART_HEAD)
    _hb_canvas_say (self, _ ("Top of the wall · drag to move it, double-click for a point"));
  else if (ref->kind == REF_DIMENSION)
    _hb_canvas_say (self, _ ("Click to type this dimension"));
  else
    _hb_canvas_say (self, "");
}

/* FALSE: there is no strip. */
static gboolean
say_strip (HbCanvas *self, double x, double y)
{
  const Place *place;
  Shift shift;
  g_autofree char *text = NULL;

  if (!_hb_canvas_pick_strip (self, x, y, &shift, &place))
    return FALSE;
  text = place && place->possible ? hb_strips_dup_text (shift, place) : g_strdup ("");
  _hb_canvas_say (self, text);
  return TRUE;
}

void
_hb_canvas_say_strip_again (HbCanvas *self)
{
  if (self->pointer_in && self->pull.kind == PULL_NONE && self->tool == HB_TOOL_SELECT
      && _hb_canvas_get_wall_value (self) && !self->client && !_hb_canvas_is_typing (self))
    say_strip (self, self->pointer_x, self->pointer_y);
}

/* The tape shows the course under the pointer. */
static void
follow_course (HbCanvas *self, double x, double y)
{
  const Wall *wall = _hb_canvas_get_wall_value (self);
  double at, z;
  gint32 course;

  view_to_wall (&self->view, x, y, &at, &z);
  if (z < 0 || z > length_to_mm (wall->height))
    return;
  course = tool_course_at (wall, _hb_canvas_get_block (self), tool_place_of (z));
  if (course == self->course)
    return;
  self->course = course;
  self->stale = TRUE;
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

/* What is said where no strip is. */
static void
say_under (HbCanvas *self, double x, double y)
{
  MarkRef ref = { .kind = REF_NONE };

  const MovementJoint *joint = _hb_canvas_pick_joint (self, x, y);

  if (joint)
    {
      _hb_canvas_hover_perpend (self, (Perpend){ 0 });
      _hb_canvas_say_joint (self, joint);
      return;
    }
  _hb_canvas_hover_perpend (self, _hb_canvas_pick_perpend (self, x, y));
  if (self->hovered.course)
    {
      say_hovered_perpend (self);
      return;
    }
  _hb_canvas_pick (self, x, y, &ref);
  say_hovered (self, &ref);
}

static void
motion_cb (HbCanvas *self, double x, double y)
{

  /* GTK tells again where the pointer is whenever something is laid out: nobody moved it. */
  if (self->pointer_in && x == self->pointer_x && y == self->pointer_y)
    return;
  self->pointer_x = x;
  self->pointer_y = y;
  self->pointer_in = TRUE;
  if (self->pull.kind != PULL_NONE || !_hb_canvas_get_wall_value (self) || self->client
      || _hb_canvas_is_typing (self))
    return;
  if (self->tool == HB_TOOL_SELECT && !say_strip (self, x, y))
    say_under (self, x, y);
  else
    _hb_canvas_hover_perpend (self, (Perpend){ 0 });
  follow_course (self, x, y);
  _hb_canvas_update_cursor (self);
}

static void
leave_cb (HbCanvas *self)
{
  self->pointer_in = FALSE;
  _hb_canvas_hover_perpend (self, (Perpend){ 0 });
  if (self->pull.kind == PULL_NONE && self->tool == HB_TOOL_SELECT)
    _hb_canvas_say (self, "");
}

/* On the wall, or at its rod. */
static gint32
course_at_pointer (HbCanvas *self, const Wall *wall)
{
  double x, z;
  MarkRef ref;

  if (!self->pointer_in)
    return 0;
  if (_hb_canvas_pick (self, self->pointer_x, self->pointer_y, &ref) && ref.kind == REF_COURSE)
    return ref.a;
  view_to_wall (&self->view, self->pointer_x, self->pointer_y, &x, &z);
  if (x < 0 || x > length_to_mm (wall->length) || z < 0 || z > length_to_mm (wall->height))
    return 0;
  return tool_course_at (wall, _hb_canvas_get_block (self), tool_place_of (z));
}

gint32
hb_canvas_get_course (HbCanvas *self)
{
  const Wall *wall;
  gint32 course;

  g_return_val_if_fail (HB_IS_CANVAS (self), 0);
  wall = _hb_canvas_get_wall_value (self);
  course = wall ? course_at_pointer (self, wall) : 0;
  return course ? course : self->in_course;
}

void
_hb_canvas_add_hover (HbCanvas *self)
{
  GtkEventController *motion = gtk_event_controller_motion_new ();

  g_signal_connect_swapped (motion, "enter", G_CALLBACK (motion_cb), self);
  g_signal_connect_swapped (motion, "motion", G_CALLBACK (motion_cb), self);
  g_signal_connect_swapped (motion, "leave", G_CALLBACK (leave_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), motion);
}
