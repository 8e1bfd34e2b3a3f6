/* test-edit.c - an edit gives the next project, or a sentence; the old one stays as it was */
#include <string.h>

#include "any-edit.h"

/* Applies it and frees both; the project is the new one. */
static void
apply (Project **project, Edit *edit)
{
  g_autoptr (GError) error = NULL;
  Project *next = project_edit (*project, edit, &error);
  g_assert_no_error (error);
  project_unref (*project);
  edit_free (edit);
  *project = next;
}

static void
assert_refused (const Project *project, Edit *edit, const char *sentence)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (Project) before = deep_copy (project);
  g_assert_null (project_edit (project, edit, &error));
  g_assert_error (error, MODEL_ERROR, MODEL_ERROR_REFUSED);
  g_assert_cmpstr (error->message, ==, sentence);
  g_assert_true (project_equal (project, before));
  edit_free (edit);
}

static Opening
window (int x)
{
  Opening opening = opening_default (OPENING_WINDOW);
  opening.x = LENGTH_MM (x);
  return opening;
}

/* A wall w1 with a window o1 at 1000 mm. */
static Project *
house (void)
{
  Project *project = project_new ();
  g_autoptr (Wall) wall = wall_new ();
  Opening opening = window (1000);
  g_array_append_val (wall->openings, opening);
  apply (&project, edit_add_wall (wall));
  return project;
}

static const Wall *
first_wall (const Project *project)
{
  return project_wall_at (project, 0);
}

static const Opening *
first_opening (const Project *project)
{
  return wall_opening_at (first_wall (project), 0);
}

static void
test_heading (void)
{
  Project *project = project_new ();
  apply (&project, edit_project (FIELD_TITLE, "t"));
  apply (&project, edit_project (FIELD_CLIENT, "c"));
  apply (&project, edit_project (FIELD_SITE, "s"));
  apply (&project, edit_project (FIELD_AUTHOR, "a"));
  apply (&project, edit_project (FIELD_DATE, "2026-03-02"));
  g_assert_cmpstr (project->title, ==, "t");
  g_assert_cmpstr (project->client, ==, "c");
  g_assert_cmpstr (project->site, ==, "s");
  g_assert_cmpstr (project->author, ==, "a");
  g_assert_cmpstr (project->date, ==, "2026-03-02");
  apply (&project, edit_project (FIELD_SITE, ""));
  apply (&project, edit_project (FIELD_TITLE, NULL));
  g_assert_cmpstr (project->site, ==, "");
  g_assert_null (project->title);
  project_unref (project);
}

static void
test_wall_is_added (void)
{
  g_autoptr (Project) project = house ();
  const Wall *wall = first_wall (project);
  g_assert_cmpstr (wall->key, ==, "w1");
  g_assert_cmpstr (first_opening (project)->key, ==, "o1");
  g_assert_cmpuint (wall->id.n, >, 0);
  g_assert_cmpuint (first_opening (project)->id.n, >, 0);
  g_assert_cmpuint (wall->block.n, ==, project_block_at (project, 0)->id.n);
}

/* A key that is asked for is had; one that is taken is not given twice. */
static void
test_keys_are_given (void)
{
  g_autoptr (Project) project = house ();
  g_autoptr (Wall) wall = wall_new ();
  wall->key = g_strdup ("o2");
  Project *now = project_ref (project);
  apply (&now, edit_add_wall (wall));
  g_assert_cmpstr (project_wall_at (now, 1)->key, ==, "o2");
  Opening opening = window (4000);
  apply (&now, edit_add_opening (first_wall (now)->id, &opening));
  g_assert_cmpstr (wall_opening_at (first_wall (now), 1)->key, ==, "o3");
  assert_refused (now, edit_add_wall (wall), "The id \"o2\" is used twice.");
  opening_clear (&opening);
  project_unref (now);
}

static void
test_wall_is_set (void)
{
  Project *project = house ();
  g_autoptr (Project) before = project_ref (project);
  g_autoptr (Wall) wall = wall_copy (first_wall (project));
  g_clear_pointer (&wall->key, g_free);
  wall->length = LENGTH_MM (7000);
  Opening opening = window (4000);
  g_array_append_val (wall->openings, opening);
  apply (&project, edit_set_wall (wall));
  g_assert_cmpint (first_wall (project)->length, ==, LENGTH_MM (7000));
  g_assert_cmpstr (first_wall (project)->key, ==, "w1");
  g_assert_cmpstr (wall_opening_at (first_wall (project), 1)->key, ==, "o2");
  g_assert_cmpint (first_wall (before)->length, ==, LENGTH_MM (6000));
  g_assert_cmpuint (first_wall (before)->openings->len, ==, 1);
  project_unref (project);
}

