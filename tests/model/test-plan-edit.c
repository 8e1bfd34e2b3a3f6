/* test-plan-edit.c - walls that are pushed, pulled and drawn in plan */
#include "model/plan-edit.h"

#include <string.h>

#include "model/outline.h"
#include "edited.h"

#define MM(mm) LENGTH_MM (mm)

static Project *
building (const char *text)
{
  g_autofree char *fault = NULL;
  g_autoptr (GArray) sides = outline_parse (text, &fault);
  g_autoptr (GPtrArray) walls = NULL;

  g_assert_null (fault);
  g_assert_null (outline_fault (sides));
  walls = outline_walls (sides, MM (250), MM (2500), 0, 0);
  for (guint i = 0; i < walls->len; i++)
    {
      Wall *wall = g_ptr_array_index (walls, i);

      g_free (wall->name);
      wall->name = g_strdup_printf ("Wall %u", i + 1);
    }
  return edited (project_new (), edit_walls (walls));
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
with_window (Project *project, guint wall, double x)
{
  Opening opening = { .kind = OPENING_WINDOW,
                      .name = g_strdup ("W"),
                      .x = MM (x),
                      .width = MM (1200),
                      .height = MM (1200),
                      .sill = MM (900) };
  Project *next
      = edited (project, edit_add_opening (project_wall_at (project, wall)->id, &opening));

  opening_clear (&opening);
  return next;
}

/* 8000 x 6000: front, right, back, left, and a partition from front to back. */
static Project *
house (void)
{
  Project *project = with_partition (building ("8000 x 6000"), RUNS_NORTH, 4000, 3000);

  return with_window (with_window (project, 0, 1000), 2, 1000);
}

static double
length_of (const Project *project, guint wall)
{
  return length_to_mm (project_wall_at (project, wall)->length);
}

/* Pushes, and is not refused. */
static Project *
pushed (const Project *project, guint wall, double by)
{
  g_autoptr (GError) error = NULL;
  Edit *edit = plan_push (project, project_wall_at (project, wall)->id, MM (by), &error);

  g_assert_no_error (error);
  return edited (project_ref (project), edit);
}

static char *
refusal (const Project *project, guint wall, double by)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (Edit) edit = plan_push (project, project_wall_at (project, wall)->id, MM (by), &error);

  g_assert_null (edit);
  g_assert_error (error, MODEL_ERROR, MODEL_ERROR_REFUSED);
  return g_strdup (error->message);
}

/* Twice the area within the outline of all walls with a corner at both ends, by the outer faces;
 * and whether these close. In mm2. */
static double
area (const Project *project, guint n_outline)
{
  double sum = 0;

  for (guint i = 0; i < n_outline; i++)
    {
      const Wall *wall = project_wall_at (project, i);
      const Block *block = project_block (project, wall->block);
      const PlanBox box = plan_box (wall, block->thickness);
      const double x = (double) (wall->place.runs == RUNS_NORTH ? box.x1 : box.x0) / LENGTH_PER_MM;
      const Wall *before = project_wall_at (project, (i + n_outline - 1) % n_outline);
      const Wall *after = project_wall_at (project, (i + 1) % n_outline);

      /* Upright sides alone make up the area; their ends are the faces of their neighbours. */
      if (wall->place.runs == RUNS_NORTH || wall->place.runs == RUNS_SOUTH)
        sum += x * length_to_mm (after->place.y - before->place.y);
    }
  return sum;
}

/* ---- pushing ---- */

static void
test_push_outline (void)
{
  g_autoptr (Project) project = house ();
  g_autoptr (Project) back = pushed (project, 2, 500);
  g_autoptr (Project) left = pushed (project, 3, 1000);

  g_assert_cmpfloat (area (project, 4), ==, 8000.0 * 6000.0);
  g_assert_cmpfloat (area (back, 4), ==, 8000.0 * 6500.0);
  g_assert_cmpfloat (length_of (back, 1), ==, 6500);
  g_assert_cmpfloat (length_of (back, 3), ==, 6500);
  g_assert_cmpfloat (length_of (back, 4), ==, 6500);
  g_assert_cmpfloat (length_of (back, 0), ==, 8000);
  /* The window in front stays where it stands, though its wall begins a metre farther left. */
  g_assert_cmpfloat (area (left, 4), ==, 9000.0 * 6000.0);
  g_assert_cmpint (wall_opening_at (project_wall_at (left, 0), 0)->x, ==, MM (2000));
  g_assert_cmpint (project_wall_at (left, 0)->place.x, ==, MM (-1000));
  g_assert_cmpint (wall_opening_at (project_wall_at (left, 2), 0)->x, ==, MM (1000));
  g_assert_cmpint (wall_tee_at (project_wall_at (left, 0), 0)->x, ==, MM (5000));
}

