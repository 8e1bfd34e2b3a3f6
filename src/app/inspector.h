/* inspector.h - what is said of the selected opening or movement joint, or of the wall: to be read and typed
 *
 * Signals:
 *   "refused"  (string) a sentence with the reason
 */
#pragma once

#include <gtk/gtk.h>

#include "app/document.h"

#define HB_TYPE_INSPECTOR (hb_inspector_get_type ())
G_DECLARE_FINAL_TYPE (HbInspector, hb_inspector, HB, INSPECTOR, GtkWidget)

/* Once. */
void hb_inspector_set_document (HbInspector *inspector, HbDocument *document);
/* Words on the lit piece, over what is said of the wall; NULL: no piece is lit. */
void hb_inspector_explain (HbInspector *inspector, const char *is, const char *text);
/* No opening: the wall itself. */
void hb_inspector_show (HbInspector *inspector, WallId wall, OpeningId opening);
/* The movement joint of that number in the wall's list, from 1, instead of what is said of the wall;
 * 0: the wall again. */
void hb_inspector_show_joint (HbInspector *inspector, guint joint);
/* How two walls meet, instead of what is said of the wall; none, none: the wall again. */
void hb_inspector_show_meeting (HbInspector *inspector, WallId first, WallId second);
