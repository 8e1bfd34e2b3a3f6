/* svg.c - a drawing as SVG: text stays text, and every piece has its id and its measures
 *
 * Written by hand, because cairo turns text into outlines and knows no ids. Coordinates are
 * millimetres of paper; nothing is scaled or turned, so that line widths and text are what they
 * say in every reader. */
#include "export/export.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "bond/rake.h"
#include "export/page.h"
#include "paint/elevation.h"
#include "paint/ink.h"
#include "paint/plan.h"

/* An A3 sheet's room decides the scale; the page is then as large as the drawing. */
#define ROOM_WIDTH (390 * STEPS_PER_MM)
#define ROOM_HEIGHT (260 * STEPS_PER_MM)
#define SMALLEST_SCALE 10000

static const char *const layer_words[N_LAYERS] = {
  [LAYER_GROUND] = "ground",     [LAYER_PIECES] = "pieces",         [LAYER_LABELS] = "labels",
  [LAYER_OPENINGS] = "openings", [LAYER_STEEL] = "steel",           [LAYER_ROD] = "storey-rod",
  [LAYER_TAPE] = "tape",         [LAYER_DIMENSIONS] = "dimensions", [LAYER_OVERLAY] = "overlay",
};

typedef struct
{
  GString *text;
  const Project *project;
  const Wall *wall;
  const Layout *layout;
  const Drawing *drawing;
  Ink *ink;
  Theme theme;
  View view;
  int scale;
  SheetBox page;   /* steps */
  GArray *corners; /* SheetPoint, of the mark being written */
  GArray *strokes; /* HatchStroke, likewise */
} Writer;

/* Words */

static gboolean
is_xml_character (gunichar c)
{
  if (c == '\t')
    return TRUE;
  return c >= 0x20 && !(c >= 0x7f && c <= 0x9f) && c != 0xfffe && c != 0xffff;
}

/* What XML 1.0 does not allow is taken out, line ends become spaces, the rest is escaped. */
static char *
escaped (const char *text)
{
  g_autofree char *valid = g_utf8_make_valid (text, -1);
  g_autoptr (GString) clean = g_string_new (NULL);

  for (const char *p = valid; *p; p = g_utf8_next_char (p))
    {
      const gunichar c = g_utf8_get_char (p);
      if (c == '\n' || c == '\r')
        g_string_append_c (clean, ' ');
      else if (is_xml_character (c))
        g_string_append_unichar (clean, c);
    }
  return g_markup_escape_text (clean->str, (gssize) clean->len);
}

static void
add_escaped (Writer *writer, const char *text)
{
  g_autofree char *safe = escaped (text);

  g_string_append (writer->text, safe);
}

static void
add (Writer *writer, const char *text)
{
  g_string_append (writer->text, text);
}

/* Up to three decimals: a thousandth of a millimetre of paper. */
static void
add_number (Writer *writer, double number)
{
  char text[G_ASCII_DTOSTR_BUF_SIZE * 8];

  g_ascii_formatd (text, sizeof text, "%.3f", number);
  char *end = text + strlen (text);
  while (end[-1] == '0')
    *--end = '\0';
  if (end[-1] == '.')
    end[-1] = '\0';
  add (writer, strcmp (text, "-0") == 0 ? "0" : text);
}

/* Steps, written as millimetres. */
static void
add_step (Writer *writer, double steps)
{
  add_number (writer, steps / STEPS_PER_MM);
}

static void
add_attribute (Writer *writer, const char *name, double steps)
{
  g_string_append_printf (writer->text, " %s=\"", name);
  add_step (writer, steps);
  add (writer, "\"");
}

/* Styles */

static void
add_colour (Writer *writer, const char *property, const Rgba *colour)
{
  if (colour->a <= 0)
    {
      g_string_append_printf (writer->text, "%s:none", property);
      return;
    }
  g_string_append_printf (writer->text, "%s:#%02x%02x%02x", property,
                          (guint) lround (colour->r * 255), (guint) lround (colour->g * 255),
                          (guint) lround (colour->b * 255));
  if (colour->a < 1)
    {
      g_string_append_printf (writer->text, ";%s-opacity:", property);
      add_number (writer, colour->a);
    }
}

static void
add_line_rule (Writer *writer, const StyleRow *row)
{
  add_colour (writer, "stroke", &row->line);
  if (row->line.a <= 0 || row->line_width <= 0)
    return;
  add (writer, ";stroke-width:");
  add_step (writer, row->line_width);
  if (row->dash > 0)
    {
      add (writer, ";stroke-dasharray:");
      add_step (writer, row->dash);
    }
}

