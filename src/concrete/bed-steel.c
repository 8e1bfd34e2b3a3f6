/* bed-steel.c - bars in the bed joints: which courses have them, from where to where */
#include "concrete/bed-steel.h"

#include <math.h>

#include "bond/gauge.h"
#include "bond/profile.h"

/* A stretch of a course. */
typedef struct
{
  Length from, to;
} Stretch;

typedef struct
{
  const Wall *wall;
  const Block *block;
  Laying laying;
  Steel steel;
  gint32 n_courses;
} Work;

static Work
work_of (const Wall *wall, const Block *block)
{
  Work work = { .wall = wall, .block = block };

  work.laying = laying_resolve (&wall->laying, block);
  work.steel = wall->steel.given ? wall->steel : steel_default ();
  work.n_courses = gauge_n_courses (wall, block, &work.laying);
  return work;
}

/* --- which courses --- */

/* Height of the bars of a course: its top, the wall's in a ripped one. */
static Length
row_height (const Work *work, gint32 number)
{
  return MIN (gauge_top (work->wall, work->block, &work->laying, number), work->wall->height);
}

/* The nearest course whose top is at the sill or below it; 0 when there is none. */
static gint32
course_under (const Work *work, const Opening *opening)
{
  gint32 number = gauge_nearest_top (work->wall, work->block, &work->laying, opening->sill);

  number = MIN (number, work->n_courses);
  while (number > 0 && row_height (work, number) > opening->sill)
    number--;
  return number;
}

/* Whether a course has pieces over a head: what is left above it is more than a packing. */
static gboolean
runs_over (const Work *work, gint32 number, const Opening *opening)
{
  return row_height (work, number) - opening_head (opening) > GAUGE_PACKING_MAX;
}

/* The lowest course that runs on over the head; 0 when the wall ends before. */
static gint32
course_over (const Work *work, const Opening *opening)
{
  gint32 number
      = gauge_nearest_top (work->wall, work->block, &work->laying, opening_head (opening));

  number = MAX (number, 1);
  while (number <= work->n_courses && !runs_over (work, number, opening))
    number++;
  return number <= work->n_courses ? number : 0;
}

static gboolean
is_beside_opening (const Work *work, gint32 number, const Opening *opening)
{
  return (work->steel.under_sills && course_under (work, opening) == number)
         || (work->steel.over_heads && course_over (work, opening) == number);
}

static gboolean
is_full_by_rule (const Work *work, gint32 number)
{
  return work->steel.every > 0 && number % work->steel.every == 0;
}

static gboolean
has_row_by_rule (const Work *work, gint32 number)
{
  if (is_full_by_rule (work, number))
    return TRUE;
  for (guint i = 0; i < work->wall->openings->len; i++)
    if (is_beside_opening (work, number, wall_opening_at (work->wall, i)))
      return TRUE;
  return FALSE;
}

gboolean
bed_steel_has_row (const Wall *wall, const Block *block, gint32 number)
{
  Work work = work_of (wall, block);
  int by_hand = wall_steel_row (wall, number);

  if (number < 1 || number > work.n_courses || by_hand < 0)
    return FALSE;
  return by_hand > 0 || has_row_by_rule (&work, number);
}

gint32
bed_steel_course_under (const Wall *wall, const Block *block, const Opening *opening)
{
  Work work = work_of (wall, block);

  return course_under (&work, opening);
}

gint32
bed_steel_course_over (const Wall *wall, const Block *block, const Opening *opening)
{
  Work work = work_of (wall, block);

  return course_over (&work, opening);
}

/* --- from where to where --- */

/* Bars lie at the course's top: an opening is in their way when it begins below and leaves no piece
 * of that course above itself that could hold them. */
static gboolean
is_in_the_way (const Work *work, gint32 number, const Opening *opening)
{
  return opening->sill < row_height (work, number) && !runs_over (work, number, opening);
}

static gint
compare_by_from (gconstpointer a, gconstpointer b)
{
  const Stretch *p = a, *q = b;

  return (p->from > q->from) - (p->from < q->from);
}

/* How far from the wall's end bars stop. Through a corner they run to the other wall's outer face;
 * a wall that is butted to another ends there, a joint before it. */
