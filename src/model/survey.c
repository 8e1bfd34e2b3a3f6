/* survey.c - the level book of the footing as it was read */
#include "model/survey.h"

#include <glib/gi18n-lib.h>

static void
place_clear (gpointer data)
{
  foreign_clear (&((SurveyPlace *) data)->foreign);
}

static GArray *
places_new (void)
{
  GArray *places = g_array_new (FALSE, TRUE, sizeof (SurveyPlace));

  g_array_set_clear_func (places, place_clear);
  return places;
}

static void
reading_clear (gpointer data)
{
  Reading *reading = data;

  g_free (reading->point);
  g_array_unref (reading->places);
  foreign_clear (&reading->foreign);
}

static void
diagonal_clear (gpointer data)
{
  Diagonal *diagonal = data;

  g_free (diagonal->name);
  foreign_clear (&diagonal->foreign);
}

Survey *
survey_new (void)
{
  Survey *survey = g_new0 (Survey, 1);

  g_atomic_ref_count_init (&survey->refs);
  survey->least = LENGTH_MM (10);
  survey->wanted = LENGTH_MM (25);
  survey->most = LENGTH_MM (40);
  survey->tolerance = LENGTH_MM (5);
  survey->square = LENGTH_MM (5);
  survey->tape = LENGTH_MM (30000);
  survey->readings = g_array_new (FALSE, TRUE, sizeof (Reading));
  g_array_set_clear_func (survey->readings, reading_clear);
  survey->diagonals = g_array_new (FALSE, TRUE, sizeof (Diagonal));
  g_array_set_clear_func (survey->diagonals, diagonal_clear);
  return survey;
}

Reading *
survey_add_reading (Survey *survey)
{
  Reading reading = { .point = g_strdup (""), .places = places_new () };

  g_array_append_val (survey->readings, reading);
  return &g_array_index (survey->readings, Reading, survey->readings->len - 1);
}

void
reading_add_place (Reading *reading, WallId wall, Length x)
{
  SurveyPlace place = { .wall = wall, .x = x };

  g_array_append_val (reading->places, place);
}

Diagonal *
survey_add_diagonal (Survey *survey)
{
  Diagonal diagonal = { .name = g_strdup ("") };

  g_array_append_val (survey->diagonals, diagonal);
  return &g_array_index (survey->diagonals, Diagonal, survey->diagonals->len - 1);
}

static void
copy_reading (Survey *copy, const Reading *reading)
{
  Reading next = *reading;

  next.point = g_strdup (reading->point);
  next.foreign = foreign_copy (&reading->foreign);
  next.places = places_new ();
  for (guint i = 0; i < reading->places->len; i++)
    {
      SurveyPlace place = *reading_place (reading, i);

      place.foreign = foreign_copy (&place.foreign);
      g_array_append_val (next.places, place);
    }
  g_array_append_val (copy->readings, next);
}

Survey *
survey_copy (const Survey *survey)
{
  Survey *copy = survey_new ();
  GArray *readings = copy->readings, *diagonals = copy->diagonals;

  *copy = *survey;
  g_atomic_ref_count_init (&copy->refs);
  copy->readings = readings;
  copy->diagonals = diagonals;
  copy->foreign = foreign_copy (&survey->foreign);
  for (guint i = 0; i < survey->readings->len; i++)
    copy_reading (copy, survey_reading (survey, i));
  for (guint i = 0; i < survey->diagonals->len; i++)
    {
      Diagonal diagonal = *survey_diagonal (survey, i);

      diagonal.name = g_strdup (diagonal.name);
      diagonal.foreign = foreign_copy (&diagonal.foreign);
      g_array_append_val (diagonals, diagonal);
    }
  return copy;
}

Survey *
survey_ref (const Survey *survey)
{
  Survey *shared = (Survey *) survey;

  g_atomic_ref_count_inc (&shared->refs);
  return shared;
}

void
survey_unref (Survey *survey)
{
  if (!survey || !g_atomic_ref_count_dec (&survey->refs))
    return;
  g_array_unref (survey->readings);
  g_array_unref (survey->diagonals);
  foreign_clear (&survey->foreign);
  g_free (survey);
}

/* Only what is given is compared: the other fields say nothing. */
static gboolean
same (guint a_given, guint b_given, guint field, Length a, Length b)
{
  return (a_given & field) == (b_given & field) && (!(a_given & field) || a == b);
}

static gboolean
same_reading (const Reading *a, const Reading *b)
{
  if (g_strcmp0 (a->point, b->point) != 0 || a->places->len != b->places->len
      || !foreign_equal (&a->foreign, &b->foreign)
      || !same (a->given, b->given, READING_BACK, a->back, b->back)
      || !same (a->given, b->given, READING_INTER, a->inter, b->inter)
      || !same (a->given, b->given, READING_FORE, a->fore, b->fore)
      || !same (a->given, b->given, READING_LEVEL, a->level, b->level))
    return FALSE;
  for (guint i = 0; i < a->places->len; i++)
    {
      const SurveyPlace *p = reading_place (a, i), *q = reading_place (b, i);

      if (p->wall.n != q->wall.n || p->x != q->x || !foreign_equal (&p->foreign, &q->foreign))
        return FALSE;
    }
  return TRUE;
}

