/* reach.c - the patterns that a segment can have at all: faces that can be reached with so many
 * cuts, over all real places
 *
 * Faces are kept as intervals, by how many cuts lead to them and, where thin strips are counted, by
 * how many of these. Pieces go to the right, so every set is gone through once, from the left. */
#include "bond/reach.h"

#include <string.h>

/* Faces in a row from whose every one a piece may go equally far. */
typedef struct
{
  Length from;    /* up to the next one's */
  Length limit;   /* the farthest next face: not over a stretch that needs a perpend */
  Length strip;   /* end of the thin stretch that they are in, which a piece must reach out of to be
                     no   strip; less than any face: in none */
  gboolean plain; /* in a stretch of the unit's height, which ends at `end` */
  Length end;
} Part;

/* Faces that can be reached with a number of cuts, by how many pieces are too thin a strip. */
typedef struct
{
  Intervals of[REACH_MAX_STRIPS + 1];
} Level;

struct Reach
{
  const Geometry *geometry;
  const Segment *segment;
  const Ask *ask;
  Part *parts;
  gint32 n_parts, room;
  Intervals needed;              /* those of `ask` by their beginnings */
  Intervals barred;              /* those of `ask`, joined */
  Intervals clear, moved, found; /* while a set is closed under whole units */
  Level levels[2];               /* this one and the next */
  gint64 work;
};

#define NO_STRIP (-G_MAXINT16)

Reach *
reach_new (const Geometry *geometry)
{
  Reach *reach = g_new0 (Reach, 1);

  reach->geometry = geometry;
  return reach;
}

static void
level_clear (Level *level)
{
  for (gint32 i = 0; i <= REACH_MAX_STRIPS; i++)
    intervals_clear (&level->of[i]);
}

void
reach_free (Reach *reach)
{
  if (reach == NULL)
    return;
  g_free (reach->parts);
  intervals_clear (&reach->needed);
  intervals_clear (&reach->barred);
  intervals_clear (&reach->clear);
  intervals_clear (&reach->moved);
  intervals_clear (&reach->found);
  level_clear (&reach->levels[0]);
  level_clear (&reach->levels[1]);
  g_free (reach);
}

gint64
reach_work (const Reach *reach)
{
  return reach->work;
}

/* --- parts --- */

static gboolean
is_plain (const Geometry *geometry, const Step *step)
{
  return step->hi - step->lo == geometry->unit_height;
}

/* The end of the thin stretch that step `i` is in; NO_STRIP where it is none or they do not count.
 */
static Length
strip_of (const Reach *reach, gint32 i)
{
  Length end = NO_STRIP;

  for (; reach->ask->strips >= 0 && i < reach->segment->n_steps; i++)
    {
      const Step *step = geometry_step (reach->geometry, reach->segment->first_step + i);

      if (step->hi - step->lo >= reach->geometry->min_rip)
        break;
      end = step->to;
    }
  return end;
}

/* Begins a part in step `i`, unless one begins there. */
static void
add_part (Reach *reach, Length from, gint32 i)
{
  const Step *step = geometry_step (reach->geometry, reach->segment->first_step + i);
  Part part = { from, G_MAXINT32, strip_of (reach, i), is_plain (reach->geometry, step), step->to };

  if (reach->n_parts > 0 && reach->parts[reach->n_parts - 1].from == from)
    reach->n_parts--;
  reach->parts[reach->n_parts++] = part;
}

