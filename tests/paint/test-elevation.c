#include "paint/elevation.h"

#include <string.h>

#include "paint/ink.h"
#include "paint/sample.h"
#include "paint/theme.h"
#include "takeoff/work.h"

#define SCREEN_WIDTH 934
#define SCREEN_HEIGHT 626

static const double zooms[] = { 0.2, 0.5, 1, 1.7, 4, 20 };

typedef Drawing *(*Draw) (const ElevationInput *input);

/* Picking */

static MarkRef
ref_at (const Drawing *drawing, const View *view, double x, double z, double reach)
{
  const MarkPoint point = { x, z, 0, 0 };
  MarkRef ref = { REF_NONE };
  double sx, sy;

  view_to_sheet (view, &point, &sx, &sy);
  if (!drawing_pick (drawing, view, sx, sy, reach, &ref))
    ref.kind = REF_NONE;
  return ref;
}

static void
assert_piece_picked (const Drawing *drawing, const View *view, const Piece *piece)
{
  const double x = length_to_mm (piece->x) + length_to_mm (piece->length) / 2;
  const double z = length_to_mm (piece->bottom) + length_to_mm (piece->height) / 2;
  const MarkRef ref = ref_at (drawing, view, x, z, 0);

  g_assert_cmpint (ref.kind, ==, REF_PIECE);
  g_assert_cmpint (ref.a, ==, piece->course);
  g_assert_cmpint (ref.b, ==, piece->number);
}

/* Of a notched piece the middle of its box may lie in the opening. */
static void
test_pick_pieces (gconstpointer data)
{
  g_auto (Sample) sample = sample_new ((SampleKind) GPOINTER_TO_INT (data));
  const ElevationInput input = sample_input (&sample);
  g_autoptr (Drawing) drawing = elevation_laying (&input);
  const View view = elevation_fit (input.wall, FALSE, SCREEN_WIDTH, SCREEN_HEIGHT);
  guint tried = 0;

  for (guint i = 0; i < sample.layout->pieces->len; i++)
    {
      const Piece *piece = layout_piece (sample.layout, i);
      if (piece->outline >= 0)
        continue;
      assert_piece_picked (drawing, &view, piece);
      tried++;
    }
  g_assert_cmpuint (tried, >, sample.layout->pieces->len / 2);
}

static void
test_pick_openings (void)
{
  g_auto (Sample) sample = sample_new (SAMPLE_LONG);
  const ElevationInput input = sample_input (&sample);
  g_autoptr (Drawing) drawing = elevation_laying (&input);
  const View view = elevation_fit (input.wall, FALSE, 1366, 768);

  for (guint i = 0; i < input.wall->openings->len; i++)
    {
      const Opening *opening = wall_opening_at (input.wall, i);
      const MarkRef ref = ref_at (drawing, &view, length_to_mm (opening->x + opening->width / 2),
                                  length_to_mm (opening->sill + opening->height / 2), 0);
      g_assert_cmpint (ref.kind, ==, REF_OPENING);
      g_assert_cmpuint (ref.id, ==, opening->id.n);
      g_assert_cmpint (ref.part, ==, PART_BODY);
    }
}

static void
test_pick_handles (void)
{
  g_auto (Sample) sample = sample_new (SAMPLE_STREET);
  ElevationInput input = sample_input (&sample);
  const Opening *opening = wall_opening_at (input.wall, 1);
  static const struct
  {
    RefPart part;
    double x, z; /* shares of width and height */
  } cases[] = {
    { PART_LEFT, 0, 0.5 },   { PART_RIGHT, 1, 0.5 },     { PART_SILL, 0.5, 0 },
    { PART_HEAD, 0.5, 1 },   { PART_BOTTOM_LEFT, 0, 0 }, { PART_BOTTOM_RIGHT, 1, 0 },
    { PART_TOP_LEFT, 0, 1 }, { PART_TOP_RIGHT, 1, 1 },
  };

  input.selected = opening->id;
  g_autoptr (Drawing) overlay = elevation_overlay (&input, NULL);
  const View view = elevation_fit (input.wall, FALSE, SCREEN_WIDTH, SCREEN_HEIGHT);
  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      const MarkRef ref = ref_at (
          overlay, &view, length_to_mm (opening->x) + cases[i].x * length_to_mm (opening->width),
          length_to_mm (opening->sill) + cases[i].z * length_to_mm (opening->height), 4);
      g_assert_cmpint (ref.kind, ==, REF_OPENING);
      g_assert_cmpuint (ref.id, ==, opening->id.n);
      g_assert_cmpint (ref.part, ==, cases[i].part);
    }
}

