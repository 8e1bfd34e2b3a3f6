/* pier.c - what stands beside an opening */
#include "advice/pier.h"

static gboolean
share_height (const Opening *p, const Opening *q)
{
  return p->sill < opening_head (q) && q->sill < opening_head (p);
}

Pier
pier_left_of (const Wall *wall, const Opening *opening)
{
  Pier pier = { 0, opening->x, NULL, opening };

  for (guint i = 0; i < wall->openings->len; i++)
    {
      const Opening *other = wall_opening_at (wall, i);

      if (other == opening || !share_height (other, opening) || opening_right (other) > opening->x)
        continue;
      if (pier.left == NULL || opening_right (other) > pier.from)
        {
          pier.from = opening_right (other);
          pier.left = other;
        }
    }
  return pier;
}

gboolean
pier_is_last (const Wall *wall, const Opening *opening)
{
  for (guint i = 0; i < wall->openings->len; i++)
    {
      const Opening *other = wall_opening_at (wall, i);

      if (other != opening && share_height (other, opening) && other->x >= opening_right (opening))
        return FALSE;
    }
  return TRUE;
}

Pier
pier_right_of (const Wall *wall, const Opening *opening)
{
  return (Pier){ opening_right (opening), wall->length, opening, NULL };
}
