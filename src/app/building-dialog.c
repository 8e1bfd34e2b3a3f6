#include "app/building-dialog.h"

#include <glib/gi18n.h>

#include "app/tool-building.h"
#include "paint/ink.h"
#include "paint/plan.h"

#define SKETCH_WIDTH 440 /* px */
#define SKETCH_HEIGHT 260

typedef struct
{
  GtkWindow *window;
  HbDocument *document; /* owned */
  HbBuildingMade made;
  gpointer data;

  GtkWidget *sides, *height, *block, *sketch, *sentence, *make;

  Ink *ink;
  GArray *outline; /* OutlineSide, as far as it is understood; owned */
} Dialog;

static void
dialog_free (gpointer data)
{
  Dialog *dialog = data;

  g_object_unref (dialog->document);
  ink_free (dialog->ink);
  g_array_unref (dialog->outline);
  g_free (dialog);
}

/* ---- what is typed ---- */

static const Block *
chosen_block (const Dialog *dialog)
{
  const Project *project = hb_document_get_project (dialog->document);
  const guint chosen = gtk_drop_down_get_selected (GTK_DROP_DOWN (dialog->block));

  return project_block_at (project, MIN (chosen, project->blocks->len - 1));
}

static const char *
typed (GtkWidget *entry)
{
  return gtk_editable_get_text (GTK_EDITABLE (entry));
}

/* What is wrong as a sentence, "" when nothing was typed yet; NULL: nothing, and the edit. */
static char *
read_edit (Dialog *dialog, Edit **edit, WallId *first)
{
  const Project *project = hb_document_get_project (dialog->document);
  g_autoptr (GError) error = NULL;
  char *fault = NULL;
  g_autoptr (GArray) sides = outline_parse (typed (dialog->sides), &fault);
  Length height;

  *edit = NULL;
  if (!sides)
    return fault;
  g_array_unref (dialog->outline);
  dialog->outline = g_array_ref (sides);
  if (!sides->len)
    return g_strdup ("");
  fault = outline_fault (sides);
  if (fault)
    return fault;
  if (!length_parse_typed (typed (dialog->height), &height))
    return g_strdup (_ ("Type the height as a length: 2500, 2.5 m, 250 cm."));
  *edit = tool_building (project, sides, chosen_block (dialog), height, first, &error);
  return *edit ? NULL : g_strdup (error->message);
}

static void
show_read (Dialog *dialog)
{
  g_autoptr (Edit) edit = NULL;
  WallId first;
  g_autofree char *fault = read_edit (dialog, &edit, &first);
  g_autofree char *text = fault ? NULL : tool_outline_text (dialog->outline);
  const gboolean bad = fault && *fault;

  gtk_label_set_text (GTK_LABEL (dialog->sentence), fault ? fault : text);
  if (bad)
    gtk_widget_add_css_class (dialog->sentence, "bad");
  else
    gtk_widget_remove_css_class (dialog->sentence, "bad");
  gtk_widget_set_sensitive (dialog->make, edit != NULL);
  gtk_widget_queue_draw (dialog->sketch);
}

/* Controls that go tell of it, too. */
static void
changed_cb (Dialog *dialog)
{
  if (!gtk_widget_in_destruction (GTK_WIDGET (dialog->window)))
    show_read (dialog);
}

static void
make_cb (Dialog *dialog)
{
  g_autoptr (Edit) edit = NULL;
  g_autoptr (GError) error = NULL;
  WallId first;
  g_autofree char *fault = read_edit (dialog, &edit, &first);

  /* Enter in the line: what is wrong is there to be read. */
  if (fault || !edit)
    return;
  if (!hb_document_apply (dialog->document, edit, _ ("New building"), &error))
    {
      gtk_label_set_text (GTK_LABEL (dialog->sentence), error->message);
      return;
    }
  {
    const HbBuildingMade made = dialog->made;
    const gpointer data = dialog->data;

    gtk_window_destroy (dialog->window);
    made (first, data);
  }
}

/* ---- the sketch ---- */

static Theme
theme_of (GtkWidget *widget)
{
  gboolean dark = FALSE;

  g_object_get (gtk_widget_get_settings (widget), "gtk-application-prefer-dark-theme", &dark, NULL);
  return dark ? THEME_DARK : THEME_LIGHT;
}