/* Parts begin with steps, and with what needs a perpend. */
static void
find_parts (Reach *reach)
{
  const Segment *segment = reach->segment;
  gint32 next = 0, k = reach->needed.n - 1;
  Length limit = G_MAXINT32;

  if (reach->room < segment->n_steps + reach->needed.n)
    {
      reach->room = 2 * (segment->n_steps + reach->needed.n);
      reach->parts = g_renew (Part, reach->parts, reach->room);
    }
  reach->n_parts = 0;
  for (gint32 i = 0; i < segment->n_steps; i++)
    {
      Length from
          = i == 0 ? segment->a : geometry_step (reach->geometry, segment->first_step + i)->from;

      for (; next < reach->needed.n && reach->needed.at[next].from < from; next++)
        if (reach->needed.at[next].from > segment->a)
          add_part (reach, reach->needed.at[next].from, i - 1);
      add_part (reach, from, i);
    }
  for (; next < reach->needed.n; next++)
    if (reach->needed.at[next].from > segment->a)
      add_part (reach, reach->needed.at[next].from, segment->n_steps - 1);
  for (gint32 i = reach->n_parts - 1; i >= 0; i--)
    {
      for (; k >= 0 && reach->needed.at[k].from > reach->parts[i].from; k--)
        limit = MIN (limit, reach->needed.at[k].to);
      reach->parts[i].limit = limit;
    }
}

static void
begin (Reach *reach, const Segment *segment, const Ask *ask)
{
  reach->segment = segment;
  reach->ask = ask;
  reach->needed.n = reach->barred.n = 0;
  for (gint32 i = 0; i < ask->n_needed; i++)
    intervals_add (&reach->needed, ask->needed[i].from, ask->needed[i].to);
  intervals_sort (&reach->needed);
  for (gint32 i = 0; i < ask->n_barred; i++)
    intervals_add (&reach->barred, ask->barred[i].from, ask->barred[i].to);
  intervals_merge (&reach->barred);
  find_parts (reach);
}

/* The part that `face` is in. */
static const Part *
part_of (const Reach *reach, Length face)
{
  gint32 low = 0, high = reach->n_parts - 1;

  while (low < high)
    {
      gint32 middle = (low + high + 1) / 2;

      if (reach->parts[middle].from > face)
        high = middle - 1;
      else
        low = middle;
    }
  return &reach->parts[low];
}

static Length
last_of_part (const Reach *reach, const Part *part)
{
  return part + 1 < reach->parts + reach->n_parts ? part[1].from - 1 : G_MAXINT32;
}

/* --- whole units --- */

/* Where one is in what ascends: it is only looked for from here on. */
typedef struct
{
  gint32 part, bar;
} Place;

/* Adds from .. to without what is barred. */
static void
add_clear (const Reach *reach, Length from, Length to, gint32 *bar, Intervals *set)
{
  const Intervals *barred = &reach->barred;

  while (*bar < barred->n && barred->at[*bar].to < from)
    (*bar)++;
  for (gint32 i = *bar; i < barred->n && barred->at[i].from <= to; i++)
    {
      intervals_add (set, from, barred->at[i].from - 1);
      from = barred->at[i].to + 1;
    }
  intervals_add (set, from, to);
}

/* Adds the faces reached from `interval` by one whole unit to `moved`. */
static void
move_by_whole (Reach *reach, Interval interval, Place *place)
{
  Length unit = reach->geometry->unit, pitch = unit + reach->geometry->joint;

  while (place->part + 1 < reach->n_parts && reach->parts[place->part + 1].from <= interval.from)
    place->part++;
  for (const Part *part = &reach->parts[place->part];
       part < reach->parts + reach->n_parts && part->from <= interval.to; part++)
    {
      Length from = MAX (interval.from, part->from);
      Length last = MIN (interval.to, last_of_part (reach, part));

      if (part->plain)
        add_clear (reach, from + pitch, MIN (MIN (last, part->end - unit) + pitch, part->limit),
                   &place->bar, &reach->moved);
    }
}

/* Adds all that whole units reach from a set, in which nothing barred is left. */
static void
close_under_wholes (Reach *reach, Intervals *set)
{
  Intervals *clear = &reach->clear, *moved = &reach->moved, *found = &reach->found, before;
  gint32 at = 0, next = 0, bar = 0;
  Place place = { 0, 0 };

  intervals_merge (set);
  clear->n = moved->n = found->n = 0;
  for (gint32 i = 0; i < set->n; i++)
    add_clear (reach, set->at[i].from, set->at[i].to, &bar, clear);
  /* What was moved ascends as what it was moved from does. */
  while (at < clear->n || next < moved->n)
    {
      gboolean first
          = next == moved->n || (at < clear->n && clear->at[at].from <= moved->at[next].from);
      Interval one = first ? clear->at[at++] : moved->at[next++];
      Interval *last = found->n > 0 ? &found->at[found->n - 1] : NULL;

      reach->work++;
      if (last != NULL && last->to >= one.from)
        one.from = last->to + 1;
      if (one.from > one.to)
        continue;
      if (last != NULL && last->to == one.from - 1)
        last->to = one.to;
      else
        intervals_add (found, one.from, one.to);
      move_by_whole (reach, one, &place);
    }
  before = *set;
  *set = *found;
  *found = before;
}

