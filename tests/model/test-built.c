/* test-built.c - figures of the site: taken in, taken back, refused; heights by hand */
#include "model/built-edit.h"

#include <string.h>

#include "edited.h"
#include "model/outline.h"
#include "model/plan-edit.h"

#define MM(mm) LENGTH_MM (mm)

/* Where each course was to lie, and two perpends in each. */
static GArray *
laid_of (gint32 n, Length first_bed, Length bed)
{
  GArray *all = g_array_new (FALSE, FALSE, sizeof (LaidCourse));

  g_array_set_clear_func (all, (GDestroyNotify) laid_course_clear);
  for (gint32 i = 1; i <= n; i++)
    {
      LaidCourse laid = laid_course_new (i);

      for (int k = 1; k < 3; k++)
        {
          LaidPerpend perpend = { MM (602 * k - 300 * (i % 2)), PERPEND_ALL };

          g_array_append_val (laid.perpends, perpend);
        }
      laid.given = LAID_BOTTOM;
      laid.bottom = first_bed + (i - 1) * (MM (200) + bed);
      g_array_append_val (all, laid);
    }
  return all;
}

/* A wall 6000 x 2500 of blocks 200 high, five courses standing as planned on beds of 20 and 2 mm,
 * a window and a door. */
static Project *
site (void)
{
  g_autoptr (Wall) wall = wall_new ();
  g_autoptr (GArray) laid = laid_of (5, MM (20), MM (2));
  g_autoptr (GError) error = NULL;
  Opening window = opening_default (OPENING_WINDOW), door = opening_default (OPENING_DOOR);
  Project *project;

  window.x = MM (1800);
  door.x = MM (4000);
  g_array_append_val (wall->openings, window);
  g_array_append_val (wall->openings, door);
  project = edited (project_new (), edit_add_wall (wall));
  g_autoptr (Wall) up = built_set_courses (project_wall_at (project, 0), 5, laid, NULL, &error);
  g_assert_no_error (error);
  return edited (project, edit_set_wall (up));
}

static const Wall *
wall_of (const Project *project)
{
  return project_wall_at (project, 0);
}

/* Takes the wall; NULL where it is refused, and the sentence is then `error`'s. */
static Project *
try_wall (const Project *project, Wall *wall, GError **error)
{
  g_autoptr (Edit) edit = wall ? edit_set_wall (wall) : NULL;

  wall_unref (wall);
  return edit ? project_edit (project, edit, error) : NULL;
}

static Project *
with (Project *project, Wall *wall)
{
  g_autoptr (GError) error = NULL;
  Project *next = try_wall (project, wall, &error);

  g_assert_no_error (error);
  project_unref (project);
  return next;
}

static Project *
with_top (Project *project, gint32 course, double top)
{
  const Length left = length_from_mm (top);

  return with (project, built_set_top (wall_of (project), course, &left, NULL, NULL));
}

/* --- heights --- */

typedef struct
{
  const char *what;
  double tops[5]; /* measured; 0: not */
  double bottoms[5];
} HeightRow;

static const HeightRow height_rows[] = {
  { "nothing measured: as written down", { 0 }, { 20, 222, 424, 626, 828 } },
  { "the third 6 mm high: the levelling bed has it below, the beds above stay as laid",
    { 0, 0, 630, 0, 0 },
    { 26, 228, 430, 632, 834 } },
  { "and the fifth 2 mm high: two equal beds between, of 0 mm each",
    { 0, 0, 630, 0, 1030 },
    { 26, 228, 430, 630, 830 } },
  { "one thick and one thin: equal beds of 4 mm from 1 to 4",
    { 222, 0, 0, 834, 0 },
    { 22, 226, 430, 634, 836 } },
  { "so low that the levelling bed is not enough: two beds of 1 mm on the foundation",
    { 0, 0, 602, 0, 0 },
    { 0, 201, 402, 604, 806 } },
  { "as low as it can be: dry", { 0, 0, 600, 0, 0 }, { 0, 200, 400, 602, 804 } },
  { "the first, low", { 205, 0, 0, 0, 0 }, { 5, 207, 409, 611, 813 } },
};

