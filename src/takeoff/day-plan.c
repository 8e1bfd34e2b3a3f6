/* day-plan.c - which courses of which walls are laid on which day */
#include "takeoff/day-plan.h"

/* Of a course, so that sums of hours do not miss a day's end by their rounding. */
#define NEARLY 1e-9

typedef struct
{
  guint wall;
  const WorkCourse *course;
  double left; /* of it to be laid: 1 .. 0 */
} Task;

typedef struct
{
  Length top, morning; /* height of what is laid: now, and when the day began */
  gint32 from, to;     /* courses laid today; 0: none */
  gboolean rests;      /* it may not rise further today */
} Standing;

typedef struct
{
  Work *work;
  GArray *tasks;       /* Task, in the order in which they are to be laid */
  guint next;          /* before it all are done */
  Standing *standings; /* by wall */
  WorkDay day;
  gboolean begun; /* something is laid today */
} Planner;

static gint
compare_tasks (gconstpointer a, gconstpointer b)
{
  const Task *p = a, *q = b;

  if (p->course->bottom != q->course->bottom)
    return p->course->bottom < q->course->bottom ? -1 : 1;
  if (p->wall != q->wall)
    return p->wall < q->wall ? -1 : 1;
  return p->course->number < q->course->number ? -1 : 1;
}

static GArray *
list_tasks (const Work *work)
{
  GArray *tasks = g_array_new (FALSE, FALSE, sizeof (Task));

  for (guint i = 0; i < work->walls->len; i++)
    for (guint k = 0; k < work_wall (work, i)->courses->len; k++)
      {
        const Task task = { i, &g_array_index (work_wall (work, i)->courses, WorkCourse, k), 1 };

        g_array_append_val (tasks, task);
      }
  g_array_sort (tasks, compare_tasks);
  return tasks;
}

static void
begin_day (Planner *planner)
{
  planner->day = (WorkDay){ .first = planner->work->stints->len };
  planner->begun = FALSE;
  for (guint i = 0; i < planner->work->walls->len; i++)
    {
      Standing *standing = &planner->standings[i];

      standing->morning = standing->top;
      standing->from = standing->to = 0;
      standing->rests = FALSE;
    }
}

static void
end_day (Planner *planner)
{
  Work *work = planner->work;

  for (guint i = 0; i < work->walls->len; i++)
    {
      const Standing *standing = &planner->standings[i];
      const WorkStint stint = { i, standing->from, standing->to, standing->top > WORK_BRACED };

      if (standing->from == 0)
        continue;
      g_array_append_val (work->stints, stint);
      planner->day.n++;
    }
  g_array_append_val (work->days, planner->day);
}

/* Once a course was laid on the wall today, no other is that would lift it too high. */
static gboolean
rises_too_far (const Planner *planner, const Task *task)
{
  const Standing *standing = &planner->standings[task->wall];

  return standing->top > standing->morning
         && task->course->top - standing->morning > planner->work->rates.rise;
}

/* How much of the course today's hours and lifts allow, all of what is left at most. */
static double
share_of (const Planner *planner, const Task *task)
{
  const WorkRates *rates = &planner->work->rates;
  const double hours = rates->gang * rates->hours_a_day - planner->day.hours;
  const double lifts = (double) rates->gang * rates->lifts_a_day - planner->day.lifts;
  double share = task->left;

  if (share * work_course_hours (task->course) > hours)
    share = hours / work_course_hours (task->course);
  if (rates->lifts_a_day > 0 && share * task->course->pieces > lifts)
    share = lifts / task->course->pieces;
  return share > task->left - NEARLY ? task->left : share;
}

static void
lay (Planner *planner, Task *task, double share)
{
  Standing *standing = &planner->standings[task->wall];

  task->left = share < task->left ? task->left - share : 0;
  planner->day.hours += share * work_course_hours (task->course);
  planner->day.lifts += share * task->course->pieces;
  planner->day.mass += share * task->course->mass;
  planner->begun = TRUE;
  if (standing->from == 0)
    standing->from = task->course->number;
  standing->to = task->course->number;
  if (task->left <= 0)
    standing->top = task->course->top;
}

/* FALSE when the day ends with it. */
static gboolean
try_task (Planner *planner, Task *task)
{
  Standing *standing = &planner->standings[task->wall];
  double share;

  standing->rests = standing->rests || rises_too_far (planner, task);
  if (standing->rests)
    return TRUE;
  share = share_of (planner, task);
  if (share >= task->left || !planner->begun)
    lay (planner, task, share);
  return task->left <= 0;
}

static void
plan_day (Planner *planner)
{
  begin_day (planner);
  for (guint i = planner->next; i < planner->tasks->len; i++)
    {
      Task *task = &g_array_index (planner->tasks, Task, i);

      if (task->left > 0 && !try_task (planner, task))
        break;
    }
  end_day (planner);
  while (planner->next < planner->tasks->len
         && g_array_index (planner->tasks, Task, planner->next).left <= 0)
    planner->next++;
}

void
day_plan (Work *work)
{
  g_autoptr (GArray) tasks = list_tasks (work);
  g_autofree Standing *standings = g_new0 (Standing, work->walls->len + 1);
  Planner planner = { .work = work, .tasks = tasks, .standings = standings };

  while (planner.next < tasks->len)
    plan_day (&planner);
}
