/* test-wall-fault.c - what is wrong with a wall is found, and said with its numbers */
#include <string.h>

#include "model/project.h"
#include "model/wall.h"

static const Block block = {
  .name = (char *) "B",
  .length = LENGTH_MM (600),
  .height = LENGTH_MM (200),
  .thickness = LENGTH_MM (250),
  .density = 500,
};

/* 6000 x 2500 mm with everything given, and well. */
static Wall *
good_wall (void)
{
  Wall *wall = wall_new ();
  wall->laying = (Laying){
    .given = (1 << 9) - 1,
    .element = TRUE,
    .first_bed = LENGTH_MM (20),
    .bed = LENGTH_MM (2),
    .head = LENGTH_MM (2),
    .min_piece = LENGTH_MM (150),
    .min_lap = LENGTH_MM (80),
    .min_rip = LENGTH_MM (50),
    .kerf = LENGTH_MM (3),
  };
  wall->ends[SIDE_LEFT] = (End){ TRUE, LENGTH_MM (250), FALSE, TRUE, { NULL, NULL } };
  wall->ends[SIDE_RIGHT] = (End){ TRUE, LENGTH_MM (250), TRUE, TRUE, { NULL, NULL } };
  wall->steel.given = TRUE;
  return wall;
}

#define AT(field) offsetof (Wall, field)
#define MM(mm) ((Length) ((mm) *LENGTH_PER_MM))

/* One number of the good wall is changed; `fault` NULL: that is allowed. */
static const struct
{
  gsize field;
  gint32 value;
  const char *fault;
} numbers[] = {
  { AT (length), MM (50) - 1, "The wall's length is 50 mm; it must be from 50 to 1000000 mm." },
  { AT (length), 0, "The wall's length is 0 mm; it must be from 50 to 1000000 mm." },
  { AT (length), -1, "The wall's length is 0 mm; it must be from 50 to 1000000 mm." },
  { AT (length), LENGTH_MAX + 1,
    "The wall's length is 1000000 mm; it must be from 50 to 1000000 mm." },
  { AT (length), G_MAXINT32,
    "The wall's length is 6710886.4 mm; it must be from 50 to 1000000 mm." },
  { AT (length), LENGTH_MAX, NULL },
  { AT (length), MM (501), NULL },
  { AT (length), MM (500),
    "The returns take 500 mm; the wall is 500 mm long and nothing of it is left." },
  { AT (height), MM (49.9), "The wall's height is 49.9 mm; it must be from 50 to 1000000 mm." },
  { AT (height), MM (50), NULL },
  { AT (height), LENGTH_MAX, NULL },
  { AT (laying.first_bed), MM (200), NULL },
  { AT (laying.first_bed), MM (200.1),
    "The levelling bed is 200.1 mm; it must be from 0 to 200 mm." },
  { AT (laying.first_bed), MM (-5), "The levelling bed is -5 mm; it must be from 0 to 200 mm." },
  { AT (laying.first_bed), 0, NULL },
  { AT (laying.bed), MM (20), NULL },
  { AT (laying.bed), MM (20.1), "The bed joint is 20.1 mm; it must be from 0 to 20 mm." },
  { AT (laying.bed), 0, NULL },
  { AT (laying.head), MM (20), NULL },
  { AT (laying.head), MM (-1), "The head joint is -1 mm; it must be from 0 to 20 mm." },
  { AT (laying.min_piece), MM (600), NULL },
  { AT (laying.min_piece), MM (10000), NULL },
  { AT (laying.min_piece), MM (10001),
    "The shortest piece is 10001 mm; it must be from 0 to 10000 mm." },
  { AT (laying.min_piece), 0, "The shortest piece is 0 mm; it must be from 0 to 10000 mm." },
  { AT (laying.min_piece), 1, NULL },
  { AT (laying.min_lap), 0, NULL },
  { AT (laying.min_lap), MM (600.1), "The least lap is 600.1 mm; it must be from 0 to 600 mm." },
  { AT (laying.min_rip), MM (10000), NULL },
  { AT (laying.min_rip), MM (10001),
    "The thinnest strip is 10001 mm; it must be from 0 to 10000 mm." },
  { AT (laying.min_rip), 0, "The thinnest strip is 0 mm; it must be from 0 to 10000 mm." },
  { AT (laying.kerf), MM (20.1), "The saw cut is 20.1 mm; it must be from 0 to 20 mm." },
  { AT (laying.kerf), 0, NULL },
  { AT (ends[SIDE_LEFT].ret), MM (-1),
    "The return at the left end is -1 mm; it must be from 0 to 10000 mm." },
  { AT (ends[SIDE_RIGHT].ret), MM (10000.1),
    "The return at the right end is 10000.1 mm; it must be from 0 to 10000 mm." },
  { AT (ends[SIDE_RIGHT].ret), MM (5749), NULL },
  { AT (ends[SIDE_RIGHT].ret), MM (5750),
    "The returns take 6000 mm; the wall is 6000 mm long and nothing of it is left." },
  { AT (steel.bars), 0, "The steel has 0 bars side by side; it must be 1 to 20." },
  { AT (steel.bars), 1, NULL },
  { AT (steel.bars), 20, NULL },
  { AT (steel.bars), 21, "The steel has 21 bars side by side; it must be 1 to 20." },
  { AT (steel.every), -1, "The steel is in every -1 courses; it must be 0 to 10000." },
  { AT (steel.every), 10001, "The steel is in every 10001 courses; it must be 0 to 10000." },
  { AT (steel.diameter), MM (50), NULL },
  { AT (steel.diameter), 0, "The steel's diameter is 0 mm; it must be from 0 to 50 mm." },
  { AT (steel.diameter), MM (50.1),
    "The steel's diameter is 50.1 mm; it must be from 0 to 50 mm." },
  { AT (steel.past), MM (-1),
    "The steel past an opening is -1 mm; it must be from 0 to 1000000 mm." },
  { AT (steel.past), LENGTH_MAX, NULL },
  { AT (steel.lap), MM (3000), NULL },
  { AT (steel.lap), MM (3001), "The steel's lap is 3001 mm; it must be from 0 to 3000 mm." },
  { AT (steel.lap), MM (-1), "The steel's lap is -1 mm; it must be from 0 to 3000 mm." },
};

