#include "cli/verb.h"

#include <glib/gi18n.h>
#include <string.h>

const Verb verbs[] = {
  { "lay", N_ ("FILE"), N_ ("Lay every wall, or one"), verb_lay },
  { "takeoff", N_ ("FILE"), N_ ("The quantities"), verb_takeoff },
  { "work", N_ ("FILE"), N_ ("Hours, handling, days and pallets"), verb_work },
  { "check", N_ ("FILE"), N_ ("What breaks a rule, and where"), verb_check },
  { "level", N_ ("FILE"), N_ ("The level book of the footing reduced, and the first course by it"),
    verb_level },
  { "cut", "", N_ ("The fewest stock lengths that give a list of pieces"), verb_cut },
  { "advise", N_ ("FILE"), N_ ("What moving an opening, or changing a wall a little, would save"),
    verb_advise },
  { "plan", N_ ("FILE"), N_ ("Where walls stand and meet, and which runs through where"),
    verb_plan },
  { "rod", N_ ("FILE"), N_ ("The storey rod, and the beds that let most sills and heads meet it"),
    verb_rod },
  { "built", N_ ("FILE"), N_ ("What stands, how far it is off the plan, and what is still needed"),
    verb_built },
  { "sheet", N_ ("FILE"), N_ ("A drawing sheet as PDF"), verb_sheet },
  { "export", N_ ("FILE"), N_ ("A drawing or the pieces in an open format"), verb_export },
  { NULL, NULL, NULL, NULL },
};

const Verb *
verb_find (const char *name)
{
  for (const Verb *verb = verbs; verb->name; verb++)
    if (strcmp (verb->name, name) == 0)
      return verb;
  return NULL;
}
