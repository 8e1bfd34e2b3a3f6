/* elevation.c - the laying view: the wall's parts put together, and what moves over them */
#include "paint/elevation.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "bond/gauge.h"
#include "concrete/bed-steel.h"
#include "concrete/ties.h"
#include "paint/scene-private.h"
#include "takeoff/takeoff.h"
#include "takeoff/work.h"

#define HANDLE_RADIUS 5.5f
/* Of a point of the top or a step of the footing; how far the ring of the selected one is from it.
 */
#define CORNER_RADIUS 4.f
#define HELD_RING 3.f
/* An opening takes handles on its edges from this size on the sheet; smaller, on its corners. */
#define EDGE_HANDLES 48.0
/* Of the line round a chosen movement joint from its faces, steps. */
#define ROUND_JOINT 3.f
/* Of a pallet before the wall's foot, and what its words want, steps. */
#define PALLET_TALL 15.f
#define PALLET_LABEL 60.0

Scene
scene_new (const ElevationInput *input)
{
  Scene scene = {
    .drawing = drawing_new (),
    .input = input,
    .wall = input->wall,
    .block = project_block (input->project, input->wall->block),
    .layout = input->layout,
  };

  scene.laying = laying_resolve (&input->wall->laying, scene.block);
  scene.course = MAX (input->course, 1);
  if (scene.layout && scene.layout->courses->len > 0)
    scene.course = MIN (scene.course, (gint32) scene.layout->courses->len);
  return scene;
}

/* The lines of a top that is not level; a step is upright. Those that begin at the wall's end or
 * end there have no length beyond it. */
static void
add_top_lines (Scene *scene, MarkLook *look)
{
  const Wall *wall = scene->wall;
  const guint n = wall->tops->len;
  LayPoint from = { 0, wall_top_at (wall, 0, SIDE_RIGHT) };

  for (guint i = 0; i <= n; i++)
    {
      const TopPoint *point = i < n ? top_point (wall->tops, i) : NULL;
      const LayPoint to
          = { point ? point->x : wall->length,
              point ? wall->height - point->below : wall_top_at (wall, wall->length, SIDE_LEFT) };
      const gboolean upright = i > 0 && i < n && to.x == from.x;

      look->ref = (MarkRef){ .kind = REF_TOP,
                             .part = upright ? TOP_STEP : TOP_LINE,
                             .a = upright ? i - 1 : i };
      if (to.x > from.x || (upright && to.x > 0 && to.x < wall->length))
        drawing_add_line (scene->drawing, look, at_length (from.x, from.z), at_length (to.x, to.z));
      from = to;
    }
}

/* The wall's ends and top, to take hold of. */
static void
scene_outline (Scene *scene)
{
  const Wall *wall = scene->wall;
  const Length length = wall->length;
  MarkLook look = mark_look (STYLE_WALL_OUTLINE, LAYER_OPENINGS);

  look.ref = ref_of (REF_WALL, 0, PART_LEFT);
  drawing_add_line (scene->drawing, &look, at_length (0, wall_foot_at (wall, 0, SIDE_RIGHT)),
                    at_length (0, wall_top_at (wall, 0, SIDE_RIGHT)));
  look.ref = ref_of (REF_WALL, 0, PART_RIGHT);
  drawing_add_line (scene->drawing, &look,
                    at_length (length, wall_foot_at (wall, length, SIDE_LEFT)),
                    at_length (length, wall_top_at (wall, length, SIDE_LEFT)));
  look.ref = ref_of (REF_WALL, 0, PART_HEAD);
  if (wall->tops->len == 0)
    drawing_add_line (scene->drawing, &look, at_length (0, wall->height),
                      at_length (length, wall->height));
  else
    add_top_lines (scene, &look);
}

void
scene_cap (Scene *scene)
{
  const MarkLook look = mark_look (STYLE_CAP, LAYER_PIECES);

  if (scene->wall->cap.height > 0)
    scene_face_top (scene, &look, 0, length_to_mm (scene->wall->cap.height));
}

