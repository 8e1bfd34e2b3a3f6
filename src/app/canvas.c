#include "app/canvas.h"

#include "app/canvas-private.h"

#include <glib/gi18n.h>

/* How far along its wall a selected opening is tried, and in which steps. */
#define PLACES_WITHIN LENGTH_MM (300)
#define PLACES_STEP LENGTH_MM (5)

enum
{
  SIGNAL_SELECTED,
  SIGNAL_PIECE,
  SIGNAL_TOOL,
  SIGNAL_SAID,
  SIGNAL_REFUSED,
  SIGNAL_WALL,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (HbCanvas, hb_canvas, GTK_TYPE_WIDGET)

/* ---- what is looked at ---- */

const Project *
_hb_canvas_project (HbCanvas *self)
{
  return hb_document_get_project (self->document);
}

const Wall *
_hb_canvas_get_wall_value (HbCanvas *self)
{
  return self->document && self->wall.n ? project_wall (_hb_canvas_project (self), self->wall)
                                        : NULL;
}

const Block *
_hb_canvas_get_block (HbCanvas *self)
{
  const Wall *wall = _hb_canvas_get_wall_value (self);

  return wall ? project_block (_hb_canvas_project (self), wall->block) : NULL;
}

const Opening *
_hb_canvas_get_opening (HbCanvas *self)
{
  const Wall *wall = _hb_canvas_get_wall_value (self);

  return wall && self->selected.n ? wall_opening (wall, self->selected) : NULL;
}

Theme
_hb_canvas_theme (HbCanvas *self)
{
  gboolean dark = FALSE;

  g_object_get (gtk_widget_get_settings (GTK_WIDGET (self)), "gtk-application-prefer-dark-theme",
                &dark, NULL);
  return dark ? THEME_DARK : THEME_LIGHT;
}

/* ---- changes ---- */

void
_hb_canvas_say (HbCanvas *self, const char *sentence)
{
  g_signal_emit (self, signals[SIGNAL_SAID], 0, sentence);
}

void
_hb_canvas_refused (HbCanvas *self, const GError *error)
{
  g_signal_emit (self, signals[SIGNAL_REFUSED], 0, error->message);
}

gboolean
_hb_canvas_apply (HbCanvas *self, Edit *edit, const char *label)
{
  g_autoptr (Edit) owned = edit;
  g_autoptr (GError) error = NULL;

  if (hb_document_apply (self->document, owned, label, &error))
    return TRUE;
  _hb_canvas_refused (self, error);
  return FALSE;
}

Shift
_hb_canvas_pulled_shift (HbCanvas *self)
{
  if (self->pull.kind != PULL_OPENING || !self->pull.under_way)
    return SHIFT_ALONG;
  if (self->pull.part == PART_SILL)
    return SHIFT_SILL;
  return self->pull.part == PART_HEAD ? SHIFT_HEAD : SHIFT_ALONG;
}

/* Under a hand only what it moves: the others change with every move. */
static guint
wanted_shifts (HbCanvas *self, const Opening *opening)
{
  if (self->pull.kind == PULL_OPENING && self->pull.under_way)
    return 1u << _hb_canvas_pulled_shift (self);
  return opening->kind == OPENING_DOOR && opening->sill == 0 ? 1u << SHIFT_ALONG | 1u << SHIFT_HEAD
                                                             : (1u << N_SHIFTS) - 1;
}

void
_hb_canvas_ask_places (HbCanvas *self)
{
  const Wall *wall = _hb_canvas_get_wall_value (self);
  const Opening *opening = _hb_canvas_get_opening (self);

  if (opening && !self->client && gtk_widget_get_mapped (GTK_WIDGET (self)))
    hb_places_ask (self->places, wall, _hb_canvas_get_block (self), opening->id,
                   wanted_shifts (self, opening), PLACES_WITHIN, PLACES_STEP);
  else
    hb_places_forget (self->places);
}

static void
places_changed_cb (gpointer data)
{
  _hb_canvas_say_strip_again (data);
  gtk_widget_queue_draw (GTK_WIDGET (data));
}

static void
changed_cb (HbCanvas *self)
{
  const Wall *wall = _hb_canvas_get_wall_value (self);

  if (wall && self->selected.n && !wall_opening (wall, self->selected))
    hb_canvas_select (self, (OpeningId){ 0 });
  if (self->joint && !_hb_canvas_get_joint (self))
    hb_canvas_select_joint (self, 0);
  if (self->held.kind != REF_NONE && !_hb_canvas_has_corner (self))
    _hb_canvas_hold_corner (self, NULL);
  _hb_canvas_update_holds (self);
  _hb_canvas_ask_places (self);
  if (self->fitted && self->pull.kind == PULL_NONE)
    hb_canvas_fit (self);
  _hb_canvas_queue_redraw (self);
}

static void
laid_cb (HbCanvas *self, guint wall)
{
  if (wall != self->wall.n)
    return;
  _hb_canvas_follow_piece (self);
  _hb_canvas_perpends_laid (self);
  _hb_canvas_queue_redraw (self);
}

static void
theme_cb (HbCanvas *self)
{
  _hb_canvas_queue_redraw (self);
}

void
hb_canvas_set_document (HbCanvas *self, HbDocument *document, HbAnswers *answers)
{
  g_return_if_fail (HB_IS_CANVAS (self) && !self->document);
  self->document = g_object_ref (document);
  self->answers = g_object_ref (answers);
  g_signal_connect_object (document, "changed", G_CALLBACK (changed_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (answers, "laid", G_CALLBACK (laid_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (gtk_widget_get_settings (GTK_WIDGET (self)),
                           "notify::gtk-application-prefer-dark-theme", G_CALLBACK (theme_cb), self,
                           G_CONNECT_SWAPPED);
}

void
hb_canvas_set_wall (HbCanvas *self, WallId wall)
{
  g_return_if_fail (HB_IS_CANVAS (self));
  if (wall.n == self->wall.n)
    return;
  hb_canvas_cancel (self);
  self->wall = wall;
  self->selected = (OpeningId){ 0 };
  self->joint = 0;
  self->course = 0;
  self->piece = self->in_course = 0;
  self->followed_course = 0;
  self->perpend = self->hovered = (Perpend){ 0 };
  self->held = (MarkRef){ .kind = REF_NONE };
  hb_places_forget (self->places);
  hb_canvas_fit (self);
  _hb_canvas_update_holds (self);
  _hb_canvas_queue_redraw (self);
  g_signal_emit (self, signals[SIGNAL_SELECTED], 0);
  g_signal_emit (self, signals[SIGNAL_WALL], 0);
}

WallId
hb_canvas_get_wall (HbCanvas *self)
{
  return self->wall;
}

void
hb_canvas_select (HbCanvas *self, OpeningId opening)
{
  g_return_if_fail (HB_IS_CANVAS (self));
  if (opening.n == self->selected.n && !self->joint)
    return;
  _hb_canvas_end_nudge (self);
  self->joint = 0;
  if (opening.n)
    {
      _hb_canvas_take_perpend (self, (Perpend){ 0 });
      _hb_canvas_hold_corner (self, NULL);
    }
  self->selected = opening;
  _hb_canvas_ask_places (self);
  _hb_canvas_queue_redraw (self);
  g_signal_emit (self, signals[SIGNAL_SELECTED], 0);
}

OpeningId
hb_canvas_get_selected (HbCanvas *self)
{
  return self->selected;
}

void
hb_canvas_select_joint (HbCanvas *self, guint joint)
{
  g_return_if_fail (HB_IS_CANVAS (self));
  if (joint == self->joint)
    return;
  _hb_canvas_end_nudge (self);
  if (joint)
    {
      _hb_canvas_take_perpend (self, (Perpend){ 0 });
      _hb_canvas_hold_corner (self, NULL);
    }
  self->joint = joint;
  if (joint)
    self->selected = (OpeningId){ 0 };
  _hb_canvas_ask_places (self);
  _hb_canvas_queue_redraw (self);
  g_signal_emit (self, signals[SIGNAL_SELECTED], 0);
}

guint
hb_canvas_get_joint (HbCanvas *self)
{
  return self->joint;
}

void
hb_canvas_set_client (HbCanvas *self, gboolean client)
{
  g_return_if_fail (HB_IS_CANVAS (self));
  if (client == self->client)
    return;
  hb_canvas_cancel (self);
  _hb_canvas_take_perpend (self, (Perpend){ 0 });
  _hb_canvas_hover_perpend (self, (Perpend){ 0 });
  _hb_canvas_hold_corner (self, NULL);
  self->client = client;
  _hb_canvas_say (self, "");
  _hb_canvas_ask_places (self);
  _hb_canvas_update_holds (self);
  if (!client && gtk_widget_get_focus_child (GTK_WIDGET (self)))
    _hb_canvas_focus_selected (self);
  hb_canvas_fit (self);
  _hb_canvas_queue_redraw (self);
}

gboolean
hb_canvas_get_client (HbCanvas *self)
{
  return self->client;
}

/* A new wall is drawn on a blank sheet; when none was drawn, the one before is shown again. */
static void
turn_sheet (HbCanvas *self, HbTool tool)
{
  if (tool == HB_TOOL_WALL)
    {
      self->wall_before = self->wall;
      hb_canvas_select (self, (OpeningId){ 0 });
      self->wall = (WallId){ 0 };
    }
  else if (self->tool == HB_TOOL_WALL && !self->wall.n)
    {
      self->wall = self->wall_before;
      hb_answers_set_wall (self->answers, self->wall);
      hb_canvas_fit (self);
      /* What was begun and given up was told of as a wall. */
      g_signal_emit (self, signals[SIGNAL_WALL], 0);
    }
  else
    return;
  _hb_canvas_update_holds (self);
  _hb_canvas_queue_redraw (self);
}

static const char *
tool_hint (HbTool tool)
{
  switch (tool)
    {
    case HB_TOOL_WINDOW:
      return _ (
          "Drag from corner to corner of the new window, or click for one of 1200 × 1200 mm.");
    case HB_TOOL_DOOR:
      return _ ("Drag from jamb to jamb of the new door, or click for one of 900 × 2100 mm.");
    case HB_TOOL_VOID:
      return _ ("Drag from corner to corner of the new void, or click for one of 600 × 600 mm.");
    case HB_TOOL_WALL:
      return _ ("Drag the new wall from its left foot to its right top; Escape cancels.");
    case HB_TOOL_SELECT:
    default:
      return "";
    }
}

void
_hb_canvas_say_present (HbCanvas *self)
{
  const Opening *opening = _hb_canvas_get_opening (self);

  if (opening && self->tool == HB_TOOL_SELECT)
    _hb_canvas_say_opening (self, opening);
  else if (_hb_canvas_get_joint (self) && self->tool == HB_TOOL_SELECT)
    _hb_canvas_say_joint (self, _hb_canvas_get_joint (self));
  else if (self->perpend.course && self->tool == HB_TOOL_SELECT)
    _hb_canvas_say_perpend (self);
  else if (_hb_canvas_has_corner (self) && self->tool == HB_TOOL_SELECT)
    _hb_canvas_say_top (self, &self->held);
  else
    _hb_canvas_say (self, tool_hint (self->tool));
}

void
hb_canvas_set_tool (HbCanvas *self, HbTool tool)
{
  g_return_if_fail (HB_IS_CANVAS (self));
  if (tool == self->tool)
    return;
  _hb_canvas_stop_typing (self);
  if (tool != HB_TOOL_SELECT && self->client)
    hb_canvas_set_client (self, FALSE);
  if (tool != HB_TOOL_SELECT)
    {
      _hb_canvas_take_perpend (self, (Perpend){ 0 });
      _hb_canvas_hover_perpend (self, (Perpend){ 0 });
    }
  turn_sheet (self, tool);
  self->tool = tool;
  _hb_canvas_say (self, tool_hint (tool));
  _hb_canvas_update_cursor (self);
  gtk_widget_queue_draw (GTK_WIDGET (self));
  g_signal_emit (self, signals[SIGNAL_TOOL], 0);
}

HbTool
hb_canvas_get_tool (HbCanvas *self)
{
  return self->tool;
}

void
hb_canvas_set_highlight (HbCanvas *self, const char *key)
{
  g_return_if_fail (HB_IS_CANVAS (self));
  if (g_strcmp0 (key, self->highlight) == 0)
    return;
  g_free (self->highlight);
  self->highlight = g_strdup (key);
  self->stale_lit = TRUE;
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

void
hb_canvas_set_pallets (HbCanvas *self, GArray *pallets)
{
  g_return_if_fail (HB_IS_CANVAS (self));
  if (!pallets && !self->pallets)
    return;
  g_clear_pointer (&self->pallets, g_array_unref);
  self->pallets = pallets ? g_array_ref (pallets) : NULL;
  _hb_canvas_queue_redraw (self);
}

void
hb_canvas_set_piece (HbCanvas *self, gint32 course, gint32 number)
{
  g_return_if_fail (HB_IS_CANVAS (self));
  _hb_canvas_take_perpend (self, (Perpend){ 0 });
  _hb_canvas_light_piece (self, course, number);
}

void
_hb_canvas_light_piece (HbCanvas *self, gint32 course, gint32 number)
{
  if (self->piece == number && self->in_course == course)
    return;
  self->piece = number;
  self->in_course = course;
  if (course)
    _hb_canvas_hold_corner (self, NULL);
  self->stale_lit = TRUE;
  _hb_canvas_update_holds (self);
  gtk_widget_queue_draw (GTK_WIDGET (self));
  g_signal_emit (self, signals[SIGNAL_PIECE], 0, course, number);
}

void
hb_canvas_get_piece (HbCanvas *self, gint32 *course, gint32 *number)
{
  g_return_if_fail (HB_IS_CANVAS (self));
  *course = self->in_course;
  *number = self->piece;
}

gboolean
hb_canvas_cancel (HbCanvas *self)
{
  gboolean done;

  g_return_val_if_fail (HB_IS_CANVAS (self), FALSE);
  done = _hb_canvas_is_typing (self);
  _hb_canvas_stop_typing (self);
  if (_hb_canvas_pull_cancel (self))
    done = self->given_up = TRUE;
  if (self->tool != HB_TOOL_SELECT)
    {
      hb_canvas_set_tool (self, HB_TOOL_SELECT);
      done = TRUE;
    }
  return done;
}

void
hb_canvas_remove_selected (HbCanvas *self)
{
  const Opening *opening = _hb_canvas_get_opening (self);
  g_autofree char *label = NULL;

  g_return_if_fail (HB_IS_CANVAS (self));
  if (self->joint)
    _hb_canvas_remove_joint (self);
  if (!opening)
    return;
  _hb_canvas_end_nudge (self);
  label = g_strdup_printf (_ ("Remove %s"), tool_opening_name (opening));
  _hb_canvas_apply (self, edit_remove_opening (self->selected), label);
}

/* ---- the widget ---- */

static void
hb_canvas_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  _hb_canvas_snapshot (HB_CANVAS (widget), snapshot);
}

static void
hb_canvas_measure (GtkWidget *widget, GtkOrientation orientation, int for_size, int *minimum,
                   int *natural, int *minimum_baseline, int *natural_baseline)
{
  (void) widget;
  (void) for_size;
  *minimum = orientation == GTK_ORIENTATION_HORIZONTAL ? 320 : 200;
  *natural = orientation == GTK_ORIENTATION_HORIZONTAL ? 900 : 560;
  *minimum_baseline = *natural_baseline = -1;
}

static void
hb_canvas_size_allocate (GtkWidget *widget, int width, int height, int baseline)
{
  HbCanvas *self = HB_CANVAS (widget);

  (void) width;
  (void) height;
  (void) baseline;
  /* Not under a hand that pulls. */
  if (self->fitted && (self->pull.kind == PULL_NONE || self->pull.kind == PULL_PAN))
    hb_canvas_fit (self);
  _hb_canvas_place_holds (self);
  _hb_canvas_place_dimension (self);
}

/* The canvas has no focus of its own: what is selected on it has. */
static gboolean
hb_canvas_grab_focus (GtkWidget *widget)
{
  _hb_canvas_focus_selected (HB_CANVAS (widget));
  return TRUE;
}

static gboolean
hb_canvas_focus (GtkWidget *widget, GtkDirectionType direction)
{
  if (direction == GTK_DIR_TAB_FORWARD || direction == GTK_DIR_TAB_BACKWARD)
    return _hb_canvas_focus_next (HB_CANVAS (widget), direction == GTK_DIR_TAB_FORWARD);
  return GTK_WIDGET_CLASS (hb_canvas_parent_class)->focus (widget, direction);
}

static void
hb_canvas_dispose (GObject *object)
{
  HbCanvas *self = HB_CANVAS (object);

  g_clear_pointer (&self->places, hb_places_free);
  _hb_canvas_drop_holds (self);
  g_clear_pointer (&self->dimension, gtk_widget_unparent);
  g_clear_object (&self->document);
  g_clear_object (&self->answers);
  G_OBJECT_CLASS (hb_canvas_parent_class)->dispose (object);
}

static void
hb_canvas_finalize (GObject *object)
{
  HbCanvas *self = HB_CANVAS (object);

  g_free (self->highlight);
  g_clear_pointer (&self->pallets, g_array_unref);
  g_clear_pointer (&self->drawing, drawing_free);
  g_clear_pointer (&self->overlay, drawing_free);
  hb_recording_free (self->recording);
  hb_recording_free (self->rod);
  hb_recording_free (self->tape);
  hb_recording_free (self->lit);
  hb_recording_free (self->moving);
  ink_free (self->ink);
  _hb_canvas_end_perpend (self);
  g_clear_pointer (&self->pull.wall, wall_unref);
  g_clear_pointer (&self->pull.project, project_unref);
  if (self->pull.kind == PULL_OPENING)
    opening_clear (&self->pull.opening);
  G_OBJECT_CLASS (hb_canvas_parent_class)->finalize (object);
}

static guint
new_signal (const char *name, guint n, GType first, GType second)
{
  return g_signal_new (name, HB_TYPE_CANVAS, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, n,
                       first, second);
}

static void
hb_canvas_class_init (HbCanvasClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  object_class->dispose = hb_canvas_dispose;
  object_class->finalize = hb_canvas_finalize;
  widget_class->snapshot = hb_canvas_snapshot;
  widget_class->measure = hb_canvas_measure;
  widget_class->grab_focus = hb_canvas_grab_focus;
  widget_class->focus = hb_canvas_focus;
  widget_class->size_allocate = hb_canvas_size_allocate;
  gtk_widget_class_set_css_name (widget_class, "canvas");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
  signals[SIGNAL_SELECTED] = new_signal ("selected", 0, 0, 0);
  signals[SIGNAL_PIECE] = new_signal ("piece", 2, G_TYPE_INT, G_TYPE_INT);
  signals[SIGNAL_TOOL] = new_signal ("tool", 0, 0, 0);
  signals[SIGNAL_SAID] = new_signal ("said", 1, G_TYPE_STRING, 0);
  signals[SIGNAL_REFUSED] = new_signal ("refused", 1, G_TYPE_STRING, 0);
  signals[SIGNAL_WALL] = new_signal ("wall", 0, 0, 0);
}

static void
hb_canvas_init (HbCanvas *self)
{
  self->ink = ink_new (NULL);
  self->recording = hb_recording_new (HB_ALL_LAYERS & ~((1u << LAYER_ROD) | (1u << LAYER_TAPE)));
  self->rod = hb_recording_new (1u << LAYER_ROD);
  self->tape = hb_recording_new (1u << LAYER_TAPE);
  self->lit = hb_recording_new (HB_ALL_LAYERS);
  self->moving = hb_recording_new (HB_ALL_LAYERS);
  self->places = hb_places_new (places_changed_cb, self);
  self->fitted = TRUE;
  self->view = (View){ .scale = 0.1 };
  gtk_widget_set_overflow (GTK_WIDGET (self), GTK_OVERFLOW_HIDDEN);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("The wall"), -1);
  /* What nobody sees is not sought. */
  g_signal_connect_after (self, "map", G_CALLBACK (_hb_canvas_ask_places), NULL);
  g_signal_connect_after (self, "unmap", G_CALLBACK (_hb_canvas_ask_places), NULL);
  _hb_canvas_add_zoom (self);
  _hb_canvas_add_pointer (self);
  _hb_canvas_add_hover (self);
  _hb_canvas_add_keys (self);
  _hb_canvas_update_holds (self);
}
