/* course-way.c - one way to lay a whole course, and the cheapest that mirrors what it has to */
#include "bond/course-way.h"

#include <string.h>

#include "bond/fold.h"
#include "bond/path.h"
#include "bond/pool.h"

/* A course being laid: patterns of some segments are there. */
typedef struct
{
  const Geometry *geometry;
  const Kind *kind;
  const Way *below, *above; /* NULL: whatever stands there */
  Pattern *patterns;
  gboolean *done;
  Effort *effort;
} Work;

/* --- ways --- */

static gint
compare_faces (gconstpointer a, gconstpointer b)
{
  Length p = *(const Length *) a, q = *(const Length *) b;

  return (p > q) - (p < q);
}

static void
patterns_clear (Pattern *patterns, gint32 n)
{
  for (gint32 i = 0; i < n; i++)
    pattern_clear (&patterns[i]);
  g_free (patterns);
}

void
way_free (gpointer data)
{
  Way *way = data;

  patterns_clear (way->patterns, way->n);
  g_array_unref (way->faces);
  g_free (way);
}

static Cost
own_cost (const Geometry *geometry, const Kind *kind, Pattern *patterns)
{
  g_autoptr (GArray) unmatched = g_array_new (FALSE, FALSE, sizeof (Unmatched));
  Cost cost = 0;

  for (gint32 i = 0; i < kind->n; i++)
    {
      const Segment *segment = kind_segment (geometry, kind, i);

      cost += pattern_count (geometry, segment, &patterns[i]);
      for (gint32 k = 0; geometry->regular && k < patterns[i].n_pieces - 1; k++)
        if (!pattern_is_regular (geometry, segment, patterns[i].faces[k]))
          cost += COST_IRREGULAR;
    }
  mirror_unmatched (geometry, kind->course, patterns, unmatched);
  for (guint i = 0; i < unmatched->len; i++)
    cost += mirror_cost (&g_array_index (unmatched, Unmatched, i));
  return cost;
}

static gboolean
same_patterns (const Pattern *p, const Pattern *q, gint32 n)
{
  for (gint32 i = 0; i < n; i++)
    if (p[i].n_pieces != q[i].n_pieces
        || (p[i].n_pieces > 1
            && memcmp (p[i].faces, q[i].faces, sizeof (Length) * (gsize) (p[i].n_pieces - 1)) != 0))
      return FALSE;
  return TRUE;
}

gint32
way_add (const Geometry *geometry, Kind *kind, Pattern *patterns)
{
  Way *way;

  for (guint i = 0; i < kind->ways->len; i++)
    if (same_patterns (((Way *) g_ptr_array_index (kind->ways, i))->patterns, patterns, kind->n))
      {
        patterns_clear (patterns, kind->n);
        return (gint32) i;
      }
  way = g_new0 (Way, 1);
  way->patterns = patterns;
  way->n = kind->n;
  way->own = own_cost (geometry, kind, patterns);
  way->faces = g_array_new (FALSE, FALSE, sizeof (Length));
  for (gint32 i = 0; i < kind->n; i++)
    for (gint32 k = 0; k < pattern_n_perpends (kind_segment (geometry, kind, i), &patterns[i]); k++)
      {
        Length face = pattern_perpend (kind_segment (geometry, kind, i), &patterns[i], k);

        g_array_append_val (way->faces, face);
      }
  g_array_sort (way->faces, compare_faces);
  g_ptr_array_add (kind->ways, way);
  return (gint32) kind->ways->len - 1;
}

/* --- what perpends cost --- */

/* What a perpend pays to lap those of a course below or above. */
static Cost
lap_cost (const Geometry *geometry, const Way *other, Length face)
{
  Length wanted = geometry->wanted_lap, reach = MAX (wanted, geometry->min_lap), nearest = wanted;
  Cost cost = 0;

  if (other == NULL)
    return 0;
  for (guint i = (guint) count_below (other->faces, 0, face - reach + 1); i < other->faces->len;
       i++)
    {
      Length lap = ABS (g_array_index (other->faces, Length, i) - face);

      if (g_array_index (other->faces, Length, i) >= face + reach)
        break;
      nearest = MIN (nearest, lap);
      if (lap < geometry->min_lap)
        cost += COST_BREACH + COST_SHORTNESS * (geometry->min_lap - lap) / geometry->min_lap;
    }
  return cost + ((wanted - nearest) >> (geometry->wishing ? COST_LAP_SHIFT : 0));
}

