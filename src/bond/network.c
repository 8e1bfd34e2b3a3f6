/* network.c - the whole wall at once: one pattern for each segment
 *
 * Over the pools, sequential tree-reweighted message passing (Kolmogorov, "Convergent
 * Tree-reweighted Message Passing for Energy Minimization", IEEE TPAMI 28, 2006): exact on walls
 * whose segments form chains and trees, near it where piers close loops. After it each segment in
 * turn takes the cheapest path beside its neighbours, over all places, until nothing gets better;
 * what that finds goes back into the pools. Integers throughout, so every machine agrees. */
#include "bond/network.h"

#include "bond/bound.h"
#include "bond/path.h"
#include "bond/pool.h"
#include "bond/waste.h"

/* Messages are in whole costs times this, so that halves and thirds lose little. */
#define SCALE 12
/* Machine words compared before messages stop, in one search; on long walls what so many rounds
 * come to at the most. Counted, not timed, so that every machine stops at the same place; the
 * closer look of the bound goes on from there. */
#define WORK ((gint64) 10000000)
#define ROUNDS 4

typedef struct
{
  const Geometry *geometry;
  const gint *stop;
  Pools *pools;
  gint32 n;
  Cost **message;  /* by link, as geometry->links: what that neighbour tells, per own pattern */
  gint32 *mirror;  /* the link the other way */
  Pattern *chosen; /* owned */
  gint32 *number;  /* in its pool, while messages are passed */
  Cost *scratch;
  gint32 *order;
  WallBound *bound;
  Cost looked;  /* cuts and breaches that the closer look was given last; 0: none is to be */
  guint32 draw; /* which of the draws that part ties; 0: none */
  gint64 work;  /* words compared so far */
  gint64 most;  /* of these */
} Search;

static gboolean
stopped (const Search *search)
{
  return search->stop != NULL && g_atomic_int_get (search->stop) != 0;
}

/* --- messages --- */

static void
find_mirrors (Search *search)
{
  for (gint32 i = 0; i < search->n; i++)
    {
      const Segment *segment = geometry_segment (search->geometry, i);

      for (gint32 k = 0; k < segment->n_links; k++)
        {
          gint32 other = geometry_link (search->geometry, segment, k);
          const Segment *neighbour = geometry_segment (search->geometry, other);

          for (gint32 m = 0; m < neighbour->n_links; m++)
            if (geometry_link (search->geometry, neighbour, m) == i)
              search->mirror[segment->first_link + k] = neighbour->first_link + m;
        }
    }
}

/* Every pattern compared with every one of its neighbours'. */
static gint64
work_of_round (const Search *search)
{
  gint64 work = 0;

  for (gint32 i = 0; i < search->n; i++)
    {
      const Segment *segment = geometry_segment (search->geometry, i);
      const Pool *pool = pools_of (search->pools, i);

      for (gint32 k = 0; k < segment->n_links; k++)
        {
          const Pool *other
              = pools_of (search->pools, geometry_link (search->geometry, segment, k));

          work += (gint64) pool->n * other->n * MIN (other->n_words, pool->n_near);
        }
    }
  return work;
}

static void
clear_messages (Search *search)
{
  gint32 most = 1;

  for (gint32 i = 0; i < search->n; i++)
    {
      const Segment *segment = geometry_segment (search->geometry, i);
      gint32 n = pools_of (search->pools, i)->n;

      most = MAX (most, n);
      for (gint32 k = 0; k < segment->n_links; k++)
        {
          g_free (search->message[segment->first_link + k]);
          search->message[segment->first_link + k] = g_new0 (Cost, n);
        }
    }
  g_free (search->scratch);
  g_free (search->order);
  search->scratch = g_new (Cost, most);
  search->order = g_new (gint32, most);
}

/* A little more for each pattern, drawn anew for each `draw`: where many layouts are equally good,
 * messages say so of each pattern by itself, and what is read out of them does not fit together.
 * All of a wall together is far less than a cut. */
