/* check-layout.c - a verifier of layouts, written apart from the engine */
#include "check-layout.h"

#include <string.h>

#include "check-column.h"
#include "check-profile.h"
#include "check-rules.h"

/* One check: its fault, newly allocated, or NULL. */
typedef char *(*CheckFunction) (const Check *check);

/* --- courses --------------------------------------------------------------------------------- */

/* Courses whose piece, ripped or not, is thicker than what would be packed. A whole unit is never
 * packed, be it as thin as a joint. */
static gint32
count_courses (const Check *check)
{
  gint32 n = 0;
  for (;; n++)
    {
      gint64 bottom = check_bottom (check, n + 1);
      gint64 left = check->wall->height - bottom;
      if (n >= wall_standing (check->wall) && left < check->block->height
          && left <= CHECK_PACKING_MAX)
        return n;
    }
}

static char *
check_courses (const Check *check)
{
  const GArray *courses = check->layout->courses;
  gint32 n = count_courses (check), next = 0;
  if ((gint32) courses->len != n)
    return g_strdup_printf ("there are %u courses, not %d", courses->len, n);
  for (gint32 i = 0; i < n; i++)
    {
      const Course *course = layout_course (check->layout, i);
      Length bottom = check_bottom (check, i + 1);
      Length top = MIN (bottom + check->block->height, check->wall->height);
      if (course->stands != (i < wall_standing (check->wall)))
        return g_strdup_printf ("whether course %d stands is told wrongly", i + 1);
      if (course->number != i + 1)
        return g_strdup_printf ("course %d calls itself %d", i + 1, course->number);
      if (course->bottom != bottom || course->top != top)
        return g_strdup_printf ("course %d lies %d .. %d, not %d .. %d", i + 1, course->bottom,
                                course->top, bottom, top);
      if (course->first != next || course->n_pieces < 0)
        return g_strdup_printf ("course %d begins with piece %d, not %d", i + 1, course->first,
                                next);
      next += course->n_pieces;
    }
  if (next != (gint32) check->layout->pieces->len)
    return g_strdup_printf ("courses have %d of %u pieces", next, check->layout->pieces->len);
  return NULL;
}

/* --- pieces one by one ----------------------------------------------------------------------- */

static char *
check_order (const Check *check)
{
  for (guint c = 0; c < check->layout->courses->len; c++)
    {
      const Course *course = layout_course (check->layout, c);
      for (gint32 i = 0; i < course->n_pieces; i++)
        {
          const Piece *piece = layout_piece (check->layout, course->first + i);
          if (piece->course != course->number || piece->number != i + 1)
            return g_strdup_printf ("piece %d of course %d calls itself %d/%d", i + 1,
                                    course->number, piece->course, piece->number);
          if (piece->stands && !course->stands)
            return g_strdup_printf ("piece %d/%d stands and its course does not", piece->course,
                                    piece->number);
          if (i > 0 && piece->x < layout_piece (check->layout, course->first + i - 1)->x)
            return g_strdup_printf ("piece %d/%d lies left of the one before", piece->course,
                                    piece->number);
        }
    }
  return NULL;
}

static PieceShape
shape_of (const Check *check, const Piece *piece)
{
  if (check_is_raked (check, piece))
    return PIECE_RAKED;
  if (piece->outline >= 0)
    return PIECE_NOTCHED;
  if (piece->height < check->block->height)
    return PIECE_RIPPED;
  return piece->length < check->block->length ? PIECE_SHORT : PIECE_WHOLE;
}

static char *
check_shapes (const Check *check)
{
  static const char *const words[] = { "whole", "short", "ripped", "notched", "raked" };
  for (guint i = 0; i < check->layout->pieces->len; i++)
    {
      const Piece *piece = layout_piece (check->layout, i);
      PieceShape shape = shape_of (check, piece);
      if (piece->length <= 0 || piece->height <= 0)
        return g_strdup_printf ("piece %d/%d has no size", piece->course, piece->number);
      if (piece->length > check->block->length || piece->height > check->block->height)
        return g_strdup_printf ("piece %d/%d is larger than the unit", piece->course,
                                piece->number);
      if (piece->shape != shape || strcmp (piece_shape_word (shape), words[shape]) != 0)
        return g_strdup_printf ("piece %d/%d is called %s, not %s", piece->course, piece->number,
                                piece_shape_word (piece->shape), words[shape]);
    }
  return NULL;
}

/* A slope is a side of the top, which runs to the left; no side runs on in the next one. */
static gboolean
is_raked_side (LayPoint a, LayPoint b)
{
  return a.x > b.x && a.z != b.z;
}

