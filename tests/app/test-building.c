/* test-building.c - a new building from typed sides, and the best turns, without a display */
#include <string.h>

#include "app/tool-building.h"
#include "app/turner.h"
#include "model/plan.h"

#define MM(mm) LENGTH_MM (mm)

static GArray *
sides_of (const char *text)
{
  g_autofree char *fault = NULL;
  GArray *sides = outline_parse (text, &fault);

  g_assert_null (fault);
  return sides;
}

/* The project with the building in it; NULL and the sentence. */
static Project *
built (const Project *project, const char *text, WallId *first, char **fault)
{
  g_autoptr (GArray) sides = sides_of (text);
  g_autoptr (GError) error = NULL;
  g_autoptr (Edit) edit
      = tool_building (project, sides, project_block_at (project, 0), MM (2500), first, &error);
  Project *next;

  if (!edit)
    {
      *fault = g_strdup (error->message);
      return NULL;
    }
  next = project_edit (project, edit, &error);
  g_assert_no_error (error);
  return next;
}

static void
assert_names (const Project *project, guint from, const char *expected)
{
  g_autoptr (GString) names = g_string_new (NULL);

  for (guint i = from; i < project->walls->len; i++)
    g_string_append_printf (names, "%s%s", i > from ? " " : "", project_wall_at (project, i)->name);
  g_assert_cmpstr (names->str, ==, expected);
}

/* A rectangle has a front; what is built after it has numbers, and stands beside it. */
static void
test_names_and_places (void)
{
  g_autoptr (Project) empty = project_new ();
  WallId first;
  g_autofree char *fault = NULL;
  g_autoptr (Project) one = built (empty, "8000 x 6000", &first, &fault);
  g_autoptr (Project) two = NULL;
  g_autoptr (GArray) meetings = NULL;

  assert_names (one, 0, "Front Right Back Left");
  g_assert_cmpuint (first.n, ==, project_wall_at (one, 0)->id.n);
  two = built (one, "5000 4000 3000 R 1000 2000 5000", &first, &fault);
  assert_names (two, 4, "Wall 5 Wall 6 Wall 7 Wall 8 Wall 9 Wall 10");
  g_assert_cmpuint (first.n, ==, project_wall_at (two, 4)->id.n);
  meetings = plan_meetings (two);
  g_assert_cmpuint (meetings->len, ==, 4 + 6);
  for (guint i = 0; i < meetings->len; i++)
    g_assert_cmpint (g_array_index (meetings, Meeting, i).kind, ==, MEET_CORNER);
  g_assert_cmpint (project_wall_at (two, 4)->place.x, ==, MM (10000));
}

/* Sides too short for their walls' thickness are told of, and nothing is built. */
static void
test_no_room (void)
{
  g_autoptr (Project) empty = project_new ();
  g_autofree char *fault = NULL;
  WallId first;

  g_assert_null (built (empty, "8000 x 400", &first, &fault));
  g_assert_nonnull (strstr (fault, "in each other’s way"));
  g_assert_cmpuint (empty->walls->len, ==, 0);
}

