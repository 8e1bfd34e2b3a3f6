#include "app/places.h"

#include "advice/crew.h"
#include "app/job.h"

/* How long the worker tries places before it hands over what it has: at first, so that something is
 * seen soon, and later on, so that it does not wait for every frame. */
#define BATCH (12 * G_TIME_SPAN_MILLISECOND)
#define LONG_BATCH (48 * G_TIME_SPAN_MILLISECOND)
/* How long one question may keep the processors busy: on a wall that takes a second to lay, the
 * nearest places are known, and the machine is quiet again. */
#define BUDGET (8 * G_TIME_SPAN_SECOND)

/* The places of one shift. */
typedef struct
{
  GHashTable *known; /* Length -> Place * */
  Wall *base;        /* the wall that they are of; NULL: nothing asked */
  Block block;
  OpeningId opening;
  Aim aim;
  Length at, within, step;
  gint64 spent;    /* on the present question, us */
  gboolean wanted; /* it is to be worked on */
} Line;

struct HbPlaces
{
  HbPlacesChanged changed;
  gpointer data;
  HbJob *job;
  Shift running; /* what the job is at */
  Line lines[N_SHIFTS];
};

typedef struct
{
  Wall *wall;
  Block block;
  OpeningId opening;
  Shift shift;
  Look look;
  GArray *places;  /* Place */
  gboolean *tried; /* per place */
  gint64 batch;    /* us it may take */
  gint64 end;      /* monotonic us */
  const gint *stop;
} Trial;

typedef struct
{
  Shift shift;
  GArray *places; /* Place */
  gint64 took;    /* us */
} Tried;

static void
tried_free (gpointer data)
{
  Tried *tried = data;

  g_array_unref (tried->places);
  g_free (tried);
}

static void
trial_free (gpointer data)
{
  Trial *trial = data;

  wall_unref (trial->wall);
  block_clear (&trial->block);
  g_array_unref (trial->places);
  g_free (trial->tried);
  g_free (trial);
}

/* ---- in the worker and its crew ---- */

/* The first is always tried, so that there is some progress. */
static gboolean
try_one (guint i, gpointer data)
{
  Trial *trial = data;

  if (g_atomic_int_get (trial->stop) || (i > 0 && g_get_monotonic_time () >= trial->end))
    return FALSE;
  trial->tried[i] = place_try (trial->wall, &trial->block, trial->opening, trial->shift,
                               trial->look, &g_array_index (trial->places, Place, i), trial->stop);
  return trial->tried[i];
}

static gpointer
try_batch (gpointer input, const gint *stop)
{
  Trial *trial = input;
  Tried *tried = g_new0 (Tried, 1);
  const gint64 began = g_get_monotonic_time ();

  hb_job_stand_back ();
  trial->stop = stop;
  trial->end = began + trial->batch;
  crew_run (trial->places->len, g_get_num_processors (), try_one, trial);
  tried->shift = trial->shift;
  tried->places = g_array_new (FALSE, FALSE, sizeof (Place));
  for (guint i = 0; i < trial->places->len; i++)
    if (trial->tried[i])
      g_array_append_val (tried->places, g_array_index (trial->places, Place, i));
  tried->took = g_get_monotonic_time () - began;
  return tried;
}

/* ---- in the main thread ---- */

static gpointer
key_of (Length at)
{
  return GINT_TO_POINTER (at);
}

const Place *
hb_places_at (HbPlaces *places, Shift shift, Length at)
{
  return g_hash_table_lookup (places->lines[shift].known, key_of (at));
}

/* Whether a layout of the place, not found at a first look, may be cheaper than the best known. */
static gboolean
may_be_best (const Place *place, const Place *best)
{
  const Cost *cost = &place->cost;

  if (place->cost.as_laid || !best)
    return FALSE;
  if (cost->breaches_at_least != best->cost.breaches)
    return cost->breaches_at_least < best->cost.breaches;
  return cost->breaches > cost->breaches_at_least || cost->cuts_at_least < best->cost.cuts;
}

/* Which of the open places are laid before the others. With least waste no bound tells: those that
 * are as good or nearly so at a first look. */
static gboolean
comes_early (const Line *line, const Place *place, const Place *best)
{
  if (line->aim != AIM_LEAST_WASTE || !best)
    return may_be_best (place, best);
  return place->cost.breaches <= best->cost.breaches
         && place->cost.to_order <= best->cost.to_order + 1;
}

static const Place *
best_known (const Line *line)
{
  const Place *best = NULL;
  GHashTableIter iter;
  gpointer value;

  g_hash_table_iter_init (&iter, line->known);
  while (g_hash_table_iter_next (&iter, NULL, &value))
    {
      const Place *place = value;

      if (place->possible && (!best || cost_compare (&place->cost, &best->cost, line->aim) < 0))
        best = place;
    }
  return best;
}

/* What is not known yet, or was looked at once only: those that may be the best first, then the
 * nearest. */
