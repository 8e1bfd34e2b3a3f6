/* saw-list.h - the saw plans of a project, as text and as JSON */
#pragma once

#include "cli/json.h"
#include "cli/laid.h"
#include "takeoff/takeoff.h"

/* Of each kind of block that is sawn: how many, what is proven, and units sawn alike together, each
 * with its number and its pieces. */
void saw_list_text (GString *text, const Laid *laid, const Takeoff *takeoff);
/* The member "saw". */
void saw_list_json (Json *json, const Laid *laid, const Takeoff *takeoff);
/* The member "unit" of a cut piece; nothing for another. `wall` and `piece` as in SawPart. */
void saw_piece_json (Json *json, const Block *block, const SawPlan *plan, guint wall, guint piece);
