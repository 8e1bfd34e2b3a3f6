#include "app/findings-pane.h"

#include <glib/gi18n.h>

struct _HbFindingsPane
{
  GtkWidget parent;

  /* Template widgets */
  GtkWidget *box;
  GtkLabel *summary;
  GtkListBox *list;
  GtkLabel *empty;
  GtkWidget *improve;

  /* Owned references */
  HbDocument *document;
  HbAnswers *answers;
  GPtrArray *shown;   /* Finding *: what the first rows are of; NULL: none */
  GPtrArray *savings; /* likewise, of the rows after them */
};

G_DEFINE_FINAL_TYPE (HbFindingsPane, hb_findings_pane, GTK_TYPE_WIDGET)

static const Finding *
finding_of (GtkListBoxRow *row)
{
  return g_object_get_data (G_OBJECT (row), "finding");
}

/* Something that would save is a note that breaks nothing: it has a sign of its own. */
static gboolean
is_saving (const Finding *finding)
{
  return g_str_has_prefix (finding->rule, "saves-");
}

/* ---- what a row does ---- */

static void
mend_cb (GtkButton *button, HbFindingsPane *self)
{
  GtkWidget *row = gtk_widget_get_ancestor (GTK_WIDGET (button), GTK_TYPE_LIST_BOX_ROW);
  const Finding *finding = finding_of (GTK_LIST_BOX_ROW (row));
  g_autoptr (GError) error = NULL;
  g_autofree char *label = g_strdup (finding->mend_text);
  g_autoptr (Edit) mend = edit_copy (finding->mend);

  /* A mend is an edit of the value that was judged: on a newer one it would take that back. */
  if (is_saving (finding) ? !hb_answers_has_present_savings (self->answers)
                          : !hb_answers_has_present_findings (self->answers))
    return;
  /* The row may be gone when this returns. */
  if (!hb_document_apply (self->document, mend, label, &error))
    g_signal_emit_by_name (self, "refused", error->message);
}

static void
activated_cb (HbFindingsPane *self, GtkListBoxRow *row)
{
  const Finding *finding = finding_of (row);

  g_signal_emit_by_name (self, "go-to", finding->course, finding->x, finding->opening.n);
}

/* ---- rows ---- */

static GtkWidget *
sign_new (const Finding *finding)
{
  static const char *const signs[]
      = { [SEVERITY_BREACH] = "■", [SEVERITY_WARNING] = "▲", [SEVERITY_NOTE] = "●" };
  static const char *const names[] = { [SEVERITY_BREACH] = N_ ("Breach"),
                                       [SEVERITY_WARNING] = N_ ("Warning"),
                                       [SEVERITY_NOTE] = N_ ("Note") };
  const gboolean saves = is_saving (finding);
  const char *name = saves ? _ ("Would save") : _ (names[finding->severity]);
  GtkWidget *sign = gtk_label_new (saves ? "◆" : signs[finding->severity]);

  gtk_widget_add_css_class (sign, "sign");
  gtk_widget_add_css_class (sign, severity_word (finding->severity));
  gtk_widget_set_valign (sign, GTK_ALIGN_BASELINE);
  gtk_widget_set_tooltip_text (sign, name);
  gtk_accessible_update_property (GTK_ACCESSIBLE (sign), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
  return sign;
}

static GtkWidget *
mend_new (HbFindingsPane *self, const Finding *finding)
{
  GtkWidget *button = gtk_button_new_with_label (finding->mend_text);

  gtk_widget_add_css_class (button, "mend");
  gtk_widget_set_valign (button, GTK_ALIGN_BASELINE);
  gtk_widget_set_tooltip_text (button, _ ("Do this; Undo takes it back"));
  g_signal_connect (button, "clicked", G_CALLBACK (mend_cb), self);
  return button;
}

static GtkWidget *
row_new (HbFindingsPane *self, const Finding *finding)
{
  GtkWidget *row = gtk_list_box_row_new ();
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);
  GtkWidget *text = gtk_label_new (finding->text);

  gtk_label_set_xalign (GTK_LABEL (text), 0);
  gtk_label_set_wrap (GTK_LABEL (text), TRUE);
  gtk_widget_set_hexpand (text, TRUE);
  gtk_widget_set_valign (text, GTK_ALIGN_BASELINE);
  gtk_box_append (GTK_BOX (box), sign_new (finding));
  gtk_box_append (GTK_BOX (box), text);
  if (finding->mend_text)
    {
      GtkWidget *mend = mend_new (self, finding);

      gtk_box_append (GTK_BOX (box), mend);
      g_object_set_data (G_OBJECT (row), "mend", mend);
    }
  gtk_list_box_row_set_child (GTK_LIST_BOX_ROW (row), box);
  g_object_set_data (G_OBJECT (row), "finding", (gpointer) finding);
  gtk_accessible_update_property (GTK_ACCESSIBLE (row), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  finding->text, -1);
  return row;
}

