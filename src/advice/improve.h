/* improve.h - the best places of all openings that may move, found together */
#pragma once

#include "advice/cost.h"
#include "model/edit.h"

typedef struct
{
  Length step;      /* from place to place of each opening, > 0 */
  gint64 work;      /* pieces that may be laid in all, about: how long it may take */
  guint threads;    /* at a time */
  const gint *stop; /* or NULL, as in lay_wall() */
} ImproveHow;

/* Of an opening: where it goes. */
typedef struct
{
  OpeningId opening;
  Length from, to; /* left jamb */
} ImproveMove;

typedef struct
{
  Aim aim;      /* of the wall */
  guint n_free; /* openings that may move */
  Cost before, after;
  GArray *moves;       /* ImproveMove, from the left; none when nothing is better */
  gint64 combinations; /* of their places; IMPROVE_TOO_MANY: not counted */
  guint n_possible;    /* of these, where none overlaps or leaves the wall; with them not counted */
  guint n_laid;        /* walls laid */
  gint32 breaches_at_least; /* proven for every combination: no layout of any has fewer breaches, */
  gint32 cuts_at_least;     /* or as many and fewer cuts */
  gboolean compared;        /* each combination was laid, or cannot be better than `after` */
  gboolean proven;          /* no bond of any combination has fewer breaches, or as many and fewer
                               cuts, than `after` */
  Edit *edit;               /* to the project with the wall; NULL: nothing is better */
} Improvement;

#define IMPROVE_TOO_MANY G_MAXINT64
/* For a window and for a call that may take longer. */
#define IMPROVE_WORK_LIVE 1500000
#define IMPROVE_WORK_CALL 5000000

/* An opening may stand at its place, and at every `step` from where it was drawn, as far as it may
 * move. Better is: fewer breaches, then fewer cuts (with least waste: units to order), then what
 * moves least. Combinations are laid in the order of a bound on their cuts, until none that is left
 * can be better; where there are too many for `work`, one opening after the other is moved to its
 * best place, over and over. What is found is then tried between the steps, whole millimetres.
 * NULL when stopped. */
Improvement *improve_wall (const Wall *wall, const Block *block, const ImproveHow *how);
void improvement_free (Improvement *improvement);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (Improvement, improvement_free)
/* How many cuts some combination of places may have fewer than `after`: 0 when that is proven to be
 * the best; -1 when some may have fewer breaches, and nothing is told of cuts. */
gint32 improvement_gap (const Improvement *improvement);
/* What it brings and what is proven, with numbers. Newly allocated. */
char *improvement_text (const Improvement *improvement);
