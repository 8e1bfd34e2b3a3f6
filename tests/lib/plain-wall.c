/* plain-wall.c - small walls to be laid by hand */
#include "plain-wall.h"

Wall *
plain_wall (double length, double height)
{
  Wall *wall = wall_new ();

  wall->id.n = 7;
  wall->length = length_from_mm (length);
  wall->height = length_from_mm (height);
  wall->laying.given = LAYING_FIRST_BED | LAYING_BED | LAYING_HEAD;
  wall->laying.first_bed = wall->laying.bed = wall->laying.head = 0;
  return wall;
}

void
plain_wall_open (Wall *wall, double x, double width, double sill, double height)
{
  Opening opening = opening_default (OPENING_WINDOW);

  opening.id.n = 20 + wall->openings->len;
  opening.key = g_strdup_printf ("o%u", opening.id.n);
  opening.x = length_from_mm (x);
  opening.width = length_from_mm (width);
  opening.sill = length_from_mm (sill);
  opening.height = length_from_mm (height);
  g_array_append_val (wall->openings, opening);
}
