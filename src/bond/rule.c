/* rule.c - the optional rules of the bond: the table of how each is kept */
#include "bond/rule.h"

#include <string.h>

#include "bond/gauge.h"
#include "bond/pattern.h"

typedef struct
{
  Geometry *geometry;
  const Wall *wall;
  const Laying *laying; /* resolved */
  RuleKind kind;
  Rule rule;
  GArray *marks; /* Mark, of the segment at hand */
} Marking;

typedef struct
{
  gint32 price; /* of one break, in COST_WISH, where it is preferred */
  void (*mark) (Marking *marking, const Segment *segment); /* NULL: it leaves no marks */
} Row;

static void
add_mark (Marking *marking, MarkKind kind, Length from, Length to, Length origin, Length least)
{
  Mark mark
      = { kind, (gint32) marking->kind, marking->rule.keep == KEEP_MUST, from, to, origin, least };

  if (from <= to)
    g_array_append_val (marking->marks, mark);
}

/* --- no perpend under a lintel's end --- */

/* The course that a lintel bears on: its top is the highest at the head or below it, and beside the
 * opening. 0 where none is. */
static gint32
course_under_lintel (const Geometry *geometry, const Opening *opening)
{
  for (guint i = geometry->courses->len; i > 0; i--)
    {
      const Course *course = &g_array_index (geometry->courses, Course, i - 1);

      if (course->top <= opening_head (opening))
        return course->top > opening->sill ? course->number : 0;
    }
  return 0;
}

/* The joint stays clear of the bearing: of [jamb - bearing, jamb] on the left, and so on the right.
 */
static void
mark_bearing (Marking *marking, const Segment *segment)
{
  const Geometry *geometry = marking->geometry;
  Length bearing = marking->rule.value;

  for (guint i = 0; i < marking->wall->openings->len; i++)
    {
      const Opening *opening = wall_opening_at (marking->wall, i);
      Length left = opening->x, right = opening_right (opening);

      if (course_under_lintel (geometry, opening) != segment->course)
        continue;
      if (left > segment->a && left <= segment->b)
        add_mark (marking, MARK_PERPEND, left - bearing + 1, left + geometry->joint - 1, left,
                  bearing);
      if (right >= segment->a && right < segment->b)
        add_mark (marking, MARK_PERPEND, right + 1, right + bearing + geometry->joint - 1,
                  right + geometry->joint, bearing);
    }
}

/* --- no perpend in line with a jamb --- */

gint32
rules_course_over (const Geometry *geometry, const Opening *opening)
{
  for (guint i = 0; i < geometry->courses->len; i++)
    if (g_array_index (geometry->courses, Course, i).top - opening_head (opening)
        > GAUGE_PACKING_MAX)
      return (gint32) i + 1;
  return 0;
}

gint32
rules_course_under (const Geometry *geometry, const Opening *opening)
{
  for (guint i = geometry->courses->len; i > 0; i--)
    if (opening->sill - g_array_index (geometry->courses, Course, i - 1).bottom > GAUGE_PACKING_MAX)
      return (gint32) i;
  return 0;
}

/* The middle of a joint keeps clear of the jamb's line. */
static void
mark_line (Marking *marking, const Segment *segment, Length jamb)
{
  Length face = jamb + marking->geometry->joint / 2, clear = marking->rule.value;

  if (jamb > segment->a && jamb < segment->b)
    add_mark (marking, MARK_PERPEND, face - clear + 1, face + clear - 1, face, clear);
}

static void
mark_jamb_line (Marking *marking, const Segment *segment)
{
  for (guint i = 0; i < marking->wall->openings->len; i++)
    {
      const Opening *opening = wall_opening_at (marking->wall, i);

      if (rules_course_over (marking->geometry, opening) != segment->course
          && rules_course_under (marking->geometry, opening) != segment->course)
        continue;
      mark_line (marking, segment, opening->x);
      mark_line (marking, segment, opening_right (opening));
    }
}

/* --- whole units --- */

/* Which pieces count as cut: all that are shorter than the unit where whole ones are preferred. As
 * a must it is those shorter than half bond's half, since two courses, one over the other, cannot
 * both begin with whole units. */
static Length
cut_below (const Marking *marking)
{
  Length unit = marking->geometry->unit, joint = marking->geometry->joint;

  return marking->rule.keep == KEEP_MUST ? (unit + joint) / 2 - joint : unit;
}

