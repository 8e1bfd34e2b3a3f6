#include "app/inspector.h"

#include <glib/gi18n.h>

#include "app/fields.h"
#include "app/joint-box.h"
#include "app/meeting-box.h"
#include "app/pins-list.h"
#include "app/plan-view.h"
#include "app/room-box.h"
#include "app/tool.h"
#include "app/top-box.h"

struct _HbInspector
{
  GtkWidget parent;

  /* Template widgets */
  GtkWidget *box;
  GtkLabel *title;
  GtkWidget *sections;
  GtkWidget *empty;
  GtkWidget *piece;
  GtkLabel *piece_is, *piece_text;

  /* Owned references */
  HbDocument *document;
  GPtrArray *controls;           /* GtkWidget *, one per field */
  GtkWidget *headings[N_ABOUTS]; /* borrowed */
  GtkWidget *grids[N_ABOUTS];    /* borrowed */
  GtkWidget *pins;               /* borrowed */
  GtkWidget *meeting, *room;     /* borrowed */
  GtkWidget *joint_box;          /* borrowed */
  GtkWidget *top;                /* borrowed */

  WallId wall;
  OpeningId opening;
  guint joint;   /* the movement joint that is spoken of, from 1; or 0 */
  WallId met[2]; /* the two walls of a meeting that is spoken of; or none */
  gboolean filling;
};

G_DEFINE_FINAL_TYPE (HbInspector, hb_inspector, GTK_TYPE_WIDGET)

static const Wall *
wall_of (HbInspector *self)
{
  return self->wall.n ? project_wall (hb_document_get_project (self->document), self->wall) : NULL;
}

static const Field *
field_of (GtkWidget *control)
{
  return g_object_get_data (G_OBJECT (control), "field");
}

/* ---- from a control to the project ---- */

/* FALSE with a sentence shown when it cannot be. */
static gboolean
set_field (HbInspector *self, GtkWidget *control, const char *text)
{
  const Project *project = hb_document_get_project (self->document);
  const Wall *wall = wall_of (self);
  const Field *field = field_of (control);
  g_autoptr (GError) error = NULL;
  g_autoptr (Edit) edit = NULL;
  g_autofree char *label = NULL, *now = NULL;

  if (!wall || self->filling)
    return TRUE;
  now = hb_field_text (field, project, wall, self->opening);
  if (g_str_equal (now, text))
    return TRUE;
  label = g_strdup_printf (_ ("Set %s"), _ (field->label));
  edit = hb_field_edit (field, project, wall, self->opening, text, &error);
  if (edit && hb_document_apply (self->document, edit, label, &error))
    return TRUE;
  g_signal_emit_by_name (self, "refused", error->message);
  return FALSE;
}

static void fill_control (HbInspector *self, GtkWidget *control);

static void
entry_done (HbInspector *self, GtkWidget *entry)
{
  if (set_field (self, entry, gtk_editable_get_text (GTK_EDITABLE (entry))))
    {
      gtk_widget_remove_css_class (entry, "error");
      fill_control (self, entry);
    }
  else
    gtk_widget_add_css_class (entry, "error");
}

static void
activate_cb (HbInspector *self, GtkWidget *entry)
{
  entry_done (self, entry);
  gtk_editable_select_region (GTK_EDITABLE (entry), 0, -1);
}

/* What was typed counts when the focus goes on, as in a form. */
static void
focus_left_cb (GtkEventController *focus, HbInspector *self)
{
  GtkWidget *entry = gtk_event_controller_get_widget (focus);

  entry_done (self, entry);
  /* A field without the focus shows what is true, not what was refused. */
  if (gtk_widget_has_css_class (entry, "error") && wall_of (self))
    {
      gtk_widget_remove_css_class (entry, "error");
      fill_control (self, entry);
    }
  gtk_editable_select_region (GTK_EDITABLE (entry), 0, 0);
}

static void
chosen_cb (HbInspector *self, GParamSpec *spec, GtkDropDown *choice)
{
  g_autofree char *text = g_strdup_printf ("%u", gtk_drop_down_get_selected (choice));

  (void) spec;
  set_field (self, GTK_WIDGET (choice), text);
}

