#include "app/walls-pane.h"

#include <glib/gi18n.h>

#include "app/built-cells.h"
#include "app/picture.h"
#include "app/tool.h"
#include "model/built-edit.h"

struct _HbWallsPane
{
  GtkWidget parent;

  /* Template widgets */
  GtkWidget *box;
  GtkListBox *list;
  GtkWidget *empty;
  GMenuModel *row_menu;

  /* Owned references */
  HbDocument *document;
  HbAnswers *answers;

  WallId wall;
  gboolean filling; /* the list is brought up to date: nobody chose anything */
};

G_DEFINE_FINAL_TYPE (HbWallsPane, hb_walls_pane, GTK_TYPE_WIDGET)

/* What a row shows; kept on the row. */
typedef struct
{
  WallId wall;
  GtkWidget *picture, *line, *name, *progress, *about;
  GtkWidget *menu; /* in the line, of the chosen row alone; else NULL */
  /* What it was filled from; owned. Values are never changed, so their addresses tell. */
  Wall *shown;
  Layout *layout, *latest; /* the present one, and the newest; NULL: none */
} Row;

static void
row_free (gpointer data)
{
  Row *row = data;

  wall_unref (row->shown);
  layout_unref (row->layout);
  layout_unref (row->latest);
  g_free (row);
}

static Row *
row_of (GtkListBoxRow *row)
{
  return g_object_get_data (G_OBJECT (row), "row");
}

static const Project *
project_of (HbWallsPane *self)
{
  return hb_document_get_project (self->document);
}

/* ---- edits ---- */

static gboolean
apply (HbWallsPane *self, Edit *edit, const char *label)
{
  g_autoptr (Edit) owned = edit;
  g_autoptr (GError) error = NULL;

  if (hb_document_apply (self->document, owned, label, &error))
    return TRUE;
  g_signal_emit_by_name (self, "refused", error->message);
  return FALSE;
}

static int
index_of (HbWallsPane *self, WallId wall)
{
  const Project *project = project_of (self);

  for (guint i = 0; i < project->walls->len; i++)
    if (project_wall_at (project, i)->id.n == wall.n)
      return (int) i;
  return -1;
}

static void
move_to (HbWallsPane *self, WallId wall, int index)
{
  const Wall *moved = project_wall (project_of (self), wall);
  g_autofree char *label = NULL;

  if (!moved || index < 0 || index >= (int) project_of (self)->walls->len)
    return;
  label = g_strdup_printf (_ ("Move %s in the list"), tool_wall_name (moved));
  apply (self, edit_move_wall (wall, index), label);
}

static void
move_by (HbWallsPane *self, int by)
{
  move_to (self, self->wall, index_of (self, self->wall) + by);
}

static void
up_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  (void) name;
  (void) parameter;
  move_by (HB_WALLS_PANE (widget), -1);
}

static void
down_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  (void) name;
  (void) parameter;
  move_by (HB_WALLS_PANE (widget), 1);
}

static void
remove_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  HbWallsPane *self = HB_WALLS_PANE (widget);
  const Wall *wall = project_wall (project_of (self), self->wall);
  g_autofree char *label = NULL;

  (void) name;
  (void) parameter;
  if (!wall)
    return;
  label = g_strdup_printf (_ ("Remove %s"), tool_wall_name (wall));
  apply (self, edit_remove_wall (self->wall), label);
}

