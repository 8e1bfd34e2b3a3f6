#include "paint/plan.h"

#include <math.h>
#include <string.h>

#include "model/plan-edit.h"
#include "paint/ink.h"
#include "paint/theme.h"
#include "edited.h"

#define MM(mm) LENGTH_MM (mm)

/* The walls of an outline, named by their numbers. */
static Project *
building (const char *text)
{
  g_autofree char *fault = NULL;
  g_autoptr (GArray) sides = outline_parse (text, &fault);
  g_autoptr (GPtrArray) walls = NULL;

  g_assert_null (fault);
  walls = outline_walls (sides, MM (250), MM (2500), 0, 0);
  for (guint i = 0; i < walls->len; i++)
    {
      Wall *wall = g_ptr_array_index (walls, i);

      g_free (wall->name);
      wall->name = g_strdup_printf ("Wall %u", i + 1);
    }
  return edited (project_new (), edit_walls (walls));
}

static Project *
with_opening (Project *project, guint wall, OpeningKind kind, double x, double width)
{
  Opening opening = { .kind = kind,
                      .name = g_strdup ("O"),
                      .x = MM (x),
                      .width = MM (width),
                      .height = MM (1200),
                      .sill = kind == OPENING_DOOR ? 0 : MM (900) };
  Project *next
      = edited (project, edit_add_opening (project_wall_at (project, wall)->id, &opening));

  opening_clear (&opening);
  return next;
}

static Project *
with_partition (Project *project, double x, double length)
{
  g_autoptr (Wall) wall = wall_new ();

  wall->length = MM (length);
  wall->place = (PlanPlace){ TRUE, MM (x), 0, RUNS_NORTH };
  return edited (project, edit_add_wall (wall));
}

/* 8000 x 6000 with a window in front, a door at the back, a partition between them. */
static Project *
house (void)
{
  Project *project = building ("8000 x 6000");

  project = with_opening (project, 0, OPENING_WINDOW, 1000, 1200);
  project = with_opening (project, 2, OPENING_DOOR, 1000, 900);
  return with_partition (project, 4250, 6000);
}

static MarkRef
ref_at (const Drawing *drawing, const View *view, double x, double y)
{
  const MarkPoint point = { x, y, 0, 0 };
  MarkRef ref = { REF_NONE };
  double sx, sy;

  view_to_sheet (view, &point, &sx, &sy);
  if (!drawing_pick (drawing, view, sx, sy, 0, &ref))
    ref.kind = REF_NONE;
  return ref;
}

static guint
count (const Drawing *drawing, Style style)
{
  guint n = 0;

  for (guint i = 0; i < drawing->marks->len; i++)
    n += drawing_mark (drawing, i)->style == (gint16) style;
  return n;
}

/* Of all lines of a style, mm. */
static double
length_of (const Drawing *drawing, Style style)
{
  double sum = 0;

  for (guint i = 0; i < drawing->marks->len; i++)
    {
      const Mark *mark = drawing_mark (drawing, i);
      const MarkPoint *p = drawing_points (drawing, mark);

      if (mark->style == (gint16) style && mark->kind == MARK_LINE)
        sum += fabs (p[1].x - p[0].x) + fabs (p[1].z - p[0].z);
    }
  return sum;
}

static gboolean
says (const Drawing *drawing, const char *text)
{
  for (guint i = 0; i < drawing->marks->len; i++)
    if (drawing_mark (drawing, i)->kind == MARK_TEXT
        && g_str_equal (drawing_text (drawing, drawing_mark (drawing, i)), text))
      return TRUE;
  return FALSE;
}

