/* least-waste.c - fewer units to order: short pieces that come out of each other's off-cuts
 *
 * One segment after another is laid anew while all others stay. What those are sawn from leaves
 * off-cuts; places are tried at which a piece as long as one of them ends, and the cheapest path is
 * taken where a piece that an off-cut gives costs next to nothing, and any other what it takes of a
 * unit, less what its own off-cut may still be worth. What that comes to is then counted. Where
 * units are as many as before, off-cuts in few long pieces are better than in many short ones: so a
 * unit is emptied bit by bit. */
#include "bond/least-waste.h"

#include "bond/path.h"

#include <string.h>

#include "bond/network.h"
#include "bond/offcut.h"

/* A whole unit, between a cut and how bad a breach is. */
#define COST_UNIT ((Cost) 1 << 34)
#define MOST_ROUNDS 400
#define IDLE_ROUNDS 100
#define MOST_ROOMS 10 /* off-cuts that a segment is laid for at a time */
/* Steps of work after which the search ends, and after which the pruning does: some hundredths of a
 * second; and when it is to be quick. */
#define MOST_WORK ((gint64) 2500000)
#define QUICK_WORK ((gint64) 250000)

/* What the pieces that are not whole are sawn from. */
typedef struct
{
  gint32 units;  /* the whole ones, too */
  gint64 spread; /* the more, the fewer and longer the off-cuts */
  gint32 cuts;
} Score;

typedef struct
{
  const Geometry *geometry;
  Pattern *chosen;
  const gint *stop;
  gint32 n;
  Face face;
  GArray **boxes;  /* by segment: Box, of the pieces that are not whole */
  GArray **places; /* by segment: Length, once asked for */
  GArray *rest;    /* Box: of all segments but one, in order */
  GArray *trial;   /* Box: of all */
  GArray *rooms;   /* Length: off-cuts of the rest, longest first */
  OffcutFit fit;
  gint32 round;
  gboolean kicking;                  /* what is found is taken, better or not */
  gboolean pruning;                  /* cuts are to be fewer, at no more units */
  Length per_cut;                    /* so much more spread must a cut more bring */
  Cost share, loss, hope, low, dues; /* prices: set_prices() */
  gint64 work;                       /* left */
} Waste;

static gboolean
is_over (const Waste *waste)
{
  return waste->work <= 0 || (waste->stop != NULL && g_atomic_int_get (waste->stop) != 0);
}

/* A number drawn by the round and `seed`: the finalizer of SplitMix64 (Steele, Lea, Flood, OOPSLA
 * 2014). */
static guint32
draw (const Waste *waste, guint32 seed)
{
  guint64 x = (guint64) (waste->round + 1) * G_GUINT64_CONSTANT (0x9e3779b97f4a7c15) ^ seed;

  x = (x ^ (x >> 30)) * G_GUINT64_CONSTANT (0xbf58476d1ce4e5b9);
  x = (x ^ (x >> 27)) * G_GUINT64_CONSTANT (0x94d049bb133111eb);
  return (guint32) ((x ^ (x >> 31)) >> 32);
}

/* --- what is sawn --- */

/* The boxes of a pattern's cut pieces, appended in order of their places. */
static void
add_boxes (const Geometry *geometry, const Segment *segment, const Pattern *pattern, GArray *boxes)
{
  for (gint32 i = 0; i < pattern->n_pieces; i++)
    {
      Length x = i == 0 ? segment->a : pattern->faces[i - 1];
      Length end = i == pattern->n_pieces - 1 ? segment->b : pattern->faces[i] - geometry->joint;
      PieceForm form = geometry_piece_form (geometry, segment, x, end - x);
      Box box = { .length = end - x, .height = form.hi - form.lo };

      if (!form.whole)
        g_array_append_val (boxes, box);
    }
}

static void
sort_boxes (GArray *boxes)
{
  if (boxes->len > 1)
    qsort (boxes->data, boxes->len, sizeof (Box), box_compare);
}

