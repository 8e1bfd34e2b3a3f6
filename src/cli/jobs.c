#include "cli/jobs.h"

#include <glib/gi18n.h>
#include <stdio.h>
#include <unistd.h>

/* Before the first line of progress, and between two. */
#define FIRST_LINE (400 * G_TIME_SPAN_MILLISECOND)
#define NEXT_LINE (100 * G_TIME_SPAN_MILLISECOND)

typedef struct
{
  Job job;
  gpointer data;
  GMutex mutex;
  GCond one_done;
  guint n_done; /* under mutex */
} Jobs;

static void
work (gpointer task, gpointer user_data)
{
  Jobs *jobs = user_data;

  jobs->job (GPOINTER_TO_UINT (task) - 1, jobs->data);
  g_mutex_lock (&jobs->mutex);
  jobs->n_done++;
  g_cond_signal (&jobs->one_done);
  g_mutex_unlock (&jobs->mutex);
}

static void
show_progress (const char *what, guint n_done, guint n, gint64 seconds)
{
  if (n > 1)
    fprintf (stderr, _ ("\r%s: %u of %u"), what, n_done, n);
  else
    fprintf (stderr, _ ("\r%s: %d seconds"), what, (int) seconds);
  fflush (stderr);
}

/* Waits until all are done. Called with the mutex locked. */
static void
wait_for_all (Jobs *jobs, guint n, const char *what)
{
  const gboolean terminal = isatty (STDERR_FILENO);
  const gint64 began = g_get_monotonic_time ();
  gint64 next = began + FIRST_LINE;
  gboolean shown = FALSE;

  while (jobs->n_done < n)
    {
      if (!terminal)
        {
          g_cond_wait (&jobs->one_done, &jobs->mutex);
          continue;
        }
      g_cond_wait_until (&jobs->one_done, &jobs->mutex, next);
      const gint64 now = g_get_monotonic_time ();
      if (now < next)
        continue;
      show_progress (what, jobs->n_done, n, (now - began) / G_TIME_SPAN_SECOND);
      next = now + NEXT_LINE;
      shown = TRUE;
    }
  if (shown)
    fputs ("\r\033[K", stderr);
}

void
jobs_run (guint n, Job job, gpointer data, const char *what)
{
  Jobs jobs = { .job = job, .data = data };
  const guint n_threads = MIN (n, g_get_num_processors ());

  if (n == 0)
    return;
  g_mutex_init (&jobs.mutex);
  g_cond_init (&jobs.one_done);
  GThreadPool *pool = g_thread_pool_new (work, &jobs, (int) n_threads, FALSE, NULL);
  /* A task may not be NULL, so they count from 1. */
  for (guint i = 0; i < n; i++)
    g_thread_pool_push (pool, GUINT_TO_POINTER (i + 1), NULL);
  g_mutex_lock (&jobs.mutex);
  wait_for_all (&jobs, n, what);
  g_mutex_unlock (&jobs.mutex);
  g_thread_pool_free (pool, FALSE, TRUE);
  g_cond_clear (&jobs.one_done);
  g_mutex_clear (&jobs.mutex);
}
