/* test-wall.c - walls are values */
#include <string.h>

#include "model/wall.h"

static Opening
opening (const char *key, int x, int width)
{
  return (Opening){
    .id.n = (guint32) x + 1,
    .key = g_strdup (key),
    .name = g_strdup (key),
    .kind = OPENING_WINDOW,
    .x = LENGTH_MM (x),
    .width = LENGTH_MM (width),
    .sill = LENGTH_MM (900),
    .height = LENGTH_MM (1000),
  };
}

static void
add_opening (Wall *wall, Opening what)
{
  g_array_append_val (wall->openings, what);
}

static void
add_steel_row (Wall *wall, gint32 course, gboolean omit)
{
  SteelRow row = { course, omit, { g_strdup ("v:a=\"1\""), NULL } };
  g_array_append_val (wall->steel_rows, row);
}

static void
add_pin (Wall *wall, gint32 course, int x, int length)
{
  Pin pin = { course, LENGTH_MM (x), LENGTH_MM (length), { g_strdup ("v:f=\"1\""), NULL } };
  g_array_append_val (wall->pins, pin);
}

/* A wall that has something of everything. */
static Wall *
full_wall (void)
{
  Wall *wall = wall_new ();
  wall->id.n = 5;
  wall->key = g_strdup ("w5");
  g_free (wall->name);
  wall->name = g_strdup ("Street side");
  wall->block.n = 1;
  wall->place = (PlanPlace){ TRUE, LENGTH_MM (100), LENGTH_MM (200), RUNS_NORTH };
  wall->laying.given = LAYING_BED;
  wall->laying.element = TRUE;
  wall->laying.bed = LENGTH_MM (3);
  wall->laying.foreign.attributes = g_strdup ("v:b=\"1\"");
  wall->ends[SIDE_LEFT]
      = (End){ TRUE, LENGTH_MM (250), TRUE, TRUE, { g_strdup ("v:c=\"1\""), NULL } };
  wall->ends[SIDE_RIGHT].given = TRUE;
  Tee tee = { LENGTH_MM (3000), LENGTH_MM (115), THROUGH_EVEN, { g_strdup ("v:t=\"1\""), NULL } };
  g_array_append_val (wall->tees, tee);
  MovementJoint joint
      = { LENGTH_MM (3500), LENGTH_MM (12), g_strdup ("foam"), { g_strdup ("v:m=\"1\""), NULL } };
  g_array_append_val (wall->movement_joints, joint);
  wall->steel.given = TRUE;
  wall->steel.set = STEEL_EVERY;
  wall->steel.every = 4;
  wall->steel.foreign.elements = g_strdup ("<v:d/>");
  add_steel_row (wall, 3, FALSE);
  add_steel_row (wall, 8, TRUE);
  add_pin (wall, 2, 1800, 0);
  add_pin (wall, 5, 600, 450);
  add_opening (wall, opening ("o1", 500, 1000));
  add_opening (wall, opening ("o2", 2500, 1000));
  wall->foreign.elements = g_strdup ("<v:e/>");
  wall->built = built_new ();
  wall->built->courses = 1;
  wall->built->given = BUILT_PLANNED_LENGTH | BUILT_PLUMB | BUILT_BOW | BUILT_BOW_METRE
                       | BUILT_BED_LEAST | BUILT_BED_MOST;
  wall->built->planned_length = LENGTH_MM (5990);
  wall->built->as_of = g_strdup ("2026-05-04");
  wall->built->foreign.attributes = g_strdup ("v:s=\"1\"");
  LaidCourse laid = laid_course_new (1);
  LaidPerpend perpend = { LENGTH_MM (600), LENGTH_MM (100) };
  g_array_append_val (laid.perpends, perpend);
  laid.given = LAID_OVER | LAID_BOTTOM | LAID_TOP | LAID_TOP_RIGHT;
  laid.foreign.attributes = g_strdup ("v:l=\"1\"");
  g_array_append_val (wall->built->laid, laid);
  return wall;
}

static void
test_new (void)
{
  g_autoptr (Wall) wall = wall_new ();
  g_assert_cmpint (wall->length, ==, LENGTH_MM (6000));
  g_assert_cmpint (wall->height, ==, LENGTH_MM (2500));
  g_assert_cmpstr (wall->name, ==, "");
  g_assert_null (wall->key);
  g_assert_cmpuint (wall->id.n, ==, 0);
  g_assert_cmpuint (wall->block.n, ==, 0);
  g_assert_cmpuint (wall->openings->len, ==, 0);
  g_assert_cmpuint (wall->steel_rows->len, ==, 0);
  g_assert_cmpuint (wall->pins->len, ==, 0);
  g_assert_false (wall->steel.given);
  g_assert_false (wall->laying.element);
  g_assert_false (wall->ends[SIDE_LEFT].given || wall->ends[SIDE_RIGHT].given);
  g_autofree char *fault = wall_fault (wall, NULL, NULL);
  g_assert_cmpstr (fault, ==, NULL);
}

