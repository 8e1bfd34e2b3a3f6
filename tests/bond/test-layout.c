/* test-layout.c - walls worked by hand, and the answers' own functions */
#include "bond/lay.h"

#include "any-house.h"
#include "check-layout.h"
#include "plain-wall.h"

/* Laid in the default block, and verified. */
static Layout *
lay (const Wall *wall)
{
  Block block = block_default ();
  g_autofree char *wall_wrong = wall_fault (wall, &block, NULL);
  g_assert_cmpstr (wall_wrong, ==, NULL);
  Layout *layout = lay_wall (wall, &block, NULL);
  g_autofree char *wrong = check_layout (wall, &block, layout);
  g_assert_cmpstr (wrong, ==, NULL);
  block_clear (&block);
  return layout;
}

/* The lengths of a course's pieces, mm, with a space between. */
static char *
course_text (const Layout *layout, guint number)
{
  GString *text = g_string_new (NULL);
  const Course *course = layout_course (layout, number - 1);
  for (gint32 i = 0; i < course->n_pieces; i++)
    {
      const Piece *piece = layout_piece (layout, course->first + i);
      g_string_append_printf (text, "%s%.10g", i > 0 ? " " : "", length_to_mm (piece->length));
    }
  return g_string_free (text, FALSE);
}

static void
assert_course (const Layout *layout, guint number, const char *lengths)
{
  g_autofree char *text = course_text (layout, number);
  g_assert_cmpstr (text, ==, lengths);
}

static int
count_shape (const Layout *layout, PieceShape shape)
{
  int n = 0;
  for (guint i = 0; i < layout->pieces->len; i++)
    n += layout_piece (layout, i)->shape == shape;
  return n;
}

static int
count_breaches (const Layout *layout, BreachKind kind)
{
  int n = 0;
  for (guint i = 0; i < layout->breaches->len; i++)
    n += g_array_index (layout->breaches, Breach, i).kind == kind;
  return n;
}

/* --- bare walls ------------------------------------------------------------------------------ */

typedef struct
{
  int length; /* mm */
  const char *first, *second;
} HalfBondRow;

/* Half bond in plan, unit 600, dry heads: computed by hand. */
static const HalfBondRow half_bond_rows[] = {
  { 2400, "600 600 600 600", "300 600 600 600 300" },
  { 3000, "600 600 600 600 600", "300 600 600 600 600 300" },
  { 3250, "600 600 600 600 600 250", "300 600 600 600 600 550" },
  { 4100, "600 600 600 600 600 600 500", "300 600 600 600 600 600 600 200" },
};

static void
test_regular (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (half_bond_rows); i++)
    {
      const HalfBondRow *row = &half_bond_rows[i];
      g_autoptr (Wall) wall = plain_wall (row->length, 800);
      wall->laying.given |= LAYING_AIM;
      wall->laying.aim = AIM_REGULAR;
      g_autoptr (Layout) layout = lay (wall);
      assert_course (layout, 1, row->first);
      assert_course (layout, 2, row->second);
      assert_course (layout, 3, row->first);
      assert_course (layout, 4, row->second);
    }
}

/* From the right the same, mirrored. */
static void
test_regular_from_right (void)
{
  g_autoptr (Wall) wall = plain_wall (3250, 400);
  wall->laying.given |= LAYING_AIM | LAYING_START;
  wall->laying.aim = AIM_REGULAR;
  wall->laying.start = SIDE_RIGHT;
  g_autoptr (Layout) layout = lay (wall);
  assert_course (layout, 1, "250 600 600 600 600 600");
  assert_course (layout, 2, "550 600 600 600 600 300");
}

typedef struct
{
  const char *why;
  double length, height, head; /* mm */
  int whole, cuts;
} CountRow;

/* By hand. A course of whole units needs none cut, and the one above at least two: with a whole
 * unit at either end its perpends would lie over those below all along. */
