/* plan-dimension.c - lengths round a building in plan: of its sides, and along the chosen wall */
#include "paint/plan-private.h"

#define TICK_HALF 4.f
#define TEXT_AWAY 3.f
#define TEXT_BESIDE 7.f
/* From the outer face to the first row, and from row to row, farther where numbers stand beside
 * their lines; steps. */
#define CHAIN 18.f
#define ROW 24.f
#define ROW_BESIDE 48.f
/* Least length on the sheet of a dimension up the sheet that takes its number, steps. */
#define UPRIGHT_ROOM 13.0

static void
anchors (const Wall *wall, float *x, float *y)
{
  static const float xs[] = { 0.5f, 0, 0.5f, 1 }, ys[] = { 0, 0.5f, 1, 0.5f };

  *x = xs[wall->place.runs];
  *y = ys[wall->place.runs];
}

static void
add_tick (Drawing *drawing, const Wall *wall, double u, float out)
{
  const MarkLook tick = mark_look (STYLE_DIMENSION_TICK, LAYER_DIMENSIONS);

  drawing_add_line (drawing, &tick, plan_place (wall, u, 0, 0, out - TICK_HALF),
                    plan_place (wall, u, 0, 0, out + TICK_HALF));
}

/* From one place along a wall to another. */
typedef struct
{
  Length from, to;
  float out; /* of its line from the outer face, steps */
  DimensionPart part;
  OpeningId opening; /* or none */
  Style text;
} PlanDimension;

/* Room that a number takes along the wall to either side of its middle, mm. */
#define NUMBER_ROOM LENGTH_MM (400)

/* Whether no other wall stands out of the outer face near there. */
static gboolean
is_clear (const PlanScene *scene, const Wall *wall, gint64 u)
{
  for (guint i = 0; i < scene->walls->len; i++)
    {
      const PlanSpan span = plan_span (wall, &plan_wall_at (scene, i)->box);

      if (plan_wall_at (scene, i)->wall != wall && span.v0 < 0 && span.v1 > -LENGTH_MM (1000)
          && span.u0 - NUMBER_ROOM < u && u < span.u1 + NUMBER_ROOM)
        return FALSE;
    }
  return TRUE;
}

/* Of a side, in its middle, or beside what stands there, mm. */
static double
number_at (const PlanScene *scene, const Wall *wall, const PlanDimension *dimension)
{
  static const int quarters[] = { 2, 1, 3 };
  const gint64 length = dimension->to - dimension->from;

  for (guint i = 0; dimension->part == DIMENSION_WALL_LENGTH && i < G_N_ELEMENTS (quarters); i++)
    if (is_clear (scene, wall, dimension->from + length * quarters[i] / 4))
      return (double) (dimension->from + length * quarters[i] / 4) / LENGTH_PER_MM;
  return (double) (dimension->from + length / 2) / LENGTH_PER_MM;
}

/* A line with its ticks and its number, which is what typing changes. */
static void
add_dimension (PlanScene *scene, const Wall *wall, const PlanDimension *dimension)
{
  const double u0 = length_to_mm (dimension->from), u1 = length_to_mm (dimension->to);
  const gboolean across = plan_runs_across (wall), total = dimension->part == DIMENSION_WALL_LENGTH;
  const float beside = across ? TEXT_BESIDE : TEXT_AWAY;
  MarkLook line = mark_look (STYLE_DIMENSION_LINE, LAYER_DIMENSIONS);
  MarkLook look = mark_look (dimension->text, LAYER_DIMENSIONS);
  char number[LENGTH_TEXT_SIZE];
  float x, y;

  if (dimension->to <= dimension->from)
    return;
  look.ref = (MarkRef){ .kind = REF_DIMENSION,
                        .id = dimension->opening.n,
                        .part = (gint32) dimension->part,
                        .a = (gint32) wall->id.n,
                        .b = dimension->to - dimension->from };
  line.ref = look.ref;
  drawing_add_line (scene->drawing, &line, plan_place (wall, u0, 0, 0, dimension->out),
                    plan_place (wall, u1, 0, 0, dimension->out));
  add_tick (scene->drawing, wall, u0, dimension->out);
  add_tick (scene->drawing, wall, u1, dimension->out);
  if (!total && across)
    look.min_scale = UPRIGHT_ROOM / (u1 - u0);
  else if (!total)
    look.fit = u1 - u0;
  anchors (wall, &x, &y);
  drawing_add_text (
      scene->drawing, &look,
      plan_place (wall, number_at (scene, wall, dimension), 0, 0, dimension->out + beside), x, y,
      length_text (dimension->to - dimension->from, number));
}

/* ---- the sides ---- */

/* At a corner whose other wall lies outside of this one's face, the side ends at that wall: FALSE
 * where the wall's end meets none at a corner. */
static gboolean
side_end (const PlanScene *scene, const PlanWall *placed, Side side, Length *at)
{
  for (guint i = 0; i < scene->meetings->len; i++)
    {
      const Meeting *meeting = plan_meeting_at (scene, i);
      const int which = meeting->wall[1] == placed->index ? 1 : 0;
      const PlanWall *other = plan_wall_of (scene, meeting->wall[1 - which]);
      PlanSpan span;

      if (meeting->kind != MEET_CORNER || meeting->wall[which] != placed->index
          || meeting->side[which] != side)
        continue;
      span = plan_span (placed->wall, &other->box);
      *at = side == SIDE_LEFT ? 0 : placed->wall->length;
      if (span.v0 < 0)
        *at = (Length) (side == SIDE_LEFT ? span.u1 : span.u0);
      return TRUE;
    }
  return FALSE;
}