static Cost
little (const Search *search, gint32 i, gint32 p)
{
  guint64 x = (guint64) search->draw << 48 ^ (guint64) (guint32) i << 24 ^ (guint32) p;

  if (search->draw == 0)
    return 0;
  /* The finalizer of SplitMix64 (Steele, Lea, Flood, OOPSLA 2014). */
  x = (x ^ (x >> 30)) * G_GUINT64_CONSTANT (0xbf58476d1ce4e5b9);
  x = (x ^ (x >> 27)) * G_GUINT64_CONSTANT (0x94d049bb133111eb);
  return (Cost) ((x ^ (x >> 31)) >> (search->geometry->wishing ? 56 : 47)) * SCALE;
}

/* What each pattern of segment i costs with all that its neighbours told, into scratch. */
static void
gather (Search *search, gint32 i)
{
  const Segment *segment = geometry_segment (search->geometry, i);
  const Pool *pool = pools_of (search->pools, i);

  for (gint32 p = 0; p < pool->n; p++)
    search->scratch[p] = g_array_index (pool->costs, Cost, p) * SCALE + little (search, i, p);
  for (gint32 k = 0; k < segment->n_links; k++)
    {
      const Cost *message = search->message[segment->first_link + k];

      for (gint32 p = 0; p < pool->n; p++)
        search->scratch[p] += message[p];
    }
}

static gint
compare_by_cost (gconstpointer a, gconstpointer b, gpointer data)
{
  const Cost *costs = data;
  gint32 p = *(const gint32 *) a, q = *(const gint32 *) b;

  if (costs[p] != costs[q])
    return costs[p] < costs[q] ? -1 : 1;
  return p < q ? -1 : 1;
}

/* Tells the neighbour over link k of segment i, whose gathered costs are `total`, what each of its
 * patterns costs here at the least: the patterns are tried from the cheapest on, and no further
 * than where they cost more than what was found. */
static void
send (Search *search, gint32 i, gint32 k, const Cost *total, Cost share)
{
  const Segment *segment = geometry_segment (search->geometry, i);
  gint32 link = segment->first_link + k;
  const Pool *pool = pools_of (search->pools, i);
  const Pool *other = pools_of (search->pools, geometry_link (search->geometry, segment, k));
  Cost *told = search->message[search->mirror[link]];
  const Cost *heard = search->message[link];
  g_autofree Cost *own = g_new (Cost, pool->n);
  Cost least = COST_NONE;
  gint32 words = MIN (other->n_words, pool->n_near);

  for (gint32 p = 0; p < pool->n; p++)
    {
      own[p] = total[p] / share - heard[p];
      search->order[p] = p;
    }
  g_qsort_with_data (search->order, pool->n, sizeof (gint32), compare_by_cost, own);
  for (gint32 q = 0; q < other->n; q++)
    {
      Cost best = COST_NONE;
      gint32 m;

      for (m = 0; m < pool->n && own[search->order[m]] < best; m++)
        {
          gint32 p = search->order[m];

          /* Where one breach makes it no better, how many more does not matter. */
          gboolean any = best != COST_NONE && best - own[p] <= COST_BREACH * SCALE;
          Cost cost = own[p] + pool_conflicts (other, q, pool, p, any) * (COST_BREACH * SCALE);

          best = MIN (best, cost);
        }
      search->work += (gint64) m * words;
      told[q] = best;
      least = MIN (least, best);
    }
  for (gint32 q = 0; q < other->n; q++)
    told[q] -= least;
}

static void
pass_messages (Search *search, gint32 i, gboolean upwards)
{
  const Segment *segment = geometry_segment (search->geometry, i);
  gint32 below = segment->n_below, above = segment->n_links - below;
  Cost share = MAX (MAX (below, above), 1);
  gint32 from = upwards ? below : 0, to = upwards ? segment->n_links : below;

  if (from == to || search->work > search->most)
    return;
  gather (search, i);
  for (gint32 k = from; k < to; k++)
    send (search, i, k, search->scratch, share);
}

