/* choose.c - whether an answer of so many stocks can be chosen from a shortlist of patterns */
#include "cutting/choose.h"

#include <glpk.h>
#include <math.h>
#include <string.h>

#include "cutting/fill.h"

#define NEARLY 1e-6
#define MAX_BRANCHES 400 /* in one line of the search: the machine's stack */
#define MISSING_COST 100 /* stocks for a piece that no pattern in the program holds */
#define COLUMNS_AT_ONCE 20
#define NO_PIECE G_MAXUINT

/* Stocks of some patterns are to be at least, or at most, so many. */
typedef struct
{
  guint8 *holds; /* by pattern: 1 when it counts */
  gint32 stocks;
  gboolean at_least;
} Branch;

typedef struct
{
  const StockList *list;
  const Shortlist *shortlist;
  gint32 bins;
  StockWork *work;
  glp_prob *program;  /* rows: kinds, then branches; columns: what is missing, then patterns */
  GArray *columns;    /* guint: the pattern of each column */
  guint8 *in_program; /* by pattern */
  GArray *branches;   /* Branch */
  gint64 *duals;      /* by row, STOCK_WORTH for a stock */
  gint64 *values;     /* by pattern: its worth by the duals */
  double *together;   /* by pair of kinds: stocks that hold both */
  StockAnswer **answer;
  gboolean gave_up;
} Choice;

/* --- the program --- */

static void
add_column (Choice *choice, guint pattern)
{
  guint n, n_branches = choice->branches->len;
  const ShortlistEntry *entries = shortlist_pattern (choice->shortlist, pattern, &n);
  g_autofree int *rows = g_new (int, n + n_branches + 1);
  g_autofree double *values = g_new (double, n + n_branches + 1);
  int column = glp_add_cols (choice->program, 1), filled = 0;

  for (guint i = 0; i < n; i++)
    {
      rows[++filled] = (int) entries[i].kind + 1;
      values[filled] = entries[i].count;
    }
  for (guint b = 0; b < n_branches; b++)
    if (g_array_index (choice->branches, Branch, b).holds[pattern])
      {
        rows[++filled] = (int) (choice->list->n + b) + 1;
        values[filled] = 1;
      }
  glp_set_mat_col (choice->program, column, filled, rows, values);
  glp_set_obj_coef (choice->program, column, 1);
  glp_set_col_bnds (choice->program, column, GLP_LO, 0, 0);
  g_array_append_val (choice->columns, pattern);
  choice->in_program[pattern] = 1;
}

/* A column that meets a row alone, at a price: the program always has a solution. */
static void
add_missing (Choice *choice, int row)
{
  int column = glp_add_cols (choice->program, 1);
  int rows[2] = { 0, row };
  double values[2] = { 0, 1 };
  guint none = NO_PIECE;

  glp_set_mat_col (choice->program, column, 1, rows, values);
  glp_set_obj_coef (choice->program, column, MISSING_COST);
  glp_set_col_bnds (choice->program, column, GLP_LO, 0, 0);
  g_array_append_val (choice->columns, none);
}

static void
begin_program (Choice *choice)
{
  const StockList *list = choice->list;

  glp_term_out (GLP_OFF);
  choice->program = glp_create_prob ();
  glp_set_obj_dir (choice->program, GLP_MIN);
  glp_add_rows (choice->program, (int) list->n);
  for (guint i = 0; i < list->n; i++)
    {
      glp_set_row_bnds (choice->program, (int) i + 1, GLP_LO, list->demand[i], 0);
      add_missing (choice, (int) i + 1);
    }
}

static gboolean
run_simplex (Choice *choice, int method)
{
  glp_smcp how;

  glp_init_smcp (&how);
  how.msg_lev = GLP_MSG_OFF;
  how.meth = method;
  if (glp_simplex (choice->program, &how) != 0)
    {
      glp_adv_basis (choice->program, 0);
      if (glp_simplex (choice->program, &how) != 0)
        return FALSE;
    }
  return glp_get_status (choice->program) == GLP_OPT;
}

/* --- the bound --- */

static void
read_duals (Choice *choice)
{
  guint n = choice->list->n;

  for (guint r = 0; r < n + choice->branches->len; r++)
    {
      double dual = glp_get_row_dual (choice->program, (int) r + 1);
      gboolean at_least = r < n || g_array_index (choice->branches, Branch, r - n).at_least;

      dual = at_least ? CLAMP (dual, 0, MISSING_COST) : CLAMP (dual, -MISSING_COST, 0);
      choice->duals[r] = (gint64) floor (dual * (double) STOCK_WORTH + 0.5);
    }
}

