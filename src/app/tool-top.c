#include "app/tool-top.h"

#include <glib/gi18n.h>
#include <math.h>
#include <string.h>

#include "bond/gauge.h"
#include "model/edit.h"

/* What is left at least between two points that are not one step, and beside a wall's end. */
#define APART LENGTH_MM (10)
/* Usual pitches, degrees. */
#define USUAL_FALL 10.0
#define USUAL_PITCH 35.0

/* ---- a list of heights: points that say how high they are, and not how far below ---- */

static GArray *
heights_of (const Wall *wall)
{
  GArray *tops = top_list_copy (wall->tops);

  for (guint i = 0; i < tops->len; i++)
    g_array_index (tops, TopPoint, i).below = wall->height - top_point (tops, i)->below;
  return tops;
}

static TopPoint *
point_of (GArray *tops, guint i)
{
  return &g_array_index (tops, TopPoint, i);
}

/* The wall with such a top, which it takes. */
static Wall *
with_heights (const Wall *wall, GArray *tops)
{
  Wall *next = wall_copy (wall);
  Length height = 0;

  for (guint i = 0; i < tops->len; i++)
    height = MAX (height, top_point (tops, i)->below);
  for (guint i = 0; i < tops->len; i++)
    point_of (tops, i)->below = height - top_point (tops, i)->below;
  wall_take_top (next, tops, tops->len ? height : wall->height);
  return next;
}

/* ---- corners ---- */

gboolean
tool_corner_at (const Wall *wall, const MarkRef *ref, Length *x, Length *z)
{
  const guint i = (guint) ref->a;

  if (ref->kind == REF_TOP && ref->part == TOP_POINT && i < wall->tops->len)
    {
      *x = top_point (wall->tops, i)->x;
      *z = wall->height - top_point (wall->tops, i)->below;
      return TRUE;
    }
  if (ref->kind == REF_FOOT && i < wall->feet->len)
    {
      *x = foot_point (wall->feet, i)->x;
      *z = foot_point (wall->feet, i)->up;
      return TRUE;
    }
  return FALSE;
}

gboolean
tool_is_corner (const Wall *wall, const MarkRef *ref)
{
  Length x, z;

  return tool_corner_at (wall, ref, &x, &z);
}

/* ---- where a hand comes to rest ---- */

static Length
stepped (Length value, Length step)
{
  const Length half = value >= 0 ? step / 2 : -(step / 2);

  return (value + half) / step * step;
}

/* Keeps the nearer one of two places to rest. */
static void
rest_at (Length place, Length z, Length reach, Length *best)
{
  const Length far = ABS (place - z);

  if (far <= reach && (*best < 0 || far < ABS (*best - z)))
    *best = place;
}

/* On a course or at the height of another point; else rounded. */
static Length
rest_top (const Wall *wall, const Block *block, Length z, const GArray *tops, guint from, guint to,
          const Grip *grip)
{
  const Laying laying = laying_resolve (&wall->laying, block);
  g_autoptr (Wall) tall = wall_copy (wall);
  Length best = -1;
  gint32 n;

  /* Its own top is no limit to the course that it may stop on. */
  tall->height = LENGTH_MAX;
  n = gauge_nearest_top (tall, block, &laying, z);
  if (n > 0)
    rest_at (gauge_top (tall, block, &laying, n), z, grip->reach, &best);
  for (guint i = 0; i < tops->len; i++)
    if (i < from || i > to)
      rest_at (top_point (tops, i)->below, z, grip->reach, &best);
  return MAX (0, best >= 0 && grip->reach > 0 ? best : stepped (z, grip->step));
}

/* Where the levelling bed on a step meets the bottom of a course. */
static Length
rest_foot (const Wall *wall, const Block *block, Length up, const Grip *grip)
{
  const Laying laying = laying_resolve (&wall->laying, block);
  const gint32 n = gauge_nearest_top (wall, block, &laying, up + laying.first_bed - laying.bed);
  const Length bottom = gauge_bottom (wall, block, &laying, n + 1) - laying.first_bed;
  Length best = -1;

  rest_at (MAX (0, bottom), up, grip->reach, &best);
  rest_at (0, up, grip->reach, &best);
  return MAX (0, best >= 0 && grip->reach > 0 ? best : stepped (up, grip->step));
}

/* ---- pulling the top ---- */

