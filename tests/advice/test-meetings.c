/* test-meetings.c - what is found where walls meet in plan, and that mends mend */
#include "advice/findings.h"

#include <string.h>

#include "bond/lay.h"
#include "model/plan.h"

#define MM(mm) LENGTH_MM (mm)

/* --- plans to judge: as a file may say them, which no edit would --- */

static Wall *
add_wall (Project *project, const char *name, double x, double y, Runs runs, double length)
{
  Wall *wall = wall_new ();

  wall->id.n = project->next++;
  wall->key = project_free_key (project, 'w');
  g_free (wall->name);
  wall->name = g_strdup (name);
  wall->block = project_block_at (project, 0)->id;
  wall->length = MM (length);
  wall->height = MM (1028);
  wall->place = (PlanPlace){ TRUE, MM (x), MM (y), runs };
  g_ptr_array_add (project->walls, wall);
  return wall;
}

static void
set_end (Wall *wall, Side side, double ret, Through through)
{
  wall->ends[side]
      = (End){ .given = TRUE, .has_return = TRUE, .ret = MM (ret), .through = through };
}

/* An angle of two walls of 250 mm, said to meet there as given. */
static Project *
angle (gboolean says_first, Through first, gboolean says_second, Through second)
{
  Project *project = project_new ();
  Wall *front = add_wall (project, "Front", 0, 0, RUNS_EAST, 4000);
  Wall *right = add_wall (project, "Right", 4000, 0, RUNS_NORTH, 3000);

  if (says_first)
    set_end (front, SIDE_RIGHT, 250, first);
  if (says_second)
    set_end (right, SIDE_LEFT, 250, second);
  return project;
}

/* The findings of the meetings, each as "rule: text", by wall, in lines. */
static char *
found (const Project *project, Edit **mend)
{
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < project->walls->len; i++)
    {
      const Wall *wall = project_wall_at (project, i);
      g_autoptr (Layout) layout = lay_wall (wall, project_block (project, wall->block), NULL);
      g_autoptr (GPtrArray) findings = findings_of_wall (project, wall, layout);

      for (guint k = 0; k < findings->len; k++)
        {
          const Finding *finding = g_ptr_array_index (findings, k);

          if (!g_str_has_prefix (finding->rule, "meeting-")
              && !g_str_has_prefix (finding->rule, "walls-")
              && !g_str_has_prefix (finding->rule, "corner-")
              && !g_str_has_prefix (finding->rule, "ties-"))
            continue;
          g_string_append_printf (text, "%s%s: %s", text->len > 0 ? "\n" : "", finding->rule,
                                  finding->text);
          if (finding->mend != NULL && mend != NULL && *mend == NULL)
            *mend = edit_copy (finding->mend);
        }
    }
  return g_string_free (text, FALSE);
}

static void
assert_found (const Project *project, const char *expected)
{
  g_autofree char *text = found (project, NULL);

  g_assert_cmpstr (text, ==, expected);
}

/* The mend of the first finding that has one takes it away. */
static void
assert_mended (const Project *project)
{
  g_autoptr (Edit) mend = NULL;
  g_autofree char *text = found (project, &mend);
  g_autoptr (GError) error = NULL;

  g_assert_cmpstr (text, !=, "");
  g_assert_nonnull (mend);
  g_autoptr (Project) next = project_edit (project, mend, &error);
  g_assert_no_error (error);
  assert_found (next, "");
}

static void
test_agreement (void)
{
  g_autoptr (Project) well = angle (TRUE, THROUGH_EVEN, TRUE, THROUGH_ODD);
  g_autoptr (Project) unsaid = angle (FALSE, THROUGH_EVEN, FALSE, THROUGH_EVEN);
  g_autoptr (Project) both = angle (TRUE, THROUGH_ODD, TRUE, THROUGH_ODD);
  g_autoptr (Project) one = angle (TRUE, THROUGH_ODD, FALSE, THROUGH_ODD);
  g_autoptr (Project) butted = angle (FALSE, THROUGH_ODD, TRUE, THROUGH_ALL);

  assert_found (well, "");
  assert_found (butted,
                "ties-unsaid: Right is butted to Front, and it is not said how it is tied.");
  assert_mended (butted);
  assert_found (unsaid,
                "meeting-unclear: Front and Right meet 3750 mm along Front, and neither says "
                "which runs through in which courses.");
  assert_mended (unsaid);
  assert_found (both, "meeting-unclear: Front and Right meet 3750 mm along Front, and do not agree "
                      "which runs through in which courses.");
  assert_mended (both);
  assert_found (one, "meeting-unclear: Front and Right meet 3750 mm along Front, and do not agree "
                     "which runs through in which courses.");
  assert_mended (one);
}