Drawing *
elevation_laying (const ElevationInput *input)
{
  Scene scene = scene_new (input);
  g_autoptr (GArray) foot = input->bare ? NULL : scene_foot (&scene);

  scene.foot = foot;
  if (input->bare)
    scene_bare_courses (&scene);
  else
    {
      scene_ground (&scene);
      scene_pieces (&scene);
      scene_ground_line (&scene);
    }
  scene_cap (&scene);
  scene_outline (&scene);
  scene_openings (&scene);
  if (!input->bare)
    {
      scene_steel (&scene);
      scene_ties (&scene);
      scene_rod (&scene);
      scene_tape (&scene);
      scene_dimensions (&scene);
      scene_built (&scene);
    }
  drawing_finish (scene.drawing);
  return scene.drawing;
}

/* The overlay */

typedef struct
{
  RefPart part;
  int x, z; /* -1 left or bottom, 0 middle, 1 right or top */
} Handle;

static const Handle handles[] = {
  { PART_LEFT, -1, 0 },     { PART_RIGHT, 1, 0 },         { PART_SILL, 0, -1 },
  { PART_HEAD, 0, 1 },      { PART_BOTTOM_LEFT, -1, -1 }, { PART_BOTTOM_RIGHT, 1, -1 },
  { PART_TOP_LEFT, -1, 1 }, { PART_TOP_RIGHT, 1, 1 },
};

static void
add_handle (Drawing *drawing, const Opening *opening, const Handle *handle)
{
  const double width = length_to_mm (opening->width), height = length_to_mm (opening->height);
  MarkLook look = mark_look (STYLE_HANDLE, LAYER_OVERLAY);

  look.ref = ref_of (REF_OPENING, opening->id.n, (gint32) handle->part);
  if (handle->x == 0)
    look.min_scale = EDGE_HANDLES / width;
  if (handle->z == 0)
    look.min_scale = EDGE_HANDLES / height;
  drawing_add_circle (drawing, &look,
                      at (length_to_mm (opening->x) + width * (1 + handle->x) / 2,
                          length_to_mm (opening->sill) + height * (1 + handle->z) / 2),
                      HANDLE_RADIUS);
}

static void
add_selection (Drawing *drawing, const Opening *opening)
{
  MarkLook look = mark_look (STYLE_SELECTED, LAYER_OVERLAY);
  const MarkPoint corners[] = {
    at_length (opening->x, opening->sill),
    at_length (opening_right (opening), opening->sill),
    at_length (opening_right (opening), opening_head (opening)),
    at_length (opening->x, opening_head (opening)),
    at_length (opening->x, opening->sill),
  };

  drawing_add (drawing, MARK_LINE, &look, corners, G_N_ELEMENTS (corners));
  for (guint i = 0; i < G_N_ELEMENTS (handles); i++)
    add_handle (drawing, opening, &handles[i]);
}

/* From a point to the rod and to the tape. */
static void
add_corner_guides (Drawing *drawing, const Wall *wall, MarkPoint place)
{
  const MarkLook look = mark_look (STYLE_GUIDE, LAYER_OVERLAY);

  drawing_add_line (drawing, &look, at_offset (place.x, 0, 0, TAPE_BOTTOM),
                    at_offset (place.x, wall_head (wall), 0, -DIMENSION_FIRST));
  drawing_add_line (drawing, &look, at_offset (0, place.z, ROD_RIGHT, 0),
                    at_offset (length_to_mm (wall->length), place.z, HEIGHTS_FIRST, 0));
}