Cost
way_cost_between (const Geometry *geometry, const Way *upper, const Way *lower)
{
  Cost cost = 0;

  for (guint i = 0; i < upper->faces->len; i++)
    cost += lap_cost (geometry, lower, g_array_index (upper->faces, Length, i));
  return cost;
}

static Cost
axis_cost (const Axis *axis)
{
  Unmatched one = { .rule = axis->rule, .must = axis->must };

  return mirror_cost (&one);
}

static gboolean
has_perpend (const Segment *segment, const Pattern *pattern, Length place)
{
  for (gint32 i = 0; i < pattern_n_perpends (segment, pattern); i++)
    if (ABS (pattern_perpend (segment, pattern, i) - place) <= MIRROR_TOLERANCE)
      return TRUE;
  return FALSE;
}

/* A perpend that is there, however segments are laid. */
static gboolean
is_pinned (const Segment *segment, Length place)
{
  return segment->joined_left && ABS (place - segment->a) <= MIRROR_TOLERANCE;
}

/* What a perpend in segment i pays, or saves, for images in segments that are laid. In those that
 * are not, its image will be wanted: it pays for that to lap what it has to. The axis that the
 * segment is folded about is left to the fold. */
static Cost
image_cost (const Work *work, gint32 i, Length face, const Axis *folded)
{
  const Geometry *geometry = work->geometry;
  const Segment *segment = kind_segment (work->geometry, work->kind, i);
  Cost cost = 0;

  for (guint a = 0; a < work->kind->axes->len; a++)
    {
      const Axis *axis = &g_array_index (work->kind->axes, Axis, a);
      Length place;

      if (!mirror_asks (geometry, axis, work->kind->course, face, &place))
        continue;
      for (gint32 k = 0; k < work->kind->n; k++)
        {
          const Segment *other = kind_segment (work->geometry, work->kind, k);

          if (is_pinned (other, place))
            cost -= axis_cost (axis);
          if (!mirror_faces (geometry, segment, face, other, place)
              || (k == i && folded != NULL && folded->twice == axis->twice))
            continue;
          if (work->done[k])
            cost += has_perpend (other, &work->patterns[k], place) ? -axis_cost (axis)
                                                                   : axis_cost (axis);
          else if (k != i)
            cost += lap_cost (geometry, work->below, place)
                    + lap_cost (geometry, work->above, place);
        }
    }
  return cost;
}

/* --- places --- */

/* A least lap from what stands in a course below or above. */
static void
add_laps (const Work *work, gint32 i, const Way *other, GArray *places)
{
  const Segment *segment = kind_segment (work->geometry, work->kind, i);
  Length lap = work->geometry->min_lap;

  for (guint p = 0; other != NULL && p < other->faces->len; p++)
    {
      kind_add_inside (work->geometry, segment, g_array_index (other->faces, Length, p) - lap,
                       places);
      kind_add_inside (work->geometry, segment, g_array_index (other->faces, Length, p) + lap,
                       places);
    }
}

/* Those of segment i; of several axes with the images of what is laid, so that it can have images
 * of images, too; and as a must those that just lap the neighbours. With each its image about the
 * axis that it is folded about. */
static GArray *
places_new (const Work *work, gint32 i, const Axis *folded)
{
  GArray *places = g_array_copy (work->kind->places[i]);
  guint first = work->kind->axes->len > 1 ? 0 : places->len, past;

  if (kind_segment (work->geometry, work->kind, i)->set)
    return places;
  for (gint32 k = 0; work->kind->axes->len > 1 && k < work->kind->n; k++)
    for (gint32 p = 0; work->done[k] && p < work->patterns[k].n_pieces - 1; p++)
      kind_add_images (work->geometry, work->kind, i, work->patterns[k].faces[p], places);
  if (work->kind->must)
    {
      add_laps (work, i, work->below, places);
      add_laps (work, i, work->above, places);
    }
  past = places->len;
  for (guint p = first; folded != NULL && p < past; p++)
    kind_add_image (work->geometry, work->kind, i, folded, g_array_index (places, Length, p),
                    places);
  pattern_sort_places (places);
  return places;
}

