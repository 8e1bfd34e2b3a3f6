/* window-actions.c - what menus, buttons and keys do, by name */
#include "app/window-private.h"

#include <glib/gi18n.h>

#include "app/building-dialog.h"
#include "app/level-window.h"
#include "paint/plan.h"

/* ---- the project ---- */

static void
undo (GtkWidget *widget, const char *name, GVariant *parameter)
{
  HbWindow *self = HB_WINDOW (widget);

  (void) name;
  (void) parameter;
  hb_canvas_cancel (self->canvas);
  hb_plan_view_cancel (self->plan);
  hb_document_undo (self->document);
}

static void
redo (GtkWidget *widget, const char *name, GVariant *parameter)
{
  HbWindow *self = HB_WINDOW (widget);

  (void) name;
  (void) parameter;
  hb_canvas_cancel (self->canvas);
  hb_plan_view_cancel (self->plan);
  hb_document_redo (self->document);
}

/* In plan. */
static gboolean
shows_a_wall (HbWindow *self)
{
  return plan_bounds (hb_document_get_project (self->document), &(PlanBox){ 0 });
}

static void
add_opening (GtkWidget *widget, const char *name, GVariant *parameter)
{
  HbWindow *self = HB_WINDOW (widget);
  OpeningKind kind = OPENING_WINDOW;
  static const HbTool tools[] = {
    [OPENING_WINDOW] = HB_TOOL_WINDOW, [OPENING_DOOR] = HB_TOOL_DOOR, [OPENING_VOID] = HB_TOOL_VOID
  };
  static const HbPlanTool in_plan[] = { [OPENING_WINDOW] = HB_PLAN_TOOL_WINDOW,
                                        [OPENING_DOOR] = HB_PLAN_TOOL_DOOR,
                                        [OPENING_VOID] = HB_PLAN_TOOL_VOID };

  (void) name;
  opening_kind_from_word (g_variant_get_string (parameter, NULL), &kind);
  if (_hb_window_shows_plan (self) && shows_a_wall (self))
    {
      hb_plan_view_set_tool (self->plan, in_plan[kind]);
      gtk_widget_grab_focus (GTK_WIDGET (self->plan));
      return;
    }
  hb_canvas_set_tool (self->canvas, tools[kind]);
  gtk_widget_grab_focus (GTK_WIDGET (self->canvas));
}

/* Again: it is given up. */
static void
toggle_plan_tool (HbWindow *self, HbPlanTool tool)
{
  gtk_widget_activate_action (GTK_WIDGET (self), "win.view", "s", "plan");
  hb_plan_view_set_tool (self->plan,
                         hb_plan_view_get_tool (self->plan) == tool ? HB_PLAN_TOOL_NONE : tool);
  gtk_widget_grab_focus (GTK_WIDGET (self->plan));
}

static void
add_wall (GtkWidget *widget, const char *name, GVariant *parameter)
{
  HbWindow *self = HB_WINDOW (widget);

  (void) name;
  (void) parameter;
  if (_hb_window_shows_plan (self))
    {
      toggle_plan_tool (self, HB_PLAN_TOOL_WALL);
      return;
    }
  hb_canvas_set_tool (self->canvas, HB_TOOL_WALL);
  gtk_widget_grab_focus (GTK_WIDGET (self->canvas));
}

static void
add_usual_wall (GtkWidget *widget, const char *name, GVariant *parameter)
{
  HbWindow *self = HB_WINDOW (widget);
  g_autoptr (Wall) wall = wall_new ();
  g_autoptr (Edit) edit = NULL;
  g_autoptr (GError) error = NULL;
  const Project *project = hb_document_get_project (self->document);
  const WallId id = { project->next };

  (void) name;
  (void) parameter;
  g_free (wall->name);
  wall->name = g_strdup_printf (_ ("Wall %u"), project->walls->len + 1);
  edit = edit_add_wall (wall);
  if (hb_document_apply (self->document, edit, _ ("Add a wall"), &error))
    _hb_window_show_wall (self, id);
  else
    _hb_window_notice (self, error->message, NULL, NULL, NULL, NULL);
}