static void
test_pick (void)
{
  g_autoptr (Project) project = house ();
  const PlanInput input = { .project = project };
  g_autoptr (Drawing) drawing = plan_drawing (&input);
  const View view = plan_fit (project, NULL, 934, 626);
  const guint32 front = project_wall_at (project, 0)->id.n;
  const guint32 partition = project_wall_at (project, 4)->id.n;
  MarkRef ref = ref_at (drawing, &view, 6000, 125);

  g_assert_cmpint (ref.kind, ==, REF_WALL);
  g_assert_cmpuint (ref.id, ==, front);
  ref = ref_at (drawing, &view, 1600, 125);
  g_assert_cmpint (ref.kind, ==, REF_OPENING);
  g_assert_cmpuint (ref.id, ==, wall_opening_at (project_wall_at (project, 0), 0)->id.n);
  /* The back runs west: its door is counted from the right of the plan. */
  ref = ref_at (drawing, &view, 8000 - 1450, 5875);
  g_assert_cmpint (ref.kind, ==, REF_OPENING);
  g_assert_cmpuint (ref.id, ==, wall_opening_at (project_wall_at (project, 2), 0)->id.n);
  ref = ref_at (drawing, &view, 4125, 125);
  g_assert_cmpint (ref.kind, ==, REF_MEETING);
  g_assert_cmpint (ref.a, ==, (int) partition);
  g_assert_cmpint (ref.b, ==, (int) front);
  ref = ref_at (drawing, &view, 2000, 3000);
  g_assert_cmpint (ref.kind, ==, REF_NONE);
}

/* Outer faces go once round, but for the openings; inner ones do too, but for partitions. */
static void
test_faces (void)
{
  g_autoptr (Project) plain = building ("8000 x 6000");
  g_autoptr (Project) angle = building ("9000 4000 3000 R 3000 6000 7000");
  g_autoptr (Project) project = with_opening (building ("8000 x 6000"), 0, OPENING_VOID, 1000, 900);
  const PlanInput inputs[] = { { .project = plain }, { .project = angle }, { .project = project } };
  const double round[] = { 28000, 32000, 28000 - 900 };
  /* Each inner side is two thicknesses shorter; at an inner corner two longer. Jambs are faces. */
  const double inside[] = { 28000 - 8 * 250, 32000 - 8 * 250, 28000 - 8 * 250 - 900 + 2 * 250 };

  for (guint i = 0; i < G_N_ELEMENTS (inputs); i++)
    {
      g_autoptr (Drawing) drawing = plan_drawing (&inputs[i]);
      /* Ends of walls are drawn with the others': a corner's end lies on an outer face. */
      const double ends = 250.0 * 2 * inputs[i].project->walls->len;

      g_assert_cmpfloat_with_epsilon (length_of (drawing, STYLE_PLAN_OUTER), round[i], 0.01);
      g_assert_cmpfloat_with_epsilon (length_of (drawing, STYLE_PLAN_FACE), inside[i] + ends, 0.01);
    }
}

static MeetMade
made_at (const Project *project, guint i)
{
  g_autoptr (GArray) meetings = plan_meetings (project);

  return g_array_index (meetings, Meeting, i).made;
}

/* A corner of two walls shows one joint of the odd courses and one of the even ones; butted, two
 * lines of the same joint. */
static void
test_joints (void)
{
  g_autoptr (Project) project = building ("8000 x 6000");
  const PlanInput input = { .project = project };
  g_autoptr (Drawing) drawing = plan_drawing (&input);

  g_assert_cmpuint (count (drawing, STYLE_PLAN_ODD), ==, 4);
  g_assert_cmpuint (count (drawing, STYLE_PLAN_EVEN), ==, 4);
  g_assert_cmpuint (count (drawing, STYLE_PIECE_BREACH), ==, 0);

  g_autoptr (Wall) butted = wall_copy (project_wall_at (project, 0));
  butted->ends[SIDE_RIGHT].through = THROUGH_ALL;
  g_autoptr (Project) next = edited (project_ref (project), edit_set_wall (butted));
  const PlanInput other = { .project = next };
  g_autoptr (Drawing) after = plan_drawing (&other);
  g_assert_cmpint (made_at (next, 1), ==, MADE_SECOND_THROUGH);
  g_assert_cmpuint (count (after, STYLE_PLAN_ODD), ==, 3 + 2);
  g_assert_cmpuint (count (after, STYLE_PLAN_EVEN), ==, 3);
}

/* The gap of a tee has a joint on either side. */
static void
test_tee (void)
{
  g_autoptr (Project) project = with_partition (building ("8000 x 6000"), 4250, 6000);
  const PlanInput input = { .project = project };
  g_autoptr (Drawing) drawing = plan_drawing (&input);

  g_assert_cmpuint (count (drawing, STYLE_PLAN_EVEN), ==, 4 + 2 * 2);
  g_assert_cmpuint (count (drawing, STYLE_PLAN_ODD), ==, 4 + 2);
}

