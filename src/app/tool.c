#include "app/tool.h"

#include <math.h>

#include "app/tool-pin.h"
#include "bond/gauge.h"

/* The least size that a hand gives an opening. */
#define LEAST LENGTH_MM (50)
/* How near, in pixels, a height must come to a course to be set on it. */
#define REACH_PIXELS 4.5

typedef struct
{
  Length from, to;
} Range;

static Length
rounded (Length value, Length step)
{
  const Length half = value >= 0 ? step / 2 : -(step / 2);

  return (value + half) / step * step;
}

Grip
tool_grip (double scale)
{
  static const int steps_mm[] = { 1, 5, 10, 50 };
  const double mm_per_pixel = 1.0 / scale;
  Grip grip = { .step = LENGTH_MM (1) };

  for (guint i = 0; i < G_N_ELEMENTS (steps_mm); i++)
    if (steps_mm[i] <= mm_per_pixel)
      grip.step = LENGTH_MM (steps_mm[i]);
  grip.reach = length_from_mm (MIN (REACH_PIXELS * mm_per_pixel, 90.0));
  return grip;
}

Length
tool_place_of (double mm)
{
  return length_from_mm (CLAMP (mm, -500000, 500000));
}

/* ---- courses ---- */

Length
tool_next_course (const Wall *wall, const Block *block, Length z, gboolean up)
{
  const Laying laying = laying_resolve (&wall->laying, block);
  gint32 n = gauge_nearest_top (wall, block, &laying, z);
  Length top = n ? gauge_top (wall, block, &laying, n) : gauge_bottom (wall, block, &laying, 1);

  if (up && top <= z)
    n++;
  if (!up && top >= z)
    n--;
  if (n < 0)
    return 0;
  top = n ? gauge_top (wall, block, &laying, n) : gauge_bottom (wall, block, &laying, 1);
  return MIN (top, wall->height);
}

gint32
tool_course_at (const Wall *wall, const Block *block, Length z)
{
  const Laying laying = laying_resolve (&wall->laying, block);
  const gint32 n = gauge_n_courses (wall, block, &laying);

  for (gint32 i = 1; i < n; i++)
    if (z < gauge_top (wall, block, &laying, i))
      return i;
  return MAX (n, 1);
}

/* The top of a course within reach; else z, rounded. */
static Length
snap_height (const Wall *wall, const Block *block, Length z, const Grip *grip, gboolean *snapped)
{
  const Laying laying = laying_resolve (&wall->laying, block);
  const gint32 n = gauge_nearest_top (wall, block, &laying, z);
  const Length top
      = n ? gauge_top (wall, block, &laying, n) : gauge_bottom (wall, block, &laying, 1);

  *snapped = ABS (top - z) <= grip->reach && top <= wall->height;
  return *snapped ? top : rounded (z, grip->step);
}

/* ---- pieces ---- */

const Piece *
tool_piece (const Layout *layout, gint32 course, gint32 number)
{
  const Course *row;

  if (course < 1 || course > (gint32) layout->courses->len)
    return NULL;
  row = layout_course (layout, (guint) course - 1);
  if (number < 1 || number > row->n_pieces)
    return NULL;
  return layout_piece (layout, (guint) (row->first + number - 1));
}

/* How much of the length of both lies one over the other; less than 0: how far they are apart. */
static Length
shared (const Piece *a, const Piece *b)
{
  return MIN (a->x + a->length, b->x + b->length) - MAX (a->x, b->x);
}

const Piece *
tool_next_piece (const Layout *layout, const Piece *from, int right, int up)
{
  const Piece *best = NULL;

  if (!from)
    return layout->pieces->len ? layout_piece (layout, 0) : NULL;
  if (right)
    best = tool_piece (layout, from->course, from->number + right);
  for (gint32 number = 1; up; number++)
    {
      const Piece *piece = tool_piece (layout, from->course + up, number);

      if (!piece)
        break;
      if (!best || shared (piece, from) > shared (best, from))
        best = piece;
    }
  return best ? best : from;
}

