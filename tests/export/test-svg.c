#include "export/export.h"

#include <string.h>

#include "paint/sample.h"

/* What the reading of one document found. */
typedef struct
{
  GHashTable *pieces;   /* id: its data-* as one text */
  GPtrArray *texts;     /* char * */
  char *title;          /* the document's */
  double width, height; /* mm */
  guint depth, n_paths;
  gboolean in_text;
} Found;

static void
found_clear (Found *found)
{
  g_hash_table_unref (found->pieces);
  g_ptr_array_unref (found->texts);
  g_free (found->title);
}
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Found, found_clear)

static const char *
value_of (const char *name, const char **names, const char **values)
{
  for (guint i = 0; names[i]; i++)
    if (strcmp (names[i], name) == 0)
      return values[i];
  return NULL;
}

static void
start_element (G_GNUC_UNUSED GMarkupParseContext *context, const char *element, const char **names,
               const char **values, gpointer data, G_GNUC_UNUSED GError **error)
{
  Found *found = data;
  const char *shape = value_of ("data-shape", names, values);

  found->in_text = strcmp (element, "text") == 0 || strcmp (element, "title") == 0;
  found->n_paths += strcmp (element, "path") == 0;
  if (strcmp (element, "svg") == 0)
    {
      found->width = g_ascii_strtod (value_of ("width", names, values), NULL);
      found->height = g_ascii_strtod (value_of ("height", names, values), NULL);
    }
  if (shape)
    g_hash_table_insert (found->pieces, g_strdup (value_of ("id", names, values)),
                         g_strdup_printf ("%s %s %s %s %s", shape,
                                          value_of ("data-x", names, values),
                                          value_of ("data-bottom", names, values),
                                          value_of ("data-length", names, values),
                                          value_of ("data-height", names, values)));
}

static void
end_element (G_GNUC_UNUSED GMarkupParseContext *context, G_GNUC_UNUSED const char *element,
             gpointer data, G_GNUC_UNUSED GError **error)
{
  ((Found *) data)->in_text = FALSE;
}

static void
on_text (GMarkupParseContext *context, const char *text, gsize n, gpointer data,
         G_GNUC_UNUSED GError **error)
{
  Found *found = data;

  if (!found->in_text)
    return;
  if (!found->title && strcmp (g_markup_parse_context_get_element (context), "title") == 0)
    found->title = g_strndup (text, n);
  g_ptr_array_add (found->texts, g_strndup (text, n));
}

/* Parses, or fails the test. */
static Found
read_svg (GBytes *bytes)
{
  static const GMarkupParser parser = { start_element, end_element, on_text, NULL, NULL };
  Found found = { .pieces = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, g_free),
                  .texts = g_ptr_array_new_with_free_func (g_free) };
  GMarkupParseContext *context = g_markup_parse_context_new (&parser, 0, &found, NULL);
  g_autoptr (GError) error = NULL;
  gsize n;
  const char *start = g_bytes_get_data (bytes, &n);

  g_markup_parse_context_parse (context, start, (gssize) n, &error);
  g_assert_no_error (error);
  g_markup_parse_context_end_parse (context, &error);
  g_assert_no_error (error);
  g_markup_parse_context_free (context);
  return found;
}

static GBytes *
svg_of (const Sample *sample, gboolean client)
{
  g_autoptr (GError) error = NULL;
  GBytes *bytes
      = export_svg (sample->project, sample_wall (sample), sample->layout, client, &error);

  g_assert_no_error (error);
  return bytes;
}

static void
assert_piece (const Found *found, const Piece *piece)
{
  g_autofree char *id = g_strdup_printf ("w1/%d/%d", piece->course, piece->number);
  g_autofree char *x = length_format (piece->x), *bottom = length_format (piece->bottom);
  g_autofree char *length = length_format (piece->length), *height = length_format (piece->height);
  g_autofree char *wanted = g_strdup_printf ("%s %s %s %s %s", piece_shape_word (piece->shape), x,
                                             bottom, length, height);

  g_assert_cmpstr (g_hash_table_lookup (found->pieces, id), ==, wanted);
}

static void
test_pieces (gconstpointer data)
{
  g_auto (Sample) sample = sample_new ((SampleKind) GPOINTER_TO_INT (data));
  g_autoptr (GBytes) bytes = svg_of (&sample, FALSE);
  g_auto (Found) found = read_svg (bytes);

  g_assert_cmpuint (g_hash_table_size (found.pieces), ==, sample.layout->pieces->len);
  for (guint i = 0; i < sample.layout->pieces->len; i++)
    assert_piece (&found, layout_piece (sample.layout, i));
}

static gboolean
has_text (const Found *found, const char *text)
{
  return g_ptr_array_find_with_equal_func (found->texts, text, g_str_equal, NULL);
}