static void
test_wrong (void)
{
  g_autoptr (Project) project = with_partition (building ("8000 x 6000"), 4250, 5900);
  const PlanInput input = { .project = project };
  g_autoptr (Drawing) drawing = plan_drawing (&input);
  const View view = plan_fit (project, NULL, 934, 626);

  g_assert_cmpuint (count (drawing, STYLE_PIECE_BREACH), ==, 1);
  g_assert_cmpuint (count (drawing, STYLE_PLAN_WARNING), ==, 1);
  g_assert_cmpint (ref_at (drawing, &view, 4125, 5825).kind, ==, REF_MEETING);
}

/* At an inner corner the side ends at the other wall's face: as it was typed. */
static void
test_dimensions (void)
{
  g_autoptr (Project) project = building ("9000 4000 3000 R 3100 6000 7100");
  const PlanInput input = { .project = project, .wall = project_wall_at (project, 0)->id };
  g_autoptr (Drawing) drawing = plan_drawing (&input);
  static const char *const texts[] = { "9000", "4000", "3000", "3100", "6000", "7100" };

  for (guint i = 0; i < G_N_ELEMENTS (texts); i++)
    g_assert_true (says (drawing, texts[i]));
  g_assert_false (says (drawing, "3250"));

  g_autoptr (Project) with = with_opening (project_ref (project), 0, OPENING_WINDOW, 1010, 1200);
  const PlanInput chosen = { .project = with, .wall = project_wall_at (with, 0)->id };
  g_autoptr (Drawing) chain = plan_drawing (&chosen);
  g_assert_true (says (chain, "1010"));
  g_assert_true (says (chain, "1200"));
  g_assert_true (says (chain, "6790"));
}

/* Every number is what typing into it would change, and says whose. */
static void
test_dimension_refs (void)
{
  g_autoptr (Project) project = house ();
  const Wall *front = project_wall_at (project, 0);
  const PlanInput input = { .project = project, .wall = front->id };
  g_autoptr (Drawing) drawing = plan_drawing (&input);
  guint n = 0;

  for (guint i = 0; i < drawing->marks->len; i++)
    {
      const Mark *mark = drawing_mark (drawing, i);
      char number[LENGTH_TEXT_SIZE];

      if (mark->kind != MARK_TEXT || mark->ref.kind != REF_DIMENSION)
        continue;
      g_assert_cmpstr (drawing_text (drawing, mark), ==, length_text (mark->ref.b, number));
      g_assert_nonnull (project_wall (project, (WallId){ (guint32) mark->ref.a }));
      g_assert_true ((mark->ref.part == DIMENSION_WALL_LENGTH) == (mark->ref.id == 0));
      n++;
    }
  /* Four sides; before, at and after the window in front. */
  g_assert_cmpuint (n, ==, 4 + 3);
}

/* A name stands beside its own wall, whatever other walls lie in line with it. */
static void
test_names (void)
{
  g_autoptr (Project) project = building ("9000 4000 3000 R 3000 6000 7000");
  const PlanInput input = { .project = project };
  g_autoptr (Drawing) drawing = plan_drawing (&input);
  guint n = 0;

  for (guint i = 0; i < drawing->marks->len; i++)
    {
      const Mark *mark = drawing_mark (drawing, i);
      const MarkPoint *at = drawing_points (drawing, mark);

      if (mark->style != STYLE_PLAN_NAME)
        continue;
      const Wall *wall = project_wall (project, (WallId){ mark->ref.id });
      const PlanBox box = plan_box (wall, MM (250));
      g_assert_cmpfloat (at->x * LENGTH_PER_MM, >=, (double) box.x0 - 1);
      g_assert_cmpfloat (at->x * LENGTH_PER_MM, <=, (double) box.x1 + 1);
      g_assert_cmpfloat (at->z * LENGTH_PER_MM, >=, (double) box.y0 - 1);
      g_assert_cmpfloat (at->z * LENGTH_PER_MM, <=, (double) box.y1 + 1);
      n++;
    }
  g_assert_cmpuint (n, ==, 6);
}

