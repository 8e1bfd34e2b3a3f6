/* list.h - a cutting list made ready for the search, patterns, and answers to the list */
#pragma once

#include "cutting/cutting.h"

/* A saw cut after every piece, the last one too, on a stock longer by one kerf: so kerfs need no
 * further thought. Sizes are divided by what they have in common. */
typedef struct
{
  gint64 room;     /* of a stock: (stock + kerf) / common, rounded down */
  guint n;         /* different pieces */
  gint64 *lengths; /* as given, longest first, no two equal */
  gint64 *sizes;   /* (length + kerf) / common; each <= room */
  gint32 *demand;  /* pieces of each, > 0 */
  gint32 total;    /* pieces in all */
} StockList;

/* The longest stock or piece, and the most pieces of a list: sums of products stay within 63 bits.
 */
#define STOCK_MAX_LENGTH (G_GINT64_CONSTANT (1) << 32)
#define STOCK_MAX_PIECES (1 << 24)

/* NULL with an error when an item cannot be; items of quantity 0 are left out. */
StockList *stock_list_new (gint64 stock, gint64 kerf, const CuttingItem *items, guint n_items,
                           GError **error);
void stock_list_free (StockList *list);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (StockList, stock_list_free)

/* How much may still be tried: steps of work, so that answers do not depend on the clock. */
typedef struct
{
  const gint *stop; /* or NULL */
  gint64 steps;     /* left */
} StockWork;

gboolean stock_stopped (const StockWork *work);
/* Takes `steps` from what is left; FALSE when that is used up or the job is stopped. */
gboolean stock_spend (StockWork *work, gint64 steps);

/* The same cuts on `times` stocks. */
typedef struct
{
  gint32 times;
  guint first, n; /* its pieces in StockAnswer.pieces */
} StockPattern;

typedef struct
{
  gint32 bins;
  GArray *patterns; /* StockPattern */
  GArray *pieces;   /* gint32: index into the list, longest first in each pattern */
} StockAnswer;

StockAnswer *stock_answer_new (void);
StockAnswer *stock_answer_copy (const StockAnswer *answer);
void stock_answer_free (StockAnswer *answer);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (StockAnswer, stock_answer_free)

/* Cuts the pattern that has counts[i] pieces i `times` times and takes them from `demand`. */
void stock_answer_cut (StockAnswer *answer, const StockList *list, const gint32 *counts,
                       gint32 times, gint32 *demand);
/* Appends the patterns of `more`. */
void stock_answer_extend (StockAnswer *answer, const StockAnswer *more);
