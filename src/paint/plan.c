/* plan.c - walls, openings and meetings in plan */
#include "paint/plan.h"

#include "paint/plan-private.h"

#define HANDLE_RADIUS 5.5f
/* Names stand this far inside the inner face, steps: openings next to it, the wall beyond. */
#define OPENING_NAME_IN 4.f
#define NAME_IN 20.f    /* of a wall's name, over those of its openings */
#define NAME_BESIDE 8.f /* of an upright wall's name, where there is no opening */
/* Between the two lines of a joint of all courses, steps. */
#define DOUBLE 4.f

/* ---- where walls lie ---- */

MarkPoint
plan_place (const Wall *wall, double u, double v, float along, float out)
{
  const double x = length_to_mm (wall->place.x), y = length_to_mm (wall->place.y);

  switch (wall->place.runs)
    {
    case RUNS_EAST:
      return (MarkPoint){ x + u, y + v, along, out };
    case RUNS_NORTH:
      return (MarkPoint){ x - v, y + u, out, -along };
    case RUNS_WEST:
      return (MarkPoint){ x - u, y - v, -along, -out };
    case RUNS_SOUTH:
    default:
      return (MarkPoint){ x + v, y - u, -out, along };
    }
}

PlanSpan
plan_span (const Wall *wall, const PlanBox *box)
{
  const gint64 x = wall->place.x, y = wall->place.y;

  switch (wall->place.runs)
    {
    case RUNS_EAST:
      return (PlanSpan){ box->x0 - x, box->x1 - x, box->y0 - y, box->y1 - y };
    case RUNS_NORTH:
      return (PlanSpan){ box->y0 - y, box->y1 - y, x - box->x1, x - box->x0 };
    case RUNS_WEST:
      return (PlanSpan){ x - box->x1, x - box->x0, y - box->y1, y - box->y0 };
    case RUNS_SOUTH:
    default:
      return (PlanSpan){ y - box->y1, y - box->y0, box->x0 - x, box->x1 - x };
    }
}

const PlanWall *
plan_wall_of (const PlanScene *scene, guint index)
{
  for (guint i = 0; i < scene->walls->len; i++)
    if (plan_wall_at (scene, i)->index == index)
      return plan_wall_at (scene, i);
  return NULL;
}

static GArray *
find_walls (const Project *project)
{
  GArray *walls = g_array_new (FALSE, FALSE, sizeof (PlanWall));

  for (guint i = 0; i < project->walls->len; i++)
    {
      const Wall *wall = project_wall_at (project, i);
      const Block *block = project_block (project, wall->block);
      PlanWall placed = { wall, i, block ? block->thickness : 0, { 0, 0, 0, 0 } };

      if (!wall->place.given || !block)
        continue;
      placed.box = plan_box (wall, block->thickness);
      g_array_append_val (walls, placed);
    }
  return walls;
}

static void
scene_begin (PlanScene *scene, const PlanInput *input)
{
  scene->drawing = drawing_new ();
  scene->input = input;
  scene->walls = find_walls (input->project);
  scene->meetings = plan_meetings (input->project);
}

static Drawing *
scene_end (PlanScene *scene)
{
  g_array_unref (scene->walls);
  g_array_unref (scene->meetings);
  drawing_finish (scene->drawing);
  return scene->drawing;
}

static MarkPoint
corner (gint64 x, gint64 y)
{
  return (MarkPoint){ (double) x / LENGTH_PER_MM, (double) y / LENGTH_PER_MM, 0, 0 };
}

static void
add_box (Drawing *drawing, const MarkLook *look, const PlanBox *box)
{
  drawing_add_box (drawing, look, corner (box->x0, box->y0), corner (box->x1, box->y1));
}

/* ---- faces ---- */

typedef struct
{
  gint64 from, to;
} Stretch;

static gint
by_from (gconstpointer a, gconstpointer b)
{
  const Stretch *one = a, *other = b;

  return (one->from > other->from) - (one->from < other->from);
}

/* Where another wall lies over the face at `v`, and where openings break it. */
static GArray *
breaks_of_face (const PlanScene *scene, const PlanWall *placed, gint64 v)
{
  GArray *breaks = g_array_new (FALSE, FALSE, sizeof (Stretch));

  for (guint i = 0; i < scene->walls->len; i++)
    {
      const PlanSpan span = plan_span (placed->wall, &plan_wall_at (scene, i)->box);
      const Stretch covered = { span.u0, span.u1 };

      if (span.v0 < v && v < span.v1 && plan_wall_at (scene, i) != placed)
        g_array_append_val (breaks, covered);
    }
  for (guint i = 0; i < placed->wall->openings->len; i++)
    {
      const Opening *opening = wall_opening_at (placed->wall, i);
      const Stretch broken = { opening->x, opening_right (opening) };

      g_array_append_val (breaks, broken);
    }
  g_array_sort (breaks, by_from);
  return breaks;
}

