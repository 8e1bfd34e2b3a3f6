/* saving.c - what of a wall as a whole, changed a little, would save most */
#include "advice/saving.h"

#include <glib/gi18n-lib.h>

#include "advice/crew.h"
#include "advice/judging.h"
#include "advice/place.h"
#include "bond/lay.h"
#include "bond/stands.h"

/* Pieces laid in all by first looks, and by second looks at those that come first: some tenths of a
 * second. Of a wall of more pieces fewer changes are tried. */
#define WORK_PIECES 50000
#define SECOND_LOOKS 3
/* Told when it saves so much, at least. */
#define WORTH_CUTS 3
#define WORTH_UNITS 2

/* Common practice: what can be laid as a levelling bed. docs/rules.md. */
#define BED_LEAST LENGTH_MM (10)
#define BED_MOST LENGTH_MM (40)
#define BED_WANTED_LEAST LENGTH_MM (20)
#define BED_WANTED_MOST LENGTH_MM (30)
#define LENGTH_WITHIN LENGTH_MM (50)
#define LENGTH_STEP LENGTH_MM (5)
/* How far an opening is moved of which nothing is said. */
#define MOVE_WITHIN LENGTH_MM (100)
#define MOVE_STEP LENGTH_MM (5)
/* Places that are laid: those with the lowest bounds. A bound takes a part of a first look. */
#define MOVES_LAID 24
#define BOUND_SHARE 4

/* One change, and what came of it. */
typedef struct
{
  Wall *wall;
  Length rank; /* of equal ones the lower is taken */
  guint row;   /* of the rules; the side; the opening */
  gboolean tried;
  Cost cost;
} Change;

typedef struct
{
  const Project *project;
  const Wall *wall;
  const Block *block;
  Laying laying; /* resolved */
  Aim aim;
  Cost now;
  guint threads;
  const gint *stop;
} Asked;

static void
change_free (gpointer data)
{
  Change *change = data;

  wall_unref (change->wall);
  g_free (change);
}

static Change *
add_change (GPtrArray *changes, const Wall *wall, Length rank)
{
  Change *change = g_new0 (Change, 1);

  change->wall = wall_copy (wall);
  change->rank = rank;
  g_ptr_array_add (changes, change);
  return change;
}

/* --- trying --- */

typedef struct
{
  const Asked *asked;
  GPtrArray *changes;
  Look look;
} Trying;

static gboolean
try_change (guint i, gpointer data)
{
  const Trying *trying = data;
  Change *change = g_ptr_array_index (trying->changes, i);
  Costing costing = cost_of_wall (change->wall, trying->asked->block, trying->look,
                                  trying->asked->stop, &change->cost);

  change->tried = costing == COSTING_DONE;
  return costing != COSTING_STOPPED;
}

static gint
compare_changes (gconstpointer a, gconstpointer b, gpointer data)
{
  const Change *x = *(Change *const *) a, *y = *(Change *const *) b;
  const Asked *asked = data;
  int by_cost;

  if (x->tried != y->tried)
    return x->tried ? -1 : 1;
  by_cost = x->tried ? cost_compare (&x->cost, &y->cost, asked->aim) : 0;
  if (by_cost != 0)
    return by_cost;
  return (x->rank > y->rank) - (x->rank < y->rank);
}

/* Nothing is tried that would change it. */
static void
leave_what_stands (const Asked *asked, GPtrArray *changes)
{
  for (guint i = changes->len; i-- > 0;)
    {
      const Change *change = g_ptr_array_index (changes, i);

      if (!stands_in (asked->wall, change->wall, asked->block))
        g_ptr_array_remove_index (changes, i);
    }
}

/* The best first; those that are no more than a first look are looked at again until the best is as
 * laid. FALSE when stopped. */
