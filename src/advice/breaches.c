/* breaches.c - findings of what a wall as laid breaks, and of cuts that a small move would save */
#include <glib/gi18n-lib.h>

#include "advice/trial.h"

/* A move is advised when it saves at least so many cuts, and every tenth one. */
#define CUTS_WORTH_A_MOVE 3

/* --- mends --- */

static gboolean
has_breach (const Layout *layout, const Breach *breach)
{
  for (guint i = 0; i < layout->breaches->len; i++)
    {
      const Breach *other = &g_array_index (layout->breaches, Breach, i);

      if (other->kind == breach->kind && other->course == breach->course && other->x == breach->x)
        return TRUE;
    }
  return FALSE;
}

/* Fewer breaches, then fewer cuts, then the smaller move. */
static gboolean
is_better (const Trial *a, const Trial *b)
{
  if (b == NULL)
    return TRUE;
  if (a->layout->breaches->len != b->layout->breaches->len)
    return a->layout->breaches->len < b->layout->breaches->len;
  if (a->layout->n_cut != b->layout->n_cut)
    return a->layout->n_cut < b->layout->n_cut;
  return a->shift < b->shift;
}

/* The best trial that is without the breach, and with no more others. */
static Mend
mend_breach (const Judging *judging, const GPtrArray *trials, const Breach *breach)
{
  const Trial *best = NULL;

  for (guint i = 0; i < trials->len; i++)
    {
      const Trial *trial = g_ptr_array_index (trials, i);

      if (trial->layout != NULL && trial->layout->breaches->len < judging->layout->breaches->len
          && !has_breach (trial->layout, breach) && is_better (trial, best))
        best = trial;
    }
  if (best == NULL)
    return MEND_NONE;
  return (Mend){ edit_copy (best->mend.edit), g_strdup (best->mend.text) };
}

/* --- breaches --- */

static const char *
rule_of (BreachKind kind)
{
  static const char *const rules[] = {
    [BREACH_MIN_PIECE] = "min-piece",
    [BREACH_MIN_LAP] = "min-lap",
    [BREACH_MIN_RIP] = "min-rip",
    [BREACH_MIN_RAKED] = "min-raked",
  };

  return breach_is_of_limit (kind) ? rules[kind]
                                   : rule_row ((RuleKind) (kind - BREACH_OF_RULE))->word;
}

static char *
words_of_rule (const Breach *breach, const char *x, const char *is, const char *least)
{
  switch ((RuleKind) (breach->kind - BREACH_OF_RULE))
    {
    case RULE_JAMB_LINE:
      return g_strdup_printf (
          _ ("Course %d: the perpend at %s mm is %s mm from the line of a jamb; "
             "it should be %s mm away."),
          breach->course, x, is, least);
    case RULE_JAMB_CUTS:
      return g_strdup_printf (_ ("Course %d: the cut piece at %s mm is too near a jamb for its %s "
                                 "mm; %s mm or more may stand there."),
                              breach->course, x, is, least);
    case RULE_WHOLE_ENDS:
      return g_strdup_printf (_ ("Course %d: the cut piece at %s mm, at the wall's end, is %s mm "
                                 "long; %s mm or more may stand there."),
                              breach->course, x, is, least);
    case RULE_LENGTHS:
      return g_strdup_printf (
          _ ("Course %d: the cut piece at %s mm has a length of its own, %s mm; "
             "the wall should have no more than %d lengths of cut pieces."),
          breach->course, x, is, breach->least);
    case RULE_SYMMETRY_WALL:
      return g_strdup_printf (
          _ ("Course %d: the perpend at %s mm has none across the wall's middle; "
             "one at %s mm would mirror it, and the nearest is %s mm off."),
          breach->course, x, least, is);
    case RULE_SYMMETRY_OPENINGS:
      return g_strdup_printf (_ ("Course %d: the perpend at %s mm has none across the middle of an "
                                 "opening; one at %s mm would mirror it, and the nearest is %s mm "
                                 "off."),
                              breach->course, x, least, is);
    case RULE_LAP:
    case RULE_BEARING:
    case N_RULES:
    default:
      return g_strdup_printf (_ ("Course %d: the perpend at %s mm is under a lintel's end, %s mm "
                                 "from the jamb; the piece there should reach %s mm."),
                              breach->course, x, is, least);
    }
}