static void
test_heights (void)
{
  for (guint row = 0; row < G_N_ELEMENTS (height_rows); row++)
    {
      const HeightRow *rows = &height_rows[row];
      g_autoptr (Project) project = site ();

      g_test_message ("%s", rows->what);
      for (gint32 i = 0; i < 5; i++)
        if (rows->tops[i] > 0)
          project = with_top (project, i + 1, rows->tops[i]);
      const Wall *wall = wall_of (project);
      const Laying laying = laying_resolve (&wall->laying, project_block_at (project, 0));
      g_autofree Length *bottoms = built_bottoms (wall->built, &laying, MM (200));
      for (gint32 i = 0; i < 5; i++)
        g_assert_cmpint (bottoms[i], ==, length_from_mm (rows->bottoms[i]));
    }
}

/* Of both ends the mean counts. */
static void
test_both_ends (void)
{
  g_autoptr (Project) project = site ();
  const Length left = MM (622), right = MM (630);
  Length top;

  project = with (project, built_set_top (wall_of (project), 3, &left, &right, NULL));
  g_assert_true (laid_course_top (built_course (wall_of (project)->built, 3), &top));
  g_assert_cmpint (top, ==, MM (626));
}

/* A file that says no more than how many courses stand: one bed above the other. */
static void
test_bottoms_left_out (void)
{
  g_autoptr (Project) project = site ();
  g_autoptr (Wall) wall = wall_copy (wall_of (project));
  Laying laying = laying_resolve (&wall->laying, project_block_at (project, 0));

  for (guint i = 0; i < 5; i++)
    g_array_index (wall->built->laid, LaidCourse, i).given = i == 2 ? LAID_BOTTOM : 0;
  g_array_index (wall->built->laid, LaidCourse, 2).bottom = MM (430);
  laying.first_bed = MM (30);
  laying.bed = MM (1);
  g_autofree Length *bottoms = built_bottoms (wall->built, &laying, MM (200));
  g_assert_cmpint (bottoms[0], ==, MM (30));
  g_assert_cmpint (bottoms[1], ==, MM (231));
  g_assert_cmpint (bottoms[2], ==, MM (430));
  g_assert_cmpint (bottoms[4], ==, MM (832));
}

/* --- what cannot be --- */

static void
assert_refused (const Project *project, Wall *wall, GError *before, const char *sentence)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (Project) as_it_was = project_copy (project);
  g_autoptr (Project) next = try_wall (project, wall, &error);

  g_assert_null (next);
  if (before)
    {
      g_assert_null (error);
      error = before;
    }
  g_assert_error (error, MODEL_ERROR, MODEL_ERROR_REFUSED);
  g_assert_cmpstr (error->message, ==, sentence);
  g_assert_true (project_equal (project, as_it_was));
}

static void
assert_top_refused (const Project *project, gint32 course, double top, const char *sentence)
{
  const Length left = length_from_mm (top);
  GError *error = NULL;
  Wall *wall = built_set_top (wall_of (project), course, &left, NULL, &error);

  assert_refused (project, wall, error, sentence);
}

