/* test-top.c - sloped, gabled and stepped tops, stepped footings: read, made, settled, judged */
#include "edited.h"
#include "model/plan.h"
#include "model/wall.h"

#define MM(mm) LENGTH_MM (mm)

static Wall *
wall_of (Length length, GArray *tops, Length height)
{
  Wall *wall = wall_new ();

  wall->length = length;
  wall_take_top (wall, tops, height);
  return wall;
}

/* 6000 long, eaves 2500, ridge 4500 at 3000. */
static Wall *
gable (void)
{
  Length height;
  GArray *tops = top_gable (MM (6000), MM (2500), MM (2500), MM (3000), MM (4500), &height);

  g_assert_cmpint (height, ==, MM (4500));
  return wall_of (MM (6000), tops, height);
}

static char *
text_of (const Wall *wall)
{
  GString *text = g_string_new (NULL);

  g_string_append_printf (text, "%g:", length_to_mm (wall->height));
  for (guint i = 0; i < wall->tops->len; i++)
    g_string_append_printf (text, " %g/%g", length_to_mm (top_point (wall->tops, i)->x),
                            length_to_mm (top_point (wall->tops, i)->below));
  for (guint i = 0; i < wall->feet->len; i++)
    g_string_append_printf (text, " ^%g/%g", length_to_mm (foot_point (wall->feet, i)->x),
                            length_to_mm (foot_point (wall->feet, i)->up));
  return g_string_free (text, FALSE);
}

static void
assert_text (const Wall *wall, const char *wanted)
{
  g_autofree char *text = text_of (wall);

  g_assert_cmpstr (text, ==, wanted);
}

static void
test_heights (void)
{
  g_autoptr (Wall) wall = gable (), level = wall_new ();

  g_assert_cmpint (wall_top_at (level, MM (10), SIDE_LEFT), ==, MM (2500));
  g_assert_cmpint (wall_top_at (wall, 0, SIDE_RIGHT), ==, MM (2500));
  g_assert_cmpint (wall_top_at (wall, 0, SIDE_LEFT), ==, MM (2500));
  g_assert_cmpint (wall_top_at (wall, MM (1500), SIDE_LEFT), ==, MM (3500));
  g_assert_cmpint (wall_top_at (wall, MM (3000), SIDE_LEFT), ==, MM (4500));
  g_assert_cmpint (wall_top_at (wall, MM (6000), SIDE_LEFT), ==, MM (2500));
  g_assert_cmpint (wall_top_highest (wall, MM (1500), MM (5000)), ==, MM (4500));
  g_assert_cmpint (wall_top_lowest (wall, MM (1500), MM (4500)), ==, MM (3500));
  /* 15 m2 below the eaves and a triangle of 6 m2. */
  g_assert_cmpfloat_with_epsilon (wall_face_area (wall, 0, MM (6000)), 21e6, 1e-3);
  g_assert_cmpfloat_with_epsilon (top_run (wall->tops, wall->height, 0, MM (6000)),
                                  2 * 3605.5512754639891, 1e-6);
}

static void
test_steps (void)
{
  const Length heights[] = { MM (2000), MM (2600), MM (2200) }, ends[] = { MM (1000), MM (4000) };
  Length height;
  GArray *tops = top_steps (heights, ends, 3, &height);
  g_autoptr (Wall) wall = wall_of (MM (6000), tops, height);

  assert_text (wall, "2600: 1000/600 1000/0 4000/0 4000/400");
  g_assert_cmpint (wall_top_at (wall, MM (1000), SIDE_LEFT), ==, MM (2000));
  g_assert_cmpint (wall_top_at (wall, MM (1000), SIDE_RIGHT), ==, MM (2600));
  g_assert_cmpint (wall_top_at (wall, MM (5000), SIDE_RIGHT), ==, MM (2200));
  g_assert_cmpint (wall_top_lowest (wall, MM (1000), MM (4000)), ==, MM (2600));
  g_assert_null (wall_fault (wall, NULL, NULL));
  foot_list_add (wall->feet, MM (2000), MM (200));
  foot_list_add (wall->feet, MM (5000), MM (100));
  g_assert_cmpint (wall_foot_at (wall, MM (2000), SIDE_LEFT), ==, 0);
  g_assert_cmpint (wall_foot_at (wall, MM (2000), SIDE_RIGHT), ==, MM (200));
  g_assert_cmpint (wall_foot_at (wall, MM (5500), SIDE_LEFT), ==, MM (100));
  g_assert_cmpint (foot_highest (wall->feet, MM (1000), MM (6000)), ==, MM (200));
  g_assert_cmpint (foot_highest (wall->feet, MM (5000), MM (6000)), ==, MM (100));
  g_assert_cmpfloat_with_epsilon (wall_face_area (wall, 0, MM (6000)),
                                  (2 + 7.8 + 4.4 - 0.6 - 0.1) * 1e6, 1e-3);
}