/* --- choosing --- */

/* The cheapest pattern beside those already chosen on one side (below when going upwards), and
 * what those on the other side tell; of equal ones the first, or the last. */
static void
decide (Search *search, gint32 i, gboolean upwards, gboolean last)
{
  const Segment *segment = geometry_segment (search->geometry, i);
  const Pool *pool = pools_of (search->pools, i);
  gint32 from = upwards ? 0 : segment->n_below, to = upwards ? segment->n_below : segment->n_links;
  Cost best = COST_NONE;

  for (gint32 p = 0; p < pool->n; p++)
    {
      Cost cost = g_array_index (pool->costs, Cost, p) * SCALE + little (search, i, p);

      for (gint32 k = 0; k < segment->n_links; k++)
        if (k < from || k >= to)
          cost += search->message[segment->first_link + k][p];
      for (gint32 k = from; k < to && cost <= best; k++)
        {
          gint32 other = geometry_link (search->geometry, segment, k);

          cost += pool_conflicts (pool, p, pools_of (search->pools, other), search->number[other],
                                  FALSE)
                  * (COST_BREACH * SCALE);
        }
      if (cost < best || (last && cost == best))
        {
          best = cost;
          search->number[i] = p;
        }
    }
}

static void
decide_all (Search *search, gboolean upwards, gboolean last)
{
  for (gint32 k = 0; k < search->n; k++)
    decide (search, upwards ? k : search->n - 1 - k, upwards, last);
}

/* Cost of the numbers chosen: pieces and laps. */
static Cost
cost_of_choice (const Search *search)
{
  Cost total = 0;

  for (gint32 i = 0; i < search->n; i++)
    {
      const Segment *segment = geometry_segment (search->geometry, i);
      const Pool *pool = pools_of (search->pools, i);

      total += g_array_index (pool->costs, Cost, search->number[i]);
      for (gint32 k = 0; k < segment->n_below; k++)
        {
          gint32 other = geometry_link (search->geometry, segment, k);

          total += pool_conflicts (pool, search->number[i], pools_of (search->pools, other),
                                   search->number[other], FALSE)
                   * COST_BREACH;
        }
    }
  return total;
}

static Cost
cost_of_counts (const Pattern *pattern)
{
  return COST_CUT * pattern->n_cuts + COST_BREACH * pattern->n_breaches
         + COST_WISH * pattern->n_wishes;
}

/* Whether nothing can have fewer breaches and cuts; what is only preferred counts as none. */
static gboolean
is_best (const Search *search, Cost cost)
{
  Cost cuts = cost % COST_BREACH / COST_CUT + (cost % COST_CUT > 0);

  return bound_is_met (search->bound, (gint32) (cost / COST_BREACH), (gint32) cuts);
}

/* Whether the numbers chosen are as good as any can be. */
static gboolean
choice_is_best (const Search *search)
{
  Cost total = 0;

  for (gint32 i = 0; i < search->n; i++)
    {
      const Segment *segment = geometry_segment (search->geometry, i);
      const Pool *pool = pools_of (search->pools, i);
      const Pattern *pattern = &g_array_index (pool->patterns, Pattern, search->number[i]);

      total += cost_of_counts (pattern);
      for (gint32 k = 0; k < segment->n_below; k++)
        {
          gint32 other = geometry_link (search->geometry, segment, k);

          total += COST_BREACH
                   * pool_conflicts (pool, search->number[i], pools_of (search->pools, other),
                                     search->number[other], FALSE);
        }
    }
  return is_best (search, total);
}

static void
keep_choice (Search *search)
{
  for (gint32 i = 0; i < search->n; i++)
    {
      const Pool *pool = pools_of (search->pools, i);

      pattern_clear (&search->chosen[i]);
      search->chosen[i]
          = pattern_copy (&g_array_index (pool->patterns, Pattern, search->number[i]));
    }
}

/* Passes messages until a choice that meets the bound is found or they bring nothing new; keeps the
 * best. */
