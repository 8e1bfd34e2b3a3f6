#include "app/window.h"

#include "app/window-private.h"

#include <glib/gi18n.h>

#include "app/explain.h"
#include "app/settings.h"
#include "app/tool.h"
#include "paint/plan.h"

/* How often "saved 2 min ago" is looked at again, s. */
#define CLOCK 20

G_DEFINE_FINAL_TYPE (HbWindow, hb_window, GTK_TYPE_APPLICATION_WINDOW)

/* ---- what is said ---- */

void
_hb_window_say (HbWindow *self, const char *sentence)
{
  if (g_strcmp0 (gtk_label_get_text (self->status), sentence) != 0)
    gtk_label_set_text (self->status, sentence);
}

static void
set_notice_button (GtkButton *button, const char *label, const char *action)
{
  gtk_widget_set_visible (GTK_WIDGET (button), label != NULL);
  gtk_actionable_set_action_name (GTK_ACTIONABLE (button), action);
  if (label)
    gtk_button_set_label (button, label);
}

void
_hb_window_notice (HbWindow *self, const char *sentence, const char *first,
                   const char *first_action, const char *second, const char *second_action)
{
  gtk_inscription_set_text (self->notice_text, sentence);
  gtk_widget_set_tooltip_text (GTK_WIDGET (self->notice_text), sentence);
  set_notice_button (self->notice_first, first, first_action);
  set_notice_button (self->notice_second, second, second_action);
  self->sentence = !first;
  gtk_widget_set_visible (self->notice, TRUE);
}

void
_hb_window_hide_notice (HbWindow *self)
{
  gtk_widget_set_visible (self->notice, FALSE);
}

/* What was refused is of no more use once the hand goes on; a question waits for its answer. */
static void
drop_sentence (HbWindow *self)
{
  if (self->sentence)
    _hb_window_hide_notice (self);
}

static gboolean
escape_cb (HbWindow *self, guint key)
{
  if (key == GDK_KEY_Escape)
    {
      drop_sentence (self);
      if (self->improver)
        hb_improver_stop (self->improver);
      if (self->turner)
        hb_turner_stop (self->turner);
    }
  return GDK_EVENT_PROPAGATE;
}

/* In the capture phase: what has the focus uses Escape for itself. */
static void
add_escape (HbWindow *self)
{
  GtkEventController *keys = gtk_event_controller_key_new ();

  gtk_event_controller_set_propagation_phase (keys, GTK_PHASE_CAPTURE);
  g_signal_connect_swapped (keys, "key-pressed", G_CALLBACK (escape_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), keys);
}

/* ---- title ---- */

static char *
saved_text (HbWindow *self)
{
  const gint64 minutes
      = (g_get_monotonic_time () - hb_document_get_saved_at (self->document)) / G_TIME_SPAN_MINUTE;

  if (hb_document_is_modified (self->document))
    return g_strdup (_ ("not saved"));
  if (!hb_document_get_path (self->document))
    return g_strdup (_ ("no file yet"));
  if (minutes < 1)
    return g_strdup (_ ("saved"));
  if (minutes < 60)
    return g_strdup_printf (_ ("saved %d min ago"), (int) minutes);
  return g_strdup_printf (
      g_dngettext (NULL, "saved %d hour ago", "saved %d hours ago", (gulong) (minutes / 60)),
      (int) (minutes / 60));
}

void
_hb_window_update_title (HbWindow *self)
{
  const Wall *wall
      = project_wall (hb_document_get_project (self->document), hb_canvas_get_wall (self->canvas));
  g_autofree char *title = hb_document_dup_title (self->document);
  g_autofree char *state = saved_text (self);
  g_autofree char *saved = wall ? g_strdup_printf (" — %s", state) : g_strdup (state);
  g_autofree char *whole = NULL;

  whole = g_strdup_printf ("%s%s — %s", hb_document_is_modified (self->document) ? "• " : "", title,
                           _ ("Halfbond"));
  gtk_label_set_text (self->title, title);
  /* A long name gives way: whether it is saved is always there to be read. */
  gtk_label_set_text (self->subtitle, wall ? tool_wall_name (wall) : "");
  gtk_label_set_text (self->saved, saved);
  gtk_widget_set_tooltip_text (gtk_widget_get_parent (GTK_WIDGET (self->saved)),
                               hb_document_get_path (self->document));
  gtk_window_set_title (GTK_WINDOW (self), whole);
}