static Cost *
tolls_new (const Work *work, gint32 i, const GArray *places, const Axis *folded)
{
  const Geometry *geometry = work->geometry;
  const Segment *segment = kind_segment (work->geometry, work->kind, i);
  Cost *toll = g_new0 (Cost, places->len + 1);

  for (guint p = 0; p < places->len; p++)
    {
      Length face = g_array_index (places, Length, p);

      toll[p] = lap_cost (geometry, work->below, face) + lap_cost (geometry, work->above, face)
                + image_cost (work, i, face, folded);
      if (geometry->regular && !pattern_is_regular (geometry, segment, face))
        toll[p] += COST_IRREGULAR;
    }
  rules_add_tolls (geometry, segment, places, toll);
  return toll;
}

/* --- laying a course --- */

static gboolean
is_across (const Segment *segment, const Axis *axis)
{
  return axis->twice > 2 * segment->a && axis->twice < 2 * segment->b;
}

/* The image of each place in the segment itself, or -1. */
static gint32 *
images_new (const Geometry *geometry, const Kind *kind, gint32 i, const GArray *places,
            const Axis *axis)
{
  const Segment *segment = kind_segment (geometry, kind, i);
  gint32 *image = g_new (gint32, places->len + 1);

  for (guint p = 0; p < places->len; p++)
    {
      Length face = g_array_index (places, Length, p), place;
      guint at;

      image[p] = -1;
      if (!mirror_asks (geometry, axis, kind->course, face, &place)
          || !mirror_faces (geometry, segment, face, segment, place)
          || !mirror_faces (geometry, segment, place, segment, face))
        continue;
      at = (guint) count_below (places, 0, place);
      if (at < places->len && g_array_index (places, Length, at) == place)
        image[p] = (gint32) at;
    }
  return image;
}

static void
count_work (const Work *work, const Segment *segment, const GArray *places)
{
  const Geometry *geometry = work->geometry;
  gint64 units = (segment->b - segment->a) / (geometry->unit + geometry->joint) + 1;
  gint64 asked = (gint64) work->kind->axes->len + work->kind->n;

  work->effort->done += places->len * (places->len / units + asked / 8 + 1);
}

static void
put_pattern (Work *work, gint32 i, Pattern pattern)
{
  if (pattern.n_pieces == 0)
    return;
  pattern_clear (&work->patterns[i]);
  work->patterns[i] = pattern;
  work->done[i] = TRUE;
}

static void
lay_folded (Work *work, gint32 i, const Axis *axis)
{
  g_autoptr (GArray) places = places_new (work, i, axis);
  const Segment *segment = kind_segment (work->geometry, work->kind, i);
  g_autofree Cost *toll = tolls_new (work, i, places, axis);
  g_autofree gint32 *image = images_new (work->geometry, work->kind, i, places, axis);

  put_pattern (work, i, fold_solve (work->geometry, segment, places, toll, image));
  count_work (work, segment, places);
}

static void
lay_plainly (Work *work, gint32 i)
{
  g_autoptr (GArray) places = places_new (work, i, NULL);
  const Segment *segment = kind_segment (work->geometry, work->kind, i);
  g_autofree Cost *toll = tolls_new (work, i, places, NULL);
  Cost cost;

  put_pattern (work, i, path_solve (work->geometry, segment, places, toll, &cost));
  count_work (work, segment, places);
}

/* Folded about each axis across it, what lies about the others held where it can be; of several
 * axes each has a second turn. */
static void
lay_segment (Work *work, gint32 i, gboolean rightwards)
{
  const Segment *segment = kind_segment (work->geometry, work->kind, i);
  const GArray *axes = work->kind->axes;
  gint32 turns = 0;

  for (gint32 turn = 0; turn == 0 || (turn == 1 && turns > 1); turn++)
    for (guint a = 0; a < axes->len; a++)
      {
        const Axis *axis = &g_array_index (axes, Axis, rightwards || a == 0 ? a : axes->len - a);

        if (!is_across (segment, axis) || (turns > 0 && work->effort->done >= work->effort->most))
          continue;
        lay_folded (work, i, axis);
        turns++;
      }
  if (!work->done[i])
    lay_plainly (work, i);
}

gint32
way_lay (const Geometry *geometry, Kind *kind, const Way *below, const Way *above,
         gboolean rightwards, Effort *effort)
{
  Work work = { .geometry = geometry,
                .kind = kind,
                .below = below,
                .above = above,
                .patterns = g_new0 (Pattern, MAX (kind->n, 1)),
                .done = g_new0 (gboolean, MAX (kind->n, 1)),
                .effort = effort };

  for (gint32 k = 0; k < kind->n; k++)
    lay_segment (&work, rightwards ? k : kind->n - 1 - k, rightwards);
  g_free (work.done);
  return way_add (geometry, kind, work.patterns);
}
