/* bound-order.h - the fewest units that a wall's pieces can be sawn from, wherever its perpends lie
 */
#pragma once

#include "bond/segment.h"

/* Lower bound on the units to order for any layout of the wall, whole ones and those that are sawn
 * from, off-cuts used again and kerfs counted. With `any_piece` pieces may be shorter than the
 * shortest: so of a layout that has breaches which others can do without. docs/bond.md says why it
 * is one. */
gint32 bound_wall_order (const Geometry *geometry, gboolean any_piece);
