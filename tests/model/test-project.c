/* test-project.c - projects are values, found through by id and key */
#include <math.h>
#include <string.h>

#include "model/project.h"

static Opening
opening (guint32 id, const char *key, int x)
{
  return (Opening){
    .id.n = id,
    .key = g_strdup (key),
    .name = g_strdup (""),
    .x = LENGTH_MM (x),
    .width = LENGTH_MM (1000),
    .height = LENGTH_MM (1000),
  };
}

static Wall *
add_wall (Project *project, guint32 id, const char *key)
{
  Wall *wall = wall_new ();
  wall->id.n = id;
  wall->key = g_strdup (key);
  wall->block = project_block_at (project, 0)->id;
  g_ptr_array_add (project->walls, wall);
  return wall;
}

/* Block b1, walls w1 and w2, the second with o1 and o2. */
static Project *
small_project (void)
{
  Project *project = project_new ();
  add_wall (project, 10, "w1");
  Wall *wall = add_wall (project, 11, "w2");
  Opening first = opening (20, "o1", 0), second = opening (21, "o2", 2000);
  g_array_append_val (wall->openings, first);
  g_array_append_val (wall->openings, second);
  project->next = 30;
  return project;
}

static void
test_new (void)
{
  g_autoptr (Project) project = project_new ();
  g_assert_cmpuint (project->blocks->len, ==, 1);
  g_assert_cmpuint (project->walls->len, ==, 0);
  g_assert_cmpstr (project_block_at (project, 0)->key, ==, "b1");
  g_assert_cmpuint (project_block_at (project, 0)->id.n, >, 0);
  g_assert_cmpuint (project->next, >, project_block_at (project, 0)->id.n);
  g_assert_null (project->title);
  g_assert_null (project->date);
  g_autofree char *fault = project_fault (project);
  g_assert_cmpstr (fault, ==, NULL);
}

static void
test_lookups (void)
{
  g_autoptr (Project) project = small_project ();
  const Wall *first = project_wall_at (project, 0), *second = project_wall_at (project, 1);
  g_assert_true (project_wall (project, (WallId){ 10 }) == first);
  g_assert_true (project_wall (project, (WallId){ 11 }) == second);
  g_assert_null (project_wall (project, (WallId){ 20 }));
  g_assert_null (project_wall (project, (WallId){ 0 }));
  g_assert_true (project_wall_by_key (project, "w2") == second);
  g_assert_null (project_wall_by_key (project, "W2"));
  g_assert_null (project_wall_by_key (project, "o1"));
  g_assert_true (project_block (project, first->block) == project_block_at (project, 0));
  g_assert_null (project_block (project, (BlockId){ 10 }));
  g_assert_true (project_wall_of_opening (project, (OpeningId){ 21 }) == second);
  g_assert_null (project_wall_of_opening (project, (OpeningId){ 10 }));
}

static void
test_free_keys (void)
{
  static const struct
  {
    char kind;
    const char *key;
  } cases[] = { { 'w', "w3" }, { 'b', "b2" }, { 'o', "o3" }, { 'x', "x1" } };
  g_autoptr (Project) project = small_project ();
  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *key = project_free_key (project, cases[i].kind);
      g_assert_cmpstr (key, ==, cases[i].key);
    }
  /* Of whatever kind the thing is that has it; gaps are filled. */
  g_free (((Wall *) project_wall_at (project, 0))->key);
  ((Wall *) project_wall_at (project, 0))->key = g_strdup ("o3");
  g_autofree char *opening_key = project_free_key (project, 'o');
  g_autofree char *wall_key = project_free_key (project, 'w');
  g_assert_cmpstr (opening_key, ==, "o4");
  g_assert_cmpstr (wall_key, ==, "w1");
}

/* Walls are the same ones, everything else is the copy's. */
static void
test_copy_shares_walls (void)
{
  Project *project = small_project ();
  project->title = g_strdup ("Trial");
  project->foreign.elements = g_strdup ("<v:a/>");
  g_autoptr (Project) copy = project_copy (project);
  g_assert_true (project_equal (project, copy));
  g_assert_true (project_wall_at (project, 0) == project_wall_at (copy, 0));
  g_assert_true (project_block_at (project, 0) != project_block_at (copy, 0));
  g_assert_cmpuint (copy->next, ==, project->next);
  g_ptr_array_remove_index (copy->walls, 0);
  g_assert_cmpuint (project->walls->len, ==, 2);
  project->title[0] = 'x';
  project_unref (project);
  g_assert_cmpstr (copy->title, ==, "Trial");
  g_assert_cmpstr (copy->foreign.elements, ==, "<v:a/>");
  g_assert_cmpstr (project_wall_at (copy, 0)->key, ==, "w2");
}

static void
test_references (void)
{
  Project *project = small_project ();
  Project *again = project_ref (project);
  g_assert_true (again == project);
  project_unref (project);
  g_assert_cmpuint (again->walls->len, ==, 2);
  project_unref (again);
  project_unref (NULL);
}

