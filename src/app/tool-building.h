/* tool-building.h - a new building from the lengths of its sides: no widgets */
#pragma once

#include "model/edit.h"
#include "model/trace.h"

/* The walls round an outline without a fault, beside what stands already: front, right, back and
 * left where it is a rectangle and no wall has such a name, else by their numbers. `first` gets the
 * id of the first. NULL with MODEL_ERROR_REFUSED and a sentence: sides that have no room for their
 * walls, or whatever a project may not have. */
Edit *tool_building (const Project *project, const GArray *sides, const Block *block, Length height,
                     WallId *first, GError **error);

/* The same where it was drawn: the outline begins at x, y. */
Edit *tool_building_at (const Project *project, const GArray *sides, const Block *block,
                        Length height, Length x, Length y, WallId *first, GError **error);

/* The walls of a trace that is left open, by their numbers; an end that comes to lie at a wall goes
 * on through it. Likewise. */
Edit *tool_walls (const Project *project, const GArray *trace, const Block *block, Length height,
                  WallId *first, GError **error);

/* "4 walls, 28 m round, 48 m² outside". Newly allocated. */
char *tool_outline_text (const GArray *sides);
