/* test-findings.c - what is found on a wall, and that mends mend */
#include "advice/findings.h"

#include <string.h>

#include "any-wall.h"
#include "bond/lay.h"

/* --- walls to judge --- */

static Project *
project_of (const Wall *wall, const Block *block)
{
  g_autoptr (Project) empty = project_new ();
  g_autoptr (Wall) on = wall_copy (wall);
  Block own = block_copy (block);
  g_autoptr (Edit) set = NULL;
  g_autoptr (Edit) add = NULL;
  g_autoptr (GError) error = NULL;
  Project *project;

  own.id = project_block_at (empty, 0)->id;
  g_free (own.key);
  own.key = g_strdup (project_block_at (empty, 0)->key);
  set = edit_set_block (&own);
  g_autoptr (Project) with_block = project_edit (empty, set, &error);
  g_assert_no_error (error);
  on->block = own.id;
  g_clear_pointer (&on->key, g_free);
  add = edit_add_wall (on);
  project = project_edit (with_block, add, &error);
  g_assert_no_error (error);
  block_clear (&own);
  return project;
}

typedef struct
{
  Project *project;
  Layout *layout;
  GPtrArray *findings;
} Judged;

static Judged
judge (Project *project)
{
  Judged judged = { .project = project };
  const Wall *wall = project_wall_at (project, 0);

  judged.layout = lay_wall (wall, project_block (project, wall->block), NULL);
  judged.findings = findings_of_wall (project, wall, judged.layout);
  return judged;
}

static void
judged_clear (Judged *judged)
{
  g_ptr_array_unref (judged->findings);
  layout_unref (judged->layout);
  project_unref (judged->project);
}
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Judged, judged_clear)

static const Finding *
finding_at (const Judged *judged, guint i)
{
  return g_ptr_array_index (judged->findings, i);
}

static const Finding *
finding_of (const Judged *judged, const char *rule)
{
  for (guint i = 0; i < judged->findings->len; i++)
    if (strcmp (finding_at (judged, i)->rule, rule) == 0)
      return finding_at (judged, i);
  return NULL;
}

/* --- by table --- */

/* Courses of 200 mm on a bed of 25 mm with joints of 2 mm: the top of course k is at 23 + 202 k.
 * The wall is 2649 mm high (13 courses) and 6018 mm long (10 units) where nothing else is said. */
typedef struct
{
  const char *what;
  int length, height, first_bed, thickness;
  struct
  {
    int x, width, sill, height;
  } openings[2];
  int every, by_hand; /* by_hand < 0: a row taken away */
  gboolean under_sills;
  const char *rule; /* the finding expected; with no text: it must not be there */
  Severity severity;
  int course, x;
  const char *text, *mend;
  int bars, diameter, min_lap; /* 0: what holds where nothing is given */
} Row;

#define PLAIN 6018, 2649, 25, 250
#define NO_OPENING                                                                                 \
  {                                                                                                \
    {                                                                                              \
      0                                                                                            \
    }                                                                                              \
  }

