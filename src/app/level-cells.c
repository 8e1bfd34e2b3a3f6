#include "app/level-cells.h"

#include <glib/gi18n.h>
#include <string.h>

#define LEVEL_CELL_ERROR (g_quark_from_static_string ("hb-level-cell"))

static gboolean G_GNUC_PRINTF (2, 3) refuse (GError **error, const char *format, ...)
{
  va_list arguments;

  va_start (arguments, format);
  g_autofree char *sentence = g_strdup_vprintf (format, arguments);
  va_end (arguments);
  g_set_error_literal (error, LEVEL_CELL_ERROR, 0, sentence);
  return FALSE;
}

/* ---- numbers ---- */

/* "1.205" or "-2,956": digits, a point, three digits, and nothing else. */
static gboolean
is_metres (const char *text)
{
  const char *p = text + (*text == '-' || *text == '+');
  gsize whole = strspn (p, "0123456789");

  p += whole;
  return whole > 0 && (*p == '.' || *p == ',') && strspn (p + 1, "0123456789") == 3 && p[4] == '\0';
}

gboolean
level_parse (const char *text, Length *out)
{
  g_autofree char *bare = g_strstrip (g_strdup (text));
  g_autofree char *metres = is_metres (bare) ? g_strconcat (bare, "m", NULL) : NULL;

  return length_parse_typed (metres ? metres : bare, out);
}

static gboolean
read_length (const char *text, Length *out, GError **error)
{
  if (level_parse (text, out))
    return TRUE;
  return refuse (error,
                 _ ("“%s” is not understood. A length is 1250, 1.250 (metres), 125 cm or 4' 1\"."),
                 text);
}

/* ---- walls ---- */

static const Wall *
find_wall (const Project *project, const char *word)
{
  char *end;
  guint64 number = g_ascii_strtoull (word, &end, 10);

  if (*word && *end == '\0' && number >= 1 && number <= project->walls->len)
    return project_wall_at (project, (guint) number - 1);
  for (guint i = 0; i < project->walls->len; i++)
    {
      const Wall *wall = project_wall_at (project, i);

      if (g_strcmp0 (wall->key, word) == 0 || g_ascii_strcasecmp (wall->name, word) == 0)
        return wall;
    }
  return NULL;
}

static gboolean
read_wall (const Project *project, const char *word, const Wall **wall, GError **error)
{
  *wall = find_wall (project, word);
  if (*wall)
    return TRUE;
  return refuse (error,
                 _ ("There is no wall “%s”: name it by its number in the list of walls, 1 to %u."),
                 word, project->walls->len);
}

static guint
wall_number (const Project *project, WallId id)
{
  for (guint i = 0; i < project->walls->len; i++)
    if (project_wall_at (project, i)->id.n == id.n)
      return i + 1;
  return 0;
}

/* ---- places ---- */

static char *
where_text (const Project *project, const Reading *reading)
{
  g_autoptr (GString) text = g_string_new (NULL);

  for (guint i = 0; i < reading->places->len; i++)
    {
      const SurveyPlace *place = reading_place (reading, i);
      const Wall *wall = project_wall (project, place->wall);
      g_autofree char *x = length_format (place->x);

      if (!wall)
        continue;
      g_string_append_printf (text, "%s%u %s", text->len ? ", " : "",
                              wall_number (project, wall->id),
                              place->x == 0              ? _ ("left")
                              : place->x == wall->length ? _ ("right")
                                                         : x);
    }
  return g_strdup (text->str);
}

/* The word, its first letter, or the word of the language. */
static gboolean
is_word (const char *text, const char *english, const char *translated)
{
  return g_ascii_strcasecmp (text, english) == 0
         || (g_ascii_tolower (text[0]) == english[0] && text[1] == '\0')
         || g_str_equal (text, translated);
}

static gboolean
read_x (const Wall *wall, const char *word, Length *x, GError **error)
{
  if (is_word (word, "left", _ ("left")))
    *x = 0;
  else if (is_word (word, "right", _ ("right")))
    *x = wall->length;
  else if (!length_parse_typed (word, x) || *x < 0)
    return refuse (error,
                   _ ("“%s” is no place on a wall: left, right, or millimetres from its left end."),
                   word);
  return TRUE;
}

/* "Lane side 2400": all but the last word is the wall. */
static gboolean
read_place (const Project *project, const char *text, WallId *id, Length *x, GError **error)
{
  g_autofree char *words = g_strstrip (g_strdup (text));
  char *last = strrchr (words, ' ');
  const Wall *wall;

  if (!last)
    return refuse (error,
                   _ ("“%s” is not understood. A place is a wall and where on it: 1 left, 2 2400."),
                   words);
  *last++ = '\0';
  g_strchomp (words);
  if (!read_wall (project, words, &wall, error) || !read_x (wall, last, x, error))
    return FALSE;
  *id = wall->id;
  return TRUE;
}

