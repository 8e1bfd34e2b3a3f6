/* segment.c - the unbroken runs of a wall's courses, and what openings leave of them */
#include "bond/segment.h"

#include <string.h>

#include "bond/gauge.h"
#include "bond/mirror.h"
#include "bond/pinned.h"
#include "bond/profile.h"
#include "bond/rule.h"
#include "bond/stands.h"

#define MAX_GAPS 8 /* free intervals, one above another, kept at one place of a course */

/* The free height between two neighbouring jambs of a course. */
typedef struct
{
  Length from, to;
  gint32 n;
  gint32 primary;     /* -1: nothing is free */
  gint32 sloped;      /* the gap under a slope; -1: none is */
  gint32 line;        /* that slope, in Geometry.lines */
  Length left, right; /* and its height at both ends */
  Length lo[MAX_GAPS], hi[MAX_GAPS];
  gint32 before[MAX_GAPS], after[MAX_GAPS]; /* the gap next door that it runs on in, or -1 */
} Stretch;

typedef struct
{
  const Wall *wall;
  Geometry *geometry;
  Profile profile; /* of the course; wall NULL where that has no top and no footing to look at */
  gint32 course;
  Length bottom, top;
  Length from, to;
  gint32 part;       /* of the wall that from .. to is in */
  Length start;      /* of that part's regular bond */
  gboolean over;     /* it is no course, but what is left over the last one: all packed */
  GArray *stretches; /* Stretch */
} CourseWork;

static gint
compare_lengths (gconstpointer a, gconstpointer b)
{
  Length p = *(const Length *) a, q = *(const Length *) b;

  return (p > q) - (p < q);
}

static gint
compare_by_sill (gconstpointer a, gconstpointer b)
{
  const Opening *p = *(const Opening *const *) a, *q = *(const Opening *const *) b;

  return (p->sill > q->sill) - (p->sill < q->sill);
}

static gboolean
opening_meets (const CourseWork *work, const Opening *opening)
{
  return opening->sill < work->top && opening_head (opening) > work->bottom && opening->x < work->to
         && opening_right (opening) > work->from;
}

/* `left` and `right`: the top at both ends. */
static void
add_packing (CourseWork *work, Length from, Length to, Length lo, Length left, Length right)
{
  Packing packing
      = { work->course, from, to - from, lo, MAX (left, right) - lo, left - lo, right - lo };

  g_array_append_val (work->geometry->packings, packing);
}

static void
stretch_add (CourseWork *work, Stretch *stretch, Length lo, Length hi)
{
  /* A whole unit may be as thin as a joint. */
  gboolean thin = hi - lo <= GAUGE_PACKING_MAX && hi - lo < work->geometry->unit_height;

  if (hi <= lo)
    return;
  if (thin || work->over || stretch->n == MAX_GAPS)
    {
      add_packing (work, stretch->from, stretch->to, lo, hi, hi);
      return;
    }
  stretch->lo[stretch->n] = lo;
  stretch->hi[stretch->n] = hi;
  stretch->before[stretch->n] = stretch->after[stretch->n] = -1;
  if (stretch->primary < 0
      || hi - lo > stretch->hi[stretch->primary] - stretch->lo[stretch->primary])
    stretch->primary = stretch->n;
  stretch->n++;
}

/* What is left under a slope: a wedge that is packed, or a gap. */
static void
stretch_add_sloped (CourseWork *work, Stretch *stretch, Length lo, const ProfilePart *part)
{
  Length unit = work->geometry->unit_height;
  Length high = MAX (part->left, part->right), low = MIN (part->left, part->right);

  if (high <= lo)
    return;
  if (work->over || stretch->n == MAX_GAPS || low < lo + profile_toe (&work->profile, &part->line))
    {
      add_packing (work, stretch->from, stretch->to, lo, MAX (part->left, lo),
                   MAX (part->right, lo));
      return;
    }
  stretch->sloped = stretch->n;
  stretch->line = (gint32) work->geometry->lines->len;
  stretch->left = part->left;
  stretch->right = part->right;
  if (stretch->line > 0
      && memcmp (&g_array_index (work->geometry->lines, TopLine, stretch->line - 1), &part->line,
                 sizeof (TopLine))
             == 0)
    stretch->line--;
  else
    g_array_append_val (work->geometry->lines, part->line);
  stretch_add (work, stretch, lo, MIN (high, lo + unit - 1));
}

