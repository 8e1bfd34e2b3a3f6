#include "app/fields.h"

#include <glib/gi18n.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "model/plan-edit.h"

typedef enum
{
  OPENING_IS,
  OPENING_NAME,
  OPENING_X,
  OPENING_WIDTH,
  OPENING_SILL,
  OPENING_HEIGHT,
  OPENING_MOVE,
  OPENING_DRAWN,
  OPENING_LOAD,
  WALL_NAME,
  WALL_LENGTH,
  WALL_HEIGHT,
  LAY_AIM,
  LAY_START,
  LAY_FIRST_BED,
  LAY_BED,
  LAY_HEAD,
  LAY_MIN_PIECE,
  LAY_MIN_LAP,
  LAY_MIN_RIP,
  LAY_KERF,
  LAY_MIN_RAKED,
  END_LEFT_RETURN,
  END_LEFT_THROUGH,
  END_RIGHT_RETURN,
  END_RIGHT_THROUGH,
  END_LEFT_UP_TO,
  END_RIGHT_UP_TO,
  STEEL_IS,
  STEEL_N_BARS,
  STEEL_OF_DIAMETER,
  STEEL_IN_EVERY,
  STEEL_SILLS,
  STEEL_HEADS,
  STEEL_RUNS_PAST,
  STEEL_LAPS,
  BLOCK_IS,
  BLOCK_NAME,
  BLOCK_LENGTH,
  BLOCK_HEIGHT,
  BLOCK_THICKNESS,
  BLOCK_DENSITY,
  BLOCK_STRENGTH,
  PROJECT_TITLE,
  PROJECT_CLIENT,
  PROJECT_SITE,
  PROJECT_AUTHOR,
  PROJECT_DATE,
  RULES_FIRST, /* of each rule two: whether it is kept, and its number */
} Which;

static const char *const kinds[] = { N_ ("Window"), N_ ("Door"), N_ ("Void"), NULL };
static const char *const aims[]
    = { N_ ("Fewest cuts"), N_ ("Regular half bond"), N_ ("Least waste"), NULL };
static const char *const sides[] = { N_ ("Left end"), N_ ("Right end"), NULL };
static const char *const throughs[]
    = { N_ ("Odd courses"), N_ ("Even courses"), N_ ("Every course"), NULL };

static const char *const keeps[] = { N_ ("Off"), N_ ("Preferred"), N_ ("Must"), NULL };
static const char *const laps[] = { N_ ("Half"), N_ ("A third"), N_ ("A quarter"), NULL };

