/* project-fault.c - what is wrong with a project, as a sentence */
#include <glib/gi18n-lib.h>

#include "model/project.h"

/* A fault is a new sentence, or NULL. Keys are checked for being XML names by the store, which
 * reads them; the project itself gives only such. */

static char *
range_fault (const Block *block, const char *what, Length value)
{
  char is[LENGTH_TEXT_SIZE];

  if (value >= LENGTH_MM (20) && value <= LENGTH_MM (10000))
    return NULL;
  return g_strdup_printf (_ ("Block \"%s\": its %s is %s mm; it must be from 20 to 10000 mm."),
                          block->key, what, length_text (value, is));
}

static char *
block_fault (const Block *block)
{
  char *fault;

  if ((fault = range_fault (block, _ ("length"), block->length))
      || (fault = range_fault (block, _ ("height"), block->height))
      || (fault = range_fault (block, _ ("thickness"), block->thickness)))
    return fault;
  if (!(block->density >= BLOCK_LEAST_DENSITY && block->density <= 20000))
    return g_strdup_printf (
        _ ("Block \"%s\": its density must be above 0 and at most 20000 kg/m³."), block->key);
  if (!(block->strength >= 0 && block->strength <= BLOCK_MOST_STRENGTH))
    return g_strdup_printf (_ ("Block \"%s\": its strength must be from 0 to %d N/mm²."),
                            block->key, BLOCK_MOST_STRENGTH);
  return NULL;
}

/* Whether an XML 1.0 file can hold every character (production 2, Char). */
static gboolean
can_be_written (const char *text)
{
  if (!g_utf8_validate (text, -1, NULL))
    return FALSE;
  for (; *text; text = g_utf8_next_char (text))
    {
      gunichar c = g_utf8_get_char (text);

      if ((c < 0x20 && c != '\t' && c != '\n' && c != '\r') || c == 0xfffe || c == 0xffff)
        return FALSE;
    }
  return TRUE;
}

/* `text` may be NULL. */
static char *
text_fault (const char *what, const char *text)
{
  if (!text)
    return NULL;
  if (!can_be_written (text))
    return g_strdup_printf (_ ("%s has a character that a file cannot hold."), what);
  if (g_utf8_strlen (text, -1) > PROJECT_MAX_TEXT)
    return g_strdup_printf (_ ("%s is longer than %d characters."), what, PROJECT_MAX_TEXT);
  return NULL;
}

static char *
heading_fault (const Project *project)
{
  char *fault;

  if ((fault = text_fault (_ ("The title"), project->title))
      || (fault = text_fault (_ ("The client"), project->client))
      || (fault = text_fault (_ ("The site"), project->site))
      || (fault = text_fault (_ ("The author"), project->author)))
    return fault;
  return text_fault (_ ("The date"), project->date);
}

static char *
survey_names_fault (const Survey *survey)
{
  char *fault = NULL;

  for (guint i = 0; !fault && i < survey->readings->len; i++)
    fault = text_fault (_ ("A point's name"), survey_reading (survey, i)->point);
  for (guint i = 0; !fault && i < survey->diagonals->len; i++)
    fault = text_fault (_ ("A diagonal's name"), survey_diagonal (survey, i)->name);
  return fault;
}

static char *
names_fault (const Project *project)
{
  char *fault = NULL;

  for (guint i = 0; !fault && i < project->blocks->len; i++)
    fault = text_fault (_ ("A block's name"), project_block_at (project, i)->name);
  for (guint i = 0; !fault && i < project->walls->len; i++)
    {
      const Wall *wall = project_wall_at (project, i);

      fault = text_fault (_ ("A wall's name"), wall->name);
      if (!fault && wall->built)
        fault = text_fault (_ ("A wall's date of measuring"), wall->built->as_of);
      for (guint j = 0; !fault && j < wall->openings->len; j++)
        fault = text_fault (_ ("An opening's name"), wall_opening_at (wall, j)->name);
      for (guint j = 0; !fault && j < wall->movement_joints->len; j++)
        fault = text_fault (_ ("A movement joint's filler"),
                            wall_movement_joint_at (wall, j)->filler);
    }
  return fault;
}

static char *
key_fault (GHashTable *keys, const char *key)
{
  if (!key || !*key)
    return g_strdup (_ ("Something in the project has no id."));
  if (!g_hash_table_add (keys, (gpointer) key))
    return g_strdup_printf (_ ("The id \"%s\" is used twice."), key);
  return NULL;
}

static char *
keys_fault (const Project *project)
{
  g_autoptr (GHashTable) keys = g_hash_table_new (g_str_hash, g_str_equal);
  char *fault = NULL;

  for (guint i = 0; !fault && i < project->blocks->len; i++)
    fault = key_fault (keys, project_block_at (project, i)->key);
  for (guint i = 0; !fault && i < project->walls->len; i++)
    {
      const Wall *wall = project_wall_at (project, i);

      fault = key_fault (keys, wall->key);
      for (guint j = 0; !fault && j < wall->openings->len; j++)
        fault = key_fault (keys, wall_opening_at (wall, j)->key);
    }
  return fault;
}

static char *
wall_in_project_fault (const Project *project, const Wall *wall)
{
  const Block *block = project_block (project, wall->block);
  const char *name = wall_called (wall);
  g_autofree char *fault = NULL;

  if (!block)
    return g_strdup_printf (_ ("Wall %s: its block is not in the project."), name);
  fault = wall_fault (wall, block, NULL);
  return fault ? g_strdup_printf (_ ("Wall %s: %s"), name, fault) : NULL;
}

static char *
tolerances_fault (const Project *project)
{
  char is[LENGTH_TEXT_SIZE], most[LENGTH_TEXT_SIZE];

  for (guint i = 0; i < N_TOLERANCES; i++)
    {
      const Tolerance *tolerance = &project->tolerances[i];

      if (tolerance->given && (tolerance->limit < 0 || tolerance->limit > TOLERANCE_MOST))
        return g_strdup_printf (_ ("The tolerance \"%s\" is %s mm; it must be from 0 to %s mm."),
                                tolerance_word ((ToleranceKind) i),
                                length_text (tolerance->limit, is),
                                length_text (TOLERANCE_MOST, most));
    }
  return NULL;
}

char *
project_fault (const Project *project)
{
  char *fault;

  if (project->walls->len > PROJECT_MAX_WALLS)
    return g_strdup_printf (_ ("The project has %u walls; at most %d are allowed."),
                            project->walls->len, PROJECT_MAX_WALLS);
  if (project->blocks->len > PROJECT_MAX_BLOCKS)
    return g_strdup_printf (_ ("The project has %u blocks; at most %d are allowed."),
                            project->blocks->len, PROJECT_MAX_BLOCKS);
  if (project->survey
      && ((fault = survey_fault (project->survey))
          || (fault = survey_names_fault (project->survey))))
    return fault;
  if ((fault = work_rates_fault (&project->rates)) || (fault = heading_fault (project))
      || (fault = names_fault (project)) || (fault = keys_fault (project))
      || (fault = tolerances_fault (project)))
    return fault;
  for (guint i = 0; i < project->blocks->len; i++)
    if ((fault = block_fault (project_block_at (project, i))))
      return fault;
  for (guint i = 0; i < project->walls->len; i++)
    if ((fault = wall_in_project_fault (project, project_wall_at (project, i))))
      return fault;
  return NULL;
}
