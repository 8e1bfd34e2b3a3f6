/* tables.c - the least sum of costs of variables by themselves and in pairs */
#include "bond/tables.h"

#include <string.h>

typedef struct
{
  gint32 a, b;   /* a < b */
  gint32 *costs; /* n (a) rows of n (b) */
} Pair;

typedef struct
{
  gint32 n;      /* values; 0: gone */
  gint32 *costs; /* of each value */
  GPtrArray *pairs;
} Variable;

/* A variable that is gone, with what it takes to choose its value after its neighbours'. */
typedef struct
{
  gint32 at, n;
  gint32 *costs;
  gint32 beside[2]; /* neighbours, -1: none */
  gint32 *rows[2];  /* one row for each of that neighbour's values */
} Folded;

struct Tables
{
  gint32 n;
  Variable *variables;
  GArray *folded; /* Folded, in their order */
  gint32 sum;     /* of what is gone */
  gint64 work;    /* steps that are left */
};

static inline gint32
add (gint32 p, gint32 q)
{
  gint32 sum = p + q; /* both at most TABLES_NEVER */

  return MIN (sum, TABLES_NEVER);
}

Tables *
tables_new (gint32 n)
{
  Tables *tables = g_new0 (Tables, 1);

  tables->n = n;
  tables->variables = g_new0 (Variable, MAX (n, 1));
  tables->folded = g_array_new (FALSE, FALSE, sizeof (Folded));
  return tables;
}

static void
pair_free (Pair *pair)
{
  g_free (pair->costs);
  g_free (pair);
}

/* Takes a pair out of both its variables. */
static void
unpair (Tables *tables, Pair *pair)
{
  g_ptr_array_remove_fast (tables->variables[pair->a].pairs, pair);
  g_ptr_array_remove_fast (tables->variables[pair->b].pairs, pair);
}

void
tables_free (Tables *tables)
{
  if (tables == NULL)
    return;
  for (gint32 i = 0; i < tables->n; i++)
    {
      Variable *variable = &tables->variables[i];

      while (variable->pairs != NULL && variable->pairs->len > 0)
        {
          Pair *pair = g_ptr_array_index (variable->pairs, 0);

          unpair (tables, pair);
          pair_free (pair);
        }
    }
  for (gint32 i = 0; i < tables->n; i++)
    {
      g_free (tables->variables[i].costs);
      g_clear_pointer (&tables->variables[i].pairs, g_ptr_array_unref);
    }
  for (guint i = 0; i < tables->folded->len; i++)
    {
      Folded *folded = &g_array_index (tables->folded, Folded, i);

      g_free (folded->costs);
      g_free (folded->rows[0]);
      g_free (folded->rows[1]);
    }
  g_array_unref (tables->folded);
  g_free (tables->variables);
  g_free (tables);
}

void
tables_set (Tables *tables, gint32 variable, const gint32 *costs, gint32 n_values)
{
  Variable *to = &tables->variables[variable];

  to->n = n_values;
  to->costs = g_memdup2 (costs, sizeof (gint32) * (gsize) n_values);
  to->pairs = g_ptr_array_new ();
}

void
tables_pair (Tables *tables, gint32 a, gint32 b, gint32 *costs)
{
  Pair *pair = g_new (Pair, 1);

  g_assert (a < b);
  *pair = (Pair){ a, b, costs };
  g_ptr_array_add (tables->variables[a].pairs, pair);
  g_ptr_array_add (tables->variables[b].pairs, pair);
}

static Pair *
pair_of (const Tables *tables, gint32 a, gint32 b)
{
  GPtrArray *pairs = tables->variables[a].pairs;

  for (guint i = 0; i < pairs->len; i++)
    {
      Pair *pair = g_ptr_array_index (pairs, i);

      if (pair->a == b || pair->b == b)
        return pair;
    }
  return NULL;
}

/* The costs of a pair with `first` in rows, as a new array. */
static gint32 *
rows_of (const Tables *tables, const Pair *pair, gint32 first)
{
  gint32 n_a = tables->variables[pair->a].n, n_b = tables->variables[pair->b].n;
  gint32 *rows;

  if (pair->a == first)
    return g_memdup2 (pair->costs, sizeof (gint32) * (gsize) n_a * (gsize) n_b);
  rows = g_new (gint32, (gsize) n_a * (gsize) n_b);
  for (gint32 i = 0; i < n_a; i++)
    for (gint32 k = 0; k < n_b; k++)
      rows[k * n_a + i] = pair->costs[i * n_b + k];
  return rows;
}

static gint32
least_of (const gint32 *costs, gint32 n)
{
  gint32 least = TABLES_NEVER;

  for (gint32 i = 0; i < n; i++)
    least = MIN (least, costs[i]);
  return least;
}

