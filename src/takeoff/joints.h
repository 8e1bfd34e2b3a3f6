/* joints.h - the joints of a wall as laid: how long, how high */
#pragma once

#include "bond/layout.h"

/* In 1/320 mm; a joint's volume is this times the joint's thickness times the wall's. */
typedef struct
{
  gint64 levelling; /* length of course 1 that stands on the levelling bed */
  gint64 on_steps;  /* length of what stands on steps of the footing, on a bed of its own */
  gint64 bed;       /* length of the bed joints above it: where a course lies on the one below */
  gint64 bed_face;  /* the same times the thickness of each, which differ where something stands */
  gint64 head;      /* height of the upright joints, those against a return too */
  double packings;  /* mm2 of face, wedges under slopes left out */
  double wedges;    /* mm2 of face: these */
  double steps;     /* mm2 of face: beds on steps of the footing */
} Joints;

/* Counted from the pieces' outlines. A bed joint runs on across the upright joints of both its
 * courses. Where a course of this wall runs through a corner it lies on the other wall's course;
 * where the other wall runs through, that wall counts it. `laying` is resolved. Where `rest` is
 * asked for, nothing of courses that stand is counted: neither their upright joints nor the beds
 * under them. */
Joints joints_of (const Wall *wall, const Block *block, const Laying *laying, const Layout *layout,
                  gboolean rest);