static void
test_refused (void)
{
  g_autoptr (Project) project = site ();
  g_autoptr (GArray) laid = laid_of (6, MM (20), MM (2));
  const Length long_wall = MM (20), short_wall = MM (4500), far = MM (5200);
  const WallId id = wall_of (project)->id;
  GError *error = NULL;
  Wall *wall;

  assert_top_refused (project, 6, 1200,
                      "Course 6 of w1 does not stand yet: say first how far it is laid.");
  assert_top_refused (project, 3, 599,
                      "Wall w1: Course 3 cannot end at 599 mm: 3 blocks one on the other reach 600 "
                      "mm at least.");
  project = with_top (project, 3, 630);
  assert_top_refused (project, 5, 1029.5,
                      "Wall w1: Course 5 cannot end at 1029.5 mm: course 3 ends at 630 mm, and a "
                      "block for each course above it reaches 1030 mm at least.");
  assert_top_refused (
      project, 2, 431,
      "Wall w1: Course 3 cannot end at 630 mm: course 2 ends at 431 mm, and a block "
      "for each course above it reaches 631 mm at least.");
  assert_top_refused (project, 5, 2700,
                      "Wall w1: Course 5 stands at 2500 mm, and the wall ends at 2500 mm: it can "
                      "be no lower than what stands of it.");
  wall = built_set_courses (wall_of (project), 8, laid, NULL, &error);
  assert_refused (project, wall, error, "w1 has no course 7: 8 courses cannot stand.");
  error = NULL;
  wall = built_set_courses (wall_of (project), -1, NULL, NULL, &error);
  assert_refused (project, wall, error, "-1 courses cannot stand; it must be 0 to 10000.");
  assert_refused (project, built_set_length (wall_of (project), &long_wall), NULL,
                  "Wall w1: The wall's length is 20 mm; it must be from 50 to 1000000 mm.");
  assert_refused (project, built_set_length (wall_of (project), &short_wall), NULL,
                  "Wall w1: Opening o2 leaves the wall by 400 mm on the right.");
  assert_refused (project,
                  built_set_opening (wall_of (project), wall_opening_at (wall_of (project), 1)->id,
                                     FIGURE_X, &far, NULL),
                  NULL, "Wall w1: Opening o2 leaves the wall by 100 mm on the right.");
  error = NULL;
  wall = built_set_opening (wall_of (project), (OpeningId){ 4711 }, FIGURE_X, &far, &error);
  assert_refused (project, wall, error, "w1 has no such opening.");
  g_assert_cmpuint (project_wall_at (project, 0)->id.n, ==, id.n);
}

/* A block so high that the courses would not stand one above the other. */
static void
test_block_refused (void)
{
  g_autoptr (Project) project = site ();
  g_autoptr (GError) error = NULL;
  Block block = block_copy (project_block_at (project, 0));

  block.height = MM (250);
  g_autoptr (Edit) edit = edit_set_block (&block);
  g_assert_null (project_edit (project, edit, &error));
  g_assert_error (error, MODEL_ERROR, MODEL_ERROR_REFUSED);
  g_assert_cmpstr (error->message, ==,
                   "Wall w1: Course 2 cannot end at 472 mm: course 1 ends at 270 mm, and a block "
                   "for each course above it reaches 520 mm at least.");
  block_clear (&block);
}

/* Each change of one thing of a file makes it one that cannot be. */
static void
test_faults (void)
{
  for (int what = 0; what < 16; what++)
    {
      g_autoptr (Project) project = site ();
      g_autoptr (Wall) wall = wall_copy (wall_of (project));
      Built *built = wall->built;
      LaidCourse *laid = &g_array_index (built->laid, LaidCourse, 2);
      LaidPerpend *first = &g_array_index (laid->perpends, LaidPerpend, 0);
      g_autofree char *none = wall_fault (wall, project_block_at (project, 0), NULL);
      g_autofree char *fault = NULL;

      g_assert_null (none);
      /* The perpends are the project's as well, which goes with this round. */
      switch (what)
        {
        case 0:
          built->courses = 4;
          break;
        case 1:
          built->courses = 6;
          break;
        case 2:
          laid->course = 2;
          break;
        case 3:
          built->courses = -1;
          break;
        case 4:
          first->x = 0;
          break;
        case 5:
          first->x = first[1].x;
          break;
        case 6:
          first->z = -2;
          break;
        case 7:
          laid->given |= LAID_TOP_RIGHT;
          laid->top_right = MM (626);
          break;
        case 8:
          laid->bottom = -1;
          break;
        case 9:
          laid->bottom = MM (421);
          break;
        case 10:
          built->given |= BUILT_PLUMB;
          built->plumb = MM (1001);
          break;
        case 11:
          built->given |= BUILT_BED_LEAST | BUILT_BED_MOST;
          built->bed_least = MM (3);
          built->bed_most = MM (2);
          break;
        case 12:
          built->given |= BUILT_PLANNED_LENGTH;
          built->planned_length = MM (49);
          break;
        case 13:
          laid->given |= LAID_TOP;
          laid->top = -1;
          break;
        case 14:
          laid->given |= LAID_OVER;
          laid->over = 3;
          break;
        default:
          wall->height = MM (828);
          break;
        }
      fault = wall_fault (wall, project_block_at (project, 0), NULL);
      g_test_message ("%d: %s", what, fault);
      g_assert_nonnull (fault);
      g_assert_true (g_str_has_suffix (fault, "."));
    }
}

