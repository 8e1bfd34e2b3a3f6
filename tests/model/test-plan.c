/* test-plan.c - where walls in plan meet, and that both sides say the same */
#include "model/plan.h"
#include "edited.h"

#define MM(mm) LENGTH_MM (mm)

/* Blocks of 250 mm, the project's first, and of 115 mm for partitions. */
static Project *
two_blocks (void)
{
  g_autoptr (Project) empty = project_new ();
  Block block = block_default ();
  g_autoptr (GError) error = NULL;

  block.thickness = MM (115);
  g_autoptr (Edit) add = edit_add_block (&block);
  Project *project = project_edit (empty, add, &error);
  g_assert_no_error (error);
  block_clear (&block);
  return project;
}

static Project *
with_wall (Project *project, double x, double y, Runs runs, double length, guint block)
{
  g_autoptr (Wall) wall = wall_new ();

  wall->length = MM (length);
  wall->block = project_block_at (project, block)->id;
  wall->place = (PlanPlace){ TRUE, MM (x), MM (y), runs };
  return edited (project, edit_add_wall (wall));
}

/* 8000 x 6000 outside, with a partition from front to back whose left face is at 3000. */
static Project *
house (void)
{
  Project *project = two_blocks ();

  project = with_wall (project, 0, 0, RUNS_EAST, 8000, 0);
  project = with_wall (project, 8000, 0, RUNS_NORTH, 6000, 0);
  project = with_wall (project, 8000, 6000, RUNS_WEST, 8000, 0);
  project = with_wall (project, 0, 6000, RUNS_SOUTH, 6000, 0);
  return with_wall (project, 3115, 0, RUNS_NORTH, 6000, 1);
}

static const char *
kind_name (const Meeting *meeting)
{
  const char *const names[] = { "corner", "tee", "crossing", "wrong" };

  return names[meeting->kind];
}

static const char *
made_name (const Meeting *meeting)
{
  const char *const names[] = { "odd", "even", "first", "second", "unsaid", "contrary" };

  return names[meeting->made];
}

static char *
meetings_text (const Project *project)
{
  g_autoptr (GArray) meetings = plan_meetings (project);
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < meetings->len; i++)
    {
      const Meeting *meeting = &g_array_index (meetings, Meeting, i);

      g_string_append_printf (text, "%s%s %u@%g %u@%g %s", i > 0 ? "; " : "", kind_name (meeting),
                              meeting->wall[0], length_to_mm (meeting->at[0]), meeting->wall[1],
                              length_to_mm (meeting->at[1]), made_name (meeting));
    }
  return g_string_free (text, FALSE);
}

static void
assert_meetings (const Project *project, const char *expected)
{
  g_autofree char *text = meetings_text (project);

  g_assert_cmpstr (text, ==, expected);
}

/* Corners: front and back run through in odd courses; the partition in even ones, at both ends. */
static void
test_house (void)
{
  g_autoptr (Project) project = house ();
  const Wall *front = project_wall_at (project, 0), *partition = project_wall_at (project, 4);

  assert_meetings (project, "corner 0@0 3@5750 odd; corner 0@7750 1@0 odd; corner 1@5750 2@0 even; "
                            "corner 2@7750 3@0 odd; tee 4@0 0@3000 even; tee 4@5750 2@4885 even");
  g_assert_cmpint (front->tees->len, ==, 1);
  g_assert_cmpint (wall_tee_at (front, 0)->x, ==, MM (3000));
  g_assert_cmpint (wall_tee_at (front, 0)->ret, ==, MM (115));
  g_assert_cmpint (wall_tee_at (front, 0)->through, ==, THROUGH_EVEN);
  g_assert_cmpint (partition->ends[SIDE_LEFT].ret, ==, MM (250));
  g_assert_cmpint (partition->ends[SIDE_LEFT].through, ==, THROUGH_ODD);
  g_assert_cmpint (front->ends[SIDE_LEFT].through, ==, THROUGH_EVEN);
  g_assert_cmpint (project_wall_at (project, 3)->ends[SIDE_RIGHT].through, ==, THROUGH_ODD);
}

