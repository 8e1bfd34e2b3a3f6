#include "paint/ink.h"

#include <math.h>

#include "paint/sample.h"

#define WIDTH 934
#define HEIGHT 626

static cairo_surface_t *
inked (const Drawing *drawing, const View *view, Theme theme, int layer, int course)
{
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_ARGB32, WIDTH, HEIGHT);
  cairo_t *cr = cairo_create (surface);
  Ink *ink = ink_new (NULL);

  ink_draw (ink, cr, drawing, view, theme, layer, course, TRUE);
  ink_free (ink);
  cairo_destroy (cr);
  cairo_surface_flush (surface);
  return surface;
}

/* 0xAARRGGBB */
static guint32
pixel (cairo_surface_t *surface, int x, int y)
{
  const guchar *row = cairo_image_surface_get_data (surface)
                      + (gsize) y * (gsize) cairo_image_surface_get_stride (surface);
  const guint32 *pixels = (const guint32 *) (const void *) row;

  return pixels[x];
}

static guint32
opaque (const Rgba *colour)
{
  return 0xff000000 | (guint32) lround (colour->r * 255) << 16
         | (guint32) lround (colour->g * 255) << 8 | (guint32) lround (colour->b * 255);
}

static Drawing *
boxes (Style style, double from, double to, double next)
{
  Drawing *drawing = drawing_new ();
  const MarkLook look = { .style = (gint16) style, .layer = LAYER_PIECES, .course = 1 };

  drawing_add_box (drawing, &look, (MarkPoint){ from, 0, 0, 0 }, (MarkPoint){ to, 20, 0, 0 });
  drawing_add_box (drawing, &look, (MarkPoint){ to, 0, 0, 0 }, (MarkPoint){ next, 20, 0, 0 });
  return drawing;
}

static void
test_fill_and_line (void)
{
  g_autoptr (Drawing) drawing = boxes (STYLE_PIECE, 10, 50, 90);
  const View view = { 1, 0, 100 };
  cairo_surface_t *surface = inked (drawing, &view, THEME_LIGHT, -1, -1);
  const StyleRow *row = theme_row (THEME_LIGHT, STYLE_PIECE);

  g_assert_cmphex (pixel (surface, 30, 90), ==, opaque (&row->fill));
  g_assert_cmphex (pixel (surface, 30, 70), ==, 0);
  g_assert_cmphex (pixel (surface, 10, 90), ==, opaque (&row->line));
  cairo_surface_destroy (surface);
}

/* Two pieces share the line between them, which is one whole pixel wherever it falls. */
static void
test_crisp_joint (void)
{
  const guint32 line = opaque (&theme_row (THEME_LIGHT, STYLE_PIECE)->line);

  for (double to = 50; to < 51; to += 0.1)
    {
      g_autoptr (Drawing) drawing = boxes (STYLE_PIECE, 10.3, to, 90.7);
      const View view = { 1, 0, 100 };
      cairo_surface_t *surface = inked (drawing, &view, THEME_LIGHT, -1, -1);
      guint n = 0;
      for (int x = 40; x < 60; x++)
        n += pixel (surface, x, 90) == line;
      g_assert_cmpuint (n, ==, 1);
      cairo_surface_destroy (surface);
    }
}

static void
test_only_what_is_asked (void)
{
  g_autoptr (Drawing) drawing = boxes (STYLE_PIECE, 10, 50, 90);
  const View view = { 1, 0, 100 };
  static const struct
  {
    int layer, course;
    gboolean there;
  } cases[] = {
    { -1, -1, TRUE },          { LAYER_PIECES, -1, TRUE }, { LAYER_STEEL, -1, FALSE },
    { LAYER_PIECES, 1, TRUE }, { LAYER_PIECES, 2, FALSE }, { -1, 1, TRUE },
    { -1, 0, FALSE },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      cairo_surface_t *surface
          = inked (drawing, &view, THEME_LIGHT, cases[i].layer, cases[i].course);
      g_assert_cmpint (pixel (surface, 30, 90) != 0, ==, cases[i].there);
      cairo_surface_destroy (surface);
    }
}

static guint
n_of_colour (cairo_surface_t *surface, guint32 colour)
{
  guint n = 0;

  for (int y = 0; y < HEIGHT; y++)
    for (int x = 0; x < WIDTH; x++)
      n += pixel (surface, x, y) == colour;
  return n;
}

static void
test_cut_is_hatched (void)
{
  g_autoptr (Drawing) drawing = boxes (STYLE_PIECE_CUT, 10, 50, 90);
  const View view = { 1, 0, 100 };
  cairo_surface_t *surface = inked (drawing, &view, THEME_LIGHT, -1, -1);
  const guint32 fill = opaque (&theme_row (THEME_LIGHT, STYLE_PIECE_CUT)->fill);
  const guint inside = n_of_colour (surface, fill);

  g_assert_cmpuint (inside, >, 400);
  g_assert_cmpuint (inside, <, 80 * 20 - 300);
  g_assert_cmphex (pixel (surface, 30, 75), ==, 0);
  g_assert_cmphex (pixel (surface, 30, 105), ==, 0);
  cairo_surface_destroy (surface);
}

