/* test-improve.c - the best places of all openings, against every combination laid */
#include "advice/improve.h"

#include <string.h>

#include "advice/pier-bound.h"
#include "any-wall.h"
#include "bond/lay.h"

#define STEP LENGTH_MM (20)

static ImproveHow
how_to (gint64 work)
{
  return (ImproveHow){ .step = STEP, .work = work, .threads = 2, .stop = NULL };
}

/* A made-up wall of at most `most` pieces or so whose openings may move a little. FALSE: none. */
static gboolean
free_wall (guint64 seed, gint64 most, AnyWall *out)
{
  *out = any_wall (seed);
  if (out->wall->openings->len > 0 && out->wall->openings->len <= 2
      && (gint64) out->wall->length / out->block.length * (out->wall->height / out->block.height)
             <= most)
    {
      for (guint i = 0; i < out->wall->openings->len; i++)
        {
          Opening *opening = &g_array_index (out->wall->openings, Opening, i);

          opening->given |= OPENING_MAY_MOVE;
          opening->may_move = LENGTH_MM (60);
        }
      return TRUE;
    }
  any_wall_clear (out);
  return FALSE;
}

/* Fewer breaches, or as many and fewer cuts. */
static gboolean
is_below (gint32 breaches, gint32 cuts, LayBound bound)
{
  return breaches < bound.breaches || (breaches == bound.breaches && cuts < bound.cuts);
}

typedef struct
{
  Aim aim;
  Cost best;
  gint32 least; /* bound: of a combination with as few breaches as the best */
  gint64 n;
} Brute;

/* Every combination on the grid, laid in full. */
static void
lay_every (const AnyWall *any, Wall *wall, guint from, Brute *brute)
{
  Cost cost;

  if (from == wall->openings->len)
    {
      if (cost_of_wall (wall, &any->block, LOOK_LAID, NULL, &cost) != COSTING_DONE)
        return;
      brute->n++;
      if (brute->n == 1 || cost_compare (&cost, &brute->best, brute->aim) < 0)
        brute->best = cost;
      return;
    }
  for (Length d = -LENGTH_MM (60); d <= LENGTH_MM (60); d += STEP)
    {
      g_array_index (wall->openings, Opening, from).x = wall_opening_at (any->wall, from)->x + d;
      lay_every (any, wall, from + 1, brute);
    }
}

static gboolean
is_within (const AnyWall *any, const ImproveMove *move)
{
  const Opening *opening = wall_opening (any->wall, move->opening);

  return ABS (move->to - opening_drawn_x (opening)) <= opening_may_move (opening);
}

/* Of all places at once, as where there are too many combinations to be listed. */
static LayBound
bound_anywhere (const AnyWall *any)
{
  g_autoptr (PierBound) bound = pier_bound_new (any->wall, &any->block);
  GArray *places[WALL_MAX_OPENINGS] = { NULL };
  LayBound found;

  for (guint i = 0; i < any->wall->openings->len; i++)
    {
      const Opening *opening = wall_opening_at (any->wall, i);

      places[i] = g_array_new (FALSE, FALSE, sizeof (Length));
      for (Length d = -LENGTH_MM (60); d <= LENGTH_MM (60); d += STEP)
        {
          const Length at = opening->x + d;

          if (at >= 0 && at + opening->width <= any->wall->length)
            g_array_append_val (places[i], at);
        }
    }
  found = pier_bound_anywhere (bound, places);
  for (guint i = 0; i < any->wall->openings->len; i++)
    g_array_unref (places[i]);
  return found;
}

/* Whether it was proven. */
static gboolean
check_against_every (const AnyWall *any)
{
  g_autoptr (Wall) wall = wall_copy (any->wall);
  const ImproveHow how = how_to (100000000);
  g_autoptr (Improvement) found = improve_wall (any->wall, &any->block, &how);
  g_autofree char *text = any_wall_text (any->wall, &any->block);
  Brute brute = { .aim = cost_aim (any->wall, &any->block) };

  lay_every (any, wall, 0, &brute);
  g_test_message ("%s", text);
  /* Places that leave the wall were not listed, overlapping ones were dropped. */
  g_assert_cmpint (found->n_possible, ==, brute.n);
  g_assert_cmpint (cost_compare (&found->after, &found->before, brute.aim), <=, 0);
  for (guint i = 0; i < found->moves->len; i++)
    g_assert_true (is_within (any, &g_array_index (found->moves, ImproveMove, i)));
  g_assert_false (is_below (brute.best.breaches, brute.best.cuts,
                            (LayBound){ found->breaches_at_least, found->cuts_at_least }));
  g_assert_false (is_below (brute.best.breaches, brute.best.cuts, bound_anywhere (any)));
  if (found->proven)
    {
      g_assert_false (is_below (brute.best.breaches, brute.best.cuts,
                                (LayBound){ found->after.breaches, found->after.cuts }));
      g_assert_cmpint (improvement_gap (found), ==, 0);
    }
  if (found->edit != NULL)
    {
      Cost cost;

      g_assert_cmpint (cost_of_wall (found->edit->wall, &any->block, LOOK_LAID, NULL, &cost), ==,
                       COSTING_DONE);
      g_assert_cmpint (cost.cuts, ==, found->after.cuts);
      g_assert_cmpint (cost.breaches, ==, found->after.breaches);
      g_assert_cmpint (cost.to_order, ==, found->after.to_order);
    }
  return found->proven;
}

