/* bearing.c - what a lintel brings to the masonry under its ends, line by line */
#include "advice/bearing.h"

#include "advice/judging.h"
#include "advice/pier.h"
#include "bond/gauge.h"
#include "takeoff/work.h"

#define GRAVITY 9.81 /* m/s2 */
/* Reinforced concrete, kN/m3: DIN 18218 and EN 1991-1-1, read. */
#define CONCRETE_WEIGHT 25.0
/* A triangle of 60 degrees over the span: half of the root of three, its height as a part of its
 * base. Teaching platform of masonry, 4.2.4, read. */
#define TRIANGLE 0.8660254037844386
/* Over its top there is to be so much masonry, and no movement joint in it: a trade association's
 * technical note (TEK 17-1B), read. */
#define OVER_TRIANGLE LENGTH_MM (200)
/* Beside the opening there is to be so much, or a fifth of its width: BS 5977-1, read in a
 * description. */
#define BESIDE_LEAST LENGTH_MM (600)
#define BESIDE_PART 5
/* EN 1990, from memory: on weights, and on what floors and roof bring, all of it. */
#define FACTOR_WEIGHT 1.35
#define FACTOR_LOAD 1.5
#define MOST_BEARING LENGTH_MM (500)
#define STEP_BEARING LENGTH_MM (50)

static double
metres (Length length)
{
  return length_to_mm (length) / 1000;
}

/* Of the masonry, kN/m3: blocks are reckoned as wet as they may come. */
static double
weight_of (const Block *block)
{
  return block->density * PALLET_MOISTURE * GRAVITY / 1000;
}

static Length
asked_bearing (const Wall *wall, const Block *block, const Opening *opening)
{
  const Laying laying = laying_resolve (&wall->laying, block);
  const Rule *rule = &laying.rules[RULE_BEARING];

  return rule->keep != KEEP_OFF ? rule->value : lintel_bearing (opening);
}

/* --- can the masonry carry itself? --- */

typedef struct
{
  Length from, to, bottom, top; /* of the triangle and what is to be over it */
} Region;

static Region
region_of (const Opening *opening, const Bearing *bearing)
{
  const Length aside = bearing->bearing / 2, bottom = opening_head (opening) + bearing->depth;

  return (Region){ opening->x - aside, opening_right (opening) + aside, bottom,
                   bottom + (Length) (TRIANGLE * bearing->span) + OVER_TRIANGLE };
}

static gboolean
has_opening (const Wall *wall, const Opening *opening, const Region *region)
{
  for (guint i = 0; i < wall->openings->len; i++)
    {
      const Opening *other = wall_opening_at (wall, i);

      if (other != opening && other->x < region->to && opening_right (other) > region->from
          && other->sill < region->top && opening_head (other) > region->bottom)
        return TRUE;
    }
  return FALSE;
}

static gboolean
has_joint (const Wall *wall, const Region *region)
{
  for (guint i = 0; i < wall->movement_joints->len; i++)
    {
      const MovementJoint *joint = wall_movement_joint_at (wall, i);

      if (joint->x < region->to && movement_joint_right (joint) > region->from)
        return TRUE;
    }
  return FALSE;
}

/* Another wall at the end that the pier reaches takes the thrust. */
static gboolean
is_wide_enough (const Wall *wall, const Opening *opening, const Pier *pier)
{
  const Length least = MAX (BESIDE_LEAST, opening->width / BESIDE_PART);

  if (pier_width (pier) >= least)
    return TRUE;
  if (pier->left != NULL && pier->right != NULL)
    return FALSE;
  return wall->ends[pier->left == NULL ? SIDE_LEFT : SIDE_RIGHT].ret > 0;
}

static Pier
pier_right_of_opening (const Wall *wall, const Opening *opening)
{
  Pier pier = pier_right_of (wall, opening);

  for (guint i = 0; i < wall->openings->len; i++)
    {
      const Pier other = pier_left_of (wall, wall_opening_at (wall, i));

      if (other.left == opening && other.to < pier.to)
        pier = other;
    }
  return pier;
}

