/* document.h - the project that is open: its value, its history, its file
 *
 * Needs no display. Only this object changes the value, in the main thread; everything else reads
 * it and asks for the next by an edit.
 *
 * Signals:
 *   "changed"  the value that is shown is another one
 *   "state"    file, title, saved, or what can be undone is another
 */
#pragma once

#include <gio/gio.h>

#include "model/edit.h"
#include "model/history.h"
#include "store/store.h"

#define HB_TYPE_DOCUMENT (hb_document_get_type ())
G_DECLARE_FINAL_TYPE (HbDocument, hb_document, HB, DOCUMENT, GObject)

#define HB_DOCUMENT_ERROR (hb_document_error_quark ())
GQuark hb_document_error_quark (void);
typedef enum
{
  HB_DOCUMENT_ERROR_CHANGED, /* somebody else wrote the file since it was read */
  HB_DOCUMENT_ERROR_NO_FILE, /* it has no file yet */
} HbDocumentError;

/* An empty project in no file. */
HbDocument *hb_document_new (void);

/* Replace what is open; on failure it stays as it was. */
gboolean hb_document_open (HbDocument *document, const char *path, GError **error);
/* The same, but of no file: saving asks where to. */
gboolean hb_document_open_copy (HbDocument *document, const char *path, GError **error);
void hb_document_clear (HbDocument *document);

/* Saves to its own file; refused with HB_DOCUMENT_ERROR_CHANGED when that was written by others
 * meanwhile, unless `over`. A file that was deleted meanwhile is simply written. */
gboolean hb_document_save (HbDocument *document, gboolean over, GError **error);
/* Saves to `path`, which is its file from then on. */
gboolean hb_document_save_as (HbDocument *document, const char *path, GError **error);
/* Whether its file was written by others since it was read or saved. */
gboolean hb_document_is_overtaken (HbDocument *document);

/* What is shown: the preview while there is one. Borrowed, until the next change. */
const Project *hb_document_get_project (HbDocument *document);
/* NULL when it has no file. */
const char *hb_document_get_path (HbDocument *document);
/* Its title, else the file's name, else "New project". Newly allocated. */
char *hb_document_dup_title (HbDocument *document);
/* Whether something would be lost by closing it. */
gboolean hb_document_is_modified (HbDocument *document);
/* When it was last saved or opened, monotonic microseconds; 0: never. */
gint64 hb_document_get_saved_at (HbDocument *document);

/* One step of the history. FALSE with a sentence, and nothing changed. `edit` is borrowed. */
gboolean hb_document_apply (HbDocument *document, const Edit *edit, const char *label,
                            GError **error);

/* Several edits, one after the other, as one step; none of them when one is refused. */
gboolean hb_document_apply_all (HbDocument *document, Edit *const *edits, guint n,
                                const char *label, GError **error);

/* While something is dragged: the value is shown, but is no step. Each preview starts from the
 * last step, not from the preview before. */
gboolean hb_document_preview (HbDocument *document, const Edit *edit, GError **error);
gboolean hb_document_has_preview (HbDocument *document);
/* What is shown becomes one step. Nothing without a preview. */
void hb_document_keep_preview (HbDocument *document, const char *label);
void hb_document_drop_preview (HbDocument *document);

/* What can be undone or done again, as the label of the step; NULL: nothing. Borrowed. */
const char *hb_document_get_undo_label (HbDocument *document);
const char *hb_document_get_redo_label (HbDocument *document);
/* Drop a preview first. */
void hb_document_undo (HbDocument *document);
void hb_document_redo (HbDocument *document);
/* Steps taken so far. */
guint hb_document_n_steps (HbDocument *document);
