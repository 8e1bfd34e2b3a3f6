/* level.c - halfbond-cli level: the survey of the footing reduced, and the first course by it */
#include <glib/gi18n.h>

#include "cli/arguments.h"
#include "cli/json.h"
#include "cli/laid.h"
#include "cli/level-text.h"
#include "cli/output.h"
#include "export/export.h"

/* A cubic millimetre in litres. */
#define LITRES 1e-6
#define LITRE_DECIMALS 6
/* 1/320 mm is 0.003125 mm. */
#define MM_DECIMALS 6

typedef struct
{
  const Project *project;
  LevelBook *book;
  Beds *beds;
  GArray *squares;
} Levelled;

static void
number_of_sum (Json *json, const char *key, gint64 length)
{
  json_number (json, key, (double) length / LENGTH_PER_MM, MM_DECIMALS);
}

static void
write_sights (Json *json, const Reading *reading)
{
  if (reading->given & READING_BACK)
    json_length (json, "back", reading->back);
  if (reading->given & READING_INTER)
    json_length (json, "inter", reading->inter);
  if (reading->given & READING_FORE)
    json_length (json, "fore", reading->fore);
  if (reading->given & READING_LEVEL)
    json_length (json, "known", reading->level);
}

static void
write_row (Json *json, const Levelled *levelled, guint i)
{
  const Reading *reading = survey_reading (levelled->project->survey, i);
  const LevelRow *row = level_row (levelled->book, i);

  json_object (json, NULL);
  json_int (json, "row", i + 1);
  json_string (json, "point", reading->point);
  write_sights (json, reading);
  if (row->setup > 0)
    json_int (json, "setup", row->setup);
  if (row->has_rise)
    json_length (json, "rise", row->rise);
  if (row->begins && row->has_level)
    json_length (json, "collimation", row->collimation);
  if (row->has_level)
    {
      json_length (json, "raw", row->raw);
      json_length (json, "correction", row->correction);
      json_length (json, "level", row->level);
    }
  json_object_end (json);
}

static void
write_closing (Json *json, const Survey *survey, const LevelClosing *closing)
{
  g_autofree char *text = level_closing_sentence (survey, closing);

  json_object (json, NULL);
  json_int (json, "row", closing->row + 1);
  json_int (json, "from", closing->from + 1);
  json_int (json, "setups", closing->setups);
  json_length (json, "error", closing->error);
  json_length (json, "allowed", closing->allowed);
  json_bool (json, "within", closing->within);
  json_bool (json, "shared", closing->shared);
  json_string (json, "text", text);
  json_object_end (json);
}

static void
write_book (Json *json, const Levelled *levelled)
{
  const LevelBook *book = levelled->book;

  json_object (json, "book");
  json_array (json, "rows");
  for (guint i = 0; i < book->rows->len; i++)
    write_row (json, levelled, i);
  json_array_end (json);
  json_int (json, "setups", book->n_setups);
  number_of_sum (json, "back", book->back);
  number_of_sum (json, "fore", book->fore);
  number_of_sum (json, "rise", book->rise);
  number_of_sum (json, "fall", book->fall);
  number_of_sum (json, "last_less_first", book->last_less_first);
  json_bool (json, "agrees", book->agrees);
  json_bool (json, "closes", book->closes);
  json_bool (json, "checked", book->checked);
  json_bool (json, "local", book->local);
  json_array (json, "closings");
  for (guint i = 0; i < book->closings->len; i++)
    write_closing (json, levelled->project->survey,
                   &g_array_index (book->closings, LevelClosing, i));
  json_array_end (json);
  json_array (json, "faults");
  for (guint i = 0; i < book->faults->len; i++)
    {
      const LevelFault *fault = &g_array_index (book->faults, LevelFault, i);

      json_object (json, NULL);
      json_int (json, "row", fault->row + 1);
      json_string (json, "text", fault->text);
      json_object_end (json);
    }
  json_array_end (json);
  json_object_end (json);
}

