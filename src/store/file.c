/* file.c - whole files: read within bounds, written so that either the old or the new one is there
 */
#include "store/store.h"

#include <errno.h>
#include <fcntl.h>
#include <glib/gi18n-lib.h>
#include <glib/gstdio.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

/* Bytes asked for at a time. */
#define PORTION (256 * 1024)

/* For people: what the system says is wrong, in words of the job where it is common. */
static const char *
reason_of (int number)
{
  switch (number)
    {
    case ENOENT:
      return _ ("there is no such file or folder");
    case EACCES:
    case EPERM:
      return _ ("there is no permission");
    case EROFS:
      return _ ("the disk can only be read");
    case ENOSPC:
    case EDQUOT:
      return _ ("the disk is full");
    case EFBIG:
      return _ ("the file would be larger than the system allows");
    case EISDIR:
      return _ ("it is a folder");
    case ENOTDIR:
      return _ ("a part of the path is not a folder");
    case ENAMETOOLONG:
      return _ ("the name is too long");
    default:
      return g_strerror (number);
    }
}

static gboolean
not_read (GError **error, const char *path, int number)
{
  g_autofree char *shown = g_filename_display_name (path);
  g_set_error (error, STORE_ERROR, STORE_ERROR_READ, _ ("%s cannot be read: %s."), shown,
               reason_of (number));
  return FALSE;
}

static gboolean
not_written (GError **error, const char *path, int number)
{
  g_autofree char *shown = g_filename_display_name (path);
  g_set_error (error, STORE_ERROR, STORE_ERROR_WRITE, _ ("%s was not written: %s."), shown,
               number == ENOENT ? _ ("its folder is not there") : reason_of (number));
  return FALSE;
}

/* Appends what there is, up to one byte more than a project may have. 0, or the error's number. */
static int
read_all (int fd, GByteArray *out)
{
  g_autofree guint8 *portion = g_malloc (PORTION);
  while (out->len <= STORE_MAX_BYTES)
    {
      ssize_t n = read (fd, portion, MIN (PORTION, STORE_MAX_BYTES + 1 - out->len));
      if (n == 0)
        return 0;
      if (n > 0)
        g_byte_array_append (out, portion, (guint) n);
      else if (errno != EINTR)
        return errno;
    }
  return 0;
}

/* NULL, and the error's number, when it cannot be read. */
static GByteArray *
read_file (const char *path, int *number)
{
  struct stat status;
  int fd = g_open (path, O_RDONLY | O_CLOEXEC, 0);
  GByteArray *bytes = g_byte_array_new ();
  if (fd < 0 || fstat (fd, &status) != 0)
    *number = errno;
  else
    *number = S_ISDIR (status.st_mode) ? EISDIR : read_all (fd, bytes);
  if (fd >= 0)
    close (fd);
  if (*number != 0)
    g_clear_pointer (&bytes, g_byte_array_unref);
  return bytes;
}

Project *
store_read (const char *path, GError **error)
{
  int number;
  g_autoptr (GByteArray) bytes = read_file (path, &number);
  if (bytes == NULL)
    {
      not_read (error, path, number);
      return NULL;
    }
  g_autofree char *shown = g_filename_display_name (path);
  return store_read_bytes ((const char *) bytes->data, bytes->len, shown, error);
}

/* As many as the system follows. */
#define MAX_LINKS 40

/* Where the path's symbolic links lead, be anything there or not; NULL: they go in a circle. */
static char *
follow (const char *path)
{
  g_autofree char *at = g_strdup (path);
  for (int i = 0; i < MAX_LINKS; i++)
    {
      g_autofree char *link = g_file_read_link (at, NULL);
      if (link == NULL)
        return g_steal_pointer (&at);
      g_autofree char *folder = g_path_get_dirname (at);
      g_free (at);
      at = g_path_is_absolute (link) ? g_strdup (link) : g_build_filename (folder, link, NULL);
    }
  return NULL;
}

/* 0, or the error's number. */
static int
write_all (int fd, const char *bytes, gsize n)
{
  while (n > 0)
    {
      ssize_t written = write (fd, bytes, MIN (n, PORTION));
      if (written < 0 && errno != EINTR)
        return errno;
      bytes += MAX (written, 0);
      n -= (gsize) MAX (written, 0);
    }
  return 0;
}

