/* test-outline.c - outlines as they are typed, and the walls that come of them */
#include "model/outline.h"

#include "model/edit.h"
#include "model/plan.h"

#define MM(mm) LENGTH_MM (mm)

/* --- typed --- */

static const struct
{
  const char *text, *sides, *fault;
} typed[] = {
  { "8000 x 6000", "8000L 6000L 8000L 6000L", NULL },
  { "8 m x 6m", NULL, "\"m\" is neither a length nor a turn (L or R)." },
  { "8m × 600cm", "8000L 6000L 8000L 6000L", NULL },
  { "8000 6000 8000 6000", "8000L 6000L 8000L 6000L", NULL },
  { "8000 L 6000 l 8000 L 6000 L", "8000L 6000L 8000L 6000L", NULL },
  { "9000; 4000; 3000 R; 3000; 6000; 7000", "9000L 4000L 3000R 3000L 6000L 7000L", NULL },
  { "L 8000", NULL, "An outline begins with a length, not with a turn." },
  { "8000 x 6000 x 3000", NULL, "A rectangle has two lengths, as in \"8000 x 6000\"." },
  { "8000 wide", NULL, "\"wide\" is neither a length nor a turn (L or R)." },
  { "", "", NULL },
};

static char *
sides_text (const GArray *sides)
{
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < sides->len; i++)
    {
      const OutlineSide *side = &g_array_index (sides, OutlineSide, i);

      g_string_append_printf (text, "%s%g%c", i > 0 ? " " : "", length_to_mm (side->length),
                              side->right ? 'R' : 'L');
    }
  return g_string_free (text, FALSE);
}

static void
test_typed (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (typed); i++)
    {
      g_autofree char *fault = NULL;
      g_autoptr (GArray) sides = outline_parse (typed[i].text, &fault);
      g_autofree char *text = sides != NULL ? sides_text (sides) : NULL;

      g_test_message ("%s", typed[i].text);
      g_assert_cmpstr (fault, ==, typed[i].fault);
      g_assert_cmpstr (text, ==, typed[i].sides);
    }
}

static const struct
{
  const char *text, *fault;
} faulty[] = {
  { "8000 x 6000", NULL },
  { "9000 4000 3000 R 3000 6000 7000", NULL },
  { "8000 6000 8000", "An outline has four sides at least." },
  { "8000 6000 7990 6000",
    "The outline does not close: its last side ends 10 mm too far east of its beginning." },
  { "8000 6000 8010 6002.5",
    "The outline does not close: its last side ends 10 mm too far west and 2.5 mm too far south of "
    "its beginning." },
  { "8000 6003 8000 6000",
    "The outline does not close: its last side ends 3 mm too far north of its beginning." },
  { "8000 R 6000 R 8000 R 6000 R",
    "The outline runs with the clock: say it the other way round, so "
    "that the building is on the left." },
  { "8000 6000 8000 R 6000", "The turns of the outline do not go once round: there must be four "
                             "more to the left than to the "
                             "right." },
  { "8000 6000 3000 6000 R 1000 R 6000 4000 6000",
    "Sides 1 and 4 of the outline cross or touch, 5000 mm east and 0 mm north of its beginning." },
  { "8000 50 8000 50", "Side 2 is 50 mm long; it must be from 100 to 500000 mm." },
};

static void
test_faults (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (faulty); i++)
    {
      g_autofree char *none = NULL;
      g_autoptr (GArray) sides = outline_parse (faulty[i].text, &none);
      g_autofree char *fault = outline_fault (sides);

      g_assert_cmpstr (fault, ==, faulty[i].fault);
    }
}

/* --- built --- */

/* A project of the outline's walls, of a block so thick, from the sides' text. */
static Project *
built (const GArray *sides, Length thickness)
{
  g_autoptr (Project) empty = project_new ();
  g_autoptr (GPtrArray) walls = outline_walls (sides, thickness, MM (2650), MM (1000), MM (-500));
  Block block = block_copy (project_block_at (empty, 0));
  g_autoptr (GError) error = NULL;

  block.thickness = thickness;
  g_autoptr (Edit) set = edit_set_block (&block);
  g_autoptr (Project) thick = project_edit (empty, set, &error);
  g_assert_no_error (error);
  g_autoptr (Edit) add = edit_walls (walls);
  Project *project = project_edit (thick, add, &error);
  g_assert_no_error (error);
  block_clear (&block);
  return project;
}