static void
write_spot (Json *json, const char *key, const BedSpot *spot)
{
  json_object (json, key);
  json_string (json, "wall", spot->wall->key);
  json_length (json, "x", spot->x);
  json_length (json, "level", spot->level);
  json_object_end (json);
}

static void
write_first_course (Json *json, const Beds *beds)
{
  json_object (json, "first_course");
  json_length (json, "level", beds->first_course);
  json_length (json, "zero", beds->zero);
  json_bool (json, "chosen", beds->chosen);
  json_bool (json, "possible", beds->possible);
  if (beds->possible)
    {
      json_length (json, "from", beds->from);
      json_length (json, "to", beds->to);
    }
  json_bool (json, "within", beds->within);
  json_number (json, "mean_bed", beds->mean, MM_DECIMALS);
  write_spot (json, "highest", &beds->highest);
  write_spot (json, "lowest", &beds->lowest);
  json_number (json, "mortar", beds->mortar * LITRES, LITRE_DECIMALS);
  json_number (json, "ground", beds->ground * LITRES, LITRE_DECIMALS);
  json_number (json, "built", beds->built * LITRES, LITRE_DECIMALS);
  json_object_end (json);
}

static void
write_place (Json *json, const Survey *survey, const BedWall *wall, const BedPlace *place)
{
  json_object (json, NULL);
  json_length (json, "x", place->x);
  if (place->point >= 0)
    json_string (
        json, "point",
        survey_reading (survey, g_array_index (wall->foot, FootPoint, place->point).row)->point);
  json_length (json, "footing", place->foot);
  json_length (json, "bed", place->bed);
  json_bool (json, "laid", place->laid);
  json_object_end (json);
}

static void
write_work (Json *json, const BedWork *work)
{
  json_object (json, NULL);
  json_string (json, "do", work->grind ? "grind" : "build");
  json_length (json, "from", work->from);
  json_length (json, "to", work->to);
  json_length (json, "at", work->at);
  json_length (json, "amount", work->amount);
  json_number (json, "volume", work->volume * LITRES, LITRE_DECIMALS);
  json_object_end (json);
}

static void
write_wall (Json *json, const Survey *survey, const BedWall *wall)
{
  json_object (json, NULL);
  json_string (json, "id", wall->wall->key);
  json_string (json, "name", wall->wall->name);
  json_length (json, "thinnest", wall->thinnest);
  json_length (json, "thickest", wall->thickest);
  json_number (json, "mortar", wall->mortar * LITRES, LITRE_DECIMALS);
  json_array (json, "places");
  for (guint i = 0; i < wall->places->len; i++)
    write_place (json, survey, wall, &g_array_index (wall->places, BedPlace, i));
  json_array_end (json);
  json_array (json, "works");
  for (guint i = 0; i < wall->works->len; i++)
    write_work (json, &g_array_index (wall->works, BedWork, i));
  json_array_end (json);
  json_object_end (json);
}

static void
write_square (Json *json, const Project *project, const SquareCheck *check)
{
  g_autofree char *text = square_sentence (project, check);

  json_object (json, NULL);
  json_string (json, "name", survey_diagonal (project->survey, check->diagonal)->name);
  json_string (json, "along", check->along->key);
  json_string (json, "across", check->across->key);
  json_length (json, "first", check->first);
  json_length (json, "second", check->second);
  json_length (json, "measured", check->measured);
  json_length (json, "square", check->expected);
  if (check->possible)
    {
      json_length (json, "off_along", check->off_along);
      json_length (json, "off_across", check->off_across);
    }
  json_bool (json, "within", check->within);
  json_array (json, "three_four_five");
  json_length (json, NULL, check->check.first);
  json_length (json, NULL, check->check.second);
  json_length (json, NULL, check->check.diagonal);
  json_array_end (json);
  json_string (json, "text", text);
  json_object_end (json);
}

