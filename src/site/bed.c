/* bed.c - the levelling bed under the first course, from the levels of the footing */
#include "site/bed.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "bond/profile.h"
#include "bond/gauge.h"
#include "bond/segment.h"
#include "site/square.h"

#define EVERY LENGTH_MM (2000)

/* ---- the footing under one wall ---- */

static void
bed_wall_free (gpointer data)
{
  BedWall *wall = data;

  g_array_unref (wall->foot);
  g_array_unref (wall->runs);
  g_array_unref (wall->rises);
  g_array_unref (wall->places);
  g_array_unref (wall->works);
  g_free (wall);
}

static gint
compare_points (gconstpointer a, gconstpointer b)
{
  const FootPoint *p = a, *q = b;

  if (p->x != q->x)
    return p->x < q->x ? -1 : 1;
  return (p->row > q->row) - (p->row < q->row);
}

/* What was read at one place several times is its mean there. Sorted by place. */
static void
merge_points (GArray *foot)
{
  guint kept = 0;

  for (guint i = 0; i < foot->len;)
    {
      FootPoint point = g_array_index (foot, FootPoint, i);
      gint64 sum = 0, n = 0;

      for (; i < foot->len && g_array_index (foot, FootPoint, i).x == point.x; i++, n++)
        sum += g_array_index (foot, FootPoint, i).level;
      point.level = (Length) whole_ratio (sum, n);
      g_array_index (foot, FootPoint, kept++) = point;
    }
  g_array_set_size (foot, kept);
}

static void
unref_points (gpointer points)
{
  g_array_unref (points);
}

static void
add_point (GHashTable *by_wall, WallId wall, const FootPoint *point)
{
  GArray *foot = g_hash_table_lookup (by_wall, GUINT_TO_POINTER (wall.n));

  if (!foot)
    {
      foot = g_array_new (FALSE, TRUE, sizeof (FootPoint));
      g_hash_table_insert (by_wall, GUINT_TO_POINTER (wall.n), foot);
    }
  g_array_append_vals (foot, point, 1);
}

/* The points that have a level, by the number of their wall: GArray of FootPoint. */
static GHashTable *
points_by_wall (const Survey *survey, const LevelBook *book)
{
  GHashTable *by_wall = g_hash_table_new_full (NULL, NULL, NULL, unref_points);

  for (guint row = 0; row < survey->readings->len; row++)
    {
      const Reading *reading = survey_reading (survey, row);
      Length level;

      if (!level_of_point (book, row, &level))
        continue;
      for (guint i = 0; i < reading->places->len; i++)
        {
          const FootPoint point = { reading_place (reading, i)->x, level, row };

          add_point (by_wall, reading_place (reading, i)->wall, &point);
        }
    }
  return by_wall;
}

/* How many points lie left of the place. */
static guint
points_before (const BedWall *wall, Length x)
{
  guint low = 0, high = wall->foot->len;

  while (low < high)
    {
      guint middle = low + (high - low) / 2;

      if (g_array_index (wall->foot, FootPoint, middle).x < x)
        low = middle + 1;
      else
        high = middle;
    }
  return low;
}

/* A point's level less the step that it is read on. */
static Length
level_of (const BedWall *wall, guint i)
{
  const FootPoint *point = &g_array_index (wall->foot, FootPoint, i);

  return point->level - wall_foot_at (wall->wall, point->x, SIDE_RIGHT);
}

/* Level of the footing at a place, its steps left out. */
static Length
level_at (const BedWall *wall, Length x)
{
  guint n = wall->foot->len, i = points_before (wall, x);
  Length p, q;

  if (i == 0)
    return level_of (wall, 0);
  if (i == n)
    return level_of (wall, n - 1);
  p = level_of (wall, i - 1);
  q = level_of (wall, i);
  return p
         + (Length) whole_ratio (
             ((gint64) q - p) * ((gint64) x - g_array_index (wall->foot, FootPoint, i - 1).x),
             (gint64) g_array_index (wall->foot, FootPoint, i).x
                 - g_array_index (wall->foot, FootPoint, i - 1).x);
}

Length
bed_wall_foot (const BedWall *wall, Length x)
{
  return level_at (wall, x) + wall_foot_at (wall->wall, x, SIDE_RIGHT);
}