/* The most that a pattern of the list is worth by the duals; fills in choice->values. */
static gint64
price_all (Choice *choice)
{
  const Shortlist *shortlist = choice->shortlist;
  gint64 most = G_MININT64;

  for (guint p = 0; p < shortlist->n; p++)
    {
      guint n;
      const ShortlistEntry *entries = shortlist_pattern (shortlist, p, &n);

      choice->values[p] = 0;
      for (guint i = 0; i < n; i++)
        choice->values[p] += choice->duals[entries[i].kind] * entries[i].count;
    }
  for (guint b = 0; b < choice->branches->len; b++)
    {
      const guint8 *holds = g_array_index (choice->branches, Branch, b).holds;
      gint64 dual = choice->duals[choice->list->n + b];

      for (guint p = 0; dual != 0 && p < shortlist->n; p++)
        choice->values[p] += holds[p] * dual;
    }
  for (guint p = 0; p < shortlist->n; p++)
    most = MAX (most, choice->values[p]);
  return most;
}

/* Whether the duals prove that more than choice->bins stocks are needed. What is wanted is worth
 * `wanted` and each stock `most` of it. */
static gboolean
proves_too_many (const Choice *choice, gint64 most)
{
  gint64 wanted = 0;

  for (guint i = 0; i < choice->list->n; i++)
    wanted += choice->duals[i] * choice->list->demand[i];
  for (guint b = 0; b < choice->branches->len; b++)
    wanted
        += choice->duals[choice->list->n + b] * g_array_index (choice->branches, Branch, b).stocks;
  return wanted > 0 && (most <= 0 || (wanted - 1) / most >= choice->bins);
}

/* The patterns of the most worth that the program lacks; FALSE when none would change it. */
static gboolean
add_worthiest (Choice *choice, gint64 most)
{
  /* Half of the best one's gain is good enough to come in with it. */
  gint64 enough = STOCK_WORTH + MAX ((most - STOCK_WORTH) / 2, 16);
  guint added = 0;

  for (guint p = 0; p < choice->shortlist->n && added < COLUMNS_AT_ONCE; p++)
    if (choice->values[p] >= enough && !choice->in_program[p])
      {
        add_column (choice, p);
        added++;
      }
  return added > 0;
}

typedef enum
{
  NODE_OPEN,
  NODE_DEAD,
  NODE_UNKNOWN,
} NodeResult;

/* Solves the program for the branches taken. */
static NodeResult
solve_node (Choice *choice)
{
  /* A new row leaves the duals good, new columns the solution. */
  for (int method = GLP_DUALP;; method = GLP_PRIMAL)
    {
      gint64 most;

      if (!stock_spend (choice->work,
                        400 + choice->shortlist->n / 4 + (gint64) choice->list->n * choice->list->n)
          || !run_simplex (choice, method))
        return NODE_UNKNOWN;
      if (glp_get_obj_val (choice->program) <= choice->bins + 1e-7)
        return NODE_OPEN;
      read_duals (choice);
      most = price_all (choice);
      if (proves_too_many (choice, most))
        return NODE_DEAD;
      /* All is in the program, and rounding hides the proof. */
      if (!add_worthiest (choice, most))
        return NODE_UNKNOWN;
    }
}

/* --- answers --- */

static gboolean
keep_answer (Choice *choice, StockAnswer *answer)
{
  if (answer->bins > choice->bins)
    {
      stock_answer_free (answer);
      return FALSE;
    }
  *choice->answer = answer;
  return TRUE;
}

/* The program's solution rounded by `up`, cut as far as it is wanted, and the rest filled by a
 * simple rule. */
