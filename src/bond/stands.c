/* stands.c - what stands of a wall: where it parts the runs, and how a layout is written down */
#include "bond/stands.h"

#include "bond/gauge.h"
#include "bond/pinned.h"

/* --- which run a perpend is of --- */

static gboolean
spans (const Geometry *geometry, const Segment *run, Length face)
{
  return run->a < face - geometry->joint && face < run->b;
}

static gboolean
is_at_height (const Geometry *geometry, const Segment *run, Length face, Length z)
{
  PieceForm form = geometry_piece_form (geometry, run, face, 1);

  return z >= form.lo && z < form.hi;
}

/* Of several runs one above the other the longer one is meant, or else the lower, as of a pin. */
static gboolean
goes_first (const Geometry *geometry, const Segment *p, const Segment *q)
{
  if (p->b - p->a != q->b - q->a)
    return p->b - p->a > q->b - q->a;
  return geometry_step (geometry, p->first_step)->lo < geometry_step (geometry, q->first_step)->lo;
}

/* Whether the perpend is one of run `i`, of those of a course from `first` on. */
static gboolean
is_of_run (const Geometry *geometry, guint first, guint n, guint i, const LaidPerpend *perpend)
{
  const Segment *run = geometry_segment (geometry, (gint32) i);

  if (!spans (geometry, run, perpend->x))
    return FALSE;
  if (perpend->z != PERPEND_ALL)
    return is_at_height (geometry, run, perpend->x, perpend->z);
  for (guint k = first; k < first + n; k++)
    if (k != i && spans (geometry, geometry_segment (geometry, (gint32) k), perpend->x)
        && goes_first (geometry, geometry_segment (geometry, (gint32) k), run))
      return FALSE;
  return TRUE;
}

/* --- parting --- */

static void
add_packing (Geometry *geometry, const Segment *run, Length from, Length to)
{
  for (gint32 i = 0; i < run->n_steps; i++)
    {
      const Step *step = geometry_step (geometry, run->first_step + i);
      const Length x = MAX (step->from, from), end = MIN (step->to, to);
      Packing packing = { .course = run->course, .x = x, .length = end - x, .bottom = step->lo };

      if (packing.length <= 0)
        continue;
      packing.left = geometry_step_top (geometry, run, step, x) - step->lo;
      packing.right = geometry_step_top (geometry, run, step, end) - step->lo;
      packing.height = MAX (packing.left, packing.right);
      g_array_append_val (geometry->packings, packing);
    }
}

static Segment *
add_standing (Geometry *geometry, GArray *parts, const Segment *run, Length a, Length b)
{
  Segment *part;

  pinned_add_part (geometry, parts, run, a, b);
  part = &g_array_index (parts, Segment, parts->len - 1);
  part->set = part->stands = TRUE;
  part->n_perpend_marks = part->n_marks = 0;
  return part;
}

/* One piece, or, where there is more than a unit of room, one and what is beside it. */
static void
add_room (Geometry *geometry, GArray *parts, const Segment *run, Length a, Length b)
{
  const gboolean at_right = a == run->a && b != run->b;
  const Length left = MAX (b - a - geometry->unit, 0);
  const gboolean anew = left - geometry->joint >= geometry->min_piece;

  if (left == 0)
    add_standing (geometry, parts, run, a, b);
  else if (at_right)
    {
      if (anew)
        pinned_add_part (geometry, parts, run, a, a + left - geometry->joint);
      else
        add_packing (geometry, run, a, a + left);
      /* No perpend is beside what is packed at the end of a run. */
      add_standing (geometry, parts, run, a + left, b)->joined_left = anew;
    }
  else
    {
      add_standing (geometry, parts, run, a, b - left);
      if (anew)
        pinned_add_part (geometry, parts, run, b - left + geometry->joint, b);
      else
        add_packing (geometry, run, b - left, b);
    }
}

/* Perpends so near to each other or to an end that no piece is between are passed over. */
static void
part_run (Geometry *geometry, GArray *parts, guint first, guint n, guint i, const LaidCourse *laid)
{
  const Segment run = *geometry_segment (geometry, (gint32) i);
  Length a = run.a;

  for (guint k = 0; k < laid->perpends->len; k++)
    {
      const LaidPerpend *perpend = &g_array_index (laid->perpends, LaidPerpend, k);

      if (perpend->x - geometry->joint <= a || !is_of_run (geometry, first, n, i, perpend))
        continue;
      add_room (geometry, parts, &run, a, perpend->x - geometry->joint);
      a = perpend->x;
    }
  add_room (geometry, parts, &run, a, run.b);
}

