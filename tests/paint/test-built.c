/* test-built.c - what stands, and what is off, as it is drawn */
#include <string.h>

#include "bond/gauge.h"
#include "model/built-edit.h"
#include "paint/elevation.h"
#include "paint/sample.h"
#include "paint/theme.h"

#define MM LENGTH_MM

static void
set_top (Sample *sample, gint32 course, double left, double right)
{
  const Length l = length_from_mm (left), r = length_from_mm (right);

  sample_take (sample, built_set_top (sample_wall (sample), course, &l, &r, NULL));
}

static void
set_figure (Sample *sample, guint opening, OpeningFigure figure, Length measured)
{
  const Wall *wall = sample_wall (sample);

  sample_take (sample, built_set_opening (wall, wall_opening_at (wall, opening)->id, figure,
                                          &measured, NULL));
}

static guint
n_of_style (const Drawing *drawing, Style style)
{
  guint n = 0;

  for (guint i = 0; i < drawing->marks->len; i++)
    n += drawing_mark (drawing, i)->style == (int) style;
  return n;
}

/* As on the screen, and small on paper. */
static const double scales[] = { 0.1, 0.0756, 0.02 };

/* The one mark of that text at a scale; NULL: there is none. */
static const Mark *
text_mark (const Drawing *drawing, double scale, const char *text)
{
  const Mark *found = NULL;

  for (guint i = 0; i < drawing->marks->len; i++)
    {
      const Mark *mark = drawing_mark (drawing, i);

      if (mark->kind != MARK_TEXT || !g_str_equal (drawing_text (drawing, mark), text)
          || !mark_is_at_scale (mark, scale))
        continue;
      g_assert_null (found);
      found = mark;
    }
  return found;
}

static void
assert_text (const Drawing *drawing, const char *text, Style style, double x, double z)
{
  for (guint i = 0; i < 2; i++)
    {
      const Mark *mark = text_mark (drawing, scales[i], text);
      const MarkPoint *point = mark ? drawing_points (drawing, mark) : NULL;

      if (!mark)
        g_test_message ("“%s” is not there at %g", text, scales[i]);
      g_assert_nonnull (mark);
      g_assert_cmpint (mark->style, ==, style);
      g_assert_cmpfloat_with_epsilon (point->x, x, 1e-9);
      g_assert_cmpfloat_with_epsilon (point->z, z, 1e-9);
    }
}

static const Style own[]
    = { STYLE_STANDING,       STYLE_STANDING_CUT,   STYLE_STANDING_LABEL,
        STYLE_STANDING_LINE,  STYLE_STANDING_TAB,   STYLE_DEVIATION,
        STYLE_DEVIATION_OVER, STYLE_DEVIATION_MARK, STYLE_DEVIATION_MARK_OVER };

/* Of every standing course each piece, and of no other. */
static void
test_pieces (void)
{
  for (gint32 courses = 0; courses <= 13; courses += 3)
    {
      g_auto (Sample) sample = sample_begun (SAMPLE_STREET, courses);
      const ElevationInput input = sample_input (&sample);
      g_autoptr (Drawing) drawing = elevation_laying (&input);
      guint pieces = 0, standing = 0, whole = 0;

      for (guint i = 0; i < sample.layout->pieces->len; i++)
        {
          const Piece *piece = layout_piece (sample.layout, i);

          standing += piece->course <= courses;
          whole += piece->course <= courses && piece->shape == PIECE_WHOLE;
        }
      for (guint i = 0; i < drawing->marks->len; i++)
        {
          const Mark *mark = drawing_mark (drawing, i);

          if ((mark->style != STYLE_STANDING && mark->style != STYLE_STANDING_CUT)
              || mark->ref.kind != REF_PIECE)
            continue;
          pieces++;
          g_assert_cmpint (mark->ref.a, <=, courses);
        }
      g_assert_cmpuint (pieces, ==, standing);
      g_assert_cmpuint (n_of_style (drawing, STYLE_STANDING_TAB), ==, courses > 0);
      g_assert_cmpuint (whole, <=, n_of_style (drawing, STYLE_STANDING));
    }
}

/* Its line lies on the highest standing course, as measured; the tab says so at the rod. */
static void
test_top (void)
{
  g_auto (Sample) sample = sample_begun (SAMPLE_STREET, 3);
  const Wall *wall;
  ElevationInput input;
  double z;

  set_top (&sample, 3, 639, 635);
  wall = sample_wall (&sample);
  input = sample_input (&sample);
  g_autoptr (Drawing) drawing = elevation_laying (&input);
  const Laying laying = laying_resolve (&wall->laying, project_block_at (sample.project, 0));
  z = length_to_mm (gauge_top (wall, project_block_at (sample.project, 0), &laying, 3));
  g_assert_cmpfloat_with_epsilon (z, 637, 1e-9);
  assert_text (drawing, "laid to course 3", STYLE_STANDING_TAB, 0, 637);
  for (guint i = 0; i < drawing->marks->len; i++)
    if (drawing_mark (drawing, i)->style == STYLE_STANDING_LINE)
      g_assert_cmpfloat_with_epsilon (drawing_points (drawing, drawing_mark (drawing, i))->z, 637,
                                      1e-9);
  g_assert_cmpuint (n_of_style (drawing, STYLE_STANDING_LINE), >=, 2);
}