/* The new file is as the old one: its owner where that is allowed, and who may do what with it. */
static int
keep_rights (int fd, const struct stat *old)
{
  mode_t mode = old->st_mode & 07777;
  if (fchown (fd, old->st_uid, old->st_gid) != 0)
    mode &= 0777;
  return fchmod (fd, mode) == 0 ? 0 : errno;
}

/* Some file systems have nothing to flush. */
static int
flush (int fd)
{
  return fsync (fd) == 0 || errno == EINVAL || errno == ENOSYS ? 0 : errno;
}

/* After a loss of power the folder has the new name. The file itself is well by now, so that there
 * is nothing to report. */
static void
flush_folder (const char *folder)
{
  int fd = g_open (folder, O_RDONLY | O_DIRECTORY | O_CLOEXEC, 0);
  if (fd < 0)
    return;
  flush (fd);
  close (fd);
}

/* Fills the temporary file; `old` is what is there now, or NULL. 0, or the error's number. */
static int
fill (int fd, const char *bytes, gsize n, const struct stat *old)
{
  int number = old != NULL ? keep_rights (fd, old) : 0;
  if (number == 0)
    number = write_all (fd, bytes, n);
  if (number == 0)
    number = flush (fd);
  if (close (fd) != 0 && number == 0)
    number = errno;
  return number;
}

static int
replace (const char *target, const char *bytes, gsize n, const struct stat *old)
{
  g_autofree char *folder = g_path_get_dirname (target);
  g_autofree char *temporary = g_build_filename (folder, ".halfbond-XXXXXX", NULL);
  /* Nobody else reads it before it has the old file's rights. */
  int fd = g_mkstemp_full (temporary, O_WRONLY | O_CLOEXEC, old != NULL ? 0600 : 0666);
  if (fd < 0)
    return errno;
  int number = fill (fd, bytes, n, old);
  if (number == 0 && g_rename (temporary, target) != 0)
    number = errno;
  if (number != 0)
    g_unlink (temporary);
  else
    flush_folder (folder);
  return number;
}

/* A device or a pipe stays what it is. */
static int
write_into (const char *target, const char *bytes, gsize n)
{
  int fd = g_open (target, O_WRONLY | O_CLOEXEC, 0);
  if (fd < 0)
    return errno;
  int number = write_all (fd, bytes, n);
  if (close (fd) != 0 && number == 0)
    number = errno;
  return number;
}

static int
write_to (const char *target, const char *bytes, gsize n)
{
  struct stat old;
  if (stat (target, &old) != 0)
    return errno == ENOENT ? replace (target, bytes, n, NULL) : errno;
  if (S_ISDIR (old.st_mode))
    return EISDIR;
  if (!S_ISREG (old.st_mode))
    return write_into (target, bytes, n);
  /* A rename would pass by a file that is not to be written. */
  if (faccessat (AT_FDCWD, target, W_OK, AT_EACCESS) != 0)
    return errno;
  return replace (target, bytes, n, &old);
}

gboolean
store_write_bytes (const char *bytes, gsize n, const char *path, GError **error)
{
  g_autofree char *target = follow (path);
  int number = target != NULL ? write_to (target, bytes, n) : ELOOP;
  return number == 0 || not_written (error, path, number);
}

/* What was written is what will be opened: a text that would then be refused is not written. */
gboolean
store_write (const Project *project, const char *path, GError **error)
{
  gsize n;
  g_autofree char *text = store_text (project, &n);
  g_autofree char *shown = g_filename_display_name (path);
  g_autoptr (GError) fault = NULL;
  g_autoptr (Project) again = store_read_bytes (text, n, shown, &fault);
  if (again != NULL)
    return store_write_bytes (text, n, path, error);
  g_set_error (error, STORE_ERROR, STORE_ERROR_WRITE,
               _ ("%s was not written, because it could not be opened again: %s"), shown,
               fault->message);
  return FALSE;
}

char *
store_stamp (const char *path)
{
  struct stat status;
  int number;
  g_autoptr (GByteArray) bytes = read_file (path, &number);
  if (bytes == NULL || stat (path, &status) != 0)
    return g_strdup ("");
  g_autofree char *digest
      = g_compute_checksum_for_data (G_CHECKSUM_SHA256, bytes->data, bytes->len);
  return g_strdup_printf ("%" G_GINT64_FORMAT " %" G_GINT64_FORMAT ".%09ld %" G_GUINT64_FORMAT
                          " %s",
                          (gint64) status.st_size, (gint64) status.st_mtim.tv_sec,
                          (long) status.st_mtim.tv_nsec, (guint64) status.st_ino, digest);
}