static const CountRow count_rows[] = {
  { "one course of whole units", 3000, 200, 0, 5, 0 },
  { "two: the upper one is closed at both ends", 3000, 400, 0, 9, 2 },
  { "seven: three of them are closed", 3000, 1400, 0, 32, 6 },
  { "whole units with joints: 5 x 600 + 4 x 2", 3008, 400, 2, 9, 2 },
  { "one cut a course: 3300 is 5 1/2 units, in turn from the left and right", 3300, 800, 0, 20, 4 },
  { "one unit", 600, 200, 0, 1, 0 },
  { "narrower than a unit: one piece each", 400, 600, 0, 0, 3 },
  { "as thin as a piece may be", 150, 400, 0, 0, 2 },
};

static void
test_counts (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (count_rows); i++)
    {
      const CountRow *row = &count_rows[i];
      g_autoptr (Wall) wall = plain_wall (row->length, row->height);
      wall->laying.head = length_from_mm (row->head);
      g_autoptr (Layout) layout = lay (wall);
      g_test_message ("%s", row->why);
      g_assert_cmpint (layout->n_whole, ==, row->whole);
      g_assert_cmpint (layout->n_cut, ==, row->cuts);
      g_assert_cmpint (layout->proof.breaches, ==, 0);
      g_assert_cmpint (layout->proof.proven, ==, TRUE);
    }
}

/* A pier as wide as three units and their joints closes with none cut: pier 740, opening 1010,
 * pier 740 (DIN 4172 lengths, n x 125 - 10 and n x 125 + 10). */
static void
test_piers_close (void)
{
  Block block = block_default ();
  g_autoptr (Wall) wall = plain_wall (2490, 240);
  block.length = LENGTH_MM (240);
  wall->laying.head = LENGTH_MM (10);
  block.height = LENGTH_MM (240);
  plain_wall_open (wall, 740, 1010, 0, 240);
  g_autoptr (Layout) layout = lay_wall (wall, &block, NULL);
  g_autofree char *wrong = check_layout (wall, &block, layout);
  g_assert_cmpstr (wrong, ==, NULL);
  assert_course (layout, 1, "240 240 240 240 240 240");
  g_assert_cmpint (layout->n_cut, ==, 0);
  block_clear (&block);
}

/* --- limits ---------------------------------------------------------------------------------- */

/* Each course of a pier narrower than the shortest piece is one breach. */
static void
test_short_pier (void)
{
  g_autoptr (Wall) wall = plain_wall (3100, 600);
  plain_wall_open (wall, 100, 1200, 0, 600);
  g_autoptr (Layout) layout = lay (wall);
  g_assert_cmpint (count_breaches (layout, BREACH_MIN_PIECE), ==, 3);
  g_assert_cmpint (layout->proof.breaches, ==, 3);
  const Breach *first = &g_array_index (layout->breaches, Breach, 0);
  g_assert_cmpint (first->course, ==, 1);
  g_assert_cmpint (first->x, ==, 0);
  g_assert_cmpint (first->is, ==, LENGTH_MM (100));
  g_assert_cmpint (first->least, ==, LENGTH_MM (150));
}

static void
test_ripped_top (void)
{
  g_autoptr (Wall) wall = plain_wall (3000, 480); /* 2 x 200, and 80 */
  g_autoptr (Layout) layout = lay (wall);
  const Course *top = layout_course (layout, 2);
  g_assert_cmpint (top->top, ==, LENGTH_MM (480));
  g_assert_cmpint (count_shape (layout, PIECE_RIPPED), ==, top->n_pieces);
  g_assert_cmpint (top->n_pieces, ==, 5);
  g_assert_cmpint (layout->proof.breaches, ==, 0);
}

