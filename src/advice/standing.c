/* standing.c - where all openings of a wall stand, and what that costs */
#include "advice/standing.h"

#include "bond/stands.h"

#include "advice/crew.h"

#define MAX_ROUNDS 6
/* A second look may take so many times as long as a first one. */
#define SECOND_LOOK 8

/* --- places --- */

static gint
compare_lengths (gconstpointer a, gconstpointer b)
{
  const Length x = *(const Length *) a, y = *(const Length *) b;

  return (x > y) - (x < y);
}

/* Each step from where it was drawn, and where it is. */
static GArray *
places_of (const Opening *opening, const Wall *wall, Length step)
{
  const Length drawn = opening_drawn_x (opening), reach = opening_may_move (opening);
  GArray *places = g_array_new (FALSE, FALSE, sizeof (Length));
  gboolean has_present = FALSE;

  for (gint64 d = -(reach / step); d <= reach / step; d++)
    {
      const gint64 at = drawn + d * step;
      const Length place = (Length) at;

      if (at < 0 || at + opening->width > wall->length)
        continue;
      has_present = has_present || place == opening->x;
      g_array_append_val (places, place);
    }
  if (!has_present)
    g_array_append_val (places, opening->x);
  g_array_sort (places, compare_lengths);
  return places;
}

static void
free_clear (gpointer data)
{
  g_array_unref (((Free *) data)->at);
}

static void
find_frees (Search *search)
{
  search->frees = g_array_new (FALSE, FALSE, sizeof (Free));
  g_array_set_clear_func (search->frees, free_clear);
  for (guint i = 0; i < search->n; i++)
    {
      const Opening *opening = wall_opening_at (search->wall, i);

      if (opening_may_move (opening) > 0 && !stands_beside (search->wall, search->block, opening))
        {
          Free one = { i, places_of (opening, search->wall, search->how->step) };

          g_array_append_val (search->frees, one);
        }
    }
}

void
search_init (Search *search, const Wall *wall, const Block *block, const ImproveHow *how)
{
  *search = (Search){ .wall = wall,
                      .block = block,
                      .how = how,
                      .aim = cost_aim (wall, block),
                      .n = wall->openings->len,
                      .work = how->work };
  search->pieces = MAX ((gint64) wall->length / block->length * (wall->height / block->height), 20);
  search->result = g_new0 (Improvement, 1);
  search->result->aim = search->aim;
  search->result->moves = g_array_new (FALSE, FALSE, sizeof (ImproveMove));
  find_frees (search);
  search->result->n_free = search->frees->len;
}

void
search_clear (Search *search)
{
  g_free (search->best.x);
  g_array_unref (search->frees);
}

/* --- standings --- */

Standing
standing_copy (const Search *search, const Standing *standing)
{
  Standing copy = *standing;

  copy.x = g_memdup2 (standing->x, search->n * sizeof (Length));
  return copy;
}

gint64
standing_shift (const Search *search, const Length *x)
{
  gint64 shift = 0;

  for (guint i = 0; i < search->n; i++)
    shift += ABS (x[i] - opening_drawn_x (wall_opening_at (search->wall, i)));
  return shift;
}

gboolean
standing_overlaps (const Search *search, const Length *x)
{
  for (guint i = 0; i < search->n; i++)
    for (guint j = i + 1; j < search->n; j++)
      {
        const Opening *a = wall_opening_at (search->wall, i);
        const Opening *b = wall_opening_at (search->wall, j);

        if (x[i] < x[j] + b->width && x[j] < x[i] + a->width && a->sill < opening_head (b)
            && b->sill < opening_head (a))
          return TRUE;
      }
  return FALSE;
}

Wall *
standing_wall (const Search *search, const Length *x)
{
  Wall *wall = wall_copy (search->wall);

  for (guint i = 0; i < search->n; i++)
    opening_move (&g_array_index (wall->openings, Opening, i), x[i]);
  return wall;
}

/* Cheaper, or as cheap with less moved. */
static gboolean
is_better (const Search *search, const Standing *a, const Standing *b)
{
  int by_cost;

  if (!a->possible || !b->possible)
    return a->possible && !b->possible;
  by_cost = cost_compare (&a->cost, &b->cost, search->aim);
  return by_cost != 0 ? by_cost < 0 : a->shift < b->shift;
}

/* --- laying --- */

gboolean
standing_lay (const Search *search, Standing *standing, Look look)
{
  g_autoptr (Wall) wall = NULL;
  Costing costing;

  if (standing_overlaps (search, standing->x))
    return TRUE;
  wall = standing_wall (search, standing->x);
  costing = cost_of_wall (wall, search->block, look, search->how->stop, &standing->cost);
  standing->possible = costing == COSTING_DONE;
  return costing != COSTING_STOPPED;
}

void
search_count (Search *search, guint n, Look look)
{
  search->work -= (gint64) n * search->pieces * (look == LOOK_LAID ? SECOND_LOOK : 1);
  search->result->n_laid += n;
}

typedef struct
{
  const Search *search;
  Standing *standings;
  Look look;
} LayJob;

static gboolean
lay_one (guint i, gpointer data)
{
  const LayJob *laying = data;

  return standing_lay (laying->search, &laying->standings[i], laying->look);
}

gboolean
standings_lay (Search *search, Standing *standings, guint n, Look look)
{
  LayJob laying = { search, standings, look };

  for (guint i = 0; i < n; i++)
    standings[i].shift = standing_shift (search, standings[i].x);
  search_count (search, n, look);
  return crew_run (n, search->how->threads, lay_one, &laying);
}

static void
take (Search *search, const Standing *standing)
{
  Standing better = standing_copy (search, standing);

  g_free (search->best.x);
  search->best = better;
}

/* A first look that is no cheaper is not worth a second one. */
static gboolean
is_worth_taking (const Search *search, const Standing *standing, const Standing *best)
{
  return is_better (search, standing, best)
         && (standing->cost.as_laid
             || cost_compare (&standing->cost, &search->best.cost, search->aim) < 0);
}

gboolean
standings_take_best (Search *search, Standing *standings, guint n, gboolean *taken)
{
  for (gint round = 0; round < MAX_ROUNDS; round++)
    {
      Standing *best = &search->best;

      for (guint i = 0; i < n; i++)
        if (is_worth_taking (search, &standings[i], best))
          best = &standings[i];
      if (best == &search->best)
        return TRUE;
      if (best->cost.as_laid)
        {
          take (search, best);
          *taken = TRUE;
          return TRUE;
        }
      if (!standings_lay (search, best, 1, LOOK_LAID))
        return FALSE;
    }
  return TRUE;
}
