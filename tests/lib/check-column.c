/* check-column.c - what stands in a strip of a course between two verticals, checked */
#include "check-column.h"

#include "check-built.h"
#include "check-profile.h"

typedef struct
{
  Length low, high;
  const Piece *piece; /* NULL: packing, joint or nothing */
  gboolean taken;     /* by a piece or a packing */
  gboolean strip;     /* there is another free height, as thick or thicker, to be laid */
  Length left, right; /* height of the top at both ends: `high`, but under a slope */
  gboolean wedge;     /* under a slope and too low to be laid */
  Length off;         /* of that slope's roundings */
} Span;

static gboolean
is_sloped (const Span *span)
{
  return span->left != span->right;
}

static Span
level_span (Length low, Length high, const Piece *piece)
{
  return (Span){ .low = low, .high = high, .piece = piece, .left = high, .right = high };
}

Length
check_bottom (const Check *check, gint32 course)
{
  if (wall_standing (check->wall) > 0)
    return check_built_bottom (check, course);
  return check->laying.first_bed + (course - 1) * (check->block->height + check->laying.bed);
}

/* Top of the last course, ripped or not. */
static Length
check_top_of (const Check *check)
{
  gint32 n = (gint32) check->layout->courses->len;
  return n == 0 ? 0 : layout_course (check->layout, (guint) n - 1)->top;
}

LayPoint
check_corner (const Check *check, const Piece *piece, gint32 i)
{
  gint32 at = piece->outline + i % piece->n_outline;
  return g_array_index (check->layout->points, LayPoint, at);
}

const Piece *
check_piece_before (const Check *check, const Course *course, const Piece *piece)
{
  for (gint32 i = piece->number - 2; i >= 0; i--)
    {
      const Piece *before = layout_piece (check->layout, course->first + i);
      if (before->segment == piece->segment)
        return before;
    }
  return NULL;
}

static int
by_length (gconstpointer a, gconstpointer b)
{
  const Length *p = a, *q = b;
  return (*p > *q) - (*p < *q);
}

static void
add_vertical (GArray *verticals, Length x)
{
  g_array_append_val (verticals, x);
}

static void
add_piece_verticals (const Check *check, const Piece *piece, GArray *verticals)
{
  add_vertical (verticals, piece->x - check->laying.head);
  add_vertical (verticals, piece->x);
  add_vertical (verticals, piece->x + piece->length);
  add_vertical (verticals, piece->x + piece->length + check->laying.head);
  for (gint32 i = 0; piece->outline >= 0 && i < piece->n_outline; i++)
    add_vertical (verticals, check_corner (check, piece, i).x);
}

/* Where the top comes into the course, and where it leaves too little over what is below. */
static void
add_profile_verticals (const Check *check, const Course *course, GArray *verticals)
{
  g_autoptr (GArray) lows = g_array_new (FALSE, FALSE, sizeof (Length));
  if (check->wall->tops->len == 0 && check->wall->feet->len == 0)
    return;
  add_vertical (lows, course->bottom);
  for (guint i = 0; i < check->wall->feet->len; i++)
    add_vertical (lows, check_profile_base (check, g_array_index (check->wall->feet, Foot, i).x));
  for (guint i = 0; i < check->wall->openings->len; i++)
    add_vertical (lows, opening_head (wall_opening_at (check->wall, i)));
  check_profile_add_points (check, verticals);
  check_profile_add_heights (check, course->top, verticals);
  for (guint i = 0; i < lows->len; i++)
    {
      check_profile_add_lows (check, g_array_index (lows, Length, i), verticals);
      check_profile_add_toes (check, g_array_index (lows, Length, i), verticals);
    }
}

