/* trial.c - what a wall would be like with one opening a little elsewhere */
#include "advice/trial.h"

#include <glib/gi18n-lib.h>

#include "bond/gauge.h"
#include "bond/lay.h"

#define WORK_PIECES 450             /* laid in all by trials of one wall: some 12 ms */
#define A_LITTLE LENGTH_MM (80)     /* the farthest that an opening is moved for less cutting */
#define A_STRIP_MOVE LENGTH_MM (60) /* a sill or head is moved for a strip, at most */

static void
trial_free (gpointer data)
{
  Trial *trial = data;

  mend_clear (&trial->mend);
  layout_unref (trial->layout);
  g_free (trial);
}

static gboolean
is_listed (const GPtrArray *trials, const char *text)
{
  for (guint i = 0; i < trials->len; i++)
    if (g_str_equal (((const Trial *) g_ptr_array_index (trials, i))->mend.text, text))
      return TRUE;
  return FALSE;
}

static void
add_trial (const Judging *judging, GPtrArray *trials, Edit *edit, char *text, Length shift)
{
  Mend mend = { edit, text };
  Trial *trial;

  if (is_listed (trials, text))
    {
      mend_clear (&mend);
      return;
    }
  mend = mend_if_possible (judging, edit, text);
  if (mend.edit == NULL)
    return;
  trial = g_new0 (Trial, 1);
  trial->mend = mend;
  trial->shift = ABS (shift);
  g_ptr_array_add (trials, trial);
}

/* Sideways; to the right when positive. */
static void
add_move (const Judging *judging, GPtrArray *trials, const Opening *opening, Length right)
{
  char by[LENGTH_TEXT_SIZE];
  Opening moved = *opening; /* shallow; the edit copies it */
  char *text;

  if (right == 0)
    return;
  moved.x += right;
  length_text (ABS (right), by);
  text = right > 0 ? g_strdup_printf (_ ("Move %s %s mm right"), opening_called (opening), by)
                   : g_strdup_printf (_ ("Move %s %s mm left"), opening_called (opening), by);
  add_trial (judging, trials, edit_set_opening (&moved), text, right);
}

static void
add_sill (const Judging *judging, GPtrArray *trials, const Opening *opening, Length up)
{
  char by[LENGTH_TEXT_SIZE];
  Opening moved = *opening;
  char *text;

  moved.sill += up;
  moved.height -= up;
  length_text (ABS (up), by);
  text = up > 0 ? g_strdup_printf (_ ("Move sill of %s %s mm up"), opening_called (opening), by)
                : g_strdup_printf (_ ("Move sill of %s %s mm down"), opening_called (opening), by);
  add_trial (judging, trials, edit_set_opening (&moved), text, up);
}

static void
add_head (const Judging *judging, GPtrArray *trials, const Opening *opening, Length up)
{
  char by[LENGTH_TEXT_SIZE];
  Opening moved = *opening;
  char *text;

  moved.height += up;
  length_text (ABS (up), by);
  text = up > 0 ? g_strdup_printf (_ ("Move head of %s %s mm up"), opening_called (opening), by)
                : g_strdup_printf (_ ("Move head of %s %s mm down"), opening_called (opening), by);
  add_trial (judging, trials, edit_set_opening (&moved), text, up);
}

/* --- for breaches --- */

static gboolean
crosses (const Opening *opening, const Course *course)
{
  return opening->sill < course->top && opening_head (opening) > course->bottom;
}

/* A piece is short where two ends are too near: move the jamb beside it away, whole 5 mm. */
static void
add_for_short_piece (const Judging *judging, GPtrArray *trials, const Breach *breach)
{
  const Course *course = layout_course (judging->layout, (guint) breach->course - 1);
  Length step = LENGTH_MM (5);
  Length by = (breach->least - breach->is + step - 1) / step * step;

  for (guint i = 0; i < judging->wall->openings->len; i++)
    {
      const Opening *opening = wall_opening_at (judging->wall, i);

      if (!crosses (opening, course) || by > 2 * A_LITTLE)
        continue;
      if (opening->x >= breach->x && opening->x <= breach->x + judging->block->length)
        add_move (judging, trials, opening, by);
      if (opening_right (opening) <= breach->x
          && opening_right (opening) >= breach->x - judging->block->length)
        add_move (judging, trials, opening, -by);
    }
}

