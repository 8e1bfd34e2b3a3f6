/* ends.c - findings of the pieces that end a wall: too short to bear
 *
 * Said only where shorter pieces are allowed: else each of them breaks that rule, and is told. */
#include <glib/gi18n-lib.h>

#include "advice/judging.h"
#include "bond/lay.h"

/* DIN 1053-1, 9.3, read in a trade association's text: a piece at a wall's end bears on so much of
 * its length. */
#define BEARS_ON LENGTH_MM (115)

typedef struct
{
  guint n;
  const Piece *shortest;
} ShortEnds;

/* Beside the wall's end, or the other wall of a corner there. */
static gboolean
is_at_end (const Judging *judging, const Piece *piece)
{
  const Wall *wall = judging->wall;
  const Length head = judging->laying.head;

  return piece->x <= wall->ends[SIDE_LEFT].ret + head
         || piece->x + piece->length >= wall->length - wall->ends[SIDE_RIGHT].ret - head;
}

static ShortEnds
short_ends_of (const Judging *judging, const Layout *layout)
{
  ShortEnds ends = { 0, NULL };

  for (guint i = 0; i < layout->pieces->len; i++)
    {
      const Piece *piece = layout_piece (layout, i);

      if (piece->length >= BEARS_ON || !is_at_end (judging, piece))
        continue;
      if (ends.shortest == NULL || piece->length < ends.shortest->length)
        ends.shortest = piece;
      ends.n++;
    }
  return ends;
}

/* A longer shortest piece, where the wall laid so has no more breaches, and none of these. */
static Mend
mend_ends (const Judging *judging)
{
  g_autoptr (Wall) wall = wall_copy (judging->wall);
  g_autoptr (Layout) layout = NULL;
  char least[LENGTH_TEXT_SIZE];

  wall->laying.min_piece = BEARS_ON;
  wall->laying.given |= LAYING_MIN_PIECE;
  wall->laying.element = TRUE;
  layout = lay_wall (wall, judging->block, judging->stop);
  if (layout == NULL || layout->breaches->len > judging->layout->breaches->len
      || short_ends_of (judging, layout).n > 0)
    return MEND_NONE;
  return mend_if_possible (
      judging, edit_set_wall (wall),
      g_strdup_printf (_ ("Make the shortest piece %s mm"), length_text (BEARS_ON, least)));
}

void
judge_ends (Judging *judging)
{
  ShortEnds ends;
  char is[LENGTH_TEXT_SIZE];
  Finding *finding;

  if (judging->laying.min_piece >= BEARS_ON)
    return;
  ends = short_ends_of (judging, judging->layout);
  if (ends.n == 0)
    return;
  finding = judging_add (
      judging, "end-piece", SEVERITY_NOTE,
      g_strdup_printf (
          g_dngettext (
              NULL,
              "%u piece at the wall's ends is shorter than 115 mm, which it is to bear on "
              "(DIN 1053-1, 9.3): %s mm. In a wall that bears load check with a licensed "
              "engineer.",
              "%u pieces at the wall's ends are shorter than 115 mm, which they are to "
              "bear on (DIN 1053-1, 9.3); the shortest is %s mm. In a wall that bears load "
              "check with a licensed engineer.",
              ends.n),
          ends.n, length_text (ends.shortest->length, is)),
      mend_ends (judging));
  finding->course = ends.shortest->course;
  finding->x = ends.shortest->x;
}