static Length
end_of_bars (const Work *work, gint32 number, Side side)
{
  const End *end = &work->wall->ends[side];
  const Length bottom = gauge_bottom (work->wall, work->block, &work->laying, number);

  if (end->ret == 0 || !reaches_up (end->up_to, bottom))
    return STEEL_END_COVER;
  return end->through == THROUGH_ALL ? end->ret + work->laying.head + STEEL_END_COVER : 0;
}

/* Where the top comes down below the bars. Between two points of it that is one stretch. */
static void
add_slopes (const Work *work, Length height, GArray *barriers)
{
  const Wall *wall = work->wall;

  for (Length x = 0; wall->tops->len > 0 && x < wall->length;)
    {
      const TopLine line = top_line (wall->tops, wall->height, x, SIDE_RIGHT);
      Stretch barrier = { x, MIN (line.x1, wall->length) };

      x = barrier.to;
      if ((line.z0 < height) != (line.z1 < height))
        *(line.z0 < height ? &barrier.to : &barrier.from)
            = CLAMP (top_line_meets (&line, height), barrier.from, barrier.to);
      if ((line.z0 < height || line.z1 < height) && barrier.from < barrier.to)
        g_array_append_val (barriers, barrier);
    }
}

/* Where a step of the footing leaves nothing of the course. */
static void
add_steps (const Work *work, Length height, GArray *barriers)
{
  const Wall *wall = work->wall;

  for (guint i = 0; i < wall->feet->len; i++)
    {
      Stretch barrier = { foot_point (wall->feet, i)->x, wall->length };

      if (i + 1 < wall->feet->len)
        barrier.to = foot_point (wall->feet, i + 1)->x;
      if (height - profile_base (wall, work->block, &work->laying, foot_point (wall->feet, i)->up)
          <= GAUGE_PACKING_MAX)
        g_array_append_val (barriers, barrier);
    }
}

/* What bars of a course cannot pass: where there is none of it, openings, movement joints, and
 * walls to which both parts are butted. */
static GArray *
barriers_of (const Work *work, gint32 number)
{
  const Wall *wall = work->wall;
  GArray *barriers = g_array_new (FALSE, FALSE, sizeof (Stretch));

  for (guint i = 0; i < wall->openings->len; i++)
    {
      const Opening *opening = wall_opening_at (wall, i);
      Stretch barrier = { opening->x, opening_right (opening) };

      if (is_in_the_way (work, number, opening))
        g_array_append_val (barriers, barrier);
    }
  for (guint i = 0; i < wall->tees->len; i++)
    {
      const Tee *tee = wall_tee_at (wall, i);
      Stretch barrier = { tee->x - work->laying.head, tee_right (tee) + work->laying.head };

      if (tee->through == THROUGH_ALL
          && reaches_up (tee->up_to, gauge_bottom (wall, work->block, &work->laying, number)))
        g_array_append_val (barriers, barrier);
    }
  for (guint i = 0; i < wall->movement_joints->len; i++)
    {
      const MovementJoint *joint = wall_movement_joint_at (wall, i);
      Stretch barrier = { joint->x, movement_joint_right (joint) };

      g_array_append_val (barriers, barrier);
    }
  add_slopes (work, row_height (work, number), barriers);
  add_steps (work, row_height (work, number), barriers);
  g_array_sort (barriers, compare_by_from);
  return barriers;
}

/* What these leave free for bars in a course, between free ends, cover taken off. */
static GArray *
free_stretches (const Work *work, gint32 number)
{
  g_autoptr (GArray) barriers = barriers_of (work, number);
  GArray *stretches = g_array_new (FALSE, FALSE, sizeof (Stretch));
  Stretch stretch = { end_of_bars (work, number, SIDE_LEFT), 0 };

  for (guint i = 0; i < barriers->len; i++)
    {
      const Stretch *barrier = &g_array_index (barriers, Stretch, i);

      stretch.to = barrier->from - STEEL_END_COVER;
      if (stretch.to > stretch.from)
        g_array_append_val (stretches, stretch);
      stretch.from = MAX (stretch.from, barrier->to + STEEL_END_COVER);
    }
  stretch.to = work->wall->length - end_of_bars (work, number, SIDE_RIGHT);
  if (stretch.to > stretch.from)
    g_array_append_val (stretches, stretch);
  return stretches;
}