static gboolean
try_all (const Asked *asked, GPtrArray *changes)
{
  Trying trying = { asked, changes, LOOK_FIRST };

  leave_what_stands (asked, changes);
  if (!crew_run (changes->len, asked->threads, try_change, &trying))
    return FALSE;
  for (guint i = 0; i <= SECOND_LOOKS && changes->len > 0; i++)
    {
      Change *best;

      g_ptr_array_sort_with_data (changes, compare_changes, (gpointer) asked);
      best = g_ptr_array_index (changes, 0);
      if (!best->tried || best->cost.as_laid)
        break;
      trying.look = LOOK_LAID;
      if (i < SECOND_LOOKS && !try_change (0, &trying))
        return FALSE;
    }
  return TRUE;
}

/* --- words --- */

static void
add_words (GString *words, const char *more)
{
  g_string_append_printf (words, "%s%s", words->len > 0 ? ", " : "", more);
}

static void
add_count (GString *words, const char *one, const char *many, gint32 n)
{
  g_autofree char *text = NULL;

  if (n <= 0)
    return;
  text = g_strdup_printf (g_dngettext (NULL, one, many, (gulong) n), n);
  add_words (words, text);
}

/* "11 cuts, 3 units", and what it costs instead: " (1 unit more)". */
static char *
saved_words (const Cost *before, const Cost *after)
{
  g_autoptr (GString) saved = g_string_new (NULL);
  g_autoptr (GString) more = g_string_new (NULL);

  add_count (saved, N_ ("%d breach"), N_ ("%d breaches"), before->breaches - after->breaches);
  add_count (saved, N_ ("%d cut"), N_ ("%d cuts"), before->cuts - after->cuts);
  add_count (saved, N_ ("%d unit to order"), N_ ("%d units to order"),
             before->to_order - after->to_order);
  add_count (more, N_ ("%d cut"), N_ ("%d cuts"), after->cuts - before->cuts);
  add_count (more, N_ ("%d unit to order"), N_ ("%d units to order"),
             after->to_order - before->to_order);
  if (more->len > 0)
    return g_strdup_printf (_ ("%s, for %s more"), saved->str, more->str);
  return g_strdup (saved->str);
}

static gboolean
is_worth (const Cost *before, const Cost *after, Aim aim)
{
  gint32 cuts = before->cuts - after->cuts, units = before->to_order - after->to_order;

  if (after->breaches != before->breaches)
    return after->breaches < before->breaches;
  if (aim == AIM_LEAST_WASTE)
    return units >= WORTH_UNITS || (units >= 0 && cuts >= WORTH_CUTS);
  return cuts >= WORTH_CUTS || (cuts >= 0 && units >= WORTH_UNITS);
}

static void
add_saving (GPtrArray *savings, const Asked *asked, const char *rule, const Change *change,
            char *text, char *mend_text)
{
  Finding *finding = g_new0 (Finding, 1);

  finding->rule = rule;
  finding->severity = SEVERITY_NOTE;
  finding->wall = asked->wall->id;
  finding->text = text;
  finding->mend_text = mend_text;
  finding->mend = edit_set_wall (change->wall);
  g_ptr_array_add (savings, finding);
}

/* The best of those tried where it is worth telling; else NULL. */
static const Change *
best_of (const Asked *asked, const GPtrArray *changes)
{
  const Change *best = changes->len > 0 ? g_ptr_array_index (changes, 0) : NULL;

  if (best == NULL || !best->tried || !is_worth (&asked->now, &best->cost, asked->aim))
    return NULL;
  return best;
}

/* --- the position of an opening --- */

/* One opening somewhere else. */
typedef struct
{
  guint opening;
  Length at;
  LayBound bound; /* breaches G_MAXINT32: it cannot stand there */
} Move;

typedef struct
{
  const Asked *asked;
  GArray *moves; /* Move */
} Moving;

/* As far as it is said to be free to move, or a little. */
static gboolean
may_stand (const Opening *opening, Length at)
{
  if (!(opening->given & OPENING_MAY_MOVE))
    return TRUE;
  return ABS (at - opening_drawn_x (opening)) <= opening->may_move;
}

