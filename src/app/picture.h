/* picture.h - a small elevation of a wall, for the list */
#pragma once

#include <gtk/gtk.h>

#include "bond/layout.h"
#include "model/project.h"

#define HB_TYPE_PICTURE (hb_picture_get_type ())
G_DECLARE_FINAL_TYPE (HbPicture, hb_picture, HB, PICTURE, GtkWidget)

GtkWidget *hb_picture_new (void);
/* Keeps references. `layout` may be NULL: the picture stays as it is. */
void hb_picture_set_wall (HbPicture *picture, const Project *project, const Wall *wall,
                          const Layout *layout);
