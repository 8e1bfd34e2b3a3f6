/* settings.h - what the program keeps between runs: colours, the size of the window, panes
 *
 * Where the schema is not installed (run from the build tree), the defaults hold for the run. */
#pragma once

#include <gio/gio.h>

typedef enum
{
  HB_COLOURS_PLATFORM, /* as the platform says */
  HB_COLOURS_LIGHT,
  HB_COLOURS_DARK,
} HbColours;

HbColours hb_settings_get_colours (void);
void hb_settings_set_colours (HbColours colours);
void hb_settings_get_window (int *width, int *height, gboolean *maximized);
void hb_settings_set_window (int width, int height, gboolean maximized);
