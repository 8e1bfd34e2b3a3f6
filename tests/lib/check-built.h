/* check-built.h - where courses lie when some of them stand, by docs/as-built.md alone */
#pragma once

#include "check-column.h"

/* Bottom of a course of a wall of which something stands, 1-based. */
Length check_built_bottom (const Check *check, gint32 course);
