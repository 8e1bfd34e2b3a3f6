/* test-cutting.c - the fewest stock lengths, against other ways to find them */
#include "cutting/cutting.h"

#include "check-plan.h"
#include "cutting/columns.h"
#include "cutting/exact.h"

#define MAX_ITEMS 16
#define N_LARGE 400

typedef struct
{
  const char *source;
  gint64 stock, kerf;
  CuttingItem items[MAX_ITEMS]; /* until quantity 0 */
  gint32 fewest;
} Case;

/* The optima were found by exhaustive search or another solver, as each row says. */
static const Case known[] = {
  { "V. Chvatal, Linear Programming, 1983, chapter 13",
    100,
    0,
    { { 45, 97 }, { 36, 610 }, { 31, 395 }, { 14, 211 } },
    453 },
  { "the example of an encyclopaedia's article on the cutting stock problem",
    5600,
    0,
    { { 1380, 22 },
      { 1520, 25 },
      { 1560, 12 },
      { 1710, 14 },
      { 1820, 18 },
      { 1880, 18 },
      { 1930, 20 },
      { 2000, 10 },
      { 2050, 12 },
      { 2100, 14 },
      { 2140, 16 },
      { 2150, 18 },
      { 2200, 20 } },
    73 },
  { "two halves, no kerf", 600, 0, { { 300, 2 } }, 1 },
  { "two halves and a kerf", 600, 4, { { 300, 2 } }, 2 },
  { "exhaustive: no kerf", 600, 0, { { 400, 2 }, { 200, 2 }, { 150, 2 }, { 100, 2 } }, 3 },
  { "exhaustive: the area alone says three",
    600,
    4,
    { { 400, 2 }, { 200, 2 }, { 150, 2 }, { 100, 2 } },
    4 },
  { "exhaustive: first-fit-decreasing needs four",
    600,
    0,
    { { 260, 3 }, { 180, 3 }, { 160, 3 } },
    3 },
  { "exhaustive: the same with a kerf", 600, 2, { { 260, 3 }, { 180, 3 }, { 156, 3 } }, 3 },
  { "exhaustive: many kinds",
    600,
    0,
    { { 300, 4 }, { 250, 3 }, { 200, 5 }, { 150, 2 }, { 125, 4 } },
    7 },
  { "exhaustive: many kinds and a kerf",
    600,
    3,
    { { 300, 4 }, { 250, 3 }, { 200, 5 }, { 150, 2 }, { 125, 4 } },
    7 },
  { "whole stocks", 600, 3, { { 600, 5 } }, 5 },
  { "one short piece", 600, 3, { { 1, 1 } }, 1 },
  { "nothing", 600, 3, { { 1, 0 } }, 0 },
  { "a last piece that ends at the stock's end costs no kerf", 600, 3, { { 198, 3 } }, 1 },
  { "a unit more does not fit", 600, 3, { { 199, 3 } }, 2 },
  { "a kerf longer than the stock", 10, 100, { { 5, 3 } }, 3 },
};

static guint
count_items (const Case *c)
{
  guint n = 0;

  while (n < MAX_ITEMS && c->items[n].quantity > 0)
    n++;
  return n;
}

static void
test_known (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (known); i++)
    for (int effort = 0; effort <= 1; effort++)
      {
        const Case *c = &known[i];
        g_autoptr (CuttingPlan) plan
            = cutting_solve (c->stock, c->kerf, c->items, count_items (c), effort, NULL, NULL);

        g_test_message ("%s", c->source);
        check_plan (plan, c->stock, c->kerf, c->items, count_items (c));
        g_assert_cmpint (plan->bins, ==, c->fewest);
        g_assert_cmpint (plan->bins_at_least, ==, c->fewest);
      }
}

/* Random pieces from a share of the stock to all of it, half of them under half of it; `most`
 * pieces at the most. */
static guint
random_items (GRand *rand, gint64 stock, CuttingItem *items, guint kinds, gint32 quantity,
              gint32 most)
{
  gint32 shortest = (gint32) stock / g_rand_int_range (rand, 2, 8) + 1;
  guint n = (guint) g_rand_int_range (rand, 1, (gint32) kinds + 1);

  for (guint i = 0; i < n; i++)
    {
      gint32 longest = (gint32) (g_rand_boolean (rand) ? stock : MAX (stock / 2, shortest));

      items[i].length = g_rand_int_range (rand, shortest, longest + 1);
      items[i].quantity = g_rand_int_range (rand, 0, MIN (quantity, most) + 1);
      most -= items[i].quantity;
    }
  return n;
}