static void
test_text (void)
{
  static const struct
  {
    const char *sides, *text;
  } rows[] = {
    { "8000 x 6000", "4 walls, 28 m round, 48 m² outside" },
    /* 9 x 4 and 6 x 3 m. */
    { "9000 4000 3000 R 3000 6000 7000", "6 walls, 32 m round, 54 m² outside" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (GArray) sides = sides_of (rows[i].sides);
      g_autofree char *text = tool_outline_text (sides);

      g_assert_cmpstr (text, ==, rows[i].text);
    }
}

/* ---- turns ---- */

typedef struct
{
  GMainLoop *loop;
  char *sentence;
  gboolean better;
  guint n_told;
} Told;

static void
told_cb (const char *sentence, gboolean better, gpointer data)
{
  Told *told = data;

  told->n_told++;
  if (!sentence)
    return;
  g_free (told->sentence);
  told->sentence = g_strdup (sentence);
  told->better = better;
  g_main_loop_quit (told->loop);
}

/* Nothing was told: the one who waits says so. */
static gboolean
late_cb (gpointer data)
{
  g_main_loop_quit (data);
  return G_SOURCE_CONTINUE;
}

static void
wait_told (Told *told)
{
  const guint late = g_timeout_add_seconds (60, late_cb, told->loop);

  g_main_loop_run (told->loop);
  g_source_remove (late);
  g_assert_nonnull (told->sentence);
}

/* What is found is set in one step; looked for again, it is the best already. */
static void
test_turns (void)
{
  g_autoptr (HbDocument) document = hb_document_new ();
  Told told = { g_main_loop_new (NULL, FALSE), NULL, FALSE, 0 };
  g_autoptr (HbTurner) turner = hb_turner_new (document, told_cb, &told);
  g_autoptr (GArray) sides = sides_of ("4130 x 3310");
  g_autoptr (GError) error = NULL;
  WallId first;
  guint steps;

  g_assert_false (hb_turner_can (turner));
  {
    const Project *project = hb_document_get_project (document);
    g_autoptr (Edit) edit
        = tool_building (project, sides, project_block_at (project, 0), MM (1000), &first, &error);

    g_assert_no_error (error);
    g_assert_true (hb_document_apply (document, edit, "New building", &error));
  }
  g_assert_true (hb_turner_can (turner));
  for (int again = 0; again < 2; again++)
    {
      hb_turner_start (turner);
      g_assert_true (hb_turner_is_running (turner));
      wait_told (&told);
      g_assert_false (hb_turner_is_running (turner));
      steps = hb_document_n_steps (document);
      if (again)
        {
          g_assert_false (told.better);
          g_assert_nonnull (strstr (told.sentence, "the best way already"));
        }
      else
        g_assert_nonnull (strstr (told.sentence, "cuts"));
      g_assert_true (hb_turner_apply (turner, &error));
      g_assert_cmpuint (hb_document_n_steps (document), ==, steps + (told.better ? 1 : 0));
    }
  g_free (told.sentence);
  g_main_loop_unref (told.loop);
}

/* A change stops the search, and what was found before it is not set. */
static void
test_turns_are_overtaken (void)
{
  g_autoptr (HbDocument) document = hb_document_new ();
  Told told = { g_main_loop_new (NULL, FALSE), NULL, FALSE, 0 };
  g_autoptr (HbTurner) turner = hb_turner_new (document, told_cb, &told);
  g_autoptr (GArray) sides = sides_of ("4130 x 3310");
  WallId first;
  g_autoptr (Edit) edit = NULL;
  guint steps;

  {
    const Project *project = hb_document_get_project (document);

    edit = tool_building (project, sides, project_block_at (project, 0), MM (1000), &first, NULL);
  }
  g_assert_true (hb_document_apply (document, edit, "New building", NULL));
  hb_turner_start (turner);
  hb_document_undo (document);
  g_assert_false (hb_turner_is_running (turner));
  steps = hb_document_n_steps (document);
  g_assert_true (hb_turner_apply (turner, NULL));
  g_assert_cmpuint (hb_document_n_steps (document), ==, steps);
  g_assert_null (told.sentence);
  g_main_loop_unref (told.loop);
}

/* Drawn where it is drawn; left open, its walls have numbers and run on through what they end at.
 */
static void
test_drawn (void)
{
  g_autoptr (Project) empty = project_new ();
  const Block *block = project_block_at (empty, 0);
  g_autoptr (GArray) sides = sides_of ("8000 x 6000");
  g_autoptr (GArray) trace = trace_new ();
  g_autoptr (GError) error = NULL;
  WallId first;
  g_autoptr (Edit) edit
      = tool_building_at (empty, sides, block, MM (2500), MM (-700), MM (300), &first, &error);
  g_assert_no_error (error);
  g_autoptr (Project) one = project_edit (empty, edit, &error);
  const TraceCorner corners[] = { { MM (-700), MM (6000) },
                                  { MM (-4000), MM (6000) },
                                  { MM (-4000), MM (1000) },
                                  { MM (-700), MM (1000) } };

  g_assert_no_error (error);
  assert_names (one, 0, "Front Right Back Left");
  g_assert_cmpint (project_wall_at (one, 0)->place.x, ==, MM (-700));
  g_assert_cmpint (project_wall_at (one, 0)->place.y, ==, MM (300));
  /* A lean-to at the left wall, whose outer face is at -700: its ends go through it. */
  g_array_append_vals (trace, corners, G_N_ELEMENTS (corners));
  g_autoptr (Edit) more = tool_walls (one, trace, block, MM (2500), &first, &error);
  g_assert_no_error (error);
  g_autoptr (Project) two = project_edit (one, more, &error);
  g_assert_no_error (error);
  assert_names (two, 4, "Wall 5 Wall 6 Wall 7");
  g_assert_cmpint (project_wall_at (two, 4)->length, ==, MM (3300 + 250));
  g_assert_cmpint (project_wall_at (two, 6)->length, ==, MM (3300 + 250));
  g_autoptr (GArray) meetings = plan_meetings_of (two, 3);
  guint tees = 0;
  for (guint i = 0; i < meetings->len; i++)
    tees += g_array_index (meetings, Meeting, i).kind == MEET_TEE;
  g_assert_cmpuint (tees, ==, 2);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/building/names-and-places", test_names_and_places);
  g_test_add_func ("/building/no-room", test_no_room);
  g_test_add_func ("/building/text", test_text);
  g_test_add_func ("/building/turns", test_turns);
  g_test_add_func ("/building/turns-are-overtaken", test_turns_are_overtaken);
  g_test_add_func ("/building/drawn", test_drawn);
  return g_test_run ();
}
