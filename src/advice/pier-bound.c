/* pier-bound.c - how few cuts a wall can have, wherever its openings stand */
#include "advice/pier-bound.h"

#include "bond/gauge.h"
#include "bond/lay.h"

/* Courses one upon the other that the same openings cross whole, and no other touches. */
typedef struct
{
  gint32 first, n;   /* courses */
  GArray *openings;  /* guint: indices of those that cross them */
  GHashTable *known; /* PierKey -> GINT_TO_POINTER (cuts + 1) */
} Band;

typedef struct
{
  Length width;
  gboolean left, right; /* it goes to that end of the wall */
} PierKey;

struct PierBound
{
  const Wall *wall;
  const Block *block;
  Laying laying; /* resolved */
  GArray *bands; /* Band */
};

static guint
key_hash (gconstpointer data)
{
  const PierKey *key = data;

  return (guint) key->width * 4 + (guint) key->left * 2 + (guint) key->right;
}

static gboolean
key_equal (gconstpointer a, gconstpointer b)
{
  const PierKey *x = a, *y = b;

  return x->width == y->width && x->left == y->left && x->right == y->right;
}

static void
band_clear (gpointer data)
{
  Band *band = data;

  g_array_unref (band->openings);
  g_hash_table_unref (band->known);
}

/* --- bands --- */

typedef enum
{
  TOUCH_NOT,
  TOUCH_WHOLE, /* what it leaves of the course is packed with mortar */
  TOUCH_PART,
} Touch;

static Touch
touch_of (const Opening *opening, Length bottom, Length top)
{
  if (opening->sill >= top || opening_head (opening) <= bottom)
    return TOUCH_NOT;
  if (opening->sill <= bottom && opening_head (opening) >= top)
    return TOUCH_WHOLE;
  return TOUCH_PART;
}

/* The openings that cross a course whole; NULL when one takes a part of it, or the course is not
 * whole itself: of such courses nothing is told. */
static GArray *
openings_of_course (const PierBound *bound, gint32 course)
{
  const Length bottom = gauge_bottom (bound->block, &bound->laying, course);
  const Length top = bottom + bound->block->height;
  GArray *openings = g_array_new (FALSE, FALSE, sizeof (guint));

  for (guint i = 0; i < bound->wall->openings->len; i++)
    {
      Touch touch = touch_of (wall_opening_at (bound->wall, i), bottom, top);

      if (touch == TOUCH_WHOLE)
        g_array_append_val (openings, i);
      if (touch == TOUCH_PART || top > bound->wall->height)
        {
          g_array_unref (openings);
          return NULL;
        }
    }
  return openings;
}

static gboolean
same_openings (const GArray *a, const GArray *b)
{
  if (a->len != b->len)
    return FALSE;
  for (guint i = 0; i < a->len; i++)
    if (g_array_index (a, guint, i) != g_array_index (b, guint, i))
      return FALSE;
  return TRUE;
}

static void
add_course (PierBound *bound, gint32 course, GArray *openings)
{
  Band *last
      = bound->bands->len > 0 ? &g_array_index (bound->bands, Band, bound->bands->len - 1) : NULL;
  Band band = { course, 1, openings, NULL };

  if (last != NULL && last->first + last->n == course && same_openings (last->openings, openings))
    {
      last->n++;
      g_array_unref (openings);
      return;
    }
  band.known = g_hash_table_new_full (key_hash, key_equal, g_free, NULL);
  g_array_append_val (bound->bands, band);
}

PierBound *
pier_bound_new (const Wall *wall, const Block *block)
{
  PierBound *bound = g_new0 (PierBound, 1);
  gint32 n;

  bound->wall = wall;
  bound->block = block;
  bound->laying = laying_resolve (&wall->laying, block);
  bound->bands = g_array_new (FALSE, FALSE, sizeof (Band));
  g_array_set_clear_func (bound->bands, band_clear);
  n = gauge_n_courses (wall, block, &bound->laying);
  for (gint32 course = 1; course <= n; course++)
    {
      GArray *openings = openings_of_course (bound, course);

      if (openings != NULL)
        add_course (bound, course, openings);
    }
  return bound;
}

void
pier_bound_free (PierBound *bound)
{
  if (bound == NULL)
    return;
  g_array_unref (bound->bands);
  g_free (bound);
}

/* --- one pier --- */

