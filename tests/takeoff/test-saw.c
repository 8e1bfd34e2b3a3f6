/* test-saw.c - the saw plan, sawn again by a saw that knows nothing of how it was made */
#include "takeoff/saw.h"

#include "any-wall.h"
#include "bond/lay.h"
#include "bond/offcut.h"
#include "cutting/cutting.h"
#include "model/edit.h"
#include "takeoff/saw-text.h"
#include "takeoff/sawing.h"

/* --- a saw --- */

typedef struct
{
  Length x, z, end, top;
} Slab;

/* What is left of one unit while it is sawn. */
typedef struct
{
  GArray *slabs; /* Slab */
  Length kerf;
} Bench;

/* A straight cut right through the one slab that it fits. */
static void
saw (Bench *bench, const SawCut *cut)
{
  guint n_found = 0, found = 0;

  for (guint i = 0; i < bench->slabs->len; i++)
    {
      const Slab *slab = &g_array_index (bench->slabs, Slab, i);
      gboolean fits = cut->along ? slab->z < cut->at && cut->at < slab->top && slab->x == cut->from
                                       && slab->end == cut->to
                                 : slab->x < cut->at && cut->at < slab->end && slab->z == cut->from
                                       && slab->top == cut->to;

      n_found += fits;
      found = fits ? i : found;
    }
  g_assert_cmpuint (n_found, ==, 1);
  Slab *slab = &g_array_index (bench->slabs, Slab, found), other = *slab;
  if (cut->along)
    {
      slab->top = cut->at;
      other.z = cut->at + bench->kerf;
    }
  else
    {
      slab->end = cut->at;
      other.x = cut->at + bench->kerf;
    }
  if (other.x < other.end && other.z < other.top)
    g_array_append_val (bench->slabs, other);
}

/* Takes away the one slab that is just this. */
static void
take (Bench *bench, Length x, Length z, Length length, Length height)
{
  for (guint i = 0; i < bench->slabs->len; i++)
    {
      const Slab *slab = &g_array_index (bench->slabs, Slab, i);

      if (slab->x == x && slab->z == z && slab->end == x + length && slab->top == z + height)
        {
          g_array_remove_index_fast (bench->slabs, i);
          return;
        }
    }
  g_assert_not_reached ();
}

/* Sawn as told, a unit falls into its parts and rests and nothing else. */
static void
check_unit (const SawPlan *plan, const SawUnit *unit)
{
  Bench bench = { g_array_new (FALSE, FALSE, sizeof (Slab)), plan->kerf };
  Slab whole = { 0, 0, plan->length, plan->height };

  g_array_append_val (bench.slabs, whole);
  for (guint i = 0; i < unit->n_cuts; i++)
    saw (&bench, saw_unit_cut (plan, unit, i));
  g_assert_cmpuint (unit->n, >, 0);
  for (guint i = 0; i < unit->n; i++)
    {
      const SawPart *part = saw_unit_part (plan, unit, i);

      take (&bench, part->x, part->z, part->length, part->height);
      g_assert_true (saw_plan_unit (plan, (guint) part->unit) == unit);
    }
  for (guint i = 0; i < unit->n_rests; i++)
    {
      const SawRest *rest = saw_unit_rest (plan, unit, i);

      take (&bench, rest->x, rest->z, rest->length, rest->height);
    }
  g_assert_cmpuint (bench.slabs->len, ==, 0);
  g_array_unref (bench.slabs);
}

static gboolean
look_alike (const SawPlan *plan, const SawUnit *p, const SawUnit *q)
{
  if (p->n != q->n)
    return FALSE;
  for (guint i = 0; i < p->n; i++)
    {
      const SawPart *s = saw_unit_part (plan, p, i), *t = saw_unit_part (plan, q, i);

      if (s->x != t->x || s->z != t->z || s->length != t->length || s->height != t->height)
        return FALSE;
    }
  return TRUE;
}

