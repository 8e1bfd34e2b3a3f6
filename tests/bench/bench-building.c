/* bench-building.c - walls that meet in plan, as the open document and its worker threads lay them
 *
 * Usage: bench-building house|many [ROUNDS], or write HOUSE MANY, their files. A made-up house of
 * 24 walls with corners, tees and openings, and 1,000 walls in 250 plans. Prints rows of data,
 * tab-separated: what, walls, pieces, rounds; ms until it was done, median, 95 of 100 and slowest;
 * ms of processor of all threads, median; peak MB. */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/resource.h>
#include <time.h>
#include <glib/gstdio.h>
#include <unistd.h>

#include "app/answers.h"
#include "app/document.h"
#include "model/outline.h"
#include "model/plan-edit.h"

#define MM(mm) LENGTH_MM (mm)
#define THICKNESS MM (250)
#define HEIGHT MM (2999)
#define WIDE MM (23830)
#define DEEP MM (15470)
#define PLANS 250                           /* plans of the many */
#define STEPS 200                           /* of a hand */
#define EVENT (8 * G_TIME_SPAN_MILLISECOND) /* from one to the next */

/* --- the house --- */

static Wall *
wall_at (Length x, Length y, Runs runs, Length length)
{
  Wall *wall = wall_new ();

  wall->length = length;
  wall->height = HEIGHT;
  wall->place = (PlanPlace){ TRUE, x, y, runs };
  return wall;
}

static void
open_at (Wall *wall, OpeningKind kind, Length x, Length width)
{
  Opening opening = { .kind = kind, .x = x, .width = width };

  opening.name = g_strdup_printf (kind == OPENING_DOOR ? "D%u" : "W%u", wall->openings->len + 1);
  opening.sill = kind == OPENING_DOOR ? 0 : MM (897);
  opening.height = kind == OPENING_DOOR ? MM (2113) : MM (1219);
  g_array_append_val (wall->openings, opening);
}

/* From one spine to the next, north, its outer face at x; a door in the middle. */
static void
add_room_wall (GPtrArray *walls, Length x, Length from, Length to)
{
  Wall *wall = wall_at (x, from, RUNS_NORTH, to - from);

  open_at (wall, OPENING_DOOR, (to - from) / 2 - MM (450), MM (905));
  g_ptr_array_add (walls, wall);
}

static void
open_in_a_row (Wall *wall, OpeningKind kind, guint n, Length width)
{
  for (guint i = 0; i < n; i++)
    open_at (wall, kind, wall->length / (Length) n * (Length) i + MM (1137) + MM (7) * (Length) i,
             width);
}

/* Four outer walls, two spines along the house, and six walls across each of its three strips. */
static void
add_house (GPtrArray *walls)
{
  const Length across[] = { 0, DEEP / 3, 2 * (DEEP / 3), DEEP - THICKNESS };
  Wall *outer[] = { wall_at (0, 0, RUNS_EAST, WIDE), wall_at (WIDE, 0, RUNS_NORTH, DEEP),
                    wall_at (WIDE, DEEP, RUNS_WEST, WIDE), wall_at (0, DEEP, RUNS_SOUTH, DEEP) };

  for (guint i = 0; i < G_N_ELEMENTS (outer); i++)
    {
      open_in_a_row (outer[i], OPENING_WINDOW, i % 2 ? 3 : 7, MM (1211));
      g_ptr_array_add (walls, outer[i]);
    }
  for (guint i = 1; i < 3; i++)
    {
      Wall *spine = wall_at (0, across[i], RUNS_EAST, WIDE);

      open_in_a_row (spine, OPENING_DOOR, 7, MM (905));
      g_ptr_array_add (walls, spine);
    }
  for (guint i = 0; i < 3; i++)
    for (guint k = 1; k <= 6; k++)
      add_room_wall (walls, WIDE / 7 * (Length) k + (i == 1 ? MM (600) : 0), across[i],
                     across[i + 1] + THICKNESS);
}

