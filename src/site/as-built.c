/* as-built.c - how far a wall is laid, how far what stands is off the plan, and how to go on */
#include "site/as-built.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "bond/gauge.h"

#define MEAN_OF 8 /* beds, next to each other */

/* --- limits --- */

#define FROM_SIA N_ ("SIA 266, table 11, standard")
#define FROM_WARRANTY N_ ("a warranty body's manual")
#define FROM_EN N_ ("EN 1996-2, table 3.1, from memory")
#define FROM_PROJECT N_ ("the project's own")

static Limit
usual_limit (ToleranceKind kind, Length over)
{
  switch (kind)
    {
    case TOLERANCE_LEVEL:
      if (over > LENGTH_MM (5000))
        return (Limit){ LENGTH_MM (15), FROM_WARRANTY };
      return (Limit){ (Length) ((gint64) over * 10 / 5000), FROM_WARRANTY };
    case TOLERANCE_BED:
      return (Limit){ LENGTH_MM (5), FROM_WARRANTY };
    case TOLERANCE_PLUMB:
      return (Limit){ LENGTH_MM (20), FROM_EN };
    case TOLERANCE_BOW:
      return (Limit){ CLAMP (over / 200, LENGTH_MM (10), LENGTH_MM (50)), FROM_EN };
    case TOLERANCE_BOW_METRE:
      return (Limit){ LENGTH_MM (10), FROM_EN };
    case TOLERANCE_LENGTH:
    case TOLERANCE_TOP:
    case TOLERANCE_OPENING:
    case N_TOLERANCES:
    default:
      return (Limit){ over <= LENGTH_MM (4000) ? LENGTH_MM (16) : LENGTH_MM (20), FROM_SIA };
    }
}

Limit
as_built_limit (const Project *project, ToleranceKind kind, Length over)
{
  const Tolerance *own = &project->tolerances[kind];

  return own->given ? (Limit){ own->limit, FROM_PROJECT } : usual_limit (kind, over);
}

/* --- deviations --- */

typedef struct
{
  const Project *project;
  const Wall *wall;
  const Block *block;
  Laying laying;
  AsBuilt *out;
} Measuring;

static Deviation *
add (const Measuring *measuring, ToleranceKind kind, Length measured, Length planned, Length over)
{
  Deviation deviation = { .kind = kind,
                          .measured = measured,
                          .planned = planned,
                          .off = measured - planned,
                          .limit = as_built_limit (measuring->project, kind, over) };

  deviation.within = ABS (deviation.off) <= deviation.limit.limit;
  measuring->out->within = measuring->out->within && deviation.within;
  g_array_append_val (measuring->out->deviations, deviation);
  return &g_array_index (measuring->out->deviations, Deviation,
                         measuring->out->deviations->len - 1);
}

static void
measure_wall (const Measuring *measuring)
{
  const Wall *wall = measuring->wall;
  const Built *built = wall->built;
  const struct
  {
    BuiltField field;
    ToleranceKind kind;
    Length measured;
  } off_the_line[] = { { BUILT_PLUMB, TOLERANCE_PLUMB, built->plumb },
                       { BUILT_BOW, TOLERANCE_BOW, built->bow },
                       { BUILT_BOW_METRE, TOLERANCE_BOW_METRE, built->bow_metre } };

  if (built->given & BUILT_PLANNED_LENGTH)
    {
      Deviation *deviation = add (measuring, TOLERANCE_LENGTH, wall->length, built->planned_length,
                                  built->planned_length);

      deviation->x = wall->length;
    }
  for (guint i = 0; i < G_N_ELEMENTS (off_the_line); i++)
    if (built->given & off_the_line[i].field)
      {
        Deviation *deviation = add (measuring, off_the_line[i].kind, off_the_line[i].measured, 0,
                                    wall_planned_length (wall));

        deviation->x = wall->length / 2;
        deviation->z = off_the_line[i].field == BUILT_PLUMB ? wall->height : wall->height / 2;
      }
}

static void
measure_top (const Measuring *measuring, const LaidCourse *laid)
{
  const Length planned = gauge_top (NULL, measuring->block, &measuring->laying, laid->course);
  const gboolean both = (laid->given & LAID_TOP_RIGHT) != 0;

  for (int right = 0; right <= both; right++)
    {
      const Length top = right ? laid->top_right : laid->top;
      Deviation *deviation = add (measuring, TOLERANCE_TOP, top, planned, planned);

      deviation->course = laid->course;
      deviation->at_right = right != 0;
      deviation->x = right ? measuring->wall->length : 0;
      deviation->z = top;
    }
  if (both)
    {
      Deviation *deviation = add (measuring, TOLERANCE_LEVEL, laid->top_right, laid->top,
                                  wall_planned_length (measuring->wall));

      deviation->course = laid->course;
      deviation->x = measuring->wall->length;
      deviation->z = laid->top_right;
    }
}

