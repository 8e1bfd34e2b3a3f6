/* test-slopes.c - small walls under slopes against everything that can be laid on cells
 *
 * Dry units of 160 x 100 under slopes of 1 in 2, where all runs begin and end on cells of 40 mm: 20
 * mm, the toe, are left there. Of each wall every layout on the cells is looked at, course on
 * course; no bound may be above the best of them. */
#include "any-wall.h"
#include "bond/lay.h"
#include "check-layout.h"
#include "sanitized.h"

#define CELL LENGTH_MM (40)
#define RISE LENGTH_MM (20)
#define COURSE LENGTH_MM (100)
#define UNIT 4 /* cells */
#define N_WALLS (SANITIZED ? 40 : 1200)

typedef struct
{
  int breaches, cuts;
} Score;

typedef struct
{
  guint32 perpends; /* bit i: between cells i and i + 1, from the wall's left end */
  Score own;
} Way;

typedef struct
{
  Block block;
  Wall *wall;
  int n;                       /* cells long */
  int piece, raked, lap;       /* limits, cells */
  int low[8], high[8], n_runs; /* by course: its run */
} Small;

static gboolean
is_better (Score a, Score b)
{
  return a.breaches != b.breaches ? a.breaches < b.breaches : a.cuts < b.cuts;
}

/* --- the wall --- */

static Length
height_at (const Small *small, int cell)
{
  return wall_top_at (small->wall, cell * CELL, SIDE_RIGHT);
}

static void
make (Small *small, guint64 seed)
{
  AnyRandom random = { seed };
  Length eaves, height;
  int at;
  Wall *wall = wall_new ();

  small->n = (int) any_between (&random, 8, 14);
  at = any_percent (&random, 50) ? (any_percent (&random, 50) ? 0 : small->n)
                                 : (int) any_between (&random, 1, small->n - 1);
  eaves = (Length) any_between (&random, 0, 6) * RISE;
  wall->length = small->n * CELL;
  height = eaves + MAX (at, small->n - at) * RISE;
  if (at > 0)
    top_list_add (wall->tops, 0, at * RISE);
  top_list_add (wall->tops, at * CELL, 0);
  if (at < small->n)
    top_list_add (wall->tops, wall->length, (small->n - at) * RISE);
  wall->height = height;
  small->piece = (int) any_between (&random, 1, 3);
  small->raked = any_percent (&random, 40) ? (int) any_between (&random, 1, 4) : small->piece;
  small->lap = (int) any_between (&random, 0, 2);
  wall->laying.given = LAYING_FIRST_BED | LAYING_BED | LAYING_HEAD | LAYING_MIN_PIECE
                       | LAYING_MIN_LAP | LAYING_MIN_RIP | LAYING_MIN_RAKED;
  wall->laying.min_piece = small->piece * CELL;
  wall->laying.min_raked = small->raked * CELL;
  wall->laying.min_lap = small->lap * CELL;
  wall->laying.min_rip = 1;
  wall->laying.first_bed = wall->laying.bed = wall->laying.head = 0;
  small->block = block_default ();
  small->block.length = UNIT * CELL;
  small->block.height = COURSE;
  small->wall = wall;
  /* A run is where 20 mm of the course are left. */
  for (small->n_runs = 0; small->n_runs < 8; small->n_runs++)
    {
      const Length needed = small->n_runs * COURSE + RISE;
      int low = 0, high = small->n;

      while (low < high && height_at (small, low) < needed)
        low++;
      while (high > low && wall_top_at (wall, high * CELL, SIDE_LEFT) < needed)
        high--;
      if (low >= high)
        break;
      small->low[small->n_runs] = low;
      small->high[small->n_runs] = high;
    }
}

/* --- ways to lay a run --- */

