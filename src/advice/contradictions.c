/* contradictions.c - limits and rules that no layout can keep together, each in a sentence
 *
 * The wall is laid all the same, with the fewest breaches; what contradicts is said once, beside
 * the breaches that come of it. */
#include <glib/gi18n-lib.h>

#include "advice/judging.h"

/* The wall with one field of its laying as the default has it. */
static Mend
mend_limit (const Judging *judging, guint field, const char *text)
{
  g_autoptr (Wall) wall = wall_copy (judging->wall);

  wall->laying.given &= ~field;
  return mend_if_possible (judging, edit_set_wall (wall), g_strdup (text));
}

static Mend
mend_rule (const Judging *judging, RuleKind kind, Keep keep, Length value, char *text)
{
  g_autoptr (Wall) wall = wall_copy (judging->wall);
  Rule *rule = &wall->laying.rules[kind];

  rule->keep = keep;
  rule->has_value = TRUE;
  rule->value = value;
  return mend_if_possible (judging, edit_set_wall (wall), text);
}

static void
judge_piece (Judging *judging)
{
  char is[LENGTH_TEXT_SIZE], unit[LENGTH_TEXT_SIZE];

  if (judging->laying.min_piece <= judging->block->length)
    return;
  judging_add (
      judging, "piece-too-long", SEVERITY_WARNING,
      g_strdup_printf (
          _ ("A shortest piece of %s mm is longer than the block, %s mm: no piece can keep to it."),
          length_text (judging->laying.min_piece, is), length_text (judging->block->length, unit)),
      mend_limit (judging, LAYING_MIN_PIECE, _ ("Allow pieces of a quarter of the block")));
}

/* Only where it was said, and something is raked. */
static void
judge_raked (Judging *judging)
{
  char is[LENGTH_TEXT_SIZE], unit[LENGTH_TEXT_SIZE];

  if (!(judging->laying.given & LAYING_MIN_RAKED) || judging->wall->tops->len == 0
      || judging->laying.min_raked <= judging->block->length)
    return;
  judging_add (judging, "raked-too-long", SEVERITY_WARNING,
               g_strdup_printf (_ ("A shortest raked piece of %s mm is longer than the block, %s "
                                   "mm: no piece can keep to it."),
                                length_text (judging->laying.min_raked, is),
                                length_text (judging->block->length, unit)),
               mend_limit (judging, LAYING_MIN_RAKED, _ ("Ask no more of raked pieces")));
}

static void
judge_strip (Judging *judging)
{
  char is[LENGTH_TEXT_SIZE], unit[LENGTH_TEXT_SIZE];

  if (judging->laying.min_rip <= judging->block->height)
    return;
  judging_add (
      judging, "strip-too-high", SEVERITY_WARNING,
      g_strdup_printf (
          _ ("A thinnest strip of %s mm is higher than the block, %s mm: no piece can keep to it."),
          length_text (judging->laying.min_rip, is), length_text (judging->block->height, unit)),
      mend_limit (judging, LAYING_MIN_RIP, _ ("Allow strips of a quarter of the block")));
}

static void
judge_bearing (Judging *judging)
{
  const Rule *rule = &judging->laying.rules[RULE_BEARING];
  char is[LENGTH_TEXT_SIZE], unit[LENGTH_TEXT_SIZE];

  if (rule->keep == KEEP_OFF || rule->value <= judging->block->length)
    return;
  length_text (rule->value, is);
  length_text (judging->block->length, unit);
  judging_add (
      judging, "bearing-too-long", SEVERITY_WARNING,
      g_strdup_printf (_ ("A lintel's bearing of %s mm is longer than the block, %s mm: no "
                          "block reaches past it. What a lintel needs, the local code and "
                          "a licensed engineer decide."),
                       is, unit),
      mend_rule (judging, RULE_BEARING, rule->keep, judging->block->length,
                 g_strdup_printf (_ ("Ask for %s mm, a whole block"), unit)));
}

/* The piece over a jamb reaches that far to both sides. */
static void
judge_jamb_line (Judging *judging)
{
  const Rule *rule = &judging->laying.rules[RULE_JAMB_LINE];
  Length most = (judging->block->length + judging->laying.head) / 2;
  char is[LENGTH_TEXT_SIZE], half[LENGTH_TEXT_SIZE];

  if (rule->keep == KEEP_OFF || rule->value <= most)
    return;
  length_text (rule->value, is);
  length_text (most, half);
  judging_add (
      judging, "jamb-line-too-far", SEVERITY_WARNING,
      g_strdup_printf (_ ("Perpends cannot keep %s mm from the lines of jambs: a block over "
                          "a jamb reaches %s mm to both sides at most."),
                       is, half),
      mend_rule (judging, RULE_JAMB_LINE, rule->keep, most,
                 g_strdup_printf (_ ("Ask for %s mm"), half)));
}

