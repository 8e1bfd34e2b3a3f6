/* crew.c - tasks of one kind on several threads at a time */
#include "advice/crew.h"

typedef struct
{
  CrewTask task;
  gpointer data;
  guint n;
  gint next; /* atomic: the next task to begin */
  gint end;  /* atomic: no further task is to be begun */
} Crew;

static gpointer
work (gpointer data)
{
  Crew *crew = data;

  while (!g_atomic_int_get (&crew->end))
    {
      guint i = (guint) g_atomic_int_add (&crew->next, 1);

      if (i >= crew->n)
        break;
      if (!crew->task (i, crew->data))
        g_atomic_int_set (&crew->end, 1);
    }
  return NULL;
}

gboolean
crew_run (guint n, guint threads, CrewTask task, gpointer data)
{
  Crew crew = { .task = task, .data = data, .n = n };
  g_autoptr (GPtrArray) others = g_ptr_array_new ();

  /* A thread that cannot be had is done without. */
  for (guint i = 1; i < MIN (threads, n); i++)
    {
      GThread *thread = g_thread_try_new ("crew", work, &crew, NULL);

      if (thread != NULL)
        g_ptr_array_add (others, thread);
    }
  work (&crew);
  for (guint i = 0; i < others->len; i++)
    g_thread_join (g_ptr_array_index (others, i));
  return !crew.end;
}
