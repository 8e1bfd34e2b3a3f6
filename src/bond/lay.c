/* lay.c - lays a wall: the best pieces under the wall's rules */
#include "bond/lay.h"

#include "bond/behind.h"
#include "bond/bound-order.h"
#include "bond/bound.h"
#include "bond/least-waste.h"
#include "bond/lengths.h"
#include "bond/mirror.h"
#include "bond/network.h"
#include "bond/segment.h"
#include "bond/stands.h"
#include "bond/symmetry.h"

typedef struct
{
  const Geometry *geometry;
  const Pattern *patterns; /* by segment */
  Layout *layout;
  WallBound *bound;
} Laid;

/* --- pieces --- */

static gint
compare_pieces (gconstpointer a, gconstpointer b)
{
  const Piece *p = a, *q = b;

  if (p->x != q->x)
    return (p->x > q->x) - (p->x < q->x);
  return (p->bottom > q->bottom) - (p->bottom < q->bottom);
}

static void
add_corner (GArray *corners, Length x, Length z)
{
  LayPoint point = { x, z };

  g_array_append_val (corners, point);
}

/* Both ends of a step's top, from the right; where the slope goes on from the step on its right, or
 * into the one on its left, there is no corner between. */
static void
add_top (const Geometry *geometry, const Segment *segment, gint32 i, Length from, Length to,
         const Piece *piece, GArray *corners)
{
  const Step *step = geometry_step (geometry, segment->first_step + i);
  const gint32 slope = geometry_slope (geometry, step);

  if (slope < 0 || i + 1 >= segment->n_steps || geometry_slope (geometry, step + 1) != slope
      || to == piece->x + piece->length)
    add_corner (corners, to, geometry_step_top (geometry, segment, step, to));
  if (slope < 0 || i == 0 || geometry_slope (geometry, step - 1) != slope || from == piece->x)
    add_corner (corners, from, geometry_step_top (geometry, segment, step, from));
}

/* Both sides of a stepped piece, counter-clockwise from its left end's foot. */
static void
trace_outline (const Geometry *geometry, const Segment *segment, const Piece *piece,
               GArray *corners)
{
  Length right = piece->x + piece->length;

  for (gint32 up = 0; up < 2; up++)
    for (gint32 k = 0; k < segment->n_steps; k++)
      {
        gint32 i = up ? segment->n_steps - 1 - k : k;
        const Step *step = geometry_step (geometry, segment->first_step + i);
        Length from = MAX (step->from, piece->x), to = MIN (step->to, right);

        if (from >= to)
          continue;
        if (up)
          {
            add_top (geometry, segment, i, from, to, piece, corners);
            continue;
          }
        add_corner (corners, from, step->lo);
        add_corner (corners, to, step->lo);
      }
}

static gboolean
is_straight (const LayPoint *p, const LayPoint *q, const LayPoint *r)
{
  return (p->x == q->x && q->x == r->x) || (p->z == q->z && q->z == r->z);
}

/* One of two corners in a row at one place. */
static void
drop_twins (GArray *corners)
{
  for (guint i = corners->len; i-- > 0;)
    {
      const LayPoint *p = &g_array_index (corners, LayPoint, i);
      const LayPoint *q = &g_array_index (corners, LayPoint, (i + 1) % corners->len);

      if (p->x == q->x && p->z == q->z)
        g_array_remove_index (corners, i);
    }
}

/* Corners without those on a straight edge, the lowest left one first. */
static void
add_outline (Layout *layout, Piece *piece, GArray *corners)
{
  g_autoptr (GArray) kept = g_array_new (FALSE, FALSE, sizeof (LayPoint));
  guint first = 0;

  drop_twins (corners);
  for (guint i = 0; i < corners->len; i++)
    {
      const LayPoint *all = (const LayPoint *) (gpointer) corners->data;
      const LayPoint *before = &all[(i + corners->len - 1) % corners->len];
      const LayPoint *after = &all[(i + 1) % corners->len];

      if (!is_straight (before, &all[i], after))
        g_array_append_val (kept, all[i]);
    }
  for (guint i = 1; i < kept->len; i++)
    {
      const LayPoint *p = &g_array_index (kept, LayPoint, i);
      const LayPoint *q = &g_array_index (kept, LayPoint, first);

      if (p->z < q->z || (p->z == q->z && p->x < q->x))
        first = i;
    }
  piece->outline = (gint32) layout->points->len;
  piece->n_outline = (gint32) kept->len;
  for (guint i = 0; i < kept->len; i++)
    g_array_append_val (layout->points, g_array_index (kept, LayPoint, (first + i) % kept->len));
}

