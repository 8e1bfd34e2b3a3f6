/* test-movement.c - findings of movement joints, and the joint that is advised */
#include <string.h>

#include "advice/findings.h"
#include "bond/lay.h"

typedef struct
{
  Project *project;
  Layout *layout;
  GPtrArray *findings;
} Judged;

static void
judged_clear (Judged *judged)
{
  g_clear_pointer (&judged->findings, g_ptr_array_unref);
  layout_unref (judged->layout);
  project_unref (judged->project);
}
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Judged, judged_clear)

static const Wall *
wall_of (const Judged *judged)
{
  return project_wall_at (judged->project, judged->project->walls->len - 1);
}

/* Takes the project. */
static Judged
judge (Project *project)
{
  Judged judged = { .project = project };
  const Wall *wall = wall_of (&judged);

  judged.layout = lay_wall (wall, project_block (project, wall->block), NULL);
  judged.findings = findings_of_wall (project, wall, judged.layout);
  return judged;
}

/* Takes the wall. */
static Judged
judge_wall (Wall *wall)
{
  g_autoptr (Project) project = project_new ();
  g_autoptr (GError) error = NULL;
  g_autoptr (Edit) edit = NULL;
  Project *next;

  wall->block = project_block_at (project, 0)->id;
  edit = edit_add_wall (wall);
  next = project_edit (project, edit, &error);
  g_assert_no_error (error);
  wall_unref (wall);
  return judge (next);
}

static const Finding *
finding_of (const Judged *judged, const char *rule)
{
  for (guint i = 0; i < judged->findings->len; i++)
    {
      const Finding *finding = g_ptr_array_index (judged->findings, i);

      if (g_str_equal (finding->rule, rule))
        return finding;
    }
  return NULL;
}

static Judged
mended (const Judged *judged, const Finding *finding)
{
  g_autoptr (GError) error = NULL;
  Project *next = project_edit (judged->project, finding->mend, &error);

  g_assert_no_error (error);
  return judge (next);
}

static Wall *
wall_of_size (double length, double height)
{
  Wall *wall = wall_new ();

  wall->length = length_from_mm (length);
  wall->height = length_from_mm (height);
  return wall;
}

static void
add_window (Wall *wall, double x, double width, double sill, double height)
{
  Opening opening = opening_default (OPENING_WINDOW);

  opening.x = length_from_mm (x);
  opening.width = length_from_mm (width);
  opening.sill = length_from_mm (sill);
  opening.height = length_from_mm (height);
  g_free (opening.name);
  opening.name = g_strdup ("W");
  g_array_append_val (wall->openings, opening);
}

/* 6000 are within the distance, 1 mm more is not; nor is it where bars lie in every fourth course,
 * or where blocks are of dense concrete. */
static void
test_length (void)
{
  g_auto (Judged) within = judge_wall (wall_of_size (6000, 2448));
  g_auto (Judged) beyond = judge_wall (wall_of_size (6001, 2448));
  Wall *wall = wall_of_size (6001, 2448);

  g_assert_null (finding_of (&within, "movement-joint-length"));
  const Finding *finding = finding_of (&beyond, "movement-joint-length");
  g_assert_nonnull (finding);
  g_assert_cmpint (finding->severity, ==, SEVERITY_NOTE);
  g_assert_nonnull (strstr (finding->text, "6001 mm run without a movement joint"));
  g_assert_nonnull (strstr (finding->text, "licensed engineer"));
  wall->steel.given = TRUE;
  wall->steel.every = 4;
  g_auto (Judged) bound = judge_wall (wall);
  g_assert_null (finding_of (&bound, "movement-joint-length"));

  g_autoptr (GError) error = NULL;
  Block dense = block_copy (project_block_at (beyond.project, 0));
  dense.density = 1000;
  g_autoptr (Edit) edit = edit_set_block (&dense);
  g_auto (Judged) heavy = judge (project_edit (beyond.project, edit, &error));
  g_assert_no_error (error);
  g_assert_null (finding_of (&heavy, "movement-joint-length"));
  block_clear (&dense);
}

/* 16 units and their joints are 9630. Parted in the middle there are 4810 on either side, which is
 * no whole half blocks with their joints (4814 or 4513); 4814 and 4806, or 4513 and 5107 are. What
 * is advised is laid with no more cuts than either. */
