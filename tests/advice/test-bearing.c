/* test-bearing.c - what lintels bring to the masonry under their ends, against sums made by hand */
#include "advice/bearing.h"

#include "advice/findings.h"
#include "any-house.h"
#include "bond/lay.h"
#include "edited.h"
#include "plain-wall.h"

/* All in mm; a window's sill is at 800. The block is 600 x 200, at 500 kg/m3 dry: 500 x 1.35 x 9.81
 * are 6.62175 kN/m3. A lintel is a course deep, 0.2 m, and weighs 25 kN/m3. */
typedef struct
{
  const char *what;
  int length, height, thickness;
  struct
  {
    int x, width, sill, height;
  } openings[2]; /* the first is asked about */
  int ret;       /* at both ends, bonded */
  int joint, bearing, cap;
  double load;     /* below 0: not known */
  double strength; /* 0: not known */
  int is_bearing, span, depth;
  Arch arch;
  double area, lintel, masonry, end, pressure, design;
  int enough; /* bearing_long_enough() */
} Row;

static const Row rows[] = {
  /* Over 1200 + 100 the triangle is 1126 high; 2000 + 200 + 1126 + 200 are 3526. Its face is
   * 1.3^2 x 0.4330127 = 0.731791 m2, 0.731791 x 0.25 x 6.62175 = 1.211434 kN; the lintel 1.4 x 0.2
   * x 0.25 x 25 = 1.75 kN; half of both is 1.480717 kN, on 100 x 250 mm. */
  { "a triangle", 6000, 3600, 250, .openings = { { 2400, 1200, 800, 1200 } }, .load = -1,
    .is_bearing = 100, .span = 1300, .depth = 200, .arch = ARCH_CARRIES, .area = 0.731791,
    .lintel = 1.75, .masonry = 1.211434, .end = 1.480717, .pressure = 0.059229,
    .design = 0.079959 },
  /* And 10 kN/m over 1.3 m: (1.75 + 1.211434 + 13) / 2; (1.35 x 2.961434 + 1.5 x 13) / 2
   * = 11.748968.
   */
  { "and a floor", 6000, 3600, 250, .openings = { { 2400, 1200, 800, 1200 } }, .load = 10,
    .is_bearing = 100, .span = 1300, .depth = 200, .arch = ARCH_CARRIES, .area = 0.731791,
    .lintel = 1.75, .masonry = 1.211434, .end = 7.980717, .pressure = 0.319229,
    .design = 0.469959 },
  /* On 150 mm: span 1.35, lintel 1.875, triangle 0.789165 m2 and 1.306413 kN, load 13.5; (1.35 x
   * 3.181413 + 20.25) / 2 = 12.272454 kN on 37500 mm2 are 0.327265. */
  { "a strength of 0.35 wants 150 mm", 6000, 3600, 250, .openings = { { 2400, 1200, 800, 1200 } },
    .load = 10, .strength = 0.35, .is_bearing = 100, .span = 1300, .depth = 200,
    .arch = ARCH_CARRIES, .area = 0.731791, .lintel = 1.75, .masonry = 1.211434, .end = 7.980717,
    .pressure = 0.319229, .design = 0.469959, .enough = 150 },
  /* 2600 - 2200 = 400 mm over 1.3 m: 0.52 m2, 0.860828 kN. */
  { "too low for one", 6000, 2600, 250, .openings = { { 2400, 1200, 800, 1200 } }, .load = -1,
    .is_bearing = 100, .span = 1300, .depth = 200, .arch = ARCH_TOO_LOW, .area = 0.52,
    .lintel = 1.75, .masonry = 0.860828, .end = 1.305414, .pressure = 0.052217,
    .design = 0.070492 },
  /* A cap of 300 mm: 1.3 x 0.3 x 0.25 x 25 = 2.4375 kN more. */
  { "with a cap of concrete", 6000, 2600, 250, .openings = { { 2400, 1200, 800, 1200 } },
    .load = -1, .cap = 300, .is_bearing = 100, .span = 1300, .depth = 200, .arch = ARCH_TOO_LOW,
    .area = 0.52, .lintel = 1.75, .masonry = 3.298328, .end = 2.524164, .pressure = 0.100967,
    .design = 0.136305 },
  /* Wider than 1.2 m the least bearing is 150 mm: span 1.5 m, 0.974279 m2; 0.3 x 6.62175 =
   * 1.986525 kN/m2: 1.935429 kN; lintel 1.65 x 0.2 x 0.3 x 25 = 2.475. */
  { "a span of 1.5 m", 6000, 4000, 300, .openings = { { 2400, 1350, 800, 1200 } }, .load = -1,
    .is_bearing = 150, .span = 1500, .depth = 200, .arch = ARCH_CARRIES, .area = 0.974279,
    .lintel = 2.475, .masonry = 1.935429, .end = 2.205215, .pressure = 0.049005,
    .design = 0.066156 },
  /* 1.4 x 0.2 x 0.25 x 25 again; all of 3600 - 2200 = 1400 mm over 1.3 m: 1.82 m2, 3.012896 kN. */
  { "an opening over it", 6000, 3600, 250,
    .openings = { { 2400, 1200, 800, 1200 }, { 2900, 600, 2600, 400 } }, .load = -1,
    .is_bearing = 100, .span = 1300, .depth = 200, .arch = ARCH_OPENING, .area = 1.82,
    .lintel = 1.75, .masonry = 3.012896, .end = 2.381448, .pressure = 0.095258,
    .design = 0.128598 },
  { "a movement joint in it", 6000, 3600, 250, .openings = { { 2400, 1200, 800, 1200 } },
    .joint = 3000, .load = -1, .is_bearing = 100, .span = 1300, .depth = 200, .arch = ARCH_JOINT,
    .area = 1.82, .lintel = 1.75, .masonry = 3.012896, .end = 2.381448, .pressure = 0.095258,
    .design = 0.128598 },
  { "590 mm beside it", 6000, 3600, 250, .openings = { { 590, 1200, 800, 1200 } }, .load = -1,
    .is_bearing = 100, .span = 1300, .depth = 200, .arch = ARCH_BESIDE, .area = 1.82,
    .lintel = 1.75, .masonry = 3.012896, .end = 2.381448, .pressure = 0.095258,
    .design = 0.128598 },
  { "600 mm are enough", 6000, 3600, 250, .openings = { { 600, 1200, 800, 1200 } }, .load = -1,
    .is_bearing = 100, .span = 1300, .depth = 200, .arch = ARCH_CARRIES, .area = 0.731791,
    .lintel = 1.75, .masonry = 1.211434, .end = 1.480717, .pressure = 0.059229,
    .design = 0.079959 },
  { "590 mm to a corner are, too", 6000, 3600, 250, .openings = { { 590, 1200, 800, 1200 } },
    .ret = 250, .load = -1, .is_bearing = 100, .span = 1300, .depth = 200, .arch = ARCH_CARRIES,
    .area = 0.731791, .lintel = 1.75, .masonry = 1.211434, .end = 1.480717, .pressure = 0.059229,
    .design = 0.079959 },
  { "590 mm to the next opening", 8000, 3600, 250,
    .openings = { { 2400, 1200, 800, 1200 }, { 4190, 1200, 800, 1200 } }, .load = -1,
    .is_bearing = 100, .span = 1300, .depth = 200, .arch = ARCH_BESIDE, .area = 1.82,
    .lintel = 1.75, .masonry = 3.012896, .end = 2.381448, .pressure = 0.095258,
    .design = 0.128598 },
  /* 1.2 + 0.2 = 1.4 m; 1.4^2 x 0.4330127 = 0.848705 m2, 1.404978 kN; 1.6 x 0.2 x 0.25 x 25 = 2 kN.
   */
  { "the bearing that was asked for", 6000, 3700, 250, .openings = { { 2400, 1200, 800, 1200 } },
    .bearing = 200, .load = -1, .is_bearing = 200, .span = 1400, .depth = 200, .arch = ARCH_CARRIES,
    .area = 0.848705, .lintel = 2, .masonry = 1.404978, .end = 1.702489, .pressure = 0.034050,
    .design = 0.045967 },
  /* Only 150 mm of wall over the head: all of it is lintel, 1.4 x 0.15 x 0.25 x 25 = 1.3125. */
  { "less than a course over it", 6000, 2150, 250, .openings = { { 2400, 1200, 800, 1200 } },
    .load = -1, .is_bearing = 100, .span = 1300, .depth = 150, .arch = ARCH_TOO_LOW, .area = 0,
    .lintel = 1.3125, .masonry = 0, .end = 0.65625, .pressure = 0.02625, .design = 0.0354375 },
};

