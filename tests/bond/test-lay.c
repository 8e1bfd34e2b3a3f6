/* test-lay.c - made-up walls, laid and checked by the verifier; laws that every answer keeps
 *
 * Without an argument all walls; with "K/N" the K-th of N shares, so that shares run side by side.
 */
#include "bond/lay.h"

#include "any-wall.h"
#include "check-layout.h"
#include "sanitized.h"

#include <stdio.h>

/* Sanitizers look at a part. */
#define SHARE_OF (SANITIZED ? 20 : 1)
#define N_CHECKED (20000 / SHARE_OF)
#define N_GOLDEN 500
#define N_LAWS (1200 / SHARE_OF)

/* FNV-1a over the hashes of the first N_GOLDEN walls' layouts. It changes with the engine, never
 * with the compiler: when walls are laid differently on purpose, put the new number here. */
#define GOLDEN G_GUINT64_CONSTANT (0xc57594189ace149d)

static guint share = 0, n_shares = 1;

static void
assert_sound (guint64 seed, const Wall *wall, const Block *block, const Layout *layout)
{
  g_autofree char *fault = check_layout (wall, block, layout);
  g_autofree char *text = fault ? any_wall_text (wall, block) : NULL;
  if (fault)
    g_test_message ("wall %" G_GUINT64_FORMAT ": %s", seed, text);
  g_assert_cmpstr (fault, ==, NULL);
}

/* Lays and checks. */
static Layout *
lay_soundly (guint64 seed, const Wall *wall, const Block *block)
{
  Layout *layout = lay_wall (wall, block, NULL);
  g_assert_cmpint (layout != NULL, ==, TRUE);
  assert_sound (seed, wall, block, layout);
  return layout;
}

static void
test_sound (void)
{
  for (guint64 seed = share; seed < N_CHECKED; seed += n_shares)
    {
      g_auto (AnyWall) any = any_wall (seed);

      layout_unref (lay_soundly (seed, any.wall, &any.block));
    }
}

static void
test_twice (void)
{
  for (guint64 seed = share; seed < N_LAWS / 4; seed += n_shares)
    {
      g_auto (AnyWall) any = any_wall (seed), same = any_wall (seed);
      g_autoptr (Layout) first = lay_wall (any.wall, &any.block, NULL);
      g_autoptr (Layout) second = lay_wall (same.wall, &same.block, NULL);
      g_assert_cmphex (layout_hash (first), ==, layout_hash (second));
    }
}

static void
test_golden (void)
{
  guint64 hash = G_GUINT64_CONSTANT (0xcbf29ce484222325);
  if (SHARE_OF > 1)
    {
      g_test_skip ("too slow with sanitizers");
      return;
    }
  for (guint64 seed = 0; seed < N_GOLDEN; seed++)
    {
      g_auto (AnyWall) any = any_wall (seed);
      g_autoptr (Layout) layout = lay_wall (any.wall, &any.block, NULL);
      hash = (hash ^ layout_hash (layout)) * G_GUINT64_CONSTANT (0x100000001b3);
    }
  g_assert_cmphex (hash, ==, GOLDEN);
}

/* The pieces of a mirrored wall, mirrored, are as good as the wall's own: what is proven of the one
 * holds for the other. */
static void
assert_bounds_agree (guint64 seed, const Layout *one, const Layout *other)
{
  if (one->proof.breaches != other->proof.breaches)
    return;
  if (one->proof.cuts_at_least > other->proof.cuts)
    g_test_message ("wall %" G_GUINT64_FORMAT, seed);
  g_assert_cmpint (one->proof.cuts_at_least, <=, other->proof.cuts);
  g_assert_cmpint (other->proof.cuts_at_least, <=, one->proof.cuts);
}

static void
test_mirror (void)
{
  int n_same = 0, n = 0;
  for (guint64 seed = share; seed < N_LAWS; seed += n_shares, n++)
    {
      g_auto (AnyWall) any = any_wall (seed);
      g_autoptr (Wall) mirror = any_wall_mirror (any.wall);
      g_autoptr (Layout) one = lay_wall (any.wall, &any.block, NULL);
      g_autoptr (Layout) other = lay_soundly (seed, mirror, &any.block);
      assert_bounds_agree (seed, one, other);
      n_same += one->proof.breaches == other->proof.breaches;
    }
  g_assert_cmpint (n - n_same, <=, MAX (1, n * 3 / 100));
}

static Layout *
lay_with_aim (const AnyWall *any, Aim aim)
{
  g_autoptr (Wall) wall = wall_copy (any->wall);
  wall->laying.given |= LAYING_AIM;
  wall->laying.aim = aim;
  return lay_wall (wall, &any->block, NULL);
}