void
stands_split (Geometry *geometry, const Wall *wall)
{
  GArray *parts;
  guint i = 0;

  if (geometry->held == 0)
    return;
  parts = g_array_new (FALSE, TRUE, sizeof (Segment));
  for (gint32 course = 1; course <= geometry->held; course++)
    {
      guint first = i, n;

      while (i < geometry->segments->len
             && geometry_segment (geometry, (gint32) i)->course == course)
        i++;
      n = i - first;
      for (guint k = first; k < first + n; k++)
        part_run (geometry, parts, first, n, k, built_course (wall->built, course));
    }
  for (; i < geometry->segments->len; i++)
    g_array_append_val (parts, *geometry_segment (geometry, (gint32) i));
  g_array_unref (geometry->segments);
  geometry->segments = parts;
}

/* --- writing down --- */

/* Where the pieces of one run of a course begin and end. */
typedef struct
{
  gint32 segment;
  Length a, b;
} Extent;

static GArray *
extents_of (const Layout *layout, const Course *course)
{
  GArray *extents = g_array_new (FALSE, FALSE, sizeof (Extent));

  for (gint32 i = course->first; i < course->first + course->n_pieces; i++)
    {
      const Piece *piece = layout_piece (layout, (guint) i);
      Extent extent = { piece->segment, piece->x, piece->x + piece->length };
      guint k = 0;

      while (k < extents->len && g_array_index (extents, Extent, k).segment != piece->segment)
        k++;
      if (k == extents->len)
        g_array_append_val (extents, extent);
      else
        g_array_index (extents, Extent, k).b = extent.b;
    }
  return extents;
}

/* The middle of a piece's left face. */
static Length
middle_of_face (const Layout *layout, const Piece *piece)
{
  Length low = piece->bottom, high = piece->bottom + piece->height;

  if (piece->outline >= 0)
    {
      low = G_MAXINT32;
      high = 0;
    }
  for (gint32 i = 0; piece->outline >= 0 && i < piece->n_outline; i++)
    {
      const LayPoint *point
          = &g_array_index (layout->points, LayPoint, (guint) (piece->outline + i));

      if (point->x != piece->x)
        continue;
      low = MIN (low, point->z);
      high = MAX (high, point->z);
    }
  return low + (high - low) / 2;
}

static LaidPerpend
perpend_of (const Layout *layout, const GArray *extents, const Piece *piece)
{
  LaidPerpend perpend = { piece->x, PERPEND_ALL };

  for (guint i = 0; i < extents->len; i++)
    {
      const Extent *extent = &g_array_index (extents, Extent, i);

      if (extent->segment != piece->segment && extent->a < piece->x && piece->x < extent->b)
        perpend.z = middle_of_face (layout, piece);
    }
  return perpend;
}

static int
compare_perpends (gconstpointer a, gconstpointer b)
{
  const LaidPerpend *p = a, *q = b;

  if (p->x != q->x)
    return p->x < q->x ? -1 : 1;
  return (p->z > q->z) - (p->z < q->z);
}

/* Pieces stand from the left; the first of each run begins it. */
static GArray *
perpends_of (const Layout *layout, const Course *course)
{
  GArray *perpends = g_array_new (FALSE, FALSE, sizeof (LaidPerpend));
  g_autoptr (GArray) extents = extents_of (layout, course);

  for (gint32 i = course->first; i < course->first + course->n_pieces; i++)
    {
      const Piece *piece = layout_piece (layout, (guint) i);
      LaidPerpend perpend = perpend_of (layout, extents, piece);
      guint k = 0;

      while (g_array_index (extents, Extent, k).segment != piece->segment)
        k++;
      if (g_array_index (extents, Extent, k).a != piece->x)
        g_array_append_val (perpends, perpend);
    }
  g_array_sort (perpends, compare_perpends);
  return perpends;
}

GArray *
stands_of_layout (const Layout *layout)
{
  GArray *all = g_array_new (FALSE, FALSE, sizeof (LaidCourse));

  g_array_set_clear_func (all, (GDestroyNotify) laid_course_clear);
  for (guint i = 0; i < layout->courses->len; i++)
    {
      const Course *course = layout_course (layout, i);
      LaidCourse laid = { .course = course->number,
                          .perpends = perpends_of (layout, course),
                          .given = LAID_BOTTOM | LAID_OVER,
                          .over = MIN (layout->held, course->number - 1),
                          .bottom = course->bottom };

      g_array_append_val (all, laid);
    }
  return all;
}

/* --- what is still to be laid --- */