/* An L: its walls from face to face, squares of the corners with them, worked out by hand. */
static void
test_angle (void)
{
  g_autofree char *fault = NULL;
  g_autoptr (GArray) sides = outline_parse ("9000 4000 3000 R 3000 6000 7000", &fault);
  g_autoptr (Project) project = built (sides, MM (300));
  const double lengths[] = { 9000, 4000, 3300, 3300, 6000, 7000 };
  const double places[][2] = { { 1000, -500 }, { 10000, -500 }, { 10000, 3500 },
                               { 7000, 3200 }, { 7000, 6500 },  { 1000, 6500 } };
  const Runs runs[] = { RUNS_EAST, RUNS_NORTH, RUNS_WEST, RUNS_NORTH, RUNS_WEST, RUNS_SOUTH };

  for (guint i = 0; i < 6; i++)
    {
      const Wall *wall = project_wall_at (project, i);

      g_assert_cmpfloat (length_to_mm (wall->length), ==, lengths[i]);
      g_assert_cmpfloat (length_to_mm (wall->place.x), ==, places[i][0]);
      g_assert_cmpfloat (length_to_mm (wall->place.y), ==, places[i][1]);
      g_assert_cmpint (wall->place.runs, ==, runs[i]);
      g_assert_cmpint (wall->ends[SIDE_LEFT].ret, ==, MM (300));
      g_assert_cmpint (wall->ends[SIDE_RIGHT].ret, ==, MM (300));
    }
}

/* A base with a skyline of one to five steps, each two metres or more. */
static GArray *
any_outline (void)
{
  GArray *sides = g_array_new (FALSE, FALSE, sizeof (OutlineSide));
  int n = g_test_rand_int_range (1, 6), heights[6], widths[6], all = 0;

  for (int i = 0; i < n; i++)
    {
      widths[i] = g_test_rand_int_range (2000, 6000);
      do
        heights[i] = g_test_rand_int_range (3000, 12000);
      while (i > 0 && ABS (heights[i] - heights[i - 1]) < 2000);
      all += widths[i];
    }
  g_array_append_val (sides, ((OutlineSide[]){ { MM (all), FALSE } })[0]);
  for (int i = n - 1; i >= -1; i--)
    {
      int from = i == n - 1 ? 0 : heights[i + 1], to = i < 0 ? 0 : heights[i];
      OutlineSide up = { MM (ABS (to - from)), from > to }, across = { 0, FALSE };

      /* The one before turned as this one needs; this one turns back to the west, or home. */
      g_array_index (sides, OutlineSide, sides->len - 1).right = i < n - 1 && to > from;
      if (i < 0)
        up.right = FALSE;
      g_array_append_val (sides, up);
      if (i < 0)
        break;
      across.length = MM (widths[i]);
      g_array_append_val (sides, across);
    }
  return sides;
}

static gint64
area_of (const GArray *sides)
{
  const int east[] = { 1, 0, -1, 0 }, north[] = { 0, 1, 0, -1 };
  gint64 x = 0, y = 0, twice = 0;
  int runs = 0;

  for (guint i = 0; i < sides->len; i++)
    {
      const OutlineSide *side = &g_array_index (sides, OutlineSide, i);
      gint64 to_x = x + side->length * east[runs], to_y = y + side->length * north[runs];

      twice += x * to_y - to_x * y;
      x = to_x;
      y = to_y;
      runs = (runs + (side->right ? 3 : 1)) % 4;
    }
  return twice / 2;
}

/* Round any outline the walls meet at its corners and nowhere else, each corner is bonded the same
 * way on both sides, and footprints less the squares that are shared make the ring: the outline's
 * length times the thickness, less a square for each outer corner, with one for each inner one. */
static void
test_any (void)
{
  for (int round = 0; round < 200; round++)
    {
      g_autoptr (GArray) sides = any_outline ();
      g_autofree char *fault = outline_fault (sides);
      g_assert_cmpstr (fault, ==, NULL);
      g_assert_cmpint (area_of (sides), >, 0);
      Length t = MM (g_test_rand_int_range (100, 500));
      g_autoptr (Project) project = built (sides, t);
      g_autoptr (GArray) meetings = plan_meetings (project);
      gint64 covered = 0, ring = 0;

      g_assert_cmpuint (meetings->len, ==, sides->len);
      for (guint i = 0; i < meetings->len; i++)
        {
          const Meeting *meeting = &g_array_index (meetings, Meeting, i);

          g_assert_cmpint (meeting->kind, ==, MEET_CORNER);
          g_assert_cmpint (meeting->made, <=, MADE_FIRST_EVEN);
          covered -= (gint64) t * t;
        }
      for (guint i = 0; i < sides->len; i++)
        {
          const OutlineSide *side = &g_array_index (sides, OutlineSide, i);

          covered += (gint64) project_wall_at (project, i)->length * t;
          ring += (gint64) side->length * t + (side->right ? 1 : -1) * (gint64) t * t;
        }
      g_assert_cmpint (covered, ==, ring);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/outline/typed", test_typed);
  g_test_add_func ("/outline/faults", test_faults);
  g_test_add_func ("/outline/angle", test_angle);
  g_test_add_func ("/outline/any", test_any);
  return g_test_run ();
}
