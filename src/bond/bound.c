/* bound.c - the fewest breaches and cuts that a wall can have
 *
 * The states of bound-states.h, one for each segment, with the least sum over the wall: no layout
 * has less. States that no layout as good as the one that was found can be in go first. */
#include "bond/bound.h"

#include "bond/bound-states.h"
#include "bond/refine.h"
#include "bond/tables.h"

#define WORK ((gint64) 5000000) /* steps for one sum */
#define ROUNDS 36               /* of refinement */
#define MANY 120                /* states of one segment: more tell no more */
#define QUESTIONS 60000         /* about what neighbours leave a segment */
#define STEPS 6                 /* in which one cut more is asked for */
#define PAIRS 500000            /* of states; more are not looked at closely */

static gint32
number_of (Bound bound)
{
  return MIN (bound.breaches, BOUND_NEVER / BOUND_BREACH - 1) * BOUND_BREACH + bound.cuts;
}

static gint32
least_of (const BoundStates *states, gint32 segment)
{
  gint32 least = BOUND_NEVER;

  for (gint32 i = 0; i < bound_n_states (states, segment); i++)
    least = MIN (least, bound_state (states, segment, i)->cost);
  return least;
}

/* Takes those states away with which the wall would cost `enough` or more, whatever the rest. FALSE
 * where a segment has none left. */
static gboolean
prune (BoundStates *states, gint32 enough)
{
  gint32 n = (gint32) states->geometry->segments->len, sum = 0;

  for (gint32 i = 0; i < n; i++)
    sum = MIN (sum + least_of (states, i), BOUND_NEVER);
  if (sum >= enough)
    return FALSE;
  for (gint32 i = 0; i < n; i++)
    {
      gint32 least = least_of (states, i);
      guint kept = 0;

      if (geometry_like (states->geometry, i) < i)
        continue;
      for (gint32 k = 0; k < bound_n_states (states, i); k++)
        if (bound_state (states, i, k)->cost - least < enough - sum)
          g_array_index (states->of[i], State, kept++) = *bound_state (states, i, k);
      g_array_set_size (states->of[i], kept);
    }
  return TRUE;
}

/* What pairs of states cost, of a segment and a neighbour below. */
typedef struct
{
  gboolean any;   /* some cost anything */
  gint32 costs[]; /* rows of that neighbour's states */
} Pairs;

/* States of a wall with what pairs of them cost. */
typedef struct Wallful
{
  const Geometry *geometry;
  BoundStates *states;
  gint64 asked_before; /* work */
  Pairs **pairs;       /* by link to below; reference-counted, since those alike share them */
  gint32 *n_before;    /* states by segment, that `pairs` is of */
  gint32 *values;
  gboolean *changed;
} Wallful;

static void
wallful_init (Wallful *all, const Geometry *geometry, gboolean close, Asked *asked)
{
  gsize n = MAX (geometry->segments->len, 1);

  all->geometry = geometry;
  all->states = bound_states_new (geometry, close, asked);
  all->asked_before = asked_work (asked);
  all->pairs = g_new0 (Pairs *, MAX (geometry->links->len, 1));
  all->n_before = g_new0 (gint32, n);
  all->values = g_new0 (gint32, n);
  all->changed = g_new0 (gboolean, n);
}

static void
wallful_clear (Wallful *all)
{
  for (guint i = 0; i < all->geometry->links->len; i++)
    g_clear_pointer (&all->pairs[i], g_rc_box_release);
  g_free (all->pairs);
  g_free (all->n_before);
  g_free (all->values);
  g_free (all->changed);
  bound_states_free (all->states);
}

/* The number that state `i` of `n`, of a segment that had `before`, had then: a split takes one out
 * and puts others at the end. -1: it is new. */
static gint32
number_before (const Wallful *all, gint32 segment, gint32 before, gint32 i)
{
  if (!all->changed[segment])
    return i;
  if (i >= before - 1)
    return -1;
  return i < all->values[segment] ? i : i + 1;
}

/* What pairs of the states cost that a segment and its neighbour over a link to below have now;
 * `old` is what they cost when there were `n_old` and `n_below_old` of them, NULL: not known. */
static Pairs *
costs_of_pair (const Wallful *all, gint32 i, gint32 below, const Pairs *old, gint32 n_old,
               gint32 n_below_old)
{
  gint32 n = bound_n_states (all->states, i), n_below = bound_n_states (all->states, below);
  Pairs *pairs = g_rc_box_alloc (sizeof (Pairs) + sizeof (gint32) * (gsize) n * (gsize) n_below);

  pairs->any = FALSE;
  for (gint32 q = 0; q < n_below; q++)
    for (gint32 p = 0; p < n; p++)
      {
        gint32 p_old = old == NULL ? -1 : number_before (all, i, n_old, p);
        gint32 q_old = old == NULL ? -1 : number_before (all, below, n_below_old, q);
        gint32 cost = p_old >= 0 && q_old >= 0 ? old->costs[q_old * n_old + p_old]
                                               : bound_states_between (all->states, i, p, below, q);

        pairs->costs[q * n + p] = cost;
        pairs->any = pairs->any || cost > 0;
      }
  return pairs;
}

