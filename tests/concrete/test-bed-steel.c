/* test-bed-steel.c - rows of bars in the bed joints */
#include "concrete/bed-steel.h"

#include "any-wall.h"
#include "bond/gauge.h"

/* Courses of 200 mm on a bed of 25 mm with joints of 2 mm: the top of course k is at 23 + 202 k, so
 * 831 for course 4, 1033 for 5, 1437 for 7, 1639 for 8, 2245 for 11 and 2447 for 12. */
typedef struct
{
  const char *what;
  int length;
  gboolean left_return, right_return;
  int every;
  gboolean under_sills, over_heads;
  int by_hand, omitted; /* courses; 0: none */
  struct
  {
    int x, width, sill, height;
  } openings[2];    /* width 0: none */
  const char *runs; /* course:from-to/laps/length of a bar */
} Row;

static const Row rows[] = {
  { "no steel", 8400, FALSE, FALSE, 0, FALSE, FALSE, 0, 0, { { 0 } }, "" },
  { "every fourth",
    8400,
    FALSE,
    FALSE,
    4,
    FALSE,
    FALSE,
    0,
    0,
    { { 0 } },
    "4:25-8375/1/8650 8:25-8375/1/8650 12:25-8375/1/8650 " },
  { "through returns", 8400, TRUE, TRUE, 12, FALSE, FALSE, 0, 0, { { 0 } }, "12:0-8400/1/8700 " },
  { "one return", 5000, FALSE, TRUE, 12, FALSE, FALSE, 0, 0, { { 0 } }, "12:25-5000/0/4975 " },
  { "stops at a window, runs under and over it",
    8400,
    FALSE,
    FALSE,
    4,
    FALSE,
    FALSE,
    0,
    0,
    { { 1800, 1200, 1033, 1200 } },
    "4:25-8375/1/8650 8:25-1775/0/1750 8:3025-8375/0/5350 12:25-8375/1/8650 " },
  { "under the sill",
    8400,
    FALSE,
    FALSE,
    0,
    TRUE,
    FALSE,
    0,
    0,
    { { 1800, 1200, 1033, 1200 } },
    "5:1200-3600/0/2400 " },
  { "the nearest course below a sill that meets none",
    8400,
    FALSE,
    FALSE,
    0,
    TRUE,
    FALSE,
    0,
    0,
    { { 1800, 1200, 1032, 1200 } },
    "4:1200-3600/0/2400 " },
  { "over the head, where 12 mm of course 11 are mortar",
    8400,
    FALSE,
    FALSE,
    0,
    FALSE,
    TRUE,
    0,
    0,
    { { 1800, 1200, 1033, 1200 } },
    "12:1200-3600/0/2400 " },
  { "over the head, where course 11 runs on with 45 mm",
    8400,
    FALSE,
    FALSE,
    0,
    FALSE,
    TRUE,
    0,
    0,
    { { 1800, 1200, 1033, 1167 } },
    "11:1200-3600/0/2400 " },
  { "over a head that meets course 11",
    8400,
    FALSE,
    FALSE,
    0,
    FALSE,
    TRUE,
    0,
    0,
    { { 1800, 1200, 1033, 1212 } },
    "12:1200-3600/0/2400 " },
  { "no course over the head",
    8400,
    FALSE,
    FALSE,
    0,
    FALSE,
    TRUE,
    0,
    0,
    { { 1800, 1200, 1033, 1616 } },
    "" },
  { "course 11 ends at a head that meets it",
    4000,
    FALSE,
    FALSE,
    11,
    FALSE,
    FALSE,
    0,
    0,
    { { 1800, 1200, 1033, 1212 } },
    "11:25-1775/0/1750 11:3025-3975/0/950 " },
  { "course 5 runs under a sill that meets it",
    4000,
    FALSE,
    FALSE,
    0,
    FALSE,
    FALSE,
    5,
    0,
    { { 1800, 1200, 1033, 1212 } },
    "5:25-3975/0/3950 " },
  { "to the wall's end",
    8400,
    FALSE,
    FALSE,
    0,
    TRUE,
    FALSE,
    0,
    0,
    { { 300, 600, 1033, 1200 } },
    "5:25-1500/0/1475 " },
  { "to the corner",
    8400,
    TRUE,
    FALSE,
    0,
    TRUE,
    FALSE,
    0,
    0,
    { { 300, 600, 1033, 1200 } },
    "5:0-1500/0/1500 " },
  { "two windows in one run",
    8400,
    FALSE,
    FALSE,
    0,
    TRUE,
    FALSE,
    0,
    0,
    { { 1800, 1200, 1033, 1200 }, { 3600, 600, 1033, 600 } },
    "5:1200-4800/0/3600 " },
  { "two windows that meet",
    8400,
    FALSE,
    FALSE,
    0,
    TRUE,
    FALSE,
    0,
    0,
    { { 1800, 1200, 1033, 1200 }, { 4200, 600, 1033, 600 } },
    "5:1200-5400/0/4200 " },
  { "two windows apart",
    8400,
    FALSE,
    FALSE,
    0,
    TRUE,
    FALSE,
    0,
    0,
    { { 1800, 1200, 1033, 1200 }, { 4300, 600, 1033, 600 } },
    "5:1200-3600/0/2400 5:3700-5500/0/1800 " },
  { "a door in the way",
    8400,
    FALSE,
    FALSE,
    0,
    TRUE,
    FALSE,
    0,
    0,
    { { 1800, 1200, 1437, 600 }, { 3300, 900, 0, 2100 } },
    "7:1200-3275/0/2075 " },
  { "a door has no sill to lie under",
    8400,
    FALSE,
    FALSE,
    0,
    TRUE,
    FALSE,
    0,
    0,
    { { 3300, 900, 0, 2100 } },
    "" },
  { "by hand only", 5000, FALSE, FALSE, 0, FALSE, FALSE, 3, 0, { { 0 } }, "3:25-4975/0/4950 " },
  { "taken away by hand",
    5000,
    FALSE,
    FALSE,
    6,
    FALSE,
    FALSE,
    0,
    6,
    { { 0 } },
    "12:25-4975/0/4950 " },
  { "by hand beyond the wall", 5000, FALSE, FALSE, 0, FALSE, FALSE, 14, 0, { { 0 } }, "" },
  { "by hand all along where a window alone would have less",
    5000,
    FALSE,
    FALSE,
    0,
    TRUE,
    FALSE,
    5,
    0,
    { { 1800, 1200, 1033, 1200 } },
    "5:25-4975/0/4950 " },
  { "a stock length, no lap",
    6050,
    FALSE,
    FALSE,
    12,
    FALSE,
    FALSE,
    0,
    0,
    { { 0 } },
    "12:25-6025/0/6000 " },
  { "a millimetre more",
    6051,
    FALSE,
    FALSE,
    12,
    FALSE,
    FALSE,
    0,
    0,
    { { 0 } },
    "12:25-6026/1/6301 " },
  { "two stock lengths",
    11750,
    FALSE,
    FALSE,
    12,
    FALSE,
    FALSE,
    0,
    0,
    { { 0 } },
    "12:25-11725/1/12000 " },
  { "a millimetre more than two",
    11751,
    FALSE,
    FALSE,
    12,
    FALSE,
    FALSE,
    0,
    0,
    { { 0 } },
    "12:25-11726/2/12301 " },
};

