/* test-block.c - blocks, openings and what others said of them are values: copied, compared */
#include <string.h>

#include "model/block.h"
#include "model/finding.h"
#include "model/opening.h"

static void
test_default_block (void)
{
  Block block = block_default ();
  g_assert_cmpuint (block.id.n, ==, 0);
  g_assert_null (block.key);
  g_assert_cmpstr (block.name, ==, "Large block");
  g_assert_cmpint (block.length, ==, LENGTH_MM (600));
  g_assert_cmpint (block.height, ==, LENGTH_MM (200));
  g_assert_cmpint (block.thickness, ==, LENGTH_MM (250));
  g_assert_cmpfloat (block.density, ==, 500);
  block_clear (&block);
}

/* 0.6 x 0.2 x 0.25 m is 0.03 m3; at 500 kg/m3 that is 15 kg. */
static void
test_mass (void)
{
  Block block = block_default ();
  g_assert_cmpfloat_with_epsilon (block_mass (&block), 15, 1e-9);
  block.length = LENGTH_MM (1000);
  block.height = LENGTH_MM (1000);
  block.thickness = LENGTH_MM (1000);
  block.density = 2000;
  g_assert_cmpfloat_with_epsilon (block_mass (&block), 2000, 1e-9);
  block_clear (&block);
}

static Block
any_block (void)
{
  Block block = block_default ();
  block.id.n = 7;
  block.key = g_strdup ("b7");
  block.foreign.attributes = g_strdup ("v:a=\"1\"");
  block.foreign.elements = g_strdup ("<v:b/>");
  return block;
}

static void
test_block_copy_is_its_own (void)
{
  Block a = any_block ();
  Block b = block_copy (&a);
  g_assert_true (block_equal (&a, &b));
  g_assert_true (a.key != b.key && a.name != b.name);
  g_assert_true (a.foreign.attributes != b.foreign.attributes);
  block_clear (&a);
  g_assert_null (a.key);
  g_assert_cmpstr (b.key, ==, "b7");
  block_clear (&b);
  /* Twice does no harm. */
  block_clear (&b);
}

/* Each field in turn. */
static void
test_block_equal_sees_everything (void)
{
  for (int field = 0; field < 11; field++)
    {
      Block a = any_block (), b = any_block ();
      g_assert_true (block_equal (&a, &b));
      switch (field)
        {
        case 0:
          b.id.n++;
          break;
        case 1:
          b.key[0] = 'c';
          break;
        case 2:
          b.name[0] = 'c';
          break;
        case 3:
          b.length++;
          break;
        case 4:
          b.height++;
          break;
        case 5:
          b.thickness++;
          break;
        case 6:
          b.density += 1e-9;
          break;
        case 7:
          b.foreign.attributes[0] = 'w';
          break;
        case 8:
          b.foreign.elements[1] = 'w';
          break;
        case 9:
          b.strength += 0.1;
          break;
        default:
          g_clear_pointer (&b.foreign.elements, g_free);
        }
      g_assert_false (block_equal (&a, &b));
      g_assert_false (block_equal (&b, &a));
      block_clear (&a);
      block_clear (&b);
    }
}

static void
test_name_is_never_null (void)
{
  Block block = { .key = (char *) "b1" };
  Opening opening = { .key = (char *) "o1" };
  Block block_again = block_copy (&block);
  Opening opening_again = opening_copy (&opening);
  g_assert_cmpstr (block_again.name, ==, "");
  g_assert_cmpstr (opening_again.name, ==, "");
  block_clear (&block_again);
  opening_clear (&opening_again);
}

static const struct
{
  OpeningKind kind;
  const char *word;
  int width, sill, height;
} kinds[] = {
  { OPENING_WINDOW, "window", 1200, 900, 1200 },
  { OPENING_DOOR, "door", 900, 0, 2100 },
  { OPENING_VOID, "void", 600, 900, 600 },
};

static void
test_kinds_of_openings (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (kinds); i++)
    {
      Opening opening = opening_default (kinds[i].kind);
      OpeningKind kind = (OpeningKind) ((i + 1) % 3);
      g_assert_cmpstr (opening_kind_word (kinds[i].kind), ==, kinds[i].word);
      g_assert_true (opening_kind_from_word (kinds[i].word, &kind));
      g_assert_cmpint (kind, ==, kinds[i].kind);
      g_assert_cmpint (opening.kind, ==, kinds[i].kind);
      g_assert_cmpuint (opening.id.n, ==, 0);
      g_assert_null (opening.key);
      g_assert_cmpstr (opening.name, ==, "");
      g_assert_cmpint (opening.x, ==, 0);
      g_assert_cmpint (opening_right (&opening), ==, LENGTH_MM (kinds[i].width));
      g_assert_cmpint (opening.sill, ==, LENGTH_MM (kinds[i].sill));
      g_assert_cmpint (opening_head (&opening), ==, LENGTH_MM (kinds[i].sill + kinds[i].height));
      opening_clear (&opening);
    }
  OpeningKind kind = OPENING_DOOR;
  g_assert_false (opening_kind_from_word ("Window", &kind));
  g_assert_false (opening_kind_from_word ("", &kind));
  g_assert_cmpint (kind, ==, OPENING_DOOR);
}

