/* list.c - a cutting list made ready for the search, patterns, and answers to the list */
#include "cutting/list.h"

#include <glib/gi18n-lib.h>
#include <string.h>

static gint
compare_items (gconstpointer a, gconstpointer b)
{
  const CuttingItem *p = a, *q = b;

  return (p->length < q->length) - (p->length > q->length);
}

static gboolean
refuse (GError **error, CuttingError code, char *message)
{
  g_set_error_literal (error, CUTTING_ERROR, code, message);
  g_free (message);
  return FALSE;
}

static gboolean
check_stock (gint64 stock, gint64 kerf, GError **error)
{
  if (stock <= 0 || stock > STOCK_MAX_LENGTH)
    return refuse (error, CUTTING_ERROR_INPUT,
                   g_strdup (_ ("The stock must be longer than nothing and no longer than can be "
                                "counted.")));
  if (kerf < 0 || kerf > STOCK_MAX_LENGTH)
    return refuse (error, CUTTING_ERROR_INPUT,
                   g_strdup (_ ("The saw's kerf cannot be less than nothing.")));
  return TRUE;
}

static gboolean
check_item (const CuttingItem *item, guint row, gint64 stock, GError **error)
{
  if (item->length <= 0 || item->length > STOCK_MAX_LENGTH)
    return refuse (
        error, CUTTING_ERROR_INPUT,
        g_strdup_printf (_ ("Piece %u of the list has no length that can be cut."), row + 1));
  if (item->quantity < 0)
    return refuse (
        error, CUTTING_ERROR_INPUT,
        g_strdup_printf (_ ("Piece %u of the list is wanted less than no times."), row + 1));
  if (item->quantity > 0 && item->length > stock)
    return refuse (error, CUTTING_ERROR_TOO_LONG,
                   g_strdup_printf (_ ("Piece %u of the list is longer than the stock."), row + 1));
  return TRUE;
}

static gboolean
check_items (gint64 stock, const CuttingItem *items, guint n_items, GError **error)
{
  gint64 total = 0;

  for (guint i = 0; i < n_items; i++)
    {
      if (!check_item (&items[i], i, stock, error))
        return FALSE;
      total += items[i].quantity;
    }
  if (total > STOCK_MAX_PIECES)
    return refuse (error, CUTTING_ERROR_INPUT,
                   g_strdup_printf (_ ("The list has %" G_GINT64_FORMAT
                                       " pieces; at most %d can be planned at once."),
                                    total, STOCK_MAX_PIECES));
  return TRUE;
}

static gint64
common_divisor (gint64 a, gint64 b)
{
  while (b != 0)
    {
      gint64 rest = a % b;

      a = b;
      b = rest;
    }
  return a;
}

/* Items sorted, longest first; equal lengths become one. */
static void
merge_items (StockList *list, const CuttingItem *sorted, guint n_items)
{
  for (guint i = 0; i < n_items; i++)
    {
      const CuttingItem *item = &sorted[i];

      if (item->quantity == 0)
        continue;
      list->total += item->quantity;
      if (list->n > 0 && list->lengths[list->n - 1] == item->length)
        {
          list->demand[list->n - 1] += item->quantity;
          continue;
        }
      list->lengths[list->n] = item->length;
      list->demand[list->n++] = item->quantity;
    }
}

static void
make_sizes (StockList *list, gint64 stock, gint64 kerf)
{
  gint64 common = 0;

  for (guint i = 0; i < list->n; i++)
    common = common_divisor (common, list->lengths[i] + kerf);
  common = MAX (common, 1);
  for (guint i = 0; i < list->n; i++)
    list->sizes[i] = (list->lengths[i] + kerf) / common;
  list->room = (stock + kerf) / common;
}

StockList *
stock_list_new (gint64 stock, gint64 kerf, const CuttingItem *items, guint n_items, GError **error)
{
  StockList *list;
  g_autofree CuttingItem *sorted = NULL;

  if (!check_stock (stock, kerf, error) || !check_items (stock, items, n_items, error))
    return NULL;
  list = g_new0 (StockList, 1);
  list->lengths = g_new0 (gint64, n_items + 1);
  list->sizes = g_new0 (gint64, n_items + 1);
  list->demand = g_new0 (gint32, n_items + 1);
  sorted = g_new (CuttingItem, n_items + 1);
  if (n_items > 0)
    memcpy (sorted, items, n_items * sizeof *items);
  if (n_items > 1)
    qsort (sorted, n_items, sizeof *sorted, compare_items);
  merge_items (list, sorted, n_items);
  make_sizes (list, stock, kerf);
  return list;
}

void
stock_list_free (StockList *list)
{
  if (list == NULL)
    return;
  g_free (list->lengths);
  g_free (list->sizes);
  g_free (list->demand);
  g_free (list);
}

/* --- work --- */

gboolean
stock_stopped (const StockWork *work)
{
  return work->stop != NULL && g_atomic_int_get (work->stop) != 0;
}

gboolean
stock_spend (StockWork *work, gint64 steps)
{
  work->steps -= steps;
  return work->steps > 0 && !stock_stopped (work);
}

/* --- answers --- */

StockAnswer *
stock_answer_new (void)
{
  StockAnswer *answer = g_new0 (StockAnswer, 1);

  answer->patterns = g_array_new (FALSE, FALSE, sizeof (StockPattern));
  answer->pieces = g_array_new (FALSE, FALSE, sizeof (gint32));
  return answer;
}

StockAnswer *
stock_answer_copy (const StockAnswer *answer)
{
  StockAnswer *copy = stock_answer_new ();

  stock_answer_extend (copy, answer);
  return copy;
}

void
stock_answer_free (StockAnswer *answer)
{
  if (answer == NULL)
    return;
  g_array_unref (answer->patterns);
  g_array_unref (answer->pieces);
  g_free (answer);
}

void
stock_answer_cut (StockAnswer *answer, const StockList *list, const gint32 *counts, gint32 times,
                  gint32 *demand)
{
  StockPattern pattern = { times, answer->pieces->len, 0 };

  for (guint i = 0; i < list->n; i++)
    {
      gint32 piece = (gint32) i;

      for (gint32 k = 0; k < counts[i]; k++)
        g_array_append_val (answer->pieces, piece);
      pattern.n += (guint) counts[i];
      demand[i] -= counts[i] * times;
    }
  answer->bins += times;
  g_array_append_val (answer->patterns, pattern);
}

void
stock_answer_extend (StockAnswer *answer, const StockAnswer *more)
{
  guint offset = answer->pieces->len;

  if (more->pieces->len > 0)
    g_array_append_vals (answer->pieces, more->pieces->data, more->pieces->len);
  for (guint i = 0; i < more->patterns->len; i++)
    {
      StockPattern pattern = g_array_index (more->patterns, StockPattern, i);

      pattern.first += offset;
      g_array_append_val (answer->patterns, pattern);
    }
  answer->bins += more->bins;
}