Layout *
stands_rest_of_layout (const Layout *layout)
{
  Layout *rest = g_new0 (Layout, 1);

  g_atomic_ref_count_init (&rest->refs);
  rest->wall = layout->wall;
  rest->held = layout->held;
  rest->courses = g_array_new (FALSE, TRUE, sizeof (Course));
  rest->packings = g_array_new (FALSE, TRUE, sizeof (Packing));
  rest->pins = g_array_ref (layout->pins);
  rest->pieces = g_array_new (FALSE, TRUE, sizeof (Piece));
  rest->points = g_array_ref (layout->points);
  rest->breaches = g_array_new (FALSE, TRUE, sizeof (Breach));
  for (guint i = 0; i < layout->courses->len; i++)
    {
      Course course = *layout_course (layout, i);
      const gint32 first = course.first, n = course.n_pieces;

      course.first = (gint32) rest->pieces->len;
      for (gint32 k = first; k < first + n; k++)
        {
          const Piece *piece = layout_piece (layout, (guint) k);

          if (piece->stands)
            continue;
          g_array_append_val (rest->pieces, *piece);
          *(piece->shape == PIECE_WHOLE ? &rest->n_whole : &rest->n_cut) += 1;
        }
      course.n_pieces = (gint32) rest->pieces->len - course.first;
      g_array_append_val (rest->courses, course);
    }
  for (guint i = 0; i < layout->packings->len; i++)
    {
      const Packing *packing = &g_array_index (layout->packings, Packing, i);

      if (!layout_course (layout, (guint) packing->course - 1)->stands)
        g_array_append_val (rest->packings, *packing);
    }
  return rest;
}

/* --- what may still be changed --- */

static Length
top_of_standing (const Wall *wall, const Block *block)
{
  const Laying laying = laying_resolve (&wall->laying, block);

  return gauge_top (wall, block, &laying, wall_standing (wall));
}

gboolean
stands_beside (const Wall *wall, const Block *block, const Opening *opening)
{
  return wall_standing (wall) > 0 && opening->sill < top_of_standing (wall, block);
}

static gboolean
same_ends (const Wall *a, const Wall *b)
{
  for (int side = 0; side < 2; side++)
    if (a->ends[side].ret != b->ends[side].ret || a->ends[side].through != b->ends[side].through)
      return FALSE;
  return TRUE;
}

static gboolean
same_joints (const Wall *a, const Wall *b)
{
  if (a->movement_joints->len != b->movement_joints->len)
    return FALSE;
  for (guint i = 0; i < a->movement_joints->len; i++)
    if (wall_movement_joint_at (a, i)->x != wall_movement_joint_at (b, i)->x
        || wall_movement_joint_at (a, i)->width != wall_movement_joint_at (b, i)->width)
      return FALSE;
  return TRUE;
}

/* Up to the height that stands. */
static gboolean
same_opening (const Opening *a, const Opening *b, Length top)
{
  return a->x == b->x && a->width == b->width && a->sill == b->sill
         && MIN (opening_head (a), top) == MIN (opening_head (b), top);
}

gboolean
stands_in (const Wall *before, const Wall *after, const Block *block)
{
  const Laying was = laying_resolve (&before->laying, block);
  const Laying is = laying_resolve (&after->laying, block);

  if (wall_standing (before) == 0)
    return TRUE;
  if (before->length != after->length || was.first_bed != is.first_bed || !same_ends (before, after)
      || !same_joints (before, after))
    return FALSE;
  for (guint i = 0; i < before->openings->len; i++)
    {
      const Opening *opening = wall_opening_at (before, i);
      const Opening *other = wall_opening (after, opening->id);

      if (stands_beside (before, block, opening)
          && (other == NULL || !same_opening (opening, other, top_of_standing (before, block))))
        return FALSE;
    }
  return TRUE;
}

/* --- laid as before --- */

gint32
stands_held_before (const Wall *wall)
{
  const gint32 n = wall_standing (wall);
  const LaidCourse *last = n > 0 ? built_course (wall->built, n) : NULL;

  return last != NULL && last->given & LAID_OVER ? last->over : n;
}

/* Heights of strips move with courses that were measured: only whether they have one is compared.
 */
static gboolean
same_perpends (const GArray *a, const GArray *b)
{
  if (a->len != b->len)
    return FALSE;
  for (guint i = 0; i < a->len; i++)
    {
      const LaidPerpend *p = &g_array_index (a, LaidPerpend, i);
      const LaidPerpend *q = &g_array_index (b, LaidPerpend, i);

      if (p->x != q->x || (p->z == PERPEND_ALL) != (q->z == PERPEND_ALL))
        return FALSE;
    }
  return TRUE;
}

gboolean
stands_matches (const Layout *layout, const Wall *wall)
{
  for (gint32 i = 1; i <= wall_standing (wall); i++)
    {
      g_autoptr (GArray) perpends = NULL;

      if (i > (gint32) layout->courses->len)
        return FALSE;
      perpends = perpends_of (layout, layout_course (layout, (guint) i - 1));
      if (!same_perpends (perpends, built_course (wall->built, i)->perpends))
        return FALSE;
    }
  return TRUE;
}