static char *
words_of (const Breach *breach)
{
  char x[LENGTH_TEXT_SIZE], is[LENGTH_TEXT_SIZE], least[LENGTH_TEXT_SIZE];

  length_text (breach->x, x);
  length_text (breach->is, is);
  length_text (breach->least, least);
  switch (breach->kind)
    {
    case BREACH_MIN_PIECE:
      return g_strdup_printf (
          _ ("Course %d: the piece at %s mm is %s mm long; the shortest allowed "
             "is %s mm."),
          breach->course, x, is, least);
    case BREACH_MIN_RIP:
      return g_strdup_printf (
          _ ("Course %d: the strip at %s mm is %s mm high; the thinnest allowed "
             "is %s mm."),
          breach->course, x, is, least);
    case BREACH_MIN_RAKED:
      return g_strdup_printf (
          _ ("Course %d: the raked piece at %s mm is %s mm long; the shortest allowed is %s mm."),
          breach->course, x, is, least);
    case BREACH_OF_RULE:
    default:
      return words_of_rule (breach, x, is, least);
    case BREACH_MIN_LAP:
      return g_strdup_printf (_ ("Course %d: the perpend at %s mm laps the one below by %s mm; the "
                                 "least lap is %s mm."),
                              breach->course, x, is, least);
    }
}

static void
judge_breach (Judging *judging, const GPtrArray *trials, const Breach *breach)
{
  Finding *finding = judging_add (judging, rule_of (breach->kind), SEVERITY_BREACH,
                                  words_of (breach), mend_breach (judging, trials, breach));

  finding->course = breach->course;
  finding->x = breach->x;
}

/* --- a lap that no bond has --- */

static gboolean
has_short_lap (const Layout *layout)
{
  for (guint i = 0; i < layout->breaches->len; i++)
    if (g_array_index (layout->breaches, Breach, i).kind == BREACH_MIN_LAP)
      return TRUE;
  return FALSE;
}

static Mend
mend_lap (const Judging *judging, Length half)
{
  char most[LENGTH_TEXT_SIZE];
  g_autoptr (Wall) wall = wall_copy (judging->wall);

  wall->laying.given |= LAYING_MIN_LAP;
  wall->laying.min_lap = half;
  return mend_if_possible (
      judging, edit_set_wall (wall),
      g_strdup_printf (_ ("Ask for a lap of %s mm"), length_text (half, most)));
}

/* Half bond laps most. Walls of so few blocks that none lies upon a perpend break nothing. */
static void
judge_wanted_lap (Judging *judging)
{
  char wanted[LENGTH_TEXT_SIZE], unit[LENGTH_TEXT_SIZE], most[LENGTH_TEXT_SIZE];
  Length half = (judging->block->length + judging->laying.head) / 2;

  if (judging->laying.min_lap <= half || !has_short_lap (judging->layout))
    return;
  judging_add (judging, "lap-too-long", SEVERITY_WARNING,
               g_strdup_printf (_ ("A lap of %s mm cannot be had with blocks of %s mm: at most %s "
                                   "mm."),
                                length_text (judging->laying.min_lap, wanted),
                                length_text (judging->block->length, unit),
                                length_text (half, most)),
               mend_lap (judging, half));
}

/* The least lap that holds where none is given: EN 1996-1-1, 8.1.4.1(3), from memory. */
static void
judge_standard_lap (Judging *judging)
{
  const Laying none = laying_default ();
  const Length standard = laying_resolve (&none, judging->block).min_lap;
  char is[LENGTH_TEXT_SIZE], wanted[LENGTH_TEXT_SIZE];

  if (judging->laying.min_lap >= standard)
    return;
  judging_add (judging, "lap-below-standard", SEVERITY_WARNING,
               g_strdup_printf (_ ("The least lap is %s mm; %s mm are wanted with this block (EN "
                                   "1996-1-1): ask the local code and a licensed engineer first."),
                                length_text (judging->laying.min_lap, is),
                                length_text (standard, wanted)),
               MEND_NONE);
}

/* --- cuts --- */

static void
judge_cuts (Judging *judging, const GPtrArray *trials)
{
  const Trial *best = NULL;
  gint32 saved;

  for (guint i = 0; i < trials->len; i++)
    {
      const Trial *trial = g_ptr_array_index (trials, i);

      if (trial->layout != NULL && trial->layout->breaches->len <= judging->layout->breaches->len
          && is_better (trial, best))
        best = trial;
    }
  saved = best != NULL ? judging->layout->n_cut - best->layout->n_cut : 0;
  if (saved < CUTS_WORTH_A_MOVE || saved * 10 < judging->layout->n_cut)
    return;
  judging_add (judging, "fewer-cuts", SEVERITY_NOTE,
               g_strdup_printf (_ ("%d of %d pieces are cut; a small move would save %d of these "
                                   "cuts."),
                                judging->layout->n_cut, (gint32) judging->layout->pieces->len,
                                saved),
               (Mend){ edit_copy (best->mend.edit), g_strdup (best->mend.text) });
}

void
judge_breaches (Judging *judging)
{
  g_autoptr (GPtrArray) trials = trials_list (judging);

  trials_run (judging, trials);
  for (guint i = 0; i < judging->layout->breaches->len; i++)
    judge_breach (judging, trials, &g_array_index (judging->layout->breaches, Breach, i));
  judge_wanted_lap (judging);
  judge_standard_lap (judging);
  judge_cuts (judging, trials);
}
