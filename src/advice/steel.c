/* steel.c - findings of the bars in the bed joints */
#include <glib/gi18n-lib.h>

#include "advice/judging.h"
#include "bond/gauge.h"
#include "concrete/bed-steel.h"

/* EN 1996-1-1:2005, from memory: 8.2.7, rows at most 600 mm apart; 8.2.2(3), joints 5 mm thicker
 * than the bar, and grooves beside that; 8.2.3, 0.03 % of the wall's section against cracks. */
#define ROWS_APART LENGTH_MM (600)
#define BAR_ROOM LENGTH_MM (5)
#define LEAST_SHARE 0.0003
/* Common practice: between bars side by side their diameter and 20 mm at least, at the faces 25 mm.
 */
#define BARS_APART LENGTH_MM (20)
#define FACE_COVER LENGTH_MM (25)

static Length
row_height (const Judging *judging, gint32 number)
{
  return layout_course (judging->layout, (guint) number - 1)->top;
}

/* Rows by rule in every so many courses and those by hand: those along openings alone are not meant
 * to bind the whole wall. */
static gboolean
is_all_along (const Wall *wall, gint32 number)
{
  int by_hand = wall_steel_row (wall, number);

  if (by_hand != 0)
    return by_hand > 0;
  return wall->steel.given && wall->steel.every > 0 && number % wall->steel.every == 0;
}

static GArray *
rows_all_along (const Wall *wall, gint32 n_courses)
{
  GArray *rows = g_array_new (FALSE, FALSE, sizeof (gint32));

  for (gint32 number = 1; number <= n_courses; number++)
    if (is_all_along (wall, number))
      g_array_append_val (rows, number);
  return rows;
}

/* --- rows too far apart --- */

/* A row all along that course, whatever was said of it before. */
static void
lay_by_hand (Wall *wall, gint32 number)
{
  SteelRow row = { .course = number };

  for (guint i = wall->steel_rows->len; i-- > 0;)
    if (g_array_index (wall->steel_rows, SteelRow, i).course == number)
      g_array_remove_index (wall->steel_rows, i);
  g_array_append_val (wall->steel_rows, row);
}

/* Rows between two that are too far apart, each as high over the last as may be; their numbers. */
static void
fill_gap (const Judging *judging, Wall *wall, gint32 lower, gint32 upper, GString *added)
{
  for (gint32 number = lower + 1; number <= upper; number++)
    {
      if (row_height (judging, number) - row_height (judging, lower) <= ROWS_APART)
        continue;
      /* One course alone is higher than that: nothing can be done. */
      if (number - 1 == lower)
        lower = number;
      else
        {
          lower = --number;
          lay_by_hand (wall, lower);
          g_string_append_printf (added, added->len > 0 ? ", %d" : "%d", lower);
        }
    }
}

static Mend
mend_spacing (const Judging *judging, const GArray *rows)
{
  g_autoptr (Wall) wall = wall_copy (judging->wall);
  g_autoptr (GString) added = g_string_new (NULL);

  for (guint i = 0; i + 1 < rows->len; i++)
    fill_gap (judging, wall, g_array_index (rows, gint32, i), g_array_index (rows, gint32, i + 1),
              added);
  if (added->len == 0)
    return MEND_NONE;
  return mend_if_possible (judging, edit_set_wall (wall),
                           g_strdup_printf (_ ("Lay bars in course %s too"), added->str));
}

/* The widest gap between two rows, the lowest of equal ones, of those that a row could lie in. */
static void
judge_spacing (Judging *judging, const GArray *rows)
{
  char apart[LENGTH_TEXT_SIZE];
  Length widest = ROWS_APART;
  gint32 lower = 0, upper = 0;

  for (guint i = 0; i + 1 < rows->len; i++)
    {
      gint32 a = g_array_index (rows, gint32, i), b = g_array_index (rows, gint32, i + 1);
      Length gap = row_height (judging, b) - row_height (judging, a);

      if (gap <= widest || b == a + 1)
        continue;
      widest = gap;
      lower = a;
      upper = b;
    }
  if (lower == 0)
    return;
  judging_add (
      judging, "row-spacing", SEVERITY_WARNING,
      g_strdup_printf (_ ("The bars in courses %d and %d are %s mm apart; rows that are to "
                          "bind the wall are at most 600 mm apart (EN 1996-1-1)."),
                       lower, upper, length_text (widest, apart)),
      mend_spacing (judging, rows))
      ->course
      = lower;
}

