/* standing.h - where all openings of a wall stand, what that costs, and the search for better */
#pragma once

#include "advice/improve.h"
#include "advice/pier-bound.h"

/* The places that one opening may take. */
typedef struct
{
  guint index; /* of the wall's openings */
  GArray *at;  /* Length, ascending */
} Free;

/* Where every opening of the wall stands, and what that costs. */
typedef struct
{
  Length *x;
  gboolean possible;
  Cost cost;
  gint64 shift; /* of all together */
} Standing;

typedef struct
{
  const Wall *wall;
  const Block *block;
  const ImproveHow *how;
  Aim aim;
  GArray *frees; /* Free */
  guint n;       /* openings of the wall */
  gint64 pieces; /* of the wall, about */
  gint64 work;   /* pieces that may still be laid */
  Improvement *result;
  Standing best;
} Search;

void search_init (Search *search, const Wall *wall, const Block *block, const ImproveHow *how);
/* Frees all but the result. */
void search_clear (Search *search);

static inline const Free *
search_free_at (const Search *search, guint i)
{
  return &g_array_index (search->frees, Free, i);
}

/* How far all openings are from where they were drawn, when they stand at `x`. */
gint64 standing_shift (const Search *search, const Length *x);
gboolean standing_overlaps (const Search *search, const Length *x);
Standing standing_copy (const Search *search, const Standing *standing);
/* The wall with its openings there. */
Wall *standing_wall (const Search *search, const Length *x);

/* Lays one and fills in what it costs, but no shift; may be called in several threads at a time.
 * FALSE when stopped. */
gboolean standing_lay (const Search *search, Standing *standing, Look look);
/* Counts n walls laid as work and as laid. */
void search_count (Search *search, guint n, Look look);
/* Lays n of them, shifts too, and counts the work. FALSE when stopped. */
gboolean standings_lay (Search *search, Standing *standings, guint n, Look look);
/* Takes the best of n where it is better than the best so far, and is as it is laid; *taken is then
 * TRUE, else left alone. FALSE when stopped. */
gboolean standings_take_best (Search *search, Standing *standings, guint n, gboolean *taken);
