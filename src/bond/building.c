/* building.c - walls that meet, laid together: which of two runs through in the odd courses
 *
 * Each wall's cost hangs on the turns of its own meetings. First every entry of its table is a
 * bound, which is cheap. The least sum over all walls is found exactly, the walls of its turns are
 * laid and their entries made true, and so on, until all walls of the least sum are laid: no other
 * turns can have less, since theirs have a bound that is no less. */
#include "bond/building.h"

#include "bond/lay.h"

/* Meetings of one wall, and those that the sum has open at a time, that are looked at together. */
#define MOST_OF_A_WALL 8
#define MOST_OPEN 14

typedef struct
{
  gint32 breaches, cuts, changes;
} Sum;

typedef struct
{
  guint wall;                     /* in the project */
  guint n;                        /* of its bonded meetings */
  guint meetings[MOST_OF_A_WALL]; /* in Turning.meetings */
  Sum *costs,
      *bounds; /* by turns: bit i for meetings[i], set: first runs through in even courses */
  gboolean *laid;
} Member;

typedef struct
{
  const Project *project;
  const gint *stop;
  GArray *meetings;   /* Meeting */
  GPtrArray *of_wall; /* by wall: GArray of guint, its meetings */
  GArray *members;    /* Member, walls in the order of the sum */
  gboolean *free;     /* by meeting: its turn may be chosen */
  gboolean *even;     /* its turn */
  gboolean cut_short; /* some meetings keep their turns, for there are too many of them */
  guint n_laid;
} Turning;

static const Meeting *
meeting_at (const Turning *turning, guint i)
{
  return &g_array_index (turning->meetings, Meeting, i);
}

static Sum
sum_of (Sum a, Sum b)
{
  return (Sum){ a.breaches + b.breaches, a.cuts + b.cuts, a.changes + b.changes };
}

static gboolean
is_less (const Sum *a, const Sum *b)
{
  if (a->breaches != b->breaches)
    return a->breaches < b->breaches;
  return a->cuts != b->cuts ? a->cuts < b->cuts : a->changes < b->changes;
}

static gboolean
is_stopped (const Turning *turning)
{
  return turning->stop != NULL && g_atomic_int_get (turning->stop) != 0;
}

/* --- the tables --- */

/* The wall with turns as the bits say. */
static Wall *
turned (const Turning *turning, const Member *member, guint bits)
{
  Wall *wall = wall_copy (project_wall_at (turning->project, member->wall));

  for (guint i = 0; i < member->n; i++)
    {
      const Meeting *meeting = meeting_at (turning, member->meetings[i]);
      int which = meeting->wall[0] == member->wall ? 0 : 1;

      plan_say (meeting, which, bits >> i & 1 ? MADE_FIRST_EVEN : MADE_FIRST_ODD, wall,
                project_thickness (turning->project, meeting->wall[1 - which]));
    }
  return wall;
}

/* A change is counted at the first wall of its meeting. */
static gint32
changes_of (const Turning *turning, const Member *member, guint bits)
{
  gint32 changes = 0;

  for (guint i = 0; i < member->n; i++)
    {
      const Meeting *meeting = meeting_at (turning, member->meetings[i]);

      changes += meeting->wall[0] == member->wall
                 && (bits >> i & 1) != (meeting->made == MADE_FIRST_EVEN);
    }
  return changes;
}

/* FALSE when stopped. */
static gboolean
fill_bounds (Turning *turning, Member *member)
{
  const Project *project = turning->project;
  const Block *block = project_block (project, project_wall_at (project, member->wall)->block);

  member->costs = g_new0 (Sum, 1u << member->n);
  member->bounds = g_new0 (Sum, 1u << member->n);
  member->laid = g_new0 (gboolean, 1u << member->n);
  for (guint bits = 0; bits < 1u << member->n; bits++)
    {
      g_autoptr (Wall) wall = turned (turning, member, bits);
      LayBound bound = lay_bound (wall, block);

      if (is_stopped (turning))
        return FALSE;
      member->bounds[bits]
          = (Sum){ bound.breaches, bound.cuts, changes_of (turning, member, bits) };
      member->costs[bits] = member->bounds[bits];
    }
  return TRUE;
}

static Sum
larger (Sum a, Sum b)
{
  return is_less (&a, &b) ? b : a;
}