static const Field fields[] = {
  { ABOUT_OPENING, FIELD_KIND_CHOICE, N_ ("Kind"), kinds, OPENING_IS },
  { ABOUT_OPENING, FIELD_KIND_TEXT, N_ ("Name"), NULL, OPENING_NAME },
  { ABOUT_OPENING, FIELD_KIND_LENGTH, N_ ("Left jamb at"), NULL, OPENING_X },
  { ABOUT_OPENING, FIELD_KIND_LENGTH, N_ ("Width"), NULL, OPENING_WIDTH },
  { ABOUT_OPENING, FIELD_KIND_LENGTH, N_ ("Sill at"), NULL, OPENING_SILL },
  { ABOUT_OPENING, FIELD_KIND_LENGTH, N_ ("Height"), NULL, OPENING_HEIGHT },
  { ABOUT_OPENING, FIELD_KIND_LENGTH, N_ ("May move ±"), NULL, OPENING_MOVE },
  { ABOUT_OPENING, FIELD_KIND_LENGTH, N_ ("Drawn at"), NULL, OPENING_DRAWN },
  { ABOUT_OPENING, FIELD_KIND_NUMBER, N_ ("Load over it, kN/m"), NULL, OPENING_LOAD },
  { ABOUT_WALL, FIELD_KIND_TEXT, N_ ("Name"), NULL, WALL_NAME },
  { ABOUT_WALL, FIELD_KIND_LENGTH, N_ ("Length"), NULL, WALL_LENGTH },
  { ABOUT_WALL, FIELD_KIND_LENGTH, N_ ("Height"), NULL, WALL_HEIGHT },
  { ABOUT_LAYING, FIELD_KIND_CHOICE, N_ ("Aim"), aims, LAY_AIM },
  { ABOUT_LAYING, FIELD_KIND_CHOICE, N_ ("Start"), sides, LAY_START },
  { ABOUT_LAYING, FIELD_KIND_LENGTH, N_ ("Levelling bed"), NULL, LAY_FIRST_BED },
  { ABOUT_LAYING, FIELD_KIND_LENGTH, N_ ("Bed joint"), NULL, LAY_BED },
  { ABOUT_LAYING, FIELD_KIND_LENGTH, N_ ("Head joint"), NULL, LAY_HEAD },
  { ABOUT_LAYING, FIELD_KIND_LENGTH, N_ ("Shortest piece"), NULL, LAY_MIN_PIECE },
  { ABOUT_LAYING, FIELD_KIND_LENGTH, N_ ("Least lap"), NULL, LAY_MIN_LAP },
  { ABOUT_LAYING, FIELD_KIND_LENGTH, N_ ("Thinnest strip"), NULL, LAY_MIN_RIP },
  { ABOUT_LAYING, FIELD_KIND_LENGTH, N_ ("Saw cut"), NULL, LAY_KERF },
  { ABOUT_LAYING, FIELD_KIND_LENGTH, N_ ("Shortest raked piece"), NULL, LAY_MIN_RAKED },
  { ABOUT_ENDS, FIELD_KIND_LENGTH, N_ ("Left return"), NULL, END_LEFT_RETURN },
  { ABOUT_ENDS, FIELD_KIND_CHOICE, N_ ("It runs through in"), throughs, END_LEFT_THROUGH },
  { ABOUT_ENDS, FIELD_KIND_LENGTH, N_ ("Right return"), NULL, END_RIGHT_RETURN },
  { ABOUT_ENDS, FIELD_KIND_CHOICE, N_ ("It runs through in"), throughs, END_RIGHT_THROUGH },
  { ABOUT_ENDS, FIELD_KIND_LENGTH, N_ ("Left one ends at"), NULL, END_LEFT_UP_TO },
  { ABOUT_ENDS, FIELD_KIND_LENGTH, N_ ("Right one ends at"), NULL, END_RIGHT_UP_TO },
  { ABOUT_STEEL, FIELD_KIND_YES, N_ ("Steel by rule"), NULL, STEEL_IS },
  { ABOUT_STEEL, FIELD_KIND_NUMBER, N_ ("Every … courses"), NULL, STEEL_IN_EVERY },
  { ABOUT_STEEL, FIELD_KIND_NUMBER, N_ ("Bars side by side"), NULL, STEEL_N_BARS },
  { ABOUT_STEEL, FIELD_KIND_LENGTH, N_ ("Diameter"), NULL, STEEL_OF_DIAMETER },
  { ABOUT_STEEL, FIELD_KIND_YES, N_ ("Under sills"), NULL, STEEL_SILLS },
  { ABOUT_STEEL, FIELD_KIND_YES, N_ ("Over heads"), NULL, STEEL_HEADS },
  { ABOUT_STEEL, FIELD_KIND_LENGTH, N_ ("Past openings"), NULL, STEEL_RUNS_PAST },
  { ABOUT_STEEL, FIELD_KIND_LENGTH, N_ ("Overlap of bars"), NULL, STEEL_LAPS },
  { ABOUT_BLOCK, FIELD_KIND_BLOCK, N_ ("The wall is of"), NULL, BLOCK_IS },
  { ABOUT_BLOCK, FIELD_KIND_TEXT, N_ ("Name"), NULL, BLOCK_NAME },
  { ABOUT_BLOCK, FIELD_KIND_LENGTH, N_ ("Length"), NULL, BLOCK_LENGTH },
  { ABOUT_BLOCK, FIELD_KIND_LENGTH, N_ ("Height"), NULL, BLOCK_HEIGHT },
  { ABOUT_BLOCK, FIELD_KIND_LENGTH, N_ ("Thickness"), NULL, BLOCK_THICKNESS },
  { ABOUT_BLOCK, FIELD_KIND_NUMBER, N_ ("Density, kg/m³"), NULL, BLOCK_DENSITY },
  { ABOUT_BLOCK, FIELD_KIND_NUMBER, N_ ("Design strength, N/mm²"), NULL, BLOCK_STRENGTH },
  { ABOUT_PROJECT, FIELD_KIND_TEXT, N_ ("Title"), NULL, PROJECT_TITLE },
  { ABOUT_PROJECT, FIELD_KIND_TEXT, N_ ("Client"), NULL, PROJECT_CLIENT },
  { ABOUT_PROJECT, FIELD_KIND_TEXT, N_ ("Site"), NULL, PROJECT_SITE },
  { ABOUT_PROJECT, FIELD_KIND_TEXT, N_ ("Drawn by"), NULL, PROJECT_AUTHOR },
  { ABOUT_PROJECT, FIELD_KIND_TEXT, N_ ("Date"), NULL, PROJECT_DATE },
};

