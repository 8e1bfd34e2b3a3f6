/* bound.h - how many stocks a list needs at the least, each number a proof in whole numbers
 *
 * Give each piece a worth. When no pattern holds more than `most` worth, a list of worth W needs at
 * least W / most stocks, whatever the worths are. Sizes are such worths, with `most` the room of a
 * stock; so are the functions of Lueker, Fekete and Schepers, and the duals of the linear program.
 */
#pragma once

#include "cutting/list.h"

/* The best of: total size; pieces over a half and what cannot lie beside them (S. Martello and
 * P. Toth, Lower bounds and reduction procedures for the bin packing problem, 1990); the stair
 * functions u(k) of S. Fekete and J. Schepers, New classes of fast lower bounds for bin packing
 * problems, 2001. All from memory; the tests prove them by exhaustive search. */
gint32 stock_bound_quick (const StockList *list);

/* Worths of pieces and the most that a pattern within the list's demand can hold of them. */
typedef struct
{
  gint64 *worths; /* list->n numbers >= 0, each <= STOCK_WORTH */
  gint64 most;    /* >= the worth of every pattern */
} StockWorths;

#define STOCK_WORTH (G_GINT64_CONSTANT (1) << 24)

/* Stocks that `demand` needs by these worths. */
gint32 stock_bound_by (const StockWorths *worths, guint n, const gint32 *demand);
