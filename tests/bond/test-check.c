/* test-check.c - that the verifier of layouts hears every kind of fault */
#include "bond/lay.h"

#include "any-wall.h"
#include "check-layout.h"

typedef struct
{
  const char *what;
  void (*spoil) (Layout *layout);
} SpoilRow;

static Piece *
piece_at (Layout *layout, guint i)
{
  return &g_array_index (layout->pieces, Piece, i);
}

static Piece *
piece_of_shape (Layout *layout, PieceShape shape)
{
  for (guint i = 0; i < layout->pieces->len; i++)
    if (piece_at (layout, i)->shape == shape)
      return piece_at (layout, i);
  g_assert_not_reached ();
}

static void
move_piece (Layout *layout)
{
  piece_at (layout, 3)->x += 1;
}

static void
shorten_piece (Layout *layout)
{
  piece_at (layout, 3)->length -= 1;
}

/* Perpend and all: pieces stay a joint apart. */
static void
shift_perpend (Layout *layout)
{
  Piece *left = piece_of_shape (layout, PIECE_SHORT);
  left->length -= LENGTH_MM (30);
  left[1].x -= LENGTH_MM (30);
  left[1].length += LENGTH_MM (30);
}

static void
thin_piece (Layout *layout)
{
  piece_of_shape (layout, PIECE_RIPPED)->height -= 1;
}

static void
lift_piece (Layout *layout)
{
  piece_at (layout, 0)->bottom += 1;
}

static void
call_it_whole (Layout *layout)
{
  piece_of_shape (layout, PIECE_SHORT)->shape = PIECE_WHOLE;
}

static void
call_it_raked (Layout *layout)
{
  piece_of_shape (layout, PIECE_NOTCHED)->shape = PIECE_RAKED;
}

static void
count_wrong (Layout *layout)
{
  piece_at (layout, 4)->number = 7;
}

static void
part_segment (Layout *layout)
{
  const Course *course = layout_course (layout, 0);
  for (gint32 i = 2; i < course->n_pieces; i++)
    piece_at (layout, i)->segment++;
}

static void
fill_notch (Layout *layout)
{
  Piece *piece = piece_of_shape (layout, PIECE_NOTCHED);
  piece->outline = -1;
  piece->shape = PIECE_RIPPED;
}

static void
move_corner (Layout *layout)
{
  const Piece *piece = piece_of_shape (layout, PIECE_NOTCHED);
  g_array_index (layout->points, LayPoint, piece->outline + 2).z += 1;
}

static void
start_elsewhere (Layout *layout)
{
  const Piece *piece = piece_of_shape (layout, PIECE_NOTCHED);
  LayPoint *points = &g_array_index (layout->points, LayPoint, piece->outline);
  LayPoint first = points[0];
  for (gint32 i = 0; i + 1 < piece->n_outline; i++)
    points[i] = points[i + 1];
  points[piece->n_outline - 1] = first;
}

static void
lose_course (Layout *layout)
{
  g_array_set_size (layout->courses, layout->courses->len - 1);
}

static void
raise_course (Layout *layout)
{
  g_array_index (layout->courses, Course, 1).bottom += 1;
}

static void
lose_packing (Layout *layout)
{
  g_array_set_size (layout->packings, 0);
}

static void
stretch_packing (Layout *layout)
{
  g_array_index (layout->packings, Packing, 0).length += 1;
}

static void
hide_breach (Layout *layout)
{
  g_array_set_size (layout->breaches, layout->breaches->len - 1);
  layout->proof.breaches--;
}

static void
invent_breach (Layout *layout)
{
  Breach breach = { BREACH_MIN_LAP, 4, 0, 1, 2 };
  g_array_append_val (layout->breaches, breach);
  layout->proof.breaches++;
}

static void
soften_breach (Layout *layout)
{
  g_array_index (layout->breaches, Breach, 0).is++;
}

static void
miscount_cuts (Layout *layout)
{
  layout->n_cut--;
  layout->n_whole++;
}

static void
miscount_proof (Layout *layout)
{
  layout->proof.cuts++;
}

static void
bound_too_high (Layout *layout)
{
  layout->proof.cuts_at_least = layout->proof.cuts + 1;
}

static void
prove_nothing (Layout *layout)
{
  layout->proof.cuts_at_least = layout->proof.cuts - 1;
  layout->proof.proven = TRUE;
}

static void
take_other_wall (Layout *layout)
{
  layout->wall.n++;
}

static const SpoilRow spoil_rows[] = {
  { "piece moved", move_piece },
  { "piece shortened", shorten_piece },
  { "perpend moved", shift_perpend },
  { "strip made thinner", thin_piece },
  { "piece lifted", lift_piece },
  { "cut piece called whole", call_it_whole },
  { "notched piece called raked", call_it_raked },
  { "number wrong", count_wrong },
  { "segment parted", part_segment },
  { "notch filled", fill_notch },
  { "corner moved", move_corner },
  { "outline begun elsewhere", start_elsewhere },
  { "course lost", lose_course },
  { "course raised", raise_course },
  { "packing lost", lose_packing },
  { "packing longer", stretch_packing },
  { "breach hidden", hide_breach },
  { "breach invented", invent_breach },
  { "breach softened", soften_breach },
  { "cuts miscounted", miscount_cuts },
  { "proof miscounted", miscount_proof },
  { "bound above the cuts", bound_too_high },
  { "proven without being so", prove_nothing },
  { "another wall's", take_other_wall },
};

static void
add_opening (Wall *wall, int x, int width, int sill, int height)
{
  Opening opening = opening_default (OPENING_WINDOW);
  opening.id.n = 20 + wall->openings->len;
  opening.key = g_strdup_printf ("o%u", opening.id.n);
  opening.x = LENGTH_MM (x);
  opening.width = LENGTH_MM (width);
  opening.sill = LENGTH_MM (sill);
  opening.height = LENGTH_MM (height);
  g_array_append_val (wall->openings, opening);
}

/* It has pieces of every shape, a packing over the door's head, and a breach in its short pier. */
static Wall *
make_wall (void)
{
  Wall *wall = wall_new ();
  wall->id.n = 3;
  wall->length = LENGTH_MM (5130);
  wall->height = LENGTH_MM (1600);
  add_opening (wall, 100, 900, 0, 815);
  add_opening (wall, 2000, 1200, 515, 700);
  return wall;
}

static void
test_hears (void)
{
  Block block = block_default ();
  g_autoptr (Wall) wall = make_wall ();
  for (guint i = 0; i < G_N_ELEMENTS (spoil_rows); i++)
    {
      g_autoptr (Layout) layout = lay_wall (wall, &block, NULL);
      g_autofree char *before = check_layout (wall, &block, layout);
      g_assert_cmpstr (before, ==, NULL);
      spoil_rows[i].spoil (layout);
      g_autofree char *after = check_layout (wall, &block, layout);
      g_test_message ("%s: %s", spoil_rows[i].what, after ? after : "not heard");
      g_assert_cmpint (after != NULL, ==, TRUE);
    }
  block_clear (&block);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/check/hears-every-fault", test_hears);
  return g_test_run ();
}