/* Where something may change along a course, sorted; `course` may be one too high. */
static GArray *
find_verticals (const Check *check, const Course *course)
{
  GArray *verticals = g_array_new (FALSE, FALSE, sizeof (Length));
  add_vertical (verticals, 0);
  add_vertical (verticals, check->wall->length);
  for (int i = 0; i < 2; i++)
    {
      Length stop = check->wall->ends[i].ret + check->laying.head;
      add_vertical (verticals, i == SIDE_LEFT ? stop : check->wall->length - stop);
    }
  for (guint i = 0; i < check->wall->tees->len; i++)
    {
      const Tee *tee = wall_tee_at (check->wall, i);
      add_vertical (verticals, tee->x - check->laying.head);
      add_vertical (verticals, tee->x + tee->ret + check->laying.head);
    }
  for (guint i = 0; i < check->wall->movement_joints->len; i++)
    {
      const MovementJoint *joint = wall_movement_joint_at (check->wall, i);
      add_vertical (verticals, joint->x);
      add_vertical (verticals, joint->x + joint->width);
    }
  for (guint i = 0; i < check->wall->openings->len; i++)
    {
      add_vertical (verticals, wall_opening_at (check->wall, i)->x);
      add_vertical (verticals, opening_right (wall_opening_at (check->wall, i)));
    }
  add_profile_verticals (check, course, verticals);
  for (gint32 i = 0; i < course->n_pieces; i++)
    add_piece_verticals (check, layout_piece (check->layout, course->first + i), verticals);
  for (guint i = 0; i < check->layout->packings->len; i++)
    {
      const Packing *packing = &g_array_index (check->layout->packings, Packing, i);
      add_vertical (verticals, packing->x);
      add_vertical (verticals, packing->x + packing->length);
    }
  g_array_sort (verticals, by_length);
  return verticals;
}

/* Whether this wall has the place in that course: not left to another wall that runs through, or
 * to a movement joint. */
static gboolean
is_ours (const Check *check, gint32 course, Length from, Length to)
{
  if (from < 0 || to > check->wall->length)
    return FALSE;
  for (int i = 0; i < 2; i++)
    {
      const End *end = &check->wall->ends[i];
      Length stop = end->ret + check->laying.head;
      if (!end_stops (end, course, check_bottom (check, course)))
        continue;
      if (i == SIDE_LEFT ? from < stop : to > check->wall->length - stop)
        return FALSE;
    }
  for (guint i = 0; i < check->wall->tees->len; i++)
    {
      const Tee *tee = wall_tee_at (check->wall, i);
      if (tee_stops (tee, course, check_bottom (check, course))
          && from < tee->x + tee->ret + check->laying.head && to > tee->x - check->laying.head)
        return FALSE;
    }
  for (guint i = 0; i < check->wall->movement_joints->len; i++)
    {
      const MovementJoint *joint = wall_movement_joint_at (check->wall, i);
      if (from < joint->x + joint->width && to > joint->x)
        return FALSE;
    }
  return TRUE;
}

static int
by_low (gconstpointer a, gconstpointer b)
{
  return by_length (&((const Span *) a)->low, &((const Span *) b)->low);
}

/* Takes one opening's heights out of the spans. */
static void
take_out (GArray *spans, const Opening *opening)
{
  Length sill = opening->sill, head = opening_head (opening);
  for (guint i = spans->len; i-- > 0;)
    {
      Span span = g_array_index (spans, Span, i);
      if (head <= span.low || sill >= span.high)
        continue;
      g_array_remove_index (spans, i);
      Span parts[] = { level_span (span.low, sill, NULL), span };
      parts[1].low = head;
      for (int j = 0; j < 2; j++)
        if (parts[j].low < parts[j].high)
          g_array_append_val (spans, parts[j]);
    }
}

static gboolean
is_packed (const Check *check, const Span *span)
{
  Length thick = span->high - span->low;
  if (is_sloped (span))
    return span->wedge;
  return thick <= CHECK_PACKING_MAX && thick < check->block->height;
}

static void
mark_strips (const Check *check, GArray *spans)
{
  for (guint i = 0; i < spans->len; i++)
    for (guint j = 0; j < spans->len; j++)
      {
        Span *a = &g_array_index (spans, Span, i), *b = &g_array_index (spans, Span, j);
        if (i != j && !is_packed (check, b) && b->high - b->low >= a->high - a->low)
          a->strip = TRUE;
      }
}