/* What is changed on one side is changed on the other. */
static void
test_said_by (void)
{
  const struct
  {
    guint wall;
    Side side;
    Through through;
    const char *made;
  } rows[] = {
    { 0, SIDE_RIGHT, THROUGH_ODD, "corner 0@7750 1@0 even" },
    { 1, SIDE_LEFT, THROUGH_EVEN, "corner 0@7750 1@0 even" },
    { 1, SIDE_LEFT, THROUGH_ALL, "corner 0@7750 1@0 first" },
    { 0, SIDE_RIGHT, THROUGH_ALL, "corner 0@7750 1@0 second" },
    { 4, SIDE_LEFT, THROUGH_ALL, "tee 4@0 0@3000 second" },
    { 4, SIDE_LEFT, THROUGH_EVEN, "tee 4@0 0@3000 odd" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (Project) project = house ();
      g_autoptr (Wall) wall = wall_copy (project_wall_at (project, rows[i].wall));

      wall->ends[rows[i].side].through = rows[i].through;
      project = edited (project, edit_set_wall (wall));
      g_autofree char *text = meetings_text (project);
      g_test_message ("%s", text);
      g_assert_nonnull (strstr (text, rows[i].made));
      g_assert_null (strstr (text, "contrary"));
    }
}

/* A partition that is moved takes its tees along; taken away, it leaves none. */
static void
test_moved (void)
{
  g_autoptr (Project) project = house ();
  g_autoptr (Wall) wall = wall_copy (project_wall_at (project, 4));

  wall->place.x += MM (500);
  project = edited (project, edit_set_wall (wall));
  g_assert_cmpint (project_wall_at (project, 0)->tees->len, ==, 1);
  g_assert_cmpint (wall_tee_at (project_wall_at (project, 0), 0)->x, ==, MM (3500));
  g_assert_cmpint (wall_tee_at (project_wall_at (project, 2), 0)->x, ==, MM (4385));
  project = edited (project, edit_remove_wall (wall->id));
  g_assert_cmpint (project_wall_at (project, 0)->tees->len, ==, 0);
  g_assert_cmpint (project_wall_at (project, 2)->tees->len, ==, 0);
  g_assert_cmpint (project_wall_at (project, 0)->ends[SIDE_LEFT].ret, ==, MM (250));
}

/* Two partitions that cross. */
static void
test_crossing (void)
{
  g_autoptr (Project) project = house ();

  project = with_wall (project, 0, 2000, RUNS_EAST, 8000, 1);
  g_autofree char *text = meetings_text (project);
  g_assert_nonnull (strstr (text, "crossing 4@2000 5@3000 even"));
  g_assert_cmpint (project_wall_at (project, 5)->tees->len, ==, 1);
  g_assert_cmpint (wall_tee_at (project_wall_at (project, 5), 0)->through, ==, THROUGH_EVEN);
  g_assert_cmpint (wall_tee_at (project_wall_at (project, 4), 0)->through, ==, THROUGH_ODD);
}

/* A part of a square, along each other, or three in one square: in each other's way, and said on
 * no wall. */
static void
test_wrong (void)
{
  g_autoptr (Project) half = house ();
  half = with_wall (half, 5000, 100, RUNS_NORTH, 3000, 1);
  g_autofree char *text = meetings_text (half);
  g_assert_nonnull (strstr (text, "wrong 0@4885 5@0 unsaid"));
  g_assert_cmpint (project_wall_at (half, 0)->tees->len, ==, 1);

  g_autoptr (Project) beside = house ();
  beside = with_wall (beside, 1000, 200, RUNS_EAST, 3000, 1);
  g_autofree char *other = meetings_text (beside);
  g_assert_nonnull (strstr (other, "wrong 0@1000 5@0 unsaid"));

  /* Where the partition meets the front wall another one comes from outside. */
  g_autoptr (Project) crowd = house ();
  crowd = with_wall (crowd, 3115, -2000, RUNS_NORTH, 2250, 1);
  g_autofree char *three = meetings_text (crowd);
  g_assert_nonnull (strstr (three, "wrong 5@2000 0@3000"));
  g_assert_nonnull (strstr (three, "wrong 4@0 0@3000"));
}

/* Walls that stand nowhere keep what they say. */
static void
test_nowhere (void)
{
  g_autoptr (Project) project = house ();
  g_autoptr (Wall) wall = wall_new ();

  wall->ends[SIDE_LEFT]
      = (End){ .given = TRUE, .ret = MM (250), .through = THROUGH_ODD, .has_return = TRUE };
  project = edited (project, edit_add_wall (wall));
  g_assert_cmpint (project_wall_at (project, 5)->ends[SIDE_LEFT].ret, ==, MM (250));
}

/* The left end is pulled out: what stands in the wall, and what meets it, stays where it is in
 * plan. */
static void
test_left_end (void)
{
  g_autoptr (Project) project = house ();
  g_autoptr (Wall) wall = wall_copy (project_wall_at (project, 0));

  wall->length += MM (400);
  wall_shift (wall, MM (400));
  project = edited (project, edit_set_wall (wall));
  const Wall *front = project_wall_at (project, 0);

  g_assert_cmpint (front->place.x, ==, MM (-400));
  g_assert_cmpint (front->ends[SIDE_LEFT].ret, ==, 0);
  g_assert_cmpint (front->tees->len, ==, 2);
  g_assert_cmpint (wall_tee_at (front, 0)->x, ==, MM (3400));
  g_assert_cmpint (wall_tee_at (front, 1)->x, ==, MM (400));
  assert_meetings (project, "corner 0@8150 1@0 odd; corner 1@5750 2@0 even; corner 2@7750 3@0 odd; "
                            "tee 3@5750 0@400 even; tee 4@0 0@3400 even; tee 4@5750 2@4885 even");
}

/* An end that was set by hand, where no wall stands in plan, stays so. */
static void
test_by_hand (void)
{
  g_autoptr (Project) project = with_wall (two_blocks (), 0, 0, RUNS_EAST, 5000, 0);
  g_autoptr (Wall) wall = wall_copy (project_wall_at (project, 0));

  wall->ends[SIDE_LEFT]
      = (End){ .given = TRUE, .ret = MM (250), .through = THROUGH_ODD, .has_return = TRUE };
  project = edited (project, edit_set_wall (wall));
  g_autoptr (Wall) longer = wall_copy (project_wall_at (project, 0));
  longer->length = MM (5200);
  project = edited (project, edit_set_wall (longer));
  g_assert_cmpint (project_wall_at (project, 0)->ends[SIDE_LEFT].ret, ==, MM (250));
}

/* A quarter turn of the whole plan, or its copy far away, changes nothing of what walls say. */
static void
test_turned (void)
{
  g_autoptr (Project) project = house ();
  g_autoptr (Project) turned = project_ref (project);
  g_autoptr (GPtrArray) walls = wall_list_new ();

  for (guint i = 0; i < project->walls->len; i++)
    {
      Wall *wall = wall_copy (project_wall_at (project, i));
      Length x = wall->place.x;

      wall->place.x = MM (20000) - wall->place.y;
      wall->place.y = x;
      wall->place.runs = (Runs) ((wall->place.runs + 1) % 4);
      g_ptr_array_add (walls, wall);
    }
  turned = edited (turned, edit_walls (walls));
  for (guint i = 0; i < project->walls->len; i++)
    {
      g_autoptr (Wall) a = wall_copy (project_wall_at (project, i));
      g_autoptr (Wall) b = wall_copy (project_wall_at (turned, i));

      a->place = b->place = (PlanPlace){ 0 };
      g_assert_true (wall_equal (a, b));
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/plan/house", test_house);
  g_test_add_func ("/plan/said-by", test_said_by);
  g_test_add_func ("/plan/moved", test_moved);
  g_test_add_func ("/plan/crossing", test_crossing);
  g_test_add_func ("/plan/wrong", test_wrong);
  g_test_add_func ("/plan/nowhere", test_nowhere);
  g_test_add_func ("/plan/left-end", test_left_end);
  g_test_add_func ("/plan/by-hand", test_by_hand);
  g_test_add_func ("/plan/turned", test_turned);
  return g_test_run ();
}