/* Where what is free begins over the openings between two jambs, which are known by sill. */
static Length
over_openings (const GPtrArray *openings, Length from, Length to, Length bottom)
{
  Length z = bottom;

  for (guint i = 0; i < openings->len; i++)
    {
      const Opening *opening = g_ptr_array_index (openings, i);

      if (opening->x < to && opening_right (opening) > from)
        z = MAX (z, opening_head (opening));
    }
  return z;
}

/* What openings (by sill) leave free between two jambs. */
static Stretch
stretch_of (CourseWork *work, GPtrArray *openings, Length from, Length to)
{
  Stretch stretch = { .from = from, .to = to, .primary = -1, .sloped = -1 };
  ProfilePart part = { work->bottom, work->top, work->top, { 0, 0, 0, 0 } };
  Length z;

  if (work->profile.wall != NULL)
    part = profile_part (&work->profile, from, to);
  z = part.base;

  for (guint i = 0; i < openings->len; i++)
    {
      const Opening *opening = g_ptr_array_index (openings, i);

      if (opening->x >= to || opening_right (opening) <= from)
        continue;
      stretch_add (work, &stretch, z, MIN (opening->sill, work->top));
      z = MAX (z, opening_head (opening));
    }
  if (part.left == part.right)
    stretch_add (work, &stretch, z, part.left);
  else
    stretch_add_sloped (work, &stretch, z, &part);
  return stretch;
}

/* Jambs where a slope comes so low that no piece goes on, and where it ends. */
static void
add_toes (const CourseWork *work, const GPtrArray *openings, GArray *jambs)
{
  guint n = jambs->len;

  for (guint i = 0; i + 1 < n; i++)
    {
      Length from = g_array_index (jambs, Length, i), to = g_array_index (jambs, Length, i + 1);
      ProfilePart part;

      if (from >= to)
        continue;
      part = profile_part (&work->profile, from, to);
      if (part.left != part.right)
        profile_add_toe (&work->profile, &part.line, over_openings (openings, from, to, part.base),
                         from, to, jambs);
    }
  g_array_sort (jambs, compare_lengths);
}

static void
find_stretches (CourseWork *work)
{
  g_autoptr (GPtrArray) openings = g_ptr_array_new ();
  g_autoptr (GArray) jambs = g_array_new (FALSE, FALSE, sizeof (Length));

  if (work->from >= work->to) /* the joints at two corners leave no room */
    return;
  g_array_append_val (jambs, work->from);
  g_array_append_val (jambs, work->to);
  for (guint i = 0; i < work->wall->openings->len; i++)
    {
      const Opening *opening = wall_opening_at (work->wall, i);
      Length left, right;

      if (!opening_meets (work, opening))
        continue;
      left = MAX (opening->x, work->from);
      right = MIN (opening_right (opening), work->to);
      g_array_append_val (jambs, left);
      g_array_append_val (jambs, right);
      g_ptr_array_add (openings, (gpointer) opening);
    }
  if (work->profile.wall != NULL)
    profile_add_breaks (&work->profile, work->from, work->to, jambs);
  g_array_sort (jambs, compare_lengths);
  g_ptr_array_sort (openings, compare_by_sill);
  if (work->profile.wall != NULL)
    add_toes (work, openings, jambs);
  for (guint i = 0; i + 1 < jambs->len; i++)
    {
      Length from = g_array_index (jambs, Length, i), to = g_array_index (jambs, Length, i + 1);

      if (from < to)
        {
          Stretch stretch = stretch_of (work, openings, from, to);

          g_array_append_val (work->stretches, stretch);
        }
    }
}

static const Stretch *
stretch_at (const CourseWork *work, gint i)
{
  if (i < 0 || i >= (gint) work->stretches->len)
    return NULL;
  return &g_array_index (work->stretches, Stretch, i);
}

static Length
overlap (Length lo1, Length hi1, Length lo2, Length hi2)
{
  return MIN (hi1, hi2) - MAX (lo1, lo2);
}

/* How much of gap `k` of `p` and gap `m` of `q`, on its right, is side by side. */
static Length
shared_height (const Stretch *p, gint32 k, const Stretch *q, gint32 m)
{
  return overlap (p->lo[k], k == p->sloped ? p->right : p->hi[k], q->lo[m],
                  m == q->sloped ? q->left : q->hi[m]);
}

