#include "app/rod-window.h"

#include <glib/gi18n.h>

#include "app/beside.h"
#include "app/rod-window-private.h"
#include "app/tool.h"
#include "bond/gauge.h"

/* The thickest that a project may have: see wall_fault(). */
#define FIRST_BED_MOST LENGTH_MM (200)
#define BED_MOST LENGTH_MM (20)
/* So long the choices before stay, so that nothing flickers, in microseconds. */
#define PATIENCE 12000

G_DEFINE_FINAL_TYPE (HbRodWindow, hb_rod_window, GTK_TYPE_WINDOW)

const Project *
_hb_rod_window_project (HbRodWindow *self)
{
  return hb_document_get_project (self->document);
}

const Wall *
_hb_rod_window_get_wall (HbRodWindow *self)
{
  return self->wall.n ? project_wall (_hb_rod_window_project (self), self->wall) : NULL;
}

static void
say (HbRodWindow *self, const char *sentence)
{
  gtk_label_set_text (self->notice, sentence ? sentence : "");
  gtk_widget_set_visible (GTK_WIDGET (self->notice), sentence != NULL);
}

void
_hb_rod_window_apply (HbRodWindow *self, Edit *edit, const char *label)
{
  g_autoptr (Edit) owned = edit;
  g_autoptr (GError) error = NULL;

  if (hb_document_apply (self->document, owned, label, &error))
    say (self, NULL);
  else
    say (self, error->message);
}

int
_hb_rod_focused (const GPtrArray *buttons)
{
  for (guint i = 0; i < buttons->len; i++)
    if (gtk_widget_is_focus (g_ptr_array_index (buttons, i)))
      return (int) i;
  return -1;
}

gboolean
_hb_rod_focus_again (const GPtrArray *buttons, int at)
{
  for (int i = MIN (at, (int) buttons->len - 1); i >= 0; i--)
    if (gtk_widget_get_sensitive (g_ptr_array_index (buttons, (guint) i)))
      return gtk_widget_grab_focus (g_ptr_array_index (buttons, (guint) i));
  return FALSE;
}

const char *
_hb_rod_kind_text (RodKind kind)
{
  switch (kind)
    {
    case ROD_SILL:
      return _ ("sill");
    case ROD_HEAD:
      return _ ("head");
    case ROD_TOP:
    default:
      return _ ("top");
    }
}

/* ---- the choices, tried in the background ---- */

typedef struct
{
  Project *project;
  WallId only;
  RodRange range;
} Trial;

static void
trial_free (gpointer data)
{
  Trial *trial = data;

  project_unref (trial->project);
  g_free (trial);
}

static gpointer
try_choices (gpointer input, const gint *stop)
{
  const Trial *trial = input;

  return rod_choices (trial->project, trial->only, &trial->range, stop);
}

static void
choices_free (gpointer choices)
{
  g_array_unref (choices);
}

static void
choices_landed (gpointer result, gpointer data)
{
  g_autoptr (GArray) choices = result;

  _hb_rod_choices_fill (data, choices);
}

/* ---- what is typed ---- */

static GtkEntry *
bound_entry (HbRodWindow *self, guint which)
{
  GtkEntry *const entries[N_ROD_BOUNDS]
      = { self->first_from, self->first_to, self->bed_from, self->bed_to };

  return entries[which];
}

/* FALSE, the entry marked, when it is no thickness. */
static gboolean
read_bound (HbRodWindow *self, guint which, Length most, Length *bound)
{
  GtkWidget *entry = GTK_WIDGET (bound_entry (self, which));
  const gboolean is = length_parse_typed (gtk_editable_get_text (GTK_EDITABLE (entry)), bound)
                      && *bound >= 0 && *bound <= most;

  if (is)
    gtk_widget_remove_css_class (entry, "error");
  else
    gtk_widget_add_css_class (entry, "error");
  return is;
}

