/* dimension.c - dimensions over the wall and beside it, each one the value that typing changes */
#include "paint/scene-private.h"

/* Half a tick across its line; text stands this far from its line; steps. */
#define TICK_HALF 4.f
#define TEXT_AWAY 3.f
/* Least length of an upright dimension on the sheet that takes its number. */
#define UPRIGHT_ROOM 13.0

static int
compare_openings (gconstpointer a, gconstpointer b)
{
  const Opening *one = *(const Opening *const *) a, *other = *(const Opening *const *) b;

  if (one->x != other->x)
    return one->x < other->x ? -1 : 1;
  if (one->sill != other->sill)
    return one->sill < other->sill ? -1 : 1;
  return one->id.n < other->id.n ? -1 : one->id.n > other->id.n;
}

GPtrArray *
wall_openings_sorted (const Wall *wall)
{
  GPtrArray *sorted = g_ptr_array_sized_new (wall->openings->len);

  for (guint i = 0; i < wall->openings->len; i++)
    g_ptr_array_add (sorted, (gpointer) wall_opening_at (wall, i));
  g_ptr_array_sort (sorted, compare_openings);
  return sorted;
}

/* The first chain whose last opening ends before this one begins. */
static guint
row_for (GArray *ends, const Opening *opening)
{
  for (guint row = 0; row < ends->len; row++)
    if (g_array_index (ends, Length, row) <= opening->x)
      return row;
  const Length none = 0;
  g_array_append_val (ends, none);
  return ends->len - 1;
}

guint
wall_dimension_rows (const Wall *wall)
{
  g_autoptr (GPtrArray) sorted = wall_openings_sorted (wall);
  g_autoptr (GArray) ends = g_array_new (FALSE, FALSE, sizeof (Length));

  for (guint i = 0; i < sorted->len; i++)
    {
      const Opening *opening = g_ptr_array_index (sorted, i);
      const guint row = row_for (ends, opening);
      g_array_index (ends, Length, row) = opening_right (opening);
    }
  return ends->len;
}

static MarkRef
dimension_ref (const Dimension *dimension)
{
  if (dimension->fixed)
    return (MarkRef){ REF_NONE };
  return (MarkRef){
    .kind = REF_DIMENSION, .id = dimension->opening, .part = dimension->part, .a = dimension->point
  };
}

static void
add_level_line (Scene *scene, const Dimension *dimension, double z)
{
  const double from = length_to_mm (dimension->from), to = length_to_mm (dimension->to);
  MarkLook line = mark_look (STYLE_DIMENSION_LINE, LAYER_DIMENSIONS);
  const MarkLook tick = mark_look (STYLE_DIMENSION_TICK, LAYER_DIMENSIONS);
  const float dy = -dimension->away;

  line.ref = dimension_ref (dimension);
  drawing_add_line (scene->drawing, &line, at_offset (from, z, 0, dy), at_offset (to, z, 0, dy));
  drawing_add_line (scene->drawing, &tick, at_offset (from, z, 0, dy - TICK_HALF),
                    at_offset (from, z, 0, dy + TICK_HALF));
  drawing_add_line (scene->drawing, &tick, at_offset (to, z, 0, dy - TICK_HALF),
                    at_offset (to, z, 0, dy + TICK_HALF));
}

void
scene_dimension_along (Scene *scene, const Dimension *dimension)
{
  char text[LENGTH_TEXT_SIZE];
  const double z = wall_head (scene->wall);
  const double from = length_to_mm (dimension->from), to = length_to_mm (dimension->to);
  MarkLook look = mark_look (dimension->text, LAYER_DIMENSIONS);

  if (dimension->to <= dimension->from)
    return;
  add_level_line (scene, dimension, z);
  look.ref = dimension_ref (dimension);
  look.fit = dimension->part == DIMENSION_WALL_LENGTH ? 0 : to - from;
  drawing_add_text (scene->drawing, &look,
                    at_offset ((from + to) / 2, z, 0, -dimension->away - TEXT_AWAY), 0.5f, 1,
                    length_text (dimension->to - dimension->from, text));
}