/* How much higher blocks begin there than course 1 does, by the footing's steps. */
static Length
rise_at (const BedWall *wall, Length x)
{
  Length rise = 0;

  for (guint i = 0; i < wall->wall->feet->len; i++)
    if (foot_point (wall->wall->feet, i)->x <= x)
      rise = g_array_index (wall->rises, Length, i);
  return rise;
}

/* The footing between two of its steps, from `x` on, as low below course 1 as it is below the
 * blocks that begin there. */
static gint64
lowered_foot (const BedWall *wall, Length x, Length at)
{
  return (gint64) level_at (wall, at) + wall_foot_at (wall->wall, x, SIDE_RIGHT)
         - rise_at (wall, x);
}

/* ---- where course 1 stands on the bed ---- */

/* Steps of a segment that stand on the bed; those that touch but for a joint are one run. */
static void
add_run (GArray *runs, Length from, Length to, Length joint)
{
  BedRun run = { from, to };
  BedRun *last = runs->len > 0 ? &g_array_index (runs, BedRun, runs->len - 1) : NULL;

  if (last != NULL && from - last->to <= joint)
    last->to = to;
  else
    g_array_append_val (runs, run);
}

/* What of a step stands on the bed: between two steps of the footing all of it or nothing. */
static void
add_standing (BedWall *wall, const Step *step, Length first_bed, Length joint)
{
  for (Length x = step->from; x < step->to;)
    {
      Length to = step->to;

      for (guint i = 0; i < wall->wall->feet->len; i++)
        if (foot_point (wall->wall->feet, i)->x > x)
          to = MIN (to, foot_point (wall->wall->feet, i)->x);
      if (step->lo == first_bed + rise_at (wall, x))
        add_run (wall->runs, x, to, joint);
      x = to;
    }
}

static gint
compare_runs (gconstpointer a, gconstpointer b)
{
  const BedRun *p = a, *q = b;

  return (p->from > q->from) - (p->from < q->from);
}

static void
find_runs (BedWall *wall, const Block *block)
{
  Laying laying = laying_resolve (&wall->wall->laying, block);
  g_autoptr (Geometry) geometry = geometry_new (wall->wall, block, &laying);
  const Length first = gauge_bottom (wall->wall, block, &laying, 1);

  for (guint i = 0; i < geometry->segments->len; i++)
    {
      const Segment *segment = geometry_segment (geometry, (gint32) i);

      /* On the footing's steps other courses begin. */
      for (gint32 k = 0;
           (segment->course == 1 || wall->wall->feet->len > 0) && k < segment->n_steps; k++)
        {
          const Step *step = geometry_step (geometry, segment->first_step + k);
          gboolean joined = segment->joined_left && k == 0;

          add_standing (wall, step, first, joined || k > 0 ? laying.head : 0);
        }
    }
  if (wall->wall->feet->len > 0)
    g_array_sort (wall->runs, compare_runs);
}

static void
find_rises (BedWall *wall, const Block *block)
{
  Laying laying = laying_resolve (&wall->wall->laying, block);

  for (guint i = 0; i < wall->wall->feet->len; i++)
    {
      Length up = foot_point (wall->wall->feet, i)->up;
      Length rise = up == 0 ? 0 : profile_base (wall->wall, block, &laying, up) - laying.first_bed;

      g_array_append_val (wall->rises, rise);
    }
}

/* Whether the wall has blocks there: beside a corner, the other wall's. */
static gboolean
is_laid (const BedWall *wall, Length x)
{
  for (guint i = 0; i < wall->wall->openings->len; i++)
    {
      const Opening *opening = wall_opening_at (wall->wall, i);

      /* A jamb is still under blocks. */
      if (x <= opening->x || x >= opening_right (opening))
        continue;
      for (guint k = 0; k < wall->runs->len; k++)
        {
          const BedRun *run = &g_array_index (wall->runs, BedRun, k);

          if (x >= run->from && x <= run->to)
            return TRUE;
        }
      return FALSE;
    }
  return TRUE;
}

/* The surveyed wall, on those points. */
static BedWall *
survey_wall (const Project *project, const Wall *wall, GArray *points)
{
  BedWall *bed = g_new0 (BedWall, 1);

  g_array_sort (points, compare_points);
  merge_points (points);
  bed->wall = wall;
  bed->foot = g_array_ref (points);
  bed->runs = g_array_new (FALSE, TRUE, sizeof (BedRun));
  bed->places = g_array_new (FALSE, TRUE, sizeof (BedPlace));
  bed->works = g_array_new (FALSE, TRUE, sizeof (BedWork));
  bed->rises = g_array_new (FALSE, TRUE, sizeof (Length));
  find_rises (bed, project_block (project, wall->block));
  find_runs (bed, project_block (project, wall->block));
  return bed;
}