static void
building_made (WallId first, gpointer data)
{
  HbWindow *self = data;

  _hb_window_show_wall (self, first);
  gtk_widget_activate_action (GTK_WIDGET (self), "win.view", "s", "plan");
  hb_plan_view_fit (self->plan);
  gtk_widget_grab_focus (GTK_WIDGET (self->plan));
}

static void
new_building (GtkWidget *widget, const char *name, GVariant *parameter)
{
  HbWindow *self = HB_WINDOW (widget);

  (void) name;
  (void) parameter;
  hb_canvas_cancel (self->canvas);
  hb_plan_view_cancel (self->plan);
  hb_building_ask (GTK_WINDOW (self), self->document, building_made, self);
}

static void
add_partition (GtkWidget *widget, const char *name, GVariant *parameter)
{
  (void) name;
  (void) parameter;
  toggle_plan_tool (HB_WINDOW (widget), HB_PLAN_TOOL_PART);
}

static void
draw_outline (GtkWidget *widget, const char *name, GVariant *parameter)
{
  (void) name;
  (void) parameter;
  toggle_plan_tool (HB_WINDOW (widget), HB_PLAN_TOOL_OUTLINE);
}

static void
place_wall (GtkWidget *widget, const char *name, GVariant *parameter)
{
  (void) name;
  (void) parameter;
  toggle_plan_tool (HB_WINDOW (widget), HB_PLAN_TOOL_PLACE);
}

/* Again: it stops. */
static void
turn_corners (GtkWidget *widget, const char *name, GVariant *parameter)
{
  HbWindow *self = HB_WINDOW (widget);

  (void) name;
  (void) parameter;
  if (hb_turner_is_running (self->turner))
    {
      hb_turner_stop (self->turner);
      return;
    }
  hb_canvas_cancel (self->canvas);
  hb_plan_view_cancel (self->plan);
  hb_turner_start (self->turner);
}

static void
apply_turns (GtkWidget *widget, const char *name, GVariant *parameter)
{
  HbWindow *self = HB_WINDOW (widget);
  g_autoptr (GError) error = NULL;

  (void) name;
  (void) parameter;
  _hb_window_hide_notice (self);
  if (!hb_turner_apply (self->turner, &error))
    _hb_window_notice (self, error->message, NULL, NULL, NULL, NULL);
}

static void
remove_selected (GtkWidget *widget, const char *name, GVariant *parameter)
{
  (void) name;
  (void) parameter;
  hb_canvas_remove_selected (HB_WINDOW (widget)->canvas);
}

/* ---- the lit piece ---- */

static void
pin_piece (GtkWidget *widget, const char *name, GVariant *parameter)
{
  (void) name;
  (void) parameter;
  hb_canvas_pin (HB_WINDOW (widget)->canvas, HB_PIN_TOGGLE);
}

static void
split_piece (GtkWidget *widget, const char *name, GVariant *parameter)
{
  (void) name;
  (void) parameter;
  hb_canvas_pin (HB_WINDOW (widget)->canvas, HB_PIN_SPLIT);
}

static void
join_piece (GtkWidget *widget, const char *name, GVariant *parameter)
{
  (void) name;
  (void) parameter;
  hb_canvas_pin (HB_WINDOW (widget)->canvas, HB_PIN_JOIN);
}

static void
movement_joint (GtkWidget *widget, const char *name, GVariant *parameter)
{
  (void) name;
  (void) parameter;
  hb_canvas_toggle_movement_joint (HB_WINDOW (widget)->canvas);
}

static void
take_perpend (GtkWidget *widget, const char *name, GVariant *parameter)
{
  (void) name;
  (void) parameter;
  hb_canvas_take_perpend (HB_WINDOW (widget)->canvas);
}

/* ---- files ---- */

