/* plan-shift.c - wings and whole buildings that are moved as one */
#include "model/plan-shift.h"

#include <glib/gi18n-lib.h>

#include "model/plan-edit-private.h"

typedef struct
{
  const Project *project;
  GArray *meetings; /* Meeting, none wrong */
  gboolean *in;     /* by number in the project */
  Runs way;         /* of the shift: the wing's wall runs across it */
} Group;

static void
group_init (Group *group, const Project *project)
{
  *group = (Group){ .project = project };
  group->meetings = plan_meetings (project);
  for (guint i = group->meetings->len; i-- > 0;)
    if (g_array_index (group->meetings, Meeting, i).kind == MEET_WRONG)
      g_array_remove_index (group->meetings, i);
  group->in = g_new0 (gboolean, project->walls->len + 1);
}

static void
group_clear (Group *group)
{
  g_array_unref (group->meetings);
  g_free (group->in);
}

static const Wall *
wall_at (const Group *group, guint i)
{
  return project_wall_at (group->project, i);
}

/* The wall moves across itself, not along. */
static gboolean
is_across (const Group *group, guint i)
{
  return (runs_east (wall_at (group, i)->place.runs) != 0) != (runs_east (group->way) != 0);
}

/* Neither wall lies beyond the other one's outer face. */
static gboolean
is_outer_corner (const Group *group, const Meeting *meeting)
{
  for (int k = 0; k < 2; k++)
    {
      const Wall *wall = wall_at (group, meeting->wall[k]);
      const Wall *other = wall_at (group, meeting->wall[1 - k]);
      const Runs out = runs_turned (wall->place.runs, TRUE);
      /* From the corner on, the other one goes that way. */
      const int away = meeting->side[1 - k] == SIDE_LEFT ? 1 : -1;

      if (away
              * (runs_east (other->place.runs) * runs_east (out)
                 + runs_north (other->place.runs) * runs_north (out))
          > 0)
        return FALSE;
    }
  return meeting->kind == MEET_CORNER;
}

/* Whether the wall's ends are all held by walls of the group, or by none. */
static gboolean
ends_within (const Group *group, guint wall)
{
  for (guint i = 0; i < group->meetings->len; i++)
    {
      const Meeting *meeting = &g_array_index (group->meetings, Meeting, i);

      for (int k = 0; k < 2; k++)
        if (meeting->wall[k] == wall && plan_ends_there (meeting, k)
            && !group->in[meeting->wall[1 - k]])
          return FALSE;
    }
  return TRUE;
}

/* Of a meeting of one wall in the group with one that is not: whether that one goes along. */
static gboolean
takes_along (const Group *group, const Meeting *meeting, int outside)
{
  const guint other = meeting->wall[outside];

  if (is_outer_corner (group, meeting))
    return TRUE;
  if (meeting->kind != MEET_TEE || !plan_ends_there (meeting, outside))
    return FALSE;
  /* A partition: across the shift its end would come off the wall that moves along itself; along
   * it, it goes with both walls that hold it. */
  return is_across (group, other) || ends_within (group, other);
}

static void
grow (Group *group)
{
  for (gboolean more = TRUE; more;)
    {
      more = FALSE;
      for (guint i = 0; i < group->meetings->len; i++)
        {
          const Meeting *meeting = &g_array_index (group->meetings, Meeting, i);

          for (int k = 0; k < 2; k++)
            if (group->in[meeting->wall[1 - k]] && !group->in[meeting->wall[k]]
                && takes_along (group, meeting, k))
              group->in[meeting->wall[k]] = more = TRUE;
        }
    }
}

static GArray *
members (const Group *group)
{
  GArray *walls = g_array_new (FALSE, FALSE, sizeof (guint));

  for (guint i = 0; i < group->project->walls->len; i++)
    if (group->in[i])
      g_array_append_val (walls, i);
  return walls;
}

static gboolean
begin (Group *group, WallId wall)
{
  const int index = project_wall_index (group->project, wall);

  if (index < 0 || !wall_at (group, (guint) index)->place.given)
    return FALSE;
  group->in[index] = TRUE;
  group->way = runs_turned (wall_at (group, (guint) index)->place.runs, TRUE);
  return TRUE;
}

