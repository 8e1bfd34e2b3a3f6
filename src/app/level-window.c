#include "app/level-window.h"

#include <glib/gi18n.h>

#include "app/level-results.h"
#include "app/level-window-private.h"
#include "app/tool.h"
#include "site/square.h"

G_DEFINE_FINAL_TYPE (HbLevelWindow, hb_level_window, GTK_TYPE_WINDOW)

static const Project *
project_of (HbLevelWindow *self)
{
  return hb_document_get_project (self->document);
}

/* A survey that may be changed: the project's, or an empty one. */
static Survey *
own_survey (HbLevelWindow *self)
{
  const Project *project = project_of (self);

  return project->survey ? survey_copy (project->survey) : survey_new ();
}

static void
say (HbLevelWindow *self, const char *sentence)
{
  gtk_label_set_text (self->notice, sentence ? sentence : "");
  gtk_widget_set_visible (GTK_WIDGET (self->notice), sentence != NULL);
}

/* ---- from the cells to the project ---- */

/* Takes the survey. */
static gboolean
apply (HbLevelWindow *self, Survey *survey, GError **error)
{
  g_autoptr (Survey) own = survey;
  g_autoptr (Edit) edit = edit_set_survey (own);

  return hb_document_apply (self->document, edit, _ ("Level book"), error);
}

static char *
text_now (HbLevelWindow *self, const LevelCell *cell)
{
  g_autoptr (Survey) survey = own_survey (self);

  return level_cell_text (project_of (self), survey, *cell);
}

static void fill_cell (HbLevelWindow *self, GtkWidget *entry);
static void refresh_soon (HbLevelWindow *self);

/* What stands in the cell becomes true. FALSE with a sentence when it cannot; the text stays. */
static gboolean
commit (HbLevelWindow *self, GtkWidget *entry)
{
  const char *text = gtk_editable_get_text (GTK_EDITABLE (entry));
  const LevelCell *cell = _hb_level_grid_cell_of (entry);
  g_autofree char *now = text_now (self, cell);
  g_autoptr (GError) error = NULL;
  Survey *survey;

  if (g_str_equal (now, text))
    {
      gtk_widget_remove_css_class (entry, "error");
      return TRUE;
    }
  survey = own_survey (self);
  if (!level_cell_set (project_of (self), survey, *cell, text, &error))
    survey_unref (survey);
  else
    {
      /* Before the change is told, so that the cell is filled with the rest. */
      gtk_widget_remove_css_class (entry, "error");
      if (apply (self, survey, &error))
        {
          fill_cell (self, entry);
          say (self, NULL);
          return TRUE;
        }
    }
  gtk_widget_add_css_class (entry, "error");
  say (self, error->message);
  return FALSE;
}

static void
quick_cb (HbLevelWindow *self)
{
  Survey *survey = own_survey (self);
  g_autoptr (GError) error = NULL;

  if (!level_quick_add (project_of (self), survey,
                        gtk_editable_get_text (GTK_EDITABLE (self->quick)), &error))
    survey_unref (survey);
  else if (apply (self, survey, &error))
    {
      gtk_editable_set_text (GTK_EDITABLE (self->quick), "");
      gtk_widget_remove_css_class (GTK_WIDGET (self->quick), "error");
      say (self, NULL);
      return;
    }
  gtk_widget_add_css_class (GTK_WIDGET (self->quick), "error");
  say (self, error->message);
}

/* ---- rows ---- */

static gboolean
go_to (HbLevelWindow *self, gint row, guint column)
{
  GtkWidget *entry = _hb_level_grid_cell (self, row, column);

  return entry && gtk_widget_grab_focus (entry);
}

/* The row of the book that is being typed; -1: none. */
static gint
typed_row (HbLevelWindow *self)
{
  const LevelCell *cell = self->typing ? _hb_level_grid_cell_of (self->typing) : NULL;

  return cell && cell->part == LEVEL_OF_READING ? (gint) cell->row : -1;
}