static void
add_face_line (PlanScene *scene, const PlanWall *placed, gint64 from, gint64 to, gint64 v)
{
  const MarkLook look = mark_look (v == 0 ? STYLE_PLAN_OUTER : STYLE_PLAN_FACE, LAYER_STEEL);
  const double in = (double) v / LENGTH_PER_MM;

  if (from < to)
    drawing_add_line (scene->drawing, &look,
                      plan_place (placed->wall, (double) from / LENGTH_PER_MM, in, 0, 0),
                      plan_place (placed->wall, (double) to / LENGTH_PER_MM, in, 0, 0));
}

static void
add_face (PlanScene *scene, const PlanWall *placed, gint64 v)
{
  g_autoptr (GArray) breaks = breaks_of_face (scene, placed, v);
  gint64 at = 0;

  for (guint i = 0; i < breaks->len; i++)
    {
      const Stretch *gap = &g_array_index (breaks, Stretch, i);

      add_face_line (scene, placed, at, MIN (gap->from, wall_planned_length (placed->wall)), v);
      at = MAX (at, gap->to);
    }
  add_face_line (scene, placed, at, wall_planned_length (placed->wall), v);
}

/* An end that lies in another wall is no face. */
static gboolean
is_end_covered (const PlanScene *scene, const PlanWall *placed, gint64 u)
{
  for (guint i = 0; i < scene->walls->len; i++)
    {
      const PlanSpan span = plan_span (placed->wall, &plan_wall_at (scene, i)->box);

      if (span.u0 < u && u < span.u1 && span.v0 <= 0 && span.v1 >= placed->thickness
          && plan_wall_at (scene, i) != placed)
        return TRUE;
    }
  return FALSE;
}

static void
add_end (PlanScene *scene, const PlanWall *placed, Length u)
{
  const MarkLook look = mark_look (STYLE_PLAN_FACE, LAYER_STEEL);
  const double t = length_to_mm (placed->thickness);

  if (!is_end_covered (scene, placed, u))
    drawing_add_line (scene->drawing, &look, plan_place (placed->wall, length_to_mm (u), 0, 0, 0),
                      plan_place (placed->wall, length_to_mm (u), t, 0, 0));
}

/* ---- openings ---- */

/* Across the wall, of the room between its faces. */
static void
add_across (PlanScene *scene, const PlanWall *placed, const MarkLook *look, const Opening *opening,
            double share)
{
  const double v = length_to_mm (placed->thickness) * share;

  drawing_add_line (scene->drawing, look,
                    plan_place (placed->wall, length_to_mm (opening->x), v, 0, 0),
                    plan_place (placed->wall, length_to_mm (opening_right (opening)), v, 0, 0));
}

static void
add_within (PlanScene *scene, const PlanWall *placed, const MarkLook *look, const Opening *opening,
            double from, double to)
{
  const double t = length_to_mm (placed->thickness);

  drawing_add_box (scene->drawing, look,
                   plan_place (placed->wall, length_to_mm (opening->x), t * from, 0, 0),
                   plan_place (placed->wall, length_to_mm (opening_right (opening)), t * to, 0, 0));
}

/* A window shows its sill and its frame, a door its threshold, a void the wall over it. */
static void
add_filling (PlanScene *scene, const PlanWall *placed, const Opening *opening)
{
  const MarkLook sill = mark_look (STYLE_OPENING_LINE, LAYER_OPENINGS);
  const MarkLook above = mark_look (STYLE_PLAN_ABOVE, LAYER_OPENINGS);
  const MarkLook face = mark_look (STYLE_PLAN_FACE, LAYER_OPENINGS);
  MarkLook glass = mark_look (STYLE_PLAN_GLASS, LAYER_OPENINGS);

  glass.ref = (MarkRef){ .kind = REF_OPENING, .id = opening->id.n, .part = PART_BODY };
  switch (opening->kind)
    {
    case OPENING_DOOR:
      add_across (scene, placed, &face, opening, 0.08);
      add_across (scene, placed, &sill, opening, 0.3);
      break;
    case OPENING_VOID:
      add_across (scene, placed, &above, opening, 0);
      add_across (scene, placed, &above, opening, 1);
      break;
    case OPENING_WINDOW:
    default:
      add_across (scene, placed, &face, opening, 0);
      add_across (scene, placed, &face, opening, 1);
      add_within (scene, placed, &glass, opening, 0.34, 0.62);
      add_across (scene, placed, &sill, opening, 0.48);
      break;
    }
}

