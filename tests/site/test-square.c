/* test-square.c - out of square in millimetres, diagonals, 3-4-5 */
#include "site/square.h"

#include <math.h>

static void
test_root (void)
{
  for (gint64 n = 0; n < 3000; n++)
    {
      gint64 root = whole_root (n);
      /* the nearest: (root - 1/2)^2 <= n < (root + 1/2)^2 */
      g_assert_cmpint (root * root - root, <, n + (n == 0));
      g_assert_cmpint (n, <=, root * root + root);
    }
  g_assert_cmpint (whole_root ((gint64) 1 << 60), ==, (gint64) 1 << 30);
  for (int i = 0; i < 5000; i++)
    {
      gint64 root = g_test_rand_int_range (1, G_MAXINT32);
      g_assert_cmpint (whole_root (root * root), ==, root);
      g_assert_cmpint (whole_root (root * root + root), ==, root);
      g_assert_cmpint (whole_root (root * root + root + 1), ==, root + 1);
    }
}

static void
test_ratio (void)
{
  g_assert_cmpint (whole_ratio (7, 2), ==, 4);
  g_assert_cmpint (whole_ratio (-7, 2), ==, -4);
  g_assert_cmpint (whole_ratio (7, 3), ==, 2);
  g_assert_cmpint (whole_ratio (-7, 3), ==, -2);
  g_assert_cmpint (whole_ratio (0, 5), ==, 0);
}

/* 13.1: "the 3-4-5 triangle and its multiples; the biggest that the tape allows: 15-20-25 ft"
 * (a framing handbook, boulderlibrary.net/framing/checking-reference.html). */
static void
test_345 (void)
{
  const Length foot = LENGTH_MM (304.8);
  Square345 check = square_345 (18 * foot, 24 * foot, 25 * foot, foot);
  g_assert_cmpint (check.first, ==, 15 * foot);
  g_assert_cmpint (check.second, ==, 20 * foot);
  g_assert_cmpint (check.diagonal, ==, 25 * foot);
  /* the long leg along the long wall, whichever that is */
  check = square_345 (LENGTH_MM (8400), LENGTH_MM (5200), LENGTH_MM (30000), LENGTH_MM (100));
  g_assert_cmpint (check.first, ==, LENGTH_MM (6800));
  g_assert_cmpint (check.second, ==, LENGTH_MM (5100));
  g_assert_cmpint (check.diagonal, ==, LENGTH_MM (8500));
  /* a short tape */
  check = square_345 (LENGTH_MM (8400), LENGTH_MM (5200), LENGTH_MM (5000), LENGTH_MM (100));
  g_assert_cmpint (check.diagonal, ==, LENGTH_MM (5000));
  /* too small for one */
  check = square_345 (LENGTH_MM (200), LENGTH_MM (5200), LENGTH_MM (5000), LENGTH_MM (100));
  g_assert_cmpint (check.diagonal, ==, 0);
}

static void
test_diagonal (void)
{
  g_assert_cmpint (square_diagonal (LENGTH_MM (3000), LENGTH_MM (4000)), ==, LENGTH_MM (5000));
  g_assert_cmpint (square_diagonal (LENGTH_MM (6), LENGTH_MM (8)), ==, LENGTH_MM (10));
  /* sqrt(8400^2 + 5200^2) = 9879.2712... mm */
  g_assert_cmpint (square_diagonal (LENGTH_MM (8400), LENGTH_MM (5200)), ==,
                   lround (9879.271228182775 * LENGTH_PER_MM));
}

/* By hand: (5004^2 - 5000^2) / (2 * 3000 * 4000) = 0.001667333: 5.002 mm over 3 m, 6.669 over 4 m.
 */
static void
test_out_of_square (void)
{
  Length off;
  g_assert_true (
      square_out (LENGTH_MM (3000), LENGTH_MM (4000), LENGTH_MM (5000), LENGTH_MM (9000), &off));
  g_assert_cmpint (off, ==, 0);
  g_assert_true (
      square_out (LENGTH_MM (3000), LENGTH_MM (4000), LENGTH_MM (5004), LENGTH_MM (3000), &off));
  g_assert_cmpint (off, ==, lround (5.002 * LENGTH_PER_MM));
  g_assert_true (
      square_out (LENGTH_MM (3000), LENGTH_MM (4000), LENGTH_MM (5004), LENGTH_MM (4000), &off));
  g_assert_cmpint (off, ==, lround (6.669333 * LENGTH_PER_MM));
  /* shut by as much: 4996 */
  g_assert_true (
      square_out (LENGTH_MM (3000), LENGTH_MM (4000), LENGTH_MM (4996), LENGTH_MM (3000), &off));
  g_assert_cmpint (off, ==, lround (-4.998 * LENGTH_PER_MM));
  g_assert_false (
      square_out (LENGTH_MM (3000), LENGTH_MM (4000), LENGTH_MM (7000), LENGTH_MM (3000), &off));
  g_assert_false (
      square_out (LENGTH_MM (3000), LENGTH_MM (4000), LENGTH_MM (1000), LENGTH_MM (3000), &off));
}