/* Of segments alike over segments alike they are the same. */
static void
note_pairs (Wallful *all)
{
  g_autoptr (GHashTable) noted = g_hash_table_new (NULL, NULL);
  gsize n = all->geometry->segments->len;

  for (gint32 i = 0; i < (gint32) n; i++)
    {
      const Segment *segment = geometry_segment (all->geometry, i);

      for (gint32 k = 0; k < segment->n_below; k++)
        {
          gint32 below = geometry_link (all->geometry, segment, k);
          gpointer both = GSIZE_TO_POINTER ((gsize) geometry_like (all->geometry, i) * n
                                            + (gsize) geometry_like (all->geometry, below));
          Pairs *pairs = g_hash_table_lookup (noted, both);

          if (pairs != NULL)
            g_rc_box_acquire (pairs);
          else
            {
              pairs = costs_of_pair (all, i, below, NULL, 0, 0);
              g_hash_table_insert (noted, both, pairs);
            }
          all->pairs[segment->first_link + k] = pairs;
        }
      all->n_before[i] = bound_n_states (all->states, i);
    }
}

/* After states have been split. */
static void
renew_pairs (Wallful *all)
{
  for (gint32 i = 0; i < (gint32) all->geometry->segments->len; i++)
    {
      const Segment *segment = geometry_segment (all->geometry, i);

      for (gint32 k = 0; k < segment->n_below; k++)
        {
          gint32 below = geometry_link (all->geometry, segment, k);
          Pairs **pairs = &all->pairs[segment->first_link + k], *old = *pairs;

          if (!all->changed[i] && !all->changed[below])
            continue;
          *pairs = costs_of_pair (all, i, below, old, all->n_before[i], all->n_before[below]);
          g_rc_box_release (old);
        }
    }
  for (gint32 i = 0; i < (gint32) all->geometry->segments->len; i++)
    all->n_before[i] = bound_n_states (all->states, i);
}

static void
add_pairs (Wallful *all, Tables *tables, gint32 i)
{
  const Segment *segment = geometry_segment (all->geometry, i);

  for (gint32 k = 0; k < segment->n_below; k++)
    {
      gint32 below = geometry_link (all->geometry, segment, k);
      gsize n
          = (gsize) bound_n_states (all->states, i) * (gsize) bound_n_states (all->states, below);
      const Pairs *pairs = all->pairs[segment->first_link + k];

      if (pairs->any)
        tables_pair (tables, below, i, g_memdup2 (pairs->costs, sizeof (gint32) * n));
    }
}

static void
set_costs (const Wallful *all, Tables *tables, gint32 i)
{
  gint32 n = bound_n_states (all->states, i);
  g_autofree gint32 *costs = g_new (gint32, MAX (n, 1));

  for (gint32 k = 0; k < n; k++)
    costs[k] = bound_state (all->states, i, k)->cost;
  tables_set (tables, i, costs, n);
}

static gint32
least_sum (Wallful *all, gint32 enough)
{
  gint32 n = (gint32) all->geometry->segments->len;
  g_autoptr (Tables) tables = tables_new (n);

  for (gint32 i = 0; i < n; i++)
    set_costs (all, tables, i);
  for (gint32 i = 0; i < n; i++)
    add_pairs (all, tables, i);
  return tables_least (tables, enough, WORK, all->values);
}

static Bound
bound_of (gint32 sum)
{
  return (Bound){ sum / BOUND_BREACH, sum % BOUND_BREACH };
}

/* The fewest cuts of a segment's patterns, whatever they break. */
static gint32
fewest_cuts_of (const BoundStates *states, gint32 segment)
{
  gint32 fewest = BOUND_BREACH;

  for (gint32 k = 0; k < bound_n_states (states, segment); k++)
    fewest = MIN (fewest, bound_state (states, segment, k)->cost % BOUND_BREACH);
  return fewest;
}

void
bound_init (WallBound *bound, const Geometry *geometry)
{
  Wallful *all = g_new (Wallful, 1);
  gint32 sum = 0;

  *bound = (WallBound){ .geometry = geometry, .asked = asked_new (geometry), .alone = all };
  wallful_init (all, geometry, FALSE, bound->asked);
  for (gint32 i = 0; i < (gint32) geometry->segments->len; i++)
    {
      sum = MIN (sum + least_of (all->states, i), BOUND_NEVER);
      bound->cuts_at += fewest_cuts_of (all->states, i);
    }
  bound->least = bound_of (sum);
}

