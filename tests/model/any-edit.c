/* any-edit.c - made-up edits, sensible and not, for a project */
#include "any-edit.h"

#include "model/built-edit.h"

static gint32
pick (gint32 n)
{
  return g_test_rand_int_range (0, n);
}

/* A wall of the project, or one that is not there. */
static const Wall *
any_wall (const Project *project)
{
  if (project->walls->len == 0 || pick (20) == 0)
    return NULL;
  return project_wall_at (project, (guint) pick ((gint32) project->walls->len));
}

static const Opening *
any_opening (const Project *project)
{
  const Wall *wall = any_wall (project);
  if (wall == NULL || wall->openings->len == 0)
    return NULL;
  return wall_opening_at (wall, (guint) pick ((gint32) wall->openings->len));
}

static const Block *
any_block (const Project *project)
{
  if (project->blocks->len == 0 || pick (20) == 0)
    return NULL;
  return project_block_at (project, (guint) pick ((gint32) project->blocks->len));
}

static void
change_opening (Opening *opening)
{
  opening->x += LENGTH_MM (pick (1000) - 500);
  opening->width += LENGTH_MM (pick (400) - 200);
  opening->sill = pick (4) == 0 ? 0 : opening->sill + LENGTH_MM (pick (200) - 100);
}

static Edit *
add_opening (const Project *project)
{
  const Wall *wall = any_wall (project);
  Opening opening = opening_default ((OpeningKind) pick (3));
  opening.x = LENGTH_MM (pick (6000));
  Edit *edit = edit_add_opening (wall ? wall->id : (WallId){ 4711 }, &opening);
  opening_clear (&opening);
  return edit;
}

static Edit *
set_opening (const Project *project)
{
  const Opening *old = any_opening (project);
  Opening opening = old != NULL ? opening_copy (old) : opening_default (OPENING_DOOR);
  change_opening (&opening);
  Edit *edit = edit_set_opening (&opening);
  opening_clear (&opening);
  return edit;
}

static Edit *
remove_opening (const Project *project)
{
  const Opening *old = any_opening (project);
  return edit_remove_opening (old != NULL ? old->id : (OpeningId){ 4711 });
}

static Edit *
add_wall (const Project *project)
{
  g_autoptr (Wall) wall = wall_new ();
  const Block *block = any_block (project);
  wall->length = LENGTH_MM (pick (9000));
  if (block != NULL)
    wall->block = block->id;
  for (int i = pick (3); i > 0; i--)
    {
      Opening opening = opening_default (OPENING_WINDOW);
      opening.x = LENGTH_MM (i * 1500);
      g_array_append_val (wall->openings, opening);
    }
  return edit_add_wall (wall);
}

static Edit *
set_wall (const Project *project)
{
  const Wall *old = any_wall (project);
  g_autoptr (Wall) wall = old != NULL ? wall_copy (old) : wall_new ();
  wall->length += LENGTH_MM (pick (1000) - 500);
  wall->laying.given |= LAYING_HEAD;
  wall->laying.element = TRUE;
  wall->laying.head = LENGTH_MM (pick (25));
  if (pick (3) == 0)
    wall->block.n = (guint32) pick (5);
  return edit_set_wall (wall);
}

static Edit *
remove_wall (const Project *project)
{
  const Wall *wall = any_wall (project);
  return edit_remove_wall (wall != NULL ? wall->id : (WallId){ 4711 });
}

static Edit *
move_wall (const Project *project)
{
  const Wall *wall = any_wall (project);
  return edit_move_wall (wall != NULL ? wall->id : (WallId){ 4711 }, pick (20) - 5);
}

static Edit *
of_block (const Project *project, gboolean add)
{
  const Block *old = any_block (project);
  Block block = add || old == NULL ? block_default () : block_copy (old);
  block.height = LENGTH_MM (pick (400));
  block.density = pick (21000);
  Edit *edit = add ? edit_add_block (&block) : edit_set_block (&block);
  block_clear (&block);
  return edit;
}

static Edit *
remove_block (const Project *project)
{
  const Block *block = any_block (project);
  return edit_remove_block (block != NULL ? block->id : (BlockId){ 4711 });
}

