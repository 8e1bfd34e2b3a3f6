/* bench-findings.c - how many findings walls have, by rule: a note on every wall is read on none
 *
 * Usage: bench-findings WALLS [FILE...]. So many made-up house walls, each alone, and the walls of
 * the files. Prints rows, tab-separated: where from, walls, rule, severity, findings, walls that
 * have one; and of all rules together, with the notes of a wall, median and most. */
#include <stdio.h>
#include <stdlib.h>

#include "advice/findings.h"
#include "any-house.h"
#include "bond/lay.h"
#include "store/store.h"

typedef struct
{
  Severity severity;
  guint findings, walls;
  guint last; /* the wall that had one, from 1 */
} Count;

typedef struct
{
  const char *from;
  guint walls;
  GHashTable *rules; /* const char * -> Count * */
  GArray *notes;     /* guint, of each wall */
} Counts;

static void
count_wall (Counts *counts, const Judge *judge, const Wall *wall, const Block *block)
{
  g_autoptr (Layout) layout = lay_wall (wall, block, NULL);
  g_autoptr (GPtrArray) findings = judge_findings (judge, wall, layout, NULL);
  guint notes = 0;

  counts->walls++;
  for (guint i = 0; i < findings->len; i++)
    {
      const Finding *finding = g_ptr_array_index (findings, i);
      Count *count = g_hash_table_lookup (counts->rules, finding->rule);

      if (!count)
        {
          count = g_new0 (Count, 1);
          g_hash_table_insert (counts->rules, g_strdup (finding->rule), count);
        }
      count->severity = finding->severity;
      count->findings++;
      count->walls += count->last != counts->walls;
      count->last = counts->walls;
      notes += finding->severity == SEVERITY_NOTE;
    }
  g_array_append_val (counts->notes, notes);
}

static gint
compare_guints (gconstpointer a, gconstpointer b)
{
  const guint x = *(const guint *) a, y = *(const guint *) b;

  return (x > y) - (x < y);
}

static void
print_and_clear (Counts *counts)
{
  g_autoptr (GList) rules
      = g_list_sort (g_hash_table_get_keys (counts->rules), (GCompareFunc) g_strcmp0);

  for (const GList *at = rules; at; at = at->next)
    {
      const Count *count = g_hash_table_lookup (counts->rules, at->data);

      printf ("%s\t%u\t%s\t%s\t%u\t%u\n", counts->from, counts->walls, (const char *) at->data,
              severity_word (count->severity), count->findings, count->walls);
    }
  g_array_sort (counts->notes, compare_guints);
  if (counts->notes->len > 0)
    printf ("%s\t%u\tnotes of a wall\t\t%u\t%u\n", counts->from, counts->walls,
            g_array_index (counts->notes, guint, counts->notes->len / 2),
            g_array_index (counts->notes, guint, counts->notes->len - 1));
  g_hash_table_unref (counts->rules);
  g_array_unref (counts->notes);
}

static Counts
counts_of (const char *from)
{
  return (Counts){ from, 0, g_hash_table_new_full (g_str_hash, g_str_equal, g_free, g_free),
                   g_array_new (FALSE, FALSE, sizeof (guint)) };
}

static void
count_made_up (guint n)
{
  Counts counts = counts_of ("made-up walls");

  for (guint64 seed = 0; seed < n; seed++)
    {
      g_auto (AnyWall) any = any_house (seed);
      g_autoptr (Project) project = project_new ();
      g_autoptr (Judge) judge = NULL;
      Block *block = g_ptr_array_index (project->blocks, 0);

      block_clear (block);
      *block = block_copy (&any.block);
      g_ptr_array_add (project->walls, wall_ref (any.wall));
      judge = judge_new (project);
      count_wall (&counts, judge, any.wall, block);
    }
  print_and_clear (&counts);
}

static void
count_file (const char *path)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (Project) project = store_read (path, &error);
  g_autofree char *name = g_path_get_basename (path);
  Counts counts = counts_of (name);
  g_autoptr (Judge) judge = NULL;

  if (!project)
    g_error ("%s", error->message);
  judge = judge_new (project);
  for (guint i = 0; i < project->walls->len; i++)
    {
      const Wall *wall = project_wall_at (project, i);

      count_wall (&counts, judge, wall, project_block (project, wall->block));
    }
  print_and_clear (&counts);
}

int
main (int argc, char **argv)
{
  count_made_up (argc > 1 ? (guint) atoi (argv[1]) : 200);
  for (int i = 2; i < argc; i++)
    count_file (argv[i]);
  return 0;
}
