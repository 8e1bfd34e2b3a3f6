/* pieces.c - the wall's body: levelling bed, pieces with their labels, packings, returns, breaches
 */
#include "paint/scene-private.h"

#include "bond/gauge.h"
#include "bond/rake.h"
#include "paint/outline.h"

/* Least height of a piece on the sheet that takes a label, steps. */
#define LABEL_HEIGHT 9.0
/* Sizes of the wedge that shows a pin, steps, each for pieces at least so high on the sheet. */
static const struct
{
  float size;
  double from;
} wedges[] = { { 9.f, 18 }, { 6.f, 11 }, { 4.f, 7 } };
/* Least distance of lines in a small picture, steps; at smaller scales every second one is left
 * out.
 */
#define BARE_PITCH 4.0

static double
joint_mm (const Scene *scene)
{
  return length_to_mm (MAX (scene->laying.head, scene->laying.bed));
}

/* Neighbours */

static gboolean
are_neighbours (const Layout *layout, guint left, guint right)
{
  if (right >= layout->pieces->len)
    return FALSE;
  const Piece *a = layout_piece (layout, left), *b = layout_piece (layout, right);
  return a->course == b->course && a->segment == b->segment;
}

typedef struct
{
  Length left, right, bottom, top;
} Growth;

static void
grow_sideways (const Layout *layout, guint i, Growth *growth)
{
  const Piece *piece = layout_piece (layout, i);

  if (i > 0 && are_neighbours (layout, i - 1, i))
    {
      const Piece *before = layout_piece (layout, i - 1);
      growth->left = (piece->x - before->x - before->length) / 2;
    }
  if (are_neighbours (layout, i, i + 1))
    growth->right = (layout_piece (layout, i + 1)->x - piece->x - piece->length + 1) / 2;
}

static void
grow_upright (const Layout *layout, const Piece *piece, Growth *growth)
{
  const guint c = (guint) piece->course - 1;

  if (piece->course < 1 || c >= layout->courses->len)
    return;
  const Course *course = layout_course (layout, c);
  if (c > 0 && piece->bottom == course->bottom)
    growth->bottom = (course->bottom - layout_course (layout, c - 1)->top) / 2;
  if (c + 1 < layout->courses->len && piece->bottom + piece->height == course->top)
    growth->top = (layout_course (layout, c + 1)->bottom - course->top + 1) / 2;
}

static Growth
growth_of (const Layout *layout, guint i)
{
  Growth growth = { 0 };

  grow_sideways (layout, i, &growth);
  grow_upright (layout, layout_piece (layout, i), &growth);
  return growth;
}

/* Outlines */

static LayPoint
grown (LayPoint corner, const Piece *piece, const Growth *growth)
{
  if (corner.x == piece->x)
    corner.x -= growth->left;
  else if (corner.x == piece->x + piece->length)
    corner.x += growth->right;
  if (corner.z == piece->bottom)
    corner.z -= growth->bottom;
  else if (corner.z == piece->bottom + piece->height)
    corner.z += growth->top;
  return corner;
}

void
scene_add_piece (Scene *scene, guint i, const MarkLook *look)
{
  const Piece *piece = layout_piece (scene->layout, i);
  const Growth growth = growth_of (scene->layout, i);
  LayPoint corners[OUTLINE_MOST_CORNERS];
  MarkPoint points[OUTLINE_MOST_CORNERS];
  const guint n = outline_corners (scene->layout, piece, corners);

  for (guint k = 0; k < n; k++)
    {
      const LayPoint corner = grown (corners[k], piece, &growth);
      points[k] = at_length (corner.x, corner.z);
    }
  drawing_add (scene->drawing, MARK_POLYGON, look, points, n);
}

/* Breaches */

static gboolean
is_breached (const Layout *layout, const Piece *piece)
{
  for (guint i = 0; i < layout->breaches->len; i++)
    {
      const Breach *breach = &g_array_index (layout->breaches, Breach, i);
      if (!breach_is_of_perpend (breach->kind) && breach->course == piece->course
          && breach->x >= piece->x && breach->x < piece->x + piece->length)
        return TRUE;
    }
  return FALSE;
}