static void
test_wall_is_refused (void)
{
  g_autoptr (Project) project = house ();
  g_autoptr (Wall) wall = wall_copy (first_wall (project));
  wall->length = LENGTH_MM (2000);
  assert_refused (project, edit_set_wall (wall),
                  "Wall w1: Opening o1 leaves the wall by 200 mm on the right.");
  wall->length = LENGTH_MM (6000);
  wall->block.n = 4711;
  assert_refused (project, edit_set_wall (wall), "Wall w1: its block is not in the project.");
  wall->id.n = 4711;
  assert_refused (project, edit_set_wall (wall), "What this would change is not in the project.");
}

static void
test_walls_move (void)
{
  static const struct
  {
    int wall, to;
    const char *order;
  } cases[] = {
    { 0, 0, "w1 w2 w3" }, { 0, 1, "w2 w1 w3" }, { 0, 2, "w2 w3 w1" },  { 2, 0, "w3 w1 w2" },
    { 1, 1, "w1 w2 w3" }, { 1, 9, "w1 w3 w2" }, { 1, -9, "w2 w1 w3" },
  };
  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      Project *project = house ();
      g_autoptr (Wall) wall = wall_new ();
      apply (&project, edit_add_wall (wall));
      apply (&project, edit_add_wall (wall));
      apply (&project,
             edit_move_wall (project_wall_at (project, (guint) cases[i].wall)->id, cases[i].to));
      g_autofree char *order
          = g_strjoin (" ", project_wall_at (project, 0)->key, project_wall_at (project, 1)->key,
                       project_wall_at (project, 2)->key, NULL);
      g_assert_cmpstr (order, ==, cases[i].order);
      project_unref (project);
    }
}

static void
test_things_are_removed (void)
{
  Project *project = house ();
  BlockId block = project_block_at (project, 0)->id;
  WallId wall = first_wall (project)->id;
  OpeningId opening = first_opening (project)->id;
  assert_refused (project, edit_remove_block (block),
                  "Block Large block stays: wall w1 is built of it.");
  apply (&project, edit_remove_opening (opening));
  g_assert_cmpuint (first_wall (project)->openings->len, ==, 0);
  apply (&project, edit_remove_wall (wall));
  g_assert_cmpuint (project->walls->len, ==, 0);
  apply (&project, edit_remove_block (block));
  g_assert_cmpuint (project->blocks->len, ==, 0);
  /* With no block there is nothing to build of. */
  g_autoptr (Wall) another = wall_new ();
  assert_refused (project, edit_add_wall (another), "Wall w1: its block is not in the project.");
  project_unref (project);
}

static void
test_what_is_not_there (void)
{
  static const char sentence[] = "What this would change is not in the project.";
  g_autoptr (Project) project = house ();
  Opening opening = window (0);
  Block block = block_default ();
  g_autoptr (Wall) wall = wall_new ();
  for (guint32 id = 0; id <= 4711; id += 4711)
    {
      opening.id.n = block.id.n = wall->id.n = id;
      assert_refused (project, edit_set_wall (wall), sentence);
      assert_refused (project, edit_remove_wall ((WallId){ id }), sentence);
      assert_refused (project, edit_move_wall ((WallId){ id }, 0), sentence);
      assert_refused (project, edit_set_block (&block), sentence);
      assert_refused (project, edit_remove_block ((BlockId){ id }), sentence);
      assert_refused (project, edit_add_opening ((WallId){ id }, &opening), sentence);
      assert_refused (project, edit_set_opening (&opening), sentence);
      assert_refused (project, edit_remove_opening ((OpeningId){ id }), sentence);
    }
  opening_clear (&opening);
  block_clear (&block);
}

static void
test_opening_is_set (void)
{
  Project *project = house ();
  g_autoptr (Project) before = project_ref (project);
  Opening opening = opening_copy (first_opening (project));
  g_clear_pointer (&opening.key, g_free);
  opening.x = LENGTH_MM (4800);
  apply (&project, edit_set_opening (&opening));
  g_assert_cmpint (first_opening (project)->x, ==, LENGTH_MM (4800));
  g_assert_cmpstr (first_opening (project)->key, ==, "o1");
  g_assert_cmpint (first_opening (before)->x, ==, LENGTH_MM (1000));
  opening.x = LENGTH_MM (4801);
  assert_refused (project, edit_set_opening (&opening),
                  "Wall w1: Opening o1 leaves the wall by 1 mm on the right.");
  opening_clear (&opening);
  project_unref (project);
}

