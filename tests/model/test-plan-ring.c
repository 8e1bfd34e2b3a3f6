/* test-plan-ring.c - outer corners, to be set out with a tape */
#include "model/plan-ring.h"

#include "edited.h"
#include "model/outline.h"
#include "model/plan-edit.h"

#define MM(mm) LENGTH_MM (mm)

static Project *
with_building (Project *project, const char *text, double x, double y)
{
  g_autofree char *fault = NULL;
  g_autoptr (GArray) sides = outline_parse (text, &fault);
  g_autoptr (GPtrArray) walls = outline_walls (sides, MM (250), MM (2500), MM (x), MM (y));

  return edited (project, edit_walls (walls));
}

static char *
rings_text (const Project *project)
{
  g_autoptr (GPtrArray) rings = plan_rings (project);
  GString *text = g_string_new (NULL);

  for (guint r = 0; r < rings->len; r++)
    {
      const GArray *ring = g_ptr_array_index (rings, r);

      for (guint i = 0; i < ring->len; i++)
        {
          const RingCorner *corner = &g_array_index (ring, RingCorner, i);

          g_string_append_printf (text, "%s%g,%g%s w%u",
                                  i > 0   ? " "
                                  : r > 0 ? "; "
                                          : "",
                                  (double) corner->x / LENGTH_PER_MM,
                                  (double) corner->y / LENGTH_PER_MM, corner->inner ? "'" : "",
                                  corner->wall);
        }
    }
  return g_string_free (text, FALSE);
}

static void
test_rings (void)
{
  g_autoptr (Project) project = with_building (project_new (), "8000 x 6000", -1000, 500);
  g_autofree char *one = rings_text (project);
  g_autofree char *two = NULL;
  g_autoptr (GError) error = NULL;

  g_assert_cmpstr (one, ==, "-1000,500 w0 7000,500 w1 7000,6500 w2 -1000,6500 w3");
  /* Partitions are in no ring; a building beside it is one of its own. */
  g_autoptr (Wall) partition = plan_partition (project, RUNS_NORTH, MM (3000), MM (3000),
                                               project_block_at (project, 0), &error);
  g_assert_no_error (error);
  project = edited (project, edit_add_wall (partition));
  project = with_building (project, "9000 4000 3000 R 3000 6000 7000", 10000, 0);
  two = rings_text (project);
  g_assert_cmpstr (
      two, ==,
      "-1000,500 w0 7000,500 w1 7000,6500 w2 -1000,6500 w3; "
      "10000,0 w5 19000,0 w6 19000,4000 w7 16000,4000' w8 16000,7000 w9 10000,7000 w10");
}

static void
test_distance (void)
{
  const RingCorner a = { 0, 0, 0, FALSE }, c = { MM (8000), MM (6000), 0, FALSE };
  char text[RING_LETTERS_SIZE];

  g_assert_cmpint (ring_distance (&a, &c), ==, MM (10000));
  g_assert_cmpstr (ring_letters (0, text), ==, "A");
  g_assert_cmpstr (ring_letters (25, text), ==, "Z");
  g_assert_cmpstr (ring_letters (26, text), ==, "AA");
  g_assert_cmpstr (ring_letters (26 + 26 * 26, text), ==, "AAA");
}

/* Walls left open have no corners to set out from. */
static void
test_open (void)
{
  g_autoptr (Project) project = with_building (project_new (), "8000 x 6000", 0, 0);
  g_autofree char *text = NULL;

  project = edited (project, edit_remove_wall (project_wall_at (project, 2)->id));
  text = rings_text (project);
  g_assert_cmpstr (text, ==, "");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/plan-ring/corners", test_rings);
  g_test_add_func ("/plan-ring/distance", test_distance);
  g_test_add_func ("/plan-ring/open", test_open);
  return g_test_run ();
}