/* ---- straight pieces of footing under the blocks ---- */

/* From one place to the next of a run; the footing between is straight. Heights are lowered by
 * the wall's raise, so that course 1 is at one level above all of them. */
typedef struct
{
  Length x0, x1;
  gint64 foot0, foot1;
} Stretch;

/* Calls `each` with every stretch of the wall, from the left. */
static void
each_stretch (const BedWall *wall,
              void (*each) (const BedWall *wall, const Stretch *stretch, gpointer data),
              gpointer data)
{
  for (guint r = 0; r < wall->runs->len; r++)
    {
      const BedRun *run = &g_array_index (wall->runs, BedRun, r);
      Length x = run->from;

      while (x < run->to)
        {
          guint i = points_before (wall, x + 1);
          Length next = run->to;
          Stretch stretch;

          if (i < wall->foot->len)
            next = MIN (next, g_array_index (wall->foot, FootPoint, i).x);
          for (i = 0; i < wall->wall->feet->len; i++)
            if (foot_point (wall->wall->feet, i)->x > x)
              next = MIN (next, foot_point (wall->wall->feet, i)->x);
          stretch = (Stretch){ x, next, lowered_foot (wall, x, x) - wall->raise,
                               lowered_foot (wall, x, next) - wall->raise };
          each (wall, &stretch, data);
          x = next;
        }
    }
}

static double
mm (gint64 length)
{
  return (double) length / LENGTH_PER_MM;
}

/* The area under what is positive of a straight line from a to b over dx. */
static double
positive_area (double a, double b, double dx)
{
  if (a <= 0 && b <= 0)
    return 0;
  if (a >= 0 && b >= 0)
    return (a + b) / 2 * dx;
  return MAX (a, b) * MAX (a, b) / (2 * fabs (b - a)) * dx;
}

/* ---- the level of the first course ---- */

typedef struct
{
  Beds *beds;
  const Project *project;
  gboolean any;
  double length, foot; /* mm, mm2: of all stretches, the foot above `base` */
  gint64 base, high, low;
  /* for one level of course 1: */
  gint64 level;
  double thick;                 /* mm, of the wall */
  double ground, built, mortar; /* mm3 */
} Fitting;

static double
thickness_of (const Project *project, const Wall *wall)
{
  return length_to_mm (project_block (project, wall->block)->thickness);
}

static void
meet_foot (Fitting *fitting, const BedWall *wall, Length x, gint64 foot)
{
  BedSpot spot = { wall->wall, x, (Length) (foot + wall->raise) };

  if (!fitting->any || foot > fitting->high)
    {
      fitting->high = foot;
      fitting->beds->highest = spot;
    }
  if (!fitting->any || foot < fitting->low)
    {
      fitting->low = foot;
      fitting->beds->lowest = spot;
    }
  fitting->any = TRUE;
}

static void
measure (const BedWall *wall, const Stretch *stretch, gpointer data)
{
  Fitting *fitting = data;
  double dx = mm (stretch->x1 - stretch->x0);

  if (!fitting->any)
    fitting->base = stretch->foot0;
  meet_foot (fitting, wall, stretch->x0, stretch->foot0);
  meet_foot (fitting, wall, stretch->x1, stretch->foot1);
  fitting->length += dx;
  fitting->foot
      += (mm (stretch->foot0 - fitting->base) + mm (stretch->foot1 - fitting->base)) / 2 * dx;
}

static void
weigh (const BedWall *wall, const Stretch *stretch, gpointer data)
{
  Fitting *fitting = data;
  const Beds *beds = fitting->beds;
  double least = mm (beds->least), most = mm (beds->most);
  double b0 = mm (fitting->level - stretch->foot0), b1 = mm (fitting->level - stretch->foot1);
  double dx = mm (stretch->x1 - stretch->x0);
  double ground = positive_area (least - b0, least - b1, dx);
  double built = positive_area (b0 - most, b1 - most, dx);

  (void) wall;
  fitting->ground += ground * fitting->thick;
  fitting->built += built * fitting->thick;
  fitting->mortar += ((b0 + b1) / 2 * dx + ground - built) * fitting->thick;
}

