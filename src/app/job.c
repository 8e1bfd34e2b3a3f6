#include "app/job.h"

#ifdef __linux__
#include <sys/resource.h>
#endif

struct HbJob
{
  HbJobWork work;
  GDestroyNotify free_input;
  HbJobLand land;
  GDestroyNotify free_result;
  gpointer data;
  GMainContext *context;
  GThread *thread;

  GMutex mutex; /* what stands below is under it */
  GCond changed;
  gpointer pending; /* the next input, or NULL */
  guint64 newest;   /* number of the newest question */
  guint64 running;  /* number of the question under way; 0: none */
  gboolean quit;
  gpointer result;  /* of the newest question, not yet landed */
  GSource *landing; /* will land it */

  gint stop; /* atomic, read by the work */
};

static gboolean land_cb (gpointer data);

/* Called with the mutex locked, in the worker's thread. */
static void
schedule_landing (HbJob *job)
{
  if (job->landing)
    return;
  job->landing = g_idle_source_new ();
  g_source_set_priority (job->landing, G_PRIORITY_DEFAULT);
  g_source_set_callback (job->landing, land_cb, job, NULL);
  g_source_attach (job->landing, job->context);
}

/* Called with the mutex locked. */
static void
drop_result (HbJob *job)
{
  if (job->landing)
    g_source_destroy (job->landing);
  g_clear_pointer (&job->landing, g_source_unref);
  g_clear_pointer (&job->result, job->free_result);
}

/* Called with the mutex locked; unlocks it for the work itself. */
static void
answer_one (HbJob *job)
{
  gpointer input = g_steal_pointer (&job->pending);
  guint64 number = job->newest;
  gpointer result;

  job->running = number;
  g_atomic_int_set (&job->stop, 0);
  g_mutex_unlock (&job->mutex);
  result = job->work (input, &job->stop);
  job->free_input (input);
  g_mutex_lock (&job->mutex);
  job->running = 0;
  if (result && number == job->newest && !job->quit)
    {
      job->result = result;
      schedule_landing (job);
    }
  else if (result)
    job->free_result (result);
  g_cond_broadcast (&job->changed);
}

static gpointer
work_until_quit (gpointer data)
{
  HbJob *job = data;

  g_mutex_lock (&job->mutex);
  while (!job->quit)
    if (job->pending)
      answer_one (job);
    else
      g_cond_wait (&job->changed, &job->mutex);
  g_mutex_unlock (&job->mutex);
  return NULL;
}

/* The result, out of the job's hands; NULL when there is none. */
static gpointer
take_result (HbJob *job)
{
  gpointer result;

  g_mutex_lock (&job->mutex);
  result = g_steal_pointer (&job->result);
  drop_result (job);
  g_mutex_unlock (&job->mutex);
  return result;
}

static gboolean
land_cb (gpointer data)
{
  HbJob *job = data;
  gpointer result = take_result (job);

  if (result)
    job->land (result, job->data);
  return G_SOURCE_REMOVE;
}

HbJob *
hb_job_new (const char *name, HbJobWork work, GDestroyNotify free_input, HbJobLand land,
            GDestroyNotify free_result, gpointer data)
{
  HbJob *job = g_new0 (HbJob, 1);

  job->work = work;
  job->free_input = free_input;
  job->land = land;
  job->free_result = free_result;
  job->data = data;
  job->context = g_main_context_ref_thread_default ();
  g_mutex_init (&job->mutex);
  g_cond_init (&job->changed);
  job->thread = g_thread_new (name, work_until_quit, job);
  return job;
}

/* Called with the mutex locked. */
static void
forget (HbJob *job)
{
  job->newest++;
  g_atomic_int_set (&job->stop, 1);
  drop_result (job);
  if (job->pending)
    job->free_input (g_steal_pointer (&job->pending));
}

void
hb_job_free (HbJob *job)
{
  if (!job)
    return;
  g_mutex_lock (&job->mutex);
  job->quit = TRUE;
  forget (job);
  g_cond_broadcast (&job->changed);
  g_mutex_unlock (&job->mutex);
  g_thread_join (job->thread);
  g_cond_clear (&job->changed);
  g_mutex_clear (&job->mutex);
  g_main_context_unref (job->context);
  g_free (job);
}

void
hb_job_start (HbJob *job, gpointer input)
{
  g_return_if_fail (job && input);
  g_mutex_lock (&job->mutex);
  forget (job);
  job->pending = input;
  g_cond_broadcast (&job->changed);
  g_mutex_unlock (&job->mutex);
}

/* Called with the mutex locked. Work that was overtaken may go on for a while: nobody waits for it.
 */
static gboolean
is_busy (const HbJob *job)
{
  return job->pending || (job->running && job->running == job->newest);
}

gboolean
hb_job_wait (HbJob *job, gint64 microseconds)
{
  const gint64 end = g_get_monotonic_time () + microseconds;
  gpointer result;

  g_return_val_if_fail (job, FALSE);
  g_mutex_lock (&job->mutex);
  while (!job->result && is_busy (job) && g_cond_wait_until (&job->changed, &job->mutex, end))
    ;
  g_mutex_unlock (&job->mutex);
  result = take_result (job);
  if (result)
    job->land (result, job->data);
  return result != NULL;
}

void
hb_job_cancel (HbJob *job)
{
  g_return_if_fail (job);
  g_mutex_lock (&job->mutex);
  forget (job);
  g_mutex_unlock (&job->mutex);
}

gboolean
hb_job_is_busy (HbJob *job)
{
  gboolean busy;

  g_return_val_if_fail (job, FALSE);
  g_mutex_lock (&job->mutex);
  busy = is_busy (job) || job->result;
  g_mutex_unlock (&job->mutex);
  return busy;
}

void
hb_job_stand_back (void)
{
#ifdef __linux__
  /* There a priority is that of one thread, and those that it begins have it too. */
  (void) setpriority (PRIO_PROCESS, 0, 10);
#endif
}
