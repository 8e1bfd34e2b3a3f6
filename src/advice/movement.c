/* movement.c - findings of movement joints: where one is wanted, and where one may not be */
#include <glib/gi18n-lib.h>

#include "advice/judging.h"
#include "bond/gauge.h"
#include "bond/lay.h"

/* docs/rules.md. Straight lengths of aerated concrete: about 6 m, Concrete Society, read. From a
 * corner half of that: EN 1996-2, 2.3.4.2, from memory. Panels at most three times as long as high:
 * warranty standards, read. */
#define MOST_APART LENGTH_MM (6000)
#define MOST_FROM_CORNER LENGTH_MM (3000)
#define MOST_LENGTH_TO_HEIGHT 3
#define AERATED_BELOW 1000.0 /* kg/m3 */
/* So far before the farthest place that would do others are tried first; pieces laid in all. */
#define WITHIN LENGTH_MM (2000)
#define WORK_PIECES 900

/* What stands between two ends or movement joints. */
typedef struct
{
  Length from, to;
  gboolean corners[2]; /* by Side */
  gboolean jointed[2];
  Length most; /* that its parts may be long */
} Panel;

/* --- lintels --- */

/* What the rule asks for, or would ask for. */
static Length
bearing_of (const Judging *judging)
{
  return judging->laying.rules[RULE_BEARING].value;
}

static gboolean
has_lintel (const Wall *wall, const Opening *opening)
{
  return wall_top_highest (wall, opening->x, opening_right (opening)) - opening_head (opening)
         > GAUGE_PACKING_MAX;
}

static gboolean
overlaps (const MovementJoint *joint, Length from, Length to)
{
  return joint->x < to && movement_joint_right (joint) > from;
}

static gboolean
is_in_bearing (const MovementJoint *joint, const Opening *opening, Length bearing)
{
  Length right = opening_right (opening);

  return overlaps (joint, opening->x - bearing, opening->x)
         || overlaps (joint, right, right + bearing);
}

/* Away from openings, the bearings beside them, and walls that meet this one. */
static gboolean
is_clear (const Judging *judging, const MovementJoint *joint)
{
  const Wall *wall = judging->wall;
  const Length bearing = bearing_of (judging), head = judging->laying.head;

  for (guint i = 0; i < wall->openings->len; i++)
    {
      const Opening *opening = wall_opening_at (wall, i);
      Length beside = has_lintel (wall, opening) ? bearing : 0;

      if (overlaps (joint, opening->x - beside, opening_right (opening) + beside))
        return FALSE;
    }
  for (guint i = 0; i < wall->tees->len; i++)
    {
      const Tee *tee = wall_tee_at (wall, i);

      if (overlaps (joint, tee->x - head - judging->laying.min_piece,
                    tee_right (tee) + head + judging->laying.min_piece))
        return FALSE;
    }
  return TRUE;
}

/* --- places that are tried --- */

typedef struct
{
  Length x, off; /* off: from where it would stand best */
} Place;

static gint
compare_places (gconstpointer a, gconstpointer b)
{
  const Place *p = a, *q = b;

  if (p->off != q->off)
    return p->off < q->off ? -1 : 1;
  return (p->x > q->x) - (p->x < q->x);
}

static void
add_place (const Judging *judging, Length x, Length from, Length to, Length best, GArray *places)
{
  const MovementJoint joint = { .x = x, .width = MOVEMENT_JOINT_WIDTH };
  const Place place = { x, ABS (x - best) };

  if (x < from || x > to || !is_clear (judging, &joint))
    return;
  for (guint i = 0; i < places->len; i++)
    if (g_array_index (places, Place, i).x == x)
      return;
  g_array_append_val (places, place);
}

/* How far the next joint or end may be from that side of a panel. */
static Length
most_from (const Panel *panel, Side side)
{
  return panel->corners[side] ? MIN (MOST_FROM_CORNER, panel->most) : panel->most;
}

/* Places in from .. to that leave whole half blocks on one side, those nearest to `best` first. */
static void
add_places (const Judging *judging, const Panel *panel, Length from, Length to, Length best,
            GArray *places)
{
  const Length half = (judging->block->length + judging->laying.head) / 2;
  const Length head = judging->laying.head, width = MOVEMENT_JOINT_WIDTH;

  for (Length n = 1; panel->from + n * half - head <= to; n++)
    add_place (judging, panel->from + n * half - head, from, to, best, places);
  for (Length n = 1; panel->to - n * half + head - width >= from; n++)
    add_place (judging, panel->to - n * half + head - width, from, to, best, places);
  g_array_sort (places, compare_places);
}

/* From the panel's middle where one joint is enough. Where more are wanted, or openings leave no
 * such place, as far from the left as may be. */
