/* canvas-view.c - where the wall lies on the sheet: fitted, larger, smaller, moved */
#include "app/canvas-private.h"

/* Sheet steps per mm: a wall of 1 km on the screen, and a joint as wide as a thumb. */
#define SCALE_LEAST 0.001
#define SCALE_MOST 20.0

void
_hb_canvas_set_view (HbCanvas *self, const View *view, gboolean fitted)
{
  self->view = *view;
  self->fitted = fitted;
  _hb_canvas_place_holds (self);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

/* Steps of half a pixel would blur what is set on whole ones. */
static View
on_pixels (View view)
{
  view.ox = (double) (int) view.ox;
  view.oy = (double) (int) view.oy;
  return view;
}

void
hb_canvas_fit (HbCanvas *self)
{
  const Wall *wall = _hb_canvas_get_wall_value (self);
  const int width = gtk_widget_get_width (GTK_WIDGET (self));
  const int height = gtk_widget_get_height (GTK_WIDGET (self));
  View view;

  g_return_if_fail (HB_IS_CANVAS (self));
  self->fitted = TRUE;
  if (!wall || width <= 0 || height <= 0)
    return;
  view = on_pixels (elevation_fit (wall, self->client, width, height));
  _hb_canvas_set_view (self, &view, TRUE);
}

static void
zoom_at (HbCanvas *self, double factor, double x, double y)
{
  const double scale = CLAMP (self->view.scale * factor, SCALE_LEAST, SCALE_MOST);
  View view;

  if (self->view.scale <= 0)
    return;
  view = on_pixels (view_zoomed (&self->view, scale / self->view.scale, x, y));
  _hb_canvas_set_view (self, &view, FALSE);
}

void
hb_canvas_zoom (HbCanvas *self, double factor)
{
  g_return_if_fail (HB_IS_CANVAS (self));
  zoom_at (self, factor, gtk_widget_get_width (GTK_WIDGET (self)) / 2.0,
           gtk_widget_get_height (GTK_WIDGET (self)) / 2.0);
}

void
hb_canvas_go_to (HbCanvas *self, gint32 course, Length x)
{
  const Layout *layout = hb_answers_get_latest (self->answers, self->wall);
  const double width = gtk_widget_get_width (GTK_WIDGET (self));
  const double height = gtk_widget_get_height (GTK_WIDGET (self));
  MarkPoint place = { .x = length_to_mm (x) };
  View view = self->view;
  double sx, sy;

  g_return_if_fail (HB_IS_CANVAS (self));
  if (layout && course > 0 && course <= (gint32) layout->courses->len)
    place.z = length_to_mm (layout_course (layout, (guint) course - 1)->top);
  view_to_sheet (&view, &place, &sx, &sy);
  if (sx < 0.1 * width || sx > 0.9 * width)
    view.ox += width / 2 - sx;
  if (sy < 0.1 * height || sy > 0.9 * height)
    view.oy += height / 2 - sy;
  if (view.ox != self->view.ox || view.oy != self->view.oy)
    {
      view = on_pixels (view);
      _hb_canvas_set_view (self, &view, FALSE);
    }
}

static gboolean
scroll_cb (HbCanvas *self, double dx, double dy, GtkEventControllerScroll *scroll)
{
  const GdkModifierType state
      = gtk_event_controller_get_current_event_state (GTK_EVENT_CONTROLLER (scroll));
  const gboolean wheel = gtk_event_controller_scroll_get_unit (scroll) == GDK_SCROLL_UNIT_WHEEL;
  View view = self->view;

  if ((state & GDK_CONTROL_MASK) || (wheel && !(state & GDK_SHIFT_MASK) && dx == 0))
    {
      zoom_at (self, wheel ? (dy > 0 ? 1 / 1.15 : 1.15) : 1 - CLAMP (dy, -50, 50) / 200,
               self->pointer_x, self->pointer_y);
      return GDK_EVENT_STOP;
    }
  view.ox -= (wheel ? 60 : 1) * (dx != 0 ? dx : (wheel ? dy : 0));
  view.oy -= wheel ? 0 : dy;
  view = on_pixels (view);
  _hb_canvas_set_view (self, &view, FALSE);
  return GDK_EVENT_STOP;
}

static void
pinch_begin_cb (HbCanvas *self)
{
  self->pinched_scale = self->view.scale;
}

static void
pinch_cb (HbCanvas *self, double factor, GtkGesture *gesture)
{
  double x = 0, y = 0;

  gtk_gesture_get_bounding_box_center (gesture, &x, &y);
  zoom_at (self, self->pinched_scale * factor / self->view.scale, x, y);
}

void
_hb_canvas_add_zoom (HbCanvas *self)
{
  GtkEventController *scroll
      = gtk_event_controller_scroll_new (GTK_EVENT_CONTROLLER_SCROLL_BOTH_AXES);
  GtkGesture *pinch = gtk_gesture_zoom_new ();

  g_signal_connect_swapped (scroll, "scroll", G_CALLBACK (scroll_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), scroll);
  g_signal_connect_swapped (pinch, "begin", G_CALLBACK (pinch_begin_cb), self);
  g_signal_connect_swapped (pinch, "scale-changed", G_CALLBACK (pinch_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (pinch));
}
