/* check-rules.c - breaches of the optional rules, found from the wall and the pieces alone */
#include "check-rules.h"

typedef struct
{
  const Check *check;
  RuleKind kind;
  gint32 number; /* of the rule */
  GArray *found; /* Breach */
} Ask;

typedef void (*AskRow) (const Ask *ask, const Course *course, const Piece *piece,
                        const Piece *before);

static void
add (const Ask *ask, const Course *course, Length x, Length is, Length least)
{
  Breach breach = { BREACH_OF_RULE + (BreachKind) ask->kind, course->number, x, is, least };
  g_array_append_val (ask->found, breach);
}

/* Where the run of pieces that a piece is of begins and ends. */
static void
run_of (const Check *check, const Course *course, const Piece *piece, Length *from, Length *to)
{
  *from = piece->x;
  *to = piece->x + piece->length;
  for (gint32 i = 0; i < course->n_pieces; i++)
    {
      const Piece *other = layout_piece (check->layout, course->first + i);
      if (other->segment != piece->segment)
        continue;
      *from = MIN (*from, other->x);
      *to = MAX (*to, other->x + other->length);
    }
}

static Length
top_of (const Check *check, gint32 course)
{
  return MIN (check_bottom (check, course) + check->block->height, check->wall->height);
}

/* --- bearing: the last course to end at the head or below it, beside the opening --- */

static gboolean
bears (const Check *check, const Opening *opening, gint32 course)
{
  Length head = opening->sill + opening->height, top = top_of (check, course);
  gint32 n = (gint32) check->layout->courses->len;
  return top <= head && top > opening->sill && (course == n || top_of (check, course + 1) > head);
}

/* The joint before the piece must not touch the inside of from .. to; what it measures is how far
 * its piece reaches from the jamb. One breach a perpend, its least. */
static void
ask_bearing (const Ask *ask, const Course *course, const Piece *piece, const Piece *before)
{
  Length head = ask->check->laying.head, least = G_MAXINT32, from, to;
  if (before == NULL)
    return;
  run_of (ask->check, course, piece, &from, &to);
  for (guint i = 0; i < ask->check->wall->openings->len; i++)
    {
      const Opening *opening = wall_opening_at (ask->check->wall, i);
      Length left = opening->x, right = opening->x + opening->width;
      if (!bears (ask->check, opening, course->number))
        continue;
      if (left > from && left <= to && piece->x > left - ask->number && piece->x - head < left)
        least = MIN (least, ABS (left - piece->x));
      if (right >= from && right < to && piece->x - head < right + ask->number && piece->x > right)
        least = MIN (least, ABS (piece->x - head - right));
    }
  if (least < G_MAXINT32)
    add (ask, course, piece->x - head / 2, least, ask->number);
}

/* --- in line with a jamb: the first course with pieces over a head, the last one under a sill ---
 */

static gboolean
is_over (const Check *check, const Opening *opening, gint32 course)
{
  Length head = opening->sill + opening->height;
  return top_of (check, course) - head > CHECK_PACKING_MAX
         && (course == 1 || top_of (check, course - 1) - head <= CHECK_PACKING_MAX);
}

static gboolean
is_under (const Check *check, const Opening *opening, gint32 course)
{
  gint32 n = (gint32) check->layout->courses->len;
  return opening->sill - check_bottom (check, course) > CHECK_PACKING_MAX
         && (course == n || opening->sill - check_bottom (check, course + 1) <= CHECK_PACKING_MAX);
}

static void
ask_jamb_line (const Ask *ask, const Course *course, const Piece *piece, const Piece *before)
{
  Length perpend = piece->x - ask->check->laying.head / 2, least = G_MAXINT32, from, to;
  if (before == NULL)
    return;
  run_of (ask->check, course, piece, &from, &to);
  for (guint i = 0; i < ask->check->wall->openings->len; i++)
    {
      const Opening *opening = wall_opening_at (ask->check->wall, i);
      Length jambs[] = { opening->x, opening->x + opening->width };
      if (!is_over (ask->check, opening, course->number)
          && !is_under (ask->check, opening, course->number))
        continue;
      for (int side = 0; side < 2; side++)
        if (jambs[side] > from && jambs[side] < to)
          least = MIN (least, ABS (perpend - jambs[side]));
    }
  if (least < ask->number)
    add (ask, course, perpend, least, ask->number);
}

/* --- cut pieces at jambs and ends --- */

/* As a must, from half bond's half on a piece may stand there. */
static Length
may_stand (const Ask *ask)
{
  const Laying *laying = &ask->check->laying;
  Length unit = ask->check->block->length;
  return laying->rules[ask->kind].keep == KEEP_MUST ? (unit + laying->head) / 2 - laying->head
                                                    : unit;
}