static gboolean
set_where (const Project *project, Reading *reading, const char *text, GError **error)
{
  g_auto (GStrv) parts = g_strsplit_set (text, ",;", -1);
  g_autoptr (Survey) scratch = survey_new ();
  Reading *said = survey_add_reading (scratch);

  for (guint i = 0; parts[i]; i++)
    {
      WallId wall;
      Length x;

      if (!*g_strstrip (parts[i]))
        continue;
      if (!read_place (project, parts[i], &wall, &x, error))
        return FALSE;
      reading_add_place (said, wall, x);
    }
  g_array_set_size (reading->places, 0);
  for (guint i = 0; i < said->places->len; i++)
    reading_add_place (reading, reading_place (said, i)->wall, reading_place (said, i)->x);
  return TRUE;
}

/* ---- the book ---- */

static Length *
sight (Reading *reading, guint column, guint *bit)
{
  switch (column)
    {
    case LEVEL_BACK:
      *bit = READING_BACK;
      return &reading->back;
    case LEVEL_INTER:
      *bit = READING_INTER;
      return &reading->inter;
    case LEVEL_FORE:
      *bit = READING_FORE;
      return &reading->fore;
    case LEVEL_KNOWN:
    default:
      *bit = READING_LEVEL;
      return &reading->level;
    }
}

static gboolean
set_sight (Reading *reading, guint column, const char *text, GError **error)
{
  guint bit;
  Length *value = sight (reading, column, &bit), length;

  if (!*text)
    {
      reading->given &= ~bit;
      return TRUE;
    }
  if (!read_length (text, &length, error))
    return FALSE;
  *value = length;
  reading->given |= bit;
  return TRUE;
}

static gboolean
set_reading_column (const Project *project, Reading *reading, guint column, const char *text,
                    GError **error)
{
  if (column == LEVEL_WHERE)
    return set_where (project, reading, text, error);
  if (column != LEVEL_POINT)
    return set_sight (reading, column, text, error);
  g_free (reading->point);
  reading->point = g_strdup (text);
  return TRUE;
}

static gboolean
set_reading (const Project *project, Survey *survey, LevelCell cell, const char *text,
             GError **error)
{
  gboolean added = cell.row >= survey->readings->len;
  Reading *reading;

  if (added && !*text)
    return TRUE;
  reading
      = added ? survey_add_reading (survey) : &g_array_index (survey->readings, Reading, cell.row);
  if (set_reading_column (project, reading, cell.column, text, error))
    return TRUE;
  if (added)
    g_array_set_size (survey->readings, survey->readings->len - 1);
  return FALSE;
}

static char *
reading_text (const Project *project, const Survey *survey, LevelCell cell)
{
  const Reading *reading;
  guint bit;
  Length value;

  if (cell.row >= survey->readings->len)
    return g_strdup ("");
  reading = survey_reading (survey, cell.row);
  if (cell.column == LEVEL_POINT)
    return g_strdup (reading->point);
  if (cell.column == LEVEL_WHERE)
    return where_text (project, reading);
  value = *sight ((Reading *) reading, cell.column, &bit);
  return reading->given & bit ? length_format (value) : g_strdup ("");
}

/* ---- the limits ---- */

static Length *
limit (Survey *survey, guint column, guint *bit)
{
  Length *const values[] = {
    [LEVEL_LEAST] = &survey->least,         [LEVEL_WANTED] = &survey->wanted,
    [LEVEL_MOST] = &survey->most,           [LEVEL_FIRST_COURSE] = &survey->first_course,
    [LEVEL_TOLERANCE] = &survey->tolerance, [LEVEL_SQUARE] = &survey->square,
    [LEVEL_TAPE] = &survey->tape,
  };
  static const guint bits[] = {
    [LEVEL_LEAST] = SURVEY_LEAST,         [LEVEL_WANTED] = SURVEY_WANTED,
    [LEVEL_MOST] = SURVEY_MOST,           [LEVEL_FIRST_COURSE] = SURVEY_FIRST_COURSE,
    [LEVEL_TOLERANCE] = SURVEY_TOLERANCE, [LEVEL_SQUARE] = SURVEY_SQUARE,
    [LEVEL_TAPE] = SURVEY_TAPE,
  };

  *bit = bits[column];
  return values[column];
}

