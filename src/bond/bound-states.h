/* bound-states.h - what is told of each segment's patterns in the bound: a few states
 *
 * A state stands for some patterns of a segment, all with at least its cost and with those perpends
 * that are known of all of them. A pair of states of linked segments costs a breach for each pair
 * of perpends that must be within the least lap. */
#pragma once

#include "bond/asked.h"

/* Breaches and cuts in one number, a breach outweighing all cuts; sums stop at BOUND_NEVER. */
#define BOUND_BREACH ((gint32) 1 << 16)
#define BOUND_NEVER (((gint32) 1 << 30) - 1)

typedef struct
{
  gint32 cost;                   /* at the least: breaches of its pieces, cuts */
  gint32 first, n;               /* known perpends: Intervals that each has one's face in it */
  gint32 first_barred, n_barred; /* Intervals that no face is in */
  gint32 most;                   /* none of its patterns has more cuts than this; -1: not said */
  gint32 ends;                   /* then: bit 0 begins, bit 1 ends with a whole unit */
  Length least;                  /* then: no piece is shorter */
  gint32 strips;                 /* then: so many at most are too thin; -1: any number */
  gint32 paid;                   /* strips that its cost has; -1: they are not told apart */
} State;

typedef struct
{
  const Geometry *geometry;
  GArray **of;         /* State, by segment; shared by those alike until they are split */
  Intervals intervals; /* that states point into */
  Asked *asked;        /* not its own */
  Intervals needed, barred, beside; /* while something is asked */
} BoundStates;

/* `close`: summed states are told apart by their cuts, and pairs are looked at more nearly. What is
 * found out about segments goes to `asked`, for the next states of the same wall, too. */
BoundStates *bound_states_new (const Geometry *geometry, gboolean close, Asked *asked);
void bound_states_free (BoundStates *states);

/* Gives a segment its states for itself, before they are changed. */
void bound_states_part (BoundStates *states, gint32 segment);

static inline gint32
bound_n_states (const BoundStates *states, gint32 segment)
{
  return (gint32) states->of[segment]->len;
}
static inline State *
bound_state (const BoundStates *states, gint32 segment, gint32 i)
{
  return &g_array_index (states->of[segment], State, i);
}
static inline const Interval *
bound_intervals (const BoundStates *states, gint32 first)
{
  /* Without any there is no array. */
  return states->intervals.n == 0 ? NULL : states->intervals.at + first;
}
/* Cost of the breaches that state p of segment i and state q of its neighbour `other` have between
 * each other at the least. */
gint32 bound_states_between (BoundStates *states, gint32 i, gint32 p, gint32 other, gint32 q);

/* Adds to `barred` where segment i in that state lets a neighbour have no perpend: its known ones
 * cover that wherever in their ranges they lie. */
void bound_states_bar (const BoundStates *states, gint32 i, const State *state, Intervals *barred);
/* Whether patterns of segment i's state p are left with no perpend in `barred` (may be NULL)
 * either; and with one in `needed`, which may be NULL. */
gboolean bound_states_leave (BoundStates *states, gint32 i, const State *p, const Intervals *barred,
                             const Interval *needed);