static void
test_advised (void)
{
  g_auto (Judged) judged = judge_wall (wall_of_size (9630, 2448));
  const Finding *finding = finding_of (&judged, "movement-joint-length");

  g_assert_nonnull (finding->mend);
  g_auto (Judged) after = mended (&judged, finding);
  const Wall *wall = wall_of (&after);
  g_assert_cmpuint (wall->movement_joints->len, ==, 1);
  const MovementJoint *joint = wall_movement_joint_at (wall, 0);
  g_assert_cmpint (joint->width, ==, LENGTH_MM (10));
  g_assert_cmpint (joint->x, <=, LENGTH_MM (6000));
  g_assert_cmpint (wall->length - movement_joint_right (joint), <=, LENGTH_MM (6000));
  g_assert_null (finding_of (&after, "movement-joint-length"));
  g_assert_cmpuint (after.layout->breaches->len, ==, 0);
  const double places[] = { 4814, 4513 };
  for (guint i = 0; i < G_N_ELEMENTS (places); i++)
    {
      g_autoptr (Wall) other = wall_copy (wall_of (&judged));

      wall_add_movement_joint (other, length_from_mm (places[i]), LENGTH_MM (10));
      g_autoptr (Layout) layout
          = lay_wall (other, project_block (judged.project, other->block), NULL);
      g_assert_cmpint (after.layout->n_cut, <=, layout->n_cut);
    }
}

/* However long, joint after joint is added until nothing is to be said; all are clear of windows by
 * the bearing of 200 mm. */
static void
test_until_well (void)
{
  Wall *wall = wall_of_size (21000, 2448);
  guint added = 0;

  wall->ends[SIDE_LEFT] = (End){ .given = TRUE, .ret = LENGTH_MM (250), .has_return = TRUE };
  wall->ends[SIDE_RIGHT]
      = (End){ .given = TRUE, .ret = LENGTH_MM (250), .has_return = TRUE, .through = THROUGH_ODD };
  for (guint i = 0; i < 6; i++)
    add_window (wall, 1500 + 3300 * i, 1200, 828, 1210);
  g_auto (Judged) judged = judge_wall (wall);
  for (;;)
    {
      const Finding *finding = finding_of (&judged, "movement-joint-length");

      if (!finding)
        finding = finding_of (&judged, "movement-joint-corner");
      if (!finding)
        break;
      g_test_message ("%s", finding->text);
      g_assert_nonnull (finding->mend);
      g_test_message ("%s", finding->mend_text);
      Judged next = mended (&judged, finding);
      judged_clear (&judged);
      judged = next;
      g_assert_cmpuint (++added, <, 10);
    }
  /* 3 m from both corners, and 15 m between: three parts. */
  g_assert_cmpuint (added, >=, 4);
  g_assert_cmpuint (wall_of (&judged)->movement_joints->len, ==, added);
  g_assert_null (finding_of (&judged, "movement-joint-bearing"));
  g_assert_null (finding_of (&judged, "movement-joint-lintel"));
  g_assert_cmpuint (judged.layout->breaches->len, ==, 0);
}

/* Of a lintel's bearing of 200 mm the joint takes something at 190 from the jamb and nothing at
 * 200, on the left with its own width of 10; 300 where the rule says so. */
