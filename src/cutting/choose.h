/* choose.h - whether an answer of so many stocks can be chosen from a shortlist of patterns */
#pragma once

#include "cutting/exact.h"
#include "cutting/shortlist.h"

/* Branch and bound: the linear program of the listed patterns is solved; where it uses some of them
 * a fraction of a time, stocks that hold two certain pieces together are made more or fewer (after
 * D. Ryan and B. Foster, An integer programming approach to scheduling, 1981, from memory), and so
 * on. A branch is given up only by whole numbers: its duals, rounded, are priced on every pattern
 * of the list. EXACT_NONE says that no choice from the shortlist cuts the list from `bins` stocks;
 * *answer is set when found. */
ExactResult choose_search (const StockList *list, gint32 bins, const Shortlist *shortlist,
                           StockWork *work, StockAnswer **answer);
