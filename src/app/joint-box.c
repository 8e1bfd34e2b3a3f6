#include "app/joint-box.h"

#include <glib/gi18n.h>

/* In the order to show them. */
typedef enum
{
  JOINT_PLACE,
  JOINT_WIDTH,
  JOINT_FILLER,
  N_JOINT_FIELDS
} JointField;

struct _HbJointBox
{
  GtkWidget parent;

  GtkWidget *grid, *entries[N_JOINT_FIELDS]; /* children */

  HbDocument *document; /* owned; NULL before the first fill */
  WallId wall;
  guint joint;
};

G_DEFINE_FINAL_TYPE (HbJointBox, hb_joint_box, GTK_TYPE_WIDGET)

static const char *
field_name (JointField field)
{
  switch (field)
    {
    case JOINT_PLACE:
      return _ ("From the left end");
    case JOINT_WIDTH:
      return _ ("Width");
    case JOINT_FILLER:
    case N_JOINT_FIELDS:
    default:
      return _ ("Filler");
    }
}

static const Wall *
wall_of (HbJointBox *self)
{
  return self->document ? project_wall (hb_document_get_project (self->document), self->wall)
                        : NULL;
}

/* NULL: there is none. */
static const MovementJoint *
joint_of (HbJointBox *self)
{
  const Wall *wall = wall_of (self);

  return wall && self->joint >= 1 && self->joint <= wall->movement_joints->len
             ? wall_movement_joint_at (wall, self->joint - 1)
             : NULL;
}

static char *
dup_text (const MovementJoint *joint, JointField field)
{
  char text[LENGTH_TEXT_SIZE];

  if (field == JOINT_FILLER)
    return g_strdup (joint->filler ? joint->filler : "");
  return g_strdup (length_text (field == JOINT_PLACE ? joint->x : joint->width, text));
}

static void
show_value (HbJointBox *self, JointField field)
{
  const MovementJoint *joint = joint_of (self);
  GtkWidget *entry = self->entries[field];
  g_autofree char *text = joint ? dup_text (joint, field) : NULL;

  gtk_widget_remove_css_class (entry, "error");
  if (text && !g_str_equal (gtk_editable_get_text (GTK_EDITABLE (entry)), text))
    gtk_editable_set_text (GTK_EDITABLE (entry), text);
}

static void
refused (HbJointBox *self, JointField field, const char *sentence)
{
  gtk_widget_add_css_class (self->entries[field], "error");
  g_signal_emit_by_name (self, "refused", sentence);
}

/* FALSE: the text is no length. */
static gboolean
put (MovementJoint *joint, JointField field, const char *text)
{
  if (field == JOINT_FILLER)
    {
      g_free (joint->filler);
      joint->filler = *text ? g_strdup (text) : NULL;
      return TRUE;
    }
  /* Nothing typed is the usual width. */
  if (field == JOINT_WIDTH && !*text)
    {
      joint->width = MOVEMENT_JOINT_WIDTH;
      return TRUE;
    }
  return length_parse_typed (text, field == JOINT_PLACE ? &joint->x : &joint->width);
}

static void
entry_done (HbJointBox *self, JointField field)
{
  const char *text = gtk_editable_get_text (GTK_EDITABLE (self->entries[field]));
  const MovementJoint *joint = joint_of (self);
  g_autofree char *now = joint ? dup_text (joint, field) : NULL, *label = NULL;
  g_autoptr (GError) error = NULL;
  g_autoptr (Wall) next = NULL;
  g_autoptr (Edit) edit = NULL;

  if (!joint || g_str_equal (text, now))
    return;
  next = wall_copy (wall_of (self));
  if (!put (&g_array_index (next->movement_joints, MovementJoint, self->joint - 1), field, text))
    {
      refused (self, field, _ ("Type a length: 1200, 1.2 m, 120 cm or 47 in."));
      return;
    }
  edit = edit_set_wall (next);
  label = g_strdup_printf (_ ("Movement joint: %s"), field_name (field));
  if (hb_document_apply (self->document, edit, label, &error))
    show_value (self, field);
  else
    refused (self, field, error->message);
}

static JointField
field_of (HbJointBox *self, GtkWidget *entry)
{
  JointField field = JOINT_PLACE;

  while (field < JOINT_FILLER && self->entries[field] != entry)
    field++;
  return field;
}

static void
activate_cb (HbJointBox *self, GtkWidget *entry)
{
  entry_done (self, field_of (self, entry));
  gtk_editable_select_region (GTK_EDITABLE (entry), 0, -1);
}

/* What was typed counts when the focus goes on; what was refused is not kept. */
static void
focus_left_cb (GtkEventController *focus, HbJointBox *self)
{
  const JointField field = field_of (self, gtk_event_controller_get_widget (focus));

  if (gtk_widget_in_destruction (GTK_WIDGET (self)))
    return;
  entry_done (self, field);
  show_value (self, field);
}

/* Escape takes back what was typed. */
static gboolean
key_cb (GtkEventControllerKey *keys, guint key, guint code, GdkModifierType state, HbJointBox *self)
{
  GtkWidget *entry = gtk_event_controller_get_widget (GTK_EVENT_CONTROLLER (keys));

  (void) code;
  (void) state;
  if (key != GDK_KEY_Escape)
    return GDK_EVENT_PROPAGATE;
  show_value (self, field_of (self, entry));
  gtk_editable_select_region (GTK_EDITABLE (entry), 0, -1);
  return GDK_EVENT_STOP;
}