static Wall *
wall_of (const Row *row)
{
  Wall *wall = wall_new ();

  wall->length = LENGTH_MM (row->length);
  wall->height = LENGTH_MM (2649);
  wall->laying.given = LAYING_FIRST_BED;
  wall->laying.first_bed = LENGTH_MM (25);
  wall->ends[SIDE_LEFT].ret = row->left_return ? LENGTH_MM (250) : 0;
  wall->ends[SIDE_RIGHT].ret = row->right_return ? LENGTH_MM (250) : 0;
  wall->steel.given = row->every > 0 || row->under_sills || row->over_heads;
  wall->steel.every = row->every;
  wall->steel.under_sills = row->under_sills;
  wall->steel.over_heads = row->over_heads;
  for (int i = 0; i < 2 && row->openings[i].width > 0; i++)
    {
      Opening opening = opening_default (OPENING_WINDOW);

      opening.x = LENGTH_MM (row->openings[i].x);
      opening.width = LENGTH_MM (row->openings[i].width);
      opening.sill = LENGTH_MM (row->openings[i].sill);
      opening.height = LENGTH_MM (row->openings[i].height);
      g_array_append_val (wall->openings, opening);
    }
  for (int omit = 0; omit < 2; omit++)
    {
      SteelRow by_hand = { .course = omit ? row->omitted : row->by_hand, .omit = omit };

      if (by_hand.course > 0)
        g_array_append_val (wall->steel_rows, by_hand);
    }
  return wall;
}