/* Each unit is of one kind, whose units all look like it. */
static void
check_kinds (const SawPlan *plan)
{
  guint n = 0;

  for (guint k = 0; k < plan->kinds->len; k++)
    {
      const SawKind *kind = &g_array_index (plan->kinds, SawKind, k);

      for (guint i = kind->first; i < kind->first + kind->times; i++, n++)
        {
          const SawUnit *first
              = saw_plan_unit (plan, (guint) g_array_index (plan->alike, gint32, kind->first));
          gint32 unit = g_array_index (plan->alike, gint32, i);

          g_assert_cmpint (saw_plan_unit (plan, (guint) unit)->kind, ==, (gint32) k);
          g_assert_true (look_alike (plan, first, saw_plan_unit (plan, (guint) unit)));
          if (i > kind->first)
            g_assert_cmpint (unit, >, g_array_index (plan->alike, gint32, i - 1));
        }
      if (k > 0)
        g_assert_cmpuint (kind->times, <=, g_array_index (plan->kinds, SawKind, k - 1).times);
    }
  g_assert_cmpuint (n, ==, plan->units->len);
}

/* Every cut piece of the layouts comes from just one place; no whole one does. */
static void
check_pieces (const SawPlan *plan, Layout *const *layouts, guint n)
{
  guint cut = 0;

  for (guint wall = 0; wall < n; wall++)
    for (guint i = 0; i < layouts[wall]->pieces->len; i++)
      {
        const Piece *piece = layout_piece (layouts[wall], i);
        const SawPart *part = saw_plan_part (plan, wall, i);

        g_assert_cmpint (part != NULL, ==, piece->shape != PIECE_WHOLE);
        if (part == NULL)
          continue;
        cut++;
        g_assert_cmpuint (part->wall, ==, wall);
        g_assert_cmpuint (part->piece, ==, i);
        g_assert_cmpint (part->length, ==, piece->length);
        g_assert_cmpint (part->height, ==, piece->height);
      }
  g_assert_cmpuint (cut, ==, plan->parts->len);
  g_assert_null (saw_plan_part (plan, n, 0));
}

static gboolean
is_needed_before (const SawPart *a, const SawPart *b)
{
  return a->wall < b->wall || (a->wall == b->wall && a->piece < b->piece);
}

static const SawPart *
first_needed (const SawPlan *plan, const SawUnit *unit)
{
  const SawPart *first = saw_unit_part (plan, unit, 0);

  for (guint i = 1; i < unit->n; i++)
    if (is_needed_before (saw_unit_part (plan, unit, i), first))
      first = saw_unit_part (plan, unit, i);
  return first;
}

static void
check_plan (const SawPlan *plan, Layout *const *layouts, guint n)
{
  for (guint i = 0; i < plan->units->len; i++)
    {
      check_unit (plan, saw_plan_unit (plan, i));
      g_assert_cmpint (saw_plan_unit (plan, i)->number, ==, (gint32) i + 1);
      if (i > 0)
        g_assert_true (is_needed_before (first_needed (plan, saw_plan_unit (plan, i - 1)),
                                         first_needed (plan, saw_plan_unit (plan, i))));
    }
  check_kinds (plan);
  check_pieces (plan, layouts, n);
  g_assert_cmpint (plan->at_least, <=, saw_plan_to_order (plan));
  g_assert_cmpint (plan->at_least, >=, plan->n_whole);
}

/* --- the count of version 0.1: strips of one length alone shared a unit --- */

static gint
compare_pieces (gconstpointer a, gconstpointer b)
{
  const Piece *p = a, *q = b;

  if (p->length != q->length)
    return p->length > q->length ? -1 : 1;
  return (p->height < q->height) - (p->height > q->height);
}

static gint32
count_simply (const Layout *layout, const Block *block, Length kerf)
{
  g_autoptr (GArray) cut = g_array_new (FALSE, FALSE, sizeof (Piece));
  g_autoptr (GArray) lengths = g_array_new (FALSE, FALSE, sizeof (CuttingItem));
  g_autoptr (CuttingPlan) plan = NULL;

  for (guint i = 0; i < layout->pieces->len; i++)
    {
      Piece piece = *layout_piece (layout, i);

      piece.height = piece.shape == PIECE_RIPPED ? piece.height : block->height;
      if (piece.shape != PIECE_WHOLE)
        g_array_append_val (cut, piece);
    }
  g_array_sort (cut, compare_pieces);
  for (guint i = 0, next; i < cut->len; i = next)
    {
      Length length = g_array_index (cut, Piece, i).length;
      g_autoptr (GArray) heights = g_array_new (FALSE, FALSE, sizeof (CuttingItem));
      g_autoptr (CuttingPlan) strips = NULL;

      for (next = i; next < cut->len && g_array_index (cut, Piece, next).length == length; next++)
        {
          CuttingItem item = { g_array_index (cut, Piece, next).height, 1 };

          g_array_append_val (heights, item);
        }
      strips = cutting_solve (block->height, kerf, (CuttingItem *) (gpointer) heights->data,
                              heights->len, 0, NULL, NULL);
      CuttingItem item = { length, strips->bins };
      g_array_append_val (lengths, item);
    }
  plan = cutting_solve (block->length, kerf, (CuttingItem *) (gpointer) lengths->data, lengths->len,
                        0, NULL, NULL);
  return layout->n_whole + plan->bins;
}

