/* element.c - the elements of the format as tables: one row for each attribute */
#include "store/element.h"

#include <glib/gi18n-lib.h>
#include <libxml/tree.h>
#include <string.h>

/* Any length that can be stated, mm. */
#define LONGEST (LENGTH_MAX / LENGTH_PER_MM)
/* The least that is more than nothing, mm. */
#define SHORTEST (1.0 / LENGTH_PER_MM)

static gboolean
parse_flag (const char *text, void *out)
{
  gboolean yes = g_str_equal (text, "true");
  if (!yes && !g_str_equal (text, "false"))
    return FALSE;
  *(gboolean *) out = yes;
  return TRUE;
}

static const char *
flag_word (const void *value)
{
  return *(const gboolean *) value ? "true" : "false";
}

static gboolean
parse_through (const char *text, void *out)
{
  return through_from_word (text, (Through *) out);
}

static const char *
word_of_through (const void *value)
{
  return through_word (*(const Through *) value);
}

static gboolean
parse_runs (const char *text, void *out)
{
  return runs_from_word (text, (Runs *) out);
}

static const char *
word_of_runs (const void *value)
{
  return runs_word (*(const Runs *) value);
}

static gboolean
parse_side (const char *text, void *out)
{
  return side_from_word (text, (Side *) out);
}

static const char *
word_of_side (const void *value)
{
  return side_word (*(const Side *) value);
}

static gboolean
parse_tie (const char *text, void *out)
{
  return tie_kind_from_word (text, (TieKind *) out);
}

static const char *
word_of_tie (const void *value)
{
  return tie_kind_word (*(const TieKind *) value);
}

static gboolean
parse_aim (const char *text, void *out)
{
  return aim_from_word (text, (Aim *) out);
}

static const char *
word_of_aim (const void *value)
{
  return aim_word (*(const Aim *) value);
}

static gboolean
parse_rule (const char *text, void *out)
{
  return rule_from_word (text, (RuleKind *) out);
}

static const char *
word_of_rule (const void *value)
{
  return rule_row (*(const RuleKind *) value)->word;
}

static gboolean
parse_keep (const char *text, void *out)
{
  return keep_from_word (text, (Keep *) out);
}

static const char *
word_of_keep (const void *value)
{
  return keep_word (*(const Keep *) value);
}

static gboolean
parse_tolerance (const char *text, void *out)
{
  return tolerance_from_word (text, (ToleranceKind *) out);
}

static const char *
word_of_tolerance (const void *value)
{
  return tolerance_word (*(const ToleranceKind *) value);
}

static gboolean
parse_kind (const char *text, void *out)
{
  return opening_kind_from_word (text, (OpeningKind *) out);
}

static const char *
word_of_kind (const void *value)
{
  return opening_kind_word (*(const OpeningKind *) value);
}

#define TEXT(name, type, field)                                                                    \
  {                                                                                                \
    name, VALUE_TEXT, FALSE, offsetof (type, field)                                                \
  }
#define NAME(type)                                                                                 \
  {                                                                                                \
    "name", VALUE_TEXT, FALSE, offsetof (type, name), .plain = ""                                  \
  }
#define KEY(name, type, field)                                                                     \
  {                                                                                                \
    name, VALUE_KEY, TRUE, offsetof (type, field)                                                  \
  }
#define POINTER(name, type, field)                                                                 \
  {                                                                                                \
    name, VALUE_POINTER, TRUE, offsetof (type, field)                                              \
  }
#define LENGTH(name, type, field, required, bit, min, max)                                         \
  {                                                                                                \
    name, VALUE_LENGTH, required, offsetof (type, field), bit, min, max                            \
  }
#define COUNT(name, type, field, required, bit, min, max)                                          \
  {                                                                                                \
    name, VALUE_COUNT, required, offsetof (type, field), bit, min, max                             \
  }
#define NUMBER(name, type, field, bit, min, max)                                                   \
  {                                                                                                \
    name, VALUE_NUMBER, FALSE, offsetof (type, field), bit, min, max                               \
  }
