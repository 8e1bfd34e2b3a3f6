/* exact.c - every way to cut, with all that cannot lead to fewer stocks left out */
#include "cutting/exact.h"

#include <string.h>

#define MAX_FILLINGS 4000 /* of one stock; with more the search would not end anyway */
#define MAX_TRIES 200000  /* to find them */
#define MAX_FAILED 200000 /* failed rests remembered */
#define MAX_DEPTH 1000    /* stocks in one line of the search: the machine's stack */

/* What is still wanted, with the stocks that were not enough for it. */
typedef struct
{
  gint32 *demand;
  guint n;
  gint32 bins;
} Failed;

typedef struct
{
  const StockList *list;
  const GArray *worths;
  StockWork *work;
  GHashTable *failed; /* Failed */
  gint32 *demand;
  GArray *line;     /* gint32: counts of each stock cut so far, list->n for each */
  gboolean gave_up; /* something was left out for want of work */
} Search;

/* A filling to try: those that leave the least over come first. */
typedef struct
{
  gint64 left;
  guint filling;
} FillingOrder;

/* All fillings of one stock. */
typedef struct
{
  const Search *search;
  gint32 *counts;
  GArray *fillings; /* gint32, list->n for each */
  GArray *order;    /* FillingOrder of each */
  gint64 most_left; /* more left over cannot lead to an answer */
  guint tries;
} Fillings;

static guint
failed_hash (gconstpointer key)
{
  const Failed *failed = key;
  guint32 hash = 2166136261u;

  for (guint i = 0; i < failed->n; i++)
    hash = (hash ^ (guint32) failed->demand[i]) * 16777619u;
  return hash;
}

static gboolean
failed_equal (gconstpointer a, gconstpointer b)
{
  const Failed *p = a, *q = b;

  return memcmp (p->demand, q->demand, p->n * sizeof (gint32)) == 0;
}

static void
failed_free (gpointer data)
{
  Failed *failed = data;

  g_free (failed->demand);
  g_free (failed);
}

static gboolean
has_failed (const Search *search, gint32 bins)
{
  Failed key = { search->demand, search->list->n, 0 };
  const Failed *failed = g_hash_table_lookup (search->failed, &key);

  return failed != NULL && failed->bins >= bins;
}

static void
remember_failed (Search *search, gint32 bins)
{
  Failed *failed;

  if (search->gave_up || g_hash_table_size (search->failed) >= MAX_FAILED)
    return;
  failed = g_new (Failed, 1);
  failed->n = search->list->n;
  failed->bins = bins;
  failed->demand = g_new (gint32, failed->n + 1);
  memcpy (failed->demand, search->demand, failed->n * sizeof (gint32));
  g_hash_table_replace (search->failed, failed, failed);
}

static gint64
wanted_size (const Search *search)
{
  gint64 total = 0;

  for (guint i = 0; i < search->list->n; i++)
    total += search->list->sizes[i] * search->demand[i];
  return total;
}

static gboolean
cannot_do (const Search *search, gint32 bins)
{
  for (guint i = search->worths->len; i-- > 0;)
    if (stock_bound_by (&g_array_index (search->worths, StockWorths, i), search->list->n,
                        search->demand)
        > bins)
      return TRUE;
  return has_failed (search, bins);
}

/* --- fillings of one stock --- */

/* The shortest piece that is wanted beyond the filling; 0 when there is none. */
static gint64
shortest_over (const Fillings *fillings)
{
  const StockList *list = fillings->search->list;

  for (guint i = list->n; i-- > 0;)
    if (fillings->search->demand[i] > fillings->counts[i])
      return list->sizes[i];
  return 0;
}

/* Whether a piece that is wanted beyond the filling has a size in least..most. */
static gboolean
is_to_be_had (const Fillings *fillings, gint64 least, gint64 most)
{
  const StockList *list = fillings->search->list;
  guint i = 0, end = list->n;

  /* Sizes fall: find the first that is not too long. */
  while (i < end)
    {
      guint middle = i + (end - i) / 2;

      if (list->sizes[middle] > most)
        i = middle + 1;
      else
        end = middle;
    }
  for (; i < list->n && list->sizes[i] >= least; i++)
    if (fillings->search->demand[i] > fillings->counts[i])
      return TRUE;
  return FALSE;
}

/* Whether one piece of the filling, or two, could make way for one that fills it better, or as well
 * in one: what made way fits where that one lay, so nothing is lost (S. Martello and P. Toth). Each
 * such exchange fills more, or the same with fewer pieces, so that there is no going round in
 * circles. */
static gboolean
is_dominated (const Fillings *fillings, gint64 room)
{
  const StockList *list = fillings->search->list;

  for (guint i = 0; i < list->n; i++)
    {
      if (fillings->counts[i] == 0)
        continue;
      if (is_to_be_had (fillings, list->sizes[i] + 1, list->sizes[i] + room))
        return TRUE;
      for (guint k = i; k < list->n; k++)
        if (fillings->counts[k] >= (k == i ? 2 : 1)
            && is_to_be_had (fillings, list->sizes[i] + list->sizes[k],
                             list->sizes[i] + list->sizes[k] + room))
          return TRUE;
    }
  return FALSE;
}

static void
keep_filling (Fillings *fillings, gint64 room)
{
  gint64 shortest = shortest_over (fillings);
  FillingOrder order = { room, fillings->order->len };

  /* Not full: the same with a further piece is never worse. */
  if (room > fillings->most_left || (shortest > 0 && shortest <= room)
      || is_dominated (fillings, room))
    return;
  g_array_append_vals (fillings->fillings, fillings->counts, fillings->search->list->n);
  g_array_append_val (fillings->order, order);
}

