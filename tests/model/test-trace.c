/* test-trace.c - outlines drawn by hand, corner by corner */
#include "model/trace.h"

#include <string.h>

#include "edited.h"
#include "model/plan.h"

#define MM(mm) LENGTH_MM (mm)

/* "E8000 N6000": from a place, sides with their ways. */
static GArray *
drawn (double x, double y, const char *text)
{
  static const char ways[] = "ENWS";
  GArray *trace = trace_new ();
  g_auto (GStrv) words = g_strsplit (text, " ", -1);
  const TraceCorner first = { MM (x), MM (y) };

  g_array_append_val (trace, first);
  for (guint i = 0; words[i] != NULL && *words[i]; i++)
    trace_go (trace, (Runs) (strchr (ways, *words[i]) - ways),
              MM (g_ascii_strtod (words[i] + 1, NULL)));
  return trace;
}

/* "8000 6000 R 8000 @ 0 0", or the fault. */
static char *
outline_text (const GArray *trace)
{
  Length x, y;
  char *fault;
  g_autoptr (GArray) sides = trace_outline (trace, &x, &y, &fault);
  GString *text;

  if (sides == NULL)
    return fault;
  text = g_string_new (NULL);
  for (guint i = 0; i < sides->len; i++)
    {
      const OutlineSide *side = &g_array_index (sides, OutlineSide, i);

      g_string_append_printf (text, "%g %s", length_to_mm (side->length), side->right ? "R " : "");
    }
  g_string_append_printf (text, "@ %g %g", length_to_mm (x), length_to_mm (y));
  return g_string_free (text, FALSE);
}

static void
test_outlines (void)
{
  static const struct
  {
    double x, y;
    const char *drawn, *outline;
  } rows[] = {
    { 0, 0, "E8000 N6000 W8000 S6000", "8000 6000 8000 6000 @ 0 0" },
    /* The last side is the one that is missing. */
    { 0, 0, "E8000 N6000 W8000", "8000 6000 8000 6000 @ 0 0" },
    /* With the clock, from the upper right. */
    { 500, 700, "S6000 W8000 N6000 E8000", "8000 6000 8000 6000 @ -7500 -5300" },
    /* From within a side; a side in two parts. */
    { 3000, 0, "E5000 N6000 W8000 S6000 E3000", "8000 6000 8000 6000 @ 0 0" },
    { 0, 0, "E3000 E5000 N6000 W8000 S6000", "8000 6000 8000 6000 @ 0 0" },
    /* Too far and back again. */
    { 0, 0, "E9000 W1000 N6000 W8000 S6000", "8000 6000 8000 6000 @ 0 0" },
    { 0, 0, "E9000 N4000 W3000 N3000 W6000 S7000", "9000 4000 3000 R 3000 6000 7000 @ 0 0" },
    /* The side that is missing would go back along the first, or along the last. */
    { 0, 0, "E8000 N6000 W7900 S6000",
      "The outline does not close: its end is 100 mm to the east of its beginning." },
    { 0, 0, "E8000 N6000 W8000 S6100",
      "The outline does not close: its end is 100 mm to the south of its beginning." },
    { 0, 0, "E8000 N6000 W9000 S6000 E1000", "9000 6000 9000 6000 @ -1000 0" },
    { 0, 0, "E8000 N6000 W5000 S6000 W3000",
      "The outline goes back along one of its sides." },
    { 0, 0, "E8000 N6000 W7900 S5900",
      "The outline does not close: its end is 100 mm to the east and 100 mm to the north of its "
      "beginning." },
    { 0, 0, "E8000 N6000", "An outline has four sides at least." },
    { 0, 0, "", "An outline has four sides at least." },
    { 0, 0, "E8000 N6000 W3000 S6000 W1000 N6000 W4000",
      "Sides 1 and 4 of the outline cross or touch, 5000 mm east and 0 mm north of its "
      "beginning." },
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (GArray) trace = drawn (rows[i].x, rows[i].y, rows[i].drawn);
      g_autofree char *text = outline_text (trace);

      g_test_message ("%s", rows[i].drawn);
      g_assert_cmpstr (text, ==, rows[i].outline);
    }
}