/* The points at one place with this one. */
static void
group_of (const GArray *tops, guint i, guint *first, guint *last)
{
  *first = *last = i;
  while (*first > 0 && top_point (tops, *first - 1)->x == top_point (tops, i)->x)
    --*first;
  while (*last + 1 < tops->len && top_point (tops, *last + 1)->x == top_point (tops, i)->x)
    ++*last;
}

static gboolean
is_single (const GArray *tops, guint i)
{
  guint first, last;

  group_of (tops, i, &first, &last);
  return first == last;
}

/* A single point may come to stand over a single neighbour: they are a step then. */
static void
move_along (const Wall *wall, GArray *tops, guint i, Length dx, const Grip *grip)
{
  const Length x = top_point (tops, i)->x;
  guint first, last;
  Length low = APART, high = wall->length - APART, to;

  if (dx == 0 || x == 0 || x == wall->length)
    return;
  group_of (tops, i, &first, &last);
  if (first > 0 && top_point (tops, first - 1)->x > 0)
    low = top_point (tops, first - 1)->x
          + (first == last && is_single (tops, first - 1) ? 0 : LENGTH_PER_MM);
  if (last + 1 < tops->len && top_point (tops, last + 1)->x < wall->length)
    high = top_point (tops, last + 1)->x
           - (first == last && is_single (tops, last + 1) ? 0 : LENGTH_PER_MM);
  to = stepped (x + dx, grip->step);
  if (ABS (to - wall->length / 2) <= grip->reach)
    to = wall->length / 2;
  to = MAX (low, MIN (to, high));
  for (guint k = first; k <= last; k++)
    point_of (tops, k)->x = to;
}

static void
move_up (const Wall *wall, const Block *block, GArray *tops, guint from, guint to, Length dz,
         const Grip *grip)
{
  guint lead = from;
  Length by;

  if (dz == 0 || from >= tops->len)
    return;
  for (guint i = from; i <= to; i++)
    if (top_point (tops, i)->below > top_point (tops, lead)->below)
      lead = i;
  by = rest_top (wall, block, top_point (tops, lead)->below + dz, tops, from, to, grip)
       - top_point (tops, lead)->below;
  for (guint i = from; i <= to; i++)
    point_of (tops, i)->below = MAX (0, top_point (tops, i)->below + by);
}

static Wall *
pull_foot (const Wall *wall, const Block *block, guint i, Length dx, Length dz, const Grip *grip)
{
  Wall *next = wall_copy (wall);
  Foot *foot = &g_array_index (next->feet, Foot, i);
  const Length low = i > 0 ? foot_point (wall->feet, i - 1)->x : 0;
  const Length high = i + 1 < wall->feet->len ? foot_point (wall->feet, i + 1)->x : wall->length;

  if (foot->x > 0 && dx != 0)
    foot->x
        = MAX (low + LENGTH_PER_MM, MIN (stepped (foot->x + dx, grip->step), high - LENGTH_PER_MM));
  if (dz != 0)
    foot->up = rest_foot (wall, block, foot->up + dz, grip);
  return next;
}

Wall *
tool_pull_top (const Wall *wall, const Block *block, const MarkRef *ref, Length dx, Length dz,
               const Grip *grip)
{
  const guint n = wall->tops->len, i = (guint) ref->a;
  GArray *tops;

  if (ref->kind == REF_FOOT && i < wall->feet->len)
    return pull_foot (wall, block, i, dx, dz, grip);
  if (ref->kind != REF_TOP || n == 0 || i > n || (ref->part != TOP_LINE && i == n))
    return wall_copy (wall);
  tops = heights_of (wall);
  if (ref->part == TOP_POINT)
    {
      move_along (wall, tops, i, dx, grip);
      move_up (wall, block, tops, i, i, dz, grip);
    }
  else if (ref->part == TOP_STEP)
    move_along (wall, tops, i, dx, grip);
  else
    move_up (wall, block, tops, i > 0 ? i - 1 : 0, MIN (i, n - 1), dz, grip);
  return with_heights (wall, tops);
}

/* ---- adding and removing ---- */

static void
insert (GArray *tops, guint i, Length x, Length z)
{
  const TopPoint point = { .x = x, .below = z };

  g_array_insert_val (tops, i, point);
}

