/* edit.c - changes as data, and the project that follows from one */
#include "model/edit.h"

#include <glib/gi18n-lib.h>

#include "model/plan-follow.h"

G_DEFINE_QUARK (halfbond_model_error, model_error)

static Edit *
edit_new (EditKind kind)
{
  Edit *edit = g_new0 (Edit, 1);

  edit->kind = kind;
  return edit;
}

Edit *
edit_project (ProjectField field, const char *text)
{
  Edit *edit = edit_new (EDIT_PROJECT);

  edit->field = (int) field;
  edit->text = g_strdup (text);
  return edit;
}

static Edit *
edit_of_block (EditKind kind, const Block *block)
{
  Edit *edit = edit_new (kind);

  edit->block = block_copy (block);
  return edit;
}

Edit *
edit_add_block (const Block *block)
{
  return edit_of_block (EDIT_ADD_BLOCK, block);
}

Edit *
edit_set_block (const Block *block)
{
  return edit_of_block (EDIT_SET_BLOCK, block);
}

Edit *
edit_remove_block (BlockId id)
{
  Edit *edit = edit_new (EDIT_REMOVE_BLOCK);

  edit->block_id = id;
  return edit;
}

static Edit *
edit_of_wall (EditKind kind, const Wall *wall)
{
  Edit *edit = edit_new (kind);

  edit->wall = wall_copy (wall);
  return edit;
}

Edit *
edit_add_wall (const Wall *wall)
{
  return edit_of_wall (EDIT_ADD_WALL, wall);
}

Edit *
edit_set_wall (const Wall *wall)
{
  return edit_of_wall (EDIT_SET_WALL, wall);
}

Edit *
edit_wall_top (const Wall *wall, const GArray *tops, Length height)
{
  Edit *edit = edit_set_wall (wall);

  wall_take_top (edit->wall, tops != NULL ? top_list_copy (tops) : NULL, height);
  return edit;
}

Edit *
edit_wall_feet (const Wall *wall, const GArray *feet)
{
  Edit *edit = edit_set_wall (wall);

  g_array_unref (edit->wall->feet);
  edit->wall->feet = feet != NULL ? foot_list_copy (feet) : foot_list_new ();
  return edit;
}

Edit *
edit_wall_cap (const Wall *wall, Length height)
{
  Edit *edit = edit_set_wall (wall);

  edit->wall->cap.height = height;
  return edit;
}

static GPtrArray *
copy_of_walls (const GPtrArray *walls)
{
  GPtrArray *copy = wall_list_new ();

  for (guint i = 0; i < walls->len; i++)
    g_ptr_array_add (copy, wall_copy (g_ptr_array_index (walls, i)));
  return copy;
}

Edit *
edit_walls (const GPtrArray *walls)
{
  Edit *edit = edit_new (EDIT_WALLS);

  edit->walls = copy_of_walls (walls);
  return edit;
}

Edit *
edit_remove_wall (WallId id)
{
  Edit *edit = edit_new (EDIT_REMOVE_WALL);

  edit->wall_id = id;
  return edit;
}

Edit *
edit_move_wall (WallId id, int index)
{
  Edit *edit = edit_new (EDIT_MOVE_WALL);

  edit->wall_id = id;
  edit->field = index;
  return edit;
}

Edit *
edit_add_opening (WallId wall, const Opening *opening)
{
  Edit *edit = edit_new (EDIT_ADD_OPENING);

  edit->wall_id = wall;
  edit->opening = opening_copy (opening);
  return edit;
}

Edit *
edit_set_opening (const Opening *opening)
{
  Edit *edit = edit_new (EDIT_SET_OPENING);

  edit->opening = opening_copy (opening);
  return edit;
}

Edit *
edit_remove_opening (OpeningId id)
{
  Edit *edit = edit_new (EDIT_REMOVE_OPENING);

  edit->opening_id = id;
  return edit;
}

Edit *
edit_set_survey (const Survey *survey)
{
  Edit *edit = edit_new (EDIT_SET_SURVEY);

  edit->survey = survey ? survey_copy (survey) : NULL;
  return edit;
}

Edit *
edit_set_rates (const WorkRates *rates)
{
  Edit *edit = edit_new (EDIT_SET_RATES);

  edit->rates = *rates;
  return edit;
}

