/* test-perpend.c - perpends that a hand takes and moves, without a display */
#include "app/tool-perpend.h"
#include "app/tool-pin.h"
#include "bond/lay.h"
#include "model/project.h"
#include "store/store.h"

#define EXAMPLE HALFBOND_SOURCE_ROOT "/data/examples/garden-studio.halfbond"
/* Of a large block, 600 x 200, and the default joint. */
#define UNIT 600
#define JOINT 2

static Block
block_of_600 (void)
{
  return block_default ();
}

static Wall *
plain_wall (int length)
{
  Wall *wall = wall_new ();

  wall->length = LENGTH_MM (length);
  wall->height = LENGTH_MM (1030);
  return wall;
}

static void
pin (Wall *wall, gint32 course, int x, int length)
{
  const Pin one = { .course = course, .x = LENGTH_MM (x), .length = LENGTH_MM (length) };

  wall_put_pin (wall, &one);
}

typedef struct
{
  Wall *wall;
  Block block;
  Layout *layout;
} Laid;

static Laid
lay (Wall *wall)
{
  Laid laid = { .wall = wall, .block = block_of_600 () };

  g_assert_cmpint (laid.block.length, ==, LENGTH_MM (UNIT));
  g_assert_cmpint (laying_resolve (&wall->laying, &laid.block).head, ==, LENGTH_MM (JOINT));
  laid.layout = lay_wall (wall, &laid.block, NULL);
  return laid;
}

static void
clear (Laid *laid)
{
  layout_unref (laid->layout);
  block_clear (&laid->block);
  wall_unref (laid->wall);
}

/* ---- finding ---- */

static void
test_is_found_near_its_middle (void)
{
  Laid laid = lay (plain_wall (6 * UNIT));
  const Piece *second = tool_piece (laid.layout, 1, 2);
  const Length middle = second->x - LENGTH_MM (JOINT) / 2, z = second->bottom + LENGTH_MM (100);
  const Length reach = LENGTH_MM (20);

  g_assert_true (tool_perpend_at (laid.layout, middle, z, reach, 1) == second);
  g_assert_true (tool_perpend_at (laid.layout, middle - reach, z, reach, 1) == second);
  g_assert_true (tool_perpend_at (laid.layout, middle + reach, z, reach, 1) == second);
  g_assert_null (tool_perpend_at (laid.layout, middle + reach + 1, z, reach, 1));
  /* The wall's ends are none. */
  g_assert_null (tool_perpend_at (laid.layout, 0, z, reach, 1));
  g_assert_null (tool_perpend_at (laid.layout, laid.wall->length, z, reach, 1));
  clear (&laid);
}

static void
test_too_dense_is_none (void)
{
  Laid laid = lay (plain_wall (6 * UNIT));
  const Piece *second = tool_piece (laid.layout, 1, 2);
  const Length middle = second->x - LENGTH_MM (JOINT) / 2, z = second->bottom + LENGTH_MM (100);
  const Length shorter = MIN (second->length, second[-1].length);

  g_assert_nonnull (tool_perpend_at (laid.layout, middle, z, LENGTH_MM (5000), shorter / 4));
  g_assert_null (tool_perpend_at (laid.layout, middle, z, LENGTH_MM (5000), shorter / 4 + 1));
  clear (&laid);
}

/* ---- stops ---- */

static gboolean
has_stop (const GArray *stops, Length x, StopKind kind)
{
  for (guint i = 0; i < stops->len; i++)
    if (g_array_index (stops, Stop, i).x == x && g_array_index (stops, Stop, i).kind == kind)
      return TRUE;
  return FALSE;
}

