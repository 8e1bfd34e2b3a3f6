/* opening.h - a hole in a wall, as the designer states it */
#pragma once

#include "model/foreign.h"
#include "model/ids.h"
#include "model/length.h"

typedef enum
{
  OPENING_WINDOW,
  OPENING_DOOR,
  OPENING_VOID,
} OpeningKind;

/* Which fields the builder gave, of those that may be left out. */
typedef enum
{
  OPENING_MAY_MOVE = 1 << 0,
  OPENING_DRAWN_X = 1 << 1,
  OPENING_PLANNED_X = 1 << 2,
  OPENING_PLANNED_WIDTH = 1 << 3,
  OPENING_PLANNED_SILL = 1 << 4,
  OPENING_PLANNED_HEIGHT = 1 << 5,
  OPENING_LINE_LOAD = 1 << 6,
} OpeningField;

/* The farthest that an opening may be said to be free to move, to either side. */
#define OPENING_MOST_MOVE LENGTH_MM (10000)
/* kN/m. */
#define OPENING_MOST_LOAD 1000

typedef struct
{
  OpeningId id; /* never none in a project */
  char *key;    /* the file's id, unique in the project */
  char *name;   /* for people; may be empty, never NULL */
  OpeningKind kind;
  Length x;        /* left jamb from the wall's left end, >= 0 */
  Length width;    /* between jambs, >= 10 mm */
  Length sill;     /* above the foundation, >= 0 */
  Length height;   /* sill to head, >= 10 mm */
  guint given;     /* OpeningField bits */
  Length may_move; /* how far to either side of where it was drawn; 0: it is fixed */
  Length drawn_x;  /* the left jamb as it was drawn, where it was moved since; else it is `x` */
  /* What x, width, sill and height were before a measured figure took their place; each is given
   * where that is so. */
  Length planned_x, planned_width, planned_sill, planned_height;
  double line_load; /* of floors and roof on the wall over it, kN/m, with no factor of safety, 0 ..
                       OPENING_MOST_LOAD */
  Foreign foreign;
} Opening;

/* A window of 1200 x 1200 mm at x 0, sill 900; a door of 900 x 2100 at sill 0; a void of
 * 600 x 600 at sill 900. No id, no key, empty name. */
Opening opening_default (OpeningKind kind);
Opening opening_copy (const Opening *opening);
void opening_clear (Opening *opening);
gboolean opening_equal (const Opening *a, const Opening *b);

static inline Length
opening_right (const Opening *opening)
{
  return opening->x + opening->width;
}

static inline Length
opening_head (const Opening *opening)
{
  return opening->sill + opening->height;
}

/* Whether it is known what floors and roof bring. */
static inline gboolean
opening_has_load (const Opening *opening)
{
  return (opening->given & OPENING_LINE_LOAD) != 0;
}

/* How far it may move; 0 when it is fixed or nothing was said. */
static inline Length
opening_may_move (const Opening *opening)
{
  return opening->given & OPENING_MAY_MOVE ? opening->may_move : 0;
}

/* Where it was drawn: its freedom to move is counted from there. */
static inline Length
opening_drawn_x (const Opening *opening)
{
  return opening->given & OPENING_DRAWN_X ? opening->drawn_x : opening->x;
}

/* Moves it and remembers where it was drawn. It is then no longer where it was measured. */
void opening_move (Opening *opening, Length x);
/* All places along the wall go by so much: the wall's left end moved. */
void opening_shift (Opening *opening, Length by);

/* "window", "door", "void": the words of the file. */
const char *opening_kind_word (OpeningKind kind);
gboolean opening_kind_from_word (const char *word, OpeningKind *out);
