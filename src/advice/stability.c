/* stability.c - where a careful builder asks an engineer: slender walls, small piers, bearings
 *
 * Nothing is reckoned here but lengths: loads are not known. Of one pier one thing is told, what
 * weighs most. */
#include <glib/gi18n-lib.h>

#include "advice/held.h"
#include "advice/judging.h"
#include "advice/pier.h"
#include "bond/gauge.h"

/* EN 1996-1-1, 5.5.1.4, from memory: effective height over effective thickness. */
#define SLENDER_MOST 27
/* EN 1996-1-1, 8.1.3 and 6.1.2.1, from memory: a wall that bears load is not to be smaller in plan;
 * it is reckoned weaker where it is smaller. mm2. */
#define AREA_LEAST 40000.0
#define AREA_FULL 100000.0
/* Of an opening from a corner's outer face. Common practice. */
#define CORNER_LEAST LENGTH_MM (500)

/* --- the wall --- */

/* Whether walls that hold it stiffen all of it. */
static gboolean
is_stiffened (const Judging *judging)
{
  g_autoptr (GArray) stretches = stretches_of (judging->wall);

  for (guint i = 0; i < stretches->len; i++)
    if (!stretch_is_stiffened (judging->wall, &g_array_index (stretches, Stretch, i),
                               judging->block->thickness))
      return FALSE;
  return TRUE;
}

static void
judge_slenderness (Judging *judging)
{
  const Length height = wall_tallest (judging->wall, 0, judging->wall->length);
  const Length thickness = judging->block->thickness;
  char is[LENGTH_TEXT_SIZE], thick[LENGTH_TEXT_SIZE];

  if (height <= (gint64) SLENDER_MOST * thickness || is_stiffened (judging))
    return;
  judging_add (
      judging, "slender", SEVERITY_NOTE,
      g_strdup_printf (_ ("The wall is %s mm high, %.1f times its thickness of %s mm; the "
                          "effective height is to be %d times at most (EN 1996-1-1, 5.5.1.4). "
                          "Here the height of the blockwork stands for it: check with a licensed "
                          "engineer."),
                       length_text (height, is), (double) height / thickness,
                       length_text (thickness, thick), SLENDER_MOST),
      MEND_NONE);
}

/* --- piers --- */

static char *
name_of_pier (const Pier *pier)
{
  if (pier->left != NULL && pier->right != NULL)
    return g_strdup_printf (_ ("The pier between %s and %s"), opening_called (pier->left),
                            opening_called (pier->right));
  return pier->left == NULL ? g_strdup_printf (_ ("The pier at the left end, beside %s,"),
                                               opening_called (pier->right))
                            : g_strdup_printf (_ ("The pier at the right end, beside %s,"),
                                               opening_called (pier->left));
}

/* The wall's end that the pier reaches; NULL between openings. */
static const End *
end_of_pier (const Wall *wall, const Pier *pier)
{
  if (pier->left != NULL && pier->right != NULL)
    return NULL;
  return &wall->ends[pier->left == NULL ? SIDE_LEFT : SIDE_RIGHT];
}

static gboolean
has_tee (const Wall *wall, const Pier *pier)
{
  for (guint i = 0; i < wall->tees->len; i++)
    if (wall_tee_at (wall, i)->x < pier->to && tee_right (wall_tee_at (wall, i)) > pier->from)
      return TRUE;
  return FALSE;
}

/* Another wall meets it at its end or within. */
static gboolean
is_held (const Wall *wall, const Pier *pier)
{
  const End *end = end_of_pier (wall, pier);

  return has_tee (wall, pier) || (end != NULL && end->ret > 0);
}

/* What the opening's lintel wants of a pier; nothing where the wall ends at the head. */
static Length
bearing_of (const Wall *wall, const Opening *opening)
{
  if (opening == NULL
      || wall_top_highest (wall, opening->x, opening_right (opening)) - opening_head (opening)
             <= GAUGE_PACKING_MAX)
    return 0;
  return lintel_bearing (opening);
}

/* Of both its lintels, side by side where their heads are less than a course apart. */
static Length
bearing_on_pier (const Judging *judging, const Pier *pier)
{
  const Length left = bearing_of (judging->wall, pier->left);
  const Length right = bearing_of (judging->wall, pier->right);

  if (pier->left != NULL && pier->right != NULL
      && ABS (opening_head (pier->left) - opening_head (pier->right)) < judging->block->height)
    return left + right;
  return MAX (left, right);
}

/* Takes `text`. TRUE: something was told of the pier. */
static gboolean
add_of_pier (Judging *judging, const Pier *pier, const char *rule, char *text)
{
  const Opening *opening = pier->right != NULL ? pier->right : pier->left;

  judging_add_of (judging, opening, rule, SEVERITY_NOTE, text, MEND_NONE)->x = pier->from;
  return TRUE;
}

