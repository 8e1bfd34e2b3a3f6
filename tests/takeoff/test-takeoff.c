/* test-takeoff.c - quantities against hand counts, published figures and laws */
#include "takeoff/takeoff.h"

#include <math.h>

#include "any-wall.h"
#include "bond/gauge.h"
#include "bond/lay.h"
#include "bond/stands.h"
#include "concrete/bed-steel.h"
#include "edited.h"
#include "model/built-edit.h"

/* --- projects to count --- */

/* A project of one wall; `block` is what it is laid in. */
static Project *
project_of (const Wall *wall, const Block *block)
{
  Project *project = project_new ();
  Block own = block_copy (block);
  g_autoptr (Wall) on = wall_copy (wall);

  own.id = project_block_at (project, 0)->id;
  g_free (own.key);
  own.key = g_strdup (project_block_at (project, 0)->key);
  project = edited (project, edit_set_block (&own));
  on->block = own.id;
  g_clear_pointer (&on->key, g_free);
  block_clear (&own);
  return edited (project, edit_add_wall (on));
}

typedef struct
{
  Project *project;
  Layout *layouts[8];
  Takeoff *takeoff;
} Counted;

static Counted
count (Project *project)
{
  Counted counted = { .project = project };

  for (guint i = 0; i < project->walls->len; i++)
    {
      const Wall *wall = project_wall_at (project, i);

      counted.layouts[i] = lay_wall (wall, project_block (project, wall->block), NULL);
    }
  counted.takeoff = takeoff_new (project, counted.layouts, NULL);
  return counted;
}

static void
counted_clear (Counted *counted)
{
  for (guint i = 0; i < counted->project->walls->len; i++)
    layout_unref (counted->layouts[i]);
  takeoff_free (counted->takeoff);
  project_unref (counted->project);
}
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Counted, counted_clear)

static double
quantity (const Counted *counted, const char *key)
{
  const TakeoffLine *line = takeoff_line (counted->takeoff, key);

  return line != NULL ? line->quantity : 0;
}

/* --- published figures --- */

/* Units and litres of joint for a square metre of endless wall. */
typedef struct
{
  const char *source;
  double length, height, thickness, bed, head; /* mm */
  double units, units_near;
  double litres, litres_near; /* 0: not given */
} PerArea;

static const PerArea per_area[] = {
  { "docs/rules.md CC-1, quantity surveyors' slides", 215, 65, 102.5, 10, 10, 59.26, 0.005, 0, 0 },
  { "CC-2, worked example: 234.2 units and 0.3794 m3 for 30 m2", 600, 200, 200, 10, 10, 234.2 / 30,
    0.002, 379.4 / 30, 0.005 },
  { "CC-3, worked example: 243.47 units and 0.1566 m3 for 30 m2", 600, 200, 200, 4, 4, 243.47 / 30,
    0.002, 156.6 / 30, 0.005 },
  { "CC-5, a builders' manual: 1125 blocks for 1000 ft2", 390, 190, 190, 10, 10, 12.5, 0.01, 0, 0 },
  { "C12, dry heads", 600, 200, 300, 2, 0, 8.2508, 0.0001, 2.97, 0.005 },
  { "C12, glued heads", 600, 200, 300, 2, 2, 8.2234, 0.0001, 3.96, 0.005 },
  { "9.5, own arithmetic: no joints", 600, 200, 250, 0, 0, 8.333, 0.001, 0, 0 },
  { "9.5, own arithmetic: 3 mm", 600, 200, 250, 3, 3, 8.169, 0.001, 0, 0 },
  { "9.5, own arithmetic: 250 high", 600, 250, 250, 0, 0, 6.667, 0.001, 0, 0 },
  { "9.5, own arithmetic: 250 high, 2 mm", 600, 250, 250, 2, 2, 6.592, 0.001, 0, 0 },
  { "9.5, own arithmetic: 250 high, 3 mm", 600, 250, 250, 3, 3, 6.555, 0.001, 0, 0 },
};

/* A plain wall of so many units by so many courses. */
static Counted
count_plain (const PerArea *row, int units, int courses)
{
  g_autoptr (Wall) wall = wall_new ();
  Block block = block_default ();
  Project *project;

  block.length = length_from_mm (row->length);
  block.height = length_from_mm (row->height);
  block.thickness = length_from_mm (row->thickness);
  wall->laying.given = LAYING_BED | LAYING_HEAD | LAYING_FIRST_BED;
  wall->laying.first_bed = LENGTH_MM (20);
  wall->laying.bed = length_from_mm (row->bed);
  wall->laying.head = length_from_mm (row->head);
  wall->length = units * (block.length + wall->laying.head) - wall->laying.head;
  wall->height
      = wall->laying.first_bed + courses * (block.height + wall->laying.bed) - wall->laying.bed;
  project = project_of (wall, &block);
  block_clear (&block);
  return count (project);
}

/* What one unit's length and two courses more add to each other: the edges cancel out. */
static double
inside (const Counted counted[4], const char *key)
{
  return quantity (&counted[3], key) - quantity (&counted[2], key) - quantity (&counted[1], key)
         + quantity (&counted[0], key);
}

