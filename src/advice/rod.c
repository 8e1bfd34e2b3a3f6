/* rod.c - the storey rod: tops of courses, and the heights that should meet them */
#include "advice/rod.h"

#include "bond/gauge.h"
#include "bond/stands.h"

/* --- marks --- */

/* Shares what is cut off into strip and mortar. */
static void
set_cut (RodMark *mark, Length left, Length unit)
{
  if (left <= 0 || left >= unit)
    return;
  if (left <= GAUGE_PACKING_MAX)
    mark->pack = left;
  else
    mark->rip = left;
}

/* `upper` is the wall's top there, above which nothing is laid. */
static RodMark
mark_of (const Wall *wall, const Block *block, const Laying *laying, RodKind kind,
         OpeningId opening, Length z, Length upper)
{
  RodMark mark = { kind, opening, z, gauge_course_at (wall, block, laying, z), 0, 0 };
  Length bottom, top;

  if (mark.course == 0)
    return mark;
  bottom = gauge_bottom (wall, block, laying, mark.course);
  top = MIN (gauge_top (wall, block, laying, mark.course), upper);
  set_cut (&mark, kind == ROD_HEAD ? top - z : z - bottom, block->height);
  return mark;
}

static gint
compare_marks (gconstpointer a, gconstpointer b)
{
  const RodMark *p = a, *q = b;

  if (p->z != q->z)
    return p->z < q->z ? -1 : 1;
  if (p->kind != q->kind)
    return p->kind < q->kind ? -1 : 1;
  return (p->opening.n > q->opening.n) - (p->opening.n < q->opening.n);
}

/* Its sill, unless that is the foundation, and its head, unless that is the wall's top. */
static void
add_opening_marks (GArray *marks, const Wall *wall, const Block *block, const Laying *laying,
                   const Opening *opening)
{
  const Length head = opening_head (opening);
  const Length upper = wall_top_lowest (wall, opening->x, opening_right (opening));
  const RodMark low = mark_of (wall, block, laying, ROD_SILL, opening->id, opening->sill, upper);
  const RodMark high = mark_of (wall, block, laying, ROD_HEAD, opening->id, head, upper);

  if (opening->sill > wall_foot_at (wall, opening->x, SIDE_RIGHT))
    g_array_append_val (marks, low);
  if (head < upper)
    g_array_append_val (marks, high);
}

GArray *
rod_marks (const Wall *wall, const Block *block, const Laying *laying)
{
  GArray *marks = g_array_new (FALSE, FALSE, sizeof (RodMark));
  const RodMark top
      = mark_of (wall, block, laying, ROD_TOP, (OpeningId){ 0 }, wall->height, wall->height);

  for (guint i = 0; i < wall->openings->len; i++)
    add_opening_marks (marks, wall, block, laying, wall_opening_at (wall, i));
  if (wall->tops->len == 0)
    g_array_append_val (marks, top);
  g_array_sort (marks, compare_marks);
  return marks;
}

/* --- choices --- */

RodRange
rod_range_usual (void)
{
  return (RodRange){
    .first_bed = { LENGTH_MM (10), LENGTH_MM (40) },
    .first_bed_step = LENGTH_MM (1),
    .bed = { LENGTH_MM (1), LENGTH_MM (3) },
    .bed_step = LENGTH_MM (0.5),
  };
}

static gboolean
is_asked (const Project *project, WallId only, guint i)
{
  return only.n == 0 || project_wall_at (project, i)->id.n == only.n;
}

/* Marks of a wall as they would be; as they are, where `choice` is NULL. */
static GArray *
marks_with (const Project *project, const Wall *wall, const RodChoice *choice)
{
  const Block *block = project_block (project, wall->block);
  Laying laying = laying_resolve (&wall->laying, block);

  if (choice != NULL)
    {
      laying.first_bed = choice->first_bed;
      laying.bed = choice->bed;
    }
  return rod_marks (wall, block, &laying);
}

static void
count_marks (const GArray *marks, RodChoice *choice)
{
  for (guint i = 0; i < marks->len; i++)
    {
      const RodMark *mark = &g_array_index (marks, RodMark, i);

      choice->marks++;
      choice->met += mark->rip == 0;
      choice->ripped += mark->rip;
      choice->packed += mark->pack;
    }
}