/* Whatever the shape, all of it is in sight. */
static void
test_fit (void)
{
  static const char *const outlines[]
      = { "8000 x 6000", "1000 x 90000", "9000 4000 3000 R 3000 6000 7000" };

  for (guint i = 0; i < G_N_ELEMENTS (outlines); i++)
    {
      g_autoptr (Project) project = building (outlines[i]);
      const PlanInput input = { .project = project, .wall = project_wall_at (project, 0)->id };
      g_autoptr (Drawing) drawing = plan_drawing (&input);
      const View view = plan_fit (project, NULL, 934, 626);

      for (guint p = 0; p < drawing->points->len; p++)
        {
          double sx, sy;

          view_to_sheet (&view, &g_array_index (drawing->points, MarkPoint, p), &sx, &sy);
          g_assert_cmpfloat (sx, >=, 0);
          g_assert_cmpfloat (sx, <=, 934);
          g_assert_cmpfloat (sy, >=, 0);
          g_assert_cmpfloat (sy, <=, 626);
        }
    }
}

static void
test_overlay (void)
{
  g_autoptr (Project) project = house ();
  const Wall *front = project_wall_at (project, 0);
  PlanInput input = { .project = project, .wall = front->id };
  g_autoptr (Drawing) wall = plan_overlay (&input);

  g_assert_cmpuint (count (wall, STYLE_SELECTED), ==, 1);
  g_assert_cmpuint (count (wall, STYLE_HANDLE), ==, 0);
  input.opening = wall_opening_at (front, 0)->id;
  g_autoptr (Drawing) opening = plan_overlay (&input);
  g_assert_cmpuint (count (opening, STYLE_SELECTED), ==, 1);
  g_assert_cmpuint (count (opening, STYLE_HANDLE), ==, 2);
  input.opening = (OpeningId){ 0 };
  input.meeting[0] = project_wall_at (project, 4)->id;
  input.meeting[1] = front->id;
  g_autoptr (Drawing) meeting = plan_overlay (&input);
  g_assert_cmpuint (count (meeting, STYLE_SELECTED), ==, 1);
}

/* A typed outline shows where it does not close, and nothing when it does. */
static void
test_sketch (void)
{
  static const struct
  {
    const char *text;
    gboolean closed;
  } rows[] = {
    { "8000 x 6000", TRUE },
    { "8000 6000 8000 6000", TRUE },
    { "8000 6000 7000 6000", FALSE },
    { "8000", FALSE },
    { "", TRUE },
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *fault = NULL;
      g_autoptr (GArray) sides = outline_parse (rows[i].text, &fault);
      g_autoptr (Drawing) drawing = plan_sketch (sides);
      const View view = plan_sketch_fit (sides, 300, 200);

      g_assert_cmpuint (count (drawing, STYLE_BREACH_LINE), ==, rows[i].closed ? 0 : 1);
      g_assert_cmpuint (count (drawing, STYLE_PLAN_OUTER), ==, sides->len);
      g_assert_cmpfloat (view.scale, >, 0);
    }
}

/* Every mark is inked in every theme without a fault of cairo's. */
static void
test_ink (void)
{
  g_autoptr (Project) project = with_opening (house (), 0, OPENING_VOID, 5000, 900);
  const PlanInput input = { .project = project, .wall = project_wall_at (project, 0)->id };
  g_autoptr (Drawing) drawing = plan_drawing (&input);
  const View view = plan_fit (project, NULL, 934, 626);
  Ink *ink = ink_new (NULL);

  for (int theme = 0; theme < N_THEMES; theme++)
    {
      cairo_surface_t *sheet = cairo_image_surface_create (CAIRO_FORMAT_RGB24, 934, 626);
      cairo_t *cr = cairo_create (sheet);

      ink_draw (ink, cr, drawing, &view, (Theme) theme, -1, -1, TRUE);
      g_assert_cmpint (cairo_status (cr), ==, CAIRO_STATUS_SUCCESS);
      cairo_destroy (cr);
      cairo_surface_destroy (sheet);
    }
  ink_free (ink);
}

/* Of a butted partition of 250 mm: two strips through the face of the wall that runs through, 150
 * mm in either wall; angles only in the one that stops; none where it is bonded. */
