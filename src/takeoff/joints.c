/* joints.c - the joints of a wall as laid: how long, how high */
#include "takeoff/joints.h"

#include "bond/profile.h"

typedef enum
{
  FACE_BOTTOM,
  FACE_TOP,
  FACE_LEFT,
  FACE_RIGHT,
  N_FACES,
} FaceSide;

/* A straight edge of a piece: along x at height `at`, or upright at place `at`. */
typedef struct
{
  Length at, from, to;
} Edge;

/* The edges of one course's pieces. */
typedef struct
{
  GArray *edges[N_FACES]; /* Edge */
} Faces;

static void
faces_init (Faces *faces)
{
  for (int side = 0; side < N_FACES; side++)
    faces->edges[side] = g_array_new (FALSE, FALSE, sizeof (Edge));
}

static void
faces_clear (Faces *faces)
{
  for (int side = 0; side < N_FACES; side++)
    g_array_unref (faces->edges[side]);
}

static gint
compare_edges (gconstpointer a, gconstpointer b)
{
  const Edge *p = a, *q = b;

  if (p->at != q->at)
    return p->at < q->at ? -1 : 1;
  if (p->from != q->from)
    return p->from < q->from ? -1 : 1;
  return (p->to > q->to) - (p->to < q->to);
}

/* One side of an outline that goes round counter-clockwise; a slope is no joint. */
static void
add_edge (Faces *faces, LayPoint p, LayPoint q)
{
  Edge edge;
  FaceSide side;

  if (p.z == q.z)
    {
      edge = (Edge){ p.z, MIN (p.x, q.x), MAX (p.x, q.x) };
      side = q.x > p.x ? FACE_BOTTOM : FACE_TOP;
    }
  else if (p.x == q.x)
    {
      edge = (Edge){ p.x, MIN (p.z, q.z), MAX (p.z, q.z) };
      side = q.z > p.z ? FACE_RIGHT : FACE_LEFT;
    }
  else
    return;
  g_array_append_val (faces->edges[side], edge);
}

static void
add_piece (Faces *faces, const Layout *layout, const Piece *piece)
{
  Length right = piece->x + piece->length, top = piece->bottom + piece->height;
  const LayPoint box[] = {
    { piece->x, piece->bottom }, { right, piece->bottom }, { right, top }, { piece->x, top }
  };
  const LayPoint *corners = box;
  gint32 n = 4;

  if (piece->outline >= 0)
    {
      corners = &g_array_index (layout->points, LayPoint, piece->outline);
      n = piece->n_outline;
    }
  for (gint32 i = 0; i < n; i++)
    add_edge (faces, corners[i], corners[(i + 1) % n]);
}

static void
faces_read (Faces *faces, const Layout *layout, const Course *course)
{
  for (int side = 0; side < N_FACES; side++)
    g_array_set_size (faces->edges[side], 0);
  for (gint32 i = 0; i < course->n_pieces; i++)
    add_piece (faces, layout, layout_piece (layout, (guint) (course->first + i)));
  for (int side = 0; side < N_FACES; side++)
    g_array_sort (faces->edges[side], compare_edges);
}

/* How much of the heights from..to beside place `x` is an opening or a movement joint just as wide
 * as a joint, which is no joint. */
static Length
slit_height (const Wall *wall, Length head, Length x, Length from, Length to)
{
  Length height = 0;

  for (guint i = 0; i < wall->movement_joints->len; i++)
    {
      const MovementJoint *joint = wall_movement_joint_at (wall, i);

      if (joint->x == x && joint->width == head)
        return to - from;
    }
  for (guint i = 0; i < wall->openings->len; i++)
    {
      const Opening *opening = wall_opening_at (wall, i);

      if (opening->x == x && opening->width == head)
        height += MAX (MIN (opening_head (opening), to) - MAX (opening->sill, from), 0);
    }
  return height;
}

/* --- bed joints --- */

/* The runs of edges at height `at`, over the upright joints between them; the course is within
 * `inside` above or below that height. */
