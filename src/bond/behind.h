/* behind.h - a wall that is laid from its right end is laid as its mirror image from the left
 *
 * So a wall and its mirror image, which starts from the other end, always get the same pieces,
 * among many layouts with as few cuts. Seen from behind, left is right. */
#pragma once

#include "bond/pattern.h"

/* The mirror image of a wall that starts from the right, to be laid for it; new. NULL: it is laid
 * as it is. That holds for walls with pins, too: where those are is told by left faces, and what is
 * told so is not always told in the image. Nor do standing courses stand in it. */
Wall *behind_wall (const Wall *wall);
/* The patterns of the image, as patterns of the wall so long, in a new array (patterns_free());
 * NULL: the image has other runs. */
Pattern *behind_patterns (const Geometry *image, const Pattern *patterns, const Geometry *geometry,
                          Length length);