static PieceShape
shape_of (const Geometry *geometry, const PieceForm *form, gboolean raked)
{
  if (raked)
    return PIECE_RAKED;
  if (!form->rectangle)
    return PIECE_NOTCHED;
  if (form->thickest < geometry->unit_height)
    return PIECE_RIPPED;
  return form->whole ? PIECE_WHOLE : PIECE_SHORT;
}

static void
add_piece (const Laid *laid, const Segment *segment, Length x, Length length)
{
  PieceForm form = geometry_piece_form (laid->geometry, segment, x, length);
  gboolean raked = segment->raked && geometry_is_raked (laid->geometry, segment, x, length);
  Piece piece = { .course = segment->course,
                  .segment = segment->index,
                  .shape = shape_of (laid->geometry, &form, raked),
                  .stands = segment->stands,
                  .x = x,
                  .length = length,
                  .bottom = form.lo,
                  .height = form.hi - form.lo,
                  .outline = -1 };

  if (raked || !form.rectangle)
    {
      g_autoptr (GArray) corners = g_array_new (FALSE, FALSE, sizeof (LayPoint));

      trace_outline (laid->geometry, segment, &piece, corners);
      add_outline (laid->layout, &piece, corners);
    }
  if (form.whole)
    laid->layout->n_whole++;
  else
    laid->layout->n_cut++;
  g_array_append_val (laid->layout->pieces, piece);
}

static void
add_segment (const Laid *laid, gint32 i)
{
  const Segment *segment = geometry_segment (laid->geometry, i);
  const Pattern *pattern = &laid->patterns[i];

  for (gint32 k = 0; k < pattern->n_pieces; k++)
    {
      Length x = k == 0 ? segment->a : pattern->faces[k - 1];
      Length end
          = k == pattern->n_pieces - 1 ? segment->b : pattern->faces[k] - laid->geometry->joint;

      add_piece (laid, segment, x, end - x);
    }
}

static void
add_pieces (const Laid *laid)
{
  GArray *pieces = laid->layout->pieces;
  guint i = 0;

  for (guint c = 0; c < laid->layout->courses->len; c++)
    {
      Course *course = &g_array_index (laid->layout->courses, Course, c);

      course->first = (gint32) pieces->len;
      for (; i < laid->geometry->segments->len
             && geometry_segment (laid->geometry, (gint32) i)->course == course->number;
           i++)
        add_segment (laid, (gint32) i);
      course->n_pieces = (gint32) pieces->len - course->first;
      if (course->n_pieces > 1)
        qsort (&g_array_index (pieces, Piece, course->first), (gsize) course->n_pieces,
               sizeof (Piece), compare_pieces);
      for (gint32 k = 0; k < course->n_pieces; k++)
        g_array_index (pieces, Piece, course->first + k).number = k + 1;
    }
}

static void
mark_pinned (const Laid *laid, const LaidPin *pin)
{
  const Course *course = layout_course (laid->layout, (guint) pin->course - 1);

  for (gint32 i = course->first; i < course->first + course->n_pieces; i++)
    {
      Piece *piece = &g_array_index (laid->layout->pieces, Piece, (guint) i);

      if (piece->x == pin->x && piece->segment == pin->segment)
        piece->pinned = pin->length > 0 ? PINNED_PIECE : PINNED_FACE;
    }
}

static void
mark_all_pinned (const Laid *laid)
{
  for (guint i = 0; i < laid->layout->pins->len; i++)
    {
      const LaidPin *pin = &g_array_index (laid->layout->pins, LaidPin, i);

      if (pin->fate == PIN_MET)
        mark_pinned (laid, pin);
    }
}

