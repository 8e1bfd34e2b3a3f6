/* improve.c - the best places of all openings that may move, found together */
#include "advice/improve.h"

#include "advice/combinations.h"
#include "advice/standing.h"

#define MAX_ROUNDS 6
/* Between the steps, whole millimetres are tried. */
#define FINE LENGTH_MM (1)

/* --- one opening after the other --- */

/* Every place of one opening, the others where they are best so far. FALSE when stopped. */
static gboolean
move_one (Search *search, const Free *one, const GArray *places, gboolean *taken)
{
  g_autofree Standing *standings = g_new0 (Standing, places->len);
  gboolean all;

  for (guint i = 0; i < places->len; i++)
    {
      standings[i] = standing_copy (search, &search->best);
      standings[i].possible = FALSE;
      standings[i].x[one->index] = g_array_index (places, Length, i);
    }
  all = standings_lay (search, standings, places->len, LOOK_FIRST)
        && standings_take_best (search, standings, places->len, taken);
  for (guint i = 0; i < places->len; i++)
    g_free (standings[i].x);
  return all;
}

/* The millimetres round the best place, as far as the opening may go. */
static GArray *
places_near (const Search *search, const Free *one)
{
  const Opening *opening = wall_opening_at (search->wall, one->index);
  const Length drawn = opening_drawn_x (opening), reach = opening_may_move (opening);
  GArray *places = g_array_new (FALSE, FALSE, sizeof (Length));

  for (Length d = -search->how->step + FINE; d < search->how->step; d += FINE)
    {
      const Length at = search->best.x[one->index] + d;

      if (d != 0 && at >= 0 && ABS (at - drawn) <= reach)
        g_array_append_val (places, at);
    }
  return places;
}

/* Round and round, until nothing gets better. FALSE when stopped. */
static gboolean
descend (Search *search, gboolean fine)
{
  for (gint round = 0; round < MAX_ROUNDS && search->work > 0; round++)
    {
      gboolean taken = FALSE;

      for (guint i = 0; i < search->frees->len && search->work > 0; i++)
        {
          const Free *one = search_free_at (search, i);
          g_autoptr (GArray) places = fine ? places_near (search, one) : g_array_ref (one->at);

          if (places->len > 0 && !move_one (search, one, places, &taken))
            return FALSE;
        }
      if (!taken)
        break;
    }
  return TRUE;
}

/* --- the answer --- */

static void
add_moves (Search *search)
{
  Improvement *result = search->result;
  g_autoptr (Wall) wall = NULL;

  result->after = search->best.cost;
  /* Between the steps something better may have been found. */
  if (result->breaches_at_least >= result->after.breaches)
    {
      result->cuts_at_least = MIN (result->cuts_at_least, result->after.cuts);
      result->breaches_at_least = result->after.breaches;
    }
  for (guint i = 0; i < search->frees->len; i++)
    {
      const Opening *opening = wall_opening_at (search->wall, search_free_at (search, i)->index);
      const ImproveMove move
          = { opening->id, opening->x, search->best.x[search_free_at (search, i)->index] };

      if (move.from != move.to)
        g_array_append_val (result->moves, move);
    }
  if (cost_compare (&result->after, &result->before, search->aim) >= 0)
    g_array_set_size (result->moves, 0);
  if (result->moves->len == 0)
    return;
  wall = standing_wall (search, search->best.x);
  result->edit = edit_set_wall (wall);
}

/* FALSE when stopped. */
static gboolean
run (Search *search)
{
  Improvement *result = search->result;

  search->best.x = g_new (Length, MAX (search->n, 1));
  for (guint i = 0; i < search->n; i++)
    search->best.x[i] = wall_opening_at (search->wall, i)->x;
  if (!standings_lay (search, &search->best, 1, LOOK_LAID))
    return FALSE;
  result->before = search->best.cost;
  if (!descend (search, FALSE) || !combinations_compare (search))
    return FALSE;
  /* Not each place was among them. */
  if (result->combinations == IMPROVE_TOO_MANY && !descend (search, FALSE))
    return FALSE;
  return descend (search, TRUE);
}

Improvement *
improve_wall (const Wall *wall, const Block *block, const ImproveHow *how)
{
  Search search;
  gboolean done;

  g_return_val_if_fail (how->step > 0, NULL);
  search_init (&search, wall, block, how);
  done = run (&search);
  if (done)
    add_moves (&search);
  search_clear (&search);
  if (!done)
    g_clear_pointer (&search.result, improvement_free);
  return search.result;
}

void
improvement_free (Improvement *improvement)
{
  if (improvement == NULL)
    return;
  g_array_unref (improvement->moves);
  edit_free (improvement->edit);
  g_free (improvement);
}
