/* behind.c - a wall that is laid from its right end is laid as its mirror image from the left */
#include "bond/behind.h"

/* --- the image --- */

static void
turn_top (Wall *wall)
{
  GArray *tops = top_list_new ();

  for (guint i = wall->tops->len; i-- > 0;)
    top_list_add (tops, wall->length - top_point (wall->tops, i)->x,
                  top_point (wall->tops, i)->below);
  g_array_unref (wall->tops);
  wall->tops = tops;
}

/* Each of them speaks of what is between it and the next. */
static void
turn_feet (Wall *wall)
{
  GArray *feet = foot_list_new ();
  Length from = 0;

  for (guint i = wall->feet->len; i-- > 0;)
    {
      foot_list_add (feet, from, foot_point (wall->feet, i)->up);
      from = wall->length - foot_point (wall->feet, i)->x;
    }
  if (wall->feet->len > 0 && from < wall->length)
    foot_list_add (feet, from, 0);
  g_array_unref (wall->feet);
  wall->feet = feet;
}

static void
turn_ends (Wall *wall)
{
  const End left = wall->ends[SIDE_LEFT];

  wall->ends[SIDE_LEFT] = wall->ends[SIDE_RIGHT];
  wall->ends[SIDE_RIGHT] = left;
}

Wall *
behind_wall (const Wall *wall)
{
  Wall *image;

  if (!(wall->laying.given & LAYING_START) || wall->laying.start != SIDE_RIGHT
      || wall->pins->len > 0)
    return NULL;
  image = wall_copy (wall);
  image->laying.start = SIDE_LEFT;
  turn_ends (image);
  turn_top (image);
  turn_feet (image);
  for (guint i = 0; i < image->openings->len; i++)
    {
      Opening *opening = &g_array_index (image->openings, Opening, i);

      opening->x = wall->length - opening_right (opening);
    }
  for (guint i = 0; i < image->tees->len; i++)
    {
      Tee *tee = &g_array_index (image->tees, Tee, i);

      tee->x = wall->length - tee_right (tee);
    }
  for (guint i = 0; i < image->movement_joints->len; i++)
    {
      MovementJoint *joint = &g_array_index (image->movement_joints, MovementJoint, i);

      joint->x = wall->length - movement_joint_right (joint);
    }
  return image;
}

/* --- back again --- */

static gboolean
is_image (const Geometry *image, const Segment *p, const Geometry *geometry, const Segment *q,
          Length length)
{
  if (p->course != q->course || p->a != length - q->b || p->b != length - q->a
      || p->n_steps != q->n_steps)
    return FALSE;
  for (gint32 i = 0; i < p->n_steps; i++)
    {
      const Step *one = geometry_step (image, p->first_step + i);
      const Step *other = geometry_step (geometry, q->first_step + q->n_steps - 1 - i);

      if (one->lo != other->lo || one->hi != other->hi || one->from != length - other->to
          || one->to != length - other->from)
        return FALSE;
    }
  return TRUE;
}

/* A perpend is told by the face right of it, which from behind is left of it. */
static Pattern
turned (const Pattern *pattern, Length length, Length joint)
{
  Pattern copy = pattern_copy (pattern);
  const gint32 n = pattern->n_pieces - 1;

  for (gint32 i = 0; i < n; i++)
    copy.faces[i] = length - pattern->faces[n - 1 - i] + joint;
  return copy;
}

Pattern *
behind_patterns (const Geometry *image, const Pattern *patterns, const Geometry *geometry,
                 Length length)
{
  const gint32 n = (gint32) geometry->segments->len;
  Pattern *chosen = g_new0 (Pattern, MAX (n, 1));

  for (gint32 i = 0, first = 0; i < n; i++)
    {
      const Segment *segment = geometry_segment (geometry, i);
      gint32 k;

      while (first < (gint32) image->segments->len
             && geometry_segment (image, first)->course < segment->course)
        first++;
      for (k = first; k < (gint32) image->segments->len; k++)
        if (geometry_segment (image, k)->course != segment->course
            || is_image (image, geometry_segment (image, k), geometry, segment, length))
          break;
      if (k == (gint32) image->segments->len
          || geometry_segment (image, k)->course != segment->course)
        {
          patterns_free (chosen, n);
          return NULL;
        }
      chosen[i] = turned (&patterns[k], length, geometry->joint);
    }
  return chosen;
}
