/* gauge.c - heights: where each course lies */
#include "bond/gauge.h"

#define NEXT_BED_STEP LENGTH_MM (0.5)
/* EN 1996-1-1, 8.1.5, from memory: thin-layer joints are 0.5 to 3 mm, others 6 to 15 mm. */
#define THIN_LEAST LENGTH_MM (0.5)
#define THIN_MOST LENGTH_MM (3)
#define THICK_LEAST LENGTH_MM (6)
#define THICK_MOST LENGTH_MM (15)
#define THIN_EITHER_WAY LENGTH_MM (1)

static Length
gauge_pitch (const Block *block, const Laying *laying)
{
  return block->height + laying->bed;
}

/* --- as planned --- */

static Length
planned_bottom (const Block *block, const Laying *laying, gint32 number)
{
  return laying->first_bed + (number - 1) * gauge_pitch (block, laying);
}

/* How many whole courses fit in between two heights, one bed under each but the first. */
static gint32
whole_courses (const Block *block, Length bed, Length from, Length to)
{
  return to <= from ? 0 : (to - from + bed) / (block->height + bed);
}

static gint32
planned_n_courses (const Wall *wall, const Block *block, const Laying *laying)
{
  Length room = wall->height - laying->first_bed;
  gint32 n = whole_courses (block, laying->bed, laying->first_bed, wall->height);

  if (room <= 0)
    return 0;
  /* What is left above the last whole course and its joint: a ripped course, or mortar. */
  if (room - n * gauge_pitch (block, laying) > GAUGE_PACKING_MAX)
    n++;
  return n;
}

/* --- from what stands --- */

/* The courses that stand, and the beds of all above them. */
typedef struct
{
  Length *bottoms; /* owned */
  gint32 n;
  Length top; /* of the last of them, when whole */
  Length bed;
} Standing;

/* Between which the next beds may be. */
static void
find_bed_limits (const Built *built, Length planned, Length *least, Length *most)
{
  if (planned <= THIN_MOST)
    {
      *least = MAX (planned - THIN_EITHER_WAY, THIN_LEAST);
      *most = MIN (planned + THIN_EITHER_WAY, THIN_MOST);
    }
  else
    {
      *least = MIN (planned, THICK_LEAST);
      *most = MAX (planned, THICK_MOST);
    }
  if (built->given & BUILT_BED_LEAST)
    *least = built->bed_least;
  if (built->given & BUILT_BED_MOST)
    *most = built->bed_most;
}

/* What all beds above a course are to be. */
typedef struct
{
  Length from;    /* the course's top */
  gint32 courses; /* whole ones above it */
  Length unit;
  Length wanted; /* the last one's top as planned */
  Length limit;  /* the wall's top */
  Length planned;
} Way;

static gint64
way_end (const Way *way, Length bed)
{
  return way->from + (gint64) way->courses * (bed + way->unit);
}

/* Whether one bed is better than another: the last whole course below the wall's top, then near to
 * where it was planned, then the bed itself. */
static gboolean
is_better (const Way *way, Length bed, Length other)
{
  gint64 a = way_end (way, bed), b = way_end (way, other);
  gint64 off_a = ABS (a - way->wanted), off_b = ABS (b - way->wanted);

  if ((a > way->limit) != (b > way->limit))
    return a <= way->limit;
  if (off_a != off_b)
    return off_a < off_b;
  if (ABS (bed - way->planned) != ABS (other - way->planned))
    return ABS (bed - way->planned) < ABS (other - way->planned);
  return bed < other;
}

static Length
best_bed (const Way *way, const Built *built)
{
  Length least, most, best = way->planned;

  if (way->courses <= 0)
    return best;
  find_bed_limits (built, way->planned, &least, &most);
  for (Length bed = least; bed <= most; bed += NEXT_BED_STEP)
    if (is_better (way, bed, best))
      best = bed;
  return best;
}

/* The bed that the last courses were laid on stays as long as it was the best one when the first of
 * them was: else each course that is written down could change the next. */