static void
choose (Search *search, gint32 rounds, Cost *best)
{
  gint32 idle = 0;
  gboolean done = FALSE;

  clear_messages (search);
  for (gint32 round = 0; round < rounds && idle < 2 && !done && !stopped (search); round++)
    {
      for (gint32 i = 0; i < search->n && !stopped (search); i++)
        pass_messages (search, i, TRUE);
      for (gint32 i = search->n - 1; i >= 0 && !stopped (search); i--)
        pass_messages (search, i, FALSE);
      idle++;
      for (gint32 way = 0; way < 4 && !done; way++)
        {
          Cost cost;

          decide_all (search, way % 2 == 0, way / 2 == 1);
          cost = cost_of_choice (search);
          done = choice_is_best (search) || search->work > search->most;
          if (cost >= *best)
            continue;
          *best = cost;
          keep_choice (search);
          idle = 0;
        }
    }
}

/* --- each segment beside its neighbours --- */

/* Adds to the tolls of a segment's places what one neighbour's perpends make of them. */
static void
add_tolls (const Geometry *geometry, const GArray *places, const Segment *other,
           const Pattern *neighbour, Cost *toll)
{
  const Length wanted = geometry->wanted_lap, least = geometry->min_lap;
  const Length reach = MAX (wanted, least);
  const Length *faces = (const Length *) (gpointer) places->data;
  const gint32 n = pattern_n_perpends (other, neighbour);
  const gint32 shift = geometry->wishing ? COST_LAP_SHIFT : 0;
  /* A last one is farther off than any place reaches. */
  g_autofree Length *perpends = g_new (Length, n + 1);
  gint32 first = 0;

  for (gint32 k = 0; k < n; k++)
    perpends[k] = pattern_perpend (other, neighbour, k);
  perpends[n] = G_MAXINT32;
  for (guint i = 0; i < places->len; i++)
    {
      const Length face = faces[i];
      Length nearest = wanted;

      while (perpends[first] <= face - reach)
        first++;
      for (gint32 k = first; perpends[k] < face + reach; k++)
        {
          const Length lap = ABS (perpends[k] - face);

          nearest = MIN (nearest, lap);
          if (lap < least)
            toll[i] += COST_BREACH + COST_SHORTNESS * (least - lap) / least;
        }
      toll[i] += (wanted - nearest) >> shift;
    }
}

static void
add_regular_tolls (const Geometry *geometry, const Segment *segment, const GArray *places,
                   Cost *toll)
{
  for (guint i = 0; i < places->len; i++)
    if (!pattern_is_regular (geometry, segment, g_array_index (places, Length, i)))
      toll[i] += COST_IRREGULAR;
}

/* What a perpend at each of some places of segment i costs beside its neighbours. */
static void
find_tolls (const Search *search, gint32 i, const GArray *places, Cost *toll)
{
  const Segment *segment = geometry_segment (search->geometry, i);

  for (gint32 k = 0; k < segment->n_links; k++)
    {
      gint32 other = geometry_link (search->geometry, segment, k);

      add_tolls (search->geometry, places, geometry_segment (search->geometry, other),
                 &search->chosen[other], toll);
    }
  if (search->geometry->regular)
    add_regular_tolls (search->geometry, segment, places, toll);
  rules_add_tolls (search->geometry, segment, places, toll);
}

/* Of the perpends that segment i has, wherever they are: the bound comes upon some at no place. */
static Cost
tolls_of_chosen (const Search *search, gint32 i, const GArray *places, const Cost *toll)
{
  const Pattern *pattern = &search->chosen[i];
  g_autoptr (GArray) off = g_array_new (FALSE, FALSE, sizeof (Length));
  g_autofree Cost *more = NULL;
  Cost sum = 0;
  guint at = 0;

  for (gint32 k = 0; k < pattern->n_pieces - 1; k++)
    {
      while (at < places->len && g_array_index (places, Length, at) < pattern->faces[k])
        at++;
      if (at < places->len && g_array_index (places, Length, at) == pattern->faces[k])
        sum += toll[at];
      else
        g_array_append_val (off, pattern->faces[k]);
    }
  if (off->len == 0)
    return sum;
  more = g_new0 (Cost, off->len);
  find_tolls (search, i, off, more);
  for (guint k = 0; k < off->len; k++)
    sum += more[k];
  return sum;
}