static void
test_stops_at_whole_units (void)
{
  Wall *wall = plain_wall (3315);
  Laid laid;
  g_autoptr (GArray) stops = NULL;

  pin (wall, 1, 1000, 0);
  laid = lay (wall);
  stops = tool_perpend_stops (laid.layout, wall, &laid.block, 1, LENGTH_MM (1000));
  g_assert_true (has_stop (stops, LENGTH_MM (1000), STOP_AS_LAID));
  /* Its own pin is no end to count from. */
  for (int k = 1; k <= 5; k++)
    {
      g_assert_true (has_stop (stops, LENGTH_MM (k * (UNIT + JOINT)), STOP_WHOLE_LEFT));
      g_assert_true (
          has_stop (stops, LENGTH_MM (3315 + JOINT - k * (UNIT + JOINT)), STOP_WHOLE_RIGHT));
    }
  for (guint i = 1; i < stops->len; i++)
    g_assert_cmpint (g_array_index (stops, Stop, i - 1).x, <, g_array_index (stops, Stop, i).x);
  clear (&laid);
}

static void
test_stops_count_from_pins (void)
{
  Wall *wall = plain_wall (3315);
  Laid laid;
  const Piece *right;
  g_autoptr (GArray) stops = NULL;

  pin (wall, 1, 0, 500);
  pin (wall, 1, 2700, 0);
  laid = lay (wall);
  right = tool_piece (laid.layout, 1, 3);
  g_assert_nonnull (tool_perpend_left (laid.layout, right));
  stops = tool_perpend_stops (laid.layout, wall, &laid.block, 1, right->x);
  g_assert_true (has_stop (stops, LENGTH_MM (500 + JOINT + UNIT + JOINT), STOP_WHOLE_LEFT)
                 || right->x == LENGTH_MM (500 + JOINT + UNIT + JOINT));
  g_assert_true (has_stop (stops, LENGTH_MM (2700 - UNIT - JOINT), STOP_WHOLE_RIGHT));
  clear (&laid);
}

/* A pinned piece right of it ends where units may end. */
static void
test_stops_count_from_own_piece (void)
{
  Wall *wall = plain_wall (3315);
  Laid laid;
  g_autoptr (GArray) stops = NULL;

  pin (wall, 1, 1000, 400);
  laid = lay (wall);
  stops = tool_perpend_stops (laid.layout, wall, &laid.block, 1, LENGTH_MM (1000));
  g_assert_true (has_stop (stops, LENGTH_MM (1400 - UNIT), STOP_WHOLE_RIGHT));
  clear (&laid);
}

static void
test_stops_at_half_bond (void)
{
  Laid laid = lay (plain_wall (6 * UNIT + 5 * JOINT));
  const Piece *below = NULL, *right = tool_piece (laid.layout, 2, 3);
  g_autoptr (GArray) stops = tool_perpend_stops (laid.layout, laid.wall, &laid.block, 2, right->x);
  guint n = 0;

  for (gint32 number = 1; (below = tool_piece (laid.layout, 1, number)); number++)
    if (below->shape == PIECE_WHOLE)
      {
        const Length middle = below->x + below->length / 2;

        for (guint i = 0; i < stops->len; i++)
          n += ABS (g_array_index (stops, Stop, i).x - LENGTH_MM (JOINT) / 2 - middle)
               < LENGTH_MM (1);
      }
  g_assert_cmpuint (n, >=, 4);
  clear (&laid);
}

