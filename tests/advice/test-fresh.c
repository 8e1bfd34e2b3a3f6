/* test-fresh.c - how high in a day and what is braced, told once; and pieces that end a wall */
#include "advice/findings.h"

#include "bond/lay.h"
#include "edited.h"
#include "plain-wall.h"

/* All findings of one rule, of all walls in turn: Finding *. */
static GPtrArray *
found (const Project *project, const char *rule)
{
  g_autoptr (Judge) judge = judge_new (project);
  GPtrArray *all = g_ptr_array_new_with_free_func ((GDestroyNotify) finding_free);

  for (guint i = 0; i < project->walls->len; i++)
    {
      const Wall *wall = project_wall_at (project, i);
      g_autoptr (Layout) layout = lay_wall (wall, project_block (project, wall->block), NULL);
      g_autoptr (GPtrArray) some = judge_findings (judge, wall, layout, NULL);

      while (some->len > 0)
        {
          Finding *finding = g_ptr_array_steal_index (some, 0);

          if (g_str_equal (finding->rule, rule))
            g_ptr_array_add (all, finding);
          else
            finding_free (finding);
        }
    }
  return all;
}

typedef struct
{
  const char *name;
  int length, height; /* mm */
  int left, right;    /* returns */
} Row;

static Project *
project_of (const Row *walls, guint n)
{
  Project *project = project_new ();

  for (guint i = 0; i < n; i++)
    {
      g_autoptr (Wall) wall = plain_wall (walls[i].length, walls[i].height);

      wall->id.n = 0;
      g_free (wall->name);
      wall->name = g_strdup (walls[i].name);
      if (walls[i].left > 0)
        wall->ends[SIDE_LEFT]
            = (End){ .given = TRUE, .has_return = TRUE, .ret = LENGTH_MM (walls[i].left) };
      if (walls[i].right > 0)
        wall->ends[SIDE_RIGHT]
            = (End){ .given = TRUE, .has_return = TRUE, .ret = LENGTH_MM (walls[i].right) };
      project = edited (project, edit_add_wall (wall));
    }
  return project;
}

/* Courses of 200 mm without joints: the seventh ends at 1400, the eighth at 1600. Walls of 250 mm
 * are held up to 3750 mm from another one. */
static void
test_fresh (void)
{
  static const struct
  {
    Row walls[5];
    guint n;
    guint tells; /* which wall, from 1; 0: none */
    const char *text;
  } cases[] = {
    { { { "Low", 4000, 1500, 0, 0 } }, 1, 0, NULL },
    { { { "Low", 4000, 1400, 0, 0 }, { "Front", 4000, 1600, 250, 250 } },
      2,
      2,
      "No more than 1.5 m is laid in a day (house-building standards): here to the top of course "
      "7, "
      "1400 mm. What stands higher and is not yet held by floor or roof is braced (common "
      "practice). It is the same for all walls over 1.5 m: check with a licensed engineer." },
    { { { "Front", 6000, 2600, 250, 250 },
        { "Side", 4000, 2600, 250, 0 },
        { "Back", 4200, 2600, 0, 250 },
        { "Yard", 6000, 1200, 0, 0 } },
      4,
      1,
      "No more than 1.5 m is laid in a day (house-building standards): here to the top of course "
      "7, "
      "1400 mm. What stands higher and is not yet held by floor or roof is braced (common "
      "practice), first of all where no other wall holds an end: Back. It is the same for all "
      "walls over 1.5 m: check with a licensed engineer." },
    { { { "A", 6000, 2600, 0, 0 },
        { "B", 6000, 2600, 0, 0 },
        { "C", 6000, 2600, 0, 0 },
        { "D", 6000, 2600, 0, 0 },
        { "E", 6000, 2600, 0, 0 } },
      5,
      1,
      "No more than 1.5 m is laid in a day (house-building standards): here to the top of course "
      "7, "
      "1400 mm. What stands higher and is not yet held by floor or roof is braced (common "
      "practice), first of all where no other wall holds an end: A, B, C and 2 more. It is the "
      "same "
      "for all walls over 1.5 m: check with a licensed engineer." },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (Project) project = project_of (cases[i].walls, cases[i].n);
      g_autoptr (GPtrArray) findings = found (project, "fresh-height");

      g_assert_cmpuint (findings->len, ==, cases[i].tells > 0);
      if (cases[i].tells == 0)
        continue;
      const Finding *finding = g_ptr_array_index (findings, 0);
      g_assert_cmpstr (finding->text, ==, cases[i].text);
      g_assert_cmpuint (finding->wall.n, ==, project_wall_at (project, cases[i].tells - 1)->id.n);
      g_assert_cmpint (finding->course, ==, 7);
      g_assert_cmpint (finding->severity, ==, SEVERITY_NOTE);
    }
}

