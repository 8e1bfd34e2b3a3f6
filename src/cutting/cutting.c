/* cutting.c - cutting stock: the fewest stock lengths that give a list of pieces, with proof */
#include "cutting/cutting.h"

#include <assert.h>

#include "cutting/choose.h"
#include "cutting/columns.h"
#include "cutting/dive.h"
#include "cutting/exact.h"
#include "cutting/fill.h"

/* With more pieces no shortlist is made: products of worths stay within 63 bits. */
#define CHOICE_PIECES (1 << 19)

/* How much is tried for an answer. */
typedef struct
{
  guint kinds;         /* with more kinds of pieces no linear program is made */
  gint64 steps;        /* in all */
  guint dives;         /* ways to round the program */
  guint patterns;      /* in a shortlist */
  gint64 search_steps; /* of the last search */
} Effort;

static const Effort live_effort = { 100, 150000, 1, 2000, 30000 };
static const Effort long_effort = { 1500, 300000000, 60, 100000, 100000000 };

/* One solution on its way: the best answer and the best bound until now. */
typedef struct
{
  const StockList *list;
  StockAnswer *best;
  gint32 at_least;
  StockWork work;
} Solving;

GQuark
cutting_error_quark (void)
{
  return g_quark_from_static_string ("halfbond-cutting-error");
}

static void
pattern_free (gpointer data)
{
  CuttingPattern *pattern = data;

  g_array_unref (pattern->pieces);
  g_free (pattern);
}

void
cutting_plan_free (CuttingPlan *plan)
{
  if (plan == NULL)
    return;
  g_ptr_array_unref (plan->patterns);
  g_free (plan);
}

/* --- the solution --- */

static gboolean
is_solved (const Solving *solving)
{
  return solving->at_least >= solving->best->bins;
}

static void
keep_better (Solving *solving, StockAnswer *answer)
{
  if (answer->bins < solving->best->bins)
    {
      stock_answer_free (solving->best);
      solving->best = answer;
    }
  else
    stock_answer_free (answer);
}

static void
solve_quickly (Solving *solving)
{
  const StockList *list = solving->list;

  solving->best = stock_fill_longest_first (list, list->demand);
  solving->at_least = stock_bound_quick (list);
  if (!is_solved (solving))
    keep_better (solving, stock_fill_tightest (list, list->demand, &solving->work));
}

/* One pattern for each kind of piece makes the program solvable; those of the best answer make it
 * good from the start. */
static Columns *
first_columns (const Solving *solving)
{
  const StockList *list = solving->list;
  Columns *columns = columns_new (list);
  g_autofree gint32 *counts = g_new0 (gint32, list->n + 1);

  for (guint i = 0; i < list->n; i++)
    {
      counts[i] = (gint32) MIN (list->demand[i], list->room / list->sizes[i]);
      columns_add (columns, counts);
      counts[i] = 0;
    }
  for (guint p = 0; p < solving->best->patterns->len && p < 2 * list->n; p++)
    {
      const StockPattern *pattern = &g_array_index (solving->best->patterns, StockPattern, p);

      for (guint k = 0; k < pattern->n; k++)
        counts[g_array_index (solving->best->pieces, gint32, pattern->first + k)]++;
      columns_add (columns, counts);
      for (guint k = 0; k < pattern->n; k++)
        counts[g_array_index (solving->best->pieces, gint32, pattern->first + k)] = 0;
    }
  return columns;
}

/* Bounds by worths that more stocks than `at_least` are searched in vain. */
static void
search_all (Solving *solving, const Columns *columns, gint64 steps)
{
  while (!is_solved (solving) && solving->work.steps > 0 && !stock_stopped (&solving->work))
    {
      StockWork work = { solving->work.stop, MIN (steps, solving->work.steps) };
      StockAnswer *answer = NULL;
      gint64 before = work.steps;
      ExactResult result = exact_search (solving->list, solving->best->bins - 1,
                                         columns_worths (columns), &work, &answer);

      solving->work.steps -= before - work.steps;
      if (result == EXACT_FOUND)
        keep_better (solving, answer);
      else if (result == EXACT_NONE)
        solving->at_least = solving->best->bins;
      else
        return;
    }
}

/* Asks for as few stocks as the bound allows, then for one more, as long as the answer is no. */
static void
choose_all (Solving *solving, const Columns *columns, guint most)
{
  while (!is_solved (solving) && solving->list->total <= CHOICE_PIECES && solving->work.steps > 0
         && !stock_stopped (&solving->work))
    {
      g_autoptr (Shortlist) shortlist = shortlist_new (
          solving->list, solving->at_least, columns_worths (columns), most, &solving->work);
      StockAnswer *answer = NULL;
      ExactResult result;

      if (shortlist == NULL)
        return;
      result = choose_search (solving->list, solving->at_least, shortlist, &solving->work, &answer);
      if (result == EXACT_FOUND)
        keep_better (solving, answer);
      else if (result == EXACT_NONE)
        solving->at_least++;
      else
        return;
    }
}

