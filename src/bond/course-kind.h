/* course-kind.h - the courses of a wall that may be laid in the same ways, and the places in them
 *
 * For a symmetrical bond: courses of one kind have the same runs, marks and axes at the same
 * places. */
#pragma once

#include "bond/mirror.h"

typedef struct
{
  gint32 course;   /* one of them, 1-based */
  gint32 first, n; /* its segments */
  GArray **places; /* Length, by segment: pattern_places() and their images, ascending */
  GArray *axes;    /* Axis, that ask something here */
  gboolean must;   /* some of them */
  GPtrArray *ways; /* Way, see course-way.h */
} Kind;

/* Of one course, without any way yet; ways are freed by `free_way`. */
Kind *kind_new (const Geometry *geometry, gint32 course, GDestroyNotify free_way);
void kind_free (gpointer kind);
gboolean kind_same (const Geometry *geometry, const Kind *a, const Kind *b);

static inline const Segment *
kind_segment (const Geometry *geometry, const Kind *kind, gint32 i)
{
  return geometry_segment (geometry, kind->first + i);
}

/* Appends a face where a perpend may be in the segment. */
void kind_add_inside (const Geometry *geometry, const Segment *segment, Length face, GArray *faces);
/* Appends the image of a face about one axis, or about all, where that lies in segment i. */
void kind_add_image (const Geometry *geometry, const Kind *kind, gint32 i, const Axis *axis,
                     Length face, GArray *faces);
void kind_add_images (const Geometry *geometry, const Kind *kind, gint32 i, Length face,
                      GArray *faces);
/* Appends the faces of whole units to both sides of a piece so long that has its middle on the
 * axis; less than 0: of a perpend there. As far as the axis asks, unsorted. */
void kind_add_grid (const Geometry *geometry, const Kind *kind, const Axis *axis, Length piece,
                    GArray *faces);