static gboolean
are_too_many (const Fillings *fillings)
{
  return fillings->order->len > MAX_FILLINGS
         || fillings->tries > MIN (MAX_TRIES, fillings->search->work->steps);
}

static gint
compare_fillings (gconstpointer a, gconstpointer b)
{
  const FillingOrder *p = a, *q = b;

  if (p->left != q->left)
    return p->left < q->left ? -1 : 1;
  return (p->filling > q->filling) - (p->filling < q->filling);
}

static void
list_fillings (Fillings *fillings, guint i, gint64 room)
{
  const StockList *list = fillings->search->list;
  gint64 most;

  while (i < list->n && (list->sizes[i] > room || fillings->search->demand[i] == 0))
    i++;
  fillings->tries++;
  if (i == list->n)
    {
      keep_filling (fillings, room);
      return;
    }
  most = MIN (fillings->search->demand[i] - fillings->counts[i], room / list->sizes[i]);
  for (gint64 count = most; count >= 0 && !are_too_many (fillings); count--)
    {
      fillings->counts[i] += (gint32) count;
      list_fillings (fillings, i + 1, room - count * list->sizes[i]);
      fillings->counts[i] -= (gint32) count;
    }
}

/* --- the search --- */

static ExactResult search_rest (Search *search, gint32 bins);

static ExactResult
try_filling (Search *search, const gint32 *counts, gint32 bins)
{
  guint n = search->list->n;
  ExactResult result;

  g_array_append_vals (search->line, counts, n);
  for (guint i = 0; i < n; i++)
    search->demand[i] -= counts[i];
  result = search_rest (search, bins - 1);
  if (result == EXACT_FOUND)
    return result;
  for (guint i = 0; i < n; i++)
    search->demand[i] += counts[i];
  g_array_set_size (search->line, search->line->len - n);
  return result;
}

static ExactResult
try_fillings (Search *search, const Fillings *fillings, gint32 bins)
{
  for (guint i = 0; i < fillings->order->len; i++)
    {
      guint filling = g_array_index (fillings->order, FillingOrder, i).filling;
      const gint32 *counts = &g_array_index (fillings->fillings, gint32, filling * search->list->n);

      if (try_filling (search, counts, bins) == EXACT_FOUND)
        return EXACT_FOUND;
      if (search->gave_up)
        return EXACT_UNKNOWN;
    }
  return EXACT_NONE;
}

static ExactResult
search_stock (Search *search, guint longest, gint32 bins, gint64 spare)
{
  const StockList *list = search->list;
  Fillings fillings = { .search = search, .most_left = spare };
  ExactResult result = EXACT_UNKNOWN;

  fillings.counts = g_new0 (gint32, list->n + 1);
  fillings.fillings = g_array_new (FALSE, FALSE, sizeof (gint32));
  fillings.order = g_array_new (FALSE, FALSE, sizeof (FillingOrder));
  fillings.counts[longest] = 1;
  list_fillings (&fillings, longest, list->room - list->sizes[longest]);
  g_free (fillings.counts);
  g_array_sort (fillings.order, compare_fillings);
  if (are_too_many (&fillings) || !stock_spend (search->work, fillings.tries + 10))
    search->gave_up = TRUE;
  else
    result = try_fillings (search, &fillings, bins);
  g_array_unref (fillings.fillings);
  g_array_unref (fillings.order);
  return result;
}

/* Whether what is still wanted can be cut from `bins` stocks. */
static ExactResult
search_rest (Search *search, gint32 bins)
{
  gint64 spare = search->list->room * bins - wanted_size (search);
  guint longest = 0;
  ExactResult result;

  while (longest < search->list->n && search->demand[longest] == 0)
    longest++;
  if (longest == search->list->n)
    return EXACT_FOUND;
  if (bins <= 0 || spare < 0 || cannot_do (search, bins))
    return EXACT_NONE;
  result = search_stock (search, longest, bins, spare);
  if (result == EXACT_NONE)
    remember_failed (search, bins);
  return result;
}

/* The stocks of the search as an answer; the same ones in a row are one pattern. */
static StockAnswer *
answer_of (const Search *search)
{
  const StockList *list = search->list;
  StockAnswer *answer = stock_answer_new ();
  g_autofree gint32 *unused = g_new0 (gint32, list->n + 1);
  guint n = list->n > 0 ? search->line->len / list->n : 0;

  for (guint i = 0, next; i < n; i = next)
    {
      const gint32 *counts = &g_array_index (search->line, gint32, i * list->n);

      next = i + 1;
      while (next < n
             && memcmp (counts, &g_array_index (search->line, gint32, next * list->n),
                        list->n * sizeof (gint32))
                    == 0)
        next++;
      stock_answer_cut (answer, list, counts, (gint32) (next - i), unused);
    }
  return answer;
}

ExactResult
exact_search (const StockList *list, gint32 bins, const GArray *worths, StockWork *work,
              StockAnswer **answer)
{
  Search search = { .list = list, .worths = worths, .work = work };
  ExactResult result;

  if (bins > MAX_DEPTH)
    return EXACT_UNKNOWN;
  search.failed = g_hash_table_new_full (failed_hash, failed_equal, failed_free, NULL);
  search.line = g_array_new (FALSE, FALSE, sizeof (gint32));
  search.demand = g_new (gint32, list->n + 1);
  memcpy (search.demand, list->demand, list->n * sizeof (gint32));
  result = search_rest (&search, bins);
  if (result == EXACT_FOUND)
    *answer = answer_of (&search);
  g_hash_table_unref (search.failed);
  g_array_unref (search.line);
  g_free (search.demand);
  return result;
}