/* Whether the rows that are shown still say it all. The mends may be other edits for all that, so
 * the rows are given the new findings. */
static gboolean
same_words (GPtrArray *a, GPtrArray *b)
{
  if (!a || !b || a->len != b->len)
    return FALSE;
  for (guint i = 0; i < a->len; i++)
    {
      const Finding *x = g_ptr_array_index (a, i), *y = g_ptr_array_index (b, i);

      if (x->severity != y->severity || g_strcmp0 (x->text, y->text) != 0
          || g_strcmp0 (x->mend_text, y->mend_text) != 0)
        return FALSE;
    }
  return TRUE;
}

static const Finding *
nth (GPtrArray *findings, GPtrArray *savings, guint i)
{
  const guint n = findings ? findings->len : 0;

  return i < n ? g_ptr_array_index (findings, i) : g_ptr_array_index (savings, i - n);
}

static guint
n_of (GPtrArray *findings, GPtrArray *savings)
{
  return (findings ? findings->len : 0) + (savings ? savings->len : 0);
}

static void
make_rows (HbFindingsPane *self, GPtrArray *findings, GPtrArray *savings)
{
  GtkListBoxRow *row;

  while ((row = gtk_list_box_get_row_at_index (self->list, 0)))
    gtk_list_box_remove (self->list, GTK_WIDGET (row));
  for (guint i = 0; i < n_of (findings, savings); i++)
    gtk_list_box_append (self->list, row_new (self, nth (findings, savings, i)));
}

static void
rename_rows (HbFindingsPane *self, GPtrArray *findings, GPtrArray *savings)
{
  for (guint i = 0; i < n_of (findings, savings); i++)
    g_object_set_data (G_OBJECT (gtk_list_box_get_row_at_index (self->list, (int) i)), "finding",
                       (gpointer) nth (findings, savings, i));
}

/* What would save is of the value before as long as it is sought anew: it is not to be done. */
static void
update_mends (HbFindingsPane *self)
{
  const gboolean present = hb_answers_has_present_savings (self->answers);
  GtkListBoxRow *row;

  for (int i = 0; (row = gtk_list_box_get_row_at_index (self->list, i)); i++)
    {
      GtkWidget *mend = g_object_get_data (G_OBJECT (row), "mend");

      if (mend && is_saving (finding_of (row)))
        gtk_widget_set_sensitive (mend, present);
    }
}

static char *
summary_text (GPtrArray *findings, GPtrArray *savings)
{
  int n[3] = { 0 };
  g_autoptr (GString) text = g_string_new (NULL);

  for (guint i = 0; findings && i < findings->len; i++)
    n[((Finding *) g_ptr_array_index (findings, i))->severity]++;
  if (n[SEVERITY_BREACH])
    g_string_append_printf (
        text, g_dngettext (NULL, "%d breach · ", "%d breaches · ", (gulong) n[SEVERITY_BREACH]),
        n[SEVERITY_BREACH]);
  if (n[SEVERITY_WARNING])
    g_string_append_printf (
        text, g_dngettext (NULL, "%d warning · ", "%d warnings · ", (gulong) n[SEVERITY_WARNING]),
        n[SEVERITY_WARNING]);
  if (n[SEVERITY_NOTE])
    g_string_append_printf (
        text, g_dngettext (NULL, "%d note · ", "%d notes · ", (gulong) n[SEVERITY_NOTE]),
        n[SEVERITY_NOTE]);
  if (savings && savings->len)
    g_string_append_printf (
        text, g_dngettext (NULL, "%u would save · ", "%u would save · ", savings->len),
        savings->len);
  /* The last separator: a space, a point of two bytes, a space. */
  if (text->len)
    g_string_truncate (text, text->len - 4);
  return g_string_free (g_steal_pointer (&text), FALSE);
}

