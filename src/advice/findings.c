/* findings.c - what breaks a rule or is awkward, each with its mend where one is known */
#include "advice/findings.h"

#include <string.h>

#include "advice/judging.h"
#include "site/square.h"

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

/* In this order: pins mend some of the breaches. */
static void (*const rules[]) (Judging *) = {
  judge_contradictions, judge_breaches,        judge_openings, judge_stability,
  judge_loose,          judge_fresh,           judge_ends,     judge_pressure,
  judge_bed_steel,      judge_courses,         judge_tops,     judge_footing,
  judge_meetings,       judge_movement_joints, judge_as_built, judge_pins,
};

struct Judge
{
  Project *project;
  LevelBook *book; /* NULL: the footing is not surveyed */
  Beds *beds;      /* likewise */
  GArray *squares; /* SquareCheck */
};

Judge *
judge_new (const Project *project)
{
  Judge *judge = g_new0 (Judge, 1);

  judge->project = project_ref (project);
  if (project->survey != NULL)
    {
      judge->book = level_book_new (project->survey);
      judge->beds = beds_new (project, judge->book);
    }
  judge->squares = square_checks (project);
  return judge;
}

void
judge_free (Judge *judge)
{
  if (judge == NULL)
    return;
  g_array_unref (judge->squares);
  beds_free (judge->beds);
  level_book_free (judge->book);
  project_unref (judge->project);
  g_free (judge);
}

GPtrArray *
judge_findings (const Judge *judge, const Wall *wall, const Layout *layout, const gint *stop)
{
  g_autoptr (Project) one = of_one_wall (judge->project, wall);
  Judging judging = { .project = one,
                      .whole = judge->project,
                      .wall = wall,
                      .block = project_block (judge->project, wall->block),
                      .layout = layout,
                      .book = judge->book,
                      .beds = judge->beds,
                      .squares = judge->squares,
                      .stop = stop };

  judging.laying = laying_resolve (&wall->laying, judging.block);
  judging.findings = g_ptr_array_new_with_free_func ((GDestroyNotify) finding_free);
  for (guint i = 0; i < G_N_ELEMENTS (rules) && !judging_is_stopped (&judging); i++)
    rules[i](&judging);
  g_ptr_array_sort (judging.findings, compare_findings);
  if (judging_is_stopped (&judging))
    g_clear_pointer (&judging.findings, g_ptr_array_unref);
  return judging.findings;
}

GPtrArray *
findings_of_wall (const Project *project, const Wall *wall, const Layout *layout)
{
  g_autoptr (Judge) judge = judge_new (project);

  return judge_findings (judge, wall, layout, NULL);
}