static void
add_shape_rule (Writer *writer, Style style, const StyleRow *row)
{
  g_string_append_printf (writer->text, ".%s{", theme_style_word (style));
  if (row->fill_end.a > 0)
    g_string_append_printf (writer->text, "fill:url(#wash-%s)", theme_style_word (style));
  else
    add_colour (writer, "fill", &row->fill);
  add (writer, ";");
  add_line_rule (writer, row);
  add (writer, "}\n");
}

static void
add_hatch_rule (Writer *writer, Style style, const StyleRow *row)
{
  g_string_append_printf (writer->text, ".%s-hatch{fill:none;", theme_style_word (style));
  add_colour (writer, "stroke", &row->hatch_ink);
  add (writer, ";stroke-width:");
  add_step (writer, row->hatch == HATCH_DOTS ? 2 * HATCH_DOT_RADIUS : hatch_width (writer->theme));
  add (writer, row->hatch == HATCH_DOTS ? ";stroke-linecap:round}\n" : "}\n");
}

static void
add_text_rule (Writer *writer, Style style, const StyleRow *row)
{
  g_string_append_printf (writer->text, ".%s{", theme_style_word (style));
  add_colour (writer, "fill", &row->line);
  if (row->bold)
    add (writer, ";font-weight:bold");
  add (writer, "}\n");
  if (row->fill.a <= 0)
    return;
  g_string_append_printf (writer->text, ".%s-plate{", theme_style_word (style));
  add_colour (writer, "fill", &row->fill);
  add (writer, "}\n");
}

static void
add_rules (Writer *writer, const gboolean *used)
{
  add (writer, "<style>\ntext{font-family:sans-serif}\n");
  for (int style = 0; style < N_STYLES; style++)
    {
      const StyleRow *row = theme_row (writer->theme, (Style) style);
      if (!used[style])
        continue;
      if (row->text_size > 0)
        add_text_rule (writer, (Style) style, row);
      else
        add_shape_rule (writer, (Style) style, row);
      if (row->hatch != HATCH_NONE)
        add_hatch_rule (writer, (Style) style, row);
    }
  add (writer, "</style>\n");
}

static void
add_stop (Writer *writer, int offset, const Rgba *colour)
{
  g_string_append_printf (writer->text, "<stop offset=\"%d\" style=\"", offset);
  add_colour (writer, "stop-color", colour);
  add (writer, "\"/>");
}

static void
add_washes (Writer *writer, const gboolean *used)
{
  add (writer, "<defs>\n");
  for (int style = 0; style < N_STYLES; style++)
    {
      const StyleRow *row = theme_row (writer->theme, (Style) style);
      if (!used[style] || row->fill_end.a <= 0)
        continue;
      g_string_append_printf (writer->text,
                              "<linearGradient id=\"wash-%s\" x1=\"0\" y1=\"0\" x2=\"0\" y2=\"1\">",
                              theme_style_word ((Style) style));
      add_stop (writer, 0, &row->fill);
      add_stop (writer, 1, &row->fill_end);
      add (writer, "</linearGradient>\n");
    }
  add (writer, "</defs>\n");
}

/* Marks */

/* Steps that a corner may lie outside of the page: readers keep what lies outside. */
static void
place_corners (Writer *writer, const Mark *mark)
{
  g_array_set_size (writer->corners, mark->n_points);
  for (guint i = 0; i < mark->n_points; i++)
    {
      SheetPoint *corner = &g_array_index (writer->corners, SheetPoint, i);
      view_to_sheet (&writer->view, drawing_points (writer->drawing, mark) + i, &corner->x,
                     &corner->y);
      corner->x = CLAMP (corner->x, writer->page.x0, writer->page.x1);
      corner->y = CLAMP (corner->y, writer->page.y0, writer->page.y1);
    }
}

static void
add_outline (Writer *writer, gboolean closed)
{
  add (writer, " d=\"");
  for (guint i = 0; i < writer->corners->len; i++)
    {
      const SheetPoint *corner = &g_array_index (writer->corners, SheetPoint, i);
      add (writer, i == 0 ? "M" : "L");
      add_step (writer, corner->x);
      add (writer, " ");
      add_step (writer, corner->y);
    }
  add (writer, closed ? "Z\"" : "\"");
}

