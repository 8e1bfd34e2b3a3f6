/* trial.h - what a wall would be like with one opening a little elsewhere */
#pragma once

#include "advice/judging.h"

/* One change and what came of it. */
typedef struct
{
  Mend mend;
  Length shift;   /* how far something moves, for choosing the smaller of equal ones */
  Layout *layout; /* NULL: not tried, or the project refuses it */
} Trial;

/* Changes worth a try: openings moved so that a short piece gets its length, that a pier is whole
 * half blocks wide, or that a strip goes. In the order in which they should be tried. */
GPtrArray *trials_list (const Judging *judging);
/* Lays the wall anew for as many of them as some milliseconds allow: the more pieces, the fewer.
 * The number depends on the wall alone. */
void trials_run (const Judging *judging, GPtrArray *trials);