/* The free heights low .. high less the openings, from below. */
static GArray *
find_free (const Check *check, const Course *course, Length from, Length to)
{
  GArray *spans = g_array_new (FALSE, TRUE, sizeof (Span));
  Span all = level_span (MAX (course->bottom, check_profile_base (check, from)), course->top, NULL);
  all.left = check_profile_top (check, from, TRUE);
  all.right = check_profile_top (check, to, FALSE);
  all.off = check_profile_rounding (check, from);
  if (MIN (all.left, all.right) >= course->top + all.off)
    all.off = 0;
  all.left = MIN (course->top, all.left);
  all.right = MIN (course->top, all.right);
  all.high = MAX (all.left, all.right);
  if (is_ours (check, course->number, from, to) && all.low < all.high)
    g_array_append_val (spans, all);
  for (guint i = 0; i < check->wall->openings->len; i++)
    {
      const Opening *opening = wall_opening_at (check->wall, i);
      if (opening->x < to && opening_right (opening) > from)
        take_out (spans, opening);
    }
  g_array_sort (spans, by_low);
  for (guint i = 0; i < spans->len; i++)
    {
      Span *span = &g_array_index (spans, Span, i);
      if (!is_sloped (span))
        continue;
      span->wedge = course->top > check_top_of (check)
                    || MIN (span->left, span->right) - span->low < check_profile_toe (check, from);
      span->left = MAX (span->left, span->low);
      span->right = MAX (span->right, span->low);
    }
  mark_strips (check, spans);
  return spans;
}

/* Height of a side of an outline at a place of it. */
static Length
side_at (LayPoint a, LayPoint b, Length x)
{
  double part = (double) (x - a.x) / (double) (b.x - a.x);
  double z = a.z + part * ((double) b.z - a.z) + 0.5;
  return (Length) z - (z < (Length) z);
}

/* A piece's lowest and highest place between two of its verticals; 2 for a sound one. */
static int
piece_span (const Check *check, const Piece *piece, Length from, Length to, Span *span)
{
  int sides = 0;
  *span = level_span (piece->bottom, piece->bottom + piece->height, piece);
  if (piece->outline < 0)
    return 2;
  *span = level_span (G_MAXINT32, G_MININT32, piece);
  for (gint32 i = 0; i < piece->n_outline; i++)
    {
      LayPoint a = check_corner (check, piece, i), b = check_corner (check, piece, i + 1);
      if (a.x == b.x || MIN (a.x, b.x) >= to || MAX (a.x, b.x) <= from)
        continue;
      sides++;
      if (a.x < b.x)
        {
          span->low = MIN (span->low, MIN (a.z, b.z));
          continue;
        }
      span->left = side_at (a, b, MAX (from, b.x));
      span->right = side_at (a, b, MIN (to, a.x));
      span->high = MAX (span->left, span->right);
    }
  return sides;
}

/* The column of the course that a place is right of, and the span under the slope in it, be it to
 * be laid; FALSE: there is none. */
static gboolean
slope_at (const Check *check, const Course *course, const GArray *verticals, guint at, Span *span)
{
  Length from = g_array_index (verticals, Length, at);
  g_autoptr (GArray) free = NULL;
  if (at + 1 >= verticals->len || g_array_index (verticals, Length, at + 1) == from)
    return FALSE;
  free = find_free (check, course, from, g_array_index (verticals, Length, at + 1));
  for (guint i = 0; i < free->len; i++)
    if (is_sloped (&g_array_index (free, Span, i)) && !g_array_index (free, Span, i).wedge)
      {
        *span = g_array_index (free, Span, i);
        return TRUE;
      }
  return FALSE;
}

static gboolean
is_point (const Check *check, Length x)
{
  for (guint i = 0; i < check->wall->tops->len; i++)
    if (g_array_index (check->wall->tops, TopPoint, i).x == x)
      return TRUE;
  return FALSE;
}

/* How high the slope over a place goes while it is one, over what is as low as there. */
static Length
slope_highest (const Check *check, const Course *course, const GArray *verticals, guint at)
{
  Span here, span;
  if (!slope_at (check, course, verticals, at, &here))
    return 0;
  Length high = here.high;
  for (guint i = at; i > 0 && !is_point (check, g_array_index (verticals, Length, i)); i--)
    {
      if (g_array_index (verticals, Length, i - 1) == g_array_index (verticals, Length, i))
        continue;
      if (!slope_at (check, course, verticals, i - 1, &span) || span.low != here.low)
        break;
      high = MAX (high, span.high);
    }
  for (guint i = at + 1;
       i + 1 < verticals->len && !is_point (check, g_array_index (verticals, Length, i)); i++)
    {
      if (g_array_index (verticals, Length, i + 1) == g_array_index (verticals, Length, i))
        continue;
      if (!slope_at (check, course, verticals, i, &span) || span.low != here.low)
        break;
      high = MAX (high, span.high);
    }
  return MIN (high - here.low, check->block->height - 1);
}

