/* bound.c - how many stocks a list needs at the least, each number a proof in whole numbers */
#include "cutting/bound.h"

#define STAIRS 24 /* finer stairs are nearly the sizes themselves */

static gint64
round_up (gint64 a, gint64 b)
{
  return a / b + (a % b > 0);
}

static gint32
bound_by_size (const StockList *list)
{
  gint64 total = 0;

  for (guint i = 0; i < list->n; i++)
    total += list->sizes[i] * list->demand[i];
  return (gint32) round_up (total, list->room);
}

/* Pieces longer than room - least take a stock each and nothing of `least` or longer goes beside
 * them; those over a half take a stock each; what is left of these holds the others. */
static gint32
bound_beside_halves (const StockList *list, gint64 least)
{
  gint64 alone = 0, halves = 0, free = 0, others = 0;

  for (guint i = 0; i < list->n && list->sizes[i] >= least; i++)
    {
      gint64 size = list->sizes[i], count = list->demand[i];

      if (size > list->room - least)
        alone += count;
      else if (2 * size > list->room)
        {
          halves += count;
          free += (list->room - size) * count;
        }
      else
        others += size * count;
    }
  others = others > free ? round_up (others - free, list->room) : 0;
  return (gint32) (alone + halves + others);
}

/* The stair function with k steps: (k + 1) x rounded down to whole rooms, unless it is one. Every
 * pattern's worth is at most k rooms. */
static gint32
bound_by_stair (const StockList *list, gint64 k)
{
  gint64 total = 0;

  for (guint i = 0; i < list->n; i++)
    {
      gint64 size = list->sizes[i] * (k + 1);
      gint64 worth = size % list->room == 0 ? list->sizes[i] * k : size / list->room * list->room;

      total += worth * list->demand[i];
    }
  return (gint32) round_up (total, list->room * k);
}

gint32
stock_bound_quick (const StockList *list)
{
  gint32 best = bound_by_size (list);
  gint64 tried = 0;

  for (gint64 k = 1; k <= STAIRS; k++)
    best = MAX (best, bound_by_stair (list, k));
  /* Thresholds from the halves downwards; with very many kinds of pieces not all of them. */
  for (guint i = 0; i < list->n && tried < 4000000; i++)
    if (2 * list->sizes[i] <= list->room)
      {
        best = MAX (best, bound_beside_halves (list, list->sizes[i]));
        tried += i + 1;
      }
  best = MAX (best, bound_beside_halves (list, list->room / 2 + 1));
  return best;
}

gint32
stock_bound_by (const StockWorths *worths, guint n, const gint32 *demand)
{
  gint64 total = 0;

  for (guint i = 0; i < n; i++)
    total += worths->worths[i] * demand[i];
  return worths->most > 0 ? (gint32) round_up (total, worths->most) : 0;
}
