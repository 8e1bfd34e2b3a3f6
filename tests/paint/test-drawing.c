#include "paint/drawing.h"

#include <math.h>

#include "paint/theme.h"

static MarkPoint
at (double x, double z)
{
  return (MarkPoint){ x, z, 0, 0 };
}

static MarkLook
look (Layer layer, gint32 a)
{
  return (MarkLook){ .style = STYLE_PIECE,
                     .layer = (gint16) layer,
                     .ref = { .kind = REF_PIECE, .a = a, .b = 1 } };
}

static gint32
picked (const Drawing *drawing, double x, double y, double reach)
{
  const View view = { 1, 0, 0 };
  MarkRef ref;

  return drawing_pick (drawing, &view, x, y, reach, &ref) ? ref.a : 0;
}

/* Sheet y runs down from the foundation: a place at height 10 is at y = -10. */
static void
test_pick_box (void)
{
  g_autoptr (Drawing) drawing = drawing_new ();
  const MarkLook one = look (LAYER_PIECES, 1);
  static const struct
  {
    double x, y;
    gint32 found;
  } cases[] = { { 5, -5, 1 }, { 0.5, -9.5, 1 }, { 10.5, -5, 0 }, { 5, 1, 0 }, { -0.5, -5, 0 } };

  drawing_add_box (drawing, &one, at (0, 0), at (10, 10));
  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    g_assert_cmpint (picked (drawing, cases[i].x, cases[i].y, 3), ==, cases[i].found);
}

static void
test_pick_notched (void)
{
  g_autoptr (Drawing) drawing = drawing_new ();
  const MarkLook one = look (LAYER_PIECES, 1);
  const MarkPoint corners[]
      = { at (0, 0), at (10, 0), at (10, 4), at (5, 4), at (5, 10), at (0, 10) };

  drawing_add (drawing, MARK_POLYGON, &one, corners, G_N_ELEMENTS (corners));
  g_assert_cmpint (picked (drawing, 2, -8, 0), ==, 1);
  g_assert_cmpint (picked (drawing, 8, -2, 0), ==, 1);
  g_assert_cmpint (picked (drawing, 8, -8, 0), ==, 0);
}

static void
test_pick_topmost (void)
{
  g_autoptr (Drawing) drawing = drawing_new ();
  const MarkLook over = look (LAYER_OPENINGS, 2), under = look (LAYER_PIECES, 1);

  drawing_add_box (drawing, &over, at (0, 0), at (10, 10));
  drawing_add_box (drawing, &under, at (0, 0), at (20, 10));
  drawing_finish (drawing);
  g_assert_cmpint (picked (drawing, 5, -5, 0), ==, 2);
  g_assert_cmpint (picked (drawing, 15, -5, 0), ==, 1);
}

static void
test_pick_reach (void)
{
  g_autoptr (Drawing) drawing = drawing_new ();
  const MarkLook line = look (LAYER_OPENINGS, 1), circle = look (LAYER_ROD, 2);

  drawing_add_line (drawing, &line, at (0, 0), at (100, 0));
  drawing_add_circle (drawing, &circle, at (200, 0), 5);
  g_assert_cmpint (picked (drawing, 50, 4, 4), ==, 1);
  g_assert_cmpint (picked (drawing, 50, 4.1, 4), ==, 0);
  g_assert_cmpint (picked (drawing, 104, 0, 4), ==, 1);
  g_assert_cmpint (picked (drawing, 200, 8.9, 4), ==, 2);
  g_assert_cmpint (picked (drawing, 200, 9.1, 4), ==, 0);
}

/* Marks without a ref, and marks that the scale leaves out, are not there for the pointer. */
static void
test_pick_passes_through (void)
{
  g_autoptr (Drawing) drawing = drawing_new ();
  MarkLook under = look (LAYER_PIECES, 1), over = look (LAYER_STEEL, 2);
  const MarkLook plain = { .style = STYLE_PIECE, .layer = LAYER_ROD };

  over.min_scale = 2;
  drawing_add_box (drawing, &under, at (0, 0), at (10, 10));
  drawing_add_box (drawing, &over, at (0, 0), at (10, 10));
  drawing_add_box (drawing, &plain, at (0, 0), at (10, 10));
  g_assert_cmpint (picked (drawing, 5, -5, 0), ==, 1);
}

