/* tool-perpend.c - a perpend that a hand takes, and where it goes */
#include "app/tool-perpend.h"

#include <glib/gi18n-lib.h>

#include "app/tool-pin.h"

/* What a pinned piece keeps of its length. */
#define PIECE_LEAST LENGTH_MM (1)

static Length
joint_of (const Wall *wall, const Block *block)
{
  return laying_resolve (&wall->laying, block).head;
}

/* ---- finding it ---- */

static gboolean
are_beside (const Piece *left, const Piece *right)
{
  return left->course == right->course && left->segment == right->segment;
}

const Piece *
tool_perpend_left (const Layout *layout, const Piece *right)
{
  const Piece *left = tool_piece (layout, right->course, right->number - 1);

  return left && are_beside (left, right) ? left : NULL;
}

const Piece *
tool_perpend (const Layout *layout, gint32 course, Length x)
{
  const Piece *piece;

  for (gint32 number = 1; (piece = tool_piece (layout, course, number)); number++)
    if (piece->x == x && tool_perpend_left (layout, piece))
      return piece;
  return NULL;
}

/* How far the place is from the middle of the perpend left of the piece. */
static Length
distance (const Piece *left, const Piece *right, Length x)
{
  const Length end = left->x + left->length;

  return ABS (x - (end + (right->x - end) / 2));
}

static gboolean
is_level (const Piece *piece, Length z)
{
  return z >= piece->bottom && z <= piece->bottom + piece->height;
}

const Piece *
tool_perpend_at (const Layout *layout, Length x, Length z, Length reach, Length least)
{
  const Piece *best = NULL;
  Length nearest = reach + 1;

  for (guint i = 0; i + 1 < layout->pieces->len; i++)
    {
      const Piece *left = layout_piece (layout, i), *right = layout_piece (layout, i + 1);
      const Length room = MIN (reach, MIN (left->length, right->length) / 4);

      if (!are_beside (left, right) || !is_level (left, z) || !is_level (right, z) || room < least
          || distance (left, right, x) > room || distance (left, right, x) >= nearest)
        continue;
      nearest = distance (left, right, x);
      best = right;
    }
  return best;
}

/* ---- where it may rest ---- */

static void
add_stop (GArray *stops, Length x, StopKind kind)
{
  const Stop stop = { x, kind };

  g_array_append_val (stops, stop);
}

/* The run of a perpend and what is fixed in it, nearest to it on either side. */
typedef struct
{
  Length left, right; /* the face that units begin at; the face that they end at */
  Length from, to;    /* the ends of the run */
} Span;

static void
narrow (Span *span, const Piece *piece, Length x, Length joint)
{
  const Length end = piece->x + piece->length;

  if (piece->pinned == PINNED_PIECE && piece->x == x)
    span->right = MIN (span->right, end);
  if (piece->pinned == PINNED_NOT || piece->x == x)
    return;
  if (piece->x < x)
    span->left = MAX (span->left, piece->x);
  else
    span->right = MIN (span->right, piece->x - joint);
  if (piece->pinned == PINNED_PIECE && end + joint < x)
    span->left = MAX (span->left, end + joint);
}

/* FALSE: no perpend is laid there. */
static gboolean
span_of (const Layout *layout, gint32 course, Length x, Length joint, Span *span)
{
  const Piece *right = tool_perpend (layout, course, x), *piece;

  if (!right)
    return FALSE;
  *span = (Span){ right->x, right->x, G_MAXINT32, 0 };
  for (gint32 number = 1; (piece = tool_piece (layout, course, number)); number++)
    if (piece->segment == right->segment)
      {
        span->from = MIN (span->from, piece->x);
        span->to = MAX (span->to, piece->x + piece->length);
      }
  span->left = span->from;
  span->right = span->to;
  for (gint32 number = 1; (piece = tool_piece (layout, course, number)); number++)
    if (piece->segment == right->segment)
      narrow (span, piece, x, joint);
  return TRUE;
}

static void
add_whole_units (GArray *stops, const Span *span, Length pitch, Length joint)
{
  for (Length x = span->left + pitch; pitch > 0 && x < span->to; x += pitch)
    add_stop (stops, x, STOP_WHOLE_LEFT);
  for (Length x = span->right + joint - pitch; pitch > 0 && x > span->from; x -= pitch)
    add_stop (stops, x, STOP_WHOLE_RIGHT);
}

/* The middle of a perpend over the middle of each whole unit, the face on a whole millimetre. */
static void
add_halves (GArray *stops, const Layout *layout, gint32 course, const Span *span, Length joint,
            StopKind kind)
{
  const Piece *piece;

  for (gint32 number = 1; (piece = tool_piece (layout, course, number)); number++)
    {
      const Length x = (piece->x + (piece->length + joint) / 2) / LENGTH_MM (1) * LENGTH_MM (1);

      if (piece->shape == PIECE_WHOLE && x > span->from && x < span->to)
        add_stop (stops, x, kind);
    }
}

