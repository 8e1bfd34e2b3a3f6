/* test-profile.c - walls under slopes and on stepped footings: worked by hand, and made up
 *
 * Without an argument all made-up walls; with "K/N" the K-th of N shares, so that shares run side
 * by side. */
#include <stdio.h>

#include "any-top.h"
#include "bond/lay.h"
#include "bond/profile.h"
#include "check-layout.h"
#include "laws.h"
#include "sanitized.h"

#define MM(mm) LENGTH_MM (mm)
#define SHARE_OF (SANITIZED ? 20 : 1)
#define N_SOUND (8000 / SHARE_OF)
#define N_LAWS (1500 / SHARE_OF)

static guint share = 0, n_shares = 1;

/* --- made-up walls --- */

static void
test_sound (void)
{
  guint n = 0;
  for (guint64 seed = share; seed < N_SOUND; seed += n_shares)
    {
      g_auto (AnyWall) any = any_wall (seed);
      if (!any_top (seed, any.wall, &any.block))
        continue;
      if (seed % 4 == 0)
        any_pins (seed, any.wall, &any.block);
      law_laid_right (&any, seed);
      n++;
    }
  g_test_message ("%u walls", n);
  g_assert_cmpuint (n * 10, >=, N_SOUND / n_shares * 6);
}

static void
test_from_behind (void)
{
  for (guint64 seed = share; seed < N_LAWS; seed += n_shares)
    {
      g_auto (AnyWall) any = any_wall (seed);
      if (!any_top (seed, any.wall, &any.block))
        continue;
      g_test_message ("wall %" G_GUINT64_FORMAT, seed);
      law_same_from_behind (&any);
    }
}

/* What is laid and packed is all that is under the top, but for joints. */
static double
laid_area (const Layout *layout)
{
  double area = 0;
  for (guint i = 0; i < layout->pieces->len; i++)
    area += layout_piece_area (layout, layout_piece (layout, i));
  for (guint i = 0; i < layout->packings->len; i++)
    area += packing_area (&g_array_index (layout->packings, Packing, i));
  return area;
}

/* --- by hand --- */

static Block
unit (double length, double height)
{
  Block block = block_default ();
  block.length = length_from_mm (length);
  block.height = length_from_mm (height);
  return block;
}

static Wall *
dry_wall (double length, double height)
{
  Wall *wall = wall_new ();
  wall->length = length_from_mm (length);
  wall->height = length_from_mm (height);
  wall->laying.given = LAYING_FIRST_BED | LAYING_BED | LAYING_HEAD;
  wall->laying.first_bed = wall->laying.bed = wall->laying.head = 0;
  return wall;
}

static Layout *
laid_soundly (const Wall *wall, const Block *block)
{
  g_autofree char *wrong = wall_fault (wall, block, NULL);
  g_assert_cmpstr (wrong, ==, NULL);
  Layout *layout = lay_wall (wall, block, NULL);
  g_autofree char *fault = check_layout (wall, block, layout);
  g_assert_cmpstr (fault, ==, NULL);
  return layout;
}

/* Where the pieces of a course begin and end, mm. */
static void
course_reach (const Layout *layout, guint course, double *from, double *to)
{
  const Course *at = layout_course (layout, course - 1);
  const Piece *first = layout_piece (layout, (guint) at->first);
  const Piece *last = layout_piece (layout, (guint) (at->first + at->n_pieces - 1));
  *from = length_to_mm (first->x);
  *to = length_to_mm (last->x + last->length);
}

/* 45 degrees over 4 m, dry, units 600 x 200: ten courses, each 400 shorter than the one below. A
 * run begins where 20 mm are left of it: at its bottom's end and 20 mm in. */
static void
test_gable (void)
{
  Length height;
  Block block = unit (600, 200);
  g_autoptr (Wall) wall = dry_wall (4000, 2000);
  wall_take_top (wall, top_gable (MM (4000), 0, 0, MM (2000), MM (2000), &height), MM (2000));
  g_autoptr (Layout) layout = laid_soundly (wall, &block);
  g_assert_cmpint (layout->courses->len, ==, 10);
  for (guint course = 1; course <= 10; course++)
    {
      double from, to, foot = 200.0 * (course - 1);
      course_reach (layout, course, &from, &to);
      g_assert_cmpfloat (from, ==, foot + 20);
      g_assert_cmpfloat (to, ==, 4000 - foot - 20);
    }
  /* The triangle of 4 m2, of which 20 wedges of 20 x 20 / 2 are packed. */
  g_assert_cmpfloat_with_epsilon (laid_area (layout), 4e6, 20);
  g_assert_cmpuint (layout->packings->len, ==, 20);
  double packed = 0;
  for (guint i = 0; i < layout->packings->len; i++)
    packed += packing_area (&g_array_index (layout->packings, Packing, i));
  g_assert_cmpfloat_with_epsilon (packed, 4000, 1);
  g_assert_cmpuint (layout->breaches->len, ==, 0);
  block_clear (&block);
}

