/* test-work.c - hours, days and pallets: cases by hand, and laws on made-up walls */
#include "takeoff/work.h"

#include <math.h>

#include "any-wall.h"
#include "bond/lay.h"
#include "edited.h"

#define NEAR 1e-6

/* --- projects to work on --- */

/* `n` times the same wall; the caller may lengthen the second by `longer`, the third by twice that
 * and so on. */
static Project *
project_of (const Wall *wall, const Block *block, guint n, Length longer)
{
  Project *project = project_new ();
  Block own = block_copy (block);

  own.id = project_block_at (project, 0)->id;
  g_free (own.key);
  own.key = g_strdup (project_block_at (project, 0)->key);
  project = edited (project, edit_set_block (&own));
  for (guint i = 0; i < n; i++)
    {
      g_autoptr (Wall) on = wall_copy (wall);

      on->block = own.id;
      on->length += (Length) i * longer;
      g_clear_pointer (&on->key, g_free);
      for (guint k = 0; k < on->openings->len; k++)
        g_clear_pointer (&g_array_index (on->openings, Opening, k).key, g_free);
      project = edited (project, edit_add_wall (on));
    }
  block_clear (&own);
  return project;
}

typedef struct
{
  Project *project;
  Layout *layouts[12];
  Work *work;
} Worked;

static Worked
work_on (Project *project, const WorkRates *rates)
{
  Worked worked = { .project = project };

  g_assert_cmpuint (project->walls->len, <=, G_N_ELEMENTS (worked.layouts));
  for (guint i = 0; i < project->walls->len; i++)
    {
      const Wall *wall = project_wall_at (project, i);

      worked.layouts[i] = lay_wall (wall, project_block (project, wall->block), NULL);
    }
  worked.work = work_new (project, worked.layouts, rates, NULL);
  g_assert_nonnull (worked.work);
  return worked;
}

static void
worked_clear (Worked *worked)
{
  for (guint i = 0; i < worked->project->walls->len; i++)
    layout_unref (worked->layouts[i]);
  work_free (worked->work);
  project_unref (worked->project);
}
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Worked, worked_clear)

static const WorkDay *
day_at (const Work *work, guint i)
{
  return &g_array_index (work->days, WorkDay, i);
}

static const WorkStint *
stint_at (const Work *work, guint i)
{
  return &g_array_index (work->stints, WorkStint, i);
}

static const WorkPallet *
pallet_at (const Work *work, guint i)
{
  return &g_array_index (work->pallets, WorkPallet, i);
}

/* 10 units of 600 and 9 joints of 2 long, ten courses of 200 with joints of 2 on a bed of 20 high:
 * in half bond 105 pieces, of which 10 are cut pieces of 299: with a kerf of 2 two of a unit. */
static Wall *
half_bond_wall (void)
{
  Wall *wall = wall_new ();

  wall->length = LENGTH_MM (6018);
  wall->height = LENGTH_MM (2038);
  wall->laying.given = LAYING_KERF;
  wall->laying.kerf = LENGTH_MM (2);
  return wall;
}

static Worked
work_on_plain (guint n, const WorkRates *rates)
{
  g_autoptr (Wall) wall = half_bond_wall ();
  Block block = block_default ();
  Worked worked = work_on (project_of (wall, &block, n, 0), rates);

  block_clear (&block);
  return worked;
}

/* --- hours --- */

/* By hand: five courses of 10 x 600 x 200, five of 9 x 600 x 200 and 2 x 299 x 200 are 11.998 m2;
 * ten cuts; 6.018 m of bed. The courses with whole ends come first. */
