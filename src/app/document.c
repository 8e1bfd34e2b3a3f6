#include "app/document.h"

#include <glib/gi18n.h>

struct _HbDocument
{
  GObject parent;

  History *history;
  Project *preview; /* or NULL */
  char *path;       /* or NULL */
  char *stamp;      /* of the file when it was read or written */
  gint64 saved_at;
};

enum
{
  SIGNAL_CHANGED,
  SIGNAL_STATE,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (HbDocument, hb_document, G_TYPE_OBJECT)
G_DEFINE_QUARK (hb - document - error - quark, hb_document_error)

static void
hb_document_finalize (GObject *object)
{
  HbDocument *self = HB_DOCUMENT (object);

  g_clear_pointer (&self->history, history_free);
  g_clear_pointer (&self->preview, project_unref);
  g_free (self->path);
  g_free (self->stamp);
  G_OBJECT_CLASS (hb_document_parent_class)->finalize (object);
}

static void
hb_document_class_init (HbDocumentClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);

  object_class->finalize = hb_document_finalize;
  signals[SIGNAL_CHANGED] = g_signal_new ("changed", HB_TYPE_DOCUMENT, G_SIGNAL_RUN_LAST, 0, NULL,
                                          NULL, NULL, G_TYPE_NONE, 0);
  signals[SIGNAL_STATE] = g_signal_new ("state", HB_TYPE_DOCUMENT, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                        NULL, G_TYPE_NONE, 0);
}

static void
hb_document_init (HbDocument *self)
{
  g_autoptr (Project) empty = project_new ();

  self->history = history_new (empty);
}

HbDocument *
hb_document_new (void)
{
  return g_object_new (HB_TYPE_DOCUMENT, NULL);
}

static void
tell (HbDocument *self)
{
  g_signal_emit (self, signals[SIGNAL_CHANGED], 0);
  g_signal_emit (self, signals[SIGNAL_STATE], 0);
}

/* The project becomes the first step of a new history. */
static void
replace (HbDocument *self, const Project *project, const char *path)
{
  g_clear_pointer (&self->preview, project_unref);
  history_free (self->history);
  self->history = history_new (project);
  g_free (self->path);
  self->path = g_strdup (path);
  g_free (self->stamp);
  self->stamp = path ? store_stamp (path) : NULL;
  self->saved_at = path ? g_get_monotonic_time () : 0;
  tell (self);
}

gboolean
hb_document_open (HbDocument *self, const char *path, GError **error)
{
  g_autoptr (Project) project = NULL;

  g_return_val_if_fail (HB_IS_DOCUMENT (self) && path, FALSE);
  project = store_read (path, error);
  if (!project)
    return FALSE;
  replace (self, project, path);
  return TRUE;
}

gboolean
hb_document_open_copy (HbDocument *self, const char *path, GError **error)
{
  g_autoptr (Project) project = NULL;

  g_return_val_if_fail (HB_IS_DOCUMENT (self) && path, FALSE);
  project = store_read (path, error);
  if (!project)
    return FALSE;
  replace (self, project, NULL);
  return TRUE;
}

void
hb_document_clear (HbDocument *self)
{
  g_autoptr (Project) empty = project_new ();

  g_return_if_fail (HB_IS_DOCUMENT (self));
  replace (self, empty, NULL);
}

/* ---- its file ---- */

gboolean
hb_document_is_overtaken (HbDocument *self)
{
  g_autofree char *now = NULL;

  g_return_val_if_fail (HB_IS_DOCUMENT (self), FALSE);
  if (!self->path)
    return FALSE;
  now = store_stamp (self->path);
  return *now && g_strcmp0 (now, self->stamp) != 0;
}

static gboolean
write_to (HbDocument *self, const char *path, GError **error)
{
  if (!store_write (history_now (self->history), path, error))
    return FALSE;
  history_mark_saved (self->history);
  g_free (self->stamp);
  self->stamp = store_stamp (path);
  self->saved_at = g_get_monotonic_time ();
  g_signal_emit (self, signals[SIGNAL_STATE], 0);
  return TRUE;
}

gboolean
hb_document_save (HbDocument *self, gboolean over, GError **error)
{
  g_return_val_if_fail (HB_IS_DOCUMENT (self), FALSE);
  if (!self->path)
    {
      g_set_error_literal (error, HB_DOCUMENT_ERROR, HB_DOCUMENT_ERROR_NO_FILE,
                           _ ("This project has no file yet."));
      return FALSE;
    }
  if (!over && hb_document_is_overtaken (self))
    {
      g_set_error (error, HB_DOCUMENT_ERROR, HB_DOCUMENT_ERROR_CHANGED,
                   _ ("%s was changed by another program since it was opened here."), self->path);
      return FALSE;
    }
  return write_to (self, self->path, error);
}

