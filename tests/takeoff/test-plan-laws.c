/* test-plan-laws.c - laws of whole buildings: every square of every course is there once, and the
 * numbers are the same from whichever side and wherever it is looked at */
#include <string.h>

#include "any-wall.h"
#include "bond/lay.h"
#include "model/outline.h"
#include "model/plan-edit.h"
#include "takeoff/takeoff.h"
#include "edited.h"
#include "sanitized.h"

#define MM(mm) LENGTH_MM (mm)
#define N_BUILDINGS (SANITIZED ? 4 : 24)
#define COURSES 6

/* ---- buildings, any ---- */

static const char *const outlines[]
    = { "%d x %d", "%d 3000 2500 R 2600 %d 5600", "%d x %d", "%d 4100 2000 R 1900 %d 6000" };

/* Dry joints and no levelling bed: blockwork and nothing else. */
static void
make_dry (Wall *wall)
{
  wall->laying.given = LAYING_FIRST_BED | LAYING_BED | LAYING_HEAD;
  wall->laying.first_bed = wall->laying.bed = wall->laying.head = 0;
}

static GArray *
any_outline (void)
{
  const int width = g_test_rand_int_range (5200, 8000), depth = g_test_rand_int_range (3500, 5200);
  const int which = g_test_rand_int_range (0, 4);
  g_autofree char *text = NULL, *fault = NULL;

#pragma GCC diagnostic push
#pragma GCC diagnostic ignored "-Wformat-nonliteral"
  text = which % 2 == 0
             ? g_strdup_printf (outlines[which], width, depth)
             : g_strdup_printf (outlines[which], width, width - (which == 1 ? 2500 : 2000));
#pragma GCC diagnostic pop
  return outline_parse (text, &fault);
}

/* Openings clear of the squares of meetings, as their lintels would want it. */
static void
add_openings (Wall *wall, Length from, Length to, guint *next)
{
  Length x = from + MM (g_test_rand_int_range (300, 700));

  while (x + MM (1300) < to && g_test_rand_bit ())
    {
      Opening opening = { .id.n = ++*next, .kind = OPENING_WINDOW, .name = g_strdup ("W") };

      opening.x = x;
      opening.width = MM (g_test_rand_int_range (400, 900));
      opening.sill = MM (g_test_rand_int_range (150, 500));
      opening.height = MM (g_test_rand_int_range (200, 500));
      opening.key = g_strdup_printf ("o%u", *next);
      g_array_append_val (wall->openings, opening);
      x += opening.width + MM (g_test_rand_int_range (400, 900));
    }
}

/* Made any way, each meeting by itself. */
static Project *
any_made (Project *project)
{
  g_autoptr (GArray) meetings = plan_meetings (project);

  for (guint i = 0; i < meetings->len; i++)
    {
      Edit *edit = plan_make_edit (project, &g_array_index (meetings, Meeting, i),
                                   (MeetMade) g_test_rand_int_range (0, MADE_SECOND_THROUGH + 1));

      project = edited (project, edit);
    }
  return project;
}

static Project *
with_partition (Project *project)
{
  g_autoptr (Wall) wall
      = plan_partition (project, RUNS_NORTH, MM (g_test_rand_int_range (1400, 2300)), MM (1500),
                        project_block_at (project, 0), NULL);

  if (!wall)
    return project;
  make_dry (wall);
  return edited (project, edit_add_wall (wall));
}

static Project *
any_building (void)
{
  static const int thicknesses[] = { 150, 250, 300 };
  Project *project = project_new ();
  Block block = block_copy (project_block_at (project, 0));
  g_autoptr (GArray) sides = any_outline ();
  g_autoptr (GPtrArray) walls = NULL;
  guint next = 1000;

  block.thickness = MM (thicknesses[g_test_rand_int_range (0, 3)]);
  project = edited (project, edit_set_block (&block));
  walls = outline_walls (sides, block.thickness, COURSES * block.height, 0, 0);
  for (guint i = 0; i < walls->len; i++)
    make_dry (g_ptr_array_index (walls, i));
  block_clear (&block);
  /* The longest of the outline's walls that no partition meets: the right one. */
  add_openings (g_ptr_array_index (walls, 1), MM (350),
                ((Wall *) g_ptr_array_index (walls, 1))->length - MM (350), &next);
  project = edited (project, edit_walls (walls));
  if (g_test_rand_bit ())
    project = with_partition (project);
  return any_made (project);
}

/* ---- laid ---- */

typedef struct
{
  Layout **layouts;
  guint n;
} Laid;

static Laid
lay (const Project *project)
{
  Laid laid = { g_new0 (Layout *, project->walls->len + 1), project->walls->len };

  for (guint i = 0; i < laid.n; i++)
    {
      const Wall *wall = project_wall_at (project, i);

      laid.layouts[i] = lay_wall (wall, project_block (project, wall->block), NULL);
    }
  return laid;
}

static void
laid_clear (Laid *laid)
{
  for (guint i = 0; i < laid->n; i++)
    layout_unref (laid->layouts[i]);
  g_free (laid->layouts);
}
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Laid, laid_clear)

