/* saw.h - the saw plan: every cut piece, the unit that it is sawn from, and what becomes of the
 * rest
 *
 * Immutable once made. How units are sawn, and what is proven of it: docs/cutting-plan.md. */
#pragma once

#include "bond/layout.h"
#include "model/project.h"

/* The cut pieces of one kind of block, and its units that are laid whole. */
typedef struct SawList SawList;

SawList *saw_list_new (const Block *block);
void saw_list_free (SawList *list);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SawList, saw_list_free)
/* Adds the pieces of a wall, which is told again as the number `wall`. Walls are added in the order
 * in which they are laid. Of different kerfs the widest holds. */
void saw_list_add (SawList *list, guint wall, const Layout *layout, Length kerf);

/* A cut piece in its unit. */
typedef struct
{
  guint wall, piece;     /* as added; index of layout->pieces */
  gint32 unit;           /* index of SawPlan.units */
  Length x, z;           /* its box: from the unit's left end, from its foot */
  Length length, height; /* of the box; a notch is cut out of it */
  gboolean notched;      /* or raked: not a rectangle */
} SawPart;

/* A straight cut; the kerf lies beyond `at`. In the order in which they are sawn. */
typedef struct
{
  gboolean along;  /* along the unit, `at` above its foot; else across, `at` from its left end */
  Length at;       /* where what is wanted ends */
  Length from, to; /* how far it goes: up the unit, or along it */
} SawCut;

/* What is left of a unit and serves nothing. What is cut out of a notched piece is not told. */
typedef struct
{
  Length x, z, length, height;
} SawRest;

typedef struct
{
  gint32 number;  /* from 1, in the order in which they are first needed */
  gint32 kind;    /* index of SawPlan.kinds */
  guint first, n; /* its parts, by x, then z; never none */
  guint first_cut, n_cuts;
  guint first_rest, n_rests;
} SawUnit;

/* Units that are sawn alike. */
typedef struct
{
  guint times; /* SawPlan.alike[first .. first + times): their indices, ascending */
  guint first;
} SawKind;

typedef struct
{
  Length length, height, kerf; /* of a unit; what a cut eats */
  gint32 n_whole;              /* units laid whole; they are not among `units` */
  gint32 at_least;             /* proven: units to order, whole ones too; <= saw_plan_to_order() */
  GArray *units;               /* SawUnit */
  GArray *parts;               /* SawPart */
  GArray *cuts;                /* SawCut */
  GArray *rests;               /* SawRest */
  GArray *kinds;               /* SawKind, most units first */
  GArray *alike;               /* gint32 */
  GArray *by_piece;            /* gint32: parts by wall, then piece */
} SawPlan;

/* NULL when stopped; `stop` as in lay_wall(). */
SawPlan *saw_plan_new (const SawList *list, const gint *stop);
void saw_plan_free (SawPlan *plan);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SawPlan, saw_plan_free)
/* What saw_plan_to_order() would say, without the plan; -1 when stopped. */
gint32 saw_list_units (const SawList *list, const gint *stop);
/* The same of one wall by itself. */
gint32 saw_wall_units (const Wall *wall, const Block *block, const Layout *layout,
                       const gint *stop);

/* SawPlan *, one for each kind of block of the project: of all walls of that kind together, with
 * their numbers in the project. A wall whose layout is NULL is left out. `units` are those of each
 * wall by itself, as saw_wall_units(), where they are known: it takes half as long; else NULL. NULL
 * when stopped. */
GPtrArray *saw_plans_new (const Project *project, Layout *const *layouts, const gint32 *units,
                          const gint *stop);

/* The plan of the wall's kind of block among these. Borrowed. */
const SawPlan *saw_plan_of_wall (const GPtrArray *plans, const Project *project, const Wall *wall);

/* Units to order: those laid whole and those that are sawn. */
gint32 saw_plan_to_order (const SawPlan *plan);
/* Where a piece comes from; NULL for a whole one, or one that is not in the plan. */
const SawPart *saw_plan_part (const SawPlan *plan, guint wall, guint piece);

static inline const SawUnit *
saw_plan_unit (const SawPlan *plan, guint i)
{
  return &g_array_index (plan->units, SawUnit, i);
}
static inline const SawPart *
saw_unit_part (const SawPlan *plan, const SawUnit *unit, guint i)
{
  return &g_array_index (plan->parts, SawPart, unit->first + i);
}
static inline const SawCut *
saw_unit_cut (const SawPlan *plan, const SawUnit *unit, guint i)
{
  return &g_array_index (plan->cuts, SawCut, unit->first_cut + i);
}
static inline const SawRest *
saw_unit_rest (const SawPlan *plan, const SawUnit *unit, guint i)
{
  return &g_array_index (plan->rests, SawRest, unit->first_rest + i);
}
