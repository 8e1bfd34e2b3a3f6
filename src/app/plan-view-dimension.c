/* plan-view-dimension.c - typing into a dimension of the plan where it stands */
#include <glib/gi18n.h>

#include "app/plan-view-private.h"
#include "app/tool.h"
#include "model/plan-edit.h"

#define WIDTH 92 /* px, of the entry */

/* What is typed into: a part of the wall `a`, of the opening `id` or of the wall itself. `b` is
 * what the dimension shows. */
static const Wall *
wall_of (HbPlanView *self, const MarkRef *ref)
{
  return project_wall (_hb_plan_view_project (self), (WallId){ (guint32) ref->a });
}

static const char *
part_text (const MarkRef *ref)
{
  switch ((DimensionPart) ref->part)
    {
    case DIMENSION_WALL_LENGTH:
      return _ ("Length of the side, mm");
    case DIMENSION_PIER_BEFORE:
      return _ ("Masonry left of the opening, mm");
    case DIMENSION_PIER_AFTER:
      return _ ("Masonry right of the last opening, mm");
    default:
      return _ ("Width of the opening, mm");
    }
}

/* A side of an outline may be shorter than its wall: both change by as much. NULL with a sentence,
 * or without one where the dimension is gone. */
static Edit *
typed_edit (HbPlanView *self, Length value, GError **error)
{
  const MarkRef *ref = &self->typed;
  const Project *project = _hb_plan_view_project (self);
  const Wall *wall = wall_of (self, ref);
  g_autoptr (Wall) next = NULL;

  if (!wall)
    return NULL;
  if (ref->part == DIMENSION_WALL_LENGTH)
    {
      next = wall_copy (wall);
      next->length += value - ref->b;
    }
  else
    next = tool_set_dimension (wall, (DimensionPart) ref->part, (OpeningId){ ref->id }, value);
  return next ? plan_resize (project, next, SIDE_RIGHT, error) : NULL;
}

gboolean
_hb_plan_view_is_typing (HbPlanView *self)
{
  return self->typing != NULL;
}

void
_hb_plan_view_stop_typing (HbPlanView *self)
{
  GtkWidget *entry = g_steal_pointer (&self->typing);

  if (!entry)
    return;
  _hb_plan_view_focus_chosen (self);
  gtk_widget_unparent (entry);
  _hb_plan_view_say (self, "");
}

static void
activated_cb (HbPlanView *self, GtkWidget *entry)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (Edit) edit = NULL;
  g_autofree char *label = NULL;
  char text[LENGTH_TEXT_SIZE];
  Length value;

  if (!length_parse_typed (gtk_editable_get_text (GTK_EDITABLE (entry)), &value))
    {
      gtk_widget_add_css_class (entry, "error");
      _hb_plan_view_say (self, _ ("Type a length: 1200, 1.2 m, 120 cm or 47 in."));
      return;
    }
  edit = typed_edit (self, value, &error);
  label = g_strdup_printf (_ ("Set a dimension to %s mm"), length_text (value, text));
  if (!error && (!edit || hb_document_apply (self->document, edit, label, &error)))
    {
      _hb_plan_view_stop_typing (self);
      return;
    }
  gtk_widget_add_css_class (entry, "error");
  _hb_plan_view_say (self, error->message);
}

static gboolean
escape_cb (HbPlanView *self, guint key)
{
  if (key != GDK_KEY_Escape)
    return GDK_EVENT_PROPAGATE;
  _hb_plan_view_stop_typing (self);
  return GDK_EVENT_STOP;
}

static gboolean
gone_cb (gpointer data)
{
  HbPlanView *self = data;

  if (self->typing && !(gtk_widget_get_state_flags (self->typing) & GTK_STATE_FLAG_FOCUS_WITHIN))
    _hb_plan_view_stop_typing (self);
  return G_SOURCE_REMOVE;
}

/* Not at once: the focus is on its way while this is told. */
static void
left_cb (HbPlanView *self)
{
  g_idle_add_full (G_PRIORITY_DEFAULT, gone_cb, g_object_ref (self), g_object_unref);
}

static GtkWidget *
entry_new (HbPlanView *self, const char *name)
{
  GtkWidget *entry = gtk_entry_new ();
  GtkEventController *keys = gtk_event_controller_key_new ();
  GtkEventController *focus = gtk_event_controller_focus_new ();

  gtk_editable_set_width_chars (GTK_EDITABLE (entry), 7);
  gtk_editable_set_alignment (GTK_EDITABLE (entry), 0.5f);
  gtk_widget_add_css_class (entry, "dimension");
  gtk_accessible_update_property (GTK_ACCESSIBLE (entry), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
  g_signal_connect_swapped (entry, "activate", G_CALLBACK (activated_cb), self);
  gtk_event_controller_set_propagation_phase (keys, GTK_PHASE_CAPTURE);
  g_signal_connect_swapped (keys, "key-pressed", G_CALLBACK (escape_cb), self);
  gtk_widget_add_controller (entry, keys);
  g_signal_connect_swapped (focus, "leave", G_CALLBACK (left_cb), self);
  gtk_widget_add_controller (entry, focus);
  return entry;
}

/* Openings one above the other share their places in the plan's chain, not in the wall's: only what
 * is shown can be typed into. */
static gboolean
is_as_shown (HbPlanView *self, const MarkRef *ref)
{
  const Wall *wall = wall_of (self, ref);
  Length value;

  if (!wall || ref->part == DIMENSION_WALL_LENGTH)
    return wall != NULL;
  return tool_get_dimension (wall, (DimensionPart) ref->part, (OpeningId){ ref->id }, &value)
         && value == ref->b;
}

void
_hb_plan_view_type (HbPlanView *self, const MarkRef *ref, double x, double y)
{
  char text[LENGTH_TEXT_SIZE];
  g_autofree char *said = NULL;

  _hb_plan_view_stop_typing (self);
  if (!is_as_shown (self, ref))
    return;
  self->typed = *ref;
  self->typed_x = x;
  self->typed_y = y;
  self->typing = entry_new (self, part_text (ref));
  gtk_editable_set_text (GTK_EDITABLE (self->typing), length_text (ref->b, text));
  gtk_widget_set_parent (self->typing, GTK_WIDGET (self));
  gtk_widget_grab_focus (self->typing);
  gtk_editable_select_region (GTK_EDITABLE (self->typing), 0, -1);
  said = g_strdup_printf (_ ("%s. Enter sets it, Escape leaves it."), part_text (ref));
  _hb_plan_view_say (self, said);
}

void
_hb_plan_view_place_typing (HbPlanView *self)
{
  GtkAllocation at = { .width = WIDTH };
  const int width = gtk_widget_get_width (GTK_WIDGET (self));
  const int height = gtk_widget_get_height (GTK_WIDGET (self));

  if (!self->typing)
    return;
  gtk_widget_measure (self->typing, GTK_ORIENTATION_HORIZONTAL, -1, &at.width, NULL, NULL, NULL);
  at.width = MAX (at.width, WIDTH);
  gtk_widget_measure (self->typing, GTK_ORIENTATION_VERTICAL, at.width, NULL, &at.height, NULL,
                      NULL);
  at.x = CLAMP ((int) self->typed_x - at.width / 2, 0, MAX (0, width - at.width));
  at.y = CLAMP ((int) self->typed_y - at.height / 2, 0, MAX (0, height - at.height));
  gtk_widget_size_allocate (self->typing, &at, -1);
}
