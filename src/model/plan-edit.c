/* plan-edit.c - what a hand does to a building in plan, as edits of all the walls it concerns */
#include "model/plan-edit.h"

#include <glib/gi18n-lib.h>

#include "model/plan-edit-private.h"

/* ---- how a meeting is made ---- */

gboolean
plan_meeting_between (const Project *project, WallId a, WallId b, Meeting *out)
{
  const int first = project_wall_index (project, a), second = project_wall_index (project, b);
  g_autoptr (GArray) meetings = NULL;

  if (first < 0 || second < 0)
    return FALSE;
  meetings = plan_meetings_of (project, (guint) first);
  for (guint i = 0; i < meetings->len; i++)
    {
      const Meeting *meeting = &g_array_index (meetings, Meeting, i);

      if ((meeting->wall[0] == (guint) first && meeting->wall[1] == (guint) second)
          || (meeting->wall[0] == (guint) second && meeting->wall[1] == (guint) first))
        {
          *out = *meeting;
          return TRUE;
        }
    }
  return FALSE;
}

/* ---- ties ---- */

int
plan_butted (const Meeting *meeting)
{
  return meeting->kind == MEET_WRONG            ? -1
         : meeting->made == MADE_FIRST_THROUGH  ? 1
         : meeting->made == MADE_SECOND_THROUGH ? 0
                                                : -1;
}

/* Where a wall says how it is tied at a meeting, in a wall that the caller may change; NULL: it
 * says nothing of it. */
static Ties *
ties_in (Wall *wall, const Meeting *meeting, int which)
{
  if (plan_ends_there (meeting, which))
    return &wall->ends[meeting->side[which]].ties;
  for (guint i = 0; i < wall->tees->len; i++)
    if (wall_tee_at (wall, i)->x == meeting->at[which])
      return &g_array_index (wall->tees, Tee, i).ties;
  return NULL;
}

const Ties *
plan_ties (const Project *project, const Meeting *meeting)
{
  const int which = plan_butted (meeting);
  const Ties *ties = which < 0 ? NULL
                               : ties_in ((Wall *) project_wall_at (project, meeting->wall[which]),
                                          meeting, which);

  return ties && ties->given ? ties : NULL;
}

static Laying
laying_of (const Project *project, const Meeting *meeting, int which)
{
  const Wall *wall = project_wall_at (project, meeting->wall[which]);

  return laying_resolve (&wall->laying, project_block (project, wall->block));
}

gboolean
plan_is_level (const Project *project, const Meeting *meeting)
{
  const Laying a = laying_of (project, meeting, 0), b = laying_of (project, meeting, 1);
  const Wall *first = project_wall_at (project, meeting->wall[0]);
  const Wall *second = project_wall_at (project, meeting->wall[1]);

  return a.bed == b.bed && a.first_bed == b.first_bed
         && project_block (project, first->block)->height
                == project_block (project, second->block)->height;
}

/* Of that wall. */
static Ties
usual_of (const Project *project, const Meeting *meeting, int which)
{
  const Wall *wall = project_wall_at (project, meeting->wall[which]);
  const Laying laying = laying_of (project, meeting, which);

  return ties_default (project_block (project, wall->block), laying.bed,
                       plan_is_level (project, meeting));
}

Ties
plan_usual_ties (const Project *project, const Meeting *meeting)
{
  return usual_of (project, meeting, MAX (plan_butted (meeting), 0));
}

Edit *
plan_ties_edit (const Project *project, const Meeting *meeting, const Ties *ties)
{
  const int which = plan_butted (meeting);
  g_autoptr (GPtrArray) walls = wall_list_new ();
  Wall *wall = wall_copy (project_wall_at (project, meeting->wall[which]));

  g_ptr_array_add (walls, wall);
  *ties_in (wall, meeting, which) = *ties;
  return edit_walls (walls);
}

/* ---- how it is made ---- */

/* Ties go from one wall to the other when the one that stops is turned. */
static void
keep_ties (const Project *project, const Meeting *meeting, MeetMade made, const GPtrArray *walls)
{
  Meeting next = *meeting;
  const Ties *had = plan_ties (project, meeting);
  int which;
  Ties *ties;

  next.made = made;
  which = plan_butted (&next);
  ties = which < 0 ? NULL : ties_in (g_ptr_array_index (walls, which), meeting, which);
  if (ties)
    *ties = had ? *had : usual_of (project, meeting, which);
}

