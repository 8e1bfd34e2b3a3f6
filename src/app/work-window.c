#include "app/work-window.h"

#include <glib/gi18n.h>

#include "app/beside.h"
#include "app/job.h"
#include "app/work-figures.h"
#include "app/work-tables.h"

/* So long the answer before stays, so that nothing flickers, in microseconds. */
#define PATIENCE 20000

typedef struct
{
  Project *project;
  Layout **layouts; /* one per wall */
  guint n;
  Work *work; /* what it comes to; NULL while it is asked */
} Reckoning;

struct _HbWorkWindow
{
  GtkWindow parent;

  /* Template widgets */
  GtkStack *stage; /* "work" or "none" */
  GtkBox *tables;
  GtkGrid *figures;
  GtkLabel *counting, *notice;

  HbDocument *document; /* owned */
  HbAnswers *answers;   /* owned */
  HbJob *job;           /* owned: reckons */
  guint refresh;        /* source that reckons anew */
  Reckoning *last;      /* owned: what is shown; NULL: nothing yet */
};

G_DEFINE_FINAL_TYPE (HbWorkWindow, hb_work_window, GTK_TYPE_WINDOW)

static const Project *
project_of (HbWorkWindow *self)
{
  return hb_document_get_project (self->document);
}

static void
say (HbWorkWindow *self, const char *sentence)
{
  gtk_label_set_text (self->notice, sentence ? sentence : "");
  gtk_widget_set_visible (GTK_WIDGET (self->notice), sentence != NULL);
}

/* ---- reckoned in the background ---- */

static void
reckoning_free (gpointer data)
{
  Reckoning *reckoning = data;

  for (guint i = 0; i < reckoning->n; i++)
    layout_unref (reckoning->layouts[i]);
  g_free (reckoning->layouts);
  project_unref (reckoning->project);
  g_clear_pointer (&reckoning->work, work_free);
  g_free (reckoning);
}

static Reckoning *
reckoning_new (const Project *project)
{
  Reckoning *reckoning = g_new0 (Reckoning, 1);

  reckoning->project = project_ref (project);
  reckoning->layouts = g_new0 (Layout *, project->walls->len + 1);
  return reckoning;
}

/* The answer has all that it was reckoned from. */
static gpointer
reckon (gpointer input, const gint *stop)
{
  const Reckoning *asked = input;
  Reckoning *answer;
  Work *work = work_new (asked->project, asked->layouts, &asked->project->rates, stop);

  if (!work)
    return NULL;
  answer = reckoning_new (asked->project);
  for (; answer->n < asked->n; answer->n++)
    answer->layouts[answer->n] = layout_ref (asked->layouts[answer->n]);
  answer->work = work;
  return answer;
}

static void
reckoned (gpointer result, gpointer data)
{
  HbWorkWindow *self = data;
  Reckoning *answer = result;

  hb_work_tables_fill (self->tables, answer->project, answer->layouts, answer->work);
  gtk_widget_set_visible (GTK_WIDGET (self->counting), FALSE);
  g_clear_pointer (&self->last, reckoning_free);
  self->last = answer;
  g_signal_emit_by_name (self, "reckoned");
}

GArray *
hb_work_window_dup_pallets (HbWorkWindow *self, WallId wall)
{
  GArray *found = g_array_new (FALSE, FALSE, sizeof (WorkPallet));

  g_return_val_if_fail (HB_IS_WORK_WINDOW (self), found);
  for (guint i = 0; self->last && i < self->last->work->pallets->len; i++)
    {
      const WorkPallet *pallet = &g_array_index (self->last->work->pallets, WorkPallet, i);

      if (project_wall_at (self->last->project, pallet->wall)->id.n == wall.n)
        g_array_append_val (found, *pallet);
    }
  return found;
}

/* FALSE: a wall is still being laid. */
static gboolean
begin_reckoning (HbWorkWindow *self)
{
  const Project *project = project_of (self);
  Reckoning *asked = reckoning_new (project);

  for (; asked->n < project->walls->len; asked->n++)
    {
      const Layout *layout
          = hb_answers_get_layout (self->answers, project_wall_at (project, asked->n)->id);

      if (!layout)
        {
          reckoning_free (asked);
          return FALSE;
        }
      asked->layouts[asked->n] = layout_ref (layout);
    }
  hb_job_start (self->job, asked);
  hb_job_wait (self->job, PATIENCE);
  return TRUE;
}

