/* plan-set-out.c - what is set out on the ground: lettered corners, and lengths across to square
 * them */
#include "paint/plan-private.h"

#include <math.h>

#include "model/plan-ring.h"

#define LETTER_OUT 13.f /* steps, from the corner along both ways */
/* Of more corners than these no lines are drawn: the list says their lengths. */
#define MOST_LINED 8
/* Along a line across, where its length stands: off the middle, where many would cross. */
#define AT_SHARE 0.36

static MarkPoint
point_of (const RingCorner *corner, float dx, float dy)
{
  return (MarkPoint){ (double) corner->x / LENGTH_PER_MM, (double) corner->y / LENGTH_PER_MM, dx,
                      dy };
}

static const RingCorner *
corner_at (const GArray *ring, guint i)
{
  return &g_array_index (ring, RingCorner, i % ring->len);
}

/* Away from both neighbours: outside, at an inner corner within the rooms behind its walls. */
static void
add_letter (PlanScene *scene, const GArray *ring, guint i)
{
  const RingCorner *before = corner_at (ring, i + ring->len - 1), *at = corner_at (ring, i);
  const RingCorner *after = corner_at (ring, i + 1);
  const double east = at->x > MIN (before->x, after->x) ? 1 : -1;
  const double north = at->y > MIN (before->y, after->y) ? 1 : -1;
  const MarkLook look = mark_look (STYLE_PLAN_CORNER, LAYER_TAPE);
  const MarkLook dot = mark_look (STYLE_HANDLE, LAYER_TAPE);
  const double thickness = length_to_mm (plan_wall_of (scene, at->wall)->thickness);
  char letters[RING_LETTERS_SIZE];
  MarkPoint place;

  drawing_add_circle (scene->drawing, &dot, point_of (at, 0, 0), 2.5f);
  place = point_of (at, (float) east * LETTER_OUT, (float) -north * LETTER_OUT);
  if (at->inner)
    {
      place.x += east * thickness;
      place.z += north * thickness;
    }
  drawing_add_text (scene->drawing, &look, place, 0.5f, 0.5f, ring_letters (i, letters));
}

/* From one corner to another that shares no side with it. */
static void
add_across (PlanScene *scene, const RingCorner *a, const RingCorner *b)
{
  const MarkLook line = mark_look (STYLE_PLAN_DIAGONAL, LAYER_GROUND);
  const MarkLook look = mark_look (STYLE_PLAN_DIAGONAL_TEXT, LAYER_TAPE);
  g_autofree char *text = g_strdup_printf ("%.0f", (double) ring_distance (a, b) / LENGTH_PER_MM);
  const MarkPoint from = point_of (a, 0, 0), to = point_of (b, 0, 0);
  const MarkPoint at
      = { to.x + (from.x - to.x) * AT_SHARE, to.z + (from.z - to.z) * AT_SHARE, 0, 0 };

  drawing_add_line (scene->drawing, &line, from, to);
  drawing_add_text (scene->drawing, &look, at, 0.5f, 0.5f, text);
}

/* From the two ends of the first side to all others: two tapes find each corner. */
static void
add_diagonals (PlanScene *scene, const GArray *ring)
{
  if (ring->len > MOST_LINED)
    return;
  for (guint base = 0; base < 2; base++)
    for (guint i = 2; i < ring->len; i++)
      if (i != (base == 0 ? ring->len - 1 : 2))
        add_across (scene, corner_at (ring, base), corner_at (ring, i));
}

void
plan_add_set_out (PlanScene *scene)
{
  g_autoptr (GPtrArray) rings = plan_rings (scene->input->project);

  for (guint r = 0; r < rings->len; r++)
    {
      const GArray *ring = g_ptr_array_index (rings, r);

      add_diagonals (scene, ring);
      for (guint i = 0; i < ring->len; i++)
        add_letter (scene, ring, i);
    }
}