/* ---- room between the others ---- */

/* Where an opening of those heights may lie along the wall, around `seed`. */
static Range
room_along (const Wall *wall, OpeningId self, Length sill, Length head, Length seed)
{
  Range room = { 0, wall->length };

  for (guint i = 0; i < wall->openings->len; i++)
    {
      const Opening *other = wall_opening_at (wall, i);

      if (other->id.n == self.n || other->sill >= head || opening_head (other) <= sill)
        continue;
      if (opening_right (other) <= seed)
        room.from = MAX (room.from, opening_right (other));
      else if (other->x >= seed)
        room.to = MIN (room.to, other->x);
      else
        room.to = MIN (room.to, seed);
    }
  return room;
}

static Range
room_up (const Wall *wall, OpeningId self, Length left, Length right, Length seed)
{
  Range room = { foot_highest (wall->feet, left, right), wall_top_lowest (wall, left, right) };

  for (guint i = 0; i < wall->openings->len; i++)
    {
      const Opening *other = wall_opening_at (wall, i);

      if (other->id.n == self.n || other->x >= right || opening_right (other) <= left)
        continue;
      if (opening_head (other) <= seed)
        room.from = MAX (room.from, opening_head (other));
      else if (other->sill >= seed)
        room.to = MIN (room.to, other->sill);
    }
  return room;
}

/* CLAMP, but the low bound wins when they cross. */
static Length
within (Length value, Length low, Length high)
{
  return MAX (low, MIN (value, high));
}

static gboolean
pulls_left (RefPart part)
{
  return part == PART_LEFT || part == PART_TOP_LEFT || part == PART_BOTTOM_LEFT;
}

static gboolean
pulls_right (RefPart part)
{
  return part == PART_RIGHT || part == PART_TOP_RIGHT || part == PART_BOTTOM_RIGHT;
}

static gboolean
pulls_sill (RefPart part)
{
  return part == PART_SILL || part == PART_BOTTOM_LEFT || part == PART_BOTTOM_RIGHT;
}

static gboolean
pulls_head (RefPart part)
{
  return part == PART_HEAD || part == PART_TOP_LEFT || part == PART_TOP_RIGHT;
}

static void
pull_along (const Wall *wall, Opening *opening, RefPart part, Length dx, const Grip *grip)
{
  const Length right = opening_right (opening);
  const Range room = room_along (wall, opening->id, opening->sill, opening_head (opening),
                                 opening->x + opening->width / 2);

  if (part == PART_BODY)
    opening->x
        = within (rounded (opening->x + dx, grip->step), room.from, room.to - opening->width);
  else if (pulls_left (part))
    {
      opening->x = within (rounded (opening->x + dx, grip->step), room.from, right - LEAST);
      opening->width = right - opening->x;
    }
  else if (pulls_right (part))
    opening->width
        = within (rounded (right + dx, grip->step), opening->x + LEAST, room.to) - opening->x;
}

/* A body's sill goes to a course, or else its head does. */
static Length
body_sill (const Wall *wall, const Block *block, const Opening *opening, Length dz,
           const Grip *grip)
{
  gboolean snapped;
  const Length sill = snap_height (wall, block, opening->sill + dz, grip, &snapped);
  Length head;

  if (snapped)
    return sill;
  head = snap_height (wall, block, opening_head (opening) + dz, grip, &snapped);
  return snapped ? head - opening->height : sill;
}

