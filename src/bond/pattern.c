/* pattern.c - one way to lay a segment, what it costs, and the places that perpends may take */
#include "bond/pattern.h"

Cost
pattern_form_cost (const Geometry *geometry, Length length, Length thickest, Length least,
                   gboolean whole)
{
  gint32 breaches = (length < least) + (thickest < geometry->min_rip);

  if (breaches == 0)
    return whole ? 0 : COST_CUT;
  return COST_BREACH * breaches + (whole ? 0 : COST_CUT)
         + COST_SHORTNESS / 1024
               * (shortness (length, least) + shortness (thickest, geometry->min_rip));
}

Cost
pattern_piece_cost (const Geometry *geometry, const Segment *segment, Length x, Length length)
{
  PieceForm form = geometry_piece_form (geometry, segment, x, length);
  Dues dues = { 0, 0, 0 };

  if (rules_of_pieces (geometry, segment))
    rules_piece_dues (geometry, segment, x, length, &dues);
  return pattern_form_cost (geometry, length, form.thickest,
                            geometry_shortest (geometry, segment, x, length), form.whole)
         + dues.cost;
}

/* What its pieces and its perpends owe the rules. */
static Cost
count_dues (const Geometry *geometry, const Segment *segment, Pattern *pattern)
{
  Dues dues = { 0, 0, 0 };

  for (gint32 i = 0; i < pattern->n_pieces; i++)
    {
      Length x = i == 0 ? segment->a : pattern->faces[i - 1];
      Length end = i == pattern->n_pieces - 1 ? segment->b : pattern->faces[i] - geometry->joint;

      rules_piece_dues (geometry, segment, x, end - x, &dues);
      if (i > 0)
        rules_perpend_dues (geometry, segment, x, &dues);
    }
  pattern->n_breaches += dues.breaches;
  pattern->n_wishes += dues.wishes;
  return dues.cost;
}

Cost
pattern_count (const Geometry *geometry, const Segment *segment, Pattern *pattern)
{
  Cost cost = 0;
  Length least = geometry->min_piece;
  /* Of one height, what there is to know of a piece but its length. */
  PieceForm form = geometry_piece_form (geometry, segment, segment->a, segment->b - segment->a);

  pattern->n_cuts = pattern->n_breaches = pattern->n_wishes = 0;
  for (gint32 i = 0; i < pattern->n_pieces; i++)
    {
      Length x = i == 0 ? segment->a : pattern->faces[i - 1];
      Length end = i == pattern->n_pieces - 1 ? segment->b : pattern->faces[i] - geometry->joint;

      if (segment->uniform)
        form.whole = segment->full && end - x == geometry->unit;
      else
        form = geometry_piece_form (geometry, segment, x, end - x);
      pattern->n_cuts += !form.whole;
      if (segment->raked)
        least = geometry_shortest (geometry, segment, x, end - x);
      if (end - x >= least && form.thickest >= geometry->min_rip)
        {
          cost += form.whole ? 0 : COST_CUT;
          continue;
        }
      pattern->n_breaches += (end - x < least) + (form.thickest < geometry->min_rip);
      cost += pattern_form_cost (geometry, end - x, form.thickest, least, form.whole);
    }
  if (segment->n_marks > 0 || geometry->allowed != NULL)
    cost += count_dues (geometry, segment, pattern);
  return cost;
}

Pattern
pattern_copy (const Pattern *pattern)
{
  Pattern copy = *pattern;

  copy.faces = g_memdup2 (pattern->faces, sizeof (Length) * (gsize) (pattern->n_pieces - 1));
  return copy;
}

void
pattern_clear (Pattern *pattern)
{
  g_clear_pointer (&pattern->faces, g_free);
}

void
patterns_free (Pattern *patterns, gint32 n)
{
  for (gint32 i = 0; patterns != NULL && i < n; i++)
    pattern_clear (&patterns[i]);
  g_free (patterns);
}

/* --- places --- */