static GArray *
places_in (const Judging *judging, const Panel *panel)
{
  GArray *places = g_array_new (FALSE, FALSE, sizeof (Place));
  const Length width = MOVEMENT_JOINT_WIDTH, least = judging->laying.min_piece;
  const Length first = panel->from + least;
  const Length to = MIN (panel->from + most_from (panel, SIDE_LEFT), panel->to - width - least);
  const Length from = MAX (panel->to - most_from (panel, SIDE_RIGHT) - width, first);

  if (from <= to)
    add_places (judging, panel, from, to, CLAMP ((panel->from + panel->to - width) / 2, from, to),
                places);
  if (places->len == 0)
    add_places (judging, panel, MAX (to - WITHIN, first), to, to, places);
  if (places->len == 0)
    add_places (judging, panel, first, to, to, places);
  return places;
}

static gboolean
is_better (const Layout *a, const Layout *b)
{
  if (b == NULL || a->breaches->len != b->breaches->len)
    return b == NULL || a->breaches->len < b->breaches->len;
  return a->n_cut < b->n_cut;
}

/* The joint with the fewest cuts, of some places, those nearest to the best one. */
static Mend
mend_panel (const Judging *judging, const Panel *panel)
{
  g_autoptr (GArray) places = places_in (judging, panel);
  const guint pieces = MAX (judging->layout->pieces->len, 20);
  g_autoptr (Layout) best = NULL;
  g_autoptr (Wall) found = NULL;
  Length at = 0;
  char x[LENGTH_TEXT_SIZE];

  for (guint i = 0; i < places->len && (i == 0 || (i + 1) * pieces <= WORK_PIECES); i++)
    {
      const Length tried = g_array_index (places, Place, i).x;
      g_autoptr (Wall) wall = wall_copy (judging->wall);
      g_autoptr (Layout) layout = NULL;

      wall_add_movement_joint (wall, tried, MOVEMENT_JOINT_WIDTH);
      layout = lay_wall_quickly (wall, judging->block, judging->stop);
      if (layout == NULL || !is_better (layout, best))
        continue;
      at = tried;
      g_clear_pointer (&best, layout_unref);
      best = g_steal_pointer (&layout);
      g_clear_pointer (&found, wall_unref);
      found = g_steal_pointer (&wall);
    }
  if (found == NULL)
    return MEND_NONE;
  return mend_if_possible (
      judging, edit_set_wall (found),
      g_strdup_printf (_ ("Add a movement joint at %s mm"), length_text (at, x)));
}

/* --- panels --- */

static gint
compare_lengths (gconstpointer a, gconstpointer b)
{
  const MovementJoint *p = a, *q = b;

  return (p->x > q->x) - (p->x < q->x);
}

static GArray *
panels_of (const Wall *wall)
{
  GArray *panels = g_array_new (FALSE, TRUE, sizeof (Panel));
  g_autoptr (GArray) joints = g_array_new (FALSE, FALSE, sizeof (MovementJoint));
  Panel panel = { .corners = { wall->ends[SIDE_LEFT].ret > 0, FALSE }, .most = MOST_APART };

  g_array_append_vals (joints, wall->movement_joints->data, wall->movement_joints->len);
  g_array_sort (joints, compare_lengths);
  for (guint i = 0; i < joints->len; i++)
    {
      const MovementJoint *joint = &g_array_index (joints, MovementJoint, i);

      panel.to = joint->x;
      panel.jointed[SIDE_RIGHT] = TRUE;
      g_array_append_val (panels, panel);
      panel = (Panel){ .from = movement_joint_right (joint),
                       .jointed = { TRUE, FALSE },
                       .most = MOST_APART };
    }
  panel.to = wall->length;
  panel.corners[SIDE_RIGHT] = wall->ends[SIDE_RIGHT].ret > 0;
  g_array_append_val (panels, panel);
  return panels;
}

#define DESIGNER                                                                                   \
  _ ("Ties and sliding parts across it are the designer's: the local code and a licensed "         \
     "engineer decide.")

static gboolean
judge_length (Judging *judging, const Panel *panel)
{
  char is[LENGTH_TEXT_SIZE];

  if (panel->to - panel->from <= MOST_APART)
    return FALSE;
  judging_add (
      judging, "movement-joint-length", SEVERITY_NOTE,
      /* Translators: the last %s is the sentence that leaves it to the designer */
      g_strdup_printf (_ ("%s mm run without a movement joint; about 6 m is common guidance "
                          "for aerated concrete without bars in its beds. %s"),
                       length_text (panel->to - panel->from, is), DESIGNER),
      mend_panel (judging, panel))
      ->x
      = panel->from;
  return TRUE;
}

/* The first joint from a corner; a panel between two ends has none. */
static gboolean
judge_corner (Judging *judging, const Panel *panel)
{
  char is[LENGTH_TEXT_SIZE];
  const Length length = panel->to - panel->from;

  if (length <= MOST_FROM_CORNER
      || !((panel->corners[SIDE_LEFT] && panel->jointed[SIDE_RIGHT])
           || (panel->corners[SIDE_RIGHT] && panel->jointed[SIDE_LEFT])))
    return FALSE;
  judging_add (judging, "movement-joint-corner", SEVERITY_NOTE,
               g_strdup_printf (_ ("The first movement joint is %s mm from the corner; half the "
                                   "usual distance, 3 m, is wanted there (EN 1996-2). "
                                   "%s"),
                                length_text (length, is), DESIGNER),
               mend_panel (judging, panel))
      ->x
      = panel->from;
  return TRUE;
}