static RuleKind
rule_of (const Field *field)
{
  return (RuleKind) ((field->which - RULES_FIRST) / 2);
}

static gboolean
is_rule_number (const Field *field)
{
  return field->about == ABOUT_RULES && (field->which - RULES_FIRST) % 2 == 1;
}

/* One choice for each rule, and a field for its number; the wanted lap is a choice alone. */
static guint
add_rule_fields (Field *list)
{
  guint n = 0;

  for (RuleKind kind = 0; kind < N_RULES; kind++)
    {
      const RuleRow *row = rule_row (kind);
      const int which = RULES_FIRST + 2 * (int) kind;

      list[n++] = (Field){ ABOUT_RULES, FIELD_KIND_CHOICE, row->label,
                           kind == RULE_LAP ? laps : keeps, which };
      if (row->number && kind != RULE_LAP)
        list[n++] = (Field){ ABOUT_RULES,
                             row->value == RULE_LENGTH ? FIELD_KIND_LENGTH : FIELD_KIND_NUMBER,
                             row->number, NULL, which + 1 };
    }
  return n;
}

const Field *
hb_fields_list (guint *n)
{
  static Field all[G_N_ELEMENTS (fields) + 2 * N_RULES];
  static guint n_all;

  if (n_all == 0)
    {
      memcpy (all, fields, sizeof fields);
      n_all = G_N_ELEMENTS (fields) + add_rule_fields (all + G_N_ELEMENTS (fields));
    }
  *n = n_all;
  return all;
}

/* How high the wall goes that ends there: empty is all the way up. */
static gboolean
is_up_to (int which)
{
  return which == END_LEFT_UP_TO || which == END_RIGHT_UP_TO;
}

gboolean
hb_field_is_shown (const Field *field, const Wall *wall)
{
  if (field->which == LAY_MIN_RAKED)
    return wall->tops->len > 0 || wall->laying.given & LAYING_MIN_RAKED;
  /* In a plan it is said by where the other wall stands. */
  if (is_up_to (field->which))
    return wall->ends[field->which == END_LEFT_UP_TO ? SIDE_LEFT : SIDE_RIGHT].ret > 0
           && !wall->place.given;
  return !is_rule_number (field) || wall->laying.rules[rule_of (field)].keep != KEEP_OFF;
}

const char *
hb_field_about_text (FieldAbout about)
{
  static const char *const texts[N_ABOUTS] = {
    [ABOUT_OPENING] = N_ ("Opening"), [ABOUT_WALL] = N_ ("Wall"),
    [ABOUT_LAYING] = N_ ("Laying"),   [ABOUT_RULES] = N_ ("Rules"),
    [ABOUT_ENDS] = N_ ("Ends"),       [ABOUT_STEEL] = N_ ("Steel"),
    [ABOUT_BLOCK] = N_ ("Block"),     [ABOUT_PROJECT] = N_ ("Project"),
  };

  return texts[about];
}

/* ---- where each value lies: one function finds it for reading and for writing ---- */