/* A run shorter than that has no choice. */
static void
mark_cuts (Marking *marking, const Segment *segment, Length from, Length to)
{
  Length least = cut_below (marking);

  if (segment->b - segment->a >= least)
    add_mark (marking, MARK_PIECE, from, to, from, least);
}

static void
mark_jamb_cuts (Marking *marking, const Segment *segment)
{
  const Course *course
      = &g_array_index (marking->geometry->courses, Course, (guint) segment->course - 1);
  Length away = MAX (marking->rule.value, 1);

  for (guint i = 0; i < marking->wall->openings->len; i++)
    {
      const Opening *opening = wall_opening_at (marking->wall, i);

      if (opening->sill >= course->top || opening_head (opening) <= course->bottom)
        continue;
      if (opening->x == segment->b)
        mark_cuts (marking, segment, segment->b - away, segment->b);
      if (opening_right (opening) == segment->a)
        mark_cuts (marking, segment, segment->a, segment->a + away);
    }
}

static void
mark_whole_ends (Marking *marking, const Segment *segment)
{
  const Course *course
      = &g_array_index (marking->geometry->courses, Course, (guint) segment->course - 1);
  Length from, to;

  course_ends (marking->wall, marking->laying, segment->course, course->bottom, &from, &to);
  if (segment->a == from)
    mark_cuts (marking, segment, from, from + 1);
  if (segment->b == to)
    mark_cuts (marking, segment, to - 1, to);
}

/* --- laps --- */

Length
rules_wanted_lap (const Block *block, const Laying *laying)
{
  const Rule *rule = &laying->rules[RULE_LAP];

  return (block->length + laying->head) / (rule->keep != KEEP_OFF ? rule->value : 2);
}

/* --- the table --- */

static const Row rows[N_RULES] = {
  [RULE_BEARING] = { 4, mark_bearing },
  [RULE_JAMB_LINE] = { 3, mark_jamb_line },
  [RULE_JAMB_CUTS] = { 2, mark_jamb_cuts },
  [RULE_WHOLE_ENDS] = { 2, mark_whole_ends },
  [RULE_LAP] = { 0, NULL },           /* see rules_wanted_lap() */
  [RULE_LENGTHS] = { 3, NULL },       /* of one piece, see lengths.c */
  [RULE_SYMMETRY_WALL] = { 2, NULL }, /* of one perpend, see mirror.c */
  [RULE_SYMMETRY_OPENINGS] = { 2, NULL },
};

static gint
compare_marks (gconstpointer a, gconstpointer b)
{
  const Mark *p = a, *q = b;

  if (p->kind != q->kind)
    return p->kind < q->kind ? -1 : 1;
  if (p->rule != q->rule)
    return p->rule < q->rule ? -1 : 1;
  if (p->from != q->from)
    return p->from < q->from ? -1 : 1;
  return (p->to > q->to) - (p->to < q->to);
}

static void
mark_segment (Geometry *geometry, Segment *segment, GArray *marks)
{
  g_array_sort (marks, compare_marks);
  segment->first_mark = (gint32) geometry->marks->len;
  segment->n_marks = (gint32) marks->len;
  for (guint i = 0; i < marks->len; i++)
    segment->n_perpend_marks += g_array_index (marks, Mark, i).kind == MARK_PERPEND;
  g_array_append_vals (geometry->marks, marks->data, marks->len);
}

static gboolean
has_marks (const Laying *laying)
{
  for (guint i = 0; i < N_RULES; i++)
    if (laying->rules[i].keep != KEEP_OFF && rows[i].mark != NULL)
      return TRUE;
  return FALSE;
}

gint32
rules_price (gint32 kind)
{
  return rows[kind].price;
}

void
rules_mark (Geometry *geometry, const Wall *wall, const Laying *laying)
{
  const Rule *lengths = &laying->rules[RULE_LENGTHS];
  g_autoptr (GArray) marks = NULL;

  geometry->most_lengths = lengths->keep != KEEP_OFF ? MAX (lengths->value, 1) : 0;
  geometry->lengths_must = lengths->keep == KEEP_MUST;
  geometry->wishing = laying->rules[RULE_SYMMETRY_WALL].keep == KEEP_PREFER
                      || laying->rules[RULE_SYMMETRY_OPENINGS].keep == KEEP_PREFER;
  if (!has_marks (laying))
    return;
  marks = g_array_new (FALSE, FALSE, sizeof (Mark));
  for (guint i = 0; i < geometry->segments->len; i++)
    {
      Segment *segment = &g_array_index (geometry->segments, Segment, i);

      g_array_set_size (marks, 0);
      for (guint k = 0; k < N_RULES; k++)
        {
          Marking marking = { geometry, wall, laying, (RuleKind) k, laying->rules[k], marks };

          if (marking.rule.keep == KEEP_OFF || rows[k].mark == NULL)
            continue;
          rows[k].mark (&marking, segment);
          geometry->wishing = geometry->wishing || marking.rule.keep == KEEP_PREFER;
        }
      mark_segment (geometry, segment, marks);
    }
}

