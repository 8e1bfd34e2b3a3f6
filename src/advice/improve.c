/* improve.c - the best places of all openings that may move, found together */
#include "advice/improve.h"

#include <glib/gi18n-lib.h>

#include "advice/crew.h"
#include "advice/pier-bound.h"

/* More combinations are not listed. */
#define MAX_LISTED 2000000
/* Combinations laid side by side before they are judged: the same on every machine. */
#define CHUNK 64
#define MAX_ROUNDS 6
/* A second look may take so many times as long as a first one. */
#define SECOND_LOOK 40
/* Between the steps, whole millimetres are tried. */
#define FINE LENGTH_MM (1)

/* The places that one opening may take. */
typedef struct
{
  guint index; /* of the wall's openings */
  GArray *at;  /* Length, ascending */
} Free;

/* Where every opening of the wall stands, and what that costs. */
typedef struct
{
  Length *x;
  gboolean possible;
  Cost cost;
  gint64 shift; /* of all together */
} Standing;

typedef struct
{
  const Wall *wall;
  const Block *block;
  const ImproveHow *how;
  Aim aim;
  GArray *frees; /* Free */
  guint n;       /* openings of the wall */
  gint64 pieces; /* of the wall, about */
  gint64 work;   /* pieces that may still be laid */
  Improvement *result;
  Standing best;
  PierBound *bound;
} Search;

/* --- places and standings --- */

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

static const Free *
free_at (const Search *search, guint i)
{
  return &g_array_index (search->frees, Free, i);
}

static void
find_frees (Search *search)
{
  search->frees = g_array_new (FALSE, FALSE, sizeof (Free));
  g_array_set_clear_func (search->frees, free_clear);
  for (guint i = 0; i < search->n; i++)
    {
      const Opening *opening = wall_opening_at (search->wall, i);

      if (opening_may_move (opening) > 0)
        {
          Free one = { i, places_of (opening, search->wall, search->how->step) };

          g_array_append_val (search->frees, one);
        }
    }
}

static Standing
standing_copy (const Search *search, const Standing *standing)
{
  Standing copy = *standing;

  copy.x = g_memdup2 (standing->x, search->n * sizeof (Length));
  return copy;
}

static gint64
shift_of (const Search *search, const Length *x)
{
  gint64 shift = 0;

  for (guint i = 0; i < search->n; i++)
    shift += ABS (x[i] - opening_drawn_x (wall_opening_at (search->wall, i)));
  return shift;
}

static gboolean
overlaps (const Search *search, const Length *x)
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

static Wall *
wall_standing (const Search *search, const Length *x)
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
  const Search *search = laying->search;
  Standing *standing = &laying->standings[i];
  g_autoptr (Wall) wall = NULL;
  Costing costing;

  if (overlaps (search, standing->x))
    return TRUE;
  wall = wall_standing (search, standing->x);
  costing = cost_of_wall (wall, search->block, laying->look, search->how->stop, &standing->cost);
  standing->possible = costing == COSTING_DONE;
  return costing != COSTING_STOPPED;
}

/* Lays n of them and counts the work. FALSE when stopped. */
static gboolean
lay_all (Search *search, Standing *standings, guint n, Look look)
{
  LayJob laying = { search, standings, look };

  for (guint i = 0; i < n; i++)
    standings[i].shift = shift_of (search, standings[i].x);
  search->work -= (gint64) n * search->pieces * (look == LOOK_LAID ? SECOND_LOOK : 1);
  search->result->n_laid += n;
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

/* The best of n where it is better than the best so far, and is as it is laid. FALSE when stopped.
 */
static gboolean
take_best (Search *search, Standing *standings, guint n, gboolean *taken)
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
      if (!lay_all (search, best, 1, LOOK_LAID))
        return FALSE;
    }
  return TRUE;
}

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
  all = lay_all (search, standings, places->len, LOOK_FIRST)
        && take_best (search, standings, places->len, taken);
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
          const Free *one = free_at (search, i);
          g_autoptr (GArray) places = fine ? places_near (search, one) : g_array_ref (one->at);

          if (places->len > 0 && !move_one (search, one, places, &taken))
            return FALSE;
        }
      if (!taken)
        break;
    }
  return TRUE;
}

/* --- all combinations --- */

typedef struct
{
  guint32 number; /* of the combination: the places' indices, written in a mixed base */
  gint32 bound;   /* on its cuts */
  gint64 shift;
} Combination;

static void
stand (const Search *search, gint64 number, Length *x)
{
  for (guint i = 0; i < search->n; i++)
    x[i] = wall_opening_at (search->wall, i)->x;
  for (guint i = 0; i < search->frees->len; i++)
    {
      const Free *one = free_at (search, i);

      x[one->index] = g_array_index (one->at, Length, number % one->at->len);
      number /= one->at->len;
    }
}