static void
test_per_area (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (per_area); i++)
    {
      const PerArea *row = &per_area[i];
      Counted counted[] = { count_plain (row, 5, 4), count_plain (row, 6, 4),
                            count_plain (row, 5, 6), count_plain (row, 6, 6) };
      double area = inside (counted, "wall.gross-area");
      double unit = row->length * row->height * row->thickness / 1e9;
      double litres = inside (counted, "adhesive.volume") / area;

      g_test_message ("%s", row->source);
      g_assert_cmpfloat_with_epsilon (inside (counted, "wall.net-volume") / unit / area, row->units,
                                      row->units_near);
      if (row->litres > 0)
        g_assert_cmpfloat_with_epsilon (litres, row->litres, row->litres_near);
      /* What is not unit is joint. */
      g_assert_cmpfloat_with_epsilon (inside (counted, "wall.net-volume") * 1000 + litres * area,
                                      area * row->thickness, 1e-6);
      for (guint k = 0; k < G_N_ELEMENTS (counted); k++)
        counted_clear (&counted[k]);
    }
}

/* --- counted by hand --- */

/* Units of 600 x 200 x 300 mm, 600 kg/m3; a wall of 4 units' length on a bed of 20 mm. */
typedef struct
{
  const char *what;
  double head, kerf, length, height;
  double whole, cut, to_order, adhesive, bed_mortar;
} ByHand;

static const ByHand by_hand[] = {
  /* 4 whole ones under 300, 3 whole ones, 300: docs/rules.md C14. */
  { "halves from one unit without kerf", 0, 0, 2400, 422, 7, 2, 8, 0.3 * 2.4 * 2, 0.3 * 2.4 * 20 },
  { "halves from two units with kerf", 0, 3, 2400, 422, 7, 2, 9, 0.3 * 2.4 * 2, 0.3 * 2.4 * 20 },
  /* 5 courses, 3 and 4 upright joints in turn. */
  { "glued heads", 2, 3, 2406, 1028, 18, 4, 22,
    0.3 * (2.406 * 4 * 2 + 0.2 * 2 * (3 + 4 + 3 + 4 + 3)), 0.3 * 2.406 * 20 },
  /* The top course 98 mm: two strips from one unit's height. */
  { "two strips from a height", 0, 3, 2400, 320, 4, 5, 4 + 2 + 1, 0.3 * 2.4 * 2, 0.3 * 2.4 * 20 },
  { "not when the kerf is too wide", 0, 5, 2400, 320, 4, 5, 4 + 3 + 2, 0.3 * 2.4 * 2,
    0.3 * 2.4 * 20 },
};

static void
test_by_hand (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (by_hand); i++)
    {
      const ByHand *row = &by_hand[i];
      g_autoptr (Wall) wall = wall_new ();
      Block block = block_default ();
      double volume;

      block.thickness = LENGTH_MM (300);
      block.density = 600;
      wall->laying.given = LAYING_HEAD | LAYING_KERF;
      wall->laying.head = length_from_mm (row->head);
      wall->laying.kerf = length_from_mm (row->kerf);
      wall->length = length_from_mm (row->length);
      wall->height = length_from_mm (row->height);
      g_auto (Counted) counted = count (project_of (wall, &block));
      g_test_message ("%s", row->what);
      volume = quantity (&counted, "wall.net-volume");
      g_assert_cmpfloat (quantity (&counted, "blocks.whole"), ==, row->whole);
      g_assert_cmpfloat (quantity (&counted, "blocks.cut-pieces"), ==, row->cut);
      g_assert_cmpfloat (quantity (&counted, "blocks.to-order"), ==, row->to_order);
      g_assert_cmpfloat_with_epsilon (quantity (&counted, "adhesive.volume"), row->adhesive, 1e-9);
      g_assert_cmpfloat_with_epsilon (quantity (&counted, "bed-mortar.volume"), row->bed_mortar,
                                      1e-9);
      g_assert_cmpfloat_with_epsilon (quantity (&counted, "blocks.waste"),
                                      row->to_order * 0.036 - volume, 1e-9);
      g_assert_cmpfloat_with_epsilon (quantity (&counted, "blocks.mass"),
                                      row->to_order * 0.036 * 600, 1e-9);
      g_assert_cmpfloat_with_epsilon (quantity (&counted, "wall.mass"), volume * 600, 1e-9);
      block_clear (&block);
    }
}

/* docs/rules.md C8: 600 x 250 x 200 mm at 500 kg/m3 dry is 15 kg. */
static void
test_piece_mass (void)
{
  g_autoptr (Wall) wall = wall_new ();
  Block block = block_default ();
  double mass = 0;

  g_auto (Counted) counted = count (project_of (wall, &block));
  for (guint i = 0; i < counted.layouts[0]->pieces->len; i++)
    {
      const Piece *piece = layout_piece (counted.layouts[0], i);
      double is = takeoff_piece_mass (counted.layouts[0], piece, &block);

      if (piece->shape == PIECE_WHOLE)
        g_assert_cmpfloat_with_epsilon (is, 15, 1e-9);
      mass += is;
    }
  g_assert_cmpfloat_with_epsilon (mass, quantity (&counted, "wall.mass"), 1e-6);
  block_clear (&block);
}

/* --- laws on made-up walls --- */

/* Whether a height lies in a joint or at the edge of one that then belongs to nobody. */
static gboolean
lies_in_joint (const Wall *wall, const Block *block, Length z, gboolean is_head)
{
  Laying laying = laying_resolve (&wall->laying, block);
  gint32 n = gauge_n_courses (wall, block, &laying);

  for (gint32 number = 0; number <= n; number++)
    {
      Length lo = number > 0 ? gauge_top (wall, block, &laying, number) : 0;
      Length hi = gauge_bottom (wall, block, &laying, number + 1);

      if (is_head ? lo <= z && z < hi : lo < z && z <= hi)
        return TRUE;
    }
  return FALSE;
}