/* The typed bounds; FALSE with a sentence when they are no range. */
static gboolean
read_range (HbRodWindow *self, RodRange *range)
{
  gboolean first, bed;

  *range = rod_range_usual ();
  first = read_bound (self, ROD_FIRST_FROM, FIRST_BED_MOST, &range->first_bed[0]);
  first = read_bound (self, ROD_FIRST_TO, FIRST_BED_MOST, &range->first_bed[1]) && first;
  bed = read_bound (self, ROD_BED_FROM, BED_MOST, &range->bed[0]);
  bed = read_bound (self, ROD_BED_TO, BED_MOST, &range->bed[1]) && bed;
  if (!first)
    say (self, _ ("A levelling bed is from 0 to 200 mm thick."));
  else if (!bed)
    say (self, _ ("A bed joint is from 0 to 20 mm thick."));
  else if (range->first_bed[0] > range->first_bed[1] || range->bed[0] > range->bed[1])
    say (self, _ ("The lesser thickness stands first."));
  else
    {
      say (self, NULL);
      return TRUE;
    }
  return FALSE;
}

static void
try_range (HbRodWindow *self)
{
  RodRange range;
  Trial *trial;

  if (!read_range (self, &range))
    return;
  trial = g_new (Trial, 1);
  *trial
      = (Trial){ project_ref (_hb_rod_window_project (self)), _hb_rod_choices_scope (self), range };
  hb_job_start (self->job, trial);
  hb_job_wait (self->job, PATIENCE);
}

/* ---- filling ---- */

static void
fill_about (HbRodWindow *self, const Wall *wall)
{
  const Block *block = project_block (_hb_rod_window_project (self), wall->block);
  const Laying laying = laying_resolve (&wall->laying, block);
  char unit[LENGTH_TEXT_SIZE], first[LENGTH_TEXT_SIZE], bed[LENGTH_TEXT_SIZE];
  g_autofree char *text
      = g_strdup_printf (_ ("%s: courses of %s mm, levelling bed %s, bed joint %s"),
                         tool_wall_name (wall), length_text (block->height, unit),
                         length_text (laying.first_bed, first), length_text (laying.bed, bed));

  gtk_label_set_text (self->about, text);
}

static gboolean
refresh_cb (gpointer data)
{
  HbRodWindow *self = data;
  const Wall *wall = _hb_rod_window_get_wall (self);

  self->refresh = 0;
  gtk_stack_set_visible_child_name (self->stage, wall ? "rod" : "none");
  gtk_widget_set_visible (GTK_WIDGET (self->scope), _hb_rod_window_project (self)->walls->len > 1);
  if (!wall)
    {
      hb_job_cancel (self->job);
      say (self, NULL);
      return G_SOURCE_REMOVE;
    }
  fill_about (self, wall);
  _hb_rod_table_fill (self);
  try_range (self);
  return G_SOURCE_REMOVE;
}

static void
refresh_soon (HbRodWindow *self)
{
  if (!self->refresh)
    self->refresh = g_idle_add (refresh_cb, self);
}

static void
typed_cb (HbRodWindow *self)
{
  if (self->document)
    refresh_soon (self);
}

static void
scope_cb (HbRodWindow *self)
{
  if (self->document)
    refresh_soon (self);
}

void
hb_rod_window_set_wall (HbRodWindow *self, WallId wall)
{
  g_return_if_fail (HB_IS_ROD_WINDOW (self));
  self->wall = wall;
  refresh_soon (self);
}

/* ---- the window ---- */

static void
gauge_all_cb (HbRodWindow *self)
{
  const Wall *wall = _hb_rod_window_get_wall (self);
  g_autoptr (Wall) next = NULL;
  g_autofree char *label = NULL;

  if (!wall)
    return;
  next = rod_to_gauge (wall, project_block (_hb_rod_window_project (self), wall->block));
  label = g_strdup_printf (_ ("Move openings of %s to gauge"), tool_wall_name (wall));
  _hb_rod_window_apply (self, edit_set_wall (next), label);
}

