/* findings-pane.h - what breaks a rule, is awkward or would save, each with its mend
 *
 * Signals:
 *   "go-to"    (int course, int x in Length, guint opening) where a finding is
 *   "refused"  (string) a sentence with the reason
 */
#pragma once

#include <gtk/gtk.h>

#include "app/answers.h"
#include "app/document.h"

#define HB_TYPE_FINDINGS_PANE (hb_findings_pane_get_type ())
G_DECLARE_FINAL_TYPE (HbFindingsPane, hb_findings_pane, HB, FINDINGS_PANE, GtkWidget)

/* Once. */
void hb_findings_pane_set_document (HbFindingsPane *pane, HbDocument *document, HbAnswers *answers);
/* What the button that improves all says. */
void hb_findings_pane_set_improving (HbFindingsPane *pane, gboolean improving);
