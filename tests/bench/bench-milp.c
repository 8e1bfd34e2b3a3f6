/* bench-milp.c - the engine beside a mixed-integer program that lays the same walls
 * (tests/bond/milp.c)
 *
 * Prints rows, tab-separated: cells in a unit (the program's resolution), walls solved to the end,
 * equal in cuts, proven by the engine, the engine's and the program's seconds in all, the ratio of
 * the two, and the median ratio wall by wall; last a row of all walls with equal cuts, whatever
 * their cells. Times are of the processor, both in one run. */
#include <stdio.h>
#include <stdlib.h>
#include <time.h>

#include <glpk.h>

#include "bond/lay.h"
#include "cells.h"

#define SECONDS 20 /* for one wall */

typedef struct
{
  int unit; /* cells; 0: of any number, where the cuts are equal */
  int walls, equal, proven;
  double engine, program;
  GArray *ratios; /* double */
} Row;

static int
compare_doubles (const void *a, const void *b)
{
  const double x = *(const double *) a, y = *(const double *) b;

  return (x > y) - (x < y);
}

static double
seconds_since (clock_t began)
{
  return (double) (clock () - began) / CLOCKS_PER_SEC;
}

static gboolean
is_equal (const Proof *proof, int cuts)
{
  return proof->cuts == cuts && proof->breaches == 0;
}

static void
note (Row *row, const Proof *proof, int cuts, double engine, double program)
{
  const double ratio = program / MAX (engine, 1e-6);

  row->walls++;
  row->equal += is_equal (proof, cuts);
  row->proven += proof->proven;
  row->engine += engine;
  row->program += program;
  g_array_append_val (row->ratios, ratio);
}

static void
compare (CellsKind kind, guint64 seed, Row rows[], int n_rows)
{
  g_auto (Cells) house = cells_make (kind, seed);
  g_autofree char *fault = wall_fault (house.wall, &house.block, NULL);
  int cuts = 0;

  if (fault != NULL)
    return;
  const clock_t began = clock ();
  g_autoptr (Layout) layout = lay_wall (house.wall, &house.block, NULL);
  const double engine = seconds_since (began);
  const clock_t began_program = clock ();
  const MilpResult result = cells_milp (&house, SECONDS, &cuts);
  const double program = seconds_since (began_program);
  if (result != MILP_SOLVED)
    return;
  for (int i = 0; i < n_rows; i++)
    if (rows[i].unit == house.unit || (rows[i].unit == 0 && is_equal (&layout->proof, cuts)))
      note (&rows[i], &layout->proof, cuts, engine, program);
}

int
main (int argc, char **argv)
{
  const guint64 walls = argc > 1 ? (guint64) atoi (argv[1]) : 300;
  const guint64 fine = argc > 2 ? (guint64) atoi (argv[2]) : 60;
  Row rows[] = { { .unit = 6 }, { .unit = 8 }, { .unit = 12 }, { .unit = 24 }, { .unit = 0 } };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    rows[i].ratios = g_array_new (FALSE, FALSE, sizeof (double));
  for (guint64 seed = 0; seed < walls; seed++)
    compare (CELLS_HOUSE, seed, rows, G_N_ELEMENTS (rows));
  for (guint64 seed = 0; seed < fine; seed++)
    compare (CELLS_FINE, seed, rows, G_N_ELEMENTS (rows));
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      Row *row = &rows[i];

      g_array_sort (row->ratios, compare_doubles);
      printf ("%s %d\t%d\t%d\t%d\t%.3f\t%.1f\t%.0f\t%.0f\n",
              row->unit > 0 ? "unit of" : "all equal,", row->unit, row->walls, row->equal,
              row->proven, row->engine, row->program, row->program / row->engine,
              row->walls > 0 ? g_array_index (row->ratios, double, row->ratios->len / 2) : 0);
      g_array_unref (row->ratios);
    }
  glp_free_env ();
  return 0;
}
