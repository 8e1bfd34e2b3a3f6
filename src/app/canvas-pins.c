/* canvas-pins.c - what the hand sets of the lit piece: pins it, cuts it in two, joins it with the
 * next */
#include "app/canvas-private.h"

#include <glib/gi18n.h>

#include "app/tool-pin.h"

/* The wall is laid anew, and pieces get other numbers: the one that lies there is lit. */
static void
follow (HbCanvas *self, gint32 course, Length x)
{
  self->followed_course = course;
  self->followed_x = x;
}

void
_hb_canvas_follow_piece (HbCanvas *self)
{
  const Layout *layout = hb_answers_get_latest (self->answers, self->wall);
  const gint32 course = self->followed_course;
  const Piece *found = NULL;

  if (!course || !layout)
    return;
  self->followed_course = 0;
  if (self->in_course != course)
    return;
  for (gint32 number = 1;; number++)
    {
      const Piece *piece = tool_piece (layout, course, number);

      if (!piece || piece->x > self->followed_x)
        break;
      found = piece;
    }
  if (found)
    _hb_canvas_light_piece (self, course, found->number);
}

/* `cut`: where the new perpend is, which is taken; or NULL. */
static void
set_by_hand (HbCanvas *self, Wall *next, const Piece *piece, const Length *cut, const char *label)
{
  const gint32 course = piece->course;
  const Length x = piece->x;

  /* What is laid may be there at once, and the piece with it be another. */
  _hb_canvas_light_piece (self, course, piece->number);
  follow (self, course, x);
  _hb_canvas_take_perpend (self, (Perpend){ 0 });
  if (!_hb_canvas_apply (self, edit_set_wall (next), label))
    {
      self->followed_course = 0;
      return;
    }
  _hb_canvas_say (self, label);
  if (!cut)
    return;
  /* A cut is seldom meant for the very middle: the keys move it from here. */
  _hb_canvas_take_perpend (self, (Perpend){ course, *cut });
  _hb_canvas_say_perpend (self);
}

static char *
dup_label (HbPinDeed deed, gboolean pinned, const Piece *piece)
{
  static const char *const labels[] = {
    [HB_PIN_TOGGLE] = N_ ("Pin piece %d of course %d"),
    [HB_PIN_SPLIT] = N_ ("Cut piece %d of course %d in two"),
    [HB_PIN_JOIN] = N_ ("Join piece %d of course %d with the next"),
  };
  const char *format = pinned ? _ ("Unpin piece %d of course %d") : _ (labels[deed]);

  return g_strdup_printf (format, piece->number, piece->course);
}

/* ---- the perpend that the keys move ---- */

static void
toggle_perpend (HbCanvas *self)
{
  const Wall *wall = _hb_canvas_get_wall_value (self);
  const Block *block = _hb_canvas_get_block (self);
  const Perpend perpend = self->perpend;
  g_autoptr (Wall) next = tool_toggle_perpend (wall, block, perpend.course, perpend.x);
  g_autofree char *label
      = g_strdup_printf (tool_perpend_is_pinned (wall, block, perpend.course, perpend.x)
                             ? _ ("Unpin a perpend of course %d")
                             : _ ("Pin a perpend of course %d"),
                         perpend.course);

  if (_hb_canvas_apply (self, edit_set_wall (next), label))
    _hb_canvas_say (self, label);
}

void
_hb_canvas_let_perpend_go (HbCanvas *self)
{
  const Wall *wall = _hb_canvas_get_wall_value (self);

  _hb_canvas_end_nudge (self);
  if (wall
      && tool_perpend_is_pinned (wall, _hb_canvas_get_block (self), self->perpend.course,
                                 self->perpend.x))
    toggle_perpend (self);
}

/* ---- the lit piece ---- */

/* The one to join: left of the perpend, when that is what the keys are at. */
static const Piece *
meant_piece (HbCanvas *self, const Layout *layout, HbPinDeed deed)
{
  const Piece *right
      = deed == HB_PIN_JOIN ? tool_perpend (layout, self->perpend.course, self->perpend.x) : NULL;

  return right ? tool_perpend_left (layout, right)
               : tool_piece (layout, self->in_course, self->piece);
}

static gboolean
can_pin (HbCanvas *self, HbPinDeed deed)
{
  const Layout *layout = hb_answers_get_latest (self->answers, self->wall);

  return layout && !self->client && self->pull.kind == PULL_NONE && _hb_canvas_get_wall_value (self)
         && meant_piece (self, layout, deed);
}

gboolean
_hb_canvas_says_stands (HbCanvas *self, const Piece *piece)
{
  g_autofree char *text = NULL;

  if (!piece->stands)
    return FALSE;
  text
      = g_strdup_printf (_ ("Course %d stands: its pieces stay as they are. U on a course says how "
                            "far it is laid."),
                         piece->course);
  _hb_canvas_say (self, text);
  return TRUE;
}

void
hb_canvas_pin (HbCanvas *self, HbPinDeed deed)
{
  const Wall *wall = _hb_canvas_get_wall_value (self);
  const Block *block = _hb_canvas_get_block (self);
  const Layout *layout = hb_answers_get_latest (self->answers, self->wall);
  const Piece *piece;
  g_autoptr (GError) error = NULL;
  g_autoptr (Wall) next = NULL;
  g_autofree char *label = NULL;
  Length at = 0;

  _hb_canvas_end_nudge (self);
  if (deed == HB_PIN_TOGGLE && self->perpend.course && wall && self->pull.kind == PULL_NONE)
    {
      toggle_perpend (self);
      return;
    }
  if (!can_pin (self, deed))
    {
      _hb_canvas_say (self, _ ("Click a piece first, or go to one with the arrow keys."));
      return;
    }
  piece = meant_piece (self, layout, deed);
  /* A pin that does not hold any more may go. */
  if (!(deed == HB_PIN_TOGGLE && wall_pin (wall, piece->course, piece->x))
      && _hb_canvas_says_stands (self, piece))
    return;
  label
      = dup_label (deed, deed == HB_PIN_TOGGLE && wall_pin (wall, piece->course, piece->x), piece);
  if (deed == HB_PIN_TOGGLE)
    next = tool_toggle_pin (wall, block, piece);
  else if (deed == HB_PIN_SPLIT)
    next = tool_split_piece (wall, block, piece, &at, &error);
  else
    next = tool_join_piece (wall, block, layout, piece, &error);
  if (!next)
    _hb_canvas_say (self, error->message);
  else
    set_by_hand (self, next, piece, deed == HB_PIN_SPLIT ? &at : NULL, label);
}
