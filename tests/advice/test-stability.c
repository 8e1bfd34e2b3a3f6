/* test-stability.c - where an engineer is to be asked, and that ordinary walls are left in peace */
#include "advice/findings.h"

#include <string.h>

#include "any-house.h"
#include "bond/lay.h"
#include "plain-wall.h"

/* --- by table --- */

/* All in mm. Windows have their sill at 800 and are 1000 high where nothing else is said. */
typedef struct
{
  const char *what;
  int length, height, thickness;
  struct
  {
    int x, width, sill, height;
  } openings[2];
  int left, right; /* returns */
  Through through; /* of both */
  int tee;         /* a wall of 250 mm meets it there; 0: none */
  int joint;       /* a movement joint of 10 mm there; 0: none */
  const char *rule;
  int x;
  const char *text; /* NULL: none of these rules */
} Row;

static const Row rows[] = {
  { "27 times its thickness", .length = 4000, .height = 2700, .thickness = 100, .left = 250,
    .right = 250 },
  { "a little more", .length = 4000, .height = 2750, .thickness = 100, .left = 250, .right = 250,
    .rule = "slender",
    .text = "The wall is 2750 mm high, 27.5 times its thickness of 100 mm; the effective height is "
            "to be 27 times at most (EN 1996-1-1, 5.5.1.4). Here the height of the blockwork "
            "stands for it: check with a licensed engineer." },
  /* Held at both ends, 30 times the thickness apart: of 2750 mm effective are 2750 / (1 + (2750 /
   * 3000)^2) = 1494 mm. At one end, 15 times: 2750 / (1 + (2750 / 4500)^2) = 2002 mm. */
  { "stiffened at both ends", .length = 3500, .height = 2750, .thickness = 100, .left = 250,
    .right = 250 },
  { "a millimetre more", .length = 3501, .height = 2750, .thickness = 100, .left = 250,
    .right = 250, .rule = "slender",
    .text = "The wall is 2750 mm high, 27.5 times its thickness of 100 mm; the effective height is "
            "to be 27 times at most (EN 1996-1-1, 5.5.1.4). Here the height of the blockwork "
            "stands for it: check with a licensed engineer." },
  { "stiffened at one end", .length = 1750, .height = 2750, .thickness = 100, .left = 250 },
  { "stiffened by a wall between", .length = 6750, .height = 2750, .thickness = 100, .left = 250,
    .right = 250, .tee = 3250 },
  { "weakened by an opening", .length = 3500, .height = 2750, .thickness = 100,
    .openings = { { 1000, 700, 800, 700 } }, .left = 250, .right = 250, .rule = "slender",
    .text = "The wall is 2750 mm high, 27.5 times its thickness of 100 mm; the effective height is "
            "to be 27 times at most (EN 1996-1-1, 5.5.1.4). Here the height of the blockwork "
            "stands for it: check with a licensed engineer." },
  { "a small one does not", .length = 3500, .height = 2750, .thickness = 100,
    .openings = { { 1000, 700, 800, 680 } }, .left = 250, .right = 250 },
  { "a partition is not asked for it", .length = 3750, .height = 2750, .thickness = 100,
    .left = 250, .through = THROUGH_ALL },
  { "a long partition", .length = 12510, .height = 2750, .thickness = 150, .left = 250,
    .right = 250, .through = THROUGH_ALL, .rule = "partition-limits",
    .text = "This partition is 2750 mm high, 12010 mm long between other walls and 150 mm thick; "
            "the simplified rules for walls without load end at 6 m, 12 m and 50 mm (EN 1996-3, "
            "annex B): check with a licensed engineer." },
  { "as long as may be", .length = 12500, .height = 2750, .thickness = 150, .left = 250,
    .right = 250, .through = THROUGH_ALL },
  { "held by a wall between", .length = 12010, .height = 2750, .thickness = 100, .left = 250,
    .right = 250, .through = THROUGH_ALL, .tee = 5000 },
  /* The outside case 5.4: 75 mm 5 m, 100 mm 7 m, 115 mm 10 m; half with a free end. */
  { "5.4: 75 mm", .length = 5500, .height = 2500, .thickness = 75, .left = 250, .right = 250,
    .through = THROUGH_ALL },
  { "5.4: 75 mm, a little more", .length = 5510, .height = 2500, .thickness = 75, .left = 250,
    .right = 250, .through = THROUGH_ALL, .rule = "partition-length", .x = 250,
    .text = "From 250 to 5260 mm nothing meets this partition: 5010 mm, where 75 mm of thickness "
            "allow 5000 mm, without load, up to 2.5 m high, and held at foot, top and both ends "
            "(masonry industry's leaflet on partitions): check with a licensed engineer." },
  { "5.4: 100 mm", .length = 7500, .height = 2500, .thickness = 100, .left = 250, .right = 250,
    .through = THROUGH_ALL },
  { "5.4: 100 mm, a free end", .length = 3760, .height = 2500, .thickness = 100, .right = 250,
    .through = THROUGH_ALL, .rule = "partition-length", .x = 0,
    .text
    = "From 0 to 3510 mm nothing meets this partition, and its end is free: 3510 mm, where 100 "
      "mm of thickness allow 3500 mm, without load, up to 2.5 m high, and held at foot, top "
      "and one end (masonry industry's leaflet on partitions): check with a licensed "
      "engineer." },
  { "5.4: 115 mm", .length = 10500, .height = 2500, .thickness = 115, .left = 250, .right = 250,
    .through = THROUGH_ALL },
  { "5.4: 115 mm, past a wall between", .length = 15510, .height = 2500, .thickness = 115,
    .left = 250, .right = 250, .through = THROUGH_ALL, .tee = 5000, .rule = "partition-length",
    .x = 5250,
    .text
    = "From 5250 to 15260 mm nothing meets this partition: 10010 mm, where 115 mm of thickness "
      "allow 10000 mm, without load, up to 2.5 m high, and held at foot, top and both ends "
      "(masonry industry's leaflet on partitions): check with a licensed engineer." },
  { "12 times as high as thick stands by itself", .length = 6000, .height = 3000,
    .thickness = 250 },
  { "higher", .length = 6000, .height = 3010, .thickness = 250, .rule = "free-standing",
    .text
    = "No other wall holds this one. Where floor or roof do not hold its top either, it stands "
      "free, 12.04 times as high as thick; 12 times is the most that was allowed, without much "
      "wind (BS 5628-1, 36.3): check with a licensed engineer." },
  { "held within 15 times its thickness", .length = 4000, .height = 3500, .thickness = 250,
    .left = 250 },
  { "farther", .length = 4010, .height = 3500, .thickness = 250, .left = 250,
    .rule = "free-standing", .x = 4000,
    .text
    = "From 4000 to 4010 mm no other wall holds this one, for the last that does is farther "
      "than 15 times its thickness (EN 1996-1-1, 5.5.1.2). Where floor or roof do not hold "
      "its top there, it stands free, 14.00 times as high as thick; 12 times is the most that "
      "was allowed, without much wind (BS 5628-1, 36.3): check with a licensed engineer." },
  { "held at both ends", .length = 12000, .height = 3500, .thickness = 250, .left = 250,
    .right = 250 },
  { "held by a wall in the middle", .length = 7750, .height = 3500, .thickness = 250, .tee = 3750 },
  { "a bonded wall as long is none", .length = 12010, .height = 2700, .thickness = 100, .left = 250,
    .right = 250, .through = THROUGH_ODD },
  { "a thin partition", .length = 3000, .height = 1000, .thickness = 40, .left = 250,
    .through = THROUGH_ALL, .rule = "partition-limits",
    .text = "This partition is 1000 mm high, 2750 mm long between other walls and 40 mm thick; the "
            "simplified rules for walls without load end at 6 m, 12 m and 50 mm (EN 1996-3, annex "
            "B): check with a licensed engineer." },
  { "400 x 250 is a tenth of a square metre", .length = 6000, .height = 2600, .thickness = 250,
    .openings = { { 1000, 1000 }, { 2400, 1000 } } },
  { "390 x 250 is less", .length = 6000, .height = 2600, .thickness = 250,
    .openings = { { 1000, 1000 }, { 2390, 1000 } }, .rule = "small-pier", .x = 2000,
    .text = "The pier between o20 and o21 is 390 × 250 mm in plan, less than 0.1 m²: where it "
            "bears load its strength is reckoned lower (EN 1996-1-1, 6.1.2.1): check with a "
            "licensed engineer." },
  { "two openings one over the other have no pier", .length = 6000, .height = 2600,
    .thickness = 250, .openings = { { 1000, 1000, 200, 600 }, { 2390, 1000, 1000, 800 } } },
  { "a wall meets it there", .length = 6000, .height = 2600, .thickness = 250,
    .openings = { { 1000, 1000 }, { 2390, 1000 } }, .through = THROUGH_ODD, .tee = 2070 },
  { "a movement joint cuts a pier in two of 390 and 400", .length = 6000, .height = 2600,
    .thickness = 250, .openings = { { 1000, 1000 }, { 2800, 1000 } }, .joint = 2390,
    .rule = "small-pier", .x = 2000,
    .text = "The pier between o20 and the movement joint is 390 × 250 mm in plan, less than 0.1 "
            "m²: where it bears load its strength is reckoned lower (EN 1996-1-1, 6.1.2.1): check "
            "with a licensed engineer." },
  { "and of 400 and 390", .length = 6000, .height = 2600, .thickness = 250,
    .openings = { { 1000, 1000 }, { 2800, 1000 } }, .joint = 2400, .rule = "small-pier", .x = 2410,
    .text = "The pier between o21 and the movement joint is 390 × 250 mm in plan, less than 0.1 "
            "m²: where it bears load its strength is reckoned lower (EN 1996-1-1, 6.1.2.1): check "
            "with a licensed engineer." },
  { "a partition bears nothing", .length = 6000, .height = 2600, .thickness = 250,
    .openings = { { 1000, 1000 }, { 2390, 1000 } }, .left = 250, .through = THROUGH_ALL },
  { "350 x 100 is less than a wall may be", .length = 6000, .height = 2600, .thickness = 100,
    .openings = { { 350, 1000 } }, .right = 250, .tee = 1450, .rule = "small-pier", .x = 0,
    .text = "The pier at the left end, beside o20, is 350 × 100 mm in plan, less than 0.04 m², the "
            "least of a wall that bears load (EN 1996-1-1, 8.1.3): check with a licensed "
            "engineer." },
  { "a narrow pier is told of already", .length = 6000, .height = 2600, .thickness = 250,
    .openings = { { 1000, 1000 }, { 2290, 1000 } } },
  { "two lintels of 100 want 200", .length = 6000, .height = 2600, .thickness = 365,
    .openings = { { 1000, 1000 }, { 2190, 1000 } }, .rule = "bearing-room", .x = 2000,
    .text = "The pier between o20 and o21 is 190 mm wide; what lies on it over the openings wants "
            "200 mm of bearing (house-building standards): check with a licensed engineer." },
  { "over wider openings each wants 150", .length = 6000, .height = 2600, .thickness = 365,
    .openings = { { 500, 1500 }, { 2290, 1500 } }, .rule = "bearing-room", .x = 2000,
    .text = "The pier between o20 and o21 is 290 mm wide; what lies on it over the openings wants "
            "300 mm of bearing (house-building standards): check with a licensed engineer." },
  { "heads that are a course apart share no bed", .length = 6000, .height = 2600, .thickness = 365,
    .openings = { { 1000, 1000, 800, 1000 }, { 2190, 1000, 800, 1200 } } },
  { "there is no lintel where the wall ends", .length = 6000, .height = 1800, .thickness = 365,
    .openings = { { 1000, 1000 }, { 2190, 1000 } } },
  { "a lintel beyond the wall's end", .length = 6000, .height = 2600, .thickness = 250,
    .openings = { { 5000, 1000 } }, .rule = "bearing-room", .x = 6000,
    .text = "o20 reaches the wall's free end, where its lintel has nothing to bear on; 100 mm are "
            "wanted (house-building standards): check with a licensed engineer." },
  { "half a metre from the corner", .length = 6000, .height = 2600, .thickness = 250,
    .openings = { { 500, 1000 } }, .left = 250, .through = THROUGH_EVEN },
  { "nearer", .length = 6000, .height = 2600, .thickness = 250, .openings = { { 480, 1000 } },
    .left = 250, .through = THROUGH_EVEN, .rule = "corner-opening", .x = 0,
    .text = "o20 is 480 mm from the corner, which it weakens; 500 mm and more are common practice: "
            "check with a licensed engineer." },
  { "where a wall is butted, no corner is weakened", .length = 6000, .height = 2600,
    .thickness = 250, .openings = { { 480, 1000 } }, .left = 250, .through = THROUGH_ALL },
  { "as near to the right corner", .length = 6000, .height = 2600, .thickness = 250,
    .openings = { { 4520, 1000 } }, .right = 250, .through = THROUGH_ODD, .rule = "corner-opening",
    .x = 5520,
    .text = "o20 is 480 mm from the corner, which it weakens; 500 mm and more are common practice: "
            "check with a licensed engineer." },
};

