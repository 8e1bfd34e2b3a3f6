/* test-laying.c - what is left out follows from the defaults and the unit; what is given stays */
#include <string.h>

#include "model/laying.h"

static Block
unit (Length length, Length height)
{
  return (
      Block){ .length = length, .height = height, .thickness = LENGTH_MM (250), .density = 500 };
}

/* The contract of the file format, and DEVELOPERS.md. */
static void
test_defaults (void)
{
  Laying none = laying_default ();
  Block block = unit (LENGTH_MM (600), LENGTH_MM (200));
  Laying all = laying_resolve (&none, &block);
  g_assert_cmpuint (none.given, ==, 0);
  g_assert_false (none.element);
  g_assert_cmpint (all.first_bed, ==, LENGTH_MM (20));
  g_assert_cmpint (all.bed, ==, LENGTH_MM (2));
  g_assert_cmpint (all.head, ==, LENGTH_MM (2));
  g_assert_cmpint (all.min_piece, ==, LENGTH_MM (150));
  g_assert_cmpint (all.min_lap, ==, LENGTH_MM (80));
  g_assert_cmpint (all.min_rip, ==, LENGTH_MM (50));
  g_assert_cmpint (all.kerf, ==, LENGTH_MM (3));
  g_assert_cmpint (all.aim, ==, AIM_FEWEST_CUTS);
  g_assert_cmpint (all.start, ==, SIDE_LEFT);
}

/* EN 1996-1-1:2005, 8.1.4.1(3), from memory: units up to 250 mm high lap by the greater of 0.4 of
 * their height and 40 mm, higher ones by the greater of 0.2 of it and 100 mm. In tenths of mm. */
static const struct
{
  int height, lap;
} laps[] = {
  { 200, 400 },   { 710, 400 },   { 1000, 400 },  { 1001, 400 },  { 1130, 452 },   { 1500, 600 },
  { 2000, 800 },  { 2380, 952 },  { 2490, 996 },  { 2500, 1000 }, { 2501, 1000 },  { 3000, 1000 },
  { 4990, 1000 }, { 5000, 1000 }, { 6000, 1200 }, { 6250, 1250 }, { 10000, 2000 },
};

static void
test_least_lap_by_height (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (laps); i++)
    {
      Laying none = laying_default ();
      Block block = unit (LENGTH_MM (600), laps[i].height * 32);
      /* 0.4 of 100.1 mm is 40.04 mm: to the length below. */
      Length expected = laps[i].height == 1001 ? 12812 : laps[i].lap * 32;
      g_assert_cmpint (laying_resolve (&none, &block).min_lap, ==, expected);
    }
}

/* Lengths not divisible by four or five: a limit is never rounded up to more than it says. */
static void
test_quarters_and_fifths_are_whole_lengths (void)
{
  for (Length size = LENGTH_MM (20); size < LENGTH_MM (20) + 2000; size++)
    {
      Laying none = laying_default ();
      Block block = unit (size, LENGTH_MM (100) + size);
      Laying all = laying_resolve (&none, &block);
      g_assert_cmpint (all.min_piece, ==, size / 4);
      g_assert_cmpint (all.min_rip, ==, block.height / 4);
      g_assert_cmpint (all.min_lap, ==, MAX ((Length) ((gint64) block.height * 2 / 5), 12800));
    }
}

/* A laying in which every field differs from its default. */
static Laying
other (void)
{
  return (Laying){
    .given = (1 << 9) - 1,
    .element = TRUE,
    .first_bed = 1,
    .bed = 2,
    .head = 3,
    .min_piece = 4,
    .min_lap = 5,
    .min_rip = 6,
    .kerf = 7,
    .aim = AIM_LEAST_WASTE,
    .start = SIDE_RIGHT,
  };
}

static void
fields_of (const Laying *laying, int fields[9])
{
  const int all[]
      = { laying->first_bed, laying->bed,  laying->head,      laying->min_piece,  laying->min_lap,
          laying->min_rip,   laying->kerf, (int) laying->aim, (int) laying->start };
  memcpy (fields, all, sizeof all);
}

/* Each subset of fields given: exactly those are taken. */
static void
test_given_fields_are_taken (void)
{
  Block block = unit (LENGTH_MM (600), LENGTH_MM (200));
  Laying none = laying_default ();
  Laying plain = laying_resolve (&none, &block);
  int wanted[9], defaults[9], fields[9];
  Laying said = other ();
  fields_of (&said, wanted);
  fields_of (&plain, defaults);
  for (said.given = 0; said.given < 1 << 9; said.given++)
    {
      Laying all = laying_resolve (&said, &block);
      fields_of (&all, fields);
      g_assert_cmpuint (all.given, ==, said.given);
      for (int i = 0; i < 9; i++)
        g_assert_cmpint (fields[i], ==, said.given & (1u << i) ? wanted[i] : defaults[i]);
    }
}