/* The same content with other numbers for the ids, as from another history. */
static Project *
renumbered (void)
{
  Project *project = small_project ();
  Block *block = g_ptr_array_index (project->blocks, 0);
  block->id.n += 100;
  for (guint i = 0; i < project->walls->len; i++)
    {
      Wall *wall = g_ptr_array_index (project->walls, i);
      wall->id.n += 100;
      wall->block = block->id;
      for (guint k = 0; k < wall->openings->len; k++)
        g_array_index (wall->openings, Opening, k).id.n += 100;
    }
  return project;
}

static void
test_equal_by_content (void)
{
  g_autoptr (Project) a = small_project ();
  g_autoptr (Project) b = renumbered ();
  g_assert_true (project_equal (a, a));
  g_assert_true (project_equal (a, b));
  g_assert_true (project_equal (b, a));
}

static void
change (Project *project, int what)
{
  char **const heading[]
      = { &project->title, &project->client, &project->site, &project->author, &project->date };
  Block *block = g_ptr_array_index (project->blocks, 0);
  Wall *wall = g_ptr_array_index (project->walls, 1);
  if (what < 5)
    /* Empty is not left out. */
    *heading[what] = g_strdup ("");
  else if (what == 5)
    project->foreign.attributes = g_strdup ("v:a=\"1\"");
  else if (what == 6)
    block->height++;
  else if (what == 7)
    block->key[0] = 'c';
  else if (what == 8)
    wall->length++;
  else if (what == 9)
    g_array_index (wall->openings, Opening, 0).x++;
  else if (what == 10)
    g_ptr_array_remove_index (project->walls, 0);
  else if (what == 11)
    g_ptr_array_insert (project->walls, 0, g_ptr_array_steal_index (project->walls, 1));
  else if (what == 12)
    wall->block.n = 4711;
  else
    {
      g_free (wall->name);
      wall->name = g_strdup ("x");
    }
}

static void
test_equal_sees_everything (void)
{
  for (int what = 0; what <= 13; what++)
    {
      g_autoptr (Project) a = small_project ();
      g_autoptr (Project) b = small_project ();
      g_assert_true (project_equal (a, b));
      change (b, what);
      g_test_message ("change %d", what);
      g_assert_false (project_equal (a, b));
      g_assert_false (project_equal (b, a));
    }
}

/* Two blocks of the same size are two: a wall of the other one is another wall. */
static void
test_equal_sees_which_block (void)
{
  g_autoptr (Project) a = small_project ();
  Block second = block_copy (project_block_at (a, 0));
  second.id.n = 5;
  g_free (second.key);
  second.key = g_strdup ("b2");
  g_ptr_array_add (a->blocks, g_memdup2 (&second, sizeof second));
  g_autoptr (Project) b = project_copy (a);
  g_assert_true (project_equal (a, b));
  Wall *wall = wall_copy (project_wall_at (b, 0));
  wall->block.n = 5;
  wall_unref (g_ptr_array_index (b->walls, 0));
  g_ptr_array_index (b->walls, 0) = wall;
  g_assert_false (project_equal (a, b));
}

typedef struct
{
  const char *name;
  void (*spoil) (Project *project);
  const char *fault;
} Case;

static Wall *
second_wall (Project *project)
{
  return g_ptr_array_index (project->walls, 1);
}

static Block *
the_block (Project *project)
{
  return g_ptr_array_index (project->blocks, 0);
}

static void
leave (Project *project)
{
  (void) project;
}

static void
short_block (Project *project)
{
  the_block (project)->length = LENGTH_MM (19);
}

static void
high_block (Project *project)
{
  the_block (project)->height = LENGTH_MM (10001);
}

static void
thin_block (Project *project)
{
  the_block (project)->thickness = 0;
}

static void
weightless_block (Project *project)
{
  the_block (project)->density = 0;
}

static void
block_of_no_number (Project *project)
{
  the_block (project)->density = (double) NAN;
}

static void
heavy_block (Project *project)
{
  the_block (project)->density = 20000.1;
}

static void
block_of_no_strength (Project *project)
{
  the_block (project)->strength = -1;
}

static void
load_below_nothing (Project *project)
{
  Opening *opening = &g_array_index (second_wall (project)->openings, Opening, 0);

  opening->given |= OPENING_LINE_LOAD;
  opening->line_load = -0.001;
}

static void
all_but_weightless_block (Project *project)
{
  the_block (project)->density = 1e-7;
}

static void
title_with_a_bell (Project *project)
{
  g_free (project->title);
  project->title = g_strdup ("Shed\a");
}

static void
title_of_no_text (Project *project)
{
  g_free (project->title);
  project->title = g_strdup ("Shed \xff");
}

static void
endless_client (Project *project)
{
  g_free (project->client);
  project->client = g_strnfill (PROJECT_MAX_TEXT + 1, 'c');
}

static void
name_with_a_noncharacter (Project *project)
{
  g_free (the_block (project)->name);
  the_block (project)->name = g_strdup ("Block \xef\xbf\xbf");
}

