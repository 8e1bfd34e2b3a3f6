/* bench-advice.c - how long the strips of an opening take, the advice on a wall, and improve all
 *
 * Prints rows of data, tab-separated: what, pieces, walls laid, rounds, median ms, slowest ms, and
 * ms of processor on average: on two free cores a strip takes half of that. */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/resource.h>

#include "advice/crew.h"
#include "advice/improve.h"
#include "advice/place.h"
#include "advice/saving.h"
#include "bond/lay.h"
#include "store/store.h"

#define THREADS 2

typedef struct
{
  const Wall *wall;
  const Block *block;
  OpeningId opening;
  Shift shift;
  Look look;
  GArray *at;     /* Length */
  GArray *places; /* Place */
} Strip;

/* Those that a first look was not enough for, at a second one. */
static gboolean
try_one (guint i, gpointer data)
{
  Strip *strip = data;
  Place *place = &g_array_index (strip->places, Place, i);

  if (strip->look == LOOK_LAID && (!place->possible || place->cost.as_laid))
    return TRUE;
  place->at = g_array_index (strip->at, Length, i);
  return place_try (strip->wall, strip->block, strip->opening, strip->shift, strip->look, place,
                    NULL);
}

/* A first look, and up to `look` a second one, as the window does it. Places. */
static guint
run_strip (const Wall *wall, const Block *block, OpeningId opening, Shift shift, Look look)
{
  Strip strip = {
    wall, block, opening, shift, LOOK_FIRST, NULL, g_array_new (FALSE, TRUE, sizeof (Place))
  };
  guint n;

  strip.at = places_list (wall, block, opening, shift, LENGTH_MM (300), LENGTH_MM (5));
  n = strip.at->len;
  g_array_set_size (strip.places, n);
  for (; strip.look <= look; strip.look++)
    crew_run (n, THREADS, try_one, &strip);
  g_array_unref (strip.at);
  g_array_unref (strip.places);
  return n;
}

static int
compare_doubles (const void *a, const void *b)
{
  const double x = *(const double *) a, y = *(const double *) b;

  return (x > y) - (x < y);
}

/* ms of processor so far, of all threads. */
static double
processor_ms (void)
{
  struct rusage usage;

  getrusage (RUSAGE_SELF, &usage);
  return (double) (usage.ru_utime.tv_sec + usage.ru_stime.tv_sec) * 1000.0
         + (double) (usage.ru_utime.tv_usec + usage.ru_stime.tv_usec) / 1000.0;
}

static void
print_row (const char *what, const char *of, guint pieces, guint laid, double *ms, guint rounds,
           double processor)
{
  qsort (ms, rounds, sizeof *ms, compare_doubles);
  printf ("%s %s\t%u\t%u\t%u\t%.1f\t%.1f\t%.1f\n", what, of, pieces, laid, rounds, ms[rounds / 2],
          ms[rounds - 1], processor / rounds);
  fflush (stdout);
}

static void
measure_strips (const char *of, const Wall *wall, const Block *block, Look look, guint pieces,
                guint rounds)
{
  static const char *const whats[N_SHIFTS]
      = { "strip along", "strip of the sill", "strip of the head" };
  g_autofree double *ms = g_new (double, rounds);

  for (guint o = 0; o < wall->openings->len; o++)
    for (int shift = 0; shift < N_SHIFTS; shift++)
      {
        const Opening *opening = wall_opening_at (wall, o);
        const double before = processor_ms ();
        guint laid = 0;

        if (shift == SHIFT_SILL && opening->kind == OPENING_DOOR)
          continue;
        for (guint i = 0; i < rounds; i++)
          {
            const gint64 began = g_get_monotonic_time ();

            laid = run_strip (wall, block, opening->id, (Shift) shift, look);
            ms[i] = (double) (g_get_monotonic_time () - began) / 1000.0;
          }
        g_autofree char *name = g_strdup_printf ("of %s, %s, %s", opening->key, of,
                                                 look == LOOK_FIRST ? "first look" : "exact");
        print_row (whats[shift], name, pieces, laid, ms, rounds, processor_ms () - before);
      }
}

