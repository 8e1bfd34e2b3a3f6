/* saw-text.h - the saw plan in words, translated */
#pragma once

#include "model/project.h"
#include "takeoff/saw.h"

/* One sentence without a full stop: which unit a piece is sawn from, where, which other pieces come
 * from it, and what is left: "From unit 14, sawn at 412 mm; the other 185 mm go to course 6, piece
 * 1; nothing is left over". `layouts` are of the project's walls, as the plan's walls are numbered.
 * NULL for a piece that is not in the plan. Free it. */
char *saw_text_piece (const SawPlan *plan, const Project *project, Layout *const *layouts,
                      guint wall, guint piece);
/* What a unit is sawn into, and what is left: "412 + 185", "600 × 95 + 600 × 90 (notched); left
 * over 600 × 9". Free it. */
char *saw_text_unit (const SawPlan *plan, const SawUnit *unit);
