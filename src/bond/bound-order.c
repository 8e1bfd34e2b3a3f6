/* bound-order.c - the fewest units that a wall's pieces can be sawn from
 *
 * A piece with the kerf beyond it takes its share of a unit that is a kerf longer and higher: its
 * worth. What the pieces of a segment take together hardly depends on where its perpends lie, only
 * on how many there are: a kerf more and a joint less for each. Units cannot be fewer than the
 * worths of all segments come to. */
#include "bond/bound-order.h"

#include "bond/offcut.h"

/* Worths of heights: stairs, or with `little` those without what is lower. Of lengths it is the
 * length itself. */
typedef struct
{
  const Geometry *geometry;
  gint way;
  gint64 little; /* a height and a kerf; 0: stairs */
  gboolean any_piece;
} Weighing;

static gint64
worth_of_height (const Weighing *all, Length height)
{
  gint64 x = (gint64) height + all->geometry->kerf;
  gint64 room = (gint64) all->geometry->unit_height + all->geometry->kerf;

  return all->little > 0 ? offcut_worth_without (x, room, all->little)
                         : offcut_worth (x, room, all->way);
}

/* Pieces that reach from end to end at the least, and at the most. */
static gint64
fewest_pieces (const Geometry *geometry, const Segment *segment)
{
  gint64 pitch = (gint64) geometry->unit + geometry->joint;

  return (segment->b - segment->a + geometry->joint + pitch - 1) / pitch;
}

static gint64
most_pieces (const Weighing *all, const Segment *segment)
{
  const Geometry *geometry = all->geometry;
  gint64 least = all->any_piece ? 1 : segment_shortest (geometry, segment);
  gint64 most = (segment->b - segment->a + geometry->joint) / (least + geometry->joint);

  return MAX (most, fewest_pieces (geometry, segment));
}

/* Under a slope a piece is at least as high as that is at its lower end. */
static Length
lowest_of (const Geometry *geometry, const Segment *segment, const Step *step)
{
  return MIN (geometry_step_top (geometry, segment, step, step->from),
              geometry_step_top (geometry, segment, step, step->to));
}

/* The pieces take the segment's length but for a joint between two, and a kerf each. Where heights
 * change, a piece is worth what the segment is at each place that it covers, or more; a joint takes
 * away the dearest place, a kerf adds to the cheapest. */
static gint64
worth_of_segment (const Weighing *all, const Segment *segment)
{
  const Geometry *geometry = all->geometry;
  gint64 sum = 0, dearest = 0, cheapest = G_MAXINT64, each;

  for (gint32 i = 0; i < segment->n_steps; i++)
    {
      const Step *step = geometry_step (geometry, segment->first_step + i);
      gint64 worth = worth_of_height (all, lowest_of (geometry, segment, step) - step->lo);

      sum += worth * (step->to - step->from);
      dearest = MAX (dearest, worth);
      cheapest = MIN (cheapest, worth);
    }
  each = geometry->kerf * cheapest - geometry->joint * dearest;
  sum += geometry->joint * dearest
         + each * (each >= 0 ? fewest_pieces (geometry, segment) : most_pieces (all, segment));
  return MAX (sum, 0);
}

static gint32
bound_of_way (const Weighing *all)
{
  const Geometry *geometry = all->geometry;
  gint64 unit = ((gint64) geometry->unit + geometry->kerf)
                * offcut_worth_most ((gint64) geometry->unit_height + geometry->kerf, all->way);
  gint64 sum = 0;

  for (guint i = 0; i < geometry->segments->len; i++)
    sum += worth_of_segment (all, geometry_segment (geometry, (gint32) i));
  return (gint32) ((sum + unit - 1) / unit);
}

/* Each height that a strip can have, as the lowest that counts. */
static gint32
bound_by_heights (const Geometry *geometry, gboolean any_piece)
{
  gint64 room = (gint64) geometry->unit_height + geometry->kerf;
  gint32 bound = 0;
  gint64 last = 0;

  for (guint i = 0; i < geometry->steps->len; i++)
    {
      const Step *step = geometry_step (geometry, (gint32) i);
      gint64 height = (gint64) step->hi - step->lo + geometry->kerf;
      Weighing all = { geometry, 0, height, any_piece };
      gint32 found;

      if (height == last || 2 * height > room)
        continue;
      last = height;
      found = bound_of_way (&all);
      bound = MAX (bound, found);
    }
  return bound;
}

gint32
bound_wall_order (const Geometry *geometry, gboolean any_piece)
{
  gint32 bound = bound_by_heights (geometry, any_piece);

  for (gint way = 0; way < OFFCUT_WORTHS; way++)
    {
      Weighing all = { geometry, way, 0, any_piece };
      gint32 found = bound_of_way (&all);

      bound = MAX (bound, found);
    }
  return bound;
}
