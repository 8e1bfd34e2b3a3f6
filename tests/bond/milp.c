/* milp.c - fewest cuts of a wall of cells by a mixed-integer program, without any breach
 *
 * Variables: for each course and each pair of faces that a piece can lie between, whether it does.
 * Rows: at each face of a segment as many pieces end as begin (one at its ends); and for each
 * window of faces narrower than the least lap, at most one perpend of two neighbouring courses in
 * it. Two of the same course cannot be in it either, since no piece is so short. GLPK does the
 * rest. */
#include "cells.h"

#include <glpk.h>

typedef struct
{
  const Cells *cells;
  glp_prob *problem;
  int face_row[CELLS_MAX_COURSES][CELLS_MAX_LENGTH + 2]; /* balance at a face; 0: none there */
  gboolean perpend[CELLS_MAX_COURSES][CELLS_MAX_LENGTH + 2];
  int window_row[CELLS_MAX_COURSES]
                [CELLS_MAX_LENGTH + 2]; /* with the course above, by its first face */
} Milp;

static Length
free_at (const Cells *cells, int course, int cell)
{
  return cell < 0 || cell >= cells->length ? 0 : cells->free[course][cell];
}

static int
add_row (Milp *milp, int kind, double lowest, double highest)
{
  int row = glp_add_rows (milp->problem, 1);
  glp_set_row_bnds (milp->problem, row, kind, lowest, highest);
  return row;
}

/* A segment's faces: from `from` to `to`, where a piece after it would begin. */
static void
add_faces (Milp *milp, int course, int from, int to)
{
  for (int face = from; face <= to; face++)
    {
      double balance = face == from ? 1 : face == to ? -1 : 0;
      milp->face_row[course][face] = add_row (milp, GLP_FX, balance, balance);
      milp->perpend[course][face] = face > from && face < to;
    }
}

static void
add_windows (Milp *milp)
{
  for (int course = 0; course + 1 < milp->cells->n_courses && milp->cells->min_lap > 0; course++)
    for (int face = 0; face <= milp->cells->length; face++)
      milp->window_row[course][face] = add_row (milp, GLP_UP, 0, 1);
}

/* The rows of windows that a perpend lies in, with the course above and the course below. */
static int
windows_of (const Milp *milp, int course, int face, int rows[])
{
  int n = 0;
  for (int c = course - 1; c <= course; c++)
    for (int first = face - milp->cells->min_lap + 1; first <= face; first++)
      if (c >= 0 && first >= 0 && milp->window_row[c][first] > 0)
        rows[n++] = milp->window_row[c][first];
  return n;
}

/* A piece between two faces of a segment; the perpend at its left face counts in the windows. */
static void
add_piece (Milp *milp, int course, int from, int to, int cuts)
{
  int rows[2 * CELLS_MAX_LENGTH + 8], n = 0;
  double values[2 * CELLS_MAX_LENGTH + 8];
  int column = glp_add_cols (milp->problem, 1);
  if (milp->perpend[course][from])
    n = windows_of (milp, course, from, rows + 1);
  rows[++n] = milp->face_row[course][from];
  rows[++n] = milp->face_row[course][to];
  for (int i = 1; i <= n; i++)
    values[i] = i == n ? -1 : 1;
  glp_set_mat_col (milp->problem, column, n, rows, values);
  glp_set_col_kind (milp->problem, column, GLP_BV);
  glp_set_obj_coef (milp->problem, column, cuts);
}

static void
add_pieces (Milp *milp, int course, int first, int last)
{
  const Cells *cells = milp->cells;
  for (int from = first; from < last; from++)
    for (int to = from + cells->head + 1; to <= MIN (last, from + cells->unit + cells->head); to++)
      {
        /* Faces within the last joint are none. */
        if (to < last && to + cells->head >= last)
          continue;
        CellsCost cost = cells_piece (cells, course, from, to);
        if (cost.breaches == 0)
          add_piece (milp, course, from, to, cost.cuts);
      }
}

/* Calls `add` for each segment of each course: its first cell, and the face after it. */
static void
for_segments (Milp *milp, void (*add) (Milp *, int, int, int))
{
  for (int c = 0; c < milp->cells->n_courses; c++)
    for (int cell = 0, first = 0; cell < milp->cells->length; cell++)
      {
        if (free_at (milp->cells, c, cell) == 0)
          continue;
        if (free_at (milp->cells, c, cell - 1) == 0)
          first = cell;
        if (free_at (milp->cells, c, cell + 1) == 0)
          add (milp, c, first, cell + 1 + milp->cells->head);
      }
}

static MilpResult
solve (Milp *milp, int seconds, int *cuts)
{
  glp_iocp how;
  glp_init_iocp (&how);
  how.presolve = GLP_ON;
  how.msg_lev = GLP_MSG_OFF;
  how.tm_lim = seconds * 1000;
  int error = glp_intopt (milp->problem, &how);
  if (error == GLP_ENOPFS)
    return MILP_NONE;
  if (error != 0)
    return MILP_TOO_LONG;
  if (glp_mip_status (milp->problem) == GLP_NOFEAS)
    return MILP_NONE;
  if (glp_mip_status (milp->problem) != GLP_OPT)
    return MILP_TOO_LONG;
  *cuts = (int) (glp_mip_obj_val (milp->problem) + 0.5);
  return MILP_SOLVED;
}

MilpResult
cells_milp (const Cells *cells, int seconds, int *cuts)
{
  g_autofree Milp *milp = g_new0 (Milp, 1);
  milp->cells = cells;
  milp->problem = glp_create_prob ();
  glp_set_obj_dir (milp->problem, GLP_MIN);
  for_segments (milp, add_faces);
  add_windows (milp);
  for_segments (milp, add_pieces);
  MilpResult result = solve (milp, seconds, cuts);
  glp_delete_prob (milp->problem);
  return result;
}
