/* walls-pane.h - the walls of the project, each with a small picture
 *
 * Signals:
 *   "chosen"   (guint wall id)
 *   "refused"  (string) a sentence with the reason
 */
#pragma once

#include <gtk/gtk.h>

#include "app/answers.h"
#include "app/document.h"

#define HB_TYPE_WALLS_PANE (hb_walls_pane_get_type ())
G_DECLARE_FINAL_TYPE (HbWallsPane, hb_walls_pane, HB, WALLS_PANE, GtkWidget)

/* Once. */
void hb_walls_pane_set_document (HbWallsPane *pane, HbDocument *document, HbAnswers *answers);
void hb_walls_pane_set_wall (HbWallsPane *pane, WallId wall);
