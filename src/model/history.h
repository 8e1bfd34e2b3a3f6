/* history.h - undo and redo without limit: a list of project values */
#pragma once

#include "model/project.h"

typedef struct History History;

/* Starts at `project`, which counts as saved. */
History *history_new (const Project *project);
void history_free (History *history);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (History, history_free)

/* Borrowed. */
const Project *history_now (const History *history);
/* A new step after now; what could be redone is dropped. `label` says what was done ("Move W1").
 * A project equal to now makes no step. */
void history_push (History *history, const Project *project, const char *label);
gboolean history_can_undo (const History *history);
gboolean history_can_redo (const History *history);
/* What undo or redo would take back or do again; NULL when it cannot. Borrowed. */
const char *history_undo_label (const History *history);
const char *history_redo_label (const History *history);
/* The project after it, borrowed; NULL when it cannot. */
const Project *history_undo (History *history);
const Project *history_redo (History *history);
/* Saved-ness follows undo and redo: it is the value that was saved, not a flag. */
void history_mark_saved (History *history);
gboolean history_is_saved (const History *history);
guint history_n_steps (const History *history);