#define WORD(name, type, field, required, bit, parse, word, words)                                 \
  {                                                                                                \
    name, VALUE_WORD, required, offsetof (type, field), bit, 0, 0, parse, word, words, NULL        \
  }
#define FLAG(name, type, field, bit)                                                               \
  WORD (name, type, field, FALSE, bit, parse_flag, flag_word, "true, false")

/* Rows of Ties; `bit` is that of TIES_KIND in the element's mask. */
#define TIES(type, field, bit)                                                                     \
  WORD ("ties", type, field.kind, FALSE, TIES_KIND *(bit), parse_tie, word_of_tie,                 \
        "strip, mesh, angle"),                                                                     \
      { "ties-every",       VALUE_COUNT, FALSE,          offsetof (type, field.every),             \
        TIES_EVERY * (bit), 1,           TIES_MAX_EVERY, .plain = "1" },                           \
  {                                                                                                \
    "ties-abreast", VALUE_COUNT, FALSE, offsetof (type, field.abreast), TIES_ABREAST *(bit), 1,    \
        TIES_MAX_ABREAST, .plain = "1"                                                             \
  }

static const Field project_fields[] = {
  TEXT ("title", Project, title),   TEXT ("client", Project, client), TEXT ("site", Project, site),
  TEXT ("author", Project, author), TEXT ("date", Project, date),
};

static const Field block_fields[] = {
  KEY ("id", Block, key),
  NAME (Block),
  LENGTH ("length", Block, length, TRUE, 0, 20, 10000),
  LENGTH ("height", Block, height, TRUE, 0, 20, 10000),
  LENGTH ("thickness", Block, thickness, TRUE, 0, 20, 10000),
  { "density", VALUE_DENSITY, TRUE, offsetof (Block, density), 0, 0.000001, 20000 },
  { "strength", VALUE_NUMBER, FALSE, offsetof (Block, strength), 0, 0.001, BLOCK_MOST_STRENGTH,
    .plain = "0" },
};

static const Field wall_fields[] = {
  KEY ("id", WallTag, key),
  NAME (WallTag),
  POINTER ("block", WallTag, block),
  LENGTH ("length", WallTag, length, TRUE, 0, 50, LONGEST),
  LENGTH ("height", WallTag, height, TRUE, 0, 50, LONGEST),
  LENGTH ("plan-x", WallTag, place.x, FALSE, PLACE_X, -LONGEST, LONGEST),
  LENGTH ("plan-y", WallTag, place.y, FALSE, PLACE_Y, -LONGEST, LONGEST),
  WORD ("runs", WallTag, place.runs, FALSE, PLACE_RUNS, parse_runs, word_of_runs,
        "east, north, west, south"),
};

static const Field laying_fields[] = {
  LENGTH ("first-bed", Laying, first_bed, FALSE, LAYING_FIRST_BED, 0, 200),
  LENGTH ("bed", Laying, bed, FALSE, LAYING_BED, 0, 20),
  LENGTH ("head", Laying, head, FALSE, LAYING_HEAD, 0, 20),
  LENGTH ("min-piece", Laying, min_piece, FALSE, LAYING_MIN_PIECE, SHORTEST, 10000),
  LENGTH ("min-lap", Laying, min_lap, FALSE, LAYING_MIN_LAP, 0, 10000),
  LENGTH ("min-rip", Laying, min_rip, FALSE, LAYING_MIN_RIP, SHORTEST, 10000),
  LENGTH ("min-raked", Laying, min_raked, FALSE, LAYING_MIN_RAKED, SHORTEST, 10000),
  LENGTH ("kerf", Laying, kerf, FALSE, LAYING_KERF, 0, 20),
  WORD ("aim", Laying, aim, FALSE, LAYING_AIM, parse_aim, word_of_aim,
        "regular, fewest-cuts, least-waste"),
  WORD ("start", Laying, start, FALSE, LAYING_START, parse_side, word_of_side, "left, right"),
};

