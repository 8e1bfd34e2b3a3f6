/* meetings.c - findings of walls that meet in plan: in each other's way, not agreed, not level
 *
 * Each is told with the first wall of its meeting. */
#include <glib/gi18n-lib.h>

#include "advice/judging.h"
#include "bond/gauge.h"
#include "model/plan-edit.h"

typedef struct
{
  const Meeting *meeting;
  const Wall *walls[2];
  const Block *blocks[2];
  Laying layings[2]; /* resolved */
} Met;

static Met
met_of (const Project *project, const Meeting *meeting)
{
  Met met = { .meeting = meeting };

  for (int i = 0; i < 2; i++)
    {
      met.walls[i] = project_wall_at (project, meeting->wall[i]);
      met.blocks[i] = project_block (project, met.walls[i]->block);
      met.layings[i] = laying_resolve (&met.walls[i]->laying, met.blocks[i]);
    }
  return met;
}

/* Says on both sides how it is made. Takes `text`. */
static Mend
mend_made (const Judging *judging, const Met *met, MeetMade made, char *text)
{
  Mend mend = { plan_make_edit (judging->whole, met->meeting, made), text };
  g_autoptr (Project) project = project_edit (judging->whole, mend.edit, NULL);

  if (project == NULL)
    mend_clear (&mend);
  return mend;
}

static void
add (Judging *judging, const Met *met, const char *rule, Severity severity, char *text, Mend mend)
{
  judging_add (judging, rule, severity, text, mend)->x = met->meeting->at[0];
}

/* Whether a third wall is in it. */
static const Wall *
third_wall (const Judging *judging, const GArray *meetings, const Meeting *meeting)
{
  for (guint i = 0; i < meetings->len; i++)
    {
      const Meeting *other = &g_array_index (meetings, Meeting, i);
      gboolean apart = other->box.x1 <= meeting->box.x0 || other->box.x0 >= meeting->box.x1
                       || other->box.y1 <= meeting->box.y0 || other->box.y0 >= meeting->box.y1;

      for (int k = 0; !apart && k < 2; k++)
        if (other->wall[k] != meeting->wall[0] && other->wall[k] != meeting->wall[1])
          return project_wall_at (judging->whole, other->wall[k]);
    }
  return NULL;
}

static void
judge_wrong (Judging *judging, const GArray *meetings, const Met *met)
{
  const Meeting *meeting = met->meeting;
  const Wall *third = third_wall (judging, meetings, meeting);
  const char *first = wall_called (met->walls[0]), *second = wall_called (met->walls[1]);
  char at[LENGTH_TEXT_SIZE], east[LENGTH_TEXT_SIZE], north[LENGTH_TEXT_SIZE];

  length_text (meeting->at[0], at);
  if (third != NULL)
    {
      add (judging, met, "walls-crowd", SEVERITY_BREACH,
           g_strdup_printf (_ ("%s, %s and %s want the same place, %s mm along %s: only two walls "
                               "can be bonded there."),
                            first, second, wall_called (third), at, first),
           MEND_NONE);
      return;
    }
  length_text ((Length) (meeting->box.x1 - meeting->box.x0), east);
  length_text ((Length) (meeting->box.y1 - meeting->box.y0), north);
  add (judging, met, "walls-clash", SEVERITY_BREACH,
       g_strdup_printf (_ ("%s and %s stand in each other's way, %s mm along %s: they share %s × "
                           "%s mm, which is no corner and no end of a partition."),
                        first, second, at, first, east, north),
       MEND_NONE);
}

/* Both walls would lay the shared square, or neither. */
static void
judge_agreement (Judging *judging, const Met *met)
{
  const char *first = wall_called (met->walls[0]), *second = wall_called (met->walls[1]);
  char at[LENGTH_TEXT_SIZE];
  char *text;

  length_text (met->meeting->at[0], at);
  if (met->meeting->made == MADE_UNSAID)
    text = g_strdup_printf (_ ("%s and %s meet %s mm along %s, and neither says which runs through "
                               "in which courses."),
                            first, second, at, first);
  else
    text = g_strdup_printf (_ ("%s and %s meet %s mm along %s, and do not agree which runs through "
                               "in which courses."),
                            first, second, at, first);
  add (judging, met, "meeting-unclear", SEVERITY_BREACH, text,
       mend_made (judging, met, plan_meant (judging->whole, met->meeting, (WallId){ 0 }),
                  g_strdup (_ ("Bond them in turn"))));
}