/* --- too little steel for the section --- */

static void
judge_share (Judging *judging, const GArray *rows)
{
  char diameter[LENGTH_TEXT_SIZE], apart[LENGTH_TEXT_SIZE];
  const Steel *steel = &judging->wall->steel;
  Length every = steel->every * (judging->block->height + judging->laying.bed);
  double bar = length_to_mm (steel->diameter), section;

  if (!steel->given || steel->every <= 0 || rows->len == 0)
    return;
  section = length_to_mm (every) * length_to_mm (judging->block->thickness);
  if (steel->bars * G_PI / 4 * bar * bar >= LEAST_SHARE * section)
    return;
  judging_add (judging, "row-area", SEVERITY_NOTE,
               g_strdup_printf (
                   _ ("%d bars of %s mm every %s mm are %.3f %% of the wall's section; "
                      "0.03 %% is wanted against cracks (EN 1996-1-1)."),
                   steel->bars, length_text (steel->diameter, diameter), length_text (every, apart),
                   steel->bars * G_PI / 4 * bar * bar / section * 100),
               MEND_NONE)
      ->course
      = g_array_index (rows, gint32, 0);
}

/* --- bars in a thin joint --- */

static void
judge_joint (Judging *judging, const GArray *runs)
{
  char bed[LENGTH_TEXT_SIZE], diameter[LENGTH_TEXT_SIZE], wanted[LENGTH_TEXT_SIZE];
  const SteelRun *run = runs->len > 0 ? &g_array_index (runs, SteelRun, 0) : NULL;

  if (run == NULL || judging->laying.bed >= run->diameter + BAR_ROOM)
    return;
  judging_add (judging, "row-joint", SEVERITY_NOTE,
               g_strdup_printf (
                   _ ("Bars of %s mm do not lie in a bed joint of %s mm: cut grooves for "
                      "them; a joint would have to be %s mm (EN 1996-1-1)."),
                   length_text (run->diameter, diameter), length_text (judging->laying.bed, bed),
                   length_text (run->diameter + BAR_ROOM, wanted)),
               MEND_NONE)
      ->course
      = run->course;
}

/* --- bars side by side in a thin wall --- */

static char *
words_of_width (const Judging *judging, const SteelRun *run, Length gap, Length wanted)
{
  char diameter[LENGTH_TEXT_SIZE], apart[LENGTH_TEXT_SIZE], is[LENGTH_TEXT_SIZE],
      thickness[LENGTH_TEXT_SIZE];

  length_text (run->diameter, diameter);
  length_text (wanted, is);
  length_text (judging->block->thickness, thickness);
  if (run->bars == 1)
    return g_strdup_printf (_ ("A bar of %s mm takes %s mm of width, with 25 mm at each face; the "
                               "block is %s mm thick."),
                            diameter, is, thickness);
  return g_strdup_printf (
      _ ("%d bars of %s mm side by side take %s mm of width, with %s mm between "
         "them and 25 mm at each face; the block is %s mm thick."),
      run->bars, diameter, is, length_text (gap, apart), thickness);
}

/* All rows have the same bars: the lowest stands for them. */
static void
judge_width (Judging *judging, const GArray *runs)
{
  const SteelRun *run = runs->len > 0 ? &g_array_index (runs, SteelRun, 0) : NULL;
  Length gap, wanted;

  if (run == NULL)
    return;
  gap = MAX (run->diameter, BARS_APART);
  wanted = run->bars * run->diameter + (run->bars - 1) * gap + 2 * FACE_COVER;
  if (wanted <= judging->block->thickness)
    return;
  judging_add (judging, "row-width", SEVERITY_WARNING, words_of_width (judging, run, gap, wanted),
               MEND_NONE)
      ->course
      = run->course;
}