static GArray *
runs_at (const Wall *wall, const GArray *edges, Length at, Length inside, Length head)
{
  Length from = MIN (at, inside), to = MAX (at, inside);
  GArray *runs = g_array_new (FALSE, FALSE, sizeof (Edge));

  for (guint i = 0; i < edges->len; i++)
    {
      const Edge *edge = &g_array_index (edges, Edge, i);
      Edge *last = runs->len > 0 ? &g_array_index (runs, Edge, runs->len - 1) : NULL;

      if (edge->at != at)
        continue;
      if (last != NULL && edge->from - last->to == head
          && slit_height (wall, head, last->to, from, to) == 0)
        last->to = edge->to;
      else
        g_array_append_val (runs, *edge);
    }
  return runs;
}

/* What the next course reaches over; nothing where it stops like this one. */
static Length
reached (const End *end)
{
  return end->through == THROUGH_ALL ? 0 : end->ret;
}

/* Over a wall that runs through between two runs. */
static void
reach_over_tees (const Wall *wall, Length head, GArray *runs)
{
  for (guint i = runs->len; i-- > 1;)
    for (guint k = 0; k < wall->tees->len; k++)
      {
        const Tee *tee = wall_tee_at (wall, k);
        Edge *left = &g_array_index (runs, Edge, i - 1), *right = &g_array_index (runs, Edge, i);

        if (left->to != tee->x - head || right->from != tee_right (tee) + head)
          continue;
        left->to = right->to;
        g_array_remove_index (runs, i);
        break;
      }
}

/* Beside a return, where the other wall runs through, that wall is what the next course lies on. */
static void
reach_over_returns (const Wall *wall, Length head, GArray *runs)
{
  Length left = reached (&wall->ends[SIDE_LEFT]), right = reached (&wall->ends[SIDE_RIGHT]);

  for (guint i = 0; i < runs->len; i++)
    {
      Edge *run = &g_array_index (runs, Edge, i);

      if (left > 0 && run->from == left + head)
        run->from = 0;
      if (right > 0 && run->to == wall->length - right - head)
        run->to = wall->length;
    }
  reach_over_tees (wall, head, runs);
}

static gint64
total_length (const GArray *runs)
{
  gint64 total = 0;

  for (guint i = 0; i < runs->len; i++)
    total += g_array_index (runs, Edge, i).to - g_array_index (runs, Edge, i).from;
  return total;
}

/* Both sorted, none of one overlapping another of the same. */
static gint64
shared_length (const GArray *below, const GArray *above)
{
  gint64 total = 0;
  guint i = 0, k = 0;

  while (i < below->len && k < above->len)
    {
      const Edge *p = &g_array_index (below, Edge, i), *q = &g_array_index (above, Edge, k);

      total += MAX (MIN (p->to, q->to) - MAX (p->from, q->from), 0);
      if (p->to < q->to)
        i++;
      else
        k++;
    }
  return total;
}

/* --- upright joints --- */

/* Edges that face each other one head joint apart. */
static gint64
facing_height (const Wall *wall, const Faces *faces, Length head)
{
  const GArray *rights = faces->edges[FACE_RIGHT], *lefts = faces->edges[FACE_LEFT];
  gint64 total = 0;
  guint first = 0;

  for (guint i = 0; i < rights->len; i++)
    {
      const Edge *p = &g_array_index (rights, Edge, i);

      while (first < lefts->len && g_array_index (lefts, Edge, first).at < p->at + head)
        first++;
      for (guint k = first; k < lefts->len && g_array_index (lefts, Edge, k).at == p->at + head;
           k++)
        {
          const Edge *q = &g_array_index (lefts, Edge, k);
          Length from = MAX (p->from, q->from), to = MIN (p->to, q->to);

          if (to > from)
            total += to - from - slit_height (wall, head, p->at, from, to);
        }
    }
  return total;
}

static gint64
height_at (const GArray *edges, Length at)
{
  gint64 total = 0;

  for (guint i = 0; i < edges->len; i++)
    if (g_array_index (edges, Edge, i).at == at)
      total += g_array_index (edges, Edge, i).to - g_array_index (edges, Edge, i).from;
  return total;
}