static void
test_hours (void)
{
  WorkRates rates = work_rates_default ();
  g_auto (Worked) worked = work_on_plain (1, &rates);
  const WorkWall *wall = work_wall (worked.work, 0);
  const WorkCourse *first = &g_array_index (wall->courses, WorkCourse, 0);
  const WorkCourse *second = first + 1;

  g_assert_cmpint (wall->sum.pieces, ==, 105);
  g_assert_cmpint (wall->sum.cuts, ==, 10);
  g_assert_cmpfloat_with_epsilon (wall->sum.area, 11.998, NEAR);
  g_assert_cmpfloat_with_epsilon (wall->sum.laying, 11.998 * 0.55, NEAR);
  g_assert_cmpfloat_with_epsilon (wall->sum.sawing, 10 * 1.5 / 60, NEAR);
  g_assert_cmpfloat_with_epsilon (wall->sum.levelling, 6.018 * 10 / 60, NEAR);
  g_assert_cmpfloat_with_epsilon (worked.work->hours, 6.5989 + 0.25 + 1.003, NEAR);
  g_assert_cmpfloat_with_epsilon (work_course_hours (first), 1.2 * 0.55 + 1.003, NEAR);
  g_assert_cmpfloat_with_epsilon (work_course_hours (second), 1.1996 * 0.55 + 0.05, NEAR);
}

/* The same wall, all of it a course and its joint higher up on the footing: as much bed. And with a
 * step in the middle, too. */
static void
test_hours_on_steps (void)
{
  WorkRates rates = work_rates_default ();
  g_autoptr (Wall) wall = half_bond_wall ();
  Block block = block_default ();

  wall->height += LENGTH_MM (202);
  foot_list_add (wall->feet, 0, LENGTH_MM (202));
  g_auto (Worked) raised = work_on (project_of (wall, &block, 1, 0), &rates);
  g_assert_cmpfloat_with_epsilon (work_wall (raised.work, 0)->sum.levelling, 6.018 * 10 / 60, NEAR);
  g_array_index (wall->feet, Foot, 0).x = LENGTH_MM (3000);
  g_auto (Worked) stepped = work_on (project_of (wall, &block, 1, 0), &rates);
  g_assert_cmpfloat_with_epsilon (work_wall (stepped.work, 0)->sum.levelling, 6.018 * 10 / 60,
                                  NEAR);
  block_clear (&block);
}

static void
test_hours_by_piece (void)
{
  WorkRates rates = work_rates_default ();

  rates.minutes_a_block = 6;
  rates.minutes_a_cut = 2;
  rates.minutes_a_metre = 0;
  g_auto (Worked) worked = work_on_plain (1, &rates);
  g_assert_cmpfloat_with_epsilon (worked.work->hours, 105 * 0.1 + 10 / 30.0, NEAR);
}

/* A block's mass is 600 x 200 x thickness x 500 kg/m3, and 15 % more as it is lifted. */
static void
test_heaviest (void)
{
  WorkRates rates = work_rates_default ();
  g_autoptr (Wall) wall = half_bond_wall ();
  Block block = block_default ();

  block.thickness = LENGTH_MM (365);
  g_auto (Worked) worked = work_on (project_of (wall, &block, 1, 0), &rates);
  g_assert_cmpint (work_wall (worked.work, 0)->heaviest, ==, 0);
  g_assert_cmpfloat_with_epsilon (work_wall (worked.work, 0)->mass, 21.9 * 1.15, NEAR);
  g_assert_cmpfloat_with_epsilon (work_wall (worked.work, 0)->sum.mass, 11.998 * 0.365 * 500 * 1.15,
                                  NEAR);
  block_clear (&block);
}

static void
test_cuts_by_shape (void)
{
  guint notched = 0, ripped = 0;

  for (guint64 seed = 1; seed <= 200; seed++)
    {
      g_auto (AnyWall) any = any_wall (seed);
      g_autoptr (Layout) layout = lay_wall (any.wall, &any.block, NULL);

      for (guint i = 0; i < layout->pieces->len; i++)
        {
          const Piece *piece = layout_piece (layout, i);
          const gint32 cuts = work_cuts (layout, piece, &any.block);

          g_assert_cmpint (cuts == 0, ==, piece->shape == PIECE_WHOLE);
          if (piece->shape == PIECE_SHORT)
            g_assert_cmpint (cuts, ==, 1);
          if (piece->shape == PIECE_RIPPED)
            g_assert_cmpint (cuts, ==, piece->length < any.block.length ? 2 : 1);
          if (piece->shape == PIECE_NOTCHED && piece->n_outline == 6)
            g_assert_cmpint (cuts, ==,
                             2 + (piece->length < any.block.length)
                                 + (piece->height < any.block.height));
          notched += piece->shape == PIECE_NOTCHED;
          ripped += piece->shape == PIECE_RIPPED;
        }
    }
  g_assert_cmpuint (notched, >, 50);
  g_assert_cmpuint (ripped, >, 50);
}

