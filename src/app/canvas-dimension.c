/* canvas-dimension.c - typing into a dimension where it stands */
#include "app/canvas-private.h"

#include <glib/gi18n.h>

#include "app/tool-top.h"
#include "model/plan-edit.h"

#define WIDTH 92 /* px, of the entry */

typedef struct
{
  HbCanvas *canvas; /* borrowed: the canvas outlives its entry */
  DimensionPart part;
  OpeningId opening;
  guint index;     /* of a point of the top or a step of the footing, where the part is of one */
  Perpend perpend; /* the piece left of it is typed, and no dimension; or none */
  guint joint;     /* the place of that movement joint is typed, and no dimension; or 0 */
} Typing;

static const char *
part_text (DimensionPart part)
{
  switch (part)
    {
    case DIMENSION_WALL_LENGTH:
      return _ ("Length of the wall, mm");
    case DIMENSION_WALL_HEIGHT:
      return _ ("Height of the wall, mm");
    case DIMENSION_PIER_BEFORE:
      return _ ("Masonry left of the opening, mm");
    case DIMENSION_PIER_AFTER:
      return _ ("Masonry right of the last opening, mm");
    case DIMENSION_OPENING_WIDTH:
      return _ ("Width of the opening, mm");
    case DIMENSION_OPENING_SILL:
      return _ ("Sill above the foundation, mm");
    case DIMENSION_TOP_HEIGHT:
    case DIMENSION_TOP_LEVEL:
      return _ ("Height of the top there, mm");
    case DIMENSION_TOP_PLACE:
      return _ ("From the point before it, mm");
    case DIMENSION_TOP_PITCH:
      return _ ("Pitch of the slope, degrees");
    case DIMENSION_FOOT_UP:
      return _ ("Footing above the wall's zero, mm");
    case DIMENSION_TOP_AT:
      return _ ("From the left end, mm");
    case DIMENSION_FOOT_PLACE:
      return _ ("Step of the footing from the left end, mm");
    case DIMENSION_OPENING_HEIGHT:
    default:
      return _ ("Height of the opening, mm");
    }
}

gboolean
_hb_canvas_is_typing (HbCanvas *self)
{
  return self->dimension != NULL;
}