static gint
compare_lengths (gconstpointer a, gconstpointer b)
{
  Length p = *(const Length *) a, q = *(const Length *) b;

  return (p > q) - (p < q);
}

static void
add_anchor (GArray *phases, Length pitch, Length place)
{
  Length phase = place % pitch;

  if (phase < 0)
    phase += pitch;
  for (guint i = 0; i < phases->len; i++)
    if (g_array_index (phases, Length, i) == phase)
      return;
  g_array_append_val (phases, phase);
}

static void
add_anchor_alone (GArray *phases, const Geometry *geometry, Length place)
{
  add_anchor (phases, geometry->unit + geometry->joint, place);
}

static void
add_anchor_and_laps (GArray *phases, const Geometry *geometry, Length place)
{
  Length pitch = geometry->unit + geometry->joint;

  add_anchor (phases, pitch, place);
  add_anchor (phases, pitch, place + pitch / 2);
  add_anchor (phases, pitch, place + geometry->min_lap);
  add_anchor (phases, pitch, place - geometry->min_lap);
  if (geometry->wanted_lap < pitch / 2)
    {
      add_anchor (phases, pitch, place + geometry->wanted_lap);
      add_anchor (phases, pitch, place - geometry->wanted_lap);
    }
}

/* A least piece from an end, and a least lap from that or twice from the end. */
static void
add_rich_anchors (GArray *phases, const Geometry *geometry, Length place, int direction)
{
  Length pitch = geometry->unit + geometry->joint;
  Length piece = place + direction * (geometry->min_piece + geometry->joint);

  add_anchor_and_laps (phases, geometry, piece);
  add_anchor (phases, pitch, place + 2 * geometry->min_lap);
  add_anchor (phases, pitch, place - 2 * geometry->min_lap);
}

/* More lengths than that are no few, and would be places at every hair. */
#define MAX_ALLOWED 8

/* Beside where a rule wants no perpend. */
static void
add_mark_anchors (GArray *phases, const Geometry *geometry, const Segment *segment, gboolean laps)
{
  void (*add) (GArray *, const Geometry *, Length) = laps ? add_anchor_and_laps : add_anchor_alone;

  for (gint32 i = 0; i < segment->n_perpend_marks; i++)
    {
      add (phases, geometry, rules_marks (geometry, segment)[i].from - 1);
      add (phases, geometry, rules_marks (geometry, segment)[i].to + 1);
    }
}

/* Where a piece of an allowed length ends that begins the segment, or begins that ends it. */
static void
add_allowed_anchors (GArray *phases, const Geometry *geometry, const Segment *segment)
{
  for (guint i = 0; geometry->allowed != NULL && i < MIN (geometry->allowed->len, MAX_ALLOWED); i++)
    {
      Length length = g_array_index (geometry->allowed, Length, i);

      add_anchor_alone (phases, geometry, segment->a + length + geometry->joint);
      add_anchor_alone (phases, geometry, segment->b - length);
    }
}

static void
add_own_anchors (GArray *phases, const Geometry *geometry, const Segment *segment)
{
  Length pitch = geometry->unit + geometry->joint;
  Length end = segment->b + geometry->joint;

  add_anchor_and_laps (phases, geometry, segment->a);
  add_anchor_and_laps (phases, geometry, end);
  add_anchor (phases, pitch, segment->a + geometry->min_piece + geometry->joint);
  add_anchor (phases, pitch, end - geometry->min_piece - geometry->joint);
  if (segment->raked)
    {
      add_anchor (phases, pitch, segment->a + geometry->min_raked + geometry->joint);
      add_anchor (phases, pitch, end - geometry->min_raked - geometry->joint);
    }
  for (gint32 i = 1; i < segment->n_steps; i++)
    {
      Length jamb = geometry_step (geometry, segment->first_step + i)->from;

      add_anchor (phases, pitch, jamb);
      add_anchor (phases, pitch, jamb + geometry->joint);
    }
  add_mark_anchors (phases, geometry, segment, FALSE);
  add_allowed_anchors (phases, geometry, segment);
}

