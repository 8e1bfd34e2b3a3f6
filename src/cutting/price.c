/* price.c - the pattern of the greatest worth: a bounded knapsack in whole numbers */
#include "cutting/price.h"

#include <string.h>

#define SEARCH_STEPS 20000    /* at most, then the table by room is tried */
#define CELLS_A_STEP 64       /* of the table, in the time of a step */
#define SEARCH_CELLS 32       /* of the table, for which a step of the search is spent first */
#define TABLE_CELLS 100000000 /* of the table by room at most: bits for the way back */

typedef struct
{
  guint piece;
  gint64 size, worth;
  gint64 most; /* as often at the most */
} Kind;

typedef struct
{
  const StockList *list;
  Kind *kinds; /* of some worth, the most worth by size first */
  guint n;
  gint64 *counts, *best; /* by kind */
  gint64 best_worth;
  gint64 steps, most_steps;
} Price;

/* By worth per size, the best first; then by place in the list. Products stay within 56 bits. */
static gint
compare_kinds (gconstpointer a, gconstpointer b)
{
  const Kind *p = a, *q = b;
  gint64 left = p->worth * q->size, right = q->worth * p->size;

  if (left != right)
    return left > right ? -1 : 1;
  return (p->piece > q->piece) - (p->piece < q->piece);
}

static void
price_begin (Price *price, const StockList *list, const gint64 *worths)
{
  *price = (Price){ .list = list };
  price->kinds = g_new (Kind, list->n + 1);
  price->counts = g_new0 (gint64, list->n + 1);
  price->best = g_new0 (gint64, list->n + 1);
  for (guint i = 0; i < list->n; i++)
    {
      Kind kind
          = { i, list->sizes[i], worths[i], MIN (list->demand[i], list->room / list->sizes[i]) };

      if (worths[i] > 0)
        price->kinds[price->n++] = kind;
    }
  if (price->n > 1)
    qsort (price->kinds, price->n, sizeof (Kind), compare_kinds);
  /* About as long as the table would take. */
  price->most_steps
      = CLAMP ((gint64) ((double) list->room * list->n / SEARCH_CELLS), 500, SEARCH_STEPS);
}

static void
price_end (Price *price)
{
  g_free (price->kinds);
  g_free (price->counts);
  g_free (price->best);
}

/* What room can hold at the most from kind `k` on, pieces cut at will. */
static gint64
limit (const Price *price, guint k, gint64 room)
{
  gint64 worth = 0;

  for (; k < price->n && room > 0; k++)
    {
      const Kind *kind = &price->kinds[k];

      if (room < kind->size * kind->most)
        {
          /* The split keeps the product small. */
          gint64 whole = room / kind->size;

          return worth + whole * kind->worth
                 + (room - whole * kind->size) * kind->worth / kind->size;
        }
      worth += kind->worth * kind->most;
      room -= kind->size * kind->most;
    }
  return worth;
}

static void
keep_best (Price *price, guint k, gint64 worth)
{
  if (worth <= price->best_worth)
    return;
  price->best_worth = worth;
  memset (price->best, 0, price->n * sizeof (gint64));
  memcpy (price->best, price->counts, k * sizeof (gint64));
}

/* Kinds from `k` on, as many as fit first. */
static void
search_from (Price *price, guint k, gint64 room, gint64 worth)
{
  const Kind *kind;
  gint64 count;

  price->steps++;
  keep_best (price, k, worth);
  while (k < price->n && price->kinds[k].size > room)
    price->counts[k++] = 0;
  if (k == price->n || worth + limit (price, k, room) <= price->best_worth)
    return;
  kind = &price->kinds[k];
  for (count = MIN (kind->most, room / kind->size); count >= 0; count--)
    {
      gint64 left = room - count * kind->size, now = worth + count * kind->worth;

      if (price->steps >= price->most_steps)
        break;
      /* Fewer of the worthiest kind only lower the limit. */
      if (now + limit (price, k + 1, left) <= price->best_worth)
        break;
      price->counts[k] = count;
      search_from (price, k + 1, left, now);
    }
  price->counts[k] = 0;
}

/* --- the table by room --- */

/* Kinds as lots of 1, 2, 4 ... pieces, so that each lot is taken or not. */
typedef struct
{
  guint kind;
  gint64 pieces;
} Lot;

static GArray *
lots_of (const Price *price)
{
  GArray *lots = g_array_new (FALSE, FALSE, sizeof (Lot));

  for (guint k = 0; k < price->n; k++)
    for (gint64 left = price->kinds[k].most, pieces = 1; left > 0; pieces *= 2)
      {
        Lot lot = { k, MIN (pieces, left) };

        g_array_append_val (lots, lot);
        left -= lot.pieces;
      }
  return lots;
}

static void
table_add (gint64 *worths, guint8 *taken, const Kind *kind, gint64 pieces, gint64 room)
{
  gint64 size = kind->size * pieces, worth = kind->worth * pieces;

  for (gint64 r = room; r >= size; r--)
    if (worths[r - size] + worth > worths[r])
      {
        worths[r] = worths[r - size] + worth;
        taken[r >> 3] |= (guint8) (1 << (r & 7));
      }
}

static void
search_table (Price *price, const GArray *lots)
{
  gint64 room = price->list->room;
  gsize row = (gsize) (room >> 3) + 1;
  g_autofree gint64 *worths = g_new0 (gint64, (gsize) room + 1);
  g_autofree guint8 *taken = g_new0 (guint8, row * MAX (lots->len, 1));

  for (guint i = 0; i < lots->len; i++)
    {
      const Lot *lot = &g_array_index (lots, Lot, i);

      table_add (worths, taken + row * i, &price->kinds[lot->kind], lot->pieces, room);
    }
  price->best_worth = worths[room];
  memset (price->best, 0, price->n * sizeof (gint64));
  for (guint i = lots->len; i-- > 0;)
    {
      const Lot *lot = &g_array_index (lots, Lot, i);

      if ((taken[row * i + (gsize) (room >> 3)] >> (room & 7) & 1) == 0)
        continue;
      price->best[lot->kind] += lot->pieces;
      room -= price->kinds[lot->kind].size * lot->pieces;
    }
}

/* The table when the search was not done; FALSE when it is too large. */
static gboolean
price_by_table (Price *price, const StockWork *work)
{
  g_autoptr (GArray) lots = lots_of (price);

  if ((double) price->list->room * lots->len >= TABLE_CELLS
      || price->list->room * lots->len / CELLS_A_STEP >= work->steps)
    return FALSE;
  search_table (price, lots);
  price->steps += price->list->room * lots->len / CELLS_A_STEP;
  return TRUE;
}

gint64
stock_best_pattern (const StockList *list, const gint64 *worths, gint64 enough, gint32 *counts,
                    StockWork *work)
{
  Price price;
  gint64 most;

  price_begin (&price, list, worths);
  search_from (&price, 0, list->room, 0);
  most = price.best_worth;
  if (price.steps >= price.most_steps)
    {
      if (price.best_worth >= enough || !price_by_table (&price, work))
        most = limit (&price, 0, list->room);
      else
        most = price.best_worth;
    }
  memset (counts, 0, list->n * sizeof (gint32));
  for (guint k = 0; k < price.n; k++)
    counts[price.kinds[k].piece] = (gint32) price.best[k];
  work->steps -= price.steps;
  price_end (&price);
  return most;
}
