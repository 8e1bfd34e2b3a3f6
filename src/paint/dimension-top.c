/* dimension-top.c - what is written at a top that is not level, and at the steps of a footing */
#include "paint/scene-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

/* Text from its point, steps; the room between two texts on one line; a figure's width. */
#define AWAY_X 4.f
#define AWAY_Z 12.f /* clear of a handle and its ring */
#define PITCH_Z 7.f
#define END_SIDE 0.3f
#define FIGURE 7.1f
#define BETWEEN 9.f
#define LINE 13.f
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

/* ---- texts, which give way to one another ---- */

/* One that stands at a point of the wall; in the order of what is told first. */
typedef struct
{
  MarkPoint at;
  float anchor_x, anchor_y, width;
  char *text; /* owned */
  Style style;
  MarkRef ref;
  double min_scale;
} Told;

static void
told_clear (gpointer data)
{
  g_free (((Told *) data)->text);
}

static float
width_of (const char *text)
{
  return FIGURE * (float) g_utf8_strlen (text, -1);
}

/* Takes the text. */
static void
tell (GArray *told, Style style, MarkPoint at, float anchor_x, float anchor_y, char *text,
      MarkRef ref, double min_scale)
{
  const Told one = {
    .at = at,
    .anchor_x = anchor_x,
    .anchor_y = anchor_y,
    .width = width_of (text),
    .text = text,
    .style = style,
    .ref = ref,
    .min_scale = min_scale,
  };

  g_array_append_val (told, one);
}

/* From which scale on two stretches are apart that begin at a and b, mm, and from there so many
 * steps on. */
static double
apart_from (double a, double a_from, double a_to, double b, double b_from, double b_to)
{
  const double need = a <= b ? a_to - b_from : b_to - a_from;

  return need <= 0 ? 0 : fabs (b - a) > 0 ? need / fabs (b - a) : G_MAXDOUBLE;
}

/* From which scale on neither covers the other: beside it or over it. */
static double
clear_from (const Told *a, const Told *b)
{
  const double ax = (double) (a->at.dx - a->anchor_x * a->width);
  const double bx = (double) (b->at.dx - b->anchor_x * b->width);
  const double az = (double) (-a->at.dy - (1 - a->anchor_y) * LINE);
  const double bz = (double) (-b->at.dy - (1 - b->anchor_y) * LINE);

  return MIN (apart_from (a->at.x, ax - 2, ax + (double) a->width + 2, b->at.x, bx - 2,
                          bx + (double) b->width + 2),
              apart_from (a->at.z, az, az + (double) LINE, b->at.z, bz, bz + (double) LINE));
}

