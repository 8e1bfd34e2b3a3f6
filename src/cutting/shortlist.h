/* shortlist.h - every pattern that an answer of so many stocks can use
 *
 * By some worths no pattern is worth more than `most` and the list is worth W. An answer of `bins`
 * stocks then has no pattern of less than W - (bins - 1) * most: the others could not make up for
 * it. Where the linear program leaves little to spare these are few, and the whole question is a
 * choice among them. */
#pragma once

#include "cutting/bound.h"

/* `count` pieces of kind `kind`. */
typedef struct
{
  guint kind;
  gint32 count;
} ShortlistEntry;

typedef struct
{
  guint n;         /* patterns */
  GArray *first;   /* guint, n + 1 numbers: where each pattern's entries begin */
  GArray *entries; /* ShortlistEntry, kinds of a pattern rising */
} Shortlist;

/* The patterns that an answer of `bins` stocks can use, each as full as the list's demand allows:
 * answers may cut more than is wanted. `worths` are StockWorths, at least one. NULL when there are
 * more than `most` or they are not found with a fixed amount of work. */
Shortlist *shortlist_new (const StockList *list, gint32 bins, const GArray *worths, guint most,
                          StockWork *work);
void shortlist_free (Shortlist *shortlist);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (Shortlist, shortlist_free)

const ShortlistEntry *shortlist_pattern (const Shortlist *shortlist, guint pattern, guint *n);
