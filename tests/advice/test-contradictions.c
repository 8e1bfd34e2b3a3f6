/* test-contradictions.c - what cannot be kept together is said once, with its mend, and the wall is
 * laid all the same with the fewest breaches */
#include "advice/findings.h"
#include "bond/lay.h"

#include "any-wall.h"
#include "check-layout.h"

typedef struct
{
  const char *rule;
  void (*ask) (Laying *laying, gboolean too_much);
  const char *text; /* of the default block, 600 x 200 mm, with joints of 2 mm */
  const char *mend;
  gint32
      breaches; /* of a wall of two units, five courses high, with nothing else in it; -1: none */
} Row;

static void
ask_piece (Laying *laying, gboolean too_much)
{
  laying->given |= LAYING_MIN_PIECE;
  laying->min_piece = LENGTH_MM (600 + too_much);
}

static void
ask_strip (Laying *laying, gboolean too_much)
{
  laying->given |= LAYING_MIN_RIP;
  laying->min_rip = LENGTH_MM (200 + too_much);
}

static void
ask_rule (Laying *laying, RuleKind kind, Keep keep, gint32 value)
{
  laying->rules[kind].keep = keep;
  laying->rules[kind].has_value = TRUE;
  laying->rules[kind].value = value;
}

static void
ask_bearing (Laying *laying, gboolean too_much)
{
  ask_rule (laying, RULE_BEARING, KEEP_MUST, LENGTH_MM (600) + too_much * LENGTH_MM (50));
}

static void
ask_jamb_line (Laying *laying, gboolean too_much)
{
  ask_rule (laying, RULE_JAMB_LINE, KEEP_MUST, LENGTH_MM (301) + too_much * LENGTH_MM (1));
}

static void
ask_wanted_lap (Laying *laying, gboolean too_much)
{
  ask_rule (laying, RULE_LAP, KEEP_PREFER, 4);
  laying->given |= LAYING_MIN_LAP;
  laying->min_lap = LENGTH_MM (150) + LENGTH_MM (1) / 2 + too_much * LENGTH_MM (1);
}

static const Row rows[] = {
  { "piece-too-long", ask_piece,
    "A shortest piece of 601 mm is longer than the block, 600 mm: no piece can keep to it.",
    "Allow pieces of a quarter of the block", 12 },
  { "strip-too-high", ask_strip,
    "A thinnest strip of 201 mm is higher than the block, 200 mm: no piece can keep to it.",
    "Allow strips of a quarter of the block", 12 },
  { "bearing-too-long", ask_bearing,
    "A lintel's bearing of 650 mm is longer than the block, 600 mm: no block reaches past it. What "
    "a lintel needs, the local code and a licensed engineer decide.",
    "Ask for 600 mm, a whole block", 0 },
  { "jamb-line-too-far", ask_jamb_line,
    "Perpends cannot keep 302 mm from the lines of jambs: a block over a jamb reaches 301 mm to "
    "both sides at most.",
    "Ask for 301 mm", 0 },
  { "wanted-lap-short", ask_wanted_lap,
    "The wanted lap, 150.5 mm, is less than the least lap, 151.5 mm.", "Want half bond", 0 },
};

static const Finding *
find (const GPtrArray *findings, const char *rule, guint *n)
{
  const Finding *found = NULL;
  *n = 0;
  for (guint i = 0; i < findings->len; i++)
    {
      const Finding *finding = g_ptr_array_index (findings, i);
      if (!g_str_equal (finding->rule, rule))
        continue;
      found = finding;
      ++*n;
    }
  return found;
}

/* A project of one wall of `length` mm and five courses in the default block. */
static Project *
project_with (const Row *row, gboolean too_much, int length)
{
  g_autoptr (Project) empty = project_new ();
  g_autoptr (Wall) wall = wall_new ();
  wall->length = LENGTH_MM (length);
  wall->height = LENGTH_MM (20 + 5 * 202 - 2);
  wall->block = project_block_at (empty, 0)->id;
  row->ask (&wall->laying, too_much);
  g_autoptr (Edit) edit = edit_add_wall (wall);
  Project *project = project_edit (empty, edit, NULL);
  g_assert_nonnull (project);
  return project;
}

static Layout *
lay_soundly (const Project *project)
{
  const Wall *wall = project_wall_at (project, project->walls->len - 1);
  const Block *block = project_block (project, wall->block);
  Layout *layout = lay_wall (wall, block, NULL);
  g_autofree char *wrong = check_layout (wall, block, layout);
  g_assert_cmpstr (wrong, ==, NULL);
  return layout;
}