static void
add_block (HbInspector *self, const Wall *wall)
{
  g_autoptr (GError) error = NULL;
  Edit *edits[2];

  hb_field_new_block (hb_document_get_project (self->document), wall, edits);
  if (!hb_document_apply_all (self->document, edits, G_N_ELEMENTS (edits), _ ("Add a block"),
                              &error))
    g_signal_emit_by_name (self, "refused", error->message);
  edit_free (edits[0]);
  edit_free (edits[1]);
}

/* The last choice is a new one. */
static gboolean
set_block (gpointer data)
{
  GtkDropDown *choice = data;
  GtkWidget *ancestor = gtk_widget_get_ancestor (GTK_WIDGET (choice), HB_TYPE_INSPECTOR);
  HbInspector *self = ancestor ? HB_INSPECTOR (ancestor) : NULL;
  const Wall *wall = self && self->document ? wall_of (self) : NULL;
  const guint chosen = gtk_drop_down_get_selected (choice);

  if (!wall || chosen == GTK_INVALID_LIST_POSITION)
    return G_SOURCE_REMOVE;
  if (chosen == hb_document_get_project (self->document)->blocks->len)
    add_block (self, wall);
  else
    chosen_cb (self, NULL, choice);
  return G_SOURCE_REMOVE;
}

/* Not at once: the list of choices is another afterwards, and GTK still walks the old one. */
static void
block_chosen_cb (HbInspector *self, GParamSpec *spec, GtkDropDown *choice)
{
  (void) spec;
  if (!self->filling)
    g_idle_add_full (G_PRIORITY_DEFAULT_IDLE, set_block, g_object_ref (choice), g_object_unref);
}

static void
toggled_cb (HbInspector *self, GtkCheckButton *check)
{
  set_field (self, GTK_WIDGET (check), gtk_check_button_get_active (check) ? "1" : "0");
}

/* Escape takes back what was typed. */
static gboolean
entry_key_cb (GtkEventControllerKey *keys, guint key, guint code, GdkModifierType state,
              HbInspector *self)
{
  GtkWidget *entry = gtk_event_controller_get_widget (GTK_EVENT_CONTROLLER (keys));

  (void) code;
  (void) state;
  if (key != GDK_KEY_Escape)
    return GDK_EVENT_PROPAGATE;
  gtk_widget_remove_css_class (entry, "error");
  fill_control (self, entry);
  gtk_editable_select_region (GTK_EDITABLE (entry), 0, -1);
  return GDK_EVENT_STOP;
}

/* ---- from the project to the controls ---- */

static void
fill_entry (HbInspector *self, GtkWidget *entry, const char *text)
{
  const Field *field = field_of (entry);
  g_autofree char *fallback
      = hb_field_default (field, hb_document_get_project (self->document), wall_of (self));

  gtk_entry_set_placeholder_text (GTK_ENTRY (entry), fallback);
  if (!g_str_equal (gtk_editable_get_text (GTK_EDITABLE (entry)), text))
    gtk_editable_set_text (GTK_EDITABLE (entry), text);
}

/* "Large block, 600 × 200 × 250", and at the end "New block". */
static char **
block_names (const Project *project)
{
  g_autoptr (GStrvBuilder) names = g_strv_builder_new ();

  for (guint i = 0; i < project->blocks->len; i++)
    {
      const Block *block = project_block_at (project, i);
      char l[LENGTH_TEXT_SIZE], h[LENGTH_TEXT_SIZE], t[LENGTH_TEXT_SIZE];
      g_autofree char *name
          = g_strdup_printf ("%s, %s × %s × %s", *block->name ? block->name : block->key,
                             length_text (block->length, l), length_text (block->height, h),
                             length_text (block->thickness, t));

      g_strv_builder_add (names, name);
    }
  g_strv_builder_add (names, _ ("New block"));
  return g_strv_builder_end (names);
}

