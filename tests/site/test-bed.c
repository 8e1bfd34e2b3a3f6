/* test-bed.c - the levelling bed: worked by hand, and against a slow way that knows nothing of it
 */
#include "site/bed.h"

#include <math.h>

#include "bond/lay.h"

/* ---- projects ---- */

/* A wall of that length in units of 600 x 200 x 250, first bed 25. */
static Wall *
add_wall (Project *project, int length, const char *name)
{
  g_autoptr (Wall) wall = wall_new ();
  wall->length = LENGTH_MM (length);
  wall->height = LENGTH_MM (1235);
  wall->id.n = 100 + project->walls->len;
  wall->key = g_strdup_printf ("w%u", project->walls->len + 1);
  g_free (wall->name);
  wall->name = g_strdup (name);
  wall->block = project_block_at (project, 0)->id;
  wall->laying.given = LAYING_FIRST_BED;
  wall->laying.element = TRUE;
  wall->laying.first_bed = LENGTH_MM (25);
  g_ptr_array_add (project->walls, wall_ref (wall));
  return wall;
}

static Project *
one_wall (int length)
{
  Project *project = project_new ();
  Block *block = (Block *) project_block_at (project, 0);
  block->length = LENGTH_MM (600);
  block->height = LENGTH_MM (200);
  block->thickness = LENGTH_MM (250);
  project->survey = survey_new ();
  Reading *mark = survey_add_reading (project->survey);
  mark->given = READING_BACK | READING_LEVEL;
  mark->back = LENGTH_MM (1000);
  mark->level = 0;
  add_wall (project, length, "Long");
  return project;
}

/* A point at that height (in Length, above the mark) on the wall. */
static void
read_point (Project *project, guint wall, Length x, Length level)
{
  Reading *reading = survey_add_reading (project->survey);
  reading->given = READING_INTER;
  reading->inter = LENGTH_MM (1000) - level;
  g_free (reading->point);
  reading->point = g_strdup_printf ("P%u", project->survey->readings->len);
  reading_add_place (reading, project_wall_at (project, wall)->id, x);
}

static void
read_mm (Project *project, guint wall, int x, int level)
{
  read_point (project, wall, LENGTH_MM (x), LENGTH_MM (level));
}

static Beds *
judged (const Project *project)
{
  g_autofree char *fault = project_fault (project);
  g_assert_cmpstr (fault, ==, NULL);
  return beds_of_project (project);
}

/* ---- by hand ---- */

/* 6000 mm, from -10 on the left to +10 on the right: mean 0, so course 1 at 25; the bed runs from
 * 35 to 15; mortar 6 m x 25 mm x 250 mm = 37.5 l. */
static void
test_slope (void)
{
  g_autoptr (Project) project = one_wall (6000);
  read_mm (project, 0, 0, -10);
  read_mm (project, 0, 6000, 10);
  g_autoptr (Beds) beds = judged (project);
  g_assert_true (beds->known);
  g_assert_true (beds->possible);
  g_assert_true (beds->within);
  g_assert_cmpint (beds->from, ==, LENGTH_MM (20));
  g_assert_cmpint (beds->to, ==, LENGTH_MM (30));
  g_assert_cmpint (beds->first_course, ==, LENGTH_MM (25));
  g_assert_cmpint (beds->zero, ==, 0);
  g_assert_cmpint (beds->highest.x, ==, LENGTH_MM (6000));
  g_assert_cmpint (beds->lowest.x, ==, 0);
  g_assert_cmpfloat_with_epsilon (beds->mean, 25, 1e-9);
  g_assert_cmpfloat_with_epsilon (beds->mortar / 1e6, 37.5, 1e-9);
  const BedWall *wall = beds_wall (beds, project_wall_at (project, 0)->id);
  g_assert_cmpint (wall->thinnest, ==, LENGTH_MM (15));
  g_assert_cmpint (wall->thickest, ==, LENGTH_MM (35));
  /* both ends and every 2 m: 35, 28.33, 21.67, 15 */
  g_assert_cmpuint (wall->places->len, ==, 4);
  const double beds_mm[] = { 35, 28.333333, 21.666667, 15 };
  for (guint i = 0; i < 4; i++)
    {
      const BedPlace *place = &g_array_index (wall->places, BedPlace, i);
      g_assert_cmpint (place->x, ==, LENGTH_MM (2000) * (Length) i);
      g_assert_cmpint (place->bed, ==, lround (beds_mm[i] * LENGTH_PER_MM));
      g_assert_cmpint (place->point, ==, i == 0 ? 0 : i == 3 ? 1 : -1);
      g_assert_true (place->laid);
    }
  g_assert_cmpuint (wall->works->len, ==, 0);
  g_assert_cmpuint (beds->notes->len, ==, 0);
}

