/* test-document.c - the document, the background and the tools, without a display */
#include <glib/gstdio.h>
#include <string.h>

#include "app/answers.h"
#include "app/document.h"
#include "app/fields.h"
#include "app/improver.h"
#include "app/job.h"
#include "app/places.h"
#include "app/tool.h"
#include "bond/gauge.h"
#include "bond/lay.h"

#define EXAMPLE HALFBOND_SOURCE_ROOT "/data/examples/garden-studio.halfbond"

/* ---- helpers ---- */

typedef struct
{
  char *folder;
  char *path;
} Files;

static void
files_set_up (Files *files, gconstpointer data)
{
  (void) data;
  files->folder = g_dir_make_tmp ("halfbond-XXXXXX", NULL);
  files->path = g_build_filename (files->folder, "wall.halfbond", NULL);
}

static void
files_tear_down (Files *files, gconstpointer data)
{
  (void) data;
  g_remove (files->path);
  g_rmdir (files->folder);
  g_free (files->path);
  g_free (files->folder);
}

/* A project of one wall, 6 m x 2.5 m, with a window of 1200 x 1200 mm at 1800, sill 1000. */
static void
add_wall (HbDocument *document)
{
  g_autoptr (Wall) wall = wall_new ();
  g_autoptr (Edit) edit = NULL;
  Opening window = opening_default (OPENING_WINDOW);

  window.x = LENGTH_MM (1800);
  window.sill = LENGTH_MM (1000);
  g_array_append_val (wall->openings, window);
  edit = edit_add_wall (wall);
  g_assert_true (hb_document_apply (document, edit, "Add a wall", NULL));
}

static const Wall *
wall_of (HbDocument *document)
{
  return project_wall_at (hb_document_get_project (document), 0);
}

static Edit *
length_edit (HbDocument *document, int mm)
{
  g_autoptr (Wall) wall = wall_copy (wall_of (document));

  wall->length = LENGTH_MM (mm);
  return edit_set_wall (wall);
}

static gboolean
set_length (HbDocument *document, int mm)
{
  g_autoptr (Edit) edit = length_edit (document, mm);

  return hb_document_apply (document, edit, "Set the length", NULL);
}

static void
count_cb (gpointer object, guint *n)
{
  (void) object;
  ++*n;
}

/* ---- steps ---- */

static void
test_new_is_not_modified (void)
{
  g_autoptr (HbDocument) document = hb_document_new ();

  g_assert_false (hb_document_is_modified (document));
  g_assert_null (hb_document_get_path (document));
  g_assert_null (hb_document_get_undo_label (document));
  g_assert_cmpuint (hb_document_get_project (document)->walls->len, ==, 0);
}

static void
test_apply_is_a_step (void)
{
  g_autoptr (HbDocument) document = hb_document_new ();

  add_wall (document);
  g_assert_true (hb_document_is_modified (document));
  g_assert_cmpuint (hb_document_n_steps (document), ==, 1);
  g_assert_cmpstr (hb_document_get_undo_label (document), ==, "Add a wall");
  hb_document_undo (document);
  g_assert_false (hb_document_is_modified (document));
  g_assert_cmpstr (hb_document_get_redo_label (document), ==, "Add a wall");
  hb_document_redo (document);
  g_assert_cmpuint (hb_document_get_project (document)->walls->len, ==, 1);
}

static void
test_refused_changes_nothing (void)
{
  g_autoptr (HbDocument) document = hb_document_new ();
  g_autoptr (GError) error = NULL;
  g_autoptr (Edit) edit = NULL;

  add_wall (document);
  /* The window ends at 3000. */
  edit = length_edit (document, 2000);
  g_assert_false (hb_document_apply (document, edit, "Set the length", &error));
  g_assert_error (error, MODEL_ERROR, MODEL_ERROR_REFUSED);
  g_assert_cmpint (strlen (error->message), >, 10);
  g_assert_cmpuint (hb_document_n_steps (document), ==, 1);
  g_assert_cmpint (wall_of (document)->length, ==, LENGTH_MM (6000));
}

static void
test_drag_is_one_step (void)
{
  g_autoptr (HbDocument) document = hb_document_new ();
  guint n = 0;

  add_wall (document);
  g_signal_connect (document, "changed", G_CALLBACK (count_cb), &n);
  for (int mm = 6010; mm <= 6100; mm += 10)
    {
      g_autoptr (Edit) edit = length_edit (document, mm);

      g_assert_true (hb_document_preview (document, edit, NULL));
      g_assert_cmpint (wall_of (document)->length, ==, LENGTH_MM (mm));
    }
  g_assert_cmpuint (n, ==, 10);
  g_assert_cmpuint (hb_document_n_steps (document), ==, 1);
  hb_document_keep_preview (document, "Resize");
  g_assert_cmpuint (hb_document_n_steps (document), ==, 2);
  hb_document_undo (document);
  g_assert_cmpint (wall_of (document)->length, ==, LENGTH_MM (6000));
}

static void
test_dropped_preview_leaves_no_trace (void)
{
  g_autoptr (HbDocument) document = hb_document_new ();
  g_autoptr (Edit) edit = NULL;

  add_wall (document);
  edit = length_edit (document, 7000);
  g_assert_true (hb_document_preview (document, edit, NULL));
  hb_document_drop_preview (document);
  g_assert_false (hb_document_has_preview (document));
  g_assert_cmpint (wall_of (document)->length, ==, LENGTH_MM (6000));
  g_assert_cmpuint (hb_document_n_steps (document), ==, 1);
  hb_document_keep_preview (document, "Nothing");
  g_assert_cmpuint (hb_document_n_steps (document), ==, 1);
}