static const Row rows[] = {
  { "a sill that meets a course",
    PLAIN,
    { { 1204, 1202, 1033, 1014 } },
    0,
    0,
    FALSE,
    "sill",
    SEVERITY_NOTE,
    0,
    0,
    NULL,
    NULL },
  { "a sill 12 mm above a course leaves a packing",
    PLAIN,
    { { 1204, 1202, 1047, 1000 } },
    0,
    0,
    FALSE,
    "sill",
    SEVERITY_NOTE,
    0,
    0,
    NULL,
    NULL },
  { "a sill above a course",
    PLAIN,
    { { 1204, 1202, 1095, 952 } },
    0,
    0,
    FALSE,
    "sill",
    SEVERITY_NOTE,
    6,
    1204,
    "W1: the sill at 1095 mm meets no course; course 6 is ripped to 60 mm under it.",
    "Move sill 62 mm down" },
  { "a sill below a course",
    PLAIN,
    { { 1204, 1202, 1223, 824 } },
    0,
    0,
    FALSE,
    "sill",
    SEVERITY_NOTE,
    6,
    1204,
    "W1: the sill at 1223 mm meets no course; course 6 is ripped to 188 mm under it.",
    "Move sill 12 mm up" },
  { "a head that meets a course's bed",
    PLAIN,
    { { 1204, 1202, 1033, 1012 } },
    0,
    0,
    FALSE,
    "head",
    SEVERITY_NOTE,
    0,
    0,
    NULL,
    NULL },
  { "a head above a bed",
    PLAIN,
    { { 1204, 1202, 1033, 1100 } },
    0,
    0,
    FALSE,
    "head",
    SEVERITY_NOTE,
    11,
    1204,
    "W1: the head at 2133 mm meets no course; course 11 is ripped to 112 mm over it.",
    "Move head 88 mm down" },
  { "half a block is wide enough",
    PLAIN,
    { { 1204, 602, 1033, 1012 }, { 2106, 602, 1033, 1012 } },
    0,
    0,
    FALSE,
    "narrow-pier",
    SEVERITY_WARNING,
    0,
    0,
    NULL,
    NULL },
  { "a pier between windows",
    PLAIN,
    { { 1204, 602, 1033, 1012 }, { 2086, 602, 1033, 1012 } },
    0,
    0,
    FALSE,
    "narrow-pier",
    SEVERITY_WARNING,
    0,
    1806,
    "The pier between W1 and W2 is 280 mm wide, narrower than half a block, 300 mm (bricklayers' "
    "practice). Whether it bears what lies on it is for a licensed engineer.",
    "Move W2 20 mm right" },
  { "a pier at the end",
    PLAIN,
    { { 5018, 900, 1033, 1012 } },
    0,
    0,
    FALSE,
    "narrow-pier",
    SEVERITY_WARNING,
    0,
    5918,
    "The pier at the right end, beside W1, is 100 mm wide, narrower than half a block, 300 mm "
    "(bricklayers' practice). Whether it bears what lies on it is for a licensed engineer.",
    "Move W1 200 mm left" },
  { "windows one above the other have no pier",
    PLAIN,
    { { 1204, 602, 427, 400 }, { 1804, 602, 1235, 600 } },
    0,
    0,
    FALSE,
    "narrow-pier",
    SEVERITY_WARNING,
    0,
    0,
    NULL,
    NULL },
  { "a lintel on a cut piece",
    PLAIN,
    { { 250, 1202, 1033, 1012 } },
    0,
    0,
    FALSE,
    "lintel-bearing",
    SEVERITY_NOTE,
    10,
    0,
    "W1: the lintel's left end rests on a cut piece of 250 mm; give it 150 mm of bearing at least, "
    "on a whole block where one can be laid (house-building standards): check with a licensed "
    "engineer.",
    NULL },
  { "a lintel over 1.2 m or less",
    PLAIN,
    { { 250, 1200, 1033, 1012 } },
    0,
    0,
    FALSE,
    "lintel-bearing",
    SEVERITY_NOTE,
    10,
    0,
    "W1: the lintel's left end rests on a cut piece of 250 mm; give it 100 mm of bearing at least, "
    "on a whole block where one can be laid (house-building standards): check with a licensed "
    "engineer.",
    NULL },
  { "whole courses", PLAIN, NO_OPENING, 0, 0, FALSE, "top-course", SEVERITY_NOTE, 0, 0, NULL,
    NULL },
  { "a thin top course", 6018, 2549, 25, 250, NO_OPENING, 0, 0, FALSE, "top-course", SEVERITY_NOTE,
    13, 0, "Course 13, the top one, is ripped to 100 mm all along; a whole block is 200 mm high.",
    "Make the wall 2649 mm high" },
  { "a thinner one", 6018, 2529, 25, 250, NO_OPENING, 0, 0, FALSE, "top-course", SEVERITY_NOTE, 13,
    0, "Course 13, the top one, is ripped to 80 mm all along; a whole block is 200 mm high.",
    "Make the wall 2447 mm high" },
  { "a usual levelling bed", PLAIN, NO_OPENING, 0, 0, FALSE, "levelling-bed", SEVERITY_NOTE, 0, 0,
    NULL, NULL },
  { "a thick levelling bed", 6018, 2669, 45, 250, NO_OPENING, 0, 0, FALSE, "levelling-bed",
    SEVERITY_NOTE, 1, 0,
    "The levelling bed is 45 mm; 10 to 40 mm can be worked, 20 to 30 mm are best (common "
    "practice).",
    NULL },
  { "a block of 15 kg", PLAIN, NO_OPENING, 0, 0, FALSE, "block-mass", SEVERITY_NOTE, 0, 0, NULL,
    NULL },
  /* 0.6 x 0.2 x 0.365 m at 500 kg/m3 are 21.9 kg: over 21.74 kg, docs/rules.md CC-25. */
  { "a heavy block", 6018, 2649, 25, 365, NO_OPENING, 0, 0, FALSE, "block-mass", SEVERITY_NOTE, 0,
    0,
    "A whole block is about 25 kg as delivered, with 15 % of moisture; over 25 kg it is not to be "
    "laid by hand (DGUV Information 201-015).",
    NULL },
  { "rows near enough", PLAIN, NO_OPENING, 2, 0, FALSE, "row-spacing", SEVERITY_WARNING, 0, 0, NULL,
    NULL },
  { "rows 606 mm apart", PLAIN, NO_OPENING, 3, 0, FALSE, "row-spacing", SEVERITY_WARNING, 3, 0,
    "The bars in courses 3 and 6 are 606 mm apart; rows that are to bind the wall are at most 600 "
    "mm "
    "apart (EN 1996-1-1).",
    "Lay bars in course 5, 8, 11 too" },
  { "rows 808 mm apart", PLAIN, NO_OPENING, 4, 10, FALSE, "row-spacing", SEVERITY_WARNING, 4, 0,
    "The bars in courses 4 and 8 are 808 mm apart; rows that are to bind the wall are at most 600 "
    "mm "
    "apart (EN 1996-1-1).",
    "Lay bars in course 6 too" },
  { "a row taken away by hand", PLAIN, NO_OPENING, 2, -6, FALSE, "row-spacing", SEVERITY_WARNING, 4,
    0,
    "The bars in courses 4 and 8 are 808 mm apart; rows that are to bind the wall are at most 600 "
    "mm "
    "apart (EN 1996-1-1).",
    "Lay bars in course 6 too" },
  { "one row binds nothing", PLAIN, NO_OPENING, 0, 4, FALSE, "row-spacing", SEVERITY_WARNING, 0, 0,
    NULL, NULL },
  /* 2 x 28.27 mm2: enough for 0.03 % of 250 x 606 mm, too little for 250 x 808 mm; docs/rules.md
   * 2.8. */
  { "steel enough", PLAIN, NO_OPENING, 3, 0, FALSE, "row-area", SEVERITY_NOTE, 0, 0, NULL, NULL },
  { "too little steel", PLAIN, NO_OPENING, 4, 0, FALSE, "row-area", SEVERITY_NOTE, 4, 0,
    "2 bars of 6 mm every 808 mm are 0.028 % of the wall's section; 0.03 % is wanted against "
    "cracks "
    "(EN 1996-1-1).",
    NULL },
  { "bars in a thin joint", PLAIN, NO_OPENING, 4, 0, FALSE, "row-joint", SEVERITY_NOTE, 4, 0,
    "Bars of 6 mm do not lie in a bed joint of 2 mm: cut grooves for them; a joint would have to "
    "be 11 "
    "mm (EN 1996-1-1).",
    NULL },
  { "no bars, no groove", PLAIN, NO_OPENING, 0, 0, FALSE, "row-joint", SEVERITY_NOTE, 0, 0, NULL,
    NULL },
  { "bars stopped by a door",
    PLAIN,
    { { 1204, 1202, 1033, 1012 }, { 2708, 902, 0, 2045 } },
    0,
    0,
    TRUE,
    "row-past",
    SEVERITY_WARNING,
    5,
    2683,
    "W1: another opening stops the bars in course 5 277 mm past it on the right; 600 mm are "
    "wanted.",
    NULL },
  { "bars to the wall's end",
    PLAIN,
    { { 404, 1202, 1033, 1012 } },
    0,
    0,
    TRUE,
    "row-past",
    SEVERITY_WARNING,
    0,
    0,
    NULL,
    NULL },
  { .what = "a joint over the last course",
    .length = 6018,
    .height = 2651,
    .first_bed = 25,
    .thickness = 250,
    .rule = "top-packing",
    .severity = SEVERITY_NOTE,
    .course = 0,
    .text = NULL,
    .mend = NULL },
  { .what = "20 mm over the last joint",
    .length = 6018,
    .height = 444,
    .first_bed = 20,
    .thickness = 250,
    .rule = "top-packing",
    .severity = SEVERITY_NOTE,
    .course = 2,
    .text = "22 mm over course 2 are too thin for blocks and stay mortar.",
    .mend = "Make the wall 422 mm high" },
  { .what = "1 mm over the last joint",
    .length = 6018,
    .height = 2652,
    .first_bed = 25,
    .thickness = 250,
    .rule = "top-packing",
    .severity = SEVERITY_NOTE,
    .course = 13,
    .text = "3 mm over course 13 are too thin for blocks and stay mortar.",
    .mend = "Make the wall 2649 mm high" },
  { .what = "21 mm over the last joint",
    .length = 6018,
    .height = 2672,
    .first_bed = 25,
    .thickness = 250,
    .rule = "top-packing",
    .severity = SEVERITY_NOTE,
    .course = 0,
    .text = NULL,
    .mend = NULL },
  { .what = "a window that needs the mortar",
    .length = 6018,
    .height = 2671,
    .first_bed = 25,
    .thickness = 250,
    .openings = { { 1204, 1202, 1033, 1638 } },
    .rule = "top-packing",
    .severity = SEVERITY_NOTE,
    .course = 13,
    .text = "22 mm over course 13 are too thin for blocks and stay mortar.",
    .mend = NULL },
  /* 4 x 12 + 3 x 20 + 2 x 25 = 158; 2 x 25 + 25 + 2 x 25 = 125; 1 x 12 + 2 x 25 = 62. */
  { .what = "bars that just fit",
    .length = 6018,
    .height = 2649,
    .first_bed = 25,
    .thickness = 158,
    .every = 2,
    .bars = 4,
    .diameter = 12,
    .rule = "row-width",
    .severity = SEVERITY_WARNING,
    .course = 0,
    .text = NULL,
    .mend = NULL },
  { .what = "bars that do not fit",
    .length = 6018,
    .height = 2649,
    .first_bed = 25,
    .thickness = 157,
    .every = 2,
    .bars = 4,
    .diameter = 12,
    .rule = "row-width",
    .severity = SEVERITY_WARNING,
    .course = 2,
    .text = "4 bars of 12 mm side by side take 158 mm of width, with 20 mm between them and 25 mm "
            "at each face; the block is 157 mm thick.",
    .mend = NULL },
  { .what = "thick bars",
    .length = 6018,
    .height = 2649,
    .first_bed = 25,
    .thickness = 100,
    .every = 3,
    .bars = 2,
    .diameter = 25,
    .rule = "row-width",
    .severity = SEVERITY_WARNING,
    .course = 3,
    .text = "2 bars of 25 mm side by side take 125 mm of width, with 25 mm between them and 25 mm "
            "at each face; the block is 100 mm thick.",
    .mend = NULL },
  { .what = "one bar",
    .length = 6018,
    .height = 2649,
    .first_bed = 25,
    .thickness = 60,
    .every = 3,
    .bars = 1,
    .diameter = 12,
    .rule = "row-width",
    .severity = SEVERITY_WARNING,
    .course = 3,
    .text
    = "A bar of 12 mm takes 62 mm of width, with 25 mm at each face; the block is 60 mm thick.",
    .mend = NULL },
  { .what = "no bars need no width",
    .length = 6018,
    .height = 2649,
    .first_bed = 25,
    .thickness = 60,
    .bars = 4,
    .diameter = 12,
    .rule = "row-width",
    .severity = SEVERITY_WARNING,
    .course = 0,
    .text = NULL,
    .mend = NULL },
  /* Half of 600 and 2 mm is 301. */
  { .what = "half bond",
    .length = 6018,
    .height = 2649,
    .first_bed = 25,
    .thickness = 250,
    .min_lap = 301,
    .rule = "lap-too-long",
    .severity = SEVERITY_WARNING,
    .course = 0,
    .text = NULL,
    .mend = NULL },
  { .what = "a lap that no bond has",
    .length = 6018,
    .height = 2649,
    .first_bed = 25,
    .thickness = 250,
    .min_lap = 400,
    .rule = "lap-too-long",
    .severity = SEVERITY_WARNING,
    .course = 0,
    .text = "A lap of 400 mm cannot be had with blocks of 600 mm: at most 301 mm.",
    .mend = "Ask for a lap of 301 mm" },
  { .what = "one block long",
    .length = 600,
    .height = 2649,
    .first_bed = 25,
    .thickness = 250,
    .min_lap = 400,
    .rule = "lap-too-long",
    .severity = SEVERITY_WARNING,
    .course = 0,
    .text = NULL,
    .mend = NULL },
};