static void
set_boxes (Waste *waste, gint32 i)
{
  if (waste->boxes[i] == NULL)
    waste->boxes[i] = g_array_new (FALSE, FALSE, sizeof (Box));
  g_array_set_size (waste->boxes[i], 0);
  add_boxes (waste->geometry, geometry_segment (waste->geometry, i), &waste->chosen[i],
             waste->boxes[i]);
  sort_boxes (waste->boxes[i]);
}

static void
append_boxes (GArray *to, const GArray *from)
{
  if (from->len > 0)
    g_array_append_vals (to, from->data, from->len);
}

/* The boxes of all segments but `but` (-1: of all). */
static void
collect (const Waste *waste, gint32 but, GArray *boxes)
{
  g_array_set_size (boxes, 0);
  for (gint32 i = 0; i < waste->n; i++)
    if (i != but)
      append_boxes (boxes, waste->boxes[i]);
  sort_boxes (boxes);
}

/* Whole pieces of all segments but `but`. */
static gint32
count_whole (const Waste *waste, gint32 but)
{
  gint32 whole = 0;

  for (gint32 i = 0; i < waste->n; i++)
    if (i != but)
      whole += waste->chosen[i].n_pieces - (gint32) waste->boxes[i]->len;
  return whole;
}

static Score
score_of (Waste *waste, GArray *boxes, gint32 whole)
{
  Score score = { whole, 0, (gint32) boxes->len };

  waste->work -= (gint64) boxes->len * (20 + boxes->len / 16);
  offcut_stack (&waste->fit, (Box *) (gpointer) boxes->data, boxes->len, PANELS_TIGHT);
  score.units += offcut_saw (&waste->fit, TRUE);
  for (guint i = 0; i < waste->fit.rooms->len; i++)
    {
      gint64 room = g_array_index (waste->fit.rooms, Length, i);

      if (room > 0)
        score.spread += room * room / waste->face.length;
    }
  return score;
}

/* With the pieces `more` (in order) beside the rest. */
static Score
score_with (Waste *waste, const GArray *more, gint32 whole)
{
  const Box *p = (const Box *) (gpointer) waste->rest->data;
  const Box *q = (const Box *) (gpointer) more->data;
  guint i = 0, k = 0;

  g_array_set_size (waste->trial, 0);
  while (i < waste->rest->len || k < more->len)
    if (k >= more->len || (i < waste->rest->len && box_compare (&p[i], &q[k]) <= 0))
      g_array_append_val (waste->trial, p[i++]);
    else
      g_array_append_val (waste->trial, q[k++]);
  return score_of (waste, waste->trial, whole);
}

static gboolean
is_better (const Waste *waste, const Score *a, const Score *b)
{
  gint64 gain = a->spread - b->spread - (gint64) waste->per_cut * (a->cuts - b->cuts);

  if (a->units != b->units)
    return a->units < b->units;
  if (waste->pruning)
    return a->cuts < b->cuts || (a->cuts == b->cuts && a->spread > b->spread);
  return gain != 0 ? gain > 0 : a->cuts < b->cuts;
}

/* --- harm --- */

/* A lap shorter than the least is a breach, the dearer the shorter it is. */
static Cost
harm_of_lap (const Geometry *geometry, Length lap)
{
  return COST_BREACH + COST_SHORTNESS * (geometry->min_lap - lap) / geometry->min_lap;
}

/* Laps that are too short beside one neighbour: breaches, and how bad. */
static Cost
harm_of_laps (const Waste *waste, const Pattern *p, gint32 other)
{
  const Geometry *geometry = waste->geometry;
  const Segment *neighbour = geometry_segment (geometry, other);
  const Pattern *q = &waste->chosen[other];
  Cost harm = 0;
  gint32 first = 0, n = pattern_n_perpends (neighbour, q);

  for (gint32 i = 0; i < p->n_pieces - 1; i++)
    {
      Length face = p->faces[i];

      while (first < n && pattern_perpend (neighbour, q, first) <= face - geometry->min_lap)
        first++;
      for (gint32 k = first; k < n && pattern_perpend (neighbour, q, k) < face + geometry->min_lap;
           k++)
        harm += harm_of_lap (geometry, ABS (pattern_perpend (neighbour, q, k) - face));
    }
  return harm;
}

