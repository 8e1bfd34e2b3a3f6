/* check-built.c - where courses lie when some of them stand, by docs/as-built.md alone */
#include "check-built.h"

#define MOST 10001

/* Where courses were said to lie, and which were measured. */
static void
read_standing (const Check *check, gint64 *said, gint64 *measured)
{
  const Built *built = check->wall->built;
  for (gint32 i = 1; i <= built->courses; i++)
    {
      const LaidCourse *laid = &g_array_index (built->laid, LaidCourse, i - 1);
      said[i] = i == 1 ? check->laying.first_bed
                       : said[i - 1] + check->block->height + check->laying.bed;
      if (laid->given & LAID_BOTTOM)
        said[i] = laid->bottom;
      measured[i] = -1;
      if (laid->given & LAID_TOP)
        measured[i] = (laid->given & LAID_TOP_RIGHT ? ((gint64) laid->top + laid->top_right) / 2
                                                    : laid->top)
                      - check->block->height;
    }
}

/* One course at a time, from its nearest measured neighbours. */
static gint64
standing_bottom (const gint64 *said, const gint64 *measured, gint32 n, gint32 course)
{
  gint32 below = course, above = course;
  while (below > 0 && measured[below] < 0)
    below--;
  while (above <= n && measured[above] < 0)
    above++;
  if (below > 0 && above <= n)
    return above == below
               ? measured[course]
               : measured[below]
                     + (measured[above] - measured[below]) * (course - below) / (above - below);
  if (below > 0)
    return said[course] + measured[below] - said[below];
  if (above > n)
    return said[course];
  if (said[1] + measured[above] - said[above] >= 0)
    return said[course] + measured[above] - said[above];
  return measured[above] * (course - 1) / (above - 1);
}

typedef struct
{
  gint64 from; /* top of what stands */
  gint32 more; /* whole courses above it */
  gint64 goal; /* where the last of them was planned to end */
} Climb;

/* Of two beds, FALSE where the first is no better. */
static gboolean
beats (const Check *check, const Climb *climb, gint64 a, gint64 b)
{
  gint64 unit = check->block->height, end_a = climb->from + climb->more * (a + unit);
  gint64 end_b = climb->from + climb->more * (b + unit), planned = check->laying.bed;
  gint64 ranks[][2] = { { end_a > check->wall->height, end_b > check->wall->height },
                        { ABS (end_a - climb->goal), ABS (end_b - climb->goal) },
                        { ABS (a - planned), ABS (b - planned) },
                        { a, b } };
  for (guint i = 0; i < G_N_ELEMENTS (ranks); i++)
    if (ranks[i][0] != ranks[i][1])
      return ranks[i][0] < ranks[i][1];
  return FALSE;
}

static gint64
best_of (const Check *check, const Climb *climb)
{
  const Built *built = check->wall->built;
  const gint64 mm = LENGTH_PER_MM, planned = check->laying.bed;
  gint64 least = planned <= 3 * mm ? MAX (planned - mm, mm / 2) : MIN (planned, 6 * mm);
  gint64 most = planned <= 3 * mm ? MIN (planned + mm, 3 * mm) : MAX (planned, 15 * mm);
  gint64 best = planned;
  least = built->given & BUILT_BED_LEAST ? built->bed_least : least;
  most = built->given & BUILT_BED_MOST ? built->bed_most : most;
  for (gint64 bed = most - (most - least) % (mm / 2); climb->more > 0 && bed >= least;
       bed -= mm / 2)
    if (beats (check, climb, bed, best))
      best = bed;
  return best;
}

/* The bed of the courses to come. */
static gint64
bed_above (const Check *check, const gint64 *bottoms, gint32 n)
{
  const gint64 unit = check->block->height, first = check->laying.first_bed;
  const gint64 bed = check->laying.bed;
  gint32 whole = 0, low = n;
  while (first + (whole + 1) * (unit + bed) - bed <= check->wall->height)
    whole++;
  Climb climb = { bottoms[n] + unit, whole - n, first + whole * (unit + bed) - bed };
  gint64 last = n > 1 ? bottoms[n] - bottoms[n - 1] - unit : -1;
  while (low > 1 && bottoms[low] - bottoms[low - 1] - unit == last)
    low--;
  Climb since = { bottoms[low] + unit, whole - low, climb.goal };
  return n > 1 && best_of (check, &since) == last ? last : best_of (check, &climb);
}

Length
check_built_bottom (const Check *check, gint32 course)
{
  const gint32 n = check->wall->built->courses;
  g_autofree gint64 *said = g_new0 (gint64, MOST), *measured = g_new0 (gint64, MOST);
  g_autofree gint64 *bottoms = g_new0 (gint64, MOST);
  read_standing (check, said, measured);
  for (gint32 i = 1; i <= n; i++)
    bottoms[i] = standing_bottom (said, measured, n, i);
  if (course <= n)
    return (Length) bottoms[course];
  gint64 bed = bed_above (check, bottoms, n);
  return (Length) (bottoms[n] + (course - n) * (check->block->height + bed));
}
