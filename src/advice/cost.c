/* cost.c - what a wall costs as laid */
#include "advice/cost.h"

#include "bond/lay.h"
#include "takeoff/takeoff.h"

/* A project of that wall alone, shared and not changed. */
static Project *
project_of (const Wall *wall, const Block *block)
{
  Project *project = project_new ();
  Block *own = g_new (Block, 1);

  *own = block_copy (block);
  g_ptr_array_set_size (project->blocks, 0);
  g_ptr_array_add (project->blocks, own);
  g_ptr_array_add (project->walls, wall_ref (wall));
  return project;
}

static gboolean
count_units (const Wall *wall, const Block *block, Layout *layout, const gint *stop, gint32 *units)
{
  g_autoptr (Project) project = project_of (wall, block);
  g_autoptr (Takeoff) takeoff = takeoff_new (project, &layout, stop);

  if (takeoff == NULL)
    return FALSE;
  *units = (gint32) (takeoff_line (takeoff, "blocks.to-order")->quantity + 0.5);
  return TRUE;
}

/* Whether lay_wall() would have ended after its first round as well, since nothing better can be.
 * With least waste the saw goes on, and where few lengths are wanted, the search does. */
static gboolean
first_look_is_the_answer (const Wall *wall, const Block *block, const Proof *proof)
{
  const Laying laying = laying_resolve (&wall->laying, block);

  if (laying.aim == AIM_LEAST_WASTE || laying.rules[RULE_LENGTHS].keep != KEEP_OFF
      || proof->breaches > proof->breaches_at_least)
    return FALSE;
  /* The regular bond is mended where it has breaches that may be avoidable, and only there. */
  return proof->proven || laying.aim == AIM_REGULAR;
}

Costing
cost_of_wall (const Wall *wall, const Block *block, Look look, const gint *stop, Cost *out)
{
  g_autofree char *fault = wall_fault (wall, block, NULL);
  g_autoptr (Layout) layout = NULL;

  if (fault != NULL)
    return COSTING_IMPOSSIBLE;
  layout = look == LOOK_FIRST ? lay_wall_quickly (wall, block, stop) : lay_wall (wall, block, stop);
  if (layout == NULL || !count_units (wall, block, layout, stop, &out->to_order))
    return COSTING_STOPPED;
  out->breaches = layout->proof.breaches;
  out->cuts = layout->proof.cuts;
  out->breaches_at_least = layout->proof.breaches_at_least;
  out->cuts_at_least = layout->proof.cuts_at_least;
  out->as_laid = look == LOOK_LAID || first_look_is_the_answer (wall, block, &layout->proof);
  return COSTING_DONE;
}

static int
compare (gint32 a, gint32 b)
{
  return (a > b) - (a < b);
}

int
cost_compare (const Cost *a, const Cost *b, Aim aim)
{
  int by_breaches = compare (a->breaches, b->breaches);
  int by_cuts = compare (a->cuts, b->cuts);
  int by_units = compare (a->to_order, b->to_order);

  if (by_breaches != 0)
    return by_breaches;
  if (aim == AIM_LEAST_WASTE)
    return by_units != 0 ? by_units : by_cuts;
  return by_cuts != 0 ? by_cuts : by_units;
}

Aim
cost_aim (const Wall *wall, const Block *block)
{
  return laying_resolve (&wall->laying, block).aim;
}