/* A step of one course in the footing is a step in the bed's underside, too. */
static void
test_stepped (void)
{
  g_autoptr (Project) project = one_wall (6000);
  foot_list_add (project_wall_at (project, 0)->feet, LENGTH_MM (3000), LENGTH_MM (202));
  read_mm (project, 0, 0, 0);
  read_mm (project, 0, 2000, 0);
  read_mm (project, 0, 6000, 206);
  g_autoptr (Beds) beds = judged (project);
  const BedWall *wall = beds_wall (beds, project_wall_at (project, 0)->id);
  /* From 2000 to 6000 it rises by 4, the step aside: by 1 up to it. */
  g_assert_cmpint (bed_wall_foot (wall, LENGTH_MM (3000) - 1), <, LENGTH_MM (2));
  g_assert_cmpint (bed_wall_foot (wall, LENGTH_MM (3000)), ==, LENGTH_MM (203));
  g_assert_cmpint (wall->thickest - wall->thinnest, ==, LENGTH_MM (4));
  /* Course 1 at 26, in whole millimetres; on average the footing is 4/3 above zero. */
  g_assert_cmpint (beds->first_course, ==, LENGTH_MM (26));
  g_assert_cmpfloat_with_epsilon (beds->mean, 26 - 4.0 / 3, 1e-6);
  g_assert_cmpfloat_with_epsilon (beds->mortar / 1e6, 6 * 0.25 * (26 - 4.0 / 3), 1e-6);
  /* 210 up, on 17 of bed: the second course lies on both. */
  g_array_index (project_wall_at (project, 0)->feet, Foot, 0).up = LENGTH_MM (210);
  Reading *last = (Reading *) survey_reading (project->survey, project->survey->readings->len - 1);
  last->inter = LENGTH_MM (1000 - 210);
  g_autoptr (Beds) thin = judged (project);
  wall = beds_wall (thin, project_wall_at (project, 0)->id);
  g_assert_cmpint (wall->thickest - wall->thinnest, ==, LENGTH_MM (8));
}

/* The mean would be nearest at 25, but the highest point needs 10 mm over it: course 1 at 30. */
static void
test_high_spot (void)
{
  g_autoptr (Project) project = one_wall (6000);
  read_mm (project, 0, 0, 0);
  read_mm (project, 0, 5900, 0);
  read_mm (project, 0, 6000, 20);
  g_autoptr (Beds) beds = judged (project);
  g_assert_cmpint (beds->first_course, ==, LENGTH_MM (30));
  g_assert_true (beds->within);
}

/* From -40 to +40 nothing keeps the bed from 10 to 40: the range of 80 is 50 too much. Grinding
 * from one end and building from the other are alike; the least is with both the same, course 1 at
 * 25: 15 + 10 = 25 mm too thin on the right over 6000 x 25 / 80 mm, likewise on the left. */
