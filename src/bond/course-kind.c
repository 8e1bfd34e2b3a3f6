/* course-kind.c - the courses of a wall that may be laid in the same ways, and the places in them
 */
#include "bond/course-kind.h"

#include <string.h>

#include "bond/pool.h"

#define MOST_STRIPS 16 /* of a course, one above another or side by side, that are looked at */

/* --- places --- */

void
kind_add_inside (const Geometry *geometry, const Segment *segment, Length face, GArray *places)
{
  if (face - geometry->joint > segment->a && face < segment->b)
    g_array_append_val (places, face);
}

void
kind_add_image (const Geometry *geometry, const Kind *kind, gint32 i, const Axis *axis, Length face,
                GArray *places)
{
  Length place;

  if (mirror_asks (geometry, axis, kind->course, face, &place))
    kind_add_inside (geometry, kind_segment (geometry, kind, i), place, places);
}

void
kind_add_images (const Geometry *geometry, const Kind *kind, gint32 i, Length face, GArray *places)
{
  for (guint a = 0; a < kind->axes->len; a++)
    kind_add_image (geometry, kind, i, &g_array_index (kind->axes, Axis, a), face, places);
}

/* A face goes to the segments that it lies in. Those begin from the left to the right, few one
 * above another. */
static void
put_place (const Geometry *geometry, const Kind *kind, Length face)
{
  gint32 low = 0, high = kind->n;

  while (low < high)
    {
      gint32 middle = low + (high - low) / 2;

      if (kind_segment (geometry, kind, middle)->a < face)
        low = middle + 1;
      else
        high = middle;
    }
  for (gint32 i = low - 1; i >= MAX (low - MOST_STRIPS, 0); i--)
    if (!kind_segment (geometry, kind, i)->set)
      kind_add_inside (geometry, kind_segment (geometry, kind, i), face, kind->places[i]);
}

static void
put_image (const Geometry *geometry, const Kind *kind, const Axis *axis, Length face)
{
  Length place;

  if (mirror_asks (geometry, axis, kind->course, face, &place))
    put_place (geometry, kind, place);
}

/* The images of all places and of what is pinned, about one axis. */
static void
put_images (const Geometry *geometry, const Kind *kind, const Axis *axis, GArray *const *own)
{
  for (gint32 k = 0; k < kind->n; k++)
    {
      for (guint p = (guint) count_below (own[k], 0, axis->from);
           p < own[k]->len && g_array_index (own[k], Length, p) <= axis->to; p++)
        put_image (geometry, kind, axis, g_array_index (own[k], Length, p));
      if (kind_segment (geometry, kind, k)->joined_left)
        put_image (geometry, kind, axis, kind_segment (geometry, kind, k)->a);
    }
}

void
kind_add_grid (const Geometry *geometry, const Kind *kind, const Axis *axis, Length piece,
               GArray *faces)
{
  Length pitch = geometry->unit + geometry->joint, image;
  Length face = piece < 0 ? (axis->twice + geometry->joint) / 2 : (axis->twice - piece) / 2;

  for (; mirror_asks (geometry, axis, kind->course, face, &image); face -= pitch)
    {
      g_array_append_val (faces, face);
      g_array_append_val (faces, image);
    }
}

static void
put_grids (const Geometry *geometry, const Kind *kind, const Axis *axis)
{
  g_autoptr (GArray) faces = g_array_new (FALSE, FALSE, sizeof (Length));

  kind_add_grid (geometry, kind, axis, -1, faces);
  kind_add_grid (geometry, kind, axis, geometry->unit, faces);
  kind_add_grid (geometry, kind, axis, geometry->min_piece, faces);
  for (guint i = 0; i < faces->len; i++)
    put_place (geometry, kind, g_array_index (faces, Length, i));
}