static void
set_length (Wall *pier, LayingField field, Length *at, Length value)
{
  pier->laying.given |= field;
  *at = value;
}

/* The corner as it is in the pier's own courses, counted from 1. */
static void
copy_end (const PierBound *bound, const Band *band, Side side, Wall *pier)
{
  pier->ends[side] = (End){ 0 };
  pier->ends[side].given = bound->wall->ends[side].given;
  pier->ends[side].ret = bound->wall->ends[side].ret;
  pier->ends[side].has_return = bound->wall->ends[side].has_return;
  pier->ends[side].through = bound->wall->ends[side].through;
  if (bound->wall->ends[side].through != THROUGH_ALL)
    pier->ends[side].through
        = end_stops (&bound->wall->ends[side], band->first) ? THROUGH_ODD : THROUGH_EVEN;
}

/* Only what every layout of the wall keeps in these courses, too: joints and limits. */
static Wall *
pier_of (const PierBound *bound, const Band *band, const PierKey *key)
{
  Wall *pier = wall_new ();
  Laying *laying = &pier->laying;

  pier->block = bound->wall->block;
  pier->length = key->width;
  set_length (pier, LAYING_FIRST_BED, &laying->first_bed, 0);
  set_length (pier, LAYING_BED, &laying->bed, bound->laying.bed);
  set_length (pier, LAYING_HEAD, &laying->head, bound->laying.head);
  set_length (pier, LAYING_MIN_PIECE, &laying->min_piece, bound->laying.min_piece);
  set_length (pier, LAYING_MIN_LAP, &laying->min_lap, bound->laying.min_lap);
  set_length (pier, LAYING_MIN_RIP, &laying->min_rip, bound->laying.min_rip);
  pier->height = band->n * (bound->block->height + bound->laying.bed) - bound->laying.bed;
  if (key->left)
    copy_end (bound, band, SIDE_LEFT, pier);
  if (key->right)
    copy_end (bound, band, SIDE_RIGHT, pier);
  return pier;
}

static gint32
cuts_of_pier (const PierBound *bound, Band *band, PierKey key, const gint *stop)
{
  gpointer known = g_hash_table_lookup (band->known, &key);
  g_autoptr (Wall) pier = NULL;
  g_autofree char *fault = NULL;
  gint32 cuts = 0;

  if (known != NULL)
    return GPOINTER_TO_INT (known) - 1;
  pier = pier_of (bound, band, &key);
  fault = wall_fault (pier, bound->block, NULL);
  if (fault == NULL)
    {
      g_autoptr (Layout) layout = lay_wall_quickly (pier, bound->block, stop);

      if (layout == NULL)
        return -1;
      cuts = layout->proof.cuts_at_least;
    }
  g_hash_table_insert (band->known, g_memdup2 (&key, sizeof key), GINT_TO_POINTER (cuts + 1));
  return cuts;
}

/* --- all of them --- */

/* The opening of the band that begins next at `from` or right of it; G_MAXUINT: none. */
static guint
next_opening (const Band *band, const Length *x, Length from)
{
  guint next = G_MAXUINT;

  for (guint i = 0; i < band->openings->len; i++)
    {
      guint opening = g_array_index (band->openings, guint, i);

      if (x[opening] >= from && (next == G_MAXUINT || x[opening] < x[next]))
        next = opening;
    }
  return next;
}

static gint32
cuts_of_band (const PierBound *bound, Band *band, const Length *x, const gint *stop)
{
  gint32 sum = 0;
  Length from = 0;

  while (TRUE)
    {
      const guint next = next_opening (band, x, from);
      const Length to = next == G_MAXUINT ? bound->wall->length : x[next];
      const PierKey key = { to - from, from == 0, next == G_MAXUINT };
      const gint32 cuts = key.width > 0 ? cuts_of_pier (bound, band, key, stop) : 0;

      if (cuts < 0)
        return -1;
      sum += cuts;
      if (next == G_MAXUINT)
        return sum;
      from = to + wall_opening_at (bound->wall, next)->width;
    }
}

gint32
pier_bound_cuts (PierBound *bound, const Length *x, const gint *stop)
{
  gint32 sum = 0;

  for (guint i = 0; i < bound->bands->len; i++)
    {
      gint32 cuts = cuts_of_band (bound, &g_array_index (bound->bands, Band, i), x, stop);

      if (cuts < 0)
        return -1;
      sum += cuts;
    }
  return sum;
}