static Wall *
wall_of (const Row *row)
{
  Wall *wall = wall_new ();
  SteelRow by_hand = { .course = ABS (row->by_hand), .omit = row->by_hand < 0 };

  wall->length = LENGTH_MM (row->length);
  wall->height = LENGTH_MM (row->height);
  wall->laying.given = LAYING_FIRST_BED;
  wall->laying.first_bed = LENGTH_MM (row->first_bed);
  for (int i = 0; i < 2 && row->openings[i].width > 0; i++)
    {
      Opening opening = opening_default (OPENING_WINDOW);

      g_free (opening.name);
      opening.name = g_strdup_printf ("W%d", i + 1);
      opening.x = LENGTH_MM (row->openings[i].x);
      opening.width = LENGTH_MM (row->openings[i].width);
      opening.sill = LENGTH_MM (row->openings[i].sill);
      opening.height = LENGTH_MM (row->openings[i].height);
      g_array_append_val (wall->openings, opening);
    }
  wall->steel.given = row->every > 0 || row->under_sills;
  wall->steel.every = row->every;
  wall->steel.under_sills = row->under_sills;
  if (row->bars > 0)
    wall->steel.bars = row->bars;
  if (row->diameter > 0)
    wall->steel.diameter = LENGTH_MM (row->diameter);
  wall->laying.given |= row->min_lap > 0 ? LAYING_MIN_LAP : 0;
  wall->laying.min_lap = LENGTH_MM (row->min_lap);
  if (row->by_hand != 0)
    g_array_append_val (wall->steel_rows, by_hand);
  return wall;
}

