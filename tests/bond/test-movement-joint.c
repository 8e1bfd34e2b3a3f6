/* test-movement-joint.c - a wall with movement joints is laid as its parts apart */
#include "bond/lay.h"

#include "any-wall.h"
#include "laws.h"
#include "sanitized.h"

/* Sanitizers look at a part. */
#define SHARE_OF (SANITIZED ? 20 : 1)
#define N_WALLS (500 / SHARE_OF)

static char *
lengths_of (const Layout *layout, guint course)
{
  const Course *c = layout_course (layout, course);
  GString *text = g_string_new (NULL);

  for (gint32 i = 0; i < c->n_pieces; i++)
    {
      const Piece *piece = layout_piece (layout, (guint) (c->first + i));

      g_string_append_printf (text, "%s%g+%g", i > 0 ? " " : "", length_to_mm (piece->x),
                              length_to_mm (piece->length));
    }
  return g_string_free (text, FALSE);
}

static void
assert_lengths (const Layout *layout, guint course, const char *expected)
{
  g_autofree char *text = lengths_of (layout, course);

  g_assert_cmpstr (text, ==, expected);
}

/* Units of 600 x 200, joints of 2. Two units and their joint are 1202 long, with halves at the ends
 * of even courses 299 + 2 + 600 + 2 + 299. The joint of 10 is between two such walls: no perpend
 * goes over it, and pieces end at its faces in all courses. */
static void
test_by_hand (void)
{
  g_autoptr (Wall) wall = wall_new ();
  Block block = block_default ();

  wall->length = LENGTH_MM (2414);
  wall->height = LENGTH_MM (1028);
  wall_add_movement_joint (wall, LENGTH_MM (1202), LENGTH_MM (10));
  g_autoptr (Layout) layout = lay_wall (wall, &block, NULL);

  for (guint c = 0; c < 5; c += 2)
    assert_lengths (layout, c, "0+600 602+600 1212+600 1814+600");
  for (guint c = 1; c < 5; c += 2)
    assert_lengths (layout, c, "0+299 301+600 903+299 1212+299 1513+600 2115+299");
  g_assert_cmpint (layout->proof.breaches, ==, 0);
  g_assert_cmpint (layout->proof.cuts, ==, 8);
  g_assert_true (layout->proof.proven);
  block_clear (&block);
}

/* A regular bond starts anew behind the joint, from either end. */
static void
test_regular (void)
{
  for (int side = SIDE_LEFT; side <= SIDE_RIGHT; side++)
    {
      g_autoptr (Wall) wall = wall_new ();
      Block block = block_default ();

      wall->length = LENGTH_MM (1300 + 10 + 1300);
      wall->height = LENGTH_MM (626);
      wall->laying.given |= LAYING_AIM | LAYING_START;
      wall->laying.aim = AIM_REGULAR;
      wall->laying.start = (Side) side;
      wall_add_movement_joint (wall, LENGTH_MM (1300), LENGTH_MM (10));
      g_autoptr (Wall) part = wall_copy (wall);
      g_array_set_size (part->movement_joints, 0);
      part->length = LENGTH_MM (1300);
      g_autoptr (Layout) whole = lay_wall (wall, &block, NULL);
      g_autoptr (Layout) alone = lay_wall (part, &block, NULL);

      for (guint c = 0; c < 3; c++)
        {
          const Course *course = layout_course (whole, c), *half = layout_course (alone, c);

          g_assert_cmpint (course->n_pieces, ==, 2 * half->n_pieces);
          for (gint32 i = 0; i < course->n_pieces; i++)
            {
              const Piece *piece = layout_piece (whole, (guint) (course->first + i));
              const Piece *like = layout_piece (alone, (guint) (half->first + i % half->n_pieces));

              g_assert_cmpint (piece->length, ==, like->length);
              g_assert_cmpint (piece->x, ==, like->x + (i < half->n_pieces ? 0 : LENGTH_MM (1310)));
            }
        }
      block_clear (&block);
    }
}

/* One to three of several widths, anywhere, in openings, too. */
static void
any_joints (guint64 seed, Wall *wall)
{
  AnyRandom random = { seed * 0x9e3779b97f4a7c15u + 5 };
  Length from = wall->ends[SIDE_LEFT].ret, to = wall->length - wall->ends[SIDE_RIGHT].ret;

  for (gint64 n = any_between (&random, 1, 3); n > 0; n--)
    {
      Length width = (Length) any_between (&random, MOVEMENT_JOINT_LEAST, MOVEMENT_JOINT_MOST);
      Length most = to - width - 1;

      if (from + 1 > most)
        return;
      wall_add_movement_joint (wall, (Length) any_between (&random, from + 1, most), width);
      from = movement_joint_right (wall_movement_joint_at (wall, wall->movement_joints->len - 1));
    }
}

