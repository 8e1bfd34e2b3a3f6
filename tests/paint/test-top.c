/* test-top.c - tops that are not level, steps of the footing and a cap, as they are drawn */
#include <math.h>
#include <string.h>

#include "bond/lay.h"
#include "model/edit.h"
#include "paint/elevation.h"
#include "paint/sample.h"
#include "paint/theme.h"

#define WIDTH 1000
#define HEIGHT 700

/* A wall of the bare sample, 6 m long, with another top and another foot. */
typedef struct
{
  Project *project;
  Layout *layout;
} Made;

typedef struct
{
  int n_tops, tops[6][2]; /* mm: place, height */
  int n_feet, feet[3][2]; /* mm: place, up */
  int cap;                /* mm */
} Plan;

/* A gable of 30 degrees and its mirror: 1732 over 3000. */
static const Plan gable = { 3, { { 0, 2000 }, { 3000, 3732 }, { 6000, 2000 } }, 0, { { 0 } }, 0 };
static const Plan stepped_foot
    = { 2, { { 0, 2000 }, { 6000, 2600 } }, 2, { { 2000, 200 }, { 4000, 450 } }, 60 };
static const Plan stepped_top
    = { 4, { { 2000, 2600 }, { 2000, 2200 }, { 4000, 2200 }, { 4000, 1800 } }, 0, { { 0 } }, 0 };

static Made
make (const Plan *plan)
{
  g_auto (Sample) sample = sample_new (SAMPLE_BARE);
  g_autoptr (Wall) wall = wall_copy (sample_wall (&sample));
  g_autoptr (Edit) edit = NULL;
  GArray *tops = top_list_new ();
  int high = 0;
  Made made = { 0 };

  for (int i = 0; i < plan->n_tops; i++)
    high = MAX (high, plan->tops[i][1]);
  for (int i = 0; i < plan->n_tops; i++)
    top_list_add (tops, LENGTH_MM (plan->tops[i][0]), LENGTH_MM (high - plan->tops[i][1]));
  wall_take_top (wall, tops, LENGTH_MM (high));
  for (int i = 0; i < plan->n_feet; i++)
    foot_list_add (wall->feet, LENGTH_MM (plan->feet[i][0]), LENGTH_MM (plan->feet[i][1]));
  wall->cap.height = LENGTH_MM (plan->cap);
  edit = edit_set_wall (wall);
  made.project = project_edit (sample.project, edit, NULL);
  g_assert_nonnull (made.project);
  made.layout
      = lay_wall (project_wall_at (made.project, 0), project_block_at (made.project, 0), NULL);
  return made;
}

static void
made_clear (Made *made)
{
  layout_unref (made->layout);
  project_unref (made->project);
}
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Made, made_clear)

static ElevationInput
input_of (const Made *made)
{
  return (ElevationInput){ .project = made->project,
                           .wall = project_wall_at (made->project, 0),
                           .layout = made->layout };
}

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
assert_at (const Drawing *drawing, const View *view, double x, double z, RefKind kind, gint32 part,
           gint32 a)
{
  const MarkRef ref = ref_at (drawing, view, x, z, 4);

  g_assert_cmpint (ref.kind, ==, kind);
  g_assert_cmpint (ref.part, ==, part);
  g_assert_cmpint (ref.a, ==, a);
}

static const Mark *
mark_of (const Drawing *drawing, Style style)
{
  for (guint i = 0; i < drawing->marks->len; i++)
    if (drawing_mark (drawing, i)->style == (gint16) style)
      return drawing_mark (drawing, i);
  return NULL;
}

/* By the shoelace formula, mm2. */
static double
area_of (const Drawing *drawing, const Mark *mark)
{
  const MarkPoint *points = drawing_points (drawing, mark);
  double twice = 0;

  for (guint i = 0; i < mark->n_points; i++)
    {
      const MarkPoint a = points[i], b = points[(i + 1) % mark->n_points];

      twice += a.x * b.z - b.x * a.z;
    }
  return fabs (twice) / 2;
}

static char *
text_of (const Drawing *drawing, DimensionPart part, gint32 a)
{
  for (guint i = 0; i < drawing->marks->len; i++)
    {
      const Mark *mark = drawing_mark (drawing, i);

      if (mark->kind == MARK_TEXT && mark->ref.kind == REF_DIMENSION
          && mark->ref.part == (gint32) part && mark->ref.a == a)
        return g_strdup (drawing_text (drawing, mark));
    }
  return NULL;
}

static void
assert_text (const Drawing *drawing, DimensionPart part, gint32 a, const char *expected)
{
  g_autofree char *text = text_of (drawing, part, a);

  g_assert_cmpstr (text, ==, expected);
}

