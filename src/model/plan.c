/* plan.c - walls in plan: where they stand, where they meet, and how each meeting is made */
#include "model/plan.h"

/* --- where walls stand --- */

static gboolean
runs_along_x (const Wall *wall)
{
  return runs_east (wall->place.runs) != 0;
}

PlanBox
plan_box (const Wall *wall, Length thickness)
{
  const PlanPlace *place = &wall->place;
  gint64 x = place->x, y = place->y, l = wall_planned_length (wall), t = thickness;

  switch (place->runs)
    {
    case RUNS_EAST:
      return (PlanBox){ x, y, x + l, y + t };
    case RUNS_NORTH:
      return (PlanBox){ x - t, y, x, y + l };
    case RUNS_WEST:
      return (PlanBox){ x - l, y - t, x, y };
    case RUNS_SOUTH:
    default:
      return (PlanBox){ x, y - l, x + t, y };
    }
}

/* Where a box that the wall covers begins along it, from its left end. */
static Length
along (const Wall *wall, const PlanBox *box)
{
  switch (wall->place.runs)
    {
    case RUNS_EAST:
      return (Length) (box->x0 - wall->place.x);
    case RUNS_NORTH:
      return (Length) (box->y0 - wall->place.y);
    case RUNS_WEST:
      return (Length) (wall->place.x - box->x1);
    case RUNS_SOUTH:
    default:
      return (Length) (wall->place.y - box->y1);
    }
}

/* --- where they meet --- */

typedef struct
{
  const Wall *wall;
  guint index; /* in the project */
  Length thickness;
  PlanBox box;
} Standing;

static gint
by_x0 (gconstpointer a, gconstpointer b)
{
  const Standing *p = a, *q = b;

  if (p->box.x0 != q->box.x0)
    return p->box.x0 < q->box.x0 ? -1 : 1;
  return (p->index > q->index) - (p->index < q->index);
}

static GArray *
find_standing (const Project *project)
{
  GArray *all = g_array_new (FALSE, FALSE, sizeof (Standing));

  for (guint i = 0; i < project->walls->len; i++)
    {
      const Wall *wall = project_wall_at (project, i);
      const Block *block = project_block (project, wall->block);
      Standing standing = { wall, i, block != NULL ? block->thickness : 0, { 0, 0, 0, 0 } };

      if (!wall->place.given || block == NULL)
        continue;
      standing.box = plan_box (wall, block->thickness);
      g_array_append_val (all, standing);
    }
  g_array_sort (all, by_x0);
  return all;
}

static gboolean
shared_box (const PlanBox *a, const PlanBox *b, PlanBox *out)
{
  *out
      = (PlanBox){ MAX (a->x0, b->x0), MAX (a->y0, b->y0), MIN (a->x1, b->x1), MIN (a->y1, b->y1) };
  return out->x0 < out->x1 && out->y0 < out->y1;
}

static gboolean
is_at_end (const Wall *wall, Length at, Length width, Side *side)
{
  *side = at == 0 ? SIDE_LEFT : SIDE_RIGHT;
  return at == 0 || at + width == wall_planned_length (wall);
}

/* What they share is as wide along each as the other is thick. */
static gboolean
shares_square (const Standing *a, const Standing *b, const PlanBox *box)
{
  gint64 dx = box->x1 - box->x0, dy = box->y1 - box->y0;

  if (runs_along_x (a->wall) == runs_along_x (b->wall))
    return FALSE;
  return runs_along_x (a->wall) ? dx == b->thickness && dy == a->thickness
                                : dx == a->thickness && dy == b->thickness;
}

static void
swap_walls (Meeting *meeting)
{
  Meeting old = *meeting;

  for (int i = 0; i < 2; i++)
    {
      meeting->wall[i] = old.wall[1 - i];
      meeting->side[i] = old.side[1 - i];
      meeting->at[i] = old.at[1 - i];
    }
}

/* What a wall says at a meeting. */
typedef struct
{
  gboolean says;
  gboolean fits; /* the other wall's thickness is right */
  Through through;
} Said;

