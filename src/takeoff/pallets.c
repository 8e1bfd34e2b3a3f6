/* pallets.c - how many pallets there are, and where they are set down */
#include "takeoff/pallets.h"

#include <math.h>

#include "takeoff/saw.h"

#define HALF (PALLET_WIDTH / 2)

/* --- how many --- */

static gint32
blocks_a_pallet (const WorkRates *rates, const Block *block)
{
  if (rates->blocks_a_pallet > 0)
    return rates->blocks_a_pallet;
  return (gint32) CLAMP (floor (PALLET_MASS / (block_mass (block) * PALLET_MOISTURE)), 1,
                         G_MAXINT32);
}

static WorkBlocks
count_blocks (const WorkRates *rates, const Block *block, gint32 to_order)
{
  const gint32 a_pallet = blocks_a_pallet (rates, block);

  return (WorkBlocks){ to_order, a_pallet, to_order / a_pallet + (to_order % a_pallet > 0) };
}

/* --- how much lies where along a wall --- */

/* From there on, so much more face is laid on a millimetre of length; less, where it is negative.
 */
typedef struct
{
  double x, change; /* mm, mm2/mm */
} Step;

static gint
compare_steps (gconstpointer a, gconstpointer b)
{
  const Step *p = a, *q = b;

  return (p->x > q->x) - (p->x < q->x);
}

static GArray *
list_steps (const Layout *layout)
{
  GArray *steps = g_array_new (FALSE, FALSE, sizeof (Step));

  for (guint i = 0; i < layout->pieces->len; i++)
    {
      const Piece *piece = layout_piece (layout, i);
      const double a_mm = layout_piece_area (layout, piece) / length_to_mm (piece->length);
      const Step from = { length_to_mm (piece->x), a_mm };
      const Step to = { length_to_mm (piece->x + piece->length), -a_mm };

      g_array_append_val (steps, from);
      g_array_append_val (steps, to);
    }
  g_array_sort (steps, compare_steps);
  return steps;
}

static double
wall_area (const Layout *layout)
{
  double area = 0;

  for (guint i = 0; i < layout->pieces->len; i++)
    area += layout_piece_area (layout, layout_piece (layout, i));
  return area;
}

/* The place up to which so much face is laid, counted from the left, to the millimetre. */
static Length
place_of (const GArray *steps, double area)
{
  double laid = 0, height = 0;

  for (guint i = 0; i + 1 < steps->len; i++)
    {
      const Step *step = &g_array_index (steps, Step, i), *next = step + 1;

      height += step->change;
      if (next->x > step->x && height > 0 && laid + height * (next->x - step->x) >= area)
        return length_from_mm (round (step->x + MAX (0, area - laid) / height));
      laid += MAX (0, height) * (next->x - step->x);
    }
  return steps->len > 0 ? length_from_mm (round (g_array_index (steps, Step, steps->len - 1).x))
                        : 0;
}

/* --- clear of doors, and of each other --- */

typedef struct
{
  Length from, to;
} Blocked;

/* What is walked through: it reaches down to the first course. */
static gboolean
is_way (const Opening *opening, const Layout *layout)
{
  return opening->kind == OPENING_DOOR
         || (layout->courses->len > 0 && opening->sill < layout_course (layout, 0)->top);
}

static GArray *
list_ways (const Wall *wall, const Layout *layout)
{
  GArray *ways = g_array_new (FALSE, FALSE, sizeof (Blocked));

  for (guint i = 0; i < wall->openings->len; i++)
    {
      const Opening *opening = wall_opening_at (wall, i);
      const Blocked way = { opening->x, opening_right (opening) };

      if (is_way (opening, layout))
        g_array_append_val (ways, way);
    }
  return ways;
}

/* What a pallet would stand in; NULL when its place is free. Of several the one that reaches
 * farthest that way. */
static const Blocked *
blocked_at (const GArray *list, guint n, Length x, gboolean leftwards)
{
  const Blocked *found = NULL;

  for (guint i = 0; i < n; i++)
    {
      const Blocked *blocked = &g_array_index (list, Blocked, i);

      if (blocked->from >= x + HALF || blocked->to <= x - HALF)
        continue;
      if (!found || (leftwards ? blocked->from < found->from : blocked->to > found->to))
        found = blocked;
    }
  return found;
}

/* The nearest free place on that side, `x` itself if it is; -1: none within least .. most. */
static Length
free_place (const GArray *list, guint n, Length x, Length least, Length most, gboolean leftwards)
{
  const Blocked *blocked;

  while (x >= least && x <= most && (blocked = blocked_at (list, n, x, leftwards)) != NULL)
    x = leftwards ? blocked->from - HALF : blocked->to + HALF;
  return x >= least && x <= most ? x : -1;
}

