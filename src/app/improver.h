/* improver.h - improve all, in the background: the best places of the openings that may move
 *
 * Needs no display. What it finds is one step of the history. A change of the project meanwhile, or
 * a stop, and nothing is changed. */
#pragma once

#include "app/document.h"

typedef struct HbImprover HbImprover;
/* It began or ended; with a sentence of what was found, or NULL. */
typedef void (*HbImproverTold) (const char *sentence, gpointer data);

/* The document outlives it. */
HbImprover *hb_improver_new (HbDocument *document, HbImproverTold told, gpointer data);
void hb_improver_free (HbImprover *improver);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (HbImprover, hb_improver_free)

/* Whether an opening of that wall may move. */
gboolean hb_improver_can (HbImprover *improver, WallId wall);
void hb_improver_start (HbImprover *improver, WallId wall);
void hb_improver_stop (HbImprover *improver);
gboolean hb_improver_is_running (HbImprover *improver);