/* Those of all walls that are asked for, with `with`; as they are, where that is NULL. */
static void
count_walls (const Project *project, WallId only, const RodChoice *with, RodChoice *choice)
{
  for (guint i = 0; i < project->walls->len; i++)
    if (is_asked (project, only, i))
      {
        g_autoptr (GArray) marks = marks_with (project, project_wall_at (project, i), with);

        count_marks (marks, choice);
      }
}

/* Of the first wall that is asked for. */
static Laying
first_laying (const Project *project, WallId only)
{
  for (guint i = 0; i < project->walls->len; i++)
    {
      const Wall *wall = project_wall_at (project, i);

      if (is_asked (project, only, i))
        return laying_resolve (&wall->laying, project_block (project, wall->block));
    }
  return (Laying){ 0 };
}

RodChoice
rod_now (const Project *project, WallId only)
{
  const Laying laying = first_laying (project, only);
  RodChoice choice = { .first_bed = laying.first_bed, .bed = laying.bed };

  count_walls (project, only, NULL, &choice);
  return choice;
}

static Length
off (Length a, Length b)
{
  return ABS (a - b);
}

static gint
compare_choices (gconstpointer a, gconstpointer b, gpointer now)
{
  const RodChoice *p = a, *q = b;
  const Laying *laying = now;
  Length p_off = off (p->first_bed, laying->first_bed) + off (p->bed, laying->bed);
  Length q_off = off (q->first_bed, laying->first_bed) + off (q->bed, laying->bed);

  if (p->met != q->met)
    return p->met > q->met ? -1 : 1;
  if (p->packed != q->packed)
    return p->packed < q->packed ? -1 : 1;
  if (p_off != q_off)
    return p_off < q_off ? -1 : 1;
  return (p->first_bed > q->first_bed) - (p->first_bed < q->first_bed);
}

/* A step so wide that no more than `most` are taken. */
static Length
wide_enough (const Length span[2], Length step, Length most)
{
  return MAX (step, (span[1] - span[0]) / most + 1);
}

GArray *
rod_choices (const Project *project, WallId only, const RodRange *range, const gint *stop)
{
  GArray *choices = g_array_new (FALSE, FALSE, sizeof (RodChoice));
  Length first_step = wide_enough (range->first_bed, range->first_bed_step, 500);
  Length bed_step = wide_enough (range->bed, range->bed_step, ROD_MOST / 500 - 1);
  Laying now = first_laying (project, only);

  for (Length first = range->first_bed[0]; first <= range->first_bed[1]; first += first_step)
    for (Length bed = range->bed[0]; bed <= range->bed[1] && !(stop && g_atomic_int_get (stop));
         bed += bed_step)
      {
        RodChoice choice = { first, bed, 0, 0, 0, 0 };

        count_walls (project, only, &choice, &choice);
        g_array_append_val (choices, choice);
      }
  g_array_sort_with_data (choices, compare_choices, &now);
  return choices;
}

GArray *
rod_strips (const Project *project, WallId only, const RodChoice *choice)
{
  GArray *strips = g_array_new (FALSE, FALSE, sizeof (RodStrip));

  for (guint i = 0; i < project->walls->len; i++)
    {
      g_autoptr (GArray) marks = NULL;

      if (!is_asked (project, only, i))
        continue;
      marks = marks_with (project, project_wall_at (project, i), choice);
      for (guint k = 0; k < marks->len; k++)
        {
          const RodStrip strip = { i, g_array_index (marks, RodMark, k) };

          if (strip.mark.rip > 0)
            g_array_append_val (strips, strip);
        }
    }
  return strips;
}

Edit *
rod_choose (const Project *project, WallId only, const RodChoice *choice)
{
  g_autoptr (GPtrArray) walls = wall_list_new ();

  for (guint i = 0; i < project->walls->len; i++)
    {
      const Wall *wall = project_wall_at (project, i);
      const Laying now = laying_resolve (&wall->laying, project_block (project, wall->block));
      Wall *next;

      if (!is_asked (project, only, i)
          || (now.first_bed == choice->first_bed && now.bed == choice->bed))
        continue;
      next = wall_copy (wall);
      next->laying.element = TRUE;
      next->laying.given |= LAYING_FIRST_BED | LAYING_BED;
      next->laying.first_bed = choice->first_bed;
      next->laying.bed = choice->bed;
      g_ptr_array_add (walls, next);
    }
  return walls->len > 0 ? edit_walls (walls) : NULL;
}

