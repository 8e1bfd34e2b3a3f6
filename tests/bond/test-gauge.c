/* test-gauge.c - heights of courses, against tables and rules from outside */
#include "bond/gauge.h"

typedef struct
{
  const char *source;
  int unit_64; /* sixty-fourths of an inch: height of the unit and of the bed joint */
  int bed_64;
  int courses;
  int inches; /* from the foundation to the top of the joint over the last course */
} InchRow;

/* Nominal coursing of modular units counts one joint to each unit; the units and joints here are
 * chosen so that the module is exact in sixty-fourths. */
static const InchRow inch_rows[] = {
  { "BIA Technical Notes 10B (1993), table 3: 2C = 4 in.", 103, 25, 1, 2 },
  { "the same", 103, 25, 10, 20 },
  { "the same", 103, 25, 50, 100 },
  { "BIA Technical Notes 10B (1993), table 3: 1C = 4 in.", 231, 25, 1, 4 },
  { "the same", 231, 25, 50, 200 },
  { "US Navy NAVEDTRA 14045, p. 145: courses of 8 in., 10 ft are 15", 487, 25, 15, 120 },
};

static Length
from_64 (int sixty_fourths)
{
  return sixty_fourths * 127;
}

static void
test_inches (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (inch_rows); i++)
    {
      const InchRow *row = &inch_rows[i];
      Block block = block_default ();
      Laying laying = laying_default ();
      block.height = from_64 (row->unit_64);
      laying.first_bed = laying.bed = from_64 (row->bed_64);
      Laying resolved = laying_resolve (&laying, &block);
      resolved.first_bed = resolved.bed = from_64 (row->bed_64);
      /* A bed under each course here, a joint over each there: the same sum. */
      g_test_message ("%s", row->source);
      g_assert_cmpint (gauge_top (NULL, &block, &resolved, row->courses), ==,
                       from_64 (row->inches * 64));
      block_clear (&block);
    }
}

typedef struct
{
  const char *what;
  double height, bed, first_bed; /* mm */
  int course;
  double bottom, top;
} GaugeRow;

static const GaugeRow gauge_rows[] = {
  { "four courses of 65 on beds of 10 are 300 (gauge 75; UK Key Skills resource, 2000)", 65, 10, 10,
    4, 235, 300 },
  { "the first course stands on the levelling bed", 200, 2, 25, 1, 25, 225 },
  { "by hand: 25 + 12 x 202", 200, 2, 25, 13, 2449, 2649 },
  { "dry beds, by hand", 249, 0, 0, 10, 2241, 2490 },
  { "tenths add up, by hand: 19.9 + 99 x 200.7", 199.4, 1.3, 19.9, 100, 19889.2, 20088.6 },
};

static Laying
laying_of (double bed, double first_bed)
{
  Laying laying = laying_default ();
  laying.given = LAYING_BED | LAYING_FIRST_BED;
  laying.bed = length_from_mm (bed);
  laying.first_bed = length_from_mm (first_bed);
  return laying;
}

static void
test_courses (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (gauge_rows); i++)
    {
      const GaugeRow *row = &gauge_rows[i];
      Block block = block_default ();
      block.height = length_from_mm (row->height);
      Laying given = laying_of (row->bed, row->first_bed);
      Laying laying = laying_resolve (&given, &block);
      g_test_message ("%s", row->what);
      g_assert_cmpint (gauge_bottom (NULL, &block, &laying, row->course), ==,
                       length_from_mm (row->bottom));
      g_assert_cmpint (gauge_top (NULL, &block, &laying, row->course), ==,
                       length_from_mm (row->top));
      block_clear (&block);
    }
}

typedef struct
{
  const char *what;
  double height, bed, first_bed, wall; /* mm */
  int courses;
} CountRow;

