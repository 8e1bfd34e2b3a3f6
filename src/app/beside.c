#include "app/beside.h"

static gboolean
undo_cb (GtkWidget *widget, GVariant *arguments, gpointer data)
{
  (void) widget;
  (void) arguments;
  hb_document_undo (data);
  return TRUE;
}

static gboolean
redo_cb (GtkWidget *widget, GVariant *arguments, gpointer data)
{
  (void) widget;
  (void) arguments;
  hb_document_redo (data);
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

void
hb_beside_add_keys (GtkWindow *window, HbDocument *document)
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
        gtk_shortcut_new (
            gtk_shortcut_trigger_parse_string (keys[i].trigger),
            gtk_callback_action_new (keys[i].function, g_object_ref (document), g_object_unref)));
  gtk_widget_add_controller (GTK_WIDGET (window), controller);
}

typedef struct
{
  HbDocument *document; /* owned */
  HbTakeBack take_back;
  gpointer data;
} EntryKeys;

static void
entry_keys_free (gpointer data, GClosure *closure)
{
  EntryKeys *own = data;

  (void) closure;
  g_object_unref (own->document);
  g_free (own);
}

static gboolean
entry_key_cb (GtkEventControllerKey *keys, guint key, guint code, GdkModifierType state,
              gpointer data)
{
  const EntryKeys *own = data;
  GtkWidget *entry = gtk_event_controller_get_widget (GTK_EVENT_CONTROLLER (keys));
  const gboolean z = key == GDK_KEY_z || key == GDK_KEY_Z;

  (void) code;
  if (key == GDK_KEY_Escape)
    return own->take_back && own->take_back (entry, own->data);
  if (!(state & GDK_CONTROL_MASK) || !(z || key == GDK_KEY_y))
    return GDK_EVENT_PROPAGATE;
  if (!z || (state & GDK_SHIFT_MASK))
    hb_document_redo (own->document);
  else if (!own->take_back || !own->take_back (entry, own->data))
    hb_document_undo (own->document);
  return GDK_EVENT_STOP;
}

void
hb_beside_add_entry_keys (GtkWidget *entry, HbDocument *document, HbTakeBack take_back,
                          gpointer data)
{
  GtkEventController *keys = gtk_event_controller_key_new ();
  EntryKeys *own = g_new (EntryKeys, 1);

  *own = (EntryKeys){ g_object_ref (document), take_back, data };
  gtk_editable_set_enable_undo (GTK_EDITABLE (entry), FALSE);
  gtk_event_controller_set_propagation_phase (keys, GTK_PHASE_CAPTURE);
  g_signal_connect_data (keys, "key-pressed", G_CALLBACK (entry_key_cb), own, entry_keys_free,
                         (GConnectFlags) 0);
  gtk_widget_add_controller (entry, keys);
}

GtkWidget *
hb_beside_add_label (GtkBox *box, const char *text, const char *style)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_wrap_mode (GTK_LABEL (label), PANGO_WRAP_WORD_CHAR);
  gtk_label_set_max_width_chars (GTK_LABEL (label), 36);
  if (style)
    gtk_widget_add_css_class (label, style);
  gtk_box_append (box, label);
  return label;
}

GtkWidget *
hb_beside_attach_word (GtkGrid *grid, int column, int row, const char *text, const char *style,
                       float xalign)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), xalign);
  if (style)
    gtk_widget_add_css_class (label, style);
  gtk_grid_attach (grid, label, column, row, 1, 1);
  return label;
}

void
hb_beside_empty (GtkWidget *box)
{
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (box)))
    if (GTK_IS_GRID (box))
      gtk_grid_remove (GTK_GRID (box), child);
    else
      gtk_box_remove (GTK_BOX (box), child);
}

void
hb_beside_name (GtkWidget *widget, const char *name)
{
  gtk_accessible_update_property (GTK_ACCESSIBLE (widget), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
}