Edit *
plan_make_edit (const Project *project, const Meeting *meeting, MeetMade made)
{
  g_autoptr (GPtrArray) walls = wall_list_new ();

  for (int i = 0; i < 2; i++)
    g_ptr_array_add (walls, wall_copy (project_wall_at (project, meeting->wall[i])));
  plan_make (meeting, made, g_ptr_array_index (walls, 0),
             project_thickness (project, meeting->wall[0]), g_ptr_array_index (walls, 1),
             project_thickness (project, meeting->wall[1]));
  keep_ties (project, meeting, made, walls);
  return edit_walls (walls);
}

/* ---- pushing ---- */

/* 1: the outer face of the one looks the way that the other runs; -1: the other way. */
static int
along_outside (const Wall *pushed, const Wall *other)
{
  const int east = runs_north (pushed->place.runs), north = -runs_east (pushed->place.runs);

  return east * runs_east (other->place.runs) + north * runs_north (other->place.runs);
}

/* A wall longer by that much at one end; what is in it stays where it stands. */
static void
lengthen (Wall *wall, Side side, Length by)
{
  if (side == SIDE_LEFT)
    wall_shift (wall, by);
  wall_lengthen (wall, side, by);
}

static void
move_tee (Wall *wall, Length from, Length by)
{
  for (guint i = 0; i < wall->tees->len; i++)
    if (wall_tee_at (wall, i)->x == from)
      {
        g_array_index (wall->tees, Tee, i).x += by;
        return;
      }
}

void
_plan_give (Wall *wall, const Meeting *meeting, int which, Length by)
{
  if (!plan_ends_there (meeting, which))
    move_tee (wall, meeting->at[which], by);
  else
    lengthen (wall, meeting->side[which], meeting->side[which] == SIDE_RIGHT ? by : -by);
}

/* The other wall of a meeting, as it is once the wall has moved. */
static Wall *
follow (const Project *project, const Meeting *meeting, int which, const Wall *pushed, Length by)
{
  Wall *other = wall_copy (project_wall_at (project, meeting->wall[which]));
  const Length moved = along_outside (pushed, other) * by;

  _plan_give (other, meeting, which, moved);
  return other;
}

static GPtrArray *
pushed_walls (const Project *project, guint index, Length by)
{
  GPtrArray *walls = wall_list_new ();
  const Wall *wall = project_wall_at (project, index);
  g_autoptr (GArray) meetings = plan_meetings_of (project, index);
  Wall *moved = wall_copy (wall);

  moved->place.x += by * runs_north (wall->place.runs);
  moved->place.y -= by * runs_east (wall->place.runs);
  g_ptr_array_add (walls, moved);
  for (guint i = 0; i < meetings->len; i++)
    {
      const Meeting *meeting = &g_array_index (meetings, Meeting, i);
      const int which = meeting->wall[0] == index ? 1 : 0;

      if (meeting->kind != MEET_WRONG && meeting->wall[1 - which] == index)
        g_ptr_array_add (walls, follow (project, meeting, which, wall, by));
    }
  return walls;
}

/* ---- what a push may not do ---- */

static gboolean
refuse (GError **error, const char *format, const Wall *a, const Wall *b)
{
  g_set_error (error, MODEL_ERROR, MODEL_ERROR_REFUSED, format, wall_called (a), wall_called (b));
  return FALSE;
}

static const Meeting *
same_pair (const GArray *meetings, const Meeting *meeting)
{
  for (guint i = 0; i < meetings->len; i++)
    {
      const Meeting *other = &g_array_index (meetings, Meeting, i);

      if (MIN (other->wall[0], other->wall[1]) == MIN (meeting->wall[0], meeting->wall[1])
          && MAX (other->wall[0], other->wall[1]) == MAX (meeting->wall[0], meeting->wall[1]))
        return other;
    }
  return NULL;
}

