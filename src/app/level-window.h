/* level-window.h - the level book of the footing: typed like a field book, reduced as it is typed
 */
#pragma once

#include <gtk/gtk.h>

#include "app/document.h"

#define HB_TYPE_LEVEL_WINDOW (hb_level_window_get_type ())
G_DECLARE_FINAL_TYPE (HbLevelWindow, hb_level_window, HB, LEVEL_WINDOW, GtkWindow)

/* Not shown yet. It goes with its parent. */
HbLevelWindow *hb_level_window_new (GtkWindow *parent, HbDocument *document);