/* Whether an opening reaches into a corner. */
static gboolean
lies_in_return (const Wall *wall, const Laying *laying, const Opening *opening)
{
  Length left = wall->ends[SIDE_LEFT].ret, right = wall->ends[SIDE_RIGHT].ret;

  return (left > 0 && opening->x <= left + laying->head)
         || (right > 0 && opening_right (opening) >= wall->length - right - laying->head);
}

/* Walls in which each joint is between two pieces. */
static gboolean
has_plain_joints (const Wall *wall, const Block *block, const Layout *layout)
{
  Laying laying = laying_resolve (&wall->laying, block);

  if (layout->packings->len > 0 || layout->courses->len == 0)
    return FALSE;
  for (guint i = 0; i < wall->openings->len; i++)
    {
      const Opening *opening = wall_opening_at (wall, i);

      if (lies_in_return (wall, &laying, opening)
          || lies_in_joint (wall, block, opening->sill, FALSE)
          || lies_in_joint (wall, block, opening_head (opening), TRUE))
        return FALSE;
    }
  return TRUE;
}

/* Face area at the corners that is the other wall's, mm2: its courses and the joints under them. */
static double
area_of_returns (const Wall *wall, const Laying *laying, const Layout *layout)
{
  double area = 0;

  for (guint c = 0; c < layout->courses->len; c++)
    for (int side = 0; side < 2; side++)
      {
        const Course *course = layout_course (layout, c);
        const End *end = &wall->ends[side];
        double ret = length_to_mm (end->ret);

        if (!end_stops (end, course->number, course->bottom))
          continue;
        area += ret * length_to_mm (course->top - course->bottom);
        area += (ret + length_to_mm (laying->head))
                * length_to_mm (c > 0 ? laying->bed : laying->first_bed);
      }
  for (guint c = 0; c < layout->courses->len; c++)
    for (guint i = 0; i < wall->tees->len; i++)
      {
        const Course *course = layout_course (layout, c);
        const Tee *tee = wall_tee_at (wall, i);

        if (!tee_stops (tee, course->number, course->bottom))
          continue;
        area += length_to_mm (tee->ret) * length_to_mm (course->top - course->bottom);
        area += length_to_mm (tee->ret + 2 * laying->head)
                * length_to_mm (c > 0 ? laying->bed : laying->first_bed);
      }
  for (guint i = 0; i < wall->movement_joints->len; i++)
    area += length_to_mm (wall_movement_joint_at (wall, i)->width)
            * length_to_mm (layout_course (layout, layout->courses->len - 1)->top);
  return area;
}

/* A perpend at a jamb whose course goes on under the sill or over the head is open beside the
 * opening: no joint there. mm2, at four corners of each opening. */
static double
slack_of (const Wall *wall, const Laying *laying, const Block *block)
{
  return 4.0 * wall->openings->len * length_to_mm (laying->head)
         * length_to_mm (block->height + MAX (laying->first_bed, laying->bed));
}

/* A wall of 115 mm that runs through in odd or even courses, where there are no openings. */
static void
meet_in_the_middle (Wall *wall)
{
  Tee tee = { .x = wall->length / 2 - LENGTH_MM (60), .ret = LENGTH_MM (115) };

  tee.through = wall->length % 2 == 1 ? THROUGH_ODD : THROUGH_EVEN;
  if (wall->openings->len == 0 && wall->length > LENGTH_MM (2000)
      && wall->ends[SIDE_LEFT].ret + LENGTH_MM (200) < tee.x
      && wall->ends[SIDE_RIGHT].ret + LENGTH_MM (200) < tee.x)
    g_array_append_val (wall->tees, tee);
}

/* A movement joint there, no wider than a head joint where that is wide enough. */
static void
part_in_the_middle (Wall *wall, const Block *block)
{
  Laying laying = laying_resolve (&wall->laying, block);

  if (wall->openings->len == 0 && wall->length > LENGTH_MM (2000)
      && wall->ends[SIDE_LEFT].ret + LENGTH_MM (200) < wall->length / 2
      && wall->ends[SIDE_RIGHT].ret + LENGTH_MM (200) < wall->length / 2)
    wall_add_movement_joint (wall, wall->length / 2,
                             laying.head >= MOVEMENT_JOINT_LEAST ? laying.head : LENGTH_MM (12));
}