static void
add_upright_line (Scene *scene, const Dimension *dimension, double x)
{
  const double from = length_to_mm (dimension->from), to = length_to_mm (dimension->to);
  const float dx = dimension->away;
  MarkLook line = mark_look (STYLE_DIMENSION_LINE, LAYER_DIMENSIONS);
  const MarkLook tick = mark_look (STYLE_DIMENSION_TICK, LAYER_DIMENSIONS);

  line.ref = dimension_ref (dimension);
  drawing_add_line (scene->drawing, &line, at_offset (x, from, dx, 0), at_offset (x, to, dx, 0));
  drawing_add_line (scene->drawing, &tick, at_offset (x, from, dx - TICK_HALF, 0),
                    at_offset (x, from, dx + TICK_HALF, 0));
  drawing_add_line (scene->drawing, &tick, at_offset (x, to, dx - TICK_HALF, 0),
                    at_offset (x, to, dx + TICK_HALF, 0));
}

static void
add_upright (Scene *scene, const Dimension *dimension)
{
  char text[LENGTH_TEXT_SIZE];
  const double x = length_to_mm (scene->wall->length);
  const double from = length_to_mm (dimension->from), to = length_to_mm (dimension->to);
  MarkLook look = mark_look (dimension->text, LAYER_DIMENSIONS);

  if (dimension->to <= dimension->from)
    return;
  add_upright_line (scene, dimension, x);
  look.ref = dimension_ref (dimension);
  look.min_scale = dimension->part == DIMENSION_WALL_HEIGHT ? 0 : UPRIGHT_ROOM / (to - from);
  drawing_add_text (scene->drawing, &look,
                    at_offset (x, (from + to) / 2, dimension->away + TEXT_AWAY + 2, 0), 0, 0.5f,
                    length_text (dimension->to - dimension->from, text));
}

/* Over the wall: piers and widths */

typedef struct
{
  Scene *scene;
  GPtrArray *openings; /* Opening *, from the left */
  GArray *ends;        /* Length: where each chain has come to */
  GArray *last;        /* const Opening *: the last one of each chain */
} Chains;

float
scene_chain_away (const Scene *scene, guint row)
{
  const guint before = wall_has_top_places (scene->wall) ? 1 : 0;

  return DIMENSION_FIRST + (scene->wall->tops->len > 0 ? LEVEL_ROOM : 0)
         + DIMENSION_PITCH * (float) (row + before);
}

static Style
text_style (const Scene *scene, const Opening *opening)
{
  return opening->id.n == scene->input->selected.n ? STYLE_SELECTED_TEXT : STYLE_DIMENSION_TEXT;
}

static void
add_to_chain (Chains *chains, guint row, const Opening *opening)
{
  const float away = scene_chain_away (chains->scene, row);
  const Style style = text_style (chains->scene, opening);
  const Dimension pier = { g_array_index (chains->ends, Length, row),
                           opening->x,
                           away,
                           DIMENSION_PIER_BEFORE,
                           opening->id.n,
                           style };
  const Dimension width = { opening->x,    opening_right (opening),
                            away,          DIMENSION_OPENING_WIDTH,
                            opening->id.n, style };

  scene_dimension_along (chains->scene, &pier);
  scene_dimension_along (chains->scene, &width);
  g_array_index (chains->ends, Length, row) = opening_right (opening);
  if (row >= chains->last->len)
    g_array_set_size (chains->last, row + 1);
  g_array_index (chains->last, const Opening *, row) = opening;
}

static void
close_chains (Chains *chains)
{
  for (guint row = 0; row < chains->ends->len; row++)
    {
      const Opening *last = g_array_index (chains->last, const Opening *, row);
      const Dimension pier = { g_array_index (chains->ends, Length, row),
                               chains->scene->wall->length,
                               scene_chain_away (chains->scene, row),
                               DIMENSION_PIER_AFTER,
                               last->id.n,
                               text_style (chains->scene, last) };
      scene_dimension_along (chains->scene, &pier);
    }
}