static gboolean
refresh_cb (gpointer data)
{
  HbWorkWindow *self = data;
  const gboolean walls = project_of (self)->walls->len > 0;

  self->refresh = 0;
  /* Under a hand that pulls, days would flicker by; the last value is told of once more. */
  if (hb_document_has_preview (self->document))
    return G_SOURCE_REMOVE;
  gtk_stack_set_visible_child_name (self->stage, walls ? "work" : "none");
  gtk_widget_set_visible (GTK_WIDGET (self->counting), TRUE);
  if (walls)
    begin_reckoning (self);
  else
    hb_job_cancel (self->job);
  return G_SOURCE_REMOVE;
}

static void
refresh_soon (HbWorkWindow *self)
{
  if (!self->refresh)
    self->refresh = g_idle_add (refresh_cb, self);
}

/* ---- the figures ---- */

static const WorkFigure *
figure_of (GtkWidget *entry)
{
  return g_object_get_data (G_OBJECT (entry), "figure");
}

static void
show_figure (HbWorkWindow *self, GtkWidget *entry)
{
  g_autofree char *text = work_figure_text (figure_of (entry), &project_of (self)->rates);

  gtk_widget_remove_css_class (entry, "error");
  if (!g_str_equal (gtk_editable_get_text (GTK_EDITABLE (entry)), text))
    gtk_editable_set_text (GTK_EDITABLE (entry), text);
}

/* FALSE, the entry marked and the reason said, when it cannot be. */
static gboolean
commit (HbWorkWindow *self, GtkWidget *entry)
{
  const WorkFigure *figure = figure_of (entry);
  const char *text = gtk_editable_get_text (GTK_EDITABLE (entry));
  g_autofree char *now = work_figure_text (figure, &project_of (self)->rates), *label = NULL;
  WorkRates rates = project_of (self)->rates;
  g_autoptr (GError) error = NULL;
  g_autoptr (Edit) edit = NULL;

  if (g_str_equal (text, now))
    return TRUE;
  label = g_strdup_printf (_ ("Work: %s"), _ (figure->name));
  if (work_figure_set (figure, &rates, text, &error))
    {
      edit = edit_set_rates (&rates);
      if (hb_document_apply (self->document, edit, label, &error))
        {
          show_figure (self, entry);
          say (self, NULL);
          return TRUE;
        }
    }
  gtk_widget_add_css_class (entry, "error");
  say (self, error->message);
  return FALSE;
}

static void
activate_cb (HbWorkWindow *self, GtkWidget *entry)
{
  commit (self, entry);
  gtk_editable_select_region (GTK_EDITABLE (entry), 0, -1);
}

/* What was typed counts when the focus goes on; what was refused is not kept. */
static void
focus_left_cb (GtkEventController *focus, HbWorkWindow *self)
{
  GtkWidget *entry = gtk_event_controller_get_widget (focus);

  if (!self->document)
    return;
  if (!commit (self, entry))
    show_figure (self, entry);
  gtk_editable_select_region (GTK_EDITABLE (entry), 0, 0);
}

/* TRUE: something was typed that did not count. */
static gboolean
take_back (GtkWidget *entry, gpointer data)
{
  HbWorkWindow *self = data;
  g_autofree char *now = work_figure_text (figure_of (entry), &project_of (self)->rates);

  if (g_str_equal (gtk_editable_get_text (GTK_EDITABLE (entry)), now))
    return FALSE;
  show_figure (self, entry);
  gtk_editable_select_region (GTK_EDITABLE (entry), 0, -1);
  say (self, NULL);
  return TRUE;
}

