/* profile.c - what a wall's top and its footing leave of a course */
#include "bond/profile.h"

#include "bond/gauge.h"

static void
add_place (GArray *places, Length place, Length from, Length to)
{
  if (place > from && place < to)
    g_array_append_val (places, place);
}

/* The first course whose bottom is as high as that, or higher. */
static gint32
course_from (const Profile *profile, Length z)
{
  gint32 number = MAX (gauge_course_at (profile->wall, profile->block, profile->laying, z) - 1, 1);

  while (gauge_bottom (profile->wall, profile->block, profile->laying, number) < z)
    number++;
  return number;
}

Length
profile_base (const Wall *wall, const Block *block, const Laying *laying, Length up)
{
  const Profile profile = { wall, block, laying, 0, 0 };
  const Length bed = laying->first_bed, least = MIN (bed, PROFILE_LEAST_BED);
  const Length first = gauge_bottom (wall, block, laying, 1);
  gint32 number;
  Length bottom;

  if (up <= 0)
    return first;
  number = course_from (&profile, up + least);
  bottom = gauge_bottom (wall, block, laying, number);
  if (bottom <= up + bed || number == 1)
    return bottom;
  return gauge_top (wall, block, laying, number - 1) <= up + bed ? bottom : up + bed;
}

static Length
base_at (const Profile *profile, Length x, Side side)
{
  const Length up = wall_foot_at (profile->wall, x, side);

  if (up == 0)
    return profile->bottom;
  return MAX (profile_base (profile->wall, profile->block, profile->laying, up), profile->bottom);
}

static gboolean
comes_below (const TopLine *line, Length z)
{
  return line->z0 < z || line->z1 < z;
}

/* Where the top comes down into the course. */
static void
add_top_breaks (const Profile *profile, Length from, Length to, GArray *places)
{
  const Wall *wall = profile->wall;

  for (guint i = 0; i < wall->tops->len; i++)
    {
      const Length x = top_point (wall->tops, i)->x;
      const TopLine left = top_line (wall->tops, wall->height, x, SIDE_LEFT);
      const TopLine line = top_line (wall->tops, wall->height, x, SIDE_RIGHT);

      if (comes_below (&left, profile->top) || comes_below (&line, profile->top))
        add_place (places, x, from, to);
      if ((line.z0 < profile->top) != (line.z1 < profile->top))
        add_place (places, top_line_meets (&line, profile->top), MAX (from, line.x0),
                   MIN (to, line.x1));
    }
}

void
profile_add_breaks (const Profile *profile, Length from, Length to, GArray *places)
{
  const Wall *wall = profile->wall;

  add_top_breaks (profile, from, to, places);
  for (guint i = 0; i < wall->feet->len; i++)
    {
      const Length x = foot_point (wall->feet, i)->x;

      if (base_at (profile, x, SIDE_LEFT) != base_at (profile, x, SIDE_RIGHT))
        add_place (places, x, from, to);
    }
}

ProfilePart
profile_part (const Profile *profile, Length from, Length to)
{
  const Wall *wall = profile->wall;
  ProfilePart part = { .base = base_at (profile, from, SIDE_RIGHT),
                       .line = top_line (wall->tops, wall->height, from, SIDE_RIGHT) };

  part.left = part.right = profile->top;
  if (part.line.x1 < to) /* points high above the course are no breaks of it */
    return part;
  part.left = MIN (top_line_at (&part.line, from), profile->top);
  part.right = MIN (top_line_at (&part.line, to), profile->top);
  return part;
}

static Length
half_unit (const Profile *profile)
{
  return MAX (profile->block->height / 2, GAUGE_PACKING_MAX);
}

Length
profile_least (const Profile *profile)
{
  return MIN (profile->laying->min_rip, half_unit (profile));
}

Length
profile_toe (const Profile *profile, const TopLine *line)
{
  gint64 run = (gint64) line->x1 - line->x0, rise = ABS ((gint64) line->z1 - line->z0);
  gint64 wanted = profile->laying->min_rip - rise * profile->laying->min_raked / run;

  return (Length) CLAMP (wanted, GAUGE_PACKING_MAX, half_unit (profile));
}

void
profile_add_toe (const Profile *profile, const TopLine *line, Length lo, Length from, Length to,
                 GArray *places)
{
  const Length toe = lo + profile_toe (profile, line);

  if ((line->z0 < toe) != (line->z1 < toe))
    add_place (places, top_line_meets (line, toe), from, to);
  if ((line->z0 <= lo) != (line->z1 <= lo))
    add_place (places, top_line_leaves (line, lo), from, to);
}