static void
test_as_good_as_every_combination (void)
{
  guint n = 0, n_proven = 0, n_fewest = 0;

  for (guint64 seed = 1; n < 25; seed++)
    {
      g_auto (AnyWall) any = { 0 };

      if (!free_wall (seed, 60, &any))
        continue;
      n_proven += check_against_every (&any);
      n_fewest += cost_aim (any.wall, &any.block) == AIM_FEWEST_CUTS;
      n++;
    }
  /* Of other aims nothing is proven. */
  g_test_message ("proven: %u of %u, %u of them for the fewest cuts", n_proven, n, n_fewest);
  g_assert_cmpuint (n_proven, >=, n_fewest - 1);
}

/* Another wall meets it in a third of the walls, where it may. */
static void
add_tee (Wall *wall, const Block *block, guint64 seed)
{
  const Tee tee = { .x = (Length) (seed * 7919 % (guint64) wall->length),
                    .ret = LENGTH_MM (100),
                    .through = (Through) (seed % 5 % 3) };
  g_autofree char *fault = NULL;

  if (seed % 3 != 0)
    return;
  g_array_append_val (wall->tees, tee);
  fault = wall_fault (wall, block, NULL);
  if (fault != NULL)
    g_array_set_size (wall->tees, wall->tees->len - 1);
}

/* No layout is below the bound of its runs, none of a wall below that of any place. Every opening
 * that may move makes fewer runs that are kept. */
static void
test_run_bounds_are_bounds (void)
{
  guint n_met = 0, n_met_by = 0;

  for (guint64 seed = 1; seed <= 500; seed++)
    {
      g_auto (AnyWall) any = any_wall (seed);
      const guint n = any.wall->openings->len;
      Length x[WALL_MAX_OPENINGS];
      GArray *places[WALL_MAX_OPENINGS] = { NULL };

      any.wall->laying.aim = AIM_FEWEST_CUTS;
      add_tee (any.wall, &any.block, seed);
      n_met_by += any.wall->tees->len > 0;
      for (guint i = 0; i < n; i++)
        {
          Opening *opening = &g_array_index (any.wall->openings, Opening, i);

          x[i] = opening->x;
          opening->given |= seed % 2 == 0 ? OPENING_MAY_MOVE : 0;
          opening->may_move = STEP;
        }
      g_autoptr (PierBound) bound = pier_bound_new (any.wall, &any.block);
      g_autoptr (Layout) layout = lay_wall (any.wall, &any.block, NULL);
      const LayBound near = pier_bound_near (bound, x), far = pier_bound_far (bound, x);
      const LayBound both = lay_bound_add (near, far), wall = lay_bound (any.wall, &any.block);

      g_assert_false (is_below (layout->proof.breaches, layout->n_cut, both));
      g_assert_false (is_below (layout->proof.breaches, layout->n_cut, wall));
      g_assert_false (is_below (both.breaches, both.cuts, pier_bound_anywhere (bound, places)));
      /* As far as it is asked for, it is the same. */
      for (gint32 less = -1; less <= 2; less++)
        {
          const LayBound enough = { wall.breaches, MAX (wall.cuts + less, 0) };
          const LayBound below = lay_bound_below (any.wall, &any.block, enough);

          g_assert_cmpint (below.breaches, ==, wall.breaches);
          g_assert_cmpint (below.cuts, ==, MIN (wall.cuts, enough.cuts));
        }
      /* Kept, it is the same. */
      g_assert_cmpint (pier_bound_near (bound, x).cuts, ==, near.cuts);
      if (seed % 2 == 1)
        g_assert_cmpint (far.cuts, ==, 0);
      n_met += layout->n_cut == both.cuts && layout->proof.breaches == both.breaches;
    }
  g_test_message ("met: %u; walls that others meet: %u", n_met, n_met_by);
  g_assert_cmpuint (n_met, >, 200);
  g_assert_cmpuint (n_met_by, >, 100);
}