/* What is to be ground down and built up with course 1 at a level, mm3. */
static double
work_at (Fitting *fitting, gint64 level)
{
  fitting->level = level;
  fitting->ground = fitting->built = fitting->mortar = 0;
  for (guint i = 0; i < fitting->beds->walls->len; i++)
    {
      BedWall *wall = g_ptr_array_index (fitting->beds->walls, i);
      double before = fitting->mortar;

      fitting->thick = thickness_of (fitting->project, wall->wall);
      each_stretch (wall, weigh, fitting);
      wall->mortar = fitting->mortar - before;
    }
  return fitting->ground + fitting->built;
}

static gint64
floor_mm (gint64 level)
{
  gint64 rest = level % LENGTH_PER_MM;

  return level - rest - (rest < 0 ? LENGTH_PER_MM : 0);
}

static gint64
ceil_mm (gint64 level)
{
  return -floor_mm (-level);
}

/* Within from..to, where the mean bed comes nearest to the wanted one; whole millimetres where
 * there are any. */
static gint64
level_of_mean (const Fitting *fitting, gint64 from, gint64 to)
{
  gint64 wanted
      = fitting->base + length_from_mm (fitting->foot / fitting->length) + fitting->beds->wanted;
  gint64 low = ceil_mm (from), high = floor_mm (to);

  if (low > high)
    return CLAMP (wanted, from, to);
  return CLAMP (floor_mm (wanted + LENGTH_PER_MM / 2), low, high);
}

/* The least work: it falls and then rises with the level (each part of it is convex). Of equal
 * ones the highest level, which grinds least. */
static gint64
level_of_least_work (Fitting *fitting, gint64 from, gint64 to)
{
  gint64 low = floor_mm (from) / LENGTH_PER_MM, high = ceil_mm (to) / LENGTH_PER_MM;

  while (low < high)
    {
      gint64 middle = low + (high - low) / 2;
      double here = work_at (fitting, middle * LENGTH_PER_MM);
      double above = work_at (fitting, (middle + 1) * LENGTH_PER_MM);

      /* Sums of some thousand terms agree to far more than this. */
      if (above <= here * (1 + 1e-12))
        low = middle + 1;
      else
        high = middle;
    }
  return low * LENGTH_PER_MM;
}

static void
choose_level (Fitting *fitting)
{
  Beds *beds = fitting->beds;
  const Survey *survey = fitting->project->survey;
  gint64 from = fitting->high + beds->least, to = fitting->low + beds->most, level;

  beds->possible = from <= to;
  beds->from = (Length) from;
  beds->to = (Length) to;
  beds->chosen = (survey->given & SURVEY_FIRST_COURSE) != 0;
  if (beds->chosen)
    level = survey->first_course;
  else if (beds->possible)
    level = level_of_mean (fitting, from, to);
  else
    level = level_of_least_work (fitting, to, from);
  beds->first_course = (Length) level;
  beds->within = level >= from && level <= to;
  work_at (fitting, level);
  beds->mortar = fitting->mortar;
  beds->ground = fitting->ground;
  beds->built = fitting->built;
  beds->mean = mm (level - fitting->base) - fitting->foot / fitting->length;
}

/* ---- the table of places ---- */

Length
beds_thickness (const Beds *beds, const BedWall *wall, Length x)
{
  return beds->first_course + wall->raise + rise_at (wall, x) - bed_wall_foot (wall, x);
}

static gint
compare_places (gconstpointer a, gconstpointer b)
{
  const BedPlace *p = a, *q = b;

  if (p->x != q->x)
    return p->x < q->x ? -1 : 1;
  return (p->point < q->point) - (p->point > q->point); /* a surveyed one first */
}

static void
add_place (const Beds *beds, BedWall *wall, Length x, gint point)
{
  BedPlace place
      = { x, bed_wall_foot (wall, x), beds_thickness (beds, wall, x), point, is_laid (wall, x) };

  g_array_append_val (wall->places, place);
}

