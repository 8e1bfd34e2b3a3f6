#include "app/takeoff-pane.h"

#include <glib/gi18n.h>

struct _HbTakeoffPane
{
  GtkWidget parent;

  /* Template widgets */
  GtkWidget *box;
  GtkLabel *cuts, *proof;
  GtkListBox *list;
  GtkDropDown *scope;
  GtkWidget *empty;

  /* Owned references */
  HbDocument *document;
  HbAnswers *answers;
  char *chosen; /* key or NULL */

  WallId wall;
  gboolean has_piece;
  Piece piece;
  gboolean filling;
};

G_DEFINE_FINAL_TYPE (HbTakeoffPane, hb_takeoff_pane, GTK_TYPE_WIDGET)

typedef struct
{
  const char *key;   /* static, as in the take-off */
  const char *group; /* likewise */
  gboolean of_pieces;
  GtkWidget *name, *note, *quantity, *unit;
} Row;

static Row *
row_of (GtkListBoxRow *row)
{
  return g_object_get_data (G_OBJECT (row), "row");
}

/* ---- the head: cuts and proof ---- */

/* Of the aim `least-waste`, which does not ask for the fewest cuts. */
static char *
order_text (const Proof *proof)
{
  if (proof->to_order == proof->to_order_at_least)
    return g_strdup (_ ("the fewest blocks to order — proven"));
  return g_strdup_printf (_ ("blocks to order: at most %d too many"),
                          proof->to_order - proof->to_order_at_least);
}

/* Whether what the wall's aim asks for is proven. */
static gboolean
is_proven (const Proof *proof)
{
  return proof->to_order > 0 ? proof->to_order == proof->to_order_at_least : proof->proven;
}

static char *
proof_text (const Proof *proof)
{
  if (proof->breaches > 0)
    return g_strdup_printf (g_dngettext (NULL, "%d breach, see below", "%d breaches, see below",
                                         (gulong) proof->breaches),
                            proof->breaches);
  if (proof->to_order > 0)
    return order_text (proof);
  if (proof->proven)
    return g_strdup (_ ("the fewest this wall allows — proven"));
  return g_strdup_printf (_ ("proven: at most %d more than needed"),
                          proof->cuts - proof->cuts_at_least);
}

static void
set_class (GtkWidget *widget, const char *name, gboolean on)
{
  if (on)
    gtk_widget_add_css_class (widget, name);
  else
    gtk_widget_remove_css_class (widget, name);
}

static void
fill_head (HbTakeoffPane *self)
{
  const Layout *layout = self->wall.n ? hb_answers_get_latest (self->answers, self->wall) : NULL;
  g_autofree char *cuts = NULL, *proof = NULL;

  if (!layout)
    {
      gtk_label_set_text (self->cuts, "–");
      gtk_label_set_text (self->proof, self->wall.n ? _ ("being laid…") : _ ("no wall chosen"));
      set_class (GTK_WIDGET (self->proof), "good", FALSE);
      set_class (GTK_WIDGET (self->proof), "bad", FALSE);
      return;
    }
  cuts = g_strdup_printf (g_dngettext (NULL, "%d cut", "%d cuts", (gulong) layout->proof.cuts),
                          layout->proof.cuts);
  proof = proof_text (&layout->proof);
  gtk_label_set_text (self->cuts, cuts);
  gtk_label_set_text (self->proof, proof);
  gtk_widget_set_tooltip_text (GTK_WIDGET (self->proof), proof);
  set_class (GTK_WIDGET (self->proof), "good",
             is_proven (&layout->proof) && layout->proof.breaches == 0);
  set_class (GTK_WIDGET (self->proof), "bad", layout->proof.breaches > 0);
}

/* ---- the lines ---- */

static GtkWidget *
label_new (const char *style, float xalign)
{
  GtkWidget *label = gtk_label_new (NULL);

  gtk_label_set_xalign (GTK_LABEL (label), xalign);
  gtk_widget_add_css_class (label, style);
  return label;
}

