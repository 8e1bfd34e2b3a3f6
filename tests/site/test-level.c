/* test-level.c - level books reduced: published ones, made-up ones, and wrong ones */
#include "site/level.h"

#include <math.h>
#include <string.h>

/* A row of a book as it is printed, in metres; NAN: blank. */
typedef struct
{
  const char *point;
  double back, inter, fore, mark;
  double level; /* what the book prints */
} Printed;

#define NO NAN

static Length
metres (double value)
{
  return length_from_mm (value * 1000);
}

static void
set_sight (Reading *reading, Length *field, guint bit, double value)
{
  if (isnan (value))
    return;
  *field = metres (value);
  reading->given |= bit;
}

static Survey *
book_of (const Printed *rows, guint n)
{
  Survey *survey = survey_new ();
  for (guint i = 0; i < n; i++)
    {
      Reading *reading = survey_add_reading (survey);
      g_free (reading->point);
      reading->point = g_strdup (rows[i].point);
      set_sight (reading, &reading->back, READING_BACK, rows[i].back);
      set_sight (reading, &reading->inter, READING_INTER, rows[i].inter);
      set_sight (reading, &reading->fore, READING_FORE, rows[i].fore);
      set_sight (reading, &reading->level, READING_LEVEL, rows[i].mark);
    }
  g_autofree char *fault = survey_fault (survey);
  g_assert_cmpstr (fault, ==, NULL);
  return survey;
}

static void
assert_levels (const Survey *survey, const Printed *rows)
{
  g_autoptr (LevelBook) book = level_book_new (survey);
  for (guint i = 0; i < survey->readings->len; i++)
    {
      g_assert_true (level_row (book, i)->has_level);
      if (level_row (book, i)->raw != metres (rows[i].level))
        g_test_message ("row %u (%s): %g, printed %g", i + 1, rows[i].point,
                        length_to_mm (level_row (book, i)->raw) / 1000, rows[i].level);
      g_assert_cmpint (level_row (book, i)->raw, ==, metres (rows[i].level));
      g_assert_cmpint (level_row (book, i)->raw + level_row (book, i)->correction, ==,
                       level_row (book, i)->level);
    }
  g_assert_true (book->agrees);
  g_assert_cmpuint (book->faults->len, ==, 0);
}

static void
assert_sums (const Survey *survey, double back, double fore, double rise, double fall)
{
  g_autoptr (LevelBook) book = level_book_new (survey);
  g_assert_cmpint (book->back, ==, metres (back));
  g_assert_cmpint (book->fore, ==, metres (fore));
  if (!isnan (rise))
    {
      g_assert_cmpint (book->rise, ==, metres (rise));
      g_assert_cmpint (book->fall, ==, metres (fall));
    }
  g_assert_cmpint (book->last_less_first, ==, metres (back) - metres (fore));
}

static char *
column_fault (const Survey *survey, const Printed *rows)
{
  g_autofree Length *levels = g_new0 (Length, survey->readings->len);
  for (guint i = 0; i < survey->readings->len; i++)
    levels[i] = metres (rows[i].level);
  return level_column_fault (survey, levels);
}

/* CC-26: BM 820.00 + BS 8.42 = HI 828.42; FS 1.20: 827.22 ft (ru.scribd.com/document/282803623).
 * BM 0, BS 6 ft; FS 5: +1, FS 3: +3 (what-when-how.com, Carpenters and Builders Math). In
 * hundredths of a foot, for which any whole unit will do. */
