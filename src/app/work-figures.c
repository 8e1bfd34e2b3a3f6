#include "app/work-figures.h"

#include <glib/gi18n.h>
#include <string.h>

#include "model/edit.h"

typedef enum
{
  FIGURE_COUNT,
  FIGURE_NUMBER,
  FIGURE_LENGTH,
} FigureKind;

/* The same places as in `figures`. */
static const struct
{
  FigureKind kind;
  gsize offset;
  guint bit;
} places[] = {
  { FIGURE_COUNT, G_STRUCT_OFFSET (WorkRates, gang), WORK_GANG },
  { FIGURE_NUMBER, G_STRUCT_OFFSET (WorkRates, hours_a_day), WORK_HOURS_A_DAY },
  { FIGURE_NUMBER, G_STRUCT_OFFSET (WorkRates, hours_a_m2), WORK_HOURS_A_M2 },
  { FIGURE_NUMBER, G_STRUCT_OFFSET (WorkRates, minutes_a_block), WORK_MINUTES_A_BLOCK },
  { FIGURE_NUMBER, G_STRUCT_OFFSET (WorkRates, minutes_a_cut), WORK_MINUTES_A_CUT },
  { FIGURE_NUMBER, G_STRUCT_OFFSET (WorkRates, minutes_a_metre), WORK_MINUTES_A_METRE },
  { FIGURE_LENGTH, G_STRUCT_OFFSET (WorkRates, rise), WORK_RISE },
  { FIGURE_COUNT, G_STRUCT_OFFSET (WorkRates, lifts_a_day), WORK_LIFTS_A_DAY },
  { FIGURE_COUNT, G_STRUCT_OFFSET (WorkRates, blocks_a_pallet), WORK_BLOCKS_A_PALLET },
};

static const WorkFigure figures[] = {
  { N_ ("Persons at work"), N_ ("common practice"), NULL, 0 },
  { N_ ("Hours a day, of each"), N_ ("common practice"), NULL, 1 },
  { N_ ("Hours a m², laying"), N_ ("0.4 to 0.7, common practice"), NULL, 2 },
  { N_ ("Minutes a piece, laying"), N_ ("goes before hours a m²"), N_ ("not used"), 3 },
  { N_ ("Minutes a cut by hand saw"), N_ ("1 to 2, common practice"), NULL, 4 },
  { N_ ("Minutes a metre of levelling bed"), N_ ("common practice"), NULL, 5 },
  { N_ ("Rise of a wall in a day, mm"), N_ ("house-building standards"), NULL, 6 },
  { N_ ("Lifts a day, of each"), N_ ("no number was found"), N_ ("any number"), 7 },
  { N_ ("Blocks on a pallet"), N_ ("1000 kg as delivered, common practice"), N_ ("by mass"), 8 },
};

const WorkFigure *
work_figures_list (guint *n)
{
  *n = G_N_ELEMENTS (figures);
  return figures;
}

static const void *
value_of (const WorkFigure *figure, const WorkRates *rates)
{
  return (const char *) rates + places[figure->which].offset;
}

/* To the millionth, without zeros at the end. */
static char *
number_text (double number)
{
  char text[G_ASCII_DTOSTR_BUF_SIZE];
  char *end;

  g_ascii_formatd (text, sizeof text, "%.6f", number);
  end = text + strlen (text);
  while (end[-1] == '0')
    end--;
  if (end[-1] == '.')
    end--;
  return g_strndup (text, (gsize) (end - text));
}

static char *
value_text (const WorkFigure *figure, const WorkRates *rates)
{
  const void *value = value_of (figure, rates);
  char text[LENGTH_TEXT_SIZE];

  switch (places[figure->which].kind)
    {
    case FIGURE_COUNT:
      return g_strdup_printf ("%d", *(const gint32 *) value);
    case FIGURE_LENGTH:
      return g_strdup (length_text (*(const Length *) value, text));
    case FIGURE_NUMBER:
    default:
      return number_text (*(const double *) value);
    }
}

char *
work_figure_text (const WorkFigure *figure, const WorkRates *rates)
{
  return rates->given & places[figure->which].bit ? value_text (figure, rates) : g_strdup ("");
}

char *
work_figure_default (const WorkFigure *figure)
{
  const WorkRates plain = work_rates_default ();

  return figure->none ? g_strdup (_ (figure->none)) : value_text (figure, &plain);
}

/* A number with point or comma and nothing else. */
static gboolean
read_number (const char *text, double *number)
{
  g_autofree char *copy = g_strdelimit (g_strstrip (g_strdup (text)), ",", '.');
  g_autofree char *rounded = NULL;
  char *end;

  if (!*copy || strspn (copy, "0123456789.") != strlen (copy))
    return FALSE;
  *number = g_ascii_strtod (copy, &end);
  /* As the file will have it. */
  rounded = number_text (MIN (*number, 1e9));
  *number = g_ascii_strtod (rounded, NULL);
  return *end == '\0';
}

static gboolean
read_count (const char *text, gint32 *count)
{
  g_autofree char *copy = g_strstrip (g_strdup (text));
  guint64 value;

  if (!g_ascii_string_to_unsigned (copy, 10, 0, G_MAXINT32, &value, NULL))
    return FALSE;
  *count = (gint32) value;
  return TRUE;
}

/* FALSE: it is none. */
static gboolean
read_value (FigureKind kind, const char *text, void *value)
{
  switch (kind)
    {
    case FIGURE_COUNT:
      return read_count (text, value);
    case FIGURE_LENGTH:
      return length_parse_typed (text, value);
    case FIGURE_NUMBER:
    default:
      return read_number (text, value);
    }
}

gboolean
work_figure_set (const WorkFigure *figure, WorkRates *rates, const char *text, GError **error)
{
  const WorkRates plain = work_rates_default ();
  const gsize offset = places[figure->which].offset;
  WorkRates next = *rates;
  const gboolean said = *text != '\0';
  const gsize size
      = places[figure->which].kind == FIGURE_NUMBER ? sizeof (double) : sizeof (gint32);
  g_autofree char *fault = NULL;

  if (said && !read_value (places[figure->which].kind, text, (char *) &next + offset))
    {
      g_set_error (error, MODEL_ERROR, MODEL_ERROR_REFUSED, _ ("%s: “%s” is not a number."),
                   _ (figure->name), text);
      return FALSE;
    }
  if (said)
    next.given |= places[figure->which].bit;
  else
    {
      memcpy ((char *) &next + offset, (const char *) &plain + offset, size);
      next.given &= ~places[figure->which].bit;
    }
  fault = work_rates_fault (&next);
  if (fault)
    {
      g_set_error_literal (error, MODEL_ERROR, MODEL_ERROR_REFUSED, fault);
      return FALSE;
    }
  *rates = next;
  return TRUE;
}
