/* rod-window.h - the storey rod as a table, and the beds that let most heights meet it */
#pragma once

#include <gtk/gtk.h>

#include "app/document.h"

#define HB_TYPE_ROD_WINDOW (hb_rod_window_get_type ())
G_DECLARE_FINAL_TYPE (HbRodWindow, hb_rod_window, HB, ROD_WINDOW, GtkWindow)

/* Not shown yet. It goes with its parent. No wall is allowed. */
HbRodWindow *hb_rod_window_new (GtkWindow *parent, HbDocument *document, WallId wall);
void hb_rod_window_set_wall (HbRodWindow *window, WallId wall);