/* --- bars that do not run past an opening as they should --- */

/* The run of a course that lies under or over an opening; NULL when there is none. */
static const SteelRun *
run_along (const GArray *runs, gint32 course, const Opening *opening)
{
  for (guint i = 0; i < runs->len; i++)
    {
      const SteelRun *run = &g_array_index (runs, SteelRun, i);

      if (run->course == course && run->from <= opening->x && run->to >= opening_right (opening))
        return run;
    }
  return NULL;
}

/* What bars fall short of going past a jamb, nothing when they reach the wall's end or a
 * movement joint. */
static Length
short_of_past (const Judging *judging, Length past, gboolean at_end)
{
  return at_end ? 0 : MAX (judging->wall->steel.past - past, 0);
}

/* Whether they stop at a movement joint, beyond which no bar goes. */
static gboolean
stops_at_joint (const Wall *wall, Length end)
{
  for (guint i = 0; i < wall->movement_joints->len; i++)
    {
      const MovementJoint *joint = wall_movement_joint_at (wall, i);

      if (end == joint->x - STEEL_END_COVER
          || end == movement_joint_right (joint) + STEEL_END_COVER)
        return TRUE;
    }
  return FALSE;
}

static void
judge_past (Judging *judging, const Opening *opening, const SteelRun *run)
{
  const Wall *wall = judging->wall;
  char is[LENGTH_TEXT_SIZE], wanted[LENGTH_TEXT_SIZE];
  Length left = opening->x - run->from, right = run->to - opening_right (opening);
  gboolean at_left = run->from <= STEEL_END_COVER || stops_at_joint (wall, run->from);
  gboolean at_right = run->to >= wall->length - STEEL_END_COVER || stops_at_joint (wall, run->to);
  Finding *finding;

  if (short_of_past (judging, left, at_left) == 0 && short_of_past (judging, right, at_right) == 0)
    return;
  gboolean on_left
      = short_of_past (judging, left, at_left) >= short_of_past (judging, right, at_right);
  length_text (on_left ? left : right, is);
  length_text (wall->steel.past, wanted);
  finding = judging_add_of (
      judging, opening, "row-past", SEVERITY_WARNING,
      on_left ? g_strdup_printf (_ ("%s: another opening stops the bars in course %d %s mm past it "
                                    "on the left; %s mm are wanted."),
                                 opening_called (opening), run->course, is, wanted)
              : g_strdup_printf (_ ("%s: another opening stops the bars in course %d %s mm past it "
                                    "on the right; %s mm are wanted."),
                                 opening_called (opening), run->course, is, wanted),
      MEND_NONE);
  finding->course = run->course;
  finding->x = on_left ? run->from : run->to;
}

static void
judge_rows_along (Judging *judging, const GArray *runs)
{
  const Wall *wall = judging->wall;

  for (guint i = 0; i < wall->openings->len; i++)
    {
      const Opening *opening = wall_opening_at (wall, i);
      gint32 under = bed_steel_course_under (wall, judging->block, opening);
      gint32 over = bed_steel_course_over (wall, judging->block, opening);
      const SteelRun *below = run_along (runs, under, opening);
      const SteelRun *above = run_along (runs, over, opening);

      if (wall->steel.under_sills && below != NULL)
        judge_past (judging, opening, below);
      if (wall->steel.over_heads && above != NULL)
        judge_past (judging, opening, above);
    }
}

void
judge_bed_steel (Judging *judging)
{
  g_autoptr (GArray) runs = bed_steel_runs (judging->wall, judging->block);
  g_autoptr (GArray) rows = rows_all_along (judging->wall, (gint32) judging->layout->courses->len);

  judge_spacing (judging, rows);
  judge_share (judging, rows);
  judge_joint (judging, runs);
  judge_width (judging, runs);
  if (judging->wall->steel.given)
    judge_rows_along (judging, runs);
}