static GArray *
to_try (const Line *line, Shift shift, Look look)
{
  GArray *list = g_array_new (FALSE, FALSE, sizeof (Place));
  g_autoptr (GArray) all
      = places_list (line->base, &line->block, line->opening, shift, line->within, line->step);
  const Place *best = look == LOOK_LAID ? best_known (line) : NULL;
  guint n_first = 0;

  for (guint i = 0; i < all->len; i++)
    {
      const Length at = g_array_index (all, Length, i);
      const Place *known = g_hash_table_lookup (line->known, key_of (at));
      const Place place = { .at = at };

      if (look == LOOK_FIRST ? known != NULL : !known || !known->possible || known->cost.as_laid)
        continue;
      if (known && comes_early (line, known, best))
        g_array_insert_val (list, n_first++, place);
      else
        g_array_append_val (list, place);
    }
  return list;
}

/* FALSE when there is nothing to try. */
static gboolean
start (HbPlaces *places, Shift shift, Look look)
{
  Line *line = &places->lines[shift];
  GArray *list;
  Trial *trial;

  if (!line->wanted || !line->base || line->spent > BUDGET)
    return FALSE;
  list = to_try (line, shift, look);
  if (!list->len)
    {
      g_array_unref (list);
      return FALSE;
    }
  trial = g_new0 (Trial, 1);
  trial->wall = wall_ref (line->base);
  trial->block = block_copy (&line->block);
  trial->opening = line->opening;
  trial->shift = shift;
  trial->look = look;
  trial->places = list;
  trial->tried = g_new0 (gboolean, list->len);
  trial->batch = CLAMP (line->spent / 2, BATCH, LONG_BATCH);
  places->running = shift;
  hb_job_start (places->job, trial);
  return TRUE;
}

/* A look at all that was asked for, before a second one at any. */
static void
go_on (HbPlaces *places)
{
  for (int look = LOOK_FIRST; look <= LOOK_LAID; look++)
    for (int shift = 0; shift < N_SHIFTS; shift++)
      if (start (places, (Shift) shift, (Look) look))
        return;
}

static void
land (gpointer result, gpointer data)
{
  HbPlaces *places = data;
  Tried *tried = result;
  Line *line = &places->lines[tried->shift];

  for (guint i = 0; i < tried->places->len; i++)
    {
      const Place *place = &g_array_index (tried->places, Place, i);

      g_hash_table_insert (line->known, key_of (place->at), g_memdup2 (place, sizeof *place));
    }
  line->spent += tried->took;
  if (tried->places->len)
    places->changed (places->data);
  if (tried->places->len)
    go_on (places);
  tried_free (tried);
}

HbPlaces *
hb_places_new (HbPlacesChanged changed, gpointer data)
{
  HbPlaces *places = g_new0 (HbPlaces, 1);

  places->changed = changed;
  places->data = data;
  for (int shift = 0; shift < N_SHIFTS; shift++)
    places->lines[shift].known = g_hash_table_new_full (NULL, NULL, NULL, g_free);
  places->job = hb_job_new ("places", try_batch, trial_free, land, tried_free, places);
  return places;
}

static void
forget_line (HbPlaces *places, Shift shift)
{
  Line *line = &places->lines[shift];

  if (places->running == shift)
    hb_job_cancel (places->job);
  g_hash_table_remove_all (line->known);
  line->spent = 0;
  line->wanted = FALSE;
  if (line->base)
    block_clear (&line->block);
  g_clear_pointer (&line->base, wall_unref);
}

void
hb_places_forget (HbPlaces *places)
{
  for (int shift = 0; shift < N_SHIFTS; shift++)
    forget_line (places, (Shift) shift);
}

void
hb_places_free (HbPlaces *places)
{
  if (!places)
    return;
  hb_places_forget (places);
  hb_job_free (places->job);
  for (int shift = 0; shift < N_SHIFTS; shift++)
    g_hash_table_unref (places->lines[shift].known);
  g_free (places);
}

/* Whether nothing but what shifts is another than what was asked before. */
static gboolean
same_question (const Line *line, Shift shift, const Wall *wall, const Block *block,
               OpeningId opening)
{
  g_autoptr (Wall) moved = NULL;

  if (!line->base || line->opening.n != opening.n || line->base->id.n != wall->id.n)
    return FALSE;
  moved = wall_copy (wall);
  shift_to (wall_own_opening (moved, opening), shift,
            shift_at (wall_opening (line->base, opening), shift));
  return wall_equal (moved, line->base) && block_equal (block, &line->block);
}

static void
ask_line (HbPlaces *places, Shift shift, const Wall *wall, const Block *block, OpeningId opening,
          Length within, Length step)
{
  Line *line = &places->lines[shift];
  const Length at = shift_at (wall_opening (wall, opening), shift);

  if (!same_question (line, shift, wall, block, opening) || step != line->step)
    {
      forget_line (places, shift);
      line->block = block_copy (block);
      line->opening = opening;
      line->aim = cost_aim (wall, block);
    }
  /* The budget is for a question: a hand that goes on asks another. */
  else if (at != line->at)
    line->spent = 0;
  g_clear_pointer (&line->base, wall_unref);
  line->base = wall_ref (wall);
  line->at = at;
  line->within = within;
  line->step = step;
  line->wanted = TRUE;
}