/* FALSE when stopped. */
static gboolean
lay_entry (Turning *turning, Member *member, guint bits)
{
  const Project *project = turning->project;
  const Block *block = project_block (project, project_wall_at (project, member->wall)->block);
  g_autoptr (Wall) wall = turned (turning, member, bits);
  g_autoptr (Layout) layout = lay_wall (wall, block, turning->stop);
  const Proof *proof = layout != NULL ? &layout->proof : NULL;
  gint32 changes = member->costs[bits].changes;

  if (layout == NULL)
    return FALSE;
  member->laid[bits] = TRUE;
  member->costs[bits] = (Sum){ proof->breaches, proof->cuts, changes };
  if (proof->breaches == proof->breaches_at_least)
    member->bounds[bits]
        = larger (member->bounds[bits], (Sum){ proof->breaches, proof->cuts_at_least, changes });
  turning->n_laid++;
  return TRUE;
}

/* --- the least sum --- */

/* What one step of the sum leaves behind: the meetings that are open after it, and for each of
 * their turns the turns of all that were open in it. */
typedef struct
{
  guint n_all, n_open;
  guint all[MOST_OPEN + MOST_OF_A_WALL]; /* meetings */
  guint open[MOST_OPEN];
  Sum *sums;   /* by turns of `open` */
  guint *from; /* turns of `all` that gave the sum */
} Step;

static int
place_in (const guint *list, guint n, guint value)
{
  for (guint i = 0; i < n; i++)
    if (list[i] == value)
      return (int) i;
  return -1;
}

static gboolean
is_open_after (const Turning *turning, const gboolean *summed, guint meeting)
{
  const Meeting *at = meeting_at (turning, meeting);

  return !summed[at->wall[0]] || !summed[at->wall[1]];
}

/* FALSE when more meetings would be open at once than are looked at. */
static gboolean
list_meetings (const Turning *turning, const Member *member, const Step *last,
               const gboolean *summed, Step *step)
{
  *step = (Step){ 0 };
  for (guint i = 0; last != NULL && i < last->n_open; i++)
    step->all[step->n_all++] = last->open[i];
  for (guint i = 0; i < member->n; i++)
    if (place_in (step->all, step->n_all, member->meetings[i]) < 0)
      step->all[step->n_all++] = member->meetings[i];
  for (guint i = 0; i < step->n_all; i++)
    if (is_open_after (turning, summed, step->all[i]))
      {
        if (step->n_open == MOST_OPEN)
          return FALSE;
        step->open[step->n_open++] = step->all[i];
      }
  return TRUE;
}

/* The bits of `all` that belong to a list of some of them. */
static guint
bits_of (const Step *step, guint bits, const guint *list, guint n)
{
  guint out = 0;

  for (guint i = 0; i < n; i++)
    out |= (bits >> place_in (step->all, step->n_all, list[i]) & 1) << i;
  return out;
}

static void
sum_step (const Member *member, const Step *last, const Sum *table, Step *step)
{
  step->sums = g_new (Sum, 1u << step->n_open);
  step->from = g_new (guint, 1u << step->n_open);
  for (guint i = 0; i < 1u << step->n_open; i++)
    step->sums[i] = (Sum){ G_MAXINT32, G_MAXINT32, G_MAXINT32 };
  for (guint bits = 0; bits < 1u << step->n_all; bits++)
    {
      guint open = bits_of (step, bits, step->open, step->n_open);
      Sum sum = table[bits_of (step, bits, member->meetings, member->n)];

      if (last != NULL)
        sum = sum_of (sum, last->sums[bits_of (step, bits, last->open, last->n_open)]);
      if (is_less (&sum, &step->sums[open]))
        {
          step->sums[open] = sum;
          step->from[open] = bits;
        }
    }
}

static void
steps_free (Step *steps, guint n)
{
  for (guint i = 0; i < n; i++)
    {
      g_free (steps[i].sums);
      g_free (steps[i].from);
    }
  g_free (steps);
}

/* The least sum of costs or bounds over all walls; its turns go to `even`, where not NULL. */
static Sum
least_sum (const Turning *turning, gboolean of_bounds, gboolean *even)
{
  g_autofree gboolean *summed = g_new0 (gboolean, turning->project->walls->len);
  guint n = turning->members->len, open = 0;
  Step *steps = g_new0 (Step, n);
  Sum least = { 0, 0, 0 };

  for (guint i = 0; i < n; i++)
    {
      const Member *member = &g_array_index (turning->members, Member, i);
      const Step *last = i > 0 ? &steps[i - 1] : NULL;

      summed[member->wall] = TRUE;
      list_meetings (turning, member, last, summed, &steps[i]);
      sum_step (member, last, of_bounds ? member->bounds : member->costs, &steps[i]);
    }
  if (n > 0)
    least = steps[n - 1].sums[0];
  for (guint i = n; even != NULL && i-- > 0;)
    {
      guint bits = steps[i].from[open];

      for (guint k = 0; k < steps[i].n_all; k++)
        even[steps[i].all[k]] = bits >> k & 1;
      if (i == 0)
        break;
      open = bits_of (&steps[i], bits, steps[i - 1].open, steps[i - 1].n_open);
    }
  steps_free (steps, n);
  return least;
}