/* One whose top is below the course's anywhere is raked; the top is highest in between. */
static void
count_piece (const Small *small, int course, int from, int to, Score *score)
{
  const Length top = (course + 1) * COURSE;
  const gboolean raked = MIN (height_at (small, from), height_at (small, to)) < top;

  score->breaches += to - from < (raked ? small->raked : small->piece);
  score->cuts += raked || to - from < UNIT;
}

static void
add_ways (const Small *small, int course, int from, Way way, GArray *ways)
{
  const int end = small->high[course];

  for (int to = from + 1; to <= MIN (from + UNIT, end); to++)
    {
      Way next = way;

      count_piece (small, course, from, to, &next.own);
      if (to == end)
        {
          g_array_append_val (ways, next);
          continue;
        }
      next.perpends |= 1u << to;
      add_ways (small, course, to, next, ways);
    }
}

static int
short_laps (const Small *small, guint32 below, guint32 above)
{
  int n = 0;

  for (int by = 1 - small->lap; by < small->lap; by++)
    n += __builtin_popcount (above & (by < 0 ? below >> -by : below << by));
  return n;
}

/* The best of all layouts; the scores of each course's ways take in the courses below. */
static Score
best_of_all (const Small *small)
{
  g_autoptr (GArray) below = NULL;
  Score best = { G_MAXINT, 0 };

  for (int course = 0; course < small->n_runs; course++)
    {
      GArray *ways = g_array_new (FALSE, FALSE, sizeof (Way));

      add_ways (small, course, small->low[course], (Way){ 0, { 0, 0 } }, ways);
      for (guint i = 0; below != NULL && i < ways->len; i++)
        {
          Way *way = &g_array_index (ways, Way, i);
          Score least = { G_MAXINT, 0 };

          for (guint k = 0; k < below->len; k++)
            {
              const Way *under = &g_array_index (below, Way, k);
              Score score = under->own;

              if (score.breaches > least.breaches)
                continue;
              score.breaches += short_laps (small, under->perpends, way->perpends);
              least = is_better (score, least) ? score : least;
            }
          way->own.breaches += least.breaches;
          way->own.cuts += least.cuts;
        }
      g_clear_pointer (&below, g_array_unref);
      below = ways;
    }
  for (guint i = 0; i < below->len; i++)
    if (is_better (g_array_index (below, Way, i).own, best))
      best = g_array_index (below, Way, i).own;
  return best;
}

static void
test_all (void)
{
  int worse = 0, proven = 0, n = 0;

  for (guint64 seed = 0; seed < N_WALLS; seed++)
    {
      Small small = { .n = 0 };
      Score best;
      const Proof *proof;

      make (&small, seed);
      g_autofree char *fault = wall_fault (small.wall, &small.block, NULL);
      if (fault == NULL && small.n_runs > 0)
        {
          g_autoptr (Layout) layout = lay_wall (small.wall, &small.block, NULL);
          g_autofree char *wrong = check_layout (small.wall, &small.block, layout);

          g_assert_cmpstr (wrong, ==, NULL);
          proof = &layout->proof;
          best = best_of_all (&small);
          g_test_message ("wall %d: %d breaches, %d cuts; at least %d, %d; laid %d, %d", (int) seed,
                          best.breaches, best.cuts, proof->breaches_at_least, proof->cuts_at_least,
                          proof->breaches, proof->cuts);
          g_assert_cmpint (proof->breaches_at_least, <=, best.breaches);
          if (proof->breaches == best.breaches)
            g_assert_cmpint (proof->cuts_at_least, <=, best.cuts);
          worse += is_better (best, (Score){ proof->breaches, proof->cuts });
          proven += proof->proven;
          n++;
        }
      block_clear (&small.block);
      wall_unref (small.wall);
    }
  g_test_message ("%d walls, %d proven, %d laid worse than the best", n, proven, worse);
  g_assert_cmpint (n, >, N_WALLS * 9 / 10);
  g_assert_cmpint (worse * 100, <=, 3 * n);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/slopes/every-layout", test_all);
  return g_test_run ();
}