/* A strip thinner than a quarter of the unit: one breach a piece, and as few pieces as can be. */
static void
test_thin_top (void)
{
  g_autoptr (Wall) wall = plain_wall (3000, 440);
  g_autoptr (Layout) layout = lay (wall);
  g_assert_cmpint (count_breaches (layout, BREACH_MIN_RIP), ==, 5);
  g_assert_cmpint (layout->proof.breaches, ==, 5);
}

/* 20 mm at the top is mortar, and is told with the last course; its bed joint with it. */
static void
test_packed_top (void)
{
  g_autoptr (Wall) wall = plain_wall (3000, 422);
  wall->laying.bed = LENGTH_MM (2);
  plain_wall_open (wall, 1000, 500, 202, 220);
  g_autoptr (Layout) layout = lay (wall);
  g_assert_cmpint (layout->courses->len, ==, 2);
  g_assert_cmpint (layout->packings->len, ==, 2);
  for (guint i = 0; i < 2; i++)
    {
      const Packing *packing = &g_array_index (layout->packings, Packing, i);
      g_assert_cmpint (packing->course, ==, 2);
      g_assert_cmpint (packing->bottom, ==, LENGTH_MM (402));
      g_assert_cmpint (packing->height, ==, LENGTH_MM (20));
      g_assert_cmpint (packing->x, ==, i == 0 ? 0 : LENGTH_MM (1500));
      g_assert_cmpint (packing->length, ==, i == 0 ? LENGTH_MM (1000) : LENGTH_MM (1500));
    }
}

/* With a least lap of more than half a unit and its joint, whole units cannot be lapped. */
static void
test_lap_beyond_half (void)
{
  g_autoptr (Wall) wall = plain_wall (1800, 400);
  wall->laying.given |= LAYING_MIN_LAP;
  wall->laying.min_lap = LENGTH_MM (301);
  g_autoptr (Layout) layout = lay (wall);
  g_assert_cmpint (layout->proof.breaches, >, 0);
  g_assert_cmpint (count_breaches (layout, BREACH_MIN_LAP), ==, layout->proof.breaches);
}

/* The end of a segment is no perpend: jambs may lie over perpends. */
static void
test_jamb_is_no_perpend (void)
{
  g_autoptr (Wall) wall = plain_wall (3000, 400);
  plain_wall_open (wall, 600, 1800, 200, 200);
  g_autoptr (Layout) layout = lay (wall);
  assert_course (layout, 1, "600 600 600 600 600");
  assert_course (layout, 2, "600 600");
  g_assert_cmpint (layout->proof.breaches, ==, 0);
  g_assert_cmpint (layout->proof.cuts, ==, 0);
}

/* --- openings -------------------------------------------------------------------------------- */

/* 100 mm of the second course are left under the sill: pieces wholly under it are ripped, those
 * that reach under it are notched, and the rest is laid as ever. */
static void
test_under_sill (void)
{
  g_autoptr (Wall) wall = plain_wall (3000, 800);
  plain_wall_open (wall, 900, 1200, 300, 400);
  g_autoptr (Layout) layout = lay (wall);
  const Course *second = layout_course (layout, 1);
  int n_notched = 0;
  for (gint32 i = 0; i < second->n_pieces; i++)
    {
      const Piece *piece = layout_piece (layout, second->first + i);
      Length right = piece->x + piece->length;
      gboolean within = piece->x >= LENGTH_MM (900) && right <= LENGTH_MM (2100);
      gboolean beside = right <= LENGTH_MM (900) || piece->x >= LENGTH_MM (2100);
      g_assert_cmpint (piece->height, ==, within ? LENGTH_MM (100) : LENGTH_MM (200));
      g_assert_cmpint (piece->shape == PIECE_NOTCHED, ==, !within && !beside);
      g_assert_cmpint (piece->segment, ==, 0);
      n_notched += piece->shape == PIECE_NOTCHED;
    }
  g_assert_cmpint (n_notched, <=, 2);
}

