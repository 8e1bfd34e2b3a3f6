/* symmetry.c - lays a wall so that perpends mirror each other, where a rule wants that
 *
 * Symmetry ties the segments of one course to each other, laps tie courses that follow: with whole
 * courses as nodes the wall is a chain. Each kind of course gets a pool of ways to lay it, each
 * symmetrical where it can be: by itself, and beside what the courses below and above may be. The
 * best choice of one way a course is then found exactly along the chain, every course laid anew
 * beside its neighbours in it, and so on until nothing gets better. What was laid without the rule
 * is among the ways, so that the result is never worse. */
#include "bond/symmetry.h"

#include "bond/course-way.h"
#include "bond/lengths.h"
#include "bond/network.h"

#define MOST_WAYS 40 /* in a pool, before courses are laid beside those chosen */
#define QUICK_WAYS 8
#define LEAST_WAYS 4                  /* the same on a wall of any size */
#define CHAIN_WORK ((gint64) 8000000) /* perpends compared in one choice along the chain, about */
#define ROUNDS 6                      /* of choosing and of laying courses anew */
#define REACH 4 /* courses laid one beside the other, where one alone gets no better */
/* Pieces looked at, of which the pools may take half. Counted, not timed, so that every machine
 * stops at the same place. */
#define WORK_A_PIECE ((gint64) 120000)
#define LEAST_WORK ((gint64) 32000000)
#define MOST_WORK ((gint64) 200000000)
#define QUICK_SHARE 16

typedef struct
{
  const Geometry *geometry;
  const gint *stop;
  gint32 n;         /* courses */
  gint32 *kind_of;  /* by course, from 0 */
  GPtrArray *kinds; /* Kind */
  gint32 *chosen;   /* by course: the number of its way */
  gint32 most_ways;
  Effort effort;
} Search;

static gboolean
stopped (const Search *search)
{
  return search->stop != NULL && g_atomic_int_get (search->stop) != 0;
}

/* --- kinds of courses --- */

static void
find_kinds (Search *search)
{
  for (gint32 c = 0; c < search->n; c++)
    {
      Kind *kind = kind_new (search->geometry, c + 1, way_free);
      guint at = 0;

      while (at < search->kinds->len
             && !kind_same (search->geometry, g_ptr_array_index (search->kinds, at), kind))
        at++;
      search->kind_of[c] = (gint32) at;
      if (at == search->kinds->len)
        g_ptr_array_add (search->kinds, kind);
      else
        kind_free (kind);
    }
}

static Kind *
kind_at (const Search *search, gint32 c)
{
  return g_ptr_array_index (search->kinds, search->kind_of[c]);
}
static const Way *
way_at (const Search *search, gint32 c, gint32 number)
{
  return g_ptr_array_index (kind_at (search, c)->ways, number);
}

/* --- pools --- */

static gint32
lay_course (Search *search, Kind *kind, const Way *below, const Way *above, gboolean rightwards)
{
  return way_lay (search->geometry, kind, below, above, rightwards, &search->effort);
}

static gboolean
has_room (const Search *search, const Kind *kind)
{
  return (gint32) kind->ways->len < search->most_ways
         && search->effort.done < search->effort.most / 2 && !stopped (search);
}

/* What was laid without the rule. */
static void
add_given (Search *search, const Pattern *patterns)
{
  for (gint32 c = 0; c < search->n; c++)
    {
      Kind *kind = kind_at (search, c);
      Pattern *copy = g_new0 (Pattern, MAX (kind->n, 1));
      gint32 first;

      mirror_segments (search->geometry, c + 1, &first);
      for (gint32 i = 0; i < kind->n; i++)
        copy[i] = pattern_copy (&patterns[first + i]);
      search->chosen[c] = way_add (search->geometry, kind, copy);
    }
}

/* Course c beside each way of its neighbour that is new to it. */
static void
add_replies (Search *search, gint32 c, gint32 other, guint *from)
{
  Kind *kind = kind_at (search, c);
  guint past = kind_at (search, other)->ways->len;

  for (; *from < past && has_room (search, kind); ++*from)
    for (int way = 0; way < 4 && has_room (search, kind); way++)
      {
        const Way *beside = way_at (search, other, (gint32) *from);
        gboolean both = way < 2;

        lay_course (search, kind, both || other < c ? beside : NULL,
                    both || other > c ? beside : NULL, way % 2 == 0);
      }
}

