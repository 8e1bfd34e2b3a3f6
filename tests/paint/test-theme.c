#include "paint/theme.h"

#include <math.h>

/* Text, and the ground that it stands on. */
static const struct
{
  Style text, ground;
} pairs[] = {
  { STYLE_PIECE_LABEL, STYLE_PIECE_CUT },
  { STYLE_PIECE_LABEL, STYLE_PIECE_BREACH },
  { STYLE_STANDING_LABEL, STYLE_STANDING },
  { STYLE_STANDING_LABEL, STYLE_STANDING_CUT },
  { STYLE_ROD_NUMBER, STYLE_STANDING },
  { STYLE_STANDING_TAB, STYLE_STANDING_TAB },
  { STYLE_DEVIATION, STYLE_DEVIATION },
  { STYLE_DEVIATION_OVER, STYLE_DEVIATION_OVER },
  { STYLE_OPENING_LABEL, STYLE_OPENING_WINDOW },
  { STYLE_OPENING_LABEL, STYLE_OPENING_DOOR },
  { STYLE_OPENING_LABEL, STYLE_OPENING_VOID },
  { STYLE_OPENING_SIZE, STYLE_OPENING_WINDOW },
  { STYLE_OPENING_SIZE, STYLE_OPENING_DOOR },
  { STYLE_OPENING_SIZE, STYLE_OPENING_VOID },
  { STYLE_ROD_NUMBER, STYLE_ROD },
  { STYLE_ROD_CURRENT_NUMBER, STYLE_ROD_CURRENT },
  { STYLE_ROD_HEIGHT, STYLE_PAPER },
  { STYLE_TAPE_NUMBER, STYLE_GROUND },
  { STYLE_TAPE_LABEL, STYLE_GROUND },
  { STYLE_DIMENSION_TEXT, STYLE_PAPER },
  { STYLE_DIMENSION_TOTAL, STYLE_PAPER },
  { STYLE_SELECTED_TEXT, STYLE_PAPER },
  { STYLE_FOOT_TEXT, STYLE_GROUND },
  { STYLE_GUIDE_TEXT, STYLE_GUIDE_TEXT },
  { STYLE_CLIENT_TITLE, STYLE_CLIENT_SKY },
  { STYLE_CLIENT_TEXT, STYLE_CLIENT_SKY },
  { STYLE_CLIENT_DIMENSION_TEXT, STYLE_CLIENT_GROUND },
  { STYLE_CLIENT_SCALE_TEXT, STYLE_CLIENT_GROUND },
  { STYLE_SHEET_TITLE, STYLE_PAPER },
  { STYLE_SHEET_TEXT, STYLE_PAPER },
  { STYLE_SHEET_CAPTION, STYLE_PAPER },
  { STYLE_STRIP_WHOLE, STYLE_PIECE },
  { STYLE_STRIP_NUMBER, STYLE_PAPER },
  { STYLE_STRIP_OVER, STYLE_PAPER },
  { STYLE_STRIP_NUMBER, STYLE_STRIP_OPENING },
  { STYLE_STRIP_NAME, STYLE_PAPER },
  { STYLE_PLAN_NAME, STYLE_PAPER },
  { STYLE_PLAN_OPENING_NAME, STYLE_PAPER },
  { STYLE_PLAN_CORNER, STYLE_PAPER },
  { STYLE_PLAN_DIAGONAL_TEXT, STYLE_PAPER },
  { STYLE_PLAN_WARNING, STYLE_PLAN_WARNING },
  { STYLE_PALLET_TEXT, STYLE_PALLET },
};

/* Relative luminance and contrast: WCAG 2.1, definitions; from memory. */
static double
linear (double channel)
{
  return channel <= 0.03928 ? channel / 12.92 : pow ((channel + 0.055) / 1.055, 2.4);
}

static double
luminance (const Rgba *colour)
{
  return 0.2126 * linear (colour->r) + 0.7152 * linear (colour->g) + 0.0722 * linear (colour->b);
}

static double
contrast (const Rgba *a, const Rgba *b)
{
  const double one = luminance (a), other = luminance (b);

  return (MAX (one, other) + 0.05) / (MIN (one, other) + 0.05);
}

static void
assert_reads (Theme theme, Style text, Style ground, const Rgba *on)
{
  const double ratio = contrast (&theme_row (theme, text)->line, on);

  if (ratio < 4.5)
    g_test_message ("theme %d: %s on %s: %.2f", theme, theme_style_word (text),
                    theme_style_word (ground), ratio);
  g_assert_cmpfloat (ratio, >=, 4.5);
}

