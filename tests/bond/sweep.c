/* sweep.c - the fewest breaches and cuts of a small wall, found by trying everything */
#include "cells.h"

#define MAX_COURSES 3
#define MAX_LAP 3

/* Costs: price x breaches + cuts, and both counts beside it, packed so that one number compares. */
typedef struct
{
  gint32 cost;
  gint16 breaches, cuts;
} Score;

#define NO_SCORE ((Score){ G_MAXINT32, 0, 0 })
#define LAP_MASKS (1 << MAX_LAP)

/* One course at one face: cells since its last face (`outside` where no segment is), and a bit for
 * each perpend less than the least lap back. */
typedef struct
{
  int since, mask;
} Lane;

typedef struct
{
  const Cells *cells;
  int price, pitch, outside, lane_states, states;
  Score *now, *next;
  int *live, n_live; /* states in `now` */
  int *born, n_born; /* states in `next` */
} Work;

static int
pack (const Work *work, const Lane lanes[])
{
  int state = 0;
  for (int c = 0; c < work->cells->n_courses; c++)
    state = state * work->lane_states + lanes[c].since * LAP_MASKS + lanes[c].mask;
  return state;
}

static void
unpack (const Work *work, int state, Lane lanes[])
{
  for (int c = work->cells->n_courses - 1; c >= 0; c--)
    {
      int lane = state % work->lane_states;
      lanes[c] = (Lane){ lane / LAP_MASKS, lane % LAP_MASKS };
      state /= work->lane_states;
    }
}

static Length
free_at (const Cells *cells, int course, int cell)
{
  return cell < 0 || cell >= cells->length ? 0 : cells->free[course][cell];
}

static Score
add_piece (const Work *work, Score score, int course, int from, int to)
{
  CellsCost cost = cells_piece (work->cells, course, from, to);
  score.breaches = (gint16) (score.breaches + cost.breaches);
  score.cuts = (gint16) (score.cuts + cost.cuts);
  score.cost += work->price * cost.breaches + cost.cuts;
  return score;
}

/* Adds the laps that a perpend of `course` here makes with those of its neighbours: the course
 * below has been decided here, the one above has not and pays for its own. */
static Score
add_laps (const Work *work, Score score, const Lane lanes[], int course)
{
  int window = (1 << work->cells->min_lap) - 1, n = 0;
  if (course > 0)
    n += __builtin_popcount (lanes[course - 1].mask & window);
  if (course + 1 < work->cells->n_courses)
    n += __builtin_popcount (lanes[course + 1].mask & window & ~1);
  score.breaches = (gint16) (score.breaches + n);
  score.cost += work->price * n;
  return score;
}

static void
give_birth (Work *work, const Lane lanes[], Score score)
{
  int state = pack (work, lanes);
  if (work->next[state].cost == G_MAXINT32)
    work->born[work->n_born++] = state;
  if (score.cost < work->next[state].cost)
    work->next[state] = score;
}

/* Decides course `course` and those above at face `x`, every way there is. A segment ends a head
 * joint after its last cell, where the next piece's face would be. */
static void
decide (Work *work, Lane lanes[], int course, int x, Score score)
{
  const Cells *cells = work->cells;
  if (course == cells->n_courses)
    {
      give_birth (work, lanes, score);
      return;
    }
  Lane was = lanes[course];
  int length = was.since - cells->head;
  gboolean inside = was.since != work->outside;
  gboolean ends = inside && length > 0 && free_at (cells, course, x - cells->head) == 0
                  && free_at (cells, course, x - cells->head - 1) > 0;
  if (ends)
    {
      if (length > cells->unit)
        return;
      score = add_piece (work, score, course, x - was.since, x);
      lanes[course].since = work->outside;
      inside = FALSE;
    }
  if (!inside && free_at (cells, course, x) > 0 && free_at (cells, course, x - 1) == 0)
    lanes[course].since = 0;
  if (!inside || was.since < work->pitch)
    decide (work, lanes, course + 1, x, score);
  if (inside && length > 0 && free_at (cells, course, x) > 0)
    {
      lanes[course] = (Lane){ 0, was.mask | 1 };
      score = add_piece (work, score, course, x - was.since, x);
      decide (work, lanes, course + 1, x, add_laps (work, score, lanes, course));
    }
  lanes[course] = was;
}

/* From one face to the next: everything lies a cell further back. */
static void
step (Work *work, int x)
{
  Lane lanes[MAX_COURSES];
  work->n_born = 0;
  for (int i = 0; i < work->n_live; i++)
    {
      Score score = work->now[work->live[i]];
      work->now[work->live[i]] = NO_SCORE;
      unpack (work, work->live[i], lanes);
      for (int c = 0; c < work->cells->n_courses; c++)
        {
          lanes[c].mask = lanes[c].mask << 1 & (LAP_MASKS - 1);
          lanes[c].since += lanes[c].since != work->outside;
        }
      decide (work, lanes, 0, x, score);
    }
  Score *scores = work->now;
  int *states = work->live;
  work->now = work->next, work->next = scores;
  work->live = work->born, work->born = states;
  work->n_live = work->n_born;
}

CellsCost
cells_sweep (const Cells *cells, int price)
{
  Work work = { .cells = cells, .price = price, .pitch = cells->unit + cells->head };
  Lane lanes[MAX_COURSES] = { { 0, 0 } };
  Score best = NO_SCORE;
  work.outside = work.pitch + 1;
  work.lane_states = (work.outside + 1) * LAP_MASKS;
  work.states = 1;
  for (int c = 0; c < cells->n_courses; c++)
    work.states *= work.lane_states;
  work.now = g_new (Score, work.states);
  work.next = g_new (Score, work.states);
  work.live = g_new (int, work.states);
  work.born = g_new (int, work.states);
  for (int i = 0; i < work.states; i++)
    work.now[i] = work.next[i] = NO_SCORE;
  for (int c = 0; c < cells->n_courses; c++)
    lanes[c] = (Lane){ work.outside, 0 };
  work.live[0] = pack (&work, lanes);
  work.now[work.live[0]] = (Score){ 0, 0, 0 };
  work.n_live = 1;
  for (int x = 0; x <= cells->length + cells->head; x++)
    step (&work, x);
  for (int i = 0; i < work.n_live; i++)
    if (work.now[work.live[i]].cost < best.cost)
      best = work.now[work.live[i]];
  g_free (work.now);
  g_free (work.next);
  g_free (work.live);
  g_free (work.born);
  return (CellsCost){ best.breaches, best.cuts };
}
