#include "app/top-box.h"

#include <glib/gi18n.h>

#include "app/tool-top.h"

/* One figure: what it sets, and what it is called beside its entry and to a screen reader. */
typedef struct
{
  DimensionPart part;
  guint index;
} Figure;

struct _HbTopBox
{
  GtkWidget parent;

  GtkWidget *box, *shape, *cap, *figures, *feet, *add_top; /* children */

  HbDocument *document; /* owned; NULL before the first fill */
  WallId wall;
  gboolean as_drawn; /* its points are shown, though it has a simpler shape */
  guint built[4];    /* of which wall, for which shape, points and steps the rows are */
  gboolean filling;  /* what changes now was not typed */
  gboolean typing;   /* a row is at work: it is not to be taken away yet */
};

G_DEFINE_FINAL_TYPE (HbTopBox, hb_top_box, GTK_TYPE_WIDGET)

static void fill (HbTopBox *self);

static const Wall *
wall_of (HbTopBox *self)
{
  return self->document && self->wall.n
             ? project_wall (hb_document_get_project (self->document), self->wall)
             : NULL;
}

static const Block *
block_of (HbTopBox *self)
{
  return project_block (hb_document_get_project (self->document), wall_of (self)->block);
}

static TopShape
shape_of (HbTopBox *self, const Wall *wall)
{
  const TopShape shape = tool_top_shape (wall);

  return self->as_drawn && shape != SHAPE_LEVEL ? SHAPE_DRAWN : shape;
}

/* ---- from the rows to the project ---- */

static void
refused (HbTopBox *self, const char *sentence)
{
  g_signal_emit_by_name (self, "refused", sentence);
}

/* FALSE with a sentence shown when it cannot be. */
static gboolean
apply (HbTopBox *self, const Wall *next, const char *label)
{
  g_autoptr (Edit) edit = edit_set_wall (next);
  g_autoptr (GError) error = NULL;

  if (hb_document_apply (self->document, edit, label, &error))
    return TRUE;
  refused (self, error->message);
  return FALSE;
}

static const Figure *
figure_of (GtkWidget *entry)
{
  return g_object_get_data (G_OBJECT (entry), "figure");
}

static char *
text_of (HbTopBox *self, GtkWidget *entry)
{
  const Wall *wall = wall_of (self);
  const Figure *figure = figure_of (entry);
  char text[LENGTH_TEXT_SIZE];

  if (!wall)
    return NULL;
  if (entry == self->cap)
    return g_strdup (wall->cap.height > 0 ? length_text (wall->cap.height, text) : "");
  return tool_top_text (wall, figure->part, figure->index);
}

/* A wall with what was typed; NULL with a sentence. */
static Wall *
typed_wall (HbTopBox *self, GtkWidget *entry, const char *text, GError **error)
{
  const Figure *figure = figure_of (entry);
  Wall *next;
  Length cap = 0;

  if (entry != self->cap)
    return tool_set_top (wall_of (self), figure->part, figure->index, text, error);
  if (*text && !length_parse_typed (text, &cap))
    {
      g_set_error_literal (error, MODEL_ERROR, MODEL_ERROR_REFUSED,
                           _ ("Type a length: 1200, 1.2 m, 120 cm or 47 in."));
      return NULL;
    }
  next = wall_copy (wall_of (self));
  next->cap.height = cap;
  return next;
}

static const char *
label_of (HbTopBox *self, GtkWidget *entry)
{
  const Figure *figure = figure_of (entry);

  if (entry == self->cap)
    return _ ("Set the cap");
  return figure->part == DIMENSION_FOOT_UP || figure->part == DIMENSION_FOOT_PLACE
             ? _ ("Change the footing")
             : _ ("Change the top");
}

static void
show_value (HbTopBox *self, GtkWidget *entry)
{
  g_autofree char *text = text_of (self, entry);

  gtk_widget_remove_css_class (entry, "error");
  if (text && !g_str_equal (gtk_editable_get_text (GTK_EDITABLE (entry)), text))
    gtk_editable_set_text (GTK_EDITABLE (entry), text);
}