/* Takes a variable out that has at most two pairs, and keeps what it takes to choose its value. */
static void
take_out (Tables *tables, gint32 at)
{
  Variable *variable = &tables->variables[at];
  Folded folded = { at, variable->n, g_steal_pointer (&variable->costs), { -1, -1 }, { NULL } };

  for (gint32 i = 0; variable->pairs->len > 0; i++)
    {
      Pair *pair = g_ptr_array_index (variable->pairs, 0);

      folded.beside[i] = pair->a == at ? pair->b : pair->a;
      folded.rows[i] = rows_of (tables, pair, folded.beside[i]);
      unpair (tables, pair);
      pair_free (pair);
    }
  g_array_append_val (tables->folded, folded);
  variable->n = 0;
}

/* Each gone variable's best value beside those that went later. */
static void
choose_values (const Tables *tables, gint32 *values)
{
  for (guint i = tables->folded->len; i-- > 0;)
    {
      const Folded *folded = &g_array_index (tables->folded, Folded, i);
      gint32 best = G_MAXINT32;

      for (gint32 k = 0; k < folded->n; k++)
        {
          gint32 sum = folded->costs[k];

          for (gint32 m = 0; m < 2; m++)
            if (folded->beside[m] >= 0)
              sum = add (sum, folded->rows[m][values[folded->beside[m]] * folded->n + k]);
          if (sum < best)
            {
              best = sum;
              values[folded->at] = k;
            }
        }
    }
}

/* Folds a variable into its only neighbour. */
static void
fold_one (Tables *tables, gint32 at)
{
  Variable *variable = &tables->variables[at];
  Pair *pair = g_ptr_array_index (variable->pairs, 0);
  gint32 other = pair->a == at ? pair->b : pair->a;
  Variable *neighbour = &tables->variables[other];
  g_autofree gint32 *rows = rows_of (tables, pair, other);

  for (gint32 i = 0; i < neighbour->n; i++)
    {
      gint32 best = TABLES_NEVER;

      for (gint32 k = 0; k < variable->n; k++)
        best = MIN (best, add (variable->costs[k], rows[i * variable->n + k]));
      neighbour->costs[i] = add (neighbour->costs[i], best);
    }
  tables->work -= (gint64) neighbour->n * variable->n;
  take_out (tables, at);
}

/* Costs of a pair of the neighbours `a` (rows) and `b` that go with the best of variable `at`. */
static gint32 *
best_between (Tables *tables, gint32 at, const Pair *to_a, gint32 a, const Pair *to_b, gint32 b)
{
  const Variable *variable = &tables->variables[at];
  gint32 n_a = tables->variables[a].n, n_b = tables->variables[b].n;
  gint32 *costs = g_new (gint32, (gsize) n_a * (gsize) n_b);
  g_autofree gint32 *rows_a = rows_of (tables, to_a, a);
  g_autofree gint32 *rows_b = rows_of (tables, to_b, at);

  for (gsize i = 0; i < (gsize) n_a * (gsize) n_b; i++)
    costs[i] = TABLES_NEVER;
  for (gint32 i = 0; i < n_a; i++)
    for (gint32 m = 0; m < variable->n; m++)
      {
        gint32 base = add (rows_a[i * variable->n + m], variable->costs[m]);
        const gint32 *row = rows_b + m * n_b;
        gint32 *out = costs + i * n_b;

        if (base >= TABLES_NEVER)
          continue;
        tables->work -= n_b;
        for (gint32 k = 0; k < n_b; k++)
          {
            gint32 sum = base + row[k];

            out[k] = sum < out[k] ? sum : out[k];
          }
      }
  return costs;
}

/* Folds a variable into the pair of its two neighbours. */
static void
fold_two (Tables *tables, gint32 at)
{
  GPtrArray *pairs = tables->variables[at].pairs;
  Pair *p = g_ptr_array_index (pairs, 0), *q = g_ptr_array_index (pairs, 1), *old;
  gint32 u = p->a == at ? p->b : p->a, v = q->a == at ? q->b : q->a;
  Pair *to_a = u < v ? p : q, *to_b = u < v ? q : p;
  gint32 a = MIN (u, v), b = MAX (u, v);
  gint32 *costs = best_between (tables, at, to_a, a, to_b, b);

  take_out (tables, at);
  old = pair_of (tables, a, b);
  if (old == NULL)
    {
      tables_pair (tables, a, b, costs);
      return;
    }
  for (gint32 i = 0; i < tables->variables[a].n * tables->variables[b].n; i++)
    old->costs[i] = add (old->costs[i], costs[i]);
  g_free (costs);
}