static void
measure_savings (const char *of, const Project *project, const Wall *wall, guint pieces,
                 guint rounds)
{
  g_autofree double *ms = g_new (double, rounds);
  const double before = processor_ms ();

  for (guint i = 0; i < rounds; i++)
    {
      const gint64 began = g_get_monotonic_time ();

      g_ptr_array_unref (savings_of_wall (project, wall, THREADS, NULL));
      ms[i] = (double) (g_get_monotonic_time () - began) / 1000.0;
    }
  print_row ("what would save,", of, pieces, 0, ms, rounds, processor_ms () - before);
}

/* Every opening free to move by so many millimetres. */
static void
measure_improve (const char *of, const Wall *wall, const Block *block, guint pieces, int move)
{
  const ImproveHow how = { LENGTH_MM (5), IMPROVE_WORK_LIVE, THREADS, NULL };
  g_autoptr (Wall) freed = wall_copy (wall);
  g_autofree char *name = NULL;
  const double before = processor_ms ();
  double ms;

  for (guint i = 0; i < freed->openings->len; i++)
    {
      Opening *opening = &g_array_index (freed->openings, Opening, i);

      opening->given |= OPENING_MAY_MOVE;
      opening->may_move = LENGTH_MM (move);
    }
  const gint64 began = g_get_monotonic_time ();
  g_autoptr (Improvement) found = improve_wall (freed, block, &how);
  ms = (double) (g_get_monotonic_time () - began) / 1000.0;
  name = g_strdup_printf ("%d mm, %s (%s)", move, of,
                          found->proven     ? "proven"
                          : found->compared ? "all compared"
                                            : "not proven");
  print_row ("improve all within", name, pieces, found->n_laid, &ms, 1, processor_ms () - before);
}

static Project *
project_of (const char *walls)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *text = g_strdup_printf (
      "<project xmlns=\"urn:halfbond:project:1\">"
      "<block id=\"k1\" length=\"600\" height=\"200\" thickness=\"250\" density=\"500\"/>%s"
      "</project>",
      walls);
  Project *project = store_read_bytes (text, strlen (text), "bench", &error);

  if (!project)
    g_error ("%s", error->message);
  return project;
}

/* The wall of bench-lay: about 250 pieces, two windows and a door. */
static const char house[] = "<wall id=\"w1\" block=\"k1\" length=\"12130\" height=\"2849\">"
                            "<end side=\"left\" return=\"250\" through=\"even\"/>"
                            "<opening id=\"a\" kind=\"window\" x=\"1810\" width=\"1180\" "
                            "sill=\"903\" height=\"1240\"/>"
                            "<opening id=\"b\" kind=\"window\" x=\"4935\" width=\"1570\" "
                            "sill=\"1031\" height=\"1110\"/>"
                            "<opening id=\"c\" kind=\"door\" x=\"8340\" width=\"990\" "
                            "sill=\"0\" height=\"2115\"/></wall>";

static void
measure_wall (const char *of, const Project *project, guint rounds)
{
  const Wall *wall = project_wall_at (project, 0);
  const Block *block = project_block (project, wall->block);
  g_autoptr (Layout) layout = lay_wall (wall, block, NULL);

  measure_strips (of, wall, block, LOOK_FIRST, layout->pieces->len, rounds);
  measure_strips (of, wall, block, LOOK_LAID, layout->pieces->len, 1);
  measure_savings (of, project, wall, layout->pieces->len, rounds);
  measure_improve (of, wall, block, layout->pieces->len, 30);
  measure_improve (of, wall, block, layout->pieces->len, 100);
}

int
main (int argc, char **argv)
{
  const guint rounds = argc > 2 ? (guint) atoi (argv[2]) : 5;
  g_autoptr (Project) wide = project_of (house);

  measure_wall ("250 pieces", wide, rounds);
  if (argc > 1)
    {
      g_autoptr (GError) error = NULL;
      g_autoptr (Project) example = store_read (argv[1], &error);

      if (!example)
        g_error ("%s", error->message);
      measure_wall ("example", example, rounds);
    }
  return 0;
}
