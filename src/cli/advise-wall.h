/* advise-wall.h - halfbond-cli advise of whole walls: what would save, and all openings together */
#pragma once

#include "cli/verb.h"
#include "model/length.h"

typedef struct
{
  const char *file;
  const char *wall; /* its key; NULL: every wall */
  Length step;      /* from place to place */
  gboolean as_json;
  const char *output; /* or NULL */
  const char *into;   /* the project as improved is written there; NULL: nowhere */
} AdviseCall;

/* --wall: which levelling bed, which length and which rule would save most. */
Status advise_wall (const AdviseCall *call);
/* --all: the best places of all openings that may move. */
Status advise_all (const AdviseCall *call);