/* Sides run along and up in turn, none of no length; the bounding box is the piece's. */
static char *
outline_sides_fault (const Check *check, const Piece *piece)
{
  gboolean raked = piece->shape == PIECE_RAKED;
  LayPoint low = { G_MAXINT32, G_MAXINT32 }, high = { G_MININT32, G_MININT32 };
  if (piece->n_outline < (raked ? 3 : 6)
      || piece->outline + piece->n_outline > (gint32) check->layout->points->len)
    return g_strdup_printf ("piece %d/%d has %d corners", piece->course, piece->number,
                            piece->n_outline);
  for (gint32 i = 0; i < piece->n_outline; i++)
    {
      LayPoint a = check_corner (check, piece, i), b = check_corner (check, piece, i + 1);
      LayPoint c = check_corner (check, piece, i + 2);
      gboolean along = a.z == b.z, along_next = b.z == c.z;
      if (a.x == b.x && along)
        return g_strdup_printf ("piece %d/%d has a side of no length", piece->course,
                                piece->number);
      if (raked ? (!along && a.x != b.x && !is_raked_side (a, b)) || (a.x == b.x && b.x == c.x)
                      || (along && along_next)
                : (a.x == b.x) == along || along == along_next)
        return g_strdup_printf ("piece %d/%d is no outline of right angles", piece->course,
                                piece->number);
      low = (LayPoint){ MIN (low.x, a.x), MIN (low.z, a.z) };
      high = (LayPoint){ MAX (high.x, a.x), MAX (high.z, a.z) };
    }
  if (low.x != piece->x || low.z != piece->bottom || high.x != piece->x + piece->length
      || high.z != piece->bottom + piece->height)
    return g_strdup_printf ("piece %d/%d has an outline that is not its size", piece->course,
                            piece->number);
  return NULL;
}

/* Counter-clockwise, from the left one of the lowest corners. */
static char *
outline_turn_fault (const Check *check, const Piece *piece)
{
  LayPoint first = check_corner (check, piece, 0);
  gint64 twice = 0;
  for (gint32 i = 0; i < piece->n_outline; i++)
    {
      LayPoint a = check_corner (check, piece, i), b = check_corner (check, piece, i + 1);
      twice += (gint64) (a.x - piece->x) * (b.z - piece->bottom)
               - (gint64) (b.x - piece->x) * (a.z - piece->bottom);
      if (a.z < first.z || (a.z == first.z && a.x < first.x))
        return g_strdup_printf ("piece %d/%d does not begin at its lowest left corner",
                                piece->course, piece->number);
    }
  if (twice <= 0)
    return g_strdup_printf ("piece %d/%d has its corners clockwise", piece->course, piece->number);
  return NULL;
}

static char *
check_outlines (const Check *check)
{
  g_autofree gboolean *used = g_new0 (gboolean, check->layout->points->len + 1);
  for (guint i = 0; i < check->layout->pieces->len; i++)
    {
      const Piece *piece = layout_piece (check->layout, i);
      if (piece->outline < 0)
        continue;
      char *fault = outline_sides_fault (check, piece);
      if (fault == NULL)
        fault = outline_turn_fault (check, piece);
      if (fault != NULL)
        return fault;
      for (gint32 k = piece->outline; k < piece->outline + piece->n_outline; k++)
        {
          if (used[k])
            return g_strdup_printf ("piece %d/%d shares its corners", piece->course, piece->number);
          used[k] = TRUE;
        }
    }
  return NULL;
}

/* --- segments -------------------------------------------------------------------------------- */

/* Segments are counted from 0, without one left out. */
static char *
numbers_fault (const Check *check, const Course *course)
{
  g_autofree gboolean *used = g_new0 (gboolean, course->n_pieces + 1);
  gint32 last = -1;
  for (gint32 i = 0; i < course->n_pieces; i++)
    {
      const Piece *piece = layout_piece (check->layout, course->first + i);
      if (piece->segment < 0 || piece->segment >= course->n_pieces)
        return g_strdup_printf ("piece %d/%d is of segment %d", piece->course, piece->number,
                                piece->segment);
      used[piece->segment] = TRUE;
      last = MAX (last, piece->segment);
    }
  for (gint32 i = 0; i <= last; i++)
    if (!used[i])
      return g_strdup_printf ("course %d has no segment %d of %d", course->number, i, last + 1);
  return NULL;
}

