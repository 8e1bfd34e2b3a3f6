/* test-top.c - what a hand does to a top and to a footing, without a display */
#include "app/tool-top.h"

#include <math.h>

#include "model/edit.h"

/* Of 600 x 200. */
static Block block;

static const Grip free_grip = { .step = LENGTH_PER_MM, .reach = 0 };
/* A hand that is far from the wall: 10 mm steps, courses within 40 mm. */
static const Grip wide_grip = { .step = LENGTH_MM (10), .reach = LENGTH_MM (40) };

/* 6 m long and 2442 high: twelve courses of 200 with joints of 2 on a bed of 20. */
static Wall *
level_wall (void)
{
  Wall *wall = wall_new ();

  wall->length = LENGTH_MM (6000);
  wall->height = LENGTH_MM (2442);
  return wall;
}

static MarkRef
point (gint32 i)
{
  return (MarkRef){ .kind = REF_TOP, .part = TOP_POINT, .a = i };
}

static MarkRef
line (gint32 i)
{
  return (MarkRef){ .kind = REF_TOP, .part = TOP_LINE, .a = i };
}

static Wall *
gabled_wall (void)
{
  Wall *wall = level_wall ();
  Length height;
  GArray *tops = top_gable (wall->length, LENGTH_MM (2000), LENGTH_MM (2200), LENGTH_MM (3000),
                            LENGTH_MM (4000), &height);

  wall_take_top (wall, tops, height);
  return wall;
}

static void
assert_top (const Wall *wall, guint i, double x, double z)
{
  g_assert_cmpuint (wall->tops->len, >, i);
  g_assert_cmpfloat_with_epsilon (length_to_mm (top_point (wall->tops, i)->x), x, 1e-9);
  g_assert_cmpfloat_with_epsilon (length_to_mm (wall->height - top_point (wall->tops, i)->below), z,
                                  1e-9);
}

static void
assert_sound (const Wall *wall)
{
  g_autofree char *fault = wall_fault (wall, &block, NULL);

  g_assert_cmpstr (fault, ==, NULL);
}

typedef struct
{
  MarkRef ref;
  int dx, dz;         /* mm */
  int expected[3][2]; /* mm: place and height of each point after */
} Pull;

/* Of a gable 2000 - 4000 at 3000 - 2200. */
static const Pull pulls[] = {
  { { .kind = REF_TOP, .part = TOP_POINT, .a = 1 },
    200,
    150,
    { { 0, 2000 }, { 3200, 4150 }, { 6000, 2200 } } },
  /* An end stays where it is. */
  { { .kind = REF_TOP, .part = TOP_POINT, .a = 0 },
    200,
    -150,
    { { 0, 1850 }, { 3000, 4000 }, { 6000, 2200 } } },
  { { .kind = REF_TOP, .part = TOP_POINT, .a = 2 },
    90,
    2100,
    { { 0, 2000 }, { 3000, 4000 }, { 6000, 4300 } } },
  /* Beyond the ends there is no ridge. */
  { { .kind = REF_TOP, .part = TOP_POINT, .a = 1 },
    9000,
    0,
    { { 0, 2000 }, { 5990, 4000 }, { 6000, 2200 } } },
  { { .kind = REF_TOP, .part = TOP_POINT, .a = 1 },
    -9000,
    0,
    { { 0, 2000 }, { 10, 4000 }, { 6000, 2200 } } },
  /* A slope goes up and down as it is. */
  { { .kind = REF_TOP, .part = TOP_LINE, .a = 2 },
    500,
    -300,
    { { 0, 2000 }, { 3000, 3700 }, { 6000, 1900 } } },
};

static void
test_pulls (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (pulls); i++)
    {
      g_autoptr (Wall) wall = gabled_wall ();
      g_autoptr (Wall) next = tool_pull_top (wall, &block, &pulls[i].ref, LENGTH_MM (pulls[i].dx),
                                             LENGTH_MM (pulls[i].dz), &free_grip);

      for (guint k = 0; k < 3; k++)
        assert_top (next, k, pulls[i].expected[k][0], pulls[i].expected[k][1]);
      assert_sound (next);
    }
}