/* Whether a piece touches what is a slope but for roundings. */
static gboolean
is_at_slope (const Check *check, const Piece *piece)
{
  const Course *course = layout_course (check->layout, piece->course - 1);
  Length ends[] = { piece->x, piece->x + piece->length - 1 };
  for (int i = 0; i < 2; i++)
    {
      g_autoptr (GArray) free = find_free (check, course, ends[i], ends[i] + 1);
      for (guint k = 0; k < free->len; k++)
        if (g_array_index (free, Span, k).off > 0)
          return TRUE;
    }
  return FALSE;
}

/* Whether the top is over a height all along the piece: it can be in no slope. */
static gboolean
is_well_below (const Check *check, const Piece *piece, Length z)
{
  Length right = piece->x + piece->length;
  gboolean well = check_profile_top (check, piece->x, TRUE) >= z
                  && check_profile_top (check, right, FALSE) >= z;
  for (guint i = 0; i < check->wall->tops->len; i++)
    {
      const TopPoint *point = &g_array_index (check->wall->tops, TopPoint, i);
      if (point->x > piece->x && point->x < right)
        well = well && check->wall->height - point->below >= z;
    }
  return well;
}

/* How many columns of a piece are under a slope, and how many there are; the thickest of them goes
 * to *thick. */
static int
count_slopes (const Check *check, const Piece *piece, int *all, Length *thick)
{
  const Course *course = layout_course (check->layout, piece->course - 1);
  g_autoptr (GArray) verticals = NULL;
  int n = 0;
  *all = 1;
  *thick = 0;
  if (is_well_below (check, piece, course->top))
    return 0;
  verticals = find_verticals (check, course);
  *all = 0;
  for (guint i = 0; i + 1 < verticals->len; i++)
    {
      Length from = g_array_index (verticals, Length, i);
      Length to = g_array_index (verticals, Length, i + 1);
      Span span, own;
      if (from == to || from < piece->x || to > piece->x + piece->length)
        continue;
      ++*all;
      piece_span (check, piece, from, to, &own);
      if (!slope_at (check, course, verticals, i, &span) || own.low != span.low
          || ABS (own.high - span.high) > span.off)
        continue;
      n++;
      *thick = MAX (*thick, slope_highest (check, course, verticals, i));
    }
  return n;
}

gboolean
check_is_raked (const Check *check, const Piece *piece)
{
  int all;
  Length thick;
  if (check->wall->tops->len == 0)
    return FALSE;
  return count_slopes (check, piece, &all, &thick) > 0
         || (piece->shape == PIECE_RAKED && is_at_slope (check, piece));
}

gboolean
check_is_all_raked (const Check *check, const Piece *piece)
{
  int all;
  Length thick;
  return check->wall->tops->len > 0 && count_slopes (check, piece, &all, &thick) == all;
}

Length
check_thickest (const Check *check, const Piece *piece)
{
  g_autoptr (GArray) verticals = g_array_new (FALSE, FALSE, sizeof (Length));
  Length thickest = 0;
  int all;
  if (check->wall->tops->len > 0)
    count_slopes (check, piece, &all, &thickest);
  add_piece_verticals (check, piece, verticals);
  g_array_sort (verticals, by_length);
  for (guint i = 1; i < verticals->len; i++)
    {
      Length from = g_array_index (verticals, Length, i - 1);
      Length to = g_array_index (verticals, Length, i);
      Span span;
      if (from < to && piece_span (check, piece, from, to, &span) > 0 && !is_sloped (&span))
        thickest = MAX (thickest, span.high - span.low);
    }
  return thickest;
}

/* Between its corners a slope is rounded again. */
static gboolean
is_same (const Span *free, const Span *span)
{
  return free->low == span->low && ABS (free->left - span->left) <= free->off
         && ABS (free->right - span->right) <= free->off;
}

/* Something taken must be one free height, all of it, and nobody else's; it, or NULL. */
static const Span *
take (GArray *free, const Span *span)
{
  for (guint i = 0; i < free->len; i++)
    {
      Span *at = &g_array_index (free, Span, i);
      if (!is_same (at, span) || at->taken)
        continue;
      at->taken = TRUE;
      at->piece = span->piece;
      return at;
    }
  return NULL;
}

