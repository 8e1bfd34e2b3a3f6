/* file-source.c - a small window to drag a file from, as a file manager would let one
 *
 * Usage: file-source FILE. Its title is "Files". */
#include <gtk/gtk.h>

static GdkContentProvider *
prepare (GtkDragSource *source, double x, double y, gpointer path)
{
  g_autoptr (GFile) file = g_file_new_for_path (path);

  (void) source;
  (void) x;
  (void) y;
  return gdk_content_provider_new_typed (G_TYPE_FILE, file);
}

static gboolean
closed (GtkWindow *window, gpointer loop)
{
  (void) window;
  g_main_loop_quit (loop);
  return FALSE;
}

int
main (int argc, char **argv)
{
  g_autoptr (GMainLoop) loop = g_main_loop_new (NULL, FALSE);
  GtkDragSource *source;
  GtkWidget *window, *label;

  g_return_val_if_fail (argc == 2, 2);
  gtk_init ();
  source = gtk_drag_source_new ();
  window = gtk_window_new ();
  label = gtk_label_new ("Drag from here");
  gtk_window_set_title (GTK_WINDOW (window), "Files");
  gtk_window_set_default_size (GTK_WINDOW (window), 220, 120);
  gtk_window_set_child (GTK_WINDOW (window), label);
  g_signal_connect (source, "prepare", G_CALLBACK (prepare), argv[1]);
  g_signal_connect (window, "close-request", G_CALLBACK (closed), loop);
  gtk_widget_add_controller (label, GTK_EVENT_CONTROLLER (source));
  gtk_window_present (GTK_WINDOW (window));
  g_main_loop_run (loop);
  return 0;
}
