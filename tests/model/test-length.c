/* test-length.c - lengths are exact where they must be, and rounded to the nearest elsewhere */
#include <locale.h>
#include <string.h>

#include "model/length.h"

static Length
parsed (const char *text)
{
  Length length = -1;
  g_assert_true (length_parse (text, &length));
  return length;
}

static void
assert_text (Length length, const char *expected)
{
  g_autofree char *text = length_format (length);
  g_assert_cmpstr (text, ==, expected);
}

/* The unit was chosen for this: 320 is 10 x 32, and 25.4 mm / 64 x 320 is 127. */
static void
test_tenths_are_exact (void)
{
  for (int tenths = -20000; tenths <= 20000; tenths++)
    {
      int size = ABS (tenths);
      g_autofree char *text
          = g_strdup_printf ("%s%d.%d", tenths < 0 ? "-" : "", size / 10, size % 10);
      g_assert_cmpint (parsed (text), ==, tenths * 32);
      g_assert_cmpint (length_from_mm (tenths / 10.0), ==, tenths * 32);
    }
}

static void
test_sixty_fourths_of_an_inch_are_exact (void)
{
  for (int parts = 0; parts <= 64 * 40; parts++)
    {
      /* 25.4 / 64 = 0.396875 */
      gint64 millionths = (gint64) parts * 396875;
      g_autofree char *text = g_strdup_printf ("%" G_GINT64_FORMAT ".%06" G_GINT64_FORMAT,
                                               millionths / 1000000, millionths % 1000000);
      g_assert_cmpint (parsed (text), ==, parts * 127);
      g_assert_cmpint (length_from_mm (parts * 25.4 / 64), ==, parts * 127);
    }
}

static const struct
{
  const char *text;
  Length length;
} decimals[] = {
  { "0", 0 },
  { "-0", 0 },
  { "1200", 384000 },
  { "+1200", 384000 },
  { "01200", 384000 },
  { "62.5", 20000 },
  { "-3.125", -1000 },
  { ".5", 160 },
  { "5.", 1600 },
  { "0.003125", 1 },
  /* the nearest; halves away from zero: 1/640 mm is 0.0015625 */
  { "0.0015624", 0 },
  { "0.0015625", 1 },
  { "-0.0015625", -1 },
  { "0.0015624999999999", 0 },
  { "0.0046875", 2 },
  { "0.0046874", 1 },
  { "33.3333333333333333333333333333", 10667 },
  { "1000000", LENGTH_MAX },
  { "-1000000", -LENGTH_MAX },
  { "1000000.0000", LENGTH_MAX },
  { "1000000.001", LENGTH_MAX },
  { "0000000000000000000000000000000000000001", 320 },
};

static void
test_decimals_are_read (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (decimals); i++)
    {
      g_test_message ("%s", decimals[i].text);
      g_assert_cmpint (parsed (decimals[i].text), ==, decimals[i].length);
    }
}

static void
test_other_texts_are_not (void)
{
  static const char *const texts[] = {
    "",
    " ",
    ".",
    "-",
    "+",
    "-.",
    "abc",
    "12a",
    "a12",
    " 12",
    "12 ",
    "12\n",
    "1 2",
    "1,2",
    "1.2.3",
    "1e3",
    "1E3",
    "0x10",
    "nan",
    "inf",
    "infinity",
    "+-1",
    "--1",
    "1-",
    "12mm",
    "1_0",
    "１２",
    "٣",
    "½",
    "1000000.1",
    "1000001",
    "-1000001",
    "99999999999999999999999999",
    "4294967296",
    "18446744073709551617",
  };
  for (guint i = 0; i < G_N_ELEMENTS (texts); i++)
    {
      Length length = 4711;
      g_test_message ("\"%s\"", texts[i]);
      g_assert_false (length_parse (texts[i], &length));
      g_assert_cmpint (length, ==, 4711);
    }
}