static void
check_row (const Row *row, const Finding *finding)
{
  g_test_message ("%s", row->what);
  if (row->text == NULL)
    {
      g_assert_null (finding);
      return;
    }
  g_assert_nonnull (finding);
  g_assert_cmpint (finding->severity, ==, row->severity);
  g_assert_cmpstr (finding->text, ==, row->text);
  g_assert_cmpstr (finding->mend_text, ==, row->mend);
  g_assert_cmpint (finding->course, ==, row->course);
  g_assert_cmpint (finding->x, ==, LENGTH_MM (row->x));
}

static void
test_rows (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (Wall) wall = wall_of (&rows[i]);
      Block block = block_default ();

      block.thickness = LENGTH_MM (rows[i].thickness);
      g_auto (Judged) judged = judge (project_of (wall, &block));
      check_row (&rows[i], finding_of (&judged, rows[i].rule));
      block_clear (&block);
    }
}

/* --- laws on made-up walls --- */

static gboolean
comes_before (const Finding *a, const Finding *b)
{
  if (a->severity != b->severity)
    return a->severity < b->severity;
  if (a->course != b->course)
    return a->course < b->course;
  return a->x <= b->x;
}

static void
check_order (const Judged *judged)
{
  guint breaches = 0;

  for (guint i = 0; i < judged->findings->len; i++)
    {
      const Finding *finding = finding_at (judged, i);

      breaches += finding->severity == SEVERITY_BREACH;
      g_assert_cmpint (finding->text[strlen (finding->text) - 1], ==, '.');
      g_assert_cmpint (finding->mend == NULL, ==, finding->mend_text == NULL);
      g_assert_cmpint (finding->wall.n, ==, project_wall_at (judged->project, 0)->id.n);
      if (i > 0)
        g_assert_cmpint (comes_before (finding_at (judged, i - 1), finding), ==, TRUE);
    }
  g_assert_cmpuint (breaches, ==, judged->layout->breaches->len);
  g_assert_cmpuint (breaches, ==, judged->layout->proof.breaches);
}