static void
test_pick_wall_ends (void)
{
  g_auto (Sample) sample = sample_new (SAMPLE_BARE);
  const ElevationInput input = sample_input (&sample);
  g_autoptr (Drawing) drawing = elevation_laying (&input);
  const View view = elevation_fit (input.wall, FALSE, SCREEN_WIDTH, SCREEN_HEIGHT);
  const MarkRef left = ref_at (drawing, &view, 0, 1000, 4);
  const MarkRef right = ref_at (drawing, &view, 6000, 1000, 4);
  const MarkRef top = ref_at (drawing, &view, 3000, 2500, 4);

  g_assert_cmpint (left.kind, ==, REF_WALL);
  g_assert_cmpint (left.part, ==, PART_LEFT);
  g_assert_cmpint (right.kind, ==, REF_WALL);
  g_assert_cmpint (right.part, ==, PART_RIGHT);
  g_assert_cmpint (top.kind, ==, REF_WALL);
  g_assert_cmpint (top.part, ==, PART_HEAD);
}

/* The rod stands left of the wall: its beds and cells are found there at every height. */
static void
test_pick_rod (void)
{
  g_auto (Sample) sample = sample_new (SAMPLE_STREET);
  const ElevationInput input = sample_input (&sample);
  g_autoptr (Drawing) drawing = elevation_laying (&input);
  const View view = elevation_fit (input.wall, FALSE, SCREEN_WIDTH, SCREEN_HEIGHT);

  for (guint c = 0; c < sample.layout->courses->len; c++)
    {
      const Course *course = layout_course (sample.layout, c);
      const double middle = length_to_mm (course->bottom + course->top) / 2;
      MarkRef bed, cell;
      g_assert_cmpint (drawing_pick (drawing, &view, view.ox - 36,
                                     view.oy - length_to_mm (course->top) * view.scale, 0, &bed),
                       ==, TRUE);
      g_assert_cmpint (bed.kind, ==, REF_BED);
      g_assert_cmpint (bed.a, ==, course->number);
      g_assert_cmpint (
          drawing_pick (drawing, &view, view.ox - 58, view.oy - middle * view.scale, 0, &cell), ==,
          TRUE);
      g_assert_cmpint (cell.kind, ==, REF_COURSE);
      g_assert_cmpint (cell.a, ==, course->number);
    }
}

/* Marks */

static void
test_one_mark_each (gconstpointer data)
{
  g_auto (Sample) sample = sample_new ((SampleKind) GPOINTER_TO_INT (data));
  const ElevationInput input = sample_input (&sample);
  g_autoptr (Drawing) drawing = elevation_laying (&input);
  g_autofree guint *found = g_new0 (guint, sample.layout->pieces->len);

  for (guint i = 0; i < drawing->marks->len; i++)
    {
      const Mark *mark = drawing_mark (drawing, i);
      if (mark->ref.kind != REF_PIECE)
        continue;
      const Course *course = layout_course (sample.layout, (guint) mark->ref.a - 1);
      g_assert_cmpint (mark->course, ==, mark->ref.a);
      g_assert_cmpint (mark->ref.b, <=, course->n_pieces);
      found[course->first + mark->ref.b - 1]++;
    }
  for (guint i = 0; i < sample.layout->pieces->len; i++)
    g_assert_cmpuint (found[i], ==, 1);
}

static Drawing *
drawn (SampleKind kind, Draw draw)
{
  g_auto (Sample) sample = sample_new (kind);
  const ElevationInput input = sample_input (&sample);

  return draw (&input);
}

static const Draw draws[] = { elevation_laying, elevation_client };

static void
test_sorted (gconstpointer data)
{
  for (guint d = 0; d < G_N_ELEMENTS (draws); d++)
    {
      g_autoptr (Drawing) drawing = drawn ((SampleKind) GPOINTER_TO_INT (data), draws[d]);
      g_assert_cmpuint (drawing->marks->len, >, 10);
      for (guint i = 1; i < drawing->marks->len; i++)
        g_assert_cmpint (drawing_mark (drawing, i - 1)->layer, <=,
                         drawing_mark (drawing, i)->layer);
    }
}

/* Every mark's places and text lie within the drawing's lists. */
static void
test_marks_are_whole (gconstpointer data)
{
  for (guint d = 0; d < G_N_ELEMENTS (draws); d++)
    {
      g_autoptr (Drawing) drawing = drawn ((SampleKind) GPOINTER_TO_INT (data), draws[d]);
      for (guint i = 0; i < drawing->marks->len; i++)
        {
          const Mark *mark = drawing_mark (drawing, i);
          g_assert_cmpuint (mark->n_points, >=, mark->kind == MARK_POLYGON ? 3 : 1);
          g_assert_cmpuint (mark->first + mark->n_points, <=, drawing->points->len);
          g_assert_cmpuint (mark->text, <, drawing->texts->len);
          g_assert_cmpint (mark->style, <, N_STYLES);
        }
    }
}

static gboolean
same_bytes (const GArray *a, const GArray *b)
{
  return a->len == b->len
         && memcmp (a->data, b->data, a->len * g_array_get_element_size ((GArray *) a)) == 0;
}

