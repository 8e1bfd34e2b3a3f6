/* any-wall.h - walls made up from a number: the same number gives the same wall on every machine */
#pragma once

#include "model/wall.h"

/* A wall with the block that it is laid in. The caller owns both, see any_wall_clear(). */
typedef struct
{
  Block block;
  Wall *wall; /* no wall_fault() beside the block */
} AnyWall;

/* 0.6 .. 14 m long, 1 .. 14 courses high (the last one often ripped), in one of several units;
 * joints 0 .. 20 mm, levelling bed 0 .. 200 mm, limits given or left to their defaults, ends free
 * or with returns in odd or even courses, 0 .. 5 openings on or off the courses, every aim. Lengths
 * lie on a grid that differs from wall to wall, down to 1/320 mm. */
AnyWall any_wall (guint64 seed);
void any_wall_clear (AnyWall *any);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (AnyWall, any_wall_clear)

/* Puts 1 .. 6 pins on it: anywhere, on whole units, a few beside one another or in one another's
 * way, and some that no wall can meet. No wall_fault() comes of it. */
void any_pins (guint64 seed, Wall *wall, const Block *block);

/* A new wall like `wall` seen from behind: ends, openings, pins and the start swapped. */
Wall *any_wall_mirror (const Wall *wall);
/* The pin of a wall so long, with such a head joint, seen from behind: what it fixes stays. */
Pin any_pin_mirror (const Pin *pin, Length wall, Length head);

/* The wall and its unit in one line, millimetres, to be read in a failure's message. */
char *any_wall_text (const Wall *wall, const Block *block);

/* A small generator of its own (SplitMix64, by G. Steele, D. Lea and C. Flood, 2014), so that no
 * library's change of generator changes the walls. */
typedef struct
{
  guint64 state;
} AnyRandom;

guint64 any_random (AnyRandom *random);
/* A number in lowest .. highest, both included; lowest <= highest. */
gint64 any_between (AnyRandom *random, gint64 lowest, gint64 highest);
/* TRUE `n` times in a hundred. */
gboolean any_percent (AnyRandom *random, int n);