static void
test_rests_within_reach (void)
{
  const Stop some[] = { { LENGTH_MM (100), STOP_GRID }, { LENGTH_MM (110), STOP_WHOLE_LEFT } };
  g_autoptr (GArray) stops = g_array_new (FALSE, FALSE, sizeof (Stop));
  const Grip grip = { .step = LENGTH_MM (5), .reach = LENGTH_MM (7) };
  const Grip free_hand = { .step = LENGTH_MM (5), .reach = 0 };
  Stop stop;

  g_array_append_vals (stops, some, 2);
  g_assert_cmpint (tool_perpend_rest (stops, LENGTH_MM (96), &grip).x, ==, LENGTH_MM (100));
  g_assert_cmpint (tool_perpend_rest (stops, LENGTH_MM (108), &grip).x, ==, LENGTH_MM (110));
  /* Of two as near the better kind. */
  stop = tool_perpend_rest (stops, LENGTH_MM (105), &grip);
  g_assert_cmpint (stop.kind, ==, STOP_WHOLE_LEFT);
  stop = tool_perpend_rest (stops, LENGTH_MM (122), &grip);
  g_assert_cmpint (stop.x, ==, LENGTH_MM (120));
  g_assert_cmpint (stop.kind, ==, STOP_NONE);
  stop = tool_perpend_rest (stops, LENGTH_MM (101), &free_hand);
  g_assert_cmpint (stop.x, ==, LENGTH_MM (100));
  g_assert_cmpint (stop.kind, ==, STOP_NONE);
  g_assert_cmpint (tool_perpend_rest (stops, LENGTH_MM (-40), &grip).x, ==, 0);
  g_assert_true (tool_perpend_next_stop (stops, LENGTH_MM (100), 1, &stop));
  g_assert_cmpint (stop.x, ==, LENGTH_MM (110));
  g_assert_false (tool_perpend_next_stop (stops, LENGTH_MM (100), -1, &stop));
}

/* ---- moving ---- */

typedef struct
{
  int pins[3][2]; /* x, length in mm, of course 1; { 0, 0 }: no more */
  int from, to, at;
  int moved[3][2];
} MoveCase;

static const MoveCase moves[] = {
  /* a new pin, a pin that is there, nothing moved */
  { { { 0 } }, 602, 700, 700, { { 700, 0 } } },
  { { { 602, 0 } }, 602, 700, 700, { { 700, 0 } } },
  { { { 602, 0 } }, 602, 602, 602, { { 602, 0 } } },
  { { { 0 } }, 602, 602, 602, { { 0 } } },
  /* a pinned piece is stretched, on either side; never to nothing */
  { { { 602, 500 } }, 602, 700, 700, { { 700, 402 } } },
  { { { 602, 500 } }, 602, 5000, 1101, { { 1101, 1 } } },
  { { { 602, 500 } }, 1104, 1204, 1204, { { 602, 600 } } },
  { { { 602, 500 } }, 1104, 0, 605, { { 602, 1 } } },
  { { { 602, 500 }, { 1104, 300 } }, 1104, 1204, 1204, { { 602, 600 }, { 1204, 200 } } },
  { { { 602, 500 }, { 1104, 0 } }, 1104, 1204, 1204, { { 602, 600 }, { 1204, 0 } } },
  /* over others: what was there holds, and is not lost */
  { { { 1300, 300 } }, 602, 1400, 1400, { { 1300, 300 }, { 1400, 0 } } },
  { { { 1300, 300 } }, 602, 1300, 1300, { { 1300, 300 } } },
  { { { 602, 0 }, { 1300, 300 } }, 602, 1300, 1300, { { 1300, 300 } } },
  { { { 602, 500 }, { 1000, 0 } }, 602, 1000, 1000, { { 1000, 102 } } },
  { { { 602, 500 }, { 1000, 300 } }, 602, 1000, 1000, { { 602, 500 }, { 1000, 300 } } },
  /* within the wall */
  { { { 0 } }, 602, -50, 0, { { 0, 0 } } },
  { { { 0 } }, 602, 9000, 3315, { { 3315, 0 } } },
};

static void
test_moves (void)
{
  Block block = block_of_600 ();

  for (guint i = 0; i < G_N_ELEMENTS (moves); i++)
    {
      const MoveCase *m = &moves[i];
      g_autoptr (Wall) wall = plain_wall (3315);
      g_autoptr (Wall) next = NULL;
      g_autofree char *fault = NULL;
      Length to = LENGTH_MM (m->to);
      guint n = 0;

      g_test_message ("row %u", i);
      for (guint k = 0; k < 3 && m->pins[k][0]; k++)
        pin (wall, 1, m->pins[k][0], m->pins[k][1]);
      next = tool_move_perpend (wall, &block, 1, LENGTH_MM (m->from), &to);
      g_assert_cmpint (to, ==, LENGTH_MM (m->at));
      for (; n < 3 && (m->moved[n][0] || (n == 0 && m->to < 0)); n++)
        {
          g_assert_cmpuint (n, <, next->pins->len);
          g_assert_cmpint (wall_pin_at (next, n)->x, ==, LENGTH_MM (m->moved[n][0]));
          g_assert_cmpint (wall_pin_at (next, n)->length, ==, LENGTH_MM (m->moved[n][1]));
        }
      g_assert_cmpuint (next->pins->len, ==, n);
      fault = wall_fault (next, &block, NULL);
      g_assert_cmpstr (fault, ==, NULL);
    }
  block_clear (&block);
}

