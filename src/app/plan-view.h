/* plan-view.h - the building in plan: looked at, chosen from, moved
 *
 * Signals:
 *   "chosen"   (guint wall, guint opening) another wall or opening was chosen; 0: none
 *   "meeting"  (guint first, guint second) a meeting was chosen; 0, 0: none is any more
 *   "open"     the elevation of what is chosen is asked for
 *   "said"     (string) a sentence for the line under the plan; "" takes it away
 *   "refused"  (string) what was asked cannot be: a sentence with the reason
 *   "tool"     a partition is to be drawn, or no longer
 */
#pragma once

#include <gtk/gtk.h>

#include "app/document.h"

#define HB_TYPE_PLAN_VIEW (hb_plan_view_get_type ())
G_DECLARE_FINAL_TYPE (HbPlanView, hb_plan_view, HB, PLAN_VIEW, GtkWidget)

/* Once. */
void hb_plan_view_set_document (HbPlanView *view, HbDocument *document);
/* Follows what is chosen elsewhere; says nothing. A meeting that is chosen stays so while its wall
 * does. */
void hb_plan_view_select (HbPlanView *view, WallId wall, OpeningId opening);
/* None, none: no meeting. */
void hb_plan_view_select_meeting (HbPlanView *view, WallId first, WallId second);

/* Whether the next drag draws a partition. */
void hb_plan_view_set_parting (HbPlanView *view, gboolean parting);
gboolean hb_plan_view_get_parting (HbPlanView *view);

void hb_plan_view_fit (HbPlanView *view);
/* About the middle of what is seen. */
void hb_plan_view_zoom (HbPlanView *view, double factor);
/* Puts an end to a pull or a tool, as Escape does. TRUE when there was one. */
gboolean hb_plan_view_cancel (HbPlanView *view);

/* "Corner of Front and Right". Newly allocated. */
char *hb_plan_view_dup_meeting_name (const Project *project, WallId first, WallId second);
