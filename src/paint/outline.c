#include "paint/outline.h"

#include <string.h>

/* Parts of a slope whose ends are tried. */
#define SLOPE_PLACES 10

guint
outline_corners (const Layout *layout, const Piece *piece, LayPoint corners[OUTLINE_MOST_CORNERS])
{
  const Length right = piece->x + piece->length, top = piece->bottom + piece->height;
  const LayPoint box[] = {
    { piece->x, piece->bottom }, { right, piece->bottom }, { right, top }, { piece->x, top }
  };

  if (piece->outline < 0 || piece->n_outline < 3 || piece->n_outline > OUTLINE_MOST_CORNERS)
    {
      memcpy (corners, box, sizeof box);
      return G_N_ELEMENTS (box);
    }
  memcpy (corners, &g_array_index (layout->points, LayPoint, piece->outline),
          sizeof (LayPoint) * (gsize) piece->n_outline);
  return (guint) piece->n_outline;
}

static gboolean
contains (const LayPoint *corners, guint n, double x, double z)
{
  gboolean inside = FALSE;

  for (guint i = 0, k = n - 1; i < n; k = i++)
    if ((corners[k].z > z) != (corners[i].z > z)
        && x < corners[k].x
                   + (z - corners[k].z) / (corners[i].z - corners[k].z)
                         * (corners[i].x - corners[k].x))
      inside = !inside;
  return inside;
}

static double
area (const OutlineSeat *seat)
{
  return (double) (seat->x1 - seat->x0) * (seat->z1 - seat->z0);
}

/* How well a text sits there: it is wider than high. */
static double
worth (const OutlineSeat *seat)
{
  return area (seat) * (seat->x1 - seat->x0);
}

/* Whether nine places across the seat, just within its edges, are in the piece: enough for outlines
 * with two notches. */
static gboolean
is_inside (const LayPoint *corners, guint n, const OutlineSeat *seat)
{
  const double x[] = { seat->x0 + 1.0, ((double) seat->x0 + seat->x1) / 2, seat->x1 - 1.0 };
  const double z[] = { seat->z0 + 1.0, ((double) seat->z0 + seat->z1) / 2, seat->z1 - 1.0 };

  for (guint i = 0; i < G_N_ELEMENTS (x) * G_N_ELEMENTS (z); i++)
    if (!contains (corners, n, x[i % G_N_ELEMENTS (x)], z[i / G_N_ELEMENTS (x)]))
      return FALSE;
  return TRUE;
}

static void
try_seat (const LayPoint *corners, guint n, const OutlineSeat *seat, OutlineSeat *best)
{
  if (seat->x1 > seat->x0 && seat->z1 > seat->z0 && worth (seat) > worth (best)
      && is_inside (corners, n, seat))
    *best = *seat;
}

/* Boxes that reach to a few places of a slope, for pieces of which no edge is square to another. */
static void
try_slope (const LayPoint *corners, guint n, const OutlineSeat *whole, guint i, OutlineSeat *best)
{
  const LayPoint a = corners[i], b = corners[(i + 1) % n];

  if (a.x == b.x || a.z == b.z)
    return;
  for (int k = 1; k < SLOPE_PLACES; k++)
    {
      const Length x = a.x + (Length) ((gint64) (b.x - a.x) * k / SLOPE_PLACES);
      const Length z = a.z + (Length) ((gint64) (b.z - a.z) * k / SLOPE_PLACES) - 2;

      try_seat (corners, n, &(OutlineSeat){ whole->x0, x, whole->z0, z }, best);
      try_seat (corners, n, &(OutlineSeat){ x, whole->x1, whole->z0, z }, best);
    }
}

OutlineSeat
outline_seat (const Layout *layout, const Piece *piece)
{
  LayPoint corners[OUTLINE_MOST_CORNERS];
  const guint n = outline_corners (layout, piece, corners);
  const Length x0 = piece->x, x1 = piece->x + piece->length;
  const Length z0 = piece->bottom, z1 = piece->bottom + piece->height;
  const OutlineSeat whole = { x0, x1, z0, z1 };
  OutlineSeat best = { 0 };

  if (piece->outline < 0)
    return whole;
  for (guint i = 0; i < n; i++)
    {
      try_seat (corners, n, &(OutlineSeat){ x0, corners[i].x, z0, z1 }, &best);
      try_seat (corners, n, &(OutlineSeat){ corners[i].x, x1, z0, z1 }, &best);
      try_seat (corners, n, &(OutlineSeat){ x0, x1, z0, corners[i].z }, &best);
      try_seat (corners, n, &(OutlineSeat){ x0, x1, corners[i].z, z1 }, &best);
      try_slope (corners, n, &whole, i, &best);
    }
  return area (&best) > 0 ? best : whole;
}
