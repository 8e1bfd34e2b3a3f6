/* combinations.c - one place for each opening that may move: all ways, the likeliest first
 *
 * Each has a bound: no layout of it costs less. The one with the lowest is looked at more closely,
 * step by step, and goes back among the others as long as its bound is below the best. */
#include "advice/combinations.h"

#include "advice/crew.h"

/* More combinations are not listed, but only some of them, of places farther apart. */
#define MAX_LISTED 1500000
#define SOME_LISTED 200000
/* Combinations looked at side by side before they are judged: the same on every machine. */
#define CHUNK 64
/* What a bound takes, in parts of a wall laid at a first look. */
#define FAR_SHARE 40
#define WALL_SHARE 6

/* How closely it was looked at. */
typedef enum
{
  CLOSE_NEAR,  /* bound of the runs that few openings change */
  CLOSE_RUNS,  /* of all runs */
  CLOSE_WALL,  /* of the wall */
  CLOSE_FIRST, /* laid at a first look */
  CLOSE_LAID,
} Close;

typedef struct
{
  gint64 bound;   /* see rank_of() */
  gint64 shift;   /* how far all openings are from where they were drawn */
  guint32 number; /* the places' indices, written in a mixed base */
  guint32 close;  /* Close */
} Combination;

typedef struct
{
  Search *search;
  PierBound *piers;
  GArray *heap;    /* Combination: none comes before the one at (i - 1) / 2 */
  guint every;     /* of the places of each opening, only each so many is looked at */
  gint64 residual; /* lowest rank of those that were laid and may be better than was found */
} Comparing;

/* --- ranks --- */

/* Breaches and cuts in one number. */
static gint64
rank_of (LayBound bound)
{
  return (gint64) bound.breaches << 32 | bound.cuts;
}

/* A combination whose bound has this rank or more is no better than the best: with least waste,
 * only when it has more breaches. */
static gint64
rank_to_beat (const Search *search)
{
  const Cost *best = &search->best.cost;

  if (search->aim == AIM_LEAST_WASTE)
    return rank_of ((LayBound){ best->breaches + 1, 0 });
  return rank_of ((LayBound){ best->breaches, best->cuts });
}

/* What a layout proves of its wall. */
static gint64
rank_of_laid (const Cost *cost)
{
  const gboolean known = cost->breaches == cost->breaches_at_least;

  return rank_of ((LayBound){ cost->breaches_at_least, known ? cost->cuts_at_least : 0 });
}

/* --- the heap --- */

static gboolean
comes_before (const Combination *a, const Combination *b)
{
  if (a->bound != b->bound)
    return a->bound < b->bound;
  if (a->shift != b->shift)
    return a->shift < b->shift;
  return a->number < b->number;
}

static Combination *
at (const Comparing *comparing, guint i)
{
  return &g_array_index (comparing->heap, Combination, i);
}

static void
swap (const Comparing *comparing, guint i, guint k)
{
  const Combination one = *at (comparing, i);

  *at (comparing, i) = *at (comparing, k);
  *at (comparing, k) = one;
}

static void
push (Comparing *comparing, const Combination *one)
{
  guint i = comparing->heap->len;

  g_array_append_vals (comparing->heap, one, 1);
  for (; i > 0 && comes_before (at (comparing, i), at (comparing, (i - 1) / 2)); i = (i - 1) / 2)
    swap (comparing, i, (i - 1) / 2);
}

static Combination
pop (Comparing *comparing)
{
  const Combination first = *at (comparing, 0);
  const guint n = comparing->heap->len - 1;
  guint i = 0;

  swap (comparing, 0, n);
  g_array_set_size (comparing->heap, n);
  while (2 * i + 1 < n)
    {
      guint least = 2 * i + 1;

      if (least + 1 < n && comes_before (at (comparing, least + 1), at (comparing, least)))
        least++;
      if (!comes_before (at (comparing, least), at (comparing, i)))
        break;
      swap (comparing, i, least);
      i = least;
    }
  return first;
}

static gboolean
any_may_be_better (const Comparing *comparing)
{
  return comparing->heap->len > 0 && at (comparing, 0)->bound < rank_to_beat (comparing->search);
}

/* --- listing --- */

static guint
n_places (const Free *one, guint every)
{
  return (one->at->len + every - 1) / every;
}

