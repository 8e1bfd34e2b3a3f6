/* element.h - the elements of the format as tables: one row for each attribute
 *
 * Reading and writing go by the same rows, so that they cannot disagree. An element is read into,
 * and written from, one flat structure: a thing of the model where that is flat enough, else one of
 * those below. data/schema/halfbond.rng says the same for everyone else. */
#pragma once

#include "model/project.h"

#define STORE_NAMESPACE "urn:halfbond:project:1"

typedef enum
{
  VALUE_TEXT,    /* char *: any text */
  VALUE_KEY,     /* char *: an XML name without a colon, unique in the file */
  VALUE_POINTER, /* char *: the key of something else */
  VALUE_LENGTH,  /* Length: millimetres, a decimal */
  VALUE_COUNT,   /* gint32: digits */
  VALUE_DENSITY, /* double: a decimal, kg/m3 */
  VALUE_NUMBER,  /* double: a decimal, to the millionth */
  VALUE_LENGTHS, /* GArray * of Length: millimetres, white space between; NULL: none */
  VALUE_WORD,    /* one of a few words: parse_word and word */
} ValueKind;

typedef struct
{
  const char *name; /* of the attribute */
  ValueKind kind;
  gboolean required;
  gsize offset; /* in the element's structure */
  guint bit;    /* in the structure's mask of what was given; 0: it has none for this */
  double min;   /* least number that may be written, mm or as such */
  double max;   /* greatest */
  gboolean (*parse_word) (const char *text, void *out);
  const char *(*word) (const void *value);
  const char *words; /* all of them, for people */
  const char *plain; /* the text that is not written, because left out means the same; or NULL */
} Field;

typedef struct
{
  const char *name;
  const Field *fields;
  guint n_fields;
  gsize mask; /* offset of the mask; of use only where a field has a bit */
} Element;

/* <wall>: the wall's own attributes; `block` is a key. */
typedef struct
{
  char *key, *name, *block;
  Length length, height;
  guint mask; /* PLACE_X and so on: all or none */
  PlanPlace place;
} WallTag;

/* <end> */
typedef struct
{
  Side side;
  guint mask; /* END_RETURN | END_THROUGH; TieField bits from END_TIES on */
  Length ret;
  Through through;
  Length up_to;
  Ties ties; /* its own mask is not used */
} EndTag;

/* <rule> */
typedef struct
{
  RuleKind kind;
  Keep keep;
  guint mask; /* RULE_GAVE_LENGTH | RULE_GAVE_COUNT */
  Length length;
  gint32 count;
} RuleTag;

/* <at>; `wall` is a key. */
typedef struct
{
  char *wall;
  Length x;
} PlaceTag;

/* <diagonal>; `along` and `across` are keys. */
typedef struct
{
  char *name, *along, *across;
  guint mask; /* DiagonalField bits */
  Length first, second, length;
} DiagonalTag;

/* <laid> */
typedef struct
{
  gint32 course;
  GArray *perpends; /* Length, places; of those that say no height */
  GArray *at;       /* Length, place and height by turns, of those that do */
  guint mask;       /* LaidField bits */
  gint32 over;
  Length bottom, top, top_right;
} LaidTag;

/* <tolerance> */
typedef struct
{
  ToleranceKind of;
  Length limit;
} ToleranceTag;

enum
{
  RULE_GAVE_LENGTH = 1,
  RULE_GAVE_COUNT = 2,
};

enum
{
  PLACE_X = 1,
  PLACE_Y = 2,
  PLACE_RUNS = 4,
  PLACE_ALL = 7,
};

enum
{
  END_RETURN = 1,
  END_THROUGH = 2,
  END_TIES = 4,
};

extern const Element element_project;        /* Project */
extern const Element element_block;          /* Block */
extern const Element element_wall;           /* WallTag */
extern const Element element_laying;         /* Laying */
extern const Element element_rule;           /* RuleTag */
extern const Element element_end;            /* EndTag */
extern const Element element_tee;            /* Tee */
extern const Element element_movement_joint; /* MovementJoint */
extern const Element element_steel;          /* Steel */
extern const Element element_steel_row;      /* SteelRow */
extern const Element element_opening;        /* Opening */
extern const Element element_pin;            /* Pin */
extern const Element element_top;            /* TopPoint */
extern const Element element_foot;           /* Foot */
extern const Element element_cap;            /* Cap */
extern const Element element_built;          /* Built */
extern const Element element_laid;           /* LaidTag */
extern const Element element_tolerance;      /* ToleranceTag */
extern const Element element_survey;         /* Survey */
extern const Element element_reading;        /* Reading */
extern const Element element_place;          /* PlaceTag */
extern const Element element_diagonal;       /* DiagonalTag */
extern const Element element_work;           /* WorkRates */

/* The row of an attribute; NULL when the element has none of that name. */
const Field *element_field (const Element *element, const char *name);

/* Puts `text` into the field of `target`, an older string there is freed, and sets the field's bit.
 * NULL when that went well, else the reason as the end of a sentence: `"abc" is not a number of
 * millimetres`. Spaces round anything but text do not count. */
char *field_parse (const Element *element, const Field *field, const char *text, void *target);

/* The value of the field as it is written; NULL when the attribute is to be left out. */
char *field_text (const Element *element, const Field *field, const void *source);

/* `text` in quotation marks for a message: in one line, cut short when it is long, without the
 * characters that would turn or hide what stands beside them. */
char *quoted (const char *text);
