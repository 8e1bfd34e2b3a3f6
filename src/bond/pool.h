/* pool.h - the patterns of one segment that the search over the wall chooses from
 *
 * Perpends are bits over an index of all places of the wall, so that two patterns are compared in a
 * few machine words. Segments of one shape and surroundings share a pool. */
#pragma once

#include "bond/pattern.h"

typedef struct
{
  gint32 n;
  gint32 first_word, n_words; /* of the index, in which its perpends lie */
  gint32 first_near, n_near;  /* in which they and a least lap around them lie */
  GArray *patterns;           /* Pattern, owned */
  GArray *costs;              /* Cost, of the pieces alone */
  GArray *perpends;           /* guint64, n_words for each pattern */
  GArray *near;   /* guint64, n_near for each: places within the least lap of a perpend */
  GArray *places; /* Length, ascending: pattern_places() */
  gint32 model;   /* the segment that it was made for */
} Pool;

/* Places of the index, the second left out. */
typedef struct
{
  gint32 from, to;
} Near;

typedef struct
{
  const Geometry *geometry;
  GArray *index;    /* Length: every place of every segment, ascending */
  Near *near;       /* for each of them, those within the least lap of it */
  GPtrArray *pools; /* Pool */
  gint32 *of;       /* pool of each segment */
} Pools;

/* Pools with the likely patterns: the fewest short pieces, in every place. */
Pools *pools_new (const Geometry *geometry);
void pools_free (Pools *pools);
/* Adds all patterns with up to two short pieces (up to a cap that bounds the time). */
void pools_widen (Pools *pools);
/* Adds one pattern, copied, unless it is there: its number in the pool. Faces that are no places of
 * the index are refused with -1. */
gint32 pool_add (Pools *pools, gint32 segment, const Pattern *pattern);

static inline Pool *
pools_of (const Pools *pools, gint32 segment)
{
  return g_ptr_array_index (pools->pools, pools->of[segment]);
}

/* Bits that are set; written out, since not every machine that this is built for has it in one
 * instruction and the library call is slow. */
static inline gint32
count_bits (guint64 word)
{
  word -= (word >> 1) & 0x5555555555555555u;
  word = (word & 0x3333333333333333u) + ((word >> 2) & 0x3333333333333333u);
  word = (word + (word >> 4)) & 0x0f0f0f0f0f0f0f0fu;
  return (gint32) ((word * 0x0101010101010101u) >> 56);
}

/* How many of ascending lengths (Length) are below `length`; at least `low` are. */
static inline gint32
count_below (const GArray *lengths, gint32 low, Length length)
{
  gint32 high = (gint32) lengths->len;

  while (low < high)
    {
      gint32 middle = (low + high) / 2;

      if (g_array_index (lengths, Length, middle) < length)
        low = middle + 1;
      else
        high = middle;
    }
  return low;
}

/* Perpends of pattern p of pool a that lie within the least lap of a perpend of q of b;
 * with `any`, 1 for any number of them. */
static inline gint32
pool_conflicts (const Pool *a, gint32 p, const Pool *b, gint32 q, gboolean any)
{
  gint32 from = MAX (a->first_word, b->first_near);
  gint32 to = MIN (a->first_word + a->n_words, b->first_near + b->n_near);
  const guint64 *bits = (const guint64 *) (gconstpointer) a->perpends->data;
  const guint64 *near = (const guint64 *) (gconstpointer) b->near->data;
  gsize bit_at = (gsize) p * a->n_words + from - a->first_word;
  gsize near_at = (gsize) q * b->n_near + from - b->first_near;
  gint32 conflicts = 0;

  for (gint32 w = 0; w < to - from; w++)
    {
      guint64 both = bits[bit_at + w] & near[near_at + w];

      if (both != 0 && any)
        return 1;
      if (both != 0)
        conflicts += count_bits (both);
    }
  return conflicts;
}