/* ---- files ---- */

static void
test_saved_follows_undo (Files *files, gconstpointer data)
{
  g_autoptr (HbDocument) document = hb_document_new ();

  (void) data;
  add_wall (document);
  g_assert_true (hb_document_save_as (document, files->path, NULL));
  g_assert_false (hb_document_is_modified (document));
  g_assert_true (set_length (document, 7000));
  g_assert_true (hb_document_is_modified (document));
  hb_document_undo (document);
  g_assert_false (hb_document_is_modified (document));
  hb_document_undo (document);
  g_assert_true (hb_document_is_modified (document));
}

static void
test_same_bytes_again (Files *files, gconstpointer data)
{
  g_autoptr (HbDocument) document = hb_document_new ();
  g_autofree char *first = NULL, *second = NULL;
  gsize n_first, n_second;

  (void) data;
  g_assert_true (hb_document_open_copy (document, EXAMPLE, NULL));
  g_assert_null (hb_document_get_path (document));
  g_assert_false (hb_document_is_modified (document));
  g_assert_true (hb_document_save_as (document, files->path, NULL));
  g_assert_true (g_file_get_contents (files->path, &first, &n_first, NULL));
  g_assert_true (hb_document_open (document, files->path, NULL));
  g_assert_true (hb_document_save (document, FALSE, NULL));
  g_assert_true (g_file_get_contents (files->path, &second, &n_second, NULL));
  g_assert_cmpmem (first, (int) n_first, second, (int) n_second);
}

static void
test_no_file_is_asked_for (void)
{
  g_autoptr (HbDocument) document = hb_document_new ();
  g_autoptr (GError) error = NULL;

  g_assert_false (hb_document_save (document, FALSE, &error));
  g_assert_error (error, HB_DOCUMENT_ERROR, HB_DOCUMENT_ERROR_NO_FILE);
}

static void
test_overtaken_file_is_not_written_over (Files *files, gconstpointer data)
{
  g_autoptr (HbDocument) document = hb_document_new ();
  g_autoptr (HbDocument) other = hb_document_new ();
  g_autoptr (GError) error = NULL;
  g_autofree char *theirs = NULL, *now = NULL;

  (void) data;
  add_wall (document);
  g_assert_true (hb_document_save_as (document, files->path, NULL));
  g_assert_false (hb_document_is_overtaken (document));
  g_assert_true (hb_document_open (other, files->path, NULL));
  g_assert_true (set_length (other, 8000));
  g_assert_true (hb_document_save (other, FALSE, NULL));
  g_assert_true (g_file_get_contents (files->path, &theirs, NULL, NULL));

  g_assert_true (hb_document_is_overtaken (document));
  g_assert_true (set_length (document, 7000));
  g_assert_false (hb_document_save (document, FALSE, &error));
  g_assert_error (error, HB_DOCUMENT_ERROR, HB_DOCUMENT_ERROR_CHANGED);
  g_assert_true (g_file_get_contents (files->path, &now, NULL, NULL));
  g_assert_cmpstr (now, ==, theirs);
  g_assert_true (hb_document_save (document, TRUE, NULL));
  g_assert_false (hb_document_is_overtaken (document));
}

static void
test_deleted_file_is_written_anew (Files *files, gconstpointer data)
{
  g_autoptr (HbDocument) document = hb_document_new ();

  (void) data;
  add_wall (document);
  g_assert_true (hb_document_save_as (document, files->path, NULL));
  g_assert_cmpint (g_remove (files->path), ==, 0);
  g_assert_true (hb_document_save (document, FALSE, NULL));
  g_assert_true (g_file_test (files->path, G_FILE_TEST_IS_REGULAR));
}

static void
test_bad_file_loses_nothing (Files *files, gconstpointer data)
{
  g_autoptr (HbDocument) document = hb_document_new ();
  g_autoptr (GError) error = NULL;

  (void) data;
  add_wall (document);
  g_assert_true (g_file_set_contents (files->path, "<project", -1, NULL));
  g_assert_false (hb_document_open (document, files->path, &error));
  g_assert_error (error, STORE_ERROR, STORE_ERROR_INVALID);
  g_assert_cmpuint (hb_document_get_project (document)->walls->len, ==, 1);
  g_assert_cmpuint (hb_document_n_steps (document), ==, 1);
}

static void
test_failed_save_keeps_its_file (Files *files, gconstpointer data)
{
  g_autoptr (HbDocument) document = hb_document_new ();
  g_autoptr (GError) error = NULL;
  g_autofree char *nowhere = g_build_filename (files->folder, "none", "x.halfbond", NULL);

  (void) data;
  add_wall (document);
  g_assert_true (hb_document_save_as (document, files->path, NULL));
  g_assert_false (hb_document_save_as (document, nowhere, &error));
  g_assert_error (error, STORE_ERROR, STORE_ERROR_WRITE);
  g_assert_cmpstr (hb_document_get_path (document), ==, files->path);
}

/* ---- the background ---- */

typedef struct
{
  guint n_landed;
  int last;
} Landed;

static gpointer
slow_double (gpointer input, const gint *stop)
{
  for (int i = 0; i < 20 && !g_atomic_int_get (stop); i++)
    g_usleep (500);
  return GINT_TO_POINTER (2 * GPOINTER_TO_INT (input));
}

static void
land_cb (gpointer result, gpointer data)
{
  Landed *landed = data;

  landed->n_landed++;
  landed->last = GPOINTER_TO_INT (result);
}

static void
nothing (gpointer data)
{
  (void) data;
}

