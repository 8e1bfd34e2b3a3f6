#include "export/page.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "concrete/ties.h"
#include "paint/elevation.h"
#include "site/as-built.h"

const View page_frame_view = { 1, 0, 0 };

/* Margins of the frame, mm: the left one is wider, for filing. */
#define FRAME_LEFT 15.0
#define FRAME_OTHER 8.0
#define BLOCK_HEIGHT 17.0 /* of the title block */
#define KEY_HEIGHT 11.0   /* of the strip over it: key, scale bar, note; only where pieces show */

typedef struct
{
  const char *name;
  double width, height; /* mm, landscape: ISO 216 */
} Paper;

static const Paper papers[] = { { "A4", 297, 210 }, { "A3", 420, 297 } };

/* Scales of ISO 5455, and 1:25, which the trade uses. */
static const int usual_scales[] = { 5, 10, 20, 25, 50, 100, 200, 500, 1000, 2000, 5000, 10000 };

/* What is drawn, and the room round it. */
typedef struct
{
  double width, height; /* mm, of the wall or the building */
  ElevationMargins margins;
} Extent;

static Extent
extent_of_wall (const Wall *wall, gboolean client)
{
  return (Extent){ length_to_mm (wall->length), elevation_height (wall, client),
                   elevation_margins (wall, client) };
}

static Extent
extent_of_plan (const PlanBox *box)
{
  return (Extent){ (double) (box->x1 - box->x0) / LENGTH_PER_MM,
                   (double) (box->y1 - box->y0) / LENGTH_PER_MM,
                   { PLAN_SET_OUT_SIDE, PLAN_SET_OUT_SIDE, PLAN_SET_OUT_END, PLAN_SET_OUT_END } };
}

/* Of the whole drawing at 1:scale, steps. */
static void
size_at (const Extent *extent, int scale, double *width, double *height)
{
  const ElevationMargins *margins = &extent->margins;

  *width = extent->width * STEPS_PER_MM / scale + margins->left + margins->right;
  *height = extent->height * STEPS_PER_MM / scale + margins->top + margins->bottom;
}

static int
scale_within (const Extent *extent, double width, double height)
{
  for (guint i = 0; i < G_N_ELEMENTS (usual_scales); i++)
    {
      double w, h;
      size_at (extent, usual_scales[i], &w, &h);
      if (w <= width && h <= height)
        return usual_scales[i];
    }
  return 0;
}

int
page_scale_within (const Wall *wall, gboolean client, double width, double height)
{
  const Extent extent = extent_of_wall (wall, client);

  return scale_within (&extent, width, height);
}

int
page_plan_scale_within (const PlanBox *box, double width, double height)
{
  const Extent extent = extent_of_plan (box);

  return scale_within (&extent, width, height);
}

static gboolean
set_paper (Page *page, const char *paper, GError **error)
{
  for (guint i = 0; i < G_N_ELEMENTS (papers); i++)
    if (g_strcmp0 (papers[i].name, paper) == 0)
      {
        page->paper = papers[i].name;
        page->width = papers[i].width;
        page->height = papers[i].height;
        return TRUE;
      }
  g_set_error (error, EXPORT_ERROR, EXPORT_ERROR_PAPER,
               _ ("There is no paper “%s” here; take A4 or A3."), paper ? paper : "");
  return FALSE;
}

static SheetBox
frame_of (const Page *page)
{
  return (SheetBox){ FRAME_LEFT * STEPS_PER_MM, FRAME_OTHER * STEPS_PER_MM,
                     (page->width - FRAME_OTHER) * STEPS_PER_MM,
                     (page->height - FRAME_OTHER) * STEPS_PER_MM };
}

