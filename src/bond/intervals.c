/* intervals.c - sets of lengths as intervals */
#include "bond/intervals.h"

#include <stdlib.h>

/* So many are sorted one by one: they come nearly sorted. */
#define FEW 48

gint
interval_compare (gconstpointer a, gconstpointer b)
{
  const Interval *p = a, *q = b;

  return (p->from > q->from) - (p->from < q->from);
}

void
intervals_clear (Intervals *set)
{
  g_free (set->at);
  *set = (Intervals){ NULL, 0, 0 };
}

void
intervals_grow (Intervals *set)
{
  set->room = MAX (2 * set->room, 32);
  set->at = g_renew (Interval, set->at, set->room);
}

void
intervals_sort (Intervals *set)
{
  gint32 i = 1;

  while (i < set->n && set->at[i - 1].from <= set->at[i].from)
    i++;
  if (i < set->n && set->n > FEW)
    {
      qsort (set->at, (gsize) set->n, sizeof (Interval), interval_compare);
      return;
    }
  for (; i < set->n; i++)
    {
      Interval one = set->at[i];
      gint32 k = i;

      for (; k > 0 && set->at[k - 1].from > one.from; k--)
        set->at[k] = set->at[k - 1];
      set->at[k] = one;
    }
}

void
intervals_merge (Intervals *set)
{
  gint32 kept = 0;

  intervals_sort (set);
  for (gint32 i = 0; i < set->n; i++)
    {
      Interval next = set->at[i];

      if (kept > 0 && set->at[kept - 1].to >= next.from - 1)
        set->at[kept - 1].to = MAX (set->at[kept - 1].to, next.to);
      else
        set->at[kept++] = next;
    }
  set->n = kept;
}
