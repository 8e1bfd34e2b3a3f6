/* test-work-figures.c - figures of the work, typed, understood and shown again */
#include "app/work-figures.h"

#include "model/edit.h"

static const WorkFigure *
figure (const char *name)
{
  guint n;
  const WorkFigure *list = work_figures_list (&n);

  for (guint i = 0; i < n; i++)
    if (g_str_equal (list[i].name, name))
      return &list[i];
  g_assert_not_reached ();
}

/* Each as it is typed, as it is shown after that, and whether it is taken at all. */
static const struct
{
  const char *figure, *typed, *shown; /* NULL: it is refused */
} rows[] = {
  { "Persons at work", "3", "3" },
  { "Persons at work", " 12 ", "12" },
  { "Persons at work", "0", NULL },
  { "Persons at work", "2.5", NULL },
  { "Persons at work", "-1", NULL },
  { "Persons at work", "99999999999999999999", NULL },
  { "Hours a day, of each", "7,5", "7.5" },
  { "Hours a day, of each", "0", NULL },
  { "Hours a day, of each", "25", NULL },
  { "Hours a day, of each", "1e1", NULL },
  { "Hours a day, of each", "nan", NULL },
  { "Hours a day, of each", ".", NULL },
  { "Hours a day, of each", "1.2.3", NULL },
  { "Hours a m², laying", "0.4", "0.4" },
  { "Hours a m², laying", "0.12345678", "0.123457" },
  { "Minutes a piece, laying", "6", "6" },
  { "Minutes a cut by hand saw", "0", "0" },
  { "Minutes a cut by hand saw", "600", "600" },
  { "Minutes a cut by hand saw", "600.1", NULL },
  { "Minutes a metre of levelling bed", "12.", "12" },
  { "Rise of a wall in a day, mm", "1.2 m", "1200" },
  { "Rise of a wall in a day, mm", "1250", "1250" },
  { "Rise of a wall in a day, mm", "0", NULL },
  { "Lifts a day, of each", "150", "150" },
  { "Lifts a day, of each", "many", NULL },
  { "Blocks on a pallet", "48", "48" },
  { "Blocks on a pallet", "100001", NULL },
};

static void
test_typed (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      const WorkFigure *is = figure (rows[i].figure);
      WorkRates rates = work_rates_default (), before = rates;
      g_autoptr (GError) error = NULL;
      const gboolean taken = work_figure_set (is, &rates, rows[i].typed, &error);
      g_autofree char *shown = work_figure_text (is, &rates);
      g_autofree char *fault = work_rates_fault (&rates);

      g_test_message ("%s: %s", rows[i].figure, rows[i].typed);
      g_assert_cmpint (taken, ==, rows[i].shown != NULL);
      g_assert_cmpstr (shown, ==, rows[i].shown ? rows[i].shown : "");
      g_assert_cmpstr (fault, ==, NULL);
      if (taken)
        {
          /* Nothing else is said, and an empty text takes it back. */
          g_assert_cmpint ((gint) (rates.given & (rates.given - 1)), ==, 0);
          g_assert_true (work_figure_set (is, &rates, "", NULL));
        }
      else
        g_assert_error (error, MODEL_ERROR, MODEL_ERROR_REFUSED);
      g_assert_true (work_rates_equal (&rates, &before));
    }
}

/* Every figure of the file is there once. */
static void
test_every_figure (void)
{
  guint n, all = 0;
  const WorkFigure *list = work_figures_list (&n);

  for (guint i = 0; i < n; i++)
    {
      WorkRates rates = work_rates_default ();
      g_autofree char *plain = work_figure_default (&list[i]);

      g_assert_true (work_figure_set (&list[i], &rates, "7", NULL));
      g_assert_cmpint (*plain, !=, 0);
      g_assert_cmpint ((gint) (all & rates.given), ==, 0);
      all |= rates.given;
    }
  g_assert_cmpuint (all, ==, (WORK_BLOCKS_A_PALLET << 1) - 1);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/work-figures/typed", test_typed);
  g_test_add_func ("/work-figures/every-figure", test_every_figure);
  return g_test_run ();
}