static GArray *
all_moves (const Asked *asked)
{
  GArray *moves = g_array_new (FALSE, FALSE, sizeof (Move));

  for (guint i = 0; i < asked->wall->openings->len; i++)
    {
      const Opening *opening = wall_opening_at (asked->wall, i);
      const Length within = opening->given & OPENING_MAY_MOVE ? 2 * opening->may_move : MOVE_WITHIN;
      g_autoptr (GArray) places = places_list (asked->wall, asked->block, opening->id, SHIFT_ALONG,
                                               MIN (within, 3 * MOVE_WITHIN), MOVE_STEP);

      for (guint k = 0; k < places->len; k++)
        {
          const Move move = { i, g_array_index (places, Length, k), { G_MAXINT32, 0 } };

          if (move.at != opening->x && may_stand (opening, move.at)
              && !stands_beside (asked->wall, asked->block, opening))
            g_array_append_val (moves, move);
        }
    }
  return moves;
}

static Wall *
wall_moved (const Asked *asked, const Move *move)
{
  Wall *wall = wall_copy (asked->wall);
  Opening *opening = &g_array_index (wall->openings, Opening, move->opening);

  if (opening_may_move (opening) > 0)
    opening_move (opening, move->at);
  else
    opening->x = move->at;
  return wall;
}

static gboolean
bound_move (guint i, gpointer data)
{
  const Moving *moving = data;
  Move *move = &g_array_index (moving->moves, Move, i);
  g_autoptr (Wall) wall = wall_moved (moving->asked, move);
  g_autofree char *fault = wall_fault (wall, moving->asked->block, NULL);

  if (fault == NULL)
    move->bound = lay_bound (wall, moving->asked->block);
  return moving->asked->stop == NULL || g_atomic_int_get (moving->asked->stop) == 0;
}

static Length
distance (const Asked *asked, const Move *move)
{
  return ABS (move->at - wall_opening_at (asked->wall, move->opening)->x);
}

/* The lowest bound first, then the nearest. */
static gint
compare_moves (gconstpointer a, gconstpointer b, gpointer data)
{
  const Move *x = a, *y = b;
  const Asked *asked = data;
  const Length dx = distance (asked, x), dy = distance (asked, y);

  if (x->bound.breaches != y->bound.breaches)
    return x->bound.breaches < y->bound.breaches ? -1 : 1;
  if (x->bound.cuts != y->bound.cuts)
    return x->bound.cuts < y->bound.cuts ? -1 : 1;
  if (dx != dy)
    return dx < dy ? -1 : 1;
  if (x->opening != y->opening)
    return x->opening < y->opening ? -1 : 1;
  return (x->at > y->at) - (x->at < y->at);
}

static void
list_moves (const Asked *asked, guint most, GPtrArray *changes)
{
  g_autoptr (GArray) moves = all_moves (asked);
  Moving moving = { asked, moves };

  if (moves->len / BOUND_SHARE + MOVES_LAID > most
      || !crew_run (moves->len, asked->threads, bound_move, &moving))
    return;
  g_array_sort_with_data (moves, compare_moves, (gpointer) asked);
  for (guint i = 0; i < MIN (moves->len, MOVES_LAID); i++)
    {
      const Move *move = &g_array_index (moves, Move, i);
      g_autoptr (Wall) wall = NULL;

      if (move->bound.breaches == G_MAXINT32)
        break;
      wall = wall_moved (asked, move);
      add_change (changes, wall, distance (asked, move))->row = move->opening;
    }
}

static void
tell_move (const Asked *asked, const Change *change, GPtrArray *savings)
{
  const Opening *before = wall_opening_at (asked->wall, change->row);
  const Length by = wall_opening_at (change->wall, change->row)->x - before->x;
  const char *called = opening_called (before);
  char by_text[LENGTH_TEXT_SIZE], at[LENGTH_TEXT_SIZE];
  g_autofree char *saved = saved_words (&asked->now, &change->cost);

  length_text (ABS (by), by_text);
  length_text (before->x + by, at);
  add_saving (savings, asked, "saves-position", change,
              g_strdup_printf (by > 0 ? _ ("%s mm further right (left jamb at %s), %s saves %s.")
                                      : _ ("%s mm further left (left jamb at %s), %s saves %s."),
                               by_text, at, called, saved),
              g_strdup_printf (by > 0 ? _ ("Move %s %s mm right") : _ ("Move %s %s mm left"),
                               called, by_text));
}