/* Whether the course runs on from one stretch into the next. */
static gboolean
runs_on (const CourseWork *work, const Stretch *p, const Stretch *q)
{
  Length shared;

  if (p == NULL || q == NULL || p->primary < 0 || q->primary < 0)
    return FALSE;
  shared = shared_height (p, p->primary, q, q->primary);
  return shared > GAUGE_PACKING_MAX || shared == work->top - work->bottom;
}

/* A step of a run that is made up. */
typedef struct
{
  Step step;
  gint32 slope; /* in Geometry.lines; -1: none */
} RunStep;

static Length
step_top (const Geometry *geometry, gint32 course, const Step *step, gint32 slope, Length x)
{
  if (slope < 0)
    return step->hi;
  return MIN (top_line_at (&g_array_index (geometry->lines, TopLine, slope), x),
              g_array_index (geometry->courses, Course, course - 1).top);
}

Length
geometry_step_top (const Geometry *geometry, const Segment *segment, const Step *step, Length x)
{
  return step_top (geometry, segment->course, step, geometry_slope (geometry, step), x);
}

/* Whether a run is under slopes alone and nowhere as high as the thinnest strip. */
static gboolean
is_tip (const CourseWork *work, const RunStep *steps, gint32 n_steps)
{
  for (gint32 i = 0; i < n_steps; i++)
    if (steps[i].slope < 0 || steps[i].step.hi - steps[i].step.lo >= profile_least (&work->profile))
      return FALSE;
  return TRUE;
}

void
segment_judge (const Geometry *geometry, Segment *segment)
{
  const Step *first = geometry_step (geometry, segment->first_step);

  segment->uniform = segment->n_steps == 1;
  segment->full = segment->uniform && first->hi - first->lo == geometry->unit_height;
  segment->raked = FALSE;
  for (gint32 i = 0; i < segment->n_steps; i++)
    segment->raked |= geometry_slope (geometry, &first[i]) >= 0;
}

static void
pack_step (CourseWork *work, const Step *step, gint32 slope)
{
  add_packing (work, step->from, step->to, step->lo,
               step_top (work->geometry, work->course, step, slope, step->from),
               step_top (work->geometry, work->course, step, slope, step->to));
}

/* A stretch of `work` too narrow for a piece and its joints is packed, all of it. */
static void
add_segment (CourseWork *work, Length a, Length b, const RunStep *steps, gint32 n_steps)
{
  Geometry *geometry = work->geometry;
  Segment segment = { .course = work->course, .a = a, .b = b };

  segment.part = work->part;
  segment.start = work->start;
  if (b <= a || is_tip (work, steps, n_steps))
    {
      for (gint32 i = 0; i < n_steps; i++)
        pack_step (work, &steps[i].step, steps[i].slope);
      return;
    }
  segment.first_step = (gint32) geometry->steps->len;
  for (gint32 i = 0; i < n_steps; i++)
    {
      Step step = steps[i].step;

      step.from = MAX (step.from, a);
      step.to = MIN (step.to, b);
      if (step.from < step.to) /* not all within a joint */
        geometry_add_step (geometry, &step, steps[i].slope);
    }
  segment.n_steps = (gint32) geometry->steps->len - segment.first_step;
  segment_judge (geometry, &segment);
  g_array_append_val (geometry->segments, segment);
}

/* --- gaps that run on into each other --- */

static gboolean
beside (const Stretch *p, gint32 k, const Stretch *q, gint32 m)
{
  return shared_height (p, k, q, m) > 0;
}

/* Gap `k` of `p` and gap `m` of `q` may be one segment: each goes on in no other gap, and what else
 * stands beside either can make room for a joint, since it ends at this jamb. */
static gboolean
may_tie (const Stretch *p, gint32 k, const Stretch *q, gint32 m)
{
  if (k == p->primary || m == q->primary || p->after[k] >= 0 || q->before[m] >= 0
      || shared_height (p, k, q, m) <= GAUGE_PACKING_MAX)
    return FALSE;
  for (gint32 i = 0; i < q->n; i++)
    if (q->before[i] >= 0 && beside (p, k, q, i))
      return FALSE;
  for (gint32 i = 0; i < p->n; i++)
    if (p->after[i] >= 0 && beside (p, i, q, m))
      return FALSE;
  return TRUE;
}

static void
tie (Stretch *p, gint32 k, Stretch *q, gint32 m)
{
  p->after[k] = m;
  q->before[m] = k;
}

