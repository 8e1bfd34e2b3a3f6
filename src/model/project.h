/* project.h - what the builder said, all of it: an immutable, reference-counted value */
#pragma once

#include "model/block.h"
#include "model/foreign.h"
#include "model/rates.h"
#include "model/survey.h"
#include "model/tolerance.h"
#include "model/wall.h"

typedef struct
{
  gatomicrefcount refs;
  char *title, *client, *site, *author, *date; /* NULL where the file has no such attribute */
  GPtrArray *blocks;                           /* Block *, at least one where there is a wall */
  GPtrArray *walls;                            /* Wall *, in the file's order */
  Survey *survey;                              /* of the footing; NULL: none */
  WorkRates rates;                             /* of the work */
  Foreign rates_foreign;                       /* of their element */
  Tolerance tolerances[N_TOLERANCES];          /* by ToleranceKind: its own limits */
  guint32 next;                                /* the next id to give */
  Foreign foreign;
} Project;

#define PROJECT_MAX_WALLS 10000
#define PROJECT_MAX_BLOCKS 1000
#define PROJECT_MAX_TEXT 10000 /* characters in a name or a title */

/* No walls and one default block, key "b1". */
Project *project_new (void);
Project *project_ref (const Project *project);
void project_unref (Project *project);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (Project, project_unref)
/* By content, ids' numbers left out. */
gboolean project_equal (const Project *a, const Project *b);

/* All borrowed; NULL when there is none. */
const Wall *project_wall (const Project *project, WallId id);
/* Its place in the list; -1 when there is none. */
int project_wall_index (const Project *project, WallId id);
const Wall *project_wall_by_key (const Project *project, const char *key);
const Block *project_block (const Project *project, BlockId id);
const Wall *project_wall_of_opening (const Project *project, OpeningId id);
static inline const Wall *
project_wall_at (const Project *project, guint i)
{
  return (const Wall *) g_ptr_array_index (project->walls, i);
}
static inline const Block *
project_block_at (const Project *project, guint i)
{
  return (const Block *) g_ptr_array_index (project->blocks, i);
}

/* Of the block that the wall of that place in the list is built of. */
static inline Length
project_thickness (const Project *project, guint i)
{
  return project_block (project, project_wall_at (project, i)->block)->thickness;
}

/* A shallow copy that the caller fills before anyone else sees it: walls and blocks are shared. */
Project *project_copy (const Project *project);
/* The next key of a kind that no thing of the project has: "w3" for 'w'. Newly allocated. */
char *project_free_key (const Project *project, char prefix);

/* The first thing that is wrong, as a sentence; NULL when nothing is. A survey may speak of walls
 * that are not there: it is then as if it did not. */
char *project_fault (const Project *project);