/* A unit notched at its upper right: six corners, the area of the unit less that of the notch. */
static void
test_notch (void)
{
  g_autoptr (Wall) wall = plain_wall (600, 200);
  plain_wall_open (wall, 400, 200, 100, 100);
  g_autoptr (Layout) layout = lay (wall);
  static const int corners[][2]
      = { { 0, 0 }, { 600, 0 }, { 600, 100 }, { 400, 100 }, { 400, 200 }, { 0, 200 } };
  g_assert_cmpint (layout->pieces->len, ==, 1);
  const Piece *piece = layout_piece (layout, 0);
  g_assert_cmpint (piece->shape, ==, PIECE_NOTCHED);
  g_assert_cmpint (piece->n_outline, ==, 6);
  for (int i = 0; i < 6; i++)
    {
      LayPoint point = g_array_index (layout->points, LayPoint, piece->outline + i);
      g_assert_cmpint (point.x, ==, LENGTH_MM (corners[i][0]));
      g_assert_cmpint (point.z, ==, LENGTH_MM (corners[i][1]));
    }
  g_assert_cmpfloat_with_epsilon (layout_piece_area (layout, piece), 100000, 1e-6);
}

/* 20 mm over a head are mortar, the pieces beside stop at the jambs; 21 mm are a strip. */
static void
test_packing_over_head (void)
{
  g_autoptr (Wall) packed = plain_wall (3000, 400), stripped = plain_wall (3000, 400);
  plain_wall_open (packed, 900, 1200, 0, 180);
  plain_wall_open (stripped, 900, 1200, 0, 179);
  g_autoptr (Layout) with_packing = lay (packed), with_strip = lay (stripped);
  g_assert_cmpint (with_packing->packings->len, ==, 1);
  const Packing *packing = &g_array_index (with_packing->packings, Packing, 0);
  g_assert_cmpint (packing->course, ==, 1);
  g_assert_cmpint (packing->x, ==, LENGTH_MM (900));
  g_assert_cmpint (packing->length, ==, LENGTH_MM (1200));
  g_assert_cmpint (packing->bottom, ==, LENGTH_MM (180));
  g_assert_cmpint (packing->height, ==, LENGTH_MM (20));
  g_assert_cmpint (count_shape (with_packing, PIECE_NOTCHED), ==, 0);
  g_assert_cmpint (with_strip->packings->len, ==, 0);
  g_assert_cmpint (count_shape (with_strip, PIECE_NOTCHED), ==, 2);
}

/* A hole within one course: the run goes on in the thicker part, a strip lies in the other. */
static void
test_hole_in_course (void)
{
  g_autoptr (Wall) wall = plain_wall (3000, 200);
  plain_wall_open (wall, 1000, 1000, 50, 40);
  g_autoptr (Layout) layout = lay (wall);
  Length strip = 0;
  for (guint i = 0; i < layout->pieces->len; i++)
    {
      const Piece *piece = layout_piece (layout, i);
      if (piece->segment == 0)
        continue;
      strip += piece->length;
      g_assert_cmpint (piece->bottom, ==, 0);
      g_assert_cmpint (piece->height, ==, LENGTH_MM (50));
    }
  g_assert_cmpint (strip, ==, LENGTH_MM (1000));
}

/* The strip under a hole within a course goes on past the jamb of another hole over the run. */
static void
test_strip_goes_on (void)
{
  g_autoptr (Wall) wall = plain_wall (3000, 400);
  wall->laying.head = LENGTH_MM (2);
  plain_wall_open (wall, 1000, 1000, 50, 40);
  plain_wall_open (wall, 1500, 200, 180, 60);
  g_autoptr (Layout) layout = lay (wall);
  Length strip = 0;
  int n = 0;
  for (gint32 i = 0; i < layout_course (layout, 0)->n_pieces; i++)
    {
      const Piece *piece = layout_piece (layout, i);
      if (piece->bottom > 0 || piece->height > LENGTH_MM (50))
        continue;
      strip += piece->length;
      n++;
    }
  /* A joint at either end, and one between two pieces. */
  g_assert_cmpint (strip + (n + 1) * LENGTH_MM (2), ==, LENGTH_MM (1000));
}