static void
test_clash (void)
{
  g_autoptr (Project) half = angle (TRUE, THROUGH_EVEN, TRUE, THROUGH_ODD);
  g_autoptr (Project) crowd = angle (TRUE, THROUGH_EVEN, TRUE, THROUGH_ODD);

  add_wall (half, "Inner", 2000, 100, RUNS_NORTH, 2000);
  assert_found (half,
                "walls-clash: Front and Inner stand in each other's way, 1750 mm along Front: "
                "they share 250 × 150 mm, which is no corner and no end of a partition.");
  add_wall (crowd, "Outer", 4000, -2000, RUNS_NORTH, 2250);
  g_autofree char *text = found (crowd, NULL);
  g_assert_nonnull (strstr (text,
                            "walls-crowd: Front, Right and Outer want the same place, 3750 mm "
                            "along Front: only two walls can be bonded there."));
}

/* A partition of thinner beds is butted; a thin wall's corner laps too little. */
static void
test_courses (void)
{
  g_autoptr (Project) project = angle (TRUE, THROUGH_EVEN, TRUE, THROUGH_ODD);
  Wall *inner = add_wall (project, "Inner", 2000, 0, RUNS_NORTH, 2000);
  Tee tee = { MM (1750), MM (250), THROUGH_EVEN, { NULL, NULL } };

  set_end (inner, SIDE_LEFT, 250, THROUGH_ODD);
  g_array_append_val (((Wall *) project_wall_at (project, 0))->tees, tee);
  assert_found (project, "");
  inner->laying.given = LAYING_BED;
  inner->laying.bed = MM (3);
  assert_found (project, "meeting-not-level: The courses of Inner and Front do not lie level with "
                         "each other, so that they cannot be bonded.");
  assert_mended (project);
}

/* A butted wall says how it is tied; strips need a bed of both walls; none too far apart. */
static void
test_ties (void)
{
  g_autoptr (Project) project = angle (FALSE, THROUGH_ODD, TRUE, THROUGH_ALL);
  Wall *right = (Wall *) project_wall_at (project, 1);
  Ties *ties = &right->ends[SIDE_LEFT].ties;

  *ties = (Ties){ TIES_ALL, TIE_STRIP, 1, 2 };
  assert_found (project, "");
  ties->every = 2;
  assert_found (project, "ties-apart: The ties of Right lie 404 mm apart up the wall; 300 mm is "
                         "usual (UK practice, from memory). A licensed engineer or the local code "
                         "decides.");
  assert_mended (project);
  ties->every = 1;
  right->laying.given = LAYING_BED;
  right->laying.bed = MM (3);
  assert_found (project,
                "ties-not-level: The courses of Right and Front do not lie level with each "
                "other, so that flat strips cannot lie in a bed of both.");
  assert_mended (project);
  ties->kind = TIE_ANGLE;
  assert_found (project, "");
}

static void
test_lap (void)
{
  g_autoptr (Project) project = angle (TRUE, THROUGH_EVEN, TRUE, THROUGH_ODD);
  Block thin = block_copy (project_block_at (project, 0));
  g_autoptr (GError) error = NULL;

  thin.id.n = 0;
  g_clear_pointer (&thin.key, g_free);
  thin.thickness = MM (90);
  g_autoptr (Edit) add = edit_add_block (&thin);
  g_autoptr (Project) two = project_edit (project, add, &error);
  g_assert_no_error (error);
  g_autoptr (Wall) right = wall_copy (project_wall_at (two, 1));
  right->block = project_block_at (two, 1)->id;
  g_autoptr (Edit) set = edit_set_wall (right);
  g_autoptr (Project) thinner = project_edit (two, set, &error);
  g_assert_no_error (error);
  /* 0.4 × 200 = 80 mm are wanted of units 200 high. */
  assert_found (thinner, "");
  g_autoptr (Wall) front = wall_copy (project_wall_at (thinner, 0));
  front->laying.given = LAYING_MIN_LAP;
  front->laying.min_lap = MM (150);
  g_autoptr (Edit) more = edit_set_wall (front);
  g_autoptr (Project) wanting = project_edit (thinner, more, &error);
  g_assert_no_error (error);
  assert_found (wanting, "corner-lap: Front laps Right by only 90 mm where they meet; 150 mm are "
                         "wanted there.");
  block_clear (&thin);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/meetings/agreement", test_agreement);
  g_test_add_func ("/meetings/clash", test_clash);
  g_test_add_func ("/meetings/courses", test_courses);
  g_test_add_func ("/meetings/ties", test_ties);
  g_test_add_func ("/meetings/lap", test_lap);
  return g_test_run ();
}
