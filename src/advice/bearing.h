/* bearing.h - what a lintel brings to the masonry under its ends, line by line
 *
 * Indicative: the weights of the lintel and of the masonry over it, and what the builder says that
 * floors and roof bring. It is no check of strength. The rules, their sources and limits stand in
 * docs/rules.md. */
#pragma once

#include "model/project.h"

/* Whether the masonry over a lintel can carry itself to both sides, so that only a triangle of it
 * rests on the lintel; else why not. */
typedef enum
{
  ARCH_CARRIES,
  ARCH_TOO_LOW, /* too little masonry over the triangle */
  ARCH_OPENING, /* an opening in it, or right over it */
  ARCH_JOINT,   /* a movement joint in it */
  ARCH_BESIDE,  /* too little masonry beside it */
} Arch;

/* Forces in kN, of one lintel, with no factor of safety unless said. */
typedef struct
{
  Length bearing; /* of each end, along the wall */
  Length span;    /* from middle to middle of its bearings */
  Length depth;   /* of the lintel: a course, or what the wall has over the head */
  Arch arch;
  double area;       /* face of the masonry that rests on it, m2 */
  double lintel;     /* its own weight */
  double masonry;    /* that rests on it, with the wall's cap of concrete where that does */
  double load;       /* of floors and roof over the span; 0 where not known */
  gboolean has_load; /* it was typed */
  double end;        /* on each end */
  double pressure;   /* under it, N/mm2, the mean of the bearing */
  double design;     /* the same with factors of safety */
  double strength;   /* design strength of the block's masonry, N/mm2; 0: not known */
} Bearing;

/* FALSE: the opening has no lintel, for the wall ends at its head. */
gboolean bearing_of_opening (const Wall *wall, const Block *block, const Opening *opening,
                             Bearing *out);
/* How long a bearing would do: the least, in steps of 50 mm up to 500 mm, at which the pressure
 * with factors is no more than the strength; 0: none of them, or no strength is known. */
Length bearing_long_enough (const Wall *wall, const Block *block, const Opening *opening);
