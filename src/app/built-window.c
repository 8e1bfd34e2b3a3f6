#include "app/built-window.h"

#include <glib/gi18n.h>

#include "app/beside.h"
#include "app/built-window-private.h"
#include "app/tool.h"

G_DEFINE_FINAL_TYPE (HbBuiltWindow, hb_built_window, GTK_TYPE_WINDOW)

const Project *
_hb_built_window_project (HbBuiltWindow *self)
{
  return hb_document_get_project (self->document);
}

const Wall *
_hb_built_window_get_wall (HbBuiltWindow *self)
{
  return self->wall.n ? project_wall (_hb_built_window_project (self), self->wall) : NULL;
}

const Block *
_hb_built_window_get_block (HbBuiltWindow *self)
{
  const Wall *wall = _hb_built_window_get_wall (self);

  return wall ? project_block (_hb_built_window_project (self), wall->block) : NULL;
}

void
hb_built_window_say (HbBuiltWindow *self, const char *sentence)
{
  g_return_if_fail (HB_IS_BUILT_WINDOW (self));
  gtk_label_set_text (self->notice, sentence ? sentence : "");
  gtk_widget_set_visible (GTK_WIDGET (self->notice), sentence != NULL);
}

/* ---- from the cells to the project ---- */

static gboolean
apply (HbBuiltWindow *self, const Wall *next, BuiltCell cell, GError **error)
{
  g_autoptr (Edit) edit = edit_set_wall (next);
  g_autofree char *name = built_cell_name (next, cell);
  g_autofree char *label = g_strdup_printf (_ ("%s as built: %s"), tool_wall_name (next), name);

  return hb_document_apply (self->document, edit, label, error);
}

static char *
text_now (HbBuiltWindow *self, GtkWidget *entry)
{
  return built_cell_text (_hb_built_window_get_wall (self), *_hb_built_grid_cell_of (entry));
}

/* Whether another text stands there than what counts. */
static gboolean
is_typed (HbBuiltWindow *self, GtkWidget *entry)
{
  g_autofree char *now = text_now (self, entry);

  return !g_str_equal (now, gtk_editable_get_text (GTK_EDITABLE (entry)));
}

static gboolean
set_typed (HbBuiltWindow *self, GtkWidget *entry, GError **error)
{
  const BuiltCell cell = *_hb_built_grid_cell_of (entry);
  g_autoptr (Wall) next = built_cell_set (_hb_built_window_get_wall (self), cell,
                                          gtk_editable_get_text (GTK_EDITABLE (entry)), error);

  if (!next)
    return FALSE;
  /* Before the change is told, so that the cell is filled with the rest. */
  gtk_widget_remove_css_class (entry, "error");
  return apply (self, next, cell, error);
}

/* What stands in the cell becomes true. FALSE with a sentence when it cannot; the text stays. */
static gboolean
commit (HbBuiltWindow *self, GtkWidget *entry)
{
  g_autoptr (GError) error = NULL;

  if (!_hb_built_window_get_wall (self))
    return TRUE;
  if (!is_typed (self, entry))
    {
      gtk_widget_remove_css_class (entry, "error");
      return TRUE;
    }
  if (set_typed (self, entry, &error))
    {
      _hb_built_window_fill_cell (self, entry);
      hb_built_window_say (self, NULL);
      return TRUE;
    }
  gtk_widget_add_css_class (entry, "error");
  hb_built_window_say (self, error->message);
  return FALSE;
}

static void
courses_cb (HbBuiltWindow *self)
{
  if (!self->filling && self->document && self->wall.n)
    hb_progress_set (self->progress, self->wall, gtk_spin_button_get_value_as_int (self->courses));
}

/* ---- keys and the focus ---- */

static gboolean
go_beside (HbBuiltWindow *self, GtkWidget *entry, int by)
{
  GtkWidget *to = _hb_built_grid_beside (self, entry, by);

  return to && gtk_widget_grab_focus (to);
}

static void
activate_cb (HbBuiltWindow *self, GtkWidget *entry)
{
  if (commit (self, entry) && !go_beside (self, entry, 1))
    gtk_widget_child_focus (GTK_WIDGET (self), GTK_DIR_TAB_FORWARD);
}

static void
focus_came_cb (GtkEventController *focus, HbBuiltWindow *self)
{
  self->typing = gtk_event_controller_get_widget (focus);
}

static void
focus_left_cb (GtkEventController *focus, HbBuiltWindow *self)
{
  GtkWidget *entry = gtk_event_controller_get_widget (focus);

  /* Cells lose the focus as the window goes, too; closing it has asked for them before. */
  if (!self->document || self->filling)
    return;
  commit (self, entry);
  gtk_editable_select_region (GTK_EDITABLE (entry), 0, 0);
}

