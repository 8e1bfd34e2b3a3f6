/* test-level-cells.c - what is typed into the level book, understood and shown again */
#include "app/level-cells.h"

#include "model/edit.h"

/* Walls of 6 m and 4 m. */
static Project *
house (void)
{
  Project *project = project_new ();
  const int lengths[] = { 6000, 4000 };
  const char *const names[] = { "Lane side", "Hedge" };
  for (int i = 0; i < 2; i++)
    {
      g_autoptr (Wall) wall = wall_new ();
      g_autoptr (Edit) edit = NULL;
      wall->length = LENGTH_MM (lengths[i]);
      g_free (wall->name);
      wall->name = g_strdup (names[i]);
      edit = edit_add_wall (wall);
      Project *next = project_edit (project, edit, NULL);
      project_unref (project);
      project = next;
    }
  project->survey = survey_new ();
  return project;
}

static void
test_numbers (void)
{
  static const struct
  {
    const char *text;
    double mm;
  } good[] = {
    { "1205", 1205 },      { "1.205", 1205 },   { "-2.956", -2956 },  { "185,635", 185635 },
    { " 1.205 ", 1205 },   { "12.5", 12.5 },    { "1205.1", 1205.1 }, { "1.205 m", 1205 },
    { "1.205 mm", 1.205 }, { "120.5cm", 1205 }, { "4' 1\"", 1244.6 }, { "0.000", 0 },
  };
  for (guint i = 0; i < G_N_ELEMENTS (good); i++)
    {
      Length is;
      g_assert_true (level_parse (good[i].text, &is));
      g_assert_cmpint (is, ==, length_from_mm (good[i].mm));
    }
  const char *const bad[] = { "", "x", "1.2.3", "12 34", "1e3", "9999.000" };
  for (guint i = 0; i < G_N_ELEMENTS (bad); i++)
    {
      Length is;
      g_assert_false (level_parse (bad[i], &is));
    }
}

static void
set (Project *project, LevelCell cell, const char *text)
{
  g_autoptr (GError) error = NULL;
  g_assert_true (level_cell_set (project, project->survey, cell, text, &error));
  g_assert_no_error (error);
}

static void
assert_shown (const Project *project, LevelCell cell, const char *text)
{
  g_autofree char *is = level_cell_text (project, project->survey, cell);
  g_assert_cmpstr (is, ==, text);
}

/* Typed, and what stands there then. */
static void
test_cells (void)
{
  static const struct
  {
    LevelCell cell;
    const char *typed, *shown;
  } cases[] = {
    { { LEVEL_OF_READING, 0, LEVEL_POINT }, " A 1 ", "A 1" },
    { { LEVEL_OF_READING, 0, LEVEL_BACK }, "1.205", "1205" },
    { { LEVEL_OF_READING, 0, LEVEL_INTER }, "-1.5 m", "-1500" },
    { { LEVEL_OF_READING, 0, LEVEL_FORE }, "12.5", "12.5" },
    { { LEVEL_OF_READING, 0, LEVEL_KNOWN }, "100.000", "100000" },
    { { LEVEL_OF_READING, 0, LEVEL_KNOWN }, "", "" },
    { { LEVEL_OF_READING, 0, LEVEL_WHERE }, "1 left, 2 right", "1 left, 2 right" },
    { { LEVEL_OF_READING, 0, LEVEL_WHERE }, "lane side r; w2 0", "1 right, 2 left" },
    { { LEVEL_OF_READING, 0, LEVEL_WHERE }, "Hedge 2.4m", "2 2400" },
    { { LEVEL_OF_READING, 0, LEVEL_WHERE }, "2 4000", "2 right" },
    { { LEVEL_OF_READING, 0, LEVEL_WHERE }, "", "" },
    { { LEVEL_OF_LIMIT, 0, LEVEL_LEAST }, "8", "8" },
    { { LEVEL_OF_LIMIT, 0, LEVEL_LEAST }, "", "" },
    { { LEVEL_OF_LIMIT, 0, LEVEL_FIRST_COURSE }, "100.012", "100012" },
    { { LEVEL_OF_LIMIT, 0, LEVEL_TAPE }, "8 m", "8000" },
    { { LEVEL_OF_DIAGONAL, 0, 0 }, "1 2 7211", "1 2 7211" },
    { { LEVEL_OF_DIAGONAL, 0, 0 }, "2 1: 5.004 3m, 4m", "2 1 5004 3000 4000" },
    { { LEVEL_OF_DIAGONAL, 0, 0 }, "", "" },
  };
  g_autoptr (Project) project = house ();
  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_test_message ("%s", cases[i].typed);
      set (project, cases[i].cell, cases[i].typed);
      assert_shown (project, cases[i].cell, cases[i].shown);
      /* What is shown is understood as the same. */
      g_autoptr (Survey) before = survey_copy (project->survey);
      set (project, cases[i].cell, cases[i].shown);
      g_assert_true (survey_equal (before, project->survey));
    }
  g_assert_cmpuint (project->survey->readings->len, ==, 1);
  g_assert_cmpuint (project->survey->diagonals->len, ==, 0);
  g_assert_cmpint (project->survey->least, ==, LENGTH_MM (10));
}