/* A movement joint parts one stretch of wall; another may be too long, too, and is told of next. */
static gboolean
is_of_place (const Finding *finding)
{
  return finding->severity == SEVERITY_BREACH
         || g_str_has_prefix (finding->rule, "movement-joint-");
}

/* How often a rule speaks of the same thing as a finding does. */
static guint
count_same (const Judged *judged, const Finding *finding)
{
  guint n = 0;

  for (guint i = 0; i < judged->findings->len; i++)
    {
      const Finding *other = finding_at (judged, i);
      gboolean same_place = other->course == finding->course && other->x == finding->x;

      if (strcmp (other->rule, finding->rule) != 0 || other->opening.n != finding->opening.n)
        continue;
      n += is_of_place (finding) ? same_place : 1;
    }
  return n;
}

static void
check_mend (const Judged *before, const Finding *finding)
{
  g_autoptr (GError) error = NULL;
  Project *project = project_edit (before->project, finding->mend, &error);

  g_assert_no_error (error);
  g_auto (Judged) after = judge (project);
  if (finding->severity == SEVERITY_BREACH)
    g_assert_cmpint (after.layout->proof.breaches, <, before->layout->proof.breaches);
  if (strcmp (finding->rule, "fewer-cuts") == 0)
    g_assert_cmpint (after.layout->n_cut, <=, before->layout->n_cut - 3);
  else if (strcmp (finding->rule, "narrow-pier") == 0)
    g_assert_cmpuint (count_same (&after, finding), <, count_same (before, finding));
  else
    g_assert_cmpuint (count_same (&after, finding), ==, 0);
}

static void
test_mends_of_rows (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (Wall) wall = wall_of (&rows[i]);
      Block block = block_default ();

      block.thickness = LENGTH_MM (rows[i].thickness);
      g_auto (Judged) judged = judge (project_of (wall, &block));
      g_test_message ("%s", rows[i].what);
      if (rows[i].mend != NULL)
        check_mend (&judged, finding_of (&judged, rows[i].rule));
      block_clear (&block);
    }
}

static void
test_mends (void)
{
  guint mended = 0;

  for (guint64 seed = 1; seed <= 110; seed++)
    {
      g_auto (AnyWall) any = any_wall (seed);

      any.wall->steel.given = seed % 3 == 0;
      any.wall->steel.every = (gint32) (seed % 5);
      any.wall->steel.under_sills = TRUE;
      g_auto (Judged) judged = judge (project_of (any.wall, &any.block));
      check_order (&judged);
      for (guint i = 0; i < judged.findings->len; i++)
        {
          const Finding *finding = finding_at (&judged, i);

          if (finding->mend == NULL)
            continue;
          if (g_test_verbose ())
            g_test_message ("wall %" G_GUINT64_FORMAT ": %s -> %s", seed, finding->text,
                            finding->mend_text);
          check_mend (&judged, finding);
          mended++;
        }
    }
  g_test_message ("%u mends tried", mended);
  g_assert_cmpuint (mended, >, 200);
}

