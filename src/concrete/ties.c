/* ties.c - ties of butted walls, course by course */
#include "concrete/ties.h"

#include "bond/gauge.h"

typedef struct
{
  const Wall *wall;
  const Block *block;
  Laying laying;
  gint32 n_courses;
  GArray *rows; /* TieRow */
} Work;

/* Whether there is masonry beside the face, over and under a bed at that height. */
static gboolean
is_masonry (const Wall *wall, Length x, gboolean right, Length z)
{
  const Side side = right ? SIDE_RIGHT : SIDE_LEFT;

  if (z >= wall_top_at (wall, x, side) || z <= wall_foot_at (wall, x, side))
    return FALSE;
  for (guint i = 0; i < wall->openings->len; i++)
    {
      const Opening *opening = wall_opening_at (wall, i);
      const gboolean beside = right ? opening->x <= x && x < opening_right (opening)
                                    : opening->x < x && x <= opening_right (opening);

      if (beside && opening->sill <= z && z <= opening_head (opening))
        return FALSE;
    }
  return TRUE;
}

/* `up_to`: where the other wall ends; 0: it does not end below. */
static void
add_face (Work *work, const Ties *ties, Length up_to, Length x, gboolean right)
{
  for (gint32 course = ties->every; course < work->n_courses; course += ties->every)
    {
      const TieRow row = { course,     gauge_top (work->wall, work->block, &work->laying, course),
                           x,          right,
                           ties->kind, ties->abreast };

      if ((up_to == 0 || row.z < up_to) && is_masonry (work->wall, x, right, row.z))
        g_array_append_val (work->rows, row);
    }
}

static gint
by_place (gconstpointer a, gconstpointer b)
{
  const TieRow *p = a, *q = b;

  if (p->course != q->course)
    return p->course < q->course ? -1 : 1;
  return (p->x > q->x) - (p->x < q->x);
}

GArray *
ties_of_wall (const Wall *wall, const Block *block)
{
  Work work = { .wall = wall, .block = block };
  const End *left = &wall->ends[SIDE_LEFT], *right = &wall->ends[SIDE_RIGHT];

  work.laying = laying_resolve (&wall->laying, block);
  work.n_courses = gauge_n_courses (wall, block, &work.laying);
  work.rows = g_array_new (FALSE, FALSE, sizeof (TieRow));
  if (left->ret > 0 && left->through == THROUGH_ALL && left->ties.given)
    add_face (&work, &left->ties, left->up_to, left->ret, TRUE);
  for (guint i = 0; i < wall->tees->len; i++)
    {
      const Tee *tee = wall_tee_at (wall, i);

      if (tee->through != THROUGH_ALL || !tee->ties.given)
        continue;
      if (tee->x > 0)
        add_face (&work, &tee->ties, tee->up_to, tee->x, FALSE);
      if (tee_right (tee) < wall->length)
        add_face (&work, &tee->ties, tee->up_to, tee_right (tee), TRUE);
    }
  if (right->ret > 0 && right->through == THROUGH_ALL && right->ties.given)
    add_face (&work, &right->ties, right->up_to, wall->length - right->ret, FALSE);
  g_array_sort (work.rows, by_place);
  return work.rows;
}

/* ---- in the wall that runs through ---- */

/* Whether a row of the butted wall is at that meeting: at one of the faces of the square. */
static gboolean
is_at (const TieRow *row, const Meeting *meeting, int which, Length through_thickness)
{
  return row->x == meeting->at[which] || row->x == meeting->at[which] + through_thickness;
}

static void
add_ends (const Project *project, const Meeting *meeting, int butted, GArray *ends)
{
  const Wall *wall = project_wall_at (project, meeting->wall[butted]);
  const Wall *through = project_wall_at (project, meeting->wall[1 - butted]);
  const Block *block = project_block (project, wall->block);
  const Block *of_through = project_block (project, through->block);
  const Laying laying = laying_resolve (&through->laying, of_through);
  const gint32 n_courses = gauge_n_courses (through, of_through, &laying);
  g_autoptr (GArray) rows = ties_of_wall (wall, block);

  for (guint i = 0; i < rows->len; i++)
    {
      const TieRow *row = &g_array_index (rows, TieRow, i);
      TieEnd end = { wall->id,         0,         row->z,      meeting->at[1 - butted],
                     block->thickness, row->kind, row->abreast };

      if (row->z >= wall_top_lowest (through, end.x, end.x + end.width)
          || !is_at (row, meeting, butted, of_through->thickness))
        continue;
      end.course
          = CLAMP (gauge_nearest_top (through, of_through, &laying, row->z), 1, MAX (n_courses, 1));
      g_array_append_val (ends, end);
    }
}

static gint
by_bed (gconstpointer a, gconstpointer b)
{
  const TieEnd *p = a, *q = b;

  if (p->course != q->course)
    return p->course < q->course ? -1 : 1;
  if (p->x != q->x)
    return p->x < q->x ? -1 : 1;
  return (p->z > q->z) - (p->z < q->z);
}

GArray *
ties_into_wall (const Project *project, guint wall)
{
  GArray *ends = g_array_new (FALSE, FALSE, sizeof (TieEnd));
  g_autoptr (GArray) meetings = NULL;

  if (!project_wall_at (project, wall)->place.given)
    return ends;
  meetings = plan_meetings_of (project, wall);
  for (guint i = 0; i < meetings->len; i++)
    {
      const Meeting *meeting = &g_array_index (meetings, Meeting, i);
      const gboolean first = meeting->made == MADE_FIRST_THROUGH;

      if (meeting->kind != MEET_WRONG && (first || meeting->made == MADE_SECOND_THROUGH)
          && meeting->wall[first ? 0 : 1] == wall)
        add_ends (project, meeting, first ? 1 : 0, ends);
    }
  g_array_sort (ends, by_bed);
  return ends;
}

gint32
ties_count (const GArray *rows)
{
  gint32 n = 0;

  for (guint i = 0; i < rows->len; i++)
    n += g_array_index (rows, TieRow, i).abreast;
  return n;
}