static void
find_places (const Beds *beds, BedWall *wall)
{
  GArray *places = wall->places;
  guint kept = 0;

  for (Length x = 0; x < wall->wall->length; x += EVERY)
    add_place (beds, wall, x, -1);
  add_place (beds, wall, wall->wall->length, -1);
  for (guint i = 0; i < wall->foot->len; i++)
    if (g_array_index (wall->foot, FootPoint, i).x <= wall->wall->length)
      add_place (beds, wall, g_array_index (wall->foot, FootPoint, i).x, (gint) i);
  g_array_sort (places, compare_places);
  for (guint i = 0; i < places->len; i++)
    if (kept == 0
        || g_array_index (places, BedPlace, kept - 1).x != g_array_index (places, BedPlace, i).x)
      g_array_index (places, BedPlace, kept++) = g_array_index (places, BedPlace, i);
  g_array_set_size (places, kept);
}

/* ---- where the bed cannot be laid ---- */

typedef struct
{
  const Beds *beds;
  BedWall *wall;
  double thick;
  gboolean met;
} Listing;

/* Where the line from a (at x0) to b (at x1) is zero. */
static Length
crossing (const Stretch *stretch, gint64 a, gint64 b)
{
  return stretch->x0
         + (Length) whole_ratio (ABS (a) * ((gint64) stretch->x1 - stretch->x0), ABS (b - a));
}

/* a, b: how much too thin, or too thick, the bed is at both ends of the stretch. */
static void
list_work (Listing *listing, const Stretch *stretch, gboolean grind, gint64 a, gint64 b)
{
  GArray *works = listing->wall->works;
  BedWork work = { .grind = grind, .from = stretch->x0, .to = stretch->x1 };
  BedWork *last = NULL;

  if (a <= 0 && b <= 0)
    return;
  if (a < 0)
    work.from = crossing (stretch, a, b);
  if (b < 0)
    work.to = crossing (stretch, a, b);
  work.at = a >= b ? stretch->x0 : stretch->x1;
  work.amount = (Length) MAX (a, b);
  work.volume = positive_area (mm (a), mm (b), mm (stretch->x1 - stretch->x0)) * listing->thick;
  for (guint i = works->len; !last && i-- > 0;)
    if (g_array_index (works, BedWork, i).grind == grind)
      last = &g_array_index (works, BedWork, i);
  if (!last || last->to != work.from)
    {
      g_array_append_val (works, work);
      return;
    }
  last->to = work.to;
  last->volume += work.volume;
  if (work.amount > last->amount)
    {
      last->amount = work.amount;
      last->at = work.at;
    }
}

static void
list_stretch (const BedWall *wall, const Stretch *stretch, gpointer data)
{
  Listing *listing = data;
  gint64 level = listing->beds->first_course;
  gint64 b0 = level - stretch->foot0, b1 = level - stretch->foot1;
  Length thin = (Length) MIN (b0, b1), thick = (Length) MAX (b0, b1);
  BedWall *own = listing->wall;

  (void) wall;
  own->thinnest = listing->met ? MIN (own->thinnest, thin) : thin;
  own->thickest = listing->met ? MAX (own->thickest, thick) : thick;
  listing->met = TRUE;
  list_work (listing, stretch, TRUE, listing->beds->least - b0, listing->beds->least - b1);
  list_work (listing, stretch, FALSE, b0 - listing->beds->most, b1 - listing->beds->most);
}

static gint
compare_works (gconstpointer a, gconstpointer b)
{
  const BedWork *p = a, *q = b;

  return (p->from > q->from) - (p->from < q->from);
}

static void
list_works (const Beds *beds, const Project *project, BedWall *wall)
{
  Listing listing = { beds, wall, thickness_of (project, wall->wall), FALSE };

  each_stretch (wall, list_stretch, &listing);
  g_array_sort (wall->works, compare_works);
}

/* ---- what was taken for granted ---- */