static void
test_pitch (void)
{
  g_assert_cmpint (top_rise (MM (3000), 45), ==, MM (3000));
  g_assert_cmpint (top_rise (MM (1000), 0), ==, 0);
  g_assert_cmpint (top_rise (MM (1000), 30), ==, length_from_mm (577.3502692));
}

/* Any line, seen from behind, has the same heights and comes to a height at the same places. */
static void
test_lines_from_behind (void)
{
  for (int i = 0; i < 20000; i++)
    {
      Length x0 = g_test_rand_int_range (0, MM (5000));
      Length x1 = x0 + g_test_rand_int_range (1, MM (5000)), all = MM (10000);
      TopLine line
          = { x0, g_test_rand_int_range (0, MM (9000)), x1, g_test_rand_int_range (0, MM (9000)) };
      TopLine behind = { all - x1, line.z1, all - x0, line.z0 };
      Length x = g_test_rand_int_range (x0, x1 + 1);
      Length low = MIN (line.z0, line.z1), high = MAX (line.z0, line.z1), z, at;

      g_assert_cmpint (top_line_at (&line, x), ==, top_line_at (&behind, all - x));
      g_assert_cmpint (top_line_at (&line, x0), ==, line.z0);
      g_assert_cmpint (top_line_at (&line, x1), ==, line.z1);
      if (low == high)
        continue;
      z = g_test_rand_int_range (low, high + 1);
      at = top_line_meets (&line, z);
      g_assert_cmpint (at, ==, all - top_line_meets (&behind, z));
      g_assert_cmpint (at, >=, x0);
      g_assert_cmpint (at, <=, x1);
      g_assert_cmpint (top_line_at (&line, at), >=, z);
      at += line.z1 > line.z0 ? -1 : 1;
      g_assert_cmpint (top_line_at (&line, at), <=, z);
    }
}