GArray *
plan_connected (const Project *project, WallId wall)
{
  GArray *walls;
  Group group;

  group_init (&group, project);
  for (gboolean more = begin (&group, wall); more;)
    {
      more = FALSE;
      for (guint i = 0; i < group.meetings->len; i++)
        {
          const Meeting *meeting = &g_array_index (group.meetings, Meeting, i);

          if (group.in[meeting->wall[0]] == group.in[meeting->wall[1]])
            continue;
          group.in[meeting->wall[0]] = group.in[meeting->wall[1]] = more = TRUE;
        }
    }
  walls = members (&group);
  group_clear (&group);
  return walls;
}

GArray *
plan_wing (const Project *project, WallId wall, gboolean *whole)
{
  g_autoptr (GArray) all = plan_connected (project, wall);
  GArray *walls;
  Group group;

  group_init (&group, project);
  if (begin (&group, wall))
    grow (&group);
  walls = members (&group);
  group_clear (&group);
  if (whole)
    *whole = walls->len == all->len;
  return walls;
}

/* ---- moving ---- */

/* The wall as it is to be, a copy of it first. */
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

static GPtrArray *
moved_walls (const Project *project, const GArray *group, gint64 east, gint64 north)
{
  GPtrArray *walls = wall_list_new ();

  for (guint i = 0; i < group->len; i++)
    {
      Wall *wall = own_wall (walls, project_wall_at (project, g_array_index (group, guint, i)));

      wall->place.x = (Length) CLAMP (wall->place.x + east, -LENGTH_MAX, LENGTH_MAX);
      wall->place.y = (Length) CLAMP (wall->place.y + north, -LENGTH_MAX, LENGTH_MAX);
    }
  return walls;
}

static gboolean
has_number (const GArray *group, guint wall)
{
  for (guint i = 0; i < group->len; i++)
    if (g_array_index (group, guint, i) == wall)
      return TRUE;
  return FALSE;
}

/* How far the way of the shift goes along a wall, from its left end to its right. */
static Length
along (const Wall *wall, gint64 east, gint64 north)
{
  return (Length) (east * runs_east (wall->place.runs) + north * runs_north (wall->place.runs));
}

/* Where one wall of a meeting is shifted and the other stays: an end follows, or a gap does. A
 * wall that runs the way of the shift is at one of the two, and is what gives. */
static void
give (const Project *project, const Meeting *meeting, int moved, gboolean ends, gint64 east,
      gint64 north, GPtrArray *walls)
{
  const Wall *shifted = project_wall_at (project, meeting->wall[moved]);
  const Wall *other = project_wall_at (project, meeting->wall[1 - moved]);
  const Length on_shifted = along (shifted, east, north), on_other = along (other, east, north);

  /* It moves along itself: what it meets stays, so that it is that much elsewhere on it. */
  if (on_shifted != 0 && plan_ends_there (meeting, moved) == ends)
    _plan_give (own_wall (walls, shifted), meeting, moved, -on_shifted);
  else if (on_other != 0 && plan_ends_there (meeting, 1 - moved) == ends)
    _plan_give (own_wall (walls, other), meeting, 1 - moved, on_other);
}

Edit *
plan_shift_wing (const Project *project, WallId id, Length by, GError **error)
{
  g_autoptr (GArray) group = plan_wing (project, id, NULL);
  g_autoptr (GArray) meetings = NULL;
  g_autoptr (GPtrArray) walls = NULL;
  Runs out;
  gint64 east, north;

  if (group->len == 0)
    return _plan_missing (error);
  out = runs_turned (project_wall (project, id)->place.runs, TRUE);
  by = _plan_near (by);
  east = (gint64) by * runs_east (out);
  north = (gint64) by * runs_north (out);
  walls = moved_walls (project, group, east, north);
  meetings = plan_meetings (project);
  /* Gaps first: they are where they are told to be as long as no end has moved. */
  for (int ends = 0; ends < 2; ends++)
    for (guint i = 0; i < meetings->len; i++)
      {
        const Meeting *meeting = &g_array_index (meetings, Meeting, i);

        for (int k = 0; meeting->kind != MEET_WRONG && k < 2; k++)
          if (has_number (group, meeting->wall[k]) && !has_number (group, meeting->wall[1 - k]))
            give (project, meeting, k, ends == 1, east, north, walls);
      }
  return _plan_checked (project, walls, error);
}

Edit *
plan_move_building (const Project *project, WallId wall, Length east, Length north, GError **error)
{
  g_autoptr (GArray) group = plan_connected (project, wall);
  g_autoptr (GPtrArray) walls = NULL;

  if (group->len == 0)
    return _plan_missing (error);
  walls = moved_walls (project, group, _plan_near (east), _plan_near (north));
  return _plan_checked (project, walls, error);
}