/* How a text beside a wall hangs on its place: inside of it, or outside. */
static void
add_beside (PlanScene *scene, const Wall *wall, const MarkLook *look, MarkPoint at, gboolean inside,
            const char *text)
{
  const int side = inside ? -1 : 1;
  float x = 0.5f, y = 0.5f;

  switch (wall->place.runs)
    {
    case RUNS_EAST:
      y = side > 0 ? 0 : 1;
      break;
    case RUNS_NORTH:
      x = side > 0 ? 0 : 1;
      break;
    case RUNS_WEST:
      y = side > 0 ? 1 : 0;
      break;
    case RUNS_SOUTH:
    default:
      x = side > 0 ? 1 : 0;
      break;
    }
  drawing_add_text (scene->drawing, look, at, x, y, text);
}

static void
add_opening (PlanScene *scene, const PlanWall *placed, const Opening *opening)
{
  const double t = length_to_mm (placed->thickness);
  const Length ends[] = { opening->x, opening_right (opening) };
  const MarkLook jamb = mark_look (STYLE_PLAN_FACE, LAYER_OPENINGS);
  MarkLook look = mark_look (STYLE_PLAN_GAP, LAYER_OPENINGS);
  MarkLook name = mark_look (STYLE_PLAN_OPENING_NAME, LAYER_LABELS);

  look.ref = (MarkRef){ .kind = REF_OPENING, .id = opening->id.n, .part = PART_BODY };
  add_within (scene, placed, &look, opening, 0, 1);
  add_filling (scene, placed, opening);
  for (guint i = 0; i < G_N_ELEMENTS (ends); i++)
    drawing_add_line (scene->drawing, &jamb,
                      plan_place (placed->wall, length_to_mm (ends[i]), 0, 0, 0),
                      plan_place (placed->wall, length_to_mm (ends[i]), t, 0, 0));
  name.ref = look.ref;
  if (!plan_runs_across (placed->wall))
    name.fit = length_to_mm (opening->width);
  add_beside (scene, placed->wall, &name,
              plan_place (placed->wall, length_to_mm (opening->x + opening->width / 2), t, 0,
                          -OPENING_NAME_IN),
              TRUE, opening->name);
}

/* ---- walls ---- */

/* The middle of the longest stretch along the inner face that no wall and no opening is at. */
static double
clear_middle (const PlanScene *scene, const PlanWall *placed)
{
  g_autoptr (GArray) breaks = breaks_of_face (scene, placed, placed->thickness);
  const Stretch end = { wall_planned_length (placed->wall), wall_planned_length (placed->wall) };
  gint64 at = 0, from = 0, to = 0;

  g_array_append_val (breaks, end);
  for (guint i = 0; i < breaks->len; i++)
    {
      const Stretch *gap = &g_array_index (breaks, Stretch, i);
      const gint64 until = MIN (gap->from, wall_planned_length (placed->wall));

      if (until - at > to - from)
        {
          from = at;
          to = until;
        }
      at = MAX (at, gap->to);
    }
  return (double) (from + to) / 2 / LENGTH_PER_MM;
}

static void
add_name (PlanScene *scene, const PlanWall *placed)
{
  const Wall *wall = placed->wall;
  const gboolean chosen = wall->id.n == scene->input->wall.n;
  MarkLook look = mark_look (chosen ? STYLE_SELECTED_TEXT : STYLE_PLAN_NAME, LAYER_LABELS);

  look.ref = (MarkRef){ .kind = REF_WALL, .id = wall->id.n, .part = PART_BODY };
  if (!plan_runs_across (wall))
    look.fit = length_to_mm (wall->length);
  add_beside (scene, wall, &look,
              plan_place (wall, clear_middle (scene, placed), length_to_mm (placed->thickness), 0,
                          plan_runs_across (wall) ? -NAME_BESIDE : -NAME_IN),
              TRUE, wall_called (wall));
}

