/* top.c - what lies at a wall's head and foot along it */
#include "model/top.h"

#include <math.h>

/* --- lists --- */

static void
top_point_clear (gpointer data)
{
  foreign_clear (&((TopPoint *) data)->foreign);
}

static void
foot_clear (gpointer data)
{
  foreign_clear (&((Foot *) data)->foreign);
}

GArray *
top_list_new (void)
{
  GArray *tops = g_array_new (FALSE, TRUE, sizeof (TopPoint));

  g_array_set_clear_func (tops, top_point_clear);
  return tops;
}

GArray *
foot_list_new (void)
{
  GArray *feet = g_array_new (FALSE, TRUE, sizeof (Foot));

  g_array_set_clear_func (feet, foot_clear);
  return feet;
}

GArray *
top_list_copy (const GArray *tops)
{
  GArray *copy = top_list_new ();

  for (guint i = 0; i < tops->len; i++)
    {
      TopPoint point = *top_point (tops, i);

      point.foreign = foreign_copy (&point.foreign);
      g_array_append_val (copy, point);
    }
  return copy;
}

GArray *
foot_list_copy (const GArray *feet)
{
  GArray *copy = foot_list_new ();

  for (guint i = 0; i < feet->len; i++)
    {
      Foot foot = *foot_point (feet, i);

      foot.foreign = foreign_copy (&foot.foreign);
      g_array_append_val (copy, foot);
    }
  return copy;
}

gboolean
top_list_equal (const GArray *a, const GArray *b)
{
  if (a->len != b->len)
    return FALSE;
  for (guint i = 0; i < a->len; i++)
    {
      const TopPoint *p = top_point (a, i), *q = top_point (b, i);

      if (p->x != q->x || p->below != q->below || !foreign_equal (&p->foreign, &q->foreign))
        return FALSE;
    }
  return TRUE;
}

gboolean
foot_list_equal (const GArray *a, const GArray *b)
{
  if (a->len != b->len)
    return FALSE;
  for (guint i = 0; i < a->len; i++)
    {
      const Foot *p = foot_point (a, i), *q = foot_point (b, i);

      if (p->x != q->x || p->up != q->up || !foreign_equal (&p->foreign, &q->foreign))
        return FALSE;
    }
  return TRUE;
}

void
top_list_add (GArray *tops, Length x, Length below)
{
  TopPoint point = { .x = x, .below = below };

  g_array_append_val (tops, point);
}

void
foot_list_add (GArray *feet, Length x, Length up)
{
  Foot foot = { .x = x, .up = up };

  g_array_append_val (feet, foot);
}

/* --- reading --- */

TopLine
top_line (const GArray *tops, Length height, Length x, Side side)
{
  TopLine line = { -LENGTH_MAX, height, LENGTH_MAX, height };
  guint next = 0;

  while (next < tops->len
         && (side == SIDE_RIGHT ? top_point (tops, next)->x <= x : top_point (tops, next)->x < x))
    next++;
  if (next > 0)
    {
      line.x0 = top_point (tops, next - 1)->x;
      line.z0 = line.z1 = height - top_point (tops, next - 1)->below;
    }
  if (next < tops->len)
    {
      line.x1 = top_point (tops, next)->x;
      line.z1 = height - top_point (tops, next)->below;
    }
  if (next == 0)
    line.z0 = line.z1;
  return line;
}

static gint64
floor_div (gint64 a, gint64 b)
{
  return a / b - (a % b != 0 && (a < 0) != (b < 0));
}

Length
top_line_at (const TopLine *line, Length x)
{
  gint64 run = (gint64) line->x1 - line->x0, rise = (gint64) line->z1 - line->z0;

  if (rise == 0)
    return line->z0;
  /* Half up: the floor of half more. */
  return (Length) (line->z0 + floor_div (2 * rise * ((gint64) x - line->x0) + run, 2 * run));
}

Length
top_line_meets (const TopLine *line, Length z)
{
  gint64 run = (gint64) line->x1 - line->x0, rise = (gint64) line->z1 - line->z0;
  gint64 up = (gint64) z - line->z0;

  if (rise > 0)
    return (Length) (line->x0 - floor_div (-up * run, rise));
  return (Length) (line->x0 + floor_div (up * run, rise));
}

