/* fields.h - what can be typed beside the wall: each value as text, and the edit that a text makes
 *
 * A table, no widgets. */
#pragma once

#include "model/edit.h"

typedef enum
{
  FIELD_KIND_TEXT,
  FIELD_KIND_LENGTH, /* typed with any unit; shown in mm */
  FIELD_KIND_NUMBER,
  FIELD_KIND_CHOICE, /* the text is the index into the choices */
  FIELD_KIND_YES,    /* "0" or "1" */
  FIELD_KIND_BLOCK,  /* the text is the index into the project's blocks */
} FieldKind;

typedef enum
{
  ABOUT_OPENING,
  ABOUT_WALL,
  ABOUT_LAYING,
  ABOUT_RULES,
  ABOUT_ENDS,
  ABOUT_STEEL,
  ABOUT_BLOCK,
  ABOUT_PROJECT,
  N_ABOUTS
} FieldAbout;

typedef struct
{
  FieldAbout about;
  FieldKind kind;
  const char *label;          /* translatable */
  const char *const *choices; /* translatable, NULL-terminated; only of a choice */
  int which;                  /* for this file */
} Field;

/* In the order to show them. */
const Field *hb_fields_list (guint *n);
/* Whether it is to be seen: the number of a rule only while that is on. */
gboolean hb_field_is_shown (const Field *field, const Wall *wall);
/* Translatable. */
const char *hb_field_about_text (FieldAbout about);

/* What it says now; "" where nothing was said and a default holds. Newly allocated. */
char *hb_field_text (const Field *field, const Project *project, const Wall *wall,
                     OpeningId opening);
/* The default that holds as long as nothing is said; NULL: there is none. Newly allocated. */
char *hb_field_default (const Field *field, const Project *project, const Wall *wall);
/* The edit that makes it say `text`; NULL with a sentence when the text is not understood. An empty
 * text takes back to the default where there is one. */
Edit *hb_field_edit (const Field *field, const Project *project, const Wall *wall,
                     OpeningId opening, const char *text, GError **error);

/* The edits that build the wall of a new block, a copy of its present one under a name of its own:
 * for hb_document_apply_all(). The caller frees each. */
void hb_field_new_block (const Project *project, const Wall *wall, Edit *edits[2]);
