/* output.h - where results go: standard output, or a file that is written whole or not at all */
#pragma once

#include "cli/verb.h"
#include "model/project.h"

/* `path` NULL or "-": standard output. Otherwise the file is replaced in one step, and never when
 * it is the same file as `input`, the project that was read (NULL: none was). The answer is
 * STATUS_DONE, or STATUS_CALL or STATUS_WRITE after a message. */
Status output_bytes (const char *path, const char *input, const char *bytes, gsize n);
Status output_text (const char *path, const char *input, const GString *text);
/* The same with a project. */
Status output_project (const char *path, const char *input, const Project *project);
/* A name or sentence of the project with spaces for its control characters, so that it stays on one
 * line of plain text. Free it. */
char *output_line (const char *text);
/* A result that no terminal can show needs -o, or standard output sent elsewhere. FALSE after a
 * message. */
gboolean output_may_be_binary (const char *verb, const char *path);
/* The worse of two statuses, for a call that has both a verdict and a result to write. */
Status output_verdict (Status verdict, Status written);