/* ---- every square once ---- */

/* What a piece covers in plan. */
static PlanBox
box_of_piece (const Wall *wall, Length thickness, const Piece *piece)
{
  g_autoptr (Wall) part = wall_new ();

  part->place = wall->place;
  part->place.x += piece->x * runs_east (wall->place.runs);
  part->place.y += piece->x * runs_north (wall->place.runs);
  part->length = piece->length;
  return plan_box (part, thickness);
}

/* A piece's box in the building. */
typedef struct
{
  PlanBox plan;
  Length bottom, top;
} Solid;

static gboolean
overlap (const Solid *a, const Solid *b)
{
  const PlanBox *p = &a->plan, *q = &b->plan;

  return MAX (p->x0, q->x0) < MIN (p->x1, q->x1) && MAX (p->y0, q->y0) < MIN (p->y1, q->y1)
         && MAX (a->bottom, b->bottom) < MIN (a->top, b->top);
}

/* No two pieces share anything, whichever walls they are of. */
static void
assert_no_overlap (const Project *project, const Laid *laid)
{
  g_autoptr (GArray) solids = g_array_new (FALSE, FALSE, sizeof (Solid));

  for (guint i = 0; i < laid->n; i++)
    for (guint k = 0; k < laid->layouts[i]->pieces->len; k++)
      {
        const Piece *piece = layout_piece (laid->layouts[i], k);
        const Wall *wall = project_wall_at (project, i);
        const Solid solid
            = { box_of_piece (wall, project_block (project, wall->block)->thickness, piece),
                piece->bottom, piece->bottom + piece->height };

        g_array_append_val (solids, solid);
      }
  for (guint a = 0; a < solids->len; a++)
    for (guint b = a + 1; b < solids->len; b++)
      g_assert_false (
          overlap (&g_array_index (solids, Solid, a), &g_array_index (solids, Solid, b)));
}

/* Footprints of all walls, each square that two share once, in 1/320 mm squared; nothing but where
 * walls stand is asked. */
static double
footprint (const Project *project)
{
  g_autoptr (GArray) boxes = g_array_new (FALSE, FALSE, sizeof (PlanBox));
  double sum = 0;

  for (guint i = 0; i < project->walls->len; i++)
    {
      const Wall *wall = project_wall_at (project, i);
      PlanBox box = plan_box (wall, project_block (project, wall->block)->thickness);

      sum += (double) (box.x1 - box.x0) * (double) (box.y1 - box.y0);
      for (guint k = 0; k < boxes->len; k++)
        {
          const PlanBox *other = &g_array_index (boxes, PlanBox, k);
          const gint64 wide = MIN (box.x1, other->x1) - MAX (box.x0, other->x0);
          const gint64 tall = MIN (box.y1, other->y1) - MAX (box.y0, other->y0);

          if (wide > 0 && tall > 0)
            sum -= (double) wide * (double) tall;
        }
      g_array_append_val (boxes, box);
    }
  return sum;
}

/* What openings leave out, mm3. */
static double
hollow (const Project *project)
{
  double sum = 0;

  for (guint i = 0; i < project->walls->len; i++)
    for (guint k = 0; k < project_wall_at (project, i)->openings->len; k++)
      {
        const Wall *wall = project_wall_at (project, i);
        const Opening *opening = wall_opening_at (wall, k);

        sum += length_to_mm (opening->width) * length_to_mm (opening->height)
               * length_to_mm (project_block (project, wall->block)->thickness);
      }
  return sum;
}

static double
quantity (const Takeoff *takeoff, const char *key)
{
  const TakeoffLine *line = takeoff_line (takeoff, key);

  return line ? line->quantity : 0;
}

/* Blockwork is what the footprints rise to, less the openings: to a cubic millimetre in a billion,
 * but for strips too thin to be laid, which are packed. */
static void
test_every_square_once (void)
{
  for (int round = 0; round < N_BUILDINGS; round++)
    {
      g_autoptr (Project) project = any_building ();
      g_auto (Laid) laid = lay (project);
      g_autoptr (Takeoff) takeoff = takeoff_new (project, laid.layouts, NULL);
      const double height = length_to_mm (COURSES * project_block_at (project, 0)->height);
      const double all = footprint (project) / LENGTH_PER_MM / LENGTH_PER_MM * height;
      const double packed = quantity (takeoff, "bed-mortar.volume") * 1e6;
      const double laid_volume = quantity (takeoff, "wall.net-volume") * 1e9;

      assert_no_overlap (project, &laid);
      g_test_message ("%u walls: %.0f of %.0f mm3 laid, %.0f packed", project->walls->len,
                      laid_volume, all - hollow (project), packed);
      g_assert_cmpfloat_with_epsilon (laid_volume + packed, all - hollow (project), 1000);
    }
}

/* ---- from other sides ---- */

static Project *
with_walls (const Project *project, Wall *(*changed) (const Wall *wall))
{
  Project *next = project_copy (project);

  for (guint i = 0; i < next->walls->len; i++)
    {
      Wall *wall = changed (project_wall_at (project, i));

      wall_unref (g_ptr_array_index (next->walls, i));
      g_ptr_array_index (next->walls, i) = wall;
    }
  return next;
}