/* A run under slopes alone, nowhere as high as the thinnest strip, is packed. */
static char *
tips_fault (const Check *check, const Course *course)
{
  for (gint32 i = 0; i < course->n_pieces; i++)
    {
      const Piece *piece = layout_piece (check->layout, course->first + i);
      Length thick = 0;
      gboolean raked = piece->shape == PIECE_RAKED;
      for (gint32 k = 0; raked && k < course->n_pieces; k++)
        {
          const Piece *other = layout_piece (check->layout, course->first + k);
          if (other->segment != piece->segment)
            continue;
          raked = check_is_all_raked (check, other);
          thick = MAX (thick, check_thickest (check, other));
        }
      if (raked && thick < check_profile_least (check))
        return g_strdup_printf ("piece %d/%d is in a tip that is to be packed", piece->course,
                                piece->number);
    }
  return NULL;
}

/* Pieces of one segment stand one head joint apart. */
static char *
segments_fault (const Check *check, const Course *course)
{
  for (gint32 i = 0; i < course->n_pieces; i++)
    {
      const Piece *piece = layout_piece (check->layout, course->first + i);
      const Piece *before = check_piece_before (check, course, piece);
      Length apart = before ? piece->x - before->x - before->length : 0;
      if (before && course->stands ? apart < check->laying.head
                                   : before && apart != check->laying.head)
        return g_strdup_printf ("piece %d/%d stands %d from the one before, not %d", piece->course,
                                piece->number, piece->x - before->x - before->length,
                                check->laying.head);
    }
  return numbers_fault (check, course);
}

static char *
check_segments (const Check *check)
{
  for (guint i = 0; i < check->layout->courses->len; i++)
    {
      char *fault = segments_fault (check, layout_course (check->layout, i));
      if (fault == NULL)
        fault = tips_fault (check, layout_course (check->layout, i));
      if (fault != NULL)
        return fault;
    }
  return NULL;
}

/* --- the area -------------------------------------------------------------------------------- */

static char *
check_area (const Check *check)
{
  for (guint i = 0; i < check->layout->courses->len; i++)
    {
      char *fault = check_columns (check, layout_course (check->layout, i));
      if (fault != NULL)
        return fault;
    }
  return check_top (check);
}

/* --- breaches -------------------------------------------------------------------------------- */

static void
add_breach (GArray *breaches, BreachKind kind, const Piece *piece, Length is, Length least)
{
  Breach breach = { kind, piece->course, piece->x, is, least };
  if (is < least)
    g_array_append_val (breaches, breach);
}

/* A notched piece is as thick as its thickest leg. */
static void
find_piece_breaches (const Check *check, GArray *breaches)
{
  for (guint i = 0; i < check->layout->pieces->len; i++)
    {
      const Piece *piece = layout_piece (check->layout, i);
      if (piece->shape == PIECE_RAKED)
        add_breach (breaches, BREACH_MIN_RAKED, piece, piece->length, check->laying.min_raked);
      else
        add_breach (breaches, BREACH_MIN_PIECE, piece, piece->length, check->laying.min_piece);
      add_breach (breaches, BREACH_MIN_RIP, piece, check_thickest (check, piece),
                  check->laying.min_rip);
    }
}

/* Perpends are found by the left face of the piece after, and told by the middle of the joint. */
static GArray *
find_perpends (const Check *check, const Course *course)
{
  GArray *perpends = g_array_new (FALSE, FALSE, sizeof (const Piece *));
  for (gint32 i = 0; i < course->n_pieces; i++)
    {
      const Piece *piece = layout_piece (check->layout, course->first + i);
      if (check_piece_before (check, course, piece))
        g_array_append_val (perpends, piece);
    }
  return perpends;
}

/* Perpends on both sides of a movement joint do not lap. */
static gboolean
are_parted (const Check *check, Length a, Length b)
{
  for (guint i = 0; i < check->wall->movement_joints->len; i++)
    {
      const MovementJoint *joint = wall_movement_joint_at (check->wall, i);
      if ((a < joint->x + joint->width) != (b < joint->x + joint->width))
        return TRUE;
    }
  return FALSE;
}

static void
find_lap_breaches (const Check *check, const Course *lower, const Course *upper, GArray *breaches)
{
  g_autoptr (GArray) below = find_perpends (check, lower), above = find_perpends (check, upper);
  for (guint i = 0; i < above->len; i++)
    for (guint j = 0; j < below->len; j++)
      {
        const Piece *a = g_array_index (above, const Piece *, i);
        const Piece *b = g_array_index (below, const Piece *, j);
        Piece perpend = *a;
        if (are_parted (check, a->x, b->x))
          continue;
        perpend.x -= check->laying.head / 2;
        add_breach (breaches, BREACH_MIN_LAP, &perpend, ABS (a->x - b->x), check->laying.min_lap);
      }
}