static const char *const rules[]
    = { "slender",    "partition-limits", "partition-length", "free-standing",
        "small-pier", "bearing-room",     "corner-opening",   NULL };

static Project *
project_of (const Wall *wall, const Block *block)
{
  Project *project = project_new ();
  Wall *own = wall_copy (wall);
  Block *first = g_ptr_array_index (project->blocks, 0);

  first->length = block->length;
  first->height = block->height;
  first->thickness = block->thickness;
  own->block = first->id;
  own->id.n = project->next++;
  g_free (own->key);
  own->key = project_free_key (project, 'w');
  g_ptr_array_add (project->walls, own);
  return project;
}

/* The findings of these rules alone; the others are freed. */
static GPtrArray *
found (const Wall *wall, const Block *block)
{
  g_autoptr (Project) project = project_of (wall, block);
  const Wall *own = project_wall_at (project, 0);
  g_autoptr (Layout) layout = lay_wall (own, project_block (project, own->block), NULL);
  GPtrArray *findings = findings_of_wall (project, own, layout);

  for (guint i = findings->len; i-- > 0;)
    if (!g_strv_contains (rules, ((Finding *) g_ptr_array_index (findings, i))->rule))
      g_ptr_array_remove_index (findings, i);
  return findings;
}

static void
set_end (Wall *wall, Side side, int ret, Through through)
{
  if (ret > 0)
    wall->ends[side]
        = (End){ .given = TRUE, .has_return = TRUE, .ret = LENGTH_MM (ret), .through = through };
}