static void
test_too_steep (void)
{
  g_autoptr (Project) project = one_wall (6000);
  read_mm (project, 0, 0, -40);
  read_mm (project, 0, 6000, 40);
  g_autoptr (Beds) beds = judged (project);
  g_assert_false (beds->possible);
  g_assert_false (beds->within);
  g_assert_cmpint (beds->first_course, ==, LENGTH_MM (25));
  const BedWall *wall = beds_wall (beds, project_wall_at (project, 0)->id);
  g_assert_cmpuint (wall->works->len, ==, 2);
  const BedWork *build = &g_array_index (wall->works, BedWork, 0);
  const BedWork *grind = &g_array_index (wall->works, BedWork, 1);
  g_assert_false (build->grind);
  g_assert_cmpint (build->from, ==, 0);
  g_assert_cmpint (build->to, ==, LENGTH_MM (1875));
  g_assert_cmpint (build->at, ==, 0);
  g_assert_cmpint (build->amount, ==, LENGTH_MM (25));
  g_assert_true (grind->grind);
  g_assert_cmpint (grind->from, ==, LENGTH_MM (4125));
  g_assert_cmpint (grind->to, ==, LENGTH_MM (6000));
  g_assert_cmpint (grind->at, ==, LENGTH_MM (6000));
  g_assert_cmpint (grind->amount, ==, LENGTH_MM (25));
  /* 1875 x 25 / 2 x 250 mm3 */
  g_assert_cmpfloat_with_epsilon (grind->volume / 1e6, 5.859375, 1e-9);
  g_assert_cmpfloat_with_epsilon (beds->ground, grind->volume, 1e-3);
  g_assert_cmpfloat_with_epsilon (beds->built, build->volume, 1e-3);
  g_autofree char *text = bed_work_sentence (wall, grind);
  g_assert_cmpstr (
      text, ==, "Long, from 4125 to 6000 mm: grind the footing down, by 25 mm at 6000 mm (5.9 l).");
}

/* Two flat halves 60 mm apart: every level from 20 to 50 over the lower one costs the same; the
 * highest grinds nothing. */
static void
test_ties_build_up (void)
{
  g_autoptr (Project) project = one_wall (6000);
  add_wall (project, 6000, "Low");
  read_mm (project, 0, 0, 60);
  read_mm (project, 1, 0, 0);
  g_autoptr (Beds) beds = judged (project);
  g_assert_false (beds->possible);
  g_assert_cmpint (beds->first_course, ==, LENGTH_MM (70));
  g_assert_cmpfloat_with_epsilon (beds->ground, 0, 1e-6);
  g_assert_cmpfloat_with_epsilon (beds->built / 1e6, 6000 * 30 * 250 / 1e6, 1e-6);
  g_assert_cmpuint (beds->notes->len, ==, 2);
  g_assert_cmpstr (g_ptr_array_index (beds->notes, 0), ==,
                   "Long: one point was read on it; its footing is taken to be level.");
}

static void
test_chosen_level (void)
{
  g_autoptr (Project) project = one_wall (6000);
  read_mm (project, 0, 0, -10);
  read_mm (project, 0, 6000, 10);
  project->survey->given |= SURVEY_FIRST_COURSE;
  project->survey->first_course = LENGTH_MM (18);
  g_autoptr (Beds) beds = judged (project);
  g_assert_true (beds->chosen);
  g_assert_true (beds->possible);
  g_assert_false (beds->within);
  const BedWall *wall = beds_wall (beds, project_wall_at (project, 0)->id);
  g_assert_cmpuint (wall->works->len, ==, 1);
  g_assert_cmpint (g_array_index (wall->works, BedWork, 0).amount, ==, LENGTH_MM (2));
  g_assert_cmpint (g_array_index (wall->works, BedWork, 0).from, ==, LENGTH_MM (5400));
}

/* No blocks stand in a door: a hump there counts for nothing, and takes no mortar. */
static void
test_door (void)
{
  g_autoptr (Project) project = one_wall (6000);
  Wall *wall = g_ptr_array_index (project->walls, 0);
  Opening door = opening_default (OPENING_DOOR);
  door.id.n = 999;
  door.key = g_strdup ("o1");
  door.x = LENGTH_MM (2000);
  door.width = LENGTH_MM (1000);
  door.sill = 0;
  door.height = LENGTH_MM (1000);
  g_array_append_val (wall->openings, door);
  read_mm (project, 0, 0, 0);
  read_mm (project, 0, 2000, 0);
  read_mm (project, 0, 2500, 30);
  read_mm (project, 0, 3000, 0);
  g_autoptr (Beds) beds = judged (project);
  const BedWall *bed = beds_wall (beds, wall->id);
  g_assert_cmpint (beds->first_course, ==, LENGTH_MM (25));
  g_assert_cmpint (beds->highest.level, ==, 0);
  g_assert_cmpuint (bed->runs->len, ==, 2);
  g_assert_cmpfloat_with_epsilon (beds->mortar / 1e6, 5000 * 25 * 250 / 1e6, 1e-9);
  for (guint i = 0; i < bed->places->len; i++)
    {
      const BedPlace *place = &g_array_index (bed->places, BedPlace, i);
      g_assert_cmpint (place->laid, ==, place->x != LENGTH_MM (2500));
    }
  g_assert_cmpuint (beds->notes->len, ==, 1);
  g_assert_cmpstr (g_ptr_array_index (beds->notes, 0), ==,
                   "Long: nothing was read right of 3000 mm; the footing is taken to go on level.");
}

