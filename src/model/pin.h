/* pin.h - a piece that was set by hand: where it begins, or all of it
 *
 * A pin says what the builder wants. Whether it can be met follows from wall and block. */
#pragma once

#include "model/foreign.h"
#include "model/length.h"

typedef struct
{
  gint32 course; /* 1-based, 1 .. PIN_MAX_COURSE */
  Length x;      /* left face of the piece, from the wall's left end, >= 0 */
  Length length; /* of the piece, which is one from end to end; 0: it only begins there */
  Foreign foreign;
} Pin;

#define PIN_MAX_COURSE 10000
/* The longest unit that there can be. */
#define PIN_MAX_LENGTH LENGTH_MM (10000)

Pin pin_copy (const Pin *pin);
void pin_clear (Pin *pin);
gboolean pin_equal (const Pin *a, const Pin *b);