/* Courses end at 220, 422 … 20 + 202 n - 2. */
static void
test_rests (void)
{
  const MarkRef ridge = point (1), left = point (0);
  g_autoptr (Wall) wall = gabled_wall ();
  /* The 20th course's top is 20 + 20 * 202 - 2 = 4058. */
  g_autoptr (Wall) on_course = tool_pull_top (wall, &block, &ridge, 0, LENGTH_MM (40), &wide_grip);
  g_autoptr (Wall) between = tool_pull_top (wall, &block, &ridge, 0, LENGTH_MM (153), &wide_grip);
  g_autoptr (Wall) as_right = tool_pull_top (wall, &block, &left, 0, LENGTH_MM (185), &wide_grip);
  g_autoptr (Wall) off = tool_pull_top (wall, &block, &ridge, LENGTH_MM (300), 0, &wide_grip);
  g_autoptr (Wall) back = tool_pull_top (off, &block, &ridge, LENGTH_MM (-270), 0, &wide_grip);

  assert_top (on_course, 1, 3000, 4058);
  assert_top (between, 1, 3000, 4150);
  assert_top (as_right, 0, 0, 2200);
  assert_top (back, 1, 3000, 4000);
}

/* A single point over a single neighbour is a step, which goes along as one from then on. */
static void
test_steps (void)
{
  const MarkRef step = { .kind = REF_TOP, .part = TOP_STEP, .a = 1 }, second = point (2);
  g_autoptr (Wall) wall = level_wall ();
  Length height;
  guint index = 0;
  g_autoptr (Wall) more = NULL, joined = NULL, moved = NULL;

  wall_take_top (wall, top_mono (wall->length, LENGTH_MM (2400), LENGTH_MM (2000), &height),
                 height);
  wall->height = height;
  {
    g_autoptr (Wall) one = tool_add_top_point (wall, LENGTH_MM (2000), &index);

    g_assert_cmpuint (index, ==, 1);
    more = tool_add_top_point (one, LENGTH_MM (4000), &index);
    g_assert_cmpuint (index, ==, 2);
    g_assert_null (tool_add_top_point (one, LENGTH_MM (2000), &index));
  }
  joined = tool_pull_top (more, &block, &second, LENGTH_MM (-3000), 0, &free_grip);
  g_assert_cmpint (top_point (joined->tops, 1)->x, ==, LENGTH_MM (2000));
  g_assert_cmpint (top_point (joined->tops, 2)->x, ==, LENGTH_MM (2000));
  assert_sound (joined);
  moved = tool_pull_top (joined, &block, &step, LENGTH_MM (500), LENGTH_MM (900), &free_grip);
  g_assert_cmpint (top_point (moved->tops, 1)->x, ==, LENGTH_MM (2500));
  g_assert_cmpint (top_point (moved->tops, 2)->x, ==, LENGTH_MM (2500));
  g_assert_cmpint (moved->height, ==, joined->height);
  assert_sound (moved);
}

/* On a level wall both ends stay where they are; without the new one it is level again. */
static void
test_add_and_remove (void)
{
  g_autoptr (Wall) wall = level_wall ();
  guint index = 9;
  g_autoptr (Wall) added = tool_add_top_point (wall, LENGTH_MM (2500), &index);
  const MarkRef it = point (1);
  g_autoptr (Wall) pulled = tool_pull_top (added, &block, &it, 0, LENGTH_MM (800), &free_grip);
  g_autoptr (Wall) removed = tool_remove_corner (pulled, &it);

  g_assert_cmpuint (index, ==, 1);
  g_assert_cmpuint (added->tops->len, ==, 3);
  g_assert_cmpint (added->height, ==, wall->height);
  assert_top (pulled, 0, 0, 2442);
  assert_top (pulled, 1, 2500, 3242);
  assert_top (pulled, 2, 6000, 2442);
  g_assert_cmpuint (removed->tops->len, ==, 0);
  g_assert_cmpint (removed->height, ==, wall->height);
  g_assert_true (wall_equal (removed, wall));
}