/* Whether a course has a perpend in the middle of a joint at about x. */
static gboolean
has_perpend (const Layout *layout, const Course *course, Length x)
{
  for (gint32 k = 0; k + 1 < course->n_pieces; k++)
    {
      const guint i = (guint) (course->first + k);
      const Piece *piece = layout_piece (layout, i);
      if (!are_neighbours (layout, i, i + 1))
        continue;
      const Length right = piece->x + piece->length;
      const Length perpend = right + (layout_piece (layout, i + 1)->x - right) / 2;
      if (ABS (perpend - x) <= LENGTH_PER_MM)
        return TRUE;
    }
  return FALSE;
}

/* The two perpends and the bed between them: a crank that shows how short the lap is. */
static void
add_lap_breach (Scene *scene, const Breach *breach)
{
  const guint c = (guint) breach->course - 1;
  MarkLook look = mark_look (STYLE_BREACH_LINE, LAYER_LABELS);

  if (breach->course < 2 || c >= scene->layout->courses->len)
    return;
  const Course *upper = layout_course (scene->layout, c);
  const Course *lower = layout_course (scene->layout, c - 1);
  const Length left = breach->x - breach->is, right = breach->x + breach->is;
  const Length other = has_perpend (scene->layout, lower, left) ? left : right;
  const Length bed = lower->top + (upper->bottom - lower->top) / 2;
  const MarkPoint points[] = {
    at_length (breach->x, upper->top),
    at_length (breach->x, bed),
    at_length (other, bed),
    at_length (other, lower->bottom),
  };
  look.course = breach->course;
  drawing_add (scene->drawing, MARK_LINE, &look, points, G_N_ELEMENTS (points));
}

/* The perpend of a rule that forbids it there. */
static void
add_perpend_breach (Scene *scene, const Breach *breach)
{
  const Course *course = layout_course (scene->layout, (guint) breach->course - 1);
  const MarkPoint points[] = {
    at_length (breach->x, course->top),
    at_length (breach->x, course->bottom),
  };
  MarkLook look = mark_look (STYLE_BREACH_LINE, LAYER_LABELS);

  look.course = breach->course;
  drawing_add (scene->drawing, MARK_LINE, &look, points, G_N_ELEMENTS (points));
}

static void
add_breaches (Scene *scene)
{
  for (guint i = 0; i < scene->layout->breaches->len; i++)
    {
      const Breach *breach = &g_array_index (scene->layout->breaches, Breach, i);
      if (breach->kind == BREACH_MIN_LAP)
        add_lap_breach (scene, breach);
      else if (breach_is_of_perpend (breach->kind))
        add_perpend_breach (scene, breach);
    }
}

/* What stands: told by the wall, so that it is seen at once, whatever is being laid anew. */
static gboolean
stands (const Scene *scene, const Piece *piece)
{
  return piece->course <= wall_standing (scene->wall);
}

/* Labels */

static char *
piece_label (const Layout *layout, const Piece *piece)
{
  char length[LENGTH_TEXT_SIZE], height[LENGTH_TEXT_SIZE];
  Rake rake;

  if (piece->shape == PIECE_RAKED && piece_rake (layout, piece, &rake))
    return rake_text (&rake);
  if (piece->shape != PIECE_RIPPED)
    return g_strdup (length_text (piece->length, length));
  return g_strdup_printf ("%s × %s", length_text (piece->length, length),
                          length_text (piece->height, height));
}