/* --- made-up walls --- */

#define N_WALLS 600

static void
test_any_wall (void)
{
  guint n_low = 0, n_proven = 0, n_fewer = 0, n_gap = 0;

  for (guint64 seed = 1; seed <= N_WALLS; seed++)
    {
      g_auto (AnyWall) any = any_wall (seed);
      g_autoptr (Layout) layout = lay_wall (any.wall, &any.block, NULL);
      g_autoptr (SawList) list = saw_list_new (&any.block);
      Length kerf = laying_resolve (&any.wall->laying, &any.block).kerf;
      g_autoptr (SawPlan) plan = NULL;
      gint32 simply = count_simply (layout, &any.block, kerf);

      saw_list_add (list, 0, layout, kerf);
      plan = saw_plan_new (list, NULL);
      check_plan (plan, &layout, 1);
      g_assert_cmpint (plan->n_whole, ==, layout->n_whole);
      g_assert_cmpint (saw_list_units (list, NULL), ==, saw_plan_to_order (plan));
      if (saw_plan_to_order (plan) > simply)
        g_test_message ("wall %" G_GUINT64_FORMAT, seed);
      g_assert_cmpint (saw_plan_to_order (plan), <=, simply);
      n_fewer += saw_plan_to_order (plan) < simply;
      n_proven += plan->at_least == saw_plan_to_order (plan);
      n_gap += (guint) (saw_plan_to_order (plan) - plan->at_least);
      for (guint i = 0; i < plan->parts->len; i++)
        if (2 * g_array_index (plan->parts, SawPart, i).height + kerf <= any.block.height)
          {
            n_low++;
            break;
          }
    }
  g_test_message ("%d walls, %u with low strips: %u proven, %u units above bounds in all; fewer "
                  "than by one length in %u",
                  N_WALLS, n_low, n_proven, n_gap, n_fewer);
  g_assert_cmpuint (n_low, >, N_WALLS / 10);
  g_assert_cmpuint (n_proven, >, N_WALLS * 8 / 10);
  g_assert_cmpuint (n_fewer, >, 0);
}

/* Many walls of one kind of block in one plan. */
static void
test_walls_together (void)
{
  Block block = block_default ();
  g_autoptr (SawList) list = saw_list_new (&block);
  g_autoptr (SawPlan) plan = NULL;
  Layout *layouts[12];
  guint n = 0;
  gint32 apart = 0;

  for (guint64 seed = 1; n < G_N_ELEMENTS (layouts); seed++)
    {
      g_auto (AnyWall) any = any_wall (seed);
      g_autoptr (SawList) alone = saw_list_new (&block);

      if (any.block.length != block.length || any.block.height != block.height)
        continue;
      layouts[n] = lay_wall (any.wall, &any.block, NULL);
      saw_list_add (list, n, layouts[n], LENGTH_MM (3));
      saw_list_add (alone, n, layouts[n], LENGTH_MM (3));
      apart += saw_list_units (alone, NULL);
      n++;
    }
  plan = saw_plan_new (list, NULL);
  check_plan (plan, layouts, n);
  g_test_message ("%d units together, %d apart", saw_plan_to_order (plan), apart);
  g_assert_cmpint (saw_plan_to_order (plan), <, apart);
  for (guint i = 0; i < n; i++)
    layout_unref (layouts[i]);
  block_clear (&block);
}

