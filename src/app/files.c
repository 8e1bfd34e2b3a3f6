/* files.c - opening and saving, and what is asked first so that nothing is lost */
#include "app/window-private.h"

#include <glib/gi18n.h>

#include "app/question.h"

#define ENDING ".halfbond"
#define MEDIA_TYPE "application/x-halfbond+xml"
#define RECENT_SHOWN 8

/* What goes on after an answer. */
typedef struct
{
  HbWindow *window;
  HbWindowThen then;
  GFile *file; /* what it is about, or NULL */
} Next;

static Next *
next_new (HbWindow *self, HbWindowThen then, GFile *file)
{
  Next *next = g_new (Next, 1);

  *next = (Next){ g_object_ref (self), then, file ? g_object_ref (file) : NULL };
  return next;
}

/* Does it when `go`, and is freed either way. */
static void
next_end (Next *next, gboolean go)
{
  if (go && next->then)
    next->then (next->window, next->file);
  g_clear_object (&next->file);
  g_object_unref (next->window);
  g_free (next);
}

/* ---- choosing a file ---- */

static void
add_filter (GtkFileChooser *chooser)
{
  g_autoptr (GtkFileFilter) filter = gtk_file_filter_new ();
  g_autoptr (GtkFileFilter) all = gtk_file_filter_new ();

  gtk_file_filter_set_name (filter, _ ("Halfbond projects"));
  gtk_file_filter_add_pattern (filter, "*" ENDING);
  gtk_file_filter_set_name (all, _ ("All files"));
  gtk_file_filter_add_pattern (all, "*");
  gtk_file_chooser_add_filter (chooser, filter);
  gtk_file_chooser_add_filter (chooser, all);
}

static GtkFileChooserNative *
chooser_new (HbWindow *self, GtkFileChooserAction action, const char *title, const char *accept)
{
  GtkFileChooserNative *chooser
      = gtk_file_chooser_native_new (title, GTK_WINDOW (self), action, accept, _ ("_Cancel"));

  gtk_native_dialog_set_modal (GTK_NATIVE_DIALOG (chooser), TRUE);
  add_filter (GTK_FILE_CHOOSER (chooser));
  g_clear_object (&self->chooser);
  self->chooser = chooser;
  return chooser;
}

static void
open_response_cb (HbWindow *self, int response)
{
  g_autoptr (GtkFileChooserNative) chooser = g_steal_pointer (&self->chooser);
  g_autoptr (GFile) file = NULL;

  if (response != GTK_RESPONSE_ACCEPT)
    return;
  file = gtk_file_chooser_get_file (GTK_FILE_CHOOSER (chooser));
  if (file)
    _hb_window_open_asked (self, file);
}

void
_hb_window_ask_open (HbWindow *self)
{
  GtkFileChooserNative *chooser
      = chooser_new (self, GTK_FILE_CHOOSER_ACTION_OPEN, _ ("Open a project"), _ ("_Open"));

  g_signal_connect_swapped (chooser, "response", G_CALLBACK (open_response_cb), self);
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (chooser));
}

static void
open_now (HbWindow *self, GFile *file)
{
  hb_window_open (self, file, FALSE);
}

void
_hb_window_open_asked (HbWindow *self, GFile *file)
{
  _hb_window_when_saved (self, open_now, file);
}

/* ---- saving ---- */

static void
remember (const char *path)
{
  g_autoptr (GFile) file = g_file_new_for_path (path);
  g_autofree char *uri = g_file_get_uri (file);

  gtk_recent_manager_add_item (gtk_recent_manager_get_default (), uri);
}

static gboolean
save_to (HbWindow *self, const char *path)
{
  g_autoptr (GError) error = NULL;

  if (!hb_document_save_as (self->document, path, &error))
    {
      _hb_window_notice (self, error->message, NULL, NULL, NULL, NULL);
      return FALSE;
    }
  _hb_window_hide_notice (self);
  _hb_window_say (self, _ ("Saved."));
  remember (path);
  return TRUE;
}

char *
_hb_window_take_choice (HbWindow *self, int response, const char *ending)
{
  g_autoptr (GtkFileChooserNative) chooser = g_steal_pointer (&self->chooser);
  g_autoptr (GFile) file = NULL;
  g_autofree char *path = NULL;

  if (response == GTK_RESPONSE_ACCEPT)
    file = gtk_file_chooser_get_file (GTK_FILE_CHOOSER (chooser));
  path = file ? g_file_get_path (file) : NULL;
  if (!path || g_str_has_suffix (path, ending))
    return g_steal_pointer (&path);
  return g_strconcat (path, ending, NULL);
}

static void
save_response_cb (GtkNativeDialog *dialog, int response, Next *next)
{
  HbWindow *self = next->window;
  g_autofree char *path = _hb_window_take_choice (self, response, ENDING);

  (void) dialog;
  next_end (next, path && save_to (self, path));
}

