/* bound-states.c - what is told of each segment's patterns in the bound: a few states
 *
 * A full-height segment's patterns with at most one cut are finitely many and each is a state of
 * its own, with all its perpends. All its other patterns, and all of a segment whose height
 * changes, are summed up by whether they begin and end with a whole unit, each with the fewest cuts
 * it can have, exact over all real places; of these only some perpends are known, or within what
 * range they lie. Patterns with a piece that is too short are summed up likewise, at a breach more.
 */
#include "bond/bound-states.h"

#include "bond/bound.h"

#include <string.h>

#include "bond/rule.h"

/* What the patterns of a segment have in common that are summed up together. */
typedef struct
{
  gint32 breaches; /* at the least */
  gint32 floor;    /* cuts at the least: fewer are states of their own */
  Length least;    /* shortest piece */
  gboolean tight;  /* they have the fewest pieces */
  gint32 strips;   /* pieces that are too thin, at most; -1: any number */
  gint32 paid;     /* of these in `breaches`; -1: they are not told apart */
  gboolean barred; /* no perpend is where a rule that is a must wants none */
} Sum;

/* A segment that states are added to. */
typedef struct
{
  BoundStates *states;
  GArray *to;
  const Segment *segment;
  gboolean close; /* summed states are told apart by their cuts */
} Adding;

static State *
add_state (Adding *adding, gint32 breaches, gint32 cuts)
{
  State state = { .cost = MIN (breaches, BOUND_NEVER / BOUND_BREACH) * BOUND_BREACH + cuts,
                  .first = adding->states->intervals.n,
                  .most = -1,
                  .paid = -1 };

  state.cost = MIN (state.cost, BOUND_NEVER);
  g_array_append_val (adding->to, state);
  return &g_array_index (adding->to, State, adding->to->len - 1);
}

static void
add_face (Adding *adding, Length lo, Length hi)
{
  intervals_append (&adding->states->intervals, (Interval){ lo, hi });
  g_array_index (adding->to, State, adding->to->len - 1).n++;
}

/* Adds breaches to the last state. */
static void
pay (Adding *adding, gint32 breaches)
{
  State *state = &g_array_index (adding->to, State, adding->to->len - 1);
  gint32 cost = MIN (breaches, BOUND_NEVER / BOUND_BREACH) * BOUND_BREACH;

  state->cost = MIN (state->cost + cost, BOUND_NEVER);
}

/* Rules that are a must and want no perpend there. */
static gint32
rules_broken (const Geometry *geometry, const Segment *segment, Length face)
{
  gint32 at = 0, broken = 0;

  for (const Mark *mark; (mark = rules_next_perpend (geometry, segment, face, &at, NULL)) != NULL;)
    broken += mark->must != 0;
  return broken;
}

static gboolean
has_must (const Geometry *geometry, const Segment *segment)
{
  for (gint32 i = 0; i < segment->n_perpend_marks; i++)
    if (rules_marks (geometry, segment)[i].must)
      return TRUE;
  return FALSE;
}

/* Adds where such rules want none: how many there are. */
static gint32
add_marks (const Geometry *geometry, const Segment *segment, Intervals *to)
{
  gint32 n = 0;

  for (gint32 i = 0; i < segment->n_perpend_marks; i++)
    {
      const Mark *mark = &rules_marks (geometry, segment)[i];

      if (!mark->must)
        continue;
      intervals_append (to, (Interval){ mark->from, mark->to });
      n++;
    }
  return n;
}

/* The pattern of whole units from both ends with `left` of them before the one cut. */
static void
add_one_cut_state (Adding *adding, gint32 breaches, gint32 n, gint32 left, gint32 cuts)
{
  const Geometry *geometry = adding->states->geometry;
  const Segment *segment = adding->segment;
  Length pitch = geometry->unit + geometry->joint;
  Length end = segment->b + geometry->joint;

  gint32 broken = 0;

  add_state (adding, breaches, cuts);
  for (gint32 i = 1; i < n; i++)
    {
      Length face = i <= left ? segment->a + i * pitch : end - (n - i) * pitch;

      add_face (adding, face, face);
      broken += rules_broken (geometry, segment, face);
    }
  pay (adding, broken);
}

