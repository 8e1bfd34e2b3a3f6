/* pins-list.h - what was set by hand in a wall, each with a button that lets it go
 *
 * Not to be seen where nothing was set.
 *
 * Signals:
 *   "refused"  (string) a sentence with the reason
 */
#pragma once

#include <gtk/gtk.h>

#include "app/document.h"

#define HB_TYPE_PINS_LIST (hb_pins_list_get_type ())
G_DECLARE_FINAL_TYPE (HbPinsList, hb_pins_list, HB, PINS_LIST, GtkWidget)

GtkWidget *hb_pins_list_new (void);
/* Of that wall of the document as it is now; none: nothing is shown. */
void hb_pins_list_fill (HbPinsList *list, HbDocument *document, WallId wall);
