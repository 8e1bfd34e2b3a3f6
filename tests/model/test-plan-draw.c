/* test-plan-draw.c - walls drawn into a plan come to lie on what stands there */
#include "model/plan-draw.h"

#include "edited.h"
#include "model/outline.h"

#define MM(mm) LENGTH_MM (mm)

/* 8000 x 6000, of 250 mm: front, right, back, left. */
static Project *
house (void)
{
  g_autofree char *fault = NULL;
  g_autoptr (GArray) sides = outline_parse ("8000 x 6000", &fault);
  g_autoptr (GPtrArray) walls = outline_walls (sides, MM (250), MM (2500), 0, 0);

  return edited (project_new (), edit_walls (walls));
}

static void
test_reach (void)
{
  g_autoptr (Project) project = house ();
  const struct
  {
    double x, y, length;
    Runs runs;
    double to_x, to_y, to_length; /* as it is to be */
    guint meets;
  } rows[] = {
    /* From the outer face of the right wall, through it; from within it; from its inner face. */
    { 8000, 3000, 3000, RUNS_EAST, 7750, 3000, 3250, 1 },
    { 7900, 3000, 3000, RUNS_EAST, 7750, 3000, 3150, 1 },
    { 7750, 3000, 3000, RUNS_EAST, 7750, 3000, 3000, 1 },
    /* From inner face to inner face, from left to right and the other way: through both. */
    { 250, 3000, 7500, RUNS_EAST, 0, 3000, 8000, 2 },
    { 7750, 3000, 7500, RUNS_WEST, 8000, 3000, 8000, 2 },
    { 4000, 250, 5500, RUNS_NORTH, 4000, 0, 6000, 2 },
    { 4000, 5750, 5500, RUNS_SOUTH, 4000, 6000, 6000, 2 },
    /* On from the front, at its corner with the right wall: three walls would want that place, but
     * through the right one it would have to go. */
    { 8100, 3000, 3000, RUNS_EAST, 8100, 3000, 3000, 0 },
    /* Beside the house, and above it. */
    { 9000, 0, 3000, RUNS_EAST, 9000, 0, 3000, 0 },
    { 0, 6500, 3000, RUNS_EAST, 0, 6500, 3000, 0 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (Wall) wall = wall_new ();
      g_autoptr (Project) next = NULL;
      g_autoptr (GArray) meetings = NULL;

      wall->length = MM (rows[i].length);
      wall->place = (PlanPlace){ TRUE, MM (rows[i].x), MM (rows[i].y), rows[i].runs };
      plan_reach (project, (WallId){ 0 }, wall, MM (250));
      g_assert_cmpfloat (length_to_mm (wall->place.x), ==, rows[i].to_x);
      g_assert_cmpfloat (length_to_mm (wall->place.y), ==, rows[i].to_y);
      g_assert_cmpfloat (length_to_mm (wall->length), ==, rows[i].to_length);
      next = edited (project_ref (project), edit_add_wall (wall));
      meetings = plan_meetings_of (next, 4);
      g_assert_cmpuint (meetings->len, ==, rows[i].meets);
      for (guint k = 0; k < meetings->len; k++)
        g_assert_cmpint (g_array_index (meetings, Meeting, k).kind, ==, MEET_TEE);
    }
}

static void
test_snap (void)
{
  g_autoptr (Project) project = house ();
  const WallId none = { 0 };

  g_assert_cmpint (plan_snap (project, none, FALSE, MM (8030), MM (50), MM (10)), ==, MM (8000));
  g_assert_cmpint (plan_snap (project, none, FALSE, MM (7770), MM (50), MM (10)), ==, MM (7750));
  g_assert_cmpint (plan_snap (project, none, FALSE, MM (4034), MM (50), MM (10)), ==, MM (4030));
  g_assert_cmpint (plan_snap (project, none, FALSE, MM (-4036), MM (50), MM (10)), ==, MM (-4040));
  g_assert_cmpint (plan_snap (project, none, TRUE, MM (6049), MM (50), MM (10)), ==, MM (6000));
  g_assert_cmpint (plan_snap (project, none, TRUE, MM (8000), MM (50), MM (10)), ==, MM (8000));
  /* The right wall is the only one with a face at 7750. */
  g_assert_cmpint (
      plan_snap (project, project_wall_at (project, 1)->id, FALSE, MM (7772), MM (50), MM (10)), ==,
      MM (7770));
  g_assert_cmpint (plan_free_place (project), ==, MM (10000));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/plan-draw/reach", test_reach);
  g_test_add_func ("/plan-draw/snap", test_snap);
  return g_test_run ();
}
