/* strip.h - the strips of a selected opening: what each place along its course would need, and,
 * beside the storey rod, each height of its sill and its head
 *
 * A bar is as long as the cuts that its place needs beyond the least of all; where a place has more
 * breaches than the best one, it is in their colour. */
#pragma once

#include <gtk/gtk.h>

#include "app/places.h"
#include "bond/layout.h"
#include "paint/drawing.h"
#include "paint/theme.h"

typedef struct
{
  HbPlaces *places;
  const Opening *opening;
  const Layout *layout; /* of the wall as it is; NULL: not known yet */
  Shift shift;          /* what the words are of: what is being pulled, else SHIFT_ALONG */
  View view, rod;       /* where the wall is seen, and the rod */
  gboolean above;       /* the card stands over the opening, where it can, not below it */
  graphene_rect_t area; /* the sheet */
  Theme theme;
} HbStrips;

/* Nothing is drawn as long as no place is known. */
void hb_strips_snapshot (GtkWidget *widget, GtkSnapshot *snapshot, const HbStrips *strips);
/* Whether a strip lies there; then which, and the place under the pointer or NULL. */
gboolean hb_strips_pick (const HbStrips *strips, double x, double y, Shift *shift,
                         const Place **place);
/* "Left jamb at 1612 mm: 46 cuts, 144 units to order". Newly allocated. */
char *hb_strips_dup_text (Shift shift, const Place *place);
