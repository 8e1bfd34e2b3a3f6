/* built-report.h - what halfbond-cli built says of the walls, for people and for programs */
#pragma once

#include "cli/laid.h"
#include "takeoff/takeoff.h"

/* `all` and `rest` are the take-off of the whole project, and of what does not stand yet; walls
 * that were not asked for are left out. */
void built_report_text (GString *text, const Laid *laid, const Takeoff *all, const Takeoff *rest);
void built_report_json (GString *text, const Laid *laid, const Takeoff *all, const Takeoff *rest);
