/* project-equal.c - whether two projects say the same */

#include "model/project.h"

/* Numbers of ids depend on the road that a project was made by; its content does not. So things are
 * compared with their numbers taken off, and a wall's block by its place in the list. */

static gint32
block_place (const Project *project, BlockId id)
{
  for (guint i = 0; i < project->blocks->len; i++)
    if (project_block_at (project, i)->id.n == id.n)
      return (gint32) i;
  return -1;
}

static gboolean
same_block (const Block *a, const Block *b)
{
  Block x = *a, y = *b;

  x.id = y.id = (BlockId){ 0 };
  return block_equal (&x, &y);
}

static Wall *
without_numbers (const Project *project, const Wall *wall)
{
  Wall *copy = wall_copy (wall);

  copy->id.n = 0;
  copy->block.n = (guint32) (block_place (project, wall->block) + 1);
  for (guint i = 0; i < copy->openings->len; i++)
    g_array_index (copy->openings, Opening, i).id.n = 0;
  return copy;
}

static gboolean
same_wall (const Project *a, const Wall *x, const Project *b, const Wall *y)
{
  g_autoptr (Wall) p = NULL;
  g_autoptr (Wall) q = NULL;

  if (x == y && block_place (a, x->block) == block_place (b, y->block))
    return TRUE;
  if (x->length != y->length || x->height != y->height || x->openings->len != y->openings->len)
    return FALSE;
  p = without_numbers (a, x);
  q = without_numbers (b, y);
  return wall_equal (p, q);
}

static gboolean
same_heading (const Project *a, const Project *b)
{
  return g_strcmp0 (a->title, b->title) == 0 && g_strcmp0 (a->client, b->client) == 0
         && g_strcmp0 (a->site, b->site) == 0 && g_strcmp0 (a->author, b->author) == 0
         && g_strcmp0 (a->date, b->date) == 0 && foreign_equal (&a->foreign, &b->foreign);
}

/* A wall's place in the list, from 1; walls that are not there are none. */
static WallId
wall_place (WallId id, gconstpointer data)
{
  const Project *project = data;

  for (guint i = 0; i < project->walls->len; i++)
    if (project_wall_at (project, i)->id.n == id.n)
      return (WallId){ i + 1 };
  return (WallId){ 0 };
}

static Survey *
survey_without_numbers (const Project *project)
{
  Survey *copy = survey_copy (project->survey);

  survey_map_walls (copy, wall_place, project);
  return copy;
}

static gboolean
same_survey (const Project *a, const Project *b)
{
  g_autoptr (Survey) p = NULL;
  g_autoptr (Survey) q = NULL;

  if (!a->survey || !b->survey)
    return a->survey == b->survey;
  p = survey_without_numbers (a);
  q = survey_without_numbers (b);
  return survey_equal (p, q);
}

gboolean
project_equal (const Project *a, const Project *b)
{
  if (a == b)
    return TRUE;
  if (a->blocks->len != b->blocks->len || a->walls->len != b->walls->len || !same_heading (a, b))
    return FALSE;
  for (guint i = 0; i < N_TOLERANCES; i++)
    if (!tolerance_equal (&a->tolerances[i], &b->tolerances[i]))
      return FALSE;
  for (guint i = 0; i < a->blocks->len; i++)
    if (!same_block (project_block_at (a, i), project_block_at (b, i)))
      return FALSE;
  for (guint i = 0; i < a->walls->len; i++)
    if (!same_wall (a, project_wall_at (a, i), b, project_wall_at (b, i)))
      return FALSE;
  return same_survey (a, b) && work_rates_equal (&a->rates, &b->rates)
         && foreign_equal (&a->rates_foreign, &b->rates_foreign);
}
