/* dimension-top.c - what is written at a top that is not level, and at the steps of a footing */
#include "paint/scene-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

/* Text from its point, steps; the room between two texts on one line; a figure's width. */
#define AWAY_X 4.f
#define AWAY_Z 12.f /* clear of a handle and its ring */
#define END_SIDE 0.3f
#define FIGURE 6.4f
#define BETWEEN 9.f
/* Least length of a slope on the sheet that takes its angle, steps. */
#define PITCH_ROOM 60.0

/* Beyond it stands nothing. */
static gboolean
is_within (const Wall *wall, Length x)
{
  return x > 0 && x < wall->length;
}

gboolean
wall_has_top_places (const Wall *wall)
{
  for (guint i = 0; i < wall->tops->len; i++)
    if (is_within (wall, top_point (wall->tops, i)->x))
      return TRUE;
  return FALSE;
}

/* ---- heights ---- */

/* Whether the top goes up from a point to that side. */
static gboolean
rises_to (const Wall *wall, guint i, Side side)
{
  const Length z = wall->height - top_point (wall->tops, i)->below;
  const TopLine line = top_line (wall->tops, wall->height, top_point (wall->tops, i)->x, side);

  return side == SIDE_LEFT ? line.z0 > z : line.z1 > z;
}

static gboolean
is_step (const Wall *wall, guint i, guint other)
{
  return other < wall->tops->len
         && top_point (wall->tops, i)->x == top_point (wall->tops, other)->x;
}

/* Whether the line that ends at a point (0: before the first) is level and has a length. */
static gboolean
is_level (const Wall *wall, guint line)
{
  const guint n = wall->tops->len;
  const TopPoint *a = line > 0 ? top_point (wall->tops, line - 1) : NULL;
  const TopPoint *b = line < n ? top_point (wall->tops, line) : NULL;
  const Length from = a ? a->x : 0, to = b ? b->x : wall->length;

  return from < to && (!a || !b || a->below == b->below);
}

/* Where its number stands to the point: over its middle (0), to its left (-1) or to its right: off
 * the slope that goes up. At the wall's ends there is little room outside. */
static float
side_of_text (const Wall *wall, guint i)
{
  const Length x = top_point (wall->tops, i)->x;
  const gboolean left = rises_to (wall, i, SIDE_LEFT), right = rises_to (wall, i, SIDE_RIGHT);

  if (x == 0)
    return -END_SIDE;
  if (x == wall->length)
    return END_SIDE;
  if (is_step (wall, i, i + 1))
    return -1;
  if (i > 0 && is_step (wall, i, i - 1))
    return 1;
  return left == right ? 0 : left ? 1 : -1;
}

static void
add_height (Scene *scene, Length x, Length z, float side, MarkRef ref)
{
  char text[LENGTH_TEXT_SIZE];
  MarkLook look = mark_look (STYLE_DIMENSION_TEXT, LAYER_DIMENSIONS);
  const double over = length_to_mm (scene->wall->cap.height);

  look.ref = ref;
  drawing_add_text (scene->drawing, &look,
                    at_offset (length_to_mm (x), length_to_mm (z) + over, -AWAY_X * side, -AWAY_Z),
                    0.5f - side / 2, 1, length_text (z, text));
}

static MarkRef
asks (DimensionPart part, guint i)
{
  return (MarkRef){ .kind = REF_DIMENSION, .part = part, .a = i };
}

/* Of a level part once, in its middle; of a point where none ends there. */
static void
add_top_heights (Scene *scene)
{
  const Wall *wall = scene->wall;
  const guint n = wall->tops->len;

  for (guint i = 0; i < n; i++)
    {
      const Length x = top_point (wall->tops, i)->x;
      const gboolean outside = (x == 0 && is_step (wall, i, i + 1))
                               || (x == wall->length && i > 0 && is_step (wall, i, i - 1));

      if (!outside && !is_level (wall, i) && !is_level (wall, i + 1))
        add_height (scene, x, wall->height - top_point (wall->tops, i)->below,
                    side_of_text (wall, i), asks (DIMENSION_TOP_HEIGHT, i));
    }
  for (guint i = 0; n > 0 && i <= n; i++)
    {
      const Length from = i > 0 ? top_point (wall->tops, i - 1)->x : 0;
      const Length to = i < n ? top_point (wall->tops, i)->x : wall->length;

      if (is_level (wall, i))
        add_height (scene, from + (to - from) / 2, wall_top_at (wall, to, SIDE_LEFT), 0,
                    asks (DIMENSION_TOP_LEVEL, i));
    }
}

