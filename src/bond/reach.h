/* reach.h - the patterns that a segment can have at all: faces that can be reached with so many
 * cuts, over all real places */
#pragma once

#include "bond/bound-segment.h"
#include "bond/intervals.h"

/* So many strips are counted. */
#define REACH_MAX_STRIPS 8

/* What is asked of a segment's patterns. */
typedef struct
{
  Length least;           /* shortest piece */
  gint32 strips;          /* pieces thinner than the thinnest strip, at most; -1: any number */
  const Interval *needed; /* a perpend's face is in each of these */
  gint32 n_needed;
  const Interval *barred; /* none is in one of these, which ascend by their beginnings */
  gint32 n_barred;
} Ask;

/* Room to answer in: one question after another, of any segment of a wall. */
typedef struct Reach Reach;

Reach *reach_new (const Geometry *geometry);
void reach_free (Reach *reach);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (Reach, reach_free)

/* Fewest cuts of patterns of any segment that keep that, with any number of pieces. */
void reach_fewest (Reach *reach, const Segment *segment, const Ask *ask, gint32 states[N_STATES]);
/* Fewest cuts of such patterns whose ends are whole as bits 0 and 1 of `ends` say; NEVER where it
 * is more than `most`. */
gint32 reach_fewest_to (Reach *reach, const Segment *segment, const Ask *ask, gint32 ends,
                        gint32 most);
/* The faces (Length, ascending, in a new array) of such a pattern with `cuts` cuts whose ends are
 * whole as bits 0 and 1 of `ends` say; NULL where there is none. */
GArray *reach_faces (Reach *reach, const Segment *segment, const Ask *ask, gint32 ends,
                     gint32 cuts);
/* Steps made in it so far: intervals looked at. */
gint64 reach_work (const Reach *reach);