/* Four walls round a room, each otherwise long than those of any other plan. */
static void
add_plan (GPtrArray *walls, guint number)
{
  const Length wide = MM (7013) + MM (3) * (Length) number;
  const Length deep = MM (5021) + MM (2) * (Length) number;
  const Length x = MM (12000) * (Length) (number % 16), y = MM (9000) * (Length) (number / 16);
  Wall *outer[]
      = { wall_at (x, y, RUNS_EAST, wide), wall_at (x + wide, y, RUNS_NORTH, deep),
          wall_at (x + wide, y + deep, RUNS_WEST, wide), wall_at (x, y + deep, RUNS_SOUTH, deep) };

  for (guint i = 0; i < G_N_ELEMENTS (outer); i++)
    {
      open_in_a_row (outer[i], i == 0 ? OPENING_DOOR : OPENING_WINDOW, i % 2 ? 1 : 2, MM (1007));
      g_ptr_array_add (walls, outer[i]);
    }
}

/* Writes a file of the walls, which meet as the program makes them meet. */
static void
write_file (const GPtrArray *walls, const char *path)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (Project) empty = project_new ();
  g_autoptr (Project) sized = NULL, project = NULL;
  g_autoptr (Edit) of_block = NULL, of_walls = edit_walls (walls);
  Block block = block_copy (project_block_at (empty, 0));

  block.length = MM (600);
  block.height = MM (200);
  block.thickness = THICKNESS;
  of_block = edit_set_block (&block);
  block_clear (&block);
  if (!(sized = project_edit (empty, of_block, &error))
      || !(project = project_edit (sized, of_walls, &error))
      || !store_write (project, path, &error))
    g_error ("%s", error->message);
}

/* The same under a name of its own; to be removed. */
static char *
file_of (const GPtrArray *walls)
{
  g_autoptr (GError) error = NULL;
  char *path = NULL;
  int file = g_file_open_tmp ("halfbond-XXXXXX.halfbond", &path, &error);

  if (file < 0)
    g_error ("%s", error->message);
  close (file);
  write_file (walls, path);
  return path;
}

/* --- clocks --- */

typedef struct
{
  gint64 began;
  double processor;
} Clock;

static double
processor_ms (void)
{
  struct timespec now;

  clock_gettime (CLOCK_PROCESS_CPUTIME_ID, &now);
  return (double) now.tv_sec * 1e3 + (double) now.tv_nsec / 1e6;
}

static Clock
clock_start (void)
{
  return (Clock){ g_get_monotonic_time (), processor_ms () };
}

typedef struct
{
  GArray *ms, *processor; /* double, one of each round */
} Times;

static Times
times_new (void)
{
  return (Times){ g_array_new (FALSE, FALSE, sizeof (double)),
                  g_array_new (FALSE, FALSE, sizeof (double)) };
}

static void
times_add (Times *times, const Clock *clock)
{
  const double ms = (double) (g_get_monotonic_time () - clock->began) / 1e3;
  const double processor = processor_ms () - clock->processor;

  g_array_append_val (times->ms, ms);
  g_array_append_val (times->processor, processor);
}

static gint
compare_doubles (gconstpointer a, gconstpointer b)
{
  const double x = *(const double *) a, y = *(const double *) b;

  return (x > y) - (x < y);
}

static double
quantile (const GArray *values, guint hundredths)
{
  return g_array_index (values, double, (values->len - 1) * hundredths / 100);
}

/* Prints a row and frees them. */
static void
times_print (Times *times, const char *what, guint walls, guint pieces)
{
  struct rusage usage;

  g_array_sort (times->ms, compare_doubles);
  g_array_sort (times->processor, compare_doubles);
  getrusage (RUSAGE_SELF, &usage);
  printf ("%s\t%u\t%u\t%u\t%.2f\t%.2f\t%.2f\t%.2f\t%.0f\n", what, walls, pieces, times->ms->len,
          quantile (times->ms, 50), quantile (times->ms, 95), quantile (times->ms, 100),
          quantile (times->processor, 50), (double) usage.ru_maxrss / 1024.0);
  fflush (stdout);
  g_array_unref (times->ms);
  g_array_unref (times->processor);
}

/* --- the open document --- */

typedef struct
{
  HbDocument *document;
  HbAnswers *answers;
} Open;

static const Project *
project_of (const Open *open)
{
  return hb_document_get_project (open->document);
}

static Open
open_file (const char *path)
{
  g_autoptr (GError) error = NULL;
  Open open = { hb_document_new (), NULL };

  open.answers = hb_answers_new (open.document);
  if (!hb_document_open (open.document, path, &error))
    g_error ("%s", error->message);
  hb_answers_set_wall (open.answers, project_wall_at (project_of (&open), 0)->id);
  return open;
}