/* The places of every segment with the images of all. */
static void
find_places (const Geometry *geometry, Kind *kind)
{
  GArray **own = g_new (GArray *, MAX (kind->n, 1));

  kind->places = g_new (GArray *, MAX (kind->n, 1));
  for (gint32 i = 0; i < kind->n; i++)
    {
      own[i] = pattern_places (geometry, kind_segment (geometry, kind, i));
      kind->places[i] = g_array_copy (own[i]);
    }
  for (guint a = 0; a < kind->axes->len; a++)
    {
      const Axis *axis = &g_array_index (kind->axes, Axis, a);

      put_images (geometry, kind, axis, own);
      put_grids (geometry, kind, axis);
    }
  for (gint32 i = 0; i < kind->n; i++)
    {
      pattern_sort_places (kind->places[i]);
      g_array_unref (own[i]);
    }
  g_free (own);
}

/* --- kinds --- */

Kind *
kind_new (const Geometry *geometry, gint32 course, GDestroyNotify free_way)
{
  const GArray *axes = mirror_axes (geometry);
  Kind *kind = g_new0 (Kind, 1);

  kind->course = course;
  kind->n = mirror_segments (geometry, course, &kind->first);
  kind->axes = g_array_new (FALSE, FALSE, sizeof (Axis));
  for (guint i = 0; i < axes->len; i++)
    {
      Axis axis = g_array_index (axes, Axis, i);

      if (course < axis.first || course > axis.last)
        continue;
      g_array_append_val (kind->axes, axis);
      kind->must = kind->must || axis.must;
    }
  kind->ways = g_ptr_array_new_with_free_func (free_way);
  find_places (geometry, kind);
  return kind;
}

void
kind_free (gpointer data)
{
  Kind *kind = data;

  g_ptr_array_unref (kind->ways);
  for (gint32 i = 0; i < kind->n; i++)
    g_array_unref (kind->places[i]);
  g_free (kind->places);
  g_array_unref (kind->axes);
  g_free (kind);
}

static gboolean
same_steps (const Geometry *geometry, const Kind *a, const Segment *p, const Kind *b,
            const Segment *q)
{
  const GArray *courses = geometry->courses;
  Length bottom = g_array_index (courses, Course, a->course - 1).bottom;
  Length other = g_array_index (courses, Course, b->course - 1).bottom;

  if (p->n_steps != q->n_steps)
    return FALSE;
  for (gint32 i = 0; i < p->n_steps; i++)
    {
      const Step *s = geometry_step (geometry, p->first_step + i);
      const Step *t = geometry_step (geometry, q->first_step + i);

      if (s->from != t->from || s->lo - bottom != t->lo - other || s->hi - bottom != t->hi - other
          || (geometry_slope (geometry, s) < 0) != (geometry_slope (geometry, t) < 0))
        return FALSE;
    }
  return TRUE;
}

static gboolean
same_places (const GArray *p, const GArray *q)
{
  return p->len == q->len
         && (p->len == 0 || memcmp (p->data, q->data, sizeof (Length) * p->len) == 0);
}

static gboolean
same_axes (const GArray *p, const GArray *q)
{
  if (p->len != q->len)
    return FALSE;
  for (guint i = 0; i < p->len; i++)
    {
      const Axis *a = &g_array_index (p, Axis, i), *b = &g_array_index (q, Axis, i);

      if (a->rule != b->rule || a->twice != b->twice || a->from != b->from || a->to != b->to)
        return FALSE;
    }
  return TRUE;
}

gboolean
kind_same (const Geometry *geometry, const Kind *a, const Kind *b)
{
  if (a->n != b->n || !same_axes (a->axes, b->axes)
      || (geometry->regular && (a->course - b->course) % 2 != 0))
    return FALSE;
  for (gint32 i = 0; i < a->n; i++)
    {
      const Segment *p = kind_segment (geometry, a, i), *q = kind_segment (geometry, b, i);

      if (p->a != q->a || p->b != q->b || p->index != q->index || p->set != q->set
          || p->joined_left != q->joined_left || p->joined_right != q->joined_right
          || !rules_same (geometry, p, q) || !same_steps (geometry, a, p, b, q)
          || !same_places (a->places[i], b->places[i]))
        return FALSE;
    }
  return TRUE;
}
