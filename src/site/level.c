/* level.c - a level book reduced */
#include "site/level.h"

#include <glib/gi18n-lib.h>

#include "site/square.h"

#define READ (READING_INTER | READING_FORE)
/* Levels beyond this are no levels: the readings cannot be right. */
#define FARTHEST (2 * (gint64) LENGTH_MAX)

/* What is known of a row while the book is reduced. Heights are above the line's first point. */
typedef struct
{
  gint32 line;    /* the unbroken line of set-ups it is of, from 0; -1: of none */
  gboolean read;  /* it has a sight that the set-up before it can take */
  Length sight;   /* that sight */
  gint64 height;  /* by height of collimation */
  gint64 climbed; /* the same by rises and falls */
  gboolean tied;  /* its level is not found from here but given: a mark, the start of the line */
  Length tie;     /* that level */
} Work;

typedef struct
{
  guint first, last; /* rows */
  guint anchor;      /* the first row whose level was known: the others hang on it */
  gboolean resolved;
} Line;

typedef struct
{
  const Survey *survey;
  LevelBook *book;
  Work *work;
  GArray *lines;     /* Line */
  GHashTable *known; /* name (borrowed): GINT_TO_POINTER of its level */
  GHashTable *firm;  /* set of the names that no reading moves: marks, the datum */
  gint datum;        /* the row that is taken as 0; -1: none */
} Reducing;

static const char *
name_of (const Reducing *reducing, guint row)
{
  return survey_reading (reducing->survey, row)->point;
}

static guint
sights (const Reducing *reducing, guint row)
{
  return survey_reading (reducing->survey, row)->given & (READ | READING_BACK);
}

static LevelRow *
row_at (const Reducing *reducing, guint row)
{
  return &g_array_index (reducing->book->rows, LevelRow, row);
}

/* "Row 3 (A)" or "Row 3". */
static char *
row_called (const Survey *survey, guint row)
{
  const char *name = survey_reading (survey, row)->point;

  return *name ? g_strdup_printf (_ ("Row %u (%s)"), row + 1, name)
               : g_strdup_printf (_ ("Row %u"), row + 1);
}

static void
add_fault (Reducing *reducing, guint row, const char *text)
{
  g_autofree char *called = row_called (reducing->survey, row);
  LevelFault fault = { row, g_strdup_printf (_ ("%s: %s"), called, text) };

  g_array_append_val (reducing->book->faults, fault);
}

/* ---- the set-ups and the lines ---- */

typedef struct
{
  gboolean open;  /* a set-up stands: it can be read from */
  gint32 line;    /* the last one, -1: none yet */
  guint previous; /* the last row with a sight */
  gboolean any;   /* there is one */
} Walk;

/* A change point may be written in two rows: its foresight, then its backsight. */
static gboolean
goes_on (const Reducing *reducing, const Walk *walk, guint row)
{
  return walk->any && !walk->open && walk->line >= 0
         && reducing->work[walk->previous].line == walk->line && *name_of (reducing, row)
         && g_str_equal (name_of (reducing, row), name_of (reducing, walk->previous));
}

static void
take_sight (Reducing *reducing, Walk *walk, guint row)
{
  const Reading *reading = survey_reading (reducing->survey, row);
  guint given = sights (reducing, row);
  Work *work = &reducing->work[row];

  if ((given & READING_INTER) && (given & ~(guint) READING_INTER))
    add_fault (reducing, row,
               _ ("an intermediate sight stands beside another sight; give it a row of its own. It "
                  "is not reckoned with."));
  if (!(given & READING_FORE) && (given != READING_INTER))
    return;
  work->sight = given & READING_FORE ? reading->fore : reading->inter;
  if (!walk->open)
    {
      add_fault (reducing, row,
                 _ ("no backsight stands before it, so the height of the instrument is not "
                    "known."));
      return;
    }
  work->read = TRUE;
  work->line = walk->line;
  row_at (reducing, row)->setup = reducing->book->n_setups;
  g_array_index (reducing->lines, Line, walk->line).last = row;
  if (given & READING_FORE)
    walk->open = FALSE;
}