static Length *
length_at (int which, Wall *wall, Opening *opening, Block *block)
{
  switch ((Which) which)
    {
    case OPENING_X:
      return opening ? &opening->x : NULL;
    case OPENING_WIDTH:
      return opening ? &opening->width : NULL;
    case OPENING_SILL:
      return opening ? &opening->sill : NULL;
    case OPENING_HEIGHT:
      return opening ? &opening->height : NULL;
    case OPENING_MOVE:
      return opening ? &opening->may_move : NULL;
    case OPENING_DRAWN:
      return opening ? &opening->drawn_x : NULL;
    case WALL_LENGTH:
      return &wall->length;
    case WALL_HEIGHT:
      return &wall->height;
    case LAY_FIRST_BED:
      return &wall->laying.first_bed;
    case LAY_BED:
      return &wall->laying.bed;
    case LAY_HEAD:
      return &wall->laying.head;
    case LAY_MIN_PIECE:
      return &wall->laying.min_piece;
    case LAY_MIN_LAP:
      return &wall->laying.min_lap;
    case LAY_MIN_RIP:
      return &wall->laying.min_rip;
    case LAY_KERF:
      return &wall->laying.kerf;
    case END_LEFT_RETURN:
      return &wall->ends[SIDE_LEFT].ret;
    case END_RIGHT_RETURN:
      return &wall->ends[SIDE_RIGHT].ret;
    case LAY_MIN_RAKED:
      return &wall->laying.min_raked;
    case END_LEFT_UP_TO:
      return &wall->ends[SIDE_LEFT].up_to;
    case END_RIGHT_UP_TO:
      return &wall->ends[SIDE_RIGHT].up_to;
    case STEEL_OF_DIAMETER:
      return &wall->steel.diameter;
    case STEEL_RUNS_PAST:
      return &wall->steel.past;
    case STEEL_LAPS:
      return &wall->steel.lap;
    case BLOCK_LENGTH:
      return &block->length;
    case BLOCK_HEIGHT:
      return &block->height;
    case BLOCK_THICKNESS:
      return &block->thickness;
    default:
      return NULL;
    }
}

static char **
text_at (int which, Wall *wall, Opening *opening, Block *block)
{
  switch ((Which) which)
    {
    case OPENING_NAME:
      return opening ? &opening->name : NULL;
    case WALL_NAME:
      return &wall->name;
    case BLOCK_NAME:
      return &block->name;
    default:
      return NULL;
    }
}

/* Numbers with a fraction. */
static double *
decimal_at (int which, Opening *opening, Block *block)
{
  switch ((Which) which)
    {
    case OPENING_LOAD:
      return opening ? &opening->line_load : NULL;
    case BLOCK_DENSITY:
      return block ? &block->density : NULL;
    case BLOCK_STRENGTH:
      return block ? &block->strength : NULL;
    default:
      return NULL;
    }
}

/* Whether it may be left empty: nothing is known then. */
static gboolean
may_be_empty (int which)
{
  return which == OPENING_LOAD || which == BLOCK_STRENGTH;
}

static gint32 *
number_at (int which, Wall *wall)
{
  switch ((Which) which)
    {
    case STEEL_N_BARS:
      return &wall->steel.bars;
    case STEEL_IN_EVERY:
      return &wall->steel.every;
    default:
      return NULL;
    }
}

static gboolean *
yes_at (int which, Wall *wall)
{
  switch ((Which) which)
    {
    case STEEL_IS:
      return &wall->steel.given;
    case STEEL_SILLS:
      return &wall->steel.under_sills;
    case STEEL_HEADS:
      return &wall->steel.over_heads;
    default:
      return NULL;
    }
}

/* The bit that tells whether the builder gave a value of the laying; 0: not of the laying. */
static guint
laying_bit (int which)
{
  static const guint bits[] = {
    [LAY_AIM] = LAYING_AIM,
    [LAY_START] = LAYING_START,
    [LAY_FIRST_BED] = LAYING_FIRST_BED,
    [LAY_BED] = LAYING_BED,
    [LAY_HEAD] = LAYING_HEAD,
    [LAY_MIN_PIECE] = LAYING_MIN_PIECE,
    [LAY_MIN_LAP] = LAYING_MIN_LAP,
    [LAY_MIN_RIP] = LAYING_MIN_RIP,
    [LAY_KERF] = LAYING_KERF,
    [LAY_MIN_RAKED] = LAYING_MIN_RAKED,
  };

  return which < (int) G_N_ELEMENTS (bits) ? bits[which] : 0;
}

/* The same of an opening. */
static guint
opening_bit (int which)
{
  if (which == OPENING_MOVE)
    return OPENING_MAY_MOVE;
  if (which == OPENING_LOAD)
    return OPENING_LINE_LOAD;
  return which == OPENING_DRAWN ? OPENING_DRAWN_X : 0;
}

static guint
steel_bit (int which)
{
  switch ((Which) which)
    {
    case STEEL_N_BARS:
      return STEEL_BARS;
    case STEEL_OF_DIAMETER:
      return STEEL_DIAMETER;
    case STEEL_IN_EVERY:
      return STEEL_EVERY;
    case STEEL_SILLS:
      return STEEL_UNDER_SILLS;
    case STEEL_HEADS:
      return STEEL_OVER_HEADS;
    case STEEL_RUNS_PAST:
      return STEEL_PAST;
    case STEEL_LAPS:
      return STEEL_LAP;
    default:
      return 0;
    }
}

