/* test-place.c - places of an opening, and what changes of a wall would save */
#include "advice/place.h"

#include <string.h>

#include "advice/crew.h"
#include "advice/saving.h"
#include "any-wall.h"
#include "bond/lay.h"
#include "takeoff/takeoff.h"

static Project *
project_of (const AnyWall *any)
{
  g_autoptr (Project) empty = project_new ();
  g_autoptr (Wall) wall = wall_copy (any->wall);
  Block own = block_copy (&any->block);
  g_autoptr (GError) error = NULL;
  Project *project;

  own.id = project_block_at (empty, 0)->id;
  g_free (own.key);
  own.key = g_strdup ("b1");
  wall->block = own.id;
  g_clear_pointer (&wall->key, g_free);
  g_autoptr (Edit) set = edit_set_block (&own);
  g_autoptr (Edit) add = edit_add_wall (wall);
  g_autoptr (Project) with_block = project_edit (empty, set, &error);
  g_assert_no_error (error);
  project = project_edit (with_block, add, &error);
  g_assert_no_error (error);
  block_clear (&own);
  return project;
}

/* What lay and takeoff say of the wall. */
static Cost
cost_by_hand (const Project *project)
{
  const Wall *wall = project_wall_at (project, 0);
  Layout *layout = lay_wall (wall, project_block_at (project, 0), NULL);
  g_autoptr (Takeoff) takeoff = takeoff_new (project, &layout, NULL);
  const Cost cost = { .breaches = layout->proof.breaches,
                      .cuts = layout->n_cut,
                      .to_order = (gint32) takeoff_line (takeoff, "blocks.to-order")->quantity };

  layout_unref (layout);
  return cost;
}

static void
check_place (const AnyWall *any, const Opening *opening, Shift shift, Length at)
{
  Place first = { .at = at }, laid = { .at = at };
  g_autoptr (Wall) moved = wall_copy (any->wall);
  g_autofree char *fault = NULL;
  const AnyWall there = { any->block, moved };
  g_autoptr (Project) project = NULL;
  Cost cost;

  g_assert_true (place_try (any->wall, &any->block, opening->id, shift, LOOK_FIRST, &first, NULL));
  g_assert_true (place_try (any->wall, &any->block, opening->id, shift, LOOK_LAID, &laid, NULL));
  shift_to (wall_own_opening (moved, opening->id), shift, at);
  fault = wall_fault (moved, &any->block, NULL);
  g_assert_cmpint (laid.possible, ==, fault == NULL);
  g_assert_cmpint (first.possible, ==, laid.possible);
  if (!laid.possible)
    return;
  project = project_of (&there);
  cost = cost_by_hand (project);
  g_assert_cmpint (laid.cost.cuts, ==, cost.cuts);
  g_assert_cmpint (laid.cost.breaches, ==, cost.breaches);
  g_assert_cmpint (laid.cost.to_order, ==, cost.to_order);
  if (first.cost.as_laid)
    {
      g_assert_cmpint (first.cost.cuts, ==, cost.cuts);
      g_assert_cmpint (first.cost.breaches, ==, cost.breaches);
      g_assert_cmpint (first.cost.to_order, ==, cost.to_order);
    }
}

static void
test_a_place_is_the_wall_laid_there (void)
{
  AnyRandom random = { 7 };
  guint n = 0;

  for (guint64 seed = 1; n < 60; seed++)
    {
      g_auto (AnyWall) any = any_wall (seed);
      const Shift shift = (Shift) (seed % N_SHIFTS);

      if (any.wall->openings->len == 0 || any.wall->length > LENGTH_MM (7000))
        continue;
      const Opening *opening = wall_opening_at (any.wall, 0);
      g_autoptr (GArray) places
          = places_list (any.wall, &any.block, opening->id, shift, LENGTH_MM (300), LENGTH_MM (5));
      for (int i = 0; i < 3; i++)
        check_place (&any, opening, shift,
                     g_array_index (places, Length, any_between (&random, 0, places->len - 1)));
      n++;
    }
}