/* Under a slope, and on steps, as high as it is on average. */
static Length
height_of (const Judging *judging, const Panel *panel)
{
  const Wall *wall = judging->wall;

  if (wall->tops->len == 0 && wall->feet->len == 0)
    return wall->height;
  return length_from_mm (wall_face_area (wall, panel->from, panel->to)
                         / length_to_mm (panel->to - panel->from));
}

/* Of a wall that has no joint nothing is said: it is not meant to be parted. */
static gboolean
judge_proportion (Judging *judging, const Panel *panel)
{
  char is[LENGTH_TEXT_SIZE], height[LENGTH_TEXT_SIZE];
  const Length length = panel->to - panel->from;
  const gint64 most = (gint64) height_of (judging, panel) * MOST_LENGTH_TO_HEIGHT;
  Panel shorter = *panel;

  shorter.most = (Length) MIN (most, MOST_APART);
  if (length <= most || !(panel->jointed[SIDE_LEFT] || panel->jointed[SIDE_RIGHT]))
    return FALSE;
  judging_add (
      judging, "movement-joint-panel", SEVERITY_NOTE,
      g_strdup_printf (_ ("Between movement joints stand %s mm of wall, %s mm high; at most "
                          "three times the height is common guidance. %s"),
                       length_text (length, is), length_text (height_of (judging, panel), height),
                       DESIGNER),
      mend_panel (judging, &shorter))
      ->x
      = panel->from;
  return TRUE;
}

/* Bars in every so many courses hold longer lengths together. */
static gboolean
is_judged (const Judging *judging)
{
  const Steel *steel = &judging->wall->steel;

  return judging->block->density < AERATED_BELOW && !(steel->given && steel->every > 0);
}

/* One finding of each kind: its mend may part other panels, too. */
static void
judge_panels (Judging *judging)
{
  static gboolean (*const rules[]) (Judging *, const Panel *)
      = { judge_length, judge_corner, judge_proportion };
  g_autoptr (GArray) panels = panels_of (judging->wall);

  for (guint r = 0; r < G_N_ELEMENTS (rules); r++)
    for (guint i = 0; i < panels->len; i++)
      if (rules[r](judging, &g_array_index (panels, Panel, i)))
        break;
}

/* --- where one may not be --- */

/* The joint moved to the nearest place that is clear. */
static Mend
mend_place (const Judging *judging, guint i, Length left, Length right)
{
  const MovementJoint *joint = wall_movement_joint_at (judging->wall, i);
  const gboolean first_left = joint->x - left <= right - joint->x;
  const Length places[] = { first_left ? left : right, first_left ? right : left };

  for (guint k = 0; k < G_N_ELEMENTS (places); k++)
    {
      g_autoptr (Wall) wall = wall_copy (judging->wall);
      MovementJoint *moved = &g_array_index (wall->movement_joints, MovementJoint, i);
      char x[LENGTH_TEXT_SIZE];
      Mend mend;

      moved->x = places[k];
      if (!is_clear (judging, moved))
        continue;
      mend = mend_if_possible (
          judging, edit_set_wall (wall),
          g_strdup_printf (_ ("Move the joint to %s mm"), length_text (places[k], x)));
      if (mend.edit != NULL)
        return mend;
    }
  return MEND_NONE;
}

static void
judge_joint_at (Judging *judging, guint i, const Opening *opening)
{
  const MovementJoint *joint = wall_movement_joint_at (judging->wall, i);
  const Length bearing = bearing_of (judging);
  const Length left = opening->x - bearing - joint->width;
  const Length right = opening_right (opening) + bearing;
  char x[LENGTH_TEXT_SIZE], least[LENGTH_TEXT_SIZE];

  length_text (joint->x, x);
  length_text (bearing, least);
  if (!has_lintel (judging->wall, opening))
    return;
  if (is_in_bearing (joint, opening, bearing))
    judging_add_of (judging, opening, "movement-joint-bearing", SEVERITY_BREACH,
                    g_strdup_printf (_ ("%s: the movement joint at %s mm cuts through the lintel's "
                                        "bearing; keep it %s mm from the jamb."),
                                     opening_called (opening), x, least),
                    mend_place (judging, i, left, right))
        ->x
        = joint->x;
  else if (overlaps (joint, opening->x, opening_right (opening)))
    judging_add_of (judging, opening, "movement-joint-lintel", SEVERITY_WARNING,
                    g_strdup_printf (_ ("%s: the movement joint at %s mm goes through the opening, "
                                        "and the lintel bridges it. %s"),
                                     opening_called (opening), x, DESIGNER),
                    mend_place (judging, i, left, right))
        ->x
        = joint->x;
}

void
judge_movement_joints (Judging *judging)
{
  const Wall *wall = judging->wall;

  for (guint i = 0; i < wall->movement_joints->len; i++)
    for (guint k = 0; k < wall->openings->len; k++)
      judge_joint_at (judging, i, wall_opening_at (wall, k));
  if (is_judged (judging))
    judge_panels (judging);
}
