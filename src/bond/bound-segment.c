/* bound-segment.c - the fewest cuts of one segment, over all real places
 *
 * A segment of one full height is counted; where the height changes, the faces that can be reached
 * after so many cuts are kept as intervals. */
#include "bond/bound-segment.h"

#include <string.h>

/* --- one segment of one full height --- */

/* Pieces fall short of m units and joints by `rest` in all; each cut takes 1 .. unit - least. */
static gint32
cuts_for_rest (gint64 rest, gint64 most, gint32 forced, gint32 room)
{
  gint64 cuts = rest == 0 ? 0 : most <= 0 ? NEVER : (rest + most - 1) / most;

  cuts = MAX (cuts, forced);
  return cuts > room || cuts > rest ? NEVER : (gint32) cuts;
}

/* With the fewest pieces that reach from end to end, or with `more` of them than that, up to 2. */
void
bound_plain_states (const Geometry *geometry, const Segment *segment, Length least, gint32 more,
                    gint32 states[N_STATES])
{
  gint64 pitch = geometry->unit + geometry->joint;
  gint64 run = segment->b - segment->a + geometry->joint;
  gint64 fewest = (run + pitch - 1) / pitch;
  gint64 most = geometry->unit - least;

  for (gint32 state = 0; state < N_STATES; state++)
    {
      gint32 whole = (state & 1) + (state >> 1);

      states[state] = NEVER;
      for (gint64 m = MAX (fewest + more, 2); m <= fewest + 2 * more; m++)
        states[state] = MIN (
            states[state], cuts_for_rest (m * pitch - run, most, 2 - whole, (gint32) (m - whole)));
    }
  if (more > 0)
    return;
  if (fewest == 1 && run == pitch)
    states[3] = 0;
  if (fewest == 1 && run != pitch && segment->b - segment->a >= least)
    states[0] = 1;
}

/* --- one segment whose height changes: reachable faces as intervals --- */

gint
interval_compare (gconstpointer a, gconstpointer b)
{
  const Interval *p = a, *q = b;

  return (p->from > q->from) - (p->from < q->from);
}

static void
merge_intervals (GArray *set)
{
  guint kept = 0;

  g_array_sort (set, interval_compare);
  for (guint i = 0; i < set->len; i++)
    {
      Interval next = g_array_index (set, Interval, i);

      if (kept > 0 && g_array_index (set, Interval, kept - 1).to >= next.from - 1)
        g_array_index (set, Interval, kept - 1).to
            = MAX (g_array_index (set, Interval, kept - 1).to, next.to);
      else
        g_array_index (set, Interval, kept++) = next;
    }
  g_array_set_size (set, kept);
}

static void
add_interval (GArray *set, Length from, Length to)
{
  Interval interval = { from, to };

  if (from <= to)
    g_array_append_val (set, interval);
}

static gboolean
is_plain (const Geometry *geometry, const Step *step)
{
  return step->hi - step->lo == geometry->unit_height;
}

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

/* What is asked of a segment's perpends. */
typedef struct
{
  const Geometry *geometry;
  const Segment *segment;
  const BoundAsk *ask;
  Part *parts;
  gint32 n_parts;
} Reach;

#define NO_STRIP (-G_MAXINT16)

