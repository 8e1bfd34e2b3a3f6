/* shared.c - pieces of other walls that are seen where walls meet */
#include "bond/shared.h"

#include "model/plan.h"

/* Whether the wall stops in that course, for the other to run through. */
static gboolean
stops (const Meeting *meeting, int which, const Wall *wall, const Course *course)
{
  const Tee *tee;

  if (plan_ends_there (meeting, which))
    return end_stops (&wall->ends[meeting->side[which]], course->number, course->bottom);
  tee = wall_tee (wall, meeting->at[which]);
  return tee != NULL && tee_stops (tee, course->number, course->bottom);
}

static gboolean
reaches (const Piece *piece, Length from, Length to)
{
  return piece->x < to && piece->x + piece->length > from;
}

/* The piece of a course that is seen in the square from .. to: at the wall's right end the last in
 * it, else the first. FALSE: there is none. */
static gboolean
seen_piece (const Layout *layout, gint32 number, Length from, Length to, gboolean last, guint *out)
{
  gboolean found = FALSE;

  for (guint c = 0; c < layout->courses->len; c++)
    {
      const Course *course = layout_course (layout, c);

      if (course->number != number)
        continue;
      for (gint32 i = course->first; i < course->first + course->n_pieces && (last || !found); i++)
        if (reaches (layout_piece (layout, (guint) i), from, to))
          {
            *out = (guint) i;
            found = TRUE;
          }
    }
  return found;
}

static void
add_meeting (const Project *project, Layout *const *layouts, const Meeting *meeting, int which,
             GArray *shown)
{
  const Wall *wall = project_wall_at (project, meeting->wall[which]);
  const guint other = meeting->wall[1 - which];
  const Layout *own = layouts[meeting->wall[which]], *its = layouts[other];
  const Length own_thickness = project_block (project, wall->block)->thickness;
  const Length from = meeting->at[1 - which];
  const gboolean last
      = plan_ends_there (meeting, 1 - which) && meeting->side[1 - which] == SIDE_RIGHT;

  for (guint c = 0; own != NULL && its != NULL && c < own->courses->len; c++)
    {
      const Course *course = layout_course (own, c);
      SharedPiece shared = { .course = course->number, .wall = other };

      if (!stops (meeting, which, wall, course)
          || !seen_piece (its, shared.course, from, from + own_thickness, last, &shared.piece))
        continue;
      shared.x = meeting->at[which];
      shared.length = project_block (project, project_wall_at (project, other)->block)->thickness;
      g_array_append_val (shown, shared);
    }
}

GArray *
shared_pieces (const Project *project, Layout *const *layouts, guint wall)
{
  GArray *shown = g_array_new (FALSE, FALSE, sizeof (SharedPiece));
  g_autoptr (GArray) meetings = NULL;

  if (!project_wall_at (project, wall)->place.given)
    return shown;
  meetings = plan_meetings_of (project, wall);
  for (guint i = 0; i < meetings->len; i++)
    {
      const Meeting *meeting = &g_array_index (meetings, Meeting, i);

      if (meeting->kind != MEET_WRONG)
        add_meeting (project, layouts, meeting, meeting->wall[0] == wall ? 0 : 1, shown);
    }
  return shown;
}