static gboolean
forget_error (HbLevelWindow *self, GtkWidget *entry)
{
  (void) self;
  gtk_widget_remove_css_class (entry, "error");
  return TRUE;
}

/* Puts a row before the typed one, or takes that out. */
static void
change_rows (HbLevelWindow *self, gboolean (*change) (Survey *survey, guint row))
{
  gint row = typed_row (self);
  Survey *survey = own_survey (self);
  g_autoptr (GError) error = NULL;

  if (row < 0 || !change (survey, (guint) row))
    {
      survey_unref (survey);
      return;
    }
  /* What was not understood stands in a row that has moved on. */
  _hb_level_grid_each (self, forget_error);
  if (!apply (self, survey, &error))
    say (self, error->message);
  go_to (self, row, LEVEL_POINT);
}

static void
insert_row_cb (HbLevelWindow *self)
{
  change_rows (self, level_insert_row);
}

static void
remove_row_cb (HbLevelWindow *self)
{
  change_rows (self, level_remove_row);
}

/* ---- keys and the focus ---- */

static void
activate_cb (HbLevelWindow *self, GtkWidget *entry)
{
  const LevelCell cell = *_hb_level_grid_cell_of (entry);

  if (!commit (self, entry))
    return;
  if (cell.part != LEVEL_OF_READING)
    gtk_widget_child_focus (GTK_WIDGET (self), GTK_DIR_TAB_FORWARD);
  else
    go_to (self, (gint) cell.row + 1, LEVEL_POINT);
}

static void
focus_came_cb (GtkEventController *focus, HbLevelWindow *self)
{
  self->typing = gtk_event_controller_get_widget (focus);
}

static void
focus_left_cb (GtkEventController *focus, HbLevelWindow *self)
{
  GtkWidget *entry = gtk_event_controller_get_widget (focus);

  /* Cells lose the focus as the window goes, too; closing it has asked for them before. */
  if (!self->document || self->filling)
    return;
  commit (self, entry);
  gtk_editable_select_region (GTK_EDITABLE (entry), 0, 0);
}

/* Whether another text stands there than what counts. */
static gboolean
is_typed (HbLevelWindow *self, GtkWidget *entry)
{
  g_autofree char *now = text_now (self, _hb_level_grid_cell_of (entry));

  return !g_str_equal (now, gtk_editable_get_text (GTK_EDITABLE (entry)));
}

static void
take_back (HbLevelWindow *self, GtkWidget *entry)
{
  gtk_widget_remove_css_class (entry, "error");
  fill_cell (self, entry);
  gtk_editable_select_region (GTK_EDITABLE (entry), 0, -1);
  say (self, NULL);
  refresh_soon (self);
}

/* What is being typed and does not count yet goes first. */
static void
step_back (HbLevelWindow *self)
{
  if (self->typing && is_typed (self, self->typing))
    take_back (self, self->typing);
  else
    hb_document_undo (self->document);
}

/* An entry keeps these keys to itself, though it has nothing to undo. */
static gboolean
undo_key (HbLevelWindow *self, guint key, GdkModifierType state)
{
  const gboolean z = key == GDK_KEY_z || key == GDK_KEY_Z;

  if (!(state & GDK_CONTROL_MASK) || !(z || key == GDK_KEY_y))
    return FALSE;
  if (z && !(state & GDK_SHIFT_MASK))
    step_back (self);
  else
    hb_document_redo (self->document);
  return TRUE;
}

/* Words that were begun are the entry's own. */
static gboolean
quick_key_cb (GtkEventControllerKey *keys, guint key, guint code, GdkModifierType state,
              HbLevelWindow *self)
{
  (void) keys;
  (void) code;
  if (*gtk_editable_get_text (GTK_EDITABLE (self->quick)))
    return GDK_EVENT_PROPAGATE;
  self->typing = NULL;
  return undo_key (self, key, state);
}