/* A strip of 30 mm between two joints of 20: mortar. */
static void
test_strip_in_joints (void)
{
  g_autoptr (Wall) wall = plain_wall (3000, 200);
  wall->laying.head = LENGTH_MM (20);
  plain_wall_open (wall, 1000, 30, 50, 40);
  g_autoptr (Layout) layout = lay (wall);
  g_assert_cmpint (layout->packings->len, ==, 1);
  const Packing *packing = &g_array_index (layout->packings, Packing, 0);
  g_assert_cmpint (packing->x, ==, LENGTH_MM (1000));
  g_assert_cmpint (packing->length, ==, LENGTH_MM (30));
  g_assert_cmpint (packing->height, ==, LENGTH_MM (50));
}

static void
test_full_width (void)
{
  g_autoptr (Wall) wall = plain_wall (3000, 1000);
  plain_wall_open (wall, 0, 3000, 400, 400);
  g_autoptr (Layout) layout = lay (wall);
  g_assert_cmpint (layout->courses->len, ==, 5);
  g_assert_cmpint (layout_course (layout, 2)->n_pieces, ==, 0);
  g_assert_cmpint (layout_course (layout, 3)->n_pieces, ==, 0);
  assert_course (layout, 5, "600 600 600 600 600");
  g_assert_cmpint (layout->n_cut, ==, 2);
}

static void
test_all_hole (void)
{
  g_autoptr (Wall) wall = plain_wall (3000, 1000);
  plain_wall_open (wall, 0, 3000, 0, 1000);
  g_autoptr (Layout) layout = lay (wall);
  g_assert_cmpint (layout->pieces->len, ==, 0);
  g_assert_cmpint (layout->proof.proven, ==, TRUE);
}

/* To the top, the wall falls into two. */
static void
test_to_top (void)
{
  g_autoptr (Wall) wall = plain_wall (4200, 800);
  plain_wall_open (wall, 1800, 600, 400, 400);
  g_autoptr (Layout) layout = lay (wall);
  for (guint c = 2; c < 4; c++)
    {
      const Course *course = layout_course (layout, c);
      const Piece *last = layout_piece (layout, course->first + course->n_pieces - 1);
      g_assert_cmpint (layout_piece (layout, course->first)->segment, ==, 0);
      g_assert_cmpint (last->segment, ==, 1);
    }
}

/* --- corners --------------------------------------------------------------------------------- */

/* The other wall, 250 thick, runs through in even courses: these begin a joint after it. */
static void
test_return (void)
{
  g_autoptr (Wall) wall = plain_wall (3000, 800);
  wall->laying.head = LENGTH_MM (2);
  wall->ends[SIDE_LEFT]
      = (End){ .given = TRUE, .has_return = TRUE, .ret = LENGTH_MM (250), .through = THROUGH_EVEN };
  g_autoptr (Layout) layout = lay (wall);
  for (guint c = 0; c < 4; c++)
    g_assert_cmpint (layout_piece (layout, layout_course (layout, c)->first)->x, ==,
                     c % 2 == 1 ? LENGTH_MM (252) : 0);
}

/* Two corners and their joints take the whole wall in odd courses; in even ones there is a piece.
 */
static void
test_no_room (void)
{
  g_autoptr (Wall) wall = plain_wall (500, 400);
  wall->laying.head = LENGTH_MM (20);
  for (int side = 0; side < 2; side++)
    wall->ends[side] = (End){
      .given = TRUE, .has_return = TRUE, .ret = LENGTH_MM (235), .through = THROUGH_ODD
    };
  g_autoptr (Layout) layout = lay (wall);
  g_assert_cmpint (layout_course (layout, 0)->n_pieces, ==, 0);
  assert_course (layout, 2, "500");
}