/* So many pieces at the most have a state for each place of their one cut. */
#define MAX_EXACT 64

static void
add_exact_states (Adding *adding, const Sum *sum)
{
  const Geometry *geometry = adding->states->geometry;
  const Segment *segment = adding->segment;
  Length pitch = geometry->unit + geometry->joint;
  Length run = segment->b - segment->a + geometry->joint;
  gint32 n = (run + pitch - 1) / pitch;
  Length rest = n * pitch - run;

  if (rest == 0)
    add_one_cut_state (adding, sum->breaches, n, n, 0);
  else if (rest <= geometry->unit - sum->least)
    for (gint32 left = 0; left < n; left++)
      add_one_cut_state (adding, sum->breaches, n, left, 1);
}

static gint32
fewest_pieces (const Geometry *geometry, const Segment *segment)
{
  Length pitch = geometry->unit + geometry->joint;

  return (segment->b - segment->a + geometry->joint + pitch - 1) / pitch;
}

/* The faces of a pattern with the fewest pieces: none can be farther left or right than whole units
 * from either end leave it. */
static void
add_tight_faces (Adding *adding, gint32 ends)
{
  const Geometry *geometry = adding->states->geometry;
  const Segment *segment = adding->segment;
  Length pitch = geometry->unit + geometry->joint;
  Length end = segment->b + geometry->joint;
  gint32 n = fewest_pieces (geometry, segment);

  for (gint32 i = 1; i < n; i++)
    {
      Length hi = segment->a + i * pitch, lo = end - (n - i) * pitch;

      add_face (adding, (ends & 1) && i == 1 ? hi : lo, (ends & 2) && i == n - 1 ? lo : hi);
    }
}

static void
add_end_faces (Adding *adding, gint32 ends)
{
  const Geometry *geometry = adding->states->geometry;
  const Segment *segment = adding->segment;
  Length first = segment->a + geometry->unit + geometry->joint;
  Length last = segment->b - geometry->unit;

  if (segment->b - segment->a <= geometry->unit)
    return;
  if (ends & 1)
    add_face (adding, first, first);
  if ((ends & 2) && !((ends & 1) && last <= first))
    add_face (adding, last, last);
}

static void
add_summed_state (Adding *adding, const Sum *sum, gint32 cuts, gint32 ends, gboolean told_apart)
{
  State *state = add_state (adding, sum->breaches, cuts);

  if (sum->tight)
    add_tight_faces (adding, ends);
  else
    add_end_faces (adding, ends);
  state->most = told_apart ? cuts : -1;
  state->ends = ends;
  state->least = sum->least;
  state->strips = sum->strips;
  state->paid = sum->paid;
  state->first_barred = adding->states->intervals.n;
  if (sum->barred)
    state->n_barred
        = add_marks (adding->states->geometry, adding->segment, &adding->states->intervals);
}

/* Four states. Where it is to be close, those with the fewest cuts and those with one more are told
 * apart from the rest. */
static void
add_summed_states (Adding *adding, const Sum *sum, const gint32 cuts[N_STATES])
{
  gint32 steps = adding->close ? 2 : 0;

  for (gint32 i = 0; i < N_STATES; i++)
    for (gint32 more = 0; more <= steps && cuts[i] < NEVER; more++)
      add_summed_state (adding, sum, MAX (cuts[i], sum->floor) + more, i, more < steps);
}

/* Pieces that must lie wholly within a thin stretch of `length`: at each end where the segment goes
 * on, one piece may reach in from outside. */
static gint32
pieces_within (const Geometry *geometry, Length length, gint32 open_ends)
{
  gint64 pitch = geometry->unit + geometry->joint;
  gint64 run = length + geometry->joint - open_ends * pitch;

  return run <= 0 ? 0 : (gint32) ((run + pitch - 1) / pitch);
}

