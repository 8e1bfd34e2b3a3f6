/* test-tables.c - the least sum over small graphs, against every assignment */
#include "bond/tables.h"

#include "any-wall.h"

#define MOST 7 /* variables */

typedef struct
{
  int n;
  int n_values[MOST];
  gint32 own[MOST][4];
  gboolean paired[MOST][MOST];
  gint32 pair[MOST][MOST][4][4];
} Puzzle;

static Puzzle
any_puzzle (AnyRandom *random)
{
  Puzzle puzzle = { .n = (int) any_between (random, 1, MOST) };
  int dense = (int) any_between (random, 10, 90);

  for (int i = 0; i < puzzle.n; i++)
    {
      puzzle.n_values[i] = (int) any_between (random, 1, 4);
      for (int v = 0; v < puzzle.n_values[i]; v++)
        puzzle.own[i][v] = (gint32) any_between (random, 0, 9);
    }
  for (int a = 0; a < puzzle.n; a++)
    for (int b = a + 1; b < puzzle.n; b++)
      {
        puzzle.paired[a][b] = any_percent (random, dense);
        for (int v = 0; v < 4; v++)
          for (int w = 0; w < 4; w++)
            puzzle.pair[a][b][v][w]
                = any_percent (random, 20) ? TABLES_NEVER : (gint32) any_between (random, 0, 9);
      }
  return puzzle;
}

static gint64
sum_of (const Puzzle *puzzle, const gint32 *values)
{
  gint64 sum = 0;

  for (int a = 0; a < puzzle->n; a++)
    {
      sum += puzzle->own[a][values[a]];
      for (int b = a + 1; b < puzzle->n; b++)
        if (puzzle->paired[a][b])
          sum += puzzle->pair[a][b][values[a]][values[b]];
    }
  return MIN (sum, TABLES_NEVER);
}

static gint64
least_by_trying (const Puzzle *puzzle)
{
  gint32 values[MOST] = { 0 };
  gint64 best = TABLES_NEVER;

  for (int at = 0; at < puzzle->n;)
    {
      best = MIN (best, sum_of (puzzle, values));
      for (at = 0; at < puzzle->n && ++values[at] == puzzle->n_values[at]; at++)
        values[at] = 0;
    }
  return best;
}

static Tables *
tables_of (const Puzzle *puzzle)
{
  Tables *tables = tables_new (puzzle->n);

  for (int i = 0; i < puzzle->n; i++)
    tables_set (tables, i, puzzle->own[i], puzzle->n_values[i]);
  for (int a = 0; a < puzzle->n; a++)
    for (int b = a + 1; b < puzzle->n; b++)
      if (puzzle->paired[a][b])
        {
          gint32 *costs = g_new (gint32, puzzle->n_values[a] * puzzle->n_values[b]);

          for (int v = 0; v < puzzle->n_values[a]; v++)
            for (int w = 0; w < puzzle->n_values[b]; w++)
              costs[v * puzzle->n_values[b] + w] = puzzle->pair[a][b][v][w];
          tables_pair (tables, a, b, costs);
        }
  return tables;
}

static void
test_least (void)
{
  AnyRandom random = { 11 };

  for (int i = 0; i < 3000; i++)
    {
      Puzzle puzzle = any_puzzle (&random);
      g_autoptr (Tables) tables = tables_of (&puzzle);
      gint32 values[MOST];
      gint64 least = least_by_trying (&puzzle);
      gint32 found = tables_least (tables, TABLES_NEVER, 1000000, values);

      g_assert_cmpint (found, ==, least);
      if (found < TABLES_NEVER)
        g_assert_cmpint (sum_of (&puzzle, values), ==, least);
    }
}

/* With few steps or a sum that is enough the answer is never more than the least. */
static void
test_never_more (void)
{
  AnyRandom random = { 12 };

  for (int i = 0; i < 3000; i++)
    {
      Puzzle puzzle = any_puzzle (&random);
      g_autoptr (Tables) hasty = tables_of (&puzzle);
      g_autoptr (Tables) content = tables_of (&puzzle);
      gint32 values[MOST], enough = (gint32) any_between (&random, 0, 60);
      gint64 least = least_by_trying (&puzzle);

      g_assert_cmpint (tables_least (hasty, TABLES_NEVER, 0, values), <=, least);
      g_assert_cmpint (tables_least (content, enough, 1000000, values), ==, MIN (least, enough));
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/tables/least", test_least);
  g_test_add_func ("/tables/never-more", test_never_more);
  return g_test_run ();
}
