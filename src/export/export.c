#include "export/export.h"

#include <cairo-pdf.h>
#include <glib/gi18n-lib.h>
#include <string.h>

#include "export/corners.h"
#include "export/page.h"
#include "export/strips.h"
#include "paint/elevation.h"
#include "paint/ink.h"
#include "paint/plan.h"

/* Pictures narrower or wider than this are drawn at it and made smaller or larger, so that their
 * letters keep their proportion to the wall. */
#define PICTURE_LEAST 700.0
#define PICTURE_MOST 1600.0

G_DEFINE_QUARK (halfbond - export - error, export_error)

static Drawing *
drawing_of (const Project *project, const Wall *wall, const Layout *layout, gboolean client)
{
  const ElevationInput input = { .project = project, .wall = wall, .layout = layout };

  return client ? elevation_client (&input) : elevation_laying (&input);
}

static cairo_status_t
append_bytes (void *closure, const unsigned char *data, unsigned int n)
{
  g_byte_array_append (closure, data, n);
  return CAIRO_STATUS_SUCCESS;
}

/* The bytes that were written, or NULL when cairo has failed. Takes both. */
static GBytes *
finished_bytes (GByteArray *bytes, cairo_status_t status, GError **error)
{
  if (status == CAIRO_STATUS_SUCCESS)
    return g_byte_array_free_to_bytes (bytes);
  g_byte_array_unref (bytes);
  g_set_error (error, EXPORT_ERROR, EXPORT_ERROR_FAILED, _ ("The drawing could not be made: %s."),
               cairo_status_to_string (status));
  return NULL;
}

/* PDF */

static gboolean
is_date (const char *text)
{
  g_auto (GStrv) parts = g_strsplit (text ? text : "", "-", -1);
  guint64 year, month, day;

  return g_strv_length (parts) == 3 && strlen (text) == 10
         && g_ascii_string_to_unsigned (parts[0], 10, 1, 9999, &year, NULL)
         && g_ascii_string_to_unsigned (parts[1], 10, 1, 12, &month, NULL)
         && g_ascii_string_to_unsigned (parts[2], 10, 1, 31, &day, NULL)
         && g_date_valid_dmy ((GDateDay) day, (GDateMonth) month, (GDateYear) year);
}

/* The project's date; else the one that builds which must be repeatable are given in seconds since
 * 1970; else that year's beginning. Never the clock: the same project gives the same bytes. */
static char *
creation_date (const Project *project)
{
  guint64 seconds = 0;
  const char *epoch = g_getenv ("SOURCE_DATE_EPOCH");

  if (is_date (project->date))
    return g_strdup_printf ("%sT00:00:00Z", project->date);
  if (epoch && !g_ascii_string_to_unsigned (epoch, 10, 0, 253402300799, &seconds, NULL))
    seconds = 0;
  g_autoptr (GDateTime) time = g_date_time_new_from_unix_utc ((gint64) seconds);
  return g_date_time_format (time, "%Y-%m-%dT%H:%M:%SZ");
}

static void
set_text (cairo_surface_t *surface, cairo_pdf_metadata_t which, const char *text)
{
  g_autofree char *valid = g_utf8_make_valid (text, -1);

  cairo_pdf_surface_set_metadata (surface, which, valid);
}

static void
set_metadata (cairo_surface_t *surface, const Page *page)
{
  const Project *project = page->project;
  g_autofree char *date = creation_date (project);
  g_autofree char *title
      = g_strdup_printf ("%s – %s", project->title ? project->title : "",
                         page->wall ? wall_called (page->wall) : _ ("Plan of the building"));

  set_text (surface, CAIRO_PDF_METADATA_TITLE, title);
  set_text (surface, CAIRO_PDF_METADATA_CREATOR, "Halfbond");
  if (project->author && *project->author)
    set_text (surface, CAIRO_PDF_METADATA_AUTHOR, project->author);
  cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_CREATE_DATE, date);
  cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_MOD_DATE, date);
}

/* The laying sheet in black, to be copied and scribbled on; the client's in colour, which no part
 * of it needs to be understood. */