static void
new_now (HbWindow *self, GFile *file)
{
  (void) file;
  _hb_window_hide_notice (self);
  hb_canvas_cancel (self->canvas);
  hb_document_clear (self->document);
}

static void
new_project (GtkWidget *widget, const char *name, GVariant *parameter)
{
  (void) name;
  (void) parameter;
  _hb_window_when_saved (HB_WINDOW (widget), new_now, NULL);
}

static void
open_file (GtkWidget *widget, const char *name, GVariant *parameter)
{
  (void) name;
  (void) parameter;
  _hb_window_ask_open (HB_WINDOW (widget));
}

static void
open_recent (GtkWidget *widget, const char *name, GVariant *parameter)
{
  g_autoptr (GFile) file = g_file_new_for_uri (g_variant_get_string (parameter, NULL));

  (void) name;
  _hb_window_open_asked (HB_WINDOW (widget), file);
}

static void
save (GtkWidget *widget, const char *name, GVariant *parameter)
{
  (void) name;
  (void) parameter;
  _hb_window_save (HB_WINDOW (widget), NULL, NULL);
}

static void
save_as (GtkWidget *widget, const char *name, GVariant *parameter)
{
  (void) name;
  (void) parameter;
  _hb_window_save_as (HB_WINDOW (widget), NULL, NULL);
}

/* The file as another program wrote it, instead of what is here. */
static void
reload (GtkWidget *widget, const char *name, GVariant *parameter)
{
  HbWindow *self = HB_WINDOW (widget);
  const char *path = hb_document_get_path (self->document);
  g_autoptr (GFile) file = path ? g_file_new_for_path (path) : NULL;

  (void) name;
  (void) parameter;
  if (file)
    hb_window_open (self, file, FALSE);
}

/* What is here, over what another program wrote. */
static void
keep_mine (GtkWidget *widget, const char *name, GVariant *parameter)
{
  HbWindow *self = HB_WINDOW (widget);
  g_autoptr (GError) error = NULL;

  (void) name;
  (void) parameter;
  _hb_window_hide_notice (self);
  if (!hb_document_save (self->document, TRUE, &error))
    _hb_window_notice (self, error->message, NULL, NULL, NULL, NULL);
}

static void export(GtkWidget *widget, const char *name, GVariant *parameter)
{
  (void) name;
  _hb_window_export (HB_WINDOW (widget), g_variant_get_string (parameter, NULL));
}

/* ---- advice ---- */

/* Again: it stops. */
static void
improve (GtkWidget *widget, const char *name, GVariant *parameter)
{
  HbWindow *self = HB_WINDOW (widget);

  (void) name;
  (void) parameter;
  if (hb_improver_is_running (self->improver))
    {
      hb_improver_stop (self->improver);
      _hb_window_say (self, _ ("Improving was stopped; nothing was changed."));
      return;
    }
  hb_canvas_cancel (self->canvas);
  hb_improver_start (self->improver, hb_canvas_get_wall (self->canvas));
}

/* ---- the footing ---- */

static void
show_level (GtkWidget *widget, const char *name, GVariant *parameter)
{
  HbWindow *self = HB_WINDOW (widget);

  (void) name;
  (void) parameter;
  hb_canvas_cancel (self->canvas);
  if (!self->level)
    {
      self->level = GTK_WINDOW (hb_level_window_new (GTK_WINDOW (self), self->document));
      g_object_add_weak_pointer (G_OBJECT (self->level), (gpointer *) &self->level);
    }
  gtk_window_present (self->level);
}

/* ---- gauge and work ---- */

static void
show_rod (GtkWidget *widget, const char *name, GVariant *parameter)
{
  HbWindow *self = HB_WINDOW (widget);

  (void) name;
  (void) parameter;
  hb_canvas_cancel (self->canvas);
  if (!self->rod)
    {
      self->rod = hb_rod_window_new (GTK_WINDOW (self), self->document,
                                     hb_canvas_get_wall (self->canvas));
      g_object_add_weak_pointer (G_OBJECT (self->rod), (gpointer *) &self->rod);
    }
  gtk_window_present (GTK_WINDOW (self->rod));
}