static void
entry_done (HbTopBox *self, GtkWidget *entry)
{
  g_autofree char *text = g_strstrip (g_strdup (gtk_editable_get_text (GTK_EDITABLE (entry))));
  g_autofree char *now = text_of (self, entry);
  g_autoptr (GError) error = NULL;
  g_autoptr (Wall) next = NULL;

  if (!now || self->filling || g_str_equal (now, text))
    return;
  self->typing = TRUE;
  next = typed_wall (self, entry, text, &error);
  if (!next)
    refused (self, error->message);
  if (next && apply (self, next, label_of (self, entry)))
    show_value (self, entry);
  else
    gtk_widget_add_css_class (entry, "error");
  self->typing = FALSE;
}

static gboolean
fill_idle (gpointer data)
{
  HbTopBox *self = data;

  if (self->document && !gtk_widget_in_destruction (GTK_WIDGET (self)))
    fill (self);
  return G_SOURCE_REMOVE;
}

/* The rows may be others afterwards: GTK is done with this one first. */
static void
fill_later (HbTopBox *self)
{
  g_idle_add_full (G_PRIORITY_DEFAULT_IDLE, fill_idle, g_object_ref (self), g_object_unref);
}

static void
activate_cb (HbTopBox *self, GtkWidget *entry)
{
  entry_done (self, entry);
  gtk_editable_select_region (GTK_EDITABLE (entry), 0, -1);
  fill_later (self);
}

/* What was typed counts when the focus goes on; what was refused is not kept. */
static void
focus_left_cb (GtkEventController *focus, HbTopBox *self)
{
  GtkWidget *entry = gtk_event_controller_get_widget (focus);

  if (self->filling || gtk_widget_in_destruction (GTK_WIDGET (self)))
    return;
  entry_done (self, entry);
  show_value (self, entry);
  gtk_editable_select_region (GTK_EDITABLE (entry), 0, 0);
  fill_later (self);
}

/* Escape takes back what was typed. */
static gboolean
key_cb (GtkEventControllerKey *keys, guint key, guint code, GdkModifierType state, HbTopBox *self)
{
  GtkWidget *entry = gtk_event_controller_get_widget (GTK_EVENT_CONTROLLER (keys));

  (void) code;
  (void) state;
  if (key != GDK_KEY_Escape)
    return GDK_EVENT_PROPAGATE;
  show_value (self, entry);
  gtk_editable_select_region (GTK_EDITABLE (entry), 0, -1);
  return GDK_EVENT_STOP;
}

static gboolean
set_shape (gpointer data)
{
  HbTopBox *self = data;
  const Wall *wall = self->document ? wall_of (self) : NULL;
  const TopShape shape = (TopShape) gtk_drop_down_get_selected (GTK_DROP_DOWN (self->shape));
  g_autoptr (Wall) next = NULL;

  if (!wall || shape == shape_of (self, wall))
    return G_SOURCE_REMOVE;
  self->as_drawn = shape == SHAPE_DRAWN;
  if (shape != SHAPE_DRAWN || tool_top_shape (wall) == SHAPE_LEVEL)
    {
      next = tool_shape_top (wall, block_of (self), shape);
      if (next)
        apply (self, next, _ ("Change the top"));
    }
  fill (self);
  return G_SOURCE_REMOVE;
}

static void
shape_cb (HbTopBox *self)
{
  if (!self->filling)
    g_idle_add_full (G_PRIORITY_DEFAULT_IDLE, set_shape, g_object_ref (self), g_object_unref);
}

/* ---- adding and removing ---- */

static Wall *
with_new_foot (HbTopBox *self, const Wall *wall)
{
  const guint n = wall->feet->len;
  const Length from = n ? foot_point (wall->feet, n - 1)->x : 0;
  guint index;

  return tool_add_foot (wall, block_of (self),
                        (from + (wall->length - from) / 2) / LENGTH_PER_MM * LENGTH_PER_MM, &index);
}