static void
test_same_again (gconstpointer data)
{
  for (guint d = 0; d < G_N_ELEMENTS (draws); d++)
    {
      g_autoptr (Drawing) one = drawn ((SampleKind) GPOINTER_TO_INT (data), draws[d]);
      g_autoptr (Drawing) other = drawn ((SampleKind) GPOINTER_TO_INT (data), draws[d]);
      g_assert_cmpuint (one->marks->len, ==, other->marks->len);
      g_assert_cmpint (same_bytes (one->points, other->points), ==, TRUE);
      g_assert_cmpuint (one->texts->len, ==, other->texts->len);
      g_assert_cmpint (memcmp (one->texts->str, other->texts->str, one->texts->len), ==, 0);
    }
}

/* Text */

typedef struct
{
  InkText place;
  const char *text;
} Placed;

static GArray *
placed_texts (Ink *ink, const Drawing *drawing, const View *view, Layer layer)
{
  GArray *placed = g_array_new (FALSE, FALSE, sizeof (Placed));

  for (guint i = 0; i < drawing->marks->len; i++)
    {
      const Mark *mark = drawing_mark (drawing, i);
      Placed one = { .text = drawing_text (drawing, mark) };
      if (mark->layer == (int) layer
          && ink_place_text (ink, drawing, mark, view, THEME_LIGHT, &one.place))
        g_array_append_val (placed, one);
    }
  return placed;
}

/* The upper and lower fifth of a line of text are room for accents, which figures do not use. */
static gboolean
overlap (const InkText *a, const InkText *b)
{
  return a->x < b->x + b->width && b->x < a->x + a->width
         && a->y + 0.2 * a->height < b->y + 0.8 * b->height
         && b->y + 0.2 * b->height < a->y + 0.8 * a->height;
}

static void
assert_apart (const GArray *placed, double scale)
{
  for (guint i = 0; i < placed->len; i++)
    for (guint k = 0; k < i; k++)
      {
        const Placed *a = &g_array_index (placed, Placed, i);
        const Placed *b = &g_array_index (placed, Placed, k);
        if (overlap (&a->place, &b->place))
          g_test_message ("“%s” and “%s” at scale %g", a->text, b->text, scale);
        g_assert_cmpint (overlap (&a->place, &b->place), ==, FALSE);
      }
}

static guint
n_texts (Ink *ink, const Drawing *drawing, double scale, Layer layer)
{
  const View view = { scale, 0, 0 };
  g_autoptr (GArray) placed = placed_texts (ink, drawing, &view, layer);

  return placed->len;
}

static void
assert_texts_apart (Ink *ink, const ElevationInput *input)
{
  static const Layer layers[]
      = { LAYER_LABELS, LAYER_OPENINGS, LAYER_ROD, LAYER_TAPE, LAYER_DIMENSIONS };
  g_autoptr (Drawing) drawing = elevation_laying (input);
  const View fit = elevation_fit (input->wall, FALSE, SCREEN_WIDTH, SCREEN_HEIGHT);

  for (guint i = 0; i < G_N_ELEMENTS (zooms) * G_N_ELEMENTS (layers); i++)
    {
      const View view = view_zoomed (&fit, zooms[i / G_N_ELEMENTS (layers)], 0, 0);
      g_autoptr (GArray) placed
          = placed_texts (ink, drawing, &view, layers[i % G_N_ELEMENTS (layers)]);
      assert_apart (placed, view.scale);
    }
}

static void
test_texts_apart (gconstpointer data)
{
  g_auto (Sample) sample = sample_new ((SampleKind) GPOINTER_TO_INT (data));
  ElevationInput input = sample_input (&sample);
  Ink *ink = ink_new (NULL);

  for (input.course = 1; input.course <= 6; input.course += 5)
    assert_texts_apart (ink, &input);
  ink_free (ink);
}

/* Walls that nobody would draw are drawn as well. */
static void
test_made_up_walls (void)
{
  GRand *random = g_rand_new_with_seed (20260302);
  Ink *ink = ink_new (NULL);

  for (guint i = 0; i < 60; i++)
    {
      g_auto (Sample) sample = sample_new_random (random);
      ElevationInput input = sample_input (&sample);
      input.course = g_rand_int_range (random, 1, 12);
      if (input.wall->openings->len > 0)
        input.selected = wall_opening_at (input.wall, 0)->id;
      assert_texts_apart (ink, &input);
      g_autoptr (Drawing) drawing = elevation_laying (&input);
      const View view = elevation_fit (input.wall, FALSE, SCREEN_WIDTH, SCREEN_HEIGHT);
      for (guint k = 0; k < sample.layout->pieces->len; k++)
        if (layout_piece (sample.layout, k)->outline < 0)
          assert_piece_picked (drawing, &view, layout_piece (sample.layout, k));
      g_assert_cmpuint (n_texts (ink, drawing, 2, LAYER_LABELS), >=,
                        (guint) sample.layout->n_cut * 9 / 10);
    }
  ink_free (ink);
  g_rand_free (random);
}