static void
test_cc26 (void)
{
  g_autoptr (Survey) survey = survey_new ();
  Reading *mark = survey_add_reading (survey);
  mark->given = READING_BACK | READING_LEVEL;
  mark->level = 82000;
  mark->back = 842;
  Reading *fore = survey_add_reading (survey);
  fore->given = READING_FORE;
  fore->fore = 120;
  g_autoptr (LevelBook) book = level_book_new (survey);
  g_assert_cmpint (level_row (book, 0)->collimation, ==, 82842);
  g_assert_cmpint (level_row (book, 1)->level, ==, 82722);

  g_autoptr (Survey) second = survey_new ();
  const Length sights[] = { 600, 500, 300 };
  for (guint i = 0; i < 3; i++)
    {
      Reading *reading = survey_add_reading (second);
      reading->given = i == 0 ? READING_BACK : i == 1 ? READING_INTER : READING_FORE;
      reading->back = reading->inter = reading->fore = sights[i];
    }
  g_autoptr (LevelBook) again = level_book_new (second);
  g_assert_true (again->local);
  g_assert_cmpint (level_row (again, 0)->level, ==, 0);
  g_assert_cmpint (level_row (again, 1)->level, ==, 100);
  g_assert_cmpint (level_row (again, 2)->level, ==, 300);
}

/* C4, PNG University of Technology (scribd 462952948): height of collimation, an inverted staff
 * under a bridge. */
static const Printed c4[] = {
  { "BM1", 6.482, NO, NO, 40.000, 40.000 }, { "CP1", 5.844, NO, 2.159, NO, 44.323 },
  { "C", NO, 3.141, NO, NO, 47.026 },       { "D", NO, -2.956, NO, NO, 53.123 },
  { "E", NO, 5.600, NO, NO, 44.567 },       { "CP2", 4.298, NO, 7.318, NO, 42.849 },
  { "F", NO, 3.015, NO, NO, 44.132 },       { "BM2", NO, NO, 4.264, NO, 42.883 },
};

static void
test_c4 (void)
{
  g_autoptr (Survey) survey = book_of (c4, G_N_ELEMENTS (c4));
  g_autofree char *fault = column_fault (survey, c4);
  g_assert_cmpstr (fault, ==, NULL);
  assert_levels (survey, c4);
  assert_sums (survey, 16.624, 13.741, NO, NO);
  g_autoptr (LevelBook) book = level_book_new (survey);
  g_assert_cmpint (level_row (book, 0)->collimation, ==, metres (46.482));
  g_assert_cmpint (level_row (book, 1)->collimation, ==, metres (50.167));
  g_assert_cmpint (level_row (book, 5)->collimation, ==, metres (47.147));
  g_assert_cmpint (book->n_setups, ==, 3);
  g_assert_cmpint (book->last_less_first, ==, metres (2.883));
  g_assert_false (book->checked);
}

/* C5 (civinnovate.com, levelling-explanation-75): rise and fall. The page takes C for a fall and
 * prints 100.415; 2.165 - 1.720 is a rise. */
static const Printed c5[] = {
  { "BM", 1.855, NO, NO, 100.000, 100.000 }, { "A", NO, 2.410, NO, NO, 99.445 },
  { "B", NO, 1.280, NO, NO, 100.575 },       { "CP1", 2.165, NO, 0.995, NO, 100.860 },
  { "C", NO, NO, 1.720, NO, 101.305 },
};

static void
test_c5 (void)
{
  g_autoptr (Survey) survey = book_of (c5, G_N_ELEMENTS (c5));
  assert_levels (survey, c5);
  assert_sums (survey, 4.020, 2.715, 1.130 + 0.285 + 0.445, 0.555);
  g_autoptr (LevelBook) book = level_book_new (survey);
  const double rises[] = { NO, -0.555, 1.130, 0.285, 0.445 };
  for (guint i = 1; i < 5; i++)
    g_assert_cmpint (level_row (book, i)->rise, ==, metres (rises[i]));
  g_assert_false (level_row (book, 0)->has_rise);
}

