/* laws.h - what holds of every wall that is laid, as assertions */
#pragma once

#include "any-wall.h"

/* It can be laid, and check_layout() finds nothing wrong; `seed` is told where it does. */
void law_laid_right (const AnyWall *any, guint64 seed);
/* No bound of the wall contradicts what is laid of it from behind; its aim becomes the default. */
void law_same_from_behind (AnyWall *any);