/* Points of the top and steps of the footing, to take hold of. */
static void
add_corner (Drawing *drawing, const ElevationInput *input, const MarkRef *ref, MarkPoint place)
{
  MarkLook look = mark_look (STYLE_HANDLE, LAYER_OVERLAY);
  const MarkLook held = mark_look (STYLE_HELD, LAYER_OVERLAY);

  if (mark_ref_equal (ref, &input->held) && input->guided)
    add_corner_guides (drawing, input->wall, place);
  if (mark_ref_equal (ref, &input->held))
    drawing_add_circle (drawing, &held, place, HANDLE_RADIUS + HELD_RING);
  look.ref = *ref;
  drawing_add_circle (drawing, &look, place, CORNER_RADIUS);
}

static void
add_corners (Drawing *drawing, const ElevationInput *input)
{
  const Wall *wall = input->wall;

  for (guint i = 0; i < wall->tops->len; i++)
    {
      const TopPoint *point = top_point (wall->tops, i);
      const MarkRef ref = { .kind = REF_TOP, .part = TOP_POINT, .a = i };

      add_corner (drawing, input, &ref, at_length (point->x, wall->height - point->below));
    }
  for (guint i = 0; i < wall->feet->len; i++)
    {
      const Foot *foot = foot_point (wall->feet, i);
      const MarkRef ref = { .kind = REF_FOOT, .a = i };

      add_corner (drawing, input, &ref, at_length (foot->x, foot->up));
    }
}

static void
add_guides (Drawing *drawing, const Wall *wall, const Opening *ghost)
{
  const MarkLook look = mark_look (STYLE_GUIDE, LAYER_OVERLAY);
  const Length xs[] = { ghost->x, opening_right (ghost) };
  const Length zs[] = { ghost->sill, opening_head (ghost) };

  for (guint i = 0; i < G_N_ELEMENTS (xs); i++)
    {
      const double x = length_to_mm (xs[i]), z = length_to_mm (zs[i]);
      drawing_add_line (drawing, &look, at_offset (x, 0, 0, TAPE_BOTTOM),
                        at_offset (x, wall_head (wall), 0, -DIMENSION_FIRST));
      drawing_add_line (drawing, &look, at_offset (0, z, ROD_RIGHT, 0),
                        at_offset (length_to_mm (wall->length), z, HEIGHTS_FIRST, 0));
    }
}

static void
add_guide_text (Drawing *drawing, MarkPoint place, float anchor_x, float anchor_y, const char *text)
{
  const MarkLook look = mark_look (STYLE_GUIDE_TEXT, LAYER_OVERLAY);

  drawing_add_text (drawing, &look, place, anchor_x, anchor_y, text);
}

/* The jambs at the tape, each on its outer side, the sill and the head at the rod. */
static void
add_guide_numbers (Drawing *drawing, const Opening *ghost)
{
  char text[LENGTH_TEXT_SIZE];
  const Length right = opening_right (ghost), head = opening_head (ghost);
  const float below = TAPE_BOTTOM + 4, beside = ROD_LEFT - 6;

  add_guide_text (drawing, at_offset (length_to_mm (ghost->x), 0, -4, below), 1, 0,
                  length_text (ghost->x, text));
  add_guide_text (drawing, at_offset (length_to_mm (right), 0, 4, below), 0, 0,
                  length_text (right, text));
  if (ghost->sill > 0)
    add_guide_text (drawing, at_offset (0, length_to_mm (ghost->sill), beside, 0), 1, 0.5f,
                    length_text (ghost->sill, text));
  add_guide_text (drawing, at_offset (0, length_to_mm (head), beside, 0), 1, 0.5f,
                  length_text (head, text));
}

static void
add_ghost (Drawing *drawing, const Wall *wall, const Opening *ghost)
{
  char width[LENGTH_TEXT_SIZE], height[LENGTH_TEXT_SIZE];
  const MarkLook box = mark_look (STYLE_GHOST, LAYER_OVERLAY);
  const MarkPoint low = at_length (ghost->x, ghost->sill);
  const MarkPoint high = at_length (opening_right (ghost), opening_head (ghost));
  g_autofree char *text = g_strdup_printf ("%s × %s", length_text (ghost->width, width),
                                           length_text (ghost->height, height));

  add_guides (drawing, wall, ghost);
  drawing_add_box (drawing, &box, low, high);
  add_guide_numbers (drawing, ghost);
  add_guide_text (drawing, at_offset ((low.x + high.x) / 2, high.z, 0, -10), 0.5f, 1, text);
}

