/* exports.c - sheets, drawings and lists in files */
#include "app/window-private.h"

#include <glib/gi18n.h>
#include <string.h>

#include "app/tool.h"
#include "export/export.h"
#include "store/store.h"

#define PICTURE_WIDTH 2400 /* px */

typedef struct
{
  const char *kind, *ending, *title;
} Kind;

static const Kind kinds[] = {
  { "pdf", ".pdf", N_ ("Save the sheet") },
  { "svg", ".svg", N_ ("Save the drawing") },
  { "png", ".png", N_ ("Save the picture") },
  { "takeoff-csv", ".csv", N_ ("Save the quantities") },
  { "pieces-csv", ".csv", N_ ("Save the list of pieces") },
};

typedef struct
{
  HbWindow *window;
  const Kind *kind;
} Export;

static GBytes *
bytes_of (char *text)
{
  return g_bytes_new_take (text, strlen (text));
}

static gboolean
not_ready (GError **error)
{
  g_set_error_literal (error, EXPORT_ERROR, 0,
                       _ ("The walls are still being laid; try again in a moment."));
  return FALSE;
}

/* What is seen is what is drawn. */
static GBytes *
draw_plan (const Project *project, const char *kind, GError **error)
{
  if (g_str_equal (kind, "pdf"))
    return export_plan_pdf (project, 0, "A4", error);
  if (g_str_equal (kind, "svg"))
    return export_plan_svg (project, error);
  return export_plan_png (project, PICTURE_WIDTH, error);
}

static GBytes *
draw (HbWindow *self, const char *kind, GError **error)
{
  const Project *project = hb_document_get_project (self->document);
  const Wall *wall = project_wall (project, hb_canvas_get_wall (self->canvas));
  const Layout *layout = hb_answers_get_layout (self->answers, hb_canvas_get_wall (self->canvas));
  const gboolean client = hb_canvas_get_client (self->canvas);

  if (_hb_window_shows_plan (self))
    return draw_plan (project, kind, error);
  if (!wall || !layout)
    {
      not_ready (error);
      return NULL;
    }
  if (g_str_equal (kind, "pdf"))
    return export_pdf (project, wall, layout, client, 0, "A4", error);
  if (g_str_equal (kind, "svg"))
    return export_svg (project, wall, layout, client, error);
  return export_png (project, wall, layout, client, PICTURE_WIDTH, error);
}

static GBytes *
list_pieces (HbWindow *self, GError **error)
{
  const Project *project = hb_document_get_project (self->document);
  const guint n = project->walls->len;
  g_autofree Layout **layouts = g_new0 (Layout *, n + 1);

  for (guint i = 0; i < n; i++)
    {
      layouts[i]
          = (Layout *) hb_answers_get_layout (self->answers, project_wall_at (project, i)->id);
      if (!layouts[i])
        {
          not_ready (error);
          return NULL;
        }
    }
  return bytes_of (export_pieces_csv (project, layouts, NULL));
}

static GBytes *
list_quantities (HbWindow *self, GError **error)
{
  const Takeoff *takeoff = hb_answers_get_takeoff (self->answers);

  if (!takeoff || !hb_answers_is_settled (self->answers))
    {
      not_ready (error);
      return NULL;
    }
  return bytes_of (export_takeoff_csv (hb_document_get_project (self->document), takeoff));
}

static GBytes *
make (HbWindow *self, const char *kind, GError **error)
{
  if (g_str_equal (kind, "takeoff-csv"))
    return list_quantities (self, error);
  if (g_str_equal (kind, "pieces-csv"))
    return list_pieces (self, error);
  return draw (self, kind, error);
}

static void
write_export (HbWindow *self, const Kind *kind, const char *path)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GBytes) bytes = make (self, kind->kind, &error);
  g_autofree char *sentence = NULL;
  gsize n = 0;
  const char *start = bytes ? g_bytes_get_data (bytes, &n) : NULL;

  if (!bytes || !store_write_bytes (start, n, path, &error))
    {
      _hb_window_notice (self, error->message, NULL, NULL, NULL, NULL);
      return;
    }
  sentence = g_strdup_printf (_ ("Saved %s."), path);
  _hb_window_say (self, sentence);
}

static void
response_cb (GtkNativeDialog *dialog, int response, Export *export)
{
  HbWindow *self = export->window;
  g_autofree char *path = _hb_window_take_choice (self, response, export->kind->ending);

  (void) dialog;
  if (path)
    write_export (self, export->kind, path);
  g_object_unref (self);
  g_free (export);
}

static char *
name_of (HbWindow *self, const Kind *kind)
{
  const Wall *wall
      = project_wall (hb_document_get_project (self->document), hb_canvas_get_wall (self->canvas));
  g_autofree char *title = hb_document_dup_title (self->document);
  g_autofree char *name = NULL;

  if (_hb_window_shows_plan (self) && !g_str_has_suffix (kind->kind, "csv"))
    name = g_strdup_printf (_ ("%s, plan%s"), title, kind->ending);
  else if (wall && !g_str_has_suffix (kind->kind, "csv"))
    name = g_strdup_printf ("%s, %s%s", title, tool_wall_name (wall), kind->ending);
  else if (g_str_equal (kind->kind, "takeoff-csv"))
    name = g_strdup_printf (_ ("%s, quantities%s"), title, kind->ending);
  else
    name = g_strdup_printf (_ ("%s, pieces%s"), title, kind->ending);
  g_strdelimit (name, "/\\", '-');
  return g_steal_pointer (&name);
}

static const Kind *
find_kind (const char *word)
{
  for (guint i = 0; i < G_N_ELEMENTS (kinds); i++)
    if (g_str_equal (kinds[i].kind, word))
      return &kinds[i];
  return NULL;
}

void
_hb_window_export (HbWindow *self, const char *word)
{
  const Kind *kind = find_kind (word);
  g_autofree char *name = NULL;
  Export *export;

  g_return_if_fail (kind);
  hb_canvas_cancel (self->canvas);
  name = name_of (self, kind);
  export = g_new (Export, 1);
  *export = (Export){ g_object_ref (self), kind };
  g_clear_object (&self->chooser);
  self->chooser = gtk_file_chooser_native_new (
      _ (kind->title), GTK_WINDOW (self), GTK_FILE_CHOOSER_ACTION_SAVE, _ ("_Save"), _ ("_Cancel"));
  gtk_native_dialog_set_modal (GTK_NATIVE_DIALOG (self->chooser), TRUE);
  gtk_file_chooser_set_current_name (GTK_FILE_CHOOSER (self->chooser), name);
  g_signal_connect (self->chooser, "response", G_CALLBACK (response_cb), export);
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (self->chooser));
}
