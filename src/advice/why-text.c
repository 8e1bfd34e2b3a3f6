/* why-text.c - a piece and its cause in words, translated */
#include <glib/gi18n-lib.h>

#include "advice/judging.h"
#include "advice/why.h"
#include "bond/rake.h"
#include "bond/segment.h"
#include "takeoff/takeoff.h"

static const char *
shape_called (PieceShape shape)
{
  switch (shape)
    {
    case PIECE_SHORT:
      return _ ("shortened block");
    case PIECE_RIPPED:
      return _ ("ripped block");
    case PIECE_NOTCHED:
      return _ ("notched block");
    case PIECE_RAKED:
      return _ ("raked block");
    case PIECE_WHOLE:
    default:
      return _ ("whole block");
    }
}

char *
why_dup_is (const Block *block, const Layout *layout, guint i)
{
  const Piece *piece = layout_piece (layout, i);
  char length[LENGTH_TEXT_SIZE], height[LENGTH_TEXT_SIZE];

  return g_strdup_printf (_ ("Course %d, piece %d: %s, %s × %s mm, %.1f kg"), piece->course,
                          piece->number, shape_called (piece->shape),
                          length_text (piece->length, length), length_text (piece->height, height),
                          takeoff_piece_mass (layout, piece, block));
}

/* --- laps --- */

static void
append_laps (GString *text, const char *perpend, const WhyLaps *laps)
{
  char below[LENGTH_TEXT_SIZE], above[LENGTH_TEXT_SIZE];

  if (laps->below < 0 && laps->above < 0)
    return;
  if (text->len > 0)
    g_string_append (text, "; ");
  length_text (laps->below, below);
  length_text (laps->above, above);
  if (laps->above < 0)
    g_string_append_printf (text, _ ("%s laps %s mm below"), perpend, below);
  else if (laps->below < 0)
    g_string_append_printf (text, _ ("%s laps %s mm above"), perpend, above);
  else
    g_string_append_printf (text, _ ("%s laps %s mm below, %s mm above"), perpend, below, above);
}

char *
why_dup_laps (const Why *why)
{
  g_autoptr (GString) text = g_string_new (NULL);

  append_laps (text, _ ("Left perpend"), &why->left);
  append_laps (text, text->len > 0 ? _ ("right perpend") : _ ("Right perpend"), &why->right);
  return text->len > 0 ? g_strdup (text->str) : NULL;
}

/* --- openings --- */

/* One that lies over the piece's box and is a jamb, sill or head of it, as `fits` says. */
static const Opening *
opening_where (const Wall *wall, const Piece *box,
               gboolean (*fits) (const Opening *opening, const Piece *box))
{
  for (guint i = 0; i < wall->openings->len; i++)
    if (fits (wall_opening_at (wall, i), box))
      return wall_opening_at (wall, i);
  return NULL;
}

static gboolean
is_over_length (const Opening *opening, const Piece *box)
{
  return opening->x < box->x + box->length && opening_right (opening) > box->x;
}

static gboolean
is_over_height (const Opening *opening, const Piece *box)
{
  return opening->sill < box->bottom + box->height && opening_head (opening) > box->bottom;
}

static gboolean
is_right_above (const Opening *opening, const Piece *box)
{
  return is_over_length (opening, box) && opening->sill == box->bottom + box->height;
}

static gboolean
is_right_below (const Opening *opening, const Piece *box)
{
  return is_over_length (opening, box) && opening_head (opening) == box->bottom;
}

static gboolean
is_within (const Opening *opening, const Piece *box)
{
  return is_over_length (opening, box) && is_over_height (opening, box);
}

static gboolean
ends_at (const Opening *opening, const Piece *box)
{
  return is_over_height (opening, box) && opening_right (opening) == box->x;
}

static gboolean
begins_at (const Opening *opening, const Piece *box)
{
  return is_over_height (opening, box) && opening->x == box->x + box->length;
}

/* --- the run's ends --- */

static gboolean
is_pin_at (const Layout *layout, gint32 course, Length x)
{
  for (guint i = 0; i < layout->pins->len; i++)
    {
      const LaidPin *pin = &g_array_index (layout->pins, LaidPin, i);

      if (pin->fate == PIN_MET && pin->course == course
          && (pin->x == x || pin->x + pin->length == x))
        return TRUE;
    }
  return FALSE;
}

