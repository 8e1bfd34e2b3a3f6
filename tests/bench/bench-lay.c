/* bench-lay.c - how long walls take to lay, and a project of many walls to load, lay and count
 *
 * Prints rows of data, tab-separated: what, pieces, rounds, median ms, slowest ms, peak MB. */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/resource.h>

#include "bond/lay.h"
#include "cli/jobs.h"
#include "store/store.h"
#include "takeoff/takeoff.h"

#define MANY 1000
#define HOUSE_WALLS 40

static void
print_row (const char *what, guint pieces, guint rounds, double median, double slowest)
{
  struct rusage usage;

  getrusage (RUSAGE_SELF, &usage);
  /* ru_maxrss is in KiB on Linux. */
  printf ("%s\t%u\t%u\t%.2f\t%.2f\t%.0f\n", what, pieces, rounds, median, slowest,
          (double) usage.ru_maxrss / 1024.0);
  fflush (stdout);
}

static int
compare_doubles (const void *a, const void *b)
{
  const double x = *(const double *) a, y = *(const double *) b;

  return (x > y) - (x < y);
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

/* A wall of about 250 pieces with two windows and a door, off the grid of its blocks. */
static char *
house_wall (guint number, guint longer)
{
  return g_strdup_printf ("<wall id=\"w%u\" block=\"k1\" length=\"%u\" height=\"2849\">"
                          "<end side=\"left\" return=\"250\" through=\"even\"/>"
                          "<opening id=\"a%u\" kind=\"window\" x=\"1810\" width=\"1180\" "
                          "sill=\"903\" height=\"1240\"/>"
                          "<opening id=\"b%u\" kind=\"window\" x=\"4935\" width=\"1570\" "
                          "sill=\"1031\" height=\"1110\"/>"
                          "<opening id=\"c%u\" kind=\"door\" x=\"8340\" width=\"990\" "
                          "sill=\"0\" height=\"2115\"/></wall>",
                          number, 12130 + longer, number, number, number);
}

/* A wall of about 1,000 pieces on two storeys, with nine openings. */
static char *
hall_wall (void)
{
  g_autoptr (GString) text
      = g_string_new ("<wall id=\"w1\" block=\"k1\" length=\"27400\" height=\"5230\">");

  for (guint i = 0; i < 9; i++)
    g_string_append_printf (text,
                            "<opening id=\"o%u\" kind=\"window\" x=\"%u\" width=\"1210\" "
                            "sill=\"%u\" height=\"1240\"/>",
                            i, 1100 + i * 2890 + i * i * 7, i % 2 ? 3105 : 903);
  g_string_append (text, "</wall>");
  return g_string_free (g_steal_pointer (&text), FALSE);
}

static void
measure_wall (const char *what, const char *wall_text, guint rounds)
{
  g_autoptr (Project) project = project_of (wall_text);
  const Wall *wall = project_wall_at (project, 0);
  const Block *block = project_block (project, wall->block);
  g_autofree double *ms = g_new (double, rounds);
  guint pieces = 0;

  for (guint i = 0; i < rounds; i++)
    {
      const gint64 began = g_get_monotonic_time ();
      g_autoptr (Layout) layout = lay_wall (wall, block, NULL);
      ms[i] = (double) (g_get_monotonic_time () - began) / 1000.0;
      pieces = layout->pieces->len;
    }
  qsort (ms, rounds, sizeof *ms, compare_doubles);
  print_row (what, pieces, rounds, ms[rounds / 2], ms[rounds - 1]);
}

typedef struct
{
  const Project *project;
  Layout **layouts;
} Many;

static void
lay_one (guint i, gpointer data)
{
  Many *many = data;
  const Wall *wall = project_wall_at (many->project, i);

  many->layouts[i] = lay_wall (wall, project_block (many->project, wall->block), NULL);
}

/* All lengths differ, so that no answer can be used twice. */
static void
measure_many (void)
{
  g_autoptr (GString) walls = g_string_new (NULL);
  Layout *layouts[MANY];
  guint pieces = 0;

  for (guint i = 0; i < MANY; i++)
    {
      g_autofree char *wall = house_wall (i, 3 * i % 1201);
      g_string_append (walls, wall);
    }
  const gint64 began = g_get_monotonic_time ();
  g_autoptr (Project) project = project_of (walls->str);
  Many many = { .project = project, .layouts = layouts };
  jobs_run (MANY, lay_one, &many, "Laying walls");
  const gint64 laid = g_get_monotonic_time ();
  takeoff_free (takeoff_new (project, layouts, NULL));
  const gint64 counted = g_get_monotonic_time ();
  for (guint i = 0; i < MANY; i++)
    pieces += layouts[i]->pieces->len;
  const double count_ms = (double) (counted - laid) / 1000.0;
  const double all_ms = (double) (counted - began) / 1000.0;
  print_row ("count 1000 walls", pieces, 1, count_ms, count_ms);
  print_row ("load, lay and count 1000 walls", pieces, 1, all_ms, all_ms);
  for (guint i = 0; i < MANY; i++)
    layout_unref (layouts[i]);
}

/* What is sawn from what in a house of forty walls. */
static void
measure_saw (guint rounds)
{
  g_autoptr (GString) text = g_string_new (NULL);
  Layout *layouts[HOUSE_WALLS];
  double ms[21];
  guint pieces = 0;

  for (guint i = 0; i < HOUSE_WALLS; i++)
    {
      g_autofree char *wall = house_wall (i, 3 * i % 1201);
      g_string_append (text, wall);
    }
  g_autoptr (Project) project = project_of (text->str);
  Many many = { .project = project, .layouts = layouts };
  jobs_run (HOUSE_WALLS, lay_one, &many, "Laying walls");
  rounds = MIN (rounds, (guint) G_N_ELEMENTS (ms));
  for (guint i = 0; i < rounds; i++)
    {
      const gint64 began = g_get_monotonic_time ();
      g_ptr_array_unref (saw_plans_new (project, layouts, NULL, NULL));
      ms[i] = (double) (g_get_monotonic_time () - began) / 1000.0;
    }
  for (guint i = 0; i < HOUSE_WALLS; i++)
    {
      pieces += layouts[i]->pieces->len;
      layout_unref (layouts[i]);
    }
  qsort (ms, rounds, sizeof *ms, compare_doubles);
  print_row ("saw plan of a house of 40 walls", pieces, rounds, ms[rounds / 2], ms[rounds - 1]);
}

int
main (int argc, char **argv)
{
  const char *what = argc > 1 ? argv[1] : "";
  const guint rounds = argc > 2 ? (guint) atoi (argv[2]) : 21;
  g_autofree char *house = house_wall (1, 0), *hall = hall_wall ();

  if (!*what || strcmp (what, "house") == 0)
    measure_wall ("lay a wall with three openings", house, rounds);
  if (!*what || strcmp (what, "hall") == 0)
    measure_wall ("lay a large wall", hall, rounds);
  if (!*what || strcmp (what, "saw") == 0)
    measure_saw (rounds);
  if (!*what || strcmp (what, "many") == 0)
    measure_many ();
  return 0;
}
