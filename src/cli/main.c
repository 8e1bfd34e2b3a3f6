/* main.c - halfbond-cli: the work of Halfbond with no display */
#include <glib/gi18n.h>
#include <locale.h>
#include <stdio.h>
#include <string.h>

#include "cli/arguments.h"
#include "cli/verb.h"

static void
prepare_language (void)
{
  setlocale (LC_ALL, "");
  /* Results do not depend on where they are made. */
  setlocale (LC_NUMERIC, "C");
  bindtextdomain (GETTEXT_PACKAGE, HALFBOND_LOCALEDIR);
  bind_textdomain_codeset (GETTEXT_PACKAGE, "UTF-8");
  textdomain (GETTEXT_PACKAGE);
}

static void
print_help (FILE *where)
{
  fputs (_ ("Call: halfbond-cli VERB [OPTION…] [FILE]\n\n"
            "Lays, counts and checks the walls of a Halfbond project.\n\n"),
         where);
  for (const Verb *verb = verbs; verb->name; verb++)
    fprintf (where, "  %-8s  %s\n", verb->name, _ (verb->summary));
  fputs (
      _ ("\n“halfbond-cli VERB --help” tells the options of each, “halfbond-cli --version” the "
         "version.\n\n"
         "Exit status: 0 done; 1 done, and a rule is broken; 2 wrong call; 3 the file cannot be\n"
         "read or is not valid; 4 the result could not be written.\n"),
      where);
}

static Status
print_to_standard (gboolean version)
{
  if (version)
    puts ("halfbond-cli " HALFBOND_VERSION);
  else
    print_help (stdout);
  return fflush (stdout) == 0 && !ferror (stdout) ? STATUS_DONE : STATUS_WRITE;
}

int
main (int argc, char **argv)
{
  prepare_language ();
  if (argc < 2)
    {
      print_help (stderr);
      return STATUS_CALL;
    }
  if (strcmp (argv[1], "--help") == 0 || strcmp (argv[1], "-h") == 0)
    return print_to_standard (FALSE);
  if (strcmp (argv[1], "--version") == 0)
    return print_to_standard (TRUE);

  const Verb *verb = verb_find (argv[1]);
  if (verb)
    return verb->run (argc - 1, argv + 1);
  complain (_ ("“%s” is no verb. See “halfbond-cli --help”."), argv[1]);
  return STATUS_CALL;
}
