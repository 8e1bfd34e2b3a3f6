/* footing.c - findings of the surveyed footing: what does not close, beds beyond their limits,
 * corners out of square */
#include <glib/gi18n-lib.h>

#include "advice/judging.h"
#include "site/square.h"

/* What is of the whole book is told with one wall: the first that was surveyed, else the first of
 * all. */
static gboolean
speaks_for_the_book (const Judging *judging)
{
  const Project *project = judging->whole;

  for (guint i = 0; i < project->walls->len; i++)
    if (survey_names_wall (project->survey, project_wall_at (project, i)->id))
      return project_wall_at (project, i)->id.n == judging->wall->id.n;
  return project_wall_at (project, 0)->id.n == judging->wall->id.n;
}

static void
judge_book (Judging *judging)
{
  const LevelBook *book = judging->book;

  for (guint i = 0; i < book->faults->len; i++)
    judging_add (
        judging, "level-book", SEVERITY_WARNING,
        g_strdup_printf (_ ("Level book: %s"), g_array_index (book->faults, LevelFault, i).text),
        MEND_NONE);
  for (guint i = 0; i < book->closings->len; i++)
    {
      const LevelClosing *closing = &g_array_index (book->closings, LevelClosing, i);
      g_autofree char *sentence = NULL;

      if (closing->within)
        continue;
      sentence = level_closing_sentence (judging->whole->survey, closing);
      judging_add (judging, "closing-error", SEVERITY_WARNING,
                   g_strdup_printf (_ ("Level book: %s Read again before anything is laid by it."),
                                    sentence),
                   MEND_NONE);
    }
}

static void
judge_bed (Judging *judging, const BedWall *wall)
{
  const Beds *beds = judging->beds;

  for (guint i = 0; i < wall->works->len; i++)
    {
      const BedWork *work = &g_array_index (wall->works, BedWork, i);
      char from[LENGTH_TEXT_SIZE], to[LENGTH_TEXT_SIZE], bed[LENGTH_TEXT_SIZE],
          limit[LENGTH_TEXT_SIZE], amount[LENGTH_TEXT_SIZE], at[LENGTH_TEXT_SIZE];
      Finding *finding;

      length_text (work->from, from);
      length_text (work->to, to);
      length_text (beds_thickness (beds, wall, work->at), bed);
      length_text (work->grind ? beds->least : beds->most, limit);
      length_text (work->amount, amount);
      length_text (work->at, at);
      finding = judging_add (
          judging, work->grind ? "bed-thin" : "bed-thick", SEVERITY_WARNING,
          g_strdup_printf (
              work->grind
                  ? _ ("From %s to %s mm the levelling bed is too thin: %s mm at %s mm, at least "
                       "%s mm are wanted. Grind the footing down by %s mm there.")
                  : _ ("From %s to %s mm the levelling bed is too thick: %s mm at %s mm, at most "
                       "%s mm are wanted. Build the footing up by %s mm there."),
              from, to, bed, at, limit, amount),
          MEND_NONE);
      finding->course = 1;
      finding->x = work->at;
    }
}

/* A corner is told with the wall that its diagonal is along. */
static void
judge_square (Judging *judging)
{
  for (guint i = 0; i < judging->squares->len; i++)
    {
      const SquareCheck *check = &g_array_index (judging->squares, SquareCheck, i);

      if (!check->within && check->along->id.n == judging->wall->id.n)
        judging_add (judging, "out-of-square", SEVERITY_NOTE,
                     square_sentence (judging->whole, check), MEND_NONE);
    }
}

void
judge_footing (Judging *judging)
{
  const BedWall *wall;

  if (judging->book == NULL)
    return;
  wall = beds_wall (judging->beds, judging->wall->id);
  if (speaks_for_the_book (judging))
    judge_book (judging);
  if (wall)
    judge_bed (judging, wall);
  judge_square (judging);
}