/* Beside so many neighbours their places are tried near themselves alone: a course of hundreds of
 * metres would have a place at every hair. */
#define MAX_FAR_LINKS 24
#define NEAR 4 /* units */

static void
add_neighbour_anchors (GArray *phases, const Geometry *geometry, const Segment *other)
{
  add_anchor_and_laps (phases, geometry, other->a);
  add_anchor_and_laps (phases, geometry, other->b + geometry->joint);
  add_mark_anchors (phases, geometry, other, TRUE);
  if (geometry->rich)
    {
      add_rich_anchors (phases, geometry, other->a, 1);
      add_rich_anchors (phases, geometry, other->b + geometry->joint, -1);
    }
}

/* The faces of the phases from `from` to `to`, as far as they lie in the segment with a piece each
 * side, be it a sliver. */
static void
add_places (GArray *places, const Geometry *geometry, const Segment *segment, const GArray *phases,
            Length from, Length to)
{
  Length pitch = geometry->unit + geometry->joint, base;
  guint n = places->len;
  Length *room;

  from = MAX (MAX (from, segment->a), segment->a + geometry->joint);
  to = MIN (to, segment->b);
  if (from >= to)
    return;
  base = from / pitch * pitch;
  g_array_set_size (places, n + (guint) ((to - base) / pitch + 1) * phases->len);
  room = (Length *) (gpointer) places->data;
  for (; base < to; base += pitch)
    for (guint i = 0; i < phases->len; i++)
      {
        Length face = base + g_array_index (phases, Length, i);

        if (face > from && face < to)
          room[n++] = face;
      }
  g_array_set_size (places, n);
}

void
pattern_sort_places (GArray *places)
{
  guint kept = 0;

  g_array_sort (places, compare_lengths);
  for (guint i = 0; i < places->len; i++)
    if (kept == 0 || g_array_index (places, Length, kept - 1) != g_array_index (places, Length, i))
      g_array_index (places, Length, kept++) = g_array_index (places, Length, i);
  g_array_set_size (places, kept);
}

GArray *
pattern_places (const Geometry *geometry, const Segment *segment)
{
  GArray *places = g_array_new (FALSE, FALSE, sizeof (Length));
  g_autoptr (GArray) phases = g_array_new (FALSE, FALSE, sizeof (Length));
  g_autoptr (GArray) near_phases = g_array_new (FALSE, FALSE, sizeof (Length));
  Length pitch = geometry->unit + geometry->joint;
  gboolean far = segment->n_links <= MAX_FAR_LINKS;

  if (segment->set)
    return places;
  add_own_anchors (phases, geometry, segment);
  if (geometry->rich)
    {
      add_rich_anchors (phases, geometry, segment->a, 1);
      add_rich_anchors (phases, geometry, segment->b + geometry->joint, -1);
    }
  if (geometry->regular)
    {
      add_anchor (phases, pitch, segment->start);
      add_anchor (phases, pitch, segment->start + geometry->wanted_lap);
    }
  for (gint32 i = 0; i < segment->n_links; i++)
    {
      const Segment *other = geometry_segment (geometry, geometry_link (geometry, segment, i));

      add_neighbour_anchors (far ? phases : near_phases, geometry, other);
      if (!far)
        add_places (places, geometry, segment, near_phases, other->a - NEAR * pitch,
                    other->b + NEAR * pitch);
      g_array_set_size (near_phases, 0);
    }
  g_array_sort (phases, compare_lengths);
  add_places (places, geometry, segment, phases, segment->a, segment->b);
  if (!far)
    pattern_sort_places (places);
  return places;
}

gboolean
pattern_is_regular (const Geometry *geometry, const Segment *segment, Length face)
{
  Length pitch = geometry->unit + geometry->joint;
  Length offset = segment->course % 2 == 1 ? 0 : geometry->wanted_lap;

  return (face - segment->start - offset) % pitch == 0;
}
