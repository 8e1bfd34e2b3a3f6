/* held.c - what holds a wall sideways: the walls that it ends at, and those that meet it */
#include "advice/held.h"

/* Times the thickness, from one upright edge, and between two. */
#define STIFFENED 15
#define STIFFENED_BETWEEN 30

gboolean
wall_is_partition (const Wall *wall)
{
  for (int side = 0; side < 2; side++)
    if (wall->ends[side].ret > 0 && wall->ends[side].through == THROUGH_ALL)
      return TRUE;
  return FALSE;
}

static gint
by_x (gconstpointer a, gconstpointer b)
{
  const Tee *p = a, *q = b;

  return (p->x > q->x) - (p->x < q->x);
}

GArray *
stretches_of (const Wall *wall)
{
  GArray *stretches = g_array_new (FALSE, FALSE, sizeof (Stretch));
  g_autoptr (GArray) tees = g_array_copy (wall->tees); /* shallow */
  Stretch stretch = { wall->ends[SIDE_LEFT].ret, 0, { wall->ends[SIDE_LEFT].ret > 0, TRUE } };

  g_array_sort (tees, by_x);
  for (guint i = 0; i < tees->len; i++)
    {
      stretch.to = g_array_index (tees, Tee, i).x;
      g_array_append_val (stretches, stretch);
      stretch = (Stretch){ tee_right (&g_array_index (tees, Tee, i)), 0, { TRUE, TRUE } };
    }
  stretch.to = wall->length - wall->ends[SIDE_RIGHT].ret;
  stretch.held[SIDE_RIGHT] = wall->ends[SIDE_RIGHT].ret > 0;
  g_array_append_val (stretches, stretch);
  return stretches;
}

static gboolean
is_weakened (const Wall *wall, const Stretch *stretch)
{
  const double length = length_to_mm (stretch->to - stretch->from);
  double area = 0;

  for (guint i = 0; i < wall->openings->len; i++)
    {
      const Opening *opening = wall_opening_at (wall, i);
      const Length from = MAX (opening->x, stretch->from);
      const Length to = MIN (opening_right (opening), stretch->to);

      if (from >= to)
        continue;
      if (4 * (gint64) opening->height > wall->height
          || 4 * (gint64) (to - from) > stretch->to - stretch->from)
        return TRUE;
      area += length_to_mm (to - from) * length_to_mm (opening->height);
    }
  return 10 * area > length * length_to_mm (wall->height);
}

gboolean
stretch_is_stiffened (const Wall *wall, const Stretch *stretch, Length thickness)
{
  const int held = stretch->held[SIDE_LEFT] + stretch->held[SIDE_RIGHT];
  const gint64 most = held == 2 ? STIFFENED_BETWEEN : held == 1 ? STIFFENED : 0;

  return stretch->to - stretch->from <= most * thickness && !is_weakened (wall, stretch);
}

/* What is left of a stretch beyond what its held end stiffens; FALSE: nothing. */
static gboolean
loosen (Stretch *stretch, Length thickness)
{
  const gint64 reach = (gint64) STIFFENED * thickness;

  if (stretch->held[SIDE_LEFT] && stretch->held[SIDE_RIGHT])
    return FALSE;
  if (!stretch->held[SIDE_LEFT] && !stretch->held[SIDE_RIGHT])
    return TRUE;
  if (stretch->to - stretch->from <= reach)
    return FALSE;
  if (stretch->held[SIDE_LEFT])
    stretch->from += (Length) reach;
  else
    stretch->to -= (Length) reach;
  return TRUE;
}

gboolean
loosest_part (const Wall *wall, Length thickness, Stretch *out)
{
  g_autoptr (GArray) stretches = stretches_of (wall);
  gboolean found = FALSE;

  for (guint i = 0; i < stretches->len; i++)
    {
      Stretch stretch = g_array_index (stretches, Stretch, i);

      if (!loosen (&stretch, thickness)
          || (found && stretch.to - stretch.from <= out->to - out->from))
        continue;
      *out = stretch;
      found = TRUE;
    }
  return found;
}