static Said
said_by_wall (const Meeting *meeting, int which, const Wall *wall, Length other)
{
  const Tee *tee;

  if (plan_ends_there (meeting, which))
    {
      const End *end = &wall->ends[meeting->side[which]];

      return (Said){ end->ret > 0, end->ret == other, end->through };
    }
  tee = wall_tee (wall, meeting->at[which]);
  return tee != NULL ? (Said){ TRUE, tee->ret == other, tee->through }
                     : (Said){ FALSE, FALSE, THROUGH_EVEN };
}

/* What one wall means, whatever the other says. */
static MeetMade
meant_by (const Said *said, int which)
{
  if (said->through == THROUGH_ALL)
    return which == 0 ? MADE_SECOND_THROUGH : MADE_FIRST_THROUGH;
  return (said->through == THROUGH_EVEN) == (which == 0) ? MADE_FIRST_ODD : MADE_FIRST_EVEN;
}

static MeetMade
made_of (const Said said[2])
{
  MeetMade meant[2];

  if (!said[0].says && !said[1].says)
    return MADE_UNSAID;
  for (int i = 0; i < 2; i++)
    {
      if (said[i].says && !said[i].fits)
        return MADE_CONTRARY;
      meant[i] = meant_by (&said[i], i);
    }
  if (said[0].says && said[1].says)
    return meant[0] == meant[1] && meant[0] <= MADE_FIRST_EVEN ? meant[0] : MADE_CONTRARY;
  /* Only a wall that is butted may be alone in saying so. */
  for (int i = 0; i < 2; i++)
    if (said[i].says && said[i].through == THROUGH_ALL)
      return meant[i];
  return MADE_CONTRARY;
}

static Meeting
meeting_of (const Standing *a, const Standing *b, const PlanBox *box)
{
  Meeting meeting = { MEET_WRONG,
                      { a->index, b->index },
                      { SIDE_LEFT, SIDE_LEFT },
                      { along (a->wall, box), along (b->wall, box) },
                      *box,
                      MADE_UNSAID };
  gboolean ends[2];

  if (!shares_square (a, b, box))
    return meeting;
  ends[0] = is_at_end (a->wall, meeting.at[0], b->thickness, &meeting.side[0]);
  ends[1] = is_at_end (b->wall, meeting.at[1], a->thickness, &meeting.side[1]);
  meeting.kind = ends[0] && ends[1] ? MEET_CORNER : ends[0] || ends[1] ? MEET_TEE : MEET_CROSSING;
  if (meeting.kind == MEET_TEE ? ends[1] : meeting.wall[0] > meeting.wall[1])
    {
      swap_walls (&meeting);
      return meeting;
    }
  return meeting;
}

static void
read_made (const Project *project, Meeting *meeting)
{
  Said said[2];

  if (meeting->kind == MEET_WRONG)
    return;
  for (int i = 0; i < 2; i++)
    {
      const Wall *wall = project_wall_at (project, meeting->wall[i]);

      said[i] = said_by_wall (meeting, i, wall, project_thickness (project, meeting->wall[1 - i]));
    }
  meeting->made = made_of (said);
}

static gint
by_wall (gconstpointer a, gconstpointer b)
{
  const Meeting *p = a, *q = b;

  if (p->wall[0] != q->wall[0])
    return p->wall[0] < q->wall[0] ? -1 : 1;
  if (p->at[0] != q->at[0])
    return p->at[0] < q->at[0] ? -1 : 1;
  return (p->wall[1] > q->wall[1]) - (p->wall[1] < q->wall[1]);
}

static gint
by_box (gconstpointer a, gconstpointer b)
{
  const Meeting *p = *(const Meeting *const *) a, *q = *(const Meeting *const *) b;

  return (p->box.x0 > q->box.x0) - (p->box.x0 < q->box.x0);
}

/* A square that three walls share is nobody's: all meetings in it are wrong. */
static void
find_crowds (GArray *meetings)
{
  g_autoptr (GPtrArray) sorted = g_ptr_array_sized_new (meetings->len);

  for (guint i = 0; i < meetings->len; i++)
    g_ptr_array_add (sorted, &g_array_index (meetings, Meeting, i));
  g_ptr_array_sort (sorted, by_box);
  for (guint i = 0; i < sorted->len; i++)
    for (guint k = i + 1; k < sorted->len; k++)
      {
        Meeting *p = g_ptr_array_index (sorted, i), *q = g_ptr_array_index (sorted, k);
        PlanBox box;

        if (q->box.x0 >= p->box.x1)
          break;
        if (shared_box (&p->box, &q->box, &box))
          p->kind = q->kind = MEET_WRONG;
      }
}