static void
fill_blocks (HbInspector *self, GtkDropDown *choice)
{
  g_auto (GStrv) names = block_names (hb_document_get_project (self->document));
  g_autofree char *all = g_strjoinv ("\n", names);

  if (g_strcmp0 (all, g_object_get_data (G_OBJECT (choice), "names")) == 0)
    return;
  {
    g_autoptr (GtkStringList) list = gtk_string_list_new ((const char *const *) names);

    gtk_drop_down_set_model (choice, G_LIST_MODEL (list));
  }
  g_object_set_data_full (G_OBJECT (choice), "names", g_steal_pointer (&all), g_free);
}

/* A long name of a block does not widen the pane: the button that shows it cuts its middle, and
 * the sizes at its end stay. */
static void
shorten_labels (GtkWidget *widget)
{
  if (GTK_IS_LABEL (widget))
    gtk_label_set_ellipsize (GTK_LABEL (widget), PANGO_ELLIPSIZE_MIDDLE);
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child && !GTK_IS_POPOVER (widget);
       child = gtk_widget_get_next_sibling (child))
    shorten_labels (child);
}

static void
fill_control (HbInspector *self, GtkWidget *control)
{
  const Field *field = field_of (control);
  g_autofree char *text = hb_field_text (field, hb_document_get_project (self->document),
                                         wall_of (self), self->opening);
  const gboolean before = self->filling;

  self->filling = TRUE;
  if (field->kind == FIELD_KIND_BLOCK)
    fill_blocks (self, GTK_DROP_DOWN (control));
  if (field->kind == FIELD_KIND_CHOICE || field->kind == FIELD_KIND_BLOCK)
    {
      gtk_drop_down_set_selected (GTK_DROP_DOWN (control),
                                  (guint) g_ascii_strtoull (text, NULL, 10));
      shorten_labels (control);
    }
  else if (field->kind == FIELD_KIND_YES)
    gtk_check_button_set_active (GTK_CHECK_BUTTON (control), *text == '1');
  else
    fill_entry (self, control, text);
  self->filling = before;
}

static gboolean
has_focus_within (GtkWidget *control)
{
  return (gtk_widget_get_state_flags (control) & GTK_STATE_FLAG_FOCUS_WITHIN) != 0;
}

/* The title says what is spoken of. */
static void
fill_title (HbInspector *self, const Wall *wall)
{
  const Opening *opening = wall ? wall_opening (wall, self->opening) : NULL;
  g_autofree char *text = NULL;

  if (wall && self->met[0].n)
    text = hb_plan_view_dup_meeting_name (hb_document_get_project (self->document), self->met[0],
                                          self->met[1]);
  else if (wall && self->joint)
    text = g_strdup (_ ("Movement joint"));
  else if (opening)
    text = g_strdup_printf (_ ("Opening: %s"), tool_opening_name (opening));
  else if (wall)
    text = g_strdup_printf (_ ("Wall: %s"), tool_wall_name (wall));
  gtk_label_set_text (self->title, text ? text : _ ("Properties"));
}

static void
fill (HbInspector *self)
{
  const Wall *wall = wall_of (self);
  const gboolean opening = wall && wall_opening (wall, self->opening) != NULL;
  const gboolean other = opening || self->met[0].n || self->joint;

  fill_title (self, wall);
  hb_meeting_box_fill (HB_MEETING_BOX (self->meeting), self->document, self->met[0], self->met[1]);
  hb_joint_box_fill (HB_JOINT_BOX (self->joint_box), self->document, self->wall,
                     self->met[0].n ? 0 : self->joint);
  hb_room_box_fill (HB_ROOM_BOX (self->room), self->document, other ? (WallId){ 0 } : self->wall);
  hb_pins_list_fill (HB_PINS_LIST (self->pins), self->document, other ? (WallId){ 0 } : self->wall);
  hb_top_box_fill (HB_TOP_BOX (self->top), self->document, other ? (WallId){ 0 } : self->wall);
  gtk_widget_set_visible (self->empty, !wall);
  for (int i = 0; i < N_ABOUTS; i++)
    {
      const gboolean shown
          = wall && !self->met[0].n && !self->joint && (i == ABOUT_OPENING) == opening;

      gtk_widget_set_visible (self->headings[i], shown && i != ABOUT_OPENING && i != ABOUT_WALL);
      gtk_widget_set_visible (self->grids[i], shown);
    }
  for (guint i = 0; wall && i < self->controls->len; i++)
    {
      GtkWidget *control = g_ptr_array_index (self->controls, i);

      gtk_widget_set_visible (gtk_widget_get_parent (control),
                              hb_field_is_shown (field_of (control), wall));
      if ((field_of (control)->about == ABOUT_OPENING) == opening
          && !(GTK_IS_ENTRY (control) && has_focus_within (control)
               && gtk_widget_has_css_class (control, "error")))
        fill_control (self, control);
    }
}