void
hb_places_ask (HbPlaces *places, const Wall *wall, const Block *block, OpeningId opening,
               guint shifts, Length within, Length step)
{
  g_return_if_fail (wall_opening (wall, opening) && step > 0);
  for (int shift = 0; shift < N_SHIFTS; shift++)
    {
      places->lines[shift].wanted = FALSE;
      if (shifts & (1u << shift))
        ask_line (places, (Shift) shift, wall, block, opening, within, step);
      else if (places->lines[shift].base
               && !same_question (&places->lines[shift], (Shift) shift, wall, block, opening))
        forget_line (places, (Shift) shift);
    }
  /* A batch under way is let end, so that a hand that never rests does not starve it. */
  if (!hb_job_is_busy (places->job))
    go_on (places);
}

/* ---- what is known ---- */

int
hb_places_compare (HbPlaces *places, Shift shift, const Place *a, const Place *b)
{
  return cost_compare (&a->cost, &b->cost, places->lines[shift].aim);
}

/* Whether `a` is cheaper, or as cheap and nearer to `at`, or as near and lower. */
static gboolean
comes_first (HbPlaces *places, Shift shift, const Place *a, const Place *b, Length at)
{
  const int by_cost = hb_places_compare (places, shift, a, b);
  const Length da = ABS (a->at - at), db = ABS (b->at - at);

  if (by_cost)
    return by_cost < 0;
  return da != db ? da < db : a->at < b->at;
}

const Place *
hb_places_best (HbPlaces *places, Shift shift, Length from, Length to, Length at)
{
  const Place *best = NULL;
  GHashTableIter iter;
  gpointer value;

  g_hash_table_iter_init (&iter, places->lines[shift].known);
  while (g_hash_table_iter_next (&iter, NULL, &value))
    {
      const Place *place = value;

      if (place->possible && place->at >= from && place->at <= to
          && (!best || comes_first (places, shift, place, best, at)))
        best = place;
    }
  return best;
}

/* Whether some known place within `reach` costs more: else all is one flat, and there is nothing to
 * stop at. */
static gboolean
is_dip (HbPlaces *places, Shift shift, const Place *place, Length reach)
{
  GHashTableIter iter;
  gpointer value;

  g_hash_table_iter_init (&iter, places->lines[shift].known);
  while (g_hash_table_iter_next (&iter, NULL, &value))
    {
      const Place *other = value;

      if (other->possible && ABS (other->at - place->at) <= reach
          && hb_places_compare (places, shift, place, other) < 0)
        return TRUE;
    }
  return FALSE;
}

const Place *
hb_places_rest (HbPlaces *places, Shift shift, Length at, Length reach)
{
  const Place *best = hb_places_best (places, shift, at - reach, at + reach, at);
  const Place *wide
      = best ? hb_places_best (places, shift, at - 2 * reach, at + 2 * reach, at) : NULL;

  if (!best || hb_places_compare (places, shift, wide, best) < 0
      || !is_dip (places, shift, best, 2 * reach))
    return NULL;
  return best;
}

guint
hb_places_n_known (HbPlaces *places, Shift shift)
{
  return g_hash_table_size (places->lines[shift].known);
}

static gboolean
has_looked (HbPlaces *places, Shift shift, Look look)
{
  const Line *line = &places->lines[shift];
  g_autoptr (GArray) list = line->base ? to_try (line, shift, look) : NULL;

  return !list || !list->len;
}

gboolean
hb_places_is_looked_at (HbPlaces *places, Shift shift)
{
  return has_looked (places, shift, LOOK_FIRST);
}

gboolean
hb_places_is_done (HbPlaces *places, Shift shift)
{
  return has_looked (places, shift, LOOK_FIRST) && has_looked (places, shift, LOOK_LAID);
}

gboolean
hb_places_is_sure (HbPlaces *places, Shift shift)
{
  const Line *line = &places->lines[shift];
  const Place *best = best_known (line);
  GHashTableIter iter;
  gpointer value;

  if (!best || !best->cost.as_laid || !hb_places_is_looked_at (places, shift))
    return FALSE;
  if (line->aim == AIM_LEAST_WASTE)
    return hb_places_is_done (places, shift);
  g_hash_table_iter_init (&iter, line->known);
  while (g_hash_table_iter_next (&iter, NULL, &value))
    if (((const Place *) value)->possible && may_be_best (value, best))
      return FALSE;
  return TRUE;
}

gboolean
hb_places_is_at_work (HbPlaces *places, Shift shift)
{
  const Line *line = &places->lines[shift];

  return line->wanted && line->base && line->spent <= BUDGET && !hb_places_is_done (places, shift);
}
