/* built.c - what stands of a wall: its top, and how far it is off what was planned, each figure
 * where it was measured */
#include "paint/scene-private.h"

#include <glib/gi18n-lib.h>

#include "bond/gauge.h"
#include "site/as-built.h"

/* A level mark stands on its tip, with its figure over it; steps. */
#define MARK_HALF 3.5f
#define MARK_HEIGHT 6.f
/* Least height of a course on the sheet that takes a figure over the mark at its end, and one
 * beside it. */
#define FIGURE_PITCH 18.0
#define BESIDE_PITCH 10.0
/* Lines of text over the rod, from the wall's top. */
#define FACE_FIRST 15.f
#define FACE_PITCH 12.f
/* Where the tab at the top of what stands begins: right of the rod's pointers. */
#define TAB_LEFT (ROD_RIGHT + 18)

/* "! +18" of what is over its limit, so that it is told without colour, too. Newly allocated. */
static char *
dup_judged (const Deviation *deviation)
{
  char text[LENGTH_TEXT_SIZE];

  return g_strconcat (deviation->within ? "" : "! ", length_off_text (deviation->off, text), NULL);
}

static MarkLook
figure_look (const Deviation *deviation)
{
  return mark_look (deviation->within ? STYLE_DEVIATION : STYLE_DEVIATION_OVER, LAYER_DIMENSIONS);
}

/* ---- the top of what stands ---- */

static void
add_top (Scene *scene)
{
  const gint32 standing = wall_standing (scene->wall);
  const Length top
      = MIN (gauge_top (scene->wall, scene->block, &scene->laying, standing), scene->wall->height);
  const double z = length_to_mm (top);
  const MarkLook line = mark_look (STYLE_STANDING_LINE, LAYER_LABELS);
  const MarkLook at_rod = mark_look (STYLE_STANDING_LINE, LAYER_ROD);
  const MarkLook tab = mark_look (STYLE_STANDING_TAB, LAYER_ROD);
  g_autofree char *text = g_strdup_printf (_ ("laid to course %d"), standing);

  scene_face_line (scene, &line, top);
  drawing_add_line (scene->drawing, &at_rod, at_offset (0, z, ROD_LEFT, 0), at (0, z));
  drawing_add_text (scene->drawing, &tab, at_offset (0, z, TAB_LEFT, 0), 0, 0.5f, text);
}

/* ---- tops of courses ---- */

/* The figure of a level mark: over it where the courses are high enough for that on the sheet, else
 * beside it. */
static void
add_level_figure (Scene *scene, const Deviation *deviation, double least)
{
  const float out = deviation->at_right ? 1 : -1;
  const double x = length_to_mm (deviation->x), z = length_to_mm (deviation->z);
  const float anchor = deviation->at_right ? 0 : 1;
  MarkLook figure = figure_look (deviation);
  char text[LENGTH_TEXT_SIZE];

  length_off_text (deviation->off, text);
  figure.course = deviation->course;
  figure.min_scale = FIGURE_PITCH / length_to_mm (scene->block->height);
  drawing_add_text (scene->drawing, &figure, at_offset (x, z, out, -MARK_HEIGHT - 1), anchor, 1,
                    text);
  figure.max_scale = figure.min_scale;
  figure.min_scale = least;
  drawing_add_text (scene->drawing, &figure,
                    at_offset (x, z, out * (2 * MARK_HALF + 3), -MARK_HEIGHT / 2), anchor, 0.5f,
                    text);
}

/* A level mark on the course's top, outside of the wall's end: filled where it is over its limit,
 * for there is no room beside the rod for another sign. Such a one is never left out. */
static void
add_level (Scene *scene, const Deviation *deviation)
{
  const float tip = (deviation->at_right ? 1 : -1) * (MARK_HALF + 1);
  const double x = length_to_mm (deviation->x), z = length_to_mm (deviation->z);
  MarkLook mark = mark_look (deviation->within ? STYLE_DEVIATION_MARK : STYLE_DEVIATION_MARK_OVER,
                             LAYER_DIMENSIONS);
  const MarkPoint points[] = {
    at_offset (x, z, tip, 0),
    at_offset (x, z, tip - MARK_HALF, -MARK_HEIGHT),
    at_offset (x, z, tip + MARK_HALF, -MARK_HEIGHT),
  };

  mark.course = deviation->course;
  if (deviation->within)
    mark.min_scale = BESIDE_PITCH / length_to_mm (scene->block->height);
  drawing_add (scene->drawing, MARK_POLYGON, &mark, points, G_N_ELEMENTS (points));
  add_level_figure (scene, deviation, mark.min_scale);
}