/* ---- the controls ---- */

static GtkWidget *
entry_new (HbInspector *self)
{
  GtkWidget *entry = gtk_entry_new ();
  GtkEventController *focus = gtk_event_controller_focus_new ();
  GtkEventController *keys = gtk_event_controller_key_new ();

  gtk_editable_set_width_chars (GTK_EDITABLE (entry), 6);
  gtk_editable_set_max_width_chars (GTK_EDITABLE (entry), 12);
  g_signal_connect_swapped (entry, "activate", G_CALLBACK (activate_cb), self);
  g_signal_connect (focus, "leave", G_CALLBACK (focus_left_cb), self);
  gtk_widget_add_controller (entry, focus);
  gtk_event_controller_set_propagation_phase (keys, GTK_PHASE_CAPTURE);
  g_signal_connect (keys, "key-pressed", G_CALLBACK (entry_key_cb), self);
  gtk_widget_add_controller (entry, keys);
  return entry;
}

static GtkWidget *
choice_new (HbInspector *self, const Field *field)
{
  g_autoptr (GStrvBuilder) texts = g_strv_builder_new ();
  g_auto (GStrv) strings = NULL;
  GtkWidget *choice;

  for (int i = 0; field->choices[i]; i++)
    g_strv_builder_add (texts, _ (field->choices[i]));
  strings = g_strv_builder_end (texts);
  choice = gtk_drop_down_new_from_strings ((const char *const *) strings);
  g_signal_connect_swapped (choice, "notify::selected", G_CALLBACK (chosen_cb), self);
  return choice;
}

static GtkWidget *
control_new (HbInspector *self, const Field *field)
{
  GtkWidget *control;

  if (field->kind == FIELD_KIND_CHOICE)
    control = choice_new (self, field);
  else if (field->kind == FIELD_KIND_BLOCK)
    {
      control = gtk_drop_down_new (NULL, NULL);
      g_signal_connect_swapped (control, "notify::selected", G_CALLBACK (block_chosen_cb), self);
    }
  else if (field->kind == FIELD_KIND_YES)
    {
      control = gtk_check_button_new_with_label (_ (field->label));
      g_signal_connect_swapped (control, "toggled", G_CALLBACK (toggled_cb), self);
    }
  else
    control = entry_new (self);
  g_object_set_data (G_OBJECT (control), "field", (gpointer) field);
  gtk_accessible_update_property (GTK_ACCESSIBLE (control), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ (field->label), -1);
  gtk_widget_set_hexpand (control, TRUE);
  return control;
}

static GtkWidget *
field_label_new (const char *text)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_ellipsize (GTK_LABEL (label), PANGO_ELLIPSIZE_END);
  gtk_widget_add_css_class (label, "field");
  return label;
}

/* A label over its control; a check has its own. */
static GtkWidget *
cell_new (HbInspector *self, const Field *field)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  GtkWidget *control = control_new (self, field);

  if (field->kind != FIELD_KIND_YES)
    gtk_box_append (GTK_BOX (box), field_label_new (_ (field->label)));
  else
    gtk_widget_set_valign (box, GTK_ALIGN_END);
  gtk_box_append (GTK_BOX (box), control);
  g_ptr_array_add (self->controls, control);
  return box;
}

