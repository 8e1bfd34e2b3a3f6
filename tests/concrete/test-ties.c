/* test-ties.c - where ties of butted walls lie, worked by hand */
#include "concrete/ties.h"

#include "model/edit.h"
#include "model/outline.h"
#include "model/plan-edit.h"
#include "edited.h"

#define MM(mm) LENGTH_MM (mm)

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Block, block_clear)

static const Ties two_strips = { TIES_ALL, TIE_STRIP, 2, 2 };
static const Ties angles = { TIES_ALL, TIE_ANGLE, 1, 1 };

/* 4 m of five courses: their tops at 220, 422, 624, 826 and 1028 mm. */
static Wall *
low_wall (void)
{
  Wall *wall = wall_new ();

  wall->length = MM (4000);
  wall->height = MM (1028);
  return wall;
}

static void
butt (Wall *wall, Side side, const Ties *ties)
{
  wall->ends[side] = (End){
    .given = TRUE, .has_return = TRUE, .ret = MM (250), .through = THROUGH_ALL, .ties = *ties
  };
}

static char *
rows_text (const Wall *wall)
{
  g_auto (Block) block = block_default ();
  g_autoptr (GArray) rows = ties_of_wall (wall, &block);
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < rows->len; i++)
    {
      const TieRow *row = &g_array_index (rows, TieRow, i);

      g_string_append_printf (text, "%s%d@%g: %d %s %s %g", i > 0 ? "; " : "", row->course,
                              length_to_mm (row->z), row->abreast, tie_kind_word (row->kind),
                              row->right ? "right of" : "left of", length_to_mm (row->x));
    }
  return g_string_free (text, FALSE);
}

static void
assert_rows (const Wall *wall, const char *expected)
{
  g_autofree char *text = rows_text (wall);

  g_assert_cmpstr (text, ==, expected);
}

/* In every second of five courses, at either end; none on the top course, which has no bed on it.
 */
static void
test_ends (void)
{
  g_autoptr (Wall) wall = low_wall ();

  assert_rows (wall, "");
  butt (wall, SIDE_LEFT, &two_strips);
  assert_rows (wall, "2@422: 2 strip right of 250; 4@826: 2 strip right of 250");
  butt (wall, SIDE_RIGHT, &angles);
  assert_rows (wall, "1@220: 1 angle left of 3750; 2@422: 2 strip right of 250; "
                     "2@422: 1 angle left of 3750; 3@624: 1 angle left of 3750; "
                     "4@826: 2 strip right of 250; 4@826: 1 angle left of 3750");
  wall->ends[SIDE_RIGHT].through = THROUGH_ODD;
  assert_rows (wall, "2@422: 2 strip right of 250; 4@826: 2 strip right of 250");
}

/* A wall that another parts is tied on both sides of it. */
static void
test_parted (void)
{
  g_autoptr (Wall) wall = low_wall ();
  Tee tee = { .x = MM (2000), .ret = MM (115), .through = THROUGH_ALL, .ties = two_strips };

  g_array_append_val (wall->tees, tee);
  assert_rows (wall, "2@422: 2 strip left of 2000; 2@422: 2 strip right of 2115; "
                     "4@826: 2 strip left of 2000; 4@826: 2 strip right of 2115");
}

/* Beside an opening that begins at the face there is nothing to tie. */
static void
test_opening (void)
{
  g_autoptr (Wall) wall = low_wall ();
  Opening opening = { .id.n = 1,
                      .key = g_strdup ("o1"),
                      .name = g_strdup (""),
                      .kind = OPENING_WINDOW,
                      .x = MM (250),
                      .width = MM (1000),
                      .sill = MM (300),
                      .height = MM (300) };

  g_array_append_val (wall->openings, opening);
  butt (wall, SIDE_LEFT, &two_strips);
  assert_rows (wall, "4@826: 2 strip right of 250");
}

/* A wall that slopes down to 500 mm at its right end is tied there in two beds; where the other
 * wall ends at 700 mm, in those below it. */
static void
test_heights (void)
{
  g_autoptr (Wall) wall = low_wall ();

  butt (wall, SIDE_LEFT, &angles);
  butt (wall, SIDE_RIGHT, &angles);
  wall->ends[SIDE_LEFT].up_to = MM (700);
  top_list_add (wall->tops, 0, 0);
  top_list_add (wall->tops, MM (3750), MM (528));
  top_list_add (wall->tops, MM (4000), MM (528));
  assert_rows (wall, "1@220: 1 angle right of 250; 1@220: 1 angle left of 3750; "
                     "2@422: 1 angle right of 250; 2@422: 1 angle left of 3750; "
                     "3@624: 1 angle right of 250");
}

