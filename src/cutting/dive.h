/* dive.h - whole answers out of the linear program: rounded down, the rest solved anew */
#pragma once

#include "cutting/columns.h"

/* Takes the whole parts of the program's solution, or else the pattern nearest to a whole one, and
 * solves for what is left, until nothing is. After each step the rest is also filled by simple
 * rules, and searched when it is short. `odd` is the step at which the second choice is taken; 0:
 * none. Replaces *best when the result is better; stops at `enough` bins. */
void stock_dive (Columns *columns, const StockList *list, guint odd, gint32 enough,
                 StockAnswer **best, StockWork *work);