/* The body's area by arithmetic: trapezia less the steps. */
static void
test_body (void)
{
  static const struct
  {
    const Plan *plan;
    double area;
  } cases[] = {
    { &gable, 6000.0 * 2000 + 6000.0 * 1732 / 2 },
    { &stepped_foot, 6000.0 * 2300 - 2000.0 * 200 - 2000.0 * 450 },
    { &stepped_top, 2000.0 * (2600 + 2200 + 1800) },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_auto (Made) made = make (cases[i].plan);
      const ElevationInput input = input_of (&made);
      g_autoptr (Drawing) laying = elevation_laying (&input);
      g_autoptr (Drawing) client = elevation_client (&input);

      g_assert_cmpfloat_with_epsilon (area_of (laying, mark_of (laying, STYLE_WALL_BODY)),
                                      cases[i].area, 1);
      g_assert_cmpfloat_with_epsilon (area_of (client, mark_of (client, STYLE_CLIENT_WALL)),
                                      cases[i].area, 1);
    }
}

/* So thick plumb everywhere: its length times that. */
static void
test_cap (void)
{
  g_auto (Made) made = make (&stepped_foot);
  const ElevationInput input = input_of (&made);
  g_autoptr (Drawing) drawing = elevation_laying (&input);
  g_auto (Made) bare = make (&gable);
  const ElevationInput none = input_of (&bare);
  g_autoptr (Drawing) without = elevation_laying (&none);

  g_assert_cmpfloat_with_epsilon (area_of (drawing, mark_of (drawing, STYLE_CAP)), 6000.0 * 60, 1);
  g_assert_null (mark_of (without, STYLE_CAP));
}

static void
test_pick_slopes (void)
{
  g_auto (Made) made = make (&gable);
  const ElevationInput input = input_of (&made);
  g_autoptr (Drawing) drawing = elevation_laying (&input);
  g_autoptr (Drawing) overlay = elevation_overlay (&input, NULL);
  const View view = elevation_fit (input.wall, FALSE, WIDTH, HEIGHT);

  assert_at (drawing, &view, 1000, 2000 + 1732.0 / 3, REF_TOP, TOP_LINE, 1);
  assert_at (drawing, &view, 5000, 2000 + 1732.0 / 3, REF_TOP, TOP_LINE, 2);
  assert_at (drawing, &view, 0, 1000, REF_WALL, PART_LEFT, 0);
  assert_at (drawing, &view, 6000, 1000, REF_WALL, PART_RIGHT, 0);
  for (gint32 i = 0; i < gable.n_tops; i++)
    assert_at (overlay, &view, gable.tops[i][0], gable.tops[i][1], REF_TOP, TOP_POINT, i);
  /* Nothing is above the slope, where a wall as high as its ridge would be; but for the mark of its
   * height over the end. */
  g_assert_cmpint (ref_at (overlay, &view, 500, 3500, 4).kind, ==, REF_NONE);
  g_assert_cmpint (ref_at (drawing, &view, 0, 3000, 4).kind, !=, REF_WALL);
}

static void
test_pick_steps (void)
{
  g_auto (Made) top = make (&stepped_top), foot = make (&stepped_foot);
  const ElevationInput of_top = input_of (&top), of_foot = input_of (&foot);
  g_autoptr (Drawing) tops = elevation_laying (&of_top);
  g_autoptr (Drawing) feet = elevation_laying (&of_foot);
  g_autoptr (Drawing) held = elevation_overlay (&of_foot, NULL);
  const View view = elevation_fit (of_top.wall, FALSE, WIDTH, HEIGHT);
  const View other = elevation_fit (of_foot.wall, FALSE, WIDTH, HEIGHT);

  assert_at (tops, &view, 800, 2600, REF_TOP, TOP_LINE, 0);
  assert_at (tops, &view, 2000, 2400, REF_TOP, TOP_STEP, 0);
  assert_at (tops, &view, 2700, 2200, REF_TOP, TOP_LINE, 2);
  assert_at (tops, &view, 4000, 2000, REF_TOP, TOP_STEP, 2);
  assert_at (tops, &view, 5300, 1800, REF_TOP, TOP_LINE, 4);
  assert_at (feet, &other, 2000, 100, REF_FOOT, 0, 0);
  assert_at (feet, &other, 4000, 300, REF_FOOT, 0, 1);
  assert_at (held, &other, 2000, 200, REF_FOOT, 0, 0);
  assert_at (held, &other, 4000, 450, REF_FOOT, 0, 1);
}

/* The selected one has a ring. */
static void
test_held (void)
{
  g_auto (Made) made = make (&gable);
  ElevationInput input = input_of (&made);
  g_autoptr (Drawing) none = elevation_overlay (&input, NULL);
  g_autoptr (Drawing) one = NULL;

  g_assert_null (mark_of (none, STYLE_HELD));
  input.held = (MarkRef){ .kind = REF_TOP, .part = TOP_POINT, .a = 1 };
  one = elevation_overlay (&input, NULL);
  g_assert_null (mark_of (one, STYLE_GUIDE));
  g_assert_cmpfloat_with_epsilon (drawing_points (one, mark_of (one, STYLE_HELD))->x, 3000, 1e-9);
}