/* N equal walls take N times the hours of one. */
static void
test_equal_walls (void)
{
  WorkRates rates = work_rates_default ();
  g_auto (Worked) one = work_on_plain (1, &rates);

  for (guint n = 2; n <= 5; n++)
    {
      g_auto (Worked) many = work_on_plain (n, &rates);

      g_assert_cmpfloat_with_epsilon (many.work->hours, n * one.work->hours, NEAR);
      for (guint i = 0; i < n; i++)
        g_assert_cmpfloat (work_course_hours (&work_wall (many.work, i)->sum), ==, one.work->hours);
    }
}

/* --- days --- */

/* Course k ends at 20 + 200 + 202 (k - 1): the seventh at 1432, the eighth at 1634. */
static void
test_rise (void)
{
  WorkRates rates = work_rates_default ();

  rates.gang = 10;
  g_auto (Worked) worked = work_on_plain (1, &rates);
  g_assert_cmpuint (worked.work->days->len, ==, 2);
  g_assert_cmpint (stint_at (worked.work, 0)->from, ==, 1);
  g_assert_cmpint (stint_at (worked.work, 0)->to, ==, 7);
  g_assert_false (stint_at (worked.work, 0)->braced);
  g_assert_cmpint (stint_at (worked.work, 1)->from, ==, 8);
  g_assert_cmpint (stint_at (worked.work, 1)->to, ==, 10);
  g_assert_true (stint_at (worked.work, 1)->braced);
}

/* One person, 2 hours a day. By hand: the courses take 1.663, 0.710, 0.660, 0.710, ... hours: the
 * first day ends with the first, the next ones hold two courses each, which are 1.370 h. */
static void
test_hours_a_day (void)
{
  WorkRates rates = work_rates_default ();

  rates.gang = 1;
  rates.hours_a_day = 2;
  g_auto (Worked) worked = work_on_plain (1, &rates);
  g_assert_cmpuint (worked.work->days->len, ==, 6);
  g_assert_cmpint (stint_at (worked.work, 0)->to, ==, 1);
  for (guint d = 1; d < 5; d++)
    {
      g_assert_cmpint (stint_at (worked.work, d)->from, ==, 2 * (gint32) d);
      g_assert_cmpint (stint_at (worked.work, d)->to, ==, 2 * (gint32) d + 1);
      g_assert_cmpfloat_with_epsilon (day_at (worked.work, d)->hours, 0.70978 + 0.66, NEAR);
    }
}

/* A course of ten or eleven pieces, six a person: gangs of one take two days for each. */
static void
test_lifts (void)
{
  WorkRates rates = work_rates_default ();

  rates.gang = 1;
  rates.lifts_a_day = 6;
  g_auto (Worked) worked = work_on_plain (1, &rates);
  g_assert_cmpuint (worked.work->days->len, ==, 20);
  g_assert_cmpfloat_with_epsilon (day_at (worked.work, 0)->lifts, 6, NEAR);
  g_assert_cmpfloat_with_epsilon (day_at (worked.work, 1)->lifts, 4, NEAR);
  g_assert_cmpint (stint_at (worked.work, 1)->from, ==, 1);
}

static Length
course_top (const Work *work, guint wall, gint32 number)
{
  return number == 0 ? 0
                     : g_array_index (work_wall (work, wall)->courses, WorkCourse, number - 1).top;
}

