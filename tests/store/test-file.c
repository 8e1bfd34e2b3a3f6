/* test-file.c - a file is written whole or not at all, and what was there keeps its rights */
#include <errno.h>
#include <fcntl.h>
#include <glib/gstdio.h>
#include <signal.h>
#include <string.h>
#include <sys/resource.h>
#include <sys/stat.h>
#include <sys/sysmacros.h>
#include <sys/wait.h>
#include <unistd.h>

#include "any-project.h"
#include "store/store.h"

typedef struct
{
  char *folder;
  char *path; /* "house.halfbond" in it, not there yet */
} Place;

static void
set_up (Place *place, gconstpointer data)
{
  g_autoptr (GError) error = NULL;
  (void) data;
  place->folder = g_dir_make_tmp ("halfbond-XXXXXX", &error);
  g_assert_no_error (error);
  place->path = g_build_filename (place->folder, "house.halfbond", NULL);
}

/* Everything in it, one level deep. */
static void
remove_folder (const char *folder)
{
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  for (const char *name = g_dir_read_name (dir); name != NULL; name = g_dir_read_name (dir))
    {
      g_autofree char *path = g_build_filename (folder, name, NULL);
      if (g_remove (path) != 0)
        remove_folder (path);
    }
  g_assert_cmpint (g_rmdir (folder), ==, 0);
}

static void
tear_down (Place *place, gconstpointer data)
{
  (void) data;
  remove_folder (place->folder);
  g_free (place->folder);
  g_free (place->path);
}

static void
write_text (const char *path, const char *text)
{
  g_autoptr (GError) error = NULL;
  g_assert_true (store_write_bytes (text, strlen (text), path, &error));
  g_assert_no_error (error);
}

static void
assert_text (const char *path, const char *expected)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *text = NULL;
  g_file_get_contents (path, &text, NULL, &error);
  g_assert_no_error (error);
  g_assert_cmpstr (text, ==, expected);
}

static int
by_name (gconstpointer a, gconstpointer b)
{
  return strcmp (*(const char *const *) a, *(const char *const *) b);
}

/* The names in the folder, in order, with a space between. */
static void
assert_names (const char *folder, const char *expected)
{
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  g_autoptr (GPtrArray) names = g_ptr_array_new_with_free_func (g_free);
  for (const char *name = g_dir_read_name (dir); name != NULL; name = g_dir_read_name (dir))
    g_ptr_array_add (names, g_strdup (name));
  g_ptr_array_sort (names, by_name);
  g_ptr_array_add (names, NULL);
  g_autofree char *all = g_strjoinv (" ", (char **) names->pdata);
  g_assert_cmpstr (all, ==, expected);
}

static void
assert_not_written (const char *path, const char *reason)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *expected = g_strdup_printf ("%s was not written: %s.", path, reason);
  g_assert_false (store_write_bytes ("new\n", 4, path, &error));
  g_assert_error (error, STORE_ERROR, STORE_ERROR_WRITE);
  g_assert_cmpstr (error->message, ==, expected);
}

static guint
mode_of (const char *path)
{
  GStatBuf status;
  g_assert_cmpint (g_stat (path, &status), ==, 0);
  return status.st_mode & 07777;
}

static void
test_new_file (Place *place, gconstpointer data)
{
  (void) data;
  mode_t mask = umask (027);
  write_text (place->path, "new\n");
  umask (mask);
  assert_text (place->path, "new\n");
  assert_names (place->folder, "house.halfbond");
  g_assert_cmphex (mode_of (place->path), ==, 0640);
}

static void
test_nothing_at_all (Place *place, gconstpointer data)
{
  (void) data;
  write_text (place->path, "");
  assert_text (place->path, "");
}

static void
test_project_comes_back (Place *place, gconstpointer data)
{
  (void) data;
  for (int round = 0; round < 20; round++)
    {
      g_autoptr (GError) error = NULL;
      g_autoptr (Project) project = any_project ();
      g_assert_true (store_write (project, place->path, &error));
      g_assert_no_error (error);
      g_autoptr (Project) again = store_read (place->path, &error);
      g_assert_no_error (error);
      g_assert_true (project_equal (project, again));
    }
  assert_names (place->folder, "house.halfbond");
}

static void
test_rights_are_kept (Place *place, gconstpointer data)
{
  static const guint modes[] = { 0600, 0640, 0644, 0666, 0755, 0444 | 0200, 02660 };
  (void) data;
  for (guint i = 0; i < G_N_ELEMENTS (modes); i++)
    {
      write_text (place->path, "old\n");
      g_assert_cmpint (g_chmod (place->path, (int) modes[i]), ==, 0);
      write_text (place->path, "new\n");
      assert_text (place->path, "new\n");
      g_assert_cmphex (mode_of (place->path), ==, modes[i]);
    }
}