static const Field rule_fields[] = {
  WORD (
      "kind", RuleTag, kind, TRUE, 0, parse_rule, word_of_rule,
      "bearing, jamb-line, jamb-cuts, whole-ends, lap, lengths, symmetry-wall, symmetry-openings"),
  WORD ("keep", RuleTag, keep, TRUE, 0, parse_keep, word_of_keep, "prefer, must"),
  LENGTH ("length", RuleTag, length, FALSE, RULE_GAVE_LENGTH, 0, 10000),
  COUNT ("count", RuleTag, count, FALSE, RULE_GAVE_COUNT, 1, 1000),
};

static const Field end_fields[] = {
  WORD ("side", EndTag, side, TRUE, 0, parse_side, word_of_side, "left, right"),
  LENGTH ("return", EndTag, ret, FALSE, END_RETURN, 0, 10000),
  WORD ("through", EndTag, through, FALSE, END_THROUGH, parse_through, word_of_through,
        "odd, even, all"),
  { "up-to", VALUE_LENGTH, FALSE, offsetof (EndTag, up_to), 0, SHORTEST, LONGEST, .plain = "0" },
  TIES (EndTag, ties, END_TIES),
};

static const Field tee_fields[] = {
  LENGTH ("x", Tee, x, TRUE, 0, 0, LONGEST),
  LENGTH ("return", Tee, ret, TRUE, 0, SHORTEST, 10000),
  WORD ("through", Tee, through, TRUE, 0, parse_through, word_of_through, "odd, even, all"),
  { "up-to", VALUE_LENGTH, FALSE, offsetof (Tee, up_to), 0, SHORTEST, LONGEST, .plain = "0" },
  TIES (Tee, ties, 1),
};

static const Field movement_joint_fields[] = {
  LENGTH ("x", MovementJoint, x, TRUE, 0, SHORTEST, LONGEST),
  { "width", VALUE_LENGTH, FALSE, offsetof (MovementJoint, width), 0, 5, 50, .plain = "10" },
  TEXT ("filler", MovementJoint, filler),
};

static const Field steel_fields[] = {
  COUNT ("bars", Steel, bars, FALSE, STEEL_BARS, 1, 20),
  LENGTH ("diameter", Steel, diameter, FALSE, STEEL_DIAMETER, SHORTEST, 50),
  COUNT ("every", Steel, every, FALSE, STEEL_EVERY, 0, 10000),
  FLAG ("under-sills", Steel, under_sills, STEEL_UNDER_SILLS),
  FLAG ("over-heads", Steel, over_heads, STEEL_OVER_HEADS),
  LENGTH ("past", Steel, past, FALSE, STEEL_PAST, 0, LONGEST),
  LENGTH ("lap", Steel, lap, FALSE, STEEL_LAP, 0, 3000),
};

static const Field steel_row_fields[] = {
  COUNT ("course", SteelRow, course, TRUE, 0, 1, 10000),
  { "omit", VALUE_WORD, FALSE, offsetof (SteelRow, omit), 0, 0, 0, parse_flag, flag_word,
    "true, false", "false" },
};

static const Field opening_fields[] = {
  KEY ("id", Opening, key),
  NAME (Opening),
  WORD ("kind", Opening, kind, TRUE, 0, parse_kind, word_of_kind, "window, door, void"),
  LENGTH ("x", Opening, x, TRUE, 0, 0, LONGEST),
  LENGTH ("width", Opening, width, TRUE, 0, 10, LONGEST),
  LENGTH ("sill", Opening, sill, TRUE, 0, 0, LONGEST),
  LENGTH ("height", Opening, height, TRUE, 0, 10, LONGEST),
  LENGTH ("may-move", Opening, may_move, FALSE, OPENING_MAY_MOVE, 0, 10000),
  LENGTH ("drawn-x", Opening, drawn_x, FALSE, OPENING_DRAWN_X, 0, LONGEST),
  LENGTH ("planned-x", Opening, planned_x, FALSE, OPENING_PLANNED_X, 0, LONGEST),
  LENGTH ("planned-width", Opening, planned_width, FALSE, OPENING_PLANNED_WIDTH, 10, LONGEST),
  LENGTH ("planned-sill", Opening, planned_sill, FALSE, OPENING_PLANNED_SILL, 0, LONGEST),
  LENGTH ("planned-height", Opening, planned_height, FALSE, OPENING_PLANNED_HEIGHT, 10, LONGEST),
  NUMBER ("line-load", Opening, line_load, OPENING_LINE_LOAD, 0, OPENING_MOST_LOAD),
};