static void
test_feet (void)
{
  const MarkRef first = { .kind = REF_FOOT };
  g_autoptr (Wall) wall = level_wall ();
  guint index = 9;
  g_autoptr (Wall) one = tool_add_foot (wall, &block, LENGTH_MM (3000), &index);
  /* From 202 to 190: the next height without a rip is 202. */
  g_autoptr (Wall) near
      = tool_pull_top (one, &block, &first, LENGTH_MM (-504), LENGTH_MM (-12), &wide_grip);
  g_autoptr (Wall) freely = tool_pull_top (one, &block, &first, 0, LENGTH_MM (60), &free_grip);
  g_autoptr (Wall) down = tool_pull_top (one, &block, &first, 0, LENGTH_MM (-900), &wide_grip);
  g_autoptr (Wall) gone = tool_remove_corner (one, &first);

  g_assert_cmpuint (index, ==, 0);
  g_assert_cmpint (foot_point (one->feet, 0)->up, ==, LENGTH_MM (202));
  g_assert_cmpint (foot_point (near->feet, 0)->x, ==, LENGTH_MM (2500));
  g_assert_cmpint (foot_point (near->feet, 0)->up, ==, LENGTH_MM (202));
  g_assert_cmpint (foot_point (freely->feet, 0)->up, ==, LENGTH_MM (262));
  g_assert_cmpint (foot_point (down->feet, 0)->up, ==, 0);
  g_assert_true (wall_equal (gone, wall));
  assert_sound (near);
}

static void
assert_typed (const Wall *wall, DimensionPart part, guint i, const char *text, const char *then)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (Wall) next = tool_set_top (wall, part, i, text, &error);
  g_autofree char *shown = NULL;

  g_assert_no_error (error);
  shown = tool_top_text (next, part, i);
  g_assert_cmpstr (shown, ==, then);
  assert_sound (next);
}

static void
test_typed (void)
{
  g_autoptr (Wall) wall = gabled_wall ();
  g_autoptr (GError) error = NULL;

  assert_typed (wall, DIMENSION_TOP_HEIGHT, 1, "4.2 m", "4200");
  assert_typed (wall, DIMENSION_TOP_AT, 1, "2500", "2500");
  assert_typed (wall, DIMENSION_TOP_PLACE, 1, "2500", "2500");
  assert_typed (wall, DIMENSION_TOP_PITCH, 1, "45", "45.0");
  assert_typed (wall, DIMENSION_TOP_PITCH, 2, "33,5°", "33.5");
  g_assert_null (tool_set_top (wall, DIMENSION_TOP_PITCH, 1, "steep", &error));
  g_assert_error (error, MODEL_ERROR, MODEL_ERROR_REFUSED);
  g_clear_error (&error);
  g_assert_null (tool_set_top (wall, DIMENSION_TOP_PITCH, 1, "90", &error));
  g_assert_error (error, MODEL_ERROR, MODEL_ERROR_REFUSED);
  g_assert_null (tool_top_text (wall, DIMENSION_TOP_HEIGHT, 3));
  g_assert_null (tool_top_text (wall, DIMENSION_FOOT_UP, 0));
  g_assert_null (tool_top_text (wall, DIMENSION_TOP_PITCH, 0));
}

/* 45 degrees over 3000 from 2000: the ridge, not the eaves, goes to 5000. */
static void
test_pitch_lifts_the_ridge (void)
{
  g_autoptr (Wall) wall = gabled_wall ();
  g_autoptr (Wall) next = tool_set_top (wall, DIMENSION_TOP_PITCH, 1, "45", NULL);

  assert_top (next, 0, 0, 2000);
  assert_top (next, 1, 3000, 5000);
  assert_top (next, 2, 6000, 2200);
}

