/* test-published.c - published instances of cutting stock, and classes made alike */
#include "cutting/cutting.h"

#include "check-plan.h"
#include "instances.h"

static CuttingPlan *
solve (const Instance *instance, int effort)
{
  const CuttingItem *items = (const CuttingItem *) (gpointer) instance->items->data;
  CuttingPlan *plan
      = cutting_solve (instance->stock, 0, items, instance->items->len, effort, NULL, NULL);

  check_plan (plan, instance->stock, 0, items, instance->items->len);
  if (instance->fewest > 0)
    {
      g_assert_cmpint (plan->bins_at_least, <=, instance->fewest);
      g_assert_cmpint (plan->bins, >=, instance->fewest);
    }
  return plan;
}

/* The published optimum, with proof; the live answer says nothing false. */
static void
test_published (void)
{
  g_autoptr (GPtrArray) published = instances_published ();

  g_assert_cmpuint (published->len, >, 0);
  for (guint i = 0; i < published->len; i++)
    {
      const Instance *instance = g_ptr_array_index (published, i);
      g_autoptr (CuttingPlan) plan = solve (instance, 1);
      g_autoptr (CuttingPlan) live = solve (instance, 0);

      g_test_message ("%s: %d", instance->name, plan->bins);
      g_assert_cmpint (plan->bins, ==, instance->fewest);
      g_assert_cmpint (plan->bins_at_least, ==, instance->fewest);
      g_assert_cmpint (live->bins_at_least, <=, instance->fewest);
      g_assert_cmpint (live->bins, >=, instance->fewest);
    }
}

/* The first instances of each class are proven, and the live bounds agree. */
static void
test_classes (void)
{
  for (guint c = 0; c < n_instance_classes; c++)
    for (guint i = 0; i < 8; i++)
      {
        Instance *instance = instance_of_class (&instance_classes[c], i);
        g_autoptr (CuttingPlan) plan = solve (instance, 1);
        g_autoptr (CuttingPlan) live = solve (instance, 0);

        g_test_message ("%s: %d", instance->name, plan->bins);
        g_assert_true (plan->proven);
        g_assert_cmpint (live->bins_at_least, <=, plan->bins);
        g_assert_cmpint (live->bins, >=, plan->bins);
        instance_free (instance);
      }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/cutting/published/fewest-and-proven", test_published);
  g_test_add_func ("/cutting/classes/proven", test_classes);
  return g_test_run ();
}