/* What a first look calls the answer is that, with every aim and with rules, breaches or not; and
 * where the fewest cuts are wanted, it is never less than the answer. */
static void
test_a_first_look_tells_the_truth (void)
{
  guint n_sure = 0, n_sure_of_breaches = 0;

  for (guint64 seed = 1; seed <= 200; seed++)
    {
      g_auto (AnyWall) any = any_wall (seed);
      const Aim aim = (Aim) (seed % 3);
      Cost first, laid;

      if (any.wall->length > LENGTH_MM (4000))
        continue;
      any.wall->laying.given |= LAYING_AIM;
      any.wall->laying.aim = aim;
      any.wall->laying.rules[RULE_LENGTHS].keep = (Keep) (seed % 7 == 0 ? KEEP_PREFER : KEEP_OFF);
      g_assert_cmpint (cost_of_wall (any.wall, &any.block, LOOK_FIRST, NULL, &first), ==,
                       COSTING_DONE);
      g_assert_cmpint (cost_of_wall (any.wall, &any.block, LOOK_LAID, NULL, &laid), ==,
                       COSTING_DONE);
      if (first.as_laid)
        {
          g_assert_cmpint (first.breaches, ==, laid.breaches);
          g_assert_cmpint (first.cuts, ==, laid.cuts);
          g_assert_cmpint (first.to_order, ==, laid.to_order);
          n_sure++;
          n_sure_of_breaches += first.breaches > 0;
        }
      if (aim == AIM_FEWEST_CUTS && any.wall->laying.rules[RULE_LENGTHS].keep == KEEP_OFF)
        g_assert_true (laid.breaches < first.breaches
                       || (laid.breaches == first.breaches && laid.cuts <= first.cuts));
    }
  g_test_message ("sure: %u, with breaches %u", n_sure, n_sure_of_breaches);
  g_assert_cmpuint (n_sure, >, 40);
  g_assert_cmpuint (n_sure_of_breaches, >, 10);
}

/* The nearest first, none twice, the present one, every step, none too far. */
static void
test_places_are_listed_once (void)
{
  for (guint64 seed = 1; seed < 300; seed++)
    {
      g_auto (AnyWall) any = any_wall (seed);
      const Shift shift = (Shift) (seed % N_SHIFTS);
      g_autoptr (GHashTable) seen = g_hash_table_new (NULL, NULL);

      if (any.wall->openings->len == 0)
        continue;
      const Opening *opening = wall_opening_at (any.wall, 0);
      const Length now = shift_at (opening, shift);
      g_autoptr (GArray) places
          = places_list (any.wall, &any.block, opening->id, shift, LENGTH_MM (300), LENGTH_MM (5));
      g_assert_cmpint (g_array_index (places, Length, 0), ==, now);
      for (guint i = 0; i < places->len; i++)
        {
          const Length at = g_array_index (places, Length, i);
          g_assert_true (g_hash_table_add (seen, GINT_TO_POINTER (at)));
          g_assert_cmpint (ABS (at - now), <=, LENGTH_MM (300));
          g_assert_cmpint (ABS (at - now), >=,
                           i > 0 ? ABS (g_array_index (places, Length, i - 1) - now) : 0);
        }
      for (Length at = now / LENGTH_MM (5) * LENGTH_MM (5); at <= now + LENGTH_MM (300);
           at += LENGTH_MM (5))
        if (at >= now && at <= LENGTH_MAX)
          g_assert_true (g_hash_table_contains (seen, GINT_TO_POINTER (at)));
    }
}

/* No more than one opening moved, and that a little or as far as it may. Whether one did. */
static gboolean
check_moved (const Wall *wall, const Wall *changed, const char *rule)
{
  guint n = 0;

  if (strcmp (rule, "saves-position") != 0)
    return FALSE;
  for (guint i = 0; i < wall->openings->len; i++)
    {
      const Opening *opening = wall_opening_at (wall, i);
      const Length by = wall_opening_at (changed, i)->x - opening->x;
      const Length most = opening->given & OPENING_MAY_MOVE ? opening->may_move : LENGTH_MM (100);

      n += by != 0;
      g_assert_cmpint (ABS (by), <=, most);
    }
  g_assert_cmpuint (n, ==, 1);
  return TRUE;
}