Edit *
edit_set_tolerance (ToleranceKind kind, const Length *limit)
{
  Edit *edit = edit_new (EDIT_SET_TOLERANCE);

  edit->field = (int) kind;
  edit->given = limit != NULL;
  edit->limit = limit ? *limit : 0;
  return edit;
}

Edit *
edit_copy (const Edit *edit)
{
  Edit *copy = g_memdup2 (edit, sizeof *edit);

  copy->text = g_strdup (edit->text);
  copy->wall = edit->wall ? wall_ref (edit->wall) : NULL;
  copy->walls = edit->walls ? copy_of_walls (edit->walls) : NULL;
  copy->survey = edit->survey ? survey_ref (edit->survey) : NULL;
  copy->block = block_copy (&edit->block);
  copy->opening = opening_copy (&edit->opening);
  return copy;
}

void
edit_free (Edit *edit)
{
  if (!edit)
    return;
  g_free (edit->text);
  wall_unref (edit->wall);
  if (edit->walls)
    g_ptr_array_unref (edit->walls);
  survey_unref (edit->survey);
  block_clear (&edit->block);
  opening_clear (&edit->opening);
  g_free (edit);
}

/* ---- what follows from an edit: each changes `next`, a copy nobody else sees yet, and returns
 * FALSE with a sentence when it cannot ---- */

static gboolean
refuse (GError **error, const char *sentence)
{
  g_set_error_literal (error, MODEL_ERROR, MODEL_ERROR_REFUSED, sentence);
  return FALSE;
}

static gboolean
missing (GError **error)
{
  return refuse (error, _ ("What this would change is not in the project."));
}

static gboolean
set_heading (Project *next, const Edit *edit)
{
  char **const fields[] = {
    [FIELD_TITLE] = &next->title,   [FIELD_CLIENT] = &next->client, [FIELD_SITE] = &next->site,
    [FIELD_AUTHOR] = &next->author, [FIELD_DATE] = &next->date,
  };

  g_free (*fields[edit->field]);
  *fields[edit->field] = g_strdup (edit->text);
  return TRUE;
}

/* A key of its own, unless the thing has one already. */
static void
give_key (const Project *next, char **key, char prefix)
{
  if (!*key)
    *key = project_free_key (next, prefix);
}

static gboolean
add_block (Project *next, const Edit *edit)
{
  Block *block = g_new (Block, 1);

  *block = block_copy (&edit->block);
  if (!block->id.n)
    block->id.n = next->next++;
  give_key (next, &block->key, 'b');
  g_ptr_array_add (next->blocks, block);
  return TRUE;
}

static gboolean
set_block (Project *next, const Edit *edit, GError **error)
{
  Block *block = (Block *) project_block (next, edit->block.id);
  Block old;

  if (!block)
    return missing (error);
  old = *block;
  *block = block_copy (&edit->block);
  if (!block->key)
    block->key = g_strdup (old.key);
  block_clear (&old);
  return TRUE;
}

static gboolean
remove_block (Project *next, const Edit *edit, GError **error)
{
  const Block *block = project_block (next, edit->block_id);

  if (!block)
    return missing (error);
  for (guint i = 0; i < next->walls->len; i++)
    if (project_wall_at (next, i)->block.n == edit->block_id.n)
      {
        const Wall *wall = project_wall_at (next, i);

        g_set_error (error, MODEL_ERROR, MODEL_ERROR_REFUSED,
                     _ ("Block %s stays: wall %s is built of it."),
                     *block->name ? block->name : block->key, wall_called (wall));
        return FALSE;
      }
  g_ptr_array_remove (next->blocks, (gpointer) block);
  return TRUE;
}

/* Ids and keys for a wall and its openings that have none; the wall is in `next` already. */
static void
number_wall (Project *next, Wall *wall)
{
  if (!wall->id.n)
    wall->id.n = next->next++;
  give_key (next, &wall->key, 'w');
  for (guint i = 0; i < wall->openings->len; i++)
    {
      Opening *opening = &g_array_index (wall->openings, Opening, i);

      if (!opening->id.n)
        opening->id.n = next->next++;
      give_key (next, &opening->key, 'o');
    }
}

/* The first block, for a wall that names none. */
static void
give_block (const Project *next, Wall *wall)
{
  if (!wall->block.n && next->blocks->len)
    wall->block = project_block_at (next, 0)->id;
}

