/* elevation.h - a wall as laid, drawn from outside: the laying view and the client view */
#pragma once

#include "bond/layout.h"
#include "model/project.h"
#include "paint/drawing.h"

typedef struct
{
  const Project *project; /* borrowed, as all of it */
  const Wall *wall;
  const Layout *layout;  /* may be of an older version of the wall while a new one is being laid */
  OpeningId selected;    /* its lines and handles are drawn; or none */
  guint joint;           /* the chosen movement joint, its number in the wall's list from 1; or 0 */
  const GArray *pallets; /* WorkPallet, set down at its foot; NULL: none */
  gint32 course;         /* the tape shows this course; 0: the first */
  MarkRef held;          /* a point of the top or a step of the footing that is selected; or none */
  gboolean guided; /* lines show at the rod and at the tape where that is: it is being pulled */
  gboolean bare;   /* no rod, tape, dimensions: for the small pictures in the list */
} ElevationInput;

/* The laying view. Never NULL. */
Drawing *elevation_laying (const ElevationInput *input);
/* The finished wall: frames, reveals, ground, a figure for scale, main dimensions, title. */
Drawing *elevation_client (const ElevationInput *input);
/* Whether the laying view at that scale, steps per mm, has a wedge that shows a pin. */
gboolean elevation_shows_pins (const Layout *layout, double scale);
/* What moves: selection, handles, guides; a few marks, in LAYER_OVERLAY. `ghost` is an opening
 * being drawn or moved, or NULL. */
Drawing *elevation_overlay (const ElevationInput *input, const Opening *ghost);
/* A perpend that a hand is at. */
typedef struct
{
  gint32 course;
  Length x;                  /* the face right of it */
  const Piece *left, *right; /* beside it as laid, borrowed; both NULL: none is laid there */
  gboolean sizes;            /* the lengths of both are told */
  gboolean guide;            /* it stands in line with something: a line shows that */
  gboolean unmet;            /* it cannot be there */
} PerpendMark;
/* Marks over the pieces that count in a take-off line, of one piece (course, number), and of a
 * few perpends. */
Drawing *elevation_highlight (const ElevationInput *input, const char *takeoff_key, gint32 course,
                              gint32 number, const PerpendMark *perpends, guint n_perpends);

/* Room that rod, tape, dimensions and titles take around the wall, sheet steps. */
typedef struct
{
  double left, right, top, bottom;
} ElevationMargins;
ElevationMargins elevation_margins (const Wall *wall, gboolean client);
/* What stands between the upper and the lower margin, mm: the wall with its cap, or a person before
 * it. */
double elevation_height (const Wall *wall, gboolean client);

/* The view that shows all of the wall with its rod, tape and dimensions within width x height sheet
 * steps. */
View elevation_fit (const Wall *wall, gboolean client, double width, double height);
