/* test-symmetry.c - symmetrical bond: walls worked by hand, made-up ones, and every layout of small
 * ones */
#include "bond/lay.h"
#include "bond/network.h"
#include "bond/symmetry.h"

#include "any-house.h"
#include "check-layout.h"
#include "check-rules.h"
#include "plain-wall.h"
#include "sanitized.h"

#include <stdio.h>

/* An argument asks for more. */
static guint n_houses = SANITIZED ? 4 : 10, n_small = SANITIZED ? 30 : 120;

static gint32
unmatched (const Wall *wall, const Block *block, const Layout *layout, RuleKind kind)
{
  g_autoptr (Wall) asking = wall_copy (wall);
  asking->laying.rules[kind].keep = KEEP_PREFER;
  Check check = { asking, block, layout, laying_resolve (&asking->laying, block) };
  return check_count_broken (&check, kind);
}

static Layout *
lay_soundly (const Wall *wall, const Block *block)
{
  Layout *layout = lay_wall (wall, block, NULL);
  g_autofree char *wrong = check_layout (wall, block, layout);
  if (wrong != NULL)
    {
      g_autofree char *text = any_wall_text (wall, block);
      g_test_message ("%s: %s", wrong, text);
    }
  g_assert_cmpstr (wrong, ==, NULL);
  return layout;
}

static Layout *
lay_with (const Wall *wall, const Block *block, RuleKind kind, Keep keep)
{
  g_autoptr (Wall) asking = wall_copy (wall);
  asking->laying.rules[kind].keep = keep;
  return lay_soundly (asking, block);
}

/* --- walls worked by hand: 600 x 200 mm, dry joints, no levelling bed --- */

/* The same in lengths. */
static void
add_opening (Wall *wall, Length x, Length width, Length sill, Length height)
{
  plain_wall_open (wall, length_to_mm (x), length_to_mm (width), length_to_mm (sill),
                   length_to_mm (height));
}

static void
add_pin (Wall *wall, gint32 course, double x, double length)
{
  Pin pin = { .course = course, .x = length_from_mm (x), .length = length_from_mm (length) };
  wall_put_pin (wall, &pin);
}

static void
assert_course (const Layout *layout, guint number, const char *lengths)
{
  g_autoptr (GString) text = g_string_new (NULL);
  const Course *course = layout_course (layout, number - 1);
  for (gint32 i = 0; i < course->n_pieces; i++)
    g_string_append_printf (text, "%s%.10g", i > 0 ? " " : "",
                            length_to_mm (layout_piece (layout, course->first + i)->length));
  g_assert_cmpstr (text->str, ==, lengths);
}

/* Ten units and a half. One cut in every course leaves a half at either end in turn, and mirrors
 * nothing; with its image every perpend of such a course has its half in the middle, and two such
 * courses do not lap. So two cuts are needed in every other one: seven in five courses, not five.
 */
static void
test_half (void)
{
  g_autoptr (Wall) wall = plain_wall (6300, 1000);
  Block block = block_default ();
  g_autoptr (Layout) wish = lay_with (wall, &block, RULE_SYMMETRY_WALL, KEEP_PREFER);
  g_assert_cmpint (wish->breaches->len, ==, 0);
  g_assert_cmpint (wish->n_cut, ==, 5);
  g_autoptr (Layout) must = lay_with (wall, &block, RULE_SYMMETRY_WALL, KEEP_MUST);
  g_assert_cmpint (must->breaches->len, ==, 0);
  g_assert_cmpint (must->n_cut, ==, 7);
  assert_course (must, 1, "600 600 600 600 600 300 600 600 600 600 600");
  assert_course (must, 3, "600 600 600 600 600 300 600 600 600 600 600");
  g_assert_cmpint (unmatched (wall, &block, must, RULE_SYMMETRY_WALL), ==, 0);
  /* The bound is of all layouts: one cut in each course. */
  g_assert_cmpint (must->proof.cuts_at_least, ==, 5);
  g_assert_false (must->proof.proven);
  block_clear (&block);
}

/* Ten units: half bond is symmetrical of itself, and costs nothing as a wish. */
static void
test_whole (void)
{
  g_autoptr (Wall) wall = plain_wall (6000, 1000);
  Block block = block_default ();
  for (Keep keep = KEEP_PREFER; keep <= KEEP_MUST; keep++)
    {
      g_autoptr (Layout) layout = lay_with (wall, &block, RULE_SYMMETRY_WALL, keep);
      g_assert_cmpint (layout->breaches->len, ==, 0);
      g_assert_cmpint (layout->n_cut, ==, 4);
      g_assert_true (layout->proof.proven);
      g_assert_cmpint (unmatched (wall, &block, layout, RULE_SYMMETRY_WALL), ==, 0);
    }
  block_clear (&block);
}

