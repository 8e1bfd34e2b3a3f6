/* path.h - the cheapest pattern of one segment, given what each perpend's place costs */
#pragma once

#include "bond/pattern.h"

/* The best way to a face, over the places of a path. */
typedef struct
{
  Cost cost;   /* of everything left of the face, its toll included */
  gint32 from; /* node before, -1: the segment's beginning */
  gint32 pieces;
} PathNode;

/* The way that ends in nodes[n], the segment's end, n places having a node each: its faces and
 * n_pieces, no counts. The caller owns it. */
Pattern path_trace (const GArray *places, const PathNode *nodes, guint n);

/* `places` are ascending faces within the segment; `toll[i]` is what a perpend at places[i] costs
 * beside the pieces, >= 0. The result has its counts set; its cost, tolls included, goes to *cost.
 * Ties go to the longer pieces on the left. Exact over `places`, and always finds something, since
 * slivers are allowed at a breach's price, when places hold the grid from either end. */
Pattern path_solve (const Geometry *geometry, const Segment *segment, const GArray *places,
                    const Cost *toll, Cost *cost);
