/* test-rod.c - heights that meet courses, against tables of coursing and against the laid wall */
#include "advice/rod.h"

#include "any-wall.h"
#include "bond/gauge.h"
#include "bond/lay.h"
#include "model/edit.h"

/* Heights of courses by published tables: docs/rules.md, 10.2 and CC-19 (a public training sheet):
 * four courses of 65 mm bricks and their beds of 10 mm are 300; CC-20 (technical notes of a brick
 * association, 1993, table 3): of nominal 8 in. courses three are 24 in., fifteen 120, a hundred
 * 800. */
static void
test_tables (void)
{
  const struct
  {
    double height, bed;
    gint32 courses;
    double gauge;
  } rows[] = {
    { 65, 10, 4, 300 },
    { 65, 10, 12, 900 },
    { 7.625 * 25.4, 0.375 * 25.4, 3, 24 * 25.4 },
    { 7.625 * 25.4, 0.375 * 25.4, 15, 120 * 25.4 },
    { 7.625 * 25.4, 0.375 * 25.4, 100, 800 * 25.4 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      Block block = block_default ();
      Laying laying = { 0 };

      block.height = length_from_mm (rows[i].height);
      laying.bed = length_from_mm (rows[i].bed);
      laying.first_bed = laying.bed;
      /* With a bed of its own under the first one, courses and beds are as many. */
      g_assert_cmpint (gauge_top (NULL, &block, &laying, rows[i].courses), ==,
                       length_from_mm (rows[i].gauge));
      block_clear (&block);
    }
}

/* A window whose sill is 30 mm over the fifth course, and whose head is 50 mm under the eleventh's
 * top: a strip of 30 less the bed under it, one of 50 over it. */
static void
test_by_hand (void)
{
  g_autoptr (Wall) wall = wall_new ();
  Block block = block_default ();
  Opening window = opening_default (OPENING_WINDOW);
  Laying laying = laying_resolve (&wall->laying, &block);
  Length fifth = gauge_top (wall, &block, &laying, 5),
         eleventh = gauge_top (wall, &block, &laying, 11);

  g_assert_cmpint (fifth, ==, LENGTH_MM (1028));
  g_assert_cmpint (eleventh, ==, LENGTH_MM (2240));
  window.id.n = 7;
  window.x = LENGTH_MM (1000);
  window.sill = fifth + LENGTH_MM (30);
  window.height = eleventh - LENGTH_MM (50) - window.sill;
  g_array_append_val (wall->openings, window);
  wall->height = gauge_top (wall, &block, &laying, 13) + LENGTH_MM (15);
  g_autoptr (GArray) marks = rod_marks (wall, &block, &laying);

  g_assert_cmpuint (marks->len, ==, 3);
  const RodMark *sill = &g_array_index (marks, RodMark, 0);
  const RodMark *head = &g_array_index (marks, RodMark, 1);
  const RodMark *top = &g_array_index (marks, RodMark, 2);
  g_assert_cmpint (sill->kind, ==, ROD_SILL);
  g_assert_cmpint (sill->course, ==, 6);
  g_assert_cmpint (sill->rip, ==, LENGTH_MM (28));
  g_assert_cmpint (head->course, ==, 11);
  g_assert_cmpint (head->rip, ==, LENGTH_MM (50));
  g_assert_cmpint (top->course, ==, 14);
  g_assert_cmpint (top->rip, ==, 0);
  g_assert_cmpint (top->pack, ==, LENGTH_MM (13));
  g_autoptr (Wall) gauged = rod_to_gauge (wall, &block);
  g_assert_cmpint (wall_opening_at (gauged, 0)->sill, ==, fifth);
  g_assert_cmpint (opening_head (wall_opening_at (gauged, 0)), ==, eleventh);
  block_clear (&block);
}

/* A head in a top course that is ripped itself: the strip over it is as high as what the wall has
 * there, not as what a whole unit would leave. */
static void
test_ripped_top (void)
{
  const struct
  {
    Length head, top; /* above the bottom of the sixth course */
    Length rip, pack; /* of the head */
  } cases[] = {
    { LENGTH_MM (30), LENGTH_MM (90), LENGTH_MM (60), 0 },
    { LENGTH_MM (75), LENGTH_MM (90), 0, LENGTH_MM (15) },
    { LENGTH_MM (0), LENGTH_MM (90), 0, 0 },
    { LENGTH_MM (150), LENGTH_MM (200), LENGTH_MM (50), 0 },
    { LENGTH_MM (150), LENGTH_MM (215), LENGTH_MM (50), 0 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (Wall) wall = wall_new ();
      Block block = block_default ();
      Opening window = opening_default (OPENING_WINDOW);
      Laying laying = laying_resolve (&wall->laying, &block);
      Length bottom = gauge_bottom (wall, &block, &laying, 6);

      window.id.n = 1;
      window.x = LENGTH_MM (900);
      window.sill = gauge_top (wall, &block, &laying, 2);
      window.height = bottom + cases[i].head - window.sill;
      g_array_append_val (wall->openings, window);
      wall->height = bottom + cases[i].top;
      g_autoptr (GArray) marks = rod_marks (wall, &block, &laying);

      g_assert_cmpuint (marks->len, ==, 3);
      g_assert_cmpint (g_array_index (marks, RodMark, 1).rip, ==, cases[i].rip);
      g_assert_cmpint (g_array_index (marks, RodMark, 1).pack, ==, cases[i].pack);
      block_clear (&block);
    }
}

/* Where the rod says that no strip is cut for the sill, no piece under it is ripped, and the other
 * way round; walls with one window alone, so that all strips are its own. */
static void
test_as_laid (void)
{
  int ripped = 0, met = 0;

  for (int i = 0; i < 300; i++)
    {
      g_autoptr (Wall) wall = wall_new ();
      Block block = block_default ();
      Opening window = opening_default (OPENING_WINDOW);
      Laying laying = laying_resolve (&wall->laying, &block);
      gint32 strips = 0, expected = 0;

      window.id.n = 1;
      window.x = LENGTH_MM (1500);
      window.sill = LENGTH_MM (g_test_rand_int_range (600, 1300));
      window.height = LENGTH_MM (g_test_rand_int_range (500, 900));
      if (g_test_rand_bit ())
        window.sill = gauge_top (wall, &block, &laying, g_test_rand_int_range (3, 6));
      g_array_append_val (wall->openings, window);
      wall->height = gauge_top (wall, &block, &laying, 12);
      g_autoptr (GArray) marks = rod_marks (wall, &block, &laying);
      g_autoptr (Layout) layout = lay_wall (wall, &block, NULL);

      for (guint k = 0; k < marks->len; k++)
        expected += g_array_index (marks, RodMark, k).rip > 0;
      for (guint c = 0; c < layout->courses->len; c++)
        {
          const Course *course = layout_course (layout, c);
          gboolean cut = FALSE;

          for (gint32 k = 0; k < course->n_pieces; k++)
            {
              const Piece *piece = layout_piece (layout, (guint) (course->first + k));

              cut = cut || piece->shape == PIECE_RIPPED || piece->shape == PIECE_NOTCHED;
            }
          strips += cut;
        }
      g_assert_cmpint (strips, ==, expected);
      ripped += expected > 0;
      met += expected == 0;
      block_clear (&block);
    }
  g_assert_cmpint (ripped, >, 50);
  g_assert_cmpint (met, >, 5);
}

/* Of all choices the first has the most marks met; counting one anew gives the same; and a wall
 * made for a bed finds it. */
static void
test_choices (void)
{
  g_autoptr (Project) empty = project_new ();
  g_autoptr (Wall) wall = wall_new ();
  Opening window = opening_default (OPENING_WINDOW);
  Block block = block_copy (project_block_at (empty, 0));
  Laying wanted = laying_resolve (&wall->laying, &block);
  g_autoptr (GError) error = NULL;
  const RodRange range = { { LENGTH_MM (10), LENGTH_MM (40) },
                           LENGTH_MM (1),
                           { LENGTH_MM (1), LENGTH_MM (3) },
                           LENGTH_MM (0.5) };

  wanted.first_bed = LENGTH_MM (33);
  wanted.bed = LENGTH_MM (2.5);
  window.x = LENGTH_MM (1000);
  window.sill = gauge_top (wall, &block, &wanted, 4);
  window.height = gauge_top (wall, &block, &wanted, 10) - window.sill;
  g_array_append_val (wall->openings, window);
  wall->height = gauge_top (wall, &block, &wanted, 12);
  g_autoptr (Edit) add = edit_add_wall (wall);
  g_autoptr (Project) project = project_edit (empty, add, &error);
  g_assert_no_error (error);
  g_autoptr (GArray) choices = rod_choices (project, (WallId){ 0 }, &range, NULL);
  const RodChoice *best = &g_array_index (choices, RodChoice, 0);

  g_assert_cmpuint (choices->len, ==, 31 * 5);
  g_assert_cmpuint (best->met, ==, 3);
  g_assert_cmpint (best->packed, ==, 0);
  /* A height within a bed joint is met as well, so others may be as good. */
  gboolean found = FALSE;
  for (guint i = 0; i < choices->len; i++)
    {
      const RodChoice *choice = &g_array_index (choices, RodChoice, i);

      if (choice->first_bed == wanted.first_bed && choice->bed == wanted.bed)
        found = choice->met == 3 && choice->packed == 0;
    }
  g_assert_true (found);
  for (guint i = 1; i < choices->len; i++)
    g_assert_cmpuint (g_array_index (choices, RodChoice, i).met, <=,
                      g_array_index (choices, RodChoice, i - 1).met);
  block_clear (&block);
}

/* No strip is left at sills and heads that could be moved; nothing else of the wall changes. */
static void
test_to_gauge (void)
{
  int moved = 0;

  for (guint64 seed = 0; seed < 300; seed++)
    {
      g_auto (AnyWall) any = any_wall (seed);
      g_autoptr (Wall) gauged = rod_to_gauge (any.wall, &any.block);
      g_autofree char *fault = wall_fault (gauged, &any.block, NULL);
      Laying laying = laying_resolve (&gauged->laying, &any.block);
      g_autoptr (GArray) marks = rod_marks (gauged, &any.block, &laying);

      g_assert_cmpstr (fault, ==, NULL);
      for (guint i = 0; i < gauged->openings->len; i++)
        {
          const Opening *was = wall_opening_at (any.wall, i), *is = wall_opening_at (gauged, i);

          g_assert_cmpint (was->x, ==, is->x);
          g_assert_cmpint (was->width, ==, is->width);
          g_assert_cmpint (ABS (was->sill - is->sill), <=, any.block.height + laying.bed);
          moved += was->sill != is->sill;
          for (guint k = 0; is->sill != was->sill && k < marks->len; k++)
            {
              const RodMark *mark = &g_array_index (marks, RodMark, k);

              if (mark->opening.n == is->id.n && mark->kind == ROD_SILL)
                g_assert_cmpint (mark->rip, ==, 0);
            }
        }
    }
  g_assert_cmpint (moved, >, 50);
}

/* The mark of the same thing. */
static const RodMark *
same_mark (const GArray *marks, const RodMark *of)
{
  for (guint i = 0; i < marks->len; i++)
    {
      const RodMark *mark = &g_array_index (marks, RodMark, i);

      if (mark->kind == of->kind && mark->opening.n == of->opening.n)
        return mark;
    }
  return NULL;
}

/* One height goes to where nothing is cut or packed for it, by less than a course; every other
 * height stays. */
static void
check_moved (const AnyWall *any, const Laying *laying, const GArray *marks, const RodMark *mark,
             const Wall *moved)
{
  g_autofree char *fault = wall_fault (moved, &any->block, NULL);
  g_autoptr (GArray) after = rod_marks (moved, &any->block, laying);
  const RodMark *now = same_mark (after, mark);

  g_assert_cmpstr (fault, ==, NULL);
  g_assert_cmpint (ABS (rod_gauge_of (any->wall, &any->block, mark) - mark->z), <=,
                   any->block.height + laying->bed);
  if (now != NULL) /* else the sill is on the foundation, or the head at the top, by now */
    g_assert_cmpint (now->rip + now->pack, ==, 0);
  for (guint i = 0; i < marks->len; i++)
    {
      const RodMark *other = &g_array_index (marks, RodMark, i);
      const RodMark *there = same_mark (after, other);

      if (other != mark && there != NULL)
        g_assert_cmpint (there->z, ==, other->z);
    }
}

static void
test_mark_to_gauge (void)
{
  int moved = 0, tops = 0;

  for (guint64 seed = 0; seed < 300; seed++)
    {
      g_auto (AnyWall) any = any_wall (seed);
      Laying laying = laying_resolve (&any.wall->laying, &any.block);
      g_autoptr (GArray) marks = rod_marks (any.wall, &any.block, &laying);

      for (guint i = 0; i < marks->len; i++)
        {
          const RodMark *mark = &g_array_index (marks, RodMark, i);
          g_autoptr (Wall) next = rod_mark_to_gauge (any.wall, &any.block, mark);

          if (next == NULL)
            continue;
          check_moved (&any, &laying, marks, mark, next);
          moved++;
          tops += mark->kind == ROD_TOP;
        }
    }
  g_assert_cmpint (moved, >, 200);
  g_assert_cmpint (tops, >, 50);
}

/* A choice that is taken is what the walls have from then on, and leaves the strips that it said.
 */
static void
test_choose (void)
{
  g_autoptr (Project) empty = project_new ();
  g_autoptr (GPtrArray) walls = wall_list_new ();
  g_autoptr (GError) error = NULL;
  const RodRange range = rod_range_usual ();

  for (int i = 0; i < 3; i++)
    {
      Wall *wall = wall_new ();
      Opening window = opening_default (OPENING_WINDOW);

      window.x = LENGTH_MM (1000);
      window.sill = LENGTH_MM (900 + 37 * i);
      wall->height = LENGTH_MM (2500 + 41 * i);
      g_array_append_val (wall->openings, window);
      g_ptr_array_add (walls, wall);
    }
  g_autoptr (Edit) add = edit_walls (walls);
  g_autoptr (Project) project = project_edit (empty, add, &error);
  g_assert_no_error (error);
  const WallId second = project_wall_at (project, 1)->id, only[] = { { 0 }, second };
  for (guint i = 0; i < G_N_ELEMENTS (only); i++)
    {
      g_autoptr (GArray) choices = rod_choices (project, only[i], &range, NULL);
      /* The first that they do not have. */
      const RodChoice *best = &g_array_index (choices, RodChoice, 0);
      best += best->first_bed == LENGTH_MM (20) && best->bed == LENGTH_MM (2);
      g_autoptr (Edit) edit = rod_choose (project, only[i], best);
      g_autoptr (Project) next = project_edit (project, edit, &error);
      g_assert_no_error (error);
      g_autoptr (GArray) strips = rod_strips (project, only[i], best);
      g_autoptr (Edit) again = rod_choose (next, only[i], best);
      Length ripped = 0;
      guint n = 0;

      const RodChoice now = rod_now (next, only[i]);
      g_assert_null (again);
      g_assert_cmpint (now.first_bed, ==, best->first_bed);
      g_assert_cmpint (now.bed, ==, best->bed);
      g_assert_cmpuint (now.met, ==, best->met);
      g_assert_cmpint (now.ripped, ==, best->ripped);
      g_assert_cmpuint (strips->len, ==, best->marks - best->met);
      for (guint k = 0; k < next->walls->len; k++)
        {
          const Wall *wall = project_wall_at (next, k);
          const Block *block = project_block (next, wall->block);
          const Laying laying = laying_resolve (&wall->laying, block);
          g_autoptr (GArray) marks = rod_marks (wall, block, &laying);
          const gboolean asked = only[i].n == 0 || wall->id.n == only[i].n;

          g_assert_cmpint (laying.bed, ==, asked ? best->bed : LENGTH_MM (2));
          g_assert_cmpint (laying.first_bed, ==, asked ? best->first_bed : LENGTH_MM (20));
          for (guint m = 0; asked && m < marks->len; m++)
            if (g_array_index (marks, RodMark, m).rip > 0)
              {
                const RodStrip *strip = &g_array_index (strips, RodStrip, n++);

                g_assert_cmpuint (strip->wall, ==, k);
                g_assert_cmpint (strip->mark.z, ==, g_array_index (marks, RodMark, m).z);
                ripped += strip->mark.rip;
              }
        }
      g_assert_cmpuint (n, ==, strips->len);
      g_assert_cmpint (ripped, ==, best->ripped);
    }
}

/* A gable's top is no height of a course; a door on a step of the footing has no sill; over a head
 * near the slope only what stands there is ripped. */
static void
test_slopes_and_steps (void)
{
  g_autoptr (Wall) wall = wall_new ();
  Block block = block_default ();
  Opening door = opening_default (OPENING_DOOR), window = opening_default (OPENING_WINDOW);
  const Laying laying = laying_resolve (&wall->laying, &block);

  wall->height = LENGTH_MM (4000);
  top_list_add (wall->tops, 0, LENGTH_MM (1900));
  top_list_add (wall->tops, LENGTH_MM (3000), 0);
  top_list_add (wall->tops, LENGTH_MM (6000), LENGTH_MM (1900));
  foot_list_add (wall->feet, LENGTH_MM (4000), LENGTH_MM (222));
  door.id.n = 7;
  door.x = LENGTH_MM (4500);
  door.sill = LENGTH_MM (222);
  door.height = gauge_top (wall, &block, &laying, 9) - door.sill;
  g_array_append_val (wall->openings, door);
  /* Its left top corner is under the slope at 2100 + 1900 * 500 / 3000 = 2416.7; course 12 ends at
   * 2442, so that 2416.7 - 2300 stand over it. */
  window.id.n = 8;
  window.x = LENGTH_MM (500);
  window.sill = gauge_top (wall, &block, &laying, 5);
  window.height = LENGTH_MM (2300) - window.sill;
  g_array_append_val (wall->openings, window);
  g_autofree char *fault = wall_fault (wall, &block, NULL);
  g_assert_cmpstr (fault, ==, NULL);
  g_autoptr (GArray) marks = rod_marks (wall, &block, &laying);

  g_assert_cmpuint (marks->len, ==, 3);
  for (guint i = 0; i < marks->len; i++)
    {
      const RodMark *mark = &g_array_index (marks, RodMark, i);

      g_assert_cmpint (mark->kind, !=, ROD_TOP);
      if (mark->opening.n == 7)
        g_assert_cmpint (mark->kind, ==, ROD_HEAD);
      if (mark->opening.n == 8 && mark->kind == ROD_HEAD)
        g_assert_cmpint (ABS (mark->rip - length_from_mm (2100 + 1900.0 / 6 - 2300)), <=, 1);
      else
        g_assert_cmpint (mark->rip, ==, 0);
    }
  block_clear (&block);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/rod/tables", test_tables);
  g_test_add_func ("/rod/by-hand", test_by_hand);
  g_test_add_func ("/rod/ripped-top", test_ripped_top);
  g_test_add_func ("/rod/as-laid", test_as_laid);
  g_test_add_func ("/rod/choices", test_choices);
  g_test_add_func ("/rod/to-gauge", test_to_gauge);
  g_test_add_func ("/rod/mark-to-gauge", test_mark_to_gauge);
  g_test_add_func ("/rod/choose", test_choose);
  g_test_add_func ("/rod/slopes-and-steps", test_slopes_and_steps);
  return g_test_run ();
}