/* ---- length ---- */

/* At the right end of the length's dimension: "+12 (3608)", the planned one in brackets. */
static void
add_length (Scene *scene, const Deviation *deviation)
{
  const float away = scene_chain_away (scene, wall_dimension_rows (scene->wall));
  const MarkLook look = figure_look (deviation);
  char planned[LENGTH_TEXT_SIZE];
  g_autofree char *off = dup_judged (deviation);
  g_autofree char *text
      = g_strdup_printf ("%s (%s)", off, length_text (deviation->planned, planned));

  drawing_add_text (scene->drawing, &look,
                    at_offset (length_to_mm (deviation->x), wall_head (scene->wall), 8, -away), 0,
                    0.5f, text);
}

/* ---- openings ---- */

/* What each figure is called, steps from where it was measured, and which side of the text is
 * there. The jamb's stands under the opening's name, the width's over it. */
static const struct
{
  const char *word;
  float dx, dy, anchor_x, anchor_y;
} seats[] = {
  [FIGURE_X] = { N_ ("jamb %s"), 4, 24, 0, 0 },
  [FIGURE_WIDTH] = { N_ ("width %s"), -4, -24, 1, 1 },
  [FIGURE_SILL] = { N_ ("sill %s"), 0, -3, 0.5f, 1 },
  [FIGURE_HEIGHT] = { N_ ("height %s"), 0, 3, 0.5f, 0 },
};

static void
add_opening (Scene *scene, const Deviation *deviation)
{
  const Opening *opening = wall_opening (scene->wall, deviation->opening);
  g_autofree char *off = dup_judged (deviation);
  g_autofree char *text = g_strdup_printf (_ (seats[deviation->figure].word), off);
  MarkLook look = figure_look (deviation);

  look.fit = length_to_mm (opening->width);
  drawing_add_text (scene->drawing, &look,
                    at_offset (length_to_mm (deviation->x), length_to_mm (deviation->z),
                               seats[deviation->figure].dx, seats[deviation->figure].dy),
                    seats[deviation->figure].anchor_x, seats[deviation->figure].anchor_y, text);
}

/* ---- the wall as a whole ---- */

/* Out of plumb, off its line: it cannot be seen in an elevation, and is written over the rod, each
 * in a line of its own. */
static void
add_face (Scene *scene, const Deviation *deviation, const char *word, int line)
{
  const MarkLook look = figure_look (deviation);
  g_autofree char *off = dup_judged (deviation);
  g_autofree char *text = g_strdup_printf (word, off);

  drawing_add_text (
      scene->drawing, &look,
      at_offset (0, wall_head (scene->wall), -8, -FACE_FIRST - FACE_PITCH * (float) line), 1, 0.5f,
      text);
}

static void
add_deviation (Scene *scene, const Deviation *deviation)
{
  switch (deviation->kind)
    {
    case TOLERANCE_LENGTH:
      add_length (scene, deviation);
      break;
    case TOLERANCE_TOP:
      add_level (scene, deviation);
      break;
    case TOLERANCE_OPENING:
      add_opening (scene, deviation);
      break;
    case TOLERANCE_PLUMB:
      add_face (scene, deviation, _ ("plumb %s"), 0);
      break;
    case TOLERANCE_BOW:
      add_face (scene, deviation, _ ("bow %s"), 1);
      break;
    case TOLERANCE_BOW_METRE:
      add_face (scene, deviation, _ ("bow in a metre %s"), 2);
      break;
    case TOLERANCE_LEVEL:
    case TOLERANCE_BED:
    case N_TOLERANCES:
    default:
      break;
    }
}

void
scene_built (Scene *scene)
{
  g_autoptr (AsBuilt) built
      = scene->layout ? as_built_new (scene->input->project, scene->wall, scene->layout) : NULL;

  if (wall_standing (scene->wall) > 0)
    add_top (scene);
  for (guint i = 0; built && i < built->deviations->len; i++)
    add_deviation (scene, as_built_deviation (built, i));
}