Wall *
tool_add_top_point (const Wall *wall, Length x, guint *index)
{
  const Length z = wall_top_at (wall, x, SIDE_RIGHT);
  GArray *tops;
  guint i = 0;

  if (x < APART || x > wall->length - APART)
    return NULL;
  for (guint k = 0; k < wall->tops->len; k++)
    if (top_point (wall->tops, k)->x == x)
      return NULL;
  tops = heights_of (wall);
  if (tops->len == 0 || top_point (tops, 0)->x > x)
    insert (tops, 0, 0, wall_top_at (wall, 0, SIDE_RIGHT));
  if (top_point (tops, tops->len - 1)->x < x)
    insert (tops, tops->len, wall->length, wall_top_at (wall, wall->length, SIDE_LEFT));
  while (top_point (tops, i)->x < x)
    i++;
  insert (tops, i, x, z);
  *index = i;
  return with_heights (wall, tops);
}

Wall *
tool_add_foot (const Wall *wall, const Block *block, Length x, guint *index)
{
  const Laying laying = laying_resolve (&wall->laying, block);
  Foot foot = { .x = MAX (0, x),
                .up = wall_foot_at (wall, MAX (0, x), SIDE_RIGHT) + block->height + laying.bed };
  Wall *next;
  guint i = 0;

  if (x >= wall->length)
    return NULL;
  while (i < wall->feet->len && foot_point (wall->feet, i)->x < foot.x)
    i++;
  if (i < wall->feet->len && foot_point (wall->feet, i)->x == foot.x)
    return NULL;
  next = wall_copy (wall);
  g_array_insert_val (next->feet, i, foot);
  *index = i;
  return next;
}

static gboolean
is_level (const GArray *tops)
{
  for (guint i = 1; i < tops->len; i++)
    if (top_point (tops, i)->below != top_point (tops, 0)->below)
      return FALSE;
  return TRUE;
}

Wall *
tool_remove_corner (const Wall *wall, const MarkRef *ref)
{
  GArray *tops;
  Wall *next;

  if (!tool_is_corner (wall, ref))
    return NULL;
  if (ref->kind == REF_FOOT)
    {
      next = wall_copy (wall);
      g_array_remove_index (next->feet, ref->a);
      return next;
    }
  tops = heights_of (wall);
  g_array_remove_index (tops, ref->a);
  next = with_heights (wall, tops);
  if (is_level (next->tops))
    wall_take_top (next, NULL, next->height);
  return next;
}

/* ---- level parts of a stepped top ---- */

static TopLine
line_to (const Wall *wall, guint i)
{
  const TopPoint *a = top_point (wall->tops, i - 1), *b = top_point (wall->tops, i);

  return (TopLine){ a->x, wall->height - a->below, b->x, wall->height - b->below };
}

/* Every line of it is level, and there is a step. */
static gboolean
is_stepped (const Wall *wall)
{
  gboolean has_step = FALSE;

  for (guint i = 1; i < wall->tops->len; i++)
    {
      const TopLine line = line_to (wall, i);

      if (line.x0 < line.x1 && line.z0 != line.z1)
        return FALSE;
      has_step = has_step || line.x0 == line.x1;
    }
  return has_step;
}

gboolean
tool_is_stretch (const Wall *wall, guint i)
{
  const guint n = wall->tops->len;
  const Length from = i > 0 && i <= n ? top_point (wall->tops, i - 1)->x : 0;
  const Length to = i < n ? top_point (wall->tops, i)->x : wall->length;

  return n > 0 && i <= n && from < to;
}

Wall *
tool_add_step (const Wall *wall, const Block *block)
{
  const Laying laying = laying_resolve (&wall->laying, block);
  GArray *tops = heights_of (wall);
  Length room = 0, middle = 0, z = wall->height;
  guint best = 0;

  for (guint i = 0; i <= tops->len; i++)
    {
      const Length from = i > 0 ? top_point (tops, i - 1)->x : 0;
      const Length to = i < tops->len ? top_point (tops, i)->x : wall->length;

      if (to - from <= room)
        continue;
      room = to - from;
      middle = stepped (from + room / 2, LENGTH_PER_MM);
      z = wall_top_at (wall, middle, SIDE_LEFT);
      best = i;
    }
  /* What is right of it keeps its height: the new part goes up. */
  insert (tops, best, middle, z);
  insert (tops, best, middle, z + block->height + laying.bed);
  if (best > 0)
    point_of (tops, best - 1)->below = z + block->height + laying.bed;
  return with_heights (wall, tops);
}

