/* hold.h - a place on the canvas that takes the focus and has a name: the wall, or an opening
 *
 * It is not seen but for the ring round it when the keyboard is used; the pointer goes through. */
#pragma once

#include <gtk/gtk.h>

#include "model/ids.h"

#define HB_TYPE_HOLD (hb_hold_get_type ())
G_DECLARE_FINAL_TYPE (HbHold, hb_hold, HB, HOLD, GtkWidget)

/* None: the wall itself. */
GtkWidget *hb_hold_new (OpeningId opening);
OpeningId hb_hold_get_opening (HbHold *hold);
void hb_hold_set_name (HbHold *hold, const char *name, const char *description);