/* --- which walls, in which order --- */

static gboolean
is_bonded (const Meeting *meeting)
{
  return meeting->kind != MEET_WRONG && meeting->made <= MADE_FIRST_EVEN;
}

/* Where one of them stands, the turn is taken. */
static gboolean
may_turn (const Project *project, const Meeting *meeting)
{
  for (int i = 0; i < 2; i++)
    if (wall_standing (project_wall_at (project, meeting->wall[i])) > 0)
      return FALSE;
  return is_bonded (meeting);
}

/* The wall's meetings that are to be chosen; those over the most keep their turns. */
static Member
member_of (Turning *turning, guint wall)
{
  Member member = { .wall = wall };
  const GArray *own = g_ptr_array_index (turning->of_wall, wall);

  for (guint k = 0; k < own->len; k++)
    {
      guint i = g_array_index (own, guint, k);

      if (!turning->free[i])
        continue;
      if (member.n < MOST_OF_A_WALL)
        member.meetings[member.n++] = i;
      else
        {
          turning->free[i] = FALSE;
          turning->cut_short = TRUE;
        }
    }
  return member;
}

/* How many meetings more are open when the wall is summed up next. */
static int
opens (const Turning *turning, guint wall, const gboolean *summed)
{
  const GArray *own = g_ptr_array_index (turning->of_wall, wall);
  int opens = 0;

  for (guint k = 0; k < own->len; k++)
    {
      guint i = g_array_index (own, guint, k);
      const Meeting *meeting = meeting_at (turning, i);

      if (!turning->free[i])
        continue;
      opens += summed[meeting->wall[meeting->wall[0] == wall ? 1 : 0]] ? -1 : 1;
    }
  return opens;
}

/* The walls that have a turn to choose, each where it opens the fewest meetings: few stay open. */
static void
order_walls (Turning *turning)
{
  guint n = turning->project->walls->len;
  g_autofree gboolean *summed = g_new0 (gboolean, n);
  g_autofree gboolean *begun = g_new0 (gboolean, n);

  for (;;)
    {
      int least = G_MAXINT;
      guint next = n;
      Member member;

      for (guint i = 0; i < n; i++)
        {
          /* A wall beside those that are summed up comes before one that begins a new heap. */
          int cost = summed[i] ? G_MAXINT : opens (turning, i, summed) + (begun[i] ? 0 : 1000);

          if (cost < least)
            {
              least = cost;
              next = i;
            }
        }
      if (next == n)
        return;
      summed[next] = TRUE;
      member = member_of (turning, next);
      for (guint i = 0; i < member.n; i++)
        for (int k = 0; k < 2; k++)
          begun[meeting_at (turning, member.meetings[i])->wall[k]] = TRUE;
      g_array_append_val (turning->members, member);
    }
}

/* Meetings too many to be open at once keep their turns. */
static void
limit_open (Turning *turning)
{
  g_autofree gboolean *summed = g_new0 (gboolean, turning->project->walls->len);
  Step last = { 0 }, step;

  for (guint i = 0; i < turning->members->len; i++)
    {
      Member *member = &g_array_index (turning->members, Member, i);

      *member = member_of (turning, member->wall);
      summed[member->wall] = TRUE;
      while (!list_meetings (turning, member, i > 0 ? &last : NULL, summed, &step))
        {
          turning->free[member->meetings[member->n - 1]] = FALSE;
          turning->cut_short = TRUE;
          *member = member_of (turning, member->wall);
        }
      last = step;
    }
  /* What lost its freedom at a later wall is out at the earlier one, too. */
  for (guint i = 0; i < turning->members->len; i++)
    {
      Member *member = &g_array_index (turning->members, Member, i);

      *member = member_of (turning, member->wall);
    }
}

static void
member_clear (gpointer data)
{
  Member *member = data;

  g_free (member->costs);
  g_free (member->bounds);
  g_free (member->laid);
}

/* --- the answer --- */

static guint
bits_now (const Member *member, const gboolean *even)
{
  guint bits = 0;

  for (guint i = 0; i < member->n && i < MOST_OF_A_WALL; i++)
    bits |= (even[member->meetings[i]] ? 1u : 0u) << i;
  return bits;
}

/* Lays what the turns ask for and was not laid; *all: nothing was left. FALSE when stopped. */
static gboolean
lay_turns (Turning *turning, const gboolean *even, gboolean *all)
{
  *all = TRUE;
  for (guint i = 0; i < turning->members->len; i++)
    {
      Member *member = &g_array_index (turning->members, Member, i);
      guint bits = bits_now (member, even);

      if (member->laid[bits])
        continue;
      *all = FALSE;
      if (!lay_entry (turning, member, bits))
        return FALSE;
    }
  return TRUE;
}

