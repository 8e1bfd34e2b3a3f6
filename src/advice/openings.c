/* openings.c - findings of the openings: sills and heads off the courses, piers, bearings */
#include <glib/gi18n-lib.h>

#include "advice/judging.h"
#include "advice/pier.h"
#include "bond/gauge.h"

/* --- sills and heads --- */

/* The course that a height lies within, its bed and its top left out; NULL when it is none's. */
static const Course *
course_across (const Judging *judging, Length z)
{
  for (guint i = 0; i < judging->layout->courses->len; i++)
    {
      const Course *course = layout_course (judging->layout, i);

      if (course->bottom < z && z < course->top)
        return course;
    }
  return NULL;
}

/* The sill moved, the head where it is. */
static Mend
mend_sill (const Judging *judging, const Opening *opening, Length sill)
{
  char by[LENGTH_TEXT_SIZE];
  Opening moved = *opening; /* shallow; the edit copies it */
  Length up = sill - opening->sill;

  moved.sill = sill;
  moved.height = opening->height - up;
  return mend_if_possible (
      judging, edit_set_opening (&moved),
      up > 0 ? g_strdup_printf (_ ("Move sill %s mm up"), length_text (up, by))
             : g_strdup_printf (_ ("Move sill %s mm down"), length_text (-up, by)));
}

/* The head moved, the sill where it is. */
static Mend
mend_head (const Judging *judging, const Opening *opening, Length head)
{
  char by[LENGTH_TEXT_SIZE];
  Opening moved = *opening;
  Length up = head - opening_head (opening);

  moved.height = opening->height + up;
  return mend_if_possible (
      judging, edit_set_opening (&moved),
      up > 0 ? g_strdup_printf (_ ("Move head %s mm up"), length_text (up, by))
             : g_strdup_printf (_ ("Move head %s mm down"), length_text (-up, by)));
}

/* To the nearer of two heights, or else to the other. */
static Mend
mend_to_course (const Judging *judging, const Opening *opening, Length low, Length high,
                gboolean is_sill)
{
  Mend (*mend_edge) (const Judging *, const Opening *, Length) = is_sill ? mend_sill : mend_head;
  Length now = is_sill ? opening->sill : opening_head (opening);
  gboolean down = now - low <= high - now;
  Mend mend = mend_edge (judging, opening, down ? low : high);

  return mend.edit != NULL ? mend : mend_edge (judging, opening, down ? high : low);
}

/* A remnant of at most a packing is mortar: no course is cut for it. */
static void
judge_sill (Judging *judging, const Opening *opening)
{
  const Course *course = course_across (judging, opening->sill);
  char sill[LENGTH_TEXT_SIZE], strip[LENGTH_TEXT_SIZE];
  Length below;

  if (course == NULL || opening->sill - course->bottom <= GAUGE_PACKING_MAX)
    return;
  below = course->number > 1 ? layout_course (judging->layout, (guint) course->number - 2)->top
                             : course->bottom;
  judging_add_of (judging, opening, "sill", SEVERITY_NOTE,
                  g_strdup_printf (_ ("%s: the sill at %s mm meets no course; course %d is ripped "
                                      "to %s mm under it."),
                                   opening_called (opening), length_text (opening->sill, sill),
                                   course->number,
                                   length_text (opening->sill - course->bottom, strip)),
                  mend_to_course (judging, opening, below, course->top, TRUE))
      ->course
      = course->number;
}

static void
judge_head (Judging *judging, const Opening *opening)
{
  Length at = opening_head (opening);
  const Course *course = course_across (judging, at);
  char head[LENGTH_TEXT_SIZE], strip[LENGTH_TEXT_SIZE];

  if (course == NULL || course->top - at <= GAUGE_PACKING_MAX)
    return;
  judging_add_of (judging, opening, "head", SEVERITY_NOTE,
                  g_strdup_printf (_ ("%s: the head at %s mm meets no course; course %d is ripped "
                                      "to %s mm over it."),
                                   opening_called (opening), length_text (at, head), course->number,
                                   length_text (course->top - at, strip)),
                  mend_to_course (judging, opening, course->bottom, course->top, FALSE))
      ->course
      = course->number;
}

/* --- piers --- */

/* Narrower than half a unit; an opening flush with the wall's end leaves no pier. */
static gboolean
is_narrow (const Judging *judging, const Pier *pier)
{
  Length width = pier_width (pier);

  return width > 0 && 2 * (gint64) width < judging->block->length;
}

static gint32
count_narrow (const Judging *judging, const Wall *wall)
{
  gint32 n = 0;

  for (guint i = 0; i < wall->openings->len; i++)
    {
      const Opening *opening = wall_opening_at (wall, i);
      Pier left = pier_left_of (wall, opening), right = pier_right_of (wall, opening);

      n += is_narrow (judging, &left)
           + (pier_is_last (wall, opening) && is_narrow (judging, &right));
    }
  return n;
}

/* Moves one opening away until half a unit stands; only when no other pier gets too narrow. */
static Mend
mend_pier_by (const Judging *judging, const Pier *pier, const Opening *opening)
{
  char by[LENGTH_TEXT_SIZE];
  Length more = (judging->block->length + 1) / 2 - (pier->to - pier->from);
  gboolean to_left = opening == pier->left;
  Opening moved = *opening;
  Mend mend;
  g_autoptr (Project) project = NULL;

  moved.x += to_left ? -more : more;
  mend = mend_if_possible (
      judging, edit_set_opening (&moved),
      to_left ? g_strdup_printf (_ ("Move %s %s mm left"), opening_called (opening),
                                 length_text (more, by))
              : g_strdup_printf (_ ("Move %s %s mm right"), opening_called (opening),
                                 length_text (more, by)));
  if (mend.edit == NULL)
    return mend;
  project = project_edit (judging->project, mend.edit, NULL);
  if (count_narrow (judging, project_wall (project, judging->wall->id))
      >= count_narrow (judging, judging->wall))
    mend_clear (&mend);
  return mend;
}

