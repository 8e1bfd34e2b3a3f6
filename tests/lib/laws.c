/* laws.c - what holds of every wall that is laid, as assertions */
#include "laws.h"

#include "bond/lay.h"
#include "check-layout.h"

void
law_laid_right (const AnyWall *any, guint64 seed)
{
  g_autofree char *wrong = wall_fault (any->wall, &any->block, NULL);
  g_assert_cmpstr (wrong, ==, NULL);
  g_autoptr (Layout) layout = lay_wall (any->wall, &any->block, NULL);
  g_autofree char *fault = check_layout (any->wall, &any->block, layout);
  if (fault)
    {
      g_autofree char *text = any_wall_text (any->wall, &any->block);
      g_test_message ("wall %" G_GUINT64_FORMAT ": %s", seed, text);
    }
  g_assert_cmpstr (fault, ==, NULL);
}

/* Whether one of the layouts has a run from a to b in that course. */
static gboolean
has_run (const Layout *layout, gint32 number, Length a, Length b)
{
  const Course *course = layout_course (layout, (guint) number - 1);

  for (gint32 k = 0; k < course->n_pieces; k++)
    {
      const Piece *piece = layout_piece (layout, (guint) (course->first + k));
      Length from = piece->x, to = piece->x + piece->length;

      for (gint32 m = 0; m < course->n_pieces; m++)
        {
          const Piece *other = layout_piece (layout, (guint) (course->first + m));

          if (other->segment != piece->segment)
            continue;
          from = MIN (from, other->x);
          to = MAX (to, other->x + other->length);
        }
      if (from == a && to == b)
        return TRUE;
    }
  return FALSE;
}

/* Where a joint stands between two strips side by side it is in the room of one of them, which need
 * not be the same one from behind. */
static gboolean
has_same_runs (const Layout *front, const Layout *back, Length length)
{
  for (guint i = 0; i < front->pieces->len;)
    {
      const gint32 number = layout_piece (front, i)->course;
      Length from = G_MAXINT32, to = 0;
      const gint32 segment = layout_piece (front, i)->segment;
      const Course *course = layout_course (front, (guint) number - 1);

      for (gint32 k = 0; k < course->n_pieces; k++)
        {
          const Piece *piece = layout_piece (front, (guint) (course->first + k));

          if (piece->segment != segment)
            continue;
          from = MIN (from, piece->x);
          to = MAX (to, piece->x + piece->length);
        }
      if (!has_run (back, number, length - to, length - from))
        return FALSE;
      while (i < front->pieces->len && layout_piece (front, i)->course == number
             && layout_piece (front, i)->segment == segment)
        i++;
    }
  return TRUE;
}

/* Piece by piece, those of a course from the other end; where two strips lie one above the other,
 * by what they are. */
static void
assert_image (const Layout *front, const Layout *back, Length length)
{
  g_assert_cmpuint (front->pieces->len, ==, back->pieces->len);
  g_assert_cmpint (front->n_whole, ==, back->n_whole);
  g_assert_cmpint (front->n_cut, ==, back->n_cut);
  for (guint i = 0; i < front->pieces->len; i++)
    {
      const Piece *piece = layout_piece (front, i);
      const Course *course = layout_course (back, (guint) piece->course - 1);
      gboolean found = FALSE;

      for (gint32 k = 0; k < course->n_pieces && !found; k++)
        {
          const Piece *image = layout_piece (back, (guint) (course->first + k));

          found = image->x == length - piece->x - piece->length && image->length == piece->length
                  && image->bottom == piece->bottom && image->height == piece->height
                  && image->shape == piece->shape;
        }
      g_assert_true (found);
    }
}

void
law_same_from_behind (AnyWall *any)
{
  any->wall->laying.given &= ~(guint) LAYING_AIM;
  g_autoptr (Wall) mirror = any_wall_mirror (any->wall);
  g_autoptr (Layout) front = lay_wall (any->wall, &any->block, NULL);
  g_autoptr (Layout) back = lay_wall (mirror, &any->block, NULL);
  const Proof *p = &front->proof, *q = &back->proof;

  g_assert_cmpint (p->breaches_at_least, <=, q->breaches);
  g_assert_cmpint (q->breaches_at_least, <=, p->breaches);
  if (p->breaches == q->breaches)
    {
      g_assert_cmpint (p->cuts_at_least, <=, q->cuts);
      g_assert_cmpint (q->cuts_at_least, <=, p->cuts);
    }
  if (any->wall->pins->len == 0 && has_same_runs (front, back, any->wall->length))
    assert_image (front, back, any->wall->length);
}
