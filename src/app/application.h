/* application.h - the program: its windows, its looks, the files it is given */
#pragma once

#include <gtk/gtk.h>

#define HB_TYPE_APPLICATION (hb_application_get_type ())
G_DECLARE_FINAL_TYPE (HbApplication, hb_application, HB, APPLICATION, GtkApplication)

GtkApplication *hb_application_new (void);
