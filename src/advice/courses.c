/* courses.c - findings of the courses and of the block: top, levelling bed, mass */
#include <glib/gi18n-lib.h>

#include "advice/judging.h"
#include "bond/gauge.h"
#include "takeoff/work.h"

/* Common practice: 10 to 40 mm can be worked, 20 to 30 mm are wanted. */
#define LEVELLING_LEAST LENGTH_MM (10)
#define LEVELLING_MOST LENGTH_MM (40)

static Mend
mend_height (const Judging *judging, Length height)
{
  char now[LENGTH_TEXT_SIZE];
  g_autoptr (Wall) wall = wall_copy (judging->wall);

  wall->height = height;
  return mend_if_possible (
      judging, edit_set_wall (wall),
      g_strdup_printf (_ ("Make the wall %s mm high"), length_text (height, now)));
}

/* The nearest height at which no course is ripped, else the next nearest. */
static Mend
mend_top (const Judging *judging, Length lower, Length higher)
{
  gboolean down = judging->wall->height - lower <= higher - judging->wall->height;
  Mend mend = mend_height (judging, down ? lower : higher);

  return mend.edit != NULL ? mend : mend_height (judging, down ? higher : lower);
}

static void
judge_top (Judging *judging)
{
  char is[LENGTH_TEXT_SIZE], unit[LENGTH_TEXT_SIZE];
  guint n = judging->layout->courses->len;
  const Course *top = n > 0 ? layout_course (judging->layout, n - 1) : NULL;
  Length full, lower;

  /* Where it is not level, tops.c tells of each level stretch. */
  if (top == NULL || judging->wall->tops->len > 0
      || top->top - top->bottom >= judging->block->height)
    return;
  full = gauge_top (judging->wall, judging->block, &judging->laying, top->number);
  lower = n > 1 ? layout_course (judging->layout, n - 2)->top : 0;
  judging_add (judging, "top-course", SEVERITY_NOTE,
               g_strdup_printf (_ ("Course %d, the top one, is ripped to %s mm all along; a whole "
                                   "block is %s mm high."),
                                top->number, length_text (top->top - top->bottom, is),
                                length_text (judging->block->height, unit)),
               mend_top (judging, lower, full))
      ->course
      = top->number;
}

/* More than a joint is left over the last whole course, and less than a course is cut for. */
static void
judge_top_packing (Judging *judging)
{
  char left[LENGTH_TEXT_SIZE];
  guint n = judging->layout->courses->len;
  const Course *top = n > 0 ? layout_course (judging->layout, n - 1) : NULL;

  if (top == NULL || judging->wall->tops->len > 0
      || judging->wall->height - top->top
             <= gauge_bed (judging->wall, judging->block, &judging->laying, top->number + 1))
    return;
  judging_add (judging, "top-packing", SEVERITY_NOTE,
               g_strdup_printf (_ ("%s mm over course %d are too thin for blocks and stay mortar."),
                                length_text (judging->wall->height - top->top, left), top->number),
               mend_height (judging, top->top))
      ->course
      = top->number;
}

static void
judge_levelling_bed (Judging *judging)
{
  char is[LENGTH_TEXT_SIZE];
  Length bed = gauge_bed (judging->wall, judging->block, &judging->laying, 1);

  if (bed >= LEVELLING_LEAST && bed <= LEVELLING_MOST)
    return;
  judging_add (
      judging, "levelling-bed", SEVERITY_NOTE,
      g_strdup_printf (_ ("The levelling bed is %s mm; 10 to 40 mm can be worked, 20 to 30 "
                          "mm are best (common practice)."),
                       length_text (bed, is)),
      MEND_NONE)
      ->course
      = 1;
}

static void
judge_mass (Judging *judging)
{
  double mass = block_mass (judging->block) * HANDLING_MOISTURE;

  if (mass <= HANDLING_BY_HAND)
    return;
  judging_add (judging, "block-mass", SEVERITY_NOTE,
               g_strdup_printf (_ ("A whole block is about %.0f kg as delivered, with 15 %% of "
                                   "moisture; over 25 kg it is not to be laid by hand (DGUV "
                                   "Information 201-015)."),
                                mass),
               MEND_NONE);
}

void
judge_courses (Judging *judging)
{
  judge_top (judging);
  judge_top_packing (judging);
  judge_levelling_bed (judging);
  judge_mass (judging);
}
