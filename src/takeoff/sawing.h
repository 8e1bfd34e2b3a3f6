/* sawing.h - which boxes are sawn from one unit: the fewest units, with a bound */
#pragma once

#include "bond/offcut.h"

/* The same panels from each of `times` units. */
typedef struct
{
  gint32 times;
  guint first, n; /* their lengths in Sawing.lengths, longest first */
} SawPattern;

typedef struct
{
  Face face;
  guint n;
  Box *boxes;       /* longest first; panel, x and z are set */
  GArray *panels;   /* Panel; their units are not set: equal ones may be exchanged */
  GArray *patterns; /* SawPattern */
  GArray *lengths;  /* Length */
  gint32 units;
  gint32 at_least; /* proven; <= units */
} Sawing;

/* Takes `boxes`, n of them in any order, none larger than the face. NULL when stopped; `stop` as in
 * lay_wall(). */
Sawing *sawing_new (Face face, Box *boxes, guint n, const gint *stop);
/* Saws the boxes of `whole` as those of the parts are sawn, which are the same boxes, split up:
 * their panels and patterns one after another. The bound stays. */
void sawing_take_parts (Sawing *whole, Sawing *const *parts, guint n);
void sawing_free (Sawing *sawing);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (Sawing, sawing_free)
