/* block.h - the unit: the whole block as delivered */
#pragma once

#include "model/foreign.h"
#include "model/ids.h"
#include "model/length.h"

#define BLOCK_LEAST_DENSITY 0.000001 /* kg/m3; what a file can still say */
#define BLOCK_MOST_STRENGTH 100      /* N/mm2 */

typedef struct
{
  BlockId id;       /* never none in a project */
  char *key;        /* the file's id, e.g. "b1": an XML name, unique in the project */
  char *name;       /* for people; may be empty, never NULL */
  Length length;    /* along the wall, 20 mm .. 10 m */
  Length height;    /* 20 mm .. 10 m */
  Length thickness; /* across the wall, 20 mm .. 10 m */
  double density;   /* dry, kg/m3, BLOCK_LEAST_DENSITY .. 20000 */
  double strength;  /* design strength of masonry of it in compression, N/mm2, as an engineer or the
                       maker states it, 0 .. BLOCK_MOST_STRENGTH; 0: not known */
  Foreign foreign;
} Block;

/* "Large block", 600 x 200 x 250 mm, 500 kg/m3; no id, no key. Clear it with block_clear(). */
Block block_default (void);
Block block_copy (const Block *block);
void block_clear (Block *block);
/* Of everything, ids and keys too. */
gboolean block_equal (const Block *a, const Block *b);

/* Dry mass of one whole unit, kg. */
double block_mass (const Block *block);