static gboolean
same_diagonal (const Diagonal *a, const Diagonal *b)
{
  return g_strcmp0 (a->name, b->name) == 0 && a->along.n == b->along.n && a->across.n == b->across.n
         && a->length == b->length && same (a->given, b->given, DIAGONAL_FIRST, a->first, b->first)
         && same (a->given, b->given, DIAGONAL_SECOND, a->second, b->second)
         && foreign_equal (&a->foreign, &b->foreign);
}

static gboolean
same_limits (const Survey *a, const Survey *b)
{
  guint p = a->given, q = b->given;

  return same (p, q, SURVEY_LEAST, a->least, b->least)
         && same (p, q, SURVEY_WANTED, a->wanted, b->wanted)
         && same (p, q, SURVEY_MOST, a->most, b->most)
         && same (p, q, SURVEY_TOLERANCE, a->tolerance, b->tolerance)
         && same (p, q, SURVEY_SQUARE, a->square, b->square)
         && same (p, q, SURVEY_TAPE, a->tape, b->tape)
         && same (p, q, SURVEY_FIRST_COURSE, a->first_course, b->first_course);
}

gboolean
survey_equal (const Survey *a, const Survey *b)
{
  if (a == b)
    return TRUE;
  if (!a || !b || !same_limits (a, b) || !foreign_equal (&a->foreign, &b->foreign)
      || a->readings->len != b->readings->len || a->diagonals->len != b->diagonals->len)
    return FALSE;
  for (guint i = 0; i < a->readings->len; i++)
    if (!same_reading (survey_reading (a, i), survey_reading (b, i)))
      return FALSE;
  for (guint i = 0; i < a->diagonals->len; i++)
    if (!same_diagonal (survey_diagonal (a, i), survey_diagonal (b, i)))
      return FALSE;
  return TRUE;
}

/* ---- its walls ---- */

gboolean
survey_names_wall (const Survey *survey, WallId wall)
{
  for (guint i = 0; i < survey->readings->len; i++)
    for (guint j = 0; j < survey_reading (survey, i)->places->len; j++)
      if (reading_place (survey_reading (survey, i), j)->wall.n == wall.n)
        return TRUE;
  for (guint i = 0; i < survey->diagonals->len; i++)
    if (survey_diagonal (survey, i)->along.n == wall.n
        || survey_diagonal (survey, i)->across.n == wall.n)
      return TRUE;
  return FALSE;
}

void
survey_forget_wall (Survey *survey, WallId wall)
{
  for (guint i = 0; i < survey->readings->len; i++)
    {
      GArray *places = survey_reading (survey, i)->places;

      for (guint j = places->len; j-- > 0;)
        if (g_array_index (places, SurveyPlace, j).wall.n == wall.n)
          g_array_remove_index (places, j);
    }
  for (guint i = survey->diagonals->len; i-- > 0;)
    if (survey_diagonal (survey, i)->along.n == wall.n
        || survey_diagonal (survey, i)->across.n == wall.n)
      g_array_remove_index (survey->diagonals, i);
}

void
survey_map_walls (Survey *survey, WallId (*map) (WallId wall, gconstpointer data),
                  gconstpointer data)
{
  for (guint i = 0; i < survey->readings->len; i++)
    {
      GArray *places = survey_reading (survey, i)->places;

      for (guint j = 0; j < places->len; j++)
        {
          SurveyPlace *place = &g_array_index (places, SurveyPlace, j);

          place->wall = map (place->wall, data);
        }
    }
  for (guint i = 0; i < survey->diagonals->len; i++)
    {
      Diagonal *diagonal = &g_array_index (survey->diagonals, Diagonal, i);

      diagonal->along = map (diagonal->along, data);
      diagonal->across = map (diagonal->across, data);
    }
}

/* ---- what can be wrong with it ---- */

typedef struct
{
  guint field;
  const char *what; /* a phrase with its article */
  Length value, least, most;
} Range;

static char *
range_fault (const Range *ranges, guint n, guint given)
{
  char is[LENGTH_TEXT_SIZE], low[LENGTH_TEXT_SIZE], high[LENGTH_TEXT_SIZE];

  for (guint i = 0; i < n; i++)
    if ((given & ranges[i].field)
        && (ranges[i].value < ranges[i].least || ranges[i].value > ranges[i].most))
      return g_strdup_printf (_ ("%s is %s mm; it must be from %s to %s mm."), ranges[i].what,
                              length_text (ranges[i].value, is), length_text (ranges[i].least, low),
                              length_text (ranges[i].most, high));
  return NULL;
}