static char *
runs_text (const GArray *runs)
{
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < runs->len; i++)
    {
      const SteelRun *run = &g_array_index (runs, SteelRun, i);

      g_string_append_printf (text, "%d:%g-%g/%d/%g ", run->course, length_to_mm (run->from),
                              length_to_mm (run->to), run->n_laps, length_to_mm (run->bar_length));
    }
  return g_string_free (text, FALSE);
}

static void
test_rows (void)
{
  Block block = block_default ();

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (Wall) wall = wall_of (&rows[i]);
      g_autoptr (GArray) runs = bed_steel_runs (wall, &block);
      g_autofree char *text = runs_text (runs);

      g_test_message ("%s", rows[i].what);
      g_assert_cmpstr (text, ==, rows[i].runs);
      for (guint k = 0; k < runs->len; k++)
        {
          g_assert_cmpint (g_array_index (runs, SteelRun, k).bars, ==, 2);
          g_assert_cmpint (g_array_index (runs, SteelRun, k).diameter, ==, LENGTH_MM (6));
        }
    }
  block_clear (&block);
}

/* 45 degrees from eaves at 1000: the tops of courses 8 and 16, 1634 and 3250, meet it at 634 and at
 * 2250. A step of 300 leaves nothing of course 1. */
static void
test_top_and_foot (void)
{
  Block block = block_default ();
  g_autoptr (Wall) wall = wall_new ();
  Length height;

  wall_take_top (wall,
                 top_gable (LENGTH_MM (6000), LENGTH_MM (1000), LENGTH_MM (1000), LENGTH_MM (3000),
                            LENGTH_MM (4000), &height),
                 LENGTH_MM (4000));
  wall->steel.given = TRUE;
  wall->steel.set = STEEL_EVERY;
  wall->steel.every = 8;
  {
    g_autoptr (GArray) runs = bed_steel_runs (wall, &block);
    g_autofree char *text = runs_text (runs);

    g_assert_cmpstr (text, ==, "8:659-5341/0/4682 16:2275-3725/0/1450 ");
  }
  foot_list_add (wall->feet, LENGTH_MM (2000), LENGTH_MM (300));
  wall->steel.every = 0;
  SteelRow row = { .course = 1 };
  g_array_append_val (wall->steel_rows, row);
  g_autoptr (GArray) runs = bed_steel_runs (wall, &block);
  g_autofree char *text = runs_text (runs);
  g_assert_cmpstr (text, ==, "1:25-1975/0/1950 ");
  block_clear (&block);
}

/* EN 10080, nominal masses; R1.2 of docs/rules.md, read in a public table; 5 mm from the formula.
 */
static void
test_mass (void)
{
  static const struct
  {
    int diameter;
    double mass;
  } masses[] = { { 5, 0.154 },  { 6, 0.222 }, { 8, 0.395 }, { 10, 0.617 },
                 { 12, 0.888 }, { 14, 1.21 }, { 16, 1.58 }, { 20, 2.47 } };

  for (guint i = 0; i < G_N_ELEMENTS (masses); i++)
    g_assert_cmpfloat_with_epsilon (bed_steel_mass_per_metre (LENGTH_MM (masses[i].diameter)),
                                    masses[i].mass, 1e-9);
}