/* The run first, then the strips above or below it. */
static void
tie_stretches (CourseWork *work, gint i)
{
  Stretch *p = &g_array_index (work->stretches, Stretch, i);
  Stretch *q = &g_array_index (work->stretches, Stretch, i + 1);

  if (runs_on (work, p, q))
    tie (p, p->primary, q, q->primary);
  for (gint32 k = 0; k < p->n; k++)
    for (gint32 m = 0; m < q->n; m++)
      if (may_tie (p, k, q, m))
        tie (p, k, q, m);
}

/* Of two gaps side by side that are not one segment, one makes room for the joint between: the left
 * one where the right one goes on to the left itself, else the right one. */
static gboolean
ends_in_joint (const Stretch *p, gint32 k, const Stretch *q)
{
  for (gint32 m = 0; p->after[k] < 0 && q != NULL && m < q->n; m++)
    if (q->before[m] >= 0 && beside (p, k, q, m))
      return TRUE;
  return FALSE;
}

static gboolean
begins_in_joint (const Stretch *p, const Stretch *q, gint32 m)
{
  for (gint32 k = 0; q->before[m] < 0 && p != NULL && k < p->n; k++)
    if (beside (p, k, q, m) && !ends_in_joint (p, k, q))
      return TRUE;
  return FALSE;
}

static void
add_step (GArray *steps, const Stretch *stretch, gint32 k)
{
  RunStep step = { { stretch->from, stretch->to, stretch->lo[k], stretch->hi[k] },
                   k == stretch->sloped ? stretch->line : -1 };
  RunStep *last = steps->len > 0 ? &g_array_index (steps, RunStep, steps->len - 1) : NULL;

  if (last != NULL && last->step.lo == step.step.lo && last->slope == step.slope
      && (step.slope >= 0 || last->step.hi == step.step.hi))
    {
      last->step.to = step.step.to;
      last->step.hi = MAX (last->step.hi, step.step.hi);
    }
  else
    g_array_append_val (steps, step);
}

/* The segment that begins in gap `k` of stretch `i`. */
static void
add_run (CourseWork *work, gint i, gint32 k)
{
  g_autoptr (GArray) steps = g_array_new (FALSE, FALSE, sizeof (RunStep));
  const Stretch *stretch = stretch_at (work, i);
  Length joint = work->geometry->joint, a = stretch->from, b;

  if (begins_in_joint (stretch_at (work, i - 1), stretch, k))
    a += joint;
  add_step (steps, stretch, k);
  while (stretch->after[k] >= 0)
    {
      k = stretch->after[k];
      stretch = stretch_at (work, ++i);
      add_step (steps, stretch, k);
    }
  b = stretch->to;
  if (ends_in_joint (stretch, k, stretch_at (work, i + 1)))
    b -= joint;
  add_segment (work, a, b, (const RunStep *) (gpointer) steps->data, (gint32) steps->len);
}

/* The course itself, or the gaps above or below it between jambs. */
static void
add_runs (CourseWork *work, gboolean primary)
{
  for (gint i = 0; i < (gint) work->stretches->len; i++)
    {
      const Stretch *stretch = stretch_at (work, i);

      for (gint32 k = 0; k < stretch->n; k++)
        if ((k == stretch->primary) == primary && stretch->before[k] < 0)
          add_run (work, i, k);
    }
}

static gint
compare_segments (gconstpointer a, gconstpointer b)
{
  const Segment *p = a, *q = b;

  if (p->a != q->a)
    return (p->a > q->a) - (p->a < q->a);
  if (p->b != q->b)
    return (p->b > q->b) - (p->b < q->b);
  return (p->first_step > q->first_step) - (p->first_step < q->first_step);
}

/* The runs of one stretch of the course. */
static void
add_span (CourseWork *work)
{
  g_array_set_size (work->stretches, 0);
  find_stretches (work);
  for (gint i = 0; i + 1 < (gint) work->stretches->len; i++)
    tie_stretches (work, i);
  add_runs (work, TRUE);
  add_runs (work, FALSE);
}

/* The end of the wall, or, where it is butted to another, the face that it begins at; beyond a
 * movement joint that one's face. */
static Length
start_of_regular (const Wall *wall, const Laying *laying, Length within)
{
  const End *end = &wall->ends[laying->start];
  Length lost = end->ret > 0 && end->through == THROUGH_ALL ? end->ret + laying->head : 0;
  Length from = lost, to = wall->length - lost;

  for (guint i = 0; i < wall->movement_joints->len; i++)
    {
      const MovementJoint *joint = wall_movement_joint_at (wall, i);

      if (joint->x <= within)
        from = MAX (from, movement_joint_right (joint));
      else
        to = MIN (to, joint->x);
    }
  return laying->start == SIDE_LEFT ? from : to + laying->head;
}

