/* test-as-built.c - limits against their sources, deviations and the way on worked by hand */
#include "site/as-built.h"

#include <string.h>

#include "bond/lay.h"
#include "bond/stands.h"

#define MM(mm) LENGTH_MM (mm)

/* --- limits: docs/rules.md, 3.7, 3.8 and 3.10 --- */

static const struct
{
  ToleranceKind kind;
  double over, limit;
  const char *source;
} limit_rows[] = {
  { TOLERANCE_LENGTH, 3000, 16, "SIA 266" },  { TOLERANCE_LENGTH, 4000, 16, "SIA 266" },
  { TOLERANCE_LENGTH, 4001, 20, "SIA 266" },  { TOLERANCE_LENGTH, 10000, 20, "SIA 266" },
  { TOLERANCE_TOP, 2600, 16, "SIA 266" },     { TOLERANCE_OPENING, 1200, 16, "SIA 266" },
  { TOLERANCE_LEVEL, 5000, 10, "warranty" },  { TOLERANCE_LEVEL, 2500, 5, "warranty" },
  { TOLERANCE_LEVEL, 5001, 15, "warranty" },  { TOLERANCE_BED, 0, 5, "warranty" },
  { TOLERANCE_PLUMB, 8000, 20, "EN 1996-2" }, { TOLERANCE_BOW, 1000, 10, "EN 1996-2" },
  { TOLERANCE_BOW, 10000, 50, "EN 1996-2" },  { TOLERANCE_BOW, 6000, 30, "EN 1996-2" },
  { TOLERANCE_BOW, 20000, 50, "EN 1996-2" },  { TOLERANCE_BOW_METRE, 10000, 10, "EN 1996-2" },
};

static void
test_limits (void)
{
  g_autoptr (Project) project = project_new ();

  for (guint i = 0; i < G_N_ELEMENTS (limit_rows); i++)
    {
      Limit limit
          = as_built_limit (project, limit_rows[i].kind, length_from_mm (limit_rows[i].over));

      g_test_message ("%s over %g", tolerance_word (limit_rows[i].kind), limit_rows[i].over);
      g_assert_cmpint (limit.limit, ==, length_from_mm (limit_rows[i].limit));
      g_assert_nonnull (strstr (limit.source, limit_rows[i].source));
    }
  /* The project's own goes first. */
  project->tolerances[TOLERANCE_PLUMB] = (Tolerance){ TRUE, MM (8), { NULL, NULL } };
  Limit own = as_built_limit (project, TOLERANCE_PLUMB, MM (3000));
  g_assert_cmpint (own.limit, ==, MM (8));
  g_assert_nonnull (strstr (own.source, "own"));
}

/* --- a wall --- */

/* 6000 x 2644 of thirteen courses, laid up to course 10 as planned. */
static Project *
site (void)
{
  g_autoptr (Project) empty = project_new ();
  g_autoptr (Wall) wall = wall_new ();
  g_autoptr (GError) error = NULL;
  Opening window = opening_default (OPENING_WINDOW);

  wall->height = MM (2644);
  window.x = MM (1800);
  g_free (window.name);
  window.name = g_strdup ("W1");
  g_array_append_val (wall->openings, window);
  g_autoptr (Edit) add = edit_add_wall (wall);
  g_autoptr (Project) project = project_edit (empty, add, &error);
  g_assert_no_error (error);
  const Wall *in = project_wall_at (project, 0);
  g_autoptr (Layout) layout = lay_wall (in, project_block_at (project, 0), NULL);
  g_autoptr (GArray) laid = stands_of_layout (layout);
  g_autoptr (Wall) up = built_set_courses (in, 10, laid, NULL, &error);
  g_assert_no_error (error);
  g_autoptr (Edit) set = edit_set_wall (up);
  Project *next = project_edit (project, set, &error);
  g_assert_no_error (error);
  return next;
}

/* Takes both. */
static Project *
with (Project *project, Wall *wall)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (Edit) set = edit_set_wall (wall);
  Project *next = project_edit (project, set, &error);

  g_assert_no_error (error);
  project_unref (project);
  wall_unref (wall);
  return next;
}

