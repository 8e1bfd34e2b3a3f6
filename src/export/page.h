/* page.h - a sheet of paper: its frame and title block, and where the wall, or the plan, lies on it
 *
 * All places are sheet steps, 1/96 inch, from the paper's upper left corner. */
#pragma once

#include "export/export.h"
#include "paint/drawing.h"
#include "paint/hatch.h"
#include "paint/plan.h"
#include "paint/theme.h"

/* NULL, with the sentence that no wall stands in plan. */
GBytes *export_no_plan (GError **error);

#define STEPS_PER_MM (96.0 / 25.4)

typedef struct
{
  const Project *project; /* borrowed, as the wall and the layout */
  const Wall *wall;       /* NULL, as the layout: the building in plan */
  const Layout *layout;
  gboolean client;
  const char *paper;    /* its name */
  double width, height; /* mm */
  int scale;            /* 1:scale */
  guint n_pages;        /* of the sheet: the elevation, then the courses */
  View view;            /* the wall, true to scale */
  SheetBox field;       /* what the wall's drawing may cover */
} Page;

/* A page of `paper` ("A4" or "A3", landscape) with the wall in the middle of its field. `scale` 0
 * takes the largest usual one at which the wall fits. FALSE and an error when there is none, or
 * when it does not fit at the scale asked for. */
gboolean page_set (Page *page, const Project *project, const Wall *wall, const Layout *layout,
                   gboolean client, int scale, const char *paper, GError **error);
/* The same with the building in plan; walls stand in it. */
gboolean page_set_plan (Page *page, const Project *project, int scale, const char *paper,
                        GError **error);
/* Frame, title block, key and, on the first page, the scale bar; to be drawn with page_frame_view.
 * `subject` is what the page shows. `number` is 1-based. Never NULL. */
Drawing *page_frame (const Page *page, guint number, const char *subject);
extern const View page_frame_view;

/* The largest usual scale, 1:N, at which the wall's drawing is no larger than width x height steps;
 * 0: at none. */
int page_scale_within (const Wall *wall, gboolean client, double width, double height);
/* The same of a plan that covers that much. */
int page_plan_scale_within (const PlanBox *box, double width, double height);
