/* fresh.c - findings of walls while they are fresh: how high in a day, and what is to be braced
 *
 * It is the same for all walls, so it is told once for the project, with the first wall that it
 * concerns. */
#include <glib/gi18n-lib.h>

#include "advice/held.h"
#include "advice/judging.h"
#include "takeoff/work.h"

#define NAMED 3 /* walls */

static gboolean
is_high (const Wall *wall)
{
  return wall_tallest (wall, 0, wall->length) > WORK_BRACED;
}

static const Wall *
first_high (const Project *project)
{
  for (guint i = 0; i < project->walls->len; i++)
    if (is_high (project_wall_at (project, i)))
      return project_wall_at (project, i);
  return NULL;
}

/* The walls that no other wall holds, at an end or all along: "Yard side, Shed and 2 more"; NULL
 * when there is none. */
static char *
names_of_loose (const Project *project)
{
  g_autoptr (GString) names = g_string_new (NULL);
  guint n = 0;

  for (guint i = 0; i < project->walls->len; i++)
    {
      const Wall *wall = project_wall_at (project, i);
      Stretch part;

      if (!is_high (wall) || !loosest_part (wall, project_thickness (project, i), &part))
        continue;
      if (n < NAMED)
        g_string_append_printf (names, "%s%s", n > 0 ? ", " : "", wall_called (wall));
      n++;
    }
  if (n > NAMED)
    g_string_append_printf (names, _ (" and %u more"), n - NAMED);
  return n > 0 ? g_string_free (g_steal_pointer (&names), FALSE) : NULL;
}

/* What the standards allow, or less where the work is reckoned with less. */
static Length
rise_of (const Project *project)
{
  return MIN (project->rates.rise, work_rates_default ().rise);
}

/* The last course that ends no higher than that; NULL: even the first does not. */
static const Course *
last_of_a_day (const Judging *judging)
{
  const Course *last = NULL;

  for (guint i = 0; i < judging->layout->courses->len; i++)
    if (layout_course (judging->layout, i)->top <= rise_of (judging->whole))
      last = layout_course (judging->layout, i);
  return last;
}

/* What the builder said himself stands beside it. */
static char *
rule_in_words (const Project *project)
{
  char rise[LENGTH_TEXT_SIZE];

  if (project->rates.rise == work_rates_default ().rise)
    return g_strdup (_ ("No more than 1.5 m is laid in a day (house-building standards)"));
  return g_strdup_printf (
      _ ("No more than 1.5 m is laid in a day (house-building standards), %s mm "
         "as the work is reckoned"),
      length_text (project->rates.rise, rise));
}

static char *
sentence (const Judging *judging, const Course *last)
{
  g_autofree char *loose = names_of_loose (judging->whole);
  g_autofree char *rule = rule_in_words (judging->whole);
  char top[LENGTH_TEXT_SIZE];

  length_text (last->top, top);
  if (loose == NULL)
    return g_strdup_printf (
        _ ("%s: here to the top of course %d, %s mm. What stands higher and is not yet held by "
           "floor "
           "or roof is braced (common practice). It is the same for all walls over 1.5 m: check "
           "with a licensed engineer."),
        rule, last->number, top);
  return g_strdup_printf (
      _ ("%s: here to the top of course %d, %s mm. What stands higher and is not yet held by floor "
         "or roof is braced (common practice), first of all where no other wall holds an end: %s. "
         "It is the same for all walls over 1.5 m: check with a licensed engineer."),
      rule, last->number, top, loose);
}

void
judge_fresh (Judging *judging)
{
  const Wall *first = first_high (judging->whole);
  const Course *last = last_of_a_day (judging);

  if (first != NULL && first->id.n == judging->wall->id.n && last != NULL)
    judging_add (judging, "fresh-height", SEVERITY_NOTE, sentence (judging, last), MEND_NONE)
        ->course
        = last->number;
}
