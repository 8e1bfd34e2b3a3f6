/* layout.h - the answer: a wall's pieces, course by course, and how good they are */
#pragma once

#include "model/wall.h"

typedef enum
{
  PIECE_WHOLE,
  PIECE_SHORT,   /* shortened only */
  PIECE_RIPPED,  /* its height cut down all along, shortened or not */
  PIECE_NOTCHED, /* not a rectangle: a corner of an opening is cut out of it */
  PIECE_RAKED,   /* cut to the slope of the wall's top, whatever else is cut of it */
} PieceShape;

/* What was set by hand of a piece. */
typedef enum
{
  PINNED_NOT,
  PINNED_FACE,  /* that it begins where it does */
  PINNED_PIECE, /* all of it */
} Pinned;

typedef struct
{
  Length x, z; /* from the wall's left end; above the foundation */
} LayPoint;

typedef struct
{
  gint32 course;  /* 1-based */
  gint32 number;  /* 1-based from the left in its course; its id is "KEY/course/number" */
  gint32 segment; /* unbroken run that it belongs to, counted from 0 in its course */
  PieceShape shape;
  Pinned pinned;
  gboolean stands;       /* it is laid already */
  Length x, length;      /* left face and length of its bounding box */
  Length bottom, height; /* of its bounding box */
  gint32 outline;        /* first of its corners in points; -1: it is the bounding box */
  gint32 n_outline;      /* corners, counter-clockwise as seen, the first one lowest left */
} Piece;

typedef struct
{
  gint32 number;      /* 1-based */
  Length bottom, top; /* of the full course; the last one's top may be the wall's (ripped) */
  gboolean stands;    /* it is laid already */
  gint32 first;       /* its pieces in pieces[first .. first + n_pieces) */
  gint32 n_pieces;
} Course;

/* What became of a pin. */
typedef enum
{
  PIN_MET,
  PIN_NO_COURSE, /* the wall has not so many courses */
  PIN_NO_WALL,   /* no piece is laid there: an opening, a return, what is packed, beyond the wall */
  PIN_AT_END,   /* it leaves no room for a piece and its joint before the end of the run, at `at` */
  PIN_TOO_LONG, /* longer than the unit */
  PIN_AGAINST,  /* a pin before it in the list says something else: the one that begins at `at` */
  PIN_STANDS,   /* the course stands, and no such piece is in it */
} PinFate;

typedef struct
{
  gint32 course;    /* of the pin, as its place and its length */
  Length x, length; /* 0: only that a piece begins there */
  PinFate fate;
  Length at;      /* see PinFate */
  gint32 segment; /* of its course, where it is met */
} LaidPin;

typedef enum
{
  BREACH_MIN_PIECE, /* a piece shorter than the shortest */
  BREACH_MIN_LAP,   /* a perpend too near to one in the course below */
  BREACH_MIN_RIP,   /* a strip thinner than the thinnest */
  BREACH_MIN_RAKED, /* a raked piece shorter than the shortest */
  BREACH_OF_RULE,   /* and a RuleKind: an optional rule that is a must */
} BreachKind;

/* What a breach is of: the perpend that it is told by, or a piece. */
gboolean breach_is_of_perpend (BreachKind kind);
/* Whether it is of the limits that every wall has: piece, lap, strip. */
static inline gboolean
breach_is_of_limit (BreachKind kind)
{
  return kind < BREACH_OF_RULE;
}

typedef struct
{
  BreachKind kind;
  gint32 course; /* of a lap: the upper one */
  Length x;      /* the perpend's or the piece's left face */
  Length is;     /* what it measures */
  Length least;  /* what it should; of RULE_LENGTHS the number of lengths that there may be; of
                    the rules of symmetry where another perpend should be, which is off by `is` */
} Breach;

/* A remnant of a course beside an opening or at the wall's top, too thin to be a piece (20 mm at
 * most): it is packed with mortar. At the top the bed joint under it is packed with it, and it is
 * counted to the last course. A strip no longer than the joints at its ends is packed, too. Under a
 * slope it is a wedge, and may be higher (docs/tops.md). */
typedef struct
{
  gint32 course;
  Length x, length, bottom, height; /* of its bounding box */
  Length left, right;               /* its heights at both ends; `height` where it is no wedge */
} Packing;

static inline gboolean
packing_is_wedge (const Packing *packing)
{
  return packing->left != packing->right;
}
/* Face area, mm2. */
static inline double
packing_area (const Packing *packing)
{
  return length_to_mm (packing->length)
         * (length_to_mm (packing->left) + length_to_mm (packing->right)) / 2;
}

typedef struct
{
  gint32 breaches;
  gint32 breaches_at_least; /* proven lower bound; <= breaches */
  gint32 cuts;              /* pieces that are not whole */
  gint32 cuts_at_least;     /* proven lower bound at that number of breaches; <= cuts */
  gboolean proven;          /* cuts_at_least == cuts */
  /* Of the aim `least-waste` alone, else both 0. */
  gint32 to_order; /* units that yield every piece of this wall; a saw plan may do with fewer */
  gint32 to_order_at_least; /* proven, likewise; <= to_order */
} Proof;

/* Immutable and reference-counted once lay_wall() has returned it. */
typedef struct
{
  gatomicrefcount refs;
  WallId wall;
  GArray *courses;  /* Course, from the bottom */
  GArray *pieces;   /* Piece, by course, then from the left */
  GArray *points;   /* LayPoint, outlines */
  GArray *breaches; /* Breach, by course, then from the left */
  GArray *packings; /* Packing, likewise */
  GArray *pins;     /* LaidPin, each of the wall's, in its order */
  gint32 held; /* courses that were held fast as they stand; those above were free to be found */
  gint32 n_whole, n_cut;
  Proof proof;
} Layout;

Layout *layout_ref (const Layout *layout);
void layout_unref (Layout *layout);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (Layout, layout_unref)

static inline const Piece *
layout_piece (const Layout *layout, guint i)
{
  return &g_array_index (layout->pieces, Piece, i);
}
static inline const Course *
layout_course (const Layout *layout, guint i)
{
  return &g_array_index (layout->courses, Course, i);
}
/* "whole", "short", "ripped", "notched", "raked": the words of the contract. */
const char *piece_shape_word (PieceShape shape);
/* Face area, mm2. */
double layout_piece_area (const Layout *layout, const Piece *piece);
/* FNV-1a over every number of the pieces: equal layouts have equal hashes on every machine. */
guint64 layout_hash (const Layout *layout);