/* --- levels --- */

static gint32
n_sets (const Reach *reach)
{
  return MAX (reach->ask->strips, 0) + 1;
}

static void
level_empty (Level *level)
{
  for (gint32 i = 0; i <= REACH_MAX_STRIPS; i++)
    level->of[i].n = 0;
}

static gboolean
level_is_empty (const Reach *reach, const Level *level)
{
  for (gint32 i = 0; i < n_sets (reach); i++)
    if (level->of[i].n > 0)
      return FALSE;
  return TRUE;
}

static void
level_close (Reach *reach, Level *level)
{
  for (gint32 i = 0; i < n_sets (reach); i++)
    if (level->of[i].n > 0)
      close_under_wholes (reach, &level->of[i]);
}

/* Faces reached from `interval` by a cut piece that is no thin strip (into `to`), and by one that
 * is (`strips`, may be NULL). */
static void
add_cut_moves (const Reach *reach, Interval interval, gint32 *at, Intervals *to, Intervals *strips)
{
  Length joint = reach->geometry->joint;

  while (*at + 1 < reach->n_parts && reach->parts[*at + 1].from <= interval.from)
    (*at)++;
  for (const Part *part = &reach->parts[*at];
       part < reach->parts + reach->n_parts && part->from <= interval.to; part++)
    {
      Length last = MIN (interval.to, last_of_part (reach, part));
      Length farthest = MIN (last + reach->geometry->unit + joint, reach->segment->b);
      Length shortest = MAX (interval.from, part->from) + reach->ask->least + joint;

      farthest = MIN (farthest, part->limit);
      intervals_add (to, MAX (shortest, part->strip + joint + 1), farthest);
      if (strips != NULL)
        intervals_add (strips, shortest, MIN (farthest, part->strip + joint));
    }
}

/* The level with one cut more. */
static void
level_next (const Reach *reach, const Level *level, Level *next)
{
  gint32 n = n_sets (reach);

  level_empty (next);
  for (gint32 k = 0; k < n; k++)
    for (gint32 i = 0, at = 0; i < level->of[k].n; i++)
      add_cut_moves (reach, level->of[k].at[i], &at, &next->of[k],
                     k + 1 < n ? &next->of[k + 1] : NULL);
}

/* The faces after a first piece, whole (`start` 1) or cut. */
static void
level_first (Reach *reach, gint32 start, Level *level)
{
  const Interval begin = { reach->segment->a, reach->segment->a };
  Place place = { 0, 0 };
  gint32 at = 0;

  level_empty (level);
  if (start == 0)
    {
      add_cut_moves (reach, begin, &at, &level->of[0], n_sets (reach) > 1 ? &level->of[1] : NULL);
      return;
    }
  reach->moved.n = 0;
  move_by_whole (reach, begin, &place);
  for (gint32 i = 0; i < reach->moved.n; i++)
    intervals_add (&level->of[0], reach->moved.at[i].from, reach->moved.at[i].to);
}

/* Whether a piece may go from faces of `part` to a next face `to`, past all when it is the last;
 * `strip`: as a strip that is too thin. */
static gboolean
may_go (const Reach *reach, const Part *part, Length to, gboolean strip)
{
  if (to == G_MAXINT32)
    return part->limit == G_MAXINT32 && strip == (part->strip >= reach->segment->b);
  return part->limit >= to && strip == (to <= part->strip + reach->geometry->joint);
}