static gint
compare_parts (gconstpointer a, gconstpointer b)
{
  const Part *p = a, *q = b;

  return (p->from > q->from) - (p->from < q->from);
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

static Part
part_from (const Reach *reach, Length from)
{
  Part part = { from, G_MAXINT32, NO_STRIP, FALSE, 0 };

  for (gint32 i = 0; i < reach->ask->n_needed; i++)
    if (reach->ask->needed[i].from > from)
      part.limit = MIN (part.limit, reach->ask->needed[i].to);
  for (gint32 i = reach->segment->n_steps - 1; i >= 0; i--)
    {
      const Step *step = geometry_step (reach->geometry, reach->segment->first_step + i);

      if (step->from > from)
        continue;
      part.strip = strip_of (reach, i);
      part.plain = is_plain (reach->geometry, step);
      part.end = step->to;
      break;
    }
  return part;
}

static void
reach_init (Reach *reach, const Geometry *geometry, const Segment *segment, const BoundAsk *ask)
{
  *reach = (Reach){ geometry, segment, ask, g_new (Part, segment->n_steps + ask->n_needed + 1), 0 };
  reach->parts[reach->n_parts++] = part_from (reach, segment->a);
  for (gint32 i = 1; i < segment->n_steps; i++)
    reach->parts[reach->n_parts++]
        = part_from (reach, geometry_step (geometry, segment->first_step + i)->from);
  for (gint32 i = 0; i < ask->n_needed; i++)
    if (ask->needed[i].from > segment->a)
      reach->parts[reach->n_parts++] = part_from (reach, ask->needed[i].from);
  qsort (reach->parts, (gsize) reach->n_parts, sizeof (Part), compare_parts);
}

static void
reach_clear (Reach *reach)
{
  g_free (reach->parts);
}

/* The part that `face` is in. */
static const Part *
part_of (const Reach *reach, Length face)
{
  gint32 i = reach->n_parts - 1;

  while (i > 0 && reach->parts[i].from > face)
    i--;
  return &reach->parts[i];
}

static Length
last_of_part (const Reach *reach, const Part *part)
{
  return part + 1 < reach->parts + reach->n_parts ? part[1].from - 1 : G_MAXINT32;
}

/* Faces reached from `interval` by one whole unit. */
static void
add_whole_moves (const Reach *reach, Interval interval, GArray *to)
{
  Length unit = reach->geometry->unit, pitch = unit + reach->geometry->joint;

  for (const Part *part = part_of (reach, interval.from);
       part < reach->parts + reach->n_parts && part->from <= interval.to; part++)
    {
      Length from = MAX (interval.from, part->from);
      Length last = MIN (interval.to, last_of_part (reach, part));

      if (part->plain)
        add_interval (to, from + pitch, MIN (MIN (last, part->end - unit) + pitch, part->limit));
    }
}

/* Takes the faces away that may have no perpend. */
static void
bar (const Reach *reach, GArray *set)
{
  g_autoptr (GArray) left = NULL;

  if (reach->ask->n_barred == 0)
    return;
  left = g_array_new (FALSE, FALSE, sizeof (Interval));
  for (guint i = 0; i < set->len; i++)
    {
      Interval rest = g_array_index (set, Interval, i);

      for (gint32 k = 0; k < reach->ask->n_barred && rest.from <= rest.to; k++)
        {
          const Interval *no = &reach->ask->barred[k];

          if (no->to < rest.from || no->from > rest.to)
            continue;
          add_interval (left, rest.from, no->from - 1);
          rest.from = no->to + 1;
        }
      add_interval (left, rest.from, rest.to);
    }
  g_array_set_size (set, 0);
  g_array_append_vals (set, left->data, left->len);
}

/* Adds what is new in `moved` to the end of `set`: its first place there. */
static guint
keep_new (GArray *set, GArray *moved)
{
  guint first = set->len;

  for (guint i = 0; i < moved->len; i++)
    {
      Interval next = g_array_index (moved, Interval, i);
      gboolean held = next.from > next.to;

      for (guint k = 0; k < set->len && !held; k++)
        held = g_array_index (set, Interval, k).from <= next.from
               && g_array_index (set, Interval, k).to >= next.to;
      if (!held)
        g_array_append_val (set, next);
    }
  return first;
}

/* Adds all that whole units reach from a set. */
static void
close_under_wholes (const Reach *reach, GArray *set)
{
  bar (reach, set);
  merge_intervals (set);
  /* Moves go right and end at the segment's end. */
  for (guint i = 0; i < set->len;)
    {
      g_autoptr (GArray) moved = g_array_new (FALSE, FALSE, sizeof (Interval));
      guint n = set->len;

      for (; i < n; i++)
        add_whole_moves (reach, g_array_index (set, Interval, i), moved);
      bar (reach, moved);
      i = keep_new (set, moved);
    }
  merge_intervals (set);
}

/* Faces that can be reached with a number of cuts, by how many pieces are too thin a strip. */
typedef struct
{
  GArray *of[BOUND_MAX_STRIPS + 1]; /* Interval */
} Level;

static gint32
n_sets (const Reach *reach)
{
  return MAX (reach->ask->strips, 0) + 1;
}

static Level *
level_new (const Reach *reach)
{
  Level *level = g_new0 (Level, 1);

  for (gint32 i = 0; i < n_sets (reach); i++)
    level->of[i] = g_array_new (FALSE, FALSE, sizeof (Interval));
  return level;
}

static void
level_free (gpointer data)
{
  Level *level = data;

  for (gint32 i = 0; i <= BOUND_MAX_STRIPS; i++)
    g_clear_pointer (&level->of[i], g_array_unref);
  g_free (level);
}

static gboolean
level_is_empty (const Reach *reach, const Level *level)
{
  for (gint32 i = 0; i < n_sets (reach); i++)
    if (level->of[i]->len > 0)
      return FALSE;
  return TRUE;
}

static void
level_close (const Reach *reach, Level *level)
{
  for (gint32 i = 0; i < n_sets (reach); i++)
    close_under_wholes (reach, level->of[i]);
}

/* Faces reached from `interval` by a cut piece that is no thin strip (into `to`), and by one that
 * is
 * (`strips`, may be NULL). */
static void
add_cut_moves (const Reach *reach, Interval interval, GArray *to, GArray *strips)
{
  Length joint = reach->geometry->joint;

  for (const Part *part = part_of (reach, interval.from);
       part < reach->parts + reach->n_parts && part->from <= interval.to; part++)
    {
      Length last = MIN (interval.to, last_of_part (reach, part));
      Length farthest = MIN (last + reach->geometry->unit + joint, reach->segment->b);
      Length shortest = MAX (interval.from, part->from) + reach->ask->least + joint;

      farthest = MIN (farthest, part->limit);
      add_interval (to, MAX (shortest, part->strip + joint + 1), farthest);
      if (strips != NULL)
        add_interval (strips, shortest, MIN (farthest, part->strip + joint));
    }
}

/* The level with one cut more. */
static Level *
level_next (const Reach *reach, const Level *level)
{
  Level *next = level_new (reach);
  gint32 n = n_sets (reach);

  for (gint32 k = 0; k < n; k++)
    for (guint i = 0; i < level->of[k]->len; i++)
      add_cut_moves (reach, g_array_index (level->of[k], Interval, i), next->of[k],
                     k + 1 < n ? next->of[k + 1] : NULL);
  return next;
}

/* The faces after a first piece, whole (`start` 1) or cut. */
static Level *
level_first (const Reach *reach, gint32 start)
{
  Level *origin = level_new (reach), *level;
  Interval begin = { reach->segment->a, reach->segment->a };

  if (start == 0)
    {
      g_array_append_val (origin->of[0], begin);
      level = level_next (reach, origin);
    }
  else
    {
      level = level_new (reach);
      add_whole_moves (reach, begin, level->of[0]);
    }
  level_free (origin);
  return level;
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
face_before (const Reach *reach, const GArray *set, Length from, Length to, Length next,
             gboolean strip)
{
  for (guint i = 0; i < set->len; i++)
    {
      Interval rest = g_array_index (set, Interval, i);

      rest.from = MAX (rest.from, from);
      rest.to = MIN (rest.to, to);
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
      face = face_before (reach, level->of[*used], from, to, next, FALSE);
      if (face < 0 && *used + 1 < n_sets (reach))
        face = face_before (reach, level->of[*used], from, to, next, TRUE);
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
states_from (const Reach *reach, gint32 start, gint32 most, gint32 enough, gint32 states[N_STATES])
{
  Level *level = level_first (reach, start);

  for (gint32 cuts = 1 - start;
       cuts <= most && !level_is_empty (reach, level) && (enough < 0 || states[enough] == NEVER);
       cuts++)
    {
      Level *next;

      level_close (reach, level);
      note_end_states (reach, level, cuts, start, states);
      next = level_next (reach, level);
      level_free (level);
      level = next;
    }
  level_free (level);
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
bound_states_beside (const Geometry *geometry, const Segment *segment, const BoundAsk *ask,
                     gint32 states[N_STATES])
{
  gint32 most = (segment->b - segment->a) / (geometry->unit + geometry->joint) + 4;
  Reach reach;

  reach_init (&reach, geometry, segment, ask);

  for (gint32 state = 0; state < N_STATES; state++)
    states[state] = NEVER;
  states_from (&reach, 0, most, -1, states);
  states_from (&reach, 1, most, -1, states);
  note_one_piece (&reach, states);
  reach_clear (&reach);
}

gboolean
bound_can_be (const Geometry *geometry, const Segment *segment, const BoundAsk *ask, gint32 ends,
              gint32 most)
{
  gint32 states[N_STATES] = { NEVER, NEVER, NEVER, NEVER };
  Reach reach;

  reach_init (&reach, geometry, segment, ask);
  note_one_piece (&reach, states);
  states_from (&reach, ends & 1, most, ends, states);
  reach_clear (&reach);
  return states[ends] <= most;
}

/* --- a pattern of them --- */

static gboolean
set_holds (const GArray *set, Length face)
{
  for (guint i = 0; i < set->len; i++)
    if (g_array_index (set, Interval, i).from <= face
        && g_array_index (set, Interval, i).to >= face)
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
      if (whole_fits (reach, before) && set_holds (level->of[used], before)
          && part_of (reach, before)->limit >= face)
        {
          face = before;
          continue;
        }
      if (--at < 0)
        return FALSE;
      level = g_ptr_array_index (levels, at);
      next = face_before (reach, level->of[used], before, to, face, FALSE);
      if (next < 0 && used > 0)
        next = face_before (reach, level->of[--used], before, to, face, TRUE);
      if (next < 0)
        return FALSE;
      face = next;
    }
}

static GArray *
find_faces (const Reach *reach, gint32 ends, gint32 cuts)
{
  const Segment *segment = reach->segment;
  gint32 start = ends & 1, last = cuts - (ends & 2 ? 0 : 1), used;
  Length whole = segment->b - reach->geometry->unit, face;
  g_autoptr (GPtrArray) levels = g_ptr_array_new_with_free_func (level_free);
  g_autoptr (GArray) faces = g_array_new (FALSE, FALSE, sizeof (Length));
  Level *level;

  if (whole <= segment->a && cuts <= 1 && reach->ask->n_needed == 0)
    return g_steal_pointer (&faces);
  if (last < 1 - start)
    return NULL;
  level = level_first (reach, start);
  for (gint32 at = 1 - start; at <= last; at++)
    {
      level_close (reach, level);
      g_ptr_array_add (levels, level);
      level = level_next (reach, level);
    }
  level_free (level);
  level = g_ptr_array_index (levels, levels->len - 1);
  face = level_face_before (reach, level, whole, ends & 2 ? whole : segment->b - reach->ask->least,
                            G_MAXINT32, &used);
  if (face < 0 || !trace_back (reach, levels, start, used, face, faces))
    return NULL;
  return g_steal_pointer (&faces);
}

GArray *
bound_faces_beside (const Geometry *geometry, const Segment *segment, const BoundAsk *ask,
                    gint32 ends, gint32 cuts)
{
  Reach reach;
  GArray *faces;

  reach_init (&reach, geometry, segment, ask);
  faces = find_faces (&reach, ends, cuts);
  reach_clear (&reach);
  return faces;
}
