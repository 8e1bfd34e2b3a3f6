/* why.c - why a piece is cut, from the layout that it is in */
#include "advice/why.h"

/* --- the run --- */

static gboolean
is_beside (const Piece *a, const Piece *b)
{
  return a->course == b->course && a->segment == b->segment;
}

/* The piece of the same segment that comes before (-1) or after it (1); -1: none. */
static gint
neighbour (const Layout *layout, guint i, int step)
{
  const Piece *piece = layout_piece (layout, i);

  for (gint k = (gint) i + step; k >= 0 && k < (gint) layout->pieces->len; k += step)
    {
      const Piece *other = layout_piece (layout, (guint) k);

      if (other->course != piece->course)
        return -1;
      if (is_beside (piece, other))
        return k;
    }
  return -1;
}

/* Whether the perpend between a piece and the next one of its segment is set by hand. */
static gboolean
is_pinned_between (const Layout *layout, guint left, guint right)
{
  return layout_piece (layout, left)->pinned == PINNED_PIECE
         || layout_piece (layout, right)->pinned != PINNED_NOT;
}

static guint
first_of_run (const Layout *layout, guint i)
{
  for (gint k; (k = neighbour (layout, i, -1)) >= 0; i = (guint) k)
    if (is_pinned_between (layout, (guint) k, i))
      break;
  return i;
}

/* The fewest pieces shorter than a unit in a run of `length`: with k of them among the fewest
 * pieces that there can be, they are (k - 1) units and the rest long together, and each has the
 * least length. More pieces have more joints, and leave less for the cut ones. */
static gint32
least_cuts (Length length, const Block *block, const Laying *laying, gint32 *by_length)
{
  const gint64 pitch = block->length + laying->head;
  const gint64 n = (length + laying->head + pitch - 1) / pitch;
  const gint64 rest = length - (n - 1) * pitch;

  *by_length = rest != block->length;
  if (rest == block->length)
    return 0;
  for (gint64 k = 1; k <= n; k++)
    if (k * laying->min_piece <= (k - 1) * block->length + rest)
      return (gint32) k;
  return 1; /* not without a breach */
}

static WhyRun
run_of (const Block *block, const Laying *laying, const Layout *layout, guint i)
{
  guint k = first_of_run (layout, i);
  WhyRun run = { .from = layout_piece (layout, k)->x, .plain = TRUE };

  for (gint next; TRUE; k = (guint) next)
    {
      const Piece *piece = layout_piece (layout, k);

      run.n++;
      run.cuts += piece->length < block->length;
      run.plain = run.plain && piece->outline < 0 && piece->height == block->height;
      run.to = piece->x + piece->length;
      next = neighbour (layout, k, 1);
      if (next < 0 || is_pinned_between (layout, k, (guint) next))
        break;
    }
  run.least = least_cuts (run.to - run.from, block, laying, &run.by_length);
  return run;
}

/* --- laps --- */

/* To the nearest perpend of a course; -1: none within a block and its joint. */
static Length
lap_in (const Layout *layout, gint32 course, Length face, Length far)
{
  Length best = -1;
  const Course *in;

  if (course < 1 || course > (gint32) layout->courses->len)
    return -1;
  in = layout_course (layout, (guint) course - 1);
  for (gint32 k = in->first; k < in->first + in->n_pieces; k++)
    {
      const Length lap = ABS (layout_piece (layout, (guint) k)->x - face);

      if (lap <= far && (best < 0 || lap < best) && neighbour (layout, (guint) k, -1) >= 0)
        best = lap;
    }
  return best;
}

static WhyLaps
laps_of (const Layout *layout, const Piece *piece, Length far)
{
  return (WhyLaps){ lap_in (layout, piece->course - 1, piece->x, far),
                    lap_in (layout, piece->course + 1, piece->x, far) };
}

static gboolean
is_too_near (const Layout *layout, gint32 course, Length face, Length min_lap)
{
  return lap_in (layout, course - 1, face, min_lap - 1) >= 0
         || lap_in (layout, course + 1, face, min_lap - 1) >= 0;
}

/* The run in whole units with its `rest` in place `cut`: whether a perpend is too near another. */
static gboolean
collides (const Layout *layout, const WhyRun *run, gint32 course, const Block *block,
          const Laying *laying, gint32 n, gint32 cut)
{
  const Length pitch = block->length + laying->head;
  const Length rest = run->to - run->from - (n - 1) * pitch;
  Length x = run->from;

  for (gint32 k = 0; k + 1 < n; k++)
    {
      x += k == cut ? rest + laying->head : pitch;
      if (is_too_near (layout, course, x, laying->min_lap))
        return TRUE;
    }
  return FALSE;
}

/* Whether every way to lay the run with its fewest cuts, none or one, comes too near a perpend of
 * the courses below and above as they lie. */
static gboolean
is_kept_by_laps (const Layout *layout, const WhyRun *run, gint32 course, const Block *block,
                 const Laying *laying)
{
  const Length pitch = block->length + laying->head;
  const gint32 n = (run->to - run->from + laying->head + pitch - 1) / pitch;

  if (!run->plain || run->least > 1)
    return FALSE;
  for (gint32 cut = 0; cut < (run->least == 1 ? n : 1); cut++)
    if (!collides (layout, run, course, block, laying, n, cut))
      return FALSE;
  return TRUE;
}

/* --- the cause --- */

static WhyCause
cause_of (const Block *block, const Laying *laying, const Layout *layout, const Piece *piece,
          const WhyRun *run)
{
  const Course *course = layout_course (layout, (guint) piece->course - 1);

  if (piece->shape == PIECE_WHOLE)
    return WHY_WHOLE;
  if (piece->shape == PIECE_RAKED)
    return WHY_RAKED;
  if (piece->outline >= 0)
    return WHY_NOTCH;
  if (piece->height < course->top - course->bottom)
    return WHY_STRIP;
  if (piece->height < block->height)
    return WHY_TOP;
  if (piece->pinned == PINNED_PIECE)
    return WHY_PINNED;
  if (run->cuts <= run->least || run->cuts <= run->by_length)
    return WHY_LENGTH;
  return is_kept_by_laps (layout, run, piece->course, block, laying) ? WHY_LAPS : WHY_BOND;
}

Why
why_piece (const Wall *wall, const Block *block, const Layout *layout, guint i)
{
  const Laying laying = laying_resolve (&wall->laying, block);
  const Piece *piece = layout_piece (layout, i);
  const Length far = block->length + laying.head;
  const gint next = neighbour (layout, i, 1);
  Why why = { .run = run_of (block, &laying, layout, i), .left = { -1, -1 }, .right = { -1, -1 } };

  if (neighbour (layout, i, -1) >= 0)
    why.left = laps_of (layout, piece, far);
  if (next >= 0)
    why.right = laps_of (layout, layout_piece (layout, (guint) next), far);
  why.cause = cause_of (block, &laying, layout, piece, &why.run);
  return why;
}