static Cost
cost_of_pieces (const Geometry *geometry, const Segment *segment, const Pattern *pattern)
{
  Cost cost = 0;

  for (gint32 i = 0; i < pattern->n_pieces; i++)
    {
      Length x = i == 0 ? segment->a : pattern->faces[i - 1];
      Length end = i == pattern->n_pieces - 1 ? segment->b : pattern->faces[i] - geometry->joint;

      cost += pattern_piece_cost (geometry, segment, x, end - x);
    }
  return cost;
}

/* Takes the cheapest path for segment i beside its neighbours; what it saves, 0 when nothing. */
static Cost
improve (Search *search, gint32 i)
{
  const Segment *segment = geometry_segment (search->geometry, i);
  const GArray *places = pools_of (search->pools, i)->places;
  g_autofree Cost *toll = g_new0 (Cost, places->len + 1);
  Pattern *now = &search->chosen[i], better;
  Cost cost_now, cost;

  find_tolls (search, i, places, toll);
  cost_now
      = cost_of_pieces (search->geometry, segment, now) + tolls_of_chosen (search, i, places, toll);
  better = path_solve (search->geometry, segment, places, toll, &cost);
  if (cost >= cost_now)
    {
      pattern_clear (&better);
      return 0;
    }
  pattern_clear (now);
  *now = better;
  return cost_now - cost;
}

/* Sweeps up and down until nothing gets better. Says whether a cut or a breach went. */
static gboolean
polish (Search *search, gint32 sweeps)
{
  gboolean gained = FALSE;
  g_autofree gboolean *stale = g_new (gboolean, MAX (search->n, 1));
  gboolean again = TRUE;

  for (gint32 i = 0; i < search->n; i++)
    stale[i] = TRUE;
  for (gint32 sweep = 0; sweep < sweeps && again; sweep++)
    {
      again = FALSE;
      for (gint32 k = 0; k < search->n && !stopped (search); k++)
        {
          gint32 i = sweep % 2 == 0 ? k : search->n - 1 - k;
          const Segment *segment = geometry_segment (search->geometry, i);
          Cost saved;

          if (!stale[i])
            continue;
          stale[i] = FALSE;
          saved = improve (search, i);
          if (saved == 0)
            continue;
          again = TRUE;
          gained = gained || saved >= COST_CUT / 2;
          for (gint32 m = 0; m < segment->n_links; m++)
            stale[geometry_link (search->geometry, segment, m)] = TRUE;
        }
    }
  return gained;
}

/* --- all together --- */

/* Perpends of two patterns within the least lap of each other, pairs. */
static gint32
short_laps (const Geometry *geometry, const Segment *upper, const Pattern *pattern,
            const Segment *lower, const Pattern *below)
{
  gint32 pairs = 0, first = 0, n = pattern_n_perpends (lower, below);

  for (gint32 p = 0; p < pattern_n_perpends (upper, pattern); p++)
    {
      Length face = pattern_perpend (upper, pattern, p);

      while (first < n && pattern_perpend (lower, below, first) <= face - geometry->min_lap)
        first++;
      for (gint32 q = first; q < n && pattern_perpend (lower, below, q) < face + geometry->min_lap;
           q++)
        pairs++;
    }
  return pairs;
}

Cost
network_cost (const Geometry *geometry, const Pattern *patterns)
{
  Cost total = 0;

  for (gint32 i = 0; i < (gint32) geometry->segments->len; i++)
    {
      const Segment *segment = geometry_segment (geometry, i);
      const Pattern *pattern = &patterns[i];

      total += cost_of_counts (pattern);
      for (gint32 k = 0; k < segment->n_below; k++)
        {
          gint32 other = geometry_link (geometry, segment, k);

          total += COST_BREACH
                   * short_laps (geometry, segment, pattern, geometry_segment (geometry, other),
                                 &patterns[other]);
        }
    }
  return total;
}