static Wall *
wall_of (const Row *row)
{
  Wall *wall = plain_wall (row->length, row->height);

  for (guint i = 0; i < 2 && row->openings[i].width > 0; i++)
    plain_wall_open (wall, row->openings[i].x, row->openings[i].width, row->openings[i].sill,
                     row->openings[i].height);
  for (int side = 0; row->ret > 0 && side < 2; side++)
    wall->ends[side] = (End){ .given = TRUE, .has_return = TRUE, .ret = LENGTH_MM (row->ret) };
  if (row->joint > 0)
    wall_add_movement_joint (wall, LENGTH_MM (row->joint), LENGTH_MM (10));
  if (row->bearing > 0)
    wall->laying.rules[RULE_BEARING]
        = (Rule){ .keep = KEEP_PREFER, .has_value = TRUE, .value = LENGTH_MM (row->bearing) };
  wall->cap.height = LENGTH_MM (row->cap);
  if (row->load >= 0)
    {
      g_array_index (wall->openings, Opening, 0).given |= OPENING_LINE_LOAD;
      g_array_index (wall->openings, Opening, 0).line_load = row->load;
    }
  return wall;
}

static Block
block_of (const Row *row)
{
  Block block = block_default ();

  block.thickness = LENGTH_MM (row->thickness);
  block.strength = row->strength;
  return block;
}

