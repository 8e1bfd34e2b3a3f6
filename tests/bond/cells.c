/* cells.c - walls whose every length along the wall is a whole number of cells */
#include "cells.h"

typedef struct
{
  AnyRandom random;
  CellsKind kind;
  Cells cells;
  Length joint; /* within the cells, see cells_make(); else 0 */
} Maker;

static int
pick (Maker *maker, int lowest, int highest)
{
  return (int) any_between (&maker->random, lowest, highest);
}

/* Dry joints, a joint of one cell, or joints within the cells. */
static void
make_unit (Maker *maker)
{
  Cells *cells = &maker->cells;
  int how = pick (maker, 0, 3);
  cells->block = block_default ();
  cells->unit = pick (maker, 0, 3) == 0 ? 6 : 8;
  if (maker->kind == CELLS_HOUSE && pick (maker, 0, 2) == 0)
    cells->unit = 12;
  if (maker->kind == CELLS_FINE)
    cells->unit = 24;
  cells->cell = LENGTH_MM (600) / cells->unit;
  if (how == 0 && maker->kind == CELLS_TINY)
    {
      cells->head = 1;
      cells->cell = LENGTH_MM (20);
    }
  else if (how == 1)
    maker->joint = LENGTH_MM (pick (maker, 1, 12));
  cells->block.length = cells->cell * cells->unit - maker->joint;
  cells->block.height = LENGTH_MM (200);
  cells->full = cells->block.height;
}

static void
make_laying (Maker *maker)
{
  Cells *cells = &maker->cells;
  Laying *laying = &cells->wall->laying;
  gboolean tiny = maker->kind == CELLS_TINY;
  cells->min_piece = tiny ? pick (maker, 1, 4) : (cells->unit + 2) / 4;
  cells->min_lap = tiny ? pick (maker, 0, 3) : pick (maker, 1, cells->min_piece);
  cells->min_rip = LENGTH_MM (tiny && pick (maker, 0, 3) == 0 ? 60 : 25);
  laying->given = LAYING_FIRST_BED | LAYING_BED | LAYING_HEAD | LAYING_MIN_PIECE | LAYING_MIN_LAP
                  | LAYING_MIN_RIP;
  laying->first_bed = laying->bed = 0;
  laying->head = cells->head * cells->cell + maker->joint;
  laying->min_piece = cells->min_piece * cells->cell - maker->joint;
  laying->min_lap = cells->min_lap * cells->cell;
  laying->min_rip = cells->min_rip;
}

static void
make_size (Maker *maker)
{
  Cells *cells = &maker->cells;
  gboolean tiny = maker->kind == CELLS_TINY;
  Length top = LENGTH_MM (tiny && pick (maker, 0, 3) == 0 ? 50 : 120);
  cells->n_courses = tiny ? pick (maker, 1, 3) : pick (maker, 4, 10);
  cells->length
      = tiny ? pick (maker, cells->unit, cells->unit * 7 / 2)
             : pick (maker, LENGTH_MM (3000) / cells->cell, LENGTH_MM (9000) / cells->cell);
  cells->wall->length = cells->length * cells->cell - maker->joint;
  cells->wall->height = cells->n_courses * cells->full;
  if (pick (maker, 0, 3) == 0) /* a ripped top, now and then too thin */
    cells->wall->height -= cells->full - top;
  for (int c = 0; c < cells->n_courses; c++)
    for (int cell = 0; cell < cells->length; cell++)
      cells->free[c][cell] = MIN (cells->full, cells->wall->height - c * cells->full);
}

static void
make_returns (Maker *maker)
{
  Cells *cells = &maker->cells;
  for (int side = 0; side < 2; side++)
    {
      End *end = &cells->wall->ends[side];
      int n = pick (maker, 1, 3);
      if (pick (maker, 0, 3) > 0)
        continue;
      *end = (End){ .given = TRUE, .has_return = TRUE, .ret = n * cells->cell - maker->joint };
      end->through = (Through) pick (maker, 0, 1);
      for (int c = 0; c < cells->n_courses; c++)
        for (int i = 0; through_runs (end->through, (gint32) c + 1) && i < n + cells->head; i++)
          cells->free[c][side == SIDE_LEFT ? i : cells->length - 1 - i] = 0;
    }
}

/* A level at a bed or off it: what is left of the course above or below is packed (10 mm) or laid.
 * With a joint within the cells strips would not end on them. */
