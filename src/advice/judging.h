/* judging.h - one wall under judgement, and the findings so far */
#pragma once

#include "bond/layout.h"
#include "model/finding.h"
#include "model/project.h"
#include "site/bed.h"

typedef struct
{
  const Project *project; /* the wall alone, with no survey: mends are tried on it */
  const Project *whole;   /* all walls, and the survey */
  const Wall *wall;
  const Block *block;
  const Layout *layout;
  Laying laying; /* resolved */
  /* Of the whole project; the first two NULL: the footing is not surveyed. */
  const LevelBook *book;
  const Beds *beds;
  const GArray *squares; /* SquareCheck */
  const gint *stop;      /* as in lay_wall(); NULL: nobody stops it */
  GPtrArray *findings;   /* Finding * */
} Judging;

static inline gboolean
judging_is_stopped (const Judging *judging)
{
  return judging->stop != NULL && g_atomic_int_get (judging->stop) != 0;
}

/* What would mend a finding: an edit of the judged project, and the words of its button. */
typedef struct
{
  Edit *edit;
  char *text;
} Mend;
#define MEND_NONE ((Mend){ NULL, NULL })

/* Adds a finding; takes `text` and the mend. Returned to set further fields, borrowed. */
Finding *judging_add (Judging *judging, const char *rule, Severity severity, char *text, Mend mend);
/* The same of an opening. */
Finding *judging_add_of (Judging *judging, const Opening *opening, const char *rule,
                         Severity severity, char *text, Mend mend);

/* The mend, or none when the project would refuse the edit, or it would change what stands. Takes
 * both. */
Mend mend_if_possible (const Judging *judging, Edit *edit, char *text);
void mend_clear (Mend *mend);

/* What people call it: its name, or else its key. */
const char *opening_called (const Opening *opening);

/* What a lintel bears on at each end of its opening, at least: 100 mm for openings of up to 1.2 m,
 * 150 mm for wider ones. House-building standards. */
Length lintel_bearing (const Opening *opening);

/* --- the rules, each in its file --- */

void judge_breaches (
    Judging *judging); /* breaches.c: min-piece, min-lap, min-rip, lap-too-long, fewer-cuts */
void judge_contradictions (Judging *judging); /* contradictions.c: piece-too-long, raked-too-long,
                                   strip-too-high,
                                   bearing-too-long, jamb-line-too-far, wanted-lap-short,
                                   symmetry-off */
void judge_openings (Judging *judging);       /* openings.c: beyond-move, sill, head, narrow-pier,
                                         lintel-bearing */
void judge_stability (Judging *judging);      /* stability.c: slender, bearing-room, small-pier,
                                         corner-opening */
void judge_loose (Judging *judging);          /* loose.c: free-standing, partition-limits,
                                                 partition-length */
void judge_fresh (Judging *judging);          /* fresh.c: fresh-height */
void judge_ends (Judging *judging);           /* ends.c: end-piece */
void judge_pressure (Judging *judging);       /* pressure.c: bearing-pressure */
void judge_bed_steel (
    Judging *judging); /* steel.c: row-spacing, row-past, row-joint, row-width, row-area */
void judge_courses (
    Judging *judging); /* courses.c: top-course, top-packing, levelling-bed, block-mass */
void judge_tops (Judging *judging);    /* tops.c: foot-step, top-step */
void judge_footing (Judging *judging); /* footing.c: level-book, closing-error, bed-thin,
                                          bed-thick, out-of-square */
/* as-built.c: as-built-length, as-built-top, as-built-level, as-built-bed, as-built-opening,
 * as-built-plumb, as-built-bow, as-built-bow-metre, as-built-next-beds, as-built-gap; and takes the
 * mends away of what stands and cannot be mended */
void judge_as_built (Judging *judging);
void judge_meetings (Judging *judging); /* meetings.c: walls-clash, walls-crowd, meeting-unclear,
                                           meeting-not-level, meeting-foot,
                                           meeting-height, corner-lap, ties-unsaid,
                                           ties-not-level, ties-apart */
/* movement.c: movement-joint-bearing, movement-joint-lintel, movement-joint-length,
 * movement-joint-corner, movement-joint-panel */
void judge_movement_joints (Judging *judging);
void judge_pins (Judging *judging); /* pins.c: pin; gives mends to breaches that have none */
