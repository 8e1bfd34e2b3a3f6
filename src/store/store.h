/* store.h - projects in files: reads, writes, refuses */
#pragma once

#include <gio/gio.h>

#include "model/project.h"

#define STORE_ERROR (store_error_quark ())
GQuark store_error_quark (void);
typedef enum
{
  STORE_ERROR_READ,    /* the file cannot be read */
  STORE_ERROR_INVALID, /* it is not a valid project; the message has file, line and reason */
  STORE_ERROR_WRITE,   /* it cannot be written; what was there is whole */
} StoreError;

/* Bounds on what is read; beyond them the file is refused. */
#define STORE_MAX_BYTES (64 * 1024 * 1024)
#define STORE_MAX_DEPTH 64
#define STORE_MAX_NAME PROJECT_MAX_TEXT /* characters in one attribute */
#define STORE_MAX_LIST 200000           /* in one that is a list of lengths */

/* The project of a file. Messages are one sentence, "FILE:LINE: reason". Never touches the network,
 * external entities or a DTD. */
Project *store_read (const char *path, GError **error);
Project *store_read_bytes (const char *bytes, gsize n, const char *name, GError **error);

/* The text of a project, NUL-terminated, valid against the schema; the same project gives the same
 * text, and store_read_bytes() of it an equal project. */
char *store_text (const Project *project, gsize *n);

/* Writes atomically: a temporary file in the same folder, flushed, renamed over the old one, the
 * folder flushed. A symbolic link is followed and kept; permissions of an older file are kept. A
 * project whose text could not be opened again is not written: STORE_ERROR_WRITE, with the reason.
 */
gboolean store_write (const Project *project, const char *path, GError **error);
/* The same for any bytes; a device or a pipe is written into. */
gboolean store_write_bytes (const char *bytes, gsize n, const char *path, GError **error);

/* What identifies a file's present content: size, time, inode and a digest; "" when it is not
 * there. Newly allocated. Two equal stamps mean that nobody wrote it meanwhile. */
char *store_stamp (const char *path);