static Cost
cost_of_chosen (const Search *search)
{
  return network_cost (search->geometry, search->chosen);
}

static void
learn (Search *search)
{
  for (gint32 i = 0; i < search->n; i++)
    search->number[i] = pool_add (search->pools, i, &search->chosen[i]);
}

static Pattern *
copy_chosen (const Search *search)
{
  Pattern *copy = g_new0 (Pattern, MAX (search->n, 1));

  for (gint32 i = 0; i < search->n; i++)
    copy[i] = pattern_copy (&search->chosen[i]);
  return copy;
}

/* Takes `other` (owned, NULL when stopped) for what was chosen where it is better. */
static void
keep_better (Search *search, Pattern *other)
{
  Pattern *before = search->chosen;
  Cost cost = cost_of_chosen (search);

  if (other == NULL)
    return;
  search->chosen = other;
  if (cost_of_chosen (search) >= cost)
    {
      search->chosen = before;
      before = other;
    }
  patterns_free (before, search->n);
}

static gboolean
chosen_is_best (const Search *search)
{
  return is_best (search, cost_of_chosen (search));
}

/* What else the messages may be read as, each made better beside its neighbours. */
static void
polish_ways (Search *search)
{
  for (gint32 way = 0; way < 4 && !chosen_is_best (search) && !stopped (search); way++)
    {
      Pattern *before = copy_chosen (search);

      decide_all (search, way % 2 == 0, way / 2 == 1);
      keep_choice (search);
      polish (search, 6);
      keep_better (search, before);
    }
}

/* Where what was found is above the bound, a closer look may raise that, and spare the search. */
static void
look_closer (Search *search)
{
  Cost cost = cost_of_chosen (search);
  Bound found = { (gint32) (cost / COST_BREACH), (gint32) (cost % COST_BREACH / COST_CUT) };
  Pattern *better;

  if (stopped (search) || is_best (search, cost) || cost / COST_CUT >= search->looked)
    return;
  search->looked = cost / COST_CUT;
  better = bound_look_closer (search->bound, found, search->stop);
  if (better == NULL)
    return;
  keep_better (search, better);
  polish (search, 4);
}

static void
search_all (Search *search)
{
  Cost best = COST_NONE;

  choose (search, 4, &best);
  if (stopped (search))
    return;
  polish (search, 4);
  look_closer (search);
  if (chosen_is_best (search) || search->geometry->quick)
    return;
  pools_widen (search->pools);
  for (gint32 round = 0;
       round < (search->geometry->rich ? 1 : 2) && !chosen_is_best (search) && !stopped (search);
       round++)
    {
      learn (search);
      best = cost_of_chosen (search);
      search->draw = (guint32) round;
      choose (search, 6, &best);
      if (stopped (search))
        return;
      polish (search, 6);
      polish_ways (search);
    }
}

/* Regular bond: each segment by itself first, then mended where it breaks a rule. */
static void
search_regular (Search *search)
{
  for (gint32 i = 0; i < search->n && !stopped (search); i++)
    {
      const Segment *segment = geometry_segment (search->geometry, i);
      const GArray *places = pools_of (search->pools, i)->places;
      g_autofree Cost *toll = g_new0 (Cost, places->len + 1);
      Cost cost;

      add_regular_tolls (search->geometry, segment, places, toll);
      rules_add_tolls (search->geometry, segment, places, toll);
      search->chosen[i] = path_solve (search->geometry, segment, places, toll, &cost);
    }
  polish (search, 8);
}

/* As a bound on breaches: whatever there are, they are not to be mended. */
#define ANY_BREACHES (1 << 20)

static gint32
breaches_of_chosen (const Search *search)
{
  return (gint32) (cost_of_chosen (search) / COST_BREACH);
}