static char *
column_pieces_fault (const Check *check, const Course *course, Length from, Length to, GArray *free)
{
  for (gint32 i = 0; i < course->n_pieces; i++)
    {
      const Piece *piece = layout_piece (check->layout, course->first + i);
      const Span *taken;
      Span span;
      if (piece->x >= to || piece->x + piece->length <= from)
        continue;
      if (piece_span (check, piece, from, to, &span) != 2)
        return g_strdup_printf ("piece %d/%d is in two parts at %d", piece->course, piece->number,
                                from);
      taken = take (free, &span);
      if (taken == NULL)
        return g_strdup_printf ("piece %d/%d is not at a free place at %d .. %d, %d .. %d",
                                piece->course, piece->number, from, to, span.low, span.high);
      if (is_packed (check, taken))
        return g_strdup_printf ("piece %d/%d is too thin to be one at %d", piece->course,
                                piece->number, from);
    }
  return NULL;
}

static char *
column_packings_fault (const Check *check, const Course *course, Length from, Length to,
                       GArray *free)
{
  for (guint i = 0; i < check->layout->packings->len; i++)
    {
      const Packing *packing = &g_array_index (check->layout->packings, Packing, i);
      Length top = packing->bottom, end = packing->x + packing->length;
      LayPoint a = { packing->x, top + packing->left }, b = { end, top + packing->right };
      Span span = level_span (packing->bottom, packing->bottom + packing->height, NULL);
      const Span *taken;
      if (packing->course != course->number || packing->bottom >= course->top
          || packing->bottom < course->bottom || packing->x >= to
          || packing->x + packing->length <= from)
        continue;
      if (packing->left != packing->right)
        {
          span.left = side_at (a, b, from);
          span.right = side_at (a, b, to);
          span.high = MAX (span.left, span.right);
        }
      taken = take (free, &span);
      /* Nothing but roundings, at a wedge's thin end. */
      if (taken == NULL && span.high - span.low <= check_profile_rounding (check, from))
        continue;
      if (taken == NULL)
        return g_strdup_printf ("a packing of course %d is not at a free place at %d .. %d",
                                course->number, from, to);
      /* A tip under slopes; or where a slope only just begins. */
      if (taken->off > 0
          && (taken->high - taken->low < check_profile_least (check) || to - from <= 4))
        continue;
      if (!is_packed (check, taken) && packing->length > 2 * check->laying.head && !course->stands
          && course->top <= check_top_of (check))
        return g_strdup_printf ("a packing of course %d is %d thick", course->number,
                                span.high - span.low);
    }
  return NULL;
}

static gboolean
side_touches (const Check *check, const Piece *piece, gboolean right, const Span *span)
{
  Length at = right ? piece->x + piece->length : piece->x;
  Span side;
  piece_span (check, piece, right ? at - 1 : at, right ? at : at + 1, &side);
  return side.low < span->high && span->low < side.high;
}

/* Takes the free height that a head joint fills, beside one of its pieces. */
static gboolean
take_joint (const Check *check, const Piece *left, const Piece *right, GArray *free)
{
  for (guint i = 0; i < free->len; i++)
    {
      Span *span = &g_array_index (free, Span, i);
      if (span->taken || is_packed (check, span))
        continue;
      if (side_touches (check, left, TRUE, span) || side_touches (check, right, FALSE, span))
        return span->taken = TRUE;
    }
  return FALSE;
}

/* Where what stands is farther apart than it was, the joint is packed. */
static gboolean
is_in_packing (const Check *check, const Course *course, Length from, Length to)
{
  for (guint i = 0; i < check->layout->packings->len; i++)
    {
      const Packing *packing = &g_array_index (check->layout->packings, Packing, i);
      if (packing->course == course->number && packing->x <= from
          && to <= packing->x + packing->length)
        return TRUE;
    }
  return FALSE;
}

/* A place between two pieces of a segment where no free height is left may be none: then the two
 * stand on both sides of an opening. */