static gboolean
add_wall (Project *next, const Wall *said)
{
  Wall *wall = wall_copy (said);

  give_block (next, wall);
  g_ptr_array_add (next->walls, wall);
  number_wall (next, wall);
  return TRUE;
}

static gboolean
put_wall (Project *next, int i, Wall *wall)
{
  wall_unref (g_ptr_array_index (next->walls, (guint) i));
  g_ptr_array_index (next->walls, (guint) i) = wall;
  number_wall (next, wall);
  return TRUE;
}

/* Whoever makes a wall longer need not think of its top. */
static void
follow_length (Wall *wall, const Wall *before)
{
  const Length length = wall->length;

  if (length == before->length || !top_list_equal (wall->tops, before->tops)
      || !foot_list_equal (wall->feet, before->feet))
    return;
  wall->length = before->length;
  wall_set_length (wall, length);
}

static gboolean
set_wall (Project *next, const Wall *said, GError **error)
{
  int i = project_wall_index (next, said->id);
  Wall *wall;

  if (i < 0)
    return missing (error);
  wall = wall_copy (said);
  if (!wall->key)
    wall->key = g_strdup (project_wall_at (next, (guint) i)->key);
  follow_length (wall, project_wall_at (next, (guint) i));
  give_block (next, wall);
  return put_wall (next, i, wall);
}

/* The survey of `next`, without what it says of that wall. */
static void
forget_wall (Project *next, WallId wall)
{
  Survey *survey;

  if (!next->survey || !survey_names_wall (next->survey, wall))
    return;
  survey = survey_copy (next->survey);
  survey_forget_wall (survey, wall);
  survey_unref (next->survey);
  next->survey = survey;
}

static gboolean
set_walls (Project *next, const Edit *edit, GError **error)
{
  for (guint i = 0; i < edit->walls->len; i++)
    {
      const Wall *wall = g_ptr_array_index (edit->walls, i);

      if (wall->id.n ? !set_wall (next, wall, error) : !add_wall (next, wall))
        return FALSE;
    }
  return TRUE;
}

static gboolean
remove_wall (Project *next, const Edit *edit, GError **error)
{
  int i = project_wall_index (next, edit->wall_id);

  if (i < 0)
    return missing (error);
  forget_wall (next, edit->wall_id);
  g_ptr_array_remove_index (next->walls, (guint) i);
  return TRUE;
}

static gboolean
move_wall (Project *next, const Edit *edit, GError **error)
{
  int i = project_wall_index (next, edit->wall_id);
  int to = CLAMP (edit->field, 0, (int) next->walls->len - 1);

  if (i < 0)
    return missing (error);
  g_ptr_array_insert (next->walls, to, g_ptr_array_steal_index (next->walls, (guint) i));
  return TRUE;
}

static gboolean
add_opening (Project *next, const Edit *edit, GError **error)
{
  int i = project_wall_index (next, edit->wall_id);
  Wall *wall;
  Opening opening;

  if (i < 0)
    return missing (error);
  wall = wall_copy (project_wall_at (next, (guint) i));
  opening = opening_copy (&edit->opening);
  g_array_append_val (wall->openings, opening);
  return put_wall (next, i, wall);
}

/* A copy of the wall that has the opening, put in the place of the old one; *at is the opening's
 * place in it. NULL: no wall has it. */
static Wall *
open_wall (Project *next, OpeningId id, guint *at)
{
  const Wall *old = id.n ? project_wall_of_opening (next, id) : NULL;
  Wall *wall;

  if (!old)
    return NULL;
  wall = wall_copy (old);
  put_wall (next, project_wall_index (next, wall->id), wall);
  for (*at = 0; wall_opening_at (wall, *at)->id.n != id.n;)
    ++*at;
  return wall;
}

static gboolean
set_opening (Project *next, const Edit *edit, GError **error)
{
  guint at;
  Wall *wall = open_wall (next, edit->opening.id, &at);
  Opening *opening, old;

  if (!wall)
    return missing (error);
  opening = &g_array_index (wall->openings, Opening, at);
  old = *opening;
  *opening = opening_copy (&edit->opening);
  if (!opening->key)
    opening->key = g_strdup (old.key);
  opening_clear (&old);
  return TRUE;
}

