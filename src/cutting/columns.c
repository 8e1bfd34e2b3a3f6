/* columns.c - the linear program of all patterns, which are made as they are wanted */
#include "cutting/columns.h"

#include <glpk.h>
#include <math.h>
#include <string.h>

#include "cutting/price.h"

#define WORTHS_KEPT 64
/* A pattern must be worth this much more than a stock to change the program: finer is noise. */
#define WORTH_SLACK 16
/* A pattern worth so much need not be the best. */
#define GOOD_WORTH (STOCK_WORTH + STOCK_WORTH / 1000)

struct Columns
{
  const StockList *list;
  glp_prob *program;
  GArray *counts; /* gint32, list->n for each pattern */
  GArray *worths; /* StockWorths */
  gint32 bound;
};

static void
keep_worths (Columns *columns, const gint64 *worths, gint64 most)
{
  guint n = columns->list->n;
  StockWorths kept = { NULL, most };

  if (columns->worths->len == WORTHS_KEPT)
    {
      g_free (g_array_index (columns->worths, StockWorths, 0).worths);
      g_array_remove_index (columns->worths, 0);
    }
  kept.worths = g_new (gint64, n + 1);
  memcpy (kept.worths, worths, n * sizeof (gint64));
  g_array_append_val (columns->worths, kept);
}

/* Sizes are worths, too; those of a very long stock are rounded down to shares of it. */
static void
keep_sizes (Columns *columns)
{
  const StockList *list = columns->list;
  gint64 most = MIN (list->room, STOCK_WORTH);
  g_autofree gint64 *worths = g_new (gint64, list->n + 1);

  for (guint i = 0; i < list->n; i++)
    worths[i] = list->sizes[i] * most / list->room;
  keep_worths (columns, worths, most);
}

Columns *
columns_new (const StockList *list)
{
  Columns *columns = g_new0 (Columns, 1);

  columns->list = list;
  columns->counts = g_array_new (FALSE, TRUE, sizeof (gint32));
  columns->worths = g_array_new (FALSE, TRUE, sizeof (StockWorths));
  keep_sizes (columns);
  glp_term_out (GLP_OFF);
  columns->program = glp_create_prob ();
  glp_set_obj_dir (columns->program, GLP_MIN);
  glp_add_rows (columns->program, (int) list->n);
  for (guint i = 0; i < list->n; i++)
    glp_set_row_bnds (columns->program, (int) i + 1, GLP_LO, list->demand[i], 0);
  return columns;
}

void
columns_free (Columns *columns)
{
  if (columns == NULL)
    return;
  glp_delete_prob (columns->program);
  for (guint i = 0; i < columns->worths->len; i++)
    g_free (g_array_index (columns->worths, StockWorths, i).worths);
  g_array_unref (columns->worths);
  g_array_unref (columns->counts);
  g_free (columns);
}

void
columns_leave_thread (void)
{
  glp_free_env ();
}

void
columns_add (Columns *columns, const gint32 *counts)
{
  guint n = columns->list->n;
  g_autofree int *rows = g_new (int, n + 1);
  g_autofree double *values = g_new (double, n + 1);
  int column = glp_add_cols (columns->program, 1), entries = 0;

  for (guint i = 0; i < n; i++)
    if (counts[i] > 0)
      {
        rows[++entries] = (int) i + 1;
        values[entries] = counts[i];
      }
  glp_set_mat_col (columns->program, column, entries, rows, values);
  glp_set_obj_coef (columns->program, column, 1);
  glp_set_col_bnds (columns->program, column, GLP_LO, 0, 0);
  g_array_append_vals (columns->counts, counts, n);
}

static gboolean
run_simplex (Columns *columns, int method)
{
  glp_smcp how;

  glp_init_smcp (&how);
  how.msg_lev = GLP_MSG_OFF;
  how.meth = method;
  if (glp_simplex (columns->program, &how) != 0)
    {
      glp_adv_basis (columns->program, 0);
      if (glp_simplex (columns->program, &how) != 0)
        return FALSE;
    }
  return glp_get_status (columns->program) == GLP_OPT;
}

/* The duals as whole numbers, STOCK_WORTH for a whole stock. */
static void
read_worths (const Columns *columns, gint64 *worths)
{
  for (guint i = 0; i < columns->list->n; i++)
    {
      double dual = glp_get_row_dual (columns->program, (int) i + 1);

      worths[i] = (gint64) floor (CLAMP (dual, 0, 1) * (double) STOCK_WORTH + 0.5);
    }
}

/* What the duals prove; TRUE when they also made a pattern that can lower the program. */
static gboolean
price (Columns *columns, const gint32 *demand, gint64 *worths, gint32 *counts, StockWork *work)
{
  StockWorths now = { worths, 0 };
  gint64 got = 0;
  gint32 bound;

  read_worths (columns, worths);
  now.most = stock_best_pattern (columns->list, worths, GOOD_WORTH, counts, work);
  for (guint i = 0; i < columns->list->n; i++)
    got += worths[i] * counts[i];
  bound = stock_bound_by (&now, columns->list->n, demand);
  if (bound > columns->bound || got <= STOCK_WORTH + WORTH_SLACK)
    keep_worths (columns, worths, now.most);
  columns->bound = MAX (columns->bound, bound);
  return got > STOCK_WORTH + WORTH_SLACK;
}

/* Simplex work grows with rows and with entries. */
static gint64
steps_of_simplex (const Columns *columns)
{
  return 200 + (gint64) columns->list->n * columns->list->n / 2;
}

gboolean
columns_solve (Columns *columns, const gint32 *demand, gint32 enough, StockWork *work)
{
  guint n = columns->list->n;
  g_autofree gint64 *worths = g_new (gint64, n + 1);
  g_autofree gint32 *counts = g_new (gint32, n + 1);

  columns->bound = 0;
  for (guint i = 0; i < n; i++)
    glp_set_row_bnds (columns->program, (int) i + 1, GLP_LO, demand[i], 0);
  if (!run_simplex (columns, GLP_DUALP))
    return FALSE;
  while (price (columns, demand, worths, counts, work))
    {
      /* The program's value only falls: when its roof is the bound, all is known. */
      double value = glp_get_obj_val (columns->program);

      if (columns->bound >= enough || ceil (value - 1e-6) <= columns->bound
          || !stock_spend (work, steps_of_simplex (columns)))
        break;
      columns_add (columns, counts);
      if (!run_simplex (columns, GLP_PRIMAL))
        return FALSE;
    }
  return TRUE;
}

gint32
columns_bound (const Columns *columns)
{
  return columns->bound;
}

guint
columns_n (const Columns *columns)
{
  return (guint) glp_get_num_cols (columns->program);
}

double
columns_used (const Columns *columns, guint pattern)
{
  return glp_get_col_prim (columns->program, (int) pattern + 1);
}

const gint32 *
columns_counts (const Columns *columns, guint pattern)
{
  return &g_array_index (columns->counts, gint32, pattern * columns->list->n);
}

const GArray *
columns_worths (const Columns *columns)
{
  return columns->worths;
}