static char *
column_joints_fault (const Check *check, const Course *course, Length from, Length to, GArray *free)
{
  for (gint32 i = 0; i < course->n_pieces; i++)
    {
      const Piece *right = layout_piece (check->layout, course->first + i);
      const Piece *left = check_piece_before (check, course, right);
      if (left == NULL || left->x + left->length >= to || right->x <= from)
        continue;
      if (!take_joint (check, left, right, free)
          && !(course->stands && is_in_packing (check, course, from, to)))
        return g_strdup_printf ("the joint before piece %d/%d is not at a free place at %d",
                                right->course, right->number, from);
    }
  return NULL;
}

/* How much of two spans lies side by side; 0 or less: nothing. */
static Length
shared (const Span *a, const Span *b)
{
  return MIN (a->high, b->high) - MAX (a->low, b->low);
}

/* What a segment has at a place: a piece's height, or in a joint the heights of both its pieces;
 * FALSE when it has nothing there. */
static gboolean
stands_at (const Check *check, const Course *course, const Piece *piece, Length x, Span *span)
{
  const Piece *before = check_piece_before (check, course, piece);
  Span side;
  if (piece->x <= x && x < piece->x + piece->length)
    return piece_span (check, piece, x, x + 1, span) > 0;
  if (before == NULL || x >= piece->x || x < before->x + before->length)
    return FALSE;
  piece_span (check, before, before->x + before->length - 1, before->x + before->length, &side);
  piece_span (check, piece, piece->x, piece->x + 1, span);
  span->low = MIN (span->low, side.low);
  span->high = MAX (span->high, side.high);
  return TRUE;
}

static gboolean
is_strip_at (const Check *check, const Course *course, const Span *side, Length x)
{
  g_autoptr (GArray) free = find_free (check, course, x, x + 1);
  for (guint i = 0; i < free->len; i++)
    if (g_array_index (free, Span, i).low == side->low)
      return g_array_index (free, Span, i).strip;
  return FALSE;
}

/* Under a slope a side is as high as that is at the jamb, not where the piece begins. */
static void
set_at_jamb (const Check *check, const Course *course, Span *side, Length jamb, gboolean right)
{
  Length top = check_profile_top (check, jamb, right);
  if (check->wall->tops->len > 0 && top > side->low && top < course->top)
    side->high = top;
}

/* A segment has a head joint at its end, too, where another one stands beside it: a strip beside
 * the run in its course, or two runs that share no more than what would be packed. `x` is the last
 * place of the piece, `step` 1 where it ends on the right, -1 on the left. */
static gboolean
has_end_joint (const Check *check, const Course *course, const Piece *piece, Length x, int step)
{
  Length beside = x + step * (check->laying.head + 1);
  Span side, other;
  piece_span (check, piece, x, x + 1, &side);
  gboolean strip = is_strip_at (check, course, &side, x);
  Length jamb = step < 0 ? x - check->laying.head : x + 1 + check->laying.head;
  set_at_jamb (check, course, &side, jamb, step < 0);
  if (course->stands && is_in_packing (check, course, beside, beside + 1))
    return TRUE;
  for (gint32 i = 0; i < course->n_pieces; i++)
    {
      const Piece *run = layout_piece (check->layout, course->first + i);
      if (run->segment == piece->segment || !stands_at (check, course, run, beside, &other))
        continue;
      set_at_jamb (check, course, &other, jamb, step > 0);
      Length both = shared (&side, &other);
      if (both > 0
          && (strip || both <= CHECK_PACKING_MAX || is_strip_at (check, course, &other, beside)))
        return TRUE;
    }
  return FALSE;
}

static gboolean
is_last (const Check *check, const Course *course, const Piece *piece)
{
  for (gint32 i = piece->number; i < course->n_pieces; i++)
    if (layout_piece (check->layout, course->first + i)->segment == piece->segment)
      return FALSE;
  return TRUE;
}

static void
take_end_joints (const Check *check, const Course *course, Length from, Length to, GArray *free)
{
  for (gint32 i = 0; i < course->n_pieces; i++)
    {
      const Piece *piece = layout_piece (check->layout, course->first + i);
      Length left = piece->x, right = piece->x + piece->length;
      if (left - check->laying.head <= from && to <= left
          && check_piece_before (check, course, piece) == NULL
          && has_end_joint (check, course, piece, left, -1))
        take_joint (check, piece, piece, free);
      if (right <= from && to <= right + check->laying.head && is_last (check, course, piece)
          && has_end_joint (check, course, piece, right - 1, 1))
        take_joint (check, piece, piece, free);
    }
}

