/* pool.c - the patterns of one segment that the search over the wall chooses from */
#include "bond/pool.h"

#include <string.h>

#include "bond/path.h"

#define POOL_MAX 400 /* patterns; more would cost time and gain nothing that has been seen */
#define POOL_MAX_FACES 100000 /* of all patterns together: longer courses get fewer patterns */

/* --- the index of places --- */

/* Adds what is new of ascending lengths to ascending ones. */
static void
add_places (GArray *index, const Length *places, guint n)
{
  g_autoptr (GArray) before = g_array_copy (index);
  const Length *old = (const Length *) (gpointer) before->data;
  guint i = 0, k = 0, kept = 0;
  Length *to;

  g_array_set_size (index, before->len + n);
  to = (Length *) (gpointer) index->data;
  while (i < before->len || k < n)
    {
      Length next = k == n || (i < before->len && old[i] <= places[k]) ? old[i] : places[k];

      while (i < before->len && old[i] == next)
        i++;
      while (k < n && places[k] == next)
        k++;
      to[kept++] = next;
    }
  g_array_set_size (index, kept);
}

/* --- pools --- */

static void
pool_free (gpointer data)
{
  Pool *pool = data;

  for (guint i = 0; i < pool->patterns->len; i++)
    pattern_clear (&g_array_index (pool->patterns, Pattern, i));
  g_array_unref (pool->patterns);
  g_array_unref (pool->costs);
  g_array_unref (pool->perpends);
  g_array_unref (pool->near);
  g_array_unref (pool->places);
  g_free (pool);
}

static Pool *
pool_new (gint32 model, GArray *places)
{
  Pool *pool = g_new0 (Pool, 1);

  pool->model = model;
  pool->places = places;
  pool->patterns = g_array_new (FALSE, FALSE, sizeof (Pattern));
  pool->costs = g_array_new (FALSE, FALSE, sizeof (Cost));
  pool->perpends = g_array_new (FALSE, TRUE, sizeof (guint64));
  pool->near = g_array_new (FALSE, TRUE, sizeof (guint64));
  return pool;
}

/* Whether a segment has neighbours like those of another, which it is like itself. */
static gboolean
same_beside (const Geometry *geometry, gint32 i, gint32 k)
{
  const Segment *p = geometry_segment (geometry, i), *q = geometry_segment (geometry, k);

  if (p->n_links != q->n_links)
    return FALSE;
  for (gint32 m = 0; m < p->n_links; m++)
    if (geometry_like (geometry, geometry_link (geometry, p, m))
        != geometry_like (geometry, geometry_link (geometry, q, m)))
      return FALSE;
  return TRUE;
}

static gboolean
serves (const Geometry *geometry, const Pool *pool, gint32 i, const GArray *places)
{
  return geometry_like (geometry, pool->model) == geometry_like (geometry, i)
         && pool->places->len == places->len
         && (places->len == 0 /* its data may be NULL */
             || memcmp (pool->places->data, places->data, sizeof (Length) * places->len) == 0);
}

static gint32
find_or_make (Pools *pools, gint32 i)
{
  const Geometry *geometry = pools->geometry;
  GArray *places;

  for (gint32 k = i - 1; k >= geometry_like (geometry, i); k--)
    if (geometry_like (geometry, k) == geometry_like (geometry, i) && same_beside (geometry, i, k))
      return pools->of[k];
  places = pattern_places (geometry, geometry_segment (geometry, i));
  for (guint k = 0; k < pools->pools->len; k++)
    if (serves (geometry, g_ptr_array_index (pools->pools, k), i, places))
      {
        g_array_unref (places);
        return (gint32) k;
      }
  g_ptr_array_add (pools->pools, pool_new (i, places));
  return (gint32) pools->pools->len - 1;
}

static void
set_word_ranges (const Pools *pools, Pool *pool)
{
  const Segment *segment = geometry_segment (pools->geometry, pool->model);
  Length lap = pools->geometry->min_lap;
  gint32 last = count_below (pools->index, 0, segment->b);
  gint32 last_near = count_below (pools->index, 0, segment->b + lap);

  pool->first_word = count_below (pools->index, 0, segment->a) / 64;
  pool->n_words = (last + 63) / 64 - pool->first_word;
  pool->first_near = count_below (pools->index, 0, segment->a - lap) / 64;
  pool->n_near = (last_near + 63) / 64 - pool->first_near;
}

/* --- adding patterns --- */

static gboolean
same_faces (const Pattern *p, const Pattern *q)
{
  return p->n_pieces == q->n_pieces
         && (p->n_pieces < 2 /* no faces: they may be NULL */
             || memcmp (p->faces, q->faces, sizeof (Length) * (gsize) (p->n_pieces - 1)) == 0);
}

