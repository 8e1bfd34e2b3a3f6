/* job.h - work in a thread of its own: the newest question alone is answered
 *
 * The work gets a value that it owns, and shares nothing. A newer question stops the one under way;
 * an overtaken answer is dropped in silence. Everything but `work` runs in the thread that made
 * the job. */
#pragma once

#include <glib.h>

typedef struct HbJob HbJob;

/* In the worker's thread. `stop` becomes non-zero when the answer is no longer wanted: return soon,
 * with whatever or NULL. NULL does not land. */
typedef gpointer (*HbJobWork) (gpointer input, const gint *stop);
/* In the main context that was the thread's default when the job was made; takes the result. It may
 * start the job again, but not free it. */
typedef void (*HbJobLand) (gpointer result, gpointer data);

HbJob *hb_job_new (const char *name, HbJobWork work, GDestroyNotify free_input, HbJobLand land,
                   GDestroyNotify free_result, gpointer data);
/* Stops what is under way and waits for the thread; nothing lands any more. NULL is nothing. */
void hb_job_free (HbJob *job);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (HbJob, hb_job_free)

/* Takes `input`. */
void hb_job_start (HbJob *job, gpointer input);
/* Waits for the newest answer, `microseconds` at most, and lands it at once; FALSE when it is not
 * there by then (it lands later). A short wait spares the screen a picture that is old. */
gboolean hb_job_wait (HbJob *job, gint64 microseconds);
void hb_job_cancel (HbJob *job);
/* Whether an answer is still to come. */
gboolean hb_job_is_busy (HbJob *job);

/* Called by work that nobody waits for: its thread gives way to those that draw and lay. Once for a
 * thread; where the system knows no such thing nothing happens. */
void hb_job_stand_back (void);
