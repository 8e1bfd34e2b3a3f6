/* plan-view.h - the building in plan: looked at, chosen from, moved
 *
 * Signals:
 *   "chosen"   (guint wall, guint opening) another wall or opening was chosen; 0: none
 *   "meeting"  (guint first, guint second) a meeting was chosen; 0, 0: none is any more
 *   "open"     the elevation of what is chosen is asked for
 *   "said"     (string) a sentence for the line under the plan; "" takes it away
 *   "refused"  (string) what was asked cannot be: a sentence with the reason
 *   "tool"     another tool was taken, or it was put down
 */
#pragma once

#include <gtk/gtk.h>

#include "app/answers.h"
#include "app/document.h"

#define HB_TYPE_PLAN_VIEW (hb_plan_view_get_type ())
G_DECLARE_FINAL_TYPE (HbPlanView, hb_plan_view, HB, PLAN_VIEW, GtkWidget)

/* Once. */
void hb_plan_view_set_document (HbPlanView *view, HbDocument *document, HbAnswers *answers);
/* Follows what is chosen elsewhere; says nothing. A meeting that is chosen stays so while its wall
 * does. */
void hb_plan_view_select (HbPlanView *view, WallId wall, OpeningId opening);
/* None, none: no meeting. */
void hb_plan_view_select_meeting (HbPlanView *view, WallId first, WallId second);

typedef enum
{
  HB_PLAN_TOOL_NONE,
  HB_PLAN_TOOL_PART,    /* the next drag draws a partition */
  HB_PLAN_TOOL_OUTLINE, /* side after side, until it closes */
  HB_PLAN_TOOL_WALL,    /* one side, which is a wall */
  HB_PLAN_TOOL_PLACE,   /* the chosen wall, which stands nowhere, follows the pointer */
  HB_PLAN_TOOL_WINDOW,  /* an opening, in the wall that is clicked */
  HB_PLAN_TOOL_DOOR,
  HB_PLAN_TOOL_VOID,
} HbPlanTool;

/* What the hand does next. One that cannot be taken is not: a wall that stands already is not
 * placed. */
void hb_plan_view_set_tool (HbPlanView *view, HbPlanTool tool);
HbPlanTool hb_plan_view_get_tool (HbPlanView *view);

void hb_plan_view_fit (HbPlanView *view);
/* About the middle of what is seen. */
void hb_plan_view_zoom (HbPlanView *view, double factor);
/* Puts an end to a pull or a tool, as Escape does. TRUE when there was one. */
gboolean hb_plan_view_cancel (HbPlanView *view);

/* "Corner of Front and Right". Newly allocated. */
char *hb_plan_view_dup_meeting_name (const Project *project, WallId first, WallId second);