static const Piece *
piece_of (const Writer *writer, const MarkRef *ref)
{
  if (ref->kind != REF_PIECE || !writer->layout || ref->a < 1
      || (guint) ref->a > writer->layout->courses->len)
    return NULL;
  const Course *course = layout_course (writer->layout, (guint) ref->a - 1);
  if (ref->b < 1 || ref->b > course->n_pieces)
    return NULL;
  return layout_piece (writer->layout, (guint) (course->first + ref->b - 1));
}

static void
add_measure (Writer *writer, const char *name, Length length)
{
  g_autofree char *text = length_format (length);

  g_string_append_printf (writer->text, " data-%s=\"%s\"", name, text);
}

static void
add_piece_attributes (Writer *writer, const Piece *piece)
{
  add (writer, " id=\"");
  add_escaped (writer, writer->wall->key);
  g_string_append_printf (writer->text, "/%d/%d\" data-shape=\"%s\"", piece->course, piece->number,
                          piece_shape_word (piece->shape));
  add_measure (writer, "x", piece->x);
  add_measure (writer, "bottom", piece->bottom);
  add_measure (writer, "length", piece->length);
  add_measure (writer, "height", piece->height);
}

static void
add_piece_title (Writer *writer, const Piece *piece)
{
  char length[LENGTH_TEXT_SIZE], height[LENGTH_TEXT_SIZE], digits[G_ASCII_DTOSTR_BUF_SIZE];
  Rake rake;

  add (writer, "<title>");
  add_escaped (writer, writer->wall->key);
  g_string_append_printf (writer->text, "/%d/%d: %s × %s mm, %s", piece->course, piece->number,
                          length_text (piece->length, length), length_text (piece->height, height),
                          piece_shape_word (piece->shape));
  if (piece->shape == PIECE_RAKED && piece_rake (writer->layout, piece, &rake))
    g_string_append_printf (writer->text, " %s°",
                            g_ascii_formatd (digits, sizeof digits, "%.1f", rake_angle (&rake)));
  add (writer, "</title>");
}

/* A line that may not be thinner than a joint on the wall. */
static void
add_line_width (Writer *writer, const Mark *mark)
{
  const StyleRow *row = theme_row (writer->theme, (Style) mark->style);
  const double joint = mark->line_mm * writer->view.scale;

  if (row->line.a <= 0 || joint <= row->line_width)
    return;
  add (writer, " style=\"stroke-width:");
  add_step (writer, joint);
  add (writer, "\"");
}

static void
add_hatch (Writer *writer, Style style)
{
  const StyleRow *row = theme_row (writer->theme, style);
  const SheetPoint origin = { writer->view.ox, writer->view.oy };

  g_array_set_size (writer->strokes, 0);
  hatch_polygon (row->hatch, (const SheetPoint *) (const void *) writer->corners->data,
                 writer->corners->len, origin, &writer->page, writer->strokes);
  if (writer->strokes->len == 0)
    return;
  g_string_append_printf (writer->text, "<path class=\"%s-hatch\" d=\"", theme_style_word (style));
  for (guint i = 0; i < writer->strokes->len; i++)
    {
      const HatchStroke *stroke = &g_array_index (writer->strokes, HatchStroke, i);
      const SheetPoint ends[] = { stroke->from, stroke->to };
      for (guint k = 0; k < G_N_ELEMENTS (ends); k++)
        {
          add (writer, k == 0 ? "M" : "L");
          add_step (writer, ends[k].x);
          add (writer, " ");
          add_step (writer, ends[k].y);
        }
    }
  add (writer, "\"/>\n");
}

static void
add_shape (Writer *writer, const Mark *mark)
{
  const Piece *piece = piece_of (writer, &mark->ref);

  place_corners (writer, mark);
  g_string_append_printf (writer->text, "<path class=\"%s\"",
                          theme_style_word ((Style) mark->style));
  if (piece)
    add_piece_attributes (writer, piece);
  if (mark->kind == MARK_LINE)
    add (writer, " fill=\"none\"");
  add_line_width (writer, mark);
  add_outline (writer, mark->kind == MARK_POLYGON);
  add (writer, piece ? ">" : "/>\n");
  if (piece)
    {
      add_piece_title (writer, piece);
      add (writer, "</path>\n");
    }
  if (mark->kind == MARK_POLYGON)
    add_hatch (writer, (Style) mark->style);
}