/* Breaches of a segment's pattern and beside its neighbours, and how bad they are. Sets the
 * pattern's counts. */
static Cost
harm_of (const Waste *waste, gint32 i, Pattern *pattern)
{
  const Segment *segment = geometry_segment (waste->geometry, i);
  Cost harm = pattern_count (waste->geometry, segment, pattern);

  harm -= COST_CUT * pattern->n_cuts + COST_WISH * pattern->n_wishes;
  for (gint32 k = 0; k < segment->n_links; k++)
    harm += harm_of_laps (waste, pattern, geometry_link (waste->geometry, segment, k));
  return harm;
}

/* --- places --- */

static gint
compare_lengths (gconstpointer a, gconstpointer b)
{
  Length p = *(const Length *) a, q = *(const Length *) b;

  return (p > q) - (p < q);
}

/* Whole units from `place` both ways, as far as the segment goes. */
static void
add_grid (const Geometry *geometry, const Segment *segment, Length place, GArray *places)
{
  Length pitch = geometry->unit + geometry->joint;
  Length first = place - (place - segment->a) / pitch * pitch;

  for (Length face = first; face < segment->b; face += pitch)
    if (face - geometry->joint > segment->a)
      g_array_append_val (places, face);
}

/* Places after, and before, a piece of that length at either end or between whole units. */
static void
add_places_for (const Geometry *geometry, const Segment *segment, Length length, GArray *places)
{
  add_grid (geometry, segment, segment->a + length + geometry->joint, places);
  add_grid (geometry, segment, segment->b - length, places);
}

/* The places of segment i, those for the off-cuts of the rest with them. */
static GArray *
places_for (Waste *waste, gint32 i)
{
  const Segment *segment = geometry_segment (waste->geometry, i);
  GArray *places;
  guint kept = 0, step = MAX (1, (waste->rooms->len + MOST_ROOMS - 1) / MOST_ROOMS);

  if (waste->places[i] == NULL)
    waste->places[i] = pattern_places (waste->geometry, segment);
  places = g_array_copy (waste->places[i]);
  for (guint k = (guint) waste->round % step; k < waste->rooms->len; k += step)
    add_places_for (waste->geometry, segment, g_array_index (waste->rooms, Length, k), places);
  add_places_for (waste->geometry, segment, (waste->face.length - waste->face.kerf) / 2, places);
  g_array_sort (places, compare_lengths);
  for (guint k = 0; k < places->len; k++)
    if (kept == 0 || g_array_index (places, Length, kept - 1) != g_array_index (places, Length, k))
      g_array_index (places, Length, kept++) = g_array_index (places, Length, k);
  g_array_set_size (places, kept);
  return places;
}

/* --- the cheapest path --- */

/* Adds to the tolls of places what one neighbour's perpends make of them: breaches, and a little
 * for what a lap falls short of half bond. */
static void
add_tolls (const Waste *waste, gint32 other, const GArray *places, Cost *tolls)
{
  const Geometry *geometry = waste->geometry;
  const Segment *neighbour = geometry_segment (geometry, other);
  const Pattern *pattern = &waste->chosen[other];
  Length half = (geometry->unit + geometry->joint) / 2, reach = MAX (half, geometry->min_lap);
  gint32 first = 0, n = pattern_n_perpends (neighbour, pattern);

  for (guint p = 0; p < places->len; p++)
    {
      Length face = g_array_index (places, Length, p), nearest = half;

      while (first < n && pattern_perpend (neighbour, pattern, first) <= face - reach)
        first++;
      for (gint32 q = first; q < n && pattern_perpend (neighbour, pattern, q) < face + reach; q++)
        {
          Length lap = ABS (pattern_perpend (neighbour, pattern, q) - face);

          nearest = MIN (nearest, lap);
          if (lap < geometry->min_lap)
            tolls[p] += harm_of_lap (geometry, lap);
        }
      tolls[p] += half - nearest;
    }
}