/* Thin pieces that the segment cannot be laid without. */
static gint32
breaches_of_thin (const Geometry *geometry, const Segment *segment)
{
  gint32 breaches = 0, last = segment->n_steps - 1;

  for (gint32 i = 0, first = 0; i <= last; i++)
    {
      const Step *steps = geometry_step (geometry, segment->first_step);
      gboolean thin = steps[i].hi - steps[i].lo < geometry->min_rip;

      if (!thin)
        first = i + 1;
      else if (i == last || steps[i + 1].hi - steps[i + 1].lo >= geometry->min_rip)
        breaches
            += pieces_within (geometry, steps[i].to - steps[first].from, (first > 0) + (i < last));
    }
  return breaches;
}

/* Fewest cuts of patterns with any number of pieces. */
static void
fewest_cuts (Adding *adding, const Sum *sum, gint32 cuts[N_STATES])
{
  g_auto (Intervals) barred = { NULL };
  Ask ask = { .least = sum->least, .strips = sum->strips };

  if (sum->barred)
    add_marks (adding->states->geometry, adding->segment, &barred);
  intervals_sort (&barred);
  ask.barred = barred.at;
  ask.n_barred = barred.n;
  reach_fewest (asked_reach (adding->states->asked), adding->segment, &ask, cuts);
}

static void
add_plain_states (Adding *adding, Sum sum)
{
  gint32 cuts[N_STATES], beside[N_STATES] = { 0 };

  if (sum.barred)
    fewest_cuts (adding, &sum, beside);
  for (gint32 more = 0; more < 2; more++)
    {
      sum.tight = more == 0;
      bound_plain_states (adding->states->geometry, adding->segment, sum.least, more, cuts);
      for (gint32 i = 0; i < N_STATES; i++)
        cuts[i] = MAX (cuts[i], beside[i]);
      add_summed_states (adding, &sum, cuts);
    }
}

/* Every piece is a cut, and where the strip is thin a breach: one more piece, one more of both. */
static void
add_strip_states (Adding *adding, Sum sum)
{
  const Geometry *geometry = adding->states->geometry;
  const Segment *segment = adding->segment;
  const Step *step = geometry_step (geometry, segment->first_step);
  Length run = segment->b - segment->a + geometry->joint;
  gint32 n = fewest_pieces (geometry, segment);
  gboolean thin = step->hi - step->lo < geometry->min_rip;

  for (gint32 more = 0; more <= 2 && (gint64) (n + more) * (sum.least + geometry->joint) <= run;
       more++)
    {
      sum.tight = more == 0;
      add_summed_state (adding, &sum, n + more, 0, adding->close && more < 2);
      sum.breaches += thin;
    }
}

static void
add_stepped_sum (Adding *adding, Sum sum)
{
  gint32 cuts[N_STATES];

  fewest_cuts (adding, &sum, cuts);
  sum.tight = TRUE;
  add_summed_states (adding, &sum, cuts);
  sum.tight = FALSE;
  add_summed_states (adding, &sum, cuts);
}

static gboolean
has_strip (const Geometry *geometry, const Segment *segment)
{
  for (gint32 i = 0; i < segment->n_steps; i++)
    {
      const Step *step = geometry_step (geometry, segment->first_step + i);

      if (step->hi - step->lo < geometry->min_rip)
        return TRUE;
    }
  return FALSE;
}

/* Patterns with no more thin strips than there must be are told apart from the others. */
static void
add_stepped_states (Adding *adding, Sum sum)
{
  gint32 forced = breaches_of_thin (adding->states->geometry, adding->segment);

  if (forced > REACH_MAX_STRIPS || !has_strip (adding->states->geometry, adding->segment))
    {
      add_stepped_sum (adding, sum);
      return;
    }
  sum.strips = sum.paid = forced;
  add_stepped_sum (adding, sum);
  sum.strips = -1;
  sum.paid++;
  sum.breaches++;
  add_stepped_sum (adding, sum);
}