static void
iterate_while_busy (HbJob *job)
{
  while (hb_job_is_busy (job))
    g_main_context_iteration (NULL, FALSE);
}

static void
test_newest_alone_lands (void)
{
  Landed landed = { 0 };
  g_autoptr (HbJob) job = hb_job_new ("test", slow_double, nothing, land_cb, nothing, &landed);

  for (int i = 1; i <= 50; i++)
    hb_job_start (job, GINT_TO_POINTER (i));
  iterate_while_busy (job);
  g_assert_cmpuint (landed.n_landed, ==, 1);
  g_assert_cmpint (landed.last, ==, 100);
}

static void
test_cancelled_does_not_land (void)
{
  Landed landed = { 0 };
  g_autoptr (HbJob) job = hb_job_new ("test", slow_double, nothing, land_cb, nothing, &landed);

  hb_job_start (job, GINT_TO_POINTER (1));
  /* It is under way by now. */
  g_usleep (3000);
  hb_job_cancel (job);
  g_assert_false (hb_job_is_busy (job));
  g_usleep (30000);
  while (g_main_context_iteration (NULL, FALSE))
    ;
  g_assert_cmpuint (landed.n_landed, ==, 0);
  hb_job_start (job, GINT_TO_POINTER (4));
  g_assert_true (hb_job_is_busy (job));
  iterate_while_busy (job);
  g_assert_cmpint (landed.last, ==, 8);
}

static void
test_wait_lands_at_once (void)
{
  Landed landed = { 0 };
  g_autoptr (HbJob) job = hb_job_new ("test", slow_double, nothing, land_cb, nothing, &landed);

  hb_job_start (job, GINT_TO_POINTER (7));
  g_assert_true (hb_job_wait (job, 10 * G_TIME_SPAN_SECOND));
  g_assert_cmpint (landed.last, ==, 14);
  iterate_while_busy (job);
  g_assert_cmpuint (landed.n_landed, ==, 1);
}

static void
settle (HbAnswers *answers)
{
  while (!hb_answers_is_settled (answers))
    g_main_context_iteration (NULL, TRUE);
}

static void
test_answers_follow (void)
{
  g_autoptr (HbDocument) document = hb_document_new ();
  g_autoptr (HbAnswers) answers = hb_answers_new (document);
  const TakeoffLine *line;
  WallId id;
  gint32 before;

  add_wall (document);
  id = wall_of (document)->id;
  hb_answers_set_wall (answers, id);
  settle (answers);
  g_assert_nonnull (hb_answers_get_layout (answers, id));
  g_assert_nonnull (hb_answers_get_findings (answers));
  line = takeoff_line (hb_answers_get_takeoff (answers), "wall.gross-area");
  g_assert_cmpfloat_with_epsilon (line->quantity, 15.0, 1e-6);
  before = hb_answers_get_layout (answers, id)->n_whole;

  g_assert_true (set_length (document, 9000));
  settle (answers);
  g_assert_cmpint (hb_answers_get_layout (answers, id)->n_whole, >, before);
  hb_document_undo (document);
  /* An answer that was known is there at once. */
  g_assert_cmpint (hb_answers_get_layout (answers, id)->n_whole, ==, before);
  settle (answers);
}

static void
places_cb (gpointer data)
{
  (void) data;
}

/* Every place of every strip says what laying the wall with the opening there says. */
static void
check_strip (HbPlaces *places, const Wall *wall, const Block *block, Shift shift)
{
  const Opening *opening = wall_opening_at (wall, 0);
  g_autoptr (GArray) all
      = places_list (wall, block, opening->id, shift, LENGTH_MM (60), LENGTH_MM (10));

  g_assert_cmpuint (all->len, >=, 12);
  for (guint i = 0; i < all->len; i++)
    {
      const Place *place = hb_places_at (places, shift, g_array_index (all, Length, i));
      g_autoptr (Wall) moved = wall_copy (wall);
      g_autoptr (Layout) layout = NULL;

      g_assert_nonnull (place);
      g_assert_true (place->possible);
      shift_to (wall_own_opening (moved, opening->id), shift, place->at);
      layout = lay_wall (moved, block, NULL);
      g_assert_cmpint (place->cost.cuts, ==, layout->n_cut);
      g_assert_cmpint (place->cost.breaches, ==, layout->proof.breaches);
    }
}

static void
test_places_are_those_of_laying_there (void)
{
  g_autoptr (HbDocument) document = hb_document_new ();
  g_autoptr (HbPlaces) places = hb_places_new (places_cb, NULL);
  const guint all = (1 << N_SHIFTS) - 1;
  const Wall *wall;
  const Block *block;
  OpeningId id;

  add_wall (document);
  wall = wall_of (document);
  block = project_block (hb_document_get_project (document), wall->block);
  id = wall_opening_at (wall, 0)->id;
  hb_places_ask (places, wall, block, id, all, LENGTH_MM (60), LENGTH_MM (10));
  while (!hb_places_is_done (places, SHIFT_ALONG) || !hb_places_is_done (places, SHIFT_SILL)
         || !hb_places_is_done (places, SHIFT_HEAD))
    g_main_context_iteration (NULL, TRUE);
  for (int shift = 0; shift < N_SHIFTS; shift++)
    {
      check_strip (places, wall, block, (Shift) shift);
      g_assert_true (hb_places_is_sure (places, (Shift) shift));
      g_assert_false (hb_places_is_at_work (places, (Shift) shift));
    }
  g_assert_null (hb_places_at (places, SHIFT_ALONG, LENGTH_MM (1700)));
}