static void
test_trying (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (20260301);
  guint open = 0;

  for (guint round = 0; round < 4000; round++)
    {
      CuttingItem items[8];
      gint64 stock = g_rand_int_range (rand, 10, 700), kerf = g_rand_int_range (rand, 0, 5);
      guint n = random_items (rand, stock, items, 8, 4, 11);
      gint32 fewest = fewest_by_trying (stock, kerf, items, n);
      g_autoptr (CuttingPlan) live = cutting_solve (stock, kerf, items, n, 0, NULL, NULL);
      g_autoptr (CuttingPlan) plan = cutting_solve (stock, kerf, items, n, 1, NULL, NULL);

      g_autoptr (StockList) list = stock_list_new (stock, kerf, items, n, NULL);

      g_assert_cmpint (stock_bound_quick (list), <=, fewest);
      check_plan (live, stock, kerf, items, n);
      g_assert_cmpint (live->bins_at_least, <=, fewest);
      g_assert_cmpint (live->bins, >=, fewest);
      open += !live->proven;
      check_plan (plan, stock, kerf, items, n);
      g_assert_cmpint (plan->bins, ==, fewest);
      g_assert_cmpint (plan->bins_at_least, ==, fewest);
    }
  g_test_message ("live answers without proof: %u of 4000", open);
  g_assert_cmpuint (open, <, 40);
}

/* The search finds that many, and with no more than some work never fewer. */
static void
check_search (gint64 stock, gint64 kerf, const CuttingItem *items, guint n, gint32 fewest)
{
  g_autoptr (StockList) list = stock_list_new (stock, kerf, items, n, NULL);
  g_autoptr (GArray) no_worths = g_array_new (FALSE, FALSE, sizeof (StockWorths));
  StockWork work = { NULL, 2000000 };
  StockAnswer *found = NULL, *none = NULL;

  g_assert_cmpint (exact_search (list, fewest, no_worths, &work, &found), !=, EXACT_NONE);
  stock_answer_free (found);
  work.steps = 2000000;
  g_assert_cmpint (exact_search (list, fewest - 1, no_worths, &work, &none), !=, EXACT_FOUND);
}

static void
test_flow (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (20260302);

  for (guint round = 0; round < 120; round++)
    {
      CuttingItem items[8];
      gint64 stock = g_rand_int_range (rand, 40, 140), kerf = g_rand_int_range (rand, 0, 3);
      guint n = random_items (rand, stock, items, 8, 12, 96);
      gint32 fewest = fewest_by_flow (stock, kerf, items, n);
      g_autoptr (CuttingPlan) plan = cutting_solve (stock, kerf, items, n, 1, NULL, NULL);

      check_plan (plan, stock, kerf, items, n);
      g_assert_cmpint (plan->bins, ==, fewest);
      g_assert_cmpint (plan->bins_at_least, ==, fewest);
      check_search (stock, kerf, items, n, fewest);
    }
}

/* The most worth of a pattern, by a table that knows nothing of the search. */
static gint64
most_worth (const StockList *list, const gint64 *worths)
{
  g_autofree gint64 *most = g_new0 (gint64, list->room + 1);

  for (guint i = 0; i < list->n; i++)
    for (gint32 k = 0; k < list->demand[i] && k < list->room / list->sizes[i]; k++)
      for (gint64 r = list->room; r >= list->sizes[i]; r--)
        most[r] = MAX (most[r], most[r - list->sizes[i]] + worths[i]);
  return most[list->room];
}

static void
check_worths (const StockList *list)
{
  g_autoptr (Columns) columns = columns_new (list);
  g_autofree gint32 *counts = g_new0 (gint32, list->n + 1);
  StockWork work = { NULL, 10000000 };

  for (guint i = 0; i < list->n; i++)
    {
      counts[i] = 1;
      columns_add (columns, counts);
      counts[i] = 0;
    }
  g_assert_cmpint (columns_solve (columns, list->demand, G_MAXINT32, &work), ==, TRUE);
  g_assert_cmpuint (columns_worths (columns)->len, >, 0);
  for (guint i = 0; i < columns_worths (columns)->len; i++)
    {
      const StockWorths *worths = &g_array_index (columns_worths (columns), StockWorths, i);

      g_assert_cmpint (worths->most, >=, most_worth (list, worths->worths));
    }
}