static GtkWidget *
entry_new (HbWorkWindow *self, const WorkFigure *figure)
{
  GtkWidget *entry = gtk_entry_new ();
  GtkEventController *focus = gtk_event_controller_focus_new ();
  g_autofree char *plain = work_figure_default (figure);

  g_object_set_data (G_OBJECT (entry), "figure", (gpointer) figure);
  gtk_editable_set_width_chars (GTK_EDITABLE (entry), 9);
  gtk_editable_set_max_width_chars (GTK_EDITABLE (entry), 9);
  gtk_editable_set_alignment (GTK_EDITABLE (entry), 1);
  gtk_widget_set_valign (entry, GTK_ALIGN_CENTER);
  gtk_entry_set_placeholder_text (GTK_ENTRY (entry), plain);
  hb_beside_name (entry, _ (figure->name));
  g_signal_connect_swapped (entry, "activate", G_CALLBACK (activate_cb), self);
  g_signal_connect (focus, "leave", G_CALLBACK (focus_left_cb), self);
  gtk_widget_add_controller (entry, focus);
  hb_beside_add_entry_keys (entry, self->document, take_back, self);
  return entry;
}

static void
add_figures (HbWorkWindow *self)
{
  guint n;
  const WorkFigure *list = work_figures_list (&n);

  for (guint i = 0; i < n; i++)
    {
      const int row = 2 * (int) i;

      hb_beside_attach_word (self->figures, 0, row, _ (list[i].name), NULL, 0);
      gtk_grid_attach (self->figures, entry_new (self, &list[i]), 1, row, 1, 2);
      gtk_widget_set_hexpand (
          hb_beside_attach_word (self->figures, 0, row + 1, _ (list[i].source), "caption", 0),
          TRUE);
    }
}

static void
fill (HbWorkWindow *self)
{
  for (GtkWidget *child = gtk_widget_get_first_child (GTK_WIDGET (self->figures)); child;
       child = gtk_widget_get_next_sibling (child))
    if (GTK_IS_ENTRY (child) && !gtk_widget_has_css_class (child, "error"))
      show_figure (self, child);
  refresh_soon (self);
}

/* ---- the window ---- */

static void
hb_work_window_dispose (GObject *object)
{
  HbWorkWindow *self = HB_WORK_WINDOW (object);

  g_clear_handle_id (&self->refresh, g_source_remove);
  g_clear_pointer (&self->job, hb_job_free);
  g_clear_pointer (&self->last, reckoning_free);
  if (self->document)
    g_signal_handlers_disconnect_by_data (self->document, self);
  if (self->answers)
    g_signal_handlers_disconnect_by_data (self->answers, self);
  g_clear_object (&self->document);
  g_clear_object (&self->answers);
  gtk_widget_dispose_template (GTK_WIDGET (self), HB_TYPE_WORK_WINDOW);
  G_OBJECT_CLASS (hb_work_window_parent_class)->dispose (object);
}

static void
hb_work_window_class_init (HbWorkWindowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = hb_work_window_dispose;
  g_signal_new ("reckoned", HB_TYPE_WORK_WINDOW, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                G_TYPE_NONE, 0);
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_DIALOG);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/halfbond/ui/work-window.ui");
  gtk_widget_class_bind_template_child (widget_class, HbWorkWindow, stage);
  gtk_widget_class_bind_template_child (widget_class, HbWorkWindow, tables);
  gtk_widget_class_bind_template_child (widget_class, HbWorkWindow, figures);
  gtk_widget_class_bind_template_child (widget_class, HbWorkWindow, counting);
  gtk_widget_class_bind_template_child (widget_class, HbWorkWindow, notice);
}

static void
hb_work_window_init (HbWorkWindow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  self->job = hb_job_new ("work", reckon, reckoning_free, reckoned, reckoning_free, self);
}

HbWorkWindow *
hb_work_window_new (GtkWindow *parent, HbDocument *document, HbAnswers *answers)
{
  HbWorkWindow *self = g_object_new (HB_TYPE_WORK_WINDOW, "transient-for", parent,
                                     "destroy-with-parent", TRUE, NULL);

  self->document = g_object_ref (document);
  self->answers = g_object_ref (answers);
  add_figures (self);
  g_signal_connect_swapped (document, "changed", G_CALLBACK (fill), self);
  g_signal_connect_swapped (answers, "laid", G_CALLBACK (refresh_soon), self);
  hb_beside_add_keys (GTK_WINDOW (self), document);
  fill (self);
  refresh_cb (self);
  return self;
}