/* The courses of a wall come one after the other, each once or on days that follow. */
static void
check_stints_of (const Work *work, guint wall)
{
  gint32 last = 0;

  for (guint i = 0; i < work->stints->len; i++)
    {
      const WorkStint *stint = stint_at (work, i);

      if (stint->wall != wall)
        continue;
      g_assert_true (stint->from == last + 1 || (last > 0 && stint->from == last));
      g_assert_cmpint (stint->to, >=, stint->from);
      if (stint->to > stint->from)
        g_assert_cmpint (course_top (work, wall, stint->to)
                             - course_top (work, wall, stint->from - 1),
                         <=, work->rates.rise);
      last = stint->to;
    }
  g_assert_cmpint (last, ==, (gint32) work_wall (work, wall)->courses->len);
}

static void
check_days (const Work *work)
{
  double hours = 0, lifts = 0, pieces = 0;

  for (guint d = 0; d < work->days->len; d++)
    {
      const WorkDay *day = day_at (work, d);

      g_assert_cmpuint (day->n, >, 0);
      g_assert_cmpfloat (day->hours, <=, work->rates.gang * work->rates.hours_a_day + NEAR);
      if (work->rates.lifts_a_day > 0)
        g_assert_cmpfloat (day->lifts, <=,
                           (double) work->rates.gang * work->rates.lifts_a_day + NEAR);
      hours += day->hours;
      lifts += day->lifts;
    }
  for (guint i = 0; i < work->walls->len; i++)
    {
      check_stints_of (work, i);
      pieces += work_wall (work, i)->sum.pieces;
    }
  g_assert_cmpfloat_with_epsilon (hours, work->hours, NEAR);
  g_assert_cmpfloat_with_epsilon (lifts, pieces, NEAR);
}

static WorkRates
any_rates (AnyRandom *random)
{
  WorkRates rates = work_rates_default ();

  rates.gang = (gint32) any_between (random, 1, 4);
  rates.hours_a_day = (double) any_between (random, 1, 20) / 2;
  rates.minutes_a_block = any_percent (random, 50) ? (double) any_between (random, 1, 30) : 0;
  rates.rise = LENGTH_MM (any_between (random, 50, 2500));
  rates.lifts_a_day = any_percent (random, 50) ? (gint32) any_between (random, 1, 200) : 0;
  rates.blocks_a_pallet = any_percent (random, 50) ? (gint32) any_between (random, 5, 90) : 0;
  return rates;
}

/* --- pallets --- */

static double
place_mm (const WorkPallet *pallet)
{
  return length_to_mm (pallet->x);
}

/* By hand: 95 whole units and 5 that two halves of 299 are sawn from are 100, so of 25 a pallet
 * four, each in the middle of a quarter of the wall. By mass: 15 kg x 1.35 is 20.25, and 49 of them
 * are 992 kg. */
static void
test_pallets (void)
{
  WorkRates rates = work_rates_default ();
  g_auto (Worked) by_mass = work_on_plain (1, &rates);

  g_assert_cmpint (by_mass.work->blocks[0].blocks, ==, 100);
  g_assert_cmpint (by_mass.work->blocks[0].a_pallet, ==, 49);
  g_assert_cmpint (by_mass.work->blocks[0].pallets, ==, 3);
  rates.blocks_a_pallet = 25;
  g_auto (Worked) worked = work_on_plain (1, &rates);
  g_assert_cmpuint (worked.work->pallets->len, ==, 4);
  for (guint i = 0; i < 4; i++)
    {
      g_assert_cmpfloat_with_epsilon (place_mm (pallet_at (worked.work, i)),
                                      6018 * (2 * i + 1) / 8.0, 2);
      g_assert_cmpint (pallet_at (worked.work, i)->blocks, ==, 25);
      g_assert_false (pallet_at (worked.work, i)->in_the_way);
    }
}

/* Of two walls of 100 units, 120 a pallet: both pallets serve a wall each. Of 200 there is one, at
 * the end of the first wall; its middle stands half its width from there. */
