/* fold.h - the cheapest pattern of one segment that is symmetrical about an axis within it */
#pragma once

#include "bond/pattern.h"

/* `places` are ascending faces within the segment, toll[i] what a perpend at places[i] costs beside
 * the pieces. image[i] is the number of its mirror image, or -1 where it needs none; those that
 * need one stand together, and have theirs among them. The pattern has with every perpend its
 * image, and its counts set; no pieces where `places` hold no such pattern. Ties go to the place
 * farther left. */
Pattern fold_solve (const Geometry *geometry, const Segment *segment, const GArray *places,
                    const Cost *toll, const gint32 *image);