/* Walls that are not of the edit stay the very same values, so that answers for them hold. */
static void
test_other_walls_are_shared (void)
{
  Project *project = house ();
  g_autoptr (Wall) wall = wall_new ();
  apply (&project, edit_add_wall (wall));
  g_autoptr (Project) before = project_ref (project);
  Opening opening = window (2000);
  apply (&project, edit_add_opening (project_wall_at (project, 1)->id, &opening));
  g_assert_true (project_wall_at (project, 0) == project_wall_at (before, 0));
  g_assert_true (project_wall_at (project, 1) != project_wall_at (before, 1));
  opening_clear (&opening);
  project_unref (project);
}

static void
test_block_is_set (void)
{
  Project *project = house ();
  Block block = block_copy (project_block_at (project, 0));
  g_clear_pointer (&block.key, g_free);
  block.height = LENGTH_MM (250);
  apply (&project, edit_set_block (&block));
  g_assert_cmpint (project_block_at (project, 0)->height, ==, LENGTH_MM (250));
  g_assert_cmpstr (project_block_at (project, 0)->key, ==, "b1");
  block.density = 0;
  assert_refused (project, edit_set_block (&block),
                  "Block \"b1\": its density must be above 0 and at most 20000 kg/m³.");
  block.id.n = 0;
  block.density = 400;
  apply (&project, edit_add_block (&block));
  g_assert_cmpstr (project_block_at (project, 1)->key, ==, "b2");
  g_assert_cmpuint (project_block_at (project, 1)->id.n, !=, project_block_at (project, 0)->id.n);
  block_clear (&block);
  project_unref (project);
}

/* A number that was given once is never another thing's. */
static void
test_numbers_are_not_used_again (void)
{
  Project *project = project_new ();
  g_autoptr (GHashTable) seen = g_hash_table_new (NULL, NULL);
  for (int round = 0; round < 50; round++)
    {
      g_autoptr (Wall) wall = wall_new ();
      Opening opening = window (1000);
      g_array_append_val (wall->openings, opening);
      apply (&project, edit_add_wall (wall));
      g_assert_true (g_hash_table_add (seen, GUINT_TO_POINTER (first_wall (project)->id.n)));
      g_assert_true (g_hash_table_add (seen, GUINT_TO_POINTER (first_opening (project)->id.n)));
      apply (&project, edit_remove_wall (first_wall (project)->id));
    }
  project_unref (project);
}

/* What an edit was made from may be thrown away before it is applied. */
static void
test_edit_owns_what_it_has (void)
{
  Project *project = house ();
  char *text = g_strdup ("Trial");
  Opening opening = window (4000);
  Edit *heading = edit_project (FIELD_TITLE, text);
  Edit *first = edit_add_opening (first_wall (project)->id, &opening);
  g_free (text);
  opening_clear (&opening);
  Edit *second = edit_copy (first);
  Edit *third = edit_copy (heading);
  edit_free (first);
  edit_free (heading);
  apply (&project, second);
  apply (&project, third);
  g_assert_cmpstr (project->title, ==, "Trial");
  g_assert_cmpuint (first_wall (project)->openings->len, ==, 2);
  project_unref (project);
  edit_free (NULL);
}

/* The same edit applied to the same project gives the same, whenever. */
static void
test_any_edit (void)
{
  guint done = 0, refused = 0;
  Project *project = house ();
  for (int round = 0; round < 5000; round++)
    {
      g_autoptr (GError) error = NULL;
      g_autoptr (Project) before = deep_copy (project);
      Edit *edit = any_edit (project);
      Project *next = project_edit (project, edit, &error);
      g_assert_true (project_equal (project, before));
      g_assert_cmpint (next == NULL, ==, error != NULL);
      if (next != NULL)
        {
          g_autofree char *fault = project_fault (next);
          g_autoptr (Edit) copy = edit_copy (edit);
          g_autoptr (Project) again = project_edit (before, copy, NULL);
          g_assert_cmpstr (fault, ==, NULL);
          g_assert_true (project_equal (next, again));
          g_assert_cmpuint (next->next, >=, project->next);
          project_unref (project);
          project = next;
          done++;
        }
      else
        {
          g_assert_error (error, MODEL_ERROR, MODEL_ERROR_REFUSED);
          g_assert_true (g_str_has_suffix (error->message, "."));
          refused++;
        }
      edit_free (edit);
    }
  project_unref (project);
  g_assert_cmpuint (done, >, 1000);
  g_assert_cmpuint (refused, >, 1000);
}