static void
draw_elevation (cairo_t *cr, Ink *ink, const Page *page)
{
  const Theme theme = page->client ? THEME_LIGHT : THEME_PAPER;
  const SheetBox *field = &page->field;
  g_autoptr (Drawing) frame = page_frame (page, 1,
                                          page->client ? _ ("Wall, finished, from outside")
                                                       : _ ("Wall, as laid, from outside"));
  g_autoptr (Drawing) wall = drawing_of (page->project, page->wall, page->layout, page->client);

  cairo_save (cr);
  cairo_rectangle (cr, field->x0, field->y0, field->x1 - field->x0, field->y1 - field->y0);
  cairo_clip (cr);
  ink_draw (ink, cr, wall, &page->view, theme, -1, -1, FALSE);
  cairo_restore (cr);
  ink_draw (ink, cr, frame, &page_frame_view, THEME_PAPER, -1, -1, FALSE);
}

static void
draw_plan (cairo_t *cr, Ink *ink, const Page *page)
{
  const PlanInput input = { .project = page->project, .set_out = TRUE };
  const SheetBox *field = &page->field;
  g_autoptr (Drawing) frame = page_frame (page, 1, _ ("Plan, to be set out from"));
  g_autoptr (Drawing) plan = plan_drawing (&input);

  cairo_save (cr);
  cairo_rectangle (cr, field->x0, field->y0, field->x1 - field->x0, field->y1 - field->y0);
  cairo_clip (cr);
  ink_draw (ink, cr, plan, &page->view, THEME_PAPER, -1, -1, FALSE);
  cairo_restore (cr);
  ink_draw (ink, cr, frame, &page_frame_view, THEME_PAPER, -1, -1, FALSE);
}

static void
draw_corners (cairo_t *cr, Ink *ink, const Page *page, guint number)
{
  g_autoptr (Drawing) frame = page_frame (page, number, _ ("Corners, by two tapes"));
  g_autoptr (Drawing) list = corners_page (page, number - 2);

  ink_draw (ink, cr, list, &page_frame_view, THEME_PAPER, -1, -1, FALSE);
  ink_draw (ink, cr, frame, &page_frame_view, THEME_PAPER, -1, -1, FALSE);
}

static void
draw_courses (cairo_t *cr, Ink *ink, const Page *page, guint number)
{
  g_autofree char *subject = strips_subject (page, number - 2);
  g_autoptr (Drawing) frame = page_frame (page, number, subject);
  g_autoptr (Drawing) strips = strips_page (page, number - 2);

  ink_draw (ink, cr, strips, &page_frame_view, THEME_PAPER, -1, -1, FALSE);
  ink_draw (ink, cr, frame, &page_frame_view, THEME_PAPER, -1, -1, FALSE);
}

static void
draw_page (cairo_t *cr, Ink *ink, const Page *page, guint number)
{
  if (!page->wall && number == 1)
    draw_plan (cr, ink, page);
  else if (!page->wall)
    draw_corners (cr, ink, page, number);
  else if (number == 1)
    draw_elevation (cr, ink, page);
  else
    draw_courses (cr, ink, page, number);
}

static void
draw_pages (cairo_t *cr, const Page *page)
{
  Ink *ink = ink_new (NULL);

  for (guint number = 1; number <= page->n_pages; number++)
    {
      cairo_save (cr);
      cairo_scale (cr, 72.0 / 96, 72.0 / 96);
      draw_page (cr, ink, page, number);
      cairo_restore (cr);
      cairo_show_page (cr);
    }
  ink_free (ink);
}

static cairo_status_t
write_pages (const Page *page, GByteArray *bytes)
{
  cairo_surface_t *surface = cairo_pdf_surface_create_for_stream (
      append_bytes, bytes, page->width * 72 / 25.4, page->height * 72 / 25.4);

  set_metadata (surface, page);
  cairo_t *cr = cairo_create (surface);
  draw_pages (cr, page);
  cairo_destroy (cr);
  cairo_surface_finish (surface);
  const cairo_status_t status = cairo_surface_status (surface);
  cairo_surface_destroy (surface);
  return status;
}

GBytes *
export_pdf (const Project *project, const Wall *wall, const Layout *layout, gboolean client,
            int scale, const char *paper, GError **error)
{
  Page page;

  if (!page_set (&page, project, wall, layout, client, scale, paper, error))
    return NULL;
  if (!client)
    page.n_pages += strips_n_pages (&page);
  GByteArray *bytes = g_byte_array_new ();
  return finished_bytes (bytes, write_pages (&page, bytes), error);
}

