/* test-built-cells.c - figures of the site, understood, taken and taken back */
#include "app/built-cells.h"

#include <string.h>

#include "edited.h"

#define MM LENGTH_MM

static GArray *
laid_of (gint32 n)
{
  GArray *all = g_array_new (FALSE, FALSE, sizeof (LaidCourse));

  g_array_set_clear_func (all, (GDestroyNotify) laid_course_clear);
  for (gint32 i = 1; i <= n; i++)
    {
      const LaidCourse laid = laid_course_new (i);

      g_array_append_val (all, laid);
    }
  return all;
}

/* A wall 3608 x 2442 of blocks 200 high, tops as planned at 220, 422, 624, 826 ...; three courses
 * stand, and a window is in it. */
static Project *
shed (void)
{
  g_autoptr (Wall) wall = wall_new ();
  g_autoptr (GArray) laid = laid_of (3);
  Opening window = opening_default (OPENING_WINDOW);
  Project *project;

  wall->length = MM (3608);
  wall->height = MM (2442);
  g_free (window.name);
  window.name = g_strdup ("W1");
  window.x = MM (1200);
  g_array_append_val (wall->openings, window);
  project = edited (project_new (), edit_add_wall (wall));
  g_autoptr (Wall) up = built_set_courses (project_wall_at (project, 0), 3, laid, NULL, NULL);
  return edited (project, edit_set_wall (up));
}

static const Wall *
wall_of (const Project *project)
{
  return project_wall_at (project, 0);
}

/* The cell of the window; of others the row as it is. */
static BuiltCell
cell_of (const Project *project, BuiltCell cell)
{
  if (cell.part == BUILT_OF_OPENING)
    cell.row = wall_opening_at (wall_of (project), 0)->id.n;
  return cell;
}

/* NULL: it was refused, by the cell or by the project. */
static Project *
typed (const Project *project, BuiltCell cell, const char *text, GError **error)
{
  g_autoptr (Wall) next = built_cell_set (wall_of (project), cell_of (project, cell), text, error);
  g_autoptr (Edit) edit = next ? edit_set_wall (next) : NULL;

  return edit ? project_edit (project, edit, error) : NULL;
}

static void
assert_shown (const Project *project, BuiltCell cell, const char *text)
{
  g_autofree char *is = built_cell_text (wall_of (project), cell_of (project, cell));

  g_assert_cmpstr (is, ==, text);
}

/* Typed, shown, taken back: then the wall is as it was. */
static void
test_cells (void)
{
  static const struct
  {
    BuiltCell cell;
    const char *name, *typed, *shown;
    double planned; /* mm; below 0: nothing is */
  } cases[] = {
    { { BUILT_OF_WALL, 0, FIGURE_AS_OF }, "Date", " 4 May ", "4 May", -1 },
    { { BUILT_OF_WALL, 0, FIGURE_LENGTH }, "Length", "3.62 m", "3620", 3608 },
    { { BUILT_OF_WALL, 0, FIGURE_PLUMB }, "Out of plumb", "+6", "6", 0 },
    { { BUILT_OF_WALL, 0, FIGURE_PLUMB }, "Out of plumb", "-6,5", "-6.5", 0 },
    { { BUILT_OF_WALL, 0, FIGURE_BOW }, "Bow over its length", "-4", "-4", 0 },
    { { BUILT_OF_WALL, 0, FIGURE_BOW_METRE }, "Bow in a metre", "2", "2", 0 },
    { { BUILT_OF_WALL, 0, FIGURE_BED_LEAST }, "Next beds, at least", "1", "1", -1 },
    { { BUILT_OF_WALL, 0, FIGURE_BED_MOST }, "Next beds, at most", "5", "5", -1 },
    { { BUILT_OF_COURSE, 1, SIDE_LEFT }, "Course 1, left end", "226", "226", 220 },
    { { BUILT_OF_COURSE, 3, SIDE_LEFT }, "Course 3, left end", "63 cm", "630", 624 },
    { { BUILT_OF_OPENING, 0, FIGURE_X }, "W1, left jamb", "1204", "1204", 1200 },
    { { BUILT_OF_OPENING, 0, FIGURE_WIDTH }, "W1, width", "1195", "1195", 1200 },
    { { BUILT_OF_OPENING, 0, FIGURE_SILL }, "W1, sill", "903", "903", 900 },
    { { BUILT_OF_OPENING, 0, FIGURE_HEIGHT }, "W1, height", "1210", "1210", 1200 },
  };
  g_autoptr (Project) project = shed ();

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (GError) error = NULL;
      g_autoptr (Project) next = typed (project, cases[i].cell, cases[i].typed, &error);
      g_autofree char *name = built_cell_name (wall_of (project), cell_of (project, cases[i].cell));
      Length planned = 0;

      g_assert_no_error (error);
      g_assert_cmpstr (name, ==, cases[i].name);
      assert_shown (next, cases[i].cell, cases[i].shown);
      g_assert_cmpint (built_cell_planned (wall_of (next), project_block_at (next, 0),
                                           cell_of (next, cases[i].cell), &planned),
                       ==, cases[i].planned >= 0);
      g_assert_cmpint (planned, ==, length_from_mm (MAX (cases[i].planned, 0)));
      g_autoptr (Project) back = typed (next, cases[i].cell, "", &error);
      g_assert_no_error (error);
      assert_shown (back, cases[i].cell, "");
      g_assert_true (project_equal (back, project));
    }
}