static gboolean
set_limit (Survey *survey, guint column, const char *text, GError **error)
{
  g_autoptr (Survey) plain = survey_new ();
  guint bit;
  Length *value = limit (survey, column, &bit), length;

  if (!*text)
    {
      survey->given &= ~bit;
      *value = *limit (plain, column, &bit);
      return TRUE;
    }
  if (column == LEVEL_FIRST_COURSE ? !read_length (text, &length, error)
                                   : !length_parse_typed (text, &length))
    return column == LEVEL_FIRST_COURSE
               ? FALSE
               : refuse (error, _ ("“%s” is not understood as a length."), text);
  *value = length;
  survey->given |= bit;
  return TRUE;
}

/* ---- the diagonals ---- */

static char *
diagonal_text (const Project *project, const Survey *survey, guint row)
{
  const Diagonal *diagonal;
  g_autoptr (GString) text = g_string_new (NULL);
  g_autofree char *length = NULL, *first = NULL, *second = NULL;

  if (row >= survey->diagonals->len)
    return g_strdup ("");
  diagonal = survey_diagonal (survey, row);
  length = length_format (diagonal->length);
  g_string_printf (text, "%u %u %s", wall_number (project, diagonal->along),
                   wall_number (project, diagonal->across), length);
  if (!(diagonal->given & (DIAGONAL_FIRST | DIAGONAL_SECOND)))
    return g_strdup (text->str);
  const Wall *along = project_wall (project, diagonal->along);
  const Wall *across = project_wall (project, diagonal->across);
  first = length_format (diagonal->given & DIAGONAL_FIRST || !along ? diagonal->first
                                                                    : along->length);
  second = length_format (diagonal->given & DIAGONAL_SECOND || !across ? diagonal->second
                                                                       : across->length);
  g_string_append_printf (text, " %s %s", first, second);
  return g_strdup (text->str);
}

/* Words between spaces, commas and colons. */
static GPtrArray *
words_of (const char *text)
{
  g_auto (GStrv) parts = g_strsplit_set (text, " ,;:\t", -1);
  GPtrArray *words = g_ptr_array_new_with_free_func (g_free);

  for (guint i = 0; parts[i]; i++)
    if (*parts[i])
      g_ptr_array_add (words, g_strdup (parts[i]));
  return words;
}

static gboolean
read_diagonal (const Project *project, const char *text, Diagonal *said, GError **error)
{
  g_autoptr (GPtrArray) words = words_of (text);
  const Wall *along, *across;

  if (words->len != 3 && words->len != 5)
    return refuse (error,
                   _ ("A diagonal is two walls and its length, and two legs if they are not the "
                      "walls: 1 2 7437, or 1 2 5004 3000 4000."));
  if (!read_wall (project, words->pdata[0], &along, error)
      || !read_wall (project, words->pdata[1], &across, error)
      || !read_length (words->pdata[2], &said->length, error))
    return FALSE;
  if (words->len == 5
      && (!read_length (words->pdata[3], &said->first, error)
          || !read_length (words->pdata[4], &said->second, error)))
    return FALSE;
  said->along = along->id;
  said->across = across->id;
  said->given = words->len == 5 ? DIAGONAL_FIRST | DIAGONAL_SECOND : 0;
  return TRUE;
}

static gboolean
set_diagonal (const Project *project, Survey *survey, guint row, const char *text, GError **error)
{
  Diagonal said = { 0 };
  Diagonal *diagonal;

  if (!*text)
    {
      if (row < survey->diagonals->len)
        g_array_remove_index (survey->diagonals, row);
      return TRUE;
    }
  if (!read_diagonal (project, text, &said, error))
    return FALSE;
  diagonal = row < survey->diagonals->len ? &g_array_index (survey->diagonals, Diagonal, row)
                                          : survey_add_diagonal (survey);
  diagonal->along = said.along;
  diagonal->across = said.across;
  diagonal->given = said.given;
  diagonal->first = said.first;
  diagonal->second = said.second;
  diagonal->length = said.length;
  return TRUE;
}

/* ---- cells ---- */

guint
level_part_columns (LevelPart part)
{
  return part == LEVEL_OF_READING ? N_LEVEL_COLUMNS : part == LEVEL_OF_LIMIT ? N_LEVEL_LIMITS : 1;
}

const char *
level_cell_name (LevelCell cell)
{
  static const char *const columns[]
      = { N_ ("Point"),     N_ ("Where"),      N_ ("Backsight"), N_ ("Intermediate sight"),
          N_ ("Foresight"), N_ ("Known level") };
  static const char *const limits[]
      = { N_ ("Least bed"),     N_ ("Wanted bed"),    N_ ("Thickest bed"), N_ ("First course at"),
          N_ ("Closing error"), N_ ("Out of square"), N_ ("Tape") };

  if (cell.part == LEVEL_OF_READING)
    return _ (columns[cell.column]);
  return cell.part == LEVEL_OF_LIMIT ? _ (limits[cell.column]) : _ ("Diagonal");
}

