/* bound-segment.h - the fewest cuts of a segment of one full height, by how its ends begin */
#pragma once

#include "bond/segment.h"

/* bit 0: begins with a whole unit; bit 1: ends with one. */
#define N_STATES 4
/* More cuts than any: it cannot be. */
#define NEVER 1000000

/* Fewest cuts, pieces at least `least` long, with the fewest pieces that reach from end to end
 * (`more` 0) or with up to two more of them (1). */
void bound_plain_states (const Geometry *geometry, const Segment *segment, Length least,
                         gint32 more, gint32 states[N_STATES]);
