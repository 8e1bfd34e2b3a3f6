/* crew.h - tasks of one kind on several threads at a time */
#pragma once

#include <glib.h>

/* Does task `i` and writes its answer to a place of its own. FALSE: no further task is begun. */
typedef gboolean (*CrewTask) (guint i, gpointer data);

/* Calls the task for each i below n, in their order, `threads` at a time, the caller's among them,
 * and returns when all that were begun are done: FALSE when one of them said so. Threads that are
 * begun here have the priority of the caller. */
gboolean crew_run (guint n, guint threads, CrewTask task, gpointer data);
