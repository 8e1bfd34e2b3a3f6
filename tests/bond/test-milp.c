/* test-milp.c - house walls against a mixed-integer program of the same walls (milp.c)
 *
 * The program knows the documents alone, and nothing of phases, pools or messages. What it solves
 * to the end is the fewest cuts of all, see cells.h. */
#include "bond/lay.h"

#include <glpk.h>

#include "cells.h"
#include "check-layout.h"
#include "sanitized.h"

#define SKIP (SANITIZED)

#define N_WALLS 400
#define N_FINE 30
#define SECONDS 6 /* for one wall */

typedef struct
{
  int solved, none, too_long, met, proven, cuts, least, bounds;
} Tally;

static void
tell (guint64 seed, const Cells *house, const Layout *layout, int cuts)
{
  g_autofree char *text = any_wall_text (house->wall, &house->block);
  g_test_message ("house wall %" G_GUINT64_FORMAT ": breaches %d, cuts %d of %d, proven %d; %s",
                  seed, layout->proof.breaches, layout->proof.cuts, cuts,
                  layout->proof.cuts_at_least, text);
}

static void
compare (guint64 seed, const Cells *house, const Layout *layout, Tally *tally)
{
  const Proof *proof = &layout->proof;
  int cuts = 0;
  MilpResult result = cells_milp (house, SECONDS, &cuts);
  tally->too_long += result == MILP_TOO_LONG;
  tally->none += result == MILP_NONE;
  if (result == MILP_NONE)
    g_assert_cmpint (proof->breaches, >, 0);
  if (result != MILP_SOLVED)
    return;
  if (proof->breaches > 0 || proof->cuts != cuts || proof->cuts_at_least > cuts)
    tell (seed, house, layout, cuts);
  g_assert_cmpint (proof->breaches, ==, 0);
  g_assert_cmpint (proof->cuts_at_least, <=, cuts);
  g_assert_cmpint (proof->cuts, >=, cuts);
  tally->solved++;
  tally->met += proof->cuts == cuts;
  tally->proven += proof->proven;
  tally->cuts += proof->cuts;
  tally->least += cuts;
  tally->bounds += proof->cuts_at_least;
}

static void
compare_many (CellsKind kind, int n)
{
  Tally tally = { 0 };
  if (SKIP)
    {
      g_test_skip ("too slow with sanitizers");
      return;
    }
  for (guint64 seed = 0; seed < (guint64) n; seed++)
    {
      g_auto (Cells) house = cells_make (kind, seed);
      g_autofree char *fault = wall_fault (house.wall, &house.block, NULL);
      if (fault != NULL)
        continue;
      g_autoptr (Layout) layout = lay_wall (house.wall, &house.block, NULL);
      g_autofree char *wrong = check_layout (house.wall, &house.block, layout);
      g_assert_cmpstr (wrong, ==, NULL);
      compare (seed, &house, layout, &tally);
    }
  glp_free_env ();
  g_test_message ("%d walls solved, %d with no layout within the rules, %d took too long; of those "
                  "solved %d are met and %d proven; cuts %d, least %d, bounds %d",
                  tally.solved, tally.none, tally.too_long, tally.met, tally.proven, tally.cuts,
                  tally.least, tally.bounds);
  g_assert_cmpint (tally.solved, >=, n * 3 / 4);
  g_assert_cmpint (tally.met, ==, tally.solved);
  g_assert_cmpint (tally.proven * 100, >=, tally.solved * 99);
}

static void
test_houses (void)
{
  compare_many (CELLS_HOUSE, N_WALLS);
}

static void
test_fine (void)
{
  compare_many (CELLS_FINE, N_FINE);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/milp/houses", test_houses);
  g_test_add_func ("/milp/fine", test_fine);
  return g_test_run ();
}
