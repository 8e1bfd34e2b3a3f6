/* shortlist.c - every pattern that an answer of so many stocks can use */
#include "cutting/shortlist.h"

#include <string.h>

#define LISTING_STEPS 4000000 /* then the patterns are too many */

/* Kinds in the order of the search: the most worth by size first. */
typedef struct
{
  guint kind;
  gint64 size, worth, most;
} Rank;

typedef struct
{
  const StockList *list;
  const GArray *worths; /* StockWorths */
  gint64 *least;        /* a pattern's, by each of the worths */
  Rank *ranks;
  ShortlistEntry *chosen; /* by rank, in the order of the search */
  guint n_chosen;
  gint32 *counts; /* by kind */
  Shortlist *found;
  guint most;
  StockWork work;
  gboolean gave_up;
} Listing;

const ShortlistEntry *
shortlist_pattern (const Shortlist *shortlist, guint pattern, guint *n)
{
  guint first = g_array_index (shortlist->first, guint, pattern);

  *n = g_array_index (shortlist->first, guint, pattern + 1) - first;
  return &g_array_index (shortlist->entries, ShortlistEntry, first);
}

void
shortlist_free (Shortlist *shortlist)
{
  if (shortlist == NULL)
    return;
  g_array_unref (shortlist->first);
  g_array_unref (shortlist->entries);
  g_free (shortlist);
}

/* By worth per size, the best first; then the longest. Products stay within 57 bits. */
static gint
compare_ranks (gconstpointer a, gconstpointer b)
{
  const Rank *p = a, *q = b;
  gint64 left = p->worth * q->size, right = q->worth * p->size;

  if (left != right)
    return left > right ? -1 : 1;
  return (p->kind > q->kind) - (p->kind < q->kind);
}

/* The worths that prove the most: those by which the least can be spared guide the search. */
static const StockWorths *
best_worths (const StockList *list, const GArray *worths)
{
  const StockWorths *best = NULL;
  double most = -1;

  for (guint i = 0; i < worths->len; i++)
    {
      const StockWorths *here = &g_array_index (worths, StockWorths, i);
      double stocks = 0;

      for (guint k = 0; k < list->n; k++)
        stocks += (double) (here->worths[k] * list->demand[k]);
      stocks = here->most > 0 ? stocks / (double) here->most : 0;
      if (stocks >= most)
        {
          most = stocks;
          best = here;
        }
    }
  return best;
}

/* What room can hold at the most from rank `r` on, pieces cut at will. */
static gint64
limit (const Listing *listing, guint r, gint64 room)
{
  gint64 worth = 0;

  for (; r < listing->list->n && room > 0; r++)
    {
      const Rank *rank = &listing->ranks[r];

      if (room < rank->size * rank->most)
        {
          gint64 whole = room / rank->size;

          return worth + whole * rank->worth
                 + (room - whole * rank->size) * rank->worth / rank->size;
        }
      worth += rank->worth * rank->most;
      room -= rank->size * rank->most;
    }
  return worth;
}

static gboolean
is_full (const Listing *listing, gint64 room)
{
  const StockList *list = listing->list;

  for (guint i = list->n; i-- > 0 && list->sizes[i] <= room;)
    if (listing->counts[i] < list->demand[i])
      return FALSE;
  return TRUE;
}

static gboolean
is_worth_enough (const Listing *listing)
{
  for (guint w = 0; w < listing->worths->len; w++)
    {
      const StockWorths *worths = &g_array_index (listing->worths, StockWorths, w);
      gint64 worth = 0;

      for (guint i = 0; i < listing->n_chosen; i++)
        worth += worths->worths[listing->chosen[i].kind] * listing->chosen[i].count;
      if (worth < listing->least[w])
        return FALSE;
    }
  return TRUE;
}

static gint
compare_entries (gconstpointer a, gconstpointer b)
{
  const ShortlistEntry *p = a, *q = b;

  return (p->kind > q->kind) - (p->kind < q->kind);
}

