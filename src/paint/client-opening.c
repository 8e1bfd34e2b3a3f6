/* client-opening.c - windows, doors and holes of the finished wall: reveals, frames, glass, sills
 *
 * Measures are mm, common practice of joinery, from memory. */
#include "paint/scene-private.h"

#include <math.h>

#define FRAME 48.0     /* face of a frame */
#define MULLION 62.0   /* between two lights */
#define JAMB 42.0      /* of the reveal seen at each side */
#define HEAD 64.0      /* and under the head, in shade */
#define SILL 46.0      /* height of a sill */
#define SILL_OUT 70.0  /* past the jambs */
#define LIGHT 760.0    /* widest light */
#define TRANSOM 1700.0 /* windows from this height have a top light */
#define STEP 90.0

typedef struct
{
  double x0, z0, x1, z1;
} Face;

static void
add_face (Scene *scene, Style style, const Face *face)
{
  const MarkLook look = mark_look (style, LAYER_OPENINGS);

  if (face->x1 > face->x0 && face->z1 > face->z0)
    drawing_add_box (scene->drawing, &look, at (face->x0, face->z0), at (face->x1, face->z1));
}

static Face
face_of (const Opening *opening)
{
  return (Face){ length_to_mm (opening->x), length_to_mm (opening->sill),
                 length_to_mm (opening_right (opening)), length_to_mm (opening_head (opening)) };
}

static Face
inset (const Face *face, double left, double foot, double right, double head)
{
  return (Face){ face->x0 + left, face->z0 + foot, face->x1 - right, face->z1 - head };
}

/* The hole's inner sides: light falls from the upper left, so the head and the left jamb are in
 * shade. */
static Face
add_reveal (Scene *scene, const Face *hole, double jamb, double head)
{
  add_face (scene, STYLE_CLIENT_REVEAL, hole);
  add_face (scene, STYLE_CLIENT_SHADE, &(Face){ hole->x0, hole->z1 - head, hole->x1, hole->z1 });
  add_face (scene, STYLE_CLIENT_SHADE,
            &(Face){ hole->x0, hole->z0, hole->x0 + jamb, hole->z1 - head });
  return inset (hole, jamb, 0, jamb, head);
}

/* Two bands of light across a pane, leaning with it. */
static void
add_glint (Scene *scene, const Face *pane, double from, double to)
{
  const double width = pane->x1 - pane->x0, lean = width * 0.3;
  const MarkLook look = mark_look (STYLE_CLIENT_GLINT, LAYER_OPENINGS);
  const double x0 = pane->x0 + width * from, x1 = pane->x0 + width * to;
  const MarkPoint points[] = {
    at (x0, pane->z0),
    at (x1, pane->z0),
    at (MIN (x1 + lean, pane->x1), pane->z1),
    at (MIN (x0 + lean, pane->x1), pane->z1),
  };

  drawing_add (scene->drawing, MARK_POLYGON, &look, points, G_N_ELEMENTS (points));
}

static void
add_pane (Scene *scene, const Face *pane)
{
  if (pane->x1 <= pane->x0 || pane->z1 <= pane->z0)
    return;
  add_face (scene, STYLE_CLIENT_GLASS, pane);
  add_glint (scene, pane, 0.1, 0.38);
  add_glint (scene, pane, 0.46, 0.56);
}

/* Lights side by side, `n` of them, between the frame's sides. */
static void
add_lights (Scene *scene, const Face *within, int n)
{
  const double width = (within->x1 - within->x0 - MULLION * (n - 1)) / n;

  for (int i = 0; i < n; i++)
    {
      const double x = within->x0 + i * (width + MULLION);
      add_pane (scene, &(Face){ x, within->z0, x + width, within->z1 });
    }
}

static void
add_glazing (Scene *scene, const Face *frame)
{
  const Face glass = inset (frame, FRAME, FRAME, FRAME, FRAME);
  const int n = (int) CLAMP (ceil ((glass.x1 - glass.x0) / LIGHT), 1, 40);
  const double tall = glass.z1 - glass.z0, transom = glass.z0 + tall * 0.7;

  add_face (scene, STYLE_CLIENT_FRAME, frame);
  if (frame->z1 - frame->z0 < TRANSOM)
    {
      add_lights (scene, &glass, n);
      return;
    }
  add_lights (scene, &(Face){ glass.x0, glass.z0, glass.x1, transom - MULLION / 2 }, n);
  add_lights (scene, &(Face){ glass.x0, transom + MULLION / 2, glass.x1, glass.z1 }, n);
}

