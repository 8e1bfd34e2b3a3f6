/* canvas-perpend.c - perpends: lit under the pointer, taken, moved by pointer and keys */
#include "app/canvas-private.h"

#include <glib/gi18n.h>

#include "advice/pins.h"

/* How near a pointer must be to a perpend, px; beside short pieces less, but no less than this. */
#define REACH 4.0
#define REACH_LEAST 1.5
/* Courses lower than this, px, have none to take. */
#define COURSE_LEAST 7.0

static gboolean
is_one (const Perpend *perpend)
{
  return perpend->course > 0;
}

static gboolean
is_same (const Perpend *a, const Perpend *b)
{
  return a->course == b->course && a->x == b->x;
}

/* The layout of just what is shown; NULL while it is being made. */
static const Layout *
layout_now (HbCanvas *self)
{
  return hb_answers_get_layout (self->answers, self->wall);
}

static void
relight (HbCanvas *self)
{
  self->stale_lit = TRUE;
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

/* ---- under the pointer ---- */

/* Jambs, edges, handles and what lies over the wall are stronger. */
static gboolean
is_over_pieces (HbCanvas *self, double x, double y)
{
  MarkRef ref;

  return _hb_canvas_pick (self, x, y, &ref) && (ref.kind == REF_PIECE || ref.kind == REF_STEEL);
}

Perpend
_hb_canvas_pick_perpend (HbCanvas *self, double x, double y)
{
  const Layout *layout = layout_now (self);
  const Block *block = _hb_canvas_get_block (self);
  const double scale = self->view.scale;
  const Piece *right;
  double at, z;
  Length joint;

  if (!layout || !block || self->client || self->tool != HB_TOOL_SELECT
      || length_to_mm (block->height) * scale < COURSE_LEAST || !is_over_pieces (self, x, y))
    return (Perpend){ 0 };
  joint = laying_resolve (&_hb_canvas_get_wall_value (self)->laying, block).head;
  view_to_wall (&self->view, x, y, &at, &z);
  right = tool_perpend_at (layout, tool_place_of (at), tool_place_of (z),
                           length_from_mm (REACH / scale) + joint / 2,
                           length_from_mm (REACH_LEAST / scale));
  /* What stands is not moved any more. */
  return right && !right->stands ? (Perpend){ right->course, right->x } : (Perpend){ 0 };
}

void
_hb_canvas_hover_perpend (HbCanvas *self, Perpend perpend)
{
  if (is_same (&self->hovered, &perpend))
    return;
  self->hovered = perpend;
  relight (self);
}

void
_hb_canvas_take_perpend (HbCanvas *self, Perpend perpend)
{
  if (is_same (&self->perpend, &perpend))
    return;
  _hb_canvas_end_nudge (self);
  if (perpend.course)
    _hb_canvas_hold_corner (self, NULL);
  self->perpend = perpend;
  _hb_canvas_update_holds (self);
  relight (self);
}

/* ---- what is lit ---- */

static PerpendMark
mark_of (HbCanvas *self, const Perpend *perpend)
{
  const Layout *layout = hb_answers_get_latest (self->answers, self->wall);
  const Piece *right = layout ? tool_perpend (layout, perpend->course, perpend->x) : NULL;

  return (PerpendMark){
    .course = perpend->course,
    .x = perpend->x,
    .left = right ? tool_perpend_left (layout, right) : NULL,
    .right = right,
  };
}

/* Whether it is known that it cannot be there. */
static const LaidPin *
unmet (HbCanvas *self, const Perpend *perpend)
{
  const Layout *layout = layout_now (self);
  const Wall *wall = _hb_canvas_get_wall_value (self);

  return layout && wall ? tool_perpend_unmet (layout, wall, _hb_canvas_get_block (self),
                                              perpend->course, perpend->x)
                        : NULL;
}

guint
_hb_canvas_lit_perpends (HbCanvas *self, PerpendMark marks[2])
{
  guint n = 0;

  if (is_one (&self->hovered) && !is_same (&self->hovered, &self->perpend)
      && self->pull.kind == PULL_NONE)
    marks[n++] = mark_of (self, &self->hovered);
  if (!is_one (&self->perpend))
    return n;
  marks[n] = mark_of (self, &self->perpend);
  marks[n].sizes = TRUE;
  marks[n].guide = self->move.wall && self->move.stop != STOP_NONE;
  marks[n].unmet = unmet (self, &self->perpend) != NULL;
  return n + 1;
}

/* ---- words ---- */

char *
_hb_canvas_dup_perpend_text (HbCanvas *self, const Perpend *perpend)
{
  const Wall *wall = _hb_canvas_get_wall_value (self);
  const Block *block = _hb_canvas_get_block (self);
  const PerpendMark mark = mark_of (self, perpend);
  const LaidPin *pin = unmet (self, perpend);
  char x[LENGTH_TEXT_SIZE], left[LENGTH_TEXT_SIZE], right[LENGTH_TEXT_SIZE];

  length_text (perpend->x, x);
  if (pin)
    {
      g_autofree char *reason = pin_dup_reason (pin, layout_now (self), block);

      /* Translators: the last %s is a reason, the end of the sentence */
      return g_strdup_printf (_ ("Perpend of course %d at %s mm cannot be met: %s"),
                              perpend->course, x, reason);
    }
  if (!mark.right)
    return g_strdup_printf (_ ("Perpend of course %d at %s mm"), perpend->course, x);
  return g_strdup_printf (wall && tool_perpend_is_pinned (wall, block, perpend->course, perpend->x)
                              ? _ ("Perpend of course %d at %s mm, pinned: %s mm left, %s mm right")
                              : _ ("Perpend of course %d at %s mm: %s mm left, %s mm right"),
                          perpend->course, x, length_text (mark.left->length, left),
                          length_text (mark.right->length, right));
}

static char *
dup_stop_text (const Perpend *perpend, StopKind kind)
{
  switch (kind)
    {
    case STOP_AS_LAID:
      return g_strdup (_ ("where it was"));
    case STOP_WHOLE_LEFT:
      return g_strdup (_ ("whole blocks left of it"));
    case STOP_WHOLE_RIGHT:
      return g_strdup (_ ("whole blocks right of it"));
    case STOP_HALF_BELOW:
      return g_strdup_printf (_ ("half bond over course %d"), perpend->course - 1);
    case STOP_HALF_ABOVE:
      return g_strdup_printf (_ ("half bond under course %d"), perpend->course + 1);
    case STOP_GRID:
      return g_strdup (_ ("in line with a perpend two courses off"));
    case STOP_NONE:
    default:
      return NULL;
    }
}

/* What the hand can do next, behind what is. */
static char *
dup_hint (HbCanvas *self)
{
  g_autofree char *stop = NULL;

  if (!self->move.wall)
    return g_strdup (_ ("arrow keys move it, Enter types the piece left of it"));
  stop = dup_stop_text (&self->perpend, self->move.stop);
  if (stop)
    return g_steal_pointer (&stop);
  return g_strdup (self->pull.kind == PULL_PERPEND ? _ ("hold Alt to place it freely") : "");
}

void
_hb_canvas_say_perpend (HbCanvas *self)
{
  g_autofree char *text = _hb_canvas_dup_perpend_text (self, &self->perpend);
  g_autofree char *hint = dup_hint (self);
  g_autofree char *all = *hint && !unmet (self, &self->perpend)
                             ? g_strdup_printf ("%s · %s", text, hint)
                             : g_strdup (text);

  _hb_canvas_say (self, all);
}

char *
_hb_canvas_dup_perpend_label (const Perpend *perpend)
{
  return g_strdup_printf (_ ("Move a perpend of course %d"), perpend->course);
}

/* ---- moving ---- */

void
_hb_canvas_begin_perpend (HbCanvas *self, Perpend perpend)
{
  const Wall *wall = _hb_canvas_get_wall_value (self);
  const Layout *layout = hb_answers_get_latest (self->answers, self->wall);

  _hb_canvas_end_perpend (self);
  if (!wall || !layout)
    return;
  self->move.from = perpend;
  self->move.wall = wall_ref (wall);
  self->move.stops
      = tool_perpend_stops (layout, wall, _hb_canvas_get_block (self), perpend.course, perpend.x);
}

void
_hb_canvas_end_perpend (HbCanvas *self)
{
  g_clear_pointer (&self->move.wall, wall_unref);
  g_clear_pointer (&self->move.stops, g_array_unref);
  self->move = (PerpendMove){ 0 };
}

/* What is not moved is no change, and no step. */
static void
show_moved (HbCanvas *self, const Stop *stop)
{
  const Perpend from = self->move.from;
  Length to = stop->x;
  g_autoptr (Wall) next
      = tool_move_perpend (self->move.wall, _hb_canvas_get_block (self), from.course, from.x, &to);
  g_autoptr (Edit) edit = edit_set_wall (next);
  g_autoptr (GError) error = NULL;

  /* Before the wall is laid: what is told of it is told of this place. */
  self->perpend = (Perpend){ from.course, to };
  self->move.stop = to == stop->x ? stop->kind : STOP_NONE;
  if (to == from.x)
    hb_document_drop_preview (self->document);
  else if (!hb_document_preview (self->document, edit, &error))
    _hb_canvas_say (self, error->message);
  relight (self);
  if (!error)
    _hb_canvas_say_perpend (self);
}

void
_hb_canvas_move_perpend (HbCanvas *self, Length x, const Grip *grip)
{
  const Stop stop = tool_perpend_rest (self->move.stops, x, grip);

  show_moved (self, &stop);
}

/* With Ctrl to the next stop, or by half a block where there is none. */
static Stop
nudged (HbCanvas *self, int right, GdkModifierType state)
{
  const Length by = state & GDK_CONTROL_MASK ? _hb_canvas_get_block (self)->length / 2
                    : state & GDK_SHIFT_MASK ? LENGTH_MM (10)
                                             : LENGTH_MM (1);
  Stop stop;

  if ((state & GDK_CONTROL_MASK)
      && tool_perpend_next_stop (self->move.stops, self->perpend.x, right, &stop))
    return stop;
  return (Stop){ self->perpend.x + right * by, STOP_NONE };
}

void
_hb_canvas_nudge_perpend (HbCanvas *self, int right, GdkModifierType state)
{
  Stop stop;

  if (!self->move.wall)
    _hb_canvas_begin_perpend (self, self->perpend);
  if (!self->move.wall)
    return;
  stop = nudged (self, right, state);
  self->nudging = TRUE;
  show_moved (self, &stop);
}

/* ---- after laying ---- */

static gboolean
is_there (HbCanvas *self, const Layout *layout, const Perpend *perpend)
{
  const Wall *wall = _hb_canvas_get_wall_value (self);

  return tool_perpend (layout, perpend->course, perpend->x)
         || (wall
             && tool_perpend_is_pinned (wall, _hb_canvas_get_block (self), perpend->course,
                                        perpend->x));
}

/* After a step back the perpend is elsewhere, but seldom far. */
static Perpend
nearest (HbCanvas *self, const Layout *layout, const Perpend *perpend)
{
  Length reach = _hb_canvas_get_block (self)->length / 2;
  Perpend found = { 0 };
  const Piece *piece;

  for (gint32 number = 2; (piece = tool_piece (layout, perpend->course, number)); number++)
    if (tool_perpend_left (layout, piece) && ABS (piece->x - perpend->x) < reach)
      {
        reach = ABS (piece->x - perpend->x);
        found = (Perpend){ perpend->course, piece->x };
      }
  return found;
}

void
_hb_canvas_perpends_laid (HbCanvas *self)
{
  const Layout *layout = layout_now (self);

  if (!layout)
    return;
  if (is_one (&self->hovered) && !tool_perpend (layout, self->hovered.course, self->hovered.x))
    _hb_canvas_hover_perpend (self, (Perpend){ 0 });
  if (!is_one (&self->perpend))
    return;
  if (!self->move.wall && !is_there (self, layout, &self->perpend))
    _hb_canvas_take_perpend (self, nearest (self, layout, &self->perpend));
  _hb_canvas_update_holds (self);
  if (is_one (&self->perpend))
    _hb_canvas_say_perpend (self);
}

/* ---- from the lit piece ---- */

static const Piece *
right_of (const Layout *layout, const Piece *piece)
{
  const Piece *next = tool_piece (layout, piece->course, piece->number + 1);

  return next && tool_perpend_left (layout, next) ? next : NULL;
}

void
hb_canvas_take_perpend (HbCanvas *self)
{
  const Layout *layout = layout_now (self);
  const Piece *piece, *left, *right;

  g_return_if_fail (HB_IS_CANVAS (self));
  piece = layout && !self->client && self->pull.kind == PULL_NONE
              ? tool_piece (layout, self->in_course, self->piece)
              : NULL;
  if (!piece)
    {
      _hb_canvas_say (self, _ ("Click a piece first, or go to one with the arrow keys."));
      return;
    }
  if (_hb_canvas_says_stands (self, piece))
    return;
  left = tool_perpend_left (layout, piece) ? piece : NULL;
  right = right_of (layout, piece);
  if (right && (!left || (self->perpend.course == left->course && self->perpend.x == left->x)))
    left = right;
  if (!left)
    {
      _hb_canvas_say (self, _ ("This piece has no perpend: it fills its run alone."));
      return;
    }
  _hb_canvas_take_perpend (self, (Perpend){ left->course, left->x });
  _hb_canvas_say_perpend (self);
}