static char *
limits_fault (const Survey *survey)
{
  const Range ranges[] = {
    { SURVEY_LEAST, _ ("The least levelling bed"), survey->least, 0, SURVEY_MAX_BED },
    { SURVEY_WANTED, _ ("The wanted levelling bed"), survey->wanted, 0, SURVEY_MAX_BED },
    { SURVEY_MOST, _ ("The thickest levelling bed"), survey->most, 0, SURVEY_MAX_BED },
    { SURVEY_TOLERANCE, _ ("The closing error allowed"), survey->tolerance, 0,
      SURVEY_MAX_TOLERANCE },
    { SURVEY_SQUARE, _ ("The out-of-square allowed"), survey->square, 0, SURVEY_MAX_TOLERANCE },
    { SURVEY_TAPE, _ ("The tape"), survey->tape, LENGTH_MM (500), LENGTH_MM (100000) },
    { SURVEY_FIRST_COURSE, _ ("The level of the first course"), survey->first_course, -LENGTH_MAX,
      LENGTH_MAX },
  };
  char least[LENGTH_TEXT_SIZE], wanted[LENGTH_TEXT_SIZE], most[LENGTH_TEXT_SIZE];
  char *fault = range_fault (ranges, G_N_ELEMENTS (ranges), survey->given);

  if (fault)
    return fault;
  if (survey->least > survey->wanted || survey->wanted > survey->most)
    return g_strdup_printf (
        _ ("The wanted levelling bed, %s mm, is not between the least, %s mm, and the "
           "thickest, %s mm."),
        length_text (survey->wanted, wanted), length_text (survey->least, least),
        length_text (survey->most, most));
  return NULL;
}

static char *
reading_fault (const Reading *reading)
{
  const Length most = SURVEY_MAX_READING;
  const Range ranges[] = {
    { READING_BACK, _ ("The backsight"), reading->back, -most, most },
    { READING_INTER, _ ("The intermediate sight"), reading->inter, -most, most },
    { READING_FORE, _ ("The foresight"), reading->fore, -most, most },
    { READING_LEVEL, _ ("The level"), reading->level, -LENGTH_MAX, LENGTH_MAX },
  };
  const Range x = { 1, _ ("The place on the wall"), 0, 0, LENGTH_MAX };
  char *fault = range_fault (ranges, G_N_ELEMENTS (ranges), reading->given);

  if (!fault && reading->places->len > SURVEY_MAX_PLACES)
    return g_strdup_printf (_ ("The point has %u places; at most %d are allowed."),
                            reading->places->len, SURVEY_MAX_PLACES);
  for (guint i = 0; !fault && i < reading->places->len; i++)
    {
      Range is = x;

      is.value = reading_place (reading, i)->x;
      fault = range_fault (&is, 1, 1);
    }
  return fault;
}

static char *
diagonal_fault (const Diagonal *diagonal)
{
  const Range ranges[] = {
    { DIAGONAL_FIRST, _ ("The first leg"), diagonal->first, LENGTH_MM (1), LENGTH_MAX },
    { DIAGONAL_SECOND, _ ("The second leg"), diagonal->second, LENGTH_MM (1), LENGTH_MAX },
    { 1 << 30, _ ("The diagonal"), diagonal->length, LENGTH_MM (1), LENGTH_MAX },
  };

  if (diagonal->along.n == diagonal->across.n)
    return g_strdup (_ ("A diagonal goes across a corner of two walls, not of one."));
  return range_fault (ranges, G_N_ELEMENTS (ranges), diagonal->given | 1 << 30);
}

/* "Row 3 (A): ...", taking the sentence. */
static char *
of_row (const char *format, guint row, const char *name, char *sentence)
{
  g_autofree char *fault = sentence;
  g_autofree char *number = g_strdup_printf (format, row);

  return *name ? g_strdup_printf (_ ("%s (%s): %s"), number, name, fault)
               : g_strdup_printf (_ ("%s: %s"), number, fault);
}

char *
survey_fault (const Survey *survey)
{
  char *fault = limits_fault (survey);

  if (fault)
    return fault;
  if (survey->readings->len > SURVEY_MAX_READINGS)
    return g_strdup_printf (_ ("The survey has %u readings; at most %d are allowed."),
                            survey->readings->len, SURVEY_MAX_READINGS);
  if (survey->diagonals->len > SURVEY_MAX_DIAGONALS)
    return g_strdup_printf (_ ("The survey has %u diagonals; at most %d are allowed."),
                            survey->diagonals->len, SURVEY_MAX_DIAGONALS);
  for (guint i = 0; i < survey->readings->len; i++)
    if ((fault = reading_fault (survey_reading (survey, i))))
      return of_row (_ ("Row %u"), i + 1, survey_reading (survey, i)->point, fault);
  for (guint i = 0; i < survey->diagonals->len; i++)
    if ((fault = diagonal_fault (survey_diagonal (survey, i))))
      return of_row (_ ("Diagonal %u"), i + 1, survey_diagonal (survey, i)->name, fault);
  return NULL;
}
