/* project.c - everything the builder said, as one value */
#include "model/project.h"

static void
block_free (gpointer data)
{
  block_clear (data);
  g_free (data);
}

/* Blocks are small: versions hold copies of them. */
static void
add_block_copy (Project *project, const Block *block)
{
  Block *copy = g_new (Block, 1);

  *copy = block_copy (block);
  g_ptr_array_add (project->blocks, copy);
}

static Project *
project_empty (void)
{
  Project *project = g_new0 (Project, 1);

  g_atomic_ref_count_init (&project->refs);
  project->blocks = g_ptr_array_new_with_free_func (block_free);
  project->walls = wall_list_new ();
  project->rates = work_rates_default ();
  project->next = 1;
  return project;
}

Project *
project_new (void)
{
  Project *project = project_empty ();
  Block block = block_default ();

  block.id.n = project->next++;
  block.key = g_strdup ("b1");
  add_block_copy (project, &block);
  block_clear (&block);
  return project;
}

Project *
project_copy (const Project *project)
{
  Project *copy = project_empty ();

  copy->title = g_strdup (project->title);
  copy->client = g_strdup (project->client);
  copy->site = g_strdup (project->site);
  copy->author = g_strdup (project->author);
  copy->date = g_strdup (project->date);
  copy->foreign = foreign_copy (&project->foreign);
  copy->next = project->next;
  for (guint i = 0; i < N_TOLERANCES; i++)
    {
      copy->tolerances[i] = project->tolerances[i];
      copy->tolerances[i].foreign = foreign_copy (&project->tolerances[i].foreign);
    }
  copy->survey = project->survey ? survey_ref (project->survey) : NULL;
  copy->rates = project->rates;
  copy->rates_foreign = foreign_copy (&project->rates_foreign);
  for (guint i = 0; i < project->blocks->len; i++)
    add_block_copy (copy, project_block_at (project, i));
  for (guint i = 0; i < project->walls->len; i++)
    g_ptr_array_add (copy->walls, wall_ref (project_wall_at (project, i)));
  return copy;
}

Project *
project_ref (const Project *project)
{
  Project *shared = (Project *) project;

  g_atomic_ref_count_inc (&shared->refs);
  return shared;
}

void
project_unref (Project *project)
{
  if (!project || !g_atomic_ref_count_dec (&project->refs))
    return;
  g_free (project->title);
  g_free (project->client);
  g_free (project->site);
  g_free (project->author);
  g_free (project->date);
  foreign_clear (&project->foreign);
  foreign_clear (&project->rates_foreign);
  for (guint i = 0; i < N_TOLERANCES; i++)
    foreign_clear (&project->tolerances[i].foreign);
  survey_unref (project->survey);
  g_ptr_array_unref (project->blocks);
  g_ptr_array_unref (project->walls);
  g_free (project);
}

int
project_wall_index (const Project *project, WallId id)
{
  for (guint i = 0; i < project->walls->len; i++)
    if (project_wall_at (project, i)->id.n == id.n)
      return (int) i;
  return -1;
}

const Wall *
project_wall (const Project *project, WallId id)
{
  int i = project_wall_index (project, id);

  return i >= 0 ? project_wall_at (project, (guint) i) : NULL;
}

const Wall *
project_wall_by_key (const Project *project, const char *key)
{
  for (guint i = 0; i < project->walls->len; i++)
    if (g_strcmp0 (project_wall_at (project, i)->key, key) == 0)
      return project_wall_at (project, i);
  return NULL;
}

const Block *
project_block (const Project *project, BlockId id)
{
  for (guint i = 0; i < project->blocks->len; i++)
    if (project_block_at (project, i)->id.n == id.n)
      return project_block_at (project, i);
  return NULL;
}

const Wall *
project_wall_of_opening (const Project *project, OpeningId id)
{
  for (guint i = 0; i < project->walls->len; i++)
    if (wall_opening (project_wall_at (project, i), id))
      return project_wall_at (project, i);
  return NULL;
}

/* Calls `each` with every key of the project until it returns TRUE; says whether it did. */
static gboolean
any_key (const Project *project, gboolean (*each) (const char *key, gpointer data), gpointer data)
{
  for (guint i = 0; i < project->blocks->len; i++)
    if (each (project_block_at (project, i)->key, data))
      return TRUE;
  for (guint i = 0; i < project->walls->len; i++)
    {
      const Wall *wall = project_wall_at (project, i);

      if (each (wall->key, data))
        return TRUE;
      for (guint j = 0; j < wall->openings->len; j++)
        if (each (wall_opening_at (wall, j)->key, data))
          return TRUE;
    }
  return FALSE;
}

static gboolean
collect (const char *key, gpointer data)
{
  if (key)
    g_hash_table_add (data, (gpointer) key);
  return FALSE;
}

char *
project_free_key (const Project *project, char prefix)
{
  g_autoptr (GHashTable) keys = g_hash_table_new (g_str_hash, g_str_equal);

  any_key (project, collect, keys);
  for (guint n = 1;; n++)
    {
      g_autofree char *key = g_strdup_printf ("%c%u", prefix, n);

      if (!g_hash_table_contains (keys, key))
        return g_steal_pointer (&key);
    }
}