/* That each wall's units are known beforehand changes no plan. */
static void
test_known_units (void)
{
  for (guint64 seed = 1; seed <= N_WALLS; seed++)
    {
      g_auto (AnyWall) any = any_wall (seed);
      g_autoptr (Project) project = project_new ();
      g_autoptr (Layout) layout = lay_wall (any.wall, &any.block, NULL);
      Layout *layouts[] = { layout, layout, layout };
      gint32 alone = saw_wall_units (any.wall, &any.block, layout, NULL);
      gint32 units[] = { alone, alone, alone };
      g_autoptr (GPtrArray) plans = NULL, with_units = NULL;
      Block *block = g_ptr_array_index (project->blocks, 0);

      block_clear (block);
      *block = block_copy (&any.block);
      for (guint i = 0; i < G_N_ELEMENTS (layouts); i++)
        g_ptr_array_add (project->walls, wall_ref (any.wall));
      plans = saw_plans_new (project, layouts, NULL, NULL);
      with_units = saw_plans_new (project, layouts, units, NULL);
      check_plan (g_ptr_array_index (with_units, 0), layouts, G_N_ELEMENTS (layouts));
      g_assert_cmpint (saw_plan_to_order (g_ptr_array_index (with_units, 0)), ==,
                       saw_plan_to_order (g_ptr_array_index (plans, 0)));
    }
}

/* Three times the same wall: each could be sawn by itself, so all three never need more than three
 * times what one does. */
static void
test_copies (void)
{
  gint32 together = 0, apart = 0;

  for (guint64 seed = 1; seed <= N_WALLS; seed++)
    {
      g_auto (AnyWall) any = any_wall (seed);
      Length kerf = laying_resolve (&any.wall->laying, &any.block).kerf;
      g_autoptr (Layout) layout = lay_wall (any.wall, &any.block, NULL);
      Layout *layouts[] = { layout, layout, layout };
      g_autoptr (SawList) list = saw_list_new (&any.block);
      g_autoptr (SawPlan) plan = NULL;
      gint32 alone = saw_wall_units (any.wall, &any.block, layout, NULL);

      for (guint i = 0; i < G_N_ELEMENTS (layouts); i++)
        saw_list_add (list, i, layout, kerf);
      plan = saw_plan_new (list, NULL);
      check_plan (plan, layouts, G_N_ELEMENTS (layouts));
      g_assert_cmpint (saw_plan_to_order (plan), <=, 3 * alone);
      g_assert_cmpint (saw_list_units (list, NULL), ==, saw_plan_to_order (plan));
      together += saw_plan_to_order (plan);
      apart += 3 * alone;
    }
  g_test_message ("%d units together, %d apart", together, apart);
  g_assert_cmpint (together, <, apart);
}

/* --- aims --- */

#define N_AIMS 400

static Layout *
lay_with_aim (const AnyWall *any, Aim aim)
{
  g_autoptr (Wall) wall = wall_copy (any->wall);

  wall->laying.given |= LAYING_AIM;
  wall->laying.aim = aim;
  return lay_wall (wall, &any->block, NULL);
}

static gint32
order_of (const AnyWall *any, const Layout *layout)
{
  g_autoptr (SawList) list = saw_list_new (&any->block);

  saw_list_add (list, 0, layout, laying_resolve (&any->wall->laying, &any->block).kerf);
  return saw_list_units (list, NULL);
}

/* The units that pieces laid any other way need are not below what is proven of all. */
static void
assert_bound (const AnyWall *any, const Layout *least, Aim aim)
{
  g_autoptr (Layout) other = lay_with_aim (any, aim);

  if (other->proof.breaches == least->proof.breaches)
    g_assert_cmpint (least->proof.to_order_at_least, <=, order_of (any, other));
}

/* Least waste has no more breaches and orders no more than the fewest cuts, and seldom gains
 * nothing where there is something to gain. */
static void
test_least_waste (void)
{
  gint32 gained = 0, gap = 0, gap_before = 0, met = 0;

  for (guint64 seed = 1; seed <= N_AIMS; seed++)
    {
      g_auto (AnyWall) any = any_wall (seed);
      g_autoptr (Layout) fewest = lay_with_aim (&any, AIM_FEWEST_CUTS);
      g_autoptr (Layout) least = lay_with_aim (&any, AIM_LEAST_WASTE);
      gint32 before = order_of (&any, fewest), after = order_of (&any, least);
      const Proof *proof = &least->proof;

      if (after > before || proof->to_order_at_least > after)
        g_test_message ("wall %" G_GUINT64_FORMAT, seed);
      g_assert_cmpint (proof->breaches, <=, fewest->proof.breaches);
      g_assert_cmpint (after, <=, before);
      g_assert_cmpint (after, <=, proof->to_order);
      g_assert_cmpint (proof->to_order_at_least, <=, after);
      g_assert_cmpint (fewest->proof.to_order, ==, 0);
      assert_bound (&any, least, AIM_REGULAR);
      assert_bound (&any, least, AIM_FEWEST_CUTS);
      gained += before - after;
      gap += after - proof->to_order_at_least;
      gap_before += before - proof->to_order_at_least;
      met += after == proof->to_order_at_least;
    }
  g_test_message ("%d walls: %d units fewer than with the fewest cuts; bound met in %d, %d units "
                  "above it in all, %d with the fewest cuts",
                  N_AIMS, gained, met, gap, gap_before);
  g_assert_cmpint (gained, >=, N_AIMS / 2);
}