static void
begin_setup (Reducing *reducing, Walk *walk, guint row)
{
  Work *work = &reducing->work[row];
  LevelRow *is = row_at (reducing, row);

  reducing->book->n_setups++;
  if (!work->read && !goes_on (reducing, walk, row))
    {
      Line line = { .first = row, .last = row };

      g_array_append_val (reducing->lines, line);
      walk->line = (gint32) reducing->lines->len - 1;
    }
  g_array_index (reducing->lines, Line, walk->line).last = row;
  work->line = walk->line;
  if (!work->read)
    is->setup = reducing->book->n_setups;
  is->begins = TRUE;
  walk->open = TRUE;
}

/* A row that says something of a point, but has nothing to be reduced. */
static void
judge_empty (Reducing *reducing, guint row)
{
  const Reading *reading = survey_reading (reducing->survey, row);

  if (!(reading->given & READING_LEVEL) && (*reading->point || reading->places->len > 0))
    add_fault (reducing, row, _ ("it has no reading."));
}

static void
find_lines (Reducing *reducing)
{
  Walk walk = { .line = -1 };

  for (guint row = 0; row < reducing->survey->readings->len; row++)
    {
      guint given = sights (reducing, row);

      reducing->work[row].line = -1;
      if (given == 0)
        {
          judge_empty (reducing, row);
          continue;
        }
      take_sight (reducing, &walk, row);
      if (given & READING_BACK)
        begin_setup (reducing, &walk, row);
      walk.previous = row;
      walk.any = TRUE;
    }
}

/* ---- both ways to the heights of a line ---- */

static void
climb (Reducing *reducing, const Line *line)
{
  gint64 collimation = 0, height = 0, climbed = 0;
  Length before = 0; /* the last reading of the set-up */

  for (guint row = line->first; row <= line->last; row++)
    {
      const Reading *reading = survey_reading (reducing->survey, row);
      Work *work = &reducing->work[row];

      if (work->line != reducing->work[line->first].line)
        continue;
      if (work->read)
        {
          LevelRow *is = row_at (reducing, row);

          height = collimation - work->sight;
          climbed += (gint64) before - work->sight;
          is->has_rise = TRUE;
          is->rise = before - work->sight;
          before = work->sight;
        }
      work->height = height;
      work->climbed = climbed;
      if (reading->given & READING_BACK)
        {
          collimation = height + reading->back;
          before = reading->back;
        }
    }
}

static void
sum_line (Reducing *reducing, const Line *line)
{
  LevelBook *book = reducing->book;
  gint32 mine = reducing->work[line->first].line;

  for (guint row = line->first; row <= line->last; row++)
    {
      const Reading *reading = survey_reading (reducing->survey, row);
      const LevelRow *is = row_at (reducing, row);

      if (reducing->work[row].line != mine)
        continue;
      book->agrees &= reducing->work[row].height == reducing->work[row].climbed;
      if (reducing->work[row].read && ((reading->given & READING_FORE) || row == line->last))
        book->fore += reducing->work[row].sight;
      if (reading->given & READING_BACK)
        book->back += reading->back;
      if (is->has_rise)
        *(is->rise >= 0 ? &book->rise : &book->fall) += ABS (is->rise);
    }
  /* A set-up that was begun and not read from. */
  if (row_at (reducing, line->last)->begins)
    book->back -= survey_reading (reducing->survey, line->last)->back;
  book->last_less_first += reducing->work[line->last].height;
}

/* ---- known levels ---- */

static gboolean
known_level (const Reducing *reducing, guint row, Length *level)
{
  const Reading *reading = survey_reading (reducing->survey, row);
  gpointer value;

  if (*reading->point
      && g_hash_table_lookup_extended (reducing->known, reading->point, NULL, &value))
    {
      *level = GPOINTER_TO_INT (value);
      return TRUE;
    }
  *level = reading->given & READING_LEVEL ? reading->level : 0;
  return (reading->given & READING_LEVEL) != 0 || reducing->datum == (gint) row;
}

