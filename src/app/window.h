/* window.h - one project: its wall, its panes, its file */
#pragma once

#include <gtk/gtk.h>

#include "app/document.h"

#define HB_TYPE_WINDOW (hb_window_get_type ())
G_DECLARE_FINAL_TYPE (HbWindow, hb_window, HB, WINDOW, GtkApplicationWindow)

HbWindow *hb_window_new (GtkApplication *application);
/* Opens the file in this window; a failure is told in its bar. With `copy`, as a project of no
 * file. What is open and not saved is not asked after: the caller did. */
gboolean hb_window_open (HbWindow *window, GFile *file, gboolean copy);
/* Whether it holds nothing of the builder's: a file may be opened in it. */
gboolean hb_window_is_untouched (HbWindow *window);
