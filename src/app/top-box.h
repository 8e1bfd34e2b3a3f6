/* top-box.h - what lies at a wall's head and foot, to be typed: the shape of its top, a cap on it,
 * the steps of its footing
 *
 * Signals:
 *   "refused"  (string) a sentence with the reason
 */
#pragma once

#include <gtk/gtk.h>

#include "app/document.h"

#define HB_TYPE_TOP_BOX (hb_top_box_get_type ())
G_DECLARE_FINAL_TYPE (HbTopBox, hb_top_box, HB, TOP_BOX, GtkWidget)

GtkWidget *hb_top_box_new (void);
/* Of a wall; none: hidden. */
void hb_top_box_fill (HbTopBox *box, HbDocument *document, WallId wall);