static void
test_resolved_owns_nothing (void)
{
  Block block = unit (LENGTH_MM (600), LENGTH_MM (200));
  Laying said = other ();
  said.foreign.attributes = g_strdup ("v:a=\"1\"");
  Laying all = laying_resolve (&said, &block);
  g_assert_null (all.foreign.attributes);
  laying_clear (&said);
}

/* One change at a time is seen, and only where the field is given. */
static void
test_equal (void)
{
  Laying a = other ();
  g_assert_true (laying_equal (&a, &a));
  Laying b = other ();
  b.first_bed++;
  g_assert_false (laying_equal (&a, &b));
  a.given &= ~(guint) LAYING_FIRST_BED;
  g_assert_false (laying_equal (&a, &b));
  b.given &= ~(guint) LAYING_FIRST_BED;
  g_assert_true (laying_equal (&a, &b));
  for (guint bit = LAYING_BED; bit <= LAYING_START; bit <<= 1)
    {
      Laying c = a;
      c.given &= ~bit;
      g_assert_false (laying_equal (&a, &c));
    }
  b.aim = AIM_REGULAR;
  g_assert_false (laying_equal (&a, &b));
  b = a;
  b.start = SIDE_LEFT;
  g_assert_false (laying_equal (&a, &b));
  b = a;
  b.element = FALSE;
  g_assert_false (laying_equal (&a, &b));
  b = a;
  b.foreign.elements = (char *) "<x/>";
  g_assert_false (laying_equal (&a, &b));
}

static void
test_copy_is_its_own (void)
{
  Laying a = other ();
  a.foreign.elements = g_strdup ("<v:a/>");
  Laying b = laying_copy (&a);
  g_assert_true (laying_equal (&a, &b));
  g_assert_true (a.foreign.elements != b.foreign.elements);
  laying_clear (&a);
  g_assert_null (a.foreign.elements);
  g_assert_cmpstr (b.foreign.elements, ==, "<v:a/>");
  laying_clear (&b);
}

/* The words of the file. */
static void
test_words (void)
{
  static const char *const aims[] = {
    [AIM_FEWEST_CUTS] = "fewest-cuts",
    [AIM_REGULAR] = "regular",
    [AIM_LEAST_WASTE] = "least-waste",
  };
  for (guint i = 0; i < G_N_ELEMENTS (aims); i++)
    {
      Aim aim = (Aim) ((i + 1) % 3);
      g_assert_cmpstr (aim_word ((Aim) i), ==, aims[i]);
      g_assert_true (aim_from_word (aims[i], &aim));
      g_assert_cmpint (aim, ==, i);
    }
  Side side = SIDE_RIGHT;
  g_assert_cmpstr (side_word (SIDE_LEFT), ==, "left");
  g_assert_cmpstr (side_word (SIDE_RIGHT), ==, "right");
  g_assert_true (side_from_word ("left", &side));
  g_assert_cmpint (side, ==, SIDE_LEFT);
  g_assert_true (side_from_word ("right", &side));
  g_assert_cmpint (side, ==, SIDE_RIGHT);
}

static void
test_other_words (void)
{
  static const char *const words[] = { "", "Left", "left ", "regular\n", "fewest", "least_waste" };
  for (guint i = 0; i < G_N_ELEMENTS (words); i++)
    {
      Aim aim = AIM_REGULAR;
      Side side = SIDE_RIGHT;
      g_assert_false (aim_from_word (words[i], &aim));
      g_assert_false (side_from_word (words[i], &side));
      g_assert_cmpint (aim, ==, AIM_REGULAR);
      g_assert_cmpint (side, ==, SIDE_RIGHT);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/laying/defaults", test_defaults);
  g_test_add_func ("/laying/least-lap-by-height", test_least_lap_by_height);
  g_test_add_func ("/laying/quarters-and-fifths-are-whole-lengths",
                   test_quarters_and_fifths_are_whole_lengths);
  g_test_add_func ("/laying/given-fields-are-taken", test_given_fields_are_taken);
  g_test_add_func ("/laying/resolved-owns-nothing", test_resolved_owns_nothing);
  g_test_add_func ("/laying/equal", test_equal);
  g_test_add_func ("/laying/copy-is-its-own", test_copy_is_its_own);
  g_test_add_func ("/laying/words", test_words);
  g_test_add_func ("/laying/other-words", test_other_words);
  return g_test_run ();
}