static void
add_wall (PlanScene *scene, const PlanWall *placed)
{
  MarkLook look = mark_look (STYLE_PLAN_WALL, LAYER_PIECES);

  look.ref = (MarkRef){ .kind = REF_WALL, .id = placed->wall->id.n, .part = PART_BODY };
  add_box (scene->drawing, &look, &placed->box);
  for (guint i = 0; i < placed->wall->openings->len; i++)
    add_opening (scene, placed, wall_opening_at (placed->wall, i));
  add_face (scene, placed, 0);
  add_face (scene, placed, placed->thickness);
  add_end (scene, placed, 0);
  add_end (scene, placed, wall_planned_length (placed->wall));
  add_name (scene, placed);
}

/* ---- meetings ---- */

/* In which courses a wall stops at the square. */
typedef enum
{
  STOPS_NEVER,
  STOPS_ODD,
  STOPS_EVEN,
  STOPS_ALL,
} Stops;

static Stops
stops_of (MeetMade made, int which)
{
  switch (made)
    {
    case MADE_FIRST_ODD:
      return which == 0 ? STOPS_EVEN : STOPS_ODD;
    case MADE_FIRST_EVEN:
      return which == 0 ? STOPS_ODD : STOPS_EVEN;
    case MADE_FIRST_THROUGH:
      return which == 0 ? STOPS_NEVER : STOPS_ALL;
    case MADE_SECOND_THROUGH:
      return which == 0 ? STOPS_ALL : STOPS_NEVER;
    case MADE_UNSAID:
    case MADE_CONTRARY:
    default:
      return STOPS_NEVER;
    }
}

/* The joint across a wall at `u`; `away` is the way along the wall from the square. */
static void
add_joint (PlanScene *scene, const PlanWall *placed, Length u, int away, Stops stops)
{
  const MarkLook look
      = mark_look (stops == STOPS_EVEN ? STYLE_PLAN_EVEN : STYLE_PLAN_ODD, LAYER_ROD);
  const double t = length_to_mm (placed->thickness);

  for (int line = 0; line < (stops == STOPS_ALL ? 2 : 1); line++)
    {
      const float off = (float) (away * line) * DOUBLE;

      drawing_add_line (scene->drawing, &look,
                        plan_place (placed->wall, length_to_mm (u), 0, off, 0),
                        plan_place (placed->wall, length_to_mm (u), t, off, 0));
    }
}

static void
add_joints (PlanScene *scene, const Meeting *meeting, int which)
{
  const PlanWall *placed = plan_wall_of (scene, meeting->wall[which]);
  const PlanSpan square = plan_span (placed->wall, &meeting->box);
  const Stops stops = stops_of (meeting->made, which);

  if (stops == STOPS_NEVER)
    return;
  if (square.u0 > 0)
    add_joint (scene, placed, (Length) square.u0, -1, stops);
  if (square.u1 < wall_planned_length (placed->wall))
    add_joint (scene, placed, (Length) square.u1, 1, stops);
}

static MarkPoint
middle (const PlanBox *box)
{
  return (MarkPoint){ (double) (box->x0 + box->x1) / 2 / LENGTH_PER_MM,
                      (double) (box->y0 + box->y1) / 2 / LENGTH_PER_MM, 0, 0 };
}

static gboolean
is_sound (const Meeting *meeting)
{
  return meeting->kind != MEET_WRONG && meeting->made < MADE_UNSAID;
}

static void
add_meeting (PlanScene *scene, const Meeting *meeting)
{
  const Project *project = scene->input->project;
  MarkLook look
      = mark_look (is_sound (meeting) ? STYLE_PLAN_MEETING : STYLE_PIECE_BREACH, LAYER_LABELS);
  MarkLook sign = mark_look (STYLE_PLAN_WARNING, LAYER_TAPE);

  look.ref = (MarkRef){ .kind = REF_MEETING,
                        .a = (gint32) project_wall_at (project, meeting->wall[0])->id.n,
                        .b = (gint32) project_wall_at (project, meeting->wall[1])->id.n };
  add_box (scene->drawing, &look, &meeting->box);
  if (is_sound (meeting))
    {
      add_joints (scene, meeting, 0);
      add_joints (scene, meeting, 1);
      return;
    }
  sign.ref = look.ref;
  drawing_add_text (scene->drawing, &sign, middle (&meeting->box), 0.5f, 0.5f, " ! ");
}

