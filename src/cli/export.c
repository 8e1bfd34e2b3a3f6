/* export.c - halfbond-cli export: a wall's drawing or the pieces in an open format */
#include "export/export.h"

#include <glib/gi18n.h>
#include <string.h>

#include "cli/arguments.h"
#include "cli/drawings.h"
#include "cli/output.h"

#define PNG_WIDTH 1600

typedef enum
{
  TO_SVG,
  TO_PNG,
  TO_CSV,
  TO_ODS,
  TO_IFC,
} Format;

static const char *const formats[] = {
  [TO_SVG] = "svg", [TO_PNG] = "png", [TO_CSV] = "csv", [TO_ODS] = "ods", [TO_IFC] = "ifc", NULL,
};

typedef struct
{
  Format format;
  DrawingKind kind;
  int width; /* of a PNG, pixels */
} Export;

static GBytes *
draw (const Project *project, const Wall *wall, const Layout *layout, gpointer data, GError **error)
{
  const Export *export = data;
  const gboolean client = export->kind == DRAWING_CLIENT;

  if (export->format == TO_SVG)
    return export_svg (project, wall, layout, client, error);
  return export_png (project, wall, layout, client, export->width, error);
}

static GBytes *
draw_plan (const Project *project, gpointer data, GError **error)
{
  const Export *export = data;

  return export->format == TO_SVG ? export_plan_svg (project, error)
                                  : export_plan_png (project, export->width, error);
}

static Status
write_pieces (const Laid *laid, const char *wall, const char *output)
{
  g_autofree char *csv = export_pieces_csv (
      laid->project, laid->layouts, wall ? project_wall_at (laid->project, laid->first) : NULL);

  return output_verdict (laid_verdict (laid), output_bytes (output, laid->path, csv, strlen (csv)));
}

static gboolean
read_export (const char *to, const char *kind, int width, Export *out)
{
  if (!to)
    {
      complain (_ ("export: to what? Say it with --to svg, --to png or --to csv."));
      return FALSE;
    }
  const int format = arguments_word ("to", to, formats);
  const int kind_number = kind ? arguments_word ("kind", kind, drawing_kinds) : DRAWING_ELEVATION;
  if (format < 0 || kind_number < 0)
    return FALSE;
  if (format == TO_ODS || format == TO_IFC)
    {
      complain (_ ("export: this version does not write %s yet; it writes svg, png and csv."), to);
      return FALSE;
    }
  if (width < 16 || width > 20000)
    {
      complain (_ ("--width: %d is not from 16 to 20000 pixels."), width);
      return FALSE;
    }
  *out = (Export){ .format = (Format) format, .kind = (DrawingKind) kind_number, .width = width };
  return TRUE;
}

/* A plan is of all walls, and a picture. */
static gboolean
is_clear (Export *export, gboolean plan, const char *kind, const char *wall)
{
  if (plan && kind != NULL && export->kind != DRAWING_PLAN)
    {
      complain (_ ("export: --plan and --kind %s do not go together."), kind);
      return FALSE;
    }
  if (plan)
    export->kind = DRAWING_PLAN;
  if (export->kind != DRAWING_PLAN)
    return TRUE;
  if (wall != NULL)
    complain (_ ("export: a plan is of the whole building; leave --wall out."));
  else if (export->format == TO_CSV)
    complain (_ ("export: a plan is a drawing; say --to svg or --to png."));
  else
    return TRUE;
  return FALSE;
}

Status
verb_export (int argc, char **argv)
{
  g_autofree char *to = NULL, *kind = NULL, *wall = NULL, *output = NULL;
  int width = PNG_WIDTH;
  gboolean plan = FALSE;
  const char *file;
  const GOptionEntry entries[] = {
    { "to", 0, 0, G_OPTION_ARG_STRING, &to, N_ ("svg or png (the drawing), csv (the pieces)"),
      N_ ("FORMAT") },
    { "kind", 0, 0, G_OPTION_ARG_STRING, &kind, N_ ("elevation (the default), client or plan"),
      N_ ("KIND") },
    { "plan", 0, 0, G_OPTION_ARG_NONE, &plan,
      N_ ("The building in plan, to be set out from: the same as --kind plan"), NULL },
    { "width", 0, 0, G_OPTION_ARG_INT, &width, N_ ("Of a PNG, in pixels (1600)"), N_ ("PIXELS") },
    ARGUMENT_WALL (wall),
    ARGUMENT_OUTPUT (output),
    ARGUMENT_END,
  };
  Export export;
  g_auto (Laid) laid = { 0 };

  if (!arguments_read ("export", entries, argc, argv, &file)
      || !read_export (to, kind, width, &export) || !is_clear (&export, plan, kind, wall)
      || (export.format == TO_PNG && !output_may_be_binary ("export", output)))
    return STATUS_CALL;
  if (export.kind == DRAWING_PLAN)
    return drawings_write_plan ("export", file, output, draw_plan, &export);
  const Status status = laid_read (file, wall, &laid);
  if (status != STATUS_DONE)
    return status;
  if (export.format == TO_CSV)
    return write_pieces (&laid, wall, output);
  return drawings_write ("export", &laid, output, draw, &export);
}
