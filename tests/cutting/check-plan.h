/* check-plan.h - what a cutting plan must be, checked apart from the code that made it */
#pragma once

#include "cutting/cutting.h"

/* Asserts that every piece is cut as often as it is wanted, each pattern fits its stock, bins are
 * counted right, patterns are in order and the bound is not above the bins. */
void check_plan (const CuttingPlan *plan, gint64 stock, gint64 kerf, const CuttingItem *items,
                 guint n_items);
/* The fewest stocks by trying every way; for a dozen pieces at most. */
gint32 fewest_by_trying (gint64 stock, gint64 kerf, const CuttingItem *items, guint n_items);
/* The fewest stocks by a mixed-integer program of flows through the stock's length (J. Valerio de
 * Carvalho, 1999, from memory); for stocks of some hundred units. */
gint32 fewest_by_flow (gint64 stock, gint64 kerf, const CuttingItem *items, guint n_items);
