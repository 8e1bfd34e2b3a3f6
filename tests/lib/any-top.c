/* any-top.c - tops and footings made up from a number, put on a made-up wall */
#include "any-top.h"

#include <math.h>

/* Every other one lies on 50 mm. */
static Length
pick (AnyRandom *random, Length lowest, Length highest)
{
  Length wild = (Length) any_between (random, lowest, MAX (lowest, highest));
  Length even = wild / LENGTH_MM (50) * LENGTH_MM (50);
  return any_percent (random, 50) ? wild : CLAMP (even, lowest, MAX (lowest, highest));
}

/* What a slope of some usual or odd pitch rises over a run. */
static Length
pick_rise (AnyRandom *random, Length run)
{
  static const int degrees[] = { 3, 5, 10, 15, 22, 30, 38, 45, 52, 60 };
  double pitch = degrees[any_between (random, 0, G_N_ELEMENTS (degrees) - 1)];
  if (any_percent (random, 30))
    pitch = (double) any_between (random, 20, 650) / 10;
  return (Length) MIN (run * tan (pitch * G_PI / 180), (double) LENGTH_MM (20000));
}

static void
add (GArray *tops, Length x, Length height)
{
  top_list_add (tops, x, height);
}

static void
make_gable (AnyRandom *random, Wall *wall, GArray *tops)
{
  Length at = any_percent (random, 60) ? wall->length / 2 : pick (random, 0, wall->length);
  Length eaves = any_percent (random, 20) ? 0 : pick (random, 0, wall->height);
  Length ridge = eaves + pick_rise (random, at);
  add (tops, 0, eaves);
  add (tops, at, ridge);
  add (tops, wall->length, any_percent (random, 60) ? eaves : pick (random, 0, ridge));
}

static void
make_mono (AnyRandom *random, Wall *wall, GArray *tops)
{
  Length low = pick (random, 0, wall->height), high = low + pick_rise (random, wall->length);
  gboolean rises = any_percent (random, 50);
  add (tops, 0, rises ? low : high);
  add (tops, wall->length, rises ? high : low);
}

static void
make_steps (AnyRandom *random, Wall *wall, GArray *tops)
{
  Length height = pick (random, LENGTH_MM (100), wall->height), x = 0;
  for (int n = (int) any_between (random, 1, 4); n > 0; n--)
    {
      x = pick (random, x + 1, wall->length);
      if (x >= wall->length || x <= 0)
        return;
      add (tops, x, height);
      height = pick (random, LENGTH_MM (50), wall->height);
      add (tops, x, height);
    }
}

/* Slopes, steps and level stretches, valleys too. */
static void
make_odd (AnyRandom *random, Wall *wall, GArray *tops)
{
  Length x = any_percent (random, 50) ? 0 : pick (random, 0, wall->length / 3);
  gboolean stepped = FALSE;
  for (int n = (int) any_between (random, 2, 7); n > 0; n--)
    {
      Length height = pick (random, any_percent (random, 30) ? 0 : LENGTH_MM (300), wall->height);
      add (tops, x, height);
      stepped = !stepped && any_percent (random, 30);
      if (!stepped)
        x = pick (random, x + 1, MIN (wall->length, x + LENGTH_MM (3000)));
      if (x > wall->length || (n > 1 && !stepped && top_point (tops, tops->len - 1)->x >= x))
        return;
    }
}

/* Heights become what they lie below the highest. */
static Length
hang (GArray *tops)
{
  Length most = 0;
  for (guint i = 0; i < tops->len; i++)
    most = MAX (most, top_point (tops, i)->below);
  for (guint i = 0; i < tops->len; i++)
    g_array_index (tops, TopPoint, i).below = most - top_point (tops, i)->below;
  return most;
}

static void
make_top (AnyRandom *random, Wall *wall)
{
  static void (*const make[]) (AnyRandom *, Wall *, GArray *)
      = { make_gable, make_mono, make_steps, make_odd };
  GArray *tops = top_list_new ();
  Length height;
  make[any_between (random, 0, G_N_ELEMENTS (make) - 1)](random, wall, tops);
  height = hang (tops);
  if (tops->len == 0 || height < LENGTH_MM (250))
    {
      g_array_unref (tops);
      return;
    }
  wall_take_top (wall, tops, height);
}

static void
make_feet (AnyRandom *random, Wall *wall)
{
  Length x = any_percent (random, 30) ? 0 : pick (random, 0, wall->length - 1);
  for (int n = (int) any_between (random, 1, 4); n > 0 && x < wall->length; n--)
    {
      foot_list_add (wall->feet, x, pick (random, 0, MIN (wall->height / 2, LENGTH_MM (1200))));
      x = pick (random, x + 1, wall->length + LENGTH_MM (500));
    }
}

static gboolean
has_fault (const Wall *wall, const Block *block)
{
  g_autofree char *fault = wall_fault (wall, block, NULL);
  return fault != NULL;
}

gboolean
any_top (guint64 seed, Wall *wall, const Block *block)
{
  AnyRandom random = { seed ^ 0x746f7073 };
  OpeningId which;
  char *fault;
  if (any_percent (&random, 85))
    make_top (&random, wall);
  if (any_percent (&random, 40))
    make_feet (&random, wall);
  if (any_percent (&random, 30))
    {
      wall->laying.given |= LAYING_MIN_RAKED;
      wall->laying.min_raked = pick (&random, LENGTH_MM (20), block->length);
    }
  for (int side = 0; side < 2; side++)
    if (wall->ends[side].ret > 0 && any_percent (&random, 40))
      wall->ends[side].up_to = pick (&random, 1, wall->height);
  for (guint i = 0; i < wall->tees->len; i++)
    if (any_percent (&random, 40))
      g_array_index (wall->tees, Tee, i).up_to = pick (&random, 1, wall->height);
  /* Openings that have no place any more go. */
  while ((fault = wall_fault (wall, block, &which)) != NULL && which.n != 0)
    {
      guint i = 0;
      g_free (fault);
      while (wall_opening_at (wall, i)->id.n != which.n)
        i++;
      g_array_remove_index (wall->openings, i);
    }
  g_free (fault);
  return !has_fault (wall, block) && (wall->tops->len > 0 || wall->feet->len > 0);
}
