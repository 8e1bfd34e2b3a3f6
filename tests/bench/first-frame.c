/* first-frame.c - loaded before a GTK program: says how long its first frame took, and ends it
 *
 * BEGAN is CLOCK_MONOTONIC in microseconds when the program was started. With LAID it is the first
 * frame after a wall was laid: the open file's list and first wall are in it. Prints milliseconds
 * since then, and milliseconds of processor. */
#define _GNU_SOURCE
#include <dlfcn.h>
#include <gtk/gtk.h>
#include <stdio.h>
#include <stdlib.h>
#include <time.h>

void gtk_window_present (GtkWindow *window);

static gboolean laid = TRUE; /* nothing is waited for any more */

static gboolean
laid_hook (GSignalInvocationHint *hint, guint n, const GValue *values, gpointer data)
{
  (void) hint;
  (void) n;
  (void) values;
  (void) data;
  laid = TRUE;
  return FALSE;
}

static void
wait_for_wall (void)
{
  guint signal = g_signal_lookup ("laid", g_type_from_name ("HbAnswers"));

  laid = FALSE;
  g_signal_add_emission_hook (signal, 0, laid_hook, NULL, NULL);
}

static void
after_paint (GdkFrameClock *clock, gpointer data)
{
  const char *began = g_getenv ("BEGAN");
  struct timespec processor;

  (void) clock;
  (void) data;
  if (began == NULL || !laid)
    return;
  clock_gettime (CLOCK_PROCESS_CPUTIME_ID, &processor);
  printf ("%.1f %.1f\n",
          (double) (g_get_monotonic_time () - g_ascii_strtoll (began, NULL, 10)) / 1000.0,
          (double) processor.tv_sec * 1e3 + (double) processor.tv_nsec / 1e6);
  fflush (stdout);
  _Exit (0);
}

void
gtk_window_present (GtkWindow *window)
{
  void (*present) (GtkWindow *) = NULL;

  *(void **) &present = dlsym (RTLD_NEXT, "gtk_window_present");
  present (window);
  if (g_getenv ("LAID") != NULL)
    wait_for_wall ();
  g_signal_connect_after (gtk_widget_get_frame_clock (GTK_WIDGET (window)), "after-paint",
                          G_CALLBACK (after_paint), NULL);
}