static const char *
project_text (int which, const Project *project)
{
  const char *texts[]
      = { project->title, project->client, project->site, project->author, project->date };
  const char *text = texts[which - PROJECT_TITLE];

  return text ? text : "";
}

/* In the order of the choices. */
static const Through through_choices[] = { THROUGH_ODD, THROUGH_EVEN, THROUGH_ALL };

/* ---- reading ---- */

static int
choice_of_through (Through through)
{
  int choice = 0;

  while (through_choices[choice] != through)
    choice++;
  return choice;
}

static int
choice_of (int which, const Wall *wall, const Opening *opening)
{
  switch ((Which) which)
    {
    case OPENING_IS:
      return opening ? (int) opening->kind : 0;
    case LAY_AIM:
      return wall->laying.given & LAYING_AIM ? (int) wall->laying.aim : (int) AIM_FEWEST_CUTS;
    case LAY_START:
      return wall->laying.given & LAYING_START ? (int) wall->laying.start : (int) SIDE_LEFT;
    case END_LEFT_THROUGH:
      return choice_of_through (wall->ends[SIDE_LEFT].through);
    case END_RIGHT_THROUGH:
      return choice_of_through (wall->ends[SIDE_RIGHT].through);
    default:
      return 0;
    }
}

static guint
block_index (const Project *project, BlockId id)
{
  for (guint i = 0; i < project->blocks->len; i++)
    if (project_block_at (project, i)->id.n == id.n)
      return i;
  return 0;
}

static char *
length_string (Length length)
{
  char text[LENGTH_TEXT_SIZE];

  return g_strdup (length_text (length, text));
}

static char *
rule_text (const Field *field, const Rule *rule)
{
  if (!is_rule_number (field) && rule_of (field) == RULE_LAP)
    return g_strdup_printf ("%d", rule->keep == KEEP_OFF || !rule->has_value ? 0 : rule->value - 2);
  if (!is_rule_number (field))
    return g_strdup_printf ("%d", (int) rule->keep);
  if (!rule->has_value)
    return g_strdup ("");
  return field->kind == FIELD_KIND_LENGTH ? length_string (rule->value)
                                          : g_strdup_printf ("%d", rule->value);
}

/* "" where nothing is known. */
static char *
decimal_text (int which, const double *decimal)
{
  if (!decimal || (which == BLOCK_STRENGTH && !(*decimal > 0)))
    return g_strdup ("");
  return g_strdup_printf ("%g", *decimal);
}

char *
hb_field_text (const Field *field, const Project *project, const Wall *wall, OpeningId id)
{
  Wall *w = (Wall *) wall;
  Opening *opening = (Opening *) wall_opening (wall, id);
  Block *block = (Block *) project_block (project, wall->block);
  const guint bit = laying_bit (field->which);

  if (field->about == ABOUT_PROJECT)
    return g_strdup (project_text (field->which, project));
  if (field->about == ABOUT_RULES)
    return rule_text (field, &wall->laying.rules[rule_of (field)]);
  if (field->kind == FIELD_KIND_CHOICE)
    return g_strdup_printf ("%d", choice_of (field->which, wall, opening));
  if (field->kind == FIELD_KIND_BLOCK)
    return g_strdup_printf ("%u", block_index (project, wall->block));
  if (bit && !(wall->laying.given & bit))
    return g_strdup ("");
  if (opening && opening_bit (field->which) && !(opening->given & opening_bit (field->which)))
    return g_strdup ("");
  if (field->kind == FIELD_KIND_LENGTH)
    {
      const Length *length = length_at (field->which, w, opening, block);

      if (length && *length == 0 && is_up_to (field->which))
        return g_strdup ("");
      return length ? length_string (*length) : g_strdup ("");
    }
  if (field->kind == FIELD_KIND_TEXT)
    {
      char **text = text_at (field->which, w, opening, block);

      return g_strdup (text ? *text : "");
    }
  if (decimal_at (field->which, opening, block) || may_be_empty (field->which))
    return decimal_text (field->which, decimal_at (field->which, opening, block));
  if (field->kind == FIELD_KIND_NUMBER)
    return g_strdup_printf ("%d", *number_at (field->which, w));
  return g_strdup (*yes_at (field->which, w) ? "1" : "0");
}