/* --- walls that nobody builds, and the format allows ----------------------------------------- */

typedef struct
{
  const char *what;
  double unit_length, unit_height, length, height, joint; /* mm */
} ExtremeRow;

static const ExtremeRow extreme_rows[] = {
  { "the largest units in a wall of 1 km", 10000, 10000, 1000000, 100000, 2 },
  { "the largest unit in the smallest wall", 10000, 10000, 50, 50, 2 },
  { "the smallest units: a default lap beyond their length", 20, 20, 900, 300, 2 },
  { "a joint a hair shorter than the unit", 20.003125, 20.003125, 500, 200, 20 },
  { "1 km of house wall", 600, 200, 1000000, 2500, 2 },
  { "as high as a tower", 600, 200, 8000, 100000, 2 },
  { "off every grid", 599.996875, 199.990625, 30011.003125, 3000.003125, 1.003125 },
};

static void
test_extremes (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (extreme_rows); i++)
    {
      const ExtremeRow *row = &extreme_rows[i];
      Block block = block_default ();
      g_autoptr (Wall) wall = plain_wall (row->length, row->height);
      block.length = length_from_mm (row->unit_length);
      block.height = length_from_mm (row->unit_height);
      wall->laying.bed = wall->laying.head = length_from_mm (row->joint);
      g_autofree char *fault = wall_fault (wall, &block, NULL);
      g_assert_cmpstr (fault, ==, NULL);
      g_autoptr (Layout) layout = lay_wall (wall, &block, NULL);
      g_autofree char *wrong = check_layout (wall, &block, layout);
      g_test_message ("%s: %u pieces", row->what, layout->pieces->len);
      g_assert_cmpstr (wrong, ==, NULL);
      block_clear (&block);
    }
}

/* --- the answer's own functions -------------------------------------------------------------- */

static void
test_words (void)
{
  g_assert_cmpstr (piece_shape_word (PIECE_WHOLE), ==, "whole");
  g_assert_cmpstr (piece_shape_word (PIECE_SHORT), ==, "short");
  g_assert_cmpstr (piece_shape_word (PIECE_RIPPED), ==, "ripped");
  g_assert_cmpstr (piece_shape_word (PIECE_NOTCHED), ==, "notched");
  g_assert_cmpstr (piece_shape_word (PIECE_RAKED), ==, "raked");
}

/* Pieces, joints and openings make up the face; without joints pieces and openings alone. */
static void
test_area (void)
{
  g_autoptr (Wall) wall = plain_wall (5000, 1600);
  double area = 0;
  plain_wall_open (wall, 1130, 1200, 310, 870);
  g_autoptr (Layout) layout = lay (wall);
  for (guint i = 0; i < layout->pieces->len; i++)
    area += layout_piece_area (layout, layout_piece (layout, i));
  for (guint i = 0; i < layout->packings->len; i++)
    {
      const Packing *packing = &g_array_index (layout->packings, Packing, i);
      area += length_to_mm (packing->length) * length_to_mm (packing->height);
    }
  g_assert_cmpfloat_with_epsilon (area, 5000. * 1600 - 1200. * 870, 1e-3);
}

static void
test_hash (void)
{
  g_autoptr (Wall) one = plain_wall (3000, 400), other = plain_wall (3000.1, 400);
  g_autoptr (Layout) a = lay (one), b = lay (one), c = lay (other);
  g_assert_cmphex (layout_hash (a), ==, layout_hash (b));
  g_assert_cmphex (layout_hash (a), !=, layout_hash (c));
}

static void
test_references (void)
{
  g_autoptr (Wall) wall = plain_wall (3000, 400);
  Layout *layout = lay (wall);
  Layout *same = layout_ref (layout);
  g_assert_cmpint (same == layout, ==, TRUE);
  layout_unref (layout);
  g_assert_cmpint (same->n_whole, ==, 9);
  g_assert_cmpint (same->wall.n, ==, 7);
  layout_unref (same);
}

