#include "app/plan-view.h"

#include <glib/gi18n.h>

#include "app/plan-view-private.h"
#include "app/tool.h"
#include "app/zoom.h"
#include "model/plan-edit.h"

/* How near a pointer must be to a handle, px. */
#define PICK_REACH 7.0
#define SCALE_LEAST 0.0005
#define SCALE_MOST 5.0

enum
{
  SIGNAL_CHOSEN,
  SIGNAL_MEETING,
  SIGNAL_OPEN,
  SIGNAL_SAID,
  SIGNAL_REFUSED,
  SIGNAL_TOOL,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (HbPlanView, hb_plan_view, GTK_TYPE_WIDGET)

const Project *
_hb_plan_view_project (HbPlanView *self)
{
  return hb_document_get_project (self->document);
}

void
_hb_plan_view_say (HbPlanView *self, const char *sentence)
{
  g_signal_emit (self, signals[SIGNAL_SAID], 0, sentence);
}

/* ---- what is drawn ---- */

Theme
_hb_plan_view_theme (HbPlanView *self)
{
  gboolean dark = FALSE;

  g_object_get (gtk_widget_get_settings (GTK_WIDGET (self)), "gtk-application-prefer-dark-theme",
                &dark, NULL);
  return dark ? THEME_DARK : THEME_LIGHT;
}

void
_hb_plan_view_queue_redraw (HbPlanView *self)
{
  self->stale = TRUE;
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

static void
redraw (HbPlanView *self)
{
  PlanTrace trace;
  const PlanInput input = {
    .project = _hb_plan_view_project (self),
    .wall = self->wall,
    .opening = self->opening,
    .meeting = { self->meeting[0], self->meeting[1] },
    .trace = _hb_plan_view_get_trace (self, &trace) ? &trace : NULL,
  };

  g_clear_pointer (&self->drawing, drawing_free);
  g_clear_pointer (&self->overlay, drawing_free);
  self->drawing = plan_drawing (&input);
  self->overlay = plan_overlay (&input);
  self->stale = FALSE;
  self->unrecorded = TRUE;
}

static void
record (HbPlanView *self, const graphene_rect_t *area)
{
  const Theme theme = _hb_plan_view_theme (self);

  if (self->stale || !self->drawing)
    redraw (self);
  if (!self->unrecorded && hb_recording_covers (self->recording, &self->view, theme, area))
    return;
  self->unrecorded = FALSE;
  hb_recording_update (self->recording, self->ink, self->drawing, &self->view, theme, area);
  hb_recording_update (self->moving, self->ink, self->overlay, &self->view, theme, area);
}

static void
hb_plan_view_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  HbPlanView *self = HB_PLAN_VIEW (widget);
  const graphene_rect_t area = GRAPHENE_RECT_INIT (0, 0, (float) gtk_widget_get_width (widget),
                                                   (float) gtk_widget_get_height (widget));
  const Rgba fill = theme_row (_hb_plan_view_theme (self), STYLE_PAPER)->fill;
  const GdkRGBA paper = { (float) fill.r, (float) fill.g, (float) fill.b, 1 };

  gtk_snapshot_push_clip (snapshot, &area);
  gtk_snapshot_append_color (snapshot, &paper, &area);
  if (self->document)
    {
      record (self, &area);
      hb_recording_snapshot (self->recording, snapshot, &self->view);
      hb_recording_snapshot (self->moving, snapshot, &self->view);
      _hb_plan_view_snapshot_strip (self, snapshot);
    }
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child;
       child = gtk_widget_get_next_sibling (child))
    gtk_widget_snapshot_child (widget, child, snapshot);
  gtk_snapshot_pop (snapshot);
}

gboolean
_hb_plan_view_pick (HbPlanView *self, double x, double y, MarkRef *ref)
{
  *ref = (MarkRef){ .kind = REF_NONE };
  if (self->stale || !self->drawing)
    redraw (self);
  if (drawing_pick (self->overlay, &self->view, x, y, PICK_REACH, ref)
      || drawing_pick (self->drawing, &self->view, x, y, 0, ref))
    return TRUE;
  *ref = (MarkRef){ .kind = REF_NONE };
  return FALSE;
}

/* ---- the view ---- */