/* What is known of a shift stays while only that changes; the others are forgotten. */
static void
test_places_follow_the_opening (void)
{
  g_autoptr (HbDocument) document = hb_document_new ();
  g_autoptr (HbPlaces) places = hb_places_new (places_cb, NULL);
  g_autoptr (Wall) moved = NULL;
  const Wall *wall;
  const Block *block;
  OpeningId id;

  add_wall (document);
  wall = wall_of (document);
  block = project_block (hb_document_get_project (document), wall->block);
  id = wall_opening_at (wall, 0)->id;
  hb_places_ask (places, wall, block, id, 1 << SHIFT_ALONG | 1 << SHIFT_SILL, LENGTH_MM (20),
                 LENGTH_MM (10));
  while (!hb_places_is_done (places, SHIFT_ALONG) || !hb_places_is_done (places, SHIFT_SILL))
    g_main_context_iteration (NULL, TRUE);
  moved = wall_copy (wall);
  wall_own_opening (moved, id)->x += LENGTH_MM (10);
  hb_places_ask (places, moved, block, id, 1 << SHIFT_ALONG, LENGTH_MM (20), LENGTH_MM (10));
  g_assert_cmpuint (hb_places_n_known (places, SHIFT_ALONG), >, 0);
  g_assert_cmpuint (hb_places_n_known (places, SHIFT_SILL), ==, 0);
  hb_places_forget (places);
  g_assert_cmpuint (hb_places_n_known (places, SHIFT_ALONG), ==, 0);
  g_assert_null (hb_places_best (places, SHIFT_ALONG, 0, LENGTH_MAX, 0));
}

/* ---- what would save, and improve all ---- */

/* What is advised is of the present value, or says that it is not. */
static void
test_savings_are_overtaken (void)
{
  g_autoptr (HbDocument) document = hb_document_new ();
  g_autoptr (HbAnswers) answers = hb_answers_new (document);
  g_autoptr (Edit) edit = NULL;
  Opening moved;

  add_wall (document);
  hb_answers_set_wall (answers, wall_of (document)->id);
  while (!hb_answers_has_present_savings (answers))
    g_main_context_iteration (NULL, TRUE);
  g_assert_nonnull (hb_answers_get_savings (answers));
  moved = opening_copy (wall_opening_at (wall_of (document), 0));
  moved.x += LENGTH_MM (7);
  edit = edit_set_opening (&moved);
  opening_clear (&moved);
  /* While a hand is at work nothing is sought. */
  g_assert_true (hb_document_preview (document, edit, NULL));
  g_assert_false (hb_answers_has_present_savings (answers));
  settle (answers);
  g_assert_false (hb_answers_has_present_savings (answers));
  hb_document_keep_preview (document, "Move");
  while (!hb_answers_has_present_savings (answers))
    g_main_context_iteration (NULL, TRUE);
  hb_answers_stop (answers);
}

typedef struct
{
  guint n_told;
  char *sentence;
} Told;

static void
told_cb (const char *sentence, gpointer data)
{
  Told *told = data;

  told->n_told++;
  g_free (told->sentence);
  told->sentence = g_strdup (sentence);
}

/* A wall whose opening may move by 60 mm; the place it has is the worst. */
static void
add_free_wall (HbDocument *document)
{
  g_autoptr (Edit) edit = NULL;
  Opening freed;

  add_wall (document);
  freed = opening_copy (wall_opening_at (wall_of (document), 0));
  freed.x = LENGTH_MM (1780);
  freed.given |= OPENING_MAY_MOVE;
  freed.may_move = LENGTH_MM (60);
  edit = edit_set_opening (&freed);
  opening_clear (&freed);
  g_assert_true (hb_document_apply (document, edit, "Free it", NULL));
}

static void
test_improving_is_one_step (void)
{
  g_autoptr (HbDocument) document = hb_document_new ();
  Told told = { 0 };
  g_autoptr (HbImprover) improver = hb_improver_new (document, told_cb, &told);
  g_autoptr (Wall) before = NULL;
  guint n_steps;

  add_free_wall (document);
  before = wall_ref (wall_of (document));
  n_steps = hb_document_n_steps (document);
  g_assert_true (hb_improver_can (improver, before->id));
  hb_improver_start (improver, before->id);
  g_assert_true (hb_improver_is_running (improver));
  while (hb_improver_is_running (improver))
    g_main_context_iteration (NULL, TRUE);
  g_assert_cmpuint (told.n_told, ==, 2);
  g_assert_nonnull (strstr (told.sentence, "1 opening moved"));
  g_assert_cmpuint (hb_document_n_steps (document), ==, n_steps + 1);
  g_assert_cmpint (opening_drawn_x (wall_opening_at (wall_of (document), 0)), ==, LENGTH_MM (1780));
  hb_document_undo (document);
  g_assert_true (wall_equal (wall_of (document), before));
  g_free (told.sentence);
}

/* Stopped or overtaken, it changes nothing, and says so at once. */
static void
test_improving_can_be_stopped (void)
{
  g_autoptr (HbDocument) document = hb_document_new ();
  Told told = { 0 };
  g_autoptr (HbImprover) improver = hb_improver_new (document, told_cb, &told);
  g_autoptr (Edit) edit = edit_project (FIELD_TITLE, "Other");
  g_autoptr (Wall) before = NULL;
  guint n_steps;

  add_free_wall (document);
  before = wall_ref (wall_of (document));
  n_steps = hb_document_n_steps (document);
  hb_improver_start (improver, before->id);
  hb_improver_stop (improver);
  g_assert_false (hb_improver_is_running (improver));
  g_assert_null (told.sentence);
  hb_improver_start (improver, before->id);
  g_assert_true (hb_document_apply (document, edit, "Set title", NULL));
  g_assert_false (hb_improver_is_running (improver));
  for (int i = 0; i < 100; i++)
    {
      g_main_context_iteration (NULL, FALSE);
      g_usleep (2000);
    }
  g_assert_true (wall_of (document) == before);
  g_assert_cmpuint (hb_document_n_steps (document), ==, n_steps + 1);
}