static gboolean
set_scale (Page *page, const Extent *extent, int wanted, GError **error)
{
  const double width = page->field.x1 - page->field.x0, height = page->field.y1 - page->field.y0;
  const int best = scale_within (extent, width, height);
  double w, h;

  page->scale = wanted > 0 ? wanted : best;
  if (best == 0)
    {
      g_set_error (error, EXPORT_ERROR, EXPORT_ERROR_PAPER,
                   page->wall ? _ ("The wall does not fit on %s at any usual scale.")
                              : _ ("The plan does not fit on %s at any usual scale."),
                   page->paper);
      return FALSE;
    }
  size_at (extent, page->scale, &w, &h);
  if (w <= width && h <= height)
    return TRUE;
  g_set_error (error, EXPORT_ERROR, EXPORT_ERROR_SCALE,
               page->wall ? _ ("At 1:%d the wall with its dimensions is %.0f × %.0f mm and %s has "
                               "room for %.0f × %.0f mm; 1:%d fits.")
                          : _ ("At 1:%d the plan with its dimensions is %.0f × %.0f mm and %s has "
                               "room for %.0f × %.0f mm; 1:%d fits."),
               page->scale, w / STEPS_PER_MM, h / STEPS_PER_MM, page->paper, width / STEPS_PER_MM,
               height / STEPS_PER_MM, best);
  return FALSE;
}

/* Its lower left corner in the middle of the field, what is drawn there with all its room. */
static void
set_view (Page *page, const Extent *extent)
{
  const ElevationMargins *margins = &extent->margins;
  const SheetBox *field = &page->field;
  const double scale = STEPS_PER_MM / page->scale;
  const double length = extent->width * scale, tall = extent->height * scale;
  const double spare_x = field->x1 - field->x0 - margins->left - margins->right - length;
  const double spare_y = field->y1 - field->y0 - margins->top - margins->bottom - tall;

  page->view = (View){ scale, field->x0 + margins->left + spare_x / 2,
                       field->y0 + margins->top + spare_y / 2 + tall };
}

static gboolean
set_field (Page *page, const Extent *extent, int scale, const char *paper, GError **error)
{
  if (!set_paper (page, paper, error))
    return FALSE;
  page->field = frame_of (page);
  page->field.y1 -= (BLOCK_HEIGHT + (page->client ? 0 : KEY_HEIGHT)) * STEPS_PER_MM;
  if (!set_scale (page, extent, scale, error))
    return FALSE;
  set_view (page, extent);
  return TRUE;
}

gboolean
page_set (Page *page, const Project *project, const Wall *wall, const Layout *layout,
          gboolean client, int scale, const char *paper, GError **error)
{
  const Extent extent = extent_of_wall (wall, client);

  *page = (Page){
    .project = project, .wall = wall, .layout = layout, .client = client, .n_pages = 1
  };
  return set_field (page, &extent, scale, paper, error);
}

gboolean
page_set_plan (Page *page, const Project *project, int scale, const char *paper, GError **error)
{
  PlanBox box = { 0, 0, LENGTH_MM (1000), LENGTH_MM (1000) };
  Extent extent;

  plan_bounds (project, &box);
  extent = extent_of_plan (&box);
  *page = (Page){ .project = project, .n_pages = 1 };
  if (!set_field (page, &extent, scale, paper, error))
    return FALSE;
  page->view.ox -= (double) box.x0 / LENGTH_PER_MM * page->view.scale;
  page->view.oy += (double) box.y0 / LENGTH_PER_MM * page->view.scale;
  return TRUE;
}

/* The frame */

typedef struct
{
  const Page *page;
  Drawing *drawing;
  SheetBox frame;
  double block_top, key_top; /* steps */
  guint number;
  const char *subject;
} Frame;

static MarkPoint
place (double x, double y)
{
  return (MarkPoint){ 0, 0, (float) x, (float) y };
}

static void
add_line (Frame *frame, double x0, double y0, double x1, double y1)
{
  const MarkLook look = mark_look (STYLE_SHEET_LINE, LAYER_GROUND);

  drawing_add_line (frame->drawing, &look, place (x0, y0), place (x1, y1));
}