/* --- made-up walls --- */

static void
add_steel (AnyWall *any, guint64 seed)
{
  AnyRandom random = { seed };
  Steel *steel = &any->wall->steel;

  *steel = steel_default ();
  steel->given = TRUE;
  steel->every = (gint32) any_between (&random, 0, 5);
  steel->under_sills = any_percent (&random, 60);
  steel->over_heads = any_percent (&random, 60);
  steel->past = LENGTH_MM (any_between (&random, 0, 900));
  steel->lap = LENGTH_MM (any_between (&random, 0, 700));
  g_array_set_size (any->wall->steel_rows, 0);
  for (gint32 course = 1; course <= 14; course++)
    {
      SteelRow row = { .course = course, .omit = any_percent (&random, 50) };

      if (any_percent (&random, 20))
        g_array_append_val (any->wall->steel_rows, row);
    }
}

static void
check_clear_of (const SteelRun *run, Length z, const Opening *opening)
{
  Length near = STEEL_END_COVER;

  if (opening->sill >= z || z - opening_head (opening) > LENGTH_MM (20))
    return;
  if (run->from < opening->x)
    g_assert_cmpint (run->to, <=, opening->x - near);
  else
    g_assert_cmpint (run->from, >=, opening_right (opening) + near);
}

static void
check_run (const AnyWall *any, const SteelRun *run, const SteelRun *last)
{
  const Wall *wall = any->wall;
  Laying laying = laying_resolve (&wall->laying, &any->block);
  Length top = laying.first_bed + run->course * (any->block.height + laying.bed) - laying.bed;
  Length least = wall->ends[SIDE_LEFT].ret > 0 ? 0 : STEEL_END_COVER;
  Length most = wall->length - (wall->ends[SIDE_RIGHT].ret > 0 ? 0 : STEEL_END_COVER);
  gint64 bars = (gint64) (run->n_laps + 1) * STEEL_STOCK;

  g_assert_cmpint (bed_steel_has_row (wall, &any->block, run->course), ==, TRUE);
  g_assert_cmpint (run->from, >=, least);
  g_assert_cmpint (run->to, <=, most);
  g_assert_cmpint (run->from, <, run->to);
  g_assert_cmpint (run->bar_length, ==, run->to - run->from + run->n_laps * wall->steel.lap);
  g_assert_cmpint (run->bar_length, <=, bars);
  g_assert_cmpint (run->bar_length, >, bars - STEEL_STOCK);
  if (last != NULL && last->course == run->course)
    g_assert_cmpint (last->to, <, run->from);
  else if (last != NULL)
    g_assert_cmpint (last->course, <, run->course);
  for (guint i = 0; i < wall->openings->len; i++)
    check_clear_of (run, MIN (top, wall->height), wall_opening_at (wall, i));
}

static void
test_any_wall (void)
{
  guint n = 0;

  for (guint64 seed = 1; seed <= 3000; seed++)
    {
      g_auto (AnyWall) any = any_wall (seed);
      g_autoptr (GArray) runs = NULL;

      add_steel (&any, seed);
      runs = bed_steel_runs (any.wall, &any.block);
      for (guint i = 0; i < runs->len; i++)
        check_run (&any, &g_array_index (runs, SteelRun, i),
                   i > 0 ? &g_array_index (runs, SteelRun, i - 1) : NULL);
      n += runs->len;
    }
  g_assert_cmpuint (n, >, 3000);
}

/* One click changes that row and no other, a second one changes it back. */
static void
test_toggle (void)
{
  for (guint64 seed = 1; seed <= 300; seed++)
    {
      g_auto (AnyWall) any = any_wall (seed);
      Laying laying = laying_resolve (&any.wall->laying, &any.block);
      gint32 n = gauge_n_courses (any.wall, &any.block, &laying);
      gint32 number = (gint32) (seed % 14) + 1;

      add_steel (&any, seed);
      g_autoptr (Wall) once = bed_steel_toggle (any.wall, &any.block, number);
      g_autoptr (Wall) twice = bed_steel_toggle (once, &any.block, number);
      for (gint32 course = 1; course <= 14; course++)
        {
          gboolean had = bed_steel_has_row (any.wall, &any.block, course);
          gboolean clicked = course == number && course <= n;

          g_assert_cmpint (bed_steel_has_row (once, &any.block, course), ==, clicked ? !had : had);
          g_assert_cmpint (bed_steel_has_row (twice, &any.block, course), ==, had);
        }
      g_assert_null (wall_fault (once, &any.block, NULL));
    }
}