/* Two walls, a book with a point at their corner and one on the second, and a diagonal. */
static Project *
surveyed (void)
{
  Project *project = house ();
  g_autoptr (Wall) wall = wall_new ();
  apply (&project, edit_add_wall (wall));
  g_autoptr (Survey) survey = survey_new ();
  WallId first = project_wall_at (project, 0)->id, second = project_wall_at (project, 1)->id;
  Reading *corner = survey_add_reading (survey);
  corner->given = READING_BACK;
  corner->back = LENGTH_MM (1500);
  reading_add_place (corner, first, LENGTH_MM (6000));
  reading_add_place (corner, second, 0);
  reading_add_place (survey_add_reading (survey), second, LENGTH_MM (3000));
  Diagonal *diagonal = survey_add_diagonal (survey);
  diagonal->along = first;
  diagonal->across = second;
  diagonal->length = LENGTH_MM (8485);
  apply (&project, edit_set_survey (survey));
  g_assert_true (survey_equal (project->survey, survey));
  return project;
}

static void
test_survey_is_set (void)
{
  g_autoptr (Project) project = surveyed ();
  g_autoptr (Project) before = project_ref (project);
  apply (&project, edit_set_survey (NULL));
  g_assert_null (project->survey);
  g_assert_nonnull (before->survey);
  g_assert_false (project_equal (project, before));
}

/* Of the work: all of them, or a sentence. */
static void
test_rates_are_set (void)
{
  g_autoptr (Project) project = house ();
  g_autoptr (Project) before = project_ref (project);
  WorkRates rates = work_rates_default ();
  g_assert_true (work_rates_equal (&project->rates, &rates));
  rates.given = WORK_GANG | WORK_MINUTES_A_CUT;
  rates.gang = 3;
  rates.minutes_a_cut = 0;
  apply (&project, edit_set_rates (&rates));
  g_assert_true (work_rates_equal (&project->rates, &rates));
  g_assert_false (project_equal (project, before));
  rates.gang = 0;
  assert_refused (project, edit_set_rates (&rates), "Persons at work: 0 is not within 1 to 1000.");
  rates = work_rates_default ();
  rates.hours_a_day = 0;
  assert_refused (project, edit_set_rates (&rates),
                  "Hours a day: it must be more than 0, and 24 at most.");
  rates = work_rates_default ();
  rates.minutes_a_metre = G_MAXDOUBLE;
  assert_refused (project, edit_set_rates (&rates),
                  "Minutes a metre of levelling bed: it must be 0 or more, and 600 at most.");
  rates = work_rates_default ();
  rates.rise = 1;
  assert_refused (project, edit_set_rates (&rates),
                  "How far a wall rises in a day: it must be from 1 mm to 1 km.");
  rates = work_rates_default ();
  apply (&project, edit_set_rates (&rates));
  g_assert_true (project_equal (project, before));
}

/* What the survey said of a wall goes with it; the readings stay. */
static void
test_survey_forgets_a_wall (void)
{
  g_autoptr (Project) project = surveyed ();
  WallId first = project_wall_at (project, 0)->id, second = project_wall_at (project, 1)->id;
  g_autoptr (Project) before = project_ref (project);
  apply (&project, edit_remove_wall (second));
  g_assert_cmpuint (project->survey->readings->len, ==, 2);
  g_assert_cmpuint (survey_reading (project->survey, 0)->places->len, ==, 1);
  g_assert_cmpuint (reading_place (survey_reading (project->survey, 0), 0)->wall.n, ==, first.n);
  g_assert_cmpuint (survey_reading (project->survey, 1)->places->len, ==, 0);
  g_assert_cmpuint (project->survey->diagonals->len, ==, 0);
  g_assert_true (survey_names_wall (before->survey, second));
}