static void
test_owner_is_kept (Place *place, gconstpointer data)
{
  GStatBuf status;
  (void) data;
  write_text (place->path, "old\n");
  if (chown (place->path, 12345, 23456) != 0)
    {
      g_test_skip ("only root gives files away");
      return;
    }
  write_text (place->path, "new\n");
  g_assert_cmpint (g_stat (place->path, &status), ==, 0);
  g_assert_cmpuint (status.st_uid, ==, 12345);
  g_assert_cmpuint (status.st_gid, ==, 23456);
}

static void
test_link_is_kept (Place *place, gconstpointer data)
{
  (void) data;
  g_autofree char *inner = g_build_filename (place->folder, "inner", NULL);
  g_autofree char *file = g_build_filename (inner, "real", NULL);
  g_autofree char *second = g_build_filename (place->folder, "second", NULL);
  g_assert_cmpint (g_mkdir (inner, 0700), ==, 0);
  write_text (file, "old\n");
  /* A relative link to an absolute one. */
  g_assert_cmpint (symlink (file, second), ==, 0);
  g_assert_cmpint (symlink ("second", place->path), ==, 0);
  write_text (place->path, "new\n");
  assert_text (file, "new\n");
  g_assert_true (g_file_test (place->path, G_FILE_TEST_IS_SYMLINK));
  g_assert_true (g_file_test (second, G_FILE_TEST_IS_SYMLINK));
  assert_names (inner, "real");
  assert_names (place->folder, "house.halfbond inner second");
}

static void
test_link_to_nothing_yet (Place *place, gconstpointer data)
{
  (void) data;
  g_autofree char *file = g_build_filename (place->folder, "real", NULL);
  g_assert_cmpint (symlink ("real", place->path), ==, 0);
  write_text (place->path, "new\n");
  assert_text (file, "new\n");
  g_assert_true (g_file_test (place->path, G_FILE_TEST_IS_SYMLINK));
}

static void
test_link_in_a_circle (Place *place, gconstpointer data)
{
  g_autoptr (GError) error = NULL;
  (void) data;
  g_assert_cmpint (symlink ("house.halfbond", place->path), ==, 0);
  g_assert_false (store_write_bytes ("new\n", 4, place->path, &error));
  g_assert_error (error, STORE_ERROR, STORE_ERROR_WRITE);
}

static void
test_folder_that_is_not_there (Place *place, gconstpointer data)
{
  (void) data;
  g_autofree char *path = g_build_filename (place->folder, "gone", "house.halfbond", NULL);
  assert_not_written (path, "its folder is not there");
  assert_names (place->folder, "");
}

static void
test_folder_of_that_name (Place *place, gconstpointer data)
{
  (void) data;
  assert_not_written (place->folder, "it is a folder");
  assert_names (place->folder, "");
}

static void
test_file_for_a_folder (Place *place, gconstpointer data)
{
  (void) data;
  write_text (place->path, "old\n");
  g_autofree char *path = g_build_filename (place->path, "x", NULL);
  assert_not_written (path, "a part of the path is not a folder");
  assert_text (place->path, "old\n");
}

static void
test_name_too_long (Place *place, gconstpointer data)
{
  (void) data;
  g_autofree char *name = g_strnfill (300, 'n');
  g_autofree char *path = g_build_filename (place->folder, name, NULL);
  assert_not_written (path, "the name is too long");
}

/* The name itself may be as long as the system lets it be: the temporary one is shorter. */
static void
test_longest_name (Place *place, gconstpointer data)
{
  (void) data;
  g_autofree char *name = g_strnfill (255, 'n');
  g_autofree char *path = g_build_filename (place->folder, name, NULL);
  write_text (path, "new\n");
  assert_text (path, "new\n");
}

/* What follows happens in a child, for it cannot be undone: no file may grow beyond 100 bytes. */
static void
limit_files (void)
{
  struct rlimit limit = { 100, 100 };
  signal (SIGXFSZ, SIG_IGN);
  g_assert_cmpint (setrlimit (RLIMIT_FSIZE, &limit), ==, 0);
}

static const char *child_path;

static void
in_child (void)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *text = g_strnfill (5000, 'x');
  limit_files ();
  if (!store_write_bytes (text, 5000, child_path, &error)
      && g_error_matches (error, STORE_ERROR, STORE_ERROR_WRITE)
      && strstr (error->message, "larger than the system allows") != NULL)
    _exit (0);
  _exit (1);
}

