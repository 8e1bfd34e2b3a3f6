/* work-tables.h - what the work comes to, written under each other: hours, days, handling, pallets
 */
#pragma once

#include <gtk/gtk.h>

#include "takeoff/work.h"

/* Empties the box and fills it. `layouts` has one for each wall of the project, in its order. */
void hb_work_tables_fill (GtkBox *box, const Project *project, Layout *const *layouts,
                          const Work *work);
