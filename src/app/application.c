#include "app/application.h"

#include <glib/gi18n.h>

#include "app/settings.h"
#include "app/window.h"

#define ID "org.halfbond.Halfbond"
#define EXAMPLE "examples" G_DIR_SEPARATOR_S "garden-studio.halfbond"

struct _HbApplication
{
  GtkApplication parent;

  GtkCssProvider *style, *dark_style;
  gboolean platform_dark; /* what the platform said at the start */
};

G_DEFINE_FINAL_TYPE (HbApplication, hb_application, GTK_TYPE_APPLICATION)

/* ---- looks ---- */

static const char *const colour_words[] = { "platform", "light", "dark" };

static void
dark_cb (HbApplication *self)
{
  GdkDisplay *display = gdk_display_get_default ();
  gboolean dark = FALSE;

  g_object_get (gtk_settings_get_default (), "gtk-application-prefer-dark-theme", &dark, NULL);
  if (dark)
    gtk_style_context_add_provider_for_display (display, GTK_STYLE_PROVIDER (self->dark_style),
                                                GTK_STYLE_PROVIDER_PRIORITY_APPLICATION + 1);
  else
    gtk_style_context_remove_provider_for_display (display, GTK_STYLE_PROVIDER (self->dark_style));
}

/* A theme whose name ends so is the platform's way to say dark. */
static gboolean
is_platform_dark (void)
{
  gboolean dark = FALSE;
  g_autofree char *theme = NULL;

  g_object_get (gtk_settings_get_default (), "gtk-application-prefer-dark-theme", &dark,
                "gtk-theme-name", &theme, NULL);
  return dark || (theme && g_str_has_suffix (theme, "-dark"));
}

static void
use_colours (HbApplication *self, HbColours colours)
{
  const gboolean dark
      = colours == HB_COLOURS_PLATFORM ? self->platform_dark : colours == HB_COLOURS_DARK;

  g_object_set (gtk_settings_get_default (), "gtk-application-prefer-dark-theme", dark, NULL);
}

static void
colours_changed (GSimpleAction *action, GVariant *value, gpointer data)
{
  const char *word = g_variant_get_string (value, NULL);

  for (int i = 0; i < (int) G_N_ELEMENTS (colour_words); i++)
    if (g_str_equal (word, colour_words[i]))
      {
        hb_settings_set_colours ((HbColours) i);
        use_colours (data, (HbColours) i);
        g_simple_action_set_state (action, value);
      }
}

static void
add_style (HbApplication *self)
{
  self->style = gtk_css_provider_new ();
  self->dark_style = gtk_css_provider_new ();
  gtk_css_provider_load_from_resource (self->style, "/org/halfbond/ui/style.css");
  gtk_css_provider_load_from_resource (self->dark_style, "/org/halfbond/ui/style-dark.css");
  gtk_style_context_add_provider_for_display (gdk_display_get_default (),
                                              GTK_STYLE_PROVIDER (self->style),
                                              GTK_STYLE_PROVIDER_PRIORITY_APPLICATION);
  g_signal_connect_object (gtk_settings_get_default (), "notify::gtk-application-prefer-dark-theme",
                           G_CALLBACK (dark_cb), self, G_CONNECT_SWAPPED);
  dark_cb (self);
}

/* ---- windows and files ---- */

static GFile *
example_file (void)
{
  const char *const folders[] = { HALFBOND_DATADIR, HALFBOND_SOURCE_ROOT "/data" };

  for (guint i = 0; i < G_N_ELEMENTS (folders); i++)
    {
      g_autofree char *path = g_build_filename (folders[i], EXAMPLE, NULL);

      if (g_file_test (path, G_FILE_TEST_IS_REGULAR))
        return g_file_new_for_path (path);
    }
  return NULL;
}

static void
hb_application_activate (GApplication *application)
{
  GtkWindow *window = gtk_application_get_active_window (GTK_APPLICATION (application));
  g_autoptr (GFile) example = NULL;

  if (!window)
    {
      window = GTK_WINDOW (hb_window_new (GTK_APPLICATION (application)));
      example = example_file ();
      if (example)
        hb_window_open (HB_WINDOW (window), example, TRUE);
    }
  gtk_window_present (window);
}

/* An untouched window takes the file; else it gets a window of its own. */
static HbWindow *
window_for (HbApplication *self)
{
  GtkWindow *window = gtk_application_get_active_window (GTK_APPLICATION (self));

  if (HB_IS_WINDOW (window) && hb_window_is_untouched (HB_WINDOW (window)))
    return HB_WINDOW (window);
  return hb_window_new (GTK_APPLICATION (self));
}

static void
hb_application_open (GApplication *application, GFile **files, int n_files, const char *hint)
{
  (void) hint;
  for (int i = 0; i < n_files; i++)
    {
      HbWindow *window = window_for (HB_APPLICATION (application));

      hb_window_open (window, files[i], FALSE);
      gtk_window_present (GTK_WINDOW (window));
    }
}

/* Each window asks for what is not saved, and may stay. */
static void
quit (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  GList *windows = g_list_copy (gtk_application_get_windows (GTK_APPLICATION (data)));

  (void) action;
  (void) parameter;
  for (GList *i = windows; i; i = i->next)
    gtk_window_close (i->data);
  g_list_free (windows);
}

static void
hb_application_startup (GApplication *application)
{
  HbApplication *self = HB_APPLICATION (application);
  const HbColours colours = hb_settings_get_colours ();
  const GActionEntry entries[] = {
    { .name = "quit", .activate = quit },
    { .name = "colours",
      .parameter_type = "s",
      .state = "'platform'",
      .change_state = colours_changed },
  };

  G_APPLICATION_CLASS (hb_application_parent_class)->startup (application);
  gtk_window_set_default_icon_name (ID);
  self->platform_dark = is_platform_dark ();
  g_action_map_add_action_entries (G_ACTION_MAP (self), entries, G_N_ELEMENTS (entries), self);
  g_action_group_change_action_state (G_ACTION_GROUP (self), "colours",
                                      g_variant_new_string (colour_words[colours]));
  add_style (self);
}

static void
hb_application_finalize (GObject *object)
{
  HbApplication *self = HB_APPLICATION (object);

  g_clear_object (&self->style);
  g_clear_object (&self->dark_style);
  G_OBJECT_CLASS (hb_application_parent_class)->finalize (object);
}

static void
hb_application_class_init (HbApplicationClass *klass)
{
  GApplicationClass *application_class = G_APPLICATION_CLASS (klass);

  G_OBJECT_CLASS (klass)->finalize = hb_application_finalize;
  application_class->startup = hb_application_startup;
  application_class->activate = hb_application_activate;
  application_class->open = hb_application_open;
}

static void
hb_application_init (HbApplication *self)
{
  const GOptionEntry none[] = { { 0 } };

  g_application_add_main_option_entries (G_APPLICATION (self), none);
  g_application_set_option_context_parameter_string (G_APPLICATION (self), _ ("[FILE…]"));
}

GtkApplication *
hb_application_new (void)
{
  return g_object_new (HB_TYPE_APPLICATION, "application-id", ID, "flags",
                       G_APPLICATION_HANDLES_OPEN, "resource-base-path", "/org/halfbond", NULL);
}