/* The work's window is on its way out. */
static void
work_gone_cb (HbWindow *self)
{
  g_clear_weak_pointer (&self->work);
  if (self->canvas)
    _hb_window_show_pallets (self);
}

static void
show_work (GtkWidget *widget, const char *name, GVariant *parameter)
{
  HbWindow *self = HB_WINDOW (widget);

  (void) name;
  (void) parameter;
  hb_canvas_cancel (self->canvas);
  if (!self->work)
    {
      self->work = hb_work_window_new (GTK_WINDOW (self), self->document, self->answers);
      g_object_add_weak_pointer (G_OBJECT (self->work), (gpointer *) &self->work);
      g_signal_connect_object (self->work, "reckoned", G_CALLBACK (_hb_window_show_pallets), self,
                               G_CONNECT_SWAPPED);
      g_signal_connect_object (self->work, "destroy", G_CALLBACK (work_gone_cb), self,
                               G_CONNECT_SWAPPED);
      _hb_window_show_pallets (self);
    }
  gtk_window_present (GTK_WINDOW (self->work));
}

/* ---- what was built ---- */

static void
show_built (GtkWidget *widget, const char *name, GVariant *parameter)
{
  HbWindow *self = HB_WINDOW (widget);

  (void) name;
  (void) parameter;
  hb_canvas_cancel (self->canvas);
  if (!self->built)
    {
      self->built = hb_built_window_new (GTK_WINDOW (self), self->document, self->answers,
                                         self->progress, hb_canvas_get_wall (self->canvas));
      g_object_add_weak_pointer (G_OBJECT (self->built), (gpointer *) &self->built);
    }
  gtk_window_present (GTK_WINDOW (self->built));
}

/* All up to the course at hand is laid; where that is the last one that stands, it is taken back.
 */
static void
mark_laid (GtkWidget *widget, const char *name, GVariant *parameter)
{
  HbWindow *self = HB_WINDOW (widget);
  const WallId id = hb_canvas_get_wall (self->canvas);
  const Wall *wall = project_wall (hb_document_get_project (self->document), id);
  const gint32 course = hb_canvas_get_course (self->canvas);

  (void) name;
  (void) parameter;
  hb_canvas_cancel (self->canvas);
  if (!wall || hb_canvas_get_client (self->canvas) || _hb_window_shows_plan (self))
    return;
  if (!course)
    _hb_window_say (self, _ ("Point at a course of the wall: U says that it is laid up to there."));
  else
    hb_progress_set (self->progress, id, course == wall_standing (wall) ? course - 1 : course);
}

/* ---- the view ---- */

static void
hide_notice (GtkWidget *widget, const char *name, GVariant *parameter)
{
  (void) name;
  (void) parameter;
  _hb_window_hide_notice (HB_WINDOW (widget));
}

static void
fit (GtkWidget *widget, const char *name, GVariant *parameter)
{
  (void) name;
  (void) parameter;
  if (_hb_window_shows_plan (HB_WINDOW (widget)))
    hb_plan_view_fit (HB_WINDOW (widget)->plan);
  else
    hb_canvas_fit (HB_WINDOW (widget)->canvas);
}

static void
zoom (HbWindow *self, double factor)
{
  if (_hb_window_shows_plan (self))
    hb_plan_view_zoom (self->plan, factor);
  else
    hb_canvas_zoom (self->canvas, factor);
}

static void
zoom_in (GtkWidget *widget, const char *name, GVariant *parameter)
{
  (void) name;
  (void) parameter;
  zoom (HB_WINDOW (widget), 1.25);
}

static void
zoom_out (GtkWidget *widget, const char *name, GVariant *parameter)
{
  (void) name;
  (void) parameter;
  zoom (HB_WINDOW (widget), 1 / 1.25);
}