static Cost *
tolls_of (const Waste *waste, gint32 i, const GArray *places)
{
  const Segment *segment = geometry_segment (waste->geometry, i);
  Cost *tolls = g_new0 (Cost, places->len + 1);

  for (gint32 k = 0; k < segment->n_links; k++)
    add_tolls (waste, geometry_link (waste->geometry, segment, k), places, tolls);
  rules_add_tolls (waste->geometry, segment, places, tolls);
  return tolls;
}

/* What an off-cut may still be worth, in tenths of what it takes of a unit; by round. */
static const gint hopes[] = { 9, 5, 7, 0, 10, 8, 3 };

/* Sets the prices of this round. */
static void
set_prices (Waste *waste)
{
  const Face *face = &waste->face;
  gint64 room = (gint64) face->length + face->kerf;
  gint hope = hopes[(gsize) waste->round % G_N_ELEMENTS (hopes)];

  waste->share = COST_UNIT / (face->length + waste->geometry->joint);
  waste->loss = COST_UNIT / 16 / room;
  waste->hope = COST_UNIT / 10 * hope / room;
  waste->low = COST_UNIT / room / (face->height + face->kerf);
  waste->dues = waste->pruning ? COST_UNIT / 4 : COST_UNIT / face->length * waste->per_cut;
}

/* The shortest off-cut that gives the length; 0: none. */
static Length
shortest_room (const Waste *waste, Length length)
{
  const Length *rooms = (const Length *) (gpointer) waste->rooms->data;
  guint low = 0, high = waste->rooms->len;

  while (low < high)
    {
      guint middle = (low + high) / 2;

      if (rooms[middle] >= length)
        low = middle + 1;
      else
        high = middle;
    }
  return low > 0 ? rooms[low - 1] : 0;
}

/* Of a piece that is not whole, beside what its share of the length is: all patterns of a segment
 * have the same length, so that what remains tells them apart. */
static inline Cost
fair_price (const Waste *waste, Length length, Length height)
{
  const Face *face = &waste->face;
  Length over = face->length - length - face->kerf, room;
  Cost dues = waste->dues - waste->share * (length + waste->geometry->joint);

  if (2 * height + face->kerf <= face->height)
    return dues + waste->low * (length + face->kerf) * (height + face->kerf);
  room = shortest_room (waste, length);
  if (room > 0)
    return dues + waste->loss * (room - length);
  return dues + COST_UNIT - (over < waste->geometry->min_piece ? 0 : waste->hope * over);
}

/* The fair price, or while kicking one that is drawn between nothing and twice that. */
static Cost
price_of (const Waste *waste, Length length, Length height)
{
  Cost fair = fair_price (waste, length, height);

  if (waste->kicking)
    fair += (Cost) (draw (waste, (guint32) length) % 2048) * (COST_UNIT / 2048) - COST_UNIT / 2;
  return fair;
}

/* A piece, its cut and breaches with it. */
static Cost
cost_of_piece (const Waste *waste, const Segment *segment, Length x, Length length)
{
  const Geometry *geometry = waste->geometry;
  gboolean owing = segment->n_marks > segment->n_perpend_marks;
  PieceForm form;
  Cost cost;

  if (segment->full && length >= geometry->min_piece && !owing)
    return length == geometry->unit ? 0
                                    : COST_CUT + price_of (waste, length, geometry->unit_height);
  form = geometry_piece_form (geometry, segment, x, length);
  cost = owing ? pattern_piece_cost (geometry, segment, x, length)
               : pattern_form_cost (geometry, length, form.thickest,
                                    geometry_shortest (geometry, segment, x, length), form.whole);
  return form.whole ? cost : cost + price_of (waste, length, form.hi - form.lo);
}