static Sum
sum_now (const Turning *turning, const gboolean *even)
{
  Sum sum = { 0, 0, 0 };

  for (guint i = 0; i < turning->members->len; i++)
    {
      const Member *member = &g_array_index (turning->members, Member, i);

      sum = sum_of (sum, member->costs[bits_now (member, even)]);
    }
  return sum;
}

/* FALSE when stopped. */
static gboolean
find_turns (Turning *turning, Building *building)
{
  Sum sum;
  gboolean all;

  for (guint i = 0; i < turning->members->len; i++)
    if (!fill_bounds (turning, &g_array_index (turning->members, Member, i)))
      return FALSE;
  if (!lay_turns (turning, turning->even, &all))
    return FALSE;
  sum = sum_now (turning, turning->even);
  building->now_breaches = sum.breaches;
  building->now_cuts = sum.cuts;
  do
    {
      sum = least_sum (turning, FALSE, turning->even);
      if (!lay_turns (turning, turning->even, &all))
        return FALSE;
    }
  while (!all);
  building->breaches = sum.breaches;
  building->cuts = sum.cuts;
  building->changed = (guint) sum.changes;
  sum = least_sum (turning, TRUE, NULL);
  building->breaches_at_least = sum.breaches;
  building->cuts_at_least = sum.cuts;
  building->proven
      = !turning->cut_short && building->breaches == sum.breaches && building->cuts == sum.cuts;
  return TRUE;
}

static void
set_made (Turning *turning)
{
  for (guint i = 0; i < turning->meetings->len; i++)
    if (turning->free[i])
      g_array_index (turning->meetings, Meeting, i).made
          = turning->even[i] ? MADE_FIRST_EVEN : MADE_FIRST_ODD;
}

static void
list_of_walls (Turning *turning)
{
  turning->of_wall = g_ptr_array_new_with_free_func ((GDestroyNotify) g_array_unref);
  for (guint i = 0; i < turning->project->walls->len; i++)
    g_ptr_array_add (turning->of_wall, g_array_new (FALSE, FALSE, sizeof (guint)));
  for (guint i = 0; i < turning->meetings->len; i++)
    for (int k = 0; k < 2; k++)
      g_array_append_val (
          (GArray *) g_ptr_array_index (turning->of_wall, meeting_at (turning, i)->wall[k]), i);
}

Building *
building_turns (const Project *project, const gint *stop)
{
  GArray *meetings = plan_meetings (project);
  Turning turning = { .project = project, .stop = stop, .meetings = meetings };
  Building *building = g_new0 (Building, 1);
  gboolean found;

  building->meetings = meetings;
  turning.free = g_new0 (gboolean, meetings->len);
  turning.even = g_new0 (gboolean, meetings->len);
  for (guint i = 0; i < meetings->len; i++)
    {
      turning.free[i] = may_turn (project, meeting_at (&turning, i));
      turning.even[i] = meeting_at (&turning, i)->made == MADE_FIRST_EVEN;
    }
  turning.members = g_array_new (FALSE, FALSE, sizeof (Member));
  g_array_set_clear_func (turning.members, member_clear);
  list_of_walls (&turning);
  order_walls (&turning);
  limit_open (&turning);
  found = find_turns (&turning, building);
  if (found)
    set_made (&turning);
  building->laid = turning.n_laid;
  g_array_unref (turning.members);
  g_ptr_array_unref (turning.of_wall);
  g_free (turning.free);
  g_free (turning.even);
  if (!found)
    g_clear_pointer (&building, building_free);
  return building;
}

void
building_free (Building *building)
{
  if (building == NULL)
    return;
  g_array_unref (building->meetings);
  g_free (building);
}

GPtrArray *
building_walls (const Project *project, const Building *building)
{
  GPtrArray *walls = wall_list_new ();

  for (guint i = 0; i < project->walls->len; i++)
    {
      const Wall *old = project_wall_at (project, i);
      Wall *wall = wall_copy (old);

      for (guint k = 0; k < building->meetings->len; k++)
        {
          const Meeting *meeting = &g_array_index (building->meetings, Meeting, k);

          for (int which = 0; which < 2; which++)
            if (meeting->wall[which] == i && is_bonded (meeting))
              plan_say (meeting, which, meeting->made, wall,
                        project_thickness (project, meeting->wall[1 - which]));
        }
      if (wall_equal (wall, old))
        wall_unref (wall);
      else
        g_ptr_array_add (walls, wall);
    }
  return walls;
}
