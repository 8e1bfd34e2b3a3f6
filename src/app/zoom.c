#include "app/zoom.h"

typedef struct
{
  HbZoom zoom;
  double pinched; /* scale when two fingers were set down */
} Zooming;

static Zooming *
zooming_of (GtkWidget *widget)
{
  return g_object_get_data (G_OBJECT (widget), "zoom");
}

/* Steps of half a pixel would blur what is set on whole ones. */
static void
set_view (GtkWidget *widget, View view)
{
  view.ox = (double) (int) view.ox;
  view.oy = (double) (int) view.oy;
  zooming_of (widget)->zoom.set (widget, &view);
}

void
hb_zoom_at (GtkWidget *widget, double factor, double x, double y)
{
  const HbZoom *zoom = &zooming_of (widget)->zoom;
  const double scale = CLAMP (zoom->view->scale * factor, zoom->least, zoom->most);

  if (zoom->view->scale > 0)
    set_view (widget, view_zoomed (zoom->view, scale / zoom->view->scale, x, y));
}

static gboolean
scroll_cb (GtkWidget *widget, double dx, double dy, GtkEventControllerScroll *scroll)
{
  const HbZoom *zoom = &zooming_of (widget)->zoom;
  const GdkModifierType state
      = gtk_event_controller_get_current_event_state (GTK_EVENT_CONTROLLER (scroll));
  const gboolean wheel = gtk_event_controller_scroll_get_unit (scroll) == GDK_SCROLL_UNIT_WHEEL;
  View view = *zoom->view;

  if ((state & GDK_CONTROL_MASK) || (wheel && !(state & GDK_SHIFT_MASK) && dx == 0))
    {
      hb_zoom_at (widget, wheel ? (dy > 0 ? 1 / 1.15 : 1.15) : 1 - CLAMP (dy, -50, 50) / 200,
                  *zoom->x, *zoom->y);
      return GDK_EVENT_STOP;
    }
  view.ox -= (wheel ? 60 : 1) * (dx != 0 ? dx : (wheel ? dy : 0));
  view.oy -= wheel ? 0 : dy;
  set_view (widget, view);
  return GDK_EVENT_STOP;
}

static void
pinch_begin_cb (GtkWidget *widget)
{
  zooming_of (widget)->pinched = zooming_of (widget)->zoom.view->scale;
}

static void
pinch_cb (GtkWidget *widget, double factor, GtkGesture *gesture)
{
  const Zooming *zooming = zooming_of (widget);
  double x = 0, y = 0;

  gtk_gesture_get_bounding_box_center (gesture, &x, &y);
  hb_zoom_at (widget, zooming->pinched * factor / zooming->zoom.view->scale, x, y);
}

void
hb_zoom_add (GtkWidget *widget, const HbZoom *zoom)
{
  GtkEventController *scroll
      = gtk_event_controller_scroll_new (GTK_EVENT_CONTROLLER_SCROLL_BOTH_AXES);
  GtkGesture *pinch = gtk_gesture_zoom_new ();
  Zooming *zooming = g_new0 (Zooming, 1);

  zooming->zoom = *zoom;
  g_object_set_data_full (G_OBJECT (widget), "zoom", zooming, g_free);
  g_signal_connect_swapped (scroll, "scroll", G_CALLBACK (scroll_cb), widget);
  gtk_widget_add_controller (widget, scroll);
  g_signal_connect_swapped (pinch, "begin", G_CALLBACK (pinch_begin_cb), widget);
  g_signal_connect_swapped (pinch, "scale-changed", G_CALLBACK (pinch_cb), widget);
  gtk_widget_add_controller (widget, GTK_EVENT_CONTROLLER (pinch));
}