/* Where the bound is not met, what the regular bond comes to may be better still. Where there are
 * breaches that may be avoidable, so may what a search over more places finds. */
static void
search_on (Search *search)
{
  Geometry other = *search->geometry;
  WallBound any;

  if (chosen_is_best (search) || stopped (search) || other.rich || other.quick
      || other.allowed != NULL)
    return;
  other.regular = TRUE;
  bound_init_known (&any, &other, (Bound){ ANY_BREACHES, 0 });
  keep_better (search, network_solve (&other, &any, search->stop));
  other.regular = FALSE;
  other.rich = TRUE;
  if (breaches_of_chosen (search) > search->bound->least.breaches && !stopped (search))
    keep_better (search, network_solve (&other, search->bound, search->stop));
}

/* Fewer units to order may come with fewer cuts. */
static void
exchange (Search *search)
{
  Pattern *before = copy_chosen (search);

  waste_improve (search->pools, search->chosen, search->stop);
  keep_better (search, before);
}

/* Puts `other` (owned) in the place of what was chosen, unless `worse` says that it is no better.
 */
static void
settle (Search *search, Pattern *other, gboolean worse)
{
  Pattern *loser = worse ? other : search->chosen;

  search->chosen = worse ? search->chosen : other;
  patterns_free (loser, search->n);
}

/* Where the regular bond has breaches that may be avoidable and the layout with the fewest cuts has
 * fewer, that is made as regular as can be. */
static void
mend_regular (Search *search)
{
  Geometry plain = *search->geometry;
  gint32 breaches = breaches_of_chosen (search);
  Pattern *mended, *other;
  Cost cost;

  plain.regular = FALSE;
  if (stopped (search) || chosen_is_best (search) || breaches <= search->bound->least.breaches)
    return;
  mended = search->chosen;
  search->chosen = network_solve (&plain, search->bound, search->stop);
  if (search->chosen == NULL || breaches_of_chosen (search) >= breaches)
    {
      patterns_free (search->chosen, search->n);
      search->chosen = mended;
      return;
    }
  patterns_free (mended, search->n);
  other = copy_chosen (search);
  cost = cost_of_chosen (search);
  polish (search, 8);
  /* Not more breaches, and, so that the fewest cuts stay the fewest, not better in cuts. */
  settle (search, other,
          cost_of_chosen (search) >= cost && breaches_of_chosen (search) <= cost / COST_BREACH);
}

static void
search_clear (Search *search)
{
  for (guint i = 0; i < search->geometry->links->len; i++)
    g_free (search->message[i]);
  g_free (search->message);
  g_free (search->mirror);
  g_free (search->number);
  g_free (search->scratch);
  g_free (search->order);
  pools_free (search->pools);
}

Pattern *
network_solve (const Geometry *geometry, WallBound *bound, const gint *stop)
{
  Search search
      = { .geometry = geometry,
          .stop = stop,
          .n = (gint32) geometry->segments->len,
          .bound = bound,
          .looked
          = geometry->rich || geometry->quick || geometry->allowed != NULL ? 0 : COST_NONE };
  guint links = geometry->links->len;

  search.pools = pools_new (geometry);
  search.message = g_new0 (Cost *, MAX (links, 1));
  search.mirror = g_new0 (gint32, MAX (links, 1));
  search.number = g_new0 (gint32, MAX (search.n, 1));
  search.chosen = g_new0 (Pattern, MAX (search.n, 1));
  find_mirrors (&search);
  search.most = MAX (WORK, ROUNDS * work_of_round (&search));
  if (geometry->regular)
    {
      search_regular (&search);
      mend_regular (&search);
    }
  else
    {
      search_all (&search);
      search_on (&search);
      look_closer (&search);
      if (!geometry->quick && geometry->allowed == NULL && !chosen_is_best (&search))
        exchange (&search);
    }
  search_clear (&search);
  if (stopped (&search))
    {
      patterns_free (search.chosen, search.n);
      return NULL;
    }
  return search.chosen;
}
