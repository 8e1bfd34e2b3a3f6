/* as-built.h - how far a wall is laid, how far what stands is off the plan, and how to go on
 *
 * What follows from the built record of a wall (model/built.h): docs/as-built.md. Every limit
 * carries its source and gives way to the project's own. */
#pragma once

#include "bond/layout.h"
#include "model/built-edit.h"
#include "model/project.h"

/* A limit of execution tolerance, either way. */
typedef struct
{
  Length limit;
  const char *source; /* static, translatable; of the project's own, says so */
} Limit;

/* Of a kind, measured over such a length: the wall's, the opening's, or the height of a top; of a
 * bed and of plumb and bow-metre it does not matter.
 *
 * Length, top, opening: SIA 266, table 11, standard (read): 16 mm up to 4 m, 20 mm beyond. Level: a
 * warranty body's manual (read): 10 mm in 5 m, pro rata below, 15 mm beyond. Bed: the same, 5 mm
 * from the mean of eight. Plumb 20 mm in a storey, bow 10 mm in a metre and 50 mm in 10 m, between
 * them 5 mm a metre: EN 1996-2, table 3.1, from memory. */
Limit as_built_limit (const Project *project, ToleranceKind kind, Length over);

/* One measured figure beside what it should be. */
typedef struct
{
  ToleranceKind kind;
  gint32 course;        /* of a top, level or bed; else 0 */
  OpeningId opening;    /* of an opening; else none */
  OpeningFigure figure; /* of an opening */
  gboolean at_right;    /* of a top: measured at the right end */
  Length x, z;          /* where it is to be shown, in the wall's elevation */
  Length measured, planned;
  Length off; /* measured less planned */
  Limit limit;
  gboolean within;
} Deviation;

/* The way from what stands to the top. */
typedef struct
{
  Length bed;                    /* under every course above what stands */
  Length planned_bed;            /* by the laying */
  gint32 last_whole;             /* the last course that is not ripped; 0: none */
  Length last_top, planned_last; /* its top as it comes out, and as planned for that course */
  Length rip;                    /* height of the ripped course on it; 0: none */
  Length top;                    /* of the last course: under it lies the plate, */
  Length plate;                  /* whose foot is the wall's height; what is between is packed */
} NextBeds;

typedef struct
{
  gint32 standing, courses; /* laid up to, of so many */
  guint pieces_standing, pieces;
  GArray *deviations; /* Deviation: the wall's, then by course, then by opening */
  gboolean within;    /* all of them */
  NextBeds next;
} AsBuilt;

/* `layout` is the wall's, of the project. */
AsBuilt *as_built_new (const Project *project, const Wall *wall, const Layout *layout);
void as_built_free (AsBuilt *built);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (AsBuilt, as_built_free)

static inline const Deviation *
as_built_deviation (const AsBuilt *built, guint i)
{
  return &g_array_index (built->deviations, Deviation, i);
}

/* "Course 3 ends 6 mm too high, at 630 mm; 16 mm either way are allowed (SIA 266, table 11,
 * standard)." Newly allocated. */
char *deviation_sentence (const Wall *wall, const Deviation *deviation);
/* "From course 4 on, beds of 1.5 mm bring course 13 to 2645 mm, 1 mm over its plan." Newly
 * allocated; NULL where nothing stands or no whole course is to come. */
char *next_beds_sentence (const AsBuilt *built);
