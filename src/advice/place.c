/* place.c - what a wall would cost with one opening, its sill or its head elsewhere */
#include "advice/place.h"

#include "bond/gauge.h"

/* --- what moves --- */

Length
shift_at (const Opening *opening, Shift shift)
{
  switch (shift)
    {
    case SHIFT_SILL:
      return opening->sill;
    case SHIFT_HEAD:
      return opening_head (opening);
    case SHIFT_ALONG:
    case N_SHIFTS:
    default:
      return opening->x;
    }
}

void
shift_to (Opening *opening, Shift shift, Length at)
{
  switch (shift)
    {
    case SHIFT_SILL:
      opening->height += opening->sill - at;
      opening->sill = at;
      break;
    case SHIFT_HEAD:
      opening->height = at - opening->sill;
      break;
    case SHIFT_ALONG:
    case N_SHIFTS:
    default:
      opening->x = at;
      break;
    }
}

/* --- places worth a try --- */

typedef struct
{
  GArray *places; /* Length */
  Length now, within;
} Listing;

static void
add (Listing *listing, gint64 at)
{
  Length place = (Length) at;

  if (at < 0 || at > LENGTH_MAX || ABS (at - listing->now) > listing->within)
    return;
  g_array_append_val (listing->places, place);
}

static void
add_multiples (Listing *listing, Length step)
{
  gint64 first = MAX ((gint64) listing->now - listing->within, 0);

  for (gint64 at = (first + step - 1) / step * step; at <= (gint64) listing->now + listing->within;
       at += step)
    add (listing, at);
}

/* The faces that a pier beside the opening may begin or end at, where nothing moves. */
static void
add_half_blocks (Listing *listing, const Wall *wall, const Block *block, const Opening *opening)
{
  const Length head = laying_resolve (&wall->laying, block).head;
  const Length half = (block->length + head) / 2;

  for (guint i = 0; i <= wall->openings->len; i++)
    {
      const Opening *other = i < wall->openings->len ? wall_opening_at (wall, i) : NULL;
      const Length from = other != NULL ? opening_right (other) : 0;
      const Length to = other != NULL ? other->x : wall->length;
      const gint64 width = opening->width;

      if (other == opening)
        continue;
      /* n halves from `from` to the left jamb; n halves from the right jamb to `to`. */
      for (gint64 n = MAX ((listing->now - listing->within - from + head) / half, 1);
           from + n * half - head <= (gint64) listing->now + listing->within; n++)
        add (listing, from + n * half - head);
      for (gint64 n = MAX ((to - width - listing->now - listing->within + head) / half, 1);
           to - width - n * half + head >= (gint64) listing->now - listing->within; n++)
        add (listing, to - width - n * half + head);
    }
}

static void
add_course_ends (Listing *listing, const Wall *wall, const Block *block)
{
  const Laying laying = laying_resolve (&wall->laying, block);
  const gint32 n_courses = gauge_n_courses (wall, block, &laying);
  gint32 n = MAX (gauge_nearest_top (wall, block, &laying, listing->now - listing->within), 1);

  for (; n <= n_courses; n++)
    {
      const Length top = gauge_top (wall, block, &laying, n);

      if (top > listing->now + listing->within)
        break;
      add (listing, top);
      add (listing, gauge_bottom (wall, block, &laying, n + 1));
    }
}

static gint
compare_nearest (gconstpointer a, gconstpointer b, gpointer data)
{
  const Length x = *(const Length *) a, y = *(const Length *) b, now = *(const Length *) data;
  const Length dx = ABS (x - now), dy = ABS (y - now);

  if (dx != dy)
    return dx < dy ? -1 : 1;
  return (x > y) - (x < y);
}

static void
drop_doubles (GArray *places)
{
  guint kept = 0;

  for (guint i = 0; i < places->len; i++)
    {
      Length at = g_array_index (places, Length, i);

      if (kept == 0 || at != g_array_index (places, Length, kept - 1))
        g_array_index (places, Length, kept++) = at;
    }
  g_array_set_size (places, kept);
}

GArray *
places_list (const Wall *wall, const Block *block, OpeningId id, Shift shift, Length within,
             Length step)
{
  const Opening *opening = wall_opening (wall, id);
  Listing listing = { g_array_new (FALSE, FALSE, sizeof (Length)), 0, within };

  g_return_val_if_fail (opening != NULL && step > 0, listing.places);
  listing.now = shift_at (opening, shift);
  add (&listing, listing.now);
  add_multiples (&listing, step);
  if (shift == SHIFT_ALONG)
    add_half_blocks (&listing, wall, block, opening);
  else
    add_course_ends (&listing, wall, block);
  g_array_sort_with_data (listing.places, compare_nearest, &listing.now);
  drop_doubles (listing.places);
  return listing.places;
}

/* --- one of them --- */

gboolean
place_try (const Wall *wall, const Block *block, OpeningId opening, Shift shift, Look look,
           Place *place, const gint *stop)
{
  g_autoptr (Wall) moved = wall_copy (wall);
  Costing costing;

  shift_to (wall_own_opening (moved, opening), shift, place->at);
  costing = cost_of_wall (moved, block, look, stop, &place->cost);
  place->possible = costing == COSTING_DONE;
  return costing != COSTING_STOPPED;
}