gboolean
hb_document_save_as (HbDocument *self, const char *path, GError **error)
{
  g_autofree char *kept = g_strdup (path);

  g_return_val_if_fail (HB_IS_DOCUMENT (self) && path, FALSE);
  if (!store_write (history_now (self->history), kept, error))
    return FALSE;
  g_free (self->path);
  self->path = g_steal_pointer (&kept);
  history_mark_saved (self->history);
  g_free (self->stamp);
  self->stamp = store_stamp (self->path);
  self->saved_at = g_get_monotonic_time ();
  g_signal_emit (self, signals[SIGNAL_STATE], 0);
  return TRUE;
}

/* ---- what it is ---- */

const Project *
hb_document_get_project (HbDocument *self)
{
  g_return_val_if_fail (HB_IS_DOCUMENT (self), NULL);
  return self->preview ? self->preview : history_now (self->history);
}

const char *
hb_document_get_path (HbDocument *self)
{
  g_return_val_if_fail (HB_IS_DOCUMENT (self), NULL);
  return self->path;
}

char *
hb_document_dup_title (HbDocument *self)
{
  const Project *project = hb_document_get_project (self);

  if (project->title && *project->title)
    return g_strdup (project->title);
  if (self->path)
    return g_path_get_basename (self->path);
  return g_strdup (_ ("New project"));
}

gboolean
hb_document_is_modified (HbDocument *self)
{
  g_return_val_if_fail (HB_IS_DOCUMENT (self), FALSE);
  return !history_is_saved (self->history);
}

gint64
hb_document_get_saved_at (HbDocument *self)
{
  g_return_val_if_fail (HB_IS_DOCUMENT (self), 0);
  return self->saved_at;
}

/* ---- its steps ---- */

gboolean
hb_document_apply_all (HbDocument *self, Edit *const *edits, guint n, const char *label,
                       GError **error)
{
  g_autoptr (Project) next = NULL;

  g_return_val_if_fail (HB_IS_DOCUMENT (self) && edits && label, FALSE);
  next = project_ref (history_now (self->history));
  for (guint i = 0; i < n; i++)
    {
      Project *after = project_edit (next, edits[i], error);

      if (!after)
        return FALSE;
      project_unref (next);
      next = after;
    }
  g_clear_pointer (&self->preview, project_unref);
  history_push (self->history, next, label);
  tell (self);
  return TRUE;
}

gboolean
hb_document_apply (HbDocument *self, const Edit *edit, const char *label, GError **error)
{
  Edit *const one = (Edit *) edit;

  g_return_val_if_fail (edit, FALSE);
  return hb_document_apply_all (self, &one, 1, label, error);
}

gboolean
hb_document_preview (HbDocument *self, const Edit *edit, GError **error)
{
  Project *next;

  g_return_val_if_fail (HB_IS_DOCUMENT (self) && edit, FALSE);
  next = project_edit (history_now (self->history), edit, error);
  if (!next)
    return FALSE;
  g_clear_pointer (&self->preview, project_unref);
  self->preview = next;
  g_signal_emit (self, signals[SIGNAL_CHANGED], 0);
  return TRUE;
}

gboolean
hb_document_has_preview (HbDocument *self)
{
  g_return_val_if_fail (HB_IS_DOCUMENT (self), FALSE);
  return self->preview != NULL;
}

void
hb_document_keep_preview (HbDocument *self, const char *label)
{
  g_autoptr (Project) kept = NULL;

  g_return_if_fail (HB_IS_DOCUMENT (self) && label);
  kept = g_steal_pointer (&self->preview);
  if (!kept)
    return;
  history_push (self->history, kept, label);
  tell (self);
}

void
hb_document_drop_preview (HbDocument *self)
{
  g_return_if_fail (HB_IS_DOCUMENT (self));
  if (!self->preview)
    return;
  g_clear_pointer (&self->preview, project_unref);
  g_signal_emit (self, signals[SIGNAL_CHANGED], 0);
}

const char *
hb_document_get_undo_label (HbDocument *self)
{
  g_return_val_if_fail (HB_IS_DOCUMENT (self), NULL);
  return history_undo_label (self->history);
}

const char *
hb_document_get_redo_label (HbDocument *self)
{
  g_return_val_if_fail (HB_IS_DOCUMENT (self), NULL);
  return history_redo_label (self->history);
}

void
hb_document_undo (HbDocument *self)
{
  g_return_if_fail (HB_IS_DOCUMENT (self));
  g_clear_pointer (&self->preview, project_unref);
  history_undo (self->history);
  tell (self);
}

void
hb_document_redo (HbDocument *self)
{
  g_return_if_fail (HB_IS_DOCUMENT (self));
  g_clear_pointer (&self->preview, project_unref);
  history_redo (self->history);
  tell (self);
}

guint
hb_document_n_steps (HbDocument *self)
{
  g_return_val_if_fail (HB_IS_DOCUMENT (self), 0);
  return history_n_steps (self->history);
}