/* A piece of 500 pinned to the right end, and a perpend at 250: that would have its image within
 * the piece. The piece's own perpend finds one. */
static void
test_pinned (void)
{
  g_autoptr (Wall) wall = plain_wall (6000, 200);
  Block block = block_default ();
  add_pin (wall, 1, 5500, 500);
  add_pin (wall, 1, 250, 0);
  g_autoptr (Layout) layout = lay_with (wall, &block, RULE_SYMMETRY_WALL, KEEP_MUST);
  g_assert_cmpint (layout->breaches->len, ==, 1);
  const Breach *breach = &g_array_index (layout->breaches, Breach, 0);
  g_assert_cmpint (breach->kind, ==, (BreachKind) BREACH_OF_RULE + RULE_SYMMETRY_WALL);
  g_assert_true (breach_is_of_perpend (breach->kind));
  g_assert_cmpint (breach->x, ==, LENGTH_MM (250));
  g_assert_cmpint (breach->is, ==, LENGTH_MM (250));
  g_assert_cmpint (breach->least, ==, LENGTH_MM (5750));
  block_clear (&block);
}

/* Piers of 1350 and 2250 beside a window. Two units and 150 at the left jamb or away from it, and
 * three units and 450: alone each takes one cut a course. Within 600 of the jambs they are alike.
 */
static void
test_opening (void)
{
  g_autoptr (Wall) wall = plain_wall (4800, 1400);
  Block block = block_default ();
  add_opening (wall, LENGTH_MM (1350), LENGTH_MM (1200), LENGTH_MM (400), LENGTH_MM (600));
  g_autoptr (Layout) without = lay_soundly (wall, &block);
  g_assert_cmpint (unmatched (wall, &block, without, RULE_SYMMETRY_OPENINGS), >, 0);
  g_autoptr (Layout) must = lay_with (wall, &block, RULE_SYMMETRY_OPENINGS, KEEP_MUST);
  g_assert_cmpint (must->breaches->len, ==, 0);
  for (guint c = 2; c < 5; c++)
    {
      const Course *course = layout_course (must, c);
      for (gint32 i = 0; i + 1 < course->n_pieces; i++)
        {
          const Piece *left = layout_piece (must, course->first + i), *right = left + 1;
          if (left->segment != right->segment)
            g_assert_cmpint (left->length, ==, right->length);
        }
    }
  block_clear (&block);
}

/* Of one axis alone, and none at all: what is above the courses that count, or farther away. */
static void
test_reach (void)
{
  g_autoptr (Wall) wall = plain_wall (4800, 1400);
  Block block = block_default ();
  add_opening (wall, LENGTH_MM (1350), LENGTH_MM (1200), LENGTH_MM (400), LENGTH_MM (600));
  wall->laying.rules[RULE_SYMMETRY_OPENINGS]
      = (Rule){ .keep = KEEP_MUST, .has_value = TRUE, .value = LENGTH_MM (100) };
  add_pin (wall, 3, 1200, 0); /* 150 from the jamb */
  add_pin (wall, 2, 1700, 0); /* under the sill */
  add_pin (wall, 2, 2190, 0); /* its image would be at 2200: this one is 10 off */
  add_pin (wall, 1, 1700, 0); /* too low to count */
  add_pin (wall, 1, 2190, 0);
  g_autoptr (Layout) layout = lay_soundly (wall, &block);
  gint32 found = 0;
  for (guint i = 0; i < layout->breaches->len; i++)
    {
      const Breach *breach = &g_array_index (layout->breaches, Breach, i);
      if (breach->kind != (BreachKind) BREACH_OF_RULE + RULE_SYMMETRY_OPENINGS)
        continue;
      g_assert_cmpint (breach->course, ==, 2);
      g_assert_cmpint (breach->is, ==, LENGTH_MM (10));
      found++;
    }
  g_assert_cmpint (found, ==, 2);
  block_clear (&block);
}