static void
test_ghost_says_where (void)
{
  g_auto (Sample) sample = sample_new (SAMPLE_STREET);
  const ElevationInput input = sample_input (&sample);
  Opening ghost = *wall_opening_at (input.wall, 0);
  static const char *const texts[] = { "1760", "2960", "900", "2100", "1200 × 1200" };

  ghost.x = LENGTH_MM (1760);
  ghost.sill = LENGTH_MM (900);
  g_autoptr (Drawing) drawing = elevation_overlay (&input, &ghost);
  for (guint i = 0; i < G_N_ELEMENTS (texts); i++)
    {
      gboolean found = FALSE;
      for (guint k = 0; k < drawing->marks->len; k++)
        found |= strcmp (drawing_text (drawing, drawing_mark (drawing, k)), texts[i]) == 0;
      g_assert_cmpint (found, ==, TRUE);
    }
}

/* What is dropped when there is no room comes back when there is. */
static void
test_zoom_adds (void)
{
  g_autoptr (Drawing) drawing = drawn (SAMPLE_LONG, elevation_laying);
  static const Layer layers[] = { LAYER_LABELS, LAYER_ROD, LAYER_TAPE, LAYER_DIMENSIONS };
  Ink *ink = ink_new (NULL);

  for (guint i = 0; i < G_N_ELEMENTS (layers); i++)
    {
      guint before = 0;
      for (double scale = 0.002; scale < 3; scale *= 1.3)
        {
          const guint now = n_texts (ink, drawing, scale, layers[i]);
          g_assert_cmpuint (now, >=, before);
          before = now;
        }
      g_assert_cmpuint (before, >, n_texts (ink, drawing, 0.002, layers[i]));
    }
  ink_free (ink);
}

static void
test_every_cut_is_labelled (gconstpointer data)
{
  g_auto (Sample) sample = sample_new ((SampleKind) GPOINTER_TO_INT (data));
  const ElevationInput input = sample_input (&sample);
  g_autoptr (Drawing) drawing = elevation_laying (&input);
  Ink *ink = ink_new (NULL);

  g_assert_cmpuint (n_texts (ink, drawing, 2, LAYER_LABELS), ==, (guint) sample.layout->n_cut);
  ink_free (ink);
}

/* Dimensions */

static const Mark *
dimension_text (const Drawing *drawing, DimensionPart part, guint32 id)
{
  for (guint i = 0; i < drawing->marks->len; i++)
    {
      const Mark *mark = drawing_mark (drawing, i);
      if (mark->kind == MARK_TEXT && mark->ref.kind == REF_DIMENSION
          && mark->ref.part == (gint32) part && mark->ref.id == id)
        return mark;
    }
  return NULL;
}

static void
test_dimensions_say_what_is (void)
{
  g_auto (Sample) sample = sample_new (SAMPLE_STREET);
  ElevationInput input = sample_input (&sample);
  static const struct
  {
    DimensionPart part;
    guint32 id;
    const char *text; /* from the plan of the sample */
  } cases[] = {
    { DIMENSION_WALL_LENGTH, 0, "8400" },    { DIMENSION_WALL_HEIGHT, 0, "2649" },
    { DIMENSION_PIER_BEFORE, 1, "1750" },    { DIMENSION_OPENING_WIDTH, 1, "1200" },
    { DIMENSION_PIER_BEFORE, 2, "700" },     { DIMENSION_OPENING_WIDTH, 2, "1500" },
    { DIMENSION_PIER_BEFORE, 3, "1400" },    { DIMENSION_OPENING_WIDTH, 3, "900" },
    { DIMENSION_PIER_AFTER, 3, "950" },      { DIMENSION_OPENING_SILL, 2, "833" },
    { DIMENSION_OPENING_HEIGHT, 2, "1200" },
  };

  input.selected.n = 2;
  g_autoptr (Drawing) drawing = elevation_laying (&input);
  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      const Mark *mark = dimension_text (drawing, cases[i].part, cases[i].id);
      g_assert_cmpstr (mark ? drawing_text (drawing, mark) : "none", ==, cases[i].text);
    }
}