/* A triangle drawn with its angle known: what is measured on it gives the angle back. */
static void
test_drawn_triangles (void)
{
  for (int i = 0; i < 20000; i++)
    {
      double a = g_test_rand_double_range (500, 30000), b = g_test_rand_double_range (500, 30000);
      double off = g_test_rand_double_range (-40, 40); /* mm over a */
      double c = sqrt (a * a + b * b + 2 * b * off);
      Length out;
      g_assert_true (square_out (length_from_mm (a), length_from_mm (b), length_from_mm (c),
                                 length_from_mm (a), &out));
      /* a reading error of 1/640 mm in each side */
      double slack = 0.0032 * (2 * a + 2 * b + 2 * c) / (2 * b) + 0.01;
      g_assert_cmpfloat (fabs (length_to_mm (out) - off), <, slack);
    }
}

/* A parallelogram's two diagonals: as much open at one corner as shut at the next. */
static void
test_parallelogram (void)
{
  double a = 8400, b = 5200, off = 12; /* mm over b */
  Length open, shut;
  Length across = length_from_mm (sqrt ((a + off) * (a + off) + b * b - off * off));
  Length other = length_from_mm (sqrt ((a - off) * (a - off) + b * b - off * off));
  g_assert_true (square_out (LENGTH_MM (8400), LENGTH_MM (5200), across, LENGTH_MM (5200), &open));
  g_assert_true (square_out (LENGTH_MM (8400), LENGTH_MM (5200), other, LENGTH_MM (5200), &shut));
  g_assert_cmpint (ABS (open - LENGTH_MM (12)), <=, 3);
  g_assert_cmpint (ABS (shut + LENGTH_MM (12)), <=, 3);
}

static Project *
two_walls (Length diagonal)
{
  Project *project = project_new ();
  for (int i = 0; i < 2; i++)
    {
      g_autoptr (Wall) wall = wall_new ();
      wall->length = LENGTH_MM (i == 0 ? 6000 : 8000);
      g_free (wall->name);
      wall->name = g_strdup (i == 0 ? "South" : "East");
      wall->id.n = (guint32) i + 10;
      wall->key = g_strdup_printf ("w%d", i + 1);
      wall->block = project_block_at (project, 0)->id;
      g_ptr_array_add (project->walls, wall_ref (wall));
    }
  project->survey = survey_new ();
  Diagonal *measured = survey_add_diagonal (project->survey);
  measured->along.n = 10;
  measured->across.n = 11;
  measured->length = diagonal;
  return project;
}

static void
assert_check (Length diagonal, gboolean within, const char *sentence)
{
  g_autoptr (Project) project = two_walls (diagonal);
  g_autofree char *fault = project_fault (project);
  g_assert_cmpstr (fault, ==, NULL);
  g_autoptr (GArray) checks = square_checks (project);
  g_assert_cmpuint (checks->len, ==, 1);
  const SquareCheck *check = &g_array_index (checks, SquareCheck, 0);
  g_assert_cmpint (check->within, ==, within);
  g_assert_cmpint (check->check.diagonal, ==, LENGTH_MM (10000));
  g_autofree char *is = square_sentence (project, check);
  g_assert_cmpstr (is, ==, sentence);
}

static void
test_sentences (void)
{
  assert_check (LENGTH_MM (10000), TRUE, "South and East: square; the diagonal is 10000 mm.");
  assert_check (LENGTH_MM (10003), TRUE,
                "South and East: the corner is open; the diagonal is 10003 mm, square is 10000 mm: "
                "out of square by 3.8 mm over South, or by 5 mm over East.");
  assert_check (LENGTH_MM (9990), FALSE,
                "South and East: the corner is shut; the diagonal is 9990 mm, square is 10000 mm: "
                "out of square by 12.5 mm over South, or by 16.7 mm over East.");
  assert_check (LENGTH_MM (15000), FALSE,
                "South and East: legs of 6000 and 8000 mm cannot have their ends 15000 mm apart: "
                "measure again.");
}

/* Legs that were marked, not the walls' lengths: what they show is told over the walls. */
static void
test_legs (void)
{
  g_autoptr (Project) project = two_walls (LENGTH_MM (5004));
  Diagonal *measured = &g_array_index (project->survey->diagonals, Diagonal, 0);
  measured->given = DIAGONAL_FIRST | DIAGONAL_SECOND;
  measured->first = LENGTH_MM (3000);
  measured->second = LENGTH_MM (4000);
  g_autoptr (GArray) checks = square_checks (project);
  const SquareCheck *check = &g_array_index (checks, SquareCheck, 0);
  g_assert_cmpint (check->off_along, ==, lround (0.001667333333 * 6000 * LENGTH_PER_MM));
  g_assert_cmpint (check->off_across, ==, lround (0.001667333333 * 8000 * LENGTH_PER_MM));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/square/root", test_root);
  g_test_add_func ("/square/ratio", test_ratio);
  g_test_add_func ("/square/345", test_345);
  g_test_add_func ("/square/diagonal", test_diagonal);
  g_test_add_func ("/square/out-of-square", test_out_of_square);
  g_test_add_func ("/square/drawn-triangles", test_drawn_triangles);
  g_test_add_func ("/square/parallelogram", test_parallelogram);
  g_test_add_func ("/square/sentences", test_sentences);
  g_test_add_func ("/square/legs", test_legs);
  return g_test_run ();
}
