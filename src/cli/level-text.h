/* level-text.h - the survey of a footing as plain text */
#pragma once

#include "site/bed.h"
#include "site/square.h"

/* The reduced book, its checks, the first course, the bed at every place, what is to be ground down
 * or built up, the corners. */
void level_text (GString *text, const Project *project, const LevelBook *book, const Beds *beds,
                 const GArray *squares);