static gboolean
clock_cb (gpointer data)
{
  _hb_window_update_title (data);
  return G_SOURCE_CONTINUE;
}

/* ---- what is shown ---- */

void
_hb_window_show_wall (HbWindow *self, WallId wall)
{
  hb_answers_set_wall (self->answers, wall);
  hb_canvas_set_wall (self->canvas, wall);
  hb_walls_pane_set_wall (self->walls, wall);
  hb_takeoff_pane_set_wall (self->takeoff, wall);
  if (self->rod)
    hb_rod_window_set_wall (self->rod, wall);
  _hb_window_show_pallets (self);
  if (self->built)
    hb_built_window_set_wall (self->built, wall);
  hb_plan_view_select (self->plan, wall, hb_canvas_get_selected (self->canvas));
  hb_inspector_show (self->inspector, wall, hb_canvas_get_selected (self->canvas));
  hb_inspector_show_joint (self->inspector, hb_canvas_get_joint (self->canvas));
  _hb_window_update_title (self);
  _hb_window_update_actions (self);
}

void
_hb_window_show_pallets (HbWindow *self)
{
  g_autoptr (GArray) pallets
      = self->work ? hb_work_window_dup_pallets (self->work, hb_canvas_get_wall (self->canvas))
                   : NULL;

  hb_canvas_set_pallets (self->canvas, pallets);
}

gboolean
_hb_window_shows_plan (HbWindow *self)
{
  return g_strcmp0 (gtk_stack_get_visible_child_name (self->stage), "plan") == 0;
}

/* Walls that stand nowhere cannot be seen in plan: what to do is said there. */
static void
show_no_plan (HbWindow *self)
{
  const Project *project = hb_document_get_project (self->document);
  PlanBox box;

  gtk_widget_set_visible (self->no_plan,
                          _hb_window_shows_plan (self) && project->walls->len > 0
                              && hb_plan_view_get_tool (self->plan) == HB_PLAN_TOOL_NONE
                              && !plan_bounds (project, &box));
}

void
_hb_window_show_view (HbWindow *self, const char *view)
{
  const gboolean plan = g_str_equal (view, "plan");

  hb_canvas_set_client (self->canvas, g_str_equal (view, "client"));
  if (plan)
    hb_canvas_cancel (self->canvas);
  else
    hb_inspector_show_meeting (self->inspector, (WallId){ 0 }, (WallId){ 0 });
  gtk_stack_set_visible_child_name (self->stage, plan ? "plan" : "wall");
  if (!plan)
    hb_plan_view_select_meeting (self->plan, (WallId){ 0 }, (WallId){ 0 });
  show_no_plan (self);
  _hb_window_update_actions (self);
}

/* A wall that is still there: the one shown, or else its neighbour, or the first. */
static void
keep_a_wall (HbWindow *self)
{
  const Project *project = hb_document_get_project (self->document);
  const WallId wall = hb_canvas_get_wall (self->canvas);
  const gboolean drawing = hb_canvas_get_tool (self->canvas) == HB_TOOL_WALL
                           || hb_plan_view_get_tool (self->plan) == HB_PLAN_TOOL_OUTLINE
                           || hb_plan_view_get_tool (self->plan) == HB_PLAN_TOOL_WALL;

  gtk_widget_set_visible (self->no_walls, project->walls->len == 0 && !drawing);
  show_no_plan (self);
  if (drawing || (wall.n && project_wall (project, wall)))
    return;
  _hb_window_show_wall (self,
                        project->walls->len ? project_wall_at (project, 0)->id : (WallId){ 0 });
}

static void
changed_cb (HbWindow *self)
{
  drop_sentence (self);
  keep_a_wall (self);
  _hb_window_update_title (self);
  _hb_window_update_actions (self);
}

static void
state_cb (HbWindow *self)
{
  _hb_window_update_title (self);
  _hb_window_update_actions (self);
}

/* A wall that was added is what one wants to look at. */
static void
wall_drawn_cb (HbWindow *self)
{
  _hb_window_show_wall (self, hb_canvas_get_wall (self->canvas));
}