/* ---- places ---- */

static void
add_top_places (Scene *scene)
{
  const Wall *wall = scene->wall;
  Dimension place = {
    .away = DIMENSION_FIRST + LEVEL_ROOM,
    .part = DIMENSION_TOP_PLACE,
    .text = STYLE_DIMENSION_TEXT,
  };

  for (guint i = 0; i < wall->tops->len; i++)
    {
      place.to = top_point (wall->tops, i)->x;
      place.point = i;
      if (is_within (wall, place.to) && place.to > place.from)
        {
          scene_dimension_along (scene, &place);
          place.from = place.to;
        }
    }
  place.to = wall->length;
  place.fixed = TRUE;
  scene_dimension_along (scene, &place);
}

/* ---- slopes ---- */

static void
add_pitch (Scene *scene, guint i)
{
  const Wall *wall = scene->wall;
  const TopPoint *a = top_point (wall->tops, i - 1), *b = top_point (wall->tops, i);
  const TopLine line = { a->x, wall->height - a->below, b->x, wall->height - b->below };
  const double x = length_to_mm (a->x) / 2 + length_to_mm (b->x) / 2;
  const double z = length_to_mm (line.z0) / 2 + length_to_mm (line.z1) / 2;
  const float side = line.z1 > line.z0 ? -1 : 1;
  MarkLook look = mark_look (STYLE_DIMENSION_TEXT, LAYER_DIMENSIONS);
  char digits[G_ASCII_DTOSTR_BUF_SIZE];
  g_autofree char *text = NULL;

  if (a->x >= b->x || line.z0 == line.z1)
    return;
  text = g_strdup_printf ("%s°",
                          g_ascii_formatd (digits, sizeof digits, "%.1f", top_line_pitch (&line)));
  look.ref = asks (DIMENSION_TOP_PITCH, i);
  look.min_scale
      = PITCH_ROOM / hypot (length_to_mm (b->x - a->x), length_to_mm (line.z1 - line.z0));
  drawing_add_text (scene->drawing, &look,
                    at_offset (x, z + length_to_mm (wall->cap.height), AWAY_X * side, -AWAY_Z),
                    side < 0 ? 1 : 0, 1, text);
}

/* ---- the footing ---- */

/* How far it is up, and from where on, under its line. */
static void
add_foot (Scene *scene, guint i)
{
  const Wall *wall = scene->wall;
  const Foot *foot = foot_point (wall->feet, i);
  const Length end = i + 1 < wall->feet->len ? foot_point (wall->feet, i + 1)->x : wall->length;
  MarkLook look = mark_look (STYLE_FOOT_TEXT, LAYER_DIMENSIONS);
  char up[LENGTH_TEXT_SIZE], x[LENGTH_TEXT_SIZE];
  g_autofree char *height = g_strdup_printf ("+%s", length_text (foot->up, up));
  /* Translators: where a step of the footing stands, mm from the wall's left end */
  g_autofree char *place = g_strdup_printf (_ ("at %s"), length_text (foot->x, x));
  const float width = FIGURE * (float) strlen (height);
  const float all = width + BETWEEN + FIGURE * (float) g_utf8_strlen (place, -1);

  look.ref = asks (DIMENSION_FOOT_UP, i);
  look.min_scale = (double) (width + 2 * AWAY_X) / length_to_mm (end - foot->x);
  drawing_add_text (scene->drawing, &look,
                    at_offset (length_to_mm (foot->x), length_to_mm (foot->up), AWAY_X + 3, 2), 0,
                    0, height);
  if (foot->x == 0)
    return;
  look.ref = asks (DIMENSION_FOOT_PLACE, i);
  look.min_scale = (double) (all + 2 * AWAY_X) / length_to_mm (end - foot->x);
  drawing_add_text (
      scene->drawing, &look,
      at_offset (length_to_mm (foot->x), length_to_mm (foot->up), AWAY_X + 3 + width + BETWEEN, 2),
      0, 0, place);
}

void
scene_top_dimensions (Scene *scene)
{
  add_top_heights (scene);
  if (wall_has_top_places (scene->wall))
    add_top_places (scene);
  for (guint i = 1; i < scene->wall->tops->len; i++)
    add_pitch (scene, i);
  for (guint i = 0; i < scene->wall->feet->len; i++)
    add_foot (scene, i);
}