/* Pieces, joints, levelling bed and openings fill the wall. */
static void
test_fills_the_wall (void)
{
  guint n = 0, with_openings = 0, with_returns = 0, with_tees = 0, parted = 0;

  for (guint64 seed = 1; seed <= 700; seed++)
    {
      g_auto (AnyWall) any = any_wall (seed);
      if (seed % 3 == 0)
        meet_in_the_middle (any.wall);
      else if (seed % 3 == 1)
        part_in_the_middle (any.wall, &any.block);
      g_auto (Counted) counted = count (project_of (any.wall, &any.block));
      const Wall *wall = project_wall_at (counted.project, 0);
      const Layout *layout = counted.layouts[0];
      Laying laying = laying_resolve (&wall->laying, &any.block);
      double t = length_to_mm (any.block.thickness), filled, wanted;
      g_autofree char *text = NULL;
      Length top;

      if (!has_plain_joints (wall, &any.block, layout))
        continue;
      top = layout_course (layout, layout->courses->len - 1)->top;
      filled = (quantity (&counted, "wall.net-volume") * 1e9
                + quantity (&counted, "adhesive.volume") * 1e6
                + quantity (&counted, "bed-mortar.volume") * 1e6)
                   / t
               + area_of_returns (wall, &laying, layout);
      wanted = quantity (&counted, "wall.net-area") * 1e6
               - length_to_mm (wall->height - top) * length_to_mm (wall->length);
      text = any_wall_text (wall, &any.block);
      if (filled > wanted + 1e-3 || filled < wanted - slack_of (wall, &laying, &any.block) - 1e-3)
        g_test_message ("%" G_GUINT64_FORMAT ": %s", seed, text);
      g_assert_cmpfloat (filled, <=, wanted + 1e-3);
      g_assert_cmpfloat (filled, >=, wanted - slack_of (wall, &laying, &any.block) - 1e-3);
      if (filled < wanted - 1e-3)
        continue;
      n++;
      with_openings += wall->openings->len > 0;
      with_tees += wall->tees->len > 0;
      parted += wall->movement_joints->len > 0;
      with_returns += wall->ends[SIDE_LEFT].ret > 0 || wall->ends[SIDE_RIGHT].ret > 0;
    }
  g_test_message ("%u walls filled exactly, %u with openings, %u with returns", n, with_openings,
                  with_returns);
  g_assert_cmpuint (n, >, 200);
  g_assert_cmpuint (with_openings, >, 80);
  g_assert_cmpuint (with_returns, >, 80);
  g_assert_cmpuint (with_tees, >, 30);
  g_assert_cmpuint (parted, >, 30);
}

/* Units of 600 x 200. Two units and their joint, 1210, stand on either side of a movement joint as
 * wide as a head joint, five courses high. The first bed is 20, the others 2. */
static void
test_movement_joints (void)
{
  Wall *wall = wall_new ();
  Block block = block_default ();
  Opening opening = opening_default (OPENING_WINDOW);

  wall->height = LENGTH_MM (1028);
  wall->laying.given = LAYING_HEAD | LAYING_BED | LAYING_FIRST_BED | LAYING_MIN_LAP;
  wall->laying.head = LENGTH_MM (10);
  wall->laying.bed = LENGTH_MM (2);
  wall->laying.first_bed = LENGTH_MM (20);
  wall->laying.min_lap = 0;
  wall->length = LENGTH_MM (1210 + 10 + 1210);
  wall_add_movement_joint (wall, LENGTH_MM (1210), LENGTH_MM (10));
  {
    g_auto (Counted) counted = count (project_of (wall, &block));
    double t = length_to_mm (block.thickness);

    g_assert_cmpfloat_with_epsilon (quantity (&counted, "movement-joint.length"), 1.028, 1e-9);
    g_assert_cmpfloat_with_epsilon (quantity (&counted, "bed-mortar.volume"),
                                    2 * 1210 * 20 * t / 1e6, 1e-6);
    /* Four beds; with pieces of half bond in even courses a perpend more on either side. */
    g_assert_cmpfloat (quantity (&counted, "adhesive.volume"), >=,
                       (4 * 2 * 1210 * 2 + 5 * 2 * 200 * 10) * t / 1e6 - 1e-6);
    g_assert_cmpfloat (quantity (&counted, "adhesive.volume"), <=,
                       (4 * 2 * 1210 * 2 + 5 * 4 * 200 * 10) * t / 1e6 + 1e-6);
  }
  /* A second one, through a window of 600. */
  Wall *other = wall_copy (wall);
  wall_unref (wall);
  wall_add_movement_joint (other, LENGTH_MM (1800), LENGTH_MM (20));
  opening.key = g_strdup ("o");
  opening.id.n = 77;
  opening.x = LENGTH_MM (1600);
  opening.width = LENGTH_MM (400);
  opening.sill = LENGTH_MM (222);
  opening.height = LENGTH_MM (600);
  g_array_append_val (other->openings, opening);
  g_auto (Counted) counted = count (project_of (other, &block));
  g_assert_cmpfloat_with_epsilon (quantity (&counted, "movement-joint.length"), 1.028 + 0.428,
                                  1e-9);
  wall_unref (other);
  block_clear (&block);
}

/* A dry gable of 45 degrees over 4 m: 4 m2, of which twenty wedges of 20 x 20 / 2 are packed. A cap
 * of 120, plumb, fills them instead. */
static void
test_gable (void)
{
  g_autoptr (Wall) wall = wall_new ();
  Block block = block_default ();
  const double t = length_to_mm (block.thickness);
  Length height;

  wall->length = LENGTH_MM (4000);
  wall->laying.given = LAYING_HEAD | LAYING_BED | LAYING_FIRST_BED;
  wall->laying.head = wall->laying.bed = wall->laying.first_bed = 0;
  wall_take_top (wall,
                 top_gable (LENGTH_MM (4000), 0, 0, LENGTH_MM (2000), LENGTH_MM (2000), &height),
                 LENGTH_MM (2000));
  {
    g_auto (Counted) counted = count (project_of (wall, &block));

    g_assert_cmpfloat_with_epsilon (quantity (&counted, "wall.gross-area"), 4, 1e-9);
    g_assert_cmpfloat_with_epsilon (quantity (&counted, "wall.net-volume"), (4e6 - 4000) * t / 1e9,
                                    1e-5);
    g_assert_cmpfloat_with_epsilon (quantity (&counted, "bed-mortar.volume"), 4000 * t / 1e6, 1e-4);
    g_assert_cmpfloat (quantity (&counted, "blocks.raked"), >=, 19);
    g_assert_null (takeoff_line (counted.takeoff, "cap.volume"));
  }
  g_autoptr (Wall) capped = wall_copy (wall);
  capped->cap.height = LENGTH_MM (120);
  g_auto (Counted) counted = count (project_of (capped, &block));
  g_assert_cmpfloat_with_epsilon (quantity (&counted, "bed-mortar.volume"), 0, 1e-9);
  g_assert_cmpfloat_with_epsilon (quantity (&counted, "cap.volume"), (4000 * 120 + 4000) * t / 1e9,
                                  1e-6);
  g_assert_cmpfloat_with_epsilon (quantity (&counted, "cap.length"), 2 * 2.8284271247, 1e-9);
  block_clear (&block);
}

