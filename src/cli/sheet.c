/* sheet.c - halfbond-cli sheet: a drawing sheet as PDF, to scale */
#include <glib/gi18n.h>
#include <string.h>

#include "cli/arguments.h"
#include "cli/drawings.h"
#include "cli/output.h"
#include "export/export.h"

static const char *const papers[] = { "A4", "A3", NULL };

typedef struct
{
  DrawingKind kind;
  int scale; /* 1:scale; 0: what fits */
  const char *paper;
} Sheet;

static GBytes *
draw_sheet (const Project *project, const Wall *wall, const Layout *layout, gpointer data,
            GError **error)
{
  const Sheet *sheet = data;

  return export_pdf (project, wall, layout, sheet->kind == DRAWING_CLIENT, sheet->scale,
                     sheet->paper, error);
}

static GBytes *
draw_plan (const Project *project, gpointer data, GError **error)
{
  const Sheet *sheet = data;

  return export_plan_pdf (project, sheet->scale, sheet->paper, error);
}

/* "50" or "1:50". */
static gboolean
read_scale (const char *text, int *out)
{
  guint64 scale;
  const char *number = text && g_str_has_prefix (text, "1:") ? text + 2 : text;

  *out = 0;
  if (!text)
    return TRUE;
  if (!g_ascii_string_to_unsigned (number, 10, 1, 10000, &scale, NULL))
    {
      complain (_ ("--scale: “%s” is not a whole number from 1 to 10000 (50 for 1:50)."), text);
      return FALSE;
    }
  *out = (int) scale;
  return TRUE;
}

static gboolean
read_sheet (const char *kind, const char *scale, const char *paper, Sheet *out)
{
  if (!kind)
    {
      complain (
          _ ("sheet: which kind? Say it with --kind elevation, --kind client or --kind plan."));
      return FALSE;
    }
  const int kind_number = arguments_word ("kind", kind, drawing_kinds);
  const int paper_number = paper ? arguments_word ("paper", paper, papers) : 0;
  if (kind_number < 0 || paper_number < 0 || !read_scale (scale, &out->scale))
    return FALSE;
  out->kind = (DrawingKind) kind_number;
  out->paper = papers[paper_number];
  return TRUE;
}

Status
verb_sheet (int argc, char **argv)
{
  g_autofree char *kind = NULL, *wall = NULL, *scale = NULL, *paper = NULL, *output = NULL;
  const char *file;
  const GOptionEntry entries[] = {
    { "kind", 0, 0, G_OPTION_ARG_STRING, &kind,
      N_ ("elevation (the pieces), client (the finished wall) or plan (the building, to be set out "
          "from)"),
      N_ ("KIND") },
    ARGUMENT_WALL (wall),
    { "scale", 0, 0, G_OPTION_ARG_STRING, &scale,
      N_ ("1:N on paper (the largest usual one that fits)"), N_ ("N") },
    { "paper", 0, 0, G_OPTION_ARG_STRING, &paper, N_ ("A4 (the default) or A3, landscape"),
      N_ ("PAPER") },
    ARGUMENT_OUTPUT (output),
    ARGUMENT_END,
  };
  Sheet sheet;
  g_auto (Laid) laid = { 0 };

  if (!arguments_read ("sheet", entries, argc, argv, &file)
      || !read_sheet (kind, scale, paper, &sheet) || !output_may_be_binary ("sheet", output))
    return STATUS_CALL;
  if (sheet.kind == DRAWING_PLAN && wall != NULL)
    {
      complain (_ ("sheet: a plan is of the whole building; leave --wall out."));
      return STATUS_CALL;
    }
  if (sheet.kind == DRAWING_PLAN)
    return drawings_write_plan ("sheet", file, output, draw_plan, &sheet);
  const Status status = laid_read (file, wall, &laid);
  return status == STATUS_DONE ? drawings_write ("sheet", &laid, output, draw_sheet, &sheet)
                               : status;
}