static void
test_contrast (gconstpointer data)
{
  const Theme theme = (Theme) GPOINTER_TO_INT (data);

  for (guint i = 0; i < G_N_ELEMENTS (pairs); i++)
    {
      const StyleRow *ground = theme_row (theme, pairs[i].ground);
      assert_reads (theme, pairs[i].text, pairs[i].ground, &ground->fill);
      if (ground->fill_end.a > 0)
        assert_reads (theme, pairs[i].text, pairs[i].ground, &ground->fill_end);
    }
}

/* The lines of a hatch run behind the letters. */
static void
test_contrast_on_hatch (void)
{
  for (int theme = 0; theme < N_THEMES; theme++)
    {
      const StyleRow *cut = theme_row ((Theme) theme, STYLE_PIECE_CUT);
      g_assert_cmpfloat (
          contrast (&theme_row ((Theme) theme, STYLE_PIECE_LABEL)->line, &cut->hatch_ink), >=, 3);
    }
}

static void
test_known_contrast (void)
{
  const Rgba black = { 0, 0, 0, 1 }, white = { 1, 1, 1, 1 }, grey = { 0.5, 0.5, 0.5, 1 };

  g_assert_cmpfloat_with_epsilon (contrast (&black, &white), 21, 1e-9);
  g_assert_cmpfloat_with_epsilon (contrast (&grey, &grey), 1, 1e-9);
}

static void
test_every_text_is_paired (void)
{
  for (int style = 1; style < N_STYLES; style++)
    {
      gboolean paired = theme_row (THEME_LIGHT, (Style) style)->text_size <= 0;
      for (guint i = 0; i < G_N_ELEMENTS (pairs); i++)
        paired |= (int) pairs[i].text == style;
      if (!paired)
        g_test_message ("%s has no ground", theme_style_word ((Style) style));
      g_assert_cmpint (paired, ==, TRUE);
    }
}

static gboolean
is_grey (const Rgba *colour)
{
  return colour->a <= 0 || (colour->r == colour->g && colour->g == colour->b);
}

/* Of the laying view; the client view is not printed in that theme. */
static void
test_paper_is_grey (void)
{
  for (int style = 1; style < N_STYLES; style++)
    {
      const StyleRow *row = theme_row (THEME_PAPER, (Style) style);
      g_assert_cmpint (is_grey (&row->fill) && is_grey (&row->line) && is_grey (&row->hatch_ink),
                       ==, TRUE);
    }
}

static void
test_cuts_differ_by_more_than_colour (void)
{
  for (int theme = 0; theme < N_THEMES; theme++)
    {
      g_assert_cmpint (theme_row ((Theme) theme, STYLE_PIECE)->hatch, ==, HATCH_NONE);
      g_assert_cmpint (theme_row ((Theme) theme, STYLE_PIECE_CUT)->hatch, ==, HATCH_DIAGONAL);
      g_assert_cmpint (theme_row ((Theme) theme, STYLE_PIECE_BREACH)->hatch, ==, HATCH_CROSS);
    }
}

static void
test_words_are_unique (void)
{
  for (int style = 0; style < N_STYLES; style++)
    {
      g_assert_cmpstr (theme_style_word ((Style) style), !=, NULL);
      for (int other = 0; other < style; other++)
        g_assert_cmpstr (theme_style_word ((Style) style), !=, theme_style_word ((Style) other));
    }
}

/* Each style is drawn: it has a size, a fill or a line in the light theme; but for what is only
 * there to be hit. */
static void
test_no_row_is_empty (void)
{
  for (int style = 1; style < N_STYLES; style++)
    {
      const StyleRow *row = theme_row (THEME_LIGHT, (Style) style);
      const gboolean drawn = row->fill.a > 0 || row->line.a > 0;
      g_assert_cmpint (drawn, ==, style != STYLE_ROD_BED_HIT);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/theme/contrast/known-values", test_known_contrast);
  g_test_add_data_func ("/theme/contrast/light", GINT_TO_POINTER (THEME_LIGHT), test_contrast);
  g_test_add_data_func ("/theme/contrast/dark", GINT_TO_POINTER (THEME_DARK), test_contrast);
  g_test_add_data_func ("/theme/contrast/paper", GINT_TO_POINTER (THEME_PAPER), test_contrast);
  g_test_add_func ("/theme/contrast/labels-on-hatches", test_contrast_on_hatch);
  g_test_add_func ("/theme/contrast/every-text-has-a-ground", test_every_text_is_paired);
  g_test_add_func ("/theme/paper-needs-no-colour", test_paper_is_grey);
  g_test_add_func ("/theme/cuts-differ-by-hatch", test_cuts_differ_by_more_than_colour);
  g_test_add_func ("/theme/words-are-unique", test_words_are_unique);
  g_test_add_func ("/theme/no-row-is-forgotten", test_no_row_is_empty);
  return g_test_run ();
}