/* In the middle of the longest part. */
static Wall *
with_new_point (const Wall *wall)
{
  Length from = 0, room = 0, middle = wall->length / 2;
  guint index;

  for (guint i = 0; i <= wall->tops->len; i++)
    {
      const Length to = i < wall->tops->len ? top_point (wall->tops, i)->x : wall->length;

      if (to - from > room)
        {
          room = to - from;
          middle = from + room / 2;
        }
      from = to;
    }
  return tool_add_top_point (wall, middle / LENGTH_PER_MM * LENGTH_PER_MM, &index);
}

/* A button stands for a figure whose row it takes out, or adds one of its kind. */
static void
press (HbTopBox *self, GtkWidget *button)
{
  const Wall *wall = wall_of (self);
  const Figure *figure = figure_of (button);
  const gboolean foot = figure && figure->part == DIMENSION_FOOT_UP;
  const gboolean of_footing = foot || (!figure && button != self->add_top);
  const MarkRef ref = { .kind = foot ? REF_FOOT : REF_TOP,
                        .part = TOP_POINT,
                        .a = figure ? (gint32) figure->index : 0 };
  g_autoptr (Wall) next = NULL;

  if (!wall)
    return;
  if (button == self->add_top)
    next = shape_of (self, wall) == SHAPE_STEPPED ? tool_add_step (wall, block_of (self))
                                                  : with_new_point (wall);
  else if (!figure)
    next = with_new_foot (self, wall);
  else if (figure->part == DIMENSION_TOP_LEVEL)
    next = tool_remove_stretch (wall, figure->index);
  else
    next = tool_remove_corner (wall, &ref);
  if (next)
    apply (self, next, of_footing ? _ ("Change the footing") : _ ("Change the top"));
  fill (self);
}

/* The button is one of the rows that a changed project takes away: GTK is done with it first. */
static gboolean
press_idle (gpointer data)
{
  GtkWidget *ancestor = gtk_widget_get_ancestor (data, HB_TYPE_TOP_BOX);

  if (ancestor)
    press (HB_TOP_BOX (ancestor), data);
  return G_SOURCE_REMOVE;
}

static void
clicked_cb (GtkWidget *button)
{
  g_idle_add_full (G_PRIORITY_DEFAULT_IDLE, press_idle, g_object_ref (button), g_object_unref);
}

/* ---- rows ---- */

static GtkWidget *
label_new (const char *text, const char *css)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_ellipsize (GTK_LABEL (label), PANGO_ELLIPSIZE_END);
  gtk_widget_add_css_class (label, css);
  return label;
}

static GtkWidget *
entry_new (HbTopBox *self, const char *name)
{
  GtkWidget *entry = gtk_entry_new ();
  GtkEventController *focus = gtk_event_controller_focus_new ();
  GtkEventController *keys = gtk_event_controller_key_new ();

  gtk_editable_set_width_chars (GTK_EDITABLE (entry), 6);
  gtk_editable_set_max_width_chars (GTK_EDITABLE (entry), 12);
  gtk_widget_set_hexpand (entry, TRUE);
  gtk_accessible_update_property (GTK_ACCESSIBLE (entry), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
  g_signal_connect_swapped (entry, "activate", G_CALLBACK (activate_cb), self);
  g_signal_connect (focus, "leave", G_CALLBACK (focus_left_cb), self);
  gtk_widget_add_controller (entry, focus);
  gtk_event_controller_set_propagation_phase (keys, GTK_PHASE_CAPTURE);
  g_signal_connect (keys, "key-pressed", G_CALLBACK (key_cb), self);
  gtk_widget_add_controller (entry, keys);
  return entry;
}

static void
set_figure (GtkWidget *widget, DimensionPart part, guint index)
{
  Figure *figure = g_new (Figure, 1);

  *figure = (Figure){ part, index };
  g_object_set_data_full (G_OBJECT (widget), "figure", figure, g_free);
}

static GtkWidget *
figure_new (HbTopBox *self, const char *name, DimensionPart part, guint index)
{
  GtkWidget *entry = entry_new (self, name);

  set_figure (entry, part, index);
  return entry;
}

/* A label over its entry. */
static void
attach_cell (HbTopBox *self, guint cell, const char *label, DimensionPart part, guint index)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);

  gtk_box_append (GTK_BOX (box), label_new (label, "field"));
  gtk_box_append (GTK_BOX (box), figure_new (self, label, part, index));
  gtk_widget_set_hexpand (box, TRUE);
  gtk_grid_attach (GTK_GRID (self->figures), box, (int) (cell % 2), (int) (cell / 2), 1, 1);
}