/* Bars go on over a wall that runs through in turn, and stop at one that runs through always: a
 * joint of 2 and the cover of 25 before it. */
static void
test_meeting_walls (void)
{
  const Through throughs[] = { THROUGH_ODD, THROUGH_EVEN, THROUGH_ALL };

  for (guint i = 0; i < G_N_ELEMENTS (throughs); i++)
    {
      g_autoptr (Wall) wall = wall_new ();
      Block block = block_default ();
      Tee tee = { LENGTH_MM (2000), LENGTH_MM (115), throughs[i], { NULL, NULL } };

      wall->steel.given = TRUE;
      wall->steel.every = 4;
      g_array_append_val (wall->tees, tee);
      g_autoptr (GArray) runs = bed_steel_runs (wall, &block);
      const SteelRun *first = &g_array_index (runs, SteelRun, 0);

      g_assert_cmpint (first->from, ==, LENGTH_MM (25));
      g_assert_cmpint (first->to, ==, LENGTH_MM (throughs[i] == THROUGH_ALL ? 1973 : 5975));
      if (throughs[i] == THROUGH_ALL)
        g_assert_cmpint (g_array_index (runs, SteelRun, 1).from, ==, LENGTH_MM (2142));
      block_clear (&block);
    }
}

/* Bars stop 25 mm before a movement joint and begin 25 mm behind it, in rows all along and in those
 * past an opening. */
static void
test_movement_joint (void)
{
  g_autoptr (Wall) wall = wall_new ();
  Block block = block_default ();
  Opening opening = opening_default (OPENING_WINDOW);

  wall->steel.given = TRUE;
  wall->steel.every = 4;
  wall->steel.under_sills = TRUE;
  opening.x = LENGTH_MM (3500);
  opening.width = LENGTH_MM (1000);
  opening.sill = LENGTH_MM (1030);
  opening.height = LENGTH_MM (600);
  g_array_append_val (wall->openings, opening);
  wall_add_movement_joint (wall, LENGTH_MM (3000), LENGTH_MM (12));
  g_autoptr (GArray) runs = bed_steel_runs (wall, &block);
  const SteelRun *run = (const SteelRun *) (gpointer) runs->data;

  g_assert_cmpuint (runs->len, >=, 3);
  g_assert_cmpint (run[0].course, ==, 4);
  g_assert_cmpint (run[0].from, ==, LENGTH_MM (25));
  g_assert_cmpint (run[0].to, ==, LENGTH_MM (2975));
  g_assert_cmpint (run[1].from, ==, LENGTH_MM (3037));
  g_assert_cmpint (run[1].to, ==, LENGTH_MM (5975));
  /* 600 past the jamb would be 2900. */
  g_assert_cmpint (run[2].course, ==, 5);
  g_assert_cmpint (run[2].from, ==, LENGTH_MM (3037));
  g_assert_cmpint (run[2].to, ==, LENGTH_MM (5100));
  block_clear (&block);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/bed-steel/top-and-foot", test_top_and_foot);
  g_test_add_func ("/bed-steel/runs/where-they-should-be", test_rows);
  g_test_add_func ("/bed-steel/runs/where-walls-meet", test_meeting_walls);
  g_test_add_func ("/bed-steel/runs/stop-at-movement-joints", test_movement_joint);
  g_test_add_func ("/bed-steel/mass/nominal", test_mass);
  g_test_add_func ("/bed-steel/any-wall/clear-of-openings-and-ends", test_any_wall);
  g_test_add_func ("/bed-steel/toggle/that-row-alone", test_toggle);
  return g_test_run ();
}
