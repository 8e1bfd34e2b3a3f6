/* footing.c - the levelling bed, on the footing as it was surveyed, to scale, or as it steps up */
#include "paint/scene-private.h"

#include "bond/gauge.h"
#include "site/bed.h"

/* How far the ground runs on either side, steps: past the edge of any screen. */
#define GROUND_REACH 6000.f

/* Under course 1, as drawn or as measured. */
static Length
scene_first_bed (const Scene *scene)
{
  return gauge_bottom (scene->wall, scene->block, &scene->laying, 1);
}

/* The footing in the drawing: the underside of course 1 is as high above zero as it was drawn, and
 * the bed reaches down from there; by no more than any bed may, lest a slip of the pen fill the
 * sheet. */
static void
add_foot (GArray *foot, const Scene *scene, const Beds *beds, const BedWall *wall, Length x)
{
  const Length bed = CLAMP (beds_thickness (beds, wall, x), 0, SURVEY_MAX_BED);
  MarkPoint point = at_length (x, scene_first_bed (scene) - bed);

  g_array_append_val (foot, point);
}

GArray *
scene_foot (const Scene *scene)
{
  GArray *foot = g_array_new (FALSE, FALSE, sizeof (MarkPoint));
  g_autoptr (Beds) beds = beds_of_project (scene->input->project);
  const BedWall *wall = beds_wall (beds, scene->wall->id);
  const MarkPoint ends[] = { at (0, 0), at_length (scene->wall->length, 0) };

  /* On steps the bed is as it was planned: the survey knows none. */
  if (!wall || scene->wall->feet->len > 0)
    return g_array_append_vals (foot, ends, G_N_ELEMENTS (ends));
  add_foot (foot, scene, beds, wall, 0);
  for (guint i = 0; i < wall->foot->len; i++)
    {
      const Length x = g_array_index (wall->foot, FootPoint, i).x;

      if (x > 0 && x < scene->wall->length)
        add_foot (foot, scene, beds, wall, x);
    }
  add_foot (foot, scene, beds, wall, scene->wall->length);
  return foot;
}

/* What lies between the footing and a height. */
static void
fill_to (Scene *scene, const MarkLook *look, double z)
{
  const GArray *foot = scene->foot;
  g_autoptr (GArray) points = g_array_new (FALSE, FALSE, sizeof (MarkPoint));
  const MarkPoint ends[] = { at (0, z), at (g_array_index (foot, MarkPoint, foot->len - 1).x, z) };

  g_array_append_vals (points, ends, G_N_ELEMENTS (ends));
  for (guint i = foot->len; i-- > 0;)
    g_array_append_val (points, g_array_index (foot, MarkPoint, i));
  drawing_add (scene->drawing, MARK_POLYGON, look, (const MarkPoint *) (gpointer) points->data,
               points->len);
}

static gboolean
is_uneven (const GArray *foot)
{
  for (guint i = 0; i < foot->len; i++)
    if (g_array_index (foot, MarkPoint, i).z < 0 || g_array_index (foot, MarkPoint, i).z > 0)
      return TRUE;
  return FALSE;
}

void
scene_bed (Scene *scene)
{
  const MarkLook bed = mark_look (STYLE_BED, LAYER_GROUND);
  const MarkLook ground = mark_look (STYLE_GROUND, LAYER_GROUND);
  const Length first = MIN (scene_first_bed (scene), scene->wall->height);

  if (scene->wall->feet->len > 0)
    scene_face_foot (scene, &bed, length_to_mm (scene_first_bed (scene)));
  else if (is_uneven (scene->foot))
    {
      /* The ground first, up to the footing where that is above zero. */
      fill_to (scene, &ground, 0);
      fill_to (scene, &bed, length_to_mm (first));
    }
  else if (first > 0)
    drawing_add_box (scene->drawing, &bed, at (0, 0), at_length (scene->wall->length, first));
}

void
scene_steps (Scene *scene, const MarkLook *look, float reach)
{
  g_autoptr (GArray) foot = face_foot (scene->wall, 0, scene->wall->length);

  for (guint i = 0; i + 1 < foot->len; i += 2)
    {
      const LayPoint a = g_array_index (foot, LayPoint, i);
      const LayPoint b = g_array_index (foot, LayPoint, i + 1);
      MarkPoint low = at_length (a.x, 0), high = at_length (b.x, b.z);

      low.dx = i == 0 ? -reach : 0;
      high.dx = i + 2 == foot->len ? reach : 0;
      if (b.z > 0)
        drawing_add_box (scene->drawing, look, low, high);
    }
}

void
scene_steps_line (Scene *scene, const MarkLook *look, float reach)
{
  g_autoptr (GArray) foot = face_foot (scene->wall, 0, scene->wall->length);
  g_autoptr (GArray) points = g_array_new (FALSE, FALSE, sizeof (MarkPoint));

  for (guint i = 0; i < foot->len; i++)
    {
      const LayPoint corner = g_array_index (foot, LayPoint, i);
      MarkPoint point = at_length (corner.x, corner.z);

      point.dx = i == 0 ? -reach : i + 1 == foot->len ? reach : 0;
      g_array_append_val (points, point);
    }
  drawing_add (scene->drawing, MARK_LINE, look, (const MarkPoint *) (gpointer) points->data,
               points->len);
}

void
scene_ground (Scene *scene)
{
  const double length = length_to_mm (scene->wall->length);
  const MarkLook ground = mark_look (STYLE_GROUND, LAYER_GROUND);

  drawing_add_box (scene->drawing, &ground, at_offset (0, 0, -GROUND_REACH, GROUND_DEPTH),
                   at_offset (length, 0, GROUND_REACH, 0));
  scene_steps (scene, &ground, GROUND_REACH);
}

/* The steps of the footing, to take hold of: each by its face, the first of a raised one by its
 * height. */
static void
add_step_holds (Scene *scene)
{
  const Wall *wall = scene->wall;
  MarkLook look = mark_look (STYLE_GROUND_LINE, LAYER_OPENINGS);

  for (guint i = 0; i < wall->feet->len; i++)
    {
      const Foot *foot = foot_point (wall->feet, i);
      const Length before = foot->x > 0 ? wall_foot_at (wall, foot->x, SIDE_LEFT) : 0;

      look.ref = (MarkRef){ .kind = REF_FOOT, .a = i };
      drawing_add_line (scene->drawing, &look, at_length (foot->x, before),
                        at_length (foot->x, foot->up));
    }
}

void
scene_ground_line (Scene *scene)
{
  const double length = length_to_mm (scene->wall->length);
  const MarkLook line = mark_look (STYLE_GROUND_LINE, LAYER_GROUND);
  const GArray *foot = scene->foot;

  if (scene->wall->feet->len > 0)
    {
      scene_steps_line (scene, &line, GROUND_REACH);
      add_step_holds (scene);
      return;
    }
  if (!is_uneven (foot))
    {
      drawing_add_line (scene->drawing, &line, at_offset (0, 0, -GROUND_REACH, 0),
                        at_offset (length, 0, GROUND_REACH, 0));
      return;
    }
  drawing_add_line (scene->drawing, &line, at_offset (0, 0, -GROUND_REACH, 0), at (0, 0));
  for (guint i = 1; i < foot->len; i++)
    drawing_add_line (scene->drawing, &line, g_array_index (foot, MarkPoint, i - 1),
                      g_array_index (foot, MarkPoint, i));
  drawing_add_line (scene->drawing, &line, at (length, 0), at_offset (length, 0, GROUND_REACH, 0));
}