/* Courses of walls that are bonded lie at one height. */
static void
judge_coursing (Judging *judging, const Met *met)
{
  const char *first = wall_called (met->walls[0]), *second = wall_called (met->walls[1]);
  Mend mend = MEND_NONE;

  if (met->meeting->made > MADE_FIRST_EVEN || plan_is_level (judging->whole, met->meeting))
    return;
  if (met->meeting->kind == MEET_TEE)
    mend = mend_made (judging, met, MADE_SECOND_THROUGH, g_strdup (_ ("Butt it, with ties")));
  add (judging, met, "meeting-not-level", SEVERITY_BREACH,
       g_strdup_printf (_ ("The courses of %s and %s do not lie level with each other, so that "
                           "they cannot be bonded."),
                        first, second),
       mend);
}

/* Both stand on one foundation there. */
static void
judge_feet (Judging *judging, const Met *met)
{
  Length up[2];
  char a[LENGTH_TEXT_SIZE], b[LENGTH_TEXT_SIZE];

  for (int i = 0; i < 2; i++)
    {
      const Length x = met->meeting->at[i];

      up[i] = foot_highest (met->walls[i]->feet, x, x + met->blocks[1 - i]->thickness);
      if (up[i] != wall_foot_at (met->walls[i], x, SIDE_RIGHT))
        up[i] = -1; /* a step within the square: the other wall is on both */
    }
  if (up[0] == up[1] || up[0] < 0 || up[1] < 0)
    return;
  add (judging, met, "meeting-foot", SEVERITY_WARNING,
       g_strdup_printf (_ ("%s and %s meet, and their foundations do not: it lies %s mm up under "
                           "the one and %s mm under the other."),
                        wall_called (met->walls[0]), wall_called (met->walls[1]),
                        length_text (up[0], a), length_text (up[1], b)),
       MEND_NONE);
}

/* A wall that goes on above the other, which ends within one of its courses. */
static void
judge_heights (Judging *judging, const Met *met, int which)
{
  const Meeting *meeting = met->meeting;
  const Wall *wall = met->walls[which];
  const Tee *tee = wall_tee (wall, meeting->at[which]);
  const Length up_to = plan_ends_there (meeting, which) ? wall->ends[meeting->side[which]].up_to
                       : tee != NULL                    ? tee->up_to
                                                        : 0;
  gint32 course;
  Length over;
  char z[LENGTH_TEXT_SIZE], open[LENGTH_TEXT_SIZE];

  if (up_to == 0)
    return;
  course = gauge_course_at (wall, met->blocks[which], &met->layings[which], up_to);
  over
      = course < 1 ? 0 : gauge_top (wall, met->blocks[which], &met->layings[which], course) - up_to;
  if (over <= GAUGE_PACKING_MAX)
    return;
  add (judging, met, "meeting-height", SEVERITY_NOTE,
       g_strdup_printf (
           _ ("%s ends at %s mm, within course %d of %s: where they meet, %s mm over it "
              "are made up by hand."),
           wall_called (met->walls[1 - which]), length_text (up_to, z), course, wall_called (wall),
           length_text (over, open)),
       MEND_NONE);
}

/* EN 1996-1-1, 8.1.4.1(4), from memory: at a corner no less than the unit's thickness, where that
 * is less than the least lap. The next course laps by the other wall's thickness there. */
static void
judge_lap (Judging *judging, const Met *met)
{
  char is[LENGTH_TEXT_SIZE], least[LENGTH_TEXT_SIZE];

  if (met->meeting->made > MADE_FIRST_EVEN)
    return;
  for (int i = 0; i < 2; i++)
    {
      Length wanted = MIN (met->layings[i].min_lap, met->blocks[i]->thickness);
      Length lap = met->blocks[1 - i]->thickness;

      if (met->meeting->kind == MEET_CROSSING || (met->meeting->kind == MEET_TEE && i == 1)
          || lap >= wanted)
        continue;
      add (judging, met, "corner-lap", SEVERITY_WARNING,
           g_strdup_printf (_ ("%s laps %s by only %s mm where they meet; %s mm are wanted there."),
                            wall_called (met->walls[i]), wall_called (met->walls[1 - i]),
                            length_text (lap, is), length_text (wanted, least)),
           MEND_NONE);
    }
}