static void
test_survey_is_refused (void)
{
  g_autoptr (Project) project = surveyed ();
  const char *missing = "What this would change is not in the project.";
  Survey *survey = survey_copy (project->survey);
  reading_add_place (&g_array_index (survey->readings, Reading, 0), (WallId){ 4711 }, 0);
  assert_refused (project, edit_set_survey (survey), missing);
  survey_unref (survey);
  survey = survey_copy (project->survey);
  g_array_index (survey->diagonals, Diagonal, 0).across.n = 4711;
  assert_refused (project, edit_set_survey (survey), missing);
  survey_unref (survey);
  survey = survey_copy (project->survey);
  g_array_index (survey->diagonals, Diagonal, 0).across
      = g_array_index (survey->diagonals, Diagonal, 0).along;
  assert_refused (project, edit_set_survey (survey),
                  "Diagonal 1: A diagonal goes across a corner of two walls, not of one.");
  survey_unref (survey);
  survey = survey_copy (project->survey);
  g_array_index (survey->readings, Reading, 0).back = LENGTH_MM (20001);
  assert_refused (project, edit_set_survey (survey),
                  "Row 1: The backsight is 20001 mm; it must be from -20000 to 20000 mm.");
  survey_unref (survey);
  survey = survey_copy (project->survey);
  survey->given |= SURVEY_LEAST;
  survey->least = LENGTH_MM (30);
  assert_refused (project, edit_set_survey (survey),
                  "The wanted levelling bed, 25 mm, is not between the least, 30 mm, and the "
                  "thickest, 40 mm.");
  survey_unref (survey);
}

/* Numbers of walls do not count, their places in the list do. */
static void
test_survey_is_compared_by_content (void)
{
  g_autoptr (Project) a = surveyed ();
  g_autoptr (Project) b = house ();
  g_autoptr (Wall) wall = wall_new ();
  apply (&b, edit_add_wall (wall));
  apply (&b, edit_remove_wall (project_wall_at (b, 1)->id));
  apply (&b, edit_add_wall (wall));
  g_assert_false (project_equal (a, b));
  g_autoptr (Survey) survey = survey_copy (a->survey);
  for (guint i = 0; i < survey->readings->len; i++)
    {
      GArray *places = survey_reading (survey, i)->places;
      for (guint j = 0; j < places->len; j++)
        {
          SurveyPlace *place = &g_array_index (places, SurveyPlace, j);
          place->wall = place->wall.n == project_wall_at (a, 0)->id.n ? project_wall_at (b, 0)->id
                                                                      : project_wall_at (b, 1)->id;
        }
    }
  g_array_index (survey->diagonals, Diagonal, 0).along = project_wall_at (b, 0)->id;
  g_array_index (survey->diagonals, Diagonal, 0).across = project_wall_at (b, 1)->id;
  apply (&b, edit_set_survey (survey));
  g_assert_cmpuint (project_wall_at (a, 1)->id.n, !=, project_wall_at (b, 1)->id.n);
  g_assert_true (project_equal (a, b));
  g_array_index (survey->readings, Reading, 0).back += 1;
  apply (&b, edit_set_survey (survey));
  g_assert_false (project_equal (a, b));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/edit/heading", test_heading);
  g_test_add_func ("/edit/wall-is-added", test_wall_is_added);
  g_test_add_func ("/edit/keys-are-given", test_keys_are_given);
  g_test_add_func ("/edit/wall-is-set", test_wall_is_set);
  g_test_add_func ("/edit/wall-is-refused", test_wall_is_refused);
  g_test_add_func ("/edit/walls-move", test_walls_move);
  g_test_add_func ("/edit/things-are-removed", test_things_are_removed);
  g_test_add_func ("/edit/what-is-not-there", test_what_is_not_there);
  g_test_add_func ("/edit/opening-is-set", test_opening_is_set);
  g_test_add_func ("/edit/other-walls-are-shared", test_other_walls_are_shared);
  g_test_add_func ("/edit/block-is-set", test_block_is_set);
  g_test_add_func ("/edit/numbers-are-not-used-again", test_numbers_are_not_used_again);
  g_test_add_func ("/edit/owns-what-it-has", test_edit_owns_what_it_has);
  g_test_add_func ("/edit/survey-is-set", test_survey_is_set);
  g_test_add_func ("/edit/rates-are-set", test_rates_are_set);
  g_test_add_func ("/edit/survey-forgets-a-wall", test_survey_forgets_a_wall);
  g_test_add_func ("/edit/survey-is-refused", test_survey_is_refused);
  g_test_add_func ("/edit/survey-is-compared-by-content", test_survey_is_compared_by_content);
  g_test_add_func ("/edit/any", test_any_edit);
  return g_test_run ();
}