static void
test_pick_text (void)
{
  g_autoptr (Drawing) drawing = drawing_new ();
  MarkLook text = look (LAYER_DIMENSIONS, 1);

  text.style = STYLE_DIMENSION_TEXT;
  drawing_add_text (drawing, &text, at (100, 0), 0.5f, 0.5f, "1200");
  g_assert_cmpint (picked (drawing, 100, 0, 0), ==, 1);
  g_assert_cmpint (picked (drawing, 90, 0, 0), ==, 1);
  g_assert_cmpint (picked (drawing, 60, 0, 0), ==, 0);
}

static void
test_sorted_stable (void)
{
  g_autoptr (Drawing) drawing = drawing_new ();
  static const Layer layers[] = { LAYER_ROD, LAYER_GROUND, LAYER_ROD, LAYER_PIECES, LAYER_GROUND };
  static const gint32 order[] = { 2, 5, 4, 1, 3 };

  for (guint i = 0; i < G_N_ELEMENTS (layers); i++)
    {
      const MarkLook each = look (layers[i], (gint32) i + 1);
      drawing_add_line (drawing, &each, at (0, 0), at (1, 1));
    }
  drawing_finish (drawing);
  for (guint i = 0; i < G_N_ELEMENTS (order); i++)
    g_assert_cmpint (drawing_mark (drawing, i)->ref.a, ==, order[i]);
}

static void
test_zoom_keeps_place (void)
{
  const View view = { 0.1, 120, 500 };
  static const double factors[] = { 0.25, 0.999, 1, 1.2, 40 };

  for (guint i = 0; i < G_N_ELEMENTS (factors); i++)
    {
      const View zoomed = view_zoomed (&view, factors[i], 333, 222);
      double x, z, zoomed_x, zoomed_z;
      view_to_wall (&view, 333, 222, &x, &z);
      view_to_wall (&zoomed, 333, 222, &zoomed_x, &zoomed_z);
      g_assert_cmpfloat_with_epsilon (x, zoomed_x, 1e-6);
      g_assert_cmpfloat_with_epsilon (z, zoomed_z, 1e-6);
      g_assert_cmpfloat_with_epsilon (zoomed.scale, 0.1 * factors[i], 1e-12);
    }
}

static void
test_view_there_and_back (void)
{
  const View view = { 0.37, 12, 640 };
  const MarkPoint point = { 1234.5, 678.9, 0, 0 };
  double sx, sy, x, z;

  view_to_sheet (&view, &point, &sx, &sy);
  view_to_wall (&view, sx, sy, &x, &z);
  g_assert_cmpfloat_with_epsilon (x, point.x, 1e-9);
  g_assert_cmpfloat_with_epsilon (z, point.z, 1e-9);
}

static void
test_ref_equal (void)
{
  const MarkRef ref = { REF_OPENING, 3, PART_HEAD, 1, 2 };
  const MarkRef others[] = { { REF_WALL, 3, PART_HEAD, 1, 2 },
                             { REF_OPENING, 4, PART_HEAD, 1, 2 },
                             { REF_OPENING, 3, PART_SILL, 1, 2 },
                             { REF_OPENING, 3, PART_HEAD, 2, 2 },
                             { REF_OPENING, 3, PART_HEAD, 1, 1 } };

  g_assert_cmpint (mark_ref_equal (&ref, &ref), ==, TRUE);
  for (guint i = 0; i < G_N_ELEMENTS (others); i++)
    g_assert_cmpint (mark_ref_equal (&ref, &others[i]), ==, FALSE);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/drawing/pick/a-box-within-its-edges", test_pick_box);
  g_test_add_func ("/drawing/pick/not-in-a-notch", test_pick_notched);
  g_test_add_func ("/drawing/pick/the-topmost", test_pick_topmost);
  g_test_add_func ("/drawing/pick/lines-and-circles-within-reach", test_pick_reach);
  g_test_add_func ("/drawing/pick/through-what-stands-for-nothing", test_pick_passes_through);
  g_test_add_func ("/drawing/pick/text", test_pick_text);
  g_test_add_func ("/drawing/sorted-by-layer-and-stable", test_sorted_stable);
  g_test_add_func ("/drawing/refs-differ-in-every-field", test_ref_equal);
  g_test_add_func ("/view/zoom-keeps-the-place-under-the-pointer", test_zoom_keeps_place);
  g_test_add_func ("/view/there-and-back", test_view_there_and_back);
  return g_test_run ();
}