static Wall *
turned (const Wall *wall)
{
  Wall *copy = wall_copy (wall);

  copy->place
      = (PlanPlace){ TRUE, -wall->place.y, wall->place.x, runs_turned (wall->place.runs, FALSE) };
  return copy;
}

/* East is west: what was its right end is its left end now. */
static Wall *
mirrored (const Wall *wall)
{
  Wall *copy = any_wall_mirror (wall);
  const gint64 x = wall->place.x + (gint64) wall->length * runs_east (wall->place.runs);
  const gint64 y = wall->place.y + (gint64) wall->length * runs_north (wall->place.runs);

  copy->place = (PlanPlace){ TRUE, (Length) -x, (Length) y,
                             runs_east (wall->place.runs)
                                 ? wall->place.runs
                                 : runs_turned (runs_turned (wall->place.runs, TRUE), TRUE) };
  return copy;
}

static void
assert_same_counts (const Project *a, const Project *b, double times)
{
  static const char *const keys[] = { "blocks.whole",  "blocks.cut-pieces", "wall.gross-area",
                                      "wall.net-area", "wall.net-volume",   "adhesive.volume",
                                      "ties.count",    "ties.strips",       "bed-mortar.volume" };
  g_auto (Laid) one = lay (a);
  g_auto (Laid) other = lay (b);
  g_autoptr (Takeoff) p = takeoff_new (a, one.layouts, NULL);
  g_autoptr (Takeoff) q = takeoff_new (b, other.layouts, NULL);

  for (guint i = 0; i < G_N_ELEMENTS (keys); i++)
    g_assert_cmpfloat_with_epsilon (quantity (q, keys[i]), times * quantity (p, keys[i]), 1e-6);
  /* Of many houses, pieces of one may come from blocks of another. */
  g_assert_cmpfloat (quantity (q, "blocks.to-order"), <=, times * quantity (p, "blocks.to-order"));
  if (times == 1)
    g_assert_cmpfloat (quantity (q, "blocks.to-order"), ==, quantity (p, "blocks.to-order"));
}

/* The same meetings, made alike, and no other. */
static void
assert_same_meetings (const Project *a, const Project *b)
{
  g_autoptr (GArray) had = plan_meetings (a);
  g_autoptr (GArray) has = plan_meetings (b);

  g_assert_cmpuint (had->len, ==, has->len);
  for (guint i = 0; i < had->len; i++)
    {
      const Meeting *p = &g_array_index (had, Meeting, i), *q = NULL;

      for (guint k = 0; k < has->len; k++)
        {
          const Meeting *is = &g_array_index (has, Meeting, k);

          if (is->wall[0] == p->wall[0] && is->wall[1] == p->wall[1])
            q = is;
        }
      g_assert_nonnull (q);
      g_assert_cmpint (q->kind, ==, p->kind);
      g_assert_cmpint (q->made, ==, p->made);
    }
}

static void
test_sides (void)
{
  for (int round = 0; round < N_BUILDINGS; round++)
    {
      g_autoptr (Project) project = any_building ();
      g_autoptr (Project) quarter = with_walls (project, turned);
      g_autoptr (Project) mirror = with_walls (project, mirrored);

      assert_same_meetings (project, quarter);
      assert_same_counts (project, quarter, 1);
      assert_same_meetings (project, mirror);
      assert_same_counts (project, mirror, 1);
    }
}

/* ---- one after another ---- */

static Project *
in_a_row (const Project *project, guint times)
{
  g_autoptr (GPtrArray) walls = wall_list_new ();
  Project *next = project_copy (project);

  for (guint n = 1; n < times; n++)
    for (guint i = 0; i < project->walls->len; i++)
      {
        Wall *wall = wall_copy (project_wall_at (project, i));

        wall->id.n = 0;
        g_clear_pointer (&wall->key, g_free);
        for (guint k = 0; k < wall->openings->len; k++)
          {
            Opening *opening = &g_array_index (wall->openings, Opening, k);

            opening->id.n = 0;
            g_clear_pointer (&opening->key, g_free);
          }
        wall->place.x += (Length) n * MM (20000);
        g_ptr_array_add (walls, wall);
      }
  return edited (next, edit_walls (walls));
}

static void
test_equal_houses (void)
{
  for (int round = 0; round < N_BUILDINGS / 4; round++)
    {
      g_autoptr (Project) project = any_building ();
      const guint times = (guint) g_test_rand_int_range (2, 5);
      g_autoptr (Project) row = in_a_row (project, times);

      assert_same_counts (project, row, times);
      g_assert_cmpfloat (footprint (row), ==, footprint (project) * times);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/plan-laws/every-square-of-every-course-once", test_every_square_once);
  g_test_add_func ("/plan-laws/turned-and-mirrored", test_sides);
  g_test_add_func ("/plan-laws/equal-houses", test_equal_houses);
  return g_test_run ();
}
