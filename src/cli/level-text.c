#include "cli/level-text.h"

#include <glib/gi18n.h>

#include "cli/output.h"
#include "cli/table.h"

static char *
length_word (Length length)
{
  char buffer[LENGTH_TEXT_SIZE];

  return g_strdup (length_text (length, buffer));
}

static char *
word_if (gboolean is, Length length)
{
  return is ? length_word (length) : NULL;
}

static void
append_sentence (GString *text, const char *sentence)
{
  g_autofree char *line = output_line (sentence);

  g_string_append_printf (text, "  %s\n", line);
}

/* ---- the book ---- */

static void
add_book_row (Table *table, const Survey *survey, const LevelBook *book, guint i)
{
  const Reading *reading = survey_reading (survey, i);
  const LevelRow *row = level_row (book, i);

  table_take (table, g_strdup_printf ("%u", i + 1));
  table_add (table, reading->point);
  table_take (table, word_if (reading->given & READING_BACK, reading->back));
  table_take (table, word_if (reading->given & READING_INTER, reading->inter));
  table_take (table, word_if (reading->given & READING_FORE, reading->fore));
  table_take (table, word_if (row->has_rise && row->rise > 0, row->rise));
  table_take (table, word_if (row->has_rise && row->rise < 0, -row->rise));
  table_take (table, word_if (row->begins && row->has_level, row->collimation));
  table_take (table, word_if (row->has_level, row->raw));
  table_take (table, word_if (row->has_level && row->correction != 0, row->correction));
  table_take (table, word_if (row->has_level, row->level));
  table_take (table, word_if (reading->given & READING_LEVEL, reading->level));
}

static void
append_book (GString *text, const Survey *survey, const LevelBook *book)
{
  const char *const heads[]
      = { _ ("Row"),  _ ("Point"),       _ ("Back"),  _ ("Inter"),      _ ("Fore"),  _ ("Rise"),
          _ ("Fall"), _ ("Collimation"), _ ("Level"), _ ("Correction"), _ ("Holds"), _ ("Known") };
  Table table = table_new (G_N_ELEMENTS (heads), 2);

  g_string_append (text, _ ("Level book, mm\n"));
  for (guint i = 0; i < G_N_ELEMENTS (heads); i++)
    table_add (&table, heads[i]);
  for (guint i = 0; i < survey->readings->len; i++)
    add_book_row (&table, survey, book, i);
  table_end (&table, text);
}

static double
mm_of (gint64 length)
{
  return (double) length / LENGTH_PER_MM;
}

static void
append_checks (GString *text, const Survey *survey, const LevelBook *book)
{
  g_string_append (text, _ ("\nChecks\n"));
  g_string_append_printf (
      text,
      _ ("  back %.10g - fore %.10g = %.10g; rises %.10g - falls %.10g = %.10g; last - first = "
         "%.10g: %s\n"),
      mm_of (book->back), mm_of (book->fore), mm_of (book->back - book->fore), mm_of (book->rise),
      mm_of (book->fall), mm_of (book->rise - book->fall), mm_of (book->last_less_first),
      book->agrees ? _ ("they agree") : _ ("they do not agree"));
  if (book->local)
    append_sentence (text, _ ("No level is known: the first point is taken as 0."));
  for (guint i = 0; i < book->closings->len; i++)
    {
      g_autofree char *sentence
          = level_closing_sentence (survey, &g_array_index (book->closings, LevelClosing, i));

      append_sentence (text, sentence);
    }
  if (!book->checked && book->has_levels)
    append_sentence (text, _ ("The book comes back to no point that was known: it is not checked "
                              "whether it closes."));
  for (guint i = 0; i < book->faults->len; i++)
    append_sentence (text, g_array_index (book->faults, LevelFault, i).text);
}

/* ---- the first course ---- */

static void
append_spot (GString *text, const char *format, const BedSpot *spot)
{
  char level[LENGTH_TEXT_SIZE], x[LENGTH_TEXT_SIZE];
  g_autofree char *name = output_line (wall_called (spot->wall));

  g_string_append_printf (text, format, length_text (spot->level, level), name,
                          length_text (spot->x, x));
}

/* What the staff shows there, from where the instrument stood last. */
static void
append_staff (GString *text, const LevelBook *book, Length level)
{
  char is[LENGTH_TEXT_SIZE];

  for (guint i = book->rows->len; i-- > 0;)
    {
      const LevelRow *row = level_row (book, i);

      if (!row->begins || !row->has_level)
        continue;
      g_string_append_printf (text,
                              _ ("  on the staff, from where the instrument stood last: %s mm\n"),
                              length_text (row->collimation + row->correction - level, is));
      return;
    }
}