static Length
next_bed (const Standing *standing, const Wall *wall, const Block *block, const Laying *laying)
{
  const gint32 whole = whole_courses (block, laying->bed, laying->first_bed, wall->height);
  Way way = { standing->top, whole - standing->n,
              block->height, planned_bottom (block, laying, whole) + block->height,
              wall->height,  laying->bed };
  Way first = way;
  gint32 i = standing->n - 1;
  Length bed = i > 0 ? standing->bottoms[i] - standing->bottoms[i - 1] - block->height : -1;

  for (;
       bed >= 0 && i > 0 && standing->bottoms[i] - standing->bottoms[i - 1] - block->height == bed;
       i--)
    {
      first.from -= bed + block->height;
      first.courses++;
    }
  if (bed >= 0 && best_bed (&first, wall->built) == bed)
    return bed;
  return best_bed (&way, wall->built);
}

/* FALSE: nothing stands. */
static gboolean
find_standing (const Wall *wall, const Block *block, const Laying *laying, Standing *out)
{
  if (wall == NULL || wall_standing (wall) == 0)
    return FALSE;
  out->n = wall_standing (wall);
  out->bottoms = built_bottoms (wall->built, laying, block->height);
  out->top = out->bottoms[out->n - 1] + block->height;
  out->bed = next_bed (out, wall, block, laying);
  return TRUE;
}

static void
standing_clear (Standing *standing)
{
  g_free (standing->bottoms);
}
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Standing, standing_clear)

static Length
standing_bottom (const Standing *standing, const Block *block, gint32 number)
{
  if (number < 1)
    return standing->bottoms[0] + (number - 1) * (block->height + standing->bed);
  if (number <= standing->n)
    return standing->bottoms[number - 1];
  return standing->top + standing->bed
         + (number - standing->n - 1) * (block->height + standing->bed);
}

/* --- either way --- */

Length
gauge_bottom (const Wall *wall, const Block *block, const Laying *laying, gint32 number)
{
  g_auto (Standing) standing = { NULL };

  if (find_standing (wall, block, laying, &standing))
    return standing_bottom (&standing, block, number);
  return planned_bottom (block, laying, number);
}

Length
gauge_top (const Wall *wall, const Block *block, const Laying *laying, gint32 number)
{
  return gauge_bottom (wall, block, laying, number) + block->height;
}

gint32
gauge_n_courses (const Wall *wall, const Block *block, const Laying *laying)
{
  g_auto (Standing) standing = { NULL };
  Length from;
  gint32 n;

  if (!find_standing (wall, block, laying, &standing))
    return planned_n_courses (wall, block, laying);
  from = standing.top + standing.bed;
  n = whole_courses (block, standing.bed, from, wall->height);
  if (wall->height - from - n * (block->height + standing.bed) > GAUGE_PACKING_MAX)
    n++;
  return standing.n + n;
}

gint32
gauge_nearest_top (const Wall *wall, const Block *block, const Laying *laying, Length z)
{
  g_auto (Standing) standing = { NULL };
  Length pitch = gauge_pitch (block, laying), above = z - laying->first_bed + laying->bed;
  gint32 nearest;

  if (!find_standing (wall, block, laying, &standing))
    return above <= 0 ? 0 : (above + pitch / 2) / pitch;
  pitch = block->height + standing.bed;
  if (z > standing.top)
    return standing.n + (z - standing.top + pitch / 2) / pitch;
  for (nearest = 0; nearest < standing.n; nearest++)
    {
      Length top
          = nearest > 0 ? standing.bottoms[nearest - 1] + block->height : standing.bottoms[0];

      if (z - top < standing.bottoms[nearest] + block->height - z)
        break;
    }
  return nearest;
}

gint32
gauge_course_at (const Wall *wall, const Block *block, const Laying *laying, Length z)
{
  g_auto (Standing) standing = { NULL };
  Length above = z - laying->first_bed;
  gint32 n;

  if (!find_standing (wall, block, laying, &standing))
    return above <= 0 ? 0 : (above - 1) / gauge_pitch (block, laying) + 1;
  above = z - standing_bottom (&standing, block, standing.n + 1);
  if (above > 0)
    return standing.n + 1 + (above - 1) / (block->height + standing.bed);
  for (n = standing.n; n > 0 && standing.bottoms[n - 1] >= z;)
    n--;
  return n;
}

Length
gauge_bed (const Wall *wall, const Block *block, const Laying *laying, gint32 number)
{
  Length bottom = gauge_bottom (wall, block, laying, number);

  return number <= 1 ? bottom : bottom - gauge_top (wall, block, laying, number - 1);
}