static void
test_text_is_there_or_dropped (void)
{
  static const struct
  {
    double fit;
    gboolean there;
  } cases[] = { { 0, TRUE }, { 100, TRUE }, { 5, FALSE } };
  const View view = { 1, 0, 100 };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (Drawing) drawing = drawing_new ();
      const MarkLook look = { .style = STYLE_PIECE_LABEL, .fit = cases[i].fit };
      drawing_add_text (drawing, &look, (MarkPoint){ 100, 50, 0, 0 }, 0.5f, 0.5f, "548");
      cairo_surface_t *surface = inked (drawing, &view, THEME_LIGHT, -1, -1);
      g_assert_cmpint (n_of_colour (surface, 0) < WIDTH * HEIGHT, ==, cases[i].there);
      cairo_surface_destroy (surface);
    }
}

/* A drawing by layers and courses, as the window keeps it, is the drawing at once. */
static void
test_layers_make_the_whole (void)
{
  g_auto (Sample) sample = sample_new (SAMPLE_STREET);
  const ElevationInput input = sample_input (&sample);
  g_autoptr (Drawing) drawing = elevation_laying (&input);
  const View view = elevation_fit (input.wall, FALSE, WIDTH, HEIGHT);
  cairo_surface_t *whole = inked (drawing, &view, THEME_DARK, -1, -1);
  cairo_surface_t *parts = cairo_image_surface_create (CAIRO_FORMAT_ARGB32, WIDTH, HEIGHT);
  cairo_t *cr = cairo_create (parts);
  Ink *ink = ink_new (NULL);
  guint differ = 0;

  for (int layer = 0; layer < N_LAYERS; layer++)
    ink_draw (ink, cr, drawing, &view, THEME_DARK, layer, -1, TRUE);
  cairo_surface_flush (parts);
  for (int y = 0; y < HEIGHT; y++)
    for (int x = 0; x < WIDTH; x++)
      differ += pixel (whole, x, y) != pixel (parts, x, y);
  g_assert_cmpuint (differ, ==, 0);
  g_assert_cmpuint (n_of_colour (whole, 0), <, WIDTH * HEIGHT);
  ink_free (ink);
  cairo_destroy (cr);
  cairo_surface_destroy (whole);
  cairo_surface_destroy (parts);
}

/* Where a wall is looked at from very near or very far, nothing breaks. */
static void
test_extreme_views (void)
{
  static const double scales[] = { 1e-6, 1e-3, 10, 1e4 };

  for (int kind = 0; kind < N_SAMPLES; kind++)
    for (guint i = 0; i < G_N_ELEMENTS (scales); i++)
      {
        g_auto (Sample) sample = sample_new ((SampleKind) kind);
        const ElevationInput input = sample_input (&sample);
        g_autoptr (Drawing) laying = elevation_laying (&input);
        g_autoptr (Drawing) client = elevation_client (&input);
        const View view = { scales[i], WIDTH / 2.0, HEIGHT / 2.0 };
        cairo_surface_t *one = inked (laying, &view, THEME_LIGHT, -1, -1);
        cairo_surface_t *other = inked (client, &view, THEME_LIGHT, -1, -1);
        g_assert_cmpint (cairo_surface_status (one), ==, CAIRO_STATUS_SUCCESS);
        g_assert_cmpint (cairo_surface_status (other), ==, CAIRO_STATUS_SUCCESS);
        cairo_surface_destroy (one);
        cairo_surface_destroy (other);
      }
}

/* Labels that were kept are inked as new ones are. */
static void
test_kept_labels (void)
{
  g_auto (Sample) sample = sample_new (SAMPLE_STREET);
  const ElevationInput input = sample_input (&sample);
  g_autoptr (Drawing) drawing = elevation_laying (&input);
  const View view = elevation_fit (input.wall, FALSE, WIDTH, HEIGHT);
  Ink *ink = ink_new (NULL);
  guint differ = 0;
  cairo_surface_t *surfaces[3];

  for (guint i = 0; i < G_N_ELEMENTS (surfaces); i++)
    {
      surfaces[i] = cairo_image_surface_create (CAIRO_FORMAT_ARGB32, WIDTH, HEIGHT);
      cairo_t *cr = cairo_create (surfaces[i]);
      /* The second is drawn twice as large between the two that are compared. */
      if (i == 1)
        cairo_scale (cr, 2, 2);
      ink_draw (ink, cr, drawing, &view, THEME_LIGHT, -1, -1, TRUE);
      cairo_destroy (cr);
      cairo_surface_flush (surfaces[i]);
    }
  for (int y = 0; y < HEIGHT; y++)
    for (int x = 0; x < WIDTH; x++)
      differ += pixel (surfaces[0], x, y) != pixel (surfaces[2], x, y);
  g_assert_cmpuint (differ, ==, 0);
  for (guint i = 0; i < G_N_ELEMENTS (surfaces); i++)
    cairo_surface_destroy (surfaces[i]);
  ink_free (ink);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/ink/fill-and-line-where-they-belong", test_fill_and_line);
  g_test_add_func ("/ink/joints-are-one-pixel", test_crisp_joint);
  g_test_add_func ("/ink/only-the-layer-and-course-asked-for", test_only_what_is_asked);
  g_test_add_func ("/ink/cuts-are-hatched-within-their-outline", test_cut_is_hatched);
  g_test_add_func ("/ink/text-is-dropped-where-it-does-not-fit", test_text_is_there_or_dropped);
  g_test_add_func ("/ink/layers-make-the-whole", test_layers_make_the_whole);
  g_test_add_func ("/ink/extreme-views", test_extreme_views);
  g_test_add_func ("/ink/kept-labels-are-the-same", test_kept_labels);
  return g_test_run ();
}