static void
test_aims (void)
{
  for (guint64 seed = share; seed < N_LAWS / 2; seed += n_shares)
    {
      g_auto (AnyWall) any = any_wall (seed);
      g_autoptr (Layout) fewest = lay_with_aim (&any, AIM_FEWEST_CUTS);
      for (Aim aim = AIM_REGULAR; aim <= AIM_LEAST_WASTE; aim++)
        {
          g_autoptr (Layout) other = lay_with_aim (&any, aim);
          assert_bounds_agree (seed, fewest, other);
          if (fewest->proof.breaches > other->proof.breaches
              || (fewest->proof.breaches == other->proof.breaches
                  && fewest->proof.cuts > other->proof.cuts))
            g_test_message ("wall %" G_GUINT64_FORMAT ", %s", seed, aim_word (aim));
          g_assert_cmpint (fewest->proof.breaches, <=, other->proof.breaches);
          if (fewest->proof.breaches == other->proof.breaches)
            g_assert_cmpint (fewest->proof.cuts, <=, other->proof.cuts);
        }
    }
}

/* Two courses more on top (the corner's turn stays): the lower part of the higher wall is a wall of
 * the lower one's kind, so it can have no fewer cuts than what is proven of that. */
static void
test_higher (void)
{
  for (guint64 seed = share; seed < N_LAWS / 2; seed += n_shares)
    {
      g_auto (AnyWall) any = any_wall (seed);
      g_autoptr (Wall) higher = wall_copy (any.wall);
      Laying laying = laying_resolve (&any.wall->laying, &any.block);
      higher->height += 2 * (any.block.height + laying.bed);
      g_autoptr (Layout) low = lay_with_aim (&any, AIM_FEWEST_CUTS);
      g_autoptr (Layout) high = lay_soundly (seed, higher, &any.block);
      if (low->courses->len == 0 || low->proof.breaches != high->proof.breaches)
        continue;
      const Course *last = layout_course (low, low->courses->len - 1);
      if (last->top - last->bottom == any.block.height)
        g_assert_cmpint (low->proof.cuts_at_least, <=, high->proof.cuts);
    }
}

/* A unit, a wall and all its lengths twice as large: the same pieces, twice as large. */
static void
test_scale (void)
{
  static const int lengths[] = { 2500, 3333, 4100, 5055, 6007 };
  for (guint i = 0; i < G_N_ELEMENTS (lengths); i++)
    {
      Block block = block_default (), twice = block_default ();
      g_autoptr (Wall) wall = wall_new (), large = wall_new ();
      wall->length = LENGTH_MM (lengths[i]);
      large->length = 2 * wall->length;
      large->height = 2 * wall->height;
      twice.length *= 2;
      twice.height *= 2;
      Laying laying = laying_resolve (&wall->laying, &block);
      wall->laying.given = large->laying.given = 0x3f;
      wall->laying.first_bed = laying.first_bed, large->laying.first_bed = 2 * laying.first_bed;
      wall->laying.bed = laying.bed, large->laying.bed = 2 * laying.bed;
      wall->laying.head = laying.head, large->laying.head = 2 * laying.head;
      wall->laying.min_piece = laying.min_piece, large->laying.min_piece = 2 * laying.min_piece;
      wall->laying.min_lap = laying.min_lap, large->laying.min_lap = 2 * laying.min_lap;
      wall->laying.min_rip = laying.min_rip, large->laying.min_rip = 2 * laying.min_rip;
      g_autoptr (Layout) one = lay_soundly (i, wall, &block);
      g_autoptr (Layout) other = lay_soundly (i, large, &twice);
      g_assert_cmpint (one->proof.cuts, ==, other->proof.cuts);
      g_assert_cmpint (one->proof.breaches, ==, other->proof.breaches);
      g_assert_cmpint (one->proof.cuts_at_least, ==, other->proof.cuts_at_least);
      block_clear (&block);
      block_clear (&twice);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  if (argc > 1 && sscanf (argv[1], "%u/%u", &share, &n_shares) != 2)
    return 2;
  g_test_add_func ("/lay/sound", test_sound);
  g_test_add_func ("/lay/same-twice", test_twice);
  g_test_add_func ("/lay/mirror", test_mirror);
  g_test_add_func ("/lay/aims", test_aims);
  g_test_add_func ("/lay/higher", test_higher);
  if (share == 0)
    {
      g_test_add_func ("/lay/golden", test_golden);
      g_test_add_func ("/lay/scale", test_scale);
    }
  return g_test_run ();
}
