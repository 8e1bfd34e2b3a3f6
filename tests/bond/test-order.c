/* test-order.c - the bound on units to order, against every way to lay small walls of whole cells
 */
#include "any-wall.h"
#include "bond/bound-order.h"
#include "bond/lay.h"
#include "bond/least-waste.h"

#define CELL LENGTH_MM (10)

/* Every pattern of a segment whose faces lie on cells, pieces no shorter than the least. */
typedef struct
{
  const Geometry *geometry;
  const Segment *segment;
  Length least;
  Length faces[32];
  GArray *patterns; /* Pattern */
} Ways;

static void
add_ways (Ways *ways, Length from, gint32 n)
{
  const Geometry *geometry = ways->geometry;
  Length left = ways->segment->b - from;

  if (left >= ways->least && left <= geometry->unit)
    {
      Pattern pattern = { .n_pieces = n + 1,
                          .faces = g_memdup2 (ways->faces, sizeof (Length) * (gsize) MAX (n, 1)) };

      g_array_append_val (ways->patterns, pattern);
    }
  for (Length length = ways->least; length <= geometry->unit && n < 31; length += CELL)
    {
      Length face = from + length + geometry->joint;

      if (face + ways->least > ways->segment->b)
        break;
      ways->faces[n] = face;
      add_ways (ways, face, n + 1);
    }
}

/* The fewest units over all ways to lay the segments from `at` on. */
static gint32
fewest (const Geometry *geometry, GArray *const *patterns, Pattern *chosen, guint at)
{
  gint32 best = G_MAXINT32;

  if (at == geometry->segments->len)
    return least_waste_units (geometry, chosen, NULL);
  for (guint i = 0; i < patterns[at]->len; i++)
    {
      gint32 units;

      chosen[at] = g_array_index (patterns[at], Pattern, i);
      units = fewest (geometry, patterns, chosen, at + 1);
      best = MIN (best, units);
    }
  return best;
}

/* A wall of a course or two in units of some cells, perhaps with a window that leaves a strip. */
static Geometry *
small_geometry (AnyRandom *random)
{
  g_autoptr (Wall) wall = wall_new ();
  Block block = block_default ();
  gint32 courses = (gint32) any_between (random, 1, 2), strip;
  Laying laying;
  Geometry *geometry;

  block.length = CELL * (Length) any_between (random, 4, 8);
  block.height = CELL * (Length) any_between (random, 3, 6);
  wall->length = CELL * (Length) any_between (random, 4, courses == 1 ? 18 : 12);
  wall->height = courses * block.height;
  strip = (gint32) any_between (random, 1, block.height / CELL);
  if (any_percent (random, 60) && wall->length > 4 * CELL)
    {
      Opening opening = opening_default (OPENING_VOID);

      opening.id.n = 1;
      opening.sill = strip * CELL;
      opening.height = wall->height - opening.sill;
      opening.x = CELL * (Length) any_between (random, 0, 3);
      opening.width = CELL * (Length) any_between (random, 1, 6);
      opening.width = MIN (opening.width, wall->length - opening.x);
      if (opening.height > 0)
        g_array_append_val (wall->openings, opening);
      else
        opening_clear (&opening);
    }
  laying = laying_resolve (&wall->laying, &block);
  laying.first_bed = laying.bed = 0;
  laying.head = CELL * (Length) any_between (random, 0, 2) / 2;
  laying.kerf = CELL * (Length) any_between (random, 0, 2) / 2;
  laying.min_piece = CELL * (Length) any_between (random, 1, 3);
  laying.min_lap = 0;
  geometry = geometry_new (wall, &block, &laying);
  block_clear (&block);
  return geometry;
}

static void
test_every_way (void)
{
  AnyRandom random = { 4711 };
  guint n = 0, met = 0, stepped = 0;

  for (guint round = 0; round < 3000; round++)
    {
      g_autoptr (Geometry) geometry = small_geometry (&random);
      GArray *patterns[8];
      Pattern chosen[8];
      guint64 ways = 1;

      if (geometry->segments->len > G_N_ELEMENTS (patterns))
        continue;
      for (guint i = 0; i < geometry->segments->len; i++)
        {
          Ways all = { .geometry = geometry,
                       .segment = geometry_segment (geometry, (gint32) i),
                       .least = geometry->min_piece,
                       .patterns = g_array_new (FALSE, FALSE, sizeof (Pattern)) };

          patterns[i] = all.patterns;
          add_ways (&all, all.segment->a, 0);
          ways *= all.patterns->len;
        }
      if (ways > 0 && ways < 4000)
        {
          gint32 units = fewest (geometry, patterns, chosen, 0);
          gint32 bound = bound_wall_order (geometry, FALSE);

          g_assert_cmpint (bound, <=, units);
          g_assert_cmpint (bound_wall_order (geometry, TRUE), <=, bound);
          n++;
          met += bound == units;
          for (guint i = 0; i < geometry->segments->len; i++)
            stepped += !geometry_segment (geometry, (gint32) i)->uniform;
        }
      for (guint i = 0; i < geometry->segments->len; i++)
        {
          for (guint k = 0; k < patterns[i]->len; k++)
            pattern_clear (&g_array_index (patterns[i], Pattern, k));
          g_array_unref (patterns[i]);
        }
    }
  g_test_message ("%u small walls, %u runs whose height changes: bound met in %u", n, stepped, met);
  g_assert_cmpuint (n, >, 1000);
  g_assert_cmpuint (stepped, >, 300);
  g_assert_cmpuint (met, >, n / 2);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/order/no-way-below-the-bound", test_every_way);
  return g_test_run ();
}
