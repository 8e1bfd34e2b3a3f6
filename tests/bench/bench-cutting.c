/* bench-cutting.c - how many instances of cutting stock are proven, and how long that takes
 *
 * Prints rows of data, tab-separated: class, instances, proven, as few as known from outside of so
 * many, median ms, slowest ms. `list ROUNDS` cuts one practical list that often, for counting. */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "../cutting/instances.h"

typedef struct
{
  guint n, proven, known, met;
  GArray *times; /* double, ms */
} Row;

static gint
compare_doubles (gconstpointer a, gconstpointer b)
{
  const double x = *(const double *) a, y = *(const double *) b;

  return (x > y) - (x < y);
}

static void
run (Row *row, const Instance *instance, int effort)
{
  gint64 start = g_get_monotonic_time ();
  g_autoptr (CuttingPlan) plan
      = cutting_solve (instance->stock, 0, (const CuttingItem *) (gpointer) instance->items->data,
                       instance->items->len, effort, NULL, NULL);
  double ms = (double) (g_get_monotonic_time () - start) / 1000.0;

  row->n++;
  row->proven += plan->proven;
  row->known += instance->fewest > 0;
  row->met += instance->fewest > 0 && plan->bins == instance->fewest;
  if (!plan->proven)
    fprintf (stderr, "open: %s, %d to %d\n", instance->name, plan->bins_at_least, plan->bins);
  g_array_append_val (row->times, ms);
}

static void
print_row (const char *name, Row *row)
{
  g_array_sort (row->times, compare_doubles);
  printf ("%s\t%u\t%u\t%u of %u\t%.2f\t%.2f\n", name, row->n, row->proven, row->met, row->known,
          g_array_index (row->times, double, row->times->len / 2),
          g_array_index (row->times, double, row->times->len - 1));
  fflush (stdout);
  g_array_unref (row->times);
}

static Row
row_new (void)
{
  return (Row){ .times = g_array_new (FALSE, FALSE, sizeof (double)) };
}

static void
run_published (void)
{
  g_autoptr (GPtrArray) published = instances_published ();
  Row row = row_new ();

  for (guint i = 0; i < published->len; i++)
    run (&row, g_ptr_array_index (published, i), 1);
  print_row ("published", &row);
}

static void
run_class (const InstanceClass *class)
{
  Row row = row_new ();

  for (guint i = 0; i < class->n; i++)
    {
      Instance *instance = instance_of_class (class, i);

      run (&row, instance, 1);
      instance_free (instance);
    }
  print_row (class->name, &row);
}

/* 50 lengths, 300 pieces, from bars of 6 m. */
static Instance *
practical_list (guint number)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (20260321 + number);
  Instance *instance = g_new0 (Instance, 1);

  instance->name = g_strdup ("list");
  instance->stock = 6000;
  instance->items = g_array_new (FALSE, FALSE, sizeof (CuttingItem));
  for (guint i = 0; i < 50; i++)
    {
      CuttingItem item = { g_rand_int_range (rand, 120, 3000), 1 };

      g_array_append_val (instance->items, item);
    }
  for (guint i = 50; i < 300; i++)
    g_array_index (instance->items, CuttingItem, g_rand_int_range (rand, 0, 50)).quantity++;
  return instance;
}

static void
run_lists (const char *name, int effort, guint from, guint n)
{
  Row row = row_new ();

  for (guint i = 0; i < n; i++)
    {
      Instance *instance = practical_list (from * i);

      run (&row, instance, effort);
      instance_free (instance);
    }
  print_row (name, &row);
}

int
main (int argc, char **argv)
{
  if (argc == 3 && strcmp (argv[1], "list") == 0)
    run_lists ("list", 0, 0, (guint) atoi (argv[2]));
  else
    {
      run_lists ("lists, live", 0, 1, 200);
      run_lists ("lists", 1, 1, 200);
      run_published ();
      for (guint i = 0; i < n_instance_classes; i++)
        run_class (&instance_classes[i]);
    }
  return 0;
}