/* Whether two courses that follow, seen from either, are of the kinds of some two before them. */
static gboolean
is_seen (const Search *search, gint32 c, gint32 other)
{
  gint32 step = other - c;

  for (gint32 d = MAX (0, -step); d < c && d + step < search->n; d++)
    if (search->kind_of[d] == search->kind_of[c]
        && search->kind_of[d + step] == search->kind_of[other])
      return TRUE;
  return FALSE;
}

/* A course by itself, and beside half bond about its axes in either phase. */
static void
add_first (Search *search, Kind *kind)
{
  const Length pieces[] = { -1, search->geometry->unit };

  for (int way = 0; way < 2 && has_room (search, kind); way++)
    lay_course (search, kind, NULL, NULL, way == 0);
  for (guint i = 0; i < G_N_ELEMENTS (pieces) && has_room (search, kind); i++)
    {
      g_autoptr (GArray) faces = g_array_new (FALSE, FALSE, sizeof (Length));
      Way bond = { .faces = faces };

      for (guint a = 0; a < kind->axes->len; a++)
        kind_add_grid (search->geometry, kind, &g_array_index (kind->axes, Axis, a), pieces[i],
                       faces);
      pattern_sort_places (faces);
      lay_course (search, kind, &bond, NULL, TRUE);
    }
}

static void
fill_pools (Search *search)
{
  g_autofree guint *replied = g_new0 (guint, 2 * MAX (search->n, 1));

  for (guint i = 0; i < search->kinds->len; i++)
    add_first (search, g_ptr_array_index (search->kinds, i));
  for (int round = 0; round < 4; round++)
    for (gint32 c = 0; c < search->n; c++)
      for (int up = 0; up < 2; up++)
        {
          gint32 other = up ? c + 1 : c - 1;

          if (other >= 0 && other < search->n && !is_seen (search, c, other))
            add_replies (search, c, other, &replied[2 * c + up]);
        }
}

/* --- the chain --- */

static Cost
cost_of_chosen (const Search *search)
{
  Cost cost = 0;

  for (gint32 c = 0; c < search->n; c++)
    {
      const Way *way = way_at (search, c, search->chosen[c]);

      cost += way->own;
      if (c > 0)
        cost += way_cost_between (search->geometry, way,
                                  way_at (search, c - 1, search->chosen[c - 1]));
    }
  return cost;
}

/* The best way of course c - 1 below each way of course c; adds what that costs to `cost`. */
static void
link_courses (const Search *search, gint32 c, const Cost *below, Cost *cost, gint32 *from)
{
  for (guint p = 0; p < kind_at (search, c)->ways->len; p++)
    {
      const Way *way = way_at (search, c, (gint32) p);
      Cost best = COST_NONE;

      for (guint q = 0; c > 0 && q < kind_at (search, c - 1)->ways->len; q++)
        if (below[q] < best)
          {
            const Way *lower = way_at (search, c - 1, (gint32) q);
            Cost sum = below[q] + way_cost_between (search->geometry, way, lower);

            if (sum < best)
              {
                best = sum;
                from[p] = (gint32) q;
              }
          }
      cost[p] = way->own + (c > 0 ? best : 0);
    }
}

/* One way for every course so that all together cost the least. */
static void
choose (Search *search)
{
  Cost **cost = g_new0 (Cost *, search->n + 1);
  gint32 **from = g_new0 (gint32 *, search->n + 1);

  for (gint32 c = 0; c < search->n; c++)
    {
      guint n = kind_at (search, c)->ways->len;

      cost[c] = g_new0 (Cost, n);
      from[c] = g_new0 (gint32, n);
      link_courses (search, c, c > 0 ? cost[c - 1] : NULL, cost[c], from[c]);
    }
  for (gint32 c = search->n - 1; c >= 0; c--)
    {
      gint32 best = 0;

      for (guint p = 1; p < kind_at (search, c)->ways->len; p++)
        if (cost[c][p] < cost[c][best])
          best = (gint32) p;
      search->chosen[c] = c == search->n - 1 ? best : from[c + 1][search->chosen[c + 1]];
    }
  for (gint32 c = 0; c < search->n; c++)
    {
      g_free (cost[c]);
      g_free (from[c]);
    }
  g_free (cost);
  g_free (from);
}