static void
add_label (Scene *scene, const Piece *piece)
{
  const OutlineSeat seat = outline_seat (scene->layout, piece);
  g_autofree char *text = piece_label (scene->layout, piece);
  MarkLook look
      = mark_look (stands (scene, piece) ? STYLE_STANDING_LABEL : STYLE_PIECE_LABEL, LAYER_LABELS);

  look.course = piece->course;
  look.fit = length_to_mm (seat.x1 - seat.x0);
  look.min_scale = LABEL_HEIGHT / length_to_mm (seat.z1 - seat.z0);
  drawing_add_text (scene->drawing, &look,
                    at (length_to_mm (seat.x0) / 2 + length_to_mm (seat.x1) / 2,
                        length_to_mm (seat.z0) / 2 + length_to_mm (seat.z1) / 2),
                    0.5f, 0.5f, text);
}

/* Pins */

/* A wedge driven into the joint at the piece's lower left: where it begins is set. A wedge at both
 * ends: all of it is. */
static void
add_wedge (Scene *scene, const Piece *piece, Length x, float side)
{
  MarkLook look = mark_look (STYLE_PIN, LAYER_LABELS);
  const double at_x = length_to_mm (x), foot = length_to_mm (piece->bottom);

  look.course = piece->course;
  for (guint i = 0; i < G_N_ELEMENTS (wedges); i++)
    {
      const float size = wedges[i].size;
      const MarkPoint points[] = {
        at_offset (at_x, foot, 0, 0),
        at_offset (at_x, foot, side * size, 0),
        at_offset (at_x, foot, 0, -size),
      };

      look.max_scale = look.min_scale;
      look.min_scale = wedges[i].from / length_to_mm (piece->height);
      drawing_add (scene->drawing, MARK_POLYGON, &look, points, G_N_ELEMENTS (points));
    }
}

gboolean
elevation_shows_pins (const Layout *layout, double scale)
{
  for (guint i = 0; i < layout->pieces->len; i++)
    {
      const Piece *piece = layout_piece (layout, i);

      if (piece->pinned != PINNED_NOT
          && length_to_mm (piece->height) * scale >= wedges[G_N_ELEMENTS (wedges) - 1].from)
        return TRUE;
    }
  return FALSE;
}

static void
add_pins (Scene *scene)
{
  for (guint i = 0; i < scene->layout->pieces->len; i++)
    {
      const Piece *piece = layout_piece (scene->layout, i);

      if (piece->pinned != PINNED_NOT)
        add_wedge (scene, piece, piece->x, 1);
      if (piece->pinned == PINNED_PIECE)
        add_wedge (scene, piece, piece->x + piece->length, -1);
    }
}

/* The body */

static Style
piece_style (const Scene *scene, const Piece *piece)
{
  if (is_breached (scene->layout, piece))
    return STYLE_PIECE_BREACH;
  if (stands (scene, piece))
    return piece->shape == PIECE_WHOLE ? STYLE_STANDING : STYLE_STANDING_CUT;
  return piece->shape == PIECE_WHOLE ? STYLE_PIECE : STYLE_PIECE_CUT;
}

/* Styles one after another, so that the painter fills all pieces of one at once. */
static void
add_pieces_of (Scene *scene, Style style)
{
  MarkLook look = mark_look (style, LAYER_PIECES);

  look.line_mm = joint_mm (scene);
  for (guint i = 0; i < scene->layout->pieces->len; i++)
    {
      const Piece *piece = layout_piece (scene->layout, i);
      if (piece_style (scene, piece) != style)
        continue;
      look.course = piece->course;
      look.ref = (MarkRef){ .kind = REF_PIECE, .a = piece->course, .b = piece->number };
      scene_add_piece (scene, i, &look);
      if (piece->shape != PIECE_WHOLE)
        add_label (scene, piece);
    }
}

static void
add_packings (Scene *scene)
{
  MarkLook look = mark_look (STYLE_PACKING, LAYER_PIECES);

  for (guint i = 0; i < scene->layout->packings->len; i++)
    {
      const Packing *packing = &g_array_index (scene->layout->packings, Packing, i);
      look.course = packing->course;
      const Length right = packing->x + packing->length;
      /* Under a slope it is a wedge. */
      const MarkPoint corners[] = {
        at_length (packing->x, packing->bottom),
        at_length (right, packing->bottom),
        at_length (right, packing->bottom + packing->right),
        at_length (packing->x, packing->bottom + packing->left),
      };

      drawing_add (scene->drawing, MARK_POLYGON, &look, corners, G_N_ELEMENTS (corners));
    }
}