static void
hb_rod_window_dispose (GObject *object)
{
  HbRodWindow *self = HB_ROD_WINDOW (object);

  g_clear_handle_id (&self->refresh, g_source_remove);
  g_clear_pointer (&self->job, hb_job_free);
  if (self->document)
    g_signal_handlers_disconnect_by_data (self->document, self);
  g_clear_object (&self->document);
  gtk_widget_dispose_template (GTK_WIDGET (self), HB_TYPE_ROD_WINDOW);
  g_clear_pointer (&self->moves, g_ptr_array_unref);
  g_clear_pointer (&self->takes, g_ptr_array_unref);
  G_OBJECT_CLASS (hb_rod_window_parent_class)->dispose (object);
}

static void
hb_rod_window_class_init (HbRodWindowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = hb_rod_window_dispose;
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_DIALOG);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/halfbond/ui/rod-window.ui");
  gtk_widget_class_bind_template_child (widget_class, HbRodWindow, stage);
  gtk_widget_class_bind_template_child (widget_class, HbRodWindow, about);
  gtk_widget_class_bind_template_child (widget_class, HbRodWindow, notice);
  gtk_widget_class_bind_template_child (widget_class, HbRodWindow, table);
  gtk_widget_class_bind_template_child (widget_class, HbRodWindow, gauge_all);
  gtk_widget_class_bind_template_child (widget_class, HbRodWindow, first_from);
  gtk_widget_class_bind_template_child (widget_class, HbRodWindow, first_to);
  gtk_widget_class_bind_template_child (widget_class, HbRodWindow, bed_from);
  gtk_widget_class_bind_template_child (widget_class, HbRodWindow, bed_to);
  gtk_widget_class_bind_template_child (widget_class, HbRodWindow, scope);
  gtk_widget_class_bind_template_child (widget_class, HbRodWindow, choices);
  gtk_widget_class_bind_template_callback (widget_class, typed_cb);
  gtk_widget_class_bind_template_callback (widget_class, scope_cb);
  gtk_widget_class_bind_template_callback (widget_class, gauge_all_cb);
}

static void
hb_rod_window_init (HbRodWindow *self)
{
  const RodRange usual = rod_range_usual ();
  const Length bounds[N_ROD_BOUNDS]
      = { usual.first_bed[0], usual.first_bed[1], usual.bed[0], usual.bed[1] };

  gtk_widget_init_template (GTK_WIDGET (self));
  self->moves = g_ptr_array_new ();
  self->takes = g_ptr_array_new ();
  self->job = hb_job_new ("rod", try_choices, trial_free, choices_landed, choices_free, self);
  for (guint i = 0; i < N_ROD_BOUNDS; i++)
    {
      char text[LENGTH_TEXT_SIZE];

      gtk_editable_set_text (GTK_EDITABLE (bound_entry (self, i)), length_text (bounds[i], text));
    }
}

HbRodWindow *
hb_rod_window_new (GtkWindow *parent, HbDocument *document, WallId wall)
{
  HbRodWindow *self = g_object_new (HB_TYPE_ROD_WINDOW, "transient-for", parent,
                                    "destroy-with-parent", TRUE, NULL);

  self->document = g_object_ref (document);
  g_signal_connect_swapped (document, "changed", G_CALLBACK (refresh_soon), self);
  hb_beside_add_keys (GTK_WINDOW (self), document);
  for (guint i = 0; i < N_ROD_BOUNDS; i++)
    hb_beside_add_entry_keys (GTK_WIDGET (bound_entry (self, i)), document, NULL, NULL);
  self->wall = wall;
  refresh_cb (self);
  if (_hb_rod_window_get_wall (self))
    gtk_widget_grab_focus (GTK_WIDGET (self->first_from));
  return self;
}
