/* meeting-box.h - how a meeting of two walls is made: to be read and chosen
 *
 * Signals:
 *   "refused"  (string) a sentence with the reason
 */
#pragma once

#include <gtk/gtk.h>

#include "app/document.h"

#define HB_TYPE_MEETING_BOX (hb_meeting_box_get_type ())
G_DECLARE_FINAL_TYPE (HbMeetingBox, hb_meeting_box, HB, MEETING_BOX, GtkWidget)

GtkWidget *hb_meeting_box_new (void);
/* Of the document as it is now; none, none: nothing is shown. */
void hb_meeting_box_fill (HbMeetingBox *box, HbDocument *document, WallId first, WallId second);