static void
test_ties (void)
{
  g_autoptr (Project) project = house ();
  const WallId front = project_wall_at (project, 0)->id, inner = project_wall_at (project, 4)->id;
  Ties ties = { TIES_ALL, TIE_ANGLE, 1, 2 };
  Meeting meeting;

  g_autoptr (Drawing) bonded = plan_drawing (&(PlanInput){ .project = project });
  g_assert_cmpuint (count (bonded, STYLE_TIE), ==, 0);
  g_assert_true (plan_meeting_between (project, inner, front, &meeting));
  project = edited (project, plan_make_edit (project, &meeting, MADE_SECOND_THROUGH));
  g_autoptr (Drawing) strips = plan_drawing (&(PlanInput){ .project = project });
  g_assert_cmpuint (count (strips, STYLE_TIE), ==, 2);
  g_assert_cmpfloat (length_of (strips, STYLE_TIE), ==, 2 * 300.0);
  g_assert_true (plan_meeting_between (project, inner, front, &meeting));
  project = edited (project, plan_ties_edit (project, &meeting, &ties));
  g_autoptr (Drawing) angles = plan_drawing (&(PlanInput){ .project = project });
  g_assert_cmpuint (count (angles, STYLE_TIE), ==, 4);
}

/* Three sides with their lengths, a line that would close them, no more once the next one is
 * aimed. */
static void
test_trace (void)
{
  g_autoptr (Project) project = project_new ();
  g_autoptr (GArray) corners = trace_new ();
  const TraceCorner first = { 0, 0 };
  PlanTrace trace = { corners, FALSE, { 0, 0 }, "" };

  g_array_append_val (corners, first);
  trace_go (corners, RUNS_EAST, MM (8000));
  trace_go (corners, RUNS_NORTH, MM (6000));
  trace_go (corners, RUNS_WEST, MM (8000));
  g_autoptr (Drawing) still = plan_overlay (&(PlanInput){ .project = project, .trace = &trace });
  g_assert_cmpfloat (length_of (still, STYLE_SELECTED), ==, 22000);
  g_assert_cmpfloat (length_of (still, STYLE_GUIDE), ==, 6000);
  g_assert_true (says (still, "8000") && says (still, "6000"));
  trace.has_tip = TRUE;
  trace.tip = (TraceCorner){ 0, MM (2500) };
  g_autoptr (Drawing) aimed = plan_overlay (&(PlanInput){ .project = project, .trace = &trace });
  g_assert_cmpfloat (length_of (aimed, STYLE_GHOST), ==, 3500);
  g_assert_cmpfloat (length_of (aimed, STYLE_GUIDE), ==, 0);
  g_assert_true (says (aimed, "3500"));
  trace.typed = "35";
  g_autoptr (Drawing) typed = plan_overlay (&(PlanInput){ .project = project, .trace = &trace });
  g_assert_true (says (typed, "35"));
  g_assert_false (says (typed, "3500"));
}

/* Where a wall stands out of a side's middle, the side's length stands beside it. */
static void
test_number_beside (void)
{
  g_autoptr (Project) project = building ("8000 x 6000");
  g_autoptr (Wall) wall = wall_new ();
  guint found = 0;

  wall->length = MM (3000);
  wall->place = (PlanPlace){ TRUE, MM (7750), MM (2900), RUNS_EAST };
  project = edited (project, edit_add_wall (wall));
  g_autoptr (Drawing) drawing = plan_drawing (&(PlanInput){ .project = project });
  for (guint i = 0; i < drawing->marks->len; i++)
    {
      const Mark *mark = drawing_mark (drawing, i);
      const MarkPoint *at = drawing_points (drawing, mark);

      if (mark->kind != MARK_TEXT || !g_str_equal (drawing_text (drawing, mark), "6000"))
        continue;
      found++;
      g_assert_cmpfloat (at->z, ==, at->x > 4000 ? 1500 : 3000);
    }
  g_assert_cmpuint (found, ==, 2);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/plan/pick", test_pick);
  g_test_add_func ("/plan/faces-go-round", test_faces);
  g_test_add_func ("/plan/joints-say-how-it-is-made", test_joints);
  g_test_add_func ("/plan/tee", test_tee);
  g_test_add_func ("/plan/wrong", test_wrong);
  g_test_add_func ("/plan/dimensions", test_dimensions);
  g_test_add_func ("/plan/dimension-refs", test_dimension_refs);
  g_test_add_func ("/plan/names", test_names);
  g_test_add_func ("/plan/fit", test_fit);
  g_test_add_func ("/plan/overlay", test_overlay);
  g_test_add_func ("/plan/sketch", test_sketch);
  g_test_add_func ("/plan/ink", test_ink);
  g_test_add_func ("/plan/ties", test_ties);
  g_test_add_func ("/plan/trace", test_trace);
  g_test_add_func ("/plan/number-beside-a-wall", test_number_beside);
  return g_test_run ();
}