/* Where the work is reckoned with another rise, that is said, and the less of the two holds. */
static void
test_another_rise (void)
{
  static const struct
  {
    int rise;
    gint32 course;
    const char *begins;
  } cases[] = {
    { 1500, 7,
      "No more than 1.5 m is laid in a day (house-building standards): here to the top of "
      "course 7, 1400 mm. " },
    { 1000, 5,
      "No more than 1.5 m is laid in a day (house-building standards), 1000 mm as the work "
      "is reckoned: here to the top of course 5, 1000 mm. " },
    { 2000, 7,
      "No more than 1.5 m is laid in a day (house-building standards), 2000 mm as the work "
      "is reckoned: here to the top of course 7, 1400 mm. " },
  };
  const Row front = { "Front", 6000, 2600, 250, 250 };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (Project) project = project_of (&front, 1);
      g_autoptr (GPtrArray) findings = NULL;
      const Finding *finding;

      /* Nobody else sees it yet. */
      project->rates.rise = LENGTH_MM (cases[i].rise);
      findings = found (project, "fresh-height");
      g_assert_cmpuint (findings->len, ==, 1);
      finding = g_ptr_array_index (findings, 0);
      g_assert_true (g_str_has_prefix (finding->text, cases[i].begins));
      g_assert_cmpint (finding->course, ==, cases[i].course);
    }
}

/* Overtaken, nothing is told. */
static void
test_stop (void)
{
  const Row front = { "Front", 6000, 2600, 250, 250 };
  g_autoptr (Project) project = project_of (&front, 1);
  g_autoptr (Judge) judge = judge_new (project);
  const Wall *wall = project_wall_at (project, 0);
  g_autoptr (Layout) layout = lay_wall (wall, project_block (project, wall->block), NULL);
  gint stop = 1;

  g_assert_null (judge_findings (judge, wall, layout, &stop));
}

/* --- end pieces --- */

/* A wall of four courses without joints. */
static Project *
of_length (int length, int min_piece)
{
  g_autoptr (Wall) wall = plain_wall (length, 800);

  wall->id.n = 0;
  wall->laying.min_piece = LENGTH_MM (min_piece);
  wall->laying.min_lap = LENGTH_MM (80);
  wall->laying.given |= LAYING_MIN_PIECE | LAYING_MIN_LAP;
  return edited (project_new (), edit_add_wall (wall));
}

static void
test_ends (void)
{
  /* One unit and 100 mm: in every course an end piece of 100 mm is the fewest cuts. */
  g_autoptr (Project) short_ones = of_length (700, 50);
  g_autoptr (GPtrArray) some = found (short_ones, "end-piece");
  const Finding *finding;

  g_assert_cmpuint (some->len, ==, 1);
  finding = g_ptr_array_index (some, 0);
  g_assert_cmpstr (
      finding->text, ==,
      "4 pieces at the wall's ends are shorter than 115 mm, which they are to bear on "
      "(DIN 1053-1, 9.3); the shortest is 100 mm. In a wall that bears load check with "
      "a licensed engineer.");
  g_assert_cmpint (finding->severity, ==, SEVERITY_NOTE);
  g_assert_cmpstr (finding->mend_text, ==, "Make the shortest piece 115 mm");

  /* After its mend there is none; and where 115 mm are asked for, nothing is said of it. */
  g_autoptr (Project) mended = project_edit (short_ones, finding->mend, NULL);
  g_autoptr (GPtrArray) none = found (mended, "end-piece");
  g_assert_cmpuint (none->len, ==, 0);
  g_assert_cmpint (project_wall_at (mended, 0)->laying.min_piece, ==, LENGTH_MM (115));
  g_autoptr (Project) asked = of_length (700, 115);
  g_autoptr (GPtrArray) quiet = found (asked, "end-piece");
  g_assert_cmpuint (quiet->len, ==, 0);
  /* Half units at the ends are long enough. */
  g_autoptr (Project) halves = of_length (3000, 50);
  g_autoptr (GPtrArray) long_ends = found (halves, "end-piece");
  g_assert_cmpuint (long_ends->len, ==, 0);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/fresh/told-once", test_fresh);
  g_test_add_func ("/fresh/another-rise", test_another_rise);
  g_test_add_func ("/fresh/stop", test_stop);
  g_test_add_func ("/ends/short-pieces", test_ends);
  return g_test_run ();
}
