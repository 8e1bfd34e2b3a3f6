/* why.h - one piece explained: what it is, how it laps, and why it is cut
 *
 * What is said is worked out from the layout that is shown, never guessed: where nothing is proven,
 * only numbers are told. */
#pragma once

#include "bond/layout.h"

typedef enum
{
  WHY_WHOLE,  /* it is not cut */
  WHY_PINNED, /* its length was set by hand */
  WHY_TOP,    /* the last course is lower than a block */
  WHY_STRIP,  /* an opening leaves less than a block's height under its sill or over its head; or a
               * step of the top or the footing does */
  WHY_NOTCH,  /* it goes round an opening, or a step of the top or the footing */
  WHY_LENGTH, /* the run's length asks for so many cuts, whatever lies above and below */
  WHY_LAPS,   /* the run could do with fewer, but not beside the perpends above and below */
  WHY_BOND,   /* the run could do with fewer; no more is known */
  WHY_RAKED,  /* the top slopes through it */
} WhyCause;

/* A stretch of a course between two ends that no bond moves: jambs, the wall's ends, pins. */
typedef struct
{
  Length from, to;
  gint32 n;         /* pieces */
  gint32 cuts;      /* pieces in it that are shorter than a block */
  gint32 least;     /* so many of them at least, by its length and the shortest piece alone */
  gint32 by_length; /* the same by its length alone: 0 or 1 */
  gboolean plain;   /* no piece of it is ripped or notched */
} WhyRun;

/* Lap of a perpend on the nearest one in the course below or above; -1: there is none near. */
typedef struct
{
  Length below, above;
} WhyLaps;

typedef struct
{
  WhyCause cause;
  WhyRun run;
  WhyLaps left, right; /* of the perpends at its ends */
} Why;

/* Piece `i` of a layout of this very wall. */
Why why_piece (const Wall *wall, const Block *block, const Layout *layout, guint i);

/* "Course 5, piece 3: shortened block, 450 × 200 mm, 11.3 kg". Free it, as the others. */
char *why_dup_is (const Block *block, const Layout *layout, guint i);
/* "Left perpend: 298 mm from the nearest below, 302 mm above; ..."; NULL when it has none. */
char *why_dup_laps (const Why *why);
/* One sentence. */
char *why_dup_reason (const Why *why, const Wall *wall, const Block *block, const Layout *layout,
                      guint i);
