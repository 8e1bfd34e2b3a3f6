/* pin.c - a piece that was set by hand */
#include "model/pin.h"

Pin
pin_copy (const Pin *pin)
{
  Pin copy = *pin;

  copy.foreign = foreign_copy (&pin->foreign);
  return copy;
}

void
pin_clear (Pin *pin)
{
  foreign_clear (&pin->foreign);
}

gboolean
pin_equal (const Pin *a, const Pin *b)
{
  return a->course == b->course && a->x == b->x && a->length == b->length
         && foreign_equal (&a->foreign, &b->foreign);
}