static const Field pin_fields[] = {
  COUNT ("course", Pin, course, TRUE, 0, 1, PIN_MAX_COURSE),
  LENGTH ("x", Pin, x, TRUE, 0, 0, LONGEST),
  { "length", VALUE_LENGTH, FALSE, offsetof (Pin, length), 0, SHORTEST, 10000, .plain = "0" },
};

static const Field top_fields[] = {
  LENGTH ("x", TopPoint, x, TRUE, 0, 0, LONGEST),
  LENGTH ("below", TopPoint, below, TRUE, 0, 0, LONGEST),
};

static const Field foot_fields[] = {
  LENGTH ("x", Foot, x, TRUE, 0, 0, LONGEST),
  LENGTH ("up", Foot, up, TRUE, 0, 0, LONGEST),
};

static const Field cap_fields[] = {
  LENGTH ("height", Cap, height, TRUE, 0, 10, 1000),
};

static const Field built_fields[] = {
  { "courses", VALUE_COUNT, FALSE, offsetof (Built, courses), 0, 0, BUILT_MAX_COURSES,
    .plain = "0" },
  LENGTH ("planned-length", Built, planned_length, FALSE, BUILT_PLANNED_LENGTH, 50, LONGEST),
  LENGTH ("plumb", Built, plumb, FALSE, BUILT_PLUMB, -1000, 1000),
  LENGTH ("bow", Built, bow, FALSE, BUILT_BOW, -1000, 1000),
  LENGTH ("bow-metre", Built, bow_metre, FALSE, BUILT_BOW_METRE, -1000, 1000),
  LENGTH ("bed-least", Built, bed_least, FALSE, BUILT_BED_LEAST, 0, 50),
  LENGTH ("bed-most", Built, bed_most, FALSE, BUILT_BED_MOST, 0, 50),
  TEXT ("as-of", Built, as_of),
};

static const Field laid_fields[] = {
  COUNT ("course", LaidTag, course, TRUE, 0, 1, BUILT_MAX_COURSES),
  { "perpends", VALUE_LENGTHS, FALSE, offsetof (LaidTag, perpends), 0, SHORTEST, LONGEST },
  { "perpends-at", VALUE_LENGTHS, FALSE, offsetof (LaidTag, at), 0, 0, LONGEST },
  COUNT ("over", LaidTag, over, FALSE, LAID_OVER, 0, BUILT_MAX_COURSES),
  LENGTH ("bottom", LaidTag, bottom, FALSE, LAID_BOTTOM, 0, LONGEST),
  LENGTH ("top", LaidTag, top, FALSE, LAID_TOP, 0, LONGEST),
  LENGTH ("top-right", LaidTag, top_right, FALSE, LAID_TOP_RIGHT, 0, LONGEST),
};

static const Field tolerance_fields[] = {
  WORD ("of", ToleranceTag, of, TRUE, 0, parse_tolerance, word_of_tolerance,
        "length, top, level, bed, opening, plumb, bow, bow-metre"),
  LENGTH ("limit", ToleranceTag, limit, TRUE, 0, 0, 200),
};