/* What is being typed and does not count yet goes first. */
static gboolean
take_back_cb (GtkWidget *entry, gpointer data)
{
  HbBuiltWindow *self = data;

  if (!_hb_built_window_get_wall (self) || !is_typed (self, entry))
    return FALSE;
  gtk_widget_remove_css_class (entry, "error");
  _hb_built_window_fill_cell (self, entry);
  gtk_editable_select_region (GTK_EDITABLE (entry), 0, -1);
  hb_built_window_say (self, NULL);
  return TRUE;
}

static gboolean
cell_key_cb (GtkEventControllerKey *keys, guint key, guint code, GdkModifierType state,
             HbBuiltWindow *self)
{
  GtkWidget *entry = gtk_event_controller_get_widget (GTK_EVENT_CONTROLLER (keys));

  (void) code;
  (void) state;
  if (key == GDK_KEY_Up || key == GDK_KEY_KP_Up)
    return go_beside (self, entry, -1);
  if (key == GDK_KEY_Down || key == GDK_KEY_KP_Down)
    return go_beside (self, entry, 1);
  return GDK_EVENT_PROPAGATE;
}

static void
typed_cb (HbBuiltWindow *self)
{
  self->warned = FALSE;
}

void
_hb_built_window_connect_cell (HbBuiltWindow *self, GtkWidget *entry)
{
  GtkEventController *focus = gtk_event_controller_focus_new ();
  GtkEventController *keys = gtk_event_controller_key_new ();

  g_signal_connect (focus, "enter", G_CALLBACK (focus_came_cb), self);
  g_signal_connect (focus, "leave", G_CALLBACK (focus_left_cb), self);
  gtk_widget_add_controller (entry, focus);
  gtk_event_controller_set_propagation_phase (keys, GTK_PHASE_CAPTURE);
  g_signal_connect (keys, "key-pressed", G_CALLBACK (cell_key_cb), self);
  gtk_widget_add_controller (entry, keys);
  hb_beside_add_entry_keys (entry, self->document, take_back_cb, self);
  g_signal_connect_swapped (entry, "activate", G_CALLBACK (activate_cb), self);
  g_signal_connect_swapped (entry, "changed", G_CALLBACK (typed_cb), self);
}

/* ---- from the project to the cells ---- */

void
_hb_built_window_fill_cell (HbBuiltWindow *self, GtkWidget *entry)
{
  g_autofree char *text = text_now (self, entry);
  const gboolean before = self->filling;

  /* What was not understood stays until it is mended or taken back. */
  if (gtk_widget_has_css_class (entry, "error"))
    return;
  self->filling = TRUE;
  if (!g_str_equal (gtk_editable_get_text (GTK_EDITABLE (entry)), text))
    gtk_editable_set_text (GTK_EDITABLE (entry), text);
  self->filling = before;
}

static void
fill_progress (HbBuiltWindow *self, const Wall *wall)
{
  const gint32 n = hb_progress_n_courses (self->progress, wall->id);
  g_autofree char *of = g_strdup_printf (_ ("of %d"), n);

  gtk_label_set_text (self->about, tool_wall_name (wall));
  gtk_label_set_text (self->of, of);
  gtk_spin_button_set_range (self->courses, 0, MAX (n, wall_standing (wall)));
  gtk_spin_button_set_value (self->courses, wall_standing (wall));
  _hb_built_window_fill_cell (self, self->as_of);
}

static gboolean
refresh_cb (gpointer data)
{
  HbBuiltWindow *self = data;
  const Wall *wall = _hb_built_window_get_wall (self);
  const Layout *layout = wall ? hb_answers_get_latest (self->answers, wall->id) : NULL;
  g_autoptr (AsBuilt) built = NULL;

  self->refresh = 0;
  gtk_stack_set_visible_child_name (self->stage, wall ? "built" : "none");
  if (!wall)
    {
      hb_built_window_say (self, NULL);
      _hb_built_grid_clear (self);
      return G_SOURCE_REMOVE;
    }
  built = layout ? as_built_new (_hb_built_window_project (self), wall, layout) : NULL;
  /* A row that goes takes the focus with it: what stands in it is no word of anybody's. */
  self->filling = TRUE;
  fill_progress (self, wall);
  _hb_built_grid_fill (self, built);
  self->filling = FALSE;
  _hb_built_rest_ask (self);
  _hb_built_results_fill (self, built);
  return G_SOURCE_REMOVE;
}

void
_hb_built_window_refresh_soon (HbBuiltWindow *self)
{
  if (!self->refresh)
    self->refresh = g_idle_add (refresh_cb, self);
}

static void
laid_cb (HbBuiltWindow *self, guint wall)
{
  if (wall == self->wall.n)
    _hb_built_window_refresh_soon (self);
}

void
hb_built_window_set_wall (HbBuiltWindow *self, WallId wall)
{
  g_return_if_fail (HB_IS_BUILT_WINDOW (self));
  if (wall.n == self->wall.n)
    return;
  if (self->typing)
    commit (self, self->typing);
  self->filling = TRUE;
  _hb_built_grid_clear (self);
  self->filling = FALSE;
  self->wall = wall;
  hb_built_window_say (self, NULL);
  _hb_built_window_refresh_soon (self);
}