static void
test_stopped (void)
{
  g_autoptr (Wall) wall = plain_wall (6000, 2600);
  Block block = block_default ();
  gint stop = 1;
  g_assert_cmpint (lay_wall (wall, &block, &stop) == NULL, ==, TRUE);
  stop = 0;
  g_autoptr (Layout) layout = lay_wall (wall, &block, &stop);
  g_assert_cmpint (layout != NULL, ==, TRUE);
  block_clear (&block);
}

/* The bound comes upon a layout with perpends at places that the search does not know: it is kept,
 * and no segment is laid anew as if they were elsewhere. */
static void
test_off_places (void)
{
  g_auto (AnyWall) house = any_house (770);
  g_autoptr (Layout) layout = lay_wall (house.wall, &house.block, NULL);
  g_autofree char *fault = check_layout (house.wall, &house.block, layout);

  g_assert_cmpstr (fault, ==, NULL);
  g_assert_cmpint (layout->proof.breaches, ==, 3);
  g_assert_cmpint (layout->proof.breaches_at_least, ==, 3);
  g_assert_cmpint (layout->proof.cuts, ==, 95);
  g_assert_true (layout->proof.proven);
}

/* Three strips are too thin where one was paid for: told apart by their number, the bound is met.
 */
static void
test_strips_counted (void)
{
  g_auto (AnyWall) house = any_house (244);
  g_autoptr (Layout) layout = lay_wall (house.wall, &house.block, NULL);

  g_assert_cmpint (layout->proof.breaches, ==, 10);
  g_assert_cmpint (layout->proof.cuts, ==, 48);
  g_assert_cmpint (layout->proof.cuts_at_least, ==, 48);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/layout/regular/half-bond", test_regular);
  g_test_add_func ("/layout/regular/from-right", test_regular_from_right);
  g_test_add_func ("/layout/counts-by-hand", test_counts);
  g_test_add_func ("/layout/piers-close", test_piers_close);
  g_test_add_func ("/layout/limits/short-pier", test_short_pier);
  g_test_add_func ("/layout/limits/ripped-top", test_ripped_top);
  g_test_add_func ("/layout/limits/thin-top", test_thin_top);
  g_test_add_func ("/layout/limits/packed-top", test_packed_top);
  g_test_add_func ("/layout/limits/lap-beyond-half", test_lap_beyond_half);
  g_test_add_func ("/layout/limits/jamb-is-no-perpend", test_jamb_is_no_perpend);
  g_test_add_func ("/layout/openings/under-sill", test_under_sill);
  g_test_add_func ("/layout/openings/notch", test_notch);
  g_test_add_func ("/layout/openings/packing-over-head", test_packing_over_head);
  g_test_add_func ("/layout/openings/hole-in-course", test_hole_in_course);
  g_test_add_func ("/layout/openings/strip-goes-on", test_strip_goes_on);
  g_test_add_func ("/layout/openings/strip-in-joints", test_strip_in_joints);
  g_test_add_func ("/layout/openings/full-width", test_full_width);
  g_test_add_func ("/layout/openings/all-hole", test_all_hole);
  g_test_add_func ("/layout/openings/to-top", test_to_top);
  g_test_add_func ("/layout/corner/return", test_return);
  g_test_add_func ("/layout/corner/no-room", test_no_room);
  g_test_add_func ("/layout/extremes", test_extremes);
  g_test_add_func ("/layout/words", test_words);
  g_test_add_func ("/layout/off-places", test_off_places);
  g_test_add_func ("/layout/strips-counted", test_strips_counted);
  g_test_add_func ("/layout/area", test_area);
  g_test_add_func ("/layout/hash", test_hash);
  g_test_add_func ("/layout/references", test_references);
  g_test_add_func ("/layout/stopped", test_stopped);
  return g_test_run ();
}