/* Waits up to so many ms, and lands what comes meanwhile. */
static void
wait_a_little (guint ms)
{
  const gint64 end = g_get_monotonic_time () + ms * G_TIME_SPAN_MILLISECOND;

  while (g_get_monotonic_time () < end)
    {
      g_main_context_iteration (NULL, FALSE);
      g_usleep (200);
    }
}

/* One way to break off what is at work. */
static void
break_off (guint way, HbDocument *document, HbPlaces *places, HbImprover **improver, Told *told)
{
  g_autoptr (Edit) edit = edit_project (FIELD_TITLE, "Other");

  switch (way)
    {
    case 0:
      hb_improver_stop (*improver);
      hb_places_forget (places);
      break;
    case 1: /* a hand that pulls, and lets go where it was */
      g_assert_true (hb_document_preview (document, edit, NULL));
      hb_document_drop_preview (document);
      break;
    case 2:
      g_assert_true (hb_document_apply (document, edit, "Set title", NULL));
      g_assert_false (hb_improver_is_running (*improver));
      hb_document_undo (document);
      break;
    case 3:
      hb_improver_free (*improver);
      *improver = hb_improver_new (document, told_cb, told);
      break;
    case 4: /* asked anew while it is at work */
      hb_improver_start (*improver, wall_of (document)->id);
      hb_improver_stop (*improver);
      break;
    default:
      hb_improver_stop (*improver);
      break;
    }
}

/* Strips and improve all are begun and broken off at any moment, over and over: the project is the
 * one before, or, when it was too late, it has the whole step. */
static void
test_work_can_be_broken_off_at_any_moment (void)
{
  g_autoptr (HbDocument) document = hb_document_new ();
  g_autoptr (HbPlaces) places = hb_places_new (places_cb, NULL);
  g_autoptr (GRand) random = g_rand_new_with_seed (5);
  g_autoptr (Wall) before = NULL;
  Told told = { 0 };
  HbImprover *improver = hb_improver_new (document, told_cb, &told);
  guint n_whole = 0;

  add_free_wall (document);
  before = wall_ref (wall_of (document));
  for (guint round = 0; round < 120; round++)
    {
      const Block *block = project_block (hb_document_get_project (document), before->block);

      hb_improver_start (improver, before->id);
      hb_places_ask (places, before, block, wall_opening_at (before, 0)->id, (1 << N_SHIFTS) - 1,
                     LENGTH_MM (100), LENGTH_MM (5));
      while (round % 20 == 0 && hb_improver_is_running (improver))
        g_main_context_iteration (NULL, TRUE);
      wait_a_little ((guint) g_rand_int_range (random, 0, 8));
      if (!wall_equal (wall_of (document), before))
        {
          n_whole++;
          g_assert_false (hb_improver_is_running (improver));
          g_assert_nonnull (strstr (told.sentence, "1 opening moved"));
          hb_document_undo (document);
        }
      break_off ((guint) g_rand_int_range (random, 0, 6), document, places, &improver, &told);
      g_assert_false (hb_improver_is_running (improver));
      wait_a_little (1);
      g_assert_true (wall_equal (wall_of (document), before));
    }
  g_test_message ("came to its end: %u of 120", n_whole);
  g_assert_cmpuint (n_whole, >=, 6);
  g_assert_cmpuint (n_whole, <, 120);
  hb_improver_free (improver);
  g_free (told.sentence);
}

/* ---- tools ---- */

static const Grip exact = { .step = 1, .reach = 0 };

typedef struct
{
  RefPart part;
  int dx, dz;                 /* mm */
  int x, sill, width, height; /* what it is then, mm */
} PullCase;

/* A window at 1800 .. 3000, 1000 .. 2200 of a wall 6000 x 2500 with nothing else in it. */
static const PullCase pulls[] = {
  { PART_BODY, 100, 0, 1900, 1000, 1200, 1200 },
  { PART_BODY, -5000, 0, 0, 1000, 1200, 1200 },
  { PART_BODY, 5000, 0, 4800, 1000, 1200, 1200 },
  { PART_BODY, 0, 5000, 1800, 1300, 1200, 1200 },
  { PART_LEFT, 100, 0, 1900, 1000, 1100, 1200 },
  { PART_LEFT, 5000, 0, 2950, 1000, 50, 1200 },
  { PART_RIGHT, 100, 0, 1800, 1000, 1300, 1200 },
  { PART_RIGHT, 9000, 0, 1800, 1000, 4200, 1200 },
  { PART_SILL, 0, -100, 1800, 900, 1200, 1300 },
  { PART_SILL, 0, -9000, 1800, 0, 1200, 2200 },
  { PART_HEAD, 0, 100, 1800, 1000, 1200, 1300 },
  { PART_HEAD, 0, 9000, 1800, 1000, 1200, 1500 },
  { PART_TOP_RIGHT, 50, 60, 1800, 1000, 1250, 1260 },
  { PART_BOTTOM_LEFT, -50, -60, 1750, 940, 1250, 1260 },
};

