/* joint-box.h - a movement joint: its place, width and filler, to be read and typed
 *
 * Signals:
 *   "refused"  (string) a sentence with the reason
 */
#pragma once

#include <gtk/gtk.h>

#include "app/document.h"

#define HB_TYPE_JOINT_BOX (hb_joint_box_get_type ())
G_DECLARE_FINAL_TYPE (HbJointBox, hb_joint_box, HB, JOINT_BOX, GtkWidget)

GtkWidget *hb_joint_box_new (void);
/* The joint of that number in the wall's list, from 1, in the document as it is now; not to be seen
 * where there is none. */
void hb_joint_box_fill (HbJointBox *box, HbDocument *document, WallId wall, guint joint);
/* What is typed and not yet set counts. */
void hb_joint_box_finish (HbJointBox *box);