/* The cheapest pattern over the places; no faces where there is none. */
static Pattern
cheapest (Waste *waste, gint32 i, const GArray *places, const Cost *tolls)
{
  const Geometry *geometry = waste->geometry;
  const Segment *segment = geometry_segment (geometry, i);
  const Length *faces = (const Length *) (gpointer) places->data;
  guint n = places->len, oldest = 0;
  g_autofree PathNode *nodes = g_new (PathNode, n + 1);

  for (guint k = 0; k <= n; k++)
    {
      Length end = k == n ? segment->b : faces[k] - geometry->joint;

      nodes[k] = (PathNode){ COST_NONE, -1, 0 };
      if (end - segment->a <= geometry->unit)
        nodes[k]
            = (PathNode){ cost_of_piece (waste, segment, segment->a, end - segment->a), -1, 1 };
      while (oldest < k && end - faces[oldest] > geometry->unit)
        oldest++;
      waste->work -= k - oldest;
      for (guint m = oldest; m < k && faces[m] < end; m++)
        {
          Cost cost;

          if (nodes[m].cost == COST_NONE)
            continue;
          cost = nodes[m].cost + cost_of_piece (waste, segment, faces[m], end - faces[m]);
          if (cost < nodes[k].cost)
            nodes[k] = (PathNode){ cost, (gint32) m, nodes[m].pieces + 1 };
        }
      if (k < n && nodes[k].cost != COST_NONE)
        nodes[k].cost += tolls[k];
    }
  return path_trace (places, nodes, n);
}

/* --- one segment after another --- */

/* Lengths of what the units of the fit have left, each once, the longest first, none too short. */
static void
list_rooms (Waste *waste)
{
  guint kept = 0;

  g_array_set_size (waste->rooms, 0);
  for (guint i = 0; i < waste->fit.rooms->len; i++)
    {
      Length room = g_array_index (waste->fit.rooms, Length, i);

      if (room >= waste->geometry->min_piece)
        g_array_append_val (waste->rooms, room);
    }
  g_array_sort (waste->rooms, compare_lengths);
  for (guint i = 0; i < waste->rooms->len; i++)
    if (kept == 0
        || g_array_index (waste->rooms, Length, kept - 1)
               != g_array_index (waste->rooms, Length, i))
      g_array_index (waste->rooms, Length, kept++) = g_array_index (waste->rooms, Length, i);
  g_array_set_size (waste->rooms, kept);
  for (guint i = 0; i < kept / 2; i++)
    {
      Length *p = &g_array_index (waste->rooms, Length, i);
      Length *q = &g_array_index (waste->rooms, Length, kept - 1 - i), swap = *p;

      *p = *q;
      *q = swap;
    }
}

/* Lays segment i anew, or as in `as`; whether that was better. */
static gboolean
relay (Waste *waste, gint32 i, const Pattern *as)
{
  const Segment *segment = geometry_segment (waste->geometry, i);
  g_autoptr (GArray) boxes = g_array_new (FALSE, FALSE, sizeof (Box)), places = NULL;
  g_autofree Cost *tolls = NULL;
  gint32 whole = count_whole (waste, i);
  Pattern next;
  Score now, then;
  Cost harm;

  if (segment->set)
    return FALSE;
  collect (waste, i, waste->rest);
  score_of (waste, waste->rest, whole);
  list_rooms (waste);
  now = score_with (waste, waste->boxes[i],
                    whole + waste->chosen[i].n_pieces - (gint32) waste->boxes[i]->len);
  if (as == NULL)
    {
      set_prices (waste);
      places = places_for (waste, i);
      tolls = tolls_of (waste, i, places);
      next = cheapest (waste, i, places, tolls);
    }
  else
    next = pattern_copy (as);
  harm = harm_of (waste, i, &next);
  add_boxes (waste->geometry, segment, &next, boxes);
  sort_boxes (boxes);
  then = score_with (waste, boxes, whole + next.n_pieces - (gint32) boxes->len);
  if (harm > harm_of (waste, i, &waste->chosen[i])
      || (!waste->kicking && !is_better (waste, &then, &now)))
    {
      pattern_clear (&next);
      return FALSE;
    }
  pattern_clear (&waste->chosen[i]);
  waste->chosen[i] = next;
  set_boxes (waste, i);
  return TRUE;
}