static int
by_place (gconstpointer a, gconstpointer b)
{
  const Breach *p = a, *q = b;
  gint64 differences[] = { (gint64) p->course - q->course, (gint64) p->x - q->x,
                           (gint64) p->kind - q->kind, (gint64) p->is - q->is };
  for (guint i = 0; i < G_N_ELEMENTS (differences); i++)
    if (differences[i] != 0)
      return differences[i] < 0 ? -1 : 1;
  return 0;
}

static char *
breach_text (const Breach *breach)
{
  static const char *const words[] = { "piece", "lap", "rip", "raked piece" };
  const char *word = breach->kind < BREACH_OF_RULE
                         ? words[breach->kind]
                         : rule_row ((RuleKind) (breach->kind - BREACH_OF_RULE))->word;
  return g_strdup_printf ("a %s of %d (least %d) in course %d at %d", word, breach->is,
                          breach->least, breach->course, breach->x);
}

/* Both in order; the first that only one of them has. */
static char *
compare_breaches (const GArray *right, const GArray *told)
{
  for (guint i = 0; i < MAX (right->len, told->len); i++)
    {
      const Breach *a = i < right->len ? &g_array_index (right, Breach, i) : NULL;
      const Breach *b = i < told->len ? &g_array_index (told, Breach, i) : NULL;
      if (a && b && by_place (a, b) == 0 && a->least == b->least)
        continue;
      gboolean missed = b == NULL || (a && by_place (a, b) < 0);
      g_autofree char *text = breach_text (missed ? a : b);
      return g_strdup_printf (missed ? "%s is not told" : "%s is told and is none", text);
    }
  return NULL;
}

static char *
check_breaches (const Check *check)
{
  g_autoptr (GArray) right = g_array_new (FALSE, FALSE, sizeof (Breach));
  g_autoptr (GArray) told = g_array_new (FALSE, FALSE, sizeof (Breach));
  find_piece_breaches (check, right);
  for (guint i = 1; i < check->layout->courses->len; i++)
    find_lap_breaches (check, layout_course (check->layout, i - 1),
                       layout_course (check->layout, i), right);
  check_find_rule_breaches (check, right);
  for (guint i = 0; i < check->layout->breaches->len; i++)
    {
      const Breach *breach = &g_array_index (check->layout->breaches, Breach, i);
      const Breach *before = i > 0 ? breach - 1 : breach;
      if (before->course > breach->course
          || (before->course == breach->course && before->x > breach->x))
        return g_strdup ("the breaches are out of order");
      g_array_append_val (told, *breach);
    }
  g_array_sort (right, by_place);
  g_array_sort (told, by_place);
  return compare_breaches (right, told);
}

/* --- totals ---------------------------------------------------------------------------------- */

static char *
check_totals (const Check *check)
{
  const Layout *layout = check->layout;
  gint32 whole = 0, cut = 0;
  for (guint i = 0; i < layout->pieces->len; i++)
    *(layout_piece (layout, i)->shape == PIECE_WHOLE ? &whole : &cut) += 1;
  if (layout->n_whole != whole || layout->n_cut != cut)
    return g_strdup_printf ("%d whole and %d cut are told, there are %d and %d", layout->n_whole,
                            layout->n_cut, whole, cut);
  if (layout->proof.cuts != cut)
    return g_strdup_printf ("the proof tells %d cuts of %d", layout->proof.cuts, cut);
  if (layout->proof.breaches != (gint32) layout->breaches->len)
    return g_strdup_printf ("the proof tells %d breaches of %u", layout->proof.breaches,
                            layout->breaches->len);
  if (layout->proof.breaches_at_least < 0
      || layout->proof.breaches_at_least > (gint32) layout->breaches->len)
    return g_strdup_printf ("at least %d breaches are told of %u", layout->proof.breaches_at_least,
                            layout->breaches->len);
  if (layout->proof.cuts_at_least > cut || layout->proof.cuts_at_least < 0)
    return g_strdup_printf ("at least %d cuts are told of %d", layout->proof.cuts_at_least, cut);
  if (!layout->proof.proven != (layout->proof.cuts_at_least != cut))
    return g_strdup ("what is proven is not what the bound says");
  if (layout->wall.n != check->wall->id.n)
    return g_strdup ("it is another wall's");
  return NULL;
}

char *
check_layout (const Wall *wall, const Block *block, const Layout *layout)
{
  static const CheckFunction checks[]
      = { check_courses,  check_order, check_shapes,   check_outlines,
          check_segments, check_area,  check_breaches, check_totals };
  Check check = { wall, block, layout, laying_resolve (&wall->laying, block) };
  for (guint i = 0; i < G_N_ELEMENTS (checks); i++)
    {
      char *fault = checks[i](&check);
      if (fault != NULL)
        return fault;
    }
  return NULL;
}
