/* built-window.h - a wall as it was built: typed figure by figure, and what follows from it */
#pragma once

#include <gtk/gtk.h>

#include "app/progress.h"

#define HB_TYPE_BUILT_WINDOW (hb_built_window_get_type ())
G_DECLARE_FINAL_TYPE (HbBuiltWindow, hb_built_window, HB, BUILT_WINDOW, GtkWindow)

/* Not shown yet. It goes with its parent, which the progress outlives. No wall is allowed. */
HbBuiltWindow *hb_built_window_new (GtkWindow *parent, HbDocument *document, HbAnswers *answers,
                                    HbProgress *progress, WallId wall);
void hb_built_window_set_wall (HbBuiltWindow *window, WallId wall);
/* A sentence under the figures; NULL takes it away. */
void hb_built_window_say (HbBuiltWindow *window, const char *sentence);