Length
top_line_leaves (const TopLine *line, Length z)
{
  gint64 run = (gint64) line->x1 - line->x0, rise = (gint64) line->z1 - line->z0;
  gint64 up = (gint64) z - line->z0;

  if (rise > 0)
    return (Length) (line->x0 + floor_div (up * run, rise));
  return (Length) (line->x0 - floor_div (-up * run, rise));
}

Length
top_at (const GArray *tops, Length height, Length x, Side side)
{
  const TopLine line = top_line (tops, height, x, side);

  return top_line_at (&line, x);
}

/* The lowest (sign 1) or highest (-1). */
static Length
extreme (const GArray *tops, Length height, Length from, Length to, int sign)
{
  Length left = sign * top_at (tops, height, from, SIDE_RIGHT);
  Length right = sign * top_at (tops, height, to, SIDE_LEFT);
  Length least = MIN (left, right);

  for (guint i = 0; i < tops->len; i++)
    if (top_point (tops, i)->x > from && top_point (tops, i)->x < to)
      least = MIN (least, sign * (height - top_point (tops, i)->below));
  return sign * least;
}

Length
top_lowest (const GArray *tops, Length height, Length from, Length to)
{
  return extreme (tops, height, from, to, 1);
}

Length
top_highest (const GArray *tops, Length height, Length from, Length to)
{
  return extreme (tops, height, from, to, -1);
}

/* Without rounding, mm. */
static double
exactly_at (const TopLine *line, Length x)
{
  double part = (double) ((gint64) x - line->x0) / (double) ((gint64) line->x1 - line->x0);

  return (line->z0 + part * ((double) line->z1 - line->z0)) / LENGTH_PER_MM;
}

/* Adds up what `of` says of each straight stretch between two places. */
static double
sum_of_lines (const GArray *tops, Length height, Length from, Length to,
              double (*of) (double run, double left, double right))
{
  double sum = 0;

  while (from < to)
    {
      const TopLine line = top_line (tops, height, from, SIDE_RIGHT);
      const Length end = MIN (line.x1, to);

      sum += of (length_to_mm (end - from), exactly_at (&line, from), exactly_at (&line, end));
      from = end;
    }
  return sum;
}

static double
area_of_line (double run, double left, double right)
{
  return run * (left + right) / 2;
}

static double
length_of_line (double run, double left, double right)
{
  return hypot (run, right - left);
}

double
top_area (const GArray *tops, Length height, Length from, Length to)
{
  return sum_of_lines (tops, height, from, to, area_of_line);
}

double
top_run (const GArray *tops, Length height, Length from, Length to)
{
  return sum_of_lines (tops, height, from, to, length_of_line);
}

double
top_line_pitch (const TopLine *line)
{
  double run = (double) ((gint64) line->x1 - line->x0);
  double rise = fabs ((double) ((gint64) line->z1 - line->z0));

  return atan2 (rise, run) * 180 / G_PI;
}

Length
foot_at (const GArray *feet, Length x, Side side)
{
  Length up = 0;

  for (guint i = 0; i < feet->len; i++)
    if (foot_point (feet, i)->x < x || (foot_point (feet, i)->x == x && side == SIDE_RIGHT))
      up = foot_point (feet, i)->up;
  return up;
}

Length
foot_highest (const GArray *feet, Length from, Length to)
{
  Length up = foot_at (feet, from, SIDE_RIGHT);

  for (guint i = 0; i < feet->len; i++)
    if (foot_point (feet, i)->x > from && foot_point (feet, i)->x < to)
      up = MAX (up, foot_point (feet, i)->up);
  return up;
}

/* --- making --- */

/* From heights in `below` to what they lie below the highest of them, which is returned. */
static Length
hang (GArray *tops)
{
  Length height = 0;

  for (guint i = 0; i < tops->len; i++)
    height = MAX (height, top_point (tops, i)->below);
  for (guint i = 0; i < tops->len; i++)
    g_array_index (tops, TopPoint, i).below = height - top_point (tops, i)->below;
  return height;
}

GArray *
top_mono (Length length, Length left, Length right, Length *height)
{
  GArray *tops = top_list_new ();

  top_list_add (tops, 0, left);
  top_list_add (tops, length, right);
  *height = hang (tops);
  return tops;
}

GArray *
top_gable (Length length, Length left, Length right, Length at, Length ridge, Length *height)
{
  GArray *tops = top_list_new ();

  if (at > 0)
    top_list_add (tops, 0, left);
  top_list_add (tops, at, ridge);
  if (at < length)
    top_list_add (tops, length, right);
  *height = hang (tops);
  return tops;
}

