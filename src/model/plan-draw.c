/* plan-draw.c - walls that are drawn into a plan */
#include "model/plan-draw.h"

#define BESIDE LENGTH_MM (2000)

/* The footprint of the wall at `i` in the project; FALSE: it stands nowhere, or is not to count. */
static gboolean
box_at (const Project *project, guint i, WallId self, PlanBox *box)
{
  const Wall *wall = project_wall_at (project, i);

  if (!wall->place.given || (self.n && wall->id.n == self.n))
    return FALSE;
  *box = plan_box (wall, project_block (project, wall->block)->thickness);
  return TRUE;
}

/* ---- reaching through ---- */

/* From one coordinate to another, along a wall and across it. */
typedef struct
{
  gint64 near, far; /* of a wall across, in the way that the end looks */
  gint64 low, high; /* what it covers across the drawn wall */
} Across;

static Across
across_of (const PlanBox *box, Runs way)
{
  switch (way)
    {
    case RUNS_EAST:
      return (Across){ box->x0, box->x1, box->y0, box->y1 };
    case RUNS_NORTH:
      return (Across){ box->y0, box->y1, box->x0, box->x1 };
    case RUNS_WEST:
      return (Across){ -box->x1, -box->x0, box->y0, box->y1 };
    case RUNS_SOUTH:
    default:
      return (Across){ -box->y1, -box->y0, box->x0, box->x1 };
    }
}

/* How much farther an end that looks that way has to go; 0: it meets no wall. */
static gint64
missing (const Project *project, WallId self, const PlanBox *drawn, Runs way)
{
  const Across own = across_of (drawn, way);
  gint64 most = 0;

  for (guint i = 0; i < project->walls->len; i++)
    {
      const Wall *wall = project_wall_at (project, i);
      PlanBox box;
      Across across;

      if (!box_at (project, i, self, &box)
          || (runs_east (wall->place.runs) != 0) == (runs_east (way) != 0))
        continue;
      across = across_of (&box, way);
      if (across.low <= own.low && own.high <= across.high && across.near <= own.far
          && own.far <= across.far)
        most = MAX (most, across.far - own.far);
    }
  return most;
}

void
plan_reach (const Project *project, WallId self, Wall *wall, Length thickness)
{
  const Runs runs = wall->place.runs;
  const PlanBox box = plan_box (wall, thickness);
  const Runs back = runs_turned (runs_turned (runs, TRUE), TRUE);
  const gint64 right = missing (project, self, &box, runs);
  const gint64 left = missing (project, self, &box, back);

  if (left > 0)
    wall_shift (wall, (Length) left);
  wall->length += (Length) (left + right);
}

/* ---- snapping ---- */

gint64
plan_snap (const Project *project, WallId self, gboolean north, gint64 at, Length reach,
           Length step)
{
  gint64 best = at >= 0 ? (at + step / 2) / step * step : -((-at + step / 2) / step * step);
  gint64 least = (gint64) reach + 1;

  for (guint i = 0; i < project->walls->len; i++)
    {
      PlanBox box;
      gint64 faces[2];

      if (!box_at (project, i, self, &box))
        continue;
      faces[0] = north ? box.y0 : box.x0;
      faces[1] = north ? box.y1 : box.x1;
      for (guint k = 0; k < G_N_ELEMENTS (faces); k++)
        if (ABS (faces[k] - at) < least)
          {
            least = ABS (faces[k] - at);
            best = faces[k];
          }
    }
  return best;
}

gint64
plan_free_place (const Project *project)
{
  gint64 east = G_MININT64;

  for (guint i = 0; i < project->walls->len; i++)
    {
      PlanBox box;

      if (box_at (project, i, (WallId){ 0 }, &box))
        east = MAX (east, box.x1);
    }
  return east == G_MININT64 ? 0 : MIN (east + BESIDE, LENGTH_MAX);
}