void
_hb_plan_view_set_view (HbPlanView *self, const View *view, gboolean fitted)
{
  self->view = *view;
  /* Steps of half a pixel would blur what is set on whole ones. */
  self->view.ox = (double) (int) view->ox;
  self->view.oy = (double) (int) view->oy;
  self->fitted = fitted;
  _hb_plan_view_place_holds (self);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

void
hb_plan_view_fit (HbPlanView *self)
{
  const int width = gtk_widget_get_width (GTK_WIDGET (self));
  const int height = gtk_widget_get_height (GTK_WIDGET (self));
  View view;

  g_return_if_fail (HB_IS_PLAN_VIEW (self));
  self->fitted = TRUE;
  if (!self->document || width <= 0 || height <= 0)
    return;
  view = plan_fit (_hb_plan_view_project (self), NULL, width, height);
  _hb_plan_view_set_view (self, &view, TRUE);
}

void
hb_plan_view_zoom (HbPlanView *self, double factor)
{
  g_return_if_fail (HB_IS_PLAN_VIEW (self));
  hb_zoom_at (GTK_WIDGET (self), factor, gtk_widget_get_width (GTK_WIDGET (self)) / 2.0,
              gtk_widget_get_height (GTK_WIDGET (self)) / 2.0);
}

static void
zoomed_cb (gpointer widget, const View *view)
{
  _hb_plan_view_set_view (widget, view, FALSE);
}

static void
add_zoom (HbPlanView *self)
{
  const HbZoom zoom
      = { &self->view, &self->pointer_x, &self->pointer_y, SCALE_LEAST, SCALE_MOST, zoomed_cb };

  hb_zoom_add (GTK_WIDGET (self), &zoom);
}

/* ---- what is chosen ---- */

char *
_hb_plan_view_dup_name (const Project *project, const Meeting *meeting)
{
  const char *a = tool_wall_name (project_wall_at (project, meeting->wall[0]));
  const char *b = tool_wall_name (project_wall_at (project, meeting->wall[1]));

  switch (meeting->kind)
    {
    case MEET_CORNER:
      return g_strdup_printf (_ ("Corner of %s and %s"), a, b);
    case MEET_TEE:
      return g_strdup_printf (_ ("Tee of %s at %s"), a, b);
    case MEET_CROSSING:
      return g_strdup_printf (_ ("Crossing of %s and %s"), a, b);
    case MEET_WRONG:
    default:
      return g_strdup_printf (_ ("%s and %s in each other’s way"), a, b);
    }
}

char *
hb_plan_view_dup_meeting_name (const Project *project, WallId first, WallId second)
{
  Meeting meeting;

  if (!plan_meeting_between (project, first, second, &meeting))
    return g_strdup ("");
  return _hb_plan_view_dup_name (project, &meeting);
}

MarkRef
_hb_plan_view_chosen (HbPlanView *self)
{
  if (self->meeting[0].n)
    return (MarkRef){ .kind = REF_MEETING,
                      .a = (gint32) self->meeting[0].n,
                      .b = (gint32) self->meeting[1].n };
  if (self->opening.n)
    return (MarkRef){ .kind = REF_OPENING, .id = self->opening.n };
  if (self->wall.n)
    return (MarkRef){ .kind = REF_WALL, .id = self->wall.n };
  return (MarkRef){ .kind = REF_NONE };
}

void
hb_plan_view_select_meeting (HbPlanView *self, WallId first, WallId second)
{
  g_return_if_fail (HB_IS_PLAN_VIEW (self));
  if (first.n == self->meeting[0].n && second.n == self->meeting[1].n)
    return;
  self->meeting[0] = first;
  self->meeting[1] = second;
  _hb_plan_view_queue_redraw (self);
  g_signal_emit (self, signals[SIGNAL_MEETING], 0, first.n, second.n);
}

void
hb_plan_view_select (HbPlanView *self, WallId wall, OpeningId opening)
{
  g_return_if_fail (HB_IS_PLAN_VIEW (self));
  if (wall.n == self->wall.n && opening.n == self->opening.n)
    return;
  _hb_plan_view_end_nudge (self);
  if (self->tool == HB_PLAN_TOOL_PLACE && wall.n != self->wall.n)
    hb_plan_view_set_tool (self, HB_PLAN_TOOL_NONE);
  self->wall = wall;
  self->opening = opening;
  if (opening.n || (wall.n != self->meeting[0].n && wall.n != self->meeting[1].n))
    hb_plan_view_select_meeting (self, (WallId){ 0 }, (WallId){ 0 });
  _hb_plan_view_ask_places (self);
  _hb_plan_view_queue_redraw (self);
}

/* What is chosen, and what the hand may do to it. */
static void
say_chosen (HbPlanView *self)
{
  const Project *project = _hb_plan_view_project (self);
  const MarkRef ref = _hb_plan_view_chosen (self);
  const Wall *wall = project_wall (project, self->wall);
  char a[LENGTH_TEXT_SIZE];
  g_autofree char *text = NULL, *name = NULL;
  Meeting meeting;

  if (ref.kind == REF_MEETING)
    {
      name = hb_plan_view_dup_meeting_name (project, self->meeting[0], self->meeting[1]);
      text = plan_meeting_between (project, self->meeting[0], self->meeting[1], &meeting)
                     && meeting.kind != MEET_WRONG
                 ? g_strdup_printf (_ ("%s · Enter makes it the next way"), name)
                 : g_strdup (name);
    }
  else if (ref.kind == REF_OPENING)
    text = g_strdup_printf (_ ("%s · drag it along its wall, Enter shows its elevation"),
                            tool_opening_name (wall_opening (wall, self->opening)));
  else if (wall && wall->place.given)
    text = g_strdup_printf (
        _ ("%s, %s mm · drag it to move it, with Shift its wing or building; Enter shows its "
           "elevation"),
        tool_wall_name (wall), length_text (wall->length, a));
  _hb_plan_view_say (self, text ? text : "");
}

void
_hb_plan_view_choose (HbPlanView *self, const MarkRef *ref)
{
  const Project *project = _hb_plan_view_project (self);
  const Wall *of_opening
      = ref->kind == REF_OPENING ? project_wall_of_opening (project, (OpeningId){ ref->id }) : NULL;
  WallId wall = self->wall;

  if (ref->kind == REF_MEETING)
    wall = (WallId){ (guint32) ref->a };
  else if (ref->kind == REF_OPENING && of_opening)
    wall = of_opening->id;
  else if (ref->kind == REF_WALL)
    wall = (WallId){ ref->id };
  hb_plan_view_select (self, wall, (OpeningId){ of_opening ? ref->id : 0 });
  hb_plan_view_select_meeting (self, (WallId){ ref->kind == REF_MEETING ? (guint32) ref->a : 0 },
                               (WallId){ ref->kind == REF_MEETING ? (guint32) ref->b : 0 });
  g_signal_emit (self, signals[SIGNAL_CHOSEN], 0, self->wall.n, self->opening.n);
  say_chosen (self);
}

static void
say_tool (HbPlanView *self)
{
  switch (self->tool)
    {
    case HB_PLAN_TOOL_PART:
      _hb_plan_view_say (self, _ ("Drag in a room, along the new partition, or press Enter for one "
                                  "from the chosen wall; Escape cancels."));
      break;
    case HB_PLAN_TOOL_OUTLINE:
    case HB_PLAN_TOOL_WALL:
      _hb_plan_view_say_draw (self);
      break;
    case HB_PLAN_TOOL_WINDOW:
    case HB_PLAN_TOOL_DOOR:
    case HB_PLAN_TOOL_VOID:
      _hb_plan_view_say (self, _ ("Click in a wall, or drag along it from jamb to jamb; Enter sets "
                                  "one in the chosen wall; Escape cancels."));
      break;
    case HB_PLAN_TOOL_PLACE:
      break; /* says where it is */
    case HB_PLAN_TOOL_NONE:
    default:
      _hb_plan_view_say (self, "");
    }
}

void
hb_plan_view_set_tool (HbPlanView *self, HbPlanTool tool)
{
  g_return_if_fail (HB_IS_PLAN_VIEW (self));
  if (tool == self->tool)
    return;
  if (self->tool == HB_PLAN_TOOL_PLACE)
    hb_document_drop_preview (self->document);
  _hb_plan_view_draw_clear (self);
  self->tool = tool;
  if (tool == HB_PLAN_TOOL_PLACE && !_hb_plan_view_place_begin (self))
    self->tool = HB_PLAN_TOOL_NONE;
  say_tool (self);
  _hb_plan_view_update_cursor (self);
  _hb_plan_view_queue_redraw (self);
  g_signal_emit (self, signals[SIGNAL_TOOL], 0);
}

HbPlanTool
hb_plan_view_get_tool (HbPlanView *self)
{
  return self->tool;
}

gboolean
hb_plan_view_cancel (HbPlanView *self)
{
  const gboolean typing = _hb_plan_view_is_typing (self);
  const gboolean tool = self->tool != HB_PLAN_TOOL_NONE;
  const gboolean pulled = _hb_plan_view_pull_cancel (self);

  g_return_val_if_fail (HB_IS_PLAN_VIEW (self), FALSE);
  _hb_plan_view_stop_typing (self);
  hb_plan_view_set_tool (self, HB_PLAN_TOOL_NONE);
  return pulled || tool || typing;
}

/* ---- the document ---- */

static gboolean
has_meeting (HbPlanView *self)
{
  Meeting meeting;

  return !self->meeting[0].n
         || plan_meeting_between (_hb_plan_view_project (self), self->meeting[0], self->meeting[1],
                                  &meeting);
}

static void
changed_cb (HbPlanView *self)
{
  if (!has_meeting (self))
    hb_plan_view_select_meeting (self, (WallId){ 0 }, (WallId){ 0 });
  _hb_plan_view_queue_redraw (self);
  if (!gtk_widget_get_mapped (GTK_WIDGET (self)))
    return;
  _hb_plan_view_ask_places (self);
  _hb_plan_view_update_holds (self);
  if (self->fitted && self->pull.kind == PLAN_PULL_NONE && !self->nudging
      && self->tool != HB_PLAN_TOOL_PLACE)
    hb_plan_view_fit (self);
}

static void
theme_cb (HbPlanView *self)
{
  _hb_plan_view_queue_redraw (self);
}

void
hb_plan_view_set_document (HbPlanView *self, HbDocument *document, HbAnswers *answers)
{
  g_return_if_fail (HB_IS_PLAN_VIEW (self) && !self->document);
  self->document = g_object_ref (document);
  self->answers = g_object_ref (answers);
  g_signal_connect_object (answers, "laid", G_CALLBACK (gtk_widget_queue_draw), self,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (document, "changed", G_CALLBACK (changed_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (gtk_widget_get_settings (GTK_WIDGET (self)),
                           "notify::gtk-application-prefer-dark-theme", G_CALLBACK (theme_cb), self,
                           G_CONNECT_SWAPPED);
}

/* ---- the widget ---- */

static void
hb_plan_view_measure (GtkWidget *widget, GtkOrientation orientation, int for_size, int *minimum,
                      int *natural, int *minimum_baseline, int *natural_baseline)
{
  (void) widget;
  (void) for_size;
  *minimum = orientation == GTK_ORIENTATION_HORIZONTAL ? 320 : 200;
  *natural = orientation == GTK_ORIENTATION_HORIZONTAL ? 900 : 560;
  *minimum_baseline = *natural_baseline = -1;
}

static void
hb_plan_view_size_allocate (GtkWidget *widget, int width, int height, int baseline)
{
  HbPlanView *self = HB_PLAN_VIEW (widget);

  (void) width;
  (void) height;
  (void) baseline;
  if (self->fitted && self->pull.kind == PLAN_PULL_NONE)
    hb_plan_view_fit (self);
  _hb_plan_view_place_holds (self);
  _hb_plan_view_place_typing (self);
}

/* What nobody sees need not be found either: what the keyboard walks over is there only when the
 * plan is. */
static void
hb_plan_view_map (GtkWidget *widget)
{
  GTK_WIDGET_CLASS (hb_plan_view_parent_class)->map (widget);
  if (HB_PLAN_VIEW (widget)->fitted)
    hb_plan_view_fit (HB_PLAN_VIEW (widget));
  _hb_plan_view_update_holds (HB_PLAN_VIEW (widget));
  _hb_plan_view_ask_places (HB_PLAN_VIEW (widget));
}

static void
hb_plan_view_unmap (GtkWidget *widget)
{
  hb_plan_view_cancel (HB_PLAN_VIEW (widget));
  GTK_WIDGET_CLASS (hb_plan_view_parent_class)->unmap (widget);
  _hb_plan_view_drop_holds (HB_PLAN_VIEW (widget));
  hb_places_forget (HB_PLAN_VIEW (widget)->places);
}

static gboolean
hb_plan_view_grab_focus (GtkWidget *widget)
{
  HbPlanView *self = HB_PLAN_VIEW (widget);

  if (!self->holds->len)
    return GTK_WIDGET_CLASS (hb_plan_view_parent_class)->grab_focus (widget);
  _hb_plan_view_focus_chosen (self);
  return TRUE;
}

static gboolean
hb_plan_view_focus (GtkWidget *widget, GtkDirectionType direction)
{
  if (direction == GTK_DIR_TAB_FORWARD || direction == GTK_DIR_TAB_BACKWARD)
    return _hb_plan_view_focus_next (HB_PLAN_VIEW (widget), direction == GTK_DIR_TAB_FORWARD);
  return GTK_WIDGET_CLASS (hb_plan_view_parent_class)->focus (widget, direction);
}

static void
hb_plan_view_dispose (GObject *object)
{
  HbPlanView *self = HB_PLAN_VIEW (object);

  _hb_plan_view_drop_holds (self);
  _hb_plan_view_pull_clear (self);
  g_clear_pointer (&self->typing, gtk_widget_unparent);
  g_clear_pointer (&self->places, hb_places_free);
  g_clear_object (&self->answers);
  g_clear_object (&self->document);
  G_OBJECT_CLASS (hb_plan_view_parent_class)->dispose (object);
}

static void
hb_plan_view_finalize (GObject *object)
{
  HbPlanView *self = HB_PLAN_VIEW (object);

  g_clear_pointer (&self->drawing, drawing_free);
  g_clear_pointer (&self->overlay, drawing_free);
  hb_recording_free (self->recording);
  hb_recording_free (self->moving);
  ink_free (self->ink);
  g_ptr_array_unref (self->holds);
  g_array_unref (self->draw.trace);
  g_string_free (self->draw.typed, TRUE);
  G_OBJECT_CLASS (hb_plan_view_parent_class)->finalize (object);
}

static guint
new_signal (const char *name, guint n, GType first, GType second)
{
  return g_signal_new (name, HB_TYPE_PLAN_VIEW, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE,
                       n, first, second);
}

static void
hb_plan_view_class_init (HbPlanViewClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  object_class->dispose = hb_plan_view_dispose;
  object_class->finalize = hb_plan_view_finalize;
  widget_class->snapshot = hb_plan_view_snapshot;
  widget_class->measure = hb_plan_view_measure;
  widget_class->size_allocate = hb_plan_view_size_allocate;
  widget_class->map = hb_plan_view_map;
  widget_class->unmap = hb_plan_view_unmap;
  widget_class->grab_focus = hb_plan_view_grab_focus;
  widget_class->focus = hb_plan_view_focus;
  gtk_widget_class_set_css_name (widget_class, "canvas");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
  signals[SIGNAL_CHOSEN] = new_signal ("chosen", 2, G_TYPE_UINT, G_TYPE_UINT);
  signals[SIGNAL_MEETING] = new_signal ("meeting", 2, G_TYPE_UINT, G_TYPE_UINT);
  signals[SIGNAL_OPEN] = new_signal ("open", 0, 0, 0);
  signals[SIGNAL_SAID] = new_signal ("said", 1, G_TYPE_STRING, 0);
  signals[SIGNAL_REFUSED] = new_signal ("refused", 1, G_TYPE_STRING, 0);
  signals[SIGNAL_TOOL] = new_signal ("tool", 0, 0, 0);
}

/* More of the strip is known. */
static void
places_changed_cb (gpointer data)
{
  gtk_widget_queue_draw (GTK_WIDGET (data));
}

static void
hb_plan_view_init (HbPlanView *self)
{
  self->ink = ink_new (NULL);
  self->recording = hb_recording_new (HB_ALL_LAYERS);
  self->moving = hb_recording_new (HB_ALL_LAYERS);
  self->holds = g_ptr_array_new ();
  self->places = hb_places_new (places_changed_cb, self);
  self->draw.trace = trace_new ();
  self->draw.typed = g_string_new (NULL);
  self->fitted = TRUE;
  self->view = (View){ .scale = 0.05 };
  gtk_widget_set_overflow (GTK_WIDGET (self), GTK_OVERFLOW_HIDDEN);
  /* Where nothing stands yet, the plan itself takes the keys that draw. */
  gtk_widget_set_focusable (GTK_WIDGET (self), TRUE);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("The plan"), -1);
  add_zoom (self);
  _hb_plan_view_add_pointer (self);
  _hb_plan_view_add_keys (self);
}