static GArray *
find_meetings (const Project *project, const Wall *only)
{
  g_autoptr (GArray) all = find_standing (project);
  GArray *meetings = g_array_new (FALSE, FALSE, sizeof (Meeting));

  for (guint i = 0; i < all->len; i++)
    {
      const Standing *a = &g_array_index (all, Standing, i);

      for (guint k = i + 1; k < all->len; k++)
        {
          const Standing *b = &g_array_index (all, Standing, k);
          PlanBox box;

          if (b->box.x0 >= a->box.x1)
            break;
          if ((only == NULL || a->wall == only || b->wall == only)
              && shared_box (&a->box, &b->box, &box))
            {
              Meeting meeting = meeting_of (a, b, &box);

              g_array_append_val (meetings, meeting);
            }
        }
    }
  g_array_sort (meetings, by_wall);
  find_crowds (meetings);
  for (guint i = 0; i < meetings->len; i++)
    read_made (project, &g_array_index (meetings, Meeting, i));
  return meetings;
}

GArray *
plan_meetings (const Project *project)
{
  return find_meetings (project, NULL);
}

/* A third wall in the square of two meets both of them, so that its crowds are found, too. */
GArray *
plan_meetings_of (const Project *project, guint wall)
{
  return find_meetings (project, project_wall_at (project, wall));
}

/* --- how a meeting is made --- */

/* What the wall has to say: where the other runs through; FALSE: nothing. */
static gboolean
through_for (MeetMade made, int which, Through *out)
{
  switch (made)
    {
    case MADE_FIRST_ODD:
      *out = which == 0 ? THROUGH_EVEN : THROUGH_ODD;
      return TRUE;
    case MADE_FIRST_EVEN:
      *out = which == 0 ? THROUGH_ODD : THROUGH_EVEN;
      return TRUE;
    case MADE_FIRST_THROUGH:
      *out = THROUGH_ALL;
      return which == 1;
    case MADE_SECOND_THROUGH:
      *out = THROUGH_ALL;
      return which == 0;
    case MADE_UNSAID:
    case MADE_CONTRARY:
    default:
      g_assert_not_reached ();
    }
}

static void
say_end (End *end, gboolean says, Length ret, Through through)
{
  end->up_to = says ? end->up_to : 0;
  end->given = end->given || says;
  end->has_return = says;
  end->ret = says ? ret : 0;
  end->through = says ? through : THROUGH_EVEN;
  if (!says)
    end->ties = (Ties){ 0 };
}

static void
say_tee (Wall *wall, gboolean says, Length x, Length ret, Through through)
{
  guint i = 0;

  while (i < wall->tees->len && wall_tee_at (wall, i)->x != x)
    i++;
  if (!says)
    {
      if (i < wall->tees->len)
        g_array_remove_index (wall->tees, i);
      return;
    }
  if (i == wall->tees->len)
    {
      Tee tee = { .x = x, .ret = ret, .through = through };

      g_array_append_val (wall->tees, tee);
      return;
    }
  g_array_index (wall->tees, Tee, i).ret = ret;
  g_array_index (wall->tees, Tee, i).through = through;
}

void
plan_say (const Meeting *meeting, int which, MeetMade made, Wall *wall, Length other)
{
  Through through = THROUGH_EVEN;
  gboolean says = through_for (made, which, &through);

  if (plan_ends_there (meeting, which))
    say_end (&wall->ends[meeting->side[which]], says, other, through);
  else
    say_tee (wall, says, meeting->at[which], other, through);
}

/* Where the other wall ends over the square, if this one goes on; 0: it does not, or both end. */
static Length
up_to_at (const Meeting *meeting, int which, const Wall *wall, Length thickness, const Wall *other,
          Length other_thickness)
{
  const Length own_x = meeting->at[which], its_x = meeting->at[1 - which];
  const Length its = wall_top_highest (other, its_x, its_x + thickness);

  return its < wall_top_highest (wall, own_x, own_x + other_thickness) ? its : 0;
}

