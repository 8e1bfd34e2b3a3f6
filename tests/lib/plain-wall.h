/* plain-wall.h - small walls to be laid by hand */
#pragma once

#include "model/wall.h"

/* A wall of that length and height, mm, with dry joints and no levelling bed, for the default
 * block, 600 x 200 mm. Its id is 7. */
Wall *plain_wall (double length, double height);
/* Adds a window with an id and a key of its own; mm. */
void plain_wall_open (Wall *wall, double x, double width, double sill, double height);