/* ---- the window ---- */

static gboolean
hb_built_window_close_request (GtkWindow *window)
{
  HbBuiltWindow *self = HB_BUILT_WINDOW (window);

  if (self->typing)
    commit (self, self->typing);
  if (_hb_built_grid_has_marked (self) && !self->warned)
    {
      self->warned = TRUE;
      hb_built_window_say (self, _ ("What is marked does not count and would be lost. Close again "
                                    "to leave it out."));
      return TRUE;
    }
  return GTK_WINDOW_CLASS (hb_built_window_parent_class)->close_request (window);
}

static void
today_cb (HbBuiltWindow *self)
{
  static const BuiltCell cell = { BUILT_OF_WALL, 0, FIGURE_AS_OF };
  const Wall *wall = _hb_built_window_get_wall (self);
  g_autoptr (GDateTime) now = g_date_time_new_now_local ();
  g_autofree char *date = g_date_time_format (now, "%Y-%m-%d");
  g_autoptr (Wall) next = wall ? built_cell_set (wall, cell, date, NULL) : NULL;
  g_autoptr (GError) error = NULL;

  if (next && !apply (self, next, cell, &error))
    hb_built_window_say (self, error->message);
}

static void
hb_built_window_dispose (GObject *object)
{
  HbBuiltWindow *self = HB_BUILT_WINDOW (object);

  g_clear_handle_id (&self->refresh, g_source_remove);
  self->typing = NULL;
  if (self->document)
    g_signal_handlers_disconnect_by_data (self->document, self);
  if (self->answers)
    g_signal_handlers_disconnect_by_data (self->answers, self);
  _hb_built_rest_clear (self);
  g_clear_object (&self->document);
  g_clear_object (&self->answers);
  gtk_widget_dispose_template (GTK_WIDGET (self), HB_TYPE_BUILT_WINDOW);
  g_clear_pointer (&self->rows, g_array_unref);
  g_clear_pointer (&self->marked, g_array_unref);
  g_clear_pointer (&self->shape, g_free);
  G_OBJECT_CLASS (hb_built_window_parent_class)->dispose (object);
}

static void
hb_built_window_class_init (HbBuiltWindowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = hb_built_window_dispose;
  GTK_WINDOW_CLASS (klass)->close_request = hb_built_window_close_request;
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_DIALOG);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/halfbond/ui/built-window.ui");
  gtk_widget_class_bind_template_child (widget_class, HbBuiltWindow, stage);
  gtk_widget_class_bind_template_child (widget_class, HbBuiltWindow, about);
  gtk_widget_class_bind_template_child (widget_class, HbBuiltWindow, courses);
  gtk_widget_class_bind_template_child (widget_class, HbBuiltWindow, of);
  gtk_widget_class_bind_template_child (widget_class, HbBuiltWindow, date);
  gtk_widget_class_bind_template_child (widget_class, HbBuiltWindow, figures);
  gtk_widget_class_bind_template_child (widget_class, HbBuiltWindow, results);
  gtk_widget_class_bind_template_child (widget_class, HbBuiltWindow, notice);
  gtk_widget_class_bind_template_callback (widget_class, courses_cb);
  gtk_widget_class_bind_template_callback (widget_class, today_cb);
}

static void
hb_built_window_init (HbBuiltWindow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  _hb_built_grid_init (self);
  _hb_built_rest_init (self);
}

static void
add_date (HbBuiltWindow *self)
{
  self->as_of = _hb_built_grid_cell_new (self, (BuiltCell){ BUILT_OF_WALL, 0, FIGURE_AS_OF }, 11);
  hb_beside_name (self->as_of, _ ("Date"));
  gtk_box_append (self->date, self->as_of);
}

HbBuiltWindow *
hb_built_window_new (GtkWindow *parent, HbDocument *document, HbAnswers *answers,
                     HbProgress *progress, WallId wall)
{
  HbBuiltWindow *self = g_object_new (HB_TYPE_BUILT_WINDOW, "transient-for", parent,
                                      "destroy-with-parent", TRUE, NULL);

  self->document = g_object_ref (document);
  self->answers = g_object_ref (answers);
  self->progress = progress;
  g_signal_connect_swapped (document, "changed", G_CALLBACK (_hb_built_window_refresh_soon), self);
  g_signal_connect_swapped (answers, "laid", G_CALLBACK (laid_cb), self);
  g_signal_connect_swapped (answers, "counted", G_CALLBACK (_hb_built_window_refresh_soon), self);
  hb_beside_add_keys (GTK_WINDOW (self), document);
  hb_beside_add_entry_keys (GTK_WIDGET (self->courses), document, NULL, NULL);
  add_date (self);
  self->wall = wall;
  refresh_cb (self);
  if (_hb_built_window_get_wall (self))
    gtk_widget_grab_focus (GTK_WIDGET (self->courses));
  return self;
}