static void
test_pulls (void)
{
  g_autoptr (HbDocument) document = hb_document_new ();
  const Wall *wall;
  const Block *block;

  add_wall (document);
  wall = wall_of (document);
  block = project_block (hb_document_get_project (document), wall->block);
  for (guint i = 0; i < G_N_ELEMENTS (pulls); i++)
    {
      const PullCase *p = &pulls[i];
      Opening pulled = tool_pull_opening (wall, block, wall_opening_at (wall, 0), p->part,
                                          LENGTH_MM (p->dx), LENGTH_MM (p->dz), &exact);

      g_test_message ("row %u", i);
      g_assert_cmpint (pulled.x, ==, LENGTH_MM (p->x));
      g_assert_cmpint (pulled.sill, ==, LENGTH_MM (p->sill));
      g_assert_cmpint (pulled.width, ==, LENGTH_MM (p->width));
      g_assert_cmpint (pulled.height, ==, LENGTH_MM (p->height));
      opening_clear (&pulled);
    }
}

/* Any pull of any part leaves a wall without fault. */
static void
test_pulls_never_break_the_wall (void)
{
  g_autoptr (HbDocument) document = hb_document_new ();
  const Project *project;

  g_assert_true (hb_document_open_copy (document, EXAMPLE, NULL));
  project = hb_document_get_project (document);
  for (int round = 0; round < 2000; round++)
    {
      const Wall *wall
          = project_wall_at (project, (guint) g_test_rand_int_range (0, (int) project->walls->len));
      const Block *block = project_block (project, wall->block);
      g_autoptr (Wall) next = wall_copy (wall);
      g_autofree char *fault = NULL;
      const Grip grip = tool_grip (g_test_rand_double_range (0.01, 5));
      Opening *opening, pulled;

      if (!next->openings->len)
        continue;
      opening = &g_array_index (next->openings, Opening,
                                g_test_rand_int_range (0, (int) next->openings->len));
      pulled = tool_pull_opening (wall, block, opening,
                                  (RefPart) g_test_rand_int_range (PART_BODY, PART_TOP_RIGHT + 1),
                                  LENGTH_MM (g_test_rand_int_range (-3000, 3000)),
                                  LENGTH_MM (g_test_rand_int_range (-2000, 2000)), &grip);
      opening_clear (opening);
      *opening = pulled;
      fault = wall_fault (next, block, NULL);
      g_assert_cmpstr (fault, ==, NULL);
    }
}

static void
test_sill_snaps_to_course (void)
{
  g_autoptr (HbDocument) document = hb_document_new ();
  const Grip grip = { .step = LENGTH_MM (1), .reach = LENGTH_MM (30) };
  const Wall *wall;
  const Block *block;
  Laying laying;
  Opening pulled;

  add_wall (document);
  wall = wall_of (document);
  block = project_block (hb_document_get_project (document), wall->block);
  laying = laying_resolve (&wall->laying, block);
  /* Defaults: 20 + 5 x 200 + 4 x 2 = 1028 is the top of course 5. */
  g_assert_cmpint (gauge_top (wall, block, &laying, 5), ==, LENGTH_MM (1028));
  pulled = tool_pull_opening (wall, block, wall_opening_at (wall, 0), PART_BODY, 0, LENGTH_MM (10),
                              &grip);
  g_assert_cmpint (pulled.sill, ==, LENGTH_MM (1028));
  opening_clear (&pulled);
}

static void
test_drawn_in_either_order (void)
{
  g_autoptr (HbDocument) document = hb_document_new ();
  const Wall *wall;
  const Block *block;
  Opening a, b, none;

  add_wall (document);
  wall = wall_of (document);
  block = project_block (hb_document_get_project (document), wall->block);
  g_assert_true (tool_draw_opening (wall, block, OPENING_WINDOW, LENGTH_MM (4000), LENGTH_MM (500),
                                    LENGTH_MM (5000), LENGTH_MM (1500), &exact, &a));
  g_assert_true (tool_draw_opening (wall, block, OPENING_WINDOW, LENGTH_MM (5000), LENGTH_MM (1500),
                                    LENGTH_MM (4000), LENGTH_MM (500), &exact, &b));
  g_assert_true (opening_equal (&a, &b));
  g_assert_cmpint (a.x, ==, LENGTH_MM (4000));
  g_assert_cmpint (a.height, ==, LENGTH_MM (1000));
  opening_clear (&a);
  opening_clear (&b);
  g_assert_false (tool_draw_opening (wall, block, OPENING_VOID, LENGTH_MM (2000), LENGTH_MM (1200),
                                     LENGTH_MM (4000), LENGTH_MM (1500), &exact, &none));
  g_assert_true (tool_draw_opening (wall, block, OPENING_DOOR, LENGTH_MM (4000), LENGTH_MM (500),
                                    LENGTH_MM (5000), LENGTH_MM (2100), &exact, &a));
  g_assert_cmpint (a.sill, ==, 0);
  opening_clear (&a);
}

/* Along every course each piece is met once; up and down again leads near, and stays in the wall.
 */
static void
test_pieces_are_walked (void)
{
  g_autoptr (HbDocument) document = hb_document_new ();
  g_autoptr (HbAnswers) answers = hb_answers_new (document);
  const Layout *layout;
  const Piece *piece;

  add_wall (document);
  hb_answers_set_wall (answers, wall_of (document)->id);
  settle (answers);
  layout = hb_answers_get_layout (answers, wall_of (document)->id);
  for (gint32 course = 1; course <= (gint32) layout->courses->len; course++)
    {
      const gint32 n = layout_course (layout, (guint) course - 1)->n_pieces;

      piece = tool_piece (layout, course, 1);
      for (gint32 number = 1; number <= n; number++)
        {
          g_assert_cmpint (piece->course, ==, course);
          g_assert_cmpint (piece->number, ==, number);
          piece = tool_next_piece (layout, piece, 1, 0);
        }
      /* At the end it stays. */
      g_assert_cmpint (piece->number, ==, n);
    }
  piece = tool_next_piece (layout, NULL, 1, 0);
  g_assert_cmpint (piece->course, ==, 1);
  for (int i = 0; i < 100; i++)
    piece = tool_next_piece (layout, piece, 0, 1);
  g_assert_cmpint (piece->course, ==, layout->courses->len);
  g_assert_null (tool_piece (layout, 0, 1));
  g_assert_null (tool_piece (layout, 1, 1000));
}