static gboolean
judge_bearing_room (Judging *judging, const Pier *pier)
{
  const Length wanted = bearing_on_pier (judging, pier);
  g_autofree char *name = name_of_pier (pier);
  char is[LENGTH_TEXT_SIZE], want[LENGTH_TEXT_SIZE];

  if (pier_width (pier) >= wanted || is_held (judging->wall, pier))
    return FALSE;
  length_text (wanted, want);
  if (pier_width (pier) == 0)
    return add_of_pier (
        judging, pier, "bearing-room",
        g_strdup_printf (_ ("%s reaches the wall's free end, where its lintel has nothing to bear "
                            "on; %s mm are wanted (house-building standards): check with a "
                            "licensed engineer."),
                         opening_called (pier->left ? pier->left : pier->right), want));
  return add_of_pier (judging, pier, "bearing-room",
                      g_strdup_printf (_ ("%s is %s mm wide; what lies on it over the openings "
                                          "wants %s mm of bearing (house-building standards): "
                                          "check with a licensed engineer."),
                                       name, length_text (pier_width (pier), is), want));
}

/* Of a pier that nothing holds, of such a name. Where it is narrower than half a unit between
 * openings and ends that is told already: only that it is too small is added. */
static gboolean
judge_area (Judging *judging, const Pier *pier, const char *name)
{
  const double width = length_to_mm (pier_width (pier));
  const double area = width * length_to_mm (judging->block->thickness);
  const gboolean narrow = 2 * (gint64) pier_width (pier) < judging->block->length;
  char is[LENGTH_TEXT_SIZE], thick[LENGTH_TEXT_SIZE];

  if (width <= 0 || area >= (narrow ? AREA_LEAST : AREA_FULL))
    return FALSE;
  length_text (pier_width (pier), is);
  length_text (judging->block->thickness, thick);
  return add_of_pier (
      judging, pier, "small-pier",
      area < AREA_LEAST
          ? g_strdup_printf (_ ("%s is %s × %s mm in plan, less than 0.04 m², the least of a wall "
                                "that bears load (EN 1996-1-1, 8.1.3): check with a licensed "
                                "engineer."),
                             name, is, thick)
          : g_strdup_printf (_ ("%s is %s × %s mm in plan, less than 0.1 m²: where it bears load "
                                "its strength is reckoned lower (EN 1996-1-1, 6.1.2.1): check with "
                                "a licensed engineer."),
                             name, is, thick));
}

static gboolean
judge_corner (Judging *judging, const Pier *pier)
{
  const End *end = end_of_pier (judging->wall, pier);
  char is[LENGTH_TEXT_SIZE];

  if (end == NULL || end->ret == 0 || end->through == THROUGH_ALL
      || pier_width (pier) >= CORNER_LEAST)
    return FALSE;
  return add_of_pier (
      judging, pier, "corner-opening",
      g_strdup_printf (_ ("%s is %s mm from the corner, which it weakens; 500 mm and more are "
                          "common practice: check with a licensed engineer."),
                       opening_called (pier->left ? pier->left : pier->right),
                       length_text (pier_width (pier), is)));
}

/* The parts of a pier that movement joints cut off beside its openings. Whether lintels bear there
 * is told with the joint. TRUE: there is such a joint. */
static gboolean
judge_parts (Judging *judging, const Pier *pier)
{
  const Wall *wall = judging->wall;
  Pier parts[2]
      = { { pier->from, pier->to, pier->left, NULL }, { pier->from, pier->to, NULL, pier->right } };

  for (guint i = 0; i < wall->movement_joints->len; i++)
    {
      const MovementJoint *joint = wall_movement_joint_at (wall, i);

      if (joint->x >= pier->to || movement_joint_right (joint) <= pier->from)
        continue;
      parts[0].to = MIN (parts[0].to, joint->x);
      parts[1].from = MAX (parts[1].from, movement_joint_right (joint));
    }
  if (parts[0].to == pier->to)
    return FALSE;
  for (int i = 0; i < 2; i++)
    {
      const Opening *opening = i == 0 ? pier->left : pier->right;
      g_autofree char *name = NULL;

      if (opening == NULL || has_tee (wall, &parts[i]) || wall_is_partition (wall))
        continue;
      name = g_strdup_printf (_ ("The pier between %s and the movement joint"),
                              opening_called (opening));
      judge_area (judging, &parts[i], name);
    }
  return TRUE;
}

static void
judge_pier (Judging *judging, const Pier *pier)
{
  const gboolean bears = !wall_is_partition (judging->wall) && !is_held (judging->wall, pier);
  g_autofree char *name = name_of_pier (pier);

  if (judge_parts (judging, pier) || judge_bearing_room (judging, pier)
      || (bears && judge_area (judging, pier, name)))
    return;
  judge_corner (judging, pier);
}

void
judge_stability (Judging *judging)
{
  const Wall *wall = judging->wall;

  if (!wall_is_partition (wall))
    judge_slenderness (judging);
  for (guint i = 0; i < wall->openings->len; i++)
    {
      const Opening *opening = wall_opening_at (wall, i);
      const Pier left = pier_left_of (wall, opening), right = pier_right_of (wall, opening);

      judge_pier (judging, &left);
      if (pier_is_last (wall, opening))
        judge_pier (judging, &right);
    }
}