/* --- taken in and taken back --- */

static void
test_length (void)
{
  g_autoptr (Project) project = site ();
  g_autoptr (Project) before = project_ref (project);
  const Length first = MM (6012), second = MM (5988);

  project = with (project, built_set_length (wall_of (project), &first));
  g_assert_cmpint (wall_of (project)->length, ==, MM (6012));
  g_assert_cmpint (wall_planned_length (wall_of (project)), ==, MM (6000));
  project = with (project, built_set_length (wall_of (project), &second));
  g_assert_cmpint (wall_of (project)->length, ==, MM (5988));
  g_assert_cmpint (wall_planned_length (wall_of (project)), ==, MM (6000));
  project = with (project, built_set_length (wall_of (project), NULL));
  g_assert_true (project_equal (project, before));
  project = with (project, built_set_length (wall_of (project), NULL));
  g_assert_true (project_equal (project, before));
}

static void
test_openings (void)
{
  for (OpeningFigure figure = 0; figure < N_FIGURES; figure++)
    {
      g_autoptr (Project) project = site ();
      g_autoptr (Project) before = project_ref (project);
      const OpeningId id = wall_opening_at (wall_of (project), 0)->id;
      const Length was = opening_figure (wall_opening (wall_of (project), id), figure);

      for (int i = 1; i < 3; i++)
        {
          const Length is = was + MM (7 * i);

          project = with (project, built_set_opening (wall_of (project), id, figure, &is, NULL));
          const Opening *opening = wall_opening (wall_of (project), id);
          g_assert_cmpint (opening_figure (opening, figure), ==, is);
          g_assert_cmpint (opening_planned (opening, figure), ==, was);
          for (OpeningFigure other = 0; other < N_FIGURES; other++)
            g_assert_cmpint (opening_is_measured (opening, other), ==, other == figure);
        }
      project = with (project, built_set_opening (wall_of (project), id, figure, NULL, NULL));
      g_assert_true (project_equal (project, before));
    }
}

static void
test_tops (void)
{
  g_autoptr (Project) project = site ();
  g_autoptr (Project) before = project_ref (project);

  project = with_top (project, 2, 425);
  g_assert_false (project_equal (project, before));
  project = with (project, built_set_top (wall_of (project), 2, NULL, NULL, NULL));
  g_assert_true (project_equal (project, before));
}

static void
test_figures (void)
{
  static const BuiltField fields[]
      = { BUILT_PLUMB, BUILT_BOW, BUILT_BOW_METRE, BUILT_BED_LEAST, BUILT_BED_MOST };

  for (guint i = 0; i < G_N_ELEMENTS (fields); i++)
    {
      g_autoptr (Project) project = site ();
      g_autoptr (Project) before = project_ref (project);
      const Length three = MM (3);

      project = with (project, built_set_figure (wall_of (project), fields[i], &three));
      g_assert_cmpuint (wall_of (project)->built->given, ==, fields[i]);
      g_assert_false (project_equal (project, before));
      project = with (project, built_set_figure (wall_of (project), fields[i], NULL));
      g_assert_true (project_equal (project, before));
    }
}

/* Courses that are taken back take with them what was said of them; none at all, and nothing else
 * measured, is nothing built. */
