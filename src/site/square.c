/* square.c - corners of the set-out footing: out of square in millimetres, and 3-4-5 */
#include "site/square.h"

#include <glib/gi18n-lib.h>

gint64
whole_root (gint64 n)
{
  gint64 low = 0, high = MIN (n, 3037000499) + 1;

  /* low * low <= n < high * high */
  while (high - low > 1)
    {
      gint64 middle = low + (high - low) / 2;

      if (middle <= n / middle)
        low = middle;
      else
        high = middle;
    }
  /* Nearer to the next one when n >= (low + 1/2)^2, that is n > low^2 + low. */
  return n - low * low > low ? low + 1 : low;
}

gint64
whole_ratio (gint64 n, gint64 d)
{
  return n >= 0 ? (n + d / 2) / d : -((-n + d / 2) / d);
}

static gint64
squared (Length length)
{
  return (gint64) length * length;
}

Length
square_diagonal (Length first, Length second)
{
  return (Length) whole_root (squared (first) + squared (second));
}

gboolean
square_out (Length first, Length second, Length diagonal, Length over, Length *out)
{
  __int128 excess, twice, scaled;

  if (diagonal >= (gint64) first + second || diagonal <= ABS (first - second))
    return FALSE;
  excess = (__int128) squared (diagonal) - squared (first) - squared (second);
  twice = 2 * (__int128) first * second;
  scaled = excess * over;
  *out = (Length) ((scaled + (scaled >= 0 ? twice / 2 : -twice / 2)) / twice);
  return TRUE;
}

static Length
greatest_part (Length three, Length four, Length tape, Length step)
{
  Length part = MIN (MIN (three / 3, four / 4), tape / 5);

  return part / step * step;
}

Square345
square_345 (Length first, Length second, Length tape, Length step)
{
  Length upright = greatest_part (first, second, tape, step);
  Length turned = greatest_part (second, first, tape, step);

  if (upright >= turned)
    return (Square345){ 3 * upright, 4 * upright, 5 * upright };
  return (Square345){ 4 * turned, 3 * turned, 5 * turned };
}

#define STEP LENGTH_MM (100)

static SquareCheck
check_diagonal (const Project *project, guint i)
{
  const Diagonal *diagonal = survey_diagonal (project->survey, i);
  SquareCheck check = { .diagonal = i, .measured = diagonal->length };

  check.along = project_wall (project, diagonal->along);
  check.across = project_wall (project, diagonal->across);
  if (!check.along || !check.across)
    return check;
  check.first = diagonal->given & DIAGONAL_FIRST ? diagonal->first : check.along->length;
  check.second = diagonal->given & DIAGONAL_SECOND ? diagonal->second : check.across->length;
  check.expected = square_diagonal (check.first, check.second);
  check.possible = square_out (check.first, check.second, check.measured, check.along->length,
                               &check.off_along)
                   && square_out (check.first, check.second, check.measured, check.across->length,
                                  &check.off_across);
  check.within = check.possible
                 && MAX (ABS (check.off_along), ABS (check.off_across)) <= project->survey->square;
  check.check = square_345 (check.along->length, check.across->length, project->survey->tape, STEP);
  return check;
}

GArray *
square_checks (const Project *project)
{
  GArray *checks = g_array_new (FALSE, FALSE, sizeof (SquareCheck));

  for (guint i = 0; project->survey && i < project->survey->diagonals->len; i++)
    {
      SquareCheck check = check_diagonal (project, i);

      if (check.along && check.across)
        g_array_append_val (checks, check);
    }
  return checks;
}

char *
square_sentence (const Project *project, const SquareCheck *check)
{
  const char *name = survey_diagonal (project->survey, check->diagonal)->name;
  const char *along = wall_called (check->along), *across = wall_called (check->across);
  char measured[LENGTH_TEXT_SIZE], expected[LENGTH_TEXT_SIZE], first[LENGTH_TEXT_SIZE],
      second[LENGTH_TEXT_SIZE];
  g_autofree char *corner
      = *name ? g_strdup (name) : g_strdup_printf (_ ("%s and %s"), along, across);

  length_text (check->measured, measured);
  if (!check->possible)
    return g_strdup_printf (
        _ ("%s: legs of %s and %s mm cannot have their ends %s mm apart: measure again."), corner,
        length_text (check->first, first), length_text (check->second, second), measured);
  length_text (check->expected, expected);
  if (check->measured == check->expected)
    return g_strdup_printf (_ ("%s: square; the diagonal is %s mm."), corner, measured);
  length_text (ABS (check->off_along), first);
  length_text (ABS (check->off_across), second);
  return g_strdup_printf (
      check->measured > check->expected
          ? _ ("%s: the corner is open; the diagonal is %s mm, square is %s mm: out of square by "
               "%s mm over %s, or by %s mm over %s.")
          : _ ("%s: the corner is shut; the diagonal is %s mm, square is %s mm: out of square by "
               "%s mm over %s, or by %s mm over %s."),
      corner, measured, expected, first, along, second, across);
}
