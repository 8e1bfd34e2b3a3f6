/* export.h - a wall's drawing and a project's quantities in files */
#pragma once

#include "bond/layout.h"
#include "model/project.h"
#include "site/bed.h"
#include "takeoff/takeoff.h"

#define EXPORT_ERROR (export_error_quark ())
GQuark export_error_quark (void);
typedef enum
{
  EXPORT_ERROR_PAPER,   /* no such paper, or nothing fits on it */
  EXPORT_ERROR_SCALE,   /* the wall does not fit at that scale; the message names one that does */
  EXPORT_ERROR_FAILED,  /* the picture is too large to be made */
  EXPORT_ERROR_NO_PLAN, /* no wall stands in plan */
} ExportError;

/* Each gives the file's bytes; dates in them come from the project or SOURCE_DATE_EPOCH, so that
 * the same project gives the same bytes. `scale` N means 1:N on paper; 0: the largest usual scale
 * that fits. `paper` is "A4" or "A3", landscape. */
GBytes *export_pdf (const Project *project, const Wall *wall, const Layout *layout, gboolean client,
                    int scale, const char *paper, GError **error);
GBytes *export_svg (const Project *project, const Wall *wall, const Layout *layout, gboolean client,
                    GError **error);
GBytes *export_png (const Project *project, const Wall *wall, const Layout *layout, gboolean client,
                    int width, GError **error);
/* The same of the building in plan, to be set out from: outer dimensions, openings, walls that
 * meet, corners with their letters, lengths across. Of the sheet, the next page lists how far each
 * corner is from the first two. EXPORT_ERROR_NO_PLAN: no wall stands in it. */
GBytes *export_plan_pdf (const Project *project, int scale, const char *paper, GError **error);
GBytes *export_plan_svg (const Project *project, GError **error);
GBytes *export_plan_png (const Project *project, int width, GError **error);
/* RFC 4180, UTF-8: key, name, quantity, unit, one column per wall. */
char *export_takeoff_csv (const Project *project, const Takeoff *takeoff);
/* What is sawn from what: block, unit, piece, from, up, length, height; what is left of a unit has
 * no piece. `saws` as saw_plans_new() made them. */
char *export_saw_csv (const Project *project, Layout *const *layouts, const GPtrArray *saws);
/* The reduced level book, and the levelling bed at every place of the surveyed walls: grind and
 * build say how far the bed is beyond its limits. */
char *export_book_csv (const Project *project, const LevelBook *book);
char *export_beds_csv (const Project *project, const Beds *beds);
/* Pieces of one wall, or of all with wall NULL: id, x, length, bottom, height, shape. */
char *export_pieces_csv (const Project *project, Layout *const *layouts, const Wall *wall);