/* A copy beside it, with keys and ids of its own; nothing of it stands. */
static void
copy_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  HbWallsPane *self = HB_WALLS_PANE (widget);
  const Wall *wall = project_wall (project_of (self), self->wall);
  g_autofree char *label = NULL;
  g_autoptr (Wall) copy = NULL;

  (void) name;
  (void) parameter;
  if (!wall)
    return;
  copy = built_as_planned (wall);
  copy->id = (WallId){ 0 };
  g_clear_pointer (&copy->key, g_free);
  built_take_all (copy);
  g_free (copy->name);
  copy->name = g_strdup_printf (_ ("%s, copy"), tool_wall_name (wall));
  for (guint i = 0; i < copy->openings->len; i++)
    {
      Opening *opening = &g_array_index (copy->openings, Opening, i);

      opening->id = (OpeningId){ 0 };
      g_clear_pointer (&opening->key, g_free);
    }
  label = g_strdup_printf (_ ("Copy %s"), tool_wall_name (wall));
  apply (self, edit_add_wall (copy), label);
}

/* ---- renaming ---- */

static void
rename_cb (GtkEntry *entry, HbWallsPane *self)
{
  const Wall *wall = project_wall (project_of (self), self->wall);
  GtkWidget *popover = gtk_widget_get_ancestor (GTK_WIDGET (entry), GTK_TYPE_POPOVER);
  g_autoptr (Wall) renamed = wall ? wall_copy (wall) : NULL;

  if (renamed)
    {
      g_free (renamed->name);
      renamed->name = g_strdup (gtk_editable_get_text (GTK_EDITABLE (entry)));
    }
  gtk_popover_popdown (GTK_POPOVER (popover));
  if (renamed)
    apply (self, edit_set_wall (renamed), _ ("Rename a wall"));
}

static void
rename_row (HbWallsPane *self, GtkListBoxRow *row)
{
  const Wall *wall = project_wall (project_of (self), row_of (row)->wall);
  GtkWidget *popover = gtk_popover_new ();
  GtkWidget *entry = gtk_entry_new ();

  if (wall)
    gtk_editable_set_text (GTK_EDITABLE (entry), wall->name);
  gtk_accessible_update_property (GTK_ACCESSIBLE (entry), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Name of the wall"), -1);
  gtk_popover_set_child (GTK_POPOVER (popover), entry);
  gtk_popover_set_position (GTK_POPOVER (popover), GTK_POS_RIGHT);
  gtk_widget_set_parent (popover, row_of (row)->name);
  g_signal_connect (popover, "closed", G_CALLBACK (gtk_widget_unparent), NULL);
  g_signal_connect (entry, "activate", G_CALLBACK (rename_cb), self);
  gtk_popover_popup (GTK_POPOVER (popover));
  gtk_widget_grab_focus (entry);
}

static void
rename_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  GtkListBoxRow *row = gtk_list_box_get_selected_row (HB_WALLS_PANE (widget)->list);

  (void) name;
  (void) parameter;
  if (row)
    rename_row (HB_WALLS_PANE (widget), row);
}

/* ---- dragging a row to another place ---- */

static GdkContentProvider *
prepare_cb (GtkListBoxRow *row)
{
  return gdk_content_provider_new_typed (G_TYPE_UINT, row_of (row)->wall.n);
}

typedef struct
{
  HbWallsPane *self; /* owned */
  WallId wall, before;
} Drop;

static gboolean
move_dropped (gpointer data)
{
  const Drop *drop = data;

  if (drop->self->document)
    move_to (drop->self, drop->wall, index_of (drop->self, drop->before));
  return G_SOURCE_REMOVE;
}

static void
drop_free (gpointer data)
{
  Drop *drop = data;

  g_object_unref (drop->self);
  g_free (drop);
}

/* Moved only once GTK is done with the drop: the rows are made anew by it. */
static gboolean
drop_cb (GtkDropTarget *target, const GValue *value, double x, double y, HbWallsPane *self)
{
  GtkListBoxRow *row
      = GTK_LIST_BOX_ROW (gtk_event_controller_get_widget (GTK_EVENT_CONTROLLER (target)));
  Drop *drop = g_new (Drop, 1);

  (void) x;
  (void) y;
  *drop = (Drop){ g_object_ref (self), { g_value_get_uint (value) }, row_of (row)->wall };
  g_idle_add_full (G_PRIORITY_DEFAULT_IDLE, move_dropped, drop, drop_free);
  return TRUE;
}

