/* client.c - the finished wall, as a client wants to see it */
#include "paint/elevation.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "paint/scene-private.h"

#define FAR_SIDE 6000.f
/* Where the sky stops changing above the wall, steps. */
#define SKY_HEIGHT 140.f
#define PLINTH 300.0 /* height, mm; common practice: splash water reaches that high */
#define CAP 60.0
#define CAP_OUT 35.0
#define CAP_SHADE 55.0
/* What stands below the ground is clear of a step of this depth, mm. */
#define FOOT (-90.0)
/* Below that, steps. */
#define WIDTHS 14.f
#define TOTAL 38.f
#define BAR_TOP 76.f
#define BAR_BOTTOM 83.f
#define BAR_PARTS 4
/* Shortest dimension that is drawn: one that takes its number. */
#define DIMENSION_LEAST 27.0
#define FIGURE_ROOM 760.0
/* Room that a title has over the narrowest wall, and an average letter's share of it, steps. */
#define TITLE_LEAST 400.0
#define TITLE_LETTER 14.5
#define TEXT_LETTER 6.5

static void
add_box (Scene *scene, Style style, Layer layer, MarkPoint a, MarkPoint c)
{
  const MarkLook look = mark_look (style, layer);

  drawing_add_box (scene->drawing, &look, a, c);
}

static void
add_surroundings (Scene *scene, double length, double height)
{
  const MarkLook line = mark_look (STYLE_CLIENT_GROUND_LINE, LAYER_GROUND);

  add_box (scene, STYLE_CLIENT_SKY_HIGH, LAYER_GROUND, at_offset (0, height, -FAR_SIDE, 0),
           at_offset (length, height, FAR_SIDE, -FAR_SIDE));
  add_box (scene, STYLE_CLIENT_SKY, LAYER_GROUND, at_offset (0, 0, -FAR_SIDE, 0),
           at_offset (length, height, FAR_SIDE, -SKY_HEIGHT));
  add_box (scene, STYLE_CLIENT_GROUND, LAYER_GROUND, at_offset (0, 0, -FAR_SIDE, FAR_SIDE),
           at_offset (length, 0, FAR_SIDE, 0));
  if (scene->wall->feet->len > 0)
    {
      const MarkLook ground = mark_look (STYLE_CLIENT_GROUND, LAYER_GROUND);

      scene_steps (scene, &ground, FAR_SIDE);
      scene_steps_line (scene, &line, FAR_SIDE);
    }
  else
    drawing_add_line (scene->drawing, &line, at_offset (0, 0, -FAR_SIDE, 0),
                      at_offset (length, 0, FAR_SIDE, 0));
}

/* What lies on the top: the cap as planned, or one as the roofer will put there; it overhangs the
 * ends, and goes on there as the top does. */
static void
add_cap (Scene *scene)
{
  const Wall *wall = scene->wall;
  const double thick = wall->cap.height > 0 ? length_to_mm (wall->cap.height) : CAP;
  const Length out = length_from_mm (CAP_OUT);
  const TopLine left = top_line (wall->tops, wall->height, 0, SIDE_RIGHT);
  const TopLine right = top_line (wall->tops, wall->height, wall->length, SIDE_LEFT);
  const MarkLook look = mark_look (STYLE_CLIENT_CAP, LAYER_PIECES);
  g_autoptr (GArray) top = face_top (wall, 0, wall->length);
  g_autoptr (GArray) points = g_array_new (FALSE, FALSE, sizeof (MarkPoint));

  g_array_index (top, LayPoint, 0) = (LayPoint){ -out, top_line_at (&left, -out) };
  g_array_index (top, LayPoint, top->len - 1)
      = (LayPoint){ wall->length + out, top_line_at (&right, wall->length + out) };
  for (guint i = 0; i < 2 * top->len; i++)
    {
      const gboolean under = i < top->len;
      const LayPoint corner = g_array_index (top, LayPoint, under ? i : 2 * top->len - 1 - i);
      MarkPoint point = at_length (corner.x, corner.z);

      point.z += under ? 0 : thick;
      g_array_append_val (points, point);
    }
  drawing_add (scene->drawing, MARK_POLYGON, &look, (const MarkPoint *) (gpointer) points->data,
               points->len);
}

static void
add_render (Scene *scene, double height)
{
  const double plinth = MIN (PLINTH, height / 5);
  const MarkLook wall = mark_look (STYLE_CLIENT_WALL, LAYER_PIECES);
  const MarkLook foot = mark_look (STYLE_CLIENT_PLINTH, LAYER_PIECES);
  const MarkLook shade = mark_look (STYLE_CLIENT_SHADE, LAYER_PIECES);

  scene_face (scene, &wall, 0, scene->wall->length);
  scene_face_foot (scene, &foot, plinth);
  scene_face_top (scene, &shade, -CAP_SHADE, CAP_SHADE);
  for (guint i = 0; i < scene->wall->movement_joints->len; i++)
    {
      const MovementJoint *joint = wall_movement_joint_at (scene->wall, i);

      const MarkLook look = mark_look (STYLE_CLIENT_MOVEMENT_JOINT, LAYER_PIECES);

      scene_face (scene, &look, joint->x, movement_joint_right (joint));
    }
  add_cap (scene);
}

