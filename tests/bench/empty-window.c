/* empty-window.c - the least that a GTK program can be, to compare the first frame with */
#include <gtk/gtk.h>

static void
activate (GtkApplication *application, gpointer data)
{
  GtkWidget *window = gtk_application_window_new (application);

  (void) data;
  gtk_window_set_default_size (GTK_WINDOW (window), 1280, 720);
  gtk_window_present (GTK_WINDOW (window));
}

int
main (int argc, char **argv)
{
  g_autoptr (GtkApplication) application
      = gtk_application_new ("org.halfbond.Empty", G_APPLICATION_NON_UNIQUE);

  g_signal_connect (application, "activate", G_CALLBACK (activate), NULL);
  return g_application_run (G_APPLICATION (application), argc, argv);
}