/* Beside the first `n` of the list; -1: there is none. */
static Length
nearest_place (const GArray *list, guint n, const Wall *wall, Length wanted)
{
  const Length least = MIN (HALF, wall->length / 2);
  const Length most = wall->length - least;
  const Length x = CLAMP (wanted, least, most);
  const Length left = free_place (list, n, x, least, most, TRUE);
  const Length right = free_place (list, n, x, least, most, FALSE);

  if (left < 0 || right < 0)
    return MAX (left, right);
  return wanted - left <= right - wanted ? left : right;
}

/* `list` has the wall's ways, then the pallets that stand there already. */
static void
set_down (Work *work, WorkPallet pallet, GArray *list, guint n_ways, const Wall *wall,
          Length wanted)
{
  Length x = nearest_place (list, list->len, wall, wanted);
  Blocked own;

  pallet.in_the_way = x < 0;
  if (x < 0)
    x = nearest_place (list, n_ways, wall, wanted);
  pallet.x = x < 0 ? wanted : x;
  own = (Blocked){ pallet.x - HALF, pallet.x + HALF };
  if (!pallet.in_the_way)
    g_array_append_val (list, own);
  g_array_append_val (work->pallets, pallet);
}

/* --- the walls of one kind of block --- */

typedef struct
{
  Work *work;
  const Project *project;
  Layout *const *layouts;
  GPtrArray *taken; /* by wall: GArray of Blocked, ways first */
  guint *n_ways;    /* by wall */
} Yard;

/* Blocks of the first n pallets: whole ones, as equally as may be. */
static gint32
up_to_pallet (const WorkBlocks *blocks, gint32 n)
{
  return (gint32) ((gint64) blocks->blocks * n / blocks->pallets);
}

static void
serve_wall (const Yard *yard, WorkPallet pallet, double before, double area, double a_pallet,
            gint32 *done)
{
  const WorkBlocks *blocks = &yard->work->blocks[pallet.block];
  g_autoptr (GArray) steps = list_steps (yard->layouts[pallet.wall]);

  for (; *done < blocks->pallets && (*done + 0.5) * a_pallet <= before + area; ++*done)
    {
      pallet.blocks = up_to_pallet (blocks, *done + 1) - up_to_pallet (blocks, *done);
      set_down (yard->work, pallet, g_ptr_array_index (yard->taken, pallet.wall),
                yard->n_ways[pallet.wall], project_wall_at (yard->project, pallet.wall),
                place_of (steps, (*done + 0.5) * a_pallet - before));
    }
}

static gboolean
is_of (const Yard *yard, guint wall, guint block)
{
  return project_wall_at (yard->project, wall)->block.n
         == project_block_at (yard->project, block)->id.n;
}

static void
serve_block (const Yard *yard, guint block)
{
  const guint n = yard->project->walls->len;
  const WorkBlocks *blocks = &yard->work->blocks[block];
  double total = 0, before = 0;
  gint32 done = 0;

  for (guint i = 0; i < n; i++)
    total += is_of (yard, i, block) ? wall_area (yard->layouts[i]) : 0;
  for (guint i = 0; i < n && done < blocks->pallets; i++)
    {
      const WorkPallet pallet = { .block = block, .wall = i };
      const double area = is_of (yard, i, block) ? wall_area (yard->layouts[i]) : 0;

      if (area > 0)
        serve_wall (yard, pallet, before, area, total / blocks->pallets, &done);
      before += area;
    }
}

static void
list_all_ways (Yard *yard)
{
  for (guint i = 0; i < yard->project->walls->len; i++)
    {
      GArray *ways = list_ways (project_wall_at (yard->project, i), yard->layouts[i]);

      yard->n_ways[i] = ways->len;
      g_ptr_array_add (yard->taken, ways);
    }
}

static void
free_list (gpointer data)
{
  g_array_unref (data);
}

gboolean
pallets_set_down (Work *work, const Project *project, Layout *const *layouts, const gint *stop)
{
  g_autoptr (GPtrArray) plans = saw_plans_new (project, layouts, NULL, stop);
  g_autoptr (GPtrArray) taken = g_ptr_array_new_with_free_func (free_list);
  g_autofree guint *n_ways = g_new0 (guint, project->walls->len + 1);
  Yard yard = { work, project, layouts, taken, n_ways };

  if (plans == NULL)
    return FALSE;
  list_all_ways (&yard);
  for (guint block = 0; block < project->blocks->len; block++)
    {
      work->blocks[block] = count_blocks (&work->rates, project_block_at (project, block),
                                          saw_plan_to_order (g_ptr_array_index (plans, block)));
      serve_block (&yard, block);
    }
  return TRUE;
}
