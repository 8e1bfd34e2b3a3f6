/* check-layout.h - a verifier of layouts, written apart from the engine, from the documents alone
 *
 * It is told the wall, the block and the answer, and works everything out again in whole numbers:
 * docs/bond.md and src/bond/layout.h say what must hold. */
#pragma once

#include "bond/layout.h"

/* What is wrong with `layout` as a sentence, newly allocated; NULL when nothing is:
 * the courses' heights; every course's free area covered exactly once by pieces, head joints and
 * packings, which keep clear of openings and of the walls at the corners; no piece longer than the
 * unit; shapes, outlines, numbers and order; every breach of the shortest piece, the least lap and
 * the thinnest strip, of the optional rules that are a must, and no other; the totals and what the
 * proof says of them. */
char *check_layout (const Wall *wall, const Block *block, const Layout *layout);