static void
set_bits (guint64 *words, gint32 first_word, gint32 from, gint32 to)
{
  for (gint32 bit = from; bit < to; bit++)
    words[bit / 64 - first_word] |= G_GUINT64_CONSTANT (1) << (bit % 64);
}

/* For each place of the index which places are within the least lap of it. */
static void
note_near (Pools *pools)
{
  const Length *index = (const Length *) (gpointer) pools->index->data;
  gint32 n = (gint32) pools->index->len, from = 0, to = 0;
  Length lap = pools->geometry->min_lap;

  pools->near = g_new (Near, MAX (n, 1));
  for (gint32 i = 0; i < n; i++)
    {
      while (index[from] <= index[i] - lap && from < i)
        from++;
      while (to < n && index[to] < index[i] + lap)
        to++;
      pools->near[i] = (Near){ lap > 0 ? from : to, to };
    }
}

/* The perpends of a pattern, and what is near them. */
static void
mark_perpends (const Pools *pools, const Pool *pool, const Pattern *pattern, guint64 *perpends,
               guint64 *near)
{
  const Segment *segment = geometry_segment (pools->geometry, pool->model);
  gint32 place = 0;

  for (gint32 i = 0; i < pattern_n_perpends (segment, pattern); i++)
    {
      place = count_below (pools->index, place, pattern_perpend (segment, pattern, i));
      set_bits (perpends, pool->first_word, place, place + 1);
      set_bits (near, pool->first_near, pools->near[place].from, pools->near[place].to);
    }
}

static gint32
append (Pools *pools, Pool *pool, const Pattern *pattern)
{
  const Segment *segment = geometry_segment (pools->geometry, pool->model);
  Pattern copy = pattern_copy (pattern);
  gsize row = (gsize) pool->n;
  Cost cost;

  cost = pattern_count (pools->geometry, segment, &copy);
  g_array_append_val (pool->patterns, copy);
  g_array_append_val (pool->costs, cost);
  g_array_set_size (pool->perpends, (guint) ((row + 1) * (gsize) pool->n_words));
  g_array_set_size (pool->near, (guint) ((row + 1) * (gsize) pool->n_near));
  mark_perpends (pools, pool, &copy,
                 (guint64 *) (gpointer) pool->perpends->data + row * (gsize) pool->n_words,
                 (guint64 *) (gpointer) pool->near->data + row * (gsize) pool->n_near);
  return pool->n++;
}

gint32
pool_add (Pools *pools, gint32 segment, const Pattern *pattern)
{
  Pool *pool = pools_of (pools, segment);

  for (gint32 i = 0; i < pattern->n_pieces - 1; i++)
    {
      gint32 place = count_below (pools->index, 0, pattern->faces[i]);

      if (place >= (gint32) pools->index->len
          || g_array_index (pools->index, Length, place) != pattern->faces[i])
        return -1;
    }
  for (gint32 i = 0; i < pool->n; i++)
    if (same_faces (&g_array_index (pool->patterns, Pattern, i), pattern))
      return i;
  return append (pools, pool, pattern);
}

/* --- patterns with up to two short pieces --- */

typedef struct
{
  Pools *pools;
  Pool *pool;
  const Segment *segment;
  Length *faces; /* room for one pattern */
  Length pitch;
} Enumeration;

static void
take (Enumeration *work, gint32 n_faces)
{
  Pattern pattern = { .n_pieces = n_faces + 1, .faces = work->faces };

  if (work->pool->n < POOL_MAX && (gint64) work->pool->n * (n_faces + 1) < POOL_MAX_FACES)
    append (work->pools, work->pool, &pattern);
}

/* No pattern goes in any more: they have at least as many pieces as whole units fill the segment.
 */
static gboolean
is_full (const Enumeration *work)
{
  gint64 least = (work->segment->b - work->segment->a + work->pitch - 1) / work->pitch;

  return work->pool->n >= POOL_MAX || work->pool->n * least >= POOL_MAX_FACES;
}

/* Whole units from `face` (itself no face yet) to the segment's end: faces written from *n on.
 * FALSE when they do not come out. */
static gboolean
finish_whole (Enumeration *work, Length face, gint32 *n)
{
  Length end = work->segment->b + work->pools->geometry->joint;

  if ((end - face) % work->pitch != 0)
    return FALSE;
  for (; face < end; face += work->pitch)
    work->faces[(*n)++] = face;
  return TRUE;
}

static gboolean
is_short (const Enumeration *work, Length from, Length face)
{
  Length length = face - work->pools->geometry->joint - from;

  return length >= work->pools->geometry->min_piece && length < work->pools->geometry->unit;
}