static const Field survey_fields[] = {
  LENGTH ("least", Survey, least, FALSE, SURVEY_LEAST, 0, 200),
  LENGTH ("wanted", Survey, wanted, FALSE, SURVEY_WANTED, 0, 200),
  LENGTH ("most", Survey, most, FALSE, SURVEY_MOST, 0, 200),
  LENGTH ("tolerance", Survey, tolerance, FALSE, SURVEY_TOLERANCE, 0, 100),
  LENGTH ("square", Survey, square, FALSE, SURVEY_SQUARE, 0, 100),
  LENGTH ("tape", Survey, tape, FALSE, SURVEY_TAPE, 500, 100000),
  LENGTH ("first-course", Survey, first_course, FALSE, SURVEY_FIRST_COURSE, -LONGEST, LONGEST),
};

static const Field reading_fields[] = {
  { "point", VALUE_TEXT, FALSE, offsetof (Reading, point), .plain = "" },
  LENGTH ("back", Reading, back, FALSE, READING_BACK, -20000, 20000),
  LENGTH ("inter", Reading, inter, FALSE, READING_INTER, -20000, 20000),
  LENGTH ("fore", Reading, fore, FALSE, READING_FORE, -20000, 20000),
  LENGTH ("level", Reading, level, FALSE, READING_LEVEL, -LONGEST, LONGEST),
};

static const Field place_fields[] = {
  POINTER ("wall", PlaceTag, wall),
  LENGTH ("x", PlaceTag, x, TRUE, 0, 0, LONGEST),
};

static const Field diagonal_fields[] = {
  NAME (DiagonalTag),
  POINTER ("along", DiagonalTag, along),
  POINTER ("across", DiagonalTag, across),
  LENGTH ("first", DiagonalTag, first, FALSE, DIAGONAL_FIRST, 1, LONGEST),
  LENGTH ("second", DiagonalTag, second, FALSE, DIAGONAL_SECOND, 1, LONGEST),
  LENGTH ("length", DiagonalTag, length, TRUE, 0, 1, LONGEST),
};

static const Field work_fields[] = {
  COUNT ("gang", WorkRates, gang, FALSE, WORK_GANG, 1, WORK_MOST_GANG),
  NUMBER ("hours-a-day", WorkRates, hours_a_day, WORK_HOURS_A_DAY, WORK_LEAST_HOURS,
          WORK_MOST_HOURS),
  NUMBER ("hours-a-m2", WorkRates, hours_a_m2, WORK_HOURS_A_M2, 0, WORK_MOST_HOURS),
  NUMBER ("minutes-a-block", WorkRates, minutes_a_block, WORK_MINUTES_A_BLOCK, 0,
          WORK_MOST_MINUTES),
  NUMBER ("minutes-a-cut", WorkRates, minutes_a_cut, WORK_MINUTES_A_CUT, 0, WORK_MOST_MINUTES),
  NUMBER ("minutes-a-metre", WorkRates, minutes_a_metre, WORK_MINUTES_A_METRE, 0,
          WORK_MOST_MINUTES),
  LENGTH ("rise", WorkRates, rise, FALSE, WORK_RISE, 1, LONGEST),
  COUNT ("lifts-a-day", WorkRates, lifts_a_day, FALSE, WORK_LIFTS_A_DAY, 0, WORK_MOST_PIECES),
  COUNT ("blocks-a-pallet", WorkRates, blocks_a_pallet, FALSE, WORK_BLOCKS_A_PALLET, 0,
         WORK_MOST_PIECES),
};

#define ELEMENT(name, fields, mask)                                                                \
  {                                                                                                \
    name, fields, G_N_ELEMENTS (fields), mask                                                      \
  }