static void
test_c5_mistake_is_refused (void)
{
  g_autoptr (Survey) survey = book_of (c5, G_N_ELEMENTS (c5));
  Printed wrong[G_N_ELEMENTS (c5)];
  memcpy (wrong, c5, sizeof c5);
  wrong[4].level = 100.415;
  g_autofree char *fault = column_fault (survey, wrong);
  g_assert_cmpstr (fault, ==, "Row 5 (C): 100415 mm is given; the readings make it 101305 mm.");
  /* and as a mark: the book does not close on it */
  wrong[4].mark = 100.415;
  g_autoptr (Survey) marked = book_of (wrong, G_N_ELEMENTS (wrong));
  g_autoptr (LevelBook) book = level_book_new (marked);
  g_assert_false (book->closes);
  g_autofree char *sentence
      = level_closing_sentence (marked, &g_array_index (book->closings, LevelClosing, 0));
  g_assert_cmpstr (sentence, ==,
                   "Row 5 (C): does not close: 890 mm too high after 2 set-ups; only 7.1 mm are "
                   "allowed.");
}

/* C9 (archive.nptel.ac.in, course 105107122, module 4, example 13-1): eight set-ups round to the
 * mark. The page prints 149.450 for 149.400. */
static const Printed c9[] = {
  { "BM", 1.205, NO, NO, 150.485, 150.485 }, { "1", 0.125, NO, 1.860, NO, 149.830 },
  { "2", 0.395, NO, 1.915, NO, 148.040 },    { "3", 0.880, NO, 2.615, NO, 145.820 },
  { "4", 1.960, NO, 1.760, NO, 144.940 },    { "5", 2.595, NO, 0.920, NO, 145.980 },
  { "6", 2.255, NO, 0.915, NO, 147.660 },    { "7", 2.305, NO, 0.515, NO, 149.400 },
  { "BM", NO, NO, 1.170, NO, 150.535 },
};

static void
test_c9 (void)
{
  g_autoptr (Survey) survey = book_of (c9, G_N_ELEMENTS (c9));
  assert_levels (survey, c9);
  assert_sums (survey, 11.720, 11.670, 5.595, 5.545);
  g_autoptr (LevelBook) book = level_book_new (survey);
  g_assert_cmpuint (book->closings->len, ==, 1);
  const LevelClosing *closing = &g_array_index (book->closings, LevelClosing, 0);
  g_assert_cmpint (closing->error, ==, metres (0.050));
  g_assert_cmpint (closing->setups, ==, 8);
  /* 5 mm times the root of 8 is 14.142 mm */
  g_assert_cmpint (closing->allowed, ==, lround (5 * sqrt (8) * LENGTH_PER_MM));
  g_assert_false (closing->within);
  g_assert_false (book->closes);
  /* 50 mm in eight shares of 6.25 mm */
  for (guint i = 0; i < 9; i++)
    g_assert_cmpint (level_row (book, i)->correction, ==, -(Length) i * LENGTH_MM (6.25));
  g_assert_cmpint (level_row (book, 8)->level, ==, metres (150.485));
}

static void
test_c9_slip_is_refused (void)
{
  g_autoptr (Survey) survey = book_of (c9, G_N_ELEMENTS (c9));
  Printed wrong[G_N_ELEMENTS (c9)];
  memcpy (wrong, c9, sizeof c9);
  wrong[7].level = 149.450;
  g_autofree char *fault = column_fault (survey, wrong);
  g_assert_cmpstr (fault, ==, "Row 8 (7): 149450 mm is given; the readings make it 149400 mm.");
}

/* C10 (ques10.com/p/29304): a staff upside down, and the known mark is the tenth point, read as an
 * intermediate sight. */
