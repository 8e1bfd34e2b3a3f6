/* canvas-view.c - where the wall lies on the sheet: fitted, larger, smaller, moved */
#include "app/canvas-private.h"
#include "app/zoom.h"

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

void
hb_canvas_zoom (HbCanvas *self, double factor)
{
  g_return_if_fail (HB_IS_CANVAS (self));
  hb_zoom_at (GTK_WIDGET (self), factor, gtk_widget_get_width (GTK_WIDGET (self)) / 2.0,
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

static void
zoomed_cb (gpointer widget, const View *view)
{
  _hb_canvas_set_view (widget, view, FALSE);
}

void
_hb_canvas_add_zoom (HbCanvas *self)
{
  const HbZoom zoom
      = { &self->view, &self->pointer_x, &self->pointer_y, SCALE_LEAST, SCALE_MOST, zoomed_cb };

  hb_zoom_add (GTK_WIDGET (self), &zoom);
}