const Element element_project = ELEMENT ("project", project_fields, 0);
const Element element_block = ELEMENT ("block", block_fields, 0);
const Element element_wall = ELEMENT ("wall", wall_fields, offsetof (WallTag, mask));
const Element element_laying = ELEMENT ("laying", laying_fields, offsetof (Laying, given));
const Element element_rule = ELEMENT ("rule", rule_fields, offsetof (RuleTag, mask));
const Element element_end = ELEMENT ("end", end_fields, offsetof (EndTag, mask));
const Element element_tee = ELEMENT ("tee", tee_fields, offsetof (Tee, ties.given));
const Element element_movement_joint = ELEMENT ("movement-joint", movement_joint_fields, 0);
const Element element_steel = ELEMENT ("steel", steel_fields, offsetof (Steel, set));
const Element element_steel_row = ELEMENT ("steel-row", steel_row_fields, 0);
const Element element_opening = ELEMENT ("opening", opening_fields, offsetof (Opening, given));
const Element element_pin = ELEMENT ("pin", pin_fields, 0);
const Element element_top = ELEMENT ("top", top_fields, 0);
const Element element_foot = ELEMENT ("foot", foot_fields, 0);
const Element element_cap = ELEMENT ("cap", cap_fields, 0);
const Element element_built = ELEMENT ("built", built_fields, offsetof (Built, given));
const Element element_laid = ELEMENT ("laid", laid_fields, offsetof (LaidTag, mask));
const Element element_tolerance = ELEMENT ("tolerance", tolerance_fields, 0);
const Element element_survey = ELEMENT ("survey", survey_fields, offsetof (Survey, given));
const Element element_reading = ELEMENT ("reading", reading_fields, offsetof (Reading, given));
const Element element_place = ELEMENT ("at", place_fields, 0);
const Element element_diagonal
    = ELEMENT ("diagonal", diagonal_fields, offsetof (DiagonalTag, mask));

const Element element_work = ELEMENT ("work", work_fields, offsetof (WorkRates, given));

const Field *
element_field (const Element *element, const char *name)
{
  for (guint i = 0; i < element->n_fields; i++)
    if (g_str_equal (element->fields[i].name, name))
      return &element->fields[i];
  return NULL;
}

/* What a message shows of a value. */
#define QUOTED_CHARACTERS 60

static gboolean
is_plain (gunichar c)
{
  return g_unichar_isprint (c) && g_unichar_type (c) != G_UNICODE_FORMAT;
}

char *
quoted (const char *text)
{
  GString *out = g_string_new ("\"");
  int left = QUOTED_CHARACTERS;
  for (const char *at = text; *at != '\0' && left > 0; at = g_utf8_next_char (at), left--)
    {
      gunichar c = g_utf8_get_char (at);
      g_string_append_unichar (out, is_plain (c) ? c : 0xfffd);
      if (left == 1 && *g_utf8_next_char (at) != '\0')
        g_string_append (out, "…");
    }
  return g_string_free (g_string_append_c (out, '"'), FALSE);
}

/* Validators need not know more digits than these, and no number of ours has more. */
#define NUMBER_CHARACTERS 24

/* A decimal as XML Schema writes it: sign, digits, a point with digits before or behind it. */
static gboolean
is_decimal (const char *text)
{
  const char *at = text + (*text == '+' || *text == '-');
  gsize before = strspn (at, "0123456789");
  at += before;
  gsize behind = *at == '.' ? strspn (at + 1, "0123456789") : 0;
  at += (*at == '.') + behind;
  return before + behind > 0 && *at == '\0' && at - text <= NUMBER_CHARACTERS;
}

static gboolean
is_count (const char *text)
{
  gsize n = strspn (text, "0123456789");
  return n > 0 && n <= NUMBER_CHARACTERS && text[n] == '\0';
}

/* To the millionth, with no exponent, and no zeros at the end. */
static char *
number_text (double value)
{
  char text[G_ASCII_DTOSTR_BUF_SIZE];
  g_ascii_formatd (text, sizeof text, "%.6f", value);
  gsize n = strlen (text);
  while (text[n - 1] == '0')
    n--;
  return g_strndup (text, text[n - 1] == '.' ? n - 1 : n);
}

/* Judged by what is written, before it is rounded, as the schema does. */
static gboolean
is_within (const Field *field, const char *text)
{
  double value = g_ascii_strtod (text, NULL);
  return value >= field->min && value <= field->max;
}

static gboolean
parse_length (const Field *field, const char *text, Length *out)
{
  return is_decimal (text) && is_within (field, text) && length_parse (text, out);
}