static void
wall_chosen_cb (HbWindow *self, guint wall)
{
  _hb_window_show_wall (self, (WallId){ wall });
}

/* Again whenever a wall is laid or the units are counted: the words are of what is shown. */
static void
explain (HbWindow *self)
{
  gint32 course, number;
  g_autofree char *is = NULL, *text = NULL;

  if (!self->document)
    return;
  hb_canvas_get_piece (self->canvas, &course, &number);
  /* While a wall is laid anew the words before stay, so that nothing flickers. */
  if (number && !hb_answers_get_layout (self->answers, hb_canvas_get_wall (self->canvas)))
    return;
  if (number)
    hb_explain_piece (self->document, self->answers, hb_canvas_get_wall (self->canvas), course,
                      number, &is, &text);
  hb_inspector_explain (self->inspector, is, text);
}

static void
selected_cb (HbWindow *self)
{
  if (!self->document)
    return;
  hb_plan_view_select (self->plan, hb_canvas_get_wall (self->canvas),
                       hb_canvas_get_selected (self->canvas));
  hb_inspector_show (self->inspector, hb_canvas_get_wall (self->canvas),
                     hb_canvas_get_selected (self->canvas));
  hb_inspector_show_joint (self->inspector, hb_canvas_get_joint (self->canvas));
  explain (self);
  _hb_window_update_actions (self);
}

static void
piece_cb (HbWindow *self, int course, int number)
{
  const Layout *layout = hb_answers_get_latest (self->answers, hb_canvas_get_wall (self->canvas));

  explain (self);
  for (guint i = 0; layout && i < layout->pieces->len; i++)
    {
      const Piece *piece = layout_piece (layout, i);

      if (piece->course == course && piece->number == number)
        {
          hb_takeoff_pane_mark_piece (self->takeoff, piece);
          return;
        }
    }
  hb_takeoff_pane_mark_piece (self->takeoff, NULL);
}

static void
tool_cb (HbWindow *self)
{
  if (!self->document)
    return;
  keep_a_wall (self);
  _hb_window_update_actions (self);
  /* No tool of the elevation was taken: the plan stays. */
  if (_hb_window_shows_plan (self) && hb_canvas_get_tool (self->canvas) == HB_TOOL_SELECT)
    return;
  /* A tool turns the client view away: the switch in the header is to say so. */
  gtk_widget_activate_action (GTK_WIDGET (self), "win.view", "s",
                              hb_canvas_get_client (self->canvas) ? "client" : "laying");
}

/* ---- the plan ---- */

static void
plan_chosen_cb (HbWindow *self, guint wall, guint opening)
{
  if (!self->document)
    return;
  if (hb_canvas_get_wall (self->canvas).n != wall)
    _hb_window_show_wall (self, (WallId){ wall });
  hb_canvas_select (self->canvas, (OpeningId){ opening });
}

static void
plan_meeting_cb (HbWindow *self, guint first, guint second)
{
  if (self->document)
    hb_inspector_show_meeting (self->inspector, (WallId){ first }, (WallId){ second });
}

static void
plan_tool_cb (HbWindow *self)
{
  if (!self->document)
    return;
  keep_a_wall (self);
  _hb_window_update_actions (self);
}

static void
plan_open_cb (HbWindow *self)
{
  gtk_widget_activate_action (GTK_WIDGET (self), "win.view", "s", "laying");
  gtk_widget_grab_focus (GTK_WIDGET (self->canvas));
}

static void
progress_told (const char *sentence, gboolean refused, gpointer data)
{
  HbWindow *self = data;

  if (!refused)
    _hb_window_say (self, sentence);
  else
    _hb_window_notice (self, sentence, NULL, NULL, NULL, NULL);
  if (self->built)
    hb_built_window_say (self->built, refused ? sentence : NULL);
}

static void
turner_told (const char *sentence, gboolean better, gpointer data)
{
  HbWindow *self = data;

  if (hb_turner_is_running (self->turner))
    _hb_window_say (self, _ ("Looking for the best turns of all corners and tees… Escape stops."));
  else
    _hb_window_say (self, "");
  if (sentence && better)
    _hb_window_notice (self, sentence, _ ("Turn them"), "win.apply-turns", NULL, NULL);
  else if (sentence)
    _hb_window_notice (self, sentence, NULL, NULL, NULL, NULL);
}

