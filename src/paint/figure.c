/* figure.c - a person of 1.75 m, to give the finished wall its size */
#include "paint/scene-private.h"

#include <math.h>

/* Points of the curve between two knots. */
#define SMOOTH 6
#define HEAD_POINTS 28

typedef struct
{
  double x, z; /* mm, from between the feet */
} Knot;

/* Someone in a coat, weight on one leg, looking at the wall: counter-clockwise from the left foot.
 */
static const Knot body[] = {
  { -112, 0 },    { -26, 0 },     { -24, 44 },    { -34, 90 },    { -36, 300 },  { -26, 480 },
  { -10, 700 },   { 4, 706 },     { 22, 480 },    { 44, 290 },    { 52, 90 },    { 50, 44 },
  { 54, 0 },      { 146, 0 },     { 136, 34 },    { 100, 74 },    { 106, 280 },  { 116, 480 },
  { 138, 690 },   { 152, 742 },   { 166, 768 },   { 186, 764 },   { 196, 800 },  { 200, 880 },
  { 206, 1010 },  { 208, 1180 },  { 204, 1310 },  { 184, 1396 },  { 128, 1434 }, { 66, 1460 },
  { 48, 1490 },   { 50, 1560 },   { -38, 1560 },  { -42, 1490 },  { -60, 1460 }, { -122, 1434 },
  { -178, 1396 }, { -200, 1310 }, { -206, 1180 }, { -210, 1010 }, { -202, 880 }, { -196, 800 },
  { -182, 764 },  { -164, 768 },  { -150, 742 },  { -136, 690 },  { -118, 480 }, { -104, 280 },
  { -86, 74 },    { -106, 34 },
};

static double
curve (double a, double b, double c, double d, double t)
{
  return 0.5
         * (2 * b + (c - a) * t + (2 * a - 5 * b + 4 * c - d) * t * t
            + (3 * b - a - 3 * c + d) * t * t * t);
}

/* A curve through the knots (Catmull and Rom), closed. */
static void
add_body (Scene *scene, double x, double z, const MarkLook *look)
{
  const guint n = G_N_ELEMENTS (body);
  MarkPoint points[G_N_ELEMENTS (body) * SMOOTH];

  for (guint i = 0; i < n; i++)
    for (guint k = 0; k < SMOOTH; k++)
      {
        const Knot *a = &body[(i + n - 1) % n], *b = &body[i];
        const Knot *c = &body[(i + 1) % n], *d = &body[(i + 2) % n];
        const double t = (double) k / SMOOTH;
        points[i * SMOOTH + k] = at (x + curve (a->x, b->x, c->x, d->x, t),
                                     z + MAX (0, curve (a->z, b->z, c->z, d->z, t)));
      }
  drawing_add (scene->drawing, MARK_POLYGON, look, points, G_N_ELEMENTS (points));
}

static void
add_head (Scene *scene, double x, double z, const MarkLook *look)
{
  MarkPoint points[HEAD_POINTS];

  for (guint i = 0; i < HEAD_POINTS; i++)
    {
      const double turn = 2 * G_PI * i / HEAD_POINTS;
      points[i] = at (x + 5 + 84 * cos (turn), z + 1640 + 110 * sin (turn));
    }
  drawing_add (scene->drawing, MARK_POLYGON, look, points, HEAD_POINTS);
}

void
scene_figure (Scene *scene, double x, double z)
{
  const MarkLook look = mark_look (STYLE_CLIENT_FIGURE, LAYER_OPENINGS);

  add_body (scene, x, z, &look);
  add_head (scene, x, z, &look);
}
