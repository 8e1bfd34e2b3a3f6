/* face.c - the wall's face: from its footing to its top, and what of a band or a line lies in it */
#include "paint/scene-private.h"

GArray *
face_top (const Wall *wall, Length from, Length to)
{
  GArray *points = g_array_new (FALSE, FALSE, sizeof (LayPoint));
  LayPoint point = { from, wall_top_at (wall, from, SIDE_RIGHT) };

  g_array_append_val (points, point);
  for (guint i = 0; i < wall->tops->len; i++)
    {
      const TopPoint *top = top_point (wall->tops, i);

      point = (LayPoint){ top->x, wall->height - top->below };
      if (top->x > from && top->x < to)
        g_array_append_val (points, point);
    }
  point = (LayPoint){ to, wall_top_at (wall, to, SIDE_LEFT) };
  return g_array_append_val (points, point);
}

GArray *
face_foot (const Wall *wall, Length from, Length to)
{
  GArray *points = g_array_new (FALSE, FALSE, sizeof (LayPoint));
  LayPoint point = { from, wall_foot_at (wall, from, SIDE_RIGHT) };

  g_array_append_val (points, point);
  for (guint i = 0; i < wall->feet->len; i++)
    {
      const Foot *foot = foot_point (wall->feet, i);

      if (foot->x <= from || foot->x >= to)
        continue;
      point.x = foot->x;
      g_array_append_val (points, point);
      point.z = foot->up;
      g_array_append_val (points, point);
    }
  point.x = to;
  return g_array_append_val (points, point);
}

static void
append (GArray *points, LayPoint point, double up)
{
  MarkPoint mark = at_length (point.x, point.z);

  mark.z += up;
  g_array_append_val (points, mark);
}

/* Between two lines that go from left to right, the upper one so much higher. */
static void
add_between (Scene *scene, const MarkLook *look, const GArray *low, const GArray *high, double up)
{
  g_autoptr (GArray) points = g_array_new (FALSE, FALSE, sizeof (MarkPoint));

  for (guint i = 0; i < low->len; i++)
    append (points, g_array_index (low, LayPoint, i), 0);
  for (guint i = high->len; i-- > 0;)
    append (points, g_array_index (high, LayPoint, i), up);
  drawing_add (scene->drawing, MARK_POLYGON, look, (const MarkPoint *) (gpointer) points->data,
               points->len);
}

void
scene_face (Scene *scene, const MarkLook *look, Length from, Length to)
{
  g_autoptr (GArray) low = face_foot (scene->wall, from, to);
  g_autoptr (GArray) high = face_top (scene->wall, from, to);

  add_between (scene, look, low, high, 0);
}

void
scene_face_foot (Scene *scene, const MarkLook *look, double deep)
{
  g_autoptr (GArray) low = face_foot (scene->wall, 0, scene->wall->length);

  add_between (scene, look, low, low, deep);
}

void
scene_face_top (Scene *scene, const MarkLook *look, double up, double thick)
{
  g_autoptr (GArray) points = face_top (scene->wall, 0, scene->wall->length);

  for (guint i = 0; i < points->len; i++)
    g_array_index (points, LayPoint, i).z += length_from_mm (up);
  add_between (scene, look, points, points, thick);
}

static int
compare_lengths (gconstpointer a, gconstpointer b)
{
  const Length one = *(const Length *) a, other = *(const Length *) b;

  return one < other ? -1 : one > other;
}

static void
add_place (GArray *places, const Wall *wall, Length x)
{
  if (x > 0 && x < wall->length)
    g_array_append_val (places, x);
}

/* Where a level line may enter the face or leave it: Length, from the left. */
static GArray *
places_at (const Wall *wall, Length z)
{
  GArray *places = g_array_new (FALSE, FALSE, sizeof (Length));
  g_autoptr (GArray) top = face_top (wall, 0, wall->length);
  const Length ends[] = { 0, wall->length };

  g_array_append_vals (places, ends, G_N_ELEMENTS (ends));
  for (guint i = 0; i < wall->feet->len; i++)
    add_place (places, wall, foot_point (wall->feet, i)->x);
  for (guint i = 0; i + 1 < top->len; i++)
    {
      const LayPoint a = g_array_index (top, LayPoint, i), b = g_array_index (top, LayPoint, i + 1);
      const TopLine line = { a.x, a.z, b.x, b.z };

      add_place (places, wall, a.x);
      if ((a.z < z) != (b.z < z) && a.x < b.x)
        add_place (places, wall, top_line_meets (&line, z));
    }
  g_array_sort (places, compare_lengths);
  return places;
}

static gboolean
is_in_face (const Wall *wall, Length x, Length z)
{
  return z > wall_foot_at (wall, x, SIDE_RIGHT) && z < wall_top_at (wall, x, SIDE_RIGHT);
}

void
scene_face_line (Scene *scene, const MarkLook *look, Length z)
{
  g_autoptr (GArray) places = places_at (scene->wall, z);
  Length from = -1;

  for (guint i = 0; i + 1 < places->len; i++)
    {
      const Length a = g_array_index (places, Length, i), b = g_array_index (places, Length, i + 1);
      const gboolean within = b > a && is_in_face (scene->wall, a + (b - a) / 2, z);

      if (within && from < 0)
        from = a;
      if (from >= 0 && (!within || i + 2 == places->len) && b > a)
        {
          drawing_add_line (scene->drawing, look, at_length (from, z),
                            at_length (within ? b : a, z));
          from = -1;
        }
    }
}
