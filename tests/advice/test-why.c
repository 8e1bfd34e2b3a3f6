/* test-why.c - what is said of a piece is true: each claim is held against walls laid anew */
#include "advice/why.h"
#include "bond/lay.h"

#include "any-house.h"

#include <string.h>

#define HOUSES 60
#define WALLS 200

static guint told[WHY_RAKED + 1];

/* The run as a wall of its own, one course high, with nothing above or below. */
static Layout *
lay_run (const Wall *wall, const Block *block, const WhyRun *run)
{
  const Laying laying = laying_resolve (&wall->laying, block);
  g_autoptr (Wall) alone = wall_new ();
  alone->length = run->to - run->from;
  alone->laying.given = LAYING_HEAD | LAYING_FIRST_BED | LAYING_MIN_PIECE | LAYING_MIN_LAP;
  alone->laying.head = laying.head;
  alone->laying.first_bed = 0;
  alone->laying.min_piece = laying.min_piece;
  alone->laying.min_lap = 0;
  alone->height = block->height;
  g_autofree char *fault = wall_fault (alone, block, NULL);
  return fault == NULL ? lay_wall (alone, block, NULL) : NULL;
}

static void
check_run (const Wall *wall, const Block *block, const Why *why)
{
  g_autoptr (Layout) alone = lay_run (wall, block, &why->run);
  if (alone == NULL) /* shorter than a wall can be */
    return;
  g_assert_cmpint (why->run.by_length, <=, alone->n_cut);
  g_assert_cmpint (why->run.by_length, ==, alone->n_cut > 0);
  if (alone->breaches->len == 0)
    g_assert_cmpint (why->run.least, ==, alone->n_cut);
  if (why->cause == WHY_LENGTH)
    g_assert_cmpint (why->run.cuts, <=, alone->n_cut);
  if (why->cause == WHY_LAPS || why->cause == WHY_BOND)
    g_assert_cmpint (why->run.cuts, >, why->run.least);
}

/* All the wall pinned but for the run: no bond has its fewest cuts without a breach. */
static void
check_laps (const Wall *wall, const Block *block, const Layout *layout, guint i, const Why *why)
{
  const Piece *piece = layout_piece (layout, i);
  g_autoptr (Wall) fixed = wall_copy (wall);
  gint32 cuts = 0;
  for (guint k = 0; k < layout->pieces->len; k++)
    {
      const Piece *other = layout_piece (layout, k);
      Pin pin = { .course = other->course, .x = other->x, .length = other->length };
      if (ABS (other->course - piece->course) == 1)
        wall_put_pin (fixed, &pin);
    }
  for (RuleKind kind = 0; kind < N_RULES; kind++)
    fixed->laying.rules[kind].keep = KEEP_OFF;
  fixed->laying.given |= LAYING_AIM;
  fixed->laying.aim = AIM_FEWEST_CUTS;
  g_autoptr (Layout) again = lay_wall (fixed, block, NULL);
  for (guint k = 0; k < again->pieces->len; k++)
    {
      const Piece *other = layout_piece (again, k);
      cuts += other->course == piece->course && other->x >= why->run.from
              && other->x + other->length <= why->run.to && other->length < block->length;
    }
  if (again->breaches->len == 0)
    g_assert_cmpint (cuts, >, why->run.least);
}

/* The engine's own breaches of the lap are those that are told. */
static void
check_lap_of (const Wall *wall, const Block *block, const Layout *layout, const Piece *piece,
              const Why *why)
{
  const Laying laying = laying_resolve (&wall->laying, block);
  gboolean breached = FALSE, is = why->left.below >= 0 && why->left.below < laying.min_lap;
  Length least = G_MAXINT32;
  for (guint b = 0; b < layout->breaches->len; b++)
    {
      const Breach *breach = &g_array_index (layout->breaches, Breach, b);
      if (breach->kind == BREACH_MIN_LAP && breach->course == piece->course
          && breach->x == piece->x - laying.head / 2)
        {
          breached = TRUE;
          least = MIN (least, breach->is);
        }
    }
  if (is)
    {
      g_assert_true (breached);
      g_assert_cmpint (why->left.below, ==, least);
    }
}

static void
check_shape (const Block *block, const Piece *piece, const Why *why)
{
  told[why->cause]++;
  g_assert_cmpint (why->cause == WHY_WHOLE, ==, piece->shape == PIECE_WHOLE);
  g_assert_cmpint (why->cause == WHY_NOTCH, ==, piece->shape == PIECE_NOTCHED);
  if (piece->shape == PIECE_RIPPED)
    g_assert_true (why->cause == WHY_TOP || why->cause == WHY_STRIP);
  g_assert_cmpint (why->run.from, <=, piece->x);
  g_assert_cmpint (why->run.to, >=, piece->x + piece->length);
  g_assert_cmpint (why->run.cuts, >=, piece->length < block->length);
}