/* The contract of the file format. */
static void
test_steel_default (void)
{
  Steel steel = steel_default ();
  g_assert_false (steel.given);
  g_assert_cmpint (steel.bars, ==, 2);
  g_assert_cmpint (steel.diameter, ==, LENGTH_MM (6));
  g_assert_cmpint (steel.every, ==, 0);
  g_assert_false (steel.under_sills);
  g_assert_false (steel.over_heads);
  g_assert_cmpint (steel.past, ==, LENGTH_MM (600));
  g_assert_cmpint (steel.lap, ==, LENGTH_MM (300));
  g_assert_cmpuint (steel.set, ==, 0);
}

/* Nothing of the copy is the first one's: a change of either is not seen in the other. */
static void
test_copy_is_its_own (void)
{
  Wall *wall = full_wall ();
  g_autoptr (Wall) copy = wall_copy (wall);
  g_autoptr (Wall) same = full_wall ();
  g_assert_true (wall_equal (wall, copy));
  wall->key[0] = 'x';
  wall->name[0] = 'x';
  wall->laying.foreign.attributes[0] = 'x';
  wall->ends[SIDE_LEFT].foreign.attributes[0] = 'x';
  wall->steel.foreign.elements[0] = 'x';
  wall->foreign.elements[0] = 'x';
  g_array_index (wall->steel_rows, SteelRow, 0).foreign.attributes[0] = 'x';
  g_array_index (wall->pins, Pin, 0).foreign.attributes[0] = 'x';
  wall->built->as_of[0] = 'x';
  wall->built->foreign.attributes[0] = 'x';
  g_array_index (wall->built->laid, LaidCourse, 0).foreign.attributes[0] = 'x';
  g_array_index (wall->openings, Opening, 0).key[0] = 'x';
  g_array_set_size (wall->openings, 1);
  wall_unref (wall);
  g_assert_true (wall_equal (copy, same));
}

static void
test_references (void)
{
  Wall *wall = full_wall ();
  Wall *again = wall_ref (wall);
  g_assert_true (again == wall);
  wall_unref (wall);
  g_assert_cmpstr (again->key, ==, "w5");
  wall_unref (again);
  wall_unref (NULL);
}

/* Every change of one thing. */
static void
change (Wall *wall, guint what)
{
  SteelRow *row = &g_array_index (wall->steel_rows, SteelRow, 1);
  Opening *last = &g_array_index (wall->openings, Opening, 1);
  Pin *pin = &g_array_index (wall->pins, Pin, 1);
  Tee *tee = &g_array_index (wall->tees, Tee, 0);
  MovementJoint *joint = &g_array_index (wall->movement_joints, MovementJoint, 0);
  End *left = &wall->ends[SIDE_LEFT];
  LaidCourse *laid = &g_array_index (wall->built->laid, LaidCourse, 0);
  gint32 *const numbers[] = {
    &wall->length,
    &wall->height,
    &wall->laying.bed,
    &left->ret,
    &wall->steel.bars,
    &wall->steel.diameter,
    &wall->steel.every,
    &wall->steel.past,
    &wall->steel.lap,
    &row->course,
    &last->x,
    &last->height,
    &pin->course,
    &pin->x,
    &pin->length,
    (gint32 *) &left->through,
    &wall->place.x,
    &wall->place.y,
    (gint32 *) &wall->place.runs,
    &tee->x,
    &tee->ret,
    (gint32 *) &tee->through,
    &joint->x,
    &joint->width,
    &wall->built->courses,
    &wall->built->planned_length,
    &wall->built->plumb,
    &wall->built->bow,
    &wall->built->bow_metre,
    &wall->built->bed_least,
    &wall->built->bed_most,
    &laid->course,
    &laid->over,
    &laid->bottom,
    &laid->top,
    &laid->top_right,
    &g_array_index (laid->perpends, LaidPerpend, 0).x,
    &g_array_index (laid->perpends, LaidPerpend, 0).z,
  };
  gboolean *const flags[] = {
    &left->given,
    &wall->place.given,
    &left->has_return,
    &wall->ends[SIDE_RIGHT].given,
    &wall->ends[SIDE_RIGHT].has_return,
    &wall->steel.given,
    &wall->steel.under_sills,
    &wall->steel.over_heads,
    &row->omit,
    &wall->laying.element,
  };
  char **const texts[] = {
    &wall->key,
    &wall->name,
    &wall->laying.foreign.attributes,
    &left->foreign.attributes,
    &tee->foreign.attributes,
    &joint->filler,
    &joint->foreign.attributes,
    &wall->steel.foreign.elements,
    &row->foreign.attributes,
    &last->key,
    &wall->foreign.elements,
    &pin->foreign.attributes,
    &wall->built->as_of,
    &wall->built->foreign.attributes,
    &laid->foreign.attributes,
  };
  guint32 *const words[] = {
    &wall->id.n, &wall->block.n,      &wall->laying.given, &wall->steel.set,
    &last->id.n, &wall->built->given, &laid->given,
  };
  if (what < G_N_ELEMENTS (numbers))
    ++*numbers[what];
  else if ((what -= (guint) G_N_ELEMENTS (numbers)) < G_N_ELEMENTS (flags))
    *flags[what] = !*flags[what];
  else if ((what -= (guint) G_N_ELEMENTS (flags)) < G_N_ELEMENTS (texts))
    (*texts[what])[0]++;
  else if ((what -= (guint) G_N_ELEMENTS (texts)) < G_N_ELEMENTS (words))
    *words[what] ^= 1;
  else if ((what -= (guint) G_N_ELEMENTS (words)) == 0)
    g_array_remove_index (wall->openings, 0);
  else if (what == 1)
    g_array_remove_index (wall->pins, 1);
  else if (what == 2)
    g_clear_pointer (&wall->built, built_free);
  else
    g_array_remove_index (wall->steel_rows, 1);
}