/* Those with no other pieces and perpends than `sum` says. */
static void
add_states_of (Adding *adding, Sum sum, gboolean exact)
{
  if (adding->segment->full)
    {
      if (exact)
        add_exact_states (adding, &sum);
      add_plain_states (adding, sum);
    }
  else if (adding->segment->uniform)
    add_strip_states (adding, sum);
  else
    add_stepped_states (adding, sum);
}

/* Those whose pieces are at least `least` long; shorter than the shortest is a breach. */
static void
add_states (Adding *adding, Length least)
{
  const Geometry *geometry = adding->states->geometry;
  gboolean short_one = least < segment_shortest (geometry, adding->segment), exact;
  Sum sum = { .least = least, .strips = -1, .paid = -1 };

  sum.breaches = breaches_of_thin (geometry, adding->segment) + short_one;
  exact = !short_one && fewest_pieces (geometry, adding->segment) <= MAX_EXACT;
  sum.floor = !adding->segment->full ? 0 : short_one ? 1 : exact ? 2 : 0;
  sum.barred = has_must (geometry, adding->segment);
  add_states_of (adding, sum, exact);
  if (!sum.barred)
    return;
  /* With a perpend where a rule wants none. */
  sum.barred = FALSE;
  sum.breaches++;
  add_states_of (adding, sum, FALSE);
}

gint32
bound_forced_breaches (const Geometry *geometry)
{
  g_autoptr (Reach) reach = reach_new (geometry);
  gint32 forced = 0;

  for (gint32 i = 0; i < (gint32) geometry->segments->len; i++)
    {
      const Segment *segment = geometry_segment (geometry, i);
      Length joint = geometry->joint, run = segment->b - segment->a + joint;
      const Ask ask = { .least = segment_shortest (geometry, segment), .strips = -1 };
      gint32 cuts[N_STATES], fewest = NEVER;

      reach_fewest (reach, segment, &ask, cuts);
      for (gint32 k = 0; k < N_STATES; k++)
        fewest = MIN (fewest, cuts[k]);
      forced += breaches_of_thin (geometry, segment) + (run <= joint || fewest >= NEVER);
    }
  return forced;
}

BoundStates *
bound_states_new (const Geometry *geometry, gboolean close, Asked *asked)
{
  BoundStates *states = g_new0 (BoundStates, 1);
  gint32 n = (gint32) geometry->segments->len;

  states->geometry = geometry;
  states->asked = asked;
  states->of = g_new0 (GArray *, MAX (n, 1));
  for (gint32 i = 0; i < n; i++)
    {
      Adding adding = { states, NULL, geometry_segment (geometry, i), close };

      if (geometry_like (geometry, i) < i)
        {
          states->of[i] = g_array_ref (states->of[geometry_like (geometry, i)]);
          continue;
        }
      adding.to = states->of[i] = g_array_new (FALSE, FALSE, sizeof (State));
      add_states (&adding, segment_shortest (geometry, adding.segment));
      if (segment_shortest (geometry, adding.segment) > 1)
        add_states (&adding, 1);
    }
  return states;
}

void
bound_states_free (BoundStates *states)
{
  if (states == NULL)
    return;
  for (guint i = 0; i < states->geometry->segments->len; i++)
    g_array_unref (states->of[i]);
  intervals_clear (&states->intervals);
  intervals_clear (&states->needed);
  intervals_clear (&states->barred);
  intervals_clear (&states->beside);
  g_free (states->of);
  g_free (states);
}

void
bound_states_part (BoundStates *states, gint32 segment)
{
  GArray *own = g_array_copy (states->of[segment]);

  g_array_unref (states->of[segment]);
  states->of[segment] = own;
}

/* --- two of them beside each other --- */

static gboolean
overlap (const Interval *intervals, gint32 n)
{
  for (gint32 i = 0; i + 1 < n; i++)
    if (intervals[i].to >= intervals[i + 1].from)
      return TRUE;
  return FALSE;
}

