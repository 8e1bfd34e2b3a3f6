/* columns.h - the linear program of all patterns, which are made as they are wanted
 *
 * P. Gilmore and R. Gomory, A linear programming approach to the cutting stock problem, 1961: the
 * fewest stocks when patterns may be cut a fraction of a time. Its duals are worths of the pieces;
 * rounded to whole numbers and priced exactly they prove a bound that no rounding can spoil. */
#pragma once

#include "cutting/bound.h"

typedef struct Columns Columns;

/* The list is kept by reference. A job that used columns calls columns_leave_thread() at its end,
 * when it has none left: it frees what GLPK keeps for the thread. */
Columns *columns_new (const StockList *list);
void columns_free (Columns *columns);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (Columns, columns_free)
void columns_leave_thread (void);

/* A pattern that the program may use; counts[i] pieces i. */
void columns_add (Columns *columns, const gint32 *counts);
/* Solves for `demand`, making patterns until none is worth more than a stock, `enough` is proven or
 * the work is used up. FALSE when there is no solution to use. */
gboolean columns_solve (Columns *columns, const gint32 *demand, gint32 enough, StockWork *work);
/* Of the last solution: the bound proven for its demand, how often each pattern is used, and what
 * it is. */
gint32 columns_bound (const Columns *columns);
guint columns_n (const Columns *columns);
double columns_used (const Columns *columns, guint pattern);
const gint32 *columns_counts (const Columns *columns, guint pattern);
/* Worths that bounds were proven by, good for every part of the list's demand: StockWorths. */
const GArray *columns_worths (const Columns *columns);