static const Printed c10[] = {
  { "1", 1.355, NO, NO, NO, 185.205 },    { "2", NO, 1.605, NO, NO, 184.955 },
  { "3", NO, 2.125, NO, NO, 184.435 },    { "4", NO, 0.685, NO, NO, 185.875 },
  { "5", 2.015, NO, 1.365, NO, 185.195 }, { "6", NO, 1.355, NO, NO, 185.855 },
  { "7", NO, -1.385, NO, NO, 188.595 },   { "8", NO, 0.685, NO, NO, 186.525 },
  { "9", 1.685, NO, 2.105, NO, 185.105 }, { "10", NO, 1.155, NO, 185.635, 185.635 },
  { "11", NO, 1.105, NO, NO, 185.685 },   { "12", 1.085, NO, 2.015, NO, 184.775 },
  { "13", NO, 1.345, NO, NO, 184.515 },   { "14", NO, 1.355, NO, NO, 184.505 },
  { "15", NO, -2.015, NO, NO, 187.875 },  { "16", 1.655, NO, 1.305, NO, 184.555 },
  { "17", NO, 1.685, NO, NO, 184.525 },   { "18", NO, NO, 1.455, NO, 184.755 },
};

static void
test_c10 (void)
{
  g_autoptr (Survey) survey = book_of (c10, G_N_ELEMENTS (c10));
  assert_levels (survey, c10);
  assert_sums (survey, 7.795, 8.245, 9.02, 9.47);
  g_autoptr (LevelBook) book = level_book_new (survey);
  g_assert_cmpint (book->n_setups, ==, 5);
  g_assert_false (book->checked);
  g_assert_cmpint (book->last_less_first, ==, metres (-0.450));
}

/* ---- books of our own ---- */

/* Two set-ups there and back: 4 mm high in all, a half of it at the point between. */
static void
test_round_and_back (void)
{
  const Printed rows[] = {
    { "BM", 1.200, NO, NO, 10.000, 10.000 }, { "A", NO, 1.300, NO, NO, 9.900 },
    { "B", 1.400, NO, 1.250, NO, 9.950 },    { "C", NO, 1.450, NO, NO, 9.900 },
    { "BM", NO, NO, 1.346, NO, 10.004 },
  };
  g_autoptr (Survey) survey = book_of (rows, G_N_ELEMENTS (rows));
  assert_levels (survey, rows);
  g_autoptr (LevelBook) book = level_book_new (survey);
  const int corrections[] = { 0, -2, -2, -4, -4 };
  for (guint i = 0; i < 5; i++)
    g_assert_cmpint (level_row (book, i)->correction, ==, LENGTH_MM (corrections[i]));
  g_assert_true (book->closes);
  g_autofree char *sentence
      = level_closing_sentence (survey, &g_array_index (book->closings, LevelClosing, 0));
  g_assert_cmpstr (sentence, ==,
                   "Row 5 (BM): closes 4 mm too high after 2 set-ups; 7.1 mm are allowed.");
}

/* No mark at all: the first point is 0, and coming back to it closes the book. */
static void
test_without_a_mark (void)
{
  const Printed rows[] = {
    { "A", 1.200, NO, NO, NO, 0 },
    { "B", NO, 1.300, NO, NO, -0.100 },
    { "A", NO, NO, 1.199, NO, 0.001 },
  };
  g_autoptr (Survey) survey = book_of (rows, G_N_ELEMENTS (rows));
  assert_levels (survey, rows);
  g_autoptr (LevelBook) book = level_book_new (survey);
  g_assert_true (book->local);
  g_assert_cmpuint (book->closings->len, ==, 1);
  g_assert_cmpint (level_row (book, 2)->level, ==, 0);
  g_assert_cmpint (level_row (book, 1)->level, ==, metres (-0.101));
}

/* A change point in two rows is one point. */
static void
test_change_in_two_rows (void)
{
  const Printed rows[] = {
    { "BM", 1.200, NO, NO, 10.000, 10.000 },
    { "CP", NO, NO, 1.250, NO, 9.950 },
    { "CP", 1.400, NO, NO, NO, 9.950 },
    { "BM", NO, NO, 1.346, NO, 10.004 },
  };
  g_autoptr (Survey) survey = book_of (rows, G_N_ELEMENTS (rows));
  assert_levels (survey, rows);
  g_autoptr (LevelBook) book = level_book_new (survey);
  g_assert_cmpuint (book->closings->len, ==, 1);
  g_assert_cmpint (g_array_index (book->closings, LevelClosing, 0).setups, ==, 2);
  g_assert_cmpint (level_row (book, 1)->level, ==, metres (9.948));
  g_assert_cmpint (level_row (book, 2)->level, ==, metres (9.948));
}