static GtkWidget *
row_new (const TakeoffLine *line)
{
  GtkWidget *row = gtk_list_box_row_new ();
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  Row *data = g_new0 (Row, 1);

  data->key = line->key;
  data->group = line->group;
  data->of_pieces = line->of_pieces;
  data->name = label_new ("line-name", 0);
  data->note = label_new ("line-unit", 1);
  data->quantity = label_new ("line-quantity", 1);
  data->unit = label_new ("line-unit", 0);
  gtk_widget_set_hexpand (data->name, TRUE);
  gtk_label_set_ellipsize (GTK_LABEL (data->name), PANGO_ELLIPSIZE_END);
  gtk_label_set_text (GTK_LABEL (data->name), _ (line->name));
  gtk_label_set_width_chars (GTK_LABEL (data->unit), 4);
  gtk_label_set_text (GTK_LABEL (data->unit), _ (line->unit));
  gtk_box_append (GTK_BOX (box), data->name);
  gtk_box_append (GTK_BOX (box), data->note);
  gtk_box_append (GTK_BOX (box), data->quantity);
  gtk_box_append (GTK_BOX (box), data->unit);
  gtk_list_box_row_set_child (GTK_LIST_BOX_ROW (row), box);
  if (!line->of_pieces)
    gtk_list_box_row_set_selectable (GTK_LIST_BOX_ROW (row), FALSE);
  else
    gtk_widget_add_css_class (row, "of-pieces");
  g_object_set_data_full (G_OBJECT (row), "row", data, g_free);
  return row;
}

static gboolean
rows_fit (HbTakeoffPane *self, const Takeoff *takeoff)
{
  GtkListBoxRow *row;
  guint i = 0;

  while ((row = gtk_list_box_get_row_at_index (self->list, (int) i)))
    {
      if (i >= takeoff->lines->len
          || g_strcmp0 (row_of (row)->key,
                        ((TakeoffLine *) g_ptr_array_index (takeoff->lines, i))->key)
                 != 0)
        return FALSE;
      i++;
    }
  return i == takeoff->lines->len;
}

static void
make_rows (HbTakeoffPane *self, const Takeoff *takeoff)
{
  GtkListBoxRow *row;

  while ((row = gtk_list_box_get_row_at_index (self->list, 0)))
    gtk_list_box_remove (self->list, GTK_WIDGET (row));
  for (guint i = 0; i < takeoff->lines->len; i++)
    gtk_list_box_append (self->list, row_new (g_ptr_array_index (takeoff->lines, i)));
}

/* The place of the present wall among those counted; -1: it is not among them, or all are asked. */
static int
counted_index (HbTakeoffPane *self)
{
  const GArray *walls = hb_answers_get_counted_walls (self->answers);

  if (gtk_drop_down_get_selected (self->scope) != 0)
    return -1;
  for (guint i = 0; i < walls->len; i++)
    if (g_array_index (walls, WallId, i).n == self->wall.n)
      return (int) i;
  return -1;
}