/* IMPROVE_TOO_MANY: more than `most`. */
static gint64
count_combinations (const Search *search, guint every, gint64 most)
{
  gint64 n = 1;

  for (guint i = 0; i < search->frees->len; i++)
    {
      n *= n_places (search_free_at (search, i), every);
      if (n > most)
        return IMPROVE_TOO_MANY;
    }
  return n;
}

static void
stand (const Comparing *comparing, gint64 number, Length *x)
{
  const Search *search = comparing->search;

  for (guint i = 0; i < search->n; i++)
    x[i] = wall_opening_at (search->wall, i)->x;
  for (guint i = 0; i < search->frees->len; i++)
    {
      const Free *one = search_free_at (search, i);
      const guint n = n_places (one, comparing->every);

      x[one->index] = g_array_index (one->at, Length, number % n * comparing->every);
      number /= n;
    }
}

/* Those that may be better than the best so far. FALSE when stopped. */
static gboolean
list (Comparing *comparing, gint64 n)
{
  Search *search = comparing->search;
  g_autofree Length *x = g_new (Length, MAX (search->n, 1));
  const gint64 beat = rank_to_beat (search);

  for (gint64 number = 0; number < n; number++)
    {
      Combination one = { .number = (guint32) number };

      if (search->how->stop != NULL && g_atomic_int_get (search->how->stop) != 0)
        return FALSE;
      stand (comparing, number, x);
      if (standing_overlaps (search, x))
        continue;
      search->result->n_possible++;
      one.bound = rank_of (pier_bound_near (comparing->piers, x));
      one.shift = standing_shift (search, x);
      if (one.bound < beat)
        push (comparing, &one);
    }
  return TRUE;
}

/* --- a closer look --- */

typedef struct
{
  const Comparing *comparing;
  Combination *combinations;
  Standing *standings;
} CloserJob;

static LayBound
bound_of_wall (const Search *search, const Length *x)
{
  g_autoptr (Wall) wall = standing_wall (search, x);
  g_autofree char *fault = wall_fault (wall, search->block, NULL);

  if (fault != NULL)
    return (LayBound){ 0, 0 };
  /* What is no better than the best is of no interest. */
  return lay_bound_below (wall, search->block,
                          (LayBound){ search->best.cost.breaches, search->best.cost.cuts });
}

static LayBound
bound_of_runs (const Comparing *comparing, const Combination *one, const Length *x)
{
  const LayBound far = pier_bound_far (comparing->piers, x);

  return (LayBound){ (gint32) (one->bound >> 32) + far.breaches,
                     (gint32) (one->bound & G_MAXUINT32) + far.cuts };
}

static gboolean
look_closer (guint i, gpointer data)
{
  const CloserJob *job = data;
  Combination *one = &job->combinations[i];
  Standing *standing = &job->standings[i];
  const Search *search = job->comparing->search;

  switch (++one->close)
    {
    case CLOSE_RUNS:
      one->bound = rank_of (bound_of_runs (job->comparing, one, standing->x));
      break;
    case CLOSE_WALL:
      one->bound = MAX (one->bound, rank_of (bound_of_wall (search, standing->x)));
      break;
    case CLOSE_FIRST:
    case CLOSE_LAID:
    default:
      return standing_lay (search, standing, one->close == CLOSE_FIRST ? LOOK_FIRST : LOOK_LAID);
    }
  return search->how->stop == NULL || g_atomic_int_get (search->how->stop) == 0;
}

/* Counts what the next look at it takes. */
static void
count_look (Search *search, const Combination *one)
{
  switch (one->close + 1)
    {
    case CLOSE_RUNS:
      search->work -= search->pieces / FAR_SHARE + 1;
      break;
    case CLOSE_WALL:
      search->work -= search->pieces / WALL_SHARE + 1;
      break;
    case CLOSE_FIRST:
    case CLOSE_LAID:
    default:
      search_count (search, 1, one->close + 1 == CLOSE_FIRST ? LOOK_FIRST : LOOK_LAID);
      break;
    }
}

/* Bounds are of the fewest cuts: with another aim they spare few of the walls. */
static void
skip_looks (const Search *search, Combination *one)
{
  if (search->aim != AIM_FEWEST_CUTS && one->close < CLOSE_WALL)
    one->close = CLOSE_WALL;
}

