#include "paint/hatch.h"

#include <math.h>

static const SheetBox everywhere = { -1000, -1000, 1000, 1000 };

static GArray *
hatched (Hatch hatch, const SheetPoint *corners, guint n, SheetPoint origin)
{
  GArray *strokes = g_array_new (FALSE, FALSE, sizeof (HatchStroke));

  hatch_polygon (hatch, corners, n, origin, &everywhere, strokes);
  return strokes;
}

static const SheetPoint box[] = { { 0, 0 }, { 100, 0 }, { 100, 40 }, { 0, 40 } };
/* An L: its upper right quarter is missing. */
static const SheetPoint notched[]
    = { { 0, 0 }, { 50, 0 }, { 50, 20 }, { 100, 20 }, { 100, 40 }, { 0, 40 } };

static gboolean
in_notched (const SheetPoint *place)
{
  return place->x >= -1e-6 && place->x <= 100 + 1e-6 && place->y >= -1e-6 && place->y <= 40 + 1e-6
         && (place->x <= 50 + 1e-6 || place->y >= 20 - 1e-6);
}

/* Both ends and the middle of every stroke lie in the outline. */
static void
test_inside (gconstpointer data)
{
  g_autoptr (GArray) strokes = hatched ((Hatch) GPOINTER_TO_INT (data), notched,
                                        G_N_ELEMENTS (notched), (SheetPoint){ 0, 0 });

  g_assert_cmpuint (strokes->len, >, 10);
  for (guint i = 0; i < strokes->len; i++)
    {
      const HatchStroke *stroke = &g_array_index (strokes, HatchStroke, i);
      const SheetPoint middle
          = { (stroke->from.x + stroke->to.x) / 2, (stroke->from.y + stroke->to.y) / 2 };
      g_assert_cmpint (in_notched (&stroke->from), ==, TRUE);
      g_assert_cmpint (in_notched (&stroke->to), ==, TRUE);
      g_assert_cmpint (in_notched (&middle), ==, TRUE);
    }
}

static double
total_length (const GArray *strokes)
{
  double total = 0;

  for (guint i = 0; i < strokes->len; i++)
    {
      const HatchStroke *stroke = &g_array_index (strokes, HatchStroke, i);
      total += hypot (stroke->to.x - stroke->from.x, stroke->to.y - stroke->from.y);
    }
  return total;
}

/* The density of a hatch does not depend on the outline: ink is in proportion to the area. */
static void
test_even (void)
{
  g_autoptr (GArray) full = hatched (HATCH_DIAGONAL, box, 4, (SheetPoint){ 0, 0 });
  g_autoptr (GArray) part
      = hatched (HATCH_DIAGONAL, notched, G_N_ELEMENTS (notched), (SheetPoint){ 0, 0 });

  g_assert_cmpfloat_with_epsilon (total_length (part) / total_length (full), 0.75, 0.03);
}

static void
test_moves_with_the_wall (void)
{
  SheetPoint moved[4];

  for (guint i = 0; i < 4; i++)
    moved[i] = (SheetPoint){ box[i].x + 3.3, box[i].y + 1.7 };
  g_autoptr (GArray) here = hatched (HATCH_DIAGONAL, box, 4, (SheetPoint){ 1, 0 });
  g_autoptr (GArray) there = hatched (HATCH_DIAGONAL, moved, 4, (SheetPoint){ 4.3, 1.7 });
  g_assert_cmpuint (here->len, ==, there->len);
  for (guint i = 0; i < here->len; i++)
    {
      const HatchStroke *a = &g_array_index (here, HatchStroke, i);
      const HatchStroke *b = &g_array_index (there, HatchStroke, i);
      g_assert_cmpfloat_with_epsilon (a->from.x + 3.3, b->from.x, 1e-9);
      g_assert_cmpfloat_with_epsilon (a->from.y + 1.7, b->from.y, 1e-9);
    }
}

static void
test_cross_is_both (void)
{
  g_autoptr (GArray) one = hatched (HATCH_DIAGONAL, box, 4, (SheetPoint){ 0, 0 });
  g_autoptr (GArray) both = hatched (HATCH_CROSS, box, 4, (SheetPoint){ 0, 0 });

  g_assert_cmpfloat (total_length (both), >, 1.9 * total_length (one));
}

static void
test_nothing_unseen (void)
{
  const SheetPoint huge[] = { { -1e7, -1e7 }, { 1e7, -1e7 }, { 1e7, 1e7 }, { -1e7, 1e7 } };
  g_autoptr (GArray) strokes = hatched (HATCH_DIAGONAL, huge, 4, (SheetPoint){ 0, 0 });

  g_assert_cmpuint (strokes->len, <, 700);
  g_autoptr (GArray) none = hatched (HATCH_NONE, box, 4, (SheetPoint){ 0, 0 });
  g_assert_cmpuint (none->len, ==, 0);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_data_func ("/hatch/inside/diagonal", GINT_TO_POINTER (HATCH_DIAGONAL), test_inside);
  g_test_add_data_func ("/hatch/inside/cross", GINT_TO_POINTER (HATCH_CROSS), test_inside);
  g_test_add_data_func ("/hatch/inside/dots", GINT_TO_POINTER (HATCH_DOTS), test_inside);
  g_test_add_func ("/hatch/even", test_even);
  g_test_add_func ("/hatch/moves-with-the-wall", test_moves_with_the_wall);
  g_test_add_func ("/hatch/cross-is-both-ways", test_cross_is_both);
  g_test_add_func ("/hatch/nothing-outside-of-what-is-seen", test_nothing_unseen);
  return g_test_run ();
}