static void
fold (Tables *tables, gint32 at)
{
  Variable *variable = &tables->variables[at];

  if (variable->pairs->len == 0)
    {
      tables->sum = add (tables->sum, least_of (variable->costs, variable->n));
      take_out (tables, at);
    }
  else if (variable->pairs->len == 1)
    fold_one (tables, at);
  else
    fold_two (tables, at);
}

/* Folds all that has two neighbours at most, the fewest values first; the variable with the most
 * neighbours that is left, or -1. */
static gint32
fold_all (Tables *tables)
{
  for (;;)
    {
      gint32 next = -1, most = -1;

      for (gint32 i = 0; i < tables->n; i++)
        {
          const Variable *variable = &tables->variables[i];

          if (variable->n == 0)
            continue;
          if (variable->pairs->len <= 2)
            {
              next = i;
              break;
            }
          if (most < 0 || variable->pairs->len > tables->variables[most].pairs->len)
            most = i;
        }
      if (next < 0)
        return most;
      fold (tables, next);
    }
}

static Tables *
tables_copy (const Tables *tables)
{
  Tables *copy = tables_new (tables->n);

  copy->sum = tables->sum;
  copy->work = tables->work;
  for (gint32 i = 0; i < tables->n; i++)
    if (tables->variables[i].n > 0)
      tables_set (copy, i, tables->variables[i].costs, tables->variables[i].n);
  for (gint32 i = 0; i < tables->n; i++)
    for (guint k = 0; tables->variables[i].n > 0 && k < tables->variables[i].pairs->len; k++)
      {
        const Pair *pair = g_ptr_array_index (tables->variables[i].pairs, k);

        if (pair->a == i)
          tables_pair (copy, pair->a, pair->b, rows_of (tables, pair, pair->a));
      }
  return copy;
}

/* Gives a variable one of its values for good. */
static void
fix (Tables *tables, gint32 at, gint32 value)
{
  Variable *variable = &tables->variables[at];

  while (variable->pairs->len > 0)
    {
      Pair *pair = g_ptr_array_index (variable->pairs, 0);
      gint32 other = pair->a == at ? pair->b : pair->a;
      Variable *neighbour = &tables->variables[other];
      g_autofree gint32 *rows = rows_of (tables, pair, at);

      for (gint32 i = 0; i < neighbour->n; i++)
        neighbour->costs[i] = add (neighbour->costs[i], rows[value * neighbour->n + i]);
      unpair (tables, pair);
      pair_free (pair);
    }
  tables->sum = add (tables->sum, variable->costs[value]);
  tables->variables[at].n = 0;
}

static gint32
sum_of_least (const Tables *tables)
{
  gint32 sum = tables->sum;

  for (gint32 i = 0; i < tables->n; i++)
    if (tables->variables[i].n > 0)
      sum = add (sum, least_of (tables->variables[i].costs, tables->variables[i].n));
  return sum;
}

static gint32 least_within (Tables *tables, gint32 enough, gint64 work, gint32 *values);

/* Each value of a variable in turn. */
static gint32
try_values (Tables *tables, gint32 at, gint32 enough, gint32 *values)
{
  /* With the values that are fixed already. */
  g_autofree gint32 *tried = g_memdup2 (values, sizeof (gint32) * (gsize) tables->n);
  gint32 best = enough;

  for (gint32 value = 0; value < tables->variables[at].n; value++)
    {
      Tables *copy = tables_copy (tables);
      gint32 sum;

      fix (copy, at, value);
      tried[at] = value;
      sum = sum_of_least (copy) < best ? least_within (copy, best, copy->work, tried) : best;
      tables->work = copy->work - 1000;
      tables_free (copy);
      if (sum >= best)
        continue;
      best = sum;
      memcpy (values, tried, sizeof (gint32) * (gsize) tables->n);
    }
  return best;
}

static gint32
least_within (Tables *tables, gint32 enough, gint64 work, gint32 *values)
{
  gint32 most, sum = TABLES_NEVER;

  tables->work = work;
  while ((most = fold_all (tables)) >= 0)
    {
      Pair *pair;

      if (sum_of_least (tables) >= enough)
        return enough;
      if (tables->work > 0)
        {
          sum = try_values (tables, most, enough, values);
          break;
        }
      pair = g_ptr_array_index (tables->variables[most].pairs, 0);
      unpair (tables, pair);
      pair_free (pair);
    }
  if (most < 0)
    sum = tables->sum;
  if (sum < enough)
    choose_values (tables, values);
  return MIN (sum, enough);
}

gint32
tables_least (Tables *tables, gint32 enough, gint64 work, gint32 *values)
{
  memset (values, 0, sizeof (gint32) * (gsize) tables->n);
  return least_within (tables, enough, work, values);
}