static void
add_circle (Writer *writer, const Mark *mark)
{
  place_corners (writer, mark);
  const SheetPoint *middle = &g_array_index (writer->corners, SheetPoint, 0);
  g_string_append_printf (writer->text, "<circle class=\"%s\"",
                          theme_style_word ((Style) mark->style));
  add_attribute (writer, "cx", middle->x);
  add_attribute (writer, "cy", middle->y);
  add_attribute (writer, "r", (double) mark->radius);
  add (writer, "/>\n");
}

static void
add_plate (Writer *writer, const Mark *mark, const InkText *place)
{
  if (theme_row (writer->theme, (Style) mark->style)->fill.a <= 0)
    return;
  g_string_append_printf (writer->text, "<rect class=\"%s-plate\"",
                          theme_style_word ((Style) mark->style));
  add_attribute (writer, "x", place->x - 3);
  add_attribute (writer, "y", place->y);
  add_attribute (writer, "width", place->width + 6);
  add_attribute (writer, "height", place->height);
  add (writer, "/>\n");
}

static const char *
anchor_word (float anchor)
{
  return anchor > 0.75f ? "end" : anchor > 0.25f ? "middle" : "start";
}

static void
add_text (Writer *writer, const Mark *mark)
{
  InkText place;

  if (!ink_place_text (writer->ink, writer->drawing, mark, &writer->view, writer->theme, &place))
    return;
  add_plate (writer, mark, &place);
  g_string_append_printf (writer->text, "<text class=\"%s\" text-anchor=\"%s\"",
                          theme_style_word ((Style) mark->style), anchor_word (mark->anchor_x));
  add_attribute (writer, "x", place.x + place.width * (double) mark->anchor_x);
  add_attribute (writer, "y", place.y + place.baseline);
  add_attribute (writer, "font-size", place.size);
  if (!place.bold && theme_row (writer->theme, (Style) mark->style)->bold)
    add (writer, " style=\"font-weight:normal\"");
  add (writer, ">");
  add_escaped (writer, drawing_text (writer->drawing, mark));
  add (writer, "</text>\n");
}

static gboolean
is_inked (const Writer *writer, const Mark *mark)
{
  const StyleRow *row = theme_row (writer->theme, (Style) mark->style);

  return mark_is_at_scale (mark, writer->view.scale) && mark->n_points > 0
         && (row->fill.a > 0 || row->line.a > 0);
}

static void
add_mark (Writer *writer, const Mark *mark)
{
  if (!is_inked (writer, mark))
    return;
  if (mark->kind == MARK_TEXT)
    add_text (writer, mark);
  else if (mark->kind == MARK_CIRCLE)
    add_circle (writer, mark);
  else
    add_shape (writer, mark);
}

static void
add_layers (Writer *writer)
{
  int layer = -1;

  for (guint i = 0; i < writer->drawing->marks->len; i++)
    {
      const Mark *mark = drawing_mark (writer->drawing, i);
      if (mark->layer != layer)
        {
          if (layer >= 0)
            add (writer, "</g>\n");
          layer = mark->layer;
          g_string_append_printf (writer->text, "<g id=\"%s\">\n", layer_words[layer]);
        }
      add_mark (writer, mark);
    }
  if (layer >= 0)
    add (writer, "</g>\n");
}

/* The document */

static void
add_root (Writer *writer)
{
  add (writer, "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n"
               "<svg xmlns=\"http://www.w3.org/2000/svg\" version=\"1.1\" width=\"");
  add_step (writer, writer->page.x1);
  add (writer, "mm\" height=\"");
  add_step (writer, writer->page.y1);
  add (writer, "mm\" viewBox=\"0 0 ");
  add_step (writer, writer->page.x1);
  add (writer, " ");
  add_step (writer, writer->page.y1);
  add (writer, "\">\n<title>");
  if (writer->project->title && *writer->project->title)
    {
      add_escaped (writer, writer->project->title);
      add (writer, " – ");
    }
  add_escaped (writer, !writer->wall         ? _ ("Building")
                       : *writer->wall->name ? writer->wall->name
                                             : writer->wall->key);
  add (writer, "</title>\n<desc>");
  /* Translators: of a drawing of a wall; its scale */
  g_autofree char *scale = g_strdup_printf (
      writer->wall ? _ ("Elevation from outside, 1:%d") : _ ("Plan, 1:%d"), writer->scale);
  add_escaped (writer, scale);
  add (writer, "</desc>\n");
}

static void
add_ground_sheet (Writer *writer)
{
  add (writer, "<rect class=\"paper\"");
  add_attribute (writer, "width", writer->page.x1);
  add_attribute (writer, "height", writer->page.y1);
  add (writer, "/>\n");
}

