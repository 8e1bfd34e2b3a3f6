/* tables.h - the least sum of costs, of variables by themselves and in pairs, one value for each
 *
 * Variables are eliminated one after another, each into the pair that its two neighbours are (R.
 * Dechter, "Bucket Elimination", Artificial Intelligence 113, 1999). What has three neighbours and
 * more takes each of its values in turn. Costs are >= 0; sums stop at TABLES_NEVER. */
#pragma once

#include <glib.h>

#define TABLES_NEVER (((gint32) 1 << 30) - 1)

typedef struct Tables Tables;

/* `n` variables without values and pairs. */
Tables *tables_new (gint32 n);
void tables_free (Tables *tables);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (Tables, tables_free)

/* Gives a variable its `n_values` costs (copied). */
void tables_set (Tables *tables, gint32 variable, const gint32 *costs, gint32 n_values);
/* Costs of a pair of variables, n_values (a) rows of n_values (b); takes `costs`. One call a pair,
 * after both are set. */
void tables_pair (Tables *tables, gint32 a, gint32 b, gint32 *costs);
/* The least sum, or `enough` where it is no less; below that, the values that it takes go into
 * `values`, one for each variable. It is used up by it. More than `work` steps are not made: then
 * pairs are left out, and the answer is no more than the least sum. */
gint32 tables_least (Tables *tables, gint32 enough, gint64 work, gint32 *values);