static void
add_perpends (GArray *stops, const Layout *layout, gint32 course, const Span *span)
{
  const Piece *piece;

  for (gint32 number = 2; (piece = tool_piece (layout, course, number)); number++)
    if (tool_perpend_left (layout, piece) && piece->x > span->from && piece->x < span->to)
      add_stop (stops, piece->x, STOP_GRID);
}

static gint
by_place (gconstpointer a, gconstpointer b)
{
  const Stop *p = a, *q = b;

  return p->x != q->x ? (p->x < q->x ? -1 : 1) : (gint) p->kind - (gint) q->kind;
}

/* Of several at a place the first kind is told. */
static void
drop_doubles (GArray *stops)
{
  for (guint i = stops->len; i-- > 1;)
    if (g_array_index (stops, Stop, i).x == g_array_index (stops, Stop, i - 1).x)
      g_array_remove_index (stops, i);
}

GArray *
tool_perpend_stops (const Layout *layout, const Wall *wall, const Block *block, gint32 course,
                    Length x)
{
  GArray *stops = g_array_new (FALSE, FALSE, sizeof (Stop));
  const Length joint = joint_of (wall, block);
  Span span;

  add_stop (stops, x, STOP_AS_LAID);
  if (!span_of (layout, course, x, joint, &span))
    return stops;
  add_whole_units (stops, &span, block->length + joint, joint);
  add_halves (stops, layout, course - 1, &span, joint, STOP_HALF_BELOW);
  add_halves (stops, layout, course + 1, &span, joint, STOP_HALF_ABOVE);
  add_perpends (stops, layout, course - 2, &span);
  add_perpends (stops, layout, course + 2, &span);
  g_array_sort (stops, by_place);
  drop_doubles (stops);
  return stops;
}

static Length
rounded (Length value, Length step)
{
  return MAX (value + step / 2, 0) / step * step;
}

Stop
tool_perpend_rest (const GArray *stops, Length x, const Grip *grip)
{
  Stop best = { rounded (x, grip->step), STOP_NONE };
  Length nearest = grip->reach;

  for (guint i = 0; i < stops->len; i++)
    {
      const Stop *stop = &g_array_index (stops, Stop, i);

      if (ABS (stop->x - x) > nearest || grip->reach == 0
          || (best.kind != STOP_NONE && ABS (stop->x - x) == nearest && stop->kind > best.kind))
        continue;
      nearest = ABS (stop->x - x);
      best = *stop;
    }
  return best;
}

gboolean
tool_perpend_next_stop (const GArray *stops, Length x, int direction, Stop *out)
{
  for (guint i = 0; i < stops->len; i++)
    {
      const Stop *stop = &g_array_index (stops, Stop, direction > 0 ? i : stops->len - 1 - i);

      if (direction > 0 ? stop->x > x : stop->x < x)
        {
          *out = *stop;
          return TRUE;
        }
    }
  return FALSE;
}

/* ---- the pins that speak of it ---- */

static gboolean
begins_there (const Pin *pin, gint32 course, Length x)
{
  return pin->course == course && pin->x == x;
}

static gboolean
ends_there (const Pin *pin, gint32 course, Length x, Length joint)
{
  return pin->course == course && pin->length > 0 && pin->x + pin->length + joint == x;
}

gboolean
tool_perpend_is_pinned (const Wall *wall, const Block *block, gint32 course, Length x)
{
  const Length joint = joint_of (wall, block);

  for (guint i = 0; i < wall->pins->len; i++)
    if (begins_there (wall_pin_at (wall, i), course, x)
        || ends_there (wall_pin_at (wall, i), course, x, joint))
      return TRUE;
  return FALSE;
}

Wall *
tool_toggle_perpend (const Wall *wall, const Block *block, gint32 course, Length x)
{
  const Length joint = joint_of (wall, block);
  const Pin pin = { .course = course, .x = x };
  Wall *next = wall_copy (wall);

  for (guint i = next->pins->len; i-- > 0;)
    if (begins_there (wall_pin_at (next, i), course, x)
        || ends_there (wall_pin_at (next, i), course, x, joint))
      g_array_remove_index (next->pins, i);
  if (next->pins->len == wall->pins->len)
    wall_put_pin (next, &pin);
  return next;
}

const LaidPin *
tool_perpend_unmet (const Layout *layout, const Wall *wall, const Block *block, gint32 course,
                    Length x)
{
  const Length joint = joint_of (wall, block);

  for (guint i = 0; i < layout->pins->len; i++)
    {
      const LaidPin *laid = &g_array_index (layout->pins, LaidPin, i);
      const Pin pin = { .course = laid->course, .x = laid->x, .length = laid->length };

      if (laid->fate != PIN_MET
          && (begins_there (&pin, course, x) || ends_there (&pin, course, x, joint)))
        return laid;
    }
  return NULL;
}

