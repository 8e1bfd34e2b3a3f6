/* corners.h - a list of the outer corners of buildings on a page: how far each is from two others
 */
#pragma once

#include "export/page.h"

/* How many pages it takes; 0: no walls go once round. */
guint corners_n_pages (const Page *page);
/* The list of the page with that number, from 0, in its field; to be drawn with page_frame_view.
 * Never NULL. */
Drawing *corners_page (const Page *page, guint number);