/* Setting what a dimension shows changes nothing; setting another value shows that one. */
static void
test_dimensions_show_what_was_set (void)
{
  g_autoptr (HbDocument) document = hb_document_new ();
  const Wall *wall;
  OpeningId id;

  add_wall (document);
  wall = wall_of (document);
  id = wall_opening_at (wall, 0)->id;
  for (int part = DIMENSION_WALL_LENGTH; part <= DIMENSION_OPENING_HEIGHT; part++)
    {
      g_autoptr (Wall) same = NULL;
      g_autoptr (Wall) next = NULL;
      Length value, after;

      g_test_message ("dimension %d", part);
      g_assert_true (tool_get_dimension (wall, (DimensionPart) part, id, &value));
      same = tool_set_dimension (wall, (DimensionPart) part, id, value);
      g_assert_true (wall_equal (same, wall));
      next = tool_set_dimension (wall, (DimensionPart) part, id, value + LENGTH_MM (7));
      g_assert_true (tool_get_dimension (next, (DimensionPart) part, id, &after));
      g_assert_cmpint (after, ==, value + LENGTH_MM (7));
    }
}

/* Every field: what it says, said again, makes the same project. */
static void
test_fields_round_trip (void)
{
  g_autoptr (HbDocument) document = hb_document_new ();
  const Project *project;
  guint n;
  const Field *fields = hb_fields_list (&n);

  g_assert_true (hb_document_open_copy (document, EXAMPLE, NULL));
  project = hb_document_get_project (document);
  for (guint i = 0; i < n; i++)
    {
      const Wall *wall = project_wall_at (project, 0);
      const OpeningId id = wall_opening_at (wall, 0)->id;
      g_autofree char *text = hb_field_text (&fields[i], project, wall, id);
      g_autofree char *again = NULL;
      g_autoptr (GError) error = NULL;
      g_autoptr (Edit) edit = hb_field_edit (&fields[i], project, wall, id, text, &error);
      g_autoptr (Project) next = NULL;

      g_test_message ("%s: %s", fields[i].label, text);
      g_assert_no_error (error);
      next = project_edit (project, edit, &error);
      g_assert_no_error (error);
      again = hb_field_text (&fields[i], next, project_wall_at (next, 0), id);
      g_assert_cmpstr (again, ==, text);
    }
}

static const Field *
field_called (const char *label)
{
  guint n;
  const Field *fields = hb_fields_list (&n);

  for (guint i = 0; i < n; i++)
    if (g_str_equal (fields[i].label, label))
      return &fields[i];
  g_assert_not_reached ();
}

/* Sets it, and gives what it then says. */
static char *
typed (const Project *project, const char *label, const char *text)
{
  const Field *field = field_called (label);
  const Wall *wall = project_wall_at (project, 0);
  const OpeningId id = wall_opening_at (wall, 0)->id;
  g_autoptr (GError) error = NULL;
  g_autoptr (Edit) edit = hb_field_edit (field, project, wall, id, text, &error);
  g_autoptr (Project) next = NULL;

  if (!edit)
    return g_strdup (error->message);
  next = project_edit (project, edit, &error);
  return next ? hb_field_text (field, next, project_wall_at (next, 0), id)
              : g_strdup (error->message);
}

/* Loads and strengths are known once they are typed; nothing is another load than 0. */
static void
test_fields_of_loads (void)
{
  static const struct
  {
    const char *label, *text, *says;
  } rows[] = {
    { "Load over it, kN/m", "", "" },
    { "Load over it, kN/m", "0", "0" },
    { "Load over it, kN/m", "12.5", "12.5" },
    { "Load over it, kN/m", "0.12345", "0.123" },
    { "Load over it, kN/m", "much", "Type a number, 0 or more." },
    { "Load over it, kN/m", "1001", "Wall Garden side: The load over opening W1 must be from 0 to 1000 kN/m." },
    { "Design strength, N/mm²", "", "" },
    { "Design strength, N/mm²", "0.85", "0.85" },
    { "Design strength, N/mm²", "0", "" },
    { "Design strength, N/mm²", "101", "Block \"b1\": its strength must be from 0 to 100 N/mm²." },
  };
  g_autoptr (HbDocument) document = hb_document_new ();

  g_assert_true (hb_document_open_copy (document, EXAMPLE, NULL));
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *says
          = typed (hb_document_get_project (document), rows[i].label, rows[i].text);

      g_assert_cmpstr (says, ==, rows[i].says);
    }
}

