/* tool-pin.c - what a hand pins, parts and joins */
#include "app/tool-pin.h"

#include <glib/gi18n-lib.h>

#include "app/tool.h"

G_DEFINE_QUARK (tool - pin - error - quark, tool_pin_error)

/* What parting leaves on each side, at least. */
#define PART_LEAST LENGTH_MM (1)

static Length
joint_of (const Wall *wall, const Block *block)
{
  return laying_resolve (&wall->laying, block).head;
}

/* ---- pins that contradict each other ---- */

/* The faces that a pin fixes: where it begins, and where the piece after it does. */
static guint
faces_of (const Pin *pin, Length joint, Length faces[2])
{
  faces[0] = pin->x;
  faces[1] = pin->x + pin->length + joint;
  return pin->length > 0 ? 2 : 1;
}

static gboolean
is_within (const Pin *pin, Length face, Length joint)
{
  return pin->length > 0 && face > pin->x && face < pin->x + pin->length + joint;
}

/* Two faces are one, or leave room for a joint and a piece between them. */
static gboolean
contradict (const Pin *a, const Pin *b, Length joint)
{
  Length of_a[2], of_b[2];
  const guint n_a = faces_of (a, joint, of_a), n_b = faces_of (b, joint, of_b);

  if (a->course != b->course)
    return FALSE;
  for (guint i = 0; i < n_a; i++)
    for (guint k = 0; k < n_b; k++)
      if ((of_a[i] != of_b[k] && ABS (of_a[i] - of_b[k]) <= joint) || is_within (a, of_b[k], joint)
          || is_within (b, of_a[i], joint))
        return TRUE;
  return FALSE;
}

static Wall *
with_pin (const Wall *wall, const Pin *pin, Length joint)
{
  Wall *next = wall_copy (wall);

  for (guint i = next->pins->len; i-- > 0;)
    if (contradict (wall_pin_at (next, i), pin, joint))
      g_array_remove_index (next->pins, i);
  wall_put_pin (next, pin);
  return next;
}

/* ---- pinning, parting, joining ---- */

Wall *
tool_toggle_pin (const Wall *wall, const Block *block, const Piece *piece)
{
  const Pin pin = { .course = piece->course, .x = piece->x, .length = piece->length };
  g_autoptr (Wall) next = wall_copy (wall);

  if (wall_take_pin (next, piece->course, piece->x))
    return g_steal_pointer (&next);
  return with_pin (wall, &pin, joint_of (wall, block));
}

Wall *
tool_split_piece (const Wall *wall, const Block *block, const Piece *piece, Length *at,
                  GError **error)
{
  const Length joint = joint_of (wall, block), half = (piece->length - joint) / 2;
  Pin pin = { .course = piece->course };

  if (half < 2 * PART_LEAST)
    {
      g_set_error_literal (error, TOOL_PIN_ERROR, TOOL_PIN_ERROR_SHORT,
                           _ ("The piece is too short to be cut in two."));
      return NULL;
    }
  *at = pin.x = (piece->x + half + joint) / LENGTH_MM (1) * LENGTH_MM (1);
  return with_pin (wall, &pin, joint);
}

/* The piece that only a joint parts from this one; NULL: none. */
static const Piece *
beside (const Layout *layout, const Piece *piece, Length joint)
{
  const Piece *next = tool_piece (layout, piece->course, piece->number + 1);

  return next && next->segment == piece->segment && next->x == piece->x + piece->length + joint
             ? next
             : NULL;
}

Wall *
tool_join_piece (const Wall *wall, const Block *block, const Layout *layout, const Piece *piece,
                 GError **error)
{
  const Length joint = joint_of (wall, block);
  const Piece *next = beside (layout, piece, joint);
  Pin pin = { .course = piece->course, .x = piece->x };
  char is[LENGTH_TEXT_SIZE], most[LENGTH_TEXT_SIZE];

  if (!next)
    {
      g_set_error_literal (error, TOOL_PIN_ERROR, TOOL_PIN_ERROR_ALONE,
                           _ ("No piece lies to the right of this one to join it with."));
      return NULL;
    }
  pin.length = next->x + next->length - piece->x;
  if (pin.length > block->length)
    {
      g_set_error (error, TOOL_PIN_ERROR, TOOL_PIN_ERROR_LONG,
                   _ ("Joined, the two pieces are %s mm long; the block is only %s mm."),
                   length_text (pin.length, is), length_text (block->length, most));
      return NULL;
    }
  return with_pin (wall, &pin, joint);
}