/* Of the beds next to each other that this one is in the middle of, as near as may be. */
static Length
mean_bed (const Length *bottoms, gint32 n, Length unit, gint32 course)
{
  const gint32 beds = n - 1, many = MIN (beds, MEAN_OF);
  const gint32 first = CLAMP (course - many / 2, 2, n - many + 1);

  return (bottoms[first + many - 2] - bottoms[first - 2]) / many - unit;
}

/* A bed is known where both its courses were measured. */
static void
measure_beds (const Measuring *measuring)
{
  const Built *built = measuring->wall->built;
  const Length unit = measuring->block->height;
  g_autofree Length *bottoms = built_bottoms (built, &measuring->laying, unit);

  for (gint32 i = 2; i <= built->courses; i++)
    {
      Deviation *deviation;

      if (!(built_course (built, i)->given & built_course (built, i - 1)->given & LAID_TOP))
        continue;
      deviation = add (measuring, TOLERANCE_BED, bottoms[i - 1] - bottoms[i - 2] - unit,
                       mean_bed (bottoms, built->courses, unit, i), 0);
      deviation->course = i;
      deviation->z = bottoms[i - 1];
    }
}

static void
measure_opening (const Measuring *measuring, const Opening *opening)
{
  for (OpeningFigure figure = 0; figure < N_FIGURES; figure++)
    {
      const Length planned = opening_planned (opening, figure);
      Deviation *deviation;

      if (!opening_is_measured (opening, figure))
        continue;
      deviation
          = add (measuring, TOLERANCE_OPENING, opening_figure (opening, figure), planned, planned);
      deviation->opening = opening->id;
      deviation->figure = figure;
      deviation->x = figure == FIGURE_X       ? opening->x
                     : figure == FIGURE_WIDTH ? opening_right (opening)
                                              : opening->x + opening->width / 2;
      deviation->z = figure == FIGURE_SILL     ? opening->sill
                     : figure == FIGURE_HEIGHT ? opening_head (opening)
                                               : opening->sill + opening->height / 2;
    }
}

static void
measure (const Measuring *measuring)
{
  const Wall *wall = measuring->wall;

  if (wall->built)
    {
      measure_wall (measuring);
      for (gint32 i = 1; i <= wall->built->courses; i++)
        if (built_course (wall->built, i)->given & LAID_TOP)
          measure_top (measuring, built_course (wall->built, i));
      measure_beds (measuring);
    }
  for (guint i = 0; i < wall->openings->len; i++)
    measure_opening (measuring, wall_opening_at (wall, i));
}

/* --- progress and the way on --- */

static void
count_pieces (AsBuilt *out, const Layout *layout)
{
  out->pieces = layout->pieces->len;
  for (guint i = 0; i < layout->pieces->len; i++)
    out->pieces_standing += layout_piece (layout, i)->stands;
}

static void
find_way (const Measuring *measuring, const Layout *layout)
{
  NextBeds *next = &measuring->out->next;
  const Length unit = measuring->block->height;
  gint32 n = (gint32) layout->courses->len;
  const Course *last = n > 0 ? layout_course (layout, (guint) n - 1) : NULL;

  next->bed = gauge_bed (measuring->wall, measuring->block, &measuring->laying,
                         measuring->out->standing + 1);
  next->planned_bed = measuring->laying.bed;
  next->plate = measuring->wall->height;
  if (last == NULL)
    return;
  next->top = last->top;
  if (last->top - last->bottom < unit)
    {
      next->rip = last->top - last->bottom;
      last = --n > 0 ? last - 1 : NULL;
    }
  if (last == NULL)
    return;
  next->last_whole = n;
  next->last_top = last->top;
  next->planned_last = gauge_top (NULL, measuring->block, &measuring->laying, n);
}

AsBuilt *
as_built_new (const Project *project, const Wall *wall, const Layout *layout)
{
  AsBuilt *out = g_new0 (AsBuilt, 1);
  Measuring measuring = { project, wall, project_block (project, wall->block), { 0 }, out };

  measuring.laying = laying_resolve (&wall->laying, measuring.block);
  out->deviations = g_array_new (FALSE, FALSE, sizeof (Deviation));
  out->within = TRUE;
  out->standing = wall_standing (wall);
  out->courses = (gint32) layout->courses->len;
  count_pieces (out, layout);
  measure (&measuring);
  find_way (&measuring, layout);
  return out;
}

void
as_built_free (AsBuilt *built)
{
  if (built == NULL)
    return;
  g_array_unref (built->deviations);
  g_free (built);
}

/* --- sentences --- */

