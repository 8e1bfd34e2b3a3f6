/* answers.h - what follows from the open project: layouts, quantities, findings
 *
 * Needs no display. Follows a document; works in the background, and shows the answers before until
 * the new ones are there.
 *
 * Signals:
 *   "laid"     (guint wall id) a wall has a new layout
 *   "counted"  the quantities are new
 *   "found"    the findings of the present wall are new
 *   "advised"  what would save on the present wall is new, or is of an older value from now on
 */
#pragma once

#include "app/document.h"
#include "bond/layout.h"
#include "model/finding.h"
#include "takeoff/takeoff.h"

#define HB_TYPE_ANSWERS (hb_answers_get_type ())
G_DECLARE_FINAL_TYPE (HbAnswers, hb_answers, HB, ANSWERS, GObject)

HbAnswers *hb_answers_new (HbDocument *document);
/* Stops all work; nothing is told any more. */
void hb_answers_stop (HbAnswers *answers);

/* The wall that is looked at: it is laid first, and its findings are sought. None is allowed. */
void hb_answers_set_wall (HbAnswers *answers, WallId wall);
WallId hb_answers_get_wall (HbAnswers *answers);

/* The answer for the wall's present value; NULL while it is not known. Borrowed, until the main
 * loop runs again, as all that follows. */
const Layout *hb_answers_get_layout (HbAnswers *answers, WallId wall);
/* The newest answer known for the wall, perhaps of an older value of it; NULL: never laid. */
const Layout *hb_answers_get_latest (HbAnswers *answers, WallId wall);
/* The quantities; perhaps of an older value; NULL: not counted yet. */
const Takeoff *hb_answers_get_takeoff (HbAnswers *answers);
/* The walls that the quantities were counted for: WallId, in the order of TakeoffLine.walls. */
const GArray *hb_answers_get_counted_walls (HbAnswers *answers);
/* Finding *, of the present wall; NULL: not sought yet. */
GPtrArray *hb_answers_get_findings (HbAnswers *answers);
/* Whether they are of the present value: only then do their mends fit it. */
gboolean hb_answers_has_present_findings (HbAnswers *answers);
/* Finding *: what of the present wall, changed a little, would save; NULL: not sought yet. They
 * are sought when all else is known and no hand is at work. */
GPtrArray *hb_answers_get_savings (HbAnswers *answers);
/* Whether they are of the present value. */
gboolean hb_answers_has_present_savings (HbAnswers *answers);
/* Whether every answer is of the present value, what would save left out. */
gboolean hb_answers_is_settled (HbAnswers *answers);
