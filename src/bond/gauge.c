/* gauge.c - heights: where each course lies */
#include "bond/gauge.h"

static Length
gauge_pitch (const Block *block, const Laying *laying)
{
  return block->height + laying->bed;
}

Length
gauge_bottom (const Wall *wall G_GNUC_UNUSED, const Block *block, const Laying *laying,
              gint32 number)
{
  return laying->first_bed + (number - 1) * gauge_pitch (block, laying);
}

Length
gauge_top (const Wall *wall, const Block *block, const Laying *laying, gint32 number)
{
  return gauge_bottom (wall, block, laying, number) + block->height;
}

gint32
gauge_n_courses (const Wall *wall, const Block *block, const Laying *laying)
{
  Length room = wall->height - laying->first_bed;
  gint32 n;
  Length rest;

  if (room <= 0)
    return 0;
  n = (room + laying->bed) / gauge_pitch (block, laying);
  rest = room - n * gauge_pitch (block, laying);
  /* What is left above the last whole course and its joint: a ripped course, or mortar. */
  if (rest > GAUGE_PACKING_MAX)
    n++;
  return n;
}

gint32
gauge_nearest_top (const Wall *wall G_GNUC_UNUSED, const Block *block, const Laying *laying,
                   Length z)
{
  Length pitch = gauge_pitch (block, laying);
  Length above = z - laying->first_bed + laying->bed;

  if (above <= 0)
    return 0;
  return (above + pitch / 2) / pitch;
}

gint32
gauge_course_at (const Wall *wall G_GNUC_UNUSED, const Block *block, const Laying *laying, Length z)
{
  Length above = z - laying->first_bed;

  return above <= 0 ? 0 : (above - 1) / gauge_pitch (block, laying) + 1;
}

Length
gauge_bed (const Wall *wall, const Block *block, const Laying *laying, gint32 number)
{
  Length bottom = gauge_bottom (wall, block, laying, number);

  return number <= 1 ? bottom : bottom - gauge_top (wall, block, laying, number - 1);
}