static void
test_is_pinned_and_let_go (void)
{
  Block block = block_of_600 ();
  g_autoptr (Wall) wall = plain_wall (3315), next = NULL, last = NULL;

  pin (wall, 1, 602, 500);
  pin (wall, 1, 1104, 0);
  pin (wall, 2, 1104, 0);
  g_assert_true (tool_perpend_is_pinned (wall, &block, 1, LENGTH_MM (1104)));
  next = tool_toggle_perpend (wall, &block, 1, LENGTH_MM (1104));
  g_assert_cmpuint (next->pins->len, ==, 1);
  g_assert_cmpint (wall_pin_at (next, 0)->course, ==, 2);
  g_assert_false (tool_perpend_is_pinned (next, &block, 1, LENGTH_MM (1104)));
  last = tool_toggle_perpend (next, &block, 1, LENGTH_MM (1104));
  g_assert_nonnull (wall_pin (last, 1, LENGTH_MM (1104)));
  block_clear (&block);
}

/* ---- a typed piece ---- */

static void
test_typed_piece_is_laid (void)
{
  static const int lengths[] = { 100, 250, 400, 599, 600 };

  for (guint i = 0; i < G_N_ELEMENTS (lengths); i++)
    {
      Laid laid = lay (plain_wall (3315)), after;
      const Piece *right = tool_piece (laid.layout, 2, 3), *piece;
      const Piece *left = tool_perpend_left (laid.layout, right);
      g_autoptr (GError) error = NULL;
      Length to = 0;

      after = lay (tool_set_left_piece (laid.wall, &laid.block, laid.layout, 2, right->x,
                                        LENGTH_MM (lengths[i]), &to, &error));
      g_assert_no_error (error);
      g_assert_cmpint (to, ==, left->x + LENGTH_MM (lengths[i] + JOINT));
      piece = tool_perpend_left (after.layout, tool_perpend (after.layout, 2, to));
      g_assert_cmpint (piece->x, ==, left->x);
      g_assert_cmpint (piece->length, ==, LENGTH_MM (lengths[i]));
      g_assert_null (tool_perpend_unmet (after.layout, after.wall, &after.block, 2, to));
      clear (&after);
      clear (&laid);
    }
}

/* The pin of a cut becomes that of the piece: one says it all. */
static void
test_typed_after_a_cut_is_one_pin (void)
{
  Wall *wall = plain_wall (3315), *next;
  Laid laid;
  Length to = 0;

  pin (wall, 1, 1000, 0);
  laid = lay (wall);
  next = tool_set_left_piece (wall, &laid.block, laid.layout, 1, LENGTH_MM (1000), LENGTH_MM (200),
                              &to, NULL);
  g_assert_cmpuint (next->pins->len, ==, 1);
  g_assert_cmpint (wall_pin_at (next, 0)->length, ==, LENGTH_MM (200));
  g_assert_true (tool_perpend_is_pinned (next, &laid.block, 1, to));
  wall_unref (next);
  clear (&laid);
}