static void
add_course (CourseWork *work, const Laying *laying, const GArray *spans)
{
  GArray *segments = work->geometry->segments;
  guint first = segments->len;

  for (guint i = 0; i < spans->len; i++)
    {
      work->from = g_array_index (spans, Span, i).from;
      work->to = g_array_index (spans, Span, i).to;
      work->part = (gint32) wall_part_at (work->wall, work->from);
      work->start = start_of_regular (work->wall, laying, work->from);
      add_span (work);
    }
  if (segments->len > first + 1)
    qsort (&g_array_index (segments, Segment, first), segments->len - first, sizeof (Segment),
           compare_segments);
  for (guint i = first; i < segments->len; i++)
    g_array_index (segments, Segment, i).index = (gint32) (i - first);
}

void
course_ends (const Wall *wall, const Laying *laying, gint32 number, Length bottom, Length *from,
             Length *to)
{
  const End *left = &wall->ends[SIDE_LEFT], *right = &wall->ends[SIDE_RIGHT];

  *from = 0;
  *to = wall->length;
  if (end_stops (left, number, bottom))
    *from = left->ret + laying->head;
  if (end_stops (right, number, bottom))
    *to = wall->length - right->ret - laying->head;
}

static void
cut_span (GArray *spans, Length from, Length to)
{
  for (guint i = spans->len; i-- > 0;)
    {
      Span span = g_array_index (spans, Span, i), after = { MAX (span.from, to), span.to };

      if (from >= span.to || to <= span.from)
        continue;
      g_array_index (spans, Span, i).to = from;
      if (after.from < after.to)
        g_array_insert_val (spans, i + 1, after);
      if (from <= span.from)
        g_array_remove_index (spans, i);
    }
}

GArray *
course_spans (const Wall *wall, const Laying *laying, gint32 number, Length bottom)
{
  GArray *spans = g_array_new (FALSE, FALSE, sizeof (Span));
  Span all;

  course_ends (wall, laying, number, bottom, &all.from, &all.to);
  if (all.from < all.to)
    g_array_append_val (spans, all);
  for (guint i = 0; i < wall->tees->len; i++)
    {
      const Tee *tee = wall_tee_at (wall, i);

      if (tee_stops (tee, number, bottom))
        cut_span (spans, tee->x - laying->head, tee_right (tee) + laying->head);
    }
  for (guint i = 0; i < wall->movement_joints->len; i++)
    {
      const MovementJoint *joint = wall_movement_joint_at (wall, i);

      cut_span (spans, joint->x, movement_joint_right (joint));
    }
  return spans;
}

/* What is left over the last course, its bed joint with it: a course would be too thin. */
static void
pack_top (CourseWork *work, const GArray *spans)
{
  const Course *last;

  if (work->geometry->courses->len == 0)
    return;
  last = &g_array_index (work->geometry->courses, Course, work->geometry->courses->len - 1);
  work->bottom = last->top;
  work->top = work->wall->height;
  work->over = TRUE;
  work->profile.bottom = work->bottom;
  work->profile.top = work->top;
  for (guint i = 0; i < spans->len; i++)
    {
      work->from = g_array_index (spans, Span, i).from;
      work->to = g_array_index (spans, Span, i).to;
      g_array_set_size (work->stretches, 0);
      find_stretches (work);
    }
}

/* Not over a movement joint. */
static gboolean
may_meet (const Geometry *geometry, const Segment *p, const Segment *q)
{
  return p->part == q->part && p->a < q->b + geometry->min_lap && q->a < p->b + geometry->min_lap;
}

/* The first segment of a course at or near segment `i`, or of the next course that has any. */
static guint
first_of_course (const Geometry *geometry, guint i, gint32 course)
{
  while (i > 0 && geometry_segment (geometry, (gint32) i - 1)->course >= course)
    i--;
  while (i < geometry->segments->len && geometry_segment (geometry, (gint32) i)->course < course)
    i++;
  return i;
}

