/* test-rule.c - the optional rules: walls worked by hand, and made-up ones against the checker */
#include "bond/lay.h"

#include "any-wall.h"
#include "check-layout.h"
#include "check-rules.h"
#include "plain-wall.h"

static void
ask (Wall *wall, RuleKind kind, Keep keep, double mm)
{
  wall->laying.rules[kind].keep = keep;
  wall->laying.rules[kind].has_value = mm > 0;
  wall->laying.rules[kind].value = length_from_mm (mm);
}

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

/* How often a layout does not keep a rule that the wall asks for. */
static gint32
broken (const Wall *wall, const Block *block, const Layout *layout, RuleKind kind)
{
  Check check = { wall, block, layout, laying_resolve (&wall->laying, block) };
  return check_count_broken (&check, kind);
}

/* How often it would be broken with such a number, were it asked for. */
static gint32
broken_if (const Wall *wall, const Layout *layout, RuleKind kind, double mm)
{
  Block block = block_default ();
  g_autoptr (Wall) asking = wall_copy (wall);
  ask (asking, kind, KEEP_PREFER, mm);
  gint32 n = broken (asking, &block, layout, kind);
  block_clear (&block);
  return n;
}

/* --- bearing --- */

/* Two piers of 750 beside a window whose head is at the top of course 4. One cut each: 600 and 150,
 * so a bearing of more than 150 wants the 600 at the jambs in course 4, and the perpends of course
 * 3 lie at 600 and 2100. Course 2, of four units and 300, has one at 600, or, with the 300 first,
 * one at 2100: it takes one cut more, and no more than that. */
static void
test_bearing (void)
{
  for (int mm = 150; mm <= 600; mm += 150)
    {
      g_autoptr (Wall) wall = plain_wall (2700, 1200);
      plain_wall_open (wall, 750, 1200, 400, 400);
      g_autoptr (Layout) without = lay (wall);
      ask (wall, RULE_BEARING, KEEP_MUST, mm);
      g_autoptr (Layout) with = lay (wall);
      g_assert_cmpint (with->breaches->len, ==, 0);
      g_assert_cmpint (broken_if (wall, with, RULE_BEARING, mm), ==, 0);
      const Course *course = layout_course (with, 3);
      const Piece *beside = layout_piece (with, course->first + 1);
      g_assert_cmpint (beside->x + beside->length, ==, LENGTH_MM (750));
      g_assert_cmpint (beside->length, >=, LENGTH_MM (mm));
      g_assert_cmpint (with->proof.cuts, <=, without->proof.cuts + (mm > 150));
    }
}

/* More than a unit cannot be had: a breach at each side, told with what there is. */
static void
test_bearing_too_long (void)
{
  g_autoptr (Wall) wall = plain_wall (3600, 1200);
  plain_wall_open (wall, 1200, 1200, 400, 400);
  ask (wall, RULE_BEARING, KEEP_MUST, 700);
  g_autoptr (Layout) layout = lay (wall);
  g_assert_cmpint (layout->breaches->len, ==, 2);
  for (guint i = 0; i < 2; i++)
    {
      const Breach *breach = &g_array_index (layout->breaches, Breach, i);
      g_assert_cmpint (breach->kind, ==, (BreachKind) BREACH_OF_RULE + RULE_BEARING);
      g_assert_cmpint (breach->course, ==, 4);
      g_assert_cmpint (breach->is, ==, LENGTH_MM (600));
      g_assert_cmpint (breach->least, ==, LENGTH_MM (700));
    }
}

/* --- in line with a jamb --- */

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

/* Piers of two units beside a window of two, half bond, five courses. The courses under the sill
 * and over the head may be whole units, with perpends at the jambs, or begin with a half: eight
 * cuts either way, and only the second keeps the rule. */
static void
test_jamb_line (void)
{
  for (Keep keep = KEEP_PREFER; keep <= KEEP_MUST; keep++)
    {
      g_autoptr (Wall) wall = plain_wall (3600, 1000);
      plain_wall_open (wall, 1200, 1200, 200, 600);
      ask (wall, RULE_JAMB_LINE, keep, 0);
      g_autoptr (Layout) layout = lay (wall);
      assert_course (layout, 1, "300 600 600 600 600 600 300");
      assert_course (layout, 2, "600 600 600 600");
      assert_course (layout, 5, "300 600 600 600 600 600 300");
      g_assert_cmpint (layout->breaches->len, ==, 0);
      g_assert_cmpint (layout->proof.cuts, ==, 8);
      g_assert_true (layout->proof.proven);
      g_assert_cmpint (broken_if (wall, layout, RULE_JAMB_LINE, 0), ==, 0);
    }
}