/* --- breaches --- */

static void
add_breach (const Laid *laid, BreachKind kind, gint32 course, Length x, Length is, Length least)
{
  Breach breach = { kind, course, x, is, least };

  g_array_append_val (laid->layout->breaches, breach);
}

static void
add_piece_breaches (const Laid *laid, gint32 i)
{
  const Geometry *geometry = laid->geometry;
  const Segment *segment = geometry_segment (geometry, i);
  const Pattern *pattern = &laid->patterns[i];

  for (gint32 k = 0; k < pattern->n_pieces; k++)
    {
      Length x = k == 0 ? segment->a : pattern->faces[k - 1];
      Length end = k == pattern->n_pieces - 1 ? segment->b : pattern->faces[k] - geometry->joint;
      PieceForm form = geometry_piece_form (geometry, segment, x, end - x);

      gboolean raked = segment->raked && geometry_is_raked (geometry, segment, x, end - x);
      Length least = raked ? geometry->min_raked : geometry->min_piece;

      if (end - x < least)
        add_breach (laid, raked ? BREACH_MIN_RAKED : BREACH_MIN_PIECE, segment->course, x, end - x,
                    least);
      if (form.thickest < geometry->min_rip)
        add_breach (laid, BREACH_MIN_RIP, segment->course, x, form.thickest, geometry->min_rip);
    }
}

static void
add_lap_breaches (const Laid *laid, gint32 i)
{
  const Geometry *geometry = laid->geometry;
  const Segment *segment = geometry_segment (geometry, i);
  const Pattern *pattern = &laid->patterns[i];

  for (gint32 p = 0; p < pattern_n_perpends (segment, pattern); p++)
    for (gint32 k = 0; k < segment->n_below; k++)
      {
        gint32 other = geometry_link (geometry, segment, k);
        const Segment *beneath = geometry_segment (geometry, other);
        const Pattern *below = &laid->patterns[other];
        Length face = pattern_perpend (segment, pattern, p);

        for (gint32 q = 0; q < pattern_n_perpends (beneath, below); q++)
          {
            Length lap = ABS (face - pattern_perpend (beneath, below, q));

            if (lap < geometry->min_lap)
              add_breach (laid, BREACH_MIN_LAP, segment->course, face - geometry->joint / 2, lap,
                          geometry->min_lap);
          }
      }
}

/* Of the rules that are a must. */
static void
add_rule_breaches (const Laid *laid, gint32 i)
{
  const Geometry *geometry = laid->geometry;
  const Segment *segment = geometry_segment (geometry, i);
  const Pattern *pattern = &laid->patterns[i];

  for (gint32 k = 0; segment->n_marks > 0 && k < pattern->n_pieces; k++)
    {
      Length x = k == 0 ? segment->a : pattern->faces[k - 1], is;
      Length end = k == pattern->n_pieces - 1 ? segment->b : pattern->faces[k] - geometry->joint;
      const Mark *mark;

      for (gint32 at = 0; (k > 0 || segment->joined_left)
                          && (mark = rules_next_perpend (geometry, segment, x, &at, &is)) != NULL;)
        if (mark->must)
          add_breach (laid, BREACH_OF_RULE + (BreachKind) mark->rule, segment->course,
                      x - geometry->joint / 2, is, mark->least);
      for (gint32 at = 0; (mark = rules_next_piece (geometry, segment, x, end - x, &at)) != NULL;)
        if (mark->must)
          add_breach (laid, BREACH_OF_RULE + (BreachKind) mark->rule, segment->course, x, end - x,
                      mark->least);
    }
}

/* Where few lengths of cut pieces are a must: the first piece of each that is too many. */
static void
add_length_breaches (const Laid *laid)
{
  const Geometry *geometry = laid->geometry;
  g_autoptr (GArray) uses = NULL;

  if (!geometry->lengths_must)
    return;
  uses = lengths_used (geometry, laid->patterns);
  for (guint i = (guint) geometry->most_lengths; i < uses->len; i++)
    {
      Length length = g_array_index (uses, LengthUse, i).length;
      guint k = 0;

      while (layout_piece (laid->layout, k)->length != length)
        k++;
      add_breach (laid, BREACH_OF_RULE + RULE_LENGTHS, layout_piece (laid->layout, k)->course,
                  layout_piece (laid->layout, k)->x, length, geometry->most_lengths);
    }
}

