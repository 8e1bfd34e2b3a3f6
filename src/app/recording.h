/* recording.h - a drawing recorded as render nodes, by layer and course
 *
 * What did not change keeps its node, so that a frame repaints only what moved. */
#pragma once

#include <gtk/gtk.h>

#include "paint/drawing.h"
#include "paint/ink.h"
#include "paint/theme.h"

typedef struct HbRecording HbRecording;

#define HB_ALL_LAYERS ((1u << N_LAYERS) - 1)

/* Of those layers alone: bits 1 << Layer. */
HbRecording *hb_recording_new (guint layers);
void hb_recording_free (HbRecording *recording);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (HbRecording, hb_recording_free)

/* Records the groups of marks that differ from what is recorded; all of them when the view or the
 * theme is another. As long as the view was only moved and `visible` (sheet steps) lies in what was
 * recorded, it counts as the same. Something is recorded all round what is visible. */
void hb_recording_update (HbRecording *recording, Ink *ink, const Drawing *drawing,
                          const View *view, Theme theme, const graphene_rect_t *visible);
void hb_recording_clear (HbRecording *recording);

/* Appends it for `view`, which may be moved against the recorded one, but has its scale. */
void hb_recording_snapshot (HbRecording *recording, GtkSnapshot *snapshot, const View *view);
/* Whether `visible`, a part of the sheet as seen through `view`, lies in what was recorded, at the
 * scale and in the theme of it. */
gboolean hb_recording_covers (const HbRecording *recording, const View *view, Theme theme,
                              const graphene_rect_t *visible);