static Mend
mend_pier (const Judging *judging, const Pier *pier)
{
  Mend mend = MEND_NONE;

  if (pier->right != NULL)
    mend = mend_pier_by (judging, pier, pier->right);
  if (mend.edit == NULL && pier->left != NULL)
    mend = mend_pier_by (judging, pier, pier->left);
  return mend;
}

static char *
words_of_pier (const Judging *judging, const Pier *pier)
{
  char width[LENGTH_TEXT_SIZE], half[LENGTH_TEXT_SIZE];

  length_text (pier->to - pier->from, width);
  length_text (judging->block->length / 2, half);
  if (pier->left != NULL && pier->right != NULL)
    return g_strdup_printf (
        _ ("The pier between %s and %s is %s mm wide, narrower than half a "
           "block, %s mm (bricklayers' practice). Whether it bears what lies on "
           "it is for a licensed engineer."),
        opening_called (pier->left), opening_called (pier->right), width, half);
  return g_strdup_printf (
      pier->left == NULL
          ? _ ("The pier at the left end, beside %s, is %s mm wide, narrower than half a block, %s "
               "mm (bricklayers' practice). Whether it bears what lies on it is for a licensed "
               "engineer.")
          : _ (
              "The pier at the right end, beside %s, is %s mm wide, narrower than half a block, %s "
              "mm (bricklayers' practice). Whether it bears what lies on it is for a licensed "
              "engineer."),
      opening_called (pier->left == NULL ? pier->right : pier->left), width, half);
}

static void
judge_pier (Judging *judging, const Opening *opening, const Pier *pier)
{
  if (is_narrow (judging, pier))
    judging_add_of (judging, opening, "narrow-pier", SEVERITY_WARNING,
                    words_of_pier (judging, pier), mend_pier (judging, pier))
        ->x
        = pier->from;
}

/* --- bearings --- */

/* The piece beside a jamb that the lintel's end lies on: its top is the highest at the head or
 * below it. NULL where none is. */
static const Piece *
bearing_piece (const Judging *judging, const Opening *opening, gboolean left)
{
  const Piece *found = NULL;
  Length jamb = left ? opening->x : opening_right (opening);

  for (guint i = 0; i < judging->layout->pieces->len; i++)
    {
      const Piece *piece = layout_piece (judging->layout, i);
      Length face = left ? piece->x + piece->length : piece->x;

      if (face == jamb && piece->bottom + piece->height <= opening_head (opening)
          && piece->bottom + piece->height > opening->sill)
        found = piece;
    }
  return found;
}

static void
judge_bearing (Judging *judging, const Opening *opening, gboolean left)
{
  char is[LENGTH_TEXT_SIZE], least[LENGTH_TEXT_SIZE];
  const Piece *piece = bearing_piece (judging, opening, left);
  Finding *finding;
  char *text;

  if (piece == NULL || piece->shape == PIECE_WHOLE
      || 2 * (gint64) piece->length >= judging->block->length)
    return;
  length_text (piece->length, is);
  length_text (lintel_bearing (opening), least);
  text = g_strdup_printf (
      left ? _ (
          "%s: the lintel's left end rests on a cut piece of %s mm; give it %s mm of bearing at "
          "least, on a whole block where one can be laid (house-building standards): check "
          "with a licensed engineer.")
           : _ (
               "%s: the lintel's right end rests on a cut piece of %s mm; give it %s mm of bearing "
               "at least, on a whole block where one can be laid (house-building standards): check "
               "with a licensed engineer."),
      opening_called (opening), is, least);
  finding = judging_add_of (judging, opening, "lintel-bearing", SEVERITY_NOTE, text, MEND_NONE);
  finding->course = piece->course;
  finding->x = piece->x;
}

/* --- how far it may move --- */

static void
judge_move (Judging *judging, const Opening *opening)
{
  const Length drawn = opening_drawn_x (opening), may = opening_may_move (opening);
  const Length by = opening->x - drawn;
  char is[LENGTH_TEXT_SIZE], most[LENGTH_TEXT_SIZE], back[LENGTH_TEXT_SIZE];
  Opening moved = *opening; /* shallow; the edit copies it */

  if (!(opening->given & OPENING_MAY_MOVE) || ABS (by) <= may)
    return;
  opening_move (&moved, by > 0 ? drawn + may : drawn - may);
  length_text (ABS (by), is);
  length_text (may, most);
  length_text (ABS (by) - may, back);
  judging_add_of (
      judging, opening, "beyond-move", SEVERITY_WARNING,
      g_strdup_printf (_ ("%s stands %s mm from where it was drawn; it may move %s mm."),
                       opening_called (opening), is, most),
      mend_if_possible (
          judging, edit_set_opening (&moved),
          g_strdup_printf (by > 0 ? _ ("Move %s %s mm left") : _ ("Move %s %s mm right"),
                           opening_called (opening), back)));
}

void
judge_openings (Judging *judging)
{
  const Wall *wall = judging->wall;

  for (guint i = 0; i < wall->openings->len; i++)
    {
      const Opening *opening = wall_opening_at (wall, i);
      Pier left = pier_left_of (wall, opening), right = pier_right_of (wall, opening);

      judge_move (judging, opening);
      judge_sill (judging, opening);
      judge_head (judging, opening);
      judge_pier (judging, opening, &left);
      if (pier_is_last (wall, opening))
        judge_pier (judging, opening, &right);
      judge_bearing (judging, opening, TRUE);
      judge_bearing (judging, opening, FALSE);
    }
}