/* Where symmetry is a must: every perpend without its image. */
static void
add_symmetry_breaches (const Laid *laid)
{
  const Geometry *geometry = laid->geometry;

  for (gint32 course = 1; geometry->mirror != NULL && course <= (gint32) geometry->courses->len;
       course++)
    {
      g_autoptr (GArray) unmatched = g_array_new (FALSE, FALSE, sizeof (Unmatched));
      gint32 first;

      mirror_segments (geometry, course, &first);
      mirror_unmatched (geometry, course, &laid->patterns[first], unmatched);
      for (guint i = 0; i < unmatched->len; i++)
        {
          const Unmatched *one = &g_array_index (unmatched, Unmatched, i);

          if (one->must)
            add_breach (laid, BREACH_OF_RULE + (BreachKind) one->rule, course,
                        one->face - geometry->joint / 2, one->off,
                        one->place - geometry->joint / 2);
        }
    }
}

static gint
compare_breaches (gconstpointer a, gconstpointer b)
{
  const Breach *p = a, *q = b;

  if (p->course != q->course)
    return p->course < q->course ? -1 : 1;
  if (p->x != q->x)
    return p->x < q->x ? -1 : 1;
  if (p->kind != q->kind)
    return p->kind < q->kind ? -1 : 1;
  return (p->is > q->is) - (p->is < q->is);
}

static void
add_breaches (const Laid *laid)
{
  for (guint i = 0; i < laid->geometry->segments->len; i++)
    {
      add_piece_breaches (laid, (gint32) i);
      add_lap_breaches (laid, (gint32) i);
      add_rule_breaches (laid, (gint32) i);
    }
  add_length_breaches (laid);
  add_symmetry_breaches (laid);
  g_array_sort (laid->layout->breaches, compare_breaches);
}

static gint32
count_limit_breaches (const Layout *layout)
{
  gint32 n = 0;

  for (guint i = 0; i < layout->breaches->len; i++)
    n += breach_is_of_limit (g_array_index (layout->breaches, Breach, i).kind);
  return n;
}

static void
add_proof (const Laid *laid)
{
  Proof *proof = &laid->layout->proof;
  Bound least;

  proof->breaches = (gint32) laid->layout->breaches->len;
  proof->cuts = laid->layout->n_cut;
  bound_is_met (laid->bound, proof->breaches, proof->cuts);
  least = laid->bound->least;
  proof->breaches_at_least = least.breaches;
  proof->cuts_at_least = least.breaches == proof->breaches ? least.cuts : laid->bound->cuts_at;
  proof->proven = proof->cuts_at_least == proof->cuts;
}

static void
add_order_proof (const Laid *laid)
{
  Proof *proof = &laid->layout->proof;
  gboolean any_piece = count_limit_breaches (laid->layout) > bound_forced_breaches (laid->geometry);

  proof->to_order = least_waste_units (laid->geometry, laid->patterns, NULL);
  proof->to_order_at_least = bound_wall_order (laid->geometry, any_piece);
}

/* --- the wall --- */

static Layout *
layout_new (const Wall *wall, const Geometry *geometry)
{
  Layout *layout = g_new0 (Layout, 1);

  g_atomic_ref_count_init (&layout->refs);
  layout->wall = wall->id;
  layout->held = geometry->held;
  layout->courses = g_array_ref (geometry->courses);
  layout->packings = g_array_ref (geometry->packings);
  layout->pins = g_array_ref (geometry->pins);
  layout->pieces = g_array_new (FALSE, TRUE, sizeof (Piece));
  layout->points = g_array_new (FALSE, TRUE, sizeof (LayPoint));
  layout->breaches = g_array_new (FALSE, TRUE, sizeof (Breach));
  return layout;
}

