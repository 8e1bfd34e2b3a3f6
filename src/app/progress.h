/* progress.h - how far a wall is laid: said as soon as it is known how its courses lie
 *
 * Needs no display. Each is one step of the history. */
#pragma once

#include "app/answers.h"

typedef struct HbProgress HbProgress;
/* What was said of it, or why it cannot be (`refused`). */
typedef void (*HbProgressTold) (const char *sentence, gboolean refused, gpointer data);

/* Both outlive it. */
HbProgress *hb_progress_new (HbDocument *document, HbAnswers *answers, HbProgressTold told,
                             gpointer data);
void hb_progress_free (HbProgress *progress);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (HbProgress, hb_progress_free)

/* The wall is laid up to that course, 0: nothing stands; more than it has: all. Where it is being
 * laid in the background, that waits until it is known; another change before, and it is dropped.
 */
void hb_progress_set (HbProgress *progress, WallId wall, gint32 courses);
/* How many courses the wall has, as it will stand; 0: there is no such wall. */
gint32 hb_progress_n_courses (HbProgress *progress, WallId wall);