/* Thinner than a line at most scales: the line stands round it, with its place at the tape. */
static void
add_chosen_joint (Drawing *drawing, const Wall *wall, const MovementJoint *joint)
{
  const MarkLook look = mark_look (STYLE_SELECTED, LAYER_OVERLAY);
  const double left = length_to_mm (joint->x), right = length_to_mm (movement_joint_right (joint));
  const double foot = length_to_mm (wall_foot_at (wall, joint->x, SIDE_RIGHT));
  const double left_top = length_to_mm (wall_top_at (wall, joint->x, SIDE_RIGHT));
  const double right_top
      = length_to_mm (wall_top_at (wall, movement_joint_right (joint), SIDE_LEFT));
  const MarkPoint corners[] = {
    at_offset (left, foot, -ROUND_JOINT, ROUND_JOINT),
    at_offset (right, foot, ROUND_JOINT, ROUND_JOINT),
    at_offset (right, right_top, ROUND_JOINT, -ROUND_JOINT),
    at_offset (left, left_top, -ROUND_JOINT, -ROUND_JOINT),
    at_offset (left, foot, -ROUND_JOINT, ROUND_JOINT),
  };
  char text[LENGTH_TEXT_SIZE];

  drawing_add (drawing, MARK_LINE, &look, corners, G_N_ELEMENTS (corners));
  add_guide_text (drawing, at_offset (left, 0, -4, TAPE_BOTTOM + 4), 1, 0,
                  length_text (joint->x, text));
}

/* A stack before the wall's foot, seen from above the ground line: low, so that course 1 is seen
 * over it. */
static void
add_pallet (Drawing *drawing, const Wall *wall, const WorkPallet *pallet)
{
  const double left = length_to_mm (pallet->x - PALLET_WIDTH / 2);
  const double right = length_to_mm (pallet->x + PALLET_WIDTH / 2);
  const double foot = length_to_mm (wall_foot_at (wall, pallet->x, SIDE_RIGHT));
  const MarkLook look = mark_look (STYLE_PALLET, LAYER_OVERLAY);
  const MarkPoint corners[] = {
    at_offset (left, foot, 0, 0),
    at_offset (right, foot, 0, 0),
    at_offset (right, foot, 0, -PALLET_TALL),
    at_offset (left, foot, 0, -PALLET_TALL),
  };
  MarkLook text = mark_look (STYLE_PALLET_TEXT, LAYER_OVERLAY);
  g_autofree char *blocks = g_strdup_printf (_ ("%d blocks"), pallet->blocks);

  drawing_add (drawing, MARK_POLYGON, &look, corners, G_N_ELEMENTS (corners));
  text.min_scale = PALLET_LABEL / (right - left);
  drawing_add_text (drawing, &text, at_offset ((left + right) / 2, foot, 0, -PALLET_TALL / 2), 0.5f,
                    0.5f, blocks);
}

Drawing *
elevation_overlay (const ElevationInput *input, const Opening *ghost)
{
  Drawing *drawing = drawing_new ();
  const Opening *selected = wall_opening (input->wall, input->selected);

  add_corners (drawing, input);
  for (guint i = 0; input->pallets && i < input->pallets->len; i++)
    add_pallet (drawing, input->wall, &g_array_index (input->pallets, WorkPallet, i));
  if (ghost)
    add_ghost (drawing, input->wall, ghost);
  if (selected)
    add_selection (drawing, selected);
  if (input->joint >= 1 && input->joint <= input->wall->movement_joints->len)
    add_chosen_joint (drawing, input->wall, wall_movement_joint_at (input->wall, input->joint - 1));
  drawing_finish (drawing);
  return drawing;
}