/* The end of another wall that runs through there. */
static void
add_return (Scene *scene, Length x, Length ret, const Course *course)
{
  const Length half = scene->laying.bed / 2;
  const Length foot = wall_foot_at (scene->wall, x, SIDE_RIGHT);
  const Length low = course->number == 1 ? course->bottom : course->bottom - half;
  const Length high = wall_top_highest (scene->wall, x, x + ret);
  MarkLook look = mark_look (STYLE_RETURN, LAYER_PIECES);

  look.course = course->number;
  look.line_mm = joint_mm (scene);
  if (MAX (low, foot) < MIN (course->top + half, high))
    drawing_add_box (scene->drawing, &look, at_length (x, MAX (low, foot)),
                     at_length (x + ret, MIN (course->top + half, high)));
}

static void
add_returns (Scene *scene)
{
  const Wall *wall = scene->wall;
  const Length left = wall->ends[SIDE_LEFT].ret, right = wall->ends[SIDE_RIGHT].ret;

  for (guint c = 0; c < scene->layout->courses->len; c++)
    {
      const Course *course = layout_course (scene->layout, c);

      if (end_stops (&wall->ends[SIDE_LEFT], course->number, course->bottom))
        add_return (scene, 0, left, course);
      if (end_stops (&wall->ends[SIDE_RIGHT], course->number, course->bottom))
        add_return (scene, wall->length - right, right, course);
      for (guint i = 0; i < wall->tees->len; i++)
        if (tee_stops (wall_tee_at (wall, i), course->number, course->bottom))
          add_return (scene, wall_tee_at (wall, i)->x, wall_tee_at (wall, i)->ret, course);
    }
}

/* Its filler, between the two lines that part the wall. */
static void
add_movement_joints (Scene *scene)
{
  const MarkLook look = mark_look (STYLE_MOVEMENT_JOINT, LAYER_PIECES);

  for (guint i = 0; i < scene->wall->movement_joints->len; i++)
    {
      const MovementJoint *joint = wall_movement_joint_at (scene->wall, i);

      scene_face (scene, &look, joint->x, movement_joint_right (joint));
    }
}

static void
add_body (Scene *scene)
{
  const MarkLook body = mark_look (STYLE_WALL_BODY, LAYER_GROUND);

  scene_face (scene, &body, 0, scene->wall->length);
  scene_bed (scene);
}

/* A small picture shows courses only; its perpends would run together into grey. */
void
scene_bare_courses (Scene *scene)
{
  const gint32 n = gauge_n_courses (scene->wall, scene->block, &scene->laying);
  const double pitch = length_to_mm (scene->block->height + scene->laying.bed);
  MarkLook look = mark_look (STYLE_BARE_COURSE, LAYER_PIECES);

  scene_face (scene, &look, 0, scene->wall->length);
  for (gint32 number = 1; number < n; number++)
    {
      look.min_scale = BARE_PITCH / (pitch * (number & -number));
      scene_face_line (scene, &look, gauge_top (scene->wall, scene->block, &scene->laying, number));
    }
}

void
scene_pieces (Scene *scene)
{
  add_body (scene);
  if (!scene->layout)
    return;
  add_packings (scene);
  add_returns (scene);
  add_pieces_of (scene, STYLE_STANDING);
  add_pieces_of (scene, STYLE_STANDING_CUT);
  add_pieces_of (scene, STYLE_PIECE);
  add_pieces_of (scene, STYLE_PIECE_CUT);
  add_pieces_of (scene, STYLE_PIECE_BREACH);
  add_movement_joints (scene);
  add_breaches (scene);
  add_pins (scene);
}