static gint64
count_combinations (const Search *search)
{
  gint64 n = 1;

  for (guint i = 0; i < search->frees->len; i++)
    {
      n *= free_at (search, i)->at->len;
      if (n > MAX_LISTED)
        return IMPROVE_TOO_MANY;
    }
  return n;
}

static gint
compare_combinations (gconstpointer a, gconstpointer b)
{
  const Combination *x = a, *y = b;

  if (x->bound != y->bound)
    return x->bound < y->bound ? -1 : 1;
  if (x->shift != y->shift)
    return x->shift < y->shift ? -1 : 1;
  return (x->number > y->number) - (x->number < y->number);
}

/* Combination, by bound; NULL when stopped. */
static GArray *
list_combinations (Search *search, gint64 n)
{
  GArray *list = g_array_new (FALSE, FALSE, sizeof (Combination));
  g_autofree Length *x = g_new (Length, search->n);

  for (gint64 number = 0; number < n; number++)
    {
      Combination one = { (guint32) number, 0, 0 };

      stand (search, number, x);
      if (overlaps (search, x))
        continue;
      one.bound = pier_bound_cuts (search->bound, x, search->how->stop);
      one.shift = shift_of (search, x);
      if (one.bound < 0)
        {
          g_array_unref (list);
          return NULL;
        }
      g_array_append_val (list, one);
    }
  g_array_sort (list, compare_combinations);
  return list;
}

/* Whether no layout within the rules of a combination of that bound is better than the best. */
static gboolean
is_beaten (const Search *search, gint32 bound)
{
  return search->aim != AIM_LEAST_WASTE && search->best.cost.breaches == 0
         && bound >= search->best.cost.cuts;
}

/* Of one that was laid: whether some bond of it might be better than the best, though not found. */
static gboolean
is_open (const Search *search, const Standing *standing)
{
  return standing->possible && standing->cost.breaches <= search->best.cost.breaches
         && standing->cost.cuts_at_least < search->best.cost.cuts;
}

/* Lays combinations of the list from `*next` on, as many as a chunk has. FALSE when stopped. */
static gboolean
lay_chunk (Search *search, const GArray *list, guint *next, GArray *open)
{
  const guint n = MIN (CHUNK, list->len - *next);
  g_autofree Standing *standings = g_new0 (Standing, n);
  gboolean taken = FALSE, all;

  for (guint i = 0; i < n; i++)
    {
      standings[i].x = g_new (Length, search->n);
      stand (search, g_array_index (list, Combination, *next + i).number, standings[i].x);
    }
  all = lay_all (search, standings, n, LOOK_FIRST) && take_best (search, standings, n, &taken);
  for (guint i = 0; i < n; i++)
    {
      if (standings[i].possible)
        g_array_append_val (open, standings[i].cost);
      g_free (standings[i].x);
    }
  *next += n;
  return all;
}

/* What all that were laid, and those that were not, prove of the cuts. */
static void
conclude (Search *search, const GArray *list, guint next, const GArray *laid)
{
  Improvement *result = search->result;
  gint32 least = search->best.cost.cuts;

  result->compared
      = next >= list->len || is_beaten (search, g_array_index (list, Combination, next).bound);
  for (guint i = 0; i < laid->len; i++)
    {
      const Standing standing = { NULL, TRUE, g_array_index (laid, Cost, i), 0 };

      if (is_open (search, &standing))
        least = MIN (least, standing.cost.cuts_at_least);
    }
  if (next < list->len)
    least = MIN (least, g_array_index (list, Combination, next).bound);
  result->cuts_at_least = least;
  result->proven
      = search->aim != AIM_LEAST_WASTE && result->compared && least >= search->best.cost.cuts;
}

/* FALSE when stopped. */
static gboolean
compare_all (Search *search)
{
  g_autoptr (GArray) laid = g_array_new (FALSE, FALSE, sizeof (Cost));
  g_autoptr (GArray) list = list_combinations (search, search->result->combinations);
  guint next = 0;

  if (list == NULL)
    return FALSE;
  search->result->n_possible = list->len;
  while (next < list->len && search->work > 0
         && !is_beaten (search, g_array_index (list, Combination, next).bound))
    if (!lay_chunk (search, list, &next, laid))
      return FALSE;
  conclude (search, list, next, laid);
  return TRUE;
}

/* --- the answer --- */