static void
test_field_goes_back_to_default (void)
{
  g_autoptr (HbDocument) document = hb_document_new ();
  guint n;
  const Field *fields = hb_fields_list (&n);

  add_wall (document);
  for (guint i = 0; i < n; i++)
    {
      const Project *project = hb_document_get_project (document);
      const Wall *wall = project_wall_at (project, 0);
      g_autofree char *fallback = hb_field_default (&fields[i], project, wall);
      g_autofree char *text = NULL;
      g_autoptr (Edit) set = NULL;
      g_autoptr (Edit) unset = NULL;

      if (!fallback)
        continue;
      set = hb_field_edit (&fields[i], project, wall, (OpeningId){ 0 }, "15", NULL);
      g_assert_true (hb_document_apply (document, set, "Set", NULL));
      project = hb_document_get_project (document);
      wall = project_wall_at (project, 0);
      unset = hb_field_edit (&fields[i], project, wall, (OpeningId){ 0 }, "", NULL);
      g_assert_true (hb_document_apply (document, unset, "Unset", NULL));
      project = hb_document_get_project (document);
      text = hb_field_text (&fields[i], project, project_wall_at (project, 0), (OpeningId){ 0 });
      g_assert_cmpstr (text, ==, "");
    }
}

static void
test_new_block_is_one_step (void)
{
  g_autoptr (HbDocument) document = hb_document_new ();
  const Project *project;
  Edit *edits[2];

  add_wall (document);
  project = hb_document_get_project (document);
  hb_field_new_block (project, wall_of (document), edits);
  g_assert_true (hb_document_apply_all (document, edits, 2, "Add a block", NULL));
  edit_free (edits[0]);
  edit_free (edits[1]);
  project = hb_document_get_project (document);
  g_assert_cmpuint (project->blocks->len, ==, 2);
  g_assert_cmpuint (wall_of (document)->block.n, ==, project_block_at (project, 1)->id.n);
  g_assert_cmpuint (hb_document_n_steps (document), ==, 2);
  hb_document_undo (document);
  g_assert_cmpuint (hb_document_get_project (document)->blocks->len, ==, 1);
}

static void
test_refused_among_several_changes_nothing (void)
{
  g_autoptr (HbDocument) document = hb_document_new ();
  g_autoptr (Edit) good = NULL;
  g_autoptr (Edit) bad = NULL;
  g_autoptr (GError) error = NULL;

  add_wall (document);
  good = length_edit (document, 7000);
  bad = length_edit (document, 2000);
  {
    Edit *const edits[] = { good, bad };

    g_assert_false (hb_document_apply_all (document, edits, 2, "Both", &error));
  }
  g_assert_error (error, MODEL_ERROR, MODEL_ERROR_REFUSED);
  g_assert_cmpint (wall_of (document)->length, ==, LENGTH_MM (6000));
}

static void
add_file_test (const char *name, void (*test) (Files *, gconstpointer))
{
  g_test_add (name, Files, NULL, files_set_up, test, files_tear_down);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/document/new-is-not-modified", test_new_is_not_modified);
  g_test_add_func ("/document/apply-is-a-step", test_apply_is_a_step);
  g_test_add_func ("/document/refused-changes-nothing", test_refused_changes_nothing);
  g_test_add_func ("/document/refused-among-several-changes-nothing",
                   test_refused_among_several_changes_nothing);
  g_test_add_func ("/document/drag-is-one-step", test_drag_is_one_step);
  g_test_add_func ("/document/dropped-preview-leaves-no-trace",
                   test_dropped_preview_leaves_no_trace);
  add_file_test ("/document/saved-follows-undo", test_saved_follows_undo);
  add_file_test ("/document/same-bytes-again", test_same_bytes_again);
  g_test_add_func ("/document/no-file-is-asked-for", test_no_file_is_asked_for);
  add_file_test ("/document/overtaken-file-is-not-written-over",
                 test_overtaken_file_is_not_written_over);
  add_file_test ("/document/deleted-file-is-written-anew", test_deleted_file_is_written_anew);
  add_file_test ("/document/bad-file-loses-nothing", test_bad_file_loses_nothing);
  add_file_test ("/document/failed-save-keeps-its-file", test_failed_save_keeps_its_file);
  g_test_add_func ("/job/newest-alone-lands", test_newest_alone_lands);
  g_test_add_func ("/job/cancelled-does-not-land", test_cancelled_does_not_land);
  g_test_add_func ("/job/wait-lands-at-once", test_wait_lands_at_once);
  g_test_add_func ("/answers/follow", test_answers_follow);
  g_test_add_func ("/places/are-those-of-laying-there", test_places_are_those_of_laying_there);
  g_test_add_func ("/places/follow-the-opening", test_places_follow_the_opening);
  g_test_add_func ("/savings/are-overtaken", test_savings_are_overtaken);
  g_test_add_func ("/improving/is-one-step", test_improving_is_one_step);
  g_test_add_func ("/improving/can-be-stopped", test_improving_can_be_stopped);
  g_test_add_func ("/improving/work-can-be-broken-off-at-any-moment",
                   test_work_can_be_broken_off_at_any_moment);
  g_test_add_func ("/tool/pulls", test_pulls);
  g_test_add_func ("/tool/pulls-never-break-the-wall", test_pulls_never_break_the_wall);
  g_test_add_func ("/tool/sill-snaps-to-course", test_sill_snaps_to_course);
  g_test_add_func ("/tool/drawn-in-either-order", test_drawn_in_either_order);
  g_test_add_func ("/tool/pieces-are-walked", test_pieces_are_walked);
  g_test_add_func ("/tool/dimensions-show-what-was-set", test_dimensions_show_what_was_set);
  g_test_add_func ("/fields/round-trip", test_fields_round_trip);
  g_test_add_func ("/fields/loads-and-strengths", test_fields_of_loads);
  g_test_add_func ("/fields/go-back-to-default", test_field_goes_back_to_default);
  g_test_add_func ("/fields/new-block-is-one-step", test_new_block_is_one_step);
  return g_test_run ();
}