static Wall *
wall_of (const Row *row)
{
  Wall *wall = plain_wall (row->length, row->height);

  for (guint i = 0; i < 2 && row->openings[i].width > 0; i++)
    plain_wall_open (wall, row->openings[i].x, row->openings[i].width,
                     row->openings[i].height > 0 ? row->openings[i].sill : 800,
                     row->openings[i].height > 0 ? row->openings[i].height : 1000);
  set_end (wall, SIDE_LEFT, row->left, row->through);
  set_end (wall, SIDE_RIGHT, row->right, row->through);
  if (row->joint > 0)
    wall_add_movement_joint (wall, LENGTH_MM (row->joint), LENGTH_MM (10));
  if (row->tee > 0)
    {
      const Tee tee = { LENGTH_MM (row->tee), LENGTH_MM (250), row->through, { 0 } };
      g_array_append_val (wall->tees, tee);
    }
  return wall;
}

static void
check_row (const Row *row)
{
  g_autoptr (Wall) wall = wall_of (row);
  Block block = block_default ();

  block.thickness = LENGTH_MM (row->thickness);
  g_autoptr (GPtrArray) findings = found (wall, &block);
  g_test_message ("%s", row->what);
  for (guint i = 0; i < findings->len; i++)
    g_test_message ("  %s", ((Finding *) g_ptr_array_index (findings, i))->text);
  g_assert_cmpuint (findings->len, ==, row->text != NULL);
  if (row->text != NULL)
    {
      const Finding *finding = g_ptr_array_index (findings, 0);

      g_assert_cmpstr (finding->rule, ==, row->rule);
      g_assert_cmpstr (finding->text, ==, row->text);
      g_assert_cmpint (finding->severity, ==, SEVERITY_NOTE);
      g_assert_cmpint (finding->x, ==, LENGTH_MM (row->x));
      g_assert_null (finding->mend_text);
    }
  block_clear (&block);
}