/* What is left over is a gap. */
static char *
column_gap_fault (const Course *course, Length from, Length to, const GArray *free)
{
  for (guint i = 0; i < free->len; i++)
    {
      const Span *span = &g_array_index (free, Span, i);
      if (!span->taken && span->high - span->low > span->off)
        return g_strdup_printf ("course %d has a gap at %d .. %d, %d .. %d", course->number, from,
                                to, span->low, span->high);
    }
  return NULL;
}

static char *
column_fault (const Check *check, const Course *course, Length from, Length to, GArray *free)
{
  char *fault = column_pieces_fault (check, course, from, to, free);
  if (fault == NULL)
    fault = column_packings_fault (check, course, from, to, free);
  if (fault == NULL)
    {
      take_end_joints (check, course, from, to, free);
      fault = column_joints_fault (check, course, from, to, free);
    }
  if (fault == NULL)
    fault = column_gap_fault (course, from, to, free);
  return fault;
}

static Length
shared_side (const Span *left, const Span *right)
{
  return MIN (left->right, right->left) - MAX (left->low, right->low);
}

/* What two neighbouring columns have side by side: a piece goes on without a break, and two
 * segments meet only where a dry joint may stand at their ends. */
static char *
sides_fault (const Check *check, const GArray *left, const GArray *right)
{
  for (guint i = 0; i < left->len; i++)
    for (guint j = 0; j < right->len; j++)
      {
        const Span *a = &g_array_index (left, Span, i), *b = &g_array_index (right, Span, j);
        Length both = shared_side (a, b);
        gboolean may = both <= CHECK_PACKING_MAX || a->strip || b->strip;
        if (a->piece == NULL || b->piece == NULL)
          continue;
        if (a->piece == b->piece && both <= 0)
          return g_strdup_printf ("piece %d/%d is broken", a->piece->course, a->piece->number);
        if (both > 0 && a->piece->segment != b->piece->segment && (!may || check->laying.head > 0))
          return g_strdup_printf ("pieces %d/%d and %d/%d stand side by side without a joint",
                                  a->piece->course, a->piece->number, b->piece->course,
                                  b->piece->number);
      }
  return NULL;
}

char *
check_columns (const Check *check, const Course *course)
{
  g_autoptr (GArray) verticals = find_verticals (check, course);
  g_autoptr (GArray) before = g_array_new (FALSE, FALSE, sizeof (Span));
  for (guint i = 1; i < verticals->len; i++)
    {
      Length from = g_array_index (verticals, Length, i - 1);
      Length to = g_array_index (verticals, Length, i);
      if (from == to)
        continue;
      g_autoptr (GArray) free = find_free (check, course, from, to);
      char *fault = column_fault (check, course, from, to, free);
      if (fault == NULL)
        fault = sides_fault (check, before, free);
      if (fault != NULL)
        return fault;
      g_array_unref (before);
      before = g_steal_pointer (&free);
    }
  return NULL;
}

/* Packings have a size, and belong to a course or stand on the last one. */
static char *
packings_fault (const Check *check)
{
  for (guint i = 0; i < check->layout->packings->len; i++)
    {
      const Packing *packing = &g_array_index (check->layout->packings, Packing, i);
      if (packing->course < 1 || packing->course > (gint32) check->layout->courses->len)
        return g_strdup_printf ("a packing is in course %d", packing->course);
      const Course *course = layout_course (check->layout, packing->course - 1);
      Length top = course->top == check_top_of (check) ? check->wall->height : course->top;
      if (packing->length <= 0 || packing->height <= 0 || packing->bottom < course->bottom
          || packing->bottom + packing->height > top)
        return g_strdup_printf ("a packing of course %d has no size or is not in it",
                                packing->course);
    }
  return NULL;
}

/* The strip over the last course, its bed joint with it, is packed all along. */
char *
check_top (const Check *check)
{
  gint32 n = (gint32) check->layout->courses->len;
  Course rest = { n, check_top_of (check), check->wall->height, 0, 0 };
  char *fault = packings_fault (check);
  if (fault != NULL || n == 0 || rest.bottom >= rest.top)
    return fault;
  return check_columns (check, &rest);
}