static void
note_wall (Beds *beds, const Survey *survey, const BedWall *wall)
{
  const FootPoint *first = &g_array_index (wall->foot, FootPoint, 0);
  const FootPoint *last = &g_array_index (wall->foot, FootPoint, wall->foot->len - 1);
  const char *name = wall_called (wall->wall);
  char x[LENGTH_TEXT_SIZE];

  if (last->x > wall->wall->length)
    g_ptr_array_add (
        beds->notes,
        g_strdup_printf (_ ("%s: the point of row %u (%s) is %s mm beyond the wall's right end."),
                         name, last->row + 1, survey_reading (survey, last->row)->point,
                         length_text (last->x - wall->wall->length, x)));
  if (wall->foot->len == 1)
    g_ptr_array_add (beds->notes, g_strdup_printf (_ ("%s: one point was read on it; its footing "
                                                      "is taken to be level."),
                                                   name));
  else if (first->x > 0)
    g_ptr_array_add (beds->notes,
                     g_strdup_printf (_ ("%s: nothing was read left of %s mm; the footing is taken "
                                         "to go on level."),
                                      name, length_text (first->x, x)));
  if (wall->foot->len > 1 && last->x < wall->wall->length)
    g_ptr_array_add (beds->notes,
                     g_strdup_printf (_ ("%s: nothing was read right of %s mm; the footing is "
                                         "taken to go on level."),
                                      name, length_text (last->x, x)));
}

/* ---- all walls ---- */

static void
find_walls (Beds *beds, const Project *project, const LevelBook *book)
{
  g_autoptr (GHashTable) points = points_by_wall (project->survey, book);
  Length reference = 0;

  for (guint i = 0; i < project->walls->len; i++)
    {
      const Wall *wall = project_wall_at (project, i);
      const Block *block = project_block (project, wall->block);
      Laying laying = laying_resolve (&wall->laying, block);
      GArray *on_wall = g_hash_table_lookup (points, GUINT_TO_POINTER (wall->id.n));
      BedWall *bed;

      if (!on_wall)
        continue;
      bed = survey_wall (project, wall, on_wall);
      if (beds->walls->len == 0)
        reference = laying.first_bed;
      /* Course 1 may lie otherwise than drawn where it stands. */
      bed->raise = gauge_bottom (wall, block, &laying, 1) - reference;
      g_ptr_array_add (beds->walls, bed);
      note_wall (beds, project->survey, bed);
    }
  beds->zero = -reference;
}

Beds *
beds_new (const Project *project, const LevelBook *book)
{
  Beds *beds;
  Fitting fitting = { .project = project };

  if (!project->survey)
    return NULL;
  beds = fitting.beds = g_new0 (Beds, 1);
  beds->walls = g_ptr_array_new_with_free_func (bed_wall_free);
  beds->notes = g_ptr_array_new_with_free_func (g_free);
  beds->least = project->survey->least;
  beds->wanted = project->survey->wanted;
  beds->most = project->survey->most;
  find_walls (beds, project, book);
  for (guint i = 0; i < beds->walls->len; i++)
    each_stretch (g_ptr_array_index (beds->walls, i), measure, &fitting);
  beds->known = fitting.any;
  if (!beds->known)
    return beds;
  choose_level (&fitting);
  beds->zero += beds->first_course;
  for (guint i = 0; i < beds->walls->len; i++)
    {
      find_places (beds, g_ptr_array_index (beds->walls, i));
      list_works (beds, project, g_ptr_array_index (beds->walls, i));
    }
  return beds;
}

Beds *
beds_of_project (const Project *project)
{
  g_autoptr (LevelBook) book = project->survey ? level_book_new (project->survey) : NULL;

  return beds_new (project, book);
}

void
beds_free (Beds *beds)
{
  if (!beds)
    return;
  g_ptr_array_unref (beds->walls);
  g_ptr_array_unref (beds->notes);
  g_free (beds);
}

const BedWall *
beds_wall (const Beds *beds, WallId wall)
{
  for (guint i = 0; beds && beds->known && i < beds->walls->len; i++)
    {
      const BedWall *bed = g_ptr_array_index (beds->walls, i);

      if (bed->wall->id.n == wall.n)
        return bed;
    }
  return NULL;
}

char *
bed_work_sentence (const BedWall *wall, const BedWork *work)
{
  char from[LENGTH_TEXT_SIZE], to[LENGTH_TEXT_SIZE], at[LENGTH_TEXT_SIZE], amount[LENGTH_TEXT_SIZE];

  length_text (work->amount, amount);
  return g_strdup_printf (
      work->grind ? _ ("%s, from %s to %s mm: grind the footing down, by %s mm at %s mm (%.1f l).")
                  : _ ("%s, from %s to %s mm: build the footing up, by %s mm at %s mm (%.1f l)."),
      wall_called (wall->wall), length_text (work->from, from), length_text (work->to, to), amount,
      length_text (work->at, at), work->volume / 1e6);
}
