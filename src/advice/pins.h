/* pins.h - why a pin cannot be met, in words */
#pragma once

#include "bond/layout.h"

/* The end of a sentence, without its stop: "it leaves no room for a piece beside the end of the
 * run, at 0 mm". `pin` is one of the layout's that is not met. Newly allocated. */
char *pin_dup_reason (const LaidPin *pin, const Layout *layout, const Block *block);