static void
say_up_to (const Meeting *meeting, int which, Wall *wall, Length up_to)
{
  if (plan_ends_there (meeting, which))
    {
      End *end = &wall->ends[meeting->side[which]];

      end->up_to = end->has_return ? up_to : 0;
    }
  for (guint i = 0; !plan_ends_there (meeting, which) && i < wall->tees->len; i++)
    if (wall_tee_at (wall, i)->x == meeting->at[which])
      g_array_index (wall->tees, Tee, i).up_to = up_to;
}

void
plan_make (const Meeting *meeting, MeetMade made, Wall *a, Length a_thickness, Wall *b,
           Length b_thickness)
{
  plan_say (meeting, 0, made, a, b_thickness);
  plan_say (meeting, 1, made, b, a_thickness);
  say_up_to (meeting, 0, a, up_to_at (meeting, 0, a, a_thickness, b, b_thickness));
  say_up_to (meeting, 1, b, up_to_at (meeting, 1, b, b_thickness, a, a_thickness));
}

/* --- both sides of every meeting --- */

/* A wall's part in a meeting. */
typedef struct
{
  guint meeting;
  int which;
} Part;

typedef struct
{
  const Project *project;
  GArray *meetings;
  GHashTable *of_wall; /* by id: GArray of Part */
} Known;

typedef struct
{
  const Project *before; /* `was` is of it, once it is asked for */
  Known was, now;
  Wall **walls; /* copies, by place in the project; NULL where it stands nowhere */
} Settling;

static MeetMade
default_made (const Project *project, const Meeting *meeting)
{
  if (meeting->kind == MEET_TEE)
    return MADE_FIRST_EVEN;
  return runs_along_x (project_wall_at (project, meeting->wall[0])) ? MADE_FIRST_ODD
                                                                    : MADE_FIRST_EVEN;
}

MeetMade
plan_meant (const Project *project, const Meeting *meeting, WallId said_by)
{
  int first = 0;

  if (meeting->made == MADE_UNSAID)
    return default_made (project, meeting);
  if (meeting->made != MADE_CONTRARY)
    return meeting->made;
  if (project_wall_at (project, meeting->wall[1])->id.n == said_by.n)
    first = 1;
  for (int i = 0; i < 2; i++)
    {
      int which = (first + i) % 2;
      const Wall *wall = project_wall_at (project, meeting->wall[which]);
      Said said = said_by_wall (meeting, which, wall,
                                project_thickness (project, meeting->wall[1 - which]));

      if (said.says)
        return meant_by (&said, which);
    }
  return default_made (project, meeting);
}

/* A project's meetings, and those of each wall. */
static void
known_init (Known *known, const Project *project)
{
  known->project = project;
  known->meetings = plan_meetings (project);
  known->of_wall = g_hash_table_new_full (NULL, NULL, NULL, (GDestroyNotify) g_array_unref);
  for (guint i = 0; i < known->meetings->len; i++)
    for (int k = 0; k < 2; k++)
      {
        const Meeting *meeting = &g_array_index (known->meetings, Meeting, i);
        gpointer id = GUINT_TO_POINTER (project_wall_at (project, meeting->wall[k])->id.n);
        GArray *own = g_hash_table_lookup (known->of_wall, id);

        if (own == NULL)
          {
            own = g_array_new (FALSE, FALSE, sizeof (Part));
            g_hash_table_insert (known->of_wall, id, own);
          }
        g_array_append_val (own, ((Part[]){ { i, k } })[0]);
      }
}

static void
known_clear (Known *known)
{
  g_array_unref (known->meetings);
  g_hash_table_unref (known->of_wall);
}

/* The wall's part in its next meeting: begin with *at = 0, until NULL. Wrong ones are left out. */
static const Meeting *
next_part (const Known *known, WallId wall, guint *at, int *which)
{
  const GArray *own = g_hash_table_lookup (known->of_wall, GUINT_TO_POINTER (wall.n));

  while (own != NULL && *at < own->len)
    {
      const Part *part = &g_array_index (own, Part, (*at)++);
      const Meeting *meeting = &g_array_index (known->meetings, Meeting, part->meeting);

      *which = part->which;
      if (meeting->kind != MEET_WRONG)
        return meeting;
    }
  return NULL;
}