void
bound_init_known (WallBound *bound, const Geometry *geometry, Bound least)
{
  *bound = (WallBound){ .geometry = geometry, .least = least };
}

void
bound_clear (WallBound *bound)
{
  if (bound->alone != NULL)
    wallful_clear (bound->alone);
  g_clear_pointer (&bound->alone, g_free);
  g_clear_pointer (&bound->asked, asked_free);
}

/* Sums pairs up, too. Where a layout costs `enough` no sum is more, and states that cost more than
 * that do not count. */
static void
sum_up (WallBound *bound, gint32 enough)
{
  if (prune (bound->alone->states, enough))
    {
      note_pairs (bound->alone);
      bound->least = bound_of (least_sum (bound->alone, enough));
    }
  bound_clear (bound);
}

static gboolean
is_met (const WallBound *bound, gint32 breaches, gint32 cuts)
{
  return breaches < bound->least.breaches
         || (breaches == bound->least.breaches && cuts <= bound->least.cuts);
}

Bound
bound_sum (WallBound *bound)
{
  if (bound->alone != NULL)
    sum_up (bound, BOUND_NEVER);
  return bound->least;
}

gboolean
bound_is_met (WallBound *bound, gint32 breaches, gint32 cuts)
{
  if (!is_met (bound, breaches, cuts) && bound->alone != NULL)
    sum_up (bound, number_of ((Bound){ breaches, cuts }));
  return is_met (bound, breaches, cuts);
}

static gboolean
any_is_empty (const Wallful *all)
{
  for (guint i = 0; i < all->geometry->segments->len; i++)
    if (all->states->of[i]->len == 0)
      return TRUE;
  return FALSE;
}

/* Whether states have been split, and are worth another sum. */
static gboolean
goes_on (const Wallful *all)
{
  gboolean changed = FALSE;

  if (asked_work (all->states->asked) - all->asked_before > QUESTIONS)
    return FALSE;
  for (guint i = 0; i < all->geometry->segments->len; i++)
    {
      if (all->states->of[i]->len > MANY)
        return FALSE;
      changed = changed || all->changed[i];
    }
  return changed;
}

static gboolean
is_large (const Wallful *all)
{
  gint64 pairs = 0;

  for (gint32 i = 0; i < (gint32) all->geometry->segments->len; i++)
    {
      const Segment *segment = geometry_segment (all->geometry, i);

      for (gint32 k = 0; k < segment->n_below; k++)
        pairs += (gint64) bound_n_states (all->states, i)
                 * bound_n_states (all->states, geometry_link (all->geometry, segment, k));
    }
  return pairs > PAIRS;
}

/* The least sum if it is below `enough`, else that, by states that are split as long as what they
 * tell does not fit together. *sure: nothing is left to be split. */
static gint32
sum_closely (const Geometry *geometry, Asked *asked, gint32 enough, gboolean *sure,
             Pattern **better, const gint *stop)
{
  gint32 sum = 0;
  gboolean large;
  Wallful all;

  wallful_init (&all, geometry, TRUE, asked);
  if (!prune (all.states, enough))
    sum = enough;
  large = is_large (&all);
  if (sum < enough && !large)
    note_pairs (&all);
  for (gint32 round = 0; round < ROUNDS && sum < enough && !large; round++)
    {
      gint32 least;

      if (stop != NULL && g_atomic_int_get (stop) != 0)
        break;
      least = any_is_empty (&all) ? enough : least_sum (&all, enough);
      sum = MAX (sum, least);
      if (sum >= enough)
        break;
      *better = refine_states (all.states, all.values, all.changed);
      if (*better != NULL || !goes_on (&all))
        break;
      renew_pairs (&all);
    }
  *sure = sum >= enough;
  wallful_clear (&all);
  return sum;
}

Pattern *
bound_look_closer (WallBound *bound, Bound found, const gint *stop)
{
  g_autoptr (Asked) asked = asked_new (bound->geometry);
  gint32 sum = number_of (bound->least), most = number_of (found);
  gboolean sure = sum + 1 != bound->left_open;
  Pattern *better = NULL;

  /* The nearer what is asked for, the fewer states can have it. */
  for (gint32 step = 0; sum < most && sure && better == NULL; step++)
    {
      gint32 enough = step < STEPS ? sum + 1 : most;
      gint32 closely = sum_closely (bound->geometry, asked, enough, &sure, &better, stop);

      sum = MAX (sum, closely);
      if (!sure)
        bound->left_open = enough;
    }
  bound->least = bound_of (sum);
  return better;
}