/* A wall drawn with a bed 10 mm thicker stands on a footing 10 mm lower, as it was drawn. */
static void
test_raise (void)
{
  g_autoptr (Project) project = one_wall (6000);
  Wall *second = add_wall (project, 3000, "Low");
  second->laying.first_bed = LENGTH_MM (35);
  read_mm (project, 0, 0, 0);
  read_mm (project, 1, 0, 0);
  g_autoptr (Beds) beds = judged (project);
  const BedWall *first = beds_wall (beds, project_wall_at (project, 0)->id);
  const BedWall *other = beds_wall (beds, project_wall_at (project, 1)->id);
  g_assert_cmpint (other->raise, ==, LENGTH_MM (10));
  g_assert_cmpint (beds_thickness (beds, other, 0) - beds_thickness (beds, first, 0), ==,
                   LENGTH_MM (10));
  /* the mean of 6 m at b and 3 m at b + 10 is 25: b is 21.67, and a whole millimetre is taken */
  g_assert_cmpint (beds->first_course, ==, LENGTH_MM (22));
  g_assert_cmpint (beds->zero, ==, LENGTH_MM (-3));
}

/* Read twice at one place: the mean; beyond the wall's end it still slopes the footing. */
static void
test_points (void)
{
  g_autoptr (Project) project = one_wall (4000);
  read_mm (project, 0, 0, 2);
  read_mm (project, 0, 0, 4);
  read_mm (project, 0, 5000, 13);
  g_autoptr (Beds) beds = judged (project);
  const BedWall *wall = beds_wall (beds, project_wall_at (project, 0)->id);
  g_assert_cmpint (bed_wall_foot (wall, 0), ==, LENGTH_MM (3));
  g_assert_cmpint (bed_wall_foot (wall, LENGTH_MM (4000)), ==, LENGTH_MM (11));
  g_assert_cmpint (bed_wall_foot (wall, LENGTH_MM (9000)), ==, LENGTH_MM (13));
  g_assert_cmpuint (beds->notes->len, ==, 1);
  g_assert_cmpstr (g_ptr_array_index (beds->notes, 0), ==,
                   "Long: the point of row 4 (P4) is 1000 mm beyond the wall's right end.");
}

static void
test_nothing_known (void)
{
  g_autoptr (Project) project = one_wall (4000);
  g_autoptr (Beds) beds = judged (project);
  g_assert_false (beds->known);
  g_assert_null (beds_wall (beds, project_wall_at (project, 0)->id));
  g_clear_pointer (&project->survey, survey_unref);
  g_assert_null (beds_of_project (project));
}

/* ---- against a slow way ---- */

static void
any_footing (Project *project, int swing)
{
  int walls = g_test_rand_int_range (1, 4);
  while ((int) project->walls->len < walls)
    add_wall (project, g_test_rand_int_range (600, 9000), "");
  for (guint w = 0; w < project->walls->len; w++)
    for (int n = g_test_rand_int_range (w == 0, 5); n > 0; n--)
      read_point (project, w, g_test_rand_int_range (0, LENGTH_MM (10000)),
                  g_test_rand_int_range (LENGTH_MM (-swing), LENGTH_MM (swing) + 1));
}