static Cost
cost_of_course (const Search *search, gint32 c, gint32 number)
{
  const Way *way = way_at (search, c, number);
  Cost cost = way->own;

  if (c > 0)
    cost += way_cost_between (search->geometry, way, way_at (search, c - 1, search->chosen[c - 1]));
  if (c < search->n - 1)
    cost += way_cost_between (search->geometry, way_at (search, c + 1, search->chosen[c + 1]), way);
  return cost;
}

/* Lays course c anew beside those chosen, and takes what is better. */
static void
lay_anew (Search *search, gint32 c)
{
  const Way *below = c > 0 ? way_at (search, c - 1, search->chosen[c - 1]) : NULL;
  const Way *above = c < search->n - 1 ? way_at (search, c + 1, search->chosen[c + 1]) : NULL;

  for (int way = 0; way < 2 && search->effort.done < search->effort.most; way++)
    {
      gint32 number = lay_course (search, kind_at (search, c), below, above, way == 0);

      if (cost_of_course (search, c, number) < cost_of_course (search, c, search->chosen[c]))
        search->chosen[c] = number;
    }
}

/* Whether anything of a course is a breach that may be mended. */
static gboolean
is_bad (const Search *search, gint32 c)
{
  return cost_of_course (search, c, search->chosen[c]) >= COST_BREACH / 2;
}

/* Lays course c beside its neighbour on one side alone, then those on the other side of it, each
 * beside the one before: what one course cannot do, some may together. */
static void
lay_on (Search *search, gint32 c, gint32 step)
{
  const Way *before = c - step >= 0 && c - step < search->n
                          ? way_at (search, c - step, search->chosen[c - step])
                          : NULL;

  for (gint32 k = 0;
       k < REACH && c >= 0 && c < search->n && search->effort.done < search->effort.most;
       k++, c += step)
    {
      gint32 number = lay_course (search, kind_at (search, c), step > 0 ? before : NULL,
                                  step > 0 ? NULL : before, k % 2 == 0);

      before = way_at (search, c, number);
    }
}

static void
settle (Search *search)
{
  Cost before = COST_NONE, cost;

  for (int round = 0; round < ROUNDS && !stopped (search); round++)
    {
      choose (search);
      for (gint32 k = 0; k < 2 * search->n && !stopped (search); k++)
        lay_anew (search, k < search->n ? k : 2 * search->n - 1 - k);
      cost = cost_of_chosen (search);
      if (cost >= before)
        break;
      before = cost;
      for (gint32 c = 0; c < search->n && !stopped (search); c++)
        if (is_bad (search, c))
          {
            lay_on (search, c, 1);
            lay_on (search, c, -1);
          }
    }
}

/* --- all of it --- */

static Pattern *
take_chosen (const Search *search)
{
  gint32 n = (gint32) search->geometry->segments->len;
  Pattern *patterns = g_new0 (Pattern, MAX (n, 1));

  for (gint32 c = 0; c < search->n; c++)
    {
      const Kind *kind = kind_at (search, c);
      gint32 first;

      mirror_segments (search->geometry, c + 1, &first);
      for (gint32 i = 0; i < kind->n; i++)
        {
          const Way *way = way_at (search, c, search->chosen[c]);

          patterns[first + i] = pattern_copy (&way->patterns[i]);
          pattern_count (search->geometry, geometry_segment (search->geometry, first + i),
                         &patterns[first + i]);
        }
    }
  return patterns;
}

static gint64
count_pieces (const Geometry *geometry, const Pattern *patterns)
{
  gint64 pieces = 0;

  for (guint i = 0; i < geometry->segments->len; i++)
    pieces += patterns[i].n_pieces;
  return pieces;
}

static gint32
ways_for (const Geometry *geometry, const Pattern *patterns)
{
  gint64 pieces = count_pieces (geometry, patterns);
  gint32 ways = geometry->quick ? QUICK_WAYS : MOST_WAYS;

  while (ways > LEAST_WAYS && pieces * ways * ways > CHAIN_WORK)
    ways--;
  return ways;
}