static void
add_dragging (HbWallsPane *self, GtkWidget *row)
{
  GtkDragSource *source = gtk_drag_source_new ();
  GtkDropTarget *target = gtk_drop_target_new (G_TYPE_UINT, GDK_ACTION_MOVE);

  gtk_drag_source_set_actions (source, GDK_ACTION_MOVE);
  g_signal_connect_swapped (source, "prepare", G_CALLBACK (prepare_cb), row);
  gtk_widget_add_controller (row, GTK_EVENT_CONTROLLER (source));
  g_signal_connect (target, "drop", G_CALLBACK (drop_cb), self);
  gtk_widget_add_controller (row, GTK_EVENT_CONTROLLER (target));
}

/* ---- rows ---- */

static GtkWidget *
label_new (const char *style)
{
  GtkWidget *label = gtk_label_new (NULL);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_ellipsize (GTK_LABEL (label), PANGO_ELLIPSIZE_END);
  gtk_widget_set_hexpand (label, TRUE);
  gtk_widget_add_css_class (label, style);
  return label;
}

static GtkWidget *
menu_button_new (HbWallsPane *self)
{
  GtkWidget *button = gtk_menu_button_new ();

  gtk_menu_button_set_icon_name (GTK_MENU_BUTTON (button), "view-more-symbolic");
  gtk_menu_button_set_menu_model (GTK_MENU_BUTTON (button), self->row_menu);
  gtk_menu_button_set_has_frame (GTK_MENU_BUTTON (button), FALSE);
  gtk_widget_set_tooltip_text (button, _ ("What can be done with this wall"));
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("What can be done with this wall"), -1);
  gtk_widget_add_css_class (button, "row-menu");
  gtk_widget_set_valign (button, GTK_ALIGN_START);
  return button;
}

static GtkWidget *
row_new (HbWallsPane *self, WallId wall)
{
  GtkWidget *row = gtk_list_box_row_new ();
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 2);
  GtkWidget *line = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 2);
  Row *data = g_new0 (Row, 1);

  data->wall = wall;
  data->picture = hb_picture_new ();
  data->name = label_new ("wall-name");
  data->progress = label_new ("wall-about");
  data->about = label_new ("wall-about");
  data->line = line;
  gtk_box_append (GTK_BOX (line), data->name);
  gtk_box_append (GTK_BOX (box), data->picture);
  gtk_box_append (GTK_BOX (box), line);
  gtk_box_append (GTK_BOX (box), data->about);
  gtk_box_append (GTK_BOX (box), data->progress);
  gtk_list_box_row_set_child (GTK_LIST_BOX_ROW (row), box);
  g_object_set_data_full (G_OBJECT (row), "row", data, row_free);
  add_dragging (self, row);
  return row;
}

/* "8.40 m · 46 cuts" */
static char *
about_text (const Wall *wall, const Layout *layout)
{
  const double metres = length_to_mm (wall->length) / 1000.0;
  gint32 cuts;

  if (!layout)
    return g_strdup_printf (_ ("%.2f m"), metres);
  cuts = layout->proof.cuts;
  return g_strdup_printf (g_dngettext (NULL, "%.2f m · %d cut", "%.2f m · %d cuts", (gulong) cuts),
                          metres, cuts);
}

/* How far it is laid, as "3/12 laid" or in a sentence; "" where nothing stands. Newly allocated. */
static char *
progress_text (const Wall *wall, const Layout *layout, gboolean words)
{
  const gint32 standing = wall_standing (wall);

  if (!layout || standing == 0)
    return g_strdup ("");
  return g_strdup_printf (words ? _ ("%d of %u courses stand") : _ ("%d/%u laid"), standing,
                          MAX (layout->courses->len, (guint) standing));
}

