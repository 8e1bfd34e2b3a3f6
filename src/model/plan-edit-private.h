/* plan-edit-private.h - what edits of a plan share */
#pragma once

#include "model/edit.h"
#include "model/plan.h"

/* A wall's part in a meeting is that much farther along the wall, negative: nearer to its left end.
 * Where it ends there, it gets longer or shorter, and what is in it stays where it stands; else its
 * gap there moves. */
void _plan_give (Wall *wall, const Meeting *meeting, int which, Length by);

/* The edit of these walls; NULL with a sentence where one has no length left, a meeting would come
 * apart or become wrong, or the project would not have it. */
Edit *_plan_checked (const Project *project, const GPtrArray *walls, GError **error);

/* NULL, with the sentence that a wall stands nowhere. */
Edit *_plan_missing (GError **error);
/* No farther than a plan has room for. */
Length _plan_near (Length by);