static void
test_courses (void)
{
  g_autoptr (Project) project = site ();
  g_autoptr (GArray) laid = laid_of (8, MM (20), MM (2));

  project = with_top (project, 4, 830);
  project = with (project, built_set_courses (wall_of (project), 8, laid, "2026-05-04", NULL));
  g_assert_cmpint (wall_standing (wall_of (project)), ==, 8);
  g_assert_cmpint (built_course (wall_of (project)->built, 4)->top, ==, MM (830));
  g_assert_cmpstr (wall_of (project)->built->as_of, ==, "2026-05-04");
  g_assert_cmpuint (built_course (wall_of (project)->built, 8)->perpends->len, ==, 2);
  project = with (project, built_set_courses (wall_of (project), 3, NULL, "", NULL));
  g_assert_cmpint (wall_standing (wall_of (project)), ==, 3);
  g_assert_cmpuint (wall_of (project)->built->laid->len, ==, 3);
  g_assert_cmpstr (wall_of (project)->built->as_of, ==, "");
  g_autoptr (Wall) none = built_set_courses (wall_of (project), 0, NULL, NULL, NULL);
  g_assert_nonnull (none->built);
  g_clear_pointer (&none->built->as_of, g_free);
  g_autoptr (Wall) nothing = built_set_courses (none, 0, NULL, NULL, NULL);
  g_assert_null (nothing->built);
}

/* All that was said of the site taken away is the wall as it was planned. */
static void
test_take_all (void)
{
  g_autoptr (Project) project = site ();
  const OpeningId id = wall_opening_at (wall_of (project), 0)->id;
  const Length length = MM (6012), x = MM (1790), sill = MM (905);

  project = with (project, built_set_courses (wall_of (project), 0, NULL, NULL, NULL));
  g_autoptr (Project) planned = project_ref (project);
  g_autoptr (GArray) laid = laid_of (3, MM (20), MM (2));
  project = with (project, built_set_courses (wall_of (project), 3, laid, "today", NULL));
  project = with_top (project, 2, 430);
  project = with (project, built_set_length (wall_of (project), &length));
  project = with (project, built_set_opening (wall_of (project), id, FIGURE_X, &x, NULL));
  project = with (project, built_set_opening (wall_of (project), id, FIGURE_SILL, &sill, NULL));
  g_autoptr (Wall) wall = wall_copy (wall_of (project));
  built_take_all (wall);
  g_assert_true (wall_equal (wall, wall_of (planned)));
}

static void
test_tolerances (void)
{
  g_autoptr (Project) project = site ();
  g_autoptr (Project) before = project_ref (project);
  g_autoptr (GError) error = NULL;
  const Length five = MM (5), much = MM (201);

  for (ToleranceKind kind = 0; kind < N_TOLERANCES; kind++)
    {
      ToleranceKind back;

      g_assert_true (tolerance_from_word (tolerance_word (kind), &back));
      g_assert_cmpint (back, ==, kind);
      project = edited (project, edit_set_tolerance (kind, &five));
      g_assert_true (project->tolerances[kind].given);
      g_assert_false (project_equal (project, before));
      project = edited (project, edit_set_tolerance (kind, NULL));
      g_assert_true (project_equal (project, before));
    }
  g_autoptr (Edit) edit = edit_set_tolerance (TOLERANCE_BED, &much);
  g_assert_null (project_edit (project, edit, &error));
  g_assert_cmpstr (error->message, ==,
                   "The tolerance \"bed\" is 201 mm; it must be from 0 to 200 mm.");
}

/* --- in plan --- */

static Project *
house (void)
{
  g_autofree char *fault = NULL;
  g_autoptr (GArray) sides = outline_parse ("8000 x 6000", &fault);
  g_autoptr (GPtrArray) walls = NULL;

  g_assert_null (fault);
  walls = outline_walls (sides, MM (250), MM (2500), 0, 0);
  return edited (project_new (), edit_walls (walls));
}

