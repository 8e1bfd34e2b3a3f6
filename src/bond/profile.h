/* profile.h - what a wall's top and its footing leave of a course (docs/tops.md) */
#pragma once

#include "model/wall.h"

/* One course under the top and on the footing. */
typedef struct
{
  const Wall *wall;
  const Block *block;
  const Laying *laying; /* resolved */
  Length bottom, top;   /* of the course */
} Profile;

/* A stretch of it in which the footing is level and the top straight. */
typedef struct
{
  Length base;        /* no masonry is below; the course's bottom where the footing is */
  Length left, right; /* height of the top at its ends, at most the course's */
  TopLine line;       /* of the top; where `left` is not `right` */
} ProfilePart;

/* Whether the wall has a top or a footing to be looked at. */
static inline gboolean
profile_is_plain (const Wall *wall)
{
  return wall->tops->len == 0 && wall->feet->len == 0;
}

/* Adds the places between from and to (Length) where such stretches end. */
void profile_add_breaks (const Profile *profile, Length from, Length to, GArray *places);
/* Between two of them. */
ProfilePart profile_part (const Profile *profile, Length from, Length to);

/* What is lower than this under a slope is packed: 20 mm, or what makes the thick end of a shortest
 * raked piece as high as the thinnest strip; of that half a unit at most. */
Length profile_toe (const Profile *profile, const TopLine *line);
/* The same of a run that is under slopes alone, by its highest place: the thinnest strip. */
Length profile_least (const Profile *profile);
/* Adds the places between from and to where the line is the toe above `lo`, and where it meets it.
 */
void profile_add_toe (const Profile *profile, const TopLine *line, Length lo, Length from,
                      Length to, GArray *places);

/* Where masonry begins on a footing that lies so far up: on a bed as thick as the levelling bed, or
 * thinner, down to 10 mm, where a course's bottom is met by that; where only the bed joint below a
 * course would be left, at that course's bottom. */
Length profile_base (const Wall *wall, const Block *block, const Laying *laying, Length up);
/* The thinnest bed for that; common practice. */
#define PROFILE_LEAST_BED LENGTH_MM (10)