static Arch
arch_of (const Wall *wall, const Opening *opening, const Bearing *bearing)
{
  const Region region = region_of (opening, bearing);
  const Pier left = pier_left_of (wall, opening), right = pier_right_of_opening (wall, opening);

  if (has_joint (wall, &region))
    return ARCH_JOINT;
  if (has_opening (wall, opening, &region))
    return ARCH_OPENING;
  if (wall_top_lowest (wall, MAX (region.from, 0), MIN (region.to, wall->length)) < region.top)
    return ARCH_TOO_LOW;
  return is_wide_enough (wall, opening, &left) && is_wide_enough (wall, opening, &right)
             ? ARCH_CARRIES
             : ARCH_BESIDE;
}

/* --- forces --- */

/* The triangle; or else all that stands over the span, openings in it left out of account. */
static double
area_on (const Wall *wall, const Opening *opening, const Bearing *bearing)
{
  const Region region = region_of (opening, bearing);
  const Length top = wall_top_highest (wall, MAX (region.from, 0), MIN (region.to, wall->length));

  if (bearing->arch == ARCH_CARRIES)
    return TRIANGLE / 2 * metres (bearing->span) * metres (bearing->span);
  return metres (bearing->span) * metres (MAX (top - region.bottom, 0));
}

/* All that follows from how long its bearings are. */
static void
reckon (const Wall *wall, const Block *block, const Opening *opening, Bearing *bearing)
{
  const double thick = metres (block->thickness);
  const double mm2 = length_to_mm (bearing->bearing) * length_to_mm (block->thickness);
  double weights;

  bearing->span = opening->width + bearing->bearing;
  bearing->arch = arch_of (wall, opening, bearing);
  bearing->area = area_on (wall, opening, bearing);
  bearing->lintel = metres (opening->width + 2 * bearing->bearing) * metres (bearing->depth) * thick
                    * CONCRETE_WEIGHT;
  bearing->masonry = bearing->area * thick * weight_of (block);
  /* A cap is over the triangle, or rests on the lintel as well. */
  if (bearing->arch != ARCH_CARRIES)
    bearing->masonry
        += metres (bearing->span) * metres (wall->cap.height) * thick * CONCRETE_WEIGHT;
  bearing->load = bearing->has_load ? opening->line_load * metres (bearing->span) : 0;
  weights = bearing->lintel + bearing->masonry;
  bearing->end = (weights + bearing->load) / 2;
  bearing->pressure = bearing->end * 1000 / mm2;
  bearing->design = (FACTOR_WEIGHT * weights + FACTOR_LOAD * bearing->load) / 2 * 1000 / mm2;
}

gboolean
bearing_of_opening (const Wall *wall, const Block *block, const Opening *opening, Bearing *out)
{
  const Length over
      = wall_top_highest (wall, opening->x, opening_right (opening)) - opening_head (opening);

  *out = (Bearing){ .bearing = asked_bearing (wall, block, opening),
                    .depth = MIN (block->height, over),
                    .has_load = opening_has_load (opening),
                    .strength = block->strength };
  if (over <= GAUGE_PACKING_MAX)
    return FALSE;
  reckon (wall, block, opening, out);
  return TRUE;
}

Length
bearing_long_enough (const Wall *wall, const Block *block, const Opening *opening)
{
  Bearing bearing;

  if (!bearing_of_opening (wall, block, opening, &bearing) || !(bearing.strength > 0))
    return 0;
  for (bearing.bearing = STEP_BEARING; bearing.bearing <= MOST_BEARING;
       bearing.bearing += STEP_BEARING)
    {
      reckon (wall, block, opening, &bearing);
      if (bearing.bearing >= lintel_bearing (opening) && bearing.design <= bearing.strength)
        return bearing.bearing;
    }
  return 0;
}