/* --- the best of it --- */

typedef struct
{
  gint32 units, cuts;
  Pattern *patterns;
  gint32 start_at_least; /* units that the start is proven to need */
  gint32 start_cuts;
} Best;

static Pattern *
copy_chosen (const Waste *waste)
{
  Pattern *copy = g_new0 (Pattern, MAX (waste->n, 1));

  for (gint32 i = 0; i < waste->n; i++)
    copy[i] = pattern_copy (&waste->chosen[i]);
  return copy;
}

/* Chooses a copy of these. */
static void
choose (Waste *waste, const Pattern *patterns)
{
  for (gint32 i = 0; i < waste->n; i++)
    {
      pattern_clear (&waste->chosen[i]);
      waste->chosen[i] = pattern_copy (&patterns[i]);
      set_boxes (waste, i);
    }
}

/* Keeps what is chosen when it needs fewer units than the best until now, or no more and fewer
 * cuts. It must not need more than the start is proven to need, nor have fewer cuts: where the
 * fewest cuts are not found, no other aim is to have fewer. */
static void
keep (Waste *waste, Best *best)
{
  gint32 cuts, units;

  collect (waste, -1, waste->trial);
  cuts = (gint32) waste->trial->len;
  units = count_whole (waste, -1)
          + offcut_fit_best (&waste->fit, (Box *) (gpointer) waste->trial->data, waste->trial->len);
  if (units > best->start_at_least || cuts < best->start_cuts || units > best->units
      || (units == best->units && cuts >= best->cuts))
    return;
  patterns_free (best->patterns, waste->n);
  best->patterns = copy_chosen (waste);
  best->units = units;
  best->cuts = cuts;
}

/* Some segments as chance will have it, so that the search does not end in the first hollow. */
static void
kick (Waste *waste)
{
  waste->kicking = TRUE;
  for (gint32 i = 0; i < waste->n && !is_over (waste); i++)
    if (draw (waste, (guint32) i << 8 | 7) % 8 == 0)
      relay (waste, i, NULL);
  waste->kicking = FALSE;
}

/* Hundredths of a unit that a cut more must bring, by round. */
static const gint cautions[] = { 10, 5, 2, 0, 0, 1, 3 };

static void
search (Waste *waste, Best *best, gint32 at_least)
{
  gint32 idle = 0;

  for (waste->round = 0; waste->round < MOST_ROUNDS && idle < IDLE_ROUNDS && !is_over (waste)
                         && best->units > at_least;
       waste->round++)
    {
      gboolean gained = FALSE;
      gint32 before = best->units;

      waste->per_cut
          = waste->face.length / 100 * cautions[(gsize) waste->round % G_N_ELEMENTS (cautions)];
      for (gint32 k = 0; k < waste->n && !is_over (waste); k++)
        gained = relay (waste, waste->round % 2 == 0 ? k : waste->n - 1 - k, NULL) || gained;
      keep (waste, best);
      idle = best->units < before ? 0 : idle + 1;
      if (!gained || idle % 4 == 3)
        {
          choose (waste, best->patterns);
          kick (waste);
        }
    }
}