Drawing *
plan_drawing (const PlanInput *input)
{
  PlanScene scene;

  scene_begin (&scene, input);
  for (guint i = 0; i < scene.walls->len; i++)
    add_wall (&scene, plan_wall_at (&scene, i));
  for (guint i = 0; i < scene.meetings->len; i++)
    add_meeting (&scene, plan_meeting_at (&scene, i));
  plan_add_ties (&scene);
  plan_add_dimensions (&scene);
  if (input->set_out)
    plan_add_set_out (&scene);
  return scene_end (&scene);
}

/* ---- what is chosen ---- */

static void
select_opening (PlanScene *scene, const PlanWall *placed, const Opening *opening)
{
  const double t = length_to_mm (placed->thickness);
  const MarkLook box = mark_look (STYLE_SELECTED, LAYER_OVERLAY);
  const struct
  {
    RefPart part;
    Length u;
  } ends[] = { { PART_LEFT, opening->x }, { PART_RIGHT, opening_right (opening) } };
  MarkLook handle = mark_look (STYLE_HANDLE, LAYER_OVERLAY);

  add_within (scene, placed, &box, opening, 0, 1);
  for (guint i = 0; i < G_N_ELEMENTS (ends); i++)
    {
      handle.ref
          = (MarkRef){ .kind = REF_OPENING, .id = opening->id.n, .part = (gint32) ends[i].part };
      drawing_add_circle (scene->drawing, &handle,
                          plan_place (placed->wall, length_to_mm (ends[i].u), t / 2, 0, 0),
                          HANDLE_RADIUS);
    }
}

static void
select_meeting (PlanScene *scene, const Meeting *meeting)
{
  const Project *project = scene->input->project;
  const MarkLook look = mark_look (STYLE_SELECTED, LAYER_OVERLAY);

  for (int i = 0; i < 2; i++)
    if (project_wall_at (project, meeting->wall[i])->id.n != scene->input->meeting[i].n)
      return;
  add_box (scene->drawing, &look, &meeting->box);
}

Drawing *
plan_overlay (const PlanInput *input)
{
  const MarkLook look = mark_look (STYLE_SELECTED, LAYER_OVERLAY);
  PlanScene scene;

  scene_begin (&scene, input);
  for (guint i = 0; i < scene.meetings->len; i++)
    select_meeting (&scene, plan_meeting_at (&scene, i));
  for (guint i = 0; i < scene.walls->len; i++)
    {
      const PlanWall *placed = plan_wall_at (&scene, i);
      const Opening *opening = wall_opening (placed->wall, input->opening);

      if (opening)
        select_opening (&scene, placed, opening);
      else if (placed->wall->id.n == input->wall.n && !input->meeting[0].n)
        add_box (scene.drawing, &look, &placed->box);
    }
  if (input->trace)
    plan_add_trace (&scene, input->trace);
  return scene_end (&scene);
}

/* ---- the view ---- */

gboolean
plan_bounds (const Project *project, PlanBox *out)
{
  g_autoptr (GArray) walls = find_walls (project);

  for (guint i = 0; i < walls->len; i++)
    {
      const PlanBox *box = &g_array_index (walls, PlanWall, i).box;

      if (i == 0)
        *out = *box;
      *out = (PlanBox){ MIN (out->x0, box->x0), MIN (out->y0, box->y0), MAX (out->x1, box->x1),
                        MAX (out->y1, box->y1) };
    }
  return walls->len > 0;
}

static View
fit_box (const PlanBox *box, double width, double height)
{
  const double w = (double) (box->x1 - box->x0) / LENGTH_PER_MM;
  const double h = (double) (box->y1 - box->y0) / LENGTH_PER_MM;
  const double scale = MAX (MIN ((width - 2 * PLAN_MARGIN_SIDE) / MAX (w, 1),
                                 (height - 2 * PLAN_MARGIN_END) / MAX (h, 1)),
                            0.0005);

  return (View){ .scale = scale,
                 .ox = (width - w * scale) / 2 - (double) box->x0 / LENGTH_PER_MM * scale,
                 .oy = (height + h * scale) / 2 + (double) box->y0 / LENGTH_PER_MM * scale };
}

View
plan_fit (const Project *project, const PlanBox *more, double width, double height)
{
  PlanBox box = { 0, 0, LENGTH_MM (10000), LENGTH_MM (8000) };

  plan_bounds (project, &box);
  if (more)
    box = (PlanBox){ MIN (box.x0, more->x0), MIN (box.y0, more->y0), MAX (box.x1, more->x1),
                     MAX (box.y1, more->y1) };
  return fit_box (&box, width, height);
}