static gboolean
is_free (const PlanScene *scene, const PlanWall *placed)
{
  for (guint i = 0; i < scene->meetings->len; i++)
    if (plan_meeting_at (scene, i)->wall[0] == placed->index
        || plan_meeting_at (scene, i)->wall[1] == placed->index)
      return FALSE;
  return TRUE;
}

static gboolean
has_chain (const PlanScene *scene, const PlanWall *placed)
{
  return (scene->input->set_out || placed->wall->id.n == scene->input->wall.n)
         && placed->wall->openings->len > 0;
}

/* A wall that meets it within its length, to be set out from. */
static gboolean
is_met (const PlanScene *scene, const PlanWall *placed, guint i, PlanSpan *span)
{
  const Meeting *meeting = plan_meeting_at (scene, i);
  const int which = meeting->wall[1] == placed->index ? 1 : 0;

  if (meeting->kind == MEET_WRONG || meeting->wall[which] != placed->index
      || plan_ends_there (meeting, which))
    return FALSE;
  *span = plan_span (placed->wall, &meeting->box);
  return TRUE;
}

static gboolean
has_met (const PlanScene *scene, const PlanWall *placed)
{
  PlanSpan span;

  for (guint i = 0; scene->input->set_out && i < scene->meetings->len; i++)
    if (is_met (scene, placed, i, &span))
      return TRUE;
  return FALSE;
}

/* How far from the face the row of that number stands, from 0. */
static float
row_out (const PlanWall *placed, guint row)
{
  return CHAIN + (float) row * (plan_runs_across (placed->wall) ? ROW_BESIDE : ROW);
}

static void
add_side (PlanScene *scene, const PlanWall *placed)
{
  Length from = 0, to = placed->wall->length;
  const gboolean outside
      = side_end (scene, placed, SIDE_LEFT, &from) && side_end (scene, placed, SIDE_RIGHT, &to);

  if (outside || is_free (scene, placed))
    add_dimension (scene, placed->wall,
                   &(PlanDimension){ from,
                                     to,
                                     row_out (placed, (has_chain (scene, placed) ? 1 : 0)
                                                          + (has_met (scene, placed) ? 1 : 0)),
                                     DIMENSION_WALL_LENGTH,
                                     { 0 },
                                     STYLE_DIMENSION_TOTAL });
}

/* ---- along the chosen wall ---- */

static gint
by_x (gconstpointer a, gconstpointer b)
{
  const Opening *one = *(const Opening *const *) a, *other = *(const Opening *const *) b;

  return one->x != other->x ? (one->x < other->x ? -1 : 1) : 0;
}

/* Openings one above the other share their place in the chain: the first counts. */
static void
add_chain (PlanScene *scene, const PlanWall *placed)
{
  const Wall *wall = placed->wall;
  g_autoptr (GPtrArray) sorted = g_ptr_array_new ();
  OpeningId last = { 0 };
  Length at = 0;

  for (guint i = 0; i < wall->openings->len; i++)
    g_ptr_array_add (sorted, (gpointer) wall_opening_at (wall, i));
  g_ptr_array_sort (sorted, by_x);
  for (guint i = 0; i < sorted->len; i++)
    {
      const Opening *opening = g_ptr_array_index (sorted, i);
      const Style style
          = opening->id.n == scene->input->opening.n ? STYLE_SELECTED_TEXT : STYLE_DIMENSION_TEXT;

      if (opening->x < at)
        continue;
      add_dimension (
          scene, wall,
          &(PlanDimension){ at, opening->x, CHAIN, DIMENSION_PIER_BEFORE, opening->id, style });
      add_dimension (scene, wall,
                     &(PlanDimension){ opening->x, opening_right (opening), CHAIN,
                                       DIMENSION_OPENING_WIDTH, opening->id, style });
      at = opening_right (opening);
      last = opening->id;
    }
  if (at > 0)
    add_dimension (scene, wall,
                   &(PlanDimension){ at, wall->length, CHAIN, DIMENSION_PIER_AFTER, last,
                                     STYLE_DIMENSION_TEXT });
}

static gint
by_left (gconstpointer a, gconstpointer b)
{
  const PlanSpan *p = a, *q = b;

  return (p->u0 > q->u0) - (p->u0 < q->u0);
}

/* Where walls meet it: to their left faces, and how thick they are. */
static void
add_met (PlanScene *scene, const PlanWall *placed)
{
  g_autoptr (GArray) spans = g_array_new (FALSE, FALSE, sizeof (PlanSpan));
  const float out = row_out (placed, has_chain (scene, placed) ? 1 : 0);
  PlanDimension dimension
      = { .out = out, .part = DIMENSION_PIER_BEFORE, .text = STYLE_DIMENSION_TEXT };
  PlanSpan span;

  for (guint i = 0; i < scene->meetings->len; i++)
    if (is_met (scene, placed, i, &span))
      g_array_append_val (spans, span);
  g_array_sort (spans, by_left);
  for (guint i = 0; i < spans->len; i++)
    {
      span = g_array_index (spans, PlanSpan, i);
      dimension.to = (Length) span.u0;
      add_dimension (scene, placed->wall, &dimension);
      dimension.from = (Length) span.u0;
      dimension.to = (Length) span.u1;
      add_dimension (scene, placed->wall, &dimension);
      dimension.from = dimension.to;
    }
  dimension.to = placed->wall->length;
  add_dimension (scene, placed->wall, &dimension);
}

void
plan_add_dimensions (PlanScene *scene)
{
  for (guint i = 0; i < scene->walls->len; i++)
    {
      add_side (scene, plan_wall_at (scene, i));
      if (has_chain (scene, plan_wall_at (scene, i)))
        add_chain (scene, plan_wall_at (scene, i));
      if (has_met (scene, plan_wall_at (scene, i)))
        add_met (scene, plan_wall_at (scene, i));
    }
}