/* Each shape is known again, breaks no rule of the model, and leads back to the level wall. */
static void
test_shapes (void)
{
  g_autoptr (Wall) wall = level_wall ();

  for (int shape = SHAPE_LEVEL; shape <= SHAPE_DRAWN; shape++)
    {
      g_autoptr (Wall) made = tool_shape_top (wall, &block, (TopShape) shape);
      g_autoptr (Wall) level = tool_shape_top (made, &block, SHAPE_LEVEL);

      g_assert_cmpint (tool_top_shape (made), ==, shape);
      assert_sound (made);
      g_assert_cmpint (tool_top_shape (level), ==, SHAPE_LEVEL);
      if (shape != SHAPE_SLOPED)
        g_assert_cmpint (level->height, ==, wall->height);
      for (int other = SHAPE_LEVEL; other <= SHAPE_DRAWN; other++)
        {
          g_autoptr (Wall) then = tool_shape_top (made, &block, (TopShape) other);

          assert_sound (then);
        }
    }
}

/* A level part is set as one; parts come and go, and what is left of them is a stepped top. */
static void
test_stretches (void)
{
  g_autoptr (Wall) level = level_wall ();
  g_autoptr (Wall) two = tool_shape_top (level, &block, SHAPE_STEPPED);
  g_autoptr (Wall) three = tool_add_step (two, &block);
  g_autoptr (Wall) higher = tool_set_top (three, DIMENSION_TOP_LEVEL, 2, "3000", NULL);

  g_assert_cmpuint (three->tops->len, ==, 4);
  g_assert_cmpint (tool_top_shape (three), ==, SHAPE_STEPPED);
  g_assert_cmpint (tool_top_shape (higher), ==, SHAPE_STEPPED);
  assert_sound (higher);
  for (guint i = 0; i <= higher->tops->len; i++)
    {
      g_autoptr (Wall) fewer = tool_remove_stretch (higher, i);

      g_assert_cmpint (fewer != NULL, ==, tool_is_stretch (higher, i));
      if (!fewer)
        continue;
      assert_sound (fewer);
      g_assert_cmpint (tool_top_shape (fewer), ==, SHAPE_STEPPED);
      for (guint k = 0; k <= fewer->tops->len; k++)
        {
          g_autoptr (Wall) one = tool_remove_stretch (fewer, k);

          if (one)
            {
              assert_sound (one);
              g_assert_cmpint (tool_top_shape (one), ==, SHAPE_LEVEL);
            }
        }
    }
}

/* A new opening finds a place on the footing and under the top; a pulled one stops there. */
static void
test_openings (void)
{
  g_autoptr (Wall) wall = gabled_wall ();
  Opening window, door, pulled;

  foot_list_add (wall->feet, LENGTH_MM (2000), LENGTH_MM (404));
  /* The top is at 2000 and 2200 at the ends: a window's head of 2245 has room further in. */
  g_assert_true (tool_place_opening (wall, &block, OPENING_WINDOW, 0, &window));
  window.id.n = 1;
  window.name = window.name ? window.name : g_strdup ("W1");
  window.key = g_strdup ("o1");
  g_array_append_val (wall->openings, window);
  assert_sound (wall);
  g_assert_true (tool_place_opening (wall, &block, OPENING_DOOR, LENGTH_MM (3500), &door));
  g_assert_cmpint (door.sill, ==, LENGTH_MM (404));
  door.id.n = 2;
  door.key = g_strdup ("o2");
  g_array_append_val (wall->openings, door);
  assert_sound (wall);
  /* Its head goes no higher than the top over its lower jamb. */
  pulled = tool_pull_opening (wall, &block, wall_opening_at (wall, 1), PART_HEAD, 0,
                              LENGTH_MM (5000), &free_grip);
  g_assert_cmpint (opening_head (&pulled), ==,
                   wall_top_lowest (wall, pulled.x, opening_right (&pulled)));
  opening_clear (&pulled);
  /* Pulled along, it stops where its corner comes to the slope. */
  pulled = tool_pull_opening (wall, &block, wall_opening_at (wall, 0), PART_BODY, LENGTH_MM (-900),
                              0, &free_grip);
  g_assert_cmpint (wall_top_at (wall, pulled.x, SIDE_RIGHT), >=, opening_head (&pulled));
  g_assert_cmpint (wall_top_at (wall, pulled.x - LENGTH_MM (2), SIDE_RIGHT), <,
                   opening_head (&pulled));
  opening_clear (&pulled);
}