/* --- what is owed --- */

static gboolean
meets_piece (const Mark *mark, Length x, Length length)
{
  return length < mark->least && x < mark->to && x + length > mark->from;
}

const Mark *
rules_next_perpend (const Geometry *geometry, const Segment *segment, Length face, gint32 *at,
                    Length *is)
{
  const Mark *marks = rules_marks (geometry, segment), *found = NULL;
  Length least = 0;

  for (; *at < segment->n_perpend_marks; ++*at)
    {
      const Mark *mark = &marks[*at];
      Length measured = ABS (face - mark->origin);

      if (found != NULL && found->rule != mark->rule)
        break;
      if (face < mark->from || face > mark->to || (found != NULL && measured >= least))
        continue;
      found = mark;
      least = measured;
    }
  if (is != NULL)
    *is = least;
  return found;
}

const Mark *
rules_next_piece (const Geometry *geometry, const Segment *segment, Length x, Length length,
                  gint32 *at)
{
  const Mark *marks = rules_marks (geometry, segment), *found = NULL;

  for (*at = MAX (*at, segment->n_perpend_marks); *at < segment->n_marks; ++*at)
    {
      if (found != NULL && found->rule != marks[*at].rule)
        break;
      if (found == NULL && meets_piece (&marks[*at], x, length))
        found = &marks[*at];
    }
  return found;
}

static void
owe (const Mark *mark, Length is, Dues *dues)
{
  if (mark->must)
    {
      dues->cost += COST_BREACH + COST_SHORTNESS / 1024 * shortness (is, mark->least);
      dues->breaches++;
      return;
    }
  dues->cost += COST_WISH * rows[mark->rule].price;
  dues->wishes += rows[mark->rule].price;
}

void
rules_perpend_dues (const Geometry *geometry, const Segment *segment, Length face, Dues *dues)
{
  const Mark *mark;
  gint32 at = 0;
  Length is;

  while ((mark = rules_next_perpend (geometry, segment, face, &at, &is)) != NULL)
    owe (mark, is, dues);
}

/* Where few lengths are a must, a piece of another may cost some cuts. */
#define PRICE_OF_PIECE_MUST 2048

static gboolean
is_allowed (const Geometry *geometry, Length length)
{
  for (guint i = 0; i < geometry->allowed->len; i++)
    if (g_array_index (geometry->allowed, Length, i) == length)
      return TRUE;
  return FALSE;
}

void
rules_piece_dues (const Geometry *geometry, const Segment *segment, Length x, Length length,
                  Dues *dues)
{
  const Mark *mark;
  gint32 at = 0;

  if (geometry->allowed != NULL && length < geometry->unit && !is_allowed (geometry, length))
    {
      gint32 price = geometry->lengths_must ? PRICE_OF_PIECE_MUST : rows[RULE_LENGTHS].price;

      dues->cost += COST_WISH * price;
      dues->wishes += price;
    }
  while ((mark = rules_next_piece (geometry, segment, x, length, &at)) != NULL)
    owe (mark, length, dues);
}

void
rules_add_tolls (const Geometry *geometry, const Segment *segment, const GArray *places, Cost *toll)
{
  for (guint i = 0; segment->n_perpend_marks > 0 && i < places->len; i++)
    {
      Dues dues = { 0, 0, 0 };

      rules_perpend_dues (geometry, segment, g_array_index (places, Length, i), &dues);
      toll[i] += dues.cost;
    }
}

gboolean
rules_same (const Geometry *geometry, const Segment *p, const Segment *q)
{
  return p->n_marks == q->n_marks
         && (p->n_marks == 0
             || memcmp (rules_marks (geometry, p), rules_marks (geometry, q),
                        sizeof (Mark) * (gsize) p->n_marks)
                    == 0);
}
