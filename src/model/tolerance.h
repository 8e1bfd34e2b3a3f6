/* tolerance.h - how far what stands may be off what was planned, as a project says it
 *
 * Only what a project says for itself; what holds where it says nothing, and with what source,
 * stands in src/site/as-built. */
#pragma once

#include "model/foreign.h"
#include "model/length.h"

typedef enum
{
  TOLERANCE_LENGTH,    /* of a wall, either way */
  TOLERANCE_TOP,       /* of a course's top, either way */
  TOLERANCE_LEVEL,     /* of a course from end to end */
  TOLERANCE_BED,       /* of one bed from the mean */
  TOLERANCE_OPENING,   /* of an opening's place and size, either way */
  TOLERANCE_PLUMB,     /* of a wall in its height, either way */
  TOLERANCE_BOW,       /* of a wall over its length, either way */
  TOLERANCE_BOW_METRE, /* in any one metre */
  N_TOLERANCES,
} ToleranceKind;

typedef struct
{
  gboolean given;
  Length limit; /* 0 .. TOLERANCE_MOST */
  Foreign foreign;
} Tolerance;

#define TOLERANCE_MOST LENGTH_MM (200)

/* "length", "bow-metre": the words of the file. */
const char *tolerance_word (ToleranceKind kind);
gboolean tolerance_from_word (const char *word, ToleranceKind *out);
/* Those that are not given are equal whatever else they say. */
gboolean tolerance_equal (const Tolerance *a, const Tolerance *b);
