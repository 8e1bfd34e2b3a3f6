#include <gio/gio.h>
#include <glib/gstdio.h>
#include <locale.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "export/export.h"
#include "export/page.h"
#include "paint/sample.h"

static GBytes *
pdf_of (const Sample *sample, gboolean client, int scale, const char *paper)
{
  g_autoptr (GError) error = NULL;
  GBytes *bytes = export_pdf (sample->project, sample_wall (sample), sample->layout, client, scale,
                              paper, &error);

  g_assert_no_error (error);
  return bytes;
}

static void
test_usual_scales (void)
{
  static const struct
  {
    SampleKind kind;
    const char *paper;
    int scale;
  } cases[] = {
    { SAMPLE_STREET, "A4", 50 }, { SAMPLE_STREET, "A3", 25 }, { SAMPLE_LONG, "A4", 100 },
    { SAMPLE_SMALL, "A4", 20 },  { SAMPLE_SMALL, "A3", 10 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_auto (Sample) sample = sample_new (cases[i].kind);
      g_autoptr (GError) error = NULL;
      Page page;
      page_set (&page, sample.project, sample_wall (&sample), sample.layout, FALSE, 0,
                cases[i].paper, &error);
      g_assert_no_error (error);
      g_assert_cmpint (page.scale, ==, cases[i].scale);
      g_assert_cmpfloat_with_epsilon (page.view.scale * page.scale, STEPS_PER_MM, 1e-9);
    }
}

static gboolean
has_text (const Drawing *drawing, const char *text)
{
  for (guint i = 0; i < drawing->marks->len; i++)
    if (drawing_mark (drawing, i)->kind == MARK_TEXT
        && g_str_equal (drawing_text (drawing, drawing_mark (drawing, i)), text))
      return TRUE;
  return FALSE;
}

/* The key tells of the wedges on the page that has them, and on no other. */
static void
test_key_tells_of_pins (void)
{
  g_auto (Sample) sample = sample_new (SAMPLE_STREET);
  Page page;

  for (int pinned = 0; pinned < 2; pinned++)
    {
      g_autoptr (Drawing) first = NULL, second = NULL;

      g_array_index (sample.layout->pieces, Piece, 3).pinned = pinned ? PINNED_FACE : PINNED_NOT;
      g_assert_true (page_set (&page, sample.project, sample_wall (&sample), sample.layout, FALSE,
                               0, "A4", NULL));
      first = page_frame (&page, 1, "Wall");
      second = page_frame (&page, 2, "Courses");
      g_assert_true (has_text (first, "set by hand") == (pinned == 1));
      g_assert_false (has_text (second, "set by hand"));
    }
}

static void
test_refusals (void)
{
  g_auto (Sample) sample = sample_new (SAMPLE_LONG);
  static const struct
  {
    int scale;
    const char *paper;
    int code;
    const char *says;
  } cases[] = {
    { 0, "B5", EXPORT_ERROR_PAPER, "B5" },
    { 0, NULL, EXPORT_ERROR_PAPER, "A4" },
    { 20, "A4", EXPORT_ERROR_SCALE, "1:100 fits" },
    { 1, "A3", EXPORT_ERROR_SCALE, "1:1 " },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (GError) error = NULL;
      GBytes *bytes = export_pdf (sample.project, sample_wall (&sample), sample.layout, FALSE,
                                  cases[i].scale, cases[i].paper, &error);
      g_assert_null (bytes);
      g_assert_error (error, EXPORT_ERROR, cases[i].code);
      g_assert_cmpstr (strstr (error->message, cases[i].says), !=, NULL);
    }
}

/* What a program says on its output; NULL where there is no such program. */
static char *
output_of (const char *program, const char *const *arguments)
{
  g_autofree char *path = g_find_program_in_path (program);
  g_autoptr (GPtrArray) argv = g_ptr_array_new ();
  g_autoptr (GError) error = NULL;
  char *output = NULL;

  if (!path)
    return NULL;
  g_ptr_array_add (argv, path);
  for (guint i = 0; arguments[i]; i++)
    g_ptr_array_add (argv, (gpointer) arguments[i]);
  g_ptr_array_add (argv, NULL);
  g_spawn_sync (NULL, (char **) argv->pdata, NULL, G_SPAWN_STDERR_TO_DEV_NULL, NULL, NULL, &output,
                NULL, NULL, &error);
  g_assert_no_error (error);
  return output;
}

typedef struct
{
  char *folder, *pdf;
} Written;

static Written
written (GBytes *bytes)
{
  g_autoptr (GError) error = NULL;
  Written file = { .folder = g_dir_make_tmp ("sheet-XXXXXX", &error) };
  gsize n;
  const char *start = g_bytes_get_data (bytes, &n);

  g_assert_no_error (error);
  file.pdf = g_build_filename (file.folder, "sheet.pdf", NULL);
  g_file_set_contents (file.pdf, start, (gssize) n, &error);
  g_assert_no_error (error);
  return file;
}

static void
written_clear (Written *file)
{
  g_unlink (file->pdf);
  g_rmdir (file->folder);
  g_free (file->pdf);
  g_free (file->folder);
}
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Written, written_clear)

