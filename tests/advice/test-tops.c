/* test-tops.c - findings of tops that are not level and of stepped footings, worked by hand
 *
 * Units of 600 x 200 on a bed of 20 with joints of 2: course k lies from 20 + 202 (k - 1). */
#include <string.h>

#include "advice/findings.h"
#include "bond/lay.h"
#include "edited.h"
#include "model/plan.h"

#define MM(mm) LENGTH_MM (mm)

static Project *
project_with (const Wall *wall)
{
  return edited (project_new (), edit_add_wall (wall));
}

static GPtrArray *
findings_in (const Project *project, guint wall)
{
  const Wall *of = project_wall_at (project, wall);
  g_autoptr (Layout) layout = lay_wall (of, project_block (project, of->block), NULL);

  return findings_of_wall (project, of, layout);
}

static const Finding *
find (const GPtrArray *findings, const char *rule)
{
  for (guint i = 0; i < findings->len; i++)
    if (g_str_equal (((const Finding *) g_ptr_array_index (findings, i))->rule, rule))
      return g_ptr_array_index (findings, i);
  return NULL;
}

static void
assert_none (const GPtrArray *findings, const char *rule)
{
  g_assert_null (find (findings, rule));
}

/* The step's bed ends at `up` + 20; with the mend no course is ripped on it. */
static void
test_foot_step (void)
{
  static const struct
  {
    double up, wanted;
    const char *text; /* NULL: nothing is told */
  } rows[] = {
    { 202, 0, NULL },
    { 210, 0, NULL },
    { 213, 212,
      "The step in the footing at 3000 mm lies 213 mm up: course 2 is ripped to 189 mm on it. With "
      "212 mm no block is ripped there." },
    { 340, 404,
      "The step in the footing at 3000 mm lies 340 mm up: course 2 is ripped to 62 mm on it. With "
      "404 mm no block is ripped there." },
    { 100, 202,
      "The step in the footing at 3000 mm lies 100 mm up: course 1 is ripped to 100 mm on it. With "
      "202 mm no block is ripped there." },
    { 24, 10,
      "The step in the footing at 3000 mm lies 24 mm up: course 1 is ripped to 176 mm on it. With "
      "10 mm no block is ripped there." },
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (Wall) wall = wall_new ();
      g_autoptr (Project) project = NULL, mended = NULL;
      g_autoptr (GPtrArray) findings = NULL, after = NULL;
      const Finding *finding;

      foot_list_add (wall->feet, MM (3000), length_from_mm (rows[i].up));
      project = project_with (wall);
      findings = findings_in (project, 0);
      finding = find (findings, "foot-step");
      if (rows[i].text == NULL)
        {
          g_assert_null (finding);
          continue;
        }
      g_assert_nonnull (finding);
      g_assert_cmpstr (finding->text, ==, rows[i].text);
      g_assert_cmpint (finding->x, ==, MM (3000));
      g_assert_nonnull (finding->mend);
      mended = project_edit (project, finding->mend, NULL);
      g_assert_nonnull (mended);
      g_assert_cmpint (foot_point (project_wall_at (mended, 0)->feet, 0)->up, ==,
                       length_from_mm (rows[i].wanted));
      after = findings_in (mended, 0);
      assert_none (after, "foot-step");
    }
}

/* A level part that ends within a course is told, and mended to the nearest course; a slope is not,
 * and nothing is said of the top as of a level one. */
static void
test_top_step (void)
{
  const Length heights[] = { MM (2440), MM (2100) }, ends[] = { MM (2000) };
  g_autoptr (Wall) wall = wall_new ();
  g_autoptr (Project) project = NULL, mended = NULL, sloped = NULL;
  g_autoptr (GPtrArray) findings = NULL, after = NULL, none = NULL;
  const Finding *finding;
  Length height;
  GArray *tops = top_steps (heights, ends, 2, &height);

  wall_take_top (wall, tops, height);
  project = project_with (wall);
  findings = findings_in (project, 0);
  finding = find (findings, "top-step");
  g_assert_nonnull (finding);
  /* 2442 is the top of course 12: 2440 is 2 less; the first is told of course 12. */
  g_assert_cmpint (finding->course, ==, 11);
  g_assert_cmpstr (finding->text, ==,
                   "From 2000 to 6000 mm the top lies level at 2100 mm, within course 11, which is "
                   "ripped to 60 mm there.");
  mended = project_edit (project, finding->mend, NULL);
  g_assert_cmpint (wall_top_at (project_wall_at (mended, 0), MM (5000), SIDE_LEFT), ==, MM (2038));
  g_assert_cmpint (wall_top_at (project_wall_at (mended, 0), MM (1000), SIDE_LEFT), ==, MM (2440));
  after = findings_in (mended, 0);
  g_assert_cmpint (find (after, "top-step") != NULL ? find (after, "top-step")->course : 12, ==,
                   12);
  wall_take_top (wall, top_mono (MM (6000), MM (2100), MM (2440), &height), MM (2440));
  sloped = project_with (wall);
  none = findings_in (sloped, 0);
  assert_none (none, "top-step");
  assert_none (none, "top-course");
  assert_none (none, "top-packing");
}