/* The same wall, judged twice and among others, is found the same. */
static void
test_same_twice (void)
{
  for (guint64 seed = 300; seed < 312; seed++)
    {
      g_auto (AnyWall) any = any_wall (seed);
      g_auto (Judged) a = judge (project_of (any.wall, &any.block));
      g_auto (Judged) b = judge (project_of (any.wall, &any.block));

      g_assert_cmpuint (a.findings->len, ==, b.findings->len);
      for (guint i = 0; i < a.findings->len; i++)
        {
          g_assert_cmpstr (finding_at (&a, i)->text, ==, finding_at (&b, i)->text);
          g_assert_cmpstr (finding_at (&a, i)->mend_text, ==, finding_at (&b, i)->mend_text);
        }
    }
}

/* --- what was said of laps and of moving --- */

/* Blocks of 200 mm want 80 mm: 0.4 of their height (EN 1996-1-1, 8.1.4.1). */
static void
test_a_lap_below_the_standard_is_told (void)
{
  static const int laps[] = { 79, 80 };

  for (guint i = 0; i < G_N_ELEMENTS (laps); i++)
    {
      g_autoptr (Wall) wall = wall_new ();
      Block block = block_default ();

      wall->laying.min_lap = LENGTH_MM (laps[i]);
      wall->laying.given = LAYING_MIN_LAP;
      wall->laying.element = TRUE;
      g_auto (Judged) judged = judge (project_of (wall, &block));
      const Finding *finding = finding_of (&judged, "lap-below-standard");
      g_assert_cmpint (finding != NULL, ==, laps[i] < 80);
      if (finding != NULL)
        {
          g_assert_cmpint (finding->severity, ==, SEVERITY_WARNING);
          g_assert_nonnull (strstr (finding->text, "is 79 mm; 80 mm are wanted"));
          g_assert_nonnull (strstr (finding->text, "licensed engineer"));
        }
      block_clear (&block);
    }
}

/* Drawn at 1800, it may move 50 mm and stands at 1870: back by 20. */
static void
test_an_opening_moved_too_far_is_told (void)
{
  g_autoptr (Wall) wall = wall_new ();
  Block block = block_default ();
  Opening window = opening_default (OPENING_WINDOW);
  g_autoptr (GError) error = NULL;

  window.key = g_strdup ("o1");
  window.x = LENGTH_MM (1870);
  window.given = OPENING_MAY_MOVE | OPENING_DRAWN_X;
  window.may_move = LENGTH_MM (50);
  window.drawn_x = LENGTH_MM (1800);
  g_array_append_val (wall->openings, window);
  g_auto (Judged) judged = judge (project_of (wall, &block));
  const Finding *finding = finding_of (&judged, "beyond-move");
  g_assert_nonnull (finding);
  g_assert_cmpstr (finding->text, ==,
                   "o1 stands 70 mm from where it was drawn; it may move 50 mm.");
  g_assert_cmpstr (finding->mend_text, ==, "Move o1 20 mm left");
  g_autoptr (Project) mended = project_edit (judged.project, finding->mend, &error);
  g_assert_no_error (error);
  g_assert_cmpint (wall_opening_at (project_wall_at (mended, 0), 0)->x, ==, LENGTH_MM (1850));
  block_clear (&block);
}

/* --- pins --- */

static void
pin (Wall *wall, gint32 course, int x, int length)
{
  wall_put_pin (wall, &(Pin){ course, LENGTH_MM (x), LENGTH_MM (length), { NULL, NULL } });
}

/* Five courses of ten units, the middle one open from 1204 to 2406. */
static Judged
judge_pinned (gint32 course, int x, int length)
{
  g_autoptr (Wall) wall = wall_new ();
  Block block = block_default ();
  Opening hole = opening_default (OPENING_VOID);
  Project *project;

  wall->length = LENGTH_MM (6018);
  wall->height = LENGTH_MM (1028);
  hole.x = LENGTH_MM (1204);
  hole.width = LENGTH_MM (1202);
  hole.sill = LENGTH_MM (422);
  hole.height = LENGTH_MM (204);
  g_array_append_val (wall->openings, hole);
  pin (wall, 1, 4816, 0);
  pin (wall, course, x, length);
  project = project_of (wall, &block);
  block_clear (&block);
  return judge (project);
}

static const struct
{
  gint32 course;
  int x, length;
  const char *text;
} pins[] = {
  { 9, 600, 0, "The pin on course 9 at 600 mm cannot be met: the wall has 5 courses." },
  { 3, 1806, 0, "The pin on course 3 at 1806 mm cannot be met: no piece is laid there." },
  { 3, 7000, 0, "The pin on course 3 at 7000 mm cannot be met: no piece is laid there." },
  { 3, 800, 500,
    "The pin on course 3 at 800 mm cannot be met: the piece would reach past the end of the run, "
    "at 1204 mm." },
  { 3, 802, 401,
    "The pin on course 3 at 802 mm cannot be met: it leaves no room for a piece beside the end of "
    "the run, at 1204 mm." },
  { 3, 2408, 0,
    "The pin on course 3 at 2408 mm cannot be met: it leaves no room for a piece beside the end of "
    "the run, at 2406 mm." },
  { 2, 0, 700,
    "The pin on course 2 at 0 mm cannot be met: the piece is 700 mm long, the block only 600 mm." },
  { 1, 4500, 600,
    "The pin on course 1 at 4500 mm cannot be met: the pin at 4816 mm on this course does not let "
    "it." },
  { 1, 602, 600, NULL },
};