/* At an inner corner, too: the wall moves alone, its neighbours with it. */
static void
test_push_angle (void)
{
  g_autoptr (Project) project = building ("9000 4000 3000 R 3000 6000 7000");
  g_autoptr (Project) next = pushed (project, 2, 400);

  g_assert_cmpfloat (area (project, 6), ==, 9000.0 * 4000 + 6000.0 * 3000);
  g_assert_cmpfloat (area (next, 6), ==, 9000.0 * 4400 + 6000.0 * 2600);
  g_assert_cmpfloat (length_of (next, 0), ==, 9000);
}

/* A partition slides between the walls that it ends at, however it is made. */
static void
test_push_partition (void)
{
  g_autoptr (Project) project = house ();
  Meeting meeting;

  g_assert_true (plan_meeting_between (project, project_wall_at (project, 0)->id,
                                       project_wall_at (project, 4)->id, &meeting));
  for (int made = MADE_FIRST_ODD; made <= MADE_SECOND_THROUGH; made++)
    {
      g_autoptr (Project) set
          = edited (project_ref (project), plan_make_edit (project, &meeting, (MeetMade) made));
      g_autoptr (Project) next = pushed (set, 4, 300);
      Meeting after;

      g_assert_true (plan_meeting_between (next, project_wall_at (next, 4)->id,
                                           project_wall_at (next, 0)->id, &after));
      g_assert_cmpint (after.made, ==, made);
      g_assert_cmpint (after.at[1], ==, MM (4300));
      g_assert_cmpfloat (length_of (next, 0), ==, 8000);
      g_assert_cmpuint (project_wall_at (next, 0)->tees->len, ==,
                        made == MADE_SECOND_THROUGH ? 0 : 1);
    }
}

/* What a push may not do is said, and is not done. */
static void
test_push_refused (void)
{
  g_autoptr (Project) project = house ();
  g_autofree char *apart = refusal (project, 4, 7000);
  g_autofree char *over = refusal (project, 0, -6500);
  g_autofree char *opening = refusal (project, 3, -1500);
  g_autofree char *way = refusal (project, 4, 3600);

  g_assert_cmpstr (apart, ==, "w5 and Wall 1 would no longer meet.");
  g_assert_nonnull (strstr (over, "no room left"));
  g_assert_nonnull (strstr (opening, "W"));
  g_assert_nonnull (strstr (way, "would stand in each other’s way"));
}

/* There and back again is nowhere; meetings are the same at every step. */
static void
test_push_property (void)
{
  static const char *const outlines[] = { "8000 x 6000", "9000 4000 3000 R 3000 6000 7000",
                                          "9000 3000 2000 R 2000 R 2000 3000 9000 8000" };
  guint done = 0;

  for (guint o = 0; o < G_N_ELEMENTS (outlines); o++)
    {
      g_autoptr (Project) project = with_partition (building (outlines[o]), RUNS_NORTH, 3000, 1500);

      for (int turn = 0; turn < 60; turn++)
        {
          const guint wall = (guint) g_test_rand_int_range (0, (int) project->walls->len);
          const Length by = g_test_rand_int_range (-MM (900), MM (900));
          g_autoptr (GArray) had = plan_meetings (project);
          g_autoptr (Edit) edit
              = plan_push (project, project_wall_at (project, wall)->id, by, NULL);
          g_autoptr (Project) next = edit ? project_edit (project, edit, NULL) : NULL;
          g_autoptr (GArray) has = NULL;

          if (!edit)
            continue;
          g_assert_nonnull (next);
          done++;
          has = plan_meetings (next);
          g_assert_cmpuint (has->len, ==, had->len);
          for (guint i = 0; i < has->len; i++)
            {
              g_assert_cmpint (g_array_index (has, Meeting, i).kind, !=, MEET_WRONG);
              g_assert_cmpint (g_array_index (has, Meeting, i).made, <, MADE_UNSAID);
            }
          {
            g_autoptr (Edit) back = plan_push (next, project_wall_at (next, wall)->id, -by, NULL);
            g_autoptr (Project) again = NULL;

            g_assert_nonnull (back);
            again = project_edit (next, back, NULL);
            g_assert_true (project_equal (project, again));
          }
          project_unref (project);
          project = g_steal_pointer (&next);
        }
    }
  g_assert_cmpuint (done, >, 60);
}

