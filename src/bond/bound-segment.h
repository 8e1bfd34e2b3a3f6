/* bound-segment.h - the fewest cuts of one segment, by how its ends begin */
#pragma once

#include "bond/segment.h"

/* bit 0: begins with a whole unit; bit 1: ends with one. */
#define N_STATES 4
/* More cuts than any: it cannot be. */
#define NEVER 1000000
/* So many strips are counted. */
#define BOUND_MAX_STRIPS 8

/* Fewest cuts of a segment of one full height, pieces at least `least` long, with the fewest pieces
 * that reach from end to end (`more` 0) or with up to two more of them (1). */
void bound_plain_states (const Geometry *geometry, const Segment *segment, Length least,
                         gint32 more, gint32 states[N_STATES]);
typedef struct
{
  Length from, to; /* both included */
} Interval;

/* By their beginnings. */
gint interval_compare (gconstpointer a, gconstpointer b);

/* What is asked of a segment's patterns. */
typedef struct
{
  Length least;           /* shortest piece */
  gint32 strips;          /* pieces thinner than the thinnest strip, at most; -1: any number */
  const Interval *needed; /* a perpend's face is in each of these */
  gint32 n_needed;
  const Interval *barred; /* none is in one of these, which ascend by their beginnings */
  gint32 n_barred;
} BoundAsk;

/* Fewest cuts of patterns of any segment that keep that, with any number of pieces. */
void bound_states_beside (const Geometry *geometry, const Segment *segment, const BoundAsk *ask,
                          gint32 states[N_STATES]);
/* Whether there is such a pattern of no more than `most` cuts whose ends are whole as bits 0 and 1
 * of `ends` say. */
gboolean bound_can_be (const Geometry *geometry, const Segment *segment, const BoundAsk *ask,
                       gint32 ends, gint32 most);
/* The faces (Length, ascending, in a new array) of such a pattern with `cuts` cuts whose ends are
 * whole as bits 0 and 1 of `ends` say; NULL where there is none. */
GArray *bound_faces_beside (const Geometry *geometry, const Segment *segment, const BoundAsk *ask,
                            gint32 ends, gint32 cuts);