/* Every 10 mm of the walls, taking the footing at the middle. */
static void
slow_work (const Beds *beds, double level, double *work, double *mean, double *mortar)
{
  double sum = 0, n = 0;
  *work = *mortar = 0;
  for (guint w = 0; w < beds->walls->len; w++)
    {
      const BedWall *wall = g_ptr_array_index (beds->walls, w);
      for (double x = 5; x < length_to_mm (wall->wall->length); x += 10)
        {
          double bed = level - length_to_mm (bed_wall_foot (wall, length_from_mm (x)));
          double kept = CLAMP (bed, length_to_mm (beds->least), length_to_mm (beds->most));
          *work += fabs (bed - kept) * 10 * 250;
          *mortar += kept * 10 * 250;
          sum += bed;
          n++;
        }
    }
  *mean = sum / n;
}

static void
test_any_footing (void)
{
  guint possible = 0, rounds = 400;
  for (guint round = 0; round < rounds; round++)
    {
      g_autoptr (Project) project = one_wall (g_test_rand_int_range (60, 900) * 10);
      any_footing (project, round % 2 ? 12 : 60);
      g_autoptr (Beds) beds = judged (project);
      double work, mean, mortar, best = INFINITY, nearest = INFINITY;
      slow_work (beds, length_to_mm (beds->first_course), &work, &mean, &mortar);
      g_assert_cmpfloat (fabs (mean - beds->mean), <, 0.3);
      g_assert_cmpfloat (fabs (mortar - beds->mortar), <, mortar * 0.02 + 1e5);
      g_assert_cmpfloat (fabs (work - beds->ground - beds->built), <, 0.02 * mortar + 1e5);
      for (int level = -130; level <= 130; level++)
        {
          double other, mean_there, unused;
          slow_work (beds, level, &other, &mean_there, &unused);
          best = MIN (best, other);
          if (LENGTH_MM (level) >= beds->from && LENGTH_MM (level) <= beds->to)
            nearest = MIN (nearest, fabs (mean_there - 25));
        }
      possible += beds->possible;
      g_assert_cmpint (beds->within, ==, beds->possible);
      if (!beds->possible)
        g_assert_cmpfloat (work, <=, best + 0.002 * mortar + 1e4);
      else if (isfinite (nearest))
        g_assert_cmpfloat (fabs (mean - 25), <=, nearest + 0.3);
    }
  g_assert_cmpuint (possible, >, rounds / 5);
  g_assert_cmpuint (possible, <, rounds * 4 / 5);
}

/* What lies within its limits has no work to be done, and the other way round; the volumes and the
 * mortar of the walls are those of all. */
static void
test_works (void)
{
  for (int round = 0; round < 400; round++)
    {
      g_autoptr (Project) project = one_wall (g_test_rand_int_range (600, 9000));
      any_footing (project, 60);
      g_autoptr (Beds) beds = judged (project);
      double ground = 0, built = 0, mortar = 0;
      for (guint w = 0; w < beds->walls->len; w++)
        {
          const BedWall *wall = g_ptr_array_index (beds->walls, w);
          Length worst_thin = 0, worst_thick = 0;
          mortar += wall->mortar;
          for (guint i = 0; i < wall->works->len; i++)
            {
              const BedWork *work = &g_array_index (wall->works, BedWork, i);
              Length bed = beds_thickness (beds, wall, work->at);
              g_assert_cmpint (work->from, <=, work->at);
              g_assert_cmpint (work->at, <=, work->to);
              g_assert_cmpint (work->amount, ==,
                               work->grind ? beds->least - bed : bed - beds->most);
              *(work->grind ? &ground : &built) += work->volume;
              *(work->grind ? &worst_thin : &worst_thick)
                  = MAX (work->amount, work->grind ? worst_thin : worst_thick);
            }
          g_assert_cmpint (worst_thin, ==, MAX (beds->least - wall->thinnest, 0));
          g_assert_cmpint (worst_thick, ==, MAX (wall->thickest - beds->most, 0));
        }
      g_assert_cmpfloat_with_epsilon (ground, beds->ground, 1);
      g_assert_cmpfloat_with_epsilon (built, beds->built, 1);
      g_assert_cmpfloat_with_epsilon (mortar, beds->mortar, 1);
    }
}

/* All of it higher, by whole millimetres: course 1 as much higher, and nothing else. From the other
 * side: the same. */