static Length
make_level (Maker *maker, int course)
{
  static const int off[] = { 0, 0, 0, 10, 70, 100, 130, 190 };
  int how = pick (maker, 0, 7);
  return course * maker->cells.full + LENGTH_MM (maker->joint > 0 ? 0 : off[how]);
}

static Length
course_height (const Cells *cells, int course)
{
  return MIN (cells->full, cells->wall->height - course * cells->full);
}

/* What the opening leaves of a course; -1 where that is not one strip, or one too thin. */
static Length
left_free (const Cells *cells, int course, Length sill, Length head)
{
  Length bottom = course * cells->full, top = bottom + course_height (cells, course);
  Length below = CLAMP (sill, bottom, top) - bottom, above = top - CLAMP (head, bottom, top);
  if (sill >= top || head <= bottom)
    return top - bottom;
  below = below <= LENGTH_MM (20) ? 0 : below;
  above = above <= LENGTH_MM (20) ? 0 : above;
  if ((below > 0 && above > 0) || (below + above > 0 && below + above < cells->min_rip))
    return -1;
  return below + above;
}

static gboolean
may_open (const Cells *cells, Length x, Length right, Length sill, Length head)
{
  if (head > cells->wall->height || head - sill < LENGTH_MM (50))
    return FALSE;
  for (int c = 0; c < cells->n_courses; c++)
    if (left_free (cells, c, sill, head) < 0 || course_height (cells, c) < cells->min_rip)
      return FALSE;
  for (guint i = 0; i < cells->wall->openings->len; i++)
    {
      const Opening *other = wall_opening_at (cells->wall, i);
      if (other->x <= right + cells->cell && opening_right (other) >= x - cells->cell)
        return FALSE;
    }
  return TRUE;
}

static void
make_opening (Maker *maker)
{
  Cells *cells = &maker->cells;
  gboolean tiny = maker->kind == CELLS_TINY;
  int from = pick (maker, 0, cells->length - 3);
  int to = MIN (cells->length,
                from + (tiny ? pick (maker, 2, 12) : pick (maker, cells->unit, cells->unit * 3)));
  int course = pick (maker, 0, cells->n_courses - 1);
  Length sill = make_level (maker, course);
  Length head = make_level (
      maker, pick (maker, MIN (course + (tiny ? 0 : 2), cells->n_courses), cells->n_courses));
  Length x = from == 0 ? 0 : from * cells->cell - maker->joint;
  Length right = to == cells->length ? cells->wall->length : to * cells->cell;
  if (!may_open (cells, x, right, sill, head))
    return;
  Opening opening = opening_default (OPENING_WINDOW);
  opening.id.n = 10 + cells->wall->openings->len;
  opening.key = g_strdup_printf ("o%u", opening.id.n);
  opening.x = x;
  opening.width = right - x;
  opening.sill = sill;
  opening.height = head - sill;
  g_array_append_val (cells->wall->openings, opening);
  for (int c = 0; c < cells->n_courses; c++)
    for (int cell = from; cell < to; cell++)
      if (cells->free[c][cell] > 0)
        cells->free[c][cell] = left_free (cells, c, sill, head);
}

Cells
cells_make (CellsKind kind, guint64 seed)
{
  Maker maker = { .random = { seed * 977 + 5 }, .kind = kind, .cells.wall = wall_new () };
  make_unit (&maker);
  make_laying (&maker);
  make_size (&maker);
  make_returns (&maker);
  for (int i = kind == CELLS_TINY ? pick (&maker, 0, 4) : pick (&maker, 0, 5); i > 0; i--)
    make_opening (&maker);
  return maker.cells;
}

void
cells_clear (Cells *cells)
{
  g_clear_pointer (&cells->wall, wall_unref);
  block_clear (&cells->block);
}

CellsCost
cells_piece (const Cells *cells, int course, int from, int to)
{
  Length thickest = 0, thinnest = G_MAXINT32;
  int length = to - from - cells->head;
  for (int cell = from; cell < from + length; cell++)
    {
      thickest = MAX (thickest, cells->free[course][cell]);
      thinnest = MIN (thinnest, cells->free[course][cell]);
    }
  return (CellsCost){ (length < cells->min_piece) + (thickest < cells->min_rip),
                      length < cells->unit || thinnest < cells->full };
}