static void
view_changed (GSimpleAction *action, GVariant *value, gpointer data)
{
  g_simple_action_set_state (action, value);
  _hb_window_show_view (data, g_variant_get_string (value, NULL));
}

/* ---- about ---- */

static void
about (GtkWidget *widget, const char *name, GVariant *parameter)
{
  (void) name;
  (void) parameter;
  gtk_show_about_dialog (
      GTK_WINDOW (widget), "program-name", _ ("Halfbond"), "version", HALFBOND_VERSION,
      "logo-icon-name", "org.halfbond.Halfbond", "comments",
      _ ("Plans, counts and draws walls of large blocks: the bond with the fewest cuts, proven.\n\n"
         "It plans and counts. Strength and stability follow the local code and a licensed "
         "engineer."),
      "license-type", GTK_LICENSE_GPL_3_0, NULL);
}

void
_hb_window_class_add_actions (GtkWidgetClass *widget_class)
{
  gtk_widget_class_install_action (widget_class, "win.undo", NULL, undo);
  gtk_widget_class_install_action (widget_class, "win.redo", NULL, redo);
  gtk_widget_class_install_action (widget_class, "win.add-opening", "s", add_opening);
  gtk_widget_class_install_action (widget_class, "win.add-wall", NULL, add_wall);
  gtk_widget_class_install_action (widget_class, "win.add-usual-wall", NULL, add_usual_wall);
  gtk_widget_class_install_action (widget_class, "win.new-building", NULL, new_building);
  gtk_widget_class_install_action (widget_class, "win.add-partition", NULL, add_partition);
  gtk_widget_class_install_action (widget_class, "win.draw-outline", NULL, draw_outline);
  gtk_widget_class_install_action (widget_class, "win.place-wall", NULL, place_wall);
  gtk_widget_class_install_action (widget_class, "win.turn-corners", NULL, turn_corners);
  gtk_widget_class_install_action (widget_class, "win.apply-turns", NULL, apply_turns);
  gtk_widget_class_install_action (widget_class, "win.remove", NULL, remove_selected);
  gtk_widget_class_install_action (widget_class, "win.pin-piece", NULL, pin_piece);
  gtk_widget_class_install_action (widget_class, "win.split-piece", NULL, split_piece);
  gtk_widget_class_install_action (widget_class, "win.join-piece", NULL, join_piece);
  gtk_widget_class_install_action (widget_class, "win.movement-joint", NULL, movement_joint);
  gtk_widget_class_install_action (widget_class, "win.take-perpend", NULL, take_perpend);
  gtk_widget_class_install_action (widget_class, "win.new", NULL, new_project);
  gtk_widget_class_install_action (widget_class, "win.open", NULL, open_file);
  gtk_widget_class_install_action (widget_class, "win.open-recent", "s", open_recent);
  gtk_widget_class_install_action (widget_class, "win.save", NULL, save);
  gtk_widget_class_install_action (widget_class, "win.save-as", NULL, save_as);
  gtk_widget_class_install_action (widget_class, "win.reload", NULL, reload);
  gtk_widget_class_install_action (widget_class, "win.keep-mine", NULL, keep_mine);
  gtk_widget_class_install_action (widget_class, "win.export", "s", export);
  gtk_widget_class_install_action (widget_class, "win.improve", NULL, improve);
  gtk_widget_class_install_action (widget_class, "win.level", NULL, show_level);
  gtk_widget_class_install_action (widget_class, "win.rod", NULL, show_rod);
  gtk_widget_class_install_action (widget_class, "win.built", NULL, show_built);
  gtk_widget_class_install_action (widget_class, "win.laid", NULL, mark_laid);
  gtk_widget_class_install_action (widget_class, "win.work", NULL, show_work);
  gtk_widget_class_install_action (widget_class, "win.hide-notice", NULL, hide_notice);
  gtk_widget_class_install_action (widget_class, "win.fit", NULL, fit);
  gtk_widget_class_install_action (widget_class, "win.zoom-in", NULL, zoom_in);
  gtk_widget_class_install_action (widget_class, "win.zoom-out", NULL, zoom_out);
  gtk_widget_class_install_action (widget_class, "win.about", NULL, about);
}