static void
keep (Listing *listing, gint64 room)
{
  Shortlist *found = listing->found;
  guint first = found->entries->len;

  if (!is_full (listing, room) || !is_worth_enough (listing))
    return;
  if (found->n == listing->most)
    {
      listing->gave_up = TRUE;
      return;
    }
  g_array_append_vals (found->entries, listing->chosen, listing->n_chosen);
  qsort (&g_array_index (found->entries, ShortlistEntry, first), listing->n_chosen,
         sizeof (ShortlistEntry), compare_entries);
  found->n++;
  g_array_append_val (found->first, found->entries->len);
}

/* Pieces from rank `r` on, which must bring `least` worth. */
static void
list_from (Listing *listing, guint r, gint64 room, gint64 least)
{
  const Rank *rank;

  while (r < listing->list->n && listing->ranks[r].size > room)
    r++;
  if (listing->gave_up || !stock_spend (&listing->work, 1))
    {
      listing->gave_up = TRUE;
      return;
    }
  if (r == listing->list->n)
    {
      keep (listing, room);
      return;
    }
  rank = &listing->ranks[r];
  for (gint64 count = MIN (rank->most, room / rank->size); count >= 0; count--)
    {
      gint64 left = room - count * rank->size, wanted = least - count * rank->worth;

      /* Fewer of the worthiest kind only lower the limit. */
      if (limit (listing, r + 1, left) < wanted)
        return;
      if (count > 0)
        listing->chosen[listing->n_chosen++] = (ShortlistEntry){ rank->kind, (gint32) count };
      listing->counts[rank->kind] = (gint32) count;
      list_from (listing, r + 1, left, wanted);
      listing->counts[rank->kind] = 0;
      listing->n_chosen -= count > 0;
    }
}

/* The worth that no pattern of the answer can be under. */
static gint64
least_of_pattern (const StockList *list, const StockWorths *worths, gint32 bins)
{
  gint64 total = 0;

  for (guint i = 0; i < list->n; i++)
    total += worths->worths[i] * list->demand[i];
  return total - (bins - 1) * worths->most;
}

static Shortlist *
empty_list (void)
{
  Shortlist *shortlist = g_new0 (Shortlist, 1);
  guint zero = 0;

  shortlist->first = g_array_new (FALSE, FALSE, sizeof (guint));
  shortlist->entries = g_array_new (FALSE, FALSE, sizeof (ShortlistEntry));
  g_array_append_val (shortlist->first, zero);
  return shortlist;
}

static void
begin (Listing *listing, gint32 bins, const StockWorths *guide)
{
  const StockList *list = listing->list;

  listing->least = g_new (gint64, listing->worths->len);
  for (guint w = 0; w < listing->worths->len; w++)
    listing->least[w]
        = least_of_pattern (list, &g_array_index (listing->worths, StockWorths, w), bins);
  listing->chosen = g_new (ShortlistEntry, list->n + 1);
  listing->counts = g_new0 (gint32, list->n + 1);
  listing->ranks = g_new (Rank, list->n + 1);
  for (guint i = 0; i < list->n; i++)
    listing->ranks[i] = (Rank){ i, list->sizes[i], guide->worths[i],
                                MIN (list->demand[i], list->room / list->sizes[i]) };
  if (list->n > 1)
    qsort (listing->ranks, list->n, sizeof (Rank), compare_ranks);
  listing->found = empty_list ();
}

Shortlist *
shortlist_new (const StockList *list, gint32 bins, const GArray *worths, guint most,
               StockWork *work)
{
  gint64 steps = MIN (work->steps, LISTING_STEPS);
  Listing listing = { .list = list, .worths = worths, .most = most, .work = { work->stop, steps } };
  const StockWorths *guide = best_worths (list, worths);

  begin (&listing, bins, guide);
  list_from (&listing, 0, list->room, least_of_pattern (list, guide, bins));
  work->steps -= steps - listing.work.steps;
  g_free (listing.least);
  g_free (listing.chosen);
  g_free (listing.counts);
  g_free (listing.ranks);
  if (!listing.gave_up)
    return listing.found;
  shortlist_free (listing.found);
  return NULL;
}