static void
pull_up (const Wall *wall, const Block *block, Opening *opening, RefPart part, Length dz,
         const Grip *grip)
{
  const Length head = opening_head (opening);
  const Range room = room_up (wall, opening->id, opening->x, opening_right (opening),
                              opening->sill + opening->height / 2);
  gboolean snapped;

  if (part == PART_BODY && opening->kind != OPENING_DOOR && dz != 0)
    opening->sill
        = within (body_sill (wall, block, opening, dz, grip), room.from, room.to - opening->height);
  else if (pulls_sill (part))
    {
      Length sill = snap_height (wall, block, opening->sill + dz, grip, &snapped);

      opening->sill = within (sill, room.from, head - LEAST);
      opening->height = head - opening->sill;
    }
  else if (pulls_head (part))
    opening->height = within (snap_height (wall, block, head + dz, grip, &snapped),
                              opening->sill + LEAST, room.to)
                      - opening->sill;
}

static gboolean
is_clear (const Wall *wall, const Opening *opening)
{
  if (opening->x < 0 || opening->sill < 0 || opening_right (opening) > wall->length
      || opening_head (opening) > wall->height)
    return FALSE;
  for (guint i = 0; i < wall->openings->len; i++)
    {
      const Opening *other = wall_opening_at (wall, i);

      if (other->id.n != opening->id.n && other->x < opening_right (opening)
          && opening->x < opening_right (other) && other->sill < opening_head (opening)
          && opening->sill < opening_head (other))
        return FALSE;
    }
  return TRUE;
}

/* Whether it stands on the footing and under the top all along its width. */
static gboolean
is_in_face (const Wall *wall, const Opening *opening)
{
  return opening->x >= 0 && opening_right (opening) <= wall->length
         && opening->sill >= foot_highest (wall->feet, opening->x, opening_right (opening))
         && opening_head (opening) <= wall_top_lowest (wall, opening->x, opening_right (opening));
}

/* Back along the wall towards where it was, as far as top and footing ask. */
static void
retreat (const Wall *wall, const Opening *from, Opening *pulled, const Grip *grip)
{
  const Opening far = *pulled;
  const Length way = MAX (ABS (far.x - from->x), ABS (far.width - from->width));

  for (Length by = grip->step; by < way + grip->step && !is_in_face (wall, pulled);
       by += grip->step)
    {
      const gint64 back = MIN (by, way);

      pulled->x = far.x + (Length) ((from->x - far.x) * back / way);
      pulled->width = far.width + (Length) ((from->width - far.width) * back / way);
    }
}

Opening
tool_pull_opening (const Wall *wall, const Block *block, const Opening *from, RefPart part,
                   Length dx, Length dz, const Grip *grip)
{
  Opening pulled = *from;

  if (dx != 0)
    pull_along (wall, &pulled, part, dx, grip);
  if (dz != 0)
    pull_up (wall, block, &pulled, part, dz, grip);
  retreat (wall, from, &pulled, grip);
  return is_clear (wall, &pulled) ? opening_copy (&pulled) : opening_copy (from);
}

gboolean
tool_draw_opening (const Wall *wall, const Block *block, OpeningKind kind, Length x0, Length z0,
                   Length x1, Length z1, const Grip *grip, Opening *out)
{
  gboolean snapped;
  const Length left = MAX (0, rounded (MIN (x0, x1), grip->step));
  const Length right = MIN (wall->length, rounded (MAX (x0, x1), grip->step));
  const Length foot = MAX (0, snap_height (wall, block, MIN (z0, z1), grip, &snapped));
  const Length head = MIN (wall->height, snap_height (wall, block, MAX (z0, z1), grip, &snapped));
  Opening drawn = opening_default (kind);

  drawn.x = left;
  drawn.width = right - left;
  drawn.sill = kind == OPENING_DOOR && left < right ? foot_highest (wall->feet, left, right) : foot;
  drawn.height = head - drawn.sill;
  if (drawn.width < LEAST || drawn.height < LEAST || !is_clear (wall, &drawn))
    {
      opening_clear (&drawn);
      return FALSE;
    }
  *out = drawn;
  return TRUE;
}