static void
test_dimensions (void)
{
  g_auto (Made) a = make (&gable), b = make (&stepped_foot), c = make (&stepped_top);
  const ElevationInput of_a = input_of (&a), of_b = input_of (&b), of_c = input_of (&c);
  g_autoptr (Drawing) gabled = elevation_laying (&of_a);
  g_autoptr (Drawing) footed = elevation_laying (&of_b);
  g_autoptr (Drawing) stepped = elevation_laying (&of_c);

  assert_text (gabled, DIMENSION_TOP_HEIGHT, 0, "2000");
  assert_text (gabled, DIMENSION_TOP_HEIGHT, 1, "3732");
  assert_text (gabled, DIMENSION_TOP_HEIGHT, 2, "2000");
  assert_text (gabled, DIMENSION_TOP_PITCH, 1, "30.0°");
  assert_text (gabled, DIMENSION_TOP_PITCH, 2, "30.0°");
  assert_text (gabled, DIMENSION_TOP_PLACE, 1, "3000");
  assert_text (gabled, DIMENSION_WALL_HEIGHT, 0, "3732");
  /* 600 in 6000: 5.71 degrees. */
  assert_text (footed, DIMENSION_TOP_PITCH, 1, "5.7°");
  assert_text (footed, DIMENSION_FOOT_UP, 0, "+200");
  assert_text (footed, DIMENSION_FOOT_UP, 1, "+450");
  assert_text (footed, DIMENSION_FOOT_PLACE, 1, "at 4000");
  /* A level part is told once. */
  assert_text (stepped, DIMENSION_TOP_LEVEL, 0, "2600");
  assert_text (stepped, DIMENSION_TOP_LEVEL, 2, "2200");
  assert_text (stepped, DIMENSION_TOP_LEVEL, 4, "1800");
  assert_text (stepped, DIMENSION_TOP_HEIGHT, 0, NULL);
  assert_text (stepped, DIMENSION_TOP_PITCH, 2, NULL);
}

/* In a small picture the beds end at the slope. */
static void
test_bare_lines (void)
{
  g_auto (Made) made = make (&gable);
  ElevationInput input = input_of (&made);
  g_autoptr (Drawing) drawing = NULL;
  guint n = 0;

  input.bare = TRUE;
  drawing = elevation_laying (&input);
  for (guint i = 0; i < drawing->marks->len; i++)
    {
      const Mark *mark = drawing_mark (drawing, i);
      const MarkPoint *ends = drawing_points (drawing, mark);
      double most;

      if (mark->style != STYLE_BARE_COURSE || mark->kind != MARK_LINE)
        continue;
      /* Half the slope's run is what is left above the eaves. */
      most = ends[0].z <= 2000 ? 0 : (ends[0].z - 2000) / 1732 * 3000;
      g_assert_cmpfloat_with_epsilon (ends[0].x, most, 0.02);
      g_assert_cmpfloat_with_epsilon (ends[1].x, 6000 - most, 0.02);
      n++;
    }
  g_assert_cmpuint (n, >, 15);
}

/* All of it is on the sheet, with every number. */
static void
test_fits (void)
{
  const Plan *plans[] = { &gable, &stepped_foot, &stepped_top };

  for (guint i = 0; i < 2 * G_N_ELEMENTS (plans); i++)
    {
      g_auto (Made) made = make (plans[i / 2]);
      const ElevationInput input = input_of (&made);
      const gboolean client = i % 2 == 1;
      const View view = elevation_fit (input.wall, client, WIDTH, HEIGHT);
      g_autoptr (Drawing) drawing = client ? elevation_client (&input) : elevation_laying (&input);

      for (guint k = 0; k < drawing->marks->len; k++)
        {
          const Mark *mark = drawing_mark (drawing, k);
          double x, y;

          if (mark->kind != MARK_TEXT || !mark_is_at_scale (mark, view.scale))
            continue;
          view_to_sheet (&view, drawing_points (drawing, mark), &x, &y);
          g_assert_cmpfloat (x, >=, 0);
          g_assert_cmpfloat (x, <=, WIDTH);
          g_assert_cmpfloat (y - theme_row (THEME_LIGHT, (Style) mark->style)->text_size, >=, 0);
          g_assert_cmpfloat (y, <=, HEIGHT);
        }
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/top/body", test_body);
  g_test_add_func ("/top/cap", test_cap);
  g_test_add_func ("/top/pick/slopes-and-points", test_pick_slopes);
  g_test_add_func ("/top/pick/steps", test_pick_steps);
  g_test_add_func ("/top/held", test_held);
  g_test_add_func ("/top/dimensions", test_dimensions);
  g_test_add_func ("/top/bare-lines", test_bare_lines);
  g_test_add_func ("/top/fits", test_fits);
  return g_test_run ();
}
