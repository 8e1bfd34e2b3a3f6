/* test-building.c - the turns of corners and tees, against every choice of them */
#include "bond/building.h"

#include "bond/lay.h"
#include "bond/shared.h"
#include "model/outline.h"
#include "edited.h"
#include "sanitized.h"

/* Sanitizers look at a part. */
#define SHARE_OF (SANITIZED ? 10 : 1)
#define N_HOUSES (30 / SHARE_OF)

static Wall *
wall_at (Length x, Length y, Runs runs, Length length, Length height)
{
  Wall *wall = wall_new ();

  wall->length = length;
  wall->height = height;
  wall->place = (PlanPlace){ TRUE, x, y, runs };
  return wall;
}

/* A rectangle of any lengths and one of three thicknesses, six courses high, with a window in the
 * front and, half the time, a partition from front to back; it stands at x. */
static void
add_house (GPtrArray *walls, Length x, Length width, Length depth, Length t, Length partition)
{
  const Length height = LENGTH_MM (1230);
  Opening window = opening_default (OPENING_WINDOW);

  g_ptr_array_add (walls, wall_at (x, 0, RUNS_EAST, width, height));
  g_ptr_array_add (walls, wall_at (x + width, 0, RUNS_NORTH, depth, height));
  g_ptr_array_add (walls, wall_at (x + width, depth, RUNS_WEST, width, height));
  g_ptr_array_add (walls, wall_at (x, depth, RUNS_SOUTH, depth, height));
  if (partition > 0)
    g_ptr_array_add (walls, wall_at (x + partition + t, 0, RUNS_NORTH, depth, height));
  window.x = LENGTH_MM (700);
  window.width = LENGTH_MM (800);
  window.sill = LENGTH_MM (424);
  window.height = LENGTH_MM (600);
  g_array_append_val (
      ((Wall *) g_ptr_array_index (walls, walls->len - (partition > 0 ? 5 : 4)))->openings, window);
}

static Project *
project_of (const GPtrArray *walls, Length thickness)
{
  Project *project = project_new ();
  Block block = block_copy (project_block_at (project, 0));

  block.thickness = thickness;
  project = edited (project, edit_set_block (&block));
  block_clear (&block);
  return edited (project, edit_walls (walls));
}

typedef struct
{
  Length width, depth, thickness, partition;
} House;

static House
any_house (void)
{
  const int thicknesses[] = { 175, 240, 300 };
  House house = {
    LENGTH_MM (g_test_rand_int_range (3500, 7000)),
    LENGTH_MM (g_test_rand_int_range (2500, 6000)),
    LENGTH_MM (thicknesses[g_test_rand_int_range (0, 3)]),
    0,
  };

  if (g_test_rand_bit ())
    house.partition = LENGTH_MM (g_test_rand_int_range (1800, 2500));
  return house;
}

static Project *
project_of_house (const House *house, guint times)
{
  g_autoptr (GPtrArray) walls = wall_list_new ();

  for (guint i = 0; i < times; i++)
    add_house (walls, (Length) i * LENGTH_MM (9000), house->width, house->depth, house->thickness,
               house->partition);
  return project_of (walls, house->thickness);
}

/* Breaches and cuts of all walls as they are. */
static void
count (const Project *project, gint32 *breaches, gint32 *cuts)
{
  *breaches = *cuts = 0;
  for (guint i = 0; i < project->walls->len; i++)
    {
      const Wall *wall = project_wall_at (project, i);
      g_autoptr (Layout) layout = lay_wall (wall, project_block (project, wall->block), NULL);

      *breaches += layout->proof.breaches;
      *cuts += layout->proof.cuts;
    }
}

/* The same with the turns that the bits say. */
static void
count_turned (const Project *project, const GArray *meetings, guint bits, gint32 *breaches,
              gint32 *cuts)
{
  g_autoptr (GPtrArray) walls = wall_list_new ();

  for (guint i = 0; i < project->walls->len; i++)
    g_ptr_array_add (walls, wall_copy (project_wall_at (project, i)));
  for (guint i = 0; i < meetings->len; i++)
    {
      const Meeting *meeting = &g_array_index (meetings, Meeting, i);
      Length t = project_block_at (project, 0)->thickness;

      plan_make (meeting, bits >> i & 1 ? MADE_FIRST_EVEN : MADE_FIRST_ODD,
                 g_ptr_array_index (walls, meeting->wall[0]), t,
                 g_ptr_array_index (walls, meeting->wall[1]), t);
    }
  g_autoptr (Project) project_turned = edited (project_ref (project), edit_walls (walls));
  count (project_turned, breaches, cuts);
}

