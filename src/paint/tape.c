/* tape.c - the tape along the foot: running dimensions of one course */
#include "paint/scene-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "paint/outline.h"

/* Width of a figure of the tape's size and the room between two numbers, steps. */
#define FIGURE_WIDTH 6.2
#define NUMBER_ROOM 6.0
/* Scales that are tried for each number, steps per mm, each `SCALE_STEP` times the one before. */
#define SCALE_FIRST 0.0005
#define SCALE_LAST 20.0
#define SCALE_STEP 1.1

typedef struct
{
  Length x;
  gboolean end;     /* the tape's own ends are always there */
  double width;     /* of its number, steps */
  double min_scale; /* 0: not placed yet */
} Tick;

static int
compare_ticks (gconstpointer a, gconstpointer b)
{
  const Tick *one = a, *other = b;

  return one->x < other->x ? -1 : one->x > other->x;
}

static void
add_tick (GArray *ticks, Length x, gboolean end)
{
  char text[LENGTH_TEXT_SIZE];
  const Tick tick = {
    .x = x,
    .end = end,
    .width = (double) strlen (length_text (x, text)) * FIGURE_WIDTH,
    .min_scale = end ? SCALE_FIRST : 0,
  };

  g_array_append_val (ticks, tick);
}

static void
drop_doubles (GArray *ticks)
{
  for (guint i = 1; i < ticks->len;)
    {
      Tick *before = &g_array_index (ticks, Tick, i - 1), *tick = &g_array_index (ticks, Tick, i);
      if (tick->x - before->x >= LENGTH_PER_MM)
        {
          i++;
          continue;
        }
      if (tick->end)
        *before = *tick;
      g_array_remove_index (ticks, i);
    }
}

/* Where the upper edge of a raked piece begins and ends. */
static void
add_rake_ticks (GArray *ticks, const Layout *layout, const Piece *piece)
{
  LayPoint corners[OUTLINE_MOST_CORNERS];
  const guint n = piece->shape == PIECE_RAKED ? outline_corners (layout, piece, corners) : 0;

  for (guint i = 0; i < n; i++)
    if (corners[i].x > piece->x && corners[i].x < piece->x + piece->length
        && corners[i].z == piece->bottom + piece->height)
      add_tick (ticks, corners[i].x, FALSE);
}

/* The middles of the perpends, the ends of the segments, and those of raked pieces above. */
static void
add_course_ticks (GArray *ticks, const Layout *layout, const Course *course)
{
  for (gint32 k = 0; k < course->n_pieces; k++)
    {
      const Piece *piece = layout_piece (layout, (guint) (course->first + k));
      const Piece *next = k + 1 < course->n_pieces ? piece + 1 : NULL;
      const Length right = piece->x + piece->length;

      add_rake_ticks (ticks, layout, piece);
      if (k == 0 || piece[-1].segment != piece->segment)
        add_tick (ticks, piece->x, FALSE);
      if (next && next->segment == piece->segment)
        add_tick (ticks, right + (next->x - right) / 2, FALSE);
      else
        add_tick (ticks, right, FALSE);
    }
}

static const Course *
course_shown (const Scene *scene)
{
  const gint32 number = scene->course;

  if (!scene->layout || (guint) number > scene->layout->courses->len)
    return NULL;
  return layout_course (scene->layout, (guint) number - 1);
}

static GArray *
ticks_of (const Scene *scene)
{
  GArray *ticks = g_array_new (FALSE, FALSE, sizeof (Tick));
  const Course *course = course_shown (scene);

  if (course)
    add_course_ticks (ticks, scene->layout, course);
  add_tick (ticks, 0, TRUE);
  add_tick (ticks, scene->wall->length, TRUE);
  g_array_sort (ticks, compare_ticks);
  drop_doubles (ticks);
  return ticks;
}

/* Which numbers show at which scale: from the smallest scale up, each number enters as soon as it
 * has room between those that are there, and stays. So none ever overlap, and zooming in only adds.
 */

static gboolean
has_room (const Tick *a, const Tick *b, double scale)
{
  return length_to_mm (b->x - a->x) * scale >= (a->width + b->width) / 2 + NUMBER_ROOM;
}

/* For each tick the next placed one to its right. */
static void
fill_next (const GArray *ticks, guint *next)
{
  guint placed = ticks->len;

  for (guint i = ticks->len; i-- > 0;)
    {
      next[i] = placed;
      if (g_array_index (ticks, Tick, i).min_scale > 0)
        placed = i;
    }
}

static void
place_at (GArray *ticks, guint *next, double scale)
{
  const Tick *before = NULL;

  fill_next (ticks, next);
  for (guint i = 0; i < ticks->len; i++)
    {
      Tick *tick = &g_array_index (ticks, Tick, i);
      const Tick *after = next[i] < ticks->len ? &g_array_index (ticks, Tick, next[i]) : NULL;
      if (!(tick->min_scale > 0) && (!before || has_room (before, tick, scale))
          && (!after || has_room (tick, after, scale)))
        tick->min_scale = scale;
      if (tick->min_scale > 0)
        before = tick;
    }
}