static void
ask_jamb_cuts (const Ask *ask, const Course *course, const Piece *piece, const Piece *before)
{
  Length least = may_stand (ask), away = MAX (ask->number, 1), from, to;
  gboolean near = FALSE;
  (void) before;
  run_of (ask->check, course, piece, &from, &to);
  for (guint i = 0; i < ask->check->wall->openings->len; i++)
    {
      const Opening *opening = wall_opening_at (ask->check->wall, i);
      Length right = opening->x + opening->width;
      if (opening->sill >= course->top || opening->sill + opening->height <= course->bottom)
        continue;
      near |= opening->x == to && opening->x - (piece->x + piece->length) < away;
      near |= right == from && piece->x - right < away;
    }
  if (near && piece->length < least && to - from >= least)
    add (ask, course, piece->x, piece->length, least);
}

static void
ask_whole_ends (const Ask *ask, const Course *course, const Piece *piece, const Piece *before)
{
  const Wall *wall = ask->check->wall;
  Length least = may_stand (ask), head = ask->check->laying.head, from, to, at[2];
  (void) before;
  run_of (ask->check, course, piece, &from, &to);
  for (int side = 0; side < 2; side++)
    {
      const End *end = &wall->ends[side];
      at[side] = end_stops (end, course->number, course->bottom) ? end->ret + head : 0;
    }
  if ((piece->x == at[SIDE_LEFT] || piece->x + piece->length == wall->length - at[SIDE_RIGHT])
      && piece->length < least && to - from >= least)
    add (ask, course, piece->x, piece->length, least);
}

/* --- few lengths of cut pieces: those of most pieces stay, then the longer --- */

static gint32
count_pieces (const Check *check, Length length)
{
  gint32 n = 0;
  for (guint i = 0; i < check->layout->pieces->len; i++)
    n += layout_piece (check->layout, i)->length == length;
  return n;
}

static gboolean
comes_before (const Check *check, Length a, Length b)
{
  gint32 n = count_pieces (check, a), m = count_pieces (check, b);
  return n > m || (n == m && a > b);
}

static void
find_lengths (const Ask *ask)
{
  g_autoptr (GArray) firsts = g_array_new (FALSE, FALSE, sizeof (const Piece *));
  for (guint i = 0; i < ask->check->layout->pieces->len; i++)
    {
      const Piece *piece = layout_piece (ask->check->layout, i);
      gboolean known = piece->length >= ask->check->block->length;
      for (guint k = 0; k < firsts->len && !known; k++)
        known = g_array_index (firsts, const Piece *, k)->length == piece->length;
      if (!known)
        g_array_append_val (firsts, piece);
    }
  for (guint i = 0; i < firsts->len; i++)
    {
      const Piece *piece = g_array_index (firsts, const Piece *, i);
      gint32 before = 0;
      for (guint k = 0; k < firsts->len; k++)
        before += comes_before (ask->check, g_array_index (firsts, const Piece *, k)->length,
                                piece->length);
      if (before >= ask->number)
        add (ask, layout_course (ask->check->layout, (guint) piece->course - 1), piece->x,
             piece->length, ask->number);
    }
}

/* --- symmetry: the joint before a piece, put across the axis, should be a joint there --- */

#define SAME_PLACE LENGTH_MM (1)

/* A run and where it is at the lowest and the highest. */
typedef struct
{
  gint32 segment;
  Length from, to, low, high;
} Run;

static GArray *
find_runs (const Check *check, const Course *course)
{
  GArray *runs = g_array_new (FALSE, FALSE, sizeof (Run));
  for (gint32 i = 0; i < course->n_pieces; i++)
    {
      const Piece *piece = layout_piece (check->layout, course->first + i);
      Run run = { piece->segment, 0, 0, piece->bottom, piece->bottom + piece->height };
      guint at = 0;
      run_of (check, course, piece, &run.from, &run.to);
      while (at < runs->len && g_array_index (runs, Run, at).segment != run.segment)
        at++;
      if (at == runs->len)
        g_array_append_val (runs, run);
      Run *known = &g_array_index (runs, Run, at);
      known->low = MIN (known->low, run.low);
      known->high = MAX (known->high, run.high);
    }
  return runs;
}

/* Whether a joint that ends at `face` would have more than the tolerance of a run on both sides. */
static gboolean
has_inside (const Check *check, const Run *run, Length face)
{
  return face - check->laying.head - run->from > SAME_PLACE && run->to - face > SAME_PLACE;
}

/* How many of the runs that are there lie lower than this one. */
static int
runs_below (const Check *check, const GArray *runs, const Run *run, Length face)
{
  int n = 0;
  for (guint i = 0; i < runs->len; i++)
    {
      const Run *other = &g_array_index (runs, Run, i);
      n += (gint64) other->low + other->high < (gint64) run->low + run->high
           && has_inside (check, other, face);
    }
  return n;
}

