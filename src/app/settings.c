#include "app/settings.h"

#define SCHEMA "org.halfbond.Halfbond"

/* NULL where the schema is not installed: g_settings_new() would end the program. */
static GSettings *
settings_new (void)
{
  GSettingsSchemaSource *source = g_settings_schema_source_get_default ();
  g_autoptr (GSettingsSchema) schema
      = source ? g_settings_schema_source_lookup (source, SCHEMA, TRUE) : NULL;

  return schema ? g_settings_new_full (schema, NULL, NULL) : NULL;
}

HbColours
hb_settings_get_colours (void)
{
  g_autoptr (GSettings) settings = settings_new ();

  return settings ? (HbColours) g_settings_get_enum (settings, "colours") : HB_COLOURS_PLATFORM;
}

void
hb_settings_set_colours (HbColours colours)
{
  g_autoptr (GSettings) settings = settings_new ();

  if (settings)
    g_settings_set_enum (settings, "colours", (int) colours);
}

void
hb_settings_get_window (int *width, int *height, gboolean *maximized)
{
  g_autoptr (GSettings) settings = settings_new ();

  *width = settings ? g_settings_get_int (settings, "window-width") : 1366;
  *height = settings ? g_settings_get_int (settings, "window-height") : 740;
  *maximized = settings ? g_settings_get_boolean (settings, "window-maximized") : FALSE;
}

void
hb_settings_set_window (int width, int height, gboolean maximized)
{
  g_autoptr (GSettings) settings = settings_new ();

  if (!settings)
    return;
  g_settings_set_int (settings, "window-width", width);
  g_settings_set_int (settings, "window-height", height);
  g_settings_set_boolean (settings, "window-maximized", maximized);
}