static void
check_wall (const Wall *wall, const Block *block)
{
  g_autoptr (Layout) layout = lay_wall (wall, block, NULL);
  for (guint i = 0; i < layout->pieces->len; i++)
    {
      const Piece *piece = layout_piece (layout, i);
      Why why = why_piece (wall, block, layout, i);
      g_autofree char *is = why_dup_is (block, layout, i), *laps = why_dup_laps (&why);
      g_autofree char *reason = why_dup_reason (&why, wall, block, layout, i);
      check_shape (block, piece, &why);
      check_lap_of (wall, block, layout, piece, &why);
      g_assert_true (g_str_has_suffix (reason, "."));
      g_assert_true (g_str_has_prefix (is, "Course "));
      g_assert_true (laps == NULL || strstr (laps, "erpend laps ") != NULL);
      g_assert_null (strstr (reason, "There is room for"));
      g_assert_null (strstr (reason, "an opening."));
      if (piece->shape == PIECE_SHORT && why.cause != WHY_PINNED)
        check_run (wall, block, &why);
      if (why.cause == WHY_LAPS && layout->breaches->len == 0)
        check_laps (wall, block, layout, i, &why);
    }
}

static void
test_houses (void)
{
  for (guint64 seed = 0; seed < HOUSES; seed++)
    {
      g_auto (AnyWall) any = any_house (seed);
      check_wall (any.wall, &any.block);
    }
  g_test_message ("houses: length %u, laps %u, bond %u", told[WHY_LENGTH], told[WHY_LAPS],
                  told[WHY_BOND]);
}

static void
test_walls (void)
{
  for (guint64 seed = 0; seed < WALLS; seed++)
    {
      g_auto (AnyWall) any = any_wall (seed);
      if (seed % 3 == 0)
        any_pins (seed, any.wall, &any.block);
      check_wall (any.wall, &any.block);
    }
  for (WhyCause cause = WHY_WHOLE; cause <= WHY_BOND; cause++)
    {
      g_test_message ("cause %d: %u pieces", (int) cause, told[cause]);
      g_assert_cmpuint (told[cause], >, 0);
    }
}

/* The issue's own example: a pier of 812 mm. */
static void
test_pier (void)
{
  g_autoptr (Wall) wall = wall_new ();
  Block block = block_default ();
  Opening left = opening_default (OPENING_DOOR), right = opening_default (OPENING_DOOR);
  wall->length = LENGTH_MM (6000);
  left.id.n = 1;
  right.id.n = 2;
  left.key = g_strdup ("o1");
  right.key = g_strdup ("o2");
  g_free (left.name);
  g_free (right.name);
  left.name = g_strdup ("D1");
  right.name = g_strdup ("D2");
  left.x = LENGTH_MM (1000);
  right.x = opening_right (&left) + LENGTH_MM (812);
  g_array_append_val (wall->openings, left);
  g_array_append_val (wall->openings, right);
  g_autoptr (Layout) layout = lay_wall (wall, &block, NULL);
  guint n = 0;
  for (guint i = 0; i < layout->pieces->len; i++)
    {
      const Piece *piece = layout_piece (layout, i);
      if (piece->course > 5 || piece->shape != PIECE_SHORT || piece->x < left.x
          || piece->x > right.x)
        continue;
      Why why = why_piece (wall, &block, layout, i);
      g_autofree char *reason = why_dup_reason (&why, wall, &block, layout, i);
      n++;
      g_assert_cmpstr (reason, ==,
                       "The pier between D1 and D2 is 812 mm: with blocks of 600 mm at least one "
                       "cut in every course so long is unavoidable.");
    }
  g_assert_cmpuint (n, ==, 5);
  block_clear (&block);
}

/* A gable of 45 degrees on a footing that steps up by what no course meets. */
static void
test_raked (void)
{
  g_autoptr (Wall) wall = wall_new ();
  Block block = block_default ();
  Length height;
  GArray *tops;
  guint n_raked = 0, n_strips = 0;

  wall->length = LENGTH_MM (6000);
  tops = top_gable (wall->length, LENGTH_MM (1500), LENGTH_MM (1500), LENGTH_MM (3000),
                    LENGTH_MM (4500), &height);
  wall_take_top (wall, tops, height);
  foot_list_add (wall->feet, LENGTH_MM (3000), LENGTH_MM (120));
  g_autoptr (Layout) layout = lay_wall (wall, &block, NULL);
  for (guint i = 0; i < layout->pieces->len; i++)
    {
      const Piece *piece = layout_piece (layout, i);
      Why why = why_piece (wall, &block, layout, i);
      g_autofree char *reason = why_dup_reason (&why, wall, &block, layout, i);
      const gboolean raked = piece->shape == PIECE_RAKED;
      g_assert_cmpint (why.cause == WHY_RAKED, ==, raked);
      g_assert_cmpint (strstr (reason, "the cut is at 45.0° to the level, 100.0 mm up in 100 mm.")
                           != NULL,
                       ==, raked);
      n_raked += raked;
      n_strips += g_str_equal (reason,
                               "On the step of the footing there is room for 80 mm of the block's "
                               "200 mm.");
    }
  /* Fifteen courses of slope, two ends each, but for the ridge. */
  g_assert_cmpuint (n_raked, >=, 28);
  /* Four blocks of the half that stands on the step, beside one that goes round it. */
  g_assert_cmpuint (n_strips, >=, 4);
  block_clear (&block);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/why/pier", test_pier);
  g_test_add_func ("/why/raked", test_raked);
  g_test_add_func ("/why/houses", test_houses);
  g_test_add_func ("/why/walls", test_walls);
  return g_test_run ();
}