/* Each figure where it was measured; over its limit told by sign and weight. Courses are planned at
 * 225, 427, 629; 16 mm are allowed up to 4 m, 20 beyond (SIA 266, as src/site has it). */
static void
test_deviations (void)
{
  g_auto (Sample) sample = sample_begun (SAMPLE_STREET, 3);
  const Length long_wall = MM (8412), plumb = MM (-9);
  ElevationInput input;

  set_top (&sample, 1, 231, 223);
  set_top (&sample, 3, 653, 631.5);
  set_figure (&sample, 0, FIGURE_X, MM (1754));
  set_figure (&sample, 0, FIGURE_WIDTH, MM (1222));
  set_figure (&sample, 1, FIGURE_SILL, MM (830));
  set_figure (&sample, 1, FIGURE_HEIGHT, MM (1202.5));
  sample_take (&sample, built_set_length (sample_wall (&sample), &long_wall));
  sample_take (&sample, built_set_figure (sample_wall (&sample), BUILT_PLUMB, &plumb));
  input = sample_input (&sample);
  g_autoptr (Drawing) drawing = elevation_laying (&input);
  const Opening *first = wall_opening_at (input.wall, 0), *second = wall_opening_at (input.wall, 1);
  const double middle = length_to_mm (second->x) + length_to_mm (second->width) / 2;

  assert_text (drawing, "+6", STYLE_DEVIATION, 0, 231);
  assert_text (drawing, "−2", STYLE_DEVIATION, 8412, 223);
  assert_text (drawing, "+24", STYLE_DEVIATION_OVER, 0, 653);
  assert_text (drawing, "+2.5", STYLE_DEVIATION, 8412, 631.5);
  assert_text (drawing, "+12 (8400)", STYLE_DEVIATION, 8412, length_to_mm (input.wall->height));
  assert_text (drawing, "plumb −9", STYLE_DEVIATION, 0, length_to_mm (input.wall->height));
  assert_text (drawing, "jamb +4", STYLE_DEVIATION, 1754,
               length_to_mm (first->sill + first->height / 2));
  assert_text (drawing, "width ! +22", STYLE_DEVIATION_OVER, 1754 + 1222,
               length_to_mm (first->sill + first->height / 2));
  assert_text (drawing, "sill −3", STYLE_DEVIATION, middle, 830);
  assert_text (drawing, "height +2.5", STYLE_DEVIATION, middle, 830 + 1202.5);
  /* Where courses are too low for figures, those over their limit are told all the same. */
  g_assert_null (text_mark (drawing, scales[2], "+6"));
  g_assert_nonnull (text_mark (drawing, scales[2], "+24"));
  g_assert_cmpuint (n_of_style (drawing, STYLE_DEVIATION_MARK), ==, 3);
  g_assert_cmpuint (n_of_style (drawing, STYLE_DEVIATION_MARK_OVER), ==, 1);
  for (int theme = 0; theme < N_THEMES; theme++)
    {
      g_assert_true (theme_row ((Theme) theme, STYLE_DEVIATION_OVER)->bold);
      g_assert_false (theme_row ((Theme) theme, STYLE_DEVIATION)->bold);
    }
}

/* The client sees the finished wall, and a wall of which nothing is said has none of it. */
static void
test_elsewhere (void)
{
  g_auto (Sample) sample = sample_begun (SAMPLE_STREET, 3), bare = sample_new (SAMPLE_STREET);
  ElevationInput input, plain = sample_input (&bare);

  set_top (&sample, 1, 231, 223);
  input = sample_input (&sample);
  g_autoptr (Drawing) client = elevation_client (&input), laying = elevation_laying (&plain);

  for (guint i = 0; i < G_N_ELEMENTS (own); i++)
    {
      g_assert_cmpuint (n_of_style (client, own[i]), ==, 0);
      g_assert_cmpuint (n_of_style (laying, own[i]), ==, 0);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/built/pieces-that-stand", test_pieces);
  g_test_add_func ("/built/top-of-what-stands", test_top);
  g_test_add_func ("/built/deviations-where-they-were-measured", test_deviations);
  g_test_add_func ("/built/nowhere-else", test_elsewhere);
  return g_test_run ();
}