static const struct
{
  Length length;
  const char *text;
} formats[] = {
  { 0, "0" },
  { 320, "1" },
  { -320, "-1" },
  { 384000, "1200" },
  { 20000, "62.5" },
  { 32, "0.1" },
  { -32, "-0.1" },
  { 160, "0.5" },
  { -1000, "-3.125" },
  { 1, "0.003125" },
  { 2, "0.00625" },
  { 319, "0.996875" },
  { 127, "0.396875" },
  { 10667, "33.334375" },
  { LENGTH_MAX, "1000000" },
  { -LENGTH_MAX, "-1000000" },
};

static void
test_formats (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (formats); i++)
    assert_text (formats[i].length, formats[i].text);
}

/* Every fraction beside wholes small and large, then anything. */
static void
test_format_reads_back (void)
{
  static const Length wholes[] = { 0, 1, 9, 10, 599, 999, 1000, 8400, 99999, 999999 };
  for (guint i = 0; i < G_N_ELEMENTS (wholes); i++)
    for (Length fraction = 0; fraction < LENGTH_PER_MM; fraction++)
      for (int sign = -1; sign <= 1; sign += 2)
        {
          Length length = sign * (LENGTH_MM (wholes[i]) + fraction);
          g_autofree char *text = length_format (length);
          g_assert_cmpint (parsed (text), ==, length);
        }
  for (int round = 0; round < 100000; round++)
    {
      Length length = g_test_rand_int_range (-LENGTH_MAX, LENGTH_MAX + 1);
      g_autofree char *text = length_format (length);
      g_assert_cmpint (parsed (text), ==, length);
    }
}

/* A sum of what is written is the sum of the lengths: no place is rounded away. */
static void
test_format_is_exact (void)
{
  for (Length fraction = 1; fraction < LENGTH_PER_MM; fraction++)
    {
      g_autofree char *text = length_format (LENGTH_MM (12) + fraction);
      gint64 millionths = g_ascii_strtoll (text + strlen ("12."), NULL, 10);

      for (gsize places = strlen (text) - strlen ("12."); places < 6; places++)
        millionths *= 10;
      g_assert_cmpint (millionths * LENGTH_PER_MM, ==, fraction * 1000000ll);
      g_assert_false (g_str_has_suffix (text, "0"));
    }
}

static void
test_millimetres_and_back (void)
{
  for (int round = 0; round < 100000; round++)
    {
      Length length = g_test_rand_int_range (-LENGTH_MAX, LENGTH_MAX + 1);
      g_assert_cmpint (length_from_mm (length_to_mm (length)), ==, length);
    }
  g_assert_cmpint (length_from_mm (0.0015625), ==, 1);
  g_assert_cmpint (length_from_mm (-0.0015625), ==, -1);
  g_assert_cmpint (length_from_mm (0.0015624), ==, 0);
  g_assert_cmpfloat (length_to_mm (1), ==, 0.003125);
}

static const struct
{
  const char *text;
  Length length;
} typed[] = {
  { "1200", LENGTH_MM (1200) },
  { " 1200 ", LENGTH_MM (1200) },
  { "1200 mm", LENGTH_MM (1200) },
  { "1200mm", LENGTH_MM (1200) },
  { "1200 MM", LENGTH_MM (1200) },
  { "62.5", 20000 },
  { "62,5", 20000 },
  { "120 cm", LENGTH_MM (1200) },
  { "1.2 m", LENGTH_MM (1200) },
  { "1,2m", LENGTH_MM (1200) },
  { "-5", LENGTH_MM (-5) },
  { "+5", LENGTH_MM (5) },
  { "0", 0 },
  { "1000 m", LENGTH_MAX },
  /* an inch is 25.4 mm, a foot twelve of them: international yard and pound agreement, 1959 */
  { "1 in", 8128 },
  { "1\"", 8128 },
  { "0.015625 in", 127 },
  { "64 in", 127 * 64 * 64 },
  { "1 ft", 8128 * 12 },
  { "1'", 8128 * 12 },
  { "2.5 ft", 8128 * 30 },
  { "6\xe2\x80\xb3", 8128 * 6 },
  { "6\xe2\x80\xb2", 8128 * 72 },
  { "27' 6\"", 8128 * 330 },
  { "27'6", 8128 * 330 },
  { "27 ft 6 in", 8128 * 330 },
  { "-5' 0.5\"", -8128 * 60 - 4064 },
};