static void
test_numbers (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (numbers); i++)
    {
      g_autoptr (Wall) wall = good_wall ();
      OpeningId opening = { 4711 };
      *(gint32 *) (void *) ((char *) wall + numbers[i].field) = numbers[i].value;
      g_autofree char *fault = wall_fault (wall, &block, &opening);
      g_assert_cmpstr (fault, ==, numbers[i].fault);
      g_assert_cmpuint (opening.n, ==, 0);
    }
}

/* The same numbers say nothing where they are not given. */
static void
test_what_is_not_given_is_no_fault (void)
{
  g_autoptr (Wall) wall = good_wall ();
  wall->laying.given = 0;
  wall->laying.bed = wall->laying.head = wall->laying.kerf = MM (-700);
  wall->ends[SIDE_LEFT].has_return = FALSE;
  wall->ends[SIDE_LEFT].ret = MM (99999);
  wall->steel.given = FALSE;
  wall->steel.bars = -1;
  g_autofree char *fault = wall_fault (wall, &block, NULL);
  g_assert_cmpstr (fault, ==, NULL);
}

static void
test_joints_as_long_as_the_block (void)
{
  Block small = block;
  g_autoptr (Wall) wall = good_wall ();
  wall->length = wall->height = MM (700);
  small.length = MM (20);
  wall->laying.min_piece = wall->laying.min_lap = 1;
  wall->laying.head = MM (20);
  g_autofree char *head = wall_fault (wall, &small, NULL);
  g_assert_cmpstr (head, ==, "The head joint of 20 mm is not shorter than the block, 20 mm.");
  small = block;
  small.height = MM (20);
  wall->laying.min_rip = 1;
  wall->laying.head = MM (2);
  wall->laying.bed = MM (20);
  g_autofree char *bed = wall_fault (wall, &small, NULL);
  g_assert_cmpstr (bed, ==, "The bed joint of 20 mm is not thinner than the block, 20 mm.");
}

static void
test_bed_as_high_as_the_wall (void)
{
  g_autoptr (Wall) wall = good_wall ();

  g_array_set_size (wall->openings, 0);
  wall->laying.given |= LAYING_FIRST_BED;
  wall->laying.first_bed = wall->height = MM (100);
  g_autofree char *fault = wall_fault (wall, &block, NULL);
  g_assert_cmpstr (fault, ==,
                   "The levelling bed of 100 mm leaves nothing of the wall's height, 100 mm.");
  wall->height++;
  g_autofree char *none = wall_fault (wall, &block, NULL);
  g_assert_cmpstr (none, ==, NULL);
}

