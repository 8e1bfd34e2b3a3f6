#include "app/hold.h"

struct _HbHold
{
  GtkWidget parent;
  OpeningId opening;
  guint joint;
  MarkRef corner;
  char *name, *description;
};

G_DEFINE_FINAL_TYPE (HbHold, hb_hold, GTK_TYPE_WIDGET)

static void
hb_hold_finalize (GObject *object)
{
  HbHold *self = HB_HOLD (object);

  g_free (self->name);
  g_free (self->description);
  G_OBJECT_CLASS (hb_hold_parent_class)->finalize (object);
}

static void
hb_hold_class_init (HbHoldClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = hb_hold_finalize;
  gtk_widget_class_set_css_name (GTK_WIDGET_CLASS (klass), "hold");
  gtk_widget_class_set_accessible_role (GTK_WIDGET_CLASS (klass), GTK_ACCESSIBLE_ROLE_LIST_ITEM);
}

static void
hb_hold_init (HbHold *self)
{
  gtk_widget_set_focusable (GTK_WIDGET (self), TRUE);
  gtk_widget_set_can_target (GTK_WIDGET (self), FALSE);
}

GtkWidget *
hb_hold_new (OpeningId opening)
{
  HbHold *self = g_object_new (HB_TYPE_HOLD, NULL);

  self->opening = opening;
  return GTK_WIDGET (self);
}

GtkWidget *
hb_hold_new_corner (const MarkRef *corner)
{
  HbHold *self = g_object_new (HB_TYPE_HOLD, NULL);

  self->corner = *corner;
  return GTK_WIDGET (self);
}

const MarkRef *
hb_hold_get_corner (HbHold *self)
{
  g_return_val_if_fail (HB_IS_HOLD (self), NULL);
  return &self->corner;
}

OpeningId
hb_hold_get_opening (HbHold *self)
{
  g_return_val_if_fail (HB_IS_HOLD (self), (OpeningId){ 0 });
  return self->opening;
}

GtkWidget *
hb_hold_new_joint (guint joint)
{
  HbHold *self = g_object_new (HB_TYPE_HOLD, NULL);

  self->joint = joint;
  return GTK_WIDGET (self);
}

guint
hb_hold_get_joint (HbHold *self)
{
  g_return_val_if_fail (HB_IS_HOLD (self), 0);
  return self->joint;
}

static gboolean
take (char **place, const char *text)
{
  if (g_strcmp0 (*place, text) == 0)
    return FALSE;
  g_free (*place);
  *place = g_strdup (text);
  return TRUE;
}

void
hb_hold_set_name (HbHold *self, const char *name, const char *description)
{
  g_return_if_fail (HB_IS_HOLD (self));
  /* Each change is an event on the bus: only when it is one. */
  if (take (&self->name, name))
    gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
  if (take (&self->description, description))
    gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION,
                                    description, -1);
}