static gboolean
try_rounded (Choice *choice, double up)
{
  const StockList *list = choice->list;
  StockAnswer *answer = stock_answer_new (), *rest;
  g_autofree gint32 *demand = g_new (gint32, list->n + 1), *counts = g_new0 (gint32, list->n + 1);

  memcpy (demand, list->demand, list->n * sizeof (gint32));
  for (guint c = 0; c < choice->columns->len; c++)
    {
      guint pattern = g_array_index (choice->columns, guint, c), n;
      double used = glp_get_col_prim (choice->program, (int) c + 1);
      const ShortlistEntry *entries;

      if (pattern == NO_PIECE || used < NEARLY)
        continue;
      entries = shortlist_pattern (choice->shortlist, pattern, &n);
      for (gint32 times = (gint32) floor (used + up); times > 0; times--)
        {
          gboolean any = FALSE;

          for (guint i = 0; i < n; i++)
            {
              counts[entries[i].kind] = MIN (entries[i].count, demand[entries[i].kind]);
              any = any || counts[entries[i].kind] > 0;
            }
          if (any)
            stock_answer_cut (answer, list, counts, 1, demand);
          for (guint i = 0; i < n; i++)
            counts[entries[i].kind] = 0;
        }
    }
  rest = stock_fill_tightest (list, demand, choice->work);
  stock_answer_extend (answer, rest);
  stock_answer_free (rest);
  return keep_answer (choice, answer);
}

/* --- branching --- */

static double
apart_from_whole (double x)
{
  return fabs (x - floor (x + 0.5));
}

/* The pair of kinds whose common stocks lack the least of a whole number: one more is likely right.
 * FALSE when all are whole. A kind is a pair with itself where a stock holds two of it. */
static gboolean
find_pair (Choice *choice, guint *first, guint *second, double *stocks)
{
  guint n = choice->list->n;
  double best = NEARLY;

  memset (choice->together, 0, (gsize) n * n * sizeof (double));
  for (guint c = 0; c < choice->columns->len; c++)
    {
      guint pattern = g_array_index (choice->columns, guint, c), m;
      double used = glp_get_col_prim (choice->program, (int) c + 1);
      const ShortlistEntry *entries;

      if (pattern == NO_PIECE || used < NEARLY)
        continue;
      entries = shortlist_pattern (choice->shortlist, pattern, &m);
      for (guint i = 0; i < m; i++)
        for (guint k = i; k < m; k++)
          if (k > i || entries[i].count > 1)
            choice->together[(gsize) entries[i].kind * n + entries[k].kind] += used;
    }
  for (guint i = 0; i < n; i++)
    for (guint k = i; k < n; k++)
      {
        double here = choice->together[(gsize) i * n + k], apart = apart_from_whole (here);
        double score = apart > NEARLY ? here - floor (here) : 0;
        if (score > best + NEARLY)
          {
            best = score;
            *first = i;
            *second = k;
            *stocks = here;
          }
      }
  return best > NEARLY;
}

/* The pattern used the furthest from a whole number of times. */
static gboolean
find_pattern (const Choice *choice, guint *pattern, double *stocks)
{
  double best = NEARLY;

  for (guint c = 0; c < choice->columns->len; c++)
    {
      double used = glp_get_col_prim (choice->program, (int) c + 1);

      if (g_array_index (choice->columns, guint, c) != NO_PIECE
          && apart_from_whole (used) > best + NEARLY)
        {
          best = apart_from_whole (used);
          *pattern = g_array_index (choice->columns, guint, c);
          *stocks = used;
        }
    }
  return best > NEARLY;
}

static guint8
holds_pair (const Choice *choice, guint pattern, guint first, guint second)
{
  guint n;
  const ShortlistEntry *entries = shortlist_pattern (choice->shortlist, pattern, &n);
  gint32 of_first = 0, of_second = 0;

  for (guint i = 0; i < n; i++)
    {
      if (entries[i].kind == first)
        of_first = entries[i].count;
      if (entries[i].kind == second)
        of_second = entries[i].count;
    }
  return first == second ? of_first > 1 : of_first > 0 && of_second > 0;
}

/* What to branch on as a row of patterns; FALSE when the solution is whole. */
static gboolean
find_branch (Choice *choice, guint8 *holds, double *stocks)
{
  guint first = 0, second = 0, pattern = 0;

  if (find_pair (choice, &first, &second, stocks))
    {
      for (guint p = 0; p < choice->shortlist->n; p++)
        holds[p] = holds_pair (choice, p, first, second);
      return TRUE;
    }
  if (!find_pattern (choice, &pattern, stocks))
    return FALSE;
  memset (holds, 0, choice->shortlist->n);
  holds[pattern] = 1;
  return TRUE;
}