static void
test_rows (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      const Row *row = &rows[i];
      g_autoptr (Wall) wall = wall_of (row);
      const Opening *opening = wall_opening_at (wall, 0);
      Block block = block_of (row);
      Bearing bearing;

      g_test_message ("%s", row->what);
      g_assert_true (bearing_of_opening (wall, &block, opening, &bearing));
      g_assert_cmpint (bearing.bearing, ==, LENGTH_MM (row->is_bearing));
      g_assert_cmpint (bearing.span, ==, LENGTH_MM (row->span));
      g_assert_cmpint (bearing.depth, ==, LENGTH_MM (row->depth));
      g_assert_cmpint (bearing.arch, ==, row->arch);
      g_assert_cmpfloat_with_epsilon (bearing.area, row->area, 1e-6);
      g_assert_cmpfloat_with_epsilon (bearing.lintel, row->lintel, 1e-6);
      g_assert_cmpfloat_with_epsilon (bearing.masonry, row->masonry, 2e-6);
      g_assert_cmpfloat_with_epsilon (bearing.end, row->end, 2e-6);
      g_assert_cmpfloat_with_epsilon (bearing.pressure, row->pressure, 1e-6);
      g_assert_cmpfloat_with_epsilon (bearing.design, row->design, 1e-6);
      g_assert_cmpint (bearing_long_enough (wall, &block, opening), ==, LENGTH_MM (row->enough));
      block_clear (&block);
    }
}

/* Outside check CC-12: 300 mm at 6 kN/m3, 1.8 kN/m2, over a span of 1.5 m: W60 is 1.754 kN. */
static void
test_triangle_from_outside (void)
{
  g_autoptr (Wall) wall = plain_wall (6000, 4000);
  Block block = block_default ();
  Bearing bearing;

  plain_wall_open (wall, 2400, 1350, 800, 1200);
  block.thickness = LENGTH_MM (300);
  block.density = 6000 / 9.81 / 1.35;
  g_assert_true (bearing_of_opening (wall, &block, wall_opening_at (wall, 0), &bearing));
  g_assert_cmpint (bearing.arch, ==, ARCH_CARRIES);
  g_assert_cmpfloat_with_epsilon (bearing.masonry, 1.754, 0.0005);
  block_clear (&block);
}

/* Where the wall ends at the head there is no lintel. */
static void
test_no_lintel (void)
{
  g_autoptr (Wall) wall = plain_wall (6000, 2010);
  Block block = block_default ();
  Bearing bearing;

  plain_wall_open (wall, 2400, 1200, 800, 1200);
  g_assert_false (bearing_of_opening (wall, &block, wall_opening_at (wall, 0), &bearing));
  block_clear (&block);
}

/* --- laws --- */

/* Seen from behind a lintel brings the same; a triangle never weighs more than all that stands over
 * the span; and a floor only adds. */