static gboolean
cell_key_cb (GtkEventControllerKey *keys, guint key, guint code, GdkModifierType state,
             HbLevelWindow *self)
{
  GtkWidget *entry = gtk_event_controller_get_widget (GTK_EVENT_CONTROLLER (keys));
  const LevelCell cell = *_hb_level_grid_cell_of (entry);

  (void) code;
  if (key == GDK_KEY_Escape)
    {
      if (!is_typed (self, entry))
        return GDK_EVENT_PROPAGATE;
      take_back (self, entry);
      return GDK_EVENT_STOP;
    }
  if (undo_key (self, key, state))
    return GDK_EVENT_STOP;
  if (cell.part != LEVEL_OF_READING)
    return GDK_EVENT_PROPAGATE;
  if (key == GDK_KEY_Up || key == GDK_KEY_KP_Up)
    return go_to (self, (gint) cell.row - 1, cell.column);
  if (key == GDK_KEY_Down || key == GDK_KEY_KP_Down)
    return go_to (self, (gint) cell.row + 1, cell.column);
  if (key == GDK_KEY_Insert)
    insert_row_cb (self);
  else if (key == GDK_KEY_Delete && (state & GDK_CONTROL_MASK))
    remove_row_cb (self);
  else
    return GDK_EVENT_PROPAGATE;
  return GDK_EVENT_STOP;
}

/* ---- live ---- */

/* The project as it would be with what is being typed; with none of it when that is not
 * understood. */
static Project *
typed_project (HbLevelWindow *self)
{
  const Project *project = project_of (self);
  Project *copy = project_copy (project);
  Survey *survey = own_survey (self);
  const LevelCell *cell = self->typing ? _hb_level_grid_cell_of (self->typing) : NULL;
  g_autofree char *fault = NULL;

  if (cell)
    level_cell_set (project, survey, *cell, gtk_editable_get_text (GTK_EDITABLE (self->typing)),
                    NULL);
  fault = survey_fault (survey);
  if (fault)
    {
      survey_unref (survey);
      survey = own_survey (self);
    }
  survey_unref (copy->survey);
  copy->survey = survey;
  return copy;
}

static void
show_corners (HbLevelWindow *self, const Project *project)
{
  g_autoptr (GArray) checks = square_checks (project);

  for (guint i = 0; i < self->corners->len; i++)
    {
      _hb_level_grid_show_corner (self, i, "");
      for (guint k = 0; k < checks->len; k++)
        {
          const SquareCheck *check = &g_array_index (checks, SquareCheck, k);
          g_autofree char *text = NULL, *all = NULL;
          char a[LENGTH_TEXT_SIZE], b[LENGTH_TEXT_SIZE], c[LENGTH_TEXT_SIZE];

          if (check->diagonal != i)
            continue;
          text = square_sentence (project, check);
          all = g_strdup_printf (
              _ ("%s By 3-4-5: %s, %s, %s mm."), text, length_text (check->check.first, a),
              length_text (check->check.second, b), length_text (check->check.diagonal, c));
          _hb_level_grid_show_corner (self, i, check->check.diagonal ? all : text);
        }
    }
}

static gboolean
refresh_cb (gpointer data)
{
  HbLevelWindow *self = data;
  g_autoptr (Project) project = typed_project (self);
  g_autoptr (LevelBook) book = level_book_new (project->survey);
  g_autoptr (Beds) beds = beds_new (project, book);

  self->refresh = 0;
  for (guint i = 0; i < self->rows->len; i++)
    _hb_level_grid_show_row (self, i, i < book->rows->len ? level_row (book, i) : NULL);
  show_corners (self, project);
  hb_level_results_fill (self->results, project, book, beds);
  return G_SOURCE_REMOVE;
}

static void
refresh_soon (HbLevelWindow *self)
{
  if (!self->refresh)
    self->refresh = g_idle_add (refresh_cb, self);
}

static void
typed_cb (HbLevelWindow *self)
{
  self->warned = FALSE;
  if (!self->filling && self->document)
    refresh_soon (self);
}