/* Meetings stay, and none becomes wrong. */
static gboolean
keeps_meetings (const Project *before, const Project *after, GError **error)
{
  g_autoptr (GArray) had = plan_meetings (before);
  g_autoptr (GArray) has = plan_meetings (after);

  for (guint i = 0; i < had->len; i++)
    {
      const Meeting *meeting = &g_array_index (had, Meeting, i);

      if (meeting->kind != MEET_WRONG && !same_pair (has, meeting))
        return refuse (error, _ ("%s and %s would no longer meet."),
                       project_wall_at (before, meeting->wall[0]),
                       project_wall_at (before, meeting->wall[1]));
    }
  for (guint i = 0; i < has->len; i++)
    {
      const Meeting *meeting = &g_array_index (has, Meeting, i);
      const Meeting *old = same_pair (had, meeting);

      if (meeting->kind == MEET_WRONG && (!old || old->kind != MEET_WRONG))
        return refuse (error, _ ("%s and %s would stand in each other’s way."),
                       project_wall_at (after, meeting->wall[0]),
                       project_wall_at (after, meeting->wall[1]));
    }
  return TRUE;
}

/* A wall that is turned inside out has no length at all; one with too little has a fault of its
 * own. */
static gboolean
have_length (const GPtrArray *walls, GError **error)
{
  for (guint i = 0; i < walls->len; i++)
    {
      const Wall *wall = g_ptr_array_index (walls, i);

      if (wall->length <= 0 || wall_planned_length (wall) <= 0)
        return refuse (error, _ ("%s has no room left when %s goes there."), wall,
                       g_ptr_array_index (walls, 0));
    }
  return TRUE;
}

/* The project with these walls in it, right or wrong. */
static Project *
with_walls (const Project *project, const GPtrArray *walls)
{
  Project *next = project_copy (project);

  for (guint i = 0; i < walls->len; i++)
    {
      const Wall *wall = g_ptr_array_index (walls, i);
      gpointer *place
          = &g_ptr_array_index (next->walls, (guint) project_wall_index (project, wall->id));

      wall_unref (*place);
      *place = wall_ref (wall);
    }
  return next;
}

Edit *
_plan_checked (const Project *project, const GPtrArray *walls, GError **error)
{
  g_autoptr (Project) moved = NULL;
  g_autoptr (Edit) edit = NULL;
  g_autoptr (Project) next = NULL;

  if (!have_length (walls, error))
    return NULL;
  moved = with_walls (project, walls);
  if (!keeps_meetings (project, moved, error))
    return NULL;
  edit = edit_walls (walls);
  next = project_edit (project, edit, error);
  return next ? g_steal_pointer (&edit) : NULL;
}

Edit *
_plan_missing (GError **error)
{
  g_set_error_literal (error, MODEL_ERROR, MODEL_ERROR_REFUSED,
                       _ ("This wall stands nowhere in plan."));
  return NULL;
}

/* Nothing that a plan has room for is farther. */
#define FARTHEST (LENGTH_MAX / 2)

Length
_plan_near (Length by)
{
  return CLAMP (by, -FARTHEST, FARTHEST);
}

Edit *
plan_push (const Project *project, WallId wall, Length by, GError **error)
{
  const int index = project_wall_index (project, wall);
  g_autoptr (GPtrArray) walls = NULL;

  if (index < 0 || !project_wall_at (project, (guint) index)->place.given)
    return _plan_missing (error);
  walls = pushed_walls (project, (guint) index, _plan_near (by));
  return _plan_checked (project, walls, error);
}

/* ---- an end that is pulled ---- */

/* The wall that is met at that end; NULL: none. */
static const Wall *
met_at (const Project *project, guint wall, Side side)
{
  g_autoptr (GArray) meetings = plan_meetings_of (project, wall);

  for (guint i = 0; i < meetings->len; i++)
    {
      const Meeting *meeting = &g_array_index (meetings, Meeting, i);

      for (int k = 0; k < 2; k++)
        if (meeting->wall[k] == wall && meeting->kind != MEET_WRONG && plan_ends_there (meeting, k)
            && meeting->side[k] == side)
          return project_wall_at (project, meeting->wall[1 - k]);
    }
  return NULL;
}

/* The wall as it is to be: drawn longer, it was planned longer, too. */
static Edit *
resized (const Wall *now, const Wall *wall)
{
  g_autoptr (Wall) next = wall_copy (wall);

  if (now && next->built && wall_planned_length (now) == wall_planned_length (wall))
    next->built->planned_length += wall->length - now->length;
  return edit_set_wall (next);
}

