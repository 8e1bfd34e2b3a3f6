/* segment.h - the unbroken runs of a wall's courses, and what openings leave of them
 *
 * Where an opening takes only part of a course's height, the course runs on under its sill or over
 * its head: one segment whose height changes at the jambs (its steps). So it does where the wall's
 * top comes down into the course, or the footing steps up (docs/tops.md). */
#pragma once

#include "bond/layout.h"
#include "model/wall.h"

/* A stretch of a segment in which the free height is the same, or that is under one slope. There
 * `hi` is the greatest height, but never a whole unit's: all its pieces are cut. */
typedef struct
{
  Length from, to;
  Length lo, hi;
} Step;

typedef struct
{
  gint32 course;     /* 1-based */
  gint32 index;      /* of its run in its course, from the left, then upwards; the parts that pins
                        make of a run are segments with one index */
  gint32 part;       /* of the wall, between movement joints, from 0 at the left */
  Length start;      /* a face of the first course's regular bond: at the end of that part which the
                        bond starts from */
  Length a, b;       /* first piece's left face, last piece's right face */
  gint32 first_step; /* in Geometry.steps */
  gint32 n_steps;
  gboolean uniform;      /* one height all along */
  gboolean full;         /* that height is the unit's */
  gboolean raked;        /* it is under a slope somewhere */
  gboolean joined_left;  /* not the end of the run: a pinned perpend, whose face is `a` */
  gboolean joined_right; /* likewise; its face is b and a joint */
  gboolean set;          /* one piece that is pinned, or stands: no perpend within */
  gboolean stands;
  gint32 first_link; /* in Geometry.links */
  gint32 n_below;    /* links to segments of the course below come first */
  gint32 n_links;
  gint32 first_mark; /* in Geometry.marks: what optional rules ask of it (rule.h) */
  gint32 n_perpend_marks, n_marks;
} Segment;

typedef struct Mirror Mirror;

/* Everything of a wall that the search needs to know. */
typedef struct
{
  Length unit;  /* length of a whole unit */
  Length joint; /* head joint */
  Length min_piece, min_lap, min_rip;
  Length min_raked;  /* the shortest piece under a slope */
  Length wanted_lap; /* laps short of it are counted, last of all; half bond unless a rule says */
  Length unit_height;
  Length kerf;
  gboolean regular;      /* perpends are to lie on the regular bond where they can */
  gint32 most_lengths;   /* different ones of cut pieces that a rule wants; 0: it is off */
  gboolean lengths_must; /* and it is a must */
  GArray *allowed;       /* Length, ascending: pieces of others have a price; NULL: of none */
  gboolean wishing;      /* some rule is preferred: patterns have prices less than a cut's */
  gboolean rich;         /* more places are to be tried: a least lap and a least piece in turn */
  gint32 held;           /* courses from the first on that are laid as they stand */
  gboolean quick;        /* the first round is enough, whatever the bound says */
  GArray *courses;       /* Course, pieces not set */
  GArray *segments;      /* Segment, by course, then index */
  GArray *steps;         /* Step */
  GArray *slopes;        /* gint32: by step, the slope that it is under, in lines; -1: none */
  GArray *lines;         /* TopLine */
  GArray *links;         /* gint32: segments whose perpends can come within the least lap */
  GArray *packings;      /* Packing */
  GArray *marks;         /* Mark, by segment; empty where no rule is on */
  GArray *pins;          /* LaidPin */
  Mirror *mirror;        /* what rules of symmetry ask (mirror.h); NULL where none is on */
  GArray *like;          /* gint32: by segment, the first that can be laid in the same ways: of one
                            shape, with the same marks */
} Geometry;

/* All that stands is held fast. */
Geometry *geometry_new (const Wall *wall, const Block *block, const Laying *laying);
/* The first `held` courses of those that stand are. */
Geometry *geometry_new_over (const Wall *wall, const Block *block, const Laying *laying,
                             gint32 held);
void geometry_free (Geometry *geometry);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (Geometry, geometry_free)

static inline const Segment *
geometry_segment (const Geometry *geometry, gint32 i)
{
  return &g_array_index (geometry->segments, Segment, i);
}
static inline const Step *
geometry_step (const Geometry *geometry, gint32 i)
{
  return &g_array_index (geometry->steps, Step, i);
}
/* The slope that a step is under, in Geometry.lines; -1: none. */
static inline gint32
geometry_slope (const Geometry *geometry, const Step *step)
{
  return g_array_index (geometry->slopes, gint32,
                        step - (const Step *) (gpointer) geometry->steps->data);
}
/* Ends the list of steps with one. */
static inline void
geometry_add_step (Geometry *geometry, const Step *step, gint32 slope)
{
  g_array_append_val (geometry->steps, *step);
  g_array_append_val (geometry->slopes, slope);
}
/* The top of a step at a place of it. */
Length geometry_step_top (const Geometry *geometry, const Segment *segment, const Step *step,
                          Length x);
/* Whether a piece reaches into a slope. */
gboolean geometry_is_raked (const Geometry *geometry, const Segment *segment, Length x,
                            Length length);
/* Shorter is a breach of the piece; and of any piece of the segment at the least. */
static inline Length
geometry_shortest (const Geometry *geometry, const Segment *segment, Length x, Length length)
{
  return segment->raked && geometry_is_raked (geometry, segment, x, length) ? geometry->min_raked
                                                                            : geometry->min_piece;
}
static inline Length
segment_shortest (const Geometry *geometry, const Segment *segment)
{
  return segment->raked ? MIN (geometry->min_raked, geometry->min_piece) : geometry->min_piece;
}
/* Sets `uniform`, `full` and `raked` by the segment's steps. */
void segment_judge (const Geometry *geometry, Segment *segment);
static inline gint32
geometry_like (const Geometry *geometry, gint32 i)
{
  return g_array_index (geometry->like, gint32, i);
}
static inline gint32
geometry_link (const Geometry *geometry, const Segment *segment, gint32 i)
{
  return g_array_index (geometry->links, gint32, segment->first_link + i);
}

/* What a piece at [x, x + length) of a segment is. */
typedef struct
{
  Length lo, hi;      /* of its bounding box */
  Length thickest;    /* its greatest height; under a slope that of the step */
  gboolean rectangle; /* where it is not raked */
  gboolean whole;
} PieceForm;
/* The stretches of a course, whose bottom lies there, that are this wall's: all of it, less
 * movement joints and a gap where a wall meets it that runs through there. GArray of Span, from the
 * left; new. */
typedef struct
{
  Length from, to;
} Span;
GArray *course_spans (const Wall *wall, const Laying *laying, gint32 number, Length bottom);
/* Where the pieces of a course begin and end: beside the other wall where that runs through. */
void course_ends (const Wall *wall, const Laying *laying, gint32 number, Length bottom,
                  Length *from, Length *to);
PieceForm geometry_piece_form (const Geometry *geometry, const Segment *segment, Length x,
                               Length length);
