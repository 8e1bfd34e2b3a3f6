/* fill.c - quick answers: one stock after another filled as well as a simple rule can */
#include "cutting/fill.h"

#include <string.h>

#define FILLINGS_TRIED 400 /* of one stock: more gain little */

typedef struct
{
  const StockList *list;
  gint32 *demand; /* what is still wanted */
  gint32 *counts; /* of the stock being filled */
  gint32 *best;
  gint64 least; /* left over by the best filling */
  gint32 tries;
} Filling;

static void
filling_begin (Filling *filling, const StockList *list, const gint32 *demand)
{
  gsize size = list->n * sizeof (gint32);

  *filling = (Filling){ .list = list };
  filling->demand = g_new0 (gint32, list->n + 1);
  filling->counts = g_new0 (gint32, list->n + 1);
  filling->best = g_new0 (gint32, list->n + 1);
  if (size > 0)
    memcpy (filling->demand, demand, size);
}

static void
filling_end (Filling *filling)
{
  g_free (filling->demand);
  g_free (filling->counts);
  g_free (filling->best);
}

/* The first piece from `i` on that is still wanted and fits; list->n when there is none. */
static guint
next_piece (const Filling *filling, guint i, gint64 room)
{
  const StockList *list = filling->list;

  while (i < list->n && (list->sizes[i] > room || filling->demand[i] <= filling->counts[i]))
    i++;
  return i;
}

/* How often the filling can be cut from what is wanted. */
static gint32
times_of (const Filling *filling, const gint32 *counts)
{
  gint32 times = G_MAXINT32;

  for (guint i = 0; i < filling->list->n; i++)
    if (counts[i] > 0)
      times = MIN (times, filling->demand[i] / counts[i]);
  return times;
}

StockAnswer *
stock_fill_longest_first (const StockList *list, const gint32 *demand)
{
  StockAnswer *answer = stock_answer_new ();
  Filling filling;
  guint longest = 0;

  filling_begin (&filling, list, demand);
  while ((longest = next_piece (&filling, longest, list->room)) < list->n)
    {
      gint64 room = list->room;

      for (guint i = longest; i < list->n; i = next_piece (&filling, i, room))
        {
          filling.counts[i] = (gint32) MIN (filling.demand[i], room / list->sizes[i]);
          room -= filling.counts[i] * list->sizes[i];
        }
      stock_answer_cut (answer, list, filling.counts, times_of (&filling, filling.counts),
                        filling.demand);
      memset (filling.counts, 0, list->n * sizeof (gint32));
    }
  filling_end (&filling);
  return answer;
}

/* Every way to go on with pieces from `i` on, many and long ones first, until nothing is left
 * over. */
static void
try_fillings (Filling *filling, guint i, gint64 room)
{
  const StockList *list = filling->list;

  filling->tries++;
  if (room < filling->least)
    {
      filling->least = room;
      memcpy (filling->best, filling->counts, list->n * sizeof (gint32));
    }
  for (i = next_piece (filling, i, room); i < list->n; i = next_piece (filling, i + 1, room))
    {
      gint64 most = MIN (filling->demand[i], room / list->sizes[i]);

      for (gint64 count = most; count > 0; count--)
        {
          if (filling->least == 0 || filling->tries >= FILLINGS_TRIED)
            return;
          filling->counts[i] = (gint32) count;
          try_fillings (filling, i + 1, room - count * list->sizes[i]);
          filling->counts[i] = 0;
        }
    }
}

/* The longest piece is in every filling tried: it must go somewhere. */
static void
try_longest (Filling *filling, guint longest)
{
  gint64 size = filling->list->sizes[longest];
  gint64 most = MIN (filling->demand[longest], filling->list->room / size);

  for (gint64 count = most; count > 0; count--)
    {
      if (filling->least == 0 || filling->tries >= FILLINGS_TRIED)
        break;
      filling->counts[longest] = (gint32) count;
      try_fillings (filling, longest + 1, filling->list->room - count * size);
    }
  filling->counts[longest] = 0;
}

StockAnswer *
stock_fill_tightest (const StockList *list, const gint32 *demand, StockWork *work)
{
  StockAnswer *answer = stock_answer_new ();
  Filling filling;
  guint longest = 0;

  filling_begin (&filling, list, demand);
  while ((longest = next_piece (&filling, longest, list->room)) < list->n)
    {
      filling.least = G_MAXINT64;
      filling.tries = 0;
      try_longest (&filling, longest);
      stock_answer_cut (answer, list, filling.best, times_of (&filling, filling.best),
                        filling.demand);
      work->steps -= filling.tries;
    }
  filling_end (&filling);
  return answer;
}
