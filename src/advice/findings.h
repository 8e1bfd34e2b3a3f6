/* findings.h - what breaks a rule or is awkward, each with its mend where one is known */
#pragma once

#include "bond/layout.h"
#include "model/finding.h"
#include "model/project.h"

/* Findings of one wall as laid: Finding *, breaches first, then warnings, then notes; in each by
 * course and place. Free with g_ptr_array_unref(). */
GPtrArray *findings_of_wall (const Project *project, const Wall *wall, const Layout *layout);