static void
test_rows (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    check_row (&rows[i]);
}

/* --- laws --- */

/* Of a wall seen from behind the same is told. */
static void
test_mirror (void)
{
  guint told = 0;

  for (guint64 seed = 1; seed <= 120; seed++)
    {
      g_auto (AnyWall) house = any_house (seed);
      g_autoptr (Wall) behind = any_wall_mirror (house.wall);
      g_autoptr (GPtrArray) front = found (house.wall, &house.block);
      g_autoptr (GPtrArray) back = found (behind, &house.block);
      guint count[2][G_N_ELEMENTS (rules)] = { 0 };

      for (guint k = 0; rules[k] != NULL; k++)
        {
          for (guint i = 0; i < front->len; i++)
            count[0][k] += strcmp (((Finding *) g_ptr_array_index (front, i))->rule, rules[k]) == 0;
          for (guint i = 0; i < back->len; i++)
            count[1][k] += strcmp (((Finding *) g_ptr_array_index (back, i))->rule, rules[k]) == 0;
          g_assert_cmpuint (count[0][k], ==, count[1][k]);
          told += count[0][k];
        }
    }
  g_assert_cmpuint (told, >, 10);
}

/* Of one pier one thing is told, and never is there more than a note for each pier. */
static void
test_few (void)
{
  guint walls = 0, notes = 0, quiet = 0;

  for (guint64 seed = 1; seed <= 200; seed++)
    {
      g_auto (AnyWall) house = any_house (seed);
      g_autoptr (GPtrArray) findings = found (house.wall, &house.block);

      g_assert_cmpuint (findings->len, <=, house.wall->openings->len + 2);
      walls++;
      notes += findings->len;
      quiet += findings->len == 0;
      for (guint i = 1; i < findings->len; i++)
        {
          const Finding *a = g_ptr_array_index (findings, i - 1);
          const Finding *b = g_ptr_array_index (findings, i);
          g_assert_true (a->x != b->x || strcmp (a->rule, b->rule) != 0);
        }
    }
  g_test_message ("%u notes on %u walls, %u of them with none", notes, walls, quiet);
  g_assert_cmpuint (2 * quiet, >, walls);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/stability/rows/as-worded", test_rows);
  g_test_add_func ("/stability/mirror/the-same", test_mirror);
  g_test_add_func ("/stability/houses/few-notes", test_few);
  return g_test_run ();
}