/* Highlights */

static gboolean
is_highlighted (const Piece *piece, const char *takeoff_key, gint32 course, gint32 number)
{
  return (piece->course == course && piece->number == number)
         || (takeoff_key && takeoff_line_has_piece (takeoff_key, piece));
}

static void
highlight_steel (Scene *scene)
{
  g_autoptr (GArray) runs = bed_steel_runs (scene->wall, scene->block);
  const MarkLook look = mark_look (STYLE_SELECTED, LAYER_OVERLAY);

  for (guint i = 0; i < runs->len; i++)
    {
      const SteelRun *run = &g_array_index (runs, SteelRun, i);
      const Length z = gauge_top (scene->wall, scene->block, &scene->laying, run->course);
      drawing_add_line (scene->drawing, &look, at_length (run->from, z), at_length (run->to, z));
    }
}

static void
highlight_ties (Scene *scene)
{
  g_autoptr (GArray) rows = ties_of_wall (scene->wall, scene->block);
  const MarkLook look = mark_look (STYLE_SELECTED, LAYER_OVERLAY);

  for (guint i = 0; i < rows->len; i++)
    {
      const TieRow *row = &g_array_index (rows, TieRow, i);

      drawing_add_line (scene->drawing, &look, at_length (row->x - TIE_REACH, row->z),
                        at_length (row->x + TIE_REACH, row->z));
    }
}

Drawing *
elevation_highlight (const ElevationInput *input, const char *takeoff_key, gint32 course,
                     gint32 number, const PerpendMark *perpends, guint n_perpends)
{
  Scene scene = scene_new (input);
  const MarkLook look = mark_look (STYLE_HIGHLIGHT, LAYER_OVERLAY);

  for (guint i = 0; input->layout && i < input->layout->pieces->len; i++)
    if (is_highlighted (layout_piece (input->layout, i), takeoff_key, course, number))
      scene_add_piece (&scene, i, &look);
  if (takeoff_key && g_str_has_prefix (takeoff_key, "steel."))
    highlight_steel (&scene);
  if (takeoff_key && g_str_has_prefix (takeoff_key, "ties."))
    highlight_ties (&scene);
  for (guint i = 0; i < n_perpends; i++)
    scene_perpend (&scene, &perpends[i]);
  drawing_finish (scene.drawing);
  return scene.drawing;
}

/* The view */

ElevationMargins
elevation_margins (const Wall *wall, gboolean client)
{
  const double chains = (double) wall_dimension_rows (wall) + 1 + wall_has_top_places (wall);
  const double levels = wall->tops->len > 0 ? (double) LEVEL_ROOM : 0;
  const ElevationMargins laying
      = { 108, 118, 14 + levels + chains * (double) DIMENSION_PITCH + 8, 64 };
  const ElevationMargins finished = { 64, 64, 118, 128 };

  return client ? finished : laying;
}

double
elevation_height (const Wall *wall, gboolean client)
{
  const double height = wall_head (wall);

  return client ? MAX (height, PERSON_HEIGHT) : height;
}

static View
fitted (const Wall *wall, double tall, const ElevationMargins *margins, double width, double height)
{
  const double length = length_to_mm (wall->length);
  const double room_x = MAX (width - margins->left - margins->right, 1);
  const double room_y = MAX (height - margins->top - margins->bottom, 1);
  const double scale = MIN (room_x / length, room_y / tall);
  /* What rounding takes must not push the wall into a margin. */
  const double spare_x = MAX (room_x - length * scale, 0), spare_y = MAX (room_y - tall * scale, 0);

  return (View){
    .scale = scale,
    .ox = margins->left + spare_x / 2,
    .oy = margins->top + room_y - spare_y / 2,
  };
}

View
elevation_fit (const Wall *wall, gboolean client, double width, double height)
{
  const ElevationMargins margins = elevation_margins (wall, client);

  return fitted (wall, elevation_height (wall, client), &margins, width, height);
}