/* Worked by hand from docs/bond.md: what is left at the top is packed up to 20 mm. */
static const CountRow count_rows[] = {
  { "13 courses, as high as they are", 200, 2, 25, 2649, 13 },
  { "lower by a hair: the last one is ripped", 200, 2, 25, 2648.9, 13 },
  { "the joint over the last course", 200, 2, 25, 2651, 13 },
  { "20 mm over the next bed are packed", 200, 2, 25, 2671, 13 },
  { "a hair more is a ripped course", 200, 2, 25, 2671.1, 14 },
  { "no room over the levelling bed", 200, 2, 60, 60, 0 },
  { "nothing but mortar", 200, 2, 60, 80, 0 },
  { "one thin course", 200, 2, 60, 80.1, 1 },
  { "the wall is lower than its bed", 200, 2, 60, 50, 0 },
  { "a unit as thin as a joint is laid", 20, 0, 0, 60, 3 },
  { "dry beds, whole", 249, 0, 0, 2490, 10 },
};

static void
test_count (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (count_rows); i++)
    {
      const CountRow *row = &count_rows[i];
      Block block = block_default ();
      g_autoptr (Wall) wall = wall_new ();
      block.height = length_from_mm (row->height);
      wall->height = length_from_mm (row->wall);
      Laying given = laying_of (row->bed, row->first_bed);
      Laying laying = laying_resolve (&given, &block);
      g_test_message ("%s", row->what);
      g_assert_cmpint (gauge_n_courses (wall, &block, &laying), ==, row->courses);
      block_clear (&block);
    }
}

typedef struct
{
  double z; /* mm */
  int course;
} NearestRow;

/* Tops of 200 mm courses on 2 mm beds over 25 mm: 225, 427, 629; the bed's top is 25. */
static const NearestRow nearest_rows[] = {
  { 0, 0 },   { 25, 0 },  { 100, 0 }, { 130, 1 }, { 225, 1 },
  { 320, 1 }, { 330, 2 }, { 427, 2 }, { 527, 2 }, { 529, 3 },
};

static void
test_nearest (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (nearest_rows); i++)
    {
      Block block = block_default ();
      Laying given = laying_of (2, 25);
      Laying laying = laying_resolve (&given, &block);
      g_assert_cmpint (
          gauge_nearest_top (NULL, &block, &laying, length_from_mm (nearest_rows[i].z)), ==,
          nearest_rows[i].course);
      block_clear (&block);
    }
}

typedef struct
{
  const char *what;
  double unit, bed, first_bed, wall; /* mm */
  int standing;
  double top;         /* measured of the last that stands; 0: it was not */
  double least, most; /* of the next beds; 0: not said */
  double next;
  int courses;
} NextRow;

/* By hand, docs/as-built.md. Thirteen courses of 200 on beds of 2 over 20 end at 2644. */
static const NextRow next_rows[] = {
  { "as planned", 200, 2, 20, 2644, 3, 0, 0, 0, 2, 13 },
  { "6 high: ten beds of 1.5 would end at 2645, over the wall, so 1", 200, 2, 20, 2644, 3, 630, 0,
    0, 1, 13 },
  { "the same where there is room: 1.5 ends 1 mm off, 1 ends 4 off", 200, 2, 20, 2650, 3, 630, 0, 0,
    1.5, 13 },
  { "6 low: ten beds of 2.5 end at 2643", 200, 2, 20, 2644, 3, 618, 0, 0, 2.5, 13 },
  { "far too high: as thin as may be, the last one is ripped", 200, 2, 20, 2644, 3, 650, 0, 0, 1,
    13 },
  { "far too low: no thicker than 3", 200, 2, 20, 2644, 3, 600, 0, 0, 3, 13 },
  { "limits of the builder's own: ten beds of 0.5 end at 2635, of 1 at 2640", 200, 2, 20, 2644, 3,
    630, 0.5, 2, 1, 13 },
  { "and wider ones: ten beds of 4 end at 2640, of 4.5 at 2645", 200, 2, 20, 2644, 3, 600, 1, 5, 4,
    13 },
  { "thick joints: ten courses of 65 on 10 end at 750; seven beds over 233 of 7.5 end at 740.5, of "
    "8.5 at 747.5, of 9 at 751",
    65, 10, 10, 752, 3, 233, 0, 0, 9, 10 },
  { "2.5 high: 1.75 would be right, 2 and 1.5 are as far: the planned one", 200, 2, 20, 2650, 3,
    626.5, 1, 3, 2, 13 },
  { "the last of them stands", 200, 2, 20, 2644, 13, 2640, 0, 0, 2, 13 },
  { "so low that there is room for one more, ripped", 200, 2, 20, 2670, 13, 2630, 0, 0, 2, 14 },
  { "a strip of 20 on top is packed", 200, 2, 20, 2670, 13, 2648, 0, 0, 2, 13 },
};

