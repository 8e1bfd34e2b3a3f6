/* asked.h - whether a segment can have a pattern, asked again and again: answers are kept */
#pragma once

#include "bond/reach.h"

typedef struct Asked Asked;

Asked *asked_new (const Geometry *geometry);
void asked_free (Asked *asked);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (Asked, asked_free)

/* Whether the segment of that number has a pattern of no more than `most` cuts that keeps what is
 * asked and has such ends (reach_fewest_to()). On walls of some hundred metres answers
 * cost more than they bring: after a number of steps it is always TRUE. */
gboolean asked_can_be (Asked *asked, gint32 segment, const Ask *ask, gint32 ends, gint32 most);
/* How much was asked: questions, one that had to be answered anew counting more. */
gint64 asked_work (const Asked *asked);
/* For what is asked, and nothing is kept of. */
Reach *asked_reach (Asked *asked);
