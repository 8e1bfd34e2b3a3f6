/* test-plan-shift.c - wings and whole buildings moved as one */
#include "model/plan-shift.h"

#include <string.h>

#include "edited.h"
#include "model/outline.h"
#include "model/plan-edit.h"

#define MM(mm) LENGTH_MM (mm)

static Project *
with_building (Project *project, const char *text, double x)
{
  g_autofree char *fault = NULL;
  g_autoptr (GArray) sides = outline_parse (text, &fault);
  g_autoptr (GPtrArray) walls = NULL;

  g_assert_null (outline_fault (sides));
  walls = outline_walls (sides, MM (250), MM (2500), MM (x), 0);
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

/* A back part of 12 x 5 m with a wing of 4 x 3 m to the south in its middle, which begins at 4:
 * wing's front, its right side, the back part's right front, right, back, left, left front, the
 * wing's left side. */
#define WINGED "4000 3000 R 4000 5000 12000 5000 4000 R 3000"

static char *
wing_text (const Project *project, guint wall, gboolean *whole)
{
  g_autoptr (GArray) group = plan_wing (project, project_wall_at (project, wall)->id, whole);
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < group->len; i++)
    g_string_append_printf (text, "%s%u", i > 0 ? " " : "", g_array_index (group, guint, i));
  return g_string_free (text, FALSE);
}

static void
test_wing (void)
{
  g_autoptr (Project) project = with_building (project_new (), WINGED, 4000);
  g_autoptr (Project) house = with_building (project_new (), "8000 x 6000", 0);
  gboolean whole;
  g_autofree char *side = wing_text (project, 1, &whole);

  g_assert_cmpstr (side, ==, "0 1 7");
  g_assert_false (whole);
  g_autofree char *back = wing_text (project, 4, &whole);
  g_assert_cmpstr (back, ==, "2 3 4 5 6");
  /* Of a rectangle all corners are outer ones. */
  g_autofree char *all = wing_text (house, 2, &whole);
  g_assert_cmpstr (all, ==, "0 1 2 3");
  g_assert_true (whole);
  /* A partition across the wing goes along; one from its front on into the back part, too, which it
   * meets elsewhere then. */
  project = with_partition (project, RUNS_EAST, 6000, 1500);
  project = with_partition (project, RUNS_NORTH, 5000, 3500);
  g_autofree char *parted = wing_text (project, 7, &whole);
  g_assert_nonnull (strstr (parted, "0 1 7 8"));
}

static Project *
shifted (const Project *project, guint wall, double by)
{
  g_autoptr (GError) error = NULL;
  Edit *edit = plan_shift_wing (project, project_wall_at (project, wall)->id, MM (by), &error);

  g_assert_no_error (error);
  return edited (project_ref (project), edit);
}

/* Its sides move, the fronts beside it give: one gets what the other loses. */
static void
test_shift (void)
{
  g_autoptr (Project) project = with_building (project_new (), WINGED, 4000);
  g_autoptr (Project) next = shifted (project, 1, 700);
  g_autoptr (Project) again = shifted (next, 1, -700);
  g_autoptr (Project) longer = shifted (project, 0, 500);
  g_autoptr (GError) error = NULL;

  g_assert_cmpint (project_wall_at (next, 0)->place.x, ==, MM (4700));
  g_assert_cmpint (project_wall_at (next, 0)->length, ==, MM (4000));
  g_assert_cmpint (project_wall_at (next, 2)->length, ==, MM (4250 - 700));
  g_assert_cmpint (project_wall_at (next, 6)->length, ==, MM (4250 + 700));
  g_assert_cmpint (project_wall_at (next, 4)->length, ==, MM (12000));
  g_assert_true (project_equal (project, again));
  /* Its front, outwards: both of its sides get longer, nothing else moves. */
  g_assert_cmpint (project_wall_at (longer, 0)->place.y, ==, MM (-500));
  g_assert_cmpint (project_wall_at (longer, 1)->length, ==, MM (3250 + 500));
  g_assert_cmpint (project_wall_at (longer, 7)->length, ==, MM (3250 + 500));
  g_assert_cmpint (project_wall_at (longer, 2)->length, ==, MM (4250));
  g_assert_null (plan_shift_wing (project, project_wall_at (project, 1)->id, MM (5000), &error));
  g_assert_error (error, MODEL_ERROR, MODEL_ERROR_REFUSED);
}

