/* strips.h - the courses of a wall one over the other as strips, to lay from
 *
 * Each strip shows its pieces with their lengths and, under them, how far each perpend is from the
 * wall's left end. Along the wall a strip is true to a scale of its own; its height is not. The
 * lowest course stands lowest on the page. A wall too long for legible strips is taken in parts,
 * each with pages of its own. */
#pragma once

#include "export/page.h"

/* 0 where there are no courses, or so many that nobody would lay from paper. */
guint strips_n_pages (const Page *page);
/* What page `number`, from 0, shows: "Courses 1 to 13". Newly allocated. */
char *strips_subject (const Page *page, guint number);
/* To be drawn with page_frame_view. Never NULL. */
Drawing *strips_page (const Page *page, guint number);