/* `room` 0: as wide as it is; else it shrinks and is then cut off by nothing but left out. */
static void
add_text (Frame *frame, Style style, double x, double y, double anchor_x, double room,
          const char *text)
{
  MarkLook look = mark_look (style, LAYER_DIMENSIONS);

  look.fit = room;
  drawing_add_text (frame->drawing, &look, place (x, y), (float) anchor_x, 0.5f, text);
}

static void
add_borders (Frame *frame)
{
  const MarkLook look = mark_look (STYLE_SHEET_FRAME, LAYER_GROUND);
  const SheetBox *box = &frame->frame;

  drawing_add_line (frame->drawing, &look, place (box->x0, box->y0), place (box->x1, box->y0));
  drawing_add_line (frame->drawing, &look, place (box->x1, box->y0), place (box->x1, box->y1));
  drawing_add_line (frame->drawing, &look, place (box->x1, box->y1), place (box->x0, box->y1));
  drawing_add_line (frame->drawing, &look, place (box->x0, box->y1), place (box->x0, box->y0));
  add_line (frame, box->x0, frame->block_top, box->x1, frame->block_top);
  if (!frame->page->client)
    add_line (frame, box->x0, frame->key_top, box->x1, frame->key_top);
}

/* The title block */

typedef struct
{
  const char *caption;
  const char *text;
  double share; /* of the block's width */
  Style style;
} Cell;

/* A text of any length, so that it fits its cell: cut off at `most` characters. */
static char *
shortened (const char *text, glong most)
{
  g_autofree char *valid = g_utf8_make_valid (text, -1);

  if (g_utf8_strlen (valid, -1) <= most)
    return g_steal_pointer (&valid);
  g_autofree char *start = g_utf8_substring (valid, 0, most - 1);
  return g_strconcat (start, "…", NULL);
}

/* Widths of letters on average, steps, as a share of their size. */
#define LETTER 0.62

static void
add_cell (Frame *frame, const Cell *cell, double x, double width)
{
  const double size = theme_row (THEME_PAPER, cell->style)->text_size;
  const glong most = (glong) MAX ((width - 16) / (size * LETTER), 4);
  g_autofree char *text = shortened (cell->text, most);

  add_text (frame, STYLE_SHEET_CAPTION, x + 8, frame->block_top + 15, 0, 0, cell->caption);
  add_text (frame, cell->style, x + 8, frame->block_top + 41, 0, width - 10, text);
}

static void
add_cells (Frame *frame, const Cell *cells, guint n)
{
  const double width = frame->frame.x1 - frame->frame.x0;
  double x = frame->frame.x0;

  for (guint i = 0; i < n; i++)
    {
      add_cell (frame, &cells[i], x, width * cells[i].share);
      x += width * cells[i].share;
      if (i + 1 < n)
        add_line (frame, x, frame->block_top, x, frame->frame.y1);
    }
}

static const char *
or_dash (const char *text)
{
  return text && *text ? text : "–";
}

static void
add_title_block (Frame *frame)
{
  const Page *page = frame->page;
  const char *called = page->wall ? wall_called (page->wall) : _ ("Building");
  g_autofree char *scale
      = frame->number == 1 ? g_strdup_printf ("1:%d", page->scale) : g_strdup (_ ("not to scale"));
  /* Translators: the paper (A4), the page's number and how many there are */
  g_autofree char *paper
      = g_strdup_printf (_ ("%s, page %u of %u"), page->paper, frame->number, page->n_pages);
  const Cell cells[] = {
    { _ ("Project"), or_dash (page->project->title), 0.27, STYLE_SHEET_TITLE },
    { frame->subject, called, 0.23, STYLE_SHEET_TITLE },
    { _ ("Client"), or_dash (page->project->client), 0.13, STYLE_SHEET_TEXT },
    { _ ("Drawn by"), or_dash (page->project->author), 0.12, STYLE_SHEET_TEXT },
    { _ ("Date"), or_dash (page->project->date), 0.09, STYLE_SHEET_TEXT },
    { paper, scale, 0.16, frame->number == 1 ? STYLE_SHEET_TITLE : STYLE_SHEET_TEXT },
  };

  add_cells (frame, cells, G_N_ELEMENTS (cells));
}