static void
draw_cb (GtkDrawingArea *area, cairo_t *cr, int width, int height, gpointer data)
{
  Dialog *dialog = data;
  const Theme theme = theme_of (GTK_WIDGET (area));
  const Rgba paper = theme_row (theme, STYLE_PAPER)->fill;
  g_autoptr (Drawing) drawing = plan_sketch (dialog->outline);
  const View view = plan_sketch_fit (dialog->outline, width, height);

  cairo_set_source_rgb (cr, paper.r, paper.g, paper.b);
  cairo_paint (cr);
  ink_draw (dialog->ink, cr, drawing, &view, theme, -1, -1, TRUE);
}

/* ---- the window ---- */

static GtkWidget *
label_new (const char *text, const char *style)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_max_width_chars (GTK_LABEL (label), 56);
  gtk_widget_add_css_class (label, style);
  return label;
}

static void
name_control (GtkWidget *control, const char *name)
{
  gtk_accessible_update_property (GTK_ACCESSIBLE (control), GTK_ACCESSIBLE_PROPERTY_LABEL, name,
                                  -1);
}

static GtkWidget *
entry_new (Dialog *dialog, const char *name, const char *text)
{
  GtkWidget *entry = gtk_entry_new ();

  gtk_editable_set_text (GTK_EDITABLE (entry), text);
  name_control (entry, name);
  g_signal_connect_swapped (entry, "changed", G_CALLBACK (changed_cb), dialog);
  g_signal_connect_swapped (entry, "activate", G_CALLBACK (make_cb), dialog);
  return entry;
}

static GtkWidget *
blocks_new (Dialog *dialog)
{
  const Project *project = hb_document_get_project (dialog->document);
  GtkStringList *list = gtk_string_list_new (NULL);
  GtkWidget *choice = gtk_drop_down_new (G_LIST_MODEL (list), NULL);

  for (guint i = 0; i < project->blocks->len; i++)
    {
      const Block *block = project_block_at (project, i);
      char thickness[LENGTH_TEXT_SIZE];
      g_autofree char *text
          = g_strdup_printf (_ ("%s, %s mm thick"), *block->name ? block->name : block->key,
                             length_text (block->thickness, thickness));

      gtk_string_list_append (list, text);
    }
  gtk_drop_down_set_selected (GTK_DROP_DOWN (choice), 0);
  name_control (choice, _ ("Block"));
  g_signal_connect_swapped (choice, "notify::selected", G_CALLBACK (changed_cb), dialog);
  return choice;
}

static void
attach (GtkGrid *grid, const char *label, GtkWidget *control, int column, int width)
{
  gtk_widget_set_hexpand (control, TRUE);
  gtk_grid_attach (grid, label_new (label, "field"), column, 0, width, 1);
  gtk_grid_attach (grid, control, column, 1, width, 1);
}

static GtkWidget *
buttons_new (Dialog *dialog)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);
  GtkWidget *cancel = gtk_button_new_with_mnemonic (_ ("_Cancel"));

  dialog->make = gtk_button_new_with_mnemonic (_ ("_Make the building"));
  gtk_widget_add_css_class (dialog->make, "suggested-action");
  gtk_widget_set_halign (box, GTK_ALIGN_END);
  g_signal_connect_swapped (cancel, "clicked", G_CALLBACK (gtk_window_destroy), dialog->window);
  g_signal_connect_swapped (dialog->make, "clicked", G_CALLBACK (make_cb), dialog);
  gtk_box_append (GTK_BOX (box), cancel);
  gtk_box_append (GTK_BOX (box), dialog->make);
  return box;
}