/* What is stopped gives nothing; what has little work to spend is never worse than before. */
static void
test_stopped_and_short_of_work (void)
{
  guint n = 0;

  for (guint64 seed = 1000; n < 10; seed++)
    {
      g_auto (AnyWall) any = { 0 };
      gint stop = 1;
      ImproveHow how = how_to (1000);

      if (!free_wall (seed, 100, &any))
        continue;
      g_autoptr (Improvement) short_of = improve_wall (any.wall, &any.block, &how);
      g_assert_cmpint (
          cost_compare (&short_of->after, &short_of->before, cost_aim (any.wall, &any.block)), <=,
          0);
      how.stop = &stop;
      g_assert_null (improve_wall (any.wall, &any.block, &how));
      n++;
    }
}

/* More combinations than are listed: places farther apart are looked at, and what holds for all of
 * them is told. */
static void
test_too_many_to_be_listed (void)
{
  Block block = block_default ();
  g_autoptr (Wall) wall = wall_new ();
  const ImproveHow how = { .step = LENGTH_MM (1), .work = 4000, .threads = 2 };

  wall->length = LENGTH_MM (5000);
  wall->height = LENGTH_MM (1000);
  for (guint i = 0; i < 2; i++)
    {
      Opening opening = opening_default (OPENING_VOID);

      opening.id.n = i + 1;
      opening.x = LENGTH_MM (1111) + (Length) i * LENGTH_MM (2000);
      opening.sill = LENGTH_MM (424);
      opening.height = LENGTH_MM (400);
      opening.given |= OPENING_MAY_MOVE;
      opening.may_move = LENGTH_MM (700);
      g_array_append_val (wall->openings, opening);
    }
  g_autoptr (Improvement) found = improve_wall (wall, &block, &how);
  g_autofree char *said = improvement_text (found);
  g_test_message ("%s", said);
  g_assert_true (found->combinations == IMPROVE_TOO_MANY);
  g_assert_cmpint (cost_compare (&found->after, &found->before, AIM_FEWEST_CUTS), <, 0);
  g_assert_cmpint (found->cuts_at_least, <=, found->after.cuts);
  g_assert_cmpint (found->cuts_at_least, >, 0);
  g_assert_null (strstr (said, " 0 "));
  block_clear (&block);
}

/* The same on one thread and on three. */
static void
test_same_on_every_machine (void)
{
  guint n = 0;

  for (guint64 seed = 2000; n < 6; seed++)
    {
      g_auto (AnyWall) any = { 0 };
      ImproveHow one = how_to (20000), three = how_to (20000);

      if (!free_wall (seed, 100, &any))
        continue;
      one.threads = 1;
      three.threads = 3;
      g_autoptr (Improvement) a = improve_wall (any.wall, &any.block, &one);
      g_autoptr (Improvement) b = improve_wall (any.wall, &any.block, &three);
      g_autofree char *said = improvement_text (a), *again = improvement_text (b);
      g_assert_cmpstr (said, ==, again);
      g_assert_cmpuint (a->moves->len, ==, b->moves->len);
      for (guint i = 0; i < a->moves->len; i++)
        g_assert_cmpint (g_array_index (a->moves, ImproveMove, i).to, ==,
                         g_array_index (b->moves, ImproveMove, i).to);
      n++;
    }
}

/* Fixed openings and those that nothing was said of stay; done again, nothing goes farther. */
static void
test_fixed_ones_stay (void)
{
  g_auto (AnyWall) any = { 0 };
  const ImproveHow how = how_to (100000);

  for (guint64 seed = 1; !free_wall (seed, 100, &any) || any.wall->openings->len < 2; seed++)
    any_wall_clear (&any);
  g_array_index (any.wall->openings, Opening, 0).may_move = 0;
  g_array_index (any.wall->openings, Opening, 1).given = 0;
  g_autoptr (Improvement) none = improve_wall (any.wall, &any.block, &how);
  g_assert_cmpuint (none->n_free, ==, 0);
  g_assert_null (none->edit);
  g_array_index (any.wall->openings, Opening, 1).given = OPENING_MAY_MOVE;
  g_autoptr (Improvement) first = improve_wall (any.wall, &any.block, &how);
  if (first->edit == NULL)
    return;
  g_autoptr (Improvement) second = improve_wall (first->edit->wall, &any.block, &how);
  for (guint i = 0; i < second->moves->len; i++)
    g_assert_true (is_within (&any, &g_array_index (second->moves, ImproveMove, i)));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/improve/as-good-as-every-combination", test_as_good_as_every_combination);
  g_test_add_func ("/improve/run-bounds-are-bounds", test_run_bounds_are_bounds);
  g_test_add_func ("/improve/stopped-and-short-of-work", test_stopped_and_short_of_work);
  g_test_add_func ("/improve/too-many-to-be-listed", test_too_many_to_be_listed);
  g_test_add_func ("/improve/same-on-every-machine", test_same_on_every_machine);
  g_test_add_func ("/improve/fixed-ones-stay", test_fixed_ones_stay);
  return g_test_run ();
}