/* Any wing of any of these, there and back: as it was, and the meetings stay. */
static void
test_property (void)
{
  static const char *const outlines[] = { WINGED, "8000 x 6000", "9000 4000 3000 R 3000 6000 7000",
                                          "9000 3000 2000 R 2000 R 2000 3000 9000 8000" };
  guint done = 0;

  for (guint o = 0; o < G_N_ELEMENTS (outlines); o++)
    for (int parted = 0; parted < 2; parted++)
      {
        g_autoptr (Project) project = with_building (project_new (), outlines[o], 0);
        g_autoptr (GArray) had = NULL;

        if (parted)
          project = with_partition (project, RUNS_NORTH, 1500, 1500);
        had = plan_meetings (project);
        for (guint wall = 0; wall < project->walls->len; wall++)
          for (int turn = 0; turn < 8; turn++)
            {
              const WallId id = project_wall_at (project, wall)->id;
              const Length by = g_test_rand_int_range (-MM (900), MM (900));
              g_autoptr (Edit) edit = plan_shift_wing (project, id, by, NULL);
              g_autoptr (Project) next = edit ? project_edit (project, edit, NULL) : NULL;
              g_autoptr (GArray) has = NULL;
              g_autoptr (Edit) back = NULL;
              g_autoptr (Project) again = NULL;

              if (!edit)
                continue;
              done++;
              g_assert_nonnull (next);
              has = plan_meetings (next);
              g_assert_cmpuint (has->len, ==, had->len);
              for (guint i = 0; i < has->len; i++)
                g_assert_cmpint (g_array_index (has, Meeting, i).kind, !=, MEET_WRONG);
              back = plan_shift_wing (next, id, -by, NULL);
              g_assert_nonnull (back);
              again = project_edit (next, back, NULL);
              g_assert_true (project_equal (project, again));
            }
      }
  g_test_message ("%u shifts", done);
  g_assert_cmpuint (done, >, 200);
}

/* A building goes anywhere, with all that is in it; not through another. */
static void
test_building (void)
{
  g_autoptr (Project) project = with_building (project_new (), "8000 x 6000", 0);
  g_autoptr (GError) error = NULL;
  Edit *edit;

  project = with_partition (project, RUNS_NORTH, 3000, 3000);
  project = with_building (project, "3000 x 3000", 10000);
  edit = plan_move_building (project, project_wall_at (project, 4)->id, MM (-500), MM (1200),
                             &error);
  g_assert_no_error (error);
  g_autoptr (Project) next = edited (project_ref (project), edit);
  g_assert_cmpint (project_wall_at (next, 0)->place.x, ==, MM (-500));
  g_assert_cmpint (project_wall_at (next, 0)->place.y, ==, MM (1200));
  g_assert_cmpint (project_wall_at (next, 4)->place.x, ==,
                   project_wall_at (project, 4)->place.x - MM (500));
  g_assert_cmpint (project_wall_at (next, 5)->place.x, ==, MM (10000));
  g_assert_null (
      plan_move_building (project, project_wall_at (project, 0)->id, MM (2100), 0, &error));
  g_assert_error (error, MODEL_ERROR, MODEL_ERROR_REFUSED);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/plan-shift/wing", test_wing);
  g_test_add_func ("/plan-shift/shift", test_shift);
  g_test_add_func ("/plan-shift/there-and-back", test_property);
  g_test_add_func ("/plan-shift/building", test_building);
  return g_test_run ();
}