/* Each saving, applied and laid, costs less than before, and keeps the limits it is told within. */
static guint
check_savings (const AnyWall *any)
{
  guint n_moved = 0;
  g_autoptr (Project) project = project_of (any);
  const Wall *wall = project_wall_at (project, 0);
  g_autoptr (GPtrArray) savings = savings_of_wall (project, wall, 2, NULL);
  const Cost before = cost_by_hand (project);
  const Laying now = laying_resolve (&wall->laying, &any->block);
  const Laying none = laying_default ();
  const Length standard = laying_resolve (&none, &any->block).min_lap;

  for (guint i = 0; i < savings->len; i++)
    {
      const Finding *saving = g_ptr_array_index (savings, i);
      g_autoptr (GError) error = NULL;
      g_autoptr (Project) after = project_edit (project, saving->mend, &error);

      g_assert_no_error (error);
      const Cost cost = cost_by_hand (after);
      const Wall *changed = project_wall_at (after, 0);
      const Laying laying = laying_resolve (&changed->laying, &any->block);
      g_assert_cmpint (cost_compare (&cost, &before, now.aim), <, 0);
      g_assert_cmpint (ABS (changed->length - wall->length), <=, LENGTH_MM (50));
      if (laying.first_bed != now.first_bed)
        {
          g_assert_cmpint (laying.first_bed, >=, LENGTH_MM (10));
          g_assert_cmpint (laying.first_bed, <=, LENGTH_MM (40));
        }
      if (laying.min_lap != now.min_lap)
        g_assert_cmpint (laying.min_lap, >=, standard);
      n_moved += check_moved (wall, changed, saving->rule);
      g_assert_nonnull (strstr (saving->text, " save"));
      g_assert_nonnull (saving->mend_text);
    }
  return n_moved;
}

static void
test_savings_save (void)
{
  guint n = 0, n_moved = 0;

  for (guint64 seed = 50; n < 25; seed++)
    {
      g_auto (AnyWall) any = any_wall (seed);

      if (any.wall->length > LENGTH_MM (5000))
        continue;
      for (guint i = 0; i < any.wall->openings->len; i++)
        {
          Opening *opening = &g_array_index (any.wall->openings, Opening, i);

          opening->given |= (seed + i) % 3 < 2 ? OPENING_MAY_MOVE : 0;
          opening->may_move = (seed + i) % 3 == 0 ? 0 : LENGTH_MM (50);
        }
      n_moved += check_savings (&any);
      n++;
    }
  g_test_message ("positions: %u", n_moved);
  g_assert_cmpuint (n_moved, >, 2);
}

static void
test_savings_can_be_stopped (void)
{
  g_auto (AnyWall) any = any_wall (11);
  g_autoptr (Project) project = project_of (&any);
  const gint stop = 1;

  g_assert_null (savings_of_wall (project, project_wall_at (project, 0), 2, &stop));
}

static gboolean
mark (guint i, gpointer data)
{
  ((gint *) data)[i]++;
  return i != 70;
}

static void
test_a_crew_does_each_task_once (void)
{
  gint done[100] = { 0 };

  g_assert_true (crew_run (50, 3, mark, done));
  for (guint i = 0; i < 100; i++)
    g_assert_cmpint (done[i], ==, i < 50);
  g_assert_false (crew_run (100, 2, mark, done));
  g_assert_true (crew_run (0, 2, mark, done));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/place/is-the-wall-laid-there", test_a_place_is_the_wall_laid_there);
  g_test_add_func ("/place/first-look-tells-the-truth", test_a_first_look_tells_the_truth);
  g_test_add_func ("/place/listed-once", test_places_are_listed_once);
  g_test_add_func ("/saving/saves", test_savings_save);
  g_test_add_func ("/saving/can-be-stopped", test_savings_can_be_stopped);
  g_test_add_func ("/crew/each-task-once", test_a_crew_does_each_task_once);
  return g_test_run ();
}
