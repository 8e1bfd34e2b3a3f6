/* jobs.h - many pieces of work at a time, with a line of progress on a terminal */
#pragma once

#include <glib.h>

/* Calls job (i, data) for each i below n, on as many threads as there are processors, and returns
 * when all are done. Each writes its answer to a place of its own, so that their order does not
 * matter. When standard error is a terminal and it takes longer than a moment, a line there says
 * how far it is ("Laying walls: 12 of 40"); it is wiped at the end. */
typedef void (*Job) (guint i, gpointer data);
void jobs_run (guint n, Job job, gpointer data, const char *what);