/* The default block is 250 thick: 27 times that is 6750. */
static void
test_slender_at_its_tallest (void)
{
  g_autoptr (Wall) wall = wall_new ();
  g_autoptr (Project) project = NULL, stepped = NULL;
  g_autoptr (GPtrArray) findings = NULL, shorter = NULL;
  Length height;

  wall_take_top (wall, top_gable (MM (6000), MM (4000), MM (4000), MM (3000), MM (7000), &height),
                 MM (7000));
  project = project_with (wall);
  findings = findings_in (project, 0);
  g_assert_nonnull (find (findings, "slender"));
  /* 300 of foundation under the ridge: 6700. */
  foot_list_add (wall->feet, MM (1000), MM (300));
  stepped = project_with (wall);
  shorter = findings_in (stepped, 0);
  assert_none (shorter, "slender");
}

static Project *
with_wall (Project *project, double x, double y, Runs runs, double height, double up)
{
  g_autoptr (Wall) wall = wall_new ();

  wall->height = MM (height);
  wall->place = (PlanPlace){ TRUE, MM (x), MM (y), runs };
  if (up > 0)
    foot_list_add (wall->feet, 0, MM (up));
  return edited (project, edit_add_wall (wall));
}

static void
test_meetings (void)
{
  /* One ends 100 mm within course 10 of the other, 1838 to 2038. */
  g_autoptr (Project) heights = with_wall (with_wall (project_new (), 0, 0, RUNS_EAST, 2442, 0),
                                           6000, 0, RUNS_NORTH, 1938, 0);
  g_autoptr (GPtrArray) found = findings_in (heights, 0);
  const Finding *finding = find (found, "meeting-height");

  g_assert_nonnull (finding);
  g_assert_nonnull (strstr (finding->text, "ends at 1938 mm, within course 10"));
  g_assert_nonnull (strstr (finding->text, "100 mm over it are made up by hand"));
  assert_none (found, "meeting-foot");

  /* At a course's top there is nothing to be said. */
  g_autoptr (Project) level = with_wall (with_wall (project_new (), 0, 0, RUNS_EAST, 2442, 0), 6000,
                                         0, RUNS_NORTH, 2038, 0);
  g_autoptr (GPtrArray) quiet = findings_in (level, 0);
  assert_none (quiet, "meeting-height");

  g_autoptr (Project) feet = with_wall (with_wall (project_new (), 0, 0, RUNS_EAST, 2442, 0), 6000,
                                        0, RUNS_NORTH, 2442, 202);
  g_autoptr (GPtrArray) apart = findings_in (feet, 0);
  g_assert_nonnull (find (apart, "meeting-foot"));
  g_assert_nonnull (strstr (find (apart, "meeting-foot")->text,
                            "0 mm up under the one and 202 mm under the other"));
}

/* Raked pieces that must be longer than the block; by the mend they are as others are. */
static void
test_raked_too_long (void)
{
  g_autoptr (Wall) wall = wall_new ();
  g_autoptr (Project) project = NULL, mended = NULL;
  g_autoptr (GPtrArray) findings = NULL, after = NULL;
  Length height;

  wall_take_top (wall, top_mono (MM (6000), MM (2000), MM (2600), &height), MM (2600));
  wall->laying.given |= LAYING_MIN_RAKED;
  wall->laying.min_raked = MM (601);
  project = project_with (wall);
  findings = findings_in (project, 0);
  g_assert_nonnull (find (findings, "raked-too-long"));
  g_assert_nonnull (find (findings, "min-raked"));
  mended = project_edit (project, find (findings, "raked-too-long")->mend, NULL);
  after = findings_in (mended, 0);
  assert_none (after, "raked-too-long");
  assert_none (after, "min-raked");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/tops/foot-step", test_foot_step);
  g_test_add_func ("/tops/top-step", test_top_step);
  g_test_add_func ("/tops/slender-at-its-tallest", test_slender_at_its_tallest);
  g_test_add_func ("/tops/meetings", test_meetings);
  g_test_add_func ("/tops/raked-too-long", test_raked_too_long);
  return g_test_run ();
}