/* 8 x 6 m with a partition of 250 mm from front to back, butted at both ends. */
static Project *
house (void)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *fault = NULL;
  g_autoptr (GArray) sides = outline_parse ("8000 x 6000", &fault);
  g_autoptr (GPtrArray) walls = outline_walls (sides, MM (250), MM (1028), 0, 0);
  Project *project = edited (project_new (), edit_walls (walls));
  g_autoptr (Wall) partition = plan_partition (project, RUNS_NORTH, MM (3000), MM (3000),
                                               project_block_at (project, 0), &error);

  g_assert_no_error (error);
  project = edited (project, edit_add_wall (partition));
  for (guint end = 0; end < 3; end += 2)
    {
      Meeting meeting;

      g_assert_true (plan_meeting_between (project, project_wall_at (project, 4)->id,
                                           project_wall_at (project, end)->id, &meeting));
      project = edited (project, plan_make_edit (project, &meeting, MADE_SECOND_THROUGH));
    }
  return project;
}

/* What is usual: a strip no farther than 300 mm from the next, two in a wall of 250 mm. The front
 * shows them on end where the partition is; the other walls show none. */
static void
test_into (void)
{
  g_autoptr (Project) project = house ();
  const Wall *partition = project_wall_at (project, 4);
  g_autoptr (GArray) own = ties_of_wall (partition, project_block_at (project, 0));
  g_autoptr (GArray) front = ties_into_wall (project, 0);
  g_autoptr (GArray) right = ties_into_wall (project, 1);
  const TieEnd *first = &g_array_index (front, TieEnd, 0);

  g_assert_cmpint (partition->ends[SIDE_LEFT].ties.every, ==, 1);
  g_assert_cmpint (ties_count (own), ==, 2 * 4 * 2);
  g_assert_cmpuint (front->len, ==, 4);
  g_assert_cmpuint (right->len, ==, 0);
  g_assert_cmpint (first->course, ==, 1);
  g_assert_cmpint (first->x, ==, MM (3000));
  g_assert_cmpint (first->width, ==, MM (250));
  g_assert_cmpint (first->z, ==, MM (220));
  g_assert_cmpint (first->abreast, ==, 2);
  g_assert_cmpuint (first->butted.n, ==, partition->id.n);
}

/* The other wall is made to stop: its ties are those that were there. Bonded, there are none. */
static void
test_turned (void)
{
  g_autoptr (Project) project = house ();
  const Ties mesh = { TIES_ALL, TIE_MESH, 3, 1 };
  Meeting meeting;
  const WallId partition = project_wall_at (project, 4)->id,
               front = project_wall_at (project, 0)->id;

  g_assert_true (plan_meeting_between (project, partition, front, &meeting));
  project = edited (project, plan_ties_edit (project, &meeting, &mesh));
  g_assert_true (plan_meeting_between (project, partition, front, &meeting));
  g_assert_true (ties_equal (plan_ties (project, &meeting), &mesh));
  project = edited (project, plan_make_edit (project, &meeting, MADE_FIRST_THROUGH));
  g_assert_true (plan_meeting_between (project, partition, front, &meeting));
  g_assert_cmpint (plan_butted (&meeting), ==, 1);
  g_assert_true (ties_equal (plan_ties (project, &meeting), &mesh));
  g_assert_true (ties_equal (&wall_tee_at (project_wall_at (project, 0), 0)->ties, &mesh));
  g_assert_false (project_wall_at (project, 4)->ends[SIDE_LEFT].ties.given);
  project = edited (project, plan_make_edit (project, &meeting, MADE_FIRST_ODD));
  g_assert_true (plan_meeting_between (project, partition, front, &meeting));
  g_assert_null (plan_ties (project, &meeting));
}

/* Of low blocks every second course; of those beyond 300 mm every one; angles where not level. */
static void
test_usual (void)
{
  const struct
  {
    double height, thickness;
    gboolean level;
    gint32 every, abreast;
    TieKind kind;
  } rows[] = {
    { 200, 250, TRUE, 1, 2, TIE_STRIP }, { 124, 115, TRUE, 2, 1, TIE_STRIP },
    { 249, 200, TRUE, 1, 1, TIE_STRIP }, { 624, 365, FALSE, 1, 2, TIE_ANGLE },
    { 98, 100, TRUE, 3, 1, TIE_STRIP },
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_auto (Block) block = block_default ();
      Ties ties;

      block.height = MM (rows[i].height);
      block.thickness = MM (rows[i].thickness);
      ties = ties_default (&block, MM (2), rows[i].level);
      g_assert_cmpint (ties.every, ==, rows[i].every);
      g_assert_cmpint (ties.abreast, ==, rows[i].abreast);
      g_assert_cmpint (ties.kind, ==, rows[i].kind);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/ties/at-ends", test_ends);
  g_test_add_func ("/ties/on-both-sides-of-a-gap", test_parted);
  g_test_add_func ("/ties/not-beside-an-opening", test_opening);
  g_test_add_func ("/ties/as-high-as-both-walls", test_heights);
  g_test_add_func ("/ties/seen-in-the-other-wall", test_into);
  g_test_add_func ("/ties/go-with-the-wall-that-stops", test_turned);
  g_test_add_func ("/ties/usual", test_usual);
  return g_test_run ();
}