GArray *
top_steps (const Length *heights, const Length *ends, guint n, Length *height)
{
  GArray *tops = top_list_new ();

  for (guint i = 0; i + 1 < n; i++)
    {
      top_list_add (tops, ends[i], heights[i]);
      top_list_add (tops, ends[i], heights[i + 1]);
    }
  if (n == 1)
    top_list_add (tops, 0, heights[0]);
  *height = hang (tops);
  return tops;
}

Length
top_rise (Length run, double degrees)
{
  return length_from_mm (length_to_mm (run) * tan (degrees * G_PI / 180));
}

/* --- when the wall changes --- */

/* Nothing left of 0, and at most one point there. */
static void
cut_left (GArray *tops)
{
  guint gone = 0;

  if (tops->len == 0 || top_point (tops, 0)->x > 0)
    return;
  while (gone + 1 < tops->len && top_point (tops, gone + 1)->x <= 0)
    gone++;
  if (gone + 1 < tops->len && top_point (tops, gone)->x < 0)
    g_array_index (tops, TopPoint, gone).below
        = LENGTH_MAX - top_at (tops, LENGTH_MAX, 0, SIDE_RIGHT);
  g_array_index (tops, TopPoint, gone).x = 0;
  if (gone > 0)
    g_array_remove_range (tops, 0, gone);
}

/* Nothing right of `to`, and at most one point there. */
static void
cut_right (GArray *tops, Length to)
{
  guint last = tops->len;

  if (tops->len == 0 || top_point (tops, tops->len - 1)->x < to)
    return;
  while (last > 0 && top_point (tops, last - 1)->x >= to)
    last--;
  if (top_point (tops, last)->x > to)
    g_array_index (tops, TopPoint, last).below
        = LENGTH_MAX - top_at (tops, LENGTH_MAX, to, SIDE_LEFT);
  g_array_index (tops, TopPoint, last).x = to;
  if (last + 1 < tops->len)
    g_array_remove_range (tops, last + 1, tops->len - last - 1);
}

/* One point has to be at the wall's height; a level top needs no points. */
static Length
hang_again (GArray *tops)
{
  Length least = LENGTH_MAX, most = 0;

  for (guint i = 0; i < tops->len; i++)
    {
      least = MIN (least, top_point (tops, i)->below);
      most = MAX (most, top_point (tops, i)->below);
    }
  if (tops->len == 0)
    return 0;
  for (guint i = 0; i < tops->len; i++)
    g_array_index (tops, TopPoint, i).below -= least;
  if (least == most)
    g_array_set_size (tops, 0);
  return least;
}

Length
top_list_shift (GArray *tops, Length by)
{
  gboolean stays = tops->len > 0 && top_point (tops, 0)->x == 0
                   && (tops->len == 1 || top_point (tops, 1)->x + by > 0);

  for (guint i = stays; i < tops->len; i++)
    g_array_index (tops, TopPoint, i).x += by;
  if (by == 0)
    return 0;
  cut_left (tops);
  return hang_again (tops);
}

Length
top_list_resize (GArray *tops, Length from, Length to)
{
  guint n = tops->len;

  if (from == to && (n == 0 || top_point (tops, n - 1)->x <= to))
    return 0;
  if (n > 0 && top_point (tops, n - 1)->x == from && (n == 1 || top_point (tops, n - 2)->x < to))
    g_array_index (tops, TopPoint, n - 1).x = to;
  cut_right (tops, to);
  return hang_again (tops);
}

void
foot_list_shift (GArray *feet, Length by)
{
  guint gone = 0;

  for (guint i = 0; i < feet->len; i++)
    if (foot_point (feet, i)->x > 0 || i > 0)
      g_array_index (feet, Foot, i).x += by;
    else
      g_array_index (feet, Foot, i).x = by > 0 ? 0 : by;
  while (gone + 1 < feet->len && foot_point (feet, gone + 1)->x <= 0)
    gone++;
  if (gone > 0)
    g_array_remove_range (feet, 0, gone);
  if (feet->len > 0 && foot_point (feet, 0)->x < 0)
    g_array_index (feet, Foot, 0).x = 0;
}

void
foot_list_resize (GArray *feet, Length to)
{
  while (feet->len > 0 && foot_point (feet, feet->len - 1)->x >= to)
    g_array_set_size (feet, feet->len - 1);
}
