/* findings.c - what breaks a rule or is awkward, each with its mend where one is known */
#include "advice/findings.h"

#include <string.h>

#include "advice/judging.h"

/* By severity, course and place; then whatever tells them apart, so that the order is always the
 * same. */
static gint
compare_findings (gconstpointer a, gconstpointer b)
{
  const Finding *p = *(const Finding *const *) a, *q = *(const Finding *const *) b;
  int by_rule;

  if (p->severity != q->severity)
    return p->severity < q->severity ? -1 : 1;
  if (p->course != q->course)
    return p->course < q->course ? -1 : 1;
  if (p->x != q->x)
    return p->x < q->x ? -1 : 1;
  by_rule = strcmp (p->rule, q->rule);
  return by_rule != 0 ? by_rule : strcmp (p->text, q->text);
}

/* The project with that wall alone: mends are tried on it, and other walls do not matter to them.
 */
static Project *
of_one_wall (const Project *project, const Wall *wall)
{
  Project *one = project_copy (project);

  g_clear_pointer (&one->survey, survey_unref);
  g_ptr_array_set_size (one->walls, 0);
  g_ptr_array_add (one->walls, wall_ref (wall));
  return one;
}

GPtrArray *
findings_of_wall (const Project *project, const Wall *wall, const Layout *layout)
{
  g_autoptr (Project) one = of_one_wall (project, wall);
  Judging judging = { .project = one, .whole = project, .wall = wall, .layout = layout };

  judging.block = project_block (project, wall->block);
  judging.laying = laying_resolve (&wall->laying, judging.block);
  judging.findings = g_ptr_array_new_with_free_func ((GDestroyNotify) finding_free);
  judge_contradictions (&judging);
  judge_breaches (&judging);
  judge_openings (&judging);
  judge_stability (&judging);
  judge_bed_steel (&judging);
  judge_courses (&judging);
  judge_footing (&judging);
  judge_meetings (&judging);
  judge_movement_joints (&judging);
  judge_pins (&judging); /* after the breaches, some of which it mends */
  g_ptr_array_sort (judging.findings, compare_findings);
  return judging.findings;
}