static void
test_text_is_text (void)
{
  g_auto (Sample) sample = sample_new (SAMPLE_STREET);
  g_autoptr (GBytes) laying = svg_of (&sample, FALSE), client = svg_of (&sample, TRUE);
  g_auto (Found) found = read_svg (laying), finished = read_svg (client);
  static const char *const texts[] = { "W1", "1200 × 1200", "8400", "2649", "course 1" };

  for (guint i = 0; i < G_N_ELEMENTS (texts); i++)
    g_assert_cmpint (has_text (&found, texts[i]), ==, TRUE);
  g_assert_cmpint (has_text (&finished, "Street side"), ==, TRUE);
  g_assert_cmpint (has_text (&finished, "8.40 m"), ==, TRUE);
  g_assert_cmpuint (g_hash_table_size (finished.pieces), ==, 0);
}

/* Names come from files that anyone may have written. */
static void
test_hostile_names (void)
{
  static const struct
  {
    const char *name, *read;
  } cases[] = {
    { "<script>&\"'</script>", "<script>&\"'</script>" },
    { "a\x01\x02\x1b[31mb\x7f", "a[31mb" },
    { "two\nlines\r!", "two lines !" },
    { "]]>", "]]>" },
    { "&#0;&lt;", "&#0;&lt;" },
    { "\xff\xfe", "\xef\xbf\xbd\xef\xbf\xbd" },
    { "\xef\xbf\xbf"
      "end",
      "end" },
    { "\xc2\x85\xc2\x9fx", "x" },
    { "Ł ½ 壁", "Ł ½ 壁" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_auto (Sample) sample = sample_new (SAMPLE_STREET);
      Wall *wall = g_ptr_array_index (sample.project->walls, 0);
      g_free (wall->name);
      wall->name = g_strdup (cases[i].name);
      g_free (sample.project->title);
      sample.project->title = g_strdup (cases[i].name);
      g_autoptr (GBytes) bytes = svg_of (&sample, TRUE);
      g_auto (Found) found = read_svg (bytes);
      g_autofree char *title = g_strdup_printf ("%s – %s", cases[i].read, cases[i].read);
      g_assert_cmpstr (found.title, ==, title);
      g_assert_cmpint (has_text (&found, cases[i].read), ==, TRUE);
    }
}

/* A wall's key is an XML name, and yet nothing is taken on trust. */
static void
test_hostile_key (void)
{
  g_auto (Sample) sample = sample_new (SAMPLE_BARE);
  Wall *wall = g_ptr_array_index (sample.project->walls, 0);

  g_free (wall->key);
  wall->key = g_strdup ("\"><x y=\"");
  g_autoptr (GBytes) bytes = svg_of (&sample, FALSE);
  g_auto (Found) found = read_svg (bytes);
  g_assert_cmpint (g_hash_table_contains (found.pieces, "\"><x y=\"/1/1"), ==, TRUE);
}

/* Nothing of the drawing lies far outside of the page, and the page is as large as the scale says:
 * 8.4 m at 1:50 are 168 mm, and 108 + 118 steps of margin 59.8 mm. */
static void
test_page (void)
{
  g_auto (Sample) sample = sample_new (SAMPLE_STREET);
  g_autoptr (GBytes) bytes = svg_of (&sample, FALSE);
  g_auto (Found) found = read_svg (bytes);
  const ElevationMargins margins = elevation_margins (sample_wall (&sample), FALSE);
  const double sides = (margins.left + margins.right) * 25.4 / 96;

  g_assert_cmpfloat_with_epsilon ((found.width - sides) * 50, 8400, 0.1);
}

static void
test_same_bytes (void)
{
  g_auto (Sample) one = sample_new (SAMPLE_LONG), other = sample_new (SAMPLE_LONG);

  for (int client = 0; client <= 1; client++)
    {
      g_autoptr (GBytes) a = svg_of (&one, client), b = svg_of (&other, client);
      g_assert_cmpint (g_bytes_equal (a, b), ==, TRUE);
      g_assert_cmpuint (g_bytes_get_size (a), >, 5000);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  for (int kind = 0; kind < N_SAMPLES; kind++)
    {
      g_autofree char *path
          = g_strdup_printf ("/svg/every-piece-has-its-id-and-measures/%s", sample_words[kind]);
      g_test_add_data_func (path, GINT_TO_POINTER (kind), test_pieces);
    }
  g_test_add_func ("/svg/text-is-text", test_text_is_text);
  g_test_add_func ("/svg/hostile-names-are-escaped", test_hostile_names);
  g_test_add_func ("/svg/hostile-key-is-escaped", test_hostile_key);
  g_test_add_func ("/svg/page-is-true-to-scale", test_page);
  g_test_add_func ("/svg/same-bytes", test_same_bytes);
  return g_test_run ();
}