/* Walls that no search could go through in a lifetime. */
static void
test_too_many_blocks (void)
{
  g_autoptr (Wall) wall = good_wall ();
  Block small = block;
  small.length = MM (100);
  wall->laying.min_piece = wall->laying.min_lap = MM (20);
  wall->length = LENGTH_MAX;
  g_autofree char *course = wall_fault (wall, &small, NULL);
  g_assert_true (g_str_has_prefix (course, "A course would take about 9804 blocks;"));
  wall->length = MM (100000);
  wall->height = MM (100000);
  g_autofree char *all = wall_fault (wall, &small, NULL);
  g_assert_nonnull (all);
  g_assert_true (g_str_has_prefix (all, "The wall would take about "));
}

typedef struct
{
  const char *name; /* "" : called by its key */
  double x, width, sill, height;
} Hole;

/* Openings of the good wall, the sentence, and the number (from 1) of the one at fault. */
static const struct
{
  const char *name;
  Hole holes[3];
  const char *fault;
  guint32 at_fault;
} openings[] = {
  { "none", { { 0 } }, NULL, 0 },
  { "in-the-middle", { { "W1", 1000, 1200, 900, 1200 } }, NULL, 0 },
  { "the-whole-wall", { { "W1", 0, 6000, 0, 2500 } }, NULL, 0 },
  { "smallest", { { "W1", 0, 10, 0, 10 } }, NULL, 0 },
  { "past-the-right",
    { { "W1", 4920, 1200, 900, 1200 } },
    "Opening W1 leaves the wall by 120 mm on the right.",
    1 },
  { "past-the-right-by-a-tenth",
    { { "", 4800.1, 1200, 900, 1200 } },
    "Opening o1 leaves the wall by 0.1 mm on the right.",
    1 },
  { "past-the-left",
    { { "W1", -35, 1200, 900, 1200 } },
    "Opening W1 leaves the wall by 35 mm on the left.",
    1 },
  { "below-the-foot",
    { { "W1", 0, 1200, -1, 1200 } },
    "Opening W1 leaves the wall by 1 mm at the foot.",
    1 },
  { "above-the-top",
    { { "W1", 0, 1200, 1400, 1200 } },
    "Opening W1 leaves the wall by 100 mm at the top.",
    1 },
  { "too-narrow",
    { { "W1", 0, 9.9, 900, 1200 } },
    "The width of opening W1 is 9.9 mm; it must be from 10 to 1000000 mm.",
    1 },
  { "of-no-height",
    { { "W1", 0, 1200, 900, 0 } },
    "The height of opening W1 is 0 mm; it must be from 10 to 1000000 mm.",
    1 },
  { "of-negative-width",
    { { "W1", 3000, -1200, 900, 1200 } },
    "The width of opening W1 is -1200 mm; it must be from 10 to 1000000 mm.",
    1 },
  { "side-by-side", { { "W1", 0, 1200, 900, 1200 }, { "W2", 1200, 1200, 900, 1200 } }, NULL, 0 },
  { "one-on-the-other", { { "W1", 0, 1200, 0, 900 }, { "W2", 0, 1200, 900, 1200 } }, NULL, 0 },
  { "corner-to-corner", { { "W1", 0, 1000, 0, 900 }, { "W2", 1000, 1200, 900, 500 } }, NULL, 0 },
  { "overlap-by-a-tenth",
    { { "W1", 0, 1200, 900, 1200 }, { "W2", 1199.9, 1200, 900, 1200 } },
    "Openings W1 and W2 overlap.",
    2 },
  { "overlap-in-other-order",
    { { "W1", 1199.9, 1200, 900, 1200 }, { "W2", 0, 1200, 900, 1200 } },
    "Openings W2 and W1 overlap.",
    1 },
  { "one-in-the-other",
    { { "W1", 0, 3000, 0, 2000 }, { "", 1000, 100, 500, 100 } },
    "Openings W1 and o2 overlap.",
    2 },
  { "the-same-twice",
    { { "W1", 0, 3000, 0, 2000 }, { "W2", 0, 3000, 0, 2000 } },
    NULL, /* either order will do: see below */
    0 },
  { "overlap-behind-one-between",
    { { "W1", 0, 3000, 0, 500 }, { "W2", 1000, 100, 1000, 500 }, { "W3", 2000, 900, 400, 500 } },
    "Openings W1 and W3 overlap.",
    3 },
  { "third-leaves",
    { { "W1", 0, 100, 0, 500 }, { "W2", 1000, 100, 1000, 500 }, { "W3", 5950, 100, 0, 500 } },
    "Opening W3 leaves the wall by 50 mm on the right.",
    3 },
};

