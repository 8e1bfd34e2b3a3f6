/* openings.c - openings with their names and sizes, and the steel in the beds between them */
#include "paint/scene-private.h"

#include "bond/gauge.h"
#include "concrete/bed-steel.h"

/* Least sizes on the sheet, steps: of an opening that takes a name, a name and its size, and the
 * lines of a sash or a leaf. */
#define NAME_HEIGHT 16.0
#define BOTH_HEIGHT 36.0
#define SASH_SIZE 64.0
/* Of a size's figures, steps; a little more than any sans has. */
#define FIGURE_WIDTH 6.6
/* Half of the gap that a mullion leaves for the name. */
#define NAME_GAP 22.f
#define SASH_INSET 4.f

static const Style opening_styles[] = {
  [OPENING_WINDOW] = STYLE_OPENING_WINDOW,
  [OPENING_DOOR] = STYLE_OPENING_DOOR,
  [OPENING_VOID] = STYLE_OPENING_VOID,
};

typedef struct
{
  double x0, x1, z0, z1, x, z; /* mm; x and z the middle */
} Hole;

static Hole
hole_of (const Opening *opening)
{
  const double x0 = length_to_mm (opening->x), z0 = length_to_mm (opening->sill);
  const double x1 = x0 + length_to_mm (opening->width);
  const double z1 = z0 + length_to_mm (opening->height);

  return (Hole){ x0, x1, z0, z1, (x0 + x1) / 2, (z0 + z1) / 2 };
}

static MarkLook
detail_look (const Hole *hole)
{
  MarkLook look = mark_look (STYLE_OPENING_LINE, LAYER_OPENINGS);

  look.min_scale = SASH_SIZE / MIN (hole->x1 - hole->x0, hole->z1 - hole->z0);
  return look;
}

/* A line within the jambs and the head; round all four sides for a window. */
static void
add_sash (Drawing *drawing, const Hole *hole, gboolean closed)
{
  const MarkLook look = detail_look (hole);
  const float foot = closed ? -SASH_INSET : 0;
  const MarkPoint points[] = {
    at_offset (hole->x0, hole->z0, SASH_INSET, foot),
    at_offset (hole->x0, hole->z1, SASH_INSET, SASH_INSET),
    at_offset (hole->x1, hole->z1, -SASH_INSET, SASH_INSET),
    at_offset (hole->x1, hole->z0, -SASH_INSET, foot),
    at_offset (hole->x0, hole->z0, SASH_INSET, foot),
  };

  drawing_add (drawing, MARK_LINE, &look, points, closed ? 5 : 4);
}

static void
add_window (Drawing *drawing, const Hole *hole)
{
  const MarkLook look = detail_look (hole);

  add_sash (drawing, hole, TRUE);
  drawing_add_line (drawing, &look, at_offset (hole->x, hole->z1, 0, SASH_INSET),
                    at_offset (hole->x, hole->z, 0, -NAME_GAP));
  drawing_add_line (drawing, &look, at_offset (hole->x, hole->z, 0, NAME_GAP),
                    at_offset (hole->x, hole->z0, 0, -SASH_INSET));
}

/* The crossed lines of a hole, short of the middle where the name is. */
static void
add_void (Drawing *drawing, const Hole *hole)
{
  const MarkLook look = detail_look (hole);
  const double dx = (hole->x1 - hole->x0) * 0.3, dz = (hole->z1 - hole->z0) * 0.3;

  drawing_add_line (drawing, &look, at (hole->x0, hole->z0), at (hole->x0 + dx, hole->z0 + dz));
  drawing_add_line (drawing, &look, at (hole->x1, hole->z1), at (hole->x1 - dx, hole->z1 - dz));
  drawing_add_line (drawing, &look, at (hole->x0, hole->z1), at (hole->x0 + dx, hole->z1 - dz));
  drawing_add_line (drawing, &look, at (hole->x1, hole->z0), at (hole->x1 - dx, hole->z0 + dz));
}

static void
add_detail (Drawing *drawing, const Opening *opening, const Hole *hole)
{
  switch (opening->kind)
    {
    case OPENING_WINDOW:
      add_window (drawing, hole);
      break;
    case OPENING_DOOR:
      add_sash (drawing, hole, FALSE);
      break;
    case OPENING_VOID:
      add_void (drawing, hole);
      break;
    }
}