static char *
rule_default_text (const Field *field, const Wall *wall, const Block *block)
{
  const Laying resolved = laying_resolve (&wall->laying, block);
  const gint32 number = rule_default (rule_of (field), &resolved, block);

  return field->kind == FIELD_KIND_LENGTH ? length_string (number) : g_strdup_printf ("%d", number);
}

char *
hb_field_default (const Field *field, const Project *project, const Wall *wall)
{
  g_autoptr (Wall) resolved = NULL;
  const Block *block = project_block (project, wall->block);

  if (is_rule_number (field))
    return rule_default_text (field, wall, block);
  if (is_up_to (field->which))
    return g_strdup (_ ("the top"));
  if (field->kind != FIELD_KIND_LENGTH || !laying_bit (field->which))
    return NULL;
  resolved = wall_copy (wall);
  resolved->laying.given &= ~laying_bit (field->which);
  resolved->laying = laying_resolve (&resolved->laying, block);
  return length_string (*length_at (field->which, resolved, NULL, NULL));
}

/* ---- writing ---- */

static gboolean
not_understood (GError **error, const char *sentence)
{
  g_set_error_literal (error, MODEL_ERROR, MODEL_ERROR_REFUSED, sentence);
  return FALSE;
}

static void
set_choice (int which, Wall *wall, Opening *opening, int choice)
{
  switch ((Which) which)
    {
    case OPENING_IS:
      if (opening)
        opening->kind = (OpeningKind) choice;
      break;
    case LAY_AIM:
      wall->laying.aim = (Aim) choice;
      break;
    case LAY_START:
      wall->laying.start = (Side) choice;
      break;
    case END_LEFT_THROUGH:
      wall->ends[SIDE_LEFT].through = through_choices[choice];
      break;
    case END_RIGHT_THROUGH:
      wall->ends[SIDE_RIGHT].through = through_choices[choice];
      break;
    default:
      break;
    }
}

static gboolean
set_length (Length *length, const char *text, GError **error)
{
  if (!length || !length_parse_typed (text, length))
    return not_understood (error, _ ("Type a length: 1200, 1.2 m, 120 cm or 47 in."));
  return TRUE;
}

static gboolean
set_count (gint32 *number, const char *text, GError **error)
{
  char *end;
  const gint64 value = g_ascii_strtoll (text, &end, 10);

  if (end == text || *end || value < 0 || value > 100000)
    return not_understood (error, _ ("Type a number, 0 or more."));
  *number = (gint32) value;
  return TRUE;
}

static gboolean
set_number (const Field *field, Wall *wall, Opening *opening, Block *block, const char *text,
            GError **error)
{
  double *decimal = decimal_at (field->which, opening, block);
  char *end;
  const double value = g_ascii_strtod (text, &end);

  if (decimal && may_be_empty (field->which) && !*text)
    {
      *decimal = 0;
      return TRUE;
    }
  if (end == text || *end || value < 0 || value > 100000)
    return not_understood (error, _ ("Type a number, 0 or more."));
  /* What a file keeps of such a number is six digits behind the point. */
  if (decimal)
    *decimal = may_be_empty (field->which) ? round (value * 1000) / 1000 : value;
  else
    *number_at (field->which, wall) = (gint32) value;
  return TRUE;
}

static void
set_text (char **place, const char *text)
{
  if (!place)
    return;
  g_free (*place);
  *place = g_strdup (text);
}

/* What was said counts as said: in the laying, an opening, an end, the steel. */
static void
mark_given (const Field *field, Wall *wall, Opening *opening, const char *text)
{
  const guint bit = laying_bit (field->which), own = opening_bit (field->which);

  if (opening && own)
    opening->given = *text ? opening->given | own : opening->given & ~own;
  if (bit && *text)
    wall->laying.given |= bit;
  else if (bit)
    wall->laying.given &= ~bit;
  wall->laying.element = wall->laying.element || bit != 0;
  if (field->about == ABOUT_ENDS && !is_up_to (field->which))
    {
      End *end = &wall->ends[field->which >= END_RIGHT_RETURN ? SIDE_RIGHT : SIDE_LEFT];

      end->given = end->has_return = end->ret > 0;
    }
  if (field->about == ABOUT_STEEL && field->which != STEEL_IS)
    wall->steel.given = TRUE;
  wall->steel.set |= steel_bit (field->which);
}