static void
know (Reducing *reducing, guint row, Length level)
{
  const char *name = name_of (reducing, row);

  if (*name && !g_hash_table_contains (reducing->known, name))
    g_hash_table_insert (reducing->known, (gpointer) name, GINT_TO_POINTER (level));
}

static void
read_marks (Reducing *reducing)
{
  for (guint row = 0; row < reducing->survey->readings->len; row++)
    {
      const Reading *reading = survey_reading (reducing->survey, row);
      Length level;

      if (!(reading->given & READING_LEVEL))
        continue;
      know (reducing, row, reading->level);
      if (*reading->point)
        g_hash_table_add (reducing->firm, reading->point);
      if (known_level (reducing, row, &level) && level != reading->level)
        add_fault (reducing, row,
                   _ ("another level is given for this point in an earlier row, which holds."));
    }
}

/* ---- a line tied to what is known ---- */

static gboolean
is_of_line (const Reducing *reducing, guint row, const Line *line)
{
  return reducing->work[row].line == reducing->work[line->first].line;
}

static void
fault_of_heights (Reducing *reducing, const Line *line)
{
  add_fault (reducing, line->first,
             _ ("the levels from here on run out of all bounds; a reading must be wrong."));
}

/* The raw levels, from the first row whose level is known; FALSE: there is none. */
static gboolean
shift_line (Reducing *reducing, Line *line)
{
  Length level = 0;
  gint64 shift;
  guint row = line->first;

  while (row <= line->last
         && !(is_of_line (reducing, row, line) && known_level (reducing, row, &level)))
    row++;
  if (row > line->last)
    return FALSE;
  line->anchor = row;
  shift = level - reducing->work[row].height;
  for (row = line->first; row <= line->last; row++)
    if (is_of_line (reducing, row, line) && ABS (reducing->work[row].height + shift) > FARTHEST)
      {
        fault_of_heights (reducing, line);
        return TRUE;
      }
  for (row = line->first; row <= line->last; row++)
    if (is_of_line (reducing, row, line))
      {
        LevelRow *is = row_at (reducing, row);

        is->has_level = TRUE;
        is->raw = is->level = (Length) (reducing->work[row].height + shift);
        if (is->begins)
          is->collimation = is->raw + survey_reading (reducing->survey, row)->back;
      }
  return TRUE;
}

/* Marks, the row that the line hangs on, its start, and what comes back to that. Other points
 * that are known from elsewhere are checks, and no ties: they were read no better. */
static gboolean
is_tie (const Reducing *reducing, const Line *line, guint row)
{
  const char *name = name_of (reducing, row), *start = name_of (reducing, line->first);
  Length level;

  if (row == line->first || row == line->anchor)
    return TRUE;
  if (*name && (g_str_equal (name, start) || g_hash_table_contains (reducing->firm, name)))
    return TRUE;
  return !*name && known_level (reducing, row, &level);
}

static void
tie_rows (Reducing *reducing, const Line *line)
{
  /* The start is a tie for what comes back to it, even when its level hangs on a later row. */
  know (reducing, line->first, row_at (reducing, line->first)->raw);
  for (guint row = line->first; row <= line->last; row++)
    if (is_of_line (reducing, row, line) && is_tie (reducing, line, row))
      {
        Work *work = &reducing->work[row];

        work->tied = TRUE;
        if (!known_level (reducing, row, &work->tie))
          work->tie = row_at (reducing, row)->raw;
      }
}

/* The set-ups that carry the level from a tie to a row. A tie that was read as an intermediate
 * sight is left by the set-up that read it. */
static gint32
setups_between (const Reducing *reducing, guint tie, guint row)
{
  gint32 from = row_at (reducing, tie)->setup, to = row_at (reducing, row)->setup;

  /* What is not read stands before the set-up that begins there. */
  if (!reducing->work[row].read)
    to--;
  if (!reducing->work[tie].read || !(survey_reading (reducing->survey, tie)->given & READING_FORE))
    from--;
  return MAX (to - from, 0);
}

