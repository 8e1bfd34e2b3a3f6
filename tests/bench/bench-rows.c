/* bench-rows.c - what walls by the hundred come to, a row for each, so that two engines can be
 * compared wall by wall (compare-rows.py)
 *
 * Called with a kind of wall (house, any, cells, fine, long) and the numbers of the first wall and
 * of the one after the last. Prints rows, tab-separated: kind and number, breaches, at least, cuts,
 * at least, units to order (where the aim is least waste, else 0), how much too small what breaks a
 * limit is, what laps fall short of half bond (both 1/320 mm), the layout's hash, ms of processor.
 * A long wall of number n is n metres long. */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

#include "any-house.h"
#include "bond/lay.h"
#include "cells.h"

/* A storey with a window or a door in every five metres, off the grid of its blocks. */
static AnyWall
long_wall (guint64 metres)
{
  AnyWall any = { .block = block_default (), .wall = wall_new () };

  any.block.id.n = 1;
  any.wall->id.n = 2;
  any.wall->key = g_strdup ("w1");
  any.wall->block = any.block.id;
  any.wall->length = LENGTH_MM ((Length) metres * 1000 + 130);
  any.wall->height = LENGTH_MM (2849);
  for (guint64 i = 0; i < metres / 5; i++)
    {
      gboolean door = i % 4 == 2;
      Opening opening = opening_default (door ? OPENING_DOOR : OPENING_WINDOW);
      Length head = LENGTH_MM (2115 + (i % 3 == 0 ? 28 : 0));

      opening.id.n = 10 + (guint32) i;
      opening.key = g_strdup_printf ("o%u", opening.id.n);
      opening.x = LENGTH_MM ((Length) (i * 5000 + 1810 + i * i * 37 % 991));
      opening.width = LENGTH_MM ((Length) (door ? 990 : 1180 + i * 131 % 401));
      opening.sill = LENGTH_MM ((Length) (door ? 0 : 875 + i * 53 % 157));
      opening.height = head - opening.sill;
      g_array_append_val (any.wall->openings, opening);
    }
  return any;
}

static AnyWall
wall_on_cells (CellsKind kind, guint64 number)
{
  g_auto (Cells) cells = cells_make (kind, number);
  AnyWall any = { .block = cells.block, .wall = wall_copy (cells.wall) };

  cells.block = block_default ();
  return any;
}

static AnyWall
wall_of (const char *kind, guint64 number)
{
  if (strcmp (kind, "house") == 0)
    return any_house (number);
  if (strcmp (kind, "any") == 0)
    return any_wall (number);
  if (strcmp (kind, "cells") == 0)
    return wall_on_cells (CELLS_HOUSE, number);
  if (strcmp (kind, "fine") == 0)
    return wall_on_cells (CELLS_FINE, number);
  if (strcmp (kind, "long") != 0)
    g_error ("No such kind: %s", kind);
  return long_wall (number);
}

static gboolean
begins_segment (const Layout *layout, const Course *course, gint32 i)
{
  return i == course->first
         || layout_piece (layout, (guint) i)->segment
                != layout_piece (layout, (guint) i - 1)->segment;
}

/* What the perpends of one course fall short of `wanted` from the nearest in another. */
static gint64
shortfall (const Layout *layout, guint at, guint other, Length wanted)
{
  const Course *course = layout_course (layout, at), *beside = layout_course (layout, other);
  gint64 sum = 0;

  for (gint32 i = course->first; i < course->first + course->n_pieces; i++)
    {
      Length nearest = wanted, x = layout_piece (layout, (guint) i)->x;

      if (begins_segment (layout, course, i))
        continue;
      for (gint32 k = beside->first; k < beside->first + beside->n_pieces; k++)
        if (!begins_segment (layout, beside, k))
          nearest = MIN (nearest, ABS (layout_piece (layout, (guint) k)->x - x));
      sum += wanted - nearest;
    }
  return sum;
}

static void
print_wall (const char *kind, guint64 number)
{
  g_auto (AnyWall) any = wall_of (kind, number);
  g_autofree char *fault = wall_fault (any.wall, &any.block, NULL);
  Laying laying = laying_resolve (&any.wall->laying, &any.block);
  gint64 laps = 0, too_small = 0;

  if (fault != NULL)
    return;
  const clock_t began = clock ();
  g_autoptr (Layout) layout = lay_wall (any.wall, &any.block, NULL);
  const double ms = (double) (clock () - began) * 1000 / CLOCKS_PER_SEC;
  for (guint i = 0; i + 1 < layout->courses->len; i++)
    laps += shortfall (layout, i, i + 1, (any.block.length + laying.head) / 2)
            + shortfall (layout, i + 1, i, (any.block.length + laying.head) / 2);
  for (guint i = 0; i < layout->breaches->len; i++)
    {
      const Breach *breach = &g_array_index (layout->breaches, Breach, i);

      too_small += ABS (breach->least - breach->is);
    }
  printf ("%s %" G_GUINT64_FORMAT "\t%d\t%d\t%d\t%d\t%d\t%" G_GINT64_FORMAT "\t%" G_GINT64_FORMAT
          "\t%016" G_GINT64_MODIFIER "x\t%.2f\n",
          kind, number, layout->proof.breaches, layout->proof.breaches_at_least, layout->proof.cuts,
          layout->proof.cuts_at_least, layout->proof.to_order, too_small, laps,
          layout_hash (layout), ms);
}

int
main (int argc, char **argv)
{
  const guint64 first = argc > 2 ? (guint64) atoi (argv[2]) : 0;
  const guint64 end = argc > 3 ? (guint64) atoi (argv[3]) : first + 1;

  if (argc < 2)
    {
      fprintf (stderr, "Call: bench-rows KIND [FIRST [END]]\n");
      return 2;
    }
  for (guint64 number = first; number < end; number++)
    print_wall (argv[1], number);
  return 0;
}
