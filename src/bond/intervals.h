/* intervals.h - sets of lengths as intervals */
#pragma once

#include "model/length.h"

#include <glib.h>

typedef struct
{
  Length from, to; /* both included */
} Interval;

/* By their beginnings. */
gint interval_compare (gconstpointer a, gconstpointer b);

/* A row of them with room for more; all zero: none. Whoever has it clears it. */
typedef struct
{
  Interval *at;
  gint32 n, room;
} Intervals;

void intervals_clear (Intervals *set);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Intervals, intervals_clear)
/* Room for at least one more. */
void intervals_grow (Intervals *set);
void intervals_sort (Intervals *set);
/* Sorts them and joins those that overlap or touch. */
void intervals_merge (Intervals *set);

static inline void
intervals_append (Intervals *set, Interval interval)
{
  if (set->n == set->room)
    intervals_grow (set);
  set->at[set->n++] = interval;
}
/* Adds one, if there is anything in it. */
static inline void
intervals_add (Intervals *set, Length from, Length to)
{
  if (from <= to)
    intervals_append (set, (Interval){ from, to });
}
static inline void
intervals_append_all (Intervals *set, const Interval *more, gint32 n)
{
  for (gint32 i = 0; i < n; i++)
    intervals_append (set, more[i]);
}