/* ---- ties ---- */

static Mend
mend_ties (const Judging *judging, const Met *met, char *text)
{
  const Ties usual = plan_usual_ties (judging->whole, met->meeting);
  Mend mend = { plan_ties_edit (judging->whole, met->meeting, &usual), text };
  g_autoptr (Project) project = project_edit (judging->whole, mend.edit, NULL);

  if (project == NULL)
    mend_clear (&mend);
  return mend;
}

static void
judge_no_ties (Judging *judging, const Met *met, const Wall *butted, const Wall *through)
{
  add (judging, met, "ties-unsaid", SEVERITY_NOTE,
       g_strdup_printf (_ ("%s is butted to %s, and it is not said how it is tied."),
                        wall_called (butted), wall_called (through)),
       mend_ties (judging, met, g_strdup (_ ("Tie it as usual"))));
}

/* A strip or a mesh lies flat in the beds of both walls. */
static void
judge_ties_bed (Judging *judging, const Met *met, const Ties *ties, const Wall *butted,
                const Wall *through)
{
  if (ties->kind == TIE_ANGLE || plan_is_level (judging->whole, met->meeting))
    return;
  add (judging, met, "ties-not-level", SEVERITY_WARNING,
       g_strdup_printf (_ ("The courses of %s and %s do not lie level with each other, so that %s "
                           "cannot lie in a bed of both."),
                        wall_called (butted), wall_called (through), tie_kind_name (ties->kind)),
       mend_ties (judging, met, g_strdup (_ ("Screw angles on"))));
}

/* TIES_MOST_APART, or every course where courses are higher. */
static void
judge_ties_apart (Judging *judging, const Met *met, const Ties *ties, int which)
{
  const gint64 pitch = (gint64) met->blocks[which]->height + met->layings[which].bed;
  const gint64 apart = pitch * ties->every;
  char is[LENGTH_TEXT_SIZE], most[LENGTH_TEXT_SIZE];
  Ties closer = *ties;
  Mend mend;

  if (ties->every == 1 || apart <= TIES_MOST_APART)
    return;
  closer.every = MAX (1, (gint32) (TIES_MOST_APART / pitch));
  mend = (Mend){ plan_ties_edit (judging->whole, met->meeting, &closer),
                 g_strdup_printf (
                     ngettext ("Tie every course", "Tie every %d courses", (gulong) closer.every),
                     closer.every) };
  add (judging, met, "ties-apart", SEVERITY_NOTE,
       g_strdup_printf (
           _ ("The ties of %s lie %s mm apart up the wall; %s mm is usual (UK "
              "practice, from memory). A licensed engineer or the local code decides."),
           wall_called (met->walls[which]), length_text ((Length) MIN (apart, LENGTH_MAX), is),
           length_text (TIES_MOST_APART, most)),
       mend);
}

static void
judge_ties (Judging *judging, const Met *met)
{
  const int which = plan_butted (met->meeting);
  const Ties *ties = plan_ties (judging->whole, met->meeting);

  if (which < 0)
    return;
  if (ties == NULL)
    {
      judge_no_ties (judging, met, met->walls[which], met->walls[1 - which]);
      return;
    }
  judge_ties_bed (judging, met, ties, met->walls[which], met->walls[1 - which]);
  judge_ties_apart (judging, met, ties, which);
}

void
judge_meetings (Judging *judging)
{
  const Project *project = judging->whole;
  g_autoptr (GArray) meetings = NULL;
  guint wall;

  if (!judging->wall->place.given)
    return;
  wall = (guint) project_wall_index (project, judging->wall->id);
  meetings = plan_meetings_of (project, wall);
  for (guint i = 0; i < meetings->len; i++)
    {
      const Meeting *meeting = &g_array_index (meetings, Meeting, i);
      Met met = met_of (project, meeting);

      if (meeting->wall[0] != wall)
        continue;
      if (meeting->kind == MEET_WRONG)
        judge_wrong (judging, meetings, &met);
      else if (meeting->made >= MADE_UNSAID)
        judge_agreement (judging, &met);
      else
        {
          judge_coursing (judging, &met);
          judge_lap (judging, &met);
          judge_feet (judging, &met);
          for (int side = 0; side < 2; side++)
            judge_heights (judging, &met, side);
          judge_ties (judging, &met);
        }
    }
}