static void
test_rows (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (Project) right = project_with (&rows[i], FALSE, 1202);
      g_autoptr (Project) wrong = project_with (&rows[i], TRUE, 1202);
      guint last = wrong->walls->len - 1, n;
      g_autoptr (Layout) well = lay_soundly (right), badly = lay_soundly (wrong);
      g_autoptr (GPtrArray) none = findings_of_wall (right, project_wall_at (right, last), well);
      g_autoptr (GPtrArray) some = findings_of_wall (wrong, project_wall_at (wrong, last), badly);
      g_assert_null (find (none, rows[i].rule, &n));
      const Finding *finding = find (some, rows[i].rule, &n);
      g_assert_cmpuint (n, ==, 1);
      g_assert_cmpint (finding->severity, ==, SEVERITY_WARNING);
      g_assert_cmpstr (finding->text, ==, rows[i].text);
      g_assert_cmpstr (finding->mend_text, ==, rows[i].mend);
      g_assert_cmpint (badly->proof.breaches, ==, rows[i].breaches);
      /* Mended, it is said no more. */
      g_autoptr (Project) mended = project_edit (wrong, finding->mend, NULL);
      g_autoptr (Layout) again = lay_soundly (mended);
      g_autoptr (GPtrArray) after
          = findings_of_wall (mended, project_wall_at (mended, last), again);
      g_assert_null (find (after, rows[i].rule, &n));
    }
}

/* Whatever cannot be kept together: made-up walls are laid, and what is told of them holds. */
static void
test_any (void)
{
  for (guint64 seed = 0; seed < 150; seed++)
    {
      g_auto (AnyWall) any = any_wall (seed);
      AnyRandom random = { seed };
      for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
        if (any_percent (&random, 50))
          rows[i].ask (&any.wall->laying, TRUE);
      if (any.wall->laying.min_lap > any.block.length)
        any.wall->laying.min_lap = any.block.length;
      if (any_percent (&random, 30))
        {
          any.wall->laying.given |= LAYING_MIN_LAP;
          any.wall->laying.min_lap = any.block.length;
        }
      g_autofree char *fault = wall_fault (any.wall, &any.block, NULL);
      g_assert_cmpstr (fault, ==, NULL);
      g_autoptr (Layout) layout = lay_wall (any.wall, &any.block, NULL);
      g_autofree char *wrong = check_layout (any.wall, &any.block, layout);
      g_assert_cmpstr (wrong, ==, NULL);
    }
}

/* A wall of ten units with one window: symmetrical about the middle or not. */
static Project *
symmetrical_project (Length x, gboolean corner)
{
  g_autoptr (Project) empty = project_new ();
  g_autoptr (Wall) wall = wall_new ();
  Opening opening = opening_default (OPENING_WINDOW);
  opening.key = g_strdup ("o1");
  g_free (opening.name);
  opening.name = g_strdup ("Kitchen");
  opening.x = x;
  wall->length = LENGTH_MM (6018);
  wall->height = LENGTH_MM (2440);
  wall->block = project_block_at (empty, 0)->id;
  wall->laying.rules[RULE_SYMMETRY_WALL].keep = KEEP_MUST;
  if (corner)
    wall->ends[SIDE_RIGHT] = (End){
      .given = TRUE, .has_return = TRUE, .ret = LENGTH_MM (300), .through = THROUGH_EVEN
    };
  g_autoptr (Edit) add = edit_add_wall (wall);
  g_autoptr (Project) with = project_edit (empty, add, NULL);
  g_autoptr (Edit) open
      = edit_add_opening (project_wall_at (with, with->walls->len - 1)->id, &opening);
  Project *project = project_edit (with, open, NULL);
  g_assert_nonnull (project);
  opening_clear (&opening);
  return project;
}

static void
test_symmetry (void)
{
  static const struct
  {
    Length x;
    gboolean corner;
    const char *text;
  } cases[] = {
    { LENGTH_MM (2409), FALSE, NULL },
    { LENGTH_MM (2409) + LENGTH_MM (1) / 2, FALSE, NULL }, /* it is 1 mm from its image */
    { LENGTH_MM (2420), FALSE,
      "The bond is to be symmetrical, but Kitchen has no opening like it across the wall's middle: "
      "perpends mirror each other only where there is wall on both sides." },
    { LENGTH_MM (2409), TRUE,
      "The bond is to be symmetrical, but other walls meet this one otherwise on one side of its "
      "middle than on the other: perpends mirror each other only where there is wall on both." },
  };
  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (Project) project = symmetrical_project (cases[i].x, cases[i].corner);
      g_autoptr (Layout) layout = lay_soundly (project);
      const Wall *wall = project_wall_at (project, project->walls->len - 1);
      g_autoptr (GPtrArray) findings = findings_of_wall (project, wall, layout);
      guint n;
      const Finding *finding = find (findings, "symmetry-off", &n);
      g_assert_cmpuint (n, ==, cases[i].text != NULL);
      if (n == 1)
        {
          g_assert_cmpstr (finding->text, ==, cases[i].text);
          g_assert_cmpint (finding->severity, ==, SEVERITY_NOTE);
        }
      /* Whatever can be mirrored is. */
      g_assert_cmpint (layout->proof.breaches, ==, 0);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/contradictions/rows", test_rows);
  g_test_add_func ("/contradictions/any", test_any);
  g_test_add_func ("/contradictions/symmetry", test_symmetry);
  return g_test_run ();
}