static Length
allowed_error (const Reducing *reducing, gint32 setups)
{
  gint64 tolerance = reducing->survey->tolerance;

  return (Length) whole_root (tolerance * tolerance * setups);
}

static void
add_closing (Reducing *reducing, guint row, guint from, Length error, gint32 setups,
             gboolean shared)
{
  LevelClosing closing = { row, from, MAX (setups, 1), error, 0, FALSE, shared };

  closing.allowed = allowed_error (reducing, closing.setups);
  closing.within = ABS (error) <= closing.allowed;
  reducing->book->closes &= closing.within;
  reducing->book->checked = TRUE;
  g_array_append_val (reducing->book->closings, closing);
}

static Length
correction_at (const Reducing *reducing, guint tie)
{
  return reducing->work[tie].tie - row_at (reducing, tie)->raw;
}

/* The rows from one tie to the next take their shares by the set-ups between. */
static void
share_out (Reducing *reducing, const Line *line, guint from, guint to)
{
  gint32 setups = setups_between (reducing, from, to);
  gint64 begin = correction_at (reducing, from), error = correction_at (reducing, to) - begin;

  for (guint row = from; row < to; row++)
    if (is_of_line (reducing, row, line))
      {
        gint32 k = MIN (setups_between (reducing, from, row), setups);

        if (row != from && setups > 0)
          row_at (reducing, row)->correction = (Length) (begin + whole_ratio (error * k, setups));
        else
          row_at (reducing, row)->correction = (Length) begin;
      }
}

/* The second row of a change point is no second reading of it. */
static gboolean
is_second_row (const Reducing *reducing, guint row, guint first)
{
  return row > first && !reducing->work[row].read && row_at (reducing, row)->begins;
}

static void
correct_line (Reducing *reducing, const Line *line)
{
  guint tie = line->first;

  for (guint row = line->first + 1; row <= line->last; row++)
    {
      if (!is_of_line (reducing, row, line) || !reducing->work[row].tied)
        continue;
      share_out (reducing, line, tie, row);
      if (!is_second_row (reducing, row, line->first) && row != line->anchor)
        add_closing (reducing, row, tie,
                     correction_at (reducing, tie) - correction_at (reducing, row),
                     setups_between (reducing, tie, row), TRUE);
      tie = row;
    }
  for (guint row = tie; row <= line->last; row++)
    if (is_of_line (reducing, row, line))
      row_at (reducing, row)->correction = correction_at (reducing, tie);
  for (guint row = line->first; row <= line->last; row++)
    if (is_of_line (reducing, row, line))
      {
        LevelRow *is = row_at (reducing, row);

        is->level = is->raw + is->correction;
      }
}

static void
resolve (Reducing *reducing, Line *line)
{
  line->resolved = TRUE;
  if (!row_at (reducing, line->first)->has_level)
    return;
  tie_rows (reducing, line);
  correct_line (reducing, line);
  for (guint row = line->first; row <= line->last; row++)
    if (is_of_line (reducing, row, line))
      know (reducing, row, row_at (reducing, row)->level);
  reducing->book->has_levels = TRUE;
}

/* Lines can be tied by points of other lines, whichever comes first in the book. */
static gboolean
resolve_more (Reducing *reducing)
{
  gboolean more = FALSE;

  for (guint i = 0; i < reducing->lines->len; i++)
    {
      Line *line = &g_array_index (reducing->lines, Line, i);

      if (line->resolved || !shift_line (reducing, line))
        continue;
      resolve (reducing, line);
      more = TRUE;
    }
  return more;
}

static gboolean
has_marks (const Survey *survey)
{
  for (guint row = 0; row < survey->readings->len; row++)
    if (survey_reading (survey, row)->given & READING_LEVEL)
      return TRUE;
  return FALSE;
}

/* The first point of the book that nothing ties becomes the datum when no level is known at all. */
static void
take_datum (Reducing *reducing)
{
  const Line *line;

  reducing->book->local = !has_marks (reducing->survey) && reducing->lines->len > 0;
  if (!reducing->book->local)
    return;
  line = &g_array_index (reducing->lines, Line, 0);
  know (reducing, line->first, 0);
  if (*name_of (reducing, line->first))
    g_hash_table_add (reducing->firm, (gpointer) name_of (reducing, line->first));
  reducing->datum = (gint) line->first;
}