static void
build_sloped (HbTopBox *self)
{
  attach_cell (self, 0, _ ("Left height"), DIMENSION_TOP_HEIGHT, 0);
  attach_cell (self, 1, _ ("Right height"), DIMENSION_TOP_HEIGHT, 1);
  attach_cell (self, 2, _ ("Pitch, degrees"), DIMENSION_TOP_PITCH, 1);
}

static void
build_gabled (HbTopBox *self)
{
  attach_cell (self, 0, _ ("Left height"), DIMENSION_TOP_HEIGHT, 0);
  attach_cell (self, 1, _ ("Right height"), DIMENSION_TOP_HEIGHT, 2);
  attach_cell (self, 2, _ ("Ridge height"), DIMENSION_TOP_HEIGHT, 1);
  attach_cell (self, 3, _ ("Ridge at"), DIMENSION_TOP_AT, 1);
  attach_cell (self, 4, _ ("Left pitch, degrees"), DIMENSION_TOP_PITCH, 1);
  attach_cell (self, 5, _ ("Right pitch, degrees"), DIMENSION_TOP_PITCH, 2);
}

/* Two figures and a button that takes them out. */
static void
append_row (HbTopBox *self, GtkWidget *list, const char *what, const char *first_name,
            const Figure *first, const char *second_name, const Figure *second)
{
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  GtkWidget *button = gtk_button_new_from_icon_name ("window-close-symbolic");
  g_autofree char *of_first = g_strdup_printf ("%s: %s", what, first_name);
  g_autofree char *of_second = g_strdup_printf ("%s: %s", what, second_name);
  g_autofree char *take_out = g_strdup_printf (_ ("Take out: %s"), what);
  GtkWidget *left = figure_new (self, of_first, first->part, first->index);
  GtkWidget *right = second ? figure_new (self, of_second, second->part, second->index)
                            : label_new (second_name, "field");

  gtk_widget_set_tooltip_text (left, of_first);
  gtk_widget_set_tooltip_text (right, of_second);
  gtk_widget_set_hexpand (right, TRUE);
  gtk_box_append (GTK_BOX (row), left);
  gtk_box_append (GTK_BOX (row), right);
  gtk_button_set_has_frame (GTK_BUTTON (button), FALSE);
  gtk_widget_set_tooltip_text (button, take_out);
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL, take_out,
                                  -1);
  set_figure (button, first->part, first->index);
  g_signal_connect (button, "clicked", G_CALLBACK (clicked_cb), NULL);
  gtk_box_append (GTK_BOX (row), button);
  gtk_box_append (GTK_BOX (list), row);
}

/* What stands over the two columns. */
static void
append_heads (GtkWidget *list, const char *first, const char *second)
{
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  GtkWidget *left = label_new (first, "field"), *right = label_new (second, "field");

  gtk_box_set_homogeneous (GTK_BOX (row), TRUE);
  gtk_widget_set_margin_end (row, 30);
  gtk_box_append (GTK_BOX (row), left);
  gtk_box_append (GTK_BOX (row), right);
  gtk_box_append (GTK_BOX (list), row);
}

static GtkWidget *
list_new (void)
{
  return gtk_box_new (GTK_ORIENTATION_VERTICAL, 4);
}

/* The last part goes on to the wall's end. */
static void
build_stepped (HbTopBox *self, const Wall *wall)
{
  GtkWidget *list = list_new ();
  guint number = 0;

  append_heads (list, _ ("Height"), _ ("Length"));
  for (guint i = 0; i <= wall->tops->len; i++)
    if (tool_is_stretch (wall, i))
      {
        const gboolean goes_on
            = i == wall->tops->len || top_point (wall->tops, i)->x == wall->length;
        const Figure height = { DIMENSION_TOP_LEVEL, i }, length = { DIMENSION_TOP_PLACE, i };
        g_autofree char *what = g_strdup_printf (_ ("Part %u"), ++number);

        append_row (self, list, what, _ ("height"), &height,
                    goes_on ? _ ("to the end") : _ ("length"), goes_on ? NULL : &length);
      }
  gtk_grid_attach (GTK_GRID (self->figures), list, 0, 0, 2, 1);
}

