/* hold.h - a place on the canvas that takes the focus and has a name: the wall, an opening, a
 * movement joint, a point of its top or a step of its footing
 *
 * It is not seen but for the ring round it when the keyboard is used; the pointer goes through. */
#pragma once

#include <gtk/gtk.h>

#include "model/ids.h"
#include "paint/drawing.h"

#define HB_TYPE_HOLD (hb_hold_get_type ())
G_DECLARE_FINAL_TYPE (HbHold, hb_hold, HB, HOLD, GtkWidget)

/* None: the wall itself. */
GtkWidget *hb_hold_new (OpeningId opening);
/* Of a point or a step. */
GtkWidget *hb_hold_new_corner (const MarkRef *corner);
/* Of what is none REF_NONE. Borrowed. */
const MarkRef *hb_hold_get_corner (HbHold *hold);
OpeningId hb_hold_get_opening (HbHold *hold);
/* Of the movement joint of that number in the wall's list, from 1. */
GtkWidget *hb_hold_new_joint (guint joint);
/* 0: it is of none. */
guint hb_hold_get_joint (HbHold *hold);
void hb_hold_set_name (HbHold *hold, const char *name, const char *description);
