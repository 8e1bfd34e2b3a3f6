/* places.h - what it would cost to have an opening, its sill or its head elsewhere
 *
 * A strip of places for each, found in the background on all processors: a first look at all of
 * them, the nearest first; then, where that may be a little too much, as they are laid. Needs no
 * display. */
#pragma once

#include "advice/place.h"

typedef struct HbPlaces HbPlaces;
typedef void (*HbPlacesChanged) (gpointer data);

/* `changed` is called in the main thread whenever more is known. */
HbPlaces *hb_places_new (HbPlacesChanged changed, gpointer data);
void hb_places_free (HbPlaces *places);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (HbPlaces, hb_places_free)

/* Asks for the places of that opening within `within` of where it is, as places_list() gives them,
 * of the shifts whose bits (1 << SHIFT_...) are set, in their order. What is known of a shift stays
 * known as long as nothing else but that changes. */
void hb_places_ask (HbPlaces *places, const Wall *wall, const Block *block, OpeningId opening,
                    guint shifts, Length within, Length step);
void hb_places_forget (HbPlaces *places);

/* NULL while it is not known. Borrowed, until the main loop runs again, as all that follow. */
const Place *hb_places_at (HbPlaces *places, Shift shift, Length at);
/* The cheapest of the known places from `from` to `to`; of equal ones the nearest to `at`, then the
 * lower; NULL when none is known that is possible. */
const Place *hb_places_best (HbPlaces *places, Shift shift, Length from, Length to, Length at);
/* A place within `reach` of `at` that is cheaper than all its known neighbours within twice as far,
 * or as cheap as the cheapest of them and nearest: where a hand may gently stop; NULL: none. */
const Place *hb_places_rest (HbPlaces *places, Shift shift, Length at, Length reach);
/* Below 0: `a` is cheaper, by the aim of the wall. */
int hb_places_compare (HbPlaces *places, Shift shift, const Place *a, const Place *b);
/* How many were looked at; whether all were, once; and whether there is nothing more to find. */
guint hb_places_n_known (HbPlaces *places, Shift shift);
gboolean hb_places_is_looked_at (HbPlaces *places, Shift shift);
gboolean hb_places_is_done (HbPlaces *places, Shift shift);
/* Whether nothing that is still open can be cheaper than the best known; and whether more is being
 * found out: it ends at last, even where that is not sure. */
gboolean hb_places_is_sure (HbPlaces *places, Shift shift);
gboolean hb_places_is_at_work (HbPlaces *places, Shift shift);
