/* first-frame.c - loaded before a GTK program: says how long its first frame took, and ends it
 *
 * BEGAN is CLOCK_MONOTONIC in microseconds when the program was started. Prints milliseconds. */
#define _GNU_SOURCE
#include <dlfcn.h>
#include <gtk/gtk.h>
#include <stdio.h>
#include <stdlib.h>

void gtk_window_present (GtkWindow *window);

static void
after_paint (GdkFrameClock *clock, gpointer data)
{
  const char *began = g_getenv ("BEGAN");

  (void) clock;
  (void) data;
  if (began == NULL)
    return;
  printf ("%.1f\n",
          (double) (g_get_monotonic_time () - g_ascii_strtoll (began, NULL, 10)) / 1000.0);
  fflush (stdout);
  _Exit (0);
}

void
gtk_window_present (GtkWindow *window)
{
  void (*present) (GtkWindow *) = NULL;

  *(void **) &present = dlsym (RTLD_NEXT, "gtk_window_present");
  present (window);
  g_signal_connect_after (gtk_widget_get_frame_clock (GTK_WIDGET (window)), "after-paint",
                          G_CALLBACK (after_paint), NULL);
}