static void
find_used (const Writer *writer, gboolean *used)
{
  used[STYLE_PAPER] = TRUE;
  for (guint i = 0; i < writer->drawing->marks->len; i++)
    if (is_inked (writer, drawing_mark (writer->drawing, i)))
      used[drawing_mark (writer->drawing, i)->style] = TRUE;
}

static void
write_document (Writer *writer)
{
  gboolean used[N_STYLES] = { FALSE };

  find_used (writer, used);
  add_root (writer);
  add_rules (writer, used);
  add_washes (writer, used);
  add_ground_sheet (writer);
  add_layers (writer);
  add (writer, "</svg>\n");
}

/* As large as the drawing at the scale at which it would fit an A3 sheet. */
static void
set_page (Writer *writer, gboolean client)
{
  const Wall *wall = writer->wall;
  const ElevationMargins margins = elevation_margins (wall, client);
  const int scale = page_scale_within (wall, client, ROOM_WIDTH, ROOM_HEIGHT);

  writer->scale = scale > 0 ? scale : SMALLEST_SCALE;
  writer->view.scale = STEPS_PER_MM / writer->scale;
  const double length = length_to_mm (wall->length) * writer->view.scale;
  const double tall = elevation_height (wall, client) * writer->view.scale;
  writer->view.ox = margins.left;
  writer->view.oy = margins.top + tall;
  writer->page = (SheetBox){ 0, 0, margins.left + length + margins.right,
                             margins.top + tall + margins.bottom };
}

static void
set_plan_page (Writer *writer, const PlanBox *box)
{
  const int scale = page_plan_scale_within (box, ROOM_WIDTH, ROOM_HEIGHT);
  double wide, tall;

  writer->scale = scale > 0 ? scale : SMALLEST_SCALE;
  writer->view.scale = STEPS_PER_MM / writer->scale;
  wide = (double) (box->x1 - box->x0) / LENGTH_PER_MM * writer->view.scale;
  tall = (double) (box->y1 - box->y0) / LENGTH_PER_MM * writer->view.scale;
  writer->view.ox = PLAN_SET_OUT_SIDE - (double) box->x0 / LENGTH_PER_MM * writer->view.scale;
  writer->view.oy = PLAN_SET_OUT_END + tall + (double) box->y0 / LENGTH_PER_MM * writer->view.scale;
  writer->page = (SheetBox){ 0, 0, wide + 2 * PLAN_SET_OUT_SIDE, tall + 2 * PLAN_SET_OUT_END };
}

static GBytes *
written (Writer *writer)
{
  write_document (writer);
  ink_free (writer->ink);
  return g_string_free_to_bytes (writer->text);
}

GBytes *
export_plan_svg (const Project *project, GError **error)
{
  const PlanInput input = { .project = project, .set_out = TRUE };
  g_autoptr (Drawing) drawing = NULL;
  g_autoptr (GArray) corners = g_array_new (FALSE, FALSE, sizeof (SheetPoint));
  g_autoptr (GArray) strokes = g_array_new (FALSE, FALSE, sizeof (HatchStroke));
  PlanBox box;

  if (!plan_bounds (project, &box))
    return export_no_plan (error);
  drawing = plan_drawing (&input);
  Writer writer = { .text = g_string_new (NULL),
                    .project = project,
                    .drawing = drawing,
                    .ink = ink_new (NULL),
                    .theme = THEME_LIGHT,
                    .corners = corners,
                    .strokes = strokes };
  set_plan_page (&writer, &box);
  return written (&writer);
}

GBytes *
export_svg (const Project *project, const Wall *wall, const Layout *layout, gboolean client,
            G_GNUC_UNUSED GError **error)
{
  const ElevationInput input = { .project = project, .wall = wall, .layout = layout };
  g_autoptr (Drawing) drawing = client ? elevation_client (&input) : elevation_laying (&input);
  g_autoptr (GArray) corners = g_array_new (FALSE, FALSE, sizeof (SheetPoint));
  g_autoptr (GArray) strokes = g_array_new (FALSE, FALSE, sizeof (HatchStroke));
  Writer writer = {
    .text = g_string_new (NULL),
    .project = project,
    .wall = wall,
    .layout = layout,
    .drawing = drawing,
    .ink = ink_new (NULL),
    .theme = THEME_LIGHT,
    .corners = corners,
    .strokes = strokes,
  };

  set_page (&writer, client);
  return written (&writer);
}
