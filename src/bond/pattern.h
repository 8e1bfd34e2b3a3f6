/* pattern.h - one way to lay a segment, what it costs, and the places that perpends may take
 *
 * Costs are integers in which a breach outweighs any number of cuts, a cut what rules that are only
 * preferred ask (some hundreds of them), and those what laps may fall short of half bond in a
 * segment and its neighbours. */
#pragma once

#include "bond/rule.h"
#include "bond/segment.h"

/* One wish of a rule that is preferred. Where there are any, laps are counted in coarser steps
 * (64/320 mm), so that a wish outweighs what they may come to. */
#define COST_WISH ((Cost) 1 << 18)
#define COST_LAP_SHIFT 6
/* How bad a breach is comes after cuts: one of nothing left counts as 16 wishes. */
#define COST_SHORTNESS ((Cost) 1 << 22)
#define COST_CUT ((Cost) 1 << 27)
#define COST_BREACH ((Cost) 1 << 42)
/* A perpend off the regular bond, where that is the aim. */
#define COST_IRREGULAR ((Cost) 1 << 34)
#define COST_NONE G_MAXINT64

/* A perpend is told by the left face of the piece after it ("face"): two perpends are as far apart
 * as their faces, since a wall has one head joint. */
typedef struct
{
  gint32 n_pieces;
  gint32 n_cuts;
  gint32 n_breaches; /* of its own: pieces too short, too thin, rules that are a must */
  gint32 n_wishes;   /* of rules that are preferred, in COST_WISH */
  Length *faces;     /* n_pieces - 1, ascending; owned by whoever holds the pattern */
} Pattern;

/* All the perpends that its neighbours have to lap: where the segment follows a pinned perpend,
 * that is the first of them, whatever the pattern. */
static inline gint32
pattern_n_perpends (const Segment *segment, const Pattern *pattern)
{
  return pattern->n_pieces - 1 + segment->joined_left;
}
static inline Length
pattern_perpend (const Segment *segment, const Pattern *pattern, gint32 i)
{
  i -= segment->joined_left;
  return i < 0 ? segment->a : pattern->faces[i];
}

/* How much too small, in steps of 1/1024 of what is asked, 0 .. 1023. */
static inline Cost
shortness (Length is, Length least)
{
  return is >= least ? 0 : (Cost) (least - is) * 1023 / least;
}
/* Cost of one piece: cut and breaches, breaches dearer the shorter it is, and what it owes the
 * rules. */
Cost pattern_piece_cost (const Geometry *geometry, const Segment *segment, Length x, Length length);
/* The same of a piece whose form is known: its greatest height, the length that it must have at the
 * least, and whether it is a whole unit. */
Cost pattern_form_cost (const Geometry *geometry, Length length, Length thickest, Length least,
                        gboolean whole);
/* Counts n_cuts, n_breaches and n_wishes from the faces; the cost of its pieces together, and what
 * its perpends owe the rules. */
Cost pattern_count (const Geometry *geometry, const Segment *segment, Pattern *pattern);
Pattern pattern_copy (const Pattern *pattern);
void pattern_clear (Pattern *pattern);
/* Frees n patterns and the array; takes NULL. */
void patterns_free (Pattern *patterns, gint32 n);

/* The faces worth trying in a segment, ascending, all within (a, b): grids of whole units from its
 * ends and from the jambs where its height changes, from its neighbours' ends, and from places a
 * least lap, half a unit or a least piece away from those. */
GArray *pattern_places (const Geometry *geometry, const Segment *segment);

/* Ascending, none twice. */
void pattern_sort_places (GArray *places);

/* Whether a face lies on the regular half bond of its course. */
gboolean pattern_is_regular (const Geometry *geometry, const Segment *segment, Length face);