/* ---- keys: in the bubble phase, so that an entry keeps what it uses itself ---- */

typedef struct
{
  const char *trigger, *action, *target;
} Key;

/* Of several for one action, the first is the one that the menu tells. */
static const Key keys[] = {
  { "<Control>z", "win.undo", NULL },
  { "<Control><Shift>z", "win.redo", NULL },
  { "<Control>y", "win.redo", NULL },
  { "<Control>n", "win.new", NULL },
  { "<Control>o", "win.open", NULL },
  { "<Control>s", "win.save", NULL },
  { "<Control><Shift>s", "win.save-as", NULL },
  { "<Control>p", "win.export", "pdf" },
  { "<Control><Shift>n", "win.add-wall", NULL },
  { "<Control>b", "win.new-building", NULL },
  { "t", "win.add-partition", NULL },
  { "o", "win.draw-outline", NULL },
  { "s", "win.place-wall", NULL },
  { "b", "win.turn-corners", NULL },
  { "w", "win.add-opening", "window" },
  { "d", "win.add-opening", "door" },
  { "v", "win.add-opening", "void" },
  { "p", "win.pin-piece", NULL },
  { "c", "win.split-piece", NULL },
  { "j", "win.join-piece", NULL },
  { "m", "win.take-perpend", NULL },
  { "k", "win.movement-joint", NULL },
  { "i", "win.improve", NULL },
  { "l", "win.level", NULL },
  { "g", "win.rod", NULL },
  { "a", "win.built", NULL },
  { "u", "win.laid", NULL },
  { "h", "win.work", NULL },
  { "f", "win.fit", NULL },
  { "<Control>0", "win.fit", NULL },
  { "<Control>plus", "win.zoom-in", NULL },
  { "<Control>equal", "win.zoom-in", NULL },
  { "<Control>KP_Add", "win.zoom-in", NULL },
  { "<Control>minus", "win.zoom-out", NULL },
  { "<Control>KP_Subtract", "win.zoom-out", NULL },
  { "<Control>1", "win.view", "laying" },
  { "<Control>2", "win.view", "client" },
  { "<Control>3", "win.view", "plan" },
  { "<Alt>1", "win.show-walls", NULL },
  { "<Alt>2", "win.show-findings", NULL },
  { "<Alt>3", "win.show-side", NULL },
  { "F1", "win.show-help-overlay", NULL },
  { "<Control>question", "win.show-help-overlay", NULL },
  { "<Control>w", "window.close", NULL },
  { "<Control>q", "app.quit", NULL },
};

static void
add_keys (HbWindow *self)
{
  GtkEventController *controller = gtk_shortcut_controller_new ();

  gtk_event_controller_set_propagation_phase (controller, GTK_PHASE_BUBBLE);
  /* GTK's menus show the one that was added last. */
  for (guint i = G_N_ELEMENTS (keys); i-- > 0;)
    {
      GtkShortcut *shortcut = gtk_shortcut_new (gtk_shortcut_trigger_parse_string (keys[i].trigger),
                                                gtk_named_action_new (keys[i].action));

      if (keys[i].target)
        gtk_shortcut_set_arguments (shortcut, g_variant_new_string (keys[i].target));
      gtk_shortcut_controller_add_shortcut (GTK_SHORTCUT_CONTROLLER (controller), shortcut);
    }
  gtk_widget_add_controller (GTK_WIDGET (self), controller);
}

static void
add_pane_action (HbWindow *self, const char *name, GtkWidget *pane)
{
  g_autoptr (GPropertyAction) action = g_property_action_new (name, pane, "visible");

  g_action_map_add_action (G_ACTION_MAP (self), G_ACTION (action));
}

