/* tool-pin.h - what a hand pins, parts and joins in a wall as it is laid: geometry, no widgets
 *
 * Every result is a new wall. Pins that the new one contradicts are taken out, since of two that
 * contradict each other the first in the wall would hold. */
#pragma once

#include "bond/layout.h"

#define TOOL_PIN_ERROR (tool_pin_error_quark ())
GQuark tool_pin_error_quark (void);
typedef enum
{
  TOOL_PIN_ERROR_SHORT, /* too short to be cut in two */
  TOOL_PIN_ERROR_ALONE, /* no piece lies beside it */
  TOOL_PIN_ERROR_LONG,  /* longer than the unit */
} ToolPinError;

/* Takes out the pin that begins where the piece does, or pins all of the piece. */
Wall *tool_toggle_pin (const Wall *wall, const Block *block, const Piece *piece);
/* Pins a perpend in the piece's middle, its right face at `*at`, on a whole millimetre. NULL with
 * TOOL_PIN_ERROR_SHORT. */
Wall *tool_split_piece (const Wall *wall, const Block *block, const Piece *piece, Length *at,
                        GError **error);
/* Pins one piece in the place of this one and the next. NULL with another TOOL_PIN_ERROR. */
Wall *tool_join_piece (const Wall *wall, const Block *block, const Layout *layout,
                       const Piece *piece, GError **error);