/* Fewer cuts at no more units: each segment back to what it was in the beginning, or laid anew. */
static void
prune_all (Waste *waste, Best *best, const Pattern *start)
{
  gboolean gained = TRUE;

  waste->pruning = TRUE;
  for (gint32 sweep = 0; sweep < 4 && gained && !is_over (waste); sweep++)
    {
      gained = FALSE;
      for (gint32 i = 0; i < waste->n && !is_over (waste); i++)
        gained = relay (waste, i, &start[i]) || gained;
      for (gint32 i = waste->n - 1; i >= 0 && !is_over (waste); i--)
        gained = relay (waste, i, NULL) || gained;
      keep (waste, best);
    }
  waste->pruning = FALSE;
}

/* Again and again, from what is best, shaken a little. */
static void
prune (Waste *waste, Best *best, const Pattern *start)
{
  for (waste->round = 0; waste->round < 8 && best->cuts > best->start_cuts && !is_over (waste);
       waste->round++)
    {
      choose (waste, best->patterns);
      if (waste->round > 0)
        kick (waste);
      prune_all (waste, best, start);
    }
}

static gint64
most_work (const Geometry *geometry)
{
  return geometry->quick ? QUICK_WORK : MOST_WORK;
}

static void
waste_init (Waste *waste, const Geometry *geometry, Pattern *chosen, const gint *stop)
{
  *waste = (Waste){ .geometry = geometry,
                    .chosen = chosen,
                    .stop = stop,
                    .n = (gint32) geometry->segments->len,
                    .face = { geometry->unit, geometry->unit_height, geometry->kerf },
                    .work = most_work (geometry) };
  waste->boxes = g_new0 (GArray *, MAX (waste->n, 1));
  waste->places = g_new0 (GArray *, MAX (waste->n, 1));
  waste->rest = g_array_new (FALSE, FALSE, sizeof (Box));
  waste->trial = g_array_new (FALSE, FALSE, sizeof (Box));
  waste->rooms = g_array_new (FALSE, FALSE, sizeof (Length));
  offcut_fit_init (&waste->fit, waste->face);
  for (gint32 i = 0; i < waste->n; i++)
    set_boxes (waste, i);
}

static void
waste_clear (Waste *waste)
{
  for (gint32 i = 0; i < waste->n; i++)
    {
      g_array_unref (waste->boxes[i]);
      if (waste->places[i] != NULL)
        g_array_unref (waste->places[i]);
    }
  g_free (waste->boxes);
  g_free (waste->places);
  g_array_unref (waste->rest);
  g_array_unref (waste->trial);
  g_array_unref (waste->rooms);
  offcut_fit_clear (&waste->fit);
}

static gint32
units_of (Waste *waste, gint32 *at_least)
{
  gint32 whole = count_whole (waste, -1);
  Box *boxes;

  collect (waste, -1, waste->trial);
  boxes = (Box *) (gpointer) waste->trial->data;
  if (at_least != NULL)
    *at_least = whole + offcut_bound (waste->face, boxes, waste->trial->len);
  return whole + offcut_fit_best (&waste->fit, boxes, waste->trial->len);
}

gint32
least_waste_units (const Geometry *geometry, const Pattern *chosen, gint32 *at_least)
{
  Waste waste;
  gint32 units;

  waste_init (&waste, geometry, (Pattern *) chosen, NULL);
  units = units_of (&waste, at_least);
  waste_clear (&waste);
  return units;
}

void
least_waste (const Geometry *geometry, Pattern *chosen, gint32 at_least, const gint *stop)
{
  Waste waste;
  Pattern *start;
  Best best = { 0 };

  waste_init (&waste, geometry, chosen, stop);
  start = copy_chosen (&waste);
  best.units = units_of (&waste, &best.start_at_least);
  best.cuts = best.start_cuts = (gint32) waste.trial->len;
  best.patterns = copy_chosen (&waste);
  search (&waste, &best, at_least);
  waste.work = most_work (geometry);
  prune (&waste, &best, start);
  patterns_free (start, waste.n);
  for (gint32 i = 0; i < waste.n; i++)
    {
      pattern_clear (&chosen[i]);
      chosen[i] = best.patterns[i];
    }
  g_free (best.patterns);
  waste_clear (&waste);
}