static void
test_bearing (void)
{
  const struct
  {
    double x;
    double bearing; /* 0: the rule is off */
    const char *rule;
    const char *mend;
  } rows[] = {
    { 1790, 0, NULL, NULL },
    { 1791, 0, "movement-joint-bearing", "Move the joint to 1790 mm" },
    { 1990, 0, "movement-joint-bearing", "Move the joint to 1790 mm" },
    { 2400, 0, "movement-joint-lintel", "Move the joint to 1790 mm" },
    { 3199, 0, "movement-joint-bearing", "Move the joint to 3200 mm" },
    { 3200, 0, NULL, NULL },
    { 3200, 300, "movement-joint-bearing", "Move the joint to 3300 mm" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      Wall *wall = wall_of_size (5000, 2448);

      add_window (wall, 2000, 1000, 828, 1210);
      wall_add_movement_joint (wall, length_from_mm (rows[i].x), LENGTH_MM (10));
      if (rows[i].bearing > 0)
        {
          wall->laying.rules[RULE_BEARING].keep = KEEP_PREFER;
          wall->laying.rules[RULE_BEARING].has_value = TRUE;
          wall->laying.rules[RULE_BEARING].value = length_from_mm (rows[i].bearing);
        }
      g_auto (Judged) judged = judge_wall (wall);
      const Finding *bearing = finding_of (&judged, "movement-joint-bearing");
      const Finding *lintel = finding_of (&judged, "movement-joint-lintel");
      const Finding *finding = bearing ? bearing : lintel;

      g_test_message ("row %u", i);
      g_assert_cmpstr (finding ? finding->rule : NULL, ==, rows[i].rule);
      g_assert_cmpstr (finding ? finding->mend_text : NULL, ==, rows[i].mend);
      if (!finding)
        continue;
      g_assert_cmpint (finding->severity, ==, bearing ? SEVERITY_BREACH : SEVERITY_WARNING);
      g_assert_cmpint (finding->x, ==, length_from_mm (rows[i].x));
      g_auto (Judged) after = mended (&judged, finding);
      g_assert_null (finding_of (&after, "movement-joint-bearing"));
      g_assert_null (finding_of (&after, "movement-joint-lintel"));
    }
}

/* An opening up to the wall's top has no lintel in it. */
static void
test_no_lintel (void)
{
  Wall *wall = wall_of_size (5000, 2038);

  add_window (wall, 2000, 1000, 828, 1210);
  wall_add_movement_joint (wall, LENGTH_MM (1950), LENGTH_MM (10));
  g_auto (Judged) judged = judge_wall (wall);
  g_assert_null (finding_of (&judged, "movement-joint-bearing"));
}

/* 3001 from a corner, 3000, and from a free end. */
static void
test_corner (void)
{
  for (guint i = 0; i < 3; i++)
    {
      Wall *wall = wall_of_size (6000, 2448);

      if (i < 2)
        wall->ends[SIDE_RIGHT] = (End){ .given = TRUE, .ret = LENGTH_MM (250), .has_return = TRUE };
      wall_add_movement_joint (wall, LENGTH_MM (i == 1 ? 2990 : 2989), LENGTH_MM (10));
      g_auto (Judged) judged = judge_wall (wall);
      const Finding *finding = finding_of (&judged, "movement-joint-corner");

      if (i != 0)
        {
          g_assert_null (finding);
          continue;
        }
      g_assert_nonnull (finding);
      g_assert_nonnull (strstr (finding->text, "3001 mm from the corner"));
      g_assert_nonnull (strstr (finding->text, "EN 1996-2"));
    }
}

/* 1000 high: 3000 may be between. A wall without a joint is left alone. */
static void
test_proportion (void)
{
  Wall *wall = wall_of_size (5000, 1000);
  g_auto (Judged) alone = judge_wall (wall_of_size (5000, 1000));

  wall_add_movement_joint (wall, LENGTH_MM (1980), LENGTH_MM (10));
  g_auto (Judged) judged = judge_wall (wall);
  const Finding *finding = finding_of (&judged, "movement-joint-panel");

  g_assert_null (finding_of (&alone, "movement-joint-panel"));
  g_assert_nonnull (finding);
  g_assert_cmpint (finding->x, ==, LENGTH_MM (1990));
  g_auto (Judged) after = mended (&judged, finding);
  g_assert_null (finding_of (&after, "movement-joint-panel"));
}

/* Bars stop at a joint: that is meant. */
static void
test_bars (void)
{
  Wall *wall = wall_of_size (5000, 2448);

  add_window (wall, 2000, 1000, 828, 1210);
  wall->steel.given = TRUE;
  wall->steel.under_sills = TRUE;
  wall_add_movement_joint (wall, LENGTH_MM (1700), LENGTH_MM (10));
  g_auto (Judged) judged = judge_wall (wall);
  g_assert_null (finding_of (&judged, "row-past"));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/movement/length", test_length);
  g_test_add_func ("/movement/advised", test_advised);
  g_test_add_func ("/movement/until-well", test_until_well);
  g_test_add_func ("/movement/bearing", test_bearing);
  g_test_add_func ("/movement/no-lintel", test_no_lintel);
  g_test_add_func ("/movement/corner", test_corner);
  g_test_add_func ("/movement/proportion", test_proportion);
  g_test_add_func ("/movement/bars", test_bars);
  return g_test_run ();
}
