/* place.h - what a wall would cost with one opening, its sill or its head elsewhere */
#pragma once

#include "advice/cost.h"

/* What of an opening moves. */
typedef enum
{
  SHIFT_ALONG, /* the whole of it, along the wall; its place is that of its left jamb */
  SHIFT_SILL,  /* the sill; the head stays */
  SHIFT_HEAD,  /* the head; the sill stays */
  N_SHIFTS
} Shift;

typedef struct
{
  Length at;         /* the left jamb's place, or the height of sill or head */
  gboolean possible; /* it fits there; else nothing else is told */
  Cost cost;
} Place;

/* Where it is now. */
Length shift_at (const Opening *opening, Shift shift);
void shift_to (Opening *opening, Shift shift, Length at);

/* Places worth a try within `within` of where the opening is: whole multiples of `step`, and those
 * between them at which something fits exactly: along the wall, where the pier beside it is a whole
 * number of half blocks; in height, where a course ends. Length, the nearest first; of two as near,
 * the lower. Free with g_array_unref(). */
GArray *places_list (const Wall *wall, const Block *block, OpeningId opening, Shift shift,
                     Length within, Length step);

/* Fills in what `place->at` costs. FALSE when stopped. */
gboolean place_try (const Wall *wall, const Block *block, OpeningId opening, Shift shift, Look look,
                    Place *place, const gint *stop);