static gboolean
remove_opening (Project *next, const Edit *edit, GError **error)
{
  guint at;
  Wall *wall = open_wall (next, edit->opening_id, &at);

  if (!wall)
    return missing (error);
  g_array_remove_index (wall->openings, at);
  return TRUE;
}

static gboolean
has_walls_of (const Project *project, const Survey *survey)
{
  for (guint i = 0; i < survey->readings->len; i++)
    for (guint j = 0; j < survey_reading (survey, i)->places->len; j++)
      if (!project_wall (project, reading_place (survey_reading (survey, i), j)->wall))
        return FALSE;
  for (guint i = 0; i < survey->diagonals->len; i++)
    if (!project_wall (project, survey_diagonal (survey, i)->along)
        || !project_wall (project, survey_diagonal (survey, i)->across))
      return FALSE;
  return TRUE;
}

static gboolean
set_survey (Project *next, const Edit *edit, GError **error)
{
  if (edit->survey && !has_walls_of (next, edit->survey))
    return missing (error);
  survey_unref (next->survey);
  next->survey = edit->survey ? survey_ref (edit->survey) : NULL;
  return TRUE;
}

/* What others said of it stays with it; with none, it goes. */
static gboolean
set_tolerance (Project *next, const Edit *edit)
{
  Tolerance *tolerance = &next->tolerances[edit->field];

  tolerance->given = edit->given;
  tolerance->limit = edit->limit;
  if (!edit->given)
    foreign_clear (&tolerance->foreign);
  return TRUE;
}

static gboolean
apply (Project *next, const Edit *edit, GError **error)
{
  switch (edit->kind)
    {
    case EDIT_PROJECT:
      return set_heading (next, edit);
    case EDIT_ADD_BLOCK:
      return add_block (next, edit);
    case EDIT_SET_BLOCK:
      return set_block (next, edit, error);
    case EDIT_REMOVE_BLOCK:
      return remove_block (next, edit, error);
    case EDIT_ADD_WALL:
      return add_wall (next, edit->wall);
    case EDIT_SET_WALL:
      return set_wall (next, edit->wall, error);
    case EDIT_WALLS:
      return set_walls (next, edit, error);
    case EDIT_REMOVE_WALL:
      return remove_wall (next, edit, error);
    case EDIT_MOVE_WALL:
      return move_wall (next, edit, error);
    case EDIT_ADD_OPENING:
      return add_opening (next, edit, error);
    case EDIT_SET_OPENING:
      return set_opening (next, edit, error);
    case EDIT_REMOVE_OPENING:
      return remove_opening (next, edit, error);
    case EDIT_SET_TOLERANCE:
      return set_tolerance (next, edit);
    case EDIT_SET_SURVEY:
      return set_survey (next, edit, error);
    case EDIT_SET_RATES:
      next->rates = edit->rates;
      return TRUE;
    }
  g_assert_not_reached ();
}

static gboolean
set_all (Project *next, const GPtrArray *walls, GError **error)
{
  for (guint i = 0; i < walls->len; i++)
    if (!set_wall (next, g_ptr_array_index (walls, i), error))
      return FALSE;
  return TRUE;
}

/* Ends and tees of walls that stand in plan follow from where they stand, and where they end from
 * how thick the others are. */
static gboolean
settle (const Project *before, Project *next, const Edit *edit, GError **error)
{
  g_autoptr (GPtrArray) followed = plan_follow_thickness (before, next);
  WallId said_by = edit->kind == EDIT_SET_WALL ? edit->wall->id : (WallId){ 0 };
  g_autoptr (GPtrArray) changed = NULL;

  if (!set_all (next, followed, error))
    return FALSE;
  changed = plan_settled (before, next, said_by);
  return set_all (next, changed, error);
}

Project *
project_edit (const Project *project, const Edit *edit, GError **error)
{
  g_autoptr (Project) next = project_copy (project);
  g_autofree char *fault = NULL;

  if (!apply (next, edit, error))
    return NULL;
  if (edit->kind != EDIT_PROJECT && !settle (project, next, edit, error))
    return NULL;
  fault = project_fault (next);
  if (fault)
    {
      refuse (error, fault);
      return NULL;
    }
  return g_steal_pointer (&next);
}
