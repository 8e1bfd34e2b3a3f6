/* top.h - what lies at a wall's head and foot along it: slopes, steps, a cap (docs/tops.md) */
#pragma once

#include "model/foreign.h"
#include "model/laying.h"
#include "model/length.h"

/* Between two neighbours the top is straight; two at one place are a step, the first for what is
 * left of it. Before the first and beyond the last it goes on level. */
typedef struct
{
  Length x;     /* from the wall's left end, 0 .. its length */
  Length below; /* the wall's height, 0 .. that height; of one of them 0 */
  Foreign foreign;
} TopPoint;

/* From its place to the next one's the foundation lies higher; before the first it does not. */
typedef struct
{
  Length x;  /* from the wall's left end, 0 .. less than its length, none twice */
  Length up; /* above the wall's zero, >= 0 */
  Foreign foreign;
} Foot;

/* Concrete that follows the top, on the blockwork. */
typedef struct
{
  Length height; /* plumb, CAP_LEAST .. CAP_MOST; 0: none */
  Foreign foreign;
} Cap;

#define CAP_LEAST LENGTH_MM (10)
#define CAP_MOST LENGTH_MM (1000)
#define WALL_MAX_TOP_POINTS 200
#define WALL_MAX_FEET 200

/* Empty lists that own what is in them. */
GArray *top_list_new (void);  /* TopPoint */
GArray *foot_list_new (void); /* Foot */
GArray *top_list_copy (const GArray *tops);
GArray *foot_list_copy (const GArray *feet);
gboolean top_list_equal (const GArray *a, const GArray *b);
gboolean foot_list_equal (const GArray *a, const GArray *b);
void top_list_add (GArray *tops, Length x, Length below);
void foot_list_add (GArray *feet, Length x, Length up);

static inline const TopPoint *
top_point (const GArray *tops, guint i)
{
  return &g_array_index (tops, TopPoint, i);
}
static inline const Foot *
foot_point (const GArray *feet, guint i)
{
  return &g_array_index (feet, Foot, i);
}

/* --- reading --- */

/* A straight stretch of the top, z above the foundation; where it goes on level without an end, x0
 * or x1 is LENGTH_MAX away. x0 < x1. */
typedef struct
{
  Length x0, z0, x1, z1;
} TopLine;

/* The stretch that begins at x or goes on there (SIDE_RIGHT), or that ends at x or goes on there
 * (SIDE_LEFT), of a wall so high. */
TopLine top_line (const GArray *tops, Length height, Length x, Side side);
/* Its height at x, to the nearest 1/320 mm, halves up: the same from behind. */
Length top_line_at (const TopLine *line, Length x);
/* Where it comes to the height z, rounded to where it is higher. z0 != z1. */
Length top_line_meets (const TopLine *line, Length z);
/* The same, rounded to where it is lower. */
Length top_line_leaves (const TopLine *line, Length z);

/* Height of the top at x as it is right or left of it. */
Length top_at (const GArray *tops, Length height, Length x, Side side);
/* The lowest and the highest of it between two places, from < to. */
Length top_lowest (const GArray *tops, Length height, Length from, Length to);
Length top_highest (const GArray *tops, Length height, Length from, Length to);
/* Face under it between two places, mm2, above the wall's zero. */
double top_area (const GArray *tops, Length height, Length from, Length to);
/* Length of the top along its slopes between two places, steps' heights not counted, mm. */
double top_run (const GArray *tops, Length height, Length from, Length to);
/* Angle of a line against the level, degrees, 0 .. 90. */
double top_line_pitch (const TopLine *line);

/* How high the foundation lies right or left of x. */
Length foot_at (const GArray *feet, Length x, Side side);
Length foot_highest (const GArray *feet, Length from, Length to);

/* --- making: lists of a wall so long; heights are above the foundation; *height is the wall's ---
 */

/* From one end's height to the other's. */
GArray *top_mono (Length length, Length left, Length right, Length *height);
/* Up to the ridge at `at`, 0 .. length, and down again. */
GArray *top_gable (Length length, Length left, Length right, Length at, Length ridge,
                   Length *height);
/* n stretches; the one with index i ends, but for the last, at ends[i], ascending. */
GArray *top_steps (const Length *heights, const Length *ends, guint n, Length *height);
/* What a slope of so many degrees, 0 .. 89, rises over a level length. */
Length top_rise (Length run, double degrees);

/* --- when the wall changes: each leaves a legal list --- */

/* The wall grew by `by` at its left end (negative: got shorter). What is at that end stays there,
 * the rest where it stands. Returns by how much the wall's height gets less, its highest place cut
 * off. */
Length top_list_shift (GArray *tops, Length by);
void foot_list_shift (GArray *feet, Length by);
/* The wall's right end is at `to` and was at `from`; likewise. */
Length top_list_resize (GArray *tops, Length from, Length to);
void foot_list_resize (GArray *feet, Length to);