static void
add_window_sill (Scene *scene, const Face *hole)
{
  const double left = hole->x0 - SILL_OUT, right = hole->x1 + SILL_OUT;

  add_face (scene, STYLE_CLIENT_SHADE,
            &(Face){ left + 14, hole->z0 - SILL - 34, right + 14, hole->z0 - SILL });
  add_face (scene, STYLE_CLIENT_SILL, &(Face){ left, hole->z0 - SILL, right, hole->z0 });
}

static void
add_window (Scene *scene, const Face *hole)
{
  const double jamb = MIN (JAMB, (hole->x1 - hole->x0) / 8);
  const double head = MIN (HEAD, (hole->z1 - hole->z0) / 6);
  const Face frame = add_reveal (scene, hole, jamb, head);

  add_glazing (scene, &frame);
  add_window_sill (scene, hole);
}

/* Doors */

/* Boards side by side, and a light where there is room for one. */
static void
add_leaf (Scene *scene, const Face *leaf)
{
  const double width = leaf->x1 - leaf->x0, tall = leaf->z1 - leaf->z0;
  MarkLook look = mark_look (STYLE_CLIENT_DOOR_LINE, LAYER_OPENINGS);
  const int boards = (int) CLAMP (width / 130, 1, 12);

  add_face (scene, STYLE_CLIENT_DOOR, leaf);
  look.min_scale = 6 / (width / boards);
  for (int i = 1; i < boards; i++)
    {
      const double x = leaf->x0 + width * i / boards;
      drawing_add_line (scene->drawing, &look, at (x, leaf->z0), at (x, leaf->z1));
    }
  if (width > 500 && tall > 1700)
    {
      const Face pane = { leaf->x0 + width * 0.24, leaf->z0 + tall * 0.62, leaf->x1 - width * 0.24,
                          leaf->z1 - tall * 0.1 };
      const Face rim = inset (&pane, -26, -26, -26, -26);
      add_face (scene, STYLE_CLIENT_FRAME, &rim);
      add_pane (scene, &pane);
    }
}

/* A lever with its plate, at 1.05 m, the height of a hand. */
static void
add_lever (Scene *scene, double x, double z, double towards)
{
  const double tip = x + towards * 105;

  add_face (scene, STYLE_CLIENT_HANDLE, &(Face){ x - 16, z - 95, x + 16, z + 55 });
  add_face (scene, STYLE_CLIENT_HANDLE, &(Face){ MIN (x, tip), z - 9, MAX (x, tip), z + 13 });
}

static void
add_leaves (Scene *scene, const Face *within)
{
  const double z = within->z0 + MIN (1050, (within->z1 - within->z0) / 2);
  const double middle = (within->x0 + within->x1) / 2;

  if (within->x1 - within->x0 < 1300)
    {
      add_leaf (scene, within);
      add_lever (scene, within->x1 - 85, z, -1);
      return;
    }
  add_leaf (scene, &(Face){ within->x0, within->z0, middle - 6, within->z1 });
  add_leaf (scene, &(Face){ middle + 6, within->z0, within->x1, within->z1 });
  add_lever (scene, middle + 85, z, 1);
}

/* Where the threshold is the ground, a step lies in front of it. */
static void
add_step (Scene *scene, const Face *hole)
{
  if (hole->z0 > 200)
    return;
  add_face (scene, STYLE_CLIENT_SILL,
            &(Face){ hole->x0 - 140, hole->z0 - STEP, hole->x1 + 140, MAX (hole->z0, 0) });
}

static void
add_door (Scene *scene, const Face *hole)
{
  const double jamb = MIN (JAMB, (hole->x1 - hole->x0) / 8);
  const double head = MIN (HEAD, (hole->z1 - hole->z0) / 6);
  const Face frame = add_reveal (scene, hole, jamb, head);
  const Face within = inset (&frame, FRAME, 18, FRAME, FRAME);

  add_face (scene, STYLE_CLIENT_FRAME, &frame);
  add_leaves (scene, &within);
  add_step (scene, hole);
}

static void
add_void (Scene *scene, const Face *hole)
{
  const Face back = add_reveal (scene, hole, JAMB, HEAD);

  add_face (scene, STYLE_CLIENT_VOID, &back);
}

void
scene_client_opening (Scene *scene, const Opening *opening)
{
  const Face hole = face_of (opening);
  MarkLook look = mark_look (STYLE_CLIENT_REVEAL, LAYER_OPENINGS);

  look.ref = ref_of (REF_OPENING, opening->id.n, PART_BODY);
  drawing_add_box (scene->drawing, &look, at (hole.x0, hole.z0), at (hole.x1, hole.z1));
  if (opening->kind == OPENING_WINDOW)
    add_window (scene, &hole);
  else if (opening->kind == OPENING_DOOR)
    add_door (scene, &hole);
  else
    add_void (scene, &hole);
}
