/* refine.c - states told apart further where they are too coarse
 *
 * A state that stands for several patterns is split by a stretch of faces: those of its patterns
 * that have a perpend there, and those that have none (counterexample-guided refinement: E. Clarke
 * and others, CAV 2000). */
#include "bond/refine.h"

#include <string.h>

typedef struct
{
  BoundStates *states;
  const gint32 *chosen;
  gboolean *changed;
  gint32 n;
  gboolean *keeps;   /* by link: the two keep the least lap, as far as is known */
  Intervals *barred; /* by segment: where such neighbours let it have no perpend */
  GArray **faces;    /* Length, by segment: a pattern of its state; NULL: not yet */
} Refining;

static const State *
chosen_state (const Refining *work, gint32 i)
{
  return bound_state (work->states, i, work->chosen[i]);
}

/* --- splitting --- */

/* Adds a copy of a state with a perpend in `needed`. */
static void
add_with (BoundStates *states, gint32 i, State state, const Interval *needed)
{
  gint32 first = states->intervals.n, into = -1, over = 0;
  Interval face;

  for (gint32 k = 0; k < state.n; k++)
    {
      face = *bound_intervals (states, state.first + k);
      if (face.from > needed->to || face.to < needed->from)
        continue;
      over++;
      if (needed->from >= face.from && needed->to <= face.to)
        into = k;
    }
  for (gint32 k = 0; k < state.n; k++)
    {
      face = *bound_intervals (states, state.first + k);
      if (into == k && over == 1)
        face = *needed; /* it is this perpend, or else they speak of two */
      intervals_append (&states->intervals, face);
    }
  if (into < 0 || over > 1)
    {
      intervals_append (&states->intervals, *needed);
      state.n++;
      qsort (&states->intervals.at[first], (gsize) state.n, sizeof (Interval), interval_compare);
    }
  state.first = first;
  g_array_append_val (states->of[i], state);
}

static void
add_without (BoundStates *states, gint32 i, State state, const Intervals *barred)
{
  gint32 first = states->intervals.n;

  for (gint32 k = 0; k < state.n_barred; k++)
    {
      Interval old = *bound_intervals (states, state.first_barred + k);

      intervals_append (&states->intervals, old);
    }
  intervals_append_all (&states->intervals, barred->at, barred->n);
  state.first_barred = first;
  state.n_barred += barred->n;
  g_array_append_val (states->of[i], state);
}

/* Puts, in the place of the chosen state of segment i, those of its patterns with no perpend in
 * `barred`, and those with one in each of these stretches. */
static void
split (Refining *work, gint32 i, const Intervals *barred)
{
  BoundStates *states = work->states;
  State state = *chosen_state (work, i);

  bound_states_part (states, i);
  g_array_remove_index (states->of[i], (guint) work->chosen[i]);
  if (bound_states_leave (states, i, &state, barred, NULL))
    add_without (states, i, state, barred);
  for (gint32 k = 0; k < barred->n; k++)
    {
      const Interval *needed = &barred->at[k];

      if (bound_states_leave (states, i, &state, NULL, needed))
        add_with (states, i, state, needed);
    }
  work->changed[i] = TRUE;
}

/* --- what neighbours leave together --- */

/* Looks at all neighbours of segment i beside which it keeps the least lap, for where they let it
 * have no perpend, and splits its state where that leaves it no pattern. */
static gboolean
split_beside (Refining *work, gint32 i)
{
  const Geometry *geometry = work->states->geometry;
  const Segment *segment = geometry_segment (geometry, i);
  const State *state = chosen_state (work, i);
  Intervals *all = &work->barred[i];

  if (state->most < 0)
    return FALSE;
  for (gint32 k = 0; k < segment->n_links; k++)
    {
      gint32 other = geometry_link (geometry, segment, k), before = all->n;
      g_auto (Intervals) last = { NULL };

      if (work->changed[other])
        return FALSE; /* its state is no more */
      if (bound_states_between (work->states, i, work->chosen[i], other, work->chosen[other]) > 0)
        continue; /* they break a rule together, and pay */
      work->keeps[segment->first_link + k] = TRUE;
      bound_states_bar (work->states, other, chosen_state (work, other), all);
      if (all->n == before || bound_states_leave (work->states, i, state, all, NULL))
        continue;
      intervals_append_all (&last, all->at + before, all->n - before);
      split (work, i, &last);
      return TRUE;
    }
  return FALSE;
}

/* --- patterns of the states --- */

/* Where the pattern of segment i, told already, lets a neighbour have no perpend. */
static void
bar_by_faces (const Refining *work, gint32 i, Intervals *barred)
{
  Length lap = work->states->geometry->min_lap;

  for (guint k = 0; k < work->faces[i]->len && lap > 0; k++)
    {
      Length face = g_array_index (work->faces[i], Length, k);

      intervals_append (barred, (Interval){ face - lap + 1, face + lap - 1 });
    }
}

/* A state of one pattern: all its perpends are known. */
static GArray *
known_faces (const Refining *work, gint32 i)
{
  const State *state = chosen_state (work, i);
  GArray *faces = g_array_new (FALSE, FALSE, sizeof (Length));

  for (gint32 k = 0; k < state->n; k++)
    {
      Length face = bound_intervals (work->states, state->first + k)->from;

      g_array_append_val (faces, face);
    }
  return faces;
}

static gboolean
is_exact (const State *state)
{
  return state->least == 0;
}