/* A strip under a sill or over a head: away with it, or thick enough. */
static void
add_for_strip (const Judging *judging, GPtrArray *trials, const Breach *breach)
{
  const Course *course = layout_course (judging->layout, (guint) breach->course - 1);
  Length more = breach->least - breach->is;

  for (guint i = 0; i < judging->wall->openings->len; i++)
    {
      const Opening *opening = wall_opening_at (judging->wall, i);
      Length sill = opening->sill, head = opening_head (opening);
      Length bed = gauge_bed (judging->wall, judging->block, &judging->laying, course->number);

      if (sill > course->bottom && sill < course->top)
        {
          if (sill - course->bottom + bed <= A_STRIP_MOVE && course->number > 1)
            add_sill (judging, trials, opening, course->bottom - bed - sill);
          add_sill (judging, trials, opening, more);
        }
      if (head > course->bottom && head < course->top)
        {
          if (course->top - head <= A_STRIP_MOVE)
            add_head (judging, trials, opening, course->top - head);
          add_head (judging, trials, opening, -more);
        }
    }
}

/* Two perpends too near: the openings beside them a little away from where they are. */
static void
add_for_lap (const Judging *judging, GPtrArray *trials, const Breach *breach)
{
  Length by = breach->least - breach->is;
  Length reach = 2 * judging->block->length;

  for (guint i = 0; i < judging->wall->openings->len; i++)
    {
      const Opening *opening = wall_opening_at (judging->wall, i);

      if (by > A_LITTLE || opening->x > breach->x + reach
          || opening_right (opening) < breach->x - reach)
        continue;
      add_move (judging, trials, opening, by);
      add_move (judging, trials, opening, -by);
    }
}

static void
add_for_breach (const Judging *judging, GPtrArray *trials, const Breach *breach)
{
  switch (breach->kind)
    {
    case BREACH_MIN_PIECE:
    case BREACH_MIN_RAKED:
      add_for_short_piece (judging, trials, breach);
      break;
    case BREACH_MIN_RIP:
      add_for_strip (judging, trials, breach);
      break;
    case BREACH_MIN_LAP:
    case BREACH_OF_RULE:
    default:
      add_for_lap (judging, trials, breach);
      break;
    }
}

/* --- for less cutting --- */

/* From `width` to the nearest width that whole and half blocks fill. */
static Length
to_half_blocks (const Judging *judging, Length width)
{
  Length head = judging->laying.head;
  Length half = (judging->block->length + head) / 2;
  Length n = MAX ((width + head + half / 2) / half, 1);

  return n * half - head - width;
}

/* The place from which the pier left of an opening begins, and to which the one right of it goes.
 */
static void
piers_beside (const Wall *wall, const Opening *opening, Length *from, Length *to)
{
  *from = 0;
  *to = wall->length;
  for (guint i = 0; i < wall->openings->len; i++)
    {
      const Opening *other = wall_opening_at (wall, i);

      if (opening_right (other) <= opening->x)
        *from = MAX (*from, opening_right (other));
      if (other->x >= opening_right (opening))
        *to = MIN (*to, other->x);
    }
}

static void
add_for_cuts (const Judging *judging, GPtrArray *trials)
{
  for (guint i = 0; i < judging->wall->openings->len; i++)
    {
      const Opening *opening = wall_opening_at (judging->wall, i);
      Length from, to, right, left;

      piers_beside (judging->wall, opening, &from, &to);
      right = to_half_blocks (judging, opening->x - from);
      left = -to_half_blocks (judging, to - opening_right (opening));
      if (ABS (right) <= A_LITTLE)
        add_move (judging, trials, opening, right);
      if (ABS (left) <= A_LITTLE)
        add_move (judging, trials, opening, left);
    }
}

GPtrArray *
trials_list (const Judging *judging)
{
  GPtrArray *trials = g_ptr_array_new_with_free_func (trial_free);
  const GArray *breaches = judging->layout->breaches;

  for (guint i = 0; i < breaches->len && trials->len < 12; i++)
    add_for_breach (judging, trials, &g_array_index (breaches, Breach, i));
  add_for_cuts (judging, trials);
  return trials;
}

void
trials_run (const Judging *judging, GPtrArray *trials)
{
  guint pieces = MAX (judging->layout->pieces->len, 20);

  for (guint i = 0; i < trials->len && (i + 1) * pieces <= WORK_PIECES; i++)
    {
      Trial *trial = g_ptr_array_index (trials, i);
      g_autoptr (Project) project = project_edit (judging->project, trial->mend.edit, NULL);

      trial->layout
          = lay_wall (project_wall (project, judging->wall->id), judging->block, judging->stop);
    }
}