/* Metres with two decimals, rounded. */
static char *
metres (Length length)
{
  const gint64 centimetres = ((gint64) length + 5 * LENGTH_PER_MM) / (10 * LENGTH_PER_MM);

  return g_strdup_printf ("%" G_GINT64_FORMAT ".%02d", centimetres / 100,
                          (int) (centimetres % 100));
}

static void
add_dimension (Scene *scene, Length from, Length to, float dy, const char *text, double fit)
{
  const double x0 = length_to_mm (from), x1 = length_to_mm (to);
  MarkLook line = mark_look (STYLE_CLIENT_DIMENSION, LAYER_DIMENSIONS);
  MarkLook label = mark_look (STYLE_CLIENT_DIMENSION_TEXT, LAYER_DIMENSIONS);

  line.min_scale = label.min_scale = fit > 0 ? DIMENSION_LEAST / fit : 0;
  drawing_add_line (scene->drawing, &line, at_offset (x0, FOOT, 0, dy),
                    at_offset (x1, FOOT, 0, dy));
  drawing_add_line (scene->drawing, &line, at_offset (x0, FOOT, 0, dy - 4),
                    at_offset (x0, FOOT, 0, dy + 4));
  drawing_add_line (scene->drawing, &line, at_offset (x1, FOOT, 0, dy - 4),
                    at_offset (x1, FOOT, 0, dy + 4));
  label.fit = fit;
  drawing_add_text (scene->drawing, &label, at_offset ((x0 + x1) / 2, FOOT, 0, dy + 3), 0.5f, 0,
                    text);
}

/* Widths of what stands lowest; of openings one above the other only the first. */
static void
add_dimensions (Scene *scene)
{
  g_autoptr (GPtrArray) openings = wall_openings_sorted (scene->wall);
  g_autofree char *total = metres (scene->wall->length);
  g_autofree char *total_text = g_strdup_printf (_ ("%s m"), total);
  Length end = 0;

  for (guint i = 0; i < openings->len; i++)
    {
      const Opening *opening = g_ptr_array_index (openings, i);
      g_autofree char *text = metres (opening->width);
      if (opening->x < end)
        continue;
      end = opening_right (opening);
      add_dimension (scene, opening->x, end, WIDTHS, text, length_to_mm (opening->width));
    }
  add_dimension (scene, 0, scene->wall->length, openings->len > 0 ? TOTAL : WIDTHS, total_text, 0);
}

/* The scale bar */

/* A quarter of the bar, mm: the longest round one with which the bar is a fifth to two fifths of
 * the wall. */
static double
bar_part (double length)
{
  static const double steps[] = { 2, 2.5, 2 };
  double part = 50;

  for (guint i = 0; part * steps[i % 3] * BAR_PARTS <= length / 2.5; i++)
    part *= steps[i % 3];
  return part;
}

static void
add_bar_number (Scene *scene, double x, guint i)
{
  char digits[G_ASCII_DTOSTR_BUF_SIZE];
  MarkLook look = mark_look (STYLE_CLIENT_SCALE_TEXT, LAYER_DIMENSIONS);
  const char *number = g_ascii_formatd (digits, sizeof digits, "%g", x / 1000);
  g_autofree char *text = i == BAR_PARTS ? g_strdup_printf (_ ("%s m"), number) : g_strdup (number);

  look.min_scale = 34 / (x > 0 ? x / i : 1) * (i % 2 == 1 ? 1 : 0);
  drawing_add_text (scene->drawing, &look, at_offset (x, FOOT, 0, BAR_BOTTOM + 4), 0.5f, 0, text);
}

static void
add_bar (Scene *scene, double length)
{
  const double part = bar_part (length);

  for (guint i = 0; i < BAR_PARTS; i++)
    add_box (scene, i % 2 == 0 ? STYLE_CLIENT_SCALE_DARK : STYLE_CLIENT_SCALE_LIGHT,
             LAYER_DIMENSIONS, at_offset (part * i, FOOT, 0, BAR_BOTTOM),
             at_offset (part * (i + 1), FOOT, 0, BAR_TOP));
  for (guint i = 0; i <= BAR_PARTS; i++)
    add_bar_number (scene, part * i, i);
}

/* Title */

static char *
square_metres (double mm2)
{
  char digits[G_ASCII_DTOSTR_BUF_SIZE];

  return g_strdup (g_ascii_formatd (digits, sizeof digits, "%.1f", mm2 / 1e6));
}

static char *
areas_text (const Wall *wall)
{
  double holes = 0;

  for (guint i = 0; i < wall->openings->len; i++)
    {
      const Opening *opening = wall_opening_at (wall, i);
      holes += length_to_mm (opening->width) * length_to_mm (opening->height);
    }
  g_autofree char *gross = square_metres (wall_face_area (wall, 0, wall->length));
  g_autofree char *open = square_metres (holes);
  if (wall->openings->len == 0)
    return g_strdup_printf (_ ("%s m² of wall"), gross);
  return g_strdup_printf (_ ("%s m² of wall · %s m² of openings"), gross, open);
}