/* Beds of 20 on the foundation, and of what the step leaves on it: 202 is one course, 210
 * leaves 12.
 */
static void
test_stepped_footing (void)
{
  static const struct
  {
    double up, bed;
  } rows[] = { { 202, 20 }, { 210, 12 }, { 5, 15 } };
  Block block = block_default ();

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (Wall) wall = wall_new ();

      foot_list_add (wall->feet, LENGTH_MM (3600), length_from_mm (rows[i].up));
      {
        g_auto (Counted) counted = count (project_of (wall, &block));

        g_assert_cmpfloat_with_epsilon (
            quantity (&counted, "bed-mortar.volume"),
            (3600 * 20 + 2400 * rows[i].bed) * length_to_mm (block.thickness) / 1e6, 1e-6);
        g_assert_cmpfloat_with_epsilon (quantity (&counted, "wall.gross-area"),
                                        6 * 2.5 - 2.4 * rows[i].up / 1000, 1e-9);
      }
    }
  block_clear (&block);
}

/* No line for what is not there. */
static void
test_no_movement_joint (void)
{
  g_autoptr (Wall) wall = wall_new ();
  Block block = block_default ();
  g_auto (Counted) counted = count (project_of (wall, &block));

  g_assert_null (takeoff_line (counted.takeoff, "movement-joint.length"));
  block_clear (&block);
}

static void
check_line_of_pieces (const Counted *counted, const TakeoffLine *line)
{
  const Layout *layout = counted->layouts[0];
  gint32 n = 0;

  for (guint i = 0; i < layout->pieces->len; i++)
    n += takeoff_line_has_piece (line->key, layout_piece (layout, i));
  if (!line->of_pieces)
    g_assert_cmpint (n, ==, 0);
  else if (g_str_equal (line->unit, "pcs"))
    g_assert_cmpfloat (line->quantity, ==, n);
  else
    g_assert_cmpint (n, ==, layout->pieces->len);
}

static void
check_steel (const Counted *counted)
{
  const Wall *wall = project_wall_at (counted->project, 0);
  g_autoptr (GArray) runs = bed_steel_runs (wall, project_block (counted->project, wall->block));
  double metres = 0;

  for (guint i = 0; i < runs->len; i++)
    {
      const SteelRun *run = &g_array_index (runs, SteelRun, i);

      metres += run->bars * length_to_mm (run->bar_length) / 1000;
    }
  g_assert_cmpfloat_with_epsilon (quantity (counted, "steel.bed-length"), metres, 1e-6);
  g_assert_cmpfloat_with_epsilon (quantity (counted, "steel.bed-mass"),
                                  metres * bed_steel_mass_per_metre (wall->steel.diameter), 1e-6);
  g_assert_cmpfloat (quantity (counted, "steel.bed-stock") * 6 + 1e-6, >=, metres);
}

static void
check_order (const Counted *counted, const Block *block)
{
  double unit = length_to_mm (block->length) * length_to_mm (block->height)
                * length_to_mm (block->thickness) / 1e9;
  double units = quantity (counted, "blocks.to-order");

  g_assert_cmpfloat (units, >=, quantity (counted, "blocks.whole"));
  g_assert_cmpfloat (units, <=,
                     quantity (counted, "blocks.whole") + quantity (counted, "blocks.cut-pieces"));
  g_assert_cmpfloat (units * unit + 1e-9, >=, quantity (counted, "wall.net-volume"));
}

static void
test_any_wall (void)
{
  for (guint64 seed = 2001; seed <= 2150; seed++)
    {
      g_auto (AnyWall) any = any_wall (seed);

      any.wall->steel.given = TRUE;
      any.wall->steel.every = 2;
      any.wall->steel.under_sills = TRUE;
      g_auto (Counted) counted = count (project_of (any.wall, &any.block));
      for (guint i = 0; i < counted.takeoff->lines->len; i++)
        check_line_of_pieces (&counted, g_ptr_array_index (counted.takeoff->lines, i));
      g_assert_cmpfloat (quantity (&counted, "blocks.whole"), ==, counted.layouts[0]->n_whole);
      g_assert_cmpfloat (quantity (&counted, "blocks.cut-pieces"), ==, counted.layouts[0]->n_cut);
      check_steel (&counted);
      check_order (&counted, &any.block);
    }
}

/* --- many walls --- */

static Project *
project_of_many (guint64 seed)
{
  g_auto (AnyWall) first = any_wall (seed);
  Project *project = project_of (first.wall, &first.block);

  for (guint64 i = 1; i < 5; i++)
    {
      g_autoptr (Wall) wall = wall_copy (first.wall);

      wall->block = project_block_at (project, 0)->id;
      g_clear_pointer (&wall->key, g_free);
      for (guint k = 0; k < wall->openings->len; k++)
        g_clear_pointer (&g_array_index (wall->openings, Opening, k).key, g_free);
      wall->length += (Length) i * LENGTH_MM (37);
      project = edited (project, edit_add_wall (wall));
    }
  return project;
}