/* A second line of set-ups that begins at a point of the first; a point read from both. */
static void
test_two_lines (void)
{
  const Printed rows[] = {
    { "BM", 1.200, NO, NO, 10.000, 10.000 }, { "A", NO, 1.300, NO, NO, 9.900 },
    { "B", NO, 1.350, NO, NO, 9.850 },       { "A", 1.500, NO, NO, NO, 9.900 },
    { "C", NO, 1.520, NO, NO, 9.880 },       { "B", NO, 1.546, NO, NO, 9.854 },
  };
  g_autoptr (Survey) survey = book_of (rows, G_N_ELEMENTS (rows));
  assert_levels (survey, rows);
  g_autoptr (LevelBook) book = level_book_new (survey);
  g_assert_cmpuint (book->closings->len, ==, 1);
  const LevelClosing *closing = &g_array_index (book->closings, LevelClosing, 0);
  g_assert_cmpuint (closing->row, ==, 5);
  g_assert_cmpuint (closing->from, ==, 2);
  g_assert_cmpint (closing->error, ==, metres (0.004));
  g_assert_false (closing->shared);
  Length level;
  g_assert_true (level_of_point (book, 2, &level));
  g_assert_cmpint (level, ==, metres (9.852));
}

/* The mark is reached only by the second line: the first hangs on it all the same. */
static void
test_mark_comes_late (void)
{
  const Printed rows[] = {
    { "A", 1.200, NO, NO, NO, 9.900 },
    { "B", NO, 1.300, NO, NO, 9.800 },
    { "BM", 1.000, NO, NO, 10.000, 10.000 },
    { "A", NO, 1.100, NO, NO, 9.900 },
  };
  g_autoptr (Survey) survey = book_of (rows, G_N_ELEMENTS (rows));
  assert_levels (survey, rows);
}

static void
assert_fault (const Printed *rows, guint n, guint row, const char *sentence)
{
  g_autoptr (Survey) survey = book_of (rows, n);
  g_autoptr (LevelBook) book = level_book_new (survey);
  g_assert_cmpuint (book->faults->len, ==, 1);
  g_assert_cmpuint (g_array_index (book->faults, LevelFault, 0).row, ==, row);
  g_assert_cmpstr (g_array_index (book->faults, LevelFault, 0).text, ==, sentence);
}

static void
test_faults (void)
{
  const Printed no_back[] = { { "A", NO, 1.3, NO, NO, 0 }, { "BM", 1.2, NO, NO, 10, 10 } };
  assert_fault (no_back, 2, 0,
                "Row 1 (A): no backsight stands before it, so the height of the instrument is not "
                "known.");
  const Printed after_fore[]
      = { { "BM", 1.2, NO, NO, 10, 10 }, { "A", NO, NO, 1.3, NO, 0 }, { "", NO, 1.4, NO, NO, 0 } };
  assert_fault (after_fore, 3, 2,
                "Row 3: no backsight stands before it, so the height of the instrument is not "
                "known.");
  const Printed loose[] = { { "BM", 1.2, NO, NO, 10, 10 },
                            { "A", NO, NO, 1.3, NO, 0 },
                            { "X", 1.4, NO, NO, NO, 0 },
                            { "Y", NO, 1.5, NO, NO, 0 } };
  assert_fault (loose, 4, 2,
                "Row 3 (X): nothing ties this set-up to a point whose level is known, so what was "
                "read from it has no level.");
  const Printed empty[] = { { "BM", 1.2, NO, NO, 10, 10 }, { "A", NO, NO, NO, NO, 0 } };
  assert_fault (empty, 2, 1, "Row 2 (A): it has no reading.");
  const Printed both[] = { { "BM", 1.2, NO, NO, 10, 10 }, { "A", NO, 1.1, 1.3, NO, 0 } };
  assert_fault (both, 2, 1,
                "Row 2 (A): an intermediate sight stands beside another sight; give it a row of "
                "its own. It is not reckoned with.");
  const Printed twice[] = { { "BM", 1.2, NO, NO, 10, 10 }, { "BM", NO, NO, 1.3, 11, 0 } };
  assert_fault (twice, 2, 1,
                "Row 2 (BM): another level is given for this point in an earlier row, which "
                "holds.");
}

