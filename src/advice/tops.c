/* tops.c - findings of tops and footings: steps that meet no course */
#include <glib/gi18n-lib.h>

#include "advice/judging.h"
#include "bond/gauge.h"
#include "bond/profile.h"

/* --- steps of the footing --- */

static Length
bottom_of (const Judging *judging, gint32 course)
{
  return gauge_bottom (judging->wall, judging->block, &judging->laying, course);
}

static Mend
mend_foot (const Judging *judging, guint i, Length up)
{
  g_autoptr (GArray) feet = foot_list_copy (judging->wall->feet);
  char x[LENGTH_TEXT_SIZE], to[LENGTH_TEXT_SIZE];

  g_array_index (feet, Foot, i).up = up;
  return mend_if_possible (judging, edit_wall_feet (judging->wall, feet),
                           g_strdup_printf (_ ("Set the step at %s mm to %s mm"),
                                            length_text (foot_point (feet, i)->x, x),
                                            length_text (up, to)));
}

/* The nearest height of a step on which no block is ripped: its bed is as thick as the levelling
 * bed, or down to the thinnest. The course is the one that is ripped now; of the first one a step
 * that is only as high as the bed under it would be none. */
static Length
height_to_gauge (const Judging *judging, Length up, gint32 course)
{
  const Length bed = judging->laying.first_bed;
  const Length down = bottom_of (judging, course) - MIN (bed, PROFILE_LEAST_BED);
  const Length higher = bottom_of (judging, course + 1) - bed;

  const gboolean no_step = course == 1 && up - down > GAUGE_PACKING_MAX;

  return up - down <= higher - up && down > 0 && !no_step ? down : higher;
}

static void
judge_foot (Judging *judging, guint i)
{
  const Foot *foot = foot_point (judging->wall->feet, i);
  const Length base = profile_base (judging->wall, judging->block, &judging->laying, foot->up);
  const gint32 course = gauge_course_at (judging->wall, judging->block, &judging->laying, base + 1);
  Length left, good;
  char x[LENGTH_TEXT_SIZE], up[LENGTH_TEXT_SIZE], is[LENGTH_TEXT_SIZE], to[LENGTH_TEXT_SIZE];
  Finding *finding;

  if (foot->up == 0 || course < 1 || base <= bottom_of (judging, course))
    return;
  left = bottom_of (judging, course) + judging->block->height - base;
  good = height_to_gauge (judging, foot->up, course);
  finding = judging_add (
      judging, "foot-step", SEVERITY_NOTE,
      g_strdup_printf (
          _ ("The step in the footing at %s mm lies %s mm up: course %d is ripped to %s "
             "mm on it. With %s mm no block is ripped there."),
          length_text (foot->x, x), length_text (foot->up, up), course, length_text (left, is),
          length_text (good, to)),
      mend_foot (judging, i, good));
  finding->course = course;
  finding->x = foot->x;
}

/* --- level stretches of a top --- */

/* The points at both ends of a level stretch to another height; all others stay where they are. */
static Mend
mend_level (const Judging *judging, const TopLine *line, Length to)
{
  const Wall *wall = judging->wall;
  g_autoptr (GArray) tops = top_list_copy (wall->tops);
  Length height = MAX (wall->height, to), least = LENGTH_MAX;
  char text[LENGTH_TEXT_SIZE];

  for (guint i = 0; i < tops->len; i++)
    {
      TopPoint *point = &g_array_index (tops, TopPoint, i);
      Length z = wall->height - point->below;

      if (z == line->z0 && point->x >= line->x0 && point->x <= line->x1)
        z = to;
      point->below = height - z;
      least = MIN (least, point->below);
    }
  for (guint i = 0; i < tops->len; i++)
    g_array_index (tops, TopPoint, i).below -= least;
  return mend_if_possible (
      judging, edit_wall_top (wall, tops, height - least),
      g_strdup_printf (_ ("Set this part of the top to %s mm"), length_text (to, text)));
}

/* One that is as long as a unit at least, and that a course is ripped under. */
static void
judge_level (Judging *judging, const TopLine *line)
{
  const Wall *wall = judging->wall;
  const Length from = MAX (line->x0, 0), to = MIN (line->x1, wall->length);
  const gint32 course = gauge_course_at (wall, judging->block, &judging->laying, line->z0);
  Length left, lower, higher;
  char a[LENGTH_TEXT_SIZE], b[LENGTH_TEXT_SIZE], z[LENGTH_TEXT_SIZE], is[LENGTH_TEXT_SIZE];
  Finding *finding;

  if (to - from < judging->block->length || course < 1)
    return;
  left = line->z0 - bottom_of (judging, course);
  if (left <= GAUGE_PACKING_MAX || left >= judging->block->height)
    return;
  higher = bottom_of (judging, course) + judging->block->height;
  lower = course > 1 ? bottom_of (judging, course - 1) + judging->block->height : higher;
  finding = judging_add (
      judging, "top-step", SEVERITY_NOTE,
      g_strdup_printf (
          _ ("From %s to %s mm the top lies level at %s mm, within course %d, which is "
             "ripped to %s mm there."),
          length_text (from, a), length_text (to, b), length_text (line->z0, z), course,
          length_text (left, is)),
      mend_level (judging, line, line->z0 - lower <= higher - line->z0 ? lower : higher));
  finding->course = course;
  finding->x = from;
}

void
judge_tops (Judging *judging)
{
  const Wall *wall = judging->wall;

  for (guint i = 0; i < wall->feet->len; i++)
    judge_foot (judging, i);
  for (Length x = 0; wall->tops->len > 0 && x < wall->length;)
    {
      const TopLine line = top_line (wall->tops, wall->height, x, SIDE_RIGHT);

      if (line.z0 == line.z1)
        judge_level (judging, &line);
      x = line.x1;
    }
}
