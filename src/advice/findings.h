/* findings.h - what breaks a rule or is awkward, each with its mend where one is known */
#pragma once

#include "bond/layout.h"
#include "model/finding.h"
#include "model/project.h"

/* What is the same for all walls of a project, looked at once: the level book, the beds, what was
 * measured of its corners. */
typedef struct Judge Judge;
Judge *judge_new (const Project *project);
void judge_free (Judge *judge);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (Judge, judge_free)

/* Findings of one wall as laid: Finding *, breaches first, then warnings, then notes; in each by
 * course and place. Free with g_ptr_array_unref(). `stop` as in lay_wall(); NULL when it was set.
 */
GPtrArray *judge_findings (const Judge *judge, const Wall *wall, const Layout *layout,
                           const gint *stop);
/* The same where no other wall of the project is asked about. */
GPtrArray *findings_of_wall (const Project *project, const Wall *wall, const Layout *layout);