static void
write_json (GString *text, const Levelled *levelled)
{
  const Beds *beds = levelled->beds;
  Json json = json_begin (text);

  json_object (&json, NULL);
  json_string (&json, "schema", "halfbond.level/1");
  write_book (&json, levelled);
  if (beds->known)
    write_first_course (&json, beds);
  json_array (&json, "walls");
  for (guint i = 0; beds->known && i < beds->walls->len; i++)
    write_wall (&json, levelled->project->survey, g_ptr_array_index (beds->walls, i));
  json_array_end (&json);
  json_array (&json, "squares");
  for (guint i = 0; i < levelled->squares->len; i++)
    write_square (&json, levelled->project, &g_array_index (levelled->squares, SquareCheck, i));
  json_array_end (&json);
  json_array (&json, "notes");
  for (guint i = 0; i < beds->notes->len; i++)
    json_string (&json, NULL, g_ptr_array_index (beds->notes, i));
  json_array_end (&json);
  json_object_end (&json);
  json_end (&json);
}

typedef struct
{
  gboolean as_json, as_csv, book;
} Form;

static void
write_levelled (GString *text, const Levelled *levelled, const Form *form)
{
  if (form->as_json)
    write_json (text, levelled);
  else if (form->as_csv)
    {
      g_autofree char *csv = form->book ? export_book_csv (levelled->project, levelled->book)
                                        : export_beds_csv (levelled->project, levelled->beds);

      g_string_append (text, csv);
    }
  else
    level_text (text, levelled->project, levelled->book, levelled->beds, levelled->squares);
}

/* A book that does not close, or that cannot be read to its end, is not to be laid by. */
static Status
level_project (const Project *project, const Form *form, GString *text)
{
  Levelled levelled = { .project = project };
  gboolean good;

  levelled.book = level_book_new (project->survey);
  levelled.beds = beds_new (project, levelled.book);
  levelled.squares = square_checks (project);
  write_levelled (text, &levelled, form);
  good = levelled.book->closes && levelled.book->agrees && levelled.book->faults->len == 0;
  level_book_free (levelled.book);
  beds_free (levelled.beds);
  g_array_unref (levelled.squares);
  return good ? STATUS_DONE : STATUS_BREACH;
}

static Status
level_nothing (const Form *form, GString *text)
{
  g_autoptr (Project) empty = project_new ();

  if (!form->as_json && !form->as_csv)
    {
      g_string_append (text, _ ("There is no survey in this project.\n"));
      return STATUS_DONE;
    }
  empty->survey = survey_new ();
  return level_project (empty, form, text);
}

Status
verb_level (int argc, char **argv)
{
  Form form = { FALSE, FALSE, FALSE };
  g_autofree char *output = NULL;
  const char *file;
  const GOptionEntry entries[] = {
    ARGUMENT_JSON (form.as_json),
    { "csv", 0, 0, G_OPTION_ARG_NONE, &form.as_csv,
      N_ ("Write the levelling bed as CSV (RFC 4180)"), NULL },
    { "book", 0, 0, G_OPTION_ARG_NONE, &form.book, N_ ("With --csv: the reduced level book"),
      NULL },
    ARGUMENT_OUTPUT (output),
    ARGUMENT_END,
  };
  g_autoptr (Project) project = NULL;
  g_autoptr (GString) text = g_string_new (NULL);

  if (!arguments_read ("level", entries, argc, argv, &file))
    return STATUS_CALL;
  if ((form.as_json && form.as_csv) || (form.book && !form.as_csv))
    {
      complain (form.book && !form.as_csv ? _ ("level: --book goes with --csv.")
                                          : _ ("level: --json and --csv cannot both be written."));
      return STATUS_CALL;
    }
  const Status status = laid_project (file, &project);
  if (status != STATUS_DONE)
    return status;
  const Status verdict
      = project->survey ? level_project (project, &form, text) : level_nothing (&form, text);
  return output_verdict (verdict, output_text (output, file, text));
}