void
_hb_canvas_stop_typing (HbCanvas *self)
{
  GtkWidget *entry = g_steal_pointer (&self->dimension);

  if (!entry)
    return;
  _hb_canvas_focus_selected (self);
  gtk_widget_unparent (entry);
  _hb_canvas_say (self, "");
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

void
_hb_canvas_place_dimension (HbCanvas *self)
{
  GtkAllocation at = { .width = WIDTH };
  const int width = gtk_widget_get_width (GTK_WIDGET (self));
  const int height = gtk_widget_get_height (GTK_WIDGET (self));

  if (!self->dimension)
    return;
  gtk_widget_measure (self->dimension, GTK_ORIENTATION_HORIZONTAL, -1, &at.width, NULL, NULL, NULL);
  at.width = MAX (at.width, WIDTH);
  gtk_widget_measure (self->dimension, GTK_ORIENTATION_VERTICAL, at.width, NULL, &at.height, NULL,
                      NULL);
  at.x = CLAMP ((int) self->dimension_x - at.width / 2, 0, MAX (0, width - at.width));
  at.y = CLAMP ((int) self->dimension_y - at.height / 2, 0, MAX (0, height - at.height));
  gtk_widget_size_allocate (self->dimension, &at, -1);
}

/* The piece is as long as was typed, and stays where it begins. */
static gboolean
set_left_piece (const Typing *typing, Length value, GError **error)
{
  HbCanvas *self = typing->canvas;
  const Perpend from = typing->perpend;
  const Wall *wall = _hb_canvas_get_wall_value (self);
  const Layout *layout = hb_answers_get_latest (self->answers, self->wall);
  Length to = 0;
  g_autoptr (Wall) next = NULL;
  g_autoptr (Edit) edit = NULL;
  g_autofree char *label = NULL;
  char text[LENGTH_TEXT_SIZE];

  if (!wall || !layout)
    return TRUE;
  next = tool_set_left_piece (wall, _hb_canvas_get_block (self), layout, from.course, from.x, value,
                              &to, error);
  if (!next)
    return FALSE;
  edit = edit_set_wall (next);
  label = g_strdup_printf (_ ("Cut a piece of course %d to %s mm"), from.course,
                           length_text (value, text));
  if (!hb_document_apply (self->document, edit, label, error))
    return FALSE;
  _hb_canvas_take_perpend (self, (Perpend){ from.course, to });
  return TRUE;
}

static gboolean
set_joint (const Typing *typing, Length value, GError **error)
{
  HbCanvas *self = typing->canvas;
  const Wall *wall = _hb_canvas_get_wall_value (self);
  g_autoptr (Wall) next = NULL;
  g_autoptr (Edit) edit = NULL;
  g_autofree char *label = NULL;
  char text[LENGTH_TEXT_SIZE];

  if (!wall || typing->joint > wall->movement_joints->len)
    return TRUE;
  next = wall_copy (wall);
  g_array_index (next->movement_joints, MovementJoint, typing->joint - 1).x = value;
  edit = edit_set_wall (next);
  label = g_strdup_printf (_ ("Move a movement joint to %s mm"), length_text (value, text));
  return hb_document_apply (self->document, edit, label, error);
}

/* TRUE when the text holds now. */
static gboolean
set_top (const Typing *typing, const char *text, GError **error)
{
  HbCanvas *self = typing->canvas;
  const Wall *wall = _hb_canvas_get_wall_value (self);
  g_autoptr (Wall) next
      = wall ? tool_set_top (wall, typing->part, typing->index, text, error) : NULL;
  g_autoptr (Edit) edit = next ? edit_set_wall (next) : NULL;
  g_autofree char *shown = next ? tool_top_text (next, typing->part, typing->index) : NULL;
  g_autofree char *label
      = g_strdup_printf (typing->part == DIMENSION_TOP_PITCH ? _ ("Set a pitch to %s°")
                                                             : _ ("Set a dimension to %s mm"),
                         shown ? shown : text);

  return edit ? hb_document_apply (self->document, edit, label, error) : !wall;
}

/* TRUE when the value holds now. */
static gboolean
set_value (const Typing *typing, Length value, GError **error)
{
  HbCanvas *self = typing->canvas;
  const Wall *wall = _hb_canvas_get_wall_value (self);
  g_autoptr (Wall) next = NULL;
  g_autoptr (Edit) edit = NULL;
  g_autofree char *label = NULL;
  char text[LENGTH_TEXT_SIZE];

  if (typing->perpend.course)
    return set_left_piece (typing, value, error);
  if (typing->joint)
    return set_joint (typing, value, error);
  next = wall ? tool_set_dimension (wall, typing->part, typing->opening, value) : NULL;
  if (!next)
    return TRUE;
  edit = plan_resize (_hb_canvas_project (self), next, SIDE_RIGHT, error);
  if (!edit)
    return FALSE;
  label = g_strdup_printf (_ ("Set a dimension to %s mm"), length_text (value, text));
  return hb_document_apply (self->document, edit, label, error);
}

static void
show_fault (HbCanvas *self, GtkWidget *entry, const char *sentence)
{
  gtk_widget_add_css_class (entry, "error");
  _hb_canvas_say (self, sentence);
}

static void
activated_cb (GtkEntry *entry, Typing *typing)
{
  g_autoptr (GError) error = NULL;
  HbCanvas *self = typing->canvas;
  const char *text = gtk_editable_get_text (GTK_EDITABLE (entry));
  const gboolean of_top = !typing->perpend.course && tool_is_top_dimension (typing->part);
  Length value = 0;

  if (of_top && !set_top (typing, text, &error))
    show_fault (self, GTK_WIDGET (entry), error->message);
  else if (of_top)
    _hb_canvas_stop_typing (self);
  else if (!length_parse_typed (text, &value))
    show_fault (self, GTK_WIDGET (entry), _ ("Type a length: 1200, 1.2 m, 120 cm or 47 in."));
  else if (!set_value (typing, value, &error))
    show_fault (self, GTK_WIDGET (entry), error->message);
  else
    _hb_canvas_stop_typing (self);
}

static gboolean
escape_cb (HbCanvas *self, guint key)
{
  if (key != GDK_KEY_Escape)
    return GDK_EVENT_PROPAGATE;
  _hb_canvas_stop_typing (self);
  return GDK_EVENT_STOP;
}

static gboolean
gone_cb (gpointer data)
{
  HbCanvas *self = data;

  if (self->dimension
      && !(gtk_widget_get_state_flags (self->dimension) & GTK_STATE_FLAG_FOCUS_WITHIN))
    _hb_canvas_stop_typing (self);
  return G_SOURCE_REMOVE;
}

/* Not at once: the focus is on its way while this is told. */
static void
left_cb (HbCanvas *self)
{
  g_idle_add_full (G_PRIORITY_DEFAULT, gone_cb, g_object_ref (self), g_object_unref);
}

static void
add_controllers (HbCanvas *self, GtkWidget *entry)
{
  GtkEventController *keys = gtk_event_controller_key_new ();
  GtkEventController *focus = gtk_event_controller_focus_new ();

  gtk_event_controller_set_propagation_phase (keys, GTK_PHASE_CAPTURE);
  g_signal_connect_swapped (keys, "key-pressed", G_CALLBACK (escape_cb), self);
  gtk_widget_add_controller (entry, keys);
  g_signal_connect_swapped (focus, "leave", G_CALLBACK (left_cb), self);
  gtk_widget_add_controller (entry, focus);
}

static void
typing_free (gpointer data, GClosure *closure)
{
  (void) closure;
  g_free (data);
}

static const char *
typing_text (const Typing *typing)
{
  if (typing->joint)
    return _ ("Movement joint from the left end, mm");
  return typing->perpend.course ? _ ("Piece left of the perpend, mm") : part_text (typing->part);
}

static GtkWidget *
entry_new (HbCanvas *self, const Typing *what, const char *text)
{
  Typing *typing = g_memdup2 (what, sizeof *what);
  GtkWidget *entry = gtk_entry_new ();

  gtk_editable_set_width_chars (GTK_EDITABLE (entry), 7);
  gtk_editable_set_alignment (GTK_EDITABLE (entry), 0.5f);
  gtk_editable_set_text (GTK_EDITABLE (entry), text);
  gtk_widget_add_css_class (entry, "dimension");
  gtk_accessible_update_property (GTK_ACCESSIBLE (entry), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  typing_text (what), -1);
  g_signal_connect_data (entry, "activate", G_CALLBACK (activated_cb), typing, typing_free, 0);
  add_controllers (self, entry);
  return entry;
}

static void
begin_typing (HbCanvas *self, const Typing *what, const char *text, double x, double y)
{
  g_autofree char *said = NULL;

  self->dimension_x = x;
  self->dimension_y = y;
  self->dimension = entry_new (self, what, text);
  gtk_widget_set_parent (self->dimension, GTK_WIDGET (self));
  gtk_widget_grab_focus (self->dimension);
  gtk_editable_select_region (GTK_EDITABLE (self->dimension), 0, -1);
  said = g_strdup_printf (_ ("%s. Enter sets it, Escape leaves it."), typing_text (what));
  _hb_canvas_say (self, said);
}

void
_hb_canvas_edit_dimension (HbCanvas *self, const MarkRef *dimension, double x, double y)
{
  const Wall *wall = _hb_canvas_get_wall_value (self);
  const Typing typing = {
    .canvas = self,
    .part = (DimensionPart) dimension->part,
    .opening = { dimension->id },
    .index = dimension->a,
  };
  g_autofree char *shown = NULL;
  char text[LENGTH_TEXT_SIZE];
  Length value;

  _hb_canvas_stop_typing (self);
  _hb_canvas_end_nudge (self);
  if (wall && tool_is_top_dimension (typing.part))
    shown = tool_top_text (wall, typing.part, typing.index);
  else if (wall && tool_get_dimension (wall, typing.part, typing.opening, &value))
    shown = g_strdup (length_text (value, text));
  if (shown)
    begin_typing (self, &typing, shown, x, y);
}

void
_hb_canvas_edit_left_piece (HbCanvas *self)
{
  const Layout *layout = hb_answers_get_latest (self->answers, self->wall);
  const Typing typing = { .canvas = self, .perpend = self->perpend };
  const Piece *right, *left;
  char text[LENGTH_TEXT_SIZE];
  MarkPoint at;
  double x, y;

  _hb_canvas_stop_typing (self);
  _hb_canvas_end_nudge (self);
  right = layout ? tool_perpend (layout, self->perpend.course, self->perpend.x) : NULL;
  left = right ? tool_perpend_left (layout, right) : NULL;
  if (!left)
    return;
  at = (MarkPoint){ .x = length_to_mm (left->x + left->length / 2),
                    .z = length_to_mm (left->bottom + left->height / 2) };
  view_to_sheet (&self->view, &at, &x, &y);
  begin_typing (self, &typing, length_text (left->length, text), x, y);
}

void
_hb_canvas_edit_joint (HbCanvas *self)
{
  const Wall *wall = _hb_canvas_get_wall_value (self);
  const MovementJoint *joint = _hb_canvas_get_joint (self);
  const Typing typing = { .canvas = self, .joint = self->joint };
  char text[LENGTH_TEXT_SIZE];
  MarkPoint at;
  double x, y;

  _hb_canvas_stop_typing (self);
  _hb_canvas_end_nudge (self);
  if (!joint)
    return;
  at = (MarkPoint){ .x = length_to_mm (joint->x), .z = length_to_mm (wall->height / 2) };
  view_to_sheet (&self->view, &at, &x, &y);
  begin_typing (self, &typing, length_text (joint->x, text), x, y);
}