static void
add_branch (Choice *choice, const Branch *branch)
{
  int row = glp_add_rows (choice->program, 1), filled = 0;
  guint n = choice->columns->len;
  g_autofree int *columns = g_new (int, n + 2);
  g_autofree double *values = g_new (double, n + 2);

  for (guint c = 0; c < n; c++)
    {
      guint pattern = g_array_index (choice->columns, guint, c);

      if (pattern != NO_PIECE && branch->holds[pattern])
        {
          columns[++filled] = (int) c + 1;
          values[filled] = 1;
        }
    }
  glp_set_mat_row (choice->program, row, filled, columns, values);
  glp_set_row_bnds (choice->program, row, branch->at_least ? GLP_LO : GLP_UP, branch->stocks,
                    branch->stocks);
  g_array_append_val (choice->branches, *branch);
  if (branch->at_least)
    add_missing (choice, row);
}

/* Without its last row the basis has a variable too many: the least used pattern leaves it. */
static void
mend_basis (Choice *choice)
{
  int least = 0;
  double used = G_MAXDOUBLE;

  for (int c = 1; c <= (int) choice->columns->len; c++)
    if (glp_get_col_stat (choice->program, c) == GLP_BS
        && glp_get_col_prim (choice->program, c) < used)
      {
        least = c;
        used = glp_get_col_prim (choice->program, c);
      }
  if (least > 0)
    glp_set_col_stat (choice->program, least, GLP_NL);
}

/* The column of what was missing in a branch stays, empty. */
static void
drop_branch (Choice *choice)
{
  int row[2] = { 0, glp_get_num_rows (choice->program) };
  gboolean basic = glp_get_row_stat (choice->program, row[1]) == GLP_BS;

  glp_del_rows (choice->program, 1, row);
  if (!basic)
    mend_basis (choice);
  g_array_set_size (choice->branches, choice->branches->len - 1);
}

static ExactResult search_node (Choice *choice);

static ExactResult
search_branch (Choice *choice, guint8 *holds, gint32 stocks, gboolean at_least)
{
  Branch branch = { holds, stocks, at_least };
  ExactResult result;

  add_branch (choice, &branch);
  result = search_node (choice);
  drop_branch (choice);
  return result;
}

static ExactResult
search_node (Choice *choice)
{
  g_autofree guint8 *holds = NULL;
  double stocks = 0;
  ExactResult more, fewer;
  NodeResult node = solve_node (choice);

  if (node == NODE_DEAD)
    return EXACT_NONE;
  if (node == NODE_UNKNOWN || choice->branches->len >= MAX_BRANCHES)
    return EXACT_UNKNOWN;
  if (try_rounded (choice, NEARLY) || try_rounded (choice, 0.5))
    return EXACT_FOUND;
  holds = g_new (guint8, choice->shortlist->n + 1);
  if (!find_branch (choice, holds, &stocks))
    return EXACT_UNKNOWN;
  more = search_branch (choice, holds, (gint32) floor (stocks) + 1, TRUE);
  if (more == EXACT_FOUND)
    return more;
  fewer = search_branch (choice, holds, (gint32) floor (stocks), FALSE);
  if (fewer == EXACT_FOUND)
    return fewer;
  return more == EXACT_NONE && fewer == EXACT_NONE ? EXACT_NONE : EXACT_UNKNOWN;
}

ExactResult
choose_search (const StockList *list, gint32 bins, const Shortlist *shortlist, StockWork *work,
               StockAnswer **answer)
{
  Choice choice
      = { .list = list, .shortlist = shortlist, .bins = bins, .work = work, .answer = answer };
  ExactResult result;

  choice.columns = g_array_new (FALSE, FALSE, sizeof (guint));
  choice.branches = g_array_new (FALSE, FALSE, sizeof (Branch));
  choice.in_program = g_new0 (guint8, shortlist->n + 1);
  choice.duals = g_new (gint64, list->n + MAX_BRANCHES + 1);
  choice.values = g_new (gint64, shortlist->n + 1);
  choice.together = g_new (double, (gsize) list->n * list->n + 1);
  begin_program (&choice);
  result = search_node (&choice);
  glp_delete_prob (choice.program);
  g_array_unref (choice.columns);
  g_array_unref (choice.branches);
  g_free (choice.in_program);
  g_free (choice.duals);
  g_free (choice.values);
  g_free (choice.together);
  return result;
}