static void
test_worths (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (20260303);

  for (guint round = 0; round < 300; round++)
    {
      CuttingItem items[12];
      gint64 stock = g_rand_int_range (rand, 40, 900), kerf = g_rand_int_range (rand, 0, 4);
      guint n = random_items (rand, stock, items, 12, 6, 72);
      g_autoptr (StockList) list = stock_list_new (stock, kerf, items, n, NULL);

      if (list->n > 0)
        check_worths (list);
    }
  columns_leave_thread ();
}

/* The search alone, without bounds to help it: it finds what there is, and only that. */
static void
test_search (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (20260306);
  g_autoptr (GArray) no_worths = g_array_new (FALSE, FALSE, sizeof (StockWorths));

  for (guint round = 0; round < 3000; round++)
    {
      CuttingItem items[8];
      gint64 stock = g_rand_int_range (rand, 12, 80), kerf = g_rand_int_range (rand, 0, 3);
      guint n = random_items (rand, stock, items, 8, 3, 11);
      gint32 fewest = fewest_by_trying (stock, kerf, items, n);
      g_autoptr (StockList) list = stock_list_new (stock, kerf, items, n, NULL);
      StockAnswer *found = NULL, *none = NULL;
      StockWork work = { NULL, G_GINT64_CONSTANT (1) << 40 };

      g_assert_cmpint (exact_search (list, fewest, no_worths, &work, &found), ==, EXACT_FOUND);
      g_assert_cmpint (found->bins, ==, fewest);
      stock_answer_free (found);
      if (fewest > 0)
        g_assert_cmpint (exact_search (list, fewest - 1, no_worths, &work, &none), ==, EXACT_NONE);
      g_assert_null (none);
    }
}

/* Any unit: the same list in finer units has the same answer. */
static void
test_units (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (20260304);

  for (guint round = 0; round < 200; round++)
    {
      CuttingItem items[8], fine[8];
      guint n = random_items (rand, 600, items, 8, 12, 96);

      for (guint i = 0; i < n; i++)
        fine[i] = (CuttingItem){ items[i].length * 320, items[i].quantity };
      g_autoptr (CuttingPlan) a = cutting_solve (600, 3, items, n, 1, NULL, NULL);
      g_autoptr (CuttingPlan) b = cutting_solve (600 * 320, 3 * 320, fine, n, 1, NULL, NULL);
      check_plan (b, 600 * 320, 3 * 320, fine, n);
      g_assert_cmpint (a->bins, ==, b->bins);
      g_assert_cmpint (a->patterns->len, ==, b->patterns->len);
    }
}

static void
test_order_of_items (void)
{
  static const CuttingItem items[] = { { 250, 7 }, { 410, 3 }, { 90, 12 }, { 250, 2 }, { 333, 5 } };
  static const CuttingItem other[] = { { 333, 5 }, { 90, 12 }, { 250, 9 }, { 410, 3 } };
  g_autoptr (CuttingPlan) a = cutting_solve (600, 3, items, G_N_ELEMENTS (items), 1, NULL, NULL);
  g_autoptr (CuttingPlan) b = cutting_solve (600, 3, other, G_N_ELEMENTS (other), 1, NULL, NULL);

  g_assert_cmpint (a->bins, ==, b->bins);
  g_assert_cmpuint (a->patterns->len, ==, b->patterns->len);
  for (guint p = 0; p < a->patterns->len; p++)
    {
      const CuttingPattern *x = g_ptr_array_index (a->patterns, p);
      const CuttingPattern *y = g_ptr_array_index (b->patterns, p);

      g_assert_cmpint (x->times, ==, y->times);
      g_assert_cmpmem (x->pieces->data, (int) (x->pieces->len * sizeof (gint64)), y->pieces->data,
                       (int) (y->pieces->len * sizeof (gint64)));
    }
}

