/* finding.h - an awkward or broken thing of a design, with where it is and what would mend it */
#pragma once

#include "model/edit.h"

typedef enum
{
  SEVERITY_BREACH,
  SEVERITY_WARNING,
  SEVERITY_NOTE,
} Severity;

typedef struct
{
  const char *rule; /* static; the word of `check --json`: "min-lap", "min-piece", "min-rip", ... */
  Severity severity;
  WallId wall;
  OpeningId opening; /* or none */
  gint32 course;     /* 1-based, or 0 */
  Length x;          /* from the wall's left end; 0 where it is of the whole wall */
  char *text;        /* one sentence, with its numbers */
  char *mend_text;   /* what the button says ("Move head 12 mm down"); NULL: no mend known */
  Edit *mend;        /* applied to the project that was judged; NULL with mend_text */
} Finding;

void finding_free (Finding *finding);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (Finding, finding_free)
/* "breach", "warning", "note". */
const char *severity_word (Severity severity);
