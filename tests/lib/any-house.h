/* any-house.h - ordinary house walls made up from a number, at any millimetre */
#pragma once

#include "any-wall.h"

/* 3 .. 12 m long and 2.2 .. 3.2 m high, at any millimetre, in one of the usual large units; joints
 * 1 .. 10 mm; limits left to their defaults; ends free or at a corner; 0 .. 4 windows and doors
 * side by side, their sills and heads at any millimetre or in a line, piers at least a quarter of
 * the unit (and 150 mm) wide; aim fewest cuts. The caller owns it, see any_wall_clear(). */
AnyWall any_house (guint64 seed);