static void
test_pallets_of_walls (void)
{
  WorkRates rates = work_rates_default ();

  rates.blocks_a_pallet = 120;
  g_auto (Worked) two = work_on_plain (2, &rates);
  g_assert_cmpuint (two.work->pallets->len, ==, 2);
  for (guint i = 0; i < 2; i++)
    {
      g_assert_cmpuint (pallet_at (two.work, i)->wall, ==, i);
      g_assert_cmpfloat_with_epsilon (place_mm (pallet_at (two.work, i)), 3009, 2);
    }
  rates.blocks_a_pallet = 200;
  g_auto (Worked) one = work_on_plain (2, &rates);
  g_assert_cmpuint (one.work->pallets->len, ==, 1);
  g_assert_cmpuint (pallet_at (one.work, 0)->wall, ==, 0);
  g_assert_cmpfloat_with_epsilon (place_mm (pallet_at (one.work, 0)), 6018 - 600, 2);
}

/* A door from 2600 to 3500: the one pallet would stand at about 3009, and goes to the left of it,
 * where its right edge is at 2600. */
static void
test_clear_of_a_door (void)
{
  WorkRates rates = work_rates_default ();
  g_autoptr (Wall) wall = half_bond_wall ();
  Block block = block_default ();
  Opening door = opening_default (OPENING_DOOR);

  door.id.n = 1;
  door.x = LENGTH_MM (2600);
  door.width = LENGTH_MM (900);
  door.height = LENGTH_MM (1800);
  g_array_append_val (wall->openings, door);
  rates.blocks_a_pallet = 200;
  g_auto (Worked) worked = work_on (project_of (wall, &block, 1, 0), &rates);
  g_assert_cmpuint (worked.work->pallets->len, ==, 1);
  g_assert_cmpint (pallet_at (worked.work, 0)->x, ==, LENGTH_MM (2000));
  g_assert_false (pallet_at (worked.work, 0)->in_the_way);
  block_clear (&block);
}

/* Blocks times the way to their pallet: slices of 10 mm of each piece, each carried from the
 * pallet at `x` of the stretch `from` .. `to` of the wall. */
static double
carried (const Layout *layout, double from, double to, double x)
{
  double sum = 0;

  for (guint i = 0; i < layout->pieces->len; i++)
    {
      const Piece *piece = layout_piece (layout, i);
      const double left = length_to_mm (piece->x), length = length_to_mm (piece->length);
      const double a_mm = layout_piece_area (layout, piece) / length;

      for (double at = left + 5; at < left + length; at += 10)
        if (at >= from && at < to)
          sum += 10 * a_mm * fabs (at - x);
    }
  return sum;
}

/* One pallet for a whole wall with a window: no other place is nearer to all blocks. */
static void
test_shortest_way (void)
{
  WorkRates rates = work_rates_default ();

  rates.blocks_a_pallet = 100000;
  for (int at = 200; at <= 4000; at += 380)
    {
      g_autoptr (Wall) wall = half_bond_wall ();
      Block block = block_default ();
      Opening window = opening_default (OPENING_WINDOW);

      window.id.n = 1;
      window.x = LENGTH_MM (at);
      window.width = LENGTH_MM (1800);
      window.height = LENGTH_MM (1000);
      g_array_append_val (wall->openings, window);
      g_auto (Worked) worked = work_on (project_of (wall, &block, 1, 0), &rates);
      const double x = place_mm (pallet_at (worked.work, 0));
      const double best = carried (worked.layouts[0], 0, 6018, x);

      for (double other = 600; other <= 5418; other += 100)
        g_assert_cmpfloat (best, <=, carried (worked.layouts[0], 0, 6018, other) * (1 + 1e-4));
      block_clear (&block);
    }
}

static void
check_free_place (const Worked *worked, guint i)
{
  const WorkPallet *pallet = pallet_at (worked->work, i);
  const Wall *wall = project_wall_at (worked->project, pallet->wall);
  const Length half = PALLET_WIDTH / 2;

  if (pallet->in_the_way)
    return;
  if (wall->length >= PALLET_WIDTH)
    {
      g_assert_cmpint (pallet->x, >=, half);
      g_assert_cmpint (pallet->x, <=, wall->length - half);
    }
  for (guint k = 0; k < wall->openings->len; k++)
    {
      const Opening *opening = wall_opening_at (wall, k);

      if (opening->kind == OPENING_DOOR)
        g_assert_true (opening_right (opening) <= pallet->x - half
                       || opening->x >= pallet->x + half);
    }
  for (guint k = 0; k < i; k++)
    if (pallet_at (worked->work, k)->wall == pallet->wall
        && !pallet_at (worked->work, k)->in_the_way)
      g_assert_cmpint (ABS (pallet_at (worked->work, k)->x - pallet->x), >=, PALLET_WIDTH);
}