static void
test_faults (void)
{
  static const struct
  {
    gint64 stock, kerf;
    CuttingItem item;
    CuttingError code;
  } faults[] = {
    { 600, 3, { 601, 1 }, CUTTING_ERROR_TOO_LONG },
    { 600, 3, { 0, 1 }, CUTTING_ERROR_INPUT },
    { 600, 3, { -5, 1 }, CUTTING_ERROR_INPUT },
    { 600, 3, { 100, -1 }, CUTTING_ERROR_INPUT },
    { 0, 3, { 100, 1 }, CUTTING_ERROR_INPUT },
    { 600, -1, { 100, 1 }, CUTTING_ERROR_INPUT },
    { G_MAXINT64, 3, { 100, 1 }, CUTTING_ERROR_INPUT },
    { 600, G_MAXINT64, { 100, 1 }, CUTTING_ERROR_INPUT },
    { 600, 3, { G_MAXINT64, 1 }, CUTTING_ERROR_INPUT },
    { 600, 3, { 100, G_MAXINT32 }, CUTTING_ERROR_INPUT },
  };

  for (guint i = 0; i < G_N_ELEMENTS (faults); i++)
    {
      g_autoptr (GError) error = NULL;
      CuttingPlan *plan
          = cutting_solve (faults[i].stock, faults[i].kerf, &faults[i].item, 1, 0, NULL, &error);

      g_assert_null (plan);
      g_assert_error (error, CUTTING_ERROR, (int) faults[i].code);
      g_assert_cmpint (error->message[strlen (error->message) - 1], ==, '.');
    }
}

/* Long lists and extreme lengths end in time and are right. */
static void
test_large (void)
{
  CuttingItem items[N_LARGE];
  g_autoptr (GRand) rand = g_rand_new_with_seed (20260305);

  for (guint i = 0; i < G_N_ELEMENTS (items); i++)
    items[i]
        = (CuttingItem){ g_rand_int_range (rand, 48000, 192000), g_rand_int_range (rand, 1, 40) };
  g_autoptr (CuttingPlan) plan
      = cutting_solve (192000, 960, items, G_N_ELEMENTS (items), 0, NULL, NULL);
  check_plan (plan, 192000, 960, items, G_N_ELEMENTS (items));

  static const CuttingItem tiny[] = { { 1, 1000000 }, { 3, 5 } };
  g_autoptr (CuttingPlan) one
      = cutting_solve (G_GINT64_CONSTANT (1) << 32, 0, tiny, 2, 1, NULL, NULL);
  g_assert_cmpint (one->bins, ==, 1);
}

/* The linear programs of several threads do not meet. */
static gpointer
solve_many (gpointer seed)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (GPOINTER_TO_UINT (seed));
  guint64 sum = 0;

  for (guint round = 0; round < 60; round++)
    {
      CuttingItem items[30];
      guint n = random_items (rand, 6000, items, 30, 9, 1000);
      g_autoptr (CuttingPlan) plan = cutting_solve (6000, 4, items, n, 1, NULL, NULL);

      check_plan (plan, 6000, 4, items, n);
      sum = sum * 31 + (guint64) plan->bins * 7 + plan->patterns->len;
    }
  return GSIZE_TO_POINTER ((gsize) sum);
}

static void
test_threads (void)
{
  GThread *threads[4];

  for (guint i = 0; i < G_N_ELEMENTS (threads); i++)
    threads[i] = g_thread_new ("cutting", solve_many, GUINT_TO_POINTER (i));
  for (guint i = 0; i < G_N_ELEMENTS (threads); i++)
    g_assert_cmpuint (GPOINTER_TO_SIZE (g_thread_join (threads[i])), ==,
                      GPOINTER_TO_SIZE (solve_many (GUINT_TO_POINTER (i))));
}

static void
test_stop (void)
{
  static const CuttingItem items[] = { { 250, 7 }, { 410, 3 } };
  gint stop = 1;
  g_autoptr (GError) error = NULL;

  g_assert_null (cutting_solve (600, 3, items, 2, 1, &stop, &error));
  g_assert_no_error (error);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/cutting/known/fewest-and-proven", test_known);
  g_test_add_func ("/cutting/random/as-few-as-by-trying", test_trying);
  g_test_add_func ("/cutting/random/as-few-as-by-flow", test_flow);
  g_test_add_func ("/cutting/proof/no-pattern-is-worth-more", test_worths);
  g_test_add_func ("/cutting/search/finds-what-there-is", test_search);
  g_test_add_func ("/cutting/units/finer-units-change-nothing", test_units);
  g_test_add_func ("/cutting/items/order-changes-nothing", test_order_of_items);
  g_test_add_func ("/cutting/faults/refused-with-a-sentence", test_faults);
  g_test_add_func ("/cutting/large/ends-in-time", test_large);
  g_test_add_func ("/cutting/threads/same-answers", test_threads);
  g_test_add_func ("/cutting/stop/no-answer-and-no-error", test_stop);
  return g_test_run ();
}