static void
test_laws (void)
{
  guint carries = 0, all = 0;

  for (guint64 seed = 1; seed <= 150; seed++)
    {
      g_auto (AnyWall) house = any_house (seed);
      g_autoptr (Wall) wall = wall_copy (house.wall);
      g_autoptr (Wall) behind = NULL;

      /* Storeys high enough for an arch, too. */
      if (seed % 2 == 0)
        wall->height += LENGTH_MM (2500);
      behind = any_wall_mirror (wall);
      for (guint i = 0; i < wall->openings->len; i++)
        {
          Opening *opening = &g_array_index (wall->openings, Opening, i);
          const Length mirrored = wall->length - opening_right (opening);
          const Opening *other = NULL;
          Bearing front, back, loaded;

          for (guint k = 0; k < behind->openings->len; k++)
            if (wall_opening_at (behind, k)->x == mirrored
                && wall_opening_at (behind, k)->sill == opening->sill)
              other = wall_opening_at (behind, k);
          g_assert_nonnull (other);
          if (!bearing_of_opening (wall, &house.block, opening, &front))
            continue;
          g_assert_true (bearing_of_opening (behind, &house.block, other, &back));
          g_assert_cmpint (front.arch, ==, back.arch);
          g_assert_cmpfloat_with_epsilon (front.end, back.end, 1e-9);
          g_assert_cmpfloat (front.area, <=,
                             length_to_mm (front.span) / 1000 * (length_to_mm (wall->height) / 1000)
                                 + 1e-9);
          if (front.arch == ARCH_CARRIES)
            g_assert_cmpfloat (
                front.area, <,
                length_to_mm (front.span) / 1000
                    * length_to_mm (wall->height - opening_head (opening) - front.depth) / 1000);
          opening->given |= OPENING_LINE_LOAD;
          opening->line_load = 7.5;
          g_assert_true (bearing_of_opening (wall, &house.block, opening, &loaded));
          g_assert_cmpfloat_with_epsilon (loaded.end - front.end,
                                          7.5 * length_to_mm (front.span) / 2000, 1e-9);
          carries += front.arch == ARCH_CARRIES;
          all++;
        }
    }
  g_test_message ("%u lintels, %u of them under a triangle", all, carries);
  g_assert_cmpuint (carries, >, all / 20);
  g_assert_cmpuint (carries, <, all);
}

/* --- what is told of it --- */

/* The sentence of the finding; NULL when there is none. */
static char *
told (double load, double strength)
{
  Row row = rows[0];
  Block block = block_default ();
  g_autoptr (Wall) wall = NULL;
  g_autoptr (Project) project = project_new ();
  char *text = NULL;

  row.load = load;
  wall = wall_of (&row);
  block.id = project_block_at (project, 0)->id;
  block.key = g_strdup (project_block_at (project, 0)->key);
  block.strength = strength;
  wall->id.n = 0;
  g_clear_pointer (&wall->key, g_free);
  wall->block = block.id;
  project = edited (project, edit_set_block (&block));
  project = edited (project, edit_add_wall (wall));
  block_clear (&block);
  g_autoptr (Layout) layout
      = lay_wall (project_wall_at (project, 0), project_block_at (project, 0), NULL);
  g_autoptr (GPtrArray) findings = findings_of_wall (project, project_wall_at (project, 0), layout);
  for (guint i = 0; i < findings->len; i++)
    {
      const Finding *finding = g_ptr_array_index (findings, i);

      if (!g_str_equal (finding->rule, "bearing-pressure"))
        continue;
      g_assert_null (text);
      g_assert_cmpint (finding->severity, ==, SEVERITY_NOTE);
      g_assert_cmpuint (finding->opening.n, >, 0);
      text = g_strdup (finding->text);
    }
  return text;
}

static void
test_findings (void)
{
  static const struct
  {
    double load, strength;
    const char *text;
  } cases[] = {
    { -1, 0, NULL },
    { 10, 0.48, NULL },
    { -1, 0.08, NULL },
    { 10, 0,
      "o20: under each end of its lintel, on 100 mm of bearing, the wall is pressed with about "
      "0.32 "
      "N/mm² (half of 1.75 kN of lintel, 1.21 of masonry, 13.00 of floors and roof). No design "
      "strength is given for its block: check with a licensed engineer." },
    { 10, 0.35,
      "o20: under each end of its lintel, on 100 mm of bearing, the wall is pressed with 0.47 "
      "N/mm², factors of safety included, more than the design strength of 0.35 N/mm² of its "
      "block. A bearing of 150 mm would come to less. Weights and the load that was given are all "
      "that is reckoned: check with a licensed engineer." },
    { 100, 0.35,
      "o20: under each end of its lintel, on 100 mm of bearing, the wall is pressed with 3.98 "
      "N/mm², factors of safety included, more than the design strength of 0.35 N/mm² of its "
      "block. No bearing of up to 500 mm comes to less. Weights and the load that was given are "
      "all that is reckoned: check with a licensed engineer." },
    { -1, 0.07,
      "o20: under each end of its lintel, on 100 mm of bearing, the wall is pressed with 0.08 "
      "N/mm², factors of safety included, more than the design strength of 0.07 N/mm² of its "
      "block. A bearing of 150 mm would come to less. What floors and roof bring is not known and "
      "left out: check with a licensed engineer." },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *text = told (cases[i].load, cases[i].strength);

      g_assert_cmpstr (text, ==, cases[i].text);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/bearing/rows/by-hand", test_rows);
  g_test_add_func ("/bearing/triangle/from-outside", test_triangle_from_outside);
  g_test_add_func ("/bearing/no-lintel", test_no_lintel);
  g_test_add_func ("/bearing/laws", test_laws);
  g_test_add_func ("/bearing/findings/as-worded", test_findings);
  return g_test_run ();
}
