#include "app/room-box.h"

#include <glib/gi18n.h>

#include "app/tool.h"
#include "model/plan-edit.h"

struct _HbRoomBox
{
  GtkWidget parent;

  /* Children, by the sides of plan_room() */
  GtkWidget *grid, *labels[2], *entries[2];

  HbDocument *document; /* owned; NULL before the first fill */
  WallId wall;
};

G_DEFINE_FINAL_TYPE (HbRoomBox, hb_room_box, GTK_TYPE_WIDGET)

/* FALSE: it is no partition. */
static gboolean
room_of (HbRoomBox *self, Length clear[2], WallId other[2])
{
  return self->document && self->wall.n
         && plan_room (hb_document_get_project (self->document), self->wall, clear, other);
}

static void
show_value (HbRoomBox *self, int side)
{
  Length clear[2];
  WallId other[2];
  char text[LENGTH_TEXT_SIZE];

  gtk_widget_remove_css_class (self->entries[side], "error");
  if (room_of (self, clear, other))
    gtk_editable_set_text (GTK_EDITABLE (self->entries[side]), length_text (clear[side], text));
}

static void
refused (HbRoomBox *self, int side, const char *sentence)
{
  gtk_widget_add_css_class (self->entries[side], "error");
  g_signal_emit_by_name (self, "refused", sentence);
}

static void
entry_done (HbRoomBox *self, int side)
{
  const char *text = gtk_editable_get_text (GTK_EDITABLE (self->entries[side]));
  g_autoptr (GError) error = NULL;
  g_autoptr (Edit) edit = NULL;
  Length clear[2], value;
  char now[LENGTH_TEXT_SIZE];
  WallId other[2];

  if (!room_of (self, clear, other) || g_str_equal (text, length_text (clear[side], now)))
    return;
  if (!length_parse_typed (text, &value))
    {
      refused (self, side, _ ("Type a length: 1200, 1.2 m, 120 cm or 47 in."));
      return;
    }
  edit = plan_set_room (hb_document_get_project (self->document), self->wall, side, value, &error);
  if (edit && hb_document_apply (self->document, edit, _ ("Move a partition"), &error))
    show_value (self, side);
  else
    refused (self, side, error->message);
}

static int
side_of (HbRoomBox *self, GtkWidget *entry)
{
  return entry == self->entries[0] ? 0 : 1;
}

static void
activate_cb (HbRoomBox *self, GtkWidget *entry)
{
  entry_done (self, side_of (self, entry));
  gtk_editable_select_region (GTK_EDITABLE (entry), 0, -1);
}

/* What was typed counts when the focus goes on; what was refused is not kept. */
static void
focus_left_cb (GtkEventController *focus, HbRoomBox *self)
{
  const int side = side_of (self, gtk_event_controller_get_widget (focus));

  if (gtk_widget_in_destruction (GTK_WIDGET (self)))
    return;
  entry_done (self, side);
  show_value (self, side);
}

void
hb_room_box_fill (HbRoomBox *self, HbDocument *document, WallId wall)
{
  Length clear[2];
  WallId other[2];

  g_return_if_fail (HB_IS_ROOM_BOX (self));
  g_set_object (&self->document, document);
  self->wall = wall;
  gtk_widget_set_visible (GTK_WIDGET (self), room_of (self, clear, other));
  if (!room_of (self, clear, other))
    return;
  for (int side = 0; side < 2; side++)
    {
      const Wall *to = project_wall (hb_document_get_project (document), other[side]);
      g_autofree char *name
          = to ? g_strdup_printf (_ ("Clear to %s"), tool_wall_name (to)) : g_strdup (_ ("Clear"));

      gtk_label_set_text (GTK_LABEL (self->labels[side]), name);
      gtk_accessible_update_property (GTK_ACCESSIBLE (self->entries[side]),
                                      GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
      if (!gtk_widget_has_css_class (self->entries[side], "error"))
        show_value (self, side);
    }
}

/* ---- the widget ---- */

static GtkWidget *
entry_new (HbRoomBox *self)
{
  GtkWidget *entry = gtk_entry_new ();
  GtkEventController *focus = gtk_event_controller_focus_new ();

  gtk_editable_set_width_chars (GTK_EDITABLE (entry), 6);
  gtk_editable_set_max_width_chars (GTK_EDITABLE (entry), 12);
  gtk_widget_set_hexpand (entry, TRUE);
  g_signal_connect_swapped (entry, "activate", G_CALLBACK (activate_cb), self);
  g_signal_connect (focus, "leave", G_CALLBACK (focus_left_cb), self);
  gtk_widget_add_controller (entry, focus);
  return entry;
}

static void
hb_room_box_dispose (GObject *object)
{
  HbRoomBox *self = HB_ROOM_BOX (object);

  g_clear_object (&self->document);
  g_clear_pointer (&self->grid, gtk_widget_unparent);
  G_OBJECT_CLASS (hb_room_box_parent_class)->dispose (object);
}

static void
hb_room_box_class_init (HbRoomBoxClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = hb_room_box_dispose;
  g_signal_new ("refused", HB_TYPE_ROOM_BOX, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 1,
                G_TYPE_STRING);
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BIN_LAYOUT);
}

static void
hb_room_box_init (HbRoomBox *self)
{
  self->grid = gtk_grid_new ();
  gtk_grid_set_column_homogeneous (GTK_GRID (self->grid), TRUE);
  gtk_grid_set_column_spacing (GTK_GRID (self->grid), 8);
  gtk_widget_set_margin_top (self->grid, 4);
  gtk_widget_set_parent (self->grid, GTK_WIDGET (self));
  for (int side = 0; side < 2; side++)
    {
      self->labels[side] = gtk_label_new (NULL);
      gtk_label_set_xalign (GTK_LABEL (self->labels[side]), 0);
      gtk_label_set_ellipsize (GTK_LABEL (self->labels[side]), PANGO_ELLIPSIZE_END);
      gtk_widget_add_css_class (self->labels[side], "field");
      self->entries[side] = entry_new (self);
      gtk_grid_attach (GTK_GRID (self->grid), self->labels[side], 1 - side, 0, 1, 1);
      gtk_grid_attach (GTK_GRID (self->grid), self->entries[side], 1 - side, 1, 1, 1);
    }
}

GtkWidget *
hb_room_box_new (void)
{
  return g_object_new (HB_TYPE_ROOM_BOX, NULL);
}
