/* pins-list.c - what was set by hand in a wall, each with a button that lets it go */
#include "app/pins-list.h"

#include <glib/gi18n.h>

struct _HbPinsList
{
  GtkWidget parent;

  GtkWidget *box, *rows; /* children */

  HbDocument *document; /* owned; NULL before the first fill */
  WallId wall;
  Wall *shown; /* owned: the wall whose pins the rows show, or NULL */
};

G_DEFINE_FINAL_TYPE (HbPinsList, hb_pins_list, GTK_TYPE_WIDGET)

static const Wall *
wall_of (HbPinsList *self)
{
  return self->document && self->wall.n
             ? project_wall (hb_document_get_project (self->document), self->wall)
             : NULL;
}

/* ---- letting go ---- */

static void
apply (HbPinsList *self, const Wall *next, const char *label)
{
  g_autoptr (Edit) edit = edit_set_wall (next);
  g_autoptr (GError) error = NULL;

  if (!hb_document_apply (self->document, edit, label, &error))
    g_signal_emit_by_name (self, "refused", error->message);
}

static void
let_go (HbPinsList *self, GtkWidget *button)
{
  const Wall *wall = wall_of (self);
  const Pin *pin = g_object_get_data (G_OBJECT (button), "pin");
  g_autoptr (Wall) next = wall ? wall_copy (wall) : NULL;

  if (next && wall_take_pin (next, pin->course, pin->x))
    apply (self, next, _ ("Remove a pin"));
}

static void
let_all_go (HbPinsList *self)
{
  const Wall *wall = wall_of (self);
  g_autoptr (Wall) next = wall ? wall_copy (wall) : NULL;

  if (!next || !next->pins->len)
    return;
  g_array_set_size (next->pins, 0);
  apply (self, next, _ ("Remove all pins"));
}

/* The button is one of the rows that a changed project takes away: GTK is done with it first. */
static gboolean
let_go_idle (gpointer data)
{
  GtkWidget *ancestor = gtk_widget_get_ancestor (data, HB_TYPE_PINS_LIST);

  if (ancestor)
    let_go (HB_PINS_LIST (ancestor), data);
  return G_SOURCE_REMOVE;
}

static void
removed_cb (GtkWidget *button)
{
  g_idle_add_full (G_PRIORITY_DEFAULT_IDLE, let_go_idle, g_object_ref (button), g_object_unref);
}

/* ---- rows ---- */

static char *
dup_pin_text (const Pin *pin)
{
  char x[LENGTH_TEXT_SIZE], length[LENGTH_TEXT_SIZE];

  if (pin->length == 0)
    return g_strdup_printf (_ ("Course %d: a perpend at %s"), pin->course, length_text (pin->x, x));
  return g_strdup_printf (_ ("Course %d: %s mm from %s"), pin->course,
                          length_text (pin->length, length), length_text (pin->x, x));
}

static void
pin_free (gpointer pin)
{
  pin_clear (pin);
  g_free (pin);
}

static GtkWidget *
row_new (const Pin *pin)
{
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 4);
  GtkWidget *label, *button = gtk_button_new_from_icon_name ("window-close-symbolic");
  g_autofree char *text = dup_pin_text (pin);
  g_autofree char *name = g_strdup_printf (_ ("Remove the pin: %s"), text);
  Pin *copy = g_new (Pin, 1);

  *copy = pin_copy (pin);
  label = gtk_label_new (text);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_width_chars (GTK_LABEL (label), 12);
  gtk_widget_add_css_class (label, "pin");
  gtk_widget_set_hexpand (label, TRUE);
  gtk_button_set_has_frame (GTK_BUTTON (button), FALSE);
  gtk_widget_set_tooltip_text (button, _ ("Remove the pin"));
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
  g_object_set_data_full (G_OBJECT (button), "pin", copy, pin_free);
  g_signal_connect (button, "clicked", G_CALLBACK (removed_cb), NULL);
  gtk_box_append (GTK_BOX (row), label);
  gtk_box_append (GTK_BOX (row), button);
  return row;
}

static gboolean
is_shown (HbPinsList *self, const Wall *wall)
{
  if (!wall || !self->shown || wall->pins->len != self->shown->pins->len)
    return wall == self->shown;
  for (guint i = 0; i < wall->pins->len; i++)
    if (!pin_equal (wall_pin_at (wall, i), wall_pin_at (self->shown, i)))
      return FALSE;
  return TRUE;
}

void
hb_pins_list_fill (HbPinsList *self, HbDocument *document, WallId wall_id)
{
  const Wall *wall;
  GtkWidget *row;

  g_return_if_fail (HB_IS_PINS_LIST (self));
  g_set_object (&self->document, document);
  self->wall = wall_id;
  wall = wall_of (self);
  gtk_widget_set_visible (GTK_WIDGET (self), wall && wall->pins->len > 0);
  if (is_shown (self, wall))
    return;
  g_clear_pointer (&self->shown, wall_unref);
  self->shown = wall ? wall_copy (wall) : NULL;
  while ((row = gtk_widget_get_first_child (self->rows)))
    gtk_box_remove (GTK_BOX (self->rows), row);
  for (guint i = 0; wall && i < wall->pins->len; i++)
    gtk_box_append (GTK_BOX (self->rows), row_new (wall_pin_at (wall, i)));
}

/* ---- the widget ---- */

static void
hb_pins_list_dispose (GObject *object)
{
  HbPinsList *self = HB_PINS_LIST (object);

  g_clear_pointer (&self->box, gtk_widget_unparent);
  g_clear_object (&self->document);
  g_clear_pointer (&self->shown, wall_unref);
  G_OBJECT_CLASS (hb_pins_list_parent_class)->dispose (object);
}

static void
hb_pins_list_class_init (HbPinsListClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = hb_pins_list_dispose;
  g_signal_new ("refused", HB_TYPE_PINS_LIST, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE,
                1, G_TYPE_STRING);
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
}

static void
hb_pins_list_init (HbPinsList *self)
{
  GtkWidget *heading = gtk_label_new (_ ("Set by hand"));
  GtkWidget *all = gtk_button_new_with_label (_ ("Remove all pins"));

  self->box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  self->rows = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  gtk_label_set_xalign (GTK_LABEL (heading), 0);
  gtk_widget_add_css_class (heading, "group");
  g_signal_connect_swapped (all, "clicked", G_CALLBACK (let_all_go), self);
  gtk_box_append (GTK_BOX (self->box), heading);
  gtk_box_append (GTK_BOX (self->box), self->rows);
  gtk_box_append (GTK_BOX (self->box), all);
  gtk_widget_set_parent (self->box, GTK_WIDGET (self));
}

GtkWidget *
hb_pins_list_new (void)
{
  return g_object_new (HB_TYPE_PINS_LIST, NULL);
}