/* The scale from which on there is room for the size under the name, or alone. */
static double
size_scale (const Hole *hole, const char *text, gboolean named)
{
  const double width = FIGURE_WIDTH * (double) g_utf8_strlen (text, -1) + 2;

  return MAX ((named ? BOTH_HEIGHT : NAME_HEIGHT) / (hole->z1 - hole->z0),
              width / (hole->x1 - hole->x0));
}

static void
add_label (Drawing *drawing, const MarkLook *look, const Hole *hole, float dy, const char *text)
{
  drawing_add_text (drawing, look, at_offset (hole->x, hole->z, 0, dy), 0.5f, 0.5f, text);
}

/* The name, in the middle while it is alone. */
static void
add_name (Drawing *drawing, const Opening *opening, const Hole *hole)
{
  char width[LENGTH_TEXT_SIZE], height[LENGTH_TEXT_SIZE];
  const gboolean named = *opening->name != '\0';
  MarkLook name = mark_look (STYLE_OPENING_LABEL, LAYER_OPENINGS);
  MarkLook size = mark_look (STYLE_OPENING_SIZE, LAYER_OPENINGS);
  g_autofree char *text = g_strdup_printf ("%s × %s", length_text (opening->width, width),
                                           length_text (opening->height, height));

  name.fit = size.fit = hole->x1 - hole->x0;
  size.min_scale = size_scale (hole, text, named);
  add_label (drawing, &size, hole, named ? 9 : 0, text);
  if (!named)
    return;
  name.min_scale = size.min_scale;
  add_label (drawing, &name, hole, -8, opening->name);
  name.min_scale = NAME_HEIGHT / (hole->z1 - hole->z0);
  name.max_scale = size.min_scale;
  add_label (drawing, &name, hole, 0, opening->name);
}

static void
add_opening (Scene *scene, const Opening *opening)
{
  const Hole hole = hole_of (opening);
  MarkLook look = mark_look (opening_styles[opening->kind], LAYER_OPENINGS);

  look.ref = ref_of (REF_OPENING, opening->id.n, PART_BODY);
  drawing_add_box (scene->drawing, &look, at (hole.x0, hole.z0), at (hole.x1, hole.z1));
  if (scene->input->bare)
    return;
  add_detail (scene->drawing, opening, &hole);
  add_name (scene->drawing, opening, &hole);
}

void
scene_openings (Scene *scene)
{
  for (guint i = 0; i < scene->wall->openings->len; i++)
    add_opening (scene, wall_opening_at (scene->wall, i));
}

/* Steel */

/* Where a stock length ends the next one lies beside it: a second line, a little lower. */
static void
add_laps (Scene *scene, const SteelRun *run, double z)
{
  MarkLook look = mark_look (STYLE_STEEL_LAP, LAYER_STEEL);
  const Length lap = scene->wall->steel.lap;

  look.course = run->course;
  for (gint32 k = 1; k <= run->n_laps; k++)
    {
      const gint64 end = run->from + (gint64) k * (STEEL_STOCK - lap) + lap;
      const double to = length_to_mm ((Length) MIN (end, run->to));
      drawing_add_line (scene->drawing, &look, at_offset (to - length_to_mm (lap), z, 0, 3),
                        at_offset (to, z, 0, 3));
    }
}

static void
add_run (Scene *scene, const SteelRun *run)
{
  MarkLook look = mark_look (STYLE_STEEL, LAYER_STEEL);
  const Length top = gauge_top (scene->wall, scene->block, &scene->laying, run->course);
  const double z = length_to_mm (MIN (top, scene->wall->height));

  look.course = run->course;
  look.ref = (MarkRef){ .kind = REF_STEEL, .a = run->course };
  drawing_add_line (scene->drawing, &look, at (length_to_mm (run->from), z),
                    at (length_to_mm (run->to), z));
  add_laps (scene, run, z);
}

void
scene_steel (Scene *scene)
{
  g_autoptr (GArray) runs = bed_steel_runs (scene->wall, scene->block);

  for (guint i = 0; i < runs->len; i++)
    add_run (scene, &g_array_index (runs, SteelRun, i));
}
