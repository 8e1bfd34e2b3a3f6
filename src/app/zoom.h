/* zoom.h - wheel, touchpad and two fingers, which make what a widget shows larger or move it */
#pragma once

#include <gtk/gtk.h>

#include "paint/drawing.h"

/* What the widget shows from now on, on whole pixels. */
typedef void (*HbZoomSet) (gpointer widget, const View *view);

typedef struct
{
  const View *view;    /* what is shown */
  const double *x, *y; /* where the pointer is, px */
  double least, most;  /* scales */
  HbZoomSet set;
} HbZoom;

/* Listens on the widget, which what `zoom` points to outlives. */
void hb_zoom_add (GtkWidget *widget, const HbZoom *zoom);
/* `factor` times as large about a place of the widget. */
void hb_zoom_at (GtkWidget *widget, double factor, double x, double y);