static void
test_steps (void)
{
  g_autoptr (GArray) trace = drawn (0, 0, "E8000 N6000");
  gint64 east, north;

  trace_gap (trace, &east, &north);
  g_assert_cmpint (east, ==, MM (8000));
  g_assert_cmpint (north, ==, MM (6000));
  g_assert_false (trace_can_close (trace));
  /* Straight back along the last side, and beyond its beginning. */
  trace_go (trace, RUNS_SOUTH, MM (6000));
  g_assert_cmpuint (trace_n_sides (trace), ==, 1);
  trace_go (trace, RUNS_WEST, MM (9000));
  g_assert_cmpuint (trace_n_sides (trace), ==, 1);
  g_assert_cmpint (trace_way (trace, 0), ==, RUNS_WEST);
  g_assert_cmpint (trace_length (trace, 0), ==, MM (1000));
  g_assert_true (trace_back (trace));
  g_assert_true (trace_back (trace));
  g_assert_false (trace_back (trace));
  trace_go (trace, RUNS_EAST, MM (1000));
  g_assert_cmpuint (trace->len, ==, 0);
}

/* A base with towers on it: from any corner, either way round, closed or one side short of it, it
 * is the same outline. */
static void
test_any (void)
{
  for (int round = 0; round < 200; round++)
    {
      g_autoptr (GArray) trace = drawn (g_test_rand_int_range (-9000, 9000), 100, "");
      const int n = g_test_rand_int_range (1, 6);
      int width = 0, up = 0;
      g_autofree char *expected = NULL;
      guint corners;

      for (int i = 0; i < n; i++)
        {
          const int wide = g_test_rand_int_range (300, 3000);
          int tall = 0;

          do
            tall = g_test_rand_int_range (300, 5000);
          while (ABS (tall - up) < 200);
          trace_go (trace, tall > up ? RUNS_SOUTH : RUNS_NORTH, MM (ABS (tall - up)));
          trace_go (trace, RUNS_EAST, MM (wide));
          width += wide;
          up = tall;
        }
      trace_go (trace, RUNS_NORTH, MM (up));
      expected = outline_text (trace);
      g_test_message ("%s", expected);
      g_assert_nonnull (strstr (expected, "@"));
      trace_go (trace, RUNS_WEST, MM (width));
      corners = trace_n_sides (trace);
      for (guint from = 0; from < corners; from++)
        for (int back = 0; back < 2; back++)
          {
            g_autoptr (GArray) other = trace_new ();
            g_autofree char *text = NULL;

            for (guint k = 0; k <= corners; k++)
              g_array_append_val (
                  other,
                  *trace_corner (trace, (from + (back ? corners - k % corners : k)) % corners));
            if (g_test_rand_bit ())
              trace_back (other);
            text = outline_text (other);
            g_assert_cmpstr (text, ==, expected);
          }
    }
}

/* Walls of an angle left open meet at its corners, and nowhere else. */
static void
test_open (void)
{
  g_autoptr (GArray) trace = drawn (0, 0, "E4000 N3000 E2000 S1000");
  g_autoptr (GPtrArray) walls = trace_walls (trace, MM (250), MM (2500));
  g_autoptr (Project) project = edited (project_new (), edit_walls (walls));
  g_autoptr (GArray) meetings = plan_meetings (project);
  const double lengths[] = { 4000, 3250, 2500, 1250 };

  g_assert_cmpuint (project->walls->len, ==, 4);
  g_assert_cmpuint (meetings->len, ==, 3);
  for (guint i = 0; i < 3; i++)
    g_assert_cmpint (g_array_index (meetings, Meeting, i).kind, ==, MEET_CORNER);
  for (guint i = 0; i < 4; i++)
    g_assert_cmpfloat (length_to_mm (project_wall_at (project, i)->length), ==, lengths[i]);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/trace/outlines", test_outlines);
  g_test_add_func ("/trace/steps", test_steps);
  g_test_add_func ("/trace/any", test_any);
  g_test_add_func ("/trace/left-open", test_open);
  return g_test_run ();
}
