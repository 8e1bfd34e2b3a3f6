/* exact.h - every way to cut, with all that cannot lead to fewer stocks left out */
#pragma once

#include "cutting/bound.h"

typedef enum
{
  EXACT_FOUND,   /* an answer of no more than `bins` */
  EXACT_NONE,    /* proven: there is none */
  EXACT_UNKNOWN, /* the work was used up */
} ExactResult;

/* Whether the list can be cut from `bins` stocks: each stock in turn takes the longest piece left
 * and a filling that nothing left could be added to (bin completion: R. Korf, 2002, from memory).
 * Parts of the list whose worths need more stocks than are left are not searched, nor those that
 * have failed before. `worths` are StockWorths. *answer is set when found. */
ExactResult exact_search (const StockList *list, gint32 bins, const GArray *worths, StockWork *work,
                          StockAnswer **answer);