Edit *
plan_resize (const Project *project, const Wall *wall, Side side, GError **error)
{
  const int index = project_wall_index (project, wall->id);
  const Wall *now = index >= 0 ? project_wall_at (project, (guint) index) : NULL;
  const Wall *met = now && now->place.given ? met_at (project, (guint) index, side) : NULL;
  Length out;

  if (!met || wall->length == now->length)
    return resized (now, wall);
  out = along_outside (met, now) * (wall->length - now->length);
  return plan_push (project, met->id, side == SIDE_RIGHT ? out : -out, error);
}

/* ---- partitions ---- */

/* Whether a wall lies across the strip from `from` to `to`, all of it within its length. */
static gboolean
spans (const PlanBox *box, gboolean north, gint64 from, gint64 to)
{
  return north ? box->x0 <= from && to <= box->x1 : box->y0 <= from && to <= box->y1;
}

/* The nearest wall before (`sign` -1) or behind a place that runs across the strip; NULL: none. */
static const Wall *
nearest (const Project *project, gboolean north, gint64 from, gint64 to, gint64 at, int sign,
         PlanBox *out)
{
  const Wall *best = NULL;

  for (guint i = 0; i < project->walls->len; i++)
    {
      const Wall *wall = project_wall_at (project, i);
      const gboolean across = runs_east (wall->place.runs) != 0;
      PlanBox box;
      gint64 low, high;

      if (!wall->place.given || across != north)
        continue;
      box = plan_box (wall, project_thickness (project, i));
      low = north ? box.y0 : box.x0;
      high = north ? box.y1 : box.x1;
      if (!spans (&box, north, from, to) || (sign < 0 ? high > at : low < at))
        continue;
      if (!best
          || (sign < 0 ? high > (north ? out->y1 : out->x1) : low < (north ? out->y0 : out->x0)))
        {
          best = wall;
          *out = box;
        }
    }
  return best;
}

static Wall *
no_wall (GError **error)
{
  g_set_error_literal (error, MODEL_ERROR, MODEL_ERROR_REFUSED,
                       _ ("A partition runs from one wall to another: there is none on both sides "
                          "here."));
  return NULL;
}

Wall *
plan_partition (const Project *project, Runs runs, gint64 x, gint64 y, const Block *block,
                GError **error)
{
  const gboolean north = runs == RUNS_NORTH || runs == RUNS_SOUTH;
  const gint64 from = north ? x : y, to = from + block->thickness, at = north ? y : x;
  PlanBox before, behind;
  const Wall *first = nearest (project, north, from, to, at, -1, &before);
  const Wall *second = nearest (project, north, from, to, at, 1, &behind);
  gint64 length;
  Wall *wall;

  if (!first || !second)
    return no_wall (error);
  length = north ? behind.y1 - before.y0 : behind.x1 - before.x0;
  wall = wall_new ();
  wall->block = block->id;
  wall->height = first->height;
  wall->length = (Length) length;
  wall->place = north ? (PlanPlace){ TRUE, (Length) to, (Length) before.y0, RUNS_NORTH }
                      : (PlanPlace){ TRUE, (Length) before.x0, (Length) from, RUNS_EAST };
  return wall;
}

static gint
by_place (gconstpointer a, gconstpointer b)
{
  const Length one = *(const Length *) a, other = *(const Length *) b;

  return (one > other) - (one < other);
}

/* The middle of the longest stretch between the walls that meet it. */
static Length
clear_middle (const Project *project, guint index)
{
  const Wall *wall = project_wall_at (project, index);
  g_autoptr (GArray) meetings = plan_meetings_of (project, index);
  g_autoptr (GArray) at = g_array_new (FALSE, FALSE, sizeof (Length));
  const Length end = wall_planned_length (wall);
  Length edge = 0, from = 0, to = 0;

  for (guint i = 0; i < meetings->len; i++)
    for (int k = 0; k < 2; k++)
      if (g_array_index (meetings, Meeting, i).wall[k] == index)
        g_array_append_val (at, g_array_index (meetings, Meeting, i).at[k]);
  g_array_append_val (at, end);
  g_array_sort (at, by_place);
  for (guint i = 0; i < at->len; i++)
    {
      const Length left = g_array_index (at, Length, i);

      if (left - edge > to - from)
        {
          from = edge;
          to = left;
        }
      edge = MAX (edge, left + project_thickness (project, index));
    }
  return (from + to) / 2;
}

