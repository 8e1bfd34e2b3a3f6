/* perpend.c - a perpend that a hand is at: lit, with the lengths of the two pieces beside it */
#include "paint/scene-private.h"

/* How far its line reaches past the course, and text stands from it, steps. */
#define PAST 3.f
#define TEXT_AWAY 5.f
/* Of a piece whose length stands in its middle, steps. */
#define MIDDLE_LEAST 38.0
#define MIDDLE_MOST 360.0

/* The heights between which it is seen: of the two pieces, or of its course. */
static gboolean
heights_of (const Scene *scene, const PerpendMark *mark, Length *foot, Length *head)
{
  const guint c = (guint) mark->course - 1;

  if (mark->right)
    {
      *foot = MAX (mark->left->bottom, mark->right->bottom);
      *head = MIN (mark->left->bottom + mark->left->height,
                   mark->right->bottom + mark->right->height);
      return TRUE;
    }
  if (mark->course < 1 || !scene->layout || c >= scene->layout->courses->len)
    return FALSE;
  *foot = layout_course (scene->layout, c)->bottom;
  *head
      = MIN (layout_course (scene->layout, c)->top, wall_top_at (scene->wall, mark->x, SIDE_RIGHT));
  *foot = MIN (*foot, *head);
  return TRUE;
}

/* The lines of the courses below and above that it stands over and under. */
static void
add_guide_to (Scene *scene, double x, Length foot, Length head)
{
  const MarkLook look = mark_look (STYLE_GUIDE, LAYER_OVERLAY);
  const double reach = length_to_mm (scene->block->height + scene->laying.bed);

  drawing_add_line (scene->drawing, &look, at (x, MAX (length_to_mm (foot) - reach, 0)),
                    at (x, MIN (length_to_mm (head) + reach, length_to_mm (scene->wall->height))));
}

/* In the middle of the piece, over its label; close to the perpend where the piece is too small for
 * that, or so large that its middle may be out of sight. */
static void
add_length (Scene *scene, const Piece *piece, double x, double z, float side)
{
  char text[LENGTH_TEXT_SIZE];
  const double length = length_to_mm (piece->length);
  MarkLook look = mark_look (STYLE_GUIDE_TEXT, LAYER_OVERLAY);

  length_text (piece->length, text);
  look.min_scale = MIDDLE_LEAST / length;
  look.max_scale = MIDDLE_MOST / length;
  drawing_add_text (scene->drawing, &look, at (length_to_mm (piece->x) + length / 2, z), 0.5f, 0.5f,
                    text);
  look.min_scale = 0;
  look.max_scale = MIDDLE_LEAST / length;
  drawing_add_text (scene->drawing, &look, at_offset (x, z, side * TEXT_AWAY, 0), side < 0 ? 1 : 0,
                    0.5f, text);
  look.min_scale = MIDDLE_MOST / length;
  look.max_scale = 0;
  drawing_add_text (scene->drawing, &look, at_offset (x, z, side * TEXT_AWAY, 0), side < 0 ? 1 : 0,
                    0.5f, text);
}

void
scene_perpend (Scene *scene, const PerpendMark *mark)
{
  const MarkLook look = mark_look (mark->unmet ? STYLE_BREACH_LINE : STYLE_SELECTED, LAYER_OVERLAY);
  const double x = length_to_mm (mark->x - scene->laying.head / 2);
  Length foot, head;

  if (!heights_of (scene, mark, &foot, &head))
    return;
  if (mark->guide)
    add_guide_to (scene, x, foot, head);
  drawing_add_line (scene->drawing, &look, at_offset (x, length_to_mm (foot), 0, PAST),
                    at_offset (x, length_to_mm (head), 0, -PAST));
  if (mark->sizes && mark->right)
    {
      const double middle = length_to_mm (foot) / 2 + length_to_mm (head) / 2;

      add_length (scene, mark->left, x, middle, -1);
      add_length (scene, mark->right, x, middle, 1);
    }
}
