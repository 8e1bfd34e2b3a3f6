/* plan-follow.h - walls that end at one whose thickness has changed */
#pragma once

#include "model/plan.h"

/* A wall's outer face stays where it is, so that one of another thickness has its inner face
 * elsewhere. The walls of `next` that ended at that face in `before`, the same project before an
 * edit, as they are to be: longer or shorter, what is in them where it stands. Wall *, owned by the
 * array. A wall whose own place or length the edit has set is left as it was set. */
GPtrArray *plan_follow_thickness (const Project *before, const Project *next);
