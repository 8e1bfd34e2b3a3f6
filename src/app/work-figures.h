/* work-figures.h - what the work is reckoned with, as it is typed: each figure as text, and back
 *
 * A table, no widgets. */
#pragma once

#include "model/rates.h"

typedef struct
{
  const char *name;   /* translatable */
  const char *source; /* translatable: where its default comes from */
  const char *none;   /* translatable: what its default 0 means; NULL: it is a number */
  int which;          /* for this file */
} WorkFigure;

/* In the order to show them. */
const WorkFigure *work_figures_list (guint *n);
/* What was said; "" where nothing was. Newly allocated. */
char *work_figure_text (const WorkFigure *figure, const WorkRates *rates);
/* What holds where nothing is said. Newly allocated. */
char *work_figure_default (const WorkFigure *figure);
/* Makes it say `text`, an empty one nothing; FALSE with a sentence, and `rates` untouched, when
 * that is no number or out of bounds. */
gboolean work_figure_set (const WorkFigure *figure, WorkRates *rates, const char *text,
                          GError **error);