/* --- the levelling bed --- */

static void
list_beds (const Asked *asked, guint most, GPtrArray *changes)
{
  (void) most;
  for (Length bed = BED_LEAST; bed <= BED_MOST; bed += LENGTH_MM (1))
    {
      const gboolean wanted = bed >= BED_WANTED_LEAST && bed <= BED_WANTED_MOST;
      Change *change;

      if (bed == asked->laying.first_bed)
        continue;
      change = add_change (changes, asked->wall,
                           ABS (bed - asked->laying.first_bed) + (wanted ? 0 : LENGTH_MM (1000)));
      change->wall->laying.first_bed = bed;
      change->wall->laying.given |= LAYING_FIRST_BED;
      change->wall->laying.element = TRUE;
    }
}

static void
tell_bed (const Asked *asked, const Change *change, GPtrArray *savings)
{
  char bed[LENGTH_TEXT_SIZE], now[LENGTH_TEXT_SIZE];
  g_autofree char *saved = saved_words (&asked->now, &change->cost);

  length_text (change->wall->laying.first_bed, bed);
  length_text (asked->laying.first_bed, now);
  add_saving (
      savings, asked, "saves-first-bed", change,
      g_strdup_printf (_ ("A levelling bed of %s mm instead of %s saves %s."), bed, now, saved),
      g_strdup_printf (_ ("Set levelling bed to %s mm"), bed));
}

/* --- the length --- */

/* The left end goes out when `by` is positive: places are counted from it, so what stands there
 * goes along. */
static void
lengthen_left (Wall *wall, Length by)
{
  wall->length += by;
  wall_shift (wall, by);
}

static void
list_lengths (const Asked *asked, guint most, GPtrArray *changes)
{
  (void) most;
  for (Length by = LENGTH_STEP; by <= LENGTH_WITHIN; by += LENGTH_STEP)
    for (int sign = 1; sign >= -1; sign -= 2)
      {
        Change *right = add_change (changes, asked->wall, by);
        Change *left = add_change (changes, asked->wall, by + 1);

        wall_set_length (right->wall, right->wall->length + sign * by);
        right->row = SIDE_RIGHT;
        lengthen_left (left->wall, sign * by);
        left->row = SIDE_LEFT;
      }
}

static void
tell_length (const Asked *asked, const Change *change, GPtrArray *savings)
{
  char by_text[LENGTH_TEXT_SIZE], length[LENGTH_TEXT_SIZE];
  g_autofree char *saved = saved_words (&asked->now, &change->cost);
  const Length by = change->wall->length - asked->wall->length;
  const char *format, *mend;

  length_text (ABS (by), by_text);
  length_text (change->wall->length, length);
  if (change->row == SIDE_RIGHT)
    format = by > 0 ? _ ("%s mm longer at its right end (%s mm), the wall saves %s; what meets it "
                         "there goes along.")
                    : _ ("%s mm shorter at its right end (%s mm), the wall saves %s; what meets it "
                         "there goes along.");
  else
    format = by > 0 ? _ ("%s mm longer at its left end (%s mm), the wall saves %s; what meets it "
                         "there goes along.")
                    : _ ("%s mm shorter at its left end (%s mm), the wall saves %s; what meets it "
                         "there goes along.");
  mend = by > 0 ? _ ("Make the wall %s mm longer") : _ ("Make the wall %s mm shorter");
  add_saving (savings, asked, "saves-length", change,
              g_strdup_printf (format, by_text, length, saved), g_strdup_printf (mend, by_text));
}

/* --- the rules --- */

typedef struct
{
  LayingField field;
  gsize offset;            /* of the Length in Laying */
  Length by;               /* one step looser */
  const char *text, *mend; /* translatable */
} RuleStep;

