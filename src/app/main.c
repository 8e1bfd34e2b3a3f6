#include <glib/gi18n.h>
#include <locale.h>

#include "app/application.h"

/* Whether there is a graphics card to draw with. */
static gboolean
has_graphics_card (void)
{
  g_autoptr (GDir) folder = g_dir_open ("/dev/dri", 0, NULL);

  for (const char *name; folder && (name = g_dir_read_name (folder));)
    if (g_str_has_prefix (name, "renderD"))
      return TRUE;
  return g_file_test ("/dev/nvidia0", G_FILE_TEST_EXISTS);
}

/* With none, GTK would still draw through GL, which is then done in software: cairo has the first
 * frame and every later one sooner (docs/performance.md). Who says otherwise is heeded. */
static void
choose_renderer (void)
{
  if (!has_graphics_card ())
    g_setenv ("GSK_RENDERER", "cairo", FALSE);
}

int
main (int argc, char **argv)
{
  g_autoptr (GtkApplication) application = NULL;

  choose_renderer ();
  setlocale (LC_ALL, "");
  bindtextdomain (GETTEXT_PACKAGE, HALFBOND_LOCALEDIR);
  bind_textdomain_codeset (GETTEXT_PACKAGE, "UTF-8");
  textdomain (GETTEXT_PACKAGE);
  application = hb_application_new ();
  return g_application_run (G_APPLICATION (application), argc, argv);
}
