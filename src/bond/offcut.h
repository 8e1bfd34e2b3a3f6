/* offcut.h - units that pieces are sawn from: off-cuts used again, kerfs counted
 *
 * A piece is told by its box: length and height of its face, a notched one's with the notch. A unit
 * is sawn in three stages: across into panels of the unit's height; a panel along into levels; a
 * level across into boxes, each ripped to its own height where the level is higher. A kerf is lost
 * between any two, none where a box ends at the unit's end. docs/cutting-plan.md. */
#pragma once

#include "model/length.h"

/* The face of a unit, and what a saw cut eats (>= 0). */
typedef struct
{
  Length length, height, kerf;
} Face;

typedef struct
{
  Length length, height; /* 1 .. the face's */
  gint32 owner;          /* whatever the caller likes */
  gint32 panel;          /* of the fit; where in it: from its left, from its foot */
  Length x, z;
} Box;

/* Longest first, then highest, then by owner. */
gint box_compare (gconstpointer a, gconstpointer b);

typedef struct
{
  Length length;
  gint32 unit; /* of the fit, from 0 */
} Panel;

/* One way to saw the boxes, and room to work in. */
typedef struct
{
  Face face;
  GArray *panels; /* Panel, longest first within one way to make them */
  GArray *levels; /* private */
  GArray *rooms;  /* Length: what each unit has left, a kerf taken off */
} OffcutFit;

void offcut_fit_init (OffcutFit *fit, Face face);
void offcut_fit_clear (OffcutFit *fit);

typedef enum
{
  PANELS_TIGHT, /* a panel is as long as its longest box: low boxes are cut from off-cuts */
  PANELS_LONG,  /* low boxes are ripped from units of full length, then cut across */
} PanelWay;

/* Makes panels of boxes, which are in the order of box_compare(); sets where each box lies. */
void offcut_stack (OffcutFit *fit, Box *boxes, guint n, PanelWay way);
/* Saws the panels from units, longest first, each from the first unit that has room, or with
 * `fullest` from the one that has least room left; how many units. */
gint32 offcut_saw (OffcutFit *fit, gboolean fullest);
/* The fewest units of all these ways, and the fit of that one. */
gint32 offcut_fit_best (OffcutFit *fit, Box *boxes, guint n);

/* No way to saw these boxes, of three stages or any other by straight cuts, needs fewer units.
 * Boxes in the order of box_compare(). */
gint32 offcut_bound (Face face, const Box *boxes, guint n);

/* Worth of one side of a box, `x` being the side and a kerf, `room` the face's side and a kerf: no
 * row of boxes side by side is worth more than offcut_worth_most(). The functions of Lueker (1983)
 * and of Fekete and Schepers (2001), from memory; way 0 is the length itself. */
#define OFFCUT_WORTHS 6
gint64 offcut_worth (gint64 x, gint64 room, gint way);
gint64 offcut_worth_most (gint64 room, gint way);
/* The length, but nothing for one shorter than `little` (0 .. half the room), and all the room for
 * one that leaves less than that. The most is the room. */
gint64 offcut_worth_without (gint64 x, gint64 room, gint64 little);