/* The end piece of its first course: 20 high at the toe, 180 on to its full height. */
static void
test_outline (void)
{
  Length height;
  Block block = unit (600, 200);
  g_autoptr (Wall) wall = dry_wall (4000, 2000);
  wall_take_top (wall, top_gable (MM (4000), 0, 0, MM (2000), MM (2000), &height), MM (2000));
  g_autoptr (Layout) layout = laid_soundly (wall, &block);
  const Piece *piece = layout_piece (layout, 0);
  g_assert_cmpint (piece->shape, ==, PIECE_RAKED);
  g_assert_cmpint (piece->x, ==, MM (20));
  g_assert_cmpint (piece->height, ==, MM (200));
  g_assert_cmpint (piece->n_outline, ==, 5);
  const LayPoint *p = &g_array_index (layout->points, LayPoint, piece->outline);
  const Length right = piece->x + piece->length;
  const LayPoint wanted[] = {
    { MM (20), 0 }, { right, 0 }, { right, MM (200) }, { MM (200), MM (200) }, { MM (20), MM (20) },
  };
  for (guint i = 0; i < G_N_ELEMENTS (wanted); i++)
    {
      g_assert_cmpint (p[i].x, ==, wanted[i].x);
      g_assert_cmpint (p[i].z, ==, wanted[i].z);
    }
  g_assert_cmpfloat_with_epsilon (layout_piece_area (layout, piece),
                                  length_to_mm (piece->length) * 200 - 180 * 180 / 2.0, 1e-6);
  block_clear (&block);
}

/* 3.8 degrees: 600 rise over 9 m. The toe is what makes a piece of 150 as thick as 50 at its other
 * end: 50 - 150 x 600 / 9000 = 40. */
static void
test_shallow (void)
{
  Length height;
  Block block = unit (600, 200);
  g_autoptr (Wall) wall = dry_wall (9000, 600);
  wall_take_top (wall, top_mono (MM (9000), 0, MM (600), &height), MM (600));
  g_autoptr (Layout) layout = laid_soundly (wall, &block);
  for (guint course = 1; course <= 3; course++)
    {
      double from, to;
      course_reach (layout, course, &from, &to);
      g_assert_cmpfloat (from, ==, 3000.0 * (course - 1) + 40 * 15);
      g_assert_cmpfloat (to, ==, 9000);
    }
  g_assert_cmpfloat_with_epsilon (laid_area (layout), 2.7e6, 60);
  g_assert_cmpuint (layout->breaches->len, ==, 0);
  block_clear (&block);
}

/* A ridge that comes 45 mm into a course: a tip lower than the thinnest strip is packed. 60 mm are
 * a piece, and too short. */
static void
test_tip (void)
{
  Length height;
  Block block = unit (600, 200);
  g_autoptr (Wall) wall = dry_wall (2000, 1045);
  wall_take_top (wall, top_gable (MM (2000), MM (45), MM (45), MM (1000), MM (1045), &height),
                 MM (1045));
  g_autoptr (Layout) low = laid_soundly (wall, &block);
  g_assert_cmpint (layout_course (low, 5)->n_pieces, ==, 0);
  g_assert_cmpuint (low->breaches->len, ==, 0);
  wall_take_top (wall, top_gable (MM (2000), MM (60), MM (60), MM (1000), MM (1060), &height),
                 MM (1060));
  g_autoptr (Layout) high = laid_soundly (wall, &block);
  g_assert_cmpint (layout_course (high, 5)->n_pieces, ==, 1);
  g_assert_cmpint (layout_piece (high, (guint) layout_course (high, 5)->first)->length, ==,
                   MM (80));
  g_assert_cmpuint (high->breaches->len, ==, 1);
  g_assert_cmpint (g_array_index (high->breaches, Breach, 0).kind, ==, BREACH_MIN_RAKED);
  /* Where 80 is enough, it is none. */
  wall->laying.given |= LAYING_MIN_RAKED;
  wall->laying.min_raked = MM (80);
  g_autoptr (Layout) enough = laid_soundly (wall, &block);
  g_assert_cmpuint (enough->breaches->len, ==, 0);
  block_clear (&block);
}