gboolean
tool_place_opening (const Wall *wall, const Block *block, OpeningKind kind, Length x, Opening *out)
{
  Opening placed = opening_default (kind);
  Length wish;

  if (kind != OPENING_DOOR)
    placed.sill = tool_next_course (wall, block, placed.sill - 1, TRUE);
  placed.height = MIN (placed.height, wall->height - placed.sill);
  wish = rounded (x - placed.width / 2, LENGTH_MM (50));
  for (Length d = 0; placed.height >= LEAST && d <= wall->length; d += LENGTH_MM (50))
    for (int side = -1; side <= 1; side += 2)
      {
        placed.x = wish + side * d;
        if (kind == OPENING_DOOR)
          placed.sill = foot_highest (wall->feet, placed.x, opening_right (&placed));
        if (is_clear (wall, &placed) && is_in_face (wall, &placed))
          {
            *out = placed;
            return TRUE;
          }
      }
  opening_clear (&placed);
  return FALSE;
}

/* ---- the wall itself ---- */

/* The farthest that an opening, or a wall that meets this one, reaches to the right and up, and the
 * nearest to the left end. */
static void
things_reach (const Wall *wall, Length *left, Length *right, Length *head)
{
  *left = wall->length;
  *right = *head = 0;
  for (guint i = 0; i < wall->tees->len; i++)
    {
      *left = MIN (*left, wall_tee_at (wall, i)->x);
      *right = MAX (*right, tee_right (wall_tee_at (wall, i)));
    }
  for (guint i = 0; i < wall->movement_joints->len; i++)
    {
      const MovementJoint *joint = wall_movement_joint_at (wall, i);

      /* Something of the wall stands on both sides. */
      *left = MIN (*left, joint->x - LENGTH_PER_MM);
      *right = MAX (*right, movement_joint_right (joint) + LENGTH_PER_MM);
    }
  for (guint i = 0; i < wall->openings->len; i++)
    {
      const Opening *opening = wall_opening_at (wall, i);

      *left = MIN (*left, opening->x);
      *right = MAX (*right, opening_right (opening));
      *head = MAX (*head, opening_head (opening));
    }
}

Wall *
tool_pull_wall (const Wall *wall, const Block *block, RefPart part, Length dx, Length dz,
                const Grip *grip)
{
  Wall *pulled = wall_copy (wall);
  const Length returns = wall->ends[SIDE_LEFT].ret + wall->ends[SIDE_RIGHT].ret;
  const Length least = MAX (LENGTH_MM (100), returns + LENGTH_MM (50));
  Length left, right, head;
  gboolean snapped;

  things_reach (wall, &left, &right, &head);
  if (part == PART_RIGHT)
    wall_set_length (pulled, within (rounded (wall->length + dx, grip->step), MAX (right, least),
                                     LENGTH_MM (1000000)));
  else if (part == PART_LEFT)
    {
      pulled->length = within (rounded (wall->length - dx, grip->step),
                               MAX (wall->length - left, least), LENGTH_MM (1000000));
      wall_shift (pulled, pulled->length - wall->length);
    }
  else if (part == PART_HEAD)
    {
      /* Its own top is no limit to the course it may stop on. */
      pulled->height = LENGTH_MAX;
      pulled->height = within (snap_height (pulled, block, wall->height + dz, grip, &snapped),
                               MAX (head, LENGTH_MM (100)), LENGTH_MM (1000000));
    }
  return pulled;
}

/* ---- dimensions ---- */

/* The right jamb that a pier to the left of the opening begins at: of the nearest opening that ends
 * before it, else the wall's end. */
static Length
pier_from (const Wall *wall, const Opening *opening)
{
  Length from = 0;

  for (guint i = 0; i < wall->openings->len; i++)
    {
      const Opening *other = wall_opening_at (wall, i);

      if (other->id.n != opening->id.n && opening_right (other) <= opening->x)
        from = MAX (from, opening_right (other));
    }
  return from;
}

