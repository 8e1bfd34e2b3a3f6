/* draft.h - a project while its file is being read
 *
 * Elements come one by one, in the order of the file; the first fault is kept and ends the reading.
 * What refers to something else is looked up when all is there. */
#pragma once

#include "store/tag.h"

typedef struct
{
  const char *name;    /* of the file, for messages; not owned */
  GError *fault;       /* STORE_ERROR_INVALID, or NULL so far */
  Project *project;    /* nobody else sees it yet */
  Wall *wall;          /* the one that is open; the project owns it */
  GArray *walls;       /* what is to be looked up for each wall of the project */
  GArray *lines;       /* int, by an opening's number */
  int survey_line;     /* of <survey> */
  gboolean has_work;   /* there was a <work> */
  GArray *named;       /* what names a wall in the survey, to be looked up */
  GHashTable *keys;    /* set of every id so far */
  GHashTable *courses; /* set of the courses of the open wall's steel rows */
  GHashTable *pins;    /* set of the places of the open wall's pins: course << 32 | x */
} Draft;

void draft_init (Draft *draft, const char *name);
/* Project and fault are the caller's to take before; what is left of them goes too. */
void draft_clear (Draft *draft);

/* Keeps the sentence, with its place before it, unless there is a fault already. Always FALSE. */
gboolean draft_refuse (Draft *draft, int line, const char *format, ...) G_GNUC_PRINTF (3, 4);

/* Takes one start tag of an element of ours within `parent`, NULL at the root. Gives what the thing
 * it says has of other namespaces, borrowed while its element is open, and *element; or NULL and a
 * fault. */
Foreign *draft_start (Draft *draft, const Tag *tag, const Element *parent, const Element **element);

/* Looks everything up and judges the whole; call it once, at the end, when there is no fault. */
void draft_check (Draft *draft);