static void
fill_window (Dialog *dialog)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 8);
  GtkWidget *grid = gtk_grid_new ();

  dialog->sketch = gtk_drawing_area_new ();
  dialog->sentence = label_new ("", "told");
  gtk_accessible_update_property (GTK_ACCESSIBLE (dialog->sketch), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("The outline"), -1);
  gtk_drawing_area_set_content_width (GTK_DRAWING_AREA (dialog->sketch), SKETCH_WIDTH);
  gtk_drawing_area_set_content_height (GTK_DRAWING_AREA (dialog->sketch), SKETCH_HEIGHT);
  gtk_drawing_area_set_draw_func (GTK_DRAWING_AREA (dialog->sketch), draw_cb, dialog, NULL);
  gtk_widget_add_css_class (dialog->sketch, "sketch");
  gtk_label_set_width_chars (GTK_LABEL (dialog->sentence), 56);
  gtk_label_set_lines (GTK_LABEL (dialog->sentence), 2);
  gtk_widget_set_size_request (dialog->sentence, -1, 40);
  gtk_label_set_yalign (GTK_LABEL (dialog->sentence), 0);

  gtk_grid_set_column_spacing (GTK_GRID (grid), 12);
  gtk_box_append (GTK_BOX (box), label_new (_ ("New building"), "heading"));
  gtk_box_append (GTK_BOX (box), label_new (_ ("Outer dimensions, mm"), "field"));
  gtk_box_append (GTK_BOX (box), dialog->sides);
  gtk_box_append (
      GTK_BOX (box),
      label_new (
          _ ("8000 x 6000 is a rectangle. Any other shape: side after side against the clock, "
             "R before a turn to the right: 9000 4000 3000 R 3000 6000 7000."),
          "field"));
  gtk_box_append (GTK_BOX (box), dialog->sketch);
  gtk_box_append (GTK_BOX (box), dialog->sentence);
  attach (GTK_GRID (grid), _ ("Block"), dialog->block, 0, 2);
  attach (GTK_GRID (grid), _ ("Height of the walls, mm"), dialog->height, 2, 1);
  gtk_box_append (GTK_BOX (box), grid);
  gtk_widget_set_margin_top (grid, 4);
  gtk_box_append (GTK_BOX (box), buttons_new (dialog));
  gtk_widget_set_margin_top (gtk_widget_get_last_child (box), 12);
  gtk_window_set_child (dialog->window, box);
}

static gboolean
escape_cb (GtkWidget *window, GVariant *arguments, gpointer data)
{
  (void) arguments;
  (void) data;
  gtk_window_destroy (GTK_WINDOW (window));
  return TRUE;
}

static void
add_escape (GtkWidget *window)
{
  GtkEventController *shortcuts = gtk_shortcut_controller_new ();

  gtk_shortcut_controller_add_shortcut (
      GTK_SHORTCUT_CONTROLLER (shortcuts),
      gtk_shortcut_new (gtk_keyval_trigger_new (GDK_KEY_Escape, 0),
                        gtk_callback_action_new (escape_cb, NULL, NULL)));
  gtk_widget_add_controller (window, shortcuts);
}

void
hb_building_ask (GtkWindow *parent, HbDocument *document, HbBuildingMade made, gpointer data)
{
  Dialog *dialog = g_new0 (Dialog, 1);

  dialog->window = GTK_WINDOW (gtk_window_new ());
  dialog->document = g_object_ref (document);
  dialog->made = made;
  dialog->data = data;
  dialog->ink = ink_new (NULL);
  dialog->outline = g_array_new (FALSE, FALSE, sizeof (OutlineSide));
  g_object_set_data_full (G_OBJECT (dialog->window), "dialog", dialog, dialog_free);
  gtk_window_set_transient_for (dialog->window, parent);
  gtk_window_set_modal (dialog->window, TRUE);
  gtk_window_set_destroy_with_parent (dialog->window, TRUE);
  gtk_window_set_resizable (dialog->window, FALSE);
  gtk_window_set_title (dialog->window, _ ("New building"));
  gtk_widget_add_css_class (GTK_WIDGET (dialog->window), "halfbond");
  gtk_widget_add_css_class (GTK_WIDGET (dialog->window), "question");
  dialog->sides = entry_new (dialog, _ ("Outer dimensions"), "");
  gtk_entry_set_placeholder_text (GTK_ENTRY (dialog->sides), "8000 x 6000");
  dialog->height = entry_new (dialog, _ ("Height of the walls"), "2500");
  dialog->block = blocks_new (dialog);
  fill_window (dialog);
  add_escape (GTK_WIDGET (dialog->window));
  changed_cb (dialog);
  gtk_window_set_focus (dialog->window, dialog->sides);
  gtk_window_present (dialog->window);
}
