/* lay.c - halfbond-cli lay: every piece of every course */
#include <glib/gi18n.h>

#include "bond/rake.h"
#include "bond/shared.h"
#include "cli/arguments.h"
#include "cli/json.h"
#include "cli/laid.h"
#include "cli/lay-text.h"
#include "cli/output.h"
#include "cli/saw-list.h"
#include "concrete/bed-steel.h"
#include "concrete/ties.h"

static void
write_outline (Json *json, const Layout *layout, const Piece *piece)
{
  json_array (json, "outline");
  for (gint32 i = piece->outline; i < piece->outline + piece->n_outline; i++)
    {
      const LayPoint *point = &g_array_index (layout->points, LayPoint, (guint) i);
      json_array (json, NULL);
      json_length (json, NULL, point->x);
      json_length (json, NULL, point->z);
      json_array_end (json);
    }
  json_array_end (json);
}

/* How it is marked and sawn: its two edges along the wall, the longer first, and the cut's angle
 * against the level. */
static void
write_rake (Json *json, const Layout *layout, const Piece *piece)
{
  Rake rake;

  if (!piece_rake (layout, piece, &rake))
    return;
  json_length (json, "long", MAX (rake.bottom, rake.top));
  json_length (json, "short", MIN (rake.bottom, rake.top));
  json_length (json, "left", rake.left);
  json_length (json, "right", rake.right);
  json_number (json, "angle", rake_angle (&rake), 1);
}

/* A wall on its way to JSON. */
typedef struct
{
  guint number; /* in the project */
  const Wall *wall;
  const Block *block;
  const Layout *layout;
  const SawPlan *saw;
  const Laid *laid;
  const GArray *shared; /* SharedPiece: what it shows of other walls */
  const GArray *rows;   /* TieRow: its ties */
  const GArray *ends;   /* TieEnd: those of other walls */
} Written;

static void
write_piece (Json *json, const Written *written, guint i)
{
  const Piece *piece = layout_piece (written->layout, i);
  g_autofree char *id
      = g_strdup_printf ("%s/%d/%d", written->wall->key, piece->course, piece->number);

  json_object (json, NULL);
  json_string (json, "id", id);
  json_length (json, "x", piece->x);
  json_length (json, "length", piece->length);
  json_length (json, "bottom", piece->bottom);
  json_length (json, "height", piece->height);
  json_bool (json, "cut", piece->shape != PIECE_WHOLE);
  json_string (json, "shape", piece_shape_word (piece->shape));
  if (piece->pinned != PINNED_NOT)
    json_bool (json, "pinned", TRUE);
  if (layout_course (written->layout, (guint) piece->course - 1)->stands && !piece->stands)
    json_bool (json, "stands", FALSE);
  if (piece->outline >= 0)
    write_outline (json, written->layout, piece);
  if (piece->shape == PIECE_RAKED)
    write_rake (json, written->layout, piece);
  saw_piece_json (json, written->block, written->saw, written->number, i);
  json_object_end (json);
}

static void
write_steel (Json *json, const GArray *runs, gint32 course)
{
  json_array (json, "steel");
  for (guint i = 0; i < runs->len; i++)
    {
      const SteelRun *run = &g_array_index (runs, SteelRun, i);
      if (run->course != course)
        continue;
      json_object (json, NULL);
      json_length (json, "from", run->from);
      json_length (json, "to", run->to);
      json_int (json, "bars", run->bars);
      json_length (json, "diameter", run->diameter);
      json_object_end (json);
    }
  json_array_end (json);
}

/* Where ties of a butted wall lie on this course: this wall's own, and those of other walls. */
static void
write_ties (Json *json, const Written *written, gint32 course)
{
  gboolean any = FALSE;

  for (guint i = 0; i < written->rows->len; i++)
    {
      const TieRow *row = &g_array_index (written->rows, TieRow, i);

      if (row->course != course)
        continue;
      if (!any)
        json_array (json, "ties");
      any = TRUE;
      json_object (json, NULL);
      json_string (json, "kind", tie_kind_word (row->kind));
      json_int (json, "abreast", row->abreast);
      json_length (json, "x", row->x);
      json_object_end (json);
    }
  for (guint i = 0; i < written->ends->len; i++)
    {
      const TieEnd *end = &g_array_index (written->ends, TieEnd, i);

      if (end->course != course)
        continue;
      if (!any)
        json_array (json, "ties");
      any = TRUE;
      json_object (json, NULL);
      json_string (json, "kind", tie_kind_word (end->kind));
      json_int (json, "abreast", end->abreast);
      json_length (json, "x", end->x);
      json_length (json, "width", end->width);
      json_string (json, "of", project_wall (written->laid->project, end->butted)->key);
      json_object_end (json);
    }
  if (any)
    json_array_end (json);
}