/* What was measured, as the beginning of a sentence. */
static char *
what_is_off (const Wall *wall, const Deviation *deviation)
{
  const Opening *opening = wall_opening (wall, deviation->opening);
  const char *name = opening == NULL ? "" : *opening->name != '\0' ? opening->name : opening->key;
  const gboolean more = deviation->off >= 0;
  char off[LENGTH_TEXT_SIZE], is[LENGTH_TEXT_SIZE];

  length_text (ABS (deviation->off), off);
  length_text (deviation->measured, is);
  switch (deviation->kind)
    {
    case TOLERANCE_TOP:
      if (deviation->at_right)
        return g_strdup_printf (more ? _ ("Course %d ends %s mm too high at the right, at %s mm")
                                     : _ ("Course %d ends %s mm too low at the right, at %s mm"),
                                deviation->course, off, is);
      return g_strdup_printf (more ? _ ("Course %d ends %s mm too high, at %s mm")
                                   : _ ("Course %d ends %s mm too low, at %s mm"),
                              deviation->course, off, is);
    case TOLERANCE_LEVEL:
      return g_strdup_printf (more ? _ ("Course %d rises %s mm from its left end to its right")
                                   : _ ("Course %d falls %s mm from its left end to its right"),
                              deviation->course, off);
    case TOLERANCE_BED:
      return g_strdup_printf (
          more ? _ ("The bed under course %d is %s mm thick, %s mm more than the mean of its "
                    "neighbours")
               : _ ("The bed under course %d is %s mm thick, %s mm less than the mean of its "
                    "neighbours"),
          deviation->course, is, off);
    case TOLERANCE_PLUMB:
      return g_strdup_printf (more ? _ ("The wall leans outwards by %s mm")
                                   : _ ("The wall leans inwards by %s mm"),
                              off);
    case TOLERANCE_BOW:
      return g_strdup_printf (more ? _ ("The wall is off its line by %s mm, outwards")
                                   : _ ("The wall is off its line by %s mm, inwards"),
                              off);
    case TOLERANCE_BOW_METRE:
      return g_strdup_printf (_ ("In one metre the wall is off its line by %s mm"), off);
    case TOLERANCE_OPENING:
      switch (deviation->figure)
        {
        case FIGURE_X:
          return g_strdup_printf (more ? _ ("%s begins %s mm too far right, at %s mm")
                                       : _ ("%s begins %s mm too far left, at %s mm"),
                                  name, off, is);
        case FIGURE_WIDTH:
          return g_strdup_printf (more ? _ ("%s is %s mm too wide, %s mm")
                                       : _ ("%s is %s mm too narrow, %s mm"),
                                  name, off, is);
        case FIGURE_SILL:
          return g_strdup_printf (more ? _ ("The sill of %s lies %s mm too high, at %s mm")
                                       : _ ("The sill of %s lies %s mm too low, at %s mm"),
                                  name, off, is);
        case FIGURE_HEIGHT:
        case N_FIGURES:
        default:
          return g_strdup_printf (more ? _ ("%s is %s mm too high, %s mm from sill to head")
                                       : _ ("%s is %s mm too low, %s mm from sill to head"),
                                  name, off, is);
        }
    case TOLERANCE_LENGTH:
    case N_TOLERANCES:
    default:
      return g_strdup_printf (more ? _ ("The wall is %s mm too long, %s mm")
                                   : _ ("The wall is %s mm too short, %s mm"),
                              off, is);
    }
}

char *
deviation_sentence (const Wall *wall, const Deviation *deviation)
{
  g_autofree char *what = what_is_off (wall, deviation);
  char limit[LENGTH_TEXT_SIZE];

  /* Translators: what was measured; how much of it is allowed; by what source */
  return g_strdup_printf (_ ("%s; %s mm either way are allowed (%s)."), what,
                          length_text (deviation->limit.limit, limit), _ (deviation->limit.source));
}

char *
next_beds_sentence (const AsBuilt *built)
{
  const NextBeds *next = &built->next;
  const Length off = next->last_top - next->planned_last;
  char bed[LENGTH_TEXT_SIZE], top[LENGTH_TEXT_SIZE], by[LENGTH_TEXT_SIZE];

  if (built->standing == 0 || next->last_whole <= built->standing)
    return NULL;
  length_text (next->bed, bed);
  length_text (next->last_top, top);
  length_text (ABS (off), by);
  if (off == 0)
    return g_strdup_printf (
        _ ("From course %d on, beds of %s mm bring course %d to %s mm, as planned."),
        built->standing + 1, bed, next->last_whole, top);
  return g_strdup_printf (
      off > 0
          ? _ ("From course %d on, beds of %s mm bring course %d to %s mm, %s mm over its plan.")
          : _ ("From course %d on, beds of %s mm bring course %d to %s mm, %s mm under its "
               "plan."),
      built->standing + 1, bed, next->last_whole, top, by);
}
