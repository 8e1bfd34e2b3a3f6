/* drawings.h - drawings of one wall or of all, into one file for each */
#pragma once

#include "cli/laid.h"

/* One wall's drawing; NULL with an error when it cannot be made as asked. */
typedef GBytes *(*Draw) (const Project *project, const Wall *wall, const Layout *layout,
                         gpointer data, GError **error);

/* Writes the drawing of the one wall that was picked (or is there) to `output`, as in
 * output_bytes(). Of several walls, each gets a file of its own, with the wall's id before the
 * ending: "house.svg" gives "house-w1.svg", "house-w2.svg"; their names are told on standard error.
 * The verdict of the walls, or what went wrong after a message. */
Status drawings_write (const char *verb, const Laid *laid, const char *output, Draw draw,
                       gpointer data);

/* The building in plan of the project in `path`, which no wall has to be laid for; `plan` makes it.
 */
typedef GBytes *(*DrawPlan) (const Project *project, gpointer data, GError **error);
Status drawings_write_plan (const char *verb, const char *path, const char *output, DrawPlan draw,
                            gpointer data);

/* What --kind may be, and which of them is which. */
extern const char *const drawing_kinds[];
typedef enum
{
  DRAWING_ELEVATION,
  DRAWING_CLIENT,
  DRAWING_PLAN,
} DrawingKind;