/* Numbers, flags, texts, words, and a thing less in three lists. */
#define CHANGES (39 + 10 + 15 + 7 + 4)

static void
test_equal_sees_everything (void)
{
  for (guint what = 0; what < CHANGES; what++)
    {
      g_autoptr (Wall) a = full_wall ();
      g_autoptr (Wall) b = full_wall ();
      g_assert_true (wall_equal (a, b));
      change (b, what);
      g_test_message ("change %u", what);
      g_assert_false (wall_equal (a, b));
      g_assert_false (wall_equal (b, a));
    }
}

/* What is not written cannot differ. */
static void
test_equal_passes_by_what_is_not_said (void)
{
  g_autoptr (Wall) a = wall_new ();
  g_autoptr (Wall) b = wall_new ();
  b->laying.kerf = 99;
  b->ends[SIDE_LEFT].ret = 99;
  b->ends[SIDE_LEFT].through = THROUGH_ODD;
  b->steel.every = 99;
  g_assert_true (wall_equal (a, b));
}

static void
test_opening_by_id (void)
{
  g_autoptr (Wall) wall = full_wall ();
  g_assert_true (wall_opening (wall, (OpeningId){ 2501 }) == wall_opening_at (wall, 1));
  g_assert_true (wall_opening (wall, (OpeningId){ 501 }) == wall_opening_at (wall, 0));
  g_assert_null (wall_opening (wall, (OpeningId){ 4711 }));
  g_assert_null (wall_opening (wall, (OpeningId){ 0 }));
}

static void
test_steel_row_of_a_course (void)
{
  g_autoptr (Wall) wall = full_wall ();
  for (gint32 course = 0; course < 20; course++)
    g_assert_cmpint (wall_steel_row (wall, course), ==, course == 3 ? 1 : course == 8 ? -1 : 0);
}

/* One pin at a place: a second one there takes the first one's turn in the list. */
static void
test_pins (void)
{
  g_autoptr (Wall) wall = full_wall ();
  Pin longer = { 2, LENGTH_MM (1800), LENGTH_MM (300), { NULL, NULL } };
  Pin other = { 2, LENGTH_MM (1801), 0, { NULL, NULL } };
  g_assert_null (wall_pin (wall, 2, LENGTH_MM (1801)));
  g_assert_null (wall_pin (wall, 5, LENGTH_MM (1800)));
  g_assert_true (wall_pin (wall, 5, LENGTH_MM (600)) == wall_pin_at (wall, 1));
  wall_put_pin (wall, &longer);
  wall_put_pin (wall, &other);
  g_assert_cmpuint (wall->pins->len, ==, 3);
  g_assert_true (pin_equal (wall_pin_at (wall, 0), &longer));
  g_assert_true (pin_equal (wall_pin_at (wall, 2), &other));
  g_assert_false (wall_take_pin (wall, 3, LENGTH_MM (1800)));
  g_assert_true (wall_take_pin (wall, 2, LENGTH_MM (1800)));
  g_assert_cmpuint (wall->pins->len, ==, 2);
  g_assert_cmpint (wall_pin_at (wall, 0)->course, ==, 5);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/wall/new", test_new);
  g_test_add_func ("/wall/steel-default", test_steel_default);
  g_test_add_func ("/wall/copy-is-its-own", test_copy_is_its_own);
  g_test_add_func ("/wall/references", test_references);
  g_test_add_func ("/wall/equal-sees-everything", test_equal_sees_everything);
  g_test_add_func ("/wall/equal-passes-by-what-is-not-said", test_equal_passes_by_what_is_not_said);
  g_test_add_func ("/wall/opening-by-id", test_opening_by_id);
  g_test_add_func ("/wall/steel-row-of-a-course", test_steel_row_of_a_course);
  g_test_add_func ("/wall/pins", test_pins);
  return g_test_run ();
}