char *
level_cell_text (const Project *project, const Survey *survey, LevelCell cell)
{
  guint bit;
  Length value;

  if (cell.part == LEVEL_OF_READING)
    return reading_text (project, survey, cell);
  if (cell.part == LEVEL_OF_DIAGONAL)
    return diagonal_text (project, survey, cell.row);
  value = *limit ((Survey *) survey, cell.column, &bit);
  return survey->given & bit ? length_format (value) : g_strdup ("");
}

char *
level_cell_default (LevelCell cell)
{
  g_autoptr (Survey) plain = survey_new ();
  guint bit;

  if (cell.part == LEVEL_OF_READING && cell.column == LEVEL_WHERE)
    return g_strdup (_ ("1 left, 2 right"));
  if (cell.part == LEVEL_OF_DIAGONAL)
    return g_strdup (_ ("1 2 7437"));
  if (cell.part != LEVEL_OF_LIMIT)
    return g_strdup ("");
  return cell.column == LEVEL_FIRST_COURSE ? g_strdup (_ ("found"))
                                           : length_format (*limit (plain, cell.column, &bit));
}

gboolean
level_cell_set (const Project *project, Survey *survey, LevelCell cell, const char *text,
                GError **error)
{
  g_autofree char *bare = g_strstrip (g_strdup (text));

  if (cell.part == LEVEL_OF_READING)
    return set_reading (project, survey, cell, bare, error);
  if (cell.part == LEVEL_OF_LIMIT)
    return set_limit (survey, cell.column, bare, error);
  return set_diagonal (project, survey, cell.row, bare, error);
}

/* ---- a whole row at once ---- */

/* What a word says of a sight: its column, and where its number begins; N_LEVEL_COLUMNS: it is of
 * the name. */
static guint
sight_of_word (const char *word, const char **number)
{
  Length unused;
  const char letter = g_ascii_tolower (*word);

  *number = word;
  if (level_parse (word, &unused))
    return LEVEL_INTER;
  *number = word + 1;
  if (letter == '\0' || !level_parse (word + 1, &unused))
    return N_LEVEL_COLUMNS;
  return letter == 'b'   ? LEVEL_BACK
         : letter == 'f' ? LEVEL_FORE
         : letter == 'i' ? LEVEL_INTER
         : letter == '=' ? LEVEL_KNOWN
                         : N_LEVEL_COLUMNS;
}

static gboolean
read_quick (const Project *project, Reading *reading, const char *text, GError **error)
{
  const char *at = strchr (text, '@');
  g_autofree char *before = at ? g_strndup (text, (gsize) (at - text)) : g_strdup (text);
  g_autoptr (GString) name = g_string_new (NULL);
  g_auto (GStrv) words = g_strsplit_set (before, " \t", -1);
  gboolean sights = FALSE;

  for (guint i = 0; words[i]; i++)
    {
      const char *number;
      guint column = sight_of_word (words[i], &number);

      if (!*words[i])
        continue;
      /* The first word is the name, be it "12" or "B2". */
      if (name->len > 0 && column != N_LEVEL_COLUMNS)
        {
          sights = TRUE;
          if (!set_sight (reading, column, number, error))
            return FALSE;
        }
      else if (sights)
        return refuse (error,
                       _ ("“%s” is not understood. A row is: name, b1412, f1433, 1437, =100000, "
                          "@1 left."),
                       words[i]);
      else
        g_string_append_printf (name, "%s%s", name->len ? " " : "", words[i]);
    }
  if (!sights)
    return refuse (error, _ ("The row has no reading: name, then b1412, f1433, 1437 or =100000."));
  g_free (reading->point);
  reading->point = g_strdup (name->str);
  return !at || set_where (project, reading, at + 1, error);
}

gboolean
level_quick_add (const Project *project, Survey *survey, const char *text, GError **error)
{
  if (read_quick (project, survey_add_reading (survey), text, error))
    return TRUE;
  g_array_set_size (survey->readings, survey->readings->len - 1);
  return FALSE;
}

gboolean
level_insert_row (Survey *survey, guint row)
{
  GArray *readings = survey->readings;
  Reading empty;

  if (row >= readings->len)
    return FALSE;
  survey_add_reading (survey);
  /* It goes to its place whole, and the others move on as they are. */
  empty = *survey_reading (survey, readings->len - 1);
  memmove (&g_array_index (readings, Reading, row + 1), &g_array_index (readings, Reading, row),
           (readings->len - 1 - row) * sizeof (Reading));
  g_array_index (readings, Reading, row) = empty;
  return TRUE;
}

gboolean
level_remove_row (Survey *survey, guint row)
{
  if (row >= survey->readings->len)
    return FALSE;
  g_array_remove_index (survey->readings, row);
  return TRUE;
}