static void
test_shifted_and_mirrored (void)
{
  for (int round = 0; round < 200; round++)
    {
      g_autoptr (Project) project = one_wall (g_test_rand_int_range (600, 9000));
      int length = project_wall_at (project, 0)->length / LENGTH_PER_MM;
      g_autoptr (Project) other = one_wall (length);
      Length shift = LENGTH_MM (g_test_rand_int_range (-900, 900));
      for (int n = g_test_rand_int_range (1, 6); n > 0; n--)
        {
          Length x = LENGTH_MM (g_test_rand_int_range (0, length + 1));
          Length level = LENGTH_MM (g_test_rand_int_range (-40, 41));
          read_point (project, 0, x, level);
          read_point (other, 0, LENGTH_MM (length) - x, level + shift);
        }
      g_autoptr (Beds) p = judged (project);
      g_autoptr (Beds) q = judged (other);
      g_assert_cmpint (ABS (q->first_course - p->first_course - shift), <=,
                       p->possible ? 1 : LENGTH_MM (1));
      g_assert_cmpint (p->possible, ==, q->possible);
      g_assert_cmpint (p->from + shift, ==, q->from);
      g_assert_cmpfloat_with_epsilon (p->ground + p->built, q->ground + q->built, 1e4);
    }
}

/* The runs of course 1 are those of its pieces as laid. */
static void
test_runs_are_those_laid (void)
{
  for (int round = 0; round < 150; round++)
    {
      g_autoptr (Project) project = one_wall (g_test_rand_int_range (3000, 9000));
      Wall *wall = g_ptr_array_index (project->walls, 0);
      Length x = LENGTH_MM (g_test_rand_int_range (0, 900));
      for (int n = 0; n < 2; n++)
        {
          Opening opening = opening_default (OPENING_DOOR);
          opening.key = g_strdup_printf ("o%d", n);
          opening.id.n = (guint32) (500 + n);
          opening.x = x;
          opening.width = LENGTH_MM (g_test_rand_int_range (10, 900));
          opening.sill
              = g_test_rand_int_range (0, 2) ? 0 : LENGTH_MM (g_test_rand_int_range (0, 300));
          opening.height = LENGTH_MM (800);
          if (opening_right (&opening) <= wall->length)
            g_array_append_val (wall->openings, opening);
          else
            opening_clear (&opening);
          x += LENGTH_MM (g_test_rand_int_range (950, 2500));
        }
      read_mm (project, 0, 0, 0);
      g_autoptr (Beds) beds = judged (project);
      const Block *block = project_block_at (project, 0);
      g_autoptr (Layout) layout = lay_wall (wall, block, NULL);
      const BedWall *bed = beds_wall (beds, wall->id);
      Laying laying = laying_resolve (&wall->laying, block);
      for (guint i = 0; i < layout->pieces->len; i++)
        {
          const Piece *piece = layout_piece (layout, i);
          gboolean found = FALSE;
          if (piece->course != 1 || piece->bottom != laying.first_bed || piece->outline >= 0)
            continue;
          for (guint k = 0; k < bed->runs->len; k++)
            {
              const BedRun *run = &g_array_index (bed->runs, BedRun, k);
              found |= run->from <= piece->x && piece->x + piece->length <= run->to;
            }
          g_assert_true (found);
        }
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/bed/stepped-footing", test_stepped);
  g_test_add_func ("/bed/slope", test_slope);
  g_test_add_func ("/bed/high-spot", test_high_spot);
  g_test_add_func ("/bed/too-steep", test_too_steep);
  g_test_add_func ("/bed/ties-build-up", test_ties_build_up);
  g_test_add_func ("/bed/chosen-level", test_chosen_level);
  g_test_add_func ("/bed/door", test_door);
  g_test_add_func ("/bed/raise", test_raise);
  g_test_add_func ("/bed/points", test_points);
  g_test_add_func ("/bed/nothing-known", test_nothing_known);
  g_test_add_func ("/bed/any-footing", test_any_footing);
  g_test_add_func ("/bed/works", test_works);
  g_test_add_func ("/bed/shifted-and-mirrored", test_shifted_and_mirrored);
  g_test_add_func ("/bed/runs-are-those-laid", test_runs_are_those_laid);
  return g_test_run ();
}