/* Every choice of turns of four corners, or of them and two tees, laid: none is better, and the
 * bound is true of all of them. */
static void
test_every_choice (void)
{
  guint proven = 0, better = 0;

  for (int round = 0; round < N_HOUSES; round++)
    {
      House house = any_house ();
      g_autoptr (Project) project = project_of_house (&house, 1);
      g_autoptr (Building) building = building_turns (project, NULL);
      gint32 breaches, cuts;

      count (project, &breaches, &cuts);
      g_assert_cmpint (building->now_breaches, ==, breaches);
      g_assert_cmpint (building->now_cuts, ==, cuts);
      g_assert_cmpuint (building->meetings->len, ==, house.partition > 0 ? 6 : 4);
      for (guint bits = 0; bits < 1u << building->meetings->len; bits++)
        {
          count_turned (project, building->meetings, bits, &breaches, &cuts);
          g_assert_cmpint (breaches, >=, building->breaches);
          g_assert_cmpint (breaches, >=, building->breaches_at_least);
          if (breaches == building->breaches)
            g_assert_cmpint (cuts, >=, building->cuts);
          if (breaches == building->breaches_at_least)
            g_assert_cmpint (cuts, >=, building->cuts_at_least);
        }
      proven += building->proven;
      better += building->cuts < building->now_cuts || building->breaches < building->now_breaches;
      g_autoptr (GPtrArray) walls = building_walls (project, building);
      g_autoptr (Project) next = edited (project_ref (project), edit_walls (walls));
      count (next, &breaches, &cuts);
      g_assert_cmpint (breaches, ==, building->breaches);
      g_assert_cmpint (cuts, ==, building->cuts);
      g_assert_cmpint (building->changed > 0, ==, walls->len > 0);
    }
  g_test_message ("%u of %d proven, %u better than as they were", proven, N_HOUSES, better);
  g_assert_cmpuint (proven, >, N_HOUSES * 3 / 4);
  g_assert_cmpuint (better, >, N_HOUSES / 4);
}

/* Three equal houses in a row, apart: three times the numbers. */
static void
test_equal_houses (void)
{
  House house = any_house ();
  g_autoptr (Project) one = project_of_house (&house, 1);
  g_autoptr (Project) three = project_of_house (&house, 3);
  g_autoptr (Building) a = building_turns (one, NULL);
  g_autoptr (Building) b = building_turns (three, NULL);

  g_assert_cmpint (b->breaches, ==, 3 * a->breaches);
  g_assert_cmpint (b->cuts, ==, 3 * a->cuts);
  g_assert_cmpint (b->cuts_at_least, ==, 3 * a->cuts_at_least);
  g_assert_cmpuint (b->changed, ==, 3 * a->changed);
}

/* A hall of twelve bays has walls that more partitions meet than are looked at together: still an
 * answer, no worse than what is there. */
static void
test_many_tees (void)
{
  g_autoptr (GPtrArray) walls = wall_list_new ();
  const Length t = LENGTH_MM (240), height = LENGTH_MM (424);

  add_house (walls, 0, LENGTH_MM (26000), LENGTH_MM (4000), t, 0);
  for (int i = 1; i <= 11; i++)
    g_ptr_array_add (walls,
                     wall_at (LENGTH_MM (2113) * i + t, 0, RUNS_NORTH, LENGTH_MM (4000), height));
  for (guint i = 0; i < 4; i++)
    ((Wall *) g_ptr_array_index (walls, i))->height = LENGTH_MM (1230);
  g_autoptr (Project) project = project_of (walls, t);
  g_autoptr (Building) building = building_turns (project, NULL);

  g_assert_cmpuint (building->meetings->len, ==, 26);
  g_assert_cmpint (building->breaches, <=, building->now_breaches);
  if (building->breaches == building->now_breaches)
    g_assert_cmpint (building->cuts, <=, building->now_cuts);
}

/* Whether the layout has a piece in that part of a course. */
static gboolean
covers (const Layout *layout, gint32 number, Length from, Length to)
{
  Length covered = 0;

  for (guint i = 0; i < layout->pieces->len; i++)
    {
      const Piece *piece = layout_piece (layout, i);

      if (piece->course == number)
        covered += MAX (MIN (piece->x + piece->length, to) - MAX (piece->x, from), 0);
    }
  /* All of it, but for two joints: no two pieces of 150 mm are wholly in it. */
  return covered >= to - from - 2 * LENGTH_MM (2);
}

