/* plan-ring.c - walls that go once round, and their outer corners */
#include "model/plan-ring.h"

#include <math.h>

/* For each wall, the one whose left end it meets at its right end at a corner; -1: none. */
static int *
followers (const Project *project)
{
  g_autoptr (GArray) meetings = plan_meetings (project);
  int *next = g_new (int, project->walls->len + 1);

  for (guint i = 0; i < project->walls->len; i++)
    next[i] = -1;
  for (guint i = 0; i < meetings->len; i++)
    {
      const Meeting *meeting = &g_array_index (meetings, Meeting, i);

      for (int k = 0; meeting->kind == MEET_CORNER && k < 2; k++)
        if (meeting->side[k] == SIDE_RIGHT && meeting->side[1 - k] == SIDE_LEFT)
          next[meeting->wall[k]] = (int) meeting->wall[1 - k];
    }
  return next;
}

/* Where the outer face of the one crosses that of the other, at a right angle. */
static RingCorner
corner_between (const Project *project, guint before, guint wall)
{
  const PlanPlace *a = &project_wall_at (project, before)->place;
  const PlanPlace *b = &project_wall_at (project, wall)->place;
  const gboolean across = runs_east (b->runs) != 0;

  return (RingCorner){ across ? a->x : b->x, across ? b->y : a->y, wall,
                       b->runs == runs_turned (a->runs, TRUE) };
}

/* Round from a wall; NULL: it does not come round to it. */
static GArray *
ring_from (const Project *project, const int *next, guint first)
{
  g_autoptr (GArray) ring = g_array_new (FALSE, FALSE, sizeof (RingCorner));
  guint wall = first;

  do
    {
      RingCorner corner;

      if (next[wall] < 0 || ring->len > project->walls->len)
        return NULL;
      corner = corner_between (project, wall, (guint) next[wall]);
      g_array_append_val (ring, corner);
      wall = (guint) next[wall];
    }
  while (wall != first);
  return g_steal_pointer (&ring);
}

static gboolean
is_round (const GArray *ring)
{
  int left = 0;

  for (guint i = 0; i < ring->len; i++)
    left += g_array_index (ring, RingCorner, i).inner ? -1 : 1;
  return left == 4;
}

/* Begun anew from its southernmost outer corner. */
static GArray *
from_the_south (const GArray *ring)
{
  GArray *turned = g_array_new (FALSE, FALSE, sizeof (RingCorner));
  const RingCorner *best = NULL;
  guint first = 0;

  for (guint i = 0; i < ring->len; i++)
    {
      const RingCorner *at = &g_array_index (ring, RingCorner, i);

      if (at->inner || (best && (at->y > best->y || (at->y == best->y && at->x >= best->x))))
        continue;
      best = at;
      first = i;
    }
  g_array_append_vals (turned, &g_array_index (ring, RingCorner, first), ring->len - first);
  if (first > 0)
    g_array_append_vals (turned, ring->data, first);
  return turned;
}

static void
unref_ring (gpointer data)
{
  g_array_unref (data);
}

GPtrArray *
plan_rings (const Project *project)
{
  GPtrArray *rings = g_ptr_array_new_with_free_func (unref_ring);
  g_autofree int *next = followers (project);
  g_autofree gboolean *seen = g_new0 (gboolean, project->walls->len + 1);

  for (guint i = 0; i < project->walls->len; i++)
    {
      g_autoptr (GArray) ring = seen[i] ? NULL : ring_from (project, next, i);

      for (guint k = 0; ring && k < ring->len; k++)
        seen[g_array_index (ring, RingCorner, k).wall] = TRUE;
      if (ring && is_round (ring))
        g_ptr_array_add (rings, from_the_south (ring));
    }
  return rings;
}

Length
ring_distance (const RingCorner *a, const RingCorner *b)
{
  return (Length) MIN (llround (hypot ((double) (a->x - b->x), (double) (a->y - b->y))),
                       LENGTH_MAX);
}

const char *
ring_letters (guint number, char text[RING_LETTERS_SIZE])
{
  int at = RING_LETTERS_SIZE - 1;

  text[at] = '\0';
  for (guint n = number + 1; n > 0 && at > 0; n = (n - 1) / 26)
    text[--at] = (char) ('A' + (n - 1) % 26);
  return &text[at];
}