static void
test_stop (void)
{
  g_auto (AnyWall) any = any_wall (7);
  g_autoptr (Layout) layout = lay_wall (any.wall, &any.block, NULL);
  g_autoptr (SawList) list = saw_list_new (&any.block);
  gint stop = 1;

  saw_list_add (list, 0, layout, LENGTH_MM (3));
  g_assert_null (saw_plan_new (list, &stop));
  g_assert_cmpint (saw_list_units (list, &stop), ==, -1);
}

static void
test_nothing (void)
{
  Block block = block_default ();
  g_autoptr (SawList) list = saw_list_new (&block);
  g_autoptr (SawPlan) plan = saw_plan_new (list, NULL);

  g_assert_cmpint (saw_plan_to_order (plan), ==, 0);
  g_assert_cmpint (plan->at_least, ==, 0);
  g_assert_null (saw_plan_part (plan, 0, 0));
  block_clear (&block);
}

/* --- units cut to pieces, and put together again --- */

/* Cuts a slab at random into boxes; a kerf is lost at each cut. */
static void
break_up (AnyRandom *random, GArray *boxes, Length length, Length height, Length kerf, int depth)
{
  gboolean along = any_percent (random, 40);
  Length side = along ? height : length, at;
  Box box = { .length = length, .height = height, .owner = (gint32) boxes->len };

  if (depth == 0 || side <= kerf + 2 || any_percent (random, 15))
    {
      g_array_append_val (boxes, box);
      return;
    }
  at = (Length) any_between (random, 1, side - kerf - 1);
  break_up (random, boxes, along ? length : at, along ? at : height, kerf, depth - 1);
  break_up (random, boxes, along ? length : side - kerf - at, along ? side - kerf - at : height,
            kerf, depth - 1);
}

/* What `units` units were cut into needs no more than these: no bound may say so. */
static void
test_broken_units (void)
{
  AnyRandom random = { 20261126 };
  guint n_met = 0, n = 0;

  for (guint round = 0; round < 2000; round++)
    {
      Face face = { (Length) any_between (&random, 20, 600),
                    (Length) any_between (&random, 20, 200), (Length) any_between (&random, 0, 5) };
      g_autoptr (GArray) boxes = g_array_new (FALSE, FALSE, sizeof (Box));
      g_autoptr (Sawing) sawing = NULL;
      gint32 units = (gint32) any_between (&random, 1, 8);

      for (gint32 i = 0; i < units; i++)
        break_up (&random, boxes, face.length, face.height, face.kerf,
                  (int) any_between (&random, 1, 3));
      sawing
          = sawing_new (face, g_memdup2 (boxes->data, sizeof (Box) * boxes->len), boxes->len, NULL);
      g_assert_cmpint (sawing->at_least, <=, units);
      g_assert_cmpint (sawing->units, >=, sawing->at_least);
      n_met += sawing->units <= units;
      n++;
    }
  g_test_message ("%u of %u lists sawn from no more units than they were made of", n_met, n);
  g_assert_cmpuint (n_met, >, n / 2);
}

/* --- by hand --- */

typedef struct
{
  const char *what;
  int kerf;
  struct
  {
    int length, height, times;
  } boxes[4];
  gint32 units;
} ByHand;

