/* edit.h - a change as a small piece of data; applied to a project it gives the next one */
#pragma once

#include "model/project.h"

typedef enum
{
  EDIT_PROJECT,        /* title, client, site, author, date from `text`, one field: `field` */
  EDIT_ADD_BLOCK,      /* `block`; its id and key are given by the project when none */
  EDIT_SET_BLOCK,      /* `block`, found by its id */
  EDIT_REMOVE_BLOCK,   /* `block_id`; refused while a wall is of it */
  EDIT_ADD_WALL,       /* `wall`; id and key given by the project when none */
  EDIT_SET_WALL,       /* `wall`, found by its id: the whole wall as it is to be. Where its length
                          is another and its top the same, that follows (wall_set_length()) */
  EDIT_WALLS,          /* `walls`: those with an id of the project are set, others added */
  EDIT_REMOVE_WALL,    /* `wall_id`; the survey's places on it and its diagonals go too */
  EDIT_MOVE_WALL,      /* `wall_id` to index `field` of the list */
  EDIT_ADD_OPENING,    /* `opening` into `wall_id`; id and key given when none */
  EDIT_SET_OPENING,    /* `opening`, found by its id */
  EDIT_REMOVE_OPENING, /* `opening_id` */
  EDIT_SET_TOLERANCE,  /* the one of that kind, `field`, to `limit` where `given`, else to none */
  EDIT_SET_SURVEY,     /* `survey`: the whole of it as it is to be; NULL: none */
  EDIT_SET_RATES,      /* `rates`: all of them as they are to be */
} EditKind;

typedef enum
{
  FIELD_TITLE,
  FIELD_CLIENT,
  FIELD_SITE,
  FIELD_AUTHOR,
  FIELD_DATE,
} ProjectField;

typedef struct
{
  EditKind kind;
  WallId wall_id;
  BlockId block_id;
  OpeningId opening_id;
  int field;
  gboolean given;
  Length limit;
  char *text;
  Wall *wall;
  GPtrArray *walls; /* Wall * */
  Survey *survey;
  WorkRates rates;
  Block block;
  Opening opening;
} Edit;

/* Each edit owns copies of what it was given. edit_free() takes NULL too. */
Edit *edit_project (ProjectField field, const char *text);
Edit *edit_add_block (const Block *block);
Edit *edit_set_block (const Block *block);
Edit *edit_remove_block (BlockId id);
Edit *edit_add_wall (const Wall *wall);
Edit *edit_set_wall (const Wall *wall);
/* The wall with such a top, TopPoint, the highest of them at `height` (NULL: level); with such a
 * footing, Foot (NULL: level); with a cap so high, 0: none. */
Edit *edit_wall_top (const Wall *wall, const GArray *tops, Length height);
Edit *edit_wall_feet (const Wall *wall, const GArray *feet);
Edit *edit_wall_cap (const Wall *wall, Length height);
/* Of Wall *: several walls in one step. */
Edit *edit_walls (const GPtrArray *walls);
Edit *edit_remove_wall (WallId id);
Edit *edit_move_wall (WallId id, int index);
Edit *edit_add_opening (WallId wall, const Opening *opening);
Edit *edit_set_opening (const Opening *opening);
Edit *edit_remove_opening (OpeningId id);
/* `limit` NULL: the project is to say nothing of it. */
Edit *edit_set_tolerance (ToleranceKind kind, const Length *limit);
/* NULL: the project is to have none. Refused when it speaks of a wall that is not there. */
Edit *edit_set_survey (const Survey *survey);
/* Of the work. */
Edit *edit_set_rates (const WorkRates *rates);
Edit *edit_copy (const Edit *edit);
void edit_free (Edit *edit);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (Edit, edit_free)

#define MODEL_ERROR (model_error_quark ())
GQuark model_error_quark (void);
typedef enum
{
  MODEL_ERROR_REFUSED, /* the edit would make a project that cannot be; the message is a sentence */
} ModelError;

/* The project after the edit, walls that meet in plan settled (plan.h), a new reference; or NULL
 * with MODEL_ERROR_REFUSED, and `project` as it was. Every result has no project_fault(). */
Project *project_edit (const Project *project, const Edit *edit, GError **error);