static void
open_clear (Open *open)
{
  hb_answers_stop (open->answers);
  g_object_unref (open->answers);
  g_object_unref (open->document);
}

static gboolean
all_laid (const Open *open)
{
  const Project *project = project_of (open);

  for (guint i = project->walls->len; i-- > 0;)
    if (!hb_answers_get_layout (open->answers, project_wall_at (project, i)->id))
      return FALSE;
  return TRUE;
}

static gboolean
first_laid (const Open *open)
{
  return hb_answers_get_layout (open->answers, hb_answers_get_wall (open->answers)) != NULL;
}

static gboolean
all_known (const Open *open)
{
  return hb_answers_is_settled (open->answers) && all_laid (open);
}

static void
run_until (const Open *open, gboolean (*is_done) (const Open *))
{
  while (!is_done (open))
    g_main_context_iteration (NULL, TRUE);
}

static guint
count_pieces (const Open *open)
{
  const Project *project = project_of (open);
  guint pieces = 0;

  for (guint i = 0; i < project->walls->len; i++)
    pieces += hb_answers_get_layout (open->answers, project_wall_at (project, i)->id)->pieces->len;
  return pieces;
}

/* What comes between two events: whatever lands. */
static void
until_next_event (const Clock *clock)
{
  while (g_get_monotonic_time () - clock->began < EVENT)
    if (!g_main_context_iteration (NULL, FALSE))
      g_usleep (200);
}

/* --- what is measured --- */

/* All walls anew: their block is one millimetre shorter, and longer again, in the end as drawn. */
static void
measure_all (Open *open, guint rounds)
{
  Times laid = times_new (), known = times_new ();

  for (guint i = 0; i < (rounds + 1) / 2 * 2; i++)
    {
      Block block = block_copy (project_block_at (project_of (open), 0));
      g_autoptr (Edit) edit = NULL;
      Clock clock;

      block.length = i % 2 ? MM (600) : MM (599);
      edit = edit_set_block (&block);
      block_clear (&block);
      clock = clock_start ();
      hb_document_apply (open->document, edit, "", NULL);
      run_until (open, all_laid);
      times_add (&laid, &clock);
      run_until (open, all_known);
      times_add (&known, &clock);
    }
  const guint walls = project_of (open)->walls->len, pieces = count_pieces (open);
  times_print (&laid, "lay all walls anew", walls, pieces);
  times_print (&known, "the same, counted and judged", walls, pieces);
}

static Length
swing (guint step)
{
  const guint at = step % 100;

  return MM (at < 50 ? (gint) at : 100 - (gint) at);
}

/* One opening of a wall is pulled to and fro: what an event costs the main thread, and when the
 * wall's new pieces are there to be drawn. */
static void
measure_drag (Open *open, guint wall_index, guint steps, const char *what)
{
  const Wall *wall = project_wall_at (project_of (open), wall_index);
  const Opening drawn = *wall_opening_at (wall, wall->openings->len / 2);
  const WallId id = wall->id;
  Times event = times_new (), shown = times_new ();
  const guint walls = project_of (open)->walls->len;

  hb_answers_set_wall (open->answers, id);
  run_until (open, all_known);
  const guint pieces = hb_answers_get_layout (open->answers, id)->pieces->len;
  for (guint i = 0; i < steps; i++)
    {
      Opening moved = drawn;
      g_autoptr (Edit) edit = NULL;
      const Clock clock = clock_start ();

      opening_move (&moved, drawn.x + swing (i));
      edit = edit_set_opening (&moved);
      if (!hb_document_preview (open->document, edit, NULL))
        g_error ("the opening cannot stand there");
      times_add (&event, &clock);
      run_until (open, first_laid);
      times_add (&shown, &clock);
      until_next_event (&clock);
    }
  hb_document_drop_preview (open->document);
  g_autofree char *until = g_strdup_printf ("%s, until its pieces are there", what);
  times_print (&event, what, walls, pieces);
  times_print (&shown, until, walls, pieces);
}