static const RuleStep rule_steps[] = {
  { LAYING_MIN_PIECE, G_STRUCT_OFFSET (Laying, min_piece), -LENGTH_MM (10),
    N_ ("A shortest piece of %s mm instead of %s saves %s."), N_ ("Set shortest piece to %s mm") },
  { LAYING_MIN_RIP, G_STRUCT_OFFSET (Laying, min_rip), -LENGTH_MM (5),
    N_ ("A thinnest strip of %s mm instead of %s saves %s."), N_ ("Set thinnest strip to %s mm") },
  { LAYING_MIN_LAP, G_STRUCT_OFFSET (Laying, min_lap), -LENGTH_MM (10),
    N_ ("A least lap of %s mm instead of %s saves %s; laps hold a wall together, so ask the local "
        "code first."),
    N_ ("Set least lap to %s mm") },
  { LAYING_HEAD, G_STRUCT_OFFSET (Laying, head), LENGTH_MM (1),
    N_ ("Head joints of %s mm instead of %s save %s; the mortar must allow them."),
    N_ ("Set head joints to %s mm") },
  { LAYING_HEAD, G_STRUCT_OFFSET (Laying, head), -LENGTH_MM (1),
    N_ ("Head joints of %s mm instead of %s save %s; the mortar must allow them."),
    N_ ("Set head joints to %s mm") },
  { LAYING_BED, G_STRUCT_OFFSET (Laying, bed), LENGTH_MM (1),
    N_ ("Bed joints of %s mm instead of %s save %s; the mortar must allow them."),
    N_ ("Set bed joints to %s mm") },
  { LAYING_BED, G_STRUCT_OFFSET (Laying, bed), -LENGTH_MM (1),
    N_ ("Bed joints of %s mm instead of %s save %s; the mortar must allow them."),
    N_ ("Set bed joints to %s mm") },
};

/* Joints of thin-layer mortar are 0.5 to 3 mm thick, others 6 to 15: EN 1996-1-1, 8.1.5, from
 * memory. A joint stays of its kind. */
static gboolean
is_joint_of_kind (Length now, Length joint)
{
  if (now <= LENGTH_MM (3))
    return now > 0 && joint >= LENGTH_MM (0.5) && joint <= LENGTH_MM (3);
  return joint >= LENGTH_MM (6) && joint <= LENGTH_MM (15);
}

/* The least lap that holds where none is given: EN 1996-1-1, 8.1.4.1(3), from memory. */
static Length
standard_lap (const Asked *asked)
{
  Laying none = laying_default ();

  return laying_resolve (&none, asked->block).min_lap;
}

/* A lap below the standard's is nothing to be advised. */
static gboolean
may_step (const Asked *asked, const RuleStep *step, Length now, Length next)
{
  if (step->field == LAYING_HEAD || step->field == LAYING_BED)
    return is_joint_of_kind (now, next);
  if (step->field == LAYING_MIN_LAP)
    return next >= standard_lap (asked);
  return next > 0;
}

/* A must becomes a wish. */
static void
list_musts (const Asked *asked, GPtrArray *changes)
{
  for (guint kind = 0; kind < N_RULES; kind++)
    {
      Change *change;

      if (asked->laying.rules[kind].keep != KEEP_MUST)
        continue;
      change = add_change (changes, asked->wall, (Length) (G_N_ELEMENTS (rule_steps) + kind));
      change->row = G_N_ELEMENTS (rule_steps) + kind;
      change->wall->laying.rules[kind].keep = KEEP_PREFER;
    }
}

static void
list_rules (const Asked *asked, guint most, GPtrArray *changes)
{
  (void) most;
  for (guint i = 0; i < G_N_ELEMENTS (rule_steps); i++)
    {
      const RuleStep *step = &rule_steps[i];
      const Length now = G_STRUCT_MEMBER (Length, &asked->laying, step->offset);
      const Length next = now + step->by;
      Change *change;

      if (!may_step (asked, step, now, next))
        continue;
      change = add_change (changes, asked->wall, (Length) i);
      change->row = i;
      G_STRUCT_MEMBER (Length, &change->wall->laying, step->offset) = next;
      change->wall->laying.given |= step->field;
      change->wall->laying.element = TRUE;
    }
  list_musts (asked, changes);
}

