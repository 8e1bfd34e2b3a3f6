/* check-plan.c - what a cutting plan must be, checked apart from the code that made it */
#include "check-plan.h"

#include <glpk.h>
#include <math.h>

static void
check_pattern (const CuttingPattern *pattern, gint64 stock, gint64 kerf)
{
  gint64 used = 0;

  g_assert_cmpint (pattern->times, >, 0);
  g_assert_cmpuint (pattern->pieces->len, >, 0);
  for (guint i = 0; i < pattern->pieces->len; i++)
    {
      gint64 length = g_array_index (pattern->pieces, gint64, i);

      used += length + (i > 0 ? kerf : 0);
      if (i > 0)
        g_assert_cmpint (length, <=, g_array_index (pattern->pieces, gint64, i - 1));
    }
  g_assert_cmpint (used, <=, stock);
}

static gint64
cut_of_length (const CuttingPlan *plan, gint64 length)
{
  gint64 n = 0;

  for (guint p = 0; p < plan->patterns->len; p++)
    {
      const CuttingPattern *pattern = g_ptr_array_index (plan->patterns, p);

      for (guint i = 0; i < pattern->pieces->len; i++)
        if (length == 0 || g_array_index (pattern->pieces, gint64, i) == length)
          n += pattern->times;
    }
  return n;
}

static gint64
wanted_of_length (const CuttingItem *items, guint n_items, gint64 length)
{
  gint64 n = 0;

  for (guint i = 0; i < n_items; i++)
    if (length == 0 || items[i].length == length)
      n += items[i].quantity;
  return n;
}

void
check_plan (const CuttingPlan *plan, gint64 stock, gint64 kerf, const CuttingItem *items,
            guint n_items)
{
  gint64 bins = 0;
  gint32 last = G_MAXINT32;

  for (guint p = 0; p < plan->patterns->len; p++)
    {
      const CuttingPattern *pattern = g_ptr_array_index (plan->patterns, p);

      check_pattern (pattern, stock, kerf);
      g_assert_cmpint (pattern->times, <=, last);
      last = pattern->times;
      bins += pattern->times;
    }
  g_assert_cmpint (bins, ==, plan->bins);
  g_assert_cmpint (plan->bins_at_least, <=, plan->bins);
  g_assert_cmpint (plan->proven, ==, plan->bins_at_least == plan->bins);
  for (guint i = 0; i < n_items; i++)
    g_assert_cmpint (cut_of_length (plan, items[i].length), ==,
                     wanted_of_length (items, n_items, items[i].length));
  g_assert_cmpint (cut_of_length (plan, 0), ==, wanted_of_length (items, n_items, 0));
}

/* --- by trying --- */

typedef struct
{
  gint64 pieces[32];
  gint64 left[32];
  guint n;
  guint fewest;
} Trying;

/* Each piece into each stock begun, or a new one. */
static void
place (Trying *trying, guint piece, guint begun, gint64 stock, gint64 kerf)
{
  if (begun >= trying->fewest)
    return;
  if (piece == trying->n)
    {
      trying->fewest = begun;
      return;
    }
  for (guint i = 0; i <= begun; i++)
    {
      gint64 before = trying->left[i];
      /* The saw goes between two pieces only. */
      gint64 left = i == begun ? stock : before - kerf;

      if (trying->pieces[piece] > left)
        continue;
      trying->left[i] = left - trying->pieces[piece];
      place (trying, piece + 1, MAX (begun, i + 1), stock, kerf);
      trying->left[i] = before;
    }
}

gint32
fewest_by_trying (gint64 stock, gint64 kerf, const CuttingItem *items, guint n_items)
{
  Trying trying = { .n = 0 };

  for (guint i = 0; i < n_items; i++)
    for (gint32 k = 0; k < items[i].quantity; k++)
      trying.pieces[trying.n++] = items[i].length;
  trying.fewest = trying.n + 1;
  place (&trying, 0, 0, stock, kerf);
  return (gint32) trying.fewest;
}

/* --- by flow --- */

typedef struct
{
  glp_prob *program;
  int columns;
} Flow;

/* An arc from place a to place b: a piece of row `item`, or what is left over (row 0). */
static void
add_arc (Flow *flow, int a, int b, int item_row)
{
  int rows[4] = { 0, a + 1, b + 1, item_row };
  double values[4] = { 0, -1, 1, 1 };
  int column = glp_add_cols (flow->program, 1);

  glp_set_col_kind (flow->program, column, GLP_IV);
  glp_set_col_bnds (flow->program, column, GLP_LO, 0, 0);
  glp_set_obj_coef (flow->program, column, a == 0 && item_row > 0 ? 1 : 0);
  glp_set_mat_col (flow->program, column, item_row > 0 ? 3 : 2, rows, values);
}

static void
add_arcs (Flow *flow, gint64 room, gint64 kerf, const CuttingItem *items, guint n_items)
{
  for (guint i = 0; i < n_items; i++)
    for (gint64 a = 0; a + items[i].length + kerf <= room; a++)
      add_arc (flow, (int) a, (int) (a + items[i].length + kerf), (int) (room + 2 + i));
  for (gint64 a = 1; a < room; a++)
    add_arc (flow, (int) a, (int) a + 1, 0);
}

gint32
fewest_by_flow (gint64 stock, gint64 kerf, const CuttingItem *items, guint n_items)
{
  gint64 room = stock + kerf;
  Flow flow = { glp_create_prob (), 0 };
  glp_iocp how;
  gint32 fewest;

  glp_term_out (GLP_OFF);
  glp_add_rows (flow.program, (int) (room + 1 + n_items));
  /* What comes to a place goes on; a stock's flow may begin and end anywhere at its ends. */
  for (gint64 a = 1; a < room; a++)
    glp_set_row_bnds (flow.program, (int) a + 1, GLP_FX, 0, 0);
  glp_set_row_bnds (flow.program, 1, GLP_FR, 0, 0);
  glp_set_row_bnds (flow.program, (int) room + 1, GLP_FR, 0, 0);
  for (guint i = 0; i < n_items; i++)
    glp_set_row_bnds (flow.program, (int) (room + 2 + i), GLP_LO, items[i].quantity, 0);
  add_arcs (&flow, room, kerf, items, n_items);
  glp_init_iocp (&how);
  how.msg_lev = GLP_MSG_OFF;
  how.presolve = GLP_ON;
  g_assert_cmpint (glp_intopt (flow.program, &how), ==, 0);
  g_assert_cmpint (glp_mip_status (flow.program), ==, GLP_OPT);
  fewest = (gint32) lround (glp_mip_obj_val (flow.program));
  glp_delete_prob (flow.program);
  glp_free_env ();
  return fewest;
}