static void
test_pins_not_met (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (pins); i++)
    {
      g_auto (Judged) judged = judge_pinned (pins[i].course, pins[i].x, pins[i].length);
      const Finding *finding = finding_of (&judged, "pin");

      g_assert_cmpstr (finding ? finding->text : NULL, ==, pins[i].text);
      if (finding == NULL)
        continue;
      g_assert_cmpint (finding->severity, ==, SEVERITY_WARNING);
      g_assert_cmpint (finding->course, ==, pins[i].course);
      g_assert_cmpint (finding->x, ==, LENGTH_MM (pins[i].x));
      g_assert_cmpstr (finding->mend_text, ==, "Remove the pin");
      g_autoptr (Project) mended = project_edit (judged.project, finding->mend, NULL);
      g_assert_cmpuint (project_wall_at (mended, 0)->pins->len, ==, 1);
      g_assert_cmpint (wall_pin_at (project_wall_at (mended, 0), 0)->x, ==, LENGTH_MM (4816));
    }
}

/* A perpend pinned 20 mm beside one that is pinned below: the lap is a breach, which the pin's
 * going mends. */
static void
test_breach_of_a_pin (void)
{
  g_auto (Judged) judged = judge_pinned (2, 4836, 0);
  const Finding *finding = finding_of (&judged, "min-lap");

  g_assert_nonnull (finding);
  g_assert_cmpint (finding->course, ==, 2);
  g_assert_cmpstr (finding->mend_text, ==, "Remove the pin");
  g_autoptr (Project) mended = project_edit (judged.project, finding->mend, NULL);
  g_auto (Judged) after = judge (g_steal_pointer (&mended));
  g_assert_null (finding_of (&after, "min-lap"));
}

/* --- the surveyed footing --- */

/* A wall of 6018 mm and one across; `left` and `right` are levels of the footing at the first
 * one's ends, the mark at 0 is met again `closing` mm too high, the diagonal is `off` mm longer
 * than square. */
static Project *
surveyed (int left, int right, int closing, int off)
{
  g_autoptr (Wall) wall = wall_new ();
  g_autoptr (Survey) survey = survey_new ();
  g_autoptr (GError) error = NULL;
  Block block = block_default ();
  g_autoptr (Edit) edit = NULL;
  Project *project;
  const int levels[] = { left, right };

  wall->length = LENGTH_MM (6018);
  project = project_of (wall, &block);
  block_clear (&block);
  for (int i = 0; i < 2; i++)
    {
      WallId id = { project->next };
      g_autoptr (Edit) add = edit_add_wall (wall);
      Project *next = project_edit (project, add, &error);

      g_assert_no_error (error);
      project_unref (project);
      project = next;
      if (i == 0)
        {
          Diagonal *diagonal = survey_add_diagonal (survey);

          diagonal->along = project_wall_at (project, 0)->id;
          diagonal->across = id;
          diagonal->given = DIAGONAL_FIRST | DIAGONAL_SECOND;
          diagonal->first = LENGTH_MM (3000);
          diagonal->second = LENGTH_MM (4000);
          diagonal->length = LENGTH_MM (5000 + off);
        }
    }
  for (int i = 0; i < 4; i++)
    {
      Reading *reading = survey_add_reading (survey);

      reading->given = i == 0   ? READING_BACK | READING_LEVEL
                       : i == 3 ? READING_FORE
                                : READING_INTER;
      if (i == 1 || i == 2)
        {
          reading->inter = LENGTH_MM (-levels[i - 1]);
          reading_add_place (reading, project_wall_at (project, 0)->id, (i - 1) * LENGTH_MM (6018));
        }
      else
        {
          g_free (reading->point);
          reading->point = g_strdup ("BM");
          reading->fore = LENGTH_MM (-closing);
        }
    }
  edit = edit_set_survey (survey);
  Project *next = project_edit (project, edit, &error);
  g_assert_no_error (error);
  project_unref (project);
  return next;
}

static void
test_good_footing (void)
{
  g_auto (Judged) judged = judge (surveyed (-8, 8, 5, 1));
  const char *const rules[]
      = { "level-book", "closing-error", "bed-thin", "bed-thick", "out-of-square" };

  for (guint i = 0; i < G_N_ELEMENTS (rules); i++)
    g_assert_null (finding_of (&judged, rules[i]));
}