/* "Garden studio.halfbond" */
static char *
suggested_name (HbWindow *self)
{
  g_autofree char *title = hb_document_dup_title (self->document);

  g_strdelimit (title, "/\\", '-');
  return g_str_has_suffix (title, ENDING) ? g_steal_pointer (&title)
                                          : g_strconcat (title, ENDING, NULL);
}

void
_hb_window_save_as (HbWindow *self, HbWindowThen then, GFile *file)
{
  GtkFileChooserNative *chooser
      = chooser_new (self, GTK_FILE_CHOOSER_ACTION_SAVE, _ ("Save the project"), _ ("_Save"));
  const char *path = hb_document_get_path (self->document);
  g_autofree char *name = suggested_name (self);

  hb_canvas_cancel (self->canvas);
  if (path)
    {
      g_autoptr (GFile) old = g_file_new_for_path (path);

      gtk_file_chooser_set_file (GTK_FILE_CHOOSER (chooser), old, NULL);
    }
  else
    gtk_file_chooser_set_current_name (GTK_FILE_CHOOSER (chooser), name);
  g_signal_connect (chooser, "response", G_CALLBACK (save_response_cb),
                    next_new (self, then, file));
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (chooser));
}

/* Another program wrote the file: which of the two is to be? */
static void
ask_which (HbWindow *self, const char *sentence)
{
  _hb_window_notice (self, sentence, _ ("Reload"), "win.reload", _ ("Keep mine"), "win.keep-mine");
}

void
_hb_window_save (HbWindow *self, HbWindowThen then, GFile *file)
{
  g_autoptr (GError) error = NULL;

  hb_canvas_cancel (self->canvas);
  if (!hb_document_get_path (self->document))
    {
      _hb_window_save_as (self, then, file);
      return;
    }
  if (hb_document_save (self->document, FALSE, &error))
    {
      _hb_window_hide_notice (self);
      _hb_window_say (self, _ ("Saved."));
      if (then)
        then (self, file);
    }
  else if (g_error_matches (error, HB_DOCUMENT_ERROR, HB_DOCUMENT_ERROR_CHANGED))
    ask_which (self, error->message);
  else
    _hb_window_notice (self, error->message, NULL, NULL, NULL, NULL);
}

void
_hb_window_check_disk (HbWindow *self)
{
  if (!hb_document_is_overtaken (self->document))
    return;
  ask_which (self, _ ("Another program changed this project's file since it was opened here. "
                      "Reload takes that one; Keep mine writes yours over it."));
}

/* ---- before anything is lost ---- */

enum
{
  ANSWER_DISCARD,
  ANSWER_CANCEL,
  ANSWER_SAVE,
};

static void
answered_cb (int answer, gpointer data)
{
  Next *next = data;

  if (answer == ANSWER_SAVE)
    {
      _hb_window_save (next->window, next->then, next->file);
      next_end (next, FALSE);
    }
  else
    next_end (next, answer == ANSWER_DISCARD);
}

void
_hb_window_when_saved (HbWindow *self, HbWindowThen then, GFile *file)
{
  const char *const answers[] = { _ ("_Do not save"), _ ("_Cancel"), _ ("_Save"), NULL };
  g_autofree char *title = NULL, *heading = NULL;

  hb_canvas_cancel (self->canvas);
  if (!hb_document_is_modified (self->document))
    {
      then (self, file);
      return;
    }
  title = hb_document_dup_title (self->document);
  heading = g_strdup_printf (_ ("Save the changes to “%s”?"), title);
  hb_question_ask (GTK_WINDOW (self), heading,
                   _ ("What you did since it was last saved is lost otherwise."), answers,
                   ANSWER_DISCARD, answered_cb, next_new (self, then, file));
}

/* ---- recent files ---- */

static gint
newest_first (gconstpointer a, gconstpointer b)
{
  return g_date_time_compare (gtk_recent_info_get_modified ((GtkRecentInfo *) b),
                              gtk_recent_info_get_modified ((GtkRecentInfo *) a));
}

static void
free_info (gpointer info)
{
  gtk_recent_info_unref (info);
}

void
_hb_window_fill_recent (HbWindow *self)
{
  GList *items = gtk_recent_manager_get_items (gtk_recent_manager_get_default ());
  guint n = 0;

  g_menu_remove_all (self->recent);
  items = g_list_sort (items, newest_first);
  for (GList *i = items; i && n < RECENT_SHOWN; i = i->next)
    {
      const char *uri = gtk_recent_info_get_uri (i->data);

      if (!g_str_has_suffix (uri, ENDING) || !gtk_recent_info_exists (i->data))
        continue;
      {
        g_autoptr (GMenuItem) item
            = g_menu_item_new (gtk_recent_info_get_display_name (i->data), NULL);

        g_menu_item_set_action_and_target (item, "win.open-recent", "s", uri);
        g_menu_append_item (self->recent, item);
        n++;
      }
    }
  if (n == 0)
    g_menu_append (self->recent, _ ("No file was opened yet"), "win.nothing");
  g_list_free_full (items, free_info);
}