static void
fill_row (GtkListBoxRow *row, const TakeoffLine *line, int wall)
{
  const double quantity = wall < 0 ? line->quantity : line->walls[wall];
  g_autofree char *text = g_strdup_printf ("%.*f", line->decimals, quantity);
  g_autofree char *name = g_strdup_printf ("%s: %s %s", _ (line->name), text, _ (line->unit));

  if (g_strcmp0 (text, gtk_label_get_text (GTK_LABEL (row_of (row)->quantity))) == 0)
    return;
  gtk_label_set_text (GTK_LABEL (row_of (row)->quantity), text);
  gtk_accessible_update_property (GTK_ACCESSIBLE (row), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
}

/* Beside the blocks to order of a wall laid for least waste: below what they cannot come. */
static void
fill_note (HbTakeoffPane *self, GtkListBoxRow *row, const TakeoffLine *line, int wall)
{
  const Layout *layout = wall < 0 ? NULL : hb_answers_get_latest (self->answers, self->wall);
  const gint32 least = layout ? layout->proof.to_order_at_least : 0;
  const gboolean shown = least > 0 && least < line->walls[wall]
                         && g_strcmp0 (row_of (row)->key, "blocks.to-order") == 0;
  g_autofree char *note = shown ? g_strdup_printf (_ ("at least %d"), least) : NULL;

  gtk_widget_set_visible (row_of (row)->note, shown);
  if (note && g_strcmp0 (note, gtk_label_get_text (GTK_LABEL (row_of (row)->note))) != 0)
    gtk_label_set_text (GTK_LABEL (row_of (row)->note), note);
}

static void
mark_rows (HbTakeoffPane *self)
{
  GtkListBoxRow *row;

  for (int i = 0; (row = gtk_list_box_get_row_at_index (self->list, i)); i++)
    set_class (GTK_WIDGET (row), "has-piece",
               self->has_piece && takeoff_line_has_piece (row_of (row)->key, &self->piece));
}

static void
fill_lines (HbTakeoffPane *self)
{
  const Takeoff *takeoff = hb_answers_get_takeoff (self->answers);
  const gboolean none = !takeoff || takeoff->n_walls == 0;

  gtk_widget_set_visible (self->empty, none);
  gtk_widget_set_visible (GTK_WIDGET (self->list), !none);
  if (none)
    return;
  self->filling = TRUE;
  if (!rows_fit (self, takeoff))
    make_rows (self, takeoff);
  const int wall = counted_index (self);
  for (guint i = 0; i < takeoff->lines->len; i++)
    {
      GtkListBoxRow *row = gtk_list_box_get_row_at_index (self->list, (int) i);
      const TakeoffLine *line = g_ptr_array_index (takeoff->lines, i);

      fill_row (row, line, wall);
      fill_note (self, row, line, wall);
    }
  mark_rows (self);
  self->filling = FALSE;
}

static void
head_cb (GtkListBoxRow *row, GtkListBoxRow *before, gpointer data)
{
  const char *group = row_of (row)->group;
  GtkWidget *label;

  (void) data;
  if (before && g_strcmp0 (row_of (before)->group, group) == 0)
    {
      gtk_list_box_row_set_header (row, NULL);
      return;
    }
  label = label_new ("group", 0);
  gtk_label_set_text (GTK_LABEL (label), _ (group));
  gtk_list_box_row_set_header (row, label);
}

/* A click on the chosen line again lets it go. */
static void
activated_cb (HbTakeoffPane *self, GtkListBoxRow *row)
{
  const Row *data = row_of (row);

  if (!data->of_pieces)
    return;
  if (g_strcmp0 (self->chosen, data->key) == 0)
    {
      g_clear_pointer (&self->chosen, g_free);
      gtk_list_box_unselect_all (self->list);
    }
  else
    {
      g_free (self->chosen);
      self->chosen = g_strdup (data->key);
    }
  g_signal_emit_by_name (self, "chosen", self->chosen);
}

static void
laid_cb (HbTakeoffPane *self, guint wall)
{
  if (wall == self->wall.n)
    fill_head (self);
}

static void
scope_cb (HbTakeoffPane *self)
{
  if (self->answers)
    fill_lines (self);
}

void
hb_takeoff_pane_set_document (HbTakeoffPane *self, HbDocument *document, HbAnswers *answers)
{
  g_return_if_fail (HB_IS_TAKEOFF_PANE (self) && !self->document);
  self->document = g_object_ref (document);
  self->answers = g_object_ref (answers);
  g_signal_connect_object (answers, "counted", G_CALLBACK (fill_lines), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (answers, "laid", G_CALLBACK (laid_cb), self, G_CONNECT_SWAPPED);
  fill_head (self);
  fill_lines (self);
}

void
hb_takeoff_pane_set_wall (HbTakeoffPane *self, WallId wall)
{
  g_return_if_fail (HB_IS_TAKEOFF_PANE (self));
  self->wall = wall;
  fill_head (self);
  fill_lines (self);
}

void
hb_takeoff_pane_mark_piece (HbTakeoffPane *self, const Piece *piece)
{
  g_return_if_fail (HB_IS_TAKEOFF_PANE (self));
  self->has_piece = piece != NULL;
  if (piece)
    self->piece = *piece;
  mark_rows (self);
}

static void
hb_takeoff_pane_dispose (GObject *object)
{
  HbTakeoffPane *self = HB_TAKEOFF_PANE (object);

  g_clear_object (&self->document);
  g_clear_object (&self->answers);
  g_clear_pointer (&self->chosen, g_free);
  gtk_widget_dispose_template (GTK_WIDGET (self), HB_TYPE_TAKEOFF_PANE);
  G_OBJECT_CLASS (hb_takeoff_pane_parent_class)->dispose (object);
}

static void
hb_takeoff_pane_class_init (HbTakeoffPaneClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = hb_takeoff_pane_dispose;
  g_signal_new ("chosen", HB_TYPE_TAKEOFF_PANE, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE,
                1, G_TYPE_STRING);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/halfbond/ui/takeoff-pane.ui");
  gtk_widget_class_bind_template_child (widget_class, HbTakeoffPane, box);
  gtk_widget_class_bind_template_child (widget_class, HbTakeoffPane, cuts);
  gtk_widget_class_bind_template_child (widget_class, HbTakeoffPane, proof);
  gtk_widget_class_bind_template_child (widget_class, HbTakeoffPane, list);
  gtk_widget_class_bind_template_child (widget_class, HbTakeoffPane, scope);
  gtk_widget_class_bind_template_child (widget_class, HbTakeoffPane, empty);
  gtk_widget_class_bind_template_callback (widget_class, activated_cb);
  gtk_widget_class_bind_template_callback (widget_class, scope_cb);
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
}

static void
hb_takeoff_pane_init (HbTakeoffPane *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  gtk_list_box_set_header_func (self->list, head_cb, NULL, NULL);
}