static gboolean
meets_at_end (const Known *known, WallId wall, Side side)
{
  guint at = 0;
  int which;

  for (const Meeting *meeting; (meeting = next_part (known, wall, &at, &which)) != NULL;)
    if (plan_ends_there (meeting, which) && meeting->side[which] == side)
      return TRUE;
  return FALSE;
}

/* At that place along it, or, where not NULL, in that square of the plan. */
static gboolean
meets_within (const Known *known, WallId wall, Length x, const PlanBox *box)
{
  guint at = 0;
  int which;

  for (const Meeting *meeting; (meeting = next_part (known, wall, &at, &which)) != NULL;)
    if (!plan_ends_there (meeting, which)
        && (meeting->at[which] == x
            || (box != NULL && meeting->box.x0 == box->x0 && meeting->box.y0 == box->y0)))
      return TRUE;
  return FALSE;
}

/* The square of a tee in plan. */
static PlanBox
box_of_tee (const Wall *wall, const Tee *tee, Length thickness)
{
  Wall part = *wall;

  part.length = tee->ret;
  part.built = NULL;
  part.place.x += tee->x * runs_east (wall->place.runs);
  part.place.y += tee->x * runs_north (wall->place.runs);
  return plan_box (&part, thickness);
}

/* Only an end or a tee at which nothing meets asks for it: most edits leave none. */
static const Known *
known_before (Settling *settling)
{
  if (settling->was.meetings == NULL)
    known_init (&settling->was, settling->before);
  return &settling->was;
}

/* Ends and tees that were made by a meeting that is no more. */
static void
free_wall (Settling *settling, guint wall)
{
  Wall *copy = settling->walls[wall];

  for (int side = SIDE_LEFT; side <= SIDE_RIGHT; side++)
    if (copy->ends[side].has_return && !meets_at_end (&settling->now, copy->id, (Side) side)
        && meets_at_end (known_before (settling), copy->id, (Side) side))
      say_end (&copy->ends[side], FALSE, 0, THROUGH_EVEN);
  for (guint i = copy->tees->len; i-- > 0;)
    {
      const Tee *tee = wall_tee_at (copy, i);
      PlanBox box = box_of_tee (copy, tee, project_thickness (settling->now.project, wall));

      if (!meets_within (&settling->now, copy->id, tee->x, NULL)
          && meets_within (known_before (settling), copy->id, tee->x, &box))
        g_array_remove_index (copy->tees, i);
    }
}

static gboolean
stands_in_plan (const Project *project)
{
  for (guint i = 0; i < project->walls->len; i++)
    if (project_wall_at (project, i)->place.given)
      return TRUE;
  return FALSE;
}

GPtrArray *
plan_settled (const Project *before, const Project *next, WallId said_by)
{
  GPtrArray *changed = wall_list_new ();
  Settling settling = { .before = before };

  if (!stands_in_plan (next) && !stands_in_plan (before))
    return changed;
  known_init (&settling.now, next);
  settling.walls = g_new0 (Wall *, next->walls->len);
  for (guint i = 0; i < next->walls->len; i++)
    if (project_wall_at (next, i)->place.given)
      {
        settling.walls[i] = wall_copy (project_wall_at (next, i));
        free_wall (&settling, i);
      }
  for (guint i = 0; i < settling.now.meetings->len; i++)
    {
      const Meeting *meeting = &g_array_index (settling.now.meetings, Meeting, i);
      guint a = meeting->wall[0], b = meeting->wall[1];

      if (meeting->kind != MEET_WRONG)
        plan_make (meeting, plan_meant (next, meeting, said_by), settling.walls[a],
                   project_thickness (next, a), settling.walls[b], project_thickness (next, b));
    }
  for (guint i = 0; i < next->walls->len; i++)
    {
      if (settling.walls[i] == NULL)
        continue;
      if (wall_equal (settling.walls[i], project_wall_at (next, i)))
        wall_unref (settling.walls[i]);
      else
        g_ptr_array_add (changed, settling.walls[i]);
    }
  g_free (settling.walls);
  if (settling.was.meetings != NULL)
    known_clear (&settling.was);
  known_clear (&settling.now);
  return changed;
}