/* ---- laws on made-up books ---- */

/* A walk over points of known heights, each read without error: the heights come back, and the
 * book closes to nothing. With an error in one reading, that is the closing error. */
static void
test_true_heights (void)
{
  for (int round = 0; round < 500; round++)
    {
      g_autoptr (Survey) survey = survey_new ();
      g_autoptr (GArray) heights = g_array_new (FALSE, FALSE, sizeof (Length));
      Length error = round % 2 ? LENGTH_MM (g_test_rand_int_range (-30, 31)) : 0;
      gint32 n_setups = g_test_rand_int_range (1, 9), wrong = g_test_rand_int_range (0, n_setups);
      Length start = g_test_rand_int_range (-1000000, 1000000), height = start;
      Reading *reading = survey_add_reading (survey);
      g_free (reading->point);
      reading->point = g_strdup ("start");
      reading->given = READING_LEVEL;
      reading->level = start;
      g_array_append_val (heights, height);
      for (gint32 s = 0; s < n_setups; s++)
        {
          Length back = g_test_rand_int_range (-200000, 700000);
          Length line = height + back;
          reading->given |= READING_BACK;
          reading->back = back;
          for (int k = g_test_rand_int_range (0, 4); k > 0; k--)
            {
              height = g_test_rand_int_range (-1000000, 1000000);
              reading = survey_add_reading (survey);
              reading->given = READING_INTER;
              reading->inter = line - height;
              g_array_append_val (heights, height);
            }
          height = s + 1 == n_setups ? start : g_test_rand_int_range (-1000000, 1000000);
          reading = survey_add_reading (survey);
          reading->given = READING_FORE;
          reading->fore = line - height - (s == wrong ? error : 0);
          g_array_append_val (heights, height);
        }
      g_free (reading->point);
      reading->point = g_strdup ("start");
      g_autoptr (LevelBook) book = level_book_new (survey);
      g_assert_true (book->agrees);
      g_assert_cmpuint (book->faults->len, ==, 0);
      g_assert_cmpuint (book->closings->len, ==, 1);
      const LevelClosing *closing = &g_array_index (book->closings, LevelClosing, 0);
      g_assert_cmpint (closing->error, ==, error);
      g_assert_cmpint (closing->setups, ==, n_setups);
      g_assert_cmpint (level_row (book, heights->len - 1)->level, ==, start);
      for (guint i = 0; i < heights->len; i++)
        {
          const LevelRow *row = level_row (book, i);
          Length off = row->raw - g_array_index (heights, Length, i);
          g_assert_cmpint (off, ==,
                           row->setup > wrong && !(i == 0) && row->setup - 1 >= wrong
                                   && (row->setup - 1 > wrong
                                       || (survey_reading (survey, i)->given & READING_FORE))
                               ? error
                               : 0);
          /* shares by set-ups, to the nearest 1/320 mm */
          double share = i == 0 ? 0 : -(double) error * row->setup / n_setups;
          g_assert_cmpfloat (fabs (row->correction - share), <=, 0.5);
        }
    }
}