static void
build_drawn (HbTopBox *self, const Wall *wall)
{
  GtkWidget *list = list_new ();

  append_heads (list, _ ("Height"), _ ("At"));
  for (guint i = 0; i < wall->tops->len; i++)
    {
      const Figure height = { DIMENSION_TOP_HEIGHT, i }, at = { DIMENSION_TOP_AT, i };
      g_autofree char *what = g_strdup_printf (_ ("Point %u"), i + 1);

      append_row (self, list, what, _ ("height"), &height, _ ("at"), &at);
    }
  gtk_grid_attach (GTK_GRID (self->figures), list, 0, 0, 2, 1);
}

static void
build_feet (HbTopBox *self, const Wall *wall)
{
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (self->feet)))
    gtk_box_remove (GTK_BOX (self->feet), child);
  if (wall->feet->len > 0)
    append_heads (self->feet, _ ("Up"), _ ("From"));
  for (guint i = 0; i < wall->feet->len; i++)
    {
      const Figure up = { DIMENSION_FOOT_UP, i }, from = { DIMENSION_FOOT_PLACE, i };
      g_autofree char *what = g_strdup_printf (_ ("Step %u"), i + 1);

      append_row (self, self->feet, what, _ ("up"), &up, _ ("from"), &from);
    }
}

static void
build (HbTopBox *self, const Wall *wall, TopShape shape)
{
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (self->figures)))
    gtk_grid_remove (GTK_GRID (self->figures), child);
  if (shape == SHAPE_SLOPED)
    build_sloped (self);
  else if (shape == SHAPE_GABLED)
    build_gabled (self);
  else if (shape == SHAPE_STEPPED)
    build_stepped (self, wall);
  else if (shape == SHAPE_DRAWN)
    build_drawn (self, wall);
  gtk_widget_set_visible (self->figures, shape != SHAPE_LEVEL);
  gtk_widget_set_visible (self->add_top, shape == SHAPE_STEPPED || shape == SHAPE_DRAWN);
  gtk_button_set_label (GTK_BUTTON (self->add_top),
                        shape == SHAPE_STEPPED ? _ ("Add a step to the top") : _ ("Add a point"));
  build_feet (self, wall);
}

/* ---- from the project to the rows ---- */

static void
show_all (HbTopBox *self, GtkWidget *widget)
{
  if (GTK_IS_ENTRY (widget))
    {
      if (!gtk_widget_has_css_class (widget, "error"))
        show_value (self, widget);
      return;
    }
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child;
       child = gtk_widget_get_next_sibling (child))
    show_all (self, child);
}

static gboolean
is_built (HbTopBox *self, const guint now[4])
{
  for (guint i = 0; i < G_N_ELEMENTS (self->built); i++)
    if (self->built[i] != now[i])
      return FALSE;
  return TRUE;
}

static void
fill (HbTopBox *self)
{
  const Wall *wall = wall_of (self);
  TopShape shape;

  gtk_widget_set_visible (GTK_WIDGET (self), wall != NULL);
  if (!wall || self->filling)
    return;
  shape = shape_of (self, wall);

  const guint now[] = { wall->id.n, (guint) shape + 1, wall->tops->len, wall->feet->len };
  self->filling = TRUE;
  gtk_drop_down_set_selected (GTK_DROP_DOWN (self->shape), shape);
  if (!is_built (self, now) && !self->typing)
    {
      build (self, wall, shape);
      for (guint i = 0; i < G_N_ELEMENTS (self->built); i++)
        self->built[i] = now[i];
    }
  show_all (self, self->figures);
  show_all (self, self->feet);
  show_all (self, self->cap);
  self->filling = FALSE;
}