static void
tell_must (const Asked *asked, const Change *change, GPtrArray *savings)
{
  const RuleRow *row = rule_row ((RuleKind) (change->row - G_N_ELEMENTS (rule_steps)));
  g_autofree char *saved = saved_words (&asked->now, &change->cost);

  add_saving (
      savings, asked, "saves-rule", change,
      g_strdup_printf (_ ("“%s” as a wish instead of a must saves %s; laps and lintels carry "
                          "load, so ask the local code first."),
                       _ (row->label), saved),
      g_strdup (_ ("Make it a wish")));
}

static void
tell_step (const Asked *asked, const Change *change, GPtrArray *savings)
{
  const RuleStep *step = &rule_steps[change->row];
  char next[LENGTH_TEXT_SIZE], now[LENGTH_TEXT_SIZE];
  g_autofree char *saved = saved_words (&asked->now, &change->cost);

  length_text (G_STRUCT_MEMBER (Length, &change->wall->laying, step->offset), next);
  length_text (G_STRUCT_MEMBER (Length, &asked->laying, step->offset), now);
  add_saving (savings, asked, "saves-rule", change,
              g_strdup_printf (_ (step->text), next, now, saved),
              g_strdup_printf (_ (step->mend), next));
}

static void
tell_rule (const Asked *asked, const Change *change, GPtrArray *savings)
{
  if (change->row < G_N_ELEMENTS (rule_steps))
    tell_step (asked, change, savings);
  else
    tell_must (asked, change, savings);
}

/* --- all of them --- */

typedef struct
{
  /* No more than so many are laid. */
  void (*list) (const Asked *, guint most, GPtrArray *);
  void (*tell) (const Asked *, const Change *, GPtrArray *);
} Kind;

/* FALSE when stopped. */
static gboolean
ask_kind (const Asked *asked, const Kind *kind, guint *work, guint pieces, GPtrArray *savings)
{
  g_autoptr (GPtrArray) changes = g_ptr_array_new_with_free_func (change_free);
  const Change *best;

  kind->list (asked, *work / pieces, changes);
  if (changes->len > *work / pieces)
    return TRUE;
  *work -= changes->len * pieces;
  if (!try_all (asked, changes))
    return FALSE;
  best = best_of (asked, changes);
  if (best != NULL)
    kind->tell (asked, best, savings);
  return TRUE;
}

static void
free_finding (gpointer finding)
{
  finding_free (finding);
}

/* About how many pieces the wall has. */
static guint
n_pieces (const Wall *wall, const Block *block)
{
  gint64 n = (gint64) wall->length / block->length * (wall->height / block->height);

  return (guint) CLAMP (n, 20, 1000000);
}

GPtrArray *
savings_of_wall (const Project *project, const Wall *wall, guint threads, const gint *stop)
{
  static const Kind kinds[] = {
    { list_moves, tell_move },
    { list_beds, tell_bed },
    { list_lengths, tell_length },
    { list_rules, tell_rule },
  };
  const Block *block = project_block (project, wall->block);
  Asked asked
      = { project, wall,    block, laying_resolve (&wall->laying, block), cost_aim (wall, block),
          { 0 },   threads, stop };
  g_autoptr (GPtrArray) savings = g_ptr_array_new_with_free_func (free_finding);
  const guint pieces = n_pieces (wall, block);
  guint work = WORK_PIECES;

  if (pieces * 2 > work)
    return g_steal_pointer (&savings);
  if (cost_of_wall (wall, block, LOOK_LAID, stop, &asked.now) != COSTING_DONE)
    return NULL;
  for (guint i = 0; i < G_N_ELEMENTS (kinds); i++)
    if (!ask_kind (&asked, &kinds[i], &work, pieces, savings))
      return NULL;
  return g_steal_pointer (&savings);
}