/* FALSE when the row shows these already: of a thousand walls a hand changes one. */
static gboolean
take_values (HbWallsPane *self, Row *data, const Wall *wall)
{
  const Layout *layout = hb_answers_get_layout (self->answers, wall->id);
  const Layout *latest = hb_answers_get_latest (self->answers, wall->id);

  if (data->shown == wall && data->layout == layout && data->latest == latest)
    return FALSE;
  wall_unref (data->shown);
  layout_unref (data->layout);
  layout_unref (data->latest);
  data->shown = wall_ref (wall);
  data->layout = layout ? layout_ref (layout) : NULL;
  data->latest = latest ? layout_ref (latest) : NULL;
  return TRUE;
}

static void
fill_row (HbWallsPane *self, GtkListBoxRow *row, const Wall *wall)
{
  Row *data = row_of (row);
  g_autofree char *about = NULL, *progress = NULL, *stands = NULL, *name = NULL;

  if (!take_values (self, data, wall))
    return;
  about = about_text (wall, data->latest);
  progress = progress_text (wall, data->latest, FALSE);
  stands = progress_text (wall, data->latest, TRUE);
  hb_picture_set_wall (HB_PICTURE (data->picture), project_of (self), wall, data->layout);
  gtk_label_set_text (GTK_LABEL (data->name), tool_wall_name (wall));
  gtk_label_set_text (GTK_LABEL (data->about), about);
  gtk_label_set_text (GTK_LABEL (data->progress), progress);
  gtk_widget_set_visible (data->progress, *progress != '\0');
  gtk_widget_set_tooltip_text (data->progress, stands);
  name = g_strdup_printf ("%s, %s%s%s", tool_wall_name (wall), about, *stands ? ", " : "", stands);
  gtk_accessible_update_property (GTK_ACCESSIBLE (row), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
}

/* Whether the rows are those of the walls, in order. */
static gboolean
rows_fit (HbWallsPane *self, const Project *project)
{
  guint i = 0;
  GtkListBoxRow *row;

  while ((row = gtk_list_box_get_row_at_index (self->list, (int) i)))
    {
      if (i >= project->walls->len || row_of (row)->wall.n != project_wall_at (project, i)->id.n)
        return FALSE;
      i++;
    }
  return i == project->walls->len;
}

static void
make_rows (HbWallsPane *self, const Project *project)
{
  GtkListBoxRow *row;

  while ((row = gtk_list_box_get_row_at_index (self->list, 0)))
    gtk_list_box_remove (self->list, GTK_WIDGET (row));
  for (guint i = 0; i < project->walls->len; i++)
    gtk_list_box_append (self->list, row_new (self, project_wall_at (project, i)->id));
}

/* Only the chosen row has its menu, for that is the wall it is about; a thousand menus would take
 * seconds. */
static void
show_menu (HbWallsPane *self)
{
  GtkListBoxRow *row;

  for (int i = 0; (row = gtk_list_box_get_row_at_index (self->list, i)); i++)
    {
      Row *data = row_of (row);
      const gboolean chosen = data->wall.n == self->wall.n;

      if (chosen && !data->menu)
        {
          data->menu = menu_button_new (self);
          gtk_box_append (GTK_BOX (data->line), data->menu);
        }
      else if (!chosen && data->menu)
        gtk_box_remove (GTK_BOX (data->line), g_steal_pointer (&data->menu));
    }
}

static void
select_row (HbWallsPane *self)
{
  const int index = self->wall.n ? index_of (self, self->wall) : -1;
  GtkListBoxRow *row = index < 0 ? NULL : gtk_list_box_get_row_at_index (self->list, index);

  gtk_list_box_select_row (self->list, row);
  show_menu (self);
}

static void
fill (HbWallsPane *self)
{
  const Project *project = project_of (self);

  self->filling = TRUE;
  if (!rows_fit (self, project))
    make_rows (self, project);
  for (guint i = 0; i < project->walls->len; i++)
    fill_row (self, gtk_list_box_get_row_at_index (self->list, (int) i),
              project_wall_at (project, i));
  select_row (self);
  gtk_widget_set_visible (self->empty, project->walls->len == 0);
  self->filling = FALSE;
}

static void
laid_cb (HbWallsPane *self, guint id)
{
  const Wall *wall = project_wall (project_of (self), (WallId){ id });
  GtkListBoxRow *row
      = wall ? gtk_list_box_get_row_at_index (self->list, index_of (self, wall->id)) : NULL;

  if (row && row_of (row)->wall.n == id)
    fill_row (self, row, wall);
}

static void
selected_cb (HbWallsPane *self, GtkListBoxRow *row)
{
  if (self->filling || !row)
    return;
  self->wall = row_of (row)->wall;
  show_menu (self);
  g_signal_emit_by_name (self, "chosen", self->wall.n);
}

void
hb_walls_pane_set_document (HbWallsPane *self, HbDocument *document, HbAnswers *answers)
{
  g_return_if_fail (HB_IS_WALLS_PANE (self) && !self->document);
  self->document = g_object_ref (document);
  self->answers = g_object_ref (answers);
  g_signal_connect_object (document, "changed", G_CALLBACK (fill), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (answers, "laid", G_CALLBACK (laid_cb), self, G_CONNECT_SWAPPED);
  fill (self);
}

void
hb_walls_pane_set_wall (HbWallsPane *self, WallId wall)
{
  g_return_if_fail (HB_IS_WALLS_PANE (self));
  self->wall = wall;
  self->filling = TRUE;
  select_row (self);
  self->filling = FALSE;
}

static void
hb_walls_pane_dispose (GObject *object)
{
  HbWallsPane *self = HB_WALLS_PANE (object);

  g_clear_object (&self->document);
  g_clear_object (&self->answers);
  gtk_widget_dispose_template (GTK_WIDGET (self), HB_TYPE_WALLS_PANE);
  G_OBJECT_CLASS (hb_walls_pane_parent_class)->dispose (object);
}

static void
install_actions (GtkWidgetClass *class)
{
  gtk_widget_class_install_action (class, "wall.up", NULL, up_action);
  gtk_widget_class_install_action (class, "wall.down", NULL, down_action);
  gtk_widget_class_install_action (class, "wall.remove", NULL, remove_action);
  gtk_widget_class_install_action (class, "wall.copy", NULL, copy_action);
  gtk_widget_class_install_action (class, "wall.rename", NULL, rename_action);
  gtk_widget_class_add_binding_action (class, GDK_KEY_Up, GDK_ALT_MASK, "wall.up", NULL);
  gtk_widget_class_add_binding_action (class, GDK_KEY_Down, GDK_ALT_MASK, "wall.down", NULL);
  gtk_widget_class_add_binding_action (class, GDK_KEY_Delete, 0, "wall.remove", NULL);
  gtk_widget_class_add_binding_action (class, GDK_KEY_F2, 0, "wall.rename", NULL);
}

static void
hb_walls_pane_class_init (HbWallsPaneClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = hb_walls_pane_dispose;
  g_signal_new ("chosen", HB_TYPE_WALLS_PANE, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE,
                1, G_TYPE_UINT);
  g_signal_new ("refused", HB_TYPE_WALLS_PANE, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE,
                1, G_TYPE_STRING);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/halfbond/ui/walls-pane.ui");
  gtk_widget_class_bind_template_child (widget_class, HbWallsPane, box);
  gtk_widget_class_bind_template_child (widget_class, HbWallsPane, list);
  gtk_widget_class_bind_template_child (widget_class, HbWallsPane, empty);
  gtk_widget_class_bind_template_child (widget_class, HbWallsPane, row_menu);
  gtk_widget_class_bind_template_callback (widget_class, selected_cb);
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  install_actions (widget_class);
}

static void
hb_walls_pane_init (HbWallsPane *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}