/* A step in the top is a jamb: the course runs on beneath it. */
static void
test_step (void)
{
  const Length heights[] = { MM (600), MM (500) }, ends[] = { MM (900) };
  Length height;
  Block block = unit (600, 200);
  g_autoptr (Wall) wall = dry_wall (1800, 600);
  wall_take_top (wall, top_steps (heights, ends, 2, &height), MM (600));
  g_autoptr (Layout) layout = laid_soundly (wall, &block);
  const Course *top = layout_course (layout, 2);
  g_assert_cmpint (top->n_pieces, ==, 3);
  g_assert_cmpint (layout_piece (layout, (guint) top->first)->shape, ==, PIECE_WHOLE);
  g_assert_cmpint (layout_piece (layout, (guint) top->first + 1)->shape, ==, PIECE_NOTCHED);
  g_assert_cmpint (layout_piece (layout, (guint) top->first + 2)->shape, ==, PIECE_RIPPED);
  g_assert_cmpfloat (laid_area (layout), ==, 1800 * 600 - 900 * 100);
  block_clear (&block);
}

/* Units of 200, a bed of 20 and joints of 2: courses begin at 20, 222, 424. */
static void
test_bases (void)
{
  static const struct
  {
    double up, base;
  } rows[] = {
    { 0, 20 },    /* the levelling bed */
    { 202, 222 }, /* a course higher */
    { 210, 222 }, /* 12 mm of bed */
    { 212, 222 }, /* the thinnest */
    { 213, 233 }, /* the second course is ripped by 11 */
    { 201, 222 }, /* 20 would end in the bed joint below */
    { 199, 219 }, /* 1 mm of the first course is left: packed */
    { 100, 120 }, { 5, 20 }, { 15, 35 },
  };
  Block block = unit (600, 200);
  Laying laying = laying_default ();
  laying = laying_resolve (&laying, &block);
  g_autoptr (Wall) wall = wall_new ();
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    g_assert_cmpfloat (
        length_to_mm (profile_base (wall, &block, &laying, length_from_mm (rows[i].up))), ==,
        rows[i].base);
  block_clear (&block);
}

/* The foundation steps up by 300 in the middle: the first course ends there, the second is notched
 * over it and ripped from below on it. */
static void
test_foot (void)
{
  Block block = unit (600, 200);
  g_autoptr (Wall) wall = dry_wall (2400, 600);
  foot_list_add (wall->feet, MM (1500), MM (300));
  g_autoptr (Layout) layout = laid_soundly (wall, &block);
  double from, to;
  course_reach (layout, 1, &from, &to);
  g_assert_cmpfloat (to, ==, 1500);
  course_reach (layout, 2, &from, &to);
  g_assert_cmpfloat (to, ==, 2400);
  const Course *second = layout_course (layout, 1);
  const Piece *last = layout_piece (layout, (guint) (second->first + second->n_pieces - 1));
  g_assert_cmpint (last->shape, ==, PIECE_RIPPED);
  g_assert_cmpint (last->bottom, ==, MM (300));
  g_assert_cmpint (last->height, ==, MM (100));
  g_assert_cmpfloat (laid_area (layout), ==, 2400 * 600 - 900 * 300);
  block_clear (&block);
}

/* Above the other wall this one is alone. */
static void
test_up_to (void)
{
  Block block = unit (600, 200);
  g_autoptr (Wall) wall = dry_wall (2400, 800);
  wall->ends[SIDE_RIGHT]
      = (End){ .given = TRUE, .has_return = TRUE, .ret = MM (250), .through = THROUGH_ALL };
  wall->ends[SIDE_RIGHT].up_to = MM (400);
  g_autoptr (Layout) layout = laid_soundly (wall, &block);
  for (guint course = 1; course <= 4; course++)
    {
      double from, to;
      course_reach (layout, course, &from, &to);
      g_assert_cmpfloat (to, ==, course <= 2 ? 2150 : 2400);
    }
  block_clear (&block);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  if (argc > 1 && sscanf (argv[1], "%u/%u", &share, &n_shares) != 2)
    return 2;
  g_test_add_func ("/profile/gable", test_gable);
  g_test_add_func ("/profile/outline", test_outline);
  g_test_add_func ("/profile/shallow", test_shallow);
  g_test_add_func ("/profile/tip", test_tip);
  g_test_add_func ("/profile/step", test_step);
  g_test_add_func ("/profile/bases", test_bases);
  g_test_add_func ("/profile/foot", test_foot);
  g_test_add_func ("/profile/up-to", test_up_to);
  g_test_add_func ("/profile/sound", test_sound);
  g_test_add_func ("/profile/from-behind", test_from_behind);
  return g_test_run ();
}