static void
test_right_end_moves (void)
{
  static const struct
  {
    double length;
    const char *wanted;
  } rows[] = {
    { 6000, "4500: 0/2000 3000/0 6000/2000" }, { 7000, "4500: 0/2000 3000/0 7000/2000" },
    { 4000, "4500: 0/2000 3000/0 4000/2000" }, { 3000, "4500: 0/2000 3000/0" },
    { 1500, "3500: 0/1000 1500/0" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (Wall) wall = gable ();

      wall_set_length (wall, MM (rows[i].length));
      assert_text (wall, rows[i].wanted);
      g_assert_null (wall_fault (wall, NULL, NULL));
    }
}

static void
test_left_end_moves (void)
{
  static const struct
  {
    double by;
    const char *wanted;
  } rows[] = {
    { 1000, "4500: 0/2000 4000/0 7000/2000" },
    { -2000, "4500: 0/2000 1000/0 4000/2000" },
    { -3000, "4500: 0/0 3000/2000" },
    { -4500, "3500: 0/0 1500/1000" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (Wall) wall = gable ();

      wall->length += MM (rows[i].by);
      wall_shift (wall, MM (rows[i].by));
      assert_text (wall, rows[i].wanted);
      g_assert_null (wall_fault (wall, NULL, NULL));
    }
}

static void
test_feet_move (void)
{
  g_autoptr (Wall) wall = wall_new ();

  foot_list_add (wall->feet, MM (1000), MM (100));
  foot_list_add (wall->feet, MM (3000), MM (300));
  wall->length -= MM (2000);
  wall_shift (wall, MM (-2000));
  assert_text (wall, "2500: ^0/100 ^1000/300");
  wall->length += MM (500);
  wall_shift (wall, MM (500));
  assert_text (wall, "2500: ^0/100 ^1500/300");
  wall_set_length (wall, MM (1500));
  assert_text (wall, "2500: ^0/100");
}

/* However ends are moved, what is left is legal. */
static void
test_any_move (void)
{
  for (int i = 0; i < 20000; i++)
    {
      g_autoptr (Wall) wall = wall_new ();
      int n = g_test_rand_int_range (1, 6);
      Length x = 0, least = LENGTH_MAX;
      g_autofree char *fault = NULL;

      for (int k = 0; k < n; k++)
        {
          if (k < 2 || top_point (wall->tops, k - 1)->x > top_point (wall->tops, k - 2)->x)
            x += g_test_rand_int_range (0, 3) * MM (500);
          else
            x += MM (500);
          if (x > wall->length)
            break;
          top_list_add (wall->tops, x, MM (g_test_rand_int_range (0, 20) * 100));
          least = MIN (least, top_point (wall->tops, k)->below);
        }
      for (guint k = 0; k < wall->tops->len; k++)
        g_array_index (wall->tops, TopPoint, k).below -= least;
      for (int k = 0; k < 4; k++)
        {
          Length by = MM (g_test_rand_int_range (-4, 5) * 500);

          if (wall->length + by < MM (500))
            continue;
          if (g_test_rand_bit ())
            wall_set_length (wall, wall->length + by);
          else
            {
              wall->length += by;
              wall_shift (wall, by);
            }
          fault = wall_fault (wall, NULL, NULL);
          g_assert_cmpstr (fault, ==, NULL);
        }
    }
}

static void
assert_fault (const Wall *wall, const char *wanted)
{
  g_autofree char *fault = wall_fault (wall, NULL, NULL);

  g_assert_cmpstr (fault, ==, wanted);
}

static void
test_faults (void)
{
  g_autoptr (Wall) wall = gable ();

  assert_fault (wall, NULL);
  g_array_index (wall->tops, TopPoint, 1).below = MM (100);
  assert_fault (wall, "The top's highest point lies 100 mm below the wall's height; it must be at "
                      "it.");
  g_array_index (wall->tops, TopPoint, 1).below = -MM (1);
  assert_fault (wall, "The top at 3000 mm lies -1 mm below the wall's height; it must be from 0 to "
                      "4500 mm.");
  g_array_index (wall->tops, TopPoint, 1).below = 0;
  g_array_index (wall->tops, TopPoint, 1).x = MM (6001);
  assert_fault (wall, "The place of a point of the top is 6001 mm; it must be from 0 to 6000 mm.");
  g_array_index (wall->tops, TopPoint, 1).x = MM (3000);
  g_array_index (wall->tops, TopPoint, 2).x = MM (2000);
  assert_fault (wall, "The point of the top at 2000 mm comes after one at 3000 mm; they go from "
                      "left to right.");
  g_array_index (wall->tops, TopPoint, 2).x = MM (3000);
  assert_fault (wall, NULL);
  top_list_add (wall->tops, MM (3000), 0);
  assert_fault (wall, "There are more than two points of the top at 3000 mm.");
}

static void
test_foot_faults (void)
{
  g_autoptr (Wall) wall = gable ();

  foot_list_add (wall->feet, MM (1000), MM (300));
  assert_fault (wall, NULL);
  foot_list_add (wall->feet, MM (1000), MM (400));
  assert_fault (wall,
                "The steps in the footing at 1000 mm and after it do not go from left to right.");
  g_array_index (wall->feet, Foot, 1).x = MM (6000);
  assert_fault (wall, "The step in the footing at 6000 mm stands beyond the right end.");
  g_array_index (wall->feet, Foot, 1).x = MM (5500);
  g_array_index (wall->feet, Foot, 1).up = MM (2600);
  assert_fault (wall, "The footing from 5500 mm on lies 2600 mm up, above the wall's top.");
  g_array_set_size (wall->feet, 1);
  wall->cap.height = MM (5);
  assert_fault (wall, "The cap's height is 5 mm; it must be from 10 to 1000 mm.");
}

/* An opening stays below the slope and above the step everywhere in its width. */
static void
test_opening_faults (void)
{
  g_autoptr (Wall) wall = gable ();
  Opening opening = opening_default (OPENING_WINDOW);

  opening.key = g_strdup ("o1");
  opening.x = MM (600);
  opening.width = MM (900);
  opening.sill = MM (1000);
  opening.height = MM (1900);
  g_array_append_val (wall->openings, opening);
  assert_fault (wall, NULL); /* the top at 600 is 2900 */
  g_array_index (wall->openings, Opening, 0).x = MM (570);
  g_free (g_array_index (wall->openings, Opening, 0).name);
  g_array_index (wall->openings, Opening, 0).name = g_strdup ("W1");
  assert_fault (wall, "Opening W1 leaves the wall by 20 mm at the top.");
  g_array_index (wall->openings, Opening, 0).x = MM (600);
  foot_list_add (wall->feet, MM (1499), MM (1050));
  assert_fault (wall, "Opening W1 leaves the wall by 50 mm at the foot.");
  g_array_index (wall->feet, Foot, 0).x = MM (1500);
  assert_fault (wall, NULL);
}

/* Whoever sets a longer wall need not think of its top. */
static void
test_edits (void)
{
  g_autoptr (Project) empty = project_new ();
  g_autoptr (Wall) wall = gable (), longer = NULL;
  Project *project = edited (g_steal_pointer (&empty), edit_add_wall (wall));
  Length height;

  longer = wall_copy (project_wall_at (project, 0));
  g_assert_true (wall_equal (longer, project_wall_at (project, 0)));
  longer->length = MM (6500);
  project = edited (project, edit_set_wall (longer));
  assert_text (project_wall_at (project, 0), "4500: 0/2000 3000/0 6500/2000");
  g_autoptr (GArray) tops = top_mono (MM (6500), MM (2300), MM (2900), &height);
  project = edited (project, edit_wall_top (project_wall_at (project, 0), tops, height));
  assert_text (project_wall_at (project, 0), "2900: 0/600 6500/0");
  g_autoptr (GArray) feet = foot_list_new ();
  foot_list_add (feet, MM (2000), MM (250));
  project = edited (project, edit_wall_feet (project_wall_at (project, 0), feet));
  project = edited (project, edit_wall_cap (project_wall_at (project, 0), MM (120)));
  assert_text (project_wall_at (project, 0), "2900: 0/600 6500/0 ^2000/250");
  g_assert_cmpint (project_wall_at (project, 0)->cap.height, ==, MM (120));
  project = edited (project, edit_wall_top (project_wall_at (project, 0), NULL, MM (2500)));
  assert_text (project_wall_at (project, 0), "2500: ^2000/250");
  project_unref (project);
}

static Project *
with_wall (Project *project, double x, double y, Runs runs, double length, double height)
{
  g_autoptr (Wall) wall = wall_new ();

  wall->length = MM (length);
  wall->height = MM (height);
  wall->place = (PlanPlace){ TRUE, MM (x), MM (y), runs };
  return edited (project, edit_add_wall (wall));
}

/* Where the other wall ends lower, this one knows how high it is met; in a gable by the top there.
 */
static void
test_up_to (void)
{
  Project *project = project_new ();
  Length height;

  project = with_wall (project, 0, 0, RUNS_EAST, 6000, 2500);
  project = with_wall (project, 6000, 0, RUNS_NORTH, 4000, 2000);
  g_assert_cmpint (project_wall_at (project, 0)->ends[SIDE_RIGHT].up_to, ==, MM (2000));
  g_assert_cmpint (project_wall_at (project, 1)->ends[SIDE_LEFT].up_to, ==, 0);
  g_assert_false (end_stops (&project_wall_at (project, 0)->ends[SIDE_RIGHT], 2, MM (2000)));
  g_assert_true (end_stops (&project_wall_at (project, 0)->ends[SIDE_RIGHT], 2, MM (1999)));
  /* A partition, within the first, up to its eaves; the first gets a gable. */
  project = with_wall (project, 3250, 0, RUNS_NORTH, 4000, 3000);
  g_assert_cmpint (wall_tee_at (project_wall_at (project, 0), 0)->up_to, ==, 0);
  g_assert_cmpint (project_wall_at (project, 2)->ends[SIDE_LEFT].up_to, ==, MM (2500));
  g_autoptr (GArray) tops
      = top_gable (MM (6000), MM (2500), MM (2500), MM (3000), MM (5500), &height);
  project = edited (project, edit_wall_top (project_wall_at (project, 0), tops, height));
  g_assert_cmpint (wall_tee_at (project_wall_at (project, 0), 0)->up_to, ==, MM (3000));
  g_assert_cmpint (project_wall_at (project, 2)->ends[SIDE_LEFT].up_to, ==, 0);
  project_unref (project);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/top/heights", test_heights);
  g_test_add_func ("/top/steps", test_steps);
  g_test_add_func ("/top/pitch", test_pitch);
  g_test_add_func ("/top/lines-from-behind", test_lines_from_behind);
  g_test_add_func ("/top/right-end-moves", test_right_end_moves);
  g_test_add_func ("/top/left-end-moves", test_left_end_moves);
  g_test_add_func ("/top/feet-move", test_feet_move);
  g_test_add_func ("/top/any-move", test_any_move);
  g_test_add_func ("/top/faults", test_faults);
  g_test_add_func ("/top/foot-faults", test_foot_faults);
  g_test_add_func ("/top/opening-faults", test_opening_faults);
  g_test_add_func ("/top/edits", test_edits);
  g_test_add_func ("/top/up-to", test_up_to);
  return g_test_run ();
}