/* Lines are sums of their walls; what is ordered together is no more than what is ordered apart. */
static void
test_walls_sum (void)
{
  guint saved = 0;

  for (guint64 seed = 1; seed <= 60; seed++)
    {
      g_auto (Counted) counted = count (project_of_many (seed));

      for (guint i = 0; i < counted.takeoff->lines->len; i++)
        {
          const TakeoffLine *line = g_ptr_array_index (counted.takeoff->lines, i);
          double sum = 0;

          for (guint w = 0; w < counted.takeoff->n_walls; w++)
            sum += line->walls[w];
          if (g_str_equal (line->key, "blocks.to-order"))
            saved += (guint) (sum - line->quantity);
          if (g_str_equal (line->key, "blocks.to-order") || g_str_equal (line->key, "blocks.waste")
              || g_str_equal (line->key, "blocks.mass")
              || g_str_equal (line->key, "steel.bed-stock"))
            g_assert_cmpfloat (line->quantity, <=, sum + 1e-9);
          else
            g_assert_cmpfloat_with_epsilon (line->quantity, sum, 1e-6);
        }
    }
  g_assert_cmpuint (saved, >, 0);
}

/* --- a wall that is butted to another --- */

/* The same wall without what it loses at its butted left end, `by`, there free. */
static Counted
count_shorter (const AnyWall *any, Length by)
{
  g_autoptr (Wall) wall = wall_copy (any->wall);

  wall->length -= by;
  wall->ends[SIDE_LEFT] = (End){ 0 };
  for (guint i = 0; i < wall->openings->len; i++)
    opening_shift (&g_array_index (wall->openings, Opening, i), -by);
  return count (project_of (wall, &any->block));
}

/* Whether the left end can be butted to a wall of that thickness: openings stay clear of it. */
static gboolean
has_room (const Wall *wall, Length by)
{
  for (guint i = 0; i < wall->openings->len; i++)
    if (wall_opening_at (wall, i)->x <= by)
      return FALSE;
  return wall->length > by + LENGTH_MM (500) && wall->ends[SIDE_RIGHT].ret < LENGTH_MM (100);
}

/* Pieces and bars are those of the shorter wall; the joint against the other wall comes on top. */
static void
test_butted (void)
{
  const char *const same[]
      = { "blocks.whole",    "blocks.cut-pieces", "blocks.to-order",  "blocks.waste",
          "wall.net-volume", "bed-mortar.volume", "steel.bed-length", "steel.bed-mass" };
  int looked_at = 0;

  for (int i = 0; i < 400 && looked_at < 60; i++)
    {
      g_auto (AnyWall) any = any_wall ((guint64) g_test_rand_int_range (0, 1 << 30));
      Laying laying = laying_resolve (&any.wall->laying, &any.block);
      Length ret = LENGTH_MM (250), by = ret + laying.head;

      if (!has_room (any.wall, by) || laying.aim == AIM_LEAST_WASTE)
        continue;
      any.wall->steel.given = TRUE;
      any.wall->steel.every = 2;
      any.wall->ends[SIDE_LEFT]
          = (End){ .given = TRUE, .has_return = TRUE, .ret = ret, .through = THROUGH_ALL };
      g_auto (Counted) butted = count (project_of (any.wall, &any.block));
      g_auto (Counted) shorter = count_shorter (&any, by);

      g_autofree char *text = any_wall_text (any.wall, &any.block);
      g_test_message ("%s", text);
      for (guint k = 0; k < G_N_ELEMENTS (same); k++)
        g_assert_cmpfloat_with_epsilon (quantity (&butted, same[k]), quantity (&shorter, same[k]),
                                        1e-9);
      g_assert_cmpfloat (quantity (&butted, "adhesive.volume"), >=,
                         quantity (&shorter, "adhesive.volume") - 1e-9);
      looked_at++;
    }
  g_assert_cmpint (looked_at, ==, 60);
}

/* Five courses, tied at both ends in every second of them by two strips: 8; at a gap in every
 * course by one angle on either side of it: 8. */
static void
test_ties (void)
{
  g_autoptr (Wall) wall = wall_new ();
  Block block = block_default ();
  Tee tee = { .x = LENGTH_MM (2000),
              .ret = LENGTH_MM (115),
              .through = THROUGH_ALL,
              .ties = { TIES_ALL, TIE_ANGLE, 1, 1 } };

  wall->length = LENGTH_MM (6000);
  wall->height = LENGTH_MM (1028);
  for (int side = 0; side < 2; side++)
    wall->ends[side] = (End){ .given = TRUE,
                              .has_return = TRUE,
                              .ret = LENGTH_MM (250),
                              .through = THROUGH_ALL,
                              .ties = { TIES_ALL, TIE_STRIP, 2, 2 } };
  g_array_append_val (wall->tees, tee);
  g_auto (Counted) counted = count (project_of (wall, &block));
  g_assert_cmpfloat (quantity (&counted, "ties.strips"), ==, 8);
  g_assert_cmpfloat (quantity (&counted, "ties.angles"), ==, 8);
  g_assert_cmpfloat (quantity (&counted, "ties.count"), ==, 16);
  g_assert_null (takeoff_line (counted.takeoff, "ties.meshes"));
  block_clear (&block);
}