/* --- heights to gauge --- */

static Length
nearest (Length z, Length low, Length high)
{
  return z - low <= high - z ? low : high;
}

/* The nearest height at which no strip is cut under a sill: the top of a course. */
static Length
sill_to_gauge (const Wall *wall, const Block *block, const Laying *laying, Length sill)
{
  gint32 course = gauge_course_at (wall, block, laying, sill);
  Length low;

  if (course == 0 || sill == gauge_top (wall, block, laying, course))
    return sill;
  low = course > 1 ? gauge_top (wall, block, laying, course - 1)
                   : gauge_bottom (wall, block, laying, 1);
  return nearest (sill, low, gauge_top (wall, block, laying, course));
}

/* Of the wall's top, above which nothing is laid: the top of a course. */
static Length
top_to_gauge (const Wall *wall, const Block *block, const Laying *laying, Length z)
{
  const gint32 course = gauge_course_at (wall, block, laying, z);

  if (course <= 1)
    return course == 1 ? gauge_top (wall, block, laying, 1) : z;
  return nearest (z, gauge_top (wall, block, laying, course - 1),
                  gauge_top (wall, block, laying, course));
}

/* Of a head: the bottom of a course, on which its strip would lie, or the top of one. */
static Length
head_to_gauge (const Wall *wall, const Block *block, const Laying *laying, Length head)
{
  gint32 course = gauge_course_at (wall, block, laying, head);

  if (course == 0 || head >= gauge_top (wall, block, laying, course))
    return head;
  return nearest (head, gauge_bottom (wall, block, laying, course),
                  gauge_top (wall, block, laying, course));
}

Length
rod_gauge_of (const Wall *wall, const Block *block, const RodMark *mark)
{
  const Laying laying = laying_resolve (&wall->laying, block);

  switch (mark->kind)
    {
    case ROD_SILL:
      return sill_to_gauge (wall, block, &laying, mark->z);
    case ROD_HEAD:
      return head_to_gauge (wall, block, &laying, mark->z);
    case ROD_TOP:
    default:
      return top_to_gauge (wall, block, &laying, mark->z);
    }
}

Wall *
rod_mark_to_gauge (const Wall *wall, const Block *block, const RodMark *mark)
{
  const Length to = rod_gauge_of (wall, block, mark);
  g_autoptr (Wall) next = wall_copy (wall);
  Opening *opening = wall_own_opening (next, mark->opening);
  g_autofree char *fault = NULL;

  if (to == mark->z || (mark->kind != ROD_TOP && opening == NULL))
    return NULL;
  if (mark->kind == ROD_TOP)
    next->height = to;
  else
    {
      opening->height += mark->kind == ROD_HEAD ? to - mark->z : mark->z - to;
      opening->sill = mark->kind == ROD_SILL ? to : opening->sill;
    }
  fault = wall_fault (next, block, NULL);
  return fault == NULL && stands_in (wall, next, block) ? g_steal_pointer (&next) : NULL;
}

Wall *
rod_to_gauge (const Wall *wall, const Block *block)
{
  const Laying laying = laying_resolve (&wall->laying, block);
  Wall *next = wall_copy (wall);

  for (guint i = 0; i < next->openings->len; i++)
    {
      Opening *opening = &g_array_index (next->openings, Opening, i);
      Length was[2] = { opening->sill, opening->height };
      Length head = opening_head (opening);
      g_autofree char *fault = NULL;

      if (opening->sill > 0 && !stands_beside (wall, block, opening))
        opening->sill = sill_to_gauge (wall, block, &laying, opening->sill);
      if (head < wall->height)
        head = head_to_gauge (wall, block, &laying, head);
      opening->height = head - opening->sill;
      fault = wall_fault (next, block, NULL);
      if (fault != NULL || !stands_in (wall, next, block))
        {
          opening->sill = was[0];
          opening->height = was[1];
        }
    }
  return next;
}
