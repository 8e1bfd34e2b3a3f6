/* work-report.h - the work of a project, as JSON and for people */
#pragma once

#include "cli/laid.h"
#include "takeoff/work.h"

/* The whole of `halfbond.work/1`. */
void work_report_json (GString *text, const Laid *laid, const Work *work);
/* Tables with a sentence where something is to be minded. */
void work_report_text (GString *text, const Laid *laid, const Work *work);