static void
no_key (Project *project)
{
  g_clear_pointer (&second_wall (project)->key, g_free);
}

static void
empty_key (Project *project)
{
  the_block (project)->key[0] = '\0';
}

static void
wall_key_twice (Project *project)
{
  second_wall (project)->key[1] = '1';
}

static void
key_of_block_on_opening (Project *project)
{
  g_array_index (second_wall (project)->openings, Opening, 1).key[0] = 'b';
  g_array_index (second_wall (project)->openings, Opening, 1).key[1] = '1';
}

static void
no_block (Project *project)
{
  second_wall (project)->block.n = 0;
}

static void
bad_wall (Project *project)
{
  second_wall (project)->height = LENGTH_MM (900);
}

static void
bad_wall_with_name (Project *project)
{
  bad_wall (project);
  g_free (second_wall (project)->name);
  second_wall (project)->name = g_strdup ("Yard side");
}

static void
too_many_blocks (Project *project)
{
  while (project->blocks->len <= PROJECT_MAX_BLOCKS)
    {
      Block block = block_default ();
      block.key = g_strdup_printf ("x%u", project->blocks->len);
      g_ptr_array_add (project->blocks, g_memdup2 (&block, sizeof block));
    }
}

static void
too_many_walls (Project *project)
{
  for (guint32 i = project->walls->len; i <= PROJECT_MAX_WALLS; i++)
    {
      g_autofree char *key = g_strdup_printf ("x%u", i);
      add_wall (project, 100 + i, key);
    }
}

static const Case cases[] = {
  { "none", leave, NULL },
  { "block-too-short", short_block,
    "Block \"b1\": its length is 19 mm; it must be from 20 to 10000 mm." },
  { "block-too-high", high_block,
    "Block \"b1\": its height is 10001 mm; it must be from 20 to 10000 mm." },
  { "block-too-thin", thin_block,
    "Block \"b1\": its thickness is 0 mm; it must be from 20 to 10000 mm." },
  { "block-without-weight", weightless_block,
    "Block \"b1\": its density must be above 0 and at most 20000 kg/m³." },
  { "block-of-no-number", block_of_no_number,
    "Block \"b1\": its density must be above 0 and at most 20000 kg/m³." },
  { "block-too-heavy", heavy_block,
    "Block \"b1\": its density must be above 0 and at most 20000 kg/m³." },
  { "block-of-no-strength", block_of_no_strength,
    "Block \"b1\": its strength must be from 0 to 100 N/mm²." },
  { "load-below-nothing", load_below_nothing,
    "Wall w2: The load over opening o1 must be from 0 to 1000 kN/m." },
  { "block-all-but-weightless", all_but_weightless_block,
    "Block \"b1\": its density must be above 0 and at most 20000 kg/m³." },
  { "title-with-a-bell", title_with_a_bell, "The title has a character that a file cannot hold." },
  { "title-of-no-text", title_of_no_text, "The title has a character that a file cannot hold." },
  { "endless-client", endless_client, "The client is longer than 10000 characters." },
  { "name-with-a-noncharacter", name_with_a_noncharacter,
    "A block's name has a character that a file cannot hold." },
  { "no-key", no_key, "Something in the project has no id." },
  { "empty-key", empty_key, "Something in the project has no id." },
  { "key-twice", wall_key_twice, "The id \"w1\" is used twice." },
  { "key-of-two-kinds", key_of_block_on_opening, "The id \"b1\" is used twice." },
  { "wall-without-block", no_block, "Wall w2: its block is not in the project." },
  { "wall", bad_wall, "Wall w2: Opening o1 leaves the wall by 100 mm at the top." },
  { "wall-by-its-name", bad_wall_with_name,
    "Wall Yard side: Opening o1 leaves the wall by 100 mm at the top." },
  { "too-many-blocks", too_many_blocks, "The project has 1001 blocks; at most 1000 are allowed." },
  { "too-many-walls", too_many_walls, "The project has 10001 walls; at most 10000 are allowed." },
};

static void
test_fault (gconstpointer data)
{
  const Case *one = data;
  g_autoptr (Project) project = small_project ();
  one->spoil (project);
  g_autofree char *fault = project_fault (project);
  g_assert_cmpstr (fault, ==, one->fault);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/project/new", test_new);
  g_test_add_func ("/project/lookups", test_lookups);
  g_test_add_func ("/project/free-keys", test_free_keys);
  g_test_add_func ("/project/copy-shares-walls", test_copy_shares_walls);
  g_test_add_func ("/project/references", test_references);
  g_test_add_func ("/project/equal-by-content", test_equal_by_content);
  g_test_add_func ("/project/equal-sees-everything", test_equal_sees_everything);
  g_test_add_func ("/project/equal-sees-which-block", test_equal_sees_which_block);
  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *path = g_strconcat ("/project/fault/", cases[i].name, NULL);
      g_test_add_data_func (path, &cases[i], test_fault);
    }
  return g_test_run ();
}