static GArray *
faces_beside (const Refining *work, gint32 i, Intervals *barred)
{
  const State *state = chosen_state (work, i);
  Ask ask = { .least = state->least, .strips = state->strips };

  for (gint32 k = 0; k < state->n_barred; k++)
    {
      Interval own = *bound_intervals (work->states, state->first_barred + k);

      intervals_append (barred, own);
    }
  intervals_sort (barred);
  ask.needed = bound_intervals (work->states, state->first);
  ask.n_needed = state->n;
  ask.barred = barred->at;
  ask.n_barred = barred->n;
  return reach_faces (asked_reach (work->states->asked),
                      geometry_segment (work->states->geometry, i), &ask, state->ends, state->most);
}

/* Splits the state of a neighbour of segment i, whose pattern is in the way, by where its perpends
 * are that no range of it tells. */
static void
split_neighbour (Refining *work, gint32 other)
{
  g_auto (Intervals) barred = { NULL };
  const State *state = chosen_state (work, other);
  Length width = MAX (work->states->geometry->min_lap / 3, 1);

  for (guint k = 0; k < work->faces[other]->len; k++)
    {
      Length face = g_array_index (work->faces[other], Length, k);
      gboolean told = FALSE;

      for (gint32 m = 0; m < state->n; m++)
        {
          const Interval *known = bound_intervals (work->states, state->first + m);

          told = told
                 || (known->from <= face && known->to >= face && known->to - known->from <= width);
        }
      if (!told)
        intervals_append (&barred, (Interval){ face - width / 2, face + width / 2 });
    }
  if (barred.n > 0)
    split (work, other, &barred);
}

/* The pattern of segment i beside what its neighbours are known or told to be; FALSE where there is
 * none, and then a neighbour's state is split. */
static gboolean
tell_faces (Refining *work, gint32 i)
{
  const Geometry *geometry = work->states->geometry;
  const Segment *segment = geometry_segment (geometry, i);
  const State *state = chosen_state (work, i);
  Intervals *barred = &work->barred[i];
  gint32 last = -1;

  if (is_exact (state))
    {
      work->faces[i] = known_faces (work, i);
      return TRUE;
    }
  if (state->most < 0)
    return FALSE;
  for (gint32 k = 0; k < segment->n_links && last < 0; k++)
    {
      gint32 other = geometry_link (geometry, segment, k);

      if (work->faces[other] == NULL || !work->keeps[segment->first_link + k])
        continue;
      bar_by_faces (work, other, barred);
      if (!is_exact (chosen_state (work, other))
          && !bound_states_leave (work->states, i, state, barred, NULL))
        last = other;
    }
  if (last < 0)
    work->faces[i] = faces_beside (work, i, barred);
  else
    split_neighbour (work, last);
  return work->faces[i] != NULL;
}

/* Splits the state of segment i, whose pattern has more strips than it pays for, by their number.
 */
static gboolean
split_by_strips (Refining *work, gint32 i, const Pattern *pattern)
{
  BoundStates *states = work->states;
  State state = *chosen_state (work, i);

  if (state.strips >= 0 || state.paid < 0 || state.paid >= REACH_MAX_STRIPS
      || pattern->n_breaches <= state.cost / BOUND_BREACH)
    return FALSE;
  bound_states_part (states, i);
  g_array_remove_index (states->of[i], (guint) work->chosen[i]);
  state.strips = state.paid;
  if (bound_states_leave (states, i, &state, NULL, NULL))
    g_array_append_val (states->of[i], state);
  state.strips = -1;
  state.paid++;
  state.cost = MIN (state.cost + BOUND_BREACH, BOUND_NEVER);
  g_array_append_val (states->of[i], state);
  work->changed[i] = TRUE;
  return TRUE;
}

static Pattern *
patterns_of (const Refining *work)
{
  Pattern *patterns = g_new0 (Pattern, MAX (work->n, 1));

  for (gint32 i = 0; i < work->n; i++)
    {
      GArray *faces = work->faces[i];

      patterns[i].n_pieces = (gint32) faces->len + 1;
      patterns[i].faces = g_memdup2 (faces->data, sizeof (Length) * faces->len);
      pattern_count (work->states->geometry, geometry_segment (work->states->geometry, i),
                     &patterns[i]);
    }
  return patterns;
}

Pattern *
refine_states (BoundStates *states, const gint32 *chosen, gboolean *changed)
{
  const Geometry *geometry = states->geometry;
  gint32 n = (gint32) geometry->segments->len;
  Refining work = { states,
                    chosen,
                    changed,
                    n,
                    g_new0 (gboolean, MAX (geometry->links->len, 1)),
                    g_new0 (Intervals, MAX (n, 1)),
                    g_new0 (GArray *, MAX (n, 1)) };
  gboolean any = FALSE, all = TRUE;
  Pattern *patterns = NULL;

  memset (changed, 0, sizeof (gboolean) * (gsize) n);
  for (gint32 i = 0; i < n; i++)
    any = split_beside (&work, i) || any;
  for (gint32 i = 0; i < n && all && !any; i++)
    all = tell_faces (&work, i);
  if (all && !any)
    patterns = patterns_of (&work);
  for (gint32 i = 0; i < n && patterns != NULL && !any; i++)
    any = split_by_strips (&work, i, &patterns[i]);
  if (any)
    {
      patterns_free (patterns, n);
      patterns = NULL;
    }
  for (gint32 i = 0; i < n; i++)
    {
      intervals_clear (&work.barred[i]);
      g_clear_pointer (&work.faces[i], g_array_unref);
    }
  g_free (work.keeps);
  g_free (work.barred);
  g_free (work.faces);
  return patterns;
}