static void
said_cb (HbWindow *self, const char *sentence)
{
  _hb_window_say (self, sentence);
}

static void
refused_cb (HbWindow *self, const char *sentence)
{
  _hb_window_notice (self, sentence, NULL, NULL, NULL, NULL);
}

static void
improver_told (const char *sentence, gpointer data)
{
  HbWindow *self = data;

  hb_findings_pane_set_improving (self->findings, hb_improver_is_running (self->improver));
  if (hb_improver_is_running (self->improver))
    _hb_window_say (self, _ ("Looking for the best places of all openings that may move…"));
  else if (sentence)
    {
      _hb_window_say (self, "");
      _hb_window_notice (self, sentence, NULL, NULL, NULL, NULL);
    }
}

/* What is told of a movement joint is told at its face. */
static void
choose_there (HbWindow *self, Length x, OpeningId opening)
{
  const Wall *wall
      = project_wall (hb_document_get_project (self->document), hb_canvas_get_wall (self->canvas));

  for (guint i = 0; wall && i < wall->movement_joints->len; i++)
    if (wall_movement_joint_at (wall, i)->x == x)
      {
        hb_canvas_select_joint (self->canvas, i + 1);
        return;
      }
  hb_canvas_select (self->canvas, opening);
}

static void
go_to_cb (HbWindow *self, int course, int x, guint opening)
{
  if (hb_canvas_get_client (self->canvas) || _hb_window_shows_plan (self))
    gtk_widget_activate_action (GTK_WIDGET (self), "win.view", "s", "laying");
  choose_there (self, x, (OpeningId){ opening });
  hb_canvas_go_to (self->canvas, course, x);
}

static void
line_chosen_cb (HbWindow *self, const char *key)
{
  hb_canvas_set_highlight (self->canvas, key);
}

/* ---- files ---- */

gboolean
hb_window_open (HbWindow *self, GFile *file, gboolean copy)
{
  g_autofree char *path = g_file_get_path (file);
  g_autoptr (GError) error = NULL;

  g_return_val_if_fail (HB_IS_WINDOW (self), FALSE);
  if (!self->painted)
    {
      g_set_object (&self->pending, file);
      self->pending_copy = copy;
      gtk_widget_set_visible (self->no_walls, FALSE);
      return TRUE;
    }
  if (!path)
    {
      _hb_window_notice (self, _ ("Only files on this computer can be opened."), NULL, NULL, NULL,
                         NULL);
      return FALSE;
    }
  hb_canvas_cancel (self->canvas);
  if (copy ? !hb_document_open_copy (self->document, path, &error)
           : !hb_document_open (self->document, path, &error))
    {
      _hb_window_notice (self, error->message, NULL, NULL, NULL, NULL);
      return FALSE;
    }
  _hb_window_hide_notice (self);
  if (!copy)
    {
      g_autofree char *uri = g_file_get_uri (file);

      gtk_recent_manager_add_item (gtk_recent_manager_get_default (), uri);
    }
  hb_canvas_fit (self->canvas);
  hb_plan_view_fit (self->plan);
  return TRUE;
}

gboolean
hb_window_is_untouched (HbWindow *self)
{
  g_return_val_if_fail (HB_IS_WINDOW (self), FALSE);
  return !self->pending && !hb_document_get_path (self->document)
         && !hb_document_is_modified (self->document);
}

static gboolean
dropped_cb (HbWindow *self, const GValue *value)
{
  GFile *file = g_value_get_object (value);

  if (!file)
    return FALSE;
  _hb_window_open_asked (self, file);
  return TRUE;
}