static void
test_closing_error (void)
{
  g_auto (Judged) judged = judge (surveyed (0, 0, 6, 0));
  const Finding *finding = finding_of (&judged, "closing-error");

  g_assert_nonnull (finding);
  g_assert_cmpint (finding->severity, ==, SEVERITY_WARNING);
  g_assert_cmpstr (
      finding->text, ==,
      "Level book: Row 4 (BM): does not close: 6 mm too high after 1 set-up; only 5 mm "
      "are allowed. Read again before anything is laid by it.");
  /* It is told with one wall, not with each. */
  g_autoptr (Layout) layout
      = lay_wall (project_wall_at (judged.project, 1), project_block_at (judged.project, 0), NULL);
  g_autoptr (GPtrArray) others
      = findings_of_wall (judged.project, project_wall_at (judged.project, 1), layout);
  for (guint i = 0; i < others->len; i++)
    g_assert_cmpstr (((const Finding *) g_ptr_array_index (others, i))->rule, !=, "closing-error");
}

static void
test_bed_beyond_limits (void)
{
  g_auto (Judged) judged = judge (surveyed (-40, 40, 0, 0));
  const Finding *thin = finding_of (&judged, "bed-thin");
  const Finding *thick = finding_of (&judged, "bed-thick");

  g_assert_nonnull (thin);
  g_assert_nonnull (thick);
  g_assert_cmpint (thin->severity, ==, SEVERITY_WARNING);
  g_assert_cmpint (thin->course, ==, 1);
  g_assert_cmpint (thin->x, ==, LENGTH_MM (6018));
  g_assert_cmpstr (
      thin->text, ==,
      "From 4137.4 to 6018 mm the levelling bed is too thin: -15 mm at 6018 mm, at least "
      "10 mm are wanted. Grind the footing down by 25 mm there.");
  g_assert_cmpstr (
      thick->text, ==,
      "From 0 to 1880.6 mm the levelling bed is too thick: 65 mm at 0 mm, at most 40 mm "
      "are wanted. Build the footing up by 25 mm there.");
}

static void
test_out_of_square (void)
{
  g_auto (Judged) judged = judge (surveyed (0, 0, 0, 4));
  const Finding *finding = finding_of (&judged, "out-of-square");

  g_assert_nonnull (finding);
  g_assert_cmpint (finding->severity, ==, SEVERITY_NOTE);
  g_assert_cmpstr (
      finding->text, ==,
      "w1 and w2: the corner is open; the diagonal is 5004 mm, square is 5000 mm: out of "
      "square by 10 mm over w1, or by 10 mm over w2.");
}

static void
test_level_book (void)
{
  Project *project = surveyed (0, 0, 0, 0);
  g_autoptr (Survey) survey = survey_copy (project->survey);

  survey_add_reading (survey)->given = READING_INTER;
  g_autoptr (Edit) edit = edit_set_survey (survey);
  Project *next = project_edit (project, edit, NULL);
  project_unref (project);
  g_auto (Judged) judged = judge (next);
  const Finding *finding = finding_of (&judged, "level-book");

  g_assert_nonnull (finding);
  g_assert_cmpstr (finding->text, ==,
                   "Level book: Row 5: no backsight stands before it, so the height of the "
                   "instrument is not known.");
}

/* Mends of other findings hold in the whole project, survey and all. */
static void
test_mends_beside_a_survey (void)
{
  g_auto (Judged) judged = judge (surveyed (0, 0, 0, 0));
  guint n = 0;

  for (guint i = 0; i < judged.findings->len; i++)
    {
      const Finding *finding = finding_at (&judged, i);
      g_autoptr (GError) error = NULL;

      if (finding->mend == NULL)
        continue;
      g_autoptr (Project) mended = project_edit (judged.project, finding->mend, &error);
      g_assert_no_error (error);
      g_assert_nonnull (mended->survey);
      n++;
    }
  g_assert_cmpuint (n, >, 0);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/findings/rows/said-and-mended", test_rows);
  g_test_add_func ("/findings/rows/mends-mend", test_mends_of_rows);
  g_test_add_func ("/findings/pins/not-met", test_pins_not_met);
  g_test_add_func ("/findings/pins/breach-of-a-pin", test_breach_of_a_pin);
  g_test_add_func ("/findings/footing/good", test_good_footing);
  g_test_add_func ("/findings/footing/closing-error", test_closing_error);
  g_test_add_func ("/findings/footing/bed-beyond-limits", test_bed_beyond_limits);
  g_test_add_func ("/findings/footing/out-of-square", test_out_of_square);
  g_test_add_func ("/findings/footing/level-book", test_level_book);
  g_test_add_func ("/findings/footing/mends-beside-a-survey", test_mends_beside_a_survey);
  g_test_add_func ("/findings/any-wall/mends-mend", test_mends);
  g_test_add_func ("/findings/any-wall/same-twice", test_same_twice);
  g_test_add_func ("/findings/a-lap-below-the-standard-is-told",
                   test_a_lap_below_the_standard_is_told);
  g_test_add_func ("/findings/an-opening-moved-too-far-is-told",
                   test_an_opening_moved_too_far_is_told);
  return g_test_run ();
}