/* --- cut pieces away from jambs --- */

/* Piers of 1350: two units and 150, at either end in turn, one cut each. As a must no 150 may stand
 * at the jamb, and every second course there takes a cut more. */
static void
test_jamb_cuts (void)
{
  g_autoptr (Wall) wall = plain_wall (3900, 1200);
  plain_wall_open (wall, 1350, 1200, 0, 1200);
  g_autoptr (Layout) plain = lay (wall);
  g_assert_cmpint (plain->proof.cuts, ==, 12);
  ask (wall, RULE_JAMB_CUTS, KEEP_PREFER, 0);
  g_autoptr (Layout) preferred = lay (wall);
  g_assert_cmpint (preferred->proof.cuts, ==, 12);
  g_assert_cmpint (broken_if (wall, preferred, RULE_JAMB_CUTS, 0), ==, 6);
  ask (wall, RULE_JAMB_CUTS, KEEP_MUST, 0);
  g_autoptr (Layout) must = lay (wall);
  g_assert_cmpint (must->breaches->len, ==, 0);
  g_assert_cmpint (must->proof.cuts, ==, 18);
}

/* --- whole units at the ends --- */

/* 3300 is five and a half units: in half bond each course has its half at one end, in turn, and no
 * two courses can both begin with a whole one. */
static void
test_whole_ends (void)
{
  g_autoptr (Wall) wall = plain_wall (3300, 1200);
  ask (wall, RULE_WHOLE_ENDS, KEEP_MUST, 0);
  g_autoptr (Layout) must = lay (wall);
  g_assert_cmpint (must->breaches->len, ==, 0);
  g_assert_cmpint (must->proof.cuts, ==, 6);
  ask (wall, RULE_WHOLE_ENDS, KEEP_PREFER, 0);
  g_autoptr (Layout) preferred = lay (wall);
  g_assert_cmpint (preferred->proof.cuts, ==, 6);
  g_assert_cmpint (broken_if (wall, preferred, RULE_WHOLE_ENDS, 0), ==, 6);
}

/* --- laps --- */

/* A part of 600 and no joint, from one course to the next. */
static void
test_lap (void)
{
  static const char *const first[] = { NULL, NULL, "300", "200", "150" };
  for (gint32 part = 2; part <= 4; part++)
    {
      g_autoptr (Wall) wall = plain_wall (6000, 1200);
      wall->laying.given |= LAYING_AIM;
      wall->laying.aim = AIM_REGULAR;
      wall->laying.rules[RULE_LAP] = (Rule){ KEEP_PREFER, TRUE, part, { 0 } };
      g_autoptr (Layout) layout = lay (wall);
      g_autofree char *second
          = g_strdup_printf ("%s 600 600 600 600 600 600 600 600 600 %g", first[part],
                             600 - g_ascii_strtod (first[part], NULL));
      assert_course (layout, 1, "600 600 600 600 600 600 600 600 600 600");
      assert_course (layout, 2, second);
    }
}

/* --- all of them --- */

/* Asks for one rule of a made-up wall, or for several; a number in reach of the unit. */
static void
ask_any (AnyRandom *random, Wall *wall, const Block *block)
{
  for (RuleKind kind = 0; kind < N_RULES; kind++)
    {
      Rule *rule = &wall->laying.rules[kind];
      const RuleRow *row = rule_row (kind);
      if (any_percent (random, 40))
        continue;
      rule->keep = row->prefer_only || any_percent (random, 40) ? KEEP_PREFER : KEEP_MUST;
      rule->has_value = row->value != RULE_NO_VALUE && any_percent (random, 60);
      rule->value = row->value == RULE_LENGTH
                        ? (gint32) any_between (random, row->least, block->length)
                        : (gint32) any_between (random, row->least, MIN (row->most, 8));
    }
}

/* --- few lengths --- */

/* The piers of 750 again: 600 and 150, and 300 in the courses that run through. One length alone is
 * 150: two of them beside four units, at a cut more in each of the four courses. That is no more
 * than a must may cost; as a wish it costs too much. */