static Edit *
set_survey (const Project *project)
{
  g_autoptr (Survey) survey = project->survey ? survey_copy (project->survey) : survey_new ();
  const Wall *wall = any_wall (project), *other = any_wall (project);
  Reading *reading = survey_add_reading (survey);
  if (pick (10) == 0 || survey->readings->len > 50)
    return edit_set_survey (NULL);
  reading->given = READING_INTER;
  reading->inter = LENGTH_MM (pick (25000));
  reading_add_place (reading, wall != NULL ? wall->id : (WallId){ 4711 }, LENGTH_MM (pick (9000)));
  if (wall != NULL && other != NULL && pick (3) == 0)
    {
      Diagonal *diagonal = survey_add_diagonal (survey);
      diagonal->along = wall->id;
      diagonal->across = other->id;
      diagonal->length = LENGTH_MM (pick (9000));
    }
  return edit_set_survey (survey);
}

static Edit *
set_rates (const Project *project)
{
  WorkRates rates = project->rates;
  rates.given = (guint) pick (1 << 9);
  rates.gang = pick (1100);
  rates.minutes_a_cut = pick (610) - 5;
  return edit_set_rates (&rates);
}

/* Courses as somebody may have laid them. */
static GArray *
any_laid (gint32 n)
{
  GArray *all = g_array_new (FALSE, FALSE, sizeof (LaidCourse));
  g_array_set_clear_func (all, (GDestroyNotify) laid_course_clear);
  for (gint32 i = 1; i <= n; i++)
    {
      LaidCourse laid = laid_course_new (i);
      for (LaidPerpend at = { LENGTH_MM (600), PERPEND_ALL }; pick (5) > 0;
           at.x += LENGTH_MM (100 + pick (500)))
        g_array_append_val (laid.perpends, at);
      g_array_append_val (all, laid);
    }
  return all;
}

/* Progress, or one figure of the site, taken in or taken back. */
static Edit *
of_site (const Project *project)
{
  const Wall *wall = any_wall (project);
  const Length length = LENGTH_MM (pick (9000)), top = LENGTH_MM (pick (2500));
  const Length off = LENGTH_MM (pick (60) - 30), limit = LENGTH_MM (pick (250));
  const gboolean back = pick (3) == 0;
  g_autoptr (GArray) laid = any_laid (pick (14));
  g_autoptr (Wall) next = NULL;
  if (wall == NULL || pick (8) == 0)
    return edit_set_tolerance ((ToleranceKind) pick (N_TOLERANCES), back ? NULL : &limit);
  switch (pick (5))
    {
    case 0:
      next = built_set_length (wall, back ? NULL : &length);
      break;
    case 1:
      next = built_set_top (wall, 1 + pick (8), back ? NULL : &top, NULL, NULL);
      break;
    case 2:
      next = built_set_figure (wall, BUILT_PLUMB << pick (5), back ? NULL : &off);
      break;
    case 3:
      if (wall->openings->len > 0)
        next = built_set_opening (wall, wall_opening_at (wall, 0)->id, (OpeningFigure) pick (4),
                                  back ? NULL : &top, NULL);
      break;
    default:
      next = built_set_courses (wall, pick (14), laid, back ? NULL : "2026-05-04", NULL);
      break;
    }
  return edit_set_wall (next != NULL ? next : wall);
}

Edit *
any_edit (const Project *project)
{
  static const char *const texts[] = { "", "Trial", "2026-03-02", NULL };
  switch (pick (19))
    {
    case 0:
      return edit_project ((ProjectField) pick (5), texts[pick (G_N_ELEMENTS (texts))]);
    case 1:
      return of_block (project, TRUE);
    case 2:
      return of_block (project, FALSE);
    case 3:
      return remove_block (project);
    case 4:
    case 5:
      return add_wall (project);
    case 6:
      return set_wall (project);
    case 7:
      return remove_wall (project);
    case 8:
      return move_wall (project);
    case 9:
    case 10:
      return add_opening (project);
    case 11:
    case 12:
      return set_opening (project);
    case 13:
      return set_survey (project);
    case 14:
      return set_rates (project);
    case 15:
    case 16:
    case 17:
      return of_site (project);
    default:
      return remove_opening (project);
    }
}

Project *
deep_copy (const Project *project)
{
  Project *copy = project_copy (project);
  for (guint i = 0; i < copy->walls->len; i++)
    {
      Wall *shared = g_ptr_array_index (copy->walls, i);
      g_ptr_array_index (copy->walls, i) = wall_copy (shared);
      wall_unref (shared);
    }
  return copy;
}