static Opening
any_opening (void)
{
  Opening opening = opening_default (OPENING_WINDOW);
  opening.id.n = 3;
  opening.key = g_strdup ("o3");
  g_free (opening.name);
  opening.name = g_strdup ("W1");
  opening.foreign.attributes = g_strdup ("v:a=\"1\"");
  return opening;
}

/* Moved, it remembers where it was drawn; back there, it has nothing to remember. */
static void
test_opening_remembers_where_it_was_drawn (void)
{
  Opening opening = any_opening ();
  const Length drawn = opening.x;

  opening.given = OPENING_MAY_MOVE;
  opening.may_move = LENGTH_MM (50);
  opening_move (&opening, drawn + LENGTH_MM (20));
  opening_move (&opening, drawn + LENGTH_MM (30));
  g_assert_cmpint (opening.x, ==, drawn + LENGTH_MM (30));
  g_assert_cmpint (opening_drawn_x (&opening), ==, drawn);
  opening_shift (&opening, LENGTH_MM (5));
  g_assert_cmpint (opening_drawn_x (&opening), ==, drawn + LENGTH_MM (5));
  opening_move (&opening, drawn + LENGTH_MM (5));
  g_assert_cmpuint (opening.given, ==, OPENING_MAY_MOVE);
  opening_clear (&opening);
}

static void
test_opening_equal_sees_everything (void)
{
  for (int field = 0; field < 19; field++)
    {
      Opening a = any_opening ();
      Opening b = opening_copy (&a);
      g_assert_true (opening_equal (&a, &b));
      Length *const lengths[] = { &b.x, &b.width, &b.sill, &b.height };
      if (field < 4)
        ++*lengths[field];
      else if (field == 4)
        b.id.n++;
      else if (field == 5)
        b.key[0] = 'p';
      else if (field == 6)
        b.name[0] = 'w';
      else if (field == 7)
        b.kind = OPENING_VOID;
      else if (field == 8)
        b.foreign.attributes[0] = 'w';
      else if (field == 9)
        b.foreign.elements = g_strdup ("<w/>");
      else if (field == 10)
        b.given = OPENING_MAY_MOVE;
      else if (field == 11)
        {
          b.given = OPENING_DRAWN_X;
          b.drawn_x = b.x + 1;
        }
      else if (field == 12)
        b.given = OPENING_PLANNED_SILL;
      else if (field == 17)
        b.given = OPENING_LINE_LOAD;
      else if (field == 18)
        {
          a.given = b.given = OPENING_LINE_LOAD;
          b.line_load = 0.5;
        }
      else
        {
          Length *const planned[]
              = { &b.planned_x, &b.planned_width, &b.planned_sill, &b.planned_height };

          a.given = b.given = OPENING_PLANNED_X << (field - 13);
          ++*planned[field - 13];
        }
      g_assert_false (opening_equal (&a, &b));
      g_assert_false (opening_equal (&b, &a));
      opening_clear (&a);
      opening_clear (&b);
    }
}

/* The words of `check --json`. */
static void
test_severities (void)
{
  g_assert_cmpstr (severity_word (SEVERITY_BREACH), ==, "breach");
  g_assert_cmpstr (severity_word (SEVERITY_WARNING), ==, "warning");
  g_assert_cmpstr (severity_word (SEVERITY_NOTE), ==, "note");
}

static void
test_finding_is_freed_with_its_mend (void)
{
  Finding *finding = g_new0 (Finding, 1);
  finding->text = g_strdup ("x");
  finding->mend_text = g_strdup ("y");
  finding->mend = edit_remove_wall ((WallId){ 1 });
  finding_free (finding);
  finding_free (NULL);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/block/default", test_default_block);
  g_test_add_func ("/block/mass", test_mass);
  g_test_add_func ("/block/copy-is-its-own", test_block_copy_is_its_own);
  g_test_add_func ("/block/equal-sees-everything", test_block_equal_sees_everything);
  g_test_add_func ("/block/name-is-never-null", test_name_is_never_null);
  g_test_add_func ("/opening/kinds", test_kinds_of_openings);
  g_test_add_func ("/opening/remembers-where-it-was-drawn",
                   test_opening_remembers_where_it_was_drawn);
  g_test_add_func ("/opening/equal-sees-everything", test_opening_equal_sees_everything);
  g_test_add_func ("/finding/severities", test_severities);
  g_test_add_func ("/finding/is-freed-with-its-mend", test_finding_is_freed_with_its_mend);
  return g_test_run ();
}
