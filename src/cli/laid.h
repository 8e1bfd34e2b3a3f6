/* laid.h - a project from its file, and its walls as laid */
#pragma once

#include "bond/layout.h"
#include "cli/verb.h"
#include "model/project.h"

typedef struct
{
  const char *path; /* borrowed */
  Project *project;
  guint first, n;   /* which of its walls were asked for */
  Layout **layouts; /* one for each wall of the project; NULL where not asked for */
} Laid;

/* Reads the project of `path`, picks the wall of key `wall` (NULL: all of them), and lays those.
 * STATUS_DONE; or STATUS_READ or STATUS_CALL after a message, with nothing to clear. */
Status laid_read (const char *path, const char *wall, Laid *out);
/* The same of a project that is there already; takes it. */
Status laid_of (const char *path, Project *project, const char *wall, Laid *out);
void laid_clear (Laid *laid);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Laid, laid_clear)

/* Lays the walls that were not asked for, too: what is sawn from what is settled among all. */
void laid_lay_all (Laid *laid);

/* The project alone. Free with project_unref(). */
Status laid_project (const char *path, Project **out);

/* STATUS_BREACH when a wall could not be laid within its rules, else STATUS_DONE. */
Status laid_verdict (const Laid *laid);
static inline const Block *
laid_block (const Laid *laid, const Wall *wall)
{
  return project_block (laid->project, wall->block);
}