static void
find_unresolved (Reducing *reducing)
{
  for (guint i = 0; i < reducing->lines->len; i++)
    {
      const Line *line = &g_array_index (reducing->lines, Line, i);

      if (!line->resolved)
        add_fault (reducing, line->first,
                   _ ("nothing ties this set-up to a point whose level is known, so what was read "
                      "from it has no level."));
    }
}

/* ---- points read twice ---- */

/* Of those that no closing tells: each against the first reading of its name. */
static void
find_repeats (Reducing *reducing)
{
  g_autoptr (GHashTable) first = g_hash_table_new (g_str_hash, g_str_equal);

  for (guint row = 0; row < reducing->survey->readings->len; row++)
    {
      const LevelRow *is = row_at (reducing, row);
      const char *name = name_of (reducing, row);
      gpointer at;

      if (!is->has_level || !*name)
        continue;
      if (!g_hash_table_lookup_extended (first, name, NULL, &at))
        g_hash_table_insert (first, (gpointer) name, GUINT_TO_POINTER (row));
      else if (!reducing->work[row].tied && reducing->work[row].read)
        add_closing (reducing, row, GPOINTER_TO_UINT (at),
                     is->level - row_at (reducing, GPOINTER_TO_UINT (at))->level,
                     ABS (is->setup - row_at (reducing, GPOINTER_TO_UINT (at))->setup), FALSE);
    }
}

/* ---- the level of each point ---- */

typedef struct
{
  gboolean known;
  gint64 sum, n;
} Gathered;

/* What is gathered under the row's name; a nameless row is a point of its own. */
static Gathered *
gathered_of (GHashTable *by_name, Gathered *own, const char *name)
{
  Gathered *gathered = *name ? g_hash_table_lookup (by_name, name) : own;

  if (gathered == NULL)
    {
      gathered = g_new0 (Gathered, 1);
      g_hash_table_insert (by_name, (gpointer) name, gathered);
    }
  return gathered;
}

static void
gather (Gathered *gathered, const Reading *reading, const LevelRow *is)
{
  if (gathered->known)
    return;
  if (reading->given & READING_LEVEL)
    *gathered = (Gathered){ TRUE, reading->level, 1 };
  else if (is->has_level)
    {
      gathered->sum += is->level;
      gathered->n++;
    }
}

static void
find_points (Reducing *reducing)
{
  guint n = reducing->survey->readings->len;
  g_autofree Gathered *own = g_new0 (Gathered, n + 1);
  g_autoptr (GHashTable) by_name = g_hash_table_new_full (g_str_hash, g_str_equal, NULL, g_free);

  for (guint row = 0; row < n; row++)
    gather (gathered_of (by_name, &own[row], name_of (reducing, row)),
            survey_reading (reducing->survey, row), row_at (reducing, row));
  for (guint row = 0; row < n; row++)
    {
      const Gathered *gathered = gathered_of (by_name, &own[row], name_of (reducing, row));
      LevelPoint point = { gathered->n > 0, 0 };

      if (gathered->n > 0)
        point.level = (Length) whole_ratio (gathered->sum, gathered->n);
      g_array_append_val (reducing->book->points, point);
    }
}

static gint
compare_closings (gconstpointer a, gconstpointer b)
{
  const LevelClosing *p = a, *q = b;

  return (p->row > q->row) - (p->row < q->row);
}

static gint
compare_faults (gconstpointer a, gconstpointer b)
{
  const LevelFault *p = a, *q = b;

  return (p->row > q->row) - (p->row < q->row);
}

static void
fault_clear (gpointer data)
{
  g_free (((LevelFault *) data)->text);
}