static void
place_numbers (GArray *ticks)
{
  g_autofree guint *next = g_new (guint, ticks->len);

  for (double scale = SCALE_FIRST; scale < SCALE_LAST; scale *= SCALE_STEP)
    place_at (ticks, next, scale);
}

/* Marks */

static void
add_number (Scene *scene, const Tick *tick)
{
  char text[LENGTH_TEXT_SIZE];
  MarkLook line = mark_look (STYLE_TAPE_TICK, LAYER_TAPE);
  MarkLook number = mark_look (STYLE_TAPE_NUMBER, LAYER_TAPE);
  const double x = length_to_mm (tick->x);

  line.min_scale = tick->min_scale / 5;
  number.min_scale = tick->min_scale > 0 ? tick->min_scale : SCALE_LAST;
  drawing_add_line (scene->drawing, &line, at_offset (x, 0, 0, TAPE_TOP),
                    at_offset (x, 0, 0, TAPE_BOTTOM + 3));
  drawing_add_text (scene->drawing, &number, at_offset (x, 0, 0, TAPE_BOTTOM + 4), 0.5f, 0,
                    length_text (tick->x, text));
}

/* From one place to another along its lower edge, and along its upper one. */
static void
add_band (Scene *scene, Style style, Length from, Length to, Length from_above, Length to_above)
{
  const MarkLook look = mark_look (style, LAYER_TAPE);
  const MarkPoint corners[] = {
    at_offset (length_to_mm (from), 0, 0, TAPE_BOTTOM),
    at_offset (length_to_mm (to), 0, 0, TAPE_BOTTOM),
    at_offset (length_to_mm (to_above), 0, 0, TAPE_TOP),
    at_offset (length_to_mm (from_above), 0, 0, TAPE_TOP),
  };

  drawing_add (scene->drawing, MARK_POLYGON, &look, corners, G_N_ELEMENTS (corners));
}

/* Where a piece ends to the left (-1) or to the right (1), below or above. */
static Length
end_of (const Layout *layout, const Piece *piece, int side, gboolean above)
{
  LayPoint corners[OUTLINE_MOST_CORNERS];
  const guint n = outline_corners (layout, piece, corners);
  const Length z = above ? piece->bottom + piece->height : piece->bottom;
  Length best = side < 0 ? piece->x + piece->length : piece->x;

  for (guint i = 0; i < n; i++)
    if (corners[i].z == z)
      best = side < 0 ? MIN (best, corners[i].x) : MAX (best, corners[i].x);
  return best;
}

/* Only a slope cuts it off aslant: a notch does not. */
static void
add_run (Scene *scene, const Piece *first, const Piece *last)
{
  const Layout *layout = scene->layout;
  const Length left = first->x, right = last->x + last->length;
  const gboolean rakes_left = first->shape == PIECE_RAKED, rakes_right = last->shape == PIECE_RAKED;

  add_band (scene, STYLE_TAPE, rakes_left ? end_of (layout, first, -1, FALSE) : left,
            rakes_right ? end_of (layout, last, 1, FALSE) : right,
            rakes_left ? end_of (layout, first, -1, TRUE) : left,
            rakes_right ? end_of (layout, last, 1, TRUE) : right);
}

/* The tape is white where there is wall and shaded where there is none of it. */
static void
add_bands (Scene *scene)
{
  const Course *course = course_shown (scene);
  const Layout *layout = scene->layout;
  gint32 first = 0;

  add_band (scene, STYLE_TAPE_GAP, 0, scene->wall->length, 0, scene->wall->length);
  for (gint32 k = 0; course && k < course->n_pieces; k++)
    {
      const Piece *piece = layout_piece (layout, (guint) (course->first + k));
      if (k + 1 < course->n_pieces && piece[1].segment == piece->segment)
        continue;
      add_run (scene, layout_piece (layout, (guint) (course->first + first)), piece);
      first = k + 1;
    }
}

static void
add_caption (Scene *scene)
{
  const MarkLook look = mark_look (STYLE_TAPE_LABEL, LAYER_TAPE);
  /* Translators: at the tape along the foot of a wall; the course whose perpends it shows */
  g_autofree char *text = g_strdup_printf (_ ("course %d"), scene->course);

  drawing_add_text (scene->drawing, &look, at_offset (0, 0, -10, (TAPE_TOP + TAPE_BOTTOM) / 2), 1,
                    0.5f, text);
}

void
scene_tape (Scene *scene)
{
  g_autoptr (GArray) ticks = ticks_of (scene);

  place_numbers (ticks);
  add_bands (scene);
  for (guint i = 0; i < ticks->len; i++)
    add_number (scene, &g_array_index (ticks, Tick, i));
  add_caption (scene);
}
