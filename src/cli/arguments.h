/* arguments.h - the words of a call, read and judged */
#pragma once

#include "cli/verb.h"
#include "model/length.h"

/* Reads the options of a verb into the variables of `entries`, which ends with a NULL row; --help
 * and --version print and end the program. What is left must be exactly one word where `file` is
 * given (*file is borrowed from argv), none where it is NULL. -o, where it is given, must name a
 * file. FALSE after a message: the call is wrong. */
gboolean arguments_read (const char *verb, const GOptionEntry *entries, int argc, char **argv,
                         const char **file);

/* The length in the value of an option; `text` NULL gives `otherwise`. FALSE after a message when
 * it is no length or is less than `least` (1: it is to be more than nothing). */
gboolean arguments_length (const char *option, const char *text, Length least, Length otherwise,
                           Length *out);

/* One of `words` (ends with NULL): its index; -1 after a message that lists them. */
int arguments_word (const char *option, const char *text, const char *const *words);

/* Prints one sentence on standard error, after the program's name. */
void complain (const char *format, ...) G_GNUC_PRINTF (1, 2);

/* The row that every verb with a result has: -o FILE. */
#define ARGUMENT_OUTPUT(variable)                                                                  \
  {                                                                                                \
    "output", 'o', 0, G_OPTION_ARG_FILENAME, &(variable),                                          \
        N_ ("Write to this file instead of standard output"), N_ ("FILE")                          \
  }
#define ARGUMENT_JSON(variable)                                                                    \
  {                                                                                                \
    "json", 0, 0, G_OPTION_ARG_NONE, &(variable), N_ ("Write JSON"), NULL                          \
  }
#define ARGUMENT_WALL(variable)                                                                    \
  {                                                                                                \
    "wall", 0, 0, G_OPTION_ARG_STRING, &(variable), N_ ("Only the wall of this id"), N_ ("ID")     \
  }
#define ARGUMENT_END                                                                               \
  {                                                                                                \
    NULL, 0, 0, 0, NULL, NULL, NULL                                                                \
  }