static void
cut (Wall *wall, const Hole *hole)
{
  Opening opening = {
    .id.n = wall->openings->len + 1,
    .key = g_strdup_printf ("o%u", wall->openings->len + 1),
    .name = g_strdup (hole->name),
    .x = length_from_mm (hole->x),
    .width = length_from_mm (hole->width),
    .sill = length_from_mm (hole->sill),
    .height = length_from_mm (hole->height),
  };
  g_array_append_val (wall->openings, opening);
}

static void
test_openings (gconstpointer data)
{
  guint i = GPOINTER_TO_UINT (data);
  g_autoptr (Wall) wall = good_wall ();
  OpeningId at_fault = { 4711 };
  for (guint k = 0; k < 3 && openings[i].holes[k].name != NULL; k++)
    cut (wall, &openings[i].holes[k]);
  g_autofree char *fault = wall_fault (wall, &block, &at_fault);
  if (g_str_equal (openings[i].name, "the-same-twice"))
    {
      g_assert_nonnull (strstr (fault, " overlap."));
      g_assert_cmpuint (at_fault.n, >=, 1);
      return;
    }
  g_assert_cmpstr (fault, ==, openings[i].fault);
  g_assert_cmpuint (at_fault.n, ==, openings[i].at_fault);
}

/* Beside each pair looked at in turn. */
static void
test_overlaps_against_pairs (void)
{
  guint overlapping = 0;
  for (int round = 0; round < 5000; round++)
    {
      g_autoptr (Wall) wall = good_wall ();
      gboolean expected = FALSE;
      for (int n = g_test_rand_int_range (2, 9); n > 0; n--)
        cut (wall,
             &(Hole){ "", g_test_rand_int_range (0, 50) * 100, g_test_rand_int_range (1, 11) * 100,
                      g_test_rand_int_range (0, 15) * 100, g_test_rand_int_range (1, 11) * 100 });
      for (guint i = 0; i < wall->openings->len; i++)
        for (guint k = 0; k < i; k++)
          {
            const Opening *a = wall_opening_at (wall, i), *b = wall_opening_at (wall, k);
            expected |= MAX (a->x, b->x) < MIN (opening_right (a), opening_right (b))
                        && MAX (a->sill, b->sill) < MIN (opening_head (a), opening_head (b));
          }
      g_autofree char *fault = wall_fault (wall, &block, NULL);
      g_assert_cmpint (fault != NULL, ==, expected);
      overlapping += expected;
    }
  g_assert_cmpuint (overlapping, >, 500);
  g_assert_cmpuint (overlapping, <, 4900);
}

static void
test_most_openings (void)
{
  g_autoptr (Wall) wall = good_wall ();
  wall->length = MM (20000);
  for (int i = 0; i < WALL_MAX_OPENINGS; i++)
    cut (wall, &(Hole){ "", i * 10, 10, 0, 10 });
  g_autofree char *most = wall_fault (wall, &block, NULL);
  g_assert_cmpstr (most, ==, NULL);
  cut (wall, &(Hole){ "", 15000, 10, 0, 10 });
  g_autofree char *more = wall_fault (wall, &block, NULL);
  g_assert_cmpstr (more, ==, "The wall has 1001 openings; at most 1000 are allowed.");
}

static const struct
{
  gint32 courses[3];
  const char *fault;
} rows[] = {
  { { 1, 10000, 3 }, NULL },
  { { 1, 3, 1 }, "There are two steel rows on course 1." },
  { { 0 }, "A steel row is on course 0; it must be 1 to 10000." },
  { { 2, -1 }, "A steel row is on course -1; it must be 1 to 10000." },
  { { 10001 }, "A steel row is on course 10001; it must be 1 to 10000." },
};

static void
test_steel_rows (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (Wall) wall = good_wall ();
      for (guint k = 0; k < 3 && (k == 0 || rows[i].courses[k] != 0); k++)
        {
          SteelRow row = { rows[i].courses[k], k == 2, { NULL, NULL } };
          g_array_append_val (wall->steel_rows, row);
        }
      g_autofree char *fault = wall_fault (wall, &block, NULL);
      g_assert_cmpstr (fault, ==, rows[i].fault);
    }
}

