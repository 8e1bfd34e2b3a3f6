/* verb.h - the verbs of halfbond-cli, and the exit statuses that they end with */
#pragma once

#include <glib.h>

/* The statuses of the contract; scripts rely on the numbers. */
typedef enum
{
  STATUS_DONE = 0,
  STATUS_BREACH
  = 1,             /* done, and a rule is broken: found by check, or a wall cannot be laid within */
  STATUS_CALL = 2, /* wrong call */
  STATUS_READ = 3, /* the file cannot be read or is not valid */
  STATUS_WRITE = 4, /* the result could not be written; an older file of that name is whole */
} Status;

typedef struct
{
  const char *name;
  const char *arguments;                 /* what follows the name in --help; translatable */
  const char *summary;                   /* translatable */
  Status (*run) (int argc, char **argv); /* argv[0] is the verb's name */
} Verb;

Status verb_lay (int argc, char **argv);
Status verb_takeoff (int argc, char **argv);
Status verb_work (int argc, char **argv);
Status verb_check (int argc, char **argv);
Status verb_level (int argc, char **argv);
Status verb_cut (int argc, char **argv);
Status verb_advise (int argc, char **argv);
Status verb_plan (int argc, char **argv);
Status verb_rod (int argc, char **argv);
Status verb_built (int argc, char **argv);
Status verb_sheet (int argc, char **argv);
Status verb_export (int argc, char **argv);

/* All of them, in the order of --help; ends with a row whose name is NULL. */
extern const Verb verbs[];
/* NULL when there is none of that name. */
const Verb *verb_find (const char *name);