static void
test_text_is_text (void)
{
  g_auto (Sample) sample = sample_new (SAMPLE_STREET);
  g_autoptr (GBytes) bytes = pdf_of (&sample, FALSE, 50, "A4");
  g_auto (Written) file = written (bytes);
  const char *const arguments[] = { "-layout", file.pdf, "-", NULL };
  g_autofree char *text = output_of ("pdftotext", arguments);
  static const char *const words[]
      = { "Garden studio", "Street side", "1:50",        "2026-03-02",
          "8400",          "W1",          "1200 × 1200", "Print at 100 %" };

  if (!text)
    {
      g_test_skip ("there is no pdftotext");
      return;
    }
  for (guint i = 0; i < G_N_ELEMENTS (words); i++)
    g_assert_cmpstr (strstr (text, words[i]) ? words[i] : "missing", ==, words[i]);
}

/* Ten pixels to the millimetre. The longest run of dark pixels in each row: among them must be the
 * wall's whole length, in its outline and its dimension. */

typedef struct
{
  int width, height;
  const guchar *pixels; /* grey */
} Raster;

static Raster
read_pgm (const char *data)
{
  Raster raster = { 0 };
  char *end;

  g_assert_cmpint (strncmp (data, "P5", 2), ==, 0);
  raster.width = (int) strtol (data + 2, &end, 10);
  raster.height = (int) strtol (end, &end, 10);
  g_assert_cmpint (strtol (end, &end, 10), ==, 255);
  raster.pixels = (const guchar *) end + 1;
  return raster;
}

static int
longest_run (const Raster *raster, int y)
{
  int longest = 0, run = 0;

  for (int x = 0; x < raster->width; x++)
    {
      run = raster->pixels[y * raster->width + x] < 160 ? run + 1 : 0;
      longest = MAX (longest, run);
    }
  return longest;
}

static guint
rows_with_run (const Raster *raster, int wanted)
{
  guint n = 0;

  for (int y = 0; y < raster->height; y++)
    n += ABS (longest_run (raster, y) - wanted) <= 4;
  return n;
}

static char *
raster_of (const Written *file)
{
  g_autofree char *stem = g_build_filename (file->folder, "page", NULL);
  g_autofree char *path = g_strconcat (stem, ".pgm", NULL);
  const char *const arguments[] = { "-r", "254", "-gray", "-singlefile", file->pdf, stem, NULL };
  g_autofree char *output = output_of ("pdftoppm", arguments);
  char *data = NULL;

  if (!output)
    return NULL;
  g_file_get_contents (path, &data, NULL, NULL);
  g_unlink (path);
  return data;
}

static void
test_true_to_scale (gconstpointer data)
{
  const int scale = GPOINTER_TO_INT (data);
  g_auto (Sample) sample = sample_new (SAMPLE_STREET);
  g_autoptr (GBytes) bytes = pdf_of (&sample, FALSE, scale, "A3");
  g_auto (Written) file = written (bytes);
  g_autofree char *pgm = raster_of (&file);

  if (!pgm)
    {
      g_test_skip ("there is no pdftoppm");
      return;
    }
  const Raster raster = read_pgm (pgm);
  g_assert_cmpint (ABS (raster.width - 4200), <=, 1);
  g_assert_cmpint (ABS (raster.height - 2970), <=, 1);
  g_assert_cmpuint (rows_with_run (&raster, 84000 / scale), >=, 4);
  g_assert_cmpuint (rows_with_run (&raster, 84000 / scale + 40), ==, 0);
}

/* Bytes */

