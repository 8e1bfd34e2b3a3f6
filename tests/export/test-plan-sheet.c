/* test-plan-sheet.c - the plan to set out from, on paper and as a picture */
#include <string.h>

#include "export/corners.h"
#include "export/export.h"
#include "model/outline.h"
#include "model/plan-edit.h"
#include "../lib/edited.h"

#define MM(mm) LENGTH_MM (mm)

static Project *
building (const char *text)
{
  g_autofree char *fault = NULL;
  g_autoptr (GArray) sides = outline_parse (text, &fault);
  g_autoptr (GPtrArray) walls = outline_walls (sides, MM (250), MM (2500), MM (1000), MM (-2000));

  return edited (project_new (), edit_walls (walls));
}

static Project *
with_partition (Project *project, double x)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (Wall) wall
      = plan_partition (project, RUNS_NORTH, MM (x), MM (0), project_block_at (project, 0), &error);

  g_assert_no_error (error);
  return edited (project, edit_add_wall (wall));
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

static guint
count (const Drawing *drawing, Style style)
{
  guint n = 0;

  for (guint i = 0; i < drawing->marks->len; i++)
    n += drawing_mark (drawing, i)->style == (gint16) style;
  return n;
}

/* Sides, what is between walls that meet, letters, and the two diagonals of a rectangle; of six
 * corners three from either end of the first side, and no letter but of corners. */
static void
test_set_out (void)
{
  g_autoptr (Project) house = with_partition (building ("8000 x 6000"), 4000);
  g_autoptr (Project) angle = building ("9000 4000 3000 R 3000 6000 7000");
  g_autoptr (Drawing) plan = plan_drawing (&(PlanInput){ .project = house, .set_out = TRUE });
  g_autoptr (Drawing) other = plan_drawing (&(PlanInput){ .project = angle, .set_out = TRUE });

  /* The partition's left face is 3000 from the front's left end; so it is at the back, from there.
   */
  g_assert_true (says (plan, "8000") && says (plan, "6000") && says (plan, "10000"));
  g_assert_true (says (plan, "3000") && says (plan, "250") && says (plan, "4750"));
  g_assert_true (says (plan, "A") && says (plan, "D") && !says (plan, "E"));
  g_assert_cmpuint (count (plan, STYLE_PLAN_DIAGONAL), ==, 2);
  g_assert_cmpuint (count (other, STYLE_PLAN_DIAGONAL), ==, 6);
  g_assert_true (says (other, "F") && says (other, "9220") && says (other, "7616"));
}

static void
test_page (void)
{
  g_autoptr (Project) project = building ("9000 4000 3000 R 3000 6000 7000");
  g_autoptr (GError) error = NULL;
  double x, y;
  Page page;

  g_assert_true (page_set_plan (&page, project, 0, "A3", &error));
  g_assert_no_error (error);
  g_assert_cmpint (page.scale, ==, 50);
  g_assert_cmpfloat_with_epsilon (page.view.scale * page.scale, STEPS_PER_MM, 1e-9);
  /* Both corners with their dimensions are within the field. */
  view_to_sheet (&page.view, &(MarkPoint){ 1000, -2000, 0, 0 }, &x, &y);
  g_assert_cmpfloat (x, >, page.field.x0 + PLAN_SET_OUT_SIDE - 1);
  g_assert_cmpfloat (y, <, page.field.y1 - PLAN_SET_OUT_END + 1);
  view_to_sheet (&page.view, &(MarkPoint){ 10000, 5000, 0, 0 }, &x, &y);
  g_assert_cmpfloat (x, <, page.field.x1 - PLAN_SET_OUT_SIDE + 1);
  g_assert_cmpfloat (y, >, page.field.y0 + PLAN_SET_OUT_END - 1);
  g_assert_cmpuint (corners_n_pages (&page), ==, 1);
  g_autoptr (Drawing) list = corners_page (&page, 0);
  /* From A 9 east and 7 north is E: hypot (6000, 7000), and from B hypot (3000, 7000). */
  g_assert_true (says (list, "E") && says (list, "9220") && says (list, "7616"));
  g_assert_false (page_set_plan (&page, project, 10, "A4", &error));
  g_assert_error (error, EXPORT_ERROR, EXPORT_ERROR_SCALE);
  g_assert_nonnull (strstr (error->message, "At 1:10 the plan with its dimensions is"));
}

/* Twenty buildings take more than a page, each corner once. */
static void
test_many (void)
{
  g_autoptr (Project) project = building ("8000 x 6000");
  guint corners = 0;
  Page page;

  for (int i = 1; i < 20; i++)
    {
      g_autofree char *fault = NULL;
      g_autoptr (GArray) sides = outline_parse ("3000 x 2000", &fault);
      g_autoptr (GPtrArray) walls = outline_walls (sides, MM (250), MM (2500), MM (i * 12000), 0);

      project = edited (project, edit_walls (walls));
    }
  g_assert_true (page_set_plan (&page, project, 0, "A4", NULL));
  g_assert_cmpuint (corners_n_pages (&page), >, 1);
  for (guint i = 0; i < corners_n_pages (&page); i++)
    {
      g_autoptr (Drawing) list = corners_page (&page, i);

      for (guint k = 0; k < list->marks->len; k++)
        {
          const char *text = drawing_text (list, drawing_mark (list, k));

          corners += strlen (text) == 1 && *text >= 'A' && *text <= 'D';
        }
    }
  g_assert_cmpuint (corners, ==, 20 * 4);
}

static gboolean
begins (GBytes *bytes, const char *start)
{
  gsize n;
  const char *data = g_bytes_get_data (bytes, &n);

  return n > strlen (start) && memcmp (data, start, strlen (start)) == 0;
}

static void
test_files (void)
{
  g_autoptr (Project) project = with_partition (building ("8000 x 6000"), 4000);
  g_autoptr (Project) empty = project_new ();
  g_autoptr (GError) error = NULL;
  g_autoptr (GBytes) pdf = export_plan_pdf (project, 0, "A4", &error);
  g_autoptr (GBytes) again = export_plan_pdf (project, 0, "A4", &error);
  g_autoptr (GBytes) svg = export_plan_svg (project, &error);
  g_autoptr (GBytes) png = export_plan_png (project, 900, &error);

  g_assert_no_error (error);
  g_assert_true (begins (pdf, "%PDF-") && begins (png, "\x89PNG"));
  g_assert_true (g_bytes_equal (pdf, again));
  g_autofree char *text = g_strndup (g_bytes_get_data (svg, NULL), g_bytes_get_size (svg));
  g_assert_nonnull (strstr (text, "<desc>Plan, 1:50</desc>"));
  g_assert_nonnull (strstr (text, ">10000</text>"));
  g_assert_null (export_plan_svg (empty, &error));
  g_assert_error (error, EXPORT_ERROR, EXPORT_ERROR_NO_PLAN);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/plan-sheet/set-out", test_set_out);
  g_test_add_func ("/plan-sheet/page", test_page);
  g_test_add_func ("/plan-sheet/many", test_many);
  g_test_add_func ("/plan-sheet/files", test_files);
  return g_test_run ();
}