static gboolean
set_value (const Field *field, Wall *wall, Opening *opening, Block *block, const char *text,
           GError **error)
{
  switch (field->kind)
    {
    case FIELD_KIND_CHOICE:
      set_choice (field->which, wall, opening, atoi (text));
      return TRUE;
    case FIELD_KIND_LENGTH:
      if ((laying_bit (field->which) || opening_bit (field->which)) && !*text)
        return TRUE;
      if (is_up_to (field->which) && !*text)
        {
          *length_at (field->which, wall, NULL, NULL) = 0;
          return TRUE;
        }
      return set_length (length_at (field->which, wall, opening, block), text, error);
    case FIELD_KIND_NUMBER:
      return set_number (field, wall, opening, block, text, error);
    case FIELD_KIND_YES:
      *yes_at (field->which, wall) = *text == '1';
      return TRUE;
    case FIELD_KIND_TEXT:
    case FIELD_KIND_BLOCK:
    default:
      set_text (text_at (field->which, wall, opening, block), text);
      return TRUE;
    }
}

/* The wanted lap is off where it is half. */
static gboolean
set_rule (const Field *field, Wall *wall, const char *text, GError **error)
{
  Rule *rule = &wall->laying.rules[rule_of (field)];

  wall->laying.element = TRUE;
  if (!is_rule_number (field) && rule_of (field) == RULE_LAP)
    {
      rule->value = atoi (text) + 2;
      rule->has_value = rule->value > 2;
      rule->keep = rule->has_value ? KEEP_PREFER : KEEP_OFF;
      return TRUE;
    }
  if (!is_rule_number (field))
    {
      rule->keep = (Keep) atoi (text);
      return TRUE;
    }
  rule->has_value = *text != '\0';
  if (field->kind == FIELD_KIND_LENGTH)
    return !*text || set_length (&rule->value, text, error);
  return !*text || set_count (&rule->value, text, error);
}

static Edit *
block_edit (const Field *field, const Block *block, const char *text, GError **error)
{
  Block changed = block_copy (block);
  Edit *edit = NULL;

  if (set_value (field, NULL, NULL, &changed, text, error))
    edit = edit_set_block (&changed);
  block_clear (&changed);
  return edit;
}

static Edit *
other_block_edit (const Project *project, const Wall *wall, const char *text)
{
  g_autoptr (Wall) changed = wall_copy (wall);
  const guint index = (guint) atoi (text);

  if (index < project->blocks->len)
    changed->block = project_block_at (project, index)->id;
  return edit_set_wall (changed);
}

void
hb_field_new_block (const Project *project, const Wall *wall, Edit *edits[2])
{
  Block copy = block_copy (project_block (project, wall->block));
  g_autoptr (Wall) changed = wall_copy (wall);

  copy.id = (BlockId){ 0 };
  g_clear_pointer (&copy.key, g_free);
  g_free (copy.name);
  copy.name = g_strdup_printf (_ ("Block %u"), project->blocks->len + 1);
  edits[0] = edit_add_block (&copy);
  /* The id that the project gives next. */
  changed->block = (BlockId){ project->next };
  edits[1] = edit_set_wall (changed);
  block_clear (&copy);
}

Edit *
hb_field_edit (const Field *field, const Project *project, const Wall *wall, OpeningId id,
               const char *text, GError **error)
{
  g_autofree char *stripped = g_strstrip (g_strdup (text));
  g_autoptr (Wall) changed = NULL;

  if (field->about == ABOUT_PROJECT)
    return edit_project ((ProjectField) (field->which - PROJECT_TITLE), stripped);
  if (field->kind == FIELD_KIND_BLOCK)
    return other_block_edit (project, wall, stripped);
  if (field->about == ABOUT_BLOCK)
    return block_edit (field, project_block (project, wall->block), stripped, error);
  changed = wall_copy (wall);
  if (field->about == ABOUT_RULES)
    return set_rule (field, changed, stripped, error) ? edit_set_wall (changed) : NULL;
  if (!set_value (field, changed, wall_own_opening (changed, id), NULL, stripped, error))
    return NULL;
  mark_given (field, changed, wall_own_opening (changed, id), stripped);
  /* A wall of another length takes along what its right end meets in plan. */
  return plan_resize (project, changed, SIDE_RIGHT, error);
}