static gint64
effort_for (const Geometry *geometry, const Pattern *patterns)
{
  gint64 work = CLAMP (count_pieces (geometry, patterns) * WORK_A_PIECE, LEAST_WORK, MOST_WORK);

  return geometry->quick ? work / QUICK_SHARE : work;
}

static Pattern *
search_all (const Geometry *geometry, const Pattern *patterns, const gint *stop)
{
  gint32 n = (gint32) geometry->courses->len;
  Search search = { .geometry = geometry,
                    .stop = stop,
                    .n = n,
                    .kind_of = g_new0 (gint32, MAX (n, 1)),
                    .kinds = g_ptr_array_new_with_free_func (kind_free),
                    .chosen = g_new0 (gint32, MAX (n, 1)),
                    .most_ways = ways_for (geometry, patterns),
                    .effort = { 0, effort_for (geometry, patterns) } };
  Pattern *result;

  find_kinds (&search);
  add_given (&search, patterns);
  fill_pools (&search);
  settle (&search);
  result = stopped (&search) ? NULL : take_chosen (&search);
  g_ptr_array_unref (search.kinds);
  g_free (search.kind_of);
  g_free (search.chosen);
  return result;
}

/* The lengths used most, where few are wanted. */
static GArray *
allow_lengths (const Geometry *geometry, const Pattern *patterns)
{
  g_autoptr (GArray) uses = lengths_used (geometry, patterns);
  GArray *allowed = g_array_new (FALSE, FALSE, sizeof (Length));

  for (guint i = 0; i < uses->len && (gint32) i < geometry->most_lengths; i++)
    g_array_append_val (allowed, g_array_index (uses, LengthUse, i).length);
  return allowed;
}

/* What counts of a whole layout where lengths do, too. */
static Cost
cost_of (const Geometry *geometry, Pattern *patterns)
{
  g_autoptr (GArray) uses = lengths_used (geometry, patterns);
  g_autoptr (GArray) unmatched = g_array_new (FALSE, FALSE, sizeof (Unmatched));
  Cost excess = MAX ((gint32) uses->len - geometry->most_lengths, 0), cost = 0;

  for (guint i = 0; i < geometry->segments->len; i++)
    pattern_count (geometry, geometry_segment (geometry, (gint32) i), &patterns[i]);
  for (gint32 course = 1; course <= (gint32) geometry->courses->len; course++)
    {
      gint32 first;

      mirror_segments (geometry, course, &first);
      mirror_unmatched (geometry, course, &patterns[first], unmatched);
    }
  for (guint i = 0; i < unmatched->len; i++)
    cost += mirror_cost (&g_array_index (unmatched, Unmatched, i));
  return cost + network_cost (geometry, patterns)
         + excess * (geometry->lengths_must ? COST_BREACH : COST_WISH * RULES_PRICE_OF_LENGTH);
}

Pattern *
symmetry_improve (const Geometry *geometry, Pattern *patterns, const gint *stop)
{
  Geometry other = *geometry;
  gint32 n = (gint32) geometry->segments->len;
  g_autoptr (GArray) allowed = NULL;
  Pattern *better, *worse = patterns;

  if (geometry->most_lengths > 0)
    {
      other.allowed = allowed = allow_lengths (geometry, patterns);
      other.wishing = TRUE;
    }
  better = search_all (&other, patterns, stop);
  if (better != NULL && allowed != NULL
      && cost_of (geometry, better) > cost_of (geometry, patterns))
    {
      worse = better;
      better = patterns;
    }
  patterns_free (worse, n);
  return better;
}

gint32
symmetry_breaches (const Geometry *geometry, const Pattern *patterns)
{
  g_autoptr (GArray) unmatched = g_array_new (FALSE, FALSE, sizeof (Unmatched));
  gint32 n = 0;

  for (gint32 course = 1; geometry->mirror != NULL && course <= (gint32) geometry->courses->len;
       course++)
    {
      gint32 first;

      mirror_segments (geometry, course, &first);
      mirror_unmatched (geometry, course, &patterns[first], unmatched);
    }
  for (guint i = 0; i < unmatched->len; i++)
    n += g_array_index (unmatched, Unmatched, i).must;
  return n;
}
