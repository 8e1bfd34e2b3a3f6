/* takeoff-pane.h - the quantities, live, under the count of cuts and its proof
 *
 * Signals:
 *   "chosen"  (string) the key of the chosen line, whose pieces are to be lit; NULL: none
 */
#pragma once

#include <gtk/gtk.h>

#include "app/answers.h"
#include "app/document.h"

#define HB_TYPE_TAKEOFF_PANE (hb_takeoff_pane_get_type ())
G_DECLARE_FINAL_TYPE (HbTakeoffPane, hb_takeoff_pane, HB, TAKEOFF_PANE, GtkWidget)

/* Once. */
void hb_takeoff_pane_set_document (HbTakeoffPane *pane, HbDocument *document, HbAnswers *answers);
void hb_takeoff_pane_set_wall (HbTakeoffPane *pane, WallId wall);
/* Marks the lines that a piece counts in; NULL: none. */
void hb_takeoff_pane_mark_piece (HbTakeoffPane *pane, const Piece *piece);