void
_hb_level_window_connect_cell (HbLevelWindow *self, GtkWidget *entry)
{
  GtkEventController *focus = gtk_event_controller_focus_new ();
  GtkEventController *keys = gtk_event_controller_key_new ();

  g_signal_connect (focus, "enter", G_CALLBACK (focus_came_cb), self);
  g_signal_connect (focus, "leave", G_CALLBACK (focus_left_cb), self);
  gtk_widget_add_controller (entry, focus);
  gtk_event_controller_set_propagation_phase (keys, GTK_PHASE_CAPTURE);
  g_signal_connect (keys, "key-pressed", G_CALLBACK (cell_key_cb), self);
  gtk_widget_add_controller (entry, keys);
  g_signal_connect_swapped (entry, "activate", G_CALLBACK (activate_cb), self);
  g_signal_connect_swapped (entry, "changed", G_CALLBACK (typed_cb), self);
}

/* ---- from the project to the cells ---- */

static void
fill_cell (HbLevelWindow *self, GtkWidget *entry)
{
  g_autofree char *text = text_now (self, _hb_level_grid_cell_of (entry));
  gboolean before = self->filling;

  /* What was not understood stays until it is mended or taken back. */
  if (gtk_widget_has_css_class (entry, "error"))
    return;
  self->filling = TRUE;
  if (!g_str_equal (gtk_editable_get_text (GTK_EDITABLE (entry)), text))
    gtk_editable_set_text (GTK_EDITABLE (entry), text);
  self->filling = before;
}

static void
fill_walls (HbLevelWindow *self)
{
  const Project *project = project_of (self);
  g_autoptr (GString) text = g_string_new (_ ("Walls by number:"));

  for (guint i = 0; i < project->walls->len && i < 30; i++)
    g_string_append_printf (text, " %u %s%s", i + 1, tool_wall_name (project_wall_at (project, i)),
                            i + 1 < project->walls->len ? "," : "");
  if (project->survey && project->survey->readings->len >= MOST_ROWS)
    g_string_prepend (text, _ ("The first 300 rows are shown. "));
  gtk_label_set_text (self->walls, project->walls->len ? text->str : "");
}

static gboolean
fill_one (HbLevelWindow *self, GtkWidget *entry)
{
  fill_cell (self, entry);
  return TRUE;
}

static void
fill (HbLevelWindow *self)
{
  const Survey *survey = project_of (self)->survey;
  gboolean before = self->filling;

  /* A row that goes takes the focus with it: what stands in it is no word of anybody's. */
  self->filling = TRUE;
  _hb_level_grid_fit (self, survey ? survey->readings->len : 0,
                      survey ? survey->diagonals->len : 0);
  _hb_level_grid_each (self, fill_one);
  self->filling = before;
  fill_walls (self);
  refresh_soon (self);
}

/* ---- the window ---- */

static gboolean
is_understood (HbLevelWindow *self, GtkWidget *entry)
{
  (void) self;
  return !gtk_widget_has_css_class (entry, "error");
}

static gboolean
hb_level_window_close_request (GtkWindow *window)
{
  HbLevelWindow *self = HB_LEVEL_WINDOW (window);

  if (self->typing)
    commit (self, self->typing);
  if (!_hb_level_grid_each (self, is_understood) && !self->warned)
    {
      self->warned = TRUE;
      say (self,
           _ ("What is marked in the book is not understood and would be lost. Close again to "
              "leave it out."));
      return TRUE;
    }
  return GTK_WINDOW_CLASS (hb_level_window_parent_class)->close_request (window);
}

static gboolean
undo_cb (GtkWidget *widget, GVariant *arguments, gpointer data)
{
  (void) arguments;
  (void) data;
  step_back (HB_LEVEL_WINDOW (widget));
  return TRUE;
}

static gboolean
redo_cb (GtkWidget *widget, GVariant *arguments, gpointer data)
{
  (void) arguments;
  (void) data;
  hb_document_redo (HB_LEVEL_WINDOW (widget)->document);
  return TRUE;
}

static gboolean
close_cb (GtkWidget *widget, GVariant *arguments, gpointer data)
{
  (void) arguments;
  (void) data;
  gtk_window_close (GTK_WINDOW (widget));
  return TRUE;
}