/* The key */

#define SWATCH_WIDTH 26.0
#define SWATCH_HEIGHT 12.0
#define SWATCH_WEDGE 6.0
#define SWATCH_JOINT 3.0

static double
key_middle (const Frame *frame)
{
  return (frame->key_top + frame->block_top) / 2;
}

/* Gives where the next swatch begins. */
static double
add_swatch_text (Frame *frame, double x, const char *text)
{
  const double size = theme_row (THEME_PAPER, STYLE_SHEET_CAPTION)->text_size;

  add_text (frame, STYLE_SHEET_CAPTION, x + SWATCH_WIDTH + 6, key_middle (frame), 0, 0, text);
  return x + SWATCH_WIDTH + 6 + (double) g_utf8_strlen (text, -1) * size * LETTER + 14;
}

static gboolean
is_line (Style style)
{
  return style == STYLE_STEEL || style == STYLE_TIE || style == STYLE_PLAN_ODD
         || style == STYLE_PLAN_EVEN || style == STYLE_PLAN_DIAGONAL;
}

static double
add_swatch (Frame *frame, double x, Style style, const char *text)
{
  const double y = key_middle (frame);
  const MarkLook look = mark_look (style, LAYER_PIECES);

  if (is_line (style))
    drawing_add_line (frame->drawing, &look, place (x, y), place (x + SWATCH_WIDTH, y));
  else
    drawing_add_box (frame->drawing, &look, place (x, y + SWATCH_HEIGHT / 2),
                     place (x + SWATCH_WIDTH, y - SWATCH_HEIGHT / 2));
  return add_swatch_text (frame, x, text);
}

/* The joint between two pieces, as it stands in the wall. */
static double
add_joint_swatch (Frame *frame, double x)
{
  const MarkLook piece = mark_look (STYLE_PIECE, LAYER_PIECES);
  const MarkLook joint = mark_look (STYLE_MOVEMENT_JOINT, LAYER_PIECES);
  const double foot = key_middle (frame) + SWATCH_HEIGHT / 2, head = foot - SWATCH_HEIGHT;
  const double left = x + (SWATCH_WIDTH - SWATCH_JOINT) / 2, right = left + SWATCH_JOINT;

  drawing_add_box (frame->drawing, &piece, place (x, foot), place (left, head));
  drawing_add_box (frame->drawing, &piece, place (right, foot), place (x + SWATCH_WIDTH, head));
  drawing_add_box (frame->drawing, &joint, place (left, foot + 2), place (right, head - 2));
  return add_swatch_text (frame, x, _ ("movement joint"));
}

/* A piece with the wedges that show a pin at both its ends. */
static double
add_pin_swatch (Frame *frame, double x)
{
  const MarkLook look = mark_look (STYLE_PIN, LAYER_LABELS);
  const double foot = key_middle (frame) + SWATCH_HEIGHT / 2;

  for (int side = -1; side <= 1; side += 2)
    {
      const double corner = side < 0 ? x + SWATCH_WIDTH : x;
      const MarkPoint points[] = {
        place (corner, foot),
        place (corner + side * SWATCH_WEDGE, foot),
        place (corner, foot - SWATCH_WEDGE),
      };

      drawing_add (frame->drawing, MARK_POLYGON, &look, points, G_N_ELEMENTS (points));
    }
  return add_swatch (frame, x, STYLE_PIECE, _ ("set by hand"));
}

static gboolean
has_returns (const Wall *wall)
{
  return wall->ends[SIDE_LEFT].ret > 0 || wall->ends[SIDE_RIGHT].ret > 0 || wall->tees->len > 0;
}