/* Puts it back among the others, unless there is nothing more to look at. */
static void
put_back (Comparing *comparing, Combination *one, const Standing *standing)
{
  if (one->close >= CLOSE_FIRST)
    {
      if (!standing->possible)
        return;
      one->bound = MAX (one->bound, rank_of_laid (&standing->cost));
      /* With least waste a second look at each takes too long: what a first one says is enough. */
      if (standing->cost.as_laid || comparing->search->aim == AIM_LEAST_WASTE)
        {
          comparing->residual = MIN (comparing->residual, one->bound);
          return;
        }
    }
  push (comparing, one);
}

/* Looks more closely at a chunk of those with the lowest bounds. FALSE when stopped. */
static gboolean
look_at_chunk (Comparing *comparing)
{
  Search *search = comparing->search;
  Combination chunk[CHUNK];
  Standing standings[CHUNK] = { 0 };
  CloserJob job = { comparing, chunk, standings };
  gboolean taken = FALSE, all;
  guint n = 0;

  for (; n < CHUNK && any_may_be_better (comparing); n++)
    {
      chunk[n] = pop (comparing);
      skip_looks (search, &chunk[n]);
      standings[n].x = g_new (Length, search->n);
      stand (comparing, chunk[n].number, standings[n].x);
      standings[n].shift = chunk[n].shift;
      count_look (search, &chunk[n]);
    }
  all = crew_run (n, search->how->threads, look_closer, &job)
        && standings_take_best (search, standings, n, &taken);
  for (guint i = 0; i < n; i++)
    {
      if (all)
        put_back (comparing, &chunk[i], &standings[i]);
      g_free (standings[i].x);
    }
  return all;
}

/* --- what is proven --- */

static void
conclude (Comparing *comparing)
{
  Search *search = comparing->search;
  Improvement *result = search->result;
  gint64 least = rank_of ((LayBound){ search->best.cost.breaches, search->best.cost.cuts });

  result->compared = !any_may_be_better (comparing);
  result->proven
      = search->aim == AIM_FEWEST_CUTS && result->compared && comparing->residual >= least;
  least = MIN (least, comparing->residual);
  if (!result->compared)
    least = MIN (least, at (comparing, 0)->bound);
  result->breaches_at_least = (gint32) (least >> 32);
  result->cuts_at_least = (gint32) (least & G_MAXUINT32);
}

/* Of too many combinations only what holds for all of them is told. */
static void
conclude_anywhere (Comparing *comparing)
{
  Search *search = comparing->search;
  const Cost *best = &search->best.cost;
  g_autofree GArray **places = g_new0 (GArray *, search->n);
  LayBound least;

  for (guint i = 0; i < search->frees->len; i++)
    places[search_free_at (search, i)->index] = search_free_at (search, i)->at;
  least = pier_bound_anywhere (comparing->piers, places);
  if (rank_of (least) > rank_of ((LayBound){ best->breaches, best->cuts }))
    least = (LayBound){ best->breaches, best->cuts };
  search->result->breaches_at_least = least.breaches;
  search->result->cuts_at_least = least.cuts;
  search->result->n_possible = 0;
  search->result->proven = search->aim == AIM_FEWEST_CUTS && least.breaches == best->breaches
                           && least.cuts == best->cuts;
}

/* FALSE when stopped. */
static gboolean
look_at_all (Comparing *comparing)
{
  while (comparing->search->work > 0 && any_may_be_better (comparing))
    if (!look_at_chunk (comparing))
      return FALSE;
  return TRUE;
}

/* Each so many of the places of each opening, so that there are not too many combinations. */
static gboolean
look_at_some (Comparing *comparing)
{
  Search *search = comparing->search;
  gint64 n;

  do
    n = count_combinations (search, ++comparing->every, SOME_LISTED);
  while (n == IMPROVE_TOO_MANY && comparing->every < 1000);
  return n == IMPROVE_TOO_MANY || (list (comparing, n) && look_at_all (comparing));
}

gboolean
combinations_compare (Search *search)
{
  Comparing comparing = { .search = search,
                          .piers = pier_bound_new (search->wall, search->block),
                          .heap = g_array_new (FALSE, FALSE, sizeof (Combination)),
                          .every = 1,
                          .residual = G_MAXINT64 };
  const gint64 n = count_combinations (search, 1, MAX_LISTED);
  gboolean all;

  search->result->combinations = n;
  if (n == IMPROVE_TOO_MANY)
    {
      all = look_at_some (&comparing);
      conclude_anywhere (&comparing);
    }
  else
    {
      all = list (&comparing, n) && look_at_all (&comparing);
      conclude (&comparing);
    }
  g_array_unref (comparing.heap);
  pier_bound_free (comparing.piers);
  return all;
}