/* A measured length opens no corner; what is pushed then changes both lengths. */
static void
test_meetings (void)
{
  g_autoptr (Project) project = house ();
  g_autoptr (GArray) before = plan_meetings (project);
  const Length measured = wall_of (project)->length + MM (12);
  const Length planned = wall_of (project)->length;
  g_autoptr (GError) error = NULL;

  project = with (project, built_set_length (wall_of (project), &measured));
  g_autoptr (GArray) after = plan_meetings (project);
  g_assert_cmpuint (after->len, ==, before->len);
  g_assert_cmpuint (after->len, ==, 4);
  for (guint i = 0; i < after->len; i++)
    {
      const Meeting *meeting = &g_array_index (after, Meeting, i);

      g_assert_cmpint (meeting->kind, ==, MEET_CORNER);
      g_assert_cmpint (meeting->made, ==, g_array_index (before, Meeting, i).made);
    }
  g_autoptr (Wall) longer = wall_copy (wall_of (project));
  longer->length += MM (100);
  project = edited (project, plan_resize (project, longer, SIDE_RIGHT, &error));
  g_assert_no_error (error);
  g_assert_cmpint (wall_of (project)->length, ==, measured + MM (100));
  g_assert_cmpint (wall_planned_length (wall_of (project)), ==, planned + MM (100));
  g_autoptr (GArray) again = plan_meetings (project);
  g_assert_cmpuint (again->len, ==, 4);
}

/* Of a wall that nothing meets: drawn longer, it was planned longer. */
static void
test_resize (void)
{
  g_autoptr (Project) project = site ();
  const Length measured = MM (6012);
  g_autoptr (GError) error = NULL;

  project = with (project, built_set_length (wall_of (project), &measured));
  g_autoptr (Wall) longer = wall_copy (wall_of (project));
  longer->length = MM (6500);
  project = edited (project, plan_resize (project, longer, SIDE_RIGHT, &error));
  g_assert_cmpint (wall_of (project)->length, ==, MM (6500));
  g_assert_cmpint (wall_planned_length (wall_of (project)), ==, MM (6488));
}

/* The left end moves: what stands keeps its place on the site. */
static void
test_shift (void)
{
  g_autoptr (Project) project = site ();
  g_autoptr (Wall) moved = wall_copy (wall_of (project));
  const GArray *was = built_course (wall_of (project)->built, 2)->perpends, *is;

  wall_shift (moved, MM (100));
  is = built_course (moved->built, 2)->perpends;
  g_assert_cmpuint (is->len, ==, was->len);
  for (guint i = 0; i < is->len; i++)
    g_assert_cmpint (g_array_index (is, LaidPerpend, i).x, ==,
                     g_array_index (was, LaidPerpend, i).x + MM (100));
  wall_shift (moved, MM (-800));
  g_assert_cmpuint (built_course (moved->built, 2)->perpends->len, ==, 1);
}

/* A window that is drawn elsewhere is not where it was measured. */
static void
test_drawn_elsewhere (void)
{
  g_autoptr (Project) project = site ();
  const OpeningId id = wall_opening_at (wall_of (project), 0)->id;
  const Length is = MM (1812);

  project = with (project, built_set_opening (wall_of (project), id, FIGURE_X, &is, NULL));
  Opening opening = opening_copy (wall_opening (wall_of (project), id));
  opening_move (&opening, MM (2000));
  g_assert_false (opening_is_measured (&opening, FIGURE_X));
  g_assert_cmpint (opening_planned (&opening, FIGURE_X), ==, MM (2000));
  opening_clear (&opening);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/built/heights", test_heights);
  g_test_add_func ("/built/both-ends", test_both_ends);
  g_test_add_func ("/built/bottoms-left-out", test_bottoms_left_out);
  g_test_add_func ("/built/refused", test_refused);
  g_test_add_func ("/built/block-refused", test_block_refused);
  g_test_add_func ("/built/faults", test_faults);
  g_test_add_func ("/built/length", test_length);
  g_test_add_func ("/built/openings", test_openings);
  g_test_add_func ("/built/tops", test_tops);
  g_test_add_func ("/built/figures", test_figures);
  g_test_add_func ("/built/courses", test_courses);
  g_test_add_func ("/built/take-all", test_take_all);
  g_test_add_func ("/built/tolerances", test_tolerances);
  g_test_add_func ("/built/meetings", test_meetings);
  g_test_add_func ("/built/resize", test_resize);
  g_test_add_func ("/built/shift", test_shift);
  g_test_add_func ("/built/drawn-elsewhere", test_drawn_elsewhere);
  return g_test_run ();
}
