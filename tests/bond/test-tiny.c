/* test-tiny.c - small walls against everything that can be laid (cells.h)
 *
 * What is proven of a wall is a claim about all layouts; here all of them are looked at. Walls of
 * up to three courses and three units and a half, a unit being eight cells (six in some), with one
 * or two openings whose sills and heads meet the courses or not, returns, and every limit. */
#include "bond/lay.h"

#include "cells.h"
#include "check-layout.h"
#include "sanitized.h"

#include <stdio.h>

#define N_WALLS (SANITIZED ? 60 : 2000)

typedef struct
{
  int n, proven, more_breaches, more_cuts, cuts_over;
} Tally;

static guint share = 0, n_shares = 1;

static void
tell (guint64 seed, const Cells *tiny, const Layout *layout, CellsCost best, const char *what)
{
  g_autofree char *text = any_wall_text (tiny->wall, &tiny->block);
  g_test_message ("tiny wall %" G_GUINT64_FORMAT
                  " %s: breaches %d of %d, cuts %d of %d, proven %d; %s",
                  seed, what, layout->proof.breaches, best.breaches, layout->proof.cuts, best.cuts,
                  layout->proof.cuts_at_least, text);
}

/* Nothing is better than the best of all, and no bound says otherwise. */
static void
compare (guint64 seed, const Cells *tiny, const Layout *layout, int price, Tally *tally)
{
  CellsCost best = cells_sweep (tiny, price);
  const Proof *proof = &layout->proof;
  if (proof->breaches * price + proof->cuts < best.breaches * price + best.cuts
      || (proof->breaches >= best.breaches && proof->cuts_at_least > best.cuts))
    tell (seed, tiny, layout, best, "is wrong");
  g_assert_cmpint (proof->breaches * price + proof->cuts, >=, best.breaches * price + best.cuts);
  if (proof->breaches >= best.breaches)
    g_assert_cmpint (proof->cuts_at_least, <=, best.cuts);
  if (price < 1000)
    return;
  tally->n++;
  tally->proven += proof->proven;
  /* Bounds speak of limits; no tiny wall has other rules. */
  g_assert_cmpint (proof->breaches_at_least, <=, best.breaches);
  if (proof->breaches > best.breaches)
    tell (seed, tiny, layout, best, "has more breaches");
  tally->more_breaches += proof->breaches > best.breaches;
  if (proof->breaches == best.breaches && proof->cuts > best.cuts)
    {
      tell (seed, tiny, layout, best, "has more cuts");
      tally->more_cuts++;
      tally->cuts_over += proof->cuts - best.cuts;
    }
}

static void
test_tiny (void)
{
  Tally tally = { 0 };
  for (guint64 seed = share; seed < N_WALLS; seed += n_shares)
    {
      g_auto (Cells) tiny = cells_make (CELLS_TINY, seed);
      g_autofree char *fault = wall_fault (tiny.wall, &tiny.block, NULL);
      if (fault == NULL)
        {
          g_autoptr (Layout) layout = lay_wall (tiny.wall, &tiny.block, NULL);
          g_autofree char *wrong = check_layout (tiny.wall, &tiny.block, layout);
          g_assert_cmpstr (wrong, ==, NULL);
          compare (seed, &tiny, layout, 1000, &tally);
          compare (seed, &tiny, layout, 1, &tally);
        }
    }
  g_test_message ("%d walls, %d proven; %d with more breaches than need be, %d with more cuts (%d)",
                  tally.n, tally.proven, tally.more_breaches, tally.more_cuts, tally.cuts_over);
  g_assert_cmpint (tally.n, >=, N_WALLS / n_shares * 8 / 10);
  /* Limits near half a unit on walls of two units are the hardest there are. */
  g_assert_cmpint (tally.more_breaches, <=, MAX (1, tally.n / 100));
  g_assert_cmpint (tally.more_cuts, <=, MAX (1, tally.n / 50));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  if (argc > 1 && sscanf (argv[1], "%u/%u", &share, &n_shares) != 2)
    return 2;
  g_test_add_func ("/tiny/all-layouts", test_tiny);
  return g_test_run ();
}