static char *
block_text (const Block *block)
{
  char text[LENGTH_TEXT_SIZE];

  return g_strdup_printf (_ ("blocks of %s mm, rendered"), length_text (block->thickness, text));
}

static void
add_line_of_text (Scene *scene, Style style, double height, float dy, const char *text)
{
  const MarkLook look = mark_look (style, LAYER_DIMENSIONS);

  drawing_add_text (scene->drawing, &look, at_offset (0, height, 0, dy), 0, 0, text);
}

/* A name of any length: the wider the wall is seen, the more of it is written. */
static void
add_name (Scene *scene, Style style, double letter, double height, float dy, const char *text)
{
  const double length = length_to_mm (scene->wall->length);
  MarkLook look = mark_look (style, LAYER_DIMENSIONS);
  glong n = (glong) (TITLE_LEAST / letter);

  for (; n < g_utf8_strlen (text, -1); n += n / 3)
    {
      g_autofree char *start = g_utf8_substring (text, 0, n - 1);
      g_autofree char *cut = g_strdup_printf ("%s…", g_strchomp (start));

      look.max_scale = (double) (n + n / 3) * letter / length;
      drawing_add_text (scene->drawing, &look, at_offset (0, height, 0, dy), 0, 0, cut);
      look.min_scale = look.max_scale;
    }
  look.max_scale = 0;
  drawing_add_text (scene->drawing, &look, at_offset (0, height, 0, dy), 0, 0, text);
}

static void
add_title (Scene *scene, double height)
{
  const char *project = scene->input->project->title, *name = scene->wall->name;
  g_autofree char *areas = areas_text (scene->wall);
  g_autofree char *blocks = block_text (scene->block);
  g_autofree char *facts = g_strdup_printf ("%s · %s", areas, blocks);
  g_autofree char *subtitle = project && *project
                                  ? g_strdup_printf (_ ("%s · outside face"), project)
                                  : g_strdup (_ ("Outside face"));

  add_name (scene, STYLE_CLIENT_TITLE, TITLE_LETTER, height, -96, *name ? name : scene->wall->key);
  add_name (scene, STYLE_CLIENT_TEXT, TEXT_LETTER, height, -64, subtitle);
  add_line_of_text (scene, STYLE_CLIENT_TEXT, height, -46, facts);
}

/* The person */

/* How far the wall is free of openings to both sides of x, mm. */
static double
free_around (const Wall *wall, double x)
{
  double room = MIN (x, length_to_mm (wall->length) - x);

  for (guint i = 0; i < wall->openings->len; i++)
    {
      const Opening *opening = wall_opening_at (wall, i);
      const double left = length_to_mm (opening->x), right = length_to_mm (opening_right (opening));
      room = MIN (room, x < left ? left - x : x > right ? x - right : 0);
    }
  return room;
}

/* Beside a door, else in the middle of the widest pier, else beside the wall. */
static double
figure_place (const Wall *wall)
{
  g_autoptr (GPtrArray) openings = wall_openings_sorted (wall);
  double best = -FIGURE_ROOM * 0.75, room = FIGURE_ROOM / 2, end = 0;

  for (guint i = 0; i <= openings->len; i++)
    {
      const Opening *opening = i < openings->len ? g_ptr_array_index (openings, i) : NULL;
      const double next = length_to_mm (opening ? opening->x : wall->length);
      const double beside = next - FIGURE_ROOM / 2, middle = (end + next) / 2;
      if (opening && opening->kind == OPENING_DOOR && free_around (wall, beside) >= FIGURE_ROOM / 2)
        return beside;
      if (free_around (wall, middle) > room)
        {
          room = free_around (wall, middle);
          best = middle;
        }
      end = opening ? MAX (end, length_to_mm (opening_right (opening))) : end;
    }
  return best;
}

/* On the ground before the wall. */
static void
add_figure (Scene *scene)
{
  const double x = figure_place (scene->wall);
  const Length place = CLAMP (length_from_mm (x), 0, scene->wall->length);
  const Side side = place == scene->wall->length ? SIDE_LEFT : SIDE_RIGHT;

  scene_figure (scene, x, length_to_mm (wall_foot_at (scene->wall, place, side)));
}

Drawing *
elevation_client (const ElevationInput *input)
{
  Scene scene = scene_new (input);
  const double length = length_to_mm (scene.wall->length);
  const double height = length_to_mm (scene.wall->height);

  if (!input->bare)
    add_surroundings (&scene, length, height);
  add_render (&scene, height);
  for (guint i = 0; i < scene.wall->openings->len; i++)
    scene_client_opening (&scene, wall_opening_at (scene.wall, i));
  if (!input->bare)
    {
      add_figure (&scene);
      add_dimensions (&scene);
      add_bar (&scene, length);
      add_title (&scene, elevation_height (scene.wall, TRUE));
    }
  drawing_finish (scene.drawing);
  return scene.drawing;
}
