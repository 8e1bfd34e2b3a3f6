/* pier-bound.c - how good a wall can be, wherever its openings stand */
#include "advice/pier-bound.h"

#include <string.h>

#include "bond/gauge.h"
#include "bond/profile.h"

/* Openings that take a part of one run, and walls that meet it; a run with more is not kept. */
#define MAX_PARTS 6
/* Places of a band's openings that are all tried. */
#define MANY 100000

/* Courses one upon the other that the same openings cross whole, and no other touches; or a single
 * one of which some openings take a part. */
typedef struct
{
  gint32 first, n;   /* courses */
  Length height;     /* of them, with the joints between */
  GArray *whole;     /* guint: indices of openings that cross them */
  GArray *part;      /* guint: of those that take a part */
  GHashTable *known; /* RunKey -> LayBound */
} Band;

typedef struct
{
  guint32 what; /* opening, or behind these the wall that meets it */
  Length at;    /* from where the run begins */
} Part;

/* What the bound of a run of a band depends on; no padding, compared byte by byte. */
typedef struct
{
  Length width;
  guint32 left, right; /* 1: it goes to that end of the wall */
  guint32 n;
  Part parts[MAX_PARTS];
} RunKey;

typedef struct
{
  Length from, to;
  gboolean left, right; /* as of a RunKey */
  guint jambs[2];       /* openings beside it; G_MAXUINT: none */
} Run;

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
  const guint32 *words = data;
  guint hash = 2166136261u; /* FNV-1a, a word at a time */

  for (gsize i = 0; i < sizeof (RunKey) / sizeof *words; i++)
    hash = (hash ^ words[i]) * 16777619u;
  return hash ^ (hash >> 15);
}

static gboolean
key_equal (gconstpointer a, gconstpointer b)
{
  return memcmp (a, b, sizeof (RunKey)) == 0;
}

static void
band_clear (gpointer data)
{
  Band *band = data;

  g_array_unref (band->whole);
  g_array_unref (band->part);
  g_hash_table_unref (band->known);
}

LayBound
lay_bound_add (LayBound a, LayBound b)
{
  return (LayBound){ a.breaches + b.breaches, a.cuts + b.cuts };
}

/* --- bands --- */

/* What is left of a course is packed with mortar. */
static gboolean
is_packed (const PierBound *bound, Length height)
{
  return height <= 0 || (height <= GAUGE_PACKING_MAX && height < bound->block->height);
}

/* Sorts the openings that touch a course into `band`. */
static void
find_openings (const PierBound *bound, Length bottom, Length top, Band *band)
{
  for (guint i = 0; i < bound->wall->openings->len; i++)
    {
      const Opening *opening = wall_opening_at (bound->wall, i);

      if (opening->sill >= top || opening_head (opening) <= bottom)
        continue;
      if (is_packed (bound, opening->sill - bottom)
          && is_packed (bound, top - opening_head (opening)))
        g_array_append_val (band->whole, i);
      else
        g_array_append_val (band->part, i);
    }
}

static gboolean
same_openings (const GArray *a, const GArray *b)
{
  return a->len == b->len
         && (a->len == 0 || memcmp (a->data, b->data, a->len * sizeof (guint)) == 0);
}

/* Adds a course, to the last band where it is like that, one bed above it. */
static void
add_course (PierBound *bound, gint32 course)
{
  const Length unit = bound->block->height;
  const Length bottom = gauge_bottom (bound->wall, bound->block, &bound->laying, course);
  const Length bed = gauge_bed (bound->wall, bound->block, &bound->laying, course);
  Band band = { .first = course, .n = 1, .height = MIN (unit, bound->wall->height - bottom) };
  Band *last
      = bound->bands->len > 0 ? &g_array_index (bound->bands, Band, bound->bands->len - 1) : NULL;

  band.whole = g_array_new (FALSE, FALSE, sizeof (guint));
  band.part = g_array_new (FALSE, FALSE, sizeof (guint));
  band.known = g_hash_table_new_full (key_hash, key_equal, g_free, g_free);
  find_openings (bound, bottom, bottom + band.height, &band);
  if (last != NULL && bed == bound->laying.bed && last->part->len == 0 && band.part->len == 0
      && band.height == unit && same_openings (last->whole, band.whole))
    {
      last->n++;
      last->height += unit + bed;
      band_clear (&band);
      return;
    }
  g_array_append_val (bound->bands, band);
}

/* Under a level top, on the foundation's zero, beside walls that are there: little walls have none
 * of what else there may be, and courses that are left out only make the sum lower. */
