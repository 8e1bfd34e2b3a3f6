/* work-window.h - the work: the figures it is reckoned with, hours, days, handling, pallets
 *
 * Signals:
 *   "reckoned"  pallets are set down elsewhere
 */
#pragma once

#include <gtk/gtk.h>

#include "app/answers.h"

#define HB_TYPE_WORK_WINDOW (hb_work_window_get_type ())
G_DECLARE_FINAL_TYPE (HbWorkWindow, hb_work_window, HB, WORK_WINDOW, GtkWindow)

/* Not shown yet. It goes with its parent. */
HbWorkWindow *hb_work_window_new (GtkWindow *parent, HbDocument *document, HbAnswers *answers);
/* WorkPallet, at the foot of that wall, as it was reckoned last; new. */
GArray *hb_work_window_dup_pallets (HbWorkWindow *window, WallId wall);