void
hb_top_box_fill (HbTopBox *self, HbDocument *document, WallId wall)
{
  g_return_if_fail (HB_IS_TOP_BOX (self));
  g_set_object (&self->document, document);
  if (wall.n != self->wall.n)
    self->as_drawn = FALSE;
  self->wall = wall;
  fill (self);
}

/* ---- the widget ---- */

static void
hb_top_box_dispose (GObject *object)
{
  HbTopBox *self = HB_TOP_BOX (object);

  self->filling = TRUE;
  g_clear_pointer (&self->box, gtk_widget_unparent);
  g_clear_object (&self->document);
  G_OBJECT_CLASS (hb_top_box_parent_class)->dispose (object);
}

static void
hb_top_box_class_init (HbTopBoxClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = hb_top_box_dispose;
  g_signal_new ("refused", HB_TYPE_TOP_BOX, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 1,
                G_TYPE_STRING);
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BIN_LAYOUT);
}

static GtkWidget *
shape_new (HbTopBox *self)
{
  const char *const shapes[] = {
    [SHAPE_LEVEL] = _ ("Level"),     [SHAPE_SLOPED] = _ ("Sloped"),  [SHAPE_GABLED] = _ ("Gabled"),
    [SHAPE_STEPPED] = _ ("Stepped"), [SHAPE_DRAWN] = _ ("As drawn"), NULL,
  };
  GtkWidget *choice = gtk_drop_down_new_from_strings (shapes);

  gtk_accessible_update_property (GTK_ACCESSIBLE (choice), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Shape of the top"), -1);
  gtk_widget_set_hexpand (choice, TRUE);
  g_signal_connect_swapped (choice, "notify::selected", G_CALLBACK (shape_cb), self);
  return choice;
}

static GtkWidget *
grid_new (void)
{
  GtkWidget *grid = gtk_grid_new ();

  gtk_grid_set_column_homogeneous (GTK_GRID (grid), TRUE);
  gtk_grid_set_column_spacing (GTK_GRID (grid), 8);
  gtk_grid_set_row_spacing (GTK_GRID (grid), 4);
  return grid;
}

static GtkWidget *
add_button_new (const char *label)
{
  GtkWidget *button = gtk_button_new_with_label (label);

  gtk_widget_set_margin_top (button, 4);
  g_signal_connect (button, "clicked", G_CALLBACK (clicked_cb), NULL);
  return button;
}

static void
hb_top_box_init (HbTopBox *self)
{
  GtkWidget *head = grid_new ();

  self->box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 4);
  self->shape = shape_new (self);
  self->cap = entry_new (self, _ ("Cap of concrete"));
  gtk_entry_set_placeholder_text (GTK_ENTRY (self->cap), _ ("none"));
  self->figures = grid_new ();
  self->feet = list_new ();
  self->add_top = add_button_new ("");
  gtk_grid_attach (GTK_GRID (head), label_new (_ ("Shape"), "field"), 0, 0, 1, 1);
  gtk_grid_attach (GTK_GRID (head), self->shape, 0, 1, 1, 1);
  gtk_grid_attach (GTK_GRID (head), label_new (_ ("Cap of concrete"), "field"), 1, 0, 1, 1);
  gtk_grid_attach (GTK_GRID (head), self->cap, 1, 1, 1, 1);
  gtk_box_append (GTK_BOX (self->box), label_new (_ ("Top"), "group"));
  gtk_box_append (GTK_BOX (self->box), head);
  gtk_box_append (GTK_BOX (self->box), self->figures);
  gtk_box_append (GTK_BOX (self->box), self->add_top);
  gtk_box_append (GTK_BOX (self->box), label_new (_ ("Footing"), "group"));
  gtk_box_append (GTK_BOX (self->box), self->feet);
  gtk_box_append (GTK_BOX (self->box), add_button_new (_ ("Add a step to the footing")));
  gtk_widget_set_parent (self->box, GTK_WIDGET (self));
}

GtkWidget *
hb_top_box_new (void)
{
  return g_object_new (HB_TYPE_TOP_BOX, NULL);
}