static void
append_first_course (GString *text, const LevelBook *book, const Beds *beds)
{
  char level[LENGTH_TEXT_SIZE], from[LENGTH_TEXT_SIZE], to[LENGTH_TEXT_SIZE],
      least[LENGTH_TEXT_SIZE], most[LENGTH_TEXT_SIZE];

  g_string_append (text, _ ("\nFirst course\n"));
  append_spot (text, _ ("  highest under the blocks: %s mm (%s at %s mm)\n"), &beds->highest);
  append_spot (text, _ ("  lowest under the blocks: %s mm (%s at %s mm)\n"), &beds->lowest);
  g_string_append_printf (text, _ ("  underside of course 1: %s mm, %s; the mean bed is %.1f mm\n"),
                          length_text (beds->first_course, level),
                          beds->chosen ? _ ("as was asked for") : _ ("found"), beds->mean);
  append_staff (text, book, beds->first_course);
  g_string_append_printf (text, _ ("  zero of the drawing: %s mm\n"),
                          length_text (beds->zero, level));
  length_text (beds->least, least);
  length_text (beds->most, most);
  if (beds->possible)
    g_string_append_printf (text, _ ("  a level from %s to %s mm keeps the bed from %s to %s mm\n"),
                            length_text (beds->from, from), length_text (beds->to, to), least,
                            most);
  else
    g_string_append_printf (
        text, _ ("  no level keeps the bed from %s to %s mm: the footing is too uneven\n"), least,
        most);
}

/* ---- the bed ---- */

static void
add_place (Table *table, const Beds *beds, const Survey *survey, const BedWall *wall,
           const BedPlace *place, const char *name)
{
  const FootPoint *point
      = place->point >= 0 ? &g_array_index (wall->foot, FootPoint, place->point) : NULL;
  const char *judged = NULL;

  if (!place->laid)
    judged = _ ("no blocks here");
  else if (place->bed < beds->least)
    judged = _ ("too thin: grind down");
  else if (place->bed > beds->most)
    judged = _ ("too thick: build up");
  table_add (table, name);
  table_add (table, point ? survey_reading (survey, point->row)->point : NULL);
  table_take (table, length_word (place->x));
  table_take (table, length_word (place->foot));
  table_take (table, length_word (place->bed));
  table_add (table, judged);
}

static void
append_beds (GString *text, const Survey *survey, const Beds *beds)
{
  const char *const heads[]
      = { _ ("Wall"), _ ("Point"), _ ("From left"), _ ("Footing"), _ ("Bed"), NULL };
  Table table = table_new (G_N_ELEMENTS (heads), 2);

  g_string_append (text, _ ("\nLevelling bed, mm\n"));
  for (guint i = 0; i < G_N_ELEMENTS (heads); i++)
    table_add (&table, heads[i]);
  for (guint w = 0; w < beds->walls->len; w++)
    {
      const BedWall *wall = g_ptr_array_index (beds->walls, w);

      for (guint i = 0; i < wall->places->len; i++)
        add_place (&table, beds, survey, wall, &g_array_index (wall->places, BedPlace, i),
                   i == 0 ? wall_called (wall->wall) : NULL);
    }
  table_end (&table, text);
}

static void
append_work (GString *text, const Beds *beds)
{
  g_string_append_printf (text, _ ("\nMortar for the levelling bed: %.1f l\n"), beds->mortar / 1e6);
  for (guint w = 0; w < beds->walls->len; w++)
    {
      const BedWall *wall = g_ptr_array_index (beds->walls, w);

      for (guint i = 0; i < wall->works->len; i++)
        {
          g_autofree char *sentence
              = bed_work_sentence (wall, &g_array_index (wall->works, BedWork, i));

          append_sentence (text, sentence);
        }
    }
  for (guint i = 0; i < beds->notes->len; i++)
    append_sentence (text, g_ptr_array_index (beds->notes, i));
}

/* ---- the corners ---- */

static void
append_squares (GString *text, const Project *project, const GArray *squares)
{
  g_string_append (text, _ ("\nCorners\n"));
  for (guint i = 0; i < squares->len; i++)
    {
      const SquareCheck *check = &g_array_index (squares, SquareCheck, i);
      g_autofree char *sentence = square_sentence (project, check);
      g_autofree char *along = output_line (wall_called (check->along));
      g_autofree char *across = output_line (wall_called (check->across));
      char first[LENGTH_TEXT_SIZE], second[LENGTH_TEXT_SIZE], diagonal[LENGTH_TEXT_SIZE];

      append_sentence (text, sentence);
      if (check->check.diagonal > 0)
        g_string_append_printf (
            text,
            _ ("    to check it by 3-4-5: mark %s mm along %s, %s mm along %s; the marks are to be "
               "%s mm apart\n"),
            length_text (check->check.first, first), along,
            length_text (check->check.second, second), across,
            length_text (check->check.diagonal, diagonal));
    }
}

void
level_text (GString *text, const Project *project, const LevelBook *book, const Beds *beds,
            const GArray *squares)
{
  const Survey *survey = project->survey;

  append_book (text, survey, book);
  append_checks (text, survey, book);
  if (beds->known)
    {
      append_first_course (text, book, beds);
      append_beds (text, survey, beds);
      append_work (text, beds);
    }
  else
    g_string_append (text,
                     _ ("\nNo point that has a level is on a wall, so the first course is not "
                        "known.\n"));
  if (squares->len > 0)
    append_squares (text, project, squares);
  g_string_append (text, _ ("\nThis is advice: local practice and the engineer decide.\n"));
}