/* 100 of 5000 bytes are taken, then no more: as on a disk that fills up. */
static void
assert_short_write_fails (const char *path)
{
  int status;
  child_path = path;
  pid_t child = fork ();
  if (child == 0)
    in_child ();
  g_assert_cmpint (waitpid (child, &status, 0), ==, child);
  g_assert_cmpint (status, ==, 0);
}

static void
test_short_write_keeps_the_old_file (Place *place, gconstpointer data)
{
  (void) data;
  write_text (place->path, "old\n");
  assert_short_write_fails (place->path);
  assert_text (place->path, "old\n");
  assert_names (place->folder, "house.halfbond");
}

static void
test_short_write_leaves_no_new_file (Place *place, gconstpointer data)
{
  (void) data;
  assert_short_write_fails (place->path);
  assert_names (place->folder, "");
}

/* A pipe or a device is written into, never replaced. Those of the test's own folder: a mistake
 * here would replace the machine's. */
static void
test_pipe (Place *place, gconstpointer data)
{
  GStatBuf status;
  char read_back[8] = "";
  (void) data;
  g_assert_cmpint (mkfifo (place->path, 0600), ==, 0);
  int fd = g_open (place->path, O_RDWR | O_NONBLOCK, 0);
  g_assert_cmpint (fd, >=, 0);
  write_text (place->path, "new\n");
  g_assert_cmpint (read (fd, read_back, sizeof read_back), ==, 4);
  g_assert_cmpstr (read_back, ==, "new\n");
  close (fd);
  g_assert_cmpint (g_stat (place->path, &status), ==, 0);
  g_assert_true (S_ISFIFO (status.st_mode));
}

/* The device that is always full: number 1, 7 (Linux, Documentation/admin-guide/devices.txt, from
 * memory). */
static void
test_full_device (Place *place, gconstpointer data)
{
  GStatBuf status;
  (void) data;
  int fd = mknod (place->path, S_IFCHR | 0600, makedev (1, 7)) == 0
               ? g_open (place->path, O_WRONLY, 0)
               : -1;
  if (fd < 0)
    {
      g_test_skip ("no device can be made here");
      return;
    }
  close (fd);
  assert_not_written (place->path, "the disk is full");
  g_assert_cmpint (g_stat (place->path, &status), ==, 0);
  g_assert_true (S_ISCHR (status.st_mode));
}

/* For everyone but root. */
static void
test_protected_file (Place *place, gconstpointer data)
{
  (void) data;
  if (geteuid () == 0)
    {
      g_test_skip ("root may write everything");
      return;
    }
  write_text (place->path, "old\n");
  g_assert_cmpint (g_chmod (place->path, 0444), ==, 0);
  assert_not_written (place->path, "there is no permission");
  assert_text (place->path, "old\n");
  g_assert_cmpint (g_chmod (place->folder, 0555), ==, 0);
  assert_not_written (place->path, "there is no permission");
  g_autoptr (GError) error = NULL;
  g_assert_cmpint (g_chmod (place->path, 0), ==, 0);
  g_assert_null (store_read (place->path, &error));
  g_assert_error (error, STORE_ERROR, STORE_ERROR_READ);
  g_assert_cmpint (g_chmod (place->folder, 0755), ==, 0);
}

/* As above, run as nobody by a child of root. */
static void
test_protected_folder_as_nobody (Place *place, gconstpointer data)
{
  int status;
  (void) data;
  if (geteuid () != 0)
    {
      g_test_skip ("only root becomes someone else");
      return;
    }
  write_text (place->path, "old\n");
  g_assert_cmpint (g_chmod (place->folder, 0755), ==, 0);
  pid_t child = fork ();
  if (child == 0)
    {
      g_autoptr (GError) error = NULL;
      if (setgid (65534) != 0 || setuid (65534) != 0)
        _exit (2);
      gboolean written = store_write_bytes ("new\n", 4, place->path, &error);
      _exit (!written && strstr (error->message, "there is no permission") != NULL ? 0 : 1);
    }
  g_assert_cmpint (waitpid (child, &status, 0), ==, child);
  g_assert_cmpint (status, ==, 0);
  assert_text (place->path, "old\n");
  assert_names (place->folder, "house.halfbond");
}