/* A course's right end counts beside its left end alone, and is not lost by emptying that. */
static void
test_both_ends (void)
{
  static const BuiltCell left = { BUILT_OF_COURSE, 2, SIDE_LEFT };
  static const BuiltCell right = { BUILT_OF_COURSE, 2, SIDE_RIGHT };
  g_autoptr (Project) project = shed ();
  g_autoptr (GError) error = NULL;

  g_assert_null (typed (project, right, "425", &error));
  g_assert_cmpstr (error->message, ==,
                   "The left end of course 2 goes first: type that, then the right end.");
  g_clear_error (&error);
  g_autoptr (Project) one = typed (project, left, "424", &error);
  g_autoptr (Project) both = typed (one, right, "425", &error);
  g_assert_no_error (error);
  assert_shown (both, left, "424");
  assert_shown (both, right, "425");
  g_assert_null (typed (both, left, "", &error));
  g_assert_cmpstr (error->message, ==,
                   "Course 2 is measured at its right end, too: empty that first.");
  g_clear_error (&error);
  g_autoptr (Project) again = typed (both, left, "423", &error);
  assert_shown (again, right, "425");
  g_autoptr (Project) back = typed (again, right, "", &error);
  g_assert_no_error (error);
  assert_shown (back, left, "423");
}

static void
test_refused (void)
{
  static const struct
  {
    BuiltCell cell;
    const char *typed, *says;
  } cases[] = {
    { { BUILT_OF_WALL, 0, FIGURE_LENGTH }, "12x", "“12x” is no length" },
    { { BUILT_OF_WALL, 0, FIGURE_PLUMB }, "+", "“+” is no length" },
    { { BUILT_OF_WALL, 0, FIGURE_PLUMB }, "5000", "plumb" },
    { { BUILT_OF_COURSE, 2, SIDE_LEFT }, "300", "" },
    { { BUILT_OF_COURSE, 1, SIDE_LEFT }, "199", "" },
    { { BUILT_OF_COURSE, 4, SIDE_LEFT }, "826", "does not stand yet" },
    { { BUILT_OF_OPENING, 0, FIGURE_X }, "3000", "W1" },
  };
  g_autoptr (Project) project = shed ();

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (GError) error = NULL;

      g_assert_null (typed (project, cases[i].cell, cases[i].typed, &error));
      g_assert_nonnull (error);
      g_test_message ("%s: %s", cases[i].typed, error->message);
      g_assert_nonnull (strstr (error->message, cases[i].says));
    }
}

/* With every figure measured and three courses standing: planned, it is the wall before. */
static void
test_as_planned (void)
{
  static const struct
  {
    BuiltCell cell;
    const char *typed;
  } figures[] = {
    { { BUILT_OF_WALL, 0, FIGURE_LENGTH }, "3620" },
    { { BUILT_OF_WALL, 0, FIGURE_PLUMB }, "-6" },
    { { BUILT_OF_COURSE, 2, SIDE_LEFT }, "424" },
    { { BUILT_OF_OPENING, 0, FIGURE_X }, "1204" },
    { { BUILT_OF_OPENING, 0, FIGURE_WIDTH }, "1190" },
    { { BUILT_OF_OPENING, 0, FIGURE_SILL }, "903" },
    { { BUILT_OF_OPENING, 0, FIGURE_HEIGHT }, "1210" },
  };
  g_autoptr (Project) project = shed ();
  g_autoptr (Wall) before = wall_copy (wall_of (project)), planned = NULL;

  g_clear_pointer (&before->built, built_free);
  for (guint i = 0; i < G_N_ELEMENTS (figures); i++)
    {
      Project *next = typed (project, figures[i].cell, figures[i].typed, NULL);

      g_assert_nonnull (next);
      project_unref (project);
      project = next;
    }
  g_assert_false (wall_equal (wall_of (project), before));
  planned = built_as_planned (wall_of (project));
  g_assert_true (wall_equal (planned, before));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/built-cells/typed-shown-taken-back", test_cells);
  g_test_add_func ("/built-cells/both-ends-of-a-course", test_both_ends);
  g_test_add_func ("/built-cells/refused", test_refused);
  g_test_add_func ("/built-cells/as-planned", test_as_planned);
  return g_test_run ();
}