static LevelBook *
book_empty (guint n)
{
  LevelBook *book = g_new0 (LevelBook, 1);

  book->rows = g_array_new (FALSE, TRUE, sizeof (LevelRow));
  g_array_set_size (book->rows, n);
  book->closings = g_array_new (FALSE, TRUE, sizeof (LevelClosing));
  book->points = g_array_new (FALSE, TRUE, sizeof (LevelPoint));
  book->faults = g_array_new (FALSE, TRUE, sizeof (LevelFault));
  g_array_set_clear_func (book->faults, fault_clear);
  book->agrees = book->closes = TRUE;
  return book;
}

static void
reduce (Reducing *reducing)
{
  find_lines (reducing);
  for (guint i = 0; i < reducing->lines->len; i++)
    {
      climb (reducing, &g_array_index (reducing->lines, Line, i));
      sum_line (reducing, &g_array_index (reducing->lines, Line, i));
    }
  read_marks (reducing);
  take_datum (reducing);
  while (resolve_more (reducing))
    ;
  find_unresolved (reducing);
  find_repeats (reducing);
  find_points (reducing);
}

LevelBook *
level_book_new (const Survey *survey)
{
  LevelBook *book = book_empty (survey->readings->len);
  Reducing reducing = { .survey = survey, .book = book, .datum = -1 };

  reducing.work = g_new0 (Work, survey->readings->len + 1);
  reducing.lines = g_array_new (FALSE, TRUE, sizeof (Line));
  reducing.known = g_hash_table_new (g_str_hash, g_str_equal);
  reducing.firm = g_hash_table_new (g_str_hash, g_str_equal);
  reduce (&reducing);
  book->agrees &= book->back - book->fore == book->rise - book->fall
                  && book->rise - book->fall == book->last_less_first;
  g_array_sort (book->closings, compare_closings);
  g_array_sort (book->faults, compare_faults);
  g_free (reducing.work);
  g_array_unref (reducing.lines);
  g_hash_table_unref (reducing.known);
  g_hash_table_unref (reducing.firm);
  return book;
}

void
level_book_free (LevelBook *book)
{
  if (!book)
    return;
  g_array_unref (book->rows);
  g_array_unref (book->closings);
  g_array_unref (book->faults);
  g_array_unref (book->points);
  g_free (book);
}

/* ---- questions ---- */

gboolean
level_of_point (const LevelBook *book, guint row, Length *level)
{
  const LevelPoint *point = &g_array_index (book->points, LevelPoint, row);

  *level = point->level;
  return point->has_level;
}

char *
level_closing_sentence (const Survey *survey, const LevelClosing *closing)
{
  g_autofree char *called = row_called (survey, closing->row);
  g_autofree char *after = g_strdup_printf (
      g_dngettext (NULL, "after %d set-up", "after %d set-ups", (gulong) closing->setups),
      closing->setups);
  char error[LENGTH_TEXT_SIZE], allowed[LENGTH_TEXT_SIZE];
  const char *format;

  length_text (ABS (closing->error), error);
  length_text (closing->allowed, allowed);
  if (closing->error == 0)
    return g_strdup_printf (_ ("%s: closes to nothing %s."), called, after);
  if (closing->within)
    format = closing->error > 0 ? _ ("%s: closes %s mm too high %s; %s mm are allowed.")
                                : _ ("%s: closes %s mm too low %s; %s mm are allowed.");
  else
    format = closing->error > 0
                 ? _ ("%s: does not close: %s mm too high %s; only %s mm are allowed.")
                 : _ ("%s: does not close: %s mm too low %s; only %s mm are allowed.");
  return g_strdup_printf (format, called, error, after, allowed);
}

char *
level_column_fault (const Survey *survey, const Length *levels)
{
  g_autoptr (LevelBook) book = level_book_new (survey);

  for (guint row = 0; row < survey->readings->len; row++)
    {
      const LevelRow *is = level_row (book, row);
      g_autofree char *called = NULL;
      char given[LENGTH_TEXT_SIZE], found[LENGTH_TEXT_SIZE];

      if (!is->has_level || is->raw == levels[row])
        continue;
      called = row_called (survey, row);
      return g_strdup_printf (_ ("%s: %s mm is given; the readings make it %s mm."), called,
                              length_text (levels[row], given), length_text (is->raw, found));
    }
  return NULL;
}