static void
add_lengths (Scene *scene)
{
  g_autoptr (GPtrArray) openings = wall_openings_sorted (scene->wall);
  g_autoptr (GArray) ends = g_array_new (FALSE, FALSE, sizeof (Length));
  g_autoptr (GArray) last = g_array_new (FALSE, TRUE, sizeof (const Opening *));
  Chains chains = { scene, openings, ends, last };

  for (guint i = 0; i < openings->len; i++)
    {
      const Opening *opening = g_ptr_array_index (openings, i);
      add_to_chain (&chains, row_for (ends, opening), opening);
    }
  close_chains (&chains);
  const Dimension total
      = { 0, scene->wall->length,  scene_chain_away (scene, ends->len), DIMENSION_WALL_LENGTH,
          0, STYLE_DIMENSION_TOTAL };
  scene_dimension_along (scene, &total);
}

/* Beside the wall: heights */

static void
add_guide (Scene *scene, const Opening *opening, Length height)
{
  const MarkLook look = mark_look (STYLE_GUIDE, LAYER_LABELS);
  const double z = length_to_mm (height);

  if (height <= 0 || height >= scene->wall->height)
    return;
  drawing_add_line (scene->drawing, &look, at (length_to_mm (opening_right (opening)), z),
                    at_offset (length_to_mm (scene->wall->length), z, HEIGHTS_FIRST, 0));
}

static void
add_opening_heights (Scene *scene, const Opening *opening)
{
  const Length head = opening_head (opening);
  const Dimension heights[] = {
    { 0, opening->sill, HEIGHTS_FIRST, DIMENSION_OPENING_SILL, opening->id.n, STYLE_SELECTED_TEXT },
    { opening->sill, head, HEIGHTS_FIRST, DIMENSION_OPENING_HEIGHT, opening->id.n,
      STYLE_SELECTED_TEXT },
    { head, wall_top_lowest (scene->wall, opening->x, opening_right (opening)), HEIGHTS_FIRST,
      DIMENSION_OPENING_HEIGHT, 0, STYLE_DIMENSION_TEXT, TRUE },
  };

  for (guint i = 0; i < G_N_ELEMENTS (heights); i++)
    add_upright (scene, &heights[i]);
  add_guide (scene, opening, opening->sill);
  add_guide (scene, opening, head);
}

/* From the highest place of the top to its dimension, where that stands beside a lower end. */
static void
add_highest_line (Scene *scene, float away)
{
  const Wall *wall = scene->wall;
  const MarkLook look = mark_look (STYLE_DIMENSION_LINE, LAYER_LABELS);
  const double z = length_to_mm (wall->height);
  Length x = wall->length;

  for (guint i = 0; i < wall->tops->len; i++)
    if (top_point (wall->tops, i)->below == 0)
      x = MIN (top_point (wall->tops, i)->x, wall->length);
  if (wall_top_at (wall, wall->length, SIDE_LEFT) < wall->height)
    drawing_add_line (scene->drawing, &look, at_offset (length_to_mm (x), z, 10, 0),
                      at_offset (length_to_mm (wall->length), z, away + 4, 0));
}

static void
add_heights (Scene *scene)
{
  const Opening *selected = wall_opening (scene->wall, scene->input->selected);
  const Dimension total = { 0,
                            scene->wall->height,
                            selected ? HEIGHTS_FIRST + HEIGHTS_PITCH : HEIGHTS_FIRST,
                            DIMENSION_WALL_HEIGHT,
                            0,
                            STYLE_DIMENSION_TOTAL };

  if (selected)
    add_opening_heights (scene, selected);
  add_highest_line (scene, total.away);
  add_upright (scene, &total);
}

void
scene_dimensions (Scene *scene)
{
  add_lengths (scene);
  add_heights (scene);
  scene_top_dimensions (scene);
}