static gboolean
has_ties (const Page *page)
{
  const int index = project_wall_index (page->project, page->wall->id);
  g_autoptr (GArray) rows
      = ties_of_wall (page->wall, project_block (page->project, page->wall->block));
  g_autoptr (GArray) ends = ties_into_wall (page->project, (guint) MAX (index, 0));

  return rows->len + ends->len > 0;
}

static double
add_steel_swatch (Frame *frame, double x)
{
  char diameter[LENGTH_TEXT_SIZE];
  const Steel *steel = &frame->page->wall->steel;
  /* Translators: bars side by side and their diameter in mm */
  g_autofree char *text = g_strdup_printf (_ ("%d bars Ø %s in the bed"), steel->bars,
                                           length_text (steel->diameter, diameter));

  return add_swatch (frame, x, STYLE_STEEL, text);
}

static gboolean
has_raked (const Layout *layout)
{
  for (guint i = 0; i < layout->pieces->len; i++)
    if (layout_piece (layout, i)->shape == PIECE_RAKED)
      return TRUE;
  return FALSE;
}

static double
add_cap_swatch (Frame *frame, double x)
{
  char height[LENGTH_TEXT_SIZE];
  g_autofree char *text = g_strdup_printf (_ ("concrete cap, %s"),
                                           length_text (frame->page->wall->cap.height, height));

  return add_swatch (frame, x, STYLE_CAP, text);
}

/* What stands, and as of when. */
static double
add_standing_swatch (Frame *frame, double x)
{
  const Wall *wall = frame->page->wall;
  const char *as_of = wall->built->as_of;
  g_autofree char *laid = g_strdup_printf (_ ("laid to course %d"), wall_standing (wall));
  g_autofree char *date = as_of ? shortened (as_of, 12) : NULL;
  g_autofree char *text = date ? g_strdup_printf ("%s, %s", laid, date) : NULL;

  return add_swatch (frame, x, STYLE_STANDING, text ? text : laid);
}

static void
add_key (Frame *frame)
{
  const Wall *wall = frame->page->wall;
  const Layout *layout = frame->page->layout;
  double x = frame->frame.x0 + 8;
  g_autofree char *whole = g_strdup_printf (_ ("whole: %d"), layout->n_whole);
  g_autofree char *cut
      = g_strdup_printf (has_raked (layout) ? _ ("cut, with its length: %d; raked: below/above")
                                            : _ ("cut, with its length: %d"),
                         layout->n_cut);

  x = add_swatch (frame, x, STYLE_PIECE, whole);
  x = add_swatch (frame, x, STYLE_PIECE_CUT, cut);
  if (wall_standing (wall) > 0)
    x = add_standing_swatch (frame, x);
  if (has_returns (wall))
    x = add_swatch (frame, x, STYLE_RETURN, _ ("other wall"));
  /* The strips show blockwork alone. */
  if (wall->cap.height > 0 && frame->number == 1)
    x = add_cap_swatch (frame, x);
  if (wall->movement_joints->len > 0)
    x = add_joint_swatch (frame, x);
  if (wall->steel.given || wall->steel_rows->len > 0)
    x = add_steel_swatch (frame, x);
  if (has_ties (frame->page))
    x = add_swatch (frame, x, STYLE_TIE, _ ("ties, how many"));
  if (layout->breaches->len > 0)
    x = add_swatch (frame, x, STYLE_PIECE_BREACH, _ ("breaks a rule"));
  /* The strips of the courses have no wedges. */
  if (frame->number == 1 && elevation_shows_pins (layout, frame->page->view.scale))
    add_pin_swatch (frame, x);
}

static gboolean
any_ties (const Project *project)
{
  for (guint i = 0; i < project->walls->len; i++)
    {
      const Wall *wall = project_wall_at (project, i);
      g_autoptr (GArray) rows = ties_of_wall (wall, project_block (project, wall->block));

      if (rows->len > 0)
        return TRUE;
    }
  return FALSE;
}