static Pattern *
copy_patterns (const Pattern *patterns, gint32 n)
{
  Pattern *copy = g_new0 (Pattern, MAX (n, 1));

  for (gint32 i = 0; i < n; i++)
    copy[i] = pattern_copy (&patterns[i]);
  return copy;
}

/* Whether patterns break the musts of the whole wall more than others do. */
static gboolean
breaks_more (const Geometry *geometry, const Pattern *patterns, const Pattern *before)
{
  g_autoptr (GArray) uses = lengths_used (geometry, patterns);
  g_autoptr (GArray) used = lengths_used (geometry, before);

  return symmetry_breaches (geometry, patterns) > symmetry_breaches (geometry, before)
         || (geometry->lengths_must && uses->len > MAX (used->len, (guint) geometry->most_lengths));
}

/* Fewer units to order; not where that breaks what is a must of the whole wall. */
static void
waste_less (const Geometry *geometry, Pattern *patterns, const gint *stop)
{
  gint32 n = (gint32) geometry->segments->len;
  Pattern *kept = NULL;

  if (geometry->lengths_must || geometry->mirror != NULL)
    kept = copy_patterns (patterns, n);
  least_waste (geometry, patterns, bound_wall_order (geometry, FALSE), stop);
  if (kept == NULL)
    return;
  if (breaks_more (geometry, patterns, kept))
    for (gint32 i = 0; i < n; i++)
      {
        Pattern worse = patterns[i];

        patterns[i] = kept[i];
        kept[i] = worse;
      }
  patterns_free (kept, n);
}

/* With least waste, units to order come before what is only preferred. */
static gboolean
wants_fewer_lengths (const Geometry *geometry, const Laying *laying)
{
  return geometry->most_lengths > 0
         && (geometry->lengths_must || (laying->aim != AIM_LEAST_WASTE && !geometry->quick));
}

/* Likewise. */
static gboolean
wants_symmetry (const Geometry *geometry, const Laying *laying)
{
  gboolean must = laying->rules[RULE_SYMMETRY_WALL].keep == KEEP_MUST
                  || laying->rules[RULE_SYMMETRY_OPENINGS].keep == KEEP_MUST;

  return geometry->mirror != NULL && (must || (laying->aim != AIM_LEAST_WASTE && !geometry->quick));
}

/* The patterns that the wall is laid with; NULL: stopped. */
static Pattern *
choose (const Geometry *geometry, const Laying *laying, WallBound *bound, const gint *stop)
{
  Pattern *patterns = network_solve (geometry, bound, stop);

  if (patterns != NULL && wants_fewer_lengths (geometry, laying))
    patterns = lengths_reduce (geometry, patterns, bound, stop);
  if (patterns != NULL && wants_symmetry (geometry, laying))
    patterns = symmetry_improve (geometry, patterns, stop);
  if (patterns != NULL && laying->aim == AIM_LEAST_WASTE)
    waste_less (geometry, patterns, stop);
  if (patterns != NULL && stop != NULL && g_atomic_int_get (stop) != 0)
    {
      patterns_free (patterns, (gint32) geometry->segments->len);
      patterns = NULL;
    }
  return patterns;
}

static Layout *
lay_down (const Wall *wall, const Geometry *geometry, const Pattern *patterns, WallBound *bound,
          Aim aim)
{
  Laid laid = { geometry, patterns, layout_new (wall, geometry), bound };

  add_pieces (&laid);
  mark_all_pinned (&laid);
  add_breaches (&laid);
  add_proof (&laid);
  if (aim == AIM_LEAST_WASTE)
    add_order_proof (&laid);
  return laid.layout;
}

static Geometry *
geometry_of (const Wall *wall, const Block *block, const Laying *laying, gint32 held,
             gboolean quick)
{
  Geometry *geometry = geometry_new_over (wall, block, laying, held);

  geometry->quick = quick;
  return geometry;
}

static Layout *
lay_as_it_is (const Wall *wall, const Block *block, gint32 held, gboolean quick, const gint *stop)
{
  const Laying laying = laying_resolve (&wall->laying, block);
  g_autoptr (Geometry) geometry = geometry_of (wall, block, &laying, held, quick);
  g_auto (WallBound) bound = { NULL };
  Pattern *patterns;
  Layout *layout;

  bound_init (&bound, geometry);
  patterns = choose (geometry, &laying, &bound, stop);
  if (patterns == NULL)
    return NULL;
  layout = lay_down (wall, geometry, patterns, &bound, laying.aim);
  patterns_free (patterns, (gint32) geometry->segments->len);
  return layout;
}

