/* dive.c - whole answers out of the linear program: rounded down, the rest solved anew */
#include "cutting/dive.h"

#include <math.h>
#include <string.h>

#include "cutting/exact.h"
#include "cutting/fill.h"

#define NEARLY 1e-6
#define REST_BINS 20 /* a rest of more stocks is not searched */
#define REST_STEPS 3000

typedef struct
{
  Columns *columns;
  const StockList *list;
  gint32 *demand; /* left */
  gint32 *counts;
  StockAnswer *answer;
  StockAnswer **best;
} Dive;

static void
consider (Dive *dive, StockAnswer *rest)
{
  if (dive->answer->bins + rest->bins < (*dive->best)->bins)
    {
      stock_answer_free (*dive->best);
      *dive->best = stock_answer_copy (dive->answer);
      stock_answer_extend (*dive->best, rest);
    }
  stock_answer_free (rest);
}

/* A short rest is also searched, for as many stocks as would make the best answer better. */
static void
search_rest (Dive *dive, StockWork *work)
{
  gint32 bins = (*dive->best)->bins - 1 - dive->answer->bins;
  StockList rest = *dive->list;
  StockWork little = { work->stop, MIN (work->steps, REST_STEPS) };
  gint64 before = little.steps;
  StockAnswer *answer = NULL;

  if (bins > REST_BINS)
    return;
  rest.demand = dive->demand;
  if (exact_search (&rest, bins, columns_worths (dive->columns), &little, &answer) == EXACT_FOUND)
    consider (dive, answer);
  work->steps -= before - little.steps;
}

static void
fill_rest (Dive *dive, StockWork *work)
{
  consider (dive, stock_fill_longest_first (dive->list, dive->demand));
  consider (dive, stock_fill_tightest (dive->list, dive->demand, work));
  search_rest (dive, work);
}

static gboolean
is_done (const Dive *dive)
{
  for (guint i = 0; i < dive->list->n; i++)
    if (dive->demand[i] > 0)
      return FALSE;
  return TRUE;
}

/* Cuts a pattern, without the pieces that are no longer wanted, at most `times` times. FALSE when
 * nothing of it is wanted. */
static gboolean
cut_wanted (Dive *dive, const gint32 *counts, gint32 times)
{
  guint n = dive->list->n;
  gboolean any = FALSE;

  for (guint i = 0; i < n; i++)
    {
      dive->counts[i] = MIN (counts[i], dive->demand[i]);
      any = any || dive->counts[i] > 0;
      if (dive->counts[i] > 0)
        times = MIN (times, dive->demand[i] / dive->counts[i]);
    }
  if (any)
    stock_answer_cut (dive->answer, dive->list, dive->counts, times, dive->demand);
  return any;
}

/* Whole parts, patterns as they were made. FALSE when there are none. */
static gboolean
cut_whole_parts (Dive *dive)
{
  guint n = columns_n (dive->columns);
  gboolean any = FALSE;

  for (guint p = 0; p < n; p++)
    {
      gint32 times = (gint32) floor (columns_used (dive->columns, p) + NEARLY);

      if (times > 0)
        any = cut_wanted (dive, columns_counts (dive->columns, p), times) || any;
    }
  return any;
}

/* The pattern most used but one skipped when `second`; ties go to the older one. */
static gboolean
cut_most_used (Dive *dive, gboolean second)
{
  guint n = columns_n (dive->columns), first = n, next = n;

  for (guint p = 0; p < n; p++)
    {
      double used = columns_used (dive->columns, p);

      if (used <= NEARLY)
        continue;
      if (first == n || used > columns_used (dive->columns, first) + NEARLY)
        {
          next = first;
          first = p;
        }
      else if (next == n || used > columns_used (dive->columns, next) + NEARLY)
        next = p;
    }
  if (second && next < n)
    first = next;
  return first < n && cut_wanted (dive, columns_counts (dive->columns, first), 1);
}

static void
dive_down (Dive *dive, guint odd, gint32 enough, StockWork *work)
{
  for (guint step = 1; (*dive->best)->bins > enough && !is_done (dive); step++)
    {
      if (!columns_solve (dive->columns, dive->demand, G_MAXINT32, work)
          || dive->answer->bins + columns_bound (dive->columns) >= (*dive->best)->bins)
        return;
      if ((step == odd || !cut_whole_parts (dive)) && !cut_most_used (dive, step == odd))
        return;
      fill_rest (dive, work);
      if (!stock_spend (work, 1))
        return;
    }
}

void
stock_dive (Columns *columns, const StockList *list, guint odd, gint32 enough, StockAnswer **best,
            StockWork *work)
{
  Dive dive = { .columns = columns, .list = list, .answer = stock_answer_new (), .best = best };

  dive.demand = g_new (gint32, list->n + 1);
  dive.counts = g_new (gint32, list->n + 1);
  memcpy (dive.demand, list->demand, list->n * sizeof (gint32));
  dive_down (&dive, odd, enough, work);
  stock_answer_free (dive.answer);
  g_free (dive.demand);
  g_free (dive.counts);
}