/* A must stopped before it begins, and in the midst of it. */
static void
test_stopped (void)
{
  g_autoptr (Wall) wall = plain_wall (6300, 1000);
  Block block = block_default ();
  gint stop = 1;
  wall->laying.rules[RULE_SYMMETRY_WALL].keep = KEEP_MUST;
  g_assert_null (lay_wall (wall, &block, &stop));
  Laying laying = laying_resolve (&wall->laying, &block);
  g_autoptr (Geometry) geometry = geometry_new (wall, &block, &laying);
  g_auto (WallBound) bound = { NULL };
  bound_init (&bound, geometry);
  Pattern *patterns = network_solve (geometry, &bound, NULL);
  g_assert_nonnull (patterns);
  g_assert_cmpint (symmetry_breaches (geometry, patterns), >, 0);
  g_assert_null (symmetry_improve (geometry, patterns, &stop));
  block_clear (&block);
}

/* --- small walls: every symmetrical layout on half cells --- */

#define UNIT 8
#define MOST_CELLS 28
#define MOST_COURSES 4

/* Faces are bits: bit i is a perpend i half cells from the left. Openings are as high as courses,
 * so that every run is one of full height. With these walls symmetry puts conditions on sums of two
 * faces beside those on differences, and such a system has an answer in halves where it has any. */
typedef struct
{
  Wall *wall;
  Block block;
  Length cell, joint;
  int n_courses, length, min_piece, min_lap;
  gboolean open[MOST_COURSES][MOST_CELLS];
} Small;

typedef struct
{
  guint32 faces;
  int price; /* breaches x 1000 and cuts */
} SmallWay;

static void
open_cells (Small *small, int from, int to, int course, int past)
{
  Length right = to == small->length ? small->wall->length : to * small->cell;
  Length left = MAX (from * small->cell - small->joint, 0);
  add_opening (small->wall, left, right - left, course * LENGTH_MM (200),
               (past - course) * LENGTH_MM (200));
  for (int c = course; c < past; c++)
    for (int i = from; i < to; i++)
      small->open[c][i] = TRUE;
}

static Small
small_new (guint64 seed)
{
  AnyRandom random = { seed * 131 + 7 };
  Small small = { .wall = plain_wall (1000, 1000), .block = block_default () };
  small.cell = LENGTH_MM (75);
  small.joint = any_percent (&random, 50) ? LENGTH_MM (any_between (&random, 1, 10)) : 0;
  small.n_courses = (int) any_between (&random, 1, MOST_COURSES);
  small.length = 2 * (int) any_between (&random, UNIT / 2, MOST_CELLS / 2);
  small.min_piece = 2 * (int) any_between (&random, 1, 2);
  small.min_lap = 2 * (int) any_between (&random, 0, 2);
  small.block.length = UNIT * small.cell - small.joint;
  small.block.height = LENGTH_MM (200);
  Laying *laying = &small.wall->laying;
  laying->given |= LAYING_MIN_PIECE | LAYING_MIN_LAP;
  laying->head = small.joint;
  laying->min_piece = small.min_piece * small.cell - small.joint;
  laying->min_lap = small.min_lap * small.cell;
  laying->rules[RULE_SYMMETRY_WALL].keep = KEEP_MUST;
  small.wall->length = small.length * small.cell - small.joint;
  small.wall->height = small.n_courses * LENGTH_MM (200);
  int course = (int) any_between (&random, 0, small.n_courses - 1);
  int past = (int) any_between (&random, course + 1, small.n_courses);
  int from = 2 * (int) any_between (&random, 1, small.length / 4),
      how = (int) any_between (&random, 0, 2);
  int to = from + 2 * (int) any_between (&random, 1, 4);
  if (how == 1 && 2 * from < small.length)
    open_cells (&small, from, small.length - from, course, past);
  else if (how == 2 && 2 * to < small.length)
    {
      open_cells (&small, from, to, course, past);
      open_cells (&small, small.length - to, small.length - from, course, past);
    }
  return small;
}

/* Breaches and cuts of one course with such faces; -1 when a piece is too long. */
static int
small_price (const Small *small, int course, guint32 faces)
{
  int price = 0, length = 0;
  for (int i = 0; i < small->length; i++)
    {
      gboolean open = small->open[course][i], last = i + 1 == small->length;
      length += !open;
      if (open || !(last || small->open[course][i + 1] || (faces >> (i + 1) & 1)))
        continue;
      if (length > UNIT)
        return -1;
      price += (length < small->min_piece) * 1000 + (length < UNIT);
      length = 0;
    }
  return price;
}

