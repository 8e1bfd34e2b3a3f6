/* rod.c - the storey rod at the wall's left: courses, heights, marks of sills and heads, steel */
#include "paint/scene-private.h"

#include "bond/gauge.h"
#include "concrete/bed-steel.h"

/* Least heights on the sheet, steps: of a course with a number in it, between two heights, between
 * two ticks and two rings. */
#define NUMBER_PITCH 11.0
#define HEIGHT_PITCH 13.0
#define TICK_PITCH 4.0
#define RING_PITCH 9.0
#define DOT_RADIUS 3.5f
#define RING_RADIUS 2.5f

typedef struct
{
  Scene *scene;
  double pitch; /* from course to course, mm */
  gint32 n;
} Rod;

static double
course_bottom (const Rod *rod, gint32 number)
{
  return length_to_mm (
      gauge_bottom (rod->scene->wall, rod->scene->block, &rod->scene->laying, number));
}

static double
course_top (const Rod *rod, gint32 number)
{
  const Length top = gauge_top (rod->scene->wall, rod->scene->block, &rod->scene->laying, number);

  return length_to_mm (MIN (top, rod->scene->wall->height));
}

/* Of every second course, every fourth and so on: how many courses stand between this one and the
 * next of its rank. What is drawn at a small scale is a part of what is drawn at a larger one. */
static double
rank (gint32 number)
{
  return (double) (number & -number);
}

/* The scale from which on marks of that rank stand at least `steps` apart. */
static double
scale_for (const Rod *rod, double steps, gint32 number)
{
  return steps / (rod->pitch * rank (number));
}

static void
add_cell (const Rod *rod, gint32 number)
{
  Drawing *drawing = rod->scene->drawing;
  const gboolean current = number == rod->scene->course;
  const double bottom = course_bottom (rod, number), top = course_top (rod, number);
  const gboolean stands = number <= wall_standing (rod->scene->wall);
  MarkLook cell = mark_look (current  ? STYLE_ROD_CURRENT
                             : stands ? STYLE_STANDING
                                      : STYLE_ROD_BED_HIT,
                             LAYER_ROD);
  MarkLook text = mark_look (current ? STYLE_ROD_CURRENT_NUMBER : STYLE_ROD_NUMBER, LAYER_ROD);
  char digits[16];

  cell.ref = (MarkRef){ .kind = REF_COURSE, .a = number };
  text.min_scale = NUMBER_PITCH / MAX (top - bottom, 1);
  drawing_add_box (drawing, &cell, at_offset (0, bottom, ROD_LEFT, 0),
                   at_offset (0, top, ROD_RIGHT, 0));
  g_snprintf (digits, sizeof digits, "%d", number);
  drawing_add_text (drawing, &text,
                    at_offset (0, (bottom + top) / 2, (ROD_LEFT + ROD_RIGHT) / 2, 0), 0.5f, 0.5f,
                    digits);
}

static void
add_tick (const Rod *rod, gint32 number)
{
  const double z = course_top (rod, number);
  MarkLook look = mark_look (STYLE_ROD, LAYER_ROD);

  look.min_scale = scale_for (rod, TICK_PITCH, number);
  drawing_add_line (rod->scene->drawing, &look, at_offset (0, z, ROD_LEFT, 0),
                    at_offset (0, z, ROD_RIGHT, 0));
}

static void
add_height (const Rod *rod, gint32 number)
{
  char text[LENGTH_TEXT_SIZE];
  const Length top = gauge_top (rod->scene->wall, rod->scene->block, &rod->scene->laying, number);
  MarkLook look = mark_look (STYLE_ROD_HEIGHT, LAYER_ROD);
  const double above = length_to_mm (rod->scene->wall->height) - course_top (rod, number);

  if (number == rod->n)
    return;
  look.min_scale = MAX (scale_for (rod, HEIGHT_PITCH, number), HEIGHT_PITCH / above);
  drawing_add_text (rod->scene->drawing, &look,
                    at_offset (0, course_top (rod, number), ROD_LEFT - 6, 0), 1, 0.5f,
                    length_text (top, text));
}