/* ---- an end that is pulled ---- */

static Project *
resized (const Project *project, guint index, Side side, double by)
{
  g_autoptr (Wall) wall = wall_copy (project_wall_at (project, index));
  g_autoptr (GError) error = NULL;
  Edit *edit;

  if (side == SIDE_LEFT)
    wall_shift (wall, MM (by));
  wall->length += MM (by);
  edit = plan_resize (project, wall, side, &error);
  g_assert_no_error (error);
  return edited (project_ref (project), edit);
}

static void
test_resize (void)
{
  g_autoptr (Project) project = house ();
  g_autoptr (Project) right = resized (project, 0, SIDE_RIGHT, 700);
  g_autoptr (Project) left = resized (project, 0, SIDE_LEFT, 700);
  g_autoptr (Project) back = resized (project, 2, SIDE_LEFT, -500);
  g_autoptr (Project) partition = resized (project, 4, SIDE_RIGHT, 300);

  g_assert_cmpfloat (area (right, 4), ==, 8700.0 * 6000);
  g_assert_cmpfloat (length_of (right, 2), ==, 8700);
  g_assert_cmpfloat (area (left, 4), ==, 8700.0 * 6000);
  g_assert_cmpint (project_wall_at (left, 0)->place.x, ==, MM (-700));
  g_assert_cmpfloat (area (back, 4), ==, 7500.0 * 6000);
  g_assert_cmpfloat (area (partition, 4), ==, 8000.0 * 6300);
}

/* A wall that meets nothing is simply set; so is one that stands nowhere. */
static void
test_resize_alone (void)
{
  g_autoptr (Project) empty = project_new ();
  g_autoptr (Wall) wall = wall_new ();
  g_autoptr (Project) project = edited (project_ref (empty), edit_add_wall (wall));
  g_autoptr (Project) next = resized (project, 0, SIDE_RIGHT, 250);

  g_assert_cmpfloat (length_of (next, 0), ==, 6250);
}

/* ---- partitions ---- */

static void
test_partition (void)
{
  g_autoptr (Project) project = with_partition (building ("8000 x 6000"), RUNS_NORTH, 3000, 3000);
  const Wall *wall = project_wall_at (project, 4);
  g_autoptr (Project) two = with_partition (project_ref (project), RUNS_EAST, 5000, 2000);
  const Wall *second = project_wall_at (two, 5);
  g_autoptr (GArray) meetings = plan_meetings (two);
  g_autoptr (GError) error = NULL;
  g_autoptr (Wall) none = plan_partition (project, RUNS_NORTH, MM (9000), MM (3000),
                                          project_block_at (project, 0), &error);
  Length clear[2];
  WallId other[2];

  g_assert_cmpint (wall->length, ==, MM (6000));
  g_assert_cmpint (wall->place.x, ==, MM (3250));
  /* From the first partition to the right wall, through both. */
  g_assert_cmpint (second->place.x, ==, MM (3000));
  g_assert_cmpint (second->length, ==, MM (5000));
  for (guint i = 0; i < meetings->len; i++)
    g_assert_cmpint (g_array_index (meetings, Meeting, i).kind, !=, MEET_WRONG);
  g_assert_null (none);
  g_assert_error (error, MODEL_ERROR, MODEL_ERROR_REFUSED);
  /* It runs north: its outer face looks east. */
  g_assert_true (plan_room (two, wall->id, clear, other));
  g_assert_cmpint (clear[0], ==, MM (8000 - 250 - 3250));
  g_assert_cmpint (clear[1], ==, MM (3000 - 250));
  g_assert_cmpuint (other[0].n, ==, project_wall_at (two, 1)->id.n);
  g_assert_cmpuint (other[1].n, ==, project_wall_at (two, 3)->id.n);
  g_assert_false (plan_room (two, project_wall_at (two, 0)->id, clear, other));
}