/* Pieces of other walls that are seen in this course: theirs, and counted there. */
static void
write_shared (Json *json, const Written *written, gint32 course)
{
  gboolean any = FALSE;

  for (guint i = 0; i < written->shared->len; i++)
    {
      const SharedPiece *shared = &g_array_index (written->shared, SharedPiece, i);
      const Piece *piece;
      g_autofree char *id = NULL;

      if (shared->course != course)
        continue;
      if (!any)
        json_array (json, "others");
      any = TRUE;
      piece = layout_piece (written->laid->layouts[shared->wall], shared->piece);
      id = g_strdup_printf ("%s/%d/%d", project_wall_at (written->laid->project, shared->wall)->key,
                            piece->course, piece->number);
      json_object (json, NULL);
      json_string (json, "id", id);
      json_length (json, "x", shared->x);
      json_length (json, "length", shared->length);
      json_object_end (json);
    }
  if (any)
    json_array_end (json);
}

static void
write_course (Json *json, const Written *written, const Course *course, const GArray *runs)
{
  json_object (json, NULL);
  json_int (json, "course", course->number);
  json_length (json, "bottom", course->bottom);
  json_length (json, "top", course->top);
  if (course->stands)
    json_bool (json, "stands", TRUE);
  write_steel (json, runs, course->number);
  write_ties (json, written, course->number);
  json_array (json, "pieces");
  for (gint32 i = course->first; i < course->first + course->n_pieces; i++)
    write_piece (json, written, (guint) i);
  json_array_end (json);
  write_shared (json, written, course->number);
  json_object_end (json);
}

/* Of the aim `least-waste`; the count is the take-off's. */
static void
write_order (Json *json, const Written *written)
{
  json_int (json, "to_order",
            saw_wall_units (written->wall, written->block, written->layout, NULL));
  json_int (json, "to_order_at_least", written->layout->proof.to_order_at_least);
}

static void
write_sums (Json *json, const Written *written)
{
  const Layout *layout = written->layout;

  json_object (json, "totals");
  json_int (json, "pieces", layout->pieces->len);
  json_int (json, "whole", layout->n_whole);
  json_int (json, "cut", layout->n_cut);
  json_object_end (json);
  json_object (json, "proof");
  json_int (json, "breaches", layout->proof.breaches);
  json_int (json, "cuts", layout->proof.cuts);
  json_int (json, "cuts_at_least", layout->proof.cuts_at_least);
  json_bool (json, "proven", layout->proof.proven);
  json_int (json, "breaches_at_least", layout->proof.breaches_at_least);
  if (layout->proof.to_order > 0)
    write_order (json, written);
  json_object_end (json);
}

static void
write_wall (Json *json, const Written *written)
{
  const Wall *wall = written->wall;
  const Layout *layout = written->layout;
  g_autoptr (GArray) runs = bed_steel_runs (wall, written->block);

  json_object (json, NULL);
  json_string (json, "id", wall->key);
  json_string (json, "name", wall->name);
  json_array (json, "courses");
  for (guint i = 0; i < layout->courses->len; i++)
    write_course (json, written, layout_course (layout, i), runs);
  json_array_end (json);
  write_sums (json, written);
  json_object_end (json);
}

static void
write_json (GString *text, const Laid *laid)
{
  Json json = json_begin (text);
  g_autoptr (GPtrArray) saws = saw_plans_new (laid->project, laid->layouts, NULL, NULL);

  json_object (&json, NULL);
  json_string (&json, "schema", "halfbond.lay/1");
  json_array (&json, "walls");
  for (guint i = laid->first; i < laid->first + laid->n; i++)
    {
      const Wall *wall = project_wall_at (laid->project, i);
      g_autoptr (GArray) shared = shared_pieces (laid->project, laid->layouts, i);
      g_autoptr (GArray) rows = ties_of_wall (wall, laid_block (laid, wall));
      g_autoptr (GArray) ends = ties_into_wall (laid->project, i);
      const Written written = { i,
                                wall,
                                laid_block (laid, wall),
                                laid->layouts[i],
                                saw_plan_of_wall (saws, laid->project, wall),
                                laid,
                                shared,
                                rows,
                                ends };
      write_wall (&json, &written);
    }
  json_array_end (&json);
  json_object_end (&json);
  json_end (&json);
}

static void
write_text (GString *text, const Laid *laid)
{
  for (guint i = laid->first; i < laid->first + laid->n; i++)
    {
      if (i > laid->first)
        g_string_append_c (text, '\n');
      lay_text (text, laid->project, i, laid->layouts[i]);
    }
}

Status
verb_lay (int argc, char **argv)
{
  gboolean as_json = FALSE;
  g_autofree char *wall = NULL, *output = NULL;
  const char *file;
  const GOptionEntry entries[] = {
    ARGUMENT_WALL (wall),
    ARGUMENT_JSON (as_json),
    ARGUMENT_OUTPUT (output),
    ARGUMENT_END,
  };
  g_auto (Laid) laid = { 0 };

  if (!arguments_read ("lay", entries, argc, argv, &file))
    return STATUS_CALL;
  const Status status = laid_read (file, wall, &laid);
  if (status != STATUS_DONE)
    return status;

  g_autoptr (GString) text = g_string_new (NULL);
  if (as_json)
    laid_lay_all (&laid);
  (as_json ? write_json : write_text) (text, &laid);
  return output_verdict (laid_verdict (&laid), output_text (output, file, text));
}
