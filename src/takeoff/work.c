/* work.c - the work that laid walls are: hours by course, and what is heaviest */
#include "takeoff/work.h"

#include <glib/gi18n-lib.h>

#include "takeoff/day-plan.h"
#include "takeoff/joints.h"
#include "takeoff/pallets.h"
#include "takeoff/takeoff.h"

#define MM2_PER_M2 1e6
#define MM_PER_M 1e3
#define MINUTES_PER_HOUR 60.0

/* --- cuts --- */

/* Whether the edge from p to q lies along the box of its piece. */
static gboolean
is_along_box (const Piece *piece, const LayPoint *p, const LayPoint *q)
{
  return (p->x == q->x && (p->x == piece->x || p->x == piece->x + piece->length))
         || (p->z == q->z && (p->z == piece->bottom || p->z == piece->bottom + piece->height));
}

gint32
work_cuts (const Layout *layout, const Piece *piece, const Block *block)
{
  gint32 cuts = (piece->length < block->length) + (piece->height < block->height);

  for (gint32 i = 0; piece->outline >= 0 && i < piece->n_outline; i++)
    {
      const gint32 next = (i + 1) % piece->n_outline;

      cuts += !is_along_box (piece, &g_array_index (layout->points, LayPoint, piece->outline + i),
                             &g_array_index (layout->points, LayPoint, piece->outline + next));
    }
  return cuts;
}

/* --- hours --- */

static double
laying_hours (const WorkRates *rates, const WorkCourse *course)
{
  return rates->minutes_a_block > 0 ? course->pieces * rates->minutes_a_block / MINUTES_PER_HOUR
                                    : course->area * rates->hours_a_m2;
}

static WorkCourse
reckon_course (const Layout *layout, const Course *course, const Block *block,
               const WorkRates *rates)
{
  WorkCourse work = { .number = course->number,
                      .bottom = course->bottom,
                      .top = course->top,
                      .pieces = course->n_pieces };

  for (gint32 i = 0; i < course->n_pieces; i++)
    {
      const Piece *piece = layout_piece (layout, (guint) (course->first + i));

      work.cuts += work_cuts (layout, piece, block);
      work.area += layout_piece_area (layout, piece) / MM2_PER_M2;
      work.mass += takeoff_piece_mass (layout, piece, block) * HANDLING_MOISTURE;
    }
  work.laying = laying_hours (rates, &work);
  work.sawing = work.cuts * rates->minutes_a_cut / MINUTES_PER_HOUR;
  return work;
}

static void
add_course (WorkCourse *sum, const WorkCourse *course)
{
  sum->pieces += course->pieces;
  sum->cuts += course->cuts;
  sum->area += course->area;
  sum->mass += course->mass;
  sum->laying += course->laying;
  sum->sawing += course->sawing;
  sum->levelling += course->levelling;
}

static double
levelling_hours (const Wall *wall, const Layout *layout, const Block *block, const WorkRates *rates)
{
  const Laying laying = laying_resolve (&wall->laying, block);
  const Joints joints = joints_of (wall, block, &laying, layout, FALSE);

  return (double) (joints.levelling + joints.on_steps) / LENGTH_PER_MM / MM_PER_M
         * rates->minutes_a_metre / MINUTES_PER_HOUR;
}

/* --- handling --- */

const char *
work_handling_text (double mass)
{
  if (mass > HANDLING_BY_HAND)
    return _ ("over 25 kg: not by hand; use a crane or grab (DGUV Information 201-015)");
  if (mass > HANDLING_ALONE)
    return _ ("over 20 kg: not again and again by one person (HSE/CONIAC sheet 37)");
  return _ ("within 20 kg");
}

/* --- one wall --- */

static void
find_heaviest (WorkWall *work, const Layout *layout, const Block *block)
{
  work->heaviest = -1;
  for (guint i = 0; i < layout->pieces->len; i++)
    {
      const double mass
          = takeoff_piece_mass (layout, layout_piece (layout, i), block) * HANDLING_MOISTURE;

      if (work->heaviest >= 0 && mass <= work->mass)
        continue;
      work->heaviest = (gint32) i;
      work->mass = mass;
    }
}

static void
work_wall_free (gpointer data)
{
  WorkWall *wall = data;

  g_array_unref (wall->courses);
  g_free (wall);
}

static WorkWall *
reckon_wall (const Wall *wall, const Layout *layout, const Block *block, const WorkRates *rates)
{
  WorkWall *work = g_new0 (WorkWall, 1);

  work->courses = g_array_new (FALSE, FALSE, sizeof (WorkCourse));
  for (guint i = 0; i < layout->courses->len; i++)
    {
      WorkCourse course = reckon_course (layout, layout_course (layout, i), block, rates);

      if (i == 0)
        course.levelling = levelling_hours (wall, layout, block, rates);
      add_course (&work->sum, &course);
      g_array_append_val (work->courses, course);
    }
  find_heaviest (work, layout, block);
  return work;
}

/* --- all --- */

Work *
work_new (const Project *project, Layout *const *layouts, const WorkRates *rates, const gint *stop)
{
  g_autoptr (Work) work = g_new0 (Work, 1);

  work->rates = *rates;
  work->walls = g_ptr_array_new_with_free_func (work_wall_free);
  work->days = g_array_new (FALSE, FALSE, sizeof (WorkDay));
  work->stints = g_array_new (FALSE, FALSE, sizeof (WorkStint));
  work->blocks = g_new0 (WorkBlocks, project->blocks->len + 1);
  work->pallets = g_array_new (FALSE, FALSE, sizeof (WorkPallet));
  for (guint i = 0; i < project->walls->len; i++)
    {
      const Wall *wall = project_wall_at (project, i);
      WorkWall *reckoned
          = reckon_wall (wall, layouts[i], project_block (project, wall->block), rates);

      g_ptr_array_add (work->walls, reckoned);
      work->hours += work_course_hours (&reckoned->sum);
    }
  day_plan (work);
  if (!pallets_set_down (work, project, layouts, stop))
    return NULL;
  return g_steal_pointer (&work);
}

void
work_free (Work *work)
{
  if (work == NULL)
    return;
  g_ptr_array_unref (work->walls);
  g_array_unref (work->days);
  g_array_unref (work->stints);
  g_array_unref (work->pallets);
  g_free (work->blocks);
  g_free (work);
}