/* Changed by what is pushed, and by as much. */
static void
test_room_follows (void)
{
  g_autoptr (Project) project = with_partition (building ("8000 x 6000"), RUNS_EAST, 3000, 3000);
  g_autoptr (Project) next = pushed (project, 4, 120);
  Length before[2], after[2];
  WallId other[2];

  g_assert_true (plan_room (project, project_wall_at (project, 4)->id, before, other));
  g_assert_true (plan_room (next, project_wall_at (next, 4)->id, after, other));
  g_assert_cmpint (before[0] - after[0], ==, MM (120));
  g_assert_cmpint (after[1] - before[1], ==, MM (120));
}

/* Typed, the room is as wide, and the partition where it is to be. */
static void
test_set_room (void)
{
  g_autoptr (Project) project = with_partition (building ("8000 x 6000"), RUNS_NORTH, 3000, 3000);
  const WallId wall = project_wall_at (project, 4)->id;

  for (int side = 0; side < 2; side++)
    {
      g_autoptr (GError) error = NULL;
      g_autoptr (Edit) none = plan_set_room (project, wall, side, MM (9000), NULL);
      Edit *edit = plan_set_room (project, wall, side, MM (2345), &error);
      g_autoptr (Project) next = NULL;
      Length clear[2];
      WallId other[2];

      g_assert_no_error (error);
      g_assert_null (none);
      next = edited (project_ref (project), edit);
      g_assert_true (plan_room (next, wall, clear, other));
      g_assert_cmpint (clear[side], ==, MM (2345));
      g_assert_cmpint (clear[1 - side], ==, MM (8000 - 3 * 250 - 2345));
    }
}

/* From every side into the room, between what is there already. */
static void
test_partition_from (void)
{
  for (guint i = 0; i < 4; i++)
    {
      g_autoptr (Project) project = building ("8000 x 6000");
      g_autoptr (GError) error = NULL;
      g_autoptr (Wall) wall = plan_partition_from (project, project_wall_at (project, i)->id,
                                                   project_block_at (project, 0), &error);
      g_autoptr (Project) next = NULL;
      Length clear[2];
      WallId other[2];

      g_assert_no_error (error);
      next = edited (project_ref (project), edit_add_wall (wall));
      g_assert_true (plan_room (next, project_wall_at (next, 4)->id, clear, other));
      g_assert_cmpint (clear[0], ==, clear[1]);
      g_assert_cmpint (clear[0], ==, MM (i % 2 == 0 ? 3625 : 2625));
    }
}

/* ---- how it is made ---- */

static void
test_make (void)
{
  g_autoptr (Project) project = building ("8000 x 6000");
  Meeting meeting;

  g_assert_true (plan_meeting_between (project, project_wall_at (project, 1)->id,
                                       project_wall_at (project, 0)->id, &meeting));
  g_assert_cmpint (meeting.kind, ==, MEET_CORNER);
  for (int made = MADE_FIRST_ODD; made <= MADE_SECOND_THROUGH; made++)
    {
      g_autoptr (Project) next
          = edited (project_ref (project), plan_make_edit (project, &meeting, (MeetMade) made));
      Meeting after;

      g_assert_true (plan_meeting_between (next, project_wall_at (next, 0)->id,
                                           project_wall_at (next, 1)->id, &after));
      g_assert_cmpint (after.made, ==, made);
    }
  g_assert_false (plan_meeting_between (project, project_wall_at (project, 0)->id,
                                        project_wall_at (project, 2)->id, &meeting));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/plan-edit/push/outline", test_push_outline);
  g_test_add_func ("/plan-edit/push/angle", test_push_angle);
  g_test_add_func ("/plan-edit/push/partition", test_push_partition);
  g_test_add_func ("/plan-edit/push/refused", test_push_refused);
  g_test_add_func ("/plan-edit/push/there-and-back", test_push_property);
  g_test_add_func ("/plan-edit/resize/neighbours-follow", test_resize);
  g_test_add_func ("/plan-edit/resize/alone", test_resize_alone);
  g_test_add_func ("/plan-edit/partition", test_partition);
  g_test_add_func ("/plan-edit/room-follows", test_room_follows);
  g_test_add_func ("/plan-edit/set-room", test_set_room);
  g_test_add_func ("/plan-edit/partition-from", test_partition_from);
  g_test_add_func ("/plan-edit/make", test_make);
  return g_test_run ();
}