/* By its mirror image. *done: FALSE where that has other runs. */
static Layout *
lay_behind (const Wall *wall, const Wall *image, const Block *block, gboolean quick,
            const gint *stop, gboolean *done)
{
  const Laying laying = laying_resolve (&wall->laying, block);
  const Laying from_left = laying_resolve (&image->laying, block);
  g_autoptr (Geometry) geometry = geometry_of (wall, block, &laying, 0, quick);
  g_autoptr (Geometry) seen = geometry_of (image, block, &from_left, 0, quick);
  g_auto (WallBound) bound = { NULL };
  Pattern *patterns, *turned;
  Layout *layout = NULL;

  bound_init (&bound, seen);
  patterns = choose (seen, &from_left, &bound, stop);
  *done = TRUE;
  if (patterns == NULL)
    return NULL;
  turned = behind_patterns (seen, patterns, geometry, wall->length);
  *done = turned != NULL;
  if (turned != NULL)
    layout = lay_down (wall, geometry, turned, &bound, laying.aim);
  patterns_free (turned, (gint32) geometry->segments->len);
  patterns_free (patterns, (gint32) seen->segments->len);
  return layout;
}

static Layout *
lay_over (const Wall *wall, const Block *block, gint32 held, gboolean quick, const gint *stop)
{
  g_autoptr (Wall) image = held == 0 ? behind_wall (wall) : NULL;
  gboolean done = FALSE;
  Layout *layout = NULL;

  if (image != NULL)
    layout = lay_behind (wall, image, block, quick, stop, &done);
  return done ? layout : lay_as_it_is (wall, block, held, quick, stop);
}

static void
mark_standing (Layout *layout, gint32 upto)
{
  for (guint i = 0; i < layout->pieces->len && layout_piece (layout, i)->course <= upto; i++)
    g_array_index (layout->pieces, Piece, i).stands = TRUE;
}

/* What stands is laid as it was found before it stood, where that is still how it would be found:
 * then all that lies above is as it was, too. */
static Layout *
lay (const Wall *wall, const Block *block, gboolean quick, const gint *stop)
{
  gint32 n, held;
  Layout *layout;

  g_return_val_if_fail (wall != NULL && block != NULL, NULL);
  n = wall_standing (wall);
  held = stands_held_before (wall);
  layout = lay_over (wall, block, held, quick, stop);
  if (layout == NULL || held == n)
    return layout;
  if (stands_matches (layout, wall))
    {
      mark_standing (layout, n);
      return layout;
    }
  layout_unref (layout);
  return lay_over (wall, block, n, quick, stop);
}

Layout *
lay_wall (const Wall *wall, const Block *block, const gint *stop)
{
  return lay (wall, block, FALSE, stop);
}

Layout *
lay_wall_quickly (const Wall *wall, const Block *block, const gint *stop)
{
  return lay (wall, block, TRUE, stop);
}

LayBound
lay_bound (const Wall *wall, const Block *block)
{
  const Laying laying = laying_resolve (&wall->laying, block);
  g_autoptr (Geometry) geometry = geometry_new (wall, block, &laying);
  g_auto (WallBound) bound = { NULL };
  Bound least;

  bound_init (&bound, geometry);
  least = bound_sum (&bound);
  return (LayBound){ least.breaches, least.cuts };
}

LayBound
lay_bound_below (const Wall *wall, const Block *block, LayBound enough)
{
  const Laying laying = laying_resolve (&wall->laying, block);
  g_autoptr (Geometry) geometry = geometry_new (wall, block, &laying);
  g_auto (WallBound) bound = { NULL };

  bound_init (&bound, geometry);
  if (bound_is_met (&bound, enough.breaches, enough.cuts))
    return enough;
  return (LayBound){ bound.least.breaches, bound.least.cuts };
}
