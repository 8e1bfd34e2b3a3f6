/* cutting.h - cutting stock: the fewest stock lengths that give a list of pieces, with proof */
#pragma once

#include "model/length.h"

typedef struct
{
  gint64 length;   /* any unit, > 0; the same for stock and kerf */
  gint32 quantity; /* >= 0 */
} CuttingItem;

typedef struct
{
  gint32 times;
  GArray *pieces; /* gint64 lengths, longest first */
} CuttingPattern;

typedef struct
{
  gint32 bins, bins_at_least;
  gboolean proven;
  GPtrArray *patterns; /* CuttingPattern *, most used first, then longest pieces first */
} CuttingPlan;

void cutting_plan_free (CuttingPlan *plan);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (CuttingPlan, cutting_plan_free)

#define CUTTING_ERROR (cutting_error_quark ())
GQuark cutting_error_quark (void);
typedef enum
{
  CUTTING_ERROR_TOO_LONG, /* a piece is longer than the stock */
  CUTTING_ERROR_INPUT,    /* a length or quantity out of range */
} CuttingError;

/* A piece followed by another on the same stock costs one kerf; a last piece that ends at the
 * stock's end costs none: pieces p1..pn fit when p1 + k + p2 + ... + pn <= stock.
 * Deterministic. `effort`: 0 for the live answer (some milliseconds), 1 for as long as it takes
 * within about a minute. `stop` as in lay_wall(): NULL is returned without error when stopped. */
CuttingPlan *cutting_solve (gint64 stock, gint64 kerf, const CuttingItem *items, guint n_items,
                            int effort, const gint *stop, GError **error);