static void
judge_wanted_lap (Judging *judging)
{
  const Rule *rule = &judging->laying.rules[RULE_LAP];
  Length pitch = judging->block->length + judging->laying.head;
  char is[LENGTH_TEXT_SIZE], least[LENGTH_TEXT_SIZE];

  if (rule->keep == KEEP_OFF || pitch / rule->value >= judging->laying.min_lap)
    return;
  judging_add (judging, "wanted-lap-short", SEVERITY_WARNING,
               g_strdup_printf (_ ("The wanted lap, %s mm, is less than the least lap, %s mm."),
                                length_text (pitch / rule->value, is),
                                length_text (judging->laying.min_lap, least)),
               mend_rule (judging, RULE_LAP, KEEP_OFF, 2, g_strdup (_ ("Want half bond"))));
}

/* What is seen of it in a bond: as much as the rule lets by. */
#define SAME_PLACE LENGTH_MM (1)

static gboolean
is_near (Length a, Length b)
{
  return ABS (a - b) <= SAME_PLACE;
}

static gboolean
ends_differ (const Wall *wall)
{
  const End *left = &wall->ends[SIDE_LEFT], *right = &wall->ends[SIDE_RIGHT];

  return !is_near (left->ret, right->ret) || (left->ret > 0 && left->through != right->through);
}

/* Whether some wall that meets this one has none like it across the middle. */
static gboolean
tees_differ (const Wall *wall)
{
  for (guint i = 0; i < wall->tees->len; i++)
    {
      const Tee *tee = wall_tee_at (wall, i);
      gboolean found = FALSE;

      for (guint k = 0; k < wall->tees->len && !found; k++)
        {
          const Tee *other = wall_tee_at (wall, k);

          found = is_near (other->x, wall->length - tee_right (tee))
                  && is_near (other->ret, tee->ret) && other->through == tee->through;
        }
      if (!found)
        return TRUE;
    }
  return FALSE;
}

static gboolean
movement_joints_differ (const Wall *wall)
{
  for (guint i = 0; i < wall->movement_joints->len; i++)
    {
      const MovementJoint *joint = wall_movement_joint_at (wall, i);
      gboolean found = FALSE;

      for (guint k = 0; k < wall->movement_joints->len && !found; k++)
        {
          const MovementJoint *other = wall_movement_joint_at (wall, k);

          found = is_near (other->x, wall->length - movement_joint_right (joint))
                  && is_near (other->width, joint->width);
        }
      if (!found)
        return TRUE;
    }
  return FALSE;
}

/* The first opening that has none across the middle, or NULL. */
static const Opening *
opening_alone (const Wall *wall)
{
  for (guint i = 0; i < wall->openings->len; i++)
    {
      const Opening *opening = wall_opening_at (wall, i);
      gboolean found = FALSE;

      for (guint k = 0; k < wall->openings->len && !found; k++)
        {
          const Opening *other = wall_opening_at (wall, k);

          found = is_near (other->x, wall->length - opening_right (opening))
                  && is_near (opening_right (other), wall->length - opening->x)
                  && is_near (other->sill, opening->sill)
                  && is_near (opening_head (other), opening_head (opening));
        }
      if (!found)
        return opening;
    }
  return NULL;
}

/* A symmetrical bond is asked of a wall that is not symmetrical itself. */
static void
judge_symmetry (Judging *judging)
{
  const Opening *alone = opening_alone (judging->wall);

  if (judging->laying.rules[RULE_SYMMETRY_WALL].keep == KEEP_OFF)
    return;
  if (ends_differ (judging->wall) || tees_differ (judging->wall))
    judging_add (
        judging, "symmetry-off", SEVERITY_NOTE,
        g_strdup (
            _ ("The bond is to be symmetrical, but other walls meet this one otherwise on one "
               "side of its middle than on the other: perpends mirror each other only where "
               "there is wall on both.")),
        MEND_NONE);
  else if (movement_joints_differ (judging->wall))
    judging_add (
        judging, "symmetry-off", SEVERITY_NOTE,
        g_strdup (_ ("The bond is to be symmetrical, but a movement joint has none like it across "
                     "the wall's middle: perpends mirror each other only where there is wall on "
                     "both sides.")),
        MEND_NONE);
  else if (alone != NULL)
    judging_add_of (
        judging, alone, "symmetry-off", SEVERITY_NOTE,
        g_strdup_printf (
            _ ("The bond is to be symmetrical, but %s has no opening like it across the "
               "wall's middle: perpends mirror each other only where there is wall on "
               "both sides."),
            opening_called (alone)),
        MEND_NONE);
}

void
judge_contradictions (Judging *judging)
{
  judge_piece (judging);
  judge_raked (judging);
  judge_strip (judging);
  judge_bearing (judging);
  judge_jamb_line (judging);
  judge_wanted_lap (judging);
  judge_symmetry (judging);
}