static void
add_moves (Search *search)
{
  Improvement *result = search->result;
  g_autoptr (Wall) wall = NULL;

  result->after = search->best.cost;
  for (guint i = 0; i < search->frees->len; i++)
    {
      const Opening *opening = wall_opening_at (search->wall, free_at (search, i)->index);
      const ImproveMove move
          = { opening->id, opening->x, search->best.x[free_at (search, i)->index] };

      if (move.from != move.to)
        g_array_append_val (result->moves, move);
    }
  if (cost_compare (&result->after, &result->before, search->aim) >= 0)
    g_array_set_size (result->moves, 0);
  if (result->moves->len == 0)
    return;
  wall = wall_standing (search, search->best.x);
  result->edit = edit_set_wall (wall);
}

/* FALSE when stopped. */
static gboolean
run (Search *search)
{
  Improvement *result = search->result;

  search->best.x = g_new (Length, search->n);
  stand (search, 0, search->best.x);
  for (guint i = 0; i < search->n; i++)
    search->best.x[i] = wall_opening_at (search->wall, i)->x;
  if (!lay_all (search, &search->best, 1, LOOK_LAID))
    return FALSE;
  result->before = search->best.cost;
  result->cuts_at_least = 0;
  result->combinations = count_combinations (search);
  if (!descend (search, FALSE))
    return FALSE;
  if (result->combinations != IMPROVE_TOO_MANY && !compare_all (search))
    return FALSE;
  return descend (search, TRUE);
}

Improvement *
improve_wall (const Wall *wall, const Block *block, const ImproveHow *how)
{
  Search search = { .wall = wall,
                    .block = block,
                    .how = how,
                    .aim = cost_aim (wall, block),
                    .n = wall->openings->len,
                    .work = how->work };
  gboolean done;

  g_return_val_if_fail (how->step > 0, NULL);
  search.pieces = MAX ((gint64) wall->length / block->length * (wall->height / block->height), 20);
  search.result = g_new0 (Improvement, 1);
  search.result->moves = g_array_new (FALSE, FALSE, sizeof (ImproveMove));
  search.bound = pier_bound_new (wall, block);
  find_frees (&search);
  search.result->n_free = search.frees->len;
  done = run (&search);
  if (done)
    add_moves (&search);
  g_free (search.best.x);
  g_array_unref (search.frees);
  pier_bound_free (search.bound);
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

/* --- words --- */

static void
add_proof_text (GString *text, const Improvement *improvement)
{
  if (improvement->proven)
    g_string_append_printf (text,
                            _ (" Proven: none of the %u combinations of places has fewer cuts."),
                            improvement->n_possible);
  else if (improvement->compared)
    g_string_append_printf (text,
                            _ (" The best found in all %u combinations of places; at least %d cuts "
                               "are needed."),
                            improvement->n_possible, improvement->cuts_at_least);
  else if (improvement->combinations == IMPROVE_TOO_MANY)
    g_string_append_printf (
        text, _ (" Not proven: %u walls were laid, there are many more combinations of places."),
        improvement->n_laid);
  else
    g_string_append_printf (text,
                            _ (" Not proven: %u walls were laid for %u combinations of places; at "
                               "least %d cuts are needed."),
                            improvement->n_laid, improvement->n_possible,
                            improvement->cuts_at_least);
}

static void
add_change (GString *text, const char *one, const char *many, gint32 before, gint32 after)
{
  if (before == after)
    return;
  g_string_append_printf (text, g_dngettext (NULL, one, many, (gulong) after), after, before);
}

char *
improvement_text (const Improvement *improvement)
{
  const Cost *before = &improvement->before, *after = &improvement->after;
  g_autoptr (GString) text = g_string_new (NULL);

  if (improvement->n_free == 0)
    return g_strdup (_ ("No opening of this wall is said to be free to move."));
  if (improvement->moves->len == 0)
    {
      g_string_append (text, _ ("The openings stand best where they are."));
      add_proof_text (text, improvement);
      return g_string_free (g_steal_pointer (&text), FALSE);
    }
  g_string_append_printf (
      text, g_dngettext (NULL, "%u opening moved", "%u openings moved", improvement->moves->len),
      improvement->moves->len);
  add_change (text, N_ (", %d breach instead of %d"), N_ (", %d breaches instead of %d"),
              before->breaches, after->breaches);
  add_change (text, N_ (", %d cut instead of %d"), N_ (", %d cuts instead of %d"), before->cuts,
              after->cuts);
  add_change (text, N_ (", %d unit to order instead of %d"),
              N_ (", %d units to order instead of %d"), before->to_order, after->to_order);
  g_string_append_c (text, '.');
  add_proof_text (text, improvement);
  return g_string_free (g_steal_pointer (&text), FALSE);
}
