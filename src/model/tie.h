/* tie.h - what ties a butted wall to the one that runs through
 *
 * Ties lie in bed joints, half in either wall: on the top of every course whose number is a
 * multiple of `every`, `abreast` side by side. At a wall that is parted by another, on both sides.
 */
#pragma once

#include "model/block.h"

typedef enum
{
  TIE_STRIP, /* a flat strip of stainless steel */
  TIE_MESH,  /* expanded metal, or a welded mesh made for thin beds */
  TIE_ANGLE, /* a strip bent at a right angle, its short leg screwed to the face that it meets */
  N_TIE_KINDS
} TieKind;

typedef enum
{
  TIES_KIND = 1,
  TIES_EVERY = 2,
  TIES_ABREAST = 4,
  TIES_ALL = 7,
} TieField;

typedef struct
{
  guint given; /* TIES_ALL, or 0: nothing is said */
  TieKind kind;
  gint32 every;   /* 1 .. TIES_MAX_EVERY */
  gint32 abreast; /* 1 .. TIES_MAX_ABREAST */
} Ties;

#define TIES_MAX_EVERY 1000
#define TIES_MAX_ABREAST 10

/* No more than this from one to the next up the wall: of ties beside movement joints, a council's
 * building control note after BRE Digest 164; of partitions, UK practice, from memory. */
#define TIES_MOST_APART LENGTH_MM (300)
/* A wall no thicker than this takes one strip or angle, a thicker one two: common practice. */
#define TIES_ONE_ABREAST LENGTH_MM (200)
/* Of a strip and an angle, in either wall: common practice. */
#define TIE_REACH LENGTH_MM (150)

/* What is set when a wall is butted by hand: flat strips, no farther apart than TIES_MOST_APART
 * where courses are low enough, one or two abreast; angles where the courses of both are not level.
 * `bed` is the joint between courses. */
Ties ties_default (const Block *block, Length bed, gboolean level);
gboolean ties_equal (const Ties *a, const Ties *b);

/* "strip", "mesh", "angle": the words of the file. */
const char *tie_kind_word (TieKind kind);
gboolean tie_kind_from_word (const char *word, TieKind *out);
/* "flat strips": for people, many; static. */
const char *tie_kind_name (TieKind kind);

/* What is wrong as a new sentence, NULL: nothing. */
char *ties_fault (const Ties *ties);