/* A face of `set` in from .. to from which a piece may go to `next`; -1: there is none. */
static Length
face_before (const Reach *reach, const Intervals *set, Length from, Length to, Length next,
             gboolean strip)
{
  for (gint32 i = 0; i < set->n && set->at[i].from <= to; i++)
    {
      Interval rest = { MAX (set->at[i].from, from), MIN (set->at[i].to, to) };

      if (rest.from > rest.to)
        continue;
      for (const Part *part = part_of (reach, rest.from);
           part < reach->parts + reach->n_parts && part->from <= rest.to; part++)
        if (may_go (reach, part, next, strip))
          return MIN (rest.to, last_of_part (reach, part));
    }
  return -1;
}

/* The same over a level; how many strips there were before goes to *used. */
static Length
level_face_before (const Reach *reach, const Level *level, Length from, Length to, Length next,
                   gint32 *used)
{
  Length face = -1;

  for (*used = 0; *used < n_sets (reach); (*used)++)
    {
      face = face_before (reach, &level->of[*used], from, to, next, FALSE);
      if (face < 0 && *used + 1 < n_sets (reach))
        face = face_before (reach, &level->of[*used], from, to, next, TRUE);
      if (face >= 0)
        break;
    }
  return face;
}

static void
note_end_states (const Reach *reach, const Level *level, gint32 cuts, gint32 start,
                 gint32 states[N_STATES])
{
  const Segment *segment = reach->segment;
  const Step *last = geometry_step (reach->geometry, segment->first_step + segment->n_steps - 1);
  Length whole = segment->b - reach->geometry->unit;
  gint32 used;

  if (is_plain (reach->geometry, last) && whole >= last->from
      && level_face_before (reach, level, whole, whole, G_MAXINT32, &used) >= 0)
    states[start | 2] = MIN (states[start | 2], cuts);
  if (level_face_before (reach, level, whole, segment->b - reach->ask->least, G_MAXINT32, &used)
      >= 0)
    states[start] = MIN (states[start], cuts + 1);
}

/* Fewest cuts of patterns that begin whole (`start` 1) or cut, until one of them, or the end state
 * `enough` when that is no -1, has more than `most`. */
static void
states_from (Reach *reach, gint32 start, gint32 most, gint32 enough, gint32 states[N_STATES])
{
  Level *level = &reach->levels[0], *next = &reach->levels[1];

  level_first (reach, start, level);
  for (gint32 cuts = 1 - start;
       cuts <= most && !level_is_empty (reach, level) && (enough < 0 || states[enough] == NEVER);
       cuts++)
    {
      Level *done = level;

      level_close (reach, level);
      note_end_states (reach, level, cuts, start, states);
      level_next (reach, level, next);
      level = next;
      next = done;
    }
}

/* A segment that one piece fills. */
static void
note_one_piece (const Reach *reach, gint32 states[N_STATES])
{
  const Segment *segment = reach->segment;
  Length run = segment->b - segment->a;

  if (reach->ask->n_needed > 0)
    return;
  if (segment->full && run == reach->geometry->unit)
    states[3] = 0;
  else if (run <= reach->geometry->unit && run >= reach->ask->least)
    states[0] = MIN (states[0], 1);
}

void
reach_fewest (Reach *reach, const Segment *segment, const Ask *ask, gint32 states[N_STATES])
{
  gint32 most = (segment->b - segment->a) / (reach->geometry->unit + reach->geometry->joint) + 4;

  begin (reach, segment, ask);
  for (gint32 state = 0; state < N_STATES; state++)
    states[state] = NEVER;
  states_from (reach, 0, most, -1, states);
  states_from (reach, 1, most, -1, states);
  note_one_piece (reach, states);
}

gint32
reach_fewest_to (Reach *reach, const Segment *segment, const Ask *ask, gint32 ends, gint32 most)
{
  gint32 states[N_STATES] = { NEVER, NEVER, NEVER, NEVER };

  begin (reach, segment, ask);
  note_one_piece (reach, states);
  states_from (reach, ends & 1, most, ends, states);
  return states[ends] <= most ? states[ends] : NEVER;
}

