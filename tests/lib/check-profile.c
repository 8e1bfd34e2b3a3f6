/* check-profile.c - what docs/tops.md says of a course under a wall's top and on its footing */
#include "check-profile.h"

/* A straight stretch; level where z0 is z1. */
typedef struct
{
  gint64 x0, z0, x1, z1;
} Edge;

/* Every stretch of the top, level ones before and beyond the points with them. */
static GArray *
find_edges (const Check *check)
{
  const Wall *wall = check->wall;
  GArray *edges = g_array_new (FALSE, FALSE, sizeof (Edge));
  Edge edge = { -1, wall->height, (gint64) wall->length + 1, wall->height };
  for (guint i = 0; i < wall->tops->len; i++)
    {
      const TopPoint *point = &g_array_index (wall->tops, TopPoint, i);
      edge.x1 = point->x;
      edge.z1 = wall->height - point->below;
      if (i == 0)
        edge.z0 = edge.z1;
      if (edge.x0 < edge.x1)
        g_array_append_val (edges, edge);
      edge = (Edge){ edge.x1, edge.z1, (gint64) wall->length + 1, edge.z1 };
    }
  if (edge.x0 < edge.x1)
    g_array_append_val (edges, edge);
  return edges;
}

static Edge
edge_at (const Check *check, Length x, gboolean right)
{
  g_autoptr (GArray) edges = find_edges (check);
  Edge found = { 0 };
  for (guint i = 0; i < edges->len; i++)
    {
      found = g_array_index (edges, Edge, i);
      if (right ? x < found.x1 : x <= found.x1)
        break;
    }
  return found;
}

/* a / b rounded down. */
static gint64
down (gint64 a, gint64 b)
{
  gint64 q = a / b;
  return q * b > a ? q - 1 : q;
}

Length
check_profile_top (const Check *check, Length x, gboolean right)
{
  Edge e = edge_at (check, x, right);
  gint64 over = e.x1 - e.x0;
  gint64 exact_times_over = e.z0 * over + (e.z1 - e.z0) * (x - e.x0);
  return (Length) down (2 * exact_times_over + over, 2 * over);
}

Length
check_profile_rounding (const Check *check, Length x)
{
  Edge e = edge_at (check, x, TRUE);
  gint64 rise = e.z1 > e.z0 ? e.z1 - e.z0 : e.z0 - e.z1;
  return rise == 0 ? 0 : (Length) (rise / (e.x1 - e.x0) + 2);
}

/* docs/tops.md, "Feet". */
Length
check_profile_base (const Check *check, Length x)
{
  const Laying *laying = &check->laying;
  Length up = 0, thinnest = MIN (LENGTH_MM (10), laying->first_bed);
  gint32 course = 1;
  for (guint i = 0; i < check->wall->feet->len; i++)
    if (g_array_index (check->wall->feet, Foot, i).x <= x)
      up = g_array_index (check->wall->feet, Foot, i).up;
  if (up == 0)
    return check_bottom (check, 1);
  while (check_bottom (check, course) < up + thinnest)
    course++;
  Length bottom = check_bottom (check, course), bed = up + laying->first_bed;
  if (bottom <= bed)
    return bottom;
  /* In the bed joint below that course nothing is laid. */
  if (course == 1 || check_bottom (check, course - 1) + check->block->height <= bed)
    return bottom;
  return bed;
}

static Length
half_unit (const Check *check)
{
  return MAX (check->block->height / 2, CHECK_PACKING_MAX);
}

static Length
toe_of (const Check *check, const Edge *e)
{
  gint64 rise = e->z1 > e->z0 ? e->z1 - e->z0 : e->z0 - e->z1;
  gint64 raked = down (rise * check->laying.min_raked, e->x1 - e->x0);
  gint64 toe = MAX ((gint64) check->laying.min_rip - raked, (gint64) CHECK_PACKING_MAX);
  return (Length) MIN (toe, (gint64) half_unit (check));
}

Length
check_profile_toe (const Check *check, Length x)
{
  Edge e = edge_at (check, x, TRUE);
  return toe_of (check, &e);
}

Length
check_profile_least (const Check *check)
{
  return MIN (check->laying.min_rip, half_unit (check));
}

static void
add_meeting (const Edge *e, gint64 z, GArray *verticals)
{
  gint64 low = MIN (e->z0, e->z1), high = MAX (e->z0, e->z1);
  if (z <= low || z > high)
    return;
  gint64 along = (z - e->z0) * (e->x1 - e->x0), rise = e->z1 - e->z0;
  /* Falling it is higher on the left. */
  Length x = (Length) (rise > 0 ? e->x0 - down (-along, rise) : e->x0 + down (-along, -rise));
  g_array_append_val (verticals, x);
}

void
check_profile_add_heights (const Check *check, Length z, GArray *verticals)
{
  g_autoptr (GArray) edges = find_edges (check);
  for (guint i = 0; i < edges->len; i++)
    add_meeting (&g_array_index (edges, Edge, i), z, verticals);
}

void
check_profile_add_lows (const Check *check, Length z, GArray *verticals)
{
  g_autoptr (GArray) edges = find_edges (check);
  for (guint i = 0; i < edges->len; i++)
    {
      const Edge *e = &g_array_index (edges, Edge, i);
      gint64 rise = e->z1 - e->z0, along = (z - e->z0) * (e->x1 - e->x0);
      if (z < MIN (e->z0, e->z1) || z >= MAX (e->z0, e->z1))
        continue;
      Length x = (Length) (rise > 0 ? e->x0 + down (along, rise) : e->x0 - down (along, -rise));
      g_array_append_val (verticals, x);
    }
}

void
check_profile_add_toes (const Check *check, Length low, GArray *verticals)
{
  g_autoptr (GArray) edges = find_edges (check);
  for (guint i = 0; i < edges->len; i++)
    {
      const Edge *e = &g_array_index (edges, Edge, i);
      if (e->z0 != e->z1)
        add_meeting (e, (gint64) low + toe_of (check, e), verticals);
    }
}

void
check_profile_add_points (const Check *check, GArray *verticals)
{
  for (guint i = 0; i < check->wall->tops->len; i++)
    g_array_append_val (verticals, g_array_index (check->wall->tops, TopPoint, i).x);
  for (guint i = 0; i < check->wall->feet->len; i++)
    g_array_append_val (verticals, g_array_index (check->wall->feet, Foot, i).x);
}
