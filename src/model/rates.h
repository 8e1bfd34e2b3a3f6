/* rates.h - what the builder reckons the work with: his gang, his hours, his pallets */
#pragma once

#include "model/length.h"

/* docs/rules.md says where the defaults come from. Hours and minutes are those of one person. */
typedef struct
{
  guint given;            /* WorkRatesField bits: the others are as in work_rates_default() */
  gint32 gang;            /* persons at work, 1 .. WORK_MOST_GANG */
  double hours_a_day;     /* of each, > 0 .. WORK_MOST_HOURS */
  double hours_a_m2;      /* laying, of face laid, where minutes_a_block is 0; 0 .. as above */
  double minutes_a_block; /* laying, of a piece, whole or cut, 0 .. WORK_MOST_MINUTES; 0:
                             hours_a_m2 holds */
  double minutes_a_cut;   /* a straight cut by hand saw, 0 .. as above */
  double minutes_a_metre; /* levelling bed under course 1, of what stands on it, 0 .. as above */
  Length rise;            /* that a wall rises in a day at most, 1 mm .. LENGTH_MAX */
  gint32 lifts_a_day;     /* pieces that one person lifts in a day at most, 0 .. WORK_MOST_PIECES;
                             0: any number */
  gint32 blocks_a_pallet; /* 0 .. as above; 0: as many as the mass allows */
} WorkRates;

typedef enum
{
  WORK_GANG = 1 << 0,
  WORK_HOURS_A_DAY = 1 << 1,
  WORK_HOURS_A_M2 = 1 << 2,
  WORK_MINUTES_A_BLOCK = 1 << 3,
  WORK_MINUTES_A_CUT = 1 << 4,
  WORK_MINUTES_A_METRE = 1 << 5,
  WORK_RISE = 1 << 6,
  WORK_LIFTS_A_DAY = 1 << 7,
  WORK_BLOCKS_A_PALLET = 1 << 8,
} WorkRatesField;

/* Far beyond any site, and so little that no sum gets out of hand. */
#define WORK_MOST_GANG 1000
#define WORK_MOST_PIECES 100000
#define WORK_MOST_HOURS 24.0
#define WORK_MOST_MINUTES 600.0
/* The least that is more than nothing. */
#define WORK_LEAST_HOURS 0.000001

/* 2 persons, 8 hours, 0.55 h/m2, 1.5 min a cut, 10 min a metre of levelling bed (common practice);
 * 1.5 m a day: house-building standards; lifts and pallets as their 0 says. Nothing given. */
WorkRates work_rates_default (void);
gboolean work_rates_equal (const WorkRates *a, const WorkRates *b);
/* What no gang can do, as a new sentence; NULL when nothing is. */
char *work_rates_fault (const WorkRates *rates);