static void
test_keys (void)
{
  static const char *const keys[]
      = { "blocks.whole",    "blocks.cut-pieces",  "blocks.to-order",  "blocks.waste",
          "wall.gross-area", "wall.openings-area", "wall.net-area",    "wall.net-volume",
          "adhesive.volume", "bed-mortar.volume",  "steel.bed-length", "steel.bed-mass" };
  g_auto (Counted) counted = count (project_new ());

  for (guint i = 0; i < G_N_ELEMENTS (keys); i++)
    {
      g_assert_nonnull (takeoff_line (counted.takeoff, keys[i]));
      g_assert_cmpfloat (takeoff_line (counted.takeoff, keys[i])->quantity, ==, 0);
    }
  g_assert_null (takeoff_line (counted.takeoff, "no.such-key"));
}

/* Laid up to a course as it is laid now. */
static Project *
laid_up_to (Project *project, gint32 courses)
{
  const Wall *wall = project_wall_at (project, 0);
  g_autoptr (Layout) layout = lay_wall (wall, project_block (project, wall->block), NULL);
  g_autoptr (GArray) laid = stands_of_layout (layout);
  g_autoptr (GError) error = NULL;
  g_autoptr (Wall) up = built_set_courses (wall, courses, laid, NULL, &error);

  g_assert_no_error (error);
  return edited (project, edit_set_wall (up));
}

static Project *
with_top (Project *project, gint32 course, double top)
{
  const Length left = length_from_mm (top);
  g_autoptr (Wall) measured
      = built_set_top (project_wall_at (project, 0), course, &left, NULL, NULL);

  return edited (project, edit_set_wall (measured));
}

/* One wall of 6018 mm (10 units) on a bed drawn 25 mm thick, on a footing with these two levels at
 * its ends, below the underside of course 1. */
static double
bed_mortar (int left, int right, int first_bed, int high)
{
  g_autoptr (Wall) wall = wall_new ();
  g_autoptr (Survey) survey = survey_new ();
  Block block = block_default ();
  Project *project;
  const int beds[] = { left, right };

  wall->length = LENGTH_MM (6018);
  wall->laying.given = LAYING_FIRST_BED;
  wall->laying.first_bed = LENGTH_MM (first_bed);
  block.length = LENGTH_MM (600);
  block.thickness = LENGTH_MM (250);
  project = project_of (wall, &block);
  block_clear (&block);
  survey->given = SURVEY_FIRST_COURSE;
  survey->first_course = 0;
  for (int i = 0; i < 2; i++)
    {
      survey_add_reading (survey)->given = READING_BACK | READING_LEVEL;
      Reading *reading = survey_add_reading (survey);

      reading->given = READING_INTER;
      reading->inter = LENGTH_MM (beds[i]);
      reading_add_place (reading, project_wall_at (project, 0)->id, i * LENGTH_MM (6018));
    }
  project = edited (project, edit_set_survey (left > 0 ? survey : NULL));
  if (high > 0)
    project = with_top (laid_up_to (project, 1), 1, first_bed + 200 + high);
  g_auto (Counted) counted = count (project);

  return quantity (&counted, "bed-mortar.volume");
}

/* By hand: 6018 x 250 mm of wall times the mean bed; beyond 40 mm the footing is built up first.
 * Without a survey the bed is as drawn. */
static void
test_surveyed_bed (void)
{
  const double litres_per_mm = 6018 * 250 / 1e6;

  g_assert_cmpfloat_with_epsilon (bed_mortar (0, 0, 20, 0), 20 * litres_per_mm, 1e-6);
  /* Course 1 stands 3 mm higher than it was drawn. */
  g_assert_cmpfloat_with_epsilon (bed_mortar (0, 0, 20, 3), 23 * litres_per_mm, 1e-6);
  g_assert_cmpfloat_with_epsilon (bed_mortar (25, 25, 20, 3), 28 * litres_per_mm, 1e-6);
  g_assert_cmpfloat_with_epsilon (bed_mortar (25, 25, 20, 0), 25 * litres_per_mm, 1e-6);
  g_assert_cmpfloat_with_epsilon (bed_mortar (15, 35, 20, 0), 25 * litres_per_mm, 1e-6);
  g_assert_cmpfloat_with_epsilon (bed_mortar (60, 60, 20, 0), 40 * litres_per_mm, 1e-6);
  g_assert_cmpfloat_with_epsilon (bed_mortar (4, 4, 20, 0), 10 * litres_per_mm, 1e-6);
}

static void
test_stop (void)
{
  g_autoptr (Wall) wall = wall_new ();
  Block block = block_default ();
  gint stop = 1;

  g_auto (Counted) counted = count (project_of (wall, &block));
  g_assert_null (takeoff_new (counted.project, counted.layouts, &stop));
  block_clear (&block);
}

/* --- what is still needed --- */

static double
of (const Takeoff *takeoff, const char *key)
{
  const TakeoffLine *line = takeoff_line (takeoff, key);

  return line != NULL ? line->quantity : 0;
}

/* 3000 x 1028 of five courses in half bond, heads dry: 5 whole ones in odd courses, 4 and two
 * halves in even ones. Two stand; the second was measured 3 mm high, so that the three above lie on
 * beds of 1 mm, and the levelling bed is 23. */