/* What the run ends at, of the box of it: an opening, the wall's end, a pin, or only a place. */
static char *
dup_end (const Wall *wall, const Block *block, const Layout *layout, const Piece *box, Side side)
{
  const Laying laying = laying_resolve (&wall->laying, block);
  const Length x = side == SIDE_LEFT ? box->x : box->x + box->length;
  const Opening *opening = opening_where (wall, box, side == SIDE_LEFT ? ends_at : begins_at);
  Length ends[2];
  char place[LENGTH_TEXT_SIZE];

  if (opening != NULL)
    return g_strdup (opening_called (opening));
  course_ends (wall, &laying, box->course, layout_course (layout, (guint) box->course - 1)->bottom,
               &ends[SIDE_LEFT], &ends[SIDE_RIGHT]);
  if (x == ends[side] && wall->ends[side].ret > 0)
    return g_strdup (side == SIDE_LEFT ? _ ("the left corner") : _ ("the right corner"));
  if (x == ends[side])
    return g_strdup (side == SIDE_LEFT ? _ ("the left end") : _ ("the right end"));
  length_text (x, place);
  if (is_pin_at (layout, box->course, side == SIDE_LEFT ? x : x + laying.head)
      || is_pin_at (layout, box->course, x))
    return g_strdup_printf (_ ("the pin at %s mm"), place);
  return g_strdup_printf (_ ("%s mm"), place);
}

/* "The pier between W1 and D1 is 812 mm" */
static char *
dup_run (const Why *why, const Wall *wall, const Block *block, const Layout *layout,
         const Piece *piece)
{
  Piece box = *piece;
  g_autofree char *left = NULL, *right = NULL;
  char length[LENGTH_TEXT_SIZE];

  box.x = why->run.from;
  box.length = why->run.to - why->run.from;
  left = dup_end (wall, block, layout, &box, SIDE_LEFT);
  right = dup_end (wall, block, layout, &box, SIDE_RIGHT);
  length_text (box.length, length);
  if (opening_where (wall, &box, ends_at) != NULL && opening_where (wall, &box, begins_at) != NULL)
    return g_strdup_printf (_ ("The pier between %s and %s is %s mm"), left, right, length);
  return g_strdup_printf (_ ("The course between %s and %s is %s mm"), left, right, length);
}

/* --- one sentence --- */

static char *
words_of_length (const Why *why, const Block *block, const char *run, const Laying *laying)
{
  const gint32 n = why->run.cuts < why->run.least ? why->run.by_length : why->run.least;
  char unit[LENGTH_TEXT_SIZE], least[LENGTH_TEXT_SIZE];

  length_text (block->length, unit);
  length_text (laying->min_piece, least);
  if (n > 1)
    return g_strdup_printf (
        ngettext ("%s: with blocks of %s mm, and no piece shorter than %s mm, at least %d cut in "
                  "every course so long is unavoidable.",
                  "%s: with blocks of %s mm, and no piece shorter than %s mm, at least %d cuts in "
                  "every course so long are unavoidable.",
                  (gulong) n),
        run, unit, least, n);
  return g_strdup_printf (_ ("%s: with blocks of %s mm at least one cut in every course so long is "
                             "unavoidable."),
                          run, unit);
}

static char *
words_of_laps (const Why *why, const char *run, const Laying *laying)
{
  char lap[LENGTH_TEXT_SIZE];

  length_text (laying->min_lap, lap);
  if (why->run.least == 0)
    return g_strdup_printf (_ ("%s and could be whole blocks, but then a perpend would be less "
                               "than %s mm from one in the course below or above."),
                            run, lap);
  return g_strdup_printf (
      _ ("%s and could do with one cut, but wherever that were, a perpend would "
         "be less than %s mm from one in the course below or above."),
      run, lap);
}

static char *
words_of_bond (const Why *why, const char *run)
{
  const gint32 n = why->run.least;

  if (n == 0)
    return g_strdup_printf (
        _ ("%s and by itself needs no cut; it is cut for the bond of the whole wall."), run);
  return g_strdup_printf (
      ngettext ("%s and by itself needs at least %d cut; it has %d for the bond of the whole wall.",
                "%s and by itself needs at least %d cuts; it has %d for the bond of the whole "
                "wall.",
                (gulong) n),
      run, n, why->run.cuts);
}

/* No opening takes the room: a step of the footing or of the top does. */
static char *
words_of_step (const Wall *wall, const Layout *layout, const Piece *piece, const char *is,
               const char *unit)
{
  const Course *course = layout_course (layout, (guint) piece->course - 1);

  if (piece->bottom > course->bottom && wall->feet->len > 0)
    return g_strdup_printf (_ ("On the step of the footing there is room for %s mm of the block's "
                               "%s mm."),
                            is, unit);
  if (wall->tops->len > 0)
    return g_strdup_printf (
        _ ("Under the top, which is lower there, there is room for %s mm of the "
           "block's %s mm."),
        is, unit);
  return g_strdup_printf (_ ("There is room for %s mm of the block's %s mm."), is, unit);
}

