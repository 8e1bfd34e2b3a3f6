/* price.h - the pattern of the greatest worth: a bounded knapsack in whole numbers */
#pragma once

#include "cutting/list.h"

/* The most worth that a pattern of the list can hold, each piece at most as often as the list wants
 * it; `worths` are list->n numbers from 0 to STOCK_WORTH. `counts` gets such a pattern. When that
 * takes too many steps, or many and a pattern of `enough` was found, a number that is not less than
 * the most, and the best pattern found. */
gint64 stock_best_pattern (const StockList *list, const gint64 *worths, gint64 enough,
                           gint32 *counts, StockWork *work);