Wall *
tool_remove_stretch (const Wall *wall, guint i)
{
  const guint n = wall->tops->len;
  GArray *tops;
  Wall *next;

  if (!tool_is_stretch (wall, i) || n < 2)
    return NULL;
  tops = heights_of (wall);
  /* The part beside it keeps its height, which it has by its other end, or else as the last one. */
  if ((i == 0 || i == n) && n > 2)
    g_array_remove_range (tops, i == 0 ? 0 : n - 2, 2);
  else if (i == 0 || i == n)
    g_array_remove_index (tops, i == 0 ? 0 : n - 1);
  else
    {
      /* What is before it goes on to its end. */
      if (i > 1)
        point_of (tops, i - 2)->x = top_point (tops, i)->x;
      g_array_remove_range (tops, i - 1, 2);
    }
  next = with_heights (wall, tops);
  if (is_level (next->tops))
    wall_take_top (next, NULL, next->height);
  return next;
}

/* ---- dimensions ---- */

gboolean
tool_parse_degrees (const char *text, double *degrees)
{
  g_autofree char *number = g_strstrip (g_strdelimit (g_strdup (text), ",", '.'));
  char *end;

  *degrees = g_ascii_strtod (number, &end);
  if (end == number)
    return FALSE;
  if (g_str_has_prefix (end, "°"))
    end += strlen ("°");
  return *end == '\0' && *degrees >= 0 && *degrees <= 89;
}

char *
tool_degrees_text (double degrees)
{
  char digits[G_ASCII_DTOSTR_BUF_SIZE];

  return g_strdup (g_ascii_formatd (digits, sizeof digits, "%.1f", degrees));
}

/* The place of the point before that is elsewhere. */
static Length
place_before (const GArray *tops, guint i)
{
  guint first, last;

  group_of (tops, i, &first, &last);
  return first > 0 ? top_point (tops, first - 1)->x : 0;
}

static gboolean
has_dimension (const Wall *wall, DimensionPart part, guint i)
{
  if (part == DIMENSION_FOOT_UP || part == DIMENSION_FOOT_PLACE)
    return i < wall->feet->len;
  if (part == DIMENSION_TOP_LEVEL)
    return wall->tops->len > 0 && i <= wall->tops->len;
  if (part == DIMENSION_TOP_PITCH)
    return i > 0 && i < wall->tops->len && line_to (wall, i).x0 < line_to (wall, i).x1;
  return tool_is_top_dimension (part) && i < wall->tops->len;
}

static Length
top_length (const Wall *wall, DimensionPart part, guint i)
{
  if (part == DIMENSION_FOOT_UP)
    return foot_point (wall->feet, i)->up;
  if (part == DIMENSION_FOOT_PLACE)
    return foot_point (wall->feet, i)->x;
  if (part == DIMENSION_TOP_PLACE)
    return top_point (wall->tops, i)->x - place_before (wall->tops, i);
  if (part == DIMENSION_TOP_AT)
    return top_point (wall->tops, i)->x;
  if (part == DIMENSION_TOP_LEVEL && i == wall->tops->len)
    i--;
  return wall->height - top_point (wall->tops, i)->below;
}

char *
tool_top_text (const Wall *wall, DimensionPart part, guint i)
{
  char text[LENGTH_TEXT_SIZE];

  if (!has_dimension (wall, part, i))
    return NULL;
  if (part != DIMENSION_TOP_PITCH)
    return g_strdup (length_text (top_length (wall, part, i), text));

  const TopLine line = line_to (wall, i);
  return tool_degrees_text (top_line_pitch (&line));
}

static Wall *
set_pitch (const Wall *wall, guint i, double degrees)
{
  const TopLine line = line_to (wall, i);
  const Length rise = top_rise (line.x1 - line.x0, degrees);
  GArray *tops = heights_of (wall);

  /* A top that is level goes up to the right. */
  if (line.z0 > line.z1)
    point_of (tops, i - 1)->below = line.z1 + rise;
  else
    point_of (tops, i)->below = line.z0 + rise;
  return with_heights (wall, tops);
}