static gint
compare_ways (gconstpointer a, gconstpointer b)
{
  return ((const SmallWay *) a)->price - ((const SmallWay *) b)->price;
}

/* Every symmetrical way to lay a course, the cheapest first. */
static GArray *
small_ways (const Small *small, int course)
{
  GArray *ways = g_array_new (FALSE, FALSE, sizeof (SmallWay));
  guint32 inside = 0;
  for (int i = 1; i < small->length; i++)
    if (!small->open[course][i - 1] && !small->open[course][i])
      inside |= 1u << i;
  for (guint32 half = 0; half < 2u << (small->length / 2); half += 2)
    {
      guint32 faces = half;
      for (int i = 1; i < small->length; i++)
        if (half >> i & 1)
          faces |= 1u << (small->length - i);
      if (faces & ~inside)
        continue;
      SmallWay way = { faces, small_price (small, course, faces) };
      if (way.price >= 0)
        g_array_append_val (ways, way);
    }
  g_array_sort (ways, compare_ways);
  return ways;
}

static int
small_laps (const Small *small, guint32 p, guint32 q)
{
  int n = 0;
  for (int by = 1 - small->min_lap; by < small->min_lap; by++)
    n += __builtin_popcount (p & (by < 0 ? q >> -by : q << by));
  return n * 1000;
}

/* The least of breaches x 1000 and cuts that any symmetrical layout has. */
static int
small_best (const Small *small)
{
  g_autoptr (GArray) below = NULL; /* of each way of a course, with all that is under it */
  for (int c = 0; c < small->n_courses; c++)
    {
      GArray *ways = small_ways (small, c);
      for (guint p = 0; below != NULL && p < ways->len; p++)
        {
          SmallWay *way = &g_array_index (ways, SmallWay, p);
          int best = G_MAXINT;
          for (guint q = 0; q < below->len && g_array_index (below, SmallWay, q).price < best; q++)
            best = MIN (best, g_array_index (below, SmallWay, q).price
                                  + small_laps (small, way->faces,
                                                g_array_index (below, SmallWay, q).faces));
          way->price += best;
        }
      g_array_sort (ways, compare_ways);
      g_clear_pointer (&below, g_array_unref);
      below = ways;
    }
  return g_array_index (below, SmallWay, 0).price;
}

static void
test_every_layout (void)
{
  int walls = 0, best_had = 0, more_breaches = 0, more_cuts = 0, cuts = 0, left = 0;
  for (guint64 seed = 0; seed < n_small; seed++)
    {
      Small small = small_new (seed);
      g_autofree char *fault = wall_fault (small.wall, &small.block, NULL);
      if (fault == NULL)
        {
          g_autoptr (Layout) layout = lay_soundly (small.wall, &small.block);
          int price = layout->proof.breaches * 1000 + layout->n_cut, best = small_best (&small);
          gint32 n = unmatched (small.wall, &small.block, layout, RULE_SYMMETRY_WALL);
          /* Nothing symmetrical is better than the best of all. */
          if (n == 0)
            g_assert_cmpint (price, >=, best);
          walls++;
          best_had += price <= best;
          left += n > 0;
          more_breaches += price / 1000 > best / 1000;
          more_cuts += price > best && price / 1000 == best / 1000;
          cuts += price > best && price / 1000 == best / 1000 ? price - best : 0;
          if (price > best)
            {
              g_autofree char *text = any_wall_text (small.wall, &small.block);
              g_test_message ("small wall %" G_GUINT64_FORMAT ": %d, best %d: %s", seed, price,
                              best, text);
            }
        }
      wall_unref (small.wall);
      block_clear (&small.block);
    }
  g_test_message (
      "%d small walls: %d as good as the best, %d with more breaches, %d with more cuts "
      "(%d); %d not symmetrical",
      walls, best_had, more_breaches, more_cuts, cuts, left);
  g_assert_cmpint (walls, >=, (int) n_small * 8 / 10);
  g_assert_cmpint (more_breaches, <=, 1);
  g_assert_cmpint (more_cuts, <=, 1);
}

/* --- made-up houses --- */