/* Rules have long names: each over its choice, with the number that the name leaves open beside. */
static void
attach_rules (HbInspector *self, GtkGrid *grid)
{
  GtkWidget *caution
      = gtk_label_new (_ ("Lintels and laps carry load: the local code and a licensed engineer "
                          "decide."));
  guint n;
  const Field *list = hb_fields_list (&n);
  int row = 0;

  gtk_label_set_xalign (GTK_LABEL (caution), 0);
  gtk_label_set_wrap (GTK_LABEL (caution), TRUE);
  gtk_label_set_max_width_chars (GTK_LABEL (caution), 24);
  gtk_widget_add_css_class (caution, "field");
  for (guint i = 0; i < n; i++)
    if (list[i].about == ABOUT_RULES)
      {
        const gboolean is_choice = list[i].kind == FIELD_KIND_CHOICE;
        GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
        GtkWidget *control = control_new (self, &list[i]);

        if (is_choice)
          gtk_grid_attach (grid, field_label_new (_ (list[i].label)), 0, row++, 2, 1);
        else
          gtk_widget_set_tooltip_text (control, _ (list[i].label));
        gtk_box_append (GTK_BOX (box), control);
        g_ptr_array_add (self->controls, control);
        gtk_grid_attach (grid, box, is_choice ? 0 : 1, is_choice ? row++ : row - 1, 1, 1);
      }
  gtk_grid_attach (grid, caution, 0, row, 2, 1);
}

static void
add_section (HbInspector *self, FieldAbout about)
{
  GtkWidget *heading = gtk_label_new (_ (hb_field_about_text (about)));
  GtkWidget *grid = gtk_grid_new ();
  guint n, cell = 0;
  const Field *list = hb_fields_list (&n);

  gtk_label_set_xalign (GTK_LABEL (heading), 0);
  gtk_widget_add_css_class (heading, "group");
  gtk_grid_set_column_homogeneous (GTK_GRID (grid), TRUE);
  gtk_grid_set_column_spacing (GTK_GRID (grid), 8);
  gtk_grid_set_row_spacing (GTK_GRID (grid), 4);
  if (about == ABOUT_RULES)
    attach_rules (self, GTK_GRID (grid));
  for (guint i = 0; i < n; i++)
    if (list[i].about == about && about != ABOUT_RULES)
      {
        const int width = list[i].kind == FIELD_KIND_BLOCK ? 2 : 1;

        gtk_grid_attach (GTK_GRID (grid), cell_new (self, &list[i]), (int) (cell % 2),
                         (int) (cell / 2), width, 1);
        cell += (guint) width;
      }
  gtk_box_append (GTK_BOX (self->sections), heading);
  gtk_box_append (GTK_BOX (self->sections), grid);
  self->headings[about] = heading;
  self->grids[about] = grid;
}

void
hb_inspector_set_document (HbInspector *self, HbDocument *document)
{
  g_return_if_fail (HB_IS_INSPECTOR (self) && !self->document);
  self->document = g_object_ref (document);
  g_signal_connect_object (document, "changed", G_CALLBACK (fill), self, G_CONNECT_SWAPPED);
  fill (self);
}

static void
child_refused_cb (HbInspector *self, const char *reason)
{
  g_signal_emit_by_name (self, "refused", reason);
}

/* What is typed and not yet set belongs to what was shown, not to what comes. */
static void
finish_typing (HbInspector *self)
{
  for (guint i = 0; i < self->controls->len; i++)
    {
      GtkWidget *control = g_ptr_array_index (self->controls, i);

      if (GTK_IS_ENTRY (control) && has_focus_within (control))
        entry_done (self, control);
    }
  hb_joint_box_finish (HB_JOINT_BOX (self->joint_box));
}

void
hb_inspector_show (HbInspector *self, WallId wall, OpeningId opening)
{
  g_return_if_fail (HB_IS_INSPECTOR (self));
  if (wall.n == self->wall.n && opening.n == self->opening.n)
    return;
  finish_typing (self);
  self->wall = wall;
  self->opening = opening;
  for (guint i = 0; i < self->controls->len; i++)
    gtk_widget_remove_css_class (g_ptr_array_index (self->controls, i), "error");
  if (self->document)
    fill (self);
}