/* Openings one above the other stand in chains of their own, each of which adds up to the wall. */
static void
test_chains_add_up (void)
{
  g_autoptr (Drawing) drawing = drawn (SAMPLE_LONG, elevation_laying);
  static const struct
  {
    DimensionPart part;
    guint32 id;
    const char *text;
  } cases[] = {
    { DIMENSION_PIER_BEFORE, 2, "1300" },
    { DIMENSION_OPENING_WIDTH, 2, "400" },
    { DIMENSION_PIER_AFTER, 2, "18300" },
    { DIMENSION_PIER_AFTER, 7, "2040" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      const Mark *mark = dimension_text (drawing, cases[i].part, cases[i].id);
      g_assert_cmpstr (mark ? drawing_text (drawing, mark) : "none", ==, cases[i].text);
    }
}

/* The view */

static void
assert_within (const ElevationInput *input, gboolean client)
{
  const View view = elevation_fit (input->wall, client, SCREEN_WIDTH, SCREEN_HEIGHT);
  g_autoptr (Drawing) drawing = client ? elevation_client (input) : elevation_laying (input);
  Ink *ink = ink_new (NULL);

  for (guint i = 0; i < drawing->marks->len; i++)
    {
      InkText place;
      if (!ink_place_text (ink, drawing, drawing_mark (drawing, i), &view, THEME_LIGHT, &place))
        continue;
      g_assert_cmpfloat (place.x, >=, 0);
      g_assert_cmpfloat (place.y, >=, 0);
      g_assert_cmpfloat (place.x + place.width, <=, SCREEN_WIDTH);
      g_assert_cmpfloat (place.y + place.height, <=, SCREEN_HEIGHT);
    }
  ink_free (ink);
}

static void
test_fit (gconstpointer data)
{
  g_auto (Sample) sample = sample_new ((SampleKind) GPOINTER_TO_INT (data));
  ElevationInput input = sample_input (&sample);

  if (input.wall->openings->len > 0)
    input.selected = wall_opening_at (input.wall, 0)->id;
  assert_within (&input, FALSE);
  assert_within (&input, TRUE);
}

/* A person is taller than a low wall, and neither is cut off nor hides the title. */
static void
test_low_wall (void)
{
  g_auto (Sample) sample = sample_new (SAMPLE_BARE);
  Wall *wall = g_ptr_array_index (sample.project->walls, 0);
  const ElevationInput input = sample_input (&sample);

  wall->height = LENGTH_MM (500);
  g_autoptr (Drawing) drawing = elevation_client (&input);
  for (guint i = 0; i < drawing->marks->len; i++)
    {
      const Mark *mark = drawing_mark (drawing, i);
      if (mark->style != STYLE_CLIENT_FIGURE)
        continue;
      for (guint k = 0; k < mark->n_points; k++)
        g_assert_cmpfloat (drawing_points (drawing, mark)[k].z, <, elevation_height (wall, TRUE));
    }
  assert_within (&input, TRUE);
}

/* Other inputs */

static void
test_without_layout (void)
{
  g_auto (Sample) sample = sample_new (SAMPLE_STREET);
  ElevationInput input = sample_input (&sample);

  input.layout = NULL;
  g_autoptr (Drawing) drawing = elevation_laying (&input);
  g_autoptr (Drawing) highlight = elevation_highlight (&input, "blocks.whole", 1, 1, NULL, 0);
  for (guint i = 0; i < drawing->marks->len; i++)
    g_assert_cmpint (drawing_mark (drawing, i)->ref.kind, !=, REF_PIECE);
  g_assert_cmpuint (drawing->marks->len, >, 50);
  g_assert_cmpuint (highlight->marks->len, ==, 0);
}

/* While a new one is being laid, the pieces of the old one stand in the new wall. */
static void
test_older_layout (void)
{
  g_auto (Sample) sample = sample_new (SAMPLE_LONG), other = sample_new (SAMPLE_SMALL);
  ElevationInput input = sample_input (&other);

  input.layout = sample.layout;
  input.course = 15;
  g_autoptr (Drawing) drawing = elevation_laying (&input);
  guint pieces = 0;
  for (guint i = 0; i < drawing->marks->len; i++)
    pieces += drawing_mark (drawing, i)->ref.kind == REF_PIECE;
  g_assert_cmpuint (pieces, ==, sample.layout->pieces->len);
}

/* The wall may have grown lower since the pointer was on a course: its last one is shown then. */
static void
test_course_above_the_top (void)
{
  g_auto (Sample) sample = sample_new (SAMPLE_STREET);
  ElevationInput input = sample_input (&sample);

  input.course = (gint32) sample.layout->courses->len;
  g_autoptr (Drawing) last = elevation_laying (&input);
  input.course += 7;
  g_autoptr (Drawing) above = elevation_laying (&input);
  g_assert_cmpuint (above->texts->len, ==, last->texts->len);
  g_assert_cmpint (memcmp (above->texts->str, last->texts->str, last->texts->len), ==, 0);
  g_assert_cmpuint (above->marks->len, ==, last->marks->len);
}

static void
test_highlight (void)
{
  g_auto (Sample) sample = sample_new (SAMPLE_STREET);
  const ElevationInput input = sample_input (&sample);
  static const char *const keys[] = { "blocks.whole", "blocks.cut-pieces" };
  const gint32 counts[] = { sample.layout->n_whole, sample.layout->n_cut };

  for (guint i = 0; i < G_N_ELEMENTS (keys); i++)
    {
      g_autoptr (Drawing) drawing = elevation_highlight (&input, keys[i], 0, 0, NULL, 0);
      g_assert_cmpuint (drawing->marks->len, ==, (guint) counts[i]);
    }
  g_autoptr (Drawing) one = elevation_highlight (&input, NULL, 3, 2, NULL, 0);
  g_assert_cmpuint (one->marks->len, ==, 1);
  g_autoptr (Drawing) steel = elevation_highlight (&input, "steel.bed-length", 0, 0, NULL, 0);
  g_assert_cmpuint (steel->marks->len, >, 0);
}

static void
test_bare (void)
{
  g_auto (Sample) sample = sample_new (SAMPLE_STREET);
  ElevationInput input = sample_input (&sample);

  input.bare = TRUE;
  g_autoptr (Drawing) drawing = elevation_laying (&input);
  for (guint i = 0; i < drawing->marks->len; i++)
    g_assert_cmpint (drawing_mark (drawing, i)->kind, !=, MARK_TEXT);
  g_assert_cmpuint (drawing->marks->len, >, 10);
}

static void
test_breaches_are_marked (void)
{
  g_auto (Sample) sample = sample_new (SAMPLE_NARROW);
  const ElevationInput input = sample_input (&sample);
  g_autoptr (Drawing) drawing = elevation_laying (&input);
  guint marked = 0;

  for (guint i = 0; i < drawing->marks->len; i++)
    marked += drawing_mark (drawing, i)->style == STYLE_PIECE_BREACH
              || drawing_mark (drawing, i)->style == STYLE_BREACH_LINE;
  g_assert_cmpuint (sample.layout->breaches->len, >, 0);
  g_assert_cmpuint (marked, ==, sample.layout->breaches->len);
}

static guint
n_pin_marks (const ElevationInput *input, double scale)
{
  g_autoptr (Drawing) drawing = elevation_laying (input);
  guint n = 0;

  for (guint i = 0; i < drawing->marks->len; i++)
    n += drawing_mark (drawing, i)->style == STYLE_PIN
         && mark_is_at_scale (drawing_mark (drawing, i), scale);
  return n;
}

/* One mark where a piece only begins, one at each end of a pinned piece, at every scale down to
 * 1:100 on paper. */
static void
test_pins_are_marked (void)
{
  g_auto (Sample) sample = sample_new (SAMPLE_STREET);
  const ElevationInput input = sample_input (&sample);
  static const double scales[] = { 96 / 25.4 / 100, 96 / 25.4 / 50, 0.06, 0.2, 3 };

  for (guint i = 0; i < G_N_ELEMENTS (scales); i++)
    {
      g_array_index (sample.layout->pieces, Piece, 3).pinned = PINNED_NOT;
      g_array_index (sample.layout->pieces, Piece, 7).pinned = PINNED_NOT;
      g_assert_cmpuint (n_pin_marks (&input, scales[i]), ==, 0);
      g_assert_false (elevation_shows_pins (sample.layout, scales[i]));
      g_array_index (sample.layout->pieces, Piece, 3).pinned = PINNED_FACE;
      g_assert_cmpuint (n_pin_marks (&input, scales[i]), ==, 1);
      g_assert_true (elevation_shows_pins (sample.layout, scales[i]));
      g_array_index (sample.layout->pieces, Piece, 7).pinned = PINNED_PIECE;
      g_assert_cmpuint (n_pin_marks (&input, scales[i]), ==, 3);
    }
  g_assert_cmpuint (n_pin_marks (&input, 0.02), ==, 0);
  g_assert_false (elevation_shows_pins (sample.layout, 0.02));
}

/* A perpend is lit in its course, with the two lengths, each once at every scale. */
static void
test_perpend_is_lit (void)
{
  g_auto (Sample) sample = sample_new (SAMPLE_STREET);
  const ElevationInput input = sample_input (&sample);
  const Piece *left = layout_piece (sample.layout, 1), *right = layout_piece (sample.layout, 2);
  PerpendMark mark = { right->course, right->x, left, right, TRUE, TRUE, FALSE };
  static const double scales[] = { 0.03, 0.1, 0.5, 4 };
  g_autoptr (Drawing) lit = elevation_highlight (&input, NULL, 0, 0, &mark, 1);
  g_autoptr (Drawing) unmet = NULL, none = NULL;

  g_assert_cmpint (left->course, ==, right->course);
  for (guint k = 0; k < G_N_ELEMENTS (scales); k++)
    {
      guint n_texts = 0, n_lines = 0, n_guides = 0;

      for (guint i = 0; i < lit->marks->len; i++)
        if (mark_is_at_scale (drawing_mark (lit, i), scales[k]))
          {
            n_texts += drawing_mark (lit, i)->style == STYLE_GUIDE_TEXT;
            n_lines += drawing_mark (lit, i)->style == STYLE_SELECTED;
            n_guides += drawing_mark (lit, i)->style == STYLE_GUIDE;
          }
      g_assert_cmpuint (n_texts, ==, 2);
      g_assert_cmpuint (n_lines, ==, 1);
      g_assert_cmpuint (n_guides, ==, 1);
    }
  /* Where none is laid its course tells where it would be. */
  mark = (PerpendMark){ .course = 2, .x = right->x, .sizes = TRUE, .unmet = TRUE };
  unmet = elevation_highlight (&input, NULL, 0, 0, &mark, 1);
  g_assert_cmpuint (unmet->marks->len, ==, 1);
  g_assert_cmpint (drawing_mark (unmet, 0)->style, ==, STYLE_BREACH_LINE);
  mark.course = 500;
  none = elevation_highlight (&input, NULL, 0, 0, &mark, 1);
  g_assert_cmpuint (none->marks->len, ==, 0);
}

/* Rounding must not push the wall into the rod's room. */
static void
test_fitted_wall_leaves_its_margins (void)
{
  g_auto (Sample) sample = sample_new (SAMPLE_STREET);
  g_autoptr (Wall) wall = wall_copy (sample_wall (&sample));
  const ElevationMargins margins = elevation_margins (wall, FALSE);

  for (int mm = 3000; mm < 12000; mm += 37)
    for (double width = 500; width < 1500; width += 61)
      {
        View view;

        wall->length = LENGTH_MM (mm);
        view = elevation_fit (wall, FALSE, width, 700);
        g_assert_cmpfloat (view.ox, >=, margins.left);
        g_assert_cmpfloat (view.oy, >=, margins.top);
      }
}

static void
add_for_samples (const char *what, GTestDataFunc test)
{
  for (int kind = 0; kind < N_SAMPLES; kind++)
    {
      g_autofree char *path = g_strdup_printf ("/elevation/%s/%s", what, sample_words[kind]);
      g_test_add_data_func (path, GINT_TO_POINTER (kind), test);
    }
}

/* The levelling bed lies on the footing as it was surveyed, to scale */

static const Mark *
mark_of_style (const Drawing *drawing, int style)
{
  for (guint i = 0; i < drawing->marks->len; i++)
    if (drawing_mark (drawing, i)->style == style)
      return drawing_mark (drawing, i);
  return NULL;
}

/* Drawn 25 mm thick; the footing's left end is `left` and its right end `right` below the underside
 * of course 1. */
static void
survey_sample (Sample *sample, int left, int right)
{
  Survey *survey = sample->project->survey = survey_new ();
  const int beds[] = { left, right };

  survey->given = SURVEY_FIRST_COURSE;
  survey->first_course = 0;
  for (int i = 0; i < 2; i++)
    {
      survey_add_reading (survey)->given = READING_BACK | READING_LEVEL;
      Reading *reading = survey_add_reading (survey);

      reading->given = READING_INTER;
      reading->inter = LENGTH_MM (beds[i]);
      reading_add_place (reading, sample_wall (sample)->id, i * sample_wall (sample)->length);
    }
}

static void
test_surveyed_bed (void)
{
  g_auto (Sample) sample = sample_new (SAMPLE_STREET);
  const ElevationInput input = sample_input (&sample);
  const double length = length_to_mm (input.wall->length);

  survey_sample (&sample, 15, 38);
  g_autoptr (Drawing) drawing = elevation_laying (&input);
  const Mark *bed = mark_of_style (drawing, STYLE_BED);
  const MarkPoint *points = drawing_points (drawing, bed);
  const double wanted[][2] = { { 0, 25 }, { length, 25 }, { length, -13 }, { 0, 10 } };

  g_assert_cmpuint (bed->n_points, ==, G_N_ELEMENTS (wanted));
  for (guint i = 0; i < G_N_ELEMENTS (wanted); i++)
    {
      g_assert_cmpfloat_with_epsilon (points[i].x, wanted[i][0], 1e-9);
      g_assert_cmpfloat_with_epsilon (points[i].z, wanted[i][1], 1e-9);
    }
}

/* A level that cannot be, typed by mistake, fills no sheet; a level footing is drawn as ever. */
static void
test_wrong_bed (void)
{
  g_auto (Sample) sample = sample_new (SAMPLE_STREET);
  g_auto (Sample) plain = sample_new (SAMPLE_STREET);
  const ElevationInput input = sample_input (&sample), other = sample_input (&plain);

  survey_sample (&sample, 19000, -19000);
  g_autoptr (Drawing) drawing = elevation_laying (&input);
  const Mark *bed = mark_of_style (drawing, STYLE_BED);
  for (guint i = 0; i < bed->n_points; i++)
    {
      g_assert_cmpfloat (drawing_points (drawing, bed)[i].z, <=, 25);
      g_assert_cmpfloat (drawing_points (drawing, bed)[i].z, >=, -175);
    }
  g_clear_pointer (&sample.project->survey, survey_unref);
  survey_sample (&sample, 25, 25);
  g_autoptr (Drawing) level = elevation_laying (&input);
  g_autoptr (Drawing) as_ever = elevation_laying (&other);
  g_assert_cmpuint (level->marks->len, ==, as_ever->marks->len);
}

/* What is laid over the wall: pallets at its foot, as wide as they are, and a line round the joint
 * that is chosen, which does not lie over it. */
static void
test_pallets_and_joint (void)
{
  g_auto (Sample) sample = sample_new (SAMPLE_BARE);
  g_autoptr (Wall) wall = wall_copy (sample_wall (&sample));
  g_autoptr (GArray) pallets = g_array_new (FALSE, FALSE, sizeof (WorkPallet));
  const WorkPallet places[]
      = { { .x = LENGTH_MM (900), .blocks = 47 }, { .x = LENGTH_MM (4100), .blocks = 48 } };
  ElevationInput input = sample_input (&sample);
  guint boxes = 0, words = 0, rounds = 0;

  wall_add_movement_joint (wall, LENGTH_MM (2000), LENGTH_MM (10));
  g_array_append_vals (pallets, places, G_N_ELEMENTS (places));
  input.wall = wall;
  input.pallets = pallets;
  input.joint = 1;
  g_autoptr (Drawing) overlay = elevation_overlay (&input, NULL);

  for (guint i = 0; i < overlay->marks->len; i++)
    {
      const Mark *mark = drawing_mark (overlay, i);
      const MarkPoint *first = drawing_points (overlay, mark);

      if (mark->style == STYLE_PALLET)
        g_assert_cmpfloat_with_epsilon (first->x, boxes++ == 0 ? 300 : 3500, 1e-6);
      else if (mark->style == STYLE_PALLET_TEXT)
        words++;
      else if (mark->style == STYLE_SELECTED)
        {
          g_assert_cmpfloat_with_epsilon (first->x, 2000, 1e-6);
          g_assert_cmpfloat (first->dx, <, 0);
          rounds++;
        }
    }
  g_assert_cmpuint (boxes, ==, 2);
  g_assert_cmpuint (words, ==, 2);
  g_assert_cmpuint (rounds, ==, 1);
  /* A number that no joint has is none. */
  input.joint = 2;
  input.pallets = NULL;
  g_autoptr (Drawing) bare = elevation_overlay (&input, NULL);
  g_assert_cmpuint (bare->marks->len, ==, 0);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  add_for_samples ("every-piece-is-picked-at-its-middle", test_pick_pieces);
  add_for_samples ("every-piece-has-one-mark", test_one_mark_each);
  add_for_samples ("every-cut-is-labelled", test_every_cut_is_labelled);
  add_for_samples ("marks-are-sorted", test_sorted);
  add_for_samples ("marks-are-whole", test_marks_are_whole);
  add_for_samples ("same-again", test_same_again);
  add_for_samples ("texts-never-overlap", test_texts_apart);
  add_for_samples ("all-text-within-the-fit", test_fit);
  g_test_add_func ("/elevation/course-above-the-top", test_course_above_the_top);
  g_test_add_func ("/elevation/pick/openings", test_pick_openings);
  g_test_add_func ("/elevation/pick/eight-handles", test_pick_handles);
  g_test_add_func ("/elevation/pick/ends-and-top", test_pick_wall_ends);
  g_test_add_func ("/elevation/pick/beds-and-courses-at-the-rod", test_pick_rod);
  g_test_add_func ("/elevation/zooming-in-only-adds", test_zoom_adds);
  g_test_add_func ("/elevation/dimensions-say-what-is", test_dimensions_say_what_is);
  g_test_add_func ("/elevation/chains-add-up", test_chains_add_up);
  g_test_add_func ("/elevation/without-a-layout", test_without_layout);
  g_test_add_func ("/elevation/with-an-older-layout", test_older_layout);
  g_test_add_func ("/elevation/client/low-wall", test_low_wall);
  g_test_add_func ("/elevation/made-up-walls", test_made_up_walls);
  g_test_add_func ("/elevation/ghost-says-where", test_ghost_says_where);
  g_test_add_func ("/elevation/highlight-counts", test_highlight);
  g_test_add_func ("/elevation/bare-has-no-text", test_bare);
  g_test_add_func ("/elevation/breaches-are-marked", test_breaches_are_marked);
  g_test_add_func ("/elevation/pins-are-marked", test_pins_are_marked);
  g_test_add_func ("/elevation/bed/surveyed", test_surveyed_bed);
  g_test_add_func ("/elevation/bed/wrong", test_wrong_bed);
  g_test_add_func ("/elevation/perpend-is-lit", test_perpend_is_lit);
  g_test_add_func ("/elevation/pallets-and-chosen-joint", test_pallets_and_joint);
  g_test_add_func ("/elevation/fitted-wall-leaves-its-margins",
                   test_fitted_wall_leaves_its_margins);
  return g_test_run ();
}
