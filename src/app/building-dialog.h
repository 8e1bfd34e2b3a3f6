/* building-dialog.h - asks for the outer dimensions of a new building, and shows them */
#pragma once

#include <gtk/gtk.h>

#include "app/document.h"

/* Once the building is there, in one step: its first wall. */
typedef void (*HbBuildingMade) (WallId first, gpointer data);

/* A window over `parent`, which goes by itself; `data` outlives it with the parent. */
void hb_building_ask (GtkWindow *parent, HbDocument *document, HbBuildingMade made, gpointer data);