static gboolean
is_plain_course (const PierBound *bound, gint32 course)
{
  const Wall *wall = bound->wall;
  const Length bottom = gauge_bottom (wall, bound->block, &bound->laying, course);
  gboolean plain = wall->tops->len == 0
                   || wall_top_lowest (wall, 0, wall->length) >= bottom + bound->block->height;

  for (guint i = 0; i < wall->feet->len; i++)
    plain = plain
            && profile_base (wall, bound->block, &bound->laying, foot_point (wall->feet, i)->up)
                   <= bottom;
  for (int side = 0; side < 2; side++)
    plain = plain && reaches_up (wall->ends[side].up_to, bottom);
  for (guint i = 0; i < wall->tees->len; i++)
    plain = plain && reaches_up (wall_tee_at (wall, i)->up_to, bottom);
  return plain;
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
    if (is_plain_course (bound, course))
      add_course (bound, course);
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

/* --- one run --- */

static void
set_length (Wall *wall, LayingField field, Length *at, Length value)
{
  wall->laying.given |= field;
  *at = value;
}

/* As it is in the band's own courses, counted from 1. */
static Through
through_in (const Band *band, Through through)
{
  if (through == THROUGH_ALL)
    return THROUGH_ALL;
  return through_runs (through, band->first) ? THROUGH_ODD : THROUGH_EVEN;
}

static void
copy_end (const PierBound *bound, const Band *band, Side side, Wall *little)
{
  little->ends[side] = (End){ 0 };
  little->ends[side].given = bound->wall->ends[side].given;
  little->ends[side].ret = bound->wall->ends[side].ret;
  little->ends[side].has_return = bound->wall->ends[side].has_return;
  little->ends[side].through = through_in (band, bound->wall->ends[side].through);
}

/* Whether a wall that meets this one takes something of the run, with its joints. */
static gboolean
meets (const PierBound *bound, const Tee *tee, const Run *run)
{
  return tee->x - bound->laying.head < run->to && tee_right (tee) + bound->laying.head > run->from;
}

/* FALSE: one stands across the end of the run, and that is no little wall. */
static gboolean
copy_tees (const PierBound *bound, const Band *band, const Run *run, Wall *little)
{
  for (guint i = 0; i < bound->wall->tees->len; i++)
    {
      const Tee *tee = wall_tee_at (bound->wall, i);
      const Tee own = { .x = tee->x - run->from,
                        .ret = tee->ret,
                        .through = through_in (band, tee->through) };

      if (!meets (bound, tee, run))
        continue;
      if (tee->x < run->from || tee_right (tee) > run->to)
        return FALSE;
      g_array_append_val (little->tees, own);
    }
  return TRUE;
}

static gboolean
parts (const MovementJoint *joint, const Run *run)
{
  return joint->x < run->to && movement_joint_right (joint) > run->from;
}

/* One across the end of the run is a fault of the little wall. */
static void
copy_movement_joints (const PierBound *bound, const Run *run, Wall *little)
{
  for (guint i = 0; i < bound->wall->movement_joints->len; i++)
    {
      const MovementJoint *joint = wall_movement_joint_at (bound->wall, i);

      if (parts (joint, run))
        wall_add_movement_joint (little, joint->x - run->from, joint->width);
    }
}

static gboolean
is_in (const PierBound *bound, guint opening, const Run *run, const Length *x)
{
  return x[opening] < run->to
         && x[opening] + wall_opening_at (bound->wall, opening)->width > run->from;
}

/* What an opening takes of the run. */
static void
add_opening (const PierBound *bound, const Band *band, const Run *run, guint i, const Length *x,
             Wall *little)
{
  const Opening *opening = wall_opening_at (bound->wall, i);
  const Length bottom = gauge_bottom (bound->wall, bound->block, &bound->laying, band->first);
  Opening part = opening_default (OPENING_VOID);

  part.id.n = i + 1;
  part.key = g_strdup ("part");
  part.x = MAX (x[i], run->from) - run->from;
  part.width = MIN (x[i] + opening->width, run->to) - run->from - part.x;
  part.sill = MAX (opening->sill - bottom, 0);
  part.height = MIN (opening_head (opening) - bottom, band->height) - part.sill;
  g_array_append_val (little->openings, part);
}

/* Only what every layout of the wall keeps in these courses, too: joints and limits. */
static Wall *
little_wall (const PierBound *bound, const Band *band, const Run *run, const Length *x)
{
  Wall *little = wall_new ();
  Laying *laying = &little->laying;

  little->block = bound->wall->block;
  little->length = run->to - run->from;
  little->height = band->height;
  set_length (little, LAYING_FIRST_BED, &laying->first_bed, 0);
  set_length (little, LAYING_BED, &laying->bed, bound->laying.bed);
  set_length (little, LAYING_HEAD, &laying->head, bound->laying.head);
  set_length (little, LAYING_MIN_PIECE, &laying->min_piece, bound->laying.min_piece);
  set_length (little, LAYING_MIN_LAP, &laying->min_lap, bound->laying.min_lap);
  set_length (little, LAYING_MIN_RIP, &laying->min_rip, bound->laying.min_rip);
  if (run->left)
    copy_end (bound, band, SIDE_LEFT, little);
  if (run->right)
    copy_end (bound, band, SIDE_RIGHT, little);
  for (guint i = 0; i < band->part->len; i++)
    if (is_in (bound, g_array_index (band->part, guint, i), run, x))
      add_opening (bound, band, run, g_array_index (band->part, guint, i), x, little);
  return little;
}

/* Nothing where it is no wall by itself. */
static LayBound
bound_of_run (const PierBound *bound, const Band *band, const Run *run, const Length *x)
{
  g_autoptr (Wall) little = little_wall (bound, band, run, x);
  g_autofree char *fault = NULL;

  if (!copy_tees (bound, band, run, little))
    return (LayBound){ 0, 0 };
  copy_movement_joints (bound, run, little);
  fault = wall_fault (little, bound->block, NULL);
  if (fault != NULL)
    return (LayBound){ 0, 0 };
  return lay_bound (little, bound->block);
}

/* --- those that are kept --- */

static gboolean
is_free (const PierBound *bound, guint opening)
{
  return opening != G_MAXUINT && opening_may_move (wall_opening_at (bound->wall, opening)) > 0;
}

/* Adds what stands at `at` in the run; FALSE: there is too much in it. */
static gboolean
add_part (RunKey *key, guint32 what, Length at)
{
  if (key->n == MAX_PARTS)
    return FALSE;
  key->parts[key->n++] = (Part){ what, at };
  return TRUE;
}

/* FALSE: it depends on too many openings to be kept. */
static gboolean
key_of (const PierBound *bound, const Band *band, const Run *run, const Length *x, RunKey *key)
{
  guint n_free = is_free (bound, run->jambs[0]) + is_free (bound, run->jambs[1]);

  memset (key, 0, sizeof *key);
  key->width = run->to - run->from;
  key->left = run->left != FALSE;
  key->right = run->right != FALSE;
  for (guint i = 0; i < band->part->len; i++)
    {
      const guint opening = g_array_index (band->part, guint, i);

      if (!is_in (bound, opening, run, x))
        continue;
      if (!add_part (key, opening, x[opening] - run->from))
        return FALSE;
      n_free += is_free (bound, opening);
    }
  for (guint i = 0; i < bound->wall->tees->len; i++)
    {
      const Tee *tee = wall_tee_at (bound->wall, i);

      if (meets (bound, tee, run)
          && !add_part (key, bound->wall->openings->len + i, tee->x - run->from))
        return FALSE;
    }
  for (guint i = 0; i < bound->wall->movement_joints->len; i++)
    {
      const MovementJoint *joint = wall_movement_joint_at (bound->wall, i);

      if (parts (joint, run)
          && !add_part (key, bound->wall->openings->len + bound->wall->tees->len + i,
                        joint->x - run->from))
        return FALSE;
    }
  return n_free <= 2;
}

static LayBound
kept_bound (const PierBound *bound, Band *band, const Run *run, const Length *x)
{
  const LayBound *known;
  LayBound found;
  RunKey key;

  if (!key_of (bound, band, run, x, &key))
    return (LayBound){ 0, 0 };
  known = g_hash_table_lookup (band->known, &key);
  if (known != NULL)
    return *known;
  found = bound_of_run (bound, band, run, x);
  g_hash_table_insert (band->known, g_memdup2 (&key, sizeof key), g_memdup2 (&found, sizeof found));
  return found;
}

static LayBound
far_bound (const PierBound *bound, const Band *band, const Run *run, const Length *x)
{
  RunKey key;

  return key_of (bound, band, run, x, &key) ? (LayBound){ 0, 0 }
                                            : bound_of_run (bound, band, run, x);
}

/* --- all of them --- */

/* The opening of the band that begins next at `from` or right of it; G_MAXUINT: none. */
static guint
next_opening (const Band *band, const Length *x, Length from)
{
  guint next = G_MAXUINT;

  for (guint i = 0; i < band->whole->len; i++)
    {
      guint opening = g_array_index (band->whole, guint, i);

      if (x[opening] >= from && (next == G_MAXUINT || x[opening] < x[next]))
        next = opening;
    }
  return next;
}

/* Goes on to the next run of the band with some width; `run` begins as RUN_BEGIN. FALSE: that was
 * the last one. */
#define RUN_BEGIN ((Run){ 0, 0, FALSE, FALSE, { G_MAXUINT, G_MAXUINT } })
static gboolean
next_run (const PierBound *bound, const Band *band, const Length *x, Run *run)
{
  while (!run->right)
    {
      const guint before = run->jambs[1];

      run->jambs[0] = before;
      run->from
          = before == G_MAXUINT ? 0 : x[before] + wall_opening_at (bound->wall, before)->width;
      run->jambs[1] = next_opening (band, x, run->from);
      run->right = run->jambs[1] == G_MAXUINT;
      run->left = before == G_MAXUINT;
      run->to = run->right ? bound->wall->length : x[run->jambs[1]];
      if (run->to > run->from)
        return TRUE;
    }
  return FALSE;
}

static LayBound
near_of_band (const PierBound *bound, Band *band, const Length *x)
{
  LayBound sum = { 0, 0 };
  Run run = RUN_BEGIN;

  while (next_run (bound, band, x, &run))
    sum = lay_bound_add (sum, kept_bound (bound, band, &run, x));
  return sum;
}

LayBound
pier_bound_near (PierBound *bound, const Length *x)
{
  LayBound sum = { 0, 0 };

  for (guint i = 0; i < bound->bands->len; i++)
    sum = lay_bound_add (sum, near_of_band (bound, &g_array_index (bound->bands, Band, i), x));
  return sum;
}

LayBound
pier_bound_far (const PierBound *bound, const Length *x)
{
  LayBound sum = { 0, 0 };

  for (guint i = 0; i < bound->bands->len; i++)
    {
      const Band *band = &g_array_index (bound->bands, Band, i);
      Run run = RUN_BEGIN;

      while (next_run (bound, band, x, &run))
        sum = lay_bound_add (sum, far_bound (bound, band, &run, x));
    }
  return sum;
}

/* --- wherever they stand --- */

/* The openings of a band and where they are tried. */
typedef struct
{
  guint n;
  guint openings[WALL_MAX_OPENINGS];
  gint64 ways;
} Trying;

static Trying
trying_of (const Band *band, GArray *const *places)
{
  const GArray *both[] = { band->whole, band->part };
  Trying trying = { .ways = 1 };

  for (guint k = 0; k < G_N_ELEMENTS (both); k++)
    for (guint i = 0; i < both[k]->len && trying.ways <= MANY; i++)
      {
        const guint opening = g_array_index (both[k], guint, i);

        if (places[opening] == NULL)
          continue;
        trying.openings[trying.n++] = opening;
        trying.ways *= places[opening]->len;
      }
  return trying;
}

static LayBound
least_of_band (const PierBound *bound, Band *band, GArray *const *places, Length *x)
{
  const Trying trying = trying_of (band, places);
  LayBound least = { G_MAXINT32, 0 };

  if (trying.ways > MANY)
    return (LayBound){ 0, 0 };
  for (gint64 way = 0; way < trying.ways; way++)
    {
      gint64 rest = way;
      LayBound here;

      for (guint i = 0; i < trying.n; i++)
        {
          const GArray *at = places[trying.openings[i]];

          x[trying.openings[i]] = g_array_index (at, Length, rest % at->len);
          rest /= at->len;
        }
      /* Where openings overlap, a run less is looked at: that is no more. */
      here = near_of_band (bound, band, x);
      if (here.breaches < least.breaches
          || (here.breaches == least.breaches && here.cuts < least.cuts))
        least = here;
    }
  return least;
}

LayBound
pier_bound_anywhere (PierBound *bound, GArray *const *places)
{
  const guint n = bound->wall->openings->len;
  g_autofree Length *x = g_new (Length, MAX (n, 1));
  LayBound sum = { 0, 0 };

  for (guint i = 0; i < bound->bands->len; i++)
    {
      for (guint k = 0; k < n; k++)
        x[k] = wall_opening_at (bound->wall, k)->x;
      sum = lay_bound_add (
          sum, least_of_band (bound, &g_array_index (bound->bands, Band, i), places, x));
    }
  return sum;
}