static void
test_any (void)
{
  for (guint64 seed = 0; seed < N_WALLS; seed++)
    {
      g_auto (AnyWall) any = any_wall (seed);
      any_joints (seed, any.wall);
      law_laid_right (&any, seed);
    }
}

/* No bound of the wall contradicts what is laid of it from behind. */
static void
test_mirror (void)
{
  for (guint64 seed = 0; seed < N_WALLS; seed++)
    {
      g_auto (AnyWall) any = any_wall (seed);
      any_joints (seed, any.wall);
      law_same_from_behind (&any);
    }
}

/* What stands on one side of a place, as a wall of its own. */
static Wall *
part_of (const Wall *wall, Length from, Length to)
{
  Wall *part = wall_copy (wall);

  g_array_set_size (part->movement_joints, 0);
  part->length = to - from;
  if (from > 0)
    part->ends[SIDE_LEFT] = (End){ 0 };
  if (to < wall->length)
    part->ends[SIDE_RIGHT] = (End){ 0 };
  for (guint i = part->openings->len; i-- > 0;)
    if (wall_opening_at (part, i)->x < from || opening_right (wall_opening_at (part, i)) > to)
      g_array_remove_index (part->openings, i);
  for (guint i = 0; i < part->openings->len; i++)
    g_array_index (part->openings, Opening, i).x -= from;
  return part;
}

static gboolean
is_clear (const Wall *wall, Length from, Length to)
{
  if (from < wall->ends[SIDE_LEFT].ret + LENGTH_MM (600)
      || to > wall->length - wall->ends[SIDE_RIGHT].ret - LENGTH_MM (600))
    return FALSE;
  for (guint i = 0; i < wall->openings->len; i++)
    if (wall_opening_at (wall, i)->x <= to && opening_right (wall_opening_at (wall, i)) >= from)
      return FALSE;
  return TRUE;
}

/* Openings and all: breaches and cuts are those of the two parts, wherever all three are proven,
 * and where they are not, none contradicts the others' bounds. */
static void
test_parted (void)
{
  int looked_at = 0, proven = 0, with_openings = 0;

  for (guint64 seed = 0; seed < N_WALLS; seed++)
    {
      g_auto (AnyWall) any = any_wall (seed);
      const Length at = any.wall->length / 5 * 2, width = MOVEMENT_JOINT_WIDTH;

      any.wall->laying.given &= ~(guint) LAYING_AIM;
      if (!is_clear (any.wall, at, at + width))
        continue;
      g_autoptr (Wall) left = part_of (any.wall, 0, at);
      g_autoptr (Wall) right = part_of (any.wall, at + width, any.wall->length);
      wall_add_movement_joint (any.wall, at, width);
      g_autoptr (Layout) whole = lay_wall (any.wall, &any.block, NULL);
      g_autoptr (Layout) one = lay_wall (left, &any.block, NULL);
      g_autoptr (Layout) other = lay_wall (right, &any.block, NULL);
      const Proof *w = &whole->proof, *p = &one->proof, *q = &other->proof;

      looked_at++;
      with_openings += any.wall->openings->len > 0;
      g_assert_cmpint (w->breaches_at_least, <=, p->breaches + q->breaches);
      g_assert_cmpint (p->breaches_at_least + q->breaches_at_least, <=, w->breaches);
      if (w->breaches + p->breaches + q->breaches > 0 || !w->proven || !p->proven || !q->proven)
        continue;
      g_assert_cmpint (w->cuts, ==, p->cuts + q->cuts);
      proven++;
    }
  g_test_message ("%d walls, %d with openings, %d proven", looked_at, with_openings, proven);
  g_assert_cmpint (proven, >, N_WALLS / 5);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/movement-joint/by-hand", test_by_hand);
  g_test_add_func ("/movement-joint/regular", test_regular);
  g_test_add_func ("/movement-joint/any", test_any);
  g_test_add_func ("/movement-joint/mirror", test_mirror);
  g_test_add_func ("/movement-joint/parted", test_parted);
  return g_test_run ();
}