static void
add_plan_key (Frame *frame)
{
  double x = frame->frame.x0 + 8;

  x = add_swatch (frame, x, STYLE_PLAN_WALL, _ ("blockwork"));
  x = add_swatch (frame, x, STYLE_PLAN_ODD, _ ("joint, odd courses"));
  x = add_swatch (frame, x, STYLE_PLAN_EVEN, _ ("even courses"));
  if (any_ties (frame->page->project))
    x = add_swatch (frame, x, STYLE_TIE, _ ("ties"));
  add_swatch (frame, x, STYLE_PLAN_DIAGONAL, _ ("length across"));
}

/* The scale bar */

/* Half of the bar on the wall, mm: so that the bar is 30 to 80 mm long. */
static double
bar_half (int scale)
{
  double half = 1;

  for (guint i = 0; half / scale < 15; i++)
    half *= i % 3 == 1 ? 2.5 : 2;
  return half;
}

static void
add_bar_part (Frame *frame, Style style, double x0, double x1, double y)
{
  const MarkLook look = mark_look (style, LAYER_TAPE);

  drawing_add_box (frame->drawing, &look, place (x0, y + 3), place (x1, y - 3));
}

static void
add_bar_number (Frame *frame, double x, double y, double mm)
{
  char digits[G_ASCII_DTOSTR_BUF_SIZE];
  const gboolean whole_metres = mm >= 1000;
  const char *number = g_ascii_formatd (digits, sizeof digits, "%g", whole_metres ? mm / 1000 : mm);
  g_autofree char *text = mm > 0 ? g_strdup_printf (whole_metres ? _ ("%s m") : _ ("%s mm"), number)
                                 : g_strdup (number);

  add_text (frame, STYLE_SHEET_CAPTION, x, y, 0.5, 0, text);
}

static void
add_bar (Frame *frame)
{
  const double half = bar_half (frame->page->scale);
  const double step = half / frame->page->scale * STEPS_PER_MM;
  const double right = frame->frame.x1 - 26, left = right - 2 * step;
  const double y = key_middle (frame) - 6;

  add_bar_part (frame, STYLE_CLIENT_SCALE_DARK, left, left + step, y);
  add_bar_part (frame, STYLE_CLIENT_SCALE_LIGHT, left + step, right, y);
  add_bar_number (frame, left, y + 12, 0);
  add_bar_number (frame, left + step, y + 12, half);
  add_bar_number (frame, right, y + 12, 2 * half);
  add_text (frame, STYLE_SHEET_CAPTION, left - 14, key_middle (frame), 1, 0, _ ("Print at 100 %"));
}

/* Over the key, where something is drawn that was measured. */
static void
add_measured_note (Frame *frame)
{
  const Page *page = frame->page;
  g_autoptr (AsBuilt) built = NULL;

  if (page->wall == NULL) /* a plan is of all walls */
    return;
  built = as_built_new (page->project, page->wall, page->layout);
  if (built->deviations->len > 0)
    add_text (frame, STYLE_SHEET_CAPTION, frame->frame.x0 + 8, frame->key_top - 9, 0, 0,
              _ ("Figures with a sign: measured less planned, mm. A filled mark or “!”: more than "
                 "its limit."));
}

Drawing *
page_frame (const Page *page, guint number, const char *subject)
{
  const SheetBox box = frame_of (page);
  Frame frame = { page, drawing_new (), box, box.y1 - BLOCK_HEIGHT * STEPS_PER_MM, 0 };

  frame.number = number;
  frame.subject = subject;
  frame.key_top = frame.block_top - KEY_HEIGHT * STEPS_PER_MM;
  add_borders (&frame);
  add_title_block (&frame);
  if (!page->client)
    {
      if (page->wall)
        add_key (&frame);
      else if (number == 1)
        add_plan_key (&frame);
      add_measured_note (&frame);
      if (number == 1)
        add_bar (&frame);
    }
  drawing_finish (frame.drawing);
  return frame.drawing;
}