static Length *
own_length (Wall *wall, Opening *opening, DimensionPart part)
{
  switch (part)
    {
    case DIMENSION_WALL_LENGTH:
      return &wall->length;
    case DIMENSION_WALL_HEIGHT:
      return &wall->height;
    case DIMENSION_OPENING_WIDTH:
      return opening ? &opening->width : NULL;
    case DIMENSION_OPENING_SILL:
      return opening ? &opening->sill : NULL;
    case DIMENSION_OPENING_HEIGHT:
      return opening ? &opening->height : NULL;
    case DIMENSION_PIER_BEFORE:
    case DIMENSION_PIER_AFTER:
      return opening ? &opening->x : NULL;
    case DIMENSION_TOP_HEIGHT:
    case DIMENSION_TOP_PLACE:
    case DIMENSION_TOP_PITCH:
    case DIMENSION_FOOT_UP:
    case DIMENSION_FOOT_PLACE:
    case DIMENSION_TOP_AT:
    case DIMENSION_TOP_LEVEL:
      return NULL; /* tool-top.h */
    }
  return NULL;
}

/* The last opening, for a last pier that names none. */
static OpeningId
last_opening (const Wall *wall)
{
  OpeningId last = { 0 };
  Length right = -1;

  for (guint i = 0; i < wall->openings->len; i++)
    if (opening_right (wall_opening_at (wall, i)) > right)
      {
        right = opening_right (wall_opening_at (wall, i));
        last = wall_opening_at (wall, i)->id;
      }
  return last;
}

Wall *
tool_set_dimension (const Wall *wall, DimensionPart part, OpeningId id, Length value)
{
  g_autoptr (Wall) next = wall_copy (wall);
  Opening *opening;
  Length *length;

  if (part == DIMENSION_PIER_AFTER && !id.n)
    id = last_opening (wall);
  opening = wall_own_opening (next, id);
  length = own_length (next, opening, part);
  if (!length)
    return NULL;
  if (part == DIMENSION_PIER_BEFORE)
    value += pier_from (wall, opening);
  if (part == DIMENSION_PIER_AFTER)
    value = wall->length - value - opening->width;
  *length = value;
  return g_steal_pointer (&next);
}

gboolean
tool_get_dimension (const Wall *wall, DimensionPart part, OpeningId id, Length *value)
{
  Opening *opening;
  const Length *length;

  if (part == DIMENSION_PIER_AFTER && !id.n)
    id = last_opening (wall);
  opening = (Opening *) wall_opening (wall, id);
  length = own_length ((Wall *) wall, opening, part);
  if (!length)
    return FALSE;
  *value = *length;
  if (part == DIMENSION_PIER_BEFORE)
    *value = opening->x - pier_from (wall, opening);
  if (part == DIMENSION_PIER_AFTER)
    *value = wall->length - opening_right (opening);
  return TRUE;
}

/* ---- names ---- */

static gboolean
has_name (const Wall *wall, const char *name)
{
  for (guint i = 0; i < wall->openings->len; i++)
    if (g_str_equal (tool_opening_name (wall_opening_at (wall, i)), name))
      return TRUE;
  return FALSE;
}

char *
tool_free_name (const Wall *wall, OpeningKind kind)
{
  static const char letters[]
      = { [OPENING_WINDOW] = 'W', [OPENING_DOOR] = 'D', [OPENING_VOID] = 'V' };

  for (guint n = 1;; n++)
    {
      g_autofree char *name = g_strdup_printf ("%c%u", letters[kind], n);

      if (!has_name (wall, name))
        return g_steal_pointer (&name);
    }
}

const char *
tool_opening_name (const Opening *opening)
{
  if (*opening->name)
    return opening->name;
  return opening->key ? opening->key : "";
}

const char *
tool_wall_name (const Wall *wall)
{
  if (*wall->name)
    return wall->name;
  return wall->key ? wall->key : "";
}