static Wall *
standing_wall (const NextRow *row)
{
  Wall *wall = wall_new ();

  wall->height = length_from_mm (row->wall);
  wall->built = built_new ();
  wall->built->courses = row->standing;
  for (gint32 i = 1; i <= row->standing; i++)
    {
      LaidCourse laid = laid_course_new (i);

      if (i == row->standing && row->top > 0)
        {
          laid.given = LAID_TOP;
          laid.top = length_from_mm (row->top);
        }
      g_array_append_val (wall->built->laid, laid);
    }
  wall->built->given
      = (row->least > 0 ? BUILT_BED_LEAST : 0) | (row->most > 0 ? BUILT_BED_MOST : 0);
  wall->built->bed_least = length_from_mm (row->least);
  wall->built->bed_most = length_from_mm (row->most);
  return wall;
}

static void
test_next_beds (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (next_rows); i++)
    {
      const NextRow *row = &next_rows[i];
      Block block = block_default ();
      g_autoptr (Wall) wall = standing_wall (row);
      Laying given = laying_of (row->bed, row->first_bed);
      Laying laying;

      block.height = length_from_mm (row->unit);
      laying = laying_resolve (&given, &block);
      g_test_message ("%s", row->what);
      g_assert_cmpint (gauge_bed (wall, &block, &laying, row->standing + 1), ==,
                       length_from_mm (row->next));
      g_assert_cmpint (gauge_bed (wall, &block, &laying, row->standing + 2), ==,
                       length_from_mm (row->next));
      g_assert_cmpint (gauge_n_courses (wall, &block, &laying), ==, row->courses);
      if (row->top > 0)
        g_assert_cmpint (gauge_top (wall, &block, &laying, row->standing), ==,
                         length_from_mm (row->top));
      block_clear (&block);
    }
}

/* What is asked by height agrees with where the courses lie. */
static void
test_by_height (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (next_rows); i++)
    {
      const NextRow *row = &next_rows[i];
      Block block = block_default ();
      g_autoptr (Wall) wall = standing_wall (row);
      Laying given = laying_of (row->bed, row->first_bed);
      Laying laying;

      block.height = length_from_mm (row->unit);
      laying = laying_resolve (&given, &block);
      for (Length z = 0; z < wall->height + LENGTH_MM (500); z += LENGTH_MM (7))
        {
          gint32 nearest = gauge_nearest_top (wall, &block, &laying, z);
          gint32 at = gauge_course_at (wall, &block, &laying, z);
          Length off = ABS ((nearest > 0 ? gauge_top (wall, &block, &laying, nearest)
                                         : gauge_bottom (wall, &block, &laying, 1))
                            - z);

          for (gint32 n = 1; n < 20; n++)
            g_assert_cmpint (off, <=, ABS (gauge_top (wall, &block, &laying, n) - z));
          g_assert_cmpint (off, <=, ABS (gauge_bottom (wall, &block, &laying, 1) - z));
          if (at > 0)
            g_assert_cmpint (gauge_bottom (wall, &block, &laying, at), <, z);
          g_assert_cmpint (gauge_bottom (wall, &block, &laying, at + 1), >=, z);
        }
      block_clear (&block);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/gauge/tables-in-inches", test_inches);
  g_test_add_func ("/gauge/heights", test_courses);
  g_test_add_func ("/gauge/number-of-courses", test_count);
  g_test_add_func ("/gauge/nearest-top", test_nearest);
  g_test_add_func ("/gauge/next-beds", test_next_beds);
  g_test_add_func ("/gauge/by-height", test_by_height);
  return g_test_run ();
}