void
hb_joint_box_finish (HbJointBox *self)
{
  g_return_if_fail (HB_IS_JOINT_BOX (self));
  for (int i = 0; i < N_JOINT_FIELDS; i++)
    if (gtk_widget_get_state_flags (self->entries[i]) & GTK_STATE_FLAG_FOCUS_WITHIN)
      entry_done (self, (JointField) i);
}

void
hb_joint_box_fill (HbJointBox *self, HbDocument *document, WallId wall, guint joint)
{
  const gboolean other = wall.n != self->wall.n || joint != self->joint;

  g_return_if_fail (HB_IS_JOINT_BOX (self));
  g_set_object (&self->document, document);
  self->wall = wall;
  self->joint = joint;
  gtk_widget_set_visible (GTK_WIDGET (self), joint_of (self) != NULL);
  for (int i = 0; i < N_JOINT_FIELDS; i++)
    if (other || !gtk_widget_has_css_class (self->entries[i], "error"))
      show_value (self, (JointField) i);
}

/* ---- the widget ---- */

static GtkWidget *
entry_new (HbJointBox *self, JointField field)
{
  GtkWidget *entry = gtk_entry_new ();
  GtkEventController *focus = gtk_event_controller_focus_new ();
  GtkEventController *keys = gtk_event_controller_key_new ();

  gtk_editable_set_width_chars (GTK_EDITABLE (entry), 6);
  gtk_editable_set_max_width_chars (GTK_EDITABLE (entry), 12);
  gtk_widget_set_hexpand (entry, TRUE);
  gtk_accessible_update_property (GTK_ACCESSIBLE (entry), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  field_name (field), -1);
  if (field == JOINT_FILLER)
    gtk_entry_set_placeholder_text (GTK_ENTRY (entry), _ ("soft, closed-cell strip"));
  g_signal_connect_swapped (entry, "activate", G_CALLBACK (activate_cb), self);
  g_signal_connect (focus, "leave", G_CALLBACK (focus_left_cb), self);
  gtk_widget_add_controller (entry, focus);
  gtk_event_controller_set_propagation_phase (keys, GTK_PHASE_CAPTURE);
  g_signal_connect (keys, "key-pressed", G_CALLBACK (key_cb), self);
  gtk_widget_add_controller (entry, keys);
  return entry;
}

static void
hb_joint_box_dispose (GObject *object)
{
  HbJointBox *self = HB_JOINT_BOX (object);

  g_clear_object (&self->document);
  g_clear_pointer (&self->grid, gtk_widget_unparent);
  G_OBJECT_CLASS (hb_joint_box_parent_class)->dispose (object);
}

static void
hb_joint_box_class_init (HbJointBoxClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = hb_joint_box_dispose;
  g_signal_new ("refused", HB_TYPE_JOINT_BOX, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE,
                1, G_TYPE_STRING);
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BIN_LAYOUT);
}

static void
attach (HbJointBox *self, GtkWidget *child, int column, int row, int width)
{
  gtk_grid_attach (GTK_GRID (self->grid), child, column, row, width, 1);
}

static void
add_caution (HbJointBox *self)
{
  GtkWidget *caution = gtk_label_new (_ ("A wall parted like this needs ties or sliding parts "
                                         "across the joint: the designer and the local code "
                                         "decide."));

  gtk_label_set_xalign (GTK_LABEL (caution), 0);
  gtk_label_set_wrap (GTK_LABEL (caution), TRUE);
  gtk_label_set_max_width_chars (GTK_LABEL (caution), 24);
  gtk_widget_add_css_class (caution, "field");
  attach (self, caution, 0, 4, 2);
}

static void
hb_joint_box_init (HbJointBox *self)
{
  self->grid = gtk_grid_new ();
  gtk_grid_set_column_homogeneous (GTK_GRID (self->grid), TRUE);
  gtk_grid_set_column_spacing (GTK_GRID (self->grid), 8);
  gtk_widget_set_margin_top (self->grid, 4);
  gtk_widget_set_parent (self->grid, GTK_WIDGET (self));
  for (int i = 0; i < N_JOINT_FIELDS; i++)
    {
      const JointField field = (JointField) i;
      GtkWidget *label = gtk_label_new (field_name (field));
      const gboolean wide = field == JOINT_FILLER;

      gtk_label_set_xalign (GTK_LABEL (label), 0);
      gtk_label_set_ellipsize (GTK_LABEL (label), PANGO_ELLIPSIZE_END);
      gtk_widget_add_css_class (label, "field");
      self->entries[i] = entry_new (self, field);
      attach (self, label, wide ? 0 : i, wide ? 2 : 0, wide ? 2 : 1);
      attach (self, self->entries[i], wide ? 0 : i, wide ? 3 : 1, wide ? 2 : 1);
    }
  add_caution (self);
}

GtkWidget *
hb_joint_box_new (void)
{
  return g_object_new (HB_TYPE_JOINT_BOX, NULL);
}
