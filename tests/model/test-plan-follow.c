/* test-plan-follow.c - a wall gets thicker or thinner, and all that meets it meets it still */
#include "model/plan-follow.h"

#include "edited.h"
#include "model/outline.h"
#include "model/plan-edit.h"

#define MM(mm) LENGTH_MM (mm)

/* Of blocks of 250 mm; 365 and 115 mm are there, too. */
static Project *
building (const char *text)
{
  g_autofree char *fault = NULL;
  g_autoptr (GArray) sides = outline_parse (text, &fault);
  g_autoptr (GPtrArray) walls = outline_walls (sides, MM (250), MM (2500), 0, 0);
  Project *project = project_new ();

  for (int i = 0; i < 2; i++)
    {
      Block block = block_default ();

      block.thickness = i == 0 ? MM (365) : MM (115);
      project = edited (project, edit_add_block (&block));
      block_clear (&block);
    }
  return edited (project, edit_walls (walls));
}

static Project *
with_partition (Project *project, Runs runs, double x, double y)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (Wall) wall
      = plan_partition (project, runs, MM (x), MM (y), project_block_at (project, 0), &error);

  g_assert_no_error (error);
  return edited (project, edit_add_wall (wall));
}

static Project *
built_of (const Project *project, guint wall, guint block)
{
  g_autoptr (Wall) other = wall_copy (project_wall_at (project, wall));

  other->block = project_block_at (project, block)->id;
  return edited (project_ref (project), edit_set_wall (other));
}

/* The same pairs meet, in the same way and made alike; outer faces stand where they stood. */
static void
assert_same_plan (const Project *a, const Project *b)
{
  g_autoptr (GArray) had = plan_meetings (a);
  g_autoptr (GArray) has = plan_meetings (b);

  g_assert_cmpuint (had->len, ==, has->len);
  for (guint i = 0; i < had->len; i++)
    {
      const Meeting *was = &g_array_index (had, Meeting, i);
      Meeting is;

      g_assert_true (plan_meeting_between (b, project_wall_at (a, was->wall[0])->id,
                                           project_wall_at (a, was->wall[1])->id, &is));
      g_assert_cmpint (is.kind, ==, was->kind);
      g_assert_cmpint (is.made, ==, was->made);
    }
  for (guint i = 0; i < a->walls->len; i++)
    {
      const PlanPlace *was = &project_wall_at (a, i)->place, *is = &project_wall_at (b, i)->place;

      if (runs_east (was->runs))
        g_assert_cmpint (was->y, ==, is->y);
      else
        g_assert_cmpint (was->x, ==, is->x);
    }
}

/* At an inner corner the other wall reaches over the thicker one; what stands in it stays. */
static void
test_inner_corner (void)
{
  g_autoptr (Project) project = building ("9000 4000 3000 R 3000 6000 7000");
  g_autoptr (Project) thick = built_of (project, 2, 1);
  const Wall *wall = project_wall_at (thick, 3);

  assert_same_plan (project, thick);
  /* The inner face of the third was at 3750, and is at 3635. */
  g_assert_cmpint (wall->place.y, ==, MM (3635));
  g_assert_cmpint (wall->length, ==, MM (3250 + 115));
  g_assert_cmpint (wall->ends[SIDE_LEFT].ret, ==, MM (365));
  g_assert_cmpint (project_wall_at (thick, 1)->length, ==, MM (4000));
  g_autoptr (Project) again = built_of (thick, 2, 0);
  g_assert_true (project_equal (project, again));
}

/* All blocks of one kind at once. */
static void
test_block (void)
{
  g_autoptr (Project) project
      = with_partition (building ("9000 4000 3000 R 3000 6000 7000"), RUNS_NORTH, 3000, 1500);
  Block block = block_copy (project_block_at (project, 0));
  g_autoptr (Project) thick = NULL;

  block.thickness = MM (300);
  thick = edited (project_ref (project), edit_set_block (&block));
  assert_same_plan (project, thick);
  block.thickness = MM (250);
  thick = edited (thick, edit_set_block (&block));
  g_assert_true (project_equal (project, thick));
  block_clear (&block);
}

/* Any wall of any of these, to any thickness and back. */
static void
test_any (void)
{
  static const char *const outlines[]
      = { "8000 x 6000", "9000 4000 3000 R 3000 6000 7000",
          "9000 3000 2000 R 2000 R 2000 3000 9000 8000", "12000 3000 4000 R 4000 8000 7000" };

  for (guint o = 0; o < G_N_ELEMENTS (outlines); o++)
    {
      g_autoptr (Project) project = with_partition (building (outlines[o]), RUNS_NORTH, 3000, 1500);

      project = with_partition (project, RUNS_EAST, 1500, 1500);
      for (guint wall = 0; wall < project->walls->len; wall++)
        for (guint block = 1; block < 3; block++)
          {
            g_autoptr (Project) other = built_of (project, wall, block);
            g_autoptr (Project) again = built_of (other, wall, 0);

            g_test_message ("%s, wall %u of block %u", outlines[o], wall, block);
            assert_same_plan (project, other);
            g_assert_true (project_equal (project, again));
          }
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/plan-follow/inner-corner", test_inner_corner);
  g_test_add_func ("/plan-follow/block", test_block);
  g_test_add_func ("/plan-follow/any", test_any);
  return g_test_run ();
}
