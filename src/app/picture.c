#include "app/picture.h"

#include "app/recording.h"
#include "paint/elevation.h"

#define WIDTH 112 /* px */
#define HEIGHT 44

struct _HbPicture
{
  GtkWidget parent;

  Project *project;
  Wall *wall;
  Layout *layout;
  Drawing *drawing;
  Ink *ink;
  HbRecording *recording;
};

G_DEFINE_FINAL_TYPE (HbPicture, hb_picture, GTK_TYPE_WIDGET)

static Theme
theme_of (HbPicture *self)
{
  gboolean dark = FALSE;

  g_object_get (gtk_widget_get_settings (GTK_WIDGET (self)), "gtk-application-prefer-dark-theme",
                &dark, NULL);
  return dark ? THEME_DARK : THEME_LIGHT;
}

/* The wall alone, as large as fits, standing on the picture's foot. */
static View
view_of (HbPicture *self, int width, int height)
{
  const double length = length_to_mm (self->wall->length);
  const double tall = elevation_height (self->wall, FALSE);
  const double scale = MIN ((width - 2) / length, (height - 2) / tall);

  return (View){ .scale = scale, .ox = (width - length * scale) / 2, .oy = height - 1 };
}

static void
hb_picture_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  HbPicture *self = HB_PICTURE (widget);
  const int width = gtk_widget_get_width (widget), height = gtk_widget_get_height (widget);
  const graphene_rect_t area = GRAPHENE_RECT_INIT (0, 0, (float) width, (float) height);
  View view;

  if (!self->drawing)
    return;
  view = view_of (self, width, height);
  hb_recording_update (self->recording, self->ink, self->drawing, &view, theme_of (self), &area);
  gtk_snapshot_push_clip (snapshot, &area);
  hb_recording_snapshot (self->recording, snapshot, &view);
  gtk_snapshot_pop (snapshot);
}

static void
hb_picture_measure (GtkWidget *widget, GtkOrientation orientation, int for_size, int *minimum,
                    int *natural, int *minimum_baseline, int *natural_baseline)
{
  (void) widget;
  (void) for_size;
  *minimum = *natural = orientation == GTK_ORIENTATION_HORIZONTAL ? WIDTH : HEIGHT;
  *minimum_baseline = *natural_baseline = -1;
}

static void
clear (HbPicture *self)
{
  g_clear_pointer (&self->project, project_unref);
  g_clear_pointer (&self->wall, wall_unref);
  g_clear_pointer (&self->layout, layout_unref);
  g_clear_pointer (&self->drawing, drawing_free);
}

static void
hb_picture_finalize (GObject *object)
{
  HbPicture *self = HB_PICTURE (object);

  clear (self);
  ink_free (self->ink);
  hb_recording_free (self->recording);
  G_OBJECT_CLASS (hb_picture_parent_class)->finalize (object);
}

static void
hb_picture_class_init (HbPictureClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->finalize = hb_picture_finalize;
  widget_class->snapshot = hb_picture_snapshot;
  widget_class->measure = hb_picture_measure;
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_PRESENTATION);
}

static void
hb_picture_init (HbPicture *self)
{
  self->ink = ink_new (NULL);
  self->recording = hb_recording_new (HB_ALL_LAYERS);
}

GtkWidget *
hb_picture_new (void)
{
  return g_object_new (HB_TYPE_PICTURE, NULL);
}

void
hb_picture_set_wall (HbPicture *self, const Project *project, const Wall *wall,
                     const Layout *layout)
{
  ElevationInput input = { .project = project, .wall = wall, .layout = layout, .bare = TRUE };

  g_return_if_fail (HB_IS_PICTURE (self));
  if (!layout || (self->wall == wall && self->layout == layout))
    return;
  clear (self);
  self->project = project_ref (project);
  self->wall = wall_ref (wall);
  self->layout = layout_ref (layout);
  self->drawing = elevation_laying (&input);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}