Wall *
plan_partition_from (const Project *project, WallId id, const Block *block, GError **error)
{
  const int index = project_wall_index (project, id);
  const Wall *wall = index >= 0 ? project_wall_at (project, (guint) index) : NULL;
  gint64 along, x, y;
  gboolean east;
  PlanBox box;

  if (!wall || !wall->place.given)
    {
      _plan_missing (error);
      return NULL;
    }
  east = runs_east (wall->place.runs) != 0;
  along = clear_middle (project, (guint) index);
  box = plan_box (wall, project_thickness (project, (guint) index));
  x = wall->place.x + along * runs_east (wall->place.runs);
  y = wall->place.y + along * runs_north (wall->place.runs);
  if (east)
    return plan_partition (project, RUNS_NORTH, x - block->thickness / 2,
                           wall->place.runs == RUNS_EAST ? box.y1 : box.y0, block, error);
  return plan_partition (project, RUNS_EAST, wall->place.runs == RUNS_NORTH ? box.x0 : box.x1,
                         y - block->thickness / 2, block, error);
}

/* ---- the room beside a partition ---- */

/* Where along it a wall's own thickness or another's lies: its edge nearest to a place on one side,
 * in the wall's own direction. */
static Length
next_edge (const Project *project, const GArray *meetings, guint host, guint not, Length at,
           gboolean rightwards, WallId *other)
{
  Length edge = rightwards ? wall_planned_length (project_wall_at (project, host)) : 0;

  *other = (WallId){ 0 };
  for (guint i = 0; i < meetings->len; i++)
    {
      const Meeting *meeting = &g_array_index (meetings, Meeting, i);
      const int which = meeting->wall[0] == host ? 0 : 1;
      const Length left = meeting->at[which];
      const Length right = left + project_thickness (project, meeting->wall[1 - which]);

      if (meeting->kind == MEET_WRONG || meeting->wall[which] != host
          || meeting->wall[1 - which] == not )
        continue;
      if (rightwards ? left >= at && left < edge : right <= at && right > edge)
        {
          edge = rightwards ? left : right;
          *other = project_wall_at (project, meeting->wall[1 - which])->id;
        }
    }
  return edge;
}

gboolean
plan_room (const Project *project, WallId id, Length clear[2], WallId other[2])
{
  const int index = project_wall_index (project, id);
  const Wall *wall = index >= 0 ? project_wall_at (project, (guint) index) : NULL;
  g_autoptr (GArray) meetings = wall ? plan_meetings_of (project, (guint) index) : NULL;

  for (guint i = 0; wall && i < meetings->len; i++)
    {
      const Meeting *meeting = &g_array_index (meetings, Meeting, i);
      g_autoptr (GArray) of_host = NULL;
      const Wall *host;
      int outside;
      Length left, right;

      if (meeting->kind != MEET_TEE || meeting->wall[0] != (guint) index)
        continue;
      host = project_wall_at (project, meeting->wall[1]);
      of_host = plan_meetings_of (project, meeting->wall[1]);
      left = meeting->at[1];
      right = left + project_thickness (project, (guint) index);
      outside = along_outside (wall, host) > 0 ? 0 : 1;
      clear[outside] = next_edge (project, of_host, meeting->wall[1], (guint) index, right, TRUE,
                                  &other[outside])
                       - right;
      clear[1 - outside] = left
                           - next_edge (project, of_host, meeting->wall[1], (guint) index, left,
                                        FALSE, &other[1 - outside]);
      return TRUE;
    }
  return FALSE;
}

Edit *
plan_set_room (const Project *project, WallId wall, int side, Length clear, GError **error)
{
  Length now[2];
  WallId other[2];

  if (!plan_room (project, wall, now, other))
    {
      _plan_missing (error);
      return NULL;
    }
  return plan_push (project, wall, side == 0 ? now[0] - clear : clear - now[1], error);
}