/* The left half of the wall twice: an opening over the middle becomes one about it. */
static void
make_symmetrical (Wall *wall)
{
  g_autoptr (GArray) left = g_array_new (FALSE, FALSE, sizeof (Opening));
  wall->ends[SIDE_RIGHT] = wall->ends[SIDE_LEFT];
  for (guint i = 0; i < wall->openings->len; i++)
    {
      Opening opening = opening_copy (wall_opening_at (wall, i));
      if (2 * opening.x >= wall->length)
        {
          opening_clear (&opening);
          continue;
        }
      if (2 * opening_right (&opening) + 2 * LENGTH_MM (150) > wall->length)
        opening.width = wall->length - 2 * opening.x;
      g_array_append_val (left, opening);
    }
  for (guint i = 0; i < wall->openings->len; i++)
    opening_clear (&g_array_index (wall->openings, Opening, i));
  g_array_set_size (wall->openings, 0);
  for (guint i = 0; i < left->len; i++)
    {
      Opening opening = g_array_index (left, Opening, i), other = opening_copy (&opening);
      g_array_append_val (wall->openings, opening);
      other.id.n += 100;
      other.x = wall->length - opening_right (&opening);
      g_free (other.key);
      other.key = g_strdup_printf ("m%u", other.id.n);
      if (other.x == opening.x)
        opening_clear (&other);
      else
        g_array_append_val (wall->openings, other);
    }
}

typedef struct
{
  int walls, full[2], dearer[2];
  gint32 unmatched[3], breaches[3], limits[3], cuts[3], best; /* without, wish, must */
  gint64 time[3];
} Tally;

static gint32
limits_broken (const Layout *layout)
{
  gint32 n = 0;
  for (guint i = 0; i < layout->breaches->len; i++)
    n += breach_is_of_limit (g_array_index (layout->breaches, Breach, i).kind);
  return n;
}

static void
count_house (const AnyWall *any, RuleKind kind, Tally *tally, guint64 seed)
{
  gint32 plain_breaches = 0, plain_cuts = 0;
  for (Keep keep = KEEP_OFF; keep <= KEEP_MUST; keep++)
    {
      gint64 start = g_get_monotonic_time ();
      g_autoptr (Layout) layout = lay_with (any->wall, &any->block, kind, keep);
      tally->time[keep] += g_get_monotonic_time () - start;
      gint32 n = unmatched (any->wall, &any->block, layout, kind), limits = limits_broken (layout);
      tally->unmatched[keep] += n;
      tally->breaches[keep] += (gint32) layout->breaches->len;
      tally->limits[keep] += limits;
      tally->cuts[keep] += layout->n_cut;
      if (keep == KEEP_OFF)
        {
          plain_breaches = limits;
          plain_cuts = layout->n_cut;
          continue;
        }
      tally->full[keep - 1] += n == 0;
      if (n > 0 && keep == KEEP_MUST)
        {
          g_autofree char *text = any_wall_text (any->wall, &any->block);
          g_test_message ("house %" G_GUINT64_FORMAT " keeps %d: %s", seed, n, text);
        }
      tally->dearer[keep - 1]
          += limits > plain_breaches || (limits == plain_breaches && layout->n_cut > plain_cuts);
      if (keep == KEEP_PREFER)
        {
          g_assert_cmpint (limits, <=, plain_breaches);
          if (limits == plain_breaches)
            g_assert_cmpint (layout->n_cut, <=, plain_cuts);
        }
    }
  tally->walls++;
}

static void
tell (const char *what, const Tally *tally)
{
  g_test_message (
      "%s: %d walls; without / wish / must: unmatched %d %d %d, limits broken %d %d %d, "
      "breaches %d %d %d, cuts %d %d %d; all matched %d %d; dearer %d %d; ms %d %d %d",
      what, tally->walls, tally->unmatched[0], tally->unmatched[1], tally->unmatched[2],
      tally->limits[0], tally->limits[1], tally->limits[2], tally->breaches[0], tally->breaches[1],
      tally->breaches[2], tally->cuts[0], tally->cuts[1], tally->cuts[2], tally->full[0],
      tally->full[1], tally->dearer[0], tally->dearer[1], (int) (tally->time[0] / 1000),
      (int) (tally->time[1] / 1000), (int) (tally->time[2] / 1000));
}

static void
test_symmetrical_houses (void)
{
  Tally tally = { 0 };
  for (guint64 seed = 0; seed < n_houses; seed++)
    {
      g_auto (AnyWall) any = any_house (seed);
      make_symmetrical (any.wall);
      g_autofree char *fault = wall_fault (any.wall, &any.block, NULL);
      if (fault == NULL)
        count_house (&any, RULE_SYMMETRY_WALL, &tally, seed);
    }
  tell ("symmetrical houses, about the middle", &tally);
  g_assert_cmpint (tally.walls, >, 0);
  g_assert_cmpint (tally.full[1], ==, tally.walls);
  g_assert_cmpint (tally.limits[2], <=, tally.limits[0] + tally.limits[0] / 20);
  g_assert_cmpint (tally.unmatched[1], <, tally.unmatched[0]);
}