GBytes *
export_no_plan (GError **error)
{
  g_set_error_literal (error, EXPORT_ERROR, EXPORT_ERROR_NO_PLAN,
                       _ ("No wall of this project stands in plan."));
  return NULL;
}

GBytes *
export_plan_pdf (const Project *project, int scale, const char *paper, GError **error)
{
  PlanBox box;
  GByteArray *bytes;
  Page page;

  if (!plan_bounds (project, &box))
    return export_no_plan (error);
  if (!page_set_plan (&page, project, scale, paper, error))
    return NULL;
  page.n_pages += corners_n_pages (&page);
  bytes = g_byte_array_new ();
  return finished_bytes (bytes, write_pages (&page, bytes), error);
}

/* PNG */

static void
draw_picture (cairo_t *cr, const Drawing *drawing, const View *view, gboolean crisp)
{
  const Rgba *paper = &theme_row (THEME_LIGHT, STYLE_PAPER)->fill;
  Ink *ink = ink_new (NULL);

  cairo_set_source_rgb (cr, paper->r, paper->g, paper->b);
  cairo_paint (cr);
  ink_draw (ink, cr, drawing, view, THEME_LIGHT, -1, -1, crisp);
  ink_free (ink);
}

static cairo_status_t
write_picture (const Drawing *drawing, const View *view, int width, int height, double enlarged,
               GByteArray *bytes)
{
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, width, height);
  cairo_t *cr = cairo_create (surface);

  cairo_scale (cr, enlarged, enlarged);
  draw_picture (cr, drawing, view, enlarged == 1);
  cairo_status_t status = cairo_status (cr);
  cairo_destroy (cr);
  if (status == CAIRO_STATUS_SUCCESS)
    status = cairo_surface_write_to_png_stream (surface, append_bytes, bytes);
  cairo_surface_destroy (surface);
  return status;
}

/* As high as the wall needs at that width, but no higher than wide. */
static double
picture_height (const Wall *wall, gboolean client, double width)
{
  const ElevationMargins margins = elevation_margins (wall, client);
  const double scale = (width - margins.left - margins.right) / length_to_mm (wall->length);
  const double needed = elevation_height (wall, client) * scale + margins.top + margins.bottom;

  return MIN (needed, width);
}

GBytes *
export_png (const Project *project, const Wall *wall, const Layout *layout, gboolean client,
            int width, GError **error)
{
  const double drawn = CLAMP ((double) width, PICTURE_LEAST, PICTURE_MOST);
  const double enlarged = width / drawn, tall = picture_height (wall, client, drawn);
  const View view = elevation_fit (wall, client, drawn, tall);
  g_autoptr (Drawing) drawing = drawing_of (project, wall, layout, client);
  GByteArray *bytes = g_byte_array_new ();
  const int height = MAX ((int) (tall * enlarged + 0.5), 1);

  return finished_bytes (bytes, write_picture (drawing, &view, width, height, enlarged, bytes),
                         error);
}

GBytes *
export_plan_png (const Project *project, int width, GError **error)
{
  const PlanInput input = { .project = project, .set_out = TRUE };
  const double drawn = CLAMP ((double) width, PICTURE_LEAST, PICTURE_MOST);
  const double enlarged = width / drawn;
  g_autoptr (Drawing) drawing = NULL;
  GByteArray *bytes;
  PlanBox box;
  double wide, tall, scale, high;
  View view;

  if (!plan_bounds (project, &box))
    return export_no_plan (error);
  wide = (double) (box.x1 - box.x0) / LENGTH_PER_MM;
  tall = (double) (box.y1 - box.y0) / LENGTH_PER_MM;
  scale = (drawn - 2 * PLAN_SET_OUT_SIDE) / wide;
  /* No higher than wide. */
  scale = MIN (scale, MAX ((drawn - 2 * PLAN_SET_OUT_END) / tall, 1e-6));
  high = tall * scale + 2 * PLAN_SET_OUT_END;
  view = (View){ scale, (drawn - wide * scale) / 2 - (double) box.x0 / LENGTH_PER_MM * scale,
                 high - PLAN_SET_OUT_END + (double) box.y0 / LENGTH_PER_MM * scale };
  drawing = plan_drawing (&input);
  bytes = g_byte_array_new ();
  return finished_bytes (bytes,
                         write_picture (drawing, &view, width,
                                        MAX ((int) (high * enlarged + 0.5), 1), enlarged, bytes),
                         error);
}