static void
test_typed (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (typed); i++)
    {
      Length length = -1;
      g_test_message ("%s", typed[i].text);
      g_assert_true (length_parse_typed (typed[i].text, &length));
      g_assert_cmpint (length, ==, typed[i].length);
    }
}

static void
test_not_understood_when_typed (void)
{
  static const char *const texts[] = {
    "",        " ",           "mm",        "-",
    ",",       "1 km",        "1 yd",      "1m2",
    "twelve",  "1..2",        "1,2,3",     "1 2",
    "5 m m",   "1001 m",      "100001 cm", "1000000000000000000000 mm",
    "4000 ft", "1e3",         "\xff",      "1' 2 m",
    "1 m 2",   "1 ft 2 in 3",
  };
  for (guint i = 0; i < G_N_ELEMENTS (texts); i++)
    {
      Length length = 4711;
      g_test_message ("\"%s\"", texts[i]);
      g_assert_false (length_parse_typed (texts[i], &length));
      g_assert_cmpint (length, ==, 4711);
    }
}

static const struct
{
  Length length;
  const char *text;
} shown[] = {
  { 0, "0" },
  { 320, "1" },
  { 384000, "1200" },
  { 20000, "62.5" },
  { -20000, "-62.5" },
  { 1, "0" },
  { -1, "0" },
  { 15, "0" },
  { 16, "0.1" },
  { -16, "-0.1" },
  { 47, "0.1" },
  { 48, "0.2" },
  { 127, "0.4" },
  { 319, "1" },
  { 303, "0.9" },
  { 304, "1" },
  { LENGTH_MAX, "1000000" },
  { -LENGTH_MAX, "-1000000" },
  { G_MAXINT32, "6710886.4" },
  { G_MININT32, "-6710886.4" },
};

static void
test_shown (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (shown); i++)
    {
      char buffer[LENGTH_TEXT_SIZE];
      const char *text = length_text (shown[i].length, buffer);
      g_assert_true (text == buffer);
      g_assert_cmpstr (text, ==, shown[i].text);
    }
}

static void
test_off (void)
{
  static const struct
  {
    Length off;
    const char *text;
  } offs[] = {
    { 0, "0" },
    { 15, "0" },
    { -15, "0" },
    { LENGTH_MM (6), "+6" },
    { 16, "+0.1" },
    { LENGTH_MM (-3), "−3" },
    { LENGTH_MM (-2.5), "−2.5" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (offs); i++)
    {
      char buffer[LENGTH_TEXT_SIZE];

      g_assert_cmpstr (length_off_text (offs[i].off, buffer), ==, offs[i].text);
    }
}

int
main (int argc, char **argv)
{
  setlocale (LC_ALL, "");
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/length/tenths-are-exact", test_tenths_are_exact);
  g_test_add_func ("/length/sixty-fourths-of-an-inch-are-exact",
                   test_sixty_fourths_of_an_inch_are_exact);
  g_test_add_func ("/length/decimals-are-read", test_decimals_are_read);
  g_test_add_func ("/length/other-texts-are-not", test_other_texts_are_not);
  g_test_add_func ("/length/formats", test_formats);
  g_test_add_func ("/length/format-reads-back", test_format_reads_back);
  g_test_add_func ("/length/format-is-exact", test_format_is_exact);
  g_test_add_func ("/length/millimetres-and-back", test_millimetres_and_back);
  g_test_add_func ("/length/typed", test_typed);
  g_test_add_func ("/length/not-understood-when-typed", test_not_understood_when_typed);
  g_test_add_func ("/length/shown", test_shown);
  g_test_add_func ("/length/how-far-off", test_off);
  return g_test_run ();
}
