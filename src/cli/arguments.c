#include "cli/arguments.h"

#include <glib/gi18n.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

void
complain (const char *format, ...)
{
  va_list arguments;

  va_start (arguments, format);
  g_autofree char *text = g_strdup_vprintf (format, arguments);
  va_end (arguments);
  fprintf (stderr, "halfbond-cli: %s\n", text);
}

static gboolean
print_version (const char *option G_GNUC_UNUSED, const char *value G_GNUC_UNUSED,
               gpointer data G_GNUC_UNUSED, GError **error G_GNUC_UNUSED)
{
  puts ("halfbond-cli " HALFBOND_VERSION);
  exit (fflush (stdout) == 0 ? STATUS_DONE : STATUS_WRITE);
}

static const GOptionEntry version_entry[] = {
  { "version", 0, G_OPTION_FLAG_NO_ARG, G_OPTION_ARG_CALLBACK, print_version,
    N_ ("Print the version"), NULL },
  ARGUMENT_END,
};

static GOptionContext *
new_context (const char *name, const GOptionEntry *entries)
{
  const Verb *verb = verb_find (name);
  GOptionContext *context = g_option_context_new (*verb->arguments ? _ (verb->arguments) : NULL);
  g_autofree char *prgname = g_strdup_printf ("halfbond-cli %s", name);

  /* GLib names the program by this in --help. */
  g_set_prgname (prgname);
  g_option_context_set_summary (context, _ (verb->summary));
  g_option_context_add_main_entries (context, entries, GETTEXT_PACKAGE);
  g_option_context_add_main_entries (context, version_entry, GETTEXT_PACKAGE);
  return context;
}

/* What -o was given, or NULL. */
static const char *
given_output (const GOptionEntry *entries)
{
  for (; entries->long_name; entries++)
    if (entries->short_name == 'o')
      return *(char *const *) entries->arg_data;
  return NULL;
}

/* An empty name, or a folder's where a file's is wanted. */
static gboolean
output_is_named (const char *verb, const GOptionEntry *entries)
{
  const char *output = given_output (entries);

  if (output && *output == '\0')
    complain (_ ("%s: -o needs a file name."), verb);
  else if (output && g_str_has_suffix (output, G_DIR_SEPARATOR_S))
    complain (_ ("%s: -o needs a file name; “%s” names a folder."), verb, output);
  else
    return TRUE;
  return FALSE;
}

gboolean
arguments_read (const char *verb, const GOptionEntry *entries, int argc, char **argv,
                const char **file)
{
  g_autoptr (GOptionContext) context = new_context (verb, entries);
  g_autoptr (GError) error = NULL;
  const int wanted = file ? 2 : 1;

  if (!g_option_context_parse (context, &argc, &argv, &error))
    complain ("%s: %s", verb, error->message);
  else if (argc < wanted)
    complain (_ ("%s: which project file? See “halfbond-cli %s --help”."), verb, verb);
  else if (argc > wanted)
    complain (_ ("%s: “%s” is one word too many. See “halfbond-cli %s --help”."), verb,
              argv[wanted], verb);
  else if (output_is_named (verb, entries))
    {
      if (file)
        *file = argv[1];
      return TRUE;
    }
  return FALSE;
}

gboolean
arguments_length (const char *option, const char *text, Length least, Length otherwise, Length *out)
{
  Length length = otherwise;
  char least_text[LENGTH_TEXT_SIZE], most_text[LENGTH_TEXT_SIZE];

  if (text && !length_parse (text, &length))
    complain (_ ("--%s: “%s” is not a length in millimetres, %s at most."), option, text,
              length_text (LENGTH_MAX, most_text));
  else if (length < least && least == 1)
    complain (_ ("--%s: it must be more than 0 mm, not %s mm."), option, text);
  else if (length < least)
    complain (_ ("--%s: %s mm is too little, at least %s mm."), option, text,
              length_text (least, least_text));
  else
    {
      *out = length;
      return TRUE;
    }
  return FALSE;
}

int
arguments_word (const char *option, const char *text, const char *const *words)
{
  for (int i = 0; words[i]; i++)
    if (strcmp (words[i], text) == 0)
      return i;
  g_autofree char *list = g_strjoinv (", ", (char **) words);
  complain (_ ("--%s: “%s” is none of %s."), option, text, list);
  return -1;
}