static const char *
empty_text (HbFindingsPane *self, GPtrArray *findings)
{
  if (findings)
    return _ ("Nothing to mend: this wall keeps every rule.");
  if (hb_answers_get_wall (self->answers).n)
    return _ ("Looking for findings…");
  return _ ("Findings stand here once there is a wall.");
}

static gboolean
same_rows (HbFindingsPane *self, GPtrArray *findings, GPtrArray *savings)
{
  if (!findings != !self->shown || !savings != !self->savings)
    return FALSE;
  return (!findings || same_words (self->shown, findings))
         && (!savings || same_words (self->savings, savings));
}

static void
keep (GPtrArray **shown, GPtrArray *now)
{
  GPtrArray *before = *shown;

  *shown = now ? g_ptr_array_ref (now) : NULL;
  if (before)
    g_ptr_array_unref (before);
}

static void
fill (HbFindingsPane *self)
{
  GPtrArray *findings = hb_answers_get_findings (self->answers);
  GPtrArray *savings = hb_answers_get_savings (self->answers);
  const guint n = n_of (findings, savings);
  g_autofree char *summary = summary_text (findings, savings);

  /* While they are sought, the old ones stay; they go when there is no wall. */
  if (same_rows (self, findings, savings))
    rename_rows (self, findings, savings);
  else
    make_rows (self, findings, savings);
  keep (&self->shown, findings);
  keep (&self->savings, savings);
  update_mends (self);
  gtk_label_set_text (self->summary, summary);
  gtk_widget_set_visible (GTK_WIDGET (self->list), n > 0);
  gtk_widget_set_visible (GTK_WIDGET (self->empty), n == 0);
  gtk_label_set_text (self->empty, empty_text (self, findings));
}

void
hb_findings_pane_set_improving (HbFindingsPane *self, gboolean improving)
{
  g_return_if_fail (HB_IS_FINDINGS_PANE (self));
  gtk_button_set_label (GTK_BUTTON (self->improve),
                        improving ? _ ("Stop improving") : _ ("Improve all"));
}

void
hb_findings_pane_set_document (HbFindingsPane *self, HbDocument *document, HbAnswers *answers)
{
  g_return_if_fail (HB_IS_FINDINGS_PANE (self) && !self->document);
  self->document = g_object_ref (document);
  self->answers = g_object_ref (answers);
  g_signal_connect_object (answers, "found", G_CALLBACK (fill), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (answers, "advised", G_CALLBACK (fill), self, G_CONNECT_SWAPPED);
  fill (self);
}

static void
hb_findings_pane_dispose (GObject *object)
{
  HbFindingsPane *self = HB_FINDINGS_PANE (object);

  g_clear_object (&self->document);
  g_clear_object (&self->answers);
  gtk_widget_dispose_template (GTK_WIDGET (self), HB_TYPE_FINDINGS_PANE);
  g_clear_pointer (&self->shown, g_ptr_array_unref);
  g_clear_pointer (&self->savings, g_ptr_array_unref);
  G_OBJECT_CLASS (hb_findings_pane_parent_class)->dispose (object);
}

static void
hb_findings_pane_class_init (HbFindingsPaneClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = hb_findings_pane_dispose;
  g_signal_new ("go-to", HB_TYPE_FINDINGS_PANE, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE,
                3, G_TYPE_INT, G_TYPE_INT, G_TYPE_UINT);
  g_signal_new ("refused", HB_TYPE_FINDINGS_PANE, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                G_TYPE_NONE, 1, G_TYPE_STRING);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/halfbond/ui/findings-pane.ui");
  gtk_widget_class_bind_template_child (widget_class, HbFindingsPane, box);
  gtk_widget_class_bind_template_child (widget_class, HbFindingsPane, summary);
  gtk_widget_class_bind_template_child (widget_class, HbFindingsPane, list);
  gtk_widget_class_bind_template_child (widget_class, HbFindingsPane, empty);
  gtk_widget_class_bind_template_child (widget_class, HbFindingsPane, improve);
  gtk_widget_class_bind_template_callback (widget_class, activated_cb);
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
}

static void
hb_findings_pane_init (HbFindingsPane *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}
