/* fill.h - quick answers: one stock after another filled as well as a simple rule can */
#pragma once

#include "cutting/list.h"

/* Each stock takes the longest piece that still fits, again and again (the same bins as
 * first-fit-decreasing). `demand` is what is wanted, list->n numbers. */
StockAnswer *stock_fill_longest_first (const StockList *list, const gint32 *demand);
/* Each stock takes the longest piece left and beside it what leaves the least over (after J. Gupta
 * and J. Ho, minimum bin slack, 1999, from memory). Looks at no more than a fixed number of
 * fillings of each stock. */
StockAnswer *stock_fill_tightest (const StockList *list, const gint32 *demand, StockWork *work);