/* Against the other wall, in the courses in which that one runs through. */
static gint64
height_at_returns (const Wall *wall, const Faces *faces, const Course *course, Length head)
{
  const End *left = &wall->ends[SIDE_LEFT], *right = &wall->ends[SIDE_RIGHT];
  gint64 total = 0;

  if (end_stops (left, course->number, course->bottom))
    total += height_at (faces->edges[FACE_LEFT], left->ret + head);
  if (end_stops (right, course->number, course->bottom))
    total += height_at (faces->edges[FACE_RIGHT], wall->length - right->ret - head);
  for (guint i = 0; i < wall->tees->len; i++)
    {
      const Tee *tee = wall_tee_at (wall, i);

      if (tee_stops (tee, course->number, course->bottom))
        total += height_at (faces->edges[FACE_RIGHT], tee->x - head)
                 + height_at (faces->edges[FACE_LEFT], tee_right (tee) + head);
    }
  return total;
}

static void
add_packings (const Layout *layout, gboolean rest, Joints *joints)
{
  for (guint i = 0; i < layout->packings->len; i++)
    {
      const Packing *packing = &g_array_index (layout->packings, Packing, i);

      if (rest && layout_course (layout, (guint) packing->course - 1)->stands)
        continue;
      *(packing_is_wedge (packing) ? &joints->wedges : &joints->packings) += packing_area (packing);
    }
}

/* How much of the runs is where the footing lies so far up. */
static gint64
length_on (const GArray *runs, Length from, Length to)
{
  gint64 total = 0;

  for (guint i = 0; i < runs->len; i++)
    {
      const Edge *run = &g_array_index (runs, Edge, i);

      total += MAX (MIN (run->to, to) - MAX (run->from, from), 0);
    }
  return total;
}

/* The beds of a course that begins on steps of the footing. */
static double
beds_on_steps (const Wall *wall, const Block *block, const Laying *laying, const Faces *faces,
               gint32 course, Joints *joints)
{
  double area = 0;

  for (guint i = 0; i < wall->feet->len; i++)
    {
      const Foot *foot = foot_point (wall->feet, i);
      Length base = profile_base (wall, block, laying, foot->up);
      Length to = i + 1 < wall->feet->len ? foot_point (wall->feet, i + 1)->x : wall->length;
      g_autoptr (GArray) runs
          = runs_at (wall, faces->edges[FACE_BOTTOM], base, base + 1, laying->head);
      gint64 length = length_on (runs, foot->x, to);

      if (foot->up == 0)
        continue;
      area += (double) length / LENGTH_PER_MM * length_to_mm (base - foot->up);
      joints->on_steps += length;
      joints->levelling -= course == 1 && base == laying->first_bed ? length : 0;
    }
  return area;
}

static void
add_bed (Joints *joints, gint64 length, Length thickness)
{
  joints->bed += length;
  joints->bed_face += length * thickness;
}

Joints
joints_of (const Wall *wall, const Block *block, const Laying *laying, const Layout *layout,
           gboolean rest)
{
  Joints joints = { 0 };
  g_autoptr (GArray) below = NULL;
  Faces faces;

  add_packings (layout, rest, &joints);
  faces_init (&faces);
  for (guint c = 0; c < layout->courses->len; c++)
    {
      const Course *course = layout_course (layout, c);
      g_autoptr (GArray) above = NULL;

      faces_read (&faces, layout, course);
      above = runs_at (wall, faces.edges[FACE_BOTTOM], course->bottom, course->bottom + 1,
                       laying->head);
      if (rest && course->stands)
        ;
      else if (c == 0)
        joints.levelling = total_length (above);
      else
        add_bed (&joints, shared_length (below, above),
                 course->bottom - layout_course (layout, c - 1)->top);
      if (wall->feet->len > 0 && (!rest || !course->stands))
        joints.steps += beds_on_steps (wall, block, laying, &faces, course->number, &joints);
      g_clear_pointer (&below, g_array_unref);
      below = runs_at (wall, faces.edges[FACE_TOP], course->top, course->top - 1, laying->head);
      reach_over_returns (wall, laying->head, below);
      if (!rest || !course->stands)
        joints.head += facing_height (wall, &faces, laying->head)
                       + height_at_returns (wall, &faces, course, laying->head);
    }
  faces_clear (&faces);
  return joints;
}
