/* level-results.h - what follows from the level book, as a column of text */
#pragma once

#include <gtk/gtk.h>

#include "site/bed.h"

/* Fills the box anew: the first course, the checks, the bed at every place, what is to be ground
 * down or built up. */
void hb_level_results_fill (GtkBox *box, const Project *project, const LevelBook *book,
                            const Beds *beds);
