/* loose.c - findings of walls that too little holds sideways: free-standing ones, large partitions
 *
 * What holds a wall's top is not known; the sentences say so. */
#include <glib/gi18n-lib.h>

#include "advice/held.h"
#include "advice/judging.h"

/* A free-standing wall is so many times as high as thick at the most: BS 5628-1, 36.3, from memory.
 */
#define FREE_STANDING 12
/* EN 1996-3, annex B, from memory: walls within, without vertical load. */
#define PARTITION_HEIGHT LENGTH_MM (6000)
#define PARTITION_LENGTH LENGTH_MM (12000)
#define PARTITION_THICKNESS LENGTH_MM (50)
/* Partitions of aerated concrete, held at foot, top and both ends, without load, in dwellings, up
 * to 2.5 m high: leaflet of a federation of the masonry industry on partitions, from memory. Where
 * one end is free, half of it. */
static const struct
{
  Length thickness, length;
} partitions[] = {
  { LENGTH_MM (115), LENGTH_MM (10000) },
  { LENGTH_MM (100), LENGTH_MM (7000) },
  { LENGTH_MM (75), LENGTH_MM (5000) },
};
/* Thicker ones have no row there. */
#define THICKEST LENGTH_MM (150)
#define AERATED_BELOW 1000.0 /* kg/m3 */

static void
judge_free_standing (Judging *judging)
{
  const Length thickness = judging->block->thickness;
  Length height = wall_tallest (judging->wall, 0, judging->wall->length);
  double times;
  char from[LENGTH_TEXT_SIZE], to[LENGTH_TEXT_SIZE];
  Stretch part;
  char *text;

  if (height <= (gint64) FREE_STANDING * thickness
      || !loosest_part (judging->wall, thickness, &part))
    return;
  height = wall_tallest (judging->wall, part.from, part.to);
  times = (double) height / thickness;
  if (height <= (gint64) FREE_STANDING * thickness)
    return;
  if (part.from == 0 && part.to == judging->wall->length)
    text = g_strdup_printf (
        _ ("No other wall holds this one. Where floor or roof do not hold its top either, it "
           "stands "
           "free, %.2f times as high as thick; %d times is the most that was allowed, without much "
           "wind (BS 5628-1, 36.3): check with a licensed engineer."),
        times, FREE_STANDING);
  else
    text = g_strdup_printf (
        _ ("From %s to %s mm no other wall holds this one, for the last that does is farther than "
           "15 times its thickness (EN 1996-1-1, 5.5.1.2). Where floor or roof do not hold its top "
           "there, it stands free, %.2f times as high as thick; %d times is the most that was "
           "allowed, without much wind (BS 5628-1, 36.3): check with a licensed engineer."),
        length_text (part.from, from), length_text (part.to, to), times, FREE_STANDING);
  judging_add (judging, "free-standing", SEVERITY_NOTE, text, MEND_NONE)->x = part.from;
}

/* The longest stretch between the faces of walls that hold it; a free end holds nothing, but no
 * more is known of it. */
static Length
longest_stretch (const Wall *wall)
{
  g_autoptr (GArray) stretches = stretches_of (wall);
  Length longest = 0;

  for (guint i = 0; i < stretches->len; i++)
    {
      const Stretch *stretch = &g_array_index (stretches, Stretch, i);

      longest = MAX (longest, stretch->to - stretch->from);
    }
  return longest;
}

/* TRUE: it was told. */
static gboolean
judge_partition_limits (Judging *judging)
{
  const Length height = wall_tallest (judging->wall, 0, judging->wall->length);
  const Length thickness = judging->block->thickness;
  const Length stretch = longest_stretch (judging->wall);
  char h[LENGTH_TEXT_SIZE], l[LENGTH_TEXT_SIZE], t[LENGTH_TEXT_SIZE];

  if (height <= PARTITION_HEIGHT && stretch <= PARTITION_LENGTH && thickness >= PARTITION_THICKNESS)
    return FALSE;
  judging_add (judging, "partition-limits", SEVERITY_NOTE,
               g_strdup_printf (_ ("This partition is %s mm high, %s mm long between other walls "
                                   "and %s mm thick; the simplified rules for walls without load "
                                   "end at 6 m, 12 m and 50 mm (EN 1996-3, annex B): check with a "
                                   "licensed engineer."),
                                length_text (height, h), length_text (stretch, l),
                                length_text (thickness, t)),
               MEND_NONE);
  return TRUE;
}

/* 0: the thickness has no row. */
static Length
partition_most (Length thickness)
{
  for (guint i = 0; thickness < THICKEST && i < G_N_ELEMENTS (partitions); i++)
    if (thickness >= partitions[i].thickness)
      return partitions[i].length;
  return 0;
}

/* What the stretch may be long. */
static Length
most_of (const Stretch *stretch, Length most)
{
  return stretch->held[SIDE_LEFT] && stretch->held[SIDE_RIGHT] ? most : most / 2;
}

static void
add_long (Judging *judging, const Stretch *stretch, Length most)
{
  const gboolean both = stretch->held[SIDE_LEFT] && stretch->held[SIDE_RIGHT];
  char from[LENGTH_TEXT_SIZE], to[LENGTH_TEXT_SIZE], is[LENGTH_TEXT_SIZE], thick[LENGTH_TEXT_SIZE],
      may[LENGTH_TEXT_SIZE];

  length_text (stretch->from, from);
  length_text (stretch->to, to);
  length_text (stretch->to - stretch->from, is);
  length_text (judging->block->thickness, thick);
  length_text (most_of (stretch, most), may);
  judging_add (
      judging, "partition-length", SEVERITY_NOTE,
      g_strdup_printf (
          both
              ? _ ("From %s to %s mm nothing meets this partition: %s mm, where %s mm of thickness "
                   "allow %s mm, without load, up to 2.5 m high, and held at foot, top and both "
                   "ends (masonry industry's leaflet on partitions): check with a licensed "
                   "engineer.")
              : _ ("From %s to %s mm nothing meets this partition, and its end is free: %s mm, "
                   "where %s mm of thickness allow %s mm, without load, up to 2.5 m high, and held "
                   "at foot, top and one end (masonry industry's leaflet on partitions): check "
                   "with a licensed engineer."),
          from, to, is, thick, may),
      MEND_NONE)
      ->x
      = stretch->from;
}

/* Of its stretches the one that is too long by most. */
static void
judge_partition_length (Judging *judging)
{
  const Length most = partition_most (judging->block->thickness);
  g_autoptr (GArray) stretches = stretches_of (judging->wall);
  const Stretch *worst = NULL;
  Length excess = 0;

  if (most == 0 || judging->block->density >= AERATED_BELOW)
    return;
  for (guint i = 0; i < stretches->len; i++)
    {
      const Stretch *stretch = &g_array_index (stretches, Stretch, i);
      const Length over = stretch->to - stretch->from - most_of (stretch, most);

      if (over > excess)
        {
          excess = over;
          worst = stretch;
        }
    }
  if (worst != NULL)
    add_long (judging, worst, most);
}

void
judge_loose (Judging *judging)
{
  if (!wall_is_partition (judging->wall))
    judge_free_standing (judging);
  else if (!judge_partition_limits (judging))
    judge_partition_length (judging);
}