static void
add_links (Geometry *geometry, guint i, gint32 course)
{
  Segment *segment = &g_array_index (geometry->segments, Segment, i);

  for (guint k = first_of_course (geometry, i, course);
       k < geometry->segments->len && geometry_segment (geometry, (gint32) k)->course == course;
       k++)
    {
      gint32 other = (gint32) k;

      if (may_meet (geometry, segment, geometry_segment (geometry, other)))
        {
          g_array_append_val (geometry->links, other);
          segment->n_links++;
        }
    }
}

static void
link_segments (Geometry *geometry)
{
  for (guint i = 0; i < geometry->segments->len; i++)
    {
      Segment *segment = &g_array_index (geometry->segments, Segment, i);

      segment->first_link = (gint32) geometry->links->len;
      add_links (geometry, i, segment->course - 1);
      segment->n_below = segment->n_links;
      add_links (geometry, i, segment->course + 1);
    }
}

static gboolean
same_steps (const Geometry *geometry, const Segment *p, const Segment *q)
{
  Length base_p = geometry_step (geometry, p->first_step)->lo;
  Length base_q = geometry_step (geometry, q->first_step)->lo;

  for (gint32 i = 0; i < p->n_steps; i++)
    {
      const Step *s = geometry_step (geometry, p->first_step + i);
      const Step *t = geometry_step (geometry, q->first_step + i);

      if (s->from != t->from || s->to != t->to || s->lo - base_p != t->lo - base_q
          || s->hi - base_p != t->hi - base_q
          || (geometry_slope (geometry, s) < 0) != (geometry_slope (geometry, t) < 0))
        return FALSE;
    }
  return TRUE;
}

/* Whether they can be laid in the same ways, at the same costs. */
static gboolean
is_alike (const Geometry *geometry, const Segment *p, const Segment *q)
{
  return p->a == q->a && p->b == q->b && p->n_steps == q->n_steps
         && p->joined_left == q->joined_left && p->set == q->set && same_steps (geometry, p, q)
         && rules_same (geometry, p, q);
}

static void
find_alike (Geometry *geometry)
{
  g_autoptr (GArray) firsts = g_array_new (FALSE, FALSE, sizeof (gint32));

  for (gint32 i = 0; i < (gint32) geometry->segments->len; i++)
    {
      gint32 first = i;

      for (guint k = 0; k < firsts->len && first == i; k++)
        if (is_alike (geometry, geometry_segment (geometry, g_array_index (firsts, gint32, k)),
                      geometry_segment (geometry, i)))
          first = g_array_index (firsts, gint32, k);
      if (first == i)
        g_array_append_val (firsts, i);
      g_array_append_val (geometry->like, first);
    }
}

Geometry *
geometry_new (const Wall *wall, const Block *block, const Laying *laying)
{
  return geometry_new_over (wall, block, laying, wall_standing (wall));
}

Geometry *
geometry_new_over (const Wall *wall, const Block *block, const Laying *laying, gint32 held)
{
  Geometry *geometry = g_new0 (Geometry, 1);
  gint32 n = gauge_n_courses (wall, block, laying);
  CourseWork work = { .wall = wall, .geometry = geometry };
  GArray *spans = g_array_new (FALSE, FALSE, sizeof (Span));

  geometry->held = held;
  geometry->unit = block->length;
  geometry->unit_height = block->height;
  geometry->joint = laying->head;
  geometry->min_piece = laying->min_piece;
  geometry->min_lap = laying->min_lap;
  geometry->min_rip = laying->min_rip;
  geometry->min_raked = laying->min_raked;
  geometry->wanted_lap = rules_wanted_lap (block, laying);
  geometry->kerf = laying->kerf;
  geometry->regular = laying->aim == AIM_REGULAR;
  geometry->courses = g_array_new (FALSE, TRUE, sizeof (Course));
  geometry->segments = g_array_new (FALSE, TRUE, sizeof (Segment));
  geometry->steps = g_array_new (FALSE, TRUE, sizeof (Step));
  geometry->slopes = g_array_new (FALSE, FALSE, sizeof (gint32));
  geometry->lines = g_array_new (FALSE, TRUE, sizeof (TopLine));
  geometry->links = g_array_new (FALSE, TRUE, sizeof (gint32));
  geometry->packings = g_array_new (FALSE, TRUE, sizeof (Packing));
  geometry->marks = g_array_new (FALSE, TRUE, sizeof (Mark));
  geometry->pins = g_array_new (FALSE, TRUE, sizeof (LaidPin));
  geometry->like = g_array_new (FALSE, FALSE, sizeof (gint32));
  work.stretches = g_array_new (FALSE, FALSE, sizeof (Stretch));
  for (gint32 number = 1; number <= n; number++)
    {
      Course course = { .number = number, .stands = number <= wall_standing (wall) };

      course.bottom = work.bottom = gauge_bottom (wall, block, laying, number);
      course.top = work.top = MIN (gauge_top (wall, block, laying, number), wall->height);
      work.course = number;
      if (!profile_is_plain (wall))
        work.profile = (Profile){ wall, block, laying, work.bottom, work.top };
      g_array_append_val (geometry->courses, course);
      g_clear_pointer (&spans, g_array_unref);
      spans = course_spans (wall, laying, number, course.bottom);
      add_course (&work, laying, spans);
    }
  pack_top (&work, spans);
  g_clear_pointer (&spans, g_array_unref);
  g_array_unref (work.stretches);
  rules_mark (geometry, wall, laying);
  geometry->mirror = mirror_new (geometry, wall, laying);
  stands_split (geometry, wall);
  pinned_split (geometry, wall);
  link_segments (geometry);
  find_alike (geometry);
  return geometry;
}