/* One short piece after `left` whole units from `from`, then whole units to the end. */
static void
one_short (Enumeration *work, Length from, gint32 n)
{
  Length end = work->segment->b + work->pools->geometry->joint;
  Length face = end - (end - from) / work->pitch * work->pitch;

  /* The last pieces on the right end's grid. */
  for (Length at = face; at >= from && at <= end; at += work->pitch)
    {
      gint32 count = n;

      if (at - from >= work->pitch)
        break;
      if (!is_short (work, from, at))
        continue;
      if (at == end || finish_whole (work, at, &count))
        take (work, count);
    }
}

/* A short piece to `face`, some whole units, a second short piece, whole units to the end. */
static void
second_short (Enumeration *work, Length face, gint32 n, gboolean ends_only)
{
  Length end = work->segment->b + work->pools->geometry->joint;

  for (Length at = face; at < end && !is_full (work); at += work->pitch)
    {
      work->faces[n++] = at;
      if (!ends_only || end - at <= work->pitch)
        one_short (work, at, n);
    }
}

static void
two_shorts (Enumeration *work, Length from, gint32 n, gboolean ends_only)
{
  for (guint i = 0; i < work->pool->places->len; i++)
    {
      Length face = g_array_index (work->pool->places, Length, i);

      if (face - from > work->pitch)
        break;
      if (is_short (work, from, face))
        second_short (work, face, n, ends_only);
    }
}

static void
enumerate (Pools *pools, Pool *pool, gboolean wide)
{
  const Segment *segment = geometry_segment (pools->geometry, pool->model);
  Length pitch = pools->geometry->unit + pools->geometry->joint;
  gint32 room = (segment->b - segment->a) / pitch + 6;
  g_autofree Length *faces = g_new (Length, room);
  Enumeration work = { pools, pool, segment, faces, pitch };
  Length end = segment->b + pools->geometry->joint;
  gint32 n = 0;

  for (Length from = segment->a; from < end && !is_full (&work); from += pitch)
    {
      if (from > segment->a)
        faces[n++] = from;
      if (!wide && from == segment->a)
        {
          gint32 count = n;

          if ((end - from) % pitch == 0 && finish_whole (&work, from + pitch, &count))
            take (&work, count);
        }
      if (!wide)
        one_short (&work, from, n);
      if (wide || from == segment->a)
        two_shorts (&work, from, n, !wide);
    }
}

/* Whatever the tiling, something cheap of its own: sliver walls, steps and strips too. */
static void
add_cheapest (Pools *pools, gint32 segment)
{
  Pool *pool = pools_of (pools, segment);
  g_autofree Cost *toll = g_new0 (Cost, pool->places->len + 1);
  Cost cost;
  Pattern pattern;

  rules_add_tolls (pools->geometry, geometry_segment (pools->geometry, segment), pool->places,
                   toll);
  pattern = path_solve (pools->geometry, geometry_segment (pools->geometry, segment), pool->places,
                        toll, &cost);
  pool_add (pools, segment, &pattern);
  pattern_clear (&pattern);
}

Pools *
pools_new (const Geometry *geometry)
{
  Pools *pools = g_new0 (Pools, 1);
  gint32 n = (gint32) geometry->segments->len;

  pools->geometry = geometry;
  pools->index = g_array_new (FALSE, FALSE, sizeof (Length));
  pools->pools = g_ptr_array_new_with_free_func (pool_free);
  pools->of = g_new (gint32, MAX (n, 1));
  for (gint32 i = 0; i < n; i++)
    pools->of[i] = find_or_make (pools, i);
  for (guint i = 0; i < pools->pools->len; i++)
    {
      const Pool *pool = g_ptr_array_index (pools->pools, i);

      add_places (pools->index, (const Length *) (gpointer) pool->places->data, pool->places->len);
      if (geometry_segment (geometry, pool->model)->joined_left)
        add_places (pools->index, &geometry_segment (geometry, pool->model)->a, 1);
    }
  note_near (pools);
  for (guint i = 0; i < pools->pools->len; i++)
    {
      Pool *pool = g_ptr_array_index (pools->pools, i);

      set_word_ranges (pools, pool);
      enumerate (pools, pool, FALSE);
      add_cheapest (pools, pool->model);
    }
  return pools;
}

void
pools_widen (Pools *pools)
{
  for (guint i = 0; i < pools->pools->len; i++)
    enumerate (pools, g_ptr_array_index (pools->pools, i), TRUE);
}

void
pools_free (Pools *pools)
{
  if (pools == NULL)
    return;
  g_array_unref (pools->index);
  g_free (pools->near);
  g_ptr_array_unref (pools->pools);
  g_free (pools->of);
  g_free (pools);
}