static void
test_lengths (void)
{
  g_autoptr (Wall) wall = plain_wall (2700, 1200);
  plain_wall_open (wall, 750, 1200, 400, 400);
  ask (wall, RULE_LENGTHS, KEEP_MUST, 0);
  wall->laying.rules[RULE_LENGTHS].has_value = TRUE;
  wall->laying.rules[RULE_LENGTHS].value = 1;
  g_autoptr (Layout) must = lay (wall);
  g_assert_cmpint (must->breaches->len, ==, 0);
  g_assert_cmpint (must->proof.cuts, ==, 12);
  for (guint i = 0; i < must->pieces->len; i++)
    if (layout_piece (must, i)->shape != PIECE_WHOLE)
      g_assert_cmpint (layout_piece (must, i)->length, ==, LENGTH_MM (150));
  wall->laying.rules[RULE_LENGTHS].keep = KEEP_PREFER;
  g_autoptr (Layout) preferred = lay (wall);
  g_assert_cmpint (preferred->proof.cuts, ==, 8);
}

/* A wish costs no breach and no cut, and is kept more often than by chance. */
static void
test_preferred (void)
{
  for (RuleKind kind = 0; kind < N_RULES; kind++)
    {
      gint32 before = 0, after = 0, dearer = 0;
      for (guint64 seed = 1000; seed < 1020; seed++)
        {
          g_auto (AnyWall) any = any_wall (seed);
          any.wall->laying.given &= ~(guint) LAYING_AIM;
          any.wall->laying.rules[kind].keep = KEEP_PREFER;
          g_autoptr (Wall) silent = wall_copy (any.wall);
          silent->laying.rules[kind].keep = KEEP_OFF;
          g_autoptr (Layout) plain = lay_wall (silent, &any.block, NULL);
          g_autoptr (Layout) layout = lay_wall (any.wall, &any.block, NULL);
          before += broken (any.wall, &any.block, plain, kind);
          after += broken (any.wall, &any.block, layout, kind);
          dearer += layout->proof.breaches > plain->proof.breaches
                    || (layout->proof.breaches == plain->proof.breaches
                        && layout->proof.cuts > plain->proof.cuts);
        }
      g_test_message ("%s: broken %d times, %d where it is preferred; %d of 20 walls dearer",
                      rule_row (kind)->word, before, after, dearer);
      if (kind != RULE_LAP) /* it forbids nothing */
        g_assert_cmpint (after, <, before);
      g_assert_cmpint (dearer, <=, 1);
    }
}

static void
test_sound (void)
{
  for (guint64 seed = 0; seed < 60; seed++)
    {
      g_auto (AnyWall) any = any_wall (seed);
      AnyRandom random = { seed };
      g_autoptr (Layout) plain = lay_wall (any.wall, &any.block, NULL);
      ask_any (&random, any.wall, &any.block);
      g_autoptr (Layout) layout = lay_wall (any.wall, &any.block, NULL);
      g_autofree char *wrong = check_layout (any.wall, &any.block, layout);
      if (wrong != NULL)
        {
          g_autofree char *text = any_wall_text (any.wall, &any.block);
          g_test_message ("wall %" G_GUINT64_FORMAT ": %s: %s", seed, text, wrong);
        }
      g_assert_cmpstr (wrong, ==, NULL);
      g_autoptr (Layout) again = lay_wall (any.wall, &any.block, NULL);
      g_assert_cmpuint (layout_hash (layout), ==, layout_hash (again));
      /* What rules forbid can lower no bound of the limits alone. */
      if (plain->proof.breaches == 0 && layout->proof.breaches == 0)
        g_assert_cmpint (plain->proof.cuts_at_least, <=, layout->proof.cuts);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/rule/bearing", test_bearing);
  g_test_add_func ("/rule/bearing-too-long", test_bearing_too_long);
  g_test_add_func ("/rule/jamb-line", test_jamb_line);
  g_test_add_func ("/rule/jamb-cuts", test_jamb_cuts);
  g_test_add_func ("/rule/whole-ends", test_whole_ends);
  g_test_add_func ("/rule/lap", test_lap);
  g_test_add_func ("/rule/lengths", test_lengths);
  g_test_add_func ("/rule/preferred", test_preferred);
  g_test_add_func ("/rule/sound", test_sound);
  return g_test_run ();
}
