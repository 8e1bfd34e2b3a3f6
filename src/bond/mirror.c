/* mirror.c - which perpends have no mirror image, where a rule wants a symmetrical bond */
#include "bond/mirror.h"

/* A run of a course as it is before pins part it. */
typedef struct
{
  Length a, b;
  gint64 middle; /* of its lowest and its highest place, doubled */
} Run;

struct Mirror
{
  GArray *axes;   /* Axis */
  GArray *runs;   /* Run, by course and index */
  GArray *firsts; /* gint32, by course: its first run; one more at the end */
};

/* A perpend of a course. */
typedef struct
{
  Length face;
  gint32 run; /* in its course */
} Perpend;

/* --- what is asked --- */

static void
add_axis (Mirror *mirror, const Laying *laying, RuleKind kind, Axis axis)
{
  axis.rule = (gint32) kind;
  axis.must = laying->rules[kind].keep == KEEP_MUST;
  g_array_append_val (mirror->axes, axis);
}

static void
add_axes (Mirror *mirror, const Geometry *geometry, const Wall *wall, const Laying *laying)
{
  const Rule *about = &laying->rules[RULE_SYMMETRY_OPENINGS];
  gint32 n = (gint32) geometry->courses->len;

  if (laying->rules[RULE_SYMMETRY_WALL].keep != KEEP_OFF)
    add_axis (
        mirror, laying, RULE_SYMMETRY_WALL,
        (Axis){
            .twice = wall->length, .to = wall->length, .first = geometry->held + 1, .last = n });
  for (guint i = 0; about->keep != KEEP_OFF && i < wall->openings->len; i++)
    {
      const Opening *opening = wall_opening_at (wall, i);
      Length left = opening->x, right = opening_right (opening);
      gint32 over = rules_course_over (geometry, opening);

      add_axis (mirror, laying, RULE_SYMMETRY_OPENINGS,
                (Axis){ .twice = left + right,
                        .from = left - about->value,
                        .to = right + about->value,
                        .first = MAX (rules_course_under (geometry, opening), geometry->held + 1),
                        .last = over > 0 ? over : n });
    }
}

static void
add_runs (Mirror *mirror, const Geometry *geometry)
{
  gint32 n = (gint32) geometry->courses->len, at = 0;

  for (gint32 course = 1; course <= n + 1; course++)
    {
      g_array_append_val (mirror->firsts, at);
      for (; at < (gint32) geometry->segments->len
             && geometry_segment (geometry, at)->course == course;
           at++)
        {
          const Segment *segment = geometry_segment (geometry, at);
          PieceForm form
              = geometry_piece_form (geometry, segment, segment->a, segment->b - segment->a);
          Run run = { segment->a, segment->b, (gint64) form.lo + form.hi };

          g_array_append_val (mirror->runs, run);
        }
    }
}

Mirror *
mirror_new (const Geometry *geometry, const Wall *wall, const Laying *laying)
{
  Mirror *mirror;

  if (laying->rules[RULE_SYMMETRY_WALL].keep == KEEP_OFF
      && laying->rules[RULE_SYMMETRY_OPENINGS].keep == KEEP_OFF)
    return NULL;
  mirror = g_new0 (Mirror, 1);
  mirror->axes = g_array_new (FALSE, FALSE, sizeof (Axis));
  mirror->runs = g_array_new (FALSE, FALSE, sizeof (Run));
  mirror->firsts = g_array_new (FALSE, FALSE, sizeof (gint32));
  add_axes (mirror, geometry, wall, laying);
  add_runs (mirror, geometry);
  return mirror;
}

void
mirror_free (Mirror *mirror)
{
  if (mirror == NULL)
    return;
  g_array_unref (mirror->axes);
  g_array_unref (mirror->runs);
  g_array_unref (mirror->firsts);
  g_free (mirror);
}

const GArray *
mirror_axes (const Geometry *geometry)
{
  return geometry->mirror->axes;
}

gboolean
mirror_asks (const Geometry *geometry, const Axis *axis, gint32 course, Length face, Length *place)
{
  *place = axis->twice - face + geometry->joint;
  return course >= axis->first && course <= axis->last && face - geometry->joint >= axis->from
         && face <= axis->to;
}

/* --- runs --- */

static const Run *
course_runs (const Mirror *mirror, gint32 course, gint32 *n)
{
  gint32 first = g_array_index (mirror->firsts, gint32, course - 1);

  *n = g_array_index (mirror->firsts, gint32, course) - first;
  return *n > 0 ? &g_array_index (mirror->runs, Run, first) : NULL;
}

/* Nearer to its end than the tolerance, a place is the end. */
static gboolean
is_inside (const Geometry *geometry, Length a, Length b, Length face)
{
  return face - geometry->joint > a + MIRROR_TOLERANCE && face < b - MIRROR_TOLERANCE;
}

/* How many runs lie under one of them at a place. */
static gint32
level_of (const Geometry *geometry, const Run *runs, gint32 n, gint32 run, Length face)
{
  gint32 level = 0;

  for (gint32 i = 0; n > 1 && i < n; i++)
    level += runs[i].middle < runs[run].middle && is_inside (geometry, runs[i].a, runs[i].b, face);
  return level;
}

