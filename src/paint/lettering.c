#include "paint/lettering.h"

#include <math.h>

/* More labels than a screen of a large wall holds; then the store starts afresh. */
#define MOST_LABELS 4096

typedef struct
{
  const char *text;
  int size; /* eighths of a step */
  gboolean bold;
} LabelKey;

typedef struct
{
  LabelKey key;
  char *text;
  Label label;
} Entry;

struct Lettering
{
  PangoContext *context;
  char *family;
  GHashTable *labels; /* LabelKey * within an Entry: the Entry */
  double device_scale;
};

static guint
key_hash (gconstpointer data)
{
  const LabelKey *key = data;

  return g_str_hash (key->text) ^ (guint) key->size * 31 ^ (guint) key->bold;
}

static gboolean
key_equal (gconstpointer a, gconstpointer b)
{
  const LabelKey *one = a, *other = b;

  return one->size == other->size && one->bold == other->bold
         && g_str_equal (one->text, other->text);
}

static void
entry_free (gpointer data)
{
  Entry *entry = data;

  g_object_unref (entry->label.layout);
  g_free (entry->text);
  g_free (entry);
}

/* Hinting off: a label is as wide on the screen as on paper. */
static PangoContext *
new_context (void)
{
  PangoContext *context = pango_font_map_create_context (pango_cairo_font_map_get_default ());
  cairo_font_options_t *options = cairo_font_options_create ();

  cairo_font_options_set_hint_style (options, CAIRO_HINT_STYLE_NONE);
  cairo_font_options_set_hint_metrics (options, CAIRO_HINT_METRICS_OFF);
  cairo_font_options_set_antialias (options, CAIRO_ANTIALIAS_GRAY);
  pango_cairo_context_set_font_options (context, options);
  cairo_font_options_destroy (options);
  pango_context_set_round_glyph_positions (context, FALSE);
  pango_context_set_base_dir (context, PANGO_DIRECTION_LTR);
  pango_context_set_language (context, pango_language_from_string ("en"));
  return context;
}

Lettering *
lettering_new (const char *family)
{
  Lettering *lettering = g_new0 (Lettering, 1);

  lettering->context = new_context ();
  lettering->family = g_strdup (family ? family : "Sans");
  lettering->labels = g_hash_table_new_full (key_hash, key_equal, NULL, entry_free);
  lettering->device_scale = 1;
  return lettering;
}

void
lettering_free (Lettering *lettering)
{
  if (!lettering)
    return;
  g_hash_table_unref (lettering->labels);
  g_object_unref (lettering->context);
  g_free (lettering->family);
  g_free (lettering);
}

void
lettering_set_target (Lettering *lettering, cairo_t *cr)
{
  double dx = 1, dy = 0;

  cairo_user_to_device_distance (cr, &dx, &dy);
  const double scale = hypot (dx, dy);
  if (fabs (scale - lettering->device_scale) < 1e-6)
    return;
  lettering->device_scale = scale;
  g_hash_table_remove_all (lettering->labels);
  pango_cairo_update_context (cr, lettering->context);
}

static PangoLayout *
new_layout (const Lettering *lettering, const char *text, double size, gboolean bold)
{
  PangoLayout *layout = pango_layout_new (lettering->context);
  PangoFontDescription *font = pango_font_description_new ();

  pango_font_description_set_family (font, lettering->family);
  pango_font_description_set_absolute_size (font, size * PANGO_SCALE);
  pango_font_description_set_weight (font, bold ? PANGO_WEIGHT_BOLD : PANGO_WEIGHT_NORMAL);
  pango_layout_set_font_description (layout, font);
  pango_font_description_free (font);
  pango_layout_set_single_paragraph_mode (layout, TRUE);
  pango_layout_set_text (layout, text, -1);
  return layout;
}

static Entry *
new_entry (const Lettering *lettering, const LabelKey *key)
{
  Entry *entry = g_new0 (Entry, 1);
  int width, height;

  entry->text = g_strdup (key->text);
  entry->key = *key;
  entry->key.text = entry->text;
  entry->label.layout = new_layout (lettering, key->text, key->size / 8.0, key->bold);
  pango_layout_get_size (entry->label.layout, &width, &height);
  entry->label.width = (double) width / PANGO_SCALE;
  entry->label.height = (double) height / PANGO_SCALE;
  entry->label.baseline = (double) pango_layout_get_baseline (entry->label.layout) / PANGO_SCALE;
  return entry;
}

const Label *
lettering_label (Lettering *lettering, const char *text, double size, gboolean bold)
{
  const LabelKey key = { text, (int) lround (size * 8), bold };
  Entry *entry = g_hash_table_lookup (lettering->labels, &key);

  if (entry)
    return &entry->label;
  if (g_hash_table_size (lettering->labels) >= MOST_LABELS)
    g_hash_table_remove_all (lettering->labels);
  entry = new_entry (lettering, &key);
  g_hash_table_insert (lettering->labels, &entry->key, entry);
  return &entry->label;
}
