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
    hb_canvas_set_piece (self, course, found->number);
}

static void
set_by_hand (HbCanvas *self, Wall *next, const Piece *piece, const char *label)
{
  const gint32 course = piece->course;
  const Length x = piece->x;

  /* What is laid may be there at once, and the piece with it be another. */
  follow (self, course, x);
  if (_hb_canvas_apply (self, edit_set_wall (next), label))
    _hb_canvas_say (self, label);
  else
    self->followed_course = 0;
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

static gboolean
can_pin (HbCanvas *self)
{
  const Layout *layout = hb_answers_get_latest (self->answers, self->wall);

  return layout && !self->client && self->pull.kind == PULL_NONE && _hb_canvas_get_wall_value (self)
         && tool_piece (layout, self->in_course, self->piece);
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

  if (!can_pin (self))
    {
      _hb_canvas_say (self, _ ("Click a piece first, or go to one with the arrow keys."));
      return;
    }
  piece = tool_piece (layout, self->in_course, self->piece);
  label
      = dup_label (deed, deed == HB_PIN_TOGGLE && wall_pin (wall, piece->course, piece->x), piece);
  if (deed == HB_PIN_TOGGLE)
    next = tool_toggle_pin (wall, block, piece);
  else if (deed == HB_PIN_SPLIT)
    next = tool_split_piece (wall, block, piece, &error);
  else
    next = tool_join_piece (wall, block, layout, piece, &error);
  if (next)
    set_by_hand (self, next, piece, label);
  else
    _hb_canvas_say (self, error->message);
}