static void
test_refused (void)
{
  static const struct
  {
    LevelCell cell;
    const char *typed, *says;
  } cases[] = {
    { { LEVEL_OF_READING, 0, LEVEL_BACK }, "12x", "“12x” is not understood" },
    { { LEVEL_OF_READING, 1, LEVEL_WHERE }, "3 left", "There is no wall “3”" },
    { { LEVEL_OF_READING, 1, LEVEL_WHERE }, "1", "A place is a wall and where on it" },
    { { LEVEL_OF_READING, 1, LEVEL_WHERE }, "1 left, 2 far", "“far” is no place on a wall" },
    { { LEVEL_OF_READING, 1, LEVEL_WHERE }, "1 -5", "“-5” is no place on a wall" },
    { { LEVEL_OF_LIMIT, 0, LEVEL_MOST }, "thick", "“thick” is not understood" },
    { { LEVEL_OF_DIAGONAL, 0, 0 }, "1 2", "A diagonal is two walls and its length" },
    { { LEVEL_OF_DIAGONAL, 0, 0 }, "1 9 7000", "There is no wall “9”" },
  };
  g_autoptr (Project) project = house ();
  set (project, (LevelCell){ LEVEL_OF_READING, 0, LEVEL_POINT }, "A");
  g_autoptr (Survey) before = survey_copy (project->survey);
  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (GError) error = NULL;
      g_assert_false (
          level_cell_set (project, project->survey, cases[i].cell, cases[i].typed, &error));
      g_assert_nonnull (error);
      g_assert_nonnull (g_strstr_len (error->message, -1, cases[i].says));
      g_assert_true (g_str_has_suffix (error->message, "."));
      g_assert_true (survey_equal (before, project->survey));
    }
}

/* A row as it is called out. */
static void
test_quick (void)
{
  static const struct
  {
    const char *typed, *shown[N_LEVEL_COLUMNS];
  } cases[] = {
    { "Peg b1412 =100.000", { "Peg", "", "1412", "", "", "100000" } },
    { "A 1437 @1 left, 2 right", { "A", "1 left, 2 right", "", "1437", "", "" } },
    { "B f1.433 b1.506", { "B", "", "1506", "", "1433", "" } },
    { "under the bridge -2.956", { "under the bridge", "", "", "-2956", "", "" } },
    { "12 1437", { "12", "", "", "1437", "", "" } },
    { "B2 1437", { "B2", "", "", "1437", "", "" } },
  };
  g_autoptr (Project) project = house ();
  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (GError) error = NULL;
      g_assert_true (level_quick_add (project, project->survey, cases[i].typed, &error));
      for (guint c = 0; c < N_LEVEL_COLUMNS; c++)
        assert_shown (project, (LevelCell){ LEVEL_OF_READING, i, c }, cases[i].shown[c]);
    }
  const char *const bad[] = { "", "A", "1437", "A x1437", "A 1437 B", "A 1437 @3 left", "@1 left" };
  for (guint i = 0; i < G_N_ELEMENTS (bad); i++)
    {
      g_autoptr (GError) error = NULL;
      g_assert_false (level_quick_add (project, project->survey, bad[i], &error));
      g_assert_nonnull (error);
      g_assert_cmpuint (project->survey->readings->len, ==, G_N_ELEMENTS (cases));
    }
}

/* A row between, and away with one: the others keep their words and places. */
static void
test_rows (void)
{
  g_autoptr (Project) project = house ();
  const char *const rows[] = { "A 1 @1 left", "B 2 @2 left", "C 3" };
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    g_assert_true (level_quick_add (project, project->survey, rows[i], NULL));
  g_assert_true (level_insert_row (project->survey, 1));
  g_assert_cmpuint (project->survey->readings->len, ==, 4);
  assert_shown (project, (LevelCell){ LEVEL_OF_READING, 0, LEVEL_WHERE }, "1 left");
  assert_shown (project, (LevelCell){ LEVEL_OF_READING, 1, LEVEL_POINT }, "");
  assert_shown (project, (LevelCell){ LEVEL_OF_READING, 2, LEVEL_WHERE }, "2 left");
  assert_shown (project, (LevelCell){ LEVEL_OF_READING, 3, LEVEL_POINT }, "C");
  g_assert_true (level_remove_row (project->survey, 0));
  assert_shown (project, (LevelCell){ LEVEL_OF_READING, 1, LEVEL_POINT }, "B");
  g_assert_false (level_insert_row (project->survey, 3));
  g_assert_false (level_remove_row (project->survey, 3));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/level-cells/numbers", test_numbers);
  g_test_add_func ("/level-cells/cells", test_cells);
  g_test_add_func ("/level-cells/refused", test_refused);
  g_test_add_func ("/level-cells/quick", test_quick);
  g_test_add_func ("/level-cells/rows", test_rows);
  return g_test_run ();
}
