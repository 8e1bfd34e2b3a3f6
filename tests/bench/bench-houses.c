/* bench-houses.c - ordinary house walls by the thousand: how often proven, how far off, how long
 *
 * Prints rows, tab-separated: what, walls, proven, cuts, bounds, median ms, mean ms, slowest ms.
 * With a second argument tells each wall that is not proven or takes longer than so many ms. */
#include <stdio.h>
#include <stdlib.h>
#include <time.h>

#include "any-house.h"
#include "bond/lay.h"

static int
compare_doubles (const void *a, const void *b)
{
  const double x = *(const double *) a, y = *(const double *) b;

  return (x > y) - (x < y);
}

static void
tell (guint seed, const AnyWall *house, const Proof *proof, double ms)
{
  g_autofree char *text = any_wall_text (house->wall, &house->block);

  printf ("# %u: breaches %d, cuts %d of %d, %.1f ms; %s\n", seed, proof->breaches, proof->cuts,
          proof->cuts_at_least, ms, text);
}

int
main (int argc, char **argv)
{
  const guint walls = argc > 1 ? (guint) atoi (argv[1]) : 1000;
  const double slow = argc > 2 ? atof (argv[2]) : 1e9;
  g_autofree double *ms = g_new (double, walls);
  double sum = 0;
  gint64 cuts = 0, bounds = 0;
  guint proven = 0;

  for (guint i = 0; i < walls; i++)
    {
      g_auto (AnyWall) house = any_house (i);
      const clock_t began = clock (); /* of the processor: others may use it, too */
      g_autoptr (Layout) layout = lay_wall (house.wall, &house.block, NULL);

      ms[i] = (double) (clock () - began) * 1000 / CLOCKS_PER_SEC;
      sum += ms[i];
      cuts += layout->proof.cuts;
      bounds += layout->proof.cuts_at_least;
      proven += layout->proof.proven;
      if (argc > 2 && (!layout->proof.proven || ms[i] > slow))
        tell (i, &house, &layout->proof, ms[i]);
    }
  qsort (ms, walls, sizeof *ms, compare_doubles);
  printf ("lay house walls\t%u\t%u\t%" G_GINT64_FORMAT "\t%" G_GINT64_FORMAT "\t%.2f\t%.2f\t%.2f\n",
          walls, proven, cuts, bounds, ms[walls / 2], sum / walls, ms[walls - 1]);
  return 0;
}
