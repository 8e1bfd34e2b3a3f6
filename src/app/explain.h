/* explain.h - the lit piece explained in words
 *
 * Needs no display. */
#pragma once

#include "app/answers.h"
#include "app/document.h"

/* What it is; and in sentences why it is cut, how it laps, which unit it is sawn from (while that
 * is known). Both FALSE and untouched when there is no such piece. Free them. */
gboolean hb_explain_piece (HbDocument *document, HbAnswers *answers, WallId wall, gint32 course,
                           gint32 number, char **is, char **text);