static Project *
with_top (Project *project, gint32 course, double left, double right)
{
  const Length tops[] = { length_from_mm (left), length_from_mm (right) };

  return with (project, built_set_top (project_wall_at (project, 0), course, &tops[0],
                                       right > 0 ? &tops[1] : NULL, NULL));
}

static AsBuilt *
as_built (const Project *project)
{
  const Wall *wall = project_wall_at (project, 0);
  g_autoptr (Layout) layout = lay_wall (wall, project_block_at (project, 0), NULL);

  return as_built_new (project, wall, layout);
}

static void
assert_deviation (const AsBuilt *built, guint i, ToleranceKind kind, gint32 course, double off,
                  gboolean within)
{
  const Deviation *deviation = as_built_deviation (built, i);

  g_assert_cmpint (deviation->kind, ==, kind);
  g_assert_cmpint (deviation->course, ==, course);
  g_assert_cmpint (deviation->off, ==, length_from_mm (off));
  g_assert_cmpint (deviation->off, ==, deviation->measured - deviation->planned);
  g_assert_cmpint (deviation->within, ==, within);
}

static void
test_as_planned (void)
{
  g_autoptr (Project) project = site ();
  g_autoptr (AsBuilt) built = as_built (project);
  g_autofree char *sentence = next_beds_sentence (built);

  g_assert_cmpint (built->standing, ==, 10);
  g_assert_cmpint (built->courses, ==, 13);
  g_assert_cmpuint (built->pieces_standing, <, built->pieces);
  g_assert_cmpuint (built->deviations->len, ==, 0);
  g_assert_true (built->within);
  g_assert_cmpstr (sentence, ==,
                   "From course 11 on, beds of 2 mm bring course 13 to 2644 mm, as planned.");
  g_assert_cmpint (built->next.top, ==, built->next.plate);
}

/* Courses are planned to end at 20 + 202 n - 2: 422, 624, 2038. */
static void
test_tops (void)
{
  g_autoptr (Project) project = with_top (site (), 2, 422, 440);

  project = with_top (project, 10, 2038, 0);
  g_autoptr (AsBuilt) built = as_built (project);
  g_assert_cmpuint (built->deviations->len, ==, 4);
  assert_deviation (built, 0, TOLERANCE_TOP, 2, 0, TRUE);
  assert_deviation (built, 1, TOLERANCE_TOP, 2, 18, FALSE);
  assert_deviation (built, 2, TOLERANCE_LEVEL, 2, 18, FALSE);
  assert_deviation (built, 3, TOLERANCE_TOP, 10, 0, TRUE);
  g_assert_false (built->within);
  g_assert_cmpint (as_built_deviation (built, 1)->x, ==, MM (6000));
  g_autofree char *top
      = deviation_sentence (project_wall_at (project, 0), as_built_deviation (built, 1));
  g_autofree char *level
      = deviation_sentence (project_wall_at (project, 0), as_built_deviation (built, 2));
  g_assert_cmpstr (top, ==,
                   "Course 2 ends 18 mm too high at the right, at 440 mm; 16 mm either way are "
                   "allowed (SIA 266, table 11, standard).");
  g_assert_cmpstr (level, ==,
                   "Course 2 rises 18 mm from its left end to its right; 15 mm either way are "
                   "allowed (a warranty body's manual).");
}

/* Every course measured, all as planned but the sixth, 8 mm high: the bed under it is 10, the one
 * over it is -6 at first, so the seventh is high, too; of the nine beds, eight around each. */
