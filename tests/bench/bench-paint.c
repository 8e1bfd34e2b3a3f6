/* bench-paint.c - a full frame of the canvas, as inked on the screen
 *
 * Prints rows of data, tab-separated: what, pieces, size, rounds, median ms, slowest ms. The frame
 * is the whole drawing on an image surface, nothing kept from the frame before but label layouts:
 * the worst that the program ever has to do. */
#include <stdio.h>
#include <stdlib.h>

#include "bond/lay.h"
#include "paint/elevation.h"
#include "paint/ink.h"

#define ROUNDS 31

static void
add_opening (Wall *wall, Length x, Length width, Length sill, Length height)
{
  Opening opening = opening_default (OPENING_WINDOW);

  opening.id.n = 100 + wall->openings->len;
  opening.x = x;
  opening.width = width;
  opening.sill = sill;
  opening.height = height;
  g_array_append_val (wall->openings, opening);
}

/* About 250 pieces with two windows and a door, off the grid of its blocks. */
static Wall *
house_wall (void)
{
  Wall *wall = wall_new ();

  wall->length = LENGTH_MM (12130);
  wall->height = LENGTH_MM (2849);
  add_opening (wall, LENGTH_MM (1810), LENGTH_MM (1180), LENGTH_MM (903), LENGTH_MM (1240));
  add_opening (wall, LENGTH_MM (4935), LENGTH_MM (1570), LENGTH_MM (1031), LENGTH_MM (1110));
  add_opening (wall, LENGTH_MM (8340), LENGTH_MM (990), 0, LENGTH_MM (2115));
  return wall;
}

/* About 1,000 pieces with nine openings. */
static Wall *
hall_wall (void)
{
  Wall *wall = wall_new ();

  wall->length = LENGTH_MM (27400);
  wall->height = LENGTH_MM (5230);
  for (gint32 i = 0; i < 9; i++)
    add_opening (wall, LENGTH_MM (1100 + i * 2890 + i * i * 7), LENGTH_MM (1210),
                 LENGTH_MM (i % 2 ? 3105 : 903), LENGTH_MM (1240));
  return wall;
}

static int
compare_doubles (const void *a, const void *b)
{
  const double x = *(const double *) a, y = *(const double *) b;

  return (x > y) - (x < y);
}

static double
one_frame (Ink *ink, const ElevationInput *input, const View *view, int width, int height)
{
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_ARGB32, width, height);
  cairo_t *cr = cairo_create (surface);
  gint64 began = g_get_monotonic_time ();
  Drawing *drawing = elevation_laying (input);
  double ms;

  ink_draw (ink, cr, drawing, view, THEME_LIGHT, -1, -1, TRUE);
  cairo_surface_flush (surface);
  ms = (double) (g_get_monotonic_time () - began) / 1000.0;
  drawing_free (drawing);
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
  return ms;
}

static void
measure (const char *what, Wall *wall, int width, int height)
{
  g_autoptr (Project) project = project_new ();
  g_autoptr (Layout) layout = lay_wall (wall, project_block_at (project, 0), NULL);
  ElevationInput input = { .project = project, .wall = wall, .layout = layout };
  View view = elevation_fit (wall, FALSE, width, height);
  Ink *ink = ink_new (NULL);
  double ms[ROUNDS];

  wall->block = project_block_at (project, 0)->id;
  one_frame (ink, &input, &view, width, height); /* fonts are loaded once */
  for (int i = 0; i < ROUNDS; i++)
    ms[i] = one_frame (ink, &input, &view, width, height);
  qsort (ms, ROUNDS, sizeof *ms, compare_doubles);
  printf ("%s\t%u\t%d x %d\t%d\t%.2f\t%.2f\n", what, layout->pieces->len, width, height, ROUNDS,
          ms[ROUNDS / 2], ms[ROUNDS - 1]);
  ink_free (ink);
}

int
main (void)
{
  static const int sizes[][2] = { { 1366, 768 }, { 2560, 1440 } };
  g_autoptr (Wall) house = house_wall ();
  g_autoptr (Wall) hall = hall_wall ();

  for (guint i = 0; i < G_N_ELEMENTS (sizes); i++)
    {
      measure ("draw a wall with three openings", house, sizes[i][0], sizes[i][1]);
      measure ("draw a large wall", hall, sizes[i][0], sizes[i][1]);
    }
  return 0;
}
