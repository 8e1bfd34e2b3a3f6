/* lay-text.h - a wall as laid, as a table to read on a terminal */
#pragma once

#include "bond/layout.h"
#include "model/project.h"

/* Appends the heading of the wall of that number, a line for each course, its totals and its
 * breaches. */
void lay_text (GString *text, const Project *project, guint number, const Layout *layout);
/* What the proof of a layout says, as one sentence. Newly allocated. */
char *lay_text_proof (const Proof *proof);
