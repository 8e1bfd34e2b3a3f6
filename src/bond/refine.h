/* refine.h - states told apart further where they are too coarse */
#pragma once

#include "bond/bound-states.h"
#include "bond/pattern.h"

/* `chosen` has a state for each segment that go together as far as pairs of them tell. Where the
 * patterns that they stand for do not, splits a state in two or more that show it, and says so in
 * `changed`, by segment. Else there is a layout of just that cost: its patterns, by segment. */
Pattern *refine_states (BoundStates *states, const gint32 *chosen, gboolean *changed);