/* How far the joints of a run, or its ends, keep from a place at the least. */
static Length
least_off (const Check *check, const Course *course, const Run *run, Length place)
{
  Length off = MIN (ABS (place - run->from), ABS (run->to + check->laying.head - place));
  for (gint32 i = 0; i < course->n_pieces; i++)
    {
      const Piece *piece = layout_piece (check->layout, course->first + i);
      if (piece->segment == run->segment && piece->x > run->from)
        off = MIN (off, ABS (piece->x - place));
    }
  return off;
}

/* Across an axis, given doubled: -1 where no wall is to be. */
static Length
off_across (const Check *check, const Course *course, const Piece *piece, Length doubled,
            Length *place)
{
  g_autoptr (GArray) runs = find_runs (check, course);
  const Run *own = NULL;
  Length off = -1;
  *place = doubled - (piece->x - check->laying.head);
  for (guint i = 0; i < runs->len; i++)
    if (g_array_index (runs, Run, i).segment == piece->segment)
      own = &g_array_index (runs, Run, i);
  for (guint i = 0; i < runs->len; i++)
    {
      const Run *run = &g_array_index (runs, Run, i);
      if (!has_inside (check, run, *place)
          || runs_below (check, runs, run, *place) != runs_below (check, runs, own, piece->x))
        continue;
      Length is = least_off (check, course, run, *place);
      off = off < 0 ? is : MIN (off, is);
    }
  return off;
}

static void
ask_symmetry_wall (const Ask *ask, const Course *course, const Piece *piece, const Piece *before)
{
  Length head = ask->check->laying.head, place;
  if (before == NULL)
    return;
  Length off = off_across (ask->check, course, piece, ask->check->wall->length, &place);
  if (off > SAME_PLACE)
    add (ask, course, piece->x - head / 2, off, place - head / 2);
}

/* From the last course under the sill to the first over the head, as far as the rule reaches. */
static gboolean
is_about (const Check *check, const Opening *opening, const Course *course)
{
  Length head = opening->sill + opening->height;
  gboolean under = course->number < (gint32) check->layout->courses->len
                   && opening->sill - check_bottom (check, course->number + 1) > CHECK_PACKING_MAX;
  gboolean over
      = course->number > 1 && top_of (check, course->number - 1) - head > CHECK_PACKING_MAX;
  return !under && !over;
}

static void
ask_symmetry_openings (const Ask *ask, const Course *course, const Piece *piece,
                       const Piece *before)
{
  Length head = ask->check->laying.head, least = -1, least_place = 0;
  for (guint i = 0; before != NULL && i < ask->check->wall->openings->len; i++)
    {
      const Opening *opening = wall_opening_at (ask->check->wall, i);
      Length left = opening->x, right = opening->x + opening->width, place;
      if (!is_about (ask->check, opening, course) || piece->x - head < left - ask->number
          || piece->x > right + ask->number)
        continue;
      Length off = off_across (ask->check, course, piece, left + right, &place);
      if (off <= SAME_PLACE || (least >= 0 && off >= least))
        continue;
      least = off;
      least_place = place;
    }
  if (least >= 0)
    add (ask, course, piece->x - head / 2, least, least_place - head / 2);
}

/* --- all of them --- */

static const AskRow rows[N_RULES] = {
  [RULE_BEARING] = ask_bearing,
  [RULE_JAMB_LINE] = ask_jamb_line,
  [RULE_JAMB_CUTS] = ask_jamb_cuts,
  [RULE_WHOLE_ENDS] = ask_whole_ends,
  [RULE_SYMMETRY_WALL] = ask_symmetry_wall,
  [RULE_SYMMETRY_OPENINGS] = ask_symmetry_openings,
};

static void
find (const Check *check, RuleKind kind, GArray *found)
{
  Ask ask = { check, kind, check->laying.rules[kind].value, found };
  if (kind == RULE_LENGTHS)
    find_lengths (&ask);
  for (guint c = 0; c < check->layout->courses->len; c++)
    {
      const Course *course = layout_course (check->layout, c);
      for (gint32 i = 0; rows[kind] != NULL && i < course->n_pieces; i++)
        {
          const Piece *piece = layout_piece (check->layout, course->first + i);
          rows[kind](&ask, course, piece, check_piece_before (check, course, piece));
        }
    }
}

void
check_find_rule_breaches (const Check *check, GArray *breaches)
{
  for (RuleKind kind = 0; kind < N_RULES; kind++)
    if (check->laying.rules[kind].keep == KEEP_MUST)
      find (check, kind, breaches);
}

gint32
check_count_broken (const Check *check, RuleKind kind)
{
  g_autoptr (GArray) found = g_array_new (FALSE, FALSE, sizeof (Breach));
  find (check, kind, found);
  return (gint32) found->len;
}