/* The ends of the rod: the top of the levelling bed, and the wall's top. */
static void
add_end_heights (const Rod *rod)
{
  char text[LENGTH_TEXT_SIZE];
  const Scene *scene = rod->scene;
  MarkLook look = mark_look (STYLE_ROD_HEIGHT, LAYER_ROD);

  drawing_add_text (scene->drawing, &look,
                    at_offset (0, length_to_mm (scene->wall->height), ROD_LEFT - 6, 0), 1, 0.5f,
                    length_text (scene->wall->height, text));
  look.min_scale = 1.8 * HEIGHT_PITCH / MAX (course_top (rod, 1), 1);
  if (scene->laying.first_bed > 0 && scene->laying.first_bed < scene->wall->height)
    drawing_add_text (scene->drawing, &look, at_offset (0, 0, ROD_LEFT - 6, 0), 1, 1,
                      length_text (scene->laying.first_bed, text));
}

static void
add_bed (const Rod *rod, gint32 number)
{
  const Scene *scene = rod->scene;
  const double z = course_top (rod, number), half = rod->pitch * 0.4;
  const gboolean steel = bed_steel_has_row (scene->wall, scene->block, number);
  MarkLook hit = mark_look (STYLE_ROD_BED_HIT, LAYER_ROD);
  MarkLook dot = mark_look (steel ? STYLE_ROD_STEEL : STYLE_ROD_BED, LAYER_ROD);

  hit.ref = dot.ref = (MarkRef){ .kind = REF_BED, .a = number };
  dot.min_scale = steel ? 0 : RING_PITCH / rod->pitch;
  drawing_add_box (scene->drawing, &hit, at_offset (0, z - half, ROD_RIGHT - 6, 0),
                   at_offset (0, z + half, ROD_RIGHT + 9, 0));
  drawing_add_circle (scene->drawing, &dot, at_offset (0, z, ROD_RIGHT, 0),
                      steel ? DOT_RADIUS : RING_RADIUS);
}

/* A pointer to the rod at the height of a sill or a head. */
static void
add_pointer (const Rod *rod, const Opening *opening, Length height, RefPart part)
{
  const double z = length_to_mm (height);
  MarkLook look = mark_look (STYLE_ROD_MARK, LAYER_ROD);
  const MarkPoint points[] = {
    at_offset (0, z, ROD_RIGHT + 7, 0),
    at_offset (0, z, ROD_RIGHT + 15, -4.5f),
    at_offset (0, z, ROD_RIGHT + 15, 4.5f),
  };

  look.ref = ref_of (REF_OPENING, opening->id.n, (gint32) part);
  drawing_add (rod->scene->drawing, MARK_POLYGON, &look, points, G_N_ELEMENTS (points));
}

/* One pointer for all openings whose sills or heads are at one height. */
static void
add_pointer_once (const Rod *rod, GArray *heights, const Opening *opening, Length height,
                  RefPart part)
{
  for (guint i = 0; i < heights->len; i++)
    if (g_array_index (heights, Length, i) == height)
      return;
  g_array_append_val (heights, height);
  if (height > 0 && height < rod->scene->wall->height)
    add_pointer (rod, opening, height, part);
}

static void
add_pointers (const Rod *rod)
{
  const Wall *wall = rod->scene->wall;
  g_autoptr (GArray) heights = g_array_new (FALSE, FALSE, sizeof (Length));

  for (guint i = 0; i < wall->openings->len; i++)
    {
      const Opening *opening = wall_opening_at (wall, i);
      add_pointer_once (rod, heights, opening, opening->sill, PART_SILL);
      add_pointer_once (rod, heights, opening, opening_head (opening), PART_HEAD);
    }
}

static void
add_staff (const Rod *rod)
{
  const MarkLook look = mark_look (STYLE_ROD, LAYER_ROD);

  drawing_add_box (rod->scene->drawing, &look, at_offset (0, 0, ROD_LEFT, 0),
                   at_offset (0, length_to_mm (rod->scene->wall->height), ROD_RIGHT, 0));
}

void
scene_rod (Scene *scene)
{
  const Rod rod = {
    .scene = scene,
    .pitch = length_to_mm (scene->block->height + scene->laying.bed),
    .n = gauge_n_courses (scene->wall, scene->block, &scene->laying),
  };

  add_staff (&rod);
  for (gint32 number = 1; number <= rod.n; number++)
    {
      add_tick (&rod, number);
      add_cell (&rod, number);
      add_height (&rod, number);
    }
  add_end_heights (&rod);
  for (gint32 number = 1; number <= rod.n; number++)
    add_bed (&rod, number);
  add_pointers (&rod);
}