gboolean
mirror_faces (const Geometry *geometry, const Segment *segment, Length face, const Segment *other,
              Length place)
{
  gint32 n;
  const Run *runs = course_runs (geometry->mirror, segment->course, &n);

  return is_inside (geometry, other->a, other->b, place)
         && level_of (geometry, runs, n, segment->index, face)
                == level_of (geometry, runs, n, other->index, place);
}

/* --- what is unmatched --- */

gint32
mirror_segments (const Geometry *geometry, gint32 course, gint32 *first)
{
  gint32 low = 0, high = (gint32) geometry->segments->len, n = 0;

  while (low < high)
    {
      gint32 middle = low + (high - low) / 2;

      if (geometry_segment (geometry, middle)->course < course)
        low = middle + 1;
      else
        high = middle;
    }
  *first = low;
  while (low + n < (gint32) geometry->segments->len
         && geometry_segment (geometry, low + n)->course == course)
    n++;
  return n;
}

static gint
compare_perpends (gconstpointer a, gconstpointer b)
{
  const Perpend *p = a, *q = b;

  if (p->face != q->face)
    return (p->face > q->face) - (p->face < q->face);
  return (p->run > q->run) - (p->run < q->run);
}

static GArray *
course_perpends (const Geometry *geometry, gint32 course, const Pattern *patterns)
{
  GArray *perpends = g_array_new (FALSE, FALSE, sizeof (Perpend));
  gint32 first, n = mirror_segments (geometry, course, &first);

  for (gint32 i = 0; i < n; i++)
    {
      const Segment *segment = geometry_segment (geometry, first + i);

      for (gint32 k = 0; k < pattern_n_perpends (segment, &patterns[i]); k++)
        {
          Perpend perpend = { pattern_perpend (segment, &patterns[i], k), segment->index };

          g_array_append_val (perpends, perpend);
        }
    }
  g_array_sort (perpends, compare_perpends);
  return perpends;
}

/* From a place to the nearest perpend of a run, or to where a perpend would be its end. */
static Length
off_in_run (const Geometry *geometry, const GArray *perpends, const Run *runs, gint32 run,
            Length place)
{
  const Perpend *all = (const Perpend *) (gpointer) perpends->data;
  Length off = MIN (place - runs[run].a, runs[run].b + geometry->joint - place);
  gint32 low = 0, high = (gint32) perpends->len;

  while (low < high)
    {
      gint32 middle = low + (high - low) / 2;

      if (all[middle].face < place)
        low = middle + 1;
      else
        high = middle;
    }
  for (gint32 i = low; i < (gint32) perpends->len && all[i].face - place < off; i++)
    if (all[i].run == run)
      off = all[i].face - place;
  for (gint32 i = low - 1; i >= 0 && place - all[i].face < off; i--)
    if (all[i].run == run)
      off = place - all[i].face;
  return off;
}

/* The same in all runs that the image of a perpend may be in; -1: there is none. */
static Length
off_in_course (const Geometry *geometry, gint32 course, const GArray *perpends,
               const Perpend *perpend, Length place)
{
  gint32 n;
  const Run *runs = course_runs (geometry->mirror, course, &n);
  gint32 level = level_of (geometry, runs, n, perpend->run, perpend->face);
  Length off = -1;

  for (gint32 i = 0; i < n; i++)
    if (is_inside (geometry, runs[i].a, runs[i].b, place)
        && level_of (geometry, runs, n, i, place) == level)
      {
        Length is = off_in_run (geometry, perpends, runs, i, place);

        off = off < 0 ? is : MIN (off, is);
      }
  return off;
}

/* What one perpend misses of one rule. */
static void
find_unmatched (const Geometry *geometry, gint32 course, const GArray *perpends,
                const Perpend *perpend, gint32 rule, GArray *found)
{
  const GArray *axes = geometry->mirror->axes;
  Unmatched least = { .off = -1 };

  for (guint i = 0; i < axes->len; i++)
    {
      const Axis *axis = &g_array_index (axes, Axis, i);
      Length place, off;

      if (axis->rule != rule || !mirror_asks (geometry, axis, course, perpend->face, &place))
        continue;
      off = off_in_course (geometry, course, perpends, perpend, place);
      if (off > MIRROR_TOLERANCE && (least.off < 0 || off < least.off))
        least = (Unmatched){ rule, axis->must, perpend->face, place, off };
    }
  if (least.off >= 0)
    g_array_append_val (found, least);
}

void
mirror_unmatched (const Geometry *geometry, gint32 course, const Pattern *patterns, GArray *found)
{
  g_autoptr (GArray) perpends = course_perpends (geometry, course, patterns);

  for (guint i = 0; i < perpends->len; i++)
    for (gint32 rule = RULE_SYMMETRY_WALL; rule <= RULE_SYMMETRY_OPENINGS; rule++)
      find_unmatched (geometry, course, perpends, &g_array_index (perpends, Perpend, i), rule,
                      found);
}

Cost
mirror_cost (const Unmatched *unmatched)
{
  return unmatched->must ? COST_BREACH : COST_WISH * rules_price (unmatched->rule);
}