static void
add_drop (HbWindow *self)
{
  GtkDropTarget *target = gtk_drop_target_new (G_TYPE_FILE, GDK_ACTION_COPY);

  g_signal_connect_swapped (target, "drop", G_CALLBACK (dropped_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (target));
}

/* Coming back to the window is when a file that another program wrote should be told of. */
static void
active_cb (HbWindow *self)
{
  if (self->document && gtk_window_is_active (GTK_WINDOW (self)))
    _hb_window_check_disk (self);
}

static void
close_now (HbWindow *self, GFile *file)
{
  (void) file;
  self->may_close = TRUE;
  gtk_window_close (GTK_WINDOW (self));
}

static gboolean
hb_window_close_request (GtkWindow *window)
{
  HbWindow *self = HB_WINDOW (window);
  int width, height;

  /* GTK does not hear of a second close from within the first: what may close does so now. */
  hb_canvas_cancel (self->canvas);
  if (!self->may_close && hb_document_is_modified (self->document))
    {
      _hb_window_when_saved (self, close_now, NULL);
      return TRUE;
    }
  gtk_window_get_default_size (window, &width, &height);
  hb_settings_set_window (width, height, gtk_window_is_maximized (window));
  return GTK_WINDOW_CLASS (hb_window_parent_class)->close_request (window);
}

/* ---- the first frame ---- */

static gboolean
fill_cb (gpointer data)
{
  HbWindow *self = data;
  g_autoptr (GFile) file = g_steal_pointer (&self->pending);

  self->fill = 0;
  self->painted = TRUE;
  if (file && !hb_window_open (self, file, self->pending_copy))
    keep_a_wall (self);
  return G_SOURCE_REMOVE;
}

static void
painted_cb (GdkFrameClock *clock, HbWindow *self)
{
  g_signal_handlers_disconnect_by_func (clock, painted_cb, self);
  self->fill = g_idle_add (fill_cb, self);
}

/* A window that is there at once and shows its walls in the second frame is waited for less than
 * one that comes with everything. */
static void
hb_window_realize (GtkWidget *widget)
{
  GTK_WIDGET_CLASS (hb_window_parent_class)->realize (widget);
  if (!HB_WINDOW (widget)->painted)
    g_signal_connect_object (gtk_widget_get_frame_clock (widget), "after-paint",
                             G_CALLBACK (painted_cb), widget, 0);
}

/* ---- the widget ---- */

static void
hb_window_dispose (GObject *object)
{
  HbWindow *self = HB_WINDOW (object);

  g_clear_handle_id (&self->clock, g_source_remove);
  g_clear_handle_id (&self->fill, g_source_remove);
  g_clear_pointer (&self->improver, hb_improver_free);
  g_clear_pointer (&self->turner, hb_turner_free);
  g_clear_pointer (&self->progress, hb_progress_free);
  if (self->answers)
    hb_answers_stop (self->answers);
  g_clear_weak_pointer (&self->level);
  g_clear_weak_pointer (&self->rod);
  g_clear_weak_pointer (&self->work);
  g_clear_weak_pointer (&self->built);
  g_clear_object (&self->chooser);
  g_clear_object (&self->pending);
  gtk_widget_dispose_template (GTK_WIDGET (self), HB_TYPE_WINDOW);
  g_clear_object (&self->answers);
  g_clear_object (&self->document);
  G_OBJECT_CLASS (hb_window_parent_class)->dispose (object);
}

static void
bind_children (GtkWidgetClass *widget_class)
{
  gtk_widget_class_bind_template_child (widget_class, HbWindow, title);
  gtk_widget_class_bind_template_child (widget_class, HbWindow, subtitle);
  gtk_widget_class_bind_template_child (widget_class, HbWindow, saved);
  gtk_widget_class_bind_template_child (widget_class, HbWindow, walls);
  gtk_widget_class_bind_template_child (widget_class, HbWindow, canvas);
  gtk_widget_class_bind_template_child (widget_class, HbWindow, plan);
  gtk_widget_class_bind_template_child (widget_class, HbWindow, stage);
  gtk_widget_class_bind_template_child (widget_class, HbWindow, no_plan);
  gtk_widget_class_bind_template_child (widget_class, HbWindow, takeoff);
  gtk_widget_class_bind_template_child (widget_class, HbWindow, inspector);
  gtk_widget_class_bind_template_child (widget_class, HbWindow, findings);
  gtk_widget_class_bind_template_child (widget_class, HbWindow, side);
  gtk_widget_class_bind_template_child (widget_class, HbWindow, no_walls);
  gtk_widget_class_bind_template_child (widget_class, HbWindow, status);
  gtk_widget_class_bind_template_child (widget_class, HbWindow, notice);
  gtk_widget_class_bind_template_child (widget_class, HbWindow, notice_text);
  gtk_widget_class_bind_template_child (widget_class, HbWindow, notice_first);
  gtk_widget_class_bind_template_child (widget_class, HbWindow, notice_second);
  gtk_widget_class_bind_template_child (widget_class, HbWindow, undo);
  gtk_widget_class_bind_template_child (widget_class, HbWindow, redo);
  gtk_widget_class_bind_template_child (widget_class, HbWindow, opening_button);
  gtk_widget_class_bind_template_child (widget_class, HbWindow, recent);
}

static void
bind_callbacks (GtkWidgetClass *widget_class)
{
  gtk_widget_class_bind_template_callback (widget_class, wall_chosen_cb);
  gtk_widget_class_bind_template_callback (widget_class, wall_drawn_cb);
  gtk_widget_class_bind_template_callback (widget_class, selected_cb);
  gtk_widget_class_bind_template_callback (widget_class, piece_cb);
  gtk_widget_class_bind_template_callback (widget_class, tool_cb);
  gtk_widget_class_bind_template_callback (widget_class, said_cb);
  gtk_widget_class_bind_template_callback (widget_class, refused_cb);
  gtk_widget_class_bind_template_callback (widget_class, go_to_cb);
  gtk_widget_class_bind_template_callback (widget_class, line_chosen_cb);
  gtk_widget_class_bind_template_callback (widget_class, plan_chosen_cb);
  gtk_widget_class_bind_template_callback (widget_class, plan_meeting_cb);
  gtk_widget_class_bind_template_callback (widget_class, plan_open_cb);
  gtk_widget_class_bind_template_callback (widget_class, plan_tool_cb);
}

static void
hb_window_class_init (HbWindowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = hb_window_dispose;
  widget_class->realize = hb_window_realize;
  GTK_WINDOW_CLASS (klass)->close_request = hb_window_close_request;
  g_type_ensure (HB_TYPE_CANVAS);
  g_type_ensure (HB_TYPE_PLAN_VIEW);
  g_type_ensure (HB_TYPE_WALLS_PANE);
  g_type_ensure (HB_TYPE_TAKEOFF_PANE);
  g_type_ensure (HB_TYPE_INSPECTOR);
  g_type_ensure (HB_TYPE_FINDINGS_PANE);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/halfbond/ui/window.ui");
  bind_children (widget_class);
  bind_callbacks (widget_class);
  _hb_window_class_add_actions (widget_class);
}

static void
connect_document (HbWindow *self)
{
  /* Before the panes hear of it, a wall is chosen that is there; after them, nothing is left over.
   */
  g_signal_connect_object (self->document, "changed", G_CALLBACK (changed_cb), self,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (self->document, "state", G_CALLBACK (state_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (self->answers, "laid", G_CALLBACK (explain), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (self->answers, "counted", G_CALLBACK (explain), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (self->answers, "found", G_CALLBACK (explain), self, G_CONNECT_SWAPPED);
  hb_canvas_set_document (self->canvas, self->document, self->answers);
  hb_plan_view_set_document (self->plan, self->document, self->answers);
  hb_walls_pane_set_document (self->walls, self->document, self->answers);
  hb_takeoff_pane_set_document (self->takeoff, self->document, self->answers);
  hb_findings_pane_set_document (self->findings, self->document, self->answers);
  hb_inspector_set_document (self->inspector, self->document);
}

static void
hb_window_init (HbWindow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  self->document = hb_document_new ();
  self->answers = hb_answers_new (self->document);
  self->improver = hb_improver_new (self->document, improver_told, self);
  self->turner = hb_turner_new (self->document, turner_told, self);
  self->progress = hb_progress_new (self->document, self->answers, progress_told, self);
  _hb_window_add_actions (self);
  connect_document (self);
  add_drop (self);
  add_escape (self);
  g_signal_connect (self, "notify::is-active", G_CALLBACK (active_cb), NULL);
  self->clock = g_timeout_add_seconds (CLOCK, clock_cb, self);
  changed_cb (self);
}

HbWindow *
hb_window_new (GtkApplication *application)
{
  HbWindow *self = g_object_new (HB_TYPE_WINDOW, "application", application, NULL);
  int width, height;
  gboolean maximized;

  hb_settings_get_window (&width, &height, &maximized);
  gtk_window_set_default_size (GTK_WINDOW (self), width, height);
  if (maximized)
    gtk_window_maximize (GTK_WINDOW (self));
  return self;
}