static Survey *
any_book (void)
{
  static const char *const names[] = { "", "A", "B", "C", "BM" };
  Survey *survey = survey_new ();
  for (int n = g_test_rand_int_range (0, 15); n > 0; n--)
    {
      Reading *reading = survey_add_reading (survey);
      g_free (reading->point);
      reading->point = g_strdup (names[g_test_rand_int_range (0, 5)]);
      reading->given = (guint) g_test_rand_int_range (0, 8);
      reading->given |= g_test_rand_int_range (0, 6) == 0 ? READING_LEVEL : 0;
      reading->back = g_test_rand_int_range (-SURVEY_MAX_READING, SURVEY_MAX_READING);
      reading->inter = g_test_rand_int_range (-SURVEY_MAX_READING, SURVEY_MAX_READING);
      reading->fore = g_test_rand_int_range (-SURVEY_MAX_READING, SURVEY_MAX_READING);
      reading->level = g_test_rand_int_range (-LENGTH_MAX, LENGTH_MAX);
    }
  return survey;
}

/* Whatever is written, both ways agree, no level is invented, and every reading that is left out
 * is told of. */
static void
test_any_book (void)
{
  guint n_levels = 0;
  for (int round = 0; round < 20000; round++)
    {
      g_autoptr (Survey) survey = any_book ();
      g_autoptr (LevelBook) book = level_book_new (survey);
      g_assert_true (book->agrees);
      g_assert_cmpuint (book->rows->len, ==, survey->readings->len);
      gboolean all = TRUE;
      for (guint i = 0; i < survey->readings->len; i++)
        {
          const LevelRow *row = level_row (book, i);
          guint given = survey_reading (survey, i)->given;
          g_assert_cmpint (row->raw + row->correction, ==, row->level);
          n_levels += row->has_level;
          if (given & (READING_BACK | READING_INTER | READING_FORE))
            all &= row->has_level;
          else
            g_assert_false (row->has_level);
        }
      g_assert_true (all || book->faults->len > 0);
      g_assert_cmpint (book->has_levels, ==, book->has_levels && survey->readings->len > 0);
      for (guint i = 0; i < book->closings->len; i++)
        {
          g_autofree char *text
              = level_closing_sentence (survey, &g_array_index (book->closings, LevelClosing, i));
          g_assert_true (g_str_has_suffix (text, "."));
        }
    }
  g_assert_cmpuint (n_levels, >, 10000);
}

/* Readings without end run out of bounds instead of round the number. */
static void
test_out_of_bounds (void)
{
  g_autoptr (Survey) survey = survey_new ();
  for (int i = 0; i < SURVEY_MAX_READINGS; i++)
    {
      Reading *reading = survey_add_reading (survey);
      reading->given = READING_BACK | (i > 0 ? READING_FORE : 0);
      reading->back = SURVEY_MAX_READING;
      reading->fore = -SURVEY_MAX_READING;
    }
  g_autoptr (LevelBook) book = level_book_new (survey);
  g_assert_cmpuint (book->faults->len, ==, 1);
  g_assert_false (book->has_levels);
  g_assert_true (book->agrees);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/level/cc26", test_cc26);
  g_test_add_func ("/level/c4", test_c4);
  g_test_add_func ("/level/c5", test_c5);
  g_test_add_func ("/level/c5-mistake-is-refused", test_c5_mistake_is_refused);
  g_test_add_func ("/level/c9", test_c9);
  g_test_add_func ("/level/c9-slip-is-refused", test_c9_slip_is_refused);
  g_test_add_func ("/level/c10", test_c10);
  g_test_add_func ("/level/round-and-back", test_round_and_back);
  g_test_add_func ("/level/without-a-mark", test_without_a_mark);
  g_test_add_func ("/level/change-in-two-rows", test_change_in_two_rows);
  g_test_add_func ("/level/two-lines", test_two_lines);
  g_test_add_func ("/level/mark-comes-late", test_mark_comes_late);
  g_test_add_func ("/level/faults", test_faults);
  g_test_add_func ("/level/true-heights", test_true_heights);
  g_test_add_func ("/level/any-book", test_any_book);
  g_test_add_func ("/level/out-of-bounds", test_out_of_bounds);
  return g_test_run ();
}