static void
add_help (HbWindow *self)
{
  g_autoptr (GtkBuilder) builder = gtk_builder_new_from_resource ("/org/halfbond/ui/keys.ui");
  GObject *overlay = gtk_builder_get_object (builder, "keys");

  g_object_set (overlay, "section-name", "wall", NULL);
  gtk_application_window_set_help_overlay (GTK_APPLICATION_WINDOW (self),
                                           GTK_SHORTCUTS_WINDOW (overlay));
}

void
_hb_window_add_actions (HbWindow *self)
{
  const GActionEntry entries[] = {
    { .name = "view", .parameter_type = "s", .state = "'laying'", .change_state = view_changed },
  };

  g_action_map_add_action_entries (G_ACTION_MAP (self), entries, G_N_ELEMENTS (entries), self);
  add_pane_action (self, "show-walls", GTK_WIDGET (self->walls));
  add_pane_action (self, "show-side", self->side);
  add_pane_action (self, "show-findings", GTK_WIDGET (self->findings));
  add_keys (self);
  add_help (self);
  _hb_window_fill_recent (self);
  g_signal_connect_object (gtk_recent_manager_get_default (), "changed",
                           G_CALLBACK (_hb_window_fill_recent), self, G_CONNECT_SWAPPED);
}

static void
set_tip (GtkWidget *button, const char *none, const char *format, const char *label)
{
  g_autofree char *tip = label ? g_strdup_printf (format, label) : g_strdup (none);

  gtk_widget_set_tooltip_text (button, tip);
}

/* Of the wall that is shown. */
static gboolean
stands_nowhere (HbWindow *self)
{
  const Wall *wall
      = project_wall (hb_document_get_project (self->document), hb_canvas_get_wall (self->canvas));

  /* While it is being placed, the action puts an end to that. */
  return hb_plan_view_get_tool (self->plan) == HB_PLAN_TOOL_PLACE || (wall && !wall->place.given);
}

void
_hb_window_update_actions (HbWindow *self)
{
  const char *undone = hb_document_get_undo_label (self->document);
  const char *redone = hb_document_get_redo_label (self->document);
  const gboolean wall = hb_canvas_get_wall (self->canvas).n != 0;
  GtkWidget *widget = GTK_WIDGET (self);

  gtk_widget_action_set_enabled (widget, "win.undo", undone != NULL);
  gtk_widget_action_set_enabled (widget, "win.redo", redone != NULL);
  set_tip (self->undo, _ ("Nothing to undo"), _ ("Undo: %s (Ctrl+Z)"), undone);
  set_tip (self->redo, _ ("Nothing to redo"), _ ("Redo: %s (Ctrl+Shift+Z)"), redone);
  gtk_widget_action_set_enabled (widget, "win.add-opening", wall);
  gtk_widget_set_sensitive (self->opening_button, wall);
  gtk_widget_action_set_enabled (widget, "win.pin-piece", wall);
  gtk_widget_action_set_enabled (widget, "win.split-piece", wall);
  gtk_widget_action_set_enabled (widget, "win.join-piece", wall);
  gtk_widget_action_set_enabled (widget, "win.take-perpend", wall);
  gtk_widget_action_set_enabled (widget, "win.movement-joint", wall);
  gtk_widget_action_set_enabled (widget, "win.laid", wall);
  gtk_widget_action_set_enabled (widget, "win.export", wall);
  gtk_widget_action_set_enabled (
      widget, "win.improve", hb_improver_can (self->improver, hb_canvas_get_wall (self->canvas)));
  gtk_widget_action_set_enabled (widget, "win.add-partition", shows_a_wall (self));
  gtk_widget_action_set_enabled (widget, "win.place-wall", stands_nowhere (self));
  gtk_widget_action_set_enabled (widget, "win.turn-corners", hb_turner_can (self->turner));
  gtk_widget_action_set_enabled (widget, "win.remove",
                                 hb_canvas_get_selected (self->canvas).n != 0
                                     || hb_canvas_get_joint (self->canvas) != 0);
}