static Wall *
set_length (const Wall *wall, DimensionPart part, guint i, Length value)
{
  GArray *tops;
  Wall *next;

  if (part == DIMENSION_FOOT_UP || part == DIMENSION_FOOT_PLACE)
    {
      next = wall_copy (wall);
      *(part == DIMENSION_FOOT_UP ? &g_array_index (next->feet, Foot, i).up
                                  : &g_array_index (next->feet, Foot, i).x)
          = value;
      return next;
    }
  tops = heights_of (wall);
  if (part == DIMENSION_TOP_LEVEL)
    {
      if (i > 0)
        point_of (tops, i - 1)->below = value;
      if (i < tops->len)
        point_of (tops, i)->below = value;
    }
  else if (part == DIMENSION_TOP_PLACE || part == DIMENSION_TOP_AT)
    {
      const Length x = part == DIMENSION_TOP_AT ? value : place_before (tops, i) + value;
      guint first, last;

      group_of (tops, i, &first, &last);
      for (guint k = first; k <= last; k++)
        point_of (tops, k)->x = x;
    }
  else
    point_of (tops, i)->below = value;
  return with_heights (wall, tops);
}

Wall *
tool_set_top (const Wall *wall, DimensionPart part, guint i, const char *text, GError **error)
{
  Length value;
  double degrees;

  if (!has_dimension (wall, part, i))
    return wall_copy (wall);
  if (part == DIMENSION_TOP_PITCH && tool_parse_degrees (text, &degrees))
    return set_pitch (wall, i, degrees);
  if (part != DIMENSION_TOP_PITCH && length_parse_typed (text, &value))
    return set_length (wall, part, i, value);
  g_set_error_literal (error, MODEL_ERROR, MODEL_ERROR_REFUSED,
                       part == DIMENSION_TOP_PITCH
                           ? _ ("Type a pitch in degrees, 0 to 89: 35 or 33.7.")
                           : _ ("Type a length: 1200, 1.2 m, 120 cm or 47 in."));
  return NULL;
}

/* ---- shapes ---- */

static gboolean
is_at (const Wall *wall, guint i, Length x)
{
  return top_point (wall->tops, i)->x == x;
}

/* No higher than the ridge at either end. */
static gboolean
is_gabled (const Wall *wall)
{
  const GArray *tops = wall->tops;

  if (tops->len != 3 || !is_at (wall, 0, 0) || !is_at (wall, 2, wall->length))
    return FALSE;
  return !is_at (wall, 1, 0) && !is_at (wall, 1, wall->length) && top_point (tops, 1)->below == 0
         && top_point (tops, 0)->below > 0 && top_point (tops, 2)->below > 0;
}

TopShape
tool_top_shape (const Wall *wall)
{
  if (wall->tops->len == 0)
    return SHAPE_LEVEL;
  if (wall->tops->len == 2 && is_at (wall, 0, 0) && is_at (wall, 1, wall->length))
    return SHAPE_SLOPED;
  if (is_gabled (wall))
    return SHAPE_GABLED;
  return is_stepped (wall) ? SHAPE_STEPPED : SHAPE_DRAWN;
}

/* A level top no lower than the openings need, and else as low as the lower end is. */
static Length
level_height (const Wall *wall)
{
  Length height = wall->tops->len ? MIN (wall_top_at (wall, 0, SIDE_RIGHT),
                                         wall_top_at (wall, wall->length, SIDE_LEFT))
                                  : wall->height;

  for (guint i = 0; i < wall->openings->len; i++)
    height = MAX (height, opening_head (wall_opening_at (wall, i)));
  return height;
}

Wall *
tool_shape_top (const Wall *wall, const Block *block, TopShape shape)
{
  const Length length = wall->length, level = level_height (wall);
  Length left = wall_top_at (wall, 0, SIDE_RIGHT), right = wall_top_at (wall, length, SIDE_LEFT);
  const Laying laying = laying_resolve (&wall->laying, block);
  const Length heights[] = { level + block->height + laying.bed, level };
  const Length middle = stepped (length / 2, LENGTH_PER_MM);
  GArray *tops = NULL;
  Wall *next;
  guint index;
  Length height = level;

  if (shape == SHAPE_DRAWN)
    return wall->tops->len ? wall_copy (wall) : tool_add_top_point (wall, middle, &index);
  left = MAX (left, level);
  right = MAX (right, level);
  if (shape == SHAPE_SLOPED)
    tops = top_mono (length, left == right ? left + top_rise (length, USUAL_FALL) : left, right,
                     &height);
  else if (shape == SHAPE_GABLED)
    tops
        = top_gable (length, level, level, middle, level + top_rise (middle, USUAL_PITCH), &height);
  else if (shape == SHAPE_STEPPED)
    tops = top_steps (heights, &middle, G_N_ELEMENTS (heights), &height);
  next = wall_copy (wall);
  wall_take_top (next, tops, height);
  return next;
}