/* --- a pattern of them --- */

static gboolean
set_holds (const Intervals *set, Length face)
{
  for (gint32 i = 0; i < set->n; i++)
    if (set->at[i].from <= face && set->at[i].to >= face)
      return TRUE;
  return FALSE;
}

static gboolean
whole_fits (const Reach *reach, Length x)
{
  for (gint32 i = 0; i < reach->segment->n_steps; i++)
    {
      const Step *step = geometry_step (reach->geometry, reach->segment->first_step + i);

      if (is_plain (reach->geometry, step) && x >= step->from
          && x + reach->geometry->unit <= step->to)
        return TRUE;
    }
  return FALSE;
}

/* Whether a first piece ends before `face`: the level that holds it has one cut or none then. */
static gboolean
is_first (const Reach *reach, gint32 start, gint32 level, gint32 used, Length face)
{
  Length a = reach->segment->a, length = face - reach->geometry->joint - a;
  gboolean strip = used == 1;

  if (level > 0)
    return FALSE;
  if (start == 1)
    return used == 0 && length == reach->geometry->unit;
  if (length < reach->ask->least || length > reach->geometry->unit || used > 1)
    return FALSE;
  return may_go (reach, &reach->parts[0], face, strip);
}

/* Goes back from `face`, which is in set `used` of the last level. */
static gboolean
trace_back (const Reach *reach, GPtrArray *levels, gint32 start, gint32 used, Length face,
            GArray *faces)
{
  Length pitch = reach->geometry->unit + reach->geometry->joint;
  gint32 at = (gint32) levels->len - 1;

  for (;;)
    {
      const Level *level = g_ptr_array_index (levels, at);
      Length before = face - pitch, to = face - reach->geometry->joint - reach->ask->least, next;

      g_array_prepend_val (faces, face);
      if (is_first (reach, start, at, used, face))
        return TRUE;
      if (whole_fits (reach, before) && set_holds (&level->of[used], before)
          && part_of (reach, before)->limit >= face)
        {
          face = before;
          continue;
        }
      if (--at < 0)
        return FALSE;
      level = g_ptr_array_index (levels, at);
      next = face_before (reach, &level->of[used], before, to, face, FALSE);
      if (next < 0 && used > 0)
        next = face_before (reach, &level->of[--used], before, to, face, TRUE);
      if (next < 0)
        return FALSE;
      face = next;
    }
}

static void
level_free (gpointer level)
{
  level_clear (level);
  g_free (level);
}

static GArray *
find_faces (Reach *reach, gint32 ends, gint32 cuts)
{
  const Segment *segment = reach->segment;
  gint32 start = ends & 1, last = cuts - (ends & 2 ? 0 : 1), used;
  Length whole = segment->b - reach->geometry->unit, face;
  g_autoptr (GPtrArray) levels = g_ptr_array_new_with_free_func (level_free);
  g_autoptr (GArray) faces = g_array_new (FALSE, FALSE, sizeof (Length));
  const Level *before = NULL;

  if (whole <= segment->a && cuts <= 1 && reach->ask->n_needed == 0)
    return g_steal_pointer (&faces);
  if (last < 1 - start)
    return NULL;
  for (gint32 at = 1 - start; at <= last; at++)
    {
      Level *level = g_new0 (Level, 1);

      if (before == NULL)
        level_first (reach, start, level);
      else
        level_next (reach, before, level);
      level_close (reach, level);
      g_ptr_array_add (levels, level);
      before = level;
    }
  face = level_face_before (reach, before, whole, ends & 2 ? whole : segment->b - reach->ask->least,
                            G_MAXINT32, &used);
  if (face < 0 || !trace_back (reach, levels, start, used, face, faces))
    return NULL;
  return g_steal_pointer (&faces);
}

GArray *
reach_faces (Reach *reach, const Segment *segment, const Ask *ask, gint32 ends, gint32 cuts)
{
  begin (reach, segment, ask);
  return find_faces (reach, ends, cuts);
}