static char *
words_of_strip (const Wall *wall, const Block *block, const Layout *layout, const Piece *piece)
{
  const Opening *above = opening_where (wall, piece, is_right_above);
  const Opening *below = opening_where (wall, piece, is_right_below);
  char is[LENGTH_TEXT_SIZE], unit[LENGTH_TEXT_SIZE];

  length_text (piece->height, is);
  length_text (block->height, unit);
  if (above != NULL && below != NULL)
    return g_strdup_printf (_ ("Between the head of %s and the sill of %s there is room for %s mm "
                               "of the block's %s mm."),
                            opening_called (below), opening_called (above), is, unit);
  if (above != NULL)
    return g_strdup_printf (
        _ ("Under the sill of %s there is room for %s mm of the block's %s mm."),
        opening_called (above), is, unit);
  if (below != NULL)
    return g_strdup_printf (_ ("Over the head of %s there is room for %s mm of the block's %s mm."),
                            opening_called (below), is, unit);
  return words_of_step (wall, layout, piece, is, unit);
}

/* All that it takes to mark it out and to saw it. */
static char *
words_of_rake (const Layout *layout, const Piece *piece)
{
  char bottom[LENGTH_TEXT_SIZE], top[LENGTH_TEXT_SIZE];
  char left[LENGTH_TEXT_SIZE], right[LENGTH_TEXT_SIZE];
  Rake rake;

  if (!piece_rake (layout, piece, &rake))
    return g_strdup (_ ("The top of the wall slopes through it."));
  return g_strdup_printf (_ ("The top of the wall slopes through it: the cut is at %.1f° to the "
                             "level, %.1f mm up in 100 mm. It is %s mm long along the bottom and "
                             "%s along the top, %s mm high at the left and %s at the right."),
                          rake_angle (&rake), rake_rise (&rake), length_text (rake.bottom, bottom),
                          length_text (rake.top, top), length_text (rake.left, left),
                          length_text (rake.right, right));
}

static char *
words_of_notch (const Wall *wall, const Piece *piece)
{
  const Opening *opening = opening_where (wall, piece, is_within);

  if (opening == NULL && wall->tops->len + wall->feet->len > 0)
    return g_strdup (_ ("It goes round a step of the top or of the footing."));
  if (opening == NULL)
    return g_strdup (_ ("It goes round an opening."));
  if (opening->sill > piece->bottom && opening_head (opening) >= piece->bottom + piece->height)
    return g_strdup_printf (_ ("It goes round the sill of %s."), opening_called (opening));
  if (opening->sill <= piece->bottom)
    return g_strdup_printf (_ ("It goes round the head of %s."), opening_called (opening));
  return g_strdup_printf (_ ("It goes round %s."), opening_called (opening));
}

static char *
words_of_top (const Block *block, const Layout *layout, const Piece *piece)
{
  const Course *course = layout_course (layout, (guint) piece->course - 1);
  char is[LENGTH_TEXT_SIZE], unit[LENGTH_TEXT_SIZE];

  return g_strdup_printf (_ ("The top course is %s mm high, a block %s mm: every piece in it is "
                             "ripped."),
                          length_text (course->top - course->bottom, is),
                          length_text (block->height, unit));
}

char *
why_dup_reason (const Why *why, const Wall *wall, const Block *block, const Layout *layout, guint i)
{
  const Laying laying = laying_resolve (&wall->laying, block);
  const Piece *piece = layout_piece (layout, i);
  g_autofree char *run = dup_run (why, wall, block, layout, piece);

  switch (why->cause)
    {
    case WHY_PINNED:
      return g_strdup (_ ("Its length was set by hand: it is pinned."));
    case WHY_TOP:
      return words_of_top (block, layout, piece);
    case WHY_STRIP:
      return words_of_strip (wall, block, layout, piece);
    case WHY_RAKED:
      return words_of_rake (layout, piece);
    case WHY_NOTCH:
      return words_of_notch (wall, piece);
    case WHY_LENGTH:
      return words_of_length (why, block, run, &laying);
    case WHY_LAPS:
      return words_of_laps (why, run, &laying);
    case WHY_BOND:
      return words_of_bond (why, run);
    case WHY_WHOLE:
    default:
      return g_strdup (_ ("It is not cut."));
    }
}
