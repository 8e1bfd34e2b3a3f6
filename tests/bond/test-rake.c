#include "bond/rake.h"

#include <math.h>

/* A layout that has the points of one piece. */
typedef struct
{
  Layout layout;
  Piece piece;
} One;

static void
one_init (One *one, const LayPoint *corners, guint n)
{
  Length right = 0, top = 0;

  *one = (One){ 0 };
  one->layout.points = g_array_new (FALSE, FALSE, sizeof (LayPoint));
  one->piece = (Piece){
    .shape = PIECE_RAKED, .x = G_MAXINT32, .bottom = G_MAXINT32, .n_outline = (gint32) n
  };
  for (guint i = 0; i < n; i++)
    {
      const LayPoint point = { LENGTH_MM (corners[i].x), LENGTH_MM (corners[i].z) };

      g_array_append_val (one->layout.points, point);
      one->piece.x = MIN (one->piece.x, point.x);
      one->piece.bottom = MIN (one->piece.bottom, point.z);
      right = MAX (right, point.x);
      top = MAX (top, point.z);
    }
  one->piece.length = right - one->piece.x;
  one->piece.height = top - one->piece.bottom;
}

typedef struct
{
  guint n;
  LayPoint corners[5]; /* mm */
  int bottom, top, left, right, run, rise;
  guint n_slopes;
  double angle, hundred; /* by tan, and by the rule of three */
} Case;

/* Drawn on squared paper and measured there. */
static const Case cases[] = {
  /* 600 long at the foot, 400 at the head: falls 200 in 200. */
  { 4,
    { { 1000, 25 }, { 1600, 25 }, { 1400, 225 }, { 1000, 225 } },
    600,
    400,
    200,
    0,
    200,
    200,
    1,
    45,
    100 },
  /* A triangle that rises to the right, 400 by 200. */
  { 3, { { 0, 0 }, { 400, 0 }, { 400, 200 } }, 400, 0, 0, 200, 400, 200, 1, 26.565, 50 },
  /* The slope does not come down to the foot: 150 is left of the end. */
  { 5,
    { { 0, 0 }, { 500, 0 }, { 500, 150 }, { 400, 200 }, { 0, 200 } },
    500,
    400,
    200,
    150,
    100,
    50,
    1,
    26.565,
    50 },
  /* A ridge: the longer slope is told. */
  { 5,
    { { 0, 0 }, { 600, 0 }, { 600, 80 }, { 400, 200 }, { 0, 100 } },
    600,
    0,
    100,
    80,
    400,
    100,
    2,
    14.036,
    25 },
};

static void
test_cases (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      const Case *c = &cases[i];
      One one;
      Rake rake;

      one_init (&one, c->corners, c->n);
      g_assert_true (piece_rake (&one.layout, &one.piece, &rake));
      g_assert_cmpint (rake.bottom, ==, LENGTH_MM (c->bottom));
      g_assert_cmpint (rake.top, ==, LENGTH_MM (c->top));
      g_assert_cmpint (rake.left, ==, LENGTH_MM (c->left));
      g_assert_cmpint (rake.right, ==, LENGTH_MM (c->right));
      g_assert_cmpint (rake.run, ==, LENGTH_MM (c->run));
      g_assert_cmpint (rake.rise, ==, LENGTH_MM (c->rise));
      g_assert_cmpuint (rake.n_slopes, ==, c->n_slopes);
      g_assert_cmpfloat (fabs (rake_angle (&rake) - c->angle), <, 0.001);
      g_assert_cmpfloat (fabs (rake_rise (&rake) - c->hundred), <, 0.001);
      g_array_unref (one.layout.points);
    }
}

/* A notch has no slope, and a box has no outline. */
static void
test_none (void)
{
  static const LayPoint notched[]
      = { { 0, 0 }, { 300, 0 }, { 300, 200 }, { 200, 200 }, { 200, 100 }, { 0, 100 } };
  One one;
  Rake rake;

  one_init (&one, notched, G_N_ELEMENTS (notched));
  g_assert_false (piece_rake (&one.layout, &one.piece, &rake));
  one.piece.outline = -1;
  g_assert_false (piece_rake (&one.layout, &one.piece, &rake));
  g_array_unref (one.layout.points);
}

static void
test_text (void)
{
  const Rake rake = { .bottom = LENGTH_MM (412), .top = LENGTH_MM (126) + LENGTH_PER_MM / 2 };
  const Rake along = { .bottom = LENGTH_MM (600), .left = LENGTH_MM (44), .right = LENGTH_MM (98) };
  const Rake point = { .bottom = LENGTH_MM (267), .left = LENGTH_MM (154) };
  g_autofree char *edges = rake_text (&rake);
  g_autofree char *heights = rake_text (&along);
  g_autofree char *triangle = rake_text (&point);

  g_assert_cmpstr (edges, ==, "412/127");
  g_assert_cmpstr (heights, ==, "600 × 44/98");
  g_assert_cmpstr (triangle, ==, "267/0");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/rake/cases", test_cases);
  g_test_add_func ("/rake/none", test_none);
  g_test_add_func ("/rake/text", test_text);
  return g_test_run ();
}