/* Units of 600 x 200. */
static const ByHand by_hand[] = {
  { "two of a half with no kerf", 0, { { 300, 200, 2 } }, 1 },
  { "not with one", 3, { { 300, 200, 2 } }, 2 },
  { "412 and 185 leave just the kerf", 3, { { 412, 200, 1 }, { 185, 200, 1 } }, 1 },
  { "two strips of 98 and 99 from one unit", 3, { { 600, 98, 1 }, { 600, 99, 1 } }, 1 },
  { "two short strips from one long one",
    3,
    { { 600, 98, 1 }, { 300, 98, 1 }, { 297, 98, 1 } },
    1 },
  { "strips of two lengths over each other",
    3,
    { { 310, 98, 1 }, { 300, 98, 1 }, { 287, 200, 1 } },
    1 },
  { "a low strip beside a high one", 3, { { 300, 98, 1 }, { 297, 60, 1 }, { 600, 99, 1 } }, 1 },
  { "strips too high to share", 3, { { 300, 99, 4 } }, 4 },
  { "six of a third, two rows of three", 0, { { 200, 100, 6 } }, 1 },
};

static void
test_by_hand (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (by_hand); i++)
    {
      const ByHand *row = &by_hand[i];
      Face face = { LENGTH_MM (600), LENGTH_MM (200), LENGTH_MM (row->kerf) };
      Box *boxes = g_new0 (Box, 40);
      g_autoptr (Sawing) sawing = NULL;
      guint n = 0;

      for (guint k = 0; k < G_N_ELEMENTS (row->boxes); k++)
        for (int time = 0; time < row->boxes[k].times; time++, n++)
          boxes[n] = (Box){ .length = LENGTH_MM (row->boxes[k].length),
                            .height = LENGTH_MM (row->boxes[k].height),
                            .owner = (gint32) n };
      sawing = sawing_new (face, boxes, n, NULL);
      g_test_message ("%s", row->what);
      g_assert_cmpint (sawing->units, ==, row->units);
    }
}

/* --- in words --- */

/* A project of one wall in units of 600 x 200, joints of 2, kerf 3. */
static Project *
project_of (int length, int height)
{
  g_autoptr (Project) empty = project_new ();
  g_autoptr (Wall) wall = wall_new ();
  g_autoptr (GError) error = NULL;
  Edit *edit;
  Project *project;

  wall->block = project_block_at (empty, 0)->id;
  wall->length = LENGTH_MM (length);
  wall->height = LENGTH_MM (height);
  edit = edit_add_wall (wall);
  project = project_edit (empty, edit, &error);
  g_assert_no_error (error);
  edit_free (edit);
  return project;
}

/* What is said of the first piece of that course. */
static char *
sentence (int length, int height, gint32 course)
{
  g_autoptr (Project) project = project_of (length, height);
  const Wall *wall = project_wall_at (project, 0);
  g_autoptr (Layout) layout = lay_wall (wall, project_block_at (project, 0), NULL);
  g_autoptr (GPtrArray) plans = saw_plans_new (project, &layout, NULL, NULL);
  guint first = (guint) layout_course (layout, (guint) course - 1)->first;

  return saw_text_piece (saw_plan_of_wall (plans, project, wall), project, &layout, 0, first);
}

static void
assert_sentence (int length, int height, gint32 course, const char *wanted)
{
  g_autofree char *text = sentence (length, height, course);

  g_assert_cmpstr (text, ==, wanted);
}

/* By hand: courses of 200 on joints of 2 above a bed of 20. */
static void
test_sentences (void)
{
  /* Ten units, under halves of 299: 302 of 600 are gone. */
  assert_sentence (6018, 422, 1, NULL);
  assert_sentence (6018, 422, 2, "From unit 1, sawn at 299 mm; 298 × 200 mm are left over");
  /* A top course of 98 in half bond: nine strips of 600, two of 299; 98 + 3 + 98 of 200. Two long
   * ones share a unit, and the last has a short one over it. */
  assert_sentence (6018, 320, 2,
                   "From unit 1, 299 × 98 mm of it from 101 mm up; another 600 × 98 mm go to "
                   "course 2, piece 10; 298 × 98 mm are left over");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/saw/by-hand", test_by_hand);
  g_test_add_func ("/saw/any-wall/falls-into-its-pieces", test_any_wall);
  g_test_add_func ("/saw/walls/together-never-more", test_walls_together);
  g_test_add_func ("/saw/walls/copies-never-more", test_copies);
  g_test_add_func ("/saw/walls/known-units-change-nothing", test_known_units);
  g_test_add_func ("/saw/aims/least-waste-never-orders-more", test_least_waste);
  g_test_add_func ("/saw/broken-units/never-above", test_broken_units);
  g_test_add_func ("/saw/sentences", test_sentences);
  g_test_add_func ("/saw/nothing", test_nothing);
  g_test_add_func ("/saw/stop", test_stop);
  return g_test_run ();
}
