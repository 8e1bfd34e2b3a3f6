/* room-box.h - how far a partition stands from the walls on both sides: to be read and typed
 *
 * Signals:
 *   "refused"  (string) a sentence with the reason
 */
#pragma once

#include <gtk/gtk.h>

#include "app/document.h"

#define HB_TYPE_ROOM_BOX (hb_room_box_get_type ())
G_DECLARE_FINAL_TYPE (HbRoomBox, hb_room_box, HB, ROOM_BOX, GtkWidget)

GtkWidget *hb_room_box_new (void);
/* Of that wall of the document as it is now; not to be seen where it is no partition. */
void hb_room_box_fill (HbRoomBox *box, HbDocument *document, WallId wall);