/* Bars along one opening and past it, in the free stretches that it touches. */
static void
want_past (const Work *work, const GArray *room, const Opening *opening, GArray *wanted)
{
  for (guint i = 0; i < room->len; i++)
    {
      Stretch free = g_array_index (room, Stretch, i);

      if (free.from >= opening_right (opening) || free.to <= opening->x)
        continue;
      free.from = MAX (free.from, opening->x - work->steel.past);
      free.to = MIN (free.to, opening_right (opening) + work->steel.past);
      g_array_append_val (wanted, free);
    }
}

static gint
compare_stretches (gconstpointer a, gconstpointer b)
{
  const Stretch *p = a, *q = b;

  if (p->from != q->from)
    return p->from < q->from ? -1 : 1;
  return (p->to > q->to) - (p->to < q->to);
}

static void
add_run (const Work *work, gint32 number, const Stretch *stretch, GArray *runs)
{
  /* A lap of more than half a stock length would gain nothing from a longer bar. */
  Length lap = CLAMP (work->steel.lap, 0, STEEL_STOCK / 2);
  Length length = stretch->to - stretch->from;
  SteelRun run = { .course = number,
                   .from = stretch->from,
                   .to = stretch->to,
                   .bars = work->steel.bars,
                   .diameter = work->steel.diameter };

  if (length > STEEL_STOCK)
    run.n_laps = (length - lap - 1) / (STEEL_STOCK - lap);
  run.bar_length = length + run.n_laps * lap;
  g_array_append_val (runs, run);
}

/* One run for stretches that overlap or meet. */
static void
add_merged (const Work *work, gint32 number, GArray *wanted, GArray *runs)
{
  Stretch run = { 0, 0 };

  g_array_sort (wanted, compare_stretches);
  for (guint i = 0; i < wanted->len; i++)
    {
      const Stretch *stretch = &g_array_index (wanted, Stretch, i);

      if (i > 0 && stretch->from > run.to)
        add_run (work, number, &run, runs);
      if (i == 0 || stretch->from > run.to)
        run = *stretch;
      run.to = MAX (run.to, stretch->to);
    }
  if (wanted->len > 0)
    add_run (work, number, &run, runs);
}

static void
add_row (const Work *work, gint32 number, GArray *runs)
{
  int by_hand = wall_steel_row (work->wall, number);
  g_autoptr (GArray) room = NULL;
  g_autoptr (GArray) wanted = NULL;

  if (by_hand < 0 || (by_hand == 0 && !has_row_by_rule (work, number)))
    return;
  room = free_stretches (work, number);
  if (by_hand > 0 || is_full_by_rule (work, number))
    {
      add_merged (work, number, room, runs);
      return;
    }
  wanted = g_array_new (FALSE, FALSE, sizeof (Stretch));
  for (guint i = 0; i < work->wall->openings->len; i++)
    if (is_beside_opening (work, number, wall_opening_at (work->wall, i)))
      want_past (work, room, wall_opening_at (work->wall, i), wanted);
  add_merged (work, number, wanted, runs);
}

GArray *
bed_steel_runs (const Wall *wall, const Block *block)
{
  Work work = work_of (wall, block);
  GArray *runs = g_array_new (FALSE, TRUE, sizeof (SteelRun));

  if (!wall->steel.given && wall->steel_rows->len == 0)
    return runs;
  for (gint32 number = 1; number <= work.n_courses; number++)
    add_row (&work, number, runs);
  return runs;
}

/* --- by hand --- */

static void
remove_row_by_hand (Wall *wall, gint32 number)
{
  for (guint i = 0; i < wall->steel_rows->len; i++)
    {
      if (g_array_index (wall->steel_rows, SteelRow, i).course != number)
        continue;
      g_array_remove_index (wall->steel_rows, i);
      return;
    }
}

Wall *
bed_steel_toggle (const Wall *wall, const Block *block, gint32 number)
{
  gboolean had = bed_steel_has_row (wall, block, number);
  Wall *next = wall_copy (wall);
  SteelRow row = { .course = number, .omit = had };

  remove_row_by_hand (next, number);
  if (bed_steel_has_row (next, block, number) == had)
    g_array_append_val (next->steel_rows, row);
  return next;
}

/* --- mass --- */

double
bed_steel_mass_per_metre (Length diameter)
{
  double mm = length_to_mm (diameter);
  double mass = G_PI / 4 * mm * mm * 7850e-6;
  double digits = 1;

  /* To three figures, as tables of nominal masses give it. */
  if (mass <= 0)
    return 0;
  while (mass * digits < 99.95)
    digits *= 10;
  return round (mass * digits) / digits;
}
