/* takeoff.h - quantities, each with the pieces it came from */
#pragma once

#include "bond/layout.h"
#include "model/project.h"
#include "takeoff/saw.h"

typedef struct
{
  const char *key;    /* static: "blocks.whole" ... */
  const char *group;  /* static, translatable: "Blocks", "Wall", "Joints", "Steel",
                         "Ties" */
  const char *name;   /* static, translatable */
  const char *unit;   /* "pcs", "m2" as "m²", "m³", "l", "m", "kg" */
  int decimals;       /* to show */
  double quantity;    /* whole project */
  double *walls;      /* per wall, in the project's order */
  gboolean of_pieces; /* takeoff_line_has_piece() tells which */
} TakeoffLine;

typedef struct
{
  GPtrArray *lines; /* TakeoffLine *, in the order to show */
  guint n_walls;
  GPtrArray *saws; /* saw_plans_new() of all walls */
} Takeoff;

/* `layouts` has one Layout per wall of the project, in its order, none NULL. blocks.to-order of the
 * project is the sum over kinds of block of one saw plan for all walls; of a wall, for that wall
 * alone. `stop` as in lay_wall(); NULL when stopped. */
Takeoff *takeoff_new (const Project *project, Layout *const *layouts, const gint *stop);
/* The same of what does not stand yet: pieces and joints above what stands, areas and movement
 * joints from its top on, bars and ties that lie on its last course or higher. Off-cuts of what
 * stands are not counted on. Where nothing stands it is the same. */
Takeoff *takeoff_rest_new (const Project *project, Layout *const *layouts, const gint *stop);
void takeoff_free (Takeoff *takeoff);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (Takeoff, takeoff_free)
const TakeoffLine *takeoff_line (const Takeoff *takeoff, const char *key);
/* Whether a piece counts in the line of that key. */
gboolean takeoff_line_has_piece (const char *key, const Piece *piece);
/* Mass of a piece, kg, dry. */
double takeoff_piece_mass (const Layout *layout, const Piece *piece, const Block *block);
