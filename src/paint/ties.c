/* ties.c - ties of butted walls on an elevation: lengthwise in the wall that stops, on end in the
 * one that runs through */
#include "concrete/ties.h"
#include "paint/scene-private.h"

#define END_HALF 3.f /* steps, of a tie on end */
#define LEG 5.f      /* of an angle, up the face */
/* Rows of a wall on the sheet at least so far apart, steps: closer, they would be a black bar. */
#define PITCH_LEAST 5.0

static double
least_scale (const Scene *scene)
{
  return PITCH_LEAST / MAX (length_to_mm (scene->block->height + scene->laying.bed), 1);
}

/* A strip through the face; a mesh as two lines; an angle with its leg up the face. */
static void
add_row (Scene *scene, const TieRow *row)
{
  const double x = length_to_mm (row->x), z = length_to_mm (row->z);
  const double reach = length_to_mm (TIE_REACH), inwards = row->right ? reach : -reach;
  MarkLook look = mark_look (STYLE_TIE, LAYER_STEEL);

  look.course = row->course;
  look.min_scale = least_scale (scene);
  if (row->kind == TIE_ANGLE)
    {
      drawing_add_line (scene->drawing, &look, at (x, z), at (x + inwards, z));
      drawing_add_line (scene->drawing, &look, at (x, z), at_offset (x, z, 0, -LEG));
      return;
    }
  drawing_add_line (scene->drawing, &look, at (x - inwards, z), at (x + inwards, z));
  if (row->kind == TIE_MESH)
    drawing_add_line (scene->drawing, &look, at_offset (x - inwards, z, 0, 3),
                      at_offset (x + inwards, z, 0, 3));
}

/* Spread over the thickness of the wall that stops. */
static void
add_end (Scene *scene, const TieEnd *end)
{
  const double z = length_to_mm (end->z);
  MarkLook look = mark_look (STYLE_TIE_END, LAYER_STEEL);

  look.course = end->course;
  look.min_scale = least_scale (scene);
  for (gint32 i = 0; i < end->abreast; i++)
    {
      const double x
          = length_to_mm (end->x) + length_to_mm (end->width) * (i + 0.5) / (double) end->abreast;

      drawing_add_box (scene->drawing, &look, at_offset (x, z, -END_HALF, END_HALF - 1),
                       at_offset (x, z, END_HALF, 1 - END_HALF));
    }
}

void
scene_ties (Scene *scene)
{
  const int index = project_wall_index (scene->input->project, scene->wall->id);
  g_autoptr (GArray) rows = ties_of_wall (scene->wall, scene->block);
  g_autoptr (GArray) ends = NULL;

  for (guint i = 0; i < rows->len; i++)
    add_row (scene, &g_array_index (rows, TieRow, i));
  if (index < 0)
    return;
  ends = ties_into_wall (scene->input->project, (guint) index);
  for (guint i = 0; i < ends->len; i++)
    add_end (scene, &g_array_index (ends, TieEnd, i));
}