static void
test_no_piece_of_nothing (void)
{
  Laid laid = lay (plain_wall (3315));
  const Length x = tool_piece (laid.layout, 1, 2)->x;
  Length to;
  g_autoptr (GError) error = NULL;

  g_assert_null (tool_set_left_piece (laid.wall, &laid.block, laid.layout, 1, x, 0, &to, &error));
  g_assert_error (error, TOOL_PIN_ERROR, TOOL_PIN_ERROR_SHORT);
  g_clear_error (&error);
  g_assert_null (tool_set_left_piece (laid.wall, &laid.block, laid.layout, 1, x + 1,
                                      LENGTH_MM (100), &to, &error));
  g_assert_error (error, TOOL_PIN_ERROR, TOOL_PIN_ERROR_ALONE);
  clear (&laid);
}

/* ---- any hand on any wall ---- */

/* Some perpend of the layout, as the piece right of it; NULL: none was met with. */
static const Piece *
any_perpend (const Layout *layout)
{
  for (int i = 0; i < 20; i++)
    {
      const Piece *piece
          = layout_piece (layout, (guint) g_test_rand_int_range (0, (int) layout->pieces->len));

      if (tool_perpend_left (layout, piece))
        return piece;
    }
  return NULL;
}

/* Where it was moved to it is laid, or a pin says that it cannot be, or a run begins there. */
static void
assert_told (const Layout *layout, const Wall *wall, const Block *block, gint32 course, Length x)
{
  const Piece *piece;

  if (tool_perpend (layout, course, x) || tool_perpend_unmet (layout, wall, block, course, x))
    return;
  for (gint32 number = 1; (piece = tool_piece (layout, course, number)); number++)
    if (piece->x == x)
      return;
  g_assert_not_reached ();
}

static void
move_any (const Wall *wall, const Block *block)
{
  g_autoptr (Wall) now = wall_copy (wall);
  g_autoptr (Layout) layout = lay_wall (now, block, NULL);

  for (int i = 0; i < 4; i++)
    {
      const Piece *right = any_perpend (layout);
      Length to;
      g_autoptr (Wall) next = NULL;
      g_autofree char *fault = NULL;
      gint32 course;

      if (!right)
        return;
      course = right->course;
      to = right->x + LENGTH_MM (g_test_rand_int_range (-800, 800));
      next = tool_move_perpend (now, block, course, right->x, &to);
      fault = wall_fault (next, block, NULL);
      g_assert_cmpstr (fault, ==, NULL);
      layout_unref (layout);
      layout = lay_wall (next, block, NULL);
      assert_told (layout, next, block, course, to);
      wall_unref (now);
      now = g_steal_pointer (&next);
    }
}

static void
test_any_move_is_met_or_told (void)
{
  g_autoptr (Project) project = store_read (EXAMPLE, NULL);

  g_assert_nonnull (project);
  for (int round = 0; round < 40; round++)
    {
      const Wall *wall
          = project_wall_at (project, (guint) g_test_rand_int_range (0, (int) project->walls->len));

      move_any (wall, project_block (project, wall->block));
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/perpend/is-found-near-its-middle", test_is_found_near_its_middle);
  g_test_add_func ("/perpend/too-dense-is-none", test_too_dense_is_none);
  g_test_add_func ("/perpend/stops-at-whole-units", test_stops_at_whole_units);
  g_test_add_func ("/perpend/stops-count-from-pins", test_stops_count_from_pins);
  g_test_add_func ("/perpend/stops-count-from-own-piece", test_stops_count_from_own_piece);
  g_test_add_func ("/perpend/stops-at-half-bond", test_stops_at_half_bond);
  g_test_add_func ("/perpend/rests-within-reach", test_rests_within_reach);
  g_test_add_func ("/perpend/moves", test_moves);
  g_test_add_func ("/perpend/is-pinned-and-let-go", test_is_pinned_and_let_go);
  g_test_add_func ("/perpend/typed-piece-is-laid", test_typed_piece_is_laid);
  g_test_add_func ("/perpend/typed-after-a-cut-is-one-pin", test_typed_after_a_cut_is_one_pin);
  g_test_add_func ("/perpend/no-piece-of-nothing", test_no_piece_of_nothing);
  g_test_add_func ("/perpend/any-move-is-met-or-told", test_any_move_is_met_or_told);
  return g_test_run ();
}