/* One after another, white space between. */
static gboolean
parse_lengths (const Field *field, const char *text, GArray **out)
{
  g_auto (GStrv) words = g_strsplit_set (text, " \t\r\n", -1);
  if (*out == NULL)
    *out = g_array_new (FALSE, FALSE, sizeof (Length));
  g_array_set_size (*out, 0);
  for (guint i = 0; words[i] != NULL; i++)
    {
      Length length;
      if (*words[i] == '\0')
        continue;
      if (!parse_length (field, words[i], &length))
        return FALSE;
      g_array_append_val (*out, length);
    }
  return TRUE;
}

static gboolean
parse_count (const Field *field, const char *text, gint32 *out)
{
  if (!is_count (text) || !is_within (field, text))
    return FALSE;
  *out = (gint32) g_ascii_strtoll (text, NULL, 10);
  return TRUE;
}

static gboolean
parse_density (const Field *field, const char *text, double *out)
{
  if (!is_decimal (text) || !is_within (field, text))
    return FALSE;
  *out = g_ascii_strtod (text, NULL);
  return TRUE;
}

static gboolean
parse_number (const Field *field, const char *text, double *out)
{
  if (!is_decimal (text) || !is_within (field, text))
    return FALSE;
  g_autofree char *rounded = number_text (g_ascii_strtod (text, NULL));
  *out = g_ascii_strtod (rounded, NULL) + 0.0; /* no zero with a sign */
  return TRUE;
}

static gboolean
parse_string (const Field *field, const char *text, char **out)
{
  if (field->kind != VALUE_TEXT && xmlValidateNCName ((const xmlChar *) text, 0) != 0)
    return FALSE;
  g_free (*out);
  *out = g_strdup (text);
  return TRUE;
}

static gboolean
parse_value (const Field *field, const char *text, void *value)
{
  switch (field->kind)
    {
    case VALUE_LENGTH:
      return parse_length (field, text, value);
    case VALUE_LENGTHS:
      return parse_lengths (field, text, value);
    case VALUE_COUNT:
      return parse_count (field, text, value);
    case VALUE_DENSITY:
      return parse_density (field, text, value);
    case VALUE_NUMBER:
      return parse_number (field, text, value);
    case VALUE_WORD:
      return field->parse_word (text, value);
    case VALUE_TEXT:
    case VALUE_KEY:
    case VALUE_POINTER:
    default:
      return parse_string (field, text, value);
    }
}

static char *
outside (const Field *field, const char *shown)
{
  g_autofree char *min = number_text (field->min);
  g_autofree char *max = number_text (field->max);
  return g_strdup_printf (_ ("%s is not between %s and %s"), shown, min, max);
}

/* Of the first that was not taken. */
static char *
reason_of_lengths (const Field *field, const char *text)
{
  g_auto (GStrv) words = g_strsplit_set (text, " \t\r\n", -1);
  guint i = 0;
  Length length;
  while (*words[i] == '\0' || parse_length (field, words[i], &length))
    i++;
  g_autofree char *shown = quoted (words[i]);
  return is_decimal (words[i]) ? outside (field, shown)
                               : g_strdup_printf (_ ("%s is not a number of millimetres"), shown);
}

/* Why parse_value() did not take it. */
static char *
reason (const Field *field, const char *text)
{
  g_autofree char *shown = quoted (text);
  switch (field->kind)
    {
    case VALUE_LENGTH:
      return is_decimal (text) ? outside (field, shown)
                               : g_strdup_printf (_ ("%s is not a number of millimetres"), shown);
    case VALUE_LENGTHS:
      return reason_of_lengths (field, text);
    case VALUE_COUNT:
      return is_count (text) ? outside (field, shown)
                             : g_strdup_printf (_ ("%s is not a whole number"), shown);
    case VALUE_DENSITY:
      return is_decimal (text)
                 ? outside (field, shown)
                 : g_strdup_printf (_ ("%s is not a number of kilograms in a cubic metre"), shown);
    case VALUE_NUMBER:
      return is_decimal (text) ? outside (field, shown)
                               : g_strdup_printf (_ ("%s is not a number"), shown);
    case VALUE_WORD:
      return g_strdup_printf (_ ("%s is none of: %s"), shown, field->words);
    case VALUE_TEXT:
    case VALUE_KEY:
    case VALUE_POINTER:
    default:
      return g_strdup_printf (
          _ ("%s is not a name of letters and digits that begins with a letter"), shown);
    }
}