/* ---- moving it ---- */

/* So that every pinned piece beside the perpend has a length that a pin may have. */
static Length
within_pins (const Wall *wall, gint32 course, Length x, Length to, Length joint)
{
  to = CLAMP (to, 0, wall->length);
  for (guint i = 0; i < wall->pins->len; i++)
    {
      const Pin *pin = wall_pin_at (wall, i);
      const Length end = pin->x + pin->length;

      if (ends_there (pin, course, x, joint))
        to = CLAMP (to, pin->x + PIECE_LEAST + joint, pin->x + PIN_MAX_LENGTH + joint);
      if (begins_there (pin, course, x) && pin->length > 0)
        to = CLAMP (to, MAX (0, end - PIN_MAX_LENGTH), end - PIECE_LEAST);
    }
  return to;
}

/* Puts the pin in the place of one that fixes the same face and no more. */
static void
put_over (Wall *wall, const Pin *pin)
{
  const Pin *other = wall_pin (wall, pin->course, pin->x);

  if (!other || other->length == 0)
    wall_put_pin (wall, pin);
}

/* The pin that begins at the perpend, or a new one where none ends there either. */
static void
move_beginning (Wall *wall, gint32 course, Length x, Length to, gboolean held)
{
  const Pin *there = wall_pin (wall, course, x);
  Pin moved = there ? *there : (Pin){ .course = course };

  if (moved.length > 0)
    moved.length -= to - x;
  moved.x = to;
  moved.foreign = there ? foreign_copy (&there->foreign) : moved.foreign;
  if (there && !wall_pin (wall, course, to))
    {
      Pin *own = &g_array_index (wall->pins, Pin, there - wall_pin_at (wall, 0));

      pin_clear (own);
      *own = moved;
      return;
    }
  if (there || !held)
    put_over (wall, &moved);
  if (there)
    wall_take_pin (wall, course, x);
  pin_clear (&moved);
}

/* TRUE when there is a pin that ends there. */
static gboolean
move_ends (Wall *wall, gint32 course, Length x, Length to, Length joint)
{
  gboolean any = FALSE;

  for (guint i = 0; i < wall->pins->len; i++)
    {
      Pin *pin = &g_array_index (wall->pins, Pin, i);

      if (!ends_there (pin, course, x, joint))
        continue;
      pin->length += to - x;
      any = TRUE;
    }
  return any;
}

Wall *
tool_move_perpend (const Wall *wall, const Block *block, gint32 course, Length x, Length *to)
{
  const Length joint = joint_of (wall, block);
  g_autoptr (Wall) next = wall_copy (wall);
  const Pin *own = wall_pin (wall, course, x), *other;
  gboolean held;

  *to = within_pins (wall, course, x, *to, joint);
  other = wall_pin (wall, course, *to);
  /* Of two pinned pieces that begin at one place none can give way. */
  if (*to == x || (own && other && own->length > 0 && other->length > 0))
    return wall_copy (wall);
  held = move_ends (next, course, x, *to, joint);
  move_beginning (next, course, x, *to, held);
  return g_steal_pointer (&next);
}

/* The piece that was typed is pinned as one; its end says where the perpend is. */
static void
pin_left_piece (Wall *wall, const Piece *left, Length length, Length to)
{
  const Pin whole = { .course = left->course, .x = left->x, .length = length };
  const Pin *after = wall_pin (wall, left->course, to);

  if (after && after->length == 0)
    wall_take_pin (wall, left->course, to);
  wall_put_pin (wall, &whole);
}

Wall *
tool_set_left_piece (const Wall *wall, const Block *block, const Layout *layout, gint32 course,
                     Length x, Length length, Length *to, GError **error)
{
  const Piece *right = tool_perpend (layout, course, x);
  const Piece *left = right ? tool_perpend_left (layout, right) : NULL;
  g_autoptr (Wall) next = NULL;

  if (!left)
    {
      g_set_error_literal (error, TOOL_PIN_ERROR, TOOL_PIN_ERROR_ALONE, _ ("No piece ends there."));
      return NULL;
    }
  if (length < PIECE_LEAST || length > wall->length - left->x)
    {
      g_set_error_literal (error, TOOL_PIN_ERROR, TOOL_PIN_ERROR_SHORT,
                           _ ("A piece is 1 mm long at least, and ends within the wall."));
      return NULL;
    }
  *to = left->x + length + joint_of (wall, block);
  next = tool_move_perpend (wall, block, course, x, to);
  length = *to - joint_of (wall, block) - left->x;
  pin_left_piece (next, left, length, *to);
  return g_steal_pointer (&next);
}