static void
add_keys (HbLevelWindow *self)
{
  static const struct
  {
    const char *trigger;
    GtkShortcutFunc function;
  } keys[] = {
    { "<Control>z", undo_cb },  { "<Control><Shift>z", redo_cb }, { "<Control>y", redo_cb },
    { "<Control>w", close_cb }, { "Escape", close_cb },
  };
  GtkEventController *controller = gtk_shortcut_controller_new ();

  gtk_event_controller_set_propagation_phase (controller, GTK_PHASE_BUBBLE);
  for (guint i = 0; i < G_N_ELEMENTS (keys); i++)
    gtk_shortcut_controller_add_shortcut (
        GTK_SHORTCUT_CONTROLLER (controller),
        gtk_shortcut_new (gtk_shortcut_trigger_parse_string (keys[i].trigger),
                          gtk_callback_action_new (keys[i].function, NULL, NULL)));
  gtk_widget_add_controller (GTK_WIDGET (self), controller);
}

static void
hb_level_window_dispose (GObject *object)
{
  HbLevelWindow *self = HB_LEVEL_WINDOW (object);

  g_clear_handle_id (&self->refresh, g_source_remove);
  self->typing = NULL;
  if (self->document)
    g_signal_handlers_disconnect_by_data (self->document, self);
  g_clear_object (&self->document);
  gtk_widget_dispose_template (GTK_WIDGET (self), HB_TYPE_LEVEL_WINDOW);
  g_clear_pointer (&self->rows, g_ptr_array_unref);
  g_clear_pointer (&self->corners, g_ptr_array_unref);
  G_OBJECT_CLASS (hb_level_window_parent_class)->dispose (object);
}

static void
hb_level_window_class_init (HbLevelWindowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = hb_level_window_dispose;
  GTK_WINDOW_CLASS (klass)->close_request = hb_level_window_close_request;
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_DIALOG);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/halfbond/ui/level-window.ui");
  gtk_widget_class_bind_template_child (widget_class, HbLevelWindow, quick);
  gtk_widget_class_bind_template_child (widget_class, HbLevelWindow, book);
  gtk_widget_class_bind_template_child (widget_class, HbLevelWindow, limits);
  gtk_widget_class_bind_template_child (widget_class, HbLevelWindow, diagonals);
  gtk_widget_class_bind_template_child (widget_class, HbLevelWindow, walls);
  gtk_widget_class_bind_template_child (widget_class, HbLevelWindow, notice);
  gtk_widget_class_bind_template_child (widget_class, HbLevelWindow, results);
  gtk_widget_class_bind_template_callback (widget_class, quick_cb);
  gtk_widget_class_bind_template_callback (widget_class, insert_row_cb);
  gtk_widget_class_bind_template_callback (widget_class, remove_row_cb);
}

static void
row_free (gpointer row)
{
  g_ptr_array_unref (row);
}

static void
hb_level_window_init (HbLevelWindow *self)
{
  GtkEventController *keys = gtk_event_controller_key_new ();

  gtk_widget_init_template (GTK_WIDGET (self));
  self->rows = g_ptr_array_new_with_free_func (row_free);
  self->corners = g_ptr_array_new_with_free_func (row_free);
  _hb_level_grid_build (self);
  gtk_event_controller_set_propagation_phase (keys, GTK_PHASE_CAPTURE);
  g_signal_connect (keys, "key-pressed", G_CALLBACK (quick_key_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self->quick), keys);
  add_keys (self);
}

HbLevelWindow *
hb_level_window_new (GtkWindow *parent, HbDocument *document)
{
  HbLevelWindow *self = g_object_new (HB_TYPE_LEVEL_WINDOW, "transient-for", parent,
                                      "destroy-with-parent", TRUE, NULL);

  self->document = g_object_ref (document);
  g_signal_connect_swapped (document, "changed", G_CALLBACK (fill), self);
  fill (self);
  gtk_widget_grab_focus (GTK_WIDGET (self->quick));
  return self;
}