void
hb_inspector_show_joint (HbInspector *self, guint joint)
{
  g_return_if_fail (HB_IS_INSPECTOR (self));
  if (joint == self->joint)
    return;
  finish_typing (self);
  self->joint = joint;
  if (self->document)
    fill (self);
}

void
hb_inspector_show_meeting (HbInspector *self, WallId first, WallId second)
{
  g_return_if_fail (HB_IS_INSPECTOR (self));
  if (first.n == self->met[0].n && second.n == self->met[1].n)
    return;
  finish_typing (self);
  self->met[0] = first;
  self->met[1] = second;
  if (self->document)
    fill (self);
}

void
hb_inspector_explain (HbInspector *self, const char *is, const char *text)
{
  g_return_if_fail (HB_IS_INSPECTOR (self));
  gtk_widget_set_visible (self->piece, is != NULL);
  if (is && g_strcmp0 (gtk_label_get_text (self->piece_is), is) != 0)
    {
      gtk_label_set_text (self->piece_is, is);
      /* Of another piece the first words are to be read first. */
      gtk_adjustment_set_value (
          gtk_scrolled_window_get_vadjustment (GTK_SCROLLED_WINDOW (self->piece)), 0);
    }
  if (is && g_strcmp0 (gtk_label_get_text (self->piece_text), text) != 0)
    gtk_label_set_text (self->piece_text, text);
}

static void
hb_inspector_dispose (GObject *object)
{
  HbInspector *self = HB_INSPECTOR (object);

  /* Entries that lose the focus while they go are not listened to. */
  self->wall = (WallId){ 0 };
  if (self->document)
    gtk_widget_dispose_template (GTK_WIDGET (self), HB_TYPE_INSPECTOR);
  g_clear_object (&self->document);
  g_clear_pointer (&self->controls, g_ptr_array_unref);
  G_OBJECT_CLASS (hb_inspector_parent_class)->dispose (object);
}

static void
hb_inspector_class_init (HbInspectorClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = hb_inspector_dispose;
  g_signal_new ("refused", HB_TYPE_INSPECTOR, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE,
                1, G_TYPE_STRING);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/halfbond/ui/inspector.ui");
  gtk_widget_class_bind_template_child (widget_class, HbInspector, box);
  gtk_widget_class_bind_template_child (widget_class, HbInspector, title);
  gtk_widget_class_bind_template_child (widget_class, HbInspector, sections);
  gtk_widget_class_bind_template_child (widget_class, HbInspector, empty);
  gtk_widget_class_bind_template_child (widget_class, HbInspector, piece);
  gtk_widget_class_bind_template_child (widget_class, HbInspector, piece_is);
  gtk_widget_class_bind_template_child (widget_class, HbInspector, piece_text);
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
}

static void
hb_inspector_init (HbInspector *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  self->controls = g_ptr_array_new ();
  self->meeting = hb_meeting_box_new ();
  gtk_box_append (GTK_BOX (self->sections), self->meeting);
  self->joint_box = hb_joint_box_new ();
  gtk_box_append (GTK_BOX (self->sections), self->joint_box);
  for (int i = 0; i < N_ABOUTS; i++)
    {
      add_section (self, (FieldAbout) i);
      if (i == ABOUT_WALL)
        {
          self->room = hb_room_box_new ();
          gtk_box_append (GTK_BOX (self->sections), self->room);
          self->pins = hb_pins_list_new ();
          gtk_box_append (GTK_BOX (self->sections), self->pins);
        }
      if (i == ABOUT_LAYING)
        {
          self->top = hb_top_box_new ();
          gtk_box_append (GTK_BOX (self->sections), self->top);
        }
    }
  g_signal_connect_swapped (self->pins, "refused", G_CALLBACK (child_refused_cb), self);
  g_signal_connect_swapped (self->joint_box, "refused", G_CALLBACK (child_refused_cb), self);
  g_signal_connect_swapped (self->top, "refused", G_CALLBACK (child_refused_cb), self);
  g_signal_connect_swapped (self->room, "refused", G_CALLBACK (child_refused_cb), self);
  g_signal_connect_swapped (self->meeting, "refused", G_CALLBACK (child_refused_cb), self);
}