static void
dive (Solving *solving, Columns *columns, guint from, guint to)
{
  for (guint odd = from; odd < to && !is_solved (solving) && solving->work.steps > 0
                         && !stock_stopped (&solving->work);
       odd++)
    stock_dive (columns, solving->list, odd, solving->at_least, &solving->best, &solving->work);
}

static void
solve_thoroughly (Solving *solving, const Effort *effort)
{
  const StockList *list = solving->list;
  g_autoptr (Columns) columns = first_columns (solving);

  if (columns_solve (columns, list->demand, solving->best->bins, &solving->work))
    solving->at_least = MAX (solving->at_least, columns_bound (columns));
  search_all (solving, columns, 5000);
  dive (solving, columns, 0, 1);
  choose_all (solving, columns, effort->patterns);
  dive (solving, columns, 1, effort->dives);
  search_all (solving, columns, effort->search_steps);
}

static void
solve (Solving *solving, int effort)
{
  const Effort *how = effort > 0 ? &long_effort : &live_effort;

  solving->work.steps = how->steps;
  solve_quickly (solving);
  if (is_solved (solving) || solving->list->n > how->kinds)
    return;
  solve_thoroughly (solving, how);
  columns_leave_thread ();
}

/* --- the plan --- */

static gint
compare_pieces (const CuttingPattern *a, const CuttingPattern *b)
{
  for (guint i = 0; i < MIN (a->pieces->len, b->pieces->len); i++)
    {
      gint64 p = g_array_index (a->pieces, gint64, i), q = g_array_index (b->pieces, gint64, i);

      if (p != q)
        return p > q ? -1 : 1;
    }
  return (a->pieces->len < b->pieces->len) - (a->pieces->len > b->pieces->len);
}

static gint
compare_by_pieces (gconstpointer a, gconstpointer b)
{
  return compare_pieces (*(const CuttingPattern *const *) a, *(const CuttingPattern *const *) b);
}

static gint
compare_by_times (gconstpointer a, gconstpointer b)
{
  const CuttingPattern *p = *(const CuttingPattern *const *) a;
  const CuttingPattern *q = *(const CuttingPattern *const *) b;

  if (p->times != q->times)
    return p->times > q->times ? -1 : 1;
  return compare_pieces (p, q);
}

static CuttingPattern *
pattern_of (const StockList *list, const StockAnswer *answer, const StockPattern *from)
{
  CuttingPattern *pattern = g_new0 (CuttingPattern, 1);

  pattern->times = from->times;
  pattern->pieces = g_array_sized_new (FALSE, FALSE, sizeof (gint64), from->n);
  for (guint i = 0; i < from->n; i++)
    {
      gint32 piece = g_array_index (answer->pieces, gint32, from->first + i);

      g_array_append_val (pattern->pieces, list->lengths[piece]);
    }
  return pattern;
}

/* Equal patterns, which are neighbours, become one. */
static void
merge_patterns (GPtrArray *patterns)
{
  guint kept = 0;

  for (guint i = 1; i < patterns->len; i++)
    {
      CuttingPattern *last = g_ptr_array_index (patterns, kept);
      CuttingPattern *pattern = g_ptr_array_index (patterns, i);

      if (compare_pieces (last, pattern) == 0)
        {
          last->times += pattern->times;
          pattern_free (pattern);
        }
      else
        patterns->pdata[++kept] = pattern;
    }
  /* What was moved or freed must not be freed again. */
  if (patterns->len > 0)
    patterns->len = kept + 1;
}

static CuttingPlan *
plan_of (const Solving *solving)
{
  CuttingPlan *plan = g_new0 (CuttingPlan, 1);
  const StockAnswer *best = solving->best;

  plan->bins = best->bins;
  /* A bound above an answer would be no bound. */
  assert (solving->at_least <= best->bins);
  plan->bins_at_least = solving->at_least;
  plan->proven = plan->bins_at_least == plan->bins;
  plan->patterns = g_ptr_array_new_with_free_func (pattern_free);
  for (guint i = 0; i < best->patterns->len; i++)
    g_ptr_array_add (plan->patterns, pattern_of (solving->list, best,
                                                 &g_array_index (best->patterns, StockPattern, i)));
  g_ptr_array_sort (plan->patterns, compare_by_pieces);
  merge_patterns (plan->patterns);
  g_ptr_array_sort (plan->patterns, compare_by_times);
  return plan;
}

CuttingPlan *
cutting_solve (gint64 stock, gint64 kerf, const CuttingItem *items, guint n_items, int effort,
               const gint *stop, GError **error)
{
  g_autoptr (StockList) list = stock_list_new (stock, kerf, items, n_items, error);
  Solving solving = { .list = list, .work = { stop, 0 } };
  CuttingPlan *plan = NULL;

  if (list == NULL)
    return NULL;
  solve (&solving, effort);
  if (!stock_stopped (&solving.work))
    plan = plan_of (&solving);
  stock_answer_free (solving.best);
  return plan;
}
