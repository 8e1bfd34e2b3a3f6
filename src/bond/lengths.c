/* lengths.c - the different lengths of a wall's cut pieces, where a rule wants few of them
 *
 * How many there are is of the whole wall and of no segment. So the lengths that are used most are
 * allowed, as many as the rule has, every piece of another length gets a price, and the wall is
 * laid again; which lengths are used most then decides once more. */
#include "bond/lengths.h"

#include "bond/network.h"

#define TRIES 8   /* choices of lengths in all */
#define SKIPPED 2 /* how far the last length allowed may be from those used most */

static gint
compare_uses (gconstpointer a, gconstpointer b)
{
  const LengthUse *p = a, *q = b;

  if (p->pieces != q->pieces)
    return p->pieces > q->pieces ? -1 : 1;
  return (p->length < q->length) - (p->length > q->length);
}

static void
use (GArray *uses, Length length)
{
  LengthUse first = { length, 1 };

  for (guint i = 0; i < uses->len; i++)
    if (g_array_index (uses, LengthUse, i).length == length)
      {
        g_array_index (uses, LengthUse, i).pieces++;
        return;
      }
  g_array_append_val (uses, first);
}

GArray *
lengths_used (const Geometry *geometry, const Pattern *patterns)
{
  GArray *uses = g_array_new (FALSE, FALSE, sizeof (LengthUse));

  for (guint i = 0; i < geometry->segments->len; i++)
    {
      const Segment *segment = geometry_segment (geometry, (gint32) i);
      const Pattern *pattern = &patterns[i];

      for (gint32 k = 0; k < pattern->n_pieces; k++)
        {
          Length x = k == 0 ? segment->a : pattern->faces[k - 1];
          Length end
              = k == pattern->n_pieces - 1 ? segment->b : pattern->faces[k] - geometry->joint;

          if (end - x < geometry->unit && !segment->stands)
            use (uses, end - x);
        }
    }
  g_array_sort (uses, compare_uses);
  return uses;
}

/* The lengths used most, but the last of them, and instead of that the one `skipped` places on. */
static GArray *
allow (const Geometry *geometry, const GArray *uses, gint32 skipped)
{
  GArray *allowed = g_array_new (FALSE, FALSE, sizeof (Length));
  gint32 most = geometry->most_lengths;

  for (gint32 i = 0; i < most; i++)
    {
      gint32 at = i < most - 1 ? i : i + skipped;

      if (at < (gint32) uses->len)
        g_array_append_val (allowed, g_array_index (uses, LengthUse, at).length);
    }
  return allowed;
}

/* What a layout costs without its laps, the lengths that are too many with it. Counts the patterns
 * anew, as they are when all lengths are allowed. */
static Cost
cost_of (const Geometry *geometry, Pattern *patterns, const GArray *uses)
{
  Cost excess = MAX ((gint32) uses->len - geometry->most_lengths, 0);

  for (guint i = 0; i < geometry->segments->len; i++)
    pattern_count (geometry, geometry_segment (geometry, (gint32) i), &patterns[i]);
  return network_cost (geometry, patterns)
         + excess * (geometry->lengths_must ? COST_BREACH : COST_WISH * RULES_PRICE_OF_LENGTH);
}

typedef struct
{
  const Geometry *geometry;
  Pattern *best;
  GArray *uses; /* LengthUse, of the best */
  Cost cost;    /* and what that costs */
  WallBound *bound;
  const gint *stop;
} Reducing;

/* Lays the wall with some lengths allowed and keeps what is better: 1; 0 when it is not, -1 when
 * stopped. */
static int
try_allowed (Reducing *work, GArray *allowed)
{
  Geometry other = *work->geometry;
  gint32 n = (gint32) other.segments->len;
  GArray *uses;
  Pattern *trial;
  Cost cost;

  other.allowed = allowed;
  other.wishing = TRUE;
  trial = network_solve (&other, work->bound, work->stop);
  if (trial == NULL)
    return -1;
  uses = lengths_used (work->geometry, trial);
  cost = cost_of (work->geometry, trial, uses);
  if (cost >= work->cost)
    {
      patterns_free (trial, n);
      g_array_unref (uses);
      return 0;
    }
  patterns_free (work->best, n);
  g_array_unref (work->uses);
  work->best = trial;
  work->uses = uses;
  work->cost = cost;
  return 1;
}

/* Until none of a few choices of lengths is any better. FALSE when stopped. */
static gboolean
try_all (Reducing *work)
{
  gint32 skipped = 0;

  for (gint32 tried = 0; tried < TRIES && skipped <= SKIPPED; tried++)
    {
      g_autoptr (GArray) allowed = NULL;
      int better;

      if ((gint32) work->uses->len <= work->geometry->most_lengths + MAX (skipped - 1, 0))
        break;
      allowed = allow (work->geometry, work->uses, skipped);
      better = try_allowed (work, allowed);
      if (better < 0)
        return FALSE;
      skipped = better > 0 ? 0 : skipped + 1;
    }
  return TRUE;
}

Pattern *
lengths_reduce (const Geometry *geometry, Pattern *patterns, WallBound *bound, const gint *stop)
{
  Reducing work = { geometry, patterns, NULL, 0, bound, stop };
  gboolean done;

  work.uses = lengths_used (geometry, patterns);
  work.cost = cost_of (geometry, patterns, work.uses);
  done = try_all (&work);
  g_array_unref (work.uses);
  if (done)
    return work.best;
  patterns_free (work.best, (gint32) geometry->segments->len);
  return NULL;
}