static void
assert_same (GBytes *a, GBytes *b)
{
  g_assert_cmpuint (g_bytes_get_size (a), >, 1000);
  g_assert_cmpint (g_bytes_equal (a, b), ==, TRUE);
}

static void
test_same_bytes (void)
{
  g_auto (Sample) one = sample_new (SAMPLE_STREET), other = sample_new (SAMPLE_STREET);

  for (int client = 0; client <= 1; client++)
    {
      g_autoptr (GBytes) before = pdf_of (&one, client, 0, "A4");
      g_setenv ("TZ", "Pacific/Kiritimati", TRUE);
      setlocale (LC_ALL, "de_DE.UTF-8");
      g_autoptr (GBytes) after = pdf_of (&other, client, 0, "A4");
      setlocale (LC_ALL, "C");
      g_unsetenv ("TZ");
      assert_same (before, after);
    }
}

static void
test_hostile_names (void)
{
  static const char long_name[] = "a very long name that would leave its cell on the sheet and go "
                                  "on and on and on and on and on and on";
  static const char *const names[] = { "\x01\x02", "<b>&", "\xff\xfe", long_name };

  for (guint i = 0; i < G_N_ELEMENTS (names); i++)
    {
      g_auto (Sample) sample = sample_new (SAMPLE_STREET);
      Wall *wall = g_ptr_array_index (sample.project->walls, 0);
      g_free (wall->name);
      wall->name = g_strdup (names[i]);
      g_free (sample.project->title);
      sample.project->title = g_strdup (names[i]);
      sample.project->client = g_strdup (names[i]);
      sample.project->author = g_strdup (names[i]);
      g_autoptr (GBytes) bytes = pdf_of (&sample, TRUE, 0, "A4");
      g_assert_cmpuint (g_bytes_get_size (bytes), >, 1000);
    }
}

/* PNG */

static guint32
big_endian (const guchar *p)
{
  return (guint32) p[0] << 24 | (guint32) p[1] << 16 | (guint32) p[2] << 8 | p[3];
}

static void
test_png_sizes (void)
{
  static const int widths[] = { 16, 300, 900, 1600, 4000 };

  for (int kind = 0; kind < N_SAMPLES; kind++)
    for (guint i = 0; i < G_N_ELEMENTS (widths); i++)
      {
        g_auto (Sample) sample = sample_new ((SampleKind) kind);
        g_autoptr (GError) error = NULL;
        g_autoptr (GBytes) bytes = export_png (sample.project, sample_wall (&sample), sample.layout,
                                               i % 2 == 0, widths[i], &error);
        g_assert_no_error (error);
        const guchar *start = g_bytes_get_data (bytes, NULL);
        g_assert_cmpuint (big_endian (start + 16), ==, (guint) widths[i]);
        g_assert_cmpuint (big_endian (start + 20), <=, (guint) widths[i]);
        g_assert_cmpuint (big_endian (start + 20), >=, (guint) widths[i] / 10);
      }
}

static void
test_png_same_bytes (void)
{
  g_auto (Sample) one = sample_new (SAMPLE_STREET), other = sample_new (SAMPLE_STREET);
  g_autoptr (GBytes) a = export_png (one.project, sample_wall (&one), one.layout, FALSE, 900, NULL);
  g_autoptr (GBytes) b
      = export_png (other.project, sample_wall (&other), other.layout, FALSE, 900, NULL);

  assert_same (a, b);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/sheet/largest-usual-scale-that-fits", test_usual_scales);
  g_test_add_func ("/sheet/refuses-with-a-sentence", test_refusals);
  g_test_add_func ("/sheet/key-tells-of-pins", test_key_tells_of_pins);
  g_test_add_func ("/sheet/text-is-text", test_text_is_text);
  g_test_add_data_func ("/sheet/true-to-scale/1-50", GINT_TO_POINTER (50), test_true_to_scale);
  g_test_add_data_func ("/sheet/true-to-scale/1-100", GINT_TO_POINTER (100), test_true_to_scale);
  g_test_add_func ("/sheet/same-bytes-in-another-place-and-zone", test_same_bytes);
  g_test_add_func ("/sheet/hostile-names", test_hostile_names);
  g_test_add_func ("/png/as-wide-as-asked-for", test_png_sizes);
  g_test_add_func ("/png/same-bytes", test_png_same_bytes);
  return g_test_run ();
}