static void
test_beds (void)
{
  g_autoptr (Project) project = site ();

  for (gint32 i = 10; i >= 1; i--)
    project = with_top (project, i, 20 + 202 * i - 2 + (i >= 6 ? 8 : 0), 0);
  g_autoptr (AsBuilt) built = as_built (project);
  guint beyond = 0;
  for (guint i = 0; i < built->deviations->len; i++)
    {
      const Deviation *deviation = as_built_deviation (built, i);

      if (deviation->kind != TOLERANCE_BED)
        continue;
      /* Seven of 2 and one of 10: 3 is their mean; it is in every eight of the nine. */
      g_assert_cmpint (deviation->planned, ==, MM (3));
      g_assert_cmpint (deviation->measured, ==, deviation->course == 6 ? MM (10) : MM (2));
      beyond += !deviation->within;
      g_assert_cmpint (deviation->within, ==, deviation->course != 6);
    }
  g_assert_cmpuint (beyond, ==, 1);
  /* 2646 over three beds: 2 is planned, 1 ends at 2643 + 2. */
  g_assert_cmpint (built->next.bed, ==, MM (1));
  g_assert_cmpint (built->next.rip, ==, MM (195));
  g_assert_cmpint (built->next.last_whole, ==, 12);
  g_assert_cmpint (built->next.last_top, ==, MM (2448));
  g_assert_cmpint (built->next.planned_last, ==, MM (2442));
}

static void
test_wall_and_openings (void)
{
  g_autoptr (Project) project = site ();
  const OpeningId id = wall_opening_at (project_wall_at (project, 0), 0)->id;
  const Length length = MM (5979), plumb = MM (-20), bow = MM (31), metre = MM (11), x = MM (1817),
               height = MM (1195);

  project = with (project, built_set_length (project_wall_at (project, 0), &length));
  project = with (project, built_set_figure (project_wall_at (project, 0), BUILT_PLUMB, &plumb));
  project = with (project, built_set_figure (project_wall_at (project, 0), BUILT_BOW, &bow));
  project
      = with (project, built_set_figure (project_wall_at (project, 0), BUILT_BOW_METRE, &metre));
  project
      = with (project, built_set_opening (project_wall_at (project, 0), id, FIGURE_X, &x, NULL));
  project = with (
      project, built_set_opening (project_wall_at (project, 0), id, FIGURE_HEIGHT, &height, NULL));
  g_autoptr (AsBuilt) built = as_built (project);
  g_assert_cmpuint (built->deviations->len, ==, 6);
  assert_deviation (built, 0, TOLERANCE_LENGTH, 0, -21, FALSE);
  assert_deviation (built, 1, TOLERANCE_PLUMB, 0, -20, TRUE);
  assert_deviation (built, 2, TOLERANCE_BOW, 0, 31, FALSE);
  assert_deviation (built, 3, TOLERANCE_BOW_METRE, 0, 11, FALSE);
  assert_deviation (built, 4, TOLERANCE_OPENING, 0, 17, FALSE);
  assert_deviation (built, 5, TOLERANCE_OPENING, 0, -5, TRUE);
  for (guint i = 0; i < built->deviations->len; i++)
    {
      g_autofree char *sentence
          = deviation_sentence (project_wall_at (project, 0), as_built_deviation (built, i));

      g_test_message ("%s", sentence);
      g_assert_true (g_str_has_suffix (sentence, ")."));
    }
  g_autofree char *first
      = deviation_sentence (project_wall_at (project, 0), as_built_deviation (built, 4));
  g_assert_cmpstr (first, ==,
                   "W1 begins 17 mm too far right, at 1817 mm; 16 mm either way are allowed "
                   "(SIA 266, table 11, standard).");
}

/* A wall of which nothing stands and nothing was measured has nothing to tell. */
static void
test_nothing (void)
{
  g_autoptr (Project) project = site ();

  project = with (project, built_set_courses (project_wall_at (project, 0), 0, NULL, NULL, NULL));
  g_autoptr (AsBuilt) built = as_built (project);
  g_assert_cmpint (built->standing, ==, 0);
  g_assert_cmpuint (built->pieces_standing, ==, 0);
  g_assert_cmpuint (built->deviations->len, ==, 0);
  g_assert_null (next_beds_sentence (built));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/as-built/limits", test_limits);
  g_test_add_func ("/as-built/as-planned", test_as_planned);
  g_test_add_func ("/as-built/tops", test_tops);
  g_test_add_func ("/as-built/beds", test_beds);
  g_test_add_func ("/as-built/wall-and-openings", test_wall_and_openings);
  g_test_add_func ("/as-built/nothing", test_nothing);
  return g_test_run ();
}
