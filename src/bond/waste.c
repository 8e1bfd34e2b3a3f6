/* waste.c - fewer units to order: patterns whose short pieces come out of each other's off-cuts */
#include "bond/waste.h"

#include <string.h>

typedef struct
{
  const Geometry *geometry;
  Pools *pools;
  Pattern *chosen;
  GArray *rest;  /* Length: short pieces of the other segments, longest first */
  GArray *bins;  /* Length: room left in each opened unit, ascending */
  GArray *trial; /* Length */
} Waste;

/* What a pattern takes: whole units (and pieces that need one for themselves), and lengths of
 * full-height short pieces appended to `lengths`. */
static gint32
count_pieces (const Geometry *geometry, const Segment *segment, const Pattern *pattern,
              GArray *lengths)
{
  gint32 units = 0;

  for (gint32 i = 0; i < pattern->n_pieces; i++)
    {
      Length x = i == 0 ? segment->a : pattern->faces[i - 1];
      Length end = i == pattern->n_pieces - 1 ? segment->b : pattern->faces[i] - geometry->joint;
      Length length = end - x;

      if (length == geometry->unit)
        units++;
      else
        g_array_append_val (lengths, length);
    }
  return units;
}

static gint
compare_descending (gconstpointer a, gconstpointer b)
{
  Length p = *(const Length *) a, q = *(const Length *) b;

  return (p < q) - (p > q);
}

/* Takes a piece out of the fullest unit that has room for it, or out of a new one. */
static void
fit (Waste *waste, Length length)
{
  GArray *bins = waste->bins;
  gint32 at = count_below (bins, 0, length), to;
  Length room;

  if (at == (gint32) bins->len)
    g_array_append_val (bins, waste->geometry->unit);
  room = g_array_index (bins, Length, at) - length - waste->geometry->kerf;
  to = count_below (bins, 0, room);
  memmove (&g_array_index (bins, Length, to + 1), &g_array_index (bins, Length, to),
           sizeof (Length) * (gsize) (at - to));
  g_array_index (bins, Length, to) = room;
}

/* Best fit decreasing of rest and more, both longest first; counted no further than past `most`. */
static gint32
units_for (Waste *waste, const GArray *more, gint32 most)
{
  guint i = 0, k = 0;

  g_array_set_size (waste->bins, 0);
  while ((i < waste->rest->len || k < more->len) && (gint32) waste->bins->len <= most)
    {
      gboolean from_rest
          = k >= more->len
            || (i < waste->rest->len
                && g_array_index (waste->rest, Length, i) >= g_array_index (more, Length, k));

      fit (waste, from_rest ? g_array_index (waste->rest, Length, i++)
                            : g_array_index (more, Length, k++));
    }
  return (gint32) waste->bins->len;
}

static void
collect_rest (Waste *waste, gint32 but)
{
  g_array_set_size (waste->rest, 0);
  for (gint32 i = 0; i < (gint32) waste->geometry->segments->len; i++)
    if (i != but)
      count_pieces (waste->geometry, geometry_segment (waste->geometry, i), &waste->chosen[i],
                    waste->rest);
  g_array_sort (waste->rest, compare_descending);
}

/* Likewise. */
static gint32
units_with (Waste *waste, gint32 segment, const Pattern *pattern, gint32 most)
{
  gint32 units;

  g_array_set_size (waste->trial, 0);
  units = count_pieces (waste->geometry, geometry_segment (waste->geometry, segment), pattern,
                        waste->trial);
  g_array_sort (waste->trial, compare_descending);
  return units + units_for (waste, waste->trial, most - units);
}

/* Perpends within the least lap of one of the other segment's, pairs. Both ascend. */
static gint32
short_laps (const Geometry *geometry, const Pattern *p, const Segment *other, const Pattern *q)
{
  gint32 pairs = 0, first = 0, n = pattern_n_perpends (other, q);

  for (gint32 i = 0; i < p->n_pieces - 1; i++)
    {
      while (first < n && pattern_perpend (other, q, first) <= p->faces[i] - geometry->min_lap)
        first++;
      for (gint32 k = first;
           k < n && pattern_perpend (other, q, k) < p->faces[i] + geometry->min_lap; k++)
        pairs++;
    }
  return pairs;
}

/* Counted no further than past `most`. */
static gint32
breaches_with (const Waste *waste, gint32 i, const Pattern *pattern, gint32 most)
{
  const Segment *segment = geometry_segment (waste->geometry, i);
  gint32 breaches = pattern->n_breaches;

  for (gint32 k = 0; k < segment->n_links && breaches <= most; k++)
    {
      gint32 other = geometry_link (waste->geometry, segment, k);

      breaches += short_laps (waste->geometry, pattern, geometry_segment (waste->geometry, other),
                              &waste->chosen[other]);
    }
  return breaches;
}

static gboolean
improve_segment (Waste *waste, gint32 i)
{
  const Pool *pool = pools_of (waste->pools, i);
  Pattern *now = &waste->chosen[i];
  gint32 breaches = breaches_with (waste, i, now, G_MAXINT32), units;
  const Pattern *better = NULL;
  gint32 cuts = now->n_cuts;

  collect_rest (waste, i);
  units = units_with (waste, i, now, G_MAXINT32);
  for (gint32 p = 0; p < pool->n; p++)
    {
      const Pattern *other = &g_array_index (pool->patterns, Pattern, p);
      gint32 total;

      if (other->n_cuts > now->n_cuts + 1 || breaches_with (waste, i, other, breaches) > breaches)
        continue;
      total = units_with (waste, i, other, units);
      if (total < units || (total == units && other->n_cuts < cuts))
        {
          units = total;
          cuts = other->n_cuts;
          better = other;
        }
    }
  if (better == NULL)
    return FALSE;
  pattern_clear (now);
  *now = pattern_copy (better);
  return TRUE;
}

void
waste_improve (Pools *pools, Pattern *chosen, const gint *stop)
{
  Waste waste = { .geometry = pools->geometry, .pools = pools, .chosen = chosen };
  gboolean again = TRUE;

  waste.rest = g_array_new (FALSE, FALSE, sizeof (Length));
  waste.bins = g_array_new (FALSE, FALSE, sizeof (Length));
  waste.trial = g_array_new (FALSE, FALSE, sizeof (Length));
  for (gint32 sweep = 0; sweep < 3 && again; sweep++)
    {
      again = FALSE;
      for (gint32 i = 0; i < (gint32) pools->geometry->segments->len; i++)
        {
          if (stop != NULL && g_atomic_int_get (stop) != 0)
            break;
          again = improve_segment (&waste, i) || again;
        }
    }
  g_array_unref (waste.rest);
  g_array_unref (waste.bins);
  g_array_unref (waste.trial);
}