static void
add_told (Scene *scene, const GArray *told)
{
  for (guint i = 0; i < told->len; i++)
    {
      const Told *one = &g_array_index (told, Told, i);
      MarkLook look = mark_look (one->style, LAYER_DIMENSIONS);

      look.ref = one->ref;
      look.min_scale = one->min_scale;
      for (guint k = 0; k < i; k++)
        look.min_scale = MAX (look.min_scale, clear_from (one, &g_array_index (told, Told, k)));
      drawing_add_text (scene->drawing, &look, one->at, one->anchor_x, one->anchor_y, one->text);
    }
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
tell_height (GArray *told, const Wall *wall, Length x, Length z, float side, MarkRef ref)
{
  char text[LENGTH_TEXT_SIZE];
  const double over = length_to_mm (wall->cap.height);

  tell (told, STYLE_DIMENSION_TEXT,
        at_offset (length_to_mm (x), length_to_mm (z) + over, -AWAY_X * side, -AWAY_Z),
        0.5f - side / 2, 1, g_strdup (length_text (z, text)), ref, 0);
}

static MarkRef
asks (DimensionPart part, guint i)
{
  return (MarkRef){ .kind = REF_DIMENSION, .part = part, .a = i };
}

static void
tell_point (GArray *told, const Wall *wall, guint i)
{
  const Length x = top_point (wall->tops, i)->x;
  const gboolean outside = (x == 0 && is_step (wall, i, i + 1))
                           || (x == wall->length && i > 0 && is_step (wall, i, i - 1));

  if (!outside && !is_level (wall, i) && !is_level (wall, i + 1))
    tell_height (told, wall, x, wall->height - top_point (wall->tops, i)->below,
                 side_of_text (wall, i), asks (DIMENSION_TOP_HEIGHT, i));
}

static void
tell_level (GArray *told, const Wall *wall, guint i)
{
  const Length from = i > 0 ? top_point (wall->tops, i - 1)->x : 0;
  const Length to = i < wall->tops->len ? top_point (wall->tops, i)->x : wall->length;

  if (is_level (wall, i))
    tell_height (told, wall, from + (to - from) / 2, wall_top_at (wall, to, SIDE_LEFT), 0,
                 asks (DIMENSION_TOP_LEVEL, i));
}

/* Of a level part once, in its middle; of a point where none ends there: first the highest ones. */
static void
tell_heights (GArray *told, const Wall *wall)
{
  const guint n = wall->tops->len;

  for (guint i = 0; i < n; i++)
    if (top_point (wall->tops, i)->below == 0)
      tell_point (told, wall, i);
  for (guint i = 0; n > 0 && i <= n; i++)
    tell_level (told, wall, i);
  for (guint i = 0; i < n; i++)
    if (top_point (wall->tops, i)->below > 0)
      tell_point (told, wall, i);
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
tell_pitch (GArray *told, const Wall *wall, guint i)
{
  const TopPoint *a = top_point (wall->tops, i - 1), *b = top_point (wall->tops, i);
  const TopLine line = { a->x, wall->height - a->below, b->x, wall->height - b->below };
  const double x = length_to_mm (a->x) / 2 + length_to_mm (b->x) / 2;
  const double z = length_to_mm (line.z0) / 2 + length_to_mm (line.z1) / 2;
  const float side = line.z1 > line.z0 ? -1 : 1;
  char digits[G_ASCII_DTOSTR_BUF_SIZE];

  if (a->x >= b->x || line.z0 == line.z1)
    return;
  g_ascii_formatd (digits, sizeof digits, "%.1f", top_line_pitch (&line));
  tell (told, STYLE_DIMENSION_TEXT,
        at_offset (x, z + length_to_mm (wall->cap.height), AWAY_X * side, -PITCH_Z),
        side < 0 ? 1.f : 0.f, 1, g_strdup_printf ("%s°", digits), asks (DIMENSION_TOP_PITCH, i),
        PITCH_ROOM / hypot (length_to_mm (b->x - a->x), length_to_mm (line.z1 - line.z0)));
}

/* ---- the footing ---- */

/* How far it is up, and from where on, under its line. */
static void
tell_foot (GArray *told, const Wall *wall, guint i)
{
  const Foot *foot = foot_point (wall->feet, i);
  const Length end = i + 1 < wall->feet->len ? foot_point (wall->feet, i + 1)->x : wall->length;
  const double room = length_to_mm (end - foot->x);
  const float left = AWAY_X + 3;
  char up[LENGTH_TEXT_SIZE], x[LENGTH_TEXT_SIZE];
  char *height = g_strdup_printf ("+%s", length_text (foot->up, up));
  /* Translators: where a step of the footing stands, mm from the wall's left end */
  char *place = g_strdup_printf (_ ("at %s"), length_text (foot->x, x));
  const float width = width_of (height), all = width + BETWEEN + width_of (place);

  tell (told, STYLE_FOOT_TEXT, at_offset (length_to_mm (foot->x), length_to_mm (foot->up), left, 2),
        0, 0, height, asks (DIMENSION_FOOT_UP, i), (double) (width + 2 * AWAY_X) / room);
  if (foot->x == 0)
    g_free (place);
  else
    tell (told, STYLE_FOOT_TEXT,
          at_offset (length_to_mm (foot->x), length_to_mm (foot->up), left + width + BETWEEN, 2), 0,
          0, place, asks (DIMENSION_FOOT_PLACE, i), (double) (all + 2 * AWAY_X) / room);
}

void
scene_top_dimensions (Scene *scene)
{
  const Wall *wall = scene->wall;
  g_autoptr (GArray) told = g_array_new (FALSE, FALSE, sizeof (Told));

  g_array_set_clear_func (told, told_clear);
  tell_heights (told, wall);
  for (guint i = 0; i < wall->feet->len; i++)
    tell_foot (told, wall, i);
  for (guint i = 1; i < wall->tops->len; i++)
    tell_pitch (told, wall, i);
  add_told (scene, told);
  if (wall_has_top_places (wall))
    add_top_places (scene);
}