/* A wall is pushed in plan, and those that end at it follow. */
static void
measure_push (Open *open, guint wall_index, guint steps)
{
  const WallId id = project_wall_at (project_of (open), wall_index)->id;
  Times event = times_new (), followed = times_new ();
  guint changed = 0, pieces = 0;

  hb_answers_set_wall (open->answers, id);
  run_until (open, all_known);
  for (guint i = 1; i <= steps; i++)
    {
      const Length by = swing (i) == 0 ? MM (51) : swing (i);
      g_autoptr (GError) error = NULL;
      g_autoptr (Project) before = NULL;
      g_autoptr (Edit) edit = NULL;
      Clock clock;

      hb_document_drop_preview (open->document);
      run_until (open, all_laid);
      before = project_ref (project_of (open));
      clock = clock_start ();
      edit = plan_push (before, id, by, &error);
      if (!edit || !hb_document_preview (open->document, edit, &error))
        g_error ("%s", error->message);
      times_add (&event, &clock);
      run_until (open, all_laid);
      times_add (&followed, &clock);
      changed = pieces = 0;
      for (guint k = 0; k < before->walls->len; k++)
        {
          const Wall *wall = project_wall_at (project_of (open), k);

          if (wall == project_wall_at (before, k))
            continue;
          changed++;
          pieces += hb_answers_get_layout (open->answers, wall->id)->pieces->len;
        }
    }
  hb_document_drop_preview (open->document);
  run_until (open, all_known);
  times_print (&event, "push in plan, an event", changed, pieces);
  times_print (&followed, "push in plan, until all that follow are laid", changed, pieces);
}

static void
measure_house (guint rounds)
{
  g_autoptr (GPtrArray) walls = wall_list_new ();
  g_autofree char *path = NULL;
  Open open;

  add_house (walls);
  path = file_of (walls);
  open = open_file (path);
  run_until (&open, all_known);
  measure_all (&open, rounds);
  measure_drag (&open, 0, STEPS, "drag in the front, an event");
  measure_drag (&open, 1, STEPS, "drag in a side wall, an event");
  measure_push (&open, 4, STEPS);
  open_clear (&open);
  if (!g_getenv ("KEEP"))
    g_remove (path);
  else
    puts (path);
}

/* A file of many plans: until the list and the first wall can be drawn, until every wall is laid,
 * and until all is counted; then what a hand feels in so large a project. */
static void
measure_many (guint rounds)
{
  g_autoptr (GPtrArray) walls = wall_list_new ();
  g_autofree char *path = NULL;
  Times first = times_new (), laid = times_new (), known = times_new ();
  guint pieces = 0;

  for (guint i = 0; i < PLANS; i++)
    add_plan (walls, i);
  path = file_of (walls);
  for (guint i = 0; i < rounds; i++)
    {
      const Clock clock = clock_start ();
      Open open = open_file (path);

      run_until (&open, first_laid);
      times_add (&first, &clock);
      run_until (&open, all_laid);
      times_add (&laid, &clock);
      run_until (&open, all_known);
      times_add (&known, &clock);
      pieces = count_pieces (&open);
      if (i + 1 == rounds)
        {
          measure_drag (&open, 400, STEPS, "drag in one of them, an event");
          measure_push (&open, 400, STEPS);
        }
      open_clear (&open);
    }
  times_print (&first, "open, until the first wall is laid", walls->len, pieces);
  times_print (&laid, "open, until all walls are laid", walls->len, pieces);
  times_print (&known, "open, until all is counted", walls->len, pieces);
  if (!g_getenv ("KEEP"))
    g_remove (path);
  else
    puts (path);
}

/* The files themselves, for bench-drag.py. */
static void
write_them (const char *house, const char *many)
{
  g_autoptr (GPtrArray) of_house = wall_list_new (), of_many = wall_list_new ();

  add_house (of_house);
  write_file (of_house, house);
  for (guint i = 0; i < PLANS; i++)
    add_plan (of_many, i);
  write_file (of_many, many);
}

int
main (int argc, char **argv)
{
  const char *what = argc > 1 ? argv[1] : "";
  const guint rounds = argc > 2 ? (guint) atoi (argv[2]) : 0;

  if (strcmp (what, "write") == 0 && argc == 4)
    write_them (argv[2], argv[3]);
  if (!*what || strcmp (what, "house") == 0)
    measure_house (rounds ? rounds : 21);
  if (!*what || strcmp (what, "many") == 0)
    measure_many (rounds ? rounds : 3);
  return 0;
}