static const SharedPiece *
shown_at (const GArray *shown, gint32 course, Length x)
{
  for (guint i = 0; i < shown->len; i++)
    {
      const SharedPiece *shared = &g_array_index (shown, SharedPiece, i);

      if (shared->course == course && shared->x == x)
        return shared;
    }
  return NULL;
}

/* In every course the square of every meeting is one wall's, and the other one shows just its
 * piece. */
static void
test_shared (void)
{
  for (int round = 0; round < N_HOUSES; round++)
    {
      House house = any_house ();
      g_autoptr (Project) project = project_of_house (&house, 1);
      g_autoptr (GArray) meetings = plan_meetings (project);
      Layout *layouts[5] = { NULL };
      GArray *shown[5] = { NULL };
      guint n = project->walls->len, told = 0;

      for (guint i = 0; i < n; i++)
        {
          const Wall *wall = project_wall_at (project, i);

          layouts[i] = lay_wall (wall, project_block (project, wall->block), NULL);
        }
      for (guint i = 0; i < n; i++)
        {
          shown[i] = shared_pieces (project, layouts, i);
          told += shown[i]->len;
        }
      g_assert_cmpuint (told, ==, meetings->len * layouts[0]->courses->len);
      for (guint m = 0; m < meetings->len; m++)
        for (gint32 course = 1; course <= (gint32) layouts[0]->courses->len; course++)
          {
            const Meeting *meeting = &g_array_index (meetings, Meeting, m);
            gboolean has[2];
            int owner;

            for (int k = 0; k < 2; k++)
              has[k] = covers (layouts[meeting->wall[k]], course, meeting->at[k],
                               meeting->at[k] + house.thickness);
            g_assert_cmpint (has[0] + has[1], ==, 1);
            owner = has[0] ? 0 : 1;
            const SharedPiece *shared
                = shown_at (shown[meeting->wall[1 - owner]], course, meeting->at[1 - owner]);
            g_assert_nonnull (shared);
            g_assert_cmpuint (shared->wall, ==, meeting->wall[owner]);
            const Piece *piece = layout_piece (layouts[shared->wall], shared->piece);
            g_assert_cmpint (piece->course, ==, course);
            g_assert_cmpint (piece->x, <, meeting->at[owner] + house.thickness);
            g_assert_cmpint (piece->x + piece->length, >, meeting->at[owner]);
            g_assert_null (shown_at (shown[meeting->wall[owner]], course, meeting->at[owner]));
          }
      for (guint i = 0; i < n; i++)
        {
          layout_unref (layouts[i]);
          g_array_unref (shown[i]);
        }
    }
}

static void
test_stop (void)
{
  House house = any_house ();
  g_autoptr (Project) project = project_of_house (&house, 1);
  gint stop = 1;

  g_assert_null (building_turns (project, &stop));
}

/* A wall of which something stands keeps its turns; those of the others are still chosen. */
static void
test_standing_keeps_turns (void)
{
  guint chosen = 0;

  for (int i = 0; i < N_HOUSES; i++)
    {
      House house = any_house ();
      g_autoptr (GPtrArray) walls = wall_list_new ();

      add_house (walls, 0, house.width, house.depth, house.thickness, house.partition);
      g_autoptr (Project) project = project_of (walls, house.thickness);
      g_autoptr (Wall) up = wall_copy (project_wall_at (project, 0));
      LaidCourse laid = laid_course_new (1);

      up->built = built_new ();
      up->built->courses = 1;
      g_array_append_val (up->built->laid, laid);
      project = edited (project, edit_set_wall (up));
      g_autoptr (GArray) now = plan_meetings (project);
      g_autoptr (Building) building = building_turns (project, NULL);
      for (guint k = 0; k < now->len; k++)
        {
          const Meeting *was = &g_array_index (now, Meeting, k);
          const Meeting *is = &g_array_index (building->meetings, Meeting, k);

          if (was->wall[0] == 0 || was->wall[1] == 0)
            g_assert_cmpint (was->made, ==, is->made);
        }
      chosen += building->changed;
    }
  g_assert_cmpuint (chosen, >, 0);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/building/every-choice", test_every_choice);
  g_test_add_func ("/building/equal-houses", test_equal_houses);
  g_test_add_func ("/building/many-tees", test_many_tees);
  g_test_add_func ("/building/shared-pieces", test_shared);
  g_test_add_func ("/building/standing-keeps-turns", test_standing_keeps_turns);
  g_test_add_func ("/building/stop", test_stop);
  return g_test_run ();
}