/* The ends of a gable are pulled: its ridge stays where it stands, its eaves go along. */
static void
test_ends (void)
{
  static const struct
  {
    RefPart part;
    int dx, length, ridge;
  } cases[] = {
    { PART_RIGHT, 700, 6700, 3000 },
    { PART_RIGHT, -700, 5300, 3000 },
    { PART_LEFT, -700, 6700, 3700 },
    { PART_LEFT, 700, 5300, 2300 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (Wall) wall = gabled_wall ();
      g_autoptr (Wall) next = NULL;

      foot_list_add (wall->feet, LENGTH_MM (2800), LENGTH_MM (202));
      next = tool_pull_wall (wall, &block, cases[i].part, LENGTH_MM (cases[i].dx), 0, &free_grip);
      assert_sound (next);
      g_assert_cmpint (next->length, ==, LENGTH_MM (cases[i].length));
      assert_top (next, 0, 0, 2000);
      assert_top (next, 1, cases[i].ridge, 4000);
      assert_top (next, 2, cases[i].length, 2200);
      g_assert_cmpint (foot_point (next->feet, 0)->x, ==, LENGTH_MM (cases[i].ridge - 200));
    }
}

/* Whatever a hand does, a top stays in order: pulled a thousand times without a fault but of
 * height. */
static void
test_any_pulls (void)
{
  g_autoptr (Wall) wall = gabled_wall ();

  for (int i = 0; i < 1000; i++)
    {
      const guint n = wall->tops->len;
      const Grip *grip = g_test_rand_bit () ? &wide_grip : &free_grip;
      const MarkRef ref = g_test_rand_bit () ? point (g_test_rand_int_range (0, (gint32) n))
                                             : line (g_test_rand_int_range (0, (gint32) n + 1));
      const Length dx = LENGTH_MM (g_test_rand_int_range (-4000, 4000));
      const Length dz = LENGTH_MM (g_test_rand_int_range (-700, 700));
      Wall *next = tool_pull_top (wall, &block, &ref, dx, dz, grip);
      g_autofree char *fault = wall_fault (next, &block, NULL);
      guint index;

      if (fault && length_to_mm (next->height) >= 300)
        g_error ("%s", fault);
      if (fault || next->height > LENGTH_MM (20000))
        {
          wall_unref (next);
          continue;
        }
      wall_unref (wall);
      wall = next;
      if (n < 9 && i % 10 == 0)
        next = tool_add_top_point (wall, LENGTH_MM (g_test_rand_int_range (0, 6000)), &index);
      else
        next = NULL;
      if (next)
        {
          wall_unref (wall);
          wall = next;
          assert_sound (wall);
        }
    }
}

int
main (int argc, char **argv)
{
  int code;

  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/tool-top/pulls", test_pulls);
  g_test_add_func ("/tool-top/rests", test_rests);
  g_test_add_func ("/tool-top/steps", test_steps);
  g_test_add_func ("/tool-top/add-and-remove", test_add_and_remove);
  g_test_add_func ("/tool-top/feet", test_feet);
  g_test_add_func ("/tool-top/typed", test_typed);
  g_test_add_func ("/tool-top/pitch-lifts-the-ridge", test_pitch_lifts_the_ridge);
  g_test_add_func ("/tool-top/shapes", test_shapes);
  g_test_add_func ("/tool-top/stretches", test_stretches);
  g_test_add_func ("/tool-top/openings", test_openings);
  g_test_add_func ("/tool-top/ends", test_ends);
  g_test_add_func ("/tool-top/any-pulls", test_any_pulls);
  block = block_default ();
  code = g_test_run ();
  block_clear (&block);
  return code;
}