char *
field_parse (const Element *element, const Field *field, const char *text, void *target)
{
  g_autofree char *bare = g_strdup (text);
  if (field->kind != VALUE_TEXT)
    g_strstrip (bare);
  if (!parse_value (field, bare, (char *) target + field->offset))
    return reason (field, bare);
  if (field->bit != 0)
    *(guint *) (void *) ((char *) target + element->mask) |= field->bit;
  return NULL;
}

/* "%.3e" of 0.0125 is 1.250e-02: the digits are shifted to where they belong, for a decimal has no
 * exponent. */
static char *
plain_decimal (const char *scientific)
{
  int exponent = (int) g_ascii_strtoll (strchr (scientific, 'e') + 1, NULL, 10);
  g_autoptr (GString) digits = g_string_new (NULL);
  for (const char *at = scientific; *at != 'e'; at++)
    if (g_ascii_isdigit (*at))
      g_string_append_c (digits, *at);
  for (; exponent < 0; exponent++)
    g_string_prepend_c (digits, '0');
  while (digits->len < (gsize) exponent + 1)
    g_string_append_c (digits, '0');
  g_string_insert_c (digits, exponent + 1, '.');
  while (digits->str[digits->len - 1] == '0')
    g_string_truncate (digits, digits->len - 1);
  if (digits->str[digits->len - 1] == '.')
    g_string_truncate (digits, digits->len - 1);
  return g_strdup (digits->str);
}

/* The shortest decimal that reads back as the same number; `value` is positive and finite. */
static char *
density_text (double value)
{
  char text[G_ASCII_DTOSTR_BUF_SIZE];
  for (int digits = 0; digits < 17; digits++)
    {
      char format[8];
      g_snprintf (format, sizeof format, "%%.%de", digits);
      g_ascii_formatd (text, sizeof text, format, value);
      /* Written and read back to the very same bits. */
      if (memcmp (&(double){ g_ascii_strtod (text, NULL) }, &value, sizeof value) == 0)
        break;
    }
  return plain_decimal (text);
}

static char *
lengths_text (const GArray *lengths)
{
  GString *text = g_string_new (NULL);
  for (guint i = 0; lengths != NULL && i < lengths->len; i++)
    {
      g_autofree char *length = length_format (g_array_index (lengths, Length, i));
      g_string_append_printf (text, "%s%s", i > 0 ? " " : "", length);
    }
  return g_string_free (text, text->len == 0);
}

static char *
value_text (const Field *field, const void *value)
{
  switch (field->kind)
    {
    case VALUE_LENGTH:
      return length_format (*(const Length *) value);
    case VALUE_LENGTHS:
      return lengths_text (*(GArray *const *) value);
    case VALUE_COUNT:
      return g_strdup_printf ("%" G_GINT32_FORMAT, *(const gint32 *) value);
    case VALUE_DENSITY:
      return density_text (*(const double *) value);
    case VALUE_NUMBER:
      return number_text (*(const double *) value);
    case VALUE_WORD:
      return g_strdup (field->word (value));
    case VALUE_TEXT:
    case VALUE_KEY:
    case VALUE_POINTER:
    default:
      return g_strdup (*(char *const *) value);
    }
}

char *
field_text (const Element *element, const Field *field, const void *source)
{
  const void *value = (const char *) source + field->offset;
  const void *mask = (const char *) source + element->mask;
  if (field->bit != 0 && (*(const guint *) mask & field->bit) == 0)
    return NULL;
  char *text = value_text (field, value);
  if (g_strcmp0 (text, field->plain) == 0)
    g_clear_pointer (&text, g_free);
  return text;
}
