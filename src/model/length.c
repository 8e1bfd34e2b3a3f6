/* length.c - reading and writing lengths */
#include "model/length.h"

#include <math.h>
#include <string.h>

/* More digits than these after the point cannot change the nearest 1/320 mm by more than a tie. */
#define FRACTION_DIGITS 12
#define ONE ((gint64) 1000000000000)

Length
length_from_mm (double mm)
{
  return (Length) lround (mm * LENGTH_PER_MM);
}

double
length_to_mm (Length length)
{
  return (double) length / LENGTH_PER_MM;
}

/* The digits of a decimal without its sign as whole millimetres and a fraction of 10^-12. */
static gboolean
read_decimal (const char *text, char point, gint64 *whole, gint64 *fraction, const char **end)
{
  const char *p = text;
  int digits = 0;

  *whole = *fraction = 0;
  for (; g_ascii_isdigit (*p); p++, digits++)
    if (*whole <= LENGTH_MAX)
      *whole = *whole * 10 + (*p - '0');
  if (*p == '.' || (point && *p == point))
    {
      int places = 0;

      for (p++; g_ascii_isdigit (*p); p++, digits++)
        if (places < FRACTION_DIGITS)
          {
            *fraction = *fraction * 10 + (*p - '0');
            places++;
          }
      for (; places < FRACTION_DIGITS; places++)
        *fraction *= 10;
    }
  *end = p;
  return digits > 0;
}

/* In lengths, rounded halves away from zero; -1: too long. */
static gint64
to_length (gint64 whole, gint64 fraction)
{
  __int128 length = (((__int128) whole * ONE + fraction) * LENGTH_PER_MM + ONE / 2) / ONE;

  return length > LENGTH_MAX ? -1 : (gint64) length;
}

gboolean
length_parse (const char *text, Length *out)
{
  gboolean negative = *text == '-';
  gint64 whole, fraction, length;
  const char *end;

  if (*text == '-' || *text == '+')
    text++;
  if (!read_decimal (text, 0, &whole, &fraction, &end) || *end)
    return FALSE;
  length = to_length (whole, fraction);
  if (length < 0)
    return FALSE;
  *out = (Length) (negative ? -length : length);
  return TRUE;
}

#define PER_INCH 81280 /* 1/3200 mm */
#define PER_FOOT (12 * PER_INCH)

/* What people write after a number, longest first where one begins another; in 1/3200 mm. */
static const struct
{
  const char *word;
  gint64 per_unit;
} units[] = {
  { "mm", 3200 },     { "cm", 32000 },    { "m", 3200000 },
  { "in", PER_INCH }, { "\"", PER_INCH }, { "\xe2\x80\xb3", PER_INCH },
  { "ft", PER_FOOT }, { "'", PER_FOOT },  { "\xe2\x80\xb2", PER_FOOT },
};

/* One number with its unit from *p on, which moves past it; `bare` is the unit of a number that has
 * none. In 1/3200 mm times 10^12; what the unit was goes to *per_unit. */
static gboolean
read_term (const char **p, gint64 bare, __int128 *value, gint64 *per_unit)
{
  gint64 whole, fraction;

  if (!read_decimal (*p, ',', &whole, &fraction, p))
    return FALSE;
  while (g_ascii_isspace (**p))
    ++*p;
  *per_unit = bare;
  for (guint i = 0; i < G_N_ELEMENTS (units); i++)
    if (g_str_has_prefix (*p, units[i].word))
      {
        *per_unit = units[i].per_unit;
        *p += strlen (units[i].word);
        break;
      }
  while (g_ascii_isspace (**p))
    ++*p;
  *value += ((__int128) whole * ONE + fraction) * *per_unit;
  return TRUE;
}

gboolean
length_parse_typed (const char *text, Length *out)
{
  g_autofree char *copy = g_ascii_strdown (text, -1);
  const char *p = g_strstrip (copy);
  gboolean negative = *p == '-';
  __int128 value = 0, length;
  gint64 unit;

  if (*p == '-' || *p == '+')
    p++;
  if (!read_term (&p, 3200, &value, &unit))
    return FALSE;
  /* Feet go on with inches. */
  if (*p && unit == PER_FOOT && (!read_term (&p, PER_INCH, &value, &unit) || unit != PER_INCH))
    return FALSE;
  length = (value + ONE * 10 / 2) / (ONE * 10);
  if (*p || length > LENGTH_MAX)
    return FALSE;
  *out = (Length) (negative ? -length : length);
  return TRUE;
}

char *
length_format (Length length)
{
  guint64 size = (guint64) ABS ((gint64) length);
  guint64 whole = size / LENGTH_PER_MM;
  /* 1/320 is 0.003125: six places say every fraction exactly. */
  guint fraction = (guint) (size % LENGTH_PER_MM) * 3125;
  const char *sign = length < 0 ? "-" : "";
  char digits[8];
  int n = 6;

  if (fraction == 0)
    return g_strdup_printf ("%s%" G_GUINT64_FORMAT, sign, whole);
  g_snprintf (digits, sizeof digits, "%06u", fraction);
  while (digits[n - 1] == '0')
    digits[--n] = 0;
  return g_strdup_printf ("%s%" G_GUINT64_FORMAT ".%s", sign, whole, digits);
}

const char *
length_text (Length length, char buffer[LENGTH_TEXT_SIZE])
{
  gint64 size = ABS ((gint64) length);
  gint64 tenths = (size * 10 + LENGTH_PER_MM / 2) / LENGTH_PER_MM;
  const char *sign = length < 0 && tenths > 0 ? "-" : "";

  if (tenths % 10)
    g_snprintf (buffer, LENGTH_TEXT_SIZE, "%s%" G_GINT64_FORMAT ".%d", sign, tenths / 10,
                (int) (tenths % 10));
  else
    g_snprintf (buffer, LENGTH_TEXT_SIZE, "%s%" G_GINT64_FORMAT, sign, tenths / 10);
  return buffer;
}

const char *
length_off_text (Length off, char buffer[LENGTH_TEXT_SIZE])
{
  char size[LENGTH_TEXT_SIZE];

  length_text (ABS (off), size);
  g_snprintf (buffer, LENGTH_TEXT_SIZE, "%s%s",
              g_str_equal (size, "0") ? "" : (off > 0 ? "+" : "−"), size);
  return buffer;
}