static const struct
{
  Pin pins[3];
  const char *fault;
} pins[] = {
  { { { 1, 0, 0 }, { 10000, LENGTH_MAX, LENGTH_MM (10000) }, { 10000, 0, 1 } }, NULL },
  { { { 4, LENGTH_MM (600), 0 }, { 5, LENGTH_MM (600), 0 }, { 4, LENGTH_MM (600), 1 } },
    "There are two pins on course 4 at 600 mm." },
  { { { 0, 1, 0 } }, "A pin is on course 0; it must be 1 to 10000." },
  { { { 2, 0, 0 }, { 10001, 0, 0 } }, "A pin is on course 10001; it must be 1 to 10000." },
  { { { 2, -LENGTH_MM (1), 0 } }, "A pin's place is -1 mm; it must be from 0 to 1000000 mm." },
  { { { 2, 0, -LENGTH_MM (1) } }, "A pinned piece is -1 mm; it must be from 0 to 10000 mm." },
  { { { 2, 0, LENGTH_MM (10001) } }, "A pinned piece is 10001 mm; it must be from 0 to 10000 mm." },
};

static void
test_pins (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (pins); i++)
    {
      g_autoptr (Wall) wall = good_wall ();
      for (guint k = 0; k < 3 && (k == 0 || pins[i].pins[k].course != 0); k++)
        g_array_append_val (wall->pins, pins[i].pins[k]);
      g_autofree char *fault = wall_fault (wall, &block, NULL);
      g_assert_cmpstr (fault, ==, pins[i].fault);
    }
}

static void
test_most_pins (void)
{
  g_autoptr (Wall) wall = good_wall ();
  for (gint32 i = 0; i < WALL_MAX_PINS; i++)
    wall_put_pin (wall, &(Pin){ i % 10 + 1, LENGTH_MM (i / 10), 0, { NULL, NULL } });
  g_autofree char *most = wall_fault (wall, &block, NULL);
  g_assert_cmpstr (most, ==, NULL);
  wall_put_pin (wall, &(Pin){ 11, 0, 0, { NULL, NULL } });
  g_autofree char *more = wall_fault (wall, &block, NULL);
  g_assert_cmpstr (more, ==, "The wall has 5001 pins; at most 5000 are allowed.");
}

/* Borders of what is allowed and of what integers hold, or anything. */
static gint32
any_number (void)
{
  static const gint32 borders[] = {
    0,
    1,
    -1,
    G_MAXINT32,
    G_MININT32,
    LENGTH_MAX,
    -LENGTH_MAX,
    LENGTH_MAX + 1,
    LENGTH_MM (10),
    LENGTH_MM (50),
    LENGTH_MM (1000),
  };
  return g_test_rand_int_range (0, 8) > 0
             ? borders[g_test_rand_int_range (0, G_N_ELEMENTS (borders))]
             : (gint32) g_test_rand_int ();
}

/* A sentence or none, never a step beyond what integers hold (the sanitizers watch). */
static void
test_any_numbers (void)
{
  guint well = 0;
  for (int round = 0; round < 50000; round++)
    {
      g_autoptr (Wall) wall = good_wall ();
      guint which = (guint) g_test_rand_int_range (0, G_N_ELEMENTS (numbers));
      if (g_test_rand_bit ())
        *(gint32 *) (void *) ((char *) wall + numbers[which].field) = any_number ();
      for (int n = g_test_rand_int_range (0, 3); n > 0; n--)
        {
          Opening opening = { .id.n = 1,
                              .x = any_number (),
                              .width = any_number (),
                              .sill = any_number (),
                              .height = any_number () };
          g_array_append_val (wall->openings, opening);
        }
      g_autofree char *fault = wall_fault (wall, &block, NULL);
      well += fault == NULL;
    }
  g_assert_cmpuint (well, >, 1000);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/wall/fault/numbers", test_numbers);
  g_test_add_func ("/wall/fault/not-of-what-is-not-given", test_what_is_not_given_is_no_fault);
  g_test_add_func ("/wall/fault/bed-as-high-as-the-wall", test_bed_as_high_as_the_wall);
  g_test_add_func ("/wall/fault/joints-as-long-as-the-block", test_joints_as_long_as_the_block);
  g_test_add_func ("/wall/fault/too-many-blocks", test_too_many_blocks);
  for (guint i = 0; i < G_N_ELEMENTS (openings); i++)
    {
      g_autofree char *path = g_strconcat ("/wall/fault/opening/", openings[i].name, NULL);
      g_test_add_data_func (path, GUINT_TO_POINTER (i), test_openings);
    }
  g_test_add_func ("/wall/fault/overlaps-against-pairs", test_overlaps_against_pairs);
  g_test_add_func ("/wall/fault/most-openings", test_most_openings);
  g_test_add_func ("/wall/fault/steel-rows", test_steel_rows);
  g_test_add_func ("/wall/fault/pins", test_pins);
  g_test_add_func ("/wall/fault/most-pins", test_most_pins);
  g_test_add_func ("/wall/fault/any-numbers", test_any_numbers);
  return g_test_run ();
}