static void
check_pallets (const Worked *worked)
{
  const WorkBlocks *blocks = &worked->work->blocks[0];
  gint32 served = 0;

  g_assert_cmpint ((gint64) blocks->pallets * blocks->a_pallet, >=, blocks->blocks);
  g_assert_cmpint (((gint64) blocks->pallets - 1) * blocks->a_pallet, <, blocks->blocks);
  g_assert_cmpint (worked->work->pallets->len, ==, blocks->pallets);
  for (guint i = 0; i < worked->work->pallets->len; i++)
    {
      check_free_place (worked, i);
      served += pallet_at (worked->work, i)->blocks;
      g_assert_cmpint (pallet_at (worked->work, i)->blocks, <=, blocks->a_pallet);
    }
  g_assert_cmpint (served, ==, blocks->blocks);
}

static void
test_any_walls (void)
{
  guint free_places = 0, taken = 0, several_days = 0;

  for (guint64 seed = 1; seed <= 150; seed++)
    {
      AnyRandom random = { seed };
      g_auto (AnyWall) any = any_wall (seed + 5000);
      const guint n = (guint) any_between (&random, 1, 5);
      const WorkRates rates = any_rates (&random);
      g_auto (Worked) worked
          = work_on (project_of (any.wall, &any.block, n, LENGTH_MM (37)), &rates);

      check_days (worked.work);
      check_pallets (&worked);
      several_days += worked.work->days->len > 2;
      for (guint i = 0; i < worked.work->pallets->len; i++)
        *(pallet_at (worked.work, i)->in_the_way ? &taken : &free_places) += 1;
    }
  g_assert_cmpuint (free_places, >, 100);
  g_assert_cmpuint (taken, >, 10);
  g_assert_cmpuint (several_days, >, 50);
}

static void
test_no_wall (void)
{
  WorkRates rates = work_rates_default ();
  g_auto (Worked) worked = work_on (project_new (), &rates);

  g_assert_cmpuint (worked.work->days->len, ==, 0);
  g_assert_cmpuint (worked.work->pallets->len, ==, 0);
  g_assert_cmpint (worked.work->blocks[0].pallets, ==, 0);
  g_assert_cmpfloat (worked.work->hours, ==, 0);
}

static void
test_stop (void)
{
  WorkRates rates = work_rates_default ();
  g_auto (Worked) worked = work_on_plain (1, &rates);
  const gint stop = 1;

  g_assert_null (work_new (worked.project, worked.layouts, &rates, &stop));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/work/hours/by-hand", test_hours);
  g_test_add_func ("/work/hours/on-steps", test_hours_on_steps);
  g_test_add_func ("/work/hours/by-piece", test_hours_by_piece);
  g_test_add_func ("/work/hours/equal-walls", test_equal_walls);
  g_test_add_func ("/work/cuts/by-shape", test_cuts_by_shape);
  g_test_add_func ("/work/heaviest/by-hand", test_heaviest);
  g_test_add_func ("/work/days/rise", test_rise);
  g_test_add_func ("/work/days/hours", test_hours_a_day);
  g_test_add_func ("/work/days/lifts", test_lifts);
  g_test_add_func ("/work/pallets/by-hand", test_pallets);
  g_test_add_func ("/work/pallets/of-two-walls", test_pallets_of_walls);
  g_test_add_func ("/work/pallets/clear-of-a-door", test_clear_of_a_door);
  g_test_add_func ("/work/pallets/shortest-way", test_shortest_way);
  g_test_add_func ("/work/any-walls/laws", test_any_walls);
  g_test_add_func ("/work/no-wall/nothing", test_no_wall);
  g_test_add_func ("/work/stop/no-answer", test_stop);
  return g_test_run ();
}