void
geometry_free (Geometry *geometry)
{
  if (geometry == NULL)
    return;
  g_array_unref (geometry->courses);
  g_array_unref (geometry->segments);
  g_array_unref (geometry->steps);
  g_array_unref (geometry->slopes);
  g_array_unref (geometry->lines);
  g_array_unref (geometry->links);
  g_array_unref (geometry->packings);
  g_array_unref (geometry->marks);
  g_array_unref (geometry->pins);
  mirror_free (geometry->mirror);
  g_array_unref (geometry->like);
  g_free (geometry);
}

/* Under a slope a piece's bounding box ends where that does. */
static Length
highest_of (const Geometry *geometry, const Segment *segment, Length from, Length to)
{
  Length high = G_MININT32;

  for (gint32 i = 0; i < segment->n_steps; i++)
    {
      const Step *step = geometry_step (geometry, segment->first_step + i);

      if (step->to <= from || step->from >= to)
        continue;
      high = MAX (high, geometry_step_top (geometry, segment, step, MAX (from, step->from)));
      high = MAX (high, geometry_step_top (geometry, segment, step, MIN (to, step->to)));
    }
  return high;
}

gboolean
geometry_is_raked (const Geometry *geometry, const Segment *segment, Length x, Length length)
{
  for (gint32 i = 0; i < segment->n_steps; i++)
    {
      const Step *step = geometry_step (geometry, segment->first_step + i);

      if (step->to > x && step->from < x + length && geometry_slope (geometry, step) >= 0)
        return TRUE;
    }
  return FALSE;
}

static PieceForm
form_over_steps (const Geometry *geometry, const Segment *segment, Length x, Length length)
{
  PieceForm form = { G_MAXINT32, G_MININT32, 0, TRUE, FALSE };
  const Step *first = NULL;

  for (gint32 i = 0; i < segment->n_steps; i++)
    {
      const Step *step = geometry_step (geometry, segment->first_step + i);

      if (step->to <= x)
        continue;
      if (step->from >= x + length)
        break;
      if (first == NULL)
        first = step;
      form.rectangle = form.rectangle && step->lo == first->lo && step->hi == first->hi;
      form.lo = MIN (form.lo, step->lo);
      form.hi = MAX (form.hi, step->hi);
      form.thickest = MAX (form.thickest, step->hi - step->lo);
    }
  form.whole = form.rectangle && length == geometry->unit && form.thickest == geometry->unit_height;
  return form;
}

/* Apart, since few segments are. */
static G_GNUC_NO_INLINE PieceForm
raked_form (const Geometry *geometry, const Segment *segment, Length x, Length length)
{
  PieceForm form = form_over_steps (geometry, segment, x, length);

  form.hi = highest_of (geometry, segment, x, x + length);
  return form;
}

PieceForm
geometry_piece_form (const Geometry *geometry, const Segment *segment, Length x, Length length)
{
  if (G_UNLIKELY (segment->raked))
    return raked_form (geometry, segment, x, length);
  if (segment->uniform)
    {
      const Step *first = geometry_step (geometry, segment->first_step);

      return (PieceForm){ first->lo, first->hi, first->hi - first->lo, TRUE,
                          segment->full && length == geometry->unit };
    }
  return form_over_steps (geometry, segment, x, length);
}
