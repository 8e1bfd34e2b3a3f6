/* plan-follow.c - walls that end at one whose thickness has changed */
#include "model/plan-follow.h"

static Length
thickness_of (const Project *project, WallId wall)
{
  const int index = project_wall_index (project, wall);

  return index < 0
             ? 0
             : project_block (project, project_wall_at (project, (guint) index)->block)->thickness;
}

static gboolean
any_block_thicker (const Project *before, const Project *next)
{
  for (guint i = 0; i < before->blocks->len; i++)
    {
      const Block *was = project_block_at (before, i), *is = project_block (next, was->id);

      if (is && is->thickness != was->thickness)
        return TRUE;
    }
  return FALSE;
}

/* A wall that both share is as thick as it was, unless its block is not: of a thousand walls an
 * edit changes one, and the others are not looked up. */
static gboolean
any_thicker (const Project *before, const Project *next)
{
  const gboolean blocks = any_block_thicker (before, next);

  for (guint i = 0; i < before->walls->len; i++)
    {
      const Wall *wall = project_wall_at (before, i);

      if (!blocks && i < next->walls->len && project_wall_at (next, i) == wall)
        continue;
      if (wall->place.given && project_wall (next, wall->id)
          && thickness_of (before, wall->id) != thickness_of (next, wall->id))
        return TRUE;
    }
  return FALSE;
}

static gboolean
stands_as_before (const Wall *was, const Wall *is)
{
  return is && is->place.given && was->length == is->length && was->place.x == is->place.x
         && was->place.y == is->place.y && was->place.runs == is->place.runs;
}

/* Whether the wall, whose end lies in that square, ends at the other one's inner face. */
static gboolean
ends_at_inner_face (const Meeting *meeting, int which, const Wall *wall, const Wall *other)
{
  const Runs out = runs_turned (other->place.runs, TRUE);
  /* The way that the end looks. */
  const int sign = meeting->side[which] == SIDE_RIGHT ? 1 : -1;

  return sign
             * (runs_east (wall->place.runs) * runs_east (out)
                + runs_north (wall->place.runs) * runs_north (out))
         < 0;
}

/* The wall in the list, a copy of it first. */
static Wall *
own_wall (GPtrArray *walls, const Wall *wall)
{
  Wall *copy;

  for (guint i = 0; i < walls->len; i++)
    if (((Wall *) g_ptr_array_index (walls, i))->id.n == wall->id.n)
      return g_ptr_array_index (walls, i);
  copy = wall_copy (wall);
  g_ptr_array_add (walls, copy);
  return copy;
}

/* One side of a meeting: the wall that ends there follows the face. */
static void
follow (const Project *before, const Project *next, const Meeting *meeting, int which,
        GPtrArray *walls)
{
  const Wall *wall = project_wall_at (before, meeting->wall[which]);
  const Wall *other = project_wall_at (before, meeting->wall[1 - which]);
  const Wall *now = project_wall (next, wall->id), *other_now = project_wall (next, other->id);
  Length by;
  Wall *own;

  if (!plan_ends_there (meeting, which) || !stands_as_before (wall, now)
      || !stands_as_before (other, other_now) || !ends_at_inner_face (meeting, which, wall, other))
    return;
  by = thickness_of (next, other->id) - thickness_of (before, other->id);
  if (by == 0 || now->length + by <= 0)
    return;
  own = own_wall (walls, now);
  if (meeting->side[which] == SIDE_LEFT)
    wall_shift (own, by);
  own->length += by;
}

GPtrArray *
plan_follow_thickness (const Project *before, const Project *next)
{
  GPtrArray *walls = wall_list_new ();
  g_autoptr (GArray) meetings = NULL;

  if (!any_thicker (before, next))
    return walls;
  meetings = plan_meetings (before);
  for (guint i = 0; i < meetings->len; i++)
    {
      const Meeting *meeting = &g_array_index (meetings, Meeting, i);

      for (int which = 0; which < 2 && meeting->kind != MEET_WRONG; which++)
        follow (before, next, meeting, which, walls);
    }
  return walls;
}