static void
test_rest_by_hand (void)
{
  g_autoptr (Wall) wall = wall_new ();
  Block block = block_default ();
  const double t = length_to_mm (block.thickness);

  wall->length = LENGTH_MM (3000);
  wall->height = LENGTH_MM (1028);
  wall->laying.given = LAYING_HEAD | LAYING_AIM;
  wall->laying.aim = AIM_REGULAR;
  wall->laying.head = 0;
  g_auto (Counted) all = count (with_top (laid_up_to (project_of (wall, &block), 2), 2, 425));
  g_autoptr (Takeoff) rest = takeoff_rest_new (all.project, all.layouts, NULL);
  g_assert_cmpfloat_with_epsilon (of (all.takeoff, "blocks.whole"), 3 * 5 + 2 * 4, 1e-9);
  g_assert_cmpfloat_with_epsilon (of (rest, "blocks.whole"), 2 * 5 + 4, 1e-9);
  g_assert_cmpfloat_with_epsilon (of (rest, "blocks.cut-pieces"), 2, 1e-9);
  /* Two halves and a kerf are more than a unit. */
  g_assert_cmpfloat_with_epsilon (of (rest, "blocks.to-order"), 2 * 5 + 4 + 2, 1e-9);
  g_assert_cmpfloat_with_epsilon (of (rest, "adhesive.volume"), 3 * 3000 * 1 * t / 1e6, 1e-9);
  g_assert_cmpfloat_with_epsilon (of (all.takeoff, "adhesive.volume"),
                                  (3 * 3000 * 1 + 3000 * 2) * t / 1e6, 1e-9);
  g_assert_cmpfloat_with_epsilon (of (rest, "bed-mortar.volume"), 0, 1e-9);
  g_assert_cmpfloat_with_epsilon (of (all.takeoff, "bed-mortar.volume"), 3000 * 23 * t / 1e6, 1e-9);
  g_assert_cmpfloat_with_epsilon (of (rest, "wall.gross-area"), 3.0 * (1.028 - 0.425), 1e-9);
  g_assert_cmpfloat_with_epsilon (of (rest, "wall.net-volume"), 3.0 * 0.6 * t / 1000, 1e-9);
  block_clear (&block);
}

/* What stands and what is left are all of it; where nothing stands, all is left, and where all
 * stands, nothing. */
static void
test_rest_of_any_wall (void)
{
  static const char *const sums[] = { "blocks.whole", "blocks.cut-pieces", "wall.net-volume" };

  for (guint64 seed = 0; seed < 60; seed++)
    {
      g_auto (AnyWall) any = any_wall (seed);
      AnyRandom random = { seed };
      g_auto (Counted) all = count (project_of (any.wall, &any.block));
      const gint32 n = (gint32) all.layouts[0]->courses->len;
      const gint32 up = (gint32) any_between (&random, 0, n);
      double standing[G_N_ELEMENTS (sums)] = { 0 };
      const Block *block = project_block_at (all.project, 0);

      g_auto (Counted) part = count (laid_up_to (project_ref (all.project), up));
      g_autoptr (Takeoff) rest = takeoff_rest_new (part.project, part.layouts, NULL);
      for (guint i = 0; i < part.layouts[0]->pieces->len; i++)
        {
          const Piece *piece = layout_piece (part.layouts[0], i);

          if (!piece->stands)
            continue;
          standing[piece->shape == PIECE_WHOLE ? 0 : 1]++;
          standing[2]
              += layout_piece_area (part.layouts[0], piece) * length_to_mm (block->thickness) / 1e9;
        }
      for (guint i = 0; i < G_N_ELEMENTS (sums); i++)
        g_assert_cmpfloat_with_epsilon (of (rest, sums[i]) + standing[i], quantity (&all, sums[i]),
                                        1e-6);
      for (guint i = 0; i < all.takeoff->lines->len; i++)
        {
          const TakeoffLine *line = g_ptr_array_index (all.takeoff->lines, i);

          g_assert_cmpfloat_with_epsilon (of (part.takeoff, line->key), line->quantity, 1e-6);
          if (up == 0)
            g_assert_cmpfloat_with_epsilon (of (rest, line->key), line->quantity, 1e-6);
          if (up == n && n > 0 && line->of_pieces)
            g_assert_cmpfloat_with_epsilon (of (rest, line->key), 0, 1e-9);
          /* Off-cuts of what stands served pieces that are left. */
          if (!g_str_equal (line->key, "blocks.waste"))
            g_assert_cmpfloat (of (rest, line->key), <=, line->quantity + 1e-6);
        }
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/takeoff/ties", test_ties);
  g_test_add_func ("/takeoff/per-area/as-published", test_per_area);
  g_test_add_func ("/takeoff/by-hand/counted", test_by_hand);
  g_test_add_func ("/takeoff/piece/mass", test_piece_mass);
  g_test_add_func ("/takeoff/any-wall/pieces-and-joints-fill-it", test_fills_the_wall);
  g_test_add_func ("/takeoff/movement-joints/filler-and-no-mortar", test_movement_joints);
  g_test_add_func ("/takeoff/movement-joints/none", test_no_movement_joint);
  g_test_add_func ("/takeoff/top/gable-wedges-and-cap", test_gable);
  g_test_add_func ("/takeoff/foot/beds-on-steps", test_stepped_footing);
  g_test_add_func ("/takeoff/any-wall/lines-and-their-pieces", test_any_wall);
  g_test_add_func ("/takeoff/walls/sum-to-the-project", test_walls_sum);
  g_test_add_func ("/takeoff/butted/as-a-shorter-wall", test_butted);
  g_test_add_func ("/takeoff/keys/there-even-when-nothing-is", test_keys);
  g_test_add_func ("/takeoff/bed/as-surveyed", test_surveyed_bed);
  g_test_add_func ("/takeoff/rest/by-hand", test_rest_by_hand);
  g_test_add_func ("/takeoff/rest/any-wall", test_rest_of_any_wall);
  g_test_add_func ("/takeoff/stop/no-answer", test_stop);
  return g_test_run ();
}