/* Both ascend by their beginnings; where their ends do not, some pairs may be left out. */
static gint32
pairs_of (const Interval *faces, gint32 n, const Interval *others, gint32 n_others, Length lap)
{
  gint32 pairs = 0, first = 0;

  for (gint32 i = 0; i < n; i++)
    {
      while (first < n_others && others[first].from <= faces[i].to - lap)
        first++;
      for (gint32 k = first; k < n_others && others[k].to < faces[i].from + lap; k++)
        pairs++;
    }
  return pairs;
}

/* Pairs of known perpends that are within the least lap wherever in their ranges they lie. */
static gint32
near_pairs (const BoundStates *states, gint32 i, const State *p, gint32 other, const State *q)
{
  const Segment *segment = geometry_segment (states->geometry, i);
  const Segment *beside = geometry_segment (states->geometry, other);
  const Interval *faces = bound_intervals (states, p->first);
  const Interval *others = bound_intervals (states, q->first);
  const Interval joined = { segment->a, segment->a }, joined_beside = { beside->a, beside->a };
  Length lap = states->geometry->min_lap;
  gint32 pairs = pairs_of (faces, p->n, others, q->n, lap);

  /* Ranges that overlap may speak of one perpend. */
  if (pairs > 1 && (overlap (faces, p->n) || overlap (others, q->n)))
    pairs = 1;
  /* Pinned perpends that they carry. */
  if (segment->joined_left)
    pairs += MIN (pairs_of (&joined, 1, others, q->n, lap), 1);
  if (beside->joined_left)
    pairs += MIN (pairs_of (faces, p->n, &joined_beside, 1, lap), 1);
  if (segment->joined_left && beside->joined_left)
    pairs += pairs_of (&joined, 1, &joined_beside, 1, lap);
  return pairs;
}

static void
bar_near (const BoundStates *states, Length from, Length to, Intervals *barred)
{
  Length lap = states->geometry->min_lap;

  intervals_add (barred, to - lap + 1, from + lap - 1);
}

void
bound_states_bar (const BoundStates *states, gint32 i, const State *state, Intervals *barred)
{
  const Segment *segment = geometry_segment (states->geometry, i);
  const Interval *faces = bound_intervals (states, state->first);

  if (segment->joined_left)
    bar_near (states, segment->a, segment->a, barred);
  for (gint32 k = 0; k < state->n; k++)
    bar_near (states, faces[k].from, faces[k].to, barred);
}

gboolean
bound_states_leave (BoundStates *states, gint32 i, const State *p, const Intervals *barred,
                    const Interval *needed)
{
  Ask ask = { .least = p->least, .strips = p->strips };

  states->needed.n = states->barred.n = 0;
  intervals_append_all (&states->needed, bound_intervals (states, p->first), p->n);
  if (needed != NULL)
    intervals_append (&states->needed, *needed);
  intervals_append_all (&states->barred, bound_intervals (states, p->first_barred), p->n_barred);
  if (barred != NULL)
    intervals_append_all (&states->barred, barred->at, barred->n);
  /* In one order, so that a question is known again. */
  intervals_sort (&states->needed);
  intervals_merge (&states->barred);
  ask.needed = states->needed.at;
  ask.n_needed = states->needed.n;
  ask.barred = states->barred.at;
  ask.n_barred = states->barred.n;
  return asked_can_be (states->asked, i, &ask, p->ends, p->most);
}

static gboolean
leaves_none (BoundStates *states, gint32 i, const State *p, gint32 other, const State *beside)
{
  Intervals *barred = &states->beside;

  if (p->most < 0)
    return FALSE;
  barred->n = 0;
  bound_states_bar (states, other, beside, barred);
  return barred->n > 0 && !bound_states_leave (states, i, p, barred, NULL);
}

gint32
bound_states_between (BoundStates *states, gint32 i, gint32 p, gint32 other, gint32 q)
{
  const State *state = bound_state (states, i, p), *beside = bound_state (states, other, q);
  gint32 pairs = near_pairs (states, i, state, other, beside);

  if (pairs == 0
      && (leaves_none (states, i, state, other, beside)
          || leaves_none (states, other, beside, i, state)))
    pairs = 1;
  return MIN (pairs, BOUND_NEVER / BOUND_BREACH) * BOUND_BREACH;
}