/* A text that would be refused later is refused now, while the older file is still there. */
static void
test_what_could_not_be_read_is_not_written (Place *place, gconstpointer data)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (Project) project = project_new ();
  (void) data;
  write_text (place->path, "old\n");
  project->title = g_strnfill (STORE_MAX_NAME + 1, 't');
  g_assert_false (store_write (project, place->path, &error));
  g_assert_error (error, STORE_ERROR, STORE_ERROR_WRITE);
  g_assert_nonnull (strstr (error->message, "longer than 10000 characters"));
  assert_text (place->path, "old\n");
}

static void
assert_not_read (const char *path, const char *reason)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *expected = g_strdup_printf ("%s cannot be read: %s.", path, reason);
  g_assert_null (store_read (path, &error));
  g_assert_error (error, STORE_ERROR, STORE_ERROR_READ);
  g_assert_cmpstr (error->message, ==, expected);
}

static void
test_what_cannot_be_read (Place *place, gconstpointer data)
{
  (void) data;
  assert_not_read (place->path, "there is no such file or folder");
  assert_not_read (place->folder, "it is a folder");
  write_text (place->path, "old\n");
  g_autofree char *below = g_build_filename (place->path, "x", NULL);
  assert_not_read (below, "a part of the path is not a folder");
}

static void
test_stamp (Place *place, gconstpointer data)
{
  (void) data;
  g_autofree char *none = store_stamp (place->path);
  g_assert_cmpstr (none, ==, "");
  write_text (place->path, "old\n");
  g_autofree char *first = store_stamp (place->path);
  g_autofree char *same = store_stamp (place->path);
  g_assert_cmpstr (first, !=, "");
  g_assert_cmpstr (first, ==, same);
  /* The same bytes written again are another file. */
  write_text (place->path, "old\n");
  g_autofree char *again = store_stamp (place->path);
  g_assert_cmpstr (again, !=, first);
}

/* The same size, the same time, the same inode: only the digest tells. */
static void
test_stamp_sees_the_content (Place *place, gconstpointer data)
{
  struct stat status;
  (void) data;
  write_text (place->path, "old\n");
  g_assert_cmpint (stat (place->path, &status), ==, 0);
  const struct timespec times[] = { status.st_atim, status.st_mtim };
  g_autofree char *before = store_stamp (place->path);
  int fd = g_open (place->path, O_WRONLY, 0);
  g_assert_cmpint (write (fd, "new\n", 4), ==, 4);
  g_assert_cmpint (futimens (fd, times), ==, 0);
  close (fd);
  g_autofree char *after = store_stamp (place->path);
  g_assert_cmpstr (before, !=, after);
  fd = g_open (place->path, O_WRONLY, 0);
  g_assert_cmpint (write (fd, "old\n", 4), ==, 4);
  g_assert_cmpint (futimens (fd, times), ==, 0);
  close (fd);
  g_autofree char *back = store_stamp (place->path);
  g_assert_cmpstr (before, ==, back);
}

static const struct
{
  const char *path;
  void (*test) (Place *place, gconstpointer data);
} tests[] = {
  { "/file/new", test_new_file },
  { "/file/nothing-at-all", test_nothing_at_all },
  { "/file/project-comes-back", test_project_comes_back },
  { "/file/rights-are-kept", test_rights_are_kept },
  { "/file/owner-is-kept", test_owner_is_kept },
  { "/file/link-is-kept", test_link_is_kept },
  { "/file/link-to-nothing-yet", test_link_to_nothing_yet },
  { "/file/link-in-a-circle", test_link_in_a_circle },
  { "/file/folder-that-is-not-there", test_folder_that_is_not_there },
  { "/file/folder-of-that-name", test_folder_of_that_name },
  { "/file/file-for-a-folder", test_file_for_a_folder },
  { "/file/name-too-long", test_name_too_long },
  { "/file/longest-name", test_longest_name },
  { "/file/short-write-keeps-the-old-file", test_short_write_keeps_the_old_file },
  { "/file/short-write-leaves-no-new-file", test_short_write_leaves_no_new_file },
  { "/file/pipe", test_pipe },
  { "/file/full-device", test_full_device },
  { "/file/protected-file", test_protected_file },
  { "/file/protected-folder-as-nobody", test_protected_folder_as_nobody },
  { "/file/what-could-not-be-read-is-not-written", test_what_could_not_be_read_is_not_written },
  { "/file/what-cannot-be-read", test_what_cannot_be_read },
  { "/file/stamp", test_stamp },
  { "/file/stamp-sees-the-content", test_stamp_sees_the_content },
};

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  for (guint i = 0; i < G_N_ELEMENTS (tests); i++)
    g_test_add (tests[i].path, Place, NULL, set_up, tests[i].test, tear_down);
  return g_test_run ();
}