static void
test_houses (void)
{
  Tally tally[2] = { 0 };
  for (guint64 seed = 0; seed < n_houses; seed++)
    {
      g_auto (AnyWall) any = any_house (seed);
      count_house (&any, RULE_SYMMETRY_WALL, &tally[0], seed);
      count_house (&any, RULE_SYMMETRY_OPENINGS, &tally[1], seed);
    }
  tell ("houses, about the middle", &tally[0]);
  tell ("houses, about openings", &tally[1]);
  for (int i = 0; i < 2; i++)
    {
      g_assert_cmpint (tally[i].full[1], >=, tally[i].walls * 9 / 10);
      g_assert_cmpint (tally[i].unmatched[2], <=, tally[i].unmatched[0] / 50);
      g_assert_cmpint (tally[i].unmatched[1], <, tally[i].unmatched[0]);
    }
}

/* --- made-up walls: any limits, aims, corners, strips, pins --- */

static void
assert_quickly_sound (const Wall *wall, const Block *block)
{
  g_autoptr (Layout) layout = lay_wall_quickly (wall, block, NULL);
  g_autofree char *wrong = check_layout (wall, block, layout);
  g_assert_cmpstr (wrong, ==, NULL);
}

/* As a must, what was laid without it is never broken less; and whichever side it is seen from,
 * nearly as much is found. */
static void
test_sound (void)
{
  int walls = 0, other_side = 0;
  for (guint64 seed = 0; seed < 4 * n_houses; seed++)
    {
      g_auto (AnyWall) any = any_wall (seed);
      AnyRandom random = { seed };
      if (seed % 3 == 0)
        any_pins (seed, any.wall, &any.block);
      g_autoptr (Layout) plain = lay_soundly (any.wall, &any.block);
      gint32 broken = plain->proof.breaches;
      for (RuleKind kind = RULE_SYMMETRY_WALL; kind <= RULE_SYMMETRY_OPENINGS; kind++)
        {
          Rule *rule = &any.wall->laying.rules[kind];
          rule->keep = any_percent (&random, 30) ? KEEP_OFF : KEEP_MUST;
          rule->has_value = kind == RULE_SYMMETRY_OPENINGS && any_percent (&random, 50);
          rule->value = (Length) any_between (&random, 0, 2 * any.block.length);
          if (rule->keep == KEEP_MUST)
            {
              Check check
                  = { any.wall, &any.block, plain, laying_resolve (&any.wall->laying, &any.block) };
              broken += check_count_broken (&check, kind);
            }
        }
      g_autoptr (Layout) layout = lay_soundly (any.wall, &any.block);
      g_autoptr (Layout) again = lay_soundly (any.wall, &any.block);
      g_assert_cmpuint (layout_hash (layout), ==, layout_hash (again));
      g_assert_cmpint (layout->proof.breaches, <=, broken);
      g_assert_cmpint (layout->proof.breaches_at_least, <=, layout->proof.breaches);
      assert_quickly_sound (any.wall, &any.block);
      g_autoptr (Wall) mirror = any_wall_mirror (any.wall);
      g_autoptr (Layout) behind = lay_soundly (mirror, &any.block);
      other_side
          += behind->proof.breaches != layout->proof.breaches || behind->n_cut != layout->n_cut;
      walls++;
    }
  g_test_message ("%d of %d walls differ from behind", other_side, walls);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  if (argc > 1 && sscanf (argv[1], "%u/%u", &n_houses, &n_small) != 2)
    return 2;
  g_test_add_func ("/symmetry/half", test_half);
  g_test_add_func ("/symmetry/whole", test_whole);
  g_test_add_func ("/symmetry/pinned", test_pinned);
  g_test_add_func ("/symmetry/opening", test_opening);
  g_test_add_func ("/symmetry/reach", test_reach);
  g_test_add_func ("/symmetry/stopped", test_stopped);
  g_test_add_func ("/symmetry/every-layout", test_every_layout);
  g_test_add_func ("/symmetry/symmetrical-houses", test_symmetrical_houses);
  g_test_add_func ("/symmetry/houses", test_houses);
  g_test_add_func ("/symmetry/sound", test_sound);
  return g_test_run ();
}
